package compat

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// tooThick judges the old paint above sound epoxy: where its measured films add up to more than the threshold "film", by their
// typical values, it comes off whatever its state. Films that nobody measured count as nothing.
//
// Basis: common practice, 500 to 750 um.
func tooThick(b *tables.Book, found Stack) (finding.Finding, bool) {
	limit, err := b.Threshold("film")
	if err != nil {
		return finding.Finding{}, false
	}
	var total quantity.Film
	for i := epoxyDepth(found); i < len(found); i++ {
		film := found[i].Film.Typical
		switch {
		case !film.Given():
		case total.Given():
			total = total.Add(film)
		default:
			total = film
		}
	}
	if !total.Given() || total.Float(quantity.Micrometre) <= limit.Strip.Typical {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Rule: RuleTooThick, Verdict: finding.Forbidden, About: found[len(found)-1].Coating.Name,
		Facts: []finding.Fact{{Name: "film", Value: total}, {Name: "limit", Value: quantity.Micrometre.N(int64(limit.Strip.Typical))}}, Basis: []finding.Basis{limit.Basis("strip")},
	}, true
}

// suspect reports whether a film may hold what must be known before anyone scrapes it: it is unidentified, or holds organotin.
func suspect(found Stack) bool {
	for i := range found {
		if found[i].Coating.Biocide == tables.UnknownBiocide || found[i].Coating.Biocide == tables.Organotin {
			return true
		}
	}
	return false
}

// sheds reports whether a film is one that nothing sticks to, silicone.
func sheds(found Stack) bool {
	for i := range found {
		if found[i].Coating.Mechanism == tables.FoulRelease {
			return true
		}
	}
	return false
}
