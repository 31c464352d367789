package report

import (
	"strconv"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// layers tells the scheme of each part, from what stays to the last working coat.
func (c *composer) layers() {
	for _, s := range c.job.Schemes {
		if len(s.Stack) == 0 {
			continue
		}
		c.head(2, "Layers: "+s.Part)
		c.layerTable(s)
		c.drawSection(s)
		var notes []string
		for _, f := range s.Findings {
			if f.Verdict > finding.Fine || strings.HasPrefix(string(f.Rule), "scheme-") { // pairs that are fine need no words
				notes = append(notes, c.finding(f))
			}
		}
		c.list(notes)
	}
}

func (c *composer) layerTable(s antifoul.Scheme) {
	var rows [][]string
	n := 0
	for _, l := range s.Stack {
		if l.For == compat.Found || l.For == "" {
			rows = append(rows, []string{"stays", l.Coating.Name, c.colour(l.Colour), "as found", "", filmOf(l, c.units), "", "", ""})
		}
	}
	for _, k := range s.Coats {
		n++
		rows = append(rows, []string{
			strconv.Itoa(n), k.Layer.Coating.Name + purpose(k.Layer.For), c.colour(k.Layer.Colour), c.where(s, k), strconv.Itoa(k.Layer.Coats),
			quantity.ShowRange(k.Film, c.units), wet(k.Wet, c.units), litres(k.Litres, c.units), window(k.Layer, c.units),
		})
	}
	c.table([]string{"No.", "Layer", "Colour", "Where", "Coats", "Dry film a coat", "Wet film a coat", "Litres", "Next coat"}, rows)
}

// where names the zones of a coat, where they are not all of the part.
func (c *composer) where(s antifoul.Scheme, k antifoul.Coat) string {
	for _, a := range c.job.Areas {
		if a.Part == s.Part && len(a.Zones) == len(k.Zones) {
			return "all over"
		}
	}
	return c.zones(k.Zones)
}

func wet(f quantity.Film, s quantity.System) string {
	if !f.Given() {
		return ""
	}
	return f.To(quantity.Micrometre, 0, quantity.Nearest).Show(s)
}

func purpose(p compat.Purpose) string {
	switch p {
	case compat.Signal:
		return ", signal coat"
	case compat.Extra:
		return ", extra coat"
	case compat.Working:
		return ", working coats"
	default: // the name of an undercoat says what it is for
		return ""
	}
}

// window tells when the next coat may follow.
func window(l compat.Layer, s quantity.System) string {
	k := l.Coating
	if !k.OvercoatMin.Given() {
		return ""
	}
	out := "after " + k.OvercoatMin.Show(s)
	if k.OvercoatMax.Given() {
		out += ", by " + k.OvercoatMax.Show(s)
		if k.AntifoulMax.Given() {
			out += ", antifouling by " + k.AntifoulMax.Show(s)
		}
		out += ", past that abrade"
	} else {
		out += ", no limit"
	}
	if k.At.Given() {
		out += ", at " + k.At.Show(s)
	}
	return out
}
