package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// boat tells the boat as reported, and what was assumed where nothing was said.
func (c *composer) boat() {
	c.head(2, "The boat as reported")
	x := c.job.Boat
	var rows [][2]string
	row := func(name, value string) {
		if value != "" {
			rows = append(rows, [2]string{name, value})
		}
	}
	if f, err := c.job.Book.HullForm(x.Hull.Kind); err == nil {
		row("Hull form", f.Name)
	}
	row("Waterline, beam, draught", join(" × ", shown(x.Hull.Length, c.units), shown(x.Hull.Beam, c.units), shown(x.Hull.Draft, c.units)))
	row("Displacement", shown(x.Hull.Mass, c.units))
	c.shape(row)
	u := x.Use
	row("Under way", suffix(shown(u.UnderWay, c.units), " a year"))
	row("Sustained speed", shown(u.Speed, c.units))
	row("Longest lie without moving", shown(u.LongestIdle, c.units))
	row("Hauled out every", shown(u.HaulOutEvery, c.units))
	row("Ashore each year", suffix(shown(u.AshoreEachYear, c.units), relaunched(u.RelaunchedUnpainted)))
	if u.Growth != 0 {
		row("Growth", u.Growth.String())
	}
	row("Water", join(", ", u.Water, shown(u.WaterTemperature, c.units)))
	if u.Cleaning != 0 {
		row("Cleaned afloat", join(", every ", wear.CleaningWords()[u.Cleaning-1], shown(u.CleanedEvery, c.units)))
	}
	row("Kept", u.Kept)
	row("Takes the ground", u.DriesOn)
	for _, b := range x.Berths {
		name := b.Place
		if p, err := c.job.Book.Place(b.Place); err == nil {
			name = p.Name
		}
		row(sentence(b.Role)+" at", join(", ", name, suffix(b.Water, " water")))
	}
	row("Launch", launch(x.Work.Launch, x.Work.LaunchOpen))
	c.method(row)
	w := x.Wishes
	row("Wished until the next paint", shown(w.RepaintAfter, c.units))
	row("Wished top colour", named(w.TopColour, c.colour))
	row("Wished signal colour", named(w.SignalColour, c.colour))
	row("Wished signal coat", named(w.SignalType, c.coatingName))
	if w.Coating != "" {
		if k, err := c.job.Book.Coating(w.Coating); err == nil {
			row("Wished type", k.Name)
		}
	}
	if w.Biocide != "" {
		row("Wished biocide", w.Biocide)
	}
	if w.Racing.True() {
		row("Wish", "a racing finish")
	}
	c.blocks = append(c.blocks, pairs{rows})
	c.found()
	c.records()
	c.jobs()
	c.assumed()
}

// shape tells what else was reported of the size of the hull.
func (c *composer) shape(row func(name, value string)) {
	h := c.job.Boat.Hull
	if h.Hulls > 0 {
		row("Hulls", strconv.Itoa(h.Hulls))
	}
	row("Beam on the waterline", shown(h.WaterlineBeam, c.units))
	row("Draught without keel", shown(h.CanoeDraft, c.units))
	row("Midship section", shown(h.Midship, c.units))
	row("Painted above the waterline", shown(h.BootTop, c.units))
	if n := len(h.Girths); n > 0 {
		row("Tape", plural(n, "station", "stations")+" from "+h.Girths[0].At.Show(c.units)+" to "+h.Girths[n-1].At.Show(c.units))
	}
	if n := len(h.Offsets); n > 0 {
		row("Offsets", plural(n, "station", "stations")+" from "+h.Offsets[0].At.Show(c.units)+" to "+h.Offsets[n-1].At.Show(c.units))
	}
	for _, p := range h.Pieces {
		name := p.What
		if k, err := c.job.Book.Piece(p.What); err == nil {
			name = k.Name
		}
		row(sentence(name), pick(p.Count > 1, strconv.Itoa(p.Count)+" of ", "")+join(" × ", shown(p.Length, c.units), shown(p.Height, c.units), shown(p.Width, c.units)))
	}
}

// wordy is how many letters make a cell too long for a table in one column of a printed page.
const wordy = 60

// found tells what is on each part, bottom to top.
func (c *composer) found() {
	var rows [][]string
	var signs []string
	for _, p := range c.job.Boat.Parts {
		material := p.Material
		if m, err := c.job.Book.Material(p.Material); err == nil {
			material = m.Name
		}
		if p.Laminate != "" {
			material += ", measured " + p.Laminate
		}
		if len(p.Found) == 0 {
			rows = append(rows, []string{p.Name, material, "not reported", "", "", "", ""})
		}
		for _, l := range p.Found {
			film := filmOf(l, c.units)
			if l.Coating.Key == tables.BareSurface {
				film = "–"
			}
			rows = append(rows, []string{p.Name, material, l.Coating.Name, c.colour(l.Colour), film, state(l), or(l.KnownBy, "not said")})
			if how := l.Coating.Recognised; how != "" && l.Coating.Key != tables.BareSurface {
				if text := sentence(l.Coating.Name) + ": " + how + "."; !slices.Contains(signs, text) {
					signs = append(signs, text)
				}
			}
		}
	}
	c.say("Films of each part as reported, bottom to top:")
	c.blocks = append(c.blocks, table{[]string{"Part", "Made of", "Film", "Colour", "Dry film", "State", "Known by"}, once(rows, 2), longest(rows, 6) > wordy})
	if len(signs) > 0 {
		c.say("How these films are told, to be checked on the boat:")
		c.list(signs)
	}
}

