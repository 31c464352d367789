package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

var update = flag.Bool("update", false, "write the golden files from what is printed; read them by eye before committing")

func call(args ...string) (code int, stdout, stderr string) {
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
		t.Errorf("%s differs; read it by eye, then go test ./examples/overcoat -update (-want +got):\n%s", file, diff)
	}
}

func TestAnswers(t *testing.T) {
	for name, c := range map[string]struct {
		begins string
		args   []string
	}{
		"same-again":          {"YES, after", []string{"-new", "ablative-cuprous-multi", "-over", "epoxy-barrier 300 um, ablative-cuprous-multi", "-on", "grp"}},
		"hard-over-soft":      {"NOT ON TOP", []string{"-new", "hard-cuprous", "-over", "ablative-old", "-on", "grp"}},
		"copper-on-aluminium": {"NO.", []string{"-new", "hard-cuprous", "-over", "epoxy-barrier 400 um", "-on", "aluminium"}},
		"bare-aluminium":      {"YES, after", []string{"-new", "ablative-copper-free", "-on", "aluminium", "-units", "us"}},
		"over-silicone":       {"NOT ON TOP", []string{"-new", "self-polishing-cuprous", "-over", "silicone-old", "-on", "grp"}},
		"anode":               {"NO.", []string{"-new", "hard-cuprous", "-on", "zinc-anode", "-zone", "fitting"}},
		"polyethylene":        {"ASK FIRST", []string{"-new", "hard-cuprous", "-on", "polyethylene"}},
		"unknown":             {"NOT ON TOP", []string{"-new", "ablative-copper-free", "-over", "unknown-old", "-on", "aluminium", "-cautions"}},
		"wet-laminate":        {"YES, after", []string{"-new", "epoxy-barrier", "-on", "grp", "-laminate", "wet"}},
		"lead-keel":           {"YES, after", []string{"-new", "hard-cuprous", "-on", "lead", "-zone", "keel"}},
		"epoxy-over-etch":     {"ASK FIRST", []string{"-new", "epoxy-barrier", "-over", "etch-primer", "-on", "aluminium"}},
		"bitumen-over-tar":    {"ASK FIRST", []string{"-new", "blacking-bitumen", "-over", "blacking-vinyl-tar", "-on", "steel"}},
		"epoxy-after-20-h":    {"YES, after", []string{"-new", "ablative-cuprous-multi", "-over", "epoxy-barrier 300 um", "-on", "grp", "-age", "20 h"}},
		"tin-under-sealer":    {"YES, after", []string{"-new", "ablative-cuprous-multi", "-over", "organotin-old, sealer", "-on", "grp"}},
		"unknown-on-grp":      {"YES, but only if the test patch holds", []string{"-new", "ablative-cuprous-multi", "-over", "unknown-old", "-on", "grp"}},
		"wet-under-barrier":   {"YES, after", []string{"-new", "epoxy-barrier", "-over", "epoxy-barrier 200 um", "-on", "grp", "-laminate", "wet"}},
		"blistered":           {"NOT ON TOP", []string{"-new", "ablative-cuprous-multi", "-over", "ablative-old", "-on", "grp", "-state", "blistered"}},
		"barrier-on-steel":    {"YES, after", []string{"-new", "epoxy-barrier", "-on", "steel"}},
		"thin-barrier":        {"YES, after", []string{"-new", "ablative-cuprous-multi", "-over", "epoxy-primer 60 um, epoxy-barrier 200 um", "-on", "steel"}},
		"barrier-on-ablative": {"NOT ON TOP", []string{"-new", "ablative-cuprous-multi", "-over", "ablative-old, epoxy-barrier 400 um", "-on", "steel"}},
		"past-window":         {"YES, after", []string{"-new", "hard-cuprous", "-over", "epoxy-barrier 300 um", "-on", "grp", "-age", "30 d"}},
	} {
		t.Run(name, func(t *testing.T) {
			code, out, bad := call(c.args...)
			if code != exitDone || bad != "" {
				t.Fatalf("exit %d, standard error %q", code, bad)
			}
			golden(t, name, out)
			if !strings.Contains(out, "\n"+c.begins) {
				t.Errorf("the answer does not begin with %q:\n%s", c.begins, out)
			}
		})
	}
}

func TestBadInput(t *testing.T) {
	code, out, bad := call("-new", "hard-cuprus", "-over", "ablativ-old 3 litres,epoxy-barier", "-on", "grpp", "-zone", "hul", "-state", "soundd", "-age", "5", "-laminate", "damp")
	if code != exitBadInput || out != "" {
		t.Errorf("exit %d, printed %q", code, out)
	}
	for _, want := range []string{"hard-cuprous?", "ablative-old", "3 litres", "epoxy-barrier", "grp", "hull", "sound?", "-age", "dry or wet"} {
		if !strings.Contains(bad, want) {
			t.Errorf("%q is missing in\n%s", want, bad)
		}
	}
	for _, args := range [][]string{{}, {"-new", "hard-cuprous"}, {"-on", "grp"}, {"-new", "hard-old", "-on", "grp"}, {"x"}, {"-units", "roman"}, {"-tables", "no such folder", "-new", "x", "-on", "y"}} {
		if code, out, bad := call(args...); code != exitBadInput || out != "" || bad == "" {
			t.Errorf("%q: exit %d, printed %q, error %q", args, code, out, bad)
		}
	}
	if code, _, bad := call("-h"); code != exitDone || !strings.Contains(bad, "-over") {
		t.Errorf("help: exit %d, %q", code, bad)
	}
}

// Every answer fits a screen of 50 lines and 96 columns, and finds its words.
func TestEveryAnswerFitsAScreen(t *testing.T) {
	b := tables.Default()
	longest := 0
	for m := range b.Materials() {
		for next := range b.Coatings() {
			if next.Role == tables.OldFilm {
				continue
			}
			for old := range b.Coatings() {
				if !old.MadeFor(m.Key) {
					continue
				}
				p := compat.Part{Name: "the surface", Zone: "hull", Material: m.Key, Found: compat.Stack{{Coating: old, State: tables.Sound, For: compat.Found}}}
				text := answer(b, p, next, quantity.Metric, false)
				lines := strings.Count(text, "\n")
				longest = max(longest, lines)
				if lines > 50 || strings.Contains(text, "(not stated)") || strings.Contains(text, "{") {
					t.Fatalf("%d lines:\n%s", lines, text)
				}
				for line := range strings.Lines(text) {
					if len([]rune(line)) > width+1 && strings.Contains(strings.TrimSpace(line), " ") {
						t.Fatalf("%q is too long", line)
					}
				}
			}
		}
	}
	t.Logf("the longest answer has %d lines", longest)
}
