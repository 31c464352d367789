package oldfilm_test

import (
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
)

// signed is the module's book with these signs in place of its own.
func signed(t *testing.T, rows string) *tables.Book {
	t.Helper()
	all := fstest.MapFS{"signs.toml": {Data: []byte(rows)}}
	data := os.DirFS("../../tables/data")
	err := fs.WalkDir(data, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || name == "signs.toml" {
			return err
		}
		text, err := fs.ReadFile(data, name)
		all[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	b, err := tables.Load(all)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A test is worth making where it parts the films that still stand: first those that settle, then those that speak of more films. One that
// says the same of all is not.
func TestTestsInTheOrderOfWhatTheyTell(t *testing.T) {
	var every []string
	for _, c := range identify(t, "grp").Films {
		every = append(every, c.Film.Key)
	}
	if len(every) < 5 {
		t.Fatalf("only %q may lie on GRP", every)
	}
	a, b, c := every[0], every[1], every[2]
	var rows strings.Builder
	sign := func(key, test string, settles bool, speaks, against []string) {
		fmt.Fprintf(&rows, "[[sign]]\nkey = %q\ntest = %q\nsays = \"it is so\"\nfor = [%s]\nagainst = [%s]\nsettles = %t\nbasis = \"assumption\"\n",
			key, test, quoted(speaks), quoted(against), settles)
	}
	sign("c-one", "tells of one, then of three", false, []string{a}, nil)
	sign("c-three", "tells of one, then of three", false, []string{a, b}, []string{c})
	sign("c-again", "tells of one, then of three", false, nil, []string{b})
	sign("d", "tells of two", false, []string{a}, []string{b})
	sign("all", "speaks for all", false, every, nil)
	sign("none", "speaks against all", false, nil, every)
	sign("e", "settles one", true, nil, []string{a})
	sign("e-soft", "settles one", false, nil, []string{a})
	sign("f", "settles two", true, nil, []string{a, b})
	sign("last", "tells of four", false, every[1:5], nil)
	book := signed(t, rows.String())
	want := []string{"settles two", "settles one", "tells of four", "tells of one, then of three", "tells of two"}
	got, err := oldfilm.Identify(book, "grp", nil)
	if err != nil || !slices.Equal(got.Settle, want) {
		t.Errorf("%q, %v, want %q", got.Settle, err, want)
	}
	// With a and b ruled out what speaks of them alone tells nothing more; a sign seen twice is one sign.
	want = []string{"tells of four", "tells of one, then of three"}
	got, err = oldfilm.Identify(book, "grp", []string{"f", "f"})
	if err != nil || !slices.Equal(got.Settle, want) {
		t.Errorf("after a and b: %q, %v, want %q", got.Settle, err, want)
	}
	if x := of(got, a); x.Standing != oldfilm.RuledOut || len(x.Against) != 1 || len(x.Finding.Basis) != 1 {
		t.Errorf("%s is %s by %d signs on %d rows", a, x.Standing, len(x.Against), len(x.Finding.Basis))
	}
	// Among those alike in standing the one that more speaks for comes first, less what speaks against.
	got, err = oldfilm.Identify(book, "grp", []string{"c-one", "last", "c-three"})
	if err != nil || got.Films[0].Film.Key != a && got.Films[0].Film.Key != b || len(got.Films[0].For) != 2 {
		t.Errorf("first is %s, %v", got.Films[0].Film.Key, err)
	}
	if last := got.Films[len(got.Films)-1]; last.Film.Key != c || last.Standing != oldfilm.Unlikely {
		t.Errorf("last is %s, %s", last.Film.Key, last.Standing)
	}
}

func quoted(keys []string) string {
	var out []string
	for _, k := range keys {
		out = append(out, fmt.Sprintf("%q", k))
	}
	return strings.Join(out, ", ")
}
