package tables_test

import (
	"testing"

	"boatyard.example/bottomwork/tables"
)

// A coating that somebody changed is answered as what it now is, not as the row of the book that it came from; and so is one that no book made.
func TestAChangedCoatingIsAnsweredAnew(t *testing.T) {
	b := tables.Default()
	differ := 0
	for next := range b.Ranked() {
		for a := range b.Coatings() {
			for _, key := range []string{"epoxy-old", "silicone-old", "bare"} {
				as, err := b.Coating(key)
				if err != nil {
					t.Fatal(err)
				}
				changed := a
				changed.Key, changed.Mechanism, changed.Role, changed.Biocide, changed.Packs, changed.Strong = as.Key, as.Mechanism, as.Role, as.Biocide, as.Packs, as.Strong
				for _, past := range []bool{false, true} {
					want, known := b.OvercoatOf(&next, &as, past)
					for _, c := range []tables.Coating{changed, made(as)} {
						if got, ok := b.OvercoatOf(&next, &c, past); ok != known || got.Key != want.Key {
							t.Fatalf("%s over %s that was %s: %s %v, want %s %v", next.Key, as.Key, a.Key, got.Key, ok, want.Key, known)
						}
					}
					if before, _ := b.OvercoatOf(&next, &a, past); before.Key != want.Key {
						differ++
					}
				}
			}
		}
	}
	if differ == 0 {
		t.Error("every coating is answered alike: the test asks nothing")
	}
}

// made is a coating that no book made, like another in all that rows of coat over coat ask.
func made(as tables.Coating) tables.Coating {
	return tables.Coating{Row: tables.Row{Key: as.Key}, Mechanism: as.Mechanism, Role: as.Role, Biocide: as.Biocide, Packs: as.Packs, Strong: as.Strong}
}

// It is enough that one of the fields is another.
func TestOneChangedFieldIsEnough(t *testing.T) {
	b := tables.Default()
	changes := map[string]func(*tables.Coating){
		"mechanism": func(c *tables.Coating) { c.Mechanism = tables.FoulRelease },
		"role":      func(c *tables.Coating) { c.Role = tables.OldFilm },
		"biocide":   func(c *tables.Coating) { c.Biocide = tables.Organotin },
		"packs":     func(c *tables.Coating) { c.Packs = 3 - c.Packs },
		"solvent":   func(c *tables.Coating) { c.Strong = !c.Strong },
	}
	for name, change := range changes {
		differ := 0
		for next := range b.Coatings() {
			for old := range b.Coatings() {
				before, _ := b.OvercoatOf(&next, &old, true)
				for _, upper := range []bool{true, false} {
					x, y := next, old
					if upper {
						change(&x)
					} else {
						change(&y)
					}
					madeX, madeY := made(x), made(y)
					got, _ := b.OvercoatOf(&x, &y, true)
					want, _ := b.OvercoatOf(&madeX, &madeY, true)
					if got.Key != want.Key {
						t.Fatalf("%s over %s, another %s: %s, want %s", x.Key, y.Key, name, got.Key, want.Key)
					}
					if got.Key != before.Key {
						differ++
					}
				}
			}
		}
		if differ == 0 {
			t.Errorf("no answer hangs on the %s", name)
		}
	}
}
