package coverage_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Every rule id in rule.go is a row of rules_coverage.toml, and every row there is an id in rule.go.
func TestRulesMatchTheRegistry(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "rule.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var code []string
	ast.Inspect(file, func(n ast.Node) bool {
		if v, ok := n.(*ast.ValueSpec); ok {
			for _, e := range v.Values {
				if l, ok := e.(*ast.BasicLit); ok {
					s, err := strconv.Unquote(l.Value)
					if err != nil {
						t.Fatal(err)
					}
					code = append(code, s)
				}
			}
		}
		return true
	})
	data, err := os.ReadFile(filepath.Join("..", "tables", "data", "rules_coverage.toml"))
	if err != nil {
		t.Fatal(err)
	}
	b, err := tables.Load(mapFS("rules.toml", string(data)))
	if err != nil {
		t.Fatal(err)
	}
	var rows []string
	for r := range b.Rules() {
		rows = append(rows, string(r.ID))
	}
	slices.Sort(code)
	slices.Sort(rows)
	if !slices.Equal(code, rows) {
		t.Errorf("ids in code %v, in the registry %v", code, rows)
	}
}

// Every finding says a whole sentence in both systems, with all its facts filled in.
func TestEveryRuleSaysASentence(t *testing.T) {
	b := book(t)
	far := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	far.Measured = []coverage.ZoneArea{{Zone: "flat", Area: area(t, "60 m2")}}
	var all finding.List
	slender := hull(t, "twin-hull", "10 m", "6 m", "0.6 m")
	deep := hull(t, "motor-planing", "10 m", "3 m", "1.5 m")
	deep.Girths = girths(t, "0 m", "2 m", "4 m", "3 m", "9 m", "3.2 m")
	round := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	round.CanoeDraft, round.Mass, round.Midship = length(t, "0.1 m"), parse[quantity.Mass](t, "5 t"), share(t, "70 %")
	for _, h := range []coverage.Hull{far, hull(t, "open-boat", "5 m", "2 m", "0.4 m"), slender, deep, round} {
		got := wetted(t, b, h)
		all = append(all, got.Findings...)
		for _, o := range got.Others {
			all = append(all, o.Findings...)
		}
	}
	two := coating(t, "50 %")
	two.Packs = 2
	for _, p := range []coverage.Purchase{{Coating: two}, bought(t, coating(t, "50 %"), "3 L", "3 L", "3 L"), bought(t, coating(t, "50 %"), "3 L", "4 L", "1 L", "3 L")} {
		all = append(all, coverage.KeepBack(p, litre(t, "0.5 L"))...)
	}
	for _, h := range []coverage.Hull{{}, {Length: length(t, "9 m")}, {Support: &coverage.Support{StandPairs: 3}}, {Support: &coverage.Support{}}} {
		got, err := coverage.Pads(b, h)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, got.Findings...)
	}
	for _, k := range []coverage.Kit{kit(t, "3 L", "1 L"), kit(t, "0.75 L", "0.3 L")} {
		_, got, err := coverage.KitCan(ratio(t, "3:1"), k)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, got...)
	}
	for _, rate := range []string{"20 m2/h", "1 m2/h"} {
		got, err := coverage.Batch(b, parse[quantity.Duration](t, "2 h"), quantity.Celsius.N(20), quantity.Celsius.N(25), parse[quantity.WorkRate](t, rate), film(t, "200 um"))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, got.Findings...)
	}
	for _, p := range []coverage.Purchase{
		purchase(t, "1 × K1", ""), purchase(t, "2 × ", ""), purchase(t, "2 × ", "1 × K1"),
	} {
		all = append(all, coverage.Batches(p, true)...)
		all = append(all, coverage.Batches(p, false)...)
	}
	said := map[finding.ID]bool{}
	for _, f := range all {
		said[f.Rule] = true
		for _, s := range []quantity.System{quantity.Metric, quantity.US} {
			text := b.Say(f, s)
			if strings.ContainsAny(text, "{}") || strings.Contains(text, "not stated") || strings.Contains(text, "not given") || !strings.HasSuffix(text, ".") {
				t.Errorf("%s: %q", f.Rule, text)
			}
		}
	}
	for r := range b.Rules() {
		if !said[r.ID] {
			t.Errorf("no finding of %s", r.ID)
		}
	}
}
