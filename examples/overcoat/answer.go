package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// width is that of a screen.
const width = 96

// writer puts lines together.
type writer struct {
	strings.Builder
	book  *tables.Book
	units quantity.System

	cautions bool // in full
}

// answer words what may be done, the reasons with the rule and the basis of each, and the way there.
func answer(b *tables.Book, p compat.Part, next tables.Coating, units quantity.System, cautions bool) string {
	w := &writer{book: b, units: units, cautions: cautions}
	top := p.Found[len(p.Found)-1]
	metal := compat.OnMaterial(b, next, p)
	over := compat.Over(b, next, top)
	ways := compat.Routes(b, p, next)
	m, _ := b.Material(p.Material) // read before
	w.line("", "May "+next.Name+" go over "+top.Coating.Name+" on "+m.Name+"?")
	w.line("", w.verdict(p, metal, over, ways[0]))
	w.block("On the material", metal)
	w.block("Over what is there", over)
	said := slices.Concat(metal, over)
	for i, r := range ways {
		if len(r.Findings.At(finding.Forbidden)) > 0 {
			continue // its reasons stand above
		}
		title := "The way"
		if i > 0 {
			title = "The next best way"
		}
		w.way(title, r)
		if next.Key == m.With && m.Film.Low.Given() {
			w.line("- ", "Then "+next.Name+" itself: a barrier here is "+quantity.ShowRange(m.Film, units)+" in all, sound two-pack film that stays below it counted in.")
		}
		said = w.also(said, r)
	}
	w.beware(p, ways[0])
	w.WriteString("\n")
	w.line("", "Generic types only: the tin's own data sheet decides where it says otherwise. Tables "+b.Fingerprint()+".")
	return w.String()
}

// verdict is the answer in one sentence.
func (w *writer) verdict(p compat.Part, metal, over finding.List, best compat.Route) string {
	none := len(best.Findings.At(finding.Forbidden)) > 0
	covered := p.Found[len(p.Found)-1].Coating.Key != tables.BareSurface
	strips := covered && slices.ContainsFunc(best.Steps, func(s finding.Step) bool { return s.Do == finding.Strip || s.Do == finding.Blast })
	switch {
	case metal.Worst() == finding.Forbidden:
		return "NO. The material or the place forbids it, and no work lifts that."
	case none:
		return "NO. No way leads there."
	case len(metal.At(finding.Ask))+len(best.Findings.At(finding.Ask)) > 0:
		return "ASK FIRST. Nobody has written down that it holds; what to ask stands below."
	case strips && asked(over, best):
		return "ASK FIRST. What to ask stands below; without a yes what is there comes off first."
	case over.Worst() == finding.Forbidden || strips:
		return "NOT ON TOP OF IT. What is there comes off first, as told below."
	case len(over.At(finding.Ask)) > 0:
		return "ASK FIRST. Nobody has written down that it holds; what to ask stands below."
	case slices.ContainsFunc(best.Steps, func(s finding.Step) bool { return s.Do == finding.TestPatch }):
		return "YES, but only if the test patch holds, and after the work told below."
	case len(best.Steps) == 0 && over.Worst() == finding.Caution:
		return "YES, but only as told below."
	case len(best.Steps) > 0:
		return "YES, after the work told below."
	}
	return "YES, as it is."
}

// asked reports whether nothing but a question about the pair makes the way strip what is there.
func asked(over finding.List, best compat.Route) bool {
	open := over.At(finding.Ask)
	for _, f := range best.Findings {
		if len(f.First) == 1 && f.First[0].Do == finding.Strip && !says(open, f) {
			return false
		}
	}
	return len(open) > 0
}

// says reports whether a finding of the list is of the same rule about the same.
func says(fs finding.List, f finding.Finding) bool {
	return slices.ContainsFunc(fs, func(o finding.Finding) bool { return o.Rule == f.Rule && o.About == f.About && o.Against == f.Against })
}

// also tells the cautions of a way that were not said before, and returns all that was said.
func (w *writer) also(said finding.List, r compat.Route) finding.List {
	for _, f := range r.Findings.At(finding.Caution) {
		if says(said, f) {
			continue
		}
		w.line("- ", w.book.Say(f, w.units)+" ["+w.rests(f)+"]")
		said = append(said, f)
	}
	return said
}

