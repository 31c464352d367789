package weather

import (
	"fmt"
	"math"
	"time"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Day is a day's weather, from midnight to midnight by the clock of the place. Unknown stands for what is not known; low and high are needed.
type Day struct {
	Date        quantity.Date
	LowC, HighC float64 // of the air
	HumidityPct float64 // mean, relative
	RainMM      float64 // in the whole day
	WindMS      float64 // m/s
}

// Hourly makes hours of days that follow one another, from the first midnight in loc to the last.
//
// The air is at the day's low at six o'clock and at its high at two in the afternoon, of standard time; from one to the other, and on to the next day's
// low, it follows half a wave:
//
//	air = from + (to − from) × (1 − cos(π × share of the time between them)) ÷ 2
//
// Before the first low the day before is taken as the first day, after the last high the day after as the last. Standard time is the smaller of the
// offsets that loc has in January and in July. Days of 23 and of 25 hours have as many; where summer time is not one whole hour the hours after the change
// are not full, and a fault. A day's rain counts for each of its hours, since nobody knows when it falls, and its wind too. A day's humidity
// is taken at the middle of its low and high: the dew point of that holds all day. Without it the dew point is the day's low, and a note says so. Humidity
// is capped at 100 %.
//
// The mean error against hourly normals of one station on the 47th parallel is 0.6 K, the greatest 1.9 K, in the hours after dawn and in the evening.
//
// The error is a finding.Faults: days that do not follow one another, low above high, and what cannot be (see Forecast.Check). Keys are "days[2].low".
//
// Source: de Wit, Goudriaan and others 1978, two cosines, from sunrise to two o'clock; rows day-low-hour and day-high-hour. Sunrise at six, as at the
// equinoxes, is an assumption. Dew point: FAO-56, equation 48.
func Hourly(b *tables.Book, days []Day, loc *time.Location) (Forecast, error) {
	path := func(i int) string { return fmt.Sprintf("days[%d].", i) }
	var faults finding.Faults
	for i, d := range days {
		for _, v := range []struct {
			field string
			given bool
		}{{"date", d.Date.Given()}, {"low", known(d.LowC)}, {"high", known(d.HighC)}} {
			if !v.given {
				faults = append(faults, finding.Fault{Kind: finding.ErrMissing, Key: path(i) + v.field, Want: "date, low and high of each day"})
			}
		}
	}
	if len(faults) > 0 {
		checkDays(&faults, days, path)
		return Forecast{}, faults.Err()
	}
	return hourly(b, days, loc, path)
}

// hourly is Hourly for days whose date, low and high are given.
func hourly(b *tables.Book, days []Day, loc *time.Location, path func(i int) string) (Forecast, error) {
	var faults finding.Faults
	checkDays(&faults, days, path)
	if loc == nil {
		noPlace(&faults)
	}
	k, err := magnus(b)
	note(&faults, err)
	low, err := b.Factor("day-low-hour")
	note(&faults, err)
	high, err := b.Factor("day-high-hour")
	note(&faults, err)
	if !(low.Value.Typical < high.Value.Typical && high.Value.Typical < 24) && len(faults) == 0 {
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "factor[day-low-hour]", Got: text(low.Value.Typical), Want: "an hour before day-high-hour, and both of one day"})
	}
	if err := faults.Err(); err != nil {
		return Forecast{}, err
	}
	var out Forecast
	if len(days) == 0 {
		return out, nil
	}
	bends := wave(days, loc, low.Value.Typical, high.Value.Typical)
	filled, at := 0, midnight(days[0].Date, loc)
	for _, d := range days {
		dew := d.LowC
		if known(d.HumidityPct) {
			dew = k.dew((d.LowC+d.HighC)/2, d.HumidityPct)
		}
		for end := midnight(d.Date.AddDays(1), loc); at.Before(end); at = at.Add(time.Hour) {
			h := Hour{At: at, SurfaceC: Unknown(), RainMM: d.RainMM, WindMS: d.WindMS}
			h.AirC, bends = along(bends, at)
			h.HumidityPct = min(100, k.humidity(h.AirC, dew))
			if !known(d.HumidityPct) {
				filled++
			}
			out.Hours = append(out.Hours, h)
		}
	}
	checkOrder(&faults, out.Hours, func(int) string { return "location" })
	if err := faults.Err(); err != nil {
		return Forecast{}, err
	}
	out.Notes = append(out.Notes, finding.Finding{
		Rule: RuleDayCurve, Verdict: finding.Caution, Basis: []finding.Basis{low.Basis("value"), high.Basis("value")},
		Facts: []finding.Fact{{Name: "days", Value: len(days)}, {Name: "low", Value: low.Value.Typical}, {Name: "high", Value: high.Value.Typical}},
	})
	out.Notes = append(out.Notes, dewNote(filled)...)
	return out, nil
}

