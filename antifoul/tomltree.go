package antifoul

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"github.com/BurntSushi/toml"
)

// tree is a TOML file as it was written: its values, and the order in which its keys first stood in it.
type tree struct {
	m     map[string]any
	order map[string]float64 // by path without numbers: "part.found.coating"
}

// parseTree reads text that is TOML; it was read before, so that an error is a mistake of the caller's.
func parseTree(text string) (tree, error) {
	t := tree{m: map[string]any{}, order: map[string]float64{}}
	md, err := toml.Decode(text, &t.m)
	if err != nil {
		return t, err
	}
	for i, k := range md.Keys() {
		if path := strings.Join(k, "."); t.order[path] == 0 {
			t.order[path] = float64(i + 1)
		}
	}
	return t, nil
}

// follow puts keys that the file may not have in this order behind what it has, or behind the key after where it is named.
func (t tree) follow(after string, paths ...string) {
	from := t.order[after]
	step := 1 / float64(len(paths)+1)
	if from == 0 {
		from, step = 1e6, 1
	}
	for i, p := range paths {
		if t.order[p] == 0 {
			t.order[p] = from + float64(step*float64(i+1))
		}
	}
}

// arrange puts the keys of a section in this order, wherever they stood.
func (t tree) arrange(section string, keys ...string) {
	for i, k := range keys {
		t.order[k] = t.order[section] + float64(i+1)/1000
	}
}

// String writes the tree as TOML: each table's values, then its sections, in the order of the file.
func (t tree) String() string {
	var out strings.Builder
	t.write(&out, "", "", t.m)
	return strings.TrimLeft(out.String(), "\n")
}

func (t tree) write(out *strings.Builder, path, indent string, m map[string]any) {
	keys := slices.Collect(maps.Keys(m))
	slices.SortFunc(keys, func(a, b string) int {
		return cmp.Or(cmp.Compare(t.order[under(path, a)], t.order[under(path, b)]), cmp.Compare(a, b))
	})
	for _, k := range keys {
		if !section(m[k]) {
			fmt.Fprintf(out, "%s%s = %s\n", indent, keyText(k), valueText(m[k]))
		}
	}
	for _, k := range keys {
		at := under(path, k)
		name := header(at)
		in := indent
		if path != "" {
			in += "  "
		}
		switch v := m[k].(type) {
		case map[string]any:
			fmt.Fprintf(out, "%s%s[%s]\n", gap(path), in, name)
			t.write(out, at, in, v)
		case []map[string]any:
			for _, e := range v {
				fmt.Fprintf(out, "%s%s[[%s]]\n", gap(path), in, name)
				t.write(out, at, in, e)
			}
		}
	}
}

// gap is an empty line before a section that stands in no other.
func gap(path string) string {
	if path == "" {
		return "\n"
	}
	return ""
}

// section reports whether the value is written as a section of its own. A table of plain values and no sections, such as measured areas, is one too.
func section(v any) bool {
	switch v := v.(type) {
	case map[string]any:
		return true
	case []map[string]any:
		return len(v) > 0
	}
	return false
}

