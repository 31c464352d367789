package antifoul_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/BurntSushi/toml"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// asJSON is a decoded TOML value as a schema sees it: dates are texts, sections are lists.
func asJSON(v any) any {
	switch v := v.(type) {
	case time.Time:
		return v.Format(time.DateOnly)
	case []map[string]any:
		out := make([]any, len(v))
		for i, e := range v {
			out[i] = asJSON(e)
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i, e := range v {
			out[i] = asJSON(e)
		}
		return out
	case map[string]any:
		out := map[string]any{}
		for k, e := range v {
			out[k] = asJSON(e)
		}
		return out
	}
	return v
}

// against holds a boat file against the schema.
func against(t *testing.T, schema map[string]any, file string) []string {
	t.Helper()
	var m map[string]any
	if _, err := toml.Decode(file, &m); err != nil {
		t.Fatal(err)
	}
	return validate(t, schema, "", asJSON(m))
}

// Every boat that ReadBoat takes keeps the schema: the examples, and the test boat with each of its keys changed.
func TestGoodBoatsKeepTheSchema(t *testing.T) {
	schema := schemaNode(t)
	files, err := filepath.Glob("../examples/*/*.toml")
	if err != nil || len(files) < 8 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Contains(data, []byte("[boat]")) {
			continue // own tables
		}
		if bad := against(t, schema, string(data)); len(bad) > 0 {
			t.Errorf("%s: %s", f, strings.Join(bad, "\n"))
		}
	}
	for _, k := range keyCases {
		file := base
		if also, ok := elsewhere[k.key]; ok {
			file = strings.NewReplacer(also...).Replace(base)
		}
		if bad := against(t, schema, strings.Replace(file, k.old, k.new, 1)); len(bad) > 0 {
			t.Errorf("%s: %s", k.key, strings.Join(bad, "\n"))
		}
	}
	for _, k := range putOnCases {
		if bad := against(t, schema, base+strings.Replace(putOn, k.old, k.new, 1)); len(bad) > 0 {
			t.Errorf("%s: %s", k.key, strings.Join(bad, "\n"))
		}
	}
}

// oneKey is the boat file that holds nothing but the key, at its place.
func oneKey(key string, v any) map[string]any {
	path := strings.Split(key, ".")
	for i := len(path) - 1; i > 0; i-- {
		v = map[string]any{path[i]: v}
		at := slices.IndexFunc(boatFile, func(s section) bool { return s.path == strings.Join(path[:i], ".") })
		if boatFile[at].many != 0 {
			v = []map[string]any{v.(map[string]any)}
		}
	}
	return map[string]any{path[0]: v}
}

// faultsAt are the faults that ReadBoat finds at the key itself.
func faultsAt(t *testing.T, m map[string]any, key string) (out finding.Faults) {
	t.Helper()
	var file bytes.Buffer
	if err := toml.NewEncoder(&file).Encode(m); err != nil {
		t.Fatal(err)
	}
	_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: file.Bytes()}}, "boat.toml")
	faults, _ := errors.AsType[finding.Faults](err)
	for _, f := range faults {
		if plain := regexp.MustCompile(`\[[^]]*\]`).ReplaceAllString(f.Key, ""); f.File == "boat.toml" && plain == key {
			out = append(out, f)
		}
	}
	return out
}

// breachesAt are the breaches at the key itself.
func breachesAt(bad []string, key string) (out []string) {
	for _, b := range bad {
		if strings.HasPrefix(b, key+": ") {
			out = append(out, b)
		}
	}
	return out
}

