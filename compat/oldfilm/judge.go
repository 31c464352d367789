package oldfilm

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Do is what the readings ask for.
type Do uint8

// What may be asked for, from the least work.
const (
	NotRead Do = iota
	Keep
	Repair // spots
	Either // between the two ends where the trade strips: weigh it
	Strip
)

// String returns what is done in a word or two.
func (d Do) String() string {
	return [...]string{"not read", "keep", "repair spots", "strip or overcoat, weigh it", "strip"}[min(d, Strip)]
}

// Decision is what becomes of the old film on one zone.
type Decision struct {
	Do       Do
	Decided  []string         // the readings that asked for most, by their threshold's key
	State    tables.Condition // the state that the film is in by these readings; empty where none was read
	Findings finding.List     // one a reading, never empty
	Hours    quantity.Range[float64]
	Waste    quantity.Range[quantity.Mass] // of paint that comes off, its two ends; not given where no film was read
}

// Judge judges the readings of one zone, each by its threshold: worse than the far end of strip asks to strip, between its ends the trade
// differs, worse than repair asks for spots, else the film is kept. A reading on a threshold is inside it. The harshest reading decides.
// A film is given as a range: where all of it is past the far end it comes off, where some of it is past the near one the trade differs.
//
//	hours = hours of the row "strip", or "spot repair", a square metre × area; nothing for keep
//	waste = area × film × density (rows waste-density-least and -most); of spots, times the share that flakes
//
// Moisture is a trend and decides nothing about the film: it says whether anything that seals may go on. The error is a finding.Faults.
//
// Basis: the thresholds' rows: common practice, from memory and assumptions.
func Judge(b *tables.Book, r Readings, area quantity.Range[quantity.Area]) (Decision, error) {
	if err := r.Check(b).Err(); err != nil {
		return Decision{}, err
	}
	var d Decision
	for _, x := range r.all() {
		t, err := b.Threshold(x.key)
		if err != nil {
			return Decision{}, err
		}
		do := weighs(&t, x)
		f := finding.Finding{
			Rule: RuleReadingKeep, Verdict: finding.Fine, About: t.Name, Basis: []finding.Basis{t.Basis("strip")},
			Facts: []finding.Fact{{Name: "read", Value: x.shown}, {Name: "unit", Value: t.Unit}, {Name: "repair", Value: t.Repair}, {Name: "low", Value: t.Strip.Low}, {Name: "high", Value: t.Strip.High}},
		}
		switch do {
		case Repair:
			f.Rule, f.Verdict, f.First = RuleReadingRepair, finding.Needs, []finding.Step{{Do: finding.Wash}, {Do: finding.SpotRepair}}
		case Either:
			f.Rule, f.Verdict = RuleReadingEither, finding.Ask
		case Strip:
			f.Rule, f.Verdict, f.First = RuleReadingStrip, finding.Needs, []finding.Step{{Do: finding.Strip}}
		case NotRead, Keep:
		}
		d.Findings = append(d.Findings, f)
		if do > d.Do {
			d.Do, d.Decided, d.State = do, nil, state(&t, do)
		}
		if do == d.Do && do > Keep {
			d.Decided = append(d.Decided, x.key)
		}
	}
	if r.Moisture != "" {
		d.Findings = append(d.Findings, moisture(r.Moisture))
	}
	if len(d.Findings) == 0 {
		d.Findings = finding.List{{Rule: RuleNoReading, Verdict: finding.Ask}}
	}
	d.costs(b, r, area)
	return d, nil
}

// weighs returns what one reading asks for.
func weighs(t *tables.Threshold, x reading) Do {
	past := func(v, limit float64) bool {
		if t.Lower {
			return v < limit
		}
		return v > limit
	}
	near, far := t.Strip.Low, t.Strip.High
	if t.Lower {
		near, far = far, near
	}
	switch {
	case past(x.better, far):
		return Strip
	case past(x.worse, near):
		return Either
	case past(x.worse, t.Repair):
		return Repair
	}
	return Keep
}

// state is the state of the film that a reading tells.
func state(t *tables.Threshold, do Do) tables.Condition {
	switch do {
	case Strip:
		return t.State
	case Repair, Either:
		return tables.FlakingInPlaces
	case NotRead, Keep:
	}
	return tables.Sound
}

func moisture(trend string) finding.Finding {
	switch trend {
	case "falling":
		return finding.Finding{Rule: RuleFalling, Verdict: finding.Needs, First: []finding.Step{{Do: finding.DryOut}}}
	case "steady":
		return finding.Finding{Rule: RuleSteady, Verdict: finding.Fine}
	}
	return finding.Finding{Rule: RuleRising, Verdict: finding.Ask}
}

// costs adds hours and waste.
func (d *Decision) costs(b *tables.Book, r Readings, area quantity.Range[quantity.Area]) {
	action := map[Do]finding.Action{Repair: finding.SpotRepair, Either: finding.Strip, Strip: finding.Strip}[d.Do]
	if action == "" || !area.Low.Given() {
		return
	}
	hours, ok := b.Hours(action)
	if !ok {
		return
	}
	a := quantity.Range[float64]{Low: area.Low.Float(quantity.SquareMetre), Typical: area.Typical.Float(quantity.SquareMetre), High: area.High.Float(quantity.SquareMetre)}
	d.Hours = quantity.Range[float64]{Low: hours.Low * a.Low, Typical: hours.Typical * a.Typical, High: hours.High * a.High}
	part := 1.0
	if d.Do == Repair {
		if !r.Flaking.Given() {
			return // nobody said how much of it comes off
		}
		part = r.Flaking.Float(quantity.Percent) / 100
	}
	d.Waste = waste(b, a, r.Film, part)
}

// waste is the mass of the paint that comes off; not given where no film was read or the book holds no density.
func waste(b *tables.Book, m2 quantity.Range[float64], film quantity.Range[quantity.Film], part float64) quantity.Range[quantity.Mass] {
	var none quantity.Range[quantity.Mass]
	least, most := 0.0, 0.0
	for v := range b.Values() {
		switch v.Key {
		case "waste-density-least":
			least = v.Value.Typical
		case "waste-density-most":
			most = v.Value.Typical
		}
	}
	if !film.Low.Given() || least <= 0 || most < least {
		return none
	}
	kg := func(area float64, f quantity.Film, density float64) quantity.Mass {
		m, err := quantity.Kilogram.Near(area*f.Float(quantity.Micrometre)*density*part/1000, 1, quantity.Up)
		if err != nil {
			return quantity.Mass{}
		}
		return m
	}
	return quantity.Range[quantity.Mass]{Low: kg(m2.Low, film.Low, least), High: kg(m2.High, film.High, most)}
}
