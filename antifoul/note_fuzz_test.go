package antifoul_test

import (
	"errors"
	"os"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Whatever stands in a condition note, reading it answers with a boat or with faults, and a note that was read can be looked at.
func FuzzReadNote(f *testing.F) {
	note, err := os.ReadFile("../examples/surveynote/note.toml")
	if err != nil {
		f.Fatal(err)
	}
	sheet, err := os.ReadFile("../examples/surveynote/keel-gauge.csv")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(note))
	f.Add(base + surveyed)
	f.Add("[boat]\ndate = 2027-04-03\n[[part]]\nname = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n")
	f.Add("[boat]\ndate = 2027-04-03\n[[part]]\nname = \"hull\"\nzone = \"hull\"\nmaterial = \"steel\"\n[[seen]]\npart = \"hull\"\nzone = \"flat\"\n[[seen.mark]]\nwhat = \"blisters\"\nsize = \"1 in\"\nshare = \"100 %\"\n")
	b := tables.Default()
	f.Fuzz(func(t *testing.T, text string) {
		files := fstest.MapFS{"note.toml": {Data: []byte(text)}, "keel-gauge.csv": {Data: sheet}}
		boat, err := antifoul.ReadNote(b, files, "note.toml")
		if err != nil {
			if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) == 0 {
				t.Fatalf("no faults: %v", err)
			}
			return
		}
		if _, err := antifoul.Look(b, boat); err != nil {
			t.Fatalf("read without a fault, and then: %v", err)
		}
	})
}
