package antifoul_test

// By use: speed, pattern, idle spells, months wanted, cleaning, trailer and lift, ground, launch date, finish. Judged before any
// ranking was seen; the basis of each stands with it.
var panelByUse = []panelled{
	{
		// Basis: common practice: films that wear are gone in weeks at 38 kn; hard films and silicone stand it. Leg: an aluminium
		// leg takes copper-free; yellow-green primer is chromate until shown otherwise.
		"P35 patrol boat, 38 kn", boatText(runaboutHull, "grp", film("epoxy-barrier", sound300)+
			fitted("leg", "leg", "aluminium", "0.7 m2", film("chromate-primer-old", "")+film("hard-copper-free", "")),
			usage(`under_way = "600 h"`, `speed = "38 kn"`, `longest_idle = "4 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "0.5 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)),
		[]asked{
			{first: []string{"hard/", "foul-release/"}, out: []string{"ablative/", "soft/", "none/", "bitumen/", "copper-loaded/"}},
			{part: "leg", first: []string{"hard/copper-free"}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"ablative/", "soft/"}, warn: []string{"caution chromate"}},
		},
	},

	{
		// Basis: common practice: on a trailer nothing or what bunks and air do no harm; fabric tubes: no rigid two-pack film.
		"P36 inflatable on a trailer", boatText(skiffHull, "grp", film("bare", "")+
			fitted("tubes", "fitting", "fabric-tube", "2 m2", film("bare", "")),
			usage(`under_way = "40 h"`, `speed = "25 kn"`, `longest_idle = "1 d"`, `haul_out_every = "12 months"`, `growth = "light"`, `water = "salt"`, `kept = "trailer"`)),
		[]asked{
			{first: []string{"none/", "thin film/"}, out: []string{"ablative/", "self-polishing/", "soft/", "foul-release/", "bitumen/"}},
			{part: "tubes", first: []string{"none/"}, out: []string{"copper-loaded/"}},
		},
	},

	{
		// Basis: common practice: blacking again on inland and brackish steel that lies still; every film that lives by movement
		// is out, two-pack over bitumen never.
		"P37 steel houseboat, never moves", boatText("kind = \"motor-displacement\"\nlength = \"15 m\"\nbeam = \"4.2 m\"\ndraft = \"0.9 m\"\nmass = \"28 t\"", "steel", film("blacking-bitumen", ""),
			usage(`under_way = "0 h"`, `longest_idle = "365 d"`, `haul_out_every = "36 months"`, `ashore_each_year = "0 months"`, `growth = "light"`,
				`water = "brackish"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("NL", "brackish")),
		[]asked{{
			first: []string{"bitumen/", "inert/"}, bar: []string{"/metallic copper"}, out: []string{"foul-release/", "self-polishing/", "thin film/", "soft/", "none/"},
			strip: []string{"inert/", "foul-release/"},
		}},
	},

	{
		// Basis: common practice: five years on inland steel are two-pack on blasted metal; blacking is renewed at two to three.
		"P38 canal barge, blasted, 60 months", boatText("kind = \"motor-displacement\"\nlength = \"18 m\"\nbeam = \"3.4 m\"\ndraft = \"0.8 m\"\nmass = \"30 t\"", "steel", film("bare", ""),
			usage(`under_way = "150 h"`, `speed = "3.5 kn"`, `longest_idle = "60 d"`, `haul_out_every = "60 months"`, `ashore_each_year = "0 months"`, `growth = "light"`,
				`water = "fresh"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "fresh")),
		[]asked{{first: []string{"inert/"}, bar: []string{"/metallic copper"}, out: []string{"none/", "soft/", "thin film/", "self-polishing/", "foul-release/"}}},
	},

	{
		// Basis: MEPC.1/Circ.792 section 4 (idle craft foul fast); copolymers want movement, an eroding copper film lives at rest:
		// common practice. 24 months: three coats.
		"P39 liveaboard who does not leave", boatText("kind = \"long-keel-yacht\"\nlength = \"9.6 m\"\nbeam = \"3.4 m\"\ndraft = \"1.5 m\"\nmass = \"9 t\"", "grp", film("ablative-cuprous-multi", `film = "80 um"`),
			usage(`under_way = "20 h"`, `speed = "5 kn"`, `longest_idle = "300 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`,
				`water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"ablative/cuprous oxide", "ablative/copper thiocyanate"}, out: []string{"foul-release/", "thin film/", "none/", "inert/", "self-polishing/"},
			strip: []string{"hard/", "copper-loaded/"}, warn: []string{"coats 3"},
		}},
	},

	{
		// Basis: common practice: a hard racing film, burnished, is brushed every week; what wears is brushed off.
		"P40 club racer, brushed weekly", boatText(cruiserHull, "grp", film("hard-cuprous", "film = \"120 um\"\nstate = \"burnished\""),
			usage(`under_way = "160 h"`, `speed = "7 kn"`, `longest_idle = "5 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "brush"`, `cleaned_every = "7 d"`, `kept = "afloat"`)+"[wishes]\nracing_finish = true\n"),
		[]asked{{first: []string{"hard/", "thin film/"}, out: []string{"ablative/", "soft/", "self-polishing/"}, strip: []string{"foul-release/", "inert/", "copper-loaded/"}}},
	},

	{
		// Basis: hard biocide-free coats cleaned every two weeks held up: UC Sea Grant field trial 2002-03. A brush tears silicone
		// and takes eroding films off: common practice.
		"P41 motor cruiser, brushed fortnightly, less biocide", boatText(launchHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "120 h"`, `speed = "8 kn"`, `longest_idle = "10 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "3 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "brush"`, `cleaned_every = "14 d"`, `kept = "afloat"`)+keptIn("GB", "salt")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{first: []string{"inert/", "hard/copper thiocyanate", "hard/copper-free"}, out: []string{"ablative/", "soft/", "foul-release/"}}},
	},

	{
		// Basis: common practice: weekends in the water off a trailer; the sound hard film of the last owner may stay and be
		// renewed, soft things rub off on the bunks.
		"P42 trailer-sailer with an old hard film", boatText("kind = \"centreboard-yacht\"\nlength = \"6 m\"\nbeam = \"2.3 m\"\ndraft = \"0.4 m\"\nmass = \"0.9 t\"", "grp", film("hard-copper-free", `film = "90 um"`),
			usage(`under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "2 d"`, `haul_out_every = "12 months"`, `growth = "light"`, `water = "salt"`, `kept = "trailer"`)),
		[]asked{{
			first: []string{"none/", "thin film/", "hard/copper-free", "hard/copper thiocyanate"}, out: []string{"ablative/", "soft/", "foul-release/", "self-polishing/"},
			strip: []string{"inert/", "copper-loaded/"},
		}},
	},

	{
		// Basis: common practice: four years: four coats of a film that wears by thickness, or copper in epoxy. Copolymer life goes
		// by thickness; she moves every week.
		"P43 48 months wanted", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "300 h"`, `speed = "7 kn"`, `longest_idle = "7 d"`, `haul_out_every = "48 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`,
				`water = "salt"`, `water_temperature = "12 degC"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("US", "salt")),
		[]asked{{
			first: []string{"self-polishing/cuprous oxide", "ablative/cuprous oxide", "copper-loaded/"}, out: []string{"soft/", "thin film/", "none/", "inert/"},
			warn: []string{"coats 4"},
		}},
	},

	{
		// Basis: antifouling is optional on aluminium that is often beached: TB 43-0144 section 7-3; afloat between whiles she
		// wants a hard copper-free film: common practice. Shingle takes silicone and eroding films off.
		"P44 aluminium landing craft", boatText("kind = \"motor-planing\"\nlength = \"8 m\"\nbeam = \"2.8 m\"\ndraft = \"0.6 m\"\nmass = \"4 t\"", "aluminium",
			film("epoxy-barrier", `film = "350 um"`)+film("hard-copper-free", `film = "80 um"`),
			usage(`under_way = "700 h"`, `speed = "22 kn"`, `longest_idle = "3 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "1 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`, `dries_on = "firm"`)),
		[]asked{{first: []string{"hard/copper-free", "hard/copper thiocyanate"}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"ablative/", "soft/", "foul-release/", "none/"}}},
	},

	{
		// Basis: class and ship practice, from memory: copolymer between dockings on steel that works every day; same again.
		"P45 steel tug, daily", boatText("kind = \"working-boat\"\nlength = \"14 m\"\nbeam = \"4.6 m\"\ndraft = \"2.2 m\"\nmass = \"50 t\"", "steel",
			film("epoxy-barrier", `film = "450 um"`)+film("self-polishing-cuprous", `film = "100 um"`),
			usage(`under_way = "1600 h"`, `speed = "9 kn"`, `longest_idle = "3 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`,
				`water = "salt"`, `water_temperature = "14 degC"`, `cleaning = "none"`, `kept = "afloat"`)),
		[]asked{{
			first: []string{"self-polishing/cuprous oxide", "self-polishing/copper thiocyanate", "self-polishing/other copper"}, bar: []string{"/metallic copper"},
			out: []string{"inert/", "none/", "soft/", "thin film/"}, strip: []string{"hard/", "foul-release/"}, warn: []string{"coats 3", "finding metal-barrier-there"},
		}},
	},

	{
		// Basis: common practice: a launch that nobody can date wants a film that may stand dry: eroding and polishing ones.
		"P46 new boat, launch open", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "80 h"`, `speed = "5.5 kn"`, `longest_idle = "10 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`, `relaunched_unpainted = false`, `growth = "medium"`,
				`water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+"[work]\nlaunch_open = true\n"+keptIn("GB", "salt")),
		[]asked{{first: []string{"ablative/", "self-polishing/"}, out: []string{"soft/", "none/", "inert/"}}},
	},

	{
		// Basis: common practice: two months on the hard in summer heat and back unpainted: a wearing film, washed; a hard one is
		// dead after thirty days in the air.
		"P47 Mediterranean, two months ashore unpainted", boatText(cruiserHull, "grp", film("ablative-cuprous-multi", `film = "130 um"`),
			usage(`under_way = "160 h"`, `speed = "6 kn"`, `longest_idle = "21 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "2 months"`,
				`relaunched_unpainted = true`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "21 degC"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{"ablative/cuprous oxide", "self-polishing/cuprous oxide"}, out: []string{"hard/", "soft/", "none/", "inert/", "thin film/"},
			strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"coats 3"},
		}},
	},

	{
		// Basis: MEPC.207(62) section 6 (speed bands, activity); silicone on craft that run fast and daily: common practice.
		"P48 fast launch, daily, less biocide", boatText(runaboutHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "1200 h"`, `speed = "24 kn"`, `longest_idle = "2 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`,
				`water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{first: []string{"foul-release/", "hard/copper-free", "hard/copper thiocyanate"}, out: []string{"ablative/", "soft/", "none/", "bitumen/", "inert/"}}},
	},

	{
		// Basis: common practice: silicone on a slow boat that lies for weeks, unwiped, in heavy growth is money lost, whatever
		// the owner read.
		"P49 silicone wanted, not a candidate", boatText("kind = \"motor-displacement\"\nlength = \"9.2 m\"\nbeam = \"3.4 m\"\ndraft = \"1.1 m\"\nmass = \"7 t\"", "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "50 h"`, `speed = "5 kn"`, `longest_idle = "60 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`,
				`water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")+"[wishes]\ncoating = \"foul-release-silicone\"\n"),
		[]asked{{
			first: []string{"ablative/cuprous oxide", "hard/cuprous oxide"}, out: []string{"foul-release/", "inert/", "thin film/", "none/"},
			warn: []string{"job wish-unsuited"},
		}},
	},

	{
		// Basis: copper in epoxy for long intervals on sheathed timber, woken by brushing; or no biocide and a brush every month:
		// common practice; UC Sea Grant for the latter.
		"P50 sheathed ketch, 60 months, brushed", boatText("kind = \"long-keel-yacht\"\nlength = \"10.2 m\"\nbeam = \"3.5 m\"\ndraft = \"1.7 m\"\nmass = \"11 t\"", "wood-sheathed", film("epoxy-barrier", sound300),
			usage(`under_way = "200 h"`, `speed = "6 kn"`, `longest_idle = "21 d"`, `haul_out_every = "60 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`,
				`water = "salt"`, `cleaning = "brush"`, `cleaned_every = "28 d"`, `kept = "afloat"`)+keptIn("US", "salt")),
		[]asked{{first: []string{"copper-loaded/", "inert/"}, out: []string{"soft/", "thin film/", "none/", "foul-release/", "ablative/"}}},
	},

	{
		// Basis: common practice: she comes out on the lift after each sail and is hosed; no biocide is needed.
		"P51 lift-kept motor boat, no biocide", boatText(runaboutHull, "grp", film("bare", ""),
			usage(`under_way = "90 h"`, `speed = "30 kn"`, `longest_idle = "1 d"`, `haul_out_every = "12 months"`, `growth = "medium"`, `water = "salt"`, `kept = "lift"`)+
				keptIn("US-CA", "salt")+"[wishes]\nbiocide = \"none\"\n"),
		[]asked{{first: []string{"none/", "inert/"}, out: append([]string{"bitumen/"}, biocidal...)}},
	},
}
