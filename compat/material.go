package compat

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// OnMaterial judges whether the coating may be on the part: its biocide class against the material, the barrier below it, the
// number of packs and the carrier that the surface stands, the zone, and old films that have to come off whatever goes on.
//
// Findings come in that order and there is at least one. A copper class that the material takes over a barrier only is fine when
// p.Found holds sound two-pack film of the material's least barrier from the surface up, measured; else it needs one. What is
// forbidden here no work lifts. For "no coating" the answer is that the surface stays bare.
//
// Basis: common practice; copper on aluminium by a class rule (the row names it, and the paper that speaks against it).
func OnMaterial(b *tables.Book, c tables.Coating, p Part) finding.List {
	m, err := b.Material(p.Material)
	if err != nil {
		return finding.List{{Rule: RuleMaterialUnknown, Verdict: finding.Ask, About: c.Name, Against: p.Material}}
	}
	out := onSurface(make(finding.List, 0, 4), finding.Fine, faceOf(b, p.Zone), &m, &c, nil)
	return onFound(out, &m, &c, &p, oldCopper(b, &m, &p))
}

// onFound adds what depends on what was found on the part: the barrier below, old films that come off, a wet laminate.
func onFound(out finding.List, m *tables.Material, c *tables.Coating, p *Part, off finding.List) finding.List {
	out = append(aboveBarrier(out, m, c, p.Found), off...)
	if p.Laminate == "wet" && c.Packs == 2 {
		out = append(out, wet(c, m))
		out = closed(out, m, p.Found)
	}
	return out
}

// onSurface adds what no step changes: material, zone, carrier, packs, and copper that the material never or always takes; of it
// the verdicts from least up; on a slate without their facts and bases. Where only what is forbidden is asked for, no zone is named.
func onSurface(out finding.List, least finding.Verdict, at face, m *tables.Material, c *tables.Coating, on *Slate) finding.List {
	say := func(rule finding.ID, v finding.Verdict, field, fact, value string) {
		if v < least {
			return
		}
		f := finding.Finding{Rule: rule, Verdict: v, About: c.Name, Against: m.Name}
		if on == nil {
			f.Basis = []finding.Basis{m.Basis(field)}
			if fact != "" {
				f.Facts = []finding.Fact{{Name: fact, Value: value}}
			}
		}
		out = append(out, f)
	}
	if c.Role == tables.Bare {
		say(RuleBareStays, finding.Fine, "painted", "", "")
		return out
	}
	switch m.Painted {
	case tables.Never:
		say(RuleNeverPainted, finding.Forbidden, "painted", "", "")
		return out
	case tables.AskMaker, tables.OverBarrier:
		say(RuleAskPartMaker, finding.Ask, "painted", "", "")
	case tables.Allowed:
	}
	switch z := at.row; {
	case at.zone == "" || c.Mechanism == "":
	case z == nil:
		out = append(out, finding.Finding{Rule: RuleZoneUnknown, Verdict: finding.Ask, About: c.Name, Against: at.zone})
	case !z.Takes(c.Mechanism), c.Laid() && !z.Sheet:
		f := finding.Finding{Rule: RuleZoneMechanism, Verdict: finding.Forbidden, About: c.Name, Against: z.Name}
		if on == nil {
			f.Basis = []finding.Basis{z.Basis("mechanisms")}
		}
		out = append(out, f)
	}
	if m.Carrier != "" && c.Carrier != m.Carrier {
		say(RuleCarrierOnly, finding.Forbidden, "carrier", "carrier", m.Carrier)
	}
	if c.Packs == 2 && !m.TwoPack {
		say(RuleOnePackOnly, finding.Forbidden, "two_pack", "", "")
	}
	if c.Role == tables.Barrier && m.Barrier == tables.Never {
		say(RuleBarrierHarms, finding.Forbidden, "barrier", "", "")
	}
	var rule finding.ID
	var v finding.Verdict
	switch m.Takes(c.Biocide) {
	case tables.Allowed:
		rule, v = RuleMetalTakes, finding.Fine
	case tables.Never:
		rule, v = RuleMetalNever, finding.Forbidden
	case tables.AskMaker:
		rule, v = RuleMetalAsk, finding.Ask
	case tables.OverBarrier: // judged with what is below
	}
	if rule != "" {
		say(rule, v, policyField(c.Biocide), "class", string(c.Biocide))
	}
	return out
}

// face is where on the boat a coat is to go: nothing is asked of it where no zone is named; a zone that the book does not hold has no row.
type face struct {
	zone string
	row  *tables.Zone
}

func faceOf(b *tables.Book, zone string) face {
	if zone == "" {
		return face{}
	}
	z, err := b.Zone(zone)
	if err != nil {
		return face{zone: zone}
	}
	return face{zone, &z}
}

// policyField is the field of a material that speaks of the biocide class.
func policyField(b tables.Biocide) string {
	switch b {
	case tables.MetallicCopper:
		return "metallic_copper"
	case tables.CopperThiocyanate, tables.OtherCopper:
		return "other_copper"
	case tables.CopperFree, tables.NoBiocide:
		return "copper_free"
	case tables.CuprousOxide, tables.UnknownBiocide, tables.Organotin:
	}
	return "cuprous_oxide"
}

