package galvanic_test

import (
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// own is the module's book with one text of one file replaced.
func own(t *testing.T, file, was, is string) *tables.Book {
	t.Helper()
	all := fstest.MapFS{}
	data := os.DirFS("../../tables/data")
	err := fs.WalkDir(data, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(data, name)
		all[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	text := string(all[file].Data)
	if !strings.Contains(text, was) {
		t.Fatalf("%s does not hold %q", file, was)
	}
	all[file].Data = []byte(strings.ReplaceAll(text, was, is))
	b, err := tables.Load(all)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// limitsOf are the limits that a pair was held against, as they are told.
func limitsOf(p galvanic.Pair) []string {
	var out []string
	for _, f := range p.Findings {
		if limit, ok := fact(f, "limit").(quantity.Potential); ok {
			out = append(out, limit.String())
		}
	}
	slices.Sort(out)
	return out
}

// The limits are two: 0.15 V, widely quoted for salt water, and the 200 mV of Westlawn 2010. Volts are told as millivolts.
func TestWhichLimits(t *testing.T) {
	for value, want := range map[string][]string{"value = 0.15": {"150 mV", "200 mV"}, "value = 2.5": {"200 mV", "2500 mV"}} {
		b := own(t, "published/potential-difference-limits.toml", "value = 0.15", value)
		p, err := galvanic.Couple(b, galvanic.Flowing, galvanic.Metal{Name: "mild steel"}, galvanic.Metal{Name: "copper"})
		if err != nil || !slices.Equal(limitsOf(p), want) {
			t.Errorf("%s: held against %q, %v, want %q", value, limitsOf(p), err, want)
		}
	}
}

// What a material gives is the widest of its rows, in whichever order they stand. Of the rows of steel the first is -570 to -630 mV and the second -600 to
// -720 mV, which is made to reach to -500 mV here; zinc is -980 to -1030 mV. By hand the least is 980-720 = 260 mV, the most 1030-570 = 460 or 1030-500 = 530 mV.
func TestNoblestOfLaterRows(t *testing.T) {
	const mild = "name = \"mild steel\"\nseries = \"ACA flowing seawater\"\nnoble = "
	for noble, high := range map[string]string{"-600 mV": "460 mV", "-570 mV": "460 mV", "-569 mV": "461 mV", "-500 mV": "530 mV"} {
		b := own(t, "published/aca-flowing-seawater.toml", mild+`"-600 mV"`, mild+`"`+noble+`"`)
		steel, err := b.Material("steel")
		if err != nil {
			t.Fatal(err)
		}
		zinc, err := b.Material("zinc-anode")
		if err != nil {
			t.Fatal(err)
		}
		p := galvanic.Of(b, &steel, &zinc)
		if len(p) != 1 || p[0].High.String() != high || p[0].Low.String() != "260 mV" {
			t.Errorf("mild steel from %s, and zinc: %v, want 260 mV to %s", noble, p, high)
		}
	}
}
