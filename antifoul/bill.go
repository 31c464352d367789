package antifoul

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of a bill that rest on the job.
const (
	RuleNoDays     finding.ID = "cost-no-days"
	RuleOwnHours   finding.ID = "cost-own-hours"
	RuleRainWindow finding.ID = "cost-rain-window"
)

// Costs is what the job comes to by the prices of the book. It is zero where the book has none.
type Costs struct {
	Owner, Yard cost.Bill // the whole job, when the owner does the work and when the yard does
	OwnHours    quantity.Range[float64]
	RainOwner   cost.Bill // what a week of rain adds
	RainYard    cost.Bill
	Over        quantity.Months // over which the types and the courses are reckoned
	By          string          // whose prices Types takes: who does the work, else the yard's
	Types       []TypeCost      // those that may be used on the hull, the cheapest first
	Courses     []CourseCost
	Findings    finding.List
}

// Reckoned reports whether anything has a price.
func (c Costs) Reckoned() bool { return len(c.Owner.Lines) > 0 }

// costs reckons the job in money.
func (j *Job) costs(b *tables.Book, boat Boat) error {
	if !priced(b) {
		return nil
	}
	k := &j.Costs
	k.Over, k.By = boat.Wishes.ReckonOver, cost.Yard
	if !k.Over.Given() {
		k.Over = months(12 * factor(b, "reckon-over"))
	}
	if boat.Work.DoneBy == calendar.ByOwner {
		k.By = cost.Owner
	}
	size := cost.Boat{Length: boat.Craft().Length, Area: j.Wetted.Total}
	days, known := j.ashore()
	if !known {
		k.Findings = append(k.Findings, finding.Finding{Rule: RuleNoDays, Verdict: finding.Caution})
	}
	bill := func(by string) cost.Bill { return cost.Reckon(b, by, j.items(b, by, days), size) }
	k.Owner, k.Yard = bill(cost.Owner), bill(cost.Yard)
	if _, paid := b.Price(tables.PricedLabour, "", cost.Owner); !paid {
		setup := j.settingUp(b)
		k.OwnHours = quantity.Range[float64]{Low: j.Hours.Low + setup.Low, Typical: j.Hours.Typical + setup.Typical, High: j.Hours.High + setup.High}
		k.Findings = append(k.Findings, finding.Finding{
			Rule: RuleOwnHours, Verdict: finding.Fine,
			Facts: facts(fact("hours", int(math.Ceil(k.OwnHours.Typical)))),
		})
	}
	again, coat := j.closesInAWeek(b)
	if coat != "" {
		k.Findings = append(k.Findings, finding.Finding{Rule: RuleRainWindow, Verdict: finding.Caution, About: coat})
	}
	k.RainOwner, k.RainYard = cost.Reckon(b, cost.Owner, rain(b, cost.Owner, again), size), cost.Reckon(b, cost.Yard, rain(b, cost.Yard, again), size)
	j.courses(b, size)
	return j.types(b, boat, size)
}

// priced reports whether the book holds prices of anything but cans, which are summed up where they are bought.
func priced(b *tables.Book) bool {
	for range b.Prices() {
		return true
	}
	return false
}

