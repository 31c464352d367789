package antifoul_test

import (
	"slices"
	"strings"
	"testing"
)

// smallestPlan is a boat that says nothing but what she must.
const smallestPlan = `
[boat]
date = 2027-04-03
[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"
[[part]]
name = "hull"
zone = "hull"
material = "grp"
`

// What is taken where a boat file does not say it is listed key by key, and goes from the list with the line that says it.
func TestWhatIsAssumed(t *testing.T) {
	assumed := func(text string) []string {
		var out []string
		for _, a := range plannedJob(t, text).Ranking.Assumed {
			out = append(out, a.Key)
		}
		return out
	}
	all := []string{
		"part[hull].found", "use.under_way", "use.speed", "use.longest_idle", "use.haul_out_every", "use.ashore_each_year", "use.growth", "use.water", "use.water_temperature", "use.cleaning", "use.kept", "use.dries_on", "berth",
		"work.launch", "work.hands", "work.days", "paint.by", "paint.reserve", "paint.thinner", "hull.stand_pairs", "paint.cans",
	}
	if got := assumed(smallestPlan); !slices.Equal(got, all) {
		t.Errorf("got  %v\nwant %v", got, all)
	}
	// Each with what is said, the keys that go and those that come.
	for _, c := range []struct{ add, gone, come string }{
		{"[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"\n", "part[hull].found", ""},
		{"[use]\nunder_way = \"100 h\"\n", "use.under_way", ""},
		{"[use]\nspeed = \"5 kn\"\n", "use.speed", ""},
		{"[use]\nlongest_idle = \"10 d\"\n", "use.longest_idle", ""},
		{"[use]\nhaul_out_every = \"12 months\"\n", "use.haul_out_every", ""},
		{"[wishes]\nrepaint_after = \"12 months\"\n", "use.haul_out_every", ""},
		{"[use]\nashore_each_year = \"0 months\"\n", "use.ashore_each_year", ""},
		{"[use]\nashore_each_year = \"4 months\"\n", "use.ashore_each_year", "use.relaunched_unpainted"},
		{"[use]\nashore_each_year = \"4 months\"\nrelaunched_unpainted = false\n", "use.ashore_each_year", ""},
		{"[use]\ngrowth = \"light\"\n", "use.growth", ""},
		{"[use]\nkept = \"trailer\"\n", "use.growth use.kept", ""},
		{"[use]\nkept = \"afloat\"\n", "use.kept", ""},
		{"[use]\nwater = \"salt\"\n", "use.water", ""},
		{"[use]\nwater_temperature = \"12 degC\"\n", "use.water_temperature", ""},
		{"[use]\ncleaning = \"none\"\n", "use.cleaning", ""},
		{"[use]\ndries_on = \"none\"\n", "use.dries_on", ""},
		{"[[berth]]\nplace = \"GB\"\nrole = \"visited\"\n", "berth", "hull.overall"},
		{"[[berth]]\nplace = \"GB\"\nrole = \"kept\"\nwater = \"salt\"\n", "berth", "hull.overall"}, // her water is the berth's
		{"[[tin]]\ncoating = \"epoxy-barrier\"\n", "", ""},
		{"[[tin]]\ncoating = \"epoxy-barrier\"\npot_life = \"4 h\"\npot_life_at = \"20 degC\"\n", "", "paint.temperature"},
		{"[[tin]]\ncoating = \"epoxy-barrier\"\npot_life = \"4 h\"\npot_life_at = \"20 degC\"\n[paint]\ntemperature = \"12 degC\"\n", "", ""},
		{"[work]\nlaunch = 2027-05-20\n", "work.launch", ""},
		{"[work]\nlaunch_open = true\n", "work.launch", ""},
		{"[work]\nhands = 1\n", "work.hands", ""},
		{"[work]\ndays = [\"Sat\"]\n", "work.days", "work.from work.set_up work.forecast paint.temperature work.shift"},
		{"[work]\ndays = [\"Sat\"]\nfrom = \"08:00\"\nuntil = \"17:00\"\nset_up = \"1 h\"\nshift = 2027-06-07\nlaunch_open = true\n", "work.days work.launch", "work.forecast paint.temperature"},
		{"[work]\ndays = [\"Sat\"]\nlaunch = 2027-12-20\n", "work.days work.launch", "work.from work.set_up work.reserve work.forecast paint.temperature work.shift"},
		{"[work]\ndays = [\"Sat\"]\nlaunch = 2027-12-20\nreserve = \"1 d\"\nslings = true\n", "work.days work.launch", "work.from work.set_up work.forecast paint.temperature"},
		{"[work]\ndays = [\"Sat\"]\n[paint]\ntemperature = \"12 degC\"\n", "work.days", "work.from work.set_up work.forecast work.shift"},
		{"[paint]\nby = \"roller\"\n", "paint.by", ""},
		{"[paint]\nreserve = \"10 %\"\n", "paint.reserve", ""},
		{"[paint]\nthinner = \"5 %\"\n", "paint.thinner", ""},
		{"[paint]\ncans = [\"2.5 L\"]\n", "paint.cans", ""},
		{"[[part]]\nname = \"keel\"\nzone = \"keel\"\nmaterial = \"cast-iron\"\narea = \"3 m2\"\n", "", "part[keel].found paint.profile"},
		{"[[part]]\nname = \"keel\"\nzone = \"keel\"\nmaterial = \"cast-iron\"\narea = \"3 m2\"\n[paint]\nprofile = \"iso-8503-1-grit-fine\"\n", "", "part[keel].found"},
		{"[[part]]\nname = \"anode\"\nzone = \"fitting\"\nmaterial = \"zinc-anode\"\n", "", ""},
	} {
		got, want := assumed(smallestPlan+c.add), slices.Concat(all, strings.Fields(c.come))
		want = slices.DeleteFunc(want, func(k string) bool { return slices.Contains(strings.Fields(c.gone), k) })
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s\ngot  %v\nwant %v", c.add, got, want)
		}
	}
}

// What is taken is said: the berth's water, the usual hours of a day, the stands of her length, the years of the tables.
func TestWhatIsTaken(t *testing.T) {
	const prices = "[[price]]\nkey = \"p\"\nof = \"labour\"\nper = \"h\"\nprice = \"1 EUR\"\nbasis = \"invented\"\n"
	for name, c := range map[string]struct{ own, text, key, taken string }{
		"water":             {"", smallestPlan + "[[berth]]\nplace = \"GB\"\nrole = \"kept\"\nwater = \"brackish\"\n", "use.water", "berth where she is kept, brackish"},
		"hours of a day":    {"", smallestPlan + "[work]\ndays = [\"Sat\"]\n", "work.from", "from 09:00 to 17:00"},
		"stands":            {"", smallestPlan, "hull.stand_pairs", "as her length asks for"},
		"her own stands":    {"", strings.Replace(smallestPlan, "kind =", "stand_pairs = 3\nkind =", 1), "hull.stand_pairs", ""},
		"years":             {prices, smallestPlan, "wishes.reckon_over", "over 10 years"},
		"her own years":     {prices, smallestPlan + "[wishes]\nreckon_over = \"5 years\"\n", "wishes.reckon_over", ""},
		"years of no price": {"", smallestPlan, "wishes.reckon_over", ""},
	} {
		taken := ""
		for _, a := range billed(t, c.own, c.text).Ranking.Assumed {
			if a.Key == c.key {
				taken = a.Taken
			}
		}
		if (taken == "") != (c.taken == "") || !strings.Contains(taken, c.taken) {
			t.Errorf("%s: %q, want %q", name, taken, c.taken)
		}
	}
}
