package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// costs tells what the job comes to by own prices, line by line, and what each type costs a year.
func (c *composer) costs() {
	k := c.job.Costs
	if !k.Reckoned() {
		return
	}
	c.head(2, "What it comes to")
	c.say("In %s, by the prices of the own tables, with low and high end in brackets. Each line is a number times a price, low with low and high with high, rounded to the cent; the sums add the lines. A dash is work that is not paid, or has no price.", c.currency())
	c.table([]string{"What", "Number and price", "The owner does the work", "The yard does the work"}, c.sideBySide(k.Owner, k.Yard))
	c.unpriced(k.Owner, k.Yard)
	c.list(c.findings(k.Findings, finding.Fine))
	c.rainCosts(k.RainOwner, k.RainYard)
	c.courseCosts()
	c.typeCosts()
}

func (c *composer) currency() string {
	for _, b := range []cost.Bill{c.job.Costs.Yard, c.job.Costs.Owner} {
		if b.Net.Typical.Given() {
			return b.Net.Typical.Currency()
		}
	}
	return "money"
}

// rainCosts tells what a lost week adds.
func (c *composer) rainCosts(owner, yard cost.Bill) {
	o, y := money(owner.Net), money(yard.Net)
	if o == "–" && y == "–" {
		return
	}
	of := strings.Join(c.priced(yard), "; ")
	if o == y {
		c.say("A lost week of rain adds %s, whoever does the work: %s.", o, of)
		return
	}
	c.say("A lost week of rain adds %s where the owner does the work; %s where the yard does: %s.", o, y, of)
}

// sideBySide puts two bills beside each other, line by line, with their sums.
func (c *composer) sideBySide(owner, yard cost.Bill) [][]string {
	var rows [][]string
	for _, l := range owner.Lines {
		i := slices.IndexFunc(yard.Lines, func(o cost.Line) bool { return o.Name == l.Name })
		if i < 0 {
			if l.Priced() {
				rows = append(rows, []string{sentence(l.Name), c.reckoned(l), money(l.Money), "–"})
			}
			continue
		}
		if y := yard.Lines[i]; l.Priced() || y.Priced() {
			rows = append(rows, []string{sentence(l.Name), c.reckonedFor(l, y), money(l.Money), money(y.Money)})
		}
	}
	for _, l := range yard.Lines {
		if l.Priced() && !slices.ContainsFunc(owner.Lines, func(o cost.Line) bool { return o.Name == l.Name }) {
			rows = append(rows, []string{sentence(l.Name), c.reckoned(l), "–", money(l.Money)})
		}
	}
	share := func(b cost.Bill) string {
		return fmt.Sprintf("%g %% (%g to %g %%)", b.Share.Typical, b.Share.Low, b.Share.High)
	}
	rows = append(rows, []string{"Sum", "", money(owner.Net), money(yard.Net)})
	if owner.Contingency.Typical.Given() || yard.Contingency.Typical.Given() {
		rows = append(rows, []string{"Set aside for the unforeseen", share(pick(yard.Contingency.Typical.Given(), yard, owner)), money(owner.Contingency), money(yard.Contingency)},
			[]string{"Total", "", money(owner.Total), money(yard.Total)})
	}
	return rows
}

// reckonedFor writes number × price of one line of both bills: once where they are alike or one of them has no money by the same number.
func (c *composer) reckonedFor(owner, yard cost.Line) string {
	o, y := c.reckoned(owner), c.reckoned(yard)
	switch {
	case o == y || !owner.Priced() && owner.Per == yard.Per:
		return y
	case !yard.Priced() && owner.Per == yard.Per:
		return o
	case !owner.Priced():
		return "yard " + y + "; owner " + unitsOf(owner)
	case !yard.Priced():
		return "owner " + o + "; yard " + unitsOf(yard)
	}
	return "owner " + o + "; yard " + y
}

