package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

var update = flag.Bool("update", false, "write the golden files anew")

func call(t *testing.T, args ...string) (code int, out, bad string) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	code = run(args, &stdout, &stderr)
	return code, stdout.String(), stderr.String()
}

func TestSeason(t *testing.T) {
	code, out, bad := call(t, "-boats", "fleet", "-yard", "yard.toml", "-tables", "../yard")
	if code != exitDone || bad != "" {
		t.Fatalf("exit %d, %q", code, bad)
	}
	const golden = "testdata/season.txt.golden"
	if *update {
		if err := os.WriteFile(golden, []byte(out), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(out, "\n")); diff != "" {
		t.Errorf("differs; read it by eye, then go test ./examples/yardseason -update (-want +got):\n%s", diff)
	}
}

// Every fault of every file at once: two broken boats and a broken yard.
func TestBadInput(t *testing.T) {
	dir := t.TempDir()
	good, err := os.ReadFile("fleet/avocet.toml")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"one.toml": strings.Replace(string(good), `"6.9 m"`, `"6.9"`, 1), "two.toml": strings.Replace(string(good), `"grp"`, `"gpr"`, 1),
		"yard.txt": "[yard]\nhands = 0\nhors = 8\n[[stock]]\nsize = \"2.5 L\"\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	out := filepath.Join(dir, "season.txt")
	code, _, bad := call(t, "-boats", dir, "-yard", filepath.Join(dir, "yard.txt"), "-out", out)
	if code != exitBadInput {
		t.Errorf("exit %d", code)
	}
	for _, want := range []string{"one.toml: hull.length", "two.toml: part[hull].material", "yard.hands", "yard.hors", "stock[1].coating"} {
		if !strings.Contains(bad, want) {
			t.Errorf("not told: %s\n%s", want, bad)
		}
	}
	if _, err := os.Stat(out); err == nil {
		t.Error("a file was written all the same")
	}
	for _, args := range [][]string{{}, {"-boats", t.TempDir()}, {"-boats", "fleet", "more"}, {"-boats", "fleet", "-yard", "none.toml"}, {"-boats", "fleet", "-tables", "none"}} {
		if code, out, _ := call(t, args...); code != exitBadInput || out != "" {
			t.Errorf("%v: exit %d, %q", args, code, out)
		}
	}
}

func TestWrittenWhole(t *testing.T) {
	out := filepath.Join(t.TempDir(), "season.txt")
	if code, printed, bad := call(t, "-boats", "fleet", "-out", out); code != exitDone || printed != "" || bad != "" {
		t.Fatalf("exit %d, %q, %q", code, printed, bad)
	}
	text, err := os.ReadFile(out)
	if err != nil || !strings.Contains(string(text), "THE SEASON OF THE YARD") {
		t.Errorf("%v, %s", err, text)
	}
}

// many makes a fleet of n boats out of the six, with other lengths, speeds and launches.
func many(tb testing.TB, n int) map[string]antifoul.Boat {
	tb.Helper()
	names, err := filepath.Glob("fleet/*.toml")
	if err != nil {
		tb.Fatal(err)
	}
	out := map[string]antifoul.Boat{}
	for i := range n {
		text, err := os.ReadFile(names[i%len(names)])
		if err != nil {
			tb.Fatal(err)
		}
		boat, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: text}}, "boat.toml")
		if err != nil {
			tb.Fatal(err)
		}
		boat.Name = fmt.Sprintf("%s %d", boat.Name, i)
		boat.Use.Speed = quantity.Knot.N(int64(4 + i%7))
		if boat.Work.Launch.Given() {
			boat.Work.Launch = boat.Work.Launch.AddDays(i % 40)
		}
		out[fmt.Sprintf("%03d.toml", i)] = boat
	}
	return out
}

// Over forty boats: hours are placed on working days, never more than the hands have, never before the first day; every boat's hours are all there; the order
// list holds what the boats need, no less.
func TestSeasonAddsUp(t *testing.T) {
	jobs, err := planFleet(tables.Default(), many(t, 40))
	if err != nil {
		t.Fatal(err)
	}
	y, err := readYard(tables.Default(), "yard.toml")
	if err != nil {
		t.Fatal(err)
	}
	used := map[quantity.Date]float64{}
	for _, x := range crewDays(y, jobs) {
		if !x.first.Given() {
			if x.job.Boat.Work.DoneBy != "owner" {
				t.Errorf("%s is not worked on", x.name())
			}
			continue
		}
		sum := 0.0
		for i, h := range x.load {
			d := x.first.AddDays(i)
			used[d] += h
			sum += h
			if h > 0 && !y.works(d) {
				t.Errorf("%s on %v, when nobody works", x.name(), d)
			}
		}
		if diff := sum - x.hours; diff > 1e-6 || diff < -1e-6 {
			t.Errorf("%s: %v h placed of %v", x.name(), sum, x.hours)
		}
		if x.first.Before(y.from) {
			t.Errorf("%s begins on %v", x.name(), x.first)
		}
	}
	for d, h := range used {
		if h > float64(y.hands)*y.hours+1e-6 {
			t.Errorf("%v: %v h", d, h)
		}
	}
	list, err := orderList(tables.Default(), y, jobs)
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range list {
		need := quantity.Litre.N(0)
		for _, x := range jobs {
			for _, g := range x.job.Buy {
				if g.Coating.Key == o.Coating.Key && g.Colour == o.colour {
					need = need.Add(g.Need)
				}
			}
		}
		if !o.Need.Equal(need) || o.Total.Cmp(need) < 0 {
			t.Errorf("%s: needed %v, in the list %v, in cans %v", o.Coating.Key, need, o.Need, o.Total)
		}
	}
}

// A launch that comes too soon is told.
func TestLate(t *testing.T) {
	fleet := many(t, 30)
	for name, boat := range fleet {
		if boat.Work.Launch.Given() {
			boat.Work.Launch = boat.On.AddDays(10)
			fleet[name] = boat
		}
	}
	jobs, err := planFleet(tables.Default(), fleet)
	if err != nil {
		t.Fatal(err)
	}
	y, err := readYard(tables.Default(), "yard.toml")
	if err != nil {
		t.Fatal(err)
	}
	late := 0
	for _, x := range crewDays(y, jobs) {
		if x.late > 0 {
			late++
		}
	}
	if late == 0 {
		t.Error("thirty boats in ten days, and nobody is late")
	}
}

// BenchmarkHundredBoats plans a hundred boats, sums the order and lays the days.
func BenchmarkHundredBoats(b *testing.B) {
	book, fleet := tables.Default(), many(b, 100)
	y, err := readYard(book, "yard.toml")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		jobs, err := planFleet(book, fleet)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := orderList(book, y, jobs); err != nil {
			b.Fatal(err)
		}
		crewDays(y, jobs)
	}
}
