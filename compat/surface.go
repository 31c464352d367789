package compat

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Surface is one part of the boat with all that is the same whatever goes on it. Make it once with On and ask it about many
// coatings; it never changes, so share it freely. Its answers share memory with it: read them, do not write into them.
type Surface struct {
	b     *tables.Book
	part  Part
	at    face
	m     tables.Material
	known bool         // the book holds the material
	found Stack        // an unknown film where none was reported
	depth int          // how many layers from the bottom are sound epoxy
	off   finding.List // old films that the material does not bear
	naked Layer        // the surface itself

	stays, left            way  // what was found, under a coat and for good
	stripped, prepared     way  // what is stripped: for good, and for the primer that the material asks for
	primed, barriered      way  // what is stripped: for a coat, and for a coat that the barrier must lie under
	sealed, sealedStripped bool // the barrier lies on what was found, and on what is stripped for a coat
}

// wanted is the policy of a material that could do without the barrier that its owner wants.
const wanted tables.Policy = "wanted"

// On returns the surface of the part.
func On(b *tables.Book, p Part) *Surface {
	s := &Surface{b: b, part: p, at: faceOf(b, p.Zone), found: p.Found}
	m, err := b.Material(p.Material)
	if err != nil {
		return s
	}
	if p.Barrier.True() && m.Barrier != tables.Never && m.Barrier != tables.OverBarrier && m.With != "" {
		m.Barrier = wanted
	}
	s.m, s.known = m, true
	s.off = oldCopper(b, &s.m, &s.part)
	if m.Painted == tables.Never {
		return s
	}
	if len(s.found) == 0 {
		s.found = Stack{unknownLayer(b)}
	}
	s.depth, s.naked = epoxyDepth(s.found), bareLayer(b)
	s.prepareKept()
	s.prepareStripped()
	return s
}

// OnMaterial judges whether the coating may be on the part; see the function OnMaterial.
//
// Basis: as of the function OnMaterial.
func (s *Surface) OnMaterial(c *tables.Coating) finding.List {
	return append(s.always(make(finding.List, 0, 2), c, nil), s.fromFound(c)...)
}

// Routes returns the ways to the coating wanted, cheapest first; see the function Routes.
//
// Basis: as of the function Routes.
func (s *Surface) Routes(want *tables.Coating) []Route {
	first, second, both := s.routes(want, true, nil)
	if !both {
		return []Route{first}
	}
	return []Route{first, second}
}

// Best returns the first of Routes, and what is to be said of the coating on the part: the findings of that route and of
// OnMaterial, none of them twice.
//
// Basis: as of the function Routes.
func (s *Surface) Best(want *tables.Coating) (Route, finding.List) {
	r, _, _ := s.routes(want, false, nil)
	said := once(r.Findings) // holds what the surface says whatever was found
	for _, f := range s.fromFound(want) {
		if !says(said, &f) {
			said = append(said, f)
		}
	}
	r.Findings = slices.Clip(r.Findings)
	return r, said
}

// always adds what no work changes.
func (s *Surface) always(out finding.List, c *tables.Coating, on *Slate) finding.List {
	if !s.known {
		return append(out, finding.Finding{Rule: RuleMaterialUnknown, Verdict: finding.Ask, About: c.Name, Against: s.part.Material})
	}
	return onSurface(out, finding.Fine, s.at, &s.m, c, on)
}

// fromFound judges what depends on what was found.
func (s *Surface) fromFound(c *tables.Coating) finding.List {
	if !s.known {
		return nil
	}
	return onFound(nil, &s.m, c, &s.part, s.off)
}

// routes returns the ways, the better one first. Unless both are asked for, the second may be left out. On a slate they are told without facts and
// bases.
func (s *Surface) routes(want *tables.Coating, all bool, on *Slate) (first, second Route, both bool) {
	var room finding.List
	var kept, stripped *draft
	if on != nil {
		room, kept, stripped = on.always[:0], &on.kept, &on.strip
	}
	always := s.always(room, want, on)
	none := finding.Finding{Rule: RuleRouteNone, Verdict: finding.Forbidden, About: want.Name, Against: s.part.Name}
	switch {
	case !s.known:
		return Route{Findings: append(always, none)}, second, false
	case always.Worst() == finding.Forbidden:
		return Route{Keeps: slices.Clip(s.part.Found), Findings: always}, second, false
	case s.m.Painted == tables.Never:
		return unpainted(s.b, &s.part, always), second, false
	case len(s.part.Found) == 0:
		always = append(always, notReported(&s.part))
	}
	var barred finding.List
	keeps := !s.found[0].bare()
	if keeps {
		var w way
		if w, keeps = s.keep(want, always, on, kept); keeps {
			first = w.route(want)
		}
		barred = w.barred
	}
	start := s.start(want)
	if keeps && !all && first.Effort.Typical < start.spent.Typical {
		return first, second, false // whatever the other way takes on top
	}
	w := s.strip(want, start, always, barred, on, stripped)
	switch {
	case len(w.barred) == 0:
		second = w.route(want)
	case keeps:
		return first, second, false
	default:
		return Route{Keeps: slices.Clip(s.part.Found), Findings: slices.Concat(always, barred, w.barred, finding.List{none})}, second, false
	}
	switch {
	case !keeps:
		return second, first, false
	case second.before(&first):
		return second, first, true
	}
	return first, second, true
}

// once returns the findings without those that say the same of the same a second time.
func once(fs finding.List) finding.List {
	for i := range fs {
		if !says(fs[:i], &fs[i]) {
			continue
		}
		out := append(make(finding.List, 0, len(fs)), fs[:i]...)
		for _, f := range fs[i:] {
			if !says(out, &f) {
				out = append(out, f)
			}
		}
		return out
	}
	return fs
}

// says reports whether the list says the same of the same.
func says(fs finding.List, f *finding.Finding) bool {
	for i := range fs {
		if o := &fs[i]; o.Rule == f.Rule && o.Verdict == f.Verdict && o.About == f.About && o.Against == f.Against {
			return true
		}
	}
	return false
}
