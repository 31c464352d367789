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
		coat: c, covered: covered, humid: Unknown(), spread: Unknown(),
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

// reason is what one mark says.
type reason struct {
	when mark
	rule finding.ID
	say  func(l *limits, m *moment) ([]finding.Fact, []finding.Basis)
}

// reasons are in the order in which they are given: surface, moisture, rain, wind, warming.
var reasons = []reason{
	{noSurface, RuleMeasure, measure("the temperature of the surface, on its coldest part")},
	{tooCold, RuleCold, tooFar},
	{nearCold, RuleNearCold, tooFar},
	{tooHot, RuleHot, tooFarUp},
	{nearHot, RuleNearHot, tooFarUp},
	{noMoisture, RuleMeasure, measure("temperature and humidity of the air")}, // or a book that has no limits to hold them against
	{tooHumid, RuleHumid, func(l *limits, m *moment) ([]finding.Fact, []finding.Basis) {
		return []finding.Fact{percent("humidity", m.humidity), percent("limit", l.humid)}, []finding.Basis{l.humidBasis}
	}},
	{tooDewy, RuleDew, tooNearDew},
	{nearDew, RuleNearDew, tooNearDew},
	{noRain, RuleMeasure, measure("whether it rains on the place of work")},
	{rains, RuleRain, func(*limits, *moment) ([]finding.Fact, []finding.Basis) {
		return nil, []finding.Basis{{Kind: finding.CommonPractice}}
	}},
	{noWind, RuleMeasure, measure("the wind at the place of work")},
	{blows, RuleWind, func(l *limits, m *moment) ([]finding.Fact, []finding.Basis) {
		by := l.coat.By
		return []finding.Fact{speed("wind", m.wind), {Name: "limit", Value: by.WindMax}, {Name: "by", Value: by.Name}}, []finding.Basis{by.Basis("wind_max")}
	}},
	{noRise, RuleMeasure, measure("whether the surface grows warmer")},
	{warms, RuleWarming, func(l *limits, m *moment) ([]finding.Fact, []finding.Basis) {
		return []finding.Fact{{Name: "rise", Value: m.rise}}, l.surface(m.coldest, finding.Basis{Kind: finding.CommonPractice})
	}},
}

func measure(what string) func(*limits, *moment) ([]finding.Fact, []finding.Basis) {
	return func(*limits, *moment) ([]finding.Fact, []finding.Basis) {
		return []finding.Fact{{Name: "what", Value: what}}, []finding.Basis{{Kind: finding.Derived}}
	}
}

func tooFar(l *limits, m *moment) ([]finding.Fact, []finding.Basis) {
	c := l.coat.Coating
	return []finding.Fact{surface(m.coldest), {Name: "limit", Value: c.ApplyMin}}, l.surface(m.coldest, c.Basis("apply_min"))
}

func tooFarUp(l *limits, m *moment) ([]finding.Fact, []finding.Basis) {
	c := l.coat.Coating
	return []finding.Fact{surface(m.warmest), {Name: "limit", Value: c.ApplyMax}}, l.surface(m.warmest, c.Basis("apply_max"))
}

func tooNearDew(l *limits, m *moment) ([]finding.Fact, []finding.Basis) {
	return []finding.Fact{surface(m.coldest), degrees("dew", m.dew), degrees("least", m.dew+l.spread)}, l.surface(m.coldest, l.spreadBasis)
}

// findings gives every reason against the coat, or the one that there is none.
func (l *limits) findings(m *moment) finding.List {
	marks, name := l.marks(m), l.coat.Coating.Name
	if marks == 0 {
		return finding.List{{Rule: RuleMayPaint, Verdict: finding.Fine, About: name, Basis: []finding.Basis{{Kind: finding.Derived}}}}
	}
	var out finding.List
	for _, r := range reasons {
		if marks&r.when != 0 {
			facts, basis := r.say(l, m)
			out = append(out, finding.Finding{Rule: r.rule, Verdict: r.when.verdict(), About: name, Facts: facts, Basis: basis})
		}
	}
	return out
}

// surface is what a judgement of the surface rests on: the limit, and the estimate where it was not measured.
func (l *limits) surface(s span, limit finding.Basis) []finding.Basis {
	if s.low == s.high {
		return []finding.Basis{limit}
	}
	return append([]finding.Basis{limit}, l.estimate...)
}
