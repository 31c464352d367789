package weather_test

import (
	"errors"
	"testing"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// A book without the coefficients gives no dew point, no humidity and no sky, and says which row it lacks.
func TestBookWithoutCoefficients(t *testing.T) {
	bare := &tables.Book{}
	dew, errDew := weather.DewPoint(bare, 15, 60)
	humidity, errHumidity := weather.Humidity(bare, 15, 7)
	site, errSite := weather.At(bare, nil, false)
	if dew != 0 || humidity != 0 || site != nil {
		t.Errorf("answered all the same: %g degC, %g %%, %v", dew, humidity, site)
	}
	for name, err := range map[string]error{"dew point": errDew, "humidity": errHumidity, "site": errSite} {
		fs, _ := errors.AsType[finding.Faults](err)
		if len(fs) == 0 {
			t.Errorf("%s: %v", name, err)
		}
		for _, f := range fs {
			if f.Want == "" {
				t.Errorf("%s: %v does not say what is wanted", name, f)
			}
		}
	}
}
