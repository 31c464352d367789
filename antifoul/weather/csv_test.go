package weather_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func read(text string, loc *time.Location) (weather.Forecast, error) {
	return weather.ReadCSV(tables.Default(), fstest.MapFS{"yard.csv": {Data: []byte(text)}}, "yard.csv", loc)
}

func TestSheetOfHours(t *testing.T) {
	copenhagen := zone(t, "Europe/Copenhagen")
	for name, text := range map[string]string{
		"units in the header": "time,air [degC],humidity [%],rain [mm],wind [m/s],surface [degC]\n2027-04-10 09:00,12.5,70,0.2,4,\n2027-04-10 10:00,14,,,,11\n",
		"units in the cells":  "time,air,humidity,rain,wind,surface\n2027-04-10T09:00,54.5 degF,70 %,0.2 mm,4 m/s,\n2027-04-10T10:00,14 degC,,,,11 degC\n",
		"with an offset":      "time;air [degC];humidity [%];rain [mm];wind [m/s];surface [degC]\n2027-04-10T09:00+02:00;12.5;70;0.2;4;\n2027-04-10T10:00:00+02:00;14;;;;11\n",
	} {
		f, err := read(text, copenhagen)
		if err != nil || len(f.Hours) != 2 {
			t.Errorf("%s: %d hours, %v", name, len(f.Hours), err)
			continue
		}
		one, two := f.Hours[0], f.Hours[1]
		if want := time.Date(2027, 4, 10, 7, 0, 0, 0, time.UTC); !one.At.Equal(want) || one.At.Location() != copenhagen || !two.At.Equal(want.Add(time.Hour)) {
			t.Errorf("%s: at %v and %v", name, one.At, two.At)
		}
		if math.Abs(one.AirC-12.5) > 1e-9 || one.HumidityPct != 70 || math.Abs(one.RainMM-0.2) > 1e-12 || one.WindMS != 4 || !math.IsNaN(one.SurfaceC) {
			t.Errorf("%s: %+v", name, one)
		}
		if two.AirC != 14 || two.SurfaceC != 11 || !math.IsNaN(two.RainMM) || !math.IsNaN(two.WindMS) {
			t.Errorf("%s: %+v", name, two)
		}
		// The humidity that is missing is that of a dew point of 12.5 degC, the lowest air of the day, at 14: by the WMO's coefficients
		// exp(17.62 × (12.5 ÷ 255.62 − 14 ÷ 257.12)) = 90.686 %.
		if !(math.Abs(two.HumidityPct-90.686) <= 0.001) || len(f.Notes) != 1 || told(f.Notes, weather.RuleDewFromLow, "hours") != 1 {
			t.Errorf("%s: filled with %g, notes %v", name, two.HumidityPct, f.Notes)
		}
		spoken(t, tables.Default(), f.Notes)
	}
	// Imperial units: 20 kn are 10.288889 m/s, 0.1 in are 2.54 mm. The dew point of air of 15 degC and 80 % is 11.58 degC.
	f, err := read("time,air [degF],dew_point [degC],rain [in],wind [kn]\n2027-04-10 09:00,59,11.58,0.1,20\n", copenhagen)
	if err != nil {
		t.Fatal(err)
	}
	if h := f.Hours[0]; math.Abs(h.AirC-15) > 1e-9 || math.Abs(h.HumidityPct-80) > 0.05 || math.Abs(h.RainMM-2.54) > 1e-9 || math.Abs(h.WindMS-10.288889) > 1e-6 || len(f.Notes) != 0 {
		t.Errorf("%+v, %v", h, f.Notes)
	}
}

