package coverage_test

import (
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func TestPlaces(t *testing.T) {
	for _, c := range []struct{ pairs, blocks, chains, want int }{
		{0, 0, 0, 0}, {1, 0, 0, 2}, {0, 1, 0, 1}, {0, 0, 1, 1}, {3, 2, 1, 9}, {-1, -1, -1, 0},
	} {
		on := coverage.Support{StandPairs: c.pairs, KeelBlocks: c.blocks, Chains: c.chains}
		if got := on.Places(); got != c.want {
			t.Errorf("%+v: %d places, want %d", on, got, c.want)
		}
	}
}

func TestPads(t *testing.T) {
	b := book(t)
	got, err := coverage.Pads(b, coverage.Hull{Support: &coverage.Support{StandPairs: 4, KeelBlocks: 4, Chains: 4}})
	if err != nil {
		t.Fatal(err)
	}
	if got.Count != 16 || rangeText(got.Area) != "0.800 m2, 1.600 m2, 3.200 m2" || got.Findings.Worst() != finding.Caution {
		t.Errorf("%d places, %s, %v", got.Count, rangeText(got.Area), got.Findings)
	}
	if got.Findings[0].Basis[0].Kind != finding.Assumption {
		t.Errorf("basis %v", got.Findings[0].Basis)
	}

	// Nought stands is an answer; no report is a question.
	got, err = coverage.Pads(b, coverage.Hull{Support: &coverage.Support{}})
	if err != nil || got.Count != 0 || got.Area.Typical.Given() || got.Findings.Worst() != finding.Fine {
		t.Errorf("on slings: %+v, %v", got, err)
	}
	if none, ok := factOf(got.Findings[0], "area").(quantity.Area); !ok || !none.Equal(area(t, "0 m2")) || factOf(got.Findings[0], "count") != 0 {
		t.Errorf("on slings there are told %v", got.Findings)
	}
	got, err = coverage.Pads(b, coverage.Hull{})
	if err != nil || got.Count != 0 || got.Area.Typical.Given() || got.Findings.Worst() != finding.Ask {
		t.Errorf("not reported: %+v, %v", got, err)
	}
	_, err = coverage.Pads(b, coverage.Hull{Support: &coverage.Support{StandPairs: -1}})
	hasFault(t, err, finding.ErrImpossible, "stand_pairs")

	up := with(t, b, "[[factor]]\nkey = \"pad-area\"\nvalue = [0.0401, 0.09, 0.2]\nbasis = \"own table\"\nsource = \"yard record\"\n")
	got, err = coverage.Pads(up, coverage.Hull{Support: &coverage.Support{Chains: 2}})
	if err != nil || !got.Area.Low.Equal(quantity.SquareMetre.Of(dec(t, "0.082"))) {
		t.Errorf("low %s, %v, want 0.082 m2", got.Area.Low, err)
	}
	if told, ok := factOf(got.Findings[0], "area").(quantity.Area); !ok || told.String() != "0.2 m2" { // two of 0.09, rounded up to 0.1 m2
		t.Errorf("some %v are told, want 0.2 m2", told)
	}
}
