// Command bottomjob reads a boat file and prints what to put on her bottom, why, how much, in what order and how long it lasts.
//
//	bottomjob [-boat boat.toml] [-tables folder] [-zone Europe/Copenhagen] [-units metric|us] [-short]
//	          [-format text|markdown|icalendar|json|csv-layers|csv-shopping] [-morning "2027-04-16 08:00"] [-out file]
//
// Without -boat it runs on an invented demonstration boat. It exits 0 when the report is written, 3 for bad input, 4 when the
// report is written but on some part nothing may be used.
package main

import (
	"bytes"
	"embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"
	_ "time/tzdata" // the zones of -zone, where the system has none

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

//go:embed demo.toml demo-weather.csv
var demo embed.FS

const (
	exitDone     = 0
	exitBadInput = 3
	exitNothing  = 4
)

type flags struct {
	boat, tables, out string
	options           report.Options
	zone              *time.Location // nil: times are taken as they stand
	morning           string         // answer for this moment alone; empty: the whole report
}

// momentForm is how -morning is written.
const momentForm = "2006-01-02 15:04"

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main without the process around it.
func run(args []string, stdout, stderr io.Writer) int {
	f, err := parse(args, stderr)
	if errors.Is(err, flag.ErrHelp) {
		return exitDone
	}
	if err != nil {
		return exitBadInput // the flag package has said why
	}
	job, err := plan(f)
	if err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	var text bytes.Buffer
	if err = write(&text, job, f); err == nil {
		err = put(f.out, text.Bytes(), stdout)
	}
	if err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	if len(job.Without()) > 0 {
		return exitNothing
	}
	return exitDone
}

func parse(args []string, stderr io.Writer) (flags, error) {
	f := flags{options: report.Options{Format: report.Text, Units: quantity.Metric}}
	set := flag.NewFlagSet("bottomjob", flag.ContinueOnError)
	set.SetOutput(stderr)
	set.StringVar(&f.boat, "boat", "", "boat `file`; without it an invented boat is used")
	set.StringVar(&f.tables, "tables", "", "`folder` with own tables, which outrank the embedded ones")
	set.StringVar(&f.out, "out", "", "`file` to write, whole or not at all; without it the report is printed")
	set.BoolVar(&f.options.Short, "short", false, "one page: what, how much, when, what to watch for")
	set.StringVar(&f.morning, "morning", "", "a `moment`, \"2027-04-16 08:00\": whether the next coat may be begun then, and nothing else")
	set.Func("zone", "time `zone` of the place where she stands, Europe/Copenhagen; without it hours are taken as they stand", func(s string) (err error) {
		f.zone, err = time.LoadLocation(s)
		return err
	})
	set.Func("format", "text, markdown, icalendar for the plan of days, json for all of it, csv-layers or csv-shopping (default text)", func(s string) (err error) {
		f.options.Format, err = report.ParseFormat(s)
		return err
	})
	set.Func("units", "metric or us, printed first (default metric)", func(s string) (err error) {
		f.options.Units, err = quantity.ParseSystem(s)
		return err
	})
	if err := set.Parse(args); err != nil {
		return f, err
	}
	if set.NArg() > 0 {
		err := fmt.Errorf("read %q, taken: flags only; a boat file goes after -boat", set.Arg(0))
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return f, err
	}
	return f, nil
}

// plan reads the tables and the boat and works the job out.
func plan(f flags) (*antifoul.Job, error) {
	book := tables.Default()
	if f.tables != "" {
		var err error
		if book, err = book.With(os.DirFS(f.tables)); err != nil {
			return nil, err
		}
	}
	var files fs.FS = demo
	name := "demo.toml"
	if f.boat != "" {
		files, name = os.DirFS(filepath.Dir(f.boat)), filepath.Base(f.boat)
	}
	boat, err := antifoul.ReadBoatIn(book, files, name, f.zone)
	if err != nil {
		return nil, err
	}
	return antifoul.Plan(book, boat)
}

// write writes the report, or the answer of one morning.
func write(w io.Writer, job *antifoul.Job, f flags) error {
	if f.morning == "" {
		return report.Write(w, job, f.options)
	}
	zone := f.zone
	if zone == nil {
		zone = time.UTC
	}
	at, err := time.ParseInLocation(momentForm, f.morning, zone)
	if err != nil {
		return fmt.Errorf("-morning: read %q, taken: a moment, \"2027-04-16 08:00\"", f.morning)
	}
	return report.Morning(w, job, at, f.options)
}

// put writes the report to the file, whole or not at all, or to standard output when there is no file.
func put(name string, data []byte, stdout io.Writer) error {
	if name == "" {
		_, err := stdout.Write(data)
		return err
	}
	tmp, err := os.CreateTemp(filepath.Dir(name), ".report-*")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name()) //nolint:errcheck // gone already when all went well
	_, err = tmp.Write(data)
	if err = errors.Join(err, tmp.Chmod(0o644), tmp.Close()); err != nil {
		return err
	}
	return os.Rename(tmp.Name(), name)
}
