package antifoul

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// TypeCost is what one type comes to on the hull over the years reckoned: a second order beside suitability. It never moves a Place.
type TypeCost struct {
	Coating tables.Coating
	Rank    int                     // of its Place
	Tier    Tier                    // of its Place
	Every   quantity.Range[float64] // calendar months from paint to paint; Low is the soonest
	Jobs    quantity.Range[int]     // bottom jobs in the years reckoned, this one among them; Low by the longest interval
	First   cost.Bill               // this job on the hull
	Later   cost.Bill               // each job after it; without lines where there is none
	Between cost.Bill               // all lifts and cleanings of the years reckoned, and the strip of what has built up
	AYear   quantity.Range[quantity.Money]
	Lacks   bool // something of it has no price: the sum is too low
}

// types reckons what each type that may be used comes to a year on the hull.
//
//	a year = (first job + (jobs − 1) × later job + lifts, cleanings and strips) / years
//
// Each bill is Net, without contingency. Jobs are counted from the interval: the months wished for a film that wears, since its coats are counted for them; for
// a film that stays the last haul-out within its life. The low money goes with the long life. A later job goes over the type itself, by the
// cheapest way; what builds up comes off when oldfilm.Weigh says that it must.
//
// Basis: derived; ways, hours, life and wear are those of the ranking and the scheme.
func (j *Job) types(b *tables.Book, boat Boat, size cost.Boat) error {
	k := &j.Costs
	hull := slices.IndexFunc(boat.Parts, func(p compat.Part) bool { return p.Zone == HullZone })
	if hull < 0 {
		return nil
	}
	desk := law.At(b, boat.Craft(), boat.berths(), boat.On)
	for _, p := range j.Ranking.Hull().Places {
		if p.Tier > AskFirst {
			continue
		}
		t, err := j.typeCost(b, boat, hull, p, desk, size)
		if err != nil {
			return err
		}
		k.Types = append(k.Types, t)
	}
	slices.SortStableFunc(k.Types, func(x, y TypeCost) int {
		switch {
		case x.AYear.Typical.Given() != y.AYear.Typical.Given():
			if x.AYear.Typical.Given() {
				return -1
			}
			return 1
		case !x.AYear.Typical.Given():
			return 0
		}
		d, _ := x.AYear.Typical.Cmp(y.AYear.Typical) // one currency
		return d
	})
	return nil
}

func (j *Job) typeCost(b *tables.Book, boat Boat, hull int, p Place, desk *law.Desk, size cost.Boat) (TypeCost, error) {
	k := &j.Costs
	c, over := p.Coating(), k.Over.Float(quantity.Month)
	t := TypeCost{Coating: c, Rank: p.Rank, Tier: p.Tier, Every: interval(b, boat, c)}
	size.Area = j.Areas[hull].Total
	first, err := specify(b, boat, boat.Parts[hull], j.Areas[hull], p)
	if err != nil {
		return t, err
	}
	bill := func(s Scheme) cost.Bill {
		return cost.Reckon(b, k.By, schemeItems(b, boat, k.By, s, j.Areas[hull].Total), size)
	}
	t.First = bill(first)
	t.Jobs = quantity.Range[int]{Low: jobs(over, t.Every.High), Typical: jobs(over, t.Every.Typical), High: jobs(over, t.Every.Low)}
	later := t.First
	if t.Jobs.High > 1 {
		s, err := specify(b, boat, boat.Parts[hull], j.Areas[hull], repainted(b, boat, hull, first, desk))
		if err != nil {
			return t, err
		}
		later = bill(s)
		t.Later = later
	}
	t.Between = cost.Reckon(b, k.By, between(b, boat, size.Area, t, over), size)
	for _, x := range []cost.Bill{t.First, t.Later, t.Between} {
		t.Lacks = t.Lacks || slices.ContainsFunc(x.Lines, func(l cost.Line) bool { return !l.Priced() })
	}
	sum := cost.Plus(t.First.Net, t.Between.Net)
	if n := t.Jobs; n.High > 1 && later.Net.Typical.Given() {
		times := func(m quantity.Money, n int) quantity.Money { return m.Scale(decimal.NewFromInt(int64(n - 1))) }
		sum = cost.Plus(sum, quantity.Range[quantity.Money]{Low: times(later.Net.Low, n.Low), Typical: times(later.Net.Typical, n.Typical), High: times(later.Net.High, n.High)})
	}
	if sum.Typical.Given() {
		n := k.Over.In(quantity.Month, 2, quantity.Nearest)
		t.AYear = quantity.Range[quantity.Money]{Low: perYear(sum.Low, n), Typical: perYear(sum.Typical, n), High: perYear(sum.High, n)}
	}
	return t, nil
}

