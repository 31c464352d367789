package entry

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Row is one TOML table being read.
type Row struct {
	file, path string
	m          map[string]any
	read       map[string]bool
	faults     *finding.Faults
}

// New returns a row over m. File and path tell faults where it stands; faults are appended to the list given.
func New(file, path string, m map[string]any, faults *finding.Faults) *Row {
	return &Row{file: file, path: path, m: m, read: make(map[string]bool, len(m)), faults: faults}
}

// Path returns the key path of the row: "hull", "coating[hard-cuprous]".
func (r *Row) Path() string { return r.path }

// Has reports whether the key was given.
func (r *Row) Has(key string) bool {
	_, ok := r.m[key]
	return ok
}

// Keys returns the keys that were given, sorted.
func (r *Row) Keys() []string { return slices.Sorted(maps.Keys(r.m)) }

// Raw returns the value as the TOML parser gave it, nil when not given, and counts the key as read.
func (r *Row) Raw(key string) any {
	r.read[key] = true
	return r.m[key]
}

// Fault notes a fault about the key; an empty key means the row itself.
func (r *Row) Fault(kind error, key, got, want string) {
	path := r.path
	switch {
	case key == "":
	case path == "":
		path = key
	default:
		path += "." + key
	}
	*r.faults = append(*r.faults, finding.Fault{Kind: kind, File: r.file, Key: path, Got: got, Want: want})
}

// Add notes faults that another package found in this row's values.
func (r *Row) Add(fs finding.Faults) { *r.faults = append(*r.faults, fs.Under(r.file, r.path)...) }

// Note notes faults as they are: those of another file that this row names.
func (r *Row) Note(fs finding.Faults) { *r.faults = append(*r.faults, fs...) }

// Need notes a fault for each key that was not given. The word want says what to write.
func (r *Row) Need(want string, keys ...string) {
	for _, k := range keys {
		if !r.Has(k) {
			r.read[k] = true
			r.Fault(finding.ErrMissing, k, "", want)
		}
	}
}

// Close notes a fault for each key that nobody read, with the near names among those that were.
func (r *Row) Close() {
	unread := 0
	for k := range r.m {
		if !r.read[k] {
			unread++
		}
	}
	if unread == 0 {
		return
	}
	known := slices.Sorted(maps.Keys(r.read))
	for _, k := range r.Keys() {
		if !r.read[k] {
			r.Fault(finding.ErrUnknownKey, k, k, finding.Suggest(k, known))
		}
	}
}

// Text reads a string; "" when not given. An empty string is a fault.
func (r *Row) Text(key string) string {
	v := r.Raw(key)
	if v == nil {
		return ""
	}
	s, ok := v.(string)
	if !ok || strings.TrimSpace(s) == "" {
		r.Fault(finding.ErrValue, key, Describe(v), "text in quotes")
		return ""
	}
	return s
}

// Word reads a string that must be one of the words taken; "" when not given.
func (r *Row) Word(key string, taken ...string) string {
	s := r.Text(key)
	if s != "" && !slices.Contains(taken, s) {
		r.Fault(finding.ErrValue, key, Describe(s), "one of "+strings.Join(taken, ", "))
		return ""
	}
	return s
}

// Texts reads a list of strings, or one string as a list of one. An empty string is a fault.
func (r *Row) Texts(key string) []string {
	return r.texts(key, func(string, string) {})
}

// texts is Texts; each text is shown with its key, "zones[2]" where it is one of a list, counted from 1.
func (r *Row) texts(key string, each func(at, text string)) []string {
	var out []string
	take := func(at, text string) {
		each(at, text)
		out = append(out, text)
	}
	switch v := r.Raw(key).(type) {
	case nil:
	case string:
		if s := r.Text(key); s != "" {
			take(key, s)
		}
	case []any:
		for i, e := range v {
			at := fmt.Sprintf("%s[%d]", key, i+1)
			s, ok := e.(string)
			if !ok || strings.TrimSpace(s) == "" {
				r.Fault(finding.ErrValue, at, Describe(e), "text in quotes")
				continue
			}
			take(at, s)
		}
	default:
		r.Fault(finding.ErrValue, key, Describe(v), "a list of texts in quotes")
	}
	return out
}

// Words reads a list of strings of which each must be one of the words taken.
func (r *Row) Words(key string, taken ...string) []string {
	return r.texts(key, func(at, text string) {
		if !slices.Contains(taken, text) {
			r.Fault(finding.ErrValue, at, Describe(text), "one of "+strings.Join(taken, ", "))
		}
	})
}

// Int reads a whole number from low to high; ok is false when it was not given or not accepted.
func (r *Row) Int(key string, low, high int) (n int, ok bool) {
	v := r.Raw(key)
	if v == nil {
		return 0, false
	}
	i, is := v.(int64)
	if !is || i < int64(low) || i > int64(high) {
		r.Fault(finding.ErrValue, key, Describe(v), fmt.Sprintf("a whole number from %d to %d", low, high))
		return 0, false
	}
	return int(i), true
}

// Float reads a plain number without a unit from low to high; ok is false when it was not given or not accepted.
func (r *Row) Float(key string, low, high float64) (f float64, ok bool) {
	switch v := r.Raw(key).(type) {
	case nil:
		return 0, false
	case int64:
		f = float64(v)
	case float64:
		f = v
	default:
		r.Fault(finding.ErrValue, key, Describe(v), fmt.Sprintf("a number from %g to %g", low, high))
		return 0, false
	}
	if !(f >= low && f <= high) { // also false for NaN
		r.Fault(finding.ErrValue, key, Describe(r.m[key]), fmt.Sprintf("a number from %g to %g", low, high))
		return 0, false
	}
	return f, true
}

