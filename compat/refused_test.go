package compat_test

import (
	"errors"
	"slices"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What the book does not hold is asked about, never taken as fine.
func TestNamesThatTheBookHasNot(t *testing.T) {
	b := book(t)
	hard := coating(t, b, "hard-cuprous")
	no := compat.Part{Name: "hull", Material: "cheese"}
	nowhere := compat.Part{Name: "leg", Material: "aluminium", Zone: "moon"}
	unwritten := hard
	unwritten.Key, unwritten.Under = "unwritten", "no-such-undercoat"
	for name, c := range map[string]struct {
		fs      finding.List
		against string
	}{
		"a stack on no material":     {compat.CheckStack(b, no, compat.Stack{sound(t, b, "hard-cuprous", 50)}, -1), "cheese"},
		"a coating on no material":   {compat.OnMaterial(b, hard, no), "cheese"},
		"beside no material":         {compat.Beside(b, hard, []compat.Part{no}), "cheese"},
		"beside no zone":             {compat.Beside(b, hard, []compat.Part{nowhere}), "moon"},
		"a coating in no zone":       {compat.OnMaterial(b, coating(t, b, "hard-copper-free"), nowhere), "moon"},
		"an undercoat that is not":   {compat.Over(b, unwritten, sound(t, b, "epoxy-primer", 50)), "no-such-undercoat"},
		"a stack with a part nobody": {compat.CheckStack(b, compat.Part{Name: "x"}, compat.Stack{sound(t, b, "hard-cuprous", 50)}, -1), ""},
	} {
		if c.fs.Worst() < finding.Ask || !slices.ContainsFunc(c.fs, func(f finding.Finding) bool { return f.Verdict == finding.Ask && f.Against == c.against }) {
			t.Errorf("%s: %v", name, c.fs)
		}
	}
	if fs := compat.CheckStack(b, compat.Part{Name: "hull", Material: "grp"}, nil, -1); len(fs) != 1 || fs[0].Verdict != finding.Fine {
		t.Errorf("no layers: %v", fs)
	}
	if fs := compat.Beside(b, hard, nil); len(fs) != 1 || fs[0].Verdict != finding.Fine {
		t.Errorf("beside nothing: %v", fs)
	}
}

// What PartCheck does not hold: nothing given, a barrier where it does harm, signs and potentials that nobody knows.
func TestPartsThatAreNone(t *testing.T) {
	b := book(t)
	um := quantity.Micrometre.N
	var none quantity.Film
	film := func(low, typical, high quantity.Film) func(*compat.Part) {
		return func(p *compat.Part) {
			l := sound(t, b, "hard-cuprous", 100)
			l.Film = quantity.Range[quantity.Film]{Low: low, Typical: typical, High: high}
			p.Found = compat.Stack{l}
		}
	}
	for name, c := range map[string]struct {
		change func(*compat.Part)
		key    string
		kind   error
	}{
		"a film of a range":            {film(um(50), um(60), um(70)), "", nil},
		"a film of one thickness":      {film(um(50), um(50), um(50)), "", nil},
		"a film that nobody measured":  {film(none, none, none), "", nil},
		"a film without a high end":    {film(um(50), um(60), none), "found[1].film", finding.ErrMissing},
		"a film without a typical one": {film(um(50), none, um(70)), "found[1].film", finding.ErrMissing},
		"a film without a low end":     {film(none, um(60), um(70)), "found[1].film", finding.ErrMissing},
		"a film of a low end alone":    {film(um(50), none, none), "found[1].film", finding.ErrMissing},
		"a film of a high end alone":   {film(none, none, um(70)), "found[1].film", finding.ErrMissing},
		"a film that falls at first":   {film(um(61), um(60), um(70)), "found[1].film", finding.ErrImpossible},
		"a film that falls at last":    {film(um(50), um(71), um(70)), "found[1].film", finding.ErrImpossible},
		"a bare surface":               {func(p *compat.Part) { p.Found = bare(t, b) }, "", nil},
		"a barrier on a laminate":      {func(p *compat.Part) { p.Barrier = quantity.Yes }, "", nil},
		"a barrier that nobody builds": {func(p *compat.Part) { p.Material, p.Barrier = "bronze", quantity.Yes }, "barrier", finding.ErrImpossible},
		"a part":                       {func(*compat.Part) {}, "", nil},
		"no material":                  {func(p *compat.Part) { p.Material = "" }, "material", finding.ErrMissing},
		"an unknown zone":              {func(p *compat.Part) { p.Zone = "keeel" }, "zone", finding.ErrUnknown},
		"a barrier on planks":          {func(p *compat.Part) { p.Material, p.Barrier = "wood-carvel", quantity.Yes }, "barrier", finding.ErrImpossible},
		"no barrier on planks":         {func(p *compat.Part) { p.Material, p.Barrier = "wood-carvel", quantity.No }, "", nil},
		"an unknown sign":              {func(p *compat.Part) { p.Seen = []string{"thumbs up"} }, "seen", finding.ErrUnknown},
		"an electrode alone":           {func(p *compat.Part) { p.Reads.Electrode = "zinc-seawater" }, "potential", finding.ErrMissing},
		"a potential alone":            {func(p *compat.Part) { p.Reads.Value = quantity.Millivolt.N(-820) }, "electrode", finding.ErrUnknown},
		"a potential too low": {func(p *compat.Part) {
			p.Reads = galvanic.Reading{Value: quantity.Millivolt.N(-3001), Electrode: "zinc-seawater"}
		}, "potential", finding.ErrImpossible},
		"the lowest potential": {func(p *compat.Part) {
			p.Reads = galvanic.Reading{Value: quantity.Millivolt.N(-3000), Electrode: "zinc-seawater"}
		}, "", nil},
		"flaking all over":      {func(p *compat.Part) { p.Readings.Flaking = quantity.Percent.N(100) }, "", nil},
		"flaking more than all": {func(p *compat.Part) { p.Readings.Flaking = quantity.Percent.N(101) }, "readings.flaking", finding.ErrImpossible},
	} {
		p := compat.Part{Name: "hull", Zone: "hull", Material: "grp"}
		c.change(&p)
		fs := p.Check(b)
		if c.key == "" && len(fs) > 0 || c.key != "" && (len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind)) {
			t.Errorf("%s: %v; want %q", name, fs, c.key)
		}
	}
}

