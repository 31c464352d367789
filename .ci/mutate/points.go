package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// point is one change: the body of a function as it reads with it.
type point struct {
	id   int
	file string // as the reader names it
	at   string // file:line
	num  int    // the line by which its tests are told: its own, or of what stands behind a case that of the switch
	line string // of the source, trimmed
	what string
	off  int    // where the body's brace stands in the file
	void bool   // the function returns nothing
	body string // with its braces
}

// swaps are the operators and what each is changed into.
var swaps = map[token.Token][]token.Token{
	token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR}, token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
	token.EQL: {token.NEQ}, token.NEQ: {token.EQL}, token.LAND: {token.LOR}, token.LOR: {token.LAND},
	token.ADD: {token.SUB}, token.SUB: {token.ADD}, token.MUL: {token.QUO}, token.QUO: {token.MUL},
}

// collect lists every change in covered lines of the package.
func collect(pkg string, covered lines) ([]point, error) {
	names, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		return nil, err
	}
	var out []point
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		src, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		f := source{name: name, lines: strings.Split(string(src), "\n"), covered: covered[filepath.Base(name)], fset: token.NewFileSet()}
		tree, err := parser.ParseFile(f.fset, name, src, 0)
		if err != nil {
			return nil, err
		}
		// The outermost functions: those of declarations, and those inside package variables.
		ast.Inspect(tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				f.function(n.Type, n.Body)
				return false
			case *ast.FuncLit:
				f.function(n.Type, n.Body)
				return false
			}
			return true
		})
		out = append(out, f.points...)
	}
	for i := range out {
		out[i].id = i + 1
	}
	return out, nil
}

// source is one file on the way through it.
type source struct {
	name    string
	lines   []string
	covered map[int]bool
	fset    *token.FileSet
	points  []point
	asked   []asked
	kind    *ast.FuncType // the function that is gone through
	body    *ast.BlockStmt
}

// function notes every change of one function.
func (f *source) function(kind *ast.FuncType, body *ast.BlockStmt) {
	if body == nil {
		return
	}
	f.kind, f.body = kind, body
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.SwitchStmt:
			f.cases(n)
		case *ast.CallExpr:
			if f, ok := n.Fun.(*ast.Ident); ok && f.Name == "make" && len(n.Args) == 3 {
				return false // nobody notices how much room there is
			}
		case *ast.BinaryExpr:
			was := n.Op
			for _, op := range swaps[was] {
				n.Op = op
				f.note(n.OpPos, was.String()+" is "+op.String())
			}
			n.Op = was
		case *ast.UnaryExpr:
			if n.Op == token.NOT {
				was := n.X
				n.X = &ast.UnaryExpr{Op: token.NOT, X: &ast.ParenExpr{X: was}}
				f.note(n.OpPos, "! is left out")
				n.X = was
			}
		case *ast.IfStmt:
			was := n.Cond
			n.Cond = &ast.UnaryExpr{Op: token.NOT, X: &ast.ParenExpr{X: was}}
			f.note(n.If, "the condition is turned round")
			n.Cond = was
		case *ast.IncDecStmt:
			was := n.Tok
			n.Tok = map[token.Token]token.Token{token.INC: token.DEC, token.DEC: token.INC}[was]
			f.note(n.TokPos, was.String()+" is "+n.Tok.String())
			n.Tok = was
		case *ast.BasicLit:
			if n.Kind == token.INT || n.Kind == token.FLOAT {
				was := n.Value
				n.Value = "(" + was + " + 1)"
				f.note(n.Pos(), was+" is one more")
				n.Value = was
			}
		case *ast.BlockStmt:
			n.List = f.without(n.List, func(l []ast.Stmt) { n.List = l })
		case *ast.CaseClause:
			n.Body = f.without(n.Body, func(l []ast.Stmt) { n.Body = l })
		}
		return true
	})
}

// cases keeps the line of the switch for the conditions of its cases: every test that comes to the switch may ask them, not only those that go into them.
func (f *source) cases(n *ast.SwitchStmt) {
	for _, s := range n.Body.List {
		if c, ok := s.(*ast.CaseClause); ok {
			for _, e := range c.List {
				f.asked = append(f.asked, asked{e.Pos(), e.End(), f.fset.Position(n.Pos()).Line})
			}
		}
	}
}

// asked is a condition that is reached where another line is.
type asked struct {
	from, to token.Pos
	line     int
}

// without notes each statement's absence, and gives the whole list back.
func (f *source) without(was []ast.Stmt, set func([]ast.Stmt)) []ast.Stmt {
	for i, s := range was {
		if drops(s) {
			set(slices.Concat(was[:i:i], was[i+1:]))
			f.note(s.Pos(), "the statement is left out")
		}
	}
	return was
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

// note keeps the body as it reads now, with the change in it.
func (f *source) note(pos token.Pos, what string) {
	line := f.fset.Position(pos).Line
	num := line
	for _, a := range f.asked {
		if a.from <= pos && pos < a.to {
			num = a.line
		}
	}
	if !f.covered[num] {
		return
	}
	p := point{
		file: f.name, at: fmt.Sprintf("%s:%d", f.name, line), num: num, line: strings.TrimSpace(f.lines[line-1]), what: what,
		off: f.fset.Position(f.body.Lbrace).Offset, void: f.kind.Results == nil || len(f.kind.Results.List) == 0,
	}
	same := 1
	for _, q := range f.points {
		if q.at == p.at && (q.what == what || strings.HasPrefix(q.what, what+" (")) {
			same++
		}
	}
	if same > 1 {
		p.what = fmt.Sprintf("%s (%d)", what, same)
	}
	// Labels belong to the whole function, so each copy of it has its own.
	suffix := fmt.Sprintf("Changed%d", len(f.points))
	f.labels(func(l *ast.Ident) { l.Name += suffix })
	var text strings.Builder
	err := printer.Fprint(&text, f.fset, f.body)
	f.labels(func(l *ast.Ident) { l.Name = strings.TrimSuffix(l.Name, suffix) })
	if err == nil {
		p.body = text.String()
		f.points = append(f.points, p)
	}
}

// labels calls do with every label of the function.
func (f *source) labels(do func(*ast.Ident)) {
	ast.Inspect(f.body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.LabeledStmt:
			do(n.Label)
		case *ast.BranchStmt:
			if n.Label != nil {
				do(n.Label)
			}
		}
		return true
	})
}
