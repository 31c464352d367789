package antifoul_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

const dimensions = "kind = \"fin-keel-yacht\"\nlength = \"9 m\"\nbeam = \"3 m\"\ndraft = \"1.6 m\"\n"

// faultsOf reads the boat file and the files beside it and returns "file: key" of each fault.
func faultsOf(t *testing.T, files fstest.MapFS, name string) string {
	t.Helper()
	_, err := antifoul.ReadBoat(files, name)
	got, ok := errors.AsType[finding.Faults](err)
	if err != nil && !ok {
		t.Fatal(err)
	}
	var out []string
	for _, f := range got {
		out = append(out, f.File+": "+f.Key)
	}
	return strings.Join(out, "; ")
}

// A sheet lies in the folder of its boat file or below it, and its faults name it as the file system does.
func TestWhereSheetsLie(t *testing.T) {
	boat := func(name string) []byte {
		return []byte(strings.Replace(base, "mass =", fmt.Sprintf("girths = %q\nmass =", name), 1))
	}
	for name, want := range map[string]string{
		"girths.csv": "", "./girths.csv": "", "sub/girths.csv": "", "sub/../girths.csv": "",
		"/girths.csv": "her/boat.toml: hull.girths", "../girths.csv": "her/boat.toml: hull.girths", "../her/girths.csv": "her/boat.toml: hull.girths",
		"..": "her/boat.toml: hull.girths", ".": "her/boat.toml: hull.girths", "sub": "her/sub: ", "none.csv": "her/none.csv: ",
	} {
		sheet := &fstest.MapFile{Data: []byte(girths)}
		files := fstest.MapFS{"her/boat.toml": {Data: boat(name)}, "girths.csv": sheet, "her/girths.csv": sheet, "her/sub/girths.csv": sheet}
		if got := faultsOf(t, files, "her/boat.toml"); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
	files := fstest.MapFS{"her/boat.toml": {Data: []byte(base + putOn)}, "her/gauge.csv": {Data: []byte("zone,reading [um]\nkel,350\n")}}
	if got := faultsOf(t, files, "her/boat.toml"); got != "her/gauge.csv: line 2.zone" {
		t.Errorf("a zone that is not there: %q", got)
	}
}

// A boat that was taped, or whose lines are known, needs no dimensions, and a slip in the sheet of them does not make these missing.
func TestUnreadSheetAsksForNothingElse(t *testing.T) {
	for _, c := range []struct{ key, sheet, old, new, want string }{
		{"girths", girths, "2.4", "wide", "girths.csv: line 3.girth"},
		{"offsets", offsets, "1.4", "wide", "offsets.csv: line 5.half_breadth"},
	} {
		name := c.key + ".csv"
		text := strings.Replace(base, dimensions, fmt.Sprintf("%s = %q\n", c.key, name), 1)
		for sheet, want := range map[string]string{c.sheet: "", strings.Replace(c.sheet, c.old, c.new, 1): c.want} {
			if got := faultsOf(t, fstest.MapFS{"boat.toml": {Data: []byte(text)}, name: {Data: []byte(sheet)}}, "boat.toml"); got != want {
				t.Errorf("%s: %q, want %q", c.key, got, want)
			}
		}
		if got := faultsOf(t, fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml"); got != name+": " {
			t.Errorf("no sheet of %s: %q", c.key, got)
		}
	}
}

// Each of these is one fault, at the place that the person wrote.
func TestFaultsOfNewSectionsOnce(t *testing.T) {
	tin := "[[tin]]\ncoating = \"epoxy-barrier\"\n"
	for name, c := range map[string]struct{ old, new, add, want string }{
		"an area without a unit":               {"mass =", "measured = { flat = 12 }\nmass =", "", "boat.toml: hull.measured.flat"},
		"a part of a ratio":                    {"", "", tin + "ratio = \"x:1\"\n[[tin.kit]]\nbase = \"3 L\"\nhardener = \"1 L\"\n", "boat.toml: tin[1].ratio.base"},
		"a leg that nobody has":                {"[[part]]\nname = \"hull\"", "[[hull.piece]]\nwhat = \"drive-leg\"\nlength = \"1 m\"\nheight = \"1 m\"\n[[part]]\nname = \"hull\"", "", "boat.toml: hull.piece[1].what"},
		"too many tins":                        {"", "", strings.Repeat(tin, 101), "boat.toml: tin"},
		"as many notes of litres as may stand": {"", "", strings.Repeat("[[used]]\npart = \"hull\"\ncoating = \"epoxy-barrier\"\ncoats = 1\nlitres = \"9 L\"\n", 100), ""},
		"too many notes of litres":             {"", "", strings.Repeat("[[used]]\npart = \"hull\"\n", 101), "boat.toml: used"},
		"teeth by their own number": {
			"", "", "[[comb]]\npart = \"hull\"\ncoating = \"epoxy-barrier\"\nreadings = [5, \"100 um\", \"x\"]\n",
			"boat.toml: comb[1].readings[1]; boat.toml: comb[1].readings[3]",
		},
	} {
		text := strings.Replace(base, c.old, c.new, 1) + c.add
		if got := faultsOf(t, fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml"); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// A need too small to be parted by the millilitre is mixed by the tin's own measure, and the rest of the plan stands.
func TestNeedTooSmallForTheRatio(t *testing.T) {
	job, err := plan(t, base+"[wishes]\ncoating = \"foul-release-silicone\"\n[[tin]]\ncoating = \"epoxy-primer\"\nratio = \"1000000:1\"\n[[tin]]\ncoating = \"epoxy-barrier\"\nratio = \"1000000:1\"\n")
	if err != nil {
		t.Fatal(err)
	}
	told := false
	for _, g := range job.Buy {
		if g.Coating.Key == "epoxy-primer" || g.Coating.Key == "epoxy-barrier" {
			told = true
			if g.Mixed.Base.Given() || !g.Notes.Has(antifoul.RuleMixUnknown) {
				t.Errorf("%s: mixed %s, %v", g.Coating.Key, g.Mixed.Base, g.Notes)
			}
		}
	}
	if !told {
		t.Error("the plan buys no two-pack paint: this shows nothing")
	}
}

// A whole book without ways of finding an area, or without a number of theirs, blames the tables and not the boat file.
func TestBookWithoutAreas(t *testing.T) {
	whole := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS("../tables/data"), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile("../tables/data/" + name)
		whole[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	boat, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(base)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	for file, want := range map[string]string{"areamethods.toml": "area_method", "factors_coverage.toml": "factor[patch-step]", "factors_puton.toml": "factor[comb-thick]"} {
		without := fstest.MapFS{}
		for name, f := range whole {
			if name != file {
				without[name] = f
			}
		}
		b, err := tables.Load(without)
		if err != nil {
			t.Fatal(err)
		}
		_, read := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(base)}}, "boat.toml")
		_, planned := antifoul.Plan(b, boat)
		for _, err := range []error{read, planned} {
			for _, f := range func() finding.Faults { fs, _ := errors.AsType[finding.Faults](err); return fs }() {
				if f.File != "the tables" {
					t.Errorf("without %s: %v", file, f)
				}
			}
		}
		if planned == nil || !strings.Contains(planned.Error(), want) {
			t.Errorf("without %s: %v", file, planned)
		}
	}
}
