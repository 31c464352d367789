package entry_test

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// open reads the text as boat.toml and fails on a text that cannot be parsed.
func open(t *testing.T, text string) (*entry.Row, *finding.Faults) {
	t.Helper()
	row, faults := entry.Open(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
	if row == nil {
		t.Fatalf("the test's own text is not TOML: %v", *faults)
	}
	return row, faults
}

// one fails unless the faults are one of this kind and key, whose text holds all the words.
func one(t *testing.T, faults finding.Faults, kind error, key string, words ...string) {
	t.Helper()
	if len(faults) != 1 {
		t.Errorf("%d faults, want 1:\n%v", len(faults), faults)
		return
	}
	f := faults[0]
	if !errors.Is(f, kind) || f.File != "boat.toml" || f.Key != key {
		t.Errorf("the fault is %q in %q of kind %v, want %q in boat.toml of kind %v", f.Key, f.File, f.Kind, key, kind)
	}
	for _, w := range words {
		if !strings.Contains(f.Error(), w) {
			t.Errorf("%q does not say %q", f, w)
		}
	}
}
