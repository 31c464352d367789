package finding

import "fmt"

// Verdict says how a judgement came out. The values rise from harmless to barred, so the worst of several is their maximum.
// The zero Verdict is invalid: it never means "allowed".
type Verdict uint8

// The five verdicts, rising.
const (
	Fine      Verdict = iota + 1 // nothing against it
	Caution                      // allowed; the reader must know something
	Ask                          // nothing is known: never read as allowed
	Needs                        // allowed after the steps named in the finding
	Forbidden                    // no step on this surface, in this place or in this state makes it right
)

var verdictWords = [...]string{Fine: "fine", Caution: "caution", Ask: "ask", Needs: "needs", Forbidden: "forbidden"}

// Valid reports whether v is one of the five verdicts.
func (v Verdict) Valid() bool { return v >= Fine && v <= Forbidden }

// String returns the verdict's word, as tables write it.
func (v Verdict) String() string {
	if !v.Valid() {
		return fmt.Sprintf("invalid verdict %d", uint8(v))
	}
	return verdictWords[v]
}

// MarshalText writes the verdict's word. An invalid verdict is an error.
func (v Verdict) MarshalText() ([]byte, error) {
	if !v.Valid() {
		return nil, fmt.Errorf("finding: %s", v)
	}
	return []byte(v.String()), nil
}

// UnmarshalText reads a verdict's word; any other text is an error that lists the words taken.
func (v *Verdict) UnmarshalText(text []byte) error {
	for i, w := range verdictWords {
		if i > 0 && w == string(text) {
			*v = Verdict(i)
			return nil
		}
	}
	return fmt.Errorf("finding: read %q, taken: fine, caution, ask, needs, forbidden", text)
}
