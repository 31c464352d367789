package report

import (
	"math"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// outForecast is how long a film lasts. Its low ends decide.
type outForecast struct {
	Wear      *outNumbers               `json:"wear_um_a_month,omitempty" says:"film lost a month afloat on the flat, in micrometres; absent for a film that stays"`
	OwnRecord bool                      `json:"by_own_record" says:"true: the wear was fitted to her own record"`
	Lasts     outRange[quantity.Months] `json:"lasts,omitzero" says:"calendar months that it is good for, rounded down, on the flat of a hull or on the part; 120 stands for as many or more"`
	Launch    quantity.Date             `json:"launch,omitzero" says:"day from which dates are counted; absent where it is open"`
	PaintFrom quantity.Date             `json:"paint_again_from,omitzero" says:"next haul-out, from the low end"`
	LookFirst *outName                  `json:"look_first,omitempty" says:"the zone that is worn through first"`
	Zones     []outZoneForecast         `json:"zones,omitempty" says:"zone by zone, for a film that wears"`
	Findings  []outFinding              `json:"findings,omitempty" says:"what else ends it, and what her own record says"`
}

// outZoneForecast is the film of one zone.
type outZoneForecast struct {
	Zone  outName                   `json:"zone" says:"the zone"`
	Film  outRange[quantity.Film]   `json:"film,omitzero" says:"working film"`
	Times *outNumbers               `json:"times_the_flat,omitempty" says:"how much faster it wears than the flat"`
	Lasts outRange[quantity.Months] `json:"worn_through_after,omitzero" says:"calendar months, rounded down; 120 stands for as many or more"`
	From  quantity.Date             `json:"signal_from,omitzero" says:"day from which to look for the signal, from the low end"`
	Left  []outLeft                 `json:"left,omitempty" says:"working film left at the end of each year, until it may be gone"`
}

// outLeft is the film left after some months.
type outLeft struct {
	After quantity.Months         `json:"after" says:"calendar months from the launch"`
	Film  outRange[quantity.Film] `json:"film" says:"with the fast and the slow wear"`
}

// outForecast encodes how long a scheme lasts; nil where nothing is put on.
func (c *composer) outForecast(s antifoul.Scheme) *outForecast {
	f := s.Lasts
	if f.Coating.Key == "" {
		return nil
	}
	out := &outForecast{OwnRecord: f.Own != nil, Lasts: months(f.Life), Launch: f.Launch, PaintFrom: f.NextHaul}
	if f.Coating.Wears() {
		out.Wear = plainRange(f.Rate)
	}
	if z, ok := f.First(); ok {
		out.LookFirst = &outName{z.Zone, c.zone(z.Zone)}
	}
	for _, z := range f.Zones {
		if !f.Coating.Wears() {
			break
		}
		out.Zones = append(out.Zones, outZoneForecast{
			Zone: outName{z.Zone, c.zone(z.Zone)}, Film: near(z.Film, quantity.Micrometre, quantity.Nearest), Times: plainRange(z.Wear), Lasts: months(z.Months), From: z.First, Left: leftOf(f, z.Zone),
		})
	}
	if f.Own != nil {
		out.Findings = c.outFindings(f.Own.Findings)
	}
	for _, x := range f.Findings {
		if f.Own == nil || !f.Own.Findings.Has(x.Rule) {
			out.Findings = append(out.Findings, *c.outFinding(x))
		}
	}
	return out
}

// leftOf is the film left at the end of each year, at most five.
func leftOf(f wear.Forecast, zone string) []outLeft {
	var out []outLeft
	for n := 12; n <= 60; n += 12 {
		left, ok := f.Left(zone, float64(n))
		if !ok {
			break
		}
		film := outRange[quantity.Film]{Low: amountNear(left.Low, quantity.Micrometre, quantity.Down), High: amountNear(left.High, quantity.Micrometre, quantity.Up)}
		out = append(out, outLeft{quantity.Month.N(int64(n)), film})
		if left.Low <= 0 {
			break
		}
	}
	return out
}

// outAfterLaunch is one thing to look at or to do after launch.
type outAfterLaunch struct {
	Key   string        `json:"key" says:"key of the row"`
	Name  string        `json:"name" says:"what it is"`
	Parts []string      `json:"parts" says:"names of the parts"`
	After *outSpan      `json:"months_after_launch,omitempty" says:"when, in calendar months; absent: at haul-out"`
	From  quantity.Date `json:"from,omitzero" says:"the day, where the launch is fixed"`
	Every bool          `json:"each_season" says:"true: again each season"`
	Says  string        `json:"says" says:"what to do"`
	Basis []outBasis    `json:"basis,omitempty" says:"what it rests on"`
}

// outSpan is the two ends of a plain number; the key that it stands under says its unit.
type outSpan struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

func span(s tables.Span) *outSpan {
	if !s.Given() {
		return nil
	}
	return &outSpan{digits(s.Low), digits(s.High)}
}

func (c *composer) outAfterLaunch() []outAfterLaunch {
	var out []outAfterLaunch
	for r := range c.job.Book.Seasons() {
		x := outAfterLaunch{Key: r.Key, Name: r.Name, After: span(r.After), Every: r.Every, Says: r.Says, Basis: c.outBases([]finding.Basis{r.Basis("says")})}
		for _, s := range c.job.Schemes {
			if s.Coating.Role == tables.Antifouling && r.For(s.Coating.Mechanism) {
				x.Parts = append(x.Parts, s.Part)
			}
		}
		if len(x.Parts) == 0 {
			continue
		}
		if w := c.job.Boat.Work; r.After.Given() && w.Launch.Given() && !w.LaunchOpen.True() {
			x.From = w.Launch.AddMonths(int(math.Floor(r.After.Low)))
		}
		out = append(out, x)
	}
	return out
}
