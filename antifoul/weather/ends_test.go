package weather_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
)

// The coldest hour of a day comes before the warmest, and both lie in the day.
func TestHoursOfTheDaysEnds(t *testing.T) {
	days := []weather.Day{{Date: date(t, 2027, 4, 10), LowC: 5, HighC: 10, HumidityPct: 60}}
	for _, c := range []struct {
		low, high float64
		taken     bool
	}{{5, 14, true}, {13.9, 14, true}, {14, 14, false}, {14.1, 14, false}, {5, 23.9, true}, {5, 24, false}, {5, 24.5, false}} {
		b := own(t, fmt.Sprintf("[[factor]]\nkey = \"day-low-hour\"\nbasis = \"own table\"\nsource = \"a record\"\nvalue = %g\n[[factor]]\nkey = \"day-high-hour\"\nbasis = \"own table\"\nsource = \"a record\"\nvalue = %g\n", c.low, c.high))
		if _, err := weather.Hourly(b, days, time.UTC); (err == nil) != c.taken {
			t.Errorf("coldest at %g, warmest at %g: %v", c.low, c.high, err)
		}
	}
}

// What a day lacks is told together with what else is wrong with it.
func TestFaultsBesideWhatIsMissing(t *testing.T) {
	_, err := weather.Hourly(tables.Default(), []weather.Day{
		{LowC: 5, HighC: weather.Unknown, HumidityPct: 60},
		{Date: date(t, 2027, 4, 11), LowC: 12, HighC: 10, HumidityPct: 101, RainMM: -1},
	}, time.UTC)
	for _, want := range []string{"days[0].date", "days[0].high", "days[1].low", "days[1].humidity", "days[1].rain"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("no word of %s in %v", want, err)
		}
	}
}

// A dew point is taken down to -90 degC and up to the air.
func TestEndsOfADewPoint(t *testing.T) {
	for dew, taken := range map[string]bool{"-90": true, "-90.1": false, "-134": false, "-40": true, "-39.9": false} {
		if _, err := read("time,air [degC],dew_point [degC]\n2027-01-10 09:00,-40,"+dew+"\n", time.UTC); (err == nil) != taken {
			t.Errorf("%s degC: %v", dew, err)
		}
	}
}
