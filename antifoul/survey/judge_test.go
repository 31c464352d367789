package survey_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What each grade, share and size asks for, on, just under and just over each boundary.
func TestBoundaries(t *testing.T) {
	grade := func(keys ...string) survey.Mark { return survey.Mark{Grades: keys} }
	share := func(s quantity.Share) survey.Mark { return survey.Mark{Share: s} }
	size := func(l quantity.Length) survey.Mark { return survey.Mark{Size: l} }
	tenth := func(n int64) quantity.Share {
		return quantity.Percent.Of(decimal.New(n, -1))
	}
	none, watch, now, first := tables.NoWork, tables.Monitor, tables.ThisHaulOut, tables.BeforeLaunch
	for _, c := range []struct {
		material, what string
		mark           survey.Mark
		want           tables.Urgency
		row            string
	}{
		{"grp", "fouling", grade("nstm-081-0"), none, "fouling-none"},
		{"grp", "fouling", grade("nstm-081-10"), none, "fouling-none"},
		{"grp", "fouling", grade("nstm-081-20"), watch, "fouling-slime"},
		{"grp", "fouling", grade("nstm-081-30"), now, "fouling-weed"},
		{"grp", "fouling", grade("nstm-081-40"), now, "fouling-shells"},
		{"grp", "fouling", grade("nstm-081-70"), now, "fouling-shells"},
		{"grp", "fouling", grade("nstm-081-80"), first, "fouling-heavy"},
		{"grp", "fouling", grade("nstm-081-100"), first, "fouling-heavy"},
		{"grp", "fouling", grade("mepc-378-80-0"), none, "fouling-none"},
		{"grp", "fouling", grade("mepc-378-80-1"), watch, "fouling-slime"},
		{"grp", "fouling", grade("mepc-378-80-2"), now, "fouling-weed"},
		{"grp", "fouling", grade("mepc-378-80-3"), now, "fouling-shells"},
		{"grp", "fouling", grade("mepc-378-80-4"), first, "fouling-heavy"},
		{"grp", "fouling", grade("nz-level-of-fouling-1"), watch, "fouling-slime"},
		{"grp", "fouling", grade("nz-level-of-fouling-2"), now, "fouling-weed"},
		{"grp", "fouling", grade("nz-level-of-fouling-3"), now, "fouling-weed"},
		{"grp", "fouling", grade("nz-level-of-fouling-4"), now, "fouling-shells"},
		{"grp", "fouling", grade("nz-level-of-fouling-5"), first, "fouling-heavy"},
		{"grp", "fouling", grade("nstm-081-0", "nz-level-of-fouling-5"), first, "fouling-heavy"}, // the worse of two scales
		{"grp", "blisters", grade("iso-4628-1-quantity-0"), none, "blisters-none"},
		{"grp", "blisters", grade("iso-4628-1-quantity-1"), now, "blisters-few"},
		{"grp", "blisters", grade("iso-4628-1-quantity-3"), now, "blisters-few"},
		{"grp", "blisters", grade("iso-4628-1-quantity-4"), now, "blisters-many"},
		{"steel", "blisters", grade("iso-4628-1-quantity-3"), now, "blisters-few"},
		{"steel", "blisters", grade("iso-4628-1-quantity-4"), first, "blisters-many-metal"},
		{"cast-iron", "blisters", grade("iso-4628-1-quantity-5"), now, "blisters-many"},
		{"grp", "flaking", share(percent(0)), none, "flaking-none"},
		{"grp", "flaking", share(tenth(1)), now, "flaking-places"},
		{"grp", "flaking", share(percent(20)), now, "flaking-places"},
		{"grp", "flaking", share(tenth(201)), now, "flaking-wide"},
		{"grp", "cracking", share(percent(0)), none, "cracking-none"},
		{"grp", "cracking", share(percent(20)), now, "cracking-places"},
		{"grp", "cracking", share(tenth(201)), now, "cracking-wide"},
		{"grp", "adhesion", grade("astm-d3359-5a"), none, "adhesion-holds"},
		{"grp", "adhesion", grade("astm-d3359-4a"), none, "adhesion-holds"},
		{"grp", "adhesion", grade("astm-d3359-3a"), now, "adhesion-ragged"},
		{"grp", "adhesion", grade("astm-d3359-2a"), now, "adhesion-gone"},
		{"grp", "adhesion", grade("astm-d3359-0a"), now, "adhesion-gone"},
		{"grp", "chalking", survey.Mark{}, now, "chalking"},
		{"grp", "worn through", survey.Mark{}, now, "worn-through"},
		{"aluminium", "worn through", survey.Mark{}, first, "worn-through-metal"},
		{"steel", "rust", grade("iso-4628-3-ri-0"), none, "rust-none"},
		{"steel", "rust", grade("iso-4628-3-ri-1"), now, "rust-spots"},
		{"steel", "rust", grade("iso-4628-3-ri-3"), now, "rust-spots"},
		{"steel", "rust", grade("iso-4628-3-ri-4"), first, "rust-through"},
		{"steel", "rust", grade("iso-4628-3-ri-5"), first, "rust-over"},
		{"cast-iron", "rust", grade("iso-4628-3-ri-4"), now, "rust-through-iron"},
		{"cast-iron", "rust", grade("iso-4628-3-ri-5"), now, "rust-over-iron"},
		{"steel", "bare steel", grade("iso-8501-1-a"), first, "bare-steel"},
		{"steel", "bare steel", grade("iso-8501-1-b"), first, "bare-steel"},
		{"steel", "bare steel", grade("iso-8501-1-c"), first, "bare-steel-pitted"},
		{"steel", "pits", size(quantity.Millimetre.Of(decimal.New(199, -2))), now, "pits-steel"},
		{"steel", "pits", size(mm(2)), first, "pits-steel-deep"},
		{"cast-iron", "pits", size(mm(9)), now, "pits-iron"},
		{"aluminium", "pits", size(quantity.Millimetre.Of(decimal.New(99, -2))), now, "pits-aluminium"},
		{"aluminium", "pits", size(mm(1)), first, "pits-aluminium-deep"},
		{"aluminium", "poultice", survey.Mark{}, now, "poultice"},
		{"aluminium", "copper on aluminium", survey.Mark{}, first, "copper-on-aluminium"},
		{"galvanised-steel", "white rust", survey.Mark{}, watch, "white-rust"},
		{"grp", "laminate blisters", size(mm(49)), now, "laminate-blisters"},
		{"grp", "laminate blisters", size(mm(50)), first, "laminate-blisters-large"},
		{"grp", "high moisture", survey.Mark{}, watch, "high-moisture"},
		{"wood-carvel", "soft wood", survey.Mark{}, first, "soft-wood"},
		{"wood-carvel", "worm", survey.Mark{}, first, "worm"},
		{"wood-carvel", "open seams", survey.Mark{}, first, "open-seams"},
		{"grp", "rust streak", survey.Mark{}, now, "rust-streak"},
		{"ferrocement", "cracks", survey.Mark{}, first, "cracks-ferrocement"},
		{"zinc-anode", "wasted", share(percent(0)), none, "anode-hardly-wasted"},
		{"zinc-anode", "wasted", share(percent(1)), watch, "anode-wasted"},
		{"zinc-anode", "wasted", share(percent(33)), watch, "anode-wasted"},
		{"zinc-anode", "wasted", share(percent(34)), now, "anode-wasted-third"},
		{"zinc-anode", "wasted", share(percent(50)), now, "anode-wasted-third"},
		{"zinc-anode", "wasted", share(tenth(501)), first, "anode-wasted-half"},
		{"zinc-anode", "not wasted", survey.Mark{}, now, "anode-whole"},
		{"zinc-anode", "painted over", survey.Mark{}, first, "anode-painted"},
		{"transducer", "painted over", survey.Mark{}, now, "transducer-painted"},
		{"rubber-seal", "painted over", survey.Mark{}, now, "seal-painted"},
		{"zinc-anode", "loose or missing", survey.Mark{}, first, "anode-loose"},
		{"rubber-seal", "bonding broken", survey.Mark{}, first, "bonding-broken"},
		{"rubber-seal", "bellows cracked", survey.Mark{}, first, "bellows"},
		{"aluminium", "gap to copper paint", size(mm(40)), none, "copper-near"},
		{"aluminium", "gap to copper paint", size(mm(39)), now, "copper-near-narrow"},
		{"aluminium", "gap to copper paint", size(mm(25)), now, "copper-near-narrow"},
		{"aluminium", "gap to copper paint", size(mm(24)), first, "copper-near-bridged"},
		{"bronze", "pink metal", survey.Mark{}, first, "pink-metal"},
		{"stainless-steel", "crevice", survey.Mark{}, now, "crevice"},
	} {
		c.mark.What = c.what
		got, row := urgency(t, c.material, c.mark)
		if got != c.want || row != c.row {
			t.Errorf("%s %v %s %s on %s: %s by %q, want %s by %q", c.what, c.mark.Grades, c.mark.Share, c.mark.Size, c.material, got, row, c.want, c.row)
		}
	}
}

