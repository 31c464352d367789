package law_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func coating(tb testing.TB, b *tables.Book, key string) tables.Coating {
	tb.Helper()
	c, err := b.Coating(key)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

func day(tb testing.TB, s string) quantity.Date {
	tb.Helper()
	d, err := quantity.ParseDate(s)
	if err != nil {
		tb.Fatal(err)
	}
	return d
}

func rowOf(tb testing.TB, b *tables.Book, key string) tables.Law {
	tb.Helper()
	for l := range b.Laws() {
		if l.Key == key {
			return l
		}
	}
	tb.Fatalf("no law %q", key)
	return tables.Law{}
}

// with returns the embedded book with rows of TOML text on top.
func with(tb testing.TB, text string) *tables.Book {
	tb.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(text)}})
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

// of returns the finding of the law with the name, and whether there is one.
func of(l finding.List, name string) (finding.Finding, bool) {
	for _, f := range l {
		if fact(f, "law") == name {
			return f, true
		}
	}
	return finding.Finding{}, false
}

func fact(f finding.Finding, name string) any {
	for _, x := range f.Facts {
		if x.Name == name {
			return x.Value
		}
	}
	return nil
}

var sloop = law.Craft{Length: quantity.Metre.N(10), Mass: quantity.Tonne.N(4), Material: "grp"}

func kept(place, water string) []law.Berth {
	return []law.Berth{{Place: place, Role: "kept", Water: water}}
}

func TestEmbeddedBookLoads(t *testing.T) {
	n := 0
	for range tables.Default().Laws() {
		n++
	}
	if n < 30 {
		t.Fatalf("%d laws in the embedded book: it did not load", n)
	}
}

// Each case is what the published text says of a berth; see law_published_test.go for the values.
func TestScreenByPlace(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	light := sloop
	light.Mass = quantity.Kilogram.N(150)
	unknown := law.Craft{}
	for _, tc := range []struct {
		coating string
		craft   law.Craft
		at      []law.Berth
		rule    finding.ID
		want    finding.Verdict // the worst of all
	}{
		{"hard-cuprous", sloop, kept("SE-bothnia", "brackish"), "law-bars", finding.Forbidden},
		{"hard-copper-free", sloop, kept("SE-bothnia", "brackish"), "law-bars", finding.Forbidden},
		{"inert-epoxy", sloop, kept("SE-bothnia", "brackish"), "law-silent-free", finding.Fine},
		{"hard-cuprous", light, kept("SE-bothnia", "brackish"), "law-asks", finding.Ask},
		{"hard-cuprous", unknown, kept("SE-bothnia", "brackish"), "law-may-apply", finding.Ask},
		{"hard-cuprous", sloop, kept("SE-fresh", ""), "law-bars", finding.Forbidden}, // the place is fresh, whatever the berth says
		{"hard-cuprous", sloop, kept("SE", "fresh"), "law-bars", finding.Forbidden},
		{"hard-cuprous", sloop, kept("SE-east", "brackish"), "law-asks", finding.Ask},
		{"hard-cuprous", sloop, kept("SE-west", "salt"), "law-asks", finding.Ask},
		{"foul-release-silicone", sloop, kept("SE-west", "salt"), "law-silent-free", finding.Fine},
		{"hard-cuprous", sloop, kept("FI", "fresh"), "law-bars", finding.Forbidden},
		{"hard-cuprous", sloop, kept("FI", "brackish"), "law-asks", finding.Ask},
		{"hard-cuprous", sloop, kept("FI", ""), "law-may-apply", finding.Ask},
		{"hard-copper-free", sloop, kept("DK", "fresh"), "law-bars", finding.Forbidden},
		{"hard-copper-free", light, kept("DK", "salt"), "law-bars", finding.Forbidden},
		{"hard-cuprous", sloop, kept("DK", "salt"), "law-asks", finding.Ask},
		{"hard-cuprous", sloop, kept("DE-bodensee", ""), "law-bars", finding.Forbidden},
		{"hard-cuprous", sloop, kept("DE", "fresh"), "law-which-part", finding.Ask},
		{"hard-cuprous", sloop, kept("NL", "salt"), "law-limits", finding.Ask}, // the approvals of 2025
		{"hard-cuprous", sloop, kept("GB", "salt"), "law-limits", finding.Caution},
		{"hard-cuprous", sloop, kept("NZ", "salt"), "law-silent", finding.Caution},
		{"hard-cuprous", sloop, kept("NZ", "fresh"), "law-asks", finding.Ask},
		{"hard-cuprous", sloop, kept("US-WA", "salt"), "law-limits", finding.Caution},
		{"hard-cuprous", sloop, kept("US-CA", "salt"), "law-asks", finding.Ask},
		{"hard-copper-free", sloop, kept("US-CA", "salt"), "law-limits", finding.Caution},
		{"hard-cuprous", sloop, kept("US", "salt"), "law-which-part", finding.Ask},
		{"hard-copper-free", sloop, kept("US", "salt"), "law-limits", finding.Caution},
		{"none", sloop, kept("US-CA", "salt"), "law-silent-free", finding.Fine},
		{"hard-cuprous", sloop, kept("Atlantis", "salt"), "law-unknown-place", finding.Ask},
		{"inert-epoxy", sloop, kept("Atlantis", "salt"), "law-unknown-place", finding.Ask},
		{"inert-epoxy", sloop, kept("world", "salt"), "law-unknown-place", finding.Ask},
		{"inert-epoxy", sloop, nil, "law-no-place", finding.Ask},
		{"inert-epoxy", sloop, kept("", "salt"), "law-no-place", finding.Ask},
		{"inert-epoxy", sloop, []law.Berth{{Place: "NZ", Role: "visited"}}, "law-no-place", finding.Ask},
	} {
		at := "nowhere"
		if len(tc.at) > 0 {
			at = tc.at[0].Place + " " + tc.at[0].Water
		}
		got := law.Screen(b, coating(t, b, tc.coating), tc.craft, tc.at, on)
		if !got.Has(tc.rule) || got.Worst() != tc.want {
			t.Errorf("%s at %s: worst %v, has %s %v; want %v with it\n%s", tc.coating, at, got.Worst(), tc.rule, got.Has(tc.rule), tc.want, said(b, got))
		}
	}
}

