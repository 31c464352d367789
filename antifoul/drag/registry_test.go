package drag

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
)

// Every rule id of rule.go is a row of the registry, and every row whose key begins with drag- is used here.
func TestRegistryBothWays(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "rule.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var used []string
	ast.Inspect(file, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			if s, err := strconv.Unquote(lit.Value); err == nil && strings.HasPrefix(s, "drag-") {
				used = append(used, s)
			}
		}
		return true
	})
	var rows []string
	for r := range tables.Default().Rules() {
		if strings.HasPrefix(string(r.ID), "drag-") {
			rows = append(rows, string(r.ID))
		}
	}
	slices.Sort(used)
	slices.Sort(rows)
	if len(used) == 0 || !slices.Equal(used, rows) {
		t.Errorf("used %v\nrows %v", used, rows)
	}
}
