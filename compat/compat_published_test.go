package compat_test

import (
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
)

// Copper on light craft.
//
// Source: Rules and Guidances for the Classification of High Speed and Light Crafts, section 3, 303.2: coatings on the craft hold
// no copper or other constituents that may cause galvanic corrosion.
// Against it: Bagley, Atlar, Charles and Anderson, Ocean Engineering 109 (2015) 595-602.
func TestPublishedCopperOnAluminium(t *testing.T) {
	b := book(t)
	aluminium := compat.Part{Name: "hull", Material: "aluminium", Zone: "hull", Found: compat.Stack{sound(t, b, "epoxy-barrier", 1000)}}
	for _, key := range []string{"hard-cuprous", "ablative-cuprous-multi", "self-polishing-cuprous", "soft-cuprous", "copper-loaded-epoxy"} {
		f := one(t, compat.OnMaterial(b, coating(t, b, key), aluminium), "metal-never")
		if f.Verdict != finding.Forbidden {
			t.Errorf("%s on aluminium over any barrier: %s", key, f.Verdict)
		}
		r, err := b.Rule(f.Rule)
		if err != nil {
			t.Fatal(err)
		}
		if on := f.Basis[0]; on.Kind != finding.Published || on.Source != "class-light-craft" || on.Place != "section 3, 303.2" || !r.Safety {
			t.Errorf("the finding rests on %+v, safety %v", on, r.Safety)
		}
		if doubt := f.Basis[0].Doubt; doubt == "" {
			t.Error("the paper that speaks against it is not named with the finding")
		}
	}
	// The class rule is written for aluminium: what is said of other metals does not cite it.
	for material, key := range map[string]string{"galvanised-steel": "hard-cuprous", "cast-iron": "copper-loaded-epoxy", "steel": "copper-loaded-epoxy"} {
		f := one(t, compat.OnMaterial(b, coating(t, b, key), compat.Part{Name: "part", Material: material, Found: bare(t, b)}), "metal-never")
		r, err := b.Rule(f.Rule)
		if err != nil {
			t.Fatal(err)
		}
		for _, on := range append(f.Basis, r.Basis()) {
			if on.Source != "" || f.Verdict != finding.Forbidden {
				t.Errorf("%s on %s is %s and cites %s", key, material, f.Verdict, on.Source)
			}
		}
	}
}