func said(b *tables.Book, l finding.List) string {
	var s strings.Builder
	for _, f := range l {
		fmt.Fprintf(&s, "  %s %v: %s\n", f.Rule, f.Verdict, b.Say(f, quantity.Metric))
	}
	return s.String()
}

// The strictest of several berths is heard, and each place is answered.
func TestSeveralBerths(t *testing.T) {
	b := tables.Default()
	at := []law.Berth{{Place: "SE-west", Role: "painted"}, {Place: "SE-bothnia", Role: "kept", Water: "brackish"}, {Place: "NZ", Role: "visited", Water: "salt"}}
	got := law.Screen(b, coating(t, b, "hard-cuprous"), sloop, at, day(t, "2026-11-25"))
	if got.Worst() != finding.Forbidden || !got.Has("law-silent") {
		t.Error(said(b, got))
	}
	seen := map[string]int{}
	for _, f := range got {
		if n, _ := fact(f, "law").(string); n != "" {
			seen[n]++
		}
	}
	for name, n := range seen {
		if n > 1 {
			t.Errorf("%s is told %d times", name, n)
		}
	}
}

// She is painted where she is kept unless another berth is where she is painted.
func TestPaintedWhereKept(t *testing.T) {
	b := with(t, `
[[law]]
key = "no-paint"
name = "a bylaw"
basis = "assumption"
place = "NZ"
subject = "coating"
verdict = "forbidden"
says = "no painting here"
roles = ["painted"]
read_on = 2026-11-25
`)
	c, on := coating(t, b, "hard-cuprous"), day(t, "2026-11-25")
	if v := law.Screen(b, c, sloop, kept("NZ", "salt"), on).Worst(); v != finding.Forbidden {
		t.Errorf("kept only: %v", v)
	}
	at := append(kept("NZ", "salt"), law.Berth{Place: "GB", Role: "painted"})
	if got := law.Screen(b, c, sloop, at, on); got.Worst() != finding.Caution {
		t.Errorf("painted elsewhere: %v\n%s", got.Worst(), said(b, got))
	}
	if v := law.Screen(b, c, sloop, []law.Berth{{Place: "NZ"}}, on).Worst(); v != finding.Forbidden {
		t.Errorf("no role given: %v", v)
	}
}

func TestOldFilm(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	tin := coating(t, b, "organotin-old")
	got := law.OldFilm(b, tin, sloop, kept("GB", "salt"), on)
	f, ok := of(got, "AFS Convention (organotin, presence)")
	if !ok || f.Verdict != finding.Needs || len(f.First) != 1 || f.First[0].Do != finding.Seal {
		t.Errorf("organotin in Britain:\n%s", said(b, got))
	}
	f, ok = of(law.OldFilm(b, tin, sloop, kept("SE-west", "salt"), on), "Sweden (organotin on leisure boats)")
	if !ok || f.Verdict != finding.Needs || f.First[0].Do != finding.Strip {
		t.Error("organotin in Sweden is not removed")
	}
	f, ok = of(law.OldFilm(b, tin, sloop, kept("SE-west", "salt"), on), "AFS Convention (organotin, presence)")
	if !ok || f.Verdict != finding.Needs || len(f.First) != 1 || f.First[0].Do != finding.Strip {
		t.Errorf("the convention's sealer beside Sweden's removal: %+v", f.First)
	}
	got = law.OldFilm(b, coating(t, b, "unknown-old"), sloop, kept("GB", "salt"), on)
	if got.Worst() != finding.Ask || !got.Has("law-may-apply") {
		t.Errorf("an unknown film:\n%s", said(b, got))
	}
	got = law.OldFilm(b, coating(t, b, "hard-cuprous"), sloop, kept("GB", "salt"), on)
	if got.Worst() != finding.Caution || !got.Has("law-old-film-silent") {
		t.Errorf("a known film without anything barred:\n%s", said(b, got))
	}
	if v := law.OldFilm(b, coating(t, b, "bare"), sloop, kept("GB", "salt"), on).Worst(); v != finding.Fine {
		t.Errorf("bare: %v", v)
	}
	if v := law.OldFilm(b, coating(t, b, "bare"), sloop, kept("Atlantis", "salt"), on).Worst(); v != finding.Ask {
		t.Errorf("bare at a place that the book does not hold: %v", v)
	}
}

