package antifoul_test

import "testing"

// By what was seen at the berth. The rows of panelOwn are own tables: what this yard lifted out. Basis of all: common practice:
// the boat's and the berth's own record wins over every table on what works there, and over no metal and no law. Judged before
// any ranking was seen.
var panelByPast = []panelled{
	{
		// The usual eroding film failed on six boats here, a semi-hard one held.
		"P73 eroding copper failed here", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "90 h"`, `speed = "5.5 kn"`, `longest_idle = "14 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"hybrid/cuprous oxide"}, out: []string{"none/", "inert/", "ablative/cuprous oxide"}}},
	},

	{
		// Silicone at rest held for two years, as it did in Lagerström et al. 2022 (press report: two years).
		"P74 silicone held at rest here", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "60 h"`, `speed = "5 kn"`, `longest_idle = "40 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "0 months"`,
				`growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("SE-west", "salt")),
		[]asked{{first: []string{"foul-release/"}, out: []string{"none/", "inert/"}}},
	},

	{
		// A neighbour's copper on aluminium has not eaten through yet; that opens nothing (class rules for light craft 303.2).
		"P75 copper held on a neighbour's aluminium", boatText(cruiserHull, "aluminium", film("epoxy-barrier", `film = "350 um"`),
			usage(`under_way = "120 h"`, `speed = "6.5 kn"`, `longest_idle = "10 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{
			first: []string{"ablative/copper-free", "self-polishing/copper-free", "hybrid/copper-free", "ablative/copper thiocyanate", "self-polishing/copper thiocyanate"},
			bar:   []string{"/cuprous oxide", "/metallic copper"}, out: []string{"none/", "inert/"},
		}},
	},

	{
		// Silicone failed on two boats here in one season: she stays with what wears.
		"P76 silicone failed here", boatText(cruiserHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "200 h"`, `speed = "7 kn"`, `longest_idle = "7 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "4 months"`,
				`relaunched_unpainted = false`, `growth = "medium"`, `water = "salt"`, `cleaning = "sponge"`, `cleaned_every = "21 d"`, `kept = "afloat"`)+keptIn("NZ", "salt")+
				"[wishes]\nbiocide = \"less\"\n"),
		[]asked{{
			first: []string{"self-polishing/copper-free", "self-polishing/copper thiocyanate", "self-polishing/other copper", "hybrid/copper-free", "hybrid/copper thiocyanate", "hard/copper-free", "hard/copper thiocyanate", "inert/"},
			out:   []string{"foul-release/", "none/"},
		}},
	},

	{
		// The yard's two logs of one paint contradict each other; then her use decides, and she is slow and comes out each year.
		"P77 two logs that contradict", boatText(cruiserHull, "grp", film("hard-cuprous", `film = "150 um"`),
			usage(`under_way = "60 h"`, `speed = "5 kn"`, `longest_idle = "21 d"`, `haul_out_every = "24 months"`, `ashore_each_year = "5 months"`,
				`relaunched_unpainted = true`, `growth = "medium"`, `water = "salt"`, `cleaning = "none"`, `kept = "afloat"`)+keptIn("GB", "salt")),
		[]asked{{first: []string{"ablative/"}, out: []string{"hard/", "none/", "inert/", "foul-release/"}, strip: []string{"copper-loaded/"}, warn: []string{"coats 3"}}},
	},

	{
		// Copper held on a lake that bars it (Bodensee navigation order): a past result is no permit.
		"P78 copper held on Lake Constance", boatText(launchHull, "grp", film("epoxy-barrier", sound300),
			usage(`under_way = "80 h"`, `speed = "8 kn"`, `longest_idle = "10 d"`, `haul_out_every = "12 months"`, `ashore_each_year = "6 months"`,
				`relaunched_unpainted = false`, `growth = "light"`, `water = "fresh"`, `cleaning = "sponge"`, `cleaned_every = "21 d"`, `kept = "afloat"`)+keptIn("DE-bodensee", "fresh")),
		[]asked{{first: []string{"inert/", "foul-release/", "none/"}, bar: biocidal}},
	},
}

// panelOwn holds the own tables of the boats that have some.
var panelOwn = map[string]string{
	"P73 eroding copper failed here": pastRow("a", "ablative-cuprous-multi", "GB", "failed", "8") + pastRow("b", "ablative-cuprous-single", "GB", "failed", "8") +
		pastRow("c", "ablative-cuprous-water", "GB", "failed", "7") + pastRow("d", "hybrid-cuprous", "GB", "held", "14"),
	"P74 silicone held at rest here":             pastRow("a", "foul-release-silicone", "SE-west", "held", "26"),
	"P75 copper held on a neighbour's aluminium": pastRow("a", "self-polishing-cuprous", "GB", "held", "36") + pastRow("b", "ablative-cuprous-multi", "GB", "held", "24"),
	"P77 two logs that contradict":               pastRow("a", "hybrid-cuprous", "GB", "held", "25") + pastRow("b", "hybrid-cuprous", "GB", "failed", "12"),
	"P78 copper held on Lake Constance":          pastRow("a", "hard-cuprous", "DE-bodensee", "held", "36"),
	"P76 silicone failed here":                   pastRow("a", "foul-release-silicone", "NZ", "failed", "9") + pastRow("b", "foul-release-film", "NZ", "failed", "6"),
}

// Every boat with own tables is on the panel, and only those.
func TestPanelOwnTablesHaveTheirBoats(t *testing.T) {
	boats := map[string]bool{}
	for _, b := range panelByPast {
		boats[b.name] = true
		if panelOwn[b.name] == "" {
			t.Errorf("%s has nothing that was seen at its berth", b.name)
		}
	}
	for name := range panelOwn {
		if !boats[name] {
			t.Errorf("own tables of %q, which is no boat of the panel", name)
		}
	}
}
