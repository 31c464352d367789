package antifoul

import (
	"fmt"
	"slices"
	"strconv"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// HullZone is the zone key of the part that the wetted area of the hull belongs to.
const HullZone = "hull"

// Boat is one boat and the question asked about her. Every field but Hull and Parts may be not given; what is then assumed is
// listed in the answer.
type Boat struct {
	Name    string
	On      quantity.Date // the day the question is asked
	Hull    coverage.Hull
	Parts   []compat.Part
	Use     wear.Use
	Berths  []law.Berth
	Work    calendar.Days
	Weather calendar.Conditions // of the place where she stands; its usual temperature is that of Paint
	Paint   coverage.Method
	Records []Record       // what was seen of earlier films of hers
	Tins    []coverage.Tin // what labels and store say of the coatings
	Wishes  Wishes
	Gauged  []Gauged      // what was put on, as a gauge of dry film read it
	Combed  []Combed      // as a comb read it while it was wet
	Used    []Used        // by the litres that went on
	Survey  survey.Survey // what was seen of her ashore
	Timed   []Timed       // patches that were worked on by the clock

	Passport int       // the form of the passport that it was read from; 0: it is none
	Jobs     []PastJob // what earlier logs told, the oldest first
}

// Wishes is what the owner would like: the [wishes] section of a boat file.
type Wishes struct {
	RepaintAfter quantity.Months // calendar months until the next bottom paint; not given: the haul-out interval
	ReckonOver   quantity.Months // calendar time over which money is reckoned; not given: the factor "reckon-over"
	Biocide      string          // WishLess, WishNone, or empty
	Racing       quantity.YesNo  // a burnished racing finish
	TopColour    string          // key of a colour
	SignalColour string
	SignalType   string // key of another type for the signal coat, such as a hard one under a film that wears; empty: the type above it
	Coating      string // key of a type that the owner wants on the hull
}

// The words of Wishes.Biocide.
const (
	WishLess = "less"
	WishNone = "none"
)

// Craft returns what the law asks about the boat: her length overall, or on the waterline where that is not given, her mass, and
// the key of the hull part's material.
func (x Boat) Craft() law.Craft {
	c := law.Craft{Length: x.Hull.Overall, Mass: x.Hull.Mass}
	if !c.Length.Given() {
		c.Length = x.Hull.Length
	}
	if p, ok := x.hullPart(); ok {
		c.Material = p.Material
	}
	return c
}

func (x Boat) hullPart() (compat.Part, bool) {
	i := slices.IndexFunc(x.Parts, func(p compat.Part) bool { return p.Zone == HullZone })
	if i < 0 {
		return compat.Part{}, false
	}
	return x.Parts[i], true
}

// berths returns the berths with the water that she lies in put where the one she is kept at does not say its own.
func (x Boat) berths() []law.Berth {
	out := slices.Clone(x.Berths)
	for i := range out {
		if out[i].Water == "" && out[i].Role == "kept" {
			out[i].Water = x.Use.Water
		}
	}
	return out
}

// water is the water that she lies in: as the use says, else that of the first berth where she is kept, which it or its place says; empty where
// nobody does.
func (x Boat) water(b *tables.Book) string {
	if x.Use.Water != "" {
		return x.Use.Water
	}
	for _, y := range x.Berths {
		if y.Role != "kept" {
			continue
		}
		if y.Water != "" {
			return y.Water
		}
		if place, err := b.Place(y.Place); err == nil && place.Water != "" {
			return place.Water
		}
	}
	return ""
}

// filled returns the boat with its parts as they were read, and with the one value taken that the formulas cannot do without: paint goes
// on by roller. It stands in the list of what was assumed.
func (x Boat) filled(b *tables.Book) Boat {
	x.Paint = x.byRoller()
	x.Parts = slices.Clone(x.Parts)
	for i := range x.Parts {
		x.Parts[i] = x.Parts[i].AsRead(b)
	}
	return x
}

// byRoller is the method with the roller where none is given.
func (x Boat) byRoller() coverage.Method {
	m := x.Paint
	if m.By == "" {
		m.By = "roller"
	}
	return m
}

// profile is the blast profile that is reckoned with: a medium one of grit where none is given. Basis: assumption, which is listed.
func (x Boat) profile() string {
	if x.Paint.Profile == "" {
		return "iso-8503-1-grit-medium"
	}
	return x.Paint.Profile
}

// Months returns the calendar months that the paint is wished to last: the wish, else the haul-out interval, else 12.
// Basis: assumption; a boat is lifted and painted once a year where nobody says otherwise.
func (x Boat) Months() float64 {
	switch {
	case x.Wishes.RepaintAfter.Given():
		return x.Wishes.RepaintAfter.Float(quantity.Month)
	case x.Use.HaulOutEvery.Given():
		return x.Use.HaulOutEvery.Float(quantity.Month)
	}
	return 12
}

// Check returns every fault of the boat, keys as in a boat file. Each section is checked by the package that owns it.
func (x Boat) Check(b *tables.Book) finding.Faults { return x.check(b, true) }

// check is Check; where nothing is said of the hull's size, and nobody needs it, sized is false.
func (x Boat) check(b *tables.Book, sized bool) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	if !x.On.Given() {
		bad(finding.ErrMissing, "boat.date", "", "the day the question is asked, 2027-04-03")
	}
	if sized {
		fs = append(fs, x.Hull.Check(b).Under("", "hull")...)
	} else {
		fs = append(fs, x.unsizedFaults()...)
	}
	fs = append(fs, x.Use.Check().Under("", "use")...)
	fs = append(fs, x.Work.Check(x.On).Under("", "work")...)
	fs = append(fs, x.byRoller().Check(b).Under("", "paint")...)
	names := map[string]bool{}
	hulls := 0
	for i, p := range x.Parts {
		label := p.Name
		if label == "" {
			label = strconv.Itoa(i + 1)
		}
		key := "part[" + label + "]"
		if p.Name != "" && names[p.Name] {
			bad(finding.ErrDuplicate, key+".name", entry.Describe(p.Name), "a name that no other part has")
		}
		names[p.Name] = true
		if p.Zone == HullZone {
			hulls++
		}
		fs = append(fs, p.Check(b).Under("", key)...)
		if sized {
			fs = append(fs, checkArea(b, x, i).Under("", key)...)
		}
	}
	switch {
	case hulls == 0 && sized:
		bad(finding.ErrMissing, "part", "no part with zone = \"hull\"", "exactly one")
	case hulls > 1:
		bad(finding.ErrDuplicate, "part", fmt.Sprintf("%d parts with zone = \"hull\"", hulls), "exactly one")
	}
	for i, y := range x.Berths {
		fs = append(fs, y.Check(b).Under("", fmt.Sprintf("berth[%d]", i+1))...)
	}
	for i, y := range x.Records {
		fs = append(fs, y.check(b).Under("", fmt.Sprintf("record[%d]", i+1))...)
	}
	for i, y := range x.Jobs {
		fs = append(fs, y.check(b).Under("", fmt.Sprintf("job[%d]", i+1))...)
	}
	for i, p := range x.Hull.Pieces {
		row, _ := b.Piece(p.What) // one that is not known is a fault of the hull, and has no zone
		if z, err := b.Zone(row.Zone); err == nil && !z.InHull && !slices.ContainsFunc(x.Parts, func(p compat.Part) bool { return p.Zone == row.Zone }) {
			bad(finding.ErrImpossible, fmt.Sprintf("hull.piece[%d].what", i+1), entry.Describe(p.What), "a part with zone = \""+row.Zone+"\", whose area it is; or no such piece")
		}
	}
	tins := map[string]bool{}
	for i, y := range x.Tins {
		key := fmt.Sprintf("tin[%d]", i+1)
		fs = append(fs, y.Check(b).Under("", key)...)
		if y.Coating != "" && tins[y.Coating] {
			bad(finding.ErrDuplicate, key+".coating", entry.Describe(y.Coating), "one section for each coating")
		}
		tins[y.Coating] = true
	}
	fs = append(fs, x.oneCurrency(b)...)
	fs = append(fs, x.Wishes.check(b).Under("", "wishes")...)
	fs = append(fs, x.putOnFaults(b)...)
	fs = append(fs, x.timedFaults(b)...)
	return append(fs, x.Survey.Check(b, x.Parts, x.On)...)
}

