package coverage_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A tin that is no tin: each fault under its own key, and what is right beside it is taken.
func TestTinsThatAreNone(t *testing.T) {
	b := tables.Default()
	ratio, err := coverage.ParseRatio("3:1")
	if err != nil {
		t.Fatal(err)
	}
	litre, warm := quantity.Litre.N, quantity.Celsius.N
	for name, c := range map[string]struct {
		tin  coverage.Tin
		kind error
		key  string // none: no fault
	}{
		"no coating":                 {coverage.Tin{}, finding.ErrMissing, "coating"},
		"an unknown coating":         {coverage.Tin{Coating: "epoxy-barier"}, finding.ErrUnknown, "coating"},
		"a temperature alone":        {coverage.Tin{Coating: "epoxy-barrier", At: warm(20)}, finding.ErrMissing, "pot_life"},
		"a pot life alone":           {coverage.Tin{Coating: "epoxy-barrier", PotLife: quantity.Hour.N(2)}, finding.ErrMissing, "pot_life_at"},
		"a pot life of nought":       {coverage.Tin{Coating: "epoxy-barrier", PotLife: quantity.Hour.N(0), At: warm(20)}, finding.ErrImpossible, "pot_life"},
		"a pot life in a frost":      {coverage.Tin{Coating: "epoxy-barrier", PotLife: quantity.Hour.N(2), At: warm(-11)}, finding.ErrImpossible, "pot_life_at"},
		"a pot life":                 {coverage.Tin{Coating: "epoxy-barrier", PotLife: quantity.Hour.N(2), At: warm(-10)}, nil, ""},
		"a kit without hardener":     {coverage.Tin{Coating: "epoxy-barrier", Ratio: ratio, Kits: []coverage.Kit{{Base: litre(3)}}}, finding.ErrMissing, "kit[1].hardener"},
		"a can without a size":       {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{}}}, finding.ErrMissing, "store[1].size"},
		"a can of nought":            {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{Size: litre(1)}, {Size: litre(0)}}}, finding.ErrImpossible, "store[2].size"},
		"a can as big as any":        {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{Size: litre(1_000_000)}}}, nil, ""},
		"the smallest can":           {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{Size: quantity.Millilitre.N(1)}}}, nil, ""},
		"kits without a ratio":       {coverage.Tin{Coating: "epoxy-barrier", Kits: []coverage.Kit{{Base: litre(3), Hardener: litre(1)}}}, finding.ErrMissing, "ratio"},
		"kits and half a ratio":      {coverage.Tin{Coating: "epoxy-barrier", Ratio: coverage.Ratio{Base: ratio.Base}, Kits: []coverage.Kit{{Base: litre(3), Hardener: litre(1)}}}, finding.ErrImpossible, "ratio.hardener"},
		"a can as big as a ship":     {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{Size: litre(1_000_001)}}}, finding.ErrImpossible, "store[1].size"},
		"fewer cans than none":       {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{Size: litre(1), Count: -1}}}, finding.ErrImpossible, "store[1].count"},
		"a can in an unknown colour": {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{Size: litre(1), Colour: "blak"}}}, finding.ErrUnknown, "store[1].colour"},
		"a can in a colour":          {coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{{Size: litre(1), Colour: "black"}}}, nil, ""},
	} {
		fs := c.tin.Check(b)
		if c.key == "" && len(fs) > 0 || c.key != "" && (len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind)) {
			t.Errorf("%s: %v; want %q", name, fs, c.key)
		}
	}
}

