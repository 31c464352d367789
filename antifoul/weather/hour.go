package weather

import (
	"math"
	"time"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Hour is what was measured in an hour at the place of work, or is forecast for it. Unknown stands for what is not known.
type Hour struct {
	At          time.Time // its start, on a full hour; Judge does not ask for it
	AirC        float64   // degC
	SurfaceC    float64   // degC, on the coldest part that is painted; Unknown(): a Site estimates it
	HumidityPct float64   // relative, of the air
	RainMM      float64   // in the hour
	WindMS      float64   // m/s
}

// Judge says whether the coating may go on in the hour. Forbidden are a surface outside the row's limits of application, one less than 3 degC above the dew
// point, air over 85 % and rain; each has its finding. What is needed and was not measured has the verdict Ask. Only if nothing speaks against
// it is there one finding, Fine.
//
// On a limit paint may go on. A coating whose row has no limits of temperature is not held to any. Impossible measurements are asked for again.
// Of many hours, with a surface that is estimated, a cover, and a wind that ends spraying, see At.
//
// Source: the spread of ISO 8502-4 (row iso-8502-4-spread) and the humidity of ISO 12944-7 (row iso-12944-7-humidity).
func Judge(b *tables.Book, c tables.Coating, h Hour) finding.List {
	l := limitsOf(b, Coat{Coating: c}, false)
	m := moment{humidity: h.HumidityPct, dew: Unknown(), rain: h.RainMM, wind: h.WindMS, coldest: exactly(h.SurfaceC), warmest: exactly(h.SurfaceC), rise: Unknown()}
	switch k, err := magnus(b); {
	case !inHumidity(h.HumidityPct):
		m.humidity = Unknown()
	case err == nil && inAir(h.AirC):
		m.dew = k.dew(h.AirC, h.HumidityPct)
	}
	return l.findings(&m)
}

func inAir(c float64) bool { return c >= coldestC && c <= hottestC } // not NaN

func inHumidity(pct float64) bool { return pct > 0 && pct <= 100 } // not NaN

func known(v float64) bool { return !math.IsNaN(v) }
