package report

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// width is the line length of a text report.
const width = 100

// clean takes control and direction-changing characters out of words that came from outside.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r' || r == '\u2028' || r == '\u2029': // the last two end lines and paragraphs
			return ' '
		case !unicode.IsPrint(r) && !unicode.Is(unicode.Zs, r): // controls, marks of direction, what is no character
			return -1
		}
		return r
	}, s)
}

// renderText renders blocks as plain text, at most width columns except where a word is longer.
func renderText(blocks []block) string {
	var out strings.Builder
	line := func(s string) { out.WriteString(strings.TrimRight(s, " ") + "\n") }
	for i, b := range blocks {
		switch b := b.(type) {
		case heading:
			if i > 0 {
				line("")
			}
			text := clean(b.text)
			if b.level == 1 {
				text = strings.ToUpper(text)
			}
			long := 0
			for _, l := range wrap(text, width) {
				line(l)
				long = max(long, utf8.RuneCountInString(l))
			}
			switch b.level {
			case 1:
				line(strings.Repeat("=", long))
			case 2:
				line(strings.Repeat("-", long))
			}
		case para:
			line("")
			for _, l := range wrap(clean(b.text), width) {
				line(l)
			}
		case bullets:
			for n, item := range b.items {
				mark := "- "
				if b.numbered {
					mark = pad(itoa(n+1)+".", 4)
				}
				for k, l := range wrap(clean(item), width-len(mark)) {
					if k > 0 {
						mark = strings.Repeat(" ", len(mark))
					}
					line(mark + l)
				}
			}
		case pairs:
			line("")
			textPairs(b, line)
		case table:
			line("")
			textTable(b, line)
		}
	}
	return out.String()
}

func textPairs(b pairs, line func(string)) {
	w := 0
	for _, r := range b.rows {
		w = max(w, utf8.RuneCountInString(r[0]))
	}
	for _, r := range b.rows {
		name := pad(clean(r[0])+":", w+2)
		for k, l := range wrap(clean(r[1]), width-w-2) {
			if k > 0 {
				name = strings.Repeat(" ", w+2)
			}
			line(name + l)
		}
	}
}

// textTable lays a table out in columns. Columns that do not fit are narrowed, widest first, and their cells wrapped.
func textTable(t table, line func(string)) {
	cols := len(t.head)
	w := make([]int, cols)
	longest := make([]int, cols) // longest word: no column gets narrower
	all := append([][]string{t.head}, t.rows...)
	for _, r := range all {
		for i, cell := range r {
			w[i] = max(w[i], utf8.RuneCountInString(clean(cell)))
			for _, word := range strings.Fields(cell) {
				longest[i] = max(longest[i], min(24, utf8.RuneCountInString(word)))
			}
		}
	}
	for total(w)+2*(cols-1) > width {
		widest := -1
		for i := range w {
			if w[i] > longest[i] && (widest < 0 || w[i] > w[widest]) {
				widest = i
			}
		}
		if widest < 0 { // only whole words are left: cut the longest
			widest = 0
			for i := range w {
				if w[i] > w[widest] {
					widest = i
				}
			}
			if longest[widest] <= 1 {
				break
			}
			longest[widest]--
		}
		w[widest]--
	}
	row := func(cells []string) {
		lines := make([][]string, cols)
		high := 1
		for i, cell := range cells {
			lines[i] = wrap(clean(cell), max(1, w[i]))
			high = max(high, len(lines[i]))
		}
		for k := range high {
			var s strings.Builder
			for i := range cols {
				text := ""
				if k < len(lines[i]) {
					text = lines[i][k]
				}
				s.WriteString(pad(text, w[i]) + "  ")
			}
			line(s.String())
		}
	}
	row(t.head)
	var rule strings.Builder
	for i := range cols {
		rule.WriteString(strings.Repeat("-", w[i]) + "  ")
	}
	line(rule.String())
	for _, r := range t.rows {
		row(r)
	}
}

func total(w []int) int {
	n := 0
	for _, x := range w {
		n += x
	}
	return n
}

func pad(s string, w int) string {
	if n := utf8.RuneCountInString(s); n < w {
		return s + strings.Repeat(" ", w-n)
	}
	return s
}

// wrap breaks text into lines of at most w runes; a longer word is cut.
func wrap(s string, w int) []string {
	var out []string
	var cur []rune
	for _, word := range strings.Fields(s) {
		rs := []rune(word)
		for len(rs) > w {
			if len(cur) > 0 {
				out = append(out, string(cur))
				cur = nil
			}
			out = append(out, string(rs[:w]))
			rs = rs[w:]
		}
		switch {
		case len(cur) == 0:
			cur = rs
		case len(cur)+1+len(rs) <= w:
			cur = append(append(cur, ' '), rs...)
		default:
			out = append(out, string(cur))
			cur = rs
		}
	}
	if len(cur) > 0 || len(out) == 0 {
		out = append(out, string(cur))
	}
	return out
}
