package report

import (
	_ "embed"
	"html/template"
	"io"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"
)

var (
	//go:embed page.html
	pageSource string
	//go:embed page.css
	pageStyle string
)

// pageTemplate is the page's frame, read once. html/template escapes every word that goes into it, as its place asks for.
var pageTemplate = sync.OnceValues(func() (*template.Template, error) { return template.New("page").Parse(pageSource) })

// page is what the frame is filled with.
type page struct {
	Title, Foot string
	Style       template.CSS
	Short       bool
	Lead        []node // what stands under the title, before the first section
	Sections    []*section
}

// section is a second heading with what follows it.
type section struct {
	ID, Title string
	Nodes     []node
}

// node is one block as the frame sees it; the field that is not empty says which.
type node struct {
	Sub     string // third heading
	Para    string
	Leads   bool // the paragraph introduces what comes next
	Items   []string
	Ordered bool
	RunOn   bool // of a list: its items run on in print
	Table   *grid
	Pairs   [][2]string
	Drawing template.HTML
	Title   string // over the drawing
	Note    string
	Keep    bool // of a table: it is short enough to stay in one piece
	Broad   bool // of a table: it has so many columns that a narrow screen shows a part of it
	Wide    bool // of a table: it has in print it goes over both columns of the page
}

// grid is a table.
type grid struct {
	Caption string
	Head    []column
	Rows    [][]cell
}

type column struct{ Text, Class string }

type cell struct {
	Text, Class string
	Ends        string // of a number: its low and high end, in brackets
	Name        bool   // it names its row
}

// The classes of a column.
const (
	numeric = "n" // bare numbers, on the right
	brief   = "b" // short cells, which do not break
)

// renderHTML writes the blocks as one page that needs nothing beside it. It is well-formed XML too.
func (c *composer) renderHTML(w io.Writer, o Options) error {
	frame, err := pageTemplate()
	if err != nil {
		return err
	}
	p := pageOf(c.blocks)
	p.Style, p.Short = template.CSS(pageStyle), o.Short //nolint:gosec // the module's own file
	name := shorten(or(plain(c.job.Boat.Name), "a boat without a name"), 60)
	p.Foot = name + " · asked on " + c.job.Boat.On.String() + " · tables " + c.job.Book.Fingerprint()
	var out strings.Builder
	if err := frame.Execute(&out, p); err != nil {
		return err
	}
	_, err = io.WriteString(w, out.String())
	return err
}

// mostKept is how many letters a table may have and not be parted by the end of a column.
const mostKept = 400

// pageOf sorts blocks into sections. A paragraph that ends in a colon before a table becomes its caption.
func pageOf(blocks []block) page {
	var p page
	into := &p.Lead
	drawn := 0
	for i, b := range blocks {
		var next block
		if i+1 < len(blocks) {
			next = blocks[i+1]
		}
		switch b := b.(type) {
		case heading:
			switch text := breakable(b.text); b.level {
			case 1:
				p.Title = text
			case 2:
				s := &section{ID: "s" + itoa(len(p.Sections)+1), Title: text}
				p.Sections, into = append(p.Sections, s), &s.Nodes
			default:
				*into = append(*into, node{Sub: text})
			}
		case para:
			leads := strings.HasSuffix(b.text, ":")
			if _, table := next.(table); !table || !leads {
				*into = append(*into, node{Para: breakable(b.text), Leads: leads})
			}
		case bullets:
			*into = append(*into, node{Items: each(b.items, breakable), Ordered: b.numbered, RunOn: b.runOn})
		case pairs:
			n := node{}
			for _, r := range b.rows {
				n.Pairs = append(n.Pairs, [2]string{breakable(r[0]), breakable(r[1])})
			}
			*into = append(*into, n)
		case table:
			caption := ""
			if i > 0 {
				if before, ok := blocks[i-1].(para); ok && strings.HasSuffix(before.text, ":") {
					caption = before.text
				}
			}
			*into = append(*into, node{Table: sheetOf(b, caption), Broad: len(b.head) > 4, Wide: b.wide, Keep: letters(b.rows) <= mostKept})
		case drawing:
			drawn++
			*into = append(*into, node{Drawing: b.svg(drawn), Title: breakable(b.title), Note: breakable(b.note)})
		}
	}
	return p
}

