package hullform_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What stations miss is told by every second of them: with it the area of half a spheroid is nearer to the true one by far. 25.0962551 m2 as in TestSurfaceConverges.
func TestWhatStationsMiss(t *testing.T) {
	const n, fine = 21, 401
	var hull []hullform.Section
	for i := range n {
		u := math.Pi * float64(i) / (n - 1)
		hull = append(hull, arc(5-5*math.Cos(u), math.Sin(u), fine))
	}
	area, missed := hullform.Surface(hull)
	if e := 25.0962551 - area; e <= 0 || math.Abs(e-missed) > 0.1*e {
		t.Errorf("%.5f m2 are missed, said %.5f", e, missed)
	}
}

// By hand of g = 1 + 2x + 3x²: two stations are a trapezium; a last interval much unlike the one before is one too, beside Simpson's 14 from 0 to 2.
func TestFewAndUnevenGirths(t *testing.T) {
	g := func(at ...float64) float64 {
		var s []hullform.Station
		for _, x := range at {
			s = append(s, hullform.Station{At: metres(x), Girth: metres(1 + 2*x + 3*x*x)})
		}
		return hullform.GirthArea(s)
	}
	off(t, "two stations", g(0, 2), 2*(1+17)/2.0, 1e-9)
	off(t, "a short last interval", g(0, 1, 2, 2.1), 14+0.1*(17+18.43)/2, 1e-9)
	off(t, "a long last interval", g(0, 1, 2, 5), 14+3*(17+86)/2.0, 1e-9)
}

// The order is that of the rows' numbers, wherever they stand; each method says what it rests on.
func TestOrderIsInTheRows(t *testing.T) {
	s := shape("fin-keel-yacht", 10, 3, 1.8)
	s.Offsets = wigley{10, 3, 0.6}.sections(9, 9)
	if first := reckon(t, s)[0].Method; first != "offsets" {
		t.Fatalf("first is %s", first)
	}
	own, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte("[[area_method]]\nkey = \"offsets\"\nbasis = \"own table\"\nsource = \"the surveyor\"\norder = 90\n")}})
	if err != nil {
		t.Fatal(err)
	}
	all, err := hullform.Reckon(own, s)
	if err != nil || all[0].Method != "short-rule" || all[1].Method != "offsets" {
		t.Errorf("%v, first are %s and %s", err, all[0].Method, all[1].Method)
	}
	for _, e := range reckon(t, s) {
		m, err := tables.Default().AreaMethod(e.Method)
		if err != nil {
			t.Fatal(err)
		}
		want := m.Basis("name")
		if e.Method == "short-rule" {
			form, _ := tables.Default().HullForm("fin-keel-yacht")
			want = form.Basis("factor")
		}
		if !slices.Contains(e.Basis, want) || e.Basis[0] != want {
			t.Errorf("%s rests on %v, want %v first", e.Method, e.Basis, want)
		}
	}
}

// Without a form there is no short rule and nothing to compare proportions with; without dimensions neither.
func TestWithoutFormOrDimensions(t *testing.T) {
	whole := shape("fin-keel-yacht", 10, 3, 1.8)
	for name, change := range map[string]func(s *hullform.Shape){
		"no form":    func(s *hullform.Shape) { s.Kind = "" },
		"no length":  func(s *hullform.Shape) { s.Length = quantity.Length{} },
		"no beam":    func(s *hullform.Shape) { s.Beam = quantity.Length{} },
		"no draught": func(s *hullform.Shape) { s.Draft = quantity.Length{} },
	} {
		s := whole
		s.Beam = metres(9) // no such boat
		if len(hullform.Proportions(tables.Default(), s)) == 0 {
			t.Fatal("9 m of beam are in proportion")
		}
		change(&s)
		if fs := hullform.Proportions(tables.Default(), s); len(fs) != 0 {
			t.Errorf("%s: %v", name, fs)
		}
		s = whole
		change(&s)
		s.Girths = []hullform.Station{{At: metres(0), Girth: metres(0)}, {At: metres(5), Girth: metres(3)}, {At: metres(10), Girth: metres(0)}}
		if e, ok := said(t, s, "short-rule"); ok {
			t.Errorf("%s: %s by the short rule", name, e.Area.Typical)
		}
	}
}

