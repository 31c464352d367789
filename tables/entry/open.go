package entry

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"github.com/BurntSushi/toml"

	"boatyard.example/bottomwork/tables/finding"
)

// maxBytes is the largest file that Open reads. A boat or a yard's table is a few kilobytes; anything near this is a mistake.
const maxBytes = 1 << 20

// maxNesting bounds brackets inside brackets: no file of this module nests deeper than four.
const maxNesting = 32

// maxDots bounds the full stops of one line. The parser's time grows with more than the square of the parts of a dotted key:
// a key of 16000 parts, a file of 32 kB, takes a minute. maxKeyDots bounds those of a key or a section's name, which the parser pays
// for at every line: a file of the largest size full of keys of 32 parts takes seconds.
const (
	maxDots    = 32
	maxKeyDots = 8
)

// Open reads the TOML file name of fsys. The row is nil when the file cannot be parsed; the faults then say why, with the
// line. Every row read from it notes its faults in the same list. A file is at most a mebibyte.
func Open(fsys fs.FS, name string) (*Row, *finding.Faults) {
	faults := new(finding.Faults)
	bad := func(got, want string) (*Row, *finding.Faults) {
		*faults = append(*faults, finding.Fault{Kind: finding.ErrSyntax, File: name, Got: got, Want: want})
		return nil, faults
	}
	data, why, want := readText(fsys, name)
	if why != "" {
		return bad(why, want)
	}
	if nesting(data) > maxNesting {
		return bad(fmt.Sprintf("brackets nested deeper than %d", maxNesting), "a flat file")
	}
	if line, most := dotted(data); line > 0 {
		return bad(fmt.Sprintf("line %d: more than %d full stops", line, most), "short keys; a long text broken into lines")
	}
	m := map[string]any{}
	if _, err := toml.Decode(string(data), &m); err != nil {
		var pe toml.ParseError
		if errors.As(err, &pe) {
			return bad(fmt.Sprintf("line %d: %s", pe.Position.Line, pe.Message), "TOML 1.0")
		}
		return bad(err.Error(), "TOML 1.0")
	}
	return New(name, "", m, faults), faults
}

// dotted returns the number, from 1, of the first line with too many full stops, and how many it may have; 0 for none. Those in
// texts and comments count too.
func dotted(data []byte) (number, most int) {
	n := 0
	for line := range strings.Lines(string(data)) {
		n++
		if strings.Count(line, ".") > maxDots {
			return n, maxDots
		}
		key, _, given := strings.Cut(line, "=")
		if (given || strings.HasPrefix(strings.TrimSpace(line), "[")) && strings.Count(key, ".") > maxKeyDots && !strings.ContainsAny(key, "{#") {
			return n, maxKeyDots
		}
	}
	return 0, 0
}

// nesting is an upper bound on how deep brackets nest; brackets inside strings count too, which no sensible file comes near.
func nesting(data []byte) int {
	depth, most := 0, 0
	for _, c := range data {
		switch c {
		case '[', '{':
			depth++
			most = max(most, depth)
		case ']', '}':
			depth = max(0, depth-1)
		}
	}
	return most
}