// items are what the job is made of, for whoever does the work: paint, what is used up, work, the yard's own.
func (j *Job) items(b *tables.Book, by string, days quantity.Range[decimal.Decimal]) []cost.Item {
	var out []cost.Item
	for _, g := range j.Buy {
		out = append(out, paintItem(b, g))
	}
	for _, g := range j.Buy {
		if g.Thinner.Given() {
			out = addItem(out, cost.Item{Of: tables.PricedThinner, Name: "thinner for " + g.Coating.Name, Unit: "L", Amount: quantity.Exactly(g.Thinner.In(quantity.Litre, 2, quantity.Up))})
		}
	}
	for _, s := range j.Supplies {
		if s.Buy > 0 {
			out = append(out, cost.Item{Of: tables.PricedSupply, What: s.Supply.Key, Name: s.Supply.Name, Unit: s.Supply.Unit, Amount: cost.Times(s.Buy)})
		}
	}
	for _, t := range j.Order {
		for _, it := range workItem(b, by, t) {
			out = addItem(out, it)
		}
	}
	if j.Days.High > 0 {
		out = append(out, labour("setting up and clearing away", j.settingUp(b)))
	}
	if j.Boat.Use.Afloat() {
		out = append(out, hauling(cost.Times(1))...)
	}
	for _, t := range j.Order {
		if t.Do == finding.Shift {
			out = append(out, cost.Item{Of: tables.PricedShift, Name: "shifting the stands", Unit: cost.Job, Amount: cost.Times(1)})
		}
	}
	out = append(out, cost.Item{Of: tables.PricedDay, Name: "standing ashore", Unit: "days", Amount: days})
	if j.Waste.High.Given() {
		kg := func(m quantity.Mass) float64 { return m.Float(quantity.Kilogram) }
		low, high := kg(j.Waste.Low), kg(j.Waste.High)
		out = append(out, cost.Item{Of: tables.PricedWaste, Name: "waste taken away", Unit: "kg", Amount: cost.Amounts(low, (low+high)/2, high)})
	}
	return out
}

// settingUp is the hours of all hands that go into setting up and clearing away on the days of work: those of the plan of the whole job where there is one and it has
// more.
func (j *Job) settingUp(b *tables.Book) quantity.Range[float64] {
	day := factor(b, "day-setup")
	if s := j.Boat.Work.SetUp; s.Given() {
		day = s.Float(quantity.Hour)
	}
	day *= float64(max(1, j.Boat.Work.Hands))
	n := func(days float64) float64 { return max(days, float64(j.Season.Calendar.Days)) * day }
	return quantity.Range[float64]{Low: n(j.Days.Low), Typical: n(j.Days.Typical), High: n(j.Days.High)}
}

// addItem adds an item, to the one of the same name where there is one.
func addItem(items []cost.Item, it cost.Item) []cost.Item {
	at := slices.IndexFunc(items, func(o cost.Item) bool {
		return o.Of == it.Of && o.What == it.What && o.Unit == it.Unit && o.Name == it.Name
	})
	if at < 0 {
		return append(items, it)
	}
	a, b := &items[at].Amount, it.Amount
	*a = quantity.Range[decimal.Decimal]{Low: a.Low.Add(b.Low), Typical: a.Typical.Add(b.Typical), High: a.High.Add(b.High)}
	return items
}

// hauling is the lift out and back with setting her up, so many times.
func hauling(times quantity.Range[decimal.Decimal]) []cost.Item {
	return []cost.Item{
		{Of: tables.PricedLift, Name: "lift out and back", Unit: cost.Job, Amount: times},
		{Of: tables.PricedBlocking, Name: "setting up on stands", Unit: cost.Job, Amount: times},
	}
}

// paintItem is one coating in one colour: the money of the cans where they have prices, else the litres that are bought.
func paintItem(b *tables.Book, g Bought) cost.Item {
	name := g.Coating.Name
	if k, err := b.Colour(g.Colour); err == nil {
		name += ", " + k.Name
	}
	it := cost.Item{Of: tables.PricedPaint, What: g.Coating.Key, Name: name, Unit: "L", Known: g.Cost}
	bought := g.Total
	for _, s := range g.FromStock {
		bought = bought.Sub(s.Can.Size.Scale(decimal.NewFromInt(int64(s.Count))))
	}
	it.Amount = quantity.Exactly(bought.In(quantity.Litre, 2, quantity.Up))
	if g.Cost.Given() {
		return it
	}
	high := g.Range.High.In(quantity.Litre, 2, quantity.Up)
	if high.Cmp(it.Amount.High) > 0 {
		it.Amount.High = high // a wasteful day
	}
	return it
}

