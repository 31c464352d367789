// Command api lists what the module promises in Go: every exported name of every
// package outside internal and the examples, one a line, sorted. It compares the
// list with the one kept in .ci/api.txt and prints what went (-) and came (+).
//
//	go run ./.ci/api          # exits 1 where they differ
//	go run ./.ci/api -write   # keeps the list as it is now
//
// A line has the package, then a constant with its value, a variable, a function
// or method with its types, a type with what it is, or a field. Names of
// arguments do not count, what is not exported neither, but that == does not
// compile for a type does.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"go/importer"
	"go/token"
	"go/types"
	"io"
	"maps"
	"os"
	"os/exec"
	"slices"
	"strings"
)

var errDiffers = errors.New("the exported names are not those of the list: if that is meant, run go run ./.ci/api -write and say so in the release's notes (DEVELOPERS.md, What is API)")

func main() {
	kept := flag.String("kept", ".ci/api.txt", "the list, a `file`")
	write := flag.Bool("write", false, "write the list again")
	flag.Parse()
	if err := run(*kept, *write); err != nil {
		fmt.Fprintln(os.Stderr, err) //nolint:errcheck // nowhere left to say it
		os.Exit(1)
	}
}

func run(kept string, write bool) error {
	lines, err := list()
	if err != nil {
		return err
	}
	if write {
		return os.WriteFile(kept, []byte(strings.Join(lines, "\n")+"\n"), 0o644)
	}
	data, err := os.ReadFile(kept)
	if err != nil {
		return err
	}
	was, is := map[string]bool{}, map[string]bool{}
	for l := range strings.Lines(string(data)) {
		was[strings.TrimSuffix(l, "\n")] = true
	}
	for _, l := range lines {
		is[l] = true
	}
	differs := false
	for _, l := range slices.Sorted(maps.Keys(was)) {
		if !is[l] {
			differs = true
			fmt.Println("-", l)
		}
	}
	for _, l := range lines {
		if !was[l] {
			differs = true
			fmt.Println("+", l)
		}
	}
	if differs {
		return errDiffers
	}
	return nil
}

// list asks the go command for the packages and reads what it compiled of them.
func list() ([]string, error) {
	out, err := golist("-m")
	if err != nil {
		return nil, err
	}
	module := strings.TrimSpace(out)
	out, err = golist("-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}", "./...")
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	for l := range strings.Lines(out) {
		path, file, _ := strings.Cut(strings.TrimSpace(l), " ")
		exports[path] = file
	}
	imp := importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	var lines []string
	for _, path := range slices.Sorted(maps.Keys(exports)) {
		rest, own := strings.CutPrefix(path, module+"/")
		if !own || strings.HasPrefix(rest, "examples/") || strings.HasPrefix(rest, ".ci/") || slices.Contains(strings.Split(rest, "/"), "internal") {
			continue
		}
		pkg, err := imp.Import(path)
		if err != nil {
			return nil, err
		}
		lines = append(lines, declared(rest, pkg)...)
	}
	if len(lines) < 500 {
		return nil, fmt.Errorf("only %d exported names are found: does the walk still fit?", len(lines))
	}
	slices.Sort(lines)
	return slices.Compact(lines), nil
}

func golist(args ...string) (string, error) {
	cmd := exec.Command("go", append([]string{"list"}, args...)...)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("%w\n%s", err, &stderr)
	}
	return string(out), nil
}

// declared gives the lines of one package.
func declared(name string, pkg *types.Package) []string {
	var lines []string
	say := func(format string, args ...any) { lines = append(lines, name+": "+fmt.Sprintf(format, args...)) }
	// Names of other packages by their last part, those of this one bare.
	short := func(p *types.Package) string {
		if p == pkg {
			return ""
		}
		return p.Name()
	}
	word := func(t types.Type) string { return types.TypeString(t, short) }
	scope := pkg.Scope()
	for _, n := range scope.Names() {
		o := scope.Lookup(n)
		if !o.Exported() {
			continue
		}
		switch o := o.(type) {
		case *types.Const:
			say("const %s %s = %s", n, word(o.Type()), o.Val().ExactString())
		case *types.Var:
			say("var %s %s", n, word(o.Type()))
		case *types.Func:
			say("func %s%s%s", n, params(o.Signature().TypeParams(), word), strings.TrimPrefix(word(unnamed(o.Signature())), "func"))
		case *types.TypeName:
			lines = append(lines, typeLines(name, n, o, word)...)
		}
	}
	return lines
}

// typeLines gives the lines of one type: what it is, its fields, its methods.
func typeLines(name, n string, o *types.TypeName, word func(types.Type) string) []string {
	var lines []string
	say := func(format string, args ...any) { lines = append(lines, name+": "+fmt.Sprintf(format, args...)) }
	if o.IsAlias() {
		say("type %s = %s", n, word(types.Unalias(o.Type())))
		return lines
	}
	named, ok := o.Type().(*types.Named)
	if !ok {
		say("type %s %s", n, word(o.Type().Underlying()))
		return lines
	}
	if p := named.TypeParams(); p.Len() > 0 {
		say("type %s%s", n, params(p, word))
	}
	equal := ""
	if !types.Comparable(named) {
		equal = ", not comparable"
	}
	if s, ok := named.Underlying().(*types.Struct); ok {
		closed := ""
		for f := range s.Fields() {
			if f.Exported() {
				say("type %s struct, %s %s", n, f.Name(), word(f.Type()))
			} else {
				closed = ", with more that is not exported"
			}
		}
		say("type %s struct%s%s", n, closed, equal)
	} else {
		say("type %s %s%s", n, word(named.Underlying()), equal)
	}
	for m := range named.Methods() {
		if !m.Exported() {
			continue
		}
		star := ""
		if _, ok := m.Signature().Recv().Type().(*types.Pointer); ok {
			star = "*"
		}
		say("method (%s%s) %s%s", star, n, m.Name(), strings.TrimPrefix(word(unnamed(m.Signature())), "func"))
	}
	return lines
}

func params(p *types.TypeParamList, word func(types.Type) string) string {
	if p.Len() == 0 {
		return ""
	}
	var out []string
	for t := range p.TypeParams() {
		out = append(out, t.Obj().Name()+" "+word(t.Constraint()))
	}
	return "[" + strings.Join(out, ", ") + "]"
}

// unnamed is the signature without names of arguments, which promise nothing.
func unnamed(s *types.Signature) *types.Signature {
	bare := func(t *types.Tuple) *types.Tuple {
		var vs []*types.Var
		for v := range t.Variables() {
			vs = append(vs, types.NewParam(token.NoPos, nil, "", v.Type()))
		}
		return types.NewTuple(vs...)
	}
	return types.NewSignatureType(nil, nil, nil, bare(s.Params()), bare(s.Results()), s.Variadic())
}
