package antifoul_test

// misses are the points on which the panel stands and the ranking differs, judged again by a painter after it was seen: "boat,
// part: first" where its first choice is not accepted, else "boat, part: " and the entry of out, strip or warn. Each has the
// reason why the painter still says so, or in what he was too narrow. Nothing that metal or law bars may be excused here, and a point that agrees with the
// ranking must go. The reasons are common practice unless they name a document.
var misses = map[string]string{
	// Tiers and ways of the work.
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
	"P80 long-keeler on a swinging mooring: first": "24 months in heavy growth, never brushed: a hard film of typically 18 months is an unscrubbed spent skin in the second summer. A film that stays and is typically " +
		"dead before the wish should fall behind those that can be built up to last.",

	// The second panel. Films that live by moving.
	"P83 flybridge motor yacht: out self-polishing/": "80 h of the 150 asked, and 30 days of rest where 21 are the most: each alone is a doubt, both together are a film that does not polish. The two shortfalls should " +
		"multiply, and bar.",
	"P89 trawler yacht: out foul-release/": "exactly the least speed, half as long again at rest as it stands, growth a grade above what it holds, and nobody wipes: no margin anywhere. It stands low, and should " +
		"stand below the line.",
	"P90 sloop on the Great Lakes: out inert/": "an owner who never cleans has no use for a film that is wiped clean; it stands eleventh, where nobody looks. The barge P38 is the reason: in fresh water with " +
		"light growth what grows is scraped at the docking.",

	// The third panel. Where the painter was too narrow, the reason says so.
	"P117 keelboat dry-sailed by crane, keel: warn caution lead":        "too narrow: the keel comes first as she is, bare and faired, and nobody abrades it; the caution comes with the tool. It stands with every type that is put on it.",
	"P126 Puget Sound trawler with a diver: warn caution hull-cleaning": "too narrow: silicone now comes first, and the caution is of cleaning a film with biocide. It stands with every type that holds one.",
	"P127 California, less biocide: first": "too narrow in part: in heavy growth the tables know no type without copper oxide that holds, eighteen months uncleaned, and a wish is not a rule. Her own film gains " +
		"nothing any more for being there, and is still the one that holds longest for the least work.",
	"P134 classic racing yacht, varnished: out none/": "too narrow: her old hard film stays and is wiped each week, so that no plank is bare. It stands twentieth, where nobody looks.",
	"P137 aluminium pontoon boat on a lake: first": "too narrow: a water-based eroding film without copper is used on such tubes and ties first. Nobody lays silicone film on them, though, and most stay bare and are washed in autumn; bare is barred in " +
		"fresh water unless she is wiped, for the sloop P90 among mussels.",

	// The fourth panel.
	"P145 aluminium boat, Gulf of Finland, outboard: first": "too narrow: bare metal, no factory paint, was what the boat file said, and a leg is primed then. Silicone on it is taken on fast boats, and this painter took it himself " +
		"on the drive of P146. The hard film without copper stands second.",
	"P161 runabout on an American lake, drive: first":               "as P145. But a drive that comes from its maker painted is left as it came in a clean lake; the tables have no word for a maker's own paint, and bare means bare metal.",
	"P152 Chesapeake cruiser, two summers, keel: warn caution lead": "too narrow: sound film on the lead is washed and coated, and no tool reaches the metal. The caution comes with the tool, as on P117.",
}
