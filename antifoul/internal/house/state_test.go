package house

import (
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
)

func TestNobodyKeepsState(t *testing.T) {
	for _, b := range State(goFiles(t, moduleRoot(t))) {
		t.Error(b)
	}
}

func TestState(t *testing.T) {
	for name, c := range map[string]struct {
		src  string
		want []string
	}{
		"clean":                    {src: "import \"errors\"\nvar ErrX = errors.New(\"x\")\nvar words = []string{\"a\"}\nfunc f() { words := 1; words++; _ = words }\nfunc g(words []string) { words[0] = \"\" }"},
		"an exported variable":     {"var Words = []string{\"a\"}", []string{"tables/x.go:2: Words is an exported variable that is no error: whoever imports the package can set it"}},
		"an error by another name": {"import \"errors\"\nvar Bad = errors.New(\"x\")", []string{"tables/x.go:3: Bad is an exported variable that is no error: whoever imports the package can set it"}},
		"no error by this name":    {"var ErrX = 5", []string{"tables/x.go:2: ErrX is an exported variable that is no error: whoever imports the package can set it"}},
		"init":                     {"func init() {}", []string{"tables/x.go:2: init runs when the package is imported: importing does nothing"}},
		"a method called init":     {"type t int\nfunc (t) init() {}", nil},
		"set":                      {"var a int\nfunc f() { a = 1 }", []string{"tables/x.go:3: a is a variable of the package and is changed"}},
		"counted":                  {"var a int\nfunc f() { a++ }", []string{"tables/x.go:3: a is a variable of the package and is changed"}},
		"an element":               {"var a []struct{ b int }\nfunc f() { a[0].b = 1 }", []string{"tables/x.go:3: a is a variable of the package and is changed"}},
		"cleared":                  {"var a map[int]int\nfunc f() { clear(a) }", []string{"tables/x.go:3: a is a variable of the package and is changed"}},
		"deleted from":             {"var a map[int]int\nfunc f() { delete(a, 1) }", []string{"tables/x.go:3: a is a variable of the package and is changed"}},
		"copied into":              {"var a []int\nfunc f(b []int) { copy(a[1:], b) }", []string{"tables/x.go:3: a is a variable of the package and is changed"}},
		"pointed at":               {"var a int\nfunc f() *int { return &a }", nil},
		"ranged into":              {"var a int\nfunc f(b []int) { for a = range b { } }", []string{"tables/x.go:3: a is a variable of the package and is changed"}},
		"hidden by another":        {"var a int\nfunc f() { var a int; a = 1; _ = a }", nil},
		"no Go":                    {"func {", []string{"tables/x.go does not parse: tables/x.go:2:6: expected 'IDENT', found '{'"}},
	} {
		t.Run(name, func(t *testing.T) {
			fsys := fstest.MapFS{"tables/x.go": {Data: []byte("package tables\n" + c.src)}, "examples/x/x.go": {Data: []byte("package main\nvar X int")}}
			if diff := cmp.Diff(c.want, State(fsys)); diff != "" {
				t.Errorf("breaches (-want +got):\n%s", diff)
			}
		})
	}
}

// A variable of another file of the package is one of the package.
func TestStateAcrossFiles(t *testing.T) {
	fsys := fstest.MapFS{"tables/a.go": {Data: []byte("package tables\nvar seen int")}, "tables/b.go": {Data: []byte("package tables\nfunc f() { seen = 1 }")}, "compat/b.go": {Data: []byte("package compat\nfunc f(seen int) { seen = 1 }")}}
	if got := State(fsys); len(got) != 1 || got[0] != "tables/b.go:2: seen is a variable of the package and is changed" {
		t.Errorf("%q", got)
	}
}
