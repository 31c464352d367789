package antifoul

import (
	"errors"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/tables/finding"
)

// Morning is the answer for one morning: the coat that is next, and whether its can may be opened.
type Morning struct {
	Turn Turn
	calendar.Morning
}

// Morning says whether the next coat of the plan may be begun at the moment, on the clock that the moment carries. The next coat is the first whose
// planned hours are not over by then, and all that the plan has before the moment is taken as done. A coat that is planned for a later day is not due; one
// before which other work is planned waits for that, whatever the weather.
// ok is false when no coat is left, or no plan was made.
// The error is a finding.Faults, as calendar.Today's.
//
// Basis: derived, as calendar.Today.
func (j *Job) Morning(now time.Time) (m Morning, ok bool, err error) {
	turns, plan := j.Season.Shown()
	var before []string
	for _, it := range plan.Items {
		t := turns[it.Task]
		if !it.End().After(now) {
			continue
		}
		if len(t.Coats) == 0 || it.Again {
			name := t.Name
			if it.Again {
				name = "abrading"
			}
			before = append(before, name)
			continue
		}
		boat := j.Boat.inSeason(j.Book)
		m.Turn = t
		start := it.Start().In(now.Location())
		say := func(rule finding.ID, v finding.Verdict, facts ...finding.Fact) {
			m.Verdict = v
			m.Finding = finding.Finding{Rule: rule, Verdict: v, About: t.Name, Basis: []finding.Basis{{Kind: finding.Derived}}, Facts: facts}
		}
		if day(start) != day(now) {
			m.Next, m.Sure = it.Start(), it.Verdict == finding.Fine
			say(calendar.RuleNoCoat, finding.Forbidden, fact("next", calendar.Moment(start)))
			return m, true, nil
		}
		at := now
		if len(before) > 0 {
			at = start
		}
		m.Morning, err = calendar.Today(j.Book, t.Task, boat.Work, at, boat.Weather)
		var faults finding.Faults
		if errors.As(err, &faults) {
			err = faults.Under("", "work")
		}
		if err == nil && len(before) > 0 {
			m.From = start
			say(calendar.RuleBefore, finding.Needs, fact("before", strings.Join(before, ", then ")), fact("from", calendar.Moment(start)))
		}
		return m, err == nil, err
	}
	return Morning{}, false, nil
}
