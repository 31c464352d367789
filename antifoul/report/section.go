package report

import (
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/quantity"
)

// The section through the coats, in units of a drawing.
const (
	sectionTall  = 84.0 // of the coats that are put on
	sectionFound = 22.0 // of a film that stays, at most: a thicker one is broken
	sectionBase  = 13.0 // of the material, which is not to scale
	sectionLeft  = 30.0
	sectionWide  = 78.0
)

// slab is one layer as it is drawn.
type slab struct {
	words          string  // its label
	says           string  // the same with both systems of units
	fill           string  // its colour; empty: not reported
	um             float64 // typical dry film; 0: not measured
	tall           float64 // as drawn
	coats          int
	signal, partly bool // partly: not all over the part
	broken, found  bool
}

// drawSection draws the layers of one scheme to scale.
func (c *composer) drawSection(s antifoul.Scheme) {
	slabs := c.slabs(s)
	if len(slabs) == 0 {
		return
	}
	perUm := scale(slabs)
	words := c.material(s.Part)
	says := []string{"Bottom to top, thickness to scale: " + words}
	broken := false
	for i := range slabs {
		x := &slabs[i]
		x.tall = max(2.5, x.um*perUm)
		if x.found && (x.tall > sectionFound || x.um == 0) {
			x.tall, x.broken = pick[float64](x.um == 0, 14, sectionFound), true
		}
		broken = broken || x.broken
		says = append(says, x.says)
	}
	d := drawing{title: "Section through the coats: " + s.Part + ".", note: "Thickness to scale, water above." + pick(broken, " A zigzag: thicker than drawn, or not measured.", "")}
	d.says = strings.Join(says, "; ") + ". " + d.note
	if round, unit, _ := c.barOf(perUm); perUm > 0 {
		d.says += " The bar on the left is " + num(round) + " " + unit + "."
	}
	d.body = c.section(slabs, words, perUm)
	c.blocks = append(c.blocks, d)
}

// slabs are the layers of a scheme, bottom to top.
func (c *composer) slabs(s antifoul.Scheme) []slab {
	var out []slab
	put := false
	for _, l := range s.Stack {
		x := slab{coats: max(1, l.Coats), found: l.For == compat.Found || l.For == "", partly: l.For == compat.Extra}
		if l.Film.Typical.Given() {
			x.um = l.Film.Typical.Float(quantity.Micrometre)
		}
		x.signal = l.For == compat.Signal || slices.ContainsFunc(s.Key, func(k antifoul.ColourKey) bool {
			return (k.Shows.Rule == antifoul.RuleShowsSignal || k.Shows.Rule == antifoul.RuleShowsSignalHard) && k.Layer.For == l.For && k.Layer.Coating.Key == l.Coating.Key && k.Layer.Colour == l.Colour
		})
		if k, err := c.job.Book.Colour(l.Colour); err == nil {
			x.fill = k.SRGB
		}
		name := l.Coating.Name
		if l.Colour != "" {
			name += ", " + c.colour(l.Colour)
		}
		what := "stays"
		if !x.found {
			put = true
			what = plural(x.coats, "coat", "coats")
		}
		switch l.For {
		case compat.Extra:
			what += " more, on part of it"
		case compat.Working:
			what = pick(x.coats == 1, "1 working coat", itoa(x.coats)+" working coats")
		case compat.Found, compat.Undercoat, compat.Signal:
		}
		what = name + "; " + what + pick(x.signal, ", the signal", "") + ": "
		x.words, x.says = what+filmOf(l, c.units), what+filmOf(l, c.units)
		if l.Film.Low.Given() {
			x.words = what + c.filmSpan(l.Film)
		}
		out = append(out, x)
	}
	if !put {
		return nil // nothing is put on: the table says what is there
	}
	return out
}

// filmSpan is a range of films in the reader's unit alone: the other stands in the table beside the drawing.
func (c *composer) filmSpan(f quantity.Range[quantity.Film]) string {
	low, high := f.Low.Float(quantity.Micrometre), f.High.Float(quantity.Micrometre)
	if low == high {
		return c.film(low)
	}
	unit := " " + strings.Fields(c.film(low))[1]
	return strings.TrimSuffix(c.film(low), unit) + " to " + c.film(high)
}

