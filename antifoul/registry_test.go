package antifoul_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
)

var (
	idInCode = regexp.MustCompile(`finding\.ID\s*=\s*"([a-z0-9-]+)"`)
	idInRow  = regexp.MustCompile(`(?m)^rule = "([a-z0-9-]+)"`)
)

// Every rule id that code or a row of overcoats and conditions names is a row of the registry, and the other way round.
func TestRuleIDsMatchTheRegistry(t *testing.T) {
	root := ".."
	used := map[string]string{}
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		pattern := idInCode
		switch {
		case strings.HasSuffix(p, "_test.go"):
			return nil
		case strings.HasSuffix(p, ".toml") && strings.Contains(filepath.ToSlash(p), "tables/data/"):
			pattern = idInRow
		case !strings.HasSuffix(p, ".go"):
			return nil
		}
		text, err := os.ReadFile(p)
		for _, m := range pattern.FindAllStringSubmatch(string(text), -1) {
			used[m[1]] = p
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(used) < 80 {
		t.Fatalf("found %d rule ids, expected at least 80: do the patterns still fit?", len(used))
	}
	var known []string
	for r := range tables.Default().Rules() {
		known = append(known, string(r.ID))
		if _, ok := used[string(r.ID)]; !ok {
			t.Errorf("the registry holds %q, which nobody uses", r.ID)
		}
	}
	for id, file := range used {
		if !slices.Contains(known, id) {
			t.Errorf("%s names %q, which the registry does not hold", file, id)
		}
	}
}
