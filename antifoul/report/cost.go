package report

import (
	"fmt"
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
	c.say("In %s, by the prices of the own tables. Each line is a number times a price, rounded to the cent; a range stands behind the typical money. The sums add the lines.", c.currency())
	c.table([]string{"What", "The owner does the work", "Money", "The yard does the work", "Money"}, c.sideBySide(k.Owner, k.Yard))
	c.unpriced(k.Owner, k.Yard)
	c.list(c.findings(k.Findings, finding.Fine))
	if r, y := k.RainOwner, k.RainYard; r.Net.Typical.Given() || y.Net.Typical.Given() {
		c.say("A lost week of rain adds %s where the owner does the work, %s where the yard does: %s.", money(r.Net), money(y.Net), strings.Join(lineNames(y), "; "))
	}
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

// sideBySide puts two bills beside each other, line by line, with their sums.
func (c *composer) sideBySide(owner, yard cost.Bill) [][]string {
	var rows [][]string
	for _, l := range owner.Lines {
		row := []string{sentence(l.Name), reckoned(l), money(l.Money), "–", "–"}
		if !l.Priced() && l.Of == tables.PricedLabour {
			row[1] = numbers(l.Count) + " own hours"
		}
		if i := slices.IndexFunc(yard.Lines, func(o cost.Line) bool { return o.Name == l.Name }); i >= 0 {
			row[3], row[4] = reckoned(yard.Lines[i]), money(yard.Lines[i].Money)
		}
		if row[2] != "–" || row[4] != "–" {
			rows = append(rows, row)
		}
	}
	for _, l := range yard.Lines {
		if l.Priced() && !slices.ContainsFunc(owner.Lines, func(o cost.Line) bool { return o.Name == l.Name }) {
			rows = append(rows, []string{sentence(l.Name), "–", "–", reckoned(l), money(l.Money)})
		}
	}
	share := func(b cost.Bill) string {
		return fmt.Sprintf("%g %%, %g to %g %%", b.Share.Typical, b.Share.Low, b.Share.High)
	}
	rows = append(rows, []string{"Sum", "", money(owner.Net), "", money(yard.Net)})
	if owner.Contingency.Typical.Given() || yard.Contingency.Typical.Given() {
		rows = append(rows, []string{"Set aside for the unforeseen", share(owner), money(owner.Contingency), share(yard), money(yard.Contingency)},
			[]string{"Total", "", money(owner.Total), "", money(yard.Total)})
	}
	return rows
}

// sum writes number × price of a line.
func reckoned(l cost.Line) string {
	switch {
	case !l.Priced():
		return "no price known"
	case !l.Each.Typical.Given():
		return "cans, as under What to buy"
	}
	return numbers(l.Count) + " " + unitWord(l.Per) + " at " + moneyRange(l.Each)
}

// unitWord is the unit of a price as a bill writes it.
func unitWord(per string) string {
	switch per {
	case cost.Job:
		return "×"
	case "m2":
		return "m²"
	case "m and day":
		return "m × days"
	case "day":
		return "days"
	}
	return per
}

// numbers writes the numbers of units: the typical one, and its ends in brackets.
func numbers(r quantity.Range[decimal.Decimal]) string {
	if r.Low.Equal(r.High) {
		return r.Typical.String()
	}
	return r.Typical.String() + " (" + r.Low.String() + " to " + r.High.String() + ")"
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
			if r == "" || r == cost.RuleNoPrice && l.Of == tables.PricedLabour && b.By == cost.Owner || slices.Contains(names[r], l.Name) {
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

func lineNames(b cost.Bill) []string {
	var out []string
	for _, l := range b.Lines {
		if l.Priced() {
			out = append(out, l.Name+", "+numbers(l.Amount)+" "+l.Unit)
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
			sentence(x.Part), money(x.Recoat.Net), c.show(c.job.Costs.Over), money(x.Strip.Net), x.Recoat.By))
	}
	c.list(items)
}

// typeCosts tells what each type that may be used costs a year on the hull, the cheapest first.
func (c *composer) typeCosts() {
	k := c.job.Costs
	var rows [][]string
	lacks := false
	for i, t := range k.Types {
		if !t.AYear.Typical.Given() {
			continue
		}
		name := t.Coating.Name
		if t.Lacks {
			name, lacks = name+" *", true
		}
		rows = append(rows, []string{
			itoa(i + 1), name, fmt.Sprintf("%d, %s", t.Rank, t.Tier), counts(t.Jobs), money(t.First.Net), orDash(money(t.Later.Net), t.Jobs.High > 1), money(t.Between.Net), money(t.AYear),
		})
	}
	if len(rows) == 0 {
		return
	}
	c.head(3, "What each type costs a year")
	c.say("A second order, beside suitability and not mixed with it: the hull alone, over %s, by the %s's prices, without what is set aside. A year = (first job + later jobs + lifts, cleaning and strips) / years. "+
		"Jobs follow from how long the type lasts; the low end goes with the long life. The later jobs go over the type itself.", c.show(k.Over), k.By)
	c.table([]string{"By cost", "Type", "By suitability", "Jobs", "First job", "Each later job", "Lifts, cleaning, strips", "A year"}, rows)
	if lacks {
		c.say("* Something of it has no price, so its sum is too low.")
	}
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
