package compat

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Beside judges the hull's coating against the parts that it ends beside: one finding for each neighbour, and one when there is none.
//
// Where the neighbour's zone keeps a gap (a drive leg) and its material never takes cuprous oxide, a hull in cuprous oxide, or in
// a film that nobody has identified, needs that strip of the hull kept free of it: a copper-free coat over a barrier. Metallic
// copper there is a question for the maker of the leg. The gap is that of the zone's row.
//
// Basis: common practice, no source.
func Beside(b *tables.Book, hull tables.Coating, neighbours []Part) finding.List {
	if len(neighbours) == 0 {
		return finding.List{{Rule: RuleBesideNone, Verdict: finding.Fine, About: hull.Name}}
	}
	out := make(finding.List, 0, len(neighbours))
	for i := range neighbours {
		out = append(out, beside(b, &hull, &neighbours[i]))
	}
	return out
}

func beside(b *tables.Book, hull *tables.Coating, n *Part) finding.Finding {
	f := finding.Finding{Rule: RuleBesideFine, Verdict: finding.Fine, About: hull.Name, Against: n.Name}
	m, err := b.Material(n.Material)
	if err != nil {
		f.Rule, f.Verdict, f.Against = RuleMaterialUnknown, finding.Ask, n.Material
		return f
	}
	if n.Zone == "" {
		return f
	}
	z, err := b.Zone(n.Zone)
	if err != nil {
		f.Rule, f.Verdict, f.Against = RuleZoneUnknown, finding.Ask, n.Zone
		return f
	}
	if !z.Gap.Typical.Given() || m.Painted == tables.Never || m.Takes(tables.CuprousOxide) != tables.Never {
		return f
	}
	f.Basis = []finding.Basis{z.Basis("gap"), m.Basis("cuprous_oxide")}
	switch hull.Biocide {
	case tables.CuprousOxide, tables.UnknownBiocide, tables.Organotin:
		f.Rule, f.Verdict = RuleBesideStrip, finding.Needs
		f.Facts = []finding.Fact{{Name: "gap", Value: z.Gap}}
		f.First = []finding.Step{{Do: finding.Barrier, Coating: m.With, Film: m.Film}}
	case tables.MetallicCopper:
		f.Rule, f.Verdict = RuleBesideMetallic, finding.Ask
	case tables.CopperThiocyanate, tables.OtherCopper, tables.CopperFree, tables.NoBiocide:
		f.Basis = nil
	}
	return f
}
