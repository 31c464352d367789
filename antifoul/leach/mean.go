package leach

import (
	"math"
	"slices"
	"strconv"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// daysAMonth is the mean length of a month.
const daysAMonth = 365.25 / 12

// longest is the longest life that is taken, in months.
const longest = 1200

// The rows that the mean is worked out by.
const (
	released = "iso-10890-released"
	divisor  = "finnie-mass-balance"
	field    = "lagerstrom-2018-field" // what speaks against the divisor; it changes no number
)

// Values lists the keys of the rows of the value table that Mean and Balance ask for.
func Values() []string { return []string{released, divisor, field} }

// Release is the mean release of one substance over a life, by two methods side by side.
type Release struct {
	Held
	Raw       quantity.Range[float64] // ug/cm2/d, mass balance of ISO 10890
	Corrected quantity.Range[float64] // ug/cm2/d, the same divided by the factor of Finnie 2006
}

// Rate is the mean release of a film over a life.
type Rate struct {
	In       Contents     // what is in the film
	Months   float64      // the life in months
	Releases []Release    // one for each substance held, in its order; empty when Findings says why
	Findings finding.List // those of In first; never empty
}

// Copper returns the release of copper in all; false when there is none, or it is not known.
func (r Rate) Copper() (Release, bool) {
	i := slices.IndexFunc(r.Releases, func(x Release) bool { return x.Of == Copper })
	if i < 0 {
		return Release{}, false
	}
	return r.Releases[i], true
}

// Mean returns the mean release of a film over its life in months, for each substance that Content counts: raw by mass balance, and
// corrected beside it. Give the months that she is afloat: ashore next to nothing leaves.
//
//	raw (ug/cm2/d) = 0.9 × held / days; days = months × 365.25 / 12
//	corrected      = raw / 2.9
//
// The film is as for Content, the life above 0 to 1200 months. Nothing is rounded. Raw is never below corrected. The mean says nothing of
// any one day: most paints release more in their first weeks. How good it is: the raw mean is a worst case by the standard's own words,
// and the divided one was found on ships; field rates of leisure paints were up to 8 times the calculated ones (Lagerström, 2018).
// The share and the divisor are rows of the value table. The error is a finding.Faults: film, life, or a book without those rows.
// Source: ISO 10890:2010 for the method, its formula and share from memory; Finnie 2006, abstract, for the divisor.
func Mean(b *tables.Book, c tables.Coating, film quantity.Range[quantity.Film], lifeMonths float64) (Rate, error) {
	out := Rate{Months: lifeMonths}
	share, by, against, fs := factors(b)
	fs = append(fs, monthFaults("life", lifeMonths)...)
	fs = append(fs, filmFaults(film)...)
	if len(fs) > 0 {
		return Rate{}, fs.Err()
	}
	var err error
	if out.In, err = Content(b, c, film); err != nil {
		return Rate{}, err
	}
	out.Findings = slices.Clone(out.In.Findings)
	if len(out.In.Held) == 0 {
		return out, nil
	}
	var raw, corrected, carried []string
	for _, h := range out.In.Held {
		x := Release{Held: h}
		x.Raw, x.Corrected = balance(h.UgCm2, lifeMonths, share.Value, by.Value)
		out.Releases = append(out.Releases, x)
		if x.Of == Zinc || x.Metal && !x.Element {
			continue // copper is said once, whatever it is bound in, and the other actives as what they are
		}
		raw = append(raw, whole(x.Raw)+" µg/cm²/d of "+x.Name)
		corrected = append(corrected, whole(x.Corrected)+" µg/cm²/d of "+x.Name)
		if !x.Metal {
			carried = append(carried, x.Name)
		}
	}
	add := func(rule finding.ID, facts []finding.Fact, basis ...finding.Basis) {
		out.Findings = append(out.Findings, finding.Finding{Rule: rule, Verdict: finding.Caution, About: c.Name, Facts: facts, Basis: basis})
	}
	add(RuleRaw, []finding.Fact{{Name: "share", Value: share.Value}, {Name: "months", Value: months(lifeMonths)}, {Name: "mean", Value: and(raw)}}, share.Basis("value"))
	divided := finding.Fact{Name: "divisor", Value: by.Value}
	add(RuleCorrected, []finding.Fact{divided, {Name: "field", Value: against.Value}, {Name: "mean", Value: and(corrected)}}, by.Basis("value"), against.Basis("value"))
	if len(carried) > 0 {
		add(RuleCarried, []finding.Fact{divided, {Name: "carried", Value: and(carried)}}, by.Basis("value"))
	}
	return out, nil
}

// Balance returns the two means of a stock that is known by itself, in ug/cm2, as by X-ray on a painted boat: the formulas are those of
// Mean. The stock rises from zero or more, the life is above 0 to 1200 months.
//
// Basis: as of Mean.
func Balance(b *tables.Book, ugCm2 quantity.Range[float64], lifeMonths float64) (raw, corrected quantity.Range[float64], err error) {
	share, by, _, fs := factors(b)
	fs = append(fs, monthFaults("life", lifeMonths)...)
	fs = append(fs, rangeFaults("stock", "ug/cm2", ugCm2)...)
	if len(fs) > 0 {
		return raw, corrected, fs.Err()
	}
	raw, corrected = balance(ugCm2, lifeMonths, share.Value, by.Value)
	return raw, corrected, nil
}

// balance spreads the share (%) of a stock over the life; a larger divisor gives the low end of the corrected mean.
func balance(ugCm2 quantity.Range[float64], lifeMonths float64, share, by quantity.Range[float64]) (raw, corrected quantity.Range[float64]) {
	days := lifeMonths * daysAMonth
	raw = quantity.Range[float64]{
		Low:     share.Low / 100 * ugCm2.Low / days,
		Typical: share.Typical / 100 * ugCm2.Typical / days,
		High:    share.High / 100 * ugCm2.High / days,
	}
	return raw, quantity.Range[float64]{Low: raw.Low / by.High, Typical: raw.Typical / by.Typical, High: raw.High / by.Low}
}

// factors returns the share that is released, the divisor and what speaks against it, with a fault for a row that the book does not hold or that makes no sense:
// a share of more than all, a divisor that would raise the mean.
func factors(b *tables.Book) (share, by, against tables.Value, fs finding.Faults) {
	get := func(key string, low, high float64, want string) tables.Value {
		v, err := b.Value(key)
		switch {
		case err != nil:
			fs = append(fs, finding.Fault{Kind: finding.ErrMissing, File: "the tables", Key: "value[" + key + "]", Want: want})
		case !(v.Value.Low >= low && v.Value.High <= high):
			fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, File: "the tables", Key: "value[" + key + "].value", Got: v.Value.Show(quantity.Metric), Want: want})
		}
		return v
	}
	share = get(released, 1e-9, 100, "the share that is released, above 0 % to 100 %")
	by = get(divisor, 1, 1000, "what a mean by mass balance is divided by, 1 to 1000")
	against = get(field, 1, 1000, "how many times the calculated values field rates were, 1 to 1000")
	return share, by, against, fs
}

func monthFaults(key string, x float64) finding.Faults {
	if x > 0 && x <= longest {
		return nil
	}
	return finding.Faults{{Kind: finding.ErrImpossible, Key: key, Got: strconv.FormatFloat(x, 'g', -1, 64), Want: "months above 0, to 1200"}}
}

func rangeFaults(key, unit string, r quantity.Range[float64]) finding.Faults {
	if r.Low >= 0 && r.Low <= r.Typical && r.Typical <= r.High && !math.IsInf(r.High, 0) {
		return nil
	}
	return finding.Faults{{Kind: finding.ErrImpossible, Key: key, Got: r.Show(quantity.Metric), Want: "zero or more " + unit + ": low, typical and high, rising"}}
}

// months says a life to a tenth: "7.5 months".
func months(x float64) string {
	n := strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64)
	if n == "1" {
		return "1 month"
	}
	return n + " months"
}
