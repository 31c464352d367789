package report

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/quantity"
)

// Format is how a report is written.
type Format string

// The formats.
const (
	Text     Format = "text"
	Markdown Format = "markdown"
)

// Formats lists the formats.
func Formats() []Format { return []Format{Text, Markdown} }

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
// the writer's own, or says that the format is unknown or the job is empty.
func Write(w io.Writer, j *antifoul.Job, o Options) error {
	if o.Format == "" {
		o.Format = Text
	}
	if o.Units == 0 {
		o.Units = quantity.Metric
	}
	if _, err := ParseFormat(string(o.Format)); err != nil {
		return err
	}
	if j == nil || j.Book == nil {
		return errors.New("report: no job: antifoul.Plan makes one")
	}
	c := &composer{job: j, units: o.Units}
	if o.Short {
		c.short()
	} else {
		c.full()
	}
	render := renderText
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
	c.films()
	c.putOn()
	c.choice()
	c.layers()
	c.areas()
	c.buy()
	c.order()
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
