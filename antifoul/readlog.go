package antifoul

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// ReadLog reads the job log name of fsys and holds it against itself and the boat. Zone is that of the clock by which it was kept; nil: times are taken
// as they stand.
//
// The error is a finding.Faults with every fault of the file: those of joblog.Read, parts and zones that the boat has not, and a dew point that
// lies farther from that of the air and humidity beside it than the factor log-dew-differs allows.
func ReadLog(b *tables.Book, boat Boat, fsys fs.FS, name string, zone *time.Location) (joblog.Log, error) {
	l, err := joblog.Read(b, fsys, name, zone)
	read, _ := errors.AsType[finding.Faults](err)
	out := slices.Clone(read)
	for _, f := range logFaults(b, boat, l) {
		// What cannot be is not told a second time as what the boat has not.
		if !slices.ContainsFunc(read, func(x finding.Fault) bool { return x.Key == f.Key }) {
			out = append(out, finding.Faults{f}.Under(name, "")...)
		}
	}
	return l, out.Err()
}

// logFaults are the faults of a log that only the boat, or the formula of the dew point, tells.
func logFaults(b *tables.Book, boat Boat, l joblog.Log) finding.Faults {
	areas, _, err := partAreas(b, boat.filled(b))
	if err != nil {
		areas = nil // its own faults are told with the boat
	}
	var fs finding.Faults
	place := func(key, part string, zones []string) {
		if part == "" {
			return
		}
		if len(zones) == 0 {
			zones = []string{""}
		}
		for _, z := range zones {
			_, faults := boat.partOf(b, areas, part, z)
			for _, f := range faults {
				if errors.Is(f, finding.ErrImpossible) && strings.HasPrefix(key, "task") {
					continue // an anode is washed too
				}
				if f.Key == "zone" && !strings.HasPrefix(key, "look") && !strings.HasPrefix(key, "gauged") {
					f.Key = "zones"
				}
				fs = append(fs, finding.Faults{f}.Under("", key)...)
			}
		}
	}
	for i, k := range l.Coats {
		key := fmt.Sprintf("coat[%d]", i+1)
		place(key, k.Part, k.Zones)
		fs = append(fs, moistureFaults(b, k.Air).Under("", key)...)
	}
	for i, t := range l.Tasks {
		place(fmt.Sprintf("task[%d]", i+1), t.Part, t.Zones)
	}
	for i, s := range l.Surveys {
		place(fmt.Sprintf("gauged[%d]", i+1), s.Part, []string{s.Zone})
	}
	for i, k := range l.Looks {
		place(fmt.Sprintf("look[%d]", i+1), k.Part, []string{k.Zone})
	}
	return fs
}

// moistureFaults holds a dew point against the air and the humidity that were noted beside it.
func moistureFaults(b *tables.Book, a joblog.Air) finding.Faults {
	dew, err := weather.DewPoint(b, a.Air.Float(quantity.Celsius), a.Humidity.Float(quantity.Percent))
	if err != nil {
		return nil //nolint:nilerr // not noted, or out of range: a fault of its own
	}
	if far := factor(b, "log-dew-differs"); math.Abs(dew-a.DewPoint.Float(quantity.Celsius)) > far+1e-9 { // no dew point noted is NaN, which differs from nothing
		want, _ := quantity.Celsius.Near(dew, 1, quantity.Nearest)
		return finding.Faults{{
			Kind: finding.ErrImpossible, Key: "dew_point", Got: a.DewPoint.String(),
			Want: fmt.Sprintf("%s, within %s K, by the air (%s) and the humidity (%s) beside it; one of the three was misread", want, entry.Describe(far), a.Air, a.Humidity),
		}}
	}
	return nil
}
