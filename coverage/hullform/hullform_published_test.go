package hullform_test

import (
	"math"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

func metres(f float64) quantity.Length {
	l, err := quantity.Metre.Near(f, 12, quantity.Nearest)
	if err != nil {
		panic(err)
	}
	return l
}

// wigley is y = B/2 (1 − (2x/L)²)(1 − (z/T)²), x from amidships, z down from the waterline.
type wigley struct{ l, b, t float64 }

func (w wigley) half(x, z float64) float64 {
	return w.b / 2 * (1 - 4*x*x/(w.l*w.l)) * (1 - z*z/(w.t*w.t))
}

// sections are n stations of m points, evenly spaced in x and in z.
func (w wigley) sections(n, m int) []hullform.Section {
	out := make([]hullform.Section, n)
	for i := range out {
		x := w.l * (float64(i)/float64(n-1) - 0.5)
		out[i].At = metres(x + w.l/2)
		for k := range m {
			z := w.t * (1 - float64(k)/float64(m-1))
			out[i].Points = append(out[i].Points, hullform.Point{Half: metres(math.Abs(w.half(x, z))), Height: metres(w.t - z)})
		}
	}
	return out
}

// girths are those of fine sections, both sides.
func (w wigley) girths(n int) []hullform.Station {
	var out []hullform.Station
	for _, s := range w.sections(n, 1001) {
		g := 0.0
		for k := 1; k < len(s.Points); k++ {
			a, b := s.Points[k-1], s.Points[k]
			g += math.Hypot(a.Half.Float(quantity.Metre)-b.Half.Float(quantity.Metre), a.Height.Float(quantity.Metre)-b.Height.Float(quantity.Metre))
		}
		out = append(out, hullform.Station{At: s.At, Girth: metres(2 * g)})
	}
	return out
}

func off(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) { // what is no number is off too
		t.Errorf("%s: %.9g, want %.9g within %g", what, got, want, tolerance)
	}
}

// Wigley hull of 10 × 3 × 0.6 m: girths at 11 even stations, and Simpson's rule over them, worked apart from this code by quadrature.
// Simpson 24.9213355, the true integral of the girths 24.8885017, the true surface 25.2008979 m2.
func TestGirthsOfAWigleyHull(t *testing.T) {
	w := wigley{10, 3, 0.6}
	known := []float64{1.200000, 1.685623, 2.364041, 2.896460, 3.225891, 3.336904}
	stations := w.girths(11)
	for i, k := range known {
		off(t, "girth", stations[i].Girth.Float(quantity.Metre), k, 1e-6)
		off(t, "girth", stations[10-i].Girth.Float(quantity.Metre), k, 1e-6)
	}
	off(t, "11 stations by Simpson's rule", hullform.GirthArea(stations), 24.9213355, 5e-6)
	off(t, "many stations", hullform.GirthArea(w.girths(161)), 24.8885017, 2e-4)
}

// The area converges to the true surface on refinement; the order is printed. The extrapolated value is better than the sum.
func TestSurfaceConverges(t *testing.T) {
	for _, c := range []struct {
		name   string
		refine func(n int) []hullform.Section
		want   float64
	}{
		{"Wigley hull 10 × 3 × 0.6", func(n int) []hullform.Section { return wigley{10, 3, 0.6}.sections(n, n) }, 25.2008979},
		{"Wigley hull 1 × 0.1 × 0.0625", func(n int) []hullform.Section { return wigley{1, 0.1, 0.0625}.sections(n, n) }, 0.148790631},
		{"half spheroid 5 × 1", func(n int) []hullform.Section { return spheroid(5, 1, n) }, 25.0962551},
		{"half cylinder 1 × 10 without its ends", func(n int) []hullform.Section { return cylinder(1, 10, n) }, 31.4159265},
	} {
		last := 0.0
		for n := 11; n <= 81; n = 2*n - 1 {
			s := c.refine(n)
			area, missed := hullform.Surface(s)
			if c.name[:13] == "half cylinder" {
				area -= math.Pi // two half discs, of polygons
			}
			e := c.want - area
			order := math.NaN()
			if last != 0 {
				order = math.Log2(last / e)
				if order < 1.4 || order > 2.6 {
					t.Errorf("%s: order %.2f at %d stations", c.name, order, n)
				}
			}
			t.Logf("%s, %2d stations: %.6f, true %.6f, error %.2e, order %.2f, with what was missed %.2e off", c.name, n, area, c.want, e, order, c.want-area-missed)
			last = e
		}
		if math.Abs(last) > 2e-3*c.want {
			t.Errorf("%s: still %.2e off at 81 stations", c.name, last)
		}
	}
}

