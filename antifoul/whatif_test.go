package antifoul_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// What she does is turned in whole steps, and the nearest with which a film may be used is told: for a boat just beyond a step at which the film has its limit that step.
func TestLiftsNameTheNearestStep(t *testing.T) {
	const film = `
[[coating]]
key = "film-%[1]s"
name = "film %[1]s"
basis = "own table"
source = "the tin"
role = "antifouling"
mechanism = "hard"
packs = 1
carrier = "solvent"
solids = ["45 %%", "50 %%", "60 %%"]
film = ["40 um", "50 um", "60 um"]
coats = 2
most_coats = 3
at = "20 degC"
touch_dry = "1.5 h"
rain_safe = "6 h"
overcoat_min = "6 h"
launch_min = "12 h"
apply_min = "5 degC"
apply_max = "35 degC"
scrub = "heavy"
abrasion = "heavy"
growth = "heavy"
waters = ["salt"]
%[2]s
[[coating.active]]
key = "cuprous-oxide"
content = ["30 %%", "42 %%", "55 %%"]
`
	lasts := "life = [\"240 months\", \"240 months\", \"240 months\"]\n"
	cases := []struct {
		key, limit string // with the step times per
		per        float64
		does       func(x *antifoul.Boat, step int64)
		steps      []int64
	}{
		{"use.speed", lasts + "speed_max = \"%v kn\"", 1, func(x *antifoul.Boat, v int64) { x.Use.Speed = quantity.Knot.Of(decimal.New(10*v+1, -1)) }, []int64{3, 4, 5, 6, 8, 10, 12, 15, 18, 20, 22, 25, 28, 30, 35, 40}},
		{"use.longest_idle", lasts + "idle_max = \"%v h\"", 12, func(x *antifoul.Boat, v int64) { x.Use.LongestIdle = quantity.Day.Of(decimal.New(10*v+1, -1)) }, []int64{3, 7, 10, 14, 21, 30, 45, 60, 90, 120, 180}}, // beyond twice of it bars
		{"use.ashore_each_year", lasts + "air_scuff = \"0.5 h\"\nair_used = \"%v h\"", 730.5, func(x *antifoul.Boat, v int64) {
			x.Use.RelaunchedUnpainted, x.Use.AshoreEachYear = quantity.Yes, quantity.Month.Of(decimal.New(10*v+1, -1))
		}, []int64{0, 1, 2, 3, 4, 5, 6, 7, 8, 10}},
		{"use.cleaned_every", lasts + "clean_every = \"%v h\"", 12, func(x *antifoul.Boat, v int64) {
			x.Use.Cleaning, x.Use.CleanedEvery = tables.Light, quantity.Day.Of(decimal.New(10*v+1, -1))
		}, []int64{7, 14, 21, 30, 45, 60, 90, 120}}, // less than half as often bars
		{"wishes.repaint_after", "life = [\"%v months\", \"%[1]v months\", \"%[1]v months\"]", 1, func(x *antifoul.Boat, v int64) { x.Wishes.RepaintAfter = quantity.Month.Of(decimal.New(10*v+6, -1)) }, []int64{6, 9, 12, 15, 18, 24, 30, 36, 48, 60}},
	}
	var own strings.Builder
	name := func(key string, step int64) string {
		return strings.NewReplacer(".", "-", "_", "-").Replace(key) + fmt.Sprintf("-%d", step)
	}
	for _, c := range cases {
		for _, step := range c.steps {
			fmt.Fprintf(&own, film, name(c.key, step), fmt.Sprintf(c.limit, math.Max(float64(step)*c.per, 1)))
		}
	}
	j := billed(t, own.String(), sheet)
	for _, c := range cases {
		for _, step := range c.steps {
			x := j.Boat
			x.Use = wear.Use{Water: "salt"} // what is not given is not turned
			c.does(&x, step)
			r, err := antifoul.Rank(j.Book, x)
			if err != nil {
				t.Fatal(err)
			}
			got := "nothing"
			for _, x := range r.Hull().Lifts() {
				if x.Type == "film-"+name(c.key, step) {
					got = fmt.Sprint(x.Key, " ", x.To)
				}
			}
			if want := fmt.Sprintf("%s %d ", c.key, step); !strings.HasPrefix(got, want) {
				t.Errorf("%swanted, got %s", want, got)
			}
		}
	}
}

// lift is the nearest change with which a type may be used; empty where there is none.
func lift(t *testing.T, own, boat, key string) string {
	t.Helper()
	for _, x := range billed(t, own, boat).Ranking.Hull().Lifts() {
		if x.Type == key {
			return fmt.Sprint(x.Key, " ", x.To)
		}
	}
	return ""
}

