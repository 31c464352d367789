package antifoul

import (
	"cmp"
	"math"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// dial is one fact of the boat's use that may be turned to see what it decides.
type dial struct {
	key  string // in a boat file
	name string // in words
	turn func(boat Boat) []turned
}

// turned is a boat with one fact changed.
type turned struct {
	from, to any
	up       bool // more than the boat has; of words: later in their list
	boat     Boat
}

// amounts turns a quantity to each of the values, the nearest by ratio first. A boat that does not say it is not turned: what is then taken stands among
// the assumptions.
func amounts[D quantity.Dim](key, name string, of func(*Boat) *quantity.Amount[D], unit quantity.Unit[D], values ...int64) dial {
	return dial{key, name, func(boat Boat) []turned {
		now := *of(&boat)
		if !now.Given() {
			return nil
		}
		var out []turned
		for _, v := range values {
			to := unit.N(v)
			if to.Cmp(now) == 0 {
				continue
			}
			x := boat
			*of(&x) = to
			out = append(out, turned{now, to, to.Cmp(now) > 0, x})
		}
		far := func(t turned) float64 {
			to, _ := t.to.(quantity.Amount[D])
			return math.Abs(math.Log((to.Float(unit) + 1) / (now.Float(unit) + 1)))
		}
		slices.SortStableFunc(out, func(a, b turned) int { return cmp.Compare(far(a), far(b)) })
		return out
	}}
}

// words turns a fact to each of the words, the nearest in their list first. The zero word is not given, and then nothing is turned.
func words[T comparable](key, name string, of func(*Boat) *T, values ...T) dial {
	return dial{key, name, func(boat Boat) []turned {
		at := slices.Index(values, *of(&boat))
		if at < 0 {
			return nil
		}
		var out []turned
		for i, v := range values {
			if i == at {
				continue
			}
			x := boat
			*of(&x) = v
			out = append(out, turned{values[at], v, i > at, x})
		}
		slices.SortStableFunc(out, func(a, b turned) int {
			far := func(t turned) int { return abs(slices.Index(values, t.to.(T)) - at) } //nolint:forcetypeassert // it was made of one
			return cmp.Compare(far(a), far(b))
		})
		return out
	}}
}

func abs(n int) int { return max(n, -n) }

// cleanings turns the cleaning that her owner does. One who begins to clean is taken to do it once a month; one who stops has no interval.
func cleanings(boat Boat) []turned {
	out := words("", "", func(x *Boat) *tables.Grade { return &x.Use.Cleaning }, tables.None, tables.Light, tables.Medium, tables.Heavy).turn(boat)
	for i := range out {
		u := &out[i].boat.Use
		switch {
		case u.Cleaning <= tables.None:
			u.CleanedEvery = quantity.Duration{}
		case !u.CleanedEvery.Given():
			u.CleanedEvery = quantity.Day.N(30)
		}
		out[i].from, out[i].to = cleaningTool(boat.Use.Cleaning), cleaningTool(u.Cleaning)
	}
	return out
}

// dials are the facts of use that a ranking weighs, in the order of the boat file.
func dials() []dial {
	return []dial{
		amounts("use.speed", "the speed that she keeps up", func(x *Boat) *quantity.Speed { return &x.Use.Speed }, quantity.Knot, 3, 4, 5, 6, 8, 10, 12, 15, 18, 20, 22, 25, 28, 30, 35, 40),
		amounts("use.longest_idle", "the longest lie without moving", func(x *Boat) *quantity.Duration { return &x.Use.LongestIdle }, quantity.Day, 3, 7, 10, 14, 21, 30, 45, 60, 90, 120, 180),
		amounts("use.ashore_each_year", "the time ashore each year", func(x *Boat) *quantity.Months { return &x.Use.AshoreEachYear }, quantity.Month, 0, 1, 2, 3, 4, 5, 6, 7, 8, 10),
		words("use.relaunched_unpainted", "relaunching unpainted", func(x *Boat) *quantity.YesNo { return &x.Use.RelaunchedUnpainted }, quantity.No, quantity.Yes),
		words("use.growth", "the growth where she lies", func(x *Boat) *tables.Grade { return &x.Use.Growth }, tables.Light, tables.Medium, tables.Heavy),
		{"use.cleaning", "cleaning between haul-outs", cleanings},
		amounts("use.cleaned_every", "how often she is cleaned", func(x *Boat) *quantity.Duration { return &x.Use.CleanedEvery }, quantity.Day, 7, 14, 21, 30, 45, 60, 90, 120),
		words("use.kept", "where she is kept", func(x *Boat) *string { return &x.Use.Kept }, "afloat", "lift", "trailer"),
		words("work.done_by", "who does the work", func(x *Boat) *string { return &x.Work.DoneBy }, tables.ByOwner, tables.ByYard),
		words("use.ice", "ice", func(x *Boat) *quantity.YesNo { return &x.Use.Ice }, quantity.No, quantity.Yes),
		words("use.dries_on", "the ground that she takes", func(x *Boat) *string { return &x.Use.DriesOn }, "none", "soft", "firm"),
		{"wishes.repaint_after", "the time until the next paint", func(boat Boat) []turned {
			boat.Wishes.RepaintAfter = months(boat.Months()) // what is taken where nobody wishes anything
			return amounts("", "", func(x *Boat) *quantity.Months { return &x.Wishes.RepaintAfter }, quantity.Month, 6, 9, 12, 15, 18, 24, 30, 36, 48, 60).turn(boat)
		}},
		words("work.launch_open", "an open launch date", func(x *Boat) *quantity.YesNo { return &x.Work.LaunchOpen }, quantity.No, quantity.Yes),
	}
}
