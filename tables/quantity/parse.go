package quantity

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// ParseError says what was read and what would have been taken.
type ParseError struct {
	Got  string // as read, cut after 64 bytes
	Want string // what is taken: "a number and one of um, mil"
}

// Error is `read "125", taken: a number and one of um, mil`.
func (e *ParseError) Error() string {
	return "read " + strconv.Quote(e.Got) + ", taken: " + e.Want
}

const (
	maxText   = 64 // bytes of a quantity as text
	maxDigits = 18 // digits of a number: they fit an int64
)

// refuse is the error for s, which may be long or odd.
func refuse(s, want string) *ParseError {
	if len(s) > maxText {
		cut := maxText
		for cut > 0 && !utf8.RuneStart(s[cut]) {
			cut--
		}
		s = s[:cut] + "…"
	}
	return &ParseError{Got: s, Want: want}
}

// Parse reads a quantity as written in files: Parse[Film]("5 mil").
//
// The text is a number, a space and a unit; the space may be left out, and
// spaces around are no matter. See the package comment for numbers and units.
// The error is a *ParseError.
func Parse[Q Quantity](s string) (Q, error) {
	var q Q
	err := any(&q).(interface{ parse(s string) error }).parse(s)
	return q, err
}

// Units are the units of a quantity as written in files, in the order of the
// constants: Units[Film]() is um, mil.
func Units[Q Quantity]() []string {
	var q Q
	return any(q).(interface{ units() []string }).units()
}

func (a Amount[D]) units() []string { return tableOf[D]().names() }

// parse sets a to what s says; on an error a stays as it was.
func (a *Amount[D]) parse(s string) error {
	if len(s) > maxText {
		return refuse(s, wanted[D]("a number"))
	}
	text := strings.Trim(s, " ")
	n, rest, bad := scanNumber(text)
	if bad != "" {
		return refuse(s, wanted[D](bad))
	}
	name := strings.TrimLeft(rest, " ")
	u := tableOf[D]().find(name)
	if u == 0 {
		want := wanted[D]("a number")
		if strings.HasSuffix(name, "gal") {
			want += gallons[D]()
		}
		return refuse(s, want)
	}
	*a = Unit[D](u).Of(n)
	return nil
}

// wanted is what a text of the dimension is taken as.
func wanted[D Dim](number string) string {
	names := tableOf[D]().names()
	if len(names) == 1 {
		return number + " and " + names[0]
	}
	return number + " and one of " + strings.Join(names, ", ")
}

// gallons reminds that a gallon is one of two.
func gallons[D Dim]() string {
	switch tableOf[D]() {
	case &volumes:
		return `; say which gallon: "US gal" or "imp gal"`
	case &spreads:
		return `; say which gallon: "ft2/US gal"`
	}
	return ""
}

// scanNumber reads the number at the start of s and gives what follows it. If
// there is none, bad says what is taken instead.
func scanNumber(s string) (n decimal.Decimal, rest, bad string) {
	const number = "a number"
	i, neg := 0, false
	if s != "" && (s[0] == '-' || s[0] == '+') {
		neg = s[0] == '-'
		i++
	}
	var v int64
	digits, point := 0, 0 // the point stands behind so many digits; never in front of all
	for ; i < len(s); i++ {
		switch c := s[i]; {
		case '0' <= c && c <= '9':
			if digits++; digits > maxDigits {
				return n, s, "a number of at most " + strconv.Itoa(maxDigits) + " digits"
			}
			v = v*10 + int64(c-'0')
			continue
		case c == '.' && point == 0 && digits > 0:
			point = digits
			continue
		}
		break
	}
	switch {
	case i < len(s) && s[i] == ',':
		return n, s, "a number with a decimal point, no comma,"
	case digits == 0, point == digits:
		return n, s, number
	case i < len(s) && s[i] == '.':
		return n, s, "a number with one decimal point"
	}
	if neg {
		v = -v
	}
	var places int32
	if point > 0 {
		places = int32(digits - point)
	}
	return decimal.New(v, -places), s[i:], ""
}
