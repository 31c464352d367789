package report_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"
	"unicode"
	"unicode/utf8"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// element is one element of a page.
type element struct {
	name string
	at   map[string]string
	in   []*element
	text string // of it and all in it
}

// parse reads a page as XML, which is stricter than any browser.
func parse(t *testing.T, page string) *element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	root := &element{}
	open := []*element{root}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		last := open[len(open)-1]
		switch x := token.(type) {
		case xml.StartElement:
			e := &element{name: x.Name.Local, at: map[string]string{}}
			for _, a := range x.Attr {
				e.at[a.Name.Local] = a.Value
			}
			last.in, open = append(last.in, e), append(open, e)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, e := range open {
				e.text += string(x)
			}
		}
	}
	return root
}

// all lists the elements of a name, in their order.
func (e *element) all(names ...string) []*element {
	var out []*element
	for _, c := range e.in {
		if slices.Contains(names, c.name) {
			out = append(out, c)
		}
		out = append(out, c.all(names...)...)
	}
	return out
}

// number is an attribute that is one.
func (e *element) number(t *testing.T, name string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(e.at[name], 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		t.Errorf("<%s %s=%q> is no number", e.name, name, e.at[name])
	}
	return x
}

// demo is the demonstration boat, the only one with a forecast that ends before her days do.
func demo(t *testing.T, change func(*antifoul.Boat)) *antifoul.Job {
	t.Helper()
	return jobIn(t, "../../examples/bottomjob", "demo.toml", change)
}

// made are the pages of every boat of the examples, long and short, in both systems of units, in order; they are made once.
var made struct {
	once  sync.Once
	names []string
	pages []*element
}

// pages calls f with each of them.
func pages(t *testing.T, f func(t *testing.T, page *element)) {
	t.Helper()
	made.once.Do(func() {
		for _, name := range []string{"demo.toml", "sloop.toml", "steel.toml", "steel-measured.toml", "planing.toml", "trailer.toml", "taped.toml", "late.toml"} {
			folder := boats
			if name == "demo.toml" {
				folder = "../../examples/bottomjob"
			}
			j := jobIn(t, folder, name, nil)
			for _, units := range []quantity.System{quantity.Metric, quantity.US} {
				for _, short := range []bool{false, true} {
					made.names = append(made.names, fmt.Sprintf("%s/%v/short=%v", name, units, short))
					made.pages = append(made.pages, parse(t, write(t, j, report.Options{Format: report.HTML, Units: units, Short: short})))
				}
			}
		}
	})
	if len(made.pages) != 32 {
		t.Fatalf("%d pages", len(made.pages))
	}
	for i, name := range made.names {
		t.Run(name, func(t *testing.T) { f(t, made.pages[i]) })
	}
}

// Whoever reads the page with a screen reader, a word processor or a keyboard finds what they need.
func TestPageIsAccessible(t *testing.T) {
	notUnderRace(t)
	pages(t, func(t *testing.T, page *element) { //nolint:thelper // it is the test
		html := page.all("html")
		if len(html) != 1 || html[0].at["lang"] != "en" {
			t.Error("the language is not said once")
		}
		if title := page.all("head")[0].all("title"); len(title) != 1 || strings.TrimSpace(title[0].text) == "" || title[0].text != page.all("h1")[0].text {
			t.Error("the page has no title, or another than its first heading")
		}
		level := 0
		for _, h := range page.all("h1", "h2", "h3", "h4") {
			is := int(h.name[1] - '0')
			if is > level+1 || is == 1 && level > 0 || strings.TrimSpace(h.text) == "" {
				t.Errorf("%s %q after level %d", h.name, h.text, level)
			}
			level = is
		}
		ids := map[string]bool{}
		var walk func(e *element)
		walk = func(e *element) {
			if id := e.at["id"]; id != "" {
				if ids[id] {
					t.Errorf("id %q stands twice", id)
				}
				ids[id] = true
			}
			for _, c := range e.in {
				walk(c)
			}
		}
		walk(page)
		for _, a := range page.all("a") {
			if !ids[strings.TrimPrefix(a.at["href"], "#")] {
				t.Errorf("a link to %q leads nowhere", a.at["href"])
			}
		}
		for _, th := range page.all("th") {
			if s := th.at["scope"]; s != "col" && s != "row" {
				t.Errorf("heading cell %q has the scope %q", th.text, s)
			}
		}
		for _, table := range page.all("table") {
			wide := 0
			for _, row := range table.all("tr") {
				if wide == 0 {
					wide = len(row.in)
				}
				if len(row.in) != wide {
					t.Errorf("a row of %d cells in a table of %d: %s", len(row.in), wide, row.text)
				}
			}
		}
	})
}