// Every row decides on every material that it names, at its own grade, share and size.
func TestEachRowDecides(t *testing.T) {
	for o := range book.Observations() {
		decided := false
		for m := range book.Materials() {
			if !o.SeenOn(m.Key) {
				continue
			}
			mark := survey.Mark{What: o.What, Grades: slices.Collect(o.From())}
			if o.Over.Given() {
				mark.Share = o.Over.Add(percent(1))
			}
			if o.Size.Given() {
				mark.Size = o.Size
			}
			if o.Under.Given() {
				mark.Size = o.Under.Sub(mm(1))
			}
			if !o.Measured() { // the mildest of its ladder: nothing of it, or the widest gap
				mark.Share, mark.Size = percent(0), mm(0)
				if o.What == "gap to copper paint" {
					mark.Size = mm(999)
				}
			}
			if _, row := urgency(t, m.Key, mark); row == o.Key {
				decided = true
			}
		}
		if !decided {
			t.Errorf("%s decides nowhere", o.Key)
		}
	}
}

// A worse grade, a larger share, a larger defect and a narrower gap never ask for less, on any material.
func TestWorseNeverAsksForLess(t *testing.T) {
	scales := map[string][]string{}
	for g := range book.Grades() {
		scales[g.Scale] = append(scales[g.Scale], g.Key)
	}
	var whats []string
	for o := range book.Observations() {
		if !slices.Contains(whats, o.What) {
			whats = append(whats, o.What)
		}
	}
	walked := 0
	for m := range book.Materials() {
		for _, what := range whats {
			ladder := slices.DeleteFunc(slices.Collect(book.Observations()), func(o tables.Observation) bool { return o.What != what || !o.SeenOn(m.Key) })
			if len(ladder) == 0 {
				continue
			}
			rise := func(marks []survey.Mark) {
				last, worst := tables.Urgency(0), ""
				for _, x := range marks {
					x.What = what
					got, row := urgency(t, m.Key, x)
					if got == 0 && !seen(t, m.Key, x).Open.Has(survey.RuleNotGraded) {
						t.Errorf("%s %v %s %s on %s: nothing is said", what, x.Grades, x.Share, x.Size, m.Key)
					}
					if got < last {
						t.Errorf("%s %v %s %s on %s: %s by %s, after %s by %s", what, x.Grades, x.Share, x.Size, m.Key, got, row, last, worst)
					}
					last, worst = got, row
					walked++
				}
			}
			var shares, larger, narrower []survey.Mark
			for n := range int64(101) {
				shares = append(shares, survey.Mark{Share: percent(n), Size: mm(1)})
				larger = append(larger, survey.Mark{Share: percent(50), Size: mm(n)})
				narrower = append(narrower, survey.Mark{Share: percent(50), Size: mm(100 - n)})
			}
			rise(shares)
			if slices.ContainsFunc(ladder, func(o tables.Observation) bool { return o.Under.Given() }) {
				rise(narrower)
			} else {
				rise(larger)
			}
			for _, keys := range scales {
				if !slices.ContainsFunc(ladder, func(o tables.Observation) bool {
					return slices.ContainsFunc(slices.Collect(o.From()), func(k string) bool { return slices.Contains(keys, k) })
				}) {
					continue
				}
				var graded []survey.Mark
				for _, k := range keys {
					graded = append(graded, survey.Mark{Grades: []string{k}, Share: percent(50), Size: mm(10)})
				}
				rise(graded)
			}
		}
	}
	if walked < 5000 {
		t.Errorf("%d steps walked: do the ladders still stand?", walked)
	}
}

