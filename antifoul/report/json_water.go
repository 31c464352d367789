package report

import (
	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// outGrowth is what growth would cost.
type outGrowth struct {
	Not    string     `json:"not_reckoned,omitempty" says:"why it could not be reckoned"`
	Grades []outGrade `json:"grades,omitempty" says:"the smoothest grade first, with all of the hull grown over alike"`
}

// outGrade is one grade of growth.
type outGrade struct {
	Key        string                   `json:"key" says:"key of the grade"`
	Name       string                   `json:"name" says:"what it looks like"`
	Rating     string                   `json:"rating" says:"fouling rating"`
	Sand       quantity.Film            `json:"sand_roughness" says:"equivalent sand roughness"`
	Friction   *outNumbers              `json:"more_friction,omitempty" says:"as a multiple of the smooth friction"`
	Resistance outRange[quantity.Share] `json:"more_resistance,omitzero" says:"against a bottom as smooth as glass"`
	Power      outRange[quantity.Share] `json:"more_power,omitzero" says:"for the same speed"`
	Findings   []outFinding             `json:"findings,omitempty" says:"how friction's share is known, then what to do"`
}

func (c *composer) outGrowth() *outGrowth {
	g := c.job.Growth
	if len(g.Costs) == 0 && len(g.Not) == 0 {
		return nil
	}
	out := &outGrowth{}
	if len(g.Not) > 0 {
		out.Not = g.Not.Error()
		return out
	}
	for _, x := range g.Costs {
		out.Grades = append(out.Grades, outGrade{x.Grade.Key, x.Grade.Name, x.Grade.Rating, x.Grade.Ks, plainRange(x.Friction), ranged(x.Resistance), ranged(x.Power), c.outFindings(x.Findings)})
	}
	return out
}

// outMetal is two metals, or one potential that was read.
type outMetal struct {
	Parts    []string           `json:"parts" says:"names of the parts, two of a pair and one of a potential"`
	Metals   []string           `json:"metals,omitempty" says:"the two metals; absent for a potential"`
	Goes     string             `json:"goes,omitempty" says:"the metal that goes; absent where either may"`
	Least    quantity.Potential `json:"driven_by_least,omitzero" says:"driving voltage, nearer ends"`
	Most     quantity.Potential `json:"driven_by_most,omitzero" says:"driving voltage, farther ends"`
	Findings []outFinding       `json:"findings,omitempty" says:"what is said of them"`
}

func (c *composer) outMetals() []outMetal {
	var out []outMetal
	for _, m := range c.job.Metals {
		x := outMetal{Parts: m.Parts[:1], Findings: c.outFindings(m.Findings)}
		if m.Parts[1] != "" {
			x.Parts, x.Metals = m.Parts[:], []string{m.Pair.A, m.Pair.B}
			x.Goes, x.Least, x.Most = m.Pair.Anode, m.Pair.Low, m.Pair.High
		}
		out = append(out, x)
	}
	return out
}

// outCaution is one caution.
type outCaution struct {
	Key   string     `json:"key" says:"key of the caution"`
	Name  string     `json:"name" says:"what it is about"`
	Says  string     `json:"says" says:"the caution; local rules, the paint's own data sheet and licensed practice come before it"`
	Basis []outBasis `json:"basis,omitempty" says:"what it rests on"`
}

func (c *composer) outCautions() []outCaution {
	var out []outCaution
	for _, k := range c.job.Cautions {
		out = append(out, outCaution{k.Key, k.Name, k.Says, c.outBases([]finding.Basis{k.Basis("says")})})
	}
	return out
}

// outBiocide is what the working coats of one type hold, on the parts that have them equally thick and with one life.
type outBiocide struct {
	Parts      []string                  `json:"parts" says:"names of the parts"`
	Coating    outName                   `json:"coating" says:"the type"`
	Film       outRange[quantity.Film]   `json:"film,omitzero" says:"of the working coats"`
	Life       outRange[quantity.Months] `json:"life_afloat,omitzero" says:"months afloat, by the forecast"`
	Season     float64                   `json:"season_months" says:"months afloat in a year"`
	Substances []outSubstance            `json:"substances,omitempty" says:"what is in the film and leaves it"`
	Findings   []outFinding              `json:"findings,omitempty" says:"how it was reckoned, and each limit of the laws; sums for a type approve no product"`
	Not        string                    `json:"not_reckoned,omitempty" says:"why it could not be reckoned"`
}

// outSubstance is one substance of a film.
type outSubstance struct {
	Name  string      `json:"name" says:"the substance"`
	Held  *outNumbers `json:"held_ug_cm2,omitempty" says:"in the film, ug/cm2"`
	Short *outRelease `json:"short_life,omitempty" says:"over the low end of the life"`
	Long  *outRelease `json:"long_life,omitempty" says:"over the high end, where that is another"`
}

// outRelease is the mean release over one life, by two methods.
type outRelease struct {
	Months  float64     `json:"life_months" says:"the life, months afloat"`
	Balance *outNumbers `json:"mass_balance_ug_cm2_d,omitempty" says:"mean by the mass balance of ISO 10890, ug/cm2/d"`
	Divided *outNumbers `json:"divided_ug_cm2_d,omitempty" says:"the same divided by the factor of Finnie 2006, ug/cm2/d"`
	Grams   *outNumbers `json:"season_g_mass_balance,omitempty" says:"grams a season, by mass balance"`
	Less    *outNumbers `json:"season_g_divided,omitempty" says:"grams a season, divided"`
}

func (c *composer) outBiocides() []outBiocide {
	var out []outBiocide
	season := c.job.Boat.Use.AfloatMonths(12)
	for _, g := range c.biocidal() {
		x := outBiocide{Parts: g.parts, Coating: coating(g.coating), Film: ranged(g.film), Life: months(g.life), Season: digits(season)}
		c.outReleases(&x, g, season)
		out = append(out, x)
	}
	return out
}

// outReleases fills in what one group holds and releases.
func (c *composer) outReleases(x *outBiocide, g biocidal, season float64) {
	if g.life.Low <= 0 { // nothing is known to end it, or she is never afloat: there is no mean
		in, err := leach.Content(c.job.Book, g.coating, g.film)
		if err != nil {
			x.Not = err.Error()
			return
		}
		for _, h := range in.Held {
			x.Substances = append(x.Substances, outSubstance{Name: h.Name, Held: plainRange(h.UgCm2)})
		}
		x.Findings = c.outFindings(in.Findings)
		return
	}
	short, err := leach.Mean(c.job.Book, g.coating, g.film, g.life.Low)
	if err != nil {
		x.Not = err.Error()
		return
	}
	long, err := leach.Mean(c.job.Book, g.coating, g.film, g.life.High)
	if err != nil {
		x.Not = err.Error()
		return
	}
	for i, r := range short.Releases {
		if r.Metal && !r.Element { // its copper is counted in all of it
			continue
		}
		s := outSubstance{Name: r.Name, Held: plainRange(r.UgCm2), Short: outReleaseOf(short, i, g.area, season)}
		if g.life.High > g.life.Low {
			s.Long = outReleaseOf(long, i, g.area, season)
		}
		x.Substances = append(x.Substances, s)
	}
	x.Findings = c.outFindings(append(short.Findings, againstLimits(short, long, g.law)...))
}

func outReleaseOf(r leach.Rate, i int, area quantity.Range[quantity.Area], season float64) *outRelease {
	grams := func(rate quantity.Range[float64]) *outNumbers {
		g, err := leach.Load(rate, area, min(season, r.Months)) // what is spent before the season ends leaves no more
		if err != nil {
			return nil
		}
		return plainRange(g)
	}
	x := r.Releases[i]
	return &outRelease{digits(r.Months), plainRange(x.Raw), plainRange(x.Corrected), grams(x.Raw), grams(x.Corrected)}
}
