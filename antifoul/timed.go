package antifoul

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of patches that were timed.
const (
	RuleTimedHours finding.ID = "timed-hours"
	RuleTimedOne   finding.ID = "timed-one-kind"
	RuleTimedFar   finding.ID = "timed-far"
	RuleTimedBlast finding.ID = "timed-blast"
)

// The words of Timed.Goes.
const (
	GoesEasy = "easy"
	GoesHard = "hard"
)

// Timed is one patch that was worked on by the clock, by one hand: a [[timed]] section.
type Timed struct {
	Part string
	Work finding.Action
	Area quantity.Area
	Took quantity.Duration
	Goes string // GoesEasy or GoesHard: an easy place of the part, or a hard one
}

// TimedWork is what the timed patches of one part say of one kind of work.
type TimedWork struct {
	Part     string
	Work     finding.Action
	Patches  int
	Rate     quantity.Range[float64] // hours of one hand a square metre
	Table    quantity.Range[float64] // what the tables reckon
	Area     quantity.Range[quantity.Area]
	Hours    quantity.Range[float64] // of one hand, the whole part
	Findings finding.List
}

// check returns the faults of the section, keys as in a boat file.
func (x Timed) check(b *tables.Book, parts []compat.Part) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	var names []string
	for _, p := range parts {
		names = append(names, p.Name)
	}
	if !slices.Contains(names, x.Part) {
		bad(finding.ErrUnknown, "part", entry.Describe(x.Part), finding.Suggest(x.Part, names))
	}
	switch row, err := b.Step(x.Work); {
	case err != nil:
		var works []string
		for s := range b.Steps() {
			if s.Hours.High > 0 {
				works = append(works, s.Key)
			}
		}
		bad(finding.ErrUnknown, "work", entry.Describe(string(x.Work)), finding.Suggest(string(x.Work), works))
	case row.Hours.High == 0:
		bad(finding.ErrValue, "work", entry.Describe(string(x.Work)), "work that is done by the square metre: strip, abrade, degrease …")
	}
	switch {
	case !x.Area.Given():
		bad(finding.ErrMissing, "area", "", "the area of the patch, \"0.25 m2\"")
	case x.Area.Sign() <= 0 || x.Area.Cmp(quantity.SquareMetre.N(100)) > 0:
		bad(finding.ErrImpossible, "area", x.Area.String(), "more than zero, to 100 m2")
	}
	switch {
	case !x.Took.Given():
		bad(finding.ErrMissing, "took", "", "how long it took one hand, \"12 min\"")
	case x.Took.Sign() <= 0 || x.Took.Cmp(quantity.Hour.N(100)) > 0:
		bad(finding.ErrImpossible, "took", x.Took.String(), "more than zero, to 100 h")
	}
	if x.Goes != "" && x.Goes != GoesEasy && x.Goes != GoesHard {
		bad(finding.ErrValue, "goes", entry.Describe(x.Goes), "one of easy, hard")
	}
	return fs
}

// rate is hours of one hand a square metre.
func (x Timed) rate() float64 {
	return x.Took.Float(quantity.Hour) / x.Area.Float(quantity.SquareMetre)
}