// workItem is one task: by the square metre where the book prices that kind of work so, the wash by the yard's price for it, else hours of one hand.
func workItem(b *tables.Book, by string, t Task) []cost.Item {
	name := string(t.Do)
	if row, err := b.Step(t.Do); err == nil {
		name = row.Name
	}
	if t.Coat != nil {
		name = t.Coat.words()
	}
	if len(t.Parts) > 0 {
		name += ": " + strings.Join(t.Parts, ", ")
	}
	if t.Coat == nil {
		if t.Do == finding.Wash {
			if _, ok := b.Price(tables.PricedWash, "", by); ok {
				return []cost.Item{{Of: tables.PricedWash, Name: name, Unit: cost.Job, Amount: cost.Times(1)}}
			}
		}
		if p, ok := b.Price(tables.PricedWork, string(t.Do), by); ok && p.What != "" && t.Area.Typical.Given() {
			m2 := func(a quantity.Area) float64 { return a.Float(quantity.SquareMetre) }
			return []cost.Item{{Of: tables.PricedWork, What: string(t.Do), Name: name, Unit: "m2", Amount: cost.Amounts(m2(t.Area.Low), m2(t.Area.Typical), m2(t.Area.High))}}
		}
	}
	if t.Hours.High == 0 {
		return nil
	}
	return []cost.Item{labour(name, t.Hours)}
}

// words names the coats of a task as a bill does: "3 working coats of …".
func (c *Coat) words() string {
	kind := map[compat.Purpose]string{compat.Signal: "signal coat", compat.Extra: "extra coat", compat.Working: "working coat"}[c.Layer.For]
	if kind == "" {
		kind = "coat"
	}
	return count(c.Layer.Coats, kind) + " of " + c.Layer.Coating.Name
}

func labour(name string, hours quantity.Range[float64]) cost.Item {
	return cost.Item{Of: tables.PricedLabour, Name: name, Unit: "h", Amount: cost.Amounts(hours.Low, hours.Typical, hours.High)}
}

// ashore is how many days she stands: from the day of the question to the launch, or to when the plan has her ready. False where nobody knows.
func (j *Job) ashore() (quantity.Range[decimal.Decimal], bool) {
	end := j.Boat.Work.Launch
	if !end.Given() || j.Boat.Work.LaunchOpen.True() {
		_, c := j.Season.Shown()
		if c.Ready.IsZero() {
			return quantity.Range[decimal.Decimal]{}, false
		}
		y, m, d := c.Ready.Date()
		var err error
		if end, err = quantity.NewDate(y, int(m), d); err != nil {
			return quantity.Range[decimal.Decimal]{}, false
		}
	}
	n := j.Boat.On.DaysUntil(end)
	if n < 0 {
		return quantity.Range[decimal.Decimal]{}, false
	}
	return cost.Times(n), true
}

// week is the days that a lost week of rain adds.
const week = 7

// rain is what a lost week adds: days ashore, and the abrading of a coat whose window closes meanwhile.
func rain(b *tables.Book, by string, again *Task) []cost.Item {
	out := []cost.Item{{Of: tables.PricedDay, Name: "standing ashore", Unit: "days", Amount: cost.Times(week)}}
	if again != nil {
		out = append(out, workItem(b, by, *again)...)
	}
	return out
}

// closesInAWeek is the abrading of the largest coat whose window to the next one, of its own layer or of one above, closes within a week; nil where none does.
func (j *Job) closesInAWeek(b *tables.Book) (*Task, string) {
	var worst *Task
	for i := range j.Order {
		t := &j.Order[i]
		if t.Coat == nil || t.Coat.Layer.Coats < 2 && !slices.ContainsFunc(j.Order[i+1:], t.under) {
			continue
		}
		c := t.Coat.Layer.Coating
		if !c.OvercoatMax.Given() || c.OvercoatMax.Cmp(quantity.Day.N(week)) >= 0 || !t.Area.Typical.Given() {
			continue
		}
		if worst == nil || t.Area.Typical.Cmp(worst.Area.Typical) > 0 {
			worst = t
		}
	}
	row, err := b.Step(finding.Abrade)
	if worst == nil || err != nil {
		return nil, ""
	}
	return &Task{Parts: worst.Parts, Do: finding.Abrade, Area: worst.Area, Hours: hours(row.Hours, worst.Area, 1)}, worst.Coat.Layer.Coating.Name
}

// under reports whether the task is a coat that goes on a part of this one.
func (t *Task) under(o Task) bool {
	return o.Coat != nil && slices.ContainsFunc(o.Parts, func(p string) bool { return slices.Contains(t.Parts, p) })
}

func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}
