package compat

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// prepareKept prepares the ways that leave everything found in its place.
func (s *Surface) prepareKept() {
	if s.found[0].bare() {
		return
	}
	s.stays, s.left = way{Surface: s, keeps: s.found}, way{Surface: s, keeps: s.found}
	if f, thick := tooThick(s.b, s.found); thick {
		s.stays.barred = append(s.stays.barred, f)
	}
	for i := range s.found {
		s.stays.stay(i, false)
		s.left.stay(i, true)
		if i == 0 {
			continue
		}
		if f, bad := foundPair(s.b, s.found, i); bad { // whatever goes over it goes with it
			f.Verdict = finding.Forbidden
			s.stays.barred = append(s.stays.barred, f)
		}
	}
	if top := &s.found[len(s.found)-1].Coating; s.m.KeepsClean { // it works bare only
		s.left.barred = append(s.left.barred, finding.Finding{
			Rule: RuleCoversClean, Verdict: finding.Forbidden, About: top.Name, Against: s.m.Name, Basis: []finding.Basis{s.m.Basis("keeps_clean")},
		})
	}
	s.left.work(finding.Step{Do: finding.Wash})
	s.sealed = barred(&s.m, s.found)
}

// stay judges whether the found layer may stay on the material, and in the state it is in.
func (w *way) stay(i int, forGood bool) {
	l := &w.found[i]
	if i < len(w.found)-1 && mayHoldTin(&l.Coating) {
		w.findings = append(w.findings, finding.Finding{Rule: RuleTinBelow, Verdict: finding.Caution, About: w.found[len(w.found)-1].Coating.Name, Against: l.Coating.Name})
	}
	if comesOff(&w.m, &l.Coating) {
		w.barred = append(w.barred, offFinding(&w.m, &l.Coating, finding.Forbidden))
		return
	}
	if holdsCopper(&l.Coating) && w.m.Takes(l.Coating.Biocide) == tables.OverBarrier && !barred(&w.m, w.found[:i]) {
		w.barred = append(w.barred, atLeast(aboveBarrier(nil, &w.m, &l.Coating, w.found[:i]), finding.Needs)...)
		return
	}
	if i == len(w.found)-1 || forGood {
		return // the top layer is judged with the coat over it
	}
	if f, ok := onState(w.b, &w.found[i+1].Coating, l, nil); ok && l.State != "" && l.State != tables.NotReported {
		if f.Verdict == finding.Forbidden || f.Verdict == finding.Ask {
			w.barred = append(w.barred, f)
			return
		}
		w.findings = append(w.findings, f)
		for _, s := range f.First {
			w.work(s)
		}
	}
}

// prepareStripped prepares the ways over sound epoxy, or over the bare surface.
func (s *Surface) prepareStripped() {
	depth := s.depth
	if depth == len(s.found) {
		depth = 0
	}
	w := &s.stripped
	w.Surface, w.keeps = s, s.found[:depth]
	if !s.found[0].bare() {
		if suspect(s.found[depth:]) {
			w.work(finding.Step{Do: finding.Identify})
		}
		w.work(finding.Step{Do: finding.Strip})
		if sheds(s.found[depth:]) { // its traces spoil whatever comes over them
			w.work(finding.Step{Do: finding.Degrease})
		}
	}
	s.primed = w.again()
	if depth == 0 {
		if s.found[0].bare() {
			w.work(finding.Step{Do: finding.Wash})
		}
		for a := range s.m.Prepare() {
			if a == finding.Blast { // it takes the old paint with it
				s.primed.steps = slices.DeleteFunc(slices.Clone(s.primed.steps), func(x finding.Step) bool { return x.Do == finding.Strip })
			}
			s.primed.work(finding.Step{Do: a})
		}
		s.prepared = s.primed.again()
		if s.m.Primer != "" {
			s.primed.put(s.m.Primer, quantity.Range[quantity.Film]{}, 0)
		}
	}
	s.sealedStripped = barred(&s.m, s.primed.keeps, s.primed.adds)
	s.barriered = s.primed.again()
	if len(s.primed.barred) == 0 && !s.sealedStripped && s.mayAskBarrier() {
		s.barriered.put(s.m.With, missing(&s.m, s.barriered.keeps), 0)
	}
	for _, w := range []*way{&s.stripped, &s.prepared, &s.primed, &s.barriered} {
		w.settle(s.b)
	}
}

// mayAskBarrier reports whether any coating asks for a barrier.
func (s *Surface) mayAskBarrier() bool {
	return s.m.Barrier == wanted || slices.Contains([]tables.Policy{s.m.Barrier, s.m.Cuprous, s.m.Metallic, s.m.Other, s.m.Free}, tables.OverBarrier)
}
