package coverage

import (
	"strconv"

	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Hull is what the boat file says about the size of the bottom. A value that is not given stays the zero value.
//
// Length is on the waterline, Draft to the bottom of the keel, or of the hull where she has none. A drive leg, a raised
// centreboard and an outboard do not count in the draught. Of a boat with two hulls all lengths, girths and offsets are those of
// one of them. Mass is that of the whole boat; some methods reckon her volume from it.
type Hull struct {
	Kind                string // key of a hull form
	Length, Beam, Draft quantity.Length
	Overall             quantity.Length // length overall, for the law; not given: the law is asked with the waterline length
	Mass                quantity.Mass
	WaterlineBeam       quantity.Length    // greatest beam on the waterline; not given: Beam
	CanoeDraft          quantity.Length    // draught of the hull without its keel
	Midship             quantity.Share     // area of the midship section of the hull without its keel, of its beam × draught
	Hulls               int                // 0: as the hull form has
	BootTop             quantity.Length    // height above the waterline up to which she is painted; not given: up to the waterline
	Girths              []hullform.Station // the yard's tape
	Offsets             []hullform.Section
	Pieces              []hullform.Piece // keel, rudder, tunnels, openings
	Measured            []ZoneArea       // areas that somebody measured; they win over everything
	Support             *Support         // what she stands on; nil: not reported
}

// ZoneArea is the measured area of one zone of the hull.
//
// The zones are the strips flat, waterline, edges and chines, the parts keel, sole of the keel and rudder, and "hull": the whole
// painted bottom with everything in it.
type ZoneArea struct {
	Zone string // key of a zone
	Area quantity.Area
}

// Support counts what touches the bottom while she stands ashore.
type Support struct {
	StandPairs int // pairs of stands, one to each side
	KeelBlocks int
	Chains     int // chains that tie opposite stands, where they touch the keel
}

// hullZone is the zone that stands for the whole bottom; flatZone takes what the other zones leave.
const (
	hullZone      = "hull"
	flatZone      = "flat"
	waterlineZone = "waterline"
	edgesZone     = "edges"
	chinesZone    = "chines"
)

// Check returns every fault of the hull. The keys are relative to the hull: "kind", "length", "beam", "draft", "mass",
// "measured[flat]", "stand_pairs", "keel_blocks", "chains", and those of hullform.Shape.Check.
//
// Kind, length, beam and draught are needed, unless the flat or the whole hull was measured, or there are girths or offsets. What is given is checked in
// any case: a form and zones that the book knows, amounts above zero, a beam and a draught no longer than the length,
// counts of nought or more, no zone twice.
func (h Hull) Check(b *tables.Book) finding.Faults {
	var faults finding.Faults
	fault := func(kind error, key, got, want string) {
		faults = append(faults, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	needed := !h.measuredEnough() && len(h.Girths) == 0 && len(h.Offsets) == 0
	switch {
	case h.Kind != "":
		if _, err := b.HullForm(h.Kind); err != nil {
			fault(finding.ErrUnknown, "kind", entry.Describe(h.Kind), finding.Suggest(h.Kind, formKeys(b)))
		}
	case needed:
		fault(finding.ErrMissing, "kind", "", finding.Suggest("", formKeys(b)))
	}
	for _, d := range []struct {
		key    string
		length quantity.Length
		want   string
	}{
		{"length", h.Length, "the length on the waterline"},
		{"beam", h.Beam, "the greatest beam"},
		{"draft", h.Draft, "the draught to the bottom of the keel"},
	} {
		switch {
		case !d.length.Given():
			if needed {
				fault(finding.ErrMissing, d.key, "", d.want+`, such as "9.8 m", or a measured area of the zone flat or hull`)
			}
		case d.length.Sign() <= 0:
			fault(finding.ErrImpossible, d.key, d.length.String(), "more than zero")
		case h.Length.Sign() > 0 && d.length.Cmp(h.Length) > 0:
			fault(finding.ErrImpossible, d.key, d.length.String(), "no more than the length, "+h.Length.String())
		}
	}
	if h.Mass.Given() && h.Mass.Sign() <= 0 {
		fault(finding.ErrImpossible, "mass", h.Mass.String(), "more than zero")
	}
	if h.BootTop.Given() && (h.BootTop.Sign() <= 0 || h.BootTop.Cmp(h.Length) > 0 && h.Length.Given()) {
		fault(finding.ErrImpossible, "boot_top", h.BootTop.String(), "a height above zero, less than the length of the boat")
	}
	faults = append(faults, h.shape().Check(b)...)
	faults = append(faults, h.checkMeasured(b)...)
	if h.Support != nil {
		faults = append(faults, h.Support.check()...)
	}
	return faults
}

func (s Support) check() finding.Faults {
	var faults finding.Faults
	for _, c := range []struct {
		key string
		n   int
	}{{"stand_pairs", s.StandPairs}, {"keel_blocks", s.KeelBlocks}, {"chains", s.Chains}} {
		if c.n < 0 || c.n > mostPlaces {
			faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: c.key, Got: strconv.Itoa(c.n), Want: "a count from 0 to " + strconv.Itoa(mostPlaces)})
		}
	}
	return faults
}

func (h Hull) checkMeasured(b *tables.Book) finding.Faults {
	var faults finding.Faults
	if h.measured(flatZone).Given() && h.measured(hullZone).Given() {
		faults = append(faults, finding.Fault{
			Kind: finding.ErrDuplicate, Key: "measured[" + hullZone + "]", Got: h.measured(hullZone).String() + " beside a measured flat",
			Want: "the flat or the whole hull: the one follows from the other",
		})
	}
	seen := map[string]bool{}
	for _, m := range h.Measured {
		key := "measured[" + m.Zone + "]"
		fault := func(kind error, got, want string) {
			faults = append(faults, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
		}
		z, err := b.Zone(m.Zone)
		switch {
		case err != nil:
			fault(finding.ErrUnknown, entry.Describe(m.Zone), finding.Suggest(m.Zone, hullZones(b)))
		case !z.InHull:
			fault(finding.ErrValue, entry.Describe(m.Zone), "a zone of the hull; the area of a "+z.Name+" stands with that part")
		}
		if seen[m.Zone] {
			fault(finding.ErrDuplicate, entry.Describe(m.Zone), "each zone once")
		}
		seen[m.Zone] = true
		switch {
		case !m.Area.Given():
			fault(finding.ErrMissing, "", `an area, such as "24.5 m2"`)
		case m.Area.Sign() <= 0:
			fault(finding.ErrImpossible, m.Area.String(), "more than zero; leave out a zone that she has not got")
		}
	}
	return faults
}

// measured returns the measured area of the zone; not given when nobody measured it.
func (h Hull) measured(zone string) quantity.Area {
	for _, m := range h.Measured {
		if m.Zone == zone {
			return m.Area
		}
	}
	return quantity.Area{}
}

// measuredEnough reports whether the measured areas do without the formula.
func (h Hull) measuredEnough() bool {
	return h.measured(flatZone).Given() || h.measured(hullZone).Given()
}

// shape is what hullform asks.
func (h Hull) shape() hullform.Shape {
	s := hullform.Shape{
		Kind: h.Kind, Length: h.Length, Beam: h.Beam, Draft: h.Draft, WaterlineBeam: h.WaterlineBeam, CanoeDraft: h.CanoeDraft, Mass: h.Mass,
		Midship: h.Midship, Hulls: h.Hulls, Girths: h.Girths, Offsets: h.Offsets, Pieces: h.Pieces, Known: map[string]quantity.Area{},
	}
	for _, m := range h.Measured {
		s.Known[m.Zone] = m.Area
	}
	return s
}

// hulls is how many hulls she has.
func (h Hull) hulls(form tables.HullForm) int {
	if h.Hulls > 0 {
		return h.Hulls
	}
	return max(form.Hulls, 1)
}

// dimensioned reports whether the formula has all it needs.
func (h Hull) dimensioned() bool { return h.Length.Given() && h.Beam.Given() && h.Draft.Given() }

func formKeys(b *tables.Book) []string {
	var keys []string
	for f := range b.HullForms() {
		keys = append(keys, f.Key)
	}
	return keys
}

func hullZones(b *tables.Book) []string {
	var keys []string
	for z := range b.Zones() {
		if z.InHull {
			keys = append(keys, z.Key)
		}
	}
	return keys
}
