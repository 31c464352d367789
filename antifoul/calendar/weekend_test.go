package calendar_test

import (
	"fmt"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The weekend case: a two-pack coat whose next may go on from 16 h after its end to 24 h after its beginning, at the stated 20 degC, and
// work on Saturdays and Sundays. Common practice; windows by hand. 17 April 2027 is a Saturday.
func weekendCoats(tb testing.TB, n int) []calendar.Task {
	tb.Helper()
	l := calendar.Layer{Coat: weather.Coat{Coating: coating(tb, book(tb, ""), "epoxy-barrier")}, Opens: h(16), Closes: h(24), Again: 2}
	tasks := make([]calendar.Task, n)
	for i := range tasks {
		tasks[i] = calendar.Task{Name: fmt.Sprintf("coat %d", i+1), Hours: 2, Layers: []calendar.Layer{l}}
	}
	return tasks
}

func weekendDays() calendar.Days {
	return calendar.Days{Weekdays: []time.Weekday{time.Saturday, time.Sunday}, Start: 8 * 60, Stop: 18 * 60, SetUp: h(0)}
}

// fairFrom is weather at 20 degC that rains on the Saturday before an hour and on the Sunday before and after its hours.
func fairFrom(tb testing.TB, saturday, sunday, until int) weather.Forecast {
	tb.Helper()
	return run(on(tb, time.UTC, "2027-04-17 00:00"), 24*10, func(_ int, at time.Time) weather.Hour {
		w := fair()
		switch day, hour := at.Day(), at.Hour(); {
		case day == 17 && hour < saturday, day == 18 && hour >= 7 && (hour < sunday || hour >= until):
			w.RainMM = 1
		}
		return w
	})
}

// The first coat begins on Saturday at S and ends at S + 2 h, so the window is S + 18 h to S + 24 h: on Sunday from S − 6 to S o'clock, the
// moment of the close too. Rain lets Saturday begin at S and Sunday at U, so that two coats fit where U ≤ S, and U + 2 ≤ 18.
func TestTwoCoatsInAWeekend(t *testing.T) {
	b := book(t, "")
	for _, c := range []struct {
		saturday, sunday int
		again            int
	}{
		{8, 8, 0},   // 8 + 24 is Sunday at eight: on the limit
		{9, 9, 0},   // on
		{10, 9, 0},  // an hour inside
		{9, 10, 0},  // Saturday may still be begun at ten
		{10, 12, 0}, // and at noon
		{8, 16, 1},  // Saturday would begin at 16:00 and be rained on: see below
	} {
		f := fairFrom(t, c.saturday, c.sunday, 24)
		if c.again == 1 {
			// Six hours without rain after the end are asked for: of a coat at 16:00 to 18:00, until midnight. Rain at 20:00 forbids it.
			f = run(on(t, time.UTC, "2027-04-17 00:00"), 24*10, func(_ int, at time.Time) weather.Hour {
				w := fair()
				if at.Day() == 17 && at.Hour() >= 20 || at.Day() == 18 && at.Hour() >= 7 && at.Hour() < 16 {
					w.RainMM = 1
				}
				return w
			})
		}
		d := weekendDays()
		d.Launch = day(t, "2027-04-24") // there is one weekend only
		p := arrange(t, b, weekendCoats(t, 2), d, "2027-04-17", calendar.Conditions{Zone: time.UTC, Forecast: f})
		if !p.Fits || p.Again != c.again || p.Measure != 0 {
			t.Errorf("Saturday from %d, Sunday from %d: %d abraded, %d measured, want %d, 0", c.saturday, c.sunday, p.Again, p.Measure, c.again)
		}
		if want := 2; p.Days != want {
			t.Errorf("Saturday from %d, Sunday from %d: %d days, want %d", c.saturday, c.sunday, p.Days, want)
		}
	}
}

// An appointment on each Saturday and Sunday, and a shift that begins at S and ends two hours later: the coats begin at S on both days.
// Exactly 24 h lie between. With a window that closes after 23 h they do not fit, with one that opens after 22 h they do, after 23 h not.
func TestTheEndsOfTheWindow(t *testing.T) {
	b := book(t, "")
	for _, c := range []struct {
		opens, closes int64
		again         int
		second        string
	}{
		{16, 24, 0, "2027-04-18 10:00"},
		{16, 25, 0, "2027-04-18 10:00"},
		{16, 23, 1, ""},
		{22, 24, 0, "2027-04-18 10:00"}, // on the opening: 12:00 to 10:00
		{21, 24, 0, "2027-04-18 10:00"},
		{23, 24, 1, ""}, // opens at 11:00 on Sunday, closes at 10:00
	} {
		tasks := weekendCoats(t, 2)
		for i := range tasks {
			tasks[i].Layers[0].Opens, tasks[i].Layers[0].Closes = h(c.opens), h(c.closes)
		}
		d := weekendDays()
		d.Start, d.Stop = 10*60, 12*60
		p := arrange(t, b, tasks, d, "2027-04-17", calendar.Conditions{Zone: time.UTC})
		if p.Again != c.again {
			t.Errorf("opens %d, closes %d: %d abraded, want %d", c.opens, c.closes, p.Again, c.again)
			continue
		}
		if c.second != "" && !p.Items[1].Start().Equal(on(t, time.UTC, c.second)) {
			t.Errorf("opens %d, closes %d: the second begins %s, want %s", c.opens, c.closes, p.Items[1].Start(), c.second)
		}
	}
}

// In the cold the same window opens later and stays open longer, in the heat it closes sooner. The slow hand at 10 degC, of 50 to
// 60 kJ/mol, passes 1/2.3854 of an hour: 16 h take 38.2 h. At 30 degC the fast one passes 2.2525: 24 h are over after 10.65.
func TestHeatAndColdMoveTheWindow(t *testing.T) {
	b := book(t, "")
	for _, c := range []struct {
		degC  int64
		again int
	}{{20, 0}, {10, 1}, {30, 1}} {
		d := weekendDays()
		d.Launch = day(t, "2027-04-26") // within two weekends
		p := arrange(t, b, weekendCoats(t, 2), d, "2027-04-17", calendar.Conditions{Zone: time.UTC, Usual: degC(c.degC)})
		if p.Again != c.again || !p.Fits {
			t.Errorf("%d degC: %d abraded, fits %t, want %d", c.degC, p.Again, p.Fits, c.again)
		}
	}
}

func TestAWeekLaterItIsAbraded(t *testing.T) {
	b := book(t, "")
	d := weekendDays()
	d.Taken = []quantity.Date{day(t, "2027-04-18"), day(t, "2027-04-25")} // two Saturdays are left
	d.Launch = day(t, "2027-04-30")
	p := arrange(t, b, weekendCoats(t, 2), d, "2027-04-17", calendar.Conditions{Zone: time.UTC})
	if !p.Fits || p.Again != 1 || p.Days != 2 || len(p.Items) != 3 {
		t.Fatalf("fits %t, %d abraded, %d days, %d items; want one abrading on two days", p.Fits, p.Again, p.Days, len(p.Items))
	}
	abrade, second := p.Items[1], p.Items[2]
	if !abrade.Again || abrade.Task != 1 || abrade.End().Sub(abrade.Start()) != 2*time.Hour || second.Again || second.Start().Before(abrade.End()) {
		t.Errorf("the second coat: abraded %+v, put on %+v", abrade, second)
	}
	if at := on(t, time.UTC, "2027-04-24 08:00"); abrade.Start().Before(at) {
		t.Errorf("abraded %s, want a week later", abrade.Start())
	}
	var told finding.Finding
	for _, f := range p.Findings {
		if f.Rule == calendar.RuleNoFreeHour {
			told = f
		}
	}
	if told.About != "coat 2" || told.Against != "coat 1" || len(told.Basis) == 0 && told.Verdict == 0 {
		t.Errorf("what is told of it: %+v", told)
	}
}

// Three coats, each within 24 h of the one before, over two weekends of two days: one window at least is missed, and no more.
func TestThreeCoatsOverTwoWeekends(t *testing.T) {
	b := book(t, "")
	p := arrange(t, b, weekendCoats(t, 3), weekendDays(), "2027-04-17", calendar.Conditions{Zone: time.UTC})
	if !p.Fits || p.Again != 1 || p.Days != 3 {
		t.Fatalf("fits %t, %d abraded, %d days; want 1, 3", p.Fits, p.Again, p.Days)
	}
	last := p.Items[len(p.Items)-1]
	if d := last.Start(); d.Before(on(t, time.UTC, "2027-04-24 00:00")) || d.After(on(t, time.UTC, "2027-04-26 00:00")) {
		t.Errorf("the third goes on %s, want the second weekend", d)
	}
}

// A launch that is more than a year away presses nobody: she is ready for it. Three coats are done within two weekends.
func TestALaunchYearsAway(t *testing.T) {
	b := book(t, "")
	for _, launch := range []string{"2028-04-16", "2028-04-17", "2028-04-18", "2028-04-19", "2030-04-17"} {
		d := weekendDays()
		d.Launch, d.Reserve = day(t, launch), h(48)
		if p := arrange(t, b, weekendCoats(t, 3), d, "2027-04-17", calendar.Conditions{Zone: time.UTC}); !p.Fits || !p.Reserve || p.Again != 1 {
			t.Errorf("launch %s: fits %t, reserve %t, %d abraded", launch, p.Fits, p.Reserve, p.Again)
		}
	}
	// A film that may stand for a hundred days does not wait for a launch in three years.
	tasks := weekendCoats(t, 1)
	tasks[0].Layers[0].Stands = h(24 * 100)
	d := weekendDays()
	d.Launch = day(t, "2030-04-17")
	if p := arrange(t, b, tasks, d, "2027-04-17", calendar.Conditions{Zone: time.UTC}); p.Fits {
		t.Errorf("a film that may stand for a hundred days stands for three years")
	}
}
