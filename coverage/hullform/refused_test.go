package hullform_test

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"testing"

	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What a tape or a set of lines leaves out is missing, each under its own key; nought at the ends of a hull is none of that.
func TestStationsThatAreNone(t *testing.T) {
	nought := quantity.Metre.N(0)
	girth := func(at, girth quantity.Length) hullform.Shape {
		return hullform.Shape{Girths: []hullform.Station{{At: nought, Girth: nought}, {At: at, Girth: girth}, {At: metres(8), Girth: metres(1)}}}
	}
	point := func(at, half, height quantity.Length) hullform.Shape {
		ends := []hullform.Point{{Half: nought, Height: nought}, {Half: nought, Height: metres(0.5)}}
		return hullform.Shape{Offsets: []hullform.Section{
			{At: nought, Points: ends}, {At: at, Points: []hullform.Point{{Half: nought, Height: nought}, {Half: half, Height: height}}}, {At: metres(8), Points: ends},
		}}
	}
	for name, c := range map[string]struct {
		shape hullform.Shape
		key   string
		kind  error
	}{
		"a tape":                   {girth(metres(4), metres(3)), "", nil},
		"a girth nowhere":          {girth(quantity.Length{}, metres(3)), "girths.station[2].at", finding.ErrMissing},
		"a place without a girth":  {girth(metres(4), quantity.Length{}), "girths.station[2].girth", finding.ErrMissing},
		"a girth below nought":     {girth(metres(4), metres(-3)), "girths.station[2].girth", finding.ErrImpossible},
		"lines":                    {point(metres(4), metres(1), metres(0.5)), "", nil},
		"a section nowhere":        {point(quantity.Length{}, metres(1), metres(0.5)), "offsets.station[2].at", finding.ErrMissing},
		"a point without a height": {point(metres(4), metres(1), quantity.Length{}), "offsets.station[2].point[2].half_breadth", finding.ErrMissing},
		"a point without a half":   {point(metres(4), quantity.Length{}, metres(0.5)), "offsets.station[2].point[2].half_breadth", finding.ErrMissing},
		"a half below nought":      {point(metres(4), metres(-1), metres(0.5)), "offsets.station[2].point[2].half_breadth", finding.ErrImpossible},
	} {
		fs := c.shape.Check(tables.Default())
		if c.key == "" && len(fs) > 0 || c.key != "" && (len(fs) != 1 || fs[0].Key != c.key || !errors.Is(fs[0], c.kind)) {
			t.Errorf("%s: %v; want %q", name, fs, c.key)
		}
	}
}

// The pieces by zone: those of the hull's area and those beside it, in the order of the zones. Openings, what lies in the flat, and a piece that the
// book has not stand in neither.
func TestPiecesByZone(t *testing.T) {
	b := tables.Default()
	s := hullform.Shape{Pieces: []hullform.Piece{
		{What: "rudder", Length: metres(0.5), Height: metres(1)},
		{What: "keel", Length: metres(1), Height: metres(1)},
		{What: "keel", Length: metres(1), Height: metres(1)},
		{What: "thruster-opening", Width: metres(0.2), Count: 2},
		{What: "no such piece", Length: metres(1), Height: metres(1)},
	}}
	hull, apart, err := hullform.Zones(b, s)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]float64{}
	for i, list := range [][]hullform.ZoneRange{hull, apart} {
		for _, z := range list {
			row, err := b.Zone(z.Zone)
			if err != nil || row.InHull != (i == 0) {
				t.Errorf("zone %s stands in the wrong list (%v)", z.Zone, err)
			}
			seen[z.Zone] = z.Area.Typical.Float(quantity.SquareMetre)
		}
	}
	if len(seen) != 2 || seen["keel"] <= seen["rudder"] || seen["rudder"] <= 0 {
		t.Errorf("areas %v", seen)
	}
	// They come in the unit of the tape, as soon as it is laid once.
	keel := hullform.Shape{Pieces: s.Pieces[1:2], Girths: []hullform.Station{{At: quantity.Foot.N(0), Girth: quantity.Foot.N(3)}}}
	if hull, _, err := hullform.Zones(b, keel); err != nil || len(hull) != 1 || hull[0].Area.Typical.Unit() != quantity.SquareFoot {
		t.Errorf("%v, %v", hull, err)
	}
	if hull, apart, err := hullform.Zones(b, hullform.Shape{}); len(hull)+len(apart) > 0 || err != nil {
		t.Errorf("of no pieces: %v, %v, %v", hull, apart, err)
	}
}

