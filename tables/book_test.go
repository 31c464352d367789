package tables_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

func TestDefaultIsOneBook(t *testing.T) {
	if first, second := tables.Default(), tables.Default(); first != second {
		t.Error("Default makes a book at each call")
	}
}

// Every lookup gives the row of a key that its list holds, and for another key an error with the near names.
func TestLookups(t *testing.T) {
	b := book(t)
	for name, c := range map[string]struct {
		get  func(key string) (string, error)
		slip string // a known key with a slip of the pen
		near string // the known key
		what string // the table, as the fault names it
	}{
		"Coating":    {func(k string) (string, error) { r, err := b.Coating(k); return r.Key, err }, "hard-cuprus", "hard-cuprous", "coating"},
		"Active":     {func(k string) (string, error) { r, err := b.Active(k); return r.Key, err }, "cuprous-oxid", "cuprous-oxide", "active"},
		"Material":   {func(k string) (string, error) { r, err := b.Material(k); return r.Key, err }, "aluminum", "aluminium", "material"},
		"Condition":  {func(k string) (string, error) { r, err := b.Condition(tables.Condition(k)); return r.Key, err }, "flacking", "flaking", "condition"},
		"Zone":       {func(k string) (string, error) { r, err := b.Zone(k); return r.Key, err }, "waterlne", "waterline", "zone"},
		"HullForm":   {func(k string) (string, error) { r, err := b.HullForm(k); return r.Key, err }, "fin-keel-yatch", "fin-keel-yacht", "hull_form"},
		"Loss":       {func(k string) (string, error) { r, err := b.Loss(k); return r.Key, err }, "rollers", "roller", "loss"},
		"Colour":     {func(k string) (string, error) { r, err := b.Colour(k); return r.Key, err }, "blak", "black", "colour"},
		"Step":       {func(k string) (string, error) { r, err := b.Step(finding.Action(k)); return r.Key, err }, "abraid", "abrade", "step"},
		"Factor":     {func(k string) (string, error) { r, err := b.Factor(k); return r.Key, err }, "q1O", "q10", "factor"},
		"Criterion":  {func(k string) (string, error) { r, err := b.Criterion(k); return r.Key, err }, "grows", "growth", "criterion"},
		"Place":      {func(k string) (string, error) { r, err := b.Place(k); return r.Key, err }, "word", "world", "place"},
		"Caution":    {func(k string) (string, error) { r, err := b.Caution(k); return r.Key, err }, "organotn", "organotin", "caution"},
		"Source":     {func(k string) (string, error) { r, err := b.Source(k); return r.Key, err }, "cie-16", "cie-15", "source"},
		"AreaMethod": {func(k string) (string, error) { r, err := b.AreaMethod(k); return r.Key, err }, "girhts", "girths", "area_method"},
		"Piece":      {func(k string) (string, error) { r, err := b.Piece(k); return r.Key, err }, "keeel", "keel", "piece"},
		"Supply":     {func(k string) (string, error) { r, err := b.Supply(k); return r.Key, err }, "waste-ba", "waste-bag", "supply"},
		"Season":     {func(k string) (string, error) { r, err := b.Season(k); return r.Key, err }, "haul-ou", "haul-out", "season"},
		"Sign":       {func(k string) (string, error) { r, err := b.Sign(k); return r.Key, err }, "log-silicon", "log-silicone", "sign"},
		"Threshold":  {func(k string) (string, error) { r, err := b.Threshold(k); return r.Key, err }, "flakin", "flaking", "threshold"},
		"Acceptance": {func(k string) (string, error) { r, err := b.Acceptance(k); return r.Key, err }, "sspc-pa2-level5", "sspc-pa2-level-5", "acceptance"},
		"Instrument": {func(k string) (string, error) { r, err := b.Instrument(k); return r.Key, err }, "pin-mete", "pin-meter", "instrument"},
		"Grade":      {func(k string) (string, error) { r, err := b.Grade(k); return r.Key, err }, "astm-d3359-0", "astm-d3359-0a", "grade"},
		"Electrode":  {func(k string) (string, error) { r, err := b.Electrode(k); return r.Key, err }, "zinc-seawate", "zinc-seawater", "electrode"},
		"Value":      {func(k string) (string, error) { r, err := b.Value(k); return r.Key, err }, "alduchov-eskridge-", "alduchov-eskridge-c", "value"},
		"Rule":       {func(k string) (string, error) { r, err := b.Rule(finding.ID(k)); return string(r.ID), err }, "metal-nevr", "metal-never", "rule"},
	} {
		if got, err := c.get(c.near); err != nil || got != c.near {
			t.Errorf("%s(%q) is %q, %v", name, c.near, got, err)
		}
		got, err := c.get(c.slip)
		fs := faultsOf(t, err)
		if got != "" || len(fs) != 1 || !errors.Is(err, finding.ErrUnknown) || fs[0].Key != c.what || !strings.Contains(fs[0].Want, c.near) || !strings.Contains(fs[0].Got, c.slip) {
			t.Errorf("%s(%q) is %q, %v; want near name %q", name, c.slip, got, err, c.near)
		}
		if got, err := c.get(""); err == nil || got != "" {
			t.Errorf("%s of nothing is %q, %v", name, got, err)
		}
	}
}