// method tells how the paint goes on, who puts it on, and what she stands on.
func (c *composer) method(row func(name, value string)) {
	x := c.job.Boat
	for _, m := range x.Hull.Measured {
		row("Measured "+c.zone(m.Zone), m.Area.Show(c.units))
	}
	if s := x.Hull.Support; s != nil {
		row("Stands on", fmt.Sprintf("%s, %s, %s", plural(s.StandPairs, "pair of stands", "pairs of stands"), plural(s.KeelBlocks, "keel block", "keel blocks"), plural(s.Chains, "chain", "chains")))
	}
	if l, err := c.job.Book.Loss(x.Paint.By); err == nil {
		row("Paint goes on by", join(", ", l.Name, suffix(shown(x.Paint.Thinner, c.units), " of thinner"), suffix(shown(x.Paint.Reserve, c.units), " in reserve")))
	}
	row("Blast profile", x.Paint.Profile)
	row("Temperature at work", shown(x.Paint.Today, c.units))
	if x.Work.Hands > 0 {
		row("Hands", strconv.Itoa(x.Work.Hands))
	}
	for _, t := range x.Tins {
		name := t.Coating
		if k, err := c.job.Book.Coating(t.Coating); err == nil {
			name = k.Name
		}
		var says []string
		if !t.Ratio.Base.IsZero() {
			says = append(says, "ratio "+t.Ratio.String())
		}
		if t.PotLife.Given() {
			says = append(says, "pot life "+t.PotLife.Show(c.units)+" at "+t.At.Show(c.units))
		}
		for _, k := range t.Kits {
			says = append(says, "kit of "+k.Base.Show(c.units)+" and "+k.Hardener.Show(c.units))
		}
		for _, s := range t.Store {
			says = append(says, join(", ", fmt.Sprintf("in store %d × %s", max(1, s.Count), s.Size.Show(c.units)), named(s.Colour, c.colour), pick(s.Batch != "", "batch "+s.Batch, "")))
		}
		row("Tin of "+name, join("; ", says...))
	}
}

// records tells what was seen of earlier films.
func (c *composer) records() {
	var rows [][]string
	for _, r := range c.job.Boat.Records {
		name := r.Coating
		if k, err := c.job.Book.Coating(r.Coating); err == nil {
			name = k.Name
		}
		laid := suffix(shown(r.Litres, c.units), " in "+plural(r.Coats, "coat", "coats"))
		if r.Film.Low.Given() {
			laid = quantity.ShowRange(r.Film, c.units)
		}
		for _, l := range r.Looks {
			saw := ""
			switch l.Signal {
			case quantity.Yes:
				saw = "signal shows"
			case quantity.No:
				saw = "no signal"
			case quantity.NotSaid:
			}
			if l.Film.Given() {
				saw = join(", ", saw, l.Film.Show(c.units)+" left by "+plural(max(1, l.Readings), "reading", "readings"))
			}
			rows = append(rows, []string{name, r.Launched.String(), laid, l.On.String(), c.zone(l.Zone), saw})
		}
	}
	if len(rows) > 0 {
		c.say("Her own record of earlier films:")
		c.table([]string{"Film", "Launched", "Laid", "Looked at", "Where", "Seen or measured"}, once(rows, 3))
	}
}

func filmOf(l compat.Layer, s quantity.System) string {
	if !l.Film.Low.Given() {
		return "not measured"
	}
	return quantity.ShowRange(l.Film, s)
}

func state(l compat.Layer) string {
	if l.State == "" {
		return string(tables.NotReported)
	}
	return string(l.State)
}

func (c *composer) assumed() {
	if len(c.job.Ranking.Assumed) == 0 {
		return
	}
	c.say("Not reported, and what was taken instead:")
	var items []string
	for _, a := range c.job.Ranking.Assumed {
		items = append(items, a.Key+": "+a.Taken+".")
	}
	c.list(items)
}

// shown writes a given amount, and nothing for one that is not.
func shown[D quantity.Dim](a quantity.Amount[D], s quantity.System) string {
	if !a.Given() {
		return ""
	}
	return a.Show(s)
}

func suffix(s, tail string) string {
	if s == "" {
		return ""
	}
	return s + tail
}

func or(s, otherwise string) string {
	if s == "" {
		return otherwise
	}
	return s
}

func named(key string, name func(string) string) string {
	if key == "" {
		return ""
	}
	return name(key)
}

func join(sep string, parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, sep)
}

func relaunched(y quantity.YesNo) string {
	switch y {
	case quantity.Yes:
		return ", and relaunched unpainted"
	case quantity.No:
		return ", and painted before each launch"
	default:
		return ""
	}
}

func launch(d quantity.Date, open quantity.YesNo) string {
	switch {
	case open.True() && d.Given():
		return d.String() + ", may slip"
	case open.True():
		return "open"
	case d.Given():
		return d.String()
	}
	return ""
}
