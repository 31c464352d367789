package entry_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// reading is one method of a row: what it gives for a value that is taken, for none, and what it refuses.
type reading struct {
	read    func(r *entry.Row) string // the value, as text
	none    string                    // what it gives when the key is not given
	taken   map[string]string         // TOML value → value read
	refused map[string]string         // TOML value → the word that the fault tells of it
	want    string                    // what the fault says is accepted
}

func readings() map[string]reading {
	joined := func(s []string) string { return strings.Join(s, "|") }
	number := func(f float64, ok bool) string {
		if !ok && f == 0 {
			return "none"
		}
		return entry.Describe(f)
	}
	three := func(r quantity.Range[float64], ok bool) string {
		if !ok && r == (quantity.Range[float64]{}) {
			return "none"
		}
		return entry.Describe([]any{r.Low, r.Typical, r.High})
	}
	return map[string]reading{
		"Text": {
			read: func(r *entry.Row) string { return r.Text("x") }, none: "",
			taken:   map[string]string{`"Ölfarbe"`: "Ölfarbe", `'a "b"'`: `a "b"`, `" a"`: " a"},
			refused: map[string]string{`""`: `""`, `"  "`: `"  "`, `1`: "1", `true`: "true", `["a"]`: `["a"]`, `2027-04-03`: "2027-04-03", `{a = 1}`: "a section"},
			want:    "text in quotes",
		},
		"Word": {
			read: func(r *entry.Row) string { return r.Word("x", "salt", "fresh") }, none: "",
			taken:   map[string]string{`"salt"`: "salt", `"fresh"`: "fresh"},
			refused: map[string]string{`"Salt"`: `"Salt"`, `"wine"`: `"wine"`},
			want:    "one of salt, fresh",
		},
		"Texts": {
			read: func(r *entry.Row) string { return joined(r.Texts("x")) }, none: "",
			taken:   map[string]string{`["a", "b"]`: "a|b", `"a"`: "a", `[]`: ""},
			refused: map[string]string{`1`: "1", `[1]`: "read 1", `[""]`: `""`, `""`: `""`, `{a = 1}`: "a section"},
			want:    "in quotes",
		},
		"Words": {
			read: func(r *entry.Row) string { return joined(r.Words("x", "salt", "fresh")) }, none: "",
			taken:   map[string]string{`["fresh", "salt"]`: "fresh|salt", `"salt"`: "salt"},
			refused: map[string]string{`["salt", "wine"]`: `x[2]: not accepted: read "wine"`},
			want:    "one of salt, fresh",
		},
		"Int": {
			read: func(r *entry.Row) string {
				n, ok := r.Int("x", 1, 3)
				return number(float64(n), ok)
			}, none: "none",
			taken:   map[string]string{`1`: "1", `3`: "3"},
			refused: map[string]string{`0`: "0", `4`: "4", `2.0`: "2", `"2"`: `"2"`, `-1`: "-1", `true`: "true"},
			want:    "a whole number from 1 to 3",
		},
		"Float": {
			read: func(r *entry.Row) string { return number(r.Float("x", 0.5, 2)) }, none: "none",
			taken:   map[string]string{`0.5`: "0.5", `2`: "2", `2.0`: "2", `1.25`: "1.25"},
			refused: map[string]string{`0.49`: "0.49", `2.01`: "2.01", `3`: "3", `nan`: "NaN", `inf`: "+Inf", `-inf`: "-Inf", `"1"`: `"1"`, `[1]`: "[1]", `false`: "false"},
			want:    "a number from 0.5 to 2",
		},
		"Floats": {
			read: func(r *entry.Row) string { return three(r.Floats("x", 0, 10)) }, none: "none",
			taken: map[string]string{`[0, 1.5, 10]`: "[0, 1.5, 10]", `[2, 2, 2]`: "[2, 2, 2]", `4`: "[4, 4, 4]"},
			refused: map[string]string{
				`[1, 2]`: "[1, 2]", `[1, 2, 3, 4]`: "[1, 2, 3, 4]", `[]`: "[]", `[2, 1, 3]`: "[2, 1, 3]", `[1, 3, 2]`: "[1, 3, 2]", `[-1, 1, 2]`: "[-1, 1, 2]",
				`[1, 2, 11]`: "[1, 2, 11]", `[1, nan, 3]`: "NaN", `[nan, 1, 3]`: "NaN", `[1, 2, nan]`: "NaN", `["1", 2, 3]`: `["1", 2, 3]`, `11`: "11", `"4"`: `"4"`,
			},
			want: "from 0 to 10",
		},
		"YesNo": {
			read: func(r *entry.Row) string { return r.YesNo("x").String() }, none: "not said",
			taken:   map[string]string{`true`: "yes", `false`: "no"},
			refused: map[string]string{`"true"`: `"true"`, `1`: "1", `0`: "0", `[]`: "[]"},
			want:    "true or false",
		},
		"Date": {
			read: func(r *entry.Row) string { return r.Date("x").String() }, none: "not given",
			taken: map[string]string{`2027-04-03`: "2027-04-03", `2028-02-29`: "2028-02-29"},
			refused: map[string]string{
				`"2027-04-03"`: `"2027-04-03"`, `2027-04-03T08:00:00`: "2027-04-03T08:00:00", `2027-04-03T08:00:00Z`: "2027-04-03T08:00:00Z", `08:00:00`: "08:00:00", `20270403`: "20270403",
			},
			want: "without quotes",
		},
		"Amount": {
			read: func(r *entry.Row) string { return entry.Amount[quantity.Film](r, "x").String() }, none: "not given",
			taken:   map[string]string{`"125 um"`: "125 um", `"5.0 mil"`: "5.0 mil", `"0 um"`: "0 um"},
			refused: map[string]string{`125`: "read 125;", `1.5`: "1.5", `"125"`: `"125"`, `"125 m"`: `"125 m"`, `""`: `""`, `["1 um"]`: `["1 um"]`, `true`: "true", `"1,5 um"`: `"1,5 um"`},
			want:    "a number and its unit in quotes, unit one of um, mil",
		},
		"Range": {
			read: func(r *entry.Row) string {
				v := entry.Range[quantity.Film](r, "x")
				return v.Low.String() + "|" + v.Typical.String() + "|" + v.High.String()
			}, none: "not given|not given|not given",
			taken: map[string]string{
				`["1 um", "2 um", "3 um"]`: "1 um|2 um|3 um", `"2 mil"`: "2 mil|2 mil|2 mil", `["25.4 um", "1 mil", "25.4 um"]`: "25.4 um|1 mil|25.4 um",
			},
			refused: map[string]string{
				`["2 um", "1 um", "3 um"]`: `["2 um", "1 um", "3 um"]`, `["1 um", "3 um", "2 um"]`: `["1 um", "3 um", "2 um"]`, `["1 um", "2 um"]`: `["1 um", "2 um"]`, `[]`: "[]",
				`[1, 2, 3]`: "[1, 2, 3]", `["1 um", "2", "3 um"]`: `"2"`, `7`: "7", `["1 mil", "2 um", "3 um"]`: `["1 mil"`,
			},
			want: "unit one of um, mil",
		},
		"Money": {
			read: func(r *entry.Row) string { return entry.Money(r, "x").String() }, none: "not given",
			taken:   map[string]string{`"58.00 EUR"`: "58.00 EUR", `"0 DKK"`: "0 DKK"},
			refused: map[string]string{`58`: "58", `"58"`: `"58"`, `"58 eur"`: `"58 eur"`, `["58 EUR"]`: `["58 EUR"]`, `true`: "true", `""`: `""`},
			want:    "58.00 EUR",
		},
		"MoneyRange": {
			read: func(r *entry.Row) string {
				v := entry.MoneyRange(r, "x")
				return v.Low.String() + "|" + v.Typical.String() + "|" + v.High.String()
			}, none: "not given|not given|not given",
			taken: map[string]string{`"5 EUR"`: "5 EUR|5 EUR|5 EUR", `["0 EUR", "2 EUR", "2 EUR"]`: "0 EUR|2 EUR|2 EUR", `["0 EUR", "1 EUR", "2 EUR"]`: "0 EUR|1 EUR|2 EUR"},
			refused: map[string]string{
				`["2 EUR", "1 EUR", "3 EUR"]`: `["2 EUR", "1 EUR"`, `["1 EUR", "3 EUR", "2 EUR"]`: `"3 EUR", "2 EUR"]`, `["1 EUR", "2 EUR"]`: `["1 EUR", "2 EUR"]`, `[]`: "[]",
				`["1 EUR", "2 DKK", "3 EUR"]`: `"2 DKK"`, `["-1 EUR", "2 EUR", "3 EUR"]`: `"-1 EUR"`, `[1, 2, 3]`: "[1, 2, 3]", `5`: "5", `["1 EUR", "2", "3 EUR"]`: `"2"`,
			},
			want: "EUR",
		},
		"Pair": {
			read: func(r *entry.Row) string {
				low, high, ok := r.Pair("x", 0, 10)
				if !ok && low == 0 && high == 0 {
					return "none"
				}
				return entry.Describe([]any{low, high})
			}, none: "none",
			taken: map[string]string{`[0, 10]`: "[0, 10]", `[1.5, 2]`: "[1.5, 2]"},
			refused: map[string]string{
				`[2, 2]`: "[2, 2]", `[3, 2]`: "[3, 2]", `[-0.1, 2]`: "[-0.1, 2]", `[1, 10.1]`: "[1, 10.1]", `[1]`: "[1]", `[1, 2, 3]`: "[1, 2, 3]", `[]`: "[]", `4`: "4",
				`["1", 2]`: `["1", 2]`, `[nan, 2]`: "NaN", `[1, nan]`: "NaN",
			},
			want: "from 0 to 10",
		},
	}
}