// What was seen tells of the same state of the film as the same thing read, so that look and readings never speak with two tongues.
func TestStatesAreThoseOfTheReadings(t *testing.T) {
	area := quantity.Exactly(quantity.SquareMetre.N(10))
	ask := func(m survey.Mark, r oldfilm.Readings, material string) {
		t.Helper()
		d, err := oldfilm.Judge(book, r, area)
		if err != nil {
			t.Fatal(err)
		}
		want := d.State
		if want == tables.Sound {
			want = ""
		}
		a := seen(t, material, m)
		if len(a.Advice) != 1 {
			t.Fatalf("%+v: %d answers", m, len(a.Advice))
		}
		if got := a.Advice[0].Row.State; got != want {
			t.Errorf("%s %v %s on %s tells of %q, read it is %q", m.What, m.Grades, m.Share, material, got, want)
		}
	}
	for n := range int64(6) {
		digit := string(rune('0' + n))
		for _, material := range []string{"steel", "cast-iron"} {
			ask(survey.Mark{What: "rust", Grades: []string{"iso-4628-3-ri-" + digit}}, oldfilm.Readings{Rust: "Ri " + digit}, material)
			ask(survey.Mark{What: "blisters", Grades: []string{"iso-4628-1-quantity-" + digit}}, oldfilm.Readings{Blisters: digit}, material)
		}
		ask(survey.Mark{What: "adhesion", Grades: []string{"astm-d3359-" + digit + "a"}}, oldfilm.Readings{Adhesion: digit + "A"}, "grp")
	}
	for n := range int64(101) {
		ask(survey.Mark{What: "flaking", Share: percent(n)}, oldfilm.Readings{Flaking: percent(n)}, "grp")
		ask(survey.Mark{What: "cracking", Share: percent(n)}, oldfilm.Readings{Alligatored: percent(n)}, "grp")
	}
}

