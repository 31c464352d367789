package tables_test

import (
	"errors"
	"maps"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// FuzzLoad reads one file of any text, alone and on top of the good rows. Whatever it holds, there is a book or a Faults whose
// every fault has a kind and a file, never both, never a panic, and the second reading gives the same.
func FuzzLoad(f *testing.F) {
	rows := good()
	for _, table := range slices.Sorted(maps.Keys(rows)) {
		f.Add(row(table, rows[table]))
	}
	for _, c := range mistakes {
		text, _ := c.text()
		f.Add(text)
	}
	f.Add("")
	f.Add("[[coating]]\n[[coating.active]]\n")
	f.Add("\"a\\nb\" = 1\n[[zone]]\nkey = \"c\\rd\"\n")
	f.Add("coating = [{ key = \"a\", active = [{ key = \"oxide\" }] }]\n")
	f.Add("[[place]]\nkey = \"world\"\nbasis = \"own table\"\nsource = \"x\"\nwithin = \"world\"\n")
	f.Add("[[rule]]\nkey = \"rule-one\"\nbasis = \"own table\"\nsource = \"x\"\nsays = \"{about{against}\"\n")
	base, err := tables.Load(folder(nil))
	if err != nil {
		f.Fatal(err)
	}
	digits := base.Fingerprint()
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<14 {
			t.Skip("large files have a test of their own")
		}
		own := ownFile(text)
		for _, load := range []func() (*tables.Book, error){
			func() (*tables.Book, error) { return tables.Load(own) },
			func() (*tables.Book, error) { return base.With(own) },
		} {
			b, err := load()
			again, err2 := load()
			if (b == nil) == (err == nil) {
				t.Fatalf("a book %t and an error %v", b != nil, err)
			}
			if err == nil {
				if b.Fingerprint() != again.Fingerprint() {
					t.Error("the same file gives another fingerprint")
				}
				for r := range b.Rules() {
					said := b.Say(finding.Finding{Rule: r.ID, About: "ä"}, quantity.Metric)
					if !utf8.ValidString(said) {
						t.Errorf("%q is no text", said)
					}
				}
				continue
			}
			if err2 == nil || err.Error() != err2.Error() {
				t.Errorf("the same file gives another error:\n%v\n%v", err, err2)
			}
			fs, ok := errors.AsType[finding.Faults](err)
			if !ok || len(fs) == 0 {
				t.Fatalf("no Faults: %v", err)
			}
			for _, fault := range fs {
				// A row that names a standard is left behind where an own row of a sampling plan has it no longer: then that row is told.
				left := fault.File == "good.toml" && errors.Is(fault, finding.ErrUnknown) && strings.HasSuffix(fault.Key, ".sampling")
				if fault.Kind == nil || fault.File != "own.toml" && !left || fault.Want == "" || strings.ContainsAny(fault.Error(), "\n\r\x1b") {
					t.Errorf("fault %+v", fault)
				}
			}
		}
		if base.Fingerprint() != digits {
			t.Error("the base book has changed")
		}
	})
}
