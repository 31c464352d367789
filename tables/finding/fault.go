package finding

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// The kinds of fault, for errors.Is.
var (
	ErrSyntax     = errors.New("not readable")      // the file cannot be parsed, or is not text
	ErrUnknownKey = errors.New("unknown key")       // a key or section that nobody reads
	ErrMissing    = errors.New("missing")           // a value that is needed was not given
	ErrValue      = errors.New("not accepted")      // the wrong type, unit or word
	ErrImpossible = errors.New("impossible")        // a value or a combination that cannot be
	ErrUnknown    = errors.New("not known")         // a name that no table holds
	ErrDuplicate  = errors.New("given twice")       // a key that must be unique
	ErrBasis      = errors.New("without a basis")   // a table row that does not say what it rests on
	ErrSafety     = errors.New("needs an override") // an own row against a safety rule without override and reason
)

// Fault is one thing that is wrong with an input, told so that a person knows what to change.
type Fault struct {
	Kind error  // one of the kinds above
	File string // file name; empty for values made in Go
	Key  string // path of the key: "hull.draft", "coating[hard-cuprous].solids"
	Got  string // what was read
	Want string // what is accepted
}

// Error returns the fault on one line; what does not print is shown by its escape.
func (f Fault) Error() string {
	var b strings.Builder
	if f.File != "" {
		b.WriteString(f.File)
		b.WriteString(": ")
	}
	if f.Key != "" {
		b.WriteString(f.Key)
		b.WriteString(": ")
	}
	if f.Kind != nil {
		b.WriteString(f.Kind.Error())
	}
	if f.Got != "" {
		fmt.Fprintf(&b, ": read %s", f.Got)
	}
	if f.Want != "" {
		fmt.Fprintf(&b, "; accepted: %s", f.Want)
	}
	return oneLine(b.String())
}

// oneLine shows what does not print, such as a line break in a quoted key, by its escape.
func oneLine(s string) string {
	if !strings.ContainsFunc(s, hidden) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if hidden(r) {
			b.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

func hidden(r rune) bool { return !unicode.IsPrint(r) }

// Unwrap returns the kind, so that errors.Is(fault, ErrMissing) holds.
func (f Fault) Unwrap() error { return f.Kind }

// Faults is the one error of bad input: every fault, sorted by file, key and text.
type Faults []Fault

// Error returns all faults, one a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i := range fs {
		lines[i] = fs[i].Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults one by one, so that errors.Is and errors.As look into each.
func (fs Faults) Unwrap() []error {
	errs := make([]error, len(fs))
	for i := range fs {
		errs[i] = fs[i]
	}
	return errs
}

// Err returns the sorted faults as an error, or nil when there are none.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	out := slices.Clone(fs)
	slices.SortStableFunc(out, func(a, b Fault) int {
		if c := cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Key, b.Key)); c != 0 {
			return c // the texts are long to make, and a bad sheet has many faults
		}
		return cmp.Compare(a.Error(), b.Error())
	})
	return slices.CompactFunc(out, func(a, b Fault) bool { return a == b })
}

// Under returns the faults with their keys put under prefix and the file named: "draft" becomes "hull.draft".
func (fs Faults) Under(file, prefix string) Faults {
	out := make(Faults, len(fs))
	for i, f := range fs {
		if f.File == "" {
			f.File = file
		}
		switch {
		case prefix == "":
		case f.Key == "":
			f.Key = prefix
		default:
			f.Key = prefix + "." + f.Key
		}
		out[i] = f
	}
	return out
}
