package report_test

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"html"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/quantity"
)

// fact is one thing that every format tells, as words stand in each: one of page in the pages, below the heading where there is one.
type fact struct {
	what   string
	under  string   // heading of the section of a page; empty: anywhere
	page   []string // one of them is said; none: pages do not tell it
	json   string
	layers string // in the sheet of layers; empty: it does not tell it
	buy    string // in the sheet of what to buy; empty: likewise
}

// read says what a reader sees of a job in a format, in the order in which it stands there, with line breaks between paragraphs, rows and cells. A format
// of pages that is added is a line here and in pageFormats.
func read(t *testing.T, j *antifoul.Job, f report.Format) string {
	t.Helper()
	text := write(t, j, report.Options{Format: f})
	switch f {
	case report.Text:
		return unwrapped(text)
	case report.HTML:
		return seen(text)
	case report.JSON:
		return tokens(t, text)
	case report.LayersCSV, report.ShoppingCSV:
		return cells(t, text)
	default:
		return text
	}
}

var pageFormats = []report.Format{report.Text, report.Markdown, report.HTML}

// seen is the page of HTML as its words stand on it, an element of text a line; its head, its list of contents and its drawings are left out, so that what they say
// is not what is found.
func seen(page string) string {
	page = regexp.MustCompile(`(?s)<head>.*?</head>|<nav .*?</nav>|<svg.*?</svg>`).ReplaceAllString(page, "")
	page = regexp.MustCompile(`</?(h[1-6]|p|li|tr|th|td|caption|figcaption|section)\b[^>]*>`).ReplaceAllString(page, "\n")
	page = regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, "")
	return regexp.MustCompile(`(?m)^\s*\n`).ReplaceAllString(html.UnescapeString(page), "")
}

// unwrapped puts the cells of the text report's tables together again: each table column by column.
func unwrapped(text string) string {
	var out []string
	lines := strings.Split(text, "\n")
	rule := regexp.MustCompile(`^-+(  -+)+$`)
	for i := 0; i < len(lines); i++ {
		if i+1 >= len(lines) || lines[i] == "" || !tableAhead(lines[i:], rule) {
			out = append(out, lines[i])
			continue
		}
		end := i
		for end < len(lines) && lines[end] != "" && !strings.HasPrefix(lines[end], "- ") {
			end++
		}
		at := slices.IndexFunc(lines[i:end], rule.MatchString) + i
		start := 0
		for _, column := range strings.Split(lines[at], "  ") {
			for k, l := range lines[i:end] {
				rs := []rune(l)
				if i+k != at && start < len(rs) {
					out = append(out, "| "+strings.TrimSpace(string(rs[start:min(len(rs), start+len(column))]))) // no heading
				}
			}
			start += len(column) + 2
		}
		i = end - 1
	}
	return strings.Join(out, "\n")
}

// tableAhead reports whether a table begins at the first line: its head has up to a few lines above the rule.
func tableAhead(lines []string, rule *regexp.Regexp) bool {
	for _, l := range lines[:min(8, len(lines))] {
		if l == "" {
			return false
		}
		if rule.MatchString(l) {
			return true
		}
	}
	return false
}

// tokens are the keys and values of a document in their order.
func tokens(t *testing.T, text string) string {
	t.Helper()
	var out []string
	dec := json.NewDecoder(strings.NewReader(text))
	dec.UseNumber()
	for dec.More() || len(out) == 0 {
		tok, err := dec.Token()
		if err != nil {
			break
		}
		if _, is := tok.(json.Delim); !is {
			out = append(out, fmt.Sprint(tok))
		}
		for !dec.More() {
			if _, err := dec.Token(); err != nil {
				return strings.Join(out, "\n")
			}
		}
	}
	return strings.Join(out, "\n")
}

func cells(t *testing.T, text string) string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, r := range rows {
		out = append(out, strings.Join(r, "\n"))
	}
	return strings.Join(out, "\n\n")
}

// facts are what a reader must find of a job in every format.
func facts(j *antifoul.Job) []fact {
	out := chosen(j)
	out = append(out, laid(j)...)
	out = append(out, bought(j)...)
	for _, s := range j.Schemes {
		if d := s.Lasts.NextHaul; d.Given() {
			out = append(out, fact{what: s.Part + ": next haul-out", under: "What the colours will tell, and when", page: []string{"Paint again from " + d.String()}, json: "paint_again_from " + d.String()})
		}
	}
	for by, b := range map[string]cost.Bill{"owner": j.Costs.Owner, "yard": j.Costs.Yard} {
		if r := b.Net; r.Typical.Given() {
			out = append(out, fact{what: by + ": sum of the bill", under: "What it comes to", page: []string{r.Typical.Amount().StringFixed(2)}, json: fmt.Sprintf("sum low %s typical %s high %s", r.Low, r.Typical, r.High)})
		}
	}
	for _, k := range j.Cautions {
		out = append(out, fact{what: "caution " + k.Key, under: "Cautions for this job", page: []string{k.Name + ": " + k.Says}, json: fmt.Sprintf("key %s name %s says %s", k.Key, k.Name, k.Says)})
	}
	for _, a := range j.Ranking.Assumed {
		out = append(out, fact{what: "assumed " + a.Key, page: []string{a.Key + ": " + a.Taken}, json: "key " + a.Key + " taken " + a.Taken})
	}
	return out
}

