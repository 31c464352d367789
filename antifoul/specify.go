package antifoul

import (
	"cmp"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of layer schemes.
const (
	RuleRefused      finding.ID = "scheme-refused"
	RuleOldIsSignal  finding.ID = "scheme-old-is-signal"
	RuleSignalWeak   finding.ID = "scheme-signal-weak"
	RuleSignalHard   finding.ID = "scheme-signal-hard"
	RuleWet          finding.ID = "scheme-wet"
	RuleSignalUnder  finding.ID = "scheme-signal-under"
	RuleNoSignal     finding.ID = "scheme-no-signal"
	RuleNoStep       finding.ID = "scheme-no-step"
	RuleCoats        finding.ID = "scheme-coats"
	RuleCoatsCut     finding.ID = "scheme-coats-cut"
	RuleExtra        finding.ID = "scheme-extra"
	RuleTwoTypes     finding.ID = "scheme-two-types"
	RuleNotTwoTypes  finding.ID = "scheme-not-two-types"
	RuleWishRefused  finding.ID = "wish-refused"
	RuleWishUnsuited finding.ID = "wish-unsuited"
)

// Scheme is the layers of one part, from what is there to the last working coat.
type Scheme struct {
	Part     string
	Zone     string
	Coating  tables.Coating
	Route    compat.Route
	Stack    compat.Stack // bottom to top; found layers that stay come first
	Coats    []Coat       // what is put on, in order
	Key      []ColourKey  // what each colour means to whoever sands or sees it, bottom to top
	Lasts    wear.Forecast
	Patch    []compat.PatchLayer // how a place where she stood is stepped
	Findings finding.List
}

// Refused reports whether the scheme cannot be built; Findings says why, and there are no layers.
func (s *Scheme) Refused() bool { return len(s.Stack) == 0 && s.Findings.Worst() == finding.Forbidden }

// Coat is one layer that is put on, with where and how much.
type Coat struct {
	Layer       compat.Layer // its film is that of all its coats; of a barrier the one asked for, which they reach at the typical film of a coat
	Zones       []string
	Area        quantity.Range[quantity.Area]
	Film        quantity.Range[quantity.Film] // dry, one coat
	Wet         quantity.Film                 // wet film of one coat at the typical film and solids, thinned as planned
	Theoretical quantity.Spread               // at the typical film and solids
	Litres      quantity.Range[quantity.Volume]
	Fills       quantity.Range[quantity.Volume] // of Litres, what a blasted surface swallows; not given: it was not blasted
}

// ColourKey says what it means when a colour shows.
type ColourKey struct {
	Layer compat.Layer
	Shows finding.Finding
}

// Specify makes the layer scheme of the coating on the named part: route, undercoats, signal coat one clear step in lightness
// from the working coats, working coats counted from wear and months afloat, one more at edges and waterline.
//
// A type that metal, law or the old film forbids is refused: the scheme then has findings and no layers. The error is a
// finding.Faults: faults of the boat, an unknown part, a coating that no bottom ends with.
//
// The working coats are those of wear.Coats at the high wear, cut at the type's most coats, which a finding then says; litres are
// those of coverage.Paint. A colour that was not wished is taken from the colour table: the farthest in lightness from the sound
// old film of the same mechanism, else the darkest.
// Basis: common practice; the least step in lightness is an assumption.
func Specify(b *tables.Book, boat Boat, part string, c tables.Coating) (Scheme, error) {
	ranking, err := Rank(b, boat)
	if err != nil {
		return Scheme{}, err
	}
	if boat, err = boat.fitted(b); err != nil {
		return Scheme{}, err
	}
	boat = boat.filled(b)
	areas, _, err := partAreas(b, boat)
	if err != nil {
		return Scheme{}, err
	}
	i := slices.IndexFunc(boat.Parts, func(p compat.Part) bool { return p.Name == part })
	if i < 0 {
		var names []string
		for _, p := range boat.Parts {
			names = append(names, p.Name)
		}
		return Scheme{}, finding.Faults{{Kind: finding.ErrUnknown, Key: "part", Got: part, Want: finding.Suggest(part, names)}}
	}
	place, ok := ranking.Parts[i].Of(c.Key)
	if !ok {
		return Scheme{}, finding.Faults{{Kind: finding.ErrValue, Key: "coating", Got: c.Key, Want: "a type that the part is ranked for"}}
	}
	return specify(b, boat, boat.Parts[i], areas[i], place)
}

func specify(b *tables.Book, boat Boat, part compat.Part, area PartArea, place Place) (Scheme, error) {
	c := place.Coating()
	s := Scheme{Part: part.Name, Zone: part.Zone, Coating: c, Route: place.Route()}
	if place.Tier == Barred {
		s.Findings = append(s.Findings, finding.Finding{Rule: RuleRefused, Verdict: finding.Forbidden, About: c.Name, Against: part.Name})
		s.Findings = append(s.Findings, place.Reasons()...)
		return s, nil
	}
	s.Stack = slices.Concat(s.Route.Keeps, s.Route.Adds)
	if c.Role != tables.Bare {
		s.addCoats(b, boat, part, area)
	}
	if err := s.measure(b, boat, area); err != nil {
		return s, err
	}
	s.Findings = append(s.Findings, compat.CheckStack(b, part, s.Stack, dryDays(boat, c))...)
	s.Lasts = wear.Predict(b, s.Stack, boat.Use, zonesOf(b, area), boat.Work.Launch)
	s.Key = s.colourKey()
	if part.Zone == HullZone {
		var fs finding.List
		s.Patch, fs = compat.Patch(b, s.Stack)
		s.Findings = append(s.Findings, fs...)
	}
	return s, nil
}

// dryDays is how many days the last coat stands before launch: the days left, or as many as the type stands, since the last
// coat can wait; -1 when the launch day is not known.
func dryDays(boat Boat, c tables.Coating) int {
	d, known := boat.Work.Dry(boat.On)
	if !known {
		return -1
	}
	if c.AirNew.Given() {
		d = min(d, int(days(c.AirNew)))
	}
	return d
}

// addCoats puts the signal, working and extra coats on the stack.
func (s *Scheme) addCoats(b *tables.Book, boat Boat, part compat.Part, area PartArea) {
	c := s.Coating
	n := wear.Coats(b, c, boat.Use, boat.Months()).High
	rests := map[finding.ID]string{RuleCoatsCut: "most_coats", RuleCoats: "wear_use"} // the others follow from what kind of film it is
	note := func(rule finding.ID, v finding.Verdict, facts ...finding.Fact) {
		basis := c.Basis(cmp.Or(rests[rule], "mechanism"))
		s.Findings = append(s.Findings, finding.Finding{Rule: rule, Verdict: v, About: c.Name, Against: s.Part, Facts: facts, Basis: []finding.Basis{basis}})
	}
	if n > c.Most {
		note(RuleCoatsCut, finding.Caution, fact("coats", n), fact("most", c.Most), fact("wished", months(boat.Months())))
		n = c.Most
	}
	zone, _ := b.Zone(part.Zone) // checked with the boat; the zero zone has no extra coats
	if signals(c) {
		n += zone.ExtraCoats
	}
	below := s.signalType(b, boat, part)
	top, signal, old := s.colours(b, boat.Wishes, below)
	layer := func(colour tables.Colour, coats int, p compat.Purpose) compat.Layer {
		return compat.Layer{Coating: c, Colour: colour.Key, State: tables.Sound, Coats: coats, Film: times(c.Film, coats), For: p}
	}
	switch {
	case !signals(c):
		note(RuleNoSignal, finding.Fine)
	case old:
		note(RuleOldIsSignal, finding.Fine, fact("signal", signal.Name), fact("top", top.Name), fact("step", wholeStep(top, signal)))
	case signal.Key == "":
		note(RuleNoStep, finding.Caution, fact("top", top.Name))
	default:
		note(RuleSignalUnder, finding.Fine, fact("signal", signal.Name), fact("top", top.Name), fact("step", wholeStep(top, signal)))
		under := layer(signal, 1, compat.Signal)
		if below.Key != c.Key {
			under.Coating, under.Film = below, below.Film
			note(RuleTwoTypes, finding.Fine, fact("below", below.Name))
		}
		s.Stack = append(s.Stack, under)
	}
	if signals(c) && signal.Key != "" {
		if seen := factor(b, "lightness-step-clear"); lightnessStep(top, signal) < seen {
			note(RuleSignalWeak, finding.Caution, fact("clear", int(seen)))
		}
		if c.Mechanism == tables.Hard {
			note(RuleSignalHard, finding.Caution, fact("signal", signal.Name), fact("top", top.Name))
		}
	}
	if extraZones := zonesWithExtra(b, area, part); len(extraZones) > 0 && signals(c) {
		note(RuleExtra, finding.Fine)
		s.Stack = append(s.Stack, layer(top, 1, compat.Extra))
	}
	note(RuleCoats, finding.Fine, fact("coats", n), fact("wished", months(boat.Months())), fact("afloat", months(boat.Use.AfloatMonths(boat.Months()))))
	s.Stack = append(s.Stack, layer(top, n, compat.Working))
	if part.Laminate == "wet" {
		note(RuleWet, finding.Caution)
	}
}

// signals reports whether a colour under the working coats tells anything: in films that wear away, and in hard ones.
func signals(c tables.Coating) bool { return c.Wears() || c.Mechanism == tables.Hard }

// times is the film of n coats.
func times(film quantity.Range[quantity.Film], n int) quantity.Range[quantity.Film] {
	k := decimal.NewFromInt(int64(n))
	return quantity.Range[quantity.Film]{Low: film.Low.Scale(k), Typical: film.Typical.Scale(k), High: film.High.Scale(k)}
}

// zonesOf returns the zone rows of a part's area.
func zonesOf(b *tables.Book, area PartArea) []tables.Zone {
	var out []tables.Zone
	for _, z := range area.Zones {
		if row, err := b.Zone(z.Zone); err == nil {
			out = append(out, row)
		}
	}
	return out
}

// zonesWithExtra lists the strips of the hull that get an extra coat. Other parts take theirs into the working coats.
func zonesWithExtra(b *tables.Book, area PartArea, part compat.Part) []string {
	if part.Zone != HullZone {
		return nil
	}
	var out []string
	for _, z := range zonesOf(b, area) {
		if z.ExtraCoats > 0 {
			out = append(out, z.Key)
		}
	}
	return out
}

// measure works out area, wet film, rate and litres of each layer that is put on.
func (s *Scheme) measure(b *tables.Book, boat Boat, area PartArea) error {
	for _, l := range s.Stack {
		if l.For == compat.Found || l.For == "" || l.Coats == 0 {
			continue
		}
		k := Coat{Layer: l, Film: l.Coating.Film}
		for _, z := range area.Zones {
			row, err := b.Zone(z.Zone)
			if l.For == compat.Extra && (err != nil || row.ExtraCoats == 0) {
				continue
			}
			k.Zones = append(k.Zones, z.Zone)
			k.Area = quantity.Range[quantity.Area]{Low: plus(k.Area.Low, z.Area.Low), Typical: plus(k.Area.Typical, z.Area.Typical), High: plus(k.Area.High, z.Area.High)}
		}
		if err := k.measure(b, boat.Paint); err != nil {
			return err
		}
		if len(s.Coats) == 0 && does(*s, finding.Blast) {
			if err := s.fill(b, boat, &k); err != nil {
				return err
			}
		}
		s.Coats = append(s.Coats, k)
	}
	return nil
}

// fill adds what the blasted surface swallows to the first coat on it. Where nobody said the profile, a medium one of grit is taken.
func (s *Scheme) fill(b *tables.Book, boat Boat, k *Coat) error {
	dead, err := coverage.Dead(b, boat.profile())
	if err != nil {
		return prefixed(err, "paint")
	}
	if k.Fills, err = coverage.Fill(b, k.Area, k.Layer.Coating, dead, boat.Paint); err != nil {
		return prefixed(err, "paint")
	}
	k.Litres = plusLitres(k.Litres, k.Fills)
	s.Findings = append(s.Findings, finding.Finding{
		Rule: RuleFillsBlast, Verdict: finding.Caution, About: k.Layer.Coating.Name,
		Facts: []finding.Fact{fact("litres", k.Fills.Typical), fact("film", dead.Typical)},
	})
	return nil
}

func (k *Coat) measure(b *tables.Book, m coverage.Method) (err error) {
	c := k.Layer.Coating
	if k.Wet, err = coverage.WetFilm(c.Film.Typical, c.Solids.Typical, m.Thinner); err != nil {
		return err
	}
	if k.Theoretical, err = coverage.Spread(c.Solids.Typical, c.Film.Typical); err != nil {
		return err
	}
	k.Litres, err = coverage.Paint(b, k.Area, c, c.Film.Typical, k.Layer.Coats, m)
	return err
}
