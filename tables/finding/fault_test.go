package finding_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables/finding"
)

var kinds = []error{
	finding.ErrSyntax, finding.ErrUnknownKey, finding.ErrMissing, finding.ErrValue, finding.ErrImpossible,
	finding.ErrUnknown, finding.ErrDuplicate, finding.ErrBasis, finding.ErrSafety,
}

func TestFaultWording(t *testing.T) {
	for _, c := range []struct {
		fault finding.Fault
		want  string
	}{
		{
			finding.Fault{Kind: finding.ErrValue, File: "boat.toml", Key: "hull.draft", Got: "1.75", Want: "a number and its unit"},
			"boat.toml: hull.draft: not accepted: read 1.75; accepted: a number and its unit",
		},
		{finding.Fault{Kind: finding.ErrMissing, File: "boat.toml", Key: "hull", Want: "a section"}, "boat.toml: hull: missing; accepted: a section"},
		{finding.Fault{Kind: finding.ErrSyntax, File: "boat.toml", Got: "line 3"}, "boat.toml: not readable: read line 3"},
		{finding.Fault{Kind: finding.ErrImpossible, Key: "draft"}, "draft: impossible"},
		{finding.Fault{Kind: finding.ErrUnknown}, "not known"},
		// One fault is one line, and no terminal is told to do anything.
		{finding.Fault{Kind: finding.ErrUnknownKey, File: "a\tb.toml", Key: "a\nb", Got: "a\r\x1b[2J\u2028b"}, `a\tb.toml: a\nb: unknown key: read a\r\x1b[2J\u2028b`},
		{finding.Fault{Kind: finding.ErrValue, Got: `"Ölfarbe 5 µm, 漆"`, Want: "50\u00a0um"}, `not accepted: read "Ölfarbe 5 µm, 漆"; accepted: 50\u00a0um`},
		{finding.Fault{}, ""},
	} {
		if got := c.fault.Error(); got != c.want {
			t.Errorf("%#v says\n%q, want\n%q", c.fault, got, c.want)
		}
	}
}

func TestKindsTellApart(t *testing.T) {
	words := map[string]bool{}
	for i, k := range kinds {
		if words[k.Error()] || k.Error() == "" {
			t.Errorf("kind %d has no words of its own: %q", i, k)
		}
		words[k.Error()] = true
		for j, o := range kinds {
			if got := errors.Is(finding.Fault{Kind: k}, o); got != (i == j) {
				t.Errorf("a fault of kind %q is %q: %t", k, o, got)
			}
		}
	}
}

func TestFaultsSorted(t *testing.T) {
	want := finding.Faults{
		{Kind: finding.ErrSyntax, File: "a.toml"},
		{Kind: finding.ErrMissing, File: "a.toml", Key: "draft"},
		{Kind: finding.ErrValue, File: "a.toml", Key: "draft", Got: "1"},
		{Kind: finding.ErrValue, File: "a.toml", Key: "draft", Got: "2"},
		{Kind: finding.ErrValue, File: "a.toml", Key: "length", Got: "0"},
		{Kind: finding.ErrMissing, File: "b.toml", Key: "beam"},
	}
	r := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		mixed := append(slices.Clone(want), want[2], want[5]) // the same fault twice is told once
		r.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
		before := slices.Clone(mixed)
		var got finding.Faults
		if !errors.As(mixed.Err(), &got) {
			t.Fatal("the error is no Faults")
		}
		if !slices.Equal(want, got) {
			t.Fatalf("sorted:\n%v\nwant:\n%v", got, want)
		}
		if !slices.Equal(before, mixed) {
			t.Fatal("Err changed the order of the list it was asked of")
		}
	}
}

func TestNoFaultsIsNil(t *testing.T) {
	for _, fs := range []finding.Faults{nil, {}} {
		if err := fs.Err(); err != nil {
			t.Errorf("no faults give the error %v", err)
		}
	}
}

func TestErrorsLookIntoFaults(t *testing.T) {
	err := fmt.Errorf("the boat file: %w", finding.Faults{
		{Kind: finding.ErrMissing, Key: "draft"}, {Kind: finding.ErrValue, Key: "beam", Got: "5"},
	}.Err())
	for _, k := range kinds {
		want := k == finding.ErrMissing || k == finding.ErrValue
		if got := errors.Is(err, k); got != want {
			t.Errorf("is %q: %t, want %t", k, got, want)
		}
	}
	f, ok := errors.AsType[finding.Fault](err)
	if !ok || f.Key != "beam" { // beam sorts before draft
		t.Errorf("the first fault is %v, %t; want that of beam", f, ok)
	}
	if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 2 {
		t.Errorf("%d faults, %t; want 2", len(fs), ok)
	}
	if n := strings.Count(err.Error(), "\n"); n != 1 {
		t.Errorf("%d line breaks between two faults, want 1", n)
	}
}

func TestUnder(t *testing.T) {
	fs := finding.Faults{{Key: "draft"}, {}, {File: "offsets.csv", Key: "line 3"}}
	for _, c := range []struct {
		file, prefix string
		want         finding.Faults
	}{
		{"boat.toml", "hull", finding.Faults{{File: "boat.toml", Key: "hull.draft"}, {File: "boat.toml", Key: "hull"}, {File: "offsets.csv", Key: "hull.line 3"}}},
		{"boat.toml", "", finding.Faults{{File: "boat.toml", Key: "draft"}, {File: "boat.toml"}, {File: "offsets.csv", Key: "line 3"}}},
		{"", "", fs},
	} {
		if got := fs.Under(c.file, c.prefix); !slices.Equal(c.want, got) {
			t.Errorf("under %q, %q:\n%v\nwant:\n%v", c.file, c.prefix, got, c.want)
		}
	}
	if fs[0].Key != "draft" || fs[0].File != "" {
		t.Error("Under changed the faults it was asked of")
	}
}
