package antifoul_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"sync"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// pages plans a boat and writes her report in every format, long and short.
func pages(b *tables.Book, x antifoul.Boat, units quantity.System) (map[string]string, error) {
	j, err := antifoul.Plan(b, x)
	if err != nil {
		return nil, err
	}
	out := map[string]string{}
	for _, f := range report.Formats() {
		for _, short := range []bool{false, true} {
			var page bytes.Buffer
			err := report.Write(&page, j, report.Options{Format: f, Short: short, Units: units})
			if _, faults := errors.AsType[finding.Faults](err); faults && f == report.Calendar && len(j.Season.Calendar.Items) == 0 {
				continue // no days to write
			}
			if err != nil {
				return nil, fmt.Errorf("%s: %w", f, err)
			}
			out[fmt.Sprintf("%s, short %t", f, short)] = page.String()
		}
	}
	return out, nil
}

// The same boat gives the same bytes in every format: asked a second time, of a boat made anew, and from goroutines that share the book and the boat.
func TestAnyBoatGivesTheSameBytes(t *testing.T) {
	b, err := tables.Default().With(os.DirFS("../examples/yard"))
	if err != nil {
		t.Fatal(err)
	}
	every := uint64(200)
	switch {
	case testing.Short():
		every = 1000
	case underRace: // the others without, in another step of .ci/run
		every = 600
	}
	dated := 0
	eachBoat(t, every, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		x = inDays(t, n, x)
		units := quantity.Metric
		if n%400 == 0 {
			units = quantity.US
		}
		first, err := pages(b, x, units)
		if err != nil {
			t.Fatalf("boat %d: %v", n, err)
		}
		if first["icalendar, short false"] != "" {
			dated++
		}
		same := func(who string, got map[string]string, err error) {
			if err != nil || len(got) != len(first) {
				t.Errorf("boat %d, %s: %d pages of %d: %v", n, who, len(got), len(first), err)
			}
			for name, page := range got {
				if page != first[name] || page == "" {
					t.Errorf("boat %d, %s: %s differs: %d bytes, %d before", n, who, name, len(page), len(first[name]))
				}
			}
		}
		again, err := pages(b, inDays(t, n, newPens(tables.Default(), n).boat(t)), units)
		same("made anew", again, err)
		var all sync.WaitGroup
		var got [2]map[string]string
		var errs [2]error
		for i := range got {
			all.Go(func() { got[i], errs[i] = pages(b, x, units) })
		}
		all.Wait()
		for i := range got {
			same("in a goroutine", got[i], errs[i])
		}
	})
	if *anyBoats >= 2000 && !few() && dated < 1 {
		t.Errorf("%d boats have days", dated)
	}
}
