package hullform_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func file(text string) fstest.MapFS { return fstest.MapFS{"hull.csv": {Data: []byte(text)}} }

// Each of these is one file with several faults, all of which are named with their line or station.
func TestAllFaultsOfAFile(t *testing.T) {
	girths := func(text string) error { _, err := hullform.ReadGirths(file(text), "hull.csv"); return err }
	offsets := func(text string) error { _, err := hullform.ReadOffsets(file(text), "hull.csv"); return err }
	for name, c := range map[string]struct {
		err   error
		words []string
	}{
		"text in cells":         {girths("at [m],girth [m]\n0,none\n1,2.0 kg\n2,\n"), []string{"line 2.girth", "line 3.girth", "line 4.girth"}},
		"out of order":          {girths("at [m],girth [m]\n0,1\n2,2\n1,3\n1,-1\n"), []string{"station[3].at", "station[4].at", "station[4].girth"}},
		"both girths":           {girths("at [m],girth [m],half_girth [m]\n0,1,0.5\n1,,1\n2,2,\n"), []string{"line 2.half_girth"}},
		"a column too many":     {girths("at [m],girth [m],colour\n0,1,red\n1,2,red\n2,1,red\n"), []string{"line 2.colour"}},
		"sections of nothing":   {offsets("at [m],half_breadth [m],height [m]\n0,0,0\n0,0,0\n1,0,0\n1,0,0\n2,0,0\n2,0,0\n"), []string{"sections without an area"}},
		"two stations":          {girths("at [m],girth [m]\n0,1\n1,2\n"), []string{"2 stations"}},
		"no girth":              {girths("at [m],girth [m]\n0,0\n1,0\n2,0\n"), []string{"no girth above nought"}},
		"offsets that cross":    {offsets("at [m],half_breadth [m],height [m]\n0,0,0\n0,0,1\n1,0,0\n1,1,1\n1,1,0.2\n1,0.2,1\n2,0,0\n2,-1,1\n"), []string{"station[2]", "the line from point 1 to 2 crosses that from 3 to 4", "station[3].point[2].half_breadth"}},
		"off the centreline":    {offsets("at [m],half_breadth [m],height [m]\n0,0.2,0\n0,0.4,1\n1,0,0\n1,1,1\n2,0,0\n2,1,1\n"), []string{"station[1].point[1]", "centreline"}},
		"a lonely point":        {offsets("at [m],half_breadth [m],height [m]\n0,0,0\n1,0,0\n1,1,1\n0.5,0,0\n0.5,1,1\n"), []string{"station[1]", "1 points", "station[3].at"}},
		"nothing to read there": {girths("at [m]\n0\n1\n2\n"), []string{"line 2.girth", "line 3.girth", "line 4.girth"}},
	} {
		for _, w := range c.words {
			if c.err == nil || !strings.Contains(c.err.Error(), w) {
				t.Errorf("%s: %q is not named in\n%v", name, w, c.err)
			}
		}
	}
}

func TestHalfGirthIsDoubled(t *testing.T) {
	s, err := hullform.ReadGirths(file("at [ft],half_girth [ft]\n0,0\n3,2.5\n6,3\n"), "hull.csv")
	if err != nil || len(s) != 3 || s[1].Girth.String() != "5.0 ft" {
		t.Errorf("%v %v", s, err)
	}
}

func TestOffsetsAreGroupedByStation(t *testing.T) {
	s, err := hullform.ReadOffsets(file("at [m],half_breadth [m],height [m]\n0,0,0\n0,0,1\n2,0,0\n2,1,0.5\n2,1.2,1\n4,0,0\n4,1,1\n"), "hull.csv")
	if err != nil || len(s) != 3 || len(s[1].Points) != 3 {
		t.Errorf("%v %v", s, err)
	}
}

