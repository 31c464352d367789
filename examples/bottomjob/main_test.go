package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files from what is printed; read them by eye before committing")

// binary is the built command.
var binary string

func TestMain(m *testing.M) {
	flag.Parse()
	dir, err := os.MkdirTemp("", "bottomjob")
	if err != nil {
		panic(err)
	}
	binary = filepath.Join(dir, "bottomjob")
	if out, err := exec.Command("go", "build", "-o", binary, ".").CombinedOutput(); err != nil {
		panic(string(out))
	}
	code := m.Run()
	os.RemoveAll(dir) //nolint:errcheck // a temporary folder
	os.Exit(code)
}

// call runs the built command and returns its exit code and what it printed.
func call(t *testing.T, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, bad bytes.Buffer
	cmd := exec.Command(binary, args...)
	cmd.Stdout, cmd.Stderr = &out, &bad
	err := cmd.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return cmd.ProcessState.ExitCode(), out.String(), bad.String()
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
		t.Errorf("%s differs; read it by eye, then go test ./examples/bottomjob -update (-want +got):\n%s", file, diff)
	}
}

func TestReports(t *testing.T) {
	boats := "../boats/"
	for _, tt := range []struct {
		golden string
		args   []string
		code   int
	}{
		{"demo.txt", nil, exitDone},
		{"demo.md", []string{"-format", "markdown"}, exitDone},
		{"demo-short.html", []string{"-format", "html", "-short"}, exitDone},
		{"trailer.html", []string{"-boat", boats + "trailer.toml", "-format", "html", "-units", "us"}, exitDone},
		{"sloop.txt", []string{"-boat", boats + "sloop.toml", "-long"}, exitDone},
		{"planing.txt", []string{"-boat", boats + "planing.toml", "-units", "us", "-long"}, exitDone},
		{"planing-short.txt", []string{"-boat", boats + "planing.toml", "-units", "us"}, exitDone}, // the same again
		{"steel.txt", []string{"-boat", boats + "steel.toml"}, exitDone},
		{"taped.txt", []string{"-boat", boats + "taped.toml"}, exitDone},
		{"steel-measured.txt", []string{"-boat", boats + "steel-measured.toml"}, exitDone},
		{"trailer.txt", []string{"-boat", boats + "trailer.toml"}, exitDone},
		{"late.txt", []string{"-boat", boats + "late.toml"}, exitDone},
		{"late.ics", []string{"-boat", boats + "late.toml", "-format", "icalendar", "-zone", "Europe/London"}, exitDone},
		{"demo-layers.csv", []string{"-format", "csv-layers"}, exitDone},
		{"demo-shopping.csv", []string{"-format", "csv-shopping", "-units", "us"}, exitDone},
		{"morning-go.txt", []string{"-boat", boats + "late.toml", "-morning", "2027-04-10 11:00"}, exitDone},
		{"morning-wait.txt", []string{"-boat", boats + "late.toml", "-zone", "Europe/London", "-morning", "2027-04-17 08:00", "-units", "us"}, exitDone},
		{"morning-measure.txt", []string{"-morning", "2027-04-30 14:00", "-units", "us"}, exitDone},
		{"morning-first.txt", []string{"-morning", "2027-04-30 10:00"}, exitDone},
		{"morning-none.txt", []string{"-morning", "2027-04-10 08:00"}, exitDone},
		{"yard-late.txt", []string{"-boat", boats + "late.toml", "-tables", "../yard"}, exitDone},
		{"yard.txt", []string{"-boat", boats + "sloop.toml", "-tables", "../yard", "-short"}, exitDone},
		{"nothing.txt", []string{"-boat", "testdata/nothing.toml"}, exitNothing},
	} {
		t.Run(tt.golden, func(t *testing.T) {
			code, out, bad := call(t, tt.args...)
			if code != tt.code || bad != "" {
				t.Fatalf("exit %d, standard error %q, want exit %d", code, bad, tt.code)
			}
			golden(t, tt.golden, out)
		})
	}
}