// The page brings everything along: no script, no style sheet, picture, font or frame from elsewhere.
func TestPageStandsAlone(t *testing.T) {
	pages(t, func(t *testing.T, page *element) { //nolint:thelper // it is the test
		if n := len(page.all("script", "link", "iframe", "object", "embed", "img", "form", "base", "foreignObject", "image", "use")); n > 0 {
			t.Errorf("%d elements that fetch or run something", n)
		}
		for _, e := range page.all("style") {
			if strings.Contains(e.text, "url(") || strings.Contains(e.text, "@import") {
				t.Error("the style fetches something")
			}
		}
	})
}

// Each drawing is told in words: a title and a description, which hold every word and number that is lettered in it.
func TestDrawingsSayWhatTheyShow(t *testing.T) {
	drawn := 0
	pages(t, func(t *testing.T, page *element) { //nolint:thelper // it is the test
		for _, figure := range page.all("figure") {
			svg := figure.all("svg")
			if len(svg) != 1 || svg[0].at["role"] != "img" || len(svg[0].in) < 3 || svg[0].in[0].name != "title" || svg[0].in[1].name != "desc" {
				t.Fatal("a figure without a drawing that has a role, a title and a description")
			}
			title, desc := svg[0].in[0], svg[0].in[1]
			if svg[0].at["aria-labelledby"] != title.at["id"]+" "+desc.at["id"] || len(title.text) < 10 || len(desc.text) < 20 {
				t.Errorf("%q: not labelled by its title and description", title.text)
			}
			drawn++
			told := strings.ToLower(title.text + " " + desc.text)
			for _, x := range svg[0].all("text") {
				for _, word := range regexp.MustCompile(`\p{L}{3,}|\d{3,}`).FindAllString(strings.ToLower(x.text), -1) {
					if word = word[:min(len(word), 3)]; !strings.Contains(told, word) && word != "mil" {
						t.Errorf("%s: %q is lettered in it and not told: %s", title.text, x.text, desc.text)
					}
				}
			}
		}
	})
	if drawn < 8*4 {
		t.Errorf("%d drawings on all pages", drawn)
	}
}

// No letters run out of a drawing or over other letters.
func TestLetteringHasRoom(t *testing.T) {
	type box struct {
		x1, x2, y float64
		text      string
	}
	pages(t, func(t *testing.T, page *element) { //nolint:thelper // it is the test
		for _, svg := range page.all("svg") {
			view := strings.Fields(svg.at["viewBox"])
			w, _ := strconv.ParseFloat(view[2], 64)
			h, _ := strconv.ParseFloat(view[3], 64)
			var boxes []box
			for _, x := range svg.all("text") {
				wide := lettered(x.text)
				b := box{x.number(t, "x"), x.number(t, "x") + wide, x.number(t, "y"), x.text}
				switch x.at["text-anchor"] {
				case "middle":
					b.x1, b.x2 = b.x1-wide/2, b.x2-wide/2
				case "end":
					b.x1, b.x2 = b.x1-wide, b.x2-wide
				}
				if b.x1 < -1 || b.x2 > w+1 || b.y < 7 || b.y > h+1 {
					t.Errorf("%s: %q runs out of the drawing: %.0f to %.0f of %.0f, %.0f of %.0f", svg.in[0].text, b.text, b.x1, b.x2, w, b.y, h)
				}
				for _, o := range boxes {
					if b.x1 < o.x2-1 && o.x1 < b.x2-1 && math.Abs(b.y-o.y) < 8.5 {
						t.Errorf("%s: %q stands on %q", svg.in[0].text, b.text, o.text)
					}
				}
				boxes = append(boxes, b)
			}
		}
	})
}