// The clock of Copenhagen goes from 02:00 to 03:00 on 28 March 2027, and from 03:00 back to 02:00 on 31 October; that of New York from 02:00 on
// 14 March, and from 02:00 back to 01:00 on 7 November.
func TestClockChanges(t *testing.T) {
	for _, x := range []struct {
		zone, date string
		times      []string
		offsets    []int // hours
	}{
		{"Europe/Copenhagen", "2027-03-28", []string{"00:00", "01:00", "03:00", "04:00"}, []int{1, 1, 2, 2}},
		{"Europe/Copenhagen", "2027-10-31", []string{"01:00", "02:00", "02:00", "03:00"}, []int{2, 2, 1, 1}},
		{"America/New_York", "2027-03-14", []string{"00:00", "01:00", "03:00", "04:00"}, []int{-5, -5, -4, -4}},
		{"America/New_York", "2027-11-07", []string{"00:00", "01:00", "01:00", "02:00"}, []int{-4, -4, -5, -5}},
	} {
		loc := zone(t, x.zone)
		var wall, offset strings.Builder
		wall.WriteString("time,air [degC]\n")
		offset.WriteString("time,air [degC]\n")
		for i, c := range x.times {
			fmt.Fprintf(&wall, "%s %s,10\n", x.date, c)
			fmt.Fprintf(&offset, "%sT%s:00%+03d:00,10\n", x.date, c, x.offsets[i])
		}
		for _, text := range []string{wall.String(), offset.String()} {
			f, err := read(text, loc)
			if err != nil || len(f.Hours) != len(x.times) {
				t.Errorf("%s, %s: %v", x.zone, x.date, err)
				continue
			}
			for i, h := range f.Hours {
				if _, got := h.At.Zone(); got != x.offsets[i]*3600 || h.At.Format("15:04") != x.times[i] {
					t.Errorf("%s, %s: hour %d at %v", x.zone, x.date, i, h.At)
				}
			}
		}
		// A day by its low and high has as many hours as its clock shows.
		d, err := quantity.ParseDate(x.date)
		if err != nil {
			t.Fatal(err)
		}
		want := 25
		if d.Month() == time.March {
			want = 23
		}
		f, err := weather.Hourly(tables.Default(), []weather.Day{{Date: d, LowC: 5, HighC: 15, HumidityPct: 60}}, loc)
		if err != nil || len(f.Hours) != want {
			t.Fatalf("%s, %s: %d hours, %v", x.zone, x.date, len(f.Hours), err)
		}
		first, last := f.Hours[0].At, f.Hours[want-1].At
		if first.Format("2006-01-02 15:04") != x.date+" 00:00" || last.Format("2006-01-02 15:04") != x.date+" 23:00" {
			t.Errorf("%s, %s: from %v to %v", x.zone, x.date, first, last)
		}
	}
	// An hour that the clock skips, and one that comes twice where it is shown once.
	_, err := read("time,air [degC]\n2027-03-28 01:00,10\n2027-03-28 02:00,10\n2027-03-28 03:00,10\n2027-03-28 03:00,10\n", zone(t, "Europe/Copenhagen"))
	faulty(t, err, "line 3.time: impossible", "line 5.time: given twice")
}

// faulty wants exactly these faults, each known by how it begins, all of the file yard.csv.
func faulty(tb testing.TB, err error, want ...string) {
	tb.Helper()
	fs, ok := errors.AsType[finding.Faults](err)
	if !ok || len(fs) != len(want) {
		tb.Errorf("faults:\n%v\nwant %q", err, want)
		return
	}
	for i, f := range fs {
		if text := f.Error(); !strings.HasPrefix(text, "yard.csv: "+want[i]) || f.Want == "" {
			tb.Errorf("fault %d is %s\nwant %s", i, text, want[i])
		}
	}
}

