package tables_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
)

// over writes a row of coat over coat.
func over(key, level, next, old, verdict string) string {
	f := fields{"key": `"` + key + `"`, "basis": `"derived"`, "level": `"` + level + `"`, "rule": `"over-bare"`, "verdict": `"` + verdict + `"`}
	if next != "" {
		f["new"] = `"` + next + `"`
	}
	if old != "" {
		f["old"] = `"` + old + `"`
	}
	return row("overcoat", f)
}

// answered is the row that answers one coating over another inside the window.
func answered(t *testing.T, b *tables.Book, next, old string) string {
	t.Helper()
	x, err := b.Coating(next)
	if err != nil {
		t.Fatal(err)
	}
	y, err := b.Coating(old)
	if err != nil {
		t.Fatal(err)
	}
	o, _ := b.OvercoatOf(&x, &y, false)
	return o.Key
}

// Of two rows that name both coatings by their keys the harsher answers, wherever it stands.
func TestOfTwoThatNameBothTheHarsherAnswers(t *testing.T) {
	fine, harsh := over("fine", "bar", "hard-cuprous", "vinyl-old", "fine"), over("harsh", "bar", "hard-cuprous", "vinyl-old", "forbidden")
	for _, text := range []string{fine + harsh, harsh + fine} {
		if got := answered(t, with(t, text), "hard-cuprous", "vinyl-old"); got != "harsh" {
			t.Errorf("%s: answered by %q, want the harsher", text, got)
		}
	}
}

// A role names a coating less closely than its key does, and no less closely than its mechanism.
func TestARoleNamesLessCloselyThanAKey(t *testing.T) {
	b := with(t, over("role", "bar", "primer", "vinyl-old", "forbidden")+over("key", "bar", "etch-primer", "vinyl-old", "fine"))
	if got := answered(t, b, "etch-primer", "vinyl-old"); got != "key" {
		t.Errorf("by %q, want the row that names the primer by its key", got)
	}
	b = with(t, over("role", "bar", "hard-cuprous", "old film", "forbidden")+over("mechanism", "bar", "hard-cuprous", "vinyl", "fine"))
	if got := answered(t, b, "hard-cuprous", "vinyl-old"); got != "role" {
		t.Errorf("by %q, want the harsher of two that name the film alike", got)
	}
}

// A row of the last level that narrows nothing answers where no other does, and only there.
func TestARowThatNarrowsNothing(t *testing.T) {
	hard, soft := good()["coating"], good()["coating"]
	hard["key"], hard["role"], hard["mechanism"] = `"other"`, `"antifouling"`, `"ablative"`
	soft["key"], soft["role"], soft["mechanism"] = `"another"`, `"antifouling"`, `"soft"`
	wide := over("wide", "class", "", "", "caution")
	b, err := tables.Load(folder(map[string]string{"more.toml": row("coating", hard) + row("coating", soft) + strings.Replace(wide, "over-bare", "rule-one", 1)}))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range [][3]string{{"other", "another", "wide"}, {"another", "other", "wide"}, {"other", "hard", "wide"}, {"hard", "other", "hard-on-hard"}} {
		if got := answered(t, b, c[0], c[1]); got != c[2] {
			t.Errorf("%s over %s: by %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

// A coating of one book is answered by the rows of another book too, as what it is, though the other book holds fewer or more coatings, or very many.
func TestACoatingOfAnotherBook(t *testing.T) {
	base := tables.Default()
	more := func(n int) *tables.Book {
		var text strings.Builder
		for i := range n {
			f := good()["coating"]
			f["key"], f["hazards"], f["mechanism"] = fmt.Sprintf(`"own-%d"`, i), "", `"foul-release"`
			text.WriteString(row("coating", f))
		}
		return with(t, text.String())
	}
	two, very := more(2), more(300)
	for _, asked := range []*tables.Book{base, two, very} {
		for _, of := range []*tables.Book{base, two, very} {
			coats := slices.Collect(of.Coatings())
			for _, next := range coats[:10] {
				for i := 0; i < len(coats); i += 1 + i/70*20 { // each of the first, few of the many
					for _, past := range []bool{false, true} {
						madeNext, madeOld := made(next), made(coats[i])
						want, known := base.OvercoatOf(&madeNext, &madeOld, past)
						if got, ok := asked.OvercoatOf(&next, &coats[i], past); ok != known || got.Key != want.Key {
							t.Fatalf("%s over %s: by %q, want %q", next.Key, coats[i].Key, got.Key, want.Key)
						}
					}
				}
			}
		}
	}
}
