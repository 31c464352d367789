package compat

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// bare reports whether the layer stands for a surface with nothing on it.
func (l *Layer) bare() bool { return l.Coating.Mechanism == tables.NoFilm }

// found reports whether the layer was there before the work.
func (l *Layer) found() bool { return l.For == "" || l.For == Found }

// epoxy reports whether the layer is sound two-pack undercoat, or an old film of it: what a strip stops at.
func (l *Layer) epoxy() bool {
	c := &l.Coating
	if c.Packs != 2 || l.State != tables.Sound {
		return false
	}
	return c.Role == tables.Primer || c.Role == tables.Barrier || c.Role == tables.OldFilm && c.Mechanism == tables.Inert
}

// epoxyDepth returns how many layers from the bottom are sound epoxy, those that stand for the bare surface counted with them; 0 when
// none is.
func epoxyDepth(s Stack) int {
	n := 0
	for n < len(s) && s[n].bare() {
		n++
	}
	first := n
	for n < len(s) && s[n].epoxy() {
		n++
	}
	if n == first {
		return 0
	}
	return n
}

// barrierFilm returns the low end of the sound two-pack film that lies on the surface itself, in stacks that lie on each other; not
// given when there is none or none was measured.
func barrierFilm(below ...Stack) quantity.Film {
	var sum quantity.Film
	for _, s := range below {
		depth := epoxyDepth(s)
		for i := range s[:depth] {
			switch low := s[i].Film.Low; {
			case !low.Given():
			case !sum.Given():
				sum = low
			default:
				sum = sum.Add(low)
			}
		}
		if depth < len(s) {
			break
		}
	}
	return sum
}

// barred reports whether the material has a sound barrier of its least film below.
func barred(m *tables.Material, below ...Stack) bool {
	return m.Film.Low.Given() && barrierFilm(below...).Cmp(m.Film.Low) >= 0
}

// missing is the film that the material's barrier still lacks above the sound two-pack film found on the surface, which is less than its least
// (see barred); the whole of it when there is none or none was measured.
//
//	missing = film of the material − low end of the film found
func missing(m *tables.Material, below ...Stack) quantity.Range[quantity.Film] {
	film, there := m.Film, barrierFilm(below...)
	if !film.Low.Given() || !there.Given() {
		return film
	}
	return quantity.Range[quantity.Film]{Low: film.Low.Sub(there), Typical: film.Typical.Sub(there), High: film.High.Sub(there)}
}

// adrift returns the lowest sound barrier that lies on something else than the surface or sound epoxy, and what it lies on; nil when none does.
func adrift(below ...Stack) (barrier, on *Layer) {
	var last *Layer
	for _, s := range below {
		for i := range s {
			l := &s[i]
			if last != nil && l.Coating.Role == tables.Barrier && l.epoxy() && !last.bare() && !last.epoxy() {
				return l, last
			}
			last = l
		}
	}
	return nil, nil
}

// knownBiocide reports whether anybody knows what the film holds. Organotin paints were mixed with copper oxide as often as not.
func knownBiocide(b tables.Biocide) bool { return b != tables.UnknownBiocide && b != tables.Organotin }

// comesOff reports whether the material does not bear what the old film holds, or may hold.
func comesOff(m *tables.Material, c *tables.Coating) bool {
	if c.Mechanism == tables.NoFilm {
		return false
	}
	if knownBiocide(c.Biocide) {
		return m.Takes(c.Biocide) == tables.Never
	}
	return !m.OldCopper
}

// holdsCopper reports whether a policy for a copper class applies to the coating.
func holdsCopper(c *tables.Coating) bool { return knownBiocide(c.Biocide) && c.Copper() }