func TestShapeFaultsAllAtOnce(t *testing.T) {
	s := hullform.Shape{
		Hulls: 4, Draft: metres(1), CanoeDraft: metres(1.1), Beam: metres(2), WaterlineBeam: metres(-1), Midship: quantity.Percent.N(101),
		Girths:  []hullform.Station{{At: metres(1), Girth: metres(1)}, {At: metres(0), Girth: metres(1)}},
		Offsets: []hullform.Section{{At: metres(0)}},
		Pieces:  []hullform.Piece{{What: "keal"}, {What: "keel", Length: metres(1), Width: metres(1)}, {What: "thruster-opening", Width: metres(0), Count: 101}, {}},
	}
	err := s.Check(tables.Default()).Err()
	for _, w := range []string{"hulls", "canoe_draft", "waterline_beam", "midship", "girths.station[2].at", "girths: ", "offsets.station[1]", "piece[1].what", "did you mean keel", "piece[2].height", "piece[2].width", "piece[3].width", "piece[3].count", "piece[4].what"} {
		if err == nil || !strings.Contains(err.Error(), w) {
			t.Errorf("%q is not named in\n%v", w, err)
		}
	}
	if _, err := hullform.Reckon(tables.Default(), s); err == nil {
		t.Error("reckoned all the same")
	}
}

// Uneven spacing: a parabola is integrated exactly by any spacing whose pairs differ by no more than twice; a straight line by all.
func TestUnevenStations(t *testing.T) {
	area := func(g func(x float64) float64, at ...float64) float64 {
		var s []hullform.Station
		for _, x := range at {
			s = append(s, hullform.Station{At: metres(x), Girth: metres(g(x))})
		}
		return hullform.GirthArea(s)
	}
	parabola := func(x float64) float64 { return 1 + 2*x + 3*x*x } // from 0 to 4: 4 + 16 + 64 = 84
	off(t, "even", area(parabola, 0, 1, 2, 3, 4), 84, 1e-9)
	off(t, "uneven pairs", area(parabola, 0, 1, 2.5, 3, 4), 84, 1e-9)
	off(t, "odd number of intervals", area(parabola, 0, 1, 2, 4), 84, 1e-9)
	off(t, "three intervals", area(parabola, 0, 1.5, 2.5, 4), 84, 1e-9)
	off(t, "three intervals, none of them one", area(parabola, 0, 0.8, 2.3, 4), 84, 1e-9)
	line := func(x float64) float64 { return 2 + x } // 16
	off(t, "straight, wildly uneven", area(line, 0, 0.01, 3.9, 3.95, 4), 16, 1e-9)
	// A pair of 0.5 and 3.5 takes trapeziums: 0.25 × (1 + 2.75) + 1.75 × (2.75 + 57) = 0.9375 + 104.5625
	off(t, "a pair too unlike", area(parabola, 0, 0.5, 4), 105.5, 1e-9)
}

func shape(kind string, l, b, d float64) hullform.Shape {
	return hullform.Shape{Kind: kind, Length: metres(l), Beam: metres(b), Draft: metres(d)}
}