// oneCurrency returns a fault for each kit whose price is not of the currency of the book's prices, or of the first kit's.
func (x Boat) oneCurrency(b *tables.Book) finding.Faults {
	var fs finding.Faults
	want := b.Currency()
	for i, t := range x.Tins {
		for k, kit := range t.Kits {
			switch got := kit.Price.Currency(); {
			case got == "" || got == want:
			case want == "":
				want = got
			default:
				fs = append(fs, finding.Fault{
					Kind: finding.ErrImpossible, Key: fmt.Sprintf("tin[%d].kit[%d].price", i+1, k+1), Got: kit.Price.String(), Want: "money in " + want + ", as the other prices: nothing is exchanged",
				})
			}
		}
	}
	return fs
}

func (w Wishes) check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	if w.RepaintAfter.Given() && (w.RepaintAfter.Sign() <= 0 || w.RepaintAfter.Cmp(quantity.Month.N(240)) > 0) {
		bad(finding.ErrImpossible, "repaint_after", w.RepaintAfter.String(), "an interval above zero, to 240 months")
	}
	if w.ReckonOver.Given() && (w.ReckonOver.Cmp(quantity.Month.N(12)) < 0 || w.ReckonOver.Cmp(quantity.Month.N(600)) > 0) {
		bad(finding.ErrImpossible, "reckon_over", w.ReckonOver.String(), "a time from 1 to 50 years")
	}
	if w.Biocide != "" && w.Biocide != WishLess && w.Biocide != WishNone {
		bad(finding.ErrValue, "biocide", entry.Describe(w.Biocide), "one of less, none")
	}
	top, okTop := wishedColour(b, "top_colour", w.TopColour, &fs)
	signal, okSignal := wishedColour(b, "signal_colour", w.SignalColour, &fs)
	if okTop && okSignal {
		if step := lightnessStep(top, signal); step < leastStep(b) {
			bad(finding.ErrImpossible, "signal_colour", fmt.Sprintf("%s under %s, a step of %.0f in lightness", signal.Name, top.Name, step),
				fmt.Sprintf("a colour at least %.0f lighter or darker than %s", leastStep(b), top.Name))
		}
	}
	for _, x := range []struct{ key, coating string }{{"coating", w.Coating}, {"signal_type", w.SignalType}} {
		if x.coating == "" {
			continue
		}
		c, err := b.Coating(x.coating)
		switch {
		case err != nil:
			bad(finding.ErrUnknown, x.key, entry.Describe(x.coating), finding.Suggest(x.coating, rankedKeys(b)))
		case x.key == "signal_type" && (c.Role != tables.Antifouling || c.Laid()):
			bad(finding.ErrValue, x.key, entry.Describe(x.coating), "an antifouling that is painted on")
		case !c.Ranked():
			bad(finding.ErrValue, x.key, entry.Describe(x.coating), "an antifouling, a blacking or none")
		}
	}
	return fs
}

// wishedColour returns the colour of the key wished; ok is false when none was, or when no row has it, which is noted.
func wishedColour(b *tables.Book, key, name string, fs *finding.Faults) (tables.Colour, bool) {
	if name == "" {
		return tables.Colour{}, false
	}
	c, err := b.Colour(name)
	if err != nil {
		var known []string
		for c := range b.Colours() {
			known = append(known, c.Key)
		}
		*fs = append(*fs, finding.Fault{Kind: finding.ErrUnknown, Key: key, Got: entry.Describe(name), Want: finding.Suggest(name, known)})
		return tables.Colour{}, false
	}
	return c, true
}

func rankedKeys(b *tables.Book) []string {
	var out []string
	for c := range b.Coatings() {
		if c.Ranked() {
			out = append(out, c.Key)
		}
	}
	return out
}
