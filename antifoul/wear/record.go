package wear

import (
	"fmt"
	"strconv"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Record is what was seen of one film from its launch on: a [[record]] section of a boat file.
type Record struct {
	Coating  string                        // key of the coating of the working film
	Launched quantity.Date                 // the day on which it went into the water
	Film     quantity.Range[quantity.Film] // working film laid over the signal on the flat, its low and high end
	Looks    []Look                        // in order of their days
}

// Look is one look at one zone: a sighting of the signal, or gauge readings of the working film that is left, or both.
type Look struct {
	On       quantity.Date
	Zone     string                        // key of a zone
	Laid     quantity.Range[quantity.Film] // working film laid there; not given: that of the record
	Signal   quantity.YesNo                // whether the signal shows; not said: nobody looked for it
	Film     quantity.Film                 // mean working film left; not given: not measured
	Readings int                           // gauge readings that the mean is of; 0: one
}

const mostLooks = 200

// Check returns every fault of the record. The keys are relative to it: "coating", "launched", "film", "look[2].on".
//
// Coating, launch, film and a look are needed. The coating wears away, the zones are those of the book, the looks stand in order of their days after
// the launch. A look says whether the signal shows, or what film is left, no more than was laid. Once the signal has shown in a
// zone, it does not go away, and no film is left over it.
func (r Record) Check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	c, err := b.Coating(r.Coating)
	switch {
	case r.Coating == "":
		bad(finding.ErrMissing, "coating", "", "the key of the coating of the working film")
	case err != nil:
		var keys []string
		for c := range b.Coatings() {
			keys = append(keys, c.Key)
		}
		bad(finding.ErrUnknown, "coating", entry.Describe(r.Coating), finding.Suggest(r.Coating, keys))
	case !c.Wears():
		bad(finding.ErrValue, "coating", entry.Describe(r.Coating), "a coating that wears away: ablative, self-polishing or hybrid")
	}
	if !r.Launched.Given() {
		bad(finding.ErrMissing, "launched", "", "the day on which the film went into the water, 2025-04-20")
	}
	checkFilm(bad, "film", r.Film, true)
	if len(r.Looks) == 0 || len(r.Looks) > mostLooks {
		bad(finding.ErrMissing, "look", strconv.Itoa(len(r.Looks))+" looks", fmt.Sprintf("from 1 to %d, [[record.look]]", mostLooks))
		return fs
	}
	shown := map[string]bool{}
	for i, l := range r.Looks {
		key := fmt.Sprintf("look[%d].", i+1)
		switch {
		case !l.On.Given():
			bad(finding.ErrMissing, key+"on", "", "the day of the look")
		case l.On.Before(r.Launched) || l.On.Equal(r.Launched):
			bad(finding.ErrImpossible, key+"on", l.On.String(), "after the launch, "+r.Launched.String())
		case i > 0 && l.On.Before(r.Looks[i-1].On):
			bad(finding.ErrImpossible, key+"on", l.On.String(), "looks in order of their days")
		}
		if _, err := b.Zone(l.Zone); err != nil {
			var keys []string
			for z := range b.Zones() {
				keys = append(keys, z.Key)
			}
			bad(finding.ErrUnknown, key+"zone", entry.Describe(l.Zone), finding.Suggest(l.Zone, keys))
		}
		checkFilm(bad, key+"laid", l.Laid, false)
		laid := l.laid(r)
		switch {
		case !l.Film.Given() && !l.Signal.Said():
			bad(finding.ErrMissing, key+"signal", "", "true or false, whether the signal shows; or the film that is left")
		case l.Film.Given() && l.Film.Sign() < 0:
			bad(finding.ErrImpossible, key+"film", l.Film.String(), "a film of nought or more")
		case l.Film.Given() && laid.High.Given() && l.Film.Cmp(laid.High.Scale(twice)) > 0:
			bad(finding.ErrImpossible, key+"film", l.Film.String(), "no more than was laid, "+laid.High.String()+"; the working film alone, without signal and primer")
		case l.Film.Given() && l.Signal.True():
			bad(finding.ErrImpossible, key+"film", l.Film.String(), "no film beside a signal that shows: it is worn through there")
		}
		if l.Readings < 0 || l.Readings > 100000 {
			bad(finding.ErrImpossible, key+"readings", strconv.Itoa(l.Readings), "a count of 1 or more")
		}
		if shown[l.Zone] && (l.Signal == quantity.No || l.Film.Sign() > 0) {
			bad(finding.ErrImpossible, key+"signal", "no signal in the zone "+l.Zone+", where an earlier look saw it", "a signal that has shown shows until she is painted; a new film is a record of its own")
		}
		shown[l.Zone] = shown[l.Zone] || l.Signal.True()
	}
	return fs
}

func checkFilm(bad func(kind error, key, got, want string), key string, f quantity.Range[quantity.Film], needed bool) {
	switch {
	case !f.Low.Given():
		if needed {
			bad(finding.ErrMissing, key, "", `the working film that was laid, ["100 um", "130 um", "160 um"]`)
		}
	case f.Low.Sign() <= 0 || f.Low.Cmp(f.Typical) > 0 || f.Typical.Cmp(f.High) > 0:
		bad(finding.ErrImpossible, key, f.Low.String(), "films above zero that rise: low, typical, high")
	}
}

// laid is the working film in the zone of the look.
func (l Look) laid(r Record) quantity.Range[quantity.Film] {
	if l.Laid.Low.Given() {
		return l.Laid
	}
	return r.Film
}

// afloat is how many months the film had been in the water, counted as Use.AfloatMonths from its launch.
func (l Look) afloat(r Record, u Use) float64 {
	return u.AfloatMonths(float64(r.Launched.DaysUntil(l.On)) / daysAMonth)
}
