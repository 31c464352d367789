package law

import (
	"iter"
	"math"
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// classes is a set of biocide classes, one bit each.
type classes uint16

const (
	cuprous classes = 1 << iota
	metallic
	thiocyanate
	otherCopper
	copperFree
	organotin
	unknown
	free
)

func class(b tables.Biocide) classes {
	switch b {
	case tables.CuprousOxide:
		return cuprous
	case tables.MetallicCopper:
		return metallic
	case tables.CopperThiocyanate:
		return thiocyanate
	case tables.OtherCopper:
		return otherCopper
	case tables.CopperFree:
		return copperFree
	case tables.Organotin:
		return organotin
	case tables.NoBiocide:
		return free
	case tables.UnknownBiocide:
	}
	return unknown
}

func classesOf(bs iter.Seq[string]) classes {
	var out classes
	for b := range bs {
		out |= class(tables.Biocide(b))
	}
	return out
}

// film is what laws ask about a coating.
type film struct {
	c          *tables.Coating
	classes    classes // its class, and that of each of its actives
	unknown    bool    // nobody knows its biocide
	unlisted   bool    // an old film with biocide whose actives nobody listed
	low, high  float64 // metallic copper, per cent by weight of wet paint; only where a law of the desk asks
	unmeasured bool    // it holds copper, and how much is not given; as before
}

func (d *Desk) film(c *tables.Coating) film {
	f := film{c: c, classes: class(c.Biocide)}
	f.unknown = f.classes == unknown
	listed := false
	for a := range c.Actives() {
		listed = true
		row, err := d.b.Active(a.Key)
		if err != nil {
			f.unknown = true // its row is empty, of no class that anybody knows
		}
		f.classes |= class(row.Class)
		if d.weighs && row.Copper > 0 {
			if !a.Content.High.Given() {
				f.unmeasured = true
				continue
			}
			f.low = float64(a.Content.Low.Float(quantity.Percent)*row.Copper) + f.low
			f.high = float64(a.Content.High.Float(quantity.Percent)*row.Copper) + f.high
		}
	}
	if !listed {
		f.unlisted = c.Biocide != tables.NoBiocide
		f.unmeasured = c.Copper() || f.unknown
	}
	return f
}

// free reports whether the film is known to hold no biocide.
func (f *film) free() bool { return f.classes == free }

// match compares the coating with the law. For maybe it says what must be known, and the highest verdict that not knowing it
// deserves: an old film of a known class whose actives nobody listed is a caution, since few of them hold what is barred.
func (e *entry) match(f *film) (answer, string, finding.Verdict) {
	missing, most := "", finding.Fine
	open := func(what string, v finding.Verdict) {
		if missing == "" || v > most {
			missing, most = what, max(most, v)
		}
	}
	if e.classes != 0 && e.classes&f.classes == 0 {
		if !f.unknown {
			return no, "", 0
		}
		open("what biocide it holds", finding.Ask)
	}
	if len(e.actives) > 0 && !holdsOne(f.c, e.actives) {
		switch {
		case f.unknown:
			open("what biocide it holds", finding.Ask)
		case f.unlisted:
			open("which actives it holds", finding.Caution)
		default:
			return no, "", 0
		}
	}
	if len(e.mechs) > 0 && !slices.Contains(e.mechs, string(f.c.Mechanism)) {
		if f.c.Mechanism != tables.Unknown {
			return no, "", 0
		}
		open("what kind of film it is", finding.Ask)
	}
	if !math.IsInf(e.copper, 1) && f.low <= e.copper {
		if f.high <= e.copper && !f.unmeasured {
			return no, "", 0
		}
		open("how much copper it holds", finding.Ask)
	}
	if missing != "" {
		return maybe, missing, most
	}
	return yes, "", 0
}

func holdsOne(c *tables.Coating, keys []string) bool {
	for a := range c.Actives() {
		if slices.Contains(keys, a.Key) {
			return true
		}
	}
	return false
}
