// Command surveynote turns a surveyor's condition note, and the gauge sheet that it names, into the found half of a report: what was seen,
// what it asks for and when, and what was not looked at. Nothing is planned.
//
//	surveynote [-note note.toml] [-tables folder] [-format text|markdown|html] [-units metric|us] [-out file]
//
// Without -note it runs on an invented note. It exits 0 when the report is written, 3 for bad input, of which every fault is listed.
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
	"strings"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

//go:embed note.toml keel-gauge.csv
var demo embed.FS

const (
	exitDone     = 0
	exitBadInput = 3
)

type flags struct {
	note, tables, out string
	options           report.Options
}

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
	var text bytes.Buffer
	if err = write(&text, f); err == nil {
		err = put(f.out, text.Bytes(), stdout)
	}
	if err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	return exitDone
}

func parse(args []string, stderr io.Writer) (flags, error) {
	var f flags
	set := flag.NewFlagSet("surveynote", flag.ContinueOnError)
	set.SetOutput(stderr)
	set.StringVar(&f.note, "note", "", "condition note, a TOML `file`; without it an invented note is used")
	set.StringVar(&f.tables, "tables", "", "`folder` with own tables, which outrank the embedded ones")
	set.StringVar(&f.out, "out", "", "`file` to write, whole or not at all; without it the report is printed")
	set.Func("format", formats()+" (default text)", func(s string) (err error) {
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
		err := fmt.Errorf("read %q, taken: flags only; a note goes after -note", set.Arg(0))
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return f, err
	}
	return f, nil
}

// formats are those of a report, but for the plan of days: nothing is planned here.
func formats() string {
	var out []string
	for _, f := range report.Formats() {
		if f != report.Calendar {
			out = append(out, string(f))
		}
	}
	return strings.Join(out, ", ")
}

// write reads the note, looks at it and writes what was found.
func write(w io.Writer, f flags) error {
	book := tables.Default()
	if f.tables != "" {
		var err error
		if book, err = book.With(os.DirFS(f.tables)); err != nil {
			return err
		}
	}
	var files fs.FS = demo
	name := "note.toml"
	if f.note != "" {
		files, name = os.DirFS(filepath.Dir(f.note)), filepath.Base(f.note)
	}
	boat, err := antifoul.ReadNote(book, files, name)
	if err != nil {
		return err
	}
	job, err := antifoul.Look(book, boat)
	if err != nil {
		return err
	}
	return report.Survey(w, job, f.options)
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
