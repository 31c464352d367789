package drag

import (
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Hull is what friction asks of a boat.
type Hull struct {
	Length quantity.Length // on the waterline, above zero, to 400 m
	Speed  quantity.Speed  // through the water, above zero, to 80 kn
	Water  string          // salt, brackish, fresh; empty and brackish are reckoned as salt
}

// Check returns every fault of the hull, keys as in the sections hull and use of a boat file.
func (h Hull) Check() finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	const length, speed = "the waterline's length, above zero, to 400 m", "a speed through the water, above zero, to 80 kn"
	switch {
	case !h.Length.Given():
		bad(finding.ErrMissing, "length", "", length)
	case h.Length.Sign() <= 0 || h.Length.Cmp(quantity.Metre.N(400)) > 0:
		bad(finding.ErrImpossible, "length", h.Length.String(), length)
	}
	switch {
	case !h.Speed.Given():
		bad(finding.ErrMissing, "speed", "", speed)
	case h.Speed.Sign() <= 0 || h.Speed.Cmp(quantity.Knot.N(80)) > 0:
		bad(finding.ErrImpossible, "speed", h.Speed.String(), speed)
	}
	if h.Water != "" && !slices.Contains(tables.Waters(), h.Water) {
		bad(finding.ErrValue, "water", entry.Describe(h.Water), "one of "+strings.Join(tables.Waters(), ", "))
	}
	return fs
}

// Line is the friction of a smooth hull.
type Line struct {
	Reynolds   float64 // length × speed ÷ viscosity
	Froude     float64 // speed ÷ √(9.81 m/s² × length)
	ITTC57     float64 // friction coefficient by the line of 1957
	Schoenherr float64 // by Schoenherr's, which the cost of roughness is reckoned from
}

// Friction returns the friction of the hull while she is as smooth as glass. Her speed and length are taken as they are, the viscosity
// is that of water of 15 °C, a row of factor: water near freezing lowers the Reynolds number by a third, which
// raises the coefficient by some 6 % of itself.
//
//	Re = L × V ÷ ν, Fn = V ÷ √(g × L)
//
// The error is a finding.Faults; so is a Reynolds number outside LeastReynolds to MostReynolds.
//
// Source: see ITTC57 and Schoenherr.
func Friction(b *tables.Book, h Hull) (Line, error) {
	fs := h.Check()
	n := numbersOf(b, &fs)
	if err := fs.Err(); err != nil {
		return Line{}, err
	}
	return line(n, h)
}

func line(n numbers, h Hull) (Line, error) {
	metres, speed := h.Length.Float(quantity.Metre), h.Speed.Float(quantity.Knot)*1852/3600
	viscosity := n["drag-viscosity-salt"].Typical
	if h.Water == "fresh" {
		viscosity = n["drag-viscosity-fresh"].Typical
	}
	l := Line{Reynolds: metres * speed / (viscosity * 1e-6), Froude: speed / math.Sqrt(9.81*metres)}
	var err error
	if l.ITTC57, err = ITTC57(l.Reynolds); err != nil {
		return Line{}, err
	}
	l.Schoenherr, err = Schoenherr(l.Reynolds)
	return l, err
}

// Factors lists the keys of the rows of the factor table that this package asks for.
func Factors() []string {
	return []string{
		"drag-viscosity-salt", "drag-viscosity-fresh", "drag-froude-slow", "drag-share-slow", "drag-froude-fast", "drag-share-fast",
		"drag-froude-planing", "drag-share-planing", "drag-worth", "drag-hard-from",
	}
}

// numbers are the rows of the factor table by key.
type numbers map[string]quantity.Range[float64]

// numbersOf reads the rows; one that is missing, and a share above the whole, is a fault.
func numbersOf(b *tables.Book, fs *finding.Faults) numbers {
	n := numbers{}
	for _, key := range Factors() {
		f, err := b.Factor(key)
		if err != nil {
			*fs = append(*fs, lacks("factor", key))
		}
		if strings.HasPrefix(key, "drag-share-") && f.Value.High > 1 {
			*fs = append(*fs, finding.Fault{Kind: finding.ErrImpossible, File: "the tables", Key: "factor[" + key + "].value", Got: entry.Describe(f.Value.High), Want: "a share, at most 1"})
		}
		n[key] = f.Value
	}
	return n
}

func lacks(table, key string) finding.Fault {
	return finding.Fault{Kind: finding.ErrMissing, File: "the tables", Key: table + "[" + key + "]", Want: "a row with this key, as the module's own tables have"}
}

// share returns what part of her resistance is taken to be friction, the keys of the rows that say so, and whether she is so fast for her
// length that nobody knows. Up to the slow Froude number it is the slow share, from the fast one the fast share, between them on a
// straight line.
// Basis: assumption.
func (n numbers) share(froude float64) (r quantity.Range[float64], keys []string, planing bool) {
	slow, fast := n["drag-froude-slow"].Typical, n["drag-froude-fast"].Typical
	switch {
	case froude > n["drag-froude-planing"].Typical:
		return n["drag-share-planing"], []string{"drag-share-planing", "drag-froude-planing"}, true
	case froude >= fast:
		return n["drag-share-fast"], []string{"drag-share-fast"}, false
	case froude <= slow:
		return n["drag-share-slow"], []string{"drag-share-slow"}, false
	}
	part := (froude - slow) / (fast - slow)
	mix := func(at, to float64) float64 { return at + float64(part*(to-at)) }
	x, y := n["drag-share-slow"], n["drag-share-fast"]
	r = quantity.Range[float64]{Low: mix(x.Low, y.Low), Typical: mix(x.Typical, y.Typical), High: mix(x.High, y.High)}
	return r, []string{"drag-share-slow", "drag-share-fast"}, false
}