// Materials. Source: common practice, no source; the least films of barriers are practice (aluminium 300 um, cast iron 250 um) or
// from memory of ISO 12944-5 for immersed steel (350 um).
func TestCommonPracticeOnMaterials(t *testing.T) {
	b := book(t)
	epoxy := func(um int64) compat.Stack { return compat.Stack{sound(t, b, "epoxy-barrier", um)} }
	for _, c := range []struct {
		coating, material string
		found             compat.Stack
		want              finding.Verdict
	}{
		{"hard-cuprous", "grp", bare(t, b), finding.Fine},
		{"copper-loaded-epoxy", "grp", bare(t, b), finding.Fine},
		{"copper-loaded-epoxy", "wood-sheathed", bare(t, b), finding.Fine},
		{"copper-loaded-epoxy", "ferrocement", epoxy(300), finding.Fine},
		{"hard-cuprous", "ferrocement", bare(t, b), finding.Needs},
		{"hard-cuprous", "steel", bare(t, b), finding.Needs},
		{"hard-cuprous", "steel", epoxy(349), finding.Needs},
		{"hard-cuprous", "steel", epoxy(350), finding.Fine},
		{"copper-loaded-epoxy", "steel", epoxy(1000), finding.Forbidden},
		{"ablative-thiocyanate", "aluminium", bare(t, b), finding.Needs},
		{"ablative-thiocyanate", "aluminium", epoxy(299), finding.Needs},
		{"ablative-thiocyanate", "aluminium", epoxy(300), finding.Fine},
		{"self-polishing-pyrithione", "aluminium", bare(t, b), finding.Needs}, // copper pyrithione is a copper compound
		{"ablative-copper-free", "aluminium", epoxy(300), finding.Fine},
		{"ablative-copper-free", "galvanised-steel", epoxy(300), finding.Fine},
		{"hard-cuprous", "galvanised-steel", epoxy(1000), finding.Forbidden},
		{"hard-cuprous", "cast-iron", epoxy(249), finding.Needs},
		{"hard-cuprous", "cast-iron", epoxy(250), finding.Fine},
		{"hard-cuprous", "lead", bare(t, b), finding.Fine},
		{"epoxy-barrier", "wood-carvel", bare(t, b), finding.Forbidden},
		{"hard-cuprous", "wood-carvel", bare(t, b), finding.Fine},
		{"hard-cuprous", "copper-nickel", bare(t, b), finding.Ask},
		{"none", "copper-nickel", bare(t, b), finding.Fine},
		{"ablative-copper-free", "polyethylene", bare(t, b), finding.Ask},
		{"ablative-copper-free", "fabric-tube", bare(t, b), finding.Ask},
		{"ablative-copper-free", "transducer", bare(t, b), finding.Forbidden}, // solvent-based
		{"ablative-copper-free-water", "transducer", bare(t, b), finding.Ask},
		{"copper-loaded-epoxy", "transducer", bare(t, b), finding.Forbidden}, // water-based, and metallic
		{"ablative-copper-free", "zinc-anode", nil, finding.Forbidden},
		{"epoxy-primer", "impressed-current-anode", nil, finding.Forbidden},
		{"hard-cuprous", "reference-cell", nil, finding.Forbidden},
		{"hard-cuprous", "earth-plate", nil, finding.Forbidden},
		{"none", "zinc-anode", nil, finding.Fine},
	} {
		fs := compat.OnMaterial(b, coating(t, b, c.coating), compat.Part{Name: "part", Material: c.material, Found: c.found})
		if fs.Worst() != c.want {
			t.Errorf("%s on %s: %v, want %s", c.coating, c.material, rules(fs), c.want)
		}
	}
	if fs := compat.OnMaterial(b, coating(t, b, "epoxy-barrier"), compat.Part{Name: "hull", Material: "wood-carvel", Found: bare(t, b)}); !fs.Has("barrier-harms") || !fs.Has("one-pack-only") {
		t.Errorf("a barrier on carvel planks shuts moisture in, and cracks: %v", rules(fs))
	}
	propeller := compat.Part{Name: "propeller", Zone: "propeller", Material: "bronze", Found: bare(t, b)}
	if fs := compat.OnMaterial(b, coating(t, b, "hard-cuprous"), propeller); fs.Worst() != finding.Forbidden {
		t.Errorf("copper paint wears off a propeller: %v", rules(fs))
	}
	if fs := compat.OnMaterial(b, coating(t, b, "foul-release-silicone"), propeller); fs.Worst() != finding.Fine {
		t.Errorf("foul-release on a propeller: %v", rules(fs))
	}
}

// Rows that protect people or hulls yield to an own table only with a reason. Source: common practice, no source.
func TestCommonPracticeSafetyRows(t *testing.T) {
	b := book(t)
	for _, rule := range []finding.ID{"metal-never", "metal-over-barrier", "never-painted", "old-copper-off", "beside-strip", "over-unknown-sealed"} {
		r, err := b.Rule(rule)
		if err != nil || !r.Safety {
			t.Errorf("%s: safety %v, %v", rule, r.Safety, err)
		}
	}
	for material, want := range map[string][]string{"lead": {"lead"}, "aluminium": {"chromate"}} {
		m, err := b.Material(material)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for h := range m.Hazards() {
			got = append(got, h)
		}
		if len(got) != len(want) || got[0] != want[0] {
			t.Errorf("hazards of %s: %v, want %v", material, got, want)
		}
	}
}

