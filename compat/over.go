package compat

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Over judges the next coat over an old layer. What both lie on is not its business: see OnMaterial and CheckStack.
//
// Asked in this order:
//
//  1. the state of the old layer; a state that forbids answers alone
//  2. where its age is given, the window: before OvercoatMin the next coat waits, after OvercoatMax the old one is abraded;
//     on either bound it is inside; for a one-pack antifouling over fresh epoxy it closes at AntifoulMax
//  3. the rows of coat over coat: level bar, same, pair, class; inside a level the row that gives the most fields, then the one
//     that names the two most closely, then the harsher verdict, then the first in the book
//  4. an undercoat that the next coat cannot do without
//
// Level same speaks of one mechanism over itself. A layer without an age counts as past its window. A pair that no row speaks of
// is answered with ask. The finding of the pair is the first one that is neither of the state nor of the window; there is always
// at least one finding. Over a film that holds organotin or may, and where the row of the
// pair says wet scuff, whatever else asks for abrading asks for that. Steps name their coating; the film and the number of coats are set in a Route.
//
// Basis: common practice, no source.
func Over(b *tables.Book, next tables.Coating, old Layer) finding.List {
	return over(make(finding.List, 0, 2), b, &next, &old, nil)
}

// over adds the findings of Over; on a slate without their facts and bases.
func over(out finding.List, b *tables.Book, next *tables.Coating, old *Layer, on *Slate) finding.List {
	c := &old.Coating
	start, past := len(out), true
	if !old.bare() && next.Role != tables.Bare {
		if f, ok := onState(b, next, old, on); ok {
			out = append(out, f)
			if f.Verdict == finding.Forbidden {
				return out
			}
		}
		if old.Age.Given() {
			closes, field, rule := window(next, c)
			past = closes.Given() && old.Age.Cmp(closes) > 0
			switch {
			case past:
				f := finding.Finding{Rule: rule, Verdict: finding.Needs, About: next.Name, Against: c.Name, First: on.steps()}
				f.First = on.keep(append(f.First, finding.Step{Do: finding.Wash}, finding.Step{Do: finding.Abrade}))
				if on == nil {
					f.Facts, f.Basis = []finding.Fact{{Name: "age", Value: old.Age}, {Name: "window", Value: closes}}, []finding.Basis{c.Basis(field)}
				}
				out = append(out, f)
			case c.OvercoatMin.Given() && old.Age.Cmp(c.OvercoatMin) < 0:
				f := finding.Finding{Rule: RuleWindowEarly, Verdict: finding.Needs, About: next.Name, Against: c.Name, First: on.keep(append(on.steps(), finding.Step{Do: finding.Wait}))}
				if on == nil {
					f.Facts, f.Basis = []finding.Fact{{Name: "age", Value: old.Age}, {Name: "window", Value: c.OvercoatMin}}, []finding.Basis{c.Basis("overcoat_min")}
				}
				out = append(out, f)
			}
		}
	}
	row, ok := b.OvercoatOf(next, c, past)
	if !ok {
		return append(out, finding.Finding{Rule: RuleUnwritten, Verdict: finding.Ask, About: next.Name, Against: c.Name})
	}
	f := finding.Finding{Rule: row.Rule, Verdict: row.Verdict, About: next.Name, Against: c.Name}
	if needsOwn(next, c, &row) {
		f.Rule, f.Verdict = RuleUndercoat, finding.Needs
		under, err := b.Coating(next.Under)
		if err != nil {
			return append(out, finding.Finding{Rule: RuleUnwritten, Verdict: finding.Ask, About: next.Name, Against: next.Under})
		}
		f.First = on.keep(append(on.steps(), finding.Step{Do: PutsOn(under.Role), Coating: under.Key}))
		if on == nil {
			f.Facts, f.Basis = []finding.Fact{{Name: "undercoat", Value: under.Name}}, []finding.Basis{next.Basis("under")}
		}
	} else {
		f.First = rowSteps(&row, on)
		if on == nil {
			f.Basis = []finding.Basis{row.Basis("verdict")}
		}
	}
	out = append(out, f)
	if mayHoldTin(c) || slices.ContainsFunc(f.First, func(s finding.Step) bool { return s.Do == finding.WetScuff }) {
		for _, f := range out[start:] {
			scuff(f.First)
		}
	}
	if f.Verdict < finding.Ask || f.Verdict == finding.Needs {
		if next.Role == tables.Antifouling && !next.Copper() && c.Copper() {
			f := finding.Finding{Rule: RuleCopperBelow, Verdict: finding.Caution, About: next.Name, Against: c.Name}
			if on == nil {
				f.Basis = []finding.Basis{c.Basis("biocide")}
			}
			out = append(out, f)
		}
	}
	return out
}

