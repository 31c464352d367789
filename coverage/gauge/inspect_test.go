package gauge_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// in puts the readings into a zone.
func in(zone string, readings []gauge.Reading) []gauge.Reading {
	out := slices.Clone(readings)
	for i := range out {
		out[i].Zone = zone
	}
	return out
}

// boat is a steel hull of two zones, 20 and 2 m2, read by a magnetic gauge: the flat is the set that passes, the waterline ten readings.
func boat(waterline string) gauge.Inspection {
	return gauge.Inspection{
		Standard: gauge.ISO19840, Instrument: "magnetic", Material: "steel", Nominal: quantity.Micrometre.N(320),
		Zones:    []gauge.Zone{{Zone: "flat", Area: quantity.SquareMetre.N(20)}, {Zone: "waterline", Area: quantity.SquareMetre.N(2)}},
		Readings: append(in("flat", gauge.Readings(films(passes)...)), in("waterline", gauge.Readings(films(waterline)...))...),
	}
}

func inspect(t *testing.T, x gauge.Inspection) gauge.Inspected {
	t.Helper()
	got, err := gauge.Inspect(tables.Default(), x)
	if err != nil {
		t.Fatal(err)
	}
	all := slices.Clone(got.Reads)
	for _, z := range got.Zones {
		all = append(all, z.Findings...)
	}
	for _, f := range all {
		if text := tables.Default().Say(f, quantity.Metric); strings.Contains(text, "(not stated)") || strings.ContainsAny(text, "{}") {
			t.Errorf("%s: %s", f.Rule, text)
		}
	}
	return got
}

const right = "330 340 350 330 340 350 330 340 350 330"

func TestEachZoneForItself(t *testing.T) {
	got := inspect(t, boat(right))
	if !got.Passes || len(got.Zones) != 2 || got.Whole.Count != 30 || got.Whole.Needed != 20 || got.Zones[1].Needed != 10 {
		t.Errorf("%+v", got)
	}
	// Ten readings of 280 on the waterline: all in all the mean is (20 × 338.7 + 2800) ÷ 30 = 319.1, under 320 too. The thinnest place
	// lacks 320 − 280 = 40, the mean as much.
	got = inspect(t, boat(strings.Repeat("280 ", 10)))
	w := got.Zones[1]
	if got.Passes || !got.Zones[0].Passes || w.Passes || w.Missing.String() != "40 um" || w.MissingMean.String() != "40.0 um" || got.Zones[0].Missing.Given() {
		t.Errorf("a thin waterline: %+v", got)
	}
	if got.Whole.Passes || got.Whole.Mean.String() != "319.1 um" {
		t.Errorf("all together: %+v", got.Whole)
	}
	// Seven of 400 and three of 250, whose mean is 355: only the thin places fail it, by 250 < 256 and by three in ten.
	w = inspect(t, boat("400 400 400 400 400 400 400 250 250 250")).Zones[1]
	if w.Passes || w.Missing.String() != "70 um" || w.MissingMean.Given() || w.Share().String() != "30 %" && w.Share().String() != "30.0 %" {
		t.Errorf("thin places: %+v", w)
	}
}

// A hidden thin zone: the whole passes, one zone does not, so the boat does not.
func TestWholeHidesNothing(t *testing.T) {
	x := boat("400 400 400 400 400 400 400 400 310 310")
	x.Readings = append(x.Readings, in("flat", gauge.Readings(films(right)...))...)
	got := inspect(t, x)
	if !got.Whole.Passes || got.Zones[1].Passes || got.Passes {
		t.Errorf("whole %t, waterline %t, passes %t: %v", got.Whole.Passes, got.Zones[1].Passes, got.Passes, got.Zones[1].Findings)
	}
}

func TestZoneNotRead(t *testing.T) {
	x := boat(right)
	x.Readings = x.Readings[:20]
	got := inspect(t, x)
	w := got.Zones[1]
	if got.Passes || w.Passes || w.Count != 0 || !w.Findings.Has(gauge.RuleNotRead) || w.Findings[0].About != "waterline strip" || w.Findings.Worst() != finding.Ask || !got.Whole.Passes {
		t.Errorf("%+v", got)
	}
}

