package hullform

import (
	"math"
	"strconv"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Piece is something that stands on the hull or is cut out of it: a keel, a rudder, a tunnel, an opening.
type Piece struct {
	What                  string          // key of a row of piece
	Count                 int             // how many on the whole boat; 0: one
	Length, Height, Width quantity.Length // fore and aft, up and down, across; which are wanted stands with the shape
}

// PieceArea returns the area of the piece in m2, all of its count, both sides:
//
//	plate      factor × length × height
//	rectangle  factor × length × width
//	cylinder   factor × π × width × length
//	ellipsoid  factor × 4π [((ab)^p + (ac)^p + (bc)^p) ÷ 3]^(1/p), p = 1.6075, a, b, c half of length, width, height
//	disc       factor × π ÷ 4 × width²
//
// An ellipsoid without a height is as high as it is wide. The ends of the range are those of the row's factor.
//
// Basis: derived (geometry); the formula of the ellipsoid, within 1.1 % of the truth, is from memory.
func PieceArea(row tables.PieceRow, p Piece) quantity.Range[float64] {
	l, h, w := p.Length.Float(quantity.Metre), p.Height.Float(quantity.Metre), p.Width.Float(quantity.Metre)
	var one float64
	switch row.Shape {
	case tables.Plate:
		one = l * h
	case tables.Rectangle:
		one = l * w
	case tables.Cylinder:
		one = math.Pi * w * l
	case tables.Ellipsoid:
		if !p.Height.Given() {
			h = w
		}
		const k = 1.6075
		one = math.Pi * math.Pow((math.Pow(l*w, k)+math.Pow(l*h, k)+math.Pow(w*h, k))/3, 1/k)
	case tables.Disc:
		one = math.Pi / 4 * w * w
	}
	one *= float64(max(p.Count, 1))
	return quantity.Range[float64]{Low: row.Factor.Low * one, Typical: row.Factor.Typical * one, High: row.Factor.High * one}
}

// wanted are the lengths that a shape wants, and those that it may have too.
var wanted = map[tables.PieceShape]struct{ needs, may []string }{
	tables.Plate:     {[]string{"length", "height"}, nil},
	tables.Rectangle: {[]string{"length", "width"}, nil},
	tables.Cylinder:  {[]string{"length", "width"}, nil},
	tables.Ellipsoid: {[]string{"length", "width"}, []string{"height"}},
	tables.Disc:      {[]string{"width"}, nil},
}

const (
	mostPieces = 100
	mostLength = 1000 // m: longer than any ship
)

func (p Piece) check(b *tables.Book) finding.Faults {
	var faults finding.Faults
	bad := func(kind error, key, got, want string) {
		faults = append(faults, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	if p.Count < 0 || p.Count > mostPieces {
		bad(finding.ErrImpossible, "count", strconv.Itoa(p.Count), "a count from 1 to "+strconv.Itoa(mostPieces))
	}
	row, err := b.Piece(p.What)
	if err != nil {
		var keys []string
		for r := range b.Pieces() {
			keys = append(keys, r.Key)
		}
		kind := finding.ErrUnknown
		if p.What == "" {
			kind = finding.ErrMissing
		}
		bad(kind, "what", entry.Describe(p.What), finding.Suggest(p.What, keys))
		return faults
	}
	shape := wanted[row.Shape]
	for _, d := range []struct {
		key    string
		length quantity.Length
	}{{"length", p.Length}, {"height", p.Height}, {"width", p.Width}} {
		needed := contains(shape.needs, d.key)
		switch {
		case !d.length.Given() && needed:
			bad(finding.ErrMissing, d.key, "", "its "+d.key+", since a "+p.What+" is reckoned from "+and(shape.needs))
		case d.length.Given() && !needed && !contains(shape.may, d.key):
			bad(finding.ErrValue, d.key, d.length.String(), "no "+d.key+": a "+p.What+" is reckoned from "+and(shape.needs))
		case d.length.Given() && (d.length.Sign() <= 0 || d.length.Cmp(quantity.Metre.N(mostLength)) > 0):
			bad(finding.ErrImpossible, d.key, d.length.String(), "more than zero, to "+strconv.Itoa(mostLength)+" m")
		}
	}
	return faults
}

// ZoneRange is the area of one zone.
type ZoneRange struct {
	Zone string // key of a zone
	Area quantity.Range[quantity.Area]
}

// Zones returns the area of the pieces by zone, in the order of the book's zones: those of the hull's area but for the flat, and those
// apart from it. Openings and what lies in the flat are in the total only. Areas are as in Reckon.
//
// Basis: derived; the factors are rows of pieces.toml.
func Zones(b *tables.Book, s Shape) (hull, apart []ZoneRange, err error) {
	for z := range b.Zones() {
		var m2 quantity.Range[float64]
		for _, p := range s.Pieces {
			if row, err := b.Piece(p.What); err == nil && row.Zone == z.Key && !row.Off {
				m2 = sum(m2, PieceArea(row, p))
			}
		}
		if m2.High == 0 || z.Key == "flat" {
			continue
		}
		area, err := s.area(m2)
		if err != nil {
			return nil, nil, err
		}
		if z.InHull {
			hull = append(hull, ZoneRange{z.Key, area})
		} else {
			apart = append(apart, ZoneRange{z.Key, area})
		}
	}
	return hull, apart, nil
}