func spheroid(a, b float64, n int) []hullform.Section {
	out := make([]hullform.Section, n)
	for i := range out {
		u := math.Pi * float64(i) / float64(n-1)
		r := b * math.Sin(u)
		out[i] = arc(a-a*math.Cos(u), r, n)
	}
	return out
}

func cylinder(r, l float64, n int) []hullform.Section {
	out := make([]hullform.Section, n)
	for i := range out {
		out[i] = arc(l*float64(i)/float64(n-1), r, n)
	}
	return out
}

// arc is a quarter circle from the keel up to the waterline at height 0.
func arc(at, r float64, n int) hullform.Section {
	s := hullform.Section{At: metres(at)}
	for k := range n {
		v := math.Pi / 2 * float64(k) / float64(n-1)
		s.Points = append(s.Points, hullform.Point{Half: metres(math.Abs(r * math.Sin(v))), Height: metres(-r * math.Cos(v))})
	}
	return s
}

// A box of 10 × 3 × 0.8 m has LB + 2T(L + B) = 50.8 m2 with its two ends; a V bottom of 8 × 3 m at 20° has L B ÷ cos 20° = 25.5402665 m2
// and two triangles of 1.5 × 0.5459554 m. Exact with three stations, since both are flat. The half cylinder's ends are half discs, 3.1415927 m2.
func TestFlatHullsAreExact(t *testing.T) {
	box := func(at float64) hullform.Section {
		return hullform.Section{At: metres(at), Points: []hullform.Point{{metres(0), metres(0)}, {metres(1.5), metres(0)}, {metres(1.5), metres(0.8)}}}
	}
	area, missed := hullform.Surface([]hullform.Section{box(0), box(3), box(10)})
	off(t, "box", area, 50.8, 1e-9)
	off(t, "box, missed", missed, 0, 1e-9)
	depth := 0.5459554
	vee := func(at float64) hullform.Section {
		return hullform.Section{At: metres(at), Points: []hullform.Point{{metres(0), metres(0)}, {metres(1.5), metres(depth)}}}
	}
	area, _ = hullform.Surface([]hullform.Section{vee(0), vee(5), vee(8)})
	off(t, "V bottom", area-2*1.5*depth, 25.5402665, 1e-6)
	rod, _ := hullform.Surface(cylinder(1, 10, 401))
	off(t, "half cylinder with its ends", rod, 31.4159265+3.1415927, 1e-4)
	// Sections with unlike numbers of points are joined at equal shares of their girths: here the corners stay where they are.
	more := box(3)
	more.Points = []hullform.Point{more.Points[0], {metres(0.75), metres(0)}, more.Points[1], more.Points[2]}
	area, _ = hullform.Surface([]hullform.Section{box(0), more, box(10)})
	off(t, "box with a point more", area, 50.8, 1e-9)
}

// V of a mass in the water's typical density, 1025 kg/m3.
func massOf(volume float64) quantity.Mass {
	m, err := quantity.Kilogram.Near(volume*1025, 6, quantity.Nearest)
	if err != nil {
		panic(err)
	}
	return m
}

// said is the typical area by the method in m2, or in the unit of the shape.
func said(t *testing.T, s hullform.Shape, method string) (hullform.Estimate, bool) {
	t.Helper()
	all, err := hullform.Reckon(tables.Default(), s)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range all {
		if e.Method == method {
			return e, true
		}
	}
	return hullform.Estimate{}, false
}

// Nicholls's Seamanship, p. 482: L 400 ft, B 54 ft, d 15 ft, Cb 0.8: 27,480 ft2 by 1.7 L d + Cb B L, 27,600 ft2 by L (B + d).
func TestNichollsShip(t *testing.T) {
	feet := func(n int64) quantity.Length { return quantity.Foot.N(n) }
	const cubicFoot = 0.3048 * 0.3048 * 0.3048
	s := hullform.Shape{Kind: "working-boat", Length: feet(400), Beam: feet(54), Draft: feet(15), Mass: massOf(0.8 * 400 * 54 * 15 * cubicFoot)}
	for method, want := range map[string]string{"denny-mumford": "27480.00 ft2", "textbook": "27600.00 ft2", "short-rule": "27600.00 ft2"} {
		if e, ok := said(t, s, method); !ok || e.Area.Typical.To(quantity.SquareFoot, 1, quantity.Nearest).To(quantity.SquareFoot, 2, quantity.Nearest).String() != want {
			t.Errorf("%s: %s, want %s", method, e.Area.Typical, want)
		}
	}
}