// noPlace notes that nobody said whose clock the times are of.
func noPlace(faults *finding.Faults) {
	*faults = append(*faults, finding.Fault{Kind: finding.ErrMissing, Key: "location", Want: "the place whose clock the times are of"})
}

// checkDays notes days that do not follow one another and weather that cannot be.
func checkDays(faults *finding.Faults, days []Day, path func(i int) string) {
	note := func(kind error, i int, field, got, want string) {
		*faults = append(*faults, finding.Fault{Kind: kind, Key: path(i) + field, Got: got, Want: want})
	}
	var last quantity.Date // the latest so far; not given after a day that has no date
	seen := map[quantity.Date]bool{}
	for i, d := range days {
		switch step := last.DaysUntil(d.Date); {
		case !d.Date.Given():
			last = d.Date
		case d.Date.Year() < firstYear || d.Date.Year() > lastYear:
			note(finding.ErrImpossible, i, "date", d.Date.String(), yearWant)
		case !last.Given() || step == 1:
			last = d.Date
		case seen[d.Date]:
			note(finding.ErrDuplicate, i, "date", d.Date.String(), "each day once")
		case step <= 0:
			note(finding.ErrImpossible, i, "date", d.Date.String()+" after "+last.String(), "the earliest day first")
		default:
			note(finding.ErrMissing, i, "date", "nothing from "+last.AddDays(1).String()+" to "+d.Date.AddDays(-1).String(), "each day in between")
			last = d.Date
		}
		seen[d.Date] = true
		h := Hour{AirC: Unknown(), SurfaceC: Unknown(), HumidityPct: d.HumidityPct, RainMM: d.RainMM, WindMS: d.WindMS}
		h.check(faults, path, i)
		for _, v := range []struct {
			field string
			c     float64
		}{{"low", d.LowC}, {"high", d.HighC}} {
			if known(v.c) && !inAir(v.c) {
				note(finding.ErrImpossible, i, v.field, text(v.c), "from -45 to 60 degC")
			}
		}
		if d.LowC > d.HighC {
			note(finding.ErrImpossible, i, "low", text(d.LowC), "no higher than the high, "+text(d.HighC)+" degC")
		}
	}
}

// bend is a turning point of the wave.
type bend struct {
	at time.Time
	c  float64
}

// wave gives low and high of each day, with a day more at both ends.
func wave(days []Day, loc *time.Location, lowHour, highHour float64) []bend {
	var out []bend
	add := func(date quantity.Date, d Day) {
		zero := time.Date(date.Year(), date.Month(), date.Day(), 0, 0, 0, 0, time.UTC).Add(-standard(date.Year(), loc)) // midnight of standard time
		out = append(out, bend{zero.Add(hours(lowHour)), d.LowC}, bend{zero.Add(hours(highHour)), d.HighC})
	}
	first, last := days[0], days[len(days)-1]
	add(first.Date.AddDays(-1), first)
	for _, d := range days {
		add(d.Date, d)
	}
	add(last.Date.AddDays(1), last)
	return out
}

// standard is the offset of standard time.
func standard(year int, loc *time.Location) time.Duration {
	_, january := time.Date(year, time.January, 1, 12, 0, 0, 0, loc).Zone()
	_, july := time.Date(year, time.July, 1, 12, 0, 0, 0, loc).Zone()
	return time.Duration(min(january, july)) * time.Second
}

func hours(n float64) time.Duration { return time.Duration(n * float64(time.Hour)) }

// along is the air at a time, and the bends from the one before it.
func along(bends []bend, at time.Time) (float64, []bend) {
	for len(bends) > 2 && !at.Before(bends[1].at) {
		bends = bends[1:]
	}
	from, to := bends[0], bends[1]
	share := float64(at.Sub(from.at)) / float64(to.at.Sub(from.at))
	return from.c + float64((to.c-from.c)*(1-math.Cos(math.Pi*share))/2), bends
}

// midnight is the first instant of the day in loc that is on a full hour. Some clocks skip midnight, and some show it twice.
func midnight(d quantity.Date, loc *time.Location) time.Time {
	at := time.Date(d.Year(), d.Month(), d.Day(), 0, 0, 0, 0, loc)
	for day := onDate(at); day.Before(d); day = onDate(at) {
		at = at.Add(time.Hour)
	}
	for onDate(at.Add(-time.Hour)) == d {
		at = at.Add(-time.Hour)
	}
	return at
}

// onDate is the date that the clock of the time's place shows.
func onDate(t time.Time) quantity.Date {
	y, m, day := t.Date()
	d, err := quantity.NewDate(y, int(m), day)
	if err != nil {
		return quantity.Date{} // outside the years 1 to 9999
	}
	return d
}
