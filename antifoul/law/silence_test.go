package law_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// ownLaw is a law at New Zealand, or at the place that the lines give, with more lines of TOML.
func ownLaw(place, subject, verdict, lines string) string {
	return fmt.Sprintf("[[law]]\nkey = \"own\"\nname = \"own\"\nbasis = \"assumption\"\nplace = %q\nsubject = %q\nverdict = %q\nsays = \"so\"\nread_on = 2020-02-01\n%s\n", place, subject, verdict, lines)
}

// oldFilm is an old ablative film, own-old, of the class of biocide; nobody listed its actives.
func oldFilm(biocide string) string {
	return fmt.Sprintf("[[coating]]\nkey = \"own-old\"\nname = \"an old film\"\nbasis = \"assumption\"\nrole = \"old film\"\nmechanism = \"ablative\"\nbiocide = %q\npacks = 1\nrecognised = \"so\"\nhazards = [\"antifouling-dust\"]\n", biocide)
}

// A law that does not hinder is told and breaks no silence; a condition breaks it.
func TestWhatBreaksSilence(t *testing.T) {
	on := day(t, "2026-11-25")
	for verdict, silent := range map[string]bool{"fine": true, "caution": false, "ask": false, "forbidden": false} {
		b := with(t, ownLaw("NZ", "coating", verdict, ""))
		got := law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("NZ", "salt"), on)
		if _, ok := of(got, "own"); !ok || got.Has("law-silent") != silent {
			t.Errorf("%s:\n%s", verdict, said(b, got))
		}
	}
}

// A leave whose conditions nobody gave is not told at all.
func TestLeaveThatMayNotHold(t *testing.T) {
	b := with(t, ownLaw("NZ", "coating", "fine", `mass_below = "5 t"`))
	c, on := coating(t, b, "hard-cuprous"), day(t, "2026-11-25")
	if _, ok := of(law.Screen(b, c, law.Craft{}, kept("NZ", "salt"), on), "own"); ok {
		t.Error("told without the boat's mass")
	}
	if _, ok := of(law.Screen(b, c, sloop, kept("NZ", "salt"), on), "own"); !ok {
		t.Error("not told with it")
	}
}

// Silence carries the oldest day on which a law of the place was read.
func TestSilenceIsAsOldAsItsOldestReading(t *testing.T) {
	b := with(t, ownLaw("NZ", "paper", "caution", ""))
	got := law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("NZ", "salt"), day(t, "2026-11-25"))
	if len(got) != 1 || got[0].Rule != "law-silent" || fmt.Sprint(fact(got[0], "read")) != "2020-02-01" {
		t.Error(said(b, got))
	}
}

// A law of one berth says nothing of the day on which another berth's laws were read.
func TestSilenceHasTheReadingsOfItsOwnPlace(t *testing.T) {
	b := with(t, ownLaw("GB", "paper", "caution", ""))
	at := []law.Berth{{Place: "NZ", Role: "kept", Water: "salt"}, {Place: "GB", Role: "visited", Water: "salt"}}
	got := law.Screen(b, coating(t, b, "inert-epoxy"), sloop, at, day(t, "2026-11-25"))
	read := map[string]string{}
	for _, f := range got {
		if f.Rule == "law-silent-free" {
			read[f.Against] = fmt.Sprint(fact(f, "read"))
		}
	}
	if len(read) != 2 || read["New Zealand"] == "2020-02-01" || read["Great Britain"] != "2020-02-01" {
		t.Errorf("%v\n%s", read, said(b, got))
	}
}

// The same berth twice is answered once; two places that share a name are two.
func TestEachPlaceIsAnsweredOnce(t *testing.T) {
	b := with(t, "[[place]]\nkey = \"bay\"\nname = \"the bay\"\nwithin = \"NZ\"\nbasis = \"assumption\"\n[[place]]\nkey = \"cove\"\nname = \"the bay\"\nwithin = \"NZ\"\nbasis = \"assumption\"\n")
	c, on := coating(t, b, "inert-epoxy"), day(t, "2026-11-25")
	for _, tc := range []struct {
		places []string
		want   int
	}{
		{[]string{"NZ"}, 1},
		{[]string{"NZ", "NZ"}, 1},
		{[]string{"NZ", "NZ", "NZ"}, 1},
		{[]string{"Atlantis", "Atlantis"}, 1},
		{[]string{"NZ", "Atlantis"}, 2},
		{[]string{"bay", "cove"}, 2},
	} {
		var at []law.Berth
		for _, p := range tc.places {
			at = append(at, law.Berth{Place: p, Role: "kept", Water: "salt"})
		}
		if got := law.Screen(b, c, sloop, at, on); len(got) != tc.want {
			t.Errorf("%v: %d answers, want %d\n%s", tc.places, len(got), tc.want, said(b, got))
		}
	}
}