// The lists hold every row once, in the same order at each call.
func TestLists(t *testing.T) {
	b := book(t)
	raw := rows(t)
	count := func(table string, keys []string) {
		t.Helper()
		if len(keys) != len(raw[table]) || len(keys) == 0 {
			t.Errorf("%d rows of %s, the files hold %d", len(keys), table, len(raw[table]))
		}
		seen := map[string]bool{}
		for _, k := range keys {
			if seen[k] {
				t.Errorf("%s[%s] is listed twice", table, k)
			}
			seen[k] = true
		}
	}
	var keys [18][]string
	for c := range b.Coatings() {
		keys[0] = append(keys[0], c.Key)
	}
	for r := range b.ActiveRows() {
		keys[1] = append(keys[1], r.Key)
	}
	for r := range b.Materials() {
		keys[2] = append(keys[2], r.Key)
	}
	for r := range b.Conditions() {
		keys[3] = append(keys[3], r.Key)
	}
	for r := range b.Overcoats() {
		keys[4] = append(keys[4], r.Key)
	}
	for r := range b.Zones() {
		keys[5] = append(keys[5], r.Key)
	}
	for r := range b.HullForms() {
		keys[6] = append(keys[6], r.Key)
	}
	for r := range b.Losses() {
		keys[7] = append(keys[7], r.Key)
	}
	for r := range b.Cans() {
		keys[8] = append(keys[8], r.Key)
	}
	for r := range b.Colours() {
		keys[9] = append(keys[9], r.Key)
	}
	for r := range b.Steps() {
		keys[10] = append(keys[10], r.Key)
	}
	for r := range b.Factors() {
		keys[11] = append(keys[11], r.Key)
	}
	for r := range b.Criteria() {
		keys[12] = append(keys[12], r.Key)
	}
	for r := range b.Places() {
		keys[13] = append(keys[13], r.Key)
	}
	for r := range b.Laws() {
		keys[14] = append(keys[14], r.Key)
	}
	for r := range b.Cautions() {
		keys[15] = append(keys[15], r.Key)
	}
	for r := range b.Sources() {
		keys[16] = append(keys[16], r.Key)
	}
	for r := range b.Rules() {
		keys[17] = append(keys[17], string(r.ID))
	}
	for i, table := range []string{
		"coating", "active", "material", "condition", "overcoat", "zone", "hull_form", "loss", "can", "colour", "step", "factor", "criterion",
		"place", "law", "caution", "source", "rule",
	} {
		count(table, keys[i])
	}
}

