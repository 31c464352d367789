package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Material is what a part is made of, with what it takes.
type Material struct {
	Row
	Painted    Policy                        // never for anodes, seals and the like; ask where a maker must be asked
	Cuprous    Policy                        // cuprous oxide
	Metallic   Policy                        // metallic copper
	Other      Policy                        // copper thiocyanate and other copper compounds
	Free       Policy                        // copper-free and biocide-free types
	Barrier    Policy                        // fine: none wanted; ask: advised; over barrier: needed before any antifouling; never: would do harm
	Film       quantity.Range[quantity.Film] // dry film of the barrier
	With       string                        // key of the coating that the barrier is built of
	Primer     string                        // key of the primer on the bare surface; empty when none is needed
	Metal      bool                          // lies in the galvanic series
	Lag        quantity.Range[float64]       // hours by which its skin follows the air, mass times heat over film coefficient; not given: all zero, and it is measured
	Anode      bool                          // gives up itself or a current to protect other metals
	KeepsClean bool                          // keeps growth off by itself, so that paint would only take that away
	TwoPack    bool                          // takes rigid two-pack coats
	OldCopper  bool                          // old films with copper, or unknown, may stay; false: they come off
	Flexes     bool                          // a film that does not give cracks on it
	Breathes   bool                          // bare, it gives off air as it grows warmer, which blows bubbles into a fresh coat
	Carrier    string                        // the only carrier the surface stands; empty: any
	bare       []finding.Action
	prefers    []string
	waters     []string
	hazards    []string
}

// Prepare lists the work on the bare surface before the first coat.
func (m Material) Prepare() iter.Seq[finding.Action] { return slices.Values(m.bare) }

// Hazards lists the keys of the cautions that work on the material calls for.
func (m Material) Hazards() iter.Seq[string] { return slices.Values(m.hazards) }

// Suits reports whether an anode of the material is meant for the water; a material that names no water suits any.
func (m Material) Suits(water string) bool {
	return water == "" || len(m.waters) == 0 || slices.Contains(m.waters, water)
}

// Choosy reports whether the material prefers some biocide classes among those that it takes.
func (m Material) Choosy() bool { return len(m.prefers) > 0 }

// Prefers reports whether the biocide class is one that the material prefers; a material that is not choosy prefers all.
func (m Material) Prefers(b Biocide) bool {
	return len(m.prefers) == 0 || slices.Contains(m.prefers, string(b))
}

// Takes returns the material's policy for a biocide class; what is unknown, and organotin, is taken as cuprous oxide.
func (m Material) Takes(b Biocide) Policy {
	switch b {
	case CuprousOxide:
		return m.Cuprous
	case MetallicCopper:
		return m.Metallic
	case CopperThiocyanate, OtherCopper:
		return m.Other
	case CopperFree, NoBiocide:
		return m.Free
	case UnknownBiocide, Organotin:
	}
	return m.Cuprous // as the harshest
}

var policyWords = []string{string(Allowed), string(OverBarrier), string(AskMaker), string(Never)}

func readMaterial(r *entry.Row) Material {
	policy := func(key string) Policy { return Policy(r.Word(key, policyWords...)) }
	m := Material{
		Row:        readRow(r),
		Painted:    policy("painted"),
		Cuprous:    policy("cuprous_oxide"),
		Metallic:   policy("metallic_copper"),
		Other:      policy("other_copper"),
		Free:       policy("copper_free"),
		Barrier:    policy("barrier"),
		Film:       entry.Range[quantity.Film](r, "barrier_film"),
		With:       r.Text("barrier_with"),
		Primer:     r.Text("primer"),
		TwoPack:    r.YesNo("two_pack").True(),
		Anode:      r.YesNo("anode").True(),
		KeepsClean: r.YesNo("keeps_clean").True(),
		Metal:      r.YesNo("metal").True(),
		OldCopper:  r.YesNo("old_copper_stays").True(),
		Flexes:     r.YesNo("flexes").True(),
		Breathes:   r.YesNo("breathes").True(),
		Carrier:    r.Word("carrier", "solvent", "water"),
		bare:       readActions(r, "prepare"),
		prefers:    r.Words("prefers", biocideWords...),
		waters:     r.Words("waters", waterWords...),
		hazards:    r.Texts("hazards"),
	}
	m.Lag, _ = r.Floats("lag", 0.01, 200)
	r.Need("fine, over barrier, ask or never", "painted")
	if m.Painted != Never {
		r.Need("what the rules read of every material that is painted", "cuprous_oxide", "metallic_copper", "other_copper", "copper_free", "barrier", "two_pack", "old_copper_stays", "prepare")
	}
	if slices.Contains([]Policy{m.Barrier, m.Cuprous, m.Metallic, m.Other, m.Free}, OverBarrier) || m.Barrier == AskMaker && m.Painted != Never {
		r.Need("the film of the barrier and the coating that it is built of", "barrier_film", "barrier_with")
	}
	if m.Film.Low.Given() && m.Film.Low.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "barrier_film", m.Film.Low.String(), "a film above zero")
	}
	return m
}

// ConditionRow is what an old film's state asks for before anything goes over it.
type ConditionRow struct {
	Row
	Verdict finding.Verdict
	Rule    finding.ID // the rule that says it
	steps   []finding.Action
}

// Steps lists the work that the state asks for.
func (c ConditionRow) Steps() iter.Seq[finding.Action] { return slices.Values(c.steps) }

