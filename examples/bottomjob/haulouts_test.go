package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The story of one boat over three haul-outs, by file names alone: plan; log what was done and seen; write the next boat file; plan again. Each boat file that is
// written is compared with the one in examples/haulouts, from which the next haul-out is planned. The last report quotes the first job's coats, and each
// haul-out knows the wear better than the one before.
func TestThreeHaulOuts(t *testing.T) {
	const folder = "../haulouts/"
	zone := []string{"-zone", "Europe/London"}
	var widths []float64
	for _, haul := range []struct{ boat, log, next string }{
		{"boat-2027.toml", "log-2027.toml", "boat-2028.toml"},
		{"boat-2028.toml", "log-2029.toml", "boat-2030.toml"},
		{"boat-2030.toml", "log-2031.toml", "boat-2032.toml"},
	} {
		code, report, bad := call(t, append(zone, "-long", "-boat", folder+haul.boat)...)
		if code != exitDone || bad != "" {
			t.Fatalf("%s: exit %d, %s", haul.boat, code, bad)
		}
		widths = append(widths, wearWidth(t, report))
		made := filepath.Join(t.TempDir(), haul.next)
		code, log, bad := call(t, append(zone, "-boat", folder+haul.boat, "-log", folder+haul.log, "-passport", made)...)
		if code != exitDone || bad != "" {
			t.Fatalf("%s: exit %d, %s", haul.log, code, bad)
		}
		golden(t, strings.TrimSuffix(haul.log, ".toml")+".txt", log)
		text, err := os.ReadFile(made)
		if err != nil {
			t.Fatal(err)
		}
		if *update {
			if err := os.WriteFile(folder+haul.next, text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(folder + haul.next)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(text), "\n")); diff != "" {
			t.Errorf("%s differs from what is written; read it by eye, then -update (-want +got):\n%s", haul.next, diff)
		}
	}
	code, last, bad := call(t, append(zone, "-boat", folder+"boat-2032.toml", "-format", "markdown")...)
	if code != exitDone || bad != "" {
		t.Fatalf("the last report: exit %d, %s", code, bad)
	}
	widths = append(widths, wearWidth(t, last))
	for i, w := range widths[1:] {
		if w >= widths[i] {
			t.Errorf("haul-out %d knows the wear no better than the one before: high ÷ low is %.2f after %.2f", i+2, w, widths[i])
		}
	}
	for _, quoted := range []string{"job log of 2027-04-11", "log-2027.toml", "batch R17", "the first owner's bills", "log-2029.toml", "log-2031.toml"} {
		if !strings.Contains(last, quoted) {
			t.Errorf("the last report does not quote %q", quoted)
		}
	}
	code, third, _ := call(t, append(zone, "-boat", folder+"boat-2030.toml")...)
	if code != exitDone {
		t.Fatal(code)
	}
	golden(t, "haulout-2030.txt", third)
}

var wearRange = regexp.MustCompile(`(?:taken as|multi-season loses from) ([0-9.]+)(?: µm \([^)]*\))? to ([0-9.]+) µm`)

// wearWidth is the high end of the wear that the report tells over its low end.
func wearWidth(t *testing.T, report string) float64 {
	t.Helper()
	m := wearRange.FindStringSubmatch(strings.Join(strings.Fields(report), " "))
	if m == nil {
		t.Fatal("the report tells no wear")
	}
	low, errLow := strconv.ParseFloat(m[1], 64)
	high, errHigh := strconv.ParseFloat(m[2], 64)
	if errLow != nil || errHigh != nil || low <= 0 || high <= low {
		t.Fatalf("the wear is told as %v", m)
	}
	return high / low
}

// A job half way: what is due, as of a moment, in American units; and as Markdown.
func TestJobHalfWay(t *testing.T) {
	half := []string{"-boat", "../boats/steel.toml", "-log", "../boats/steel-log.toml", "-now", "2027-03-29 08:00"}
	for name, more := range map[string][]string{"steel-log.txt": {"-units", "us"}, "steel-log.md": {"-format", "markdown"}} {
		code, out, bad := call(t, append(half, more...)...)
		if code != exitDone || bad != "" {
			t.Fatalf("exit %d, %s", code, bad)
		}
		golden(t, name, out)
	}
}

// Bad logs and wrong flags: everything that is wrong is said, and no file is written or touched.
func TestBadLogs(t *testing.T) {
	dir := t.TempDir()
	made := filepath.Join(dir, "next.toml")
	boat := []string{"-boat", "../haulouts/boat-2027.toml"}
	code, out, bad := call(t, append(boat, "-log", "testdata/bad-log.toml", "-passport", made)...)
	if code != exitBadInput || out != "" {
		t.Errorf("exit %d, printed %q", code, out)
	}
	golden(t, "bad-log.txt", bad)
	log := filepath.Join(dir, "log.toml")
	text := []byte("[log]\nversion = 1\n[[task]]\npart = \"hull\"\ndo = \"wash\"\nbegun = \"2027-04-10 09:00\"\n")
	if err := os.WriteFile(log, text, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, args := range [][]string{
		append(boat, "-log", "no-such.toml"),
		append(boat, "-log", log, "-now", "at nine"),
		append(boat, "-log", log, "-now", "2027-04-10 08:59"),
		append(boat, "-log", log, "-passport", made),                                         // nobody said on which day she came out
		append(boat, "-log", log, "-now", "2027-04-10 09:00", "-passport", log),              // the log is never written over
		append(boat, "-log", log, "-now", "2027-04-10 09:00", "-passport", dir+"/no/x.toml"), // no such folder
		append(boat, "-log", log, "-morning", "2027-04-10 09:00"),
		append(boat, "-log", log, "-short"),
		append(boat, "-log", log, "-format", "icalendar"),
		append(boat, "-now", "2027-04-10 09:00"),
		append(boat, "-passport", made),
		{"-log", log, "-passport", made},
	} {
		if code, out, bad := call(t, args...); code != exitBadInput || out != "" || bad == "" {
			t.Errorf("%d %v: exit %d, printed %q, said %q", i, args, code, out, bad)
		}
	}
	if after, err := os.ReadFile(log); err != nil || !bytes.Equal(after, text) {
		t.Error("the log was touched")
	}
	if left, err := filepath.Glob(dir + "/*"); err != nil || fmt.Sprint(left) != "["+log+"]" {
		t.Errorf("left behind: %v", left)
	}
	if code, _, bad := call(t, append(boat, "-log", log, "-now", "2027-04-10 09:00", "-passport", made)...); code != exitDone || bad != "" {
		t.Errorf("exit %d, %s", code, bad)
	}
}
