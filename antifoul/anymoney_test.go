package antifoul_test

import (
	"math"
	"os"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// sums are the three ends of money, added up.
type sums [3]decimal.Decimal

func (s *sums) add(m quantity.Range[quantity.Money]) {
	if !m.Typical.Given() {
		return
	}
	for e, x := range []quantity.Money{m.Low, m.Typical, m.High} {
		s[e] = s[e].Add(x.Amount())
	}
}

func (s *sums) are(m quantity.Range[quantity.Money]) bool {
	return s[0].Equal(m.Low.Amount()) && s[1].Equal(m.Typical.Amount()) && s[2].Equal(m.High.Amount())
}

// within reports whether two sums are so many half cents apart at most.
func within(a, b decimal.Decimal, halves int64) bool {
	return a.Sub(b).Abs().Cmp(decimal.New(5*halves, -3)) <= 0
}

// addsUp holds one bill: each line is its count times its price, the net is the lines, the total net and contingency, and every end stands in its place.
func addsUp(t *testing.T, n uint64, what string, bill cost.Bill) (priced int) {
	t.Helper()
	rising := func(name string, m quantity.Range[quantity.Money]) {
		if a, err := m.Low.Cmp(m.Typical); err != nil || a > 0 || m.Low.Sign() < 0 {
			t.Errorf("boat %d, %s: %s is %v (%v)", n, what, name, m, err)
		}
		if a, err := m.Typical.Cmp(m.High); err != nil || a > 0 {
			t.Errorf("boat %d, %s: %s is %v (%v)", n, what, name, m, err)
		}
	}
	var net sums
	for _, l := range bill.Lines {
		if !l.Priced() {
			if l.Why.Rule == "" {
				t.Errorf("boat %d, %s: %s has no money, and nothing says why", n, what, l.Name)
			}
			continue
		}
		priced++
		rising(l.Name, l.Money)
		net.add(l.Money)
		if l.Each.Typical.Given() {
			count := []decimal.Decimal{l.Count.Low, l.Count.Typical, l.Count.High}
			each := []quantity.Money{l.Each.Low, l.Each.Typical, l.Each.High}
			for e, m := range []quantity.Money{l.Money.Low, l.Money.Typical, l.Money.High} {
				if !count[e].Mul(each[e].Amount()).Round(2).Equal(m.Amount()) {
					t.Errorf("boat %d, %s: %s: %s × %s is not %s", n, what, l.Name, count[e], each[e], m)
				}
			}
		}
	}
	if priced == 0 {
		if bill.Net.Typical.Given() || bill.Total.Typical.Given() {
			t.Errorf("boat %d, %s: %v of no line", n, what, bill.Net)
		}
		return 0
	}
	rising("net", bill.Net)
	if !net.are(bill.Net) {
		t.Errorf("boat %d, %s: the lines make %v, net is %v", n, what, net, bill.Net)
	}
	total := net
	total.add(bill.Contingency)
	if !total.are(bill.Total) {
		t.Errorf("boat %d, %s: net %v and contingency %v make %v, not %v", n, what, bill.Net, bill.Contingency, total, bill.Total)
	}
	share := []float64{bill.Share.Low, bill.Share.Typical, bill.Share.High}
	for e, m := range []quantity.Money{bill.Contingency.Low, bill.Contingency.Typical, bill.Contingency.High} {
		by := net[e].Mul(decimal.New(int64(math.Round(share[e]*100)), -4))
		if !within(m.Amount(), by, 1) {
			t.Errorf("boat %d, %s: %v %% of %s is not %s", n, what, share[e], net[e], m)
		}
	}
	return priced
}

// Whatever a random boat costs by the invented yard's prices, every bill of it adds up, cans make the money of a purchase, and a year of each type is its
// bills over the years.
func TestAnyBoatsBillsAddUp(t *testing.T) {
	b, err := tables.Default().With(os.DirFS("../examples/yard"))
	if err != nil {
		t.Fatal(err)
	}
	lines, types := 0, 0
	eachBoat(t, sparse(20), func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		j, err := antifoul.Plan(b, inDays(t, n, x))
		if err != nil {
			t.Fatalf("boat %d: %v", n, err)
		}
		k := j.Costs
		for what, bill := range map[string]cost.Bill{"owner": k.Owner, "yard": k.Yard, "rain, owner": k.RainOwner, "rain, yard": k.RainYard} {
			lines += addsUp(t, n, what, bill)
		}
		for _, g := range j.Buy {
			if !g.Cost.Given() {
				continue
			}
			var cans decimal.Decimal
			for _, it := range g.Items {
				cans = cans.Add(it.Can.Price.Amount().Mul(decimal.NewFromInt(int64(it.Count))))
			}
			if !cans.Equal(g.Cost.Amount()) {
				t.Errorf("boat %d: %s: the cans make %s, not %s", n, g.Coating.Key, cans, g.Cost)
			}
		}
		months := k.Over.In(quantity.Month, 0, quantity.Nearest)
		for i, y := range k.Types {
			types++
			addsUp(t, n, y.Coating.Key+", first", y.First)
			addsUp(t, n, y.Coating.Key+", later", y.Later)
			addsUp(t, n, y.Coating.Key+", between", y.Between)
			if y.Jobs.Low > y.Jobs.Typical || y.Jobs.Typical > y.Jobs.High || y.Jobs.Low < 1 {
				t.Errorf("boat %d, %s: jobs %v", n, y.Coating.Key, y.Jobs)
			}
			if i > 0 {
				if d, err := k.Types[i-1].AYear.Typical.Cmp(y.AYear.Typical); err != nil || d > 0 {
					t.Errorf("boat %d: %s stands behind the dearer %s", n, y.Coating.Key, k.Types[i-1].Coating.Key)
				}
			}
			var sum sums
			sum.add(y.First.Net)
			for e, jobs := range []int{y.Jobs.Low, y.Jobs.Typical, y.Jobs.High} {
				var later sums
				later.add(y.Later.Net)
				sum[e] = sum[e].Add(later[e].Mul(decimal.NewFromInt(int64(jobs - 1))))
			}
			sum.add(y.Between.Net)
			for e, got := range []quantity.Money{y.AYear.Low, y.AYear.Typical, y.AYear.High} {
				if !within(got.Amount().Mul(months), sum[e].Mul(decimal.NewFromInt(12)), int64(k.Over.Float(quantity.Month))) {
					t.Errorf("boat %d, %s: %v a year at end %d, and %s over %s months", n, y.Coating.Key, got, e, sum[e], months)
				}
			}
		}
	})
	if *anyBoats >= 2000 && !few() && (lines < 1000 || types < 100) {
		t.Errorf("%d lines, %d types: this shows little", lines, types)
	}
}
