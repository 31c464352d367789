package gauge

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Survey is the readings of one inspection area.
type Survey struct {
	Area     quantity.Area
	Nominal  quantity.Film   // the dry film that was specified
	Most     quantity.Film   // the largest dry film that was agreed; not given: none was
	Profile  string          // key of a blast profile whose correction is taken off each reading; empty: none is
	Readings []quantity.Film // single readings, as the gauge showed them
}

// mostFilm bounds a reading: what a gauge shows beyond it is a slip.
const mostFilm = 5000

// Check returns every fault of the survey, readings counted from 1.
func (s Survey) Check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	film := func(key string, f quantity.Film) {
		if um := f.Float(quantity.Micrometre); !f.Given() || um <= 0 || um > mostFilm {
			bad(finding.ErrImpossible, key, f.String(), fmt.Sprintf("a film above zero, to %d um", mostFilm))
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
		film(fmt.Sprintf("readings[%d]", i+1), r)
	}
	if s.Profile != "" {
		if _, ok := correction(b, s.Profile); !ok {
			var known []string
			for p := range b.Profiles() {
				if p.Correction.Given() {
					known = append(known, p.Key)
				}
			}
			bad(finding.ErrUnknown, "profile", s.Profile, finding.Suggest(s.Profile, known))
		}
	}
	return fs
}

func correction(b *tables.Book, key string) (tables.Profile, bool) {
	for p := range b.Profiles() {
		if p.Key == key && p.Correction.Given() {
			return p, true
		}
	}
	return tables.Profile{}, false
}

// Verdict is what a standard's rule makes of a survey.
type Verdict struct {
	Passes   bool
	Count    int           // readings
	Needed   int           // readings that the standard wants on the area
	Mean     quantity.Film // corrected, to 0.1 um, rounded down
	Lowest   quantity.Film // corrected
	Highest  quantity.Film
	Below    int          // readings below the nominal film
	Findings finding.List // one a criterion, never empty
	_        [0]func()
}

// Accept judges the readings of one area. All criteria are told, whichever fails:
//
//	both       at least as many readings as the standard wants on the area; none above Most, where one was agreed
//	ISO 19840  mean ≥ nominal; every reading ≥ 80 % of it; the readings below it fewer than 20 % of all: exactly 20 % fails
//	MSC.215    at least 90 % of the readings ≥ nominal, and every other one ≥ 90 % of it
//
// The correction of the profile is taken off each reading first. Too few readings pass nothing. The error is a finding.Faults.
//
// Basis: the value and sampling rows of each document, second-hand or from memory as they say.
func Accept(b *tables.Book, standard string, s Survey) (Verdict, error) {
	fs := s.Check(b)
	limits := map[string]decimal.Decimal{}
	keys := map[string][]string{ISO19840: {"iso-19840-single", "iso-19840-below"}, NinetyTen: {"msc-215-82-single", "msc-215-82-share"}}[standard]
	basis := map[string]finding.Basis{}
	for _, key := range keys {
		v, err := b.Value(key)
		if err != nil {
			fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: "value[" + key + "]", Want: "a row with this key, as the module's own tables have"})
			continue
		}
		share, err := quantity.Percent.Near(v.Value.Typical, 4, quantity.Nearest)
		if err != nil {
			fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "value[" + key + "]", Got: err.Error(), Want: "a share in per cent"})
			continue
		}
		limits[key], basis[key] = share.Number().Shift(-2), v.Basis("value")
	}
	if keys == nil {
		fs = append(fs, finding.Fault{Kind: finding.ErrUnknown, Key: "standard", Got: standard, Want: "one of " + strings.Join([]string{ISO19840, NinetyTen}, ", ")})
	}
	if err := fs.Err(); err != nil {
		return Verdict{}, err
	}
	needed, line, err := Needed(b, standard, s.Area)
	if err != nil {
		return Verdict{}, err
	}
	v := Verdict{Passes: true, Count: len(s.Readings), Needed: needed}
	readings := v.correct(b, s)
	thick, err := v.measure(readings, s.Nominal)
	if err != nil {
		return Verdict{}, err
	}
	v.judge(v.Count >= needed, RuleEnough, RuleTooFew, line.Basis("readings"), finding.Fact{Name: "needed", Value: needed}, finding.Fact{Name: "area", Value: s.Area})
	single := s.Nominal.Scale(limits[keys[0]])
	nominal := finding.Fact{Name: "nominal", Value: s.Nominal}
	if standard == ISO19840 {
		v.judge(thick, RuleMean, RuleMeanThin, basis[keys[0]], nominal)
		v.judge(v.Lowest.Cmp(single) >= 0, RuleSingle, RuleThin, basis[keys[0]], nominal, finding.Fact{Name: "least", Value: single})
		most := limits[keys[1]].Mul(decimal.NewFromInt(int64(v.Count)))
		v.judge(decimal.NewFromInt(int64(v.Below)).LessThan(most), RuleShare, RuleShareMany, basis[keys[1]], nominal, finding.Fact{Name: "limit", Value: "fewer than 20 %"})
	} else {
		v.judge(v.Lowest.Cmp(single) >= 0, RuleSingle, RuleThin, basis[keys[0]], nominal, finding.Fact{Name: "least", Value: single})
		least := limits[keys[1]].Mul(decimal.NewFromInt(int64(v.Count)))
		v.judge(decimal.NewFromInt(int64(v.Count-v.Below)).GreaterThanOrEqual(least), RuleShare, RuleShareMany, basis[keys[1]], nominal, finding.Fact{Name: "limit", Value: "at most 10 %"})
	}
	if s.Most.Given() {
		v.judge(v.Highest.Cmp(s.Most) <= 0, RuleMost, RuleThick, finding.Basis{Kind: finding.Derived}, finding.Fact{Name: "most", Value: s.Most})
	}
	if split, err := b.Value("iso-19840-split"); err == nil && standard == ISO19840 && s.Area.Float(quantity.SquareMetre) > split.Value.Typical {
		v.Findings = append(v.Findings, finding.Finding{Rule: RuleSplit, Verdict: finding.Caution, Facts: []finding.Fact{{Name: "area", Value: s.Area}}, Basis: []finding.Basis{split.Basis("value")}})
	}
	return v, nil
}

