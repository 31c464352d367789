package antifoul_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

var update = flag.Bool("update", false, "write the schema of the boat file again")

// object is a JSON object that keeps its order.
type object []member

type member struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var out bytes.Buffer
	out.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			out.WriteByte(',')
		}
		for k, v := range []any{m.key, m.value} {
			text, err := json.Marshal(v)
			if err != nil {
				return nil, err
			}
			if k > 0 {
				out.WriteByte(':')
			}
			out.Write(text)
		}
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}

// Kinds of values of a boat file, as schemas.
var (
	aText   = object{{"type", "string"}, {"pattern", `\S`}} // the key of a row is one too: own tables add rows
	aYesNo  = object{{"type", "boolean"}}
	aDate   = object{{"type", "string"}, {"format", "date"}, {"pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}}
	aClock  = object{{"type", "string"}, {"pattern", "^([01][0-9]|2[0-3]):[0-5][0-9]$|^24:00$"}}
	aMoney  = object{{"type", "string"}, {"pattern", "^ *" + numberPattern + " *[A-Z]{3} *$"}}
	aRatio  = object{{"type", "string"}, {"pattern", "^ *" + numberPattern + " *: *" + numberPattern + " *$"}}
	aTooth  = object{{"type", "string"}, {"pattern", "^" + amountOf[quantity.Film]() + "( to " + amountOf[quantity.Film]() + ")?$"}}
	aDates  = object{{"type", "array"}, {"items", aDate}, {"maxItems", 400}}
	aTexts  = listOf(aText)
	aLength = amount[quantity.Length]()
	aArea   = amount[quantity.Area]()
	aFilm   = amount[quantity.Film]()
	aFilms  = object{{"anyOf", []object{aFilm, {{"type", "array"}, {"items", aFilm}, {"minItems", 3}, {"maxItems", 3}}}}}
	aVolume = amount[quantity.Volume]()
	aShare  = amount[quantity.Share]()
	aHours  = amount[quantity.Duration]()
	aMonths = amount[quantity.Months]()
	aDegree = amount[quantity.Temperature]()
	aWeight = amount[quantity.Density]()
)

const numberPattern = "[+-]?[0-9]+([.][0-9]+)?"

// amountOf is the pattern of an amount: a number and a unit as a file has it, or as it is printed.
func amountOf[Q quantity.Quantity]() string {
	var spelt []string
	for _, u := range quantity.Units[Q]() {
		tried := []string{u, strings.TrimSuffix(u, "s"), strings.ReplaceAll(u, "2", "²"), strings.Replace(u, "um", "µm", 1), strings.Replace(u, "um", "μm", 1), strings.Replace(u, "deg", "°", 1)}
		for _, s := range tried {
			if _, err := quantity.Parse[Q]("1 " + s); err == nil && !slices.Contains(spelt, s) {
				spelt = append(spelt, s)
			}
		}
	}
	return " *" + numberPattern + " *(" + strings.Join(spelt, "|") + ") *"
}

func amount[Q quantity.Quantity]() object {
	return object{{"type", "string"}, {"pattern", "^" + amountOf[Q]() + "$"}}
}

// listOf is a list, or one of its values alone.
func listOf(one object) object {
	return object{{"anyOf", []object{one, {{"type", "array"}, {"items", one}}}}}
}

func whole(low, high int) object {
	return object{{"type", "integer"}, {"minimum", low}, {"maximum", high}}
}

func words(taken ...string) object { return object{{"enum", taken}} }

// section is a section of a boat file: its keys in the order of the README, and which of them want another beside them.
type section struct {
	path  string
	many  int // sections of the name that are taken; 0: one, without [[ ]]
	says  string
	wants map[string][]string
	keys  object
}

const sectionsTaken = 100

var (
	aNumber  = object{{"type", "number"}, {"minimum", 0}, {"maximum", 1000000}}
	aNumbers = object{{"anyOf", []object{aNumber, {{"type", "array"}, {"items", aNumber}, {"minItems", 3}, {"maxItems", 3}}}}}
	aMark    = object{{"what", aText}, {"grade", aTexts}, {"share", aShare}, {"size", aLength}, {"known", words(survey.Words()...)}, {"photo", aText}, {"note", aText}}
)

// boatFile is every section of a boat file. TestBoatSchemaKeys holds its keys against those that ReadBoat reads.
var boatFile = []section{
	{path: "boat", says: "who she is, and the day of the question", keys: object{{"name", aText}, {"date", aDate}}},
	{path: "hull", says: "the size of the bottom", keys: object{
		{"kind", aText},
		{"length", aLength},
		{"overall", aLength},
		{"beam", aLength},
		{"draft", aLength},
		{"mass", amount[quantity.Mass]()},
		{"hulls", whole(1, 3)},
		{"waterline_beam", aLength},
		{"canoe_draft", aLength},
		{"midship", aShare},
		{"boot_top", aLength},
		{"girths", aText},
		{"offsets", aText},
		{"measured", object{{"type", "object"}, {"additionalProperties", aArea}}},
		{"stand_pairs", whole(0, 100)},
		{"keel_blocks", whole(0, 100)},
		{"chains", whole(0, 100)},
	}},
	{path: "hull.piece", many: -1, says: "a keel, a rudder, a tunnel, an opening", keys: object{{"what", aText}, {"count", whole(1, 100)}, {"length", aLength}, {"height", aLength}, {"width", aLength}}},
	{path: "part", many: -1, says: "a part of her; exactly one has the zone hull", wants: map[string][]string{"potential": {"electrode"}}, keys: object{
		{"name", aText},
		{"zone", aText},
		{"material", aText},
		{"area", aArea},
		{"barrier", aYesNo},
		{"laminate", words("dry", "wet")},
		{"seen", aTexts},
		{"potential", amount[quantity.Potential]()},
		{"electrode", aText},
	}},
	{path: "part.readings", says: "what was read of the old film of the part", keys: object{
		{"flaking", aShare},
		{"adhesion", words("0A", "1A", "2A", "3A", "4A", "5A")},
		{"alligatored", aShare},
		{"film", aFilms},
		{"blisters", words("0", "1", "2", "3", "4", "5")},
		{"rust", words("Ri 0", "Ri 1", "Ri 2", "Ri 3", "Ri 4", "Ri 5")},
		{"moisture", words("falling", "steady", "rising")},
	}},
	{path: "part.found", many: -1, says: "a film on the part, the lowest first", keys: object{{"coating", aText}, {"colour", aText}, {"film", aFilms}, {"state", aText}, {"age", aHours}, {"known_by", aText}}},
	{path: "use", says: "how she is used", wants: map[string][]string{"cleaned_every": {"cleaning"}}, keys: object{
		{"under_way", aHours},
		{"speed", amount[quantity.Speed]()},
		{"longest_idle", aHours},
		{"haul_out_every", aMonths},
		{"ashore_each_year", aMonths},
		{"relaunched_unpainted", aYesNo},
		{"growth", words(tables.GradeWords()[1:]...)},
		{"water", words(tables.Waters()...)},
		{"water_temperature", aDegree},
		{"cleaning", words(wear.CleaningWords()...)},
		{"cleaned_every", aHours},
		{"kept", words("afloat", "trailer", "lift")},
		{"ice", aYesNo},
		{"dries_on", words("none", "soft", "firm")},
	}},
	{path: "berth", many: -1, says: "a place in her life", keys: object{{"place", aText}, {"role", words(tables.BerthRoles()...)}, {"water", words(tables.Waters()...)}}},
	{path: "work", says: "who works on her and when", wants: map[string][]string{"from": {"until"}, "until": {"from"}}, keys: object{
		{"hands", whole(1, 100)},
		{"done_by", words(tables.ByOwner, tables.ByYard)},
		{"launch", aDate},
		{"launch_open", aYesNo},
		{"days", listOf(words("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"))},
		{"from", aClock},
		{"until", aClock},
		{"free", aDates},
		{"taken", aDates},
		{"set_up", aHours},
		{"reserve", aHours},
		{"shift", aDate},
		{"slings", aYesNo},
		{"roof", aYesNo},
		{"forecast", aText},
	}},
	{path: "work.other", many: sectionsTaken, says: "other work while she is dry", keys: object{{"name", aText}, {"hours", aHours}, {"on", aDate}, {"after_paint", aYesNo}}},
	{path: "paint", says: "how the paint goes on", keys: object{{"by", aText}, {"thinner", aShare}, {"reserve", aShare}, {"cans", listOf(aVolume)}, {"profile", aText}, {"temperature", aDegree}}},
	{path: "record", many: sectionsTaken, says: "what was seen of an earlier film of hers", wants: map[string][]string{"litres": {"coats"}}, keys: object{
		{"coating", aText}, {"launched", aDate}, {"film", aFilms}, {"litres", aVolume}, {"coats", whole(1, 50)},
	}},
	{path: "record.look", many: -1, says: "one look at that film", keys: object{{"on", aDate}, {"zone", aText}, {"signal", aYesNo}, {"film", aFilm}, {"readings", whole(1, 100000)}, {"laid", aFilms}}},
	{path: "tin", many: sectionsTaken, says: "what the label and the store say of one coating", wants: map[string][]string{"pot_life": {"pot_life_at"}}, keys: object{
		{"coating", aText}, {"ratio", aRatio}, {"density_base", aWeight}, {"density_hardener", aWeight}, {"pot_life", aHours}, {"pot_life_at", aDegree},
	}},
	{path: "tin.kit", many: sectionsTaken, says: "a kit on sale", keys: object{{"base", aVolume}, {"hardener", aVolume}, {"price", aMoney}, {"batch", aText}}},
	{path: "tin.store", many: 1000, says: "cans at hand", keys: object{{"size", aVolume}, {"count", whole(1, 1000)}, {"colour", aText}, {"batch", aText}}},
	{path: "wishes", says: "what the owner would like", keys: object{
		{"repaint_after", aMonths}, {"reckon_over", aMonths}, {"biocide", words(antifoul.WishLess, antifoul.WishNone)}, {"racing_finish", aYesNo}, {"top_colour", aText}, {"signal_colour", aText}, {"signal_type", aText}, {"coating", aText},
	}},
	{path: "timed", many: sectionsTaken, says: "a patch that was worked on by the clock, by one hand", keys: object{
		{"part", aText}, {"work", aText}, {"area", aArea}, {"took", aHours}, {"goes", words(antifoul.GoesEasy, antifoul.GoesHard)},
	}},
	{path: "gauge", many: sectionsTaken, says: "a survey of a part by a gauge of dry film", keys: object{
		{"part", aText}, {"instrument", aText}, {"standard", aText}, {"nominal", aFilm}, {"most", aFilm}, {"profile", aText}, {"coating", aText}, {"file", aText},
	}},
	{path: "comb", many: sectionsTaken, says: "a fresh coat that a wet-film comb read", keys: object{
		{"part", aText}, {"zone", aText}, {"coating", aText}, {"readings", listOf(aTooth)}, {"thinner", aShare}, {"asked", aFilm},
	}},
	{path: "used", many: sectionsTaken, says: "a paint whose litres were noted", keys: object{{"part", aText}, {"zone", aText}, {"coating", aText}, {"coats", whole(1, 50)}, {"litres", aVolume}, {"asked", aFilm}}},
	{path: "survey", says: "how she was seen ashore", keys: object{
		{"by", aText}, {"on", aDate}, {"ashore_since", aDate}, {"since_wash", aHours}, {"visible", aShare}, {"hidden", aTexts}, {"not_inspected", aTexts}, {"light", aText}, {"weather", aText},
	}},
	{path: "seen", many: sectionsTaken, says: "what one place of a part showed", keys: object{
		{"part", aText}, {"zone", aText}, {"where", aText}, {"coating", aText}, {"colours", aTexts}, {"state", aText}, {"known", words(survey.Words()...)}, {"photo", aText}, {"note", aText},
	}},
	{path: "seen.mark", many: sectionsTaken, says: "one thing that was seen there", keys: aMark},
	{path: "moisture", many: sectionsTaken, says: "a reading of a moisture meter", keys: object{
		{"part", aText}, {"zone", aText}, {"instrument", aText}, {"meter", aText}, {"scale", aText}, {"reading", aNumbers}, {"dry", aNumber}, {"spots", whole(1, 10000)}, {"photo", aText},
	}},
	{path: "fitting", many: sectionsTaken, says: "an anode, a bond, a leg, a seal, a transducer", keys: object{{"name", aText}, {"part", aText}, {"photo", aText}, {"note", aText}}},
	{path: "fitting.mark", many: sectionsTaken, says: "one thing that was seen on it", keys: aMark},
	{path: "passport", says: "the form of a boat file that was made from a job log", keys: object{{"version", whole(1, antifoul.PassportVersion)}}},
	{path: "job", many: sectionsTaken, says: "an earlier job as its log told it", keys: object{{"log", aText}, {"begun", aDate}, {"ended", aDate}, {"launched", aDate}, {"hauled", aDate}}},
	{path: "job.coat", many: 1000, says: "a layer that the job laid", keys: object{
		{"part", aText}, {"layer", aText}, {"coating", aText}, {"colour", aText}, {"coats", whole(1, 50)}, {"film", aFilms}, {"litres", aVolume}, {"batch", aTexts},
	}},
}

// readmeKey is what the README says of a key.
type readmeKey struct{ values, without string }

// readmeKeys reads the README's tables of keys, without their markup.
func readmeKeys(t *testing.T) map[string]readmeKey {
	t.Helper()
	readme, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	plain := func(s string) string {
		return strings.ReplaceAll(strings.TrimSpace(regexp.MustCompile(`\[([^]]*)\]\(#[^)]*\)`).ReplaceAllString(s, "$1")), "`", "")
	}
	out := map[string]readmeKey{}
	for _, m := range regexp.MustCompile("(?m)^\\| (`[a-z]+\\.[^|]*`) \\|([^|]*)\\|([^|]*)\\|").FindAllStringSubmatch(string(readme), -1) {
		for _, key := range strings.Split(plain(m[1]), ", ") {
			out[key] = readmeKey{plain(m[2]), plain(m[3])}
		}
	}
	return out
}

// needed reports whether the file is refused without the key, whatever else stands in its section.
func (k readmeKey) needed() bool {
	return slices.Contains([]string{"fault", "fault in a kit", "fault in it", "fault in this section"}, k.without)
}

// boatSchemaText makes the schema of the sections, with the words of the README.
func boatSchemaText(t *testing.T) string {
	t.Helper()
	said := readmeKeys(t)
	// schema makes a section and those below it.
	var schema func(s section) object
	below := func(path string) (properties object) {
		for _, s := range boatFile {
			parent, name := "", s.path
			if i := strings.LastIndexByte(s.path, '.'); i >= 0 {
				parent, name = s.path[:i], s.path[i+1:]
			}
			if parent != path {
				continue
			}
			one := schema(s)
			if s.many != 0 {
				one = object{{"type", "array"}, {"items", one}}
				if s.many > 0 {
					one = append(one, member{"maxItems", s.many})
				}
			}
			properties = append(properties, member{name, append(one, member{"description", s.says})})
		}
		return properties
	}
	schema = func(s section) object {
		var properties object
		var required []string
		for _, k := range s.keys {
			key := s.path + "." + k.key
			row, ok := said[key]
			if !ok {
				t.Errorf("README.md has no row for %s", key)
			}
			says := row.values
			if row.without != "" && !row.needed() {
				says += ". Not given: " + row.without
			}
			properties = append(properties, member{k.key, append(slices.Clone(k.value.(object)), member{"description", says})})
			if row.needed() {
				required = append(required, k.key)
			}
		}
		out := object{{"type", "object"}, {"properties", append(properties, below(s.path)...)}}
		if len(required) > 0 {
			out = append(out, member{"required", required})
		}
		if len(s.wants) > 0 {
			out = append(out, member{"dependentRequired", s.wants})
		}
		return append(out, member{"additionalProperties", false})
	}
	out := object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", "Boat file"},
		{"description", "One boat, and the question asked about her. An amount is a number and a unit in quotes. A key that is not given is not given, which is not nought."},
		{"type", "object"},
		{"properties", below("")},
		{"required", []string{"boat", "hull", "part"}},
		{"additionalProperties", false},
	}
	var text bytes.Buffer
	enc := json.NewEncoder(&text)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(out); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

// The schema file is that of the sections above and of the README's words. With -update it is written again.
func TestBoatSchemaIsUpToDate(t *testing.T) {
	want := boatSchemaText(t)
	if *update {
		if err := os.WriteFile("schema/boat.schema.json", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(antifoul.BoatSchema(), want); diff != "" {
		t.Errorf("schema/boat.schema.json is not up to date (-file +sections and README); write it again with -update:\n%s", diff)
	}
}

// The keys of the schema are those that ReadBoat reads, as keyCases lists them, and the other way round.
func TestBoatSchemaKeys(t *testing.T) {
	var read, have []string
	for _, k := range slices.Concat(keyCases, putOnCases, surveyCases) {
		read = append(read, k.key)
	}
	read = append(read, wordsOnly...)
	read = append(read, besides...)
	for _, s := range boatFile {
		for _, k := range s.keys {
			have = append(have, s.path+"."+k.key)
		}
	}
	slices.Sort(read)
	slices.Sort(have)
	if diff := cmp.Diff(read, have); diff != "" {
		t.Errorf("keys (-read +schema):\n%s", diff)
	}
}

// schemaNode is the schema as it is embedded.
func schemaNode(t *testing.T) map[string]any {
	t.Helper()
	var out map[string]any
	if err := json.Unmarshal([]byte(antifoul.BoatSchema()), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// validate holds a value against a schema, for the keywords that the boat schema uses, and names the paths that do not keep it.
func validate(t *testing.T, schema map[string]any, path string, v any) (bad []string) {
	t.Helper()
	note := func(format string, a ...any) { bad = append(bad, path+": "+fmt.Sprintf(format, a...)) }
	number := func(x any) float64 {
		switch x := x.(type) {
		case int64:
			return float64(x)
		case float64:
			return x
		}
		return 0
	}
	for keyword, want := range schema {
		list, isList := v.([]any)
		m, isMap := v.(map[string]any)
		s, isText := v.(string)
		switch keyword {
		case "$schema", "title", "description", "format": // say, and ask nothing here
		case "type":
			_, isInt := v.(int64)
			_, isBool := v.(bool)
			_, isFloat := v.(float64)
			if is := map[string]bool{"object": isMap, "array": isList, "string": isText, "integer": isInt, "boolean": isBool, "number": isInt || isFloat}; !is[want.(string)] {
				note("%v is no %s", v, want)
			}
		case "pattern":
			if isText && !regexp.MustCompile(want.(string)).MatchString(s) {
				note("%q does not fit", s)
			}
		case "enum":
			if !slices.Contains(want.([]any), v) {
				note("%v is no word of %v", v, want)
			}
		case "minimum":
			if number(v) < number(want) {
				note("%v is too small", v)
			}
		case "maximum":
			if number(v) > number(want) {
				note("%v is too large", v)
			}
		case "minItems":
			if isList && float64(len(list)) < number(want) {
				note("%d items", len(list))
			}
		case "maxItems":
			if isList && float64(len(list)) > number(want) {
				note("%d items", len(list))
			}
		case "items":
			for _, e := range list {
				bad = append(bad, validate(t, want.(map[string]any), path, e)...)
			}
		case "anyOf":
			fits := false
			for _, one := range want.([]any) {
				fits = fits || len(validate(t, one.(map[string]any), path, v)) == 0
			}
			if !fits {
				note("%v is none of them", v)
			}
		case "required":
			for _, k := range want.([]any) {
				if _, ok := m[k.(string)]; isMap && !ok {
					bad = append(bad, under(path, k.(string))+": missing")
				}
			}
		case "dependentRequired":
			for k, others := range want.(map[string]any) {
				for _, o := range others.([]any) {
					_, has := m[k]
					if _, ok := m[o.(string)]; has && !ok {
						bad = append(bad, under(path, o.(string))+": missing beside "+k)
					}
				}
			}
		case "properties":
			for k, one := range want.(map[string]any) {
				if e, ok := m[k]; ok {
					bad = append(bad, validate(t, one.(map[string]any), under(path, k), e)...)
				}
			}
		case "additionalProperties":
			known, _ := schema["properties"].(map[string]any)
			for k, e := range m {
				if _, ok := known[k]; ok {
					continue
				}
				if one, is := want.(map[string]any); is {
					bad = append(bad, validate(t, one, under(path, k), e)...)
				} else {
					bad = append(bad, under(path, k)+": nobody reads it")
				}
			}
		default:
			t.Fatalf("the schema uses %q, which is not looked at here", keyword)
		}
	}
	slices.Sort(bad)
	return bad
}

func under(path, key string) string {
	return strings.TrimPrefix(path+"."+key, ".")
}