// The numbers of a gauge that does not read on the substrate are told and accept nothing.
func TestWrongGaugeAcceptsNothing(t *testing.T) {
	for material, passes := range map[string]bool{"steel": true, "cast-iron": true, "galvanised-steel": true, "grp": false, "aluminium": false, "stainless-steel": false} {
		x := boat(right)
		x.Material = material
		if got := inspect(t, x); got.Passes != passes || !got.Whole.Passes {
			t.Errorf("a magnetic gauge on %s: passes %t", material, got.Passes)
		}
	}
}

func TestAllMistakesOfAnInspection(t *testing.T) {
	x := boat(right)
	x.Standard, x.Instrument, x.Material, x.Profile = "iso-19841", "wet-comb", "stele", "rough"
	x.Zones = append(x.Zones, x.Zones[0], gauge.Zone{Zone: "keel"})
	x.Readings[3].Zone = "kel"
	x.Readings[4] = gauge.Reading{Zone: "flat", Film: quantity.Micrometre.N(5001), Line: 6}
	_, err := gauge.Inspect(tables.Default(), x)
	for _, word := range []string{"iso-19841", "a gauge of dry film: one of magnetic; eddy-current; ultrasonic", "stele", "rough", "zones[3]", "zones[4].area", "readings[4].zone", "did you mean keel", "line 6"} {
		if err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%s is not named in\n%v", word, err)
		}
	}
	if _, err := gauge.Inspect(tables.Default(), gauge.Inspection{}); err == nil || !strings.Contains(err.Error(), "zones: missing") || !strings.Contains(err.Error(), "readings: missing") {
		t.Errorf("nothing at all: %v", err)
	}
}

// Which gauge reads on what, as the trade says: magnetic on steel and iron, eddy current on metals that are neither, none on GRP and timber
// without the maker's word.
func TestReads(t *testing.T) {
	b := tables.Default()
	for _, c := range []struct {
		instrument, material string
		want                 finding.Verdict
	}{
		{"magnetic", "steel", finding.Fine},
		{"magnetic", "cast-iron", finding.Fine},
		{"magnetic", "galvanised-steel", finding.Caution}, // zinc and paint together
		{"magnetic", "aluminium", finding.Forbidden},
		{"magnetic", "bronze", finding.Forbidden},
		{"magnetic", "copper-nickel", finding.Forbidden},
		{"magnetic", "grp", finding.Forbidden},
		{"magnetic", "wood-carvel", finding.Forbidden},
		{"eddy-current", "aluminium", finding.Fine},
		{"eddy-current", "bronze", finding.Fine},
		{"eddy-current", "copper-nickel", finding.Caution},
		{"eddy-current", "steel", finding.Forbidden},
		{"eddy-current", "grp", finding.Forbidden},
		{"ultrasonic", "grp", finding.Ask},
		{"ultrasonic", "wood-sheathed", finding.Ask},
		{"ultrasonic", "steel", finding.Forbidden},
		{"wet-comb", "grp", finding.Fine},
		{"wet-comb", "steel", finding.Fine},
		{"litres-used", "wood-carvel", finding.Fine},
	} {
		got := gauge.Reads(b, c.instrument, c.material)
		if len(got) != 1 || got.Worst() != c.want {
			t.Errorf("%s on %s: %v, want %s", c.instrument, c.material, got, c.want)
		}
	}
	for _, unknown := range [][2]string{{"ruler", "steel"}, {"magnetic", "stele"}} {
		if got := gauge.Reads(b, unknown[0], unknown[1]); len(got) > 0 {
			t.Errorf("%v is judged: %v", unknown, got)
		}
	}
	text := b.Say(gauge.Reads(b, "magnetic", "aluminium")[0], quantity.Metric)
	if !strings.Contains(text, "eddy-current gauge") {
		t.Errorf("it does not say what reads there: %s", text)
	}
	if text := b.Say(gauge.Reads(b, "magnetic", "rubber-seal")[0], quantity.Metric); !strings.Contains(text, "no gauge of the tables") {
		t.Errorf("it does not say that none reads there: %s", text)
	}
}