// chosen are the type of each part and every forbidden type with its reasons.
func chosen(j *antifoul.Job) []fact {
	var out []fact
	hull := j.Ranking.Hull()
	for _, p := range j.Ranking.Parts {
		s, ok := j.Scheme(p.Part)
		switch {
		case len(p.Left) > 0:
			out = append(out, fact{what: p.Part + ": left bare", page: []string{p.Part + ": left bare"}, json: fmt.Sprintf("part %s zone %s left_bare true", p.Part, p.Zone)})
		case ok:
			out = append(out, fact{
				what: p.Part + ": type", under: "The answer", page: []string{p.Part + ": " + s.Coating.Name, p.Part + ": as the hull"},
				json: fmt.Sprintf("part %s zone %s left_bare false coating key %s name %s", p.Part, p.Zone, s.Coating.Key, s.Coating.Name),
			})
		}
		for _, x := range p.Places {
			if x.Tier != antifoul.Barred {
				continue
			}
			f := fact{what: p.Part + ": forbidden " + x.Key, json: fmt.Sprintf("key %s name %s rank %d tied %t tier forbidden", x.Key, x.Name, x.Rank, x.Tied)}
			if p.Part == hull.Part {
				f.under, f.page = "Forbidden here:", []string{x.Name}
			}
			out = append(out, f)
			for _, r := range x.Reasons() {
				it, each := r, r
				it.About, each.About = "it", "each"
				said := j.Book.Say(it, quantity.Metric)
				f := fact{what: fmt.Sprintf("%s: %s because %s", p.Part, x.Key, r.Rule), json: said}
				if p.Part == hull.Part {
					f.under, f.page = "Forbidden here:", []string{said, j.Book.Say(each, quantity.Metric)}
				}
				out = append(out, f)
			}
		}
	}
	return out
}

// laid are the layers of each part, the films and the litres.
func laid(j *antifoul.Job) []fact {
	var out []fact
	for _, s := range j.Schemes {
		number := 0
		for _, l := range s.Stack {
			if l.For == compat.Found {
				number++
				f := fact{what: fmt.Sprintf("%s: layer %d stays", s.Part, number), under: "Layers: " + s.Part, page: []string{l.Coating.Name}}
				f.json = fmt.Sprintf("number %d role found coating key %s name %s", number, l.Coating.Key, l.Coating.Name)
				f.layers = fmt.Sprintf("%s %d found %s %s", s.Part, number, l.Coating.Name, l.Coating.Key)
				out = append(out, f)
			}
		}
		for _, k := range s.Coats {
			number++
			what := fmt.Sprintf("%s: layer %d ", s.Part, number)
			colour := ""
			role := string(k.Layer.For)
			jsonColour := ""
			if c, err := j.Book.Colour(k.Layer.Colour); err == nil {
				colour, jsonColour = c.Name, fmt.Sprintf("colour key %s name %s", c.Key, c.Name)
			}
			um := func(f quantity.Film) string {
				if !f.Given() {
					return ""
				}
				return f.In(quantity.Micrometre, 0, quantity.Nearest).String()
			}
			film := k.Film
			name := fmt.Sprintf("%d %s %s %s %s %d %s %s %s %s", number, role, k.Layer.Coating.Name, k.Layer.Coating.Key, colour, k.Layer.Coats, um(film.Low), um(film.Typical), um(film.High), um(k.Wet))
			out = append(out,
				fact{
					what: what + "coating", under: "Layers: " + s.Part, page: []string{k.Layer.Coating.Name},
					json:   fmt.Sprintf("number %d role %s coating key %s name %s %s", number, role, k.Layer.Coating.Key, k.Layer.Coating.Name, jsonColour),
					layers: name,
				},
				fact{
					what: what + "film", under: "Layers: " + s.Part, page: []string{quantity.ShowRange(film, quantity.Metric)},
					json: fmt.Sprintf("film_a_coat low %s typical %s high %s", film.Low, film.Typical, film.High),
				},
				fact{
					what: what + "litres", under: "Layers: " + s.Part, page: []string{k.Litres.Typical.To(quantity.Litre, 1, quantity.Nearest).Show(quantity.Metric)},
					json: fmt.Sprintf("litres low %s typical %s high %s", k.Litres.Low, k.Litres.Typical, k.Litres.High),
				},
			)
		}
	}
	return out
}

