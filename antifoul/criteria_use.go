package antifoul

import (
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// speed asks whether the sustained speed fits: above the type's most it bars, but on a material that takes one carrier only, where it is worth 0;
// from 80 % of it the value falls to 0.5. Below
// the type's least growth is not shed: 0.3 for an owner who wipes at least with a sponge, else it bars.
func speed(q *question, c *asked) worth {
	u := &q.boat.Use
	v := u.Speed
	if !c.SpeedMax.Given() && !c.SpeedMin.Given() {
		return c.score(1, v.Given(), func() shown { return shown{boat: given(v), typ: noLimit} })
	}
	limit := c.SpeedMax
	if !limit.Given() {
		limit = c.SpeedMin
	}
	if !v.Given() {
		return c.score(0.5, false, func() shown { return shown{typ: limit} })
	}
	kn := func(s quantity.Speed) float64 { return s.Float(quantity.Knot) }
	if c.SpeedMin.Given() && kn(v) < kn(c.SpeedMin) {
		under := func() shown { return shown{v, c.SpeedMin, facts(fact("speed", v), fact("limit", c.SpeedMin))} }
		if u.Afloat() && u.Cleaning <= tables.None {
			return c.bars(RuleSpeedUnder, "speed_min", under)
		}
		return c.answer(0.3, RuleSpeedUnder, "speed_min", under)
	}
	show := func() shown { return shown{v, limit, facts(fact("speed", v), fact("limit", limit))} }
	if c.SpeedMax.Given() {
		ratio := kn(v) / kn(c.SpeedMax)
		switch {
		case ratio > 1 && q.material.Carrier != "": // of the few types that it takes none is left out: it is a small face, painted again with the rest
			return c.answer(0, RuleSpeedOver, "speed_max", show)
		case ratio > 1:
			return c.bars(RuleSpeedOver, "speed_max", show)
		case ratio > 0.8:
			return c.answer(1-0.5*(ratio-0.8)/0.2, RuleSpeedFits, "speed_max", show)
		}
		return c.answer(1, RuleSpeedFits, "speed_max", show)
	}
	return c.answer(1, RuleSpeedFits, "speed_min", show)
}

// cleaning asks whether the owner's cleaning fits the film: harder than it stands bars; a type that needs cleaning bars when
// the owner cleans less than half as often as it needs (in fresh water with light growth it gets 0), and gets 0.5 in between; a film that wears gets
// 0.8 where it is wiped at all, 0.6 where it is wiped as hard as it stands; one that she runs fast enough to shed growth
// by itself needs none. Cleaning that is forbidden where she lies
// bars the types it is forbidden for. Where a law leaves it open, half is left to a type that works only if it is cleaned, and to one of a
// kind that the law names; what may be left alone, and is asked no more than any other, loses nothing.
//
// Basis: common practice; the half is an assumption.
func cleaning(q *question, c *asked) worth {
	k := cleaningDone(q, c)
	if k.bars || c.Role == tables.Bare || q.boat.Use.Cleaning <= tables.None || !q.boat.Use.Afloat() {
		return k
	}
	if asked, named := q.desk.CleaningOpen(*c.Coating); named || asked && c.CleanEvery.Given() && !shedsBySpeed(&q.boat.Use, c) {
		return c.answer(k.value/2, RuleCleanOpen, "scrub", func() shown { return shown{q.boat.Use.Cleaning, c.Scrub, nil} })
	}
	return k
}

// cleaningDone is what the cleaning that is done is worth, where it may be done.
func cleaningDone(q *question, c *asked) worth {
	u := &q.boat.Use
	if c.Role == tables.Bare {
		return c.score(1, true, nothing)
	}
	needs := c.CleanEvery.Given() && u.Afloat() && !shedsBySpeed(u, c)
	lacks := func(boat any) shown { return shown{boat, c.CleanEvery, facts(fact("needs", c.CleanEvery))} }
	lacking := func(boat any) worth {
		k := c.bars(RuleCleanLack, "clean_every", func() shown { return lacks(boat) })
		k.bars = u.Pressure() != tables.Light || u.Water != "fresh" // there it is scraped at the docking
		return k
	}
	if u.Cleaning == 0 {
		if needs {
			return lacking(nil)
		}
		return c.score(0.5, false, func() shown { return shown{typ: c.Scrub} })
	}
	if u.Cleaning > c.Scrub {
		return c.bars(RuleCleanHard, "scrub", func() shown {
			return shown{u.Cleaning, c.Scrub, facts(fact("tool", cleaningTool(u.Cleaning)), fact("stands", cleaningTool(c.Scrub)))}
		})
	}
	if q.cleans() && q.desk.ForbidsCleaning(c.Coating) {
		return q.banned(c)
	}
	if needs {
		if !u.CleanedEvery.Given() {
			return lacking(u.Cleaning)
		}
		every := func() shown { return lacks(u.CleanedEvery) }
		switch ratio := days(u.CleanedEvery) / days(c.CleanEvery); {
		case ratio > 2:
			return lacking(u.CleanedEvery)
		case ratio > 1:
			return c.answer(0.5, RuleCleanLack, "clean_every", every)
		}
	}
	if c.Wears() && u.Cleaning > tables.None { // each wiping takes some of it along, most where it is as hard as the film stands
		value := 0.8
		if u.Cleaning == c.Scrub {
			value = 0.6
		}
		return c.answer(value, RuleCleanWears, "scrub", func() shown { return shown{u.Cleaning, c.Scrub, nil} })
	}
	return c.answer(1, RuleCleanFits, "scrub", func() shown { return shown{u.Cleaning, c.Scrub, facts(fact("stands", cleaningTool(c.Scrub)))} })
}

// banned tells of the law that forbids cleaning the type where she lies.
func (q *question) banned(c *asked) worth {
	if !c.told {
		return c.bars(RuleCleanBanned, "scrub", nothing)
	}
	law := q.desk.Cleaning(*c.Coating).At(finding.Forbidden)[0]
	k := c.bars(RuleCleanBanned, "scrub", func() shown { return shown{q.boat.Use.Cleaning, c.Scrub, facts(fact("place", law.Against))} })
	k.told.Finding.Basis = law.Basis
	return k
}

// shedsBySpeed reports whether she keeps up the speed at which the type sheds growth by itself, so that it needs no cleaning.
func shedsBySpeed(u *wear.Use, c *asked) bool {
	return c.SpeedMin.Given() && u.Speed.Given() && u.Speed.Cmp(c.SpeedMin) >= 0
}

// cleaningTool is a cleaning grade in a painter's words.
func cleaningTool(g tables.Grade) string {
	switch g {
	case tables.Light:
		return "a soft sponge"
	case tables.Medium:
		return "a brush"
	case tables.Heavy:
		return "hard scrubbing"
	default:
		return "no cleaning"
	}
}

// abrasion asks whether the film stands grounding, bunks, slings and ice: value = 1 − 0.3 × the
// grades that it falls short, for semi-hard films are sold for firm drying moorings; two grades short, or any abrasion on a film that stands
// none, bars.
// Basis: common practice; the 0.3 is an assumption.
func abrasion(q *question, c *asked) worth {
	u := &q.boat.Use
	need := u.Abrasion()
	if u.Kept == "" && u.DriesOn == "" && !u.Ice.True() {
		return c.score(0.5, false, func() shown { return shown{typ: c.Abrasion} })
	}
	show := func() shown { return shown{need, c.Abrasion, facts(fact("need", need), fact("stands", c.Abrasion))} }
	switch {
	case c.Role == tables.Bare || need == tables.None: // nothing to say of
		return c.score(1, true, func() shown { return shown{boat: need, typ: c.Abrasion} })
	case need <= c.Abrasion:
		return c.answer(1, RuleAbrasionFits, "abrasion", show)
	case c.Abrasion == tables.None:
		return c.bars(RuleAbrasionNone, "abrasion", show)
	}
	deficit := int(need) - int(c.Abrasion)
	if deficit >= 2 {
		return c.bars(RuleAbrasionOver, "abrasion", show)
	}
	return c.answer(1-float64(deficit)*0.3, RuleAbrasionOver, "abrasion", show)
}

// stays asks what a spent film that stays behind is worth. A hard film is not used up: coat by coat it builds up, until it is stripped. It is worth that on
// a boat that is brushed, is fast, takes firm ground or races: 1; else 0.2. Of a semi-hard film part stays: 0.5. Other types build up
// nothing: 0.7. But nothing other than its like goes over a traditional soft film: to change from it later all of it comes off. 0.4, except on
// planks that work, which are kept with it, and over a soft film.
//
// Fast is above the factor hard-film-speed.
// Basis: common practice.
func stays(q *question, c *asked) worth {
	u := &q.boat.Use
	switch {
	case c.Mechanism == tables.Hybrid:
		return c.score(0.5, true, nothing)
	case c.Mechanism == tables.Soft && !q.material.Breathes && (q.old == nil || q.old.Mechanism != tables.Soft):
		return c.answer(0.4, RuleSoftBinds, "mechanism", func() shown { return shown{typ: string(c.Mechanism)} })
	case c.Mechanism != tables.Hard:
		return c.score(0.7, true, nothing)
	case u.Cleaning >= tables.Medium || u.Abrasion() >= tables.Medium || q.boat.Wishes.Racing.True() || u.Speed.Given() && u.Speed.Float(quantity.Knot) > q.hardSpeed:
		return c.answer(1, RuleStaysWorth, "mechanism", func() shown { return shown{typ: string(c.Mechanism)} })
	}
	return c.answer(0.2, RuleStaysBehind, "mechanism", func() shown { return shown{typ: string(c.Mechanism)} })
}

// water asks whether the type is meant for the water she lies in.
func water(q *question, c *asked) worth {
	w := q.boat.Use.Water
	switch {
	case w == "":
		return c.score(0.5, false, nothing)
	case c.Suits(w):
		return c.score(1, true, func() shown { return shown{boat: w} })
	}
	return c.bars(RuleWaterWrong, "waters", func() shown { return shown{boat: w, facts: facts(fact("water", w))} })
}

// metal asks whether the biocide is one that the material prefers, where it prefers any: 1 if so, else 0.3. A type that is made
// for other materials bars, and one that does not give on a material that flexes. Copper that a metal takes over a whole barrier only is worth nothing where
// ground or ice opens pores in it: 0.
func metal(q *question, c *asked) worth {
	m := &q.material
	material := func() shown { return shown{boat: m.Name, facts: facts(fact("material", m.Name))} }
	class := func() shown { return shown{m.Name, string(c.Biocide), facts(fact("material", m.Name))} }
	switch {
	case m.KeepsClean && c.Role != tables.Bare:
		return c.bars(RulePaintDefeats, "film", material)
	case m.Flexes && rigid(c.Mechanism):
		return c.bars(RuleMaterialFlexes, "mechanism", material)
	case m.Metal && m.Takes(c.Biocide) == tables.OverBarrier && q.boat.Use.Abrasion() >= tables.Heavy:
		return c.answer(0, RuleBarrierGround, "mechanism", class)
	case !c.MadeFor(q.part.Material):
		return c.bars(RuleMaterialOther, "materials", material)
	case m.Prefers(c.Biocide):
		if !m.Choosy() {
			return c.score(1, true, nothing)
		}
		return c.answer(1, RulePreferred, "active", class)
	}
	return c.answer(0.3, RuleNotPreferred, "active", class)
}

// rigid reports whether a film of the mechanism does not give.
func rigid(m tables.Mechanism) bool {
	return m == tables.Hard || m == tables.ThinFilm || m == tables.Inert || m == tables.CopperLoaded
}

// work asks how much work the way to the type is: value = 1 − typical hours a square metre / the factor work-hours-full. A type that goes on
// well only by trained hands is worth half of that where the owner does the work.
func work(q *question, c *asked) worth {
	h := c.way.effort.Typical
	value := q.workValue(c.Coating, h)
	show := func() shown { return shown{typ: perSquareMetre(h)} }
	switch {
	case q.untrained(c.Coating):
		return c.answer(value, RuleSkilled, "skilled", func() shown { return shown{"the owner", "trained hands", nil} })
	case h >= 0.1:
		return c.answer(value, RuleWork, "mechanism", func() shown { return shown{typ: perSquareMetre(h), facts: facts(fact("hours", perSquareMetre(h)))} })
	case c.Role == tables.Bare:
		return c.score(value, true, show)
	}
	return c.answer(value, RuleWorkLittle, "mechanism", show)
}

// workValue is what hours of one hand a square metre are worth, and who does them.
func (q *question) workValue(c *tables.Coating, hours float64) float64 {
	value := clamp(1 - hours/q.workBar)
	if q.untrained(c) {
		value *= 0.5
	}
	return value
}

// untrained reports whether the owner does the work of a type that trained hands should.
func (q *question) untrained(c *tables.Coating) bool {
	return c.Skilled && q.boat.Work.DoneBy == tables.ByOwner
}

// biocide asks what the owner wishes. For less biocide: none 1, copper-free 0.7, thiocyanate and other copper 0.4, cuprous oxide
// and metallic copper 0.1. The wish for none bars every type that holds one.
func biocide(q *question, c *asked) worth {
	wish := q.boat.Wishes.Biocide
	show := func() shown { return shown{wish, string(c.Biocide), facts(fact("biocide", string(c.Biocide)))} }
	switch {
	case wish == "":
		return c.score(0.5, false, func() shown { return shown{typ: string(c.Biocide)} })
	case wish == WishNone && c.Biocide != tables.NoBiocide:
		return c.bars(RuleNoBiocide, "active", show)
	}
	value := 0.1
	switch c.Biocide {
	case tables.NoBiocide:
		value = 1
	case tables.CopperFree:
		value = 0.7
	case tables.CopperThiocyanate, tables.OtherCopper:
		value = 0.4
	default:
	}
	return c.answer(value, RuleLessBiocide, "active", show)
}

// colour bars a type that cannot be had in the wished top colour.
func colour(q *question, c *asked) worth {
	if q.top == nil || c.Role == tables.Bare {
		return c.score(0.5, false, nothing)
	}
	if !available(*c.Coating, *q.top) {
		return c.bars(RuleColourWrong, "bright", func() shown { return shown{boat: q.top.Name, facts: facts(fact("colour", q.top.Name))} })
	}
	return c.score(1, true, func() shown { return shown{boat: q.top.Name} })
}

// racing asks for a film that can be burnished when the owner wants a racing finish.
func racing(q *question, c *asked) worth {
	if !q.boat.Wishes.Racing.True() {
		return c.score(0.5, q.boat.Wishes.Racing.Said(), nothing)
	}
	show := func() shown { return shown{boat: "racing finish"} }
	if c.Burnish {
		return c.answer(1, RuleRacingFits, "burnish", show)
	}
	return c.answer(0.1, RuleRacingWrong, "burnish", show)
}

// same favours what is on the bottom already: the same coating 1, but 0.5 where less biocide is wished and it holds copper, for what the owner wants less
// of gains nothing by being there; the same mechanism 0.7, another 0.3; one for which a sound film of a known kind, organotin
// aside, is stripped 0.
func same(q *question, c *asked) worth {
	old := q.old
	if old == nil || old.Mechanism == tables.NoFilm {
		return c.score(0.5, false, nothing)
	}
	show := func() shown { return shown{old.Name, c.Name, facts(fact("old", old.Name))} }
	switch {
	case old.Key == c.Key && q.boat.Wishes.Biocide != "" && c.Biocide != tables.NoBiocide && c.Biocide != tables.CopperFree:
		return c.score(0.5, true, show)
	case old.Key == c.Key:
		return c.answer(1, RuleSameAgain, "mechanism", show)
	case old.Mechanism == c.Mechanism:
		return c.score(0.7, true, show)
	}
	if old.Biocide != tables.Organotin && old.Mechanism != tables.Unknown && c.way.strips && q.part.Found[len(q.part.Found)-1].State == tables.Sound {
		return c.answer(0, RuleStripsSound, "mechanism", show)
	}
	return c.score(0.3, true, show)
}
