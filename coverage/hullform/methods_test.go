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
		rests := []finding.Basis{want}
		if e.Method == "offsets" { // the way is derived, how well sections are measured an assumption
			rests = append(rests, m.Basis("factor"))
		}
		if !slices.Equal(e.Basis, rests) {
			t.Errorf("%s rests on %v, want %v", e.Method, e.Basis, rests)
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
	for millimetres, taken := range map[int64]bool{-1: false, 0: false, 1: true} {
		deep, wide := shape("fin-keel-yacht", 10, 3, 1.8), shape("fin-keel-yacht", 10, 3, 1.8)
		deep.CanoeDraft, wide.WaterlineBeam = quantity.Millimetre.N(millimetres), quantity.Millimetre.N(millimetres)
		for key, s := range map[string]hullform.Shape{"canoe_draft": deep, "waterline_beam": wide} {
			if fs := s.Check(tables.Default()); (len(fs) == 0) != taken || len(fs) > 0 && fs[0].Key != key {
				t.Errorf("%s of %d mm: %v", key, millimetres, fs)
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

// own is the module's book with a row of a method on top.
func own(t *testing.T, row string) *tables.Book {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte("[[area_method]]\nbasis = \"own table\"\nsource = \"the surveyor\"\n" + row)}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A method's factor is applied end by end. By hand: two hulls of 10 × (1.2 + 0.6) = 18 m2 are 36, times 0.5, 0.8 and 2.
func TestFactorOfAMethod(t *testing.T) {
	all, err := hullform.Reckon(own(t, "key = \"textbook\"\nfactor = [0.5, 0.8, 2]\n"), shape("twin-hull", 10, 1.2, 0.6))
	i := slices.IndexFunc(all, func(e hullform.Estimate) bool { return e.Method == "textbook" })
	if err != nil || i < 0 {
		t.Fatalf("%v, %v", all, err)
	}
	if a := all[i].Area; a.Low.String() != "18.00 m2" || a.Typical.String() != "28.80 m2" || a.High.String() != "72.00 m2" {
		t.Errorf("%s, %s, %s", a.Low, a.Typical, a.High)
	}
}

// The first of the methods has a range like any other: one's own row may give it one.
func TestRangeOfTheFirstMethod(t *testing.T) {
	s := shape("fin-keel-yacht", 10, 2.5, 1.8) // length by beam is 4
	s.Offsets = wigley{10, 2.5, 0.6}.sections(9, 9)
	for span, inside := range map[string]bool{"[3, 5]": true, "[4.1, 5]": false} {
		all, err := hullform.Reckon(own(t, "key = \"offsets\"\norder = 1\nlength_beam = "+span+"\n"), s)
		i := slices.IndexFunc(all, func(e hullform.Estimate) bool { return e.Method == "offsets" })
		if err != nil || i < 0 || all[i].Decides != inside || all[i].Findings.Has(hullform.RuleOutside) == inside {
			t.Errorf("%s: %v, %v", span, all, err)
		}
	}
}

// A method that never decides says nothing of why it does not, whatever range its row has.
func TestRangeOfWhatNeverDecides(t *testing.T) {
	all, err := hullform.Reckon(own(t, "key = \"textbook\"\nlength_beam = [4.1, 5]\n"), shape("fin-keel-yacht", 10, 2.5, 1.8))
	i := slices.IndexFunc(all, func(e hullform.Estimate) bool { return e.Method == "textbook" })
	if err != nil || i < 0 || all[i].Decides || len(all[i].Findings) > 0 {
		t.Errorf("%v, %v", all, err)
	}
}

// The block coefficient is V ÷ (L × B × T), from 0.5 to 0.85 for the rule of displacement hulls. By hand: 10 × 3.75 × 1.25 = 46.875 m3, of
// which she fills so much.
func TestBlockCoefficient(t *testing.T) {
	for block, inside := range map[float64]bool{0.49: false, 0.51: true, 0.84: true, 0.86: false} {
		s := shape("motor-displacement", 10, 3.75, 1.25)
		s.Mass = massOf(block * 46.875)
		e, ok := said(t, s, "denny-mumford")
		if !ok || e.Findings.Has(hullform.RuleOutside) == inside {
			t.Errorf("block coefficient %g: %v", block, e.Findings)
		}
		for _, f := range e.Findings {
			if f.Rule == hullform.RuleOutside && (f.Facts[0].Value != "block coefficient" || f.Facts[1].Value != block) {
				t.Errorf("block coefficient %g is told as %v", block, f.Facts)
			}
		}
	}
}

// A piece of another zone is not what a method wants.
func TestAnotherPieceIsNoKeel(t *testing.T) {
	s := shape("fin-keel-yacht", 10, 3, 1.8)
	s.CanoeDraft, s.Midship, s.Mass = metres(0.55), quantity.Percent.N(72), massOf(6.5)
	for what, wants := range map[string]bool{"rudder": true, "keel": false} {
		s.Pieces = []hullform.Piece{{What: what, Length: metres(0.5), Height: metres(1.2)}}
		if e, ok := said(t, s, "delft"); !ok || e.Findings.Has(hullform.RuleWants) != wants {
			t.Errorf("with a %s: %v", what, e.Findings)
		}
	}
}

// Of no form she is one hull: 10 × (3 + 1.8) = 48 m2 by the textbook. An opening as large as that leaves nothing; one a little smaller leaves something.
func TestOneHullOfNoForm(t *testing.T) {
	s := shape("", 10, 3, 1.8)
	if e, ok := said(t, s, "textbook"); !ok || e.Area.Typical.String() != "48.00 m2" {
		t.Errorf("%v", e.Area)
	}
	for width, taken := range map[string]bool{"4.799 m": true, "4.8 m": false, "4.801 m": false} {
		w, err := quantity.Parse[quantity.Length](width)
		if err != nil {
			t.Fatal(err)
		}
		s.Pieces = []hullform.Piece{{What: "opening", Length: metres(10), Width: w}}
		if _, err := hullform.Reckon(tables.Default(), s); (err == nil) != taken || err != nil && !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("an opening of 10 m × %s: %v", width, err)
		}
	}
}

// A bow that is a point closes the hull like a pyramid, however many points its neighbour has. By hand, apex 4 m before a section of 1 m out and 1 m up: sides of
// 4 × 1 ÷ 2 and √17 ÷ 2 on either hand, and the end of 2 m2.
func TestBowThatIsAPoint(t *testing.T) {
	at := func(x float64, points ...[2]float64) hullform.Section {
		s := hullform.Section{At: metres(x)}
		for _, p := range points {
			s.Points = append(s.Points, hullform.Point{Half: metres(p[0]), Height: metres(p[1])})
		}
		return s
	}
	for n := 1; n <= 4; n++ {
		area, _ := hullform.Surface([]hullform.Section{at(0, make([][2]float64, n+1)...), at(4, [2]float64{}, [2]float64{1, 0}, [2]float64{1, 1})})
		off(t, fmt.Sprint("a pyramid whose tip is written ", n+1, " times"), area, 4+math.Sqrt(17)+2, 1e-9)
	}
	// From three stations on what they missed is told: a third of what the one between adds to the flat plate of 8 × 1 m, both sides, that the two stems make.
	stem := [][2]float64{{}, {0, 1}}
	three, missed := hullform.Surface([]hullform.Section{at(0, stem...), at(4, [2]float64{}, [2]float64{2, 1}), at(8, stem...)})
	off(t, "missed", missed, (three-16)/3, 1e-9)
	if three <= 17 {
		t.Errorf("a beam of 4 m adds nothing: %g m2", three)
	}
	// One that tapers to half its size in 4 m, with a point more on the small side: bottom 2 × 4 × (1.5 + 0.75) ÷ 2, sides 2 × (0.8 + 0.4) ÷ 2 × √(16 + 0.75²), ends 2.4 and 0.6.
	for _, more := range [][][2]float64{{{}, {0.75, 0}, {0.75, 0.4}}, {{}, {0.75, 0}, {0.75, 0.2}, {0.75, 0.4}}, {{}, {0.5, 0}, {0.75, 0}, {0.75, 0.1}, {0.75, 0.4}}} {
		area, _ := hullform.Surface([]hullform.Section{at(0, [2]float64{}, [2]float64{1.5, 0}, [2]float64{1.5, 0.8}), at(4, more...)})
		off(t, fmt.Sprint("tapering to ", more), area, 9+1.2*math.Sqrt(16.5625)+3, 1e-9)
	}
	// A box whose sections have points more on their straight sides is the same box: 2 × (1.5 + 0.8) × 10 + 2 × 2 × 1.5 × 0.8.
	bottom, top := [2]float64{1.5, 0}, [2]float64{1.5, 0.8}
	for _, more := range [][][2]float64{{{}, bottom, {1.5, 0.3}, top}, {{}, {0.7, 0}, bottom, top}, {{}, {}, bottom, top}, {{}, bottom, top, top}, {{}, {0.2, 0}, bottom, {1.5, 0.3}, {1.5, 0.5}, top}} {
		area, missed := hullform.Surface([]hullform.Section{at(0, [2]float64{}, bottom, top), at(4, more...), at(10, [2]float64{}, bottom, top)})
		off(t, fmt.Sprint(more), area, 50.8, 1e-9)
		off(t, fmt.Sprint(more, " missed"), missed, 0, 1e-9)
	}
}
