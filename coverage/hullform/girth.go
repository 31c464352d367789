package hullform

import (
	"io/fs"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Station is a place along the hull where a tape was laid round it.
type Station struct {
	At    quantity.Length // along the centreline, from any point
	Girth quantity.Length // from paint line to paint line, under the keel's root; the whole of it, both sides
}

// GirthArea returns the integral of the girths along the hull in m2, by Simpson's rule for uneven spacing:
//
//	S = Σ (h0 + h1)/6 × [(2 − h1/h0) g0 + (h0 + h1)²/(h0 h1) g1 + (2 − h0/h1) g2]
//
// over pairs of intervals; a last interval without a partner takes the parabola through the last three stations (the 5, 8, −1 rule).
// Where one interval of a pair is more than twice the other, and for two stations, the trapezium is taken, which no wild girth upsets.
// It misses the slope of the surface: see the factor of the row "girths". The stations rise; Shape.Check sees to it.
//
// Source: E. C. Tupper, Introduction to Naval Architecture, pp. 23-26, for even spacing; the uneven form is derived.
func GirthArea(stations []Station) float64 {
	x, y := make([]float64, len(stations)), make([]float64, len(stations))
	for i, s := range stations {
		x[i], y[i] = s.At.Float(quantity.Metre), s.Girth.Float(quantity.Metre)
	}
	return simpson(x, y)
}

// unlike is the ratio of two intervals beyond which a parabola over both is not to be trusted: its weights would turn negative.
const unlike = 2.0

func simpson(x, y []float64) float64 {
	sum := 0.0
	n := len(x) - 1
	i := 0
	for ; i+1 < n; i += 2 {
		sum += pair(x[i+1]-x[i], x[i+2]-x[i+1], y[i], y[i+1], y[i+2])
	}
	if i < n {
		h1 := x[n] - x[n-1]
		if n < 2 || !alike(h1, x[n-1]-x[n-2]) {
			return sum + trapezium(h1, y[n-1], y[n])
		}
		h0 := x[n-1] - x[n-2]
		sum += float64(y[n]*(2*h1*h1+3*h0*h1)/(6*(h0+h1))) + float64(y[n-1]*(h1*h1+3*h1*h0)/(6*h0)) - float64(y[n-2]*h1*h1*h1/(6*h0*(h0+h1)))
	}
	return sum
}

func pair(h0, h1, y0, y1, y2 float64) float64 {
	if !alike(h0, h1) {
		return trapezium(h0, y0, y1) + trapezium(h1, y1, y2)
	}
	both := h0 + h1
	return both / 6 * (float64((2-h1/h0)*y0) + float64(both*both/(h0*h1)*y1) + float64((2-h0/h1)*y2))
}

func trapezium(h, a, b float64) float64 { return h * (a + b) / 2 }

// alike is false too for two intervals that are nought, as of stations nearer to each other than floats can tell.
func alike(a, b float64) bool { return max(a, b)/min(a, b) <= unlike }

// ReadGirths reads stations from a CSV file: the columns "at" and either "girth", from paint line to paint line, or "half_girth", from
// the centreline to the paint line. The error is a finding.Faults with every fault of the file.
func ReadGirths(fsys fs.FS, name string) ([]Station, error) {
	var faults finding.Faults
	var out []Station
	rows := entry.Sheet(fsys, name, &faults)
	entry.Columns(rows, "at", "girth", "half_girth")
	for _, r := range rows {
		s := Station{At: entry.Amount[quantity.Length](r, "at"), Girth: entry.Amount[quantity.Length](r, "girth")}
		r.Need("where along the hull, with its unit or that of the column", "at")
		half := entry.Amount[quantity.Length](r, "half_girth")
		switch {
		case r.Has("girth") && r.Has("half_girth"):
			r.Fault(finding.ErrDuplicate, "half_girth", "a girth beside it", "one of the two")
		case !r.Has("girth") && !r.Has("half_girth"):
			r.Fault(finding.ErrMissing, "girth", "", "from paint line to paint line; or half_girth, from the centreline")
		case half.Given():
			s.Girth = half.Add(half)
		}
		out = append(out, s)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	if err := checkStations(out).Under(name, "").Err(); err != nil {
		return nil, err
	}
	return out, nil
}
