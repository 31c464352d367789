package coverage_test

import (
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Length 9.6 m: 9.6 ÷ 2.5 = 3.84, so four pairs; 9.6 ÷ 3 = 3.2, so four blocks: 12 places. On and just over a whole number of spacings.
func TestStandsByTheYardsRule(t *testing.T) {
	b := book(t)
	for _, c := range []struct {
		length        string
		pairs, blocks int
	}{{"9.6 m", 4, 4}, {"10 m", 4, 4}, {"10.01 m", 5, 4}, {"9 m", 4, 3}, {"9.01 m", 4, 4}, {"3 m", 3, 2}, {"25 ft", 4, 3}} {
		s, err := coverage.Stands(b, length(t, c.length))
		if err != nil || s.StandPairs != c.pairs || s.KeelBlocks != c.blocks || s.Chains != 0 {
			t.Errorf("%s: %+v %v, want %d pairs, %d blocks", c.length, s, err, c.pairs, c.blocks)
		}
	}
	own := with(t, b, "[[factor]]\nkey = \"stand-spacing\"\nvalue = 2\nbasis = \"own table\"\nsource = \"the yard's rule\"\n")
	if s, _ := coverage.Stands(own, length(t, "9.6 m")); s.StandPairs != 5 {
		t.Errorf("by the yard's own rule %d pairs, want 5", s.StandPairs)
	}
	for _, none := range []quantity.Length{{}, length(t, "0 m"), length(t, "-1 m")} {
		_, err := coverage.Stands(b, none)
		hasFault(t, err, finding.ErrImpossible, "length")
	}
	got, err := coverage.Pads(b, hull(t, "fin-keel-yacht", "9.6 m", "3.2 m", "1.75 m"))
	if err != nil || got.Count != 12 || got.Area.Typical.String() != "1.200 m2" || got.Findings.Worst() != finding.Ask || !got.Findings.Has("pads-reckoned") {
		t.Errorf("%+v %v", got, err)
	}
}

// Twelve places of 0.09 m2 are squares of 0.3 m. Three layers with steps of 30 mm: 0.30, 0.36, 0.42 m square.
//
//	area      12 × 0.09, 0.1296, 0.1764 = 1.08, 1.5552, 2.1168        up: 1.08, 1.56, 2.12 m2
//	litres    first: 1 × (10 × 1.08 × 100 ÷ (50 × 90) + 0.24) = 0.24 + 0.24 (the residue is no more than the coat takes)  = 0.48
//	          second: 2 × (10 × 1.56 × 50 ÷ 4500 + 0.173334)  = 2 × 0.346667 = 0.693334, up: 0.70
//	          third: 1 × (10 × 2.12 × 50 ÷ 4500 + 0.235556)   = 0.471112, up: 0.48
//	held      1 × 10 × 1.08 × 100 ÷ 4500 = 0.24; 2 × 10 × 1.08 × 50 ÷ 4500 = 0.24; 0.12
//	beside    0.24, 0.46, 0.36
func TestPatchesStepByStep(t *testing.T) {
	b := with(t, book(t), "[[factor]]\nkey = \"pad-area\"\nvalue = 0.09\nbasis = \"own table\"\nsource = \"measured\"\n[[factor]]\nkey = \"patch-step\"\nvalue = 0.03\nbasis = \"own table\"\nsource = \"ours\"\n")
	pads, err := coverage.Pads(b, coverage.Hull{Support: &coverage.Support{StandPairs: 4, KeelBlocks: 4}})
	if err != nil {
		t.Fatal(err)
	}
	c := coating(t, "50 %")
	got, err := coverage.Patch(b, pads, []coverage.PatchLayer{{c, film(t, "100 um"), 1}, {c, film(t, "50 um"), 2}, {c, film(t, "50 um"), 1}}, coverage.Method{By: "roller"})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [][3]string{{"1.08 m2", "0.48 L", "0.24 L"}, {"1.56 m2", "0.70 L", "0.46 L"}, {"2.12 m2", "0.48 L", "0.36 L"}} {
		if k := got[i]; k.Area.Typical.String() != want[0] || k.Litres.Typical.String() != want[1] || k.Beside.Typical.String() != want[2] {
			t.Errorf("layer %d: %s, %s, beside %s, want %v", i+1, k.Area.Typical, k.Litres.Typical, k.Beside.Typical, want)
		}
	}
	if none, err := coverage.Patch(b, coverage.Patches{}, []coverage.PatchLayer{{c, film(t, "50 um"), 1}}, coverage.Method{By: "roller"}); none != nil || err != nil {
		t.Errorf("no places: %v %v", none, err)
	}
}

// bought is a purchase for the need, of the cans, the smallest first; equal ones follow each other.
func bought(t *testing.T, c tables.Coating, need, total string, cans ...string) coverage.Purchase {
	t.Helper()
	p := coverage.Purchase{Coating: c, Need: litre(t, need), Total: litre(t, total)}
	for _, s := range cans {
		if n := len(p.Items); n > 0 && p.Items[0].Can.Size.Equal(litre(t, s)) {
			p.Items[0].Count++
			continue
		}
		p.Items = append([]coverage.Item{{Can: coverage.Can{Size: litre(t, s)}, Count: 1}}, p.Items...)
	}
	return p
}

// factOf is what the finding tells under the name.
func factOf(f finding.Finding, name string) any {
	for _, x := range f.Facts {
		if x.Name == name {
			return x.Value
		}
	}
	return nil
}

func TestKeepBack(t *testing.T) {
	one, two := coating(t, "50 %"), coating(t, "50 %")
	two.Packs = 2
	for _, c := range []struct {
		p    coverage.Purchase
		rule finding.ID
		n    any // how many cans
	}{
		{bought(t, one, "4 L", "4.5 L"), "patch-kept", nil},
		{bought(t, one, "4 L", "4.5 L", "0.5 L", "4 L"), "patch-can", 1},                                                // one of 0.5 L; 4 L are left for 3.5 L
		{bought(t, one, "4 L", "4.49 L", "0.49 L", "4 L"), "patch-kept", nil},                                           // 0.49 L is too little, and without 4 L nothing is left
		{bought(t, one, "4 L", "4 L", "0.25 L", "0.25 L", "3.5 L"), "patch-can", 2},                                     // two of 0.25 L
		{bought(t, one, "4 L", "5.5 L", "0.5 L", "1 L", "4 L"), "patch-can", 1},                                         // either would do: the smaller
		{bought(t, one, "4 L", "4.1 L", "0.1 L", "0.1 L", "0.1 L", "0.1 L", "0.1 L", "0.1 L", "3.5 L"), "patch-can", 5}, // no more than hold it
		{bought(t, one, "1.5 L", "1.5 L", "0.5 L", "0.5 L", "0.5 L"), "patch-can", 1},                                   // there is but one size
		{bought(t, one, "1.8 L", "2.3 L", "0.3 L", "1 L", "1 L"), "patch-can", 1},                                       // 0.3 L are too little: one of the larger, and 1.3 L are left for 1.3 L
		{bought(t, one, "4.2 L", "5 L", "2.5 L"), "patch-kept", nil},                                                    // one of 2.5 L would leave 2.5 L for 3.7 L
		{coverage.Purchase{Coating: two, Items: []coverage.Item{{Can: coverage.Can{Size: litre(t, "5 L")}, Count: 1}}}, "patch-two-pack", nil},
	} {
		if got := coverage.KeepBack(c.p, litre(t, "0.5 L")); len(got) != 1 || got[0].Rule != c.rule {
			t.Errorf("%v, want %s", got, c.rule)
		} else if n := len(got[0].Facts); c.rule == "patch-can" && n != 3 { // litres, count and can, of one size
			t.Errorf("%d facts of %v", n, got)
		} else if n := factOf(got[0], "count"); n != c.n {
			t.Errorf("%v cans are kept, want %v: %v", n, c.n, got)
		}
	}
	for _, none := range []quantity.Volume{{}, litre(t, "0 L"), litre(t, "-0.01 L")} {
		if got := coverage.KeepBack(bought(t, one, "4 L", "4 L", "4 L"), none); got != nil {
			t.Errorf("%s to keep back: %v", none, got)
		}
	}
	if got := coverage.KeepBack(bought(t, one, "4 L", "4 L", "4 L"), litre(t, "0.01 L")); len(got) != 1 {
		t.Errorf("a little to keep back: %v", got)
	}
}

// Zones add up to the litres to the last digit at each end, whatever the areas; no zone is negative.
func TestByZoneAddsUp(t *testing.T) {
	for _, zones := range [][]string{{"1 m2"}, {"1 m2", "1 m2", "1 m2"}, {"0.01 m2", "1000 m2"}, {"1000 m2", "0.01 m2", "333 ft2"}} {
		for _, l := range []string{"0.01 L", "1 L", "7.77 L", "1 US gal", "0.3333333 L"} {
			v := quantity.Exactly(litre(t, l))
			var in []coverage.ZoneRange
			for i, a := range zones {
				in = append(in, coverage.ZoneRange{Zone: string(rune('a' + i)), Area: quantity.Exactly(area(t, a))})
			}
			got, err := coverage.ByZone(v, in)
			if err != nil {
				t.Fatal(err)
			}
			sum := got[0].Litres.Typical
			for _, z := range got[1:] {
				sum = sum.Add(z.Litres.Typical)
			}
			for _, z := range got {
				if z.Litres.Typical.Sign() < 0 {
					t.Errorf("%s among %v: zone %s gets %s", l, zones, z.Zone, z.Litres.Typical)
				}
			}
			if !sum.Equal(v.Typical) {
				t.Errorf("%s among %v: %s", l, zones, sum)
			}
		}
	}
	if got, err := coverage.ByZone(quantity.Exactly(litre(t, "1 L")), nil); got != nil || err != nil {
		t.Errorf("no zones: %v %v", got, err)
	}
}