// block tells the findings of one question, each with what it rests on.
func (w *writer) block(title string, fs finding.List) {
	w.WriteString("\n" + title + "\n")
	for _, f := range fs {
		w.line("- ", w.book.Say(f, w.units)+" ["+w.rests(f)+"]")
	}
}

// rests names the rule of a finding and the kinds of basis below it.
func (w *writer) rests(f finding.Finding) string {
	out := []string{string(f.Rule)}
	bases := slices.Clone(f.Basis)
	if rule, err := w.book.Rule(f.Rule); err == nil {
		bases = append(bases, rule.Basis())
	}
	for _, b := range bases {
		kind := string(b.Kind)
		if b.Source != "" {
			kind += " " + b.Source
		}
		if !slices.Contains(out, kind) {
			out = append(out, kind)
		}
	}
	return strings.Join(out, "; ")
}

// way tells the steps of a route in a painter's words.
func (w *writer) way(title string, r compat.Route) {
	w.WriteString("\n")
	w.line("", fmt.Sprintf("%s: about %s of one hand a square metre (%s to %s)", title, hours(r.Effort.Typical), hours(r.Effort.Low), hours(r.Effort.High)))
	if len(r.Steps) == 0 {
		w.line("- ", "Nothing to do first.")
	}
	for i, s := range r.Steps {
		w.line(strconv.Itoa(i+1)+". ", w.step(s))
	}
}

func (w *writer) step(s finding.Step) string {
	row, err := w.book.Step(s.Do)
	if err != nil {
		return string(s.Do)
	}
	out := row.Says
	if s.Grit != "" {
		out += " Grit " + s.Grit + "."
	}
	if c, err := w.book.Coating(s.Coating); err == nil {
		out = fmt.Sprintf("Put on %s: %d × %s", c.Name, max(1, s.Coats), quantity.ShowRange(c.Film, w.units))
		if s.Coats > 1 && s.Film.Low.Given() {
			out += ", in all " + quantity.ShowRange(s.Film, w.units)
		}
		out += "."
	}
	if row.Hold != "" && s.Coating == "" {
		out += " Hold: " + row.Hold
	}
	return out
}

// beware lists the cautions of the work and of the films that it touches.
func (w *writer) beware(p compat.Part, r compat.Route) {
	var keys []string
	add := func(k string) {
		if !slices.Contains(keys, k) {
			keys = append(keys, k)
		}
	}
	for _, s := range r.Steps {
		if row, err := w.book.Step(s.Do); err == nil {
			for k := range row.Cautions() {
				add(k)
			}
		}
	}
	for _, l := range append(slices.Clone(r.Adds), p.Found...) {
		if l.For == compat.Found && l.Coating.Role != tables.OldFilm {
			continue // cured long ago
		}
		for k := range l.Coating.Hazards() {
			add(k)
		}
	}
	for _, l := range p.Found { // washed, abraded or taken off, a film with biocide is poison and waste
		if holds := l.Coating.Biocide != tables.NoBiocide && l.Coating.Biocide != ""; holds && len(r.Steps) > 0 {
			add("antifouling-dust")
			add("waste")
		}
	}
	if m, err := w.book.Material(p.Material); err == nil && len(r.Steps) > 0 {
		for k := range m.Hazards() { // a lead keel is abraded too
			add(k)
		}
	}
	if len(keys) == 0 {
		return
	}
	var names []string
	w.WriteString("\n")
	for c := range w.book.Cautions() {
		switch {
		case !slices.Contains(keys, c.Key):
		case w.cautions:
			w.line("- ", c.Says)
		default:
			names = append(names, strings.ToLower(c.Name[:1])+c.Name[1:])
		}
	}
	if len(names) > 0 {
		w.line("", "Beware: "+strings.Join(names, "; ")+". With -cautions each is told in full; read them before the work.")
	}
}

// hours to two places.
func hours(h float64) string { return strconv.FormatFloat(h, 'f', 2, 64) + " h" }

// line writes text broken at the width, under a mark.
func (w *writer) line(mark, text string) {
	at := len(mark)
	w.WriteString(mark)
	for i, word := range strings.Fields(text) {
		n := len([]rune(word))
		switch {
		case i > 0 && at+1+n > width:
			w.WriteString("\n" + strings.Repeat(" ", len(mark)))
			at = len(mark)
		case i > 0:
			w.WriteString(" ")
			at++
		}
		w.WriteString(word)
		at += n
	}
	w.WriteString("\n")
}
