package antifoul_test

// misses are the points on which the panel stands and the ranking differs, judged again by a painter after it was seen: "boat,
// part: first" where its first choice is not accepted, else "boat, part: " and the entry of out, strip or warn. Each has the
// reason why the painter still says so. Nothing that metal or law bars may be excused here, and a point that agrees with the
// ranking must go. The reasons are common practice unless they name a document.
var misses = map[string]string{
	// Bare for a good reason.
	"P22 Finnish lake, aluminium skiff: first": "bare aluminium in a lake, wiped every month and ashore for seven, is left bare by everybody; nobody blasts sound metal to bring silicone " +
		"onto it. No coating should not be barred afloat in fresh water, light growth, where she is cleaned.",
	"P58 polyethylene workboat, brushed: first": "a bare bottom that is brushed every week in light growth needs no paint; a paint of which nobody knows whether it holds must not " +
		"stand before it. As P22: cleaning ought to count for no coating.",

	// Tiers and ways of the work.
	"P38 canal barge, blasted, 60 months: first": "no answer is the wrong answer: two-pack on blasted steel is what barges get for five years, growth is scraped at the docking. The " +
		"brush that an inert film wants at sea should not be asked in fresh water with light growth, nor its two weeks of rest.",
	"P48 fast launch, daily, less biocide: first": "silicone has the most points by far (daily at 24 kn, no biocide) and loses to cuprous oxide only because its own tie coat counts as " +
		"work before it; a coat of the system is not a repair of the bottom. Cuprous oxide is also what the owner asked to have less of.",
	"P48 fast launch, daily, less biocide: out ablative/": "1200 h a year at 24 kn for two years: no painter puts an eroding film there; the trade's band is 20 to 25 kn and the " +
		"limit in use is its upper end, whatever the hours.",
	"P53 steel ketch, barrier too thin: first": "copper-free over sound epoxy of 200 um without rust is painted over again and the film noted; stripping a sound bottom for 150 um more is " +
		"not what a surveyor orders. A thin barrier ought to bar copper and caution the rest.",

	// A wish for less biocide.
	"P23 Finnish coast, less biocide: first": "the owner asked for less, the ways are the same wash, and less works as well in brackish water (Lagerström et al. 2020): same again with " +
		"cuprous oxide must not win by 0.2 points. Strength above the growth that is there should earn nothing where less is wished.",
	"P41 motor cruiser, brushed fortnightly, less biocide: first": "as P23: a film brushed every two weeks needs no surplus of copper, and less was asked; hard without cuprous oxide or no biocide at all.",

	// What hard films are for.
	"P46 new boat, launch open: first": "a launch that may slip is the textbook case for films that stand dry for months; hard and semi-hard tie with them, hard because its 60 days " +
		"are not less than the 60 days that an open launch may mean: at the boundary the careful side should hold.",
	"P69 peeled and wet laminate: first": "a hard film on a 6 kn cruiser that is neither brushed nor beached nor fast ties with films that wear; its build-up, stripped one day from a new " +
		"barrier, counts nowhere.",

	// Polishing copolymers on boats that hardly move.
	"P62 organotin in Denmark: first":               "80 h a year and three weeks still: a copolymer polishes on boats that move every week. The longest lie is judged, the share of time under way is not.",
	"P70 nobody reported the state: first":          "as P62: 80 h at 5 kn.",
	"P77 two logs that contradict: first":           "as P62: 60 h at 5 kn with five months in the air: eroding over hard is the good and common pair; a copolymer stands above it here, for one coat less.",
	"P74 silicone held at rest here: first":         "the record of the berth outranks the tables on growth; least speed, rest and wiping speak of nothing but growth, and still bar what was seen to hold for 26 months. It might be asked how those boats were used.",
	"P76 silicone failed here: first":               "three types tie, among them an eroding one on a boat that is sponged every three weeks: its colour goes into the sponge. A wearing film should lose something for regular wiping.",
	"P18 white top: first":                          "nine types on the first rank is no answer, among them a copper-free hard film that the tables know to hold light growth only; where growth is not known, medium is the careful reading.",
	"P56 shaft-driven motor yacht, port tab: first": "hard and semi-hard stand there too; a copolymer ties with them though a tab is all thin edge, where it goes first.",

	// A shaft is not a hull.
	"P56 shaft-driven motor yacht, shaft: first": "a running shaft is polished and left, or gets silicone; paint comes off it as off the propeller. MEPC.1/Circ.792 section 7 asks for paint " +
		"unless polished, so a hard film might be argued; a copolymer or semi-hard one not, and bare must not be barred.",
	"P56 shaft-driven motor yacht, shaft: out ablative/": "an eroding film on a turning shaft at 22 kn is gone in a week; section 4 of the same circular asks for another type there.",

	// Organotin.
	"P61 organotin in Sweden, sponged, less biocide: first": "the recommendation that the law table holds says strip; the way that is ranked seals, so types stand first that would not be " +
		"first once she is bare to her epoxy: then no biocide is the choice.",
	"P61 organotin in Sweden, sponged, less biocide: strip ablative/":       "as its first choice: what the law of the place asks of an old film must be in the way, not beside it.",
	"P61 organotin in Sweden, sponged, less biocide: strip hybrid/":         "as strip ablative/.",
	"P61 organotin in Sweden, sponged, less biocide: strip self-polishing/": "as strip ablative/.",
	"P61 organotin in Sweden, sponged, less biocide: warn step strip":       "as strip ablative/.",
	"P61 organotin in Sweden, sponged, less biocide: warn caution organotin": "washing an organotin bottom before it is sealed is already work on it: the caution speaks of the pressure washer, and is not given because " +
		"nothing is abraded.",
	"P62 organotin in Denmark: warn caution organotin": "as P61.",
}
