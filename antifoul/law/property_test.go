package law_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// randomLaw writes a law with conditions drawn at random.
func randomLaw(r *rand.Rand, key string, b *tables.Book) string {
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	var places []string
	for p := range b.Places() {
		places = append(places, p.Key)
	}
	var s strings.Builder
	fmt.Fprintf(&s, "[[law]]\nkey = %q\nname = %q\nbasis = \"assumption\"\nplace = %q\nsubject = %q\nsays = \"drawn at random\"\nread_on = 2026-11-25\n",
		key, key, pick(places...), pick("coating", "old film", "cleaning", "paper"))
	v := pick("fine", "caution", "ask", "needs", "forbidden")
	fmt.Fprintf(&s, "verdict = %q\n", v)
	if v == "needs" {
		s.WriteString("steps = [\"strip\"]\n")
	}
	for _, line := range []string{
		`from = ` + pick("1990-01-01", "2026-11-25", "2026-11-26"),
		`to = ` + pick("2026-11-24", "2026-11-25", "2030-01-01"),
		`length_min = "` + pick("5 m", "10 m", "24 m") + `"`,
		`length_max = "` + pick("33 ft", "10 m", "25 m") + `"`,
		`mass_above = "` + pick("200 kg", "4 t") + `"`,
		`mass_below = "` + pick("200 kg", "4 t", "5 t") + `"`,
		`copper_max = "` + pick("0.5 %", "20 %", "40 %") + `"`,
		`biocides = ["` + pick("cuprous oxide", "copper-free", "none", "unknown", "organotin") + `"]`,
		`actives = ["` + pick("dcoit", "cuprous-oxide", "cybutryne") + `"]`,
		`mechanisms = ["` + pick("hard", "ablative", "inert", "soft") + `"]`,
		`exempt = ["` + pick("grp", "aluminium") + `"]`,
		`roles = ["` + pick("painted", "kept", "visited", "cleaned") + `"]`,
		`waters = ["` + pick("salt", "brackish", "fresh") + `"]`,
	} {
		if r.IntN(4) == 0 {
			if strings.HasPrefix(line, "to =") && strings.Contains(s.String(), "from = ") {
				continue // the two might cross
			}
			s.WriteString(line + "\n")
		}
	}
	return s.String()
}

func berths(b *tables.Book) [][]law.Berth {
	out := [][]law.Berth{nil, {{Place: "Atlantis", Role: "kept"}}, {{Place: "NZ", Role: "visited", Water: "salt"}}}
	for p := range b.Places() {
		for _, w := range []string{"", "salt", "fresh"} {
			out = append(out, kept(p.Key, w))
		}
		out = append(out, []law.Berth{{Place: p.Key, Role: "painted"}, {Place: "GB", Role: "kept", Water: "salt"}, {Place: "DK", Role: "cleaned", Water: "brackish"}})
	}
	return out
}

// A law more never makes an answer milder: whatever it says, the worst verdict stays or rises.
func TestAddingALawNeverWidens(t *testing.T) {
	base := tables.Default()
	on := day(t, "2026-11-25")
	var all []tables.Coating
	for c := range base.Coatings() {
		all = append(all, c)
	}
	at := berths(base)
	crafts := []law.Craft{sloop, {}, {Length: quantity.Metre.N(30), Mass: quantity.Kilogram.N(150)}}
	r := rand.New(rand.NewPCG(7, 11))
	rose := 0
	for i := range 60 {
		text := randomLaw(r, fmt.Sprintf("random-%d", i), base)
		more := with(t, text)
		for range 4 {
			berth := at[r.IntN(len(at))]
			craft := crafts[r.IntN(len(crafts))]
			before, after := law.At(base, craft, berth, on), law.At(more, craft, berth, on)
			for _, c := range all {
				for what, pair := range map[string][2]finding.List{
					"screen":   {before.Screen(c), after.Screen(c)},
					"old film": {before.OldFilm(c), after.OldFilm(c)},
					"cleaning": {before.Cleaning(c), after.Cleaning(c)},
				} {
					if len(pair[0]) == 0 || len(pair[1]) == 0 {
						t.Fatalf("%s of %s at %v: not judged", what, c.Key, berth)
					}
					if pair[1].Worst() < pair[0].Worst() {
						t.Fatalf("%s of %s at %v: from %v to %v by\n%s", what, c.Key, berth, pair[0].Worst(), pair[1].Worst(), text)
					}
					if pair[1].Worst() > pair[0].Worst() {
						rose++
					}
				}
			}
		}
		for _, craft := range crafts {
			if x, y := law.Papers(base, craft, on), law.Papers(more, craft, on); y.Worst() < x.Worst() {
				t.Errorf("papers: from %v to %v by\n%s", x.Worst(), y.Worst(), text)
			}
		}
	}
	if rose == 0 {
		t.Error("no random law bit at all")
	}
}

