package tables_test

import (
	"slices"
	"strings"
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
		"key":       func(c *tables.Coating) { c.Key = "silicone-tie-coat" },
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
				for _, which := range []struct{ upper, lower bool }{{true, false}, {false, true}, {true, true}} {
					x, y := next, old
					if which.upper {
						change(&x)
					}
					if which.lower {
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

// Every pair of coatings, in its window and past it, is answered by the row that the rules of OvercoatOf choose when all rows are gone through one by one.
func TestTheRowThatAnswers(t *testing.T) {
	b := tables.Default()
	rows, coats := slices.Collect(b.Overcoats()), slices.Collect(b.Coatings())
	for i := range coats {
		for j := range coats {
			for _, past := range []bool{false, true} {
				next, old := &coats[i], &coats[j]
				best := -1
				var most [5]int
				for k := range rows {
					if !speaks(&rows[k], next, old, past) {
						continue
					}
					o := &rows[k]
					how := [5]int{-int(o.Level), stated(o), nearness(o.New, next) + nearness(o.Old, old), int(o.Verdict), -slices.Index([]string{"", old.Key, string(old.Mechanism), string(old.Role), "antifouling"}, o.Old)}
					if best < 0 || slices.Compare(how[:], most[:]) > 0 {
						best, most = k, how
					}
				}
				want := ""
				if best >= 0 {
					want = rows[best].Key
				}
				if got, ok := b.OvercoatOf(next, old, past); ok != (best >= 0) || got.Key != want {
					t.Errorf("%s over %s, past its window %t: by %q, want %q", next.Key, old.Key, past, got.Key, want)
				}
			}
		}
	}
}

// speaks says whether the row has a word on the pair, by its fields alone.
func speaks(o *tables.Overcoat, next, old *tables.Coating, past bool) bool {
	none := next.Role == tables.Bare && o.New == "none" || old.Mechanism == tables.NoFilm && o.Old == "none"
	if (next.Role == tables.Bare || old.Mechanism == tables.NoFilm) && !none {
		return false
	}
	if o.New != "" && nearness(o.New, next) == 0 || o.Old != "" && nearness(o.Old, old) == 0 || o.Except != "" && nearness(o.Except, next) > 0 {
		return false
	}
	if o.Level == tables.SameOnSame {
		if next.Mechanism != old.Mechanism || slices.Contains([]tables.Mechanism{"", tables.Unknown, tables.NoFilm}, next.Mechanism) {
			return false
		}
	}
	solvent, window := "mild", "inside"
	if next.Strong {
		solvent = "strong"
	}
	if past {
		window = "past"
	}
	return (o.NewPacks == 0 || o.NewPacks == next.Packs) && (o.OldPacks == 0 || o.OldPacks == old.Packs) && (o.Solvent == "" || o.Solvent == solvent) &&
		(o.Window == "" || o.Window == window) && (o.OldIs == "" || o.OldIs == old.Biocide)
}

// nearness is how closely a word names a coating: by its key, by its mechanism or role, or as an antifouling or the old film of one.
func nearness(word string, c *tables.Coating) int {
	notFouling := []tables.Mechanism{tables.Inert, tables.Bitumen, tables.Vinyl, tables.Unknown, tables.NoFilm}
	switch {
	case word == "":
		return 0
	case word == c.Key:
		return 3
	case word == "antifouling" && (c.Role == tables.Antifouling || c.Role == tables.OldFilm && !slices.Contains(notFouling, c.Mechanism)):
		return 1
	case word != "antifouling" && (word == string(c.Mechanism) || word == string(c.Role)):
		return 2
	}
	return 0
}

// stated counts the fields by which the row narrows what it speaks of.
func stated(o *tables.Overcoat) int {
	n := 0
	for _, s := range []string{o.New, o.Old, o.Solvent, o.Window, string(o.OldIs)} {
		if s != "" {
			n++
		}
	}
	for _, packs := range []int{o.NewPacks, o.OldPacks} {
		if packs > 0 {
			n++
		}
	}
	return n
}

// Of rows of one level and as many fields the one answers that names the coating by its key, then by its mechanism, then as an antifouling, whatever their verdicts.
func TestTheCloserNameAnswers(t *testing.T) {
	var text strings.Builder
	for _, r := range [][3]string{{"by-class", "antifouling", "forbidden"}, {"by-mechanism", "hard", "caution"}, {"by-key", "hard-cuprous", "fine"}} {
		text.WriteString(row("overcoat", fields{
			"key": `"` + r[0] + `"`, "basis": `"derived"`, "level": `"bar"`, "rule": `"over-bare"`, "new": `"` + r[1] + `"`, "verdict": `"` + r[2] + `"`,
			"old": `"vinyl-old"`, "new_packs": `1`, "old_packs": `1`, "window": `"past"`,
		}))
	}
	b := with(t, text.String())
	old, err := b.Coating("vinyl-old")
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]string{"hard-cuprous": "by-key", "hard-thiocyanate": "by-mechanism", "ablative-thiocyanate": "by-class"} {
		next, err := b.Coating(key)
		if err != nil {
			t.Fatal(err)
		}
		if got, _ := b.OvercoatOf(&next, &old, true); got.Key != want {
			t.Errorf("%s over old vinyl is answered by %q, want %q", key, got.Key, want)
		}
	}
}

// The level and the verdict of a row are those that its file writes.
func TestLevelsAsWritten(t *testing.T) {
	raw := map[string]map[string]any{}
	for _, r := range rows(t)["overcoat"] {
		key, _ := r["key"].(string)
		raw[key] = r
	}
	levels := map[tables.Level]int{}
	for o := range book(t).Overcoats() {
		levels[o.Level]++
		if r := raw[o.Key]; o.Level.String() != r["level"] || o.Verdict.String() != r["verdict"] {
			t.Errorf("%s is %s, %s, and written %v, %v", o.Key, o.Level, o.Verdict, r["level"], r["verdict"])
		}
	}
	if len(levels) != 4 {
		t.Errorf("rows of levels %v, want all four", levels)
	}
}
