package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/antifoul/report"
)

var update = flag.Bool("update", false, "write the golden files from what is printed; read them by eye before committing")

func call(t *testing.T, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, bad bytes.Buffer
	code = run(args, &out, &bad)
	return code, out.String(), bad.String()
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name+".golden")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("%s differs; read it by eye, then go test ./examples/surveynote -update (-want +got):\n%s", file, diff)
	}
}

func TestNotes(t *testing.T) {
	for _, tt := range []struct {
		golden string
		args   []string
	}{
		{"note.txt", nil},
		{"note.md", []string{"-format", "markdown", "-units", "us"}},
		{"small.txt", []string{"-note", "testdata/small.toml"}},
	} {
		t.Run(tt.golden, func(t *testing.T) {
			code, out, bad := call(t, tt.args...)
			if code != exitDone || bad != "" {
				t.Fatalf("exit %d, standard error %q", code, bad)
			}
			golden(t, tt.golden, out)
		})
	}
}

func TestBadInput(t *testing.T) {
	code, out, bad := call(t, "-note", "testdata/bad.toml")
	if code != exitBadInput || out != "" {
		t.Errorf("exit %d, printed %q, want exit %d and nothing", code, out, exitBadInput)
	}
	golden(t, "bad.txt", bad)
	for _, args := range [][]string{
		{"-note", "no-such.toml"},
		{"-tables", "no-such-folder"},
		{"-format", "papyrus"},
		{"-format", "icalendar"},
		{"-units", "cubits"},
		{"-nonsense"},
		{"note.toml"},
	} {
		if code, out, bad := call(t, args...); code != exitBadInput || out != "" || bad == "" {
			t.Errorf("%v: exit %d, printed %q, said %q", args, code, out, bad)
		}
	}
	if code, _, said := call(t, "-h"); code != exitDone || !strings.Contains(said, "-note") {
		t.Errorf("-h: exit %d, said %q", code, said)
	}
}

// The formats that are read are those of a note; those for programs are of a planned job.
func TestEveryFormat(t *testing.T) {
	for _, f := range report.Formats() {
		code, out, bad := call(t, "-format", string(f))
		if !slices.Contains([]report.Format{report.Text, report.Markdown, report.HTML}, f) {
			if code != exitBadInput || !strings.Contains(bad, "taken for a condition note: text, markdown, html") {
				t.Errorf("%s: exit %d, said %q", f, code, bad)
			}
			continue
		}
		if code != exitDone || bad != "" || !strings.Contains(out, "Condition as found") {
			t.Errorf("%s: exit %d, said %q", f, code, bad)
		}
	}
}

// A boat file of the other command is a note too, with and without a look in it.
func TestBoatFilesAreNotes(t *testing.T) {
	files, err := filepath.Glob("../boats/*.toml")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d boat files, %v", len(files), err)
	}
	for _, name := range append(files, "../bottomjob/demo.toml") {
		if strings.HasSuffix(name, "-log.toml") { // the log of a job is no boat file
			continue
		}
		code, out, bad := call(t, "-note", name)
		if code != exitDone || bad != "" || !strings.Contains(out, "Condition as found") || strings.Contains(out, "What to buy") {
			t.Errorf("%s: exit %d, said %q", name, code, bad)
		}
	}
}

// An output file is written whole or not at all, and what was there before bad input stays.
func TestOutputFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "found.md")
	_, printed, _ := call(t, "-format", string(report.Markdown))
	if code, out, bad := call(t, "-format", "markdown", "-out", file); code != exitDone || out != "" || bad != "" {
		t.Fatalf("exit %d, printed %q, said %q", code, out, bad)
	}
	written, err := os.ReadFile(file)
	if err != nil || string(written) != printed {
		t.Errorf("the file differs from what is printed without -out (%v)", err)
	}
	if code, _, _ := call(t, "-note", "testdata/bad.toml", "-out", file); code != exitBadInput {
		t.Errorf("exit %d", code)
	}
	if after, err := os.ReadFile(file); err != nil || !bytes.Equal(after, written) {
		t.Error("bad input changed the file that was there")
	}
	if code, _, bad := call(t, "-out", filepath.Join(t.TempDir(), "no", "such", "folder.txt")); code != exitBadInput || bad == "" {
		t.Errorf("a folder that is not there: exit %d, said %q", code, bad)
	}
}
