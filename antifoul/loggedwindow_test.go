package antifoul_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// dueOn is what is due on the part.
func dueOn(t *testing.T, l antifoul.Logged, part string) finding.Finding {
	t.Helper()
	i := slices.IndexFunc(l.Due, func(f finding.Finding) bool { return f.Against == part })
	if i < 0 {
		t.Fatalf("nothing is due on the %s", part)
	}
	return l.Due[i]
}

// at is the moment on 10 April as a report tells it.
func at(clock string) string {
	t, err := time.Parse("2006-01-02 15:04", "2027-04-10 "+clock)
	if err != nil {
		return err.Error()
	}
	return calendar.Moment(t)
}

// A window is reckoned at the surface that was noted with the coat below, else at its air, else at the temperature by which its times are stated; and is told so. The
// ablative opens after 4 h at 20 degC, and later in the cold.
func TestTemperatureOfAWindow(t *testing.T) {
	j := plannedJob(t, sheet)
	for _, c := range []struct {
		lines      []string
		metric, us string
		warm       bool
	}{
		{[]string{`surface = "20 degC"`}, "reckoned at the 20 °C (68.0 °F) noted with the coat below", "reckoned at the 68.0 °F (20 °C)", true},
		{[]string{`surface = "20 degC"`, `air = "10 degC"`}, "reckoned at the 20 °C (68.0 °F) noted with the coat below", "reckoned at the 68.0 °F (20 °C)", true},
		{[]string{`surface = "10 degC"`, `air = "20 degC"`}, "reckoned at the 10 °C (50.0 °F) noted with the coat below", "reckoned at the 50.0 °F (10 °C)", false},
		{[]string{`air = "10 degC"`}, "reckoned at the 10 °C (50.0 °F) noted with the coat below", "reckoned at the 50.0 °F (10 °C)", false},
		{nil, "reckoned at 20 °C (68.0 °F), since no temperature was noted", "reckoned at 68.0 °F (20 °C)", true},
	} {
		f := dueOn(t, logged(t, j, logHead+laid(append(c.lines, `layer = "signal"`)...), ""), "rudder")
		if said := j.Book.Say(f, quantity.Metric); !strings.Contains(said, c.metric) || strings.Contains(said, at("14:00")) != c.warm {
			t.Errorf("%v: %s", c.lines, said)
		}
		if said := j.Book.Say(f, quantity.US); !strings.Contains(said, c.us) {
			t.Errorf("%v: %s", c.lines, said)
		}
	}
}

// Hours of a forecast, each for itself: of the ablative's 4 h at 20 degC two pass until noon, none in five hours of hard frost, two after it: 19:00. Where the forecast begins later
// than the coat ended, what was noted with it is told, and a coat that ended within an hour goes by that hour.
func TestWindowHourByHour(t *testing.T) {
	j := plannedJob(t, sheet)
	const noted, foreseen = "noted with the coat below", "reckoned by the forecast"
	for _, c := range []struct {
		from, frost, until int // hours: the forecast begins, the frost, its end
		ended              string
		opens, told        string
	}{
		{0, 12, 17, "10:00", "19:00", foreseen},
		{10, 12, 17, "10:00", "19:00", foreseen},
		{10, 12, 17, "10:45", "19:45", foreseen},
		{11, 12, 17, "10:45", "19:45", noted},
		{0, 13, 18, "10:00", "19:00", foreseen},
		{0, 14, 19, "10:00", "14:00", foreseen},
		{0, 10, 15, "10:00", "19:00", foreseen},
	} {
		j.Boat.Weather.Forecast.Hours = nil
		for h := c.from; h < 24; h++ {
			x := weather.Hour{At: time.Date(2027, 4, 10, h, 0, 0, 0, time.UTC), AirC: 20}
			if h >= c.frost && h < c.until {
				x.AirC = -40
			}
			j.Boat.Weather.Forecast.Hours = append(j.Boat.Weather.Forecast.Hours, x)
		}
		f := dueOn(t, logged(t, j, logHead+laid(`layer = "signal"`, `surface = "20 degC"`, `ended = "2027-04-10 `+c.ended+`"`), ""), "rudder")
		if said := j.Book.Say(f, quantity.Metric); !strings.Contains(said, c.told) || factOf(f, "opens") != any(at(c.opens)) {
			t.Errorf("frost from %d to %d, forecast from %d, ended %s: %s", c.frost, c.until, c.from, c.ended, said)
		}
	}
}

