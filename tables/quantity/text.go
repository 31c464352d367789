package quantity

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"time"

	"github.com/shopspring/decimal"
)

// errNotGiven is the answer to writing what is not there.
var errNotGiven = errors.New("quantity: not given, so there is no text for it; leave the key out")

// plain is the number with the digits it has, never with an exponent.
func plain(n decimal.Decimal) string {
	if n.Exponent() >= 0 {
		return n.String()
	}
	return n.StringFixed(-n.Exponent())
}

// isOne says whether n is exactly 1 or -1.
func isOne(n decimal.Decimal) bool { return n.Abs().Cmp(one) == 0 }

// String is the amount as written in files, the number with the digits it has:
// "15.20 m". An amount not given is "not given".
func (a Amount[D]) String() string {
	d := a.Unit().def()
	switch {
	case d == nil:
		return "not given"
	case d.single != "" && isOne(a.Number()):
		return plain(a.Number()) + " " + d.single
	}
	return plain(a.Number()) + " " + d.file
}

// MarshalText is String; an amount not given is an error.
func (a Amount[D]) MarshalText() ([]byte, error) {
	if !a.Given() {
		return nil, errNotGiven
	}
	return []byte(a.String()), nil
}

// UnmarshalText reads what Parse reads. An empty text is an error.
func (a *Amount[D]) UnmarshalText(text []byte) error { return a.parse(string(text)) }

// UnmarshalTOML takes a string that Parse reads, nothing else: a bare number is
// refused with the units that are taken.
func (a *Amount[D]) UnmarshalTOML(v any) error {
	s, ok := v.(string)
	if !ok {
		return refuse(bare(v), wanted[D]("a quoted text of a number"))
	}
	return a.parse(s)
}

// MarshalJSON is the text as a JSON string, or null if not given.
func (a Amount[D]) MarshalJSON() ([]byte, error) {
	if !a.Given() {
		return []byte("null"), nil
	}
	return json.Marshal(a.String())
}

// UnmarshalJSON takes a string that Parse reads, or null for not given. A bare
// number is refused with the units that are taken.
func (a *Amount[D]) UnmarshalJSON(data []byte) error {
	s, null, ok := jsonText(data)
	switch {
	case null:
		*a = Amount[D]{}
		return nil
	case !ok:
		return refuse(string(data), wanted[D]("a quoted text of a number"))
	}
	return a.parse(s)
}

// jsonText is the string that a JSON value holds, or that it is null.
func jsonText(data []byte) (s string, null, ok bool) {
	if string(data) == "null" {
		return "", true, false
	}
	err := json.Unmarshal(data, &s)
	return s, false, err == nil
}

// bare is a TOML value that is no string, as a message shows it.
func bare(v any) string {
	switch v := v.(type) {
	case int64:
		return strconv.FormatInt(v, 10)
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case bool:
		return strconv.FormatBool(v)
	case string:
		return v
	case []any, []map[string]any:
		return "a list"
	case map[string]any:
		return "a table"
	case time.Time:
		return tomlTime(v)
	}
	return fmt.Sprint(v)
}

// tomlTime is a TOML date or time as it was written. The reader gives local
// ones the computer's offset, which must not show.
func tomlTime(t time.Time) string {
	switch t.Location().String() {
	case localDate:
		return t.Format("2006-01-02")
	case "datetime-local":
		return t.Format("2006-01-02T15:04:05.999999999")
	case "time-local":
		return t.Format("15:04:05.999999999")
	}
	return t.Format(time.RFC3339Nano)
}