// The gap beside a leg is that of the leg's own zone.
func TestGapIsThatOfTheLeg(t *testing.T) {
	leg, err := book.Zone("leg")
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]quantity.Length{"copper-near-bridged": leg.Gap.Low, "copper-near-narrow": leg.Gap.High} {
		o, err := book.Observation(key)
		if err != nil || !o.Under.Equal(want) {
			t.Errorf("%s speaks under %s, the leg's gap says %s (%v)", key, o.Under, want, err)
		}
	}
}

// Without the measure that decides, nothing is said to be well, and what can be said is said beside the question.
func TestWhatIsNotGradedStaysOpen(t *testing.T) {
	for _, c := range []struct {
		material string
		mark     survey.Mark
		row      string // that speaks all the same
	}{
		{"steel", survey.Mark{What: "rust"}, ""},
		{"steel", survey.Mark{What: "rust", Share: percent(4)}, ""},
		{"grp", survey.Mark{What: "fouling"}, ""},
		{"grp", survey.Mark{What: "flaking"}, ""},
		{"grp", survey.Mark{What: "blisters", Grades: []string{"iso-4628-1-size-4"}}, ""},
		{"grp", survey.Mark{What: "blisters", Grades: []string{"iso-4628-1-size-0"}}, ""},
		{"aluminium", survey.Mark{What: "gap to copper paint"}, ""},
		{"zinc-anode", survey.Mark{What: "wasted"}, ""},
		{"steel", survey.Mark{What: "pits"}, "pits-steel"},
		{"grp", survey.Mark{What: "laminate blisters"}, "laminate-blisters"},
	} {
		a := seen(t, c.material, c.mark)
		if len(a.Open) != 1 || !a.Open.Has(survey.RuleNotGraded) {
			t.Errorf("%+v: %d open questions, want 1", c.mark, len(a.Open))
		}
		if c.row == "" != (len(a.Advice) == 0) || c.row != "" && a.Advice[0].Row.Key != c.row {
			t.Errorf("%+v: %v, want %q", c.mark, a.Advice, c.row)
		}
	}
	a := seen(t, "steel", survey.Mark{What: "rust", Grades: []string{"iso-4628-3-ri-2"}})
	if len(a.Open) != 0 {
		t.Errorf("a grade was given: %v", a.Open)
	}
}

