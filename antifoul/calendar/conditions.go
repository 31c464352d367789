package calendar

import (
	"fmt"
	"iter"
	"strings"
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
	Careful  bool                 // without Usual: that mean is no colder than a coat may go on, since in the cold none does; and without a forecast it is from there to the temperature of the row, so that windows open late and close soon
	Trust    quantity.Duration    // from the first day on, how far ahead a forecast is believed: an hour later than that is measured; not given: all of it
}

// check returns every fault of the conditions. A surface is from -60 to 100 degC, as in a forecast.
func (c Conditions) check() finding.Faults {
	fs := c.Forecast.Check()
	if c.Trust.Sign() < 0 {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "trust", Got: c.Trust.String(), Want: "zero or more"})
	}
	if u := c.Usual; u.Given() && (u.Cmp(quantity.Celsius.N(-60)) < 0 || u.Cmp(quantity.Celsius.N(100)) > 0) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "usual", Got: u.String(), Want: "-60 to 100 degC"})
	}
	return fs
}

// climate is the weather laid on the hours of a grid, as each layer sees it.
type climate struct {
	site    *weather.Site
	offset  int // hour of the grid in which the forecast begins
	mean    [24]float64
	usual   float64 // NaN: nobody knows
	careful bool
	trust   int // the first hour of the grid that is too far off to be believed
	grid    *grid
	views   map[string]*view // one for all layers that see the same weather
}

// newClimate prepares the forecast. Its faults are those of weather.At.
func newClimate(b *tables.Book, g *grid, c Conditions, roof bool) (*climate, error) {
	out := &climate{grid: g, usual: weather.Unknown(), careful: c.Careful, views: map[string]*view{}}
	if c.Usual.Given() {
		out.usual = c.Usual.Float(quantity.Celsius)
	}
	out.trust = noHour
	if c.Trust.Given() {
		out.trust = int(hours(c.Trust))
	}
	site, err := weather.At(b, c.Forecast.Hours, roof)
	if err != nil {
		return nil, err
	}
	out.site = site
	out.means(c.Forecast.Hours)
	if len(c.Forecast.Hours) > 0 {
		out.offset = int(c.Forecast.Hours[0].At.Sub(g.start).Hours())
	}
	return out, nil
}

// means takes the mean of the forecast's air for each hour of the day; of an hour that it never has, the mean of all, which is NaN where it has none.
func (c *climate) means(hours []weather.Hour) {
	var sum, count [len(c.mean)]float64
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
		c.mean[i] = sum[i] / count[i]
		if count[i] == 0 {
			c.mean[i] = all / n
		}
	}
}

// sky is one layer's view of the hours.
type sky struct {
	*climate
	*view
	layer      Layer
	open, shut []int32 // of each hour in which a coat of it ends: from when the next may begin; in which one begins: until when, nil where it never closes
}

// view is what all layers of one coating on the same materials see: how far its clock has gone by the beginning of each hour of the grid, in
// hours at its row's temperature, and what becomes of a film that ends then.
type view struct {
	*weather.Sky
	slow, fast []float64
	drying     []byte // of each hour, one more than what dries returns; 0: nobody has asked
	opens      map[float64][]int32
	closes     map[float64][]int32
}

func (c *climate) of(b *tables.Book, l Layer) (*sky, error) {
	clock, err := ClockOf(b, l.Coating)
	if err != nil {
		return nil, err
	}
	s := &sky{climate: c, layer: l}
	key := l.sees()
	if s.view = c.views[key]; s.view == nil {
		s.view = c.see(l, clock)
		c.views[key] = s.view
	}
	s.open = s.after(hours(l.Opens))
	if l.Closes.Given() {
		s.shut = s.until(hours(l.Closes))
	}
	return s, nil
}

// see makes the view of a layer.
func (c *climate) see(l Layer, clock Clock) *view {
	n := len(c.grid.dates)
	v := &view{
		Sky: c.site.For(l.Coat), slow: make([]float64, n+1), fast: make([]float64, n+1), drying: make([]byte, n+1),
		opens: map[float64][]int32{}, closes: map[float64][]int32{},
	}
	s := sky{climate: c, view: v}
	for h := range n {
		low, high := s.surface(h, &l.Coating)
		v.slow[h+1] = v.slow[h] + clock.Slow(low)
		v.fast[h+1] = v.fast[h] + clock.Fast(high)
	}
	return v
}

// noise is less than any time that matters, in hours.
const noise = 1e-9

