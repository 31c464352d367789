package gauge_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// An area that is none and a standard without lines give no number of readings; nothing known of gauge or material gives no judgement.
func TestNothingToCountBy(t *testing.T) {
	b := tables.Default()
	for name, c := range map[string]struct {
		standard string
		area     quantity.Area
		kind     error
		key      string
	}{
		"no area":             {"ISO 19840", quantity.Area{}, finding.ErrImpossible, "area"},
		"an area of nought":   {"ISO 19840", quantity.SquareMetre.N(0), finding.ErrImpossible, "area"},
		"a negative area":     {"ISO 19840", quantity.SquareMetre.N(-1), finding.ErrImpossible, "area"},
		"an unknown standard": {"ISO 19841", quantity.SquareMetre.N(1), finding.ErrUnknown, "standard"},
		"no standard":         {"", quantity.SquareMetre.N(1), finding.ErrUnknown, "standard"},
	} {
		n, row, err := gauge.Needed(b, c.standard, c.area)
		fs, _ := errors.AsType[finding.Faults](err)
		if n != 0 || row.Key != "" || len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind) {
			t.Errorf("%s: %d by %q, %v", name, n, row.Key, err)
		}
	}
	if _, _, err := gauge.Needed(b, "ISO 19841", quantity.SquareMetre.N(1)); !strings.Contains(err.Error(), "ISO 19840") {
		t.Errorf("the near standard is not named: %v", err)
	}
	if n, row, err := gauge.Needed(b, "ISO 19840", quantity.SquareMetre.N(1)); err != nil || n < 1 || row.Standard != "ISO 19840" {
		t.Errorf("1 m2: %d by %q, %v", n, row.Key, err)
	}
	if fs := gauge.Reads(b, "no such gauge", "steel"); len(fs) > 0 {
		t.Errorf("an unknown gauge: %v", fs)
	}
	if fs := gauge.Reads(b, "magnetic", "cheese"); len(fs) > 0 {
		t.Errorf("an unknown material: %v", fs)
	}
	for _, films := range [][]quantity.Film{nil, {{}}, {quantity.Micrometre.N(5), {}}} {
		if m := gauge.Mean(films); m.Given() {
			t.Errorf("the mean of %v is %s", films, m)
		}
	}
}