func TestFor(t *testing.T) {
	for material, want := range map[string]string{
		"steel": "magnetic wet-comb litres-used", "galvanised-steel": "wet-comb litres-used magnetic eddy-current", "aluminium": "eddy-current wet-comb litres-used",
		"grp": "wet-comb litres-used ultrasonic", "fabric-tube": "wet-comb litres-used",
	} {
		var got []string
		for _, x := range gauge.For(tables.Default(), material) {
			got = append(got, x.Key)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: %v, want %s", material, got, want)
		}
	}
	// Whatever For names, Reads does not refuse, and the other way round.
	for m := range tables.Default().Materials() {
		for x := range tables.Default().Instruments() {
			if x.Tells == tables.TellsMoist { // no film
				continue
			}
			named := slices.ContainsFunc(gauge.For(tables.Default(), m.Key), func(o tables.Instrument) bool { return o.Key == x.Key })
			if refused := gauge.Reads(tables.Default(), x.Key, m.Key).Worst() == finding.Forbidden; named == refused {
				t.Errorf("%s on %s: named %t, refused %t", x.Key, m.Key, named, refused)
			}
		}
	}
}

func sheet(text string) ([]gauge.Reading, error) {
	return gauge.ReadCSV(fstest.MapFS{"gauge.csv": {Data: []byte(text)}}, "gauge.csv")
}

func TestReadCSV(t *testing.T) {
	got, err := sheet("zone,reading [um],spot,note\nflat,330,1,\n\nflat,13 mil,1,\"by the keel, low\"\nwaterline, 340 ,,\n")
	if err != nil {
		t.Fatal(err)
	}
	want := []gauge.Reading{
		{Zone: "flat", Film: quantity.Micrometre.N(330), Spot: "1", Line: 2},
		{Zone: "flat", Film: quantity.Mil.N(13), Spot: "1", Note: "by the keel, low", Line: 4},
		{Zone: "waterline", Film: quantity.Micrometre.N(340), Line: 5},
	}
	if !slices.EqualFunc(got, want, func(x, y gauge.Reading) bool {
		return x.Zone == y.Zone && x.Film.String() == y.Film.String() && x.Spot == y.Spot && x.Note == y.Note && x.Line == y.Line
	}) {
		t.Errorf("read %v, want %v", got, want)
	}
}

func TestEveryFaultOfASheet(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		says []string // one for each fault, in order
	}{
		"text, bounds and a missing cell": {
			"zone,reading [um]\nflat,thick\nflat,9999\nflat,0\nflat,-5\n,330\nflat,\nflat,5000\n",
			[]string{`line 2.reading: not accepted: read "thick"`, "line 3.reading: impossible: read 9999 um", "line 4.reading: impossible: read 0 um", "line 5.reading: impossible: read -5 um", "line 6.zone: missing", "line 7.reading: missing"},
		},
		"unknown columns, each told once": {
			"zone,reading [um],spt,colour\nflat,330,1,red\nflat,330,2,red\n",
			[]string{`line 2.colour: unknown key`, `line 2.spt: unknown key: read "spt"; accepted: did you mean spot?`},
		},
		"no such column":           {"zone,film [um]\nflat,330\nflat,330\n", []string{"column reading: missing", "line 2.film: unknown key"}},
		"not even in its one line": {"zone,note\nflat,by the keel\n", []string{"column reading: missing"}},
		"a bare number":            {"zone,reading\nflat,330\n", []string{`line 2.reading: not accepted: read "330"`}},
		"no lines":                 {"zone,reading [um]\n", []string{"readings: missing"}},
		"nothing":                  {"", []string{"no header"}},
		"too many cells":           {"zone,reading [um]\nflat,330,1\n", []string{"line 2: not readable: read 3 cells"}},
	} {
		got, err := sheet(c.text)
		if err == nil || len(got) > 0 {
			t.Errorf("%s: %d readings, error %v", name, len(got), err)
			continue
		}
		lines := strings.Split(err.Error(), "\n")
		if len(lines) != len(c.says) {
			t.Errorf("%s: %d faults, want %d:\n%v", name, len(lines), len(c.says), err)
			continue
		}
		for i, l := range lines {
			if !strings.HasPrefix(l, "gauge.csv: ") || !strings.Contains(l, c.says[i]) {
				t.Errorf("%s: fault %d: %s\nwant %s", name, i+1, l, c.says[i])
			}
		}
	}
	if _, err := gauge.ReadCSV(fstest.MapFS{}, "gauge.csv"); err == nil {
		t.Error("a file that is not there is read")
	}
}

