// Command referencetables writes the reference tables for people: as Markdown, or as one HTML page, each row with what it rests
// on and what there is against it, so that a surveyor can cite them without reading TOML.
//
//	referencetables [-tables folder] [-format markdown|html] [-units metric|us] [-out file]
//
// It exits 0 when the tables are written and 3 for bad input.
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

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main without the process around it.
func run(args []string, stdout, stderr io.Writer) int {
	set := flag.NewFlagSet("referencetables", flag.ContinueOnError)
	set.SetOutput(stderr)
	own := set.String("tables", "", "`folder` with own tables on top")
	format := set.String("format", "markdown", "markdown or html")
	out := set.String("out", "", "`file` to write, whole or not at all; without it the tables are printed")
	units := quantity.Metric
	set.Func("units", "metric or us, printed first (default metric)", func(s string) (err error) {
		units, err = quantity.ParseSystem(s)
		return err
	})
	switch err := set.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return exitDone
	case err != nil:
		return exitBadInput // the flag package has said why
	}
	if err := write(*own, *format, *out, units, stdout); err != nil {
		fmt.Fprintln(stderr, err) //nolint:errcheck // nowhere left to say it
		return exitBadInput
	}
	return exitDone
}

func write(own, format, out string, units quantity.System, stdout io.Writer) error {
	render := markdown
	switch format {
	case "markdown":
	case "html":
		render = page
	default:
		return fmt.Errorf("read %q, taken: markdown, html", format)
	}
	book := tables.Default()
	if own != "" {
		var err error
		if book, err = book.With(os.DirFS(own)); err != nil {
			return err
		}
	}
	var text bytes.Buffer
	if err := render(&text, book.Fingerprint(), sheets(book, units)); err != nil {
		return err
	}
	if out == "" {
		_, err := stdout.Write(text.Bytes())
		return err
	}
	tmp, err := os.CreateTemp(filepath.Dir(out), ".tables-*")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name()) //nolint:errcheck // gone already when all went well
	_, err = tmp.Write(text.Bytes())
	if err = errors.Join(err, tmp.Chmod(0o644), tmp.Close()); err != nil {
		return err
	}
	return os.Rename(tmp.Name(), out)
}
