package report_test

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"io/fs"
	"maps"
	"math"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// unread are the fields of rule-bearing tables that no answer depends on, each with its reason; the reference tables lay them out.
var unread = map[string]string{
	"active.formula":   "chemistry to be cited beside the copper share",
	"can.name":         "a report says the size",
	"drying.name":      "what the row is for, for whoever changes it",
	"criterion.says":   "the question behind a weight, for whoever changes it",
	"factor.name":      "what the number is, for whoever replaces it",
	"supply.packs":     "the loader takes no other number than 2: a coat has one pack or two",
	"instrument.any":   "the loader refuses the other word, since no material is then listed",
	"factor.unit":      "the unit that the formula reads the number in",
	"overcoat.name":    "what the row is, for whoever changes it",
	"profile.abrasive": "cited; which grit made a profile changes no reading",
	"sampling.name":    "what the line is, for whoever cites it",
	"sampling.repeats": "cited; which readings were repeated is the surveyor's to say",
	"source.kind":      "what sort of document it is",
	"threshold.worse":  "the loader refuses the other word, since repair and strip then stand on the wrong sides",
	"law.within":       "a law's own words tell the time",

	"roughness.rt50":            "cited; what a gauge drawn over the hull would read, which no formula asks for",
	"roughness.resistance_30kn": "cited; the ship's own answer, which the method is held against",
}

// wordsOf are values that a column may take beyond those that its rows have.
var wordsOf = map[string][]any{
	"zone.goes_with":         {"rudder"},
	"overcoat.new_solvent":   {"strong", "mild"},
	"overcoat.old_biocide":   {"organotin", "cuprous oxide", "none"},
	"material.carrier":       {"water", "solvent", "none"},
	"material.barrier_with":  {"epoxy-barrier", "epoxy-barrier-free", "epoxy-primer"},
	"place.water":            {"salt", "brackish", "fresh"},
	"loss.caution":           {"abrading", "spraying"},
	"law.exempt":             {[]any{"grp"}},
	"acceptance.guide":       {"iso-19840-repeats-share"},
	"acceptance.sampling_us": {"SSPC-PA 2, metric"},
}

// cited are the tables that no rule reads yet: literature to be cited, laid out by the reference tables.
var cited = []string{"value"}

// stage is one part of what the module answers from a book, as text.
type stage func(*tables.Book) string

// stages are everything that the module answers: reports of many boats; every type on every material and in every zone; every coat
// over every film; areas, paint and wear; every law at every place.
func stages(t *testing.T) []stage {
	t.Helper()
	file := func(name string, changes ...string) string {
		text, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			t.Fatal(err)
		}
		for i := 0; i < len(changes); i += 2 {
			if !strings.Contains(string(text), changes[i]) {
				t.Fatalf("%s does not say %s", name, changes[i])
			}
		}
		return strings.NewReplacer(changes...).Replace(string(text))
	}
	first := []string{file("bottomjob/demo.toml"), file("boats/sloop.toml"), file("boats/taped.toml"), file("boats/late.toml")}
	more := []string{
		file("boats/planing.toml"), file("boats/steel.toml"), file("boats/trailer.toml"), file("boats/steel-measured.toml"),
		file("boats/sloop.toml", `by = "roller"`, `by = "air-spray"`, `[wishes]`, "[wishes]\nracing_finish = true\nbiocide = \"less\"",
			`material = "grp"`, "material = \"grp\"\nlaminate = \"wet\"", "relaunched_unpainted = false", "relaunched_unpainted = true"),
		file("boats/sloop.toml", `material = "grp"`, `material = "copper-nickel"`, `repaint_after = "12 months"`, "repaint_after = \"36 months\"\ncoating = \"hard-cuprous\""),
		file("boats/sloop.toml", `material = "grp"`, `material = "fabric-tube"`),
		file("boats/sloop.toml", `state = "sound"`, `state = "not reported"`, "launch = 2027-04-24", "launch = 2027-03-26"),
	}
	for _, text := range append(first, more...) {
		if _, err := antifoul.ReadBoat(aboard(text), "boat.toml"); err != nil {
			t.Fatal(err)
		}
	}
	return []stage{
		func(b *tables.Book) string { return told(b, first) },
		surfaces, pairs, amounts, berths, oldFilms, metals, gauges, days, looks,
		func(b *tables.Book) string {
			priced, err := b.With(os.DirFS("../../examples/yard"))
			if err != nil {
				return err.Error()
			}
			return told(priced, first[1:])
		},
		func(b *tables.Book) string { return told(b, more) },
	}
}

