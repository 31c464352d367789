package antifoul

import (
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of one coat of a log.
const (
	RuleLogAirFine     finding.ID = "log-air-fine"
	RuleLogAirUnknown  finding.ID = "log-air-unknown"
	RuleLogCold        finding.ID = "log-air-cold"
	RuleLogHot         finding.ID = "log-air-hot"
	RuleLogDew         finding.ID = "log-air-dew"
	RuleLogHumid       finding.ID = "log-air-humid"
	RuleLogRain        finding.ID = "log-air-rain"
	RuleLogNoFilm      finding.ID = "log-film-none"
	RuleLogByLitres    finding.ID = "log-film-litres"
	RuleLogByComb      finding.ID = "log-film-comb"
	RuleLogByBoth      finding.ID = "log-film-both"
	RuleLogFilmDiffers finding.ID = "log-film-differs"
	RuleLogFilmLittle  finding.ID = "log-film-little"
	RuleLogThinner     finding.ID = "log-thinner"
	RuleLogDeviation   finding.ID = "log-deviation"
)

// loggedCoat judges one coat for itself: its film, the weather, the thinner, what deviated.
func (j *Job) loggedCoat(b *tables.Book, boat Boat, k joblog.Coat, all joblog.Log) LoggedCoat {
	out := LoggedCoat{Coat: k}
	out.Paint, _ = b.Coating(k.Coating) // Check has seen to it
	out.on, out.Area = j.wentOn(boat, k)
	out.tell(b, boat, j.swallowed(all, out))
	out.Findings = append(out.Findings, airOf(b, out)...)
	if planned := boat.Paint.Thinner; k.Thinner.Given() && (planned.Given() && !planned.Equal(k.Thinner) || !planned.Given() && k.Thinner.Sign() > 0) {
		p := planned
		if !p.Given() {
			p = quantity.Percent.N(0)
		}
		out.Findings = append(out.Findings, finding.Finding{Rule: RuleLogThinner, Verdict: finding.Caution, About: out.Paint.Name, Facts: facts(fact("thinner", k.Thinner), fact("planned", p))})
	}
	for _, d := range k.Deviations {
		out.Findings = append(out.Findings, finding.Finding{Rule: RuleLogDeviation, Verdict: finding.Caution, About: out.Paint.Name, Facts: facts(fact("what", d))})
	}
	return out
}

// wentOn are the zones and the area of a coat: those that it names; else for an extra coat the strips that take one, and for any other the whole part.
func (j *Job) wentOn(boat Boat, k joblog.Coat) ([]string, quantity.Range[quantity.Area]) {
	i := slices.IndexFunc(j.Areas, func(a PartArea) bool { return a.Part == k.Part })
	if i < 0 {
		return nil, quantity.Range[quantity.Area]{}
	}
	zones := k.Zones
	if len(zones) == 0 && k.Layer == compat.Extra {
		zones = zonesWithExtra(j.Book, j.Areas[i], boat.Parts[i])
	}
	var on []string
	var area quantity.Range[quantity.Area]
	for _, z := range j.Areas[i].Zones {
		if len(zones) == 0 || slices.Contains(zones, z.Zone) {
			on = append(on, z.Zone)
			area = plusArea(area, z.Area)
		}
	}
	return on, area
}

// tell works out the dry film of the coat: by its litres over its area, by the comb, or, where both were noted and agree, by what both allow.
// Where they do not agree nobody knows which is right, and the film is anything that either says. Litres that make less than the share used-doubt of
// what was asked are likelier missing in the log than on the hull: they tell nothing.
// What a blasted profile swallows of the first coat on it makes no film above its peaks.
func (k *LoggedCoat) tell(b *tables.Book, boat Boat, swallowed quantity.Range[quantity.Volume]) {
	if k.Paint.Laid() {
		return
	}
	asked := k.Paint.Film.Typical
	add := func(rule finding.ID, v finding.Verdict, more ...finding.Fact) {
		fs := facts(fact("asked", asked))
		if k.Film.Low.Given() {
			fs = append(fs, fact("film", microns(k.Film)))
		}
		k.Findings = append(k.Findings, finding.Finding{
			Rule: rule, Verdict: v, About: k.Paint.Name, Facts: append(fs, more...), Basis: []finding.Basis{k.Paint.Basis("solids"), {Kind: finding.Derived}},
		})
	}
	var byLitres, byComb quantity.Range[quantity.Film]
	if k.Litres.Given() && k.Area.Low.Given() {
		most, err := k.used(b, boat, swallowed.Low)
		switch {
		case err != nil: // nothing is left above the peaks, or the areas have faults of their own
			add(RuleLogFilmLittle, finding.Ask, fact("litres", k.Litres), fact("area", toldArea(k.Area)), fact("film", quantity.Micrometre.N(0)))
		case most.Findings.Has(coverage.RuleUsedDoubt):
			add(RuleLogFilmLittle, finding.Ask, fact("litres", k.Litres), fact("area", toldArea(k.Area)), fact("film", most.Coat.High.To(quantity.Micrometre, 0, quantity.Up)))
		case !swallowed.High.Given():
			byLitres = most.Coat
		default:
			if least, err := k.used(b, boat, swallowed.High); err != nil { // it may all have gone into the profile
				add(RuleLogFilmLittle, finding.Ask, fact("litres", k.Litres), fact("area", toldArea(k.Area)), fact("film", most.Coat.High.To(quantity.Micrometre, 0, quantity.Up)))
			} else if typical, err := k.used(b, boat, swallowed.Typical); err == nil {
				byLitres = quantity.Range[quantity.Film]{Low: least.Coat.Low, Typical: typical.Coat.Typical, High: most.Coat.High}
			}
		}
	}
	thinner := k.Thinner
	if !thinner.Given() {
		thinner = boat.Paint.Thinner
	}
	// No readings are refused: then the comb tells nothing.
	if w, err := coverage.Comb(b, coverage.WetCoat{Paint: k.Paint.Name, Teeth: k.Wet, Solids: k.Paint.Solids, Thinner: thinner, Asked: asked}); err == nil {
		byComb = w.Mean
	}
	v := func(f quantity.Range[quantity.Film]) finding.Verdict {
		if f.High.Cmp(asked) < 0 || f.Low.Cmp(asked) > 0 {
			return finding.Caution
		}
		return finding.Fine
	}
	switch {
	case byLitres.Low.Given() && byComb.Low.Given():
		k.By = "litres and comb"
		both := facts(fact("litres", microns(byLitres)), fact("comb", microns(byComb)))
		if film, ok := overlap(byLitres, byComb); ok {
			k.Film = film
			add(RuleLogByBoth, v(film), both...)
		} else {
			k.Film = span(byLitres, byComb)
			add(RuleLogFilmDiffers, finding.Ask, both...)
		}
	case byLitres.Low.Given():
		k.By, k.Film = "litres", byLitres
		add(RuleLogByLitres, v(byLitres))
	case byComb.Low.Given():
		k.By, k.Film = "comb", byComb
		add(RuleLogByComb, v(byComb))
	case !k.Findings.Has(RuleLogFilmLittle):
		add(RuleLogNoFilm, finding.Ask)
	}
}

// used is the film that the litres make without so much of them.
func (k *LoggedCoat) used(b *tables.Book, boat Boat, without quantity.Volume) (coverage.UsedFilm, error) {
	litres := k.Litres
	if without.Given() {
		litres = litres.Sub(without)
	}
	return coverage.Used(b, coverage.Spent{Litres: litres, Area: k.Area, Coats: 1, Coating: k.Paint, Method: boat.Paint})
}

// swallowed is what the blast profile swallows of the coat, where it is the first on a part that the log has blasted, and the plan has reckoned with it; of
// a piece of the part its share of the area, areas and share to four places and rounded up.
func (j *Job) swallowed(l joblog.Log, k LoggedCoat) quantity.Range[quantity.Volume] {
	var none quantity.Range[quantity.Volume]
	s, ok := j.Scheme(k.Part)
	blasted := slices.ContainsFunc(l.Tasks, func(t joblog.Task) bool {
		return t.Part == k.Part && t.Do == finding.Blast && joblog.Meet(t.Zones, k.on) && !t.Begun.After(k.Begun)
	})
	first := !slices.ContainsFunc(l.Coats, func(o joblog.Coat) bool {
		return o.Part == k.Part && o.Begun.Before(k.Begun) && joblog.Meet(o.Zones, k.on)
	})
	if !ok || !blasted || !first || len(s.Coats) == 0 || !s.Coats[0].Fills.Low.Given() || s.Coats[0].Layer.Coating.Key != k.Coating {
		return none
	}
	whole := s.Coats[0].Area.Typical
	share, err := quantity.Quotient(k.Area.Typical.In(quantity.SquareMetre, 4, quantity.Up), whole.In(quantity.SquareMetre, 4, quantity.Up), 4, quantity.Up)
	if err != nil {
		return none
	}
	f := s.Coats[0].Fills
	return quantity.Range[quantity.Volume]{Low: f.Low.Scale(share), Typical: f.Typical.Scale(share), High: f.High.Scale(share)}
}

// toldArea is an area to 0.1 m2, as it is told.
func toldArea(r quantity.Range[quantity.Area]) quantity.Range[quantity.Area] {
	m2 := func(a quantity.Area) quantity.Area { return a.To(quantity.SquareMetre, 1, quantity.Nearest) }
	return quantity.Range[quantity.Area]{Low: m2(r.Low), Typical: m2(r.Typical), High: m2(r.High)}
}

// overlap is what both ranges allow, with the middle of their typical values, held inside it; false where they have nothing in common.
func overlap(a, b quantity.Range[quantity.Film]) (quantity.Range[quantity.Film], bool) {
	out := quantity.Range[quantity.Film]{Low: larger(a.Low, b.Low), High: smaller(a.High, b.High)}
	if out.Low.Cmp(out.High) > 0 {
		return out, false
	}
	out.Typical = smaller(larger(half(a.Typical, b.Typical), out.Low), out.High)
	return out, true
}

// span is all that either range allows.
func span(a, b quantity.Range[quantity.Film]) quantity.Range[quantity.Film] {
	return quantity.Range[quantity.Film]{Low: smaller(a.Low, b.Low), Typical: half(a.Typical, b.Typical), High: larger(a.High, b.High)}
}

func half(a, b quantity.Film) quantity.Film { return a.Add(b).Scale(decimal.New(5, -1)) }

func larger(a, b quantity.Film) quantity.Film {
	if a.Cmp(b) < 0 {
		return b
	}
	return a
}

func smaller(a, b quantity.Film) quantity.Film {
	if a.Cmp(b) > 0 {
		return b
	}
	return a
}

// loggedAs are the rules of an hour as they are told afterwards.
var loggedAs = map[finding.ID]finding.ID{
	weather.RuleCold: RuleLogCold, weather.RuleHot: RuleLogHot, weather.RuleDew: RuleLogDew, weather.RuleHumid: RuleLogHumid, weather.RuleRain: RuleLogRain,
	weather.RuleMeasure: RuleLogAirUnknown,
}

// airOf holds what was noted of air and surface against the limits of the coating, by weather.Judge. A humidity that was not noted follows from
// the dew point. Rain that nobody noted is taken as none: whoever rolls in the rain knows it.
func airOf(b *tables.Book, k LoggedCoat) finding.List {
	a := k.Air
	h := weather.Hour{AirC: a.Air.Float(quantity.Celsius), SurfaceC: a.Surface.Float(quantity.Celsius), HumidityPct: a.Humidity.Float(quantity.Percent)}
	if !a.Humidity.Given() && a.DewPoint.Given() && a.Air.Given() {
		if pct, err := weather.Humidity(b, h.AirC, a.DewPoint.Float(quantity.Celsius)); err == nil {
			h.HumidityPct = pct
		}
	}
	if a.Rain.True() {
		h.RainMM = 1
	}
	var out finding.List
	for _, f := range weather.Judge(b, k.Paint, h) {
		rule, ok := loggedAs[f.Rule]
		if !ok {
			rule = RuleLogAirFine
		}
		if f.Verdict == finding.Forbidden {
			f.Verdict = finding.Caution // it is done: what is left is to look at it
		}
		f.Rule = rule
		out = append(out, f)
	}
	return out
}
