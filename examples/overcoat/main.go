// Command overcoat answers one question on one screen: may X go over Y on Z?
//
//	overcoat -new hard-cuprous -over "epoxy-barrier 300 um, ablative-old" -on grp [-zone hull] [-state sound] [-age "20 h"]
//	         [-laminate wet] [-cautions] [-tables folder] [-units metric|us]
//
// Layers stand bottom to top, with commas between them; a film may follow each. Without -over the surface is bare. The state and the age
// are those of the top layer. It exits 0 with an answer, 3 for bad input.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

const (
	exitDone     = 0
	exitBadInput = 3
)

// question is what was asked, as it was written.
type question struct {
	next, over, on, zone, state, age, laminate, tables string
	units                                              quantity.System
	cautions                                           bool // in full
}

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main without the process around it.
func run(args []string, stdout, stderr io.Writer) int {
	q, err := parse(args, stderr)
	if errors.Is(err, flag.ErrHelp) {
		return exitDone
	}
	if err != nil {
		return exitBadInput // the flag package has said why
	}
	text, err := reply(q)
	if err == nil {
		_, err = io.WriteString(stdout, text)
	}
	if err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	return exitDone
}

func parse(args []string, stderr io.Writer) (question, error) {
	q := question{units: quantity.Metric}
	set := flag.NewFlagSet("overcoat", flag.ContinueOnError)
	set.SetOutput(stderr)
	set.StringVar(&q.next, "new", "", "`key` of the coating that is to go on")
	set.StringVar(&q.over, "over", tables.BareSurface, "`layers` that lie there, bottom to top: \"epoxy-barrier 300 um, ablative-old\"")
	set.StringVar(&q.on, "on", "", "`key` of the material")
	set.StringVar(&q.zone, "zone", "hull", "`key` of the zone")
	set.StringVar(&q.state, "state", string(tables.Sound), "`state` of the top layer")
	set.StringVar(&q.age, "age", "", "`time` since the top layer's last coat, \"20 h\"; not given: old, past every window")
	set.StringVar(&q.laminate, "laminate", "", "dry or wet, where it was measured")
	set.StringVar(&q.tables, "tables", "", "`folder` with own tables, which outrank the embedded ones")
	set.BoolVar(&q.cautions, "cautions", false, "tell every caution in full")
	set.Func("units", "metric or us, printed first (default metric)", func(s string) (err error) {
		q.units, err = quantity.ParseSystem(s)
		return err
	})
	if err := set.Parse(args); err != nil {
		return q, err
	}
	if set.NArg() > 0 {
		err := fmt.Errorf("read %q, taken: flags only; layers go after -over, in quotes", set.Arg(0))
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return q, err
	}
	return q, nil
}

// reply looks the question up and words the answer.
func reply(q question) (string, error) {
	book := tables.Default()
	if q.tables != "" {
		var err error
		if book, err = book.With(os.DirFS(q.tables)); err != nil {
			return "", err
		}
	}
	next, part, err := q.read(book)
	if err != nil {
		return "", err
	}
	return answer(book, part, next, q.units, q.cautions), nil
}

// read turns the question into a coating and a part; the error holds every fault, keyed by flag.
func (q question) read(b *tables.Book) (tables.Coating, compat.Part, error) {
	var fs finding.Faults
	bad := func(kind error, flag, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: "-" + flag, Got: got, Want: want})
	}
	next, err := b.Coating(q.next)
	switch {
	case q.next == "":
		bad(finding.ErrMissing, "new", "", "the key of a coating: hard-cuprous")
	case err != nil:
		bad(finding.ErrUnknown, "new", q.next, near(q.next, b.Coatings(), func(c tables.Coating) string { return c.Key }))
	case next.Role == tables.OldFilm:
		bad(finding.ErrValue, "new", q.next, "a coating that is put on, not an old film")
	}
	p := compat.Part{Name: "the surface", Zone: q.zone, Material: q.on, Laminate: q.laminate}
	if q.on == "" {
		bad(finding.ErrMissing, "on", "", "the key of a material: grp")
	} else if _, err := b.Material(q.on); err != nil {
		bad(finding.ErrUnknown, "on", q.on, near(q.on, b.Materials(), func(m tables.Material) string { return m.Key }))
	}
	if _, err := b.Zone(q.zone); err != nil {
		bad(finding.ErrUnknown, "zone", q.zone, near(q.zone, b.Zones(), func(z tables.Zone) string { return z.Key }))
	}
	if _, err := b.Condition(tables.Condition(q.state)); err != nil {
		bad(finding.ErrUnknown, "state", q.state, near(q.state, b.Conditions(), func(c tables.ConditionRow) string { return c.Key }))
	}
	if q.laminate != "" && q.laminate != "dry" && q.laminate != "wet" {
		bad(finding.ErrValue, "laminate", q.laminate, "dry or wet")
	}
	for text := range strings.SplitSeq(q.over, ",") {
		key, film, _ := strings.Cut(strings.TrimSpace(text), " ")
		l := compat.Layer{State: tables.Sound, For: compat.Found}
		if l.Coating, err = b.Coating(key); err != nil {
			bad(finding.ErrUnknown, "over", key, near(key, b.Coatings(), func(c tables.Coating) string { return c.Key }))
		}
		if film != "" {
			f, err := quantity.Parse[quantity.Film](strings.TrimSpace(film))
			if err != nil {
				bad(finding.ErrValue, "over", film, "a film, 300 um")
			}
			l.Film = quantity.Exactly(f)
		}
		p.Found = append(p.Found, l)
	}
	top := &p.Found[len(p.Found)-1]
	top.State = tables.Condition(q.state)
	if q.age != "" {
		if top.Age, err = quantity.Parse[quantity.Duration](q.age); err != nil {
			bad(finding.ErrValue, "age", q.age, "a time, 20 h")
		}
	}
	return next, p, fs.Err()
}

// near names the keys near the one read.
func near[T any](got string, rows func(func(T) bool), key func(T) string) string {
	var known []string
	for r := range rows {
		known = append(known, key(r))
	}
	return finding.Suggest(got, known)
}