// sheets are the CSV files that lie beside the example boats.
var sheets = sync.OnceValue(func() map[string][]byte {
	out := map[string][]byte{}
	for _, name := range []string{"boats/girths.csv", "boats/steel-gauge.csv", "boats/late-weather.csv", "bottomjob/demo-weather.csv"} {
		data, err := os.ReadFile("../../examples/" + name)
		if err != nil {
			panic(err)
		}
		out[path.Base(name)] = data
	}
	return out
})

// likely is the stage that answers from the table, where it is not the first.
var likely = map[string]int{
	"material": 1, "zone": 1, "overcoat": 2, "condition": 2, "hull_form": 3, "area_method": 3, "supply": 3, "piece": 3, "loss": 3, "law": 4, "place": 4,
	"active": 4, "sign": 5, "threshold": 5, "potential": 6, "protection": 6, "electrode": 6, "sampling": 7, "profile": 7, "acceptance": 7, "instrument": 7, "drying": 8, "observation": 9, "grade": 9,
}

// aboard is a boat file with the files that it may name.
func aboard(text string) fs.FS {
	out := fstest.MapFS{"boat.toml": {Data: []byte(text)}}
	for name, data := range sheets() {
		out[name] = &fstest.MapFile{Data: data}
	}
	return out
}

// told is the long report of each boat, without the fingerprint.
func told(b *tables.Book, boats []string) string {
	var out bytes.Buffer
	for _, text := range boats {
		x, err := antifoul.ReadBoatWith(b, aboard(text), "boat.toml")
		if err != nil {
			fmt.Fprintln(&out, err)
			continue
		}
		j, err := antifoul.Plan(b, x)
		if err == nil {
			err = report.Write(&out, j, report.Options{Units: quantity.Metric})
		}
		if err != nil {
			fmt.Fprintln(&out, err)
		}
	}
	return strings.ReplaceAll(out.String(), b.Fingerprint(), "")
}

func said(b *tables.Book, out *strings.Builder, fs finding.List) {
	for _, f := range fs {
		fmt.Fprintf(out, "%v %s %v\n", f.Verdict, b.Say(f, quantity.Metric), f.First)
	}
}

func surfaces(b *tables.Book) string {
	var out strings.Builder
	for m := range b.Materials() {
		for z := range b.Zones() {
			p := compat.Part{Name: "part", Zone: z.Key, Material: m.Key, Found: compat.Stack{{Coating: bare(b), State: tables.Sound, For: compat.Found}}}
			s := compat.On(b, p)
			for c := range b.Coatings() {
				if c.Ranked() && (z.Key == "hull" || c.Role == tables.Bare) {
					r, fs := s.Best(&c)
					fmt.Fprintln(&out, r.Steps, r.Effort)
					said(b, &out, fs)
				}
			}
			hull, err := b.Coating("hard-cuprous")
			if err == nil {
				said(b, &out, compat.Beside(b, hull, []compat.Part{p}))
			}
		}
	}
	return out.String()
}

func bare(b *tables.Book) tables.Coating {
	c, _ := b.Coating(tables.BareSurface)
	return c
}

func pairs(b *tables.Book) string {
	var out strings.Builder
	for next := range b.Coatings() {
		if next.Role == tables.OldFilm {
			continue
		}
		for old := range b.Coatings() {
			for _, age := range []quantity.Duration{{}, quantity.Hour.N(1), quantity.Hour.N(20)} {
				said(b, &out, compat.Over(b, next, compat.Layer{Coating: old, State: tables.Sound, Age: age}))
			}
		}
		for state := range b.Conditions() {
			said(b, &out, compat.Over(b, next, compat.Layer{Coating: next, State: tables.Condition(state.Key)}))
		}
	}
	return out.String()
}

