package antifoul_test

import "strings"

// The boats from P21 on were judged by a bottom painter from published guidance and common practice before any ranking of
// them was made. The factors are those of MEPC.207(62) section 6 and MEPC.1/Circ.792 section 4: months between haul-outs, speed
// and pattern of use with idle spells, material, place on the craft, law; and the trade's own: time ashore, trailer or lift,
// ground, cleaning, old film, finish, colour, what was seen at the berth. What no boat file can say is asked of no boat: ice, and
// who holds the brush.

// biocidal are all types that hold a biocide.
var biocidal = []string{"/cuprous oxide", "/metallic copper", "/copper thiocyanate", "/other copper", "/copper-free"}

// usage is the [use] section with these lines.
func usage(lines ...string) string { return "[use]\n" + strings.Join(lines, "\n") + "\n" }

// keptIn is the berth where she is kept.
func keptIn(place, water string) string {
	return "[[berth]]\nplace = \"" + place + "\"\nrole = \"kept\"\nwater = \"" + water + "\"\n"
}

// fitted is another part under water with what was found on it.
func fitted(name, zone, material, area, found string) string {
	return "[[part]]\nname = \"" + name + "\"\nzone = \"" + zone + "\"\nmaterial = \"" + material + "\"\narea = \"" + area + "\"\n" + found
}

const (
	launchHull = "kind = \"motor-displacement\"\nlength = \"7.2 m\"\nbeam = \"2.6 m\"\ndraft = \"0.8 m\"\nmass = \"2.8 t\""
	steelHull  = "kind = \"motor-displacement\"\nlength = \"11 m\"\nbeam = \"3.5 m\"\ndraft = \"1.1 m\"\nmass = \"12 t\""
	skiffHull  = "kind = \"motor-planing\"\nlength = \"5.6 m\"\nbeam = \"2.1 m\"\ndraft = \"0.4 m\"\nmass = \"0.7 t\""
	dinghyHull = "kind = \"open-boat\"\nlength = \"3.6 m\"\nbeam = \"1.5 m\"\ndraft = \"0.3 m\"\nmass = \"0.14 t\""
	sound300   = `film = "300 um"`
)

