package oldfilm

import (
	"math"
	"strconv"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of Weigh.
const (
	RuleRecoatNow  finding.ID = "weigh-recoat"
	RuleRecoatWash finding.ID = "weigh-recoat-wash"
	RuleStripNow   finding.ID = "weigh-strip"
	RuleNoRoom     finding.ID = "weigh-no-room"
)

// mostJobs bounds how many bottom jobs are counted ahead: nobody plans further.
const mostJobs = 20

// Course is one way to go on with an old film.
type Course struct {
	Hours   quantity.Range[float64] // of one hand, now, on the old film alone
	Jobs    quantity.Range[int]     // bottom jobs, this one among them, until the film has to come off; at most 20 are counted
	Months  quantity.Range[float64] // calendar months until then
	Finding finding.Finding
}

// Weigh sets recoating the old film now against stripping it now: what each takes in hours, and how long it is until the film has to come off
// because it has built up.
//
//	jobs   = floor((threshold "film", strip − film there) / film that stays from each job), at the ends that decide
//	months = jobs × interval
//
// There is the film that lies on the zone now; perJob is what each bottom job leaves for good (see Stays); recoat are the hours that the film
// takes to be recoated, washed and repaired. A film that leaves nothing behind is counted to the most jobs. The error is a finding.Faults.
//
// Basis: the threshold's row, common practice; the hours by memory of practice.
func Weigh(b *tables.Book, area quantity.Range[quantity.Area], there, perJob quantity.Range[quantity.Film], recoat quantity.Range[float64], interval quantity.Months) (now, bare Course, err error) {
	var fs finding.Faults
	need := func(given bool, key, want string) {
		if !given {
			fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: key, Want: want})
		}
	}
	need(area.Low.Given(), "area", "the area of the zone")
	need(there.Low.Given(), "film", "the film that lies there, read")
	need(perJob.Low.Given(), "per job", "the film that each job leaves")
	need(interval.Given() && interval.Sign() > 0, "interval", "months from job to job")
	limit, lacks := b.Threshold("film")
	need(lacks == nil, "threshold[film]", "a row with this key, as the module's own tables have")
	hours, ok := b.Hours(finding.Strip)
	need(ok, "step[strip]", "a row with this key, as the module's own tables have")
	if err := fs.Err(); err != nil {
		return now, bare, err
	}
	month := interval.Float(quantity.Month)
	none := quantity.Micrometre.N(0)
	now = course(&limit, there, perJob, month)
	now.Hours = recoat
	bare = course(&limit, quantity.Range[quantity.Film]{Low: none, Typical: none, High: none}, perJob, month)
	m2 := func(a quantity.Area) float64 { return a.Float(quantity.SquareMetre) }
	bare.Hours = quantity.Range[float64]{Low: hours.Low * m2(area.Low), Typical: hours.Typical * m2(area.Typical), High: hours.High * m2(area.High)}
	now.say(RuleRecoatNow, &limit)
	bare.say(RuleStripNow, &limit)
	if now.Jobs.High == 0 {
		now.Finding.Rule, now.Finding.Verdict = RuleNoRoom, finding.Caution
	}
	return now, bare, nil
}

// course counts jobs and months; Low is the soonest.
func course(limit *tables.Threshold, there, perJob quantity.Range[quantity.Film], month float64) Course {
	um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) }
	jobs := func(limit float64, there, each quantity.Film) int {
		if um(each) <= 0 {
			if um(there) > limit {
				return 0
			}
			return mostJobs
		}
		return int(min(mostJobs, max(0, math.Floor((limit-um(there))/um(each)))))
	}
	var c Course
	c.Jobs = quantity.Range[int]{
		Low: jobs(limit.Strip.Low, there.High, perJob.High), Typical: jobs(limit.Strip.Typical, there.Typical, perJob.Typical), High: jobs(limit.Strip.High, there.Low, perJob.Low),
	}
	c.Months = quantity.Range[float64]{Low: float64(c.Jobs.Low) * month, Typical: float64(c.Jobs.Typical) * month, High: float64(c.Jobs.High) * month}
	return c
}

func (c *Course) say(rule finding.ID, limit *tables.Threshold) {
	if rule == RuleRecoatNow && c.Hours.High == 0 {
		rule = RuleRecoatWash
	}
	most := func(n int, at bool) any {
		if at {
			return strconv.Itoa(n) + " or more"
		}
		return n
	}
	far := c.Jobs.High >= mostJobs
	c.Finding = finding.Finding{
		Rule: rule, Verdict: finding.Fine, Basis: []finding.Basis{limit.Basis("strip")},
		Facts: []finding.Fact{
			{Name: "hours_low", Value: int(math.Ceil(c.Hours.Low))},
			{Name: "hours_high", Value: int(math.Ceil(c.Hours.High))},
			{Name: "jobs_low", Value: c.Jobs.Low},
			{Name: "jobs_high", Value: most(c.Jobs.High, far)},
			{Name: "months_low", Value: int(c.Months.Low)},
			{Name: "months_high", Value: most(int(c.Months.High), far)},
		},
	}
}

// Stays returns the film that a job of so many coats of the coating leaves behind for good: a hard film all of it, a film that wears from
// nothing to one coat, since it is painted again before it is gone.
//
// Basis: assumption.
func Stays(c tables.Coating, coats int) quantity.Range[quantity.Film] {
	if c.Wears() {
		return quantity.Range[quantity.Film]{Low: quantity.Micrometre.N(0), Typical: c.Film.Low, High: c.Film.High}
	}
	n := int64(max(1, coats))
	times := func(f quantity.Film) quantity.Film {
		out := f
		for range n - 1 {
			out = out.Add(f)
		}
		return out
	}
	return quantity.Range[quantity.Film]{Low: times(c.Film.Low), Typical: times(c.Film.Typical), High: times(c.Film.High)}
}
