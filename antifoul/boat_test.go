package antifoul_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The bottom shared out by hand: a keel takes the sole with it, unless that is a part of its own; what has an area of its own is taken off the flat where the hull's formula counted it in and nobody measured the
// flat without it. A leg is no part of the hull.
func TestPartAreasByHand(t *testing.T) {
	hull := func(measured string) string {
		return "kind = \"fin-keel-yacht\"\nlength = \"9 m\"\nbeam = \"3 m\"\ndraft = \"1.6 m\"\nmeasured = { " + measured + " }"
	}
	part := func(name, area string) string {
		if area != "" {
			area = "area = \"" + area + "\"\n"
		}
		return "[[part]]\nname = \"" + name + "\"\nzone = \"" + name + "\"\nmaterial = \"grp\"\n" + area + film("bare", "")
	}
	const strips = "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\""
	for name, c := range map[string]struct{ hull, parts, want string }{
		"a keel with its sole":        {hull(strips + ", keel = \"4 m2\", sole = \"1 m2\""), part("keel", ""), "hull 23.0, keel 5.0"},
		"a sole by itself":            {hull(strips + ", keel = \"4 m2\", sole = \"1 m2\""), part("keel", "") + part("sole", ""), "hull 23.0, keel 4.0, sole 1.0"},
		"no keel":                     {hull(strips + ", keel = \"4 m2\", sole = \"1 m2\""), "", "hull 28.0"},
		"a keel of its own area":      {hull(strips + ", keel = \"4 m2\", sole = \"1 m2\""), part("keel", "3 m2"), "hull 24.0, keel 3.0"},
		"a rudder that was measured":  {hull(strips + ", rudder = \"1.5 m2\""), part("rudder", ""), "hull 23.0, rudder 1.5"},
		"a rudder beside what is not": {hull(strips), part("rudder", "1 m2") + part("leg", "0.5 m2"), "hull 23.0, rudder 1.0, leg 0.5"},
	} {
		var got []string
		for _, a := range planned(t, boatText(c.hull, "grp", film("bare", ""), c.parts)).Areas {
			got = append(got, a.Part+" "+a.Total.Typical.In(quantity.SquareMetre, 1, quantity.Nearest).StringFixed(1))
		}
		if strings.Join(got, ", ") != c.want {
			t.Errorf("%s: %v, want %s", name, got, c.want)
		}
	}
	total := func(parts string) float64 {
		return planned(t, boatText(cruiserHull, "grp", film("bare", ""), parts)).Areas[0].Total.Typical.Float(quantity.SquareMetre)
	}
	plain := total("")
	for parts, off := range map[string]float64{part("rudder", "1 m2"): 1, part("leg", "0.5 m2"): 0, part("rudder", "1 m2") + part("leg", "0.5 m2"): 1, part("rudder", "1 m2") + part("keel", "2 m2"): 3} {
		if got := plain - total(parts); got < off-1e-9 || got > off+1e-9 {
			t.Errorf("%s: %.2f m2 less of the hull, want %g", parts, got, off)
		}
	}
}

// A part without an area needs pieces of its own zone: those of another are none of it.
func TestPiecesOfAPart(t *testing.T) {
	rudder := "[[part]]\nname = \"rudder\"\nzone = \"rudder\"\nmaterial = \"grp\"\n" + film("bare", "")
	piece := func(what string) string {
		return "\n[[hull.piece]]\nwhat = \"" + what + "\"\nlength = \"0.6 m\"\nheight = \"0.8 m\""
	}
	for what, good := range map[string]bool{"rudder": true, "skeg": false, "nothing": false} {
		_, err := plan(t, boatText(cruiserHull+piece(what), "grp", film("bare", ""), rudder))
		if says := err != nil && strings.Contains(err.Error(), "part[rudder].area"); says == good || good && err != nil {
			t.Errorf("%s: %v", what, err)
		}
	}
	_, err := plan(t, boatText(cruiserHull+piece("nothing"), "grp", film("bare", ""), ""))
	fs, _ := errors.AsType[finding.Faults](err)
	if len(fs) != 1 || fs[0].Key != "hull.piece[1].what" {
		t.Errorf("a piece that nobody knows: %v", err)
	}
}

