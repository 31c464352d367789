package report

import (
	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables/quantity"
)

// outPutOn is whether the film that was asked for is there.
type outPutOn struct {
	Gauge []outGauged   `json:"gauge,omitempty" says:"by a gauge of dry film"`
	Comb  []outCombed   `json:"comb,omitempty" says:"while it was wet, by a comb"`
	Used  []outUsedFilm `json:"used,omitempty" says:"by the litres used"`
}

// outGauged is one survey of one part.
type outGauged struct {
	Part       string        `json:"part" says:"name of the part"`
	Instrument outName       `json:"instrument" says:"what it was read with"`
	Standard   outName       `json:"standard" says:"by which standard it is judged"`
	Nominal    quantity.Film `json:"nominal" says:"the dry film that was specified"`
	Most       quantity.Film `json:"most,omitzero" says:"the greatest that was agreed"`
	Accepted   bool          `json:"accepted" says:"true: the gauge reads there, every zone passes for itself, and all together do"`
	Reads      []outFinding  `json:"reads,omitempty" says:"whether the gauge reads on the material"`
	Zones      []outZoneRead `json:"zones,omitempty" says:"zone by zone"`
	Whole      outRead       `json:"all_together" says:"all zones together"`
	ToDo       []outMoreOn   `json:"to_do,omitempty" says:"where something is still to do"`
	Cannot     string        `json:"cannot_say,omitempty" says:"what the readings cannot say"`
}

// outZoneRead is the readings of one zone.
type outZoneRead struct {
	Zone outName `json:"zone" says:"the zone"`
	Read outRead `json:"read" says:"what was read there"`
}

// outRead is what some readings say.
type outRead struct {
	Passes   bool           `json:"passes" says:"true: it is as the standard asks"`
	Readings int            `json:"readings" says:"readings taken"`
	Wanted   int            `json:"wanted" says:"readings that the standard wants"`
	Mean     quantity.Film  `json:"mean,omitzero" says:"corrected"`
	Lowest   quantity.Film  `json:"thinnest,omitzero" says:"corrected"`
	Highest  quantity.Film  `json:"thickest,omitzero" says:"corrected"`
	Below    int            `json:"below_nominal" says:"readings or spots below the nominal film"`
	Of       int            `json:"of" says:"readings or spots that were judged"`
	Share    quantity.Share `json:"share_below,omitzero" says:"of these, below"`
	Missing  quantity.Film  `json:"missing,omitzero" says:"what the thinnest place lacks, where the film is too thin to pass"`
	Findings []outFinding   `json:"findings,omitempty" says:"criterion by criterion"`
}

// outMoreOn is what is still to do on one zone.
type outMoreOn struct {
	Zone     outName       `json:"zone" says:"the zone"`
	Readings int           `json:"more_readings,omitempty" says:"readings still to take"`
	Film     quantity.Film `json:"film,omitzero" says:"dry film that is missing"`
	Paint    *outMore      `json:"paint,omitempty" says:"what makes it up; absent where nobody said with what, or no number of coats does"`
}

// outMore is the paint that makes up a film.
type outMore struct {
	Coating outName                   `json:"coating" says:"of what"`
	Coats   int                       `json:"coats" says:"coats"`
	Film    quantity.Film             `json:"film_a_coat" says:"dry film of one coat"`
	Litres  outRange[quantity.Volume] `json:"litres" says:"of all of them; not in what is bought for the new coats"`
}

// outCombed is one fresh coat.
type outCombed struct {
	Part     string                    `json:"part" says:"name of the part"`
	Zone     *outName                  `json:"zone,omitempty" says:"where; absent: all of the part"`
	Coating  outName                   `json:"coating" says:"of what"`
	Dry      []outRange[quantity.Film] `json:"dry_films,omitempty" says:"to which each reading dries"`
	Mean     outRange[quantity.Film]   `json:"mean,omitzero" says:"of all of them"`
	Thin     int                       `json:"thin" says:"readings that dry to less than was asked for"`
	More     *outMore                  `json:"paint,omitempty" says:"what makes up what the mean lacks, once it has dried"`
	Findings []outFinding              `json:"findings,omitempty" says:"what is said of it"`
}

// outUsedFilm is the film that some litres make.
type outUsedFilm struct {
	Part     string                  `json:"part" says:"name of the part"`
	Zone     *outName                `json:"zone,omitempty" says:"where; absent: all of the part"`
	Coating  outName                 `json:"coating" says:"of what"`
	Film     outRange[quantity.Film] `json:"film_a_coat,omitzero" says:"mean dry film of one coat"`
	Findings []outFinding            `json:"findings,omitempty" says:"what is said of it"`
}

// outPutOn encodes what gauge, comb and litres say; nil where nothing was noted.
func (c *composer) outPutOn() *outPutOn {
	p := c.job.PutOn
	if len(p.Gauged)+len(p.Combed)+len(p.Used) == 0 {
		return nil
	}
	out := &outPutOn{}
	for _, g := range p.Gauged {
		out.Gauge = append(out.Gauge, c.outGauged(g))
	}
	for _, k := range p.Combed {
		x := outCombed{Part: k.Part, Zone: c.nameOf(k.Zone, c.zone), Coating: *c.nameOf(k.Coating, c.coatingName), Mean: ranged(k.Result.Mean), Thin: k.Result.Thin, More: c.outMore(k.More, k.Coating), Findings: c.outFindings(k.Result.Findings)}
		for _, d := range k.Result.Dry {
			x.Dry = append(x.Dry, ranged(d))
		}
		out.Comb = append(out.Comb, x)
	}
	for _, u := range p.Used {
		out.Used = append(out.Used, outUsedFilm{u.Part, c.nameOf(u.Zone, c.zone), *c.nameOf(u.Coating, c.coatingName), ranged(u.Result.Coat), c.outFindings(u.Result.Findings)})
	}
	return out
}

func (c *composer) outGauged(g antifoul.GaugedPart) outGauged {
	out := outGauged{
		Part: g.Part, Instrument: outName{g.Instrument, g.Instrument}, Standard: outName{g.Standard, g.Result.Whole.Standard}, Nominal: g.Nominal, Most: g.Most,
		Accepted: g.Result.Passes, Reads: c.outFindings(g.Result.Reads), Whole: c.outRead(g.Result.Whole),
	}
	if x, err := c.job.Book.Instrument(g.Instrument); err == nil {
		out.Instrument.Name, out.Cannot = x.Name, x.Cannot
	}
	for _, z := range g.Result.Zones {
		out.Zones = append(out.Zones, outZoneRead{outName{z.Zone.Zone, c.zone(z.Zone.Zone)}, c.outRead(z.Verdict)})
	}
	for _, m := range g.More {
		out.ToDo = append(out.ToDo, outMoreOn{outName{m.Zone, c.zone(m.Zone)}, m.Readings, m.Film, c.outMore(m.Paint, g.Coating)})
	}
	return out
}

func (c *composer) outRead(v gauge.Verdict) outRead {
	out := outRead{Passes: v.Passes, Readings: v.Count, Wanted: v.Needed, Mean: v.Mean, Lowest: v.Lowest, Highest: v.Highest, Below: v.Below, Of: v.Singles, Missing: v.Missing, Findings: c.outFindings(v.Findings)}
	if v.Count > 0 {
		out.Share = v.Share()
	}
	return out
}

func (c *composer) outMore(m *coverage.More, key string) *outMore {
	if m == nil {
		return nil
	}
	return &outMore{*c.nameOf(key, c.coatingName), m.Coats, m.Film, ranged(m.Litres)}
}
