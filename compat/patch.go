package compat

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Patch returns the stepped patch where a stand, a block or a chain stood: the layers of the stack again, bottom to top, each only
// where the same layer is missing, so the lowest is the smallest. Only the working coat may lap, onto itself. The list says how
// the patch begins and which layers cannot be built up again.
//
// Where no layer says what it is for, the top one is the working coat. A film that goes over itself only after more than washing
// and abrading (silicone) does not lap.
//
// Basis: common practice, no source.
func Patch(b *tables.Book, s Stack) ([]PatchLayer, finding.List) {
	var out []PatchLayer
	var said finding.List
	for i := range s {
		l := s[i]
		if l.bare() {
			continue
		}
		if l.Coating.Role == tables.OldFilm {
			said = append(said, finding.Finding{Rule: RulePatchOldFilm, Verdict: finding.Caution, About: l.Coating.Name})
			continue
		}
		p := PatchLayer{Layer: l, Finding: finding.Finding{Rule: RulePatchNoLap, Verdict: finding.Caution, About: l.Coating.Name}}
		p.Layer.State = tables.Sound
		if works(s, i) {
			p.MayLap, p.Finding = laps(b, &l)
		}
		out = append(out, p)
	}
	if len(out) == 0 {
		return nil, append(said, finding.Finding{Rule: RulePatchNothing, Verdict: finding.Fine})
	}
	start := finding.Finding{Rule: RulePatchStart, Verdict: finding.Needs, About: out[0].Layer.Coating.Name, First: []finding.Step{{Do: finding.Abrade}}}
	return out, append(finding.List{start}, said...)
}

// works reports whether layer i is a working coat.
func works(s Stack, i int) bool {
	l := &s[i]
	return l.For == Working || l.For == Extra || l.found() && i == len(s)-1 && l.Coating.Ranked()
}

// laps judges whether the working coat may lap onto itself.
func laps(b *tables.Book, l *Layer) (bool, finding.Finding) {
	again := Layer{Coating: l.Coating, State: tables.Sound}
	fs := over(nil, b, &l.Coating, &again, nil)
	f := finding.Finding{Rule: RulePatchLap, Verdict: finding.Fine, About: l.Coating.Name}
	for i := range fs {
		bad := fs[i].Verdict == finding.Forbidden || fs[i].Verdict == finding.Ask
		for _, st := range fs[i].First {
			bad = bad || st.Do != finding.Wash && st.Do != finding.Abrade
		}
		if bad {
			f.Rule, f.Verdict, f.Basis = RulePatchBySystem, finding.Caution, fs[i].Basis
			return false, f
		}
	}
	return true, f
}

// Slings returns the coats of a stepped patch that may still go on while she hangs in the slings: the working coat alone, and only over
// sound primer or the layers below it. The list says what waits for the next shift of stands or the next haul-out, how long the coat dries
// before the water, and that bare metal and bare laminate wait.
//
// There is no coat where the working coat is not one-pack, or does not lap onto itself.
//
// Basis: common practice, no source.
func Slings(b *tables.Book, s Stack) ([]PatchLayer, finding.List) {
	layers, said := Patch(b, s)
	if len(layers) == 0 {
		return nil, said
	}
	var out []PatchLayer
	fs := finding.List{{Rule: RuleSlingsBare, Verdict: finding.Caution}}
	for i := range layers {
		l := &layers[i]
		c := &l.Layer.Coating
		f := finding.Finding{
			Rule: RuleSlingsCoat, Verdict: finding.Fine, About: c.Name, Basis: []finding.Basis{c.Basis("launch_min")},
			Facts: []finding.Fact{{Name: "dries", Value: c.LaunchMin}},
		}
		switch {
		case !l.MayLap || c.Packs != 1:
			f.Rule, f.Verdict, f.Facts = RuleSlingsWaits, finding.Forbidden, nil
		case !c.LaunchMin.Given():
			f.Rule, f.Verdict, f.Facts = RuleSlingsAsk, finding.Ask, nil
			out = append(out, *l)
		default:
			out = append(out, *l)
		}
		fs = append(fs, f)
	}
	return out, fs
}
