package antifoul_test

// A second panel, by another bottom painter, who saw neither the ranking nor the answers of the first. P79 to P108 are the
// boats that a yard has on its hands most weeks. Out stands what the use, the water or the material rules out; strip what cannot
// go over the film found. First are all the types that colleagues would argue about over a drink and none would call wrong.
// Basis: common practice; the factors of MEPC.1/Circ.792 section 4.

// painted is the use of a boat that lies ashore so many months each winter and is painted each spring, with further lines.
func painted(ashore string, lines ...string) string {
	return usage(append(lines, `haul_out_every = "12 months"`, `ashore_each_year = "`+ashore+`"`, `relaunched_unpainted = false`)...)
}

const (
	copperAblative = "ablative/cuprous oxide"
	copperHybrid   = "hybrid/cuprous oxide"
	copperHard     = "hard/cuprous oxide"
	copperPolish   = "self-polishing/cuprous oxide"
	brightAblative = "ablative/copper thiocyanate"
	brightHard     = "hard/copper thiocyanate"

	smallCruiser = "kind = \"bilge-keel-yacht\"\nlength = \"6.4 m\"\nbeam = \"2.5 m\"\ndraft = \"0.8 m\"\nmass = \"2.3 t\""
	longKeeler   = "kind = \"long-keel-yacht\"\nlength = \"7.6 m\"\nbeam = \"2.9 m\"\ndraft = \"1.4 m\"\nmass = \"5.2 t\""
	sportsHull   = "kind = \"motor-planing\"\nlength = \"6.4 m\"\nbeam = \"2.5 m\"\ndraft = \"0.5 m\"\nmass = \"1.9 t\""
)

