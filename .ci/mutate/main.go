// Command mutate asks whether the tests would notice: it changes one thing at a time in lines that tests cover, runs the tests, and lists the changes that
// nobody noticed.
//
//	go run ./.ci/mutate -pkg ./compat -n 50 -seed 1 ./compat ./antifoul ./examples/bottomjob
//
// The arguments are the packages whose tests are run for each change, in this order, until one fails. Sources stay as they are: changes are laid over them. A
// change that does not compile counts for nothing and is drawn anew. It exits 1 when less than the share of -want was noticed.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

func main() {
	pkg := flag.String("pkg", "", "package `folder` to change")
	n := flag.Int("n", 50, "`number` of changes")
	seed := flag.Uint64("seed", 1, "of the draw")
	want := flag.Float64("want", 0.9, "`share` that must be noticed")
	wait := flag.Duration("timeout", 3*time.Minute, "of the tests of one change; a change that hangs is noticed")
	flag.Parse()
	if *pkg == "" || flag.NArg() == 0 {
		fail("taken: -pkg folder, and the packages whose tests are run")
	}
	covered, err := coverage(*pkg, flag.Args())
	if err != nil {
		fail(err.Error())
	}
	points, err := collect(*pkg, covered)
	if err != nil {
		fail(err.Error())
	}
	r := rand.New(rand.NewPCG(*seed, 0))
	r.Shuffle(len(points), func(i, j int) { points[i], points[j] = points[j], points[i] })
	fmt.Printf("%s: %d changes possible in covered lines\n", *pkg, len(points))
	tried, noticed := 0, 0
	for _, p := range points {
		if tried == *n {
			break
		}
		switch out := try(p, flag.Args(), *wait); out {
		case broken:
			continue
		case killed:
			noticed++
		case lived:
			fmt.Printf("NOT NOTICED %s: %s\n", p.at, p.what)
		}
		tried++
	}
	if tried == 0 {
		fail("no change could be tried")
	}
	share := float64(noticed) / float64(tried)
	fmt.Printf("%s: %d of %d changes noticed, %.0f %%\n", *pkg, noticed, tried, 100*share)
	if share < *want {
		os.Exit(1)
	}
}

func fail(why string) {
	fmt.Fprintln(os.Stderr, why)
	os.Exit(2)
}

// point is one change: the file as it reads with it.
type point struct {
	file string // absolute
	at   string // file:line for the reader
	what string
	text []byte
}

type outcome int

const (
	lived outcome = iota
	killed
	broken
)

// try lays the change over the sources and runs the tests, package by package, until one fails.
func try(p point, tests []string, wait time.Duration) outcome {
	dir, err := os.MkdirTemp("", "mutate-*")
	if err != nil {
		fail(err.Error())
	}
	defer os.RemoveAll(dir)
	changed := filepath.Join(dir, filepath.Base(p.file))
	overlay := filepath.Join(dir, "overlay.json")
	data, err := json.Marshal(map[string]map[string]string{"Replace": {p.file: changed}})
	if err != nil {
		fail(err.Error())
	}
	for name, text := range map[string][]byte{changed: p.text, overlay: data} {
		if err := os.WriteFile(name, text, 0o600); err != nil {
			fail(err.Error())
		}
	}
	if out, err := exec.Command("go", "build", "-overlay", overlay, "./"+rel(filepath.Dir(p.file))).CombinedOutput(); err != nil {
		_ = out
		return broken
	}
	for _, t := range tests {
		out, err := exec.Command("go", "test", "-overlay", overlay, "-vet=off", "-failfast", "-count=1", "-timeout", wait.String(), t).CombinedOutput()
		if err != nil {
			if strings.Contains(string(out), "[build failed]") {
				return broken
			}
			return killed
		}
	}
	return lived
}

func rel(dir string) string {
	wd, err := os.Getwd()
	if err != nil {
		fail(err.Error())
	}
	out, err := filepath.Rel(wd, dir)
	if err != nil {
		fail(err.Error())
	}
	return filepath.ToSlash(out)
}

