package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// choice tells, part by part, why the type comes first, which others would do, and why the rest are out.
func (c *composer) choice() {
	for _, p := range c.job.Ranking.Parts {
		if len(p.Places) == 0 {
			continue
		}
		c.head(2, "Why: "+p.Part)
		if other, few := c.unlikeHull(p); few {
			tail := "."
			if len(other) > 0 {
				tail = ", but for these:"
			}
			c.say("Type by type the ranking of this part is that of the hull, with the same points and reasons%s", tail)
			c.list(other)
			continue
		}
		c.say("%s", strings.Join(c.findings(p.InWords(), finding.Fine), " "))
		if s, ok := c.job.Scheme(p.Part); ok {
			place, _ := p.Of(s.Coating.Key)
			c.why(place)
		} else {
			c.say("%s", sentence(c.nothing(p)))
		}
		c.alternatives(p)
		c.firm(p)
		c.ruledOut(p)
		c.lifts(p)
	}
}

// unlikeHull tells the types that stand otherwise on a part than on the hull; few is false when they are many, or when the part
// does not get the hull's type.
func (c *composer) unlikeHull(p antifoul.PartRanking) (other []string, few bool) {
	hull := c.job.Ranking.Hull()
	mine, ok := c.job.Scheme(p.Part)
	theirs, okHull := c.job.Scheme(hull.Part)
	if p.Part == hull.Part || !ok || !okHull || mine.Coating.Key != theirs.Coating.Key {
		return nil, false
	}
	for _, x := range p.Places {
		y, found := hull.Of(x.Key)
		if found && x.Tier == y.Tier && (x.Tier >= antifoul.Unsuited || x.Score == y.Score) && c.outBecause(x, "it") == c.outBecause(y, "it") {
			continue
		}
		other = append(other, fmt.Sprintf("%s: %s, %.1f points. %s", sentence(x.Name), x.Tier, x.Score, c.outBecause(x, "it")))
	}
	return other, len(other) <= 6
}

// why lists the criteria of the chosen type with the boat's number, the type's number and what each added or took.
func (c *composer) why(p antifoul.Place) {
	c.say("%s. Tier: %s; %.1f of 100 points inside it.", sentence(p.Name), p.Tier, p.Score)
	c.list(c.findings(p.Past, finding.Fine))
	c.list(c.findings(p.Findings(), finding.Caution))
	var rows [][]string
	var said []string
	for _, k := range p.Criteria() {
		row, err := c.job.Book.Criterion(k.Key)
		if err != nil || math.Abs(k.Points) < 0.05 && !k.Judged {
			continue
		}
		rows = append(rows, []string{row.Name, c.show(k.Boat), c.show(k.Type), points(k.Points)})
		if k.Finding.Rule != "" {
			said = append(said, c.it(k.Finding)+c.rests(k.Finding))
		}
	}
	c.say("What the score is made of (50 is neutral; each line adds or takes):")
	c.table([]string{"Criterion", "Boat", "Type", "Points"}, rows)
	c.list(said)
}

// points rounds to one decimal and never prints a minus nought.
func points(x float64) string {
	x = math.Round(x*10) / 10
	if x == 0 {
		return "0.0"
	}
	s := strconv.FormatFloat(x, 'f', 1, 64)
	if x > 0 {
		return "+" + s
	}
	return s
}

// alternatives lists the types that may be used, in order, with the reason that counts most against each.
func (c *composer) alternatives(p antifoul.PartRanking) {
	var rows [][]string
	for _, x := range p.Places {
		if x.Tier > antifoul.AskFirst {
			break
		}
		rank := strconv.Itoa(x.Rank)
		if x.Tied {
			rank += " ="
		}
		rows = append(rows, []string{rank, x.Name, tierAnd(x), fmt.Sprintf("%.1f", x.Score), first(x), c.against(x)})
	}
	if len(rows) == 0 {
		return
	}
	c.say("Types that may be used, in order (= shares its place; ask = a question of law stands open, see Law):")
	c.table([]string{"Place", "Type", "Tier", "Points", "Work first", "What speaks most against it"}, rows)
}

// The draws by which a report tells how firm a choice is, and how many types behind the first it tells of.
const (
	draws  = 500
	seed   = 1
	rivals = 3
)

