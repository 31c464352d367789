package antifoul

import (
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// speed asks whether the sustained speed fits: above the type's most it bars; from 80 % of it the value falls to 0.5. Below
// the type's least growth is not shed: 0.3 for an owner who wipes at least with a sponge, else it bars.
func speed(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	v := q.boat.Use.Speed
	var limit any
	switch {
	case c.SpeedMax.Given():
		limit = c.SpeedMax
	case c.SpeedMin.Given():
		limit = c.SpeedMin
	default:
		return Criterion{Value: 1, Boat: given(v), Type: noLimit, Judged: v.Given()}
	}
	if !v.Given() {
		return neutral(limit)
	}
	kn := func(s quantity.Speed) float64 { return s.Float(quantity.Knot) }
	if c.SpeedMin.Given() && kn(v) < kn(c.SpeedMin) {
		k := answer(0.3, v, c.SpeedMin, RuleSpeedUnder, c, "speed_min", fact("speed", v), fact("limit", c.SpeedMin))
		if q.boat.Use.Afloat() && q.boat.Use.Cleaning <= tables.None {
			return k.bar()
		}
		return k
	}
	if c.SpeedMax.Given() {
		facts := []finding.Fact{fact("speed", v), fact("limit", c.SpeedMax)}
		ratio := kn(v) / kn(c.SpeedMax)
		switch {
		case ratio > 1:
			return answer(0, v, c.SpeedMax, RuleSpeedOver, c, "speed_max", facts...).bar()
		case ratio > 0.8:
			return answer(1-0.5*(ratio-0.8)/0.2, v, c.SpeedMax, RuleSpeedFits, c, "speed_max", facts...)
		}
		return answer(1, v, c.SpeedMax, RuleSpeedFits, c, "speed_max", facts...)
	}
	return answer(1, v, limit, RuleSpeedFits, c, "speed_min", fact("speed", v), fact("limit", limit))
}

// cleaning asks whether the owner's cleaning fits the film: harder than it stands bars; a type that needs cleaning bars when
// the owner cleans less than half as often as it needs, and gets 0.5 in between; one that she runs fast enough to shed growth
// by itself needs none. Cleaning that is forbidden where she lies
// bars the types it is forbidden for.
func cleaning(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	u := q.boat.Use
	needs := c.Role != tables.Bare && c.CleanEvery.Given() && u.Afloat() && !shedsBySpeed(u, c)
	if u.Cleaning == 0 {
		if needs {
			return answer(0, nil, c.CleanEvery, RuleCleanLack, c, "clean_every", fact("needs", c.CleanEvery)).bar()
		}
		return neutral(c.Scrub)
	}
	if u.Cleaning > tables.None && c.Role != tables.Bare {
		if u.Cleaning > c.Scrub {
			return answer(0, u.Cleaning, c.Scrub, RuleCleanHard, c, "scrub", fact("tool", cleaningTool(u.Cleaning)), fact("stands", cleaningTool(c.Scrub))).bar()
		}
		if banned := q.desk.Cleaning(*c).At(finding.Forbidden); len(banned) > 0 && u.Afloat() {
			k := answer(0, u.Cleaning, c.Scrub, RuleCleanBanned, c, "scrub", fact("place", banned[0].Against))
			k.Finding.Basis = banned[0].Basis
			return k.bar()
		}
	}
	if needs {
		facts := []finding.Fact{fact("needs", c.CleanEvery)}
		if !u.CleanedEvery.Given() {
			return answer(0, u.Cleaning, c.CleanEvery, RuleCleanLack, c, "clean_every", facts...).bar()
		}
		switch ratio := days(u.CleanedEvery) / days(c.CleanEvery); {
		case ratio > 2:
			return answer(0, u.CleanedEvery, c.CleanEvery, RuleCleanLack, c, "clean_every", facts...).bar()
		case ratio > 1:
			return answer(0.5, u.CleanedEvery, c.CleanEvery, RuleCleanLack, c, "clean_every", facts...)
		}
	}
	return answer(1, u.Cleaning, c.Scrub, RuleCleanFits, c, "scrub", fact("stands", cleaningTool(c.Scrub)))
}

// shedsBySpeed reports whether she keeps up the speed at which the type sheds growth by itself, so that it needs no cleaning.
func shedsBySpeed(u wear.Use, c *tables.Coating) bool {
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
	}
	return "no cleaning"
}

