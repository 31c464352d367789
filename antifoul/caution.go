package antifoul

import (
	"slices"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// cautions lists the cautions that this job calls for, in the order of the book: those of the work, of the paint and of how it goes on, of the old
// films that the work disturbs, or that signs leave possible, of what was seen of her, of the materials, and of cleaning a film with biocide afloat.
func (j *Job) cautions(b *tables.Book, boat Boat) []tables.Caution {
	schemes := j.Schemes
	on := map[string]bool{}
	unknown, _ := b.Coating(tables.UnknownOld) // without hazards where the book has no such row
	for _, f := range j.OldFilms {
		if f.May != nil {
			for _, h := range f.May.Hazards {
				on[h] = true
			}
		}
	}
	if j.Survey != nil {
		for _, a := range j.Survey.Advice {
			for k := range a.Row.Cautions() {
				on[k] = true
			}
			if a.Finding.Rule == survey.RuleFilmUnknown {
				mark(on, unknown)
			}
		}
	}
	for _, t := range j.Order {
		if row, err := b.Step(t.Do); err == nil {
			for k := range row.Cautions() {
				on[k] = true
			}
		}
	}
	loss, _ := b.Loss(boat.Paint.By) // checked with the boat
	for _, s := range schemes {
		for _, k := range s.Coats {
			on[loss.Caution] = true
			on["two-pack"] = on["two-pack"] || k.Layer.Coating.Packs == 2
			on["solvent"] = on["solvent"] || k.Layer.Coating.Carrier == "solvent"
		}
		dust := disturbs(s.Route.Steps)
		for _, p := range boat.Parts {
			if p.Name != s.Part {
				continue
			}
			if len(p.Found) == 0 && dust {
				mark(on, unknown)
			}
			for _, l := range p.Found {
				on["waste"] = on["waste"] || biocidal(l.Coating) && len(s.Coats) > 0 // wash water counts too
				if dust || l.Coating.Biocide == tables.Organotin {                   // washing is work on it already
					mark(on, l.Coating)
					on["antifouling-dust"] = on["antifouling-dust"] || dust && biocidal(l.Coating)
				}
			}
			if m, err := b.Material(p.Material); err == nil && dust {
				for h := range m.Hazards() {
					on[h] = true
				}
			}
		}
	}
	on["hull-cleaning"] = on["hull-cleaning"] || boat.Use.Afloat() && boat.Use.Cleaning > tables.None && slices.ContainsFunc(schemes, func(s Scheme) bool { return biocidal(s.Coating) })
	var out []tables.Caution
	for c := range b.Cautions() {
		if on[c.Key] {
			out = append(out, c)
		}
	}
	return out
}

// biocidal reports whether the film holds a biocide, or may hold one.
func biocidal(c tables.Coating) bool { return c.Biocide != tables.NoBiocide && c.Biocide != "" }

func mark(on map[string]bool, c tables.Coating) {
	for h := range c.Hazards() {
		on[h] = true
	}
}

// disturbs reports whether the work makes dust or chips of the old film.
func disturbs(steps []finding.Step) bool {
	for _, s := range steps {
		switch s.Do {
		case finding.Abrade, finding.WetScuff, finding.Strip, finding.Blast, finding.SpotRepair:
			return true
		default:
		}
	}
	return false
}
