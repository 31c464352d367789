package antifoul

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

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
	Rank      int
	Tied      bool   // another type of the part has the same rank
	Key, Name string // of the coating
	Tier      Tier
	Score     float64
	Past      finding.List // what own past results at her berth tell; empty when the book holds none
	way       way
	q         *question // nil for a Place that no ranking made: it has no coating and no criteria, and says nothing
}

// Coating returns the book's row of the type.
func (p Place) Coating() tables.Coating {
	if p.q == nil {
		return tables.Coating{}
	}
	c, _ := p.q.b.Coating(p.Key) // a place of this book
	return c
}

// way is what a ranking of many types needs of metal, zone, old film, law and the cheapest way to one type.
type way struct {
	barred bool // a finding of surface or law forbids it
	ask    bool // a finding of the surface asks
	beyond bool // it takes more than washing and abrading
	strips bool
	effort quantity.Range[float64] // hours a square metre
}

// Findings returns what is to be said of metal, zone, old film and route. It is worked out when it is asked for.
//
// Basis: each finding carries its own.
func (p Place) Findings() finding.List {
	if p.q == nil {
		return nil
	}
	c := p.Coating()
	_, fs := p.q.surface.Best(&c)
	return append(fs, p.q.launchWait(&c)...)
}

// Law returns the findings of the places she is painted, kept and visited in, and what is open about cleaning the type there; never empty. It is worked
// out when it is asked for.
//
// Basis: each finding carries its law's.
func (p Place) Law() finding.List {
	if p.q == nil {
		return nil
	}
	out := p.q.desk.Screen(p.Coating())
	if !p.q.cleans() {
		return out
	}
	for _, f := range p.q.desk.Cleaning(p.Coating()) { // what is forbidden bars in the cleaning criterion
		if f.Verdict == finding.Ask || f.Verdict == finding.Caution {
			out = append(out, f)
		}
	}
	return out
}

// Route returns the cheapest way from what is there, hours a square metre. It is worked out when it is asked for.
//
// Basis: as compat.Routes.
func (p Place) Route() compat.Route {
	if p.q == nil {
		return compat.Route{}
	}
	c := p.Coating()
	r, _ := p.q.surface.Best(&c)
	return r
}

// Criteria returns what the score is made of, in the order of the criterion table, with the boat's value, the type's value and
// the finding of each. It is worked out when it is asked for.
func (p Place) Criteria() []Criterion {
	if p.q == nil {
		return nil
	}
	row := p.Coating()
	c := asked{Coating: &row, way: p.way, told: true}
	out := make([]Criterion, criteria)
	for i, k := range criterionFuncs {
		v := k.f(p.q, &c)
		out[i] = *v.told
		out[i].Key, out[i].Value, out[i].Judged, out[i].Bars = k.key, v.value, v.judged, v.bars
		out[i].Points = p.q.points(i, v.value)
		if p.q.weight > 0 {
			out[i].Points *= 100 / p.q.weight
		}
	}
	return out
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
	return append(p.Findings().At(finding.Ask), p.Law().At(finding.Ask)...)
}

// Reasons returns the findings that Why says, what was seen at her berth first: for a type that may be used, those of the three criteria that moved the score
// most, the strongest first; for one ruled out, every finding and criterion that rules it out.
func (p Place) Reasons() finding.List {
	var out finding.List
	if p.Tier >= Unsuited {
		out = append(out, p.Past...)
		out = append(out, p.Findings().At(finding.Forbidden)...)
		out = append(out, p.Law().At(finding.Forbidden)...)
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
