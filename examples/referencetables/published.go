package main

import "strconv"

// published lays out the literature values.
func (w *writer) published() {
	w.sheet("Galvanic series in flowing seawater", "Each list by itself; two lists are never mixed.", "metal", "list", "state", "noble end", "active end", "against")
	for p := range w.book.Potentials() {
		w.row(p.Row, p.Name, p.Series, p.State, w.show(p.Noble), w.show(p.Active), p.Electrode)
	}
	w.sheet("Reference electrodes", "", "electrode", "against the standard hydrogen electrode")
	for e := range w.book.Electrodes() {
		w.row(e.Row, e.Name, w.show(e.SHE))
	}
	w.sheet("Protection potentials", "", "metal", "against", "protected at or below", "not below", "only where")
	for p := range w.book.Protections() {
		w.row(p.Row, p.Name, p.Electrode, w.show(p.At), w.show(p.NotBelow), p.Only)
	}
	w.sheet("Gradings", "Preparation, rust, fouling, condition of coatings.", "scale", "grade", "means", "cover")
	for g := range w.book.Grades() {
		w.row(g.Row, g.Scale, g.Grade, g.Says, w.show(g.Cover))
	}
	w.sheet("Blast profiles", "", "grade", "abrasive", "depth", "taken off a reading")
	for p := range w.book.Profiles() {
		w.row(p.Row, p.Name, p.Abrasive, w.show(p.Depth), w.show(p.Correction))
	}
	w.sheet("Counts of film readings", "", "standard", "area over", "up to", "readings", "may be repeated", "more for each", "so many")
	for s := range w.book.Samplings() {
		w.row(s.Row, s.Standard, w.show(s.Over), w.show(s.UpTo), strconv.Itoa(s.Readings), count(s.Repeats), w.show(s.Each), count(s.More))
	}
	w.sheet("Acceptance of film readings", "Least values are shares of the nominal film, greatest ones of the film agreed. An empty cell is no limit.", "standard", "counted by", "readings a spot", "spots an area", "least mean", "least single", "below nominal", "greatest single", "greatest mean", "guide", "split above")
	for a := range w.book.Acceptances() {
		below := w.show(a.Below)
		if a.Fewer {
			below = "fewer than " + below
		}
		counted := a.Sampling
		if a.SamplingUS != "" {
			counted += "; " + a.SamplingUS
		}
		w.row(a.Row, a.Name, counted,
			strconv.Itoa(a.Readings), strconv.Itoa(a.Spots), w.show(a.LeastMean), w.show(a.LeastSingle), below, w.show(a.MostSingle), w.show(a.MostMean), a.Guide, w.show(a.Split))
	}
	w.sheet("Instruments", "What each tells of a film, and where.", "instrument", "tells", "reads on", "with a caution", "only with its maker's word", "how", "cannot say")
	for x := range w.book.Instruments() {
		reads := join(x.Reads())
		if x.Any {
			reads = "any"
		}
		w.row(x.Row, x.Name, x.Tells, reads, join(x.Caution())+suffix(x.Warns), join(x.Ask())+suffix(x.Question), x.Says, x.Cannot)
	}
	w.sheet("What may be seen of a bottom", "Rows of one name are a ladder: of those that speak the most urgent decides.", "seen", "in words", "on", "from grade", "over", "from size", "under", "state of the film", "when", "what to do", "why", "cautions")
	for o := range w.book.Observations() {
		w.row(o.Row, o.What, o.Name, join(o.On()), join(o.From()), w.show(o.Over), w.show(o.Size), w.show(o.Under), string(o.State), o.Urgency.String(), o.Do, o.Why, join(o.Cautions()))
	}
	w.sheet("Roughness of fouling", "", "condition", "rating", "sand roughness", "roughness over 50 mm", "resistance at 15 kn", "at 30 kn")
	for r := range w.book.Roughnesses() {
		w.row(r.Row, r.Name, r.Rating, w.show(r.Ks), w.show(r.Rt50), w.show(r.Slow), w.show(r.Fast))
	}
	w.sheet("Single numbers", "", "number", "value", "unit", "bound")
	for v := range w.book.Values() {
		w.row(v.Row, v.Name, numbers(v.Value), v.Unit, v.Bound)
	}
}

// suffix puts what must be known behind a list.
func suffix(s string) string {
	if s == "" {
		return ""
	}
	return ": " + s
}

func count(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}
