package antifoul_test

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// base is an invented boat in which every key of a boat file can be made to matter.
const base = `
[boat]
name = "Test boat"
date = 2027-04-03
[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"
mass = "4 t"
[[part]]
name = "hull"
zone = "hull"
material = "grp"
[[part.found]]
coating = "ablative-cuprous-multi"
colour = "red-oxide"
film = "100 um"
state = "sound"
known_by = "log"
[[part]]
name = "rudder"
zone = "rudder"
material = "grp"
area = "1.2 m2"
[[part.found]]
coating = "bare"
state = "sound"
[use]
under_way = "120 h"
speed = "6 kn"
longest_idle = "20 d"
haul_out_every = "24 months"
ashore_each_year = "4 months"
relaunched_unpainted = true
growth = "medium"
water = "salt"
water_temperature = "15 degC"
kept = "afloat"
dries_on = "none"
[[berth]]
place = "GB"
role = "kept"
water = "salt"
[work]
hands = 2
launch = 2027-05-20
[paint]
by = "roller"
cans = ["0.75 L", "2.5 L"]
`

func plan(t *testing.T, text string) (*antifoul.Job, error) {
	t.Helper()
	boat, err := antifoul.ReadBoat(fstest.MapFS{
		"boat.toml": {Data: []byte(text)}, "girths.csv": {Data: []byte(girths)}, "offsets.csv": {Data: []byte(offsets)},
		"weather.csv": {Data: []byte(weatherSheet)}, "rain.csv": {Data: []byte(strings.Replace(weatherSheet, "04,14,0", "04,14,5", 1))},
	}, "boat.toml")
	if err != nil {
		return nil, err
	}
	return antifoul.Plan(tables.Default(), boat)
}

// The tape and the lines of the test boat.
const (
	girths = "at [m],girth [m]\n0,0.2\n2.25,2.4\n4.5,3.3\n6.75,2.9\n9,0.8\n"
	// The first weekend is dry, the second wet, the third dry.
	weatherSheet = "date,low [degC],high [degC],rain [mm],wind [m/s]\n2027-04-03,04,14,0,3\n2027-04-04,4,14,0,3\n2027-04-05,4,14,0,3\n2027-04-06,4,14,0,3\n2027-04-07,4,14,0,3\n" +
		"2027-04-08,4,14,0,3\n2027-04-09,4,14,0,3\n2027-04-10,4,14,3,3\n2027-04-11,4,14,3,3\n2027-04-12,4,14,0,3\n2027-04-13,4,14,0,3\n2027-04-14,4,14,0,3\n2027-04-15,4,14,0,3\n" +
		"2027-04-16,4,14,0,3\n2027-04-17,4,14,0,3\n2027-04-18,4,14,0,3\n"
	offsets = "at [m],half_breadth [m],height [m]\n0,0,0.5\n0,0,0.6\n4.5,0,0\n4.5,1.4,0.6\n9,0,0.4\n9,0.6,0.6\n"
)

// keelAndCanoe are the keys beside which the numbers of the canoe body matter: a keel, and a draught without it.
var keelAndCanoe = []string{"mass = \"4 t\"\n", "mass = \"4 t\"\ncanoe_draft = \"0.5 m\"\n[[hull.piece]]\nwhat = \"keel\"\nlength = \"1.2 m\"\nheight = \"1 m\"\n"}

