package antifoul

import (
	"math"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// lasting asks whether the type lasts the wished months.
//
// A film that wears: value = 1 up to two coats, then falling evenly to 0.4 at the type's most coats; 0.3 where only the high end
// of the wear asks for more than that; more at the typical wear bars. A film
// that stays: value = typical life / wished months, at most 1; a life whose high end is shorter bars. No coating has nothing to
// end: 1.
func lasting(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	wished := months(q.months)
	switch {
	case c.Role == tables.Bare:
		return Criterion{Value: 1, Boat: wished, Type: noLimit, Judged: true}
	case c.Wears():
		n := wear.Coats(q.b, *c, q.boat.Use, q.months)
		facts := []finding.Fact{fact("wished", wished), fact("coats", n.High), fact("most", c.Most)}
		switch {
		case n.Typical > c.Most:
			facts[1].Value = n.Typical
			return answer(0, wished, coatCount(n.Typical), RuleTooManyCoats, c, "wear_use", facts...).bar()
		case n.High > c.Most:
			return answer(0.3, wished, coatCount(n.High), RuleCoatsAtHigh, c, "wear_use", facts...)
		}
		value := 1.0
		if n.High > 2 {
			value = 1 - 0.6*float64(n.High-2)/math.Max(1, float64(c.Most-2))
		}
		return answer(value, wished, coatCount(n.High), RuleLastsCoats, c, "wear_use", facts...)
	default:
		life := wear.Life(q.b, *c, q.boat.Use, c.Coats)
		typ := c.Life
		if life.High < q.months {
			return answer(0, wished, typ, RuleTooShort, c, "life", fact("wished", wished), fact("life", typ)).bar()
		}
		return answer(life.Typical/q.months, wished, typ, RuleLasts, c, "life", fact("wished", wished), fact("life", typ))
	}
}

// months is a number of calendar months as a quantity, whole months.
func months(m float64) quantity.Months { return quantity.Month.N(int64(math.Round(m))) }

// growth asks whether the type holds off the fouling pressure.
//
//	value = 1 above the pressure, 0.75 at it, 0.2 one grade below; two below bars
//
// No coating bars on a boat that lies afloat, but for parts that the trade leaves bare (propellers): 0.3.
func growth(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	p := q.boat.Use.Pressure()
	if c.Role == tables.Bare && q.material.KeepsClean {
		return answer(1, nil, c.Growth, RuleBareSelf, c, "growth", fact("material", q.material.Name))
	}
	if c.Role == tables.Bare && q.boat.Use.Afloat() && !q.bareUsual {
		return bareAfloat(q, c, p)
	}
	if p == 0 {
		return neutral(c.Growth)
	}
	facts := []finding.Fact{fact("pressure", p), fact("holds", c.Growth)}
	switch d := int(c.Growth) - int(p); {
	case p == tables.None:
		return answer(1, p, c.Growth, RuleNoGrowth, c, "growth")
	case c.Role == tables.Bare:
		return answer(0.3, p, c.Growth, RuleBareUsual, c, "growth", facts...)
	case d <= -2:
		return answer(0, p, c.Growth, RuleGrowthOver, c, "growth", facts...).bar()
	case d == -1:
		return answer(0.2, p, c.Growth, RuleGrowthOver, c, "growth", facts...)
	case d == 0:
		return answer(0.75, p, c.Growth, RuleGrowthHeld, c, "growth", facts...)
	default:
		return answer(1, p, c.Growth, RuleGrowthHeld, c, "growth", facts...)
	}
}

// bareAfloat bars "no coating" for a boat that lies afloat, whatever is known of the growth; a metal that wants its barrier has
// that reason beside it.
func bareAfloat(q *question, c *tables.Coating, p tables.Grade) Criterion {
	if q.material.Barrier == tables.OverBarrier {
		return answer(0, p, c.Growth, RuleBareMetal, c, "growth", fact("material", q.material.Name)).bar()
	}
	if p == 0 {
		return answer(0, nil, c.Growth, RuleBareAfloat, c, "growth").bar()
	}
	return answer(0, p, c.Growth, RuleBareGrowth, c, "growth", fact("pressure", p)).bar()
}

// restraint asks for no stronger type than the pressure calls for: value = 1 − surplus grades / 3. Types without biocide are
// never in surplus. On a boat that lives out of the water a surplus of two grades, or a film that
// wears away, bars: the biocide has nothing to do.
func restraint(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	p := q.boat.Use.Pressure()
	if p == 0 || c.Biocide == tables.NoBiocide {
		return Criterion{Value: 1, Type: c.Growth, Judged: p != 0}
	}
	surplus := max(0, int(c.Growth)-int(p))
	if p == tables.None && (surplus >= 2 || c.Wears()) {
		return answer(0, p, c.Growth, RuleNoNeed, c, "growth").bar()
	}
	k := answer(1-float64(surplus)/3, p, c.Growth, RuleSurplus, c, "growth", fact("pressure", p), fact("holds", c.Growth))
	if surplus == 0 {
		k.Finding = Criterion{}.Finding
	}
	return k
}

// idle asks whether the type stands the longest lie without moving: value = its longest / the boat's, at most 1; beyond the
// factor idle-bar times its longest it bars.
func idle(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	u := q.boat.Use
	if !c.IdleMax.Given() || c.Role == tables.Bare {
		return Criterion{Value: 1, Boat: given(u.LongestIdle), Type: noLimit, Judged: u.LongestIdle.Given()}
	}
	if !u.Afloat() {
		return Criterion{Value: 1, Type: c.IdleMax, Judged: true}
	}
	if !u.LongestIdle.Given() {
		return neutral(c.IdleMax)
	}
	facts := []finding.Fact{fact("idle", u.LongestIdle), fact("limit", c.IdleMax)}
	ratio := 1.0
	if d := days(u.LongestIdle); d > 0 {
		ratio = days(c.IdleMax) / d
	}
	if ratio >= 1 {
		return answer(1, u.LongestIdle, c.IdleMax, RuleIdleFits, c, "idle_max", facts...)
	}
	k := answer(ratio, u.LongestIdle, c.IdleMax, RuleIdleOver, c, "idle_max", facts...)
	if ratio < 1/q.idleBar {
		return k.bar()
	}
	return k
}

// air asks the two clocks of a film in the air: ashore and relaunched unpainted, and a launch whose date is open.
//
//	value = 1 within the limits, 0.5 between scuffing and recoating; beyond recoating it bars
//	an open launch: a type that may stand dry for less than the factor open-launch-days gets 0.2, for less than a week it bars
func air(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	u := q.boat.Use
	limit := given(c.AirUsed)
	if limit == nil {
		limit = noLimit
	}
	k := Criterion{Value: 1, Boat: given(u.AshoreEachYear), Type: limit, Judged: u.AshoreEachYear.Given() || q.boat.Work.LaunchOpen.Said()}
	if u.AshoreEachYear.Given() && c.AirUsed.Given() {
		ashore := u.AshoreEachYear.Float(quantity.Month) * 365.25 / 12
		facts := []finding.Fact{fact("ashore", u.AshoreEachYear), fact("limit", c.AirUsed)}
		scuff := c.AirScuff
		if !scuff.Given() {
			scuff = c.AirUsed
		}
		switch {
		case ashore <= days(scuff):
		case u.RelaunchedUnpainted == quantity.NotSaid:
			k = answer(0.6, given(u.AshoreEachYear), c.AirUsed, RuleAirUnsaid, c, "air_used", facts...)
		case u.RelaunchedUnpainted == quantity.No:
		case ashore <= days(c.AirUsed):
			k = answer(0.5, given(u.AshoreEachYear), c.AirUsed, RuleAirOver, c, "air_used", facts...)
		default:
			return answer(0, given(u.AshoreEachYear), c.AirUsed, RuleAirOver, c, "air_used", facts...).bar()
		}
	}
	if q.boat.Work.LaunchOpen.True() && c.AirNew.Given() {
		facts := []finding.Fact{fact("limit", c.AirNew)}
		switch d := days(c.AirNew); {
		case d < 7:
			return answer(0, "open", c.AirNew, RuleAirOpen, c, "air_new", facts...).bar()
		case d < q.openAir:
			k = answer(min(k.Value, 0.2), "open", c.AirNew, RuleAirOpen, c, "air_new", facts...)
		default:
			if k.Value == 1 {
				k = answer(1, "open", c.AirNew, RuleAirFits, c, "air_new", facts...)
			}
		}
	}
	return k
}

// given is an amount as a criterion shows it, nil when it is not given.
func given[D quantity.Dim](a quantity.Amount[D]) any {
	if !a.Given() {
		return nil
	}
	return a
}
