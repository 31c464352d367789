package compat

import (
	"boatyard.example/bottomwork/tables"
)

// bestRow returns the row of coat over coat that answers the pair.
func bestRow(b *tables.Book, next, old *tables.Coating, past bool) (best tables.Overcoat, ok bool) {
	rank := 0
	for row := range b.OvercoatsOn(*old) {
		r := rowRank(&row, next, old, past)
		if r == 0 || r < rank {
			continue
		}
		if r == rank && row.Verdict <= best.Verdict {
			continue
		}
		rank, best, ok = r, row, true
	}
	return best, ok
}

// rowRank is 0 when the row does not speak of the pair, else the higher the more it counts: by level, then by the number of
// fields that it gives, then by how closely it names the two.
func rowRank(o *tables.Overcoat, next, old *tables.Coating, past bool) int {
	none := string(tables.NoFilm)
	nothingOver, onBare := next.Role == tables.Bare, old.Mechanism == tables.NoFilm
	if (nothingOver || onBare) && !(nothingOver && o.New == none) && !(onBare && o.Old == none) {
		return 0
	}
	if o.Level == tables.SameOnSame && !sameKind(next, old) {
		return 0
	}
	fields, closely := 0, 0
	for _, side := range [2]struct {
		word string
		c    *tables.Coating
	}{{o.New, next}, {o.Old, old}} {
		if side.word == "" {
			continue
		}
		how := named(side.word, side.c)
		if how == 0 {
			return 0
		}
		fields++
		closely += how
	}
	if o.Except != "" && named(o.Except, next) > 0 {
		return 0
	}
	if o.NewPacks != 0 {
		if o.NewPacks != next.Packs {
			return 0
		}
		fields++
	}
	if o.OldPacks != 0 {
		if o.OldPacks != old.Packs {
			return 0
		}
		fields++
	}
	if o.Solvent != "" {
		if (o.Solvent == "strong") != next.Strong {
			return 0
		}
		fields++
	}
	if o.Window != "" {
		if (o.Window == "past") != past {
			return 0
		}
		fields++
	}
	if o.OldIs != "" {
		if o.OldIs != old.Biocide {
			return 0
		}
		fields++
	}
	return (int(tables.Class)-int(o.Level)+1)*1000 + fields*10 + closely + 1
}

// named says how closely the word names the coating: 3 its key, 2 its mechanism or role, 1 the class of antifoulings, 0 not.
func named(word string, c *tables.Coating) int {
	switch {
	case word == c.Key:
		return 3
	case word == string(c.Mechanism):
		return 2
	case word == string(tables.Antifouling):
		if c.Role == tables.Antifouling || c.Role == tables.OldFilm && fouls(c.Mechanism) {
			return 1
		}
	case word == string(c.Role):
		return 2
	}
	return 0
}

// fouls reports whether an old film of the mechanism is that of an antifouling. An old inert film is taken as epoxy, which any
// undercoat is.
func fouls(m tables.Mechanism) bool {
	switch m {
	case tables.Hard, tables.Ablative, tables.SelfPolishing, tables.Hybrid, tables.FoulRelease, tables.ThinFilm, tables.CopperLoaded, tables.Soft:
		return true
	case tables.Inert, tables.Bitumen, tables.Vinyl, tables.Unknown, tables.NoFilm:
	}
	return false
}

// sameKind reports whether both are of one mechanism that anybody knows.
func sameKind(next, old *tables.Coating) bool {
	return next.Mechanism == old.Mechanism && next.Mechanism != "" && next.Mechanism != tables.Unknown && next.Mechanism != tables.NoFilm
}
