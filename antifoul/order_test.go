package antifoul_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// workOf is the work that puts a coating on.
func workOf(r tables.Role) finding.Action {
	if do, ok := map[tables.Role]finding.Action{tables.Barrier: finding.Barrier, tables.TieCoat: finding.Tie, tables.Sealer: finding.Seal}[r]; ok {
		return do
	}
	return finding.Prime
}

// An undercoat is told with the words of its own work, not another's: of a barrier that it is tested before anything with copper, of a sealer that it must name the old film.
func TestUndercoatsAreToldAsWhatTheyAre(t *testing.T) {
	const found = "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\""
	met := map[tables.Role]bool{}
	for _, boat := range []string{
		strings.NewReplacer("material = \"grp\"\n[[part.found]]\n"+found, "material = \"steel\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"").Replace(sheet),
		strings.NewReplacer(found, "coating = \"organotin-old\"\nstate = \"sound\"", "place = \"GB\"", "place = \"DK\"").Replace(sheet),
		strings.NewReplacer(found, "coating = \"bare\"\nstate = \"sound\"", "coating = \"ablative-cuprous-multi\"\ntop_colour", "coating = \"foul-release-silicone\"\ntop_colour").Replace(sheet),
		strings.NewReplacer("material = \"grp\"\n[[part.found]]\n"+found, "material = \"bronze\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"").Replace(sheet),
	} {
		j := plannedJob(t, boat)
		for _, task := range j.Order {
			if task.Coat == nil || task.Coat.Layer.For != compat.Undercoat {
				continue
			}
			role := task.Coat.Layer.Coating.Role
			row, err := j.Book.Step(workOf(role))
			if err != nil || task.Says != row.Says || task.Hold != row.Hold {
				t.Errorf("%s: %q, hold %q (%v)", task.Coat.Layer.Coating.Name, task.Says, task.Hold, err)
			}
			met[role] = true
		}
	}
	if len(met) != 4 {
		t.Errorf("roles met: %v", met)
	}
}

// ownOrder holds that the work on each part stands in the order of its way: washing once, whatever else its steps ask for, and with the grit that they ask for.
func ownOrder(t *testing.T, name string, j *antifoul.Job) {
	t.Helper()
	for _, s := range j.Schemes {
		var got, want []string
		for _, task := range j.Order {
			if task.Coat == nil && slices.Contains(task.Parts, s.Part) && task.Do != finding.Wash {
				got = append(got, string(task.Do)+" "+task.Grit)
			}
		}
		for _, x := range s.Route.Steps {
			if x.Coating == "" && x.Do != finding.Wash {
				want = append(want, string(x.Do)+" "+x.Grit)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s, %s: %v, want %v", name, s.Part, got, want)
		}
	}
}

// A laminate that dries out is abraded before and after: that is two pieces of work.
func TestAbradedTwice(t *testing.T) {
	j := plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"wet\"\nbarrier = true", "lead", "launch_open = true"))
	ownOrder(t, "a wet laminate", j)
	n := 0
	for _, task := range j.Order {
		if task.Do == finding.Abrade && slices.Contains(task.Parts, "hull") {
			n++
		}
	}
	if n != 2 {
		t.Errorf("the hull is abraded %d times", n)
	}
}

// One place where she stood is enough for the stands to be shifted, which takes the yard's hours and none of the crew's.
func TestStandsAreShifted(t *testing.T) {
	row, err := tables.Default().Step(finding.Shift)
	if err != nil {
		t.Fatal(err)
	}
	for blocks, want := range map[int]bool{0: false, 1: true} {
		j := plannedJob(t, strings.Replace(sheet, "draft = \"1.6 m\"", fmt.Sprintf("draft = \"1.6 m\"\nstand_pairs = 0\nkeel_blocks = %d", blocks), 1))
		i := slices.IndexFunc(j.Order, func(x antifoul.Task) bool { return x.Do == finding.Shift })
		if j.Pads.Count != blocks || (i >= 0) != want || i >= 0 && (j.Order[i].Hours.High != 0 || j.Order[i].Says != row.Says) {
			t.Errorf("%d blocks: %d places, shifted %v", blocks, j.Pads.Count, i >= 0)
		}
	}
}

// Each coat of each scheme stands in one task of its part, with the same paint, colour, purpose and number; a task has the zones, the area and the litres of all its parts. Masking is
// done where anything is painted, the stands are shifted where they stood on paint, and what an old film is is found out before it is washed.
func TestTasksAreTheCoatsOfTheirParts(t *testing.T) {
	b := tables.Default()
	shared, known := 0, 0
	eachBoat(t, 10, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		j, err := antifoul.Plan(b, x)
		if err != nil {
			t.Fatal(err)
		}
		ownOrder(t, fmt.Sprintf("boat %d", n), j)
		done := map[finding.Action]int{}
		washed := map[string]bool{}
		want := map[string]int{} // coats that the tasks say of each part
		coats := 0
		for _, s := range j.Schemes {
			coats += len(s.Coats)
		}
		for _, task := range j.Order {
			done[task.Do]++
			for _, p := range task.Parts {
				washed[p] = washed[p] || task.Do == finding.Wash
				if task.Do == finding.Identify || task.Do == finding.TestPatch {
					known++
					if washed[p] {
						t.Errorf("boat %d, %s: %s after washing", n, p, task.Do)
					}
				}
			}
			if task.Coat == nil {
				continue
			}
			if len(task.Parts) > 1 {
				shared++
			}
			var zones []string
			var litres, area float64
			for _, p := range task.Parts {
				s, _ := j.Scheme(p)
				l := task.Coat.Layer
				i := slices.IndexFunc(s.Coats, func(k antifoul.Coat) bool {
					return k.Layer.Coating.Key == l.Coating.Key && k.Layer.Colour == l.Colour && k.Layer.For == l.For && k.Layer.Coats == l.Coats
				})
				if i < 0 {
					t.Fatalf("boat %d: the %s gets no such %s coat of %s", n, p, l.For, l.Coating.Key)
				}
				want[fmt.Sprint(p, i)]++
				zones = append(zones, s.Coats[i].Zones...)
				litres += s.Coats[i].Litres.Typical.Float(quantity.Litre)
				area += s.Coats[i].Area.Typical.Float(quantity.SquareMetre)
			}
			near := func(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }
			k := task.Coat
			row, err := b.Step(workOf(k.Layer.Coating.Role))
			if err != nil || !near(task.Hours.Typical, row.Hours.Typical*area*float64(k.Layer.Coats)) {
				t.Errorf("boat %d: %s on %v takes %v h (%v)", n, k.Layer.For, task.Parts, task.Hours, err)
			}
			if !slices.Equal(k.Zones, zones) || !near(k.Litres.Typical.Float(quantity.Litre), litres) || !near(k.Area.Typical.Float(quantity.SquareMetre), area) || !near(task.Area.Typical.Float(quantity.SquareMetre), area) {
				t.Errorf("boat %d: %s on %v: %v, %v, %v; want %v, %v L, %v m2", n, k.Layer.For, task.Parts, k.Zones, k.Litres.Typical, k.Area.Typical, zones, litres, area)
			}
		}
		for i, times := range want {
			if times != 1 {
				t.Errorf("boat %d: coat %s is put on %d times", n, i, times)
			}
		}
		if len(want) != coats || (done[finding.Mask] == 1) != (coats > 0) || (done[finding.Shift] == 1) != (j.Pads.Count > 0) {
			t.Errorf("boat %d: %d coats of %d, %d places, %v", n, len(want), coats, j.Pads.Count, done)
		}
	})
	if shared == 0 || known == 0 {
		t.Errorf("%d coats on several parts, %d films to be known: the test asks too little", shared, known)
	}
}