// days are two coats of everything, on everything and by every way of putting it on, in a fortnight of cold nights, hot noons, rain, wind and dew.
func days(b *tables.Book) string {
	var out strings.Builder
	start := time.Date(2027, 4, 5, 0, 0, 0, 0, time.UTC)
	var hours []weather.Hour
	for i := range 14 * 24 {
		day, h := i/24, float64(i%24)
		air := 2 + 2*float64(day) + 6*math.Sin(math.Pi*(h-8)/12)
		hour := weather.Hour{At: start.Add(time.Duration(i) * time.Hour), AirC: air, SurfaceC: weather.Unknown(), HumidityPct: 78 - 3.5*(air-2-2*float64(day)), WindMS: float64(day % 9)}
		if day%2 == 0 && h > 14 {
			hour.RainMM = 1
		}
		hours = append(hours, hour)
	}
	from, _ := quantity.NewDate(2027, 4, 5)
	when := calendar.Days{Launch: from.AddDays(14), Weekdays: []time.Weekday{0, 1, 2, 3, 4, 5, 6}, Start: 6 * 60, Stop: 21 * 60}
	tell := func(tasks ...calendar.Task) {
		c, err := calendar.Arrange(b, tasks, when, from, calendar.Conditions{Forecast: weather.Forecast{Hours: hours}})
		fmt.Fprintln(&out, err)
		for _, it := range c.Items {
			fmt.Fprintln(&out, it.Task, it.Again, it.Spans, it.Verdict, it.Opens, it.Closes, it.Last)
		}
		said(b, &out, c.Findings)
	}
	coats := func(x weather.Coat) {
		k := x.Coating
		l := calendar.Layer{Coat: x, Opens: k.OvercoatMin, Closes: k.OvercoatMax, Again: 2, Cures: k.LaunchMin, Stands: k.AirNew, Late: true}
		tell(calendar.Task{Name: "one", Hours: 3, Layers: []calendar.Layer{l}}, calendar.Task{Name: "two", Hours: 3, Layers: []calendar.Layer{l}}, calendar.Task{Name: "three", Hours: 3, Layers: []calendar.Layer{l}})
		if m, err := calendar.Today(b, calendar.Task{Name: "one", Hours: 3, Layers: []calendar.Layer{l}}, when, start.AddDate(0, 0, 6).Add(17*time.Hour), calendar.Conditions{Forecast: weather.Forecast{Hours: hours}}); err == nil {
			said(b, &out, append(m.Why, m.Finding))
		}
	}
	grp, _ := b.Material("grp")
	for c := range b.Coatings() {
		if c.ApplyMin.Given() {
			coats(weather.Coat{Coating: c, On: []tables.Material{grp}})
		}
	}
	paint, _ := b.Coating("ablative-cuprous-multi")
	for m := range b.Materials() {
		coats(weather.Coat{Coating: paint, On: []tables.Material{m}, Falling: m.Breathes})
	}
	for l := range b.Losses() {
		coats(weather.Coat{Coating: paint, On: []tables.Material{grp}, By: l})
	}
	for s := range b.Steps() {
		tell(calendar.Task{Name: s.Name, Hours: 14, Dry: s.Dry, Wait: s.Wait}, calendar.Task{Name: "one", Hours: 3, Layers: []calendar.Layer{{Coat: weather.Coat{Coating: paint, On: []tables.Material{grp}}}}})
	}
	return out.String()
}

func berths(b *tables.Book) string {
	var out strings.Builder
	seen := map[string]bool{} // one coating of each kind is enough
	var kinds []tables.Coating
	for c := range b.Coatings() {
		if kind := fmt.Sprint(c.Role == tables.OldFilm, c.Mechanism, c.Biocide); !seen[kind] && (c.Ranked() || c.Role == tables.OldFilm) {
			seen[kind] = true
			kinds = append(kinds, c)
		}
	}
	ask := func(p tables.Place, craft law.Craft, role, water, on string) {
		day, _ := quantity.ParseDate(on)
		desk := law.At(b, craft, []law.Berth{{Place: p.Key, Role: role, Water: water}}, day)
		for _, c := range kinds {
			if c.Role == tables.OldFilm {
				said(b, &out, desk.OldFilm(c))
				continue
			}
			said(b, &out, desk.Screen(c))
			said(b, &out, desk.Cleaning(c))
		}
	}
	small := law.Craft{Length: quantity.Metre.N(9), Mass: quantity.Tonne.N(4), Material: "aluminium"}
	for p := range b.Places() {
		for _, role := range tables.BerthRoles() {
			ask(p, small, role, "", "2027-05-01")
			ask(p, law.Craft{Length: quantity.Metre.N(26), Mass: quantity.Kilogram.N(150), Material: "grp"}, role, "salt", "2027-05-01")
		}
		ask(p, small, "", "salt", "2000-05-01")
		ask(p, law.Craft{Length: quantity.Metre.N(9), Mass: quantity.Tonne.N(4), Material: "wood-carvel"}, "", "fresh", "2015-05-01")
	}
	return out.String()
}

