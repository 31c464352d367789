package finding

// ID names a rule: the key of a row in rules_*.toml. Rule ids are part of the module's interface.
type ID string

// Fact is one value that decided: its name as the rule's words call it, and the value. Value is a string, an int, a plain
// number (float64, said to three digits) or a range of them, a quantity amount or range, a date, or anything with
// Show(quantity.System) string or String() string. tables.Show prints any of them; encoding/json does not see into those of types that only print.
type Fact struct {
	Name  string
	Value any
}

// Finding is one judgement. Its words are made from the rule's row when it is printed.
type Finding struct {
	Rule    ID
	Verdict Verdict
	About   string  // what was judged: the name of a coating, part or layer
	Against string  // what it was judged against: a material, an old film, a place
	Facts   []Fact  // the numbers and names that decided
	First   []Step  // what must be done first, in order; set when the verdict is Needs
	Basis   []Basis // what the row that decided rests on, beside the rule's own basis
}

// List holds the findings of one judgement. An empty list means "not judged", never "fine".
type List []Finding

// Worst returns the highest verdict in the list; 0, which is invalid, when the list is empty.
func (l List) Worst() Verdict {
	var worst Verdict
	for i := range l {
		worst = max(worst, l[i].Verdict)
	}
	return worst
}

// At returns the findings with exactly the verdict v, in their order.
func (l List) At(v Verdict) List {
	var out List
	for i := range l {
		if l[i].Verdict == v {
			out = append(out, l[i])
		}
	}
	return out
}

// Has reports whether a finding of the rule id is in the list.
func (l List) Has(id ID) bool {
	for i := range l {
		if l[i].Rule == id {
			return true
		}
	}
	return false
}
