package coverage

import (
	"cmp"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// byBatch splits each item of the store by the batches of the cans of its size, as few of them as hold its count: the batch
// with the most cans first, then the one listed first; cans of unknown batch last, for each may be of another.
func byBatch(taken []Item, stock []Can) []Item {
	var out []Item
	for _, it := range taken {
		size := nanolitres(it.Can.Size, quantity.Down)
		var there []Item
		for _, c := range stock {
			if nanolitres(c.Size, quantity.Down) != size {
				continue
			}
			at := slices.IndexFunc(there, func(o Item) bool { return batchOf(o.Can) == batchOf(c) })
			if at < 0 {
				at = len(there)
				there = append(there, Item{Can: c})
			}
			there[at].Count++
		}
		unknown := func(o Item) int {
			if batchOf(o.Can) == "" {
				return 1
			}
			return 0
		}
		slices.SortStableFunc(there, func(a, b Item) int {
			return cmp.Or(cmp.Compare(unknown(a), unknown(b)), cmp.Compare(b.Count, a.Count))
		})
		left := it.Count
		for _, o := range there {
			if o.Count = min(o.Count, left); o.Count > 0 {
				out = append(out, o)
				left -= o.Count
			}
		}
	}
	return out
}

func batchOf(c Can) string { return strings.TrimSpace(c.Batch) }

// Batches judges whether the cans of a purchase, bought and from the store, may differ in shade. The purchase is one coat, or
// coats of one colour; colourMatters says that the colour shows when the work is done. The first of these that holds decides:
//
//  1. the colour does not matter: Fine
//  2. it is one can, or all cans are of one known batch: Fine
//  3. all cans are bought and of no batch is known: Fine, with the advice to ask for one batch
//  4. else a Caution: cans of different batches go together, or cans of an unknown batch with others
//
// A can of which the batch is not known is never taken to be of the batch of another. Batches are compared letter by letter,
// spaces around them aside. Items with a count below 1 are left out. A purchase without cans is not judged: its list is empty.
//
// Basis: common practice.
func Batches(p Purchase, colourMatters bool) finding.List {
	var batches []string // different ones, in the order of the purchase; unknown ones as one
	count := 0
	for _, it := range slices.Concat(p.FromStock, p.Items) {
		if it.Count < 1 {
			continue
		}
		count += it.Count
		if b := batchOf(it.Can); !slices.Contains(batches, b) {
			batches = append(batches, b)
		}
	}
	if count == 0 {
		return nil
	}
	f := finding.Finding{Facts: []finding.Fact{{Name: "count", Value: count}}}
	add := func(name, value string) { f.Facts = append(f.Facts, finding.Fact{Name: name, Value: value}) }
	unknown := slices.Contains(batches, "")
	stored := slices.ContainsFunc(p.FromStock, func(it Item) bool { return it.Count > 0 })
	switch {
	case !colourMatters:
		f.Rule, f.Verdict = batchNoMatter, finding.Fine
	case count == 1 || len(batches) == 1 && !unknown:
		f.Rule, f.Verdict = batchOne, finding.Fine
		add("batch", nameBatch(batches[0]))
	case len(batches) == 1 && !stored:
		f.Rule, f.Verdict = batchToBuy, finding.Fine
	default:
		f.Rule, f.Verdict = batchMixed, finding.Caution
		names := make([]string, len(batches))
		for i, b := range batches {
			names[i] = nameBatch(b)
		}
		add("batches", strings.Join(names, ", "))
	}
	return finding.List{f}
}

func nameBatch(b string) string {
	if b == "" {
		return "not known"
	}
	return b
}
