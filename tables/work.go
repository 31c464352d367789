package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Loss is a way of putting paint on, with what is lost on the way. Practical rate = theoretical rate × (1 − loss).
type Loss struct {
	Row
	Share   quantity.Range[quantity.Share]
	Caution string                          // key of the caution that this way calls for; empty: none beyond those of the paint
	Residue quantity.Range[quantity.Volume] // left in tray, sleeve, hose and can, each coat
	WindMax quantity.Speed                  // most wind in the open that it may go on in; not given: wind is no matter
}

func readLoss(r *entry.Row) Loss {
	l := Loss{Row: readRow(r), Share: entry.Range[quantity.Share](r, "loss"), Residue: entry.Range[quantity.Volume](r, "residue"), Caution: r.Text("caution"), WindMax: entry.Amount[quantity.Speed](r, "wind_max")}
	r.Need("three quantities: low, typical, high", "loss", "residue")
	if l.Share.Low.Given() && (l.Share.Low.Sign() < 0 || l.Share.High.Cmp(quantity.Percent.N(100)) >= 0) {
		r.Fault(finding.ErrImpossible, "loss", l.Share.High.String(), "0 % or more and less than 100 %")
	}
	if l.WindMax.Given() && l.WindMax.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "wind_max", l.WindMax.String(), "a wind above zero")
	}
	if l.Residue.Low.Sign() < 0 {
		r.Fault(finding.ErrImpossible, "residue", l.Residue.Low.String(), "a volume of zero or more")
	}
	return l
}

// Can is a size on sale. Without a coating key it is a size that any coating may come in.
type Can struct {
	Row
	Size    quantity.Volume
	Coating string
	Price   quantity.Money // not given in the embedded tables
}

func readCan(r *entry.Row) Can {
	c := Can{Row: readRow(r), Size: entry.Amount[quantity.Volume](r, "size"), Coating: r.Text("coating")}
	r.Need("a volume", "size")
	if c.Size.Given() && c.Size.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "size", c.Size.String(), "more than zero")
	}
	c.Price = entry.Money(r, "price")
	return c
}

// Colour is a colour that layers come in, with its lightness: the measure of a wear signal.
type Colour struct {
	Row
	SRGB      string  // "#rrggbb", a typical shade
	Lightness float64 // CIE 1976 L*, 0 black to 100 white, computed from SRGB
	Bright    bool    // not to be had in cuprous-oxide paint, which is dark by its own red
}

func readColour(r *entry.Row) Colour {
	c := Colour{Row: readRow(r), SRGB: r.Text("srgb"), Bright: r.YesNo("bright").True()}
	r.Need("a colour", "srgb")
	light, ok := lightness(c.SRGB)
	if c.SRGB != "" && !ok {
		r.Fault(finding.ErrValue, "srgb", entry.Describe(c.SRGB), `"#rrggbb", six hexadecimal digits`)
	}
	c.Lightness = light
	return c
}

// StepRow is one kind of work: its hours and what to beware of.
type StepRow struct {
	Row
	Hours    quantity.Range[float64] // of one hand, for a square metre
	Job      quantity.Range[float64] // hours for the whole job, of one hand or of the yard, for work that is not counted by the square metre
	Dry      bool                    // rain stops it
	Dries    quantity.Duration       // it leaves the surface wet: how long before a coat goes on; not given: it does not
	Wait     quantity.Duration       // that passes before the next work, beside the hours; not given: none
	Says     string                  // what to do, in a painter's words
	Hold     string                  // what must be true before going on; empty when nothing is checked
	cautions []string
}

// Cautions lists the keys of the cautions that the work calls for.
func (s StepRow) Cautions() iter.Seq[string] { return slices.Values(s.cautions) }

func readStep(r *entry.Row) StepRow {
	s := StepRow{Row: readRow(r), Says: r.Text("says"), Hold: r.Text("hold"), Wait: entry.Amount[quantity.Duration](r, "wait"), Dries: entry.Amount[quantity.Duration](r, "dries"), cautions: r.Texts("cautions")}
	s.Hours, _ = r.Floats("hours_m2", 0, 20)
	s.Job, _ = r.Floats("hours", 0, 100)
	s.Dry = r.YesNo("dry").True()
	notNegative(r, "wait", s.Wait)
	notNegative(r, "dries", s.Dries)
	r.Need("text", "says")
	r.Need("[low, typical, high] hours of one hand a square metre", "hours_m2")
	return s
}

// Factor is one number that a formula uses, as a range; above zero.
type Factor struct {
	Row
	Value quantity.Range[float64]
	Unit  string // what the number counts, for the reader
}

func readFactor(r *entry.Row) Factor {
	f := Factor{Row: readRow(r), Unit: r.Text("unit")}
	f.Value, _ = r.Floats("value", 1e-9, 1e9) // formulas divide by them
	r.Need("[low, typical, high] or one number", "value")
	return f
}

// Criterion is one ranking criterion's weight. Weights count inside a tier only.
type Criterion struct {
	Row
	Weight float64
	Says   string // what the criterion asks
}

func readCriterion(r *entry.Row) Criterion {
	c := Criterion{Row: readRow(r), Says: r.Text("says")}
	c.Weight, _ = r.Float("weight", 0, 100)
	r.Need("a number from 0 to 100", "weight")
	r.Need("text", "says")
	return c
}
