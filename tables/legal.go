package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Place is where a boat is painted, kept or visits, as far as the law tells places apart.
type Place struct {
	Row
	Within string // key of the place it lies in; empty for the world
	Water  string // the one water the place has (a lake is fresh); empty: it has several, or nobody said
}

func readPlace(r *entry.Row) Place {
	return Place{Row: readRow(r), Within: r.Text("within"), Water: r.Word("water", waterWords...)}
}

// Law is one rule of law at a place. An empty condition does not narrow it; all conditions that are given must hold.
type Law struct {
	Row
	Place    string
	Says     string // what it says, in our words
	Verdict  finding.Verdict
	Subject  string        // coating, old film, cleaning, paper
	From, To quantity.Date // first and last day on which it is in force; not given: no such end
	ReadOn   quantity.Date // when the text was read

	LengthMin   quantity.Length // applies from this length
	LengthMax   quantity.Length // applies up to and with this length
	LengthBelow quantity.Length // applies below this length
	MassMin     quantity.Mass   // applies from this boat mass
	MassAbove   quantity.Mass   // applies above this boat mass
	MassBelow   quantity.Mass   // applies below this boat mass

	CopperMax  quantity.Share   // speaks of content above this, as metallic copper by weight of wet paint
	ReleaseMax quantity.Release // the release that it sets as a limit; a figure of the product, not of the type
	Within     quantity.Months  // time that it leaves for the work

	biocides []string
	actives  []string
	mechs    []string
	exempt   []string
	roles    []string
	waters   []string
	steps    []finding.Action

	where string   // name of its place
	lies  []string // the places that its place lies in, itself first
	facts []finding.Fact
}

// Biocides lists the biocide classes it speaks of; none: every coating.
func (l *Law) Biocides() iter.Seq[string] { return slices.Values(l.biocides) }

// Actives lists the actives it speaks of.
func (l *Law) Actives() iter.Seq[string] { return slices.Values(l.actives) }

// Mechanisms lists the mechanisms it speaks of (in-water cleaning of soft films); none: all.
func (l *Law) Mechanisms() iter.Seq[string] { return slices.Values(l.mechs) }

// Exempt lists the hull materials that it leaves out.
func (l *Law) Exempt() iter.Seq[string] { return slices.Values(l.exempt) }

// Roles lists what a berth must be for the law to bite: painted, kept, visited, cleaned; none: all.
func (l *Law) Roles() iter.Seq[string] { return slices.Values(l.roles) }

// Waters lists the waters it speaks of; none: all.
func (l *Law) Waters() iter.Seq[string] { return slices.Values(l.waters) }

// Steps lists the work that it asks for, in order; given when its verdict is needs.
func (l *Law) Steps() iter.Seq[finding.Action] { return slices.Values(l.steps) }

// Where returns the name of the law's place.
func (l *Law) Where() string { return l.where }

// LiesIn reports whether the law's place is the place of the key, or lies in it.
func (l *Law) LiesIn(place string) bool { return slices.Contains(l.lies, place) }

// Facts lists what a finding tells of the law: law, says, place; then from, to, content, release, within, read and doubt where
// the row gives them.
func (l *Law) Facts() iter.Seq[finding.Fact] { return slices.Values(l.facts) }

// place returns the place of a key that checkReferences found.
func (b *Book) place(key string) *Place { return &b.places.rows[b.places.at[key]] }

// upwards lists the place and those that it lies in, itself first.
func (b *Book) upwards(place string) []string {
	var out []string
	for key := place; key != ""; key = b.place(key).Within {
		out = append(out, key)
	}
	return out
}

// settleLaws works out once what every question would work out again: where each law's place lies, and the law's facts.
func (b *Book) settleLaws() {
	for i := range b.laws.rows {
		l := &b.laws.rows[i]
		l.where, l.lies = b.place(l.Place).Name, b.upwards(l.Place)
		l.facts = []finding.Fact{{Name: "law", Value: l.Name}, {Name: "says", Value: l.Says}, {Name: "place", Value: l.where}}
		add := func(given bool, name string, v any) {
			if given {
				l.facts = append(l.facts, finding.Fact{Name: name, Value: v})
			}
		}
		add(l.From.Given(), "from", l.From)
		add(l.To.Given(), "to", l.To)
		add(l.CopperMax.Given(), "content", l.CopperMax)
		add(l.ReleaseMax.Given(), "release", l.ReleaseMax)
		add(l.Within.Given(), "within", l.Within)
		add(l.ReadOn.Given(), "read", l.ReadOn)
		doubt := l.Basis("verdict").Doubt
		add(doubt != "", "doubt", doubt)
	}
}

// World is the key of the place that all others lie in.
const World = "world"

// indexLaws notes for each place which laws may touch a boat there.
func (b *Book) indexLaws() {
	b.near = make(map[string][]bool, len(b.places.rows))
	for i := range b.places.rows {
		place := b.places.rows[i].Key
		above, near := b.upwards(place), make([]bool, len(b.laws.rows))
		for j := range b.laws.rows {
			l := &b.laws.rows[j]
			near[j] = l.LiesIn(place) || l.Place == World || slices.Contains(above, l.Place)
		}
		b.near[place] = near
	}
}