// digest writes down what a job decides: verdicts, places and numbers, but not the boat's own words.
func digest(j *antifoul.Job) string {
	var s strings.Builder
	say := func(fs finding.List) {
		for _, f := range fs {
			fmt.Fprintln(&s, f.Rule, f.Verdict, j.Book.Say(f, quantity.Metric))
		}
	}
	for _, p := range j.Ranking.Parts {
		for _, x := range p.Places {
			fmt.Fprintln(&s, p.Part, x.Rank, x.Key, x.Tier, x.Score)
			say(x.Findings())
			say(x.Law())
		}
	}
	for _, x := range j.Schemes {
		for _, k := range x.Coats {
			fmt.Fprintln(&s, x.Part, k.Layer.Coating.Key, k.Layer.Colour, k.Layer.Coats, k.Area.Typical, k.Litres, k.Wet)
		}
		fmt.Fprintln(&s, x.Lasts.Life, x.Lasts.NextHaul, x.Lasts.Rate)
		say(x.Findings)
	}
	for _, g := range j.Buy {
		fmt.Fprintln(&s, g.Coating.Key, g.Need, g.Items, g.FromStock, g.Cost, g.IfOut, g.Mixed, g.Thinner)
		say(g.Notes)
		for _, p := range g.Pots {
			fmt.Fprintln(&s, p.Litres, p.Life)
		}
	}
	for _, x := range j.Supplies {
		fmt.Fprintln(&s, x.Supply.Key, x.Buy)
	}
	fmt.Fprintln(&s, j.Costs.Over, j.Costs.By, j.Costs.Owner.Total, j.Costs.Yard.Total)
	for _, x := range j.Timed {
		fmt.Fprintln(&s, x.Part, x.Work, x.Rate, x.Hours)
		say(x.Findings)
	}
	for _, x := range j.Costs.Types {
		fmt.Fprintln(&s, x.Coating.Key, x.Jobs, x.AYear)
	}
	fmt.Fprintln(&s, j.Waste)
	say(j.OfWaste)
	fmt.Fprintln(&s, j.Pads.Count, j.Boat.Work.Hours(j.Hours))
	turns, days := j.Season.Shown()
	for _, it := range days.Items {
		fmt.Fprintln(&s, turns[it.Task].Name, it.Again, it.Spans, it.Verdict, it.Opens, it.Closes, it.Last)
	}
	say(days.Findings)
	say(j.Season.Findings)
	say(j.Legal)
	say(j.Findings)
	for _, c := range j.Cautions {
		fmt.Fprintln(&s, c.Key)
	}
	for _, f := range j.OldFilms {
		fmt.Fprintln(&s, f.Part, f.Decision.Do, f.Decision.Decided, f.Recoat, f.Strip)
		say(f.Decision.Findings)
	}
	for _, g := range j.PutOn.Gauged {
		fmt.Fprintln(&s, g.Part, g.Result.Passes)
		say(g.Result.Reads)
		for _, z := range g.Result.Zones {
			fmt.Fprintln(&s, z.Zone, z.Passes, z.Mean)
			say(z.Findings)
		}
		for _, m := range g.More {
			fmt.Fprintln(&s, m.Zone, m.Readings, m.Film)
			if m.Paint != nil {
				fmt.Fprintln(&s, m.Paint.Coats, m.Paint.Litres)
			}
		}
	}
	for _, c := range j.PutOn.Combed {
		fmt.Fprintln(&s, c.Result.Mean)
		say(c.Result.Findings)
		if c.More != nil {
			fmt.Fprintln(&s, c.More.Coats, c.More.Litres)
		}
	}
	for _, u := range j.PutOn.Used {
		fmt.Fprintln(&s, u.Result.Coat)
		say(u.Result.Findings)
	}
	if j.Survey != nil {
		for _, a := range j.Survey.Advice {
			fmt.Fprintln(&s, a.Urgency, a.Row.Key, j.Book.Say(a.Finding, quantity.Metric))
		}
		say(j.Survey.Open)
		say(j.Survey.Differs)
		say(j.Survey.Limits)
		for _, m := range j.Survey.Moisture {
			say(m.Findings)
		}
	}
	for _, m := range j.Metals {
		fmt.Fprintln(&s, m.Parts, m.Pair.Anode)
		say(m.Findings)
	}
	return s.String()
}

