package drag_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"slices"
	"strconv"
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
	if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 1 || fs[0].Key != "reynolds" || fs[0].Got != "9.09e+05" { // 3 × 0.36011 / 1.18831e-6, to three digits
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

// own is the module's book with rows on top.
func own(t *testing.T, rows string) *tables.Book {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(rows)}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// factor is a row of one's own; the value is written with all its digits.
func factor(key string, value float64) string {
	return fmt.Sprintf("[[factor]]\nkey = %q\nvalue = %s\nbasis = \"own table\"\nsource = \"her log\"\n", key, strconv.FormatFloat(value, 'f', -1, 64))
}

// A hull that is just as fast as a row says: up to the slow Froude number it is the slow share alone, from the fast one the fast share alone, and only
// above the planing one nobody knows. Each rests on the rows of its own.
func TestOnTheFroudeNumbers(t *testing.T) {
	smooth, err := drag.Friction(tables.Default(), ten)
	if err != nil {
		t.Fatal(err)
	}
	for key, c := range map[string]struct {
		typical float64
		rests   int
	}{"drag-froude-slow": {0.75, 1}, "drag-froude-fast": {0.35, 1}, "drag-froude-planing": {0.5267, 2}} {
		penalty, err := drag.Penalty(own(t, factor(key, smooth.Froude)), ten, "schultz-heavy-slime")
		if err != nil {
			t.Fatal(err)
		}
		f := penalty.Findings[0]
		if f.Rule != drag.RuleShare || len(f.Basis) != c.rests || math.Abs(penalty.Share.Typical-c.typical) > 5e-5 {
			t.Errorf("Fn on %s: %s by %d rows, share %v", key, f.Rule, len(f.Basis), penalty.Share)
		}
	}
}

// Growth is left below the limit of what is worth it, not on it.
func TestOnWhatIsWorthIt(t *testing.T) {
	c, err := drag.Penalty(tables.Default(), ten, "schultz-heavy-slime")
	if err != nil {
		t.Fatal(err)
	}
	costs := c.Friction.Typical * c.Share.Typical
	for limit, want := range map[float64]finding.ID{costs: drag.RuleClean, math.Nextafter(costs, 1): drag.RuleLeave, math.Nextafter(costs, 0): drag.RuleClean} {
		c, err := drag.Penalty(own(t, factor("drag-worth", limit)), ten, "schultz-heavy-slime")
		if err != nil || c.Findings[1].Rule != want {
			t.Errorf("%v of %v: %s, %v, want %s", costs, limit, c.Findings[1].Rule, err, want)
		}
	}
}

// The ratio of power to resistance comes from two rows, of which each is asked for by name when it alone is missing; a worst condition that costs nothing
// gives no ratio. Where it stands among the grades is no matter.
func TestRowsOfTheRatio(t *testing.T) {
	without := func(key string) *tables.Book {
		all := fstest.MapFS{}
		data := os.DirFS("../../tables/data")
		err := fs.WalkDir(data, ".", func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			text, err := fs.ReadFile(data, name)
			all[name] = &fstest.MapFile{Data: bytes.ReplaceAll(text, []byte("key = \""+key+"\""), []byte("key = \"another\""))}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		b, err := tables.Load(all)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	worst := func(ks, resistance string) *tables.Book {
		return own(t, fmt.Sprintf("[[roughness]]\nkey = \"schultz-heavy-calcareous\"\nname = \"shells\"\nrating = \"90\"\nks = %q\nrt50 = \"0 um\"\n"+
			"resistance_15kn = %q\nresistance_30kn = \"55 %%\"\nbasis = \"own table\"\nsource = \"her log\"\n", ks, resistance))
	}
	for name, c := range map[string]struct {
		book *tables.Book
		key  string
	}{
		"without the power":    {without("schultz-2007-power"), "value[schultz-2007-power]"},
		"without the grade":    {without("schultz-heavy-calcareous"), "roughness[schultz-heavy-calcareous]"},
		"at no cost":           {worst("10000 um", "0 %"), "roughness[schultz-heavy-calcareous]"},
		"at little cost":       {worst("10000 um", "0.5 %"), ""},
		"smoothest of them":    {worst("0 um", "80 %"), ""},
		"as the tables say it": {tables.Default(), ""},
	} {
		_, err := drag.Costs(c.book, ten)
		fs, _ := errors.AsType[finding.Faults](err)
		if c.key == "" && err != nil || c.key != "" && (len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], finding.ErrMissing)) {
			t.Errorf("%s: %v, want %q", name, err, c.key)
		}
	}
}
