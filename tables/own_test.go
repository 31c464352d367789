package tables_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

func ownFile(text string) fstest.MapFS { return fstest.MapFS{"own.toml": {Data: []byte(text)}} }

// with puts the text on top of the embedded tables.
func with(t *testing.T, text string) *tables.Book {
	t.Helper()
	b, err := book(t).With(ownFile(text))
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestOwnRowIsNew(t *testing.T) {
	base := book(t)
	b := with(t, `[[can]]
key = "our-can"
basis = "own table"
source = "price list, spring"
size = "3 L"
price = "58.00 EUR"
`)
	cans := slices.Collect(b.Cans())
	last := cans[len(cans)-1]
	if last.Key != "our-can" || last.Size.String() != "3 L" || last.Price.String() != "58.00 EUR" {
		t.Errorf("the last can is %s of %s at %s", last.Key, last.Size, last.Price)
	}
	if got := last.Basis("size"); got.Kind != finding.OwnTable || got.Source != "price list, spring" {
		t.Errorf("its size rests on %v", got)
	}
	if n := len(slices.Collect(base.Cans())); len(cans) != n+1 {
		t.Errorf("%d cans on top of %d", len(cans), n)
	}
}

func TestOwnRowReplacesOnlyWhatItGives(t *testing.T) {
	base := book(t)
	before, err := base.Coating("hard-cuprous")
	if err != nil {
		t.Fatal(err)
	}
	digits := base.Fingerprint()
	b := with(t, `[[coating]]
key = "hard-cuprous"
basis = "own table"
source = "data sheet, edition 7"
where = "page 2"
doubt = "read by phone"
film = ["60 um", "61 um", "62 um"]
solids = ["51 %", "52 %", "53 %"]
basis_of = { solids = "assumption" }
`)
	c, err := b.Coating("hard-cuprous")
	if err != nil {
		t.Fatal(err)
	}
	owned := c.Film.Typical
	if c.Film.Typical.String() != "61 um" || c.Solids.High.String() != "53 %" {
		t.Errorf("film %s, solids %s; want the own values", c.Film.Typical, c.Solids.High)
	}
	want := finding.Basis{Kind: finding.OwnTable, Source: "data sheet, edition 7", Place: "page 2", Doubt: "read by phone", Own: true}
	if got := c.Basis("film"); got != want {
		t.Errorf("film rests on %+v, want %+v", got, want)
	}
	if got := c.Basis("solids"); got.Kind != finding.Assumption || got.Source != "" {
		t.Errorf("solids rest on %+v, want the assumption that the own row states for them", got)
	}
	for _, field := range []string{"at", "life", "active", "overcoat_min"} {
		if got, want := c.Basis(field), before.Basis(field); got != want {
			t.Errorf("%s rests on %+v, want %+v as before", field, got, want)
		}
	}
	// What the own row does not give stays.
	c.Film, c.Solids = before.Film, before.Solids
	if !alike(before, c) || c.Name != before.Name {
		t.Error("a field that the own row does not give has changed")
	}
	// The book below is as it was.
	if base.Fingerprint() != digits {
		t.Error("the base book has another fingerprint after With")
	}
	again, err := base.Coating("hard-cuprous")
	if err != nil || !alike(again, before) || again.Film.Typical.Equal(owned) {
		t.Errorf("the base book's row has changed, %v", err)
	}
	if got := again.Basis("film"); got != before.Basis("film") {
		t.Errorf("the base book's film rests on %+v now", got)
	}
}

func TestOwnRowMustStateItsBasis(t *testing.T) {
	head := "[[factor]]\nkey = \"q10\"\nvalue = 2\n"
	for text, kind := range map[string]error{
		head:                             finding.ErrBasis,
		head + "basis = \"own table\"\n": finding.ErrBasis, // and what it was read in
		head + "basis = \"published\"\n": finding.ErrBasis,
		head + "basis = \"gossip\"\n":    finding.ErrValue,
		head + "basis = \"published\"\nsource = \"no-such-paper\"\n":                                          finding.ErrUnknown,
		head + "basis = \"assumption\"\nbasis_of = { unit = \"assumption\" }\n":                               finding.ErrUnknownKey,
		head + "basis = \"own table\"\nsource = \"our log\"\nvalve = 3\n":                                     finding.ErrUnknownKey,
		"[[factor]]\nkey = \"q10\"\nvalue = \"two\"\nbasis = \"own table\"\nsource = \"our log\"\n":           finding.ErrValue,
		"[[factor]]\nvalue = 2\nbasis = \"own table\"\nsource = \"our log\"\n":                                finding.ErrMissing,
		"[[coating]]\nkey = \"hard-new\"\nbasis = \"own table\"\nsource = \"sheet\"\nfilm = \"50 um\"\n":      finding.ErrMissing,
		"[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"sheet\"\nmost_coats = 1\n":    finding.ErrImpossible,
		"[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"sheet\"\nhazards = [\"x\"]\n": finding.ErrUnknown,
	} {
		got, err := book(t).With(ownFile(text))
		if !errors.Is(err, kind) || got != nil {
			t.Errorf("%s\ngives %v, want %q and no book", text, err, kind)
			continue
		}
		for _, f := range faultsOf(t, err) {
			if f.File != "own.toml" {
				t.Errorf("%s\nthe fault stands in %q", text, f.File)
			}
		}
	}
}

// A second own folder goes on top of the first, and both bases are kept.
func TestOwnOnOwn(t *testing.T) {
	first := with(t, "[[factor]]\nkey = \"q10\"\nbasis = \"own table\"\nsource = \"first\"\nvalue = 3\n")
	second, err := first.With(ownFile("[[factor]]\nkey = \"q10\"\nbasis = \"own table\"\nsource = \"second\"\nunit = \"times\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	f, err := second.Factor("q10")
	if err != nil || f.Value.Low != 3 || f.Unit != "times" {
		t.Errorf("%v %s, %v; want 3 times", f.Value, f.Unit, err)
	}
	if a, b := f.Basis("value").Source, f.Basis("unit").Source; a != "first" || b != "second" {
		t.Errorf("the value rests on %q and the unit on %q", a, b)
	}
	if g, err := first.Factor("q10"); err != nil || g.Unit == "times" {
		t.Errorf("the first book has changed: %s, %v", g.Unit, err)
	}
}

func TestNothingOnTopIsTheSameBook(t *testing.T) {
	b := book(t)
	same, err := b.With(fstest.MapFS{})
	if err != nil || same.Fingerprint() != b.Fingerprint() {
		t.Errorf("with an empty folder: %v", err)
	}
}

func TestSafetyRows(t *testing.T) {
	const head = "[[material]]\nkey = \"aluminium\"\nbasis = \"own table\"\nsource = \"letter\"\ncuprous_oxide = \"fine\"\n"
	base := book(t)
	m, err := base.Material("aluminium")
	if err != nil || m.Cuprous == tables.Allowed {
		t.Fatalf("aluminium takes cuprous oxide: %q, %v; the test needs a row that does not", m.Cuprous, err)
	}
	for _, more := range []string{
		"", "override = true\n", "reason = \"we like it\"\n", "override = false\nreason = \"x\"\n", "override = true\nreason = \"  \"\n",
		"override = true\nreason = \"\"\n", "override = \"true\"\nreason = \"x\"\n", "safety = false\n", "override = true\nreason = 5\n",
	} {
		got, err := base.With(ownFile(head + more))
		if !errors.Is(err, finding.ErrSafety) || got != nil {
			t.Errorf("with %q: %v, want %q", more, err, finding.ErrSafety)
			continue
		}
		at := slices.IndexFunc(faultsOf(t, err), func(f finding.Fault) bool { return f.Kind == finding.ErrSafety })
		if f := faultsOf(t, err)[at]; f.File != "own.toml" || f.Key != "material[aluminium]" || !strings.Contains(f.Want, "reason") {
			t.Errorf("with %q the fault is %v", more, f)
		}
	}
	b := with(t, head+"override = true\nreason = \"trial panel, decided by the owner\"\n")
	m, err = b.Material("aluminium")
	if err != nil || m.Cuprous != tables.Allowed {
		t.Errorf("aluminium takes %q, %v; want the own word", m.Cuprous, err)
	}
	over := slices.Collect(b.Overrides())
	if want := []string{"material[aluminium]: trial panel, decided by the owner"}; !slices.Equal(over, want) {
		t.Errorf("overrides %q, want %q", over, want)
	}
	for range b.Overrides() {
		break // stopping early must not go on
	}
	if n := len(slices.Collect(base.Overrides())); n != 0 {
		t.Errorf("the base book lists %d overrides", n)
	}
	// The row stays a safety row, and the override stays listed under further tables.
	if _, err := b.With(ownFile(head)); !errors.Is(err, finding.ErrSafety) {
		t.Errorf("replaced again without a reason: %v", err)
	}
	later, err := b.With(ownFile("[[factor]]\nkey = \"q10\"\nbasis = \"own table\"\nsource = \"log\"\nvalue = 2\n"))
	if err != nil || !slices.Equal(slices.Collect(later.Overrides()), over) {
		t.Errorf("under further tables: %v", err)
	}
}

// A safety row that two own folders replace, cell by cell, keeps both reasons: both cells stand.
func TestBothReasonsAreKept(t *testing.T) {
	const head = "[[material]]\nkey = \"aluminium\"\nbasis = \"own table\"\nsource = \"letter\"\noverride = true\n"
	b, err := with(t, head+"cuprous_oxide = \"fine\"\nreason = \"first\"\n").With(ownFile(head + "metallic_copper = \"fine\"\nreason = \"second\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	m, err := b.Material("aluminium")
	if err != nil || m.Cuprous != tables.Allowed || m.Metallic != tables.Allowed {
		t.Errorf("aluminium takes %q and %q, %v", m.Cuprous, m.Metallic, err)
	}
	if over, want := slices.Collect(b.Overrides()), []string{"material[aluminium]: first; second"}; !slices.Equal(over, want) {
		t.Errorf("overrides %q, want %q", over, want)
	}
}

// A row that no table guards is replaced without a reason and is not listed.
func TestPlainRowsNeedNoOverride(t *testing.T) {
	b := with(t, "[[factor]]\nkey = \"q10\"\nbasis = \"own table\"\nsource = \"log\"\nvalue = 2\n")
	if n := len(slices.Collect(b.Overrides())); n != 0 {
		t.Errorf("%d overrides listed", n)
	}
}

func TestEveryKindOfRowCanBeOwn(t *testing.T) {
	for table, f := range good() {
		f["key"], f["basis"], f["source"] = `"own-row"`, `"own table"`, `"our log"`
		switch table {
		case "step", "source", "condition", "overcoat", "coating", "material", "law", "past_result", "sign", "threshold", "observation":
			continue // these name other rows; they stand in the other tests
		}
		if _, err := book(t).With(ownFile(row(table, f))); err != nil {
			t.Errorf("%s: %v", table, err)
		}
	}
}