// keyCases changes one key each. An old text of "" appends the new one to the file or to the section named by after.
var keyCases = []struct{ key, old, new string }{
	{"boat.date", "date = 2027-04-03", "date = 2027-01-03"},
	{"hull.kind", `kind = "fin-keel-yacht"`, `kind = "long-keel-yacht"`},
	{"hull.length", `length = "9 m"`, `length = "9.5 m"`},
	{"hull.beam", `beam = "3 m"`, `beam = "3.2 m"`},
	{"hull.draft", `draft = "1.6 m"`, `draft = "1.9 m"`},
	{"hull.mass", "mass = \"4 t\"", "mass = \"150 kg\""}, // matters in Sweden, see elsewhere
	{"hull.overall", "mass = \"4 t\"", "mass = \"4 t\"\noverall = \"30 m\""},
	{"hull.measured", "mass = \"4 t\"", "mass = \"4 t\"\nmeasured = { flat = \"20 m2\", waterline = \"4 m2\" }"},
	{"hull.canoe_draft", "mass = \"4 t\"\n", "mass = \"4 t\"\nmidship = \"70 %\"\ncanoe_draft = \"0.5 m\"\n[[hull.piece]]\nwhat = \"keel\"\nlength = \"1.2 m\"\nheight = \"1 m\"\n"},
	{"hull.midship", "draft = \"1.6 m\"", "draft = \"1.6 m\"\nmidship = \"70 %\""},
	{"hull.waterline_beam", "midship = \"70 %\"", "midship = \"70 %\"\nwaterline_beam = \"2.7 m\""},
	{"hull.hulls", "mass = \"4 t\"", "mass = \"4 t\"\nhulls = 2"},
	{"hull.boot_top", "mass = \"4 t\"", "mass = \"4 t\"\nboot_top = \"100 mm\""},
	{"hull.girths", "mass = \"4 t\"", "mass = \"4 t\"\ngirths = \"girths.csv\""},
	{"hull.offsets", "mass = \"4 t\"", "mass = \"4 t\"\noffsets = \"offsets.csv\""},
	{"hull.piece.what", "what = \"bilge-keel\"", "what = \"rudder\""},
	{"hull.piece.count", "what = \"bilge-keel\"", "what = \"bilge-keel\"\ncount = 2"},
	{"hull.piece.length", "length = \"1.1 m\"", "length = \"1.3 m\""},
	{"hull.piece.height", "height = \"0.7 m\"", "height = \"0.8 m\""},
	{"hull.piece.width", "mass = \"4 t\"\n", "mass = \"4 t\"\n[[hull.piece]]\nwhat = \"thruster-opening\"\nwidth = \"0.9 m\"\n"},
	{"hull.stand_pairs", "mass = \"4 t\"", "mass = \"4 t\"\nstand_pairs = 3"},
	{"hull.keel_blocks", "mass = \"4 t\"", "mass = \"4 t\"\nkeel_blocks = 3"},
	{"hull.chains", "mass = \"4 t\"", "mass = \"4 t\"\nchains = 3"},
	{"part.name", `name = "rudder"`, `name = "blade"`},
	{"part.zone", `zone = "rudder"`, `zone = "propeller"`},
	{"part.material", "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"", "name = \"hull\"\nzone = \"hull\"\nmaterial = \"aluminium\""},
	{"part.area", `area = "1.2 m2"`, `area = "1.4 m2"`},
	{"part.barrier", "area = \"1.2 m2\"", "area = \"1.2 m2\"\nbarrier = true"},
	{"part.laminate", "area = \"1.2 m2\"", "area = \"1.2 m2\"\nlaminate = \"wet\""},
	{"part.seen", "area = \"1.2 m2\"", "area = \"1.2 m2\"\nseen = [\"thumb-colours\"]"},
	{"part.potential", "area = \"1.2 m2\"", "area = \"1.2 m2\"\npotential = \"-700 mV\"\nelectrode = \"silver-chloride\""},
	{"part.readings.flaking", "[[part]]\nname = \"rudder\"", "[part.readings]\nflaking = \"30 %\"\n[[part]]\nname = \"rudder\""},
	{"part.readings.adhesion", "[[part]]\nname = \"rudder\"", "[part.readings]\nadhesion = \"2A\"\n[[part]]\nname = \"rudder\""},
	{"part.readings.alligatored", "[[part]]\nname = \"rudder\"", "[part.readings]\nalligatored = \"30 %\"\n[[part]]\nname = \"rudder\""},
	{"part.readings.film", "[[part]]\nname = \"rudder\"", "[part.readings]\nfilm = \"300 um\"\n[[part]]\nname = \"rudder\""},
	{"part.readings.blisters", "[[part]]\nname = \"rudder\"", "[part.readings]\nblisters = \"4\"\n[[part]]\nname = \"rudder\""},
	{"part.readings.rust", "[[part]]\nname = \"rudder\"", "[part.readings]\nrust = \"Ri 5\"\n[[part]]\nname = \"rudder\""},
	{"part.readings.moisture", "[[part]]\nname = \"rudder\"", "[part.readings]\nmoisture = \"rising\"\n[[part]]\nname = \"rudder\""},
	{"part.found.coating", `coating = "ablative-cuprous-multi"`, `coating = "silicone-old"`},
	{"part.found.colour", `colour = "red-oxide"`, `colour = "black"`},
	{"part.found.film", `film = "100 um"`, `film = "900 um"`},
	{"part.found.state", "state = \"sound\"\nknown_by", "state = \"flaking\"\nknown_by"},
	{"part.found.age", "coating = \"bare\"\nstate = \"sound\"", "coating = \"epoxy-primer\"\nstate = \"sound\"\nage = \"10 d\""},
	{"use.under_way", `under_way = "120 h"`, `under_way = "20 h"`},
	{"use.speed", `speed = "6 kn"`, `speed = "28 kn"`},
	{"use.longest_idle", `longest_idle = "20 d"`, `longest_idle = "90 d"`},
	{"use.haul_out_every", `haul_out_every = "24 months"`, `haul_out_every = "12 months"`},
	{"use.ashore_each_year", `ashore_each_year = "4 months"`, `ashore_each_year = "0 months"`},
	{"use.relaunched_unpainted", "relaunched_unpainted = true", "relaunched_unpainted = false"},
	{"use.growth", `growth = "medium"`, `growth = "heavy"`},
	{"use.water", "growth = \"medium\"\nwater = \"salt\"", "growth = \"medium\"\nwater = \"fresh\""},
	{"use.water_temperature", `water_temperature = "15 degC"`, `water_temperature = "28 degC"`},
	{"use.cleaning", "kept = \"afloat\"", "cleaning = \"scrub\"\ncleaned_every = \"14 d\"\nkept = \"afloat\""},
	{"use.kept", `kept = "afloat"`, `kept = "trailer"`},
	{"use.dries_on", `dries_on = "none"`, `dries_on = "firm"`},
	{"use.ice", `dries_on = "none"`, "dries_on = \"none\"\nice = true"},
	{"work.done_by", "hands = 2", "hands = 2\ndone_by = \"owner\""},
	{"berth.place", `place = "GB"`, `place = "SE-fresh"`},
	{"berth.role", "place = \"GB\"\nrole = \"kept\"", "place = \"GB\"\nrole = \"visited\""},
	{"berth.water", "role = \"kept\"\nwater = \"salt\"", "role = \"kept\"\nwater = \"fresh\""},
	{"work.hands", "hands = 2", "hands = 1"},
	{"work.launch", "launch = 2027-05-20", "launch = 2027-11-20"},
	{"work.launch_open", "launch = 2027-05-20", "launch = 2027-05-20\nlaunch_open = true"},
	{"work.days", `days = ["Sat", "Sun"]`, `days = ["Wed"]`},
	{"work.from", `from = "09:00"`, `from = "12:00"`},
	{"work.until", `until = "17:00"`, `until = "13:00"`},
	{"work.free", "until", "free = [2027-04-09]\nuntil"},
	{"work.taken", "until", "taken = [2027-04-04]\nuntil"},
	{"work.set_up", "until", "set_up = \"5 h\"\nuntil"},
	{"work.reserve", "until", "reserve = \"40 d\"\nuntil"},
	{"work.shift", "until", "shift = 2027-05-12\nuntil"},
	{"work.slings", "until", "slings = true\nuntil"},
	{"work.roof", "until", "roof = true\nuntil"},
	{"work.forecast", `"weather.csv"`, `"rain.csv"`},
	{"work.other.name", "[paint]", "[[work.other]]\nname = \"fit a log\"\nhours = \"2 h\"\n[paint]"},
	{"work.other.hours", `hours = "2 h"`, `hours = "9 h"`},
	{"work.other.on", `hours = "2 h"`, "hours = \"2 h\"\non = 2027-04-17"},
	{"work.other.after_paint", `hours = "2 h"`, "hours = \"2 h\"\nafter_paint = true"},
	{"paint.by", `by = "roller"`, `by = "airless-open"`},
	{"paint.thinner", `by = "roller"`, "by = \"roller\"\nthinner = \"10 %\""},
	{"paint.reserve", `by = "roller"`, "by = \"roller\"\nreserve = \"25 %\""},
	{"paint.cans", `cans = ["0.75 L", "2.5 L"]`, `cans = ["5 L"]`},
	{"paint.profile", `by = "roller"`, "by = \"roller\"\nprofile = \"iso-8503-1-grit-coarse\""},
	{"paint.temperature", `by = "roller"`, "by = \"roller\"\ntemperature = \"30 degC\""},
	{"tin.coating", `coating = "epoxy-barrier"`, `coating = "silicone-tie-coat"`},
	{"tin.ratio", `ratio = "3:1"`, `ratio = "2:1"`},
	{"tin.density_base", `density_base = "1.4 kg/L"`, `density_base = "1.3 kg/L"`},
	{"tin.density_hardener", `density_hardener = "1 kg/L"`, `density_hardener = "1.1 kg/L"`},
	{"tin.pot_life", `pot_life = "45 min"`, `pot_life = "20 min"`},
	{"tin.pot_life_at", `pot_life_at = "20 degC"`, `pot_life_at = "25 degC"`},
	{"tin.kit.base", `base = "3 L"`, `base = "1.5 L"`},
	{"tin.kit.hardener", `hardener = "1 L"`, `hardener = "0.9 L"`},
	{"tin.kit.price", `price = "140.00 EUR"`, `price = "150.00 EUR"`},
	{"tin.kit.batch", `batch = "K1"`, `batch = "K2"`},
	{"tin.store.size", `size = "0.75 L"`, `size = "0.5 L"`},
	{"tin.store.count", `count = 2`, `count = 1`},
	{"tin.store.colour", "count = 2", "count = 2\ncolour = \"white\""},
	{"tin.store.batch", `batch = "S1"`, `batch = "S2"`},
	{"record.coating", "[[record]]\ncoating = \"ablative-cuprous-multi\"", "[[record]]\ncoating = \"self-polishing-cuprous\""},
	{"record.launched", "launched = 2025-04-01", "launched = 2024-04-01"},
	{"record.film", "film = \"150 um\"", "film = \"180 um\""},
	{"record.litres", "film = \"150 um\"", "litres = \"9 L\"\ncoats = 2"},
	{"record.coats", "coats = 2", "coats = 3"},
	{"record.look.on", "on = 2026-03-01", "on = 2026-09-01"},
	{"record.look.zone", "on = 2026-03-01\nzone = \"flat\"", "on = 2026-03-01\nzone = \"edges\""},
	{"record.look.signal", "signal = false", "signal = true"},
	{"record.look.laid", "zone = \"edges\"", "zone = \"edges\"\nlaid = \"210 um\""},
	{"record.look.film", "film = \"95 um\"", "film = \"70 um\""},
	{"record.look.readings", "film = \"95 um\"", "film = \"95 um\"\nreadings = 20"},
	{"timed.part", "part = \"hull\"\nwork", "part = \"rudder\"\nwork"},
	{"timed.work", "work = \"abrade\"\narea", "work = \"strip\"\narea"},
	{"timed.area", "area = \"0.5 m2\"", "area = \"0.6 m2\""},
	{"timed.took", "took = \"9 min\"", "took = \"12 min\""},
	{"timed.goes", "goes = \"hard\"", "goes = \"easy\""},
	{"wishes.repaint_after", "[paint]", "[wishes]\nrepaint_after = \"48 months\"\n[paint]"},
	{"wishes.biocide", "[paint]", "[wishes]\nbiocide = \"less\"\n[paint]"},
	{"wishes.racing_finish", "[paint]", "[wishes]\nracing_finish = true\n[paint]"},
	{"wishes.top_colour", "[paint]", "[wishes]\ntop_colour = \"white\"\n[paint]"},
	{"wishes.signal_colour", "[paint]", "[wishes]\nsignal_colour = \"mid-grey\"\n[paint]"},
	{"wishes.signal_type", "[paint]", "[wishes]\nsignal_type = \"hard-cuprous\"\n[paint]"},
	{"wishes.coating", "[paint]", "[wishes]\ncoating = \"hard-cuprous\"\n[paint]"},
}

