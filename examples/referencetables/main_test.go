package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
)

func call(t *testing.T, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, bad bytes.Buffer
	code = run(args, &out, &bad)
	return code, out.String(), bad.String()
}

// Every row that a reader of a report may meet stands in both forms, with its key and its doubt.
func TestEveryRowIsWritten(t *testing.T) {
	_, md, _ := call(t)
	_, html, _ := call(t, "-format", "html")
	b := tables.Default()
	keys := []string{b.Fingerprint()}
	for c := range b.Coatings() {
		keys = append(keys, c.Key)
	}
	for m := range b.Materials() {
		keys = append(keys, m.Key)
	}
	for o := range b.Overcoats() {
		keys = append(keys, o.Key)
	}
	for l := range b.Laws() {
		keys = append(keys, l.Key)
	}
	for o := range b.Observations() {
		keys = append(keys, o.Key)
	}
	for s := range b.Sources() {
		keys = append(keys, s.Key)
	}
	for p := range b.Potentials() {
		keys = append(keys, p.Key)
	}
	for v := range b.Values() {
		keys = append(keys, v.Key)
	}
	for r := range b.Rules() {
		keys = append(keys, string(r.ID))
	}
	for _, k := range keys {
		if !strings.Contains(md, cell(k)) {
			t.Errorf("Markdown lacks %q", k)
		}
		if !strings.Contains(html, k) {
			t.Errorf("HTML lacks %q", k)
		}
	}
	for l := range b.Laws() {
		if d := l.Basis("says").Doubt; d != "" && !strings.Contains(md, cell(d)) {
			t.Errorf("the doubt of %s is not written", l.Key)
		}
	}
}

// The rules that are printed are those of the book, each once and in its order: the README sends whoever builds on rule ids here.
func TestRulesAreThoseOfTheBook(t *testing.T) {
	_, md, _ := call(t)
	_, rest, ok := strings.Cut(md, "\n## Rules\n")
	part, _, _ := strings.Cut(rest, "\n## ")
	if !ok {
		t.Fatal("no heading Rules")
	}
	var printed, want []string
	for _, m := range regexp.MustCompile(`(?m)^\| ([a-z0-9-]+) \|`).FindAllStringSubmatch(part, -1) {
		printed = append(printed, m[1])
	}
	printed = slices.DeleteFunc(printed, func(s string) bool { return s == "key" }) // the head
	for r := range tables.Default().Rules() {
		want = append(want, string(r.ID))
	}
	if !slices.Equal(printed, want) || len(want) < 80 {
		t.Errorf("%d rules are printed, the book has %d", len(printed), len(want))
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil || !strings.Contains(string(readme), "`go run ./examples/referencetables` prints them with their sentences under *Rules*") {
		t.Errorf("README.md does not send anyone here (%v)", err)
	}
}

// The page is well-formed, draws on nothing outside, and runs no script.
func TestPageStandsAlone(t *testing.T) {
	_, html, _ := call(t, "-format", "html")
	d := xml.NewDecoder(strings.NewReader(html))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	for {
		if _, err := d.Token(); err != nil {
			if !errors.Is(err, io.EOF) {
				t.Fatal(err)
			}
			break
		}
	}
	for _, bad := range []string{"<script", "http://", "https://", "url(", "@import"} {
		if strings.Contains(html, bad) {
			t.Errorf("the page holds %q", bad)
		}
	}
}

// Rows of Markdown tables have as many cells as their head.
func TestMarkdownRowsLineUp(t *testing.T) {
	_, md, _ := call(t)
	bars := 0
	for i, l := range strings.Split(md, "\n") {
		if !strings.HasPrefix(l, "|") {
			bars = 0
			continue
		}
		n := strings.Count(strings.ReplaceAll(l, `\|`, ""), "|")
		if bars == 0 {
			bars = n
		}
		if n != bars {
			t.Errorf("line %d has %d bars, its head %d", i+1, n, bars)
		}
	}
}

func TestOwnTablesAreShown(t *testing.T) {
	code, md, bad := call(t, "-tables", "../yard")
	if code != exitDone || !strings.Contains(md, "yard-ablative-small") {
		t.Errorf("exit %d, said %q", code, bad)
	}
}

func TestOutputAndBadInput(t *testing.T) {
	file := filepath.Join(t.TempDir(), "tables.html")
	if code, out, bad := call(t, "-format", "html", "-out", file); code != exitDone || out != "" || bad != "" {
		t.Errorf("exit %d, printed %d bytes, said %q", code, len(out), bad)
	}
	text, err := os.ReadFile(file)
	if err != nil || !bytes.HasSuffix(text, []byte("</html>\n")) {
		t.Errorf("the file is not whole (%v)", err)
	}
	for _, args := range [][]string{{"-format", "papyrus"}, {"-tables", "no-such"}, {"-units", "cubits"}, {"-out", filepath.Join(file, "below")}, {"-x"}} {
		if code, out, bad := call(t, args...); code != exitBadInput || out != "" || bad == "" {
			t.Errorf("%v: exit %d, printed %d bytes, said %q", args, code, len(out), bad)
		}
	}
	if code, _, _ := call(t, "-h"); code != exitDone {
		t.Errorf("-h: exit %d", code)
	}
}
