package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/quantity"
)

// The panels of the film over the months, in units of a drawing.
const (
	lifeAxis  = 42.0
	lifeRight = 330.0
	lifeTall  = 58.0
	lifeMost  = 72 // months shown at most
)

// drawLife draws the working film that is left over the months, low to high, for the zone that is worn through first and for the
// one that stands for the part; of a film that does not wear, the months for which it acts.
func (c *composer) drawLife(s antifoul.Scheme) {
	f := s.Lasts
	d := drawing{title: "How long it lasts: " + s.Part + ".", note: "Working film over the months afloat and ashore. Heavy line: fastest wear, by which she is planned; thin: typical; dots: slowest."}
	d.body.w = columnWidth
	switch {
	case f.Coating.Key == "" || f.Life.High <= 0:
		return
	case !f.Coating.Wears() || len(f.Zones) == 0:
		d.note = "Filled: it acts; hatched: perhaps."
		d.says = c.lifeBar(&d.body, f)
	default:
		zones := []wear.ZoneForecast{f.Zones[0]}
		if first, ok := f.First(); ok && first.Zone != zones[0].Zone {
			zones = append(zones, first)
		}
		span := 24
		for _, z := range zones {
			span = max(span, 12*int(math.Ceil(min(z.Months.Typical, lifeMost)/12))+6)
		}
		span = min(span, lifeMost)
		each := columnWidth / 2.0
		for i, z := range zones {
			d.says = join(" ", d.says, c.lifePanel(&d.body, s, z, span, each*float64(i), each*float64(i+1)-4, len(zones) == 1))
		}
	}
	c.blocks = append(c.blocks, d)
}

// film is a thickness in the reader's unit.
func (c *composer) film(um float64) string {
	if c.units == quantity.US {
		return fmt.Sprintf("%.1f mil", um/25.4)
	}
	return fmt.Sprintf("%.0f µm", um)
}

// mark is a month at which something is to be seen or done.
type mark struct {
	month int
	words string
}

// marks are those of one zone, in order.
func (c *composer) marks(s antifoul.Scheme, z wear.ZoneForecast, span int) []mark {
	shows := or(c.colourUnder(s), "the layer below") + " shows"
	var out []mark
	if low := int(z.Months.Low); low <= span {
		out = append(out, mark{low, shows + " earliest" + pick(z.First.Given(), ", "+z.First.String(), "")})
	}
	if typical := int(min(z.Months.Typical, 999)); typical <= span && typical > int(z.Months.Low) {
		out = append(out, mark{typical, shows + " typically"})
	}
	if haul := haulMonth(s.Lasts); haul > 0 && haul <= span {
		out = append(out, mark{haul, "paint again, " + s.Lasts.NextHaul.String()})
	}
	slices.SortStableFunc(out, func(a, b mark) int { return a.month - b.month })
	return out
}

