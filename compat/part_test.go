package compat_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func TestPartCheck(t *testing.T) {
	b := book(t)
	um := quantity.Micrometre.N
	good := compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: compat.Stack{sound(t, b, "hard-cuprous", 50)}, Laminate: "dry", Area: quantity.SquareMetre.N(20)}
	if fs := good.Check(b); len(fs) != 0 {
		t.Errorf("a good part: %v", fs)
	}
	bad := compat.Part{
		Zone: "waterline", Material: "alumminium", Area: quantity.SquareMetre.N(0), Laminate: "damp",
		Found: compat.Stack{
			{Coating: coating(t, b, "bare"), State: "nice", Coats: -1, Colour: "blak"},
			{Film: quantity.Range[quantity.Film]{Low: um(3)}, For: "fun", Age: quantity.Hour.N(-1)},
			{Coating: tables.Coating{Row: tables.Row{Key: "hard-cuprus"}}, Film: quantity.Range[quantity.Film]{Low: um(9), Typical: um(8), High: um(7)}},
			{Coating: coating(t, b, "hard-cuprous"), Film: quantity.Exactly(um(0))},
		},
	}
	var got []string
	for _, f := range bad.Check(b) {
		got = append(got, f.Key+": "+f.Kind.Error())
		if f.Want == "" {
			t.Errorf("%s: does not say what is accepted", f.Key)
		}
	}
	want := []string{
		"name: missing", "material: not known", "zone: impossible", "area: impossible", "laminate: not accepted",
		"found[1].colour: not known", "found[1].state: not known", "found[1].coats: impossible", "found[1].coating: impossible",
		"found[2].coating: missing", "found[2].film: missing", "found[2].age: impossible", "found[2].for: not accepted",
		"found[3].coating: not known", "found[3].film: impossible",
		"found[4].film: impossible",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("faults (-want +got):\n%s", diff)
	}
	if err := bad.Check(b).Err(); !errors.Is(err, finding.ErrUnknown) || !errors.Is(err, finding.ErrMissing) {
		t.Errorf("kinds are lost: %v", err)
	}
}
