package report

import (
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// outOldFilm is what is on one part.
type outOldFilm struct {
	Part     string         `json:"part" says:"name of the part"`
	May      []outCandidate `json:"may_be,omitempty" says:"what it may be, the likely ones first; absent where nothing was seen"`
	Settle   []string       `json:"would_settle,omitempty" says:"tests not made yet, the most telling first"`
	Hazards  []string       `json:"hazards,omitempty" says:"keys of the cautions of every film that is not ruled out"`
	Findings []outFinding   `json:"findings,omitempty" says:"of the signs together"`
	Stay     *outMayStay    `json:"may_stay,omitempty" says:"whether it may stay, by what was read"`
}

// outCandidate is a film that it may be.
type outCandidate struct {
	Film     outName    `json:"film" says:"the old film"`
	Standing string     `json:"standing" says:"how it stands"`
	For      []outName  `json:"for,omitempty" says:"signs that speak for it"`
	Against  []outName  `json:"against,omitempty" says:"signs that speak against it"`
	Finding  outFinding `json:"finding" says:"the same in words"`
}

// outMayStay is whether an old film may stay.
type outMayStay struct {
	Do       string                      `json:"do,omitempty" says:"what to do; absent where no reading decides it"`
	Decided  []outName                   `json:"decided_by,omitempty" says:"the readings that asked for most"`
	State    string                      `json:"state,omitempty" says:"condition of the film by these readings"`
	Hours    outRange[quantity.Duration] `json:"hours,omitzero" says:"of one hand"`
	Waste    outRange[quantity.Mass]     `json:"waste,omitzero" says:"paint that comes off, its two ends"`
	Findings []outFinding                `json:"findings,omitempty" says:"reading by reading"`
	Recoat   *outCourse                  `json:"recoat,omitempty" says:"recoating now"`
	Strip    *outCourse                  `json:"strip,omitempty" says:"stripping now"`
}

// outCourse is recoating or stripping, over the years.
type outCourse struct {
	Hours   outRange[quantity.Duration] `json:"hours,omitzero" says:"of one hand, now"`
	Jobs    outSpan                     `json:"jobs" says:"bottom jobs until the film has to come off, this one among them; at most 20 are counted"`
	Months  outRange[quantity.Months]   `json:"months,omitzero" says:"calendar months until then"`
	Finding outFinding                  `json:"finding" says:"the same in words"`
}

func (c *composer) outOldFilms() []outOldFilm {
	var out []outOldFilm
	for _, f := range c.job.OldFilms {
		x := outOldFilm{Part: f.Part}
		if f.May != nil {
			x.Settle, x.Hazards, x.Findings = f.May.Settle, f.May.Hazards, c.outFindings(f.May.Findings)
			for _, y := range f.May.Films {
				x.May = append(x.May, outCandidate{coating(y.Film), y.Standing.String(), signNames(y.For), signNames(y.Against), *c.outFinding(y.Finding)})
			}
		}
		if d := f.Decision; len(d.Findings) > 0 {
			s := &outMayStay{State: string(d.State), Hours: hours(d.Hours), Waste: ranged(d.Waste), Findings: c.outFindings(d.Findings), Recoat: c.outCourse(f.Recoat), Strip: c.outCourse(f.Strip)}
			if d.Do != oldfilm.NotRead {
				s.Do = d.Do.String()
			}
			for _, k := range d.Decided {
				s.Decided = append(s.Decided, outName{k, c.threshold(k)})
			}
			x.Stay = s
		}
		out = append(out, x)
	}
	return out
}

func signNames(list []tables.Sign) []outName {
	var out []outName
	for _, s := range list {
		out = append(out, outName{s.Key, s.Name})
	}
	return out
}

func (c *composer) outCourse(x *oldfilm.Course) *outCourse {
	if x == nil {
		return nil
	}
	return &outCourse{hours(x.Hours), outSpan{float64(x.Jobs.Low), float64(x.Jobs.High)}, months(x.Months), *c.outFinding(x.Finding)}
}
