package antifoul_test

// By what is on her, and by what changing it costs. Judged before any ranking was seen; the basis of each stands with it.
var panelByFilm = []panelled{
	{
		// Basis: common practice: one-pack over vinyl with a tie coat, two-pack and silicone never; a slow boat gets an eroding film.
		"P60 old vinyl", boatText(cruiserHull, "grp", film("vinyl-old", `film = "200 um"`),
			usage(`under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"ablative/", "hybrid/"}, out: []string{"none/"}, strip: []string{"inert/", "foul-release/", "copper-loaded/"},
			warn: []string{"step tie coat or sealer or strip or identify", "caution unknown-old-film"},
		}},
	},

	{
		// Basis: Skrovmålet recommendations (organotin comes off, no sealing in); once she is bare, biocide-free costs no extra
		// strip (UC Sea Grant, SB 315), and silicone held in the Baltic (Lagerström et al. 2022).
		"P61 organotin in Sweden, sponged, less biocide", boatText(cruiserHull, "grp", film("organotin-old", `film = "300 um"`),
			usage(`under_way = "90 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "6 months"`,
				`relaunched_unpainted = false`, `growth = "light"`, `water = "brackish"`, `cleaning = "sponge"`, `cleaned_every = "14 d"`, `kept = "afloat"`)+
				keptIn("SE-east", "brackish")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{"foul-release/", "inert/"},
			out:   []string{"bitumen/"},
			strip: []string{"ablative/", "hard/", "self-polishing/", "hybrid/", "foul-release/", "inert/", "thin film/", "copper-loaded/", "soft/", "none/"},
			warn:  []string{"step strip", "caution organotin", "caution waste"},
		}},
	},

	{
		// Basis: Danish Maritime Authority (a sealing coat over organotin is allowed); over the sealer one-pack only.
		"P62 organotin in Denmark", boatText(cruiserHull, "grp", film("organotin-old", `film = "250 um"`),
			usage(`under_way = "80 h"`, `speed = "5.5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "5 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("DK", "salt")),
		[]asked{{
			first: []string{"ablative/", "hybrid/"}, out: []string{"inert/", "none/"}, strip: []string{"foul-release/", "copper-loaded/"},
			warn: []string{"step sealer or strip", "caution organotin"},
		}},
	},

	{
		// Basis: common practice: nothing holds over silicone, and a firm drying mooring tears silicone: strip, then a firm film.
		"P63 silicone moved to a firm drying mooring", boatText(cruiserHull, "grp", film("foul-release-silicone", `film = "150 um"`),
			usage(`under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`, `dries_on = "firm"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"hard/cuprous oxide", "hard/copper thiocyanate", "hybrid/"}, out: []string{"foul-release/", "ablative/", "soft/", "none/"},
			strip: []string{"hard/", "hybrid/", "self-polishing/", "inert/", "thin film/", "copper-loaded/"}, warn: []string{"step strip"},
		}},
	},

	{
		// Basis: common practice: bitumen bleeds and holds no growth off; steel that goes to sea is blasted, gets its epoxy, then
		// copper in a wearing film.
		"P64 bitumen steel going to sea", boatText(steelHull, "steel", film("bitumen-old", `film = "300 um"`),
			usage(`under_way = "200 h"`, `speed = "6.5 kn"`, `longest_idle = "10 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "1 months"`,
				`relaunched_unpainted = true`, `growth = "heavy"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("NL", "salt")),
		[]asked{{
			first: []string{"ablative/cuprous oxide", "self-polishing/cuprous oxide"}, bar: []string{"/metallic copper"}, out: []string{"bitumen/", "none/", "inert/"},
			strip: []string{"/cuprous oxide", "hard/", "foul-release/"}, warn: []string{"step blast or strip"},
		}},
	},

	{
		// Basis: common practice: nothing else holds over a traditional soft coat, which lasts one season; two are wanted.
		"P65 soft film on GRP, two seasons wanted", boatText(cruiserHull, "grp", film("soft-old", ""),
			usage(`under_way = "90 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`,
				`growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"ablative/cuprous oxide", "ablative/copper thiocyanate", "self-polishing/cuprous oxide", "hybrid/cuprous oxide"}, out: []string{"soft/", "none/", "inert/", "thin film/"},
			strip: []string{"ablative/", "self-polishing/", "hybrid/", "hard/", "foul-release/"}, warn: []string{"step strip", "coats 3"},
		}},
	},

	{
		// Basis: common practice: cracked old build over 500 to 750 um comes off; at planing speed a hard film again, or silicone
		// since she runs weekly.
		"P66 hard build-up, cracked", boatText(runaboutHull, "grp", film("hard-cuprous", "film = \"700 um\"\nstate = \"alligatored\""),
			usage(`under_way = "260 h"`, `speed = "24 kn"`, `longest_idle = "7 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "3 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("US", "salt")),
		[]asked{{
			first: []string{"hard/", "foul-release/"}, out: []string{"soft/", "none/"},
			strip: []string{"hard/", "hybrid/", "self-polishing/", "foul-release/", "inert/", "copper-loaded/"}, warn: []string{"step strip", "caution antifouling-dust"},
		}},
	},

	{
		// Basis: common practice: spots off to a sound edge and feathered, then same again.
		"P67 eroding film, flaking in places", boatText(cruiserHull, "grp", film("ablative-cuprous-multi", "film = \"150 um\"\nstate = \"flaking in places\""),
			usage(`under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "5 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"ablative/"}, out: []string{"none/", "inert/"}, strip: []string{"hard/", "foul-release/", "inert/", "copper-loaded/"}, warn: []string{"step spot repair or strip"}}},
	},

	{
		// Basis: common practice: copper in epoxy is abraded and built up again, or goes on as the base of an eroding film.
		"P68 copper-loaded epoxy, sound", boatText(cruiserHull, "grp", film("copper-loaded-epoxy", `film = "250 um"`),
			usage(`under_way = "100 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`,
				`growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("US", "salt")),
		[]asked{{first: []string{"copper-loaded/", "ablative/cuprous oxide", "self-polishing/cuprous oxide"}, out: []string{"none/", "inert/", "thin film/", "soft/"}, warn: []string{"step abrade"}}},
	},

	{
		// Basis: common practice: no epoxy on a laminate that is still wet: months of drying come first, then barrier and a film. Judged
		// again: soft paint was ruled out by mistake, as on P27.
		"P69 peeled and wet laminate", boatText(cruiserHull, "grp", "laminate = \"wet\"\nbarrier = true\n"+film("bare", ""),
			usage(`under_way = "120 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"ablative/", "self-polishing/", "hybrid/"}, out: []string{"none/", "inert/"}, warn: []string{"step dry out", "step barrier"}}},
	},

	{
		// Basis: common practice: a wearing film over a sound hard one, abraded; hard over it would die in six months of air.
		"P70 nobody reported the state", boatText(cruiserHull, "grp", "[[part.found]]\ncoating = \"hard-old\"\n",
			usage(`under_way = "80 h"`, `speed = "5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "6 months"`,
				`relaunched_unpainted = true`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"ablative/", "hybrid/"}, out: []string{"hard/", "none/", "inert/"}, strip: []string{"foul-release/", "inert/", "copper-loaded/"},
			warn: []string{"step test patch", "caution unknown-old-film"},
		}},
	},

	{
		// Basis: what nobody knows comes off aluminium to sound epoxy or metal, and nothing goes over it: common practice. Judged
		// again: polishing copper-free paint was left out by mistake, since P9 already says that practice differs at 28 kn and much fast
		// aluminium carries it; silicone too, which P3, P35 and P66 take at such speeds. To blast is to strip: the warning said strip.
		"P71 unknown film on aluminium", boatText(runaboutHull, "aluminium", film("unknown-old", ""),
			usage(`under_way = "120 h"`, `speed = "26 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"hard/copper-free", "hard/copper thiocyanate", "hybrid/copper-free", "self-polishing/copper-free", "foul-release/"}, bar: []string{"/cuprous oxide", "/metallic copper"}, out: []string{"soft/", "none/", "inert/"},
			strip: []string{"hard/", "hybrid/", "ablative/", "self-polishing/", "foul-release/", "thin film/"}, warn: []string{"step strip or blast", "caution unknown-old-film"},
		}},
	},

	{
		// Basis: common practice: red lead stays where it is sound, nobody makes dust of it; eroding over eroding on planks. Judged
		// again: a warning of lead was asked by mistake: it lies under a sound film and this job only washes.
		"P72 carvel yacht on red lead", boatText("kind = \"long-keel-yacht\"\nlength = \"9 m\"\nbeam = \"2.8 m\"\ndraft = \"1.6 m\"\nmass = \"7 t\"", "wood-carvel",
			film("red-lead-old", "")+film("ablative-cuprous-single", `film = "100 um"`),
			usage(`under_way = "70 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "5 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"ablative/"}, out: []string{"none/", "inert/", "foul-release/", "copper-loaded/"}, strip: []string{"hard/"}}},
	},
}
