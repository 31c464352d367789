package drag_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/drag"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// The ends of what is taken belong to it.
func TestOnTheEnds(t *testing.T) {
	for _, h := range []drag.Hull{hull(400, 1), hull(1, 800), hull(400, 800)} {
		if fs := h.Check(); len(fs) > 0 {
			t.Errorf("%s at %s: %v", h.Length, h.Speed, fs)
		}
	}
	for key, h := range map[string]drag.Hull{"length": hull(0, 60), "speed": hull(10, 0)} {
		if fs := h.Check(); len(fs) != 1 || fs[0].Key != key {
			t.Errorf("%s at %s: %v", h.Length, h.Speed, fs)
		}
	}
	whole, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte("[[factor]]\nkey = \"drag-share-slow\"\nvalue = [0.9, 1, 1]\nbasis = \"own table\"\nsource = \"her log\"\n")}})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := drag.Costs(whole, ten); err != nil {
		t.Errorf("all of it is friction: %v", err)
	}
	for _, re := range []float64{drag.LeastReynolds, drag.MostReynolds} {
		if _, err := drag.ITTC57(re); err != nil {
			t.Error(err)
		}
		for _, relative := range []float64{0, drag.MostRelative} {
			for _, onset := range []drag.Onset{drag.Sudden, drag.Gradual} {
				if cf, err := drag.Rough(re, relative, onset); err != nil || !(cf > 0.001 && cf < 0.05) {
					t.Errorf("Re %g, roughness %g: %g, %v", re, relative, cf, err)
				}
			}
		}
	}
	// What the lines refuse is named by its own key, not as a fault of the whole.
	_, err = drag.Costs(tables.Default(), hull(3, 7))
	if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 1 || fs[0].Key != "reynolds" {
		t.Errorf("%v", err)
	}
}

// By hand: 10 m at 6 kn = 3.086667 m/s; 30.86667 / 1.139e-6 in fresh water, / 1.18831e-6 in salt, and in what is not said.
func TestWaterByHand(t *testing.T) {
	for water, want := range map[string]float64{"fresh": 2.709980e7, "salt": 2.597526e7, "brackish": 2.597526e7, "": 2.597526e7} {
		h := ten
		h.Water = water
		l, err := drag.Friction(tables.Default(), h)
		if err != nil || l.Reynolds < want-50 || l.Reynolds > want+50 {
			t.Errorf("%q: %v, %v, want %g", water, l.Reynolds, err, want)
		}
	}
}

// Each advice rests on the row of its own limit, beside the grade and the published power.
func TestAdviceNamesItsLimit(t *testing.T) {
	b := tables.Default()
	for grade, limit := range map[string]string{"schultz-light-slime": "drag-worth", "schultz-heavy-slime": "drag-worth", "schultz-small-calcareous": "drag-hard-from"} {
		c, err := drag.Penalty(b, ten, grade)
		if err != nil {
			t.Fatal(err)
		}
		row, err := b.Factor(limit)
		if err != nil {
			t.Fatal(err)
		}
		power, err := b.Value("schultz-2007-power")
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []finding.Basis{row.Basis("value"), power.Basis("value"), c.Grade.Basis("ks")} {
			if !slices.Contains(c.Findings[1].Basis, want) {
				t.Errorf("%s: %v is not among %v", grade, want, c.Findings[1].Basis)
			}
		}
	}
	for key, word := range map[string]string{"drag-worth": "her own worth", "drag-hard-from": "her own hardness"} {
		own, err := b.With(fstest.MapFS{"own.toml": {Data: fmt.Appendf(nil, "[[factor]]\nkey = %q\nvalue = %s\nbasis = \"own table\"\nsource = %q\n", key, map[string]string{"drag-worth": "0.1", "drag-hard-from": "40"}[key], word)}})
		if err != nil {
			t.Fatal(err)
		}
		for _, grade := range []string{"schultz-light-slime", "schultz-heavy-slime", "schultz-heavy-calcareous"} {
			c, err := drag.Penalty(own, ten, grade)
			if err != nil {
				t.Fatal(err)
			}
			rests := slices.ContainsFunc(c.Findings[1].Basis, func(x finding.Basis) bool { return x.Source == word })
			if hard := grade == "schultz-heavy-calcareous"; rests != (hard == (key == "drag-hard-from")) {
				t.Errorf("%s rests on %s: %t", grade, key, rests)
			}
		}
	}
}
