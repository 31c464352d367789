package report

import "boatyard.example/bottomwork/tables/quantity"

// outAreas is the area of the bottom.
type outAreas struct {
	Parts    []outPartArea           `json:"parts" says:"part by part"`
	Total    outRange[quantity.Area] `json:"whole_bottom,omitzero" says:"with the keel and rudder that are counted in"`
	Method   string                  `json:"method,omitempty" says:"how that was found"`
	Others   []outEstimate           `json:"other_ways,omitempty" says:"what the other ways say"`
	Findings []outFinding            `json:"findings,omitempty" says:"what is said of it"`
}

// outPartArea is the area of one part.
type outPartArea struct {
	Part  string                  `json:"part" says:"name of the part"`
	Zones []outZoneArea           `json:"zones,omitempty" says:"zone by zone"`
	Total outRange[quantity.Area] `json:"total,omitzero" says:"all of it; absent for a part that is not painted"`
}

// outZoneArea is the area of one zone.
type outZoneArea struct {
	Zone outName                 `json:"zone" says:"the zone"`
	Area outRange[quantity.Area] `json:"area" says:"its area"`
}

// outEstimate is one way of finding the area.
type outEstimate struct {
	Method   outName                 `json:"method" says:"the way"`
	Area     outRange[quantity.Area] `json:"area,omitzero" says:"what it says"`
	Bare     bool                    `json:"only_given_pieces" says:"true: it holds only those keels and rudders that were given"`
	Findings []outFinding            `json:"findings,omitempty" says:"what is said of it"`
	Basis    []outBasis              `json:"basis,omitempty" says:"what it rests on"`
}

func (c *composer) outAreas() *outAreas {
	w := c.job.Wetted
	if len(c.job.Areas) == 0 {
		return nil
	}
	out := &outAreas{Total: ranged(w.Total), Method: w.Method, Findings: c.outFindings(w.Findings)}
	for _, a := range c.job.Areas {
		x := outPartArea{Part: a.Part, Total: ranged(a.Total)}
		for _, z := range a.Zones {
			x.Zones = append(x.Zones, outZoneArea{outName{z.Zone, c.zone(z.Zone)}, ranged(z.Area)})
		}
		out.Parts = append(out.Parts, x)
	}
	for _, o := range w.Others {
		out.Others = append(out.Others, outEstimate{outName{o.Method, o.Name}, ranged(o.Area), o.Bare, c.outFindings(o.Findings), c.outBases(o.Basis)})
	}
	return out
}

// outPlaces is the places that stands, blocks and chains leave.
type outPlaces struct {
	Count    int                     `json:"count,omitempty" says:"how many; absent where nobody said what she stands on and nothing could be counted"`
	Stands   int                     `json:"stand_pairs,omitempty" says:"pairs of stands counted"`
	Blocks   int                     `json:"keel_blocks,omitempty" says:"keel blocks counted"`
	Chains   int                     `json:"chains,omitempty" says:"chains counted"`
	Each     outRange[quantity.Area] `json:"area_of_one,omitzero" says:"of one place"`
	Area     outRange[quantity.Area] `json:"area,omitzero" says:"of all of them"`
	Layers   []outPlaceLayer         `json:"layers,omitempty" says:"what goes on there, the lowest first"`
	Findings []outFinding            `json:"findings,omitempty" says:"how they are counted; nobody but the yard moves a stand or a block"`
}

// outPlaceLayer is one layer on those places.
type outPlaceLayer struct {
	Part    string                    `json:"part" says:"name of the part"`
	Role    roleWord                  `json:"role" says:"what the layer is for"`
	Coating outName                   `json:"coating" says:"what it is of"`
	Colour  *outName                  `json:"colour,omitempty" says:"its colour"`
	Coats   int                       `json:"coats" says:"coats"`
	Area    outRange[quantity.Area]   `json:"area" says:"with the lap over the layer below"`
	Litres  outRange[quantity.Volume] `json:"litres" says:"of all its coats"`
}

func (c *composer) outPlaces() *outPlaces {
	p := c.job.Pads
	if len(p.Findings) == 0 {
		return nil
	}
	out := &outPlaces{Count: p.Count, Stands: p.On.StandPairs, Blocks: p.On.KeelBlocks, Chains: p.On.Chains, Each: ranged(p.Each), Area: ranged(p.Area), Findings: c.outFindings(p.Findings)}
	for _, l := range c.job.Patches {
		out.Layers = append(out.Layers, outPlaceLayer{l.Part, role(l.For), coating(l.Coating), c.nameOf(l.Colour, c.colour), l.Coats, ranged(l.Area), ranged(l.Litres)})
	}
	return out
}
