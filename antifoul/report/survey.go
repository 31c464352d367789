package report

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
)

// Survey writes the found half of a report alone: how she was seen, her condition, the old film, gauge, comb and litres, metals, cautions
// and limits. The job is one of antifoul.Look, or of antifoul.Plan, of which nothing planned is told. The error is the writer's own, or
// says that the job is empty or that the format is not one of text.
func Survey(w io.Writer, j *antifoul.Job, o Options) error {
	c, err := compose(j, &o)
	if err != nil {
		return err
	}
	if o.Format.data() {
		return fmt.Errorf("report: read %q, taken for a condition note: %s, %s, %s", o.Format, Text, Markdown, HTML)
	}
	c.alone = true
	c.foundHalf()
	return c.render(w, o)
}

// foundHalf composes the report of a look.
func (c *composer) foundHalf() {
	c.head(1, "Condition of the bottom of "+or(c.job.Boat.Name, "a boat without a name"))
	c.say("Report of %s. Made from reference tables %s. Nothing is planned here: what is told is what was found, and what it asks for.", c.job.Boat.On, c.job.Book.Fingerprint())
	c.survey()
	c.head(2, "The old film as reported")
	c.found()
	c.films()
	c.putOn()
	c.metals()
	c.cautions()
	c.basis()
	c.limits()
}

// survey tells the condition as found, and what it asks for.
func (c *composer) survey() {
	if c.job.Survey == nil {
		return
	}
	a := *c.job.Survey
	c.head(2, "Condition as found")
	c.say("%s", c.summary(a))
	c.howSeen()
	c.conditions()
	c.moistures(a.Moisture)
	c.dryFilms()
	c.differences(a)
	c.advice(a)
}

// summary counts what the condition asks for.
func (c *composer) summary(a survey.Answer) string {
	var out []string
	for u := tables.BeforeLaunch; u > tables.NoWork; u-- {
		if n := len(a.At(u)); n > 0 {
			out = append(out, fmt.Sprintf("%s %d", urgencyHeads[u], n))
		}
	}
	text := "What it asks for, each told below: " + strings.ToLower(strings.Join(out, ", ")) + "."
	if len(out) == 0 {
		text = "Nothing that was noted asks for work."
	}
	if n := len(a.Differs); n > 0 {
		text += " " + plural(n, "thing does", "things do") + " not agree with what is reported."
	}
	if n := len(a.Open); n > 0 {
		text += " " + plural(n, "thing is", "things are") + " still to be graded."
	}
	return text
}

var urgencyHeads = map[tables.Urgency]string{
	tables.BeforeLaunch: "Before launch", tables.ThisHaulOut: "This haul-out", tables.Monitor: "To be watched", tables.NoWork: "Seen, and asking for nothing",
}

// howSeen tells who looked, when, and at how much of her.
func (c *composer) howSeen() {
	h := c.job.Boat.Survey.How
	rows := [][2]string{
		{"Seen by", or(h.By, notNoted)},
		{"On", or(dayOf(h), notNoted)},
		{"Ashore since", or(ashore(h), notNoted)},
		{"Since the wash", or(shown(h.Wash, c.units), notNoted)},
		{"Share of the bottom visible", or(shown(h.Visible, c.units), notNoted)},
		{"Hidden by", or(strings.Join(h.Hidden, "; "), notNoted)},
	}
	for _, r := range [][2]string{{"Light", h.Light}, {"Weather", h.Weather}} {
		if r[1] != "" {
			rows = append(rows, r)
		}
	}
	c.blocks = append(c.blocks, pairs{rows})
}

const notNoted = "not noted"

func dayOf(h survey.How) string {
	if !h.On.Given() {
		return ""
	}
	return h.On.String()
}

func ashore(h survey.How) string {
	if !h.Ashore.Given() {
		return ""
	}
	if n, ok := h.DaysAshore(); ok {
		return fmt.Sprintf("%s, %s before she was seen", h.Ashore, plural(n, "day", "days"))
	}
	return h.Ashore.String()
}