func TestFaultsOfHours(t *testing.T) {
	utc := time.UTC
	const head = "time,air [degC],humidity [%],rain [mm],wind [m/s],surface [degC],dew_point [degC]\n"
	for name, x := range map[string]struct {
		text string
		want []string
	}{
		"mixed offsets":                        {head + "2027-04-10 09:00,10\n2027-04-10T10:00Z,10\n2027-04-10T11:00Z,10\n", []string{"line 3.time: not accepted"}},
		"another offset":                       {head + "2027-04-10T09:00+02:00,10\n2027-04-10T10:00+02:00,10\n", []string{"line 2.time: not accepted", "line 3.time: not accepted"}},
		"a gap, once":                          {head + "2027-04-10 09:00,10\n2027-04-10 13:00,10\n2027-04-10 14:00,10\n2027-04-10 15:00,10\n", []string{"line 3.time: missing"}},
		"a gap":                                {head + "2027-04-10 09:00,10\n2027-04-10 13:00,10\n", []string{"line 3.time: missing: read nothing from 2027-04-10 10:00 +00:00 to 2027-04-10 13:00 +00:00"}},
		"twice":                                {head + "2027-04-10 09:00,10\n2027-04-10 10:00,10\n2027-04-10 10:00,11\n2027-04-10 11:00,11\n", []string{"line 4.time: given twice"}},
		"out of order":                         {head + "2027-04-10 09:00,10\n2027-04-10 08:00,10\n2027-04-10 10:00,11\n", []string{"line 3.time: impossible"}},
		"late, then twice":                     {head + "2027-04-10 09:00,10\n2027-04-10 08:00,10\n2027-04-10 10:00,11\n2027-04-10 10:00,11\n", []string{"line 3.time: impossible", "line 5.time: given twice"}},
		"no full hour":                         {head + "2027-04-10 09:30,10\n2027-04-10 10:30,10\n", []string{"line 2.time: not accepted", "line 3.time: not accepted"}},
		"half an hour on":                      {head + "2027-04-10 09:00,10\n2027-04-10 09:30,10\n", []string{"line 3.time: impossible", "line 3.time: not accepted"}},
		"half an hour, and an hour from there": {head + "2027-04-10 09:00,10\n2027-04-10 09:30,10\n2027-04-10 10:30,10\n", []string{"line 3.time: impossible", "line 3.time: not accepted", "line 4.time: not accepted"}},
		"no time at all":                       {head + "soon,10\n10/04/2027 9:00,10\n1066-10-14 09:00,10\n", []string{"line 2.time: not accepted", "line 3.time: not accepted", "line 4.time: impossible"}},
		"what cannot be":                       {head + "2027-04-10 09:00,61,100.1,-0.1,-1,101,\n2027-04-10 10:00,-45.1,0,2001,121,-61,\n", []string{"line 2.air", "line 2.humidity", "line 2.rain", "line 2.surface", "line 2.wind", "line 3.air", "line 3.humidity", "line 3.rain", "line 3.surface", "line 3.wind"}},
		"dew over the air":                     {head + "2027-04-10 09:00,10,,,,,10.1\n2027-04-10 10:00,10,,,,,10\n", []string{"line 2.dew_point: impossible"}},
		"dew and humidity":                     {head + "2027-04-10 09:00,10,50,,,,5\n", []string{"line 2.dew_point: given twice"}},
		"no air":                               {head + "2027-04-10 09:00,10\n2027-04-10 10:00,,50\n", []string{"line 3.air: missing"}},
		"no air anywhere":                      {"time,rain [mm]\n2027-04-10 09:00,1\n2027-04-10 10:00,1\n", []string{"line 2.air: missing"}},
		"no unit":                              {"time,air\n2027-04-10 09:00,10\n", []string{"line 2.air: not accepted"}},
		"another column":                       {"time,air [degC],cloud\n2027-04-10 09:00,10,3\n2027-04-10 10:00,10,3\n", []string{"line 2.cloud: unknown key"}},
		"neither":                              {"air [degC]\n10\n", []string{"column time: missing"}},
		"both":                                 {"time,date,air [degC]\n2027-04-10 09:00,2027-04-10,10\n", []string{"column date: given twice"}},
		"nothing":                              {"time,air [degC]\n", []string{"hours: missing"}},
		"no file of text":                      {"", []string{"not readable"}},
	} {
		t.Run(name, func(t *testing.T) {
			f, err := read(x.text, utc)
			faulty(t, err, x.want...)
			if len(f.Hours) > 0 {
				t.Errorf("%d hours with a fault", len(f.Hours))
			}
		})
	}
	if _, err := read(head+"2027-04-10 09:00,10\n", nil); err == nil {
		t.Error("no place")
	}
	_, err := weather.ReadCSV(&tables.Book{}, fstest.MapFS{"yard.csv": {Data: []byte(head + "2027-04-10 09:00,99\n")}}, "yard.csv", utc)
	if err == nil || !strings.Contains(err.Error(), "wmo-no-8-b") || !strings.Contains(err.Error(), "line 2.air") {
		t.Errorf("a book without coefficients, and too hot: %v", err)
	}
	for _, edge := range []string{"-45,100,0,0,-60", "60,0.1,2000,120,100"} {
		if _, err := read(head+"2027-04-10 09:00,"+edge+"\n", utc); err != nil {
			t.Errorf("on the limits: %v", err)
		}
	}
}

// Years from 1900 to 2200 are taken, of hours and of days.
func TestYearsTaken(t *testing.T) {
	for day, taken := range map[string]bool{"1899-12-31": false, "1900-01-01": true, "2200-12-31": true, "2201-01-01": false} {
		for _, sheet := range []string{"time,air [degC],humidity [%]\n" + day + " 09:00,10,50\n", "date,low [degC],high [degC],humidity [%]\n" + day + ",5,10,50\n"} {
			if _, err := read(sheet, time.UTC); (err == nil) != taken {
				t.Errorf("%s: %v", sheet, err)
			}
		}
	}
}

