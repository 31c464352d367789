package compat

import (
	"errors"
	"fmt"
	"strconv"

	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Part is one part of the boat: what it is made of and what was found on it.
//
// A part without any layer found is not reported: it is judged as carrying an unknown old film. A bare surface is said with one
// layer of the old film "bare".
type Part struct {
	Name     string
	Zone     string         // key of a zone; empty when none is said
	Material string         // key of a material
	Area     quantity.Area  // not given: from the hull
	Found    Stack          // bottom to top
	Laminate string         // "dry", "wet", or empty when not measured
	Barrier  quantity.YesNo // a barrier is wanted on it, whether or not anything asks for one
	Seen     []string       // keys of signs seen of its old film; see oldfilm.Identify
	Readings oldfilm.Readings
	Reads    galvanic.Reading // its potential in the water; no value: not read
}

// The two old films that the rules name: nothing on the surface, and nothing known of it.
const (
	bareKey    = "bare"
	unknownKey = "unknown-old"
)

// Check returns every fault of the part, with keys relative to it: "material", "found[1].film". Layers count from 1, the lowest.
func (p Part) Check(b *tables.Book) finding.Faults {
	var out finding.Faults
	if p.Name == "" {
		note(&out, finding.ErrMissing, "name", "", "a name, unique on the boat")
	}
	if p.Material == "" {
		note(&out, finding.ErrMissing, "material", "", "the key of a material")
	} else {
		_, err := b.Material(p.Material)
		noteUnknown(&out, "material", err)
	}
	if p.Zone != "" {
		z, err := b.Zone(p.Zone)
		noteUnknown(&out, "zone", err)
		if err == nil && !z.Part {
			note(&out, finding.ErrImpossible, "zone", entry.Describe(p.Zone), "the zone of a part, not a strip of the hull")
		}
	}
	if p.Area.Given() && p.Area.Sign() <= 0 {
		note(&out, finding.ErrImpossible, "area", p.Area.String(), "an area above zero")
	}
	switch p.Laminate {
	case "", "dry", "wet":
	default:
		note(&out, finding.ErrValue, "laminate", entry.Describe(p.Laminate), `"dry" or "wet"; left out when it was not measured`)
	}
	if m, err := b.Material(p.Material); err == nil && p.Barrier.True() && (m.With == "" || m.Barrier == tables.Never) {
		note(&out, finding.ErrImpossible, "barrier", "true", "no barrier: on "+m.Name+" it does harm, or nobody builds one")
	}
	out = append(out, p.Readings.Check(b).Under("", "readings")...)
	if p.Reads.Value.Given() || p.Reads.Electrode != "" {
		out = append(out, p.Reads.Check(b)...)
	}
	for _, key := range p.Seen {
		_, err := b.Sign(key)
		noteUnknown(&out, "seen", err)
	}
	for i := range p.Found {
		l := &p.Found[i]
		at := fmt.Sprintf("found[%d]", i+1)
		out = append(out, l.check(b).Under("", at)...)
		if len(p.Found) > 1 && l.bare() {
			note(&out, finding.ErrImpossible, at+".coating", entry.Describe(l.Coating.Key), "a bare surface has no other layer")
		}
	}
	return out
}

// check returns every fault of a layer.
func (l *Layer) check(b *tables.Book) finding.Faults {
	var out finding.Faults
	if l.Coating.Key == "" {
		note(&out, finding.ErrMissing, "coating", "", "the key of a coating or of an old film")
	} else {
		_, err := b.Coating(l.Coating.Key)
		noteUnknown(&out, "coating", err)
	}
	if l.Colour != "" {
		_, err := b.Colour(l.Colour)
		noteUnknown(&out, "colour", err)
	}
	if l.State != "" {
		_, err := b.Condition(l.State)
		noteUnknown(&out, "state", err)
	}
	f := l.Film
	switch {
	case !f.Low.Given() && !f.Typical.Given() && !f.High.Given():
	case !f.Low.Given() || !f.Typical.Given() || !f.High.Given():
		note(&out, finding.ErrMissing, "film", "", "low, typical and high, or none of them")
	case f.Low.Sign() <= 0:
		note(&out, finding.ErrImpossible, "film", f.Low.String(), "a film above zero; left out when it was not measured")
	case f.Low.Cmp(f.Typical) > 0 || f.Typical.Cmp(f.High) > 0:
		note(&out, finding.ErrImpossible, "film", f.Low.String()+" to "+f.High.String(), "a rising range: low, typical, high")
	}
	if l.Coats < 0 {
		note(&out, finding.ErrImpossible, "coats", strconv.Itoa(l.Coats), "a number of coats; 0 when it is not known")
	}
	if l.Age.Sign() < 0 {
		note(&out, finding.ErrImpossible, "age", l.Age.String(), "the time since the last coat; left out for an old film")
	}
	switch l.For {
	case "", Found, Undercoat, Signal, Working, Extra:
	default:
		note(&out, finding.ErrValue, "for", entry.Describe(string(l.For)), "found, undercoat, signal, working or extra")
	}
	return out
}

func note(out *finding.Faults, kind error, key, got, want string) {
	*out = append(*out, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
}

// noteUnknown notes the fault of a lookup in the book under the key of the part.
func noteUnknown(out *finding.Faults, key string, err error) {
	if err == nil {
		return
	}
	var fs finding.Faults
	if !errors.As(err, &fs) {
		return
	}
	for _, f := range fs {
		note(out, f.Kind, key, f.Got, f.Want)
	}
}
