package compat_test

import (
	"slices"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// A glance is the best way in short: its steps, its hours, and whether anything is forbidden or asked, on whatever was found, with a slate that was written on
// before.
func TestAGlanceIsTheBestInShort(t *testing.T) {
	if underRace {
		t.Skip("looks at every way; it is run without the race detector")
	}
	b := book(t)
	var slate compat.Slate
	forbidden, asked := 0, 0
	for m := range b.Materials() {
		for name, found := range founds(t, b) {
			for _, laminate := range []string{"", "wet"} {
				for _, zone := range []string{"hull", "propeller", "nowhere"} {
					s := compat.On(b, compat.Part{Name: "hull", Material: m.Key, Zone: zone, Found: found, Laminate: laminate})
					for _, want := range wanted(b) {
						r, fs := s.Best(&want)
						g := s.Glance(&want, &slate)
						if !slices.EqualFunc(g.Steps, r.Steps, alike) || g.Effort != r.Effort {
							t.Errorf("%s on %s, %s: way %v, glanced at %v", want.Key, m.Key, name, r.Steps, g.Steps)
						}
						if f, a := len(fs.At(finding.Forbidden)) > 0, len(fs.At(finding.Ask)) > 0; g.Forbidden != f || g.Ask != a {
							t.Errorf("%s on %s, %s: forbidden %v, asked %v, but at a glance %v and %v", want.Key, m.Key, name, f, a, g.Forbidden, g.Ask)
						}
						if g.Forbidden {
							forbidden++
						}
						if g.Ask {
							asked++
						}
					}
				}
			}
		}
	}
	if forbidden == 0 || asked == 0 {
		t.Errorf("%d forbidden and %d asked: the test asks too little", forbidden, asked)
	}
	lost := compat.On(b, compat.Part{Name: "hull", Material: "no such material"})
	c := coating(t, b, "hard-cuprous")
	if g := lost.Glance(&c, &slate); !g.Forbidden || !g.Ask || len(g.Steps) > 0 {
		t.Errorf("an unknown material is %+v", g)
	}
}

// alike compares steps; the film is that of the coating's row or the material's on either side.
func alike(a, b finding.Step) bool {
	return a.Do == b.Do && a.Coating == b.Coating && a.Grit == b.Grit && a.Coats == b.Coats && a.Film.Low.Cmp(b.Film.Low) == 0
}

// A glance costs no memory once the slate was used, where nothing has to be built; however often it is used.
func TestAGlanceCostsNoMemory(t *testing.T) {
	b := book(t)
	s := compat.On(b, compat.Part{Name: "hull", Material: "grp", Zone: "hull", Found: compat.Stack{sound(t, b, "ablative-cuprous-multi", 120)}})
	c := coating(t, b, "ablative-cuprous-multi")
	if c.Role != tables.Antifouling {
		t.Fatal("the type is another")
	}
	var slate compat.Slate
	if n := testing.AllocsPerRun(100, func() { s.Glance(&c, &slate) }); n > 0 {
		t.Errorf("%v allocations", n)
	}
	doubtful := compat.On(b, compat.Part{Name: "pipe", Material: "copper-nickel", Zone: "hull", Found: compat.Stack{sound(t, b, "ablative-cuprous-multi", 120)}})
	if n := testing.AllocsPerRun(100, func() { doubtful.Glance(&c, &slate) }); n > 0 {
		t.Errorf("where its maker is asked: %v allocations", n)
	}
	tied := coating(t, b, "self-polishing-cuprous")
	if n := testing.AllocsPerRun(100, func() { s.Glance(&tied, &slate) }); n > 0 {
		t.Errorf("with a tie coat: %v allocations", n)
	}
}
