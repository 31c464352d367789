package calendar

import (
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Conditions is what is known of the weather where she stands.
type Conditions struct {
	Zone     *time.Location // of the clock on the shed's wall; nil: the days and hours are taken as they stand
	Forecast weather.Forecast
	Usual    quantity.Temperature // of the surface where no forecast tells; not given: the mean of the forecast for the hour of the day, or that of the coating's row
}

// check returns every fault of the conditions. A surface is from -60 to 100 degC, as in a forecast.
func (c Conditions) check() finding.Faults {
	fs := c.Forecast.Check()
	if u := c.Usual; u.Given() && (u.Cmp(quantity.Celsius.N(-60)) < 0 || u.Cmp(quantity.Celsius.N(100)) > 0) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "usual", Got: u.String(), Want: "-60 to 100 degC"})
	}
	return fs
}

// climate is the weather laid on the hours of a grid, as each layer sees it.
type climate struct {
	site   *weather.Site
	offset int // hour of the grid in which the forecast begins
	mean   [24]float64
	usual  float64 // NaN: nobody knows
	grid   *grid
	paces  map[string]*paced       // by coating and what it goes on
	views  map[string]*weather.Sky // likewise
}

// newClimate prepares the forecast. Its faults are those of weather.At.
func newClimate(b *tables.Book, g *grid, c Conditions, roof bool) (*climate, error) {
	out := &climate{grid: g, usual: weather.Unknown, paces: map[string]*paced{}, views: map[string]*weather.Sky{}}
	if c.Usual.Given() {
		out.usual = c.Usual.Float(quantity.Celsius)
	}
	site, err := weather.At(b, c.Forecast.Hours, roof)
	if err != nil {
		return nil, err
	}
	out.site = site
	if len(c.Forecast.Hours) == 0 {
		return out, nil
	}
	out.offset = int(c.Forecast.Hours[0].At.Sub(g.start).Hours())
	out.means(c.Forecast.Hours)
	return out, nil
}

// means takes the mean of the forecast's air for each hour of the day; of an hour that it never has, the mean of all.
func (c *climate) means(hours []weather.Hour) {
	var sum, count [24]float64
	all, n := 0.0, 0.0
	for _, h := range hours {
		if h.AirC != h.AirC { // NaN
			continue
		}
		at := h.At.In(c.grid.start.Location()).Hour()
		sum[at], count[at] = sum[at]+h.AirC, count[at]+1
		all, n = all+h.AirC, n+1
	}
	for i := range c.mean {
		switch {
		case count[i] > 0:
			c.mean[i] = sum[i] / count[i]
		case n > 0:
			c.mean[i] = all / n
		default:
			c.mean[i] = weather.Unknown
		}
	}
}

// sky is one layer's view of the hours.
type sky struct {
	*climate
	*weather.Sky
	layer Layer
	*paced
}

// paced is how far the clock of a coating has gone by the beginning of each hour of the grid: hours at its row's temperature.
type paced struct{ slow, fast []float64 }

func (c *climate) of(b *tables.Book, l Layer) (*sky, error) {
	clock, err := ClockOf(b, l.Coating)
	if err != nil {
		return nil, err
	}
	s := &sky{climate: c, layer: l}
	key := l.Coating.Key + "," + l.By.Key + pick(l.Falling, ",falling", "")
	for _, m := range l.On {
		key += "," + m.Key
	}
	if c.views[key] == nil {
		c.views[key] = c.site.For(l.Coat)
	}
	s.Sky = c.views[key]
	if c.paces[key] == nil {
		n := len(c.grid.dates)
		p := &paced{make([]float64, n+1), make([]float64, n+1)}
		for h := range n {
			low, high := s.surface(h, clock.at)
			p.slow[h+1] = p.slow[h] + clock.Slow(low)
			p.fast[h+1] = p.fast[h] + clock.Fast(high)
		}
		c.paces[key] = p
	}
	s.paced = c.paces[key]
	return s, nil
}

// known reports whether the forecast tells of the hour.
func (c *sky) known(hour int) bool { return hour >= c.offset && hour-c.offset < c.Len() }

// surface is the temperature of the film in the hour, from and to, in degC: by the forecast; else what is usual, the mean of the forecast, or
// the temperature of the row.
func (c *sky) surface(hour int, row float64) (low, high float64) {
	if c.known(hour) {
		if r := c.Surface(hour - c.offset); r.Low == r.Low && r.High == r.High {
			return r.Low, r.High
		}
	}
	t := c.usual
	if t != t && c.Len() > 0 {
		t = c.mean[c.grid.local[hour]/60]
	}
	if t != t {
		t = row
	}
	return t, t
}

// paints is what the hour is for putting the layer on.
func (c *sky) paints(hour int) byte {
	if !c.known(hour) {
		return measure
	}
	return mark(c.Verdict(hour - c.offset))
}

// mostDrying is how long a film is watched for rain and dew; one that is wet for longer has no end to its drying.
const mostDrying = 96

// dries is what becomes of the layer when it ends at the beginning of the hour: no dew before it is touch-dry, no rain before it is rain-safe.
func (c *sky) dries(end int) byte {
	out := fine
	touch, rain := hours(c.layer.Coating.TouchDry), hours(c.layer.Coating.RainSafe)
	for h := end; h-end <= mostDrying && h+1 < len(c.slow); h++ {
		passed := c.slow[h] - c.slow[end]
		wet, dewy := passed < rain, passed < touch
		if !wet && !dewy {
			return out
		}
		switch {
		case !c.known(h):
			out = min(out, measure)
		default:
			if wet {
				out = min(out, mark(c.Rains(h-c.offset)))
			}
			if dewy {
				out = min(out, mark(c.Condenses(h-c.offset)))
			}
		}
		if out == never {
			return never
		}
	}
	if c.slow[min(end+mostDrying, len(c.slow)-1)]-c.slow[end] < max(rain, touch) {
		return never
	}
	return out
}

// mark turns the weather's verdict into what a slot is.
func mark(v finding.Verdict) byte {
	switch v {
	case finding.Fine, finding.Caution:
		return fine
	case finding.Ask:
		return measure
	case finding.Needs, finding.Forbidden:
	}
	return never
}

// hours is a duration in hours; 0 where it is not given.
func hours(d quantity.Duration) float64 {
	if !d.Given() {
		return 0
	}
	return d.Float(quantity.Hour)
}
