package antifoul

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Ranking is every generic type of the book, ranked for each part of the boat.
type Ranking struct {
	Parts   []PartRanking // in the order of the boat file
	Assumed []Assumption  // what the boat file does not say, and what was taken instead
}

// PartRanking is the ranking for one part. Places is empty for a part that is never painted; Left then says why.
type PartRanking struct {
	Part   string
	Zone   string
	Left   finding.List
	Places []Place // every type of the book, best first, ruled-out ones last
}

// Place is one type's place.
//
// Score orders types inside a tier only:
//
//	score = 50 + 100 × Σ weight × (value − 0.5) / Σ weight
//
// from 0 to 100, rounded to one decimal once, before anything is ordered. Inside a tier, types that own past results at her berth
// saw hold for the months wished come before all others, whatever their score; a type that was seen to fail within them is unsuited.
// Types of equal tier, past and score share a Rank.
type Place struct {
	Rank     int
	Tied     bool // another type of the part has the same rank
	Coating  tables.Coating
	Tier     Tier
	Score    float64
	Past     finding.List // what own past results at her berth tell; empty when the book holds none
	Findings finding.List // of metal, zone, old film and route
	Law      finding.List // of the places she is painted, kept and visited in; never empty
	Route    compat.Route // cheapest way from what is there
	q        *question    // nil for a Place that no ranking made: it has no criteria and says nothing
}

// Criteria returns what the score is made of, in the order of the criterion table, with the boat's value, the type's value and
// the finding of each. It is worked out when it is asked for.
func (p Place) Criteria() []Criterion {
	if p.q == nil {
		return nil
	}
	c := p.q.ask(&p.Coating, &p.Route)
	c.told = true
	out := make([]Criterion, criteria)
	for i, k := range criterionFuncs {
		out[i] = k.f(p.q, &c)
		out[i].Key = k.key
		out[i].Points = p.q.points(i, out[i].Value)
		if p.q.weight > 0 {
			out[i].Points *= 100 / p.q.weight
		}
	}
	return out
}

// Hull returns the ranking of the hull.
func (r Ranking) Hull() PartRanking {
	for _, p := range r.Parts {
		if p.Zone == HullZone {
			return p
		}
	}
	return PartRanking{}
}

// Part returns the ranking of the named part; false when there is none.
func (r Ranking) Part(name string) (PartRanking, bool) {
	i := slices.IndexFunc(r.Parts, func(p PartRanking) bool { return p.Part == name })
	if i < 0 {
		return PartRanking{}, false
	}
	return r.Parts[i], true
}

// Best returns the first place that may be used and suits, asking first where Ask findings stand. False means that no type
// may be used or suits; Places says why, type by type.
func (p PartRanking) Best() (Place, bool) {
	if len(p.Places) == 0 || p.Places[0].Tier > AskFirst {
		return Place{}, false
	}
	return p.Places[0], true
}

// Of returns the place of the coating; false when the part does not rank it.
func (p PartRanking) Of(coating string) (Place, bool) {
	i := slices.IndexFunc(p.Places, func(x Place) bool { return x.Coating.Key == coating })
	if i < 0 {
		return Place{}, false
	}
	return p.Places[i], true
}

// Why says in a few sentences, which call the type “it”, why the place is what it is, metric units first: for a place that may be used the criteria
// that added most and the one that took most, for a ruled-out one every reason.
func (p Place) Why() string {
	if p.q == nil { // a place that no ranking made
		return ""
	}
	var out []string
	for _, f := range p.Reasons() {
		f.About = "it"
		out = append(out, p.q.b.Say(f, quantity.Metric))
	}
	return strings.Join(out, " ")
}

// Asks returns the questions that must be answered before the type is used: what nobody knows of the surface, the old film or
// the law. None of them is read as allowed.
func (p Place) Asks() finding.List {
	return append(p.Findings.At(finding.Ask), p.Law.At(finding.Ask)...)
}

