package galvanic_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func material(t *testing.T, key string) *tables.Material {
	t.Helper()
	m, err := tables.Default().Material(key)
	if err != nil {
		t.Fatal(err)
	}
	return &m
}

// said fails unless each finding's sentence finds all of its values.
func said(t *testing.T, fs finding.List) string {
	t.Helper()
	if len(fs) == 0 {
		t.Error("no finding")
	}
	var all []string
	for _, f := range fs {
		s := tables.Default().Say(f, quantity.Metric)
		if strings.Contains(s, "(not stated)") || strings.Contains(s, "{") {
			t.Errorf("%s: %s", f.Rule, s)
		}
		all = append(all, s)
	}
	return strings.Join(all, "\n")
}

// Every two materials of the book are answered, alike from either side, with ordered voltages and sentences that find their values.
func TestEveryTwoMaterials(t *testing.T) {
	b := tables.Default()
	for x := range b.Materials() {
		for y := range b.Materials() {
			one, other := galvanic.Of(b, &x, &y), galvanic.Of(b, &y, &x)
			if len(one) == 0 || len(one) != len(other) {
				t.Fatalf("%s and %s: %d pairs, turned round %d", x.Key, y.Key, len(one), len(other))
			}
			for _, p := range one {
				said(t, p.Findings)
				i := slices.IndexFunc(other, func(q galvanic.Pair) bool { return q.A == p.B && q.B == p.A || x.Key == y.Key })
				if i < 0 {
					t.Fatalf("%s and %s: not answered from the other side", p.A, p.B)
				}
				q := other[i]
				if p.High.Given() != q.High.Given() || p.Anode != q.Anode || p.High.Given() && (!p.High.Equal(q.High) || !p.Low.Equal(q.Low)) {
					t.Errorf("%s and %s: %v turned round %v", x.Key, y.Key, p, q)
				}
				if p.High.Given() && (p.Low.Sign() < 0 || p.Low.Cmp(p.High) > 0) {
					t.Errorf("%s and %s: %s to %s", x.Key, y.Key, p.Low, p.High)
				}
				if p.High.Given() && (p.Anode == "") != (p.Low.Sign() == 0) {
					t.Errorf("%s and %s: %q goes at %s to %s", x.Key, y.Key, p.Anode, p.Low, p.High)
				}
				if x.Key == y.Key && !p.Findings.Has(galvanic.RuleAlike) {
					t.Errorf("%s and itself: %v", x.Key, p.Findings)
				}
			}
		}
	}
}

func TestWhatAPairSays(t *testing.T) {
	b := tables.Default()
	for _, c := range []struct {
		x, y string
		pair int
		want []finding.ID
		not  []finding.ID
	}{
		{"aluminium", "bronze", 0, []finding.ID{galvanic.RuleAnode, galvanic.RulePasses, galvanic.RuleArea}, []finding.ID{galvanic.RuleUndecided}},
		{"lead", "stainless-steel", 0, []finding.ID{galvanic.RuleAnode, galvanic.RulePassive, galvanic.RuleMayPass}, []finding.ID{galvanic.RuleUndecided}},
		{"lead", "stainless-steel", 1, []finding.ID{galvanic.RuleAnode, galvanic.RuleMayPass}, []finding.ID{galvanic.RulePassive}},
		{"steel", "stainless-steel", 0, []finding.ID{galvanic.RuleAnode, galvanic.RulePasses}, []finding.ID{galvanic.RuleUndecided}},
		{"steel", "cast-iron", 0, []finding.ID{galvanic.RuleUndecided, galvanic.RuleWithin}, []finding.ID{galvanic.RulePasses}},
		{"grp", "bronze", 0, []finding.ID{galvanic.RuleNoList}, []finding.ID{galvanic.RuleAnode}},
	} {
		p := galvanic.Of(b, material(t, c.x), material(t, c.y))[c.pair]
		for _, id := range c.want {
			if !p.Findings.Has(id) {
				t.Errorf("%s and %s: no %s in\n%s", c.x, c.y, id, said(t, p.Findings))
			}
		}
		for _, id := range c.not {
			if p.Findings.Has(id) {
				t.Errorf("%s and %s: %s in\n%s", c.x, c.y, id, said(t, p.Findings))
			}
		}
	}
	p, err := galvanic.Couple(b, galvanic.Flowing, galvanic.Metal{Name: "stainless steel 316/317", State: galvanic.Passive}, galvanic.Metal{Name: "mild steel"})
	if err != nil || !p.Findings.Has(galvanic.RulePassive) {
		t.Errorf("a passive metal without a word that it may turn active: %v, %v", p.Findings, err)
	}
}

