package survey

import (
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// highMoisture is what is seen where a meter reads higher than on a dry place; its rows say what that asks for.
const highMoisture = "high moisture"

// Keys of rows of factor.
const (
	dryDays  = "survey-dry-days"
	dryHours = "survey-dry-hours"
)

// Factors lists the keys of the numbers that Judge reads.
func Factors() []string { return []string{dryDays, dryHours} }

// Metered is what one reading of a moisture meter came to.
type Metered struct {
	Moisture
	About    string
	Findings finding.List
}

// moisture judges the readings: whether the meter reads on the material, and then against the place known to be dry.
func (a *answering) moisture(b *tables.Book, s Survey, parts []compat.Part) {
	for _, m := range s.Moisture {
		p, _ := partOf(parts, m.Part)
		out := Metered{Moisture: m, About: where(b, Place{Part: m.Part, Zone: m.Zone})}
		verdict := finding.Forbidden
		if x, err := b.Instrument(m.Instrument); err == nil {
			f := reads(b, x, p.Material)
			verdict = f.Verdict
			out.Findings = append(out.Findings, f)
		}
		if verdict == finding.Fine || verdict == finding.Caution {
			f := compared(m, out.About)
			out.Findings = append(out.Findings, f)
			if f.Rule == RuleMoistureHigher {
				a.mark(b, Mark{What: highMoisture, Known: Measured}, p.Material, out.About, m.Photo)
				if p.Laminate == "dry" {
					a.Differs = append(a.Differs, finding.Finding{Rule: RuleLaminateDiffers, Verdict: finding.Ask, About: out.About})
				}
			}
		}
		a.Moisture = append(a.Moisture, out)
	}
	if len(s.Moisture) > 0 {
		a.when(b, s.How)
	}
}

// reads says whether the meter reads on the material.
func reads(b *tables.Book, x tables.Instrument, material string) finding.Finding {
	f := finding.Finding{Verdict: x.On(material), About: x.Name, Against: material}
	if m, err := b.Material(material); err == nil {
		f.Against = m.Name
	}
	field := "reads"
	fact := func(name, text string) { f.Facts = append(f.Facts, finding.Fact{Name: name, Value: text}) }
	switch f.Verdict {
	case finding.Fine:
		f.Rule = RuleMeterReads
		fact("says", x.Says)
	case finding.Caution:
		f.Rule, field = RuleMeterBeware, "caution"
		fact("beware", x.Warns)
	case finding.Ask:
		f.Rule, field = RuleMeterAsk, "ask"
		fact("ask", x.Question)
	default:
		f.Rule = RuleMeterNot
	}
	f.Basis = []finding.Basis{x.Basis(field)}
	return f
}

// compared holds a reading against that of the place known to be dry: higher where the typical reading is.
func compared(m Moisture, about string) finding.Finding {
	f := finding.Finding{
		Rule: RuleMoistureAlone, Verdict: finding.Ask, About: about,
		Facts: []finding.Fact{{Name: "reading", Value: Needle(m.Reading)}, {Name: "scale", Value: m.Scale}, {Name: "dry", Value: m.Dry}},
	}
	switch {
	case !m.HasDry:
	case m.Reading.Typical > m.Dry:
		f.Rule, f.Verdict = RuleMoistureHigher, finding.Caution
	default:
		f.Rule, f.Verdict = RuleMoistureAsDry, finding.Fine
	}
	return f
}

// when says what the time ashore and since the wash takes from the readings.
func (a *answering) when(b *tables.Book, h How) {
	say := func(rule finding.ID, key, name string, got any, unit func(int64) quantity.Duration) {
		f := finding.Finding{Rule: rule, Verdict: finding.Caution, Facts: []finding.Fact{{Name: name, Value: got}}}
		if row, err := b.Factor(key); err == nil {
			f.Basis = []finding.Basis{row.Basis("value")}
			f.Facts = append(f.Facts, finding.Fact{Name: "wanted", Value: unit(int64(row.Value.Typical))})
		}
		a.Limits = append(a.Limits, f)
	}
	number := func(key string) float64 {
		if row, err := b.Factor(key); err == nil {
			return row.Value.Typical
		}
		return 0
	}
	switch n, ok := h.DaysAshore(); {
	case !ok:
		a.Limits = append(a.Limits, finding.Finding{Rule: RuleMoistureWhen, Verdict: finding.Caution})
	case float64(n) < number(dryDays):
		say(RuleMoistureSoon, dryDays, "days", quantity.Day.N(int64(n)), quantity.Day.N)
	}
	if h.Wash.Given() && h.Wash.Float(quantity.Hour) < number(dryHours) {
		say(RuleMoistureWash, dryHours, "hours", h.Wash, quantity.Hour.N)
	}
}
