package report

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// composer turns a job into blocks.
type composer struct {
	job     *antifoul.Job
	units   quantity.System
	blocks  []block
	sources []cited  // the sources cited so far; the number in brackets is the place in this list
	hold    string   // hold point of the coat told last
	rates   []string // wear rates told so far, by coating
	quiet   bool     // doubts are not noted: what is said is about types that are not used
	doubts  []string // doubts met so far, in order
	alone   bool     // the found half is told alone: nothing is planned
}

// cited is a source with the places in it that values were read from.
type cited struct {
	key    string
	places []string
}

func (c *composer) head(level int, text string) { c.blocks = append(c.blocks, heading{level, text}) }

func (c *composer) say(format string, a ...any) {
	c.blocks = append(c.blocks, para{fmt.Sprintf(format, a...)})
}

func (c *composer) list(items []string) {
	if len(items) > 0 {
		c.blocks = append(c.blocks, bullets{items: items})
	}
}

// runOn lists many short items, which run on in print.
func (c *composer) runOn(items []string) {
	if len(items) > 0 {
		c.blocks = append(c.blocks, bullets{items: items, runOn: true})
	}
}

func (c *composer) table(head []string, rows [][]string) {
	if len(rows) > 0 {
		c.blocks = append(c.blocks, table{head: head, rows: rows})
	}
}

// wideTable is a table that takes the whole width of a printed page.
func (c *composer) wideTable(head []string, rows [][]string) {
	if len(rows) > 0 {
		c.blocks = append(c.blocks, table{head, rows, true})
	}
}

// once leaves the first cells of a row empty where they are those of the row before.
func once(rows [][]string, cells int) [][]string {
	out := slices.Clone(rows)
	for i := 1; i < len(rows); i++ {
		if slices.Equal(rows[i][:cells], rows[i-1][:cells]) {
			out[i] = append(make([]string, cells), rows[i][cells:]...)
		}
	}
	return out
}

// finding says a finding and what it rests on.
func (c *composer) finding(f finding.Finding) string {
	return c.job.Book.Say(f, c.units) + c.rests(f)
}

// it says a finding of a coating that was just named.
func (c *composer) it(f finding.Finding) string {
	f.About = "it"
	return c.job.Book.Say(f, c.units)
}

// rests names the basis of a finding in brackets: a numbered source, or the kind of basis. Doubts are kept for the end.
func (c *composer) rests(f finding.Finding) string {
	bases := slices.Clone(f.Basis)
	if rule, err := c.job.Book.Rule(f.Rule); err == nil {
		bases = append(bases, rule.Basis())
	}
	var marks []string
	for _, b := range bases {
		m := string(b.Kind)
		switch {
		case b.Kind == finding.OwnTable:
			m = "own table: " + b.Source
		case b.Source != "":
			m = fmt.Sprintf("[%d]", c.cite(b))
		}
		if m != "" && !slices.Contains(marks, m) {
			marks = append(marks, m)
		}
		if b.Doubt != "" {
			c.doubt(b.Doubt)
		}
	}
	if len(marks) == 0 {
		return ""
	}
	return " (" + strings.Join(marks, "; ") + ")"
}

// cite returns the number of a basis' source, giving it the next one when it is new, and notes the place cited in it.
func (c *composer) cite(b finding.Basis) int {
	i := slices.IndexFunc(c.sources, func(s cited) bool { return s.key == b.Source })
	if i < 0 {
		i = len(c.sources)
		c.sources = append(c.sources, cited{key: b.Source})
	}
	if s := &c.sources[i]; b.Kind == finding.Published && b.Place != "" && !slices.Contains(s.places, b.Place) && !c.noted(b) {
		s.places = append(s.places, b.Place)
	}
	return i + 1
}

// noted reports whether the source's own row says already where it was read.
func (c *composer) noted(b finding.Basis) bool {
	s, err := c.job.Book.Source(b.Source)
	return err == nil && strings.Contains(join(", ", s.Title, s.Note), b.Place)
}

func (c *composer) doubt(d string) {
	if !c.quiet && !slices.Contains(c.doubts, d) {
		c.doubts = append(c.doubts, d)
	}
}

