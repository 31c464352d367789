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

// older parts the text of a boat file that is a passport itself from the lists of remarks that it was written with, which are carried on as they stand, and from its
// heading, which a passport gets anew. What stands between them or was added below them is the file's. Lines keep their numbers: those taken out are empty.
func (w *passport) older(text string) (body, lists string) {
	if w.job.Boat.Passport == 0 {
		return text, ""
	}
	var kept, taken strings.Builder
	taking := true // the heading
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "# "+setAside) || strings.HasPrefix(line, "# "+stood) {
			taking = true
			taken.WriteByte('\n')
		}
		taking = taking && strings.HasPrefix(line, "#")
		switch {
		case !taking:
			kept.WriteString(line)
		case taken.Len() > 0:
			taken.WriteString(strings.TrimRight(line, "\n") + "\n")
			fallthrough
		default:
			kept.WriteByte('\n')
		}
	}
	return kept.String(), taken.String()
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
