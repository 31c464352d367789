package report

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var update = flag.Bool("update", false, "write the schema again")

// object is a JSON object that keeps its order.
type object []pair

type pair struct {
	key   string
	value any
}

func (o object) MarshalJSON() ([]byte, error) {
	var out bytes.Buffer
	for i, p := range o {
		key, err := json.Marshal(p.key)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(p.value)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&out, "%s%s:%s", map[bool]string{true: "{", false: ","}[i == 0], key, value)
	}
	if len(o) == 0 {
		return []byte("{}"), nil
	}
	return append(out.Bytes(), '}'), nil
}

// schemaOf makes the schema of the out types.
type schemaOf struct {
	t     *testing.T
	defs  map[string]object
	types map[string]reflect.Type // of the definitions
}

// units are the quantities of a document with their units.
var units = map[reflect.Type]struct {
	name  string
	units []string
}{
	reflect.TypeFor[quantity.Length]():      {"length", quantity.Units[quantity.Length]()},
	reflect.TypeFor[quantity.Area]():        {"area", quantity.Units[quantity.Area]()},
	reflect.TypeFor[quantity.Film]():        {"film", quantity.Units[quantity.Film]()},
	reflect.TypeFor[quantity.Volume]():      {"volume", quantity.Units[quantity.Volume]()},
	reflect.TypeFor[quantity.Spread]():      {"spreading_rate", quantity.Units[quantity.Spread]()},
	reflect.TypeFor[quantity.Share]():       {"share", quantity.Units[quantity.Share]()},
	reflect.TypeFor[quantity.Mass]():        {"mass", quantity.Units[quantity.Mass]()},
	reflect.TypeFor[quantity.Density]():     {"density", quantity.Units[quantity.Density]()},
	reflect.TypeFor[quantity.Temperature](): {"temperature", quantity.Units[quantity.Temperature]()},
	reflect.TypeFor[quantity.Speed]():       {"speed", quantity.Units[quantity.Speed]()},
	reflect.TypeFor[quantity.Duration]():    {"time", quantity.Units[quantity.Duration]()},
	reflect.TypeFor[quantity.Months]():      {"months", quantity.Units[quantity.Months]()},
	reflect.TypeFor[quantity.Potential]():   {"potential", quantity.Units[quantity.Potential]()},
}

// closed are the closed words, and what each type says.
func closed() map[reflect.Type]object {
	var verdicts, tiers, kinds []string
	for v := finding.Fine; v <= finding.Forbidden; v++ {
		verdicts = append(verdicts, v.String())
	}
	for t := antifoul.Suits; t <= antifoul.Barred; t++ {
		tiers = append(tiers, t.String())
	}
	for _, k := range append([]finding.Kind{finding.OwnTable}, finding.Kinds()...) {
		kinds = append(kinds, string(k))
	}
	roles := []string{string(compat.Found), string(compat.Undercoat), string(compat.Signal), string(compat.Working), string(compat.Extra)}
	words := func(list []string) object { return object{{"enum", list}} }
	return map[reflect.Type]object{
		reflect.TypeFor[verdictWord](): words(verdicts),
		reflect.TypeFor[tierWord]():    words(tiers),
		reflect.TypeFor[basisWord]():   words(kinds),
		reflect.TypeFor[roleWord]():    words(roles),
		reflect.TypeFor[systemWord]():  words([]string{quantity.Metric.String(), quantity.US.String()}),
		reflect.TypeFor[momentWord](): {
			{"type", "string"},
			{"pattern", `^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(Z|[+-][0-9]{2}:[0-9]{2})?$`},
			{"description", "a moment; without an offset it is by the clock of the place, as the boat file has it"},
		},
		reflect.TypeFor[outValue](): {
			{"description", "a text, a number, or a range of either"},
			{"anyOf", []object{
				{{"type", []string{"string", "number", "boolean"}}},
				{
					{"type", "object"},
					{"properties", object{{"low", numberOrText}, {"typical", numberOrText}, {"high", numberOrText}}},
				},
			}},
		},
	}
}

var numberOrText = object{{"type", []string{"string", "number"}}}

// ref is a reference to the definition of a type, which no other type may have.
func (s schemaOf) ref(t reflect.Type, name string, def object) object {
	if other := s.types[name]; other != nil && other != t {
		s.t.Errorf("%s and %s are both called %s", t, other, name)
	}
	s.types[name] = t
	s.defs[name] = def
	return object{{"$ref", "#/$defs/" + name}}
}

