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
	i := slices.IndexFunc(p.Places, func(x Place) bool { return x.Key == coating })
	if i < 0 {
		return Place{}, false
	}
	return p.Places[i], true
}

// Rank ranks every antifouling, blacking and "no coating" of the book for each part of the boat. The error is a
// finding.Faults with every fault of the boat, and every number that the book lacks.
//
// Basis: common practice; the weights of criteria.toml and the bounds of their criteria are assumptions, and each finding names its own basis.
func Rank(b *tables.Book, boat Boat) (Ranking, error) {
	if err := ready(b, boat); err != nil {
		return Ranking{}, err
	}
	fitted, err := boat.fitted(b)
	if err != nil {
		return Ranking{}, err
	}
	return rank(b, boat, fitted), nil
}

// rank ranks a boat that was fitted; what was taken where it is not said is asked of the boat as it was given.
func rank(b *tables.Book, given, boat Boat) Ranking {
	r := Ranking{Assumed: assume(b, given)}
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
	var few [40]judged // more are rare, and append makes room
	types := q.judged(few[:0])
	var fewAt [len(few)]int
	order := fewAt[:0]
	for i := range types {
		order = append(order, i)
	}
	slices.SortFunc(order, func(i, j int) int {
		a, b := &types[i], &types[j]
		if d := a.compare(&b.standing); d != 0 {
			return d
		}
		return cmp.Or(strings.Compare(a.name, b.name), i-j)
	})
	out.Places = make([]Place, len(order))
	for i, at := range order {
		p, j := &out.Places[i], &types[at]
		p.Rank, p.Key, p.Name, p.Tier, p.Score, p.Past, p.way, p.q = i+1, j.key, j.name, j.tier, j.score, j.past, j.way, q
		if i > 0 && j.compare(&types[order[i-1]].standing) == 0 {
			p.Rank = out.Places[i-1].Rank
			p.Tied, out.Places[i-1].Tied = true, true
		}
	}
	return out
}

// judged is how one type stands, before its place is known.
type judged struct {
	standing
	key, name string
	past      finding.List
	way       way
}

// standing is what gives a type its place: its tier, then whether it was seen to hold, then its score.
type standing struct {
	tier  Tier
	order int // 0 for a type that own past results saw hold at her berth for the months wished, else 1
	score float64
}

// compare is below zero for the one that stands better; types of which neither does share a rank.
func (s *standing) compare(o *standing) int {
	switch {
	case s.tier != o.tier:
		return int(s.tier) - int(o.tier)
	case s.order != o.order:
		return s.order - o.order
	}
	return cmp.Compare(o.score, s.score)
}

// cleans reports whether somebody cleans her afloat.
func (q *question) cleans() bool { return q.boat.Use.Cleaning > tables.None && q.boat.Use.Afloat() }

// judged adds how every type stands, in the order of the book.
func (q *question) judged(out []judged) []judged {
	var slate compat.Slate
	var c tables.Coating // one for all: it is large
	a := asked{Coating: &c}
	for c = range q.b.Ranked() {
		a.way = q.wayTo(&c, &slate)
		out = append(out, judged{standing: q.stands(&a), key: c.Key, name: c.Name, past: q.past[c.Key].findings, way: a.way})
	}
	return out
}

// wayTo finds out what surface and law say of a type.
func (q *question) wayTo(c *tables.Coating, on *compat.Slate) way {
	g := q.surface.Glance(c, on)
	return way{
		barred: g.Forbidden || q.desk.Forbids(c), ask: g.Ask, effort: g.Effort, beyond: moreThanScuffing(g.Steps, c.Under),
		strips: slices.ContainsFunc(g.Steps, func(s finding.Step) bool { return s.Do == finding.Strip }),
	}
}

// stands judges a type for her use.
func (q *question) stands(a *asked) standing {
	score, bars := q.score(a)
	s := standing{a.way.tier(bars), 1, score}
	if q.past[a.Key].held {
		s.order = 0
	}
	return s
}

// score adds up the criteria; bars tells that the use, or what was seen at her berth, speaks against the type.
func (q *question) score(c *asked) (score float64, bars bool) {
	var sum float64
	bars = q.past[c.Key].failed
	for i := range criterionFuncs {
		v := criterionFuncs[i].f(q, c)
		sum += q.points(i, v.value)
		bars = bars || v.bars
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
func (w *way) tier(bars bool) Tier {
	switch {
	case w.barred:
		return Barred
	case bars:
		return Unsuited
	case w.ask:
		return AskFirst
	case w.beyond:
		return AfterWork
	}
	return Suits
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
	if !c.AirNew.Given() || float64(q.dry) <= days(c.AirNew) {
		return nil
	}
	return finding.List{{
		Rule: RuleFilmWait, Verdict: finding.Caution, About: c.Name, Basis: []finding.Basis{c.Basis("air_new")},
		Facts: []finding.Fact{fact("launch", q.boat.Work.Launch), fact("limit", c.AirNew)},
	}}
}
