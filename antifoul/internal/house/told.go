package house

import (
	"go/ast"
	"go/token"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
)

// Told returns one sentence for each exported thing of the pure floors that does
// not say what it is, by package, file and line, and none when all is told.
// fsys is the module's root; what Purity passes over is passed over here.
//
// A breach is one of these:
//  1. an exported constant, variable, type, function or method of an exported
//     type without a comment; in a group of constants or variables the group's
//     comment, or one at the end of the line, will do;
//  2. a function that works something out and has no line that begins with
//     "Basis:" or "Source:". Such is one of a package from floor 2 up whose
//     first result is a float64, a quantity, a share of time, findings, a
//     verdict, or a struct of its own package, a list of them or a pointer to
//     one. Not meant are those that read a text or a file (Read…, Parse…), and
//     those that selects names with a reason;
//  3. a function, of any floor, whose first result is a float64 or a range of
//     them, and whose comment names no unit;
//  4. a name in selects that is no such function or has a line after all.
//
// Basis: common practice.
func Told(fsys fs.FS) []string {
	packages, breaches := libraryFiles(fsys)
	excused := map[string]bool{}
	for _, dir := range slices.Sorted(maps.Keys(packages)) {
		own := structs(packages[dir])
		for _, f := range packages[dir] {
			for _, d := range f.tree.Decls {
				switch d := d.(type) {
				case *ast.GenDecl:
					breaches = append(breaches, untoldNames(f, d)...)
				case *ast.FuncDecl:
					breaches = append(breaches, untoldFunc(f, d, dir, own, excused)...)
				}
			}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(selects())) {
		if dir, _, _ := strings.Cut(name, "."); packages[dir] != nil && !excused[name] {
			breaches = append(breaches, name+" is excused from naming its basis, and need not be")
		}
	}
	return breaches
}

// untoldNames looks at constants, variables and types.
func untoldNames(f parsed, d *ast.GenDecl) []string {
	var breaches []string
	miss := func(n *ast.Ident) { breaches = append(breaches, f.at(n.Pos(), "%s has no comment", n.Name)) }
	for _, s := range d.Specs {
		switch s := s.(type) {
		case *ast.TypeSpec:
			if s.Name.IsExported() && s.Doc.Text() == "" && s.Comment.Text() == "" && (d.Lparen != token.NoPos || d.Doc.Text() == "") {
				miss(s.Name)
			}
		case *ast.ValueSpec:
			for _, n := range s.Names {
				if n.IsExported() && s.Doc.Text() == "" && s.Comment.Text() == "" && d.Doc.Text() == "" {
					miss(n)
				}
			}
		}
	}
	return breaches
}

// grounds is the line that says what an answer rests on.
var grounds = regexp.MustCompile(`(?m)^\s*(Basis|Source): \S`)

// unit is a unit, or a word that says that a number has none.
var unit = regexp.MustCompile(`(?i)\b(mm|cm|m|m2|m3|um|µm|L|kg|kN|kW|h|hours?|days?|months?|degC|K|kn|m/s|mV|ug/cm2|ug|g|grams?|shares?|from 0 to 1|factor|number|ratio|coefficient|points?|per cent|none)\b|%`)

func untoldFunc(f parsed, d *ast.FuncDecl, dir string, own, excused map[string]bool) []string {
	name, ok := publicName(d)
	if !ok {
		return nil
	}
	doc := d.Doc.Text()
	if doc == "" {
		return []string{f.at(d.Pos(), "%s has no comment", name)}
	}
	first := firstResult(d)
	if first == nil {
		return nil
	}
	var breaches []string
	if isFloat(first) && !unit.MatchString(doc) {
		breaches = append(breaches, f.at(d.Pos(), "%s gives a number and its comment names no unit", name))
	}
	r, _ := find(dir)
	reads := strings.HasPrefix(d.Name.Name, "Read") || strings.HasPrefix(d.Name.Name, "Parse")
	if r.floor < 2 || reads || !worksOut(first, own) || grounds.MatchString(doc) {
		return breaches
	}
	if full := dir + "." + name; selects()[full] != "" {
		excused[full] = true
		return breaches
	}
	return append(breaches, f.at(d.Pos(), "%s works something out and has no line Basis: or Source:", name))
}

// publicName is Name or Type.Name of a function that can be called from outside.
func publicName(d *ast.FuncDecl) (string, bool) {
	if !d.Name.IsExported() {
		return "", false
	}
	if d.Recv == nil {
		return d.Name.Name, true
	}
	t := d.Recv.List[0].Type
	if s, ok := t.(*ast.StarExpr); ok {
		t = s.X
	}
	if x, ok := t.(*ast.IndexExpr); ok {
		t = x.X
	}
	id, ok := t.(*ast.Ident)
	if !ok || !id.IsExported() {
		return "", false
	}
	return id.Name + "." + d.Name.Name, true
}

func firstResult(d *ast.FuncDecl) ast.Expr {
	if d.Type.Results == nil {
		return nil
	}
	return d.Type.Results.List[0].Type
}

// isFloat reports whether a type is float64 or a range of it.
func isFloat(e ast.Expr) bool {
	if x, ok := e.(*ast.IndexExpr); ok {
		e = x.Index
	}
	id, ok := e.(*ast.Ident)
	return ok && id.Name == "float64"
}

// worksOut reports whether a type is an answer: see Told.
func worksOut(e ast.Expr, own map[string]bool) bool {
	switch x := e.(type) {
	case *ast.StarExpr:
		return worksOut(x.X, own)
	case *ast.ArrayType:
		return worksOut(x.Elt, own)
	case *ast.IndexExpr:
		return worksOut(x.X, own) || worksOut(x.Index, own)
	case *ast.Ident:
		return x.Name == "float64" || own[x.Name]
	case *ast.SelectorExpr:
		pkg, _ := x.X.(*ast.Ident)
		switch {
		case pkg == nil:
			return false
		case pkg.Name == "quantity":
			return !slices.Contains([]string{"Date", "System", "YesNo"}, x.Sel.Name)
		case pkg.Name == "finding":
			return x.Sel.Name == "List" || x.Sel.Name == "Verdict" || x.Sel.Name == "Finding"
		}
		return pkg.Name == "time" && x.Sel.Name == "Duration"
	}
	return false
}

// structs lists the exported structs of a package.
func structs(files []parsed) map[string]bool {
	own := map[string]bool{}
	for _, f := range files {
		ast.Inspect(f.tree, func(n ast.Node) bool {
			if s, ok := n.(*ast.TypeSpec); ok && s.Name.IsExported() {
				if _, ok := s.Type.(*ast.StructType); ok {
					own[s.Name.Name] = true
				}
			}
			return true
		})
	}
	return own
}

// selects are the functions that work nothing out, each with what it does instead.
func selects() map[string]string {
	const part, made, sums = "gives back a part of what was worked out", "prepares what its methods answer from", "adds up what it is given"
	return map[string]string{
		"antifoul.Job.Scheme":          part,
		"antifoul.PartRanking.Best":    part,
		"antifoul.PartRanking.Of":      part,
		"antifoul.Place.Asks":          part,
		"antifoul.Place.Criteria":      part,
		"antifoul.Place.Reasons":       part,
		"antifoul.Ranking.Hull":        part,
		"antifoul.Ranking.Part":        part,
		"antifoul.Season.Shown":        part,
		"antifoul/leach.CapOf":         part,
		"antifoul/leach.Contents.Of":   part,
		"antifoul/leach.Rate.Copper":   part,
		"antifoul/survey.Answer.At":    part,
		"antifoul/wear.Forecast.First": part,
		"antifoul/wear.Forecast.On":    part,
		"coverage.Tin.Cans":            part,
		"antifoul/law.At":              made,
		"compat.On":                    made,
		"antifoul/cost.Plus":           sums,
		"antifoul/cost.Times":          "makes a range of one number",
		"antifoul/weather.Unknown":     "is no measurement",
	}
}
