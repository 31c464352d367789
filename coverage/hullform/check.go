package hullform

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

const mostHulls = 3

// Check returns every fault of stations, sections, pieces and of the lengths that only some methods read. The keys are relative to
// the hull: "girths", "offsets", "piece[2].width", "canoe_draft", "waterline_beam", "midship", "hulls". Kind, length, beam and
// draught are the caller's to check.
func (s Shape) Check(b *tables.Book) finding.Faults {
	var faults finding.Faults
	bad := func(kind error, key, got, want string) {
		faults = append(faults, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	if s.Hulls < 0 || s.Hulls > mostHulls {
		bad(finding.ErrImpossible, "hulls", strconv.Itoa(s.Hulls), fmt.Sprintf("a count from 1 to %d", mostHulls))
	}
	for _, d := range []struct {
		key      string
		got, max quantity.Length
		of       string
	}{{"canoe_draft", s.CanoeDraft, s.Draft, "draught"}, {"waterline_beam", s.WaterlineBeam, s.Beam, "beam"}} {
		switch {
		case !d.got.Given():
		case d.got.Sign() <= 0:
			bad(finding.ErrImpossible, d.key, d.got.String(), "more than zero")
		case d.max.Given() && d.got.Cmp(d.max) > 0:
			bad(finding.ErrImpossible, d.key, d.got.String(), "no more than the "+d.of+", "+d.max.String())
		}
	}
	if s.Midship.Given() && (s.Midship.Sign() <= 0 || s.Midship.Cmp(quantity.Percent.N(100)) > 0) {
		bad(finding.ErrImpossible, "midship", s.Midship.String(), "more than 0 % and at most 100 %")
	}
	if len(s.Girths) > 0 {
		faults = append(faults, checkStations(s.Girths).Under("", "girths")...)
	}
	if len(s.Offsets) > 0 {
		faults = append(faults, checkSections(s.Offsets).Under("", "offsets")...)
	}
	for i, p := range s.Pieces {
		faults = append(faults, p.check(b).Under("", fmt.Sprintf("piece[%d]", i+1))...)
	}
	return faults
}

const (
	leastStations = 3
	mostStations  = 1000
	mostPoints    = 200
)

// rising notes a fault for each station that does not lie beyond the one before.
func rising(at []quantity.Length, bad func(kind error, key, got, want string)) {
	if len(at) < leastStations || len(at) > mostStations {
		bad(finding.ErrImpossible, "", fmt.Sprintf("%d stations", len(at)), fmt.Sprintf("from %d to %d", leastStations, mostStations))
	}
	for i := 1; i < len(at); i++ {
		if at[i].Given() && at[i-1].Given() && at[i].Cmp(at[i-1]) <= 0 {
			bad(finding.ErrImpossible, fmt.Sprintf("station[%d].at", i+1), at[i].String(), "beyond the station before, which is at "+at[i-1].String())
		}
	}
}

func checkStations(stations []Station) finding.Faults {
	var faults finding.Faults
	bad := func(kind error, key, got, want string) {
		faults = append(faults, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	var at []quantity.Length
	some := false
	for i, s := range stations {
		at = append(at, s.At)
		key := fmt.Sprintf("station[%d].", i+1)
		if !s.At.Given() {
			bad(finding.ErrMissing, key+"at", "", "where along the hull")
		}
		switch {
		case !s.Girth.Given():
			bad(finding.ErrMissing, key+"girth", "", "the girth from paint line to paint line")
		case s.Girth.Sign() < 0:
			bad(finding.ErrImpossible, key+"girth", s.Girth.String(), "nought or more")
		}
		some = some || s.Girth.Sign() > 0
	}
	rising(at, bad)
	if !some && len(stations) > 0 {
		bad(finding.ErrImpossible, "", "no girth above nought", "the girths of a hull")
	}
	return faults
}

func checkSections(sections []Section) finding.Faults {
	var faults finding.Faults
	bad := func(kind error, key, got, want string) {
		faults = append(faults, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	var at []quantity.Length
	for i, s := range sections {
		at = append(at, s.At)
		key := fmt.Sprintf("station[%d]", i+1)
		if !s.At.Given() {
			bad(finding.ErrMissing, key+".at", "", "where along the hull")
		}
		if len(s.Points) < 2 || len(s.Points) > mostPoints {
			bad(finding.ErrImpossible, key, fmt.Sprintf("%d points", len(s.Points)), fmt.Sprintf("from 2 to %d; a stem is two points with no half breadth", mostPoints))
			continue
		}
		whole := true
		for k, p := range s.Points {
			point := fmt.Sprintf("%s.point[%d].", key, k+1)
			switch {
			case !p.Half.Given() || !p.Height.Given():
				bad(finding.ErrMissing, point+"half_breadth", "", "a half breadth and a height")
				whole = false
			case p.Half.Sign() < 0:
				bad(finding.ErrImpossible, point+"half_breadth", p.Half.String(), "nought or more: one side of the hull")
			}
		}
		if !whole {
			continue
		}
		if first := s.Points[0].Half; first.Sign() > 0 {
			bad(finding.ErrImpossible, key+".point[1].half_breadth", first.String(), "0: the section starts on the centreline, or the bottom beside it is missing")
		}
		if a, c, ok := crossing(s.Points); ok {
			bad(finding.ErrImpossible, key, fmt.Sprintf("the line from point %d to %d crosses that from %d to %d", a, a+1, c, c+1), "points in order, from the centreline up to the paint line")
		}
	}
	rising(at, bad)
	if len(faults) == 0 {
		if area, _ := Surface(sections); area <= 0 {
			bad(finding.ErrImpossible, "", "sections without an area", "the half breadths and heights of a hull")
		}
	}
	return faults
}

// crossing returns the first two stretches of the line, counted from 1, that cross.
func crossing(points []Point) (first, second int, ok bool) {
	y, z := make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		y[i], z[i] = p.Half.Float(quantity.Metre), p.Height.Float(quantity.Metre)
	}
	side := func(i, j, k int) float64 {
		return float64((y[j]-y[i])*(z[k]-z[i])) - float64((z[j]-z[i])*(y[k]-y[i]))
	}
	for i := range len(points) - 1 {
		for j := i + 2; j < len(points)-1; j++ {
			if side(i, i+1, j)*side(i, i+1, j+1) < 0 && side(j, j+1, i)*side(j, j+1, i+1) < 0 {
				return i + 1, j + 1, true
			}
		}
	}
	return 0, 0, false
}

func contains(list []string, s string) bool { return slices.Contains(list, s) }

func and(words []string) string { return strings.Join(words, " and ") }
