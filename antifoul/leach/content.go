package leach

import (
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The elements that are counted in all actives together.
const (
	Copper = "copper"
	Zinc   = "zinc"
)

// thickest is the thickest dry film that is taken, in micrometres.
const thickest = 10000

// Held is what a square centimetre of dry film holds of one substance.
type Held struct {
	Of      string                  // key of the active; Copper or Zinc for the element in all actives together
	Name    string                  // as a report says it
	Element bool                    // it is an element, already counted in the actives that it is a part of
	Metal   bool                    // it is copper or holds copper, which is what the divisor was found for
	UgCm2   quantity.Range[float64] // ug/cm2
}

// Contents is what is in a dry film.
type Contents struct {
	Coating  tables.Coating
	Film     quantity.Range[quantity.Film]
	Held     []Held       // the actives in the order of the row, then copper and zinc in all, where there is any; empty when Findings says why
	Findings finding.List // never empty
}

// Of returns what the film holds of the substance; false when that is not known, or none of it was listed.
func (x Contents) Of(key string) (Held, bool) {
	for _, h := range x.Held {
		if h.Of == key {
			return h, true
		}
	}
	return Held{}, false
}

// Content returns what a dry film of the coating holds: each active as the substance it is, then copper and zinc in all of them.
//
//	held (ug/cm2) = 100 × share of the element × content (%) × density (kg/L) × film (um) / solids (%)
//
// The share is 1 for the substance itself. It is an identity: a square centimetre of film came from film × 100 / solids of wet paint,
// whose mass is that times the density. Film is the whole dry film of all its coats, above 0 to 10 mm; content is by weight of the wet
// paint, density that of the wet paint. The low end takes the low content, density and film and the high solids; the high end the
// reverse; so the ends lie wider than any one paint does.
//
// A coating without biocide gives one Fine finding and holds nothing. One with biocide of which the actives, their content, the solids
// or the density are not known gives Ask, which names what is missing, and holds nothing that could be taken for nought.
// The error is a finding.Faults: a film that is not given, not rising or out of range.
// Basis: derived; of the inputs each as its row says, the density an assumption.
func Content(b *tables.Book, c tables.Coating, film quantity.Range[quantity.Film]) (Contents, error) {
	out := Contents{Coating: c, Film: film}
	if fs := filmFaults(film); len(fs) > 0 {
		return out, fs.Err()
	}
	listed := 0
	var missing []string
	lacks := func(what string) { missing = append(missing, what) }
	for a := range c.Actives() {
		listed++
		if row, err := b.Active(a.Key); err != nil {
			lacks("what " + a.Key + " is")
		} else if !a.Content.Low.Given() || !a.Content.High.Given() {
			lacks("the content of " + row.Name)
		}
	}
	switch {
	case listed == 0 && c.Biocide == tables.NoBiocide:
		out.Findings = finding.List{{Rule: RuleNone, Verdict: finding.Fine, About: c.Name, Basis: []finding.Basis{c.Basis("active")}}}
		return out, nil
	case listed == 0:
		lacks("which actives it holds")
	}
	if !c.Solids.Low.Given() {
		lacks("the volume solids")
	}
	if !c.Density.Low.Given() {
		lacks("the density of the wet paint")
	}
	if len(missing) > 0 {
		out.Findings = finding.List{{
			Rule: RuleAsk, Verdict: finding.Ask, About: c.Name, Facts: []finding.Fact{{Name: "missing", Value: and(missing)}},
			Basis: []finding.Basis{c.Basis("active")},
		}}
		return out, nil
	}
	out.Held = held(b, c, film)
	var said []string
	for _, h := range out.Held {
		said = append(said, whole(h.UgCm2)+" µg/cm² of "+h.Name)
	}
	out.Findings = finding.List{{
		Rule: RuleContent, Verdict: finding.Caution, About: c.Name,
		Facts: []finding.Fact{{Name: "film", Value: film}, {Name: "held", Value: and(said)}, {Name: "density", Value: c.Density}},
		Basis: []finding.Basis{c.Basis("active"), c.Basis("density"), c.Basis("solids")},
	}}
	return out, nil
}

// held works the identity out for a coating of which all is known.
func held(b *tables.Book, c tables.Coating, film quantity.Range[quantity.Film]) []Held {
	wet := quantity.Range[float64]{ // mg of wet paint for a square centimetre, times 10
		Low:     100 * c.Density.Low.Float(quantity.KilogramPerLitre) * film.Low.Float(quantity.Micrometre) / c.Solids.High.Float(quantity.Percent),
		Typical: 100 * c.Density.Typical.Float(quantity.KilogramPerLitre) * film.Typical.Float(quantity.Micrometre) / c.Solids.Typical.Float(quantity.Percent),
		High:    100 * c.Density.High.Float(quantity.KilogramPerLitre) * film.High.Float(quantity.Micrometre) / c.Solids.Low.Float(quantity.Percent),
	}
	var out []Held
	copper := Held{Of: Copper, Name: "copper in all", Element: true, Metal: true}
	zinc := Held{Of: Zinc, Name: "zinc in all actives", Element: true}
	for a := range c.Actives() {
		row, err := b.Active(a.Key)
		if err != nil {
			continue // Content has asked for it
		}
		h := Held{Of: a.Key, Name: row.Name, Metal: row.Copper > 0, UgCm2: quantity.Range[float64]{
			Low:     a.Content.Low.Float(quantity.Percent) * wet.Low,
			Typical: a.Content.Typical.Float(quantity.Percent) * wet.Typical,
			High:    a.Content.High.Float(quantity.Percent) * wet.High,
		}}
		out = append(out, h)
		copper.UgCm2 = plus(copper.UgCm2, times(h.UgCm2, row.Copper))
		zinc.UgCm2 = plus(zinc.UgCm2, times(h.UgCm2, row.Zinc))
	}
	for _, e := range []Held{copper, zinc} {
		if e.UgCm2.High > 0 {
			out = append(out, e)
		}
	}
	return out
}

func filmFaults(film quantity.Range[quantity.Film]) finding.Faults {
	const want = "a whole dry film, above 0 um to 10000 um: low, typical and high, rising"
	low, typical, high := film.Low, film.Typical, film.High
	switch {
	case !low.Given() || !typical.Given() || !high.Given():
		return finding.Faults{{Kind: finding.ErrMissing, Key: "film", Want: want}}
	case low.Sign() <= 0 || low.Cmp(typical) > 0 || typical.Cmp(high) > 0 || high.Cmp(quantity.Micrometre.N(thickest)) > 0:
		return finding.Faults{{Kind: finding.ErrImpossible, Key: "film", Got: low.String() + ", " + typical.String() + ", " + high.String(), Want: want}}
	}
	return nil
}

func times(r quantity.Range[float64], k float64) quantity.Range[float64] {
	return quantity.Range[float64]{Low: r.Low * k, Typical: r.Typical * k, High: r.High * k}
}

func plus(a, b quantity.Range[float64]) quantity.Range[float64] {
	return quantity.Range[float64]{Low: a.Low + b.Low, Typical: a.Typical + b.Typical, High: a.High + b.High}
}

// whole says a range of large numbers by three digits: "5680 to 26100".
func whole(r quantity.Range[float64]) string {
	say := func(x float64) string {
		digits := strconv.FormatFloat(x, 'e', 2, 64)
		y, err := strconv.ParseFloat(digits, 64)
		if err != nil {
			return digits
		}
		return strconv.FormatFloat(y, 'f', -1, 64)
	}
	if low, high := say(r.Low), say(r.High); low != high {
		return low + " to " + high
	}
	return say(r.Typical)
}

// and joins words for a sentence.
func and(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