// Reasons returns the findings that Why says, what was seen at her berth first: for a type that may be used, those of the three criteria that moved the score
// most, the strongest first; for one ruled out, every finding and criterion that rules it out.
func (p Place) Reasons() finding.List {
	var out finding.List
	if p.Tier >= Unsuited {
		out = append(out, p.Past...)
		out = append(out, p.Findings.At(finding.Forbidden)...)
		out = append(out, p.Law.At(finding.Forbidden)...)
		for _, k := range p.Criteria() {
			if k.Bars {
				out = append(out, k.Finding)
			}
		}
		return out
	}
	out = append(out, p.Past...)
	moved := p.Criteria()
	slices.SortStableFunc(moved, func(a, b Criterion) int { return cmp.Compare(math.Abs(b.Points), math.Abs(a.Points)) })
	n := 0
	for _, k := range moved {
		if k.Finding.Rule != "" && n < 3 {
			out = append(out, k.Finding)
			n++
		}
	}
	return out
}

// Rank ranks every antifouling, blacking and "no coating" of the book for each part of the boat. The error is a
// finding.Faults with every fault of the boat, and every number that the book lacks.
//
// Basis: common practice; the weights of criteria.toml and the bounds of their criteria are assumptions, and each finding names its own basis.
func Rank(b *tables.Book, boat Boat) (Ranking, error) {
	if err := ready(b, boat); err != nil {
		return Ranking{}, err
	}
	boat, err := boat.fitted(b)
	if err != nil {
		return Ranking{}, err
	}
	return rank(b, boat), nil
}

func rank(b *tables.Book, boat Boat) Ranking {
	r := Ranking{Assumed: assume(b, boat)}
	desk := law.At(b, boat.Craft(), boat.berths(), boat.On)
	for _, part := range boat.Parts {
		r.Parts = append(r.Parts, rankPart(b, boat, part.AsRead(b), desk))
	}
	return r
}

func rankPart(b *tables.Book, boat Boat, part compat.Part, desk *law.Desk) PartRanking {
	out := PartRanking{Part: part.Name, Zone: part.Zone}
	if m, err := b.Material(part.Material); err == nil && m.Painted == tables.Never {
		out.Left = finding.List{{Rule: RuleNeverPainted, Verdict: finding.Forbidden, About: part.Name, Against: m.Name, Basis: []finding.Basis{m.Basis("painted")}}}
		if !m.Suits(boat.Use.Water) {
			out.Left = append(out.Left, finding.Finding{
				Rule: RuleAnodeWater, Verdict: finding.Caution, About: part.Name, Against: m.Name,
				Facts: []finding.Fact{fact("water", boat.Use.Water)}, Basis: []finding.Basis{m.Basis("waters")},
			})
		}
		return out
	}
	q := newQuestion(b, boat, part, desk)
	n := 0
	for range b.Ranked() {
		n++
	}
	out.Places = make([]Place, n)
	order := make([]int, n)
	i := 0
	for c := range b.Ranked() {
		order[i], out.Places[i].Coating = i, c
		q.judge(&out.Places[i])
		i++
	}
	slices.SortFunc(order, func(i, j int) int {
		a, b := &out.Places[i], &out.Places[j]
		if d := cmp.Or(cmp.Compare(a.Tier, b.Tier), q.order(a)-q.order(b)); d != 0 {
			return d
		}
		if d := cmp.Compare(b.Score, a.Score); d != 0 {
			return d
		}
		return cmp.Or(cmp.Compare(a.Coating.Name, b.Coating.Name), cmp.Compare(i, j))
	})
	arrange(out.Places, order)
	q.number(out.Places)
	return out
}

// arrange moves the place of index order[i] to i. It swaps, since places are large.
func arrange(places []Place, order []int) {
	for i, from := range order {
		for from < i { // it was swapped away from there
			from = order[from]
		}
		if from != i {
			places[i], places[from] = places[from], places[i]
		}
	}
}

// order is 0 for a type that own past results saw hold at her berth for the months wished, else 1.
func (q *question) order(p *Place) int {
	if q.past[p.Coating.Key].held {
		return 0
	}
	return 1
}

// number gives ranks; equal tier, past and score share one.
func (q *question) number(places []Place) {
	for i := range places {
		places[i].Rank = i + 1
		if i > 0 && places[i].Tier == places[i-1].Tier && q.order(&places[i]) == q.order(&places[i-1]) && places[i].Score == places[i-1].Score {
			places[i].Rank = places[i-1].Rank
			places[i].Tied, places[i-1].Tied = true, true
		}
	}
}

