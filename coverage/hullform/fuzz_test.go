package hullform_test

import (
	"math"
	"testing"

	"boatyard.example/bottomwork/coverage/hullform"
)

// Whatever a sheet of girths holds, it is read or refused, and what is read has a finite area above nought.
func FuzzReadGirths(f *testing.F) {
	for _, text := range []string{
		"at [m],girth [m]\n0,0\n1,2.5\n2,1\n", "at;half_girth\n0 ft;0 in\n9 in;1 ft\n2 m;20 mm\n", "\ufeff\"at [m]\",girth [m]\r\n0,0\r\n1,1\r\n3.1,1\r\n",
		"at [m],girth [m]\r0,0\r1,2\r2,1\r", "at [m],girth [m]\n0,0\n0.000000001,0.000000001\n900000000000000000,1\n", "at,at,girth [m\n0,9,1,1\n\"1,5\",2\n",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := hullform.ReadGirths(file(string(data)), "hull.csv")
		if (err == nil) == (len(got) == 0) {
			t.Fatalf("%d stations, error %v", len(got), err)
		}
		if area := hullform.GirthArea(got); err == nil && !(area > 0 && !math.IsInf(area, 0)) {
			t.Fatalf("an area of %g of %v", area, got)
		}
	})
}

// Whatever a sheet of offsets holds, it is read or refused, and what is read has a finite area above nought.
func FuzzReadOffsets(f *testing.F) {
	for _, text := range []string{
		"at [m],half_breadth [m],height [m]\n0,0,0\n0,0,1\n1,0,0\n1,1,1\n2,0,0\n2,1,1\n", "at;half_breadth;height\n0 ft;0 in;0 m\n0 ft;1 in;1 m\n1 ft;0 m;0 m\n1 ft;1 m;2 m\n3 m;0 m;0 m\n3 m;1 m;1 m\n3 m;1 m;2 m\n",
		"at [m],half_breadth [m],height [m]\n0,0,0\n0,0,0\n1,0,0\n1,900000000000000000,0.000000001\n2,0,0\n2,0,0\n", "at [m],half_breadth [m],height [m]\n0,-0,0\n0,1,-1\n\n0,0,0\n",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := hullform.ReadOffsets(file(string(data)), "hull.csv")
		if (err == nil) == (len(got) == 0) {
			t.Fatalf("%d sections, error %v", len(got), err)
		}
		if area, missed := hullform.Surface(got); err == nil && (!(area > 0) || math.IsInf(area, 0) || math.IsNaN(missed) || math.IsInf(missed, 0)) {
			t.Fatalf("an area of %g, %g missed, of %v", area, missed, got)
		}
	})
}
