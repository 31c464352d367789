package tables_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// galvanic is where a series was typed again, and the metals that the rows name otherwise.
var galvanic = map[string]struct {
	file    string
	aliases map[string]string
}{
	"ACA flowing seawater": {"galvanic_flowing_seawater.csv", map[string]string{
		"410/416 active": "410/416/430 active", "430 active": "410/416/430 active",
		"mild steel": "mild steel, cast iron", "cast iron": "mild steel, cast iron",
	}},
	"LaQue 1948": {"galvanic_laque.csv", map[string]string{"70/30 cu-ni": "70-30 copper-nickel", "90/10 cu-ni": "90-10 copper-nickel"}},
	"Westlawn 2010": {"galvanic_westlawn.csv", map[string]string{
		"hot-dip galvanised steel": "hot-dip galvanised", "aluminium 5083, 5086, 6061": "aluminium 5083/5086/6061",
		"316, 304 active": "316/304 active", "manganese bronze": "manganese bronze and naval brass",
		"naval brass": "manganese bronze and naval brass",
	}},
}

func TestGalvanicSeriesReadTwice(t *testing.T) {
	for p := range tables.Default().Potentials() {
		if _, ok := galvanic[p.Series]; !ok {
			t.Errorf("%s: nobody read the series %q a second time", p.Key, p.Series)
		}
	}
	electrodes := map[string]string{"SCE": "sce", "Ag/AgCl": "silver-chloride"}
	state := func(name, s string) string { return strings.TrimSpace(name + " " + s) }
	for _, series := range slices.Sorted(maps.Keys(galvanic)) {
		lines := printed(t, galvanic[series].file)
		noble, active := "noble end", "active end"
		if _, one := lines[0].units["value"]; one {
			noble, active = "value", "value"
		}
		symbol, against, _ := strings.Cut(lines[0].units[noble], " vs ")
		unit := quantity.Volt
		if symbol == "mV" {
			unit = quantity.Millivolt
		}
		both(t, lines, func(l line) string { return state(l.text(t, "metal"), l.text(t, "state")) },
			only(tables.Default().Potentials(), func(p tables.Potential) bool { return p.Series == series }),
			func(p tables.Potential) string { return state(strings.TrimPrefix(p.Name, "stainless steel "), p.State) },
			galvanic[series].aliases,
			func(l line, name string, p tables.Potential) {
				same(t, l, name, noble, p.Noble, unit)
				same(t, l, name, active, p.Active, unit)
				if want := electrodes[against]; p.Electrode != want {
					t.Errorf("%s: %s: the row is against %q, the second reading against %q", l.file, name, p.Electrode, want)
				}
			})
	}
}

func TestRoughnessReadTwice(t *testing.T) {
	both(t, printed(t, "schultz_2007.csv"), func(l line) string { return l.text(t, "condition") },
		tables.Default().Roughnesses(), func(r tables.Roughness) string { return r.Name }, nil,
		func(l line, name string, r tables.Roughness) {
			if want := l.text(t, "rating"); r.Rating != want {
				t.Errorf("%s: %s: the row has the rating %s, the second reading %s", l.file, name, r.Rating, want)
			}
			same(t, l, name, "ks", r.Ks, quantity.Micrometre)
			same(t, l, name, "Rt50", r.Rt50, quantity.Micrometre)
			same(t, l, name, "resistance 15 kn", r.Slow, quantity.Percent)
			same(t, l, name, "resistance 30 kn", r.Fast, quantity.Percent)
		})
}

func TestProtectionReadTwice(t *testing.T) {
	both(t, printed(t, "protection.csv"), func(l line) string { return l.text(t, "metal") + ", " + l.text(t, "document") },
		tables.Default().Protections(), func(p tables.Protection) string { return p.Name },
		map[string]string{
			"high-strength steel (yield above about 700 mpa), en 12473":        "high-strength steel, EN 12473",
			"bronze without aluminium, en 12473":                               "copper alloys without aluminium, EN 12473",
			"copper-nickel, en 12473":                                          "copper alloys without aluminium, EN 12473",
			"copper alloys with aluminium (nickel-aluminium bronze), en 12473": "copper alloys with aluminium, EN 12473",
			"austenitic stainless steel of low pren, en 12473":                 "austenitic stainless, low PREN, EN 12473",
			"fittings of a wooden hull, boat practice":                         "wooden hull fittings, boat practice",
			"grp with bronze gear, boat practice, the widest of the lists":     "GRP with bronze gear, widest, boat practice",
			"grp with bronze gear, boat practice, the narrowest of the lists":  "GRP with bronze gear, narrowest, boat practice",
		},
		func(l line, name string, p tables.Protection) {
			same(t, l, name, "protected at or below", p.At, quantity.Volt)
			same(t, l, name, "not below", p.NotBelow, quantity.Volt)
			e, err := tables.Default().Electrode(p.Electrode)
			if want := l.text(t, "electrode"); err != nil || e.Name != want {
				t.Errorf("%s: %s: the row is against %q, the second reading against %q", l.file, name, p.Electrode, want)
			}
		})
}

func TestElectrodesReadTwice(t *testing.T) {
	both(t, printed(t, "electrodes.csv"), func(l line) string { return l.text(t, "electrode") },
		tables.Default().Electrodes(), func(e tables.Electrode) string { return e.Name }, nil,
		func(l line, name string, e tables.Electrode) { same(t, l, name, "potential", e.SHE, quantity.Volt) })
}

// The share of copper is typed to four places; the row may carry more.
func TestCopperSharesReadTwice(t *testing.T) {
	rows := only(tables.Default().ActiveRows(), func(a tables.ActiveRow) bool { return a.Copper != 0 })
	both(t, printed(t, "copper_shares.csv"), func(l line) string { return l.text(t, "formula") },
		rows, func(a tables.ActiveRow) string { return a.Formula }, nil,
		func(l line, name string, a tables.ActiveRow) {
			if want := l.number(t, "copper"); math.Abs(a.Copper-want) > 5e-5 {
				t.Errorf("%s: %s: the row has the copper share %g, the second reading %g", l.file, name, a.Copper, want)
			}
		})
}

// The dates of the Convention stand in the laws that follow from it.
func TestConventionDatesReadTwice(t *testing.T) {
	both(t, printed(t, "afs_dates.csv"), func(l line) string { return l.text(t, "what") },
		only(tables.Default().Laws(), func(l tables.Law) bool { return strings.HasPrefix(l.Key, "afs-") }),
		func(l tables.Law) string { return l.Key },
		map[string]string{
			"afs-organotin-application": "organotin: not to be applied",
			"afs-organotin-presence":    "organotin: not to be present without a barrier",
			"afs-cybutryne-application": "cybutryne: not to be applied",
			"afs-cybutryne-presence":    "cybutryne: remove or seal",
			"afs-declaration":           "in force",
			"afs-certificate":           "in force",
			"afs-no-paper":              "in force",
		},
		func(l line, name string, law tables.Law) {
			if want := l.text(t, "from"); law.From.String() != want {
				t.Errorf("%s: %s: the row is in force from %s, the second reading from %s", l.file, name, law.From, want)
			}
			same(t, l, name, "within", law.Within, quantity.Month)
		})
}
