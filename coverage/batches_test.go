package coverage_test

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// purchase reads "2 × K1, 1 × ": numbers of litre cans and their batches, bought and from the store.
func purchase(tb testing.TB, bought, stored string) coverage.Purchase {
	tb.Helper()
	read := func(text string) (out []coverage.Item) {
		if text == "" {
			return nil
		}
		for _, s := range strings.Split(text, ", ") {
			n, batch, _ := strings.Cut(s, " × ")
			count, err := strconv.Atoi(n)
			if err != nil {
				tb.Fatal(err)
			}
			out = append(out, coverage.Item{Can: coverage.Can{Size: quantity.Litre.N(1), Batch: batch}, Count: count})
		}
		return out
	}
	return coverage.Purchase{Items: read(bought), FromStock: read(stored)}
}

func TestBatches(t *testing.T) {
	for _, c := range []struct {
		bought, stored string
		rule           finding.ID // where the colour matters
		batches        string
	}{
		{"1 × ", "", "batch-one", "not known"},
		{"", "1 × ", "batch-one", "not known"},
		{"", "1 × K1", "batch-one", "K1"},
		{"", "5 × K1", "batch-one", "K1"},
		{"3 × K1", "", "batch-one", "K1"},
		{"3 × K1", "2 × K1, 1 ×  K1 ", "batch-one", "K1"}, // spaces are no matter
		{"2 × ", "", "batch-to-buy", ""},
		{"1 × , 1 × ", "", "batch-to-buy", ""}, // two sizes
		{"2 × ", "0 × K1", "batch-to-buy", ""},
		{"2 × ", "-1 × K1", "batch-to-buy", ""},
		{"1 × K1, 1 × K2", "", "batch-mixed", "K1, K2"},
		{"1 × K1", "1 × k1", "batch-mixed", "k1, K1"},
		{"1 × K1, 1 × ", "", "batch-mixed", "K1, not known"},
		{"1 × ", "1 × ", "batch-mixed", "not known"},
		{"1 × ", "1 × K1", "batch-mixed", "K1, not known"},
		{"1 × K1", "1 × ", "batch-mixed", "not known, K1"},
		{"", "2 × ", "batch-mixed", "not known"},
		{"", "2 × K1, 1 × K2", "batch-mixed", "K1, K2"},
		{"", "1 × K1, 1 × ", "batch-mixed", "K1, not known"},
	} {
		p := purchase(t, c.bought, c.stored)
		verdict := finding.Fine
		if c.rule == "batch-mixed" {
			verdict = finding.Caution
		}
		got := coverage.Batches(p, true)
		if len(got) != 1 || got[0].Rule != c.rule || got[0].Verdict != verdict || fact(got[0], "batch")+fact(got[0], "batches") != c.batches {
			t.Errorf("bought %q, from the store %q: %+v, want %s of %q", c.bought, c.stored, got, c.rule, c.batches)
		}
		got = coverage.Batches(p, false)
		if len(got) != 1 || got[0].Rule != "batch-no-matter" || got[0].Verdict != finding.Fine {
			t.Errorf("bought %q, from the store %q, colour no matter: %+v", c.bought, c.stored, got)
		}
	}
	for _, p := range []coverage.Purchase{{}, purchase(t, "0 × K1", "-2 × ")} {
		if got := append(coverage.Batches(p, true), coverage.Batches(p, false)...); len(got) > 0 {
			t.Errorf("no cans: %+v, want no judgement", got)
		}
	}
}

// inBatches says "2 × 1 L K1; ".
func inBatches(items []coverage.Item) string {
	var s strings.Builder
	for _, it := range items {
		fmt.Fprintf(&s, "%d × %s %s; ", it.Count, it.Can.Size, it.Can.Batch)
	}
	return s.String()
}