// Five tested ships: Lpp, B, T, volume, and the area that Denny-Mumford's and Taylor's formulas give, in m2; Delft's own test values, and a hull
// of the series whose published area is 25.4 m2 and by the formula 25.553 m2.
func TestFormulasOnKnownHulls(t *testing.T) {
	for _, c := range []struct {
		name               string
		l, b, t, v         float64
		denny, taylor, own float64
	}{
		{"KCS", 230, 32.2, 10.8, 52030, 9040, 8994, 9424},
		{"KVLCC2", 320, 58, 20.8, 312622, 26345, 26005, 27194},
		{"DTMB 5415", 142, 19.06, 6.15, 8424.4, 2854, 2844, 2972.6},
		{"JBC", 280, 45, 16.5, 178369.9, 18664, 18374, 19556.1},
		{"DTC", 355, 51, 14.5, 173467, 20714, 20403, 22032},
	} {
		s := hullform.Shape{Kind: "working-boat", Length: metres(c.l), Beam: metres(c.b), Draft: metres(c.t), Mass: massOf(c.v)}
		d, _ := said(t, s, "denny-mumford")
		off(t, c.name+" by Denny and Mumford", d.Area.Typical.Float(quantity.SquareMetre), c.denny, 0.6)
		y, _ := said(t, s, "taylor")
		off(t, c.name+" by Taylor", y.Area.Typical.Float(quantity.SquareMetre), c.taylor, 0.6)
		if low, high := d.Area.Low.Float(quantity.SquareMetre), d.Area.High.Float(quantity.SquareMetre); c.own < low || c.own > high {
			t.Errorf("%s: the range %.0f to %.0f does not hold the measured %.0f", c.name, low, high, c.own)
		}
	}
	for _, c := range []struct {
		l, b, t, v, want float64
		cm               int64 // tenths of a per cent
	}{{10, 3, 0.55, 6.5, 22.6181, 720}, {10.04, 3.17, 0.79, 9.18, 25.553, 646}} {
		s := hullform.Shape{
			Kind: "fin-keel-yacht", Length: metres(c.l), Beam: metres(c.b), Draft: metres(1.8), CanoeDraft: metres(c.t), Mass: massOf(c.v),
			Midship: quantity.Percent.Of(decimal.New(c.cm, -1)),
		}
		d, _ := said(t, s, "delft")
		off(t, "Delft", d.Area.Typical.Float(quantity.SquareMetre), c.want, 0.011)
	}
}

// The surface of a spheroid of half axes 5 and 1 is twice 25.0962551 m2. The formula for the ellipsoid is within 1.1 %.
func TestPieceShapes(t *testing.T) {
	for _, c := range []struct {
		shape     tables.PieceShape
		l, h, w   float64
		want, tol float64
	}{
		{tables.Plate, 2, 1.5, 0, 3, 0},
		{tables.Rectangle, 2, 0, 0.3, 0.6, 1e-12},
		{tables.Cylinder, 2, 0, 0.2, 0.4 * math.Pi, 1e-12},
		{tables.Disc, 0, 0, 0.2, 0.01 * math.Pi, 1e-12},
		{tables.Ellipsoid, 10, 0, 2, 2 * 25.0962551, 0.011 * 50.2},
		{tables.Ellipsoid, 2, 2, 2, 4 * math.Pi, 1e-9},
	} {
		p := hullform.Piece{Length: metres(c.l), Width: metres(c.w), Count: 2}
		if c.h > 0 {
			p.Height = metres(c.h)
		}
		got := hullform.PieceArea(tables.PieceRow{Shape: c.shape, Factor: quantity.Range[float64]{Low: 0.5, Typical: 1, High: 2}}, p)
		off(t, string(c.shape), got.Typical, 2*c.want, 2*c.tol)
		off(t, string(c.shape)+", low", got.Low, got.Typical/2, 1e-12)
		off(t, string(c.shape)+", high", got.High, got.Typical*2, 1e-12)
	}
}

// Holtrop and Mennen's ship, 205 × 32 × 10 m, 37,500 m3, printed S = 7381.45 m2 of which 2.38 × 20 ÷ 0.5716 = 83 m2 are the bulb's: a
// hull of no known lines, so an order of magnitude only. Denny and Mumford's formula comes within 5 %.
func TestOrderOfMagnitude(t *testing.T) {
	s := hullform.Shape{Kind: "working-boat", Length: metres(205), Beam: metres(32), Draft: metres(10), Mass: massOf(37500)}
	d, _ := said(t, s, "denny-mumford")
	off(t, "Holtrop and Mennen's ship", d.Area.Typical.Float(quantity.SquareMetre), 7381.45, 0.05*7381.45)
}
