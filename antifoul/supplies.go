package antifoul

import (
	"slices"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of what comes off.
const (
	RuleWaste        finding.ID = "waste-comes-off"
	RuleWasteHazard  finding.ID = "waste-hazard"
	RuleWasteUnknown finding.ID = "waste-not-known"
	RuleWasteGrit    finding.ID = "waste-grit"
)

// supplies reckons what the job uses up beside the paint and what comes off the hull.
func (j *Job) supplies(b *tables.Book, boat Boat) error {
	w := coverage.Work{Hands: boat.Work.Hands, Areas: map[finding.Action]quantity.Range[quantity.Area]{}}
	for _, t := range j.Order {
		if t.Coat != nil {
			w.Coats = append(w.Coats, coverage.Coated{Coating: t.Coat.Layer.Coating, Coats: t.Coat.Layer.Coats, Area: t.Coat.Area})
			continue
		}
		w.Areas[t.Do] = plusArea(w.Areas[t.Do], t.Area)
	}
	if len(w.Coats) == 0 {
		return nil
	}
	days := boat.Work.Hours(j.Hours)
	each := factor(b, "day-hours")
	w.Days = quantity.Range[float64]{Low: days.Low / each, Typical: days.Typical / each, High: days.High / each}
	if n := float64(j.coatDays(b)); n > w.Days.Low { // hands come back for every coat that must dry first
		w.Days = quantity.Range[float64]{Low: n, Typical: max(n, w.Days.Typical), High: max(n, w.Days.High)}
	}
	j.Days = w.Days
	var err error
	if w.Outline, err = coverage.Outline(b, boat.Hull); err != nil {
		return prefixed(err, "hull")
	}
	if boat.Hull.Length.Given() && boat.Hull.Beam.Given() {
		if w.Plan, err = quantity.SquareMetre.Near(boat.Hull.Length.Float(quantity.Metre)*boat.Hull.Beam.Float(quantity.Metre), 1, quantity.Up); err != nil {
			return prefixed(err, "hull")
		}
	}
	if err := j.waste(b, boat); err != nil {
		return err
	}
	w.Waste = j.Waste
	if grit := spent(coverage.Supplies(b, w, boat.Paint)); grit.Given() { // it takes the paint with it, into the same bags
		j.OfWaste = append(j.OfWaste, finding.Finding{Rule: RuleWasteGrit, Verdict: finding.Caution, Facts: []finding.Fact{fact("grit", grit)}})
		w.Waste.Low, w.Waste.High = plus(w.Waste.Low, grit), plus(w.Waste.High, grit)
	}
	j.Supplies = coverage.Supplies(b, w, boat.Paint)
	return nil
}

// waste adds up the paint that comes off each part: its whole film where it is stripped or blasted, what abrading takes elsewhere.
//
//	waste = area × film × density      film: as found, or the factor "abraded-film"; density: 1.8 to 2.0 kg a litre
//
// Only the two ends are reckoned. A film that comes off and was not measured is said, and not counted.
func (j *Job) waste(b *tables.Book, boat Boat) error {
	least, _ := b.Value("waste-density-least")
	most, _ := b.Value("waste-density-most")
	scuffed, err := b.Factor("abraded-film")
	if err != nil {
		return err
	}
	low, high := 0.0, 0.0
	var holds, unread []string
	for _, s := range j.Schemes {
		at := slices.IndexFunc(boat.Parts, func(p compat.Part) bool { return p.Name == s.Part })
		part := boat.Parts[at]
		area := j.Areas[at].Total
		if !area.High.Given() {
			continue
		}
		film := quantity.Range[float64]{}
		switch {
		case does(s, finding.Strip) || does(s, finding.Blast):
			for _, l := range part.Found {
				if l.Film.High.Given() {
					film.Low += l.Film.Low.Float(quantity.Micrometre)
					film.High += l.Film.High.Float(quantity.Micrometre)
				} else if l.Coating.Mechanism != tables.NoFilm {
					unread = append(unread, l.Coating.Name+" on the "+s.Part)
				}
			}
			if len(part.Found) == 0 {
				unread = append(unread, "an unknown film on the "+s.Part)
			}
		case does(s, finding.Abrade) || does(s, finding.WetScuff) || does(s, finding.SpotRepair):
			film = scuffed.Value
		default:
			continue
		}
		low += area.Low.Float(quantity.SquareMetre) * film.Low / 1000 * least.Value.Typical
		high += area.High.Float(quantity.SquareMetre) * film.High / 1000 * most.Value.Typical
		for _, l := range part.Found {
			if l.Coating.Biocide != tables.NoBiocide || len(slices.Collect(l.Coating.Hazards())) > 0 {
				holds = append(holds, l.Coating.Name)
			}
		}
		if len(part.Found) == 0 {
			holds = append(holds, "an unknown old film")
		}
	}
	if high > 0 {
		if j.Waste.Low, err = quantity.Kilogram.Near(low, 0, quantity.Down); err == nil {
			j.Waste.High, err = quantity.Kilogram.Near(high, 0, quantity.Up)
		}
		if err != nil {
			return prefixed(err, "part")
		}
		j.OfWaste = append(j.OfWaste, finding.Finding{
			Rule: RuleWaste, Verdict: finding.Caution, Basis: []finding.Basis{least.Basis("value"), scuffed.Basis("value")},
			Facts: []finding.Fact{{Name: "low", Value: j.Waste.Low}, {Name: "high", Value: j.Waste.High}},
		})
	}
	if len(unread) > 0 {
		slices.Sort(unread)
		j.OfWaste = append(j.OfWaste, finding.Finding{Rule: RuleWasteUnknown, Verdict: finding.Ask, Facts: []finding.Fact{{Name: "films", Value: strings.Join(slices.Compact(unread), " and ")}}})
	}
	if len(holds) > 0 {
		slices.Sort(holds)
		j.OfWaste = append(j.OfWaste, finding.Finding{Rule: RuleWasteHazard, Verdict: finding.Caution, Facts: []finding.Fact{{Name: "films", Value: strings.Join(slices.Compact(holds), ", ")}}})
	}
	return nil
}

// spent is the abrasive that blasting uses; not given when nothing is blasted.
func spent(list []coverage.Supplied) quantity.Mass {
	for _, s := range list {
		if s.Supply.Per == string(finding.Blast) && s.Supply.Unit == "kg" {
			return quantity.Kilogram.N(int64(s.Buy))
		}
	}
	return quantity.Mass{}
}

// coatDays is on how many days coats go on: as many coats of one part as their windows let go on in one working day, and the next day the
// next. Basis: derived; a working day is the factor "day-hours".
func (j *Job) coatDays(b *tables.Book) int {
	day := factor(b, "day-hours")
	most := 0
	for _, s := range j.Schemes {
		days, at := 0, day // hours into the day at which the next coat may go on
		for _, t := range j.Order {
			if t.Coat == nil || !slices.Contains(t.Parts, s.Part) {
				continue
			}
			wait := day
			if t.Wait.Given() {
				wait = t.Wait.Float(quantity.Hour)
			}
			for range t.Coat.Layer.Coats {
				if at >= day {
					days, at = days+1, 0
				}
				at += max(wait, 1)
			}
		}
		most = max(most, days)
	}
	return most
}

func does(s Scheme, a finding.Action) bool {
	return slices.ContainsFunc(s.Route.Steps, func(x finding.Step) bool { return x.Do == a })
}

func plusArea(a, b quantity.Range[quantity.Area]) quantity.Range[quantity.Area] {
	return quantity.Range[quantity.Area]{Low: plus(a.Low, b.Low), Typical: plus(a.Typical, b.Typical), High: plus(a.High, b.High)}
}
