package galvanic

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Reading is one potential read in seawater.
type Reading struct {
	Value     quantity.Potential
	Electrode string // key of a reference electrode
}

// Check returns the faults of the reading.
func (r Reading) Check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	if !r.Value.Given() {
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: "potential", Want: "a potential, -820 mV"})
	} else if v := r.Value.Float(quantity.Millivolt); v < -3000 || v > 3000 {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "potential", Got: r.Value.String(), Want: "a potential from -3000 mV to 3000 mV"})
	}
	var known []string
	for e := range b.Electrodes() {
		if known = append(known, e.Key); e.Key == r.Electrode {
			return fs
		}
	}
	return append(fs, finding.Fault{Kind: finding.ErrUnknown, Key: "electrode", Got: entry.Describe(r.Electrode), Want: finding.Suggest(r.Electrode, known)})
}

// Against returns the reading as the other electrode would show it:
//
//	E(other) = E(read) + SHE(read) − SHE(other)
//
// The error is a finding.Faults for an electrode that the book does not hold.
//
// Basis: derived; the electrodes' potentials are rows of the book with their sources.
func (r Reading) Against(b *tables.Book, electrode string) (Reading, error) {
	if err := r.Check(b).Err(); err != nil {
		return Reading{}, err
	}
	from, err := b.Electrode(r.Electrode)
	if err != nil {
		return Reading{}, err
	}
	to, err := b.Electrode(electrode)
	if err != nil {
		return Reading{}, err
	}
	return Reading{Value: r.Value.Add(from.SHE).Sub(to.SHE), Electrode: electrode}, nil
}

// Protected judges a reading against every protection potential of the material, that they disagree first where they do, one finding
// a row in the order of the book, then what is to be said of the reading itself: another electrode than the row's, a value nobler than the metal shows by
// itself, a value beyond what zinc can pull it to. A reading on a limit is inside it. A material without a row is a question.
//
// Rows for a special case (mud, high-strength steel) are told beside the others and do not decide.
//
// Basis: the rows; conversions by the electrodes' rows, which are from memory and "about".
func Protected(b *tables.Book, material string, r Reading) (finding.List, error) {
	fs := r.Check(b)
	m, err := b.Material(material)
	if err != nil {
		var known []string
		for k := range b.Materials() {
			known = append(known, k.Key)
		}
		fs = append(fs, finding.Fault{Kind: finding.ErrUnknown, Key: "material", Got: entry.Describe(material), Want: finding.Suggest(material, known)})
	}
	if err := fs.Err(); err != nil {
		return nil, err
	}
	j := judge{b: b, m: &m, read: r}
	for p := range b.Protections() {
		if p.Material == material {
			if err := j.row(&p); err != nil {
				return nil, err
			}
		}
	}
	if len(j.out) == 0 {
		return finding.List{{Rule: RuleNoLimit, Verdict: finding.Ask, About: m.Name}}, nil
	}
	if j.held && j.under || j.over && j.within {
		j.add(RuleDisagree, finding.Ask, nil)
		last := len(j.out) - 1
		j.out = slices.Insert(j.out[:last], 0, j.out[last])
	}
	if err := j.plausible(); err != nil {
		return nil, err
	}
	return j.out, nil
}

// judge is one reading being judged.
type judge struct {
	b                         *tables.Book
	m                         *tables.Material
	read                      Reading
	out                       finding.List
	held, under, over, within bool // by some row
	converted                 bool // that the reading was converted has been said
}

func (j *judge) add(rule finding.ID, v finding.Verdict, basis []finding.Basis, facts ...finding.Fact) {
	j.out = append(j.out, finding.Finding{Rule: rule, Verdict: v, About: j.m.Name, Facts: facts, Basis: basis})
}

// row judges the reading by one row.
func (j *judge) row(p *tables.Protection) error {
	is, facts, err := j.against(p.Electrode)
	if err != nil {
		return err
	}
	facts = append(facts, finding.Fact{Name: "row", Value: p.Name}, finding.Fact{Name: "at", Value: p.At}, finding.Fact{Name: "floor", Value: p.NotBelow})
	under := p.At.Given() && is.Cmp(p.At) > 0
	over := p.NotBelow.Given() && is.Cmp(p.NotBelow) < 0
	rule, v, field := RuleHeld, finding.Fine, "at_or_below"
	switch {
	case under:
		rule, v = RuleUnder, finding.Caution
	case over:
		rule, v, field = RuleOver, finding.Caution, "not_below"
	case !p.At.Given():
		rule, field = RuleNotOver, "not_below"
	}
	basis := []finding.Basis{p.Basis(field)}
	if p.Only != "" {
		word := map[finding.ID]string{RuleHeld: "protected", RuleUnder: "not protected", RuleOver: "over-protected", RuleNotOver: "not over-protected"}[rule]
		j.add(RuleOnly, finding.Fine, basis, append(facts, finding.Fact{Name: "only", Value: p.Only}, finding.Fact{Name: "word", Value: word})...)
		return nil
	}
	if p.At.Given() {
		j.held, j.under = j.held || !under, j.under || under
	}
	if p.NotBelow.Given() {
		j.over, j.within = j.over || over, j.within || !over
	}
	j.add(rule, v, basis, facts...)
	if p.Electrode != j.read.Electrode && !j.converted {
		j.converted = true
		from, err := j.b.Electrode(j.read.Electrode)
		if err != nil {
			return err
		}
		j.add(RuleConverted, finding.Caution, []finding.Basis{from.Basis("she")}, append(facts, finding.Fact{Name: "given", Value: j.read.Value}, finding.Fact{Name: "from", Value: from.Name})...)
	}
	return nil
}

// zinc is the material that bounds what sacrificial anodes in salt water can pull a hull to, magnesium aside.
const zinc = "zinc-anode"

// plausible says what makes the reading itself doubtful, by the list Flowing.
func (j *judge) plausible() error {
	if states := made(j.b, j.m); len(states) > 0 {
		metal := states[0] // the noblest, if it knows two
		is, facts, err := j.against(metal.electrode)
		if err != nil {
			return err
		}
		if is.Cmp(metal.noble) > 0 {
			j.add(RuleNobler, finding.Ask, metal.basis, append(facts, finding.Fact{Name: "noble", Value: metal.noble})...)
		}
	}
	anode, err := j.b.Material(zinc)
	if err != nil {
		return nil //nolint:nilerr // a book of one's own without zinc: nothing to hold the reading against
	}
	for _, pulled := range made(j.b, &anode) {
		is, facts, err := j.against(pulled.electrode)
		if err != nil {
			return err
		}
		if is.Cmp(pulled.active) < 0 {
			j.add(RuleBeyond, finding.Caution, pulled.basis, append(facts, finding.Fact{Name: "zinc", Value: pulled.active})...)
		}
	}
	return nil
}

// against converts the reading, and tells it as facts.
func (j *judge) against(electrode string) (quantity.Potential, []finding.Fact, error) {
	is, err := j.read.Against(j.b, electrode)
	if err != nil {
		return quantity.Potential{}, nil, err
	}
	e, err := j.b.Electrode(electrode)
	return is.Value, []finding.Fact{{Name: "read", Value: is.Value}, {Name: "electrode", Value: e.Name}}, err
}