// timedRate is what the patches of the part say of the work, as a rate that stands in place of the tables'; false where nobody timed it.
//
//	low, high = the fastest and the slowest patch; typical = the mean of the easy ones' mean and the hard ones' mean
//
// Where only one sort was timed, or nobody said which, the rate has the tables' own spread about the mean of the patches, at least.
// Basis: derived; that half of a bottom is easy and half hard is an assumption.
func timedRate(boat Boat, part string, row *tables.StepRow) (rate quantity.Range[float64], n int, both, ok bool) {
	var easy, hard, other []float64
	low, high := math.MaxFloat64, 0.0
	for _, x := range boat.Timed {
		if x.Part != part || string(x.Work) != row.Key {
			continue
		}
		r := x.rate()
		low, high = min(low, r), max(high, r)
		switch x.Goes {
		case GoesEasy:
			easy = append(easy, r)
		case GoesHard:
			hard = append(hard, r)
		default:
			other = append(other, r)
		}
		n++
	}
	if n == 0 {
		return rate, n, false, false
	}
	both = len(easy) > 0 && len(hard) > 0
	if both {
		typical := (mean(easy) + mean(hard)) / 2
		return quantity.Range[float64]{Low: low, Typical: typical, High: high}, n, true, true
	}
	m := mean(slices.Concat(easy, hard, other))
	return quantity.Range[float64]{Low: min(low, m*row.Hours.Low/row.Hours.Typical), Typical: m, High: max(high, m*row.Hours.High/row.Hours.Typical)}, n, false, true
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

// rateOf is the hours of one hand a square metre for the work on the part: by the patches that were timed on her, else by the tables.
func rateOf(boat Boat, part string, row *tables.StepRow) quantity.Range[float64] {
	if rate, _, _, ok := timedRate(boat, part, row); ok {
		return rate
	}
	return row.Hours
}

// farOff is how many times the tables' ends a timed rate is told to be far from them. Basis: assumption.
const farOff = 1.5

// timed tells what the patches say, part by part and work by work, in the order of the sections, and where blasting breaks even.
func (j *Job) timed(b *tables.Book, boat Boat) {
	for i, x := range boat.Timed {
		if slices.ContainsFunc(boat.Timed[:i], func(o Timed) bool { return o.Part == x.Part && o.Work == x.Work }) {
			continue
		}
		at := slices.IndexFunc(boat.Parts, func(p compat.Part) bool { return p.Name == x.Part })
		area := j.Areas[at].Total // one for each part; Check has seen to it that there is the part, and the work
		row, err := b.Step(x.Work)
		if err != nil || !area.Typical.Given() { // what is never painted
			continue
		}
		rate, n, both, _ := timedRate(boat, x.Part, &row)
		t := TimedWork{Part: x.Part, Work: x.Work, Patches: n, Rate: rate, Table: row.Hours, Area: area, Hours: hours(rate, area, 1)}
		say := func(rule finding.ID, v finding.Verdict, facts ...finding.Fact) {
			t.Findings = append(t.Findings, finding.Finding{Rule: rule, Verdict: v, About: x.Part, Against: row.Name, Facts: facts, Basis: derivedBasis})
		}
		say(RuleTimedHours, finding.Fine, fact("patches", n), fact("low", int(math.Floor(t.Hours.Low))), fact("typical", int(math.Round(t.Hours.Typical))), fact("high", int(math.Ceil(t.Hours.High))))
		if !both {
			say(RuleTimedOne, finding.Caution)
		}
		if rate.Typical > row.Hours.High*farOff || rate.Typical < row.Hours.Low/farOff {
			say(RuleTimedFar, finding.Caution, fact("timed", perSquareMetre(rate.Typical)), fact("tables", perSquareMetre(row.Hours.Typical)))
		}
		if f, ok := breakEven(b, t, boat.Parts[at].Material); ok {
			t.Findings = append(t.Findings, f)
		}
		j.Timed = append(j.Timed, t)
	}
}

// breakEven is what an hour of one's own must be worth for blasting by others to pay.
//
//	worth = area × price of blasting a square metre / hours
//
// It asks for a price of the work "blast" in the book and for scraping that was timed; false where one is missing.
func breakEven(b *tables.Book, t TimedWork, material string) (finding.Finding, bool) {
	p, _ := b.Price(tables.PricedWork, string(finding.Blast), tables.ByYard)
	if p.What == "" || t.Work != finding.Strip {
		return finding.Finding{}, false
	}
	area := t.Area.Typical.In(quantity.SquareMetre, 2, quantity.Nearest)
	whole := p.Money.Typical.Scale(area).Round(2, quantity.Nearest)
	h := decimal.New(int64(math.Round(t.Hours.Typical*100)), -2)
	n, err := quantity.Quotient(whole.Amount(), h, 2, quantity.Nearest)
	if err != nil {
		return finding.Finding{}, false
	}
	worth, err := quantity.NewMoney(n, whole.Currency())
	if err != nil {
		return finding.Finding{}, false
	}
	takes := "ask the yard whether the surface takes it, and by which medium"
	if m, err := b.Material(material); err == nil && slices.Contains(slices.Collect(m.Prepare()), finding.Blast) {
		takes = "the material takes it"
	}
	return finding.Finding{
		Rule: RuleTimedBlast, Verdict: finding.Fine, About: t.Part, Basis: []finding.Basis{p.Basis("price")},
		Facts: facts(fact("money", whole.String()), fact("hours", h.String()), fact("worth", worth.String()), fact("takes", takes)),
	}, true
}

// timedFaults returns the faults of the sections.
func (x Boat) timedFaults(b *tables.Book) finding.Faults {
	var fs finding.Faults
	for i, y := range x.Timed {
		fs = append(fs, y.check(b, x.Parts).Under("", fmt.Sprintf("timed[%d]", i+1))...)
	}
	return fs
}

// readTimed reads a section.
func readTimed(r *entry.Row) Timed {
	x := Timed{
		Part: r.Text("part"), Work: finding.Action(cmp.Or(r.Text("work"), string(finding.Strip))),
		Area: entry.Amount[quantity.Area](r, "area"), Took: entry.Amount[quantity.Duration](r, "took"), Goes: r.Word("goes", GoesEasy, GoesHard),
	}
	r.Close()
	return x
}
