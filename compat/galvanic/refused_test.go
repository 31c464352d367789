package galvanic_test

import (
	"errors"
	"testing"

	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A reading that is none is a fault, whatever it is asked: against another electrode, or what it says of a metal.
func TestReadingsThatAreNone(t *testing.T) {
	b := tables.Default()
	good := galvanic.Reading{Value: quantity.Millivolt.N(-820), Electrode: "zinc-seawater"}
	for name, c := range map[string]struct {
		reading galvanic.Reading
		to      string
		key     string
		kind    error
	}{
		"a reading":                 {good, "zinc-seawater", "", nil},
		"against nothing":           {good, "", "electrode", finding.ErrUnknown},
		"against what is not there": {good, "zink-seawater", "electrode", finding.ErrUnknown},
		"of no electrode":           {galvanic.Reading{Value: good.Value}, "zinc-seawater", "electrode", finding.ErrUnknown},
		"of no value":               {galvanic.Reading{Electrode: good.Electrode}, "zinc-seawater", "potential", finding.ErrMissing},
		"beyond the meter":          {galvanic.Reading{Value: quantity.Millivolt.N(3001), Electrode: good.Electrode}, "zinc-seawater", "potential", finding.ErrImpossible},
	} {
		got, err := c.reading.Against(b, c.to)
		said, judged := galvanic.Protected(b, "steel", c.reading)
		for what, err := range map[string]error{"against": err, "protected": judged} {
			fs, _ := errors.AsType[finding.Faults](err)
			switch {
			case c.key == "" || what == "protected" && len(c.reading.Check(b)) == 0:
				if err != nil {
					t.Errorf("%s, %s: %v", name, what, err)
				}
			case len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind):
				t.Errorf("%s, %s: %v; want %s %v", name, what, err, c.key, c.kind)
			}
		}
		if err != nil && got.Value.Given() || judged != nil && len(said) > 0 {
			t.Errorf("%s: refused and yet %v, %v", name, got, said)
		}
	}
}
