package coverage_test

import (
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables/quantity"
)

// A sloop of 9.6 m on the waterline, taped at five stations 2.4 m apart: girths 0, 2.2, 3.4, 3.0, 0.4 m; a keel of 1.3 × 1.15 m, a rudder
// of 0.4 × 1.2 m; two coats of 50 um by brush; solids 40, 50, 60 %.
//
//	Simpson           2.4 ÷ 3 × (0 + 4 × 2.2 + 2 × 3.4 + 4 × 3.0 + 0.4) = 22.4 m2; × 1.00, 1.01, 1.03 = 22.4, 22.624, 23.072
//	keel              1.495 × 2.0, 2.05, 2.1                  = 2.99, 3.06475, 3.1395    up: 2.99, 3.07, 3.14
//	rudder            0.48 × 2.0, 2.05, 2.1                   = 0.96, 0.984, 1.008       up: 0.96, 0.99, 1.01
//	total             26.35, 26.67275, 27.2195                                           up: 26.35, 26.68, 27.22 m2
//	strips            by their own ends the flat would fall from 19.75 to 18.08, so typical shares and pieces stand for all ends:
//	waterline         × 0.10 = 2.635, 2.668, 2.722    up: 2.64, 2.67, 2.73
//	edges             × 0.07 = 1.8445, 1.8676, 1.9054 up: 1.85, 1.87, 1.91
//	flat              26.35 − 2.64 − 1.85 − 3.07 − 0.99 = 17.80; 26.68 − 2.67 − 1.87 − 3.07 − 0.99 = 18.08; 27.22 − 2.73 − 1.91 − 3.07 − 0.99 = 18.52
//	low litres        2 × (10 × 26.35 × 50 ÷ (60 × 97) + 0.10) = 2 × (2.263746 + 0.10) = 4.727491, up: 4.73 L
//	typical litres    2 × (10 × 26.68 × 50 ÷ (50 × 95) + 0.15) = 2 × (2.808421 + 0.15) = 5.916842, up: 5.92 L
//	high litres       2 × (10 × 27.22 × 50 ÷ (40 × 90) + 0.25) = 2 × (3.780556 + 0.25) = 8.061111, up: 8.07 L
//	by zone, typical  waterline 5.92 × 2.67 ÷ 26.68 = 0.592, edges 0.4149, keel 0.6811, rudder 0.2196, down: 0.59, 0.41, 0.68, 0.21; flat the rest, 4.03
func TestSloopByHand(t *testing.T) {
	b := book(t)
	h := hull(t, "fin-keel-yacht", "9.6 m", "3.2 m", "1.75 m")
	h.Girths = girths(t, "0 m", "0 m", "2.4 m", "2.2 m", "4.8 m", "3.4 m", "7.2 m", "3.0 m", "9.6 m", "0.4 m")
	h.Pieces = []hullform.Piece{{What: "keel", Length: length(t, "1.3 m"), Height: length(t, "1.15 m")}, {What: "rudder", Length: length(t, "0.4 m"), Height: length(t, "1.2 m")}}
	got := wetted(t, b, h)
	if g, w := rangeText(got.Total), "26.35 m2, 26.68 m2, 27.22 m2"; g != w {
		t.Errorf("total %s, want %s", g, w)
	}
	for name, want := range map[string]string{
		"waterline": "2.64 m2, 2.67 m2, 2.73 m2", "edges": "1.85 m2, 1.87 m2, 1.91 m2", "keel": "3.07 m2, 3.07 m2, 3.07 m2",
		"rudder": "0.99 m2, 0.99 m2, 0.99 m2", "flat": "17.80 m2, 18.08 m2, 18.52 m2",
	} {
		if g := zone(t, got, name); g != want {
			t.Errorf("%s %s, want %s", name, g, want)
		}
	}
	litres, err := coverage.Paint(b, got.Total, coating(t, "40 %", "50 %", "60 %"), film(t, "50 um"), 2, coverage.Method{By: "brush"})
	if err != nil {
		t.Fatal(err)
	}
	if g, w := rangeText(litres), "4.73 L, 5.92 L, 8.07 L"; g != w {
		t.Errorf("litres %s, want %s", g, w)
	}
	byZone, err := coverage.ByZone(litres, got.Zones)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"flat": "4.03 L", "waterline": "0.59 L", "edges": "0.41 L", "keel": "0.68 L", "rudder": "0.21 L"}
	for _, z := range byZone {
		if z.Litres.Typical.String() != want[z.Zone] {
			t.Errorf("%s %s, want %s", z.Zone, z.Litres.Typical, want[z.Zone])
		}
	}
}