// lifePanel draws one zone between left and right, with its head at the top of the drawing, and says what it shows. Alone it has its
// words at its right.
func (c *composer) lifePanel(k *canvas, s antifoul.Scheme, z wear.ZoneForecast, span int, left, right float64, alone bool) string {
	f := s.Lasts
	says := []string{fmt.Sprintf("%s: %s to %s of working film at launch.", sentence(c.zone(z.Zone)), c.film(z.Film.Low), c.film(z.Film.High))}
	for m := 12; m <= span; m += 12 {
		if at, ok := f.Left(z.Zone, float64(m)); ok {
			says = append(says, fmt.Sprintf("After %d months %s to %s are left.", m, c.film(math.Floor(at.Low)), c.film(math.Ceil(at.High))))
		}
	}
	plot := left + lifeAxis
	top, foot := 2*lineHeight+2, 2*lineHeight+2+lifeTall
	x := func(month int) float64 { return plot + (right-8-plot)*float64(month)/float64(span) }
	y := func(um float64) float64 { return foot - lifeTall*um/z.Film.High }
	k.bold(left, lineHeight-2, start, sentence(c.zone(z.Zone)))
	var upper, lower, typical []point
	for m := range span + 1 {
		at, _ := f.Left(z.Zone, float64(m))
		upper, lower, typical = append(upper, point{x(m), y(at.High)}), append(lower, point{x(m), y(at.Low)}), append(typical, point{x(m), y(at.Typical)})
	}
	slices.Reverse(lower)
	k.area(pen{tint: 0.16, width: -1}, append(slices.Clone(upper), lower...))
	k.line(pen{dash: "1.5 2"}, upper...)
	k.line(pen{}, typical...)
	k.line(pen{width: 1.8}, lower...)
	k.line(pen{}, point{plot, top}, point{plot, foot}, point{x(span), foot})
	k.text(plot-3, top+7, end, c.film(z.Film.High))
	k.text(plot-3, foot, end, "0")
	for m := 0; m <= span; m += 6 {
		k.line(pen{}, point{x(m), foot}, point{x(m), foot + pick[float64](m%12 == 0, 4, 2)})
		if m%pick(span > 48, 24, 12) == 0 {
			k.text(x(m), foot+14, middle, itoa(m)+pick(m == 0, " months", ""))
		}
	}
	at, legend := foot+2*lineHeight+3, left
	if alone { // there is room beside it
		at, legend = top+lineHeight, right+8
	}
	marks := c.marks(s, z, span)
	for i, m := range marks {
		k.line(pen{dash: "3 2"}, point{x(m.month), top - 1}, point{x(m.month), foot})
		side := middle
		switch {
		case i+1 < len(marks) && x(marks[i+1].month)-x(m.month) < 16:
			side = end
		case i > 0 && x(m.month)-x(marks[i-1].month) < 16:
			side = start
		}
		if i == 0 || m.month != marks[i-1].month {
			k.text(x(m.month), top-3, side, itoa(m.month))
		}
		words := "Month " + itoa(m.month) + ": " + m.words
		says = append(says, words+".")
		at = k.lines(legend, at, start, fit(words, right-left-4))
	}
	k.h = max(k.h, at-lineHeight+5, foot+lineHeight+6)
	return strings.Join(says, " ")
}

// colourUnder is the colour that shows when the working film is gone; empty where none was named.
func (c *composer) colourUnder(s antifoul.Scheme) string {
	for i := len(s.Key) - 1; i > 0; i-- {
		if s.Key[i].Layer.For == compat.Working && s.Key[i-1].Layer.Colour != "" {
			return c.colour(s.Key[i-1].Layer.Colour)
		}
	}
	return ""
}

// haulMonth is the calendar month after launch in which she is painted again; 0 where no date is known.
func haulMonth(f wear.Forecast) int {
	if !f.NextHaul.Given() || !f.Launch.Given() {
		return 0
	}
	for n := 1; n <= 120; n++ {
		if !f.Launch.AddMonths(n).Before(f.NextHaul) {
			return n
		}
	}
	return 0
}

// lifeBar draws the months for which a film acts that does not wear away.
func (c *composer) lifeBar(k *canvas, f wear.Forecast) string {
	low, high := math.Floor(f.Life.Low), math.Ceil(min(f.Life.High, 120))
	span := max(12, 12*math.Ceil(high/12))
	x := func(month float64) float64 { return 8 + (lifeRight-8)*month/span }
	k.rect(x(0), 4, x(low)-x(0), 14, pen{tint: 0.5})
	k.rect(x(low), 4, x(high)-x(low), 14, pen{})
	k.hatch(x(low), 4, x(high)-x(low), 14, 5, "")
	for m := 0.0; m <= span; m += pick[float64](span > 60, 12, 6) {
		k.line(pen{}, point{x(m), 18}, point{x(m), 22})
		k.text(x(m), 32, middle, num(m))
	}
	k.text(x(span)+8, 44, end, "months from launch")
	says := "It acts for " + monthsRange(f.Life) + " from launch."
	k.h = 48
	if f.NextHaul.Given() {
		words := "Paint again from " + f.NextHaul.String()
		k.text(8, 44, start, words)
		says += " " + words + "."
	}
	return says
}