// A keel that gets coats of its own first has the common ones with the hull all the same, after its own.
func TestOwnCoatsBeforeCommonOnes(t *testing.T) {
	var got []string
	for _, task := range plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "cast-iron", "launch_open = true")).Order {
		if task.Coat != nil {
			got = append(got, fmt.Sprintf("%s on %s", task.Coat.Layer.For, strings.Join(task.Parts, " and ")))
		}
	}
	want := []string{"undercoat on keel", "undercoat on keel", "signal on hull and keel", "extra on hull", "working on hull and keel"}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Beside a leg of aluminium the hull under copper keeps a strip free of it, before anything is masked; beside one that may bear the same there is none.
func TestStripBesideALeg(t *testing.T) {
	for material, want := range map[string]bool{"aluminium": true, "grp": false} {
		j := plannedJob(t, sheet+"[[part]]\nname = \"leg\"\nzone = \"leg\"\nmaterial = \""+material+"\"\narea = \"0.5 m2\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"\n")
		at := func(a finding.Action) int {
			return slices.IndexFunc(j.Order, func(x antifoul.Task) bool { return x.Do == a })
		}
		if (at(finding.Gap) >= 0) != want || at(finding.Gap) > at(finding.Mask) {
			t.Errorf("%s: the strip is work %d, masking %d", material, at(finding.Gap), at(finding.Mask))
		}
	}
}
