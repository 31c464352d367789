package antifoul_test

// A third panel, by a yard foreman who saw neither the ranking nor how it weighs. P109 to P138 are boats of other materials,
// waters and habits than those before. Out stands what use, water or material rules out; strip what cannot go over the film
// found. First are the types that a good yard would put on her and another good yard would not talk her owner out of. Basis of
// all, where a boat says no more: common practice; the factors of MEPC.1/Circ.792 section 4.

const (
	brightHybrid  = "hybrid/copper thiocyanate"
	freeAblative  = "ablative/copper-free"
	freeHard      = "hard/copper-free"
	freeHybrid    = "hybrid/copper-free"
	freePolish    = "self-polishing/copper-free"
	brightPolish  = "self-polishing/copper thiocyanate"
	barrierOf350  = `film = "350 um"`
	lakeCruiser   = "kind = \"fin-keel-yacht\"\nlength = \"9.2 m\"\nbeam = \"3.2 m\"\ndraft = \"1.6 m\"\nmass = \"5.4 t\""
	oceanCruiser  = "kind = \"medium-keel-yacht\"\nlength = \"11 m\"\nbeam = \"3.7 m\"\ndraft = \"1.9 m\"\nmass = \"11 t\""
	twoHulls      = "kind = \"twin-hull\"\nlength = \"11.2 m\"\nbeam = \"1.4 m\"\ndraft = \"1 m\"\nmass = \"8 t\""
	slowMotorboat = "kind = \"motor-displacement\"\nlength = \"11.6 m\"\nbeam = \"4.1 m\"\ndraft = \"1.3 m\"\nmass = \"17 t\""
)