func TestFaultsOfDays(t *testing.T) {
	const head = "date,low [degC],high [degC],humidity [%],rain [mm],wind [m/s]\n"
	for name, x := range map[string]struct {
		text string
		want []string
	}{
		"low over high":  {head + "2027-04-10,10.1,10\n2027-04-11,10,10\n", []string{"line 2.low: impossible"}},
		"a gap":          {head + "2027-04-10,5,10\n2027-04-13,5,10\n", []string{"line 3.date: missing: read nothing from 2027-04-11 to 2027-04-12"}},
		"a gap, once":    {head + "2027-04-10,5,10\n2027-04-13,5,10\n2027-04-14,5,10\n2027-04-15,5,10\n", []string{"line 3.date: missing"}},
		"twice":          {head + "2027-04-10,5,10\n2027-04-11,5,10\n2027-04-10,5,10\n2027-04-12,5,10\n", []string{"line 4.date: given twice"}},
		"out of order":   {head + "2027-04-10,5,10\n2027-04-09,5,10\n", []string{"line 3.date: impossible"}},
		"no day":         {head + "2027-02-30,5,10\n2027-03-01,5,10\n9999-12-31,5,10\n", []string{"line 2.date: not accepted", "line 4.date: impossible"}},
		"cells missing":  {head + "2027-04-10,5,\n2027-04-11,,10\n", []string{"line 2.high: missing", "line 3.low: missing"}},
		"no day between": {head + "2027-04-10,5,10\n,5,10\n2027-04-12,5,10\n2027-04-13,5,10\n", []string{"line 3.date: missing"}},
		"no high":        {"date,low [degC]\n2027-04-10,5\n", []string{"line 2.high: missing"}},
		"what cannot be": {head + "2027-04-10,-46,61,101,-1,200\n", []string{"line 2.high", "line 2.humidity", "line 2.low", "line 2.rain", "line 2.wind"}},
		"of hours":       {"date,low [degC],high [degC],surface [degC]\n2027-04-10,5,10,7\n", []string{"line 2.surface: unknown key"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := read(x.text, time.UTC)
			faulty(t, err, x.want...)
		})
	}
	_, err := weather.Hourly(&tables.Book{}, []weather.Day{{LowC: weather.Unknown(), HighC: weather.Unknown()}}, nil)
	for _, want := range []string{"days[0].date", "days[0].low", "days[0].high"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("no word of %s in %v", want, err)
		}
	}
	_, err = weather.Hourly(&tables.Book{}, []weather.Day{{Date: date(t, 2027, 4, 10), LowC: 5, HighC: 10, HumidityPct: 60}}, nil)
	for _, want := range []string{"location", "day-low-hour", "day-high-hour", "wmo-no-8-c"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("no word of %s in %v", want, err)
		}
	}
	late := own(t, "[[factor]]\nkey = \"day-low-hour\"\nbasis = \"own table\"\nsource = \"a record\"\nvalue = 15\n")
	if _, err := weather.Hourly(late, []weather.Day{{Date: date(t, 2027, 4, 10), LowC: 5, HighC: 10, HumidityPct: 60}}, time.UTC); err == nil {
		t.Error("coldest after it is warmest")
	}
	// On Lord Howe Island summer time is half an hour: 3 October 2027 has 23 and a half.
	if _, err := weather.Hourly(tables.Default(), []weather.Day{{Date: date(t, 2027, 10, 3), LowC: 5, HighC: 10, HumidityPct: 60}}, zone(t, "Australia/Lord_Howe")); err == nil {
		t.Error("a clock that changes by half an hour")
	}
}

func TestFaultsOfGoValues(t *testing.T) {
	hours := air(10, 10, 10, 10, 10)
	hours[1].At = time.Time{}
	hours[3].At = hours[2].At
	hours[4].At = hours[4].At.Add(time.Hour)
	hours[0].HumidityPct, hours[2].RainMM, hours[4].SurfaceC = 0, -1, 101
	hours[2].WindMS = math.Inf(1)
	want := []string{"hours[1].at", "hours[3].at", "hours[4].at", "hours[0].humidity", "hours[2].rain", "hours[2].wind", "hours[4].surface"}
	fs := weather.Forecast{Hours: hours}.Check()
	if len(fs) != len(want) {
		t.Fatalf("%v", fs)
	}
	for i, f := range fs {
		if f.Key != want[i] || f.Want == "" {
			t.Errorf("fault %d: %v, want %s", i, f, want[i])
		}
	}
	if fs := (weather.Forecast{Hours: air(10, 20)}).Check(); fs != nil {
		t.Errorf("good hours: %v", fs)
	}
}

