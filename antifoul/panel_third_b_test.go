package antifoul_test

// The second half of the third panel.
var panelThirdB = []panelled{
	{ // Somebody put an eroding film on a boat that does 25 kn. Semi-hard goes over it as it is; hard or silicone (which held in
		// the Baltic: Lagerström et al. 2022) after stripping. The leg is aluminium.
		"P124 Stockholm archipelago, 25 kn", boatText(sportsHull, "grp", film("ablative-old", `known_by = "wet thumb"`),
			painted("6 months", `under_way = "80 h"`, `speed = "25 kn"`, `longest_idle = "10 d"`, `growth = "medium"`, `water = "brackish"`)+keptIn("SE-east", "brackish")+
				fitted("drive", "leg", "aluminium", "0.6 m2", film("epoxy-primer", "")+film("hard-copper-free", `known_by = "log"`))),
		[]asked{
			{
				first: []string{"hybrid/", "hard/", "foul-release/"}, out: []string{"ablative/", "soft/", "none/"},
				strip: []string{"hard/", "foul-release/", "inert/", "copper-loaded/"},
			},
			{part: "drive", first: []string{freeHard, freeHybrid}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"ablative/", "none/"}},
		},
	},
	{ // White is not to be had with copper oxide. Fresh water: hard, semi-hard or slick, and nothing that waits for the sea.
		"P125 IJsselmeer sloop, white", boatText(lakeCruiser, "grp", film("hard-thiocyanate", `known_by = "log"`),
			painted("5 months", `under_way = "120 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "light"`, `water = "fresh"`)+keptIn("NL", "fresh")+"[wishes]\ntop_colour = \"white\"\n"),
		[]asked{{
			first: []string{brightHard, freeHard, "thin film/", brightHybrid, freeHybrid}, out: []string{"/cuprous oxide", "/metallic copper", "self-polishing/", "soft/"},
			warn: []string{"law Netherlands", "law fresh water in general"},
		}},
	},
	{ // A diver on a soft film is against the law there. Hard after a strip, semi-hard if the place calls it so, or silicone for a
		// trawler that runs each week at eight and a half knots and is wiped.
		"P126 Puget Sound trawler with a diver", boatText(slowMotorboat, "grp", film("ablative-old", `known_by = "log"`),
			usage(`under_way = "250 h"`, `speed = "8.5 kn"`, `longest_idle = "10 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "11 degC"`,
				`cleaning = "sponge"`, `cleaned_every = "30 d"`)+keptIn("US-WA", "salt")+"[[berth]]\nplace = \"US-WA\"\nrole = \"cleaned\"\nwater = \"salt\"\n"),
		[]asked{{
			first: []string{copperHard, brightHard, copperHybrid, brightHybrid, "foul-release/"}, out: []string{"ablative/", "soft/", "none/"},
			strip: []string{"hard/", "foul-release/", "inert/", "copper-loaded/"}, warn: []string{"caution hull-cleaning"},
		}},
	},
	{ // Less biocide in a warm harbour, eighteen months, nobody cleans: something that renews its face, without copper oxide. Her
		// sound hard film stays as the ground.
		"P127 California, less biocide", boatText("kind = \"motor-planing\"\nlength = \"10.8 m\"\nbeam = \"3.8 m\"\ndraft = \"1 m\"\nmass = \"9.5 t\"", "grp", film("hard-cuprous", `known_by = "log"`),
			usage(`under_way = "150 h"`, `speed = "12 kn"`, `longest_idle = "10 d"`, `haul_out_every = "18 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "19 degC"`)+
				keptIn("US-CA", "salt")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{freeAblative, brightAblative, freePolish, brightPolish, "self-polishing/other copper", freeHybrid, brightHybrid}, out: []string{"none/", "inert/", "thin film/"},
			strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"law pesticide registration", "step abrade"},
		}},
	},
	{ // Silicone is on her, she runs at 20 kn each week and is wiped: silicone again. All else needs the silicone off, and no copper
		// on aluminium.
		"P128 aluminium launch under silicone", boatText("kind = \"motor-planing\"\nlength = \"8.4 m\"\nbeam = \"2.9 m\"\ndraft = \"0.6 m\"\nmass = \"4 t\"", "aluminium", film("epoxy-barrier", barrierOf350)+film("silicone-old", `known_by = "log"`),
			usage(`under_way = "200 h"`, `speed = "20 kn"`, `longest_idle = "7 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "17 degC"`,
				`cleaning = "sponge"`, `cleaned_every = "60 d"`)+keptIn("NZ", "salt")),
		[]asked{{
			first: []string{"foul-release/"}, bar: []string{"/cuprous oxide", "/metallic copper"},
			strip: []string{"hard/", "ablative/", "self-polishing/", "hybrid/", "thin film/", "inert/"},
		}},
	},
	{ // Iron ground bright in the morning is primed by noon and built up with epoxy; above it whatever the hull gets.
		"P129 iron keel ground bright", boatText(cruiserHull, "grp", film("ablative-old", `known_by = "log"`),
			painted("5 months", `under_way = "80 h"`, `speed = "5.5 kn"`, `longest_idle = "21 d"`, `growth = "medium"`, `water = "brackish"`)+keptIn("DK", "brackish")+
				fitted("keel", "keel", "cast-iron", "3 m2", film("bare", ""))),
		[]asked{
			{
				first: []string{copperAblative, brightAblative, copperHybrid}, out: []string{"none/", "inert/", "foul-release/"},
				strip: []string{"hard/", "copper-loaded/"}, warn: []string{"law Denmark", "coats 2"},
			},
			{part: "keel", first: []string{"ablative/", "hybrid/", copperHard}, out: []string{"none/"}, bar: []string{"copper-loaded/"}, warn: []string{"step barrier"}},
		},
	},
	{ // Hard over hard at 28 kn. Bronze pods carry silicone or a hard film over a keying primer. The echo sounder gets one thin coat
		// of water-based paint, its maker willing; the anode none.
		"P130 pods of bronze", boatText("kind = \"motor-planing\"\nlength = \"12.5 m\"\nbeam = \"4.1 m\"\ndraft = \"1.1 m\"\nmass = \"14 t\"", "grp", film("hard-old", `known_by = "wet thumb"`),
			painted("3 months", `under_way = "150 h"`, `speed = "28 kn"`, `longest_idle = "10 d"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "21 degC"`)+keptIn("EU", "salt")+
				fitted("pods", "leg", "bronze", "2.2 m2", film("bare", ""))+gear("sounder", "fitting", "transducer")+gear("pod anodes", "fitting", "zinc-anode")),
		[]asked{
			{
				first: []string{copperHard, brightHard}, out: []string{"ablative/", "soft/", "none/", "inert/"},
				strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"step abrade"},
			},
			{part: "pods", first: []string{"hard/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
			{part: "sounder", first: []string{"ablative/", "none/"}, bar: []string{"copper-loaded/"}, out: []string{"inert/"}},
			{part: "pod anodes"},
		},
	},
	{ // Painted before 2003, no log, and it flakes: all off, by people who know what tin is. She starts again on bare gelcoat.
		"P131 flaking film from the organotin years", boatText(longKeeler, "grp", "seen = [\"painted-before-2003\"]\n"+film("unknown-old", "film = \"400 um\"\nstate = \"flaking\""),
			painted("5 months", `under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "21 d"`, `growth = "medium"`, `water = "salt"`)+keptIn("NL", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperHybrid, copperHard}, out: []string{"none/", "inert/", "foul-release/"},
			strip: []string{"ablative/", "hard/", "hybrid/", "self-polishing/", "soft/", "copper-loaded/"},
			warn:  []string{"step strip", "caution unknown-old-film", "caution waste", "law Netherlands"},
		}},
	},
	{ // Guests from May to September, her owner in the fortnights between. Warm growth, painted each spring: copper that wears, or
		// the thiocyanate that she has.
		"P132 catamaran in part-time charter", boatText(twoHulls, "grp", film("ablative-thiocyanate", `known_by = "log"`),
			painted("4 months", `under_way = "450 h"`, `speed = "7 kn"`, `longest_idle = "14 d"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "23 degC"`)+keptIn("EU", "salt")+
				fitted("saildrives", "leg", "aluminium", "0.9 m2", film("epoxy-primer", "")+film("hard-copper-free", `known_by = "log"`))),
		[]asked{
			{
				first: []string{copperAblative, brightAblative, copperHybrid, copperPolish}, out: []string{"foul-release/", "inert/", "thin film/", "none/"},
				strip: []string{"hard/", "copper-loaded/"}, warn: []string{"coats 2", "law Biocidal Products Regulation"},
			},
			{part: "saildrives", first: []string{freeHard, freeHybrid, freePolish, freeAblative, "foul-release/"}, bar: []string{"/cuprous oxide", "/metallic copper"}},
		},
	},
	{ // Tar on her, tar again: washed, the bare spots touched in, two coats. Two-pack only after blasting to white.
		"P133 barge on vinyl tar", boatText("kind = \"motor-displacement\"\nlength = \"19 m\"\nbeam = \"4.2 m\"\ndraft = \"1.1 m\"\nmass = \"60 t\"", "steel", film("blacking-vinyl-tar", `state = "worn"`),
			usage(`under_way = "40 h"`, `speed = "4 kn"`, `longest_idle = "90 d"`, `haul_out_every = "36 months"`, `ashore_each_year = "0 months"`, `growth = "light"`, `water = "fresh"`)+keptIn("NL", "fresh")),
		[]asked{{
			first: []string{"bitumen/"}, out: []string{"none/", "self-polishing/", "foul-release/", "soft/", "thin film/"},
			strip: []string{"inert/"}, bar: []string{"/metallic copper"}, warn: []string{"step wash"},
		}},
	},
	{ // Varnished to the waterline, planked on oak, wiped before each race: the hard racing film that has always been on her, in its
		// old red. Nothing rigid or closed on planks that work.
		"P134 classic racing yacht, varnished", boatText("kind = \"long-keel-yacht\"\nlength = \"9 m\"\nbeam = \"2.4 m\"\ndraft = \"1.8 m\"\nmass = \"7 t\"", "wood-carvel", film("one-pack-primer", "")+film("hard-old", "state = \"burnished\"\nknown_by = \"log\""),
			painted("7 months", `under_way = "120 h"`, `speed = "6.5 kn"`, `longest_idle = "7 d"`, `growth = "light"`, `water = "brackish"`, `cleaning = "sponge"`, `cleaned_every = "7 d"`)+keptIn("DE", "brackish")+
				"[wishes]\nracing_finish = true\ntop_colour = \"red-oxide\"\n"),
		[]asked{{
			first: []string{copperHard, brightHard, "thin film/"}, out: []string{"inert/", "copper-loaded/", "foul-release/", "soft/", "none/"},
			warn: []string{"caution hull-cleaning", "law Biocidal Products Regulation"},
		}},
	},
	{ // A river berth and three weeks at sea each summer. Her hard film is renewed, or a semi-hard or slick one goes over it;
		// polishing films stand still in the river.
		"P135 river boat with a summer at sea", boatText(launchHull, "grp", film("hard-old", `known_by = "wet thumb"`),
			painted("5 months", `under_way = "90 h"`, `speed = "10 kn"`, `longest_idle = "21 d"`, `growth = "light"`, `water = "fresh"`)+keptIn("DE", "fresh")+"[[berth]]\nplace = \"DE\"\nrole = \"visited\"\nwater = \"salt\"\n"),
		[]asked{{
			first: []string{"hard/", "thin film/", "hybrid/"}, out: []string{"self-polishing/", "soft/", "bitumen/"},
			strip: []string{"copper-loaded/", "foul-release/"}, warn: []string{"law fresh water in general", "law Biocidal Products Regulation"},
		}},
	},
	{ // Out day and night at 24 kn. Silicone is made for her and pays for its strip; hard copper over hard is what she has; a
		// polishing copolymer polishes. An eroding film is gone in a month.
		"P136 pilot boat", boatText("kind = \"motor-planing\"\nlength = \"14 m\"\nbeam = \"4.4 m\"\ndraft = \"1.2 m\"\nmass = \"22 t\"", "grp", film("hard-old", `known_by = "log"`),
			painted("0.3 months", `under_way = "2000 h"`, `speed = "24 kn"`, `longest_idle = "2 d"`, `growth = "heavy"`, `water = "salt"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"foul-release/", copperHard, copperPolish}, out: []string{"ablative/", "soft/", "none/", "inert/"}, strip: []string{"foul-release/", "copper-loaded/"}}},
	},
	{ // A summer at the jetty of a lake and a wash in autumn: most stay bare. If paint, then hard or slick without copper.
		"P137 aluminium pontoon boat on a lake", boatText("kind = \"twin-hull\"\nlength = \"6.6 m\"\nbeam = \"0.65 m\"\ndraft = \"0.35 m\"\nmass = \"1.1 t\"", "aluminium", film("bare", ""),
			painted("7 months", `under_way = "50 h"`, `speed = "15 kn"`, `longest_idle = "21 d"`, `growth = "light"`, `water = "fresh"`)+keptIn("US", "fresh")),
		[]asked{{first: []string{"none/", freeHard, "thin film/copper-free"}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"soft/", "self-polishing/"}}},
	},
	{ // New, bare, and on a Finnish lake, where no biocide may be (Tukes on inland waters): bare and wiped, epoxy, or silicone.
		"P138 new yacht on a Finnish lake", boatText(lakeCruiser, "grp", film("bare", ""),
			painted("7 months", `under_way = "80 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "light"`, `water = "fresh"`, `cleaning = "sponge"`, `cleaned_every = "30 d"`)+keptIn("FI", "fresh")),
		[]asked{{first: []string{"none/", "inert/", "foul-release/"}, bar: biocidal, out: []string{"bitumen/"}}},
	},
}
