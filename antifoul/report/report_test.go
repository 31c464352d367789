package report_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

func job(t *testing.T, name string, change func(*antifoul.Boat)) *antifoul.Job {
	t.Helper()
	return jobIn(t, boats, name, change)
}

// jobIn is the job of a boat file in a folder.
func jobIn(t *testing.T, folder, name string, change func(*antifoul.Boat)) *antifoul.Job {
	t.Helper()
	boat, err := antifoul.ReadBoat(os.DirFS(folder), name)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&boat)
	}
	j, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func write(t *testing.T, j *antifoul.Job, o report.Options) string {
	t.Helper()
	var out bytes.Buffer
	if err := report.Write(&out, j, o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

const boats = "../../examples/boats"

// words are the letters and digits of a report in their order, without what a format adds.
func words(s string) string {
	return strings.ToLower(strings.Join(regexp.MustCompile(`[\p{L}\p{N}]+`).FindAllString(s, -1), " "))
}

// Every fact that a reader needs stands in both formats and both lengths.
func TestFactsInEachFormat(t *testing.T) {
	j := job(t, "sloop.toml", nil)
	for _, o := range []report.Options{
		{Format: report.Text}, {Format: report.Markdown}, {Format: report.Text, Short: true}, {Format: report.Markdown, Short: true}, {},
	} {
		got := words(write(t, j, o))
		for _, fact := range []string{"Pintail", "ablative, cuprous oxide, multi-season", "black", "copper-free", "2 coats", "25 to 40 mm", "next coat after 4 h", "red oxide", "zinc anode", tables.Default().Fingerprint()} {
			if !strings.Contains(got, words(fact)) {
				t.Errorf("%v: %q is not said", o, fact)
			}
		}
		if o.Format != report.Markdown && !o.Short {
			continue // the long text report breaks the cells of its wide tables
		}
		for _, g := range j.Buy {
			if n := g.Need.To(quantity.Litre, 2, quantity.Up).Show(quantity.Metric); !strings.Contains(got, words(n)) {
				t.Errorf("%v: %q litres of %s are not said", o, n, g.Coating)
			}
		}
	}
}

// The short form is one page: at most 66 lines of text for a same-again job.
func TestShortFormIsOnePage(t *testing.T) {
	j := job(t, "planing.toml", nil)
	if n := strings.Count(write(t, j, report.Options{Short: true}), "\n"); n > 66 {
		t.Errorf("%d lines, a page has 66", n)
	}
}

func TestTextKeepsItsWidth(t *testing.T) {
	for _, name := range []string{"sloop.toml", "steel.toml", "steel-measured.toml", "planing.toml", "trailer.toml"} {
		for i, l := range strings.Split(write(t, job(t, name, nil), report.Options{Format: report.Text}), "\n") {
			if n := utf8.RuneCountInString(l); n > 100 {
				t.Errorf("%s, line %d is %d wide: %s", name, i+1, n, l)
			}
		}
	}
}

// The reader's units come first, the others follow in brackets.
func TestUnits(t *testing.T) {
	j := job(t, "sloop.toml", nil)
	metric, us := words(write(t, j, report.Options{})), words(write(t, j, report.Options{Units: quantity.US}))
	if !strings.Contains(metric, words("8.4 m (27.6 ft)")) || !strings.Contains(us, words("27.6 ft (8.4 m)")) {
		t.Error("length is not printed in the reader's units first")
	}
}

// Words from outside neither break the layout nor become markup.
func TestHostileNames(t *testing.T) {
	for _, name := range []string{
		"<script>alert(1)</script>", "a | b | c", "# not a heading", "[link](http://x)", "`code` *bold* _it_ ~~x~~", "\u202etxt.exe", "line\nbreak\r\n## two", "bell\a\x00end", strings.Repeat("long ", 2000), strings.Repeat("x", 10000), "ab\\",
	} {
		j := job(t, "planing.toml", func(b *antifoul.Boat) {
			b.Name = name
			b.Parts[0].Name = name
			b.Parts[0].Found[0].KnownBy = name
			b.Berths[0].Place = name
		})
		md := write(t, j, report.Options{Format: report.Markdown})
		text := write(t, j, report.Options{Format: report.Text})
		if strings.Contains(strings.ReplaceAll(md, `\<`, ""), "<") {
			t.Errorf("%.30q: an unescaped < in Markdown", name)
		}
		for _, s := range []string{md, text} {
			if strings.ContainsAny(s, "\a\x00\u202e\r") {
				t.Errorf("%.30q: a control or direction character came through", name)
			}
		}
		for _, l := range strings.Split(md, "\n") {
			if strings.HasPrefix(l, "| ") {
				if cells := strings.Count(strings.ReplaceAll(l, `\|`, ""), "|"); cells < 3 {
					t.Errorf("%.30q: a broken table row: %.80s", name, l)
				}
			}
			if strings.HasPrefix(l, "## two") {
				t.Errorf("%.30q: a heading was injected", name)
			}
		}
		for _, l := range strings.Split(text, "\n") {
			if utf8.RuneCountInString(l) > 100 {
				t.Errorf("%.30q: a line of %d", name, utf8.RuneCountInString(l))
				break
			}
		}
	}
}

// Pipes of a Markdown table line up: every row of a table has as many cells as its head.
func TestMarkdownTables(t *testing.T) {
	for _, name := range []string{"sloop.toml", "steel.toml", "steel-measured.toml", "trailer.toml"} {
		cells := 0
		for i, l := range strings.Split(write(t, job(t, name, nil), report.Options{Format: report.Markdown}), "\n") {
			if !strings.HasPrefix(l, "|") {
				cells = 0
				continue
			}
			n := strings.Count(strings.ReplaceAll(l, `\|`, ""), "|")
			if cells == 0 {
				cells = n
			}
			if n != cells {
				t.Errorf("%s, line %d has %d bars, its head %d: %s", name, i+1, n, cells, l)
			}
		}
	}
}

// Rule rows must say whole sentences: no value stays open and no placeholder is left.
func TestNothingIsLeftOpen(t *testing.T) {
	for _, name := range []string{"sloop.toml", "steel.toml", "steel-measured.toml", "planing.toml", "trailer.toml"} {
		for _, short := range []bool{false, true} {
			text := write(t, job(t, name, nil), report.Options{Short: short})
			for _, bad := range []string{"(not stated)", "{", "}", "not given" + " given", "%!", "NaN", "Inf", "<nil>"} {
				if strings.Contains(text, bad) {
					t.Errorf("%s, short %v: %q in the report", name, short, bad)
				}
			}
		}
	}
}

// The same job gives the same bytes.
func TestSameBytes(t *testing.T) {
	first := write(t, job(t, "steel.toml", nil), report.Options{Format: report.Markdown})
	for range 5 {
		if write(t, job(t, "steel.toml", nil), report.Options{Format: report.Markdown}) != first {
			t.Fatal("two reports of one boat differ")
		}
	}
}

type broken struct{}

var errBroken = errors.New("disc full")

func (broken) Write([]byte) (int, error) { return 0, errBroken }

func TestWriteErrors(t *testing.T) {
	j := job(t, "trailer.toml", nil)
	if err := report.Write(broken{}, j, report.Options{}); !errors.Is(err, errBroken) {
		t.Errorf("the writer's error is lost: %v", err)
	}
	var out bytes.Buffer
	if err := report.Write(&out, j, report.Options{Format: "papyrus"}); err == nil || out.Len() > 0 {
		t.Errorf("an unknown format: %v, %d bytes", err, out.Len())
	}
	if _, err := report.ParseFormat("papyrus"); err == nil || !strings.Contains(err.Error(), "markdown") {
		t.Errorf("the error does not name what is taken: %v", err)
	}
}

func ExampleWrite() {
	boat, err := antifoul.ReadBoat(os.DirFS(boats), "trailer.toml")
	if err != nil {
		panic(err)
	}
	job, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		panic(err)
	}
	var page strings.Builder
	if err := report.Write(&page, job, report.Options{Short: true}); err != nil {
		panic(err)
	}
	title, _, _ := strings.Cut(page.String(), "\n")
	fmt.Println(title)
	// Output: BOTTOM JOB FOR SPRAT
}
