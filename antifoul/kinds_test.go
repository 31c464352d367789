package antifoul_test

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Each kind of fault that package finding declares is met from outside, by a boat file or an own table with that one mistake, and no other kind with it.
func TestEveryKindOfFaultCanBeMet(t *testing.T) {
	boat := func(old, with string) func() error {
		if !strings.Contains(base, old) {
			t.Fatalf("the base boat has no %q", old)
		}
		return func() error {
			_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(strings.Replace(base, old, with, 1))}}, "boat.toml")
			return err
		}
	}
	own := func(text string) func() error {
		return func() error {
			_, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(text)}})
			return err
		}
	}
	const basis = "basis = \"own table\"\nsource = \"a sheet\"\n"
	cases := map[string]struct {
		kind error
		meet func() error
	}{
		"ErrSyntax":     {finding.ErrSyntax, boat("[boat]", "[boat")},
		"ErrUnknownKey": {finding.ErrUnknownKey, boat("[boat]", "[boat]\ncolor = \"red\"")},
		"ErrMissing":    {finding.ErrMissing, boat("date = 2027-04-03", "")},
		"ErrValue":      {finding.ErrValue, boat("speed = \"", "speed = \"fast ")},
		"ErrImpossible": {finding.ErrImpossible, boat("draft = \"", "draft = \"9")},
		"ErrUnknown":    {finding.ErrUnknown, boat("material = \"grp\"", "material = \"gpr\"")},
		"ErrDuplicate":  {finding.ErrDuplicate, own("[[can]]\nkey = \"a\"\nsize = \"1 L\"\n" + basis + "[[can]]\nkey = \"a\"\nsize = \"1 L\"\n" + basis)},
		"ErrBasis":      {finding.ErrBasis, own("[[can]]\nkey = \"a\"\nsize = \"1 L\"\n")},
		"ErrSafety":     {finding.ErrSafety, own("[[material]]\nkey = \"aluminium\"\n" + basis + "barrier_film = [\"400 um\", \"450 um\", \"500 um\"]\n")},
	}
	for name, c := range cases {
		fs, ok := errors.AsType[finding.Faults](c.meet())
		if !ok {
			t.Errorf("%s: no faults", name)
			continue
		}
		for _, f := range fs {
			if !errors.Is(f, c.kind) {
				t.Errorf("%s: met %v", name, f)
			}
		}
	}
	tree, err := parser.ParseFile(token.NewFileSet(), "../tables/finding/fault.go", nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	declared := 0
	ast.Inspect(tree, func(n ast.Node) bool {
		if s, ok := n.(*ast.ValueSpec); ok && strings.HasPrefix(s.Names[0].Name, "Err") {
			declared++
			if _, met := cases[s.Names[0].Name]; !met {
				t.Errorf("%s is declared and nothing here meets it", s.Names[0].Name)
			}
		}
		return true
	})
	if declared != len(cases) {
		t.Errorf("%d kinds are declared, %d met", declared, len(cases))
	}
}
