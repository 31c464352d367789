package weather

import (
	"errors"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Site is the weather at the place of work, prepared once: dew points, and what covers her. It never changes; share it freely.
type Site struct {
	book    *tables.Book
	hours   []Hour
	dew     []float64 // degC
	covered bool
	errorK  float64 // of an estimated surface
	basis   finding.Basis
}

// At prepares the hours at the place of work, one after another without a gap. Covered means a roof or a tent: rain and wind do not reach the work.
//
// The error is a finding.Faults: every fault of Forecast.Check, and each row that the book does not hold.
//
// Basis: as of Judge; surfaces that were not measured are estimated by the lag of the materials, an assumption.
func At(b *tables.Book, hours []Hour, covered bool) (*Site, error) {
	faults := Forecast{Hours: hours}.Check()
	k, err := magnus(b)
	note(&faults, err)
	row, err := b.Factor("surface-error")
	note(&faults, err)
	for _, key := range []string{"iso-12944-7-humidity", "iso-8502-4-spread"} {
		_, err := b.Value(key)
		note(&faults, err)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	s := &Site{book: b, hours: slices.Clone(hours), dew: make([]float64, len(hours)), covered: covered, errorK: row.Value.Typical, basis: row.Basis("value")}
	for i := range hours {
		s.dew[i] = k.dew(hours[i].AirC, hours[i].HumidityPct) // NaN for what is unknown
	}
	return s, nil
}

// note adds the faults of an error to the list.
func note(faults *finding.Faults, err error) {
	if fs, ok := errors.AsType[finding.Faults](err); ok {
		*faults = append(*faults, fs...)
	}
}

// Coat is what goes on, on what and how.
type Coat struct {
	Coating tables.Coating
	On      []tables.Material // of the parts painted at once; the coldest decides cold and dew, the warmest decides heat
	By      tables.Loss       // the way it is put on; its zero value judges no wind
	Falling bool              // bare timber, filler or opened laminate: only while the temperature does not rise
}

// For holds every hour against what the coat asks for.
//
// The surface is the measured one where there is one. Elsewhere it is estimated from the air for each material of On, by the lags of its row; the
// estimate lies within the spread of the lags and the error of row surface-error. A verdict is Forbidden only where all of that is out of a limit,
// and Ask where a part of it is. Without a material, and on one whose row has no lag, a surface that was not measured is asked for.
//
// A measured surface is taken for all parts. Falling looks at the typical surface of each part from the start of the hour to its end; after the last
// hour the air stays as it is.
//
// Basis: first-order lag of a body that is as warm inside as outside; derived. It knows no sun and no clear night sky.
func (s *Site) For(c Coat) *Sky {
	k := &Sky{site: s, limits: limitsOf(s.book, c, s.covered), at: make([]place, len(s.hours)), verdicts: make([]finding.Verdict, len(s.hours))}
	k.limits.estimate = append(k.limits.estimate, s.basis)
	for j, m := range c.On {
		k.limits.estimate = append(k.limits.estimate, lagBasis(m))
		e := skin(m, s.hours, s.errorK)
		for i := range k.at {
			p := place{coldest: span{e.low[i], e.high[i]}, warmest: span{e.low[i], e.high[i]}, typical: e.typical[i], rise: Unknown()}
			if c.Falling {
				p.rise = e.rise(s.hours, i)
			}
			if j > 0 {
				p = p.and(k.at[i])
			}
			k.at[i] = p
		}
	}
	if len(c.On) == 0 {
		for i, h := range s.hours {
			k.at[i] = place{coldest: exactly(h.SurfaceC), warmest: exactly(h.SurfaceC), typical: h.SurfaceC, rise: Unknown()}
			if i+1 < len(s.hours) {
				k.at[i].rise = s.hours[i+1].SurfaceC - h.SurfaceC
			}
		}
	}
	for i := range k.verdicts {
		m := k.moment(i)
		k.verdicts[i] = k.limits.marks(&m).verdict()
	}
	return k
}

// lagBasis is what the lag rests on; the doubts of a material's row are about paint.
func lagBasis(m tables.Material) finding.Basis {
	b := m.Basis("lag")
	if !b.Own {
		b.Doubt = ""
	}
	return b
}

// place is the surface in one hour, over all parts that are painted at once.
type place struct {
	coldest, warmest span
	typical          float64 // of the coldest
	rise             float64 // of the part that rises most
}

// and takes another part in. What is unknown of one is unknown of both.
func (p place) and(o place) place {
	return place{
		coldest: span{min(p.coldest.low, o.coldest.low), min(p.coldest.high, o.coldest.high)},
		warmest: span{max(p.warmest.low, o.warmest.low), max(p.warmest.high, o.warmest.high)},
		typical: min(p.typical, o.typical),
		rise:    max(p.rise, o.rise),
	}
}

// Sky is the hours of a site as one coat sees them. It never changes; share it freely. Hours are counted from 0; of an hour that is not there
// nothing is known, and every answer is Ask.
type Sky struct {
	site     *Site
	limits   limits
	at       []place
	verdicts []finding.Verdict
}

// Len returns the number of hours.
func (k *Sky) Len() int { return len(k.verdicts) }

func (k *Sky) has(i int) bool { return i >= 0 && i < len(k.verdicts) }

// Verdict says whether the coat may go on in hour i: Fine, Ask (measure first) or Forbidden.
//
// Basis: as of Judge.
func (k *Sky) Verdict(i int) finding.Verdict {
	if !k.has(i) {
		return finding.Ask
	}
	return k.verdicts[i]
}

// Why gives every reason of the verdict on hour i, as Judge does.
//
// Basis: as of Judge.
func (k *Sky) Why(i int) finding.List {
	m := nothing()
	if k.has(i) {
		m = k.moment(i)
	}
	return k.limits.findings(&m)
}

// Surface returns the temperature of the surface in hour i, in degC: lowest of the coldest part, typical of the coldest part, highest of the warmest part.
// All three are NaN where it is unknown, and alike where it was measured.
//
// Basis: assumption, where it was not measured: see At.
func (k *Sky) Surface(i int) quantity.Range[float64] {
	if !k.has(i) {
		return quantity.Exactly(Unknown())
	}
	p := k.at[i]
	return quantity.Range[float64]{Low: p.coldest.low, Typical: p.typical, High: p.warmest.high}
}

func (k *Sky) moment(i int) moment {
	h, p := &k.site.hours[i], &k.at[i]
	return moment{humidity: h.HumidityPct, dew: k.site.dew[i], rain: h.RainMM, wind: h.WindMS, coldest: p.coldest, warmest: p.warmest, rise: p.rise}
}

func nothing() moment {
	return moment{humidity: Unknown(), dew: Unknown(), rain: Unknown(), wind: Unknown(), coldest: exactly(Unknown()), warmest: exactly(Unknown()), rise: Unknown()}
}
