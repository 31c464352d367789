package tables_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"
	"testing"
	"testing/fstest"

	"github.com/BurntSushi/toml"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// book reads the tables as they stand in the folder; Default would hide a fault.
func book(t *testing.T) *tables.Book {
	t.Helper()
	b, err := tables.Load(os.DirFS("data"))
	if err != nil {
		t.Fatalf("the embedded tables do not load:\n%v", err)
	}
	return b
}

func TestEmbeddedTablesLoad(t *testing.T) {
	b := book(t)
	if got, want := tables.Default().Fingerprint(), b.Fingerprint(); got != want {
		t.Errorf("Default has the fingerprint %s, the folder %s: stale, or it did not load", got, want)
	}
}

// rows reads the raw rows of all files by table, past the loader.
func rows(t *testing.T) map[string][]map[string]any {
	t.Helper()
	out := map[string][]map[string]any{}
	err := fs.WalkDir(os.DirFS("data"), ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(p) != ".toml" {
			return err
		}
		var file map[string][]map[string]any
		if _, err := toml.DecodeFile(path.Join("data", p), &file); err != nil {
			return fmt.Errorf("%s: %w", p, err)
		}
		for table, list := range file {
			out[table] = append(out[table], list...)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Every cell rests on something that an embedded table may state. With -v the shares are printed; the README quotes them.
func TestNoInventedCells(t *testing.T) {
	b := book(t)
	rowKinds, cellKinds := map[finding.Kind]int{}, map[finding.Kind]int{}
	cells, last := 0, ""
	seen := map[string]int{}
	for c := range b.Cells() {
		at := c.Table + "[" + c.Key + "]"
		if c.Table == "source" {
			continue // a document rests on itself
		}
		if !slices.Contains(finding.Kinds(), c.Basis.Kind) || c.Basis.Kind == finding.Invented || c.Basis.Own || c.New {
			t.Errorf("%s.%s = %s rests on %q, which is for demonstrations and own tables", at, c.Field, c.Value, c.Basis.Kind)
		}
		if c.Basis.Kind == finding.Published {
			if _, err := b.Source(c.Basis.Source); err != nil {
				t.Errorf("%s.%s: %v", at, c.Field, err)
			}
		}
		if at != last {
			rowKinds[c.Basis.Kind]++ // of its first cell
			last = at
			seen[""]++
		}
		seen[c.Table]++
		cellKinds[c.Basis.Kind]++
		cells++
	}
	for table := range rows(t) {
		if table != "source" && seen[table] == 0 {
			t.Errorf("no cell of the table %s is listed", table)
		}
	}
	total := 0
	for _, list := range rows(t) {
		for _, row := range list {
			for field := range row {
				if !slices.Contains([]string{"key", "basis", "source", "where", "read", "doubt", "basis_of", "safety"}, field) {
					total++
				}
			}
		}
	}
	for c := range b.Cells() {
		if c.Table == "source" {
			total--
		}
	}
	if cells != total {
		t.Errorf("%d cells listed, the files hold %d", cells, total)
	}
	for _, k := range finding.Kinds() {
		t.Logf("%-16s %4d of %d rows, %5d of %d cells (%d %%)", k, rowKinds[k], seen[""], cellKinds[k], cells, (100*cellKinds[k]+cells/2)/cells)
	}
}

func TestCellsOfOwnTables(t *testing.T) {
	b := with(t, "[[factor]]\nkey = \"q10\"\nbasis = \"own table\"\nsource = \"log\"\nvalue = [1, 2, 3]\n"+
		"[[can]]\nkey = \"jug\"\nbasis = \"invented\"\nsize = \"3 L\"\nprice = \"1.00 EUR\"\nbasis_of = { price = \"assumption\" }\n")
	var got, own []string
	told := func(c tables.Cell) string {
		return fmt.Sprintf("%s[%s].%s = %s: %s %s %t", c.Table, c.Key, c.Field, c.Value, c.Basis.Kind, c.Basis.Source, c.New)
	}
	for c := range b.Cells() {
		if c.Basis.Own {
			got = append(got, told(c))
		}
	}
	for c := range b.OwnCells() {
		own = append(own, told(c))
	}
	for range tables.Default().OwnCells() {
		t.Error("the module's own tables hold a cell of an own table")
	}
	want := []string{
		"can[jug].price = 1.00 EUR: assumption  true", "can[jug].size = 3 L: invented  true", "factor[q10].value = 1; 2; 3: own table log false",
	}
	if !slices.Equal(got, want) || !slices.Equal(own, want) {
		t.Errorf("own cells %q and %q, want %q", got, own, want)
	}
	for range b.OwnCells() {
		break
	}
	for range b.Cells() {
		break // stopping early must not go on
	}
}

// active is one biocide of a coating, to be compared.
type active struct {
	Key     string
	Content quantity.Range[quantity.Share]
}

// alike reports whether rules cannot tell two coatings apart: every field but key, name, basis and how it is recognised.
func alike(a, b tables.Coating) bool {
	lists := func(c tables.Coating) (out []any) {
		var actives []active
		for x := range c.Actives() {
			actives = append(actives, active{Key: x.Key, Content: x.Content})
		}
		var waters []string
		for _, w := range tables.Waters() {
			if c.Suits(w) {
				waters = append(waters, w)
			}
		}
		return []any{actives, waters, slices.Collect(c.Hazards())}
	}
	return cmp.Equal(lists(a), lists(b)) &&
		cmp.Equal(a, b, cmpopts.IgnoreUnexported(tables.Coating{}), cmpopts.IgnoreFields(tables.Coating{}, "Row", "Recognised"))
}

func TestNoTwoCoatingsAlike(t *testing.T) {
	all := slices.Collect(book(t).Coatings())
	for i, a := range all {
		for _, b := range all[i+1:] {
			if alike(a, b) {
				t.Errorf("%s and %s differ in no field that a rule reads", a.Key, b.Key)
			}
		}
	}
}

// A comparison that finds nothing alike would prove nothing.
func TestAlikeTellsApart(t *testing.T) {
	for c := range book(t).Coatings() {
		twin := c
		twin.Key, twin.Name, twin.Recognised = "twin", "twin", "twin"
		if !alike(c, twin) {
			t.Errorf("%s is not found alike to a copy of itself", c.Key)
		}
		twin.Most++
		if alike(c, twin) {
			t.Errorf("%s is found alike to a copy that takes one more coat", c.Key)
		}
	}
}

func TestEveryKindOfBottomHasAType(t *testing.T) {
	b := book(t)
	mechanisms := map[tables.Mechanism]int{}
	biocides := map[tables.Biocide]int{}
	antifoulings := 0
	for c := range b.Coatings() {
		if !c.Ranked() {
			continue
		}
		mechanisms[c.Mechanism]++
		biocides[c.Biocide]++
		if c.Role == tables.Antifouling {
			antifoulings++
		}
	}
	if antifoulings < 18 {
		t.Errorf("%d antifoulings, want at least 18", antifoulings)
	}
	for _, m := range []tables.Mechanism{
		tables.Hard, tables.Ablative, tables.SelfPolishing, tables.Hybrid, tables.FoulRelease, tables.Inert,
		tables.ThinFilm, tables.CopperLoaded, tables.Soft, tables.Bitumen, tables.NoFilm,
	} {
		if mechanisms[m] == 0 {
			t.Errorf("no ranked type works as %q", m)
		}
	}
	for _, m := range []tables.Mechanism{tables.Vinyl, tables.Unknown} {
		if mechanisms[m] != 0 {
			t.Errorf("a ranked type works as %q, which is for old films", m)
		}
	}
	for _, k := range []tables.Biocide{
		tables.CuprousOxide, tables.MetallicCopper, tables.CopperThiocyanate, tables.OtherCopper, tables.CopperFree, tables.NoBiocide,
	} {
		if biocides[k] == 0 {
			t.Errorf("no ranked type has the biocide class %q", k)
		}
	}
	// The four common mechanisms come in each of the three common classes.
	for _, m := range []tables.Mechanism{tables.Hard, tables.Ablative, tables.SelfPolishing, tables.Hybrid} {
		for _, k := range []tables.Biocide{tables.CuprousOxide, tables.CopperThiocyanate, tables.CopperFree} {
			if !slices.ContainsFunc(slices.Collect(b.Coatings()), func(c tables.Coating) bool {
				return c.Ranked() && c.Mechanism == m && c.Biocide == k
			}) {
				t.Errorf("no ranked type is %s with %s", m, k)
			}
		}
	}
}

// By weight of the wet paint, as cuprous oxide or as the metal, the share of copper runs from about 17 to 65 %.
// Basis: common practice, no source.
func TestCopperContentRange(t *testing.T) {
	main := map[tables.Biocide]string{tables.CuprousOxide: "cuprous-oxide", tables.MetallicCopper: "copper-metal"}
	low, high := quantity.Percent.N(17), quantity.Percent.N(65)
	var atLow, atHigh bool
	for c := range book(t).Coatings() {
		key, ok := main[c.Biocide]
		if !ok || !c.Ranked() {
			continue
		}
		found := false
		for a := range c.Actives() {
			if a.Key != key {
				continue
			}
			found = true
			if a.Content.Low.Cmp(low) < 0 || a.Content.High.Cmp(high) > 0 {
				t.Errorf("%s holds %s to %s of %s, want within %s to %s", c.Key, a.Content.Low, a.Content.High, key, low, high)
			}
			atLow = atLow || a.Content.Low.Equal(low)
			atHigh = atHigh || a.Content.High.Equal(high)
		}
		if !found {
			t.Errorf("%s is of the class %s and holds no %s", c.Key, c.Biocide, key)
		}
	}
	if !atLow || !atHigh {
		t.Errorf("the types reach the low end %s: %t, the high end %s: %t; want both", low, atLow, high, atHigh)
	}
}

// By weight all actives of a paint together leave room for what holds them.
func TestActivesFitIntoTheTin(t *testing.T) {
	most := quantity.Percent.N(75)
	for c := range book(t).Coatings() {
		sum := quantity.Percent.N(0)
		n := 0
		for a := range c.Actives() {
			sum = sum.Add(a.Content.High)
			n++
		}
		if sum.Cmp(most) > 0 {
			t.Errorf("%s: its actives come to %s by weight, more than %s", c.Key, sum, most)
		}
		noBiocide := c.Biocide == tables.NoBiocide
		if c.Role != tables.OldFilm && noBiocide != (n == 0) {
			t.Errorf("%s has %d actives and the class %s", c.Key, n, c.Biocide)
		}
	}
}

func TestWindowsOpenBeforeTheyClose(t *testing.T) {
	opens, closes := 0, 0
	for c := range book(t).Coatings() {
		if c.OvercoatMin.Given() {
			opens++
		}
		if c.OvercoatMax.Given() {
			closes++
			if c.OvercoatMax.Cmp(c.OvercoatMin) <= 0 {
				t.Errorf("%s: its window opens after %s and closes after %s", c.Key, c.OvercoatMin, c.OvercoatMax)
			}
		}
		twoPack := c.Packs == 2 && c.Role != tables.OldFilm
		if twoPack && !c.OvercoatMax.Given() {
			t.Errorf("%s is two-pack and its window never closes", c.Key)
		}
		if twoPack != slices.Contains(slices.Collect(c.Hazards()), "two-pack") {
			t.Errorf("%s: %d packs do not go with its hazards", c.Key, c.Packs)
		}
		if c.AirNew.Given() && c.AirNew.Cmp(c.LaunchMin) <= 0 {
			t.Errorf("%s must dry %s and may stand no longer than %s", c.Key, c.LaunchMin, c.AirNew)
		}
		if c.AirUsed.Given() && c.AirScuff.Given() && c.AirUsed.Cmp(c.AirScuff) <= 0 {
			t.Errorf("%s is recoated after %s and scuffed after %s", c.Key, c.AirUsed, c.AirScuff)
		}
	}
	if opens < 30 || closes < 8 {
		t.Errorf("%d windows open and %d close, want at least 30 and 8", opens, closes)
	}
}

func TestHardFilmsHaveClocksAndWearingFilmsHaveNone(t *testing.T) {
	for c := range book(t).Coatings() {
		if !c.Ranked() {
			continue
		}
		switch c.Mechanism {
		case tables.Hard:
			if !c.AirNew.Given() || !c.AirScuff.Given() || !c.AirUsed.Given() {
				t.Errorf("%s is hard and lacks an air clock", c.Key)
			}
		case tables.Ablative, tables.SelfPolishing:
			if c.AirScuff.Given() || c.AirUsed.Given() {
				t.Errorf("%s wears away and has a clock for a used film", c.Key)
			}
			if c.AirNew.Cmp(quantity.Day.N(180)) < 0 {
				t.Errorf("%s may stand new for %s, want at least 180 d", c.Key, c.AirNew)
			}
		default:
		}
	}
}

// The wear of a film is a working value: it says so, is lower at rest than in use, and lower for a hybrid than for the others.
func TestWearIsAnAssumption(t *testing.T) {
	film := func(s string) quantity.Film {
		f, err := quantity.Parse[quantity.Film](s)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	within := map[tables.Mechanism][4]quantity.Film{ // at rest from, to; in use from, to
		tables.Ablative:      {film("0.5 um"), film("3 um"), film("3 um"), film("8 um")},
		tables.SelfPolishing: {film("0.5 um"), film("2 um"), film("2 um"), film("6 um")},
		tables.Hybrid:        {film("0.1 um"), film("1 um"), film("0.5 um"), film("4 um")},
	}
	for c := range book(t).Coatings() {
		if !c.Ranked() {
			continue
		}
		w, ok := within[c.Mechanism]
		if ok != c.Wears() {
			t.Errorf("%s: wears %t, and its mechanism says %t", c.Key, c.Wears(), ok)
		}
		if c.Wears() == c.Life.Typical.Given() {
			t.Errorf("%s has a life of %s and wears %t: one of the two limits it", c.Key, c.Life.Typical, c.Wears())
		}
		if !ok {
			continue
		}
		if c.WearRest.Low.Cmp(w[0]) < 0 || c.WearRest.High.Cmp(w[1]) > 0 || c.WearUse.Low.Cmp(w[2]) < 0 || c.WearUse.High.Cmp(w[3]) > 0 {
			t.Errorf("%s wears %v at rest and %v in use, outside of %v", c.Key, c.WearRest, c.WearUse, w)
		}
		if c.WearRest.Typical.Cmp(c.WearUse.Typical) >= 0 {
			t.Errorf("%s wears %s at rest and %s in use", c.Key, c.WearRest.Typical, c.WearUse.Typical)
		}
		for _, field := range []string{"wear_rest", "wear_use"} {
			if k := c.Basis(field).Kind; k != finding.Assumption {
				t.Errorf("%s: %s rests on %q, want %q", c.Key, field, k, finding.Assumption)
			}
		}
	}
}

func TestBrightColoursNeedPaintWithoutCuprousOxide(t *testing.T) {
	for c := range book(t).Coatings() {
		if !c.Ranked() || c.Role != tables.Antifouling {
			continue
		}
		dark := c.Biocide == tables.CuprousOxide || c.Biocide == tables.MetallicCopper
		if c.Bright == dark {
			t.Errorf("%s with %s: bright %t", c.Key, c.Biocide, c.Bright)
		}
	}
}

// Code reads these rows by their keys.
func TestRowsThatCodeReads(t *testing.T) {
	b := book(t)
	for _, k := range []string{
		"q10", "temperature-reference", "wear-brackish", "wear-fresh", "speed-exponent", "speed-reference", "use-hours-full",
		"lightness-step", "lightness-step-clear",
	} {
		f, err := b.Factor(k)
		if err != nil {
			t.Errorf("factor %s: %v", k, err)
			continue
		}
		if f.Unit == "" || f.Value.Low <= 0 {
			t.Errorf("factor %s: %v %q, want numbers above zero and what they count", k, f.Value, f.Unit)
		}
	}
	for _, k := range []string{"none", "bare", "unknown-old", "silicone-tie-coat"} {
		if _, err := b.Coating(k); err != nil {
			t.Errorf("coating %s: %v", k, err)
		}
	}
}

// Old films that can harm are known by their hazards, and an own table changes them only with an override and a reason.
func TestOldFilmsThatCanHarm(t *testing.T) {
	b := book(t)
	for key, hazard := range map[string]string{
		"organotin-old": "organotin", "unknown-old": "unknown-old-film", "red-lead-old": "lead", "chromate-primer-old": "chromate",
	} {
		c, err := b.Coating(key)
		if err != nil {
			t.Error(err)
			continue
		}
		if !slices.Contains(slices.Collect(c.Hazards()), hazard) {
			t.Errorf("%s does not call for the caution %q", key, hazard)
		}
		own := fmt.Sprintf("[[coating]]\nkey = %q\nbasis = \"own table\"\nsource = \"laboratory\"\nhazards = []\n", key)
		if _, err := b.With(fstest.MapFS{"own.toml": {Data: []byte(own)}}); !errors.Is(err, finding.ErrSafety) {
			t.Errorf("%s: an own row without a reason gives %v, want %v", key, err, finding.ErrSafety)
		}
	}
	for c := range b.Coatings() {
		if c.Role == tables.OldFilm && c.Biocide == tables.UnknownBiocide && !slices.Contains(slices.Collect(c.Hazards()), "unknown-old-film") {
			t.Errorf("%s: nobody knows its biocide, and it does not say so", c.Key)
		}
	}
}
