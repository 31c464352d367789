package report

import (
	"strconv"
	"strings"
)

func itoa(n int) string { return strconv.Itoa(n) }

// escape makes words that came from outside safe inside Markdown: no markup, no HTML, no table cell breaks.
func escape(s string) string {
	var out strings.Builder
	for _, r := range clean(s) {
		switch r {
		case '\\', '`', '*', '_', '{', '}', '[', ']', '<', '>', '#', '|', '~':
			out.WriteByte('\\')
		}
		out.WriteRune(r)
	}
	return out.String()
}

// renderMarkdown renders blocks as Markdown with pipe tables.
func renderMarkdown(blocks []block) string {
	var out strings.Builder
	for i, b := range blocks {
		if i > 0 {
			out.WriteString("\n")
		}
		switch b := b.(type) {
		case heading:
			out.WriteString(strings.Repeat("#", b.level) + " " + escape(b.text) + "\n")
		case para:
			out.WriteString(escape(b.text) + "\n")
		case bullets:
			for n, item := range b.items {
				mark := "- "
				if b.numbered {
					mark = itoa(n+1) + ". "
				}
				out.WriteString(mark + escape(item) + "\n")
			}
		case pairs:
			out.WriteString("| | |\n|---|---|\n")
			for _, r := range b.rows {
				out.WriteString("| " + escape(r[0]) + " | " + escape(r[1]) + " |\n")
			}
		case table:
			markdownRow(&out, b.head)
			out.WriteString(strings.Repeat("|---", len(b.head)) + "|\n")
			for _, r := range b.rows {
				markdownRow(&out, r)
			}
		}
	}
	return out.String()
}

func markdownRow(out *strings.Builder, cells []string) {
	for _, c := range cells {
		out.WriteString("| " + escape(c) + " ")
	}
	out.WriteString("|\n")
}
