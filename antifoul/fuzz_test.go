package antifoul_test

import (
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
)

// newSections are seeds after the base boat: the sections of tins and of what was put on.
var newSections = []string{
	"[[tin]]\ncoating = \"epoxy-barrier\"\nratio = \"3:1\"\ndensity_base = \"1.4 kg/L\"\ndensity_hardener = \"1 kg/L\"\npot_life = \"2 h\"\npot_life_at = \"20 degC\"\n" +
		"[[tin.kit]]\nbase = \"750 mL\"\nhardener = \"250 mL\"\nprice = \"44.00 EUR\"\nbatch = \"7\"\n[[tin.store]]\nsize = \"1 US gal\"\ncount = 1000\ncolour = \"red-oxide\"\n",
	"[[comb]]\npart = \"rudder\"\nzone = \"rudder\"\ncoating = \"epoxy-primer\"\nreadings = \"5 mil\"\n[[used]]\npart = \"rudder\"\ncoating = \"epoxy-primer\"\ncoats = 50\nlitres = \"1 imp gal\"\n",
	"[[gauge]]\npart = \"rudder\"\ninstrument = \"ultrasonic\"\nstandard = \"sspc-pa2-level-3\"\nnominal = \"10 mil\"\nmost = \"20 mil\"\nprofile = \"iso-19840-coarse\"\nfile = \"steel-gauge.csv\"\n",
}

// Whatever stands in a boat file, reading it answers with a boat or with faults, and a boat that was read can be planned.
func FuzzReadBoat(f *testing.F) {
	f.Add(base)
	f.Add(onePart)
	f.Add(base + putOn)
	sheet, err := os.ReadFile("../examples/boats/steel-gauge.csv")
	if err != nil {
		f.Fatal(err)
	}
	weatherSheet, err := os.ReadFile("../examples/boats/late-weather.csv")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range []string{"sloop", "steel", "steel-measured", "planing", "taped", "trailer", "late"} {
		text, err := os.ReadFile("../examples/boats/" + name + ".toml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Add(strings.Replace(base, dimensions, "girths = \"girths.csv\"\noffsets = \"offsets.csv\"\nhulls = 3\nboot_top = \"2 in\"\nmidship = \"70 %\"\n", 1))
	f.Add(strings.Replace(base, "[[part]]", "[[hull.piece]]\nwhat = \"bulb\"\nlength = \"1 m\"\nwidth = \"1 ft\"\nheight = \"20 in\"\ncount = 100\n[[part]]", 1))
	for _, text := range newSections {
		f.Add(base + text)
	}
	f.Add(strings.Replace(base, "[paint]", "days = [\"Sat\", \"Mon\"]\nfrom = \"00:00\"\nuntil = \"24:00\"\nfree = [2027-04-07]\ntaken = [2027-04-12]\nset_up = \"30 min\"\nreserve = \"1 d\"\nshift = 2027-05-10\n"+
		"slings = true\nroof = true\nforecast = \"late-weather.csv\"\n[[work.other]]\nname = \"log\"\nhours = \"300 min\"\non = 2027-04-17\nafter_paint = true\n[paint]", 1))
	book := tables.Default()
	f.Fuzz(func(t *testing.T, text string) {
		files := sheets(text)
		files["steel-gauge.csv"] = &fstest.MapFile{Data: sheet}
		files["late-weather.csv"] = &fstest.MapFile{Data: weatherSheet}
		files["girths.csv"] = &fstest.MapFile{Data: []byte(girths)}
		files["offsets.csv"] = &fstest.MapFile{Data: []byte(offsets)}
		boat, err := antifoul.ReadBoat(files, "boat.toml")
		if err != nil {
			return
		}
		if _, err := antifoul.Plan(book, boat); err != nil {
			t.Errorf("read without a fault, and then: %v", err)
		}
	})
}
