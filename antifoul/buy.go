package antifoul

import (
	"slices"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of buying.
const (
	RuleMixUnknown finding.ID = "buy-mix-unknown"
	RuleFillsBlast finding.ID = "buy-fills-profile"
)

// Bought is one coating in one colour, for all parts together. Its Range holds the coats and Patches.
type Bought struct {
	coverage.Purchase
	Colour  string // key of a colour; empty where the layer has none (primers, tie coats)
	Parts   []string
	Patches quantity.Range[quantity.Volume] // what the places under stands take beside the coats; not given: nothing
	Thinner quantity.Volume                 // at the planned share, of the need; not given: unthinned
	IfOut   []coverage.Substitute           // what to buy when the shop is out of a size
	Mixed   coverage.Mixed                  // of the need, where the tin's ratio is known
	Pots    []Pot                           // how much to mix at once, where the tin's pot life is known
	Notes   finding.List
}

// Pot is how much of a coating is mixed at once for a coat.
type Pot struct {
	Part string // the part whose coat it is
	coverage.Potful
}

// buy adds up the litres of each coating and colour over the work, in its order, with the places under stands, and chooses kits or
// cans, the store first. Parts that are painted in one go share tray and can, so their litres are fewer than those of each part for itself. The need is the typical litres and the stated reserve; the high end is shown
// beside it.
func buy(b *tables.Book, boat Boat, work []Task, patches []Patched) ([]Bought, error) {
	var out []Bought
	find := func(coating, colour string) int {
		return slices.IndexFunc(out, func(g Bought) bool { return g.Coating.Key == coating && g.Colour == colour })
	}
	for _, t := range work {
		if t.Coat == nil {
			continue
		}
		k := *t.Coat
		i := find(k.Layer.Coating.Key, k.Layer.Colour)
		if i < 0 {
			i = len(out)
			out = append(out, Bought{Colour: k.Layer.Colour, Purchase: coverage.Purchase{Coating: k.Layer.Coating}})
		}
		g := &out[i]
		inOneGo, err := coverage.Paint(b, k.Area, k.Layer.Coating, k.Film.Typical, k.Layer.Coats, boat.Paint)
		if err != nil {
			return nil, prefixed(err, "paint")
		}
		g.Range = plusLitres(g.Range, plusLitres(inOneGo, k.Fills))
		for _, p := range t.Parts {
			if !slices.Contains(g.Parts, p) {
				g.Parts = append(g.Parts, p)
			}
		}
		if err := g.pot(b, boat, t.Parts[0], k); err != nil {
			return nil, err
		}
	}
	keep := make([]quantity.Range[quantity.Volume], len(out))
	for _, p := range patches {
		if i := find(p.Coating.Key, p.Colour); i >= 0 {
			out[i].Patches, out[i].Range = plusLitres(out[i].Patches, p.Beside), plusLitres(out[i].Range, p.Beside)
			keep[i] = plusLitres(keep[i], p.Litres)
		}
	}
	for i := range out {
		if err := out[i].choose(b, boat, keep[i].Typical); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// choose chooses the cans and says what belongs to them.
func (g *Bought) choose(b *tables.Book, boat Boat, patches quantity.Volume) error {
	tin := boat.tin(g.Coating.Key)
	need := coverage.Need(g.Range, boat.Paint.Reserve)
	onSale, notes, err := tin.OnSale()
	if err != nil {
		return prefixed(err, "tin["+g.Coating.Key+"]")
	}
	if len(onSale) == 0 {
		onSale = coverage.OnSale(b, g.Coating, boat.Paint)
	}
	stock := tin.Cans(g.Colour)
	p, err := coverage.Cans(need, onSale, stock)
	if err != nil {
		return prefixed(err, "paint")
	}
	if g.IfOut, err = coverage.IfOut(need, onSale, stock); err != nil {
		return prefixed(err, "paint")
	}
	p.Coating, p.Range = g.Coating, g.Range
	g.Purchase = p
	g.Notes = append(g.Notes, notes.At(finding.Caution)...) // a kit that comes out even needs no words
	if g.Colour != "" && cansOf(p) > 1 {
		g.Notes = append(g.Notes, coverage.Batches(p, true)...)
	}
	g.Notes = append(g.Notes, coverage.KeepBack(p, patches)...)
	if boat.Paint.Thinner.Sign() > 0 {
		g.Thinner = need.Scale(boat.Paint.Thinner.Number().Shift(-2)).To(quantity.Litre, 2, quantity.Up)
	}
	if g.Coating.Packs != 2 {
		return nil
	}
	if tin.Ratio.Base.IsZero() {
		g.Notes = append(g.Notes, finding.Finding{Rule: RuleMixUnknown, Verdict: finding.Caution, About: g.Coating.Name})
		return nil
	}
	if g.Mixed, err = coverage.Mix(need, tin.Ratio, tin.Densities); err != nil {
		// Check has seen to ratio and densities, so the need is too small to be parted by the millilitre: by the tin's own measure, then.
		g.Notes = append(g.Notes, finding.Finding{Rule: RuleMixUnknown, Verdict: finding.Caution, About: g.Coating.Name})
	}
	return nil
}

func cansOf(p coverage.Purchase) int {
	n := 0
	for _, it := range slices.Concat(p.Items, p.FromStock) {
		n += it.Count
	}
	return n
}

// pot notes how much of a two-pack coating is mixed at once for the coat on the part.
func (g *Bought) pot(b *tables.Book, boat Boat, part string, k Coat) error {
	tin := boat.tin(g.Coating.Key)
	if !tin.PotLife.Given() || g.Coating.Laid() {
		return nil
	}
	row, err := b.Step(finding.Prime)
	if err != nil || row.Hours.Typical <= 0 {
		return nil //nolint:nilerr // without a rate of work nobody can say how much is used up in time
	}
	rate, err := quantity.SquareMetrePerHour.Near(float64(max(1, boat.Work.Hands))/row.Hours.Typical, 2, quantity.Down)
	if err != nil {
		return prefixed(err, "work")
	}
	today := boat.Paint.Today
	if !today.Given() {
		today = tin.At
	}
	p, err := coverage.Batch(b, tin.PotLife, tin.At, today, rate, k.Wet)
	if err != nil {
		return prefixed(err, "tin["+g.Coating.Key+"]")
	}
	if k.Litres.Typical.Cmp(p.Litres) > 0 && !slices.ContainsFunc(g.Pots, func(o Pot) bool { return o.Litres.Equal(p.Litres) }) {
		g.Pots = append(g.Pots, Pot{part, p})
	}
	return nil
}

// tin is what the boat file says of the coating.
func (x Boat) tin(coating string) coverage.Tin {
	i := slices.IndexFunc(x.Tins, func(t coverage.Tin) bool { return t.Coating == coating })
	if i < 0 {
		return coverage.Tin{Coating: coating}
	}
	return x.Tins[i]
}

// Patched is one layer on the places where the boat stands.
type Patched struct {
	Part, Colour string
	For          compat.Purpose // of the layer in the scheme
	coverage.PatchCoat
}

// patched is what the places under stands take of each layer of the hull's scheme, and those under blocks and chains of the keel's
// where she has a keel of its own scheme.
func patched(b *tables.Book, boat Boat, schemes []Scheme, hull string, pads coverage.Patches) ([]Patched, error) {
	if pads.Count == 0 {
		return nil, nil
	}
	under := pads.On.KeelBlocks + pads.On.Chains
	keel := slices.IndexFunc(schemes, func(s Scheme) bool { return s.Zone == "keel" && len(s.Coats) > 0 })
	if keel < 0 {
		under = 0
	}
	var out []Patched
	for i, s := range schemes {
		var places coverage.Patches
		switch {
		case s.Part == hull:
			places = pads.Some(pads.Count - under)
		case i == keel:
			places = pads.Some(under)
		}
		var layers []coverage.PatchLayer
		var colours []string
		var purposes []compat.Purpose
		for _, k := range s.Coats {
			if k.Layer.For != compat.Extra && !k.Layer.Coating.Laid() {
				layers = append(layers, coverage.PatchLayer{Coating: k.Layer.Coating, Film: k.Film.Typical, Coats: k.Layer.Coats})
				colours, purposes = append(colours, k.Layer.Colour), append(purposes, k.Layer.For)
			}
		}
		coats, err := coverage.Patch(b, places, layers, boat.Paint)
		if err != nil {
			return nil, prefixed(err, "paint")
		}
		for n, c := range coats {
			out = append(out, Patched{s.Part, colours[n], purposes[n], c})
		}
	}
	return out, nil
}

// plusLitres adds end by end, taking "not given" as nothing.
func plusLitres(a, b quantity.Range[quantity.Volume]) quantity.Range[quantity.Volume] {
	return quantity.Range[quantity.Volume]{Low: plus(a.Low, b.Low), Typical: plus(a.Typical, b.Typical), High: plus(a.High, b.High)}
}
