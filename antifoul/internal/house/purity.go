package house

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
)

// barred says why a package may not be imported, or nothing if it may.
// What holds for a package holds for all below it, as in os/exec.
func barred(pkg string) string {
	switch {
	case pkg == "os", pkg == "io/ioutil", pkg == "syscall", strings.HasPrefix(pkg, "os/"):
		return "reaches the machine"
	case pkg == "path/filepath":
		return "differs from machine to machine; fs.FS goes with path"
	case pkg == "log", strings.HasPrefix(pkg, "log/"):
		return "logs"
	case pkg == "net", strings.HasPrefix(pkg, "net/"):
		return "reaches the network"
	case pkg == "math/rand":
		return "draws from a shared source; take a seeded math/rand/v2 source as an argument"
	case pkg == "crypto/rand":
		return "draws anew each time"
	case pkg == "time/tzdata":
		return "brings a time-zone database"
	}
	return ""
}

// barredName says why a name of a permitted package may not be used, or nothing
// if it may.
func barredName(pkg, name string) string {
	switch pkg {
	case "time":
		switch name {
		case "Now", "Since", "Until", "After", "AfterFunc", "Sleep", "Tick", "NewTicker", "NewTimer":
			return "reads the clock"
		case "LoadLocation", "Local":
			return "looks up a time zone"
		}
	case "fmt":
		if strings.HasPrefix(name, "Print") {
			return "prints to nobody's writer"
		}
		if strings.HasPrefix(name, "Scan") {
			return "reads nobody's reader"
		}
	case "math/rand/v2":
		switch name {
		case "New", "NewPCG", "NewChaCha8", "NewZipf", "Rand", "Source", "PCG", "ChaCha8", "Zipf":
		default:
			return "draws from a shared source"
		}
	}
	return ""
}

// Purity returns one sentence for each impure thing in the module's Go files,
// by file and then by line, and none when all is pure. fsys is the module's
// root. A file that cannot be read or parsed is a breach too.
//
// Looked for are imports that reach the machine, the network, a log or a shared
// random source; names that read the clock, look up a time zone, print or scan;
// and calls of panic, print and println. Names are followed through renamed
// imports; a dot import of a watched package is a breach by itself. Test
// files, examples, this package, testdata and folders that the go command
// passes over are not looked at.
//
// Basis: common practice.
func Purity(fsys fs.FS) []string {
	var breaches []string
	err := fs.WalkDir(fsys, ".", func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			breaches = append(breaches, fmt.Sprintf("%s: %v", file, err))
			return nil
		}
		if d.IsDir() {
			if passedOver(file) {
				return fs.SkipDir
			}
			return nil
		}
		if strings.HasSuffix(file, ".go") && !strings.HasSuffix(file, "_test.go") {
			breaches = append(breaches, impure(fsys, file)...)
		}
		return nil
	})
	if err != nil {
		breaches = append(breaches, err.Error())
	}
	return breaches
}

// passedOver reports whether a folder is none of the pure floors.
func passedOver(dir string) bool {
	base := path.Base(dir)
	hidden := dir != "." && (strings.HasPrefix(base, ".") || strings.HasPrefix(base, "_"))
	return hidden || base == "testdata" || dir == "examples" || dir == self
}

// impure returns the breaches of one file.
func impure(fsys fs.FS, file string) []string {
	src, err := fs.ReadFile(fsys, file)
	if err != nil {
		return []string{fmt.Sprintf("%s: %v", file, err)}
	}
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, file, src, parser.SkipObjectResolution)
	if err != nil {
		return []string{fmt.Sprintf("%s does not parse: %v", file, err)}
	}
	var breaches []string
	report := func(at token.Pos, what, why string) {
		if why != "" {
			breaches = append(breaches, fmt.Sprintf("%s:%d: %s %s", file, set.Position(at).Line, what, why))
		}
	}
	local := map[string]string{} // name in this file → import path
	for _, spec := range tree.Imports {
		pkg, _ := strconv.Unquote(spec.Path.Value) // the parser has checked it
		report(spec.Pos(), "import of "+pkg, barred(pkg))
		switch {
		case spec.Name == nil:
			local[defaultName(pkg)] = pkg
		case spec.Name.Name == ".":
			if slices.Contains([]string{"time", "fmt", "math/rand/v2"}, pkg) {
				report(spec.Pos(), "dot import of "+pkg, "hides what is used")
			}
		default:
			local[spec.Name.Name] = pkg
		}
	}
	ast.Inspect(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.SelectorExpr:
			if x, ok := n.X.(*ast.Ident); ok {
				pkg := local[x.Name]
				report(n.Pos(), pkg+"."+n.Sel.Name, barredName(pkg, n.Sel.Name))
			}
		case *ast.CallExpr:
			if f, ok := n.Fun.(*ast.Ident); ok && slices.Contains([]string{"panic", "print", "println"}, f.Name) {
				report(n.Pos(), f.Name, "is called; return an error or write to the writer given")
			}
		}
		return true
	})
	return breaches
}

// defaultName is the name by which an unrenamed import is used: the last part
// of its path, or the one before a version.
func defaultName(pkg string) string {
	base := path.Base(pkg)
	if len(base) > 1 && base[0] == 'v' && strings.Trim(base[1:], "0123456789") == "" {
		return path.Base(path.Dir(pkg))
	}
	return base
}