// perYear is money × 12 / months, to the cent.
func perYear(m quantity.Money, months decimal.Decimal) quantity.Money {
	n, err := quantity.Quotient(m.Amount().Mul(decimal.NewFromInt(12)), months, 2, quantity.Nearest)
	if err != nil {
		return quantity.Money{}
	}
	out, err := quantity.NewMoney(n, m.Currency())
	if err != nil {
		return quantity.Money{}
	}
	return out
}

// jobs counts the bottom jobs within the months reckoned, the first at their start.
func jobs(over, every float64) int {
	if every <= 0 || math.IsInf(every, 1) {
		return 1
	}
	return max(1, int(math.Ceil(over/every-1e-9)))
}

// interval is how many calendar months pass from paint to paint; infinite for no coating.
func interval(b *tables.Book, boat Boat, c tables.Coating) quantity.Range[float64] {
	wished := boat.Months()
	switch {
	case c.Role == tables.Bare:
		return quantity.Exactly(math.Inf(1))
	case c.Wears() || !c.Life.Low.Given():
		return quantity.Exactly(wished)
	}
	haul := hauls(boat)
	life := wear.Life(b, c, boat.Use, c.Coats)
	at := func(months float64) float64 {
		if n := math.Floor(months/haul + 1e-9); n >= 1 {
			return n * haul
		}
		return max(1, math.Floor(months)) // she is hauled for it
	}
	return quantity.Range[float64]{Low: at(life.Low), Typical: at(life.Typical), High: at(life.High)}
}

// hauls is the calendar months between her haul-outs, else between her paints.
func hauls(boat Boat) float64 {
	if boat.Use.HaulOutEvery.Given() {
		return boat.Use.HaulOutEvery.Float(quantity.Month)
	}
	return boat.Months()
}

// repainted is the place of the type on the hull once it lies there, by the cheapest way. The film is taken as sound; how thick it is by then is
// left open.
func repainted(b *tables.Book, boat Boat, hull int, first Scheme, desk *law.Desk) Place {
	part := boat.Parts[hull]
	part.Found = slices.Clone(first.Stack)
	for i := range part.Found {
		l := &part.Found[i]
		l.For, l.State, l.Age = compat.Found, tables.Sound, quantity.Duration{}
		if l.Coating.Key == first.Coating.Key {
			l.Film = quantity.Range[quantity.Film]{}
		}
	}
	part.Laminate = ""
	q := newQuestion(b, boat, part.AsRead(b), desk)
	c := &first.Coating
	place := Place{Key: c.Key, Name: c.Name, way: q.wayTo(c, new(compat.Slate)), q: q}
	s := q.stands(&asked{Coating: c, way: place.way})
	place.Tier, place.Score = s.tier, s.score
	return place
}

// schemeItems are paint and work of one job on one part.
func schemeItems(b *tables.Book, boat Boat, by string, s Scheme, area quantity.Range[quantity.Area]) []cost.Item {
	var out []cost.Item
	reserve := decimal.NewFromInt(1)
	if boat.Paint.Reserve.Given() {
		reserve = reserve.Add(boat.Paint.Reserve.Number().Shift(-2))
	}
	for _, k := range s.Coats {
		if !k.Litres.Typical.Given() {
			continue
		}
		litres := func(v quantity.Volume) decimal.Decimal {
			return v.Scale(reserve).In(quantity.Litre, 2, quantity.Up)
		}
		name := k.Layer.Coating.Name
		if c, err := b.Colour(k.Layer.Colour); err == nil {
			name += ", " + c.Name
		}
		out = append(out, cost.Item{
			Of: tables.PricedPaint, What: k.Layer.Coating.Key, Name: name, Unit: "L",
			Amount: quantity.Range[decimal.Decimal]{Low: litres(k.Litres.Low), Typical: litres(k.Litres.Typical), High: litres(k.Litres.High)},
		})
	}
	for _, t := range append(preparation(b, boat, &s, area), coating(b, &s)...) {
		out = append(out, workItem(b, by, t)...)
	}
	return out
}