func TestWhatAReadingSays(t *testing.T) {
	b := tables.Default()
	for _, c := range []struct {
		material, read, electrode string
		want                      []finding.ID
		not                       []finding.ID
	}{
		{"aluminium", "-650 mV", "silver-chloride", []finding.ID{galvanic.RuleUnder, galvanic.RuleNobler, galvanic.RuleNotOver}, []finding.ID{galvanic.RuleHeld, galvanic.RuleBeyond}},
		{"aluminium", "-1.2 V", "silver-chloride", []finding.ID{galvanic.RuleOver, galvanic.RuleBeyond}, []finding.ID{galvanic.RuleHeld, galvanic.RuleDisagree}},
		{"aluminium", "-850 mV", "silver-chloride", []finding.ID{galvanic.RuleHeld, galvanic.RuleUnder, galvanic.RuleDisagree}, []finding.ID{galvanic.RuleNobler}},
		{"steel", "-900 mV", "silver-chloride", []finding.ID{galvanic.RuleHeld, galvanic.RuleOnly}, []finding.ID{galvanic.RuleUnder, galvanic.RuleDisagree, galvanic.RuleOver}},
		{"steel", "200 mV", "zinc-seawater", []finding.ID{galvanic.RuleHeld, galvanic.RuleConverted}, []finding.ID{galvanic.RuleUnder}},
		{"wood-carvel", "-950 mV", "silver-chloride", []finding.ID{galvanic.RuleOver}, []finding.ID{galvanic.RuleHeld, galvanic.RuleNobler}},
		{"lead", "-950 mV", "silver-chloride", []finding.ID{galvanic.RuleNoLimit}, nil},
	} {
		v, err := quantity.Parse[quantity.Potential](c.read)
		if err != nil {
			t.Fatal(err)
		}
		fs, err := galvanic.Protected(b, c.material, galvanic.Reading{Value: v, Electrode: c.electrode})
		if err != nil {
			t.Error(err)
			continue
		}
		text := said(t, fs)
		if fs.Has(galvanic.RuleDisagree) && fs[0].Rule != galvanic.RuleDisagree {
			t.Errorf("%s at %s: that the rows disagree is not told first", c.material, c.read)
		}
		for _, id := range c.want {
			if !fs.Has(id) {
				t.Errorf("%s at %s: no %s in\n%s", c.material, c.read, id, text)
			}
		}
		for _, id := range c.not {
			if fs.Has(id) {
				t.Errorf("%s at %s: %s in\n%s", c.material, c.read, id, text)
			}
		}
	}
}

// Over all pairs of the list: a voltage on a limit is within it, and one end beyond it may pass it. Some pair lies on a limit, or this would show less.
func TestLimitsOverAllPairs(t *testing.T) {
	b := tables.Default()
	var names []string
	for p := range b.Potentials() {
		if p.Series == galvanic.Flowing && !slices.Contains(names, p.Name) {
			names = append(names, p.Name)
		}
	}
	on, both := 0, 0
	for _, x := range names {
		for _, y := range names {
			p, err := galvanic.Couple(b, galvanic.Flowing, galvanic.Metal{Name: x}, galvanic.Metal{Name: y})
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range p.Findings {
				if f.Rule == galvanic.RuleBothStates {
					both++
				}
				if f.Facts == nil || f.Facts[0].Name != "limit" {
					continue
				}
				limit, ok := f.Facts[0].Value.(quantity.Potential)
				if !ok {
					t.Fatalf("%v is no potential", f.Facts[0].Value)
				}
				want := galvanic.RuleWithin
				switch {
				case p.Low.Cmp(limit) == 1:
					want = galvanic.RulePasses
				case p.High.Cmp(limit) == 1:
					want = galvanic.RuleMayPass
				}
				if p.High.Equal(limit) {
					on++
				}
				if f.Rule != want {
					t.Errorf("%s and %s, %s to %s against %s: %s, want %s", x, y, p.Low, p.High, limit, f.Rule, want)
				}
			}
		}
	}
	if on == 0 || both == 0 {
		t.Errorf("%d on a limit, %d of two states", on, both)
	}
}

// A metal that knows two states and is named without one is said to be either; with one it is not.
func TestStatesOfAMetal(t *testing.T) {
	for state, want := range map[string]finding.ID{"": galvanic.RuleBothStates, galvanic.Passive: galvanic.RulePassive, galvanic.Active: ""} {
		p, err := galvanic.Couple(tables.Default(), galvanic.Flowing, galvanic.Metal{Name: "stainless steel 316/317", State: state}, galvanic.Metal{Name: "mild steel"})
		if err != nil {
			t.Fatal(err)
		}
		for _, id := range []finding.ID{galvanic.RuleBothStates, galvanic.RulePassive} {
			if p.Findings.Has(id) != (id == want) {
				t.Errorf("%q: %s %t", state, id, p.Findings.Has(id))
			}
		}
	}
}

