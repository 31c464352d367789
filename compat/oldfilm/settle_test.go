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
	return own(t, "signs.toml", func(string) string { return rows })
}

// own is the module's book with one file written again.
func own(t *testing.T, file string, again func(text string) string) *tables.Book {
	t.Helper()
	all := fstest.MapFS{}
	data := os.DirFS("../../tables/data")
	err := fs.WalkDir(data, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(data, name)
		all[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	was := string(all[file].Data)
	is := again(was)
	if is == was {
		t.Fatalf("%s is as it was", file)
	}
	all[file].Data = []byte(is)
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

// Of the unlikely films the one that most speaks for, less what speaks against it, comes first, wherever it stands in the book; and only films that
// still stand make a test worth while.
func TestUnlikelyFilms(t *testing.T) {
	var every []string
	for _, c := range identify(t, "grp").Films {
		every = append(every, c.Film.Key)
	}
	a, b, c := every[0], every[1], every[2]
	var rows strings.Builder
	sign := func(key, test string, speaks, against []string) {
		fmt.Fprintf(&rows, "[[sign]]\nkey = %q\ntest = %q\nsays = \"saw %s\"\nfor = [%s]\nagainst = [%s]\nsettles = false\nbasis = \"assumption\"\n",
			key, test, key, quoted(speaks), quoted(against))
	}
	sign("three", "speaks against three", nil, []string{a, b, c})
	sign("one", "speaks against one", nil, []string{b})
	sign("pro", "speaks for one", []string{c}, nil)
	sign("of-a", "tells of the first alone", []string{a}, nil)
	sign("none", "speaks against all", nil, every)
	book := signed(t, rows.String())
	got, err := oldfilm.Identify(book, "grp", []string{"three", "one", "pro"})
	if err != nil {
		t.Fatal(err)
	}
	var order []string
	for _, f := range got.Films[len(got.Films)-3:] {
		order = append(order, f.Film.Key)
	}
	if want := []string{c, a, b}; !slices.Equal(order, want) { // 1-1, 0-1 and 0-2
		t.Errorf("the unlikely ones are %q, want %q", order, want)
	}
	if seen := of(got, b).Finding.Facts[0]; seen.Name != "seen" || seen.Value != "saw three; saw one" {
		t.Errorf("%s is told by %v", b, seen)
	}
	if slices.Contains(got.Settle, "tells of the first alone") {
		t.Errorf("asks for a test of %s, which is unlikely: %q", a, got.Settle)
	}
	// One sign that leaves nothing likely is a conflict already.
	if got, err := oldfilm.Identify(book, "grp", []string{"none"}); err != nil || !got.Findings.Has(oldfilm.RuleConflict) {
		t.Errorf("%v, %v", got.Findings, err)
	}
}

// The films that may lie on a material, by hand from the trade: chromate primers on light metal and zinc only, every other one everywhere. What is not
// identified is no film of its own, and what is sold today is not old.
func TestWhichFilmsMayBeThere(t *testing.T) {
	everywhere := []string{"ablative-old", "bare", "bitumen-old", "epoxy-old", "hard-old", "organotin-old", "red-lead-old", "silicone-old", "soft-old", "vinyl-old"}
	for material, more := range map[string][]string{"grp": nil, "steel": nil, "aluminium": {"chromate-primer-old"}, "galvanised-steel": {"chromate-primer-old"}} {
		var got []string
		for _, c := range identify(t, material).Films {
			got = append(got, c.Film.Key)
		}
		slices.Sort(got)
		want := slices.Sorted(slices.Values(slices.Concat(everywhere, more)))
		if !slices.Equal(got, want) {
			t.Errorf("on %s: %q, want %q", material, got, want)
		}
	}
}

// Where lower is worse the far end of strip is the lower one. Classes of adhesion, stripped surely below 1 and perhaps below 3 here.
func TestRangeOfStripWhereLowerIsWorse(t *testing.T) {
	b := own(t, "thresholds.toml", func(text string) string {
		return strings.Replace(text, "repair = 4\nstrip = 3\n", "repair = 4\nstrip = [1, 2, 3]\n", 1)
	})
	for class, want := range map[string]oldfilm.Do{
		"0A": oldfilm.Strip, "1A": oldfilm.Either, "2A": oldfilm.Either, "3A": oldfilm.Repair, "4A": oldfilm.Keep, "5A": oldfilm.Keep,
	} {
		if d, err := oldfilm.Judge(b, oldfilm.Readings{Adhesion: class}, area); err != nil || d.Do != want {
			t.Errorf("%s: %s, %v, want %s", class, d.Do, err, want)
		}
	}
}

// Waste needs a least and a most density that are densities and stand in order; a book of one's own may lack one or both. By hand: 10 m2 of 1000 um at
// least, 12 m2 of 1000 um at most, which is 0.01 and 0.012 m3.
func TestWasteNeedsTheDensities(t *testing.T) {
	const least, most = "key = \"waste-density-least\"\nname = \"stripped paint as waste, least\"\nvalue = 1.8", "key = \"waste-density-most\"\nname = \"stripped paint as waste, most\"\nvalue = 2.0"
	row := func(text, value string) string {
		if value == "" {
			return strings.Replace(text[:len(text)-3], "waste-density", "another-density", 1) + "1.0"
		}
		return text[:len(text)-3] + value
	}
	for _, c := range []struct{ least, most, low, high string }{
		{"1.7", "1.9", "17.0 kg", "22.8 kg"},
		{"1.8", "1.8", "18.0 kg", "21.6 kg"},
		{"0.9", "1.1", "9.0 kg", "13.2 kg"},
		{"1.8", "1.7", "not given", "not given"},
		{"0.0", "1.7", "not given", "not given"},
		{"", "1.7", "not given", "not given"},
		{"0.9", "", "not given", "not given"},
		{"", "", "not given", "not given"},
	} {
		b := own(t, "published/common-practice.toml", func(text string) string {
			return strings.Replace(strings.Replace(text, least, row(least, c.least), 1), most, row(most, c.most), 1)
		})
		d, err := oldfilm.Judge(b, oldfilm.Readings{Film: film(1000, 1000, 1000)}, area)
		if err != nil || d.Waste.Low.String() != c.low || d.Waste.High.String() != c.high {
			t.Errorf("%q to %q: %s to %s, %v; want %s to %s", c.least, c.most, d.Waste.Low, d.Waste.High, err, c.low, c.high)
		}
	}
}

func quoted(keys []string) string {
	var out []string
	for _, k := range keys {
		out = append(out, fmt.Sprintf("%q", k))
	}
	return strings.Join(out, ", ")
}
