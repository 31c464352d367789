package report

import (
	"fmt"
	"math"
	"slices"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/quantity"
)

// The panels of the film over the months, in units of a drawing.
const (
	lifeLeft  = 34.0
	lifeRight = 330.0
	lifeTall  = 66.0
	lifeMost  = 72 // months shown at most
)

// drawLife draws the working film that is left over the months, low to high, for the zone that is worn through first and for the
// one that stands for the part; of a film that does not wear, the months for which it acts.
func (c *composer) drawLife(s antifoul.Scheme) {
	f := s.Lasts
	d := drawing{title: "How long it lasts: " + s.Part}
	d.body.w = columnWidth
	switch {
	case f.Coating.Key == "" || f.Life.High <= 0:
		return
	case !f.Coating.Wears() || len(f.Zones) == 0:
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
		for _, z := range zones {
			d.says = join(" ", d.says, c.lifePanel(&d.body, s, z, span))
		}
		d.body.h += 2
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

// lifePanel draws one zone below what is there, and says what it shows.
func (c *composer) lifePanel(k *canvas, s antifoul.Scheme, z wear.ZoneForecast, span int) string {
	f := s.Lasts
	type mark struct {
		month float64
		words string
	}
	var marks []mark
	shows := "worn through"
	if colour := c.under(s); colour != "" {
		shows = colour + " shows"
	}
	says := fmt.Sprintf("%s: %s to %s of working film at launch; %s after %s.", sentence(c.zone(z.Zone)), c.film(z.Film.Low), c.film(z.Film.High), shows, earliest(z.Months))
	if low := math.Floor(z.Months.Low); low <= float64(span) {
		marks = append(marks, mark{low, shows + " from month " + num(low)})
	}
	if typical := math.Floor(z.Months.Typical); typical <= float64(span) && typical > z.Months.Low {
		marks = append(marks, mark{typical, "typically month " + num(typical)})
	}
	if haul := haulMonth(f); haul > 0 && haul <= span {
		words := "paint again from " + f.NextHaul.String()
		marks = append(marks, mark{float64(haul), words})
		says += " " + sentence(words) + ", month " + itoa(haul) + "."
	}
	for _, m := range []int{12, 24, 36, 48, 60} {
		if left, ok := f.Left(z.Zone, float64(m)); ok && m <= span {
			says += fmt.Sprintf(" After %d months %s to %s are left.", m, c.film(math.Floor(left.Low)), c.film(math.Ceil(left.High)))
		}
	}
	slices.SortStableFunc(marks, func(a, b mark) int { return int(a.month - b.month) })
	k.h += lineHeight
	k.bold(0, k.h-2, start, sentence(c.zone(z.Zone)))
	top := k.h + float64(len(marks))*lineHeight + 3
	foot := top + lifeTall
	x := func(month float64) float64 { return lifeLeft + (lifeRight-lifeLeft)*month/float64(span) }
	y := func(um float64) float64 { return foot - lifeTall*um/z.Film.High }
	var upper, lower, typical []point
	for m := range span + 1 {
		left, _ := f.Left(z.Zone, float64(m))
		upper, lower, typical = append(upper, point{x(float64(m)), y(left.High)}), append(lower, point{x(float64(m)), y(left.Low)}), append(typical, point{x(float64(m)), y(left.Typical)})
	}
	slices.Reverse(lower)
	k.area(pen{tint: 0.16, width: -1}, append(slices.Clone(upper), lower...))
	k.line(pen{dash: "1.5 2"}, upper...)
	k.line(pen{}, typical...)
	k.line(pen{width: 1.6}, lower...)
	k.line(pen{}, point{lifeLeft, top}, point{lifeLeft, foot}, point{lifeRight, foot})
	k.text(lifeLeft-3, top+8, end, c.film(z.Film.High))
	k.text(lifeLeft-3, foot, end, "0")
	for m := 0; m <= span; m += 6 {
		k.line(pen{}, point{x(float64(m)), foot}, point{x(float64(m)), foot + pick2(m%12 == 0, 4, 2)})
		if m%12 == 0 {
			k.text(x(float64(m)), foot+14, middle, itoa(m))
		}
	}
	k.text(lifeRight+8, foot+14, end, "months")
	for i, m := range marks {
		base := k.h + float64(i+1)*lineHeight - 2
		k.line(pen{dash: "3 2"}, point{x(m.month), base + 2}, point{x(m.month), foot})
		if m.month > float64(span)*0.45 {
			k.text(x(m.month)+2, base, end, m.words)
		} else {
			k.text(x(m.month)-2, base, start, m.words)
		}
	}
	k.h = foot + 18
	return says
}

// under is the colour that shows when the working film is gone; empty where none was named.
func (c *composer) under(s antifoul.Scheme) string {
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
	k.rect(x(0), 16, x(low)-x(0), 14, pen{tint: 0.5})
	k.rect(x(low), 16, x(high)-x(low), 14, pen{})
	k.hatch(x(low), 16, x(high)-x(low), 14, 5, "")
	k.text(x(0), 11, start, "it acts")
	if high > low {
		k.text(x(high), 11, end, "perhaps")
	}
	for m := 0.0; m <= span; m += pick2(span > 60, 12, 6) {
		k.line(pen{}, point{x(m), 30}, point{x(m), 34})
		k.text(x(m), 44, middle, num(m))
	}
	k.text(x(span)+2, 56, end, "months from launch")
	says := "It acts for " + monthsRange(f.Life) + " from launch."
	k.h = 60
	if f.NextHaul.Given() {
		words := "Paint again from " + f.NextHaul.String()
		k.text(8, 56, start, words)
		says += " " + words + "."
	}
	return says
}
