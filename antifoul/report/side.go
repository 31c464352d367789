package report

import (
	"fmt"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/quantity"
)

// The side of the hull, in units of a drawing.
const (
	sideLeft  = 26.0
	sideWide  = 300.0
	sideWater = 36.0 // from the top down to the waterline
	sideDeep  = 62.0
	mostStood = 12 // stands or blocks drawn at most
)

// zoned is one zone of one part with its number in the drawing; 0: it is not drawn.
type zoned struct {
	number int
	zone   string
	at     point
	label  float64 // x of its number
	words  string
	extra  bool
}

// drawSide draws the side of the hull with its zones, what they get, and where she stands. It is schematic, by the kind of hull.
func (c *composer) drawSide() {
	form, err := c.job.Book.HullForm(c.job.Boat.Hull.Kind)
	if err != nil || len(c.job.Areas) == 0 {
		return
	}
	s := sideShape(form.Key)
	zones := c.zoned(s)
	d := drawing{title: "The side of the hull.", note: "Schematic for a " + form.Name + ", not to scale."}
	k := &d.body
	k.w = columnWidth
	at := func(p point) point { return point{sideLeft + sideWide*p.x, sideWater + sideDeep*p.y} }
	k.outlines(s, at, zones)
	stands := c.drawStands(k, s, at)
	y := sideWater + sideDeep + 26
	var said []string
	for _, z := range zones {
		if z.number > 0 {
			p := at(z.at)
			k.line(pen{width: 0.6}, point{z.label, 18}, p)
			k.circle(p.x, p.y, 1.5, pen{tint: 1, width: -1})
			k.out.WriteString(`<circle cx="` + num(z.label) + `" cy="11" r="7" fill="#ffffff" stroke="#000000" stroke-width="0.8"/><text x="` + num(z.label) + `" y="14.5" text-anchor="middle" fill="#000000">` + itoa(z.number) + `</text>`)
		}
		mark := pick(z.number > 0, itoa(z.number), "–")
		k.bold(4, y, start, mark)
		y = k.lines(18, y, start, fit(z.words+pick(z.number > 0, "", " (not drawn)"), columnWidth-24))
		said = append(said, join(" ", pick(z.number > 0, mark, ""), z.words))
	}
	if stands != "" {
		k.rect(3, y-7, 6, 6, pen{tint: 0.5})
		y = k.lines(18, y, start, fit(stands, columnWidth-24))
		said = append(said, stands)
	}
	k.h = y - lineHeight + 5
	d.says = d.note + " " + strings.Join(said, "; ") + "."
	c.blocks = append(c.blocks, d)
}

// zoned numbers the zones of all parts, from the stern to the bow as their numbers stand in the drawing.
func (c *composer) zoned(s shape) []zoned {
	var out []zoned
	for _, a := range c.job.Areas {
		scheme, painted := c.job.Scheme(a.Part)
		for _, z := range a.Zones {
			x := zoned{zone: z.Zone, words: a.Part + ", " + c.zone(z.Zone)}
			if a.Part == c.zone(z.Zone) {
				x.words = a.Part
			}
			x.words += ": " + z.Area.Typical.To(quantity.SquareMetre, 1, quantity.Nearest).Show(c.units)
			n := 0
			for _, k := range scheme.Coats {
				if slices.Contains(k.Zones, z.Zone) {
					n += k.Layer.Coats
				}
			}
			x.words += pick(painted && n > 0, ", "+plural(n, "coat", "coats"), ", no coat")
			x.extra = c.hasExtra(scheme, z.Zone)
			x.words += pick(x.extra, ", one of them extra", "")
			if at, ok := s.spot(z.Zone); ok {
				x.at, x.number = at, 1
			}
			out = append(out, x)
		}
	}
	placeNumbers(out)
	return out
}

func (c *composer) hasExtra(s antifoul.Scheme, zone string) bool {
	return slices.ContainsFunc(s.Coats, func(k antifoul.Coat) bool {
		return k.Layer.For == compat.Extra && slices.Contains(k.Zones, zone)
	})
}

// placeNumbers numbers the zones that are drawn, from the stern to the bow, gives each number a place over the hull, none on another,
// and sorts the zones by their numbers, those that are not drawn last.
func placeNumbers(zones []zoned) {
	var drawn []*zoned
	for i := range zones {
		if zones[i].number > 0 {
			drawn = append(drawn, &zones[i])
			zones[i].label = sideLeft + sideWide*zones[i].at.x
		}
	}
	slices.SortStableFunc(drawn, func(a, b *zoned) int { return int(a.label - b.label) })
	const apart = 17.0
	for i, z := range drawn {
		z.number = i + 1
		z.label = max(z.label, 9)
		if i > 0 {
			z.label = max(z.label, drawn[i-1].label+apart)
		}
	}
	for i := len(drawn) - 1; i >= 0; i-- { // back from the right edge
		z := drawn[i]
		most := columnWidth - 9
		if i+1 < len(drawn) {
			most = drawn[i+1].label - apart
		}
		z.label = min(z.label, most)
	}
	slices.SortStableFunc(zones, func(a, b zoned) int {
		if a.number == 0 || b.number == 0 {
			return b.number - a.number
		}
		return a.number - b.number
	})
}