// findings says each finding of the list that is at least as bad as v.
func (c *composer) findings(fs finding.List, v finding.Verdict) []string {
	var out []string
	for _, f := range fs {
		if f.Verdict >= v {
			out = append(out, c.finding(f))
		}
	}
	return out
}

// under lists findings below a few words. What all of them rest on is said there, once.
func (c *composer) under(words string, fs []finding.Finding) {
	if len(fs) == 0 {
		return
	}
	var says, rests []string
	for _, f := range fs {
		says, rests = append(says, c.job.Book.Say(f, c.units)), append(rests, c.rests(f))
	}
	alike := len(slices.Compact(slices.Clone(rests))) == 1
	for i := range says {
		says[i] += pick(alike, "", rests[i])
	}
	c.say("%s%s:", words, pick(alike, rests[0], ""))
	c.list(says)
}

func (c *composer) colour(key string) string {
	if key == "" {
		return "–"
	}
	if k, err := c.job.Book.Colour(key); err == nil {
		return k.Name
	}
	return key
}

func (c *composer) zone(key string) string {
	if z, err := c.job.Book.Zone(key); err == nil {
		return z.Name
	}
	return key
}

func (c *composer) zones(keys []string) string {
	var out []string
	for _, k := range keys {
		out = append(out, c.zone(k))
	}
	return and(out)
}

// show writes any value in the reader's units.
func (c *composer) show(v any) string {
	if v == nil {
		return "–"
	}
	return tables.Show(v, c.units)
}

// area prints a range of areas, typical first.
func area(r quantity.Range[quantity.Area], s quantity.System) string {
	return spanOf(r, quantity.SquareMetre, 1, s)
}

// litres prints a range of volumes, typical first.
func litres(r quantity.Range[quantity.Volume], s quantity.System) string {
	return spanOf(r, quantity.Litre, 1, s)
}

// spanOf prints typical (low to high), each to the places given in the unit given, then in the reader's way.
func spanOf[D quantity.Dim](r quantity.Range[quantity.Amount[D]], u quantity.Unit[D], places int32, s quantity.System) string {
	if !r.Typical.Given() {
		return "–"
	}
	round := func(a quantity.Amount[D]) quantity.Amount[D] { return a.To(u, places, quantity.Nearest) }
	out := round(r.Typical).Show(s)
	if r.Low.Given() && r.High.Given() && !r.Low.Equal(r.High) {
		out += ", range " + quantity.ShowRange(quantity.Range[quantity.Amount[D]]{Low: round(r.Low), Typical: round(r.Typical), High: round(r.High)}, s)
	}
	return out
}

// earliest prints the low end of a wear range, rounded down, and the typical value. The far end is left out: no film is planned
// by the slowest wear there is.
func earliest(r quantity.Range[float64]) string {
	low, typical := int(math.Floor(r.Low)), int(math.Floor(r.Typical))
	switch {
	case low >= 60:
		return "five years or more"
	case typical >= 60:
		return plural(low, "month", "months") + " at the earliest, and lasts five years or more at typical wear"
	case low == typical:
		return "about " + plural(low, "month", "months")
	}
	return fmt.Sprintf("%s at the earliest, about %d at typical wear", plural(low, "month", "months"), typical)
}

// monthsRange prints calendar months, rounded down at the low end and up at the high end.
func monthsRange(r quantity.Range[float64]) string {
	low, high := int(math.Floor(r.Low)), int(math.Ceil(r.High))
	if high >= 120 {
		if low >= 120 {
			return "ten years or more"
		}
		return fmt.Sprintf("%d months to ten years or more", low)
	}
	if low == high {
		return plural(low, "month", "months")
	}
	return fmt.Sprintf("%d to %d months", low, high)
}

func hoursRange(r quantity.Range[float64]) string {
	f := func(x float64) string {
		if x < 10 {
			return strconv.FormatFloat(math.Ceil(x*2)/2, 'f', -1, 64)
		}
		return strconv.FormatFloat(math.Ceil(x), 'f', 0, 64)
	}
	if f(r.Low) == f(r.High) {
		return f(r.High) + " h"
	}
	return f(r.Low) + " to " + f(r.High) + " h"
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// and joins words as a sentence does.
func and(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

func sentence(s string) string {
	if s == "" {
		return s
	}
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}