// conditions is the table of what each place and each fitting showed, with what its grades mean.
func (c *composer) conditions() {
	s := c.job.Boat.Survey
	var rows, fittings [][]string
	var notes []string
	note := func(about, text string) {
		if text != "" {
			notes = append(notes, sentence(about)+": "+text)
		}
	}
	for _, p := range s.Seen {
		about := c.placeName(p)
		film := "not noted"
		if k, err := c.job.Book.Coating(p.Coating); err == nil {
			film = k.Name
		}
		state := or(string(p.State), "not noted")
		if p.State != "" {
			state += known(p.Known)
		}
		rows = append(rows, []string{sentence(about), film, or(strings.Join(each(p.Colours, c.colour), ", "), "–"), state, c.seenMarks(p.Marks), or(p.Photo, "–")})
		note(about, p.Note)
		c.markNotes(about, p.Marks, note)
	}
	for _, f := range s.Fittings {
		on := "–"
		for _, p := range c.job.Boat.Parts {
			if m, err := c.job.Book.Material(p.Material); err == nil && p.Name == f.Part {
				on = m.Name
			}
		}
		fittings = append(fittings, []string{sentence(f.Name), on, c.seenMarks(f.Marks), or(f.Photo, "–")})
		note(f.Name, f.Note)
		c.markNotes(f.Name, f.Marks, note)
	}
	if len(rows) > 0 {
		c.say("Place by place. Colours are told from the top; a share is of the place. What is not marked otherwise was seen; “measured” is by an instrument or a cut, “reported” is what somebody said and nobody looked at, “assumed” is what was taken to be so.")
		c.table([]string{"Place", "Film seen", "Colours", "State", "What was noted", "Photo"}, rows)
	}
	if len(fittings) > 0 {
		c.say("Fittings:")
		c.table([]string{"Fitting", "Made of", "What was noted", "Photo"}, fittings)
	}
	if len(notes) > 0 {
		c.say("Notes to them:")
		c.list(notes)
	}
	c.grades()
}

func (c *composer) placeName(p survey.Place) string {
	zone := ""
	if z, err := c.job.Book.Zone(p.Zone); err == nil && z.Name != p.Part {
		zone = z.Name
	}
	return join(", ", p.Part, zone, p.Where)
}

func (c *composer) markNotes(about string, marks []survey.Mark, note func(about, text string)) {
	for _, m := range marks {
		note(about+", "+m.What, m.Note)
	}
}

// known is how something is known, in brackets; nothing for what was seen.
func known(word string) string {
	if word == "" || word == survey.Seen {
		return ""
	}
	return " (" + word + ")"
}

// seenMarks are the things seen at one place, each with its grade, share, size and photo.
func (c *composer) seenMarks(marks []survey.Mark) string {
	var out []string
	for _, m := range marks {
		var grades []string
		for _, key := range m.Grades {
			if g, err := c.job.Book.Grade(key); err == nil {
				grades = append(grades, g.Label())
			}
		}
		text := join(" ", m.What, strings.Join(grades, ", "))
		text = join(", ", text, shown(m.Share, c.units), shown(m.Size, c.units))
		text += known(m.Known)
		out = append(out, join(", ", text, before("photo ", m.Photo)))
	}
	return or(strings.Join(out, "; "), "nothing noted")
}

// before puts a word before a text, if there is one.
func before(head, s string) string {
	if s == "" {
		return ""
	}
	return head + s
}

