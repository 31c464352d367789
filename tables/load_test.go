package tables_test

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// fields is one row: the TOML text of each value.
type fields map[string]string

// good holds one row of every table, each without a fault; together they are a whole folder.
func good() map[string]fields {
	return map[string]fields{
		"source":  {"key": `"paper"`, "title": `"A paper"`, "kind": `"paper"`},
		"rule":    {"key": `"rule-one"`, "basis": `"common practice"`, "says": `"{about} is judged."`},
		"caution": {"key": `"dust"`, "basis": `"common practice"`, "says": `"Wear a mask."`},
		"active":  {"key": `"oxide"`, "basis": `"from memory"`, "class": `"cuprous oxide"`, "copper_share": `0.8882`},
		"coating": {
			"key": `"hard"`, "basis": `"common practice"`, "role": `"antifouling"`, "mechanism": `"hard"`, "packs": `1`, "carrier": `"solvent"`,
			"solids": `["45 %", "50 %", "60 %"]`, "film": `["40 um", "50 um", "60 um"]`, "coats": `2`, "most_coats": `3`, "at": `"20 degC"`,
			"overcoat_min": `"6 h"`, "overcoat_max": `"72 h"`, "launch_min": `"12 h"`, "air_new": `"60 d"`, "air_scuff": `"72 h"`, "air_used": `"30 d"`,
			"apply_min": `"5 degC"`, "apply_max": `"35 degC"`, "speed_min": `"1 kn"`, "speed_max": `"25 kn"`, "scrub": `"heavy"`, "abrasion": `"heavy"`,
			"growth": `"heavy"`, "waters": `["salt"]`, "life": `["12 months", "18 months", "24 months"]`, "hazards": `["dust"]`,
		},
		"material": {
			"key": `"steel"`, "basis": `"common practice"`, "painted": `"fine"`, "cuprous_oxide": `"over barrier"`, "metallic_copper": `"never"`,
			"other_copper": `"ask"`, "copper_free": `"fine"`, "barrier": `"over barrier"`, "barrier_film": `"250 um"`, "barrier_with": `"hard"`,
			"two_pack": `true`, "old_copper_stays": `false`, "prepare": `["blast"]`,
		},
		"condition": {"key": `"sound"`, "basis": `"common practice"`, "rule": `"rule-one"`, "verdict": `"fine"`},
		"overcoat": {
			"key": `"hard-on-hard"`, "basis": `"common practice"`, "level": `"pair"`, "rule": `"rule-one"`, "new": `"hard"`, "old": `"antifouling"`,
			"verdict": `"needs"`, "steps": `["abrade"]`,
		},
		"zone":      {"key": `"flat"`, "basis": `"derived"`, "wear": `1`},
		"hull_form": {"key": `"fin"`, "basis": `"common practice"`, "factor": `[0.4, 0.5, 0.6]`, "waterline_share": `0.1`, "edges_share": `0.1`},
		"loss":      {"key": `"brush"`, "basis": `"common practice"`, "loss": `"5 %"`, "residue": `"0.1 L"`},
		"can":       {"key": `"small"`, "basis": `"common practice"`, "size": `"0.75 L"`},
		"colour":    {"key": `"black"`, "basis": `"assumption"`, "srgb": `"#1c1c1e"`},
		"step":      {"key": `"wash"`, "basis": `"common practice"`, "says": `"Wash."`, "hours_m2": `0.1`},
		"factor":    {"key": `"q10"`, "basis": `"assumption"`, "value": `[1, 1.5, 2]`},
		"criterion": {"key": `"growth"`, "basis": `"assumption"`, "weight": `3`, "says": `"Does it?"`},
		"place":     {"key": `"world"`, "basis": `"common practice"`},
		"sign":      {"key": `"thumb"`, "basis": `"common practice"`, "test": `"wet thumb"`, "says": `"colour comes off"`, "against": `["hard"]`, "settles": `true`},
		"threshold": {
			"key": `"flaking"`, "basis": `"common practice"`, "unit": `"% of the area"`, "worse": `"higher"`, "least": `0`, "most": `100`, "repair": `0`, "strip": `[10, 15, 20]`,
			"state": `"sound"`,
		},
		"past_result": {
			"key": `"hard-here"`, "basis": `"own table"`, "source": `"the yard's log"`, "coating": `"hard"`, "place": `"world"`, "outcome": `"held"`,
			"months": `"12 months"`, "boats": `3`,
		},
		"price": {"key": `"wage"`, "basis": `"invented"`, "of": `"labour"`, "per": `"h"`, "price": `["40 EUR", "48.50 EUR", "60 EUR"]`},
		"law": {
			"key": `"law-one"`, "basis": `"published"`, "source": `"paper"`, "place": `"world"`, "says": `"no"`, "subject": `"coating"`,
			"verdict": `"forbidden"`, "read_on": `2026-11-25`,
		},
		"sampling":   {"key": `"one"`, "basis": `"common practice"`, "standard": `"ISO 19840"`, "over": `"0 m2"`, "readings": `5`},
		"roughness":  {"key": `"slime"`, "basis": `"assumption"`, "rating": `"10-20"`, "ks": `"100 um"`, "rt50": `"300 um"`, "resistance_15kn": `"11 %"`, "resistance_30kn": `"10 %"`},
		"acceptance": {"key": `"house"`, "basis": `"common practice"`, "sampling": `"ISO 19840"`, "spot_readings": `1`, "area_spots": `1`, "least_single": `"80 %"`, "below": `"20 %"`, "below_fewer": `true`},
		"instrument": {"key": `"magnet"`, "basis": `"common practice"`, "tells": `"dry"`, "reads": `["steel"]`, "says": `"It reads."`, "cannot": `"It cannot."`},
		"grade":      {"key": `"mild"`, "basis": `"from memory"`, "scale": `"a scale"`, "grade": `"1"`, "says": `"little"`},
		"observation": {
			"key": `"rust-spots"`, "basis": `"common practice"`, "what": `"rust"`, "on": `["steel"]`, "from": `["mild"]`, "over": `"0 %"`, "size": `"2 mm"`,
			"urgency": `"monitor"`, "do": `"Look again."`, "why": `"It grows."`, "state": `"sound"`, "cautions": `["dust"]`,
		},
	}
}

