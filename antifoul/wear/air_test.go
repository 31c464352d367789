package wear_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A month is a twelfth of 365.25 days: 72 h are 0.098563 months, 30 d are 0.985626 months.
// Basis: derived.
func TestClocksOfAHardFilm(t *testing.T) {
	b := tables.Default()
	hard := coating(t, b, "hard-cuprous")
	if hard.AirScuff.String() != "72 h" || hard.AirUsed.String() != "30 d" {
		t.Fatalf("the clocks are %s and %s; the boundaries below are those of 72 h and 30 d", hard.AirScuff, hard.AirUsed)
	}
	for ashore, want := range map[string]finding.ID{
		"0 months":        "",
		"0.098562 months": "", // 2.99998 d
		"0.098563 months": wear.RuleAirScuff,
		"0.5 months":      wear.RuleAirScuff,
		"0.985626 months": wear.RuleAirScuff, // 29.99999 d
		"0.985627 months": wear.RuleAirUsed,
		"6 months":        wear.RuleAirUsed,
		"12 months":       wear.RuleAirUsed,
		"1 year":          wear.RuleAirUsed,
	} {
		air(t, hard, ashore, want)
	}
	// On the boundary: 4 months are 121.75 d to the hour, and no longer than that.
	on := own(t, "hard-cuprous", "air_scuff = \"121.75 d\"\nair_used = \"243.5 d\"")
	for ashore, want := range map[string]finding.ID{
		"3.999999 months": "", "4 months": "", "4.000001 months": wear.RuleAirScuff,
		"7.999999 months": wear.RuleAirScuff, "8 months": wear.RuleAirScuff, "8.000001 months": wear.RuleAirUsed,
	} {
		air(t, on, ashore, want)
	}
}

func air(t *testing.T, c tables.Coating, ashore string, want finding.ID) {
	t.Helper()
	l := wear.Air(c, wear.Use{AshoreEachYear: parse[quantity.Months](t, ashore), RelaunchedUnpainted: quantity.Yes})
	if want == "" {
		if len(l) != 0 {
			t.Errorf("ashore for %s: %v, want no finding", ashore, l)
		}
		return
	}
	if len(l) != 1 || l[0].Rule != want || l[0].Verdict != finding.Needs || l[0].About != c.Name || len(l[0].First) == 0 || len(l[0].Basis) != 1 || l[0].Basis[0].Kind == "" {
		t.Errorf("ashore for %s: %+v, want %s with steps and basis", ashore, l, want)
		return
	}
	limit := c.AirScuff
	if want == wear.RuleAirUsed {
		limit = c.AirUsed
	}
	said := tables.Default().Say(l[0], quantity.Metric)
	if !strings.Contains(said, limit.String()) || strings.ContainsAny(said, "{}") || strings.Contains(said, "(not stated)") {
		t.Errorf("ashore for %s it is said %q, want the limit %s", ashore, said, limit)
	}
}

// The clock runs for a used film that goes back unpainted; where that is not said, it is not judged.
func TestClocksOnlyWhenRelaunchedUnpainted(t *testing.T) {
	b := tables.Default()
	hard := coating(t, b, "hard-cuprous")
	for _, u := range []wear.Use{
		{},
		{RelaunchedUnpainted: quantity.Yes},
		{AshoreEachYear: quantity.Month.N(6)},
		{AshoreEachYear: quantity.Month.N(6), RelaunchedUnpainted: quantity.No},
	} {
		if l := wear.Air(hard, u); len(l) != 0 {
			t.Errorf("%+v: %v, want no finding", u, l)
		}
	}
	u := wear.Use{AshoreEachYear: quantity.Month.N(12), RelaunchedUnpainted: quantity.Yes}
	for c := range b.Coatings() {
		if l, clock := wear.Air(c, u), c.AirScuff.Given() || c.AirUsed.Given(); (len(l) > 0) != clock {
			t.Errorf("%s has a clock %t and gets %v", c.Key, clock, l)
		}
	}
}
