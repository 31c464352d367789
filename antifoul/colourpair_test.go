package antifoul_test

import (
	"cmp"
	"math"
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
)

// Two colours are told apart close by from 20 steps of lightness on, and from a dinghy from 30 on, by both who ask; a type that cannot be had in a bright colour is not offered it.
func TestColoursOnTheStep(t *testing.T) {
	b := tables.Default()
	asked := map[float64]int{}
	for k := range b.Colours() {
		for _, step := range []float64{math.Nextafter(20, 0), 20, math.Nextafter(30, 0), 30} {
			top := k
			top.Key, top.Lightness = "top", k.Lightness+step
			if top.Lightness-k.Lightness != step { // the last digit is lost
				continue
			}
			asked[step]++
			if told, clearly := antifoul.Apart(b, k, top); told != (step >= 20) || clearly != (step >= 30) {
				t.Errorf("%s and %v lighter: told apart %v, clearly %v", k.Key, step, told, clearly)
			}
			for _, bright := range []bool{false, true} {
				pairs := antifoul.ColourPairs(b, tables.Coating{Bright: bright}, top)
				i := slices.IndexFunc(pairs, func(p antifoul.ColourPair) bool { return p.Signal.Key == k.Key })
				if (i >= 0) != (step >= 20 && (bright || !k.Bright)) {
					t.Errorf("%s under %v lighter, in bright colours %v: offered %v", k.Key, step, bright, i >= 0)
				}
				if i >= 0 && (pairs[i].Step != step || pairs[i].Clear != (step >= 30)) {
					t.Errorf("%s under %v lighter: %+v", k.Key, step, pairs[i])
				}
			}
		}
	}
	if len(asked) != 4 {
		t.Errorf("steps asked: %v", asked)
	}
}

// No colour is its own signal, however small a step an own table asks for, and the clearest stands first.
func TestNoColourUnderItself(t *testing.T) {
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(number("lightness-step", "0.000000001"))}})
	if err != nil {
		t.Fatal(err)
	}
	for top := range b.Colours() {
		pairs := antifoul.ColourPairs(b, tables.Coating{Bright: true}, top)
		if len(pairs) == 0 || slices.ContainsFunc(pairs, func(p antifoul.ColourPair) bool { return p.Signal.Key == top.Key || p.Top.Key != top.Key }) {
			t.Errorf("under %s: %v", top.Key, pairs)
		}
		if !slices.IsSortedFunc(pairs, func(x, y antifoul.ColourPair) int { return cmp.Compare(y.Step, x.Step) }) {
			t.Errorf("under %s: %v", top.Key, pairs)
		}
	}
}