func amounts(b *tables.Book) string {
	var out strings.Builder
	for f := range b.HullForms() {
		fmt.Fprintln(&out, f.Name)
		a, err := coverage.Wetted(b, coverage.Hull{Kind: f.Key, Length: quantity.Metre.N(10), Beam: quantity.Metre.N(3), Draft: quantity.Metre.N(2)})
		fmt.Fprintln(&out, a.Total, err)
		for _, z := range a.Zones {
			fmt.Fprintln(&out, z)
		}
	}
	hulls(b, &out)
	used(b, &out)
	area := quantity.Range[quantity.Area]{Low: quantity.SquareMetre.N(20), Typical: quantity.SquareMetre.N(21), High: quantity.SquareMetre.N(22)}
	for l := range b.Losses() {
		for c := range b.Coatings() {
			v, err := coverage.Paint(b, area, c, quantity.Micrometre.N(50), 2, coverage.Method{By: l.Key})
			fmt.Fprintln(&out, v, err)
		}
	}
	for c := range b.Ranked() {
		for i, water := range tables.Waters() {
			u := wear.Use{
				UnderWay: quantity.Hour.N(100), Speed: quantity.Knot.N(8), Water: water, WaterTemperature: quantity.Celsius.N(20),
				AshoreEachYear: quantity.Month.N(int64(1 + 4*i)), RelaunchedUnpainted: quantity.Yes,
			}
			fmt.Fprintln(&out, wear.Rate(b, c, u), wear.Coats(b, c, u, 20), wear.Life(b, c, u, 2))
			said(b, &out, wear.Air(c, u))
		}
	}
	leaching(b, &out)
	return out.String()
}

// leaching is what is in a film of every coating, what leaves it, and every limit of release that a law sets.
func leaching(b *tables.Book, out *strings.Builder) {
	for c := range b.Coatings() {
		r, err := leach.Mean(b, c, quantity.Exactly(quantity.Micrometre.N(100)), 12)
		fmt.Fprintln(out, r.In.Held, r.Releases, err)
		said(b, out, r.Findings)
		for l := range b.Laws() {
			if l.ReleaseMax.Given() {
				said(b, out, leach.Against(r, leach.Cap{Place: l.Where(), Law: l.Name, Max: l.ReleaseMax}))
			}
		}
	}
}

// hulls is every hull form with every piece, by every way of finding an area, with proportions in, near and beyond the ranges.
func hulls(b *tables.Book, out *strings.Builder) {
	m := func(mm int64) quantity.Length { return quantity.Metre.Of(decimal.New(mm, -3)) }
	var pieces []hullform.Piece
	for p := range b.Pieces() {
		x := hullform.Piece{What: p.Key, Width: m(60)}
		switch p.Shape {
		case tables.Plate:
			x.Length, x.Height, x.Width = m(1200), m(900), quantity.Length{}
		case tables.Rectangle, tables.Cylinder, tables.Ellipsoid:
			x.Length = m(900)
		case tables.Disc:
		}
		pieces = append(pieces, x)
	}
	for f := range b.HullForms() {
		fmt.Fprintln(out, f.Name)
		for i := range int64(8) {
			s := coverage.Hull{
				Kind: f.Key, Length: m(10000), Beam: m(4600 - 500*i), Draft: m(500 + 300*i), CanoeDraft: m(200 + 100*i), BootTop: m(50),
				Mass: quantity.Kilogram.N(3000 + 4000*i), Midship: quantity.Percent.N(60 + 3*i),
			}
			switch i % 4 {
			case 1:
				s.Pieces = pieces
			case 2:
				s.Girths = []hullform.Station{{At: m(0), Girth: m(0)}, {At: m(5000), Girth: m(3000)}, {At: m(10000), Girth: m(2000)}}
			case 3:
				s.Pieces = pieces
				for x := range int64(5) {
					s.Offsets = append(s.Offsets, hullform.Section{At: m(2500 * x), Points: []hullform.Point{{Half: m(0), Height: m(0)}, {Half: m(300 * x), Height: m(500)}}})
				}
			}
			a, err := coverage.Wetted(b, s)
			fmt.Fprintln(out, a.Total, a.Zones, a.Apart, a.Method, err)
			said(b, out, a.Findings)
			for _, o := range a.Others {
				fmt.Fprintln(out, o.Name, o.Area, o.Bare)
				said(b, out, o.Findings)
			}
		}
	}
}