// The report is short where the job is the same again on sound paint, and long elsewhere; -long and -short force the one or the other, and what is made for
// programs stays whole.
func TestShortByItself(t *testing.T) {
	const sloop, late = "../boats/sloop.toml", "../boats/late.toml"
	report := func(args ...string) string {
		t.Helper()
		code, out, bad := call(t, args...)
		if code != exitDone || bad != "" {
			t.Fatalf("%v: exit %d, said %q", args, code, bad)
		}
		return out
	}
	for boat, same := range map[string]bool{sloop: true, "../boats/planing.toml": true, "../haulouts/boat-2027.toml": true, late: false, "../boats/steel.toml": false} {
		for _, format := range []string{"text", "markdown", "html"} {
			plain, short, long := report("-boat", boat, "-format", format), report("-boat", boat, "-format", format, "-short"), report("-boat", boat, "-format", format, "-long")
			if len(short)*2 > len(long) {
				t.Errorf("%s, %s: short %d, long %d letters", boat, format, len(short), len(long))
			}
			if (plain == short) != same || (plain == long) == same {
				t.Errorf("%s, %s: same again %v, but without a flag it prints %d letters, short %d, long %d", boat, format, same, len(plain), len(short), len(long))
			}
		}
	}
	for _, format := range []string{"json", "csv-layers", "csv-shopping"} {
		if plain := report("-boat", sloop, "-format", format); plain != report("-boat", sloop, "-format", format, "-long") || plain != report("-boat", sloop, "-format", format, "-short") {
			t.Errorf("%s depends on the length", format)
		}
	}
	if report("-boat", late, "-format", "icalendar") != report("-boat", late, "-format", "icalendar", "-short") {
		t.Error("the calendar depends on the length")
	}
}

// The JSON is one document that says what it is, also where nothing may be used.
func TestJSON(t *testing.T) {
	for boat, want := range map[string]int{"../boats/sloop.toml": exitDone, "testdata/nothing.toml": exitNothing} {
		code, out, bad := call(t, "-boat", boat, "-format", "json")
		var doc struct {
			Document string                     `json:"document"`
			Schema   int                        `json:"schema"`
			Answer   struct{ Without []string } `json:"answer"`
		}
		if err := json.Unmarshal([]byte(out), &doc); err != nil || code != want || bad != "" {
			t.Errorf("%s: exit %d, said %q, %v", boat, code, bad, err)
		}
		if doc.Document != "bottom-job" || doc.Schema != 1 || (len(doc.Answer.Without) > 0) != (want == exitNothing) {
			t.Errorf("%s: %+v", boat, doc)
		}
	}
}

func TestBadInput(t *testing.T) {
	code, out, bad := call(t, "-boat", "testdata/bad.toml")
	if code != exitBadInput || out != "" {
		t.Errorf("exit %d, printed %q, want exit %d and nothing", code, out, exitBadInput)
	}
	golden(t, "bad.txt", bad)
	for _, args := range [][]string{
		{"-boat", "no-such.toml"},
		{"-tables", "no-such-folder"},
		{"-format", "papyrus"},
		{"-units", "cubits"},
		{"-zone", "Atlantis"},
		{"-morning", "at eight"},
		{"-boat", "../boats/sloop.toml", "-format", "icalendar"},
		{"-boat", "../boats/sloop.toml", "-morning", "2027-04-10 08:00"},
		{"-format", "json", "-morning", "2027-04-16 11:00"},
		{"-short", "-long"},
		{"-boat", "../boats/steel.toml", "-log", "../boats/steel-log.toml", "-long"},
		{"-nonsense"},
		{"boat.toml"},
	} {
		if code, out, bad := call(t, args...); code != exitBadInput || out != "" || bad == "" {
			t.Errorf("%v: exit %d, printed %q, said %q", args, code, out, bad)
		}
	}
	if code, _, said := call(t, "-h"); code != exitDone || !strings.Contains(said, "-boat") {
		t.Errorf("-h: exit %d, said %q", code, said)
	}
}

// An output file is written whole or not at all, and what was there before bad input stays.
func TestOutputFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "report.txt")
	_, printed, _ := call(t)
	if code, out, bad := call(t, "-out", file); code != exitDone || out != "" || bad != "" {
		t.Fatalf("exit %d, printed %q, said %q", code, out, bad)
	}
	written, err := os.ReadFile(file)
	if err != nil || string(written) != printed {
		t.Errorf("the file differs from what is printed without -out (%v)", err)
	}
	if code, _, _ := call(t, "-boat", "testdata/bad.toml", "-out", file); code != exitBadInput {
		t.Errorf("exit %d", code)
	}
	if after, err := os.ReadFile(file); err != nil || !bytes.Equal(after, written) {
		t.Error("bad input changed the file that was there")
	}
	if code, _, bad := call(t, "-out", filepath.Join(t.TempDir(), "no", "such", "folder.txt")); code != exitBadInput || bad == "" {
		t.Errorf("a folder that is not there: exit %d, said %q", code, bad)
	}
	left, err := filepath.Glob(filepath.Join(filepath.Dir(file), ".report-*"))
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}