// coverage returns the lines of the package that the tests run, by the base name of the file.
func coverage(pkg string, tests []string) (map[string]map[int]bool, error) {
	profile, err := os.CreateTemp("", "mutate-*.cover")
	if err != nil {
		return nil, err
	}
	defer os.Remove(profile.Name())
	args := append([]string{"test", "-count=1", "-short", "-coverpkg", pkg, "-coverprofile", profile.Name()}, tests...)
	if out, err := exec.Command("go", args...).CombinedOutput(); err != nil && !strings.Contains(string(out), "coverage:") {
		return nil, fmt.Errorf("%w: %s", err, out)
	}
	text, err := os.ReadFile(profile.Name())
	if err != nil {
		return nil, err
	}
	out := map[string]map[int]bool{}
	for line := range strings.Lines(string(text)) {
		// path/file.go:from.col,to.col statements count
		name, rest, ok := strings.Cut(strings.TrimSpace(line), ".go:")
		fields := strings.Fields(rest)
		if !ok || len(fields) != 3 || fields[2] == "0" {
			continue
		}
		from, to, _ := strings.Cut(fields[0], ",")
		a, b := lineOf(from), lineOf(to)
		file := filepath.Base(name) + ".go"
		if out[file] == nil {
			out[file] = map[int]bool{}
		}
		for l := a; l <= b; l++ {
			out[file][l] = true
		}
	}
	return out, nil
}

func lineOf(s string) int {
	l, _, _ := strings.Cut(s, ".")
	n, _ := strconv.Atoi(l)
	return n
}

// swaps are the operators and what each is changed into.
var swaps = map[token.Token][]token.Token{
	token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR}, token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
	token.EQL: {token.NEQ}, token.NEQ: {token.EQL}, token.LAND: {token.LOR}, token.LOR: {token.LAND},
	token.ADD: {token.SUB}, token.SUB: {token.ADD}, token.MUL: {token.QUO}, token.QUO: {token.MUL},
}

// collect lists every change in covered lines of the package.
func collect(pkg string, covered map[string]map[int]bool) ([]point, error) {
	names, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		return nil, err
	}
	var out []point
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := filepath.Abs(name)
		if err != nil {
			return nil, err
		}
		fset := token.NewFileSet()
		tree, err := parser.ParseFile(fset, file, nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		// note keeps the file as it reads now, with the change in it.
		note := func(pos token.Pos, what string) {
			line := fset.Position(pos).Line
			if !covered[filepath.Base(name)][line] {
				return
			}
			var text strings.Builder
			if printer.Fprint(&text, fset, tree) == nil {
				out = append(out, point{file, fmt.Sprintf("%s:%d", name, line), what, []byte(text.String())})
			}
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				was := n.Op
				for _, op := range swaps[was] {
					n.Op = op
					note(n.OpPos, was.String()+" is "+op.String())
				}
				n.Op = was
			case *ast.UnaryExpr:
				if n.Op == token.NOT {
					was := n.X
					n.X = &ast.UnaryExpr{Op: token.NOT, X: &ast.ParenExpr{X: was}}
					note(n.OpPos, "! is left out")
					n.X = was
				}
			case *ast.IfStmt:
				was := n.Cond
				n.Cond = &ast.UnaryExpr{Op: token.NOT, X: &ast.ParenExpr{X: was}}
				note(n.If, "the condition is turned round")
				n.Cond = was
			case *ast.IncDecStmt:
				was := n.Tok
				n.Tok = map[token.Token]token.Token{token.INC: token.DEC, token.DEC: token.INC}[was]
				note(n.TokPos, was.String()+" is "+n.Tok.String())
				n.Tok = was
			case *ast.BasicLit:
				if n.Kind == token.INT || n.Kind == token.FLOAT {
					was := n.Value
					n.Value = "(" + was + " + 1)"
					note(n.Pos(), was+" is one more")
					n.Value = was
				}
			case *ast.BlockStmt:
				for i, s := range n.List {
					if !drops(s) {
						continue
					}
					was := n.List
					n.List = slices.Concat(was[:i:i], was[i+1:])
					note(s.Pos(), "the statement is left out")
					n.List = was
				}
			}
			return true
		})
	}
	return out, nil
}

// drops reports whether leaving the statement out is a change worth trying: calls, assignments to what stands already, jumps.
func drops(s ast.Stmt) bool {
	switch s := s.(type) {
	case *ast.ExprStmt:
		return true
	case *ast.AssignStmt:
		return s.Tok != token.DEFINE
	case *ast.BranchStmt:
		return s.Label == nil
	}
	return false
}
