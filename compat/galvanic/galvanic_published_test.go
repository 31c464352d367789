package galvanic_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// lines reads a file of values worked by hand, by column.
func lines(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close() //nolint:errcheck // read only
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, rec := range all[1:] {
		line := map[string]string{}
		for i, head := range all[0] {
			line[head] = rec[i]
		}
		out = append(out, line)
	}
	return out
}

func mV(t *testing.T, text string) quantity.Potential {
	t.Helper()
	p, err := quantity.Parse[quantity.Potential](text + " mV")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// series and names are those of the second person, and how the rows spell them.
var (
	series = map[string]string{"main": galvanic.Flowing, "steady": "LaQue 1948", "trade": "Westlawn 2010"}
	names  = map[string]string{
		"main 316/317": "stainless steel 316/317", "main 302/304/321/347": "stainless steel 302/304/321/347", "main 430": "stainless steel 430",
		"main 410/416": "stainless steel 410/416", "main naval brass": "naval, yellow, red brass", "main tin bronzes": "tin bronzes (G, M)",
		"steady 316": "stainless steel 316", "steady 304": "stainless steel 304", "trade 316/304": "stainless steel 316, 304",
		"trade aluminium 5083/5086/6061": "aluminium 5083, 5086, 6061", "trade hot-dip galvanised": "hot-dip galvanised steel",
	}
)

func named(list, name string) string {
	if long := names[list+" "+name]; long != "" {
		return long
	}
	return name
}

// Couples worked by hand from the three lists: the Australasian Corrosion Association's table, the list that is most likely LaQue's of 1948,
// and the Westlawn Institute's of 2010.
func TestCouplesWorkedByHand(t *testing.T) {
	t.Attr("source", "ACA flowing seawater; LaQue 1948; Westlawn 2010, page 17")
	b := tables.Default()
	all := lines(t, "couples.csv")
	if len(all) < 50 {
		t.Fatalf("%d couples, want at least 50", len(all))
	}
	for _, l := range all {
		x := galvanic.Metal{Name: named(l["list"], l["metal_a"]), State: l["state_a"]}
		y := galvanic.Metal{Name: named(l["list"], l["metal_b"]), State: l["state_b"]}
		for _, turned := range []bool{false, true} {
			if turned {
				x, y = y, x
			}
			p, err := galvanic.Couple(b, series[l["list"]], x, y)
			if err != nil {
				t.Errorf("%v: %v", l, err)
				continue
			}
			if !p.Low.Equal(mV(t, l["low_mv"])) || !p.High.Equal(mV(t, l["high_mv"])) {
				t.Errorf("%s/%s: %s to %s, by hand %s to %s mV (%s)", x, y, p.Low, p.High, l["low_mv"], l["high_mv"], l["note"])
			}
			want := named(l["list"], strings.TrimSuffix(l["anode"], " (active)"))
			got, _, _ := strings.Cut(p.Anode, ", passive")
			got, _, _ = strings.Cut(got, ", active")
			if l["anode"] == "undecided" {
				want = ""
			}
			if got != want {
				t.Errorf("%s/%s: %q goes, by hand %q (%s)", x, y, p.Anode, l["anode"], l["note"])
			}
			if strings.HasSuffix(l["anode"], "(active)") && !strings.HasSuffix(p.Anode, ", active") {
				t.Errorf("%s/%s: %q goes, by hand the active state", x, y, p.Anode)
			}
		}
	}
}

// rows are the names that the second person gave to lines of protection potentials, and those of the tables.
var rows = map[string][]string{
	"carbon steel aerated":          {"carbon steel, aerated seawater, EN 12473"},
	"carbon steel anaerobic mud":    {"carbon steel, anaerobic mud, EN 12473"},
	"high-strength steel":           {"high-strength steel (yield above about 700 MPa), EN 12473"},
	"steel hulls boat practice":     {"steel boat hulls, boat practice"},
	"aluminium EN 12473":            {"aluminium, EN 12473"},
	"aluminium boat practice":       {"aluminium, boat practice"},
	"copper alloys no Al":           {"bronze without aluminium, EN 12473"},
	"copper alloys with Al":         {"copper alloys with aluminium (nickel-aluminium bronze), EN 12473"},
	"austenitic stainless low PREN": {"austenitic stainless steel of low PREN, EN 12473"},
	"wooden hull fittings":          {"fittings of a wooden hull, boat practice"},
	"GRP bronze gear":               {"GRP with bronze gear, boat practice, the widest of the lists", "GRP with bronze gear, boat practice, the narrowest of the lists"},
}

var (
	madeOf = map[string]string{
		"carbon steel": "steel", "steel hull": "steel", "high-strength steel": "steel", "aluminium": "aluminium", "copper alloy": "bronze", "Ni-Al bronze": "bronze",
		"stainless low PREN": "stainless-steel", "wood with bronze": "wood-carvel", "GRP with bronze": "grp",
	}
	electrodes = map[string]string{"agagcl": "silver-chloride", "sce": "sce", "cse": "copper-sulphate", "zinc": "zinc-seawater"}
)

func fact(f finding.Finding, name string) any {
	for _, x := range f.Facts {
		if x.Name == name {
			return x.Value
		}
	}
	return nil
}

// Readings judged by hand: EN 12473 as the rows mark it, boat practice, MIL-HDBK-1004/10; conversions by the electrodes against the standard
// hydrogen electrode.
func TestReadingsJudgedByHand(t *testing.T) {
	t.Attr("source", "EN 12473, boat practice, MIL-HDBK-1004/10; electrodes as commonly tabulated")
	b := tables.Default()
	all := lines(t, "protection.csv")
	if len(all) < 50 {
		t.Fatalf("%d readings, want at least 50", len(all))
	}
	for _, l := range all {
		read := galvanic.Reading{Value: mV(t, l["reading_mv"]), Electrode: electrodes[l["electrode"]]}
		fs, err := galvanic.Protected(b, madeOf[l["material"]], read)
		if err != nil {
			t.Errorf("%v: %v", l, err)
			continue
		}
		var protected, over []string
		for _, row := range rows[l["row"]] {
			i := slices.IndexFunc(fs, func(f finding.Finding) bool { return fact(f, "row") == row })
			if i < 0 {
				t.Fatalf("no finding of %q among %v", row, fs)
			}
			word, _ := fact(fs[i], "word").(string)
			rule := fs[i].Rule
			if p, ok := fact(fs[i], "read").(quantity.Potential); !ok || !p.Equal(mV(t, l["reading_vs_agagcl_mv"])) {
				t.Errorf("%s: converted to %v, by hand %s mV (%s)", read.Value, fact(fs[i], "read"), l["reading_vs_agagcl_mv"], l["note"])
			}
			yes := map[bool]string{true: "yes", false: "no"}
			protected = append(protected, yes[rule != galvanic.RuleUnder && word != "not protected"])
			over = append(over, yes[rule == galvanic.RuleOver || word == "over-protected"])
		}
		whole := func(answers []string) string {
			if slices.Contains(answers, "yes") && slices.Contains(answers, "no") {
				return "unclear"
			}
			return answers[0]
		}
		if whole(protected) != l["protected"] || whole(over) != l["over"] {
			t.Errorf("%s %s %s by %s: protected %s, over %s; by hand %s and %s (%s)", l["material"], l["reading_mv"], l["electrode"], l["row"], whole(protected), whole(over), l["protected"], l["over"], l["note"])
		}
		if disagree := fs.Has(galvanic.RuleDisagree); len(rows[l["row"]]) > 1 && (l["protected"] == "unclear" || l["over"] == "unclear") && !disagree {
			t.Errorf("%s %s: rows disagree and nothing says so", l["material"], l["reading_mv"])
		}
	}
}
