package tables

import (
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// checkReferences notes a fault for each row that names a row which does not exist.
func (b *Book) checkReferences(faults *finding.Faults) {
	miss := func(rec *record, table, field, got string, known []string) {
		if got != "" && !slices.Contains(known, got) {
			*faults = append(*faults, finding.Fault{
				Kind: finding.ErrUnknown, File: rec.file, Key: table + "[" + rec.key() + "]." + field,
				Got: entry.Describe(got), Want: finding.Suggest(got, known),
			})
		}
	}
	sources, coatings, cautions := b.sources.keys(), b.coatings.keys(), b.cautions.keys()
	places, materials, actives := b.places.keys(), b.materials.keys(), b.actives.keys()
	for _, table := range tableNames {
		for _, rec := range b.records[table] {
			kind, _ := rec.m["basis"].(string)
			if src, _ := rec.m["source"].(string); table != "source" && kind != string(finding.OwnTable) && kind != string(finding.Invented) {
				miss(rec, table, "source", src, sources)
			}
			for _, basis := range rec.own {
				if basis.Kind != finding.OwnTable && basis.Kind != finding.Invented {
					miss(rec, table, "source", basis.Source, sources)
				}
			}
		}
	}
	for i, c := range b.coatings.rows {
		rec := b.coatings.from[i]
		miss(rec, "coating", "under", c.Under, coatings)
		for _, a := range c.actives {
			miss(rec, "coating", "active", a.Key, actives)
		}
		for _, h := range c.hazards {
			miss(rec, "coating", "hazards", h, cautions)
		}
		for _, m := range c.materials {
			miss(rec, "coating", "materials", m, materials)
		}
	}
	rules := b.rules.keys()
	for i, m := range b.materials.rows {
		miss(b.materials.from[i], "material", "barrier_with", m.With, coatings)
		miss(b.materials.from[i], "material", "primer", m.Primer, coatings)
		for _, h := range m.hazards {
			miss(b.materials.from[i], "material", "hazards", h, cautions)
		}
	}
	forms, zones := b.forms.keys(), b.zones.keys()
	for i, m := range b.methods.rows {
		for _, f := range m.forms {
			miss(b.methods.from[i], "area_method", "for", f, forms)
		}
		for _, z := range m.wants {
			miss(b.methods.from[i], "area_method", "wants", z, zones)
		}
	}
	for i, z := range b.zones.rows {
		miss(b.zones.from[i], "zone", "goes_with", z.With, zones)
	}
	for i, p := range b.pieces.rows {
		miss(b.pieces.from[i], "piece", "zone", p.Zone, zones)
	}
	losses := b.losses.keys()
	for i, x := range b.supplies.rows {
		for _, l := range x.by {
			miss(b.supplies.from[i], "supply", "by", l, losses)
		}
	}
	for i, l := range b.losses.rows {
		miss(b.losses.from[i], "loss", "caution", l.Caution, cautions)
	}
	families := []string{"antifouling"}
	families = append(families, mechanismWords...)
	families = append(families, roleWords...)
	families = append(families, coatings...)
	for i, c := range b.conditions.rows {
		miss(b.conditions.from[i], "condition", "rule", string(c.Rule), rules)
	}
	for i, o := range b.overcoats.rows {
		rec := b.overcoats.from[i]
		miss(rec, "overcoat", "rule", string(o.Rule), rules)
		miss(rec, "overcoat", "with", o.With, coatings)
		miss(rec, "overcoat", "new", o.New, families)
		miss(rec, "overcoat", "old", o.Old, families)
		miss(rec, "overcoat", "except", o.Except, families)
	}
	for i, c := range b.cans.rows {
		miss(b.cans.from[i], "can", "coating", c.Coating, coatings)
	}
	for i, s := range b.steps.rows {
		for _, c := range s.cautions {
			miss(b.steps.from[i], "step", "cautions", c, cautions)
		}
		miss(b.steps.from[i], "step", "key", s.Key, actionWords)
	}
	for i, p := range b.places.rows {
		miss(b.places.from[i], "place", "within", p.Within, places)
		if b.circular(p.Key) {
			*faults = append(*faults, finding.Fault{
				Kind: finding.ErrImpossible, File: b.places.from[i].file, Key: "place[" + p.Key + "].within",
				Got: entry.Describe(p.Within), Want: "a place that does not lie in this one",
			})
		}
	}
	for i, p := range b.results.rows {
		miss(b.results.from[i], "past_result", "coating", p.Coating, coatings)
		miss(b.results.from[i], "past_result", "place", p.Place, places)
	}
	for i, p := range b.prices.rows {
		if known, ok := map[Priced][]string{PricedPaint: coatings, PricedSupply: b.supplies.keys(), PricedWork: actionWords}[p.Of]; ok {
			miss(b.prices.from[i], "price", "what", p.What, known)
		}
	}
	for i, s := range b.signs.rows {
		for _, key := range s.speaks {
			miss(b.signs.from[i], "sign", "for", key, coatings)
		}
		for _, key := range s.against {
			miss(b.signs.from[i], "sign", "against", key, coatings)
		}
	}
	for i, x := range b.thresholds.rows {
		miss(b.thresholds.from[i], "threshold", "state", string(x.State), b.conditions.keys())
	}
	electrodes := b.electrodes.keys()
	for i, p := range b.potentials.rows {
		miss(b.potentials.from[i], "potential", "electrode", p.Electrode, electrodes)
		miss(b.potentials.from[i], "potential", "material", p.Material, materials)
	}
	for i, p := range b.protections.rows {
		miss(b.protections.from[i], "protection", "electrode", p.Electrode, electrodes)
		miss(b.protections.from[i], "protection", "material", p.Material, materials)
	}
	var samplings []string
	for s := range b.Samplings() {
		if !slices.Contains(samplings, s.Standard) {
			samplings = append(samplings, s.Standard)
		}
	}
	for i, a := range b.acceptances.rows {
		miss(b.acceptances.from[i], "acceptance", "sampling", a.Sampling, samplings)
		miss(b.acceptances.from[i], "acceptance", "sampling_us", a.SamplingUS, samplings)
		miss(b.acceptances.from[i], "acceptance", "guide", a.Guide, b.values.keys())
	}
	for i, x := range b.instruments.rows {
		for field, keys := range map[string][]string{"reads": x.reads, "caution": x.caution, "ask": x.ask} {
			for _, m := range keys {
				miss(b.instruments.from[i], "instrument", field, m, materials)
			}
		}
	}
	b.checkObservations(miss, faults)
	for i, l := range b.laws.rows {
		rec := b.laws.from[i]
		miss(rec, "law", "place", l.Place, places)
		for _, a := range l.actives {
			miss(rec, "law", "actives", a, actives)
		}
		for _, m := range l.exempt {
			miss(rec, "law", "exempt", m, materials)
		}
	}
}

// circular reports whether a place lies in itself, directly or through others.
func (b *Book) circular(key string) bool {
	within := key
	for range b.places.rows {
		p, err := b.places.get(within)
		if err != nil || p.Within == "" {
			return false
		}
		if within = p.Within; within == key {
			return true
		}
	}
	return false
}