// All that was not given is listed, as a sentence lists it.
func TestWhatIsMissingIsListed(t *testing.T) {
	on := day(t, "2026-11-25")
	for _, tc := range []struct {
		craft law.Craft
		want  string
	}{
		{law.Craft{Mass: sloop.Mass, Material: "grp"}, "the boat's length"},
		{law.Craft{Material: "grp"}, "the boat's length and the boat's mass"},
		{law.Craft{}, "the boat's length, the boat's mass and the hull's material"},
	} {
		b := with(t, ownLaw("NZ", "old film", "forbidden", "length_min = \"5 m\"\nmass_above = \"200 kg\"\nexempt = [\"aluminium\"]"))
		f, ok := of(law.OldFilm(b, coating(t, b, "hard-cuprous"), tc.craft, kept("NZ", "salt"), on), "own")
		if !ok || fact(f, "missing") != tc.want {
			t.Errorf("%+v: %v, want %s", tc.craft, fact(f, "missing"), tc.want)
		}
		b = with(t, ownLaw("NZ", "old film", "forbidden", "length_min = \"5 m\"\nactives = [\"cybutryne\"]"))
		want := "which actives it holds"
		if !tc.craft.Length.Given() {
			want = "the boat's length and which actives it holds"
		}
		if f, _ := of(law.OldFilm(b, coating(t, b, "organotin-old"), tc.craft, kept("NZ", "salt"), on), "own"); fact(f, "missing") != want {
			t.Errorf("%+v, a film that nobody listed: %v, want %s", tc.craft, fact(f, "missing"), want)
		}
	}
}

// One place in two roles: a law for one of them leaves the other silent.
func TestTwoRolesAtOnePlace(t *testing.T) {
	b := with(t, ownLaw("NZ", "coating", "caution", `roles = ["painted"]`))
	at := []law.Berth{{Place: "NZ", Role: "painted", Water: "salt"}, {Place: "NZ", Role: "visited", Water: "salt"}}
	got := law.Screen(b, coating(t, b, "hard-cuprous"), sloop, at, day(t, "2026-11-25"))
	if _, ok := of(got, "own"); !ok || len(got) != 2 || !got.Has("law-silent") {
		t.Error(said(b, got))
	}
}

func TestPartsOfAPlace(t *testing.T) {
	on := day(t, "2026-11-25")
	for verdict, want := range map[string]finding.Verdict{"fine": finding.Caution, "caution": finding.Caution, "forbidden": finding.Ask} {
		b := with(t, "[[place]]\nkey = \"bay\"\nname = \"the bay\"\nwithin = \"NZ\"\nbasis = \"assumption\"\n"+ownLaw("bay", "coating", verdict, ""))
		got := law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("NZ", "salt"), on)
		if got.Has("law-which-part") != (verdict != "fine") || got.Worst() != want || len(got) != 1 {
			t.Errorf("%s:\n%s", verdict, said(b, got))
		}
		if p := got[0]; p.Rule == "law-which-part" && (fact(p, "parts") != "the bay" || fact(p, "law") != "own") {
			t.Error(said(b, got))
		}
	}
}

// Cleaned or visited is not where she is kept; a role that is none narrows nothing.
func TestRoles(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	c := coating(t, b, "inert-epoxy")
	for role, want := range map[string]bool{"painted": false, "kept": false, "": false, "moored": false, "visited": true, "cleaned": true} {
		got := law.Screen(b, c, sloop, []law.Berth{{Place: "NZ", Role: role, Water: "salt"}}, on)
		if got.Has("law-no-place") != want {
			t.Errorf("role %q:\n%s", role, said(b, got))
		}
	}
	more := with(t, ownLaw("NZ", "coating", "forbidden", `roles = ["visited"]`))
	for role, want := range map[string]bool{"painted": false, "kept": false, "": true, "moored": true, "visited": true, "cleaned": false} {
		if _, got := of(law.Screen(more, c, sloop, []law.Berth{{Place: "NZ", Role: role, Water: "salt"}}, on), "own"); got != want {
			t.Errorf("a law for visitors at role %q: bites %v", role, got)
		}
	}
}