// reckoned writes number × price of a line, so that it can be followed with a pencil.
func (c *composer) reckoned(l cost.Line) string {
	switch {
	case !l.Priced():
		return unitsOf(l) + ", no price known"
	case !l.Each.Typical.Given():
		return c.canPrices(l)
	}
	times, length := l.Count.Typical, ""
	if x := c.job.Boat.Craft().Length; x.Given() {
		length = x.In(quantity.Metre, 2, quantity.Nearest).String() + " m"
	}
	count := unitsOf(l)
	switch {
	case l.Per == l.Unit:
	case l.Per == "m" && l.Amount.Low.Equal(l.Amount.High):
		count = pick(l.Amount.Typical.Equal(decimal.NewFromInt(1)), "", l.Amount.Typical.String()+" × ") + length
	case l.Per == "m and day" && l.Amount.Low.Equal(l.Amount.High):
		count = length + " × " + l.Amount.Typical.String() + pick(times.Equal(decimal.NewFromInt(1)), " day", " days")
	}
	return count + " at " + moneyRange(l.Each)
}

// unitsOf writes the number of units of a line's price: the typical one with its unit, and the ends in brackets.
func unitsOf(l cost.Line) string {
	one := l.Count.Typical.Equal(decimal.NewFromInt(1)) && l.Count.Low.Equal(l.Count.High)
	unit := l.Per
	switch l.Per {
	case cost.Job:
		return pick(one, "once", numbers(l.Count, " times"))
	case "m2":
		unit = "m²"
	case "m and day":
		unit = "m × days"
	case "day", "days":
		unit = pick(one, "day", "days")
	case "piece", "pair":
		unit += pick(one, "", "s")
	}
	return numbers(l.Count, " "+unit)
}

// canPrices writes the cans of a line, whose prices chose them.
func (c *composer) canPrices(l cost.Line) string {
	var out []string
	for _, g := range c.job.Buy {
		if g.Coating.Key != l.What || !strings.HasSuffix(l.Name, pick(g.Colour == "", "", ", "+c.colour(g.Colour))) {
			continue
		}
		for _, i := range g.Items {
			if !i.Can.Price.Given() {
				return "cans, as under What to buy"
			}
			out = append(out, fmt.Sprintf("%d × %s at %s", i.Count, i.Can.Size, i.Can.Price.Amount().StringFixed(2)))
		}
	}
	if len(out) == 0 {
		return "cans, as under What to buy"
	}
	return strings.Join(out, "; ")
}

// numbers writes a number of units: the typical one, and its ends in brackets.
func numbers(r quantity.Range[decimal.Decimal], unit string) string {
	if r.Low.Equal(r.High) {
		return r.Typical.String() + unit
	}
	return r.Typical.String() + unit + " (" + r.Low.String() + " to " + r.High.String() + ")"
}

// money writes typical money and its ends, without the currency.
func money(r quantity.Range[quantity.Money]) string {
	if !r.Typical.Given() {
		return "–"
	}
	return moneyRange(r)
}

func moneyRange(r quantity.Range[quantity.Money]) string {
	n := func(m quantity.Money) string { return m.Amount().StringFixed(max(2, -m.Amount().Exponent())) }
	if r.Low.Equal(r.High) {
		return n(r.Typical)
	}
	return n(r.Typical) + " (" + n(r.Low) + " to " + n(r.High) + ")"
}

// unpriced lists what has no money in either bill, each reason once.
func (c *composer) unpriced(bills ...cost.Bill) {
	var rules []finding.ID
	names := map[finding.ID][]string{}
	why := map[finding.ID]finding.Finding{}
	for _, b := range bills {
		for _, l := range b.Lines {
			r := l.Why.Rule
			if r == "" || r == cost.RuleNoPrice && l.Of == tables.PricedLabour && b.By == tables.ByOwner || slices.Contains(names[r], l.Name) {
				continue // the owner's own hours have their sentence
			}
			if !slices.Contains(rules, r) {
				rules, why[r] = append(rules, r), l.Why
			}
			names[r] = append(names[r], l.Name)
		}
	}
	var items []string
	for _, r := range rules {
		f := why[r]
		f.About = strings.Join(names[r], "; ")
		items = append(items, c.finding(f))
	}
	c.list(items)
}