// correct takes the profile's correction off the readings and says so.
func (v *Verdict) correct(b *tables.Book, s Survey) []quantity.Film {
	p, ok := correction(b, s.Profile)
	if !ok {
		return s.Readings
	}
	out := make([]quantity.Film, len(s.Readings))
	for i, r := range s.Readings {
		out[i] = r.Sub(p.Correction)
	}
	v.Findings = append(v.Findings, finding.Finding{
		Rule: RuleCorrected, Verdict: finding.Fine, Basis: []finding.Basis{p.Basis("correction")},
		Facts: []finding.Fact{{Name: "correction", Value: p.Correction}, {Name: "profile", Value: p.Name}},
	})
	return out
}

// measure takes mean, ends and count of the readings; thick reports whether the mean, before it is rounded, is no less than nominal.
func (v *Verdict) measure(readings []quantity.Film, nominal quantity.Film) (thick bool, err error) {
	sum := readings[0]
	v.Lowest, v.Highest = readings[0], readings[0]
	for i, r := range readings {
		if i > 0 {
			sum = sum.Add(r)
		}
		if r.Cmp(v.Lowest) < 0 {
			v.Lowest = r
		}
		if r.Cmp(v.Highest) > 0 {
			v.Highest = r
		}
		if r.Cmp(nominal) < 0 {
			v.Below++
		}
	}
	n := decimal.NewFromInt(int64(len(readings)))
	mean, err := quantity.Quotient(sum.In(quantity.Micrometre, 6, quantity.Down), n, 1, quantity.Down)
	v.Mean = quantity.Micrometre.Of(mean)
	return sum.Cmp(nominal.Scale(n)) >= 0, err
}

// judge adds the finding of one criterion.
func (v *Verdict) judge(holds bool, good, bad finding.ID, basis finding.Basis, more ...finding.Fact) {
	f := finding.Finding{Rule: good, Verdict: finding.Fine, Basis: []finding.Basis{basis}}
	if !holds {
		f.Rule, f.Verdict, v.Passes = bad, finding.Forbidden, false
	}
	f.Facts = append([]finding.Fact{
		{Name: "count", Value: v.Count}, {Name: "mean", Value: v.Mean}, {Name: "lowest", Value: v.Lowest}, {Name: "highest", Value: v.Highest}, {Name: "below", Value: v.Below},
	}, more...)
	v.Findings = append(v.Findings, f)
}