// A long voyage has more berths than a list keeps room for.
func TestManyBerths(t *testing.T) {
	b := tables.Default()
	at := kept("SE-bothnia", "brackish")
	for i := range 40 {
		at = append(at, law.Berth{Place: fmt.Sprintf("port %d", i), Role: "visited", Water: "salt"})
	}
	got := law.Screen(b, coating(t, b, "hard-cuprous"), sloop, at, day(t, "2026-11-25"))
	if got.Worst() != finding.Forbidden || len(got) < 41 {
		t.Errorf("%d findings", len(got))
	}
}

// A biocide that stands second in the tin is one all the same.
func TestEveryActiveCounts(t *testing.T) {
	b := with(t, ownLaw("NZ", "coating", "forbidden", `biocides = ["other copper"]`))
	on := day(t, "2026-11-25")
	// the self-polishing type rests on cuprous oxide and holds copper pyrithione besides
	if _, ok := of(law.Screen(b, coating(t, b, "self-polishing-cuprous"), sloop, kept("NZ", "salt"), on), "own"); !ok {
		t.Error("copper pyrithione beside cuprous oxide is not seen")
	}
	if _, ok := of(law.Screen(b, coating(t, b, "hard-thiocyanate"), sloop, kept("NZ", "salt"), on), "own"); ok {
		t.Error("copper thiocyanate is taken for another class")
	}
}

// What is not known of a film is said, and the gravest of it decides.
func TestWhatIsNotKnownOfAFilm(t *testing.T) {
	on := day(t, "2026-11-25")
	for _, tc := range []struct {
		film, lines, missing string
		want                 finding.Verdict
	}{
		{"unknown-old", `biocides = ["organotin"]`, "what biocide it holds", finding.Ask},
		{"unknown-old", `actives = ["cybutryne"]`, "what biocide it holds", finding.Ask},
		{"organotin-old", `actives = ["cybutryne"]`, "which actives it holds", finding.Caution},
		{"organotin-old", `mechanisms = ["soft"]`, "what kind of film it is", finding.Ask},
		{"organotin-old", "actives = [\"cybutryne\"]\nmechanisms = [\"soft\"]", "what kind of film it is", finding.Ask},
		{"unknown-old", `copper_max = "1 %"`, "how much copper it holds", finding.Ask},
		{"unknown-old", "biocides = [\"organotin\"]\nmechanisms = [\"soft\"]", "what biocide it holds", finding.Ask}, // of two questions as grave the first
	} {
		b := with(t, ownLaw("NZ", "old film", "forbidden", tc.lines))
		f, ok := of(law.OldFilm(b, coating(t, b, tc.film), sloop, kept("NZ", "salt"), on), "own")
		if !ok || f.Rule != "law-may-apply" || f.Verdict != tc.want || fact(f, "missing") != tc.missing {
			t.Errorf("%s, %s: %v %v", tc.film, tc.lines, f.Verdict, fact(f, "missing"))
		}
	}
	b := with(t, ownLaw("NZ", "old film", "forbidden", `actives = ["cybutryne"]`))
	if _, ok := of(law.OldFilm(b, coating(t, b, "epoxy-old"), sloop, kept("NZ", "salt"), on), "own"); ok {
		t.Error("a film without biocide is asked for its actives")
	}
	if _, ok := of(law.OldFilm(b, coating(t, b, "organotin-old"), sloop, kept("NZ", "salt"), on), "own"); !ok {
		t.Error("a film whose actives nobody listed is not")
	}
}

// How much copper an old film holds is asked where its class has some or is not known, and nowhere else.
func TestCopperOfAFilmWithoutAList(t *testing.T) {
	for biocide, want := range map[string]finding.Verdict{"cuprous oxide": finding.Ask, "copper thiocyanate": finding.Ask, "unknown": finding.Ask, "copper-free": 0, "none": 0} {
		b := with(t, oldFilm(biocide)+ownLaw("NZ", "old film", "forbidden", `copper_max = "1 %"`))
		if f, _ := of(law.OldFilm(b, coating(t, b, "own-old"), sloop, kept("NZ", "salt"), day(t, "2026-11-25")), "own"); f.Verdict != want {
			t.Errorf("%s: %v, want %v", biocide, f.Verdict, want)
		}
	}
}

