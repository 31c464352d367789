package antifoul_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// price is a row of an own table: one unit costs a euro.
func price(of, per string, lines ...string) string {
	return fmt.Sprintf("[[price]]\nkey = %q\nof = %q\nper = %q\nprice = \"1 EUR\"\nbasis = \"invented\"\n%s\n", of+strings.Join(lines, " "), of, per, strings.Join(lines, "\n"))
}

// billed plans a boat with own rows.
func billed(t *testing.T, own, boat string) *antifoul.Job {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
	if err != nil {
		t.Fatal(err)
	}
	x, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(boat)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := antifoul.Plan(b, x)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// amounts are the numbers of units of each line, by what it is of and its name; supplies are left out.
func amounts(t *testing.T, b cost.Bill) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, l := range b.Lines {
		if l.Of == tables.PricedSupply {
			continue
		}
		key := fmt.Sprintf("%s %s", l.Of, l.Name)
		if out[key] != "" {
			t.Errorf("two lines of %s", key)
		}
		out[key] = fmt.Sprint(l.Amount.Low, l.Amount.Typical, l.Amount.High) + " " + l.Unit
	}
	return out
}

func sameLines(t *testing.T, name string, got, want map[string]string) {
	t.Helper()
	for key, w := range want {
		if got[key] != w {
			t.Errorf("%s: %s: %q, want %q", name, key, got[key], w)
		}
	}
	for key, g := range got {
		if _, ok := want[key]; !ok {
			t.Errorf("%s: %s: %s is too much", name, key, g)
		}
	}
}

const (
	ablative  = "ablative, cuprous oxide, multi-season"
	sheetWork = "[work]\nhands = 3\nset_up = \"30 min\"\n"
)

// The work of the sheet's boat with a pencil: hull 23 m2, of which 3 m2 get an extra coat, rudder 2 m2. Hours of one hand for a square metre: washing 0.017, 0.025, 0.033; abrading
// 0.125, 0.15, 0.2; a coat 0.067, 0.08, 0.1. Four working coats on the rudder over a signal coat, two a day, make three days, each with an hour to set up.
// Abrading 2 m2 takes 5 to 30 um off, 0.01 to 0.06 L, which is less than a kilogram: none to one, in the middle a half.
func TestWorkIsBilledByHand(t *testing.T) {
	j := billed(t, price("labour", "h", `by = "yard"`), sheet)
	got := amounts(t, j.Costs.Yard)
	for key := range got {
		if strings.HasPrefix(key, "paint") {
			delete(got, key)
		}
	}
	work := map[string]string{
		"labour wash: hull, rudder":                          "0.43 0.63 0.83 h", // 25 × 0.017 and so on, to the hundredth
		"labour abrade: rudder":                              "0.25 0.3 0.4 h",
		"labour mask":                                        "1 2 4 h",
		"labour 1 extra coat of " + ablative + ": hull":      "0.2 0.24 0.3 h",
		"labour 3 working coats of " + ablative + ": hull":   "4.62 5.52 6.9 h",
		"labour 1 signal coat of " + ablative + ": rudder":   "0.13 0.16 0.2 h",
		"labour 4 working coats of " + ablative + ": rudder": "0.54 0.64 0.8 h",
		"labour setting up and clearing away":                "3 3 3 h",
		"lift lift out and back":                             "1 1 1 job",
		"blocking setting up on stands":                      "1 1 1 job",
		"shift shifting the stands":                          "1 1 1 job",
		"waste waste taken away":                             "0 0.5 1 kg",
	}
	sameLines(t, "by the hour", got, work)
	own := j.Costs.OwnHours
	if s := fmt.Sprintf("%.3f %.3f %.3f", own.Low, own.Typical, own.High); s != "10.169 12.485 16.425" {
		t.Errorf("own hours %s", s)
	}
	i := slices.IndexFunc(j.Costs.Findings, func(f finding.Finding) bool { return f.Rule == antifoul.RuleOwnHours })
	if i < 0 || !slices.Equal(j.Costs.Findings[i].Facts, []finding.Fact{{Name: "hours", Value: 13}}) {
		t.Errorf("13 hours of her owner are not told: %v", j.Costs.Findings)
	}
	paid := billed(t, price("labour", "h"), sheet).Costs
	if (paid.OwnHours != quantity.Range[float64]{}) || paid.Findings.Has(antifoul.RuleOwnHours) {
		t.Errorf("her owner is paid, and has %v hours beside", paid.OwnHours)
	}
	// Three hands set up for half an hour on each of three days.
	if got := amounts(t, billed(t, price("labour", "h"), sheet+sheetWork).Costs.Yard)["labour setting up and clearing away"]; got != "4.5 4.5 4.5 h" {
		t.Errorf("three hands set up in %s", got)
	}
}