// elsewhere is another change to the base boat, both before and after, for keys that matter only beside it.
var elsewhere = map[string][]string{
	"hull.mass":           {`place = "GB"`, `place = "SE-bothnia"`},
	"hull.midship":        keelAndCanoe,
	"hull.waterline_beam": {keelAndCanoe[0], strings.Replace(keelAndCanoe[1], "canoe", "midship = \"70 %\"\ncanoe", 1)},
	"hull.piece.what":     bilgeKeel,
	"hull.piece.count":    bilgeKeel,
	"hull.piece.length":   bilgeKeel,
	"hull.piece.height":   bilgeKeel,
	"paint.profile":       steel,
	"work.days":           season, "work.from": season, "work.until": season, "work.free": season, "work.taken": season, "work.set_up": season, "work.reserve": season,
	"work.shift": season, "work.slings": season, "work.roof": season, "work.forecast": season, "work.other.name": season,
	"work.other.hours": other, "work.other.on": other, "work.other.after_paint": other,
	"record.coating": looked, "record.launched": looked, "record.film": looked, "record.litres": looked, "record.look.on": looked, "record.look.zone": looked,
	"record.look.signal": looked, "record.look.laid": looked, "record.look.film": looked, "record.look.readings": looked,
	"record.coats":      {looked[0], strings.Replace(looked[1], "film = \"150 um\"", "litres = \"9 L\"\ncoats = 2", 1)},
	"paint.temperature": tin,
	"timed.part":        byClock, "timed.work": byClock, "timed.area": byClock, "timed.took": byClock, "timed.goes": byClock,
	"tin.coating": tin, "tin.ratio": tin, "tin.density_base": tin, "tin.density_hardener": tin, "tin.pot_life": tin, "tin.pot_life_at": append(tin, `by = "roller"`, "by = \"roller\"\ntemperature = \"30 degC\""),
	"tin.kit.base": tin, "tin.kit.hardener": tin, "tin.kit.price": tin, "tin.kit.batch": tin,
	"tin.store.size": tin, "tin.store.count": tin, "tin.store.colour": tin, "tin.store.batch": tin,
}