func TestFingerprint(t *testing.T) {
	load := func(text string) string {
		t.Helper()
		b, err := tables.Load(folder(map[string]string{"more.toml": text}))
		if err != nil {
			t.Fatal(err)
		}
		return b.Fingerprint()
	}
	zone := fields{"key": `"a"`, "basis": `"derived"`, "wear": `[1, 2, 3]`, "mechanisms": `["hard", "soft"]`}
	law := good()["law"]
	law["key"], law["from"] = `"another"`, `2026-01-01`
	first := load(row("zone", zone) + row("law", law))
	if first != load(row("zone", zone)+row("law", law)) || len(first) != 12 || strings.Trim(first, "0123456789abcdef") != "" {
		t.Errorf("fingerprint %q: want twelve hexadecimal digits, the same each time", first)
	}
	if first != load("# a comment\n\n"+row("law", law)+row("zone", zone)) {
		t.Error("a comment or the order of the tables in a file changes the fingerprint")
	}
	seen := map[string]string{first: "as it was"}
	for _, c := range []struct{ field, value string }{
		{"key", `"b"`},
		{"name", `"a"`}, // the name that it would have anyhow, but stated
		{"basis", `"assumption"`},
		{"doubt", `"some"`},
		{"wear", `[1, 2, 4]`},
		{"wear", `[1.0, 2, 3]`},
		{"wear", `3`},
		{"mechanisms", `["soft", "hard"]`},
		{"mechanisms", `["hard"]`},
		{"mechanisms", `["hard", "hard", "soft"]`},
		{"part", `true`},
		{"extra_coats", `0`},
		{"safety", `true`},
	} {
		z := fields{}
		for k, v := range zone {
			z[k] = v
		}
		z[c.field] = c.value
		got := load(row("zone", z) + row("law", law))
		if was, ok := seen[got]; ok {
			t.Errorf("%s = %s has the fingerprint of %s", c.field, c.value, was)
		}
		seen[got] = c.field + " = " + c.value
	}
	law["from"] = `2026-01-02`
	if was, ok := seen[load(row("zone", zone)+row("law", law))]; ok {
		t.Errorf("another date has the fingerprint of %s", was)
	}
}

// A replaced cell changes the fingerprint even where only what it rests on is new: reports print both.
func TestFingerprintKnowsOwnTables(t *testing.T) {
	const same = "[[factor]]\nkey = \"speed-reference\"\nbasis = \"own table\"\nvalue = 6\nsource = "
	a, b := with(t, same+"\"one\"\n").Fingerprint(), with(t, same+"\"two\"\n").Fingerprint()
	if c := book(t).Fingerprint(); a == b || a == c || b == c {
		t.Errorf("fingerprints %s, %s and %s of three books, want three", a, b, c)
	}
}

// What a book hands out can be changed by whoever got it, and the book stays as it is.
func TestNothingLeaks(t *testing.T) {
	for name, list := range map[string]func() []string{"Waters": tables.Waters, "GradeWords": tables.GradeWords, "BerthRoles": tables.BerthRoles} {
		before := slices.Clone(list())
		list()[0] = "changed"
		_ = append(list()[:1], "changed")
		if !slices.Equal(list(), before) {
			t.Errorf("%s is %q after a change of what it returned", name, list())
		}
	}
	b := book(t)
	c, err := b.Coating("hard-cuprous")
	if err != nil {
		t.Fatal(err)
	}
	digits := b.Fingerprint()
	c.Key, c.Film.Low, c.Coats = "changed", c.Film.High, 9
	for row := range b.Coatings() {
		row.Coats = 9
		row.Key = "changed"
	}
	again, err := b.Coating("hard-cuprous")
	if err != nil || again.Coats == 9 || again.Key != "hard-cuprous" || again.Film.Low.Equal(c.Film.High) || b.Fingerprint() != digits {
		t.Errorf("the book changed with the row that it gave: %s, %d coats", again.Key, again.Coats)
	}
}

