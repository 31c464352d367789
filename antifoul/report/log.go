package report

import (
	"fmt"
	"io"
	"iter"
	"slices"
	"strconv"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Log writes a job log that antifoul.Job.Logged held against the plan: what is due, the layers done and missing, every coat as it was noted with
// what it tells, other work, looks. Everything that stands in the log stands in the report. The error is the writer's own, says that the job is empty, or that
// the format is not one of text.
func Log(w io.Writer, j *antifoul.Job, l antifoul.Logged, o Options) error {
	c, err := compose(j, &o)
	if err != nil {
		return err
	}
	if o.Format == Calendar {
		return fmt.Errorf("report: read %q, taken for a job log: %s, %s", o.Format, Text, Markdown)
	}
	c.log(l)
	return c.render(w, o)
}

func (c *composer) log(l antifoul.Logged) {
	name := or(c.job.Boat.Name, "a boat without a name")
	c.head(1, "Job log of "+name)
	c.say("What was done, as it was noted%s, held against the plan of %s by reference tables %s. Nobody has looked at the boat for this page. The tin's own data sheet and label decide where they say otherwise.",
		pick(l.Log.Name != "", " in "+l.Log.Name, ""), c.job.Boat.On, c.job.Book.Fingerprint())
	c.list(c.findings(l.Findings, finding.Fine))
	c.head(2, "What is next")
	if !l.Now.IsZero() {
		c.say("As of %s:", calendar.Moment(l.Now))
	}
	var items []string
	for _, f := range l.Due {
		text := c.finding(f)
		if f.Against != "" {
			text = sentence(f.Against) + ": " + text
		}
		items = append(items, text)
	}
	c.list(items)
	if len(items) == 0 {
		c.say("Nothing is planned, so nothing is due.")
	}
	c.logCautions(l)
	c.logLayers(l)
	c.logCoats(l)
	c.logTasks(l)
	c.logSurveys(l)
	c.logLooks(l)
	c.basis()
}

// logCautions tells in full what the work that is due can do to whoever does it.
func (c *composer) logCautions(l antifoul.Logged) {
	var items []string
	add := func(keys iter.Seq[string]) {
		for key := range keys {
			k, err := c.job.Book.Caution(key)
			if err != nil {
				continue
			}
			if text := sentence(k.Name) + ": " + strings.TrimSpace(k.Says); !slices.Contains(items, text) {
				items = append(items, text)
			}
		}
	}
	for _, f := range l.Due {
		for _, step := range f.First {
			if row, err := c.job.Book.Step(step.Do); err == nil {
				add(row.Cautions())
			}
			for _, k := range l.Coats { // what is abraded
				if k.Part == f.Against && step.Do == finding.Abrade {
					add(k.Paint.Hazards())
				}
			}
		}
	}
	if len(items) > 0 {
		c.say("Cautions for that; all those of the job stand in its report:")
		c.list(items)
	}
}

// logLayers is the plan and what lies there, layer by layer.
func (c *composer) logLayers(l antifoul.Logged) {
	c.head(2, "Layers, planned and laid")
	var rows [][]string
	var items []string
	for _, x := range l.Layers {
		planned := strconv.Itoa(x.Planned)
		if x.Planned == 0 {
			planned = "none"
		}
		rows = append(rows, []string{x.Part, string(x.Layer) + ": " + x.Coating.Name, c.colour(x.Colour), c.zones(x.Zones), planned, strconv.Itoa(x.Laid), c.wholeFilm(x.Film)})
		for _, f := range x.Findings {
			if f.Rule == antifoul.RuleLogSurvey || f.Verdict > finding.Fine && (x.Laid > 0 || f.Rule != antifoul.RuleLogLayerMissing) { // what is not begun the table says
				items = append(items, sentence(x.Part)+", "+string(x.Layer)+", "+x.Coating.Name+": "+c.finding(f))
			}
		}
	}
	c.table([]string{"Part", "Layer", "Colour", "Where", "Coats planned", "Coats laid", "Film of all its coats"}, rows)
	c.list(items)
}

// wholeFilm is a film to whole micrometres, the low end down and the high end up.
func (c *composer) wholeFilm(f quantity.Range[quantity.Film]) string {
	if !f.Low.Given() {
		return "–"
	}
	um := quantity.Micrometre
	return quantity.ShowRange(quantity.Range[quantity.Film]{Low: f.Low.To(um, 0, quantity.Down), Typical: f.Typical.To(um, 0, quantity.Nearest), High: f.High.To(um, 0, quantity.Up)}, c.units)
}

// logCoats tells every coat.
func (c *composer) logCoats(l antifoul.Logged) {
	if len(l.Coats) == 0 {
		return
	}
	c.head(2, "Coat by coat")
	for _, k := range l.Coats {
		c.head(3, fmt.Sprintf("%s: %s, %s coat %d, %s", sentence(k.Part), k.Paint.Name, k.Layer, k.Number, during(k.Span)))
		c.say("%s.", join(", ", sentence(or(named(k.Colour, c.colour), "colour not noted")), "on "+c.zones(k.On()), suffix(shown(k.Litres, c.units), " used"),
			pick(k.Thinner.Given(), "thinned by "+shown(k.Thinner, c.units), ""), pick(len(k.Batches) > 0, "batch "+and(k.Batches), "batch not noted"), pick(len(k.Who) > 0, "laid by "+and(k.Who), "nobody's name noted")))
		if text := c.logAir(k.Air); text != "" {
			c.say("%s.", sentence(text))
		}
		if len(k.Wet) > 0 {
			var teeth []string
			for _, t := range k.Wet {
				text := t.Wetted.Show(c.units)
				if t.Dry.Given() {
					text = t.Wetted.Show(c.units) + " wetted and " + t.Dry.Show(c.units) + " dry"
				}
				teeth = append(teeth, text)
			}
			c.say("Comb: %s.", strings.Join(teeth, "; "))
		}
		c.list(c.findings(k.Findings, finding.Fine))
	}
}

func during(s joblog.Span) string {
	if s.Ended.IsZero() {
		return calendar.Moment(s.Begun) + ", its end not noted"
	}
	end := s.Ended.Format("15:04")
	if s.Ended.Format(time.DateOnly) != s.Begun.Format(time.DateOnly) {
		end = calendar.Moment(s.Ended)
	}
	return calendar.Moment(s.Begun) + " to " + end
}

func (c *composer) logAir(a joblog.Air) string {
	return join(", ", prefix("air ", shown(a.Air, c.units)), prefix("surface ", shown(a.Surface, c.units)), prefix("humidity ", shown(a.Humidity, c.units)),
		prefix("dew point ", shown(a.DewPoint, c.units)), pick(a.Rain.Said(), pick(a.Rain.True(), "rain on the work", "no rain"), ""))
}

func prefix(head, s string) string {
	if s == "" {
		return ""
	}
	return head + s
}

func (c *composer) logTasks(l antifoul.Logged) {
	if len(l.Log.Tasks) == 0 {
		return
	}
	c.head(2, "Other work")
	var rows [][]string
	for _, t := range l.Log.Tasks {
		name := string(t.Do)
		if s, err := c.job.Book.Step(t.Do); err == nil {
			name = s.Name
		}
		if t.DownTo != "" {
			if k, err := c.job.Book.Coating(t.DownTo); err == nil {
				name += ", down to " + k.Name
			}
		}
		where := "all of it"
		if !t.All() {
			where = c.zones(t.Zones)
		}
		rows = append(rows, []string{t.Part, where, name, during(t.Span), or(and(t.Who), "–"), or(strings.Join(t.Deviations, "; "), "–")})
	}
	c.table([]string{"Part", "Where", "Done", "When", "By", "Deviation"}, rows)
}

func (c *composer) logSurveys(l antifoul.Logged) {
	var rows [][]string
	for _, s := range l.Log.Surveys {
		name := s.Coating
		if k, err := c.job.Book.Coating(s.Coating); err == nil {
			name = k.Name
		}
		rows = append(rows, []string{s.On.String(), s.Part, c.zone(s.Zone), string(s.Layer) + ": " + name, quantity.ShowRange(s.Film, c.units), plural(max(1, s.Readings), "reading", "readings"), or(s.By, "–"), or(and(s.Who), "–")})
	}
	if len(rows) > 0 {
		c.head(2, "Gauged before the launch")
		c.table([]string{"On", "Part", "Zone", "Layer", "Dry film", "Readings", "Gauge", "By"}, rows)
	}
}

// logLooks tells what was seen, and what it makes of the wear.
func (c *composer) logLooks(l antifoul.Logged) {
	if len(l.Log.Looks) == 0 {
		return
	}
	c.head(2, "Looked at afterwards")
	var rows [][]string
	for _, k := range l.Log.Looks {
		saw := pick(k.Signal.Said(), pick(k.Signal.True(), "signal shows", "no signal"), "")
		if k.Film.Given() {
			saw = join(", ", saw, k.Film.Show(c.units)+" left by "+plural(max(1, k.Readings), "reading", "readings"))
		}
		rows = append(rows, []string{k.On.String(), k.Part, c.zone(k.Zone), join(", ", saw, string(k.State)), or(and(k.Who), "–")})
	}
	c.table([]string{"On", "Part", "Zone", "Seen", "By"}, rows)
	var items []string
	for _, w := range l.Worn {
		for _, f := range w.Says {
			text := c.finding(f)
			if f.Rule == antifoul.RuleLogRecord {
				text = sentence(w.Part) + ": " + text
			}
			items = append(items, text)
		}
	}
	c.list(items)
	if slices.ContainsFunc(l.Log.Looks, func(k joblog.Look) bool { return k.State != "" && k.State != tables.Sound }) {
		c.say("A film that is not sound is judged when the next job is planned from the next boat file.")
	}
}