// scale is how many units of the drawing a micrometre takes: what is put on fills its height.
func scale(slabs []slab) float64 {
	sum := 0.0
	for _, x := range slabs {
		if !x.found {
			sum += x.um
		}
	}
	if sum <= 0 {
		return 0
	}
	return min(1, sectionTall/sum)
}

// section draws slabs with their labels on the right, a scale on the left.
func (c *composer) section(slabs []slab, material string, perUm float64) canvas {
	var k canvas
	tall := 0.0
	labels := make([][]string, len(slabs))
	high := make([]float64, len(slabs)) // middle of each label, then its head
	for i, x := range slabs {
		tall += x.tall
		labels[i] = fit(x.words, columnWidth-sectionLeft-sectionWide-20)
	}
	// labels from the top down, none over another
	at, top := 4.0, 6.0
	for i := len(slabs) - 1; i >= 0; i-- {
		mid := top + slabs[i].tall/2
		high[i] = max(at, mid-float64(len(labels[i]))*lineHeight/2)
		at = high[i] + float64(len(labels[i]))*lineHeight + 2
		top += slabs[i].tall
	}
	foot := 6 + tall
	k.w, k.h = columnWidth, max(foot+sectionBase, at+lineHeight)+6
	k.base(foot, fit(material, columnWidth-sectionLeft-sectionWide-20), max(at+lineHeight-3, foot+10))
	y, partly := foot, 0.0
	var covered []float64 // middles of what later layers lie over
	for i, x := range slabs {
		k.slab(x, y, partly)
		mid := y - x.tall/2
		if x.partly {
			partly = x.tall
			covered = append(covered, mid)
		}
		label := high[i] + float64(len(labels[i]))*lineHeight/2
		k.line(pen{}, point{sectionLeft + sectionWide, mid}, point{sectionLeft + sectionWide + 6, mid}, point{sectionLeft + sectionWide + 13, label}, point{sectionLeft + sectionWide + 17, label})
		k.lines(sectionLeft+sectionWide+20, high[i]+lineHeight-2.5, start, labels[i])
		y -= x.tall
	}
	for _, at := range covered {
		k.pointer(at)
	}
	c.scaleBar(&k, foot, perUm)
	return k
}

// base is the material under the coats.
func (k *canvas) base(y float64, words []string, foot float64) {
	k.hatch(sectionLeft, y, sectionWide, sectionBase, 5, "")
	k.rect(sectionLeft, y, sectionWide, sectionBase, pen{})
	mid := y + sectionBase/2
	k.line(pen{}, point{sectionLeft + sectionWide, mid}, point{sectionLeft + sectionWide + 6, mid}, point{sectionLeft + sectionWide + 13, foot - 3.5}, point{sectionLeft + sectionWide + 17, foot - 3.5})
	if len(words) > 0 {
		k.text(sectionLeft+sectionWide+20, foot, start, words[0])
	}
}

// slab draws one layer with its foot at y. A layer on part of the surface covers its left; what lies over it is stepped by so much.
func (k *canvas) slab(x slab, y, step float64) {
	left, right := sectionLeft, sectionLeft+sectionWide
	if x.partly {
		right = left + sectionWide*0.45
	}
	corners := []point{{left, y}, {left, y - x.tall}, {right, y - x.tall}, {right, y}}
	if step > 0 && !x.found {
		mid := left + sectionWide*0.45
		corners = []point{{left, y}, {left, y - x.tall}, {mid, y - x.tall}, {mid, y - x.tall + step}, {right, y - x.tall + step}, {right, y + step}, {mid, y + step}, {mid, y}}
	}
	k.area(pen{fill: x.fill, tint: pick[float64](x.fill == "", 0.08, 0)}, corners)
	if x.signal {
		k.hatch(left, y-x.tall, right-left, x.tall, 6, contrast(x.fill))
	}
	for n := 1; n < x.coats; n++ {
		h := y - x.tall*float64(n)/float64(x.coats)
		k.coatLine(contrast(x.fill), left, right, h, step)
	}
	if x.broken {
		k.zigzag(left, right, y-x.tall/2)
	}
}

