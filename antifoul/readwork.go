package antifoul

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// weekdays are the words of work.days; all stands for the seven.
var weekdays = []string{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}

// mostDays bounds the lists of single days.
const mostDays = 400

// readWork reads the section work and the forecast that it names, which lies beside the boat file or below it.
func readWork(b *tables.Book, fsys fs.FS, folder string, r *entry.Row, zone *time.Location) (calendar.Days, calendar.Conditions) {
	d := calendar.Days{
		Launch: r.Date("launch"), LaunchOpen: r.YesNo("launch_open"),
		Start: readClock(r, "from"), Stop: readClock(r, "until"),
		Free: readDates(r, "free"), Taken: readDates(r, "taken"),
		SetUp: entry.Amount[quantity.Duration](r, "set_up"), Reserve: entry.Amount[quantity.Duration](r, "reserve"),
		Shift: r.Date("shift"), Slings: r.YesNo("slings"), Roof: r.YesNo("roof"),
	}
	d.DoneBy = r.Word("done_by", tables.ByOwner, tables.ByYard)
	d.Hands, _ = r.Int("hands", 1, 100)
	for _, w := range r.Words("days", weekdays...) {
		d.Weekdays = append(d.Weekdays, time.Weekday(slices.Index(weekdays, w)))
	}
	if r.Has("from") != r.Has("until") {
		r.Fault(finding.ErrMissing, "from", "", "from and until together")
	}
	for _, k := range sections(r, "other", mostSections) {
		k.Need("what it is, and its hours of one hand, \"6 h\"", "name", "hours")
		o := calendar.Other{Name: k.Text("name"), On: k.Date("on"), After: k.YesNo("after_paint")}
		if h := entry.Amount[quantity.Duration](k, "hours"); h.Given() {
			o.Hours = h.Float(quantity.Hour)
		}
		d.Other = append(d.Other, o)
		k.Close()
	}
	c := calendar.Conditions{Zone: zone}
	if name := sheetName(r, "forecast"); name != "" {
		in := zone
		if in == nil {
			in = time.UTC
		}
		forecast, err := weather.ReadCSV(b, fsys, path.Join(folder, name), in)
		if faults, ok := errors.AsType[finding.Faults](err); ok {
			r.Note(faults)
		}
		c.Forecast = forecast
	}
	r.Close()
	return d, c
}

// readClock reads a time of day, in minutes after midnight; 0 when not given.
func readClock(r *entry.Row, key string) int {
	s := r.Text(key)
	if s == "" {
		return 0
	}
	m, ok := calendar.ParseClock(s)
	if !ok {
		r.Fault(finding.ErrValue, key, entry.Describe(s), "a time of day, \"08:30\"")
	}
	return m
}

// readDates reads a list of days. One that could not be read stays in the list as none.
func readDates(r *entry.Row, key string) []quantity.Date {
	if !r.Has(key) {
		return nil
	}
	list, ok := r.Raw(key).([]any)
	if !ok || len(list) > mostDays {
		r.Fault(finding.ErrValue, key, entry.Describe(r.Raw(key)), fmt.Sprintf("a list of at most %d days, [2027-05-06, 2027-05-07]", mostDays))
		return nil
	}
	var out []quantity.Date
	for i, v := range list {
		var d quantity.Date
		if err := d.UnmarshalTOML(v); err != nil {
			r.Fault(finding.ErrValue, key, strings.TrimSpace(fmt.Sprintf("%s at place %d", entry.Describe(v), i+1)), "days, [2027-05-06, 2027-05-07]")
		}
		out = append(out, d)
	}
	return out
}