// Every metal that may be painted has a gauge of dry film, if with its maker's word; on what is no metal none reads without it.
func TestEveryMetalHasAGauge(t *testing.T) {
	for m := range tables.Default().Materials() {
		best := finding.Forbidden
		for x := range tables.Default().Instruments() {
			if x.Tells == tables.TellsDry {
				best = min(best, x.On(m.Key))
			}
		}
		if m.Metal && m.Painted != tables.Never && !m.Anode && best == finding.Forbidden {
			t.Errorf("no gauge reads on %s", m.Key)
		}
		if !m.Metal && best < finding.Ask {
			t.Errorf("a gauge reads on %s, which is no metal, without its maker's word", m.Key)
		}
	}
}

func ExampleInspect() {
	book := tables.Default()
	x := boat("320 325 341 330 335 322 347 336 319 300")
	x.Readings = x.Readings[5:] // the flat lacks five readings
	got, err := gauge.Inspect(book, x)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, z := range got.Zones {
		fmt.Println(z.Zone.Zone, z.Passes, z.Count, "of", z.Needed)
		for _, f := range z.Findings.At(finding.Forbidden) {
			fmt.Println(" ", book.Say(f, quantity.Metric))
		}
	}
	// Output:
	// flat false 15 of 20
	//   15 readings on 20 m² (215 ft²) are too few: ISO 19840 wants 20, so nothing can be accepted yet.
	// waterline false 10 of 10
	//   2 of 10 readings lie below 320 µm (12.6 mil), too many: the rule allows fewer than 20 %.
}

// A medium profile takes 25 um off each reading: of 10 um nothing is left, not -15 um, and no more than the nominal film is missing.
func TestReadingBelowTheCorrection(t *testing.T) {
	for reading, lowest := range map[string]string{"10": "0 um", "24.9": "0 um", "25.0": "0.0 um", "25.1": "0.1 um"} { // as exact as it was read
		x := boat(reading + " " + right)
		x.Profile = "iso-19840-medium"
		got := inspect(t, x).Zones[1]
		if missing := quantity.Micrometre.N(320).Sub(got.Lowest); got.Lowest.String() != lowest || !got.Missing.Equal(missing) {
			t.Errorf("of %s the lowest is %s and %s is missing", reading, got.Lowest, got.Missing)
		}
	}
}

// The whole is judged on the sum of the areas: 20 and 20 m2 want the thirty readings of 40 m2.
func TestWholeIsOnTheSum(t *testing.T) {
	x := boat(right + " " + right)
	x.Zones[1].Area = quantity.SquareMetre.N(20)
	if got := inspect(t, x); got.Whole.Needed != 30 || got.Whole.Count != 40 || !got.Passes {
		t.Errorf("%d readings of %d needed, passes %t", got.Whole.Count, got.Whole.Needed, got.Passes)
	}
}

// All together must pass too: of one's own standard one area does for each square metre, and five are wanted on two.
func TestWholeMayFailAlone(t *testing.T) {
	m2 := quantity.SquareMetre.N(1)
	x := gauge.Inspection{
		Standard: "own", Instrument: "magnetic", Material: "steel", Nominal: quantity.Micrometre.N(100), Zones: []gauge.Zone{{Zone: "flat", Area: m2}, {Zone: "waterline", Area: m2}},
	}
	for _, z := range x.Zones {
		x.Readings = append(x.Readings, in(z.Zone, spots("um", []string{"120", "120"}, []string{"120", "120"}))...)
	}
	got, err := gauge.Inspect(own(t), x)
	if err != nil || !got.Zones[0].Passes || !got.Zones[1].Passes || got.Whole.Passes || got.Passes {
		t.Errorf("%+v, %v", got, err)
	}
}

// A zone that a reading names is looked for among those given, be it one; without any, that is what is missing, and nothing of each reading.
func TestZonesThatReadingsName(t *testing.T) {
	x := boat("")
	x.Zones = x.Zones[:1]
	x.Readings[3].Zone = "flatt"
	if fs := x.Check(tables.Default()); len(fs) != 1 || fs[0].Key != "readings[4].zone" || !strings.Contains(fs[0].Want, "flat") {
		t.Errorf("one zone: %v", fs)
	}
	x.Zones = nil
	if fs := x.Check(tables.Default()); len(fs) != 1 || fs[0].Key != "zones" {
		t.Errorf("no zone: %v", fs)
	}
}