// ask prepares a type for the criteria.
func (q *question) ask(c *tables.Coating, r *compat.Route) asked {
	a := asked{Coating: c, route: r}
	if q.boat.Use.Cleaning > tables.None && q.boat.Use.Afloat() {
		a.cleaning = q.desk.Cleaning(*c)
	}
	return a
}

// judge fills the place of a coating, but for its rank.
func (q *question) judge(p *Place) {
	p.q = q
	p.Route, p.Findings = q.surface.Best(&p.Coating)
	p.Findings = append(p.Findings, q.launchWait(&p.Coating)...)
	p.Law = q.desk.Screen(p.Coating)
	c := q.ask(&p.Coating, &p.Route)
	for _, f := range c.cleaning { // what is forbidden bars in the cleaning criterion
		if f.Verdict == finding.Ask || f.Verdict == finding.Caution {
			p.Law = append(p.Law, f)
		}
	}
	seen := q.past[p.Coating.Key]
	p.Past = seen.findings
	var bars bool
	p.Score, bars = q.score(&c)
	p.Tier = tier(p.Findings, p.Law, p.Route, p.Coating.Under, bars)
}

// score adds up the criteria; bars tells that the use, or what was seen at her berth, speaks against the type.
func (q *question) score(c *asked) (score float64, bars bool) {
	var sum float64
	bars = q.past[c.Key].failed
	for i, k := range criterionFuncs {
		v := k.f(q, c)
		sum += q.points(i, v.Value)
		bars = bars || v.Bars
	}
	if q.weight > 0 {
		score = math.Round((50+sum*100/q.weight)*10) / 10
	}
	return score, bars
}

// points is what the value of criterion i adds before it is scaled to the sum of all weights.
func (q *question) points(i int, value float64) float64 { return float64(q.weights[i] * (value - 0.5)) }

// tier places a type by its worst finding. What a route needs counts as work only where it goes beyond washing and abrading. A
// question that the law leaves open holds for a whole place or a whole class of products, and the tin answers it; it does not
// move a type behind the others but stays with it, see Place.Asks.
func tier(fs, legal finding.List, r compat.Route, under string, bars bool) Tier {
	switch {
	case fs.Worst() == finding.Forbidden || legal.Worst() == finding.Forbidden:
		return Barred
	case bars:
		return Unsuited
	case asks(fs):
		return AskFirst
	case moreThanScuffing(r.Steps, under):
		return AfterWork
	}
	return Suits
}

func asks(fs finding.List) bool {
	return slices.ContainsFunc(fs, func(f finding.Finding) bool { return f.Verdict == finding.Ask })
}

// moreThanScuffing reports whether the way takes more than washing and abrading. The coat that the type cannot do without is part of the type, not of
// the way to it.
func moreThanScuffing(steps []finding.Step, under string) bool {
	return slices.ContainsFunc(steps, func(s finding.Step) bool {
		if under != "" && s.Coating == under {
			return false
		}
		switch s.Do {
		case finding.Wash, finding.Degrease, finding.Abrade, finding.WetScuff:
			return false
		default:
			return true
		}
	})
}

// launchWait says for a fixed launch day how close to it the last coat must go on.
func (q *question) launchWait(c *tables.Coating) finding.List {
	if q.dry < 0 || !c.AirNew.Given() || float64(q.dry) <= days(c.AirNew) {
		return nil
	}
	return finding.List{{
		Rule: RuleFilmWait, Verdict: finding.Caution, About: c.Name, Basis: []finding.Basis{c.Basis("air_new")},
		Facts: []finding.Fact{fact("launch", q.boat.Work.Launch), fact("limit", c.AirNew)},
	}}
}

// dedupe drops findings that say the same of the same a second time: the route repeats what the material says.
func dedupe(fs finding.List) finding.List {
	out := fs[:0:0]
	for _, f := range fs {
		if !slices.ContainsFunc(out, func(o finding.Finding) bool {
			return o.Rule == f.Rule && o.Verdict == f.Verdict && o.About == f.About && o.Against == f.Against
		}) {
			out = append(out, f)
		}
	}
	return out
}