// row writes one row of a table.
func row(table string, f fields) string {
	var b strings.Builder
	fmt.Fprintf(&b, "[[%s]]\n", table)
	for _, k := range slices.Sorted(maps.Keys(f)) {
		if f[k] != "" {
			fmt.Fprintf(&b, "%s = %s\n", k, f[k])
		}
	}
	return b.String()
}

// folder is the good rows as good.toml, and the other files beside it.
func folder(files map[string]string) fstest.MapFS {
	var b strings.Builder
	rows := good()
	for _, t := range slices.Sorted(maps.Keys(rows)) {
		b.WriteString(row(t, rows[t]))
	}
	out := fstest.MapFS{"good.toml": {Data: []byte(b.String())}}
	for name, text := range files {
		out[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return out
}

func faultsOf(t *testing.T, err error) finding.Faults {
	t.Helper()
	if err == nil {
		return nil
	}
	fs, ok := errors.AsType[finding.Faults](err)
	if !ok {
		t.Fatalf("the error is no Faults: %v", err)
	}
	return fs
}

func TestGoodFolderLoads(t *testing.T) {
	b, err := tables.Load(folder(nil))
	if err != nil {
		t.Fatal(err)
	}
	c, err := b.Coating("hard")
	if err != nil || c.Name != "hard" || c.Biocide != tables.NoBiocide {
		t.Errorf("hard is %q with %q, %v", c.Name, c.Biocide, err)
	}
}

// broken is one mistake in one row. The row is the good one of its table with the key "broken", changed.
type broken struct {
	table  string
	change fields // "" takes the field out
	tail   string // more text after the row
	key    string // of the fault, from the field on; "" is the row itself
	kind   error
	says   string // a part of the fault's text
}

func (c broken) text() (string, string) {
	f := good()[c.table]
	f["key"] = `"broken"`
	maps.Copy(f, c.change)
	label := strings.Trim(f["key"], `"`)
	if _, quoted := strings.CutPrefix(f["key"], `"`); !quoted || label == "" {
		label = "?"
	}
	path := c.table + "[" + label + "]"
	if c.key != "" {
		path += "." + c.key
	}
	return row(c.table, f) + c.tail, path
}

var mistakes = []broken{
	// What every row has.
	{table: "coating", change: fields{"key": ""}, key: "key", kind: finding.ErrMissing, says: "unique"},
	{table: "coating", change: fields{"key": `""`}, key: "key", kind: finding.ErrValue, says: "text in quotes"},
	{table: "coating", change: fields{"key": `3`}, key: "key", kind: finding.ErrValue, says: "read 3"},
	{table: "coating", change: fields{"basis": ""}, key: "basis", kind: finding.ErrBasis, says: "common practice, from memory"},
	{table: "coating", change: fields{"basis": `"hearsay"`}, key: "basis", kind: finding.ErrValue, says: `read "hearsay"`},
	{table: "coating", change: fields{"basis": `"published"`}, key: "source", kind: finding.ErrBasis, says: "what it was read in"},
	{table: "coating", change: fields{"basis": `"own table"`}, key: "source", kind: finding.ErrBasis, says: "data sheet"},
	{table: "coating", change: fields{"basis": `"published"`, "source": `"papers"`}, key: "source", kind: finding.ErrUnknown, says: "did you mean paper?"},
	{table: "coating", change: fields{"source": `"nowhere"`}, key: "source", kind: finding.ErrUnknown, says: `read "nowhere"`},
	{table: "coating", change: fields{"read": `"yesterday"`}, key: "read", kind: finding.ErrValue, says: "second-hand, original"},
	{table: "coating", change: fields{"basis_of": `{ bright = "assumption" }`}, key: "basis_of.bright", kind: finding.ErrUnknownKey, says: "a field that this row gives"},
	{table: "coating", change: fields{"basis_of": `{ film = "guess" }`}, key: "basis_of.film", kind: finding.ErrValue, says: `read "guess"`},
	{table: "coating", change: fields{"basis_of": `"assumption"`}, key: "basis_of", kind: finding.ErrValue, says: "a section"},
	{table: "coating", change: fields{"safety": `"yes"`}, key: "safety", kind: finding.ErrValue, says: "true or false"},
	{table: "coating", change: fields{"solid": `"5 %"`}, key: "solid", kind: finding.ErrUnknownKey, says: "did you mean solids"},
	{table: "zone", change: fields{"waer": `1`}, key: "waer", kind: finding.ErrUnknownKey, says: "wear"},

	// Coatings: what each role needs.
	{table: "coating", change: fields{"role": ""}, key: "role", kind: finding.ErrMissing, says: "one of the roles"},
	{table: "coating", change: fields{"role": `"antifoul"`}, key: "role", kind: finding.ErrValue, says: "antifouling, primer"},
	{table: "coating", change: fields{"mechanism": ""}, key: "mechanism", kind: finding.ErrMissing},
	{table: "coating", change: fields{"packs": ""}, key: "packs", kind: finding.ErrMissing},
	{table: "coating", change: fields{"carrier": ""}, key: "carrier", kind: finding.ErrMissing},
	{table: "coating", change: fields{"solids": ""}, key: "solids", kind: finding.ErrMissing},
	{table: "coating", change: fields{"film": ""}, key: "film", kind: finding.ErrMissing},
	{table: "coating", change: fields{"coats": ""}, key: "coats", kind: finding.ErrMissing},
	{table: "coating", change: fields{"at": ""}, key: "at", kind: finding.ErrMissing},
	{table: "coating", change: fields{"overcoat_min": ""}, key: "overcoat_min", kind: finding.ErrMissing},
	{table: "coating", change: fields{"launch_min": ""}, key: "launch_min", kind: finding.ErrMissing},
	{table: "coating", change: fields{"apply_min": ""}, key: "apply_min", kind: finding.ErrMissing},
	{table: "coating", change: fields{"apply_max": ""}, key: "apply_max", kind: finding.ErrMissing},
	{table: "coating", change: fields{"scrub": ""}, key: "scrub", kind: finding.ErrMissing},
	{table: "coating", change: fields{"abrasion": ""}, key: "abrasion", kind: finding.ErrMissing},
	{table: "coating", change: fields{"growth": ""}, key: "growth", kind: finding.ErrMissing},
	{table: "coating", change: fields{"waters": ""}, key: "waters", kind: finding.ErrMissing},
	{table: "coating", change: fields{"life": ""}, key: "life", kind: finding.ErrMissing, says: "wear_rest and wear_use"},
	{table: "coating", change: fields{"wear_use": `"3 um"`}, key: "wear_rest", kind: finding.ErrMissing, says: "together"},
	{table: "coating", change: fields{"wear_rest": `"1 um"`}, key: "wear_rest", kind: finding.ErrMissing, says: "together"},
	{table: "coating", change: fields{"role": `"primer"`, "solids": ""}, key: "solids", kind: finding.ErrMissing, says: "undercoat"},
	{table: "coating", change: fields{"role": `"sealer"`, "overcoat_min": ""}, key: "overcoat_min", kind: finding.ErrMissing, says: "undercoat"},
	{table: "coating", change: fields{"role": `"bare"`, "scrub": ""}, key: "scrub", kind: finding.ErrMissing},
	{table: "coating", change: fields{"role": `"old film"`, "biocide": `"unknown"`}, key: "recognised", kind: finding.ErrMissing, says: "old film"},
	{table: "coating", change: fields{"role": `"old film"`, "recognised": `"by eye"`}, key: "biocide", kind: finding.ErrMissing, says: "old film"},

	// Coatings: values that are not accepted or cannot be.
	{table: "coating", change: fields{"mechanism": `"magic"`}, key: "mechanism", kind: finding.ErrValue, says: "self-polishing"},
	{table: "coating", change: fields{"biocide": `"copper-free"`}, key: "biocide", kind: finding.ErrValue, says: "follows from the actives"},
	{table: "coating", change: fields{"packs": `3`}, key: "packs", kind: finding.ErrValue, says: "from 1 to 2"},
	{table: "coating", change: fields{"waters": `["salt", "beer"]`}, key: "waters[2]", kind: finding.ErrValue, says: "brackish"},
	{table: "coating", change: fields{"growth": `"huge"`}, key: "growth", kind: finding.ErrValue, says: "light, medium, heavy"},
	{table: "coating", change: fields{"film": `50`}, key: "film", kind: finding.ErrValue, says: "um, mil"},
	{table: "coating", change: fields{"film": `["60 um", "50 um", "40 um"]`}, key: "film", kind: finding.ErrValue, says: "rising"},
	{table: "coating", change: fields{"film": `["0 um", "50 um", "60 um"]`}, key: "film", kind: finding.ErrImpossible, says: "above zero"},
	{table: "coating", change: fields{"film": `"-5 um"`}, key: "film", kind: finding.ErrImpossible, says: "above zero"},
	{table: "coating", change: fields{"solids": `["45 %", "50 %", "100.1 %"]`}, key: "solids", kind: finding.ErrImpossible, says: "at most 100 %"},
	{table: "coating", change: fields{"solids": `["0 %", "50 %", "60 %"]`}, key: "solids", kind: finding.ErrImpossible, says: "more than 0 %"},
	{table: "coating", change: fields{"density": `"0 kg/L"`}, key: "density", kind: finding.ErrImpossible, says: "above zero"},
	{table: "coating", change: fields{"overcoat_max": `"5 h"`}, key: "overcoat_max", kind: finding.ErrImpossible, says: "closes after it opens"},
	{table: "coating", change: fields{"antifouling_max": `"6 h"`}, key: "antifouling_max", kind: finding.ErrImpossible, says: "closes after it opens"},
	{table: "coating", change: fields{"overcoat_max": `"360 min"`}, key: "overcoat_max", kind: finding.ErrImpossible, says: "closes after it opens"},
	{table: "coating", change: fields{"overcoat_min": `"-6 h"`}, key: "overcoat_min", kind: finding.ErrImpossible, says: "zero or more"},
	{table: "coating", change: fields{"air_new": `"12 h"`}, key: "air_new", kind: finding.ErrImpossible, says: "launch_min"},
	{table: "coating", change: fields{"air_used": `"3 d"`}, key: "air_used", kind: finding.ErrImpossible, says: "air_scuff"},
	{table: "coating", change: fields{"apply_max": `"41 degF"`}, key: "apply_max", kind: finding.ErrImpossible, says: "apply_min"},
	{table: "coating", change: fields{"speed_max": `"1 kn"`}, key: "speed_max", kind: finding.ErrImpossible, says: "speed_min"},
	{table: "coating", change: fields{"speed_min": `"-1 kn"`}, key: "speed_min", kind: finding.ErrImpossible, says: "zero or more"},
	{table: "coating", change: fields{"idle_max": `"-1 d"`}, key: "idle_max", kind: finding.ErrImpossible, says: "zero or more"},
	{table: "coating", change: fields{"clean_every": `"-1 d"`}, key: "clean_every", kind: finding.ErrImpossible, says: "zero or more"},
	{table: "coating", change: fields{"most_coats": `1`}, key: "most_coats", kind: finding.ErrImpossible, says: "at least coats"},
	{table: "coating", change: fields{"life": `"-1 months"`}, key: "life", kind: finding.ErrImpossible, says: "zero or more"},
	{table: "coating", change: fields{"wear_rest": `"-1 um"`, "wear_use": `"1 um"`}, key: "wear_rest", kind: finding.ErrImpossible, says: "zero or more"},
	{table: "coating", change: fields{"wear_rest": `"0 um"`, "wear_use": `"0 um"`}, key: "wear_use", kind: finding.ErrImpossible, says: "above zero"},
	{table: "coating", tail: "[[coating.active]]\nkey = \"oxide\"\ncontent = \"101 %\"\n", key: "active[oxide].content", kind: finding.ErrImpossible, says: "at most 100 %"},
	{table: "coating", tail: "[[coating.active]]\ncontent = \"10 %\"\n", key: "active[1].key", kind: finding.ErrMissing, says: "actives"},
	{table: "coating", tail: "[[coating.active]]\nkey = \"oxide\"\nwight = 1\n", key: "active[oxide].wight", kind: finding.ErrUnknownKey},

	// References.
	{table: "coating", change: fields{"under": `"herd"`}, key: "under", kind: finding.ErrUnknown, says: `read "herd"`},
	{table: "coating", change: fields{"hazards": `["dusts"]`}, key: "hazards", kind: finding.ErrUnknown, says: "did you mean dust?"},
	{table: "coating", tail: "[[coating.active]]\nkey = \"oxid\"\n", key: "active", kind: finding.ErrUnknown, says: "did you mean oxide?"},
	{table: "material", change: fields{"barrier_with": `"tar"`}, key: "barrier_with", kind: finding.ErrUnknown},
	{table: "material", change: fields{"primer": `"tar"`}, key: "primer", kind: finding.ErrUnknown},
	{table: "material", change: fields{"hazards": `["gas"]`}, key: "hazards", kind: finding.ErrUnknown},
	{table: "condition", change: fields{"rule": `"rule-two"`}, key: "rule", kind: finding.ErrUnknown, says: "rule-one"},
	{table: "overcoat", change: fields{"rule": `"rule-two"`}, key: "rule", kind: finding.ErrUnknown, says: "rule-one"},
	{table: "overcoat", change: fields{"with": `"tar"`}, key: "with", kind: finding.ErrUnknown},
	{table: "overcoat", change: fields{"new": `"ablativ"`}, key: "new", kind: finding.ErrUnknown, says: "did you mean ablative?"},
	{table: "overcoat", change: fields{"old": `"qqqqqq"`}, key: "old", kind: finding.ErrUnknown, says: "one of antifouling; hard"},
	{table: "overcoat", change: fields{"except": `"qqqqqq"`}, key: "except", kind: finding.ErrUnknown},
	{table: "can", change: fields{"coating": `"tar"`}, key: "coating", kind: finding.ErrUnknown},
	{table: "loss", change: fields{"caution": `"gas"`}, key: "caution", kind: finding.ErrUnknown},
	{table: "step", change: fields{"key": `"abrade"`, "cautions": `["gas"]`}, key: "cautions", kind: finding.ErrUnknown},
	{table: "step", change: fields{"key": `"abrad"`}, key: "key", kind: finding.ErrUnknown, says: "did you mean abrade"},
	{table: "place", change: fields{"within": `"wold"`}, key: "within", kind: finding.ErrUnknown, says: "did you mean world?"},
	{table: "place", change: fields{"key": ""}, key: "key", kind: finding.ErrMissing, says: "unique"}, // and nothing lies in it
	{table: "place", change: fields{"within": `"broken"`}, key: "within", kind: finding.ErrImpossible, says: "does not lie in this one"},
	{table: "law", change: fields{"place": `"mars"`}, key: "place", kind: finding.ErrUnknown},
	{table: "law", change: fields{"actives": `["oxid"]`}, key: "actives", kind: finding.ErrUnknown, says: "oxide"},
	{table: "law", change: fields{"exempt": `["stele"]`}, key: "exempt", kind: finding.ErrUnknown, says: `read "stele"`},

	// Materials.
	{table: "material", change: fields{"painted": ""}, key: "painted", kind: finding.ErrMissing},
	{table: "material", change: fields{"cuprous_oxide": `"sure"`}, key: "cuprous_oxide", kind: finding.ErrValue, says: "over barrier"},
	{table: "material", change: fields{"two_pack": ""}, key: "two_pack", kind: finding.ErrMissing},
	{table: "material", change: fields{"barrier_film": ""}, key: "barrier_film", kind: finding.ErrMissing},
	{table: "material", change: fields{"barrier": `"ask"`, "cuprous_oxide": `"fine"`, "barrier_with": ""}, key: "barrier_with", kind: finding.ErrMissing},
	{table: "material", change: fields{"barrier_film": `"-250 um"`}, key: "barrier_film", kind: finding.ErrImpossible, says: "above zero"},
	{table: "material", change: fields{"prepare": `["pray"]`}, key: "prepare[1]", kind: finding.ErrValue, says: "wash"},
	{table: "material", change: fields{"carrier": `"oil"`}, key: "carrier", kind: finding.ErrValue, says: "solvent, water"},

	// The other tables.
	{table: "condition", change: fields{"verdict": ""}, key: "verdict", kind: finding.ErrMissing},
	{table: "condition", change: fields{"verdict": `"good"`}, key: "verdict", kind: finding.ErrValue, says: "forbidden"},
	{table: "condition", change: fields{"verdict": `"needs"`}, key: "steps", kind: finding.ErrMissing},
	{table: "overcoat", change: fields{"level": ""}, key: "level", kind: finding.ErrMissing},
	{table: "overcoat", change: fields{"steps": ""}, key: "steps", kind: finding.ErrMissing},
	{table: "overcoat", change: fields{"steps": `["abrad"]`}, key: "steps[1]", kind: finding.ErrValue},
	{table: "zone", change: fields{"wear": ""}, key: "wear", kind: finding.ErrMissing},
	{table: "zone", change: fields{"wear": `0`}, key: "wear", kind: finding.ErrValue},
	{table: "hull_form", change: fields{"factor": ""}, key: "factor", kind: finding.ErrMissing},
	{table: "hull_form", change: fields{"factor": `[0.6, 0.5, 0.4]`}, key: "factor", kind: finding.ErrValue, says: "rising"},
	{table: "hull_form", change: fields{"edges_share": `0.6`}, key: "edges_share", kind: finding.ErrValue, says: "from 0 to 0.5"},
	{table: "loss", change: fields{"loss": ""}, key: "loss", kind: finding.ErrMissing},
	{table: "loss", change: fields{"loss": `["5 %", "50 %", "100 %"]`}, key: "loss", kind: finding.ErrImpossible, says: "less than 100 %"},
	{table: "loss", change: fields{"loss": `"-1 %"`}, key: "loss", kind: finding.ErrImpossible},
	{table: "loss", change: fields{"residue": `"-1 L"`}, key: "residue", kind: finding.ErrImpossible},
	{table: "can", change: fields{"size": ""}, key: "size", kind: finding.ErrMissing},
	{table: "can", change: fields{"size": `"0 L"`}, key: "size", kind: finding.ErrImpossible, says: "more than zero"},
	{table: "can", change: fields{"size": `"1 gal"`}, key: "size", kind: finding.ErrValue, says: "US gal"},
	{table: "can", change: fields{"price": `"58.00"`}, key: "price", kind: finding.ErrValue, says: "58.00 EUR"},
	{table: "can", change: fields{"price": `58`}, key: "price", kind: finding.ErrValue, says: "58.00 EUR"},
	{table: "can", change: fields{"price": `"-58 EUR"`}, key: "price", kind: finding.ErrImpossible},
	{table: "colour", change: fields{"srgb": `"black"`}, key: "srgb", kind: finding.ErrValue, says: "#rrggbb"},
	{table: "colour", change: fields{"srgb": `"#1c1c1"`}, key: "srgb", kind: finding.ErrValue, says: "#rrggbb"},
	{table: "colour", change: fields{"srgb": `"#1c1cgg"`}, key: "srgb", kind: finding.ErrValue, says: "#rrggbb"},
	{table: "sign", change: fields{"test": ""}, key: "test", kind: finding.ErrMissing},
	{table: "sign", change: fields{"against": ""}, key: "for", kind: finding.ErrMissing, says: "or against"},
	{table: "sign", change: fields{"against": `["soft"]`}, key: "against", kind: finding.ErrUnknown, says: `read "soft"`},
	{table: "sign", change: fields{"for": `["soft"]`}, key: "for", kind: finding.ErrUnknown, says: `read "soft"`},
	{table: "sign", change: fields{"for": `["hard"]`}, key: "against", kind: finding.ErrImpossible, says: "does not speak for"},
	{table: "threshold", change: fields{"worse": `"up"`}, key: "worse", kind: finding.ErrValue, says: "higher, lower"},
	{table: "threshold", change: fields{"most": `0`}, key: "most", kind: finding.ErrImpossible, says: "more than least"},
	{table: "threshold", change: fields{"repair": `11`}, key: "repair", kind: finding.ErrImpossible, says: "no worse than strip"},
	{table: "threshold", change: fields{"worse": `"lower"`}, key: "repair", kind: finding.ErrImpossible, says: "no worse than strip"},
	{table: "threshold", change: fields{"state": `"rotten"`}, key: "state", kind: finding.ErrUnknown, says: `read "rotten"`},
	{table: "threshold", change: fields{"strip": ""}, key: "strip", kind: finding.ErrMissing},
	{table: "past_result", change: fields{"coating": `"soft"`}, key: "coating", kind: finding.ErrUnknown, says: `read "soft"`},
	{table: "past_result", change: fields{"place": `"moon"`}, key: "place", kind: finding.ErrUnknown, says: `read "moon"`},
	{table: "past_result", change: fields{"outcome": `"good"`}, key: "outcome", kind: finding.ErrValue, says: "held, failed"},
	{table: "past_result", change: fields{"months": ""}, key: "months", kind: finding.ErrMissing, says: "how long after the paint"},
	{table: "past_result", change: fields{"months": `"0 months"`}, key: "months", kind: finding.ErrImpossible},
	{table: "past_result", change: fields{"boats": `0`}, key: "boats", kind: finding.ErrValue, says: "a whole number from 1"},
	{table: "price", change: fields{}, key: "of", kind: finding.ErrDuplicate, says: "price[wage] is of the same"},
	{table: "price", change: fields{"by": `"yard"`, "price": `"40 DKK"`}, key: "price", kind: finding.ErrImpossible, says: "money in EUR"},
	{table: "can", change: fields{"price": `"58 DKK"`}, key: "price", kind: finding.ErrImpossible, says: "money in EUR"},
	{table: "price", change: fields{"of": `"beer"`}, key: "of", kind: finding.ErrValue, says: "paint, thinner"},
	{table: "price", change: fields{"per": `"L"`}, key: "per", kind: finding.ErrValue, says: "one of h"},
	{table: "price", change: fields{"price": `"40"`}, key: "price", kind: finding.ErrValue, says: "58.00 EUR"},
	{table: "price", change: fields{"price": `"-1 EUR"`}, key: "price", kind: finding.ErrImpossible, says: "zero or more"},
	{table: "price", change: fields{"price": `["40 EUR", "30 EUR", "60 EUR"]`}, key: "price", kind: finding.ErrValue, says: "rising"},
	{table: "price", change: fields{"price": `["40 EUR", "45 DKK", "60 EUR"]`}, key: "price", kind: finding.ErrValue, says: "one currency"},
	{table: "price", change: fields{"price": ""}, key: "price", kind: finding.ErrMissing},
	{table: "price", change: fields{"what": `"hard"`}, key: "what", kind: finding.ErrImpossible, says: "no such key here"},
	{table: "price", change: fields{"of": `"work"`, "per": `"m2"`}, key: "what", kind: finding.ErrMissing, says: "the kind of work"},
	{table: "price", change: fields{"of": `"paint"`, "per": `"L"`, "what": `"soft"`}, key: "what", kind: finding.ErrUnknown, says: `read "soft"`},
	{table: "price", change: fields{"of": `"supply"`, "per": `"piece"`}, key: "what", kind: finding.ErrMissing, says: "the supply"},
	{table: "coating", change: fields{"touch_dry": `"4 h"`, "rain_safe": `"3 h"`}, key: "rain_safe", kind: finding.ErrImpossible, says: "touch_dry"},
	{table: "price", change: fields{"of": `"paint"`, "per": `"m2"`}, key: "per", kind: finding.ErrValue, says: "one of L"},
	{table: "price", change: fields{"by": `"crew"`}, key: "by", kind: finding.ErrValue, says: "owner, yard"},
	{table: "step", change: fields{"key": `"abrade"`, "hours_m2": ""}, key: "hours_m2", kind: finding.ErrMissing},
	{table: "step", change: fields{"key": `"abrade"`, "hours_m2": `21`}, key: "hours_m2", kind: finding.ErrValue},
	{table: "factor", change: fields{"value": ""}, key: "value", kind: finding.ErrMissing},
	{table: "factor", change: fields{"value": `nan`}, key: "value", kind: finding.ErrValue},
	{table: "criterion", change: fields{"weight": `-1`}, key: "weight", kind: finding.ErrValue},
	{table: "place", change: fields{"water": `"beer"`}, key: "water", kind: finding.ErrValue},
	{table: "law", change: fields{"from": `2026-01-01`, "to": `2025-12-31`}, key: "to", kind: finding.ErrImpossible, says: "not before from"},
	{table: "law", change: fields{"from": `2026-02-30`}, kind: finding.ErrSyntax},
	{table: "law", change: fields{"from": `"2026-01-01"`}, key: "from", kind: finding.ErrValue, says: "without quotes"},
	{table: "law", change: fields{"read_on": ""}, key: "read_on", kind: finding.ErrMissing},
	{table: "law", change: fields{"verdict": `"needs"`}, key: "steps", kind: finding.ErrMissing},
	{table: "law", change: fields{"roles": `["owned"]`}, key: "roles[1]", kind: finding.ErrValue, says: "painted, kept"},
	{table: "law", change: fields{"length_min": `12`}, key: "length_min", kind: finding.ErrValue, says: "m, ft"},
	{table: "active", change: fields{"class": ""}, key: "class", kind: finding.ErrMissing},
	{table: "active", change: fields{"copper_share": `0.9`, "zinc_share": `0.2`}, key: "zinc_share", kind: finding.ErrImpossible, says: "no more than 1"},
	{table: "active", change: fields{"copper_share": `1.1`}, key: "copper_share", kind: finding.ErrValue, says: "from 0 to 1"},
	{table: "source", change: fields{"title": ""}, key: "title", kind: finding.ErrMissing},
	{table: "source", change: fields{"kind": `"rumour"`}, key: "kind", kind: finding.ErrValue},
	{table: "rule", change: fields{"says": ""}, key: "says", kind: finding.ErrMissing},
	{table: "caution", change: fields{"says": ""}, key: "says", kind: finding.ErrMissing},

	// Film readings.
	{table: "roughness", change: fields{"rating": `"20-10"`}, key: "rating", kind: finding.ErrValue, says: "0 to 100"},
	{table: "roughness", change: fields{"rating": `"101"`}, key: "rating", kind: finding.ErrValue, says: `read "101"`},
	{table: "roughness", change: fields{"rating": `"10-20-30"`}, key: "rating", kind: finding.ErrValue, says: `read "10-20-30"`},
	{table: "roughness", change: fields{"rating": `"-5"`}, key: "rating", kind: finding.ErrValue, says: `read "-5"`},
	{table: "roughness", change: fields{"rating": ""}, key: "rating", kind: finding.ErrMissing},
	{table: "roughness", change: fields{"ks": `"-1 um"`}, key: "ks", kind: finding.ErrImpossible, says: "0 um or more"},
	{table: "acceptance", change: fields{"sampling": `"none such"`}, key: "sampling", kind: finding.ErrUnknown, says: `read "none such"`},
	{table: "acceptance", change: fields{"sampling": ""}, key: "sampling", kind: finding.ErrMissing},
	{table: "acceptance", change: fields{"sampling_us": `"none such"`}, key: "sampling_us", kind: finding.ErrUnknown},
	{table: "acceptance", change: fields{"guide": `"none such"`}, key: "guide", kind: finding.ErrUnknown},
	{table: "acceptance", change: fields{"spot_readings": `0`}, key: "spot_readings", kind: finding.ErrValue, says: "from 1 to 20"},
	{table: "acceptance", change: fields{"area_spots": ""}, key: "area_spots", kind: finding.ErrMissing},
	{table: "acceptance", change: fields{"least_single": ""}, key: "least_single", kind: finding.ErrMissing},
	{table: "acceptance", change: fields{"least_single": `"100.1 %"`}, key: "least_single", kind: finding.ErrImpossible, says: "at most 100 %"},
	{table: "acceptance", change: fields{"least_mean": `"0 %"`}, key: "least_mean", kind: finding.ErrImpossible},
	{table: "acceptance", change: fields{"below": `"-1 %"`}, key: "below", kind: finding.ErrImpossible},
	{table: "acceptance", change: fields{"below": ""}, key: "below", kind: finding.ErrMissing, says: "fewer"},
	{table: "acceptance", change: fields{"most_single": `"99.9 %"`}, key: "most_single", kind: finding.ErrImpossible, says: "100 % or more"},
	{table: "acceptance", change: fields{"most_mean": `"99.9 %"`}, key: "most_mean", kind: finding.ErrImpossible},
	{table: "acceptance", change: fields{"split": `"0 m2"`}, key: "split", kind: finding.ErrImpossible},
	{table: "instrument", change: fields{"tells": ""}, key: "tells", kind: finding.ErrMissing},
	{table: "instrument", change: fields{"tells": `"damp"`}, key: "tells", kind: finding.ErrValue, says: "dry, wet, mean"},
	{table: "instrument", change: fields{"cannot": ""}, key: "cannot", kind: finding.ErrMissing},
	{table: "instrument", change: fields{"reads": ""}, key: "reads", kind: finding.ErrMissing, says: "any = true"},
	{table: "instrument", change: fields{"any": `true`}, key: "reads", kind: finding.ErrMissing, says: "no list"},
	{table: "instrument", change: fields{"reads": `["stele"]`}, key: "reads", kind: finding.ErrUnknown, says: `read "stele"`},
	{table: "instrument", change: fields{"caution": `["steel"]`, "caution_says": `"beware"`}, key: "reads", kind: finding.ErrDuplicate, says: "once"},
	{table: "instrument", change: fields{"reads": "", "caution": `["steel"]`}, key: "caution_says", kind: finding.ErrMissing},
	{table: "instrument", change: fields{"reads": "", "ask": `["steel"]`}, key: "ask_says", kind: finding.ErrMissing},
	{table: "observation", change: fields{"what": ""}, key: "what", kind: finding.ErrMissing},
	{table: "observation", change: fields{"why": ""}, key: "why", kind: finding.ErrMissing},
	{table: "observation", change: fields{"do": ""}, key: "do", kind: finding.ErrMissing, says: "what to do"},
	{table: "observation", change: fields{"urgency": ""}, key: "urgency", kind: finding.ErrMissing, says: "this haul-out"},
	{table: "observation", change: fields{"urgency": `"soon"`, "do": ""}, key: "urgency", kind: finding.ErrValue, says: "before launch"},
	{table: "observation", change: fields{"over": `"-1 %"`}, key: "over", kind: finding.ErrImpossible},
	{table: "observation", change: fields{"over": `"100 %"`}, key: "over", kind: finding.ErrImpossible, says: "less than 100 %"},
	{table: "observation", change: fields{"size": `"0 mm"`}, key: "size", kind: finding.ErrImpossible},
	{table: "observation", change: fields{"size": "", "under": `"0 mm"`}, key: "under", kind: finding.ErrImpossible},
	{table: "observation", change: fields{"under": `"3 mm"`}, key: "under", kind: finding.ErrImpossible, says: "not both"},
	{table: "observation", change: fields{"on": `["stele"]`}, key: "on", kind: finding.ErrUnknown},
	{table: "observation", change: fields{"from": `["none such"]`}, key: "from", kind: finding.ErrUnknown},
	{table: "observation", change: fields{"from": `["mild", "mild"]`}, key: "from", kind: finding.ErrDuplicate, says: "the mildest"},
	{table: "observation", change: fields{"cautions": `["none such"]`}, key: "cautions", kind: finding.ErrUnknown},
	{table: "observation", change: fields{"state": `"none such"`}, key: "state", kind: finding.ErrUnknown},
}

func TestEveryMistakeIsTold(t *testing.T) {
	for i, c := range mistakes {
		text, path := c.text()
		if c.kind == finding.ErrSyntax {
			path = ""
		}
		_, err := tables.Load(folder(map[string]string{"sub/broken.toml": text}))
		fs := faultsOf(t, err)
		if len(fs) != 1 {
			t.Errorf("mistake %d, %s %v: %d faults, want 1:\n%v", i, c.table, c.change, len(fs), fs)
			continue
		}
		f := fs[0]
		if f.File != "sub/broken.toml" || f.Key != path || !errors.Is(err, c.kind) || !strings.Contains(f.Error(), c.says) || f.Want == "" {
			t.Errorf("mistake %d, %s %v:\n%v\nwant in %s of kind %q with %q", i, c.table, c.change, f, path, c.kind, c.says)
		}
	}
}

// The mistakes would prove little if the row that they start from were refused too.
func TestRowsBeforeTheMistake(t *testing.T) {
	for table, f := range good() {
		if table == "step" {
			f["key"] = `"abrade"`
		} else {
			f["key"] = `"another"`
		}
		if table == "price" {
			f["by"] = `"yard"` // a second price of the same thing is a mistake of its own
		}
		if _, err := tables.Load(folder(map[string]string{"another.toml": row(table, f)})); err != nil {
			t.Errorf("%s:\n%v", table, err)
		}
	}
}

func TestMistakesOfFiles(t *testing.T) {
	hard := good()["coating"]
	for name, c := range map[string]struct {
		text, key string
		kind      error
		says      string
	}{
		"unknown table":        {"[[coatings]]\nkey = \"x\"\n", "coatings", finding.ErrUnknownKey, "did you mean coating?"},
		"unknown key at root":  {"colour_of_the_day = \"red\"\n", "colour_of_the_day", finding.ErrUnknownKey, "did you mean colour?"},
		"one section":          {"[coating]\nkey = \"x\"\n", "coating", finding.ErrValue, "[[coating]]"},
		"a list of texts":      {"coating = [\"hard\"]\n", "coating", finding.ErrValue, "[[coating]]"},
		"not TOML":             {"# a\nx = \n", "", finding.ErrSyntax, "line 2"},
		"key of another file":  {row("coating", hard), "coating[hard]", finding.ErrDuplicate, "also in good.toml"},
		"key twice in a file":  {row("zone", fields{"key": `"a"`, "basis": `"derived"`, "wear": `1`}) + row("zone", fields{"key": `"a"`, "basis": `"derived"`, "wear": `1`}), "zone[a]", finding.ErrDuplicate, "also in next.toml"},
		"key in another table": {row("zone", fields{"key": `"hard"`, "basis": `"derived"`, "wear": `1`}), "", nil, ""},
		"nothing":              {"", "", nil, ""},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := tables.Load(folder(map[string]string{"next.toml": c.text, "notes.txt": "[[no table"}))
			fs := faultsOf(t, err)
			if c.kind == nil {
				if err != nil {
					t.Error(err)
				}
				return
			}
			if len(fs) != 1 || fs[0].File != "next.toml" || fs[0].Key != c.key || !errors.Is(err, c.kind) || !strings.Contains(err.Error(), c.says) {
				t.Errorf("faults:\n%v\nwant one in next.toml, %q, of kind %q with %q", fs, c.key, c.kind, c.says)
			}
		})
	}
}