// with is the book with rows of observations on top.
func with(t *testing.T, rows string) *tables.Book {
	t.Helper()
	b, err := book.With(fstest.MapFS{"own.toml": {Data: []byte(rows)}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// fact is the value of the finding under the name.
func fact(f finding.Finding, name string) any {
	for _, x := range f.Facts {
		if x.Name == name {
			return x.Value
		}
	}
	return nil
}

const (
	barnaclesAtAll  = "[[observation]]\nkey = \"barnacles-at-all\"\nwhat = \"barnacles\"\nname = \"barnacles\"\nurgency = \"this haul-out\"\ndo = \"Take them off.\"\nwhy = \"So.\"\nbasis = \"assumption\"\n"
	barnaclesMany   = "[[observation]]\nkey = \"barnacles-many\"\nwhat = \"barnacles\"\nname = \"many barnacles\"\nover = \"10 %\"\nurgency = \"this haul-out\"\ndo = \"Take them off.\"\nwhy = \"So.\"\nbasis = \"assumption\"\n"
	barnaclesMost   = "[[observation]]\nkey = \"barnacles-most\"\nwhat = \"barnacles\"\nname = \"nothing but barnacles\"\nover = \"50 %\"\nurgency = \"before launch\"\ndo = \"Take them off.\"\nwhy = \"So.\"\nbasis = \"assumption\"\n"
	barnaclesLarge  = "[[observation]]\nkey = \"barnacles-large\"\nwhat = \"barnacles\"\nname = \"large barnacles\"\nsize = \"20 mm\"\nurgency = \"before launch\"\ndo = \"Take them off.\"\nwhy = \"So.\"\nbasis = \"assumption\"\n"
	barnaclesLittle = "[[observation]]\nkey = \"barnacles-little\"\nwhat = \"barnacles\"\nname = \"a few barnacles\"\nover = \"0 %\"\nurgency = \"monitor\"\ndo = \"Look again.\"\nwhy = \"So.\"\nbasis = \"assumption\"\n"
)

// What is wanted is said once, whichever rows want it, and only where a row that wants it would ask for more than is asked already.
func TestWhatIsWanted(t *testing.T) {
	const share, size = "its share", "its depth, width or diameter"
	for name, c := range map[string]struct {
		rows string
		mark survey.Mark
		want any    // nil: nothing is open
		row  string // that speaks
	}{
		"by one row":                       {barnaclesMany, survey.Mark{}, share, ""},
		"by two rows the same":             {barnaclesMany + barnaclesMost, survey.Mark{}, share, ""},
		"by three rows two things":         {barnaclesMany + barnaclesLarge + barnaclesMost, survey.Mark{}, share + " or " + size, ""},
		"one of them was given":            {barnaclesMany + barnaclesLarge + barnaclesMost, survey.Mark{Share: percent(11)}, size, "barnacles-many"},
		"both were given":                  {barnaclesMany + barnaclesLarge + barnaclesMost, survey.Mark{Share: percent(51), Size: mm(19)}, nil, "barnacles-most"},
		"it would ask for less":            {barnaclesAtAll + barnaclesLittle, survey.Mark{}, nil, "barnacles-at-all"},
		"it would ask for as much":         {barnaclesAtAll + barnaclesMany, survey.Mark{}, nil, "barnacles-at-all"},
		"it would ask for more":            {barnaclesAtAll + barnaclesMost, survey.Mark{}, share, "barnacles-at-all"},
		"it asks for little, alone":        {barnaclesLittle, survey.Mark{}, share, ""},
		"more is wanted after less speaks": {barnaclesLittle + barnaclesLarge, survey.Mark{Share: percent(1)}, size, "barnacles-little"},
	} {
		c.mark.What = "barnacles"
		a, err := survey.Judge(with(t, c.rows), survey.Survey{Seen: []survey.Place{{Part: "part", Marks: []survey.Mark{c.mark}}}}, []compat.Part{part("grp")}, day)
		if err != nil {
			t.Fatal(err)
		}
		var want any
		if len(a.Open) > 0 {
			want = fact(a.Open[0], "want")
			if seen, _ := fact(a.Open[0], "seen").(survey.Extent); seen.Name != "barnacles" {
				t.Errorf("%s: what was seen is told as %q", name, seen.Name)
			}
		}
		if want != c.want || len(a.Open) > 1 {
			t.Errorf("%s: %v is wanted, not %v", name, want, c.want)
		}
		if c.row == "" != (len(a.Advice) == 0) || c.row != "" && a.Advice[0].Row.Key != c.row {
			t.Errorf("%s: %v speaks, not %q", name, a.Advice, c.row)
		}
	}
}

// A place is told by its part, its zone where that says more, and the surveyor's own words.
func TestNameOfAPlace(t *testing.T) {
	for _, c := range []struct {
		part, zone, where, want string
	}{
		{"hull", "", "", "hull"},
		{"hull", "hull", "", "hull"}, // the zone's name says no more
		{"hull", "flat", "", "hull, flat of the bottom"},
		{"bottom", "hull", "", "bottom, hull"},
		{"hull", "", "port, under the chain plates", "hull, port, under the chain plates"},
		{"hull", "flat", "aft", "hull, flat of the bottom, aft"},
	} {
		p := part("grp")
		p.Name = c.part
		a := judged(t, survey.Survey{Seen: []survey.Place{{Part: c.part, Zone: c.zone, Where: c.where, Marks: []survey.Mark{{What: "chalking"}}}}}, p)
		if len(a.Advice) != 1 || a.Advice[0].About != c.want || a.Advice[0].Finding.About != c.want {
			t.Errorf("%+v: %+v", c, a.Advice)
		}
	}
}

// A judgement rests on its row, and on what each of its grades says.
func TestBasisOfAdvice(t *testing.T) {
	a := seen(t, "grp", survey.Mark{What: "fouling", Grades: []string{"nstm-081-30", "nz-level-of-fouling-2"}})
	row, _ := book.Observation("fouling-weed")
	want := []finding.Basis{row.Basis("urgency")}
	for _, key := range []string{"nstm-081-30", "nz-level-of-fouling-2"} {
		g, err := book.Grade(key)
		if err != nil {
			t.Fatal(err)
		}
		want = append(want, g.Basis("says"))
	}
	if len(a.Advice) != 1 || !slices.Equal(a.Advice[0].Finding.Basis, want) {
		t.Errorf("%+v, want the bases %+v", a.Advice, want)
	}
}

// The work that a state asks for is told by the names of its steps, in their order.
func TestWorkOfAState(t *testing.T) {
	b := with(t, "[[step]]\nkey = \"wash\"\nname = \"washing down\"\nbasis = \"assumption\"\n[[step]]\nkey = \"abrade\"\nname = \"sanding\"\nbasis = \"assumption\"\n")
	told := 0
	for c := range b.Conditions() {
		state := tables.Condition(c.Key)
		if c.Verdict == finding.Fine || c.Verdict == finding.Forbidden || state == tables.NotReported {
			continue
		}
		var want []string
		for s := range c.Steps() {
			switch s {
			case finding.Wash:
				want = append(want, "washing down")
			case finding.Abrade:
				want = append(want, "sanding")
			default:
				want = append(want, string(s)) // the trade's word is the key
			}
		}
		a, err := survey.Judge(b, survey.Survey{Seen: []survey.Place{{Part: "part", State: state}}}, []compat.Part{part("grp")}, day)
		if err != nil || len(a.Advice) != 1 || fact(a.Advice[0].Finding, "work") != strings.Join(want, ", ") {
			t.Errorf("%s asks for %v, want %v; %v", c.Key, a.Advice, want, err)
		}
		if strings.Contains(strings.Join(want, ", "), "ing") {
			told++
		}
	}
	if told == 0 {
		t.Error("no state asks for washing or sanding")
	}
}

// An extent is told with all that was given of it, and with how it is known unless it was seen. 2 mm are 2 / 25.4 = 0.0787 inches.
func TestExtentInWords(t *testing.T) {
	g, err := book.Grade("iso-4628-3-ri-2")
	if err != nil {
		t.Fatal(err)
	}
	for want, e := range map[string]survey.Extent{
		"rust":                         {Name: "rust"},
		"rust, Ri 2 (" + g.Scale + ")": {Name: "rust", Grades: []tables.GradeRow{g}, Known: survey.Seen},
		"rust, 0 % of it":              {Name: "rust", Share: percent(0)},
		"pits, 2 mm (0.0787 in)":       {Name: "pits", Size: mm(2)},
		"pits, 5 % of it, 2 mm (0.0787 in), measured":  {Name: "pits", Share: percent(5), Size: mm(2), Known: survey.Measured},
		"worm, as reported, to be confirmed by a look": {Name: "worm", Known: survey.Reported},
		"worm, assumed, to be confirmed by a look":     {Name: "worm", Known: survey.Assumed},
	} {
		if got := e.Show(quantity.Metric); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A needle is told by its typical reading, with the ends where they differ from it.
func TestNeedleInWords(t *testing.T) {
	for want, n := range map[string]survey.Needle{
		"12":            {Low: 12, Typical: 12, High: 12},
		"12 (10 to 15)": {Low: 10, Typical: 12, High: 15},
	} {
		if got := n.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Advice stands most urgent first, and is a copy of nothing that the caller holds.
func TestAdviceIsOrdered(t *testing.T) {
	s := survey.Survey{Seen: []survey.Place{{Part: "part", State: "worn", Photo: "1", Marks: []survey.Mark{
		{What: "fouling", Grades: []string{"nstm-081-0"}},
		{What: "rust", Grades: []string{"iso-4628-3-ri-5"}, Photo: "2"},
		{What: "rust", Grades: []string{"iso-4628-3-ri-1"}},
		{What: "fouling", Grades: []string{"nstm-081-20"}},
	}}}}
	a := judged(t, s, part("steel"))
	var got []tables.Urgency
	for _, x := range a.Advice {
		got = append(got, x.Urgency)
	}
	want := []tables.Urgency{tables.BeforeLaunch, tables.ThisHaulOut, tables.ThisHaulOut, tables.Monitor, tables.NoWork}
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if a.Advice[0].Photo != "2" || a.Advice[1].Photo != "1" {
		t.Errorf("photos %q and %q", a.Advice[0].Photo, a.Advice[1].Photo)
	}
}
