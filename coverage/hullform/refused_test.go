package hullform_test

import (
	"errors"
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
	if hull, apart, err := hullform.Zones(b, hullform.Shape{}); len(hull)+len(apart) > 0 || err != nil {
		t.Errorf("of no pieces: %v, %v, %v", hull, apart, err)
	}
}