func TestCleaning(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	for _, tc := range []struct {
		coating, place string
		rule           finding.ID
		want           finding.Verdict
	}{
		{"ablative-cuprous-multi", "US-WA", "law-cleaning", finding.Forbidden},
		{"soft-cuprous", "US-WA", "law-cleaning", finding.Forbidden},
		{"self-polishing-cuprous", "US-WA", "law-cleaning", finding.Ask},
		{"hard-cuprous", "US-WA", "law-cleaning", finding.Ask},
		{"inert-epoxy", "US-WA", "law-cleaning-silent", finding.Caution},
		{"ablative-cuprous-multi", "US", "law-which-part", finding.Ask},
		{"inert-epoxy", "NZ", "law-cleaning", finding.Caution},
		{"inert-epoxy", "Atlantis", "law-unknown-place", finding.Ask},
		{"unknown-old", "US-WA", "law-may-apply", finding.Ask},
	} {
		for _, role := range []string{"kept", "cleaned"} {
			at := []law.Berth{{Place: tc.place, Role: role, Water: "salt"}, {Place: "GB", Role: "kept", Water: "salt"}}
			got := law.Cleaning(b, coating(t, b, tc.coating), sloop, at, on)
			if !got.Has(tc.rule) || got.Worst() < tc.want {
				t.Errorf("%s %s at %s:\n%s", tc.coating, role, tc.place, said(b, got))
			}
			only := law.Cleaning(b, coating(t, b, tc.coating), sloop, kept(tc.place, "salt"), on)
			if only.Worst() != tc.want {
				t.Errorf("%s at %s: %v, want %v\n%s", tc.coating, tc.place, only.Worst(), tc.want, said(b, only))
			}
		}
	}
}

func TestPapers(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	size := func(s string) law.Craft {
		l, err := quantity.Parse[quantity.Length](s)
		if err != nil {
			t.Fatal(err)
		}
		return law.Craft{Length: l}
	}
	for _, tc := range []struct {
		craft law.Craft
		on    quantity.Date
		want  finding.Verdict
		n     int
	}{
		{size("23.99 m"), on, finding.Fine, 1},
		{size("24 m"), on, finding.Ask, 2}, // the declaration, and the question of tonnage
		{size("78 ft"), on, finding.Fine, 1},
		{size("79 ft"), on, finding.Ask, 2},
		{law.Craft{}, on, finding.Ask, 2},                    // both may apply; the leave below 24 m is not given
		{size("30 m"), day(t, "2008-09-16"), finding.Ask, 1}, // before the convention: the book is silent
		{size("30 m"), day(t, "2008-09-17"), finding.Ask, 2},
	} {
		got := law.Papers(b, tc.craft, tc.on)
		if got.Worst() != tc.want || len(got) != tc.n {
			t.Errorf("%v on %v: %v\n%s", tc.craft.Length, tc.on, got.Worst(), said(b, got))
		}
	}
	if got := law.Papers(b, size("30 m"), day(t, "2008-09-16")); !got.Has("law-paper-silent") {
		t.Error("no word about papers before the convention")
	}
}

func TestBerthCheck(t *testing.T) {
	b := tables.Default()
	if fs := (law.Berth{Place: "Atlantis", Role: "kept", Water: "salt"}).Check(b); len(fs) != 0 {
		t.Error(fs)
	}
	fs := law.Berth{Role: "moored", Water: "sweet"}.Check(b)
	var keys []string
	for _, f := range fs {
		keys = append(keys, f.Key)
	}
	if fmt.Sprint(keys) != "[place role water]" {
		t.Error(keys)
	}
	// The places proposed are those with rules, and the world is none of them.
	if want := fs[0].Want; !strings.Contains(want, "SE-bothnia") || !strings.Contains(want, "NZ") || strings.Contains(want, "world") {
		t.Error(want)
	}
	if fs := (law.Berth{Place: "NZ"}).Check(b); len(fs) != 1 || fs[0].Key != "role" {
		t.Error(fs)
	}
}
