package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// chooser is the file that is laid beside the package's own: which change to follow, 0 for none.
const chooser = `package %s

import (
	"os"
	"strconv"
)

var mutateNow, _ = strconv.Atoi(os.Getenv("MUTATE"))
`

// lay draws the first n changes that compile and writes the overlay that holds them. Each function begins with its changed copies:
//
//	func f() int { if mutateNow == 7 { …the body with change 7… } …the body as it is… }
func lay(dir, pkg string, points []point, n int) ([]point, string, error) {
	abs, err := filepath.Abs(pkg)
	if err != nil {
		return nil, "", err
	}
	name, err := exec.Command("go", "list", "-f", "{{.Name}}", pkg).Output()
	if err != nil {
		return nil, "", err
	}
	replace := map[string]string{}
	put := func(base, text string) error {
		to := filepath.Join(dir, base)
		replace[filepath.Join(abs, base)] = to
		return os.WriteFile(to, []byte(text), 0o600)
	}
	overlay := filepath.Join(dir, "overlay.json")
	var drawn []point
	for rest := points; ; {
		more := min(len(rest), max(0, n-len(drawn))*3/2)
		drawn, rest = slices.Concat(drawn, rest[:more]), rest[more:]
		clear(replace)
		if err := put("mutate_now.go", fmt.Sprintf(chooser, strings.TrimSpace(string(name)))); err != nil {
			return nil, "", err
		}
		spans := map[string][]span{}
		for file, ps := range byFile(drawn) {
			src, err := os.ReadFile(file)
			if err != nil {
				return nil, "", err
			}
			text, where := splice(string(src), ps)
			if err := put(filepath.Base(file), text); err != nil {
				return nil, "", err
			}
			spans[filepath.Base(file)] = where
		}
		data, err := json.Marshal(map[string]map[string]string{"Replace": replace})
		if err != nil {
			return nil, "", err
		}
		if err := os.WriteFile(overlay, data, 0o600); err != nil {
			return nil, "", err
		}
		out, err := exec.Command("go", "build", "-gcflags=-e", "-overlay", overlay, pkg).CombinedOutput()
		if err == nil && (len(drawn) >= n || len(rest) == 0) {
			return drawn[:min(n, len(drawn))], overlay, nil
		}
		if err != nil {
			bad := broken(string(out), spans)
			if len(bad) == 0 {
				return nil, "", fmt.Errorf("%w: %s", err, out)
			}
			drawn = slices.DeleteFunc(drawn, func(p point) bool { return bad[p.id] })
		}
	}
}

func byFile(points []point) map[string][]point {
	out := map[string][]point{}
	for _, p := range points {
		out[p.file] = append(out[p.file], p)
	}
	return out
}

// span is the lines that a change takes up in the file it is laid into.
type span struct{ id, from, to int }

// splice puts the changed copies behind the brace of each function.
func splice(src string, points []point) (string, []span) {
	points = slices.SortedStableFunc(slices.Values(points), func(a, b point) int { return a.off - b.off })
	var out strings.Builder
	var spans []span
	done := 0
	for _, p := range points {
		out.WriteString(src[done : p.off+1])
		if done == p.off+1 {
			out.WriteString("\n")
		}
		done = p.off + 1
		from := strings.Count(out.String(), "\n") + 1
		end := ""
		if p.void {
			end = "\nreturn"
		}
		fmt.Fprintf(&out, "\nif mutateNow == %d {\n%s%s\n}\n", p.id, p.body, end)
		spans = append(spans, span{p.id, from + 1, strings.Count(out.String(), "\n")})
	}
	out.WriteString(src[done:])
	return out.String(), spans
}

var complaint = regexp.MustCompile(`(?m)([\w.-]+\.go):(\d+):\d+: `)

// broken tells from what the compiler says which changes are no Go.
func broken(out string, spans map[string][]span) map[int]bool {
	bad := map[int]bool{}
	for _, m := range complaint.FindAllStringSubmatch(out, -1) {
		line, err := strconv.Atoi(m[2])
		if err != nil {
			continue
		}
		for _, s := range spans[m[1]] {
			if s.from <= line && line <= s.to {
				bad[s.id] = true
			}
		}
	}
	return bad
}
