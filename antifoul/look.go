package antifoul

import (
	"io/fs"

	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// The rules of a look beside a plan.
const (
	RuleSurveyFirst   finding.ID = "survey-first"
	RuleSurveyDiffers finding.ID = "survey-differs"
)

// ReadNote reads a surveyor's condition note: a boat file in which only the day and one part must stand. The hull's size may be left out
// where no section asks for areas; whatever else stands in it is read and checked as ReadBoatWith does. The error is a finding.Faults.
func ReadNote(b *tables.Book, fsys fs.FS, name string) (Boat, error) {
	return readBoat(b, fsys, name, nil, false)
}

// Look answers the found half of the question: what is on her, what was seen, what gauge and comb read, which metals share the water, and
// what of it asks for something. Nothing is ranked and nothing is planned: of the Job only Boat, Book, OldFilms, Metals, PutOn, Survey and
// Cautions are set, and Areas and Wetted where the hull's size is given. The error is a finding.Faults.
//
// Basis: each finding names its own: its row of observations.toml, thresholds.toml or the rules.
func Look(b *tables.Book, boat Boat) (*Job, error) {
	if err := append(complete(b), boat.check(b, boat.sized())...).Err(); err != nil {
		return nil, err
	}
	j := &Job{Boat: boat, Book: b}
	boat = boat.filled(b)
	var err error
	if boat.sized() {
		if j.Areas, j.Wetted, err = partAreas(b, boat); err != nil {
			return nil, err
		}
	}
	if err := j.oldFilms(b); err != nil {
		return nil, err
	}
	if err := j.metals(b); err != nil {
		return nil, err
	}
	if err := j.putOn(b, boat); err != nil {
		return nil, err
	}
	seen, err := survey.Judge(b, boat.Survey, j.Boat.Parts, boat.On)
	if err != nil {
		return nil, err
	}
	j.Survey = &seen
	j.Cautions = j.cautions(b, boat)
	return j, nil
}

// surveyed judges what was seen of her, where anything was noted.
func (j *Job) surveyed(b *tables.Book) error {
	if !j.Boat.Survey.Given() {
		return nil
	}
	seen, err := survey.Judge(b, j.Boat.Survey, j.Boat.Parts, j.Boat.On)
	if err != nil {
		return err
	}
	j.Survey = &seen
	say := func(rule finding.ID, v finding.Verdict, n int) {
		if n > 0 {
			j.Findings = append(j.Findings, finding.Finding{Rule: rule, Verdict: v, Facts: facts(fact("count", n))})
		}
	}
	say(RuleSurveyFirst, finding.Needs, len(seen.At(tables.BeforeLaunch)))
	say(RuleSurveyDiffers, finding.Ask, len(seen.Differs))
	return nil
}

// sized reports whether anything is said of how large the hull is.
func (x Boat) sized() bool {
	h := x.Hull
	return h.Kind != "" || h.Length.Given() || h.Beam.Given() || h.Draft.Given() || len(h.Measured) > 0 || len(h.Girths) > 0 || len(h.Offsets) > 0 || len(h.Pieces) > 0
}

// unsizedFaults are those of sections that hang on areas, in a note that says nothing of the hull's size.
func (x Boat) unsizedFaults() finding.Faults {
	if len(x.Gauged)+len(x.Combed)+len(x.Used) == 0 {
		return nil
	}
	return finding.Faults{{Kind: finding.ErrMissing, Key: "hull", Want: "the hull's size or her measured areas: gauge, comb and used are judged by area"}}
}