// Floats reads a range of plain numbers, [low, typical, high] or one number for all three.
func (r *Row) Floats(key string, low, high float64) (out quantity.Range[float64], ok bool) {
	list, isList := r.Raw(key).([]any)
	if !isList {
		f, ok := r.Float(key, low, high)
		return quantity.Exactly(f), ok
	}
	want := fmt.Sprintf("three numbers from %g to %g, rising: low, typical, high", low, high)
	var v [3]float64
	if len(list) != 3 {
		r.Fault(finding.ErrValue, key, Describe(list), want)
		return out, false
	}
	for i, e := range list {
		switch n := e.(type) {
		case int64:
			v[i] = float64(n)
		case float64:
			v[i] = n
		default:
			r.Fault(finding.ErrValue, key, Describe(list), want)
			return out, false
		}
	}
	if !(v[0] >= low && v[0] <= v[1] && v[1] <= v[2] && v[2] <= high) {
		r.Fault(finding.ErrValue, key, Describe(list), want)
		return out, false
	}
	return quantity.Range[float64]{Low: v[0], Typical: v[1], High: v[2]}, true
}

// Pair reads two plain numbers without a unit, [low, high], each a number from the bound low to the bound high, the second larger.
func (r *Row) Pair(key string, low, high float64) (a, b float64, ok bool) {
	v := r.Raw(key)
	if v == nil {
		return 0, 0, false
	}
	list, isList := v.([]any)
	var n [2]float64
	ok = isList && len(list) == 2
	for i := 0; ok && i < 2; i++ {
		switch e := list[i].(type) {
		case int64:
			n[i] = float64(e)
		case float64:
			n[i] = e
		default:
			ok = false
		}
	}
	if !ok || !(n[0] >= low && n[0] < n[1] && n[1] <= high) { // also refuses NaN
		r.Fault(finding.ErrValue, key, Describe(v), fmt.Sprintf("two numbers from %g to %g, rising: [low, high]", low, high))
		return 0, 0, false
	}
	return n[0], n[1], true
}

// YesNo reads true or false.
func (r *Row) YesNo(key string) quantity.YesNo {
	switch v := r.Raw(key).(type) {
	case nil:
		return quantity.NotSaid
	case bool:
		if v {
			return quantity.Yes
		}
		return quantity.No
	default:
		r.Fault(finding.ErrValue, key, Describe(v), "true or false")
		return quantity.NotSaid
	}
}

// Date reads a TOML local date, 2027-04-03 without quotes.
func (r *Row) Date(key string) quantity.Date {
	var d quantity.Date
	v := r.Raw(key)
	if v == nil {
		return d
	}
	if err := d.UnmarshalTOML(v); err != nil {
		r.Fault(finding.ErrValue, key, Describe(v), "a date such as 2027-04-03, without quotes")
	}
	return d
}

// Table reads a sub-table. A table that was not given is an empty row, so that its reader need not ask.
func (r *Row) Table(key string) *Row {
	sub := map[string]any{}
	if v := r.Raw(key); v != nil {
		m, ok := v.(map[string]any)
		if !ok {
			r.Fault(finding.ErrValue, key, Describe(v), "a section, ["+key+"]")
		} else {
			sub = m
		}
	}
	return New(r.file, join(r.path, key), sub, r.faults)
}

// Tables reads an array of tables, [[key]]. Each row's path names its number, from 1, and its name or key when it has one.
func (r *Row) Tables(key string) []*Row {
	var out []*Row
	v := r.Raw(key)
	if v == nil {
		return nil
	}
	list, ok := v.([]map[string]any)
	if !ok {
		r.Fault(finding.ErrValue, key, Describe(v), "sections, [["+key+"]]")
		return nil
	}
	for i, m := range list {
		label := strconv.Itoa(i + 1)
		for _, k := range []string{"key", "name"} {
			if s, ok := m[k].(string); ok && s != "" {
				label = s
				break
			}
		}
		out = append(out, New(r.file, join(r.path, key)+"["+label+"]", m, r.faults))
	}
	return out
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// Describe shows a value as a person would have typed it, cut to a line.
func Describe(v any) string {
	var s string
	switch v := v.(type) {
	case string:
		s = fmt.Sprintf("%q", v)
	case time.Time:
		s = describeTime(v)
	case []any:
		each := make([]string, len(v))
		for i, e := range v {
			each[i] = Describe(e)
		}
		s = "[" + strings.Join(each, ", ") + "]"
	case map[string]any, []map[string]any:
		s = "a section"
	default:
		s = fmt.Sprint(v)
	}
	if r := []rune(s); len(r) > 80 {
		s = string(r[:80]) + "…"
	}
	return s
}

// describeTime shows a date or a time as it was written. The parser gives a local one the computer's offset, which must not show.
func describeTime(t time.Time) string {
	switch t.Location().String() {
	case "date-local":
		return t.Format(time.DateOnly)
	case "datetime-local":
		return t.Format("2006-01-02T15:04:05.999999999")
	case "time-local":
		return t.Format("15:04:05.999999999")
	}
	return t.Format(time.RFC3339Nano)
}