// How much there is of a biocide without copper is nobody's question where copper is limited.
func TestContentOfWhatHoldsNoCopper(t *testing.T) {
	for active, want := range map[string]finding.Verdict{"zinc-pyrithione": 0, "copper-pyrithione": finding.Ask} {
		b := with(t, ownLaw("NZ", "coating", "forbidden", `copper_max = "10 %"`)+"[[coating]]\nkey = \"copper-loaded-epoxy\"\nbasis = \"assumption\"\n[[coating.active]]\nkey = \"copper-metal\"\ncontent = \"5 %\"\n[[coating.active]]\nkey = \""+active+"\"\n")
		f, _ := of(law.Screen(b, coating(t, b, "copper-loaded-epoxy"), sloop, kept("NZ", "salt"), day(t, "2026-11-25")), "own")
		if f.Verdict != want {
			t.Errorf("%s: %v, want %v", active, f.Verdict, want)
		}
	}
}

// The copper of all that holds some is added up, by weight of the metal: cuprous oxide is 0.8882 of it, copper pyrithione 0.2012. By hand against 10 %: 11.25 % of the
// oxide are 9.992 %, 11.27 % are 10.010 %; with 5 % of the pyrithione, which are 1.006 %, 10.12 % of the oxide are 9.995 % in all, 10.14 % are 10.012 %. Of a range that
// straddles the limit nobody can say.
func TestCopperIsAddedUp(t *testing.T) {
	for actives, want := range map[string]finding.Verdict{
		"cuprous-oxide 11.25":                               0,
		"cuprous-oxide 11.27":                               finding.Forbidden,
		"cuprous-oxide 5 to 11.25":                          0,
		"cuprous-oxide 11.25 to 11.27":                      finding.Ask,
		"cuprous-oxide 10.12, copper-pyrithione 5":          0,
		"cuprous-oxide 10.14, copper-pyrithione 5":          finding.Forbidden,
		"copper-pyrithione 5, cuprous-oxide 10.14":          finding.Forbidden,
		"cuprous-oxide 10.12 to 10.14, copper-pyrithione 5": finding.Ask,
		"cuprous-oxide 10.12, copper-pyrithione 5 to 6":     finding.Ask,
	} {
		var text strings.Builder
		text.WriteString(ownLaw("NZ", "coating", "forbidden", `copper_max = "10 %"`) + "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"assumption\"\n")
		for a := range strings.SplitSeq(actives, ", ") {
			key, content, _ := strings.Cut(a, " ")
			low, high, _ := strings.Cut(content, " to ")
			if high == "" {
				high = low
			}
			fmt.Fprintf(&text, "[[coating.active]]\nkey = %q\ncontent = [\"%s %%\", \"%s %%\", \"%s %%\"]\n", key, low, low, high)
		}
		b := with(t, text.String())
		f, _ := of(law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("NZ", "salt"), day(t, "2026-11-25")), "own")
		if f.Verdict != want {
			t.Errorf("%s: %v, want %v", actives, f.Verdict, want)
		}
	}
}

// A coating of another book may hold a biocide that this book does not know: then nobody knows what it holds.
func TestActiveOfAnotherBook(t *testing.T) {
	other := with(t, `
[[active]]
key = "new-active"
basis = "assumption"
class = "metallic copper"
copper_share = 1
[[coating]]
key = "copper-loaded-epoxy"
basis = "assumption"
[[coating.active]]
key = "new-active"
content = "5 %"
`)
	b := with(t, ownLaw("NZ", "coating", "forbidden", `biocides = ["other copper"]`))
	f, ok := of(law.Screen(b, coating(t, other, "copper-loaded-epoxy"), sloop, kept("NZ", "salt"), day(t, "2026-11-25")), "own")
	if !ok || f.Verdict != finding.Ask {
		t.Errorf("%+v", f)
	}
	b = with(t, ownLaw("NZ", "coating", "forbidden", `biocides = ["unknown"]`)) // a law of what nobody knows speaks of it for certain
	if f, _ := of(law.Screen(b, coating(t, other, "copper-loaded-epoxy"), sloop, kept("NZ", "salt"), day(t, "2026-11-25")), "own"); f.Verdict != finding.Forbidden {
		t.Errorf("%+v", f)
	}
}