// lettered is about how wide words are at ten units high, in a common upright face without serifs.
func lettered(s string) float64 {
	w := 0.0
	for _, r := range s {
		switch {
		case strings.ContainsRune("iljtf.,;:'|() -", r):
			w += 3
		case strings.ContainsRune("mwMW", r):
			w += 8
		case unicode.IsUpper(r):
			w += 6.9
		default:
			w += 5.3
		}
	}
	return w
}

// A drawing holds numbers only where numbers belong.
func TestDrawingsHoldNumbers(t *testing.T) {
	pages(t, func(t *testing.T, page *element) { //nolint:thelper // it is the test
		for _, svg := range page.all("svg") {
			for _, r := range svg.all("rect") {
				for _, a := range []string{"x", "y", "width", "height"} {
					if v := r.number(t, a); v < -20 || v > 2000 {
						t.Errorf("%s: %s is %v", svg.in[0].text, a, v)
					}
				}
			}
			for _, p := range svg.all("path") {
				if !regexp.MustCompile(`^[MLZ0-9 .-]*$`).MatchString(p.at["d"]) {
					t.Errorf("%s: a path %q", svg.in[0].text, p.at["d"])
				}
			}
		}
	})
}

// shape is the elements of a page in their order.
func shape(page *element) string {
	var out []string
	for _, e := range page.all("html", "head", "body", "script", "style", "title", "h1", "h2", "h3", "table", "tr", "td", "th", "svg", "figure", "p", "li", "a", "div") {
		out = append(out, e.name)
	}
	return strings.Join(out, " ")
}

// harmlessPage wants a page of the elements given, in which no word from outside does anything.
func harmlessPage(t *testing.T, what, text, want string) {
	t.Helper()
	page := parse(t, text)
	if got := shape(page); got != want {
		t.Errorf("%s: the page has other elements", what)
	}
	if strings.ContainsAny(text, "\a\x00\x1b\u200f\u202e\u2066\r\ufffe\uffff") || !utf8.ValidString(text) {
		t.Errorf("%s: a control or direction character came through", what)
	}
	var walk func(e *element)
	walk = func(e *element) {
		for a := range e.at {
			if strings.HasPrefix(a, "on") || a == "style" {
				t.Errorf("%s: <%s %s>", what, e.name, a)
			}
		}
		for _, c := range e.in {
			walk(c)
		}
	}
	walk(page)
	style := page.all("style")[0].text
	if strings.Count(style, "{") != strings.Count(style, "}") || strings.Contains(style, "</") {
		t.Errorf("%s: the style is broken", what)
	}
	for _, svg := range page.all("svg") {
		for _, x := range svg.all("text") {
			if utf8.RuneCountInString(x.text) > 90 {
				t.Errorf("%s: %d letters on one line of a drawing", what, utf8.RuneCountInString(x.text))
			}
		}
	}
}

// Words from outside are words, wherever they stand: the page has the same elements as with a plain name.
func TestHostileNamesInPage(t *testing.T) {
	notUnderRace(t)
	named := func(name string) func(b *antifoul.Boat) {
		return func(b *antifoul.Boat) {
			b.Name = name
			b.Parts[0].Name = name
			b.Parts[0].Found[0].KnownBy = name
			b.Work.Other = append(slices.Clone(b.Work.Other), calendar.Other{Name: name, Hours: 1})
		}
	}
	for _, short := range []bool{false, true} {
		o := report.Options{Format: report.HTML, Short: short}
		want := shape(parse(t, write(t, demo(t, named("plain name")), o)))
		for _, name := range hostile {
			harmlessPage(t, fmt.Sprintf("%.30q, short %v", name, short), write(t, demo(t, named(name)), o), want)
		}
	}
}