// sheetOf makes a table's cells: the first cell of a row names it. A column in which nothing stands is left out.
func sheetOf(t table, caption string) *grid {
	t = withoutEmpty(t)
	s := &grid{Caption: breakable(caption)}
	for i, h := range t.head {
		class := ""
		switch {
		case longest(t.rows, i) > 0 && datesOnly(t.rows, i):
			class = brief
		case i > 0 && (numbersOnly(t.rows, i) || withEnds(t.rows, i)):
			class = numeric
		case longest(t.rows, i) <= briefest:
			class = brief
		}
		s.Head = append(s.Head, column{breakable(h), class})
	}
	for _, r := range t.rows {
		var row []cell
		for i, text := range r {
			c := cell{Text: breakable(text), Class: s.Head[i].Class, Name: i == 0 && text != ""}
			if number, ends, has := strings.Cut(text, " ("); has && c.Class == numeric {
				c.Text, c.Ends = number, "("+ends
			}
			row = append(row, c)
		}
		s.Rows = append(s.Rows, row)
	}
	return s
}

// withoutEmpty is the table without the columns that are empty in every row.
func withoutEmpty(t table) table {
	var out table
	for i, h := range t.head {
		if longest(t.rows, i) == 0 {
			continue
		}
		out.head = append(out.head, h)
		for n, r := range t.rows {
			if n == len(out.rows) {
				out.rows = append(out.rows, nil)
			}
			out.rows[n] = append(out.rows[n], r[i])
		}
	}
	return out
}

// briefest is how many letters a cell may have and never break.
const briefest = 12

// longest is the number of letters of the longest cell of a column.
func longest(rows [][]string, col int) int {
	n := 0
	for _, r := range rows {
		n = max(n, utf8.RuneCountInString(r[col]))
	}
	return n
}

// letters is how many letters a table's cells have.
func letters(rows [][]string) int {
	n := 0
	for _, r := range rows {
		for _, text := range r {
			n += utf8.RuneCountInString(text)
		}
	}
	return n
}

// numbersOnly reports whether a column holds bare numbers.
func numbersOnly(rows [][]string, col int) bool {
	some := false
	for _, r := range rows {
		if strings.Trim(r[col], "+-–−.0123456789") != "" {
			return false
		}
		some = some || r[col] != ""
	}
	return some
}

// numberWithEnds is a number with its low and high end behind it.
var numberWithEnds = regexp.MustCompile(`^[0-9.]+ \([0-9.]+ to [0-9.]+\)$`)

// withEnds reports whether a column holds numbers, some of them with their ends in brackets.
func withEnds(rows [][]string, col int) bool {
	some := false
	for _, r := range rows {
		switch ends := numberWithEnds.MatchString(r[col]); {
		case ends:
			some = true
		case !ends && strings.Trim(r[col], "+-–−.0123456789") != "":
			return false
		}
	}
	return some
}

// dates is a day, or the first and the last of some.
var dates = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}( to [0-9]{4}-[0-9]{2}-[0-9]{2})?$`)

// datesOnly reports whether a column holds days, which do not break.
func datesOnly(rows [][]string, col int) bool {
	return !slices.ContainsFunc(rows, func(r []string) bool { return r[col] != "" && r[col] != "–" && !dates.MatchString(r[col]) })
}

// plain takes out of words what neither a page nor a drawing can hold.
func plain(s string) string {
	if harmless(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		if r == 0xFFFE || r == 0xFFFF {
			return -1
		}
		return r
	}, clean(s))
}

// harmless reports whether words hold nothing but letters and signs of Latin and Greek script, and common punctuation: nearly all do, and
// a closer look takes longer.
func harmless(s string) bool {
	for _, r := range s {
		switch {
		case r >= ' ' && r <= '~', r >= 0xA0 && r < 0x600 && r != 0xAD, r >= 0x2010 && r <= 0x2027, r == 0x221A, r == 0x2212:
		default:
			return false
		}
	}
	return true
}

// longWord is how many letters a word may have before it may break anywhere.
const longWord = 36

// breakable is plain words in which a very long one may break, so that it pushes no table off the page.
func breakable(s string) string {
	s = plain(s)
	if !slices.ContainsFunc(strings.Fields(s), func(word string) bool { return len(word) > longWord }) {
		return s
	}
	var out strings.Builder
	run := 0
	for _, r := range s {
		switch {
		case r == ' ':
			run = 0
		case run == longWord:
			out.WriteRune('\u200b') // a place to break, without width
			run = 0
		}
		run++
		out.WriteRune(r)
	}
	return out.String()
}