// A hundred pieces of a kind are taken, and no more; a canoe body as deep as the boat, and a waterline as wide as she is, are taken too.
func TestCountOfPieces(t *testing.T) {
	for count, taken := range map[int]bool{-1: false, 0: true, 1: true, 100: true, 101: false} {
		s := shape("fin-keel-yacht", 10, 3, 1.8)
		s.Pieces = []hullform.Piece{{What: "keel", Length: metres(1.2), Height: metres(1.2), Count: count}}
		fs := s.Check(tables.Default())
		if told := slices.ContainsFunc(fs, func(f finding.Fault) bool { return f.Key == "piece[1].count" }); told == taken {
			t.Errorf("%d pieces: %s", count, fmt.Sprint(fs))
		}
	}
	for millimetres, taken := range map[int64]bool{-1: true, 0: true, 1: false} {
		deep, wide := shape("fin-keel-yacht", 10, 3, 1.8), shape("fin-keel-yacht", 10, 3, 1.8)
		deep.CanoeDraft, wide.WaterlineBeam = quantity.Millimetre.N(1800+millimetres), quantity.Millimetre.N(3000+millimetres)
		for _, s := range []hullform.Shape{deep, wide} {
			if fs := s.Check(tables.Default()); (len(fs) == 0) != taken {
				t.Errorf("%d mm beyond: %v", millimetres, fs)
			}
		}
	}
}

// A hull a tenth as large has a hundredth of the area, whatever points its sections have; and no station of an even number is lost for what they miss.
func TestScaleAndEvenStations(t *testing.T) {
	hull := func(k float64) []hullform.Section {
		section := func(at float64, points ...[2]float64) hullform.Section {
			s := hullform.Section{At: metres(at * k)}
			for _, p := range points {
				s.Points = append(s.Points, hullform.Point{Half: metres(p[0] * k), Height: metres(p[1] * k)})
			}
			return s
		}
		return []hullform.Section{
			section(0, [2]float64{0, 0}, [2]float64{1.5, 0.4}, [2]float64{1.7, 1.2}),
			section(3, [2]float64{0, -0.2}, [2]float64{0.9, 0}, [2]float64{1.6, 0.3}, [2]float64{1.9, 1.2}),
			section(7, [2]float64{0, 0.1}, [2]float64{1.2, 1.2}),
		}
	}
	whole, _ := hullform.Surface(hull(1))
	tenth, _ := hullform.Surface(hull(0.1))
	off(t, "a tenth", tenth*100, whole, 1e-9)
	box := func(at float64) hullform.Section {
		return hullform.Section{At: metres(at), Points: []hullform.Point{{Half: metres(0), Height: metres(0)}, {Half: metres(1.5), Height: metres(0)}, {Half: metres(1.5), Height: metres(0.8)}}}
	}
	for _, at := range [][]float64{{0, 10}, {0, 4, 10}, {0, 2, 6, 10}, {0, 1, 3, 7, 10}, {0, 1, 2, 3, 7, 10}} {
		var hull []hullform.Section
		for _, x := range at {
			hull = append(hull, box(x))
		}
		area, missed := hullform.Surface(hull)
		off(t, fmt.Sprint(at), area, 50.8, 1e-9)
		off(t, fmt.Sprint(at, " missed"), missed, 0, 1e-9)
	}
}

// Three to a thousand stations are taken; a station without its place is said to lack it.
func TestNumberOfStations(t *testing.T) {
	for n, taken := range map[int]bool{2: false, 3: true, 1000: true, 1001: false} {
		s := shape("fin-keel-yacht", 10, 3, 1.8)
		for i := range n {
			s.Girths = append(s.Girths, hullform.Station{At: metres(float64(i) / 100), Girth: metres(1)})
		}
		if fs := s.Check(tables.Default()); (len(fs) == 0) != taken {
			t.Errorf("%d stations: %d faults", n, len(fs))
		}
	}
	_, err := hullform.ReadGirths(file("at [m],girth [m]\n0,0\n,2\n5,3\n10,0\n"), "hull.csv")
	if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) != 1 || fs[0].Key != "line 3.at" || !errors.Is(fs[0], finding.ErrMissing) {
		t.Errorf("a station without its place: %v", err)
	}
}

// An ellipsoid without a height is as high as it is wide, and one with a height is not: a sphere of 1 m has π m2, by hand.
func TestHeightOfAnEllipsoid(t *testing.T) {
	row := tables.PieceRow{Shape: tables.Ellipsoid, Factor: quantity.Exactly(1.0)}
	sphere := hullform.PieceArea(row, hullform.Piece{Length: metres(1), Width: metres(1)})
	off(t, "a sphere", sphere.Typical, math.Pi, 1e-9)
	same := hullform.PieceArea(row, hullform.Piece{Length: metres(2), Width: metres(0.5), Height: metres(0.5)})
	off(t, "no height", hullform.PieceArea(row, hullform.Piece{Length: metres(2), Width: metres(0.5)}).Typical, same.Typical, 1e-12)
	if high := hullform.PieceArea(row, hullform.Piece{Length: metres(2), Width: metres(0.5), Height: metres(1)}); high.Typical <= same.Typical {
		t.Errorf("twice as high: %g m2 after %g", high.Typical, same.Typical)
	}
}