// used is what a job with every kind of work uses up, by every way of application, and what fills each profile.
func used(b *tables.Book, out *strings.Builder) {
	area := quantity.Exactly(quantity.SquareMetre.N(37))
	w := coverage.Work{
		Areas: map[finding.Action]quantity.Range[quantity.Area]{}, Hands: 3, Days: quantity.Exactly(11.0),
		Outline: quantity.Exactly(quantity.Metre.N(23)), Plan: quantity.SquareMetre.N(31), Waste: quantity.Exactly(quantity.Kilogram.N(170)),
	}
	for s := range b.Steps() {
		w.Areas[finding.Action(s.Key)] = area
	}
	for c := range b.Coatings() {
		w.Coats = append(w.Coats, coverage.Coated{Coating: c, Coats: 2, Area: area})
	}
	for l := range b.Losses() {
		for _, s := range coverage.Supplies(b, w, coverage.Method{By: l.Key}) {
			fmt.Fprintln(out, l.Key, s.Supply.Key, s.Supply.Name, s.Supply.Unit, s.Uses, s.Buy)
		}
	}
	for p := range b.Profiles() {
		film, err := coverage.Dead(b, p.Key)
		fmt.Fprintln(out, p.Key, film, err)
	}
}

// oldFilms is every sign on every material, and readings around every threshold.
func oldFilms(b *tables.Book) string {
	var out strings.Builder
	for m := range b.Materials() {
		for s := range b.Signs() {
			a, err := oldfilm.Identify(b, m.Key, []string{s.Key})
			fmt.Fprintln(&out, a.Settle, a.Hazards, err)
			for _, c := range a.Films {
				fmt.Fprintln(&out, c.Film.Key, c.Standing)
				said(b, &out, finding.List{c.Finding})
			}
		}
	}
	area := quantity.Exactly(quantity.SquareMetre.N(10))
	for n := range int64(101) {
		film := quantity.Exactly(quantity.Micrometre.N(9 * n))
		r := oldfilm.Readings{Flaking: quantity.Percent.N(n), Alligatored: quantity.Percent.N(n), Film: film}
		if n < 6 {
			r.Adhesion, r.Blisters, r.Rust = strconv.FormatInt(n, 10)+"A", strconv.FormatInt(n, 10), "Ri "+strconv.FormatInt(n, 10)
		}
		d, err := oldfilm.Judge(b, r, area)
		fmt.Fprintln(&out, d.Do, d.State, d.Decided, d.Hours, err)
		said(b, &out, d.Findings)
	}
	return out.String()
}

// metals is every two materials and a reading of each against each electrode.
func metals(b *tables.Book) string {
	var out strings.Builder
	for x := range b.Materials() {
		for y := range b.Materials() {
			for _, p := range galvanic.Of(b, &x, &y) {
				fmt.Fprintln(&out, p.Anode, p.Low, p.High)
				said(b, &out, p.Findings)
			}
		}
		for e := range b.Electrodes() {
			for mv := int64(-1300); mv < 400; mv += 100 {
				fs, err := galvanic.Protected(b, x.Key, galvanic.Reading{Value: quantity.Millivolt.N(mv), Electrode: e.Key})
				fmt.Fprintln(&out, err)
				said(b, &out, fs)
			}
		}
	}
	for x := range b.Potentials() {
		for y := range b.Potentials() {
			if x.Series == y.Series {
				p, err := galvanic.Couple(b, x.Series, galvanic.Metal{Name: x.Name, State: x.State}, galvanic.Metal{Name: y.Name, State: y.State})
				fmt.Fprintln(&out, p.Anode, p.Low, p.High, err)
			}
		}
	}
	return out.String()
}