// A fault names the section that it is in, counted from one.
func TestFaultsNameTheirSection(t *testing.T) {
	record := "[[record]]\ncoating = \"ablative-cuprous-multi\"\nlaunched = 2025-04-01\nfilm = \"150 um\"\n[[record.look]]\non = 2025-10-01\nzone = \"edges\"\nsignal = false\n"
	tin := func(kits ...string) string {
		const kit = "[[tin.kit]]\nbase = \"3 L\"\nhardener = \"1 L\"\n"
		return "[[tin]]\ncoating = \"epoxy-barrier\"\nratio = \"3:1\"\n" + kit + strings.Join(kits, kit)
	}
	const euros, pounds = "price = \"140.00 EUR\"\n", "price = \"140.00 GBP\"\n"
	for name, c := range map[string]struct {
		own, text, key string
		kind           error
	}{
		"a part without a name":           {"", strings.Replace(base, "name = \"rudder\"\n", "", 1), "part[2].name", finding.ErrMissing},
		"the second record":               {"", base + record + strings.Replace(record, "\"150 um\"", "\"-150 um\"", 1), "record[2].film", finding.ErrImpossible},
		"an unknown wish":                 {"", strings.Replace(base, "[paint]", "[wishes]\ncoating = \"hard-cuprou\"\n[paint]", 1), "wishes.coating", finding.ErrUnknown},
		"an unknown signal":               {"", strings.Replace(base, "[paint]", "[wishes]\nsignal_type = \"hard-cuprou\"\n[paint]", 1), "wishes.signal_type", finding.ErrUnknown},
		"a primer to end with":            {"", strings.Replace(base, "[paint]", "[wishes]\ncoating = \"epoxy-primer\"\n[paint]", 1), "wishes.coating", finding.ErrValue},
		"no coating":                      {"", strings.Replace(base, "[paint]", "[wishes]\ncoating = \"none\"\n[paint]", 1), "", nil},
		"a blacking":                      {"", strings.Replace(base, "[paint]", "[wishes]\ncoating = \"blacking-bitumen\"\n[paint]", 1), "", nil},
		"a blacking below":                {"", strings.Replace(base, "[paint]", "[wishes]\nsignal_type = \"blacking-bitumen\"\n[paint]", 1), "wishes.signal_type", finding.ErrValue},
		"a sheet below":                   {"", strings.Replace(base, "[paint]", "[wishes]\nsignal_type = \"foul-release-film\"\n[paint]", 1), "wishes.signal_type", finding.ErrValue},
		"one currency":                    {"", base + tin(euros, euros), "", nil},
		"two currencies":                  {"", base + tin(euros, pounds), "tin[1].kit[2].price", finding.ErrImpossible},
		"no price, then one":              {"", base + tin("", euros, euros), "", nil},
		"another than the tables' prices": {price("labour", "h"), base + tin("", pounds), "tin[1].kit[2].price", finding.ErrImpossible},
		"that of the tables' prices":      {price("labour", "h"), base + tin(euros), "", nil},
	} {
		b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(c.own)}})
		if err != nil {
			t.Fatal(err)
		}
		_, err = antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(c.text)}}, "boat.toml")
		fs, _ := errors.AsType[finding.Faults](err)
		if c.key == "" {
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		if !slices.ContainsFunc(fs, func(f finding.Fault) bool { return f.Key == c.key && errors.Is(f, c.kind) }) {
			t.Errorf("%s: %v, want %s", name, err, c.key)
		}
	}
	// What may stand there is suggested: a type that a bottom ends with.
	_, err := plan(t, strings.Replace(base, "[paint]", "[wishes]\ncoating = \"epoxy-cuprous\"\n[paint]", 1))
	if err == nil || !strings.Contains(err.Error(), "did you mean soft-cuprous") || strings.Contains(err.Error(), "epoxy-primer") {
		t.Errorf("%v", err)
	}
	// Parts without a name are counted, also of a boat that was put together in code.
	x := planned(t, base).Boat
	x.Parts = slices.Clone(x.Parts)
	x.Parts[1].Name, x.Parts[1].Material = "", "grpp"
	for _, f := range x.Check(tables.Default()) {
		if !strings.HasPrefix(f.Key, "part[2].") {
			t.Errorf("the second part: %v", f)
		}
	}
}

// The water that she lies in is that of the first berth where she is kept that says one, by itself or by its place; where the use says it, that is asked of the law of such a berth too.
func TestWaterOfHerBerth(t *testing.T) {
	pond := "[[place]]\nkey = \"pond\"\nname = \"the pond\"\nwithin = \"GB\"\nwater = \"fresh\"\nbasis = \"own table\"\nsource = \"chart\"\n"
	berth := func(place, role, water string) string {
		if water != "" {
			water = "water = \"" + water + "\"\n"
		}
		return "[[berth]]\nplace = \"" + place + "\"\nrole = \"" + role + "\"\n" + water
	}
	for name, c := range map[string]struct{ berths, want string }{
		"the berth's":            {berth("GB", "kept", "brackish"), "brackish"},
		"its place's":            {berth("pond", "kept", ""), "fresh"},
		"a place that says none": {berth("GB", "kept", ""), ""},
		"the second of two":      {berth("GB", "kept", "") + berth("pond", "kept", ""), "fresh"},
		"the first of two":       {berth("GB", "kept", "salt") + berth("pond", "kept", ""), "salt"},
		"where she only calls":   {berth("pond", "visited", "") + berth("GB", "visited", "fresh"), ""},
		"called at first":        {berth("pond", "visited", "") + berth("GB", "kept", "brackish"), "brackish"},
	} {
		taken := ""
		for _, a := range billed(t, pond, smallestPlan+c.berths).Ranking.Assumed {
			if a.Key == "use.water" {
				taken = a.Taken
			}
		}
		want := "salt water for wear"
		if c.want != "" {
			want = "berth where she is kept, " + c.want
		}
		if !strings.HasPrefix(taken, want) && !strings.HasSuffix(taken, want) {
			t.Errorf("%s: %q, want %q", name, taken, want)
		}
	}
	fresh := func(use, water string) bool {
		p := rankedHull(t, "", smallestPlan+"[use]\n"+use+berth("GB", "kept", water))
		return slices.ContainsFunc(place(t, p, "hard-cuprous").Law(), func(f finding.Finding) bool {
			law, _ := factOf(f, "law").(string)
			return strings.Contains(law, "resh water")
		})
	}
	for _, c := range []struct {
		use, water string
		want       bool
	}{{"water = \"fresh\"\n", "", true}, {"water = \"salt\"\n", "", false}, {"", "fresh", true}, {"", "salt", false}} {
		if got := fresh(c.use, c.water); got != c.want {
			t.Errorf("use %q, berth %q: the law of fresh water asked %v", c.use, c.water, got)
		}
	}
}