// after tells for each hour the first one by which so many hours have passed by the slow hand; past the grid when they never have.
func (v *view) after(passed float64) []int32 {
	if out := v.opens[passed]; out != nil {
		return out
	}
	out := make([]int32, len(v.slow))
	h := 0
	for from := range v.slow {
		for h < len(v.slow) && v.slow[h]-v.slow[from] < passed-noise {
			h++
		}
		out[from] = int32(h)
	}
	v.opens[passed] = out
	return out
}

// until tells for each hour the last one by which no more hours have passed by the fast hand.
func (v *view) until(passed float64) []int32 {
	if out := v.closes[passed]; out != nil {
		return out
	}
	out := make([]int32, len(v.fast))
	h := 0
	for from := range v.fast {
		for h < len(v.fast) && v.fast[h]-v.fast[from] <= passed+noise {
			h++
		}
		out[from] = int32(h - 1)
	}
	v.closes[passed] = out
	return out
}

// sees is everything by which one layer's weather differs from another's.
func (l Layer) sees() string {
	c := &l.Coating
	var key strings.Builder
	fmt.Fprint(&key, c.Key, c.Packs, c.Carrier, c.At, c.TouchDry, c.RainSafe, c.ApplyMin, c.ApplyMax, l.By.WindMax, l.Falling)
	for _, m := range l.On {
		fmt.Fprint(&key, ",", m.Key, m.Lag)
	}
	return key.String()
}

// surface is the temperature of the film in the hour, from and to, in degC: by the forecast; else what is usual, the mean of the forecast, or
// the temperature of the row; see Conditions.
func (c *sky) surface(hour int, k *tables.Coating) (low, high float64) {
	if r := c.Surface(hour - c.offset); r.Low == r.Low { // not NaN, and so is the other
		return r.Low, r.High
	}
	if c.usual == c.usual {
		return c.usual, c.usual
	}
	t := c.mean[c.grid.local[hour]/60]
	if t != t { // NaN
		t = k.At.Float(quantity.Celsius)
	}
	if !c.careful || !k.ApplyMin.Given() {
		return t, t
	}
	least := k.ApplyMin.Float(quantity.Celsius)
	if c.Len() == 0 {
		return least, max(least, t)
	}
	return max(least, t), max(least, t)
}

// paints is what the hour is for putting the layer on.
func (c *sky) paints(hour int) byte { return c.believed(hour, mark(c.Verdict(hour-c.offset))) }

// believed is what an hour is, or measured where it is too far off.
func (c *sky) believed(hour int, is byte) byte {
	if hour >= c.trust {
		return min(is, measure)
	}
	return is
}

// mostDrying is how long a film is watched for rain and dew; one that is wet for longer has no end to its drying.
const mostDrying = 96

// dries is what becomes of the layer when it ends at the beginning of the hour: no dew before it is touch-dry, no rain before it is rain-safe.
func (c *sky) dries(end int) byte {
	if c.drying[end] == 0 {
		c.drying[end] = 1 + c.dried(end)
	}
	return c.drying[end] - 1
}

func (c *sky) dried(end int) byte {
	out := fine
	for h, is := range c.soft(end) {
		if out = min(out, c.believed(h, is)); out == never {
			return never
		}
	}
	if c.slow[c.watched(end)]-c.slow[end] < max(hours(c.layer.Coating.RainSafe), hours(c.layer.Coating.TouchDry)) {
		return never
	}
	return out
}

// watched is the hour up to which a film that ends at the beginning of the hour is watched.
func (c *sky) watched(end int) int { return min(end+mostDrying, len(c.slow)-1) }

// soft yields each hour in which the layer, when it ends at the beginning of the hour, may still be spoilt, and what the hour is for it: rain spoils it
// before it is rain-safe, dew before it is touch-dry.
func (c *sky) soft(end int) iter.Seq2[int, byte] {
	return func(yield func(int, byte) bool) {
		rainSafe, touchDry := hours(c.layer.Coating.RainSafe), hours(c.layer.Coating.TouchDry)
		for h := end; h < c.watched(end); h++ {
			passed := c.slow[h] - c.slow[end]
			if passed >= rainSafe && passed >= touchDry {
				return
			}
			is := fine
			if passed < rainSafe {
				is = mark(c.Rains(h - c.offset))
			}
			if passed < touchDry {
				is = min(is, mark(c.Condenses(h-c.offset)))
			}
			if !yield(h, is) {
				return
			}
		}
	}
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
