package wear

import (
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var twice = decimal.NewFromInt(2)

// The rules of the boat's own record.
const (
	RuleRecord    finding.ID = "record-rate"
	RuleRecordFar finding.ID = "record-far"
	RuleRecordOdd finding.ID = "record-odd"
)

// Fit is the rate of wear of one coating on this boat, from the tables and her own record.
type Fit struct {
	Coating  string
	Table    quantity.Range[float64] // um a month afloat on the flat, by the tables alone
	Rate     quantity.Range[float64] // likewise, with the record: nine times in ten the truth lies between the ends
	Looks    int
	Findings finding.List
}

const (
	oneSided  = 1.6449 // standard deviations from the middle of a normal spread to the end beyond which one in twenty lies
	gridSteps = 240
	filmSteps = 13
	zoneSteps = 9
	reach     = 2.5  // standard deviations to which the films and zone factors are summed
	oddLog    = -9.0 // logarithm of the likelihood of each look, below which no rate explains them: one in eight thousand
)

// FitRecords returns a Fit for each coating that the records speak of, in their order. Records that do not pass Check are no input.
//
// The rate on the flat is looked for on a logarithmic scale. Before any look it lies about the tables' typical value, nine times in ten between
// their ends (see Rate). Each zone's looks are then weighed together:
//
//	film left = film laid − rate × zone factor × months afloat, not below nought
//
// The film laid and the zone's factor are not known better than their ranges, taken as nine times in ten; no film is taken as thinner than 1 um. A mean of n readings
// is off by the factor "record-film-error" of one place and "record-place-error" ÷ √n between places. A sighting says on which side of nought the
// film was between two looks. Low and high are the ends between which nine tenths of the weight lies; typical halves it.
//
// With no look that says anything the range is that of the tables. Two readings never give a range without width, since film, zone
// factor and gauge keep their errors.
//
// Basis: derived (Bayes' rule over the rate, a grid of it, of the film and of the zone factor); the errors are assumptions; that she is used as before is one too.
func FitRecords(b *tables.Book, u Use, records []Record) []Fit {
	u.Fits = nil
	var out []Fit
	for _, r := range records {
		if slices.ContainsFunc(out, func(f Fit) bool { return f.Coating == r.Coating }) {
			continue
		}
		c, err := b.Coating(r.Coating)
		if err != nil || !c.Wears() {
			continue
		}
		f := Fit{Coating: r.Coating, Table: Rate(b, c, u)}
		grid := newGrid(f.Table)
		odd := false
		for _, o := range records {
			if o.Coating == r.Coating {
				f.Looks += len(o.Looks)
				odd = !grid.weigh(b, u, o) || odd
			}
		}
		f.Rate = grid.between()
		f.say(c, odd, b)
		out = append(out, f)
	}
	return out
}

// say adds what the record makes of the tables.
func (f *Fit) say(c tables.Coating, odd bool, b *tables.Book) {
	errors, _ := b.Factor("record-film-error")
	times := math.Round(f.Rate.Typical/f.Table.Typical*10) / 10
	x := finding.Finding{
		Rule: RuleRecord, Verdict: finding.Fine, About: c.Name, Basis: []finding.Basis{errors.Basis("value")},
		Facts: []finding.Fact{
			{Name: "looks", Value: f.Looks},
			{Name: "low", Value: perMonth(f.Rate.Low)},
			{Name: "typical", Value: perMonth(f.Rate.Typical)},
			{Name: "high", Value: perMonth(f.Rate.High)},
			{Name: "table", Value: perMonth(f.Table.Typical)},
			{Name: "times", Value: times},
			{Name: "table_low", Value: perMonth(f.Table.Low)},
			{Name: "table_high", Value: perMonth(f.Table.High)},
		},
	}
	f.Findings = finding.List{x}
	if far := factor(b, "record-far").Typical; f.Rate.Typical > far*f.Table.Typical || f.Rate.Typical*far < f.Table.Typical {
		x.Rule, x.Verdict = RuleRecordFar, finding.Caution
		f.Findings = append(f.Findings, x)
	}
	if odd {
		f.Findings = append(f.Findings, finding.Finding{Rule: RuleRecordOdd, Verdict: finding.Ask, About: c.Name})
	}
}

// perMonth is a rate for the reader, um a month to one place.
func perMonth(um float64) quantity.Film {
	a, err := quantity.Micrometre.Near(um, 1, quantity.Nearest)
	if err != nil {
		return quantity.Film{}
	}
	return a
}

// grid is the weight of each rate.
type grid struct{ rate, log []float64 } // log of the weight

func newGrid(table quantity.Range[float64]) grid {
	var g grid
	low, high := math.Log(max(table.Low, 1e-3)/12), math.Log(max(table.High, 1e-2)*12)
	middle := math.Log(max(table.Typical, 1e-3))
	down, up := (middle-math.Log(max(table.Low, 1e-3)))/oneSided, (math.Log(max(table.High, 1e-2))-middle)/oneSided
	for i := range gridSteps {
		x := low + (high-low)*float64(i)/(gridSteps-1)
		sd := up
		if x < middle {
			sd = down
		}
		sd = max(sd, 0.05)
		g.rate = append(g.rate, math.Exp(x))
		g.log = append(g.log, -0.5*(x-middle)*(x-middle)/(sd*sd))
	}
	return g
}

// weigh multiplies the weights by what the record's looks make of each rate, zone by zone. It is not ok when no rate can explain
// them: the record contradicts itself, or a wrong film is in it.
func (g grid) weigh(b *tables.Book, u Use, r Record) bool {
	one, place, patchy := factor(b, "record-film-error").Typical, factor(b, "record-place-error").Typical, factor(b, "record-patchiness").Typical
	ok := true
	var zones []string
	for _, l := range r.Looks {
		if !slices.Contains(zones, l.Zone) {
			zones = append(zones, l.Zone)
		}
	}
	for _, z := range zones {
		row, err := b.Zone(z)
		if err != nil {
			continue
		}
		var looks []seen
		var laid quantity.Range[float64]
		for _, l := range r.Looks {
			if l.Zone != z {
				continue
			}
			if laid.High == 0 {
				laid = micrometres(l.laid(r))
			}
			s := seen{months: l.afloat(r, u), film: math.NaN(), signal: l.Signal}
			if l.Film.Given() {
				s.film = l.Film.Float(quantity.Micrometre)
				s.sd = math.Hypot(one, place/math.Sqrt(float64(max(1, l.Readings))))
			}
			looks = append(looks, s)
		}
		ok = g.zone(row.Wear, laid, one, patchy, looks) && ok
	}
	return ok
}

// seen is a look in numbers.
type seen struct {
	months, film, sd float64
	signal           quantity.YesNo
}

// zone weighs the looks at one zone, over all films that may have been laid there and all factors that it may have.
func (g grid) zone(wear, laid quantity.Range[float64], least, patchy float64, looks []seen) bool {
	films := spread(laid.Typical, max((laid.High-laid.Low)/(2*oneSided), least), filmSteps)
	factors := spread(wear.Typical, max((wear.High-wear.Low)/(2*oneSided), 0.02*wear.Typical), zoneSteps)
	best := math.Inf(-1)
	for i, rate := range g.rate {
		like := 0.0
		for _, f := range films {
			for _, k := range factors {
				like += f.weight * k.weight * likely(max(f.x, 1), rate*max(k.x, 0.05), patchy, looks)
			}
		}
		l := math.Log(max(like, 1e-300))
		best = max(best, l)
		g.log[i] += l
	}
	return best > oddLog*float64(len(looks))
}

// likely is how likely the looks are for a film that wears at the rate. It does not end at the same hour everywhere: the signal shows
// first where it was thinnest, patchy being the spread of that, as a share of the film.
func likely(film, rate, patchy float64, looks []seen) float64 {
	like := 1.0
	for _, s := range looks {
		left := film - rate*s.months
		if !math.IsNaN(s.film) {
			z := (s.film - max(left, 0)) / s.sd
			like *= math.Exp(-0.5 * z * z)
		}
		switch s.signal {
		case quantity.Yes:
			like *= normal(-left / (patchy * film))
		case quantity.No:
			like *= normal(left / (patchy * film))
		case quantity.NotSaid:
		}
	}
	return like
}

// normal is the share of a normal spread below x standard deviations.
func normal(x float64) float64 { return 0.5 * math.Erfc(-x/math.Sqrt2) }

type weighed struct{ x, weight float64 }

// spread is a normal spread in even steps, the weights adding up to one.
func spread(mean, sd float64, steps int) []weighed {
	out := make([]weighed, steps)
	all := 0.0
	for i := range out {
		z := -reach + 2*reach*float64(i)/float64(steps-1)
		out[i] = weighed{mean + float64(z*sd), math.Exp(-0.5 * z * z)}
		all += out[i].weight
	}
	for i := range out {
		out[i].weight /= all
	}
	return out
}

// between returns the rates below which one twentieth, half and nineteen twentieths of the weight lie.
func (g grid) between() quantity.Range[float64] {
	top := slices.Max(g.log)
	sum := make([]float64, len(g.log))
	for i := 1; i < len(sum); i++ {
		sum[i] = sum[i-1] + (math.Exp(g.log[i]-top)+math.Exp(g.log[i-1]-top))/2
	}
	at := func(share float64) float64 {
		want := share * sum[len(sum)-1]
		i, _ := slices.BinarySearch(sum, want)
		i = min(max(i, 1), len(sum)-1)
		f := 0.0
		if step := sum[i] - sum[i-1]; step > 0 {
			f = (want - sum[i-1]) / step
		}
		return math.Exp(math.Log(g.rate[i-1]) + float64(f*(math.Log(g.rate[i])-math.Log(g.rate[i-1]))))
	}
	return quantity.Range[float64]{Low: at(0.05), Typical: at(0.5), High: at(0.95)}
}