// window is when the old coat's window to the next one closes, the field that says so, and the rule that tells it is past.
func window(next, old *tables.Coating) (closes quantity.Duration, field string, past finding.ID) {
	if next.Role == tables.Antifouling && next.Packs == 1 && old.AntifoulMax.Given() {
		return old.AntifoulMax, "antifouling_max", RuleWindowAntifoul
	}
	return old.OvercoatMax, "overcoat_max", RuleWindowPast
}

// Closes returns how long after a fresh coat the next may go on without abrading, at the temperature of the coat's row: its OvercoatMax, or
// AntifoulMax under a one-pack antifouling. Not given: there is no limit.
//
// Basis: that of the row, of the field that decides.
func Closes(next, fresh tables.Coating) quantity.Duration {
	closes, _, _ := window(&next, &fresh)
	return closes
}

// mayHoldTin reports whether the film holds organotin, or nobody knows what it is.
func mayHoldTin(c *tables.Coating) bool {
	return c.Biocide == tables.Organotin || c.Mechanism == tables.Unknown
}

// scuff turns abrading into light, wet work by hand.
func scuff(steps []finding.Step) {
	for i := range steps {
		if steps[i].Do == finding.Abrade {
			steps[i].Do, steps[i].Grit = finding.WetScuff, ""
		}
	}
}

// onState judges the state of the old layer; ok is false when it asks for nothing.
func onState(b *tables.Book, next *tables.Coating, old *Layer, on *Slate) (finding.Finding, bool) {
	state := old.State
	if state == "" {
		state = tables.NotReported
	}
	if state == tables.Sound {
		return finding.Finding{}, false
	}
	row, err := b.Condition(state)
	if err != nil {
		return finding.Finding{Rule: RuleStateUnknown, Verdict: finding.Ask, About: next.Name, Against: old.Coating.Name, Facts: []finding.Fact{{Name: "state", Value: string(state)}}}, true
	}
	if row.Verdict == finding.Fine {
		return finding.Finding{}, false
	}
	f := finding.Finding{Rule: row.Rule, Verdict: row.Verdict, About: next.Name, Against: old.Coating.Name}
	if on == nil {
		f.Facts, f.Basis = []finding.Fact{{Name: "state", Value: row.Name}}, []finding.Basis{row.Basis("verdict")}
	}
	steps := on.steps()
	for a := range row.Steps() {
		steps = append(steps, finding.Step{Do: a})
	}
	f.First = on.keep(steps)
	return f, true
}

// needsOwn reports whether the coat lacks the undercoat that it cannot do without, and nothing worse is said.
func needsOwn(next, old *tables.Coating, row *tables.Overcoat) bool {
	if next.Under == "" || old.Key == next.Under || row.Level == tables.SameOnSame {
		return false
	}
	return row.Verdict != finding.Forbidden && row.Verdict != finding.Ask
}

// rowSteps are the steps of a row; those that put something on name it.
func rowSteps(row *tables.Overcoat, on *Slate) []finding.Step {
	steps := on.steps()
	for a := range row.Steps() {
		s := finding.Step{Do: a}
		switch {
		case lays(a):
			s.Coating = row.With
		case a == finding.Abrade, a == finding.WetScuff:
			s.Grit = row.Grit
		}
		steps = append(steps, s)
	}
	return on.keep(steps)
}

// lays reports whether the work puts a coating on.
func lays(a finding.Action) bool {
	return a == finding.Tie || a == finding.Seal || a == finding.Prime || a == finding.Barrier
}

// PutsOn is the work that puts on a coating of the role; an antifouling goes on as a primer does.
//
// Basis: common practice.
func PutsOn(r tables.Role) finding.Action {
	switch r {
	case tables.TieCoat:
		return finding.Tie
	case tables.Sealer:
		return finding.Seal
	case tables.Barrier:
		return finding.Barrier
	default:
		return finding.Prime
	}
}
