package finding

// Kind says what a statement rests on.
type Kind string

// The kinds of basis, from the strongest to the weakest. Invented values stand in demonstrations only.
const (
	OwnTable       Kind = "own table"       // the user's own row: a paint's data sheet, a yard's record
	Published      Kind = "published"       // a document that can be looked up, named by Source and Place
	Derived        Kind = "derived"         // computed from stated inputs by a stated formula
	CommonPractice Kind = "common practice" // what the trade does; no source
	FromMemory     Kind = "from memory"     // a published value that was not looked up again
	Assumption     Kind = "assumption"      // a working value of this module, to be replaced by a data sheet or a record
	Invented       Kind = "invented"        // made up for a demonstration
)

// Kinds lists the kinds that a table may state, in the order of their strength. OwnTable is not among them: it is set when an
// own table replaces a value.
func Kinds() []Kind {
	return []Kind{Published, Derived, CommonPractice, FromMemory, Assumption, Invented}
}

// Basis says what a value or a rule rests on, and what there is against it.
type Basis struct {
	Kind   Kind   `json:"kind"`
	Source string `json:"source,omitempty"` // key of a row in sources.toml; the data sheet or record for OwnTable
	Place  string `json:"place,omitempty"`  // where in the source, or the formula of a derived value
	Read   string `json:"read,omitempty"`   // "second-hand" when the source was read through another text
	Doubt  string `json:"doubt,omitempty"`  // what speaks against the value
	Own    bool   `json:"own,omitempty"`    // an own table set the value
}
