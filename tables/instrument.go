package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// The words of Instrument.Tells.
const (
	TellsDry  = "dry"  // the dry film at a place
	TellsWet  = "wet"  // the wet film at a place
	TellsMean = "mean" // the mean film of an area

	TellsMoist = "moisture" // how moist a laminate or a plank is, by comparison
)

// Instrument is one way of finding out how thick a film is, or how moist what is below it: the principle of a gauge, a comb, the litres
// used, a moisture meter.
type Instrument struct {
	Row
	Tells    string // TellsDry, TellsWet, TellsMean or TellsMoist
	Any      bool   // it reads on every material
	Says     string // how it works and what must be done before it is believed
	Cannot   string // what it cannot say
	Warns    string // what must be known where it reads with a caution
	Question string // what must be asked where nobody can say without its maker

	reads, caution, ask []string
}

// Reads lists the keys of the materials that it reads on.
func (x Instrument) Reads() iter.Seq[string] { return slices.Values(x.reads) }

// Caution lists the keys of the materials that it reads on with a caution.
func (x Instrument) Caution() iter.Seq[string] { return slices.Values(x.caution) }

// Ask lists the keys of the materials that it reads on only where its maker says so.
func (x Instrument) Ask() iter.Seq[string] { return slices.Values(x.ask) }

// On returns how the instrument reads on the material: Fine, Caution, Ask, or Forbidden where it does not read.
func (x Instrument) On(material string) finding.Verdict {
	switch {
	case x.Any || slices.Contains(x.reads, material):
		return finding.Fine
	case slices.Contains(x.caution, material):
		return finding.Caution
	case slices.Contains(x.ask, material):
		return finding.Ask
	}
	return finding.Forbidden
}

func readInstrument(r *entry.Row) Instrument {
	x := Instrument{
		Row: readRow(r), Tells: r.Word("tells", TellsDry, TellsWet, TellsMean, TellsMoist), Any: r.YesNo("any").True(), Says: r.Text("says"), Cannot: r.Text("cannot"),
		Warns: r.Text("caution_says"), Question: r.Text("ask_says"), reads: r.Texts("reads"), caution: r.Texts("caution"), ask: r.Texts("ask"),
	}
	r.Need("dry, wet, mean or moisture", "tells")
	r.Need("text", "says", "cannot")
	lists := slices.Concat(x.reads, x.caution, x.ask)
	if x.Any == (len(lists) > 0) {
		r.Fault(finding.ErrMissing, "reads", "", "keys of the materials that it reads on, there or in caution or ask; or any = true and no list")
	}
	for i, key := range lists {
		if slices.Contains(lists[:i], key) {
			r.Fault(finding.ErrDuplicate, "reads", entry.Describe(key), "each material once, in reads, caution or ask")
		}
	}
	if len(x.caution) > 0 {
		r.Need("text", "caution_says")
	}
	if len(x.ask) > 0 {
		r.Need("text", "ask_says")
	}
	return x
}

// Instrument returns the way of measuring of the key.
func (b *Book) Instrument(key string) (Instrument, error) { return b.instruments.get(key) }

// Instruments lists the ways of finding out how thick a film is.
func (b *Book) Instruments() iter.Seq[Instrument] { return b.instruments.all() }