// byClock is two patches that were timed.
var byClock = []string{"[paint]", "[[timed]]\npart = \"hull\"\nwork = \"abrade\"\narea = \"0.5 m2\"\ntook = \"9 min\"\ngoes = \"hard\"\n" +
	"[[timed]]\npart = \"hull\"\nwork = \"abrade\"\narea = \"0.4 m2\"\ntook = \"3 min\"\ngoes = \"easy\"\n[paint]"}

// season is a plan of days with a forecast; other has other work in it.
var (
	season = []string{"launch = 2027-05-20", "launch = 2027-05-20\ndays = [\"Sat\", \"Sun\"]\nfrom = \"09:00\"\nuntil = \"17:00\"\nforecast = \"weather.csv\"", "draft = \"1.6 m\"", "draft = \"1.6 m\"\nstand_pairs = 3"}
	other  = append(slices.Clone(season), "[paint]", "[[work.other]]\nname = \"fit a log\"\nhours = \"2 h\"\n[paint]")
)

// looked is a record of the film that is on her.
var looked = []string{"[paint]", "[[record]]\ncoating = \"ablative-cuprous-multi\"\nlaunched = 2025-04-01\nfilm = \"150 um\"\n[[record.look]]\non = 2025-10-01\nzone = \"edges\"\nsignal = false\n" +
	"[[record.look]]\non = 2026-03-01\nzone = \"flat\"\nfilm = \"95 um\"\n[paint]"}