// A price below nought is no slip of the pen but impossible, and the faults of another file stay as they are.
func TestPriceBelowNoughtAndNotes(t *testing.T) {
	row, faults := open(t, `x = "-0.01 EUR"`)
	if got := entry.Money(row, "x"); got.Given() {
		t.Errorf("read as %s", got)
	}
	one(t, *faults, finding.ErrImpossible, "x", "-0.01 EUR", "zero or more")
	row, faults = open(t, `x = 1`)
	other := finding.Fault{Kind: finding.ErrMissing, File: "girths.csv", Key: "line 3.at"}
	row.Note(finding.Faults{other})
	if len(*faults) != 1 || (*faults)[0] != other {
		t.Errorf("noted as %v", *faults)
	}
}

func TestEveryReading(t *testing.T) {
	for name, c := range readings() {
		t.Run(name, func(t *testing.T) {
			row, faults := open(t, `other = 1`)
			if got := c.read(row); got != c.none || len(*faults) != 0 {
				t.Errorf("not given reads as %q, %v; want %q and no fault", got, *faults, c.none)
			}
			for value, want := range c.taken {
				row, faults := open(t, "x = "+value)
				got := c.read(row)
				row.Close()
				if got != want || len(*faults) != 0 {
					t.Errorf("%s reads as %q, %v; want %q", value, got, *faults, want)
				}
			}
			for value, told := range c.refused {
				row, faults := open(t, "x = "+value)
				got := c.read(row)
				row.Close()
				key := "x"
				if len(*faults) > 0 && strings.HasPrefix((*faults)[0].Key, "x[") {
					key = (*faults)[0].Key // a member of a list
				} else if got != c.none {
					t.Errorf("%s is refused and yet reads as %q", value, got)
				}
				one(t, *faults, finding.ErrValue, key, "read ", told, c.want)
			}
		})
	}
}

