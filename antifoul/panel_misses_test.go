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

	// The second panel. The water of the berth.
	"P85 canal cruiser of GRP: out ablative/cuprous oxide": "her berth says fresh water. The water of the place where she is kept should stand for use.water where that is not given. The single-season film " +
		"is then left, and hardly erodes in a canal: it should stand behind every film that does not have to.",

	// The second panel. Work that nobody would order, and films that are spent too soon.
	"P88 catamaran that takes the sand: first": "nobody strips a sound eroding film off two hulls to gain a harder one, where a semi-hard film goes over it on a tie coat and is sold for firm " +
		"drying moorings. Taking sound paint off should need a reason, and a semi-hard film should lose nothing on firm ground.",
	"P80 long-keeler on a swinging mooring: first": "24 months in heavy growth, never brushed: a hard film of typically 18 months is an unscrubbed spent skin in the second summer. A film that stays and is typically " +
		"dead before the wish should fall behind those that can be built up to last.",

	// The second panel. Films that live by moving.
	"P83 flybridge motor yacht: out self-polishing/": "80 h of the 150 asked, and 30 days of rest where 21 are the most: each alone is a doubt, both together are a film that does not polish. The two shortfalls should " +
		"multiply, and bar.",
	"P89 trawler yacht: out foul-release/": "exactly the least speed, half as long again at rest as it stands, growth a grade above what it holds, and nobody wipes: no margin anywhere. It stands low, and should " +
		"stand below the line.",
	"P90 sloop on the Great Lakes: out inert/": "an owner who never cleans has no use for a film that is wiped clean; it stands eleventh, where nobody looks. The barge P38 is the reason: in fresh water with " +
		"light growth what grows is scraped at the docking.",
}
