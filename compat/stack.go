package compat

import (
	"math"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// CheckStack judges a whole stack as it would lie on the part when the work is done, bottom to top: every layer against the
// material, every coat over the one below, also through an undercoat between; the barrier's film; the step in lightness between a
// signal layer and the working layer on it; and the days that the top coat stands dry before launch.
//
// A new layer (one that is not Found) without an age counts as painted inside the window of the layer below. A pair of two found
// layers is there already: it is a caution at most. daysToLaunch is counted from the last coat; below 0 it is not known and the
// clock is not judged. The step in lightness is the factor "lightness-step"; exactly that much is enough.
//
// There is at least one finding, unless s is empty: then one says so.
//
// Basis: common practice; the step in lightness is an assumption.
func CheckStack(b *tables.Book, p Part, s Stack, daysToLaunch int) finding.List {
	m, err := b.Material(p.Material)
	if err != nil {
		return finding.List{{Rule: RuleMaterialUnknown, Verdict: finding.Ask, About: p.Name, Against: p.Material}}
	}
	if len(s) == 0 {
		return finding.List{{Rule: RuleStackEmpty, Verdict: finding.Fine, About: p.Name, Against: m.Name}}
	}
	var out finding.List
	for i := range s {
		out = onMetal(out, b, &m, &p, s, i)
	}
	for i := range s[1:] {
		out = pairOf(out, b, s, i+1)
	}
	out = thinBarrier(out, &m, &p, s)
	out = lightness(out, b, s)
	return airClock(out, &s[len(s)-1], daysToLaunch)
}

// onMetal judges layer i against the material, with what lies below it.
func onMetal(out finding.List, b *tables.Book, m *tables.Material, p *Part, s Stack, i int) finding.List {
	l := &s[i]
	if l.bare() {
		if len(s) > 1 {
			return out
		}
		return append(out, finding.Finding{Rule: RuleBareStays, Verdict: finding.Fine, About: l.Coating.Name, Against: m.Name, Basis: []finding.Basis{m.Basis("painted")}})
	}
	if comesOff(m, &l.Coating) {
		if l.found() {
			return append(out, offFinding(m, &l.Coating, finding.Forbidden))
		}
		return onSurface(out, finding.Forbidden, face{}, m, &l.Coating, nil)
	}
	zone := ""
	if i == len(s)-1 {
		zone = p.Zone
	}
	if !l.found() {
		least := finding.Fine
		if i < len(s)-1 {
			least = finding.Ask
		}
		out = onSurface(out, least, faceOf(b, zone), m, &l.Coating, nil)
		if p.Laminate == "wet" && l.Coating.Packs == 2 {
			out = append(out, wet(&l.Coating, m))
		}
	}
	if l.found() && !holdsCopper(&l.Coating) {
		return out
	}
	for _, f := range aboveBarrier(nil, m, &l.Coating, s[:i]) {
		if f.Verdict == finding.Needs { // nothing goes in between any more
			f.Verdict, f.First = finding.Forbidden, nil
		}
		if f.Verdict == finding.Forbidden || i == len(s)-1 {
			out = append(out, f)
		}
	}
	return out
}

// pairOf judges layer i over the one below, and over the next one that is no mere undercoat. A pair of two found layers that does not
// last is a caution while nothing new lies above it; with something new above it is forbidden, for the new goes with the old.
func pairOf(out finding.List, b *tables.Book, s Stack, i int) finding.List {
	next, old := &s[i], s[i-1]
	if next.found() && old.found() {
		f, bad := foundPair(b, s, i)
		if bad && slices.ContainsFunc(s[i:], func(l Layer) bool { return !l.found() }) {
			f.Verdict = finding.Forbidden
		}
		if bad {
			out = append(out, f)
		}
		return out
	}
	fresh(&old)
	return buried(over(out, b, &next.Coating, &old, nil), b, &next.Coating, nil, s[:i])
}

// foundPair judges whether found layer i lies on what it does not hold on: the one below, or what an undercoat below covers.
func foundPair(b *tables.Book, s Stack, i int) (finding.Finding, bool) {
	next, old := &s[i], s[i-1]
	if old.bare() {
		return finding.Finding{}, false
	}
	old.State, old.Age = tables.Sound, quantity.Duration{} // its state is another question
	bad := over(nil, b, &next.Coating, &old, nil).Worst() == finding.Forbidden || buried(nil, b, &next.Coating, nil, s[:i]).Worst() == finding.Forbidden
	return finding.Finding{Rule: RuleFoundPair, Verdict: finding.Caution, About: next.Coating.Name, Against: old.Coating.Name}, bad
}

// buried adds what a coat that works does not go above, though undercoats lie between: the first layer below them that is none. Only what is
// forbidden or unknown of the two is told.
func buried(out finding.List, b *tables.Book, next *tables.Coating, on *Slate, below ...Stack) finding.List {
	if next.Role == tables.Bare || undercoat(next.Role) {
		return out
	}
	worked, between := worker(below)
	if worked == nil || !between || worked.bare() {
		return out
	}
	deep := *worked
	deep.State = tables.Sound // its state was judged with the undercoat
	for _, f := range over(make(finding.List, 0, 4), b, next, &deep, on) {
		switch f.Verdict {
		case finding.Forbidden:
			out = append(out, finding.Finding{Rule: RuleBuried, Verdict: finding.Forbidden, About: f.About, Against: f.Against, Basis: f.Basis})
		case finding.Ask:
			out = append(out, finding.Finding{Rule: RuleBuriedAsk, Verdict: finding.Ask, About: f.About, Against: f.Against, Basis: f.Basis})
		case finding.Fine, finding.Caution, finding.Needs:
		}
	}
	return out
}

// worker is the uppermost layer of stacks that lie on each other that is no undercoat, nil when none is, and whether undercoats lie on it.
func worker(below []Stack) (l *Layer, covered bool) {
	for i := len(below) - 1; i >= 0; i-- {
		for j := len(below[i]) - 1; j >= 0; j-- {
			if l = &below[i][j]; !l.undercoat() {
				return l, covered
			}
			covered = true
		}
	}
	return nil, covered
}

// undercoat reports whether the layer is a primer, a barrier, a sealer or a tie coat: it does not decide what holds on it alone.
func (l *Layer) undercoat() bool { return undercoat(l.Coating.Role) }

func undercoat(r tables.Role) bool {
	switch r {
	case tables.Primer, tables.Barrier, tables.Sealer, tables.TieCoat:
		return true
	case tables.Antifouling, tables.Blacking, tables.OldFilm, tables.Bare:
	}
	return false
}

// fresh gives a new layer without an age one inside its window.
func fresh(l *Layer) {
	if !l.found() && !l.Age.Given() {
		l.Age = inTime(&l.Coating)
	}
}

// thinBarrier adds a barrier that is put on but not to the material's least film.
func thinBarrier(out finding.List, m *tables.Material, p *Part, s Stack) finding.List {
	if !m.Film.Low.Given() || barred(m, s) {
		return out
	}
	for i := range s {
		if s[i].Coating.Role == tables.Barrier && !s[i].found() {
			return append(out, finding.Finding{
				Rule: RuleBarrierThin, Verdict: finding.Needs, About: p.Name, Against: m.Name,
				Facts: []finding.Fact{{Name: "film", Value: m.Film.Low}}, First: []finding.Step{{Do: finding.Barrier, Coating: m.With, Film: m.Film}}, Basis: []finding.Basis{m.Basis("barrier_film")},
			})
		}
	}
	return out
}

// lightness judges each signal layer against the working layer on it.
func lightness(out finding.List, b *tables.Book, s Stack) finding.List {
	for i := range s[1:] {
		low, high := &s[i], &s[i+1]
		if low.For != Signal || high.For != Working {
			continue
		}
		f := finding.Finding{About: high.Coating.Name, Against: low.Coating.Name}
		least, err := b.Factor("lightness-step")
		a, errA := b.Colour(low.Colour)
		c, errB := b.Colour(high.Colour)
		if err != nil || errA != nil || errB != nil {
			f.Rule, f.Verdict = RuleLightnessAsk, finding.Ask
			out = append(out, f)
			continue
		}
		step := math.Abs(a.Lightness - c.Lightness)
		f.Rule, f.Verdict = RuleLightnessThere, finding.Fine
		if step < least.Value.Typical {
			f.Rule, f.Verdict = RuleLightness, finding.Forbidden
		}
		f.Facts = []finding.Fact{{Name: "step", Value: step}, {Name: "least", Value: least.Value.Typical}}
		f.Basis = []finding.Basis{least.Basis("value")}
		out = append(out, f)
	}
	return out
}

// airClock judges the days that a new top coat stands dry: too few to dry, or more than it stands.
func airClock(out finding.List, top *Layer, days int) finding.List {
	if days < 0 || top.found() {
		return out
	}
	c, stands := &top.Coating, quantity.Day.N(int64(days))
	f := finding.Finding{Verdict: finding.Needs, About: c.Name}
	switch {
	case c.LaunchMin.Given() && stands.Cmp(c.LaunchMin) < 0:
		f.Rule, f.First, f.Basis = RuleLaunchEarly, []finding.Step{{Do: finding.Wait}}, []finding.Basis{c.Basis("launch_min")}
		f.Facts = []finding.Fact{{Name: "days", Value: days}, {Name: "limit", Value: c.LaunchMin}}
	case c.AirNew.Given() && stands.Cmp(c.AirNew) > 0:
		f.Rule, f.First, f.Basis = RuleAirNew, []finding.Step{{Do: finding.Abrade, Grit: "220"}}, []finding.Basis{c.Basis("air_new")}
		f.Facts = []finding.Fact{{Name: "days", Value: days}, {Name: "limit", Value: c.AirNew}}
	default:
		return out
	}
	return append(out, f)
}
