package compat_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"slices"
	"strconv"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/google/go-cmp/cmp"
)

// Every rule that the code or a row names stands in rules_compat.toml, and every rule that stands there is named.
func TestRulesAreThoseOfTheRegistry(t *testing.T) {
	used := map[string]bool{}
	f, err := parser.ParseFile(token.NewFileSet(), "rule.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	consts := 0
	ast.Inspect(f, func(n ast.Node) bool {
		v, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		for _, e := range v.Values {
			id, err := strconv.Unquote(e.(*ast.BasicLit).Value)
			if err != nil {
				t.Fatal(err)
			}
			used[id] = true
			consts++
		}
		return false
	})
	rows := 0
	b := book(t)
	for o := range b.Overcoats() {
		used[string(o.Rule)] = true
		rows++
	}
	for c := range b.Conditions() {
		used[string(c.Rule)] = true
		rows++
	}
	if consts < 30 || rows < 50 {
		t.Fatalf("%d constants and %d rows read: the search is broken", consts, rows)
	}
	var file struct {
		Rule []struct{ Key string }
	}
	if _, err := toml.DecodeFile("../tables/data/rules_compat.toml", &file); err != nil {
		t.Fatal(err)
	}
	var registry []string
	for _, r := range file.Rule {
		registry = append(registry, r.Key)
	}
	slices.Sort(registry)
	if diff := cmp.Diff(registry, slices.Sorted(maps.Keys(used))); diff != "" {
		t.Errorf("rules (-registry +used):\n%s", diff)
	}
}
