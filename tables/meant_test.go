package tables_test

import (
	"slices"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// What names one water, class or material is meant for that alone; its neighbour that names none, for all.
func TestWhatARowIsMeantFor(t *testing.T) {
	anode := func(key, more string) string {
		return "[[material]]\nkey = \"" + key + "\"\nbasis = \"from memory\"\npainted = \"never\"\nanode = true\n" + more
	}
	f := good()["coating"]
	f["key"], f["hazards"], f["materials"] = `"for-steel"`, "", `["steel"]`
	none := good()["coating"]
	none["key"], none["hazards"] = `"for-any"`, ""
	b := with(t, anode("one-water", "waters = [\"fresh\"]\nprefers = [\"none\"]\n")+anode("any-water", "")+row("coating", f)+row("coating", none)+
		"[[supply]]\nkey = \"tray\"\nbasis = \"derived\"\nunit = \"piece\"\nper = \"coat\"\nrate = 1\n")
	one, err := b.Material("one-water")
	if err != nil || !one.Suits("fresh") || one.Suits("salt") || !one.Suits("") || !one.Choosy() || !one.Prefers(tables.NoBiocide) || one.Prefers(tables.CopperFree) {
		t.Errorf("named fresh and no biocide: fresh %t, salt %t, a water that nobody gave %t; choosy %t; %v", one.Suits("fresh"), one.Suits("salt"), one.Suits(""), one.Choosy(), err)
	}
	all, err := b.Material("any-water")
	if err != nil || !all.Suits("fresh") || !all.Suits("salt") || all.Choosy() || !all.Prefers(tables.CopperFree) {
		t.Errorf("named nothing: fresh %t, salt %t, choosy %t; %v", all.Suits("fresh"), all.Suits("salt"), all.Choosy(), err)
	}
	steel, err := b.Coating("for-steel")
	if err != nil || !steel.MadeFor("steel") || steel.MadeFor("grp") {
		t.Errorf("named steel: steel %t, GRP %t; %v", steel.MadeFor("steel"), steel.MadeFor("grp"), err)
	}
	every, err := b.Coating("for-any")
	if err != nil || !every.MadeFor("steel") || !every.MadeFor("grp") {
		t.Errorf("named nothing: steel %t, GRP %t; %v", every.MadeFor("steel"), every.MadeFor("grp"), err)
	}
	tray, err := b.Supply("tray")
	if err != nil || !tray.Counts(tables.Coating{Packs: 1, Carrier: "water"}) || !tray.Counts(tables.Coating{Packs: 2, Carrier: "solvent"}) {
		t.Errorf("a tray is counted for one-pack %t, for two-pack %t; %v", tray.Counts(tables.Coating{Packs: 1, Carrier: "water"}), tray.Counts(tables.Coating{Packs: 2, Carrier: "solvent"}), err)
	}
}

// Of the rows of drying the first that tells of the coating's packs and carrier answers, and no other.
func TestTheDryingThatFits(t *testing.T) {
	dry := func(key, packs, carriers string) string {
		return row("drying", fields{"key": `"` + key + `"`, "basis": `"derived"`, "packs": packs, "carriers": carriers, "energy": `50`, "from": `"5 degC"`, "to": `"30 degC"`})
	}
	b, err := tables.Load(folder(map[string]string{"dry.toml": dry("two-pack", "2", "") + dry("water", "1", `["water"]`) + dry("one-pack", "1", "") + dry("late", "1", "")}))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		packs         int
		carrier, want string
	}{{1, "water", "water"}, {1, "solvent", "one-pack"}, {2, "water", "two-pack"}, {2, "solvent", "two-pack"}, {0, "none", ""}} {
		if d, ok := b.DryingOf(tables.Coating{Packs: c.packs, Carrier: c.carrier}); ok != (c.want != "") || d.Key != c.want {
			t.Errorf("%d packs in %s: by %q, want %q", c.packs, c.carrier, d.Key, c.want)
		}
	}
}

