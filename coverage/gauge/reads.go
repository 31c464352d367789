package gauge

import (
	"cmp"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Reads says whether the instrument reads on the material: fine, with a caution, only with its maker's word (ask), or not at all
// (forbidden), and then which gauge does. The list is empty, not judged, when the book holds no such instrument or material.
//
// Basis: the instrument's row.
func Reads(b *tables.Book, instrument, material string) finding.List {
	x, err := b.Instrument(instrument)
	if err != nil {
		return nil
	}
	m, err := b.Material(material)
	if err != nil {
		return nil
	}
	f := finding.Finding{Verdict: x.On(material), About: x.Name, Against: m.Name}
	fact := func(name, text, field string) {
		f.Facts, f.Basis = append(f.Facts, finding.Fact{Name: name, Value: text}), []finding.Basis{x.Basis(field)}
	}
	switch f.Verdict {
	case finding.Fine:
		f.Rule = RuleReads
		fact("says", x.Says, "reads")
	case finding.Caution:
		f.Rule = RuleBeware
		fact("beware", x.Warns, "caution")
	case finding.Ask:
		f.Rule = RuleAskMaker
		fact("ask", x.Question, "ask")
	default:
		f.Rule = RuleReadsNot
		fact("instead", instead(b, material), "reads")
	}
	return finding.List{f}
}

// instead names the gauges of dry film that read on the material.
func instead(b *tables.Book, material string) string {
	var names []string
	for _, x := range For(b, material) {
		if x.Tells == tables.TellsDry {
			names = append(names, x.Name)
		}
	}
	if len(names) == 0 {
		return "no gauge of the tables does: keep to the comb while the coat is wet, and to the litres"
	}
	return "for it there is: " + strings.Join(names, ", ")
}

// For returns the instruments that may tell a film on the material, those that read first, then those with a caution, then those that
// only their makers can speak for; each in the book's order. Where no gauge reads a dry film, none that tells one is among them.
//
// Basis: the rows of instruments.
func For(b *tables.Book, material string) []tables.Instrument {
	var out []tables.Instrument
	for x := range b.Instruments() {
		if x.Tells != tables.TellsMoist && x.On(material) != finding.Forbidden {
			out = append(out, x)
		}
	}
	slices.SortStableFunc(out, func(x, y tables.Instrument) int { return cmp.Compare(x.On(material), y.On(material)) })
	return out
}
