package law

import (
	"iter"
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Desk holds the laws that can touch one boat on one day. Make it once with At and judge many coatings by it; it never
// changes, so share it freely.
type Desk struct {
	b     *tables.Book
	spots []spot
	laws  []entry

	weighs bool // one of the laws asks how much copper a coating holds
}

// entry is one law with what is settled before any coating is known; what it says is asked of its row.
type entry struct {
	of      subject
	key     string // of its row
	verdict finding.Verdict
	classes classes // none: every coating
	actives []string
	mechs   []string
	copper  float64  // per cent above which it speaks; infinite: it asks nothing about copper
	missing []string // what it asks about the boat, the water or the day, and nobody gave
	spots   []int    // where it applies, or may
	parts   []int    // spots of which only a part has this law
}

// At returns the desk of a boat at her berths on a day.
//
// A law is at the desk when its place is a berth's place or one that this lies in, the berth has one of its roles and waters,
// the day is not before its first or after its last, and the boat's length, mass and material meet its conditions. What was
// not given never keeps a law away. When no berth is painted, she is taken to be painted where she is kept.
func At(b *tables.Book, craft Craft, at []Berth, on quantity.Date) *Desk {
	d := &Desk{b: b, spots: spotsOf(b, at), laws: make([]entry, 0, 16)}
	places := make([]string, len(d.spots))
	for i := range d.spots {
		places[i] = d.spots[i].place
	}
	for l := range b.LawsNear(places) {
		if e, ok := d.enter(&l, craft, on); ok {
			d.laws = append(d.laws, e)
		}
	}
	return d
}

// of lists the laws of the subject, in the order of the book.
func (d *Desk) of(s subject) iter.Seq[*entry] {
	return func(yield func(*entry) bool) {
		for i := range d.laws {
			if d.laws[i].of == s && !yield(&d.laws[i]) {
				return
			}
		}
	}
}

// enter prepares a law; false when it cannot touch the boat.
func (d *Desk) enter(l *tables.Law, craft Craft, on quantity.Date) (entry, bool) {
	var at seat
	if !d.seat(&at, l) {
		return entry{}, false
	}
	missing, fits := touches(l, craft, on)
	if !fits {
		return entry{}, false
	}
	if !at.wet { // of parts nobody asks
		missing = append(missing, "the water")
	}
	e := entry{
		of: subject(l.Subject), key: l.Key, verdict: l.Verdict, spots: at.spots, parts: at.parts, missing: missing, copper: math.Inf(1),
		classes: classesOf(l.Biocides()), actives: slices.Collect(l.Actives()), mechs: slices.Collect(l.Mechanisms()),
	}
	if l.CopperMax.Given() {
		e.copper, d.weighs = l.CopperMax.Float(quantity.Percent), true
	}
	return e, true
}

// seat is where a law stands: at which spots it applies or may, of which only a part has it, and whether the water of one spot at least is the law's for
// certain; that spot then comes first, since the finding names it.
type seat struct {
	spots, parts []int
	wet          bool
}

// seat finds the law's; false when it has none.
func (d *Desk) seat(to *seat, l *tables.Law) bool {
	var roles, waters []string
	read := false
	for i := range d.spots {
		s := &d.spots[i]
		here := slices.Contains(s.chain, l.Place)
		if here && s.place != "" && (!s.read.Given() || l.ReadOn.Before(s.read)) {
			s.read = l.ReadOn
		}
		part := !here && s.place != "" && l.LiesIn(s.place)
		if !here && !part {
			continue
		}
		if !read {
			roles, waters, read = slices.Collect(l.Roles()), slices.Collect(l.Waters()), true
		}
		fits := meets(s.waters, waters)
		switch {
		case fits == no || !s.plays(roles):
		case part:
			to.parts = append(to.parts, i)
		case fits == yes && !to.wet:
			to.wet = true
			to.spots = slices.Insert(to.spots, 0, i)
		default:
			to.spots = append(to.spots, i)
		}
	}
	return len(to.spots)+len(to.parts) > 0
}

// answer is what is known of a condition.
type answer uint8

const (
	no answer = iota + 1
	maybe
	yes
)

// meets compares the spot's waters with the law's.
func meets(have, asked []string) answer {
	if len(asked) == 0 {
		return yes
	}
	if len(have) == 0 {
		return maybe
	}
	if slices.ContainsFunc(have, func(w string) bool { return slices.Contains(asked, w) }) {
		return yes
	}
	return no
}

// touches compares the day and the boat with the law, and lists what was not given; false where the law is not for her.
func touches(l *tables.Law, craft Craft, on quantity.Date) (missing []string, fits bool) {
	if on.Given() {
		if l.From.Given() && on.Before(l.From) || l.To.Given() && on.After(l.To) {
			return nil, false
		}
	} else if l.From.Given() || l.To.Given() {
		missing = append(missing, "the day")
	}
	if l.LengthMin.Given() || l.LengthMax.Given() || l.LengthBelow.Given() {
		switch {
		case !craft.Length.Given():
			missing = append(missing, "the boat's length")
		case l.LengthMin.Given() && craft.Length.Cmp(l.LengthMin) < 0,
			l.LengthMax.Given() && craft.Length.Cmp(l.LengthMax) > 0,
			l.LengthBelow.Given() && craft.Length.Cmp(l.LengthBelow) >= 0:
			return nil, false
		}
	}
	if l.MassMin.Given() || l.MassAbove.Given() || l.MassBelow.Given() {
		switch {
		case !craft.Mass.Given():
			missing = append(missing, "the boat's mass")
		case l.MassMin.Given() && craft.Mass.Cmp(l.MassMin) < 0,
			l.MassAbove.Given() && craft.Mass.Cmp(l.MassAbove) <= 0,
			l.MassBelow.Given() && craft.Mass.Cmp(l.MassBelow) >= 0:
			return nil, false
		}
	}
	if exempt := slices.Collect(l.Exempt()); len(exempt) > 0 {
		switch {
		case craft.Material == "":
			missing = append(missing, "the hull's material")
		case slices.Contains(exempt, craft.Material):
			return nil, false
		}
	}
	return missing, true
}

// listed joins what is missing for a sentence.
func listed(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
