package house

import (
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
)

func TestEverythingIsTold(t *testing.T) {
	for _, b := range Told(goFiles(t, moduleRoot(t))) {
		t.Error(b)
	}
}

func TestTold(t *testing.T) {
	const mute = "has no line Basis: or Source:"
	for name, c := range map[string]struct {
		src  string
		want []string
	}{
		"told":               {"// A is one, in m2.\n//\n// Basis: derived.\nfunc A() float64 { return 1 }\n// B is it.\ntype B struct{}\n// Of that:\nconst (\nC = 1\nD = 2 // two\n)\nfunc e() float64 { return 1 }", nil},
		"not exported":       {"type t struct{}\nfunc (t) A() float64 { return 1 }", nil},
		"a silent function":  {"func A() {}", []string{"compat/x.go:2: A has no comment"}},
		"a silent method":    {"// T is it.\ntype T struct{}\nfunc (*T) A() {}", []string{"compat/x.go:4: T.A has no comment"}},
		"a silent type":      {"type T struct{}", []string{"compat/x.go:2: T has no comment"}},
		"a type in a group":  {"// The types.\ntype (\nT struct{}\n)", []string{"compat/x.go:4: T has no comment"}},
		"a silent constant":  {"const (\nA = 1\nb = 2\n)", []string{"compat/x.go:3: A has no comment"}},
		"no basis":           {"// A is one, in m2.\nfunc A() float64 { return 1 }", []string{"compat/x.go:3: A works something out and " + mute}},
		"an empty basis":     {"// A is one, in m2.\n//\n// Basis:\nfunc A() float64 { return 1 }", []string{"compat/x.go:5: A works something out and " + mute}},
		"a source":           {"// A is one, in m2.\n//\n// Source: a handbook.\nfunc A() float64 { return 1 }", nil},
		"no unit":            {"// A is one.\n//\n// Basis: derived.\nfunc A() float64 { return 1 }", []string{"compat/x.go:5: A gives a number and its comment names no unit"}},
		"a range, no unit":   {"// A is one.\n//\n// Basis: derived.\nfunc A() quantity.Range[float64] { return 1 }", []string{"compat/x.go:5: A gives a number and its comment names no unit"}},
		"findings":           {"// A is it.\nfunc A() finding.List { return nil }", []string{"compat/x.go:3: A works something out and " + mute}},
		"faults":             {"// A is it.\nfunc A() finding.Faults { return nil }", nil},
		"a quantity":         {"// A is it.\nfunc A() quantity.Film { return nil }", []string{"compat/x.go:3: A works something out and " + mute}},
		"a date":             {"// A is it.\nfunc A() quantity.Date { return nil }", nil},
		"structs of its own": {"// B is it.\ntype B struct{}\n// A is it.\nfunc A() []*B { return nil }", []string{"compat/x.go:5: A works something out and " + mute}},
		"a reader":           {"// B is it.\ntype B struct{}\n// ReadB is it.\nfunc ReadB() B { return B{} }", nil},
	} {
		t.Run(name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, except(Told(fstest.MapFS{"compat/x.go": {Data: []byte("package compat\n" + c.src)}}))); diff != "" {
				t.Errorf("breaches (-want +got):\n%s", diff)
			}
		})
	}
	// The tables' rows carry their basis: floor 1 need not say it.
	if got := Told(fstest.MapFS{"tables/x.go": {Data: []byte("package tables\n// A is one, in m2.\nfunc A() float64 { return 1 }")}}); len(got) > 0 {
		t.Errorf("%q", got)
	}
}

// except leaves out the excuses of the real package, which the planted one does not need.
func except(breaches []string) []string {
	var out []string
	for _, b := range breaches {
		if b != "compat.On is excused from naming its basis, and need not be" {
			out = append(out, b)
		}
	}
	return out
}

// An excuse that nothing needs any more is named.
func TestToldNamesAnIdleExcuse(t *testing.T) {
	got := Told(fstest.MapFS{"compat/x.go": {Data: []byte("package compat\n")}})
	if diff := cmp.Diff([]string{"compat.On is excused from naming its basis, and need not be"}, got); diff != "" {
		t.Error(diff)
	}
}