// steel is the hull in bare steel, which is blasted and gets epoxy; tin says what stands on the epoxy's tin, and what is in the store.
var (
	steel = []string{
		"material = \"grp\"\n[[part.found]]\ncoating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"",
		"material = \"steel\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"",
	}
	tin = []string{steel[0], steel[1] + "\n[[tin]]\ncoating = \"epoxy-barrier\"\nratio = \"3:1\"\ndensity_base = \"1.4 kg/L\"\ndensity_hardener = \"1 kg/L\"\npot_life = \"45 min\"\npot_life_at = \"20 degC\"\n" +
		"[[tin.kit]]\nbase = \"3 L\"\nhardener = \"1 L\"\nprice = \"140.00 EUR\"\nbatch = \"K1\"\n[[tin.store]]\nsize = \"0.75 L\"\ncount = 2\nbatch = \"S1\"\n[[part]]\nname = \"keel\"\nzone = \"keel\"\narea = \"2 m2\"\nmaterial = \"steel\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\""}
)

var bilgeKeel = []string{"mass = \"4 t\"\n", "mass = \"4 t\"\ngirths = \"girths.csv\"\n[[hull.piece]]\nwhat = \"bilge-keel\"\nlength = \"1.1 m\"\nheight = \"0.7 m\"\n"}

// Each key of a boat file, changed alone, changes a verdict, a place or a number.
func TestEveryKeyMatters(t *testing.T) {
	job, err := plan(t, base)
	if err != nil {
		t.Fatal(err)
	}
	before := digest(job)
	for _, k := range keyCases {
		t.Run(k.key, func(t *testing.T) {
			text, before := base, before
			if also, ok := elsewhere[k.key]; ok {
				text = strings.NewReplacer(also...).Replace(base)
				job, err := plan(t, text)
				if err != nil {
					t.Fatal(err)
				}
				before = digest(job)
			}
			if !strings.Contains(text, k.old) {
				t.Fatalf("the boat does not hold %q", k.old)
			}
			job, err := plan(t, strings.Replace(text, k.old, k.new, 1))
			if err != nil {
				t.Fatal(err)
			}
			if digest(job) == before {
				t.Errorf("%s changes nothing", k.key)
			}
		})
	}
}