// Work that has a price by the square metre has no hours; the wash has the yard's price before any other, for whoever the price is; a coat has hours whatever
// the work is called that it takes.
func TestWorkByTheSquareMetre(t *testing.T) {
	labour := price("labour", "h")
	work := func(what, by string) string { return price("work", "m2", fmt.Sprintf("what = %q", what), by) }
	for name, c := range map[string]struct {
		own, by string
		want    map[string]string // what is said instead of hours
	}{
		"abrading":              {work("abrade", ""), cost.Owner, map[string]string{"work abrade: rudder": "2 2 2 m2"}},
		"the yard's abrading":   {work("abrade", `by = "yard"`), cost.Owner, map[string]string{"labour abrade: rudder": "0.25 0.3 0.4 h"}},
		"a wash":                {price("wash", "job", `by = "yard"`), cost.Yard, map[string]string{"wash wash: hull, rudder": "1 1 1 job"}},
		"her owner's own wash":  {price("wash", "job", `by = "yard"`), cost.Owner, map[string]string{"labour wash: hull, rudder": "0.43 0.63 0.83 h"}},
		"a wash of each sort":   {price("wash", "job") + work("wash", ""), cost.Yard, map[string]string{"wash wash: hull, rudder": "1 1 1 job"}},
		"washing by the metre":  {work("wash", ""), cost.Yard, map[string]string{"work wash: hull, rudder": "25 25 25 m2"}},
		"a coat is no priming":  {work("prime", ""), cost.Yard, map[string]string{"labour 1 signal coat of " + ablative + ": rudder": "0.13 0.16 0.2 h"}},
		"masking has no metres": {work("mask", ""), cost.Yard, map[string]string{"labour mask": "1 2 4 h"}},
	} {
		j := billed(t, labour+c.own, sheet)
		got := amounts(t, pickBill(j, c.by))
		for key, w := range c.want {
			if got[key] != w {
				t.Errorf("%s: %s: %q, want %q", name, key, got[key], w)
			}
			_, what, _ := strings.Cut(key, " ")
			n := 0
			for k := range got {
				if strings.HasSuffix(k, " "+what) {
					n++
				}
			}
			if n != 1 {
				t.Errorf("%s: %d lines of %s", name, n, what)
			}
		}
	}
}

func pickBill(j *antifoul.Job, by string) cost.Bill {
	if by == cost.Owner {
		return j.Costs.Owner
	}
	return j.Costs.Yard
}

// Paint is billed as it is bought: the cans that are not in store, and up to the litres of a wasteful day. Thinner is one line for a coating, whatever its
// colours.
func TestPaintIsBilledAsItIsBought(t *testing.T) {
	store := "[[tin]]\ncoating = \"ablative-cuprous-multi\"\n[[tin.store]]\nsize = \"2.5 L\"\ncount = 2\ncolour = \"black\"\n"
	plain, stocked := billed(t, price("labour", "h"), sheet), billed(t, price("labour", "h"), strings.Replace(sheet+store, "by = \"roller\"", "by = \"roller\"\nthinner = \"10 %\"", 1))
	litres := func(v quantity.Volume) decimal.Decimal { return v.In(quantity.Litre, 2, quantity.Up) }
	for name, j := range map[string]*antifoul.Job{"nothing in store": plain, "five litres in store": stocked} {
		sum := quantity.Litre.N(0)
		if len(j.Buy) != 2 {
			t.Fatalf("%s: %d paints are bought", name, len(j.Buy))
		}
		for _, g := range j.Buy {
			c, err := j.Book.Colour(g.Colour)
			if err != nil {
				t.Fatal(err)
			}
			bought := quantity.Litre.N(0)
			for _, it := range g.Items {
				bought = bought.Add(it.Can.Size.Scale(decimal.NewFromInt(int64(it.Count))))
			}
			low, high := litres(bought), litres(bought)
			if need := litres(g.Range.High); need.Cmp(high) > 0 {
				high = need
			}
			if got, want := amounts(t, j.Costs.Yard)["paint "+g.Coating.Name+", "+c.Name], fmt.Sprint(low, low, high)+" L"; got != want {
				t.Errorf("%s: %s is billed with %q, want %q", name, c.Name, got, want)
			}
			if g.Thinner.Given() {
				sum = sum.Add(g.Thinner)
			}
		}
		got, want := amounts(t, j.Costs.Yard)["paint thinner"], amounts(t, j.Costs.Yard)["thinner thinner for "+ablative]
		if got != "" || j == plain && want != "" {
			t.Errorf("%s: thinner %q %q", name, got, want)
		}
		if n := litres(sum); j == stocked && (want != fmt.Sprint(n, n, n)+" L" || n.Sign() <= 0) {
			t.Errorf("%s: thinner %q, want %v", name, want, n)
		}
	}
	from := 0
	for _, g := range stocked.Buy {
		for _, s := range g.FromStock {
			from += s.Count
		}
	}
	if from == 0 {
		t.Error("nothing is taken from store: the test asks too little")
	}
}

