package antifoul

import (
	"math"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// lasting asks whether the type lasts the wished months.
//
// A film that wears: value = 1 up to two coats, then falling evenly to 0.4 at the type's most coats; 0.3 where only the high end
// of the wear asks for more than that; more at the typical wear bars. A film
// that stays: value = typical life / wished months afloat, at most 1; a life whose high end is shorter bars. No coating has nothing to
// end: 1.
func lasting(q *question, c *asked) worth {
	switch {
	case c.Role == tables.Bare:
		return c.score(1, true, func() shown { return shown{boat: q.wished, typ: noLimit} })
	case c.Wears():
		n := q.wear.Coats(c.Coating, q.months)
		show := func(coats int) shown {
			return shown{q.wished, coatCount(coats), facts(fact("wished", q.wished), fact("coats", coats), fact("most", c.Most))}
		}
		high := func() shown { return show(n.High) }
		switch {
		case n.Typical > c.Most:
			return c.bars(RuleTooManyCoats, "wear_use", func() shown { return show(n.Typical) })
		case n.High > c.Most:
			return c.answer(0.3, RuleCoatsAtHigh, "wear_use", high)
		}
		return c.answer(coatsValue(n.High, c.Most), RuleLastsCoats, "wear_use", high)
	default:
		month := func(m quantity.Months) float64 { return m.Float(quantity.Month) }
		afloat := q.boat.Use.AfloatMonths(q.months) // the row's life counts months afloat
		show := func() shown {
			return shown{q.wished, c.Life, facts(fact("wished", q.wished), fact("life", c.Life))}
		}
		if month(c.Life.High) < afloat {
			return c.bars(RuleTooShort, "life", show)
		}
		return c.answer(lifeValue(month(c.Life.Typical), afloat), RuleLasts, "life", show)
	}
}

// lifeValue is what so many months of life are worth to a boat that is afloat for so many: their share, at most 1.
func lifeValue(life, afloat float64) float64 {
	if afloat <= 0 {
		return 1
	}
	return clamp(life / afloat)
}

// coatsValue is what so many coats are worth: 1 up to two, then falling evenly to 0.4 at the most.
func coatsValue(n, most int) float64 {
	return 1 - 0.6*float64(max(0, n-2))/float64(max(1, most-2))
}

// months is a number of calendar months as a quantity, whole months.
func months(m float64) quantity.Months { return quantity.Month.N(int64(math.Round(m))) }

// growth asks whether the type holds off the fouling pressure. Where own past results at her berth say that it did for the months
// wished, they are the answer: 1.
//
//	value = 1 above the pressure, 0.75 at it, where less biocide is wished 1 too; 0.2 one grade below; two below bars
//	pressure not given: 0.5, and 0.35 for a type that holds less than medium growth
//
// No coating bars on a boat that lies afloat, but for parts that the trade leaves bare (propellers): 0.3; and for one that is kept clean by wiping,
// on a material that needs no barrier: 0.5 in light growth, 0.2 in medium growth.
func growth(q *question, c *asked) worth {
	p := q.boat.Use.Pressure()
	if q.past[c.Key].held {
		return c.score(1, true, func() shown { return shown{boat: "seen at her berth", typ: c.Growth} })
	}
	if c.Role == tables.Bare && q.material.KeepsClean {
		return c.answer(1, RuleBareSelf, "growth", func() shown { return shown{nil, c.Growth, facts(fact("material", q.material.Name))} })
	}
	if c.Role == tables.Bare && q.boat.Use.Afloat() && !q.bareUsual && !q.wipedClean(c) {
		return bareAfloat(q, c, p)
	}
	if p == 0 { // not known: a little better what would hold medium growth
		value := 0.5
		if c.Growth < tables.Medium && q.boat.Use.Afloat() {
			value = 0.35
		}
		return c.score(value, false, func() shown { return shown{typ: c.Growth} })
	}
	show := func() shown { return shown{p, c.Growth, facts(fact("pressure", p), fact("holds", c.Growth))} }
	over := RuleGrowthOver
	if c.Growth == tables.None {
		over = RuleBareGrowth
	}
	switch d := int(c.Growth) - int(p); {
	case p == tables.None:
		return c.answer(1, RuleNoGrowth, "growth", func() shown { return shown{boat: p, typ: c.Growth} })
	case c.Role == tables.Bare && !q.bareUsual && p == tables.Light:
		return c.answer(0.5, RuleBareWiped, "growth", show)
	case c.Role == tables.Bare && !q.bareUsual:
		return c.answer(0.2, RuleBareWiped, "growth", show)
	case c.Role == tables.Bare:
		return c.answer(0.3, RuleBareUsual, "growth", show)
	case d <= -2:
		return c.bars(over, "growth", show)
	case d == -1:
		return c.answer(0.2, over, "growth", show)
	case d == 0 && q.boat.Wishes.Biocide == "":
		return c.answer(0.75, RuleGrowthHeld, "growth", show)
	default:
		return c.answer(1, RuleGrowthHeld, "growth", show)
	}
}

// wipedClean reports whether she is cleaned so often that a bare bottom stays clean: in light growth with anything, in fresh water or every two
// weeks; in medium growth with a brush or harder, as often as the row of no coating asks.
// Basis: common practice; the two weeks are an assumption.
func (q *question) wipedClean(bare *asked) bool {
	u := &q.boat.Use
	within := func(d quantity.Duration) bool { return u.CleanedEvery.Given() && u.CleanedEvery.Cmp(d) <= 0 }
	if q.material.Barrier == tables.OverBarrier {
		return false
	}
	switch u.Pressure() {
	case tables.Light:
		return u.Cleaning > tables.None && (u.Water == "fresh" || within(quantity.Day.N(14)))
	case tables.Medium:
		return u.Cleaning >= tables.Medium && bare.CleanEvery.Given() && within(bare.CleanEvery)
	default:
		return false
	}
}

// bareAfloat bars "no coating" for a boat that lies afloat, whatever is known of the growth; a metal that wants its barrier has
// that reason beside it.
func bareAfloat(q *question, c *asked, p tables.Grade) worth {
	if q.material.Barrier == tables.OverBarrier {
		return c.bars(RuleBareMetal, "growth", func() shown { return shown{p, c.Growth, facts(fact("material", q.material.Name))} })
	}
	if p == 0 {
		return c.bars(RuleBareAfloat, "growth", func() shown { return shown{typ: c.Growth} })
	}
	return c.bars(RuleBareGrowth, "growth", func() shown { return shown{p, c.Growth, facts(fact("pressure", p))} })
}

// restraint asks for no stronger type than the pressure calls for: value = 1 − surplus grades / 3. Types without biocide are
// never in surplus. On a boat that lives out of the water a surplus of two grades, or a film that
// wears away, bars: the biocide has nothing to do.
func restraint(q *question, c *asked) worth {
	p := q.boat.Use.Pressure()
	if p == 0 || c.Biocide == tables.NoBiocide {
		return c.score(1, p != 0, func() shown { return shown{typ: c.Growth} })
	}
	surplus := max(0, int(c.Growth)-int(p))
	if p == tables.None && (surplus >= 2 || c.Wears()) {
		return c.bars(RuleNoNeed, "growth", func() shown { return shown{boat: p, typ: c.Growth} })
	}
	if surplus == 0 {
		return c.score(1, true, func() shown { return shown{boat: p, typ: c.Growth} })
	}
	return c.answer(1-float64(surplus)/3, RuleSurplus, "growth", func() shown { return shown{p, c.Growth, facts(fact("pressure", p), fact("holds", c.Growth))} })
}

// idle asks whether the type stands the longest lie without moving: value = its longest / the boat's, at most 1; beyond the
// factor idle-bar times its longest it bars, but for a type without biocide in light growth. Of a type that polishes by moving, fewer hours under way than its row asks leave
// 0.5 + 0.5 × hours / the row's of that. Running gear sheds what it gathers when it turns: it is not asked.
func idle(q *question, c *asked) worth {
	u := &q.boat.Use
	if !c.IdleMax.Given() || c.Role == tables.Bare || q.bareUsual {
		return c.score(1, u.LongestIdle.Given(), func() shown { return shown{boat: given(u.LongestIdle), typ: noLimit} })
	}
	if !u.Afloat() {
		return c.score(1, true, func() shown { return shown{typ: c.IdleMax} })
	}
	if !u.LongestIdle.Given() {
		return c.score(0.5, false, func() shown { return shown{typ: c.IdleMax} })
	}
	ratio := 1.0
	if d := days(u.LongestIdle); d > 0 {
		ratio = days(c.IdleMax) / d
	}
	show := func() shown {
		return shown{u.LongestIdle, c.IdleMax, facts(fact("idle", u.LongestIdle), fact("limit", c.IdleMax))}
	}
	if less, hours := underWay(u, c); ratio >= 1 && less < 1 {
		return c.answer(less, RuleHoursUnder, "hours_min", func() shown {
			return shown{hours, c.HoursMin, facts(fact("hours", hours), fact("limit", c.HoursMin))}
		})
	}
	if ratio >= 1 {
		return c.answer(1, RuleIdleFits, "idle_max", show)
	}
	less, _ := underWay(u, c)
	ratio = float64(ratio * less)
	if ratio < 1/q.idleBar && (u.Pressure() != tables.Light || c.Biocide != tables.NoBiocide) { // little takes hold where little grows
		return c.bars(RuleIdleOver, "idle_max", show)
	}
	return c.answer(ratio, RuleIdleOver, "idle_max", show)
}

// underWay is what too few hours under way a year leave of a type that polishes by moving: 1 for enough, for any other type, and where the boat file
// does not say.
func underWay(u *wear.Use, c *asked) (value float64, hours quantity.Duration) {
	hours = u.UnderWay
	if !c.HoursMin.Given() || !hours.Given() || hours.Cmp(c.HoursMin) >= 0 {
		return 1, hours
	}
	return 0.5 + float64(0.5*hours.Float(quantity.Hour)/c.HoursMin.Float(quantity.Hour)), hours
}

// air asks the two clocks of a film in the air: ashore and relaunched unpainted, and a launch whose date is open.
//
//	value = 1 within the limits, 0.5 between scuffing and recoating; beyond recoating it bars
//	kept on a trailer or a lift: 0.5 for a type that wants scuffing once it stood dry, for she does between her days afloat
//	an open launch: a type that may stand dry for no longer than the factor open-launch-days gets 0.2, for less than a week it bars
func air(q *question, c *asked) worth {
	u := &q.boat.Use
	k := c.score(1, u.AshoreEachYear.Given() || q.boat.Work.LaunchOpen.Said(), func() shown {
		if !c.AirUsed.Given() {
			return shown{boat: given(u.AshoreEachYear), typ: noLimit}
		}
		return shown{boat: given(u.AshoreEachYear), typ: c.AirUsed}
	})
	if !u.Afloat() && c.AirScuff.Given() {
		k = c.answer(0.5, RuleAirBetween, "air_scuff", func() shown { return shown{"out of the water", c.AirScuff, facts(fact("limit", c.AirScuff))} })
	}
	if u.AshoreEachYear.Given() && c.AirUsed.Given() {
		ashore := u.AshoreEachYear.Float(quantity.Month) * 365.25 / 12
		scuff := c.AirScuff
		if !scuff.Given() {
			scuff = c.AirUsed
		}
		show := func() shown {
			return shown{u.AshoreEachYear, c.AirUsed, facts(fact("ashore", u.AshoreEachYear), fact("limit", c.AirUsed))}
		}
		switch {
		case ashore <= days(scuff):
		case u.RelaunchedUnpainted == quantity.NotSaid:
			if k.value == 1 {
				k = c.answer(0.6, RuleAirUnsaid, "air_used", show)
			}
		case u.RelaunchedUnpainted == quantity.No:
		case ashore <= days(c.AirUsed):
			k = c.answer(0.5, RuleAirOver, "air_used", show)
		default:
			return c.bars(RuleAirOver, "air_used", show)
		}
	}
	if q.boat.Work.LaunchOpen.True() && c.AirNew.Given() {
		show := func() shown { return shown{"open", c.AirNew, facts(fact("limit", c.AirNew))} }
		switch d := days(c.AirNew); {
		case d < 7:
			return c.bars(RuleAirOpen, "air_new", show)
		case d <= q.openAir:
			k = c.answer(min(k.value, 0.2), RuleAirOpen, "air_new", show)
		default:
			if k.value == 1 {
				k = c.answer(1, RuleAirFits, "air_new", show)
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