// abrasion asks whether the film stands grounding, bunks and slings: value = 1 − 0.6 × the
// grades that it falls short; two grades short, or any abrasion on a film that stands none, bars.
func abrasion(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	u := q.boat.Use
	need := u.Abrasion()
	if u.Kept == "" && u.DriesOn == "" {
		return neutral(c.Abrasion)
	}
	if c.Role == tables.Bare || need <= c.Abrasion {
		return answer(1, need, c.Abrasion, RuleAbrasionFits, c, "abrasion", fact("need", need), fact("stands", c.Abrasion))
	}
	deficit := int(need) - int(c.Abrasion)
	k := answer(1-float64(deficit)*0.6, need, c.Abrasion, RuleAbrasionOver, c, "abrasion", fact("need", need), fact("stands", c.Abrasion))
	if deficit >= 2 || c.Abrasion == tables.None {
		return k.bar()
	}
	return k
}

// water asks whether the type is meant for the water she lies in.
func water(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	w := q.boat.Use.Water
	switch {
	case w == "":
		return neutral(nil)
	case c.Suits(w):
		return Criterion{Value: 1, Boat: w, Judged: true}
	}
	return answer(0, w, nil, RuleWaterWrong, c, "waters", fact("water", w)).bar()
}

// metal asks whether the biocide is one that the material prefers, where it prefers any: 1 if so, else 0.3. A type that is made
// for other materials bars.
func metal(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	switch {
	case q.material.KeepsClean && c.Role != tables.Bare:
		return answer(0, q.material.Name, nil, RulePaintDefeats, c, "film", fact("material", q.material.Name)).bar()
	case !c.MadeFor(q.part.Material):
		return answer(0, q.material.Name, nil, RuleMaterialOther, c, "materials", fact("material", q.material.Name)).bar()
	case q.material.Prefers(c.Biocide):
		if !q.material.Choosy() {
			return Criterion{Value: 1, Judged: true}
		}
		return answer(1, q.material.Name, string(c.Biocide), RulePreferred, c, "active", fact("material", q.material.Name))
	}
	return answer(0.3, q.material.Name, string(c.Biocide), RuleNotPreferred, c, "active", fact("material", q.material.Name))
}

// work asks how much work the way to the type is: value = 1 − typical hours a square metre / the factor work-hours-full.
func work(q *question, c *tables.Coating, r *compat.Route) Criterion {
	h := r.Effort.Typical
	if h < 0.1 {
		return answer(1-h/q.workBar, nil, perSquareMetre(h), RuleWorkLittle, c, "film")
	}
	return answer(1-h/q.workBar, nil, perSquareMetre(h), RuleWork, c, "film", fact("hours", perSquareMetre(h)))
}

// biocide asks what the owner wishes. For less biocide: none 1, copper-free 0.7, thiocyanate and other copper 0.4, cuprous oxide
// and metallic copper 0.1. The wish for none bars every type that holds one.
func biocide(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	wish := q.boat.Wishes.Biocide
	switch {
	case wish == "":
		return Criterion{Value: 0.5, Type: string(c.Biocide)}
	case wish == WishNone && c.Biocide != tables.NoBiocide:
		return answer(0, "none", string(c.Biocide), RuleNoBiocide, c, "active", fact("biocide", string(c.Biocide))).bar()
	}
	value := 0.1
	switch c.Biocide {
	case tables.NoBiocide:
		value = 1
	case tables.CopperFree:
		value = 0.7
	case tables.CopperThiocyanate, tables.OtherCopper:
		value = 0.4
	}
	return answer(value, wish, string(c.Biocide), RuleLessBiocide, c, "active", fact("biocide", string(c.Biocide)))
}

// colour bars a type that cannot be had in the wished top colour.
func colour(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	if q.top == nil || c.Role == tables.Bare {
		return neutral(nil)
	}
	k := *q.top
	if !available(*c, k) {
		return answer(0, k.Name, nil, RuleColourWrong, c, "bright", fact("colour", k.Name)).bar()
	}
	return Criterion{Value: 1, Boat: k.Name, Judged: true}
}

// racing asks for a film that can be burnished when the owner wants a racing finish.
func racing(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	if !q.boat.Wishes.Racing.True() {
		return Criterion{Value: 0.5, Judged: q.boat.Wishes.Racing.Said()}
	}
	if c.Burnish {
		return answer(1, "racing finish", nil, RuleRacingFits, c, "burnish")
	}
	return answer(0.1, "racing finish", nil, RuleRacingWrong, c, "burnish")
}

// same favours what is on the bottom already: the same coating 1, the same mechanism 0.7, another 0.3.
func same(q *question, c *tables.Coating, _ *compat.Route) Criterion {
	if q.old == nil || q.old.Mechanism == tables.NoFilm {
		return Criterion{Value: 0.5}
	}
	old := q.old
	switch {
	case old.Key == c.Key:
		return answer(1, old.Name, c.Name, RuleSameAgain, c, "mechanism", fact("old", old.Name))
	case old.Mechanism == c.Mechanism:
		return Criterion{Value: 0.7, Boat: old.Name, Type: c.Name, Judged: true}
	}
	return Criterion{Value: 0.3, Boat: old.Name, Type: c.Name, Judged: true}
}
