package gauge

import (
	"fmt"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Zone is one zone of what is inspected, with its area.
type Zone struct {
	Zone string
	Area quantity.Area
}

// Inspection is all readings of one part of a boat by one gauge.
type Inspection struct {
	Standard   string        // key of a row of acceptance
	Instrument string        // key of an instrument that tells a dry film
	Material   string        // key of the material below the film
	Nominal    quantity.Film // as in Survey, as the next two
	Most       quantity.Film
	Profile    string
	Zones      []Zone
	Readings   []Reading
}

// Check returns every fault of the inspection: standard, instrument, material, zones and each reading.
func (x Inspection) Check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	if _, err := b.Acceptance(x.Standard); err != nil {
		fs = append(fs, unknownStandard(b, x.Standard))
	}
	if i, err := b.Instrument(x.Instrument); err != nil || i.Tells != tables.TellsDry {
		var known []string
		for i := range b.Instruments() {
			if i.Tells == tables.TellsDry {
				known = append(known, i.Key)
			}
		}
		bad(finding.ErrUnknown, "instrument", entry.Describe(x.Instrument), "a gauge of dry film: "+finding.Suggest(x.Instrument, known))
	}
	if _, err := b.Material(x.Material); err != nil {
		var known []string
		for m := range b.Materials() {
			known = append(known, m.Key)
		}
		bad(finding.ErrUnknown, "material", entry.Describe(x.Material), finding.Suggest(x.Material, known))
	}
	var zones []string
	for i, z := range x.Zones {
		key := fmt.Sprintf("zones[%d]", i+1)
		if slices.Contains(zones, z.Zone) {
			bad(finding.ErrDuplicate, key, entry.Describe(z.Zone), "each zone once")
		}
		if z.Area.Sign() <= 0 {
			bad(finding.ErrImpossible, key+".area", z.Area.String(), "an area above zero")
		}
		zones = append(zones, z.Zone)
	}
	if len(zones) == 0 {
		bad(finding.ErrMissing, "zones", "", "at least one zone with its area")
	}
	for i, r := range x.Readings {
		if len(zones) > 0 && !slices.Contains(zones, r.Zone) {
			bad(finding.ErrUnknown, r.key(i)+".zone", entry.Describe(r.Zone), finding.Suggest(r.Zone, zones))
		}
	}
	one := x.survey(x.Readings, quantity.SquareMetre.N(1)) // the areas of the zones are checked above
	return append(fs, one.Check(b)...)
}

func (x Inspection) survey(readings []Reading, area quantity.Area) Survey {
	return Survey{Area: area, Nominal: x.Nominal, Most: x.Most, Profile: x.Profile, Readings: readings}
}

// ZoneVerdict is the verdict of one zone. Of a zone without readings Count is 0, nothing passes and the finding asks for them.
type ZoneVerdict struct {
	Zone
	Verdict
}

// Inspected is what an inspection came to.
type Inspected struct {
	Passes bool          // the gauge reads on the material, every zone passes for itself, and all together do
	Reads  finding.List  // whether the gauge reads on the material
	Zones  []ZoneVerdict // in the order of the inspection's zones
	Whole  Verdict       // all zones together, on the sum of their areas
	_      [0]func()
}

// Inspect judges each zone for itself and all of them together, as Accept does. Readings by a gauge that does not read on the
// material, or of which only its maker can say so, pass nothing; their numbers are told all the same.
//
// The error is a finding.Faults.
//
// Basis: as of Accept and Reads.
func Inspect(b *tables.Book, x Inspection) (Inspected, error) {
	if err := x.Check(b).Err(); err != nil {
		return Inspected{}, err
	}
	out := Inspected{Reads: Reads(b, x.Instrument, x.Material)}
	worst := out.Reads.Worst()
	out.Passes = worst == finding.Fine || worst == finding.Caution
	var total quantity.Area
	for i, z := range x.Zones {
		if i == 0 {
			total = z.Area
		} else {
			total = total.Add(z.Area)
		}
		var readings []Reading
		for _, r := range x.Readings {
			if r.Zone == z.Zone {
				readings = append(readings, r)
			}
		}
		v, err := x.zone(b, z, readings)
		if err != nil {
			return Inspected{}, err
		}
		out.Zones = append(out.Zones, ZoneVerdict{z, v})
		out.Passes = out.Passes && v.Passes
	}
	var err error
	out.Whole, err = Accept(b, x.Standard, x.survey(x.Readings, total))
	out.Passes = out.Passes && out.Whole.Passes
	return out, err
}

// zone judges the readings of one zone, or says that there are none.
func (x Inspection) zone(b *tables.Book, z Zone, readings []Reading) (Verdict, error) {
	if len(readings) > 0 {
		return Accept(b, x.Standard, x.survey(readings, z.Area))
	}
	row, err := b.Acceptance(x.Standard)
	if err != nil {
		return Verdict{}, err
	}
	name := z.Zone
	if r, err := b.Zone(z.Zone); err == nil {
		name = r.Name
	}
	return Verdict{Standard: row.Name, Findings: finding.List{{
		Rule: RuleNotRead, Verdict: finding.Ask, About: name, Basis: []finding.Basis{{Kind: finding.Derived}},
		Facts: []finding.Fact{{Name: "area", Value: z.Area}},
	}}}, nil
}