// Midnights join without a jump, whatever the days; no hour is colder or warmer than its neighbours' lows and highs; dew never passes the air.
func TestDaysJoin(t *testing.T) {
	var days []weather.Day
	for i, v := range [][2]float64{{5, 15}, {-3, 2}, {12, 12}, {0, 25}, {-10, -9}} {
		days = append(days, weather.Day{Date: date(t, 2027, 3, 26+i), LowC: v[0], HighC: v[1], HumidityPct: weather.Unknown(), RainMM: float64(i), WindMS: 3}) // the clock changes on the third
	}
	f, err := weather.Hourly(tables.Default(), days, zone(t, "Europe/Copenhagen"))
	if err != nil || len(f.Hours) != 5*24-1 {
		t.Fatal(len(f.Hours), err)
	}
	// Half a wave over at least eight hours moves by π ÷ 16 of its height in an hour at most: 0.197 × 35 K between 25 and -10 degC in sixteen hours is less than
	// 0.197 × 25 K between 0 and 25 in eight.
	for i, h := range f.Hours {
		if i > 0 && math.Abs(h.AirC-f.Hours[i-1].AirC) > 0.197*25 {
			t.Errorf("%v: from %g to %g", h.At, f.Hours[i-1].AirC, h.AirC)
		}
		if h.HumidityPct > 100 || h.HumidityPct <= 0 {
			t.Errorf("%v: %g %%", h.At, h.HumidityPct)
		}
		if day := h.At.Day() - 26; h.RainMM != float64(day) || h.WindMS != 3 || !math.IsNaN(h.SurfaceC) {
			t.Errorf("%v: %+v", h.At, h)
		}
	}
	// In summer time the low comes at seven by the clock, and the high at three.
	by := func(day, hour int) float64 {
		for _, h := range f.Hours {
			if h.At.Day() == day && h.At.Hour() == hour {
				return h.AirC
			}
		}
		return weather.Unknown()
	}
	if by(27, 6) != -3 || by(27, 14) != 2 || by(29, 7) != 0 || by(29, 15) != 25 {
		t.Errorf("lows and highs at %g, %g; %g, %g", by(27, 6), by(27, 14), by(29, 7), by(29, 15))
	}
	// So it does in January at Sydney.
	f, err = weather.Hourly(tables.Default(), []weather.Day{{Date: date(t, 2027, 1, 26), LowC: 18, HighC: 27, HumidityPct: 60}}, zone(t, "Australia/Sydney"))
	if err != nil || f.Hours[7].AirC != 18 || f.Hours[15].AirC != 27 {
		t.Errorf("at Sydney %g at seven, %g at three; %v", f.Hours[7].AirC, f.Hours[15].AirC, err)
	}
	// The dew point of a day whose humidity is given holds all day: that of 10 degC and 70 % is 4.78 degC, so at the low of 5 degC the air holds
	// exp(17.62 × (4.78 ÷ 247.90 − 5 ÷ 248.12)) = 98.5 % and at the high of 15, exp(17.62 × (4.78 ÷ 247.90 − 15 ÷ 258.12)) = 50.4 %.
	f, err = weather.Hourly(tables.Default(), []weather.Day{{Date: date(t, 2027, 1, 26), LowC: 5, HighC: 15, HumidityPct: 70}}, time.UTC)
	if err != nil || math.Abs(f.Hours[6].HumidityPct-98.5) > 0.1 || math.Abs(f.Hours[14].HumidityPct-50.4) > 0.1 || f.Notes.Has(weather.RuleDewFromLow) {
		t.Errorf("at the low %g %%, at the high %g %%, %v %v", f.Hours[6].HumidityPct, f.Hours[14].HumidityPct, f.Notes, err)
	}
	spoken(t, tables.Default(), f.Notes)
	if f, err := weather.Hourly(tables.Default(), nil, time.UTC); err != nil || len(f.Hours)+len(f.Notes) != 0 {
		t.Errorf("no days: %v, %v", f, err)
	}
}

// The clock of Havana shows midnight twice on 7 November 2027, and skips it on 14 March: the day begins at its first hour.
func TestMidnightThatComesTwice(t *testing.T) {
	havana := zone(t, "America/Havana")
	for on, want := range map[[2]int]struct {
		hours int
		first string
	}{{11, 7}: {25, "00:00 -04:00"}, {3, 14}: {23, "01:00 -04:00"}} {
		f, err := weather.Hourly(tables.Default(), []weather.Day{{Date: date(t, 2027, on[0], on[1]), LowC: 20, HighC: 30, HumidityPct: 60}}, havana)
		if err != nil {
			t.Fatal(err)
		}
		if len(f.Hours) != want.hours || f.Hours[0].At.Format("15:04 -07:00") != want.first {
			t.Errorf("%v: %d hours, %v %v", on, len(f.Hours), f.Hours[0].At, err)
		}
	}
}