// aboveBarrier adds what depends on the film below: copper over a barrier, and the barrier that the material itself wants.
func aboveBarrier(out finding.List, m *tables.Material, c *tables.Coating, below ...Stack) finding.List {
	if c.Role == tables.Bare || m.Painted == tables.Never {
		return out
	}
	copper := m.Takes(c.Biocide) == tables.OverBarrier
	wants := c.Role == tables.Antifouling && (m.Barrier == tables.OverBarrier || m.Barrier == tables.AskMaker || m.Barrier == wanted)
	if !copper && !wants {
		return out
	}
	there := barred(m, below...)
	film := finding.Fact{Name: "film", Value: m.Film.Low}
	build := func() []finding.Step {
		return []finding.Step{{Do: finding.Barrier, Coating: m.With, Film: missing(m, below...)}}
	}
	if copper {
		f := finding.Finding{
			Rule: RuleBarrierThere, Verdict: finding.Fine, About: c.Name, Against: m.Name,
			Facts: []finding.Fact{{Name: "class", Value: string(c.Biocide)}, film}, Basis: []finding.Basis{m.Basis(policyField(c.Biocide))},
		}
		if !there {
			f.Rule, f.Verdict, f.First = RuleOverBarrier, finding.Needs, build()
		}
		out = append(out, f)
	}
	if wants && !there {
		f := finding.Finding{Rule: RuleBarrierAdvised, Verdict: finding.Caution, About: c.Name, Against: m.Name, Facts: []finding.Fact{film}, Basis: []finding.Basis{m.Basis("barrier")}}
		switch m.Barrier {
		case tables.OverBarrier:
			f.Rule, f.Verdict, f.First = RuleBarrierNeeded, finding.Needs, build()
		case wanted:
			f.Rule, f.Verdict, f.First = RuleBarrierWanted, finding.Needs, build()
		case tables.Allowed, tables.AskMaker, tables.Never:
		}
		out = append(out, f)
	}
	if barrier, on := adrift(below...); !there && barrier != nil {
		out = append(out, finding.Finding{Rule: RuleBarrierAdrift, Verdict: finding.Caution, About: barrier.Coating.Name, Against: on.Coating.Name})
	}
	return out
}

// oldCopper lists the old films that the material does not bear, each once. Nothing reported counts as an unknown film.
func oldCopper(b *tables.Book, m *tables.Material, p *Part) finding.List {
	if m.Painted == tables.Never {
		return nil
	}
	if len(p.Found) == 0 {
		u := unknownLayer(b)
		if comesOff(m, &u.Coating) {
			return finding.List{notReported(p), offFinding(m, &u.Coating, finding.Needs)}
		}
		return nil
	}
	var out finding.List
	for i := range p.Found {
		if c := &p.Found[i].Coating; comesOff(m, c) {
			out = append(out, offFinding(m, c, finding.Needs))
		}
	}
	return out
}

func offFinding(m *tables.Material, c *tables.Coating, v finding.Verdict) finding.Finding {
	f := finding.Finding{
		Rule: RuleOldCopperOff, Verdict: v, About: c.Name, Against: m.Name,
		Facts: []finding.Fact{{Name: "class", Value: string(c.Biocide)}}, Basis: []finding.Basis{m.Basis("old_copper_stays")},
	}
	if v == finding.Needs {
		f.First = []finding.Step{{Do: finding.Strip}}
	}
	return f
}

func notReported(p *Part) finding.Finding {
	return finding.Finding{Rule: RuleNotReported, Verdict: finding.Caution, About: p.Name}
}

func wet(c *tables.Coating, m *tables.Material) finding.Finding {
	return finding.Finding{Rule: RuleWetLaminate, Verdict: finding.Needs, About: c.Name, Against: m.Name, First: []finding.Step{{Do: finding.DryOut}}}
}

// closed adds that a laminate hardly dries through the sound epoxy that lies on it.
func closed(out finding.List, m *tables.Material, on Stack) finding.List {
	depth := epoxyDepth(on)
	if depth == 0 {
		return out
	}
	return append(out, finding.Finding{Rule: RuleWetClosed, Verdict: finding.Caution, About: on[depth-1].Coating.Name, Against: m.Name})
}

// unknownLayer is the film that a part without a report is taken to carry.
func unknownLayer(b *tables.Book) Layer {
	c, err := b.Coating(unknownKey)
	if err != nil { // a book of one's own without the row
		c = tables.Coating{Row: tables.Row{Key: unknownKey, Name: "unknown old film"}, Role: tables.OldFilm, Mechanism: tables.Unknown, Biocide: tables.UnknownBiocide, Packs: 1}
	}
	return Layer{Coating: c, State: tables.NotReported, For: Found}
}

// bareLayer is the surface itself.
func bareLayer(b *tables.Book) Layer {
	c, err := b.Coating(bareKey)
	if err != nil {
		c = tables.Coating{Row: tables.Row{Key: bareKey, Name: "bare surface"}, Role: tables.OldFilm, Mechanism: tables.NoFilm, Biocide: tables.NoBiocide, Packs: 1}
	}
	return Layer{Coating: c, State: tables.Sound, For: Found}
}
