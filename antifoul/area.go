package antifoul

import (
	"errors"
	"slices"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// PartArea is the area of one part, zone by zone.
type PartArea struct {
	Part  string
	Zones []coverage.ZoneRange
	Total quantity.Range[quantity.Area]
}

// partAreas shares the bottom out among the parts. A part's own area counts first, then that of its zone, measured or of pieces; what
// the hull formula counts in (keel, rudder) and another part owns is taken off the hull's flat. A total of the hull alone has none of
// them in it, so nothing is taken off. The error is a finding.Faults:
// those of the hull's dimensions, and parts that leave no area of the flat.
func partAreas(b *tables.Book, boat Boat) ([]PartArea, coverage.Areas, error) {
	wetted, err := coverage.Wetted(b, boat.Hull)
	if err != nil {
		return nil, wetted, prefixed(err, "hull")
	}
	measured := map[string]quantity.Range[quantity.Area]{}
	for _, z := range slices.Concat(wetted.Zones, wetted.Apart) {
		measured[z.Zone] = z.Area
	}
	out := make([]PartArea, len(boat.Parts))
	owned := map[string]bool{}
	var off quantity.Area
	var faults finding.Faults
	for i, p := range boat.Parts {
		out[i].Part = p.Name
		if p.Zone == HullZone || unpainted(b, p) {
			continue
		}
		area := quantity.Exactly(p.Area)
		z, _ := b.Zone(p.Zone) // checked with the boat
		_, isMeasured := measured[p.Zone]
		switch {
		case p.Area.Given() && z.InHull && !isMeasured && !wetted.Bare:
			off = plus(off, p.Area)
		case !p.Area.Given():
			area = measured[p.Zone] // Check has seen to it that there is one
		}
		owned[p.Zone] = true
		out[i].Zones = []coverage.ZoneRange{{Zone: p.Zone, Area: area}}
		out[i].Total = area
		if p.Area.Given() {
			continue
		}
		for _, o := range wetted.Zones { // what goes with the zone, as the sole with the keel
			if row, err := b.Zone(o.Zone); err == nil && row.With == p.Zone && !slices.ContainsFunc(boat.Parts, func(x compat.Part) bool { return x.Zone == o.Zone }) {
				owned[o.Zone] = true
				out[i].Zones = append(out[i].Zones, o)
				out[i].Total = plusArea(out[i].Total, o.Area)
			}
		}
	}
	for i, p := range boat.Parts {
		if p.Zone != HullZone {
			continue
		}
		for _, z := range wetted.Zones {
			if owned[z.Zone] {
				continue
			}
			if z.Zone == "flat" && off.Given() {
				z.Area = quantity.Range[quantity.Area]{Low: z.Area.Low.Sub(off), Typical: z.Area.Typical.Sub(off), High: z.Area.High.Sub(off)}
				if z.Area.Low.Sign() <= 0 {
					faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "part", Got: off.String() + " of keel and rudder", Want: "parts that leave some of the hull's area"})
				}
			}
			out[i].Zones = append(out[i].Zones, z)
			out[i].Total = quantity.Range[quantity.Area]{Low: plus(out[i].Total.Low, z.Area.Low), Typical: plus(out[i].Total.Typical, z.Area.Typical), High: plus(out[i].Total.High, z.Area.High)}
		}
	}
	return out, wetted, faults.Err()
}

// checkArea notes a fault for part i when it is painted, is not the hull, and nobody has given its area: neither its own nor, for
// the only painted part of its zone, that of the zone.
func checkArea(b *tables.Book, x Boat, i int) finding.Faults {
	p := x.Parts[i]
	if p.Zone == HullZone || p.Area.Given() || unpainted(b, p) {
		return nil
	}
	z, err := b.Zone(p.Zone)
	if err != nil {
		return nil //nolint:nilerr // an unknown zone has its own fault
	}
	ofZone := func(what hullform.Piece) bool {
		row, _ := b.Piece(what.What) // one that is not known has its own fault, and no zone
		return row.Zone == p.Zone && !row.Off
	}
	if slices.ContainsFunc(x.Hull.Measured, func(m coverage.ZoneArea) bool { return m.Zone == p.Zone }) || slices.ContainsFunc(x.Hull.Pieces, ofZone) {
		for k, o := range x.Parts {
			if k != i && o.Zone == p.Zone && !unpainted(b, o) {
				return finding.Faults{{Kind: finding.ErrMissing, Key: "area", Want: "its own painted area, since more than one part is of the zone " + p.Zone}}
			}
		}
		return nil
	}
	want := "its painted area, \"0.7 m2\""
	if z.InHull {
		want += ", or hull.measured." + p.Zone
	}
	want += ", or its pieces in hull.piece"
	return finding.Faults{{Kind: finding.ErrMissing, Key: "area", Want: want}}
}

// plus adds, taking "not given" as nothing.
func plus[D quantity.Dim](a, b quantity.Amount[D]) quantity.Amount[D] {
	switch {
	case !a.Given():
		return b
	case !b.Given():
		return a
	}
	return a.Add(b)
}

func unpainted(b *tables.Book, p compat.Part) bool {
	m, err := b.Material(p.Material)
	return err == nil && m.Painted == tables.Never
}

// prefixed puts the faults of a lower package under a section's name.
func prefixed(err error, section string) error {
	if fs, ok := errors.AsType[finding.Faults](err); ok {
		return fs.Under("", section).Err()
	}
	return err
}
