package weather

import "boatyard.example/bottomwork/tables/finding"

// wetMark is a set of reasons why a fresh film would be wetted in an hour.
type wetMark uint8

const (
	wetRain wetMark = 1 << iota
	wetDew
	nearWet
	noDryness // surface or moisture unknown
	noDryRain // rain unknown

	wets = wetRain | wetDew
)

func (m wetMark) verdict() finding.Verdict {
	switch {
	case m&wets != 0:
		return finding.Forbidden
	case m != 0:
		return finding.Ask
	}
	return finding.Fine
}

func (l *limits) wet(m *moment) wetMark {
	var out wetMark
	switch {
	case l.covered:
	case !known(m.rain):
		out |= noDryRain
	case m.rain > 0:
		out |= wetRain
	}
	switch {
	case !known(m.dew) || !known(m.coldest.low):
		out |= noDryness
	case m.coldest.high <= m.dew:
		out |= wetDew
	case m.coldest.low <= m.dew:
		out |= nearWet
	}
	return out
}

// Rains says whether rain falls on the work in hour i: Forbidden that it does, Ask that nobody knows, Fine that it does not. Under a roof none falls.
//
// Basis: derived.
func (k *Sky) Rains(i int) finding.Verdict { return k.wet(i, wetRain|noDryRain) }

// Condenses says whether water would condense on the surface in hour i: Forbidden that it would, Ask that it may, Fine that it would not. It does
// on a surface that is at the dew point or below.
//
// Basis: derived.
func (k *Sky) Condenses(i int) finding.Verdict { return k.wet(i, wetDew|nearWet|noDryness) }

func (k *Sky) wet(i int, of wetMark) finding.Verdict {
	if !k.has(i) {
		return finding.Ask
	}
	m := k.moment(i)
	return (k.limits.wet(&m) & of).verdict()
}

// Wets says whether water would fall or condense on a fresh film in hour i: the harder of Rains and Condenses.
//
// Basis: derived.
func (k *Sky) Wets(i int) finding.Verdict { return k.wet(i, ^wetMark(0)) }

// WhyWets gives every reason of Wets.
//
// Basis: derived, as Wets.
func (k *Sky) WhyWets(i int) finding.List {
	m := nothing()
	if k.has(i) {
		m = k.moment(i)
	}
	marks := k.limits.wet(&m)
	var out finding.List
	add := func(when wetMark, rule finding.ID, basis []finding.Basis, facts ...finding.Fact) {
		if marks&when != 0 || when == marks {
			out = append(out, finding.Finding{Rule: rule, Verdict: when.verdict(), About: k.limits.coat.Coating.Name, Facts: facts, Basis: basis})
		}
	}
	derived := finding.Basis{Kind: finding.Derived}
	dew := degrees("dew", m.dew)
	add(wetRain, RuleRain, []finding.Basis{{Kind: finding.CommonPractice}})
	add(wetDew, RuleCondenses, k.limits.surface(m.coldest, derived), surface(m.coldest), dew)
	add(nearWet, RuleNearCondenses, k.limits.surface(m.coldest, derived), surface(m.coldest), dew)
	add(noDryness, RuleWetUnknown, []finding.Basis{derived}, finding.Fact{Name: "what", Value: "the temperature of the surface, and temperature and humidity of the air"})
	add(noDryRain, RuleWetUnknown, []finding.Basis{derived}, finding.Fact{Name: "what", Value: "whether it rains on the place of work"})
	add(0, RuleStaysDry, []finding.Basis{derived})
	return out
}
