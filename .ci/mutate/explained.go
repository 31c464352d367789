package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// leaveOut takes out the changes that the list explains: one a line, `file: change: source line` and, after a tab, the reason. The change * is every change of
// that line. It names those of this package that there are no longer.
func leaveOut(points []point, pkg, list string) (kept []point, stale []string, err error) {
	text, err := os.ReadFile(list)
	if err != nil {
		return nil, nil, err
	}
	explained := map[string]bool{} // found or not
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		key, reason, _ := strings.Cut(line, "\t")
		if strings.TrimSpace(reason) == "" {
			return nil, nil, fmt.Errorf("%s: no reason: %s", list, line)
		}
		if file, _, _ := strings.Cut(key, ":"); filepath.Dir(file) == filepath.Clean(pkg) {
			explained[key] = false
		}
	}
	for _, p := range points {
		one, any := p.file+": "+p.what+": "+p.line, p.file+": *: "+p.line
		_, isOne := explained[one]
		_, isAny := explained[any]
		switch {
		case isOne:
			explained[one] = true
		case isAny:
			explained[any] = true
		default:
			kept = append(kept, p)
		}
	}
	for key, found := range explained {
		if !found {
			stale = append(stale, key)
		}
	}
	return kept, stale, nil
}