// One station is a tape begun, not a tape left out; and a station of nought has no hull either.
func TestOneStation(t *testing.T) {
	one := hullform.Shape{Girths: []hullform.Station{{At: metres(0), Girth: metres(1)}}}
	if fs := one.Check(tables.Default()); len(fs) != 1 || fs[0].Key != "girths" || fs[0].Got != "1 stations" {
		t.Errorf("%v", fs)
	}
	one.Girths[0].Girth = metres(0)
	if fs := one.Check(tables.Default()); len(fs) != 2 {
		t.Errorf("of nought: %v", fs)
	}
	one = hullform.Shape{Offsets: []hullform.Section{{At: metres(0), Points: []hullform.Point{{Half: metres(0), Height: metres(0)}, {Half: metres(1), Height: metres(1)}}}}}
	if fs := one.Check(tables.Default()); len(fs) != 1 || fs[0].Key != "offsets" {
		t.Errorf("%v", fs)
	}
}

// Up to three hulls and two hundred points a section are taken.
func TestMostHullsAndPoints(t *testing.T) {
	for hulls, taken := range map[int]bool{-1: false, 0: true, 1: true, 3: true, 4: false} {
		s := shape("fin-keel-yacht", 10, 3, 1.8)
		s.Hulls = hulls
		if fs := s.Check(tables.Default()); (len(fs) == 0) != taken {
			t.Errorf("%d hulls: %v", hulls, fs)
		}
	}
	for points, taken := range map[int]bool{1: false, 2: true, 200: true, 201: false} {
		var s hullform.Shape
		for x := range 3 {
			section := hullform.Section{At: metres(float64(x))}
			for k := range points {
				section.Points = append(section.Points, hullform.Point{Half: metres(float64(k) / 100), Height: metres(float64(k) / 50)})
			}
			s.Offsets = append(s.Offsets, section)
		}
		if fs := s.Check(tables.Default()); (len(fs) == 0) != taken {
			t.Errorf("%d points: %v", points, fs)
		}
	}
}

// A model is a hull: sections of a few square decimetres are taken.
func TestModelIsAHull(t *testing.T) {
	s := hullform.Shape{Offsets: wigley{0.5, 0.1, 0.05}.sections(5, 5)}
	if fs := s.Check(tables.Default()); len(fs) != 0 {
		t.Errorf("%v", fs)
	}
}

// A sheet's cell that lacks is told by its line, once, and so is a column that nobody knows.
func TestCellsThatLack(t *testing.T) {
	const head, rest = "at [m],half_breadth [m],height [m]", "\n0,0,0\n0,0,1\n1,0,0\n1,1,1\n2,0,0\n2,1,1\n"
	for text, key := range map[string]string{
		head + rest: "",
		head + "\n0,0,0\n0,,1\n1,0,0\n1,1,1\n2,0,0\n2,1,1\n":                 "line 3.half_breadth",
		head + "\n0,0,0\n0,0,\n1,0,0\n1,1,1\n2,0,0\n2,1,1\n":                 "line 3.height",
		head + "\n0,0,0\n,0,1\n1,0,0\n1,1,1\n2,0,0\n2,1,1\n":                 "line 3.at",
		head + ",colour\n0,0,0,red\n0,0,1,red\n1,0,0\n1,1,1\n2,0,0\n2,1,1\n": "line 2.colour",
	} {
		_, err := hullform.ReadOffsets(file(text), "hull.csv")
		fs, _ := errors.AsType[finding.Faults](err)
		if key == "" && err != nil || key != "" && (len(fs) != 1 || fs[0].Key != key) {
			t.Errorf("%q: %v, want %q", text, err, key)
		}
	}
}