// A boat is not changed by what is asked about her.
func TestABoatIsNotChanged(t *testing.T) {
	text := strings.Replace(base, "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n", "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\nreadings = { moisture = \"rising\" }\n", 1) +
		"[[record]]\ncoating = \"ablative-cuprous-multi\"\nlaunched = 2025-04-01\nlitres = \"9 L\"\ncoats = 2\n[[record.look]]\non = 2025-10-01\nzone = \"edges\"\nsignal = false\n"
	x, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := antifoul.Plan(tables.Default(), x)
	if err != nil {
		t.Fatal(err)
	}
	if s, _ := j.Scheme("hull"); !s.Findings.Has(antifoul.RuleWet) {
		t.Error("the readings say nothing: the test asks too little")
	}
	if x.Parts[0].Laminate != "" || x.Records[0].Film.Low.Given() {
		t.Errorf("laminate %q, film %s", x.Parts[0].Laminate, x.Records[0].Film.Low)
	}
}

// A record of litres by its bounds: litres above nought, in one to fifty coats.
func TestBoundsOfARecord(t *testing.T) {
	x, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(base + "[[record]]\ncoating = \"ablative-cuprous-multi\"\nlaunched = 2025-04-01\nlitres = \"9 L\"\ncoats = 2\n[[record.look]]\non = 2025-10-01\nzone = \"edges\"\nsignal = false\n")}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		litres string
		coats  int
		key    string
	}{{"9 L", 1, ""}, {"9 L", 50, ""}, {"9 L", 0, "record[1].coats"}, {"9 L", 51, "record[1].coats"}, {"0 L", 2, "record[1].litres"}, {"0.1 L", 2, ""}} {
		y := x
		y.Records = slices.Clone(x.Records)
		y.Records[0].Coats = c.coats
		if y.Records[0].Litres, err = quantity.Parse[quantity.Volume](c.litres); err != nil {
			t.Fatal(err)
		}
		fs := y.Check(tables.Default())
		if c.key == "" && len(fs) > 0 || c.key != "" && (len(fs) != 1 || fs[0].Key != c.key) {
			t.Errorf("%s in %d coats: %v", c.litres, c.coats, fs)
		}
	}
}

// Left without are parts that are painted and for which nothing suits; a part that is never painted is none, and one that gets what the owner wishes for is none.
func TestPartsLeftWithout(t *testing.T) {
	long := func(wish string) string {
		return strings.Replace(strings.Replace(base, "[paint]", "[wishes]\nrepaint_after = \"200 months\"\n"+wish+"[paint]", 1), "name = \"rudder\"", "name = \"helm\"", 1) + gear("anode", "fitting", "zinc-anode")
	}
	for name, c := range map[string]struct{ text, without, hull string }{
		"all get something":   {base + gear("anode", "fitting", "zinc-anode"), "", "ablative-cuprous-multi"},
		"nothing lasts":       {long(""), "hull helm", ""},
		"and one is wished":   {long("coating = \"ablative-cuprous-multi\"\n"), "helm", "ablative-cuprous-multi"},
		"a wish that is none": {strings.Replace(long("coating = \"hard-cuprous\"\n"), `material = "grp"`, `material = "aluminium"`, 1), "hull helm", ""},
	} {
		j := planned(t, c.text)
		s, _ := j.Scheme("hull")
		if got := strings.Join(j.Without(), " "); got != c.without || s.Coating.Key != c.hull {
			t.Errorf("%s: without %q, the hull gets %q; want %q, %q", name, got, s.Coating.Key, c.without, c.hull)
		}
	}
}

// What nobody reported counts as a film that nobody knows where a part is painted, and only there.
func TestLawOfAFilmThatNobodyReported(t *testing.T) {
	const found = "[[part.found]]\ncoating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"\n"
	for text, want := range map[string]bool{sheet: false, strings.Replace(sheet, found, "", 1): true} {
		got := slices.ContainsFunc(plannedJob(t, text).Legal, func(f finding.Finding) bool { return f.About == "old film, not identified" })
		if got != want {
			t.Errorf("the law of an unknown film is told %v, want %v", got, want)
		}
	}
}
