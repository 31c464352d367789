package calendar_test

import (
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/quantity"
)

// Clocks of the zones change on these Sundays: in Copenhagen on 28 March at two to three and on 31 October 2027 at three to two, in
// New York on 14 March at two to three and on 7 November at two to one.
var changes = []struct {
	zone, saturday, sunday string
	shift                  time.Duration // by which the wall is ahead after it
}{
	{"Europe/Copenhagen", "2027-03-27", "2027-03-28", time.Hour},
	{"Europe/Copenhagen", "2027-10-30", "2027-10-31", -time.Hour},
	{"America/New_York", "2027-03-13", "2027-03-14", time.Hour},
	{"America/New_York", "2027-11-06", "2027-11-07", -time.Hour},
}

// On the day of the change the crew comes and goes by the clock on the wall.
func TestHoursOnTheWall(t *testing.T) {
	b := book(t, "")
	for _, c := range changes {
		loc := zone(t, c.zone)
		d := calendar.Days{Free: []quantity.Date{day(t, c.sunday)}, Start: 8 * 60, Stop: 17 * 60, SetUp: h(0)}
		p := arrange(t, b, []calendar.Task{{Name: "sand", Hours: 9}}, d, c.saturday, calendar.Conditions{Zone: loc})
		if len(p.Items) != 1 || !p.Items[0].Start().Equal(on(t, loc, c.sunday+" 08:00")) || !p.Items[0].End().Equal(on(t, loc, c.sunday+" 17:00")) {
			t.Errorf("%s, %s: %+v, want 08:00 to 17:00", c.zone, c.sunday, p.Items)
		}
		// A day from midnight to six has five hours in spring and seven in autumn; a job of eight then takes more or less of the next night.
		d.Free = append(d.Free, day(t, c.sunday).AddDays(1))
		d.Start, d.Stop = 0, 6*60
		p = arrange(t, b, []calendar.Task{{Name: "sand", Hours: 8}}, d, c.saturday, calendar.Conditions{Zone: loc})
		end := wall(day(t, c.sunday).AddDays(1), 2*60, loc).Add(c.shift)
		if len(p.Items) != 1 || !p.Items[0].End().Equal(end) || p.Days != 2 {
			t.Errorf("%s, %s: eight hours by night end %s, want %s", c.zone, c.sunday, p.Items[0].End(), end)
		}
	}
}

// Sixteen hours from the end of the coat on Saturday at 17:00 are over on Sunday at nine, but at ten in spring and at eight in autumn. A window
// of 24 h from its beginning at 16:00 is open until Sunday at 16:00, in spring until 17:00, in autumn until 15:00.
func TestAWindowIsElapsedTime(t *testing.T) {
	b := book(t, "")
	for _, c := range changes {
		loc := zone(t, c.zone)
		l := calendar.Layer{Coat: weather.Coat{Coating: coating(t, b, "epoxy-primer")}, Opens: h(16), Closes: h(24), Again: 1}
		tasks := []calendar.Task{
			{Name: "first", Hours: 1, Layers: []calendar.Layer{l}, On: day(t, c.saturday)},
			{Name: "second", Hours: 1, Layers: []calendar.Layer{l}},
		}
		d := calendar.Days{Free: []quantity.Date{day(t, c.saturday), day(t, c.sunday)}, Start: 6 * 60, Stop: 20 * 60, SetUp: h(0)}
		// Rain until 16:00 on Saturday: the first coat begins then.
		f := run(on(t, loc, c.saturday+" 00:00"), 72, func(_ int, at time.Time) weather.Hour {
			w := fair()
			if at.Before(on(t, loc, c.saturday+" 16:00")) {
				w.RainMM = 1
			}
			return w
		})
		p := arrange(t, b, tasks, d, c.saturday, calendar.Conditions{Zone: loc, Forecast: f})
		if len(p.Items) != 2 {
			t.Fatalf("%s: %d items", c.zone, len(p.Items))
		}
		second := p.Items[1]
		if want := on(t, loc, c.sunday+" 09:00").Add(c.shift); !second.Start().Equal(want) || !second.Opens.Equal(want) {
			t.Errorf("%s, %s: begins %s in a window open from %s, want %s", c.zone, c.sunday, second.Start(), second.Opens, want)
		}
		if want := on(t, loc, c.sunday+" 16:00").Add(c.shift); !second.Closes.Equal(want) {
			t.Errorf("%s, %s: closes %s, want %s", c.zone, c.sunday, second.Closes, want)
		}
	}
}