// firm tells how firm the first place is, and what would change it.
func (c *composer) firm(p antifoul.PartRanking) {
	var told []finding.Finding // of the same share, once
	for _, l := range p.Closeness(draws, seed, rivals).Rows {
		at := slices.IndexFunc(told, func(f finding.Finding) bool {
			f.Against = l.Finding.Against
			return c.job.Book.Say(f, c.units) == c.job.Book.Say(l.Finding, c.units)
		})
		if at < 0 {
			told = append(told, l.Finding)
			continue
		}
		told[at].Against += "; " + l.Finding.Against
	}
	c.under("How firm that is, with the wear, the life and the hours of work drawn from their ranges", told)
	var swaps []finding.Finding
	for _, s := range p.Swaps() {
		swaps = append(swaps, s.Finding)
	}
	c.under("What would change it, one fact at a time and all else as it is", swaps)
}

// lifts tells what would bring a ruled-out type back, by the fact that would.
func (c *composer) lifts(p antifoul.PartRanking) {
	type lifted struct {
		f     finding.Finding
		names []string
	}
	var all []lifted
	for _, x := range p.Lifts() {
		at := slices.IndexFunc(all, func(l lifted) bool { return c.sameTurn(l.f, x.Finding) })
		if at < 0 {
			at, all = len(all), append(all, lifted{f: x.Finding})
		}
		all[at].names = append(all[at].names, x.Finding.About)
	}
	var fs []finding.Finding
	for _, l := range all {
		l.f.About = strings.Join(l.names, "; ")
		fs = append(fs, l.f)
	}
	c.under("What would let a type in that her use rules out, where one fact is enough", fs)
}

// sameTurn reports whether two findings turn the same fact to the same value.
func (c *composer) sameTurn(a, b finding.Finding) bool {
	a.About, b.About = "", ""
	return c.job.Book.Say(a, c.units) == c.job.Book.Say(b, c.units)
}

// first names the work that the way to the type takes, beyond washing.
func first(p antifoul.Place) string {
	var out []string
	for _, s := range p.Route().Steps {
		if s.Do != finding.Wash && !slices.Contains(out, string(s.Do)) {
			out = append(out, string(s.Do))
		}
	}
	if len(out) == 0 {
		return "wash"
	}
	return strings.Join(out, ", ")
}

// tierAnd is the tier's word, with a mark where a question stands open.
func tierAnd(p antifoul.Place) string {
	if p.Tier != antifoul.AskFirst && len(p.Asks()) > 0 {
		return p.Tier.String() + ", ask"
	}
	return p.Tier.String()
}

// against is the sentence of the criterion that took most; the work of the route has its own column.
func (c *composer) against(p antifoul.Place) string {
	least := antifoul.Criterion{}
	for _, k := range p.Criteria() {
		if k.Finding.Rule != "" && k.Key != "work" && k.Value < 0.5 && k.Points < least.Points {
			least = k
		}
	}
	if least.Finding.Rule == "" {
		return "–"
	}
	return c.it(least.Finding)
}

// ruledOut lists every type that is unsuited or forbidden, with all of its reasons. Types that are out for the very same reasons
// stand together. On a part other than the hull, types that are out for the very reasons for which they are out on the hull are
// only named.
func (c *composer) ruledOut(p antifoul.PartRanking) {
	hull := c.job.Ranking.Hull()
	for _, tier := range []antifoul.Tier{antifoul.Unsuited, antifoul.Barred} {
		var order, same []string
		groups := map[string][]antifoul.Place{}
		for _, x := range p.Places {
			if x.Tier != tier {
				continue
			}
			why := c.outBecause(x, "it")
			if y, ok := hull.Of(x.Key); ok && p.Part != hull.Part && y.Tier == tier && c.outBecause(y, "it") == why {
				same = append(same, x.Name)
				continue
			}
			if len(groups[why]) == 0 {
				order = append(order, why)
			}
			groups[why] = append(groups[why], x)
		}
		var items []string
		for _, why := range order {
			g := groups[why]
			var names []string
			for _, x := range g {
				names = append(names, x.Name)
			}
			if len(g) > 1 {
				why = c.outBecause(g[0], "each")
			}
			items = append(items, sentence(strings.Join(names, "; "))+": "+why)
		}
		if len(same) > 0 {
			items = append(items, "For the same reasons as on the hull: "+strings.Join(same, "; ")+".")
		}
		if len(items) == 0 {
			continue
		}
		if tier == antifoul.Unsuited {
			c.say("Allowed, but the use speaks against them:")
		} else {
			c.say("Forbidden here:")
		}
		c.list(items)
	}
}

// outBecause says every reason that rules a type out, calling it by the word given.
func (c *composer) outBecause(p antifoul.Place, name string) string {
	defer func(was bool) { c.quiet = was }(c.quiet)
	c.quiet = true
	var out []string
	for _, f := range p.Reasons() {
		f.About = name
		out = append(out, c.job.Book.Say(f, c.units)+c.rests(f))
	}
	return strings.Join(out, " ")
}
