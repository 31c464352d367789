package antifoul_test

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// putOn are the sections of what was put on, after the base boat. The keel is of cast iron, 3 m2: ISO 19840 wants ten readings there.
const putOn = `
[[part]]
name = "keel"
zone = "keel"
material = "cast-iron"
area = "3 m2"
[[part.found]]
coating = "epoxy-barrier"
state = "sound"
[[gauge]]
part = "keel"
instrument = "magnetic"
standard = "iso-19840"
nominal = "320 um"
most = "640 um"
profile = "iso-19840-fine"
coating = "epoxy-barrier"
file = "gauge.csv"
[[comb]]
part = "hull"
zone = "waterline"
coating = "epoxy-barrier"
readings = ["100 um to 125 um", "120 um"]
thinner = "5 %"
asked = "100 um"
[[used]]
part = "hull"
zone = "waterline"
coating = "epoxy-barrier"
coats = 2
litres = "3 L"
asked = "100 um"
`

// sheets are the boat file and two sheets of readings: the first has three thin places in ten, the second none.
func sheets(boat string) fstest.MapFS {
	sheet := func(readings string) *fstest.MapFile {
		return &fstest.MapFile{Data: []byte("zone,reading [um]\nkeel," + strings.ReplaceAll(readings, " ", "\nkeel,") + "\n")}
	}
	return fstest.MapFS{
		"boat.toml": {Data: []byte(boat)},
		"gauge.csv": sheet("360 350 370 355 345 300 310 305 360 380"),
		"other.csv": sheet("360 350 370 355 345 360 350 355 360 380"),
	}
}