// The store gives a layer the cans of its colour and those that suit any; kits that nobody gave are none on sale.
func TestCansOfAColour(t *testing.T) {
	x := coverage.Tin{Coating: "epoxy-barrier", Store: []coverage.Stored{
		{Size: quantity.Litre.N(1), Colour: "black"}, {Size: quantity.Litre.N(2), Count: 2, Batch: "7"}, {Size: quantity.Litre.N(3), Colour: "white"},
	}}
	for colour, want := range map[string]string{"black": "1 L 2 L 2 L", "white": "2 L 2 L 3 L", "": "2 L 2 L"} {
		var got []string
		for _, c := range x.Cans(colour) {
			got = append(got, c.Size.String())
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%q: %v, want %s", colour, got, want)
		}
	}
	if cans, notes, err := x.OnSale(); len(cans) > 0 || len(notes) > 0 || err != nil {
		t.Errorf("on sale without kits: %v, %v, %v", cans, notes, err)
	}
	ratio, err := coverage.ParseRatio("3:1")
	if err != nil {
		t.Fatal(err)
	}
	if cans, _, err := (coverage.Tin{Coating: "epoxy-barrier", Ratio: ratio, Kits: []coverage.Kit{{Base: quantity.Litre.N(3)}}}).OnSale(); len(cans) > 0 || !errors.Is(err, finding.ErrMissing) || !strings.Contains(err.Error(), "kit[1].hardener") {
		t.Errorf("half a kit on sale: %v, %v", cans, err)
	}
}

// A tooth of a comb as it is written.
func TestAToothAsItIsWritten(t *testing.T) {
	for text, want := range map[string]string{
		"120 um": "120 um, not given", " 5 mil ": "5 mil, not given", "100 um to 120 um": "100 um, 120 um", "4 mil to 120 um": "4 mil, 120 um",
		"": "", "120": "", "120 m": "", "100 um to": "", "100 um to 120": "", "100 um to 120 um to 140 um": "", "to 120 um": "", "100um-120um": "",
	} {
		tooth, err := coverage.ParseTooth(text)
		if got := tooth.Wetted.String() + ", " + tooth.Dry.String(); (err == nil) != (want != "") || err == nil && got != want {
			t.Errorf("%q: %s, %v; want %q", text, got, err, want)
		}
		if err != nil {
			var parse *quantity.ParseError
			if !errors.As(err, &parse) {
				t.Errorf("%q: %v is no ParseError", text, err)
			}
		}
	}
}

