package house

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
)

// State returns one sentence for each thing by which a package of the module
// could keep or share state, by file and then by line, and none when importing
// it changes nothing and nothing can be changed through it. fsys is the
// module's root; what Purity passes over is passed over here.
//
// A breach is one of these:
//  1. an exported package-level variable, unless it is made by errors.New and
//     called Err…: an importer could set any other;
//  2. a function init: importing does nothing;
//  3. a package-level variable, exported or not, that a function assigns to,
//     counts up, clears, deletes from or copies into.
//
// A package-level variable is known by its name within its package. Not seen is
// what is changed through a second name or an address; the race detector and the
// tests of what packages hand out look there.
//
// Basis: common practice.
func State(fsys fs.FS) []string {
	packages, breaches := libraryFiles(fsys)
	for _, dir := range slices.Sorted(maps.Keys(packages)) {
		breaches = append(breaches, stateful(packages[dir])...)
	}
	return breaches
}

// parsed is a file of a package.
type parsed struct {
	name string
	set  *token.FileSet
	tree *ast.File
}

func (p parsed) at(pos token.Pos, format string, args ...any) string {
	return fmt.Sprintf("%s:%d: ", p.name, p.set.Position(pos).Line) + fmt.Sprintf(format, args...)
}

// libraryFiles parses the files of the pure floors, by folder and in order. What
// cannot be read or parsed is a breach.
func libraryFiles(fsys fs.FS) (packages map[string][]parsed, breaches []string) {
	packages = map[string][]parsed{}
	err := fs.WalkDir(fsys, ".", func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && passedOver(file):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go"):
			return nil
		}
		src, err := fs.ReadFile(fsys, file)
		if err != nil {
			return err
		}
		set := token.NewFileSet()
		tree, err := parser.ParseFile(set, file, src, parser.ParseComments)
		if err != nil {
			breaches = append(breaches, fmt.Sprintf("%s does not parse: %v", file, err))
			return nil
		}
		packages[path.Dir(file)] = append(packages[path.Dir(file)], parsed{file, set, tree})
		return nil
	})
	if err != nil {
		breaches = append(breaches, err.Error())
	}
	return packages, breaches
}

// stateful returns the breaches of one package.
func stateful(files []parsed) []string {
	var breaches []string
	vars := map[string]bool{}
	specs := map[any]bool{}
	for _, f := range files {
		for _, d := range f.tree.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.VAR {
				continue
			}
			for _, s := range g.Specs {
				spec := s.(*ast.ValueSpec) //nolint:forcetypeassert // var declares nothing else
				specs[spec] = true
				for i, n := range spec.Names {
					vars[n.Name] = n.Name != "_"
					if n.IsExported() && !isError(spec, i) {
						breaches = append(breaches, f.at(n.Pos(), "%s is an exported variable that is no error: whoever imports the package can set it", n.Name))
					}
				}
			}
		}
	}
	for _, f := range files {
		for _, d := range f.tree.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Body == nil {
				continue
			}
			if fn.Recv == nil && fn.Name.Name == "init" {
				breaches = append(breaches, f.at(fn.Pos(), "init runs when the package is imported: importing does nothing"))
			}
			for _, id := range written(fn.Body) {
				if vars[id.Name] && (id.Obj == nil || specs[id.Obj.Decl]) {
					breaches = append(breaches, f.at(id.Pos(), "%s is a variable of the package and is changed", id.Name))
				}
			}
		}
	}
	return breaches
}

// isError reports whether a variable is an error that errors.New makes.
func isError(spec *ast.ValueSpec, i int) bool {
	if !strings.HasPrefix(spec.Names[i].Name, "Err") || i >= len(spec.Values) {
		return false
	}
	call, ok := spec.Values[i].(*ast.CallExpr)
	if !ok {
		return false
	}
	sel, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	x, ok := sel.X.(*ast.Ident)
	return ok && x.Name == "errors" && sel.Sel.Name == "New"
}

// written lists the names at the root of whatever a body sets, counts, clears,
// deletes from or copies into.
func written(body *ast.BlockStmt) []*ast.Ident {
	var out []*ast.Ident
	note := func(e ast.Expr) {
		if id := root(e); id != nil {
			out = append(out, id)
		}
	}
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			if n.Tok != token.DEFINE {
				for _, e := range n.Lhs {
					note(e)
				}
			}
		case *ast.IncDecStmt:
			note(n.X)
		case *ast.RangeStmt:
			if n.Tok == token.ASSIGN {
				note(n.Key)
				note(n.Value)
			}
		case *ast.CallExpr:
			if f, ok := n.Fun.(*ast.Ident); ok && len(n.Args) > 0 && slices.Contains([]string{"clear", "delete", "copy"}, f.Name) {
				note(n.Args[0])
			}
		}
		return true
	})
	return out
}

// root is the variable at the left end of x.y[i].z, or nil.
func root(e ast.Expr) *ast.Ident {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return x
		case *ast.SelectorExpr:
			e = x.X
		case *ast.IndexExpr:
			e = x.X
		case *ast.SliceExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		default:
			return nil
		}
	}
}
