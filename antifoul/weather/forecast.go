package weather

import (
	"fmt"
	"time"

	"boatyard.example/bottomwork/tables/finding"
)

// Forecast is a run of hours, one after another without a gap, and what was filled in.
type Forecast struct {
	Hours []Hour
	Notes finding.List // what was not given and how it was filled; none: nothing was
}

// What weather can be. Wind and rain are a little more than was ever measured anywhere, rain in a day.
const (
	mostRainMM  = 2000
	mostWindMS  = 120
	coldestSkin = -60.0
	hottestSkin = 100.0
)

// Check returns every fault of the hours: a start that is not given or not on a full hour of its own clock, an hour that is given twice, is missing or out
// of order, and weather that cannot be. Keys are "hours[3].air", counted from 0.
//
// Air is from -45 to 60 degC, a surface from -60 to 100 degC, humidity over 0 and at most 100 %, rain from 0 to 2000 mm, wind from 0 to 120 m/s. Unknown
// is no fault.
func (f Forecast) Check() finding.Faults {
	key := func(i int) string { return fmt.Sprintf("hours[%d].", i) }
	var faults finding.Faults
	for i, h := range f.Hours {
		if h.At.IsZero() {
			faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: key(i) + "at", Want: "the start of the hour"})
		}
	}
	checkOrder(&faults, f.Hours, func(i int) string { return key(i) + "at" })
	for i := range f.Hours {
		f.Hours[i].check(&faults, key, i)
	}
	return faults
}

// check notes weather that cannot be, of the hour of the number i.
func (h *Hour) check(faults *finding.Faults, path func(i int) string, i int) {
	var fs finding.Faults
	if known(h.AirC) {
		checkAir(&fs, h.AirC)
	}
	if known(h.HumidityPct) {
		checkHumidity(&fs, h.HumidityPct)
	}
	within(&fs, "surface", h.SurfaceC, coldestSkin, hottestSkin, "from -60 to 100 degC")
	within(&fs, "rain", h.RainMM, 0, mostRainMM, "from 0 to 2000 mm")
	within(&fs, "wind", h.WindMS, 0, mostWindMS, "from 0 to 120 m/s")
	for _, f := range fs {
		f.Key = path(i) + f.Key
		*faults = append(*faults, f)
	}
}

func within(faults *finding.Faults, key string, v, low, high float64, want string) {
	if v < low || v > high { // not NaN, which is not known
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: text(v), Want: want})
	}
}

// checkOrder notes hours that are not full, come twice, come late or are missing. One that has no start is passed over, and the hour after it too.
func checkOrder(faults *finding.Faults, hours []Hour, key func(i int) string) {
	note := func(kind error, i int, got, want string) {
		*faults = append(*faults, finding.Fault{Kind: kind, Key: key(i), Got: got, Want: want})
	}
	var seen map[int64]bool // the starts so far, made when one is not later than all
	var last time.Time      // the latest so far; zero after an hour that has no start
	for i := range hours {
		at := hours[i].At
		if at.IsZero() {
			last = at
			continue
		}
		if at.Minute() != 0 || at.Second() != 0 || at.Nanosecond() != 0 {
			note(finding.ErrValue, i, at.Format(time.RFC3339), "a full hour")
		}
		step := at.Sub(last)
		if step <= 0 && seen == nil {
			seen = make(map[int64]bool, len(hours))
			for _, h := range hours[:i] {
				seen[h.At.Unix()] = true
			}
		}
		switch {
		case last.IsZero() || step == time.Hour:
			last = at
		case step <= 0 && seen[at.Unix()]:
			note(finding.ErrDuplicate, i, clock(at), "each hour once")
		case step <= 0:
			note(finding.ErrImpossible, i, clock(at)+" after "+clock(last), "the earliest hour first")
		case step > time.Hour:
			note(finding.ErrMissing, i, "nothing from "+clock(last.Add(time.Hour))+" to "+clock(at), "each hour in between")
			last = at
		default:
			note(finding.ErrImpossible, i, clock(at)+" after "+clock(last), "one hour after the one before")
			last = at
		}
		if seen != nil {
			seen[at.Unix()] = true
		}
	}
}

// clock is a time as faults say it, with its offset, so that an autumn hour that comes twice is told apart.
func clock(t time.Time) string { return t.Format("2006-01-02 15:04 -07:00") }