// A metal centreboarder of 11.6 m over all, 10.4 m on the waterline, beam 3.6 m, draught 1.0 m with the board up, painted to 0.08 m above
// the waterline; blasted with medium grit (60 to 100 um), three coats of epoxy of 80 um by airless spray under a roof; solids 50, 60, 75 %.
//
//	L(B + T)          10.4 × 4.6 = 47.84; × 0.55, 0.65, 0.80 = 26.312, 31.096, 38.272                up: 26.32, 31.10, 38.28 m2
//	outline           20.8 + 3.6 × 0.3, 0.6, 1.0 = 21.88, 22.96, 24.40 m; × 0.08 = 1.7504, 1.8368, 1.952, up: 1.76, 1.84, 1.96 m2
//	total             28.08, 32.94, 40.24 m2
//	dead film         0.5 × 60, 0.5 × 80, 0.67 × 100 = 30, 40, 67 um
//	fill, low         10 × 28.08 × 30 ÷ (75 × 85) = 1.321412, up: 1.33 L
//	fill, typical     10 × 32.94 × 40 ÷ (60 × 75) = 2.928,    up: 2.93 L
//	fill, high        10 × 40.24 × 67 ÷ (50 × 65) = 8.295631, up: 8.30 L
//	low litres        3 × (10 × 28.08 × 80 ÷ (75 × 85) + 0.50) = 3 × (3.523765 + 0.50) = 12.071294, up: 12.08 L
//	typical litres    3 × (10 × 32.94 × 80 ÷ (60 × 75) + 0.75) = 3 × (5.856 + 0.75)    = 19.818,    up: 19.82 L
//	high litres       3 × (10 × 40.24 × 80 ÷ (50 × 65) + 1.50) = 3 × (9.905231 + 1.50) = 34.215692, up: 34.22 L
func TestMetalCentreboarderByHand(t *testing.T) {
	b := book(t)
	h := hull(t, "centreboard-yacht", "10.4 m", "3.6 m", "1.0 m")
	h.Overall, h.BootTop = length(t, "11.6 m"), length(t, "0.08 m")
	got := wetted(t, b, h)
	if g, w := rangeText(got.Total), "28.08 m2, 32.94 m2, 40.24 m2"; g != w {
		t.Errorf("total %s, want %s", g, w)
	}
	dead, err := coverage.Dead(b, "iso-8503-1-grit-medium")
	if err != nil {
		t.Fatal(err)
	}
	if g, w := rangeText(dead), "30 um, 40 um, 67 um"; g != w {
		t.Errorf("dead film %s, want %s", g, w)
	}
	epoxy, spray := coating(t, "50 %", "60 %", "75 %"), coverage.Method{By: "airless-sheltered"}
	fill, err := coverage.Fill(b, got.Total, epoxy, dead, spray)
	if err != nil {
		t.Fatal(err)
	}
	if g, w := rangeText(fill), "1.33 L, 2.93 L, 8.30 L"; g != w {
		t.Errorf("fill %s, want %s", g, w)
	}
	litres, err := coverage.Paint(b, got.Total, epoxy, film(t, "80 um"), 3, spray)
	if err != nil {
		t.Fatal(err)
	}
	if g, w := rangeText(litres), "12.08 L, 19.82 L, 34.22 L"; g != w {
		t.Errorf("litres %s, want %s", g, w)
	}
}

// The strip above the waterline goes to the waterline zone, and only where a formula ends at the waterline.
func TestBootTop(t *testing.T) {
	b := book(t)
	h := hull(t, "centreboard-yacht", "10.4 m", "3.6 m", "1.0 m")
	plain := wetted(t, b, h)
	h.BootTop = length(t, "0.08 m")
	with := wetted(t, b, h)
	if got := with.Total.Typical.Sub(plain.Total.Typical); got.String() != "1.84 m2" {
		t.Errorf("the total grows by %s", got)
	}
	h.Girths = girths(t, "0 m", "0 m", "3 m", "3 m", "6 m", "4 m", "10.4 m", "3 m")
	taped := wetted(t, b, h)
	h.BootTop = quantity.Length{}
	if again := wetted(t, b, h); !again.Total.Typical.Equal(taped.Total.Typical) {
		t.Errorf("the tape went to the paint line, and yet %s is not %s", taped.Total.Typical, again.Total.Typical)
	}
}

// Profiles of shot by the published comparators: fine 25 to 40 um leaves 13 (12.5 up), 17 (16.25 up), 27 (26.8 up) um.
func TestDeadFilm(t *testing.T) {
	b := book(t)
	got, err := coverage.Dead(b, "iso-8503-1-shot-fine")
	if err != nil || rangeText(got) != "13 um, 17 um, 27 um" {
		t.Errorf("%s %v", rangeText(got), err)
	}
	for _, key := range []string{"rough", "iso-19840-medium", ""} {
		if _, err := coverage.Dead(b, key); err == nil {
			t.Errorf("%q has no depth", key)
		}
	}
}
