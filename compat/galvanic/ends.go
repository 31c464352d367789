package galvanic

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Flowing is the list of potentials that Of asks: the longest of the book, in flowing seawater.
const Flowing = "ACA flowing seawater"

// The states of a metal that knows two.
const (
	Passive = "passive"
	Active  = "active"
)

// Metal is one metal of a list of potentials.
type Metal struct {
	Name  string // as the list names it: "mild steel"
	State string // Passive or Active, for a metal that knows both; empty: either may be
}

// String returns the metal with its state.
func (m Metal) String() string {
	if m.State == "" {
		return m.Name
	}
	return m.Name + ", " + m.State
}

// ends are the noblest and the least noble potential of some rows of one list.
type ends struct {
	name      string
	noble     quantity.Potential
	active    quantity.Potential
	electrode string   // of the list
	states    []string // those of the rows, each once
	basis     []finding.Basis
}

// span widens the ends by a row.
func (e *ends) span(p *tables.Potential) {
	if len(e.basis) == 0 || p.Noble.Cmp(e.noble) > 0 {
		e.noble = p.Noble
	}
	if len(e.basis) == 0 || p.Active.Cmp(e.active) < 0 {
		e.active = p.Active
	}
	e.electrode = p.Electrode
	if p.State != "" && !slices.Contains(e.states, p.State) {
		e.states = append(e.states, p.State)
	}
	if basis := p.Basis("noble"); !slices.Contains(e.basis, basis) {
		e.basis = append(e.basis, basis)
	}
}

// listed returns the ends of a metal in a list; the fault names the near ones.
func listed(b *tables.Book, series string, m Metal, key string) (ends, finding.Faults) {
	out := ends{name: m.String()}
	var lists, names, states []string
	for p := range b.Potentials() {
		if !slices.Contains(lists, p.Series) {
			lists = append(lists, p.Series)
		}
		if p.Series != series {
			continue
		}
		if !slices.Contains(names, p.Name) {
			names = append(names, p.Name)
		}
		if p.Name != m.Name {
			continue
		}
		states = append(states, p.State)
		if m.State == "" || p.State == m.State {
			out.span(&p)
		}
	}
	switch {
	case len(names) == 0:
		return out, finding.Faults{{Kind: finding.ErrUnknown, Key: "series", Got: entry.Describe(series), Want: finding.Suggest(series, lists)}}
	case len(states) == 0:
		return out, finding.Faults{{Kind: finding.ErrUnknown, Key: key, Got: entry.Describe(m.Name), Want: finding.Suggest(m.Name, names)}}
	case len(out.basis) == 0:
		return out, finding.Faults{{Kind: finding.ErrValue, Key: key + ".state", Got: entry.Describe(m.State), Want: "a state that the list gives for " + m.Name + ", or none"}}
	}
	return out, nil
}

// made returns the ends of everything that the list Flowing gives for a material of the book, for each of its states; none when it gives
// nothing.
func made(b *tables.Book, m *tables.Material) []ends {
	var out []ends
	for _, state := range []string{"", Passive, Active} {
		e := ends{name: Metal{m.Name, state}.String()}
		for p := range b.Potentials() {
			if p.Series == Flowing && p.Material == m.Key && p.State == state {
				e.span(&p)
			}
		}
		if len(e.basis) > 0 {
			out = append(out, e)
		}
	}
	return out
}
