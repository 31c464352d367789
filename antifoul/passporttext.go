package antifoul

import (
	"fmt"
	"strings"
)

// text is the whole file.
func (w *passport) text(name, old string) string {
	var out strings.Builder
	from := name
	if w.log.Log.Name != "" {
		from += " and " + w.log.Log.Name
	}
	remark(&out, fmt.Sprintf("Boat file for the haul-out of %s, written from %s.", w.on, from))
	remark(&out, "A film whose known_by says forecast was reckoned, not read: look, measure, and write what you find in its place.")
	if w.log.Log.Name != "" {
		remark(&out, "Coat by coat, with air, comb, names and deviations, the job stands in "+w.log.Log.Name+" alone: keep it.")
	}
	for _, n := range w.notes {
		remark(&out, n)
	}
	out.WriteString("\n" + w.tree.String())
	if len(w.aside) > 0 {
		out.WriteByte('\n')
		remark(&out, setAside+name+" and is no longer so, or not known to be.")
		for _, a := range w.aside {
			remark(&out, a.Key+" = "+a.Value+"  ("+a.Why+")")
		}
	}
	old, older := w.older(old)
	if said := remarks(old); len(said) > 0 {
		out.WriteByte('\n')
		remark(&out, stood+name+".")
		for _, s := range said {
			remark(&out, s)
		}
	}
	out.WriteString(older)
	return out.String()
}

// The first words of the two lists at the end of a passport.
const (
	setAside = "Set aside: what stood in "
	stood    = "Remarks that stood in "
)

// older parts the text of a boat file that is a passport itself from the lists at its end, which are carried on as they stand, and takes its
// heading off, which a passport gets anew.
func (w *passport) older(text string) (body, lists string) {
	if w.job.Boat.Passport == 0 {
		return text, ""
	}
	for _, head := range []string{"\n# " + setAside, "\n# " + stood} {
		if i := strings.Index(text, head); i >= 0 {
			lists = strings.TrimRight(text[i:], "\n") + "\n" + lists
			text = text[:i]
		}
	}
	for strings.HasPrefix(text, "#") {
		_, text, _ = strings.Cut(text, "\n")
	}
	return text, lists
}

// remark writes a comment: one line, or more where a reader of boat files would take its full stops for too many.
func remark(out *strings.Builder, s string) {
	for _, piece := range pieces(s) {
		out.WriteString("# " + strings.Map(func(r rune) rune {
			if r < 0x20 || r == 0x7f || r == '\u2028' || r == '\u2029' {
				return ' '
			}
			return r
		}, strings.TrimSpace(piece)) + "\n")
	}
}