func under(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// header is a path whose keys are written as TOML wants them. Keys of a boat file hold no full stop.
func header(path string) string {
	parts := strings.Split(path, ".")
	for i, p := range parts {
		parts[i] = keyText(p)
	}
	return strings.Join(parts, ".")
}

func keyText(k string) string {
	plain := func(r rune) bool {
		return r == '_' || r == '-' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
	}
	if k != "" && strings.IndexFunc(k, func(r rune) bool { return !plain(r) }) < 0 {
		return k
	}
	return stringText(k)
}

// valueText writes one value on one line.
func valueText(v any) string {
	switch v := v.(type) {
	case string:
		return stringText(v)
	case int64:
		return strconv.FormatInt(v, 10)
	case bool:
		return strconv.FormatBool(v)
	case float64:
		return floatText(v)
	case time.Time:
		return timeText(v)
	case []any:
		each := make([]string, len(v))
		for i, e := range v {
			each[i] = valueText(e)
		}
		if line := strings.Join(each, ", "); strings.Count(line, ".") <= mostStops {
			return "[" + line + "]"
		}
		return "[\n  " + strings.Join(each, ",\n  ") + ",\n]"
	case []map[string]any: // an empty one: the others are sections
		return "[]"
	case map[string]any:
		each := make([]string, 0, len(v))
		for _, k := range slices.Sorted(maps.Keys(v)) {
			each = append(each, keyText(k)+" = "+valueText(v[k]))
		}
		return "{ " + strings.Join(each, ", ") + " }"
	}
	return stringText(fmt.Sprint(v))
}

func floatText(f float64) string {
	switch {
	case math.IsNaN(f):
		return "nan"
	case math.IsInf(f, 1):
		return "inf"
	case math.IsInf(f, -1):
		return "-inf"
	}
	s := strconv.FormatFloat(f, 'f', -1, 64)
	if !strings.Contains(s, ".") {
		s += ".0"
	}
	return s
}

// timeText writes a date or a time as it was written: the parser marks those without an offset.
func timeText(t time.Time) string {
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

// mostStops is how many full stops are written on one line; entry.Open takes more of them for an attack on the parser.
const mostStops = 8

// pieces cuts a text so that no piece has more than mostStops full stops, and none but the first begins with a space.
func pieces(s string) []string {
	var out []string
	begin, n := 0, 0
	cut := false
	for i, r := range s {
		if cut && r != ' ' && r != '\t' && r != '\n' {
			out = append(out, s[begin:i])
			begin, n, cut = i, 0, false
		}
		if r == '.' {
			n++
			cut = n >= mostStops
		}
	}
	return append(out, s[begin:])
}

// stringText writes a basic string of TOML; one with many full stops over more lines, each but the last ended by a backslash, which TOML joins.
func stringText(s string) string {
	each := pieces(s)
	for i := range each {
		each[i] = escaped(each[i])
	}
	if len(each) == 1 {
		return `"` + each[0] + `"`
	}
	return `"""` + strings.Join(each, "\\\n") + `"""`
}

func escaped(s string) string {
	var out strings.Builder
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			out.WriteByte('\\')
			out.WriteRune(r)
		case r == '\n':
			out.WriteString(`\n`)
		case r == '\t':
			out.WriteString(`\t`)
		case r < 0x20 || r == 0x7f || !unicode.IsPrint(r) && r != ' ':
			if r > 0xffff {
				fmt.Fprintf(&out, `\U%08X`, r)
			} else {
				fmt.Fprintf(&out, `\u%04X`, r)
			}
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}

// remarks are the comments of a TOML text, each with the number of its line.
func remarks(text string) []string {
	var out []string
	line := 1
	quote := "" // the quotes that end the string that we are in
	for i := 0; i < len(text); i++ {
		rest := text[i:]
		switch c := text[i]; {
		case c == '\n':
			line++
			if len(quote) == 1 {
				quote = ""
			}
		case quote != "" && quote[0] == '"' && c == '\\':
			i++
			if i < len(text) && text[i] == '\n' {
				line++
			}
		case quote != "":
			if strings.HasPrefix(rest, quote) {
				if i += len(quote) - 1; len(quote) == 3 { // the last of up to five ends it: those before belong to the string
					for i+1 < len(text) && text[i+1] == quote[0] {
						i++
					}
				}
				quote = ""
			}
		case strings.HasPrefix(rest, `"""`), strings.HasPrefix(rest, `'''`):
			quote = rest[:3]
			i += 2
		case c == '"' || c == '\'':
			quote = rest[:1]
		case c == '#':
			said, _, _ := strings.Cut(rest, "\n")
			i += len(said) - 1
			if words := strings.TrimSpace(strings.TrimLeft(said, "#")); words != "" {
				out = append(out, fmt.Sprintf("line %d: %s", line, words))
			}
		}
	}
	return out
}