// gauges is how many readings each standard wants, and readings on each profile.
func gauges(b *tables.Book) string {
	var out strings.Builder
	readings := make([]gauge.Reading, 40)
	for i := range readings {
		readings[i].Film = quantity.Micrometre.N(int64(330 + i))
	}
	for s := range b.Samplings() {
		for tenths := int64(1); tenths < 3000; tenths += 7 {
			n, line, err := gauge.Needed(b, s.Standard, quantity.SquareMetre.Of(decimal.New(tenths, -1)))
			fmt.Fprintln(&out, s.Standard, tenths, n, line.Key, err)
		}
	}
	for p := range b.Profiles() {
		v, err := gauge.Accept(b, gauge.ISO19840, gauge.Survey{Area: quantity.SquareMetre.N(40), Nominal: quantity.Micrometre.N(320), Profile: p.Key, Readings: readings})
		fmt.Fprintln(&out, v.Mean, v.Passes, err)
		said(b, &out, v.Findings)
	}
	// One in twenty, a fifth and more below or above; single places and means on either side of every share: by each row. Then areas on
	// either side of what is split, and one in ft2 that the US figures count otherwise.
	for a := range b.Acceptances() {
		ask := func(area quantity.Area, most quantity.Film, low int64, thin int) {
			s := gauge.Survey{Area: area, Nominal: quantity.Micrometre.N(320), Most: most}
			for i := range 60 {
				r := gauge.Reading{Spot: strconv.Itoa(i / 3), Film: quantity.Micrometre.N(330)}
				if i/3 < thin {
					r.Film = quantity.Micrometre.N(low)
				}
				s.Readings = append(s.Readings, r)
			}
			v, err := gauge.Accept(b, a.Key, s)
			fmt.Fprintln(&out, v.Mean, v.Passes, v.Needed, err)
			said(b, &out, v.Findings)
		}
		for _, most := range []quantity.Film{{}, quantity.Micrometre.N(400)} {
			for _, low := range []int64{230, 290, 310, 420, 500, 650, 1000} {
				for _, thin := range []int{1, 4, 12} {
					ask(quantity.SquareMetre.N(12), most, low, thin)
				}
			}
		}
		for _, area := range []quantity.Area{quantity.SquareMetre.N(1200), quantity.SquareMetre.N(900), quantity.SquareFoot.N(12500)} {
			ask(area, quantity.Film{}, 310, 1)
		}
	}
	for x := range b.Instruments() {
		for m := range b.Materials() {
			said(b, &out, gauge.Reads(b, x.Key, m.Key))
		}
	}
	return out.String()
}