// pointer leads from a layer on part of the surface to the edge at which its label begins, dark on a light rim so that it is seen on any
// colour.
func (k *canvas) pointer(y float64) {
	d := `<path d="M` + num(sectionLeft+sectionWide*0.35) + " " + num(y) + "L" + num(sectionLeft+sectionWide) + " " + num(y) + `" fill="none" stroke-linecap="round" stroke="`
	k.out.WriteString(d + `#ffffff" stroke-width="2.6"/>` + d + `#000000" stroke-width="0.9"/>`)
}

// coatLine parts two coats of one layer, stepped as the layer is.
func (k *canvas) coatLine(colour string, left, right, y, step float64) {
	d := "M" + num(left) + " " + num(y)
	if step > 0 {
		mid := left + sectionWide*0.45
		d += "L" + num(mid) + " " + num(y) + "L" + num(mid) + " " + num(y+step) + "L" + num(right) + " " + num(y+step)
	} else {
		d += "L" + num(right) + " " + num(y)
	}
	k.out.WriteString(`<path d="` + d + `" fill="none" stroke="` + colour + `" stroke-width="0.7" stroke-dasharray="3 2"/>`)
}

// zigzag breaks a layer.
func (k *canvas) zigzag(left, right, y float64) {
	var at []point
	for i, x := 0, left-4; x <= right+4; i, x = i+1, x+6 {
		at = append(at, point{x, y + pick[float64](i%2 == 0, -2.5, 2.5)})
	}
	k.line(pen{width: 2.4}, at...)
	k.out.WriteString(`<path d="` + outline(at) + `" fill="none" stroke="#ffffff" stroke-width="1.2"/>`)
}

// barOf is the thickness that the scale bar shows: a round number of the reader's unit, and how long it is drawn.
func (c *composer) barOf(perUm float64) (round float64, unit string, tall float64) {
	um := 1.0
	unit = "µm"
	if c.units == quantity.US {
		unit, um = "mil", 25.4
	}
	round = 1
	for _, n := range []float64{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000} {
		if n*um*perUm <= 60 {
			round = n
		}
	}
	return round, unit, round * um * perUm
}

// scaleBar stands left of the section.
func (c *composer) scaleBar(k *canvas, foot, perUm float64) {
	if perUm <= 0 {
		return
	}
	round, unit, tall := c.barOf(perUm)
	top, x := foot-tall, sectionLeft-6
	k.line(pen{width: 1.2}, point{x - 3, top}, point{x + 3, top}, point{x, top}, point{x, foot}, point{x - 3, foot}, point{x + 3, foot})
	k.text(x-5, (top+foot)/2, end, num(round))
	k.text(x-5, (top+foot)/2+10, end, unit)
}

// material is what the part is made of.
func (c *composer) material(part string) string {
	for _, p := range c.job.Boat.Parts {
		if p.Name != part {
			continue
		}
		if m, err := c.job.Book.Material(p.Material); err == nil {
			return m.Name
		}
		return p.Material
	}
	return ""
}

// contrast is black or white, whichever stands out from the colour; the text's own where there is none.
func contrast(fill string) string {
	switch {
	case !srgb(fill):
		return "currentColor"
	case luminance(fill) > 0.18:
		return "#000000"
	}
	return "#ffffff"
}

// luminance is the relative luminance of "#rrggbb", 0 to 1.
//
// Source: WCAG 2.2, definition of relative luminance.
func luminance(colour string) float64 {
	part := func(i int) float64 {
		v := 0.0
		for _, r := range colour[i : i+2] {
			v = v*16 + float64(hexDigit(r))
		}
		v /= 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return float64(0.2126*part(1)) + float64(0.7152*part(3)) + float64(0.0722*part(5))
}

func hexDigit(r rune) rune {
	switch {
	case r >= 'a':
		return r - 'a' + 10
	case r >= 'A':
		return r - 'A' + 10
	}
	return r - '0'
}