// The class of a coating is the first of its actives' classes, whatever their order in the row.
func TestClassFollowsFromTheActives(t *testing.T) {
	text := row("active", fields{"key": `"organic"`, "basis": `"from memory"`, "class": `"copper-free"`, "copper_share": `0`}) +
		row("active", fields{"key": `"metal"`, "basis": `"from memory"`, "class": `"metallic copper"`, "copper_share": `1`}) +
		row("active", fields{"key": `"thio"`, "basis": `"from memory"`, "class": `"copper thiocyanate"`, "copper_share": `0.5`}) +
		row("active", fields{"key": `"omadine"`, "basis": `"from memory"`, "class": `"other copper"`, "copper_share": `0.2`})
	for _, c := range []struct {
		actives []string
		want    tables.Biocide
		copper  bool
	}{
		{nil, tables.NoBiocide, false},
		{[]string{"organic"}, tables.CopperFree, false},
		{[]string{"organic", "omadine"}, tables.OtherCopper, true},
		{[]string{"thio", "omadine", "organic"}, tables.CopperThiocyanate, true},
		{[]string{"thio", "metal"}, tables.MetallicCopper, true},
		{[]string{"organic", "metal", "oxide"}, tables.CuprousOxide, true},
	} {
		f := good()["coating"]
		f["key"] = `"mixed"`
		var rows strings.Builder
		rows.WriteString(text + row("coating", f))
		for _, a := range c.actives {
			rows.WriteString("[[coating.active]]\nkey = \"" + a + "\"\ncontent = \"5 %\"\n")
		}
		more := rows.String()
		b, err := tables.Load(folder(map[string]string{"more.toml": more}))
		if err != nil {
			t.Fatal(err)
		}
		got, err := b.Coating("mixed")
		if err != nil || got.Biocide != c.want || got.Copper() != c.copper {
			t.Errorf("with %q the class is %q, copper %t, %v; want %q, %t", c.actives, got.Biocide, got.Copper(), err, c.want, c.copper)
		}
	}
}

// A material's word for each class, and the harshest for what nobody knows.
func TestMaterialTakes(t *testing.T) {
	m := tables.Material{Cuprous: "1", Metallic: "2", Other: "3", Free: "4"}
	for class, want := range map[tables.Biocide]tables.Policy{
		tables.CuprousOxide: "1", tables.MetallicCopper: "2", tables.CopperThiocyanate: "3", tables.OtherCopper: "3", tables.CopperFree: "4",
		tables.NoBiocide: "4", tables.UnknownBiocide: "1", tables.Organotin: "1", "": "1",
	} {
		if got := m.Takes(class); got != want {
			t.Errorf("of %q it takes %q, want %q", class, got, want)
		}
	}
}

func TestGrades(t *testing.T) {
	for i, w := range []string{"none", "light", "medium", "heavy"} {
		if g, err := tables.ParseGrade(w); err != nil || g != tables.Grade(i+1) || g.String() != w {
			t.Errorf("%q reads as %d and writes %q: %v", w, g, g, err)
		}
	}
	for _, w := range []string{"", "Heavy", "very heavy"} {
		if g, err := tables.ParseGrade(w); !errors.Is(err, finding.ErrValue) || !strings.Contains(err.Error(), "heavy") || g != 0 || g.String() != "not given" {
			t.Errorf("%q reads as %d, %s: %v", w, g, g, err)
		}
	}
	for _, l := range []tables.Level{0, tables.Class + 1} {
		if l.String() != "invalid level" {
			t.Errorf("level %d is %s", l, l)
		}
	}
}

// A grade's severity counts from the mildest of its own scale, whatever stands between them in the files.
func TestSeverity(t *testing.T) {
	b := book(t)
	for key, want := range map[string]int{
		"nstm-081-0": 1, "nstm-081-10": 2, "nstm-081-100": 11, "iso-4628-3-ri-0": 1, "iso-4628-3-ri-5": 6, "astm-d3359-5a": 1, "astm-d3359-0a": 6,
		"iso-4628-1-quantity-5": 6, "iso-4628-1-size-0": 1, "none such": 0,
	} {
		if got := b.Severity(key); got != want {
			t.Errorf("%s stands at %d, want %d", key, got, want)
		}
	}
}

func TestUrgencies(t *testing.T) {
	for u, want := range map[tables.Urgency]string{
		0: "not judged", tables.NoWork: "no work", tables.Monitor: "monitor", tables.ThisHaulOut: "this haul-out", tables.BeforeLaunch: "before launch", 5: "not judged",
	} {
		if u.String() != want {
			t.Errorf("urgency %d is %q, want %q", u, u, want)
		}
	}
}

// What can sink or hurt yields to an own table only with a reason.
func TestObservationsBeforeLaunchAreSafety(t *testing.T) {
	for _, r := range rows(t)["observation"] {
		safety, _ := r["safety"].(bool)
		if first := r["urgency"] == "before launch"; first != safety {
			t.Errorf("%v: before launch %t, safety %t", r["key"], first, safety)
		}
	}
}
