package calendar

import (
	"fmt"
	"slices"
	"strconv"
	"time"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Days is what the calendar allows: the [work] section of a boat file.
type Days struct {
	Hands      int            // people at work; 0: not given
	DoneBy     string         // who does the work: tables.ByOwner, tables.ByYard, or empty
	Launch     quantity.Date  // day on which she goes in
	LaunchOpen quantity.YesNo // the launch may slip, or its date is not known

	Weekdays    []time.Weekday    // on which the crew works; none, and no Free: nothing is planned
	Start, Stop int               // minutes after midnight between which they are there; Stop 0: not given
	Free, Taken []quantity.Date   // days beside those of the week, and days of the week that are lost
	SetUp       quantity.Duration // of each day, hours that go into setting up and clearing away, half at each end
	Reserve     quantity.Duration // days that should be left before launch
	Shift       quantity.Date     // the day on which the yard shifts her stands; not given: any of the yard's working days
	Slings      quantity.YesNo    // the places under the stands are painted while she hangs in the slings
	Roof        quantity.YesNo    // she stands under a roof
	Other       []Other           // other work while she is dry
}

// Other is work that is no painting: a skin fitting, an anode, a shaft.
type Other struct {
	Name  string
	Hours float64        // of one hand
	On    quantity.Date  // an appointment; not given: when it suits
	After quantity.YesNo // after the paint; else before it
}

// Planned reports whether the days of the crew were given, so that work can be laid on them.
func (d Days) Planned() bool { return len(d.Weekdays)+len(d.Free) > 0 }

// Check returns every fault of the section for a job asked about on the day on, keys as in a boat file. On a day that is not given
// no launch is too early.
func (d Days) Check(on quantity.Date) finding.Faults {
	var fs finding.Faults
	bad := func(key, got, want string) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: got, Want: want})
	}
	if d.Hands < 0 || d.Hands > 100 {
		bad("hands", strconv.Itoa(d.Hands), "1 to 100")
	}
	early := func(key string, day quantity.Date) {
		if day.Before(on) {
			bad(key, day.String(), "not before the day of the question, "+on.String())
		}
	}
	late := func(key string, day quantity.Date) {
		if d.deadline().Given() && day.After(d.Launch) {
			bad(key, day.String(), "not after the launch, "+d.Launch.String())
		}
	}
	early("launch", d.Launch)
	early("shift", d.Shift)
	late("shift", d.Shift)
	for i, day := range d.Free {
		early(fmt.Sprintf("free[%d]", i+1), day)
		if slices.Contains(d.Taken, day) {
			bad("taken", day.String(), "a day that is not free as well")
		}
	}
	if d.Planned() && !on.Given() {
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: "date", Want: "the day of the question, from which work is planned"})
	}
	if d.Start < 0 || d.Stop < 0 || d.Start > 24*60 || d.Stop > 24*60 || d.Stop > 0 && d.Stop <= d.Start {
		bad("until", clockText(d.Stop), "later than from, "+clockText(d.Start))
	}
	if d.Reserve.Sign() < 0 || d.Reserve.Cmp(quantity.Day.N(366)) > 0 {
		bad("reserve", d.Reserve.String(), "0 to 366 days")
	}
	if d.SetUp.Sign() < 0 || d.SetUp.Cmp(quantity.Hour.N(24)) >= 0 {
		bad("set_up", d.SetUp.String(), "0 h or more and less than 24 h")
	} else if start, stop := d.there(); start < stop && hours(d.SetUp)*60 >= float64(stop-start) {
		bad("set_up", d.SetUp.String(), "less than the day from "+clockText(start)+" to "+clockText(stop))
	}
	for i, w := range d.Weekdays {
		if w < time.Sunday || w > time.Saturday {
			bad(fmt.Sprintf("days[%d]", i+1), strconv.Itoa(int(w)), "a day of the week")
		}
	}
	for i, o := range d.Other {
		key := fmt.Sprintf("other[%d].", i+1)
		if !(o.Hours >= 0 && o.Hours <= mostOther) {
			bad(key+"hours", fmt.Sprint(o.Hours), fmt.Sprintf("0 to %d hours", mostOther))
		}
		early(key+"on", o.On)
		late(key+"on", o.On)
	}
	return fs
}