// Likewise the page of a condition note.
func TestHostileNamesInNotePage(t *testing.T) {
	notUnderRace(t)
	named := func(name string) string {
		return found(t, look(t, func(b *antifoul.Boat) {
			b.Name, b.Parts[0].Name = name, name
			for i := range b.Survey.Seen {
				if b.Survey.Seen[i].Part == "hull" {
					b.Survey.Seen[i].Part = name
				}
			}
			for i := range b.Survey.Moisture {
				b.Survey.Moisture[i].Part = name
			}
			h := &b.Survey.How
			h.By, h.Light, h.Weather, h.Hidden, h.NotInspected = name, name, name, []string{name}, []string{name}
			b.Survey.Seen[0].Where, b.Survey.Seen[0].Note, b.Survey.Seen[0].Photo = name, name, name
			b.Survey.Seen[0].Marks[0].Note, b.Survey.Seen[0].Marks[0].Photo = name, name
			b.Survey.Fittings[0].Name, b.Survey.Fittings[0].Note = name, name
			b.Survey.Moisture[0].Meter, b.Survey.Moisture[0].Scale = name, name
		}), report.Options{Format: report.HTML})
	}
	page := named("plain name")
	if n := strings.Count(page, "plain name"); n < 8 {
		t.Fatalf("the name stands in the page %d times only", n)
	}
	want := shape(parse(t, page))
	for _, name := range hostile {
		harmlessPage(t, fmt.Sprintf("%.30q", name), named(name), want)
	}
}

