package survey

import (
	"slices"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// differs says where a look does not agree with what is said of the part: its uppermost film, that film's colour, its state.
func (a *answering) differs(b *tables.Book, s Survey, parts []compat.Part, states map[string][]tables.Condition) {
	for _, p := range s.Seen {
		part, _ := partOf(parts, p.Part)
		var top compat.Layer
		if n := len(part.Found); n > 0 {
			top = part.Found[n-1]
		}
		about := where(b, p)
		say := func(rule finding.ID, seen, taken string) {
			a.Differs = append(a.Differs, finding.Finding{Rule: rule, Verdict: finding.Ask, About: about, Facts: []finding.Fact{{Name: "seen", Value: seen}, {Name: "taken", Value: taken}}})
		}
		if c, err := b.Coating(p.Coating); err == nil && !alike(c, top.Coating) {
			taken := top.Coating.Name
			if taken == "" {
				taken = "not reported"
			}
			say(RuleCoatingDiffers, c.Name, taken)
		}
		if len(p.Colours) > 0 && top.Colour != "" && p.Colours[0] != top.Colour {
			say(RuleColourDiffers, colour(b, p.Colours[0]), colour(b, top.Colour))
		}
	}
	for _, part := range parts {
		a.stateDiffers(b, part, states[part.Name])
	}
}

// alike reports whether the film seen may be the one that was found: the same, or an old film of that mechanism.
func alike(seen, found tables.Coating) bool {
	return seen.Key == found.Key || seen.Role == tables.OldFilm && seen.Mechanism == found.Mechanism && found.Key != "" && seen.Mechanism != ""
}

func colour(b *tables.Book, key string) string {
	if c, err := b.Colour(key); err == nil {
		return c.Name
	}
	return key
}

// stateDiffers holds the worst state seen on the part against the state that what follows rests on, readings counted in.
func (a *answering) stateDiffers(b *tables.Book, part compat.Part, seen []tables.Condition) {
	seen = slices.DeleteFunc(slices.Clone(seen), func(c tables.Condition) bool { return c == "" || c == tables.NotReported })
	n := len(part.Found)
	if len(seen) == 0 || n == 0 {
		return
	}
	rank := func(c tables.Condition) finding.Verdict {
		row, err := b.Condition(c)
		if err != nil {
			return finding.Ask
		}
		return row.Verdict
	}
	worst := slices.MaxFunc(seen, func(x, y tables.Condition) int { return int(rank(x)) - int(rank(y)) })
	taken := part.AsRead(b).Found[n-1].State
	f := finding.Finding{About: part.Name, Facts: []finding.Fact{{Name: "seen", Value: string(worst)}, {Name: "taken", Value: string(taken)}}}
	for _, c := range []tables.Condition{worst, taken} {
		if row, err := b.Condition(c); err == nil {
			f.Basis = append(f.Basis, row.Basis("verdict"))
		}
	}
	switch {
	case taken == "" || taken == tables.NotReported:
		f.Rule, f.Verdict = RuleStateNotReported, finding.Ask
	case rank(worst) > rank(taken):
		f.Rule, f.Verdict = RuleStateWorse, finding.Ask
	case rank(worst) < rank(taken):
		f.Rule, f.Verdict = RuleStateMilder, finding.Caution
	default:
		return
	}
	a.Differs = append(a.Differs, f)
}