// Of a section of which a point is not whole nothing else is told, be its line crossed.
func TestHalfAPointIsAllThatIsTold(t *testing.T) {
	s := hullform.Shape{Offsets: wigley{10, 3, 0.6}.sections(5, 5)}
	s.Offsets[2].Points = corners([2]int{0, 0}, [2]int{2, 2}, [2]int{2, 0}, [2]int{0, 2}, [2]int{1, 3})
	if fs := s.Check(tables.Default()); len(fs) != 1 || fs[0].Got != "the line from point 1 to 2 crosses that from 3 to 4" {
		t.Errorf("crossed: %v", fs)
	}
	s.Offsets[2].Points[4].Height = quantity.Length{}
	if fs := s.Check(tables.Default()); len(fs) != 1 || !errors.Is(fs[0], finding.ErrMissing) {
		t.Errorf("crossed and not whole: %v", fs)
	}
}

func corners(at ...[2]int) []hullform.Point {
	var out []hullform.Point
	for _, p := range at {
		out = append(out, hullform.Point{Half: quantity.Metre.N(int64(p[0])), Height: quantity.Metre.N(int64(p[1]))})
	}
	return out
}

// Two stretches cross where each has a point inside it that is the other's too; to touch at an end, or to lie in one line, is no crossing. The two equations
// p + t (q − p) = r + u (s − r) are solved here by whole numbers, with 0 < t, u < 1.
func TestCrossingsAreThoseOfGeometry(t *testing.T) {
	inside := func(n, d int) bool { // 0 < n/d < 1
		if d < 0 {
			n, d = -n, -d
		}
		return 0 < n && n < d
	}
	cross := func(p, q, r, s [2]int) bool {
		ax, ay, bx, by, cx, cy := q[0]-p[0], q[1]-p[1], r[0]-s[0], r[1]-s[1], r[0]-p[0], r[1]-p[1]
		d := ax*by - ay*bx
		return d != 0 && inside(cx*by-cy*bx, d) && inside(ax*cy-ay*cx, d)
	}
	draw := rand.New(rand.NewPCG(1, 2))
	shapes := [][][2]int{
		{{0, 0}, {2, 0}, {2, 1}, {1, 0}},  // comes back to touch the bottom
		{{0, 1}, {1, 0}, {2, 1}, {0, -1}}, // goes through a corner
		{{0, 0}, {2, 1}, {4, 4}, {4, 1}},  // crosses what lies beyond the first stretch
	}
	for range 500 {
		line := [][2]int{{0, draw.IntN(6)}}
		for range 3 + draw.IntN(4) {
			line = append(line, [2]int{draw.IntN(6), draw.IntN(6)})
		}
		shapes = append(shapes, line)
	}
	told := 0
	s := hullform.Shape{Offsets: wigley{10, 3, 0.6}.sections(3, 3)}
	for _, line := range shapes {
		want := ""
		for i := range len(line) - 1 {
			for j := i + 1; j < len(line)-1 && want == ""; j++ {
				if cross(line[i], line[i+1], line[j], line[j+1]) {
					want = fmt.Sprintf("the line from point %d to %d crosses that from %d to %d", i+1, i+2, j+1, j+2)
				}
			}
		}
		s.Offsets[1].Points = corners(line...)
		got := ""
		if fs := s.Check(tables.Default()); len(fs) > 0 {
			got = fs[0].Got
			told++
		}
		if got != want {
			t.Fatalf("%v: %q, want %q", line, got, want)
		}
	}
	if told < 100 || told > 450 {
		t.Errorf("%d of 500 cross", told)
	}
}