// On each limit the reading is inside it, a millivolt beyond it is not. Limits of steel: MIL-HDBK-1004/10 -850 mV against copper sulphate, which is -784 mV
// against silver chloride (316 - 250 mV); EN 12473 -800 and -1100 mV, boat practice -800 and -1050 mV. Zinc in flowing seawater is -1030 mV against SCE, which
// is -1039 mV against silver chloride (241 - 250 mV).
func TestReadingsOnTheirLimits(t *testing.T) {
	for _, c := range []struct {
		mV        int64
		electrode string
		want, not []finding.ID
	}{
		{-783, "silver-chloride", []finding.ID{galvanic.RuleUnder}, []finding.ID{galvanic.RuleHeld, galvanic.RuleOver, galvanic.RuleDisagree}},
		{-784, "silver-chloride", []finding.ID{galvanic.RuleUnder, galvanic.RuleHeld, galvanic.RuleDisagree}, nil},
		{-799, "silver-chloride", []finding.ID{galvanic.RuleUnder, galvanic.RuleHeld, galvanic.RuleDisagree}, nil},
		{-800, "silver-chloride", []finding.ID{galvanic.RuleHeld, galvanic.RuleConverted}, []finding.ID{galvanic.RuleUnder, galvanic.RuleDisagree}},
		{-1039, "silver-chloride", []finding.ID{galvanic.RuleHeld}, []finding.ID{galvanic.RuleBeyond}},
		{-1040, "silver-chloride", []finding.ID{galvanic.RuleHeld, galvanic.RuleBeyond}, []finding.ID{galvanic.RuleOver}},
		{-1050, "silver-chloride", []finding.ID{galvanic.RuleHeld}, []finding.ID{galvanic.RuleOver, galvanic.RuleDisagree}},
		{-1051, "silver-chloride", []finding.ID{galvanic.RuleHeld, galvanic.RuleOver, galvanic.RuleDisagree}, nil},
		{-1100, "silver-chloride", []finding.ID{galvanic.RuleHeld, galvanic.RuleOver, galvanic.RuleDisagree}, nil},
		{-1101, "silver-chloride", []finding.ID{galvanic.RuleOver}, []finding.ID{galvanic.RuleDisagree}},
		{-570, "sce", []finding.ID{galvanic.RuleUnder}, []finding.ID{galvanic.RuleNobler}}, // steel in flowing seawater is -570 mV against SCE or less
		{-569, "sce", []finding.ID{galvanic.RuleUnder, galvanic.RuleNobler}, nil},
		{-1030, "sce", []finding.ID{galvanic.RuleConverted}, []finding.ID{galvanic.RuleBeyond}},
		{-1031, "sce", []finding.ID{galvanic.RuleConverted, galvanic.RuleBeyond}, nil},
	} {
		fs, err := galvanic.Protected(tables.Default(), "steel", galvanic.Reading{Value: quantity.Millivolt.N(c.mV), Electrode: c.electrode})
		if err != nil {
			t.Fatal(err)
		}
		for _, id := range c.want {
			if !fs.Has(id) {
				t.Errorf("%d mV, %s: no %s in %v", c.mV, c.electrode, id, fs)
			}
		}
		for _, id := range c.not {
			if fs.Has(id) {
				t.Errorf("%d mV, %s: %s in %v", c.mV, c.electrode, id, fs)
			}
		}
		converted := 0
		for _, f := range fs {
			if f.Rule == galvanic.RuleConverted {
				converted++
			}
		}
		if converted > 1 {
			t.Errorf("%d mV, %s: said %d times that it was converted", c.mV, c.electrode, converted)
		}
	}
	// Read with the electrode of the only row, nothing was converted.
	if fs, err := galvanic.Protected(tables.Default(), "wood-carvel", galvanic.Reading{Value: quantity.Millivolt.N(-575), Electrode: "silver-chloride"}); err != nil || fs.Has(galvanic.RuleConverted) {
		t.Errorf("%v, %v", fs, err)
	}
	// No reading in water is further out than 3 V.
	for mV, taken := range map[int64]bool{-3001: false, -3000: true, 3000: true, 3001: false} {
		if fs := (galvanic.Reading{Value: quantity.Millivolt.N(mV), Electrode: "sce"}).Check(tables.Default()); (len(fs) == 0) != taken {
			t.Errorf("%d mV: %v", mV, fs)
		}
	}
}

