package antifoul_test

import (
	"errors"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// wages prices labour for both, paint, lift, cleaning and lay-days.
const wages = `
[[price]]
key = "wage"
of = "labour"
by = "yard"
per = "h"
price = ["40 EUR", "50 EUR", "60 EUR"]
basis = "invented"
[[price]]
key = "paint"
of = "paint"
per = "L"
price = ["30 EUR", "40 EUR", "50 EUR"]
basis = "invented"
[[price]]
key = "lift"
of = "lift"
per = "job"
price = "300 EUR"
basis = "invented"
[[price]]
key = "day"
of = "lay-day"
per = "day"
price = "8 EUR"
basis = "invented"
[[price]]
key = "diver"
of = "cleaning"
per = "job"
price = "100 EUR"
basis = "invented"
`

func costed(t *testing.T, own string, changes ...string) *antifoul.Job {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
	if err != nil {
		t.Fatal(err)
	}
	x, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(strings.NewReplacer(changes...).Replace(base))}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := antifoul.Plan(b, x)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func euros(t *testing.T, s string) quantity.Money {
	t.Helper()
	m, err := quantity.ParseMoney(s + " EUR")
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestNoPricesNoMoney(t *testing.T) {
	if j := costed(t, "[[place]]\nkey = \"pool\"\nwithin = \"GB\"\nbasis = \"invented\"\n"); j.Costs.Reckoned() || len(j.Costs.Types) > 0 {
		t.Error("money without a price")
	}
}

// Money is an order beside suitability: with prices or without, places, tiers and scores are the same.
func TestMoneyMovesNoPlace(t *testing.T) {
	plain, priced := costed(t, "[[place]]\nkey = \"pool\"\nwithin = \"GB\"\nbasis = \"invented\"\n").Ranking.Hull(), costed(t, wages).Ranking.Hull()
	for i, p := range plain.Places {
		if o := priced.Places[i]; o.Key != p.Key || o.Tier != p.Tier || o.Score != p.Score || o.Rank != p.Rank {
			t.Errorf("place %d: %s and %s", i+1, p.Key, o.Key)
		}
	}
}

// She stands ashore from 3 April to 20 May 2027: 27 days of April and 20 of May, 47 days at 8.
func TestDaysAshore(t *testing.T) {
	for _, l := range costed(t, wages).Costs.Yard.Lines {
		if l.Of == tables.PricedDay {
			if !l.Money.Typical.Equal(euros(t, "376")) {
				t.Errorf("%v for %v days", l.Money.Typical, l.Count.Typical)
			}
			return
		}
	}
	t.Error("no line for the days ashore")
}

func TestDaysNobodyKnows(t *testing.T) {
	j := costed(t, wages, "launch = 2027-05-20", "launch_open = true")
	if len(j.Costs.Findings) == 0 || j.Costs.Findings[0].Rule != antifoul.RuleNoDays {
		t.Error("not said that the days are not known")
	}
}

// The owner's own hours have no price, the yard's have: the owner's bill lacks them and says how many they are.
func TestOwnerAndYard(t *testing.T) {
	k := costed(t, wages).Costs
	if d, err := k.Owner.Net.Typical.Cmp(k.Yard.Net.Typical); err != nil || d >= 0 {
		t.Errorf("owner %v, yard %v", k.Owner.Net.Typical, k.Yard.Net.Typical)
	}
	if k.OwnHours.Typical <= 0 {
		t.Error("own hours are not told")
	}
	paid := costed(t, wages+"[[price]]\nkey = \"own\"\nof = \"labour\"\nby = \"owner\"\nper = \"h\"\nprice = \"50 EUR\"\nbasis = \"invented\"\n").Costs
	if !paid.Owner.Net.Typical.Equal(paid.Yard.Net.Typical) {
		t.Errorf("at the same wage owner %v and yard %v differ", paid.Owner.Net.Typical, paid.Yard.Net.Typical)
	}
}

// The order by cost rises; a year is the sum over the years reckoned, divided by them.
func TestTypesByCost(t *testing.T) {
	k := costed(t, wages, "[paint]", "[wishes]\nreckon_over = \"12 years\"\n[paint]").Costs
	if len(k.Types) < 3 {
		t.Fatalf("%d types", len(k.Types))
	}
	for i, x := range k.Types {
		if x.Tier > antifoul.AskFirst {
			t.Errorf("%s is reckoned in tier %v", x.Coating.Key, x.Tier)
		}
		if i > 0 {
			if d, err := k.Types[i-1].AYear.Typical.Cmp(x.AYear.Typical); err != nil || d > 0 {
				t.Errorf("%s stands behind the dearer %s", x.Coating.Key, k.Types[i-1].Coating.Key)
			}
		}
		if !x.Coating.Wears() {
			continue
		}
		// Painted every 24 months: six jobs in twelve years, all lifts for them.
		if x.Jobs != quantity.Exactly(6) {
			t.Errorf("%s: jobs %v", x.Coating.Key, x.Jobs)
		}
		sum := x.First.Net.Typical
		for range 5 {
			var err error
			if sum, err = sum.Add(x.Later.Net.Typical); err != nil {
				t.Fatal(err)
			}
		}
		sum, err := sum.Add(x.Between.Net.Typical)
		if err != nil {
			t.Fatal(err)
		}
		if n := sum.Amount().DivRound(quantity.Exactly(euros(t, "12")).Low.Amount(), 2); !n.Equal(x.AYear.Typical.Amount()) {
			t.Errorf("%s: %v a year, by hand %v", x.Coating.Key, x.AYear.Typical, n)
		}
	}
}

// Six lifts of 300 in twelve years, and no cleaning on a boat that nobody cleans with a type that needs none.
func TestBetween(t *testing.T) {
	for _, x := range costed(t, wages, "[paint]", "[wishes]\nreckon_over = \"12 years\"\n[paint]").Costs.Types {
		if x.Coating.Key == "ablative-cuprous-multi" {
			if !x.Between.Net.Typical.Equal(euros(t, "1800")) {
				t.Errorf("between: %v, %d lines", x.Between.Net.Typical, len(x.Between.Lines))
			}
			return
		}
	}
	t.Error("the type that lies there is not reckoned")
}

// A longer lift-out, a dearer wage, more lay-days: nothing gets cheaper.
func TestDearerIsDearer(t *testing.T) {
	plain := costed(t, wages).Costs
	for _, dearer := range [][2]string{{`"60 EUR"]`, `"90 EUR"]`}, {`"300 EUR"`, `"301 EUR"`}, {`"8 EUR"`, `"9 EUR"`}, {`"50 EUR"]`, `"70 EUR"]`}} {
		k := costed(t, strings.Replace(wages, dearer[0], dearer[1], 1)).Costs
		if d, err := plain.Yard.Total.High.Cmp(k.Yard.Total.High); err != nil || d >= 0 {
			t.Errorf("%v: %v is no less than %v", dearer, plain.Yard.Total.High, k.Yard.Total.High)
		}
	}
}

// reckon_over needs prices beside it.
func TestReckonOverMatters(t *testing.T) {
	if digest(costed(t, wages)) == digest(costed(t, wages, "[paint]", "[wishes]\nreckon_over = \"20 years\"\n[paint]")) {
		t.Error("wishes.reckon_over changes nothing")
	}
}

func TestReckonOverBounds(t *testing.T) {
	for text, good := range map[string]bool{"1 years": true, "11 months": false, "50 years": true, "601 months": false} {
		_, err := plan(t, strings.Replace(base, "[paint]", "[wishes]\nreckon_over = \""+text+"\"\n[paint]", 1))
		if (err == nil) != good {
			t.Errorf("%s: %v", text, err)
		}
		if !good && !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

func TestTwoCurrencies(t *testing.T) {
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(wages)}})
	if err != nil {
		t.Fatal(err)
	}
	boat := strings.NewReplacer(append(tin, "140.00 EUR", "140.00 DKK")...).Replace(base)
	boat = strings.Replace(boat, "140.00 EUR", "140.00 DKK", 1)
	x, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(boat)}}, "boat.toml")
	if err == nil {
		_, err = antifoul.Plan(b, x)
	}
	if err == nil || !strings.Contains(err.Error(), "tin[1].kit[1].price") || !strings.Contains(err.Error(), "money in EUR") {
		t.Errorf("%v", err)
	}
}

// The invented yard's prices: each line can be done again from what it shows.
func TestEveryLineCanBeFollowed(t *testing.T) {
	b, err := tables.Default().With(os.DirFS("../examples/yard"))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"sloop", "planing", "steel", "trailer", "taped", "late"} {
		x, err := antifoul.ReadBoatWith(b, os.DirFS("../examples/boats"), name+".toml")
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Plan(b, x)
		if err != nil {
			t.Fatal(err)
		}
		for _, bill := range []cost.Bill{j.Costs.Owner, j.Costs.Yard, j.Costs.RainOwner, j.Costs.RainYard} {
			for _, l := range bill.Lines {
				if !l.Priced() || !l.Each.Typical.Given() {
					continue
				}
				if again := l.Count.Typical.Mul(l.Each.Typical.Amount()).Round(2); !again.Equal(l.Money.Typical.Amount()) {
					t.Errorf("%s, %s: %v × %v is not %v", name, l.Name, l.Count.Typical, l.Each.Typical, l.Money.Typical)
				}
			}
		}
		if !j.Costs.Yard.Total.Typical.Given() {
			t.Errorf("%s: no total", name)
		}
	}
}
