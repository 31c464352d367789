package antifoul

import (
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of the layers of a log.
const (
	RuleLogLayerDone    finding.ID = "log-layer-done"
	RuleLogLayerMissing finding.ID = "log-layer-missing"
	RuleLogLayerMore    finding.ID = "log-layer-more"
	RuleLogUnplanned    finding.ID = "log-layer-unplanned"
	RuleLogColour       finding.ID = "log-colour-other"
	RuleLogOrder        finding.ID = "log-order"
	RuleLogBatches      finding.ID = "log-batches"
	RuleLogSurvey       finding.ID = "log-survey"
	RuleLogSurveyOther  finding.ID = "log-survey-differs"
)

// LoggedLayer is one layer of a part: coats of one purpose, coating and colour, as they were laid, or as they are planned and were not.
type LoggedLayer struct {
	Part     string
	Layer    compat.Purpose
	Coating  tables.Coating
	Colour   string // as noted; where nothing was noted, as planned
	Noted    bool   // the colour was noted
	Planned  int    // coats; 0: the plan has none of it
	Laid     int    // coats that lie everywhere where the layer goes
	Zones    []string
	Film     quantity.Range[quantity.Film] // of all its coats on the first of its zones; not given: not known of one
	Gauged   *joblog.Survey                // that tells the film; nil: litres or comb do, or nothing
	Batches  []string
	Coats    []LoggedCoat
	Findings finding.List
}

// loggedLayers sets what was laid beside what was planned, part by part: first what was laid, in the order in which it was begun, then what is missing.
func (j *Job) loggedLayers(l Logged) []LoggedLayer {
	var out []LoggedLayer
	for _, p := range j.Boat.Parts {
		s, _ := j.Scheme(p.Name)
		layers := asLaid(l.of(p.Name))
		for i := range layers {
			layers[i].survey(j.Book, l)
		}
		matched := make([]bool, len(s.Coats))
		for i := range layers {
			layers[i].plan(j.Book, s, matched)
		}
		for i, c := range s.Coats {
			if !matched[i] {
				layers = append(layers, LoggedLayer{
					Part: p.Name, Layer: c.Layer.For, Coating: c.Layer.Coating, Colour: c.Layer.Colour, Planned: c.Layer.Coats, Zones: c.Zones,
					Findings: finding.List{missing(c, 0)},
				})
			}
		}
		for i := range layers {
			layers[i].order(layers[:i])
		}
		out = append(out, layers...)
	}
	return out
}

// asLaid gathers the coats of a part into layers. Undercoats of more than one colour, which tell the coats apart, are one layer of the colour on top.
func asLaid(coats []LoggedCoat) []LoggedLayer {
	var out []LoggedLayer
	for _, k := range coats {
		i := slices.IndexFunc(out, func(x LoggedLayer) bool {
			return x.Layer == k.Layer && x.Coating.Key == k.Coating && (k.Layer == compat.Undercoat || x.Colour == k.Colour || k.Colour == "" || x.Colour == "")
		})
		if i < 0 {
			i = len(out)
			out = append(out, LoggedLayer{Part: k.Part, Layer: k.Layer, Coating: k.Paint})
		}
		x := &out[i]
		if k.Colour != "" {
			x.Colour, x.Noted = k.Colour, true
		}
		x.Coats = append(x.Coats, k)
		for _, z := range k.on {
			if !slices.Contains(x.Zones, z) {
				x.Zones = append(x.Zones, z)
			}
		}
		for _, n := range k.Batches {
			if !slices.Contains(x.Batches, n) {
				x.Batches = append(x.Batches, n)
			}
		}
	}
	for i := range out {
		out[i].Film = out[i].film()
	}
	return out
}

// surveyed is the last reading of the layer's film in the zone; false where nobody took one.
func (l Logged) surveyed(part string, layer compat.Purpose, coating, zone string) (joblog.Survey, bool) {
	var out joblog.Survey
	for _, s := range l.Log.Surveys {
		if s.Part == part && s.Layer == layer && s.Coating == coating && s.Zone == zone && !s.On.Before(out.On) {
			out = s
		}
	}
	return out, out.Part != ""
}

// survey takes the film that a gauge read on the first of the layer's zones in the place of what litres and comb say, and says whether these agree.
func (x *LoggedLayer) survey(b *tables.Book, l Logged) {
	if len(x.Zones) == 0 {
		return
	}
	s, ok := l.surveyed(x.Part, x.Layer, x.Coating.Key, x.Zones[0])
	if !ok {
		return
	}
	zone := s.Zone
	if z, err := b.Zone(s.Zone); err == nil {
		zone = z.Name
	}
	f := finding.Finding{
		Rule: RuleLogSurvey, Verdict: finding.Fine, About: x.Coating.Name, Against: x.Part,
		Facts: facts(fact("readings", readings(s.Readings)), fact("date", s.On), fact("film", s.Film), fact("zone", zone)),
	}
	if x.Film.Low.Given() {
		if _, same := overlap(x.Film, s.Film); !same {
			f.Rule, f.Verdict, f.Facts = RuleLogSurveyOther, finding.Ask, append(f.Facts, fact("laid", microns(x.Film)))
		}
	}
	x.Film, x.Gauged = s.Film, &s
	x.Findings = append(x.Findings, f)
}

// film is that of all coats on the first of the layer's zones.
func (x *LoggedLayer) film() quantity.Range[quantity.Film] {
	var sum quantity.Range[quantity.Film]
	if len(x.Zones) == 0 {
		return sum
	}
	for _, k := range x.Coats {
		if !slices.Contains(k.on, x.Zones[0]) {
			continue
		}
		if !k.Film.Low.Given() {
			return quantity.Range[quantity.Film]{}
		}
		sum = quantity.Range[quantity.Film]{Low: plus(sum.Low, k.Film.Low), Typical: plus(sum.Typical, k.Film.Typical), High: plus(sum.High, k.Film.High)}
	}
	return sum
}

// count is how many coats lie everywhere in the zones.
func (x *LoggedLayer) count(zones []string) int {
	least := len(x.Coats)
	for _, z := range zones {
		n := 0
		for _, k := range x.Coats {
			if slices.Contains(k.on, z) {
				n++
			}
		}
		least = min(least, n)
	}
	return least
}

// plan holds the layer against the scheme, and marks the planned layer that it is.
func (x *LoggedLayer) plan(b *tables.Book, s Scheme, matched []bool) {
	note := func(rule finding.ID, v finding.Verdict, fs ...finding.Fact) {
		x.Findings = append(x.Findings, finding.Finding{Rule: rule, Verdict: v, About: x.Coating.Name, Against: x.Part, Facts: fs})
	}
	if x.mixed() {
		note(RuleLogBatches, finding.Caution, fact("batches", strings.Join(x.Batches, ", ")))
	}
	i := slices.IndexFunc(s.Coats, func(c Coat) bool { return c.Layer.For == x.Layer && c.Layer.Coating.Key == x.Coating.Key })
	if i < 0 || matched[i] {
		x.Laid = x.count(x.Zones)
		note(RuleLogUnplanned, finding.Ask)
		return
	}
	matched[i] = true
	c := s.Coats[i]
	x.Planned, x.Laid = c.Layer.Coats, x.count(c.Zones)
	if x.Noted && c.Layer.Colour != "" && x.Colour != c.Layer.Colour {
		note(RuleLogColour, finding.Caution, fact("colour", colourName(b, x.Colour)), fact("planned", colourName(b, c.Layer.Colour)))
	}
	if !x.Noted {
		x.Colour = c.Layer.Colour
	}
	switch {
	case x.Laid < x.Planned:
		x.Findings = append(x.Findings, missing(c, x.Laid))
	case x.Laid > x.Planned:
		note(RuleLogLayerMore, finding.Caution, fact("laid", x.Laid), fact("planned", x.Planned))
	default:
		note(RuleLogLayerDone, finding.Fine, fact("planned", x.Planned))
	}
}

// mixed reports whether more than one batch went into the layer. Of two packs a coat has two numbers, so that only coats of unlike numbers tell.
func (x *LoggedLayer) mixed() bool {
	if x.Coating.Packs < 2 {
		return len(x.Batches) > 1
	}
	sorted := func(k LoggedCoat) []string { return slices.Sorted(slices.Values(k.Batches)) }
	for i, k := range x.Coats {
		for _, o := range x.Coats[:i] {
			if len(k.Batches) > 0 && len(o.Batches) > 0 && !slices.Equal(sorted(k), sorted(o)) {
				return true
			}
		}
	}
	return false
}

// colourName is the name of a colour; its key where the book has none.
func colourName(b *tables.Book, key string) string {
	if k, err := b.Colour(key); err == nil {
		return k.Name
	}
	return key
}

func missing(c Coat, laid int) finding.Finding {
	return finding.Finding{
		Rule: RuleLogLayerMissing, Verdict: finding.Needs, About: c.Layer.Coating.Name,
		Facts: facts(fact("laid", laid), fact("planned", c.Layer.Coats), fact("missing", c.Layer.Coats-laid)),
	}
}

// order notes coats of this layer that came after one of a layer that goes above it; an extra coat may go on before or after the working ones. Layers
// without coats come last.
func (x *LoggedLayer) order(before []LoggedLayer) {
	for _, o := range before {
		if x.Layer != compat.Extra && len(x.Coats) > 0 && level(x.Layer) < level(o.Layer) && joblog.Meet(x.Zones, o.Zones) {
			x.Findings = append(x.Findings, finding.Finding{
				Rule: RuleLogOrder, Verdict: finding.Ask, About: x.Coating.Name, Against: string(o.Layer),
				Facts: facts(fact("layer", string(x.Layer)), fact("date", day(x.Coats[0].Begun))),
			})
			return
		}
	}
}

// level is the place of a layer from the bottom.
func level(p compat.Purpose) int { return slices.Index(joblog.Layers(), p) }

// next is the first planned layer of which coats are missing, with the number of its next coat; left is false when none is.
func (l Logged) next(s Scheme) (c Coat, number int, left bool) {
	for _, c := range s.Coats {
		var laid int
		for _, x := range l.Layers {
			if x.Part == s.Part && x.Layer == c.Layer.For && x.Coating.Key == c.Layer.Coating.Key && x.Planned > 0 {
				laid = x.Laid
			}
		}
		if laid < c.Layer.Coats {
			return c, laid + 1, true
		}
	}
	return c, number, false
}
