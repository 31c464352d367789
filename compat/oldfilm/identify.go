package oldfilm

import (
	"cmp"
	"slices"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
)

// Standing is how an old film stands after what was seen.
type Standing uint8

// The standings, from the best.
const (
	Likely   Standing = iota + 1 // something speaks for it and nothing against it
	Possible                     // nothing was seen either way
	Unlikely                     // something speaks against it
	RuledOut                     // something that settles speaks against it
)

// String returns the standing in a word.
func (s Standing) String() string {
	words := []string{"likely", "possible", "unlikely", "ruled out"}
	if s < Likely || int(s) > len(words) {
		return "not judged"
	}
	return words[s-1]
}

// Candidate is one old film that may be there.
type Candidate struct {
	Film     tables.Coating
	Standing Standing
	For      []tables.Sign
	Against  []tables.Sign
	Finding  finding.Finding
}

// Answer is what signs tell of an old film.
type Answer struct {
	Films    []Candidate  // every old film of the book that the material can carry, best first
	Settle   []string     // tests not made yet that tell the films still standing apart, the most telling first
	Hazards  []string     // keys of the cautions of every film that is not ruled out
	Findings finding.List // of the signs together; empty when they agree
}

// Identify judges each old film that the material can carry by the signs seen: likely when something speaks for it and nothing against
// it, unlikely when something does, ruled out only by a sign that settles. Films of equal standing are ordered by how many signs speak
// for them, less those against, then by the book. "Not identified" itself is no candidate.
//
// The error is a finding.Faults for a material or a sign that the book does not hold.
//
// Basis: the signs' rows, common practice.
func Identify(b *tables.Book, material string, seen []string) (Answer, error) {
	signs, err := asked(b, material, seen)
	if err != nil {
		return Answer{}, err
	}
	var a Answer
	for film := range b.Coatings() {
		if film.Role != tables.OldFilm || film.Key == tables.UnknownOld || !film.MadeFor(material) {
			continue
		}
		a.Films = append(a.Films, candidate(film, signs))
	}
	slices.SortStableFunc(a.Films, func(x, y Candidate) int {
		return cmp.Or(cmp.Compare(x.Standing, y.Standing), cmp.Compare(len(y.For)-len(y.Against), len(x.For)-len(x.Against)))
	})
	for i := range a.Films {
		c := &a.Films[i]
		if c.Standing == RuledOut {
			continue
		}
		for h := range c.Film.Hazards() {
			if !slices.Contains(a.Hazards, h) {
				a.Hazards = append(a.Hazards, h)
			}
		}
	}
	a.Settle = settle(b, a.Films, signs)
	if len(signs) > 0 && !slices.ContainsFunc(a.Films, func(c Candidate) bool { return c.Standing == Likely }) {
		a.Findings = append(a.Findings, finding.Finding{Rule: RuleConflict, Verdict: finding.Ask})
	}
	return a, nil
}

// asked returns the signs of the keys.
func asked(b *tables.Book, material string, seen []string) ([]tables.Sign, error) {
	var fs finding.Faults
	if _, err := b.Material(material); err != nil {
		var known []string
		for m := range b.Materials() {
			known = append(known, m.Key)
		}
		fs = append(fs, finding.Fault{Kind: finding.ErrUnknown, Key: "material", Got: entry.Describe(material), Want: finding.Suggest(material, known)})
	}
	var known []string
	for s := range b.Signs() {
		known = append(known, s.Key)
	}
	var out []tables.Sign
	for _, key := range seen {
		s, err := b.Sign(key)
		switch {
		case err != nil:
			fs = append(fs, finding.Fault{Kind: finding.ErrUnknown, Key: "sign", Got: entry.Describe(key), Want: finding.Suggest(key, known)})
		case !slices.ContainsFunc(out, func(o tables.Sign) bool { return o.Key == s.Key }):
			out = append(out, s)
		}
	}
	return out, fs.Err()
}

// candidate judges one film by the signs.
func candidate(film tables.Coating, signs []tables.Sign) Candidate {
	c := Candidate{Film: film, Standing: Possible}
	f := finding.Finding{Rule: RuleMayBe, Verdict: finding.Ask, About: film.Name}
	settled := false
	for _, s := range signs {
		if speaks(s.For(), film.Key) {
			c.For = append(c.For, s)
		}
		if speaks(s.Against(), film.Key) {
			c.Against = append(c.Against, s)
			settled = settled || s.Settles
		}
	}
	told := c.For
	switch {
	case settled:
		c.Standing, f.Rule, f.Verdict, told = RuledOut, RuleRuledOut, finding.Fine, c.Against
	case len(c.Against) > 0:
		c.Standing, f.Rule, told = Unlikely, RuleUnlikely, c.Against
	case len(c.For) > 0:
		c.Standing, f.Rule = Likely, RuleLooksLike
	}
	var what []string
	for _, s := range told {
		what = append(what, s.Says)
		f.Basis = append(f.Basis, s.Basis("for"))
	}
	f.Facts = []finding.Fact{{Name: "seen", Value: strings.Join(what, "; ")}}
	c.Finding = f
	return c
}

func speaks(films func(func(string) bool), key string) bool {
	for k := range films {
		if k == key {
			return true
		}
	}
	return false
}

// settle lists the tests not made yet of which some sign speaks of one film still standing and not alike of another, those that speak of
// most films first; of these the ones that settle.
func settle(b *tables.Book, films []Candidate, made []tables.Sign) []string {
	type test struct {
		name    string
		tells   int
		settles bool
	}
	var tests []test
	for s := range b.Signs() {
		if slices.ContainsFunc(made, func(o tables.Sign) bool { return o.Test == s.Test }) {
			continue
		}
		pro, con, silent := 0, 0, 0
		for _, c := range films {
			switch {
			case c.Standing >= Unlikely:
			case speaks(s.For(), c.Film.Key):
				pro++
			case speaks(s.Against(), c.Film.Key):
				con++
			default:
				silent++
			}
		}
		if max(pro, con, silent) == pro+con+silent {
			continue // it says the same of all, or nothing of any
		}
		i := slices.IndexFunc(tests, func(t test) bool { return t.name == s.Test })
		if i < 0 {
			i = len(tests)
			tests = append(tests, test{name: s.Test})
		}
		tests[i].tells = max(tests[i].tells, pro+con)
		tests[i].settles = tests[i].settles || s.Settles
	}
	slices.SortStableFunc(tests, func(x, y test) int {
		if x.settles != y.settles {
			if x.settles {
				return -1
			}
			return 1
		}
		return cmp.Compare(y.tells, x.tells)
	})
	var out []string
	for _, t := range tests {
		out = append(out, t.name)
	}
	return out
}