// bought are the litres and the cans of each paint.
func bought(j *antifoul.Job) []fact {
	var out []fact
	for _, g := range j.Buy {
		need := g.Need.To(quantity.Litre, 2, quantity.Up)
		out = append(out, fact{
			what: "need of " + g.Coating.Key, under: "What to buy", page: []string{need.Show(quantity.Metric)}, json: "need " + need.String(),
			buy: need.Number().String(),
		})
		for _, i := range g.Items {
			out = append(out, fact{
				what: fmt.Sprintf("cans of %s, %s", g.Coating.Key, i.Can.Size), under: "What to buy", page: []string{fmt.Sprintf("%d × %s", i.Count, i.Can.Size)},
				json: fmt.Sprintf("size %s count %d", i.Can.Size, i.Count), buy: fmt.Sprintf("shop %d can %s", i.Count, i.Can.Size.In(quantity.Litre, 3, quantity.Nearest)),
			})
		}
		for _, i := range g.FromStock {
			out = append(out, fact{
				what: fmt.Sprintf("from the store %s, %s", g.Coating.Key, i.Can.Size), under: "What to buy", page: []string{fmt.Sprintf("%d × %s", i.Count, i.Can.Size)},
				json: fmt.Sprintf("from_store size %s count %d", i.Can.Size, i.Count), buy: fmt.Sprintf("store %d can %s", i.Count, i.Can.Size.In(quantity.Litre, 3, quantity.Nearest)),
			})
		}
	}
	return out
}

// below is what a page says below a heading that begins a line, up to the next heading of the same page that is looked for.
func below(page, heading string) string {
	if heading == "" {
		return page
	}
	at := regexp.MustCompile(`(?mi)^[#\s-]*` + regexp.QuoteMeta(heading)).FindStringIndex(page)
	if at == nil {
		return ""
	}
	rest := page[at[1]:]
	for _, next := range sectionEnds() {
		if end := next.FindStringIndex(rest); end != nil {
			rest = rest[:end[0]]
		}
	}
	return rest
}

// sectionEnds are the headings that end a section, ready to be looked for.
var sectionEnds = sync.OnceValue(func() (out []*regexp.Regexp) {
	for _, h := range headings {
		out = append(out, regexp.MustCompile(`(?m)^(## |### )?`+h))
	}
	return out
})

// headings are those that end a section.
var headings = []string{"The boat as reported$", "What would let a type in", "Layers: ", "Areas$", "What to buy$", "Order of work and hold points$", "What this rests on$", "Law$", "Metals in the water$", "Biocide in the film, and what leaves it$", "After launch$", "Why: "}

// Chosen types, layers, films, litres, cans, next haul-out, every forbidden type with its reasons, cautions and what was assumed are the same in every
// format, for every boat.
func TestSameFactsInEachFormat(t *testing.T) {
	notUnderRace(t)
	jobs := allJobs(t)
	maps.Copy(jobs, rareJobs(t))
	for name, j := range jobs {
		t.Run(filepath.Base(name), func(t *testing.T) {
			list := facts(j)
			if len(list) < 10 {
				t.Fatalf("only %d facts", len(list))
			}
			for _, f := range pageFormats {
				page := plainText(read(t, j, f))
				sections := map[string]string{}
				for _, x := range list {
					in, ok := sections[x.under]
					if !ok {
						in = words(below(page, x.under))
						sections[x.under] = in
					}
					if len(x.page) > 0 && !slices.ContainsFunc(x.page, func(s string) bool { return holds(in, s) }) {
						t.Errorf("%s does not say %s: %q", f, x.what, x.page)
					}
				}
			}
			say := map[report.Format]func(fact) string{
				report.JSON:        func(x fact) string { return x.json },
				report.LayersCSV:   func(x fact) string { return x.layers },
				report.ShoppingCSV: func(x fact) string { return x.buy },
			}
			for f, what := range say {
				in := words(read(t, j, f))
				for _, x := range list {
					if !holds(in, what(x)) {
						t.Errorf("%s does not say %s: %q", f, x.what, what(x))
					}
				}
			}
		})
	}
}

// plainText is a page without the backslashes that Markdown puts before signs.
func plainText(s string) string { return strings.ReplaceAll(s, `\`, "") }

// holds reports whether the words stand there as whole words; without any they do.
func holds(in, s string) bool {
	s = words(s)
	return s == "" || strings.Contains(" "+in+" ", " "+s+" ")
}

// The comparison is one that can fail: a job that differs in one fact is not told by the reports of the other.
func TestFactsAreCompared(t *testing.T) {
	a := job(t, "sloop.toml", nil)
	b := job(t, "sloop.toml", func(b *antifoul.Boat) { b.Wishes.TopColour, b.Use.HaulOutEvery = "navy", quantity.Month.N(36) })
	for _, f := range append(slices.Clone(pageFormats), report.JSON) {
		in := words(plainText(read(t, a, f)))
		missed := 0
		for _, x := range facts(b) {
			say := x.page
			if f == report.JSON {
				say = []string{x.json}
			}
			if len(say) > 0 && !slices.ContainsFunc(say, func(s string) bool { return holds(in, s) }) {
				missed++
			}
		}
		if missed < 3 {
			t.Errorf("%s: %d facts of another job are missed", f, missed)
		}
	}
}
