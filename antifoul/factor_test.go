package antifoul_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
)

var factorInCode = regexp.MustCompile(`(?:factor\(\w+, |\.Factor\()"([a-z0-9-]+)"`)

// Every number that code asks the factor table for is a row of it, and every row is asked for.
func TestFactorsAreRows(t *testing.T) {
	used := map[string]bool{}
	var code strings.Builder
	root := ".."
	err := filepath.WalkDir(root, func(p string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return err
		}
		text, err := os.ReadFile(p)
		code.Write(text)
		for _, m := range factorInCode.FindAllStringSubmatch(string(text), -1) {
			used[m[1]] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(used) < 12 {
		t.Fatalf("found %d factor keys, expected at least 12: does the pattern still fit?", len(used))
	}
	b := tables.Default()
	for key := range used {
		if _, err := b.Factor(key); err != nil {
			t.Errorf("code asks for the factor %q: %v", key, err)
		}
	}
	for f := range b.Factors() {
		if !strings.Contains(code.String(), `"`+f.Key+`"`) { // a key may also stand in a list of keys
			t.Errorf("nobody asks for the factor %q", f.Key)
		}
	}
}
