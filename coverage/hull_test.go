package coverage_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func TestCheckTellsAllFaultsAtOnce(t *testing.T) {
	b := book(t)
	h := coverage.Hull{
		Kind: "fin-keel", Length: length(t, "8 m"), Beam: length(t, "27 ft"), Draft: length(t, "0 m"), Mass: parse[quantity.Mass](t, "0 kg"),
		Measured: []coverage.ZoneArea{
			{Zone: "keels", Area: area(t, "3 m2")},
			{Zone: "leg", Area: area(t, "1 m2")},
			{Zone: "edges", Area: area(t, "-1 m2")},
			{Zone: "waterline"},
			{Zone: "edges", Area: area(t, "1 m2")},
		},
		Support: &coverage.Support{StandPairs: -1, KeelBlocks: 1001, Chains: -3},
	}
	err := h.Check(b).Err()
	for _, f := range []struct {
		kind error
		key  string
	}{
		{finding.ErrUnknown, "kind"},
		{finding.ErrImpossible, "beam"}, // 27 ft is 8.23 m
		{finding.ErrImpossible, "draft"},
		{finding.ErrImpossible, "mass"},
		{finding.ErrUnknown, "measured[keels]"},
		{finding.ErrValue, "measured[leg]"},
		{finding.ErrImpossible, "measured[edges]"},
		{finding.ErrDuplicate, "measured[edges]"},
		{finding.ErrMissing, "measured[waterline]"},
		{finding.ErrImpossible, "stand_pairs"},
		{finding.ErrImpossible, "keel_blocks"},
		{finding.ErrImpossible, "chains"},
	} {
		hasFault(t, err, f.kind, f.key)
	}
	var fs finding.Faults
	if errors.As(err, &fs) && len(fs) != 12 {
		t.Errorf("%d faults, want 12:\n%v", len(fs), err)
	}
	for _, near := range []string{"fin-keel-yacht", "keel"} {
		if !strings.Contains(err.Error(), near) {
			t.Errorf("no near name %q in:\n%v", near, err)
		}
	}
	if _, err := coverage.Wetted(b, h); err == nil {
		t.Error("Wetted takes a hull with faults")
	}
}

func TestCheckOfNothing(t *testing.T) {
	b := book(t)
	err := coverage.Hull{}.Check(b).Err()
	for _, key := range []string{"kind", "length", "beam", "draft"} {
		hasFault(t, err, finding.ErrMissing, key)
	}
	for _, zone := range []string{"flat", "hull"} {
		h := coverage.Hull{Measured: []coverage.ZoneArea{{Zone: zone, Area: area(t, "20 m2")}}}
		if err := h.Check(b).Err(); err != nil {
			t.Errorf("measured %s: %v", zone, err)
		}
	}
	h := coverage.Hull{Measured: []coverage.ZoneArea{{Zone: "edges", Area: area(t, "2 m2")}}}
	hasFault(t, h.Check(b).Err(), finding.ErrMissing, "length")
	h = coverage.Hull{Measured: []coverage.ZoneArea{{Zone: "flat", Area: area(t, "20 m2")}, {Zone: "hull", Area: area(t, "25 m2")}}}
	hasFault(t, h.Check(b).Err(), finding.ErrDuplicate, "measured[hull]")
}

// On, just under and just over the length.
func TestBeamAndDraughtAgainstLength(t *testing.T) {
	b := book(t)
	for _, c := range []struct {
		beam, draft string
		bad         string
	}{
		{"10 m", "10 m", ""},
		{"9.999 m", "1 m", ""},
		{"10.001 m", "1 m", "beam"},
		{"3 m", "10.001 m", "draft"},
		{"3 m", "0.001 m", ""},
		{"-3 m", "1 m", "beam"},
	} {
		err := hull(t, "open-boat", "10 m", c.beam, c.draft).Check(b).Err()
		if c.bad == "" {
			if err != nil {
				t.Errorf("beam %s, draught %s: %v", c.beam, c.draft, err)
			}
			continue
		}
		hasFault(t, err, finding.ErrImpossible, c.bad)
	}
	// Without a length that can be, beam and draught are held against none.
	for _, c := range []struct {
		length quantity.Length
		kind   error
	}{{quantity.Length{}, finding.ErrMissing}, {length(t, "0 m"), finding.ErrImpossible}, {length(t, "-10 m"), finding.ErrImpossible}} {
		h := hull(t, "open-boat", "10 m", "3 m", "1 m")
		h.Length = c.length
		if fs := h.Check(b); len(fs) != 1 || fs[0].Key != "length" || !errors.Is(fs[0], c.kind) {
			t.Errorf("a length of %s: %v", c.length, fs)
		}
	}
}

// Whoever measures a zone that there is not is told the zones of the hull, and none that stand beside it.
func TestUnknownZoneIsToldTheHulls(t *testing.T) {
	b := book(t)
	fs := coverage.Hull{Measured: []coverage.ZoneArea{{Zone: "flat", Area: area(t, "20 m2")}, {Zone: "q7", Area: area(t, "1 m2")}}}.Check(b)
	if len(fs) != 1 || !errors.Is(fs[0], finding.ErrUnknown) {
		t.Fatal(fs)
	}
	list, _ := strings.CutPrefix(fs[0].Want, "one of ")
	told := strings.Split(list, "; ")
	for z := range b.Zones() {
		if slices.Contains(told, z.Key) != z.InHull {
			t.Errorf("%s, of the hull: %t; told are %v", z.Key, z.InHull, told)
		}
	}
}
