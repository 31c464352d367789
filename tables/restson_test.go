package tables_test

import (
	"errors"
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Every field that an own table replaced is listed, by name, and whoever has enough may stop.
func TestEveryOwnFieldIsListed(t *testing.T) {
	b := with(t, "[[colour]]\nkey = \"black\"\nbasis = \"own table\"\nsource = \"fan deck\"\nsrgb = \"#101010\"\nname = \"coal\"\n")
	c, err := b.Colour("black")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for field, basis := range c.Own() {
		got = append(got, field+" from "+basis.Source)
	}
	if want := []string{"name from fan deck", "srgb from fan deck"}; !slices.Equal(got, want) {
		t.Errorf("own are %q, want %q", got, want)
	}
	for range c.Own() {
		break
	}
	if before, err := book(t).Colour("black"); err != nil || before.Basis("lightness").Kind == before.Basis("srgb").Kind {
		t.Errorf("the row below has no cell of a basis of its own, so this asks less than it might: %v", err)
	}
}

// The words of a rule rest on the own table that replaced them; those of other rules as before.
func TestARuleRestsOnItsOwnTable(t *testing.T) {
	b := with(t, "[[rule]]\nkey = \"metal-never\"\nbasis = \"own table\"\nsource = \"the yard's words\"\nsays = \"{against}: no.\"\noverride = true\nreason = \"shorter\"\n")
	r, err := b.Rule("metal-never")
	if err != nil || r.Says != "{against}: no." || !r.Basis().Own || r.Basis().Source != "the yard's words" {
		t.Errorf("the rule says %q and rests on %+v, %v", r.Says, r.Basis(), err)
	}
	for r := range b.Rules() {
		if r.ID != "metal-never" && r.Basis().Own {
			t.Errorf("%s rests on an own table", r.ID)
		}
	}
}

// A document rests on itself, and is read, not reckoned; one that an own table adds is its own.
func TestADocumentRestsOnItself(t *testing.T) {
	b := with(t, "[[source]]\nkey = \"x\"\ntitle = \"A letter\"\nkind = \"guidance\"\nbasis = \"own table\"\nsource = \"the yard\"\n")
	n := 0
	for c := range b.Cells() {
		if c.Table != "source" {
			continue
		}
		n++
		if want := (finding.Basis{Kind: finding.Published, Source: c.Key, Own: c.Key == "x"}); c.Basis != want {
			t.Errorf("%s.%s rests on %+v, want %+v", c.Key, c.Field, c.Basis, want)
		}
	}
	if n < 100 {
		t.Errorf("%d cells of documents", n)
	}
}

// Every override is listed, in the order of the tables, and the reason is part of what a book is told apart by.
func TestEveryOverrideIsListed(t *testing.T) {
	own := func(reason string) *tables.Book {
		const head = "basis = \"own table\"\nsource = \"letter\"\noverride = true\n"
		return with(t, "[[material]]\nkey = \"aluminium\"\n"+head+"reason = \""+reason+"\"\ncuprous_oxide = \"ask\"\n"+
			"[[active]]\nkey = \"cuprous-oxide\"\n"+head+"reason = \"a better figure\"\ncopper_share = 0.888\n"+
			"[[material]]\nkey = \"steel\"\n"+head+"reason = \"as the maker says\"\nmetallic_copper = \"ask\"\n")
	}
	b := own("a trial")
	want := []string{"active[cuprous-oxide]: a better figure", "material[aluminium]: a trial", "material[steel]: as the maker says"}
	got := slices.Sorted(b.Overrides())
	if !slices.Equal(got, want) {
		t.Errorf("overrides %q, want %q", got, want)
	}
	if b.Fingerprint() != own("a trial").Fingerprint() || b.Fingerprint() == own("a panel").Fingerprint() {
		t.Error("the reason does not tell one book from another, or something else does")
	}
}

// Rows that are alike to the letter are told apart by the table that they stand in.
func TestFingerprintKnowsTheTable(t *testing.T) {
	digits := map[string]string{}
	for _, table := range []string{"caution", "season"} {
		b, err := tables.Load(fstest.MapFS{"x.toml": {Data: []byte("[[" + table + "]]\nkey = \"x\"\nbasis = \"derived\"\nsays = \"Mind it.\"\n")}})
		if err != nil {
			t.Fatal(err)
		}
		if was, ok := digits[b.Fingerprint()]; ok {
			t.Errorf("a %s has the fingerprint of a %s", table, was)
		}
		digits[b.Fingerprint()] = table
	}
}

// Rows stand in the order of the paths of their files, subfolders among them.
func TestRowsInTheOrderOfTheirFiles(t *testing.T) {
	files := fstest.MapFS{}
	for _, name := range []string{"b/z.toml", "b.toml", "a/y.toml", "a.toml", "a-x.toml"} {
		files[name] = &fstest.MapFile{Data: []byte("[[season]]\nkey = \"" + name + "\"\nbasis = \"derived\"\nsays = \"Look.\"\n")}
	}
	b, err := tables.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for s := range b.Seasons() {
		got = append(got, s.Key)
	}
	if want := []string{"a-x.toml", "a.toml", "a/y.toml", "b.toml", "b/z.toml"}; !slices.Equal(got, want) {
		t.Errorf("rows stand as %q, want %q", got, want)
	}
}

// A key that is there twice is told with whatever else is wrong in its second row; of names that nobody knows each is told once.
func TestFaultsThatHideNoOther(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want []string
	}{
		"a key twice, and a slip": {
			row("zone", fields{"key": `"flat"`, "basis": `"derived"`, "wear": `1`, "waer": `2`}),
			[]string{"zone[flat]", "zone[flat].waer"},
		},
		"two grades that are not there": {
			row("observation", fields{"key": `"x"`, "basis": `"derived"`, "what": `"spots"`, "why": `"They grow."`, "urgency": `"no work"`, "from": `["none such", "nor this"]`}),
			[]string{"observation[x].from", "observation[x].from"},
		},
	} {
		_, err := tables.Load(folder(map[string]string{"next.toml": c.text}))
		var got []string
		for _, f := range faultsOf(t, err) {
			got = append(got, f.Key)
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: faults at %q, want %q", name, got, c.want)
		}
	}
}

// An active's class is guarded as a safety row: whoever moves it with a reason moves the coatings that hold it.
func TestAClassMovedWithAReason(t *testing.T) {
	const text = "[[active]]\nkey = \"copper-thiocyanate\"\nbasis = \"own table\"\nsource = \"letter\"\nclass = \"other copper\"\n"
	if _, err := book(t).With(ownFile(text)); !errors.Is(err, finding.ErrSafety) {
		t.Errorf("without a reason: %v", err)
	}
	b := with(t, text+"override = true\nreason = \"as the port counts it\"\n")
	c, err := b.Coating("hard-thiocyanate")
	if err != nil || c.Biocide != tables.OtherCopper {
		t.Errorf("it is of the class %q, %v", c.Biocide, err)
	}
}