func planSheets(t *testing.T, boat string) *antifoul.Job {
	t.Helper()
	x, err := antifoul.ReadBoat(sheets(boat), "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := antifoul.Plan(tables.Default(), x)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// putOnCases changes one key each, as keyCases does.
var putOnCases = []struct{ key, old, new string }{
	{"gauge.part", "[[gauge]]\npart = \"keel\"", "[[gauge]]\npart = \"hull\""}, // its own sheet is changed with it, see below
	{"gauge.instrument", `instrument = "magnetic"`, `instrument = "eddy-current"`},
	{"gauge.standard", `standard = "iso-19840"`, `standard = "nine-in-ten"`},
	{"gauge.nominal", `nominal = "320 um"`, `nominal = "280 um"`},
	{"gauge.most", `most = "640 um"`, `most = "340 um"`},
	{"gauge.profile", `profile = "iso-19840-fine"`, `profile = "iso-19840-coarse"`},
	{"gauge.coating", "coating = \"epoxy-barrier\"\nfile", "coating = \"epoxy-primer\"\nfile"},
	{"gauge.file", `file = "gauge.csv"`, `file = "other.csv"`},
	{"comb.part", "[[comb]]\npart = \"hull\"\nzone = \"waterline\"", "[[comb]]\npart = \"keel\""},
	{"comb.zone", "zone = \"waterline\"\ncoating = \"epoxy-barrier\"\nreadings", "zone = \"edges\"\ncoating = \"epoxy-barrier\"\nreadings"},
	{"comb.coating", "coating = \"epoxy-barrier\"\nreadings", "coating = \"epoxy-barrier-solvent-free\"\nreadings"},
	{"comb.readings", `"100 um to 125 um", "120 um"`, `"100 um to 125 um", "150 um"`},
	{"comb.thinner", `thinner = "5 %"`, `thinner = "20 %"`},
	{"comb.asked", "asked = \"100 um\"\n[[used]]", "asked = \"40 um\"\n[[used]]"},
	{"used.part", "[[used]]\npart = \"hull\"\nzone = \"waterline\"", "[[used]]\npart = \"keel\""},
	{"used.zone", "[[used]]\npart = \"hull\"\nzone = \"waterline\"", "[[used]]\npart = \"hull\"\nzone = \"edges\""},
	{"used.coating", "coating = \"epoxy-barrier\"\ncoats", "coating = \"epoxy-barrier-solvent-free\"\ncoats"},
	{"used.coats", "coats = 2", "coats = 3"},
	{"used.litres", `litres = "3 L"`, `litres = "1 L"`},
	{"used.asked", "litres = \"3 L\"\nasked = \"100 um\"", "litres = \"3 L\"\nasked = \"40 um\""},
}

// Each key of the three sections, changed alone, changes a verdict or a number.
func TestEveryPutOnKeyMatters(t *testing.T) {
	before := digest(planSheets(t, base+putOn))
	for _, k := range putOnCases {
		t.Run(k.key, func(t *testing.T) {
			if !strings.Contains(putOn, k.old) {
				t.Fatalf("the sections do not hold %q", k.old)
			}
			files := sheets(base + strings.Replace(putOn, k.old, k.new, 1))
			if k.key == "gauge.part" { // readings of the keel are none of the hull
				files["gauge.csv"].Data = []byte(strings.ReplaceAll(string(files["gauge.csv"].Data), "keel,", "flat,"))
			}
			x, err := antifoul.ReadBoat(files, "boat.toml")
			if err != nil {
				t.Fatal(err)
			}
			j, err := antifoul.Plan(tables.Default(), x)
			if err != nil {
				t.Fatal(err)
			}
			if digest(j) == before {
				t.Errorf("%s changes nothing", k.key)
			}
		})
	}
}

// The keel by hand: 10 um come off each reading for a fine profile, which leaves 350 340 360 345 335 290 300 295 350 370, mean 333.5,
// three of ten below 320. The thinnest place lacks 30 um, which is one coat of epoxy barrier on 3 m2, of 60 um since it
// goes on no thinner.
func TestKeelByHand(t *testing.T) {
	j := planSheets(t, base+putOn)
	g := j.PutOn.Gauged[0]
	v := g.Result.Whole
	if g.Result.Passes || v.Mean.String() != "333.5 um" || v.Below != 3 || v.Count != 10 || v.Needed != 10 || !v.Findings.Has(gauge.RuleShareMany) {
		t.Errorf("%+v", v)
	}
	if len(g.More) != 1 || g.More[0].Film.String() != "30 um" || g.More[0].Paint == nil || g.More[0].Paint.Coats != 1 || g.More[0].Readings != 0 {
		t.Fatalf("%+v", g.More)
	}
	c, err := tables.Default().Coating("epoxy-barrier")
	if err != nil {
		t.Fatal(err)
	}
	want, err := coverage.Paint(tables.Default(), quantity.Exactly(quantity.SquareMetre.N(3)), c, quantity.Micrometre.N(60), 1, coverage.Method{By: "roller"})
	if err != nil || !g.More[0].Paint.Litres.Typical.Equal(want.Typical) {
		t.Errorf("%s, want %s, %v", g.More[0].Paint.Litres.Typical, want.Typical, err)
	}
	if !j.Findings.Has(antifoul.RuleNotPutOn) {
		t.Error("the answer does not say that it is not accepted")
	}
	j = planSheets(t, base+strings.Replace(putOn, "gauge.csv", "other.csv", 1))
	if g := j.PutOn.Gauged[0]; !g.Result.Passes || len(g.More) > 0 || j.Findings.Has(antifoul.RuleNotPutOn) {
		t.Errorf("the other sheet: %+v", g)
	}
}

// ISO 19840 wants ten readings of 3 m2: of thick enough ones as many more are asked for as are missing of ten, and no paint.
func TestReadingsThatAreMissing(t *testing.T) {
	for taken, missing := range map[int]int{8: 2, 9: 1, 10: 0, 11: 0} {
		files := sheets(base + putOn)
		files["gauge.csv"].Data = []byte("zone,reading [um]\n" + strings.Repeat("keel,360\n", taken))
		x, err := antifoul.ReadBoat(files, "boat.toml")
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Plan(tables.Default(), x)
		if err != nil {
			t.Fatal(err)
		}
		more := j.PutOn.Gauged[0].More
		if missing == 0 && len(more) > 0 || missing > 0 && (len(more) != 1 || more[0].Readings != missing || more[0].Film.Given() || more[0].Paint != nil) {
			t.Errorf("of %d readings: %+v", taken, more)
		}
	}
}

// The barrier has 60 % solids: 200.00005 um wet dry to 120.00003 um. That is all that was asked, and nothing makes up what does not lack; of a
// hundred-thousandth more one coat does.
func TestCombedToTheLastDigit(t *testing.T) {
	for asked, thin := range map[string]bool{"120.00003 um": false, "120.00004 um": true} {
		text := strings.NewReplacer("[\"100 um to 125 um\", \"120 um\"]", "[\"200.00005 um\"]", "thinner = \"5 %\"\nasked = \"100 um\"", "asked = \""+asked+"\"").Replace(putOn)
		c := planSheets(t, base+text).PutOn.Combed[0]
		if c.Result.Findings.Has(coverage.RuleCombThin) != thin || (c.More != nil) != thin {
			t.Errorf("of %s: %s, more %+v", asked, rulesOf(c.Result.Findings), c.More)
		}
	}
}

// What is not given is taken from the coating and from the boat's paint.
func TestPutOnTakesWhatIsNotGiven(t *testing.T) {
	c, err := tables.Default().Coating("epoxy-barrier")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer("thinner = \"5 %\"\nasked = \"100 um\"\n", "", "litres = \"3 L\"\nasked = \"100 um\"\n", "litres = \"3 L\"\n").Replace(putOn)
	short := planSheets(t, base+text)
	full := planSheets(t, base+strings.NewReplacer("thinner = \"5 %\"\n", "", `asked = "100 um"`, `asked = "`+c.Film.Typical.String()+`"`).Replace(putOn))
	if digest(short) != digest(full) {
		t.Error("the coating's typical film is not taken")
	}
	thinned := planSheets(t, strings.Replace(base, "[paint]", "[paint]\nthinner = \"5 %\"", 1)+strings.Replace(putOn, "thinner = \"5 %\"\n", "", 1))
	if got, want := thinned.PutOn.Combed[0].Result.Mean.Typical, planSheets(t, base+putOn).PutOn.Combed[0].Result.Mean.Typical; !got.Equal(want) {
		t.Errorf("with the boat's thinner %s, with its own %s", got, want)
	}
}

// What is not given stands in the list of what was assumed, and nothing that is given does.
func TestPutOnAssumptions(t *testing.T) {
	assumed := func(text string) string {
		var keys []string
		for _, a := range planSheets(t, base+text).Ranking.Assumed {
			if strings.Contains(a.Key, "[1].") {
				keys = append(keys, a.Key)
			}
		}
		return strings.Join(keys, " ")
	}
	if got := assumed(putOn); got != "" {
		t.Errorf("all is given, and these are assumed: %s", got)
	}
	less := strings.NewReplacer("most = \"640 um\"\n", "", "profile = \"iso-19840-fine\"\n", "", "coating = \"epoxy-barrier\"\nfile", "file",
		"thinner = \"5 %\"\n", "", "asked = \"100 um\"\n", "").Replace(putOn)
	if got, want := assumed(less), "gauge[1].most gauge[1].profile gauge[1].coating comb[1].thinner comb[1].asked used[1].asked"; got != want {
		t.Errorf("assumed %s, want %s", got, want)
	}
}

// However odd the numbers of a file that is read, it gets an answer.
func TestOddNumbersGetAnAnswer(t *testing.T) {
	for _, c := range [][2]string{
		{"nominal = \"320 um\"\nmost = \"640 um\"", "nominal = \"5000 um\""},
		{"asked = \"100 um\"\n[[used]]", "asked = \"900000 um\"\n[[used]]"},
		{`nominal = "320 um"`, `nominal = "0.001 mil"`},
		{`litres = "3 L"`, `litres = "0.000001 mL"`},
		{`litres = "3 L"`, `litres = "900000 US gal"`},
		{"coats = 2", "coats = 1"},
		{"coats = 2", "coats = 50"},
	} {
		text := strings.Replace(putOn, c[0], c[1], 1)
		if text == putOn {
			t.Fatalf("the sections do not hold %q", c[0])
		}
		planSheets(t, base+text)
	}
}

// Each mistake is one fault, with the file that it stands in.
func TestPutOnFaults(t *testing.T) {
	for _, k := range []struct {
		name, old, new string
		kind           error
		file, key      string
	}{
		{"no such part", "[[gauge]]\npart = \"keel\"", "[[gauge]]\npart = \"kel\"", finding.ErrUnknown, "boat.toml", "gauge[1].part"},
		{"no part gauged", "[[gauge]]\npart = \"keel\"", "[[gauge]]", finding.ErrMissing, "boat.toml", "gauge[1].part"},
		{"no instrument", "instrument = \"magnetic\"\n", "", finding.ErrMissing, "boat.toml", "gauge[1].instrument"},
		{"no standard", "standard = \"iso-19840\"\n", "", finding.ErrMissing, "boat.toml", "gauge[1].standard"},
		{"no such instrument", `"magnetic"`, `"magnet"`, finding.ErrUnknown, "boat.toml", "gauge[1].instrument"},
		{"a comb is no gauge of dry film", `"magnetic"`, `"wet-comb"`, finding.ErrUnknown, "boat.toml", "gauge[1].instrument"},
		{"no such standard", `"iso-19840"`, `"iso-1984"`, finding.ErrUnknown, "boat.toml", "gauge[1].standard"},
		{"no such profile", `"iso-19840-fine"`, `"fine"`, finding.ErrUnknown, "boat.toml", "gauge[1].profile"},
		{"most below nominal", `"640 um"`, `"64 um"`, finding.ErrImpossible, "boat.toml", "gauge[1].most"},
		{"no nominal", "nominal = \"320 um\"\n", "", finding.ErrMissing, "boat.toml", "gauge[1].nominal"},
		{"nominal without a unit", `"320 um"`, `"320"`, finding.ErrValue, "boat.toml", "gauge[1].nominal"},
		{"a paint without solids", "coating = \"epoxy-barrier\"\nfile", "coating = \"hard-old\"\nfile", finding.ErrUnknown, "boat.toml", "gauge[1].coating"},
		{"an unknown key", "\nfile =", "\nfill = 1\nfile =", finding.ErrUnknownKey, "boat.toml", "gauge[1].fill"},
		{"no sheet", "file = \"gauge.csv\"\n", "", finding.ErrMissing, "boat.toml", "gauge[1].file"},
		{"no such sheet", `"gauge.csv"`, `"gauges.csv"`, finding.ErrSyntax, "gauges.csv", ""},
		{"a sheet above the folder", `"gauge.csv"`, `"../gauge.csv"`, finding.ErrValue, "boat.toml", "gauge[1].file"},
		{"no such zone of the part", "zone = \"waterline\"\ncoating = \"epoxy-barrier\"\nreadings", "zone = \"keel\"\ncoating = \"epoxy-barrier\"\nreadings", finding.ErrUnknown, "boat.toml", "comb[1].zone"},
		{"a tooth without a unit", `"120 um"]`, `"120"]`, finding.ErrValue, "boat.toml", "comb[1].readings[2]"},
		{"teeth the wrong way round", `"100 um to 125 um"`, `"125 um to 100 um"`, finding.ErrImpossible, "boat.toml", "comb[1].readings[1]"},
		{"no readings", "readings = [\"100 um to 125 um\", \"120 um\"]\n", "", finding.ErrMissing, "boat.toml", "comb[1].readings"},
		{"one reading without a unit", `["100 um to 125 um", "120 um"]`, `["120"]`, finding.ErrValue, "boat.toml", "comb[1].readings[1]"},
		{"no part combed", "[[comb]]\npart = \"hull\"", "[[comb]]", finding.ErrMissing, "boat.toml", "comb[1].part"},
		{"no coating", "coating = \"epoxy-barrier\"\nreadings", "readings", finding.ErrMissing, "boat.toml", "comb[1].coating"},
		{"an unknown key of a comb", "\nreadings =", "\nreading = 1\nreadings =", finding.ErrUnknownKey, "boat.toml", "comb[1].reading"},
		{"no part painted", "[[used]]\npart = \"hull\"", "[[used]]", finding.ErrMissing, "boat.toml", "used[1].part"},
		{"no coating used", "coating = \"epoxy-barrier\"\ncoats", "coats", finding.ErrMissing, "boat.toml", "used[1].coating"},
		{"an unknown key of the litres", "\nlitres =", "\nliters = 1\nlitres =", finding.ErrUnknownKey, "boat.toml", "used[1].liters"},
		{"no coats", "coats = 2\n", "", finding.ErrMissing, "boat.toml", "used[1].coats"},
		{"coats of nought", "coats = 2\n", "coats = 0\n", finding.ErrValue, "boat.toml", "used[1].coats"},
		{"coats beyond all", "coats = 2\n", "coats = 51\n", finding.ErrValue, "boat.toml", "used[1].coats"},
		{"litres of nought", `"3 L"`, `"0 L"`, finding.ErrImpossible, "boat.toml", "used[1].litres"},
		{"a film of nought", "litres = \"3 L\"\nasked = \"100 um\"", "litres = \"3 L\"\nasked = \"0 um\"", finding.ErrImpossible, "boat.toml", "used[1].asked"},
	} {
		t.Run(k.name, func(t *testing.T) {
			if !strings.Contains(putOn, k.old) {
				t.Fatalf("the sections do not hold %q", k.old)
			}
			_, err := antifoul.ReadBoat(sheets(base+strings.Replace(putOn, k.old, k.new, 1)), "boat.toml")
			fs, _ := errors.AsType[finding.Faults](err)
			if len(fs) != 1 {
				t.Fatalf("expected one fault, got:\n%v", err)
			}
			if !errors.Is(err, k.kind) || fs[0].File != k.file || fs[0].Key != k.key || fs[0].Want == "" {
				t.Errorf("got %v; want %s of %q in %s", fs[0], k.kind, k.key, k.file)
			}
		})
	}
}

// Whichever two of the sections stand in a file, the faults of both are told.
func TestPutOnFaultsOfTwoSections(t *testing.T) {
	parts := strings.SplitAfter(strings.NewReplacer("[[gauge]]", "@[[gauge]]", "[[comb]]", "@[[comb]]", "[[used]]", "@[[used]]").Replace(putOn), "@")
	keel, sections := parts[0], parts[1:]
	for out := range sections {
		text := []string{keel}
		for i, s := range sections {
			if i != out {
				text = append(text, strings.NewReplacer("part = \"keel\"", "part = \"kiel\"", "part = \"hull\"", "part = \"hulk\"").Replace(s))
			}
		}
		_, err := antifoul.ReadBoat(sheets(base+strings.ReplaceAll(strings.Join(text, ""), "@", "")), "boat.toml")
		if fs, _ := errors.AsType[finding.Faults](err); len(fs) != 2 {
			t.Errorf("without the section %d:\n%v", out+1, err)
		}
	}
}

// What is wrong with a section is told at once, whatever else is wrong with it or with the hull, and a misread tooth does not change the number of the next one.
func TestPutOnFaultsAtOnce(t *testing.T) {
	text := strings.NewReplacer("coating = \"epoxy-barrier\"\nreadings = [\"100 um to 125 um\", \"120 um\"]\n", "coating = \"epoxy-barier\"\n", "litres = \"3 L\"\n", "").Replace(putOn) +
		"[[comb]]\npart = \"hull\"\ncoating = \"epoxy-barrier\"\nreadings = [\"120\", \"125 um to 100 um\"]\n"
	_, err := antifoul.ReadBoat(sheets(strings.Replace(base, `draft = "1.6 m"`, `draft = "16 m"`, 1)+text), "boat.toml")
	fs, _ := errors.AsType[finding.Faults](err)
	var keys []string
	for _, f := range fs {
		keys = append(keys, f.Key)
	}
	if got := strings.Join(keys, " "); got != "comb[1].coating comb[1].readings comb[2].readings[1] comb[2].readings[2] hull.draft used[1].litres" {
		t.Errorf("%s\n%v", got, err)
	}
}

// A zone that is typed wrong is answered by the near one of that part's own.
func TestZonesOfThePartAreNamed(t *testing.T) {
	_, err := antifoul.ReadBoat(sheets(base+strings.Replace(putOn, "[[comb]]\npart = \"hull\"\nzone = \"waterline\"", "[[comb]]\npart = \"hull\"\nzone = \"waterlin\"", 1)), "boat.toml")
	if fs, _ := errors.AsType[finding.Faults](err); len(fs) != 1 || !strings.Contains(fs[0].Want, "waterline") {
		t.Errorf("got:\n%v", err)
	}
}

// Every fault of a sheet is told beside those of the boat file, with the sheet's name and the line; nothing is told twice.
func TestFaultsOfASheet(t *testing.T) {
	files := sheets(strings.Replace(base, `draft = "1.6 m"`, `draft = "16 m"`, 1) + putOn)
	files["gauge.csv"].Data = []byte("zone,reading [um]\nkeel,thick\nkeel,9999\n")
	_, err := antifoul.ReadBoat(files, "boat.toml")
	fs, _ := errors.AsType[finding.Faults](err)
	if len(fs) != 3 || fs[0].Key != "hull.draft" || fs[1].File != "gauge.csv" || fs[1].Key != "line 2.reading" || fs[2].Key != "line 3.reading" {
		t.Errorf("got:\n%v", err)
	}
	// A zone that the part has not is a fault of its line.
	files = sheets(base + putOn)
	files["gauge.csv"].Data = []byte("zone,reading [um]\nkeel,350\nkel,350\n")
	_, err = antifoul.ReadBoat(files, "boat.toml")
	if fs, _ = errors.AsType[finding.Faults](err); len(fs) != 1 || fs[0].File != "gauge.csv" || fs[0].Key != "line 3.zone" {
		t.Errorf("got:\n%v", err)
	}
}

// A part that must stay bare has no film to be read.
func TestNothingWasPutOnABarePart(t *testing.T) {
	text := strings.Replace(base, "[use]", "[[part]]\nname = \"anode\"\nzone = \"fitting\"\nmaterial = \"zinc-anode\"\n[use]", 1)
	_, err := antifoul.ReadBoat(sheets(text+strings.Replace(putOn, "[[used]]\npart = \"hull\"\nzone = \"waterline\"", "[[used]]\npart = \"anode\"", 1)), "boat.toml")
	if fs, _ := errors.AsType[finding.Faults](err); len(fs) != 1 || fs[0].Key != "used[1].part" {
		t.Errorf("got:\n%v", err)
	}
}
