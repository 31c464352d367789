package report

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"time"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// outAssumed is a key of the boat file that was not given.
type outAssumed struct {
	Key   string `json:"key" says:"key of the boat file"`
	Taken string `json:"taken" says:"what was taken instead"`
}

// outName is a row of the tables.
type outName struct {
	Key  string `json:"key" says:"key in the tables"`
	Name string `json:"name" says:"its name, as a painter says it"`
}

// outRange is an amount that varies: its ends and the usual value, each absent where it is not known.
type outRange[A amount] struct {
	Low     A `json:"low,omitzero" says:"low end"`
	Typical A `json:"typical,omitzero" says:"usual value"`
	High    A `json:"high,omitzero" says:"high end"`
}

// amount is any quantity.
type amount interface{ Given() bool }

// IsZero reports whether nothing is known, for omitzero.
func (r outRange[A]) IsZero() bool { return !r.Low.Given() && !r.Typical.Given() && !r.High.Given() }

func ranged[A amount](r quantity.Range[A]) outRange[A] { return outRange[A]{r.Low, r.Typical, r.High} }

// near makes a range of amounts of plain numbers, to one place. What is no number is absent.
func near[D quantity.Dim](r quantity.Range[float64], u quantity.Unit[D], way quantity.Rounding) outRange[quantity.Amount[D]] {
	return outRange[quantity.Amount[D]]{amountNear(r.Low, u, way), amountNear(r.Typical, u, way), amountNear(r.High, u, way)}
}

func amountNear[D quantity.Dim](x float64, u quantity.Unit[D], r quantity.Rounding) quantity.Amount[D] {
	a, err := u.Near(x, 1, r)
	if err != nil {
		return quantity.Amount[D]{}
	}
	return a
}

// hours are hours of work, rounded up.
func hours(r quantity.Range[float64]) outRange[quantity.Duration] {
	if r.High == 0 {
		return outRange[quantity.Duration]{}
	}
	return near(r, quantity.Hour, quantity.Up)
}

// months are calendar months, rounded down; not given where nothing ends them.
func months(r quantity.Range[float64]) outRange[quantity.Months] {
	if r.High <= 0 {
		return outRange[quantity.Months]{}
	}
	return near(r, quantity.Month, quantity.Down)
}

// outNumbers is a plain number that varies; the key that it stands under says its unit.
type outNumbers struct {
	Low     float64 `json:"low"`
	Typical float64 `json:"typical"`
	High    float64 `json:"high"`
}

// plainRange rounds a range to four digits; nil when one of them is none.
func plainRange(r quantity.Range[float64]) *outNumbers {
	for _, x := range []float64{r.Low, r.Typical, r.High} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return nil
		}
	}
	return &outNumbers{digits(r.Low), digits(r.Typical), digits(r.High)}
}

// digits rounds to four significant digits.
func digits(x float64) float64 {
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 4, 64), 64)
	if err != nil {
		return x
	}
	return y
}

// outFinding is one judgement.
type outFinding struct {
	Rule    string      `json:"rule" says:"id of the rule that decided"`
	Verdict verdictWord `json:"verdict" says:"how it came out, rising; ask means that nobody knows and is never read as allowed"`
	About   string      `json:"about,omitempty" says:"what was judged"`
	Against string      `json:"against,omitempty" says:"what it was judged against"`
	Facts   []outFact   `json:"facts,omitempty" says:"the values that decided"`
	Steps   []outStep   `json:"steps,omitempty" says:"what must be done first, in order"`
	Basis   []outBasis  `json:"basis,omitempty" says:"what it rests on, the rule's own basis last"`
	Says    string      `json:"says" says:"the sentence, in the reader's units"`
}

// verdictWord is a verdict.
type verdictWord string

// outFact is a value with its name in the rule's words.
type outFact struct {
	Name  string   `json:"name" says:"its name in the rule's words"`
	Value outValue `json:"value" says:"an amount with its unit, a number, a range, a date or words"`
}

// outValue is a text, a number, or a range of either.
type outValue struct{ v any }

// MarshalJSON writes what it holds.
func (x outValue) MarshalJSON() ([]byte, error) { return json.Marshal(x.v) }

// IsZero reports whether it holds nothing, for omitzero.
func (x outValue) IsZero() bool { return x.v == nil }

// outBasis says what a statement rests on.
type outBasis struct {
	Kind   basisWord `json:"kind" says:"what it rests on"`
	Source string    `json:"source,omitempty" says:"key of a source, or the user's own data sheet or record"`
	Place  string    `json:"place,omitempty" says:"the place in the source, or the formula"`
	Read   string    `json:"read,omitempty" says:"second-hand where the source was read through another text"`
	Doubt  string    `json:"doubt,omitempty" says:"what speaks against it"`
	Own    bool      `json:"own,omitempty" says:"true where an own table set it"`
}

// basisWord is a kind of basis.
type basisWord string

// outStep is work that must be done first.
type outStep struct {
	Do      string                  `json:"do" says:"the work"`
	Coating string                  `json:"coating,omitempty" says:"key of the coating that it puts on"`
	Film    outRange[quantity.Film] `json:"film,omitzero" says:"dry film that it must reach"`
	Grit    string                  `json:"grit,omitempty" says:"the abrasive"`
	Coats   int                     `json:"coats,omitempty" says:"coats of it"`
}

