package antifoul

import (
	"fmt"
	"iter"
	"slices"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Job is the whole answer for one boat.
type Job struct {
	Boat     Boat
	Book     *tables.Book
	Ranking  Ranking
	Wetted   coverage.Areas // of the hull, with the method that decided and what the others say
	Areas    []PartArea     // in the order of the parts
	Schemes  []Scheme       // one for each part that gets one, in the order of the parts
	Buy      []Bought
	Order    []Task
	Hours    quantity.Range[float64] // of one hand, all tasks
	Pads     coverage.Patches        // places where stands, blocks and chains touch
	Legal    finding.List            // of the boat and of what is on her: old films, papers
	Findings finding.List            // between parts, and of wishes that were refused
	Cautions []tables.Caution
	OldFilms []OldFilm                     // of parts of which something was seen or read
	Metals   []Metal                       // every two metals, and every potential read
	Supplies []coverage.Supplied           // what is used up beside the paint
	Waste    quantity.Range[quantity.Mass] // paint that comes off, as far as its film is known; its two ends
	OfWaste  finding.List                  // what is in it, and what was not measured
	Patches  []Patched                     // layers on the places where she stands, the lowest first
	PutOn    PutOn                         // whether the film that was asked for is there
	Growth   Growth                        // what growth would cost
	Season   Season                        // the plan of days
	Survey   *survey.Answer                // what was seen of her and what it asks for; nil when nothing was noted
	Days     quantity.Range[float64]       // working days of all hands, as they dry and come back; zero where nothing is painted
	Costs    Costs                         // in money, by own prices
	Timed    []TimedWork                   // what patches that were timed say
}

// Layers yields the layers of every scheme, part by part, bottom to top. It yields nothing when nothing may be used.
func (j *Job) Layers() iter.Seq2[string, compat.Layer] {
	return func(yield func(string, compat.Layer) bool) {
		for _, s := range j.Schemes {
			for _, l := range s.Stack {
				if !yield(s.Part, l) {
					return
				}
			}
		}
	}
}

// Scheme returns the scheme of the named part; false when it gets none.
func (j *Job) Scheme(part string) (Scheme, bool) {
	i := slices.IndexFunc(j.Schemes, func(s Scheme) bool { return s.Part == part })
	if i < 0 {
		return Scheme{}, false
	}
	return j.Schemes[i], true
}

// Without lists the parts that should be painted and for which nothing may be used or suits.
func (j *Job) Without() []string {
	var out []string
	for _, p := range j.Ranking.Parts {
		if _, ok := p.Best(); !ok && len(p.Left) == 0 {
			if _, wished := j.Scheme(p.Part); !wished {
				out = append(out, p.Part)
			}
		}
	}
	return out
}

// Plan answers the whole question for one boat: ranking, schemes, what to buy, the order of work, how long it lasts. Each part
// gets the first place of its ranking; a part other than the hull takes the hull's type where that stands in the same tier as
// its own first. The owner's wished coating is taken for the hull unless it is forbidden, and what speaks against it is said.
// The error is a finding.Faults with every fault of the boat; a part for which nothing may be used is no error, see
// Job.Without.
//
// Basis: derived; every finding, layer and number names the row that it rests on, with that row's basis.
func Plan(b *tables.Book, boat Boat) (*Job, error) {
	if err := ready(b, boat); err != nil {
		return nil, err
	}
	j := &Job{Boat: boat, Book: b}
	boat, err := boat.fitted(b)
	if err != nil {
		return nil, err
	}
	j.Ranking = rank(b, j.Boat, boat)
	boat = boat.filled(b)
	if j.Areas, j.Wetted, err = partAreas(b, boat); err != nil {
		return nil, err
	}
	hullType := ""
	if p, ok := j.choose(b, j.Ranking.Hull(), boat.Wishes.Coating); ok {
		hullType = p.Key
	}
	for i, pr := range j.Ranking.Parts {
		place, ok := pr.Best()
		if pr.Zone == HullZone {
			place, ok = j.choose(nil, pr, boat.Wishes.Coating)
		} else if same, found := pr.Of(hullType); ok && found && same.Tier == place.Tier {
			place = same
		}
		if !ok {
			continue
		}
		s, err := specify(b, boat, boat.Parts[i], j.Areas[i], place)
		if err != nil {
			return nil, err
		}
		j.Schemes = append(j.Schemes, s)
	}
	if hull, ok := j.Scheme(j.Ranking.Hull().Part); ok && len(hull.Coats) > 0 { // else nothing is painted where she stands
		if j.Pads, err = coverage.Pads(b, boat.Hull); err != nil {
			return nil, prefixed(err, "hull")
		}
	}
	j.betweenParts(b)
	j.legal(b)
	if j.Patches, err = patched(b, boat, j.Schemes, j.Ranking.Hull().Part, j.Pads); err != nil {
		return nil, err
	}
	j.Order = order(b, boat, j.Schemes, j.Areas, j.Pads.Count, j.besideLeg())
	if j.Buy, err = buy(b, boat, j.Order, j.Patches); err != nil {
		return nil, err
	}
	for _, t := range j.Order {
		j.Hours = quantity.Range[float64]{Low: j.Hours.Low + t.Hours.Low, Typical: j.Hours.Typical + t.Hours.Typical, High: j.Hours.High + t.Hours.High}
	}
	j.launchTooSoon(b)
	if err := j.oldFilms(b); err != nil {
		return nil, err
	}
	if err := j.metals(b); err != nil {
		return nil, err
	}
	if err := j.supplies(b, boat); err != nil {
		return nil, err
	}
	if err := j.putOn(b, boat); err != nil {
		return nil, err
	}
	if err := j.surveyed(b); err != nil {
		return nil, err
	}
	j.Growth = grown(b, boat)
	if err := j.season(b, boat); err != nil {
		return nil, err
	}
	j.timed(b, boat)
	if err := j.costs(b, boat); err != nil {
		return nil, err
	}
	j.Cautions = j.cautions(b, boat)
	return j, nil
}

// choose returns the place that the hull gets: the wished type unless it is barred, else the best. With a book it notes what
// became of the wish.
func (j *Job) choose(note *tables.Book, pr PartRanking, wish string) (Place, bool) {
	best, ok := pr.Best()
	if wish == "" {
		return best, ok
	}
	p, found := pr.Of(wish)
	if !found {
		return best, ok
	}
	rule, v := finding.ID(""), finding.Caution
	switch p.Tier {
	case Barred:
		rule, v, p = RuleWishRefused, finding.Forbidden, best
	case Unsuited:
		rule = RuleWishUnsuited
	default: // it is planned as wished
	}
	if note != nil && rule != "" {
		c, err := note.Coating(wish)
		if err == nil {
			j.Findings = append(j.Findings, finding.Finding{Rule: rule, Verdict: v, About: c.Name, Against: pr.Part})
		}
	}
	return p, ok || rule != RuleWishRefused
}

// legal asks the law about the old films and about the boat's papers.
func (j *Job) legal(b *tables.Book) {
	desk := law.At(b, j.Boat.Craft(), j.Boat.berths(), j.Boat.On)
	for _, p := range j.Boat.Parts {
		found := p.Found
		if len(found) == 0 && !unpainted(b, p) {
			if c, err := b.Coating(tables.UnknownOld); err == nil {
				found = compat.Stack{{Coating: c}}
			}
		}
		for _, l := range found {
			j.Legal = append(j.Legal, desk.OldFilm(l.Coating)...)
		}
	}
	j.Legal = append(j.Legal, law.Papers(b, j.Boat.Craft(), j.Boat.On)...)
	j.Legal = dedupe(j.Legal)
}

// dedupe drops findings that say the same of the same a second time: what lies on two parts is asked about twice.
func dedupe(fs finding.List) finding.List {
	var out finding.List
	seen := map[string]bool{}
	for _, f := range fs {
		key := fmt.Sprintf("%q %v %q %q %v", f.Rule, f.Verdict, f.About, f.Against, f.Facts)
		if !seen[key] {
			out = append(out, f)
		}
		seen[key] = true
	}
	return out
}
