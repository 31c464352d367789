package tables

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Say turns a finding into its sentence: the rule's words with the finding's values put in, amounts in the reader's system
// first. A finding whose rule the book does not hold is said by its id.
func (b *Book) Say(f finding.Finding, s quantity.System) string {
	i, ok := b.rules.at[string(f.Rule)]
	if !ok {
		return fmt.Sprintf("%s: %s", f.Rule, f.Verdict)
	}
	return fill(b.rules.rows[i].Says, s, func(name string) (any, bool) {
		switch name {
		case "about":
			return f.About, true
		case "against":
			return f.Against, true
		}
		for _, fact := range f.Facts {
			if fact.Name == name {
				return fact.Value, true
			}
		}
		return nil, false
	})
}

// fill replaces each {name} of the text by its value.
func fill(text string, s quantity.System, value func(name string) (any, bool)) string {
	var out strings.Builder
	for {
		before, rest, _ := strings.Cut(text, "{")
		name, after, whole := strings.Cut(rest, "}")
		if !whole {
			break
		}
		out.WriteString(before)
		if v, ok := value(name); ok {
			out.WriteString(Show(v, s))
		} else {
			out.WriteString("(not stated)")
		}
		text = after
	}
	out.WriteString(text)
	said := out.String()
	if said == "" {
		return said
	}
	first, size := utf8.DecodeRuneInString(said)
	return string(unicode.ToUpper(first)) + said[size:]
}

// Show writes one value of a finding, or of a criterion, for a reader of the system; none is "not given".
func Show(v any, s quantity.System) string {
	switch v := v.(type) {
	case nil:
		return "not given"
	case string:
		return v
	case int:
		return strconv.Itoa(v)
	case float64:
		return strconv.FormatFloat(v, 'g', 3, 64)
	case quantity.Range[float64]:
		if v.Low == v.High {
			return Show(v.Low, s)
		}
		return Show(v.Low, s) + " to " + Show(v.High, s)
	case quantity.Range[quantity.Length]:
		return quantity.ShowRange(v, s)
	case quantity.Range[quantity.Area]:
		return quantity.ShowRange(v, s)
	case quantity.Range[quantity.Film]:
		return quantity.ShowRange(v, s)
	case quantity.Range[quantity.Volume]:
		return quantity.ShowRange(v, s)
	case quantity.Range[quantity.Share]:
		return quantity.ShowRange(v, s)
	case quantity.Range[quantity.Duration]:
		return quantity.ShowRange(v, s)
	case quantity.Range[quantity.Months]:
		return quantity.ShowRange(v, s)
	case interface {
		Show(s quantity.System) string
	}:
		return v.Show(s)
	case fmt.Stringer:
		return v.String()
	}
	return fmt.Sprint(v)
}
