package gauge

import (
	"fmt"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Survey is the readings of one inspection area.
type Survey struct {
	Area     quantity.Area
	Nominal  quantity.Film // the dry film that was specified; the least one where a least and a greatest were
	Most     quantity.Film // the largest dry film that was agreed; not given: none was
	Profile  string        // key of a blast profile whose correction is taken off each reading; empty: none is
	Readings []Reading
}

// mostFilm bounds a reading: what a gauge shows beyond it is a slip.
const mostFilm = 5000

// Check returns every fault of the survey, readings counted from 1, or by the line of their sheet.
func (s Survey) Check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	film := func(key string, f quantity.Film) {
		if bound := filmFault(key, f); bound != nil {
			fs = append(fs, *bound)
		}
	}
	if !s.Area.Given() || s.Area.Sign() <= 0 {
		bad(finding.ErrImpossible, "area", s.Area.String(), "an area above zero")
	}
	film("nominal", s.Nominal)
	if s.Most.Given() {
		film("most", s.Most)
		if s.Most.Cmp(s.Nominal) < 0 {
			bad(finding.ErrImpossible, "most", s.Most.String(), "no less than the nominal film")
		}
	}
	if len(s.Readings) == 0 {
		bad(finding.ErrMissing, "readings", "", "at least one reading")
	}
	for i, r := range s.Readings {
		film(r.key(i), r.Film)
	}
	if s.Profile != "" {
		if _, ok := correction(b, s.Profile); !ok {
			var known []string
			for p := range b.Profiles() {
				if p.Correction.Given() {
					known = append(known, p.Key)
				}
			}
			bad(finding.ErrUnknown, "profile", entry.Describe(s.Profile), finding.Suggest(s.Profile, known))
		}
	}
	return fs
}

// key names the reading in a fault.
func (r Reading) key(i int) string {
	if r.Line > 0 {
		return fmt.Sprintf("line %d", r.Line)
	}
	return fmt.Sprintf("readings[%d]", i+1)
}

// filmFault is the fault of a film that no gauge shows; nil where it may be one.
func filmFault(key string, f quantity.Film) *finding.Fault {
	if um := f.Float(quantity.Micrometre); f.Given() && um > 0 && um <= mostFilm {
		return nil
	}
	return &finding.Fault{Kind: finding.ErrImpossible, Key: key, Got: f.String(), Want: fmt.Sprintf("a film above zero, to %d um", mostFilm)}
}

func correction(b *tables.Book, key string) (tables.Profile, bool) {
	for p := range b.Profiles() {
		if p.Key == key && p.Correction.Given() {
			return p, true
		}
	}
	return tables.Profile{}, false
}