var panelThird = []panelled{
	{ // She hangs dry and is wet for an afternoon: nothing, or a slick thin film on the hull. Bare tubes are wiped. What is soft
		// rubs off in the chocks, and 28 kn take the rest.
		"P109 RIB on davits", boatText("kind = \"motor-planing\"\nlength = \"4.6 m\"\nbeam = \"2.1 m\"\ndraft = \"0.4 m\"\nmass = \"0.7 t\"", "grp", film("bare", ""),
			usage(`under_way = "60 h"`, `speed = "28 kn"`, `longest_idle = "1 d"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "27 degC"`, `kept = "lift"`)+keptIn("AG", "salt")+
				fitted("tubes", "fitting", "fabric-tube", "2.5 m2", film("bare", ""))+fitted("outboard", "leg", "aluminium", "0.4 m2", film("bare", ""))),
		[]asked{
			{first: []string{"none/", "thin film/"}, out: []string{"ablative/", "soft/"}},
			{part: "tubes", first: []string{"none/"}, out: []string{"inert/", "copper-loaded/", "foul-release/"}},
			{part: "outboard", first: []string{"none/", freeHard, "thin film/copper-free"}, bar: []string{"/cuprous oxide", "/metallic copper"}},
		},
	},
	{ // Two-pack is on her, four years are wanted, and each winter she breaks ice: two-pack again, over a good abrade. Blacking is
		// gone at the waterline after the first frost, and no antifouling is made for a canal.
		"P110 narrowboat on two-pack, breaks ice", boatText("kind = \"motor-displacement\"\nlength = \"16.5 m\"\nbeam = \"2.08 m\"\ndraft = \"0.6 m\"\nmass = \"17 t\"", "steel", film("epoxy-barrier", `film = "400 um"`),
			usage(`under_way = "200 h"`, `speed = "3 kn"`, `longest_idle = "14 d"`, `haul_out_every = "48 months"`, `ashore_each_year = "0 months"`, `growth = "light"`, `water = "fresh"`, `ice = true`)+keptIn("GB", "fresh")),
		[]asked{{
			first: []string{"inert/"}, out: []string{"soft/", "ablative/", "self-polishing/", "foul-release/", "thin film/"},
			bar: []string{"/metallic copper"}, warn: []string{"step abrade"},
		}},
	},
	{ // Twice a year on the posts, scraped and painted between two tides: the soft paint that goes in wet, over itself. Mud does
		// not rub it off. Her planks want to breathe. Basis: common practice of tidal scrubbing.
		"P111 smack in a mud berth, painted between tides", boatText(workingHull, "wood-carvel", film("soft-old", `known_by = "log"`),
			usage(`under_way = "250 h"`, `speed = "5 kn"`, `longest_idle = "7 d"`, `haul_out_every = "6 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `dries_on = "soft"`)+
				keptIn("GB", "salt")+"[work]\nlaunch = 2027-04-11\n"),
		[]asked{{
			first: []string{"soft/"}, out: []string{"inert/", "copper-loaded/", "foul-release/", "none/"},
			strip: []string{"hard/", "ablative/", "self-polishing/", "hybrid/", "thin film/"}, warn: []string{"law GB"},
		}},
	},
	{ // A week or two at anchor, then a passage; two years. No copper oxide near the plate, thiocyanate only because her epoxy is
		// whole. A saildrive takes what is free of copper, or silicone.
		"P112 aluminium catamaran with saildrives", boatText(twoHulls, "aluminium", film("epoxy-barrier", barrierOf350)+film("self-polishing-copper-free", `known_by = "log"`),
			usage(`under_way = "700 h"`, `speed = "8 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "20 degC"`)+
				keptIn("EU", "salt")+fitted("saildrives", "leg", "aluminium", "0.9 m2", film("epoxy-primer", "")+film("hard-copper-free", `known_by = "log"`))),
		[]asked{
			{
				first: []string{freePolish, brightPolish, "self-polishing/other copper", freeAblative, brightAblative, freeHybrid},
				out:   []string{"none/", "inert/", "thin film/"}, strip: []string{"hard/"}, bar: []string{"/cuprous oxide", "/metallic copper"},
				warn: []string{"coats 3", "law Biocidal Products Regulation"},
			},
			{part: "saildrives", first: []string{freeHard, freeHybrid, freePolish, freeAblative, "foul-release/"}, bar: []string{"/cuprous oxide", "/metallic copper"}},
		},
	},
	{ // Blasted to the cement: epoxy first, for the mesh under it, then copper that wears. Nobody cleans her, and 5.5 kn hold no
		// silicone clean.
		"P113 ferrocement ketch, blasted bare", boatText("kind = \"long-keel-yacht\"\nlength = \"12 m\"\nbeam = \"3.9 m\"\ndraft = \"1.9 m\"\nmass = \"19 t\"", "ferrocement", film("bare", ""),
			usage(`under_way = "250 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "18 degC"`)+keptIn("NZ", "salt")),
		[]asked{{
			first: []string{copperAblative, copperPolish, copperHybrid}, out: []string{"inert/", "none/", "thin film/", "soft/", "foul-release/"},
			warn: []string{"step barrier", "coats 3"},
		}},
	},
	{ // Somebody painted the metal that needs no paint. Off with it, and leave her bare.
		"P114 copper-nickel, painted over", boatText(launchHull, "copper-nickel", film("ablative-old", `known_by = "wet thumb"`),
			usage(`under_way = "150 h"`, `speed = "7 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`)+keptIn("GB", "salt")+
				gear("shaft", "shaft", "stainless-steel")),
		[]asked{
			{
				first: []string{"none/"}, warn: []string{"step strip"},
				out: []string{"hard/", "ablative/", "self-polishing/", "hybrid/", "foul-release/", "inert/", "thin film/", "copper-loaded/", "soft/", "bitumen/"},
			},
			{part: "shaft", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
		},
	},
	{ // No paint is promised to hold on that plastic, the beach would have it off, and a deck brush each week does more.
		"P115 polyethylene tender, scrubbed", boatText(dinghyHull, "polyethylene", film("bare", ""),
			painted("6 months", `under_way = "30 h"`, `speed = "4 kn"`, `longest_idle = "7 d"`, `growth = "medium"`, `water = "salt"`, `cleaning = "scrub"`, `cleaned_every = "7 d"`, `dries_on = "firm"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"none/"}, out: []string{"ablative/", "soft/", "foul-release/"}}},
	},
	{ // Ice planes off whatever is soft. Cold water grows little: hard antifouling or plain hard epoxy. Copper oxide is safe behind
		// half a millimetre of epoxy, metallic copper never.
		"P116 expedition sloop in ice", boatText(oceanCruiser, "steel", film("epoxy-barrier", `film = "500 um"`),
			painted("4 months", `under_way = "600 h"`, `speed = "6 kn"`, `longest_idle = "21 d"`, `growth = "light"`, `water = "salt"`, `water_temperature = "5 degC"`, `ice = true`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"hard/", "inert/"}, out: []string{"ablative/", "self-polishing/", "soft/", "foul-release/", "thin film/"},
			bar: []string{"/metallic copper"},
		}},
	},
	{ // In by crane for the regatta, out on Sunday night: faired epoxy as she is, sprayed again, or a slick thin film. What wears
		// is of no use dry, and copper powder makes no racing finish.
		"P117 keelboat dry-sailed by crane", boatText("kind = \"fin-keel-yacht\"\nlength = \"7.4 m\"\nbeam = \"2.5 m\"\ndraft = \"1.8 m\"\nmass = \"1.5 t\"", "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "150 h"`, `speed = "7 kn"`, `longest_idle = "4 d"`, `haul_out_every = "12 months"`, `growth = "light"`, `water = "salt"`, `kept = "lift"`)+keptIn("DK", "salt")+
				"[wishes]\nracing_finish = true\n"+fitted("keel", "keel", "lead", "2.2 m2", film("bare", ""))),
		[]asked{
			{first: []string{"none/", "inert/", "thin film/"}, out: []string{"ablative/", "self-polishing/", "soft/", "copper-loaded/"}},
			{part: "keel", first: []string{"none/", "inert/", "thin film/"}, out: []string{"ablative/", "soft/"}, warn: []string{"caution lead"}},
		},
	},
	{ // Out every week with another crew, and a diver with a brush each month: the film has to stand the brush for two years of
		// warm growth. Basis also: Schiff et al. 2004 on hard films under a diver.
		"P118 hire fleet, brushed by divers", boatText("kind = \"fin-keel-yacht\"\nlength = \"10.8 m\"\nbeam = \"3.8 m\"\ndraft = \"1.9 m\"\nmass = \"8 t\"", "grp", film("hard-cuprous", `known_by = "log"`),
			usage(`under_way = "900 h"`, `speed = "6.5 kn"`, `longest_idle = "6 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "22 degC"`,
				`cleaning = "brush"`, `cleaned_every = "30 d"`)+keptIn("EU", "salt")+"[[berth]]\nplace = \"EU\"\nrole = \"cleaned\"\nwater = \"salt\"\n"),
		[]asked{{
			first: []string{copperHard}, out: []string{"ablative/", "soft/", "foul-release/", "none/", "thin film/"},
			strip: []string{"inert/", "copper-loaded/"}, warn: []string{"caution hull-cleaning", "coats 2", "step abrade"},
		}},
	},
	{ // Three years in 28 degrees with three weeks at anchor between passages: all the film that will lie on her, of a kind that
		// renews its face. No hard film lives that long there. Nobody knows that law from these tables.
		"P119 36 months in the tropics", boatText(oceanCruiser, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "1000 h"`, `speed = "6 kn"`, `longest_idle = "21 d"`, `haul_out_every = "36 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "28 degC"`)+
				keptIn("PF", "salt")+gear("propeller", "propeller", "bronze")+gear("shaft", "shaft", "stainless-steel")),
		[]asked{
			{
				first: []string{copperPolish, copperAblative}, out: []string{"hard/", "thin film/", "soft/", "inert/", "none/", "foul-release/"},
				warn: []string{"coats 4", "finding law-unknown-place"},
			},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "self-polishing/", "soft/"}},
			{part: "shaft", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
		},
	},
	{ // For sale, and still lying there next spring. A film that gives off copper without being moved: eroding, hard or semi-hard.
		"P120 laid up afloat, for sale", boatText("kind = \"motor-planing\"\nlength = \"10.5 m\"\nbeam = \"3.7 m\"\ndraft = \"1 m\"\nmass = \"9 t\"", "grp", film("hard-old", `known_by = "wet thumb"`),
			painted("0.2 months", `under_way = "5 h"`, `longest_idle = "330 d"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "13 degC"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperHard, copperHybrid}, out: []string{"self-polishing/", "foul-release/", "inert/", "thin film/", "none/"},
			strip: []string{"copper-loaded/"}, warn: []string{"step abrade"},
		}},
	},
	{ // Fifteen springs of hard film: it all comes off. Then hard again at 30 kn, or silicone, since the strip is paid for anyway
		// (UC Sea Grant: the best moment to change).
		"P121 hard film built up too thick, 30 kn", boatText(runaboutHull, "grp", film("hard-cuprous", "film = \"900 um\"\nstate = \"too thick\""),
			painted("4 months", `under_way = "90 h"`, `speed = "30 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "salt"`)+keptIn("US", "salt")+gear("tabs", "trim-tab", "stainless-steel")),
		[]asked{
			{
				first: []string{copperHard, brightHard, "foul-release/"}, out: []string{"ablative/", "soft/", "none/", "inert/"},
				strip: []string{"hard/", "hybrid/", "self-polishing/", "foul-release/", "copper-loaded/"}, warn: []string{"step strip", "caution stripping", "caution waste"},
			},
			{part: "tabs", first: []string{"hard/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
		},
	},
	{ // No biocide on a Danish lake (Order 1257 of 2011). Wiped each month: hard epoxy or silicone once the old film is off, or
		// nothing.
		"P122 sheathed launch on a Danish lake", boatText(launchHull, "wood-sheathed", film("ablative-old", `known_by = "wet thumb"`),
			painted("6 months", `under_way = "60 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `growth = "light"`, `water = "fresh"`, `cleaning = "sponge"`, `cleaned_every = "30 d"`)+keptIn("DK", "fresh")),
		[]asked{{first: []string{"inert/", "foul-release/", "none/"}, bar: biocidal, strip: []string{"inert/", "foul-release/"}}},
	},
	{ // Her own berth decides, and it lies on the lake; a July on the coast gives her no copper. The boat washer has brushes.
		"P123 lake berth, July on the coast", boatText(cruiserHull, "grp", film("hard-old", `known_by = "wet thumb"`),
			painted("6 months", `under_way = "100 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "light"`, `water = "fresh"`, `cleaning = "brush"`, `cleaned_every = "30 d"`)+
				keptIn("SE-fresh", "fresh")+"[[berth]]\nplace = \"SE-east\"\nrole = \"visited\"\nwater = \"brackish\"\n"),
		[]asked{{first: []string{"inert/", "none/"}, bar: biocidal, out: []string{"foul-release/", "bitumen/"}, strip: []string{"inert/"}}},
	},
}
