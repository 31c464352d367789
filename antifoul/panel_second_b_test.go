package antifoul_test

// The second half of the second panel.
var panelSecondB = []panelled{
	{ // New bare alloy. Copper oxide never; 25 kn is past what an eroding film stands. Silicone suits a boat that runs.
		"P92 aluminium day boat", boatText(sportsHull, "aluminium", film("bare", ""),
			painted("5 months", `under_way = "60 h"`, `speed = "25 kn"`, `longest_idle = "14 d"`, `growth = "medium"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"hard/copper-free", "hybrid/copper-free", "foul-release/"}, out: []string{"ablative/copper-free", "none/"},
			bar: []string{"/cuprous oxide", "/metallic copper"}, warn: []string{"step prime or barrier"},
		}},
	},
	{ // She sits on firm sand at each low water: hard or semi-hard, without copper.
		"P93 aluminium centreboarder", boatText("kind = \"centreboard-yacht\"\nlength = \"9.8 m\"\nbeam = \"3.7 m\"\ndraft = \"0.9 m\"\nmass = \"8 t\"", "aluminium", film("epoxy-barrier", `film = "350 um"`)+film("hard-copper-free", `known_by = "log"`),
			painted("4 months", `under_way = "150 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `dries_on = "firm"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{"hard/copper-free", "hybrid/copper-free"}, out: []string{"ablative/", "self-polishing/", "foul-release/", "soft/", "none/"},
			bar: []string{"/cuprous oxide", "/metallic copper"}, warn: []string{"step abrade"},
		}},
	},
	{ // Never a week in port, 23 degrees: polishing copper over itself, or an eroding film on a tie coat.
		"P94 charter sloop", boatText("kind = \"fin-keel-yacht\"\nlength = \"11.4 m\"\nbeam = \"4 m\"\ndraft = \"2 m\"\nmass = \"9.5 t\"", "grp", film("self-polishing-cuprous", `known_by = "log"`),
			painted("3 months", `under_way = "1200 h"`, `speed = "6 kn"`, `longest_idle = "7 d"`, `growth = "heavy"`, `water_temperature = "23 degC"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{copperPolish, copperAblative}, out: []string{"inert/", "thin film/", "none/", "foul-release/"},
			strip: []string{"hard/", "copper-loaded/"}, warn: []string{"coats 2", "law Biocidal Products Regulation"},
		}},
	},
	{ // Two months at a time at the same berth. The film that erodes at rest, over a full barrier.
		"P95 steel liveaboard, brackish", boatText(steelHull, "steel", film("epoxy-barrier", `film = "400 um"`)+film("ablative-old", ""),
			usage(`under_way = "40 h"`, `speed = "6 kn"`, `longest_idle = "60 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`)+keptIn("NL", "brackish")),
		[]asked{{
			first: []string{copperAblative, brightAblative}, out: []string{"self-polishing/", "foul-release/", "inert/", "thin film/", "soft/", "none/", "bitumen/"},
			strip: []string{"hard/"}, bar: []string{"copper-loaded/"}, warn: []string{"coats 3", "law Netherlands"},
		}},
	},
	{ // Raced offshore and wiped between races: a hard film that burnishes, or a thin one.
		"P96 offshore racer of carbon", boatText("kind = \"fin-keel-yacht\"\nlength = \"10.4 m\"\nbeam = \"3.5 m\"\ndraft = \"2.4 m\"\nmass = \"4.8 t\"", "carbon", film("epoxy-barrier", sound300)+film("hard-thiocyanate", `known_by = "log"`),
			painted("5 months", `under_way = "300 h"`, `speed = "9 kn"`, `longest_idle = "7 d"`, `growth = "medium"`, `cleaning = "sponge"`, `cleaned_every = "14 d"`)+keptIn("GB", "salt")+"[wishes]\nracing_finish = true\n"),
		[]asked{{
			first: []string{copperHard, brightHard, "thin film/copper thiocyanate"}, out: []string{"soft/", "none/"},
			strip: []string{"copper-loaded/", "foul-release/"}, warn: []string{"caution hull-cleaning", "step abrade"},
		}},
	},
	{ // A one-design wiped before each race in brackish water. Soft films smear.
		"P97 one-design keelboat in Denmark", boatText("kind = \"long-keel-yacht\"\nlength = \"6 m\"\nbeam = \"2.2 m\"\ndraft = \"1.2 m\"\nmass = \"2.2 t\"", "grp", film("hard-old", ""),
			painted("6 months", `under_way = "120 h"`, `speed = "5.5 kn"`, `longest_idle = "5 d"`, `growth = "medium"`, `cleaning = "sponge"`, `cleaned_every = "7 d"`)+keptIn("DK", "brackish")+"[wishes]\nracing_finish = true\n"),
		[]asked{{
			first: []string{"hard/", "thin film/"}, out: []string{"soft/", "none/"},
			strip: []string{"copper-loaded/", "foul-release/"}, warn: []string{"caution hull-cleaning", "law Denmark"},
		}},
	},
	{ // She fishes every day the weather lets her. A film that polishes under way, or any that wears and is thick enough.
		"P98 potting boat", boatText(workingHull, "grp", film("ablative-old", ""),
			painted("0.2 months", `under_way = "1500 h"`, `speed = "10 kn"`, `longest_idle = "4 d"`, `growth = "heavy"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperPolish, copperHybrid, copperAblative}, out: []string{"inert/", "thin film/", "none/"},
			strip: []string{"hard/", "copper-loaded/", "foul-release/"}, warn: []string{"step wash"},
		}},
	},
	{ // On the shingle at each tide. Whatever rubs off is gone in June.
		"P99 tender on a beach", boatText(dinghyHull, "grp", film("bare", ""),
			painted("6 months", `under_way = "40 h"`, `speed = "5 kn"`, `longest_idle = "10 d"`, `growth = "medium"`, `dries_on = "firm"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperHard, brightHard, copperHybrid}, out: []string{"ablative/", "self-polishing/", "foul-release/", "soft/", "none/"},
			warn: []string{"step degrease"},
		}},
	},
	{ // Two nights afloat and home on the trailer: she stays bare. Bunks take off what is soft, and air kills what is hard.
		"P100 trailer-sailer", boatText("kind = \"centreboard-yacht\"\nlength = \"5.4 m\"\nbeam = \"2.3 m\"\ndraft = \"0.35 m\"\nmass = \"0.8 t\"", "grp", film("bare", ""),
			usage(`under_way = "60 h"`, `speed = "4 kn"`, `longest_idle = "2 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "11 months"`, `relaunched_unpainted = true`, `growth = "medium"`, `kept = "trailer"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"none/"}, out: []string{"ablative/", "soft/", "foul-release/"}}},
	},
	{ // Sixteen knots is within what an eroding film stands; soft paint it is not.
		"P101 plywood motor cruiser", boatText(runaboutHull, "wood-sheathed", film("ablative-old", ""),
			painted("4 months", `under_way = "100 h"`, `speed = "16 kn"`, `longest_idle = "14 d"`, `growth = "medium"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperHybrid}, out: []string{"soft/", "none/", "inert/"},
			strip: []string{"hard/", "copper-loaded/", "foul-release/"}, warn: []string{"step wash", "law GB"},
		}},
	},
	{ // Light growth and a wish for less: leave the copper oxide in the shop. Nobody wipes, so something that works by itself.
		"P102 sea-loch cruiser, less biocide", boatText(cruiserHull, "grp", film("ablative-old", ""),
			painted("6 months", `under_way = "100 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "light"`)+keptIn("GB", "salt")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{brightAblative, "ablative/copper-free", "hybrid/copper thiocyanate", "hybrid/copper-free"},
			out:   []string{"none/", "inert/", "foul-release/"}, strip: []string{"hard/", "copper-loaded/"},
		}},
	},
	{ // A month on the mooring at a time, two years in the water.
		"P103 sheathed keeler in New Zealand", boatText(longKeeler, "wood-sheathed", film("ablative-old", ""),
			usage(`under_way = "60 h"`, `speed = "5 kn"`, `longest_idle = "30 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water_temperature = "18 degC"`)+keptIn("NZ", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative}, out: []string{"self-polishing/", "foul-release/", "inert/", "thin film/", "soft/", "none/"},
			strip: []string{"hard/", "copper-loaded/"}, warn: []string{"coats 3"},
		}},
	},
	{ // Painted every other spring: she lies dry half the year between and goes back as she is. A hard film is dead by then.
		"P104 Baltic cruiser, every other spring", boatText(cruiserHull, "grp", film("self-polishing-cuprous", `known_by = "log"`),
			usage(`under_way = "200 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "6 months"`, `relaunched_unpainted = true`, `growth = "medium"`)+keptIn("DE", "brackish")+"[wishes]\nrepaint_after = \"24 months\"\n"),
		[]asked{{
			first: []string{copperPolish, "self-polishing/copper thiocyanate", copperAblative}, out: []string{"hard/", "soft/", "inert/", "none/", "thin film/"},
			strip: []string{"copper-loaded/"}, warn: []string{"law Biocidal Products Regulation"},
		}},
	},
	{ // A flat bottom on the sands of the tidal flats, on steel: hard or semi-hard above a full barrier.
		"P105 leeboard barge on the flats", boatText("kind = \"working-boat\"\nlength = \"13 m\"\nbeam = \"4.2 m\"\ndraft = \"0.9 m\"\nmass = \"24 t\"", "steel", film("epoxy-barrier", `film = "400 um"`)+film("hard-old", ""),
			painted("1 months", `under_way = "150 h"`, `speed = "5 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `dries_on = "firm"`)+keptIn("NL", "salt")),
		[]asked{{
			first: []string{copperHard, copperHybrid}, out: []string{"ablative/", "self-polishing/", "foul-release/", "soft/", "none/"},
			bar: []string{"copper-loaded/"}, warn: []string{"law Netherlands", "step abrade"},
		}},
	},
	{ // Bright red is not to be had with copper oxide. Nobody knows the law there from these tables, and they must say so.
		"P106 double-ender, bright red", boatText("kind = \"motor-displacement\"\nlength = \"6.4 m\"\nbeam = \"2.4 m\"\ndraft = \"0.8 m\"\nmass = \"2 t\"", "grp", film("ablative-old", ""),
			painted("6 months", `under_way = "60 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `growth = "medium"`)+keptIn("NO", "salt")+"[wishes]\ntop_colour = \"bright-red\"\n"),
		[]asked{{
			first: []string{brightAblative, "ablative/copper-free", "hybrid/copper thiocyanate", "hybrid/copper-free"},
			out:   []string{"none/", "inert/", "foul-release/"}, strip: []string{"hard/", "copper-loaded/"}, warn: []string{"finding law-unknown-place"},
		}},
	},
	{ // A crew boat that runs all day: silicone, or polishing without copper. No hard film without copper lasts two years.
		"P107 crew-transfer catamaran", boatText("kind = \"twin-hull\"\nlength = \"19 m\"\nbeam = \"2.4 m\"\ndraft = \"1.2 m\"\nmass = \"45 t\"", "aluminium", film("epoxy-barrier", `film = "350 um"`),
			usage(`under_way = "3000 h"`, `speed = "24 kn"`, `longest_idle = "3 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"foul-release/", "self-polishing/copper-free"}, out: []string{"hard/copper-free", "thin film/", "inert/", "none/"},
			bar: []string{"/cuprous oxide", "/metallic copper"},
		}},
	},
	{ // She commutes at 22 kn and her owner wants no biocide: silicone, once the old film is off.
		"P108 commuter, no biocide", boatText(sportsHull, "grp", film("hard-old", ""),
			painted("0.5 months", `under_way = "300 h"`, `speed = "22 kn"`, `longest_idle = "5 d"`, `growth = "medium"`)+keptIn("SE-west", "salt")+"[wishes]\nbiocide = \"none\"\n"),
		[]asked{{first: []string{"foul-release/"}, out: append([]string{"none/", "inert/"}, biocidal...), warn: []string{"step strip"}}},
	},
}