// LawsNear lists, in the order of the book, the laws of the places, of those that they lie in up to the world, and of those that lie in them; for a place
// that the book does not hold, all.
func (b *Book) LawsNear(places []string) iter.Seq[Law] {
	var near [][]bool
	for _, p := range places {
		n, ok := b.near[p]
		if !ok {
			return b.Laws()
		}
		near = append(near, n)
	}
	return func(yield func(Law) bool) {
		for i := range b.laws.rows {
			if slices.ContainsFunc(near, func(n []bool) bool { return n[i] }) && !yield(b.laws.rows[i]) {
				return
			}
		}
	}
}

// BerthRoles lists what a place can be to a boat.
func BerthRoles() []string { return []string{"painted", "kept", "visited", "cleaned"} }

func readLaw(r *entry.Row) Law {
	l := Law{
		Row:     readRow(r),
		Place:   r.Text("place"),
		Says:    r.Text("says"),
		Verdict: readVerdict(r),
		Subject: r.Word("subject", "coating", "old film", "cleaning", "paper"),
		From:    r.Date("from"),
		To:      r.Date("to"),
		ReadOn:  r.Date("read_on"),

		LengthMin:   entry.Amount[quantity.Length](r, "length_min"),
		LengthMax:   entry.Amount[quantity.Length](r, "length_max"),
		LengthBelow: entry.Amount[quantity.Length](r, "length_below"),
		MassMin:     entry.Amount[quantity.Mass](r, "mass_min"),
		MassAbove:   entry.Amount[quantity.Mass](r, "mass_above"),
		MassBelow:   entry.Amount[quantity.Mass](r, "mass_below"),

		CopperMax:  entry.Amount[quantity.Share](r, "copper_max"),
		ReleaseMax: entry.Amount[quantity.Release](r, "release_max"),
		Within:     entry.Amount[quantity.Months](r, "within"),

		biocides: r.Words("biocides", biocideWords...),
		actives:  r.Texts("actives"),
		mechs:    r.Words("mechanisms", mechanismWords...),
		exempt:   r.Texts("exempt"),
		roles:    r.Words("roles", BerthRoles()...),
		waters:   r.Words("waters", waterWords...),
		steps:    readActions(r, "steps"),
	}
	r.Need("text", "place", "says", "subject")
	r.Need("the date on which the rule was read, 2026-11-25", "read_on")
	if l.To.Before(l.From) {
		r.Fault(finding.ErrImpossible, "to", l.To.String(), "not before from")
	}
	if l.Verdict == finding.Needs && len(l.steps) == 0 {
		r.Fault(finding.ErrMissing, "steps", "", "the work that the law asks for")
	}
	return l
}

// ActiveRow is one biocide.
type ActiveRow struct {
	Row
	CAS     string
	Formula string
	Class   Biocide
	Copper  float64 // mass share of copper, from standard atomic weights
	Zinc    float64 // mass share of zinc, the same way; none where the row does not give one
}

func readActive(r *entry.Row) ActiveRow {
	a := ActiveRow{Row: readRow(r), CAS: r.Text("cas"), Formula: r.Text("formula"), Class: Biocide(r.Word("class", biocideWords...))}
	a.Copper, _ = r.Float("copper_share", 0, 1)
	a.Zinc, _ = r.Float("zinc_share", 0, 1)
	r.Need("one of the biocide classes", "class")
	r.Need("the mass share of copper, 0 to 1", "copper_share")
	if a.Copper+a.Zinc > 1 {
		r.Fault(finding.ErrImpossible, "zinc_share", entry.Describe(a.Zinc), "with copper_share no more than 1")
	}
	return a
}

// Caution is a warning for work that can hurt someone. Its key is what triggers it.
type Caution struct {
	Row
	Says string
}

func readCaution(r *entry.Row) Caution {
	r.Need("text", "says")
	return Caution{Row: readRow(r), Says: r.Text("says")}
}

// Source is a document that rows cite.
type Source struct {
	Key     string
	Title   string
	Edition string
	Kind    string // standard, law, paper, handbook, guidance, textbook, list
	Note    string // what was read of it
}

func readSource(r *entry.Row) Source {
	s := Source{Key: r.Text("key"), Title: r.Text("title"), Edition: r.Text("edition"), Kind: r.Word("kind", "standard", "law", "paper", "handbook", "guidance", "textbook", "list"), Note: r.Text("note")}
	r.Need("text", "key", "title", "kind")
	return s
}

// Rule is one row of the registry of rule ids: what the rule says, and on what basis.
type Rule struct {
	ID     finding.ID
	Says   string // with {about}, {against} and {fact} where the finding's values go
	Safety bool   // an own table changes what it guards only with an override and a reason
	row    Row
}

// Basis returns what the rule's words rest on: the own table's basis where one replaced them.
func (r Rule) Basis() finding.Basis { return r.row.Basis("says") }

// heir takes the own table's bases over, as Row does for the other rows.
func (r *Rule) heir(rec *record) { r.row.heir(rec) }

func readRule(r *entry.Row) Rule {
	row := readRow(r)
	r.Need("text", "says")
	return Rule{ID: finding.ID(row.Key), Says: r.Text("says"), Safety: r.YesNo("safety").True(), row: row}
}
