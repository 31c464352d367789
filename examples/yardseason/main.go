// Command yardseason plans a yard's spring: it reads every boat file of a folder and the yard's own file, and prints what to order, who is worked on
// when, and which boats may not get what their owners asked for.
//
//	yardseason -boats folder [-yard yard.toml] [-tables folder] [-units metric|us] [-out file]
//
// It exits 0 when the season is written, 3 for bad input: every fault of every file, and nothing is written.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

const (
	exitDone     = 0
	exitBadInput = 3
)

type flags struct {
	boats, yard, tables, out string
	units                    quantity.System
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
	if err := season(&text, f); err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	if err := put(f.out, text.Bytes(), stdout); err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	return exitDone
}

func parse(args []string, stderr io.Writer) (flags, error) {
	f := flags{units: quantity.Metric}
	set := flag.NewFlagSet("yardseason", flag.ContinueOnError)
	set.SetOutput(stderr)
	set.StringVar(&f.boats, "boats", "", "`folder` with a boat file for each boat of the season")
	set.StringVar(&f.yard, "yard", "", "the yard's own `file`: hands, days, stock; without it two hands from Monday to Friday and an empty store")
	set.StringVar(&f.tables, "tables", "", "`folder` with own tables: data sheets, can sizes, prices")
	set.StringVar(&f.out, "out", "", "`file` to write, whole or not at all; without it the season is printed")
	set.Func("units", "metric or us, printed first (default metric)", func(s string) (err error) {
		f.units, err = quantity.ParseSystem(s)
		return err
	})
	if err := set.Parse(args); err != nil {
		return f, err
	}
	if f.boats == "" || set.NArg() > 0 {
		err := errors.New("taken: -boats folder, and other flags only")
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return f, err
	}
	return f, nil
}

// season reads, plans and writes.
func season(w io.Writer, f flags) error {
	book := tables.Default()
	if f.tables != "" {
		var err error
		if book, err = book.With(os.DirFS(f.tables)); err != nil {
			return err
		}
	}
	y, yardFaults := readYard(book, f.yard)
	fleet, err := readFleet(book, os.DirFS(f.boats))
	if err := errors.Join(yardFaults, err); err != nil {
		return err
	}
	jobs, err := planFleet(book, fleet)
	if err != nil {
		return err
	}
	lists, err := orderList(book, y, jobs)
	if err != nil {
		return err
	}
	page := page{w: w, book: book, units: f.units}
	page.head(y, jobs)
	page.orders(lists)
	page.days(y, crewDays(y, jobs))
	page.doubts(jobs)
	return page.err
}

// put writes the season to the file, whole or not at all, or to standard output when there is no file.
func put(name string, data []byte, stdout io.Writer) error {
	if name == "" {
		_, err := stdout.Write(data)
		return err
	}
	tmp, err := os.CreateTemp(filepath.Dir(name), ".season-*")
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
