package compat_test

import (
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A layer is said by its coats, colour and film, as far as they are known.
func TestALayerInWords(t *testing.T) {
	c := tables.Coating{Row: tables.Row{Key: "x", Name: "blacking"}}
	um := quantity.Micrometre.N
	for want, l := range map[string]compat.Layer{
		"blacking":                                  {Coating: c},
		"1 coat blacking":                           {Coating: c, Coats: 1},
		"2 coats blacking, black":                   {Coating: c, Coats: 2, Colour: "black"},
		"30 coats blacking, black":                  {Coating: c, Coats: 30, Colour: "black"},
		"blacking, 80 to 120 µm (3.15 to 4.72 mil)": {Coating: c, Film: quantity.Range[quantity.Film]{Low: um(80), Typical: um(100), High: um(120)}},
	} {
		if got := l.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Steel's own primer, wanted for itself, goes on steel that was stripped and blasted, or washed and blasted where nothing lay on it.
func TestThePrimerItself(t *testing.T) {
	b := book(t)
	primer, err := b.Coating("epoxy-primer")
	if err != nil {
		t.Fatal(err)
	}
	old, err := b.Coating("ablative-cuprous-multi")
	if err != nil {
		t.Fatal(err)
	}
	bare, err := b.Coating("bare")
	if err != nil {
		t.Fatal(err)
	}
	for name, found := range map[string]tables.Coating{"painted": old, "bare": bare} {
		p := compat.Part{Name: "hull", Zone: "hull", Material: "steel", Found: compat.Stack{{Coating: found, State: tables.FlakingInPlaces, For: compat.Found}}}
		blasted := false
		for _, r := range compat.Routes(b, p, primer) {
			for _, s := range r.Steps {
				blasted = blasted || s.Do == finding.Blast
			}
			if len(r.Adds) > 0 {
				t.Errorf("%s: %v below the primer", name, r.Adds)
			}
		}
		if !blasted {
			t.Errorf("%s: no way blasts the steel", name)
		}
	}
}
