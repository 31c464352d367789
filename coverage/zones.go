package coverage

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// zones shares the total out: the flat first, then the strips, then the measured parts and those of pieces in the book's order. The
// strip above the waterline goes with the waterline.
func (h Hull) zones(b *tables.Book, total quantity.Range[quantity.Area], form tables.HullForm, pieces []ZoneRange, above quantity.Range[quantity.Area]) ([]ZoneRange, error) {
	shares := []struct {
		zone  string
		share quantity.Range[float64]
	}{{waterlineZone, form.Waterline}, {edgesZone, form.Edges}}

	split := func(typicalOnly bool) []ZoneRange {
		out := []ZoneRange{{Zone: flatZone}}
		for _, s := range shares {
			area := quantity.Exactly(h.measured(s.zone))
			if !area.Typical.Given() {
				if h.measured(flatZone).Given() || form.Key == "" {
					continue
				}
				share := s.share
				if typicalOnly {
					share = quantity.Exactly(share.Typical)
				}
				area = quantity.Range[quantity.Area]{Low: part(total.Low, share.Low), Typical: part(total.Typical, share.Typical), High: part(total.High, share.High)}
			}
			if s.zone == waterlineZone && above.Typical.Given() {
				area = added(area, above)
			}
			if area.High.Sign() > 0 {
				out = append(out, ZoneRange{Zone: s.zone, Area: area})
			}
		}
		for z := range b.Zones() {
			switch z.Key {
			case hullZone, flatZone, waterlineZone, edgesZone:
				continue
			}
			area := quantity.Exactly(h.measured(z.Key))
			if !area.Typical.Given() {
				area = of(pieces, z.Key, typicalOnly)
			}
			if area.Typical.Given() {
				out = append(out, ZoneRange{Zone: z.Key, Area: area})
			}
		}
		flat := total
		for _, z := range out[1:] {
			flat = quantity.Range[quantity.Area]{Low: flat.Low.Sub(z.Area.Low), Typical: flat.Typical.Sub(z.Area.Typical), High: flat.High.Sub(z.Area.High)}
		}
		out[0].Area = flat
		return out
	}
	out := split(false)
	if flat := out[0].Area; flat.Low.Cmp(flat.Typical) > 0 || flat.Typical.Cmp(flat.High) > 0 {
		out = split(true)
	}
	if flat := out[0].Area; flat.Low.Sign() <= 0 {
		taken := total.Low.Sub(flat.Low)
		return nil, finding.Faults{{
			Kind: finding.ErrImpossible, Key: h.taking(out[1:], above), Got: taken.String() + " without the flat",
			Want: "less than the whole bottom, " + total.Low.String() + "; or the measured area of the flat",
		}}
	}
	return out, nil
}

// taking is the key of what takes most of a total that leaves no flat.
func (h Hull) taking(zones []ZoneRange, above quantity.Range[quantity.Area]) string {
	most := ZoneRange{}
	for _, z := range zones {
		if !most.Area.Low.Given() || z.Area.Low.Cmp(most.Area.Low) > 0 {
			most = z
		}
	}
	piece := most.Zone != waterlineZone && most.Zone != edgesZone
	switch {
	case h.measured(most.Zone).Given():
		return "measured"
	case piece:
		return "piece"
	case most.Zone == waterlineZone && above.Low.Given():
		return "boot_top"
	case len(h.Measured) > 0:
		return "measured"
	}
	return "length"
}

// part is the share of the area, rounded up.
func part(a quantity.Area, share float64) quantity.Area {
	return a.Scale(number(share)).To(a.Unit(), areaPlaces, quantity.Up)
}

// of is the area of the zone's pieces; the typical one for all three where the total is known better than the pieces are.
func of(pieces []ZoneRange, zone string, typicalOnly bool) quantity.Range[quantity.Area] {
	for _, p := range pieces {
		switch {
		case p.Zone != zone:
		case typicalOnly:
			return quantity.Exactly(p.Area.Typical)
		default:
			return p.Area
		}
	}
	return quantity.Range[quantity.Area]{}
}
