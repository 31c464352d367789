package antifoul_test

// A fourth panel, by a yard foreman who saw neither the ranking nor how it weighs. P139 to P168 are what yards lift in April: nothing
// exotic. Out, strip and first are meant as in the third panel. Basis of all, where a boat says no more: common practice; the
// factors of MEPC.1/Circ.792 section 4.

const (
	midCruiser = "kind = \"fin-keel-yacht\"\nlength = \"9.6 m\"\nbeam = \"3.4 m\"\ndraft = \"1.8 m\"\nmass = \"6.2 t\""
	motorYacht = "kind = \"motor-planing\"\nlength = \"12.8 m\"\nbeam = \"4.2 m\"\ndraft = \"1.1 m\"\nmass = \"14 t\""
	dayBoat    = "kind = \"motor-planing\"\nlength = \"5.9 m\"\nbeam = \"2.3 m\"\ndraft = \"0.4 m\"\nmass = \"1.3 t\""
	freeThin   = "thin film/copper-free"
	pyrithione = "self-polishing/other copper"
	oldEroding = "ablative-old"
	fromLog    = `known_by = "log"`
	fromThumb  = `known_by = "wet thumb"`
)

var panelFourth = []panelled{
	{ // The commonest boat of all: worn on the leading edges, else sound. Washed, two coats of what she has. Five knots hold no
		// silicone clean, and a hard film lets go over a soft one.
		"P139 swinging mooring, English Channel", boatText(cruiserHull, "grp", film(oldEroding, "state = \"worn\"\n"+fromLog),
			painted("5 months", `under_way = "80 h"`, `speed = "5.5 kn"`, `longest_idle = "21 d"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "14 degC"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperHybrid}, out: []string{"none/", "inert/"},
			strip: []string{"hard/", "foul-release/", "copper-loaded/"}, warn: []string{"step wash", "coats 2", "law GB"},
		}},
	},
	{ // In the water all year but for a week in April, sound hard paint on her. Nothing forces a change: hard again, or a film that
		// wears over it so that it builds up no more (hard below, wear layer above).
		"P140 marina, afloat through the winter", boatText("kind = \"fin-keel-yacht\"\nlength = \"11 m\"\nbeam = \"3.8 m\"\ndraft = \"2 m\"\nmass = \"8.5 t\"", "grp", film("hard-old", "film = \"250 um\"\n"+fromThumb),
			painted("0.3 months", `under_way = "120 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "13 degC"`)+keptIn("GB", "salt")+
				fitted("shaft", "shaft", "stainless-steel", "0.1 m2", film("bare", ""))+fitted("propeller", "propeller", "bronze", "0.2 m2", film("bare", ""))),
		[]asked{
			{
				first: []string{copperHard, copperAblative, brightAblative, copperHybrid, copperPolish}, out: []string{"none/", "inert/"},
				strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"step abrade", "coats 2", "law GB"},
			},
			{part: "shaft", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/", "self-polishing/"}},
		},
	},
	{ // She sails every week and comes out every other spring: polishing film over polishing film. Others want a tie coat on it.
		"P141 Biscay, every other spring", boatText(midCruiser, "grp", film("epoxy-barrier", sound300)+film("self-polishing-cuprous", fromLog),
			usage(`under_way = "350 h"`, `speed = "6 kn"`, `longest_idle = "7 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "16 degC"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{copperPolish, brightPolish, pyrithione}, out: []string{"none/", "inert/", "thin film/", "soft/"},
			strip: []string{"hard/", "copper-loaded/", "foul-release/"}, warn: []string{"coats 3", "law Biocidal Products Regulation"},
		}},
	},
	{ // Three weeks at the quay and then a day at 22 kn, in warm water. Copper in a film that stands the speed: hard as she has,
		// semi-hard, or polishing.
		"P142 motor yacht, western Mediterranean", boatText(motorYacht, "grp", film("hard-old", fromThumb),
			painted("2 months", `under_way = "90 h"`, `speed = "22 kn"`, `longest_idle = "21 d"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "21 degC"`)+keptIn("EU", "salt")+
				fitted("propellers", "propeller", "bronze", "0.6 m2", film("bare", ""))+fitted("tabs", "trim-tab", "stainless-steel", "0.3 m2", film("bare", ""))),
		[]asked{
			{
				first: []string{copperHard, copperHybrid, copperPolish}, out: []string{"none/", "inert/", "soft/"},
				strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"step abrade", "coats 2", "law Biocidal Products Regulation"},
			},
			{part: "propellers", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
			{part: "tabs", first: []string{"hard/", "foul-release/", "hybrid/"}, out: []string{"soft/"}},
		},
	},
	{ // White under the waterline is a matter of thiocyanate or no copper. Over her eroding film goes another, or a semi-hard one.
		"P143 German Baltic, white", boatText(lakeCruiser, "grp", film("ablative-thiocyanate", "colour = \"white\"\n"+fromLog),
			painted("6 months", `under_way = "100 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "brackish"`)+keptIn("DE", "brackish")+"[wishes]\ntop_colour = \"white\"\n"),
		[]asked{{
			first: []string{brightAblative, freeAblative, brightHybrid, freeHybrid}, out: []string{"/cuprous oxide", "/metallic copper", "none/", "inert/"},
			strip: []string{"hard/", "foul-release/"}, warn: []string{"law Biocidal Products Regulation", "coats 2"},
		}},
	},
	{ // He went over to copper-free two years ago and wants to stay low. The same again; thiocyanate holds less copper than oxide.
		"P144 Kattegat, less biocide", boatText(cruiserHull, "grp", film("ablative-copper-free", fromLog),
			painted("6 months", `under_way = "100 h"`, `speed = "5.5 kn"`, `longest_idle = "10 d"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "14 degC"`)+keptIn("DK", "salt")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{freeAblative, freeHybrid, brightAblative}, out: []string{"none/", "inert/"},
			strip: []string{"hard/", "foul-release/", "copper-loaded/"}, warn: []string{"law Biocidal Products Regulation", "step wash"},
		}},
	},
	{ // The aluminium day boat of every Finnish jetty. Hard, free of copper, as she has; thiocyanate only because the epoxy is
		// whole; 28 kn wash the soft ones off.
		"P145 aluminium boat, Gulf of Finland", boatText(dayBoat, "aluminium", film("epoxy-barrier", barrierOf350)+film("hard-copper-free", fromLog),
			painted("7 months", `under_way = "70 h"`, `speed = "28 kn"`, `longest_idle = "10 d"`, `growth = "light"`, `water = "brackish"`)+keptIn("FI", "brackish")+
				fitted("outboard", "leg", "aluminium", "0.3 m2", film("bare", ""))),
		[]asked{
			{
				first: []string{freeHard, freeThin, freeHybrid, brightHard}, out: []string{"ablative/", "soft/"},
				bar: []string{"/cuprous oxide", "/metallic copper"}, strip: []string{"foul-release/", "inert/"},
			},
			{part: "outboard", first: []string{"none/", freeHard, freeThin}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"soft/"}},
		},
	},
	{ // Barnacles on the outer skerries and 30 kn: hard with copper. The drive is aluminium and goes without.
		"P146 sports cruiser, Swedish west coast", boatText(runaboutHull, "grp", film("hard-thiocyanate", fromLog),
			painted("7 months", `under_way = "80 h"`, `speed = "30 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "salt"`)+keptIn("SE-west", "salt")+
				fitted("drive", "leg", "aluminium", "0.7 m2", film("epoxy-primer", "")+film("hard-copper-free", fromLog))),
		[]asked{
			{
				first: []string{copperHard, brightHard}, out: []string{"ablative/", "soft/", "none/", "inert/"},
				strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"law Sweden", "step abrade"},
			},
			{part: "drive", first: []string{freeHard, freeHybrid, "foul-release/"}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"soft/", "ablative/"}},
		},
	},
	{ // No biocide on the lake. Plain epoxy is on her and the brushes of the club's boat washer are a mile off: leave it, or freshen
		// it.
		"P147 Malaren cruiser with a brush washer", boatText(cruiserHull, "grp", film("inert-epoxy", fromLog),
			painted("6 months", `under_way = "90 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "light"`, `water = "fresh"`, `cleaning = "brush"`, `cleaned_every = "30 d"`)+keptIn("SE-fresh", "fresh")),
		[]asked{{first: []string{"inert/", "none/"}, bar: biocidal, out: []string{"bitumen/", "foul-release/"}}},
	},
	{ // Planks that take up and dry out again each year: an eroding film that gives, in copper. Nothing closed or rigid.
		"P148 carvel keelboat, Stockholm", boatText(longKeeler, "wood-carvel", film("one-pack-primer", "")+film(oldEroding, fromLog),
			painted("7 months", `under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "brackish"`)+keptIn("SE-east", "brackish")),
		[]asked{{
			first: []string{copperAblative, brightAblative, freeAblative, copperHybrid}, out: []string{"inert/", "copper-loaded/", "foul-release/", "none/"},
			strip: []string{"hard/"}, warn: []string{"law Sweden", "coats 2"},
		}},
	},
	{ // Two years between lifts, canals and the big lake. Hard or semi-hard over what she has; sweet water wants nothing that waits
		// for salt. Copper powder never on steel.
		"P149 steel cruiser, Dutch inland", boatText(steelHull, "steel", film("epoxy-barrier", `film = "400 um"`)+film("hard-thiocyanate", "state = \"worn\"\n"+fromLog),
			usage(`under_way = "120 h"`, `speed = "6 kn"`, `longest_idle = "21 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "light"`, `water = "fresh"`)+keptIn("NL", "fresh")),
		[]asked{{
			first: []string{brightHard, freeHard, copperHard, brightHybrid, freeHybrid, copperHybrid}, out: []string{"self-polishing/", "soft/"},
			bar: []string{"/metallic copper"}, strip: []string{"inert/", "foul-release/"}, warn: []string{"law Netherlands", "law fresh water in general", "step abrade"},
		}},
	},
	{ // Every third spring into the dock, pressure-washed, two coats of black. No antifouling is wanted on the cut, and two-pack lifts
		// bitumen. Magnesium stays bare.
		"P150 canal boat on bitumen", boatText("kind = \"motor-displacement\"\nlength = \"15.2 m\"\nbeam = \"2.08 m\"\ndraft = \"0.6 m\"\nmass = \"15 t\"", "steel", film("blacking-bitumen", fromLog),
			usage(`under_way = "150 h"`, `speed = "3 kn"`, `longest_idle = "30 d"`, `haul_out_every = "36 months"`, `ashore_each_year = "0 months"`, `growth = "light"`, `water = "fresh"`)+keptIn("GB", "fresh")+gear("anodes", "fitting", "magnesium-anode")),
		[]asked{
			{first: []string{"bitumen/"}, out: []string{"self-polishing/", "foul-release/", "soft/", "thin film/"}, strip: []string{"inert/"}, bar: []string{"/metallic copper"}, warn: []string{"step wash"}},
			{part: "anodes"},
		},
	},
	{ // The lake allows no biocide. Epoxy is on her, she is wiped each month: epoxy or nothing new, or silicone on its tie coat.
		"P151 Lake Constance cruiser", boatText(lakeCruiser, "grp", film("inert-epoxy", fromLog),
			painted("6 months", `under_way = "80 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "light"`, `water = "fresh"`, `cleaning = "sponge"`, `cleaned_every = "30 d"`)+keptIn("DE-bodensee", "fresh")),
		[]asked{{first: []string{"inert/", "none/", "foul-release/"}, bar: biocidal, out: []string{"bitumen/"}}},
	},
	{ // Two summers on one paint job, dry between them: a film that goes back in without loss. Hard dies in that winter. The keel is
		// lead.
		"P152 Chesapeake cruiser, two summers", boatText(oceanCruiser, "grp", film("ablative-cuprous-multi", fromLog),
			usage(`under_way = "120 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "4 months"`, `relaunched_unpainted = true`, `growth = "heavy"`, `water = "brackish"`, `water_temperature = "22 degC"`)+keptIn("US", "brackish")+
				fitted("keel", "keel", "lead", "4 m2", film("epoxy-primer", "")+film("ablative-cuprous-multi", fromLog))),
		[]asked{
			{
				first: []string{copperAblative, copperPolish}, out: []string{"hard/", "inert/", "none/", "thin film/", "foul-release/", "soft/"},
				strip: []string{"copper-loaded/"}, warn: []string{"coats 3", "law pesticide registration", "step wash"},
			},
			{part: "keel", first: []string{copperAblative, copperPolish}, out: []string{"hard/", "none/", "inert/"}, warn: []string{"caution lead"}},
		},
	},
	{ // 27 kn peel an eroding film. Semi-hard goes over what is left of it; hard once it is off; polishing on a tie coat.
		"P153 Florida sport boat under eroding film", boatText(runaboutHull, "grp", film(oldEroding, fromThumb),
			painted("0.3 months", `under_way = "150 h"`, `speed = "27 kn"`, `longest_idle = "14 d"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "26 degC"`)+keptIn("US", "salt")),
		[]asked{{
			first: []string{copperHybrid, copperHard, copperPolish}, out: []string{"ablative/", "soft/", "none/", "inert/", "thin film/"},
			strip: []string{"hard/", "foul-release/", "copper-loaded/"}, warn: []string{"law pesticide registration"},
		}},
	},
	{ // A diver with soft carpet each month. The hard film that stands it (Schiff et al. 2004), or a semi-hard one; the release of
		// copper is asked about.
		"P154 California sloop with a diver", boatText(midCruiser, "grp", film("hard-cuprous", fromLog),
			usage(`under_way = "120 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "18 degC"`,
				`cleaning = "sponge"`, `cleaned_every = "30 d"`)+keptIn("US-CA", "salt")+"[[berth]]\nplace = \"US-CA\"\nrole = \"cleaned\"\nwater = \"salt\"\n"),
		[]asked{{
			first: []string{copperHard, brightHard, copperHybrid, brightHybrid}, out: []string{"soft/", "none/"}, strip: []string{"inert/", "foul-release/", "copper-loaded/"},
			warn: []string{"law California (release of copper)", "law pesticide registration", "caution hull-cleaning", "step abrade"},
		}},
	},
	{ // Cold water, nobody cleans her, two years: what wears, three coats, or semi-hard.
		"P155 Puget Sound sloop, chalking", boatText(midCruiser, "grp", film("ablative-cuprous-multi", "state = \"chalking\"\n"+fromLog),
			usage(`under_way = "100 h"`, `speed = "6 kn"`, `longest_idle = "21 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "11 degC"`)+keptIn("US-WA", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperHybrid}, out: []string{"none/", "inert/", "thin film/", "soft/", "foul-release/"},
			strip: []string{"hard/", "copper-loaded/"}, warn: []string{"coats 3", "law Washington (copper above 0.5 %)", "step wash"},
		}},
	},
	{ // Eight knots and out most weekends, hauled every spring: eroding again, semi-hard, or polishing on a tie coat.
		"P156 sheathed launch, Hauraki Gulf", boatText(slowMotorboat, "wood-sheathed", film("ablative-cuprous-multi", fromLog),
			painted("0.3 months", `under_way = "150 h"`, `speed = "8 kn"`, `longest_idle = "14 d"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "18 degC"`)+keptIn("NZ", "salt")+
				fitted("propeller", "propeller", "bronze", "0.3 m2", film("bare", ""))),
		[]asked{
			{
				first: []string{copperAblative, copperHybrid, copperPolish}, out: []string{"none/", "inert/", "thin film/"},
				strip: []string{"hard/", "foul-release/", "copper-loaded/"}, warn: []string{"coats 2", "step wash"},
			},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
		},
	},
	{ // On her trailer, and for the holidays a fortnight afloat: nothing and a wipe, or something thin or hard that bunks do not rub
		// off.
		"P157 day boat on a trailer, a fortnight afloat", boatText(dayBoat, "grp", film("bare", ""),
			painted("11 months", `under_way = "40 h"`, `speed = "24 kn"`, `longest_idle = "3 d"`, `growth = "medium"`, `water = "salt"`, `kept = "trailer"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"none/", "thin film/", "hard/"}, out: []string{"ablative/", "soft/", "foul-release/"}}},
	},
	{ // Every tide she sits on hard sand. A firm film that wears a little: semi-hard; hard once the old is off.
		"P158 bilge keeler on hard sand", boatText(smallCruiser, "grp", film(oldEroding, "state = \"worn\"\n"+fromThumb),
			painted("5 months", `under_way = "60 h"`, `speed = "5 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "salt"`, `dries_on = "firm"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperHybrid, brightHybrid, copperHard}, out: []string{"soft/", "foul-release/", "inert/", "none/"},
			strip: []string{"hard/", "copper-loaded/"}, warn: []string{"law GB", "coats 2"},
		}},
	},
	{ // Polishing paint on a boat that hardly leaves her berth: that is why she comes up green. Eroding or semi-hard, on a tie coat.
		// Rust pushes the paint off the iron: back to a sound edge, epoxy, then as the hull.
		"P159 polishing film on an idle boat, rusty keel", boatText(cruiserHull, "grp", film("self-polishing-cuprous", fromLog),
			painted("5 months", `under_way = "20 h"`, `speed = "5 kn"`, `longest_idle = "60 d"`, `growth = "medium"`, `water = "salt"`)+keptIn("GB", "salt")+
				fitted("keel", "keel", "cast-iron", "2.6 m2", film("epoxy-primer", "")+film(oldEroding, "state = \"flaking in places\""))),
		[]asked{
			{
				first: []string{copperAblative, brightAblative, copperHybrid}, out: []string{"none/", "inert/", "foul-release/"},
				strip: []string{"copper-loaded/"}, warn: []string{"step tie coat or abrade", "law GB"},
			},
			{part: "keel", first: []string{"ablative/", "hybrid/", copperHard}, out: []string{"none/"}, bar: []string{"copper-loaded/"}, warn: []string{"step spot repair or strip or blast"}},
		},
	},
	{ // The hull is the same again. Nobody knows what is on the leg: off it comes, down to metal, primed, no copper.
		"P160 saildrive under unknown paint", boatText(midCruiser, "grp", film("self-polishing-cuprous", fromLog),
			painted("4 months", `under_way = "200 h"`, `speed = "6 kn"`, `longest_idle = "7 d"`, `growth = "medium"`, `water = "salt"`)+keptIn("EU", "salt")+
				fitted("saildrive", "leg", "aluminium", "0.5 m2", film("unknown-old", ""))+gear("propeller", "propeller", "bronze")),
		[]asked{
			{first: []string{copperPolish, brightPolish, pyrithione}, out: []string{"none/", "inert/"}, strip: []string{"hard/", "foul-release/", "copper-loaded/"}, warn: []string{"step wash", "coats 2"}},
			{
				part: "saildrive", first: []string{freeHard, freeHybrid, freePolish, freeAblative, "foul-release/"}, bar: []string{"/cuprous oxide", "/metallic copper"},
				strip: []string{"hard/", "ablative/", "self-polishing/", "hybrid/", "foul-release/"}, warn: []string{"step strip or blast", "caution unknown-old-film"},
			},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
		},
	},
	{ // A summer at the dock of a clean lake: most leave gelcoat as it is and wash it in autumn; who paints takes thin or hard.
		"P161 runabout on an American lake", boatText(dayBoat, "grp", film("bare", ""),
			painted("8 months", `under_way = "60 h"`, `speed = "30 kn"`, `longest_idle = "10 d"`, `growth = "light"`, `water = "fresh"`)+keptIn("US", "fresh")+
				fitted("drive", "leg", "aluminium", "0.5 m2", film("bare", ""))),
		[]asked{
			{first: []string{"none/", "thin film/", "hard/", "inert/"}, out: []string{"ablative/", "self-polishing/", "soft/"}},
			{part: "drive", first: []string{"none/", freeHard, freeThin, "inert/"}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"ablative/", "soft/"}},
		},
	},
	{ // Bought in the winter, no papers. Find out, or a test patch and a sealer: then what wears.
		"P162 bought without papers", boatText(cruiserHull, "grp", film("unknown-old", `state = "not reported"`),
			painted("5 months", `under_way = "70 h"`, `speed = "5.5 kn"`, `longest_idle = "21 d"`, `growth = "medium"`, `water = "salt"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperHybrid}, out: []string{"none/", "inert/"}, strip: []string{"foul-release/", "copper-loaded/"},
			warn: []string{"caution unknown-old-film", "step identify or test patch or sealer or strip", "law GB"},
		}},
	},
	{ // Peeled and built up again in epoxy. She starts afresh: whatever of copper suits a year in the Adriatic at six knots.
		"P163 new epoxy after blisters", boatText(midCruiser, "grp", film("epoxy-barrier", `film = "450 um"`),
			painted("2 months", `under_way = "150 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `growth = "heavy"`, `water = "salt"`, `water_temperature = "20 degC"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{copperAblative, copperPolish, copperHybrid, copperHard}, out: []string{"none/", "inert/", "thin film/"},
			warn: []string{"coats 2", "law Biocidal Products Regulation", "step abrade or tie coat"},
		}},
	},
	{ // Lifted and scrubbed before each race: hard epoxy, as she has, or a hard film with copper over it. What rubs off is of no use.
		"P164 club racer, scrubbed each fortnight", boatText("kind = \"fin-keel-yacht\"\nlength = \"8.2 m\"\nbeam = \"2.8 m\"\ndraft = \"1.7 m\"\nmass = \"2.9 t\"", "grp", film("inert-epoxy", fromLog),
			painted("5 months", `under_way = "150 h"`, `speed = "6.5 kn"`, `longest_idle = "7 d"`, `growth = "medium"`, `water = "salt"`, `cleaning = "scrub"`, `cleaned_every = "14 d"`)+keptIn("GB", "salt")+"[wishes]\nracing_finish = true\n"),
		[]asked{{first: []string{"inert/", copperHard, brightHard}, out: []string{"ablative/", "soft/", "foul-release/", "self-polishing/"}}},
	},
	{ // The engine is out of her and nobody knows when she goes back. What may stand dry: eroding or polishing.
		"P165 launch date open", boatText(cruiserHull, "grp", film("hard-old", fromThumb),
			painted("4 months", `under_way = "90 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "salt"`)+keptIn("GB", "salt")+"[work]\nlaunch = 2027-05-22\nlaunch_open = true\n"),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperPolish}, out: []string{"soft/", "none/", "inert/"}, strip: []string{"foul-release/", "copper-loaded/"},
			warn: []string{"step abrade", "law GB"},
		}},
	},
	{ // The plain aluminium centreboarder of Brittany, on mud at low water. Free of copper, or thiocyanate over that whole barrier.
		"P166 aluminium centreboarder, Brittany", boatText("kind = \"centreboard-yacht\"\nlength = \"9.8 m\"\nbeam = \"3.5 m\"\ndraft = \"1 m\"\nmass = \"6.5 t\"", "aluminium", film("epoxy-barrier", barrierOf350)+film("ablative-copper-free", fromLog),
			painted("3 months", `under_way = "150 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "salt"`, `dries_on = "soft"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{freeAblative, brightAblative, freeHybrid, brightHybrid}, out: []string{"none/", "inert/"}, bar: []string{"/cuprous oxide", "/metallic copper"},
			strip: []string{"hard/", "foul-release/"}, warn: []string{"law Biocidal Products Regulation", "coats 2", "step wash"},
		}},
	},
	{ // The river needs little (UBA on inland boats) and he wants little; nobody wipes her. A slick film or a hard one without copper
		// over her old hard film.
		"P167 Havel cruiser, less biocide", boatText(launchHull, "grp", film("hard-old", fromThumb),
			painted("5 months", `under_way = "90 h"`, `speed = "7 kn"`, `longest_idle = "14 d"`, `growth = "light"`, `water = "fresh"`)+keptIn("DE", "fresh")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{"thin film/", freeHard, freeHybrid, brightHard}, out: []string{"self-polishing/", "soft/"}, strip: []string{"inert/", "foul-release/", "copper-loaded/"},
			warn: []string{"law fresh water in general", "law Biocidal Products Regulation"},
		}},
	},
	{ // Fourteen knots from April to October between the skerries; eroding film on her and it has served. These tables do not hold
		// that law.
		"P168 semi-displacement cruiser, Norway", boatText("kind = \"motor-planing\"\nlength = \"9.8 m\"\nbeam = \"3.3 m\"\ndraft = \"0.9 m\"\nmass = \"7 t\"", "grp", film("ablative-cuprous-multi", fromLog),
			painted("5 months", `under_way = "120 h"`, `speed = "14 kn"`, `longest_idle = "14 d"`, `growth = "medium"`, `water = "salt"`, `water_temperature = "12 degC"`)+keptIn("NO", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative, copperHybrid, copperPolish}, out: []string{"none/", "inert/"}, strip: []string{"hard/", "foul-release/", "copper-loaded/"},
			warn: []string{"finding law-unknown-place", "coats 2"},
		}},
	},
}
