package antifoul

import (
	"fmt"
	"slices"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Assumption is one key that the boat file does not give, and what is done without it.
type Assumption struct {
	Key   string // key path in a boat file
	Taken string // what was taken instead
}

// assume lists what the boat does not say, in the order of the boat file.
func assume(b *tables.Book, x Boat) []Assumption {
	out := make([]Assumption, 0, 16)
	say := func(missing bool, key, taken string) {
		if missing {
			out = append(out, Assumption{key, taken})
		}
	}
	number := func(missing bool, key, words, row string) {
		if missing { // the words cost more than all the rest
			say(true, key, fmt.Sprintf(words, factor(b, row)))
		}
	}
	u, water := x.Use, x.water(b)
	for _, p := range x.Parts {
		say(len(p.Found) == 0 && !unpainted(b, p), "part["+p.Name+"].found", "an unknown old film, which is treated as holding organotin and lead until it is identified")
	}
	say(!x.Hull.Overall.Given() && len(x.Berths) > 0, "hull.overall", "the waterline length, where a law asks for the length of the boat")
	say(!u.UnderWay.Given(), "use.under_way", "anything from lying still to regular use; ranges of wear are as wide as that")
	say(!u.Speed.Given(), "use.speed", "speed is not judged, nor told what growth costs; wear is taken at the reference speed")
	say(!u.LongestIdle.Given(), "use.longest_idle", "idle spells are not judged")
	say(!u.HaulOutEvery.Given() && !x.Wishes.RepaintAfter.Given(), "use.haul_out_every", "12 months until the next paint")
	say(!u.AshoreEachYear.Given(), "use.ashore_each_year", "afloat all year, which is the harder case for the paint")
	say(u.AshoreEachYear.Given() && u.AshoreEachYear.Sign() > 0 && !u.RelaunchedUnpainted.Said(), "use.relaunched_unpainted", "time in the air counts as a doubt against hard films, no more")
	say(u.Growth == 0 && u.Afloat(), "use.growth", "fouling pressure is not judged")
	say(u.Water == "" && water != "", "use.water", "the water of the berth where she is kept, "+water)
	say(water == "", "use.water", "salt water for wear and for the cost of growth; fitness for the water is not judged")
	say(!u.WaterTemperature.Given(), "use.water_temperature", "wear is taken at the reference temperature")
	say(u.Cleaning == 0, "use.cleaning", "no cleaning between haul-outs")
	say(u.Kept == "", "use.kept", "kept afloat")
	say(u.DriesOn == "", "use.dries_on", "she does not take the ground")
	say(len(x.Berths) == 0, "berth", "no place: the law was not asked")
	say(!x.Work.Launch.Given() && !x.Work.LaunchOpen.Said(), "work.launch", "time ashore after painting is not judged")
	say(x.Work.Hands == 0, "work.hands", "one pair of hands")
	w := x.Work
	say(!w.Planned(), "work.days", "no plan of days is made")
	if w.Planned() && w.Stop == 0 {
		say(true, "work.from", "hands are there from "+clock(calendar.UsualStart)+" to "+clock(calendar.UsualStop))
	}
	number(w.Planned() && !w.SetUp.Given(), "work.set_up", "%g h of each day go into setting up and clearing away", "day-setup")
	number(w.Planned() && !w.Reserve.Given() && w.Launch.Given() && !w.LaunchOpen.True(), "work.reserve", "%g days are to be left before the launch", "launch-reserve")
	say(w.Planned() && len(x.Weather.Forecast.Hours) == 0, "work.forecast", "the weather of no hour is known: days are counted, and each morning decides")
	say(w.Planned() && len(x.Weather.Forecast.Hours) == 0 && !x.Paint.Today.Given(), "paint.temperature", "windows are reckoned at the temperature at which they are stated")
	say(w.Planned() && w.Shift.IsZero() && !w.Slings.True(), "work.shift", "the yard shifts the stands on its first working day after the coats")
	say(x.Paint.By == "", "paint.by", "by roller")
	say(!x.Paint.Reserve.Given(), "paint.reserve", "no reserve on top of the typical litres")
	say(!x.Paint.Thinner.Given(), "paint.thinner", "unthinned")
	say(x.Paint.Profile == "" && mayBlast(b, x), "paint.profile", "a medium profile of grit, where a way blasts metal")
	for _, t := range x.Tins {
		say(t.PotLife.Given() && !x.Paint.Today.Given(), "paint.temperature", "the temperature at which each pot life is stated")
	}
	say(x.Hull.Support == nil && x.Hull.Length.Given(), "hull.stand_pairs", "as many stands and blocks as her length asks for by the tables' rule")
	say(len(x.Paint.Sizes) == 0, "paint.cans", "the can sizes of the tables")
	number(priced(b) && !x.Wishes.ReckonOver.Given(), "wishes.reckon_over", "types are set against each other in money over %g years", "reckon-over")
	for i, g := range x.Gauged {
		key := fmt.Sprintf("gauge[%d].", i+1)
		say(!g.Most.Given(), key+"most", "no greatest film was agreed: how much too thick it is was not judged")
		say(g.Profile == "", key+"profile", "nothing is taken off the readings for a blast profile")
		say(g.Coating == "", key+"coating", "the litres of what is missing are not reckoned")
	}
	for i, c := range x.Combed {
		key := fmt.Sprintf("comb[%d].", i+1)
		say(!c.Thinner.Given(), key+"thinner", "the thinner of the boat's paint")
		say(!c.Asked.Given(), key+"asked", "the coating's typical film")
	}
	for i, u := range x.Used {
		say(!u.Asked.Given(), fmt.Sprintf("used[%d].asked", i+1), "the coating's typical film")
	}
	return out
}

// mayBlast reports whether a painted part is of a material that is blasted or ground bright.
func mayBlast(b *tables.Book, x Boat) bool {
	return slices.ContainsFunc(x.Parts, func(p compat.Part) bool {
		m, _ := b.Material(p.Material) // checked with the boat
		return m.Painted != tables.Never && slices.Contains(slices.Collect(m.Prepare()), finding.Blast)
	})
}

// clock is a time of day, from minutes after midnight.
func clock(minutes int) string { return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60) }
