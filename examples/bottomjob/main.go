// Command bottomjob reads a boat file and prints what to put on her bottom, why, how much, in what order and how long it lasts.
//
//	bottomjob [-boat boat.toml] [-tables folder] [-zone Europe/Copenhagen] [-units metric|us] [-short|-long]
//	          [-format text|markdown|html|icalendar|json|csv-layers|csv-shopping] [-morning "2027-04-16 08:00"] [-out file]
//	bottomjob -boat boat.toml -log job-log.toml [-now "2027-04-17 09:00"] [-passport next.toml] [-zone …] [-tables …] [-format …] [-units …] [-out file]
//
// With -log it prints the job as it was done, held against the plan, and with -passport it writes the boat file for the next haul-out.
//
// The report is short where the job is the same again on sound paint, else long; -short and -long ask for the one or the other.
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
	long              bool           // the long report, whatever the job
	zone              *time.Location // nil: times are taken as they stand
	morning           string         // answer for this moment alone; empty: the whole report
	log, passport     string         // a job log to be held against the plan; the next boat file to be written from it
	now               string         // the moment about which the log is asked
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
	if f.log != "" {
		err = remembered(&text, job, f)
	} else {
		err = write(&text, job, f)
	}
	if err == nil {
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
	set.BoolVar(&f.options.Short, "short", false, "one page: what, how much, when, what to watch for; taken where the job is the same again on sound paint")
	set.BoolVar(&f.long, "long", false, "the whole report, whatever the job")
	set.StringVar(&f.morning, "morning", "", "a `moment`, \"2027-04-16 08:00\": whether the next coat may be begun then, and nothing else")
	set.StringVar(&f.log, "log", "", "job log `file`: what was really done, held against the plan, in the place of the report")
	set.StringVar(&f.now, "now", "", "with -log, a `moment`, \"2027-04-17 09:00\": what is due or must be abraded then")
	set.StringVar(&f.passport, "passport", "", "with -log and -boat, a `file`: the boat file for the next haul-out, whole or not at all")
	set.Func("zone", "time `zone` of the place where she stands, Europe/Copenhagen; without it hours are taken as they stand", func(s string) (err error) {
		f.zone, err = time.LoadLocation(s)
		return err
	})
	set.Func("format", "text, markdown, html for one page with drawings, icalendar for the plan of days, json for all of it, csv-layers or csv-shopping (default text)", func(s string) (err error) {
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
	for _, wrong := range []struct {
		is   bool
		says string
	}{
		{f.log == "" && (f.now != "" || f.passport != ""), "-now and -passport ask about a job log: -log job-log.toml"},
		{f.log != "" && (f.morning != "" || f.options.Short || f.long), "-log prints the log; -morning, -short and -long ask about the plan"},
		{f.options.Short && f.long, "-short and -long: take one of them"},
		{f.passport != "" && f.boat == "", "-passport carries a boat file on: -boat boat.toml"},
	} {
		if wrong.is {
			fmt.Fprintln(stderr, wrong.says) //nolint:errcheck // nowhere left to say it
			return f, errors.New(wrong.says)
		}
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
	files, name := boatFile(f)
	boat, err := antifoul.ReadBoatIn(book, files, name, f.zone)
	if err != nil {
		return nil, err
	}
	return antifoul.Plan(book, boat)
}

// boatFile is where the boat file lies.
func boatFile(f flags) (fs.FS, string) {
	if f.boat == "" {
		return demo, "demo.toml"
	}
	return os.DirFS(filepath.Dir(f.boat)), filepath.Base(f.boat)
}

// remembered writes the report of a job log, and the boat file for the next haul-out where one is asked for.
func remembered(w io.Writer, job *antifoul.Job, f flags) error {
	var now time.Time
	if f.now != "" {
		var err error
		if now, err = moment("-now", f.now, f.zone); err != nil {
			return err
		}
	}
	log, err := antifoul.ReadLog(job.Book, job.Boat, os.DirFS(filepath.Dir(f.log)), filepath.Base(f.log), f.zone)
	if err != nil {
		return err
	}
	logged, err := job.Logged(log, now)
	if err != nil {
		return err
	}
	if err := report.Log(w, job, logged, f.options); err != nil || f.passport == "" {
		return err
	}
	for _, kept := range []string{f.boat, f.log} { // these are never written over
		if sameFile(kept, f.passport) {
			return fmt.Errorf("-passport: read %q, which is read here; taken: a file of another name", f.passport)
		}
	}
	on := log.Hauled
	if f.now != "" {
		if on, err = quantity.NewDate(now.Year(), int(now.Month()), now.Day()); err != nil {
			return err
		}
	}
	files, name := boatFile(f)
	next, err := job.Passport(logged, files, name, on)
	if err != nil {
		return err
	}
	return carryOn(f, job.Book, next.Text)
}

// sameFile reports whether both names are of one file that is there.
func sameFile(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(x, y)
}

// carryOn puts the next boat file into place once it has been read and planned: a file that cannot be is not written. Sheets that it names lie beside the
// boat file that it was made from, and must lie beside it too.
func carryOn(f flags, book *tables.Book, text []byte) error {
	dir := filepath.Dir(f.passport)
	tmp, err := os.CreateTemp(dir, ".passport-*.toml")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name()) //nolint:errcheck // gone already when all went well
	_, err = tmp.Write(text)
	if err = errors.Join(err, tmp.Chmod(0o644), tmp.Close()); err != nil {
		return err
	}
	boat, err := antifoul.ReadBoatIn(book, os.DirFS(dir), filepath.Base(tmp.Name()), f.zone)
	if err == nil {
		_, err = antifoul.Plan(book, boat)
	}
	if err != nil {
		return fmt.Errorf("the boat file for the next haul-out cannot be read where it is to lie, and is not written:\n%w", err)
	}
	return os.Rename(tmp.Name(), f.passport)
}

// moment reads a moment by the clock of the zone.
func moment(name, s string, zone *time.Location) (time.Time, error) {
	if zone == nil {
		zone = time.UTC
	}
	at, err := time.ParseInLocation(momentForm, s, zone)
	if err != nil {
		return at, fmt.Errorf("%s: read %q, taken: a moment, \"2027-04-16 08:00\"", name, s)
	}
	return at, nil
}

// write writes the report, or the answer of one morning.
func write(w io.Writer, job *antifoul.Job, f flags) error {
	if f.morning == "" {
		f.options.Short = f.options.Short || !f.long && report.SameAgain(job)
		return report.Write(w, job, f.options)
	}
	at, err := moment("-morning", f.morning, f.zone)
	if err != nil {
		return err
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
