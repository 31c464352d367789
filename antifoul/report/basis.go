package report

import (
	"fmt"
	"slices"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// law tells what the law screen found, for the chosen types and for what is on the boat.
func (c *composer) law() {
	items := c.findings(c.lawFindings(), finding.Fine)
	if len(items) == 0 {
		return
	}
	c.head(2, "Law")
	c.list(items)
	c.say("No legal advice: laws move. Check the rule in force where she is painted, kept and cleaned; the label of the tin decides who may apply it.")
}

// lawFindings are what the law screen found, each statement once.
func (c *composer) lawFindings() finding.List {
	var out finding.List
	var said []string
	add := func(f finding.Finding) {
		if text := c.job.Book.Say(f, c.units); !slices.Contains(said, text) {
			said, out = append(said, text), append(out, f)
		}
	}
	for _, s := range c.job.Schemes {
		for _, p := range c.job.Ranking.Parts {
			if p.Part != s.Part || s.Coating.Role == tables.Bare {
				continue
			}
			place, _ := p.Of(s.Coating.Key)
			for _, f := range place.Law() {
				add(f)
			}
		}
	}
	for _, f := range c.job.Legal {
		if f.Verdict > finding.Fine {
			add(f)
		}
	}
	return out
}

// basis lists what the report rests on: sources by number, doubts, own tables and overrides.
func (c *composer) basis() {
	c.head(2, "What this rests on")
	c.say("Numbers in square brackets are sources. “Common practice” has no source. “Assumption” is a working value of these tables, to be replaced by the paint's data sheet or the boat's own record. “From memory” was not looked up again. “Derived” is computed.")
	var items []string
	for i, from := range c.sources {
		text := from.key
		if s, err := c.job.Book.Source(from.key); err == nil {
			text = join(", ", s.Title, s.Edition, s.Note)
		}
		if len(from.places) > 0 {
			text += "; used here: " + strings.Join(from.places, "; ")
		}
		items = append(items, fmt.Sprintf("[%d] %s", i+1, text))
	}
	c.runOn(items)
	if len(c.doubts) > 0 {
		c.say("Doubts that come with the values used:")
		var doubts []string
		for _, d := range c.doubts {
			doubts = append(doubts, sentence(d))
		}
		c.runOn(doubts)
	}
	c.ownTables(false)
	var overrides []string
	for o := range c.job.Book.Overrides() {
		overrides = append(overrides, o)
	}
	if len(overrides) > 0 {
		c.say("Safety rows that an own table replaced, with the reason given:")
		c.list(overrides)
	}
}

// limits says what was not looked at.
func (c *composer) limits() {
	c.head(2, "Not inspected")
	c.list(c.limitItems())
}

// limitItems are what was not inspected, and for what the report holds.
func (c *composer) limitItems() []string {
	if c.job.Survey != nil {
		return c.looked() // what was not measured stands under the dry film
	}
	items := []string{
		"This is worked out from a boat file, by a program that has not seen the boat; what the file reports, readings and all, is taken as reported.",
		"Structure, blisters, corrosion under paint, fastenings, running gear and everything above the paint line were not looked at.",
		"No opinion is given on how long anything lasts beyond the ranges stated. This report holds for the day on which it was asked and for the tables named at the top.",
	}
	return append(items, c.unmeasured()...)
}

// unmeasured names the parts with films of no measured thickness, and which gauge could read there.
func (c *composer) unmeasured() []string {
	var order []string
	parts := map[string][]string{} // by what is said of them
	for _, p := range c.job.Boat.Parts {
		if !slices.ContainsFunc(p.Found, func(l compat.Layer) bool { return !l.Film.Low.Given() && l.Coating.Key != tables.BareSurface }) {
			continue
		}
		said := c.readable(p.Material)
		if len(parts[said]) == 0 {
			order = append(order, said)
		}
		parts[said] = append(parts[said], p.Name)
	}
	var out []string
	for _, said := range order {
		out = append(out, "Films of no measured thickness on "+and(parts[said])+": "+said)
	}
	return out
}

// readable says which gauge of dry film reads on the material.
func (c *composer) readable(material string) string {
	var reads, ask []string
	for _, x := range gauge.For(c.job.Book, material) {
		switch {
		case x.Tells != tables.TellsDry:
		case x.On(material) == finding.Ask:
			ask = append(ask, x.Name)
		default:
			reads = append(reads, x.Name)
		}
	}
	switch {
	case len(reads) > 0:
		return "measure them by " + strings.Join(reads, " or ") + "."
	case len(ask) > 0:
		return "no gauge is sure to read there; one that may, if its maker says so: " + strings.Join(ask, ", ") + "."
	}
	return "no gauge of dry film reads there."
}

// ownTables lists every cell that own tables replaced and every row that they added, those of one table and source together. In brief it counts the rows
// added.
func (c *composer) ownTables(brief bool) {
	type group struct {
		table, source string
		fresh         bool
	}
	var order []group
	rows := map[group][]string{}    // "key (field, field)" in the book's order
	fields := map[string][]string{} // of one row in one group
	for cell := range c.job.Book.OwnCells() {
		g := group{cell.Table, string(cell.Basis.Kind), cell.New}
		if cell.Basis.Source != "" {
			g.source += ": " + cell.Basis.Source
		}
		if _, known := rows[g]; !known {
			order = append(order, g)
		}
		row := fmt.Sprint(g, cell.Key)
		if _, known := fields[row]; !known {
			rows[g] = append(rows[g], cell.Key)
		}
		fields[row] = append(fields[row], cell.Field)
	}
	var replaced, added []string
	for _, g := range order {
		if g.fresh {
			what := strings.Join(rows[g], ", ")
			if brief {
				what = itoa(len(rows[g]))
			}
			added = append(added, fmt.Sprintf("%s: %s (%s)", sentence(spaced(g.table)), what, g.source))
			continue
		}
		for _, key := range rows[g] {
			replaced = append(replaced, fmt.Sprintf("%s %s: %s (%s)", sentence(spaced(g.table)), key, and(each(fields[fmt.Sprint(g, key)], spaced)), g.source))
		}
	}
	if len(replaced) > 0 {
		c.say("Values that own tables replaced:")
		c.list(replaced)
	}
	if len(added) > 0 {
		c.say("Rows that own tables added%s:", pick(brief, ", by number; the long report names them", ""))
		c.runOn(added)
	}
}

// spaced is a key of a table file as words.
func spaced(key string) string { return strings.ReplaceAll(key, "_", " ") }

func each(in []string, f func(string) string) []string {
	out := make([]string, len(in))
	for i, s := range in {
		out[i] = f(s)
	}
	return out
}