// Likewise the page of a job log, whose every free word may be hostile.
func TestHostileNamesInLogPage(t *testing.T) {
	plain := job(t, "sloop.toml", func(*antifoul.Boat) {})
	named := func(name string) string {
		l, err := antifoul.ReadLog(plain.Book, plain.Boat, fstest.MapFS{"log.toml": {Data: []byte(aLog)}}, "log.toml", nil)
		if err != nil {
			t.Fatal(err)
		}
		j := job(t, "sloop.toml", func(b *antifoul.Boat) { b.Name = name })
		l.Name, l.Boat = name, name
		l.Coats[0].Batches, l.Coats[0].Who, l.Coats[0].Deviations = []string{name}, []string{name}, []string{name}
		l.Tasks[0].Who, l.Tasks[0].Deviations = []string{name}, []string{name}
		l.Surveys[0].By, l.Surveys[0].Who = name, []string{name}
		l.Looks[0].Who = []string{name}
		k, err := j.Logged(l, time.Time{})
		if err != nil {
			t.Fatal(err)
		}
		var out strings.Builder
		if err := report.Log(&out, j, k, report.Options{Format: report.HTML}); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	page := named("plain name")
	if n := strings.Count(page, "plain name"); n < 8 {
		t.Fatalf("the name stands in the page %d times only", n)
	}
	want := shape(parse(t, page))
	for _, name := range hostile {
		harmlessPage(t, fmt.Sprintf("%.30q", name), named(name), want)
	}
}

// The same names in text and Markdown: see TestHostileNames for the rest.
func TestHostileNamesOfWork(t *testing.T) {
	notUnderRace(t)
	for _, name := range hostile {
		j := demo(t, func(b *antifoul.Boat) {
			b.Name, b.Parts[0].Name = name, name
			b.Work.Other = append(slices.Clone(b.Work.Other), calendar.Other{Name: name, Hours: 1})
		})
		for _, f := range []report.Format{report.Text, report.Markdown} {
			text := write(t, j, report.Options{Format: f})
			if strings.ContainsAny(text, "\a\x00\x1b\u202e\u2066\r") || f == report.Markdown && strings.Contains(strings.ReplaceAll(text, `\<`, ""), "<") {
				t.Errorf("%.30q: broken %s", name, f)
			}
		}
	}
}

// relative is the relative luminance of a colour "#rrggbb".
func relative(t *testing.T, colour string) float64 {
	t.Helper()
	v, err := strconv.ParseUint(strings.TrimPrefix(colour, "#"), 16, 32)
	if err != nil || len(colour) != 7 {
		t.Fatalf("no colour: %q", colour)
	}
	line := func(c uint64) float64 {
		x := float64(c&255) / 255
		if x <= 0.03928 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 0.2126*line(v>>16) + 0.7152*line(v>>8) + 0.0722*line(v)
}

// contrast is the contrast ratio of two colours, 1 to 21.
//
// Source: WCAG 2.1, definitions of contrast ratio and relative luminance.
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	x, y := relative(t, a), relative(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Letters stand out from the paper, on a light screen, a dark one and in print: 4.5 to 1 at least, WCAG 2.1, 1.4.3. Rules that part rows
// need 3 to 1 nowhere, since nothing is told by them alone.
func TestContrastOfTheStyle(t *testing.T) {
	if c := contrast(t, "#000000", "#ffffff"); math.Abs(c-21) > 1e-9 {
		t.Fatalf("black on white is 21 by WCAG, got %v", c)
	}
	if c := contrast(t, "#777777", "#ffffff"); c >= 4.5 || c < 4.4 { // the well-known grey just under the limit
		t.Fatalf("#777777 on white is 4.48, got %v", c)
	}
	style, err := os.ReadFile("page.css")
	if err != nil {
		t.Fatal(err)
	}
	roots := regexp.MustCompile(`:root \{([^}]*)\}`).FindAllStringSubmatch(string(style), -1)
	if len(roots) != 3 {
		t.Fatalf("%d sets of colours, want light, dark and print", len(roots))
	}
	for i, name := range []string{"light", "dark", "print"} {
		colours := map[string]string{}
		for _, m := range regexp.MustCompile(`--(\w+): (#[0-9a-f]{6})`).FindAllStringSubmatch(roots[i][1], -1) {
			colours[m[1]] = m[2]
		}
		for _, ink := range []string{"ink", "soft", "link"} {
			if c := contrast(t, colours[ink], colours["paper"]); c < 4.5 {
				t.Errorf("%s: %s on paper is %.2f to 1", name, ink, c)
			}
		}
	}
}

// The hatch of a signal stands out from every colour that a coat may have: 3 to 1 at least, WCAG 2.1, 1.4.11.
func TestSignalIsHatchedVisibly(t *testing.T) {
	seen := 0
	for k := range tables.Default().Colours() {
		j := job(t, "sloop.toml", func(b *antifoul.Boat) { b.Wishes.TopColour, b.Wishes.SignalColour = "", k.Key })
		for _, svg := range parse(t, write(t, j, report.Options{Format: report.HTML, Short: true})).all("svg") {
			for i, p := range svg.all("path") {
				if p.at["fill"] != k.SRGB || i+1 >= len(svg.all("path")) {
					continue
				}
				line := svg.all("path")[i+1].at["stroke"]
				if !strings.HasPrefix(line, "#") {
					continue
				}
				seen++
				if c := contrast(t, line, k.SRGB); c < 3 {
					t.Errorf("%s: a hatch of %s is %.2f to 1", k.Name, line, c)
				}
			}
		}
	}
	if seen < 15 {
		t.Errorf("%d hatches seen", seen)
	}
}

// A page stays small enough to be sent by mail.
func TestPageIsSmall(t *testing.T) {
	if n := len(write(t, demo(t, nil), report.Options{Format: report.HTML})); n > 300_000 {
		t.Errorf("%d bytes", n)
	}
}

// Facts of text stand on the page too: whatever words a line or a cell of the Markdown has. A page leaves columns out in which nothing
// stands; this boat has none.
func TestPageSaysWhatMarkdownSays(t *testing.T) {
	j := job(t, "late.toml", nil)
	page := parse(t, write(t, j, report.Options{Format: report.HTML}))
	has := words(page.all("body")[0].text)
	for _, l := range strings.Split(write(t, j, report.Options{Format: report.Markdown}), "\n") {
		for _, cell := range regexp.MustCompile(`(?:^|[^\\])\|`).Split(l, -1) {
			if w := words(strings.TrimLeft(cell, "0123456789. ")); w != "" && !strings.Contains(has, w) {
				t.Errorf("not on the page: %s", cell)
			}
		}
	}
}