// By water and by place.
var panelByWater = []panelled{
	{
		// Basis: Bodensee navigation order, construction rule (no biocide on the lake); a brush tears silicone: common practice.
		"P21 Lake Constance, brushed", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "80 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "6 months"`, `growth = "light"`,
				`water = "fresh"`, `cleaning = "brush"`, `cleaned_every = "21 d"`, `kept = "afloat"`)+keptIn("DE-bodensee", "fresh")),
		[]asked{{first: []string{"inert/", "none/"}, bar: biocidal, out: []string{"foul-release/"}}},
	},

	{
		// Basis: Finnish rule for lakes and rivers; bare aluminium in a lake, wiped now and then: common practice.
		"P22 Finnish lake, aluminium skiff", boatText(skiffHull, "aluminium", film("bare", ""),
			usage(`under_way = "40 h"`, `speed = "24 kn"`, `longest_idle = "10 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "7 months"`, `growth = "light"`,
				`water = "fresh"`, `cleaning = "sponge"`, `cleaned_every = "30 d"`, `kept = "afloat"`)+keptIn("FI", "fresh")),
		[]asked{{first: []string{"none/", "inert/"}, bar: biocidal, out: []string{"bitumen/"}}},
	},

	{
		// Basis: low-release paint works as well in brackish water: Lagerström et al. 2020, Water Research 186:116383; eroding
		// over eroding: common practice. Nobody cleans her, so no biocide-free coat.
		"P23 Finnish coast, less biocide", boatText(launchHull, "grp", film("ablative-cuprous-multi", `film = "120 um"`),
			usage(`under_way = "60 h"`, `speed = "8 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "7 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "brackish"`, `cleaning = "none"`, `kept = "afloat"`)+
				keptIn("FI", "brackish")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{"ablative/copper-free", "ablative/copper thiocyanate", "hybrid/copper-free", "hybrid/copper thiocyanate", "self-polishing/copper-free", "self-polishing/copper thiocyanate", "self-polishing/other copper"},
			out:   []string{"none/", "inert/", "bitumen/"}, strip: []string{"foul-release/", "inert/", "hard/", "copper-loaded/"},
		}},
	},

	{
		// Basis: Lagerström et al. 2022, Mar. Pollut. Bull. 184:114102: silicone at least as good as two copper paints, static,
		// Baltic to Skagerrak. The bottom is already down to epoxy: the best moment (UC Sea Grant, SB 315).
		"P24 Swedish west coast, no biocide, sponged", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "150 h"`, `speed = "6 kn"`, `longest_idle = "7 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "6 months"`, `growth = "medium"`,
				`water = "salt"`, `cleaning = "sponge"`, `cleaned_every = "14 d"`, `kept = "afloat"`)+keptIn("SE-west", "salt")+"[wishes]\nbiocide = \"none\"\n"),
		[]asked{{first: []string{"foul-release/", "inert/"}, out: append([]string{"none/", "bitumen/"}, biocidal...)}},
	},

	{
		// Basis: KIFS 2022:3 (no biocidal paint north of Örskär); drive-through brush washers bruise silicone: common practice.
		"P25 Gulf of Bothnia, brush wash", boatText("kind = \"motor-planing\"\nlength = \"7 m\"\nbeam = \"2.6 m\"\ndraft = \"0.6 m\"\nmass = \"1.8 t\"", "grp", film("bare", ""),
			usage(`under_way = "60 h"`, `speed = "18 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "7 months"`, `growth = "light"`,
				`water = "brackish"`, `cleaning = "brush"`, `cleaned_every = "28 d"`, `kept = "afloat"`)+keptIn("SE-bothnia", "brackish")),
		[]asked{{first: []string{"inert/", "none/"}, bar: biocidal, out: []string{"foul-release/"}}},
	},

	{
		// Basis: Danish Order 1257 of 2011 (no biocide under 200 kg in salt water). Weeks afloat in salt are too long for bare
		// gelcoat: common practice.
		"P26 Danish dinghy under 200 kg", boatText(dinghyHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "60 h"`, `speed = "4 kn"`, `longest_idle = "7 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "6 months"`, `growth = "medium"`,
				`water = "salt"`, `cleaning = "sponge"`, `cleaned_every = "7 d"`, `kept = "afloat"`)+keptIn("DK", "salt")),
		[]asked{{first: []string{"inert/", "foul-release/"}, bar: biocidal}},
	},

	{
		// Basis: common practice: same again on a boat that moves every week; an eroding paint over it wants a tie coat. Judged
		// again: soft paint was ruled out here at first, by mistake: it is a poor choice, for the next paint has to strip it, but one season
		// is all that is asked and nothing bars it.
		"P27 Danish cruiser, self-polishing again", boatText(cruiserHull, "grp", film("self-polishing-cuprous", `film = "80 um"`),
			usage(`under_way = "160 h"`, `speed = "6.5 kn"`, `longest_idle = "7 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "5 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("DK", "salt")),
		[]asked{{first: []string{"self-polishing/"}, out: []string{"none/", "inert/"}, strip: []string{"hard/", "foul-release/", "inert/", "copper-loaded/"}}},
	},

	{
		// Basis: inland steel over sound epoxy is left as epoxy or blacked, and biocide is not needed inland: UBA Texte 88/2017,
		// advice of the same office; common practice. Metallic copper never on steel.
		"P28 Dutch canal cruiser, steel", boatText(steelHull, "steel", film("epoxy-barrier", `film = "450 um"`),
			usage(`under_way = "120 h"`, `speed = "4.5 kn"`, `longest_idle = "30 d"`, `haul_out_every = "36 months"`, `ashore_each_year = "0 months"`, `growth = "light"`,
				`water = "fresh"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("NL", "fresh")+"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{"inert/", "bitumen/"}, bar: []string{"/metallic copper"}, out: []string{"foul-release/", "self-polishing/", "soft/", "thin film/"},
		}},
	},

	{
		// Basis: hard copper films under a monthly soft carpet: Schiff et al. 2004, Mar. Pollut. Bull. 48:371; 3 CCR 6190.
		"P29 San Diego, diver's carpet", boatText(cruiserHull, "grp", film("hard-cuprous", `film = "150 um"`),
			usage(`under_way = "80 h"`, `speed = "6 kn"`, `longest_idle = "21 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`,
				`water = "salt"`, `water_temperature = "19 degC"`, `cleaning = "sponge"`, `cleaned_every = "28 d"`, `kept = "afloat"`)+keptIn("US-CA", "salt")),
		[]asked{{
			first: []string{"hard/cuprous oxide", "hybrid/cuprous oxide"}, out: []string{"none/", "thin film/", "soft/"},
			strip: []string{"inert/", "foul-release/", "copper-loaded/"}, warn: []string{"law California (release of copper)"},
		}},
	},

	{
		// Basis: RCW 70A.445 (a plank-built boat is exempt from the copper limits); working planks take no closed film: common
		// practice.
		"P30 Washington troller, carvel", boatText(workingHull, "wood-carvel", film("ablative-cuprous-single", `film = "90 um"`),
			usage(`under_way = "600 h"`, `speed = "7 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "0.3 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `water_temperature = "10 degC"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("US-WA", "salt")),
		[]asked{{first: []string{"ablative/"}, out: []string{"none/", "inert/", "foul-release/", "copper-loaded/"}, strip: []string{"hard/"}}},
	},

	{
		// Basis: MEPC.1/Circ.792 section 4 (use and haul-out period); eroding or polishing films on a boat that is under way a
		// tenth of the year: common practice. 24 months: three coats.
		"P31 New Zealand, long passages", boatText(cruiserHull, "grp", film("ablative-cuprous-multi", `film = "100 um"`),
			usage(`under_way = "900 h"`, `speed = "6 kn"`, `longest_idle = "14 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`, `growth = "medium"`,
				`water = "salt"`, `water_temperature = "18 degC"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("NZ", "salt")),
		[]asked{{
			first: []string{"ablative/cuprous oxide", "self-polishing/cuprous oxide"}, out: []string{"none/", "inert/", "thin film/", "soft/"},
			strip: []string{"hard/", "inert/", "foul-release/", "copper-loaded/"}, warn: []string{"coats 3"},
		}},
	},

	{
		// Basis: common practice: in the tropics full copper or, because she runs every other day and never lies idle, silicone.
		"P32 tropical charter catamaran", boatText("kind = \"twin-hull\"\nlength = \"11.5 m\"\nbeam = \"1.5 m\"\ndraft = \"0.9 m\"", "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "900 h"`, `speed = "16 kn"`, `longest_idle = "3 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "0 months"`, `growth = "heavy"`,
				`water = "salt"`, `water_temperature = "28 degC"`, `cleaning = "none"`, `kept = "afloat"`)),
		[]asked{{
			first: []string{"self-polishing/cuprous oxide", "hybrid/cuprous oxide", "hard/cuprous oxide", "foul-release/"},
			out:   []string{"none/", "inert/", "thin film/", "soft/", "bitumen/"},
		}},
	},

	{
		// Basis: common practice: soft mud does not abrade; it stains copper, and slow boats at rest keep an eroding film.
		"P33 estuary mud berth", boatText("kind = \"bilge-keel-yacht\"\nlength = \"6.6 m\"\nbeam = \"2.5 m\"\ndraft = \"0.8 m\"\nmass = \"2.4 t\"", "grp", film("ablative-cuprous-multi", `film = "110 um"`),
			usage(`under_way = "60 h"`, `speed = "4.5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "brackish"`, `cleaning = "none"`, `kept = "afloat"`, `dries_on = "soft"`)+keptIn("GB", "brackish")),
		[]asked{{first: []string{"ablative/", "hybrid/"}, out: []string{"foul-release/", "inert/", "none/"}, strip: []string{"hard/", "inert/", "foul-release/"}}},
	},

	{
		// Basis: common practice: thin slick films are at home in fresh water; all else over one starts with a strip. Polishing
		// copolymers want seawater.
		"P34 British lake, thin film", boatText(cruiserHull, "grp", film("thin-film-thiocyanate", `film = "40 um"`),
			usage(`under_way = "100 h"`, `speed = "6 kn"`, `longest_idle = "7 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "5 months"`,
				`relaunched_unpainted = false`, `growth = "light"`, `water = "fresh"`, `cleaning = "sponge"`, `cleaned_every = "21 d"`, `kept = "afloat"`)+keptIn("GB", "fresh")),
		[]asked{{
			first: []string{"thin film/"}, out: []string{"self-polishing/", "soft/"},
			strip: []string{"ablative/", "hard/", "hybrid/", "foul-release/", "inert/", "copper-loaded/", "bitumen/"}, warn: []string{"law fresh water in general"},
		}},
	},
}
