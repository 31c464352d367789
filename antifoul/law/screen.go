package law

import (
	"iter"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Screen judges a coating that is to go on the boat. It is At and Desk.Screen in one call.
//
// The list is never empty. It holds one finding for each law that touches the coating, and one for each place at which none
// does: fine for a biocide-free coating, caution for any other, ask where the book does not hold the place.
//
// Basis: each finding carries its law's.
func Screen(b *tables.Book, c tables.Coating, craft Craft, at []Berth, on quantity.Date) finding.List {
	return At(b, craft, at, on).Screen(c)
}

// OldFilm judges a film that was found on the boat. It is At and Desk.OldFilm in one call.
//
// Basis: each finding carries its law's.
func OldFilm(b *tables.Book, old tables.Coating, craft Craft, at []Berth, on quantity.Date) finding.List {
	return At(b, craft, at, on).OldFilm(old)
}

// Cleaning judges cleaning the coating while the boat is afloat. It is At and Desk.Cleaning in one call.
//
// Basis: each finding carries its law's.
func Cleaning(b *tables.Book, c tables.Coating, craft Craft, at []Berth, on quantity.Date) finding.List {
	return At(b, craft, at, on).Cleaning(c)
}

// Papers lists what the boat must carry about her coating on an international voyage. Tonnage is not asked for: the finding
// says what changes from 400 GT. The list is never empty.
//
// Basis: each finding carries its law's.
func Papers(b *tables.Book, craft Craft, on quantity.Date) finding.List {
	d := At(b, craft, nil, on)
	var out finding.List
	for e := range d.of(ofPaper) {
		if h, ok := e.hits(nil); ok {
			out = append(out, d.told(h, ofPaper, "the boat", new(rooms)))
		}
	}
	if len(out) == 0 {
		out = append(out, finding.Finding{Rule: RulePaperSilent, Verdict: finding.Ask, About: "the boat"})
	}
	return out
}

// Screen judges a coating that is to go on the boat; see the function Screen.
//
// Basis: as of the function Screen.
func (d *Desk) Screen(c tables.Coating) finding.List { return d.judge(ofCoating, &c) }

// OldFilm judges a film that was found on the boat; see the function OldFilm.
//
// Basis: as of the function OldFilm.
func (d *Desk) OldFilm(old tables.Coating) finding.List {
	out := d.judge(ofOldFilm, &old)
	strip := slices.ContainsFunc(out, func(f finding.Finding) bool { return asks(f, finding.Strip) })
	for i := range out {
		if strip && asks(out[i], finding.Seal) { // what one place wants removed, no other place's sealer keeps
			out[i].First = []finding.Step{{Do: finding.Strip}}
		}
	}
	return out
}

func asks(f finding.Finding, a finding.Action) bool {
	return slices.ContainsFunc(f.First, func(s finding.Step) bool { return s.Do == a })
}

// Cleaning judges cleaning the coating while the boat is afloat; see the function Cleaning.
//
// Basis: as of the function Cleaning.
func (d *Desk) Cleaning(c tables.Coating) finding.List { return d.judge(ofCleaning, &c) }

// CleaningOpen reports whether a law leaves it open whether the coating may be cleaned afloat, and whether it is a law that names kinds of
// film, this one among them, and not one that asks of every coating with a biocide. A place that the book does not hold asks nothing
// here: it asks it of every coating.
func (d *Desk) CleaningOpen(c tables.Coating) (asked, named bool) {
	f := d.film(&c)
	for e := range d.of(ofCleaning) {
		h, ok := e.hits(&f)
		v := e.verdict
		if h.missing != "" {
			v = min(v, h.most)
		}
		if ok && v == finding.Ask {
			asked, named = true, named || len(e.mechs) > 0
		}
	}
	return asked, named
}

// hit is a law that speaks of a film, with what was not given and the highest verdict that this deserves.
type hit struct {
	e       *entry
	missing string
	most    finding.Verdict
}

// Forbids reports whether a finding of Screen forbids the coating.
//
// Basis: the laws of the book, each with its own.
func (d *Desk) Forbids(c *tables.Coating) bool { return d.forbids(ofCoating, c) }

// ForbidsCleaning reports whether a finding of Cleaning forbids it.
//
// Basis: the laws of the book, each with its own.
func (d *Desk) ForbidsCleaning(c *tables.Coating) bool { return d.forbids(ofCleaning, c) }

// forbids looks for one law that forbids for certain: what stays open, or what no law says, forbids nothing.
func (d *Desk) forbids(s subject, c *tables.Coating) bool {
	var f film
	for e := range d.of(s) {
		if e.verdict != finding.Forbidden || len(e.spots) == 0 || len(e.missing) > 0 {
			continue
		}
		if f.c == nil {
			f = d.film(c)
		}
		if fits, _, _ := e.match(&f); fits == yes {
			return true
		}
	}
	return false
}

// judge finds the laws first and makes their findings after, so that a list costs few allocations however long it is.
func (d *Desk) judge(s subject, c *tables.Coating) finding.List {
	f := d.film(c)
	var hits [24]hit // more are rare, and append makes room
	found := hits[:0]
	for e := range d.of(s) {
		if h, ok := e.hits(&f); ok {
			found = append(found, h)
		}
	}
	room := rooms{facts: make([]finding.Fact, 0, mostFacts*len(found)+len(d.spots)), basis: make([]finding.Basis, 0, len(found))}
	out := make(finding.List, 0, len(found)+len(d.spots))
	var few [16]bool
	spoken := few[:]
	if len(d.spots) > len(few) {
		spoken = make([]bool, len(d.spots))
	}
	for _, h := range found {
		told := d.told(h, s, c.Name, &room)
		out = append(out, told)
		if told.Verdict >= finding.Caution {
			for _, at := range h.e.spots {
				spoken[at] = true
			}
		}
	}
	for i := range d.spots {
		out = d.close(out, s, &f, i, spoken[i], &room)
	}
	return out
}

// hits compares the law with a film; nil for papers.
func (e *entry) hits(f *film) (hit, bool) {
	h := hit{e: e, most: finding.Ask}
	if len(e.spots) == 0 {
		return h, false
	}
	var open []string
	if f != nil {
		fits, what, v := e.match(f)
		switch fits {
		case no:
			return h, false
		case maybe:
			h.most, open = v, []string{what}
		case yes:
		}
	}
	h.missing = listed(append(slices.Clip(e.missing), open...))
	return h, h.missing == "" || e.verdict != finding.Fine // a leave that may not hold is none
}

// rooms are the two arrays in which all findings of one list keep their facts and bases.
type rooms struct {
	facts []finding.Fact
	basis []finding.Basis
}

// mostFacts is room for what a law tells, and one more; append makes more.
const mostFacts = 11

// note puts facts into the room and returns them; whoever appends to them gets a copy.
func (r *rooms) note(fs iter.Seq[finding.Fact], more ...finding.Fact) []finding.Fact {
	from := len(r.facts)
	r.facts = append(slices.AppendSeq(r.facts, fs), more...)
	return r.facts[from:len(r.facts):len(r.facts)]
}

func (r *rooms) rest(b finding.Basis) []finding.Basis {
	from := len(r.basis)
	r.basis = append(r.basis, b)
	return r.basis[from:len(r.basis):len(r.basis)]
}

// told returns the finding of a hit.
func (d *Desk) told(h hit, s subject, about string, room *rooms) finding.Finding {
	l, _ := d.b.Law(h.e.key) // a law of this book
	out := finding.Finding{Rule: s.speaks(h.e.verdict), Verdict: h.e.verdict, About: about, Against: d.spots[h.e.spots[0]].name, Basis: room.rest(l.Basis("verdict"))}
	if h.missing != "" {
		out.Rule, out.Verdict = RuleMayApply, min(h.e.verdict, h.most)
		out.Facts = room.note(l.Facts(), finding.Fact{Name: "missing", Value: h.missing})
		return out
	}
	out.Facts = room.note(l.Facts())
	for a := range l.Steps() {
		out.First = append(out.First, finding.Step{Do: a})
	}
	return out
}

// close says of one place what no law said: that its parts differ, that the book does not know it, or that the book is silent.
func (d *Desk) close(out finding.List, s subject, f *film, i int, spoken bool, room *rooms) finding.List {
	at := &d.spots[i]
	about := f.c.Name
	for j := range i {
		if d.spots[j].name == at.name && d.spots[j].place == at.place && d.spots[j].role == at.role {
			return out
		}
	}
	switch {
	case !at.given:
		return append(out, finding.Finding{Rule: RuleNoPlace, Verdict: finding.Ask, About: about, Against: at.name})
	case at.place == "":
		return append(out, finding.Finding{Rule: RuleUnknownPlace, Verdict: finding.Ask, About: about, Against: at.name})
	}
	if part, ok := d.parts(s, f, i); ok {
		return append(out, part)
	}
	if spoken {
		return out
	}
	rule, v := s.silence(f.free())
	read := finding.Fact{Name: "read", Value: "a date that is not known"}
	if at.read.Given() {
		read.Value = at.read
	}
	return append(out, finding.Finding{Rule: rule, Verdict: v, About: about, Against: at.name, Facts: room.note(slices.Values([]finding.Fact(nil)), read)})
}

// parts tells that laws of parts of the place speak of the film, when only the whole was named.
func (d *Desk) parts(s subject, f *film, i int) (finding.Finding, bool) {
	var names, titles []string
	worst := finding.Fine
	for e := range d.of(s) {
		if !slices.Contains(e.parts, i) {
			continue
		}
		fits, _, _ := e.match(f)
		if fits == no || e.verdict == finding.Fine {
			continue
		}
		worst = max(worst, min(e.verdict, finding.Ask))
		l, _ := d.b.Law(e.key) // a law of this book
		if !slices.Contains(names, l.Where()) {
			names = append(names, l.Where())
		}
		titles = append(titles, l.Name)
	}
	if len(names) == 0 {
		return finding.Finding{}, false
	}
	return finding.Finding{Rule: RuleWhichPart, Verdict: worst, About: f.c.Name, Against: d.spots[i].name, Facts: []finding.Fact{
		{Name: "parts", Value: strings.Join(names, "; ")}, {Name: "law", Value: strings.Join(titles, "; ")},
	}}, true
}