// A window is followed for 400 days. One that closes later is told so, and so is one that does not close at all. In hard frost none opens, however little is asked for.
func TestWindowThatHardlyCloses(t *testing.T) {
	steel := rudderOf("steel", "bare")
	for _, c := range []struct{ boat, layer, coating, own, surface, opens, closes string }{
		{steel, "undercoat", "epoxy-primer", `overcoat_max = "9600 h"`, "20 degC", at("14:00"), "closes " + calendar.Moment(time.Date(2027, 4, 10, 10+9600, 0, 0, 0, time.UTC))},
		{steel, "undercoat", "epoxy-primer", `overcoat_max = "9601 h"`, "20 degC", at("14:00"), "closes in more than a year"},
		{steel, "undercoat", "epoxy-primer", `overcoat_max = "9600 h"`, "-40 degC", "at no temperature that was noted", "closes in more than a year"},
		{sheet, "signal", "ablative-cuprous-multi", `overcoat_min = "4 h"`, "20 degC", at("14:00"), "stays open"},
		{sheet, "signal", "ablative-cuprous-multi", `overcoat_min = "4 h"`, "-40 degC", "at no temperature that was noted", "stays open"},
		{sheet, "signal", "ablative-cuprous-multi", `overcoat_min = "0 h"`, "20 degC", at("10:00"), "stays open"},
		{sheet, "signal", "ablative-cuprous-multi", `overcoat_min = "0 h"`, "-40 degC", "at no temperature that was noted", "stays open"},
	} {
		j := billed(t, "[[coating]]\nkey = \""+c.coating+"\"\nbasis = \"own table\"\nsource = \"her log\"\n"+c.own+"\n", c.boat)
		f := dueOn(t, logged(t, j, logHead+laid(`layer = "`+c.layer+`"`, `coating = "`+c.coating+`"`, `surface = "`+c.surface+`"`), ""), "rudder")
		if factOf(f, "opens") != any(c.opens) || factOf(f, "closes") != any(c.closes) {
			t.Errorf("over %s of %s at %s: opens %v, %v", c.coating, c.own, c.surface, factOf(f, "opens"), factOf(f, "closes"))
		}
	}
}

// The window is that of the newest coat below on the same place of the same part: the one that was finished last, whichever was begun first.
func TestWindowOverTheNewestCoatBelow(t *testing.T) {
	j := plannedJob(t, sheet)
	coat := func(n, part, zone, begun, ended string) string {
		lines := []string{"coat = " + n, `part = "` + part + `"`, `surface = "20 degC"`, `begun = "2027-04-10 ` + begun + `"`, `ended = "2027-04-10 ` + ended + `"`}
		if zone != "" {
			lines = append(lines, `zones = ["`+zone+`"]`)
		}
		return laid(lines...)
	}
	for name, c := range map[string]struct {
		log   string
		hours string // since the coat below; none: there is none
	}{
		"one below":               {coat("1", "hull", "", "08:00", "09:00") + coat("2", "hull", "", "15:00", "16:00"), "6"},
		"the longer one is newer": {coat("1", "hull", "flat", "08:00", "11:00") + coat("1", "hull", "edges", "09:00", "10:00") + coat("2", "hull", "", "15:00", "16:00"), "4"},
		"the later one is newer":  {coat("1", "hull", "flat", "08:00", "09:00") + coat("1", "hull", "edges", "09:00", "10:00") + coat("2", "hull", "", "15:00", "16:00"), "5"},
		"of its own place":        {coat("1", "hull", "flat", "08:00", "09:00") + coat("1", "hull", "edges", "09:00", "10:00") + coat("2", "hull", "flat", "15:00", "16:00"), "6"},
		"of another place":        {coat("1", "hull", "flat", "08:00", "09:00") + coat("1", "hull", "edges", "15:00", "16:00"), ""},
		"of another part":         {coat("1", "hull", "", "08:00", "09:00") + coat("1", "rudder", "", "15:00", "16:00"), ""},
	} {
		coats := logged(t, j, logHead+c.log, "").Coats
		got := ""
		for _, f := range coats[len(coats)-1].Findings {
			if hours := factOf(f, "hours"); hours != nil {
				got = hours.(string)
			}
		}
		if got != c.hours {
			t.Errorf("%s: %s h after the coat below, want %s", name, got, c.hours)
		}
	}
}

