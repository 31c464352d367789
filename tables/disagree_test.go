package tables_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// alike are the names of one metal in the lists of potentials, by state where it knows two.
var alikeMetals = map[string][]string{
	"graphite": {"graphite"}, "platinum": {"platinum"}, "titanium": {"titanium"}, "silver": {"silver"}, "copper": {"copper"}, "zinc": {"zinc"}, "tin": {"tin"},
	"cadmium": {"cadmium"}, "magnesium": {"magnesium"}, "cast iron": {"cast iron"}, "manganese bronze": {"manganese bronze"}, "silicon bronze": {"silicon bronze"},
	"nickel":        {"nickel 200", "nickel"},
	"nickel-copper": {"nickel-copper 400, K-500", "nickel-copper 400"},
	"70/30":         {"70/30 Cu-Ni"}, "90/10": {"90/10 Cu-Ni"},
	"316":        {"stainless steel 316/317", "stainless steel 316", "stainless steel 316, 304"},
	"304":        {"stainless steel 302/304/321/347", "stainless steel 304"},
	"mild steel": {"mild steel", "carbon steel"}, "alloy steel": {"low-alloy steel", "alloy steel"},
	"naval brass": {"naval, yellow, red brass", "naval brass"}, "aluminium brass": {"admiralty and aluminium brass", "aluminium brass"}, "admiralty": {"admiralty and aluminium brass", "admiralty brass"},
	"tin bronze": {"tin bronzes (G, M)", "G bronze"}, "aluminium": {"aluminium alloys", "aluminium 5083, 5086, 6061", "aluminium 3003"},
}

// disagreements are the places where two documents give one quantity otherwise, each with its reason. An entry that is needed no more fails.
var disagreements = map[string]string{
	"316 active: ACA flowing seawater and LaQue 1948":                         "an active stainless steel has no one value: it depends on how far it has lost its film, and the lists name alloys differently",
	"316 active: ACA flowing seawater and Westlawn 2010":                      "an active stainless steel has no one value: it depends on how far it has lost its film, and the lists name alloys differently",
	"316 active: LaQue 1948 and Westlawn 2010":                                "an active stainless steel has no one value: it depends on how far it has lost its film, and the lists name alloys differently",
	"alloy steel: ACA flowing seawater and Westlawn 2010":                     "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"cadmium: ACA flowing seawater and Westlawn 2010":                         "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"magnesium: ACA flowing seawater and Westlawn 2010":                       "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"manganese bronze: ACA flowing seawater and Westlawn 2010":                "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"mild steel: ACA flowing seawater and Westlawn 2010":                      "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"mild steel: LaQue 1948 and Westlawn 2010":                                "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"naval brass: ACA flowing seawater and Westlawn 2010":                     "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"naval brass: LaQue 1948 and Westlawn 2010":                               "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"tin: ACA flowing seawater and Westlawn 2010":                             "Westlawn lists metals of boats against Ag/AgCl, mostly less noble; whether its water flowed is not said",
	"titanium: ACA flowing seawater and LaQue 1948":                           "one value of 1948 against a range; the film of titanium grows nobler for months",
	"steel, not below: boat-steel and en-12473-steel":                         "boat practice stays farther from where paint is lifted",
	"steel, protected: boat-steel and mil-hdbk-1004-10-steel":                 "the handbook's limit is a round figure against copper/copper sulphate, the others are round against Ag/AgCl",
	"aluminium, protected: boat-aluminium and en-12473-aluminium":             "boat practice starts lower than the standard, as each row's doubt says",
	"aluminium, not below: boat-aluminium and mil-hdbk-1004-10-aluminium":     "the handbook names where alkali attacks, the others where one stops before it",
	"grp, protected: boat-grp-bronze-widest and boat-grp-bronze-narrowest":    "the lists of boat practice differ, and the rows are their widest and narrowest",
	"grp, not below: boat-grp-bronze-widest and boat-grp-bronze-narrowest":    "the lists of boat practice differ, and the rows are their widest and narrowest",
	"steel, protected: en-12473-steel and mil-hdbk-1004-10-steel":             "the handbook's limit is a round figure against copper/copper sulphate, the others are round against Ag/AgCl",
	"aluminium, not below: en-12473-aluminium and mil-hdbk-1004-10-aluminium": "the handbook names where alkali attacks, the others where one stops before it",
}

// Two lists of potentials agree on a metal when their ranges come within the scatter that Westlawn 2010 states for alloys with iron or nickel,
// 40 mV; two documents of protection potentials when their limits are the same.
func TestDocumentsThatDisagree(t *testing.T) {
	b := book(t)
	const scatter = 40
	met := map[string]bool{}
	differ := func(what string, far float64) {
		met[what] = true
		if disagreements[what] == "" {
			t.Errorf("%s: %.0f mV apart, and no reason is listed", what, far)
		}
	}
	sce := func(p quantity.Potential, electrode string) float64 {
		e, err := b.Electrode(electrode)
		if err != nil {
			t.Fatal(err)
		}
		s, err := b.Electrode("sce")
		if err != nil {
			t.Fatal(err)
		}
		return p.Add(e.SHE).Sub(s.SHE).Float(quantity.Millivolt)
	}
	rows := slices.Collect(b.Potentials())
	compared := 0
	for _, metal := range slices.Sorted(maps.Keys(alikeMetals)) {
		var same []tables.Potential
		for _, r := range rows {
			if slices.Contains(alikeMetals[metal], r.Name) {
				same = append(same, r)
			}
		}
		for i, x := range same {
			for _, y := range same[i+1:] {
				if x.Series == y.Series || x.State != y.State {
					continue
				}
				compared++
				gap := math.Max(sce(x.Active, x.Electrode)-sce(y.Noble, y.Electrode), sce(y.Active, y.Electrode)-sce(x.Noble, x.Electrode))
				if gap > scatter {
					differ(fmt.Sprintf("%s: %s and %s", joinState(metal, x.State), x.Series, y.Series), gap)
				}
			}
		}
	}
	if compared < 25 {
		t.Errorf("%d pairs of lines compared, want at least 25", compared)
	}
	limits := slices.Collect(b.Protections())
	for i, x := range limits {
		for _, y := range limits[i+1:] {
			if x.Material != y.Material || x.Only != "" || y.Only != "" {
				continue
			}
			if x.At.Given() && y.At.Given() {
				if far := math.Abs(sce(x.At, x.Electrode) - sce(y.At, y.Electrode)); far > 10 {
					differ(fmt.Sprintf("%s, protected: %s and %s", x.Material, x.Key, y.Key), far)
				}
			}
			if x.NotBelow.Given() && y.NotBelow.Given() {
				if far := math.Abs(sce(x.NotBelow, x.Electrode) - sce(y.NotBelow, y.Electrode)); far > 10 {
					differ(fmt.Sprintf("%s, not below: %s and %s", x.Material, x.Key, y.Key), far)
				}
			}
		}
	}
	for what := range disagreements {
		if !met[what] {
			t.Errorf("%s: listed as a disagreement, and the documents agree", what)
		}
	}
}

func joinState(metal, state string) string {
	if state == "" {
		return metal
	}
	return metal + " " + state
}
