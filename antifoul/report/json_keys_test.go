package report_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// allJobs are the jobs of every example boat, and of a few made up so that rare keys come in.
func allJobs(t *testing.T) map[string]*antifoul.Job {
	t.Helper()
	out := map[string]*antifoul.Job{}
	files, err := filepath.Glob("../../examples/*/*.toml")
	if err != nil || len(files) < 8 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	files = append(files, "../../examples/bottomjob/testdata/nothing.toml")
	for _, f := range files {
		if data, err := os.ReadFile(f); err != nil || !bytes.Contains(data, []byte("[boat]")) {
			continue // own tables
		}
		boat, err := antifoul.ReadBoat(os.DirFS(filepath.Dir(f)), filepath.Base(f))
		if err != nil {
			t.Fatal(err)
		}
		if out[f], err = antifoul.Plan(tables.Default(), boat); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// rareJobs are boats made up for keys that no example has: own tables, a record, a tin with kits and a store, comb and litres, lines, wishes.
func rareJobs(t *testing.T) map[string]*antifoul.Job {
	t.Helper()
	own := fstest.MapFS{"own.toml": {Data: []byte(`
[[can]]
key = "our-5"
basis = "own table"
source = "the shop's list"
size = "5 L"
coating = "ablative-cuprous-multi"
price = "150.00 EUR"
[[coating]]
key = "ablative-cuprous-multi"
basis = "own table"
source = "a data sheet"
solids = "54 %"
[[past_result]]
key = "pontoon"
basis = "own table"
source = "the yard's log"
coating = "ablative-cuprous-multi"
place = "GB"
outcome = "held"
months = "14 months"
boats = 6
[[material]]
key = "aluminium"
basis = "own table"
source = "a letter of the builder"
override = true
reason = "a thicker barrier is asked for"
barrier_film = ["400 um", "450 um", "500 um"]
`)}}
	yard, err := tables.Default().With(os.DirFS("../../examples/yard")) // its prices
	if err != nil {
		t.Fatal(err)
	}
	book, err := yard.With(own)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]*antifoul.Job{}
	for name, text := range map[string]string{"rare": rare, "rare-steel": rareSteel, "rare-wet": rareWet, "rare-quick": rareQuick} {
		boat, err := antifoul.ReadBoatWith(book, fstest.MapFS{"boat.toml": {Data: []byte(text)}, "offsets.csv": {Data: []byte(rareOffsets)}, "weather.csv": {Data: []byte(rareWeather)}, "gauge.csv": {Data: []byte("zone,reading [um]\nflat,310\nflat,330\n")}}, "boat.toml")
		if err != nil {
			t.Fatal(err)
		}
		if out[name], err = antifoul.Plan(book, boat); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

const (
	rareOffsets = "at [m],half_breadth [m],height [m]\n0,0,0.5\n0,0,0.6\n4.5,0,0\n4.5,1.4,0.6\n9,0,0.4\n9,0.6,0.6\n"
	rareWeather = "date,low [degC],high [degC]\n2027-04-03,1,16\n2027-04-04,4,14\n2027-04-05,4,14\n2027-04-06,4,14\n"
	rare        = `
[boat]
name = "Rare"
date = 2027-04-03
[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"
mass = "4 t"
overall = "9.9 m"
waterline_beam = "2.8 m"
canoe_draft = "0.5 m"
midship = "70 %"
hulls = 1
boot_top = "100 mm"
offsets = "offsets.csv"
[[hull.piece]]
what = "keel"
count = 1
length = "1.2 m"
height = "1 m"
[[hull.piece]]
what = "thruster-opening"
width = "0.3 m"
[[part]]
name = "hull"
zone = "hull"
material = "grp"
laminate = "dry"
barrier = false
[[part.found]]
coating = "ablative-cuprous-multi"
colour = "red-oxide"
film = ["80 um", "100 um", "120 um"]
state = "sound"
age = "300 d"
[part.readings]
flaking = "1 %"
adhesion = "4A"
alligatored = "0 %"
film = "300 um"
blisters = "1"
rust = "Ri 0"
moisture = "steady"
[[part]]
name = "rudder"
zone = "rudder"
material = "grp"
area = "1.2 m2"
[[part.found]]
coating = "bare"
state = "sound"
[use]
under_way = "120 h"
speed = "6 kn"
haul_out_every = "24 months"
growth = "medium"
water = "salt"
kept = "afloat"
ice = false
[[berth]]
place = "GB"
role = "kept"
[work]
hands = 2
launch = 2027-06-20
days = ["Sat", "Sun"]
free = [2027-05-06]
taken = [2027-05-01]
set_up = "1 h"
reserve = "3 d"
slings = false
roof = false
shift = 2027-06-10
forecast = "weather.csv"
[[work.other]]
name = "fit a log"
hours = "2 h"
on = 2027-04-17
after_paint = false
[paint]
by = "roller"
[[record]]
coating = "ablative-cuprous-multi"
launched = 2025-04-01
litres = "9 L"
coats = 2
[[record.look]]
on = 2025-10-01
zone = "edges"
signal = false
laid = "210 um"
[[record.look]]
on = 2026-03-01
zone = "flat"
film = "95 um"
readings = 4
[[tin]]
coating = "ablative-cuprous-multi"
[[tin.store]]
size = "2.5 L"
count = 1
colour = "black"
batch = "S1"
[[comb]]
part = "hull"
zone = "flat"
coating = "ablative-cuprous-multi"
readings = ["60 um to 75 um", "40 um"]
thinner = "5 %"
asked = "60 um"
[[used]]
part = "hull"
zone = "flat"
coating = "ablative-cuprous-multi"
coats = 2
litres = "6 L"
asked = "50 um"
[[timed]]
part = "hull"
work = "abrade"
area = "0.5 m2"
took = "9 min"
goes = "hard"
[wishes]
repaint_after = "24 months"
reckon_over = "10 years"
biocide = "less"
racing_finish = true
top_colour = "black"
signal_colour = "red-oxide"
signal_type = "hard-copper-free"
coating = "ablative-cuprous-multi"
`
	rareSteel = `
[boat]
date = 2027-04-03
[hull]
kind = "working-boat"
length = "12 m"
beam = "4 m"
draft = "1.6 m"
measured = { flat = "38 m2", waterline = "5 m2" }
stand_pairs = 4
keel_blocks = 3
chains = 2
[[part]]
name = "hull"
zone = "hull"
material = "steel"
barrier = true
potential = "-700 mV"
electrode = "silver-chloride"
[[part.found]]
coating = "bare"
state = "sound"
[[part]]
name = "propeller"
zone = "propeller"
material = "bronze"
area = "0.3 m2"
[use]
under_way = "600 h"
speed = "2 kn"
haul_out_every = "12 months"
growth = "heavy"
water = "salt"
water_temperature = "15 degC"
[[berth]]
place = "GB"
role = "kept"
[work]
hands = 1
done_by = "owner"
launch = 2027-07-30
days = ["Mon", "Tue", "Wed", "Thu", "Fri"]
from = "08:00"
until = "17:00"
[paint]
by = "roller"
profile = "iso-8503-1-grit-coarse"
temperature = "15 degC"
[[tin]]
coating = "epoxy-barrier"
ratio = "3:1"
density_base = "1.4 kg/L"
density_hardener = "1 kg/L"
pot_life = "45 min"
pot_life_at = "20 degC"
[[tin.kit]]
base = "3 L"
hardener = "1 L"
price = "140.00 EUR"
batch = "K1"
[[gauge]]
part = "hull"
instrument = "magnetic"
standard = "iso-19840"
nominal = "320 um"
most = "640 um"
profile = "iso-19840-fine"
coating = "epoxy-barrier"
file = "gauge.csv"
`
	rareWet = `
[boat]
date = 2027-04-03
[[seen]]
part = "hull"
state = "sound"
known = "reported"
note = "as the owner says"
[[seen.mark]]
what = "flaking"
[[moisture]]
part = "hull"
instrument = "capacitance-meter"
meter = "a hand meter"
scale = "0 to 30"
reading = [14, 16, 19]
photo = "7"
[hull]
kind = "open-boat"
length = "3 m"
beam = "1.4 m"
draft = "0.3 m"
[[part]]
name = "hull"
zone = "hull"
material = "grp"
laminate = "wet"
barrier = true
seen = ["thumb-colours", "thumb-clean", "log-ablative", "log-hard", "rubbery"]
[[part.found]]
coating = "ablative-old"
state = "sound"
[use]
speed = "0.1 kn"
growth = "medium"
water = "salt"
[[berth]]
place = "GB"
role = "kept"
[work]
hands = 2
days = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
forecast = "weather.csv"
[[record]]
coating = "ablative-cuprous-multi"
launched = 2025-04-01
film = "150 um"
[[record.look]]
on = 2026-03-01
zone = "flat"
film = "95 um"
[wishes]
coating = "ablative-cuprous-multi"
`
	rareQuick = `
[boat]
date = 2027-04-03
[hull]
kind = "open-boat"
length = "3 m"
beam = "1.4 m"
draft = "0.3 m"
stand_pairs = 0
[[part]]
name = "hull"
zone = "hull"
material = "grp"
[[part.found]]
coating = "hard-cuprous"
colour = "black"
state = "sound"
[use]
growth = "medium"
water = "salt"
[[berth]]
place = "GB"
role = "kept"
[work]
hands = 4
days = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
from = "07:00"
until = "19:00"
forecast = "weather.csv"
[wishes]
coating = "hard-cuprous"
`
)

// decoded is the JSON of a job, as any reader sees it.
func decoded(t *testing.T, j *antifoul.Job, units quantity.System) map[string]any {
	t.Helper()
	var out map[string]any
	if err := json.Unmarshal([]byte(write(t, j, report.Options{Format: report.JSON, Units: units})), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// walk notes each key of a document under the name of its schema's definition, and tells keys that the schema has not and values that are null.
func walk(t *testing.T, root, schema map[string]any, def string, v any, seen map[string]bool) {
	t.Helper()
	if ref, ok := schema["$ref"].(string); ok {
		def = strings.TrimPrefix(ref, "#/$defs/")
		schema = root["$defs"].(map[string]any)[def].(map[string]any)
	}
	switch v := v.(type) {
	case nil:
		t.Errorf("%s holds a null", def)
	case []any:
		for _, e := range v {
			walk(t, root, schema["items"].(map[string]any), def, e, seen)
		}
	case map[string]any:
		properties, _ := schema["properties"].(map[string]any)
		if schema["anyOf"] != nil {
			return // a value, whose ranges are plain
		}
		for k, e := range v {
			one, ok := properties[k].(map[string]any)
			if !ok {
				t.Errorf("%s.%s is not in the schema", def, k)
				continue
			}
			seen[def+"."+k] = true
			if word, is := e.(string); is && strings.HasPrefix(word, "invalid ") {
				t.Errorf("%s.%s is %q", def, k, word)
			}
			walk(t, root, one, def, e, seen)
		}
	}
}

// never are keys that none of the boats has, and why.
var never = map[string]string{
	"biocide.not_reckoned": "only an own type without a density is not reckoned",
	"mass_range.typical":   "of paint that comes off only the two ends are reckoned",
}

// documents is a folder for the documents of all boats, so that .ci/schemas can hold them against the schema.
var documents = flag.String("documents", "", "write the JSON of every boat into this folder")

// Each key of a document stands in the schema, and each key of the schema in the document of some boat.
func TestJSONKeysAreThoseOfTheSchema(t *testing.T) {
	var schema map[string]any
	if err := json.Unmarshal([]byte(report.JobSchema()), &schema); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	jobs := allJobs(t)
	maps.Copy(jobs, rareJobs(t))
	for name, j := range jobs {
		walk(t, schema, schema, "", decoded(t, j, quantity.Metric), seen)
		if *documents == "" {
			continue
		}
		file := filepath.Join(*documents, filepath.Base(name)+".json")
		if err := os.WriteFile(file, []byte(write(t, j, report.Options{Format: report.JSON})), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	have := func(def string, s map[string]any) {
		properties, _ := s["properties"].(map[string]any)
		for k := range properties {
			key := def + "." + k
			if why := never[key]; seen[key] == (why != "") {
				t.Errorf("%s: in some document %t, but it is said: %q", key, seen[key], why)
			}
		}
	}
	have("", schema)
	defs := schema["$defs"].(map[string]any)
	for _, def := range slices.Sorted(maps.Keys(defs)) {
		if def != "value" {
			have(def, defs[def].(map[string]any))
		}
	}
}

// The boat in a document has the keys of the boat file: those that differ are listed, and why.
func TestBoatKeysAreThoseOfTheBoatFile(t *testing.T) {
	var job, file map[string]any
	if err := json.Unmarshal([]byte(report.JobSchema()), &job); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(antifoul.BoatSchema()), &file); err != nil {
		t.Fatal(err)
	}
	differ := map[string]string{
		"boat.boat":               "its name stands in the boat, its date is asked_on",
		"boat.name":               "as above",
		"boat.hull.girths":        "the stations of the sheet",
		"boat.hull.offsets":       "likewise",
		"boat.hull.measured":      "a list, since zones are rows of the tables",
		"boat.work.forecast":      "how far the sheet reaches",
		"boat.part.found.coating": "with its name",
		"boat.gauge.readings":     "how many the sheet has",
		"boat.part.readings.film": "a range",
		"boat.part.found.film":    "a range",
		"boat.record.film":        "a range",
		"boat.record.look.laid":   "a range",
		"boat.moisture.reading":   "a range",
		"boat.job.coat.film":      "a range",
	}
	used := map[string]bool{}
	var compare func(path string, a, b map[string]any)
	compare = func(path string, a, b map[string]any) {
		if ref, ok := a["$ref"].(string); ok {
			a = job["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
		}
		if items, ok := a["items"].(map[string]any); ok && b["items"] != nil {
			compare(path, items, b["items"].(map[string]any))
			return
		}
		mine, _ := a["properties"].(map[string]any)
		theirs, _ := b["properties"].(map[string]any)
		keys := maps.Clone(mine)
		if keys == nil {
			keys = map[string]any{}
		}
		maps.Copy(keys, theirs)
		for k := range keys {
			key := path + "." + k
			one, okMine := mine[k].(map[string]any)
			other, okTheirs := theirs[k].(map[string]any)
			if differ[key] != "" {
				used[key] = true
				continue
			}
			if !okMine || !okTheirs {
				t.Errorf("%s: in the document %t, in the boat file %t", key, okMine, okTheirs)
				continue
			}
			compare(key, one, other)
		}
	}
	compare("boat", job["$defs"].(map[string]any)["boat"].(map[string]any), file)
	for key := range differ {
		if !used[key] {
			t.Errorf("%s is no key", key)
		}
	}
}
