package tables

import (
	"cmp"
	"slices"
)

// speaker is a row of coat over coat with what counts of its rank whatever the pair: its level, and the number of fields it gives.
type speaker struct {
	rank int
	row  *Overcoat
}

// closest is the most that naming the two closely adds to a speaker's rank.
const closest = 7

// What a field more counts in a row's rank, more than any naming, and a level, more than all fields.
const (
	aField = closest + 1
	aLevel = 8 * aField
)

// mostPairs bounds the coatings of a book whose pairs are all answered beforehand; a larger book answers each when it is asked.
const mostPairs = 250

// indexOvercoats notes the rows by their old field, the highest rank first and else in file order, and the answers of all pairs of the book's coatings.
func (b *Book) indexOvercoats() {
	b.onOld = map[string][]speaker{}
	for i := range b.overcoats.rows {
		o := &b.overcoats.rows[i]
		b.onOld[o.Old] = append(b.onOld[o.Old], speaker{weight(o), o})
	}
	for _, rows := range b.onOld {
		slices.SortStableFunc(rows, func(a, b speaker) int { return cmp.Compare(b.rank, a.rank) })
	}
	coats := b.coatings.rows
	if len(coats) > mostPairs {
		return
	}
	b.paired = len(coats)
	b.pairs = make([][2]*Overcoat, 0, len(coats)*len(coats))
	for i := range coats {
		coats[i].at = i
		for j := range coats {
			b.pairs = append(b.pairs, [2]*Overcoat{b.overcoatOf(&coats[i], &coats[j], false), b.overcoatOf(&coats[i], &coats[j], true)})
		}
	}
}

// own reports whether the book has answers of the coating beforehand, and it is as the book has it in all that rows of coat over coat ask.
func (b *Book) own(c *Coating) bool {
	if c.at >= b.paired {
		return false
	}
	o := &b.coatings.rows[c.at]
	return c.Key == o.Key && c.Mechanism == o.Mechanism && c.Role == o.Role && c.Biocide == o.Biocide && c.Packs == o.Packs && c.Strong == o.Strong
}

// weight is what a row counts by itself: its level before the number of fields that it gives.
func weight(o *Overcoat) int {
	rank := (int(Class) - int(o.Level)) * aLevel
	for _, gives := range []bool{o.New != "", o.Old != "", o.NewPacks != 0, o.OldPacks != 0, o.Solvent != "", o.Window != "", o.OldIs != ""} {
		if gives {
			rank += aField
		}
	}
	return rank
}

// OvercoatOf returns the row of coat over coat that answers the pair; false when no row speaks of it. Past says whether the old
// coat is past its overcoating window.
//
// Level bar is asked first, then same, pair and class; inside a level the row that gives the most fields answers, then the one
// that names the two most closely, then the harsher verdict, then the first of: rows that name no old coating, that name it by
// key, by mechanism, by role, as an antifouling; of those the first in the book. On a bare surface and for "no coating" only rows
// that name "none" speak.
//
// Basis: common practice, no source.
func (b *Book) OvercoatOf(next, old *Coating, past bool) (Overcoat, bool) {
	var o *Overcoat
	switch {
	case !b.own(next) || !b.own(old):
		o = b.overcoatOf(next, old, past)
	case past:
		o = b.pairs[next.at*b.paired+old.at][1]
	default:
		o = b.pairs[next.at*b.paired+old.at][0]
	}
	if o == nil {
		return Overcoat{}, false
	}
	return *o, true
}

// overcoatOf looks for the row that answers; nil when none does.
func (b *Book) overcoatOf(next, old *Coating, past bool) *Overcoat {
	words := [...]string{"", old.Key, string(old.Mechanism), string(old.Role), string(Antifouling)}
	var best *Overcoat
	most := 0
	for i, w := range words {
		if slices.Contains(words[:i], w) {
			continue // asked before
		}
		for _, s := range b.onOld[w] {
			if s.rank+closest < most {
				break
			}
			closely := names(s.row, next, old, past)
			if closely == 0 {
				continue
			}
			if r := s.rank + closely; r > most || r == most && s.row.Verdict > best.Verdict {
				most, best = r, s.row
			}
		}
	}
	return best
}

// names is 0 when the row does not speak of the pair, else 1 to closest: the higher, the more closely it names the two.
func names(o *Overcoat, next, old *Coating, past bool) int {
	nothingOver, onBare := next.Role == Bare, old.Mechanism == NoFilm
	if (nothingOver || onBare) && (!nothingOver || o.New != string(NoFilm)) && (!onBare || o.Old != string(NoFilm)) {
		return 0
	}
	closely := 1
	if o.New != "" {
		how := named(next, o.New)
		if how == 0 {
			return 0
		}
		closely += how
	}
	if o.Old != "" {
		how := named(old, o.Old)
		if how == 0 {
			return 0
		}
		closely += how
	}
	switch {
	case o.Level == SameOnSame && !sameKind(next, old),
		o.Except != "" && named(next, o.Except) > 0,
		o.NewPacks != 0 && o.NewPacks != next.Packs,
		o.OldPacks != 0 && o.OldPacks != old.Packs,
		o.Solvent != "" && (o.Solvent == "strong") != next.Strong,
		o.Window != "" && (o.Window == "past") != past,
		o.OldIs != "" && o.OldIs != old.Biocide:
		return 0
	}
	return closely
}

// named says how closely the word names the coating: 3 its key, 2 its mechanism or role, 1 the class of antifoulings, 0 not.
func named(c *Coating, word string) int {
	switch word {
	case c.Key:
		return 3
	case string(c.Mechanism):
		return 2
	case string(Antifouling):
		if c.Role == Antifouling || c.Role == OldFilm && fouls(c.Mechanism) {
			return 1
		}
	case string(c.Role):
		return 2
	}
	return 0
}

// fouls reports whether an old film of the mechanism is that of an antifouling. An old inert film is taken as epoxy, which any
// undercoat is.
func fouls(m Mechanism) bool {
	switch m {
	case Hard, Ablative, SelfPolishing, Hybrid, FoulRelease, ThinFilm, CopperLoaded, Soft:
		return true
	case Inert, Bitumen, Vinyl, Unknown, NoFilm:
	}
	return false
}

// sameKind reports whether both are of one mechanism that anybody knows.
func sameKind(next, old *Coating) bool {
	return next.Mechanism == old.Mechanism && next.Mechanism != "" && next.Mechanism != Unknown && next.Mechanism != NoFilm
}