// Each input of a method, of litres used and of a hull's paint line that cannot be is a fault under its own key, on its bound it is none.
func TestInputsThatCannotBe(t *testing.T) {
	b := tables.Default()
	method := func(change func(*coverage.Method)) finding.Faults {
		m := coverage.Method{By: "roller"}
		change(&m)
		return m.Check(b)
	}
	hard, err := b.Coating("hard-cuprous")
	if err != nil {
		t.Fatal(err)
	}
	spent := func(change func(*coverage.Spent)) finding.Faults {
		s := coverage.Spent{Litres: quantity.Litre.N(4), Area: quantity.Exactly(quantity.SquareMetre.N(20)), Coats: 2, Coating: hard, Method: coverage.Method{By: "roller"}}
		change(&s)
		return s.Check(b)
	}
	hull := func(line quantity.Length) finding.Faults {
		return coverage.Hull{Kind: "fin-keel-yacht", Length: quantity.Metre.N(9), Beam: quantity.Metre.N(3), Draft: quantity.Metre.N(1), BootTop: line}.Check(b)
	}
	for name, c := range map[string]struct {
		fs  finding.Faults
		key string
	}{
		"a method":             {method(func(*coverage.Method) {}), ""},
		"a profile":            {method(func(m *coverage.Method) { m.Profile = "iso-8503-1-grit-medium" }), ""},
		"an unknown profile":   {method(func(m *coverage.Method) { m.Profile = "deep" }), "profile"},
		"as cold as it may be": {method(func(m *coverage.Method) { m.Today = quantity.Celsius.N(-10) }), ""},
		"colder":               {method(func(m *coverage.Method) { m.Today = quantity.Celsius.N(-11) }), "temperature"},
		"as hot as it may be":  {method(func(m *coverage.Method) { m.Today = quantity.Celsius.N(60) }), ""},
		"hotter":               {method(func(m *coverage.Method) { m.Today = quantity.Celsius.N(61) }), "temperature"},
		"litres used":          {spent(func(*coverage.Spent) {}), ""},
		"no litres":            {spent(func(s *coverage.Spent) { s.Litres = quantity.Volume{} }), "litres"},
		"litres of nought":     {spent(func(s *coverage.Spent) { s.Litres = quantity.Litre.N(0) }), "litres"},
		"the most coats":       {spent(func(s *coverage.Spent) { s.Coats = 50 }), ""},
		"one coat more":        {spent(func(s *coverage.Spent) { s.Coats = 51 }), "coats"},
		"no low solids":        {spent(func(s *coverage.Spent) { s.Coating.Solids.Low = quantity.Percent.N(0) }), "coating[hard-cuprous].solids"},
		"no solids at all":     {spent(func(s *coverage.Spent) { s.Coating.Solids = quantity.Exactly(quantity.Percent.N(0)) }), "coating[hard-cuprous].solids"},
		"no low area":          {spent(func(s *coverage.Spent) { s.Area.Low = quantity.Area{} }), "area"},
		"no typical area":      {spent(func(s *coverage.Spent) { s.Area.Typical = quantity.Area{} }), "area"},
		"no high area":         {spent(func(s *coverage.Spent) { s.Area.High = quantity.Area{} }), "area"},
		"an area of nought":    {spent(func(s *coverage.Spent) { s.Area.Low = quantity.SquareMetre.N(0) }), "area"},
		"an area that falls":   {spent(func(s *coverage.Spent) { s.Area.High = quantity.SquareMetre.N(19) }), "area"},
		"one that falls first": {spent(func(s *coverage.Spent) { s.Area.Low = quantity.SquareMetre.N(21) }), "area"},
		"an area that rises": {spent(func(s *coverage.Spent) {
			s.Area.Low, s.Area.High = quantity.SquareMetre.N(19), quantity.SquareMetre.N(21)
		}), ""},
		"no coats":         {spent(func(s *coverage.Spent) { s.Coats = 0 }), "coats"},
		"a paint line":     {hull(quantity.Millimetre.N(50)), ""},
		"a line of nought": {hull(quantity.Metre.N(0)), "boot_top"},
		"a line above her": {hull(quantity.Metre.N(10)), "boot_top"},
	} {
		if c.key == "" && len(c.fs) > 0 || c.key != "" && (len(c.fs) != 1 || c.fs[0].Key != c.key) {
			t.Errorf("%s: %v; want %q", name, c.fs, c.key)
		}
	}
}

// Some of the places where she stands have their share of the area, and none have none.
func TestSomePlaces(t *testing.T) {
	h := coverage.Hull{Kind: "fin-keel-yacht", Length: quantity.Metre.N(9), Beam: quantity.Metre.N(3), Draft: quantity.Metre.N(1), Support: &coverage.Support{StandPairs: 3, KeelBlocks: 2}}
	all, err := coverage.Pads(tables.Default(), h)
	if err != nil || all.Count != 8 {
		t.Fatalf("%d places, %v", all.Count, err)
	}
	if some := all.Some(8); some.Count != 8 || !some.Area.Low.Equal(all.Area.Low) || !some.Area.High.Equal(all.Area.High) {
		t.Errorf("all of them: %v of %v", some.Area, all.Area)
	}
	if one := all.Some(1); one.Count != 1 || !one.Area.Low.Equal(all.Each.Low) || !one.Area.Typical.Equal(all.Each.Typical) || !one.Area.High.Equal(all.Each.High) {
		t.Errorf("one of them: %v, each has %v", one.Area, all.Each)
	}
	for _, none := range []coverage.Patches{all.Some(0), all.Some(-1), (coverage.Patches{}).Some(3)} {
		if none.Count != 0 || none.Area.Typical.Given() {
			t.Errorf("none of them: %d, %v", none.Count, none.Area)
		}
	}
}