// Days ashore run to a fixed launch, without one to the day on which the plan has her ready; on the day itself there are none, and nobody is said not to know.
func TestDaysAshoreWithAndWithoutALaunch(t *testing.T) {
	open := "days = [\"Sat\", \"Sun\"]\nlaunch_open = true\n"
	for name, c := range map[string]struct {
		work  string
		days  func(j *antifoul.Job) string // "" where nobody knows
		known bool
	}{
		"the same day": {"launch = 2027-04-03\n", func(*antifoul.Job) string { return "" }, true},
		"a day later":  {"launch = 2027-04-04\n", func(*antifoul.Job) string { return "1 1 1 days" }, true},
		"as planned": {open, func(j *antifoul.Job) string {
			_, c := j.Season.Shown()
			day, _ := quantity.ParseDate(c.Ready.Format("2006-01-02"))
			n := j.Boat.On.DaysUntil(day)
			if n < 5 {
				t.Fatalf("ready after %d days: the test asks too little", n)
			}
			return fmt.Sprint(n, n, n) + " days"
		}, true},
		"open, and planned past the launch": {open + "launch = 2027-04-04\n", func(j *antifoul.Job) string {
			_, c := j.Season.Shown()
			day, _ := quantity.ParseDate(c.Ready.Format("2006-01-02"))
			n := j.Boat.On.DaysUntil(day)
			return fmt.Sprint(n, n, n) + " days"
		}, true},
		"nobody knows": {"launch_open = true\n", func(*antifoul.Job) string { return "" }, false},
	} {
		j := billed(t, price("labour", "h"), sheet+"[work]\n"+c.work)
		if got, want := amounts(t, j.Costs.Yard)["lay-day standing ashore"], c.days(j); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
		if j.Costs.Findings.Has(antifoul.RuleNoDays) == c.known {
			t.Errorf("%s: %v", name, j.Costs.Findings)
		}
	}
	// The days of the plan are set up for, where they are more than the hours alone would take.
	j := billed(t, price("labour", "h"), sheet+"[work]\n"+open+"from = \"09:00\"\nuntil = \"13:00\"\nset_up = \"30 min\"\nhands = 2\n")
	n := j.Season.Calendar.Days
	if got, want := amounts(t, j.Costs.Yard)["labour setting up and clearing away"], decimal.NewFromInt(int64(n)); n <= 3 || float64(n) <= j.Days.High || got != fmt.Sprint(want, want, want)+" h" {
		t.Errorf("%d days of the plan, %v of the hours: set up in %s", n, j.Days, got)
	}
}

// A lost week of rain is seven days ashore; where the window to the next coat closes within them, that coat is abraded: the one with the largest area, and only what
// goes under another. Seven days exactly are not within a week.
func TestAWeekOfRain(t *testing.T) {
	own := func(window string) string {
		return price("labour", "h") + "[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"the tin\"\novercoat_max = \"" + window + "\"\n"
	}
	ashore := map[string]string{"lay-day standing ashore": "7 7 7 days"}
	for window, want := range map[string]map[string]string{
		"7 d":   ashore,
		"168 h": ashore,
		"167 h": {"lay-day standing ashore": "7 7 7 days", "labour abrade: hull": "2.88 3.45 4.6 h"}, // 23 m2 × 0.125 and so on
	} {
		j := billed(t, own(window), sheet)
		for _, b := range []cost.Bill{j.Costs.RainOwner, j.Costs.RainYard} {
			sameLines(t, window, amounts(t, b), want)
		}
		said := ""
		for _, f := range j.Costs.Findings {
			if f.Rule == antifoul.RuleRainWindow {
				said = f.About
			}
		}
		if (said == ablative) != (len(want) == 2) || said != "" && len(want) == 1 {
			t.Errorf("%s: %q closes", window, said)
		}
	}
	if b := billed(t, price("labour", "h"), sheet).Costs.RainYard; len(b.Lines) != 1 {
		t.Errorf("without a window: %v", amounts(t, b))
	}
}