// Every coating at every place gets a list whose findings have a rule of the registry, a sentence without gaps, a valid
// verdict, and a basis where a law decided; only a coating without biocide is ever fine; and asking twice gives the same.
func TestEveryAnswerIsWhole(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	for _, at := range berths(b) {
		for _, craft := range []law.Craft{sloop, {}} {
			d := law.At(b, craft, at, on)
			for c := range b.Coatings() {
				for _, l := range []finding.List{d.Screen(c), d.OldFilm(c), d.Cleaning(c)} {
					if l.Worst() == finding.Fine && c.Biocide != tables.NoBiocide {
						t.Errorf("%s at %v is fine", c.Key, at)
					}
					for _, f := range l {
						s := b.Say(f, quantity.Metric)
						if _, err := b.Rule(f.Rule); err != nil || !f.Verdict.Valid() || strings.Contains(s, "(not stated)") || f.About != c.Name || f.Against == "" {
							t.Fatalf("%s at %v: %+v %s", c.Key, at, f, s)
						}
						if fact(f, "says") != nil && (len(f.Basis) != 1 || f.Basis[0].Kind == "") {
							t.Fatalf("without basis: %+v", f)
						}
						if (f.Verdict == finding.Needs) != (len(f.First) > 0) {
							t.Fatalf("needs without steps, or steps without needs: %+v", f)
						}
					}
				}
				if got, want := d.Forbids(&c), d.Screen(c).Worst() == finding.Forbidden; got != want {
					t.Fatalf("%s at %v: Forbids %v, Screen %v", c.Key, at, got, want)
				}
				if got, want := d.ForbidsCleaning(&c), d.Cleaning(c).Worst() == finding.Forbidden; got != want {
					t.Fatalf("%s at %v: ForbidsCleaning %v, Cleaning %v", c.Key, at, got, want)
				}
				if x, y := said(b, d.Screen(c)), said(b, law.Screen(b, c, craft, at, on)); x != y {
					t.Fatalf("desk and Screen differ:\n%s\n%s", x, y)
				}
			}
		}
	}
}

// Writing into an answer does not change the desk.
func TestDeskKeepsItsOwn(t *testing.T) {
	b := tables.Default()
	d := law.At(b, sloop, kept("US-CA", "salt"), day(t, "2026-11-25"))
	c := coating(t, b, "hard-cuprous")
	want := said(b, d.Screen(c))
	for _, f := range d.Screen(c) {
		for i := range f.Facts {
			f.Facts[i].Value = "changed"
		}
		for i := range f.Basis {
			f.Basis[i].Kind = "changed"
		}
	}
	if got := said(b, d.Screen(c)); got != want {
		t.Errorf("got\n%s", got)
	}
}

// A place deep in others has the laws of all of them, and one that lies in nothing has the world's.
func TestPlacesUpToTheWorld(t *testing.T) {
	var own strings.Builder
	for i := range 40 {
		within := "NZ"
		if i > 0 {
			within = fmt.Sprintf("deep-%d", i-1)
		}
		fmt.Fprintf(&own, "[[place]]\nkey = \"deep-%d\"\nwithin = %q\nbasis = \"assumption\"\n", i, within)
	}
	own.WriteString("[[place]]\nkey = \"island\"\nbasis = \"assumption\"\n")
	b := with(t, own.String())
	on := day(t, "2026-11-25")
	for place, nz := range map[string]bool{"deep-39": true, "deep-0": true, "island": false} {
		tin := law.Screen(b, coating(t, b, "organotin-old"), sloop, kept(place, "salt"), on)
		if _, ok := of(tin, "AFS Convention (organotin, application)"); !ok {
			t.Errorf("%s is outside the world:\n%s", place, said(b, tin))
		}
		if _, ok := of(law.Cleaning(b, coating(t, b, "inert-epoxy"), sloop, kept(place, "salt"), on), "New Zealand (cleaning afloat)"); ok != nz {
			t.Errorf("%s in New Zealand: %v", place, ok)
		}
	}
	if got := law.Cleaning(with(t, "[[place]]\nkey = \"island\"\nbasis = \"assumption\"\n"), coating(t, b, "inert-epoxy"), sloop, kept("island", "salt"), on); !got.Has("law-cleaning-silent") {
		t.Error(said(b, got))
	}
}

// More copper than the limit bites, a recipe on both sides of it asks, and one at the limit does not.
func TestCopperContent(t *testing.T) {
	own := func(content string) *tables.Book {
		return with(t, `
[[law]]
key = "copper-ten"
name = "ten per cent"
basis = "assumption"
place = "NZ"
subject = "coating"
verdict = "forbidden"
says = "not above 10 % of copper"
copper_max = "10 %"
read_on = 2026-11-25
[[coating]]
key = "copper-loaded-epoxy"
basis = "assumption"
[[coating.active]]
key = "copper-metal"
`+content)
	}
	for content, want := range map[string]finding.Verdict{
		`content = ["10 %", "10 %", "10 %"]`:          0,
		`content = ["10.1 %", "11 %", "12 %"]`:        finding.Forbidden,
		`content = ["9 %", "9.5 %", "10.1 %"]`:        finding.Ask,
		`content = ["1 %", "2 %", "3 %"]`:             0,
		"# nothing is known of how much copper it is": finding.Ask,
	} {
		b := own(content)
		f, _ := of(law.Screen(b, coating(t, b, "copper-loaded-epoxy"), sloop, kept("NZ", "salt"), day(t, "2026-11-25")), "ten per cent")
		if f.Verdict != want {
			t.Errorf("%s: %v, want %v", content, f.Verdict, want)
		}
	}
}
