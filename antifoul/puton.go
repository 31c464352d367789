package antifoul

import (
	"fmt"
	"slices"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// RuleNotPutOn is the rule of a film that was asked for and is not accepted.
const RuleNotPutOn finding.ID = "put-on-not"

// Gauged is one survey of a part by a gauge of dry film: a [[gauge]] section of a boat file. Material and Zones of the inspection are
// those of the part; what they are set to is not read.
type Gauged struct {
	Part    string // name of the part
	Coating string // key of the coating that makes up what is missing; empty: its litres are not told
	File    string // the sheet that the readings were read from, for the reader
	gauge.Inspection
}

// Combed is one fresh coat that a wet-film comb read: a [[comb]] section. Paint and Solids are those of the coating. Thinner
// that is not given is that of the boat's paint, a film asked for that is not given the coating's typical one.
type Combed struct {
	Part    string
	Zone    string // where on the part; empty: all of it
	Coating string // key of the coating
	coverage.WetCoat
}

// Used is the litres that went on a part: a [[used]] section. The way of application is that of the boat's paint.
type Used struct {
	Part    string
	Zone    string // where on the part; empty: all of it
	Coating string // key of the coating
	Coats   int
	Litres  quantity.Volume
	Asked   quantity.Film // dry film of each coat; not given: the coating's typical one
}

// PutOn is what gauge, comb and litres say of the film that was asked for.
type PutOn struct {
	Gauged []GaugedPart
	Combed []CombedCoat
	Used   []UsedPaint
}

// GaugedPart is the answer to one survey.
type GaugedPart struct {
	Gauged
	Result gauge.Inspected
	More   []MoreOn // where something is still to do, zone by zone
}

// MoreOn is what is to do in one zone before the film can be accepted there.
type MoreOn struct {
	Zone     string
	Readings int            // so many more are to be taken; 0: enough were
	Film     quantity.Film  // what its thinnest place lacks; not given: the film is thick enough
	Paint    *coverage.More // what makes up that film; nil where none is missing, nobody said with which coating, or no number of coats does
}

// CombedCoat is the answer to one fresh coat.
type CombedCoat struct {
	Combed
	Result coverage.Combed
	More   *coverage.More // what makes up what the mean lacks; nil where it lacks nothing, or no number of coats does
}

// UsedPaint is the answer to one note of litres.
type UsedPaint struct {
	Used
	Result coverage.UsedFilm
}

// putOnFaults returns the faults of the three sections. Where the areas cannot be shared out, which is a fault of its own, zones are taken
// as they are named.
func (x Boat) putOnFaults(b *tables.Book) finding.Faults {
	if len(x.Gauged)+len(x.Combed)+len(x.Used) == 0 {
		return nil
	}
	var areas []PartArea
	if len(x.Hull.Check(b)) == 0 {
		if got, _, err := partAreas(b, x); err == nil {
			areas = got
		}
	}
	var fs finding.Faults
	for i, g := range x.Gauged {
		key := fmt.Sprintf("gauge[%d]", i+1)
		p, faults := x.partOf(b, areas, g.Part, "")
		if g.Coating != "" {
			_, unknown := coatingOf(b, g.Coating)
			faults = append(faults, unknown...)
		}
		if p.part.Name != "" {
			faults = append(faults, g.of(p).Check(b)...)
		}
		for _, f := range faults {
			if f.Key == "zones" && !p.known {
				continue // its areas have faults of their own
			}
			if g.File != "" && strings.HasPrefix(f.Key, "line ") {
				f.File = g.File
				fs = append(fs, f)
				continue
			}
			fs = append(fs, finding.Faults{f}.Under("", key)...)
		}
	}
	for i, c := range x.Combed {
		_, faults := x.partOf(b, areas, c.Part, c.Zone)
		k, unknown := coatingOf(b, c.Coating)
		if len(unknown) == 0 {
			unknown = c.of(x, k).Check()
		}
		fs = append(fs, append(faults, unknown...).Under("", fmt.Sprintf("comb[%d]", i+1))...)
	}
	for i, u := range x.Used {
		p, faults := x.partOf(b, areas, u.Part, u.Zone)
		k, unknown := coatingOf(b, u.Coating)
		if len(unknown) == 0 && p.known {
			unknown = u.of(x.filled(b), p, k).Check(b)
		}
		fs = append(fs, append(faults, unknown...).Under("", fmt.Sprintf("used[%d]", i+1))...)
	}
	return fs
}

// place is a part, or one zone of it, with its areas.
type place struct {
	part  compat.Part
	zones []coverage.ZoneRange
	total quantity.Range[quantity.Area]
	known bool // its areas are known
}

// partOf finds the part, and the zone of it where one is named.
func (x Boat) partOf(b *tables.Book, areas []PartArea, name, zone string) (place, finding.Faults) {
	i := slices.IndexFunc(x.Parts, func(p compat.Part) bool { return p.Name == name })
	if i < 0 {
		var known []string
		for _, p := range x.Parts {
			known = append(known, p.Name)
		}
		return place{}, finding.Faults{{Kind: finding.ErrUnknown, Key: "part", Got: entry.Describe(name), Want: finding.Suggest(name, known)}}
	}
	out := place{part: x.Parts[i]}
	if unpainted(b, out.part) {
		return out, finding.Faults{{Kind: finding.ErrImpossible, Key: "part", Got: entry.Describe(name), Want: "a part that is painted"}}
	}
	if i >= len(areas) || !areas[i].Total.Low.Given() {
		return out, nil
	}
	out.zones, out.total, out.known = areas[i].Zones, areas[i].Total, true
	if zone == "" {
		return out, nil
	}
	var known []string
	for _, z := range out.zones {
		if z.Zone == zone {
			out.zones, out.total = []coverage.ZoneRange{z}, z.Area
			return out, nil
		}
		known = append(known, z.Zone)
	}
	return out, finding.Faults{{Kind: finding.ErrUnknown, Key: "zone", Got: entry.Describe(zone), Want: finding.Suggest(zone, known)}}
}

// coatingOf finds a coating that can be put on.
func coatingOf(b *tables.Book, key string) (tables.Coating, finding.Faults) {
	c, err := b.Coating(key)
	if err == nil && c.Solids.Typical.Given() {
		return c, nil
	}
	var known []string
	for c := range b.Coatings() {
		if c.Solids.Typical.Given() {
			known = append(known, c.Key)
		}
	}
	return c, finding.Faults{{Kind: finding.ErrUnknown, Key: "coating", Got: entry.Describe(key), Want: finding.Suggest(key, known)}}
}

// of is the inspection with the part's material and zones, none where the areas are not known. The high end of each area decides how many readings are wanted there.
func (g Gauged) of(p place) gauge.Inspection {
	x := g.Inspection
	x.Material, x.Zones = p.part.Material, nil
	for _, z := range p.zones {
		x.Zones = append(x.Zones, gauge.Zone{Zone: z.Zone, Area: z.Area.High})
	}
	return x
}

func (c Combed) of(x Boat, k tables.Coating) coverage.WetCoat {
	w := c.WetCoat
	w.Paint, w.Solids = k.Name, k.Solids
	if !w.Thinner.Given() {
		w.Thinner = x.Paint.Thinner
	}
	if !w.Asked.Given() {
		w.Asked = k.Film.Typical
	}
	return w
}

func (u Used) of(x Boat, p place, k tables.Coating) coverage.Spent {
	return coverage.Spent{Litres: u.Litres, Area: p.total, Coats: u.Coats, Coating: k, Method: x.Paint, Asked: u.Asked}
}

// putOn judges what gauge, comb and litres say; Check has seen to it that it can.
func (j *Job) putOn(b *tables.Book, boat Boat) error {
	for i, g := range boat.Gauged {
		p, _ := boat.partOf(b, j.Areas, g.Part, "")
		result, err := gauge.Inspect(b, g.of(p))
		if err != nil {
			return prefixed(err, fmt.Sprintf("gauge[%d]", i+1))
		}
		out := GaugedPart{Gauged: g, Result: result}
		for n, z := range result.Zones {
			if more := moreOn(b, boat, g.Coating, p.zones[n].Area, z); more.Readings > 0 || more.Film.Given() {
				out.More = append(out.More, more)
			}
		}
		if !result.Passes {
			j.Findings = append(j.Findings, finding.Finding{
				Rule: RuleNotPutOn, Verdict: finding.Caution, About: g.Part,
				Facts: facts(fact("standard", result.Whole.Standard), fact("nominal", g.Nominal)),
			})
		}
		j.PutOn.Gauged = append(j.PutOn.Gauged, out)
	}
	for i, c := range boat.Combed {
		out, err := combed(b, boat, j.Areas, c)
		if err != nil {
			return prefixed(err, fmt.Sprintf("comb[%d]", i+1))
		}
		j.PutOn.Combed = append(j.PutOn.Combed, out)
	}
	for i, u := range boat.Used {
		p, _ := boat.partOf(b, j.Areas, u.Part, u.Zone)
		k, _ := coatingOf(b, u.Coating)
		result, err := coverage.Used(b, u.of(boat, p, k))
		if err != nil {
			return prefixed(err, fmt.Sprintf("used[%d]", i+1))
		}
		j.PutOn.Used = append(j.PutOn.Used, UsedPaint{u, result})
	}
	return nil
}

// moreOn is what is still to do in one zone.
func moreOn(b *tables.Book, boat Boat, coating string, area quantity.Range[quantity.Area], z gauge.ZoneVerdict) MoreOn {
	out := MoreOn{Zone: z.Zone.Zone, Readings: max(0, z.Needed-z.Count), Film: z.Missing}
	if !z.Missing.Given() || coating == "" {
		return out
	}
	k, _ := coatingOf(b, coating)
	out.Paint = makeUp(b, boat, area, k, z.Missing)
	return out
}

// makeUp is the paint that makes up a missing film; nil where it would take more coats than anybody puts on.
func makeUp(b *tables.Book, boat Boat, area quantity.Range[quantity.Area], k tables.Coating, missing quantity.Film) *coverage.More {
	more, err := coverage.Missing(b, area, k, missing, boat.Paint)
	if err != nil {
		return nil
	}
	return &more
}

// combed is the answer to one fresh coat, with what makes up a mean that is too thin.
func combed(b *tables.Book, boat Boat, areas []PartArea, c Combed) (CombedCoat, error) {
	p, _ := boat.partOf(b, areas, c.Part, c.Zone)
	k, _ := coatingOf(b, c.Coating)
	w := c.of(boat, k)
	result, err := coverage.Comb(b, w)
	out := CombedCoat{Combed: c, Result: result}
	if err == nil && result.Findings.Has(coverage.RuleCombThin) {
		out.More = makeUp(b, boat, p.total, k, w.Asked.Sub(result.Mean.Typical))
	}
	return out, err
}