// mostOther bounds the hours of one piece of other work: a year of one hand is 1,800.
const mostOther = 2000

// clockText is a time of day.
func clockText(minutes int) string { return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60) }

// ParseClock reads a time of day, "08:30" or "17:00"; "24:00" is midnight at the end of the day.
func ParseClock(s string) (minutes int, ok bool) {
	if len(s) != 5 || s[2] != ':' {
		return 0, false
	}
	h, err := strconv.ParseUint(s[:2], 10, 8)
	m, err2 := strconv.ParseUint(s[3:], 10, 8)
	if err != nil || err2 != nil || m > 59 || h > 24 || h == 24 && m > 0 {
		return 0, false
	}
	return int(h)*60 + int(m), true
}

// deadline is the day of launch where it is fixed.
func (d Days) deadline() quantity.Date {
	if d.LaunchOpen.True() {
		return quantity.Date{}
	}
	return d.Launch
}

// day reports whether the crew is there on the day.
func (d Days) day(date quantity.Date) bool {
	if slices.Contains(d.Taken, date) {
		return false
	}
	return slices.Contains(d.Free, date) || slices.Contains(d.Weekdays, date.Weekday())
}

// works reports whether the hour that begins at the minute of the day is one of the crew's hands-on hours, whole.
func (d Days) works(date quantity.Date, minute int) bool {
	start, stop := d.handsOn()
	return minute >= start && minute+60 <= stop && d.day(date)
}

// Worked reports whether the crew is there on the day.
func (d Days) Worked(day quantity.Date) bool { return d.day(day) }

// LongestDay is how many whole hours of a day are left for work between setting up and clearing away.
//
// Basis: derived.
func (d Days) LongestDay() float64 {
	start, stop := d.handsOn()
	first := (start + 59) / 60
	return float64(max(0, stop/60-first))
}

// Begins is the moment from which hands are at work on the day, after setting up; by the clock of the zone, nil as UTC.
func (d Days) Begins(day quantity.Date, zone *time.Location) time.Time {
	if zone == nil {
		zone = time.UTC
	}
	start, _ := d.handsOn()
	return wallClock(day, start, zone)
}

// wallClock is the moment at which so many minutes after midnight stand on the wall.
func wallClock(day quantity.Date, minutes int, zone *time.Location) time.Time {
	return time.Date(day.Year(), day.Month(), day.Day(), 0, minutes, 0, 0, zone)
}

// handsOn is the part of the day that is left between setting up and clearing away, in minutes after midnight.
func (d Days) handsOn() (start, stop int) {
	start, stop = d.there()
	half := int(hours(d.SetUp) * 30)
	return start + half, stop - half
}

// there is when the crew comes and goes, in minutes after midnight.
func (d Days) there() (start, stop int) {
	if d.Stop == 0 {
		return UsualStart, UsualStop
	}
	return d.Start, d.Stop
}

// The working day where nobody gave it, in minutes after midnight. Basis: assumption.
const (
	UsualStart = 9 * 60
	UsualStop  = 17 * 60
)

// Dry returns the whole days from the given day to launch; known is false when either is not given or the launch may slip.
// Basis: derived.
func (d Days) Dry(from quantity.Date) (days int, known bool) {
	if d.LaunchOpen.True() || !d.Launch.Given() || !from.Given() {
		return 0, false
	}
	return from.DaysUntil(d.Launch), true
}

// Hours returns elapsed working hours for hours of one hand: divided by the hands at work, one hand when not given.
//
//	hours = hours of one hand / hands
//
// Basis: derived; that hands never wait for each other is an assumption.
func (d Days) Hours(oneHand quantity.Range[float64]) quantity.Range[float64] {
	n := float64(max(1, d.Hands))
	return quantity.Range[float64]{Low: oneHand.Low / n, Typical: oneHand.Typical / n, High: oneHand.High / n}
}
