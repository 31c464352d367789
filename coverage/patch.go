package coverage

import (
	"math"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// PatchLayer is one layer that the places under stands and blocks get.
type PatchLayer struct {
	Coating tables.Coating
	Film    quantity.Film // dry, a coat
	Coats   int
}

// PatchCoat is what one layer of the patches takes.
type PatchCoat struct {
	PatchLayer
	Area   quantity.Range[quantity.Area]   // of all places, with the lap over the layer below
	Litres quantity.Range[quantity.Volume] // with the residue of every coat: the patches are another day's work
	Beside quantity.Range[quantity.Volume] // of Litres, what the litres of the whole hull do not hold already: laps and residue
}

// Patch returns what each layer takes on the places under stands and blocks, the lowest layer first. Each layer laps over the one below, so
// that no edge lies bare:
//
//	area = places × (√(area of one place) + 2 × step × layers below it)²      step: factor "patch-step"
//	beside = litres − coats × 10 × area of the places × film ÷ (solids × (100 − loss))
//
// since the hull's litres were reckoned over her whole area, the places with it. The corners are those of Paint. Areas are rounded up
// to 0.01 m2, litres to 0.01 L. With no places there is nothing, and no error.
//
// Basis: derived; the step is an assumption.
func Patch(b *tables.Book, p Patches, layers []PatchLayer, m Method) ([]PatchCoat, error) {
	if p.Count == 0 {
		return nil, nil
	}
	step, err := b.Factor("patch-step")
	if err != nil {
		return nil, err
	}
	var out []PatchCoat
	for i, l := range layers {
		k := PatchCoat{PatchLayer: l}
		for _, end := range []struct {
			to  *quantity.Area
			all quantity.Area
			lap float64
		}{{&k.Area.Low, p.Area.Low, step.Value.Low}, {&k.Area.Typical, p.Area.Typical, step.Value.Typical}, {&k.Area.High, p.Area.High, step.Value.High}} {
			side := math.Sqrt(end.all.Float(quantity.SquareMetre)/float64(p.Count)) + float64(2*end.lap*float64(i))
			a, err := quantity.SquareMetre.Near(float64(p.Count)*side*side, areaPlaces, quantity.Up)
			if err != nil {
				return nil, outOfRange("factor[patch-step]", "", err)
			}
			*end.to = a
		}
		if k.Litres, err = Paint(b, k.Area, l.Coating, l.Film, l.Coats, m); err != nil {
			return nil, err
		}
		held, err := paint(b, p.Area, l.Coating, quantity.Exactly(l.Film), l.Coats, m, false)
		if err != nil {
			return nil, err
		}
		less := func(a, b quantity.Volume) quantity.Volume {
			if d := a.Sub(b); d.Sign() > 0 {
				return d
			}
			return quantity.Litre.N(0)
		}
		k.Beside = quantity.Range[quantity.Volume]{Low: less(k.Litres.Low, held.Low), Typical: less(k.Litres.Typical, held.Typical), High: less(k.Litres.High, held.High)}
		out = append(out, k)
	}
	return out, nil
}

// KeepBack says how much of a purchase must be kept for the patches: counted in, and kept in closed cans where some of one size hold it and
// the others still hold the coats with their reserve, since an opened can skins over before the stands are shifted. A two-pack paint is mixed afresh. Nothing to keep, nothing said.
//
// Basis: common practice.
func KeepBack(bought Purchase, patches quantity.Volume) finding.List {
	if patches.Sign() <= 0 {
		return nil
	}
	f := finding.Finding{Rule: patchKept, Verdict: finding.Fine, About: bought.Coating.Name, Facts: []finding.Fact{{Name: "litres", Value: patches}}}
	if bought.Coating.Packs == 2 {
		f.Rule, f.Verdict = patchTwoPack, finding.Caution
		return finding.List{f}
	}
	for _, it := range slices.Backward(bought.Items) { // the smallest first
		n, kept := 1, it.Can.Size
		for kept.Cmp(patches) < 0 && n < it.Count {
			n, kept = n+1, kept.Add(it.Can.Size)
		}
		if kept.Cmp(patches) >= 0 && bought.Total.Sub(kept).Cmp(bought.Need.Sub(patches)) >= 0 {
			f.Rule, f.Facts = patchCan, append(f.Facts, finding.Fact{Name: "count", Value: n}, finding.Fact{Name: "can", Value: it.Can.Size})
			break
		}
	}
	return finding.List{f}
}