func TestCansKeepBatches(t *testing.T) {
	store := func(text string) []coverage.Can {
		var out []coverage.Can
		for _, s := range strings.Split(text, ", ") {
			size, batch, _ := strings.Cut(s, "/")
			out = append(out, coverage.Can{Size: litre(t, size), Batch: batch})
		}
		return out
	}
	for _, c := range []struct{ what, need, stock, takes, buys string }{
		{"all of the store", "4 L", "1 L/K1, 1 L/K2, 1 L/K1", "2 × 1 L K1; 1 × 1 L K2; ", "1 × 1 L B9; "},
		{"two sizes", "5 L", "1 L/K1, 2 L/K2, 1 L/K2", "1 × 2 L K2; 1 × 1 L K1; 1 × 1 L K2; ", "1 × 1 L B9; "},
		{"the batch with the most cans first", "2 L", "1 L/K1, 1 L/K2, 1 L/K2", "2 × 1 L K2; ", ""},
		{"then the one listed first", "1 L", "1 L/K2, 1 L/K1", "1 × 1 L K2; ", ""},
		{"a batch not known last", "2 L", "1 L, 1 L, 1 L, 1 L/K1", "1 × 1 L K1; 1 × 1 L ; ", ""},
		{"spaces are no matter", "2 L", "1 L/K1, 1 L/ K2, 1 L/K2", "2 × 1 L  K2; ", ""},
		{"another unit is the same size", "2 L", "1 L/K1, 1000 mL/K1", "2 × 1 L K1; ", ""},
		{"less than a nanolitre apart is the same size", "2 L", "1.0000000004 L/K1, 1 L/K1", "2 × 1.0000000004 L K1; ", ""},
		// The larger can is the better choice, though two small ones are of one batch.
		{"batches choose no size", "2 L", "1 L/K1, 1 L/K1, 2 L/K2", "1 × 2 L K2; ", ""},
	} {
		got, err := coverage.Cans(litre(t, c.need), []coverage.Can{{Size: quantity.Litre.N(1), Batch: "B9"}}, store(c.stock))
		if err != nil || inBatches(got.FromStock) != c.takes || inBatches(got.Items) != c.buys {
			t.Errorf("%s: takes %s, buys %s, %v; want %s, %s", c.what, inBatches(got.FromStock), inBatches(got.Items), err, c.takes, c.buys)
		}
	}
}

// With batches or without them, the same sizes are taken and bought; and no more cans of a batch than there are.
func TestBatchesChangeNoChoice(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	split := 0
	for n := range 2000 {
		var plain, marked []coverage.Can
		have := map[string]int{}
		for range rng.IntN(12) {
			size := litre(t, []string{"0.75 L", "1 L", "2.5 L", "1 US gal"}[rng.IntN(4)])
			batch := []string{"", "K1", "K2", "K3"}[rng.IntN(4)]
			plain = append(plain, coverage.Can{Size: size})
			marked = append(marked, coverage.Can{Size: size, Batch: batch})
			have[size.String()+batch]++
		}
		cl := 1 + rng.Int64N(1500)
		need := litre(t, fmt.Sprintf("%d.%02d L", cl/100, cl%100))
		sale := cans(t, "0.75 L, 2.5 L")
		want, err := coverage.Cans(need, sale, plain)
		if err != nil {
			t.Fatal(err)
		}
		got, err := coverage.Cans(need, sale, marked)
		if err != nil {
			t.Fatal(err)
		}
		var merged []coverage.Item
		for _, it := range got.FromStock {
			if it.Count < 1 || it.Count > have[it.Can.Size.String()+it.Can.Batch] {
				t.Fatalf("case %d: %d of %s %q, the store has %v", n, it.Count, it.Can.Size, it.Can.Batch, have)
			}
			if last := len(merged) - 1; last >= 0 && merged[last].Can.Size.Equal(it.Can.Size) {
				merged[last].Count += it.Count
				split++
				continue
			}
			merged = append(merged, it)
		}
		if list(merged) != list(want.FromStock) || list(got.Items) != list(want.Items) || !got.Total.Equal(want.Total) {
			t.Fatalf("case %d, need %s, store %v: takes %s, buys %s; without batches %s, %s", n, need, have, list(merged), list(got.Items), list(want.FromStock), list(want.Items))
		}
	}
	if split < 1000 {
		t.Errorf("only %d items split by batch", split)
	}
}