// A grade, a share or a size is enough to make an observation one that is measured.
func TestOneMeasureIsEnough(t *testing.T) {
	for name, c := range map[string]struct {
		more     fields
		measured bool
	}{
		"a grade":         {fields{"from": `["mild"]`}, true},
		"two grades":      {fields{"from": `["mild", "other"]`}, true},
		"a share":         {fields{"over": `"5 %"`}, true},
		"a share of none": {fields{"over": `"0 %"`}, true},
		"a size":          {fields{"size": `"2 mm"`}, true},
		"a gap":           {fields{"under": `"2 mm"`}, true},
		"nothing":         {nil, false},
	} {
		f := good()["observation"]
		f["key"], f["from"], f["over"], f["size"] = `"x"`, "", "", ""
		for k, v := range c.more {
			f[k] = v
		}
		other := row("grade", fields{"key": `"other"`, "basis": `"from memory"`, "scale": `"another scale"`, "grade": `"1"`, "says": `"little"`})
		b, err := tables.Load(folder(map[string]string{"more.toml": other + row("observation", f)}))
		if err != nil {
			t.Fatal(err)
		}
		if o, err := b.Observation("x"); err != nil || o.Measured() != c.measured {
			t.Errorf("with %s it is measured: %t, %v", name, o.Measured(), err)
		}
	}
}

// A number of boats or of hulls is as the row gives it, and one where it gives none.
func TestOneWhereNobodyCounted(t *testing.T) {
	for given, want := range map[string]int{"": 1, "1": 1, "2": 2} {
		form, seen := good()["hull_form"], good()["past_result"]
		form["key"], form["hulls"], seen["key"], seen["boats"] = `"x"`, given, `"x"`, given
		b, err := tables.Load(folder(map[string]string{"x.toml": row("hull_form", form) + row("past_result", seen)}))
		if err != nil {
			t.Fatal(err)
		}
		if f, err := b.HullForm("x"); err != nil || f.Hulls != want {
			t.Errorf("hulls %q: %d, want %d; %v", given, f.Hulls, want, err)
		}
		i := 0
		for p := range b.PastResults() {
			if i++; p.Key == "x" && p.Boats != want {
				t.Errorf("boats %q: %d, want %d", given, p.Boats, want)
			}
		}
		if i != 2 {
			t.Errorf("%d past results, want two", i)
		}
	}
}

// The lower end of a fouling rating is its first number, or the only one.
func TestTheLowerEndOfARating(t *testing.T) {
	for rating, want := range map[string]int{"40-60": 40, "30": 30, "0": 0, "100": 100} {
		f := good()["roughness"]
		f["key"], f["rating"] = `"x"`, `"`+rating+`"`
		b, err := tables.Load(folder(map[string]string{"x.toml": row("roughness", f)}))
		if err != nil {
			t.Fatal(err)
		}
		rows := slices.Collect(b.Roughnesses())
		if x := rows[len(rows)-1]; x.Rating != rating || x.Least != want {
			t.Errorf("%s begins at %d, want %d", x.Rating, x.Least, want)
		}
	}
}

// Rows of coat over coat call an antifouling or an old film by its mechanism, and an undercoat by its role.
func TestFamilies(t *testing.T) {
	b := book(t)
	for key, want := range map[string]string{"hard-cuprous": "hard", "vinyl-old": "vinyl", "bare": "none", "etch-primer": "primer", "silicone-tie-coat": "tie coat"} {
		if c, err := b.Coating(key); err != nil || c.Family() != want {
			t.Errorf("%s is of the family %q, want %q; %v", key, c.Family(), want, err)
		}
	}
}

// The times of a point of drying are taken from a hundredth of the time at 20 degC to a hundred times it.
func TestTimesOfAPointOnTheirEnds(t *testing.T) {
	for times, taken := range map[string]bool{"0.009": false, "0.01": true, "100": true, "100.5": false} {
		text := "[[drying]]\nkey = \"x\"\nbasis = \"derived\"\npacks = 1\n[[drying.point]]\nat = \"10 degC\"\ntimes = " + times + "\n[[drying.point]]\nat = \"11 degC\"\ntimes = 1\n"
		b, err := book(t).With(ownFile(text))
		if taken != (err == nil) {
			t.Errorf("%s times: %v", times, err)
		}
		if err != nil {
			if fs := faultsOf(t, err); len(fs) != 1 || fs[0].Key != "drying[x].point[1].times" {
				t.Errorf("%s times: %v", times, fs)
			}
			continue
		}
		for d := range b.Dryings() {
			if d.Key != "x" {
				continue
			}
			if points := slices.Collect(d.Points()); len(points) != 2 || !points[0].At.Equal(quantity.Celsius.N(10)) || !points[1].At.Equal(quantity.Celsius.N(11)) {
				t.Errorf("points %v", points)
			}
		}
	}
}
