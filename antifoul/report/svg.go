package report

import (
	"encoding/xml"
	"html/template"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// canvas is a drawing as it grows. One unit prints as about three quarters of a point; letters are letterSize high, so that they stay
// above 7.5 points on paper. Lines and letters have the colour of the text around them (currentColor), light on dark as dark on light.
type canvas struct {
	w, h float64
	out  ink
}

// ink is what was drawn so far. It may be copied, which a strings.Builder may not.
type ink []byte

func (i *ink) WriteString(s string) { *i = append(*i, s...) }

// Sizes of a drawing, in its own units.
const (
	columnWidth = 358.0 // of a drawing that fits a column
	letterSize  = 10.0
	lineHeight  = 11.5
	letterWidth = 5.1 // the mean width of a letter, on the safe side for the common upright faces
)

// num writes a coordinate to a tenth of a unit; what is no number is nought, so that a drawing never breaks.
func num(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		x = 0
	}
	return strconv.FormatFloat(math.Round(x*10)/10+0, 'f', -1, 64)
}

// quoted makes words safe inside an element or an attribute.
func quoted(s string) string {
	var out strings.Builder
	_ = xml.EscapeText(&out, []byte(plain(s))) // a builder takes everything
	return out.String()
}

// pen is how a shape is drawn. The zero pen is a thin line without a filling.
type pen struct {
	width float64 // of the line; 0: 0.8; below nought: none
	dash  string  // of the line
	fill  string  // "#rrggbb"; empty: see tint
	tint  float64 // share of the text's own colour that fills the shape
	faint bool    // the line is drawn at a third of its strength
}

func (p pen) attributes() string {
	var out strings.Builder
	switch {
	case srgb(p.fill):
		out.WriteString(` fill="` + p.fill + `"`)
	case p.tint > 0:
		out.WriteString(` fill="currentColor" fill-opacity="` + strconv.FormatFloat(p.tint, 'f', 2, 64) + `"`)
	default:
		out.WriteString(` fill="none"`)
	}
	switch {
	case p.width < 0:
		return out.String()
	case p.width == 0:
		p.width = 0.8
	}
	out.WriteString(` stroke="currentColor" stroke-width="` + num(p.width) + `"`)
	if p.dash != "" {
		out.WriteString(` stroke-dasharray="` + p.dash + `"`)
	}
	if p.faint {
		out.WriteString(` stroke-opacity="0.35"`)
	}
	return out.String()
}

// srgb reports whether s is a colour "#rrggbb".
func srgb(s string) bool {
	if len(s) != 7 || s[0] != '#' {
		return false
	}
	_, err := strconv.ParseUint(s[1:], 16, 32)
	return err == nil
}

func (c *canvas) rect(x, y, w, h float64, p pen) {
	c.out.WriteString(`<rect x="` + num(x) + `" y="` + num(y) + `" width="` + num(max(0, w)) + `" height="` + num(max(0, h)) + `"` + p.attributes() + `/>`)
}

func (c *canvas) circle(x, y, r float64, p pen) {
	c.out.WriteString(`<circle cx="` + num(x) + `" cy="` + num(y) + `" r="` + num(r) + `"` + p.attributes() + `/>`)
}

// point is a place in a drawing, y downwards.
type point struct{ x, y float64 }

// line joins points.
func (c *canvas) line(p pen, at ...point) { c.path(p, false, at) }

// area fills the outline that points make.
func (c *canvas) area(p pen, at []point) { c.path(p, true, at) }

func (c *canvas) path(p pen, closed bool, at []point) {
	if len(at) == 0 {
		return
	}
	c.out.WriteString(`<path d="` + outline(at) + pick(closed, "Z", "") + `"` + p.attributes() + `/>`)
}

// outline is points as the data of a path.
func outline(at []point) string {
	var d strings.Builder
	for i, q := range at {
		d.WriteString(pick(i == 0, "M", "L") + num(q.x) + " " + num(q.y))
	}
	return d.String()
}

// hatch fills a rectangle with slanting lines, so many units apart: it is told from its neighbours without any colour. A negative
// step slants the other way.
func (c *canvas) hatch(x, y, w, h, step float64, colour string) {
	var d strings.Builder
	s := math.Abs(step)
	for at := s / 2; at < w+h; at += s {
		// from the left or the bottom edge, up and to the right, to the top or the right edge
		x1, y1 := max(0, at-h), min(at, h)
		x2, y2 := min(at, w), max(0, at-w)
		if step < 0 {
			x1, x2 = w-x1, w-x2
		}
		d.WriteString("M" + num(x+x1) + " " + num(y+y1) + "L" + num(x+x2) + " " + num(y+y2))
	}
	if !srgb(colour) {
		colour = "currentColor"
	}
	c.out.WriteString(`<path d="` + d.String() + `" fill="none" stroke="` + colour + `" stroke-width="0.7"/>`)
}

// anchor is the end of a text that stands at its place.
type anchor string

const (
	start  anchor = "start"
	middle anchor = "middle"
	end    anchor = "end"
)

// text writes one line of words with its foot at y.
func (c *canvas) text(x, y float64, a anchor, words string) { c.words(x, y, a, words, "") }

// bold writes one line of heavy words.
func (c *canvas) bold(x, y float64, a anchor, words string) {
	c.words(x, y, a, words, ` font-weight="700"`)
}

func (c *canvas) words(x, y float64, a anchor, words, more string) {
	c.out.WriteString(`<text class="t" x="` + num(x) + `" y="` + num(y) + `"`)
	if a != start {
		c.out.WriteString(` text-anchor="` + string(a) + `"`)
	}
	c.out.WriteString(more + `>` + quoted(words) + `</text>`)
}

// lines writes lines of words downwards from y and returns the foot of the next.
func (c *canvas) lines(x, y float64, a anchor, words []string) float64 {
	for _, l := range words {
		c.text(x, y, a, l)
		y += lineHeight
	}
	return y
}

// fit breaks words into lines no wider than the width, in the drawing's units. Words of more than mostLetters are shortened: names
// from outside may have any length, and stand in full in the tables.
func fit(words string, width float64) []string {
	words = shorten(plain(words), mostLetters)
	return wrap(words, max(8, int(width/letterWidth)))
}

const mostLetters = 160

// shorten cuts words to so many letters.
func shorten(s string, most int) string {
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return strings.TrimSpace(string([]rune(s)[:most-1])) + "…"
}

// svg is the whole drawing as an element: n tells it from the others of a page, title and says are its text alternative.
func (d drawing) svg(n int) template.HTML {
	id := "drawing" + itoa(n)
	var out strings.Builder
	out.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="` + id + `-title ` + id + `-desc" viewBox="0 0 ` + num(d.body.w) + ` ` + num(d.body.h) +
		`" width="` + num(d.body.w) + `" height="` + num(d.body.h) + `" font-family="Helvetica, Arial, 'Liberation Sans', sans-serif" font-size="` + num(letterSize) + `" fill="currentColor">`)
	out.WriteString(`<title id="` + id + `-title">` + quoted(d.title) + `</title><desc id="` + id + `-desc">` + quoted(d.says) + `</desc>`)
	out.Write(d.body.out)
	out.WriteString(`</svg>`)
	return template.HTML(out.String()) //nolint:gosec // every word in it went through quoted, every number through num, every colour through srgb
}