// Places that lie in each other are told one by one, and the search for the world ends.
func TestPlacesInACircle(t *testing.T) {
	var text strings.Builder
	for _, p := range []string{"a-b", "b-c", "c-a", "d-a"} {
		text.WriteString(row("place", fields{"key": `"` + p[:1] + `"`, "basis": `"derived"`, "within": `"` + p[2:] + `"`}))
	}
	_, err := tables.Load(folder(map[string]string{"circle.toml": text.String()}))
	fs := faultsOf(t, err)
	var keys []string
	for _, f := range fs {
		keys = append(keys, f.Key)
	}
	if want := []string{"place[a].within", "place[b].within", "place[c].within"}; !slices.Equal(keys, want) || !errors.Is(err, finding.ErrImpossible) {
		t.Errorf("faults:\n%v\nwant %q", fs, want)
	}
}

func TestFolderThatIsNotThere(t *testing.T) {
	sub, err := fstest.MapFS{}.Sub("nowhere")
	if err != nil {
		t.Fatal(err)
	}
	_, err = tables.Load(sub)
	if !errors.Is(err, finding.ErrSyntax) {
		t.Errorf("a folder that is not there gives %v", err)
	}
}

// Fifty mistakes in several files are one error of fifty lines, sorted by file and key.
func TestFiftyMistakesAreFiftyLines(t *testing.T) {
	files := map[string]string{}
	for i := range 50 {
		name := fmt.Sprintf("file-%d.toml", i%7)
		files[name] += row("zone", fields{"key": fmt.Sprintf("%q", fmt.Sprintf("zone-%02d", i)), "basis": `"derived"`, "wear": `99`})
	}
	_, err := tables.Load(folder(files))
	fs := faultsOf(t, err)
	lines := strings.Split(err.Error(), "\n")
	if len(fs) != 50 || len(lines) != 50 {
		t.Fatalf("%d faults in %d lines, want 50", len(fs), len(lines))
	}
	if !slices.IsSorted(lines) {
		t.Errorf("not sorted:\n%s", err)
	}
	for i, l := range lines {
		if !strings.HasPrefix(l, fs[i].File+": zone[zone-") || !strings.Contains(l, "read 99") {
			t.Errorf("line %d: %s", i, l)
		}
	}
	for range 5 {
		_, again := tables.Load(folder(files))
		if again == nil || again.Error() != err.Error() {
			t.Fatal("the same folder gives another error the second time")
		}
	}
}
