package tables

import (
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// The closed words: rules switch on these, so a new one needs code. Everything else in a table is a row key.

// Mechanism is how a bottom coating works, or what an old film is made of as far as overcoating cares.
type Mechanism string

// The mechanisms. Undercoats have none.
const (
	Hard          Mechanism = "hard"           // contact-leaching: the film stays
	Ablative      Mechanism = "ablative"       // eroding, soluble matrix
	SelfPolishing Mechanism = "self-polishing" // hydrolysing copolymer
	Hybrid        Mechanism = "hybrid"         // semi-hard
	FoulRelease   Mechanism = "foul-release"   // silicone
	Inert         Mechanism = "inert"          // hard, no biocide
	ThinFilm      Mechanism = "thin film"      // slick, burnishable
	CopperLoaded  Mechanism = "copper-loaded"  // metallic copper in epoxy
	Soft          Mechanism = "soft"           // traditional, never truly dries
	Bitumen       Mechanism = "bitumen"        // blacking
	Vinyl         Mechanism = "vinyl"          // old vinyl or chlorinated-rubber film
	Unknown       Mechanism = "unknown"        // an old film nobody has identified
	NoFilm        Mechanism = "none"           // nothing on the bottom
)

// Biocide is the active that decides what a coating may touch and where it may be used.
type Biocide string

// The biocide classes. A coating with several actives takes the first of these that it holds.
const (
	CuprousOxide      Biocide = "cuprous oxide"
	MetallicCopper    Biocide = "metallic copper"
	CopperThiocyanate Biocide = "copper thiocyanate"
	OtherCopper       Biocide = "other copper" // copper pyrithione without any of the above: a copper compound all the same
	CopperFree        Biocide = "copper-free"  // organic biocides only
	NoBiocide         Biocide = "none"
	UnknownBiocide    Biocide = "unknown"
	Organotin         Biocide = "organotin"
)

// Role is what a coating is for.
type Role string

// The roles. Sealer, tie coat and barrier are apart from primer because rules treat them apart.
const (
	Antifouling Role = "antifouling"
	Primer      Role = "primer"
	Barrier     Role = "barrier"
	TieCoat     Role = "tie coat"
	Sealer      Role = "sealer"
	Blacking    Role = "blacking"
	Bare        Role = "bare" // no coating, ranked beside the others
	OldFilm     Role = "old film"
)

// Condition is the state in which a film was found. Each is a row of conditions.toml.
type Condition string

// The conditions that code names; the others are rows only.
const (
	Sound       Condition = "sound"
	NotReported Condition = "not reported"

	FlakingInPlaces Condition = "flaking in places"
)

// Policy says what a material takes of one copper class.
type Policy string

// The policies.
const (
	Allowed     Policy = "fine"
	OverBarrier Policy = "over barrier" // only over a sound barrier of the material's least film
	AskMaker    Policy = "ask"
	Never       Policy = "never"
)

// Grade is a rising scale: how much of something a coating tolerates, or how strong a pressure is.
type Grade uint8

// The grades. The zero Grade is invalid.
const (
	None Grade = iota + 1
	Light
	Medium
	Heavy
)

var gradeWords = []string{"none", "light", "medium", "heavy"}

// GradeWords lists the words that a grade is written with, rising.
func GradeWords() []string { return append([]string(nil), gradeWords...) }

// ParseGrade reads a grade's word. The error of another word is a finding.Faults that lists those taken: a grade that is not known is not a
// grade that was not given.
func ParseGrade(word string) (Grade, error) {
	if i := slices.Index(gradeWords, word); i >= 0 {
		return Grade(i + 1), nil
	}
	return 0, finding.Faults{{Kind: finding.ErrValue, Key: "grade", Got: entry.Describe(word), Want: finding.Suggest(word, gradeWords)}}
}

// gradeOf reads a grade of a row; 0 where it is not given, or not accepted.
func gradeOf(r *entry.Row, key string) Grade {
	return Grade(slices.Index(gradeWords, r.Word(key, gradeWords...)) + 1)
}

// String returns the grade's word.
func (g Grade) String() string {
	if g < None || g > Heavy {
		return "not given"
	}
	return gradeWords[g-1]
}

// The keys of the old films that code names.
const (
	UnknownOld  = "unknown-old" // what a part counts as carrying when nobody has said what is on it
	BareSurface = "bare"        // nothing on the surface
)