// A part as its readings show it: the worse of what was read and reported; what was not read, and readings that cannot be, change nothing.
func TestAsRead(t *testing.T) {
	b := book(t)
	part := func(state tables.Condition, flaking int64, moisture, laminate string) compat.Part {
		l := sound(t, b, "ablative-cuprous-multi", 100)
		l.State = state
		p := compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: compat.Stack{sound(t, b, "epoxy-barrier", 200), l}, Laminate: laminate, Readings: oldfilm.Readings{Moisture: moisture}}
		if flaking >= 0 {
			p.Readings.Flaking = quantity.Percent.N(flaking)
		}
		return p
	}
	for name, c := range map[string]struct {
		part     compat.Part
		state    tables.Condition
		laminate string
	}{
		"nothing read":               {part(tables.Sound, -1, "", ""), tables.Sound, ""},
		"flaking read, sound told":   {part(tables.Sound, 60, "", ""), "flaking", ""},
		"flaking read, nothing told": {part("", 60, "", ""), "flaking", ""},
		"no flaking read":            {part("flaking", 0, "", ""), "flaking", ""},
		"no flaking, nothing told":   {part("", 0, "", ""), tables.Sound, ""},
		"no flaking, not reported":   {part(tables.NotReported, 0, "", ""), tables.Sound, ""},
		"flaking read, as bad told":  {part("alligatored", 60, "", ""), "alligatored", ""},
		"drying, nobody said":        {part(tables.Sound, -1, "falling", ""), tables.Sound, "wet"},
		"getting wetter":             {part(tables.Sound, -1, "rising", ""), tables.Sound, "wet"},
		"steady":                     {part(tables.Sound, -1, "steady", ""), tables.Sound, ""},
		"drying, and said to be dry": {part(tables.Sound, -1, "falling", "dry"), tables.Sound, "dry"},
		"readings that cannot be":    {part(tables.Sound, 101, "falling", ""), tables.Sound, ""},
	} {
		before := c.part.Found[1].State
		got := c.part.AsRead(b)
		if s := got.Found[1].State; s != c.state || got.Laminate != c.laminate || got.Found[0].State != tables.Sound {
			t.Errorf("%s: %q, laminate %q; want %q, %q", name, s, got.Laminate, c.state, c.laminate)
		}
		if c.part.Found[1].State != before {
			t.Errorf("%s: the part that was given is changed", name)
		}
	}
	one := part(tables.Sound, 60, "", "")
	one.Found = one.Found[1:]
	if got := one.AsRead(b).Found[0].State; got != "flaking" {
		t.Errorf("of one film: %q", got)
	}
	one.Found = nil
	if got := one.AsRead(b).Found; len(got) > 0 {
		t.Errorf("of no film: %v", got)
	}
	one.Found = bare(t, b)
	if got := one.AsRead(b).Found[0].State; got != tables.Sound {
		t.Errorf("of a bare surface: %q", got)
	}
}

// A window closes by what goes over: an antifouling of one pack by its own limit, all else by the coating's; none where the row has none.
func TestCloses(t *testing.T) {
	b := book(t)
	primer, barrier, hard := coating(t, b, "epoxy-primer"), coating(t, b, "epoxy-barrier"), coating(t, b, "hard-cuprous")
	if primer.AntifoulMax.Equal(primer.OvercoatMax) || !primer.AntifoulMax.Given() {
		t.Fatal("the primer closes for both at once: this shows nothing")
	}
	if got := compat.Closes(hard, primer); !got.Equal(primer.AntifoulMax) {
		t.Errorf("an antifouling over the primer: %s", got)
	}
	if got := compat.Closes(barrier, primer); !got.Equal(primer.OvercoatMax) {
		t.Errorf("a barrier over the primer: %s", got)
	}
	if got := compat.Closes(hard, hard); got.Given() {
		t.Errorf("an antifouling over itself: %s", got)
	}
}
