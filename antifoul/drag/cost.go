package drag

import (
	"cmp"
	"errors"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Cost is what one grade of fouling costs a hull at her speed, against the same hull as smooth as glass.
type Cost struct {
	Grade      tables.Roughness
	Smooth     Line
	Share      quantity.Range[float64]        // of her resistance that is friction while she is smooth
	Friction   quantity.Range[float64]        // more friction, as a multiple of the smooth friction; low and typical by the sudden onset, high by the gradual one
	Resistance quantity.Range[quantity.Share] // more resistance, to 0.1 %: low end rounded down, high end up
	Power      quantity.Range[quantity.Share] // more power for the same speed, likewise
	Findings   finding.List                   // how friction's share is known, then what to do
	_          [0]func()
}

// Penalty returns what the grade costs; grade is a key of the roughness table.
//
//	friction   = (CF rough − CF smooth) ÷ CF smooth
//	resistance = friction × share of friction, end by end
//	power      = resistance at the low end, else resistance × 86 ÷ 80
//
// The last line is the ratio of power to resistance that Schultz gives for the worst condition, from its rows: a slower and harder
// loaded propeller loses a little more. The whole hull is taken as rough. What costs less than the row drag-worth is left; above that,
// soft growth is cleaned off and hard growth, from the rating of the row drag-hard-from, asks for a lift.
//
// Length and speed as Hull says, Reynolds number from LeastReynolds to MostReynolds. Above the Froude number of drag-froude-planing the
// share of friction is not known, which is a caution, and the ends stand far apart. The error is a finding.Faults.
//
// Source: Granville 1958, 1987 and Schultz 2007 for friction. Basis: assumption for its share.
func Penalty(b *tables.Book, h Hull, grade string) (Cost, error) {
	a, fs := newAsked(b, h)
	i := slices.IndexFunc(a.grades, func(r tables.Roughness) bool { return r.Key == grade })
	if i < 0 {
		var known []string
		for _, r := range a.grades {
			known = append(known, r.Key)
		}
		fs = append(fs, finding.Fault{Kind: finding.ErrUnknown, Key: "grade", Got: entry.Describe(grade), Want: finding.Suggest(grade, known)})
	}
	if err := fs.Err(); err != nil {
		return Cost{}, err
	}
	return a.cost(a.grades[i])
}

// Costs returns what every grade of the book costs, the smoothest first. See Penalty.
//
// Basis: as of Penalty.
func Costs(b *tables.Book, h Hull) ([]Cost, error) {
	a, fs := newAsked(b, h)
	if err := fs.Err(); err != nil {
		return nil, err
	}
	var out []Cost
	for _, r := range a.grades {
		c, err := a.cost(r)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// asked is one hull with the numbers of the book.
type asked struct {
	book    *tables.Book
	hull    Hull
	numbers numbers
	line    Line
	grades  []tables.Roughness // rising
	loaded  float64            // power by resistance at the worst condition
	power   finding.Basis      // of the published power
	share   quantity.Range[float64]
	told    finding.Finding // how the share is known
}

func newAsked(b *tables.Book, h Hull) (asked, finding.Faults) {
	fs := h.Check()
	a := asked{book: b, hull: h, numbers: numbersOf(b, &fs)}
	a.grades = slices.SortedStableFunc(b.Roughnesses(), func(x, y tables.Roughness) int { return cmp.Or(x.Ks.Cmp(y.Ks), cmp.Compare(x.Key, y.Key)) })
	v, err := b.Value(worstPower)
	if err != nil {
		fs = append(fs, lacks("value", worstPower))
	}
	i := slices.IndexFunc(a.grades, func(r tables.Roughness) bool { return r.Key == worstGrade })
	if i < 0 || a.grades[i].Slow.Sign() <= 0 {
		fs = append(fs, lacks("roughness", worstGrade))
	} else {
		a.loaded = max(1, v.Value.Typical/a.grades[i].Slow.Float(quantity.Percent))
		a.power = v.Basis("value")
	}
	if len(fs) > 0 {
		return a, fs
	}
	if a.line, err = line(a.numbers, h); err != nil {
		return a, faults(err)
	}
	a.tellShare()
	return a, nil
}

// tellShare finds the share of friction, and says on what it rests.
func (a *asked) tellShare() {
	share, keys, planing := a.numbers.share(a.line.Froude)
	a.share = share
	a.told = finding.Finding{Rule: RuleShare, Verdict: finding.Fine}
	if planing {
		a.told.Rule, a.told.Verdict = RulePlaning, finding.Caution
	}
	for _, key := range keys {
		if f, err := a.book.Factor(key); err == nil {
			a.told.Basis = append(a.told.Basis, f.Basis("value"))
		}
	}
	whole := percents(share, 0)
	a.told.Facts = []finding.Fact{
		{Name: "length", Value: a.hull.Length},
		{Name: "speed", Value: a.hull.Speed},
		{Name: "froude", Value: a.line.Froude},
		{Name: "share", Value: whole.Typical},
		{Name: "range", Value: whole},
	}
}

// cost reckons one grade.
func (a *asked) cost(r tables.Roughness) (Cost, error) {
	relative := r.Ks.Float(quantity.Micrometre) * 1e-6 / a.hull.Length.Float(quantity.Metre)
	var more [2]float64
	for i, onset := range []Onset{Sudden, Gradual} {
		cf, err := Rough(a.line.Reynolds, relative, onset)
		if err != nil {
			return Cost{}, faults(err).Under("", "grade["+r.Key+"]")
		}
		more[i] = (cf - a.line.Schoenherr) / a.line.Schoenherr
	}
	c := Cost{Grade: r, Smooth: a.line, Share: a.share, Friction: quantity.Range[float64]{Low: more[0], Typical: more[0], High: more[1]}}
	resistance := quantity.Range[float64]{Low: more[0] * a.share.Low, Typical: more[0] * a.share.Typical, High: more[1] * a.share.High}
	power := quantity.Range[float64]{Low: resistance.Low, Typical: resistance.Typical * a.loaded, High: resistance.High * a.loaded}
	c.Resistance, c.Power = percents(resistance, 1), percents(power, 1)
	c.Findings = finding.List{a.told, a.advise(r, resistance, power)}
	return c, nil
}

// advise says what to do about the grade.
func (a *asked) advise(r tables.Roughness, resistance, power quantity.Range[float64]) finding.Finding {
	f := finding.Finding{Rule: RuleLift, Verdict: finding.Caution, About: r.Name, Basis: []finding.Basis{r.Basis("ks")}}
	limit := ""
	switch {
	case resistance.Typical < a.numbers["drag-worth"].Typical:
		f.Rule, f.Verdict, limit = RuleLeave, finding.Fine, "drag-worth"
	case float64(r.Least) < a.numbers["drag-hard-from"].Typical:
		f.Rule, limit = RuleClean, "drag-worth"
	default:
		limit = "drag-hard-from"
	}
	if n, err := a.book.Factor(limit); err == nil {
		f.Basis = append(f.Basis, n.Basis("value"))
	}
	f.Basis = append(f.Basis, a.power)
	whole, need := percents(resistance, 0), percents(power, 0)
	f.Facts = []finding.Fact{
		{Name: "rating", Value: r.Rating},
		{Name: "resistance", Value: whole.Typical},
		{Name: "range", Value: whole},
		{Name: "power", Value: need.Typical},
		{Name: "power_range", Value: need},
	}
	return f
}

// percents writes shares as a quantity: the low end rounded down, the high end up.
func percents(r quantity.Range[float64], places int32) quantity.Range[quantity.Share] {
	near := func(x float64, how quantity.Rounding) quantity.Share {
		s, err := quantity.Percent.Near(100*x, places, how)
		if err != nil {
			return quantity.Share{} // no number in range gets here
		}
		return s
	}
	return quantity.Range[quantity.Share]{Low: near(r.Low, quantity.Down), Typical: near(r.Typical, quantity.Nearest), High: near(r.High, quantity.Up)}
}

// faults are the faults of an error of this package.
func faults(err error) finding.Faults {
	fs, ok := errors.AsType[finding.Faults](err)
	if !ok {
		return finding.Faults{{Kind: err}}
	}
	return fs
}
