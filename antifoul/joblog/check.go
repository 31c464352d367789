package joblog

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What can be measured at the work. Basis: assumption, wider than any day on which somebody paints.
var (
	coldest     = quantity.Celsius.N(-45)
	hottestAir  = quantity.Celsius.N(60)
	hottestSkin = quantity.Celsius.N(100)
	mostLitres  = quantity.Litre.N(5000)
	mostFilm    = quantity.Micrometre.N(10000)
)

// longest is how long one entry may last: what goes on longer is two entries. Basis: assumption.
const longest = 24 * time.Hour

// checker notes the faults of one log.
type checker struct {
	b  *tables.Book
	fs finding.Faults
}

func (c *checker) bad(kind error, key, got, want string) {
	c.fs = append(c.fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
}

// need notes a missing text.
func (c *checker) need(key, got, want string) bool {
	if got == "" {
		c.bad(finding.ErrMissing, key, "", want)
	}
	return got != ""
}

// Check returns every fault of the log, keys as in its file, sections counted from 1: "coat[3].dew_point".
//
// Needed are a coat's part, layer, number, coating, and when it was begun; a task's part, what was done and when; a look's day, part and zone. Names are
// those of the book. What cannot be is a fault: an end before its beginning, a dew point above the air, humidity over 100 %, the same coat twice on a
// place, a third coat before the second, two coats on one place at one time, work on a boat that is afloat, a look before the launch, a colour
// that no longer shows. Whether litres make a film that anybody lays is asked against the area, by antifoul.
func (l Log) Check(b *tables.Book) finding.Faults {
	c := &checker{b: b}
	switch {
	case l.Version < 0:
		c.bad(finding.ErrValue, "log.version", strconv.Itoa(l.Version), fmt.Sprintf("%d, or 0 for a log made in Go", Version))
	case l.Version > Version:
		c.bad(finding.ErrValue, "log.version", strconv.Itoa(l.Version), newer)
	}
	if l.Hauled.Given() && !l.Launched.Given() {
		c.bad(finding.ErrMissing, "log.launched", "", "the day of the launch, before the day on which she was hauled out")
	}
	if l.Hauled.Given() && l.Launched.Given() && !l.Hauled.After(l.Launched) {
		c.bad(finding.ErrImpossible, "log.hauled", l.Hauled.String(), "after the launch, "+l.Launched.String())
	}
	if len(l.Coats)+len(l.Tasks)+len(l.Surveys)+len(l.Looks) == 0 {
		c.bad(finding.ErrMissing, "coat", "", "at least one [[coat]], [[task]] or [[look]]")
	}
	for i, k := range l.Coats {
		key := fmt.Sprintf("coat[%d].", i+1)
		c.coat(key, k)
		c.ashore(key, l, k.Span)
	}
	for i, t := range l.Tasks {
		key := fmt.Sprintf("task[%d].", i+1)
		c.task(key, t)
		c.ashore(key, l, t.Span)
	}
	for i, s := range l.Surveys {
		c.survey(fmt.Sprintf("gauged[%d].", i+1), l, s)
	}
	for i, k := range l.Looks {
		c.look(fmt.Sprintf("look[%d].", i+1), l, i, k)
	}
	c.order(l)
	return c.fs
}

func (c *checker) coat(key string, k Coat) {
	c.need(key+"part", k.Part, "the name of a part of the boat file")
	if c.need(key+"layer", string(k.Layer), "one of "+strings.Join(words(), ", ")) && !slices.Contains(Layers(), k.Layer) {
		c.bad(finding.ErrValue, key+"layer", entry.Describe(string(k.Layer)), "one of "+strings.Join(words(), ", "))
	}
	if k.Number < 1 || k.Number > 50 {
		if k.Number == 0 {
			c.bad(finding.ErrMissing, key+"coat", "", "which coat of its layer it was, from 1 to 50")
		} else {
			c.bad(finding.ErrImpossible, key+"coat", strconv.Itoa(k.Number), "which coat of its layer it was, from 1 to 50")
		}
	}
	if c.need(key+"coating", k.Coating, "the key of the coating that went on") {
		if x, err := c.b.Coating(k.Coating); err != nil || !x.Solids.Typical.Given() && !x.Laid() {
			c.bad(finding.ErrUnknown, key+"coating", entry.Describe(k.Coating), finding.Suggest(k.Coating, paints(c.b)))
		}
	}
	c.colour(key, k.Colour)
	c.zones(key, k.Zones)
	c.when(key, k.Span)
	c.air(key, k.Air)
	c.amounts(key, k)
}

func (c *checker) amounts(key string, k Coat) {
	if k.Litres.Given() && (k.Litres.Sign() <= 0 || k.Litres.Cmp(mostLitres) > 0) {
		c.bad(finding.ErrImpossible, key+"litres", k.Litres.String(), "more than zero, to "+mostLitres.String())
	}
	if k.Thinner.Given() && (k.Thinner.Sign() < 0 || k.Thinner.Cmp(quantity.Percent.N(100)) > 0) {
		c.bad(finding.ErrImpossible, key+"thinner", k.Thinner.String(), "from 0 % to 100 %")
	}
	if len(k.Wet) == 0 {
		return
	}
	some := quantity.Exactly(quantity.Percent.N(50)) // the coating's own are asked for with it
	for _, f := range (coverage.WetCoat{Teeth: k.Wet, Solids: some, Asked: quantity.Micrometre.N(50)}).Check() {
		f.Key = key + "wet_film" + strings.TrimPrefix(f.Key, "readings")
		c.fs = append(c.fs, f)
	}
}

func (c *checker) task(key string, t Task) {
	c.need(key+"part", t.Part, "the name of a part of the boat file")
	if c.need(key+"do", string(t.Do), "what was done, such as wash, abrade or strip") {
		if _, err := c.b.Step(t.Do); err != nil {
			var known []string
			for s := range c.b.Steps() {
				known = append(known, s.Key)
			}
			c.bad(finding.ErrUnknown, key+"do", entry.Describe(string(t.Do)), finding.Suggest(string(t.Do), known))
		}
	}
	if t.DownTo != "" {
		if _, err := c.b.Coating(t.DownTo); err != nil {
			var known []string
			for x := range c.b.Coatings() {
				known = append(known, x.Key)
			}
			c.bad(finding.ErrUnknown, key+"down_to", entry.Describe(t.DownTo), finding.Suggest(t.DownTo, known))
		}
		if t.Do != finding.Strip && t.Do != finding.Blast || !t.All() {
			c.bad(finding.ErrImpossible, key+"down_to", entry.Describe(t.DownTo), "beside do = \"strip\" or \"blast\" on the whole part")
		}
	}
	c.zones(key, t.Zones)
	c.when(key, t.Span)
}

func (c *checker) survey(key string, l Log, s Survey) {
	c.need(key+"part", s.Part, "the name of a part of the boat file")
	if c.need(key+"zone", s.Zone, "the key of a zone") {
		c.zones(key, []string{s.Zone})
	}
	switch {
	case !s.On.Given():
		c.bad(finding.ErrMissing, key+"on", "", "the day of the reading, 2027-04-20")
	case l.Launched.Given() && s.On.After(l.Launched):
		c.bad(finding.ErrImpossible, key+"on", s.On.String(), "no later than the launch, "+l.Launched.String()+"; afterwards it is a [[look]]")
	}
	f := s.Film
	switch {
	case !f.Low.Given():
		c.bad(finding.ErrMissing, key+"film", "", `the dry film of that layer alone, "320 um", or ["290 um", "320 um", "350 um"]`)
	case f.Low.Sign() <= 0 || f.High.Cmp(mostFilm) > 0 || f.Low.Cmp(f.Typical) > 0 || f.Typical.Cmp(f.High) > 0:
		c.bad(finding.ErrImpossible, key+"film", f.Low.String()+" to "+f.High.String(), "films above zero, to "+mostFilm.String()+", that rise: low, typical, high")
	}
	laid := func(k Coat) bool {
		return k.Part == s.Part && k.Layer == s.Layer && k.Coating == s.Coating && Meet(k.Zones, []string{s.Zone}) && (!s.On.Given() || !day(k.Until()).After(s.On))
	}
	if s.Part != "" && !slices.ContainsFunc(l.Coats, laid) {
		c.bad(finding.ErrImpossible, key+"coating", string(s.Layer)+" of "+entry.Describe(s.Coating)+" on the "+s.Part, "layer, coating, part and zone of a [[coat]] that was laid by then")
	}
}

func (c *checker) look(key string, l Log, i int, k Look) {
	c.need(key+"part", k.Part, "the name of a part of the boat file")
	if c.need(key+"zone", k.Zone, "the key of a zone") {
		c.zones(key, []string{k.Zone})
	}
	switch {
	case !k.On.Given():
		c.bad(finding.ErrMissing, key+"on", "", "the day of the look, 2027-09-12")
	case !l.Launched.Given():
		c.bad(finding.ErrMissing, "log.launched", "", "the day of the launch: a look is one at a film that was afloat")
	case !k.On.After(l.Launched):
		c.bad(finding.ErrImpossible, key+"on", k.On.String(), "after the launch, "+l.Launched.String())
	}
	if k.State != "" {
		if _, err := c.b.Condition(k.State); err != nil {
			var known []string
			for s := range c.b.Conditions() {
				known = append(known, s.Key)
			}
			c.bad(finding.ErrUnknown, key+"state", entry.Describe(string(k.State)), finding.Suggest(string(k.State), known))
		}
	}
	switch {
	case !k.Signal.Said() && !k.Film.Given() && k.State == "":
		c.bad(finding.ErrMissing, key+"signal", "", "true or false, whether the signal shows; or the film that is left, or the state")
	case k.Film.Given() && (k.Film.Sign() < 0 || k.Film.Cmp(mostFilm) > 0):
		c.bad(finding.ErrImpossible, key+"film", k.Film.String(), "a film from 0 to "+mostFilm.String())
	case k.Film.Sign() > 0 && k.Signal.True():
		c.bad(finding.ErrImpossible, key+"film", k.Film.String(), "no film beside a signal that shows: it is worn through there")
	case k.Readings != 0 && !k.Film.Given():
		c.bad(finding.ErrMissing, key+"film", "", "the mean of the readings")
	}
	for _, o := range l.Looks[:i] { // once it shows, it shows until she is painted
		if o.Part == k.Part && o.Zone == k.Zone && o.Signal.True() && o.On.Before(k.On) && (k.Signal == quantity.No || k.Film.Sign() > 0) {
			c.bad(finding.ErrImpossible, key+"signal", "no signal where the look of "+o.On.String()+" saw it", "a signal that has shown shows until she is painted")
			return
		}
	}
	if i > 0 && k.On.Before(l.Looks[i-1].On) {
		c.bad(finding.ErrImpossible, key+"on", k.On.String(), "looks in order of their days")
	}
}

func (c *checker) colour(key, colour string) {
	if colour == "" {
		return
	}
	if _, err := c.b.Colour(colour); err != nil {
		var known []string
		for k := range c.b.Colours() {
			known = append(known, k.Key)
		}
		c.bad(finding.ErrUnknown, key+"colour", entry.Describe(colour), finding.Suggest(colour, known))
	}
}

func (c *checker) zones(key string, zones []string) {
	at := key + "zones"
	if strings.HasPrefix(key, "look") || strings.HasPrefix(key, "gauged") {
		at = key + "zone"
	}
	for i, z := range zones {
		if _, err := c.b.Zone(z); err != nil {
			var known []string
			for k := range c.b.Zones() {
				known = append(known, k.Key)
			}
			c.bad(finding.ErrUnknown, at, entry.Describe(z), finding.Suggest(z, known))
		}
		if slices.Contains(zones[:i], z) {
			c.bad(finding.ErrDuplicate, at, entry.Describe(z), "each zone once")
		}
	}
}

func (c *checker) when(key string, s Span) {
	switch {
	case s.Begun.IsZero():
		c.bad(finding.ErrMissing, key+"begun", "", momentWant)
	case s.Ended.IsZero():
	case !s.Ended.After(s.Begun):
		c.bad(finding.ErrImpossible, key+"ended", told(s.Ended), "after it was begun, "+told(s.Begun))
	case s.Ended.Sub(s.Begun) > longest:
		c.bad(finding.ErrImpossible, key+"ended", told(s.Ended), "within 24 hours of "+told(s.Begun)+"; what went on over days is a section for each day, with its zones")
	}
}

// told is a moment as a person would write it.
func told(t time.Time) string { return t.Format("2006-01-02 15:04") }

func (c *checker) air(key string, a Air) {
	within := func(name string, t, low, high quantity.Temperature) {
		if t.Given() && (t.Cmp(low) < 0 || t.Cmp(high) > 0) {
			c.bad(finding.ErrImpossible, key+name, t.String(), "from "+low.String()+" to "+high.String())
		}
	}
	within("air", a.Air, coldest, hottestAir)
	within("surface", a.Surface, coldest, hottestSkin)
	within("dew_point", a.DewPoint, quantity.Celsius.N(-90), hottestAir)
	if a.Humidity.Given() && (a.Humidity.Sign() <= 0 || a.Humidity.Cmp(quantity.Percent.N(100)) > 0) {
		c.bad(finding.ErrImpossible, key+"humidity", a.Humidity.String(), "more than 0 % and at most 100 %")
	}
	if a.DewPoint.Given() && a.Air.Given() && a.DewPoint.Cmp(a.Air) > 0 {
		c.bad(finding.ErrImpossible, key+"dew_point", a.DewPoint.String(), "no higher than the air, "+a.Air.String())
	}
}

// paints lists the keys of what can be put on.
func paints(b *tables.Book) []string {
	var out []string
	for x := range b.Coatings() {
		if x.Solids.Typical.Given() || x.Laid() {
			out = append(out, x.Key)
		}
	}
	return out
}
