package gauge_test

import (
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables/quantity"
)

// Whatever a sheet holds, it is read or refused: never both, and what is read are films that a gauge can show, each with its line.
func FuzzReadCSV(f *testing.F) {
	for _, text := range []string{"zone,reading [um],spot,note\nflat,330,1,\"low, aft\"\n", "zone;reading\nflat;13 mil\n", "zone,reading [um]\nflat,9999\n", "zone\n\"", "\ufeffzone,reading\n"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := gauge.ReadCSV(fstest.MapFS{"gauge.csv": {Data: data}}, "gauge.csv")
		if (err == nil) == (len(got) == 0) {
			t.Fatalf("%d readings, error %v", len(got), err)
		}
		for _, r := range got {
			if r.Zone == "" || r.Line < 2 || r.Film.Sign() <= 0 || r.Film.Cmp(quantity.Micrometre.N(5000)) > 0 {
				t.Fatalf("read %+v", r)
			}
		}
	})
}
