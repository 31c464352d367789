package antifoul_test

// By material and by part: metals, timber, keels, legs, running gear, what is never painted. Judged before any ranking was seen;
// the basis of each stands with it. Copper on aluminium, zinc and thinly covered steel: NPL guide to bimetallic corrosion
// section 4.0 (deposited copper), class rules for light craft section 3, 303.2, and common practice.

// gear is a bare part of a metal.
func gear(name, zone, material string) string {
	return fitted(name, zone, material, "0.3 m2", film("bare", ""))
}

var panelByMaterial = []panelled{
	{
		// Basis: old copper on aluminium comes off to sound epoxy before anything goes on: common practice.
		"P52 aluminium cruiser under old copper", boatText(cruiserHull, "aluminium", film("epoxy-barrier", `film = "350 um"`)+film("ablative-cuprous-multi", `film = "100 um"`)+
			gear("propeller", "propeller", "bronze")+gear("hull anode", "fitting", "aluminium-anode"),
			usage(`under_way = "120 h"`, `speed = "6.5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{
			{
				first: []string{"ablative/copper-free", "self-polishing/copper-free", "hybrid/copper-free", "hard/copper-free"}, bar: []string{"/cuprous oxide", "/metallic copper"},
				out:   []string{"inert/", "none/"},
				strip: []string{"ablative/", "self-polishing/", "hybrid/", "hard/", "foul-release/", "thin film/"}, warn: []string{"step strip", "caution stripping"},
			},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "hard/"}},
			{part: "hull anode"}, // judged again: a part that is never painted is asked no type; see bareForGood
		},
	},

	{
		// Basis: cuprous oxide on steel only over 350 to 500 um of sound epoxy: ISO 12944-5 for the films, from memory. 200 um are
		// too little, and epoxy never goes over antifouling: copper-free as she stands, or strip and build up.
		"P53 steel ketch, barrier too thin", boatText("kind = \"long-keel-yacht\"\nlength = \"10.5 m\"\nbeam = \"3.6 m\"\ndraft = \"1.8 m\"\nmass = \"13 t\"", "steel",
			film("epoxy-barrier", `film = "200 um"`)+film("ablative-copper-free", `film = "80 um"`)+
				gear("propeller", "propeller", "bronze")+gear("stern anode", "fitting", "zinc-anode")+gear("sounder", "fitting", "transducer"),
			usage(`under_way = "90 h"`, `speed = "5.5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{
			{first: []string{"ablative/copper-free", "hybrid/copper-free"}, bar: []string{"/metallic copper"}, out: []string{"none/"}, strip: []string{"/cuprous oxide", "hard/", "inert/", "foul-release/"}},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "hard/"}},
			{part: "stern anode"},
			{part: "sounder", first: []string{"ablative/", "none/"}, bar: []string{"copper-loaded/"}, out: []string{"hard/", "inert/"}},
		},
	},

	{
		// Basis: common practice: same again on a sound eroding film; iron keel over its epoxy; copper-free on the leg; the
		// propeller is polished or gets silicone (MEPC.1/Circ.792 section 7); metallic copper never near an aluminium leg.
		"P54 iron keel and saildrive", boatText(cruiserHull, "grp", film("ablative-cuprous-multi", `film = "120 um"`)+
			fitted("keel", "keel", "cast-iron", "3.2 m2", film("epoxy-barrier", sound300)+film("ablative-cuprous-multi", `film = "120 um"`))+
			fitted("leg", "leg", "aluminium", "0.4 m2", film("hard-copper-free", ""))+gear("propeller", "propeller", "bronze"),
			usage(`under_way = "90 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "5 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{
			{first: []string{"ablative/"}, out: []string{"none/", "inert/", "foul-release/", "copper-loaded/"}, strip: []string{"hard/", "inert/", "foul-release/", "copper-loaded/"}},
			{part: "keel", first: []string{"ablative/"}, bar: []string{"/metallic copper"}, out: []string{"none/"}, strip: []string{"hard/", "inert/", "foul-release/"}},
			{part: "leg", first: []string{"hard/copper-free", "hybrid/copper-free", "self-polishing/copper-free", "ablative/copper-free"}, bar: []string{"/cuprous oxide", "/metallic copper"}},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "hard/"}},
		},
	},

	{
		// Basis: common practice: lead takes any type over a primer, and what the hull gets; its dust is poison.
		"P55 lead keel ground bare", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300)+
			fitted("keel", "keel", "lead", "3 m2", film("bare", "")),
			usage(`under_way = "180 h"`, `speed = "6.5 kn"`, `longest_idle = "7 d"`, `haul_out_every = "18 months"`, `ashore_each_year = "1 months"`,
				`relaunched_unpainted = true`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{
			{first: []string{"self-polishing/", "ablative/"}, out: []string{"soft/", "none/", "inert/", "foul-release/"}},
			{part: "keel", first: []string{"self-polishing/", "ablative/", "hybrid/"}, out: []string{"soft/", "none/", "inert/"}, warn: []string{"caution lead"}},
		},
	},

	{
		// Basis: common practice: hard over hard at planing speed; tabs get a hard film over a keying primer or silicone; shaft and
		// propeller are polished or get silicone (MEPC.1/Circ.792 section 4: another type there because of the flow). Magnesium
		// is used up within weeks in salt water.
		"P56 shaft-driven motor yacht", boatText(runaboutHull, "grp", film("hard-cuprous", `film = "130 um"`)+
			gear("propeller", "propeller", "bronze")+gear("shaft", "shaft", "stainless-steel")+gear("port tab", "trim-tab", "stainless-steel")+gear("shaft anode", "fitting", "magnesium-anode"),
			usage(`under_way = "110 h"`, `speed = "22 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{
			{first: []string{"hard/", "hybrid/"}, out: []string{"soft/", "none/", "inert/"}, strip: []string{"foul-release/", "inert/", "copper-loaded/"}},
			{part: "propeller", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "hard/"}},
			{part: "shaft", first: []string{"none/", "foul-release/"}, out: []string{"ablative/", "soft/"}},
			{part: "port tab", first: []string{"hard/", "foul-release/", "hybrid/"}, out: []string{"soft/", "bitumen/"}},
			{part: "shaft anode", warn: []string{"part part-anode-water"}},
		},
	},

	{
		// Basis: common practice: zinc is treated as aluminium; copper thiocyanate only over a barrier that is not there.
		"P57 galvanised pontoon boat", boatText("kind = \"working-boat\"\nlength = \"8 m\"\nbeam = \"3 m\"\ndraft = \"0.7 m\"\nmass = \"6 t\"", "galvanised-steel", film("bare", ""),
			usage(`under_way = "100 h"`, `speed = "4 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "1 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)),
		[]asked{{
			first: []string{"ablative/copper-free", "self-polishing/copper-free", "hybrid/copper-free", "hard/copper-free"}, bar: []string{"/cuprous oxide", "/metallic copper"},
			out: []string{"none/", "inert/"},
		}},
	},

	{
		// Basis: common practice: nobody promises that paint holds on polyethylene; brushed bare every week it does without.
		"P58 polyethylene workboat, brushed", boatText(skiffHull, "polyethylene", film("bare", ""),
			usage(`under_way = "300 h"`, `speed = "12 kn"`, `longest_idle = "3 d"`, `haul_out_every = "12 months"`, `growth = "light"`, `water = "brackish"`,
				`cleaning = "brush"`, `cleaned_every = "7 d"`, `kept = "afloat"`)),
		[]asked{{first: []string{"none/"}, out: []string{"ablative/", "soft/", "foul-release/"}}},
	},

	{
		// Basis: MEPC.1/Circ.792 section 3 (running time keeps a hull clean); silicone or a slick hard film on a fast multihull
		// that sails every few days and is wiped; carbon takes metallic copper only behind a barrier: common practice.
		"P59 carbon trimaran", boatText("kind = \"twin-hull\"\nlength = \"11 m\"\nbeam = \"1.2 m\"\ndraft = \"0.5 m\"\nhulls = 3", "carbon", film("epoxy-barrier", sound300),
			usage(`under_way = "500 h"`, `speed = "13 kn"`, `longest_idle = "4 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "3 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "sponge"`, `cleaned_every = "14 d"`, `kept = "afloat"`)+"[wishes]\nracing_finish = true\n"),
		[]asked{{first: []string{"thin film/", "foul-release/", "hard/"}, out: []string{"soft/", "none/", "bitumen/"}}},
	},
}