// What was seen at her berth and how fast the film wears are asked again of the boat as she then is, by hand. A film that had failed after 24 months holds for a wish of 18. At 6 um a month at
// six knots and as much faster as she is, a film of 4 coats of 50 um lasts 18 months to 11.1 kn: of the steps 12 to 10 and 18 to 15 months, which are as near, the speed stands first in the file.
func TestLiftsAskAgain(t *testing.T) {
	const film = "ablative-cuprous-multi"
	failed := pastRow("failed", film, "GB", "failed", "24")
	if got := lift(t, failed, sheet+"repaint_after = \"30 months\"\n", film); got != "wishes.repaint_after 18 months" {
		t.Errorf("failed after 24 months, wished 30: %q", got)
	}
	if got := lift(t, failed, strings.Replace(sheet, "18 months", "30 months", 1), film); got != "wishes.repaint_after 18 months" {
		t.Errorf("failed after 24 months, hauled every 30: %q", got)
	}
	if got := lift(t, failed, sheet, film); got != "" {
		t.Errorf("failed after 24 months, wished 18: %q", got)
	}
	plastic := strings.Replace(sheet, "material = \"grp\"", "material = \"polyethylene\"", 1)
	if got := lift(t, failed, plastic+"repaint_after = \"30 months\"\n", film); got != "wishes.repaint_after 18 months" {
		t.Errorf("what its maker is asked about may be used when he was: %q", got)
	}
	fast := strings.NewReplacer("speed = \"5 kn\"", "speed = \"12 kn\"", "under_way = \"100 h\"", "under_way = \"4000 h\"").Replace(sheet)
	if got := lift(t, worn("1", "6", "6")+number("speed-exponent", "1"), fast, film); got != "use.speed 10 kn" {
		t.Errorf("too fast for a film: %q", got)
	}
}

// Of changes that are equally near the first in the order of the boat file is told, and only what is nearer stands before it. In fresh water a film that asks to be cleaned may be left
// alone where little grows, and ashore.
func TestLiftsOfTwoFacts(t *testing.T) {
	asks := func(days int) string {
		return fmt.Sprintf("[[coating]]\nkey = \"inert-epoxy\"\nbasis = \"own table\"\nsource = \"the tin\"\nclean_every = \"%d h\"\n", 12*days)
	}
	for name, c := range map[string]struct {
		own, use, want string
	}{
		"growth before the cleaning":    {asks(21), "growth = \"medium\"\ncleaning = \"sponge\"\ncleaned_every = \"23 d\"\n", "use.growth light"},
		"the cleaning before the lift":  {asks(21), "cleaning = \"sponge\"\ncleaned_every = \"30 d\"\nkept = \"afloat\"\n", "use.cleaned_every 21 d"},
		"the nearest word":              {asks(14), "growth = \"heavy\"\ncleaning = \"sponge\"\ncleaned_every = \"7 d\"\n", "use.growth medium"},
		"a lift nearer than the second": {asks(14), "cleaning = \"sponge\"\ncleaned_every = \"30 d\"\nkept = \"afloat\"\n", "use.kept lift"},
	} {
		boat := strings.NewReplacer("water = \"salt\"", "water = \"fresh\"", "[use]\n", "[use]\n"+c.use).Replace(sheet)
		if got := lift(t, c.own, boat, "inert-epoxy"); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// A ranking that nobody made has nothing to turn.
func TestNothingToTurn(t *testing.T) {
	for _, n := range []int{0, 1} {
		p := antifoul.PartRanking{Places: make([]antifoul.Place, n)}
		if swaps, lifts := p.Swaps(), p.Lifts(); len(swaps)+len(lifts) > 0 {
			t.Errorf("of %d places: %v, %v", n, swaps, lifts)
		}
	}
}

// The first word of a list is turned as the others are: who keeps her boat afloat is told that on a trailer she would need no paint.
func TestSwapsOfTheFirstWord(t *testing.T) {
	for _, x := range plannedJob(t, strings.Replace(sheet, "[use]\n", "[use]\nkept = \"afloat\"\ngrowth = \"light\"\n", 1)).Ranking.Hull().Swaps() {
		if x.Key == "use.kept" && x.From == "afloat" && x.Type == "none" {
			return
		}
	}
	t.Error("nothing is said of a trailer")
}

// A fact is turned up and down, each to the nearest step that changes the choice. Of two films that were seen to hold at her berth one sheds growth from eight knots on and the other
// stands four: at five knots neither may be used.
func TestSwapsBothWays(t *testing.T) {
	limit := func(key, limit string) string {
		return pastRow(key, key, "GB", "held", "60") + "[[coating]]\nkey = \"" + key + "\"\nbasis = \"own table\"\nsource = \"the tin\"\n" + limit + "\n"
	}
	own := limit("hard-cuprous", "speed_min = \"8 kn\"") + limit("ablative-cuprous-multi", "speed_max = \"4 kn\"")
	got := map[string]string{}
	for _, x := range billed(t, own, strings.Replace(sheet, "ablative-cuprous-multi", "epoxy-barrier", 1)).Ranking.Hull().Swaps() {
		if x.Key == "use.speed" {
			got[x.Type] += fmt.Sprint(x.To)
		}
	}
	if len(got) != 2 || got["hard-cuprous"] != "8 kn" || got["ablative-cuprous-multi"] != "4 kn" {
		t.Errorf("%v", got)
	}
}
