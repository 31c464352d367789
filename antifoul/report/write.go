package report

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/quantity"
)

// Format is how a report is written.
type Format string

// The formats.
const (
	Text     Format = "text"
	Markdown Format = "markdown"
	HTML     Format = "html"      // one page with drawings, for a screen, a printer or a word processor
	Calendar Format = "icalendar" // the plan of days alone, for a calendar program (RFC 5545)

	JSON        Format = "json"         // the whole job for programs, whatever Short says; see JobSchema
	LayersCSV   Format = "csv-layers"   // the layers of each part, zone by zone, for a spreadsheet
	ShoppingCSV Format = "csv-shopping" // what to buy, for a spreadsheet
)

// Formats lists the formats.
func Formats() []Format {
	return []Format{Text, Markdown, HTML, Calendar, JSON, LayersCSV, ShoppingCSV}
}

// ParseFormat reads a format's word. The error names the words taken.
func ParseFormat(s string) (Format, error) {
	if slices.Contains(Formats(), Format(s)) {
		return Format(s), nil
	}
	var words []string
	for _, f := range Formats() {
		words = append(words, string(f))
	}
	return "", fmt.Errorf("read %q, taken: %s", s, strings.Join(words, ", "))
}

// Options says how a report is to be written. The zero Format is Text, the zero Units Metric.
type Options struct {
	Format Format
	Units  quantity.System // the reader's system, printed first
	Short  bool            // one page: what, how much, when, what to watch for
}

// Write writes the report of a job that antifoul.Plan made. The whole report is made before the first byte is written; an error is
// the writer's own, or says that the format is unknown, the job is empty, or a calendar is asked for and no days were planned.
func Write(w io.Writer, j *antifoul.Job, o Options) error {
	c, err := compose(j, &o)
	switch {
	case err != nil:
		return err
	case o.Format.data():
		return c.writeData(w, o.Format)
	case o.Short:
		c.short()
	default:
		c.full()
	}
	return c.render(w, o)
}

// Morning writes whether the next coat of the plan may be begun at the moment, by the clock that the moment carries: go, measure, wait or not today, why, and
// the next good hour. The error is the writer's own, says that no days were planned, that the job is empty, or that the format is not one of text.
func Morning(w io.Writer, j *antifoul.Job, at time.Time, o Options) error {
	c, err := compose(j, &o)
	if err != nil {
		return err
	}
	if o.Format.data() {
		return fmt.Errorf("report: read %q, taken for one morning: %s, %s, %s", o.Format, Text, Markdown, HTML)
	}
	if err := c.oneMorning(at); err != nil {
		return err
	}
	return c.render(w, o)
}

// compose begins a report, with what the options leave open.
func compose(j *antifoul.Job, o *Options) (*composer, error) {
	if o.Format == "" {
		o.Format = Text
	}
	if o.Units == 0 {
		o.Units = quantity.Metric
	}
	if _, err := ParseFormat(string(o.Format)); err != nil {
		return nil, err
	}
	if j == nil || j.Book == nil {
		return nil, errors.New("report: no job: antifoul.Plan makes one")
	}
	return &composer{job: j, units: o.Units}, nil
}

// render writes the blocks.
func (c *composer) render(w io.Writer, o Options) error {
	render := renderText
	if o.Format == HTML {
		return c.renderHTML(w, o)
	}
	if o.Format == Markdown {
		render = renderMarkdown
	}
	_, err := io.WriteString(w, render(c.blocks))
	return err
}

// full composes the long report.
func (c *composer) full() {
	c.title()
	c.answer()
	c.boat()
	c.survey()
	c.films()
	c.putOn()
	c.choice()
	c.layers()
	c.areas()
	c.buy()
	c.costs()
	c.order()
	c.days()
	c.wear()
	c.season()
	c.growth()
	c.metals()
	c.law()
	c.cautions()
	c.leach()
	c.basis()
	c.limits()
}
