package main

import (
	"iter"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// sheets lays every table of the book out for a reader.
func sheets(b *tables.Book, units quantity.System) []sheet {
	w := &writer{book: b, units: units}
	w.coatings()
	w.surfaces()
	w.work()
	w.law()
	w.published()
	w.registry()
	return slices.DeleteFunc(w.out, func(s sheet) bool { return len(s.Rows) == 0 })
}

func (w *writer) coatings() {
	w.sheet("Types of bottom coating", "What a bottom can end with. Content is by weight of the wet paint; life counts months afloat; wear is film lost a month.",
		"type", "biocides", "solids", "density", "film a coat", "coats", "next coat after", "air, new", "speed to", "idle to", "growth", "cleaning", "rubbing", "life", "wear at rest", "wear in use")
	for c := range w.book.Coatings() {
		if c.Ranked() {
			w.row(c.Row, c.Name, w.actives(c), w.show(c.Solids), w.show(c.Density), w.show(c.Film), strconv.Itoa(c.Coats)+" to "+strconv.Itoa(c.Most), w.show(c.OvercoatMin), w.show(c.AirNew), w.show(c.SpeedMax),
				w.show(c.IdleMax), c.Growth.String(), c.Scrub.String(), c.Abrasion.String(), w.show(c.Life), w.show(c.WearRest), w.show(c.WearUse))
		}
	}
	w.sheet("Undercoats", "Primers, barriers, tie coats and sealers.", "name", "role", "packs", "solids", "film a coat", "coats", "next coat after", "next coat by", "at", "surface from", "to")
	for c := range w.book.Coatings() {
		if !c.Ranked() && c.Role != tables.OldFilm {
			w.row(c.Row, c.Name, string(c.Role), strconv.Itoa(c.Packs), w.show(c.Solids), w.show(c.Film), strconv.Itoa(c.Coats), w.show(c.OvercoatMin), w.show(c.OvercoatMax), w.show(c.At), w.show(c.ApplyMin), w.show(c.ApplyMax))
		}
	}
	w.sheet("Old films", "What may be found on a bottom, and how it is recognised.", "name", "recognised by", "biocide", "hazards")
	for c := range w.book.Coatings() {
		if c.Role == tables.OldFilm {
			w.row(c.Row, c.Name, c.Recognised, string(c.Biocide), join(c.Hazards()))
		}
	}
	w.sheet("Biocides", "Copper and zinc are their shares of the mass, from standard atomic weights.", "name", "CAS", "formula", "class", "copper", "zinc")
	for a := range w.book.ActiveRows() {
		w.row(a.Row, a.Name, a.CAS, a.Formula, string(a.Class), number(a.Copper), number(a.Zinc))
	}
	w.sheet("Colours", "Lightness is CIE 1976 L*, 0 black to 100 white, of a typical shade.", "colour", "shade", "lightness", "bright")
	for c := range w.book.Colours() {
		w.row(c.Row, c.Name, c.SRGB, number(c.Lightness), yes(c.Bright))
	}
}

func (w *writer) actives(c tables.Coating) string {
	var out []string
	for a := range c.Actives() {
		out = append(out, a.Key+" "+w.show(a.Content))
	}
	return strings.Join(out, "; ")
}

// lag is nothing for what is never painted.
func lag(m tables.Material) string {
	if m.Lag.High == 0 {
		return ""
	}
	return numbers(m.Lag)
}

func (w *writer) surfaces() {
	w.sheet("Materials and fittings", "What each takes: fine, only over a barrier, ask its maker, or never.", "material", "painted", "cuprous oxide", "metallic copper", "other copper", "copper-free", "barrier", "film of the barrier", "old copper may stay", "preparation", "hours behind the air")
	for m := range w.book.Materials() {
		w.row(m.Row, m.Name, string(m.Painted), string(m.Cuprous), string(m.Metallic), string(m.Other), string(m.Free), string(m.Barrier), w.show(m.Film), yes(m.OldCopper), actions(m.Prepare()), lag(m))
	}
	w.sheet("Signs of an old film", "What may be seen, and which films it speaks for and against. One that settles rules out.", "sign", "to see it", "what is seen", "for", "against", "settles")
	for s := range w.book.Signs() {
		w.row(s.Row, s.Key, s.Test, s.Says, join(s.For()), join(s.Against()), yes(s.Settles))
	}
	w.sheet("Readings of an old film", "Worse than repair: spots. Worse than the far end of strip: it comes off; between its ends the trade differs.", "reading", "unit", "worse when", "repair", "strip", "state")
	for t := range w.book.Thresholds() {
		worse := "higher"
		if t.Lower {
			worse = "lower"
		}
		w.row(t.Row, t.Name, t.Unit, worse, number(t.Repair), numbers(t.Strip), string(t.State))
	}
	w.sheet("States of an old film", "What each asks for before anything goes over it.", "state", "verdict", "work")
	for c := range w.book.Conditions() {
		w.row(c.Row, c.Name, c.Verdict.String(), actions(c.Steps()))
	}
	w.sheet("Coat over coat", "A bar is asked first, then same on same, then the named pair, then the class. An empty cell matches anything.", "row", "level", "new", "old", "window", "verdict", "work", "with", "grit")
	for o := range w.book.Overcoats() {
		w.row(o.Row, o.Name, o.Level.String(), o.New, o.Old, o.Window, o.Verdict.String(), actions(o.Steps()), o.With, o.Grit)
	}
	w.sheet("Zones", "Wear is a multiple of the flat's.", "zone", "wear", "extra coats", "strip free of cuprous oxide")
	for z := range w.book.Zones() {
		w.row(z.Row, z.Name, numbers(z.Wear), strconv.Itoa(z.ExtraCoats), w.show(z.Gap))
	}
}

func (w *writer) work() {
	w.sheet("Hull forms", "Wetted area = factor × waterline × (beam + draught to the bottom of the keel).", "form", "factor", "share of the waterline strip", "share of the edges", "hulls", "length by beam", "draught by beam")
	for f := range w.book.HullForms() {
		w.row(f.Row, f.Name, numbers(f.Factor), numbers(f.Waterline), numbers(f.Edges), strconv.Itoa(f.Hulls), span(f.LengthBeam), span(f.DraftBeam))
	}
	w.sheet("Ways of finding an area", "The lowest order that can be reckoned and lies in its range decides; 0 is only shown. The ratios are the range it was made for.",
		"way", "order", "factor", "length by beam", "beam by draught", "length by side of volume", "block", "midship")
	for m := range w.book.AreaMethods() {
		w.row(m.Row, m.Name, strconv.Itoa(m.Order), numbers(m.Factor), span(m.LengthBeam), span(m.BeamDraft), span(m.LengthVolume), span(m.Block), span(m.Midship))
	}
	w.sheet("Pieces of a hull", "Area = factor × the shape's own; openings are taken off.", "piece", "shape", "factor", "zone", "in the short rule")
	for p := range w.book.Pieces() {
		w.row(p.Row, p.Name, string(p.Shape), numbers(p.Factor), p.Zone, yes(p.Counted))
	}
	w.sheet("What is used up beside the paint", "So much for each of what it is counted per.", "what", "unit", "for each", "rate")
	for s := range w.book.Supplies() {
		w.row(s.Row, s.Name, s.Unit, s.Per, numbers(s.Rate))
	}
	w.sheet("After launch", "Months after launch; none stands for the haul-out.", "what", "months", "do")
	for s := range w.book.Seasons() {
		w.row(s.Row, s.Name, span(s.After), s.Says)
	}
	w.sheet("Losses", "Practical rate = theoretical rate × (1 − loss).", "way", "loss", "left in tray and can, each coat", "most wind")
	for l := range w.book.Losses() {
		w.row(l.Row, l.Name, w.show(l.Share), w.show(l.Residue), w.show(l.WindMax))
	}
	w.sheet("Cans", "Sizes on sale.", "size", "coating", "price")
	for c := range w.book.Cans() {
		w.row(c.Row, w.show(c.Size), c.Coating, w.show(c.Price))
	}
	w.sheet("Work", "Hours of one hand for a square metre.", "work", "what to do", "hold until", "hours")
	for s := range w.book.Steps() {
		w.row(s.Row, s.Name, s.Says, s.Hold, numbers(s.Hours))
	}
	w.sheet("Numbers of the formulas", "", "number", "value", "unit")
	for f := range w.book.Factors() {
		w.row(f.Row, f.Name, numbers(f.Value), f.Unit)
	}
	w.sheet("Weights of the ranking", "They count inside a tier only.", "criterion", "asks", "weight")
	for c := range w.book.Criteria() {
		w.row(c.Row, c.Name, c.Says, number(c.Weight))
	}
	w.sheet("Past results", "What was seen of a type on boats that lay at a place; own tables only.", "type", "place", "outcome", "after", "boats")
	for p := range w.book.PastResults() {
		w.row(p.Row, p.Coating, p.Place, string(p.Outcome), w.show(p.Months), strconv.Itoa(p.Boats))
	}
	w.sheet("Prices", "What a unit costs; own tables only.", "what", "which", "paid to", "per", "low", "typical", "high")
	for p := range w.book.Prices() {
		w.row(p.Row, string(p.Of), p.What, p.By, p.Per, p.Money.Low.String(), p.Money.Typical.String(), p.Money.High.String())
	}
	w.sheet("Cautions", "A report prints those that a job calls for.", "caution", "says")
	for c := range w.book.Cautions() {
		w.row(c.Row, c.Name, c.Says)
	}
}

func (w *writer) law() {
	w.sheet("Places", "", "place", "lies in")
	for p := range w.book.Places() {
		w.row(p.Row, p.Name, p.Within)
	}
	w.sheet("Law", "In our words, as read on the day named. No legal advice.", "law", "place", "says", "verdict", "from", "to", "read on")
	for l := range w.book.Laws() {
		w.row(l.Row, l.Name, l.Place, l.Says, l.Verdict.String(), w.show(l.From), w.show(l.To), w.show(l.ReadOn))
	}
}

func (w *writer) registry() {
	w.sheet("Rules", "What a report says, with its values in braces.", "says", "safety")
	for r := range w.book.Rules() {
		w.line(string(r.ID), r.Basis(), []string{r.Says, yes(r.Safety)})
	}
	w.sheet("Sources", "The documents that rows cite, and what was read of each.", "title", "edition", "kind", "read")
	for s := range w.book.Sources() {
		w.line(s.Key, finding.Basis{}, []string{s.Title, s.Edition, s.Kind, s.Note})
	}
}

func join(s iter.Seq[string]) string { return strings.Join(slices.Collect(s), ", ") }

func actions(s iter.Seq[finding.Action]) string {
	var out []string
	for a := range s {
		out = append(out, string(a))
	}
	return strings.Join(out, ", ")
}

// span writes the two ends of a range, nothing for one that is not given.
func span(s tables.Span) string {
	if !s.Given() {
		return ""
	}
	return number(s.Low) + " to " + number(s.High)
}
