package antifoul_test

// misses are the points on which the panel stands and the ranking differs, judged again by a painter after it was seen: "boat,
// part: first" where its first choice is not accepted, else "boat, part: " and the entry of out, strip or warn. Each has the
// reason why the painter still says so. Nothing that metal or law bars may be excused here, and a point that agrees with the
// ranking must go. The reasons are common practice unless they name a document.
var misses = map[string]string{
	// Tiers and ways of the work.
	"P48 fast launch, daily, less biocide: out ablative/": "1200 h a year at 24 kn for two years: no painter puts an eroding film there; the trade's band is 20 to 25 kn and the " +
		"limit in use is its upper end, whatever the hours.",
	"P53 steel ketch, barrier too thin: first": "copper-free over sound epoxy of 200 um without rust is painted over again and the film noted; stripping a sound bottom for 150 um more is " +
		"not what a surveyor orders. A thin barrier ought to bar copper and caution the rest.",

	// Polishing copolymers on boats that hardly move.
	"P74 silicone held at rest here: first": "the record of the berth outranks the tables on growth; least speed, rest and wiping speak of nothing but growth, and still bar what was seen to hold for 26 months. It might be asked how those boats were used.",
	"P76 silicone failed here: first":       "three types tie, among them an eroding one on a boat that is sponged every three weeks: its colour goes into the sponge. A wearing film should lose something for regular wiping.",
	"P18 white top: first":                  "nine types on the first rank is no answer, among them a copper-free hard film that the tables know to hold light growth only; where growth is not known, medium is the careful reading.",

	// Organotin.
	"P61 organotin in Sweden, sponged, less biocide: strip ablative/":       "as its first choice: what the law of the place asks of an old film must be in the way, not beside it.",
	"P61 organotin in Sweden, sponged, less biocide: strip hybrid/":         "as strip ablative/.",
	"P61 organotin in Sweden, sponged, less biocide: strip self-polishing/": "as strip ablative/.",
}