// cleaned_every needs cleaning beside it, so its base is a cleaned boat.
func TestCleanedEveryMatters(t *testing.T) {
	with := func(every string) string {
		j, err := plan(t, strings.Replace(base, "kept = \"afloat\"", "cleaning = \"sponge\"\ncleaned_every = \""+every+"\"\nkept = \"afloat\"", 1))
		if err != nil {
			t.Fatal(err)
		}
		return digest(j)
	}
	if with("14 d") == with("120 d") {
		t.Error("use.cleaned_every changes nothing")
	}
}

// The electrode needs a potential beside it.
func TestElectrodeMatters(t *testing.T) {
	against := func(electrode string) string {
		j, err := plan(t, strings.Replace(base, "area = \"1.2 m2\"", "area = \"1.2 m2\"\npotential = \"-700 mV\"\nelectrode = \""+electrode+"\"", 1))
		if err != nil {
			t.Fatal(err)
		}
		return digest(j)
	}
	if against("silver-chloride") == against("copper-sulphate") {
		t.Error("part.electrode changes nothing")
	}
}

// wordsOnly are the keys that only name things for the reader; the report prints them, and no rule reads them.
var wordsOnly = []string{
	"boat.name", "part.found.known_by", "passport.version",
	"job.log", "job.begun", "job.ended", "job.launched", "job.hauled", "job.coat.part", "job.coat.layer", "job.coat.coating", "job.coat.colour", "job.coat.coats", "job.coat.film", "job.coat.litres", "job.coat.batch",
	"survey.by", "survey.hidden", "survey.light", "survey.weather", "survey.not_inspected", "seen.where", "seen.photo", "seen.note",
	"seen.mark.photo", "seen.mark.note", "moisture.meter", "moisture.spots", "moisture.photo", "fitting.name", "fitting.photo", "fitting.note", "fitting.mark.photo", "fitting.mark.note",
}

// besides are the keys that matter only beside another key or own tables, each with a test of its own.
var besides = []string{"use.cleaned_every", "part.electrode", "wishes.reckon_over"}

var keyInReader = regexp.MustCompile(`(?:Text|Word|Words|readClock|readDates|sheetName|Int|YesNo|Date|Texts|Amount\[[a-z.A-Z]+\]|Range\[[a-z.A-Z]+\])\((?:(\w+), )?"([a-z_]+)"`)

// Every key that the reader reads stands in the list above, in the README, and the other way round.
func TestKeysAreAllListed(t *testing.T) {
	var read []string
	for _, file := range []string{"read.go", "readwork.go", "readputon.go", "timed.go", "pastjob.go", "readsurvey.go"} {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range keyInReader.FindAllStringSubmatch(string(src), -1) {
			read = append(read, m[2])
		}
	}
	cases := slices.Concat(keyCases, putOnCases, surveyCases)
	if len(read) < 40 {
		t.Fatalf("found %d keys in read.go, expected at least 40: does the pattern still fit?", len(read))
	}
	all := slices.Concat(wordsOnly, besides)
	for _, k := range cases {
		all = append(all, k.key)
	}
	listed := []string{"name"}
	for _, k := range all {
		listed = append(listed, k[strings.LastIndex(k, ".")+1:])
	}
	for _, k := range read {
		if !slices.Contains(listed, k) {
			t.Errorf("read.go reads %q, and no test shows that it matters", k)
		}
	}
	readme, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range all {
		if !strings.Contains(string(readme), "`"+k+"`") {
			t.Errorf("README.md does not list the boat-file key `%s`", k)
		}
	}
	for _, m := range regexp.MustCompile("\\| `((?:boat|hull|part|use|berth|work|paint|wishes|tin|record|gauge|comb|used|timed|passport|job|survey|seen|moisture|fitting)\\.[a-z_.]+)`").FindAllStringSubmatch(string(readme), -1) {
		if !slices.Contains(all, m[1]) {
			t.Errorf("README.md lists `%s`, which nobody reads", m[1])
		}
	}
}
