package weather_test

import (
	"errors"
	"math"
	"os"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Whatever a sheet of weather holds, it is read or refused, never both; what is read passes its own check, follows hour upon hour, and can be judged.
func FuzzReadCSV(f *testing.F) {
	late, err := os.ReadFile("../../examples/boats/late-weather.csv")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(late[:min(len(late), 600)])
	for _, text := range []string{
		"time,air [degC],humidity,rain [mm],wind [m/s],surface\n2027-04-10 09:00,9,70 %,0,3,\n2027-04-10 10:00,10,68 %,,4,9 degC\n",
		"time;air;dew_point\n2027-10-31 01:00;50 degF;45 degF\n2027-10-31 01:00;9 degC;\n2027-10-31T02:00Z;9 degC;9 degC\n",
		"date,low [degC],high [degC],humidity [%],rain [mm],wind [kn]\n2027-03-27,1,9,80,0,12\n2027-03-28,2,11,,1.5,\n",
		"date,low,high\n2027-03-28,-0 degC,0 degF\n", "\ufefftime,air [degC]\r\n2027-04-10T09:00+02:00,1e1\r\n", "time,date,air\n,,\n", "time,air [m]\n2027-04-10 09:00,9\n",
	} {
		f.Add([]byte(text))
	}
	b := tables.Default()
	loc, err := time.LoadLocation("Europe/London")
	if err != nil {
		f.Fatal(err)
	}
	coating, err := b.Coating("epoxy-barrier")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if len(data) > 1<<13 {
			t.Skip("long sheets are slow and no different")
		}
		got, err := weather.ReadCSV(b, fstest.MapFS{"weather.csv": {Data: data}}, "weather.csv", loc)
		if err != nil {
			if fs, ok := errors.AsType[finding.Faults](err); !ok || len(fs) == 0 || len(got.Hours) > 0 {
				t.Fatalf("%d hours, error %v", len(got.Hours), err)
			}
			return
		}
		if fs := got.Check(); len(fs) > 0 {
			t.Fatalf("read without a fault, and then: %v", fs)
		}
		for i, h := range got.Hours {
			if math.IsNaN(h.AirC) || i > 0 && !h.At.Equal(got.Hours[i-1].At.Add(time.Hour)) {
				t.Fatalf("hour %d: %+v", i, h)
			}
			if v := weather.Judge(b, coating, h).Worst(); !v.Valid() {
				t.Fatalf("hour %d: no verdict on %+v", i, h)
			}
		}
		if _, err := weather.At(b, got.Hours, false); err != nil {
			t.Fatalf("read without a fault, and then: %v", err)
		}
	})
}
