package quantity

// YesNo is an answer that may be missing. The zero YesNo is NotSaid, which is
// neither: a question not answered is never read as no, nor as allowed.
type YesNo uint8

const (
	// NotSaid is no answer.
	NotSaid YesNo = iota
	// No is no.
	No
	// Yes is yes.
	Yes
)

const yesNoWant = "true or false, without quotes"

// YesIf is Yes if b, else No.
func YesIf(b bool) YesNo {
	if b {
		return Yes
	}
	return No
}

// Said says whether there is an answer.
func (y YesNo) Said() bool { return y == No || y == Yes }

// True says whether the answer is yes. That it isn't does not mean no: see Said.
func (y YesNo) True() bool { return y == Yes }

// IsZero says whether there is no answer, for omitzero.
func (y YesNo) IsZero() bool { return y == NotSaid }

// String is "yes", "no" or "not said".
func (y YesNo) String() string {
	switch y {
	case Yes:
		return "yes"
	case No:
		return "no"
	default:
		return "not said"
	}
}

// MarshalText is "true" or "false"; no answer is an error.
func (y YesNo) MarshalText() ([]byte, error) {
	switch y {
	case Yes:
		return []byte("true"), nil
	case No:
		return []byte("false"), nil
	default:
		return nil, errNotGiven
	}
}

// UnmarshalText takes "true" or "false".
func (y *YesNo) UnmarshalText(text []byte) error {
	switch string(text) {
	case "true":
		*y = Yes
	case "false":
		*y = No
	default:
		return refuse(string(text), yesNoWant)
	}
	return nil
}

// MarshalTOML is a TOML boolean; no answer is an error.
func (y YesNo) MarshalTOML() ([]byte, error) { return y.MarshalText() }

// UnmarshalTOML takes a TOML boolean, nothing else.
func (y *YesNo) UnmarshalTOML(v any) error {
	b, ok := v.(bool)
	if !ok {
		return refuse(bare(v), yesNoWant)
	}
	*y = YesIf(b)
	return nil
}

// MarshalJSON is true, false or, for no answer, null.
func (y YesNo) MarshalJSON() ([]byte, error) {
	if !y.Said() {
		return []byte("null"), nil
	}
	return y.MarshalText()
}

// UnmarshalJSON takes true, false, or null for no answer.
func (y *YesNo) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		*y = NotSaid
		return nil
	}
	return y.UnmarshalText(data)
}