func reckon(t *testing.T, s hullform.Shape) []hullform.Estimate {
	t.Helper()
	all, err := hullform.Reckon(tables.Default(), s)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestOrderOfMethods(t *testing.T) {
	s := shape("fin-keel-yacht", 10, 3, 1.8)
	first := func(want string) {
		t.Helper()
		all := reckon(t, s)
		if all[0].Method != want || !all[0].Decides {
			t.Errorf("%s decides, want %s", all[0].Method, want)
		}
		for i, e := range all {
			if e.Decides && i > 0 && !all[i-1].Decides {
				t.Errorf("%s may decide and stands behind one that may not", e.Method)
			}
		}
	}
	first("short-rule")
	s.CanoeDraft, s.Midship, s.Mass = metres(0.55), quantity.Percent.N(72), massOf(6.5)
	first("short-rule") // Delft gives the hull alone, and no keel is known
	if e, _ := said(t, s, "delft"); e.Decides || !e.Findings.Has(hullform.RuleWants) {
		t.Errorf("Delft without a keel: %+v", e)
	}
	s.Pieces = []hullform.Piece{{What: "keel", Length: metres(1.2), Height: metres(1.25)}}
	first("delft")
	s.Midship = quantity.Percent.N(64)
	first("delft")
	s.Midship = quantity.Percent.N(63)
	first("short-rule")
	if e, _ := said(t, s, "delft"); e.Decides || !e.Findings.Has(hullform.RuleOutside) {
		t.Errorf("Delft outside its range: %+v", e)
	}
	s.Kind = "" // nor does it hold there for a hull of which nobody says the form
	if e, ok := said(t, s, "delft"); ok && (e.Decides || !e.Findings.Has(hullform.RuleOutside)) {
		t.Errorf("Delft outside its range, the form not said: %+v", e)
	} else if !ok {
		t.Error("Delft asks for the form")
	}
	s.Kind = "fin-keel-yacht"
	s.Midship, s.Pieces, s.Known = quantity.Percent.N(72), nil, map[string]quantity.Area{"keel": quantity.SquareMetre.N(3)}
	first("delft")
	s.Kind = "open-boat"
	first("short-rule")
	if _, ok := said(t, s, "delft"); ok {
		t.Error("Delft's formula for an open boat")
	}
	s.Kind = "fin-keel-yacht"
	s.Girths = wigley{10, 3, 0.55}.girths(11)
	first("girths")
	s.Offsets = wigley{10, 3, 0.55}.sections(11, 11)
	first("offsets")
}

// A keel of 1.2 × 1.25 m is 2 to 2.1 times 1.5 m2 in surface: 3.00, 3.075, 3.15. The short rule has it in; the tape gets it added. An opening
// of 0.1 × 0.1 m is taken off both, and a bilge of a tunnel (π × 0.2 × 1 = 0.628) is added to both.
func TestPiecesAddedOnce(t *testing.T) {
	plain := shape("fin-keel-yacht", 10, 3, 1.8)
	plain.Girths = wigley{10, 3, 0.55}.girths(11)
	with := plain
	with.Pieces = []hullform.Piece{{What: "keel", Length: metres(1.2), Height: metres(1.25)}}
	gain := func(method string, end func(quantity.Range[quantity.Area]) quantity.Area) float64 {
		a, _ := said(t, plain, method)
		b, _ := said(t, with, method)
		return end(b.Area).Float(quantity.SquareMetre) - end(a.Area).Float(quantity.SquareMetre)
	}
	low := func(r quantity.Range[quantity.Area]) quantity.Area { return r.Low }
	typical := func(r quantity.Range[quantity.Area]) quantity.Area { return r.Typical }
	high := func(r quantity.Range[quantity.Area]) quantity.Area { return r.High }
	off(t, "short rule", gain("short-rule", typical), 0, 1e-9)
	off(t, "girths, low", gain("girths", low), 3, 0.011)
	off(t, "girths", gain("girths", typical), 3.075, 0.011)
	off(t, "girths, high", gain("girths", high), 3.15, 0.011)
	with.Pieces = []hullform.Piece{{What: "opening", Length: metres(1), Width: metres(0.5)}, {What: "thruster-tunnel", Length: metres(1), Width: metres(0.2)}}
	for _, m := range []string{"short-rule", "girths"} {
		off(t, m, gain(m, typical), 0.2*math.Pi-0.5, 0.011)
	}
	with.Pieces = []hullform.Piece{{What: "drive-leg", Length: metres(0.5), Height: metres(0.6)}} // a zone apart from the hull
	for _, m := range []string{"short-rule", "girths"} {
		off(t, m, gain(m, typical), 0, 1e-9)
	}
	with.Known = map[string]quantity.Area{"keel": quantity.SquareMetre.N(4)}
	with.Pieces = []hullform.Piece{{What: "keel", Length: metres(1.2), Height: metres(1.25)}}
	off(t, "a measured keel stands for its piece", gain("girths", typical), 4, 0.011)
	off(t, "and is in the short rule", gain("short-rule", typical), 0, 1e-9)
	with.Pieces, with.Known = []hullform.Piece{{What: "opening", Length: metres(10), Width: metres(10)}}, nil
	if _, err := hullform.Reckon(tables.Default(), with); !errors.Is(err, finding.ErrImpossible) {
		t.Errorf("openings larger than the hull: %v", err)
	}
}

func TestTwoHulls(t *testing.T) {
	s := shape("twin-hull", 10, 1.2, 0.6)
	two, _ := said(t, s, "short-rule")
	if two.Area.Typical.String() != "32.40 m2" { // 0.9 × 10 × 1.8 × 2
		t.Errorf("two hulls: %s", two.Area.Typical)
	}
	s.Hulls = 1
	if one, _ := said(t, s, "short-rule"); one.Area.Typical.String() != "16.20 m2" {
		t.Errorf("one hull: %s", one.Area.Typical)
	}
	s.Hulls = 0
	if fs := hullform.Proportions(tables.Default(), s); len(fs) != 0 {
		t.Errorf("one of two hulls: %v", fs)
	}
	s.Beam = metres(5.5) // taken across both
	if fs := hullform.Proportions(tables.Default(), s); !fs.Has(hullform.RuleBeam) || fs.Worst() != finding.Ask {
		t.Errorf("beam over both hulls: %v", fs)
	}
	s = shape("motor-planing", 8.5, 3, 1.1) // 0.37 with the leg up would pass, 1.3 m with it down does not
	if fs := hullform.Proportions(tables.Default(), s); len(fs) != 0 {
		t.Errorf("a draught of 1.1 m: %v", fs)
	}
	s.Draft = metres(1.3)
	if fs := hullform.Proportions(tables.Default(), s); !fs.Has(hullform.RuleDraft) {
		t.Errorf("a draught with the leg down: %v", fs)
	}
}

func TestOpenEnds(t *testing.T) {
	s := shape("motor-planing", 9, 3, 0.8)
	s.Girths = []hullform.Station{{At: metres(0), Girth: metres(0)}, {At: metres(3), Girth: metres(2.8)}, {At: metres(6), Girth: metres(3.4)}, {At: metres(9), Girth: metres(3.3)}}
	e := reckon(t, s)[0]
	if !e.Findings.Has(hullform.RuleOpenEnd) || !e.Findings.Has(hullform.RuleStations) {
		t.Errorf("%v", e.Findings)
	}
	s.Pieces = []hullform.Piece{{What: "transom", Length: metres(2.8), Width: metres(0.5)}}
	if e := reckon(t, s)[0]; e.Findings.Has(hullform.RuleOpenEnd) {
		t.Errorf("with a transom: %v", e.Findings)
	}
}

func TestFeetAndRounding(t *testing.T) {
	foot := func(n int64) quantity.Length { return quantity.Foot.N(n) }
	s := hullform.Shape{Kind: "fin-keel-yacht", Length: foot(33), Beam: foot(10), Draft: foot(6)}
	if e, _ := said(t, s, "short-rule"); e.Area.Typical.String() != "264.00 ft2" {
		t.Errorf("%s", e.Area.Typical)
	}
	s = shape("fin-keel-yacht", 10.001, 3.2, 1.8) // 25.0025: up
	if e, _ := said(t, s, "short-rule"); e.Area.Typical.String() != "25.01 m2" {
		t.Errorf("%s", e.Area.Typical)
	}
}

func ExampleReckon() {
	s := shape("fin-keel-yacht", 10, 3, 1.8)
	s.CanoeDraft, s.Midship, s.Mass = metres(0.55), quantity.Percent.N(72), massOf(6.5)
	s.Pieces = []hullform.Piece{{What: "keel", Length: metres(1.2), Height: metres(1.25)}, {What: "rudder", Length: metres(0.45), Height: metres(1.3)}}
	all, err := hullform.Reckon(tables.Default(), s)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range all {
		fmt.Println(e.Area.Typical, e.Name)
	}
	// Output:
	// 26.90 m2 canoe body of a sailing yacht, from length, beam, draught, volume and midship section
	// 24.00 m2 0.5 × L × (B + T), fin keel yacht
	// 48.00 m2 L × (B + T), the textbook's quick rule
	// 25.24 m2 2.6 × √(V × L)
	// 25.45 m2 V^(2/3) × (3.4 + L ÷ (2 V^(1/3)))
}

func BenchmarkReckon(b *testing.B) {
	book := tables.Default()
	s := shape("fin-keel-yacht", 10, 3, 1.8)
	s.Offsets = wigley{10, 3, 0.55}.sections(21, 21)
	for b.Loop() {
		if _, err := hullform.Reckon(book, s); err != nil {
			b.Fatal(err)
		}
	}
}

// A column that nobody knows is said at its first line alone, and a sheet without lines gives one fault.
func TestFaultsOfASheetOnce(t *testing.T) {
	for name, text := range map[string]string{
		"a column too many": "at [m],girth [m],colour\n0,1,red\n1,2,red\n2,1,red\n",
		"no lines":          "at [m],girth [m]\n",
	} {
		_, err := hullform.ReadGirths(file(text), "hull.csv")
		if fs, _ := errors.AsType[finding.Faults](err); len(fs) != 1 {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Stations nearer to each other than a float can tell add nothing: (9e17 - 1) m and 9e17 m are one place, and so is the area nought, not NaN.
func TestStationsNearerThanFloats(t *testing.T) {
	at := func(n int64) hullform.Station {
		return hullform.Station{At: quantity.Metre.N(n), Girth: quantity.Metre.N(1)}
	}
	const far = 900_000_000_000_000_000
	if a := hullform.GirthArea([]hullform.Station{at(far - 2), at(far - 1), at(far)}); a != 0 {
		t.Errorf("three: %g", a)
	}
	if a := hullform.GirthArea([]hullform.Station{at(far - 3), at(far - 2), at(far - 1), at(far)}); a != 0 {
		t.Errorf("four: %g", a)
	}
}

// A hull of a nanometre is a hull: each area is rounded up to 0.01 m2, never to nought, and no openings are blamed.
func TestTinyIsNotNothing(t *testing.T) {
	nm := func(n int64) quantity.Length { return quantity.Metre.Of(decimal.New(n, -9)) }
	got, err := hullform.Reckon(tables.Default(), hullform.Shape{Girths: []hullform.Station{{At: nm(0), Girth: nm(0)}, {At: nm(1), Girth: nm(1)}, {At: nm(2), Girth: nm(0)}}})
	if err != nil || len(got) != 1 || got[0].Area.Low.String() != "0.01 m2" {
		t.Errorf("%v %v", got, err)
	}
}

// A piece is no longer than the longest ship.
func TestPieceTooLong(t *testing.T) {
	for length, faults := range map[string]int{"1000 m": 0, "1000.1 m": 1} {
		l, err := quantity.Parse[quantity.Length](length)
		if err != nil {
			t.Fatal(err)
		}
		fs := hullform.Shape{Pieces: []hullform.Piece{{What: "keel", Length: l, Height: quantity.Metre.N(1)}}}.Check(tables.Default())
		if len(fs) != faults || faults == 1 && fs[0].Key != "piece[1].length" {
			t.Errorf("%s: %v", length, fs)
		}
	}
}

// Where the sections stand, and a point written twice, change no area; unlike numbers of points are joined by shares of the girth alone.
func TestSurfaceKnowsNoOrigin(t *testing.T) {
	section := func(at, up float64, points ...[2]float64) hullform.Section {
		s := hullform.Section{At: metres(at)}
		for _, p := range points {
			s.Points = append(s.Points, hullform.Point{Half: metres(p[0]), Height: metres(p[1] + up)})
		}
		return s
	}
	hull := func(along, up float64) []hullform.Section {
		return []hullform.Section{
			section(along, up, [2]float64{0, 0}, [2]float64{1.5, 0.4}, [2]float64{1.7, 1.2}),
			section(along+3, up, [2]float64{0, -0.2}, [2]float64{0.9, 0}, [2]float64{1.6, 0.3}, [2]float64{1.9, 1.2}),
			section(along+7, up, [2]float64{0, 0.1}, [2]float64{1.2, 1.2}),
		}
	}
	want, missed := hullform.Surface(hull(0, 0))
	for _, by := range [][2]float64{{100, 0}, {-20, 0}, {0, 5}, {-3, -5}} {
		area, m := hullform.Surface(hull(by[0], by[1]))
		off(t, fmt.Sprintf("moved by %v", by), area, want, 1e-9)
		off(t, fmt.Sprintf("moved by %v, missed", by), m, missed, 1e-9)
	}
	twice := hull(0, 0)
	for _, k := range []int{0, 3} {
		p := twice[1].Points
		twice[1].Points = append(append(append([]hullform.Point{}, p[:k]...), p[k]), p[k:]...)
	}
	area, _ := hullform.Surface(twice)
	off(t, "a point twice", area, want, 1e-9)
}

// Offsets are told as what the facets have, with what they missed, and with twice that; from few stations without. Surface itself is held
// against known hulls.
func TestOffsetsTellWhatTheyMissed(t *testing.T) {
	up := func(m2 float64) float64 { return math.Ceil(m2*100-1e-6) / 100 }
	for _, n := range []int{4, 5, 9} {
		s := shape("fin-keel-yacht", 10, 3, 1.8)
		s.Offsets = wigley{10, 3, 0.6}.sections(n, 9)
		area, missed := hullform.Surface(s.Offsets)
		if missed <= 0.005 {
			t.Fatalf("%d stations miss %g m2 only", n, missed)
		}
		typical, high := area+missed, area+2*missed
		if n < 5 {
			typical, high = area, area+missed
		}
		m, err := tables.Default().AreaMethod("offsets") // whose factor is how well sections are measured
		if err != nil {
			t.Fatal(err)
		}
		e, _ := said(t, s, "offsets")
		off(t, fmt.Sprintf("%d stations, low", n), e.Area.Low.Float(quantity.SquareMetre), up(area*m.Factor.Low), 1e-9)
		off(t, fmt.Sprintf("%d stations, typical", n), e.Area.Typical.Float(quantity.SquareMetre), up(typical*m.Factor.Typical), 1e-9)
		off(t, fmt.Sprintf("%d stations, high", n), e.Area.High.Float(quantity.SquareMetre), up(high*m.Factor.High), 1e-9)
		if e.Findings.Has(hullform.RuleStations) != (n < 5) {
			t.Errorf("%d stations: %v", n, e.Findings)
		}
	}
}

// An end is open where the tape gives it a girth, and each open end is named.
func TestEachOpenEndIsNamed(t *testing.T) {
	for _, c := range []struct {
		first, last float64
		want        []string
	}{{0, 0, nil}, {0, 3.3, []string{"last"}}, {1.2, 0, []string{"first"}}, {1.2, 3.3, []string{"first", "last"}}} {
		s := shape("motor-planing", 9, 3, 0.8)
		for i, g := range []float64{c.first, 2, 2.8, 3.4, c.last} {
			s.Girths = append(s.Girths, hullform.Station{At: metres(float64(i) * 9 / 4), Girth: metres(g)})
		}
		e, _ := said(t, s, "girths")
		var named []string
		for _, f := range e.Findings {
			if f.Rule == hullform.RuleOpenEnd {
				named = append(named, fmt.Sprint(f.Facts[0].Value))
			}
			if f.Rule == hullform.RuleStations {
				t.Errorf("five stations are said to be few")
			}
		}
		if !slices.Equal(named, c.want) {
			t.Errorf("from %g to %g m: %q are open, want %q", c.first, c.last, named, c.want)
		}
	}
}

// Areas come in the unit of the length, and where there is none in that of the tape.
func TestUnitOfTheArea(t *testing.T) {
	type tape func(int64) quantity.Length
	girths := func(of tape) []hullform.Station {
		return []hullform.Station{{At: of(0), Girth: of(0)}, {At: of(4), Girth: of(3)}, {At: of(8), Girth: of(0)}}
	}
	for _, c := range []struct {
		length quantity.Length
		tape   tape
		want   string
	}{
		{quantity.Length{}, quantity.Foot.N, "ft2"},
		{quantity.Length{}, quantity.Inch.N, "ft2"},
		{quantity.Length{}, quantity.Metre.N, "m2"},
		{quantity.Metre.N(8), quantity.Foot.N, "m2"},
		{quantity.Foot.N(8), quantity.Metre.N, "ft2"},
		{quantity.Inch.N(96), quantity.Metre.N, "ft2"},
	} {
		e, ok := said(t, hullform.Shape{Length: c.length, Girths: girths(c.tape)}, "girths")
		if !ok || e.Area.Typical.Unit().String() != c.want {
			t.Errorf("length %s, want %s: %s", c.length, c.want, e.Area.Typical)
		}
	}
	mixed := girths(quantity.Metre.N) // by the first that was read
	mixed[0].Girth = quantity.Foot.N(1)
	if e, ok := said(t, hullform.Shape{Girths: mixed}, "girths"); !ok || e.Area.Typical.Unit().String() != "ft2" {
		t.Errorf("a tape of two units: %s", e.Area.Typical)
	}
}

// The short rule at its ends, by hand of 10 × (3.2 + 1.8) = 50 m2 times the form's own factor; a midship section that fills its beam and draught is the most there is.
func TestShortRuleAtItsEnds(t *testing.T) {
	form, err := tables.Default().HullForm("fin-keel-yacht")
	if err != nil {
		t.Fatal(err)
	}
	s := shape("fin-keel-yacht", 10, 3.2, 1.8)
	e, _ := said(t, s, "short-rule")
	off(t, "low", e.Area.Low.Float(quantity.SquareMetre), 50*form.Factor.Low, 0.01)
	off(t, "typical", e.Area.Typical.Float(quantity.SquareMetre), 50*form.Factor.Typical, 0.01)
	off(t, "high", e.Area.High.Float(quantity.SquareMetre), 50*form.Factor.High, 0.01)
	for share, taken := range map[int64]bool{0: false, 1: true, 100: true, 101: false} {
		s.Midship = quantity.Percent.N(share)
		if fs := s.Check(tables.Default()); (len(fs) == 0) != taken {
			t.Errorf("a midship section of %d %%: %v", share, fs)
		}
	}
}

// Two hulls of half the mass each have twice the area of one such hull, by every method.
func TestTwoHullsAreTwiceOne(t *testing.T) {
	one, two := shape("twin-hull", 10, 1.2, 0.6), shape("twin-hull", 10, 1.2, 0.6)
	for _, s := range []*hullform.Shape{&one, &two} {
		s.CanoeDraft, s.Midship = metres(0.5), quantity.Percent.N(75)
		s.Offsets = wigley{10, 1.2, 0.6}.sections(9, 9)
	}
	one.Hulls, one.Mass = 1, massOf(3)
	two.Hulls, two.Mass = 2, massOf(6)
	x, y := reckon(t, one), reckon(t, two)
	if len(x) < 4 || len(x) != len(y) {
		t.Fatalf("%d and %d methods", len(x), len(y))
	}
	for i := range x {
		if x[i].Method != y[i].Method {
			t.Fatalf("%s and %s", x[i].Method, y[i].Method)
		}
		m2 := func(a quantity.Area) float64 { return a.Float(quantity.SquareMetre) }
		off(t, x[i].Method+", low", m2(y[i].Area.Low), 2*m2(x[i].Area.Low), 0.021) // each is rounded up to 0.01
		off(t, x[i].Method+", typical", m2(y[i].Area.Typical), 2*m2(x[i].Area.Typical), 0.021)
		off(t, x[i].Method+", high", m2(y[i].Area.High), 2*m2(x[i].Area.High), 0.021)
	}
}

// A V bottom is flat, so points more on its straight sides, at whatever share, change no area: 8 m of two sides of √(1.5² + 0.5459554²) m, and two ends of 1.5 × 0.5459554 m2.
// One section alone has its two ends.
func TestPointsOnAStraightSide(t *testing.T) {
	const half, depth = 1.5, 0.5459554
	vee := func(at float64, shares ...float64) hullform.Section {
		s := hullform.Section{At: metres(at)}
		for _, k := range shares {
			s.Points = append(s.Points, hullform.Point{Half: metres(half * k), Height: metres(depth * k)})
		}
		return s
	}
	want := 8*2*math.Hypot(half, depth) + 2*half*depth
	for _, shares := range [][]float64{{0, 1}, {0, 0.3, 1}, {0, 0.1, 0.85, 1}} {
		area, missed := hullform.Surface([]hullform.Section{vee(0, 0, 1), vee(5, shares...), vee(8, 0, 0.6, 1)})
		off(t, fmt.Sprint(shares), area, want, 1e-6)
		off(t, fmt.Sprint(shares, " missed"), missed, 0, 1e-6)
	}
	area, missed := hullform.Surface([]hullform.Section{vee(0, 0, 1)})
	off(t, "one section", area, 2*half*depth, 1e-6)
	off(t, "one section, missed", missed, 0, 0)
	if area, _ := hullform.Surface(nil); area != 0 {
		t.Errorf("nothing has %g m2", area)
	}
}

// A proportion is told to a hundredth: 10 ÷ 5.5 = 1.818….
func TestProportionsAsTold(t *testing.T) {
	fs := hullform.Proportions(tables.Default(), shape("twin-hull", 10, 5.5, 0.6))
	if len(fs) == 0 || fs[0].Rule != hullform.RuleBeam || fs[0].Facts[0].Value != 1.82 {
		t.Errorf("%v", fs)
	}
	// A piece without a name lacks it; one that nobody knows is not known.
	for what, kind := range map[string]error{"": finding.ErrMissing, "kel": finding.ErrUnknown} {
		s := shape("twin-hull", 10, 1.2, 0.6)
		s.Pieces = []hullform.Piece{{What: what}}
		if fs := s.Check(tables.Default()); len(fs) != 1 || !errors.Is(fs[0], kind) || !strings.Contains(fs[0].Error(), "keel") {
			t.Errorf("%q: %v", what, fs)
		}
	}
}