func (c *composer) outFindings(fs finding.List) []outFinding {
	var out []outFinding
	for _, f := range fs {
		out = append(out, *c.outFinding(f))
	}
	return out
}

// outFinding encodes a finding and notes the sources that it cites; nil for one without a rule.
func (c *composer) outFinding(f finding.Finding) *outFinding {
	if f.Rule == "" {
		return nil
	}
	out := &outFinding{Rule: string(f.Rule), Verdict: verdictWord(f.Verdict.String()), About: f.About, Against: f.Against, Says: c.job.Book.Say(f, c.units)}
	for _, x := range f.Facts {
		if v := outValueOf(x.Value); v.v != nil {
			out.Facts = append(out.Facts, outFact{x.Name, v})
		}
	}
	for _, s := range f.First {
		out.Steps = append(out.Steps, outStepOf(s))
	}
	bases := slices.Clone(f.Basis)
	if rule, err := c.job.Book.Rule(f.Rule); err == nil {
		bases = append(bases, rule.Basis())
	}
	out.Basis = c.outBases(bases)
	return out
}

// outBases encodes each basis once and notes what it cites.
func (c *composer) outBases(bases []finding.Basis) []outBasis {
	var out []outBasis
	for _, b := range bases {
		x := outBasis{Kind: basisWord(b.Kind), Source: b.Source, Place: b.Place, Read: b.Read, Doubt: b.Doubt, Own: b.Own}
		if b.Kind == "" || slices.Contains(out, x) {
			continue
		}
		if b.Source != "" && b.Kind != finding.OwnTable {
			c.cite(b)
		}
		out = append(out, x)
	}
	return out
}

func outStepOf(s finding.Step) outStep {
	return outStep{Do: string(s.Do), Coating: s.Coating, Film: ranged(s.Film), Grit: s.Grit, Coats: s.Coats}
}

func outSteps(list []finding.Step) []outStep {
	var out []outStep
	for _, s := range list {
		out = append(out, outStepOf(s))
	}
	return out
}

// outValue encodes a value of a finding or a criterion; it holds nothing where the value is not given.
func outValueOf(v any) outValue {
	switch v := v.(type) {
	case nil:
		return outValue{}
	case string, int, bool:
		return outValue{v}
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return outValue{}
		}
		return outValue{digits(v)}
	case quantity.Range[float64]:
		if n := plainRange(v); n != nil {
			return outValue{n}
		}
		return outValue{}
	case quantity.Range[quantity.Length]:
		return valueOf(v)
	case quantity.Range[quantity.Area]:
		return valueOf(v)
	case quantity.Range[quantity.Film]:
		return valueOf(v)
	case quantity.Range[quantity.Volume]:
		return valueOf(v)
	case quantity.Range[quantity.Share]:
		return valueOf(v)
	case quantity.Range[quantity.Duration]:
		return valueOf(v)
	case quantity.Range[quantity.Months]:
		return valueOf(v)
	case interface {
		Ends() (low, high quantity.Temperature)
	}:
		low, high := v.Ends()
		return outValue{outRange[quantity.Temperature]{Low: low, High: high}}
	case interface {
		Given() bool
		String() string
	}: // an amount, money or a date
		if v.Given() {
			return outValue{v.String()}
		}
		return outValue{}
	}
	return outValue{tables.Show(v, quantity.Metric)} // whatever the reader's units: a value is no sentence
}

func valueOf[A amount](r quantity.Range[A]) outValue {
	if out := ranged(r); !out.IsZero() {
		return outValue{out}
	}
	return outValue{}
}

// nameOf is a row of the tables; nil for an empty key. Of a key that no table holds the name is the key.
func (c *composer) nameOf(key string, name func(string) string) *outName {
	if key == "" {
		return nil
	}
	return &outName{key, name(key)}
}

func (c *composer) zoneNames(keys []string) []outName {
	var out []outName
	for _, k := range keys {
		out = append(out, outName{k, c.zone(k)})
	}
	return out
}

func coating(k tables.Coating) outName { return outName{k.Key, k.Name} }

func (c *composer) coatingName(key string) string {
	if k, err := c.job.Book.Coating(key); err == nil {
		return k.Name
	}
	return key
}

// yes is an answer that may be missing.
func yes(y quantity.YesNo) *bool {
	if !y.Said() {
		return nil
	}
	v := y.True()
	return &v
}

// roleWord is what a layer is for.
type roleWord string

func role(p compat.Purpose) roleWord {
	if p == "" {
		p = compat.Found
	}
	return roleWord(p)
}

// clockWord is a time of day as a boat file writes it, from minutes after midnight; empty for none.
func clockWord(minutes int) string {
	if minutes == 0 {
		return ""
	}
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60)
}

// momentWord is a moment: a date and a time of day, with the offset of the zone where one is known.
type momentWord string

// moment writes a moment by the clock of the place; empty for none.
func (c *composer) moment(t time.Time) momentWord {
	switch {
	case t.IsZero():
		return ""
	case c.job.Boat.Weather.Zone == nil:
		return momentWord(t.Format("2006-01-02T15:04:05"))
	}
	return momentWord(t.Format(time.RFC3339))
}
