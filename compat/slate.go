package compat

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Slate is memory that Surface.Glance writes its ways on, wiped for each question. The zero Slate is ready; use one at a time.
type Slate struct {
	always      finding.List
	first       []finding.Step // what rows ask for; never taken back within one question
	kept, strip draft
}

// draft is the memory of one way.
type draft struct {
	findings, barred finding.List
	steps            []finding.Step
	adds             Stack
}

// Glance is as much of Surface.Best as a choice among many coatings needs: no facts, no bases, no layers.
type Glance struct {
	Forbidden, Ask bool           // whether a finding of Best is of that verdict
	Steps          []finding.Step // of the route; good until the slate is used again
	Effort         quantity.Range[float64]
}

// Glance returns what Best would say, in short; on a slate, so that it costs no memory.
//
// Basis: as of the function Routes.
func (s *Surface) Glance(want *tables.Coating, on *Slate) Glance {
	on.first = on.first[:0]
	if on.always == nil {
		on.always, on.first, on.kept, on.strip = make(finding.List, 0, 2), make([]finding.Step, 0, 16), newDraft(), newDraft()
	}
	r, _, _ := s.routes(want, false, on)
	g := Glance{Steps: r.Steps, Effort: r.Effort}
	for i := range r.Findings {
		g.Forbidden = g.Forbidden || r.Findings[i].Verdict == finding.Forbidden
		g.Ask = g.Ask || r.Findings[i].Verdict == finding.Ask
	}
	return g // what fromFound adds is neither forbidden nor asked
}

func newDraft() draft {
	return draft{findings: make(finding.List, 0, 8), barred: make(finding.List, 0, 1), steps: make([]finding.Step, 0, 8)}
}

// steps is room for the steps that a row asks for; nil on no slate.
func (on *Slate) steps() []finding.Step {
	if on == nil {
		return nil
	}
	return on.first[len(on.first):]
}

// keep keeps the steps that were written into the room, as long as they fit.
func (on *Slate) keep(steps []finding.Step) []finding.Step {
	if on != nil && len(on.first)+len(steps) <= cap(on.first) {
		on.first = on.first[:len(on.first)+len(steps)]
	}
	return slices.Clip(steps)
}