func readCondition(r *entry.Row) ConditionRow {
	c := ConditionRow{Row: readRow(r), Verdict: readVerdict(r), Rule: readRuleID(r), steps: readActions(r, "steps")}
	if c.Verdict == finding.Needs && len(c.steps) == 0 {
		r.Fault(finding.ErrMissing, "steps", "", "the work that the verdict needs")
	}
	return c
}

// Level orders the overcoat rows: a bar is asked first, then same-on-same, then the named pair, then the class rule.
type Level uint8

// The levels.
const (
	Bar Level = iota + 1
	SameOnSame
	Pair
	Class
)

var levelWords = []string{"bar", "same", "pair", "class"}

// String returns the level's word.
func (l Level) String() string {
	if l < Bar || l > Class {
		return "invalid level"
	}
	return levelWords[l-1]
}

// Overcoat says what it takes to put one family over another. An empty field matches anything.
type Overcoat struct {
	Row
	Level    Level
	Rule     finding.ID // the rule that says it
	New, Old string     // families: mechanisms, roles, or keys of coatings; "antifouling" matches every antifouling and its old film
	NewPacks int        // 0: any
	OldPacks int
	Solvent  string // "strong" or "mild" solvent of the new coat; empty: any
	Window   string // "inside" the old coat's overcoating window, "past" it, or empty for both
	OldIs    Biocide
	Except   string // a family that the row does not speak of, as new
	Verdict  finding.Verdict
	With     string // coating of a tie coat, seal or prime step
	Grit     string
	steps    []finding.Action
}

// Steps lists the work between the two coats.
func (o *Overcoat) Steps() iter.Seq[finding.Action] { return slices.Values(o.steps) }

func readOvercoat(r *entry.Row) Overcoat {
	o := Overcoat{
		Row:     readRow(r),
		Rule:    readRuleID(r),
		New:     r.Text("new"),
		Old:     r.Text("old"),
		Solvent: r.Word("new_solvent", "strong", "mild"),
		Window:  r.Word("window", "inside", "past"),
		OldIs:   Biocide(r.Word("old_biocide", biocideWords...)),
		Except:  r.Text("except"),
		Verdict: readVerdict(r),
		With:    r.Text("with"),
		Grit:    r.Text("grit"),
		steps:   readActions(r, "steps"),
	}
	o.NewPacks, _ = r.Int("new_packs", 1, 2)
	o.OldPacks, _ = r.Int("old_packs", 1, 2)
	r.Need("bar, same, pair or class", "level")
	o.Level = Level(slices.Index(levelWords, r.Word("level", levelWords...)) + 1)
	if o.Verdict == finding.Needs && len(o.steps) == 0 {
		r.Fault(finding.ErrMissing, "steps", "", "the work that the verdict needs")
	}
	return o
}

// Zone is a place on the bottom: a part (hull, keel, rudder, leg …) or a strip of the hull (flat, waterline, edges).
type Zone struct {
	Row
	Part       bool                    // may be the zone of a part of the boat
	InHull     bool                    // the hull formulas count it in
	Wear       quantity.Range[float64] // wear as a multiple of the flat's
	ExtraCoats int
	Sheet      bool                            // takes a coating that is laid as a sheet
	With       string                          // key of the zone whose part it belongs to; empty: the hull's
	Gap        quantity.Range[quantity.Length] // width of the hull strip beside it that is kept free of cuprous oxide; given for legs
	mechanisms []string
}

// Takes reports whether the zone takes the mechanism at all (a propeller takes few).
func (z Zone) Takes(m Mechanism) bool {
	return len(z.mechanisms) == 0 || slices.Contains(z.mechanisms, string(m))
}

func readZone(r *entry.Row) Zone {
	z := Zone{Row: readRow(r), Part: r.YesNo("part").True(), InHull: r.YesNo("in_hull_formula").True(), Sheet: r.YesNo("sheet").True(), With: r.Text("goes_with"), mechanisms: r.Words("mechanisms", mechanismWords...)}
	z.Wear, _ = r.Floats("wear", 0.1, 10)
	z.ExtraCoats, _ = r.Int("extra_coats", 0, 3)
	z.Gap = entry.Range[quantity.Length](r, "gap")
	r.Need("how many times the flat's wear: [low, typical, high]", "wear")
	return z
}

func readVerdict(r *entry.Row) finding.Verdict {
	var v finding.Verdict
	r.Need("fine, caution, ask, needs or forbidden", "verdict")
	if s := r.Word("verdict", "fine", "caution", "ask", "needs", "forbidden"); s != "" {
		_ = v.UnmarshalText([]byte(s)) // the word was checked one line above
	}
	return v
}

func readRuleID(r *entry.Row) finding.ID {
	r.Need("the key of a row of rules", "rule")
	return finding.ID(r.Text("rule"))
}

var actionWords = []string{
	string(finding.Wash), string(finding.Degrease), string(finding.Abrade), string(finding.WetScuff), string(finding.Identify), string(finding.TestPatch), string(finding.SpotRepair),
	string(finding.DryOut), string(finding.Tie), string(finding.Seal), string(finding.Strip), string(finding.Blast), string(finding.Prime), string(finding.Barrier),
	string(finding.Polish), string(finding.Wait), string(finding.Mask), string(finding.Shift), string(finding.Gap),
}

func readActions(r *entry.Row, key string) []finding.Action {
	var out []finding.Action
	for _, s := range r.Words(key, actionWords...) {
		out = append(out, finding.Action(s))
	}
	return out
}