// priced writes the lines of a bill that have money, each with number and price.
func (c *composer) priced(b cost.Bill) []string {
	var out []string
	for _, l := range b.Lines {
		if l.Priced() {
			out = append(out, l.Name+", "+c.reckoned(l))
		}
	}
	return out
}

// courseCosts tells recoating now against stripping now, in money.
func (c *composer) courseCosts() {
	var items []string
	for _, x := range c.job.Costs.Courses {
		if !x.Recoat.Net.Typical.Given() || !x.Strip.Net.Typical.Given() {
			continue
		}
		items = append(items, fmt.Sprintf("%s: going on over the old film comes to %s over %s, with the strip where it falls within them; stripping now to %s. The work on the old film alone, by the %s's prices.",
			sentence(x.Part), money(x.Recoat.Net), c.years(c.job.Costs.Over), money(x.Strip.Net), x.Recoat.By))
	}
	c.list(items)
}

// typeCosts tells what each type that may be used costs a year on the hull, the cheapest first. Types whose money is alike share a row.
func (c *composer) typeCosts() {
	k := c.job.Costs
	type row struct {
		place int
		names []string // each with its place and tier by suitability
		cells []string // from the number of jobs on
	}
	var rows []row
	lacks, place := false, 0
	var last quantity.Money
	for i, t := range k.Types {
		year := t.AYear.Typical
		if !year.Given() {
			continue
		}
		if i == 0 || !year.Equal(last) {
			place, last = i+1, year
		}
		name := fmt.Sprintf("%s (%d, %s)", t.Coating.Name, t.Rank, t.Tier)
		if t.Lacks {
			name, lacks = name+" *", true
		}
		cells := []string{counts(t.Jobs), money(t.First.Net), orDash(money(t.Later.Net), t.Jobs.High > 1), money(t.Between.Net), money(t.AYear)}
		if at := slices.IndexFunc(rows, func(r row) bool { return slices.Equal(r.cells, cells) }); at >= 0 {
			rows[at].names = append(rows[at].names, name)
			continue
		}
		rows = append(rows, row{place, []string{name}, cells})
	}
	if len(rows) == 0 {
		return
	}
	shared := func(r row) bool {
		return len(r.names) > 1 || slices.ContainsFunc(rows, func(o row) bool { return o.place == r.place && o.names[0] != r.names[0] })
	}
	var out [][]string
	for _, r := range rows {
		out = append(out, append([]string{itoa(r.place) + pick(shared(r), " =", ""), strings.Join(r.names, "; ")}, r.cells...))
	}
	c.head(3, "What each type costs a year")
	c.say("A second order, beside suitability and not mixed with it: the hull alone, over %s, priced with the %s doing the work, without what is set aside. A year = (first job + later jobs + lifts, cleaning and strips) / years. "+
		"Jobs follow from how long the type lasts; the low end goes with the long life. The later jobs go over the type itself. Types with the same sums share a row; = shares its place.", c.years(k.Over), k.By)
	c.say("The cheapest first:")
	c.wideTable([]string{"By cost", "Type (by suitability)", "Jobs", "First job", "Each later job", "Lifts, cleaning, strips", "A year"}, out)
	if lacks {
		c.say("* Something of it has no price, so its sum is too low.")
	}
}

// years writes months as years where they are whole ones.
func (c *composer) years(m quantity.Months) string {
	if n := m.Float(quantity.Month) / 12; n == math.Trunc(n) {
		return plural(int(n), "year", "years")
	}
	return c.show(m)
}

func counts(r quantity.Range[int]) string {
	if r.Low == r.High {
		return itoa(r.Low)
	}
	return fmt.Sprintf("%d (%d to %d)", r.Typical, r.Low, r.High)
}

func orDash(s string, ok bool) string {
	if !ok {
		return "–"
	}
	return s
}
