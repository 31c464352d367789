package weather

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// span is from where to where a temperature lies, in degC: both ends alike where it was measured, both NaN where nobody knows.
type span struct{ low, high float64 }

func exactly(c float64) span { return span{c, c} }

// limits are what a coat is held to, in plain numbers. NaN: it is not held to any.
type limits struct {
	coat          Coat
	covered       bool
	cold, hot     float64 // degC
	humid, spread float64 // %, K; NaN in a book that does not hold them
	wind          float64 // m/s

	humidBasis, spreadBasis finding.Basis
	estimate                []finding.Basis // what an estimated surface rests on
}

func limitsOf(b *tables.Book, c Coat, covered bool) limits {
	l := limits{
		coat: c, covered: covered, humid: Unknown, spread: Unknown,
		cold: c.Coating.ApplyMin.Float(quantity.Celsius), hot: c.Coating.ApplyMax.Float(quantity.Celsius), // NaN where not given
		wind: c.By.WindMax.Float(quantity.MetrePerSecond),
	}
	if v, err := b.Value("iso-12944-7-humidity"); err == nil {
		l.humid, l.humidBasis = v.Value.Typical, v.Basis("value")
	}
	if v, err := b.Value("iso-8502-4-spread"); err == nil {
		l.spread, l.spreadBasis = v.Value.Typical, v.Basis("value")
	}
	return l
}

// moment is the weather at the work in one hour, as it is held against limits. NaN: not known.
type moment struct {
	humidity, dew, rain, wind float64
	coldest                   span    // the surface on the coldest part
	warmest                   span    // the surface on the warmest part
	rise                      float64 // K, by which the surface grows warmer in the hour
}

// mark is a set of reasons against a coat in an hour.
type mark uint16

const (
	tooCold mark = 1 << iota
	tooHot
	tooHumid
	tooDewy
	rains
	blows
	warms
	nearCold
	nearHot
	nearDew
	noSurface
	noMoisture
	noRain
	noWind
	noRise

	forbids = tooCold | tooHot | tooHumid | tooDewy | rains | blows | warms
)

func (m mark) verdict() finding.Verdict {
	switch {
	case m&forbids != 0:
		return finding.Forbidden
	case m != 0:
		return finding.Ask
	}
	return finding.Fine
}

// least is the coldest that the surface may be for a dew point; a thousand-millionth of a degree is noise.
func (l *limits) least(dew float64) float64 { return dew + l.spread - noise }

const noise = 1e-9

// marks holds an hour against the limits. Comparisons with NaN are false: what is not known has a mark of its own.
func (l *limits) marks(m *moment) mark {
	var out mark
	set := func(when bool, which mark) {
		if when {
			out |= which
		}
	}
	set(!known(m.coldest.low), noSurface)
	either(&out, m.coldest.high < l.cold, tooCold, m.coldest.low < l.cold, nearCold)
	either(&out, m.warmest.low > l.hot, tooHot, m.warmest.high > l.hot, nearHot)
	set(!known(m.dew) || !known(l.humid) || !known(l.spread), noMoisture)
	set(m.humidity > l.humid, tooHumid)
	least := l.least(m.dew)
	either(&out, m.coldest.high < least, tooDewy, m.coldest.low < least, nearDew)
	if !l.covered {
		set(!known(m.rain), noRain)
		set(m.rain > 0, rains)
		set(!known(m.wind) && known(l.wind), noWind)
		set(m.wind > l.wind, blows)
	}
	if l.coat.Falling {
		set(!known(m.rise), noRise)
		set(m.rise > noise, warms)
	}
	return out
}

// either marks what is sure, or else what may be.
func either(out *mark, is bool, sure mark, may bool, near mark) {
	switch {
	case is:
		*out |= sure
	case may:
		*out |= near
	}
}

// findings gives every reason in words' order: surface, moisture, rain, wind, warming.
func (l *limits) findings(m *moment) finding.List {
	marks, c := l.marks(m), l.coat.Coating
	if marks == 0 {
		return finding.List{{Rule: RuleMayPaint, Verdict: finding.Fine, About: c.Name, Basis: []finding.Basis{{Kind: finding.Derived}}}}
	}
	var out finding.List
	add := func(when mark, rule finding.ID, basis []finding.Basis, facts ...finding.Fact) {
		if marks&when != 0 {
			out = append(out, finding.Finding{Rule: rule, Verdict: when.verdict(), About: c.Name, Facts: facts, Basis: basis})
		}
	}
	ask := func(when mark, what string) {
		add(when, RuleMeasure, []finding.Basis{{Kind: finding.Derived}}, finding.Fact{Name: "what", Value: what})
	}
	cold, hot := finding.Fact{Name: "limit", Value: c.ApplyMin}, finding.Fact{Name: "limit", Value: c.ApplyMax}
	dew, least := degrees("dew", m.dew), degrees("least", m.dew+l.spread)
	ask(noSurface, "the temperature of the surface, on its coldest part")
	add(tooCold, RuleCold, l.surface(m.coldest, c.Basis("apply_min")), surface(m.coldest), cold)
	add(nearCold, RuleNearCold, l.surface(m.coldest, c.Basis("apply_min")), surface(m.coldest), cold)
	add(tooHot, RuleHot, l.surface(m.warmest, c.Basis("apply_max")), surface(m.warmest), hot)
	add(nearHot, RuleNearHot, l.surface(m.warmest, c.Basis("apply_max")), surface(m.warmest), hot)
	ask(noMoisture, "temperature and humidity of the air") // or a book that has no limits to hold them against
	add(tooHumid, RuleHumid, []finding.Basis{l.humidBasis}, percent("humidity", m.humidity), percent("limit", l.humid))
	add(tooDewy, RuleDew, l.surface(m.coldest, l.spreadBasis), surface(m.coldest), dew, least)
	add(nearDew, RuleNearDew, l.surface(m.coldest, l.spreadBasis), surface(m.coldest), dew, least)
	ask(noRain, "whether it rains on the place of work")
	add(rains, RuleRain, []finding.Basis{{Kind: finding.CommonPractice}})
	ask(noWind, "the wind at the place of work")
	add(blows, RuleWind, []finding.Basis{l.coat.By.Basis("wind_max")}, speed("wind", m.wind), finding.Fact{Name: "limit", Value: l.coat.By.WindMax}, finding.Fact{Name: "by", Value: l.coat.By.Name})
	ask(noRise, "whether the surface grows warmer")
	add(warms, RuleWarming, l.surface(m.coldest, finding.Basis{Kind: finding.CommonPractice}), finding.Fact{Name: "rise", Value: m.rise})
	return out
}

// surface is what a judgement of the surface rests on: the limit, and the estimate where it was not measured.
func (l *limits) surface(s span, limit finding.Basis) []finding.Basis {
	if s.low == s.high {
		return []finding.Basis{limit}
	}
	return append([]finding.Basis{limit}, l.estimate...)
}