// outlines draws hull, keel and what is reported of the rest.
func (k *canvas) outlines(s shape, at func(point) point, zones []zoned) {
	has := func(zone string) bool {
		return slices.ContainsFunc(zones, func(z zoned) bool { return z.zone == zone })
	}
	all := func(in []point) []point {
		var out []point
		for _, p := range in {
			out = append(out, at(p))
		}
		return out
	}
	k.line(pen{faint: true}, point{4, sideWater}, point{columnWidth - 4, sideWater})
	top := pick(s.motor, -0.26, -0.2)
	k.line(pen{faint: true}, at(point{0, 0}), at(point{-0.02, top}), at(point{1.03, top - 0.08}), at(point{1, 0}))
	edge := pick(has("edges"), pen{width: 2.4}, pen{})
	if len(s.keel) > 0 {
		if s.board {
			k.area(pen{dash: "3 2"}, all(s.keel))
		} else {
			k.area(pen{tint: 0.1, width: -1}, all(s.keel))
			k.line(edge, all(s.keel)...)
		}
	}
	if has("rudder") || has("edges") && len(s.rudder) > 0 {
		k.area(pen{tint: 0.1, width: -1}, all(s.rudder))
		k.line(edge, all(s.rudder)...)
	}
	if has("leg") {
		l := at(s.leg)
		k.area(pen{tint: 0.25}, []point{{l.x - 4, l.y}, {l.x - 3, l.y + 20}, {l.x - 8, l.y + 22}, {l.x + 5, l.y + 24}, {l.x + 6, l.y}})
	}
	if has("shaft") {
		k.line(pen{width: 1.6}, all(s.shaft)...)
	}
	if has("propeller") {
		p := at(s.shaft[1])
		if has("leg") {
			p = at(s.leg)
			p.x, p.y = p.x-8, p.y+22
		}
		k.line(pen{width: 2.2}, point{p.x, p.y - 7}, point{p.x, p.y + 7})
	}
	if has("trim-tab") && s.motor {
		p := at(point{0, s.depth(0)})
		k.line(pen{width: 2.2}, point{p.x, p.y - 2}, point{p.x - 12, p.y + 1})
	}
	k.area(pen{tint: 0.1}, all(s.hull))
	if has("edges") {
		k.line(pen{width: 2.4}, all(s.hull[s.stem:])...)
	}
	if has("waterline") {
		from, to := at(s.hull[0]), at(s.hull[s.stem+1])
		k.hatch(from.x+4, sideWater, to.x-from.x-12, 7, 4, "")
		k.line(pen{}, point{from.x + 4, sideWater + 7}, point{to.x - 8, sideWater + 7})
	}
}

// drawStands draws what she stands on and says it.
func (c *composer) drawStands(k *canvas, s shape, at func(point) point) string {
	on := c.job.Pads.On
	if c.job.Pads.Count == 0 {
		return ""
	}
	ground := sideWater + sideDeep + 9
	k.line(pen{width: 1.2}, point{4, ground}, point{columnWidth - 4, ground})
	n := min(on.StandPairs, mostStood)
	for i := range n {
		x := 0.17 + 0.62*(float64(i)+0.5)/float64(n)
		p := at(point{x, s.depth(x) * 0.68})
		k.line(pen{width: 0.7}, p, point{p.x - 4, ground}, p, point{p.x + 4, ground})
		k.rect(p.x-3, p.y-3, 6, 6, pen{tint: 0.5})
	}
	from, to, foot := 0.15, 0.75, s.depth
	if len(s.keel) > 2 && !s.board {
		a, b := s.keel[1], s.keel[2]
		from, to = a.x, b.x
		foot = func(x float64) float64 { return a.y + (b.y-a.y)*(x-a.x)/(b.x-a.x) }
	}
	n = min(on.KeelBlocks, mostStood)
	for i := range n {
		x := from + (to-from)*(float64(i)+0.5)/float64(n)
		p := at(point{x, foot(x)})
		wide := min(8, sideWide*(to-from)/float64(n)*0.7)
		k.rect(p.x-wide/2, p.y, wide, ground-p.y, pen{tint: 0.5})
	}
	words := fmt.Sprintf("stands on %s, %s, %s: %s", plural(on.StandPairs, "pair of stands", "pairs of stands"), plural(on.KeelBlocks, "keel block", "keel blocks"), plural(on.Chains, "chain", "chains"), plural(c.job.Pads.Count, "place", "places"))
	if c.job.Pads.Area.Typical.Given() {
		words += ", " + c.job.Pads.Area.Typical.To(quantity.SquareMetre, 1, quantity.Nearest).Show(c.units)
	}
	return words + pick(max(on.StandPairs, on.KeelBlocks) > mostStood, " (not all drawn)", "")
}