// looks is everything that may be seen, on every material, at every grade and around every share and size, and every meter; and the whole
// report of a note.
func looks(b *tables.Book) string {
	var out strings.Builder
	day, _ := quantity.ParseDate("2027-04-09")
	scales := map[string][]string{} // by what is seen
	for o := range b.Observations() {
		scales[o.What] = append(scales[o.What], "")
		for key := range o.From() {
			if g, err := b.Grade(key); err == nil {
				scales[o.What] = append(scales[o.What], g.Scale)
			}
		}
	}
	var marks []survey.Mark
	for _, what := range slices.Sorted(maps.Keys(scales)) {
		for _, n := range []int64{0, 1, 10, 25, 34, 40, 51, 60} {
			marks = append(marks, survey.Mark{What: what, Share: quantity.Percent.N(n), Size: quantity.Millimetre.N(n)})
		}
		for g := range b.Grades() {
			if slices.Contains(scales[what], g.Scale) {
				marks = append(marks, survey.Mark{What: what, Grades: []string{g.Key}, Share: quantity.Percent.N(15)})
			}
		}
	}
	film, _ := b.Coating("epoxy-barrier")
	for m := range b.Materials() {
		p := compat.Part{Name: "part", Zone: "hull", Material: m.Key, Found: compat.Stack{{Coating: film, State: tables.Sound}}}
		tell := func(s survey.Survey) {
			a, err := survey.Judge(b, s, []compat.Part{p}, day)
			if err != nil {
				return
			}
			for _, x := range a.Advice {
				fmt.Fprintln(&out, x.Urgency, x.Row.Key, slices.Collect(x.Row.Cautions()))
				said(b, &out, finding.List{x.Finding})
			}
			said(b, &out, slices.Concat(a.Open, a.Differs, a.Limits))
			for _, x := range a.Moisture {
				said(b, &out, x.Findings)
			}
		}
		seen := map[string]bool{}
		for o := range b.Observations() {
			seen[o.What] = seen[o.What] || o.SeenOn(m.Key)
		}
		for _, mark := range marks {
			if !seen[mark.What] {
				continue
			}
			tell(survey.Survey{Seen: []survey.Place{{Part: "part", Marks: []survey.Mark{mark}}}})
		}
		for x := range b.Instruments() {
			tell(survey.Survey{
				How:      survey.How{On: day, Ashore: day.AddDays(-7), Wash: quantity.Hour.N(24)},
				Moisture: []survey.Moisture{{Part: "part", Instrument: x.Key, Meter: "m", Scale: "s", Reading: quantity.Exactly(20.0), Dry: 10, HasDry: true}},
			})
		}
	}
	boat, err := antifoul.ReadNote(b, os.DirFS("../../examples/surveynote"), "note.toml")
	if err == nil {
		var j *antifoul.Job
		if j, err = antifoul.Look(b, boat); err == nil {
			var text bytes.Buffer
			err = report.Survey(&text, j, report.Options{})
			out.WriteString(strings.ReplaceAll(text.String(), b.Fingerprint(), ""))
		}
	}
	fmt.Fprintln(&out, err)
	return out.String()
}

func digest(s string) uint64 {
	h := fnv.New64a()
	h.Write([]byte(s))
	return h.Sum64()
}

// library is the module's own files, parsed, so that a cell can be changed and the whole loaded again.
type library map[string]map[string][]map[string]any