// Where nothing lies yet on the place of the next layer, that is its first coat, however much lies beside it. The extra coat of the hull, which is next, goes on waterline and edges.
func TestNothingLiesOnThePlaceOfTheNextLayer(t *testing.T) {
	j := plannedJob(t, sheet)
	for zone, want := range map[string]finding.ID{"flat": antifoul.RuleLogNextFirst, "edges": antifoul.RuleLogNextOpen} {
		if f := dueOn(t, logged(t, j, coatsOf("hull working "+zone), ""), "hull"); f.Rule != want || factOf(f, "layer") != any("extra") {
			t.Errorf("after a coat on the %s: %s", zone, f.Rule)
		}
	}
}

// A window that was missed is told by the moment at which it closed, of a coat that went on and of one that is due.
func TestWhenAMissedWindowClosed(t *testing.T) {
	j := plannedJob(t, rudderOf("steel", "bare"))
	primer := logHead + laid(`layer = "undercoat"`, `coating = "epoxy-primer"`, `surface = "20 degC"`) // closes after 72 h
	late := logged(t, j, primer+laid(`layer = "undercoat"`, `coating = "epoxy-barrier"`, `begun = "2027-04-14 10:00"`, `ended = "2027-04-14 11:00"`), "").Coats[1].Findings
	due := dueOn(t, logged(t, j, primer, "2027-04-14 10:00"), "rudder")
	for rule, f := range map[finding.ID]finding.Finding{antifoul.RuleLogWindowLate: late[len(late)-1], antifoul.RuleLogAbradeNow: due} {
		if want := calendar.Moment(time.Date(2027, 4, 13, 10, 0, 0, 0, time.UTC)); f.Rule != rule || factOf(f, "closes") != any(want) || factOf(f, "reckoned") == nil {
			t.Errorf("%s, not %s: %v", f.Rule, rule, f.Facts)
		}
	}
}

// Of a coat it is told how many hours after the one below it went on, to a tenth.
func TestHoursBetweenCoats(t *testing.T) {
	j := plannedJob(t, sheet)
	for begun, want := range map[string]string{"14:00": "4", "14:20": "4.3", "14:30": "4.5"} {
		k := logged(t, j, logHead+laid(`layer = "signal"`, `surface = "20 degC"`)+laid(`begun = "2027-04-10 `+begun+`"`, `ended = "2027-04-10 16:00"`), "").Coats[1]
		i := slices.IndexFunc(k.Findings, func(f finding.Finding) bool { return f.Rule == antifoul.RuleLogWindowKept })
		if i < 0 || factOf(k.Findings[i], "hours") != any(want) {
			t.Errorf("begun %s: %s", begun, rulesOf(k.Findings))
		}
	}
}

// A paint that does not say how long it must stand before the launch asks for no wait, and one that does not say how long it may stand dry is never abraded for it.
func TestLaunchOverACoatThatSaysLittle(t *testing.T) {
	j := plannedJob(t, sheet)
	log := wholeRudder(t, j, nil) + laid(`layer = "undercoat"`, `coating = "etch-primer"`, `begun = "2027-05-01 09:00"`, `ended = "2027-05-01 10:00"`, `surface = "20 degC"`)
	for _, now := range []string{"", "2027-05-01 10:00", "2029-05-01 10:00"} {
		if f := dueOn(t, logged(t, j, log, now), "rudder"); f.Rule != antifoul.RuleLogAllLaid || factOf(f, "opens") != any(calendar.Moment(time.Date(2027, 5, 1, 10, 0, 0, 0, time.UTC))) {
			t.Errorf("as of %q: %s: %v", now, f.Rule, f.Facts)
		}
	}
}