// A value that a key does not take is refused by ReadBoat and by the schema, and each word of a closed list is taken by both.
func TestSchemaAndReaderAgree(t *testing.T) {
	schema := schemaNode(t)
	for _, s := range boatFile {
		for _, k := range s.keys {
			key, kind := s.path+"."+k.key, k.value.(object)
			wrong := []any{int64(-7), "", []any{map[string]any{"a": "b"}}}
			switch {
			case kind[0].key == "enum", key == "work.days":
				wrong = append(wrong, "no such word", true)
			case kind[0].value == "integer":
				wrong = append(wrong, kind[1].value.(int)-1, kind[2].value.(int)+1, "3")
			case kind[0].value == "boolean":
				wrong = append(wrong, "true", int64(1))
			case kind[0].value == "object", kind[0].key == "anyOf" && !equal(kind, aTexts), len(kind) > 1 && !equal(kind, aText):
				wrong = append(wrong, "twelve", "12", "12 parsecs", true)
			}
			for _, v := range wrong {
				if whole, is := v.(int); is {
					v = int64(whole)
				}
				if _, isText := v.(string); isText && kind[0].key == "type" && equal(kind, aDate) {
					continue // in TOML a date has no quotes; for a schema it is a text
				}
				m := oneKey(key, v)
				if len(faultsAt(t, m, key))+len(faultsAt(t, m, key+".a")) == 0 && !faultBelow(t, m, key) {
					t.Errorf("ReadBoat takes %s = %#v", key, v)
				}
				if bad := validate(t, schema, "", asJSON(m)); len(breachesAt(bad, key)) == 0 && !strings.Contains(strings.Join(bad, "\n"), key+".") {
					t.Errorf("the schema takes %s = %#v", key, v)
				}
			}
			if kind[0].key == "enum" {
				for _, word := range kind[0].value.([]string) {
					m := oneKey(key, word)
					if fs := faultsAt(t, m, key); len(fs) > 0 {
						t.Errorf("ReadBoat does not take %s = %q: %v", key, word, fs)
					}
					if bad := breachesAt(validate(t, schema, "", asJSON(m)), key); len(bad) > 0 {
						t.Errorf("the schema does not take %s = %q: %v", key, word, bad)
					}
				}
			}
		}
	}
}

// faultBelow reports whether ReadBoat finds a fault at an item of the key's list, or of its table.
func faultBelow(t *testing.T, m map[string]any, key string) bool {
	t.Helper()
	var file bytes.Buffer
	if err := toml.NewEncoder(&file).Encode(m); err != nil {
		t.Fatal(err)
	}
	_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: file.Bytes()}}, "boat.toml")
	return err != nil && strings.Contains(regexp.MustCompile(`\[[^]]*\]`).ReplaceAllString(err.Error(), ""), key)
}

func equal(a, b object) bool { return fmt.Sprint(a) == fmt.Sprint(b) }

// What the README calls a fault is one for both; so is a key beside which another is wanted, and a key that nobody reads.
func TestSchemaAndReaderMiss(t *testing.T) {
	schema := schemaNode(t)
	said := readmeKeys(t)
	both := func(m map[string]any, key, or string) { // ReadBoat may tell it of the key that wants it
		t.Helper()
		if len(faultsAt(t, m, key))+len(faultsAt(t, m, or)) == 0 {
			t.Errorf("ReadBoat does not miss %s in %v", key, m)
		}
		if len(breachesAt(validate(t, schema, "", asJSON(m)), key)) == 0 {
			t.Errorf("the schema does not miss %s in %v", key, m)
		}
	}
	good := map[string]any{"cleaned_every": "30 d", "potential": "-700 mV", "from": "09:00", "until": "17:00", "pot_life": "30 min", "litres": "3 L"}
	for _, s := range boatFile {
		for _, k := range s.keys {
			if key := s.path + "." + k.key; said[key].needed() {
				m := oneKey(s.path+".known_by", "x") // a section without the key
				if tin, is := m["tin"].([]map[string]any); is && key != "tin.coating" {
					tin[0]["coating"], tin[0]["ratio"] = "epoxy-barrier", "3:1" // kits are of a paint that is mixed
				}
				both(m, key, key)
			}
			for _, other := range s.wants[k.key] {
				both(oneKey(s.path+"."+k.key, good[k.key]), s.path+"."+other, s.path+"."+k.key)
			}
		}
		both(oneKey(s.path+".no_such_key", "x"), s.path+".no_such_key", "")
	}
	both(map[string]any{"no_such_section": map[string]any{"a": "b"}}, "no_such_section", "")
}