// of is the schema of a Go type.
func (s schemaOf) of(t reflect.Type) object {
	if u, ok := units[t]; ok {
		return s.ref(t, u.name, object{{"type", "string"}, {"pattern", amountPattern(u.units)}, {"description", "an amount in " + strings.Join(u.units, ", ")}})
	}
	if def, ok := closed()[t]; ok {
		return s.ref(t, defName(t), def)
	}
	switch t {
	case reflect.TypeFor[json.Number]():
		return object{{"type", "number"}}
	case reflect.TypeFor[quantity.Date]():
		return s.ref(t, "date", object{{"type", "string"}, {"format", "date"}, {"pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}})
	case reflect.TypeFor[quantity.Money]():
		return s.ref(t, "money", object{{"type", "string"}, {"pattern", "^-?[0-9]+([.][0-9]+)? [A-Z]{3}$"}, {"description", "an amount and a currency"}})
	}
	switch t.Kind() {
	case reflect.Pointer:
		return s.of(t.Elem())
	case reflect.Slice:
		return object{{"type", "array"}, {"items", s.of(t.Elem())}}
	case reflect.String:
		return object{{"type", "string"}}
	case reflect.Bool:
		return object{{"type", "boolean"}}
	case reflect.Int:
		return object{{"type", "integer"}, {"minimum", 0}}
	case reflect.Uint64:
		return object{{"type", "integer"}, {"minimum", 0}}
	case reflect.Float64:
		return object{{"type", "number"}}
	case reflect.Struct:
		name := defName(t)
		if strings.HasPrefix(t.Name(), "outRange[") {
			if name = units[t.Field(0).Type].name + "_range"; t.Field(0).Type == reflect.TypeFor[quantity.Money]() {
				name = "money_range"
			}
		}
		if s.types[name] == t {
			return object{{"$ref", "#/$defs/" + name}}
		}
		return s.ref(t, name, s.object(t))
	default:
		s.t.Fatalf("no schema for %s", t)
		return nil
	}
}

// object is the schema of a struct.
func (s schemaOf) object(t reflect.Type) object {
	var properties object
	var required []string
	for i := range t.NumField() {
		f := t.Field(i)
		tag := strings.Split(f.Tag.Get("json"), ",")
		one := s.of(f.Type)
		if says := f.Tag.Get("says"); says != "" {
			one = append(slices.Clone(one), pair{"description", says})
		} else if !strings.HasPrefix(t.Name(), "outNumbers") && !strings.HasPrefix(t.Name(), "outSpan") {
			s.t.Errorf("%s.%s says nothing", t.Name(), f.Name)
		}
		switch {
		case t == reflect.TypeFor[outJob]() && tag[0] == "document":
			one = append(one, pair{"const", jsonDocument})
		case t == reflect.TypeFor[outJob]() && tag[0] == "schema":
			one = append(one, pair{"const", jsonSchema})
		}
		properties = append(properties, pair{tag[0], one})
		if len(tag) == 1 {
			required = append(required, tag[0])
		}
		if !regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`).MatchString(tag[0]) {
			s.t.Errorf("%s.%s has the key %q", t.Name(), f.Name, tag[0])
		}
	}
	out := object{{"type", "object"}, {"properties", properties}}
	if len(required) > 0 {
		out = append(out, pair{"required", required})
	}
	return out
}

// defName is outPartAnswer as part_answer and tierWord as tier_word.
func defName(t reflect.Type) string {
	name := strings.TrimPrefix(t.Name(), "out")
	return strings.ToLower(regexp.MustCompile(`([a-z])([A-Z])`).ReplaceAllString(name, "${1}_$2"))
}

// amountPattern takes an amount as it is written: "24 months", and "1 month".
func amountPattern(units []string) string {
	pattern := "^-?[0-9]+([.][0-9]+)? (" + strings.Join(units, "|") + ")$"
	return strings.NewReplacer("months", "months?", "years", "years?").Replace(pattern)
}

// The schema is that of the types that are encoded. With -update it is written again; then read the difference: a key that is gone, or means
// something else, is a new schema number.
func TestJobSchemaIsOfTheTypes(t *testing.T) {
	s := schemaOf{t, map[string]object{}, map[string]reflect.Type{}}
	root := s.object(reflect.TypeFor[outJob]())
	out := object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", "Bottom job"},
		{"description", "The whole answer for one boat. What is not known or not given is absent. New keys may come at any time; the number under schema rises when a key is removed or changes its meaning, or a list of words grows."},
	}
	out = append(out, root...)
	var names []string
	for name := range s.defs {
		names = append(names, name)
	}
	slices.Sort(names)
	var defs object
	for _, name := range names {
		defs = append(defs, pair{name, s.defs[name]})
	}
	out = append(out, pair{"$defs", defs})
	var text bytes.Buffer
	enc := json.NewEncoder(&text)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(out); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("schema/job.schema.json", text.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(JobSchema(), text.String()); diff != "" {
		t.Errorf("schema/job.schema.json is not that of the types (-file +types); write it again with -update:\n%s", diff)
	}
}
