package gauge

import (
	"math/big"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Verdict is what a standard's rule makes of a survey. A single is what the standard holds against its limits of single places: a
// reading, or a spot's mean.
type Verdict struct {
	Standard    string // name of the row of acceptance that judged
	Passes      bool
	Count       int           // readings
	Needed      int           // readings that the standard wants on the area
	Singles     int           // readings, or spots
	Areas       int           // whole areas of spots; 1 for a standard without spots
	NeededAreas int           // areas of spots that the standard wants; 0 for one without spots
	Mean        quantity.Film // of the singles, corrected, to 0.1 um or 0.0001 mil, rounded down
	Lowest      quantity.Film // single, corrected
	Highest     quantity.Film // single, corrected
	Below       int           // singles below the nominal film
	Missing     quantity.Film // what the thinnest place lacks of the nominal film, where the film is too thin to pass; else not given
	MissingMean quantity.Film // what the mean lacks of it; not given where it lacks nothing
	Findings    finding.List  // one a criterion, never empty
	_           [0]func()
}

// Share returns the share of the singles that lie below the nominal film, to 0.1 %, rounded up.
//
// Basis: derived.
func (v Verdict) Share() quantity.Share {
	if v.Singles == 0 {
		return quantity.Share{}
	}
	n, err := quantity.Quotient(decimal.NewFromInt(int64(100*v.Below)), decimal.NewFromInt(int64(v.Singles)), 1, quantity.Up)
	if err != nil {
		return quantity.Share{}
	}
	return quantity.Percent.Of(n)
}

// Accept judges the readings of one area by a row of acceptance. Each limit that the row has is told, whichever fails:
//
//	readings, or areas of spots   at least as many as its rows of sampling want on the area
//	mean                          at least so much of the nominal film, at most so much of the film agreed; of all readings, or of each area
//	single reading, or spot       at least so much of the nominal film, at most so much of the film agreed
//	below the nominal film        at most such a share of them, or fewer where the share itself fails
//
// A spot is the mean of the readings of one zone that name it, an area the mean of so many spots of one zone, in their order. The
// correction of the profile is taken off each reading first. An area given in ft2 is counted by the standard's US figures
// where it keeps some. Means are exact: one on a limit lies on it. Too few readings pass nothing. Where the film is too thin, the
// verdict says what the thinnest place and the mean lack.
//
// The error is a finding.Faults.
//
// Basis: the acceptance, sampling and profile rows, second-hand or from memory as they say.
func Accept(b *tables.Book, acceptance string, s Survey) (Verdict, error) {
	fs := s.Check(b)
	row, err := b.Acceptance(acceptance)
	if err != nil {
		fs = append(fs, unknownStandard(b, acceptance))
	}
	if err := fs.Err(); err != nil {
		return Verdict{}, err
	}
	standard := row.Sampling
	if row.SamplingUS != "" && s.Area.Unit() == quantity.SquareFoot {
		standard = row.SamplingUS
	}
	needed, line, err := Needed(b, standard, s.Area)
	if err != nil {
		return Verdict{}, err
	}
	readings, corrected := correct(b, s)
	v := Verdict{Standard: row.Name, Passes: true, Count: len(readings), Needed: needed * row.Spots * row.Readings, Findings: corrected}
	j := judge{Verdict: &v, row: row, survey: s, all: singles(row, readings)}
	j.areas = areas(row, j.all)
	j.measure()
	j.enough(needed, line)
	j.means()
	j.places(b)
	return v, nil
}

func unknownStandard(b *tables.Book, got string) finding.Fault {
	var known []string
	for a := range b.Acceptances() {
		known = append(known, a.Key)
	}
	return finding.Fault{Kind: finding.ErrUnknown, Key: "standard", Got: entry.Describe(got), Want: finding.Suggest(got, known)}
}

// judge holds what one survey is judged by.
type judge struct {
	*Verdict
	row             tables.Acceptance
	survey          Survey
	all             []single
	areas           []*big.Rat // means, um
	lowest, highest *big.Rat   // singles, um
	thin            bool
}

// of is the share of the film, without the zeros that the product brings: 80 % of 320 um is 256 um.
func of(f quantity.Film, s quantity.Share) quantity.Film {
	n := f.Number().Mul(s.Number()).Shift(-2)
	for n.Exponent() < 0 && n.Truncate(-n.Exponent()-1).Equal(n) {
		n = n.Truncate(-n.Exponent() - 1)
	}
	return f.Unit().Of(n)
}

// measure takes mean, ends and count of the singles.
func (j *judge) measure() {
	byMean := func(x, y single) int { return x.mean.Cmp(y.mean) }
	low, high := slices.MinFunc(j.all, byMean), slices.MaxFunc(j.all, byMean)
	j.lowest, j.highest = low.mean, high.mean
	j.Lowest, j.Highest = low.show(quantity.Down), high.show(quantity.Up)
	nominal := exact(j.survey.Nominal)
	for _, s := range j.all {
		if s.mean.Cmp(nominal) < 0 {
			j.Below++
		}
	}
	j.Singles, j.Areas = len(j.all), len(j.areas)
	j.Mean = shown(meanOf(j.all), j.survey.Nominal, quantity.Down)
}

// enough holds the count of readings, or of whole areas, against what is needed.
func (j *judge) enough(needed int, line tables.Sampling) {
	basis := []finding.Basis{line.Basis("readings")}
	area := finding.Fact{Name: "area", Value: j.survey.Area}
	if j.row.Spots == 1 {
		j.tell(j.Count >= j.Needed, RuleEnough, RuleTooFew, basis, area, finding.Fact{Name: "needed", Value: j.Needed})
	} else {
		j.NeededAreas = needed
		few := 0
		for _, s := range j.all {
			if s.readings < j.row.Readings {
				few++
			}
		}
		each := finding.Fact{Name: "each", Value: j.row.Readings}
		basis = append(basis, j.row.Basis("area_spots"))
		j.tell(j.Areas >= needed, RuleAreas, RuleAreasFew, basis, area, each, finding.Fact{Name: "spots", Value: j.row.Spots},
			finding.Fact{Name: "areas", Value: j.Areas}, finding.Fact{Name: "needed", Value: needed}, finding.Fact{Name: "readings", Value: j.Needed})
		if few > 0 {
			j.add(RuleSpotsFew, finding.Caution, []finding.Basis{j.row.Basis("spot_readings")}, each, finding.Fact{Name: "few", Value: few})
		}
	}
	if j.row.Split.Given() && j.survey.Area.Cmp(j.row.Split) > 0 {
		j.add(RuleSplit, finding.Caution, []finding.Basis{j.row.Basis("split")}, area, finding.Fact{Name: "split", Value: j.row.Split})
	}
}

// means holds the mean of all readings, or that of each whole area, against its limits.
func (j *judge) means() {
	if len(j.areas) == 0 {
		return
	}
	thinnest, thickest := slices.MinFunc(j.areas, (*big.Rat).Cmp), slices.MaxFunc(j.areas, (*big.Rat).Cmp)
	tell := func(holds bool, good, bad finding.ID, basis finding.Basis, mean, limit quantity.Film, which string) {
		if j.row.Spots == 1 {
			which = "the readings"
		}
		j.tell(holds, good, bad, []finding.Basis{basis}, finding.Fact{Name: "group", Value: which}, finding.Fact{Name: "of", Value: mean}, finding.Fact{Name: "limit", Value: limit})
	}
	if j.row.LeastMean.Given() {
		limit := of(j.survey.Nominal, j.row.LeastMean)
		holds := thinnest.Cmp(exact(limit)) >= 0
		j.thin = j.thin || !holds
		tell(holds, RuleMean, RuleMeanThin, j.row.Basis("least_mean"), shown(thinnest, j.survey.Nominal, quantity.Down), limit, "the thinnest area")
	}
	if j.row.MostMean.Given() && j.survey.Most.Given() {
		limit := of(j.survey.Most, j.row.MostMean)
		tell(thickest.Cmp(exact(limit)) <= 0, RuleMeanMost, RuleMeanThick, j.row.Basis("most_mean"), shown(thickest, j.survey.Nominal, quantity.Up), limit, "the thickest area")
	}
}

// places holds the single readings, or spots, against their limits.
func (j *judge) places(b *tables.Book) {
	row, s := j.row, j.survey
	fact := func(name string, f quantity.Film) finding.Fact { return finding.Fact{Name: name, Value: f} }
	least := of(s.Nominal, row.LeastSingle)
	holds := j.lowest.Cmp(exact(least)) >= 0
	j.thin = j.thin || !holds
	j.tell(holds, RuleSingle, RuleThin, []finding.Basis{row.Basis("least_single")}, fact("limit", least))
	if row.Below.Given() {
		part := decimal.NewFromInt(int64(100 * j.Below)).Cmp(row.Below.Number().Mul(decimal.NewFromInt(int64(j.Singles))))
		holds, words := part <= 0, "at most "
		if row.Fewer {
			holds, words = part < 0, "fewer than "
		}
		j.thin = j.thin || !holds
		j.tell(holds, RuleShare, RuleShareMany, []finding.Basis{row.Basis("below")}, finding.Fact{Name: "limit", Value: words + row.Below.Show(quantity.Metric)})
	}
	switch {
	case s.Most.Given() && row.MostSingle.Given():
		limit := of(s.Most, row.MostSingle)
		j.tell(j.highest.Cmp(exact(limit)) <= 0, RuleMost, RuleThick, []finding.Basis{row.Basis("most_single")}, fact("limit", limit), fact("most", s.Most))
	case !s.Most.Given() && row.Guide != "":
		g, err := b.Value(row.Guide)
		if err != nil {
			break // the loader has seen to it that it is there
		}
		limit := new(big.Rat).Mul(exact(s.Nominal), new(big.Rat).SetFloat64(g.Value.Typical))
		if j.highest.Cmp(limit) > 0 {
			j.add(RuleGuide, finding.Caution, []finding.Basis{g.Basis("value"), row.Basis("guide")}, fact("limit", shown(limit, s.Nominal, quantity.Down)))
		}
	}
	if j.thin {
		j.Missing = s.Nominal.Sub(j.Lowest)
		if m := s.Nominal.Sub(j.Mean); m.Sign() > 0 {
			j.MissingMean = m
		}
		j.add(RuleMissing, finding.Caution, []finding.Basis{{Kind: finding.Derived}}, fact("missing", j.Missing))
	}
}

// tell adds the finding of one criterion.
func (j *judge) tell(holds bool, good, bad finding.ID, basis []finding.Basis, more ...finding.Fact) {
	if holds {
		j.add(good, finding.Fine, basis, more...)
		return
	}
	j.Passes = false
	j.add(bad, finding.Forbidden, basis, more...)
}

func (j *judge) add(rule finding.ID, v finding.Verdict, basis []finding.Basis, more ...finding.Fact) {
	what := "reading"
	if j.row.Readings > 1 {
		what = "spot"
	}
	j.Findings = append(j.Findings, finding.Finding{Rule: rule, Verdict: v, Basis: basis, Facts: append(more,
		finding.Fact{Name: "standard", Value: j.Standard}, finding.Fact{Name: "nominal", Value: j.survey.Nominal}, finding.Fact{Name: "count", Value: j.Count},
		finding.Fact{Name: "single", Value: what}, finding.Fact{Name: "singles", Value: j.Singles}, finding.Fact{Name: "mean", Value: j.Mean},
		finding.Fact{Name: "lowest", Value: j.Lowest}, finding.Fact{Name: "highest", Value: j.Highest}, finding.Fact{Name: "below", Value: j.Below},
	)})
}