var panelSecond = []panelled{
	{ // The commonest job of all: the same again on sound paint. Five knots and three weeks at the berth hold no foul-release film
		// clean, nobody brushes, and nobody takes sound paint off.
		"P79 marina cruiser, the same again", boatText(cruiserHull, "grp", film("ablative-old", `known_by = "log"`),
			painted("5 months", `under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "21 d"`, `growth = "medium"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperAblative, brightAblative}, out: []string{"foul-release/", "inert/", "thin film/", "none/"},
			strip: []string{"hard/", "copper-loaded/"}, warn: []string{"step wash", "coats 2", "law GB"},
		}},
	},
	{ // Two years afloat in heavy growth ask for three coats of something that wears slowly. Her old hard film is a good ground.
		"P80 long-keeler on a swinging mooring", boatText(longKeeler, "grp", film("hard-old", `known_by = "wet thumb"`),
			usage(`under_way = "100 h"`, `speed = "5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperAblative, copperHybrid},
			out:   []string{"soft/", "thin film/", "inert/", "foul-release/", "none/", "hard/copper-free", "hard/copper thiocyanate"},
			strip: []string{"copper-loaded/"}, warn: []string{"step abrade", "coats 3", "law GB"},
		}},
	},
	{ // Bought last autumn, no log. Identify or try a patch, seal, and stay with something soft enough to be wrong over. Her keels
		// rust through: bright metal, primer, barrier, and copper only above that.
		"P81 second-hand cruiser, paint unknown", boatText(smallCruiser, "grp", film("unknown-old", ""),
			painted("5 months", `under_way = "50 h"`, `speed = "4 kn"`, `longest_idle = "21 d"`, `growth = "medium"`)+keptIn("GB", "salt")+
				fitted("keels", "keel", "cast-iron", "2.6 m2", film("unknown-old", `state = "rusted through"`))),
		[]asked{
			{
				first: []string{copperAblative, brightAblative, copperHybrid}, out: []string{"thin film/", "none/"},
				strip: []string{"hard/", "foul-release/", "inert/", "copper-loaded/"},
				warn:  []string{"step identify or test patch", "caution unknown-old-film"},
			},
			{
				part: "keels", first: []string{"ablative/", "hybrid/", copperHard}, bar: []string{"copper-loaded/"},
				warn: []string{"step blast", "step barrier"},
			},
		},
	},
	{ // Thirty knots pull an eroding film off in a month. The leg is aluminium: nothing with copper oxide on it or beside it.
		"P82 sportsboat afloat", boatText(sportsHull, "grp", film("hard-old", ""),
			painted("5 months", `under_way = "60 h"`, `speed = "30 kn"`, `longest_idle = "14 d"`, `growth = "medium"`)+keptIn("GB", "salt")+
				fitted("drive", "leg", "aluminium", "0.6 m2", film("epoxy-primer", "")+film("hard-copper-free", `known_by = "log"`))),
		[]asked{
			{
				first: []string{copperHard, brightHard}, out: []string{"ablative/", "soft/", "none/", "inert/"},
				strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"step abrade", "coats 2", "job beside-strip"},
			},
			{
				part: "drive", first: []string{"hard/copper-free", "hybrid/copper-free"}, bar: []string{"/cuprous oxide", "/metallic copper"},
				out: []string{"ablative/", "none/"},
			},
		},
	},
	{ // Twenty-two knots now and then, a month between trips: firm copper. A polishing film sits and slimes. Propeller and shaft
		// are polished, or carry silicone.
		"P83 flybridge motor yacht", boatText("kind = \"motor-planing\"\nlength = \"11 m\"\nbeam = \"4.1 m\"\ndraft = \"1.1 m\"\nmass = \"12 t\"", "grp", film("hard-old", ""),
			painted("0.5 months", `under_way = "80 h"`, `speed = "22 kn"`, `longest_idle = "30 d"`, `growth = "medium"`)+keptIn("GB", "salt")+
				gear("propellers", "propeller", "bronze")+gear("shafts", "shaft", "stainless-steel")),
		[]asked{
			{
				first: []string{copperHard, copperHybrid}, out: []string{"self-polishing/", "soft/", "none/", "inert/", "thin film/"},
				strip: []string{"foul-release/", "copper-loaded/"}, warn: []string{"step abrade"},
			},
			{part: "propellers", first: []string{"foul-release/", "none/"}, out: []string{"ablative/", "hard/", "copper-loaded/"}},
			{part: "shafts", first: []string{"foul-release/", "none/", "hard/"}, out: []string{"ablative/", "soft/"}},
		},
	},
	{ // A club's dive boat runs up beaches at 28 kn: a hard film, and no silicone. Tubes flex: whatever goes there, the maker is
		// asked, and nothing two-pack.
		"P84 dive boat with tubes", boatText(sportsHull, "grp", film("bare", ""),
			painted("6 months", `under_way = "150 h"`, `speed = "28 kn"`, `longest_idle = "7 d"`, `growth = "medium"`, `dries_on = "firm"`)+keptIn("GB", "salt")+
				fitted("tubes", "fitting", "fabric-tube", "3 m2", film("bare", ""))),
		[]asked{
			{
				first: []string{copperHard, brightHard}, out: []string{"ablative/", "soft/", "none/", "foul-release/", "inert/"},
				warn: []string{"step degrease", "step abrade"},
			},
			{part: "tubes", first: []string{"none/", "ablative/copper-free", "hybrid/copper-free"}, out: []string{"inert/", "copper-loaded/", "foul-release/"}},
		},
	},
	{ // A canal grows slime. Films that need seawater, or steel, are no use to her; what is on her is renewed, or washed and left.
		"P85 canal cruiser of GRP", boatText(launchHull, "grp", film("hard-old", ""),
			painted("1 months", `under_way = "100 h"`, `speed = "3.5 kn"`, `longest_idle = "30 d"`, `growth = "light"`)+keptIn("GB", "fresh")),
		[]asked{{
			first: []string{"hard/", "thin film/", "none/"}, out: []string{"self-polishing/", "soft/", "bitumen/", "ablative/cuprous oxide"},
			strip: []string{"copper-loaded/", "foul-release/"}, warn: []string{"law fresh water in general"},
		}},
	},
	{ // Planks that breathe, river water, a hard film that has always held: the same again. Nothing two-pack.
		"P86 electric launch on a river", boatText(launchHull, "wood-carvel", film("one-pack-primer", "")+film("hard-old", `known_by = "log"`),
			painted("5 months", `under_way = "60 h"`, `speed = "5 kn"`, `longest_idle = "10 d"`, `growth = "light"`)+keptIn("GB", "fresh")),
		[]asked{{
			first: []string{copperHard, brightHard, "hard/copper-free"}, out: []string{"self-polishing/", "soft/", "bitumen/", "inert/", "copper-loaded/", "foul-release/"},
			warn: []string{"law fresh water in general", "step wet scuff or abrade"},
		}},
	},
	{ // Two seasons rule out the traditional soft paint; working seams rule out whatever is rigid.
		"P87 gaffer, two seasons", boatText(workingHull, "wood-carvel", film("flexible-wood-primer", "")+film("ablative-old", ""),
			usage(`under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0.3 months"`, `relaunched_unpainted = true`, `growth = "medium"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{copperAblative}, out: []string{"inert/", "foul-release/", "copper-loaded/", "soft/", "none/", "thin film/"},
			strip: []string{"hard/"}, warn: []string{"step wash", "coats 3", "law GB"},
		}},
	},
	{ // Firm sand twice a month wears off what wears by itself. Semi-hard over the old eroding film; hard only after stripping.
		"P88 catamaran that takes the sand", boatText("kind = \"twin-hull\"\nlength = \"10.6 m\"\nbeam = \"1.4 m\"\ndraft = \"0.9 m\"\nmass = \"6.5 t\"", "grp", film("ablative-old", ""),
			painted("3 months", `under_way = "200 h"`, `speed = "7 kn"`, `longest_idle = "10 d"`, `growth = "medium"`, `dries_on = "firm"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{copperHybrid, "hybrid/copper thiocyanate"}, out: []string{"ablative/", "self-polishing/", "foul-release/", "soft/", "none/"},
			strip: []string{"hard/", "copper-loaded/", "inert/"}, warn: []string{"law Biocidal Products Regulation"},
		}},
	},
	{ // Eight knots, every other week, two years in heavy growth: the copper that wears.
		"P89 trawler yacht", boatText("kind = \"motor-displacement\"\nlength = \"11.5 m\"\nbeam = \"4.2 m\"\ndraft = \"1.4 m\"\nmass = \"16 t\"", "grp", film("ablative-old", `known_by = "log"`),
			usage(`under_way = "250 h"`, `speed = "8 kn"`, `longest_idle = "21 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`)+keptIn("US", "salt")+
				gear("propeller", "propeller", "bronze")),
		[]asked{
			{
				first: []string{copperAblative, copperPolish, copperHybrid}, out: []string{"thin film/", "soft/", "inert/", "none/", "foul-release/"},
				strip: []string{"hard/", "copper-loaded/"}, warn: []string{"coats 3", "law pesticide registration"},
			},
			{part: "propeller", first: []string{"foul-release/", "none/"}, out: []string{"ablative/", "self-polishing/", "hard/"}},
		},
	},
	{ // Half a year on a big lake with mussels. Eroding films hardly erode there, polishing ones do not.
		"P90 sloop on the Great Lakes", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300)+film("hard-old", ""),
			painted("6 months", `under_way = "120 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `growth = "light"`)+keptIn("US", "fresh")),
		[]asked{{
			first: []string{"hard/", "thin film/"}, out: []string{"self-polishing/", "soft/", "bitumen/", "none/", "inert/"},
			strip: []string{"foul-release/"}, warn: []string{"law fresh water in general"},
		}},
	},
	{ // Trade-wind passages on steel with a full barrier: polish on, four coats. Metallic copper never.
		"P91 steel sloop, ocean", boatText("kind = \"medium-keel-yacht\"\nlength = \"9.4 m\"\nbeam = \"3.3 m\"\ndraft = \"1.7 m\"\nmass = \"9.5 t\"", "steel", film("epoxy-barrier", `film = "450 um"`)+film("self-polishing-cuprous", `film = "100 um"`),
			usage(`under_way = "800 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`, `water_temperature = "26 degC"`)+keptIn("EU", "salt")),
		[]asked{{
			first: []string{copperPolish, copperAblative}, out: []string{"foul-release/", "inert/", "thin film/", "soft/", "none/", "bitumen/"},
			strip: []string{"hard/"}, bar: []string{"copper-loaded/"}, warn: []string{"coats 4"},
		}},
	},
}
