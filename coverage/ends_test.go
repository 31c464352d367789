package coverage_test

import (
	"errors"
	"strings"
	"testing"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The most that is taken is taken: fifty coats, and a flat of 100,000 m2.
func TestTheMostIsTaken(t *testing.T) {
	b := book(t)
	fifty, err := coverage.Paint(b, quantity.Exactly(area(t, "1 m2")), coating(t, "50 %"), film(t, "50 um"), 50, coverage.Method{By: "roller"})
	if err != nil || !fifty.Typical.Given() {
		t.Errorf("fifty coats: %v", err)
	}
	support := &coverage.Support{StandPairs: 1000, KeelBlocks: 1000, Chains: 1000}
	if _, err := coverage.Pads(b, coverage.Hull{Support: support}); err != nil {
		t.Errorf("a thousand of each: %v", err)
	}
	support.Chains = 1001
	_, err = coverage.Pads(b, coverage.Hull{Support: support})
	hasFault(t, err, finding.ErrImpossible, "chains")
	tall := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	tall.BootTop = quantity.Metre.N(10)
	if fs := tall.Check(b); len(fs) != 0 {
		t.Errorf("a paint line as high as she is long: %v", fs)
	}
	// All of a paint may be lost, and a reserve be as large as the need.
	if fs := (coverage.Method{By: "roller", Reserve: quantity.Percent.N(100)}).Check(b); len(fs) != 0 {
		t.Errorf("a reserve of as much again: %v", fs)
	}
	fs := coverage.Method{By: "roller", Reserve: quantity.Percent.N(101)}.Check(b)
	hasFault(t, fs.Err(), finding.ErrImpossible, "reserve")
	big := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	big.Measured = []coverage.ZoneArea{{Zone: "flat", Area: area(t, "100000 m2")}}
	if _, err := coverage.Wetted(b, big); err != nil {
		t.Errorf("a hectare times ten: %v", err)
	}
}

// What a hull's form cannot be is told with her other faults.
func TestFaultsOfTheFormAreTold(t *testing.T) {
	h := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	h.Midship, h.Mass = quantity.Percent.N(101), quantity.Kilogram.N(-1)
	fs, _ := errors.AsType[finding.Faults](h.Check(book(t)).Err())
	var keys []string
	for _, f := range fs {
		keys = append(keys, f.Key)
	}
	if got := strings.Join(keys, ", "); got != "mass, midship" {
		t.Error(got)
	}
}

// A zone that was measured has an area; one of nothing is left out.
func TestAMeasuredZoneHasAnArea(t *testing.T) {
	h := hull(t, "fin-keel-yacht", "10 m", "3.2 m", "1.8 m")
	h.Measured = []coverage.ZoneArea{{Zone: "edges", Area: area(t, "0 m2")}}
	hasFault(t, h.Check(book(t)).Err(), finding.ErrImpossible, "measured[edges]")
}

// A profile that is not known is told with the one that was meant.
func TestTheProfileThatWasMeant(t *testing.T) {
	b := book(t)
	for p := range b.Profiles() {
		if !p.Depth.Low.Given() {
			continue
		}
		_, err := coverage.Dead(b, p.Key+"x")
		if err == nil || !strings.Contains(err.Error(), "did you mean "+p.Key+",") {
			t.Errorf("%sx: %v", p.Key, err)
		}
	}
}

// A single size that the yard sells is all that is on sale; a size of nothing is a fault of the method.
func TestASingleSize(t *testing.T) {
	b := book(t)
	m := coverage.Method{By: "roller", Sizes: []quantity.Volume{litre(t, "3 L")}}
	if fs := m.Check(b); len(fs) != 0 {
		t.Errorf("three litres: %v", fs)
	}
	if got := coverage.OnSale(b, coating(t, "50 %"), m); len(got) != 1 || got[0].Size.String() != "3 L" {
		t.Errorf("%v", got)
	}
	m.Sizes = append(m.Sizes, litre(t, "0 L"))
	hasFault(t, m.Check(b).Err(), finding.ErrImpossible, "sizes[2]")
}