// Coat over coat, old film sound and washed. Source: common practice, no source: one line for each line of the trade's table.
func TestCommonPracticeCoatOverCoat(t *testing.T) {
	b := book(t)
	const never, needs, fine = finding.Forbidden, finding.Needs, finding.Fine
	wash, abrade, tie, seal := finding.Wash, finding.Abrade, finding.Tie, finding.Seal
	for _, c := range []struct {
		next, old string
		want      finding.Verdict
		steps     []finding.Action // all that the pair asks for, in order
	}{
		// the same over itself: wash, abrade where hard
		{"ablative-cuprous-multi", "ablative-cuprous-multi", needs, []finding.Action{wash}},
		{"hard-cuprous", "hard-cuprous", needs, []finding.Action{wash, abrade}},
		{"hard-cuprous", "hard-old", needs, []finding.Action{wash, abrade}},
		{"foul-release-silicone", "foul-release-silicone", needs, []finding.Action{wash, finding.Degrease, finding.SpotRepair}},
		{"soft-cuprous", "soft-old", needs, []finding.Action{wash}},
		{"thin-film-copper-free", "thin-film-thiocyanate", needs, []finding.Action{wash, abrade}},
		// wear layer over hard: abrade
		{"ablative-cuprous-multi", "hard-cuprous", needs, []finding.Action{wash, abrade}},
		{"hybrid-cuprous", "hard-old", needs, []finding.Action{wash, abrade}},
		// hard over a wear layer or soft: no
		{"hard-cuprous", "ablative-cuprous-multi", never, nil},
		{"hard-copper-free", "ablative-old", never, nil},
		{"hard-cuprous", "soft-old", never, nil},
		// self-polishing and ablative over each other: tie coat
		{"self-polishing-cuprous", "ablative-cuprous-multi", needs, []finding.Action{wash, abrade, tie}},
		{"ablative-cuprous-multi", "self-polishing-cuprous", needs, []finding.Action{wash, abrade, tie}},
		// anything else over thin film, silicone, soft: no
		{"hard-cuprous", "thin-film-thiocyanate", never, nil},
		{"ablative-cuprous-multi", "thin-film-copper-free", never, nil},
		{"tie-coat", "thin-film-copper-free", never, nil},
		{"hard-cuprous", "silicone-old", never, nil},
		{"epoxy-primer", "silicone-old", never, nil},
		{"ablative-copper-free", "foul-release-silicone", never, nil},
		{"ablative-cuprous-multi", "soft-cuprous", never, nil},
		{"sealer", "soft-cuprous", never, nil},
		// silicone over anything but its tie coat: no
		{"foul-release-silicone", "hard-cuprous", never, nil},
		{"foul-release-silicone", "unknown-old", never, nil},
		{"foul-release-film", "ablative-old", never, nil},
		// copper-free over copper: over sound film
		{"hard-copper-free", "hard-cuprous", needs, []finding.Action{wash, abrade}},
		// over copper-loaded epoxy: abrade, tie coat
		{"hard-cuprous", "copper-loaded-epoxy", needs, []finding.Action{wash, abrade, tie}},
		{"ablative-copper-free", "copper-loaded-epoxy", needs, []finding.Action{wash, abrade, tie}},
		// over vinyl: mild solvent and tie coat; strong lifts it
		{"ablative-cuprous-multi", "vinyl-old", needs, []finding.Action{wash, abrade, tie}},
		{"hard-cuprous", "vinyl-old", never, nil},
		// over unknown: identify, else test patch and sealer
		{"ablative-cuprous-multi", "unknown-old", needs, []finding.Action{finding.Identify, finding.TestPatch, wash, seal}},
		// over organotin: identified, for tin says nothing of the kind of film, washed, tried, then sealed; no hard film
		{"ablative-cuprous-multi", "organotin-old", needs, []finding.Action{finding.Identify, wash, finding.TestPatch, seal}},
		{"sealer", "organotin-old", needs, []finding.Action{finding.Identify, wash, finding.TestPatch}},
		{"hard-cuprous", "organotin-old", never, nil},
		// vinyl tar lifts bitumen, and goes over itself
		{"blacking-vinyl-tar", "bitumen-old", never, nil},
		{"blacking-vinyl-tar", "blacking-bitumen", never, nil},
		{"blacking-vinyl-tar", "blacking-vinyl-tar", needs, []finding.Action{wash}},
		{"blacking-bitumen", "blacking-bitumen", needs, []finding.Action{wash}},
		{"blacking-bitumen", "blacking-vinyl-tar", finding.Ask, nil},
		// epoxy over an acid wash primer: the data sheets of both; any other two-pack never; antifouling on a primer between
		{"epoxy-primer", "etch-primer", finding.Ask, nil},
		{"epoxy-barrier", "etch-primer", finding.Ask, nil},
		{"epoxy-barrier-solvent-free", "etch-primer", finding.Ask, nil},
		{"inert-epoxy", "etch-primer", never, nil},
		{"silicone-tie-coat", "etch-primer", never, nil},
		{"ablative-copper-free", "etch-primer", needs, []finding.Action{finding.Prime}},
		// a sealer seals what may hold tin, and old lead and chromate are poison: wet, by hand, never through
		{"ablative-cuprous-multi", "sealer", needs, []finding.Action{wash, finding.WetScuff}},
		{"tie-coat", "sealer", needs, []finding.Action{wash, finding.WetScuff}},
		{"sealer", "sealer", needs, []finding.Action{wash, finding.WetScuff}},
		{"hard-cuprous", "red-lead-old", needs, []finding.Action{wash, finding.WetScuff}},
		{"ablative-copper-free", "chromate-primer-old", needs, []finding.Action{wash, finding.WetScuff}},
		{"one-pack-primer", "red-lead-old", needs, []finding.Action{wash, finding.WetScuff}},
		{"etch-primer", "red-lead-old", never, nil},
		{"epoxy-primer", "red-lead-old", never, nil},
		{"hard-cuprous", "one-pack-primer", needs, []finding.Action{wash, abrade}},
		// two-pack over antifouling, bitumen, any one-pack: never
		{"epoxy-barrier", "hard-cuprous", never, nil},
		{"epoxy-barrier", "bitumen-old", never, nil},
		{"epoxy-primer", "one-pack-primer", never, nil},
		{"inert-epoxy", "ablative-old", never, nil},
		{"epoxy-barrier", "copper-loaded-epoxy", never, nil},
		// one-pack sealer or tie coat over sound old antifouling: allowed where its sheet names the type
		{"sealer", "ablative-old", needs, []finding.Action{wash, abrade}},
		{"tie-coat", "hard-old", needs, []finding.Action{wash, abrade}},
		// epoxy over epoxy, and antifouling over epoxy, past the window: abrade
		{"epoxy-barrier", "epoxy-barrier", needs, []finding.Action{wash, abrade}},
		{"epoxy-barrier", "epoxy-old", needs, []finding.Action{wash, abrade}},
		{"hard-cuprous", "epoxy-barrier", needs, []finding.Action{wash, abrade}},
		{"ablative-cuprous-multi", "epoxy-old", needs, []finding.Action{wash, abrade}},
		// on nothing the material decides
		{"hard-cuprous", "bare", fine, nil},
		{"none", "hard-old", fine, nil},
		{"none", "organotin-old", never, nil},
	} {
		fs := compat.Over(b, coating(t, b, c.next), sound(t, b, c.old, 100))
		if fs.Worst() != c.want {
			t.Errorf("%s over %s: %v, want %s", c.next, c.old, rules(fs), c.want)
			continue
		}
		var got []finding.Action
		for _, f := range fs {
			for _, s := range f.First {
				got = append(got, s.Do)
			}
		}
		if len(got) != len(c.steps) {
			t.Errorf("%s over %s: %v, want %v", c.next, c.old, got, c.steps)
			continue
		}
		for i := range got {
			if got[i] != c.steps[i] {
				t.Errorf("%s over %s: %v, want %v", c.next, c.old, got, c.steps)
				break
			}
		}
	}
	// Inside the window: hot-coat, nothing to do.
	for _, p := range [][2]string{{"hard-cuprous", "epoxy-barrier"}, {"epoxy-barrier", "epoxy-primer"}, {"tie-coat", "epoxy-primer"}, {"ablative-cuprous-multi", "hard-cuprous"}, {"hard-cuprous", "hard-cuprous"}} {
		l := sound(t, b, p[1], 100)
		l.Age = l.Coating.OvercoatMin
		want := fine
		if p == [2]string{"hard-cuprous", "epoxy-barrier"} {
			want = finding.Caution // only while a thumb leaves a print
		}
		if fs := compat.Over(b, coating(t, b, p[0]), l); fs.Worst() != want {
			t.Errorf("%s over fresh %s: %v", p[0], p[1], rules(fs))
		}
	}
}

// Work rates of one hand. Source: memory of practice: rolling 10 to 15 m2/h, machine abrading 5 to 8, scraping 0.7 to 2, metal to
// bright 1 to 3, washing 30 to 60. Hours are 1 ÷ rate, agreeing to 3 %.
func TestCommonPracticeWorkRates(t *testing.T) {
	b := book(t)
	for action, rate := range map[finding.Action][2]float64{
		finding.Prime: {10, 15}, finding.Barrier: {10, 15}, finding.Tie: {10, 15}, finding.Seal: {10, 15},
		finding.Abrade: {5, 8}, finding.Strip: {0.7, 2}, finding.Blast: {1, 3}, finding.Wash: {30, 60},
	} {
		s, err := b.Step(action)
		if err != nil {
			t.Fatal(err)
		}
		for end, c := range map[string][2]float64{"low": {s.Hours.Low, 1 / rate[1]}, "high": {s.Hours.High, 1 / rate[0]}} {
			if c[0] < 0.97*c[1] || c[0] > 1.03*c[1] {
				t.Errorf("%s, %s: %v h/m2, the rate gives %.4f", action, end, c[0], c[1])
			}
		}
	}
}
