package readme_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// everyName lists the texts of the module's source that could be the name of a key.
func everyName(t *testing.T) []string {
	t.Helper()
	name := regexp.MustCompile(`"([a-z][a-z0-9_]*)"`)
	var out []string
	err := filepath.WalkDir("../..", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return err
		}
		src, err := os.ReadFile(p)
		for _, m := range name.FindAllStringSubmatch(string(src), -1) {
			out = append(out, m[1])
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	slices.Sort(out)
	out = slices.Compact(out)
	if len(out) < 300 {
		t.Fatalf("%d names are found: does the pattern still fit?", len(out))
	}
	return append(out, "no_such_key")
}

// accepted gives each section every name as a key and lists those that the reader does not refuse as unknown. A name that is a section of its own there
// counts as accepted.
func accepted(t *testing.T, sections []string, list func(section string) bool, read func(fstest.MapFS) error) []string {
	t.Helper()
	var text strings.Builder
	every := everyName(t)
	below := func(section, name string) bool {
		return slices.Contains(sections, strings.TrimPrefix(section+"."+name, "."))
	}
	write := func(section string) {
		for _, n := range every {
			if !below(section, n) {
				fmt.Fprintf(&text, "%s = \"x\"\n", n)
			}
		}
	}
	write("")
	for _, s := range sections {
		if list(s) {
			fmt.Fprintf(&text, "[[%s]]\n", s)
		} else {
			fmt.Fprintf(&text, "[%s]\n", s)
		}
		write(s)
	}
	faults, _ := errors.AsType[finding.Faults](read(fstest.MapFS{"all.toml": {Data: []byte(text.String())}}))
	refused := map[string]bool{}
	for _, f := range faults {
		if errors.Is(f, finding.ErrUnknownKey) {
			refused[regexp.MustCompile(`\[[^]]*\]`).ReplaceAllString(f.Key, "")] = true
		}
	}
	var out []string
	for _, s := range append([]string{""}, sections...) {
		if !refused[strings.TrimPrefix(s+".no_such_key", ".")] {
			t.Errorf("[%s] was not read to its end: %d faults", s, len(faults))
		}
		for _, n := range every {
			if key := strings.TrimPrefix(s+"."+n, "."); !refused[key] && !below(s, n) {
				out = append(out, key)
			}
		}
	}
	slices.Sort(out)
	return out
}

// keysOf lists the keys that stand in the first column of the tables of a part of the README, and their sections.
func keysOf(t *testing.T, from, to string) (keys, sections []string) {
	t.Helper()
	_, rest, ok := strings.Cut(read(t, "../../README.md"), "\n"+from+"\n")
	part, _, ends := strings.Cut(rest, "\n"+to+"\n")
	if !ok || !ends {
		t.Fatalf("README.md has no part from %q to %q", from, to)
	}
	for _, m := range regexp.MustCompile("(?m)^\\| (`[a-z_]+\\.[^|]*) \\|").FindAllStringSubmatch(part, -1) {
		for _, k := range regexp.MustCompile("`([a-z_.]+)`").FindAllStringSubmatch(m[1], -1) {
			keys = append(keys, k[1])
			for s := k[1]; strings.Contains(s, "."); {
				s = s[:strings.LastIndex(s, ".")]
				sections = append(sections, s)
			}
		}
	}
	slices.Sort(keys)
	slices.Sort(sections)
	return keys, slices.Compact(sections)
}

// What the reader of boat files accepts is what the README lists, key by key of each section: none more, none less.
func TestBoatKeysAreTheREADMEs(t *testing.T) {
	keys, sections := keysOf(t, "## Every key of a boat file", "### The words that keys take")
	one := []string{"boat", "hull", "part.readings", "use", "work", "paint", "wishes", "survey", "passport"}
	got := accepted(t, sections, func(s string) bool { return !slices.Contains(one, s) }, func(files fstest.MapFS) error {
		_, err := antifoul.ReadBoat(files, "all.toml")
		return err
	})
	if diff := cmp.Diff(got, keys); diff != "" {
		t.Errorf("keys of a boat file (-read +README):\n%s", diff)
	}
}

// The same of a job log.
func TestLogKeysAreTheREADMEs(t *testing.T) {
	keys, sections := keysOf(t, "## Every key of a job log", "## Own tables")
	got := accepted(t, sections, func(s string) bool { return s != "log" }, func(files fstest.MapFS) error {
		_, err := joblog.Read(tables.Default(), files, "all.toml", nil)
		return err
	})
	if diff := cmp.Diff(got, keys); diff != "" {
		t.Errorf("keys of a job log (-read +README):\n%s", diff)
	}
}

// heading is what every row takes; a document has a title and no name.
var heading = []string{"key", "name", "basis", "source", "where", "read", "doubt", "basis_of", "safety", "override", "reason"}

// The same of the tables and fields that own tables may use.
func TestOwnTablesAreTheREADMEs(t *testing.T) {
	_, own, ok := strings.Cut(read(t, "../../README.md"), "\n| table | a row is | its fields |\n|---|---|---|\n")
	if !ok {
		t.Fatal("README.md has no table of tables")
	}
	own, _, _ = strings.Cut(own, "\n\n")
	var keys, sections []string
	for row := range strings.Lines(own) {
		cells := strings.Split(row, "|")
		table := strings.Trim(cells[1], " `")
		sections = append(sections, table)
		for _, k := range regexp.MustCompile("`([a-z0-9_]+)`").FindAllStringSubmatch(cells[3], -1) {
			keys = append(keys, table+"."+k[1])
		}
		if strings.Contains(table, ".") {
			continue // a part of a row
		}
		for _, k := range heading {
			if table != "source" || k != "name" {
				keys = append(keys, table+"."+k)
			}
		}
	}
	for _, s := range sections {
		if strings.Contains(s, ".") {
			keys = slices.DeleteFunc(keys, func(k string) bool { return k == s })
		}
	}
	slices.Sort(keys)
	if !slices.IsSorted(sections) {
		t.Error("the tables do not stand in the order of the alphabet")
	}
	got := accepted(t, sections, func(string) bool { return true }, func(files fstest.MapFS) error {
		_, err := tables.Load(files)
		return err
	})
	if diff := cmp.Diff(got, keys); diff != "" {
		t.Errorf("tables and fields (-read +README):\n%s", diff)
	}
}
