package survey

import (
	"cmp"
	"slices"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Answer is what a survey came to.
type Answer struct {
	Advice   []Advice     // the most urgent first, then in the order of the survey
	Open     finding.List // what was noted without the grade, share or size that it is judged by
	Differs  finding.List // where a look and what is planned with do not agree
	Moisture []Metered    // one for each reading of a moisture meter
	Limits   finding.List // of the look itself
}

// Advice is one thing that was seen, and what it asks for.
type Advice struct {
	Urgency tables.Urgency
	Row     tables.Observation // that decided; of an empty key where the finding's rule did
	About   string             // the place or the fitting
	Photo   string
	Finding finding.Finding
}

// At returns the advice of the urgency.
func (a Answer) At(u tables.Urgency) []Advice {
	var out []Advice
	for _, x := range a.Advice {
		if x.Urgency == u {
			out = append(out, x)
		}
	}
	return out
}

// Judge judges everything that was seen. Of the rows of observations that speak of a mark on that material, at that grade, share and size,
// the most urgent decides; so a worse grade never asks for less. A mark without the measure that a more urgent row wants is an open
// question too. A film that nobody has identified, and every state but sound, asks for something by itself.
//
// Parts are those of the boat, day is the day of the report. The error is a finding.Faults, see Check.
//
// Basis: the rows of observations and conditions; the scales as cited there.
func Judge(b *tables.Book, s Survey, parts []compat.Part, day quantity.Date) (Answer, error) {
	if err := s.Check(b, parts, day).Err(); err != nil {
		return Answer{}, err
	}
	var a answering
	a.unknownFilms(b, parts)                  // first of its urgency: the other work waits for it
	states := map[string][]tables.Condition{} // seen, by part
	for _, p := range s.Seen {
		part, _ := partOf(parts, p.Part)
		about := where(b, p)
		var told []tables.Condition
		for _, m := range p.Marks {
			told = append(told, a.mark(b, m, part.Material, about, cmp.Or(m.Photo, p.Photo)))
		}
		if !slices.Contains(told, p.State) {
			a.state(b, p, about)
		}
		states[p.Part] = append(states[p.Part], append(told, p.State)...)
	}
	for _, f := range s.Fittings {
		part, _ := partOf(parts, f.Part)
		for _, m := range f.Marks {
			a.mark(b, m, part.Material, f.Name, cmp.Or(m.Photo, f.Photo))
		}
	}
	a.moisture(b, s, parts)
	a.differs(b, s, parts, states)
	a.limits(s.How, day)
	slices.SortStableFunc(a.Advice, func(x, y Advice) int { return cmp.Compare(y.Urgency, x.Urgency) })
	return a.Answer, nil
}

// answering is an answer that is being made.
type answering struct{ Answer }

// where names a place: its part, its zone where that says more, and what the surveyor said.
func where(b *tables.Book, p Place) string {
	names := []string{p.Part}
	if z, err := b.Zone(p.Zone); err == nil && z.Name != p.Part {
		names = append(names, z.Name)
	}
	if p.Where != "" {
		names = append(names, p.Where)
	}
	return strings.Join(names, ", ")
}

// mark judges one mark, and returns the state of the film that it tells of.
func (a *answering) mark(b *tables.Book, m Mark, material, about, photo string) tables.Condition {
	var best tables.Observation
	var wanted []string // by rows that may ask for more
	var lacks []tables.Urgency
	e := extent(b, m)
	for o := range b.Observations() {
		if o.What != m.What || !o.SeenOn(material) {
			continue
		}
		yes, want := speaks(b, o, m)
		switch {
		case want != "":
			if !slices.Contains(wanted, want) {
				wanted = append(wanted, want)
			}
			lacks = append(lacks, o.Urgency)
		case yes && o.Urgency >= best.Urgency:
			best = o
		}
	}
	open := len(lacks) > 0 && slices.Max(lacks) > best.Urgency
	if open {
		e.Name = m.What
		a.Open = append(a.Open, finding.Finding{
			Rule: RuleNotGraded, Verdict: finding.Ask, About: about,
			Facts: []finding.Fact{{Name: "seen", Value: e}, {Name: "want", Value: strings.Join(wanted, " or ")}},
		})
	}
	if best.Key == "" || open && best.Urgency == tables.NoWork {
		return ""
	}
	e.Name = best.Name
	f := finding.Finding{
		About: about, Basis: []finding.Basis{best.Basis("urgency")},
		Facts: []finding.Fact{{Name: "seen", Value: e}, {Name: "do", Value: best.Do}, {Name: "why", Value: best.Why}},
	}
	switch best.Urgency {
	case tables.BeforeLaunch:
		f.Rule, f.Verdict = RuleBeforeLaunch, finding.Needs
	case tables.ThisHaulOut:
		f.Rule, f.Verdict = RuleThisHaulOut, finding.Needs
	case tables.Monitor:
		f.Rule, f.Verdict = RuleMonitor, finding.Caution
	default:
		f.Rule, f.Verdict = RuleNoWork, finding.Fine
	}
	for _, g := range e.Grades {
		f.Basis = append(f.Basis, g.Basis("says"))
		if c := g.Cover; c.High.Given() && m.Share.Given() && (m.Share.Cmp(c.Low) < 0 || m.Share.Cmp(c.High.Add(quantity.Percent.N(1))) >= 0) {
			a.Differs = append(a.Differs, finding.Finding{
				Rule: RuleShareNotGrade, Verdict: finding.Ask, About: about, Basis: []finding.Basis{g.Basis("cover")},
				Facts: []finding.Fact{{Name: "grade", Value: g.Grade}, {Name: "scale", Value: g.Scale}, {Name: "cover", Value: c}, {Name: "share", Value: m.Share}},
			})
		}
	}
	a.Advice = append(a.Advice, Advice{Urgency: best.Urgency, Row: best, About: about, Photo: photo, Finding: f})
	return best.State
}

// speaks reports whether the row speaks of the mark; where it cannot say because the mark lacks a measure, want names that.
func speaks(b *tables.Book, o tables.Observation, m Mark) (ok bool, want string) {
	var scales []string
	graded, reached := false, false
	for key := range o.From() {
		from, err := b.Grade(key)
		if err != nil {
			continue // the loader refuses it
		}
		scales = append(scales, from.Scale)
		for _, k := range m.Grades {
			if g, err := b.Grade(k); err == nil && g.Scale == from.Scale {
				graded = true
				reached = reached || b.Severity(k) >= b.Severity(key)
			}
		}
	}
	switch {
	case len(scales) > 0 && !graded:
		return false, "a grade (" + strings.Join(scales, "; ") + ")"
	case o.Over.Given() && !m.Share.Given():
		return false, "its share"
	case (o.Size.Given() || o.Under.Given()) && !m.Size.Given():
		return false, "its depth, width or diameter"
	}
	ok = len(scales) == 0 || reached
	ok = ok && (!o.Over.Given() || m.Share.Cmp(o.Over) > 0)
	ok = ok && (!o.Size.Given() || m.Size.Cmp(o.Size) >= 0)
	return ok && (!o.Under.Given() || m.Size.Cmp(o.Under) < 0), ""
}

// state is what the state in which a film was seen asks for.
func (a *answering) state(b *tables.Book, p Place, about string) {
	row, err := b.Condition(p.State)
	if err != nil || row.Verdict == finding.Fine || p.State == tables.NotReported {
		return
	}
	var work []string
	for step := range row.Steps() {
		name := string(step)
		if s, err := b.Step(step); err == nil {
			name = s.Name
		}
		work = append(work, name)
	}
	f := finding.Finding{
		Rule: RuleState, Verdict: finding.Needs, About: about, Basis: []finding.Basis{row.Basis("steps")},
		Facts: []finding.Fact{{Name: "state", Value: Extent{Name: row.Name, Known: p.Known}}, {Name: "work", Value: strings.Join(work, ", ")}},
	}
	if row.Verdict == finding.Forbidden {
		f.Rule, f.Basis = RuleStateOff, []finding.Basis{row.Basis("verdict")}
	}
	a.Advice = append(a.Advice, Advice{Urgency: tables.ThisHaulOut, About: about, Photo: p.Photo, Finding: f})
}

// unknownFilms asks for a test of the films that nobody has identified.
func (a *answering) unknownFilms(b *tables.Book, parts []compat.Part) {
	var names []string
	for _, p := range parts {
		m, err := b.Material(p.Material)
		unknown := len(p.Found) == 0 || slices.ContainsFunc(p.Found, func(l compat.Layer) bool { return l.Coating.Key == tables.UnknownOld })
		if err == nil && m.Painted != tables.Never && unknown {
			names = append(names, p.Name)
		}
	}
	if len(names) == 0 {
		return
	}
	f := finding.Finding{Rule: RuleFilmUnknown, Verdict: finding.Ask, About: strings.Join(names, ", ")}
	if c, err := b.Coating(tables.UnknownOld); err == nil {
		f.Basis = []finding.Basis{c.Basis("hazards")}
	}
	a.Advice = append(a.Advice, Advice{Urgency: tables.ThisHaulOut, About: f.About, Finding: f})
}

// limits says what the look itself leaves open.
func (a *answering) limits(h How, day quantity.Date) {
	say := func(rule finding.ID, facts ...finding.Fact) {
		a.Limits = append(a.Limits, finding.Finding{Rule: rule, Verdict: finding.Caution, Facts: facts})
	}
	if !h.On.Given() {
		say(RuleDayUnknown)
	} else if n := h.On.DaysUntil(day); n > 0 {
		say(RuleOld, finding.Fact{Name: "seen", Value: h.On}, finding.Fact{Name: "days", Value: quantity.Day.N(int64(n))})
	}
	if h.Visible.Given() && h.Visible.Cmp(quantity.Percent.N(100)) < 0 {
		say(RuleNotAllSeen, finding.Fact{Name: "visible", Value: h.Visible})
	}
	if h.Wash.Given() {
		say(RuleWashed, finding.Fact{Name: "hours", Value: h.Wash})
	}
}