// A bare number names the units of its own quantity.
func TestBareNumberNamesTheUnits(t *testing.T) {
	row, faults := open(t, "warm = 9.8\nspeed = 6\nash = 5")
	entry.Amount[quantity.Temperature](row, "warm")
	entry.Range[quantity.Speed](row, "speed")
	entry.Amount[quantity.Months](row, "ash")
	if len(*faults) != 3 {
		t.Fatalf("%d faults, want 3:\n%v", len(*faults), *faults)
	}
	for i, units := range []string{"degC, degF", "kn, m/s", "months, years"} {
		if !strings.HasSuffix((*faults)[i].Want, "unit one of "+units) {
			t.Errorf("%q does not name %s", (*faults)[i], units)
		}
	}
}

func TestTables(t *testing.T) {
	row, faults := open(t, `
[hull]
draft = "1.5 m"
[[part]]
key = "keel"
[[part]]
name = "leg"
[[part]]
wear = 1
[[part]]
key = 4
[[part]]
key = ""
name = "the tab"
[[part]]
name = "the rudder"
key = "rudder"
[hull.keel]
depth = 1
`)
	hull := row.Table("hull")
	if got := entry.Amount[quantity.Length](hull, "draft").String(); got != "1.5 m" || hull.Path() != "hull" {
		t.Errorf("%s of %s", got, hull.Path())
	}
	if p := hull.Table("keel").Path(); p != "hull.keel" {
		t.Errorf("the path below the hull is %s", p)
	}
	var paths []string
	for _, p := range row.Tables("part") {
		paths = append(paths, p.Path())
	}
	if want := []string{"part[keel]", "part[leg]", "part[3]", "part[4]", "part[the tab]", "part[rudder]"}; !slices.Equal(paths, want) {
		t.Errorf("parts %q, want %q", paths, want)
	}
	absent := row.Table("use")
	if len(absent.Keys()) != 0 || absent.Text("water") != "" || absent.Path() != "use" {
		t.Errorf("a section that is not given holds %q", absent.Keys())
	}
	if got := row.Tables("berth"); got != nil {
		t.Errorf("sections that are not given: %d", len(got))
	}
	if len(*faults) != 0 {
		t.Errorf("faults:\n%v", *faults)
	}
}