// A boat on her trailer is not lifted, and no stands are shifted under her.
func TestATrailerIsNotLifted(t *testing.T) {
	got := amounts(t, billed(t, price("lift", "job"), strings.Replace(sheet, "[use]", "[use]\nkept = \"trailer\"", 1)).Costs.Yard)
	for _, key := range []string{"lift lift out and back", "blocking setting up on stands"} {
		if got[key] != "" {
			t.Errorf("%s: %s", key, got[key])
		}
	}
}

// Whose prices the types take: who does the work, else the yard; the years are ten where nobody wishes otherwise.
func TestWhosePricesAndHowLong(t *testing.T) {
	for work, by := range map[string]string{"": cost.Yard, "[work]\ndone_by = \"yard\"\n": cost.Yard, "[work]\ndone_by = \"owner\"\n": cost.Owner} {
		k := billed(t, price("labour", "h", `by = "yard"`), sheet+work).Costs
		if k.By != by || k.Over.Float(quantity.Month) != 120 || len(k.Types) == 0 || k.Types[0].First.By != by {
			t.Errorf("%q: by %s over %v, %d types", work, k.By, k.Over, len(k.Types))
		}
		if given := k.Types[0].AYear.Typical.Given(); given != (by == cost.Yard) {
			t.Errorf("%q: her owner's hours have no price: a sum %v", work, given)
		}
	}
}

// What is used up is billed as it is bought, in its own units, and what is not needed is not.
func TestSuppliesAreBilled(t *testing.T) {
	j := billed(t, price("labour", "h"), sheet)
	want, got := map[string]string{}, map[string]string{}
	for _, s := range j.Supplies {
		if s.Buy >= 1 {
			want[s.Supply.Key] = fmt.Sprintf("%d %s %s", s.Buy, s.Supply.Unit, s.Supply.Name)
		}
	}
	for _, l := range j.Costs.Yard.Lines {
		if l.Of == tables.PricedSupply {
			got[l.What] = fmt.Sprintf("%v %s %s", l.Amount.Typical, l.Unit, l.Name)
		}
	}
	if len(want) < 5 {
		t.Fatalf("%d supplies", len(want))
	}
	sameLines(t, "supplies", got, want)
}

// Of coats as large as each other the first closes first.
func TestFirstOfTwoWindows(t *testing.T) {
	j := billed(t, price("labour", "h"), measuredBoat("material = \"steel\"", "lead", "launch_open = true"))
	if got := amounts(t, j.Costs.Yard)["labour blast or grind to bright metal: hull"]; got != "7.59 11.5 23 h" { // 23 m2 × 0.33, 0.5, 1
		t.Errorf("blasted in %q", got)
	}
	i := slices.IndexFunc(j.Costs.Findings, func(f finding.Finding) bool { return f.Rule == antifoul.RuleRainWindow })
	if i < 0 || j.Costs.Findings[i].About != "epoxy primer" { // 72 h, as the barrier above it
		t.Errorf("%v", j.Costs.Findings)
	}
}

// A layer of several coats has windows inside it, so it counts though nothing goes on above; a single one that nothing goes on above does not.
func TestAWeekOfRainInsideALayer(t *testing.T) {
	boat := strings.NewReplacer(`coating = "ablative-cuprous-multi"
colour = "red-oxide"
film = "100 um"
`, `coating = "epoxy-barrier"
`).Replace(sheet) + "[wishes]\ncoating = \"copper-loaded-epoxy\"\n"
	for most, want := range map[string]string{"": "2.88 3.45 4.6 h", "coats = 1\nmost_coats = 1\n": ""} {
		j := billed(t, price("labour", "h")+"[[coating]]\nkey = \"copper-loaded-epoxy\"\nbasis = \"own table\"\nsource = \"the tin\"\n"+most, boat)
		s := j.Schemes[0]
		if len(s.Coats) == 0 || s.Coats[0].Layer.Coating.Key != "copper-loaded-epoxy" || (s.Coats[0].Layer.Coats > 1) != (most == "") {
			t.Fatalf("the boat is another: %+v %v", s.Coats, s.Findings)
		}
		if got := amounts(t, j.Costs.RainYard)["labour abrade: hull"]; got != want {
			t.Errorf("%q: %q, want %q", most, got, want)
		}
	}
}
