package report

import (
	"encoding/json"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// outCosts is what the job comes to by the prices of own tables.
type outCosts struct {
	Owner     outBill                     `json:"owner" says:"the bill when the owner does the work"`
	Yard      outBill                     `json:"yard" says:"the bill when the yard does"`
	OwnHours  outRange[quantity.Duration] `json:"own_hours,omitzero" says:"hours of the owner's own, which no price stands for"`
	RainOwner *outBill                    `json:"week_of_rain_owner,omitempty" says:"what a lost week of rain adds for the owner"`
	RainYard  *outBill                    `json:"week_of_rain_yard,omitempty" says:"what it adds for the yard"`
	Over      quantity.Months             `json:"over,omitzero" says:"time over which types and old films are set against each other"`
	By        string                      `json:"by,omitempty" says:"by whose prices that is done"`
	Types     []outTypeCost               `json:"types,omitempty" says:"what each type that may be used costs on the hull, the cheapest first; beside suitability, and moves no place"`
	Courses   []outCourseCost             `json:"old_films,omitempty" says:"going on over an old film against stripping it now, the work on the old film alone"`
	Findings  []outFinding                `json:"findings,omitempty" says:"what is said of the bills"`
}

// outBill is what a job costs whoever pays.
type outBill struct {
	Lines       []outLine                `json:"lines,omitempty" says:"what is paid for"`
	Net         outRange[quantity.Money] `json:"sum,omitzero" says:"of the lines; absent where none has money"`
	Share       *outNumbers              `json:"set_aside_pct,omitempty" says:"share set aside for the unforeseen, in per cent"`
	Contingency outRange[quantity.Money] `json:"set_aside,omitzero" says:"money set aside"`
	Total       outRange[quantity.Money] `json:"total,omitzero" says:"both"`
}

// outLine is one line of a bill.
type outLine struct {
	What  string                   `json:"what" says:"what is paid for"`
	Key   string                   `json:"key,omitempty" says:"key of the coating, supply or work"`
	Count *outDecimals             `json:"count,omitempty" says:"units of the price"`
	Per   string                   `json:"per,omitempty" says:"the unit of the price"`
	Each  outRange[quantity.Money] `json:"price,omitzero" says:"of one; absent for cans that were chosen by their prices"`
	Money outRange[quantity.Money] `json:"money,omitzero" says:"number × price; absent where no price is known"`
	Basis []outBasis               `json:"basis,omitempty" says:"what the price rests on"`
	Why   *outFinding              `json:"why,omitempty" says:"why there is no money"`
}

// outDecimals is a plain number that varies, with all its digits, so that a bill can be added up.
type outDecimals struct {
	Low     json.Number `json:"low" says:"low end"`
	Typical json.Number `json:"typical" says:"usual value"`
	High    json.Number `json:"high" says:"high end"`
}

// outTypeCost is what one type costs on the hull.
type outTypeCost struct {
	Coating outName                   `json:"coating" says:"the type"`
	Rank    int                       `json:"rank" says:"its place by suitability"`
	Tier    tierWord                  `json:"tier" says:"its tier"`
	Every   outRange[quantity.Months] `json:"every,omitzero" says:"calendar months from paint to paint"`
	Jobs    outJobs                   `json:"jobs" says:"bottom jobs in the time reckoned, this one among them"`
	First   outBill                   `json:"first_job" says:"this job on the hull"`
	Later   *outBill                  `json:"later_job,omitempty" says:"each job after it"`
	Between *outBill                  `json:"between,omitempty" says:"all lifts, cleanings and strips of the time reckoned"`
	AYear   outRange[quantity.Money]  `json:"a_year,omitzero" says:"all of it, by the year, without what is set aside"`
	Lacks   bool                      `json:"lacks_prices" says:"true: something of it has no price, and the sum is too low"`
}

// outJobs is a number of jobs.
type outJobs struct {
	Low     int `json:"low" says:"with the long life"`
	Typical int `json:"typical" says:"with the usual life"`
	High    int `json:"high" says:"with the short life"`
}

// outCourseCost is an old film, in money.
type outCourseCost struct {
	Part   string  `json:"part" says:"name of the part"`
	Recoat outBill `json:"recoat" says:"going on over it, with the strip where it falls within the time"`
	Strip  outBill `json:"strip" says:"stripping now"`
}

// outCosts encodes the bills; nil where the tables have no price.
func (c *composer) outCosts() *outCosts {
	k := c.job.Costs
	if !k.Reckoned() {
		return nil
	}
	out := &outCosts{
		Owner: c.outBill(k.Owner), Yard: c.outBill(k.Yard), OwnHours: hours(k.OwnHours), RainOwner: c.outBillIfAny(k.RainOwner), RainYard: c.outBillIfAny(k.RainYard),
		Over: k.Over, By: k.By, Findings: c.outFindings(k.Findings),
	}
	for _, t := range k.Types {
		out.Types = append(out.Types, outTypeCost{
			coating(t.Coating), t.Rank, tierWord(t.Tier.String()), months(t.Every), outJobs(t.Jobs), c.outBill(t.First), c.outBillIfAny(t.Later), c.outBillIfAny(t.Between), ranged(t.AYear), t.Lacks,
		})
	}
	for _, x := range k.Courses {
		out.Courses = append(out.Courses, outCourseCost{x.Part, c.outBill(x.Recoat), c.outBill(x.Strip)})
	}
	return out
}

func (c *composer) outBillIfAny(b cost.Bill) *outBill {
	if len(b.Lines) == 0 {
		return nil
	}
	out := c.outBill(b)
	return &out
}

func (c *composer) outBill(b cost.Bill) outBill {
	out := outBill{Net: ranged(b.Net), Contingency: ranged(b.Contingency), Total: ranged(b.Total)}
	if b.Contingency.Typical.Given() {
		out.Share = plainRange(b.Share)
	}
	for _, l := range b.Lines {
		x := outLine{What: l.Name, Key: l.What, Per: l.Per, Each: ranged(l.Each), Money: ranged(l.Money), Basis: c.outBases([]finding.Basis{l.Basis}), Why: c.outFinding(l.Why)}
		if l.Priced() && l.Each.Typical.Given() {
			x.Count = decimals(l.Count)
		}
		out.Lines = append(out.Lines, x)
	}
	return out
}

// decimals are decimals as plain numbers, as many digits as they have.
func decimals(r quantity.Range[decimal.Decimal]) *outDecimals {
	return &outDecimals{json.Number(r.Low.String()), json.Number(r.Typical.String()), json.Number(r.High.String())}
}

// outTimed is what patches that were worked on by the clock say.
type outTimed struct {
	Part     string                      `json:"part" says:"name of the part"`
	Work     string                      `json:"work" says:"the work that was timed"`
	Patches  int                         `json:"patches" says:"patches timed"`
	Rate     *outNumbers                 `json:"hours_m2,omitempty" says:"hours of one hand for a square metre, as timed"`
	Table    *outNumbers                 `json:"table_hours_m2,omitempty" says:"what the tables reckon"`
	Area     outRange[quantity.Area]     `json:"area,omitzero" says:"of the whole part"`
	Hours    outRange[quantity.Duration] `json:"hours,omitzero" says:"of one hand, the whole part"`
	Findings []outFinding                `json:"findings,omitempty" says:"what follows from it"`
}

func (c *composer) outTimed() []outTimed {
	var out []outTimed
	for _, t := range c.job.Timed {
		out = append(out, outTimed{t.Part, string(t.Work), t.Patches, plainRange(t.Rate), plainRange(t.Table), ranged(t.Area), hours(t.Hours), c.outFindings(t.Findings)})
	}
	return out
}