func TestTablesRefused(t *testing.T) {
	for _, value := range []string{`"hull"`, `1`, `["a"]`, `[1, 2]`} {
		row, faults := open(t, "hull = "+value)
		if sub := row.Table("hull"); len(sub.Keys()) != 0 {
			t.Errorf("%s is a section with %q", value, sub.Keys())
		}
		one(t, *faults, finding.ErrValue, "hull", value, "a section, [hull]")
		row, faults = open(t, "hull = "+value)
		if sub := row.Tables("hull"); sub != nil {
			t.Errorf("%s is a list of %d sections", value, len(sub))
		}
		one(t, *faults, finding.ErrValue, "hull", value, "sections, [[hull]]")
	}
	row, faults := open(t, "[[hull]]\n")
	row.Table("hull")
	one(t, *faults, finding.ErrValue, "hull", "a section, [hull]")
	row, faults = open(t, "[part]\n")
	row.Tables("part")
	one(t, *faults, finding.ErrValue, "part", "sections, [[part]]")
}

func TestUnknownKeysWithNearNames(t *testing.T) {
	row, faults := open(t, "draugth = 1\ndraft = \"1 m\"\nzebra = 2\n[hull]\nbeem = 1")
	entry.Amount[quantity.Length](row, "draft")
	entry.Amount[quantity.Length](row, "draught")
	hull := row.Table("hull")
	entry.Amount[quantity.Length](hull, "beam")
	hull.Close()
	row.Close()
	var got []string
	for _, f := range *faults {
		if f.Kind != finding.ErrUnknownKey {
			t.Errorf("%v is of kind %v", f, f.Kind)
		}
		got = append(got, f.Error())
	}
	want := []string{
		"boat.toml: hull.beem: unknown key: read beem; accepted: did you mean beam?",
		"boat.toml: draugth: unknown key: read draugth; accepted: did you mean draught?",
		"boat.toml: zebra: unknown key: read zebra; accepted: one of draft; draught; hull",
	}
	if !slices.Equal(got, want) {
		t.Errorf("faults\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// Keys are told apart by capital letters: another spelling is an unknown key, not the same one.
func TestKeysAreTakenAsWritten(t *testing.T) {
	row, faults := open(t, `Water = "salt"`)
	if got := row.Text("water"); got != "" {
		t.Errorf("water is %q", got)
	}
	row.Close()
	one(t, *faults, finding.ErrUnknownKey, "Water", "did you mean water?")
}

func TestNeed(t *testing.T) {
	row, faults := open(t, "a = 1")
	row.Need("a number", "a", "b", "c")
	if len(*faults) != 2 {
		t.Fatalf("%d faults, want 2:\n%v", len(*faults), *faults)
	}
	for i, key := range []string{"b", "c"} {
		one(t, (*faults)[i:i+1], finding.ErrMissing, key, "accepted: a number")
	}
	row.Raw("a")
	row.Close()
	if len(*faults) != 2 {
		t.Errorf("closing adds faults:\n%v", *faults)
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	row, faults := open(t, "a = 1\nb = 2\nc = \"x\"\nd = 3\ne = 0")
	row.Text("a")
	row.YesNo("b")
	row.Float("c", 0, 1)
	entry.Amount[quantity.Length](row, "d")
	row.Date("missing")
	row.Need("text", "f")
	row.Close()
	if len(*faults) != 6 {
		t.Errorf("%d faults, want 6: one each for a to f\n%v", len(*faults), *faults)
	}
}

func TestFaultAndAddAreFoldedUnderTheRow(t *testing.T) {
	row, faults := open(t, "[use]\nspeed = 1")
	use := row.Table("use")
	use.Fault(finding.ErrImpossible, "", "so", "not so")
	use.Add(finding.Faults{{Kind: finding.ErrValue, Key: "water"}})
	row.Fault(finding.ErrMissing, "hull", "", "")
	var keys []string
	for _, f := range *faults {
		keys = append(keys, f.File+" "+f.Key)
	}
	if want := []string{"boat.toml use", "boat.toml use.water", "boat.toml hull"}; !slices.Equal(keys, want) {
		t.Errorf("keys %q, want %q", keys, want)
	}
}

func TestHas(t *testing.T) {
	row, _ := open(t, `a = ""`)
	if !row.Has("a") || row.Has("b") || row.Has("A") {
		t.Errorf("has a %t, b %t, A %t; want only a", row.Has("a"), row.Has("b"), row.Has("A"))
	}
}

func TestDescribe(t *testing.T) {
	at := func(where string) time.Time {
		return time.Date(2027, 4, 3, 8, 30, 0, 0, time.FixedZone(where, -5*3600))
	}
	for _, c := range []struct {
		v    any
		want string
	}{
		{"a\nb", `"a\nb"`},
		{int64(-3), "-3"},
		{2.50, "2.5"},
		{math.Inf(-1), "-Inf"},
		{true, "true"},
		{[]any{"a", int64(1), []any{false}}, `["a", 1, [false]]`},
		{map[string]any{"a": 1}, "a section"},
		{[]map[string]any{{}}, "a section"},
		{at("date-local"), "2027-04-03"}, // where the computer stands does not show
		{at("datetime-local"), "2027-04-03T08:30:00"},
		{at("time-local"), "08:30:00"},
		{at(""), "2027-04-03T08:30:00-05:00"},
		{strings.Repeat("ä", 78), `"` + strings.Repeat("ä", 78) + `"`}, // 80 letters with the quotes
		{strings.Repeat("ä", 79), `"` + strings.Repeat("ä", 79) + "…"},
		{strings.Repeat("ä", 100), `"` + strings.Repeat("ä", 79) + "…"},
	} {
		if got := entry.Describe(c.v); got != c.want {
			t.Errorf("%#v is told as %s, want %s", c.v, got, c.want)
		}
	}
}

// A key that is needed and missing is among those that an unknown one may have been meant as, though nobody reads it.
func TestNeededKeysAreSuggested(t *testing.T) {
	row, faults := open(t, "draugth = 1")
	row.Need("a draught", "draught")
	row.Close()
	if len(*faults) != 2 {
		t.Fatalf("%d faults, want 2:\n%v", len(*faults), *faults)
	}
	one(t, (*faults)[1:], finding.ErrUnknownKey, "draugth", "did you mean draught?")
}

// What is wrong in a list is told and left out; the others stay.
func TestTextsKeepTheRest(t *testing.T) {
	row, faults := open(t, `x = ["a", "", 1, "b"]`)
	if got := row.Texts("x"); !slices.Equal(got, []string{"a", "b"}) {
		t.Errorf("read as %q", got)
	}
	if len(*faults) != 2 || (*faults)[0].Key != "x[2]" || (*faults)[1].Key != "x[3]" {
		t.Errorf("faults:\n%v", *faults)
	}
}

// A wrong word is told by its own place, whatever else is wrong in the list; where it stands alone, by the key.
func TestWrongWordsHaveTheirPlace(t *testing.T) {
	for value, want := range map[string]string{`[1, "salt", "wine"]`: "x[1] x[3]", `["beer", "wine"]`: "x[1] x[2]", `"wine"`: "x", `"salt"`: ""} {
		row, faults := open(t, "x = "+value)
		row.Words("x", "salt", "fresh")
		var keys []string
		for _, f := range *faults {
			keys = append(keys, f.Key)
		}
		if got := strings.Join(keys, " "); got != want {
			t.Errorf("%s: %q, want %q", value, got, want)
		}
	}
}

// The decimal comma is spoken of where there is one, and nowhere else.
func TestCommaIsSpokenOfWhereThereIsOne(t *testing.T) {
	for value, told := range map[string]bool{`"1,5 um"`: true, `"1.5"`: false, `"1.5 m"`: false, `1.5`: false, `["1 um", "2 um"]`: false} {
		row, faults := open(t, "x = "+value)
		entry.Amount[quantity.Film](row, "x")
		if len(*faults) != 1 || strings.Contains((*faults)[0].Want, "comma") != told {
			t.Errorf("%s: %v", value, *faults)
		}
	}
}