func TestFaultsNameWhatIsNear(t *testing.T) {
	b := tables.Default()
	_, err := galvanic.Couple(b, galvanic.Flowing, galvanic.Metal{Name: "mild stel"}, galvanic.Metal{Name: "copper", State: "passive"})
	if !errors.Is(err, finding.ErrUnknown) || !errors.Is(err, finding.ErrValue) || !strings.Contains(err.Error(), "mild steel") {
		t.Errorf("two wrong metals: %v", err)
	}
	if _, err := galvanic.Couple(b, "ACA", galvanic.Metal{Name: "lead"}, galvanic.Metal{Name: "lead"}); !errors.Is(err, finding.ErrUnknown) || !strings.Contains(err.Error(), galvanic.Flowing) {
		t.Errorf("a wrong list: %v", err)
	}
	_, err = galvanic.Protected(b, "aluminum", galvanic.Reading{Value: quantity.Volt.N(5), Electrode: "silver"})
	if !errors.Is(err, finding.ErrUnknown) || !errors.Is(err, finding.ErrImpossible) || !strings.Contains(err.Error(), "aluminium") || !strings.Contains(err.Error(), "silver-chloride") {
		t.Errorf("three mistakes: %v", err)
	}
	if _, err := galvanic.Protected(b, "steel", galvanic.Reading{Electrode: "sce"}); !errors.Is(err, finding.ErrMissing) {
		t.Errorf("no value: %v", err)
	}
	if _, err := galvanic.Protected(&tables.Book{}, "steel", galvanic.Reading{}); err == nil {
		t.Error("an empty book judges a reading")
	}
}

// Converting to another electrode and back gives the reading again.
func TestElectrodesThereAndBack(t *testing.T) {
	b := tables.Default()
	for from := range b.Electrodes() {
		for to := range b.Electrodes() {
			r := galvanic.Reading{Value: quantity.Millivolt.N(-777), Electrode: from.Key}
			there, err := r.Against(b, to.Key)
			if err != nil {
				t.Fatal(err)
			}
			back, err := there.Against(b, from.Key)
			if err != nil || !back.Value.Equal(r.Value) {
				t.Errorf("%s to %s and back: %s, %v", from.Key, to.Key, back.Value, err)
			}
		}
	}
}

func BenchmarkOf(b *testing.B) {
	book := tables.Default()
	x, _ := book.Material("aluminium")
	y, _ := book.Material("bronze")
	for b.Loop() {
		if p := galvanic.Of(book, &x, &y); len(p) != 1 {
			b.Fatal(p)
		}
	}
}

func ExampleOf() {
	book := tables.Default()
	leg, _ := book.Material("aluminium")
	propeller, _ := book.Material("bronze")
	for _, p := range galvanic.Of(book, &leg, &propeller) {
		fmt.Println(p.Anode, "goes:", p.Low, "to", p.High)
	}
	// Output:
	// aluminium goes: 360 mV to 860 mV
}

// Findings of a pair speak of the metal that goes first and of the other against it, from whichever side it is asked; where one of two materials
// stands in no list it is that one that is spoken of.
func TestWhomAPairSpeaksOf(t *testing.T) {
	b := tables.Default()
	steel, bronze, grp := material(t, "steel"), material(t, "bronze"), material(t, "grp")
	for _, pair := range [][2]*tables.Material{{steel, bronze}, {bronze, steel}} {
		p := galvanic.Of(b, pair[0], pair[1])[0]
		for _, f := range p.Findings {
			if f.Rule != galvanic.RuleAnode && f.Rule != galvanic.RuleArea {
				continue
			}
			if f.About != steel.Name || f.Against != bronze.Name {
				t.Errorf("%s of %s and %s: about %s against %s", f.Rule, p.A, p.B, f.About, f.Against)
			}
		}
		if first := p.Findings[0]; first.Rule != galvanic.RuleAnode || len(first.Basis) == 0 || first.Basis[0] != galvanic.Of(b, steel, bronze)[0].Findings[0].Basis[0] {
			t.Errorf("%s and %s: %v", p.A, p.B, first)
		}
	}
	for _, pair := range [][2]*tables.Material{{grp, bronze}, {bronze, grp}} {
		f := galvanic.Of(b, pair[0], pair[1])[0].Findings[0]
		if f.Rule != galvanic.RuleNoList || f.About != grp.Name || f.Against != bronze.Name {
			t.Errorf("%s and %s: %s about %s against %s", pair[0].Name, pair[1].Name, f.Rule, f.About, f.Against)
		}
	}
}