func readLibrary(t *testing.T) library {
	t.Helper()
	out := library{}
	data := os.DirFS("../../tables/data")
	err := fs.WalkDir(data, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(p) != ".toml" {
			return err
		}
		var file map[string][]map[string]any
		if _, err := toml.DecodeFS(data, p, &file); err != nil {
			return err
		}
		out[p] = file
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// encoded are the library's files as text.
func (l library) encoded(t *testing.T) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	for name := range l {
		out[name] = &fstest.MapFile{Data: l.file(t, name)}
	}
	return out
}

func (l library) file(t *testing.T, name string) []byte {
	t.Helper()
	var text bytes.Buffer
	if err := toml.NewEncoder(&text).Encode(l[name]); err != nil {
		t.Fatal(name, err)
	}
	return text.Bytes()
}

// changed returns other values for a cell, likely ones first: numbers a little larger or smaller, another word of the same column,
// a text with a word more.
func changed(v any, column []any) []any {
	switch v := v.(type) {
	case int64:
		return []any{v + 1, v - 1, v * 2}
	case float64:
		return []any{v * 1.1, v * 0.9, v + 0.001}
	case bool:
		return []any{!v}
	case time.Time:
		return []any{v.AddDate(1, 0, 0), v.AddDate(-1, 0, 0), v.AddDate(0, 0, 1), v.AddDate(15, 0, 0)}
	case string:
		if number, unit, ok := strings.Cut(v, " "); ok {
			if x, err := strconv.ParseFloat(number, 64); err == nil && !strings.Contains(unit, " ") {
				var out []any
				for _, y := range []float64{x * 1.25, x * 0.75, x + 1, x - 1, x * 3, x / 3} {
					out = append(out, strconv.FormatFloat(y, 'f', 4, 64)+" "+unit)
				}
				return out
			}
		}
		out := []any{v + " indeed"}
		for _, w := range column {
			if s, ok := w.(string); ok && s != v && len(out) < 12 {
				out = append(out, s)
			}
		}
		return out
	case []any:
		var out []any
		for i := range 6 {
			next := slices.Clone(v)
			ok := true
			for j, e := range v {
				c := changed(e, nil)
				if i >= len(c) {
					ok = false
					break
				}
				next[j] = c[i]
			}
			if ok {
				out = append(out, next)
			}
		}
		for _, w := range column {
			if s, ok := w.([]any); ok && len(out) < 18 {
				out = append(out, slices.Clone(s))
			}
		}
		return append(out, v[:max(0, len(v)-1)])
	case []map[string]any:
		return []any{v[:len(v)-1]}
	}
	return nil
}

// cellAt is one cell of the library.
type cellAt struct {
	file, table string
	row         int
}

// Whatever a rule reads decides something: with another value in the field, in all of its rows or in one of them, some answer of
// the module changes. A field that nothing depends on is listed in unread with its reason, or it is a promise that nobody keeps.
func TestEveryFieldDecides(t *testing.T) {
	notUnderRace(t)
	all := stages(t)
	original := readLibrary(t)
	files := original.encoded(t)
	base, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	var want []uint64
	for _, answer := range all {
		want = append(want, digest(answer(base)))
	}
	columns := map[string][]cellAt{}
	for _, file := range slices.Sorted(maps.Keys(original)) {
		for table, rows := range original[file] {
			if slices.Contains(cited, table) {
				continue
			}
			for i, row := range rows {
				for field := range row {
					if !slices.Contains([]string{"key", "basis", "source", "where", "read", "doubt", "basis_of", "safety"}, field) {
						columns[table+"."+field] = append(columns[table+"."+field], cellAt{file, table, i})
					}
				}
			}
		}
	}
	// decides reports whether the changes of the cells, each by its own choice number, change an answer.
	decides := func(field string, cells []cellAt, choice int, column []any) bool {
		other := library{}
		for _, c := range cells {
			if other[c.file] == nil {
				other[c.file] = maps.Clone(original[c.file])
				for table, rows := range other[c.file] {
					other[c.file][table] = slices.Clone(rows)
				}
			}
			row := maps.Clone(original[c.file][c.table][c.row])
			values := changed(row[field], column)
			if choice >= len(values) {
				return false
			}
			row[field] = values[choice]
			other[c.file][c.table][c.row] = row
		}
		next := maps.Clone(files)
		for name := range other {
			next[name] = &fstest.MapFile{Data: other.file(t, name)}
		}
		b, err := tables.Load(next)
		if err != nil {
			return false // the loader does not take it: another value
		}
		order := make([]int, len(all))
		for i := range order {
			order[i] = i
		}
		first := likely[cells[0].table]
		order[0], order[first] = first, 0
		for _, i := range order {
			if digest(all[i](b)) != want[i] {
				return true
			}
		}
		return false
	}
	var dead []string
	var lock sync.Mutex
	var fields sync.WaitGroup
	limit := make(chan struct{}, 4)
	for _, name := range slices.Sorted(maps.Keys(columns)) {
		fields.Go(func() {
			limit <- struct{}{}
			defer func() { <-limit }()
			cells := columns[name]
			field := strings.SplitN(name, ".", 2)[1]
			var column []any
			for _, c := range cells {
				v := original[c.file][c.table][c.row][field]
				if !slices.ContainsFunc(column, func(o any) bool { return fmt.Sprint(o) == fmt.Sprint(v) }) {
					column = append(column, v)
				}
			}
			column = append(column, wordsOf[name]...)
			for choice := range 6 {
				if decides(field, cells, choice, column) {
					return
				}
			}
			if unread[name] != "" {
				cells = nil // all of its rows at once were enough to see that it decides, if it did
			}
			step := max(1, len(cells)/12)
			for i := 0; i < len(cells); i += step {
				for choice := range 14 {
					if decides(field, cells[i:i+1], choice, column) {
						return
					}
				}
			}
			lock.Lock()
			dead = append(dead, name)
			lock.Unlock()
		})
	}
	fields.Wait()
	slices.Sort(dead)
	for _, name := range dead {
		if unread[name] == "" {
			t.Errorf("no answer depends on %s", name)
		}
	}
	for name := range unread {
		if !slices.Contains(dead, name) {
			t.Errorf("%s is listed as unread, and answers depend on it", name)
		}
	}
	t.Logf("%d fields walked", len(columns))
}

// notUnderRace leaves a test out with the race detector, under which it takes minutes and of which it asks nothing: it has one goroutine, or what runs
// beside it is asked by others. .ci/run runs it without.
func notUnderRace(t *testing.T) {
	t.Helper()
	if underRace {
		t.Skip("it is run without the race detector")
	}
}