// grades says what each grade of the table means, and by which scale.
func (c *composer) grades() {
	var keys []string
	add := func(marks []survey.Mark) {
		for _, m := range marks {
			for _, k := range m.Grades {
				if !slices.Contains(keys, k) {
					keys = append(keys, k)
				}
			}
		}
	}
	for _, p := range c.job.Boat.Survey.Seen {
		add(p.Marks)
	}
	for _, f := range c.job.Boat.Survey.Fittings {
		add(f.Marks)
	}
	var items []string
	for g := range c.job.Book.Grades() { // in the order of the scales
		if slices.Contains(keys, g.Key) {
			items = append(items, fmt.Sprintf("%s, %s: %s%s", sentence(g.Scale), g.Grade, g.Says, c.cellBasis(g.Row)))
		}
	}
	if len(items) > 0 {
		c.say("What the grades mean, in our words:")
		c.list(items)
	}
}

// moistures tells what the moisture meters read, and what such meters cannot say.
func (c *composer) moistures(metered []survey.Metered) {
	if len(metered) == 0 {
		return
	}
	c.head(3, "Moisture")
	var rows [][]string
	var items, cannot []string
	add := func(list *[]string, text string) {
		if !slices.Contains(*list, text) {
			*list = append(*list, text)
		}
	}
	for _, m := range metered {
		dry := "not read"
		if m.HasDry {
			dry = tables.Show(m.Dry, c.units)
		}
		spots := "–"
		if m.Spots > 0 {
			spots = strconv.Itoa(m.Spots)
		}
		rows = append(rows, []string{sentence(m.About), m.Meter, m.Scale, spots, survey.Needle(m.Reading).String(), dry, or(m.Photo, "–")})
		for _, f := range m.Findings {
			add(&items, c.finding(f))
		}
		if x, err := c.job.Book.Instrument(m.Instrument); err == nil {
			add(&cannot, x.Cannot)
		}
	}
	c.table([]string{"Place", "Meter", "Scale", "Spots", "Reading", "On a dry place", "Photo"}, rows)
	c.list(items)
	c.say("What such readings cannot say: %s", strings.Join(cannot, " "))
}

// dryFilms sums up what is known of the dry film, part by part: read, or why not.
func (c *composer) dryFilms() {
	var rows [][]string
	var order, told []string
	parts := map[string][]string{} // not read, by what is said of them
	for _, p := range c.job.Boat.Parts {
		if m, err := c.job.Book.Material(p.Material); err != nil || m.Painted == tables.Never {
			continue
		}
		read := false
		for _, g := range c.job.PutOn.Gauged {
			if g.Part != p.Name {
				continue
			}
			read = true
			name := g.Instrument
			if x, err := c.job.Book.Instrument(g.Instrument); err == nil {
				name = x.Name
			}
			v := g.Result.Whole
			rows = append(rows, []string{
				sentence(p.Name), name, strconv.Itoa(v.Count), v.Mean.Show(c.units), v.Lowest.Show(c.units), v.Highest.Show(c.units),
				fmt.Sprintf("%s below %s", v.Share().Show(c.units), g.Nominal.Show(c.units)),
			})
		}
		bare := len(p.Found) > 0 && p.Found[0].Coating.Key == tables.BareSurface
		if z, err := c.job.Book.Zone(p.Zone); read || bare || err == nil && z.Key == "fitting" {
			continue
		}
		if len(p.Found) > 0 && !slices.ContainsFunc(p.Found, func(l compat.Layer) bool { return !l.Film.Low.Given() }) {
			told = append(told, p.Name)
			continue
		}
		said := c.readable(p.Material)
		if len(parts[said]) == 0 {
			order = append(order, said)
		}
		parts[said] = append(parts[said], p.Name)
	}
	if len(rows)+len(order)+len(told) == 0 {
		return
	}
	c.head(3, "Dry film")
	if len(rows) > 0 {
		c.table([]string{"Part", "Gauge", "Readings", "Mean", "Thinnest", "Thickest", "Share below"}, rows)
		c.say("Zone by zone, with the standard and its verdict, under “Was it put on”.")
	}
	var items []string
	if len(told) > 0 {
		items = append(items, "Told with the old film, without a sheet of readings: "+and(told)+".")
	}
	for _, said := range order {
		items = append(items, "Not read on "+and(parts[said])+": "+said)
	}
	c.list(items)
}