// between is what is paid beside paint and work of the bottom jobs: cleaning afloat as often as she has it or the type needs it, every lift, and the
// strip of what has built up.
func between(b *tables.Book, boat Boat, area quantity.Range[quantity.Area], t TypeCost, over float64) []cost.Item {
	var out []cost.Item
	c := t.Coating
	every := boat.Use.CleanedEvery
	if boat.Use.Cleaning <= tables.None {
		every = quantity.Duration{}
	}
	if c.CleanEvery.Given() && (!every.Given() || c.CleanEvery.Cmp(every) < 0) {
		every = c.CleanEvery
	}
	if every.Given() && every.Sign() > 0 && boat.Use.Afloat() {
		days := boat.Use.AfloatMonths(over) * 365.25 / 12
		out = append(out, cost.Item{Of: tables.PricedCleaning, Name: "cleaning afloat", Unit: cost.Job, Amount: cost.Times(int(math.Floor(days / every.Float(quantity.Day))))})
	}
	if !boat.Use.Afloat() { // she is on her trailer or lift anyway
		return out
	}
	lifts := jobs(over, hauls(boat))
	times := func(jobs int) decimal.Decimal { return decimal.NewFromInt(int64(max(lifts, jobs))) }
	out = append(out, hauling(quantity.Range[decimal.Decimal]{Low: times(t.Jobs.Low), Typical: times(t.Jobs.Typical), High: times(t.Jobs.High)})...)
	if t.Jobs.Typical < 2 || c.Role == tables.Bare || c.Laid() {
		return out
	}
	nought := quantity.Exactly(quantity.Micrometre.N(0))
	_, bare, err := oldfilm.Weigh(b, area, nought, oldfilm.Stays(c, c.Coats), quantity.Range[float64]{}, months(max(1, t.Every.Typical)))
	if err != nil || bare.Jobs.Typical < 1 {
		return out
	}
	if n := (t.Jobs.Typical - 1) / bare.Jobs.Typical; n > 0 {
		k := float64(n)
		h := bare.Hours
		out = append(out, labour("stripping what has built up, after "+count(bare.Jobs.Typical, "job"), quantity.Range[float64]{Low: h.Low * k, Typical: h.Typical * k, High: h.High * k}))
	}
	return out
}

// CourseCost is what it comes to, over the years reckoned, to go on over an old film or to strip it now: the work on the old film alone.
type CourseCost struct {
	Part   string
	Recoat cost.Bill // now, and the strip when the film has built up, if that falls within the years
	Strip  cost.Bill // now, and again
}

// courses sets going on over the old film against stripping it, in money, for each part on which the film was read.
func (j *Job) courses(b *tables.Book, size cost.Boat) {
	k := &j.Costs
	over, by := k.Over.Float(quantity.Month), k.By
	for _, o := range j.OldFilms {
		if o.Recoat == nil || o.Strip == nil {
			continue
		}
		// strips counts how often the film must come off within the years, soonest and latest.
		strips := func(course *oldfilm.Course) quantity.Range[float64] {
			n := func(after float64) float64 {
				if after <= 0 {
					return 1
				}
				return math.Floor((over - 1e-9) / after)
			}
			return quantity.Range[float64]{Low: n(course.Months.High), Typical: n(course.Months.Typical), High: n(course.Months.Low)}
		}
		later := func(name string, n, h quantity.Range[float64]) cost.Item {
			return labour(name, quantity.Range[float64]{Low: n.Low * h.Low, Typical: n.Typical * h.Typical, High: n.High * h.High})
		}
		one := strips(o.Recoat)
		one = quantity.Range[float64]{Low: min(1, one.Low), Typical: min(1, one.Typical), High: min(1, one.High)}
		k.Courses = append(k.Courses, CourseCost{
			Part:   o.Part,
			Recoat: cost.Reckon(b, by, []cost.Item{labour("recoating the old film now", o.Recoat.Hours), later("stripping it once it has built up", one, o.Strip.Hours)}, size),
			Strip:  cost.Reckon(b, by, []cost.Item{labour("stripping it now", o.Strip.Hours), later("stripping again what has built up", strips(o.Strip), o.Strip.Hours)}, size),
		})
	}
}
