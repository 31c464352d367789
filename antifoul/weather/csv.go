package weather

import (
	"errors"
	"io/fs"
	"slices"
	"time"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The columns of a sheet of hours and of a sheet of days.
var (
	hourColumns = []string{"time", "air", "humidity", "dew_point", "rain", "wind", "surface"}
	dayColumns  = []string{"date", "low", "high", "humidity", "rain", "wind"}
)

// ReadCSV reads the sheet of weather name of fsys, for a place whose clock is loc: a header, then one line for each hour, or for each day. A sheet has a column
// time or a column date. Units stand in the cells or, for all, in the header: "air [degC]".
//
//	time       start of the hour, "2027-04-10 09:00" by the clock of loc, or with an offset, "2027-04-10T09:00+02:00"; needed
//	air        temperature of the air, -45 to 60 degC; needed
//	humidity   relative, over 0 and at most 100 %; or
//	dew_point  no higher than the air
//	rain       in the hour
//	wind       speed
//	surface    temperature of the bottom, measured on its coldest part
//
//	date       the day, "2027-04-10"; needed
//	low, high  lowest and highest temperature of the air; needed
//	humidity   mean, relative
//	rain, wind as above, rain in the whole day
//
// Hours follow one another without a gap. An hour that the clock of loc shows twice, in autumn, stands there twice, the earlier first. Days become hours by
// Hourly. A cell that is empty is not known; humidity that is not known is filled: the dew point is then the lowest air of that day, and a note says so.
//
// The error is a finding.Faults with all faults at once, each with its line. See entry.Sheet for what a sheet may look like; it has at most 20,000 lines.
func ReadCSV(b *tables.Book, fsys fs.FS, name string, loc *time.Location) (Forecast, error) {
	var faults finding.Faults
	rows := entry.Sheet(fsys, name, &faults)
	has := func(c string) bool { return slices.ContainsFunc(rows, func(r *entry.Row) bool { return r.Has(c) }) }
	missing := func(c, want string) {
		faults = append(faults, finding.Fault{Kind: finding.ErrMissing, File: name, Key: c, Want: want})
	}
	byHour, byDay := has("time"), has("date")
	switch {
	case loc == nil:
		noPlace(&faults)
	case len(rows) == 0 && len(faults) == 0:
		missing("hours", "at least one line of time and air, or of date, low and high")
	case byHour && byDay:
		faults = append(faults, finding.Fault{Kind: finding.ErrDuplicate, File: name, Key: "column date", Got: "a column time beside it", Want: "one of the two"})
	case len(rows) > 0 && !byHour && !byDay:
		missing("column time", "a column time for a sheet of hours, or date for a sheet of days")
	case byHour:
		return readHours(b, name, rows, loc, need(rows, "time", "air"), &faults)
	case byDay:
		return readDays(b, name, rows, loc, need(rows, "date", "low", "high"), &faults)
	}
	return Forecast{}, faults.Err()
}

// need notes a needed column that no line has, once, and a needed cell that is missing, in its line.
func need(rows []*entry.Row, columns ...string) func(r *entry.Row) {
	var cells []string
	for _, c := range columns {
		if slices.ContainsFunc(rows, func(r *entry.Row) bool { return r.Has(c) }) {
			cells = append(cells, c)
			continue
		}
		rows[0].Fault(finding.ErrMissing, c, "", "a column "+c+" with a cell in each line")
	}
	return func(r *entry.Row) { r.Need("a cell in each line", cells...) }
}

func readHours(b *tables.Book, name string, rows []*entry.Row, loc *time.Location, cells func(*entry.Row), faults *finding.Faults) (Forecast, error) {
	k, err := magnus(b)
	note(faults, err)
	entry.Columns(rows, hourColumns...)
	path := func(i int) string { return rows[i].Path() + "." }
	dial := clockOf(loc)
	out := Forecast{Hours: make([]Hour, len(rows))}
	for i, r := range rows {
		cells(r)
		h := &out.Hours[i]
		*h = Hour{
			At: dial.read(r), AirC: celsius(r, "air"), SurfaceC: celsius(r, "surface"), HumidityPct: entry.Amount[quantity.Share](r, "humidity").Float(quantity.Percent),
			RainMM: entry.Amount[quantity.Length](r, "rain").Float(quantity.Millimetre), WindMS: entry.Amount[quantity.Speed](r, "wind").Float(quantity.MetrePerSecond),
		}
		dew := celsius(r, "dew_point")
		switch {
		case r.Has("humidity") && r.Has("dew_point"):
			r.Fault(finding.ErrDuplicate, "dew_point", "a humidity beside it", "one of the two")
		case dew > h.AirC || dew < 2*coldestC:
			r.Fault(finding.ErrImpossible, "dew_point", text(dew)+" degC", "no higher than the air, and from -90 degC")
		case known(dew) && inAir(h.AirC):
			h.HumidityPct = k.humidity(h.AirC, dew)
		}
	}
	checkOrder(faults, out.Hours, func(i int) string { return path(i) + "time" })
	for i := range out.Hours {
		out.Hours[i].check(faults, path, i)
	}
	if err := in(name, *faults); err != nil {
		return Forecast{}, err
	}
	out.Notes = dewNote(fillHumidity(k, out.Hours))
	return out, nil
}

func readDays(b *tables.Book, name string, rows []*entry.Row, loc *time.Location, cells func(*entry.Row), faults *finding.Faults) (Forecast, error) {
	entry.Columns(rows, dayColumns...)
	path := func(i int) string { return rows[i].Path() + "." }
	days := make([]Day, len(rows))
	for i, r := range rows {
		cells(r)
		days[i] = Day{
			LowC: celsius(r, "low"), HighC: celsius(r, "high"), HumidityPct: entry.Amount[quantity.Share](r, "humidity").Float(quantity.Percent),
			RainMM: entry.Amount[quantity.Length](r, "rain").Float(quantity.Millimetre), WindMS: entry.Amount[quantity.Speed](r, "wind").Float(quantity.MetrePerSecond),
		}
		if s := r.Text("date"); s != "" {
			d, err := quantity.ParseDate(s)
			if err != nil {
				r.Fault(finding.ErrValue, "date", entry.Describe(s), "a date such as 2027-04-10")
			}
			days[i].Date = d
		}
	}
	checkDays(faults, days, path)
	if err := in(name, *faults); err != nil {
		return Forecast{}, err
	}
	out, err := hourly(b, days, loc, path)
	if fs, ok := errors.AsType[finding.Faults](err); ok {
		return Forecast{}, in(name, fs)
	}
	return out, err
}

// in names the file in faults that do not name one yet.
func in(name string, faults finding.Faults) error { return faults.Under(name, "").Err() }

// celsius reads a temperature; Unknown where the cell is empty or not accepted.
func celsius(r *entry.Row, column string) float64 {
	return entry.Amount[quantity.Temperature](r, column).Float(quantity.Celsius)
}
