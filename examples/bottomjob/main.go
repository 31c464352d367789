// Command bottomjob reads a boat file and prints what to put on her bottom, why, how much, in what order and how long it lasts.
//
//	bottomjob [-boat boat.toml] [-tables folder] [-format text|markdown] [-units metric|us] [-short] [-out file]
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

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

//go:embed demo.toml
var demo embed.FS

const (
	exitDone     = 0
	exitBadInput = 3
	exitNothing  = 4
)

type flags struct {
	boat, tables, out string
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
	job, err := plan(f)
	if err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	var text bytes.Buffer
	if err = report.Write(&text, job, f.options); err == nil {
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
	set.Func("format", "text or markdown (default text)", func(s string) (err error) {
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
	boat, err := antifoul.ReadBoatWith(book, files, name)
	if err != nil {
		return nil, err
	}
	return antifoul.Plan(book, boat)
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
