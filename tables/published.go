package tables

import (
	"iter"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rows of this file are literature values: read from a document, kept as it prints them, one document a file. What is
// computed from them is code elsewhere.

// Potential is one line of a galvanic series in flowing seawater.
type Potential struct {
	Row
	Series    string             // the list that it stands in; two lists are never mixed
	State     string             // active or passive, for metals that know both
	Noble     quantity.Potential // the nobler end
	Active    quantity.Potential // the less noble end
	Electrode string             // key of the reference electrode
	Material  string             // key of the material that it speaks of; empty where the module has none
}

func readPotential(r *entry.Row) Potential {
	p := Potential{
		Row:       readRow(r),
		Series:    r.Text("series"),
		State:     r.Word("state", "active", "passive"),
		Noble:     entry.Amount[quantity.Potential](r, "noble"),
		Active:    entry.Amount[quantity.Potential](r, "active"),
		Electrode: r.Text("electrode"),
		Material:  r.Text("material"),
	}
	r.Need("text", "series", "electrode")
	r.Need("a potential in mV or V; both ends alike where the list gives one value", "noble", "active")
	if p.Noble.Given() && p.Active.Given() && p.Active.Cmp(p.Noble) > 0 {
		r.Fault(finding.ErrImpossible, "active", p.Active.String(), "no nobler than noble, "+p.Noble.String())
	}
	return p
}

// Electrode is a reference electrode, by its potential against the standard hydrogen electrode.
type Electrode struct {
	Row
	SHE quantity.Potential
}

func readElectrode(r *entry.Row) Electrode {
	r.Need("a potential against the standard hydrogen electrode", "she")
	return Electrode{Row: readRow(r), SHE: entry.Amount[quantity.Potential](r, "she")}
}

// Protection is the potential at which a metal in seawater counts as protected, and the one below which it is harmed.
type Protection struct {
	Row
	Material  string             // key of a material; empty for a group that the module has no row for
	Electrode string             // key of the reference electrode
	At        quantity.Potential // protected at this potential or below it; not given: the document names no such limit
	NotBelow  quantity.Potential // harmed below this; not given: the document names no such limit
	Only      string             // the case that the row is for, where it is not for every boat of the material
}

func readProtection(r *entry.Row) Protection {
	p := Protection{
		Row:       readRow(r),
		Material:  r.Text("material"),
		Electrode: r.Text("electrode"),
		At:        entry.Amount[quantity.Potential](r, "at_or_below"),
		NotBelow:  entry.Amount[quantity.Potential](r, "not_below"),
		Only:      r.Text("only"),
	}
	r.Need("text", "electrode")
	if !p.At.Given() && !p.NotBelow.Given() {
		r.Fault(finding.ErrMissing, "at_or_below", "", "a potential in mV or V, or not_below, or both")
	}
	if p.At.Given() && p.NotBelow.Given() && p.NotBelow.Cmp(p.At) >= 0 {
		r.Fault(finding.ErrImpossible, "not_below", p.NotBelow.String(), "below at_or_below, "+p.At.String())
	}
	return p
}

// GradeRow is one grade of a published scale: preparation, rust, fouling, condition of a coating.
type GradeRow struct {
	Row
	Scale string
	Grade string
	Says  string
	Cover quantity.Range[quantity.Share] // of the area, where the scale is one of cover; typical is not read
}

// Label returns the grade in few words: as its scale writes it, or the row's name where that is a bare number.
func (g GradeRow) Label() string {
	if _, err := strconv.Atoi(g.Grade); err == nil && g.Name != g.Key {
		return g.Name
	}
	return g.Grade
}

func readGrade(r *entry.Row) GradeRow {
	r.Need("text", "scale", "grade", "says")
	return GradeRow{Row: readRow(r), Scale: r.Text("scale"), Grade: r.Text("grade"), Says: r.Text("says"), Cover: entry.Range[quantity.Share](r, "cover")}
}

// Profile is one grade of a blast profile, with the value taken off a film reading on it.
type Profile struct {
	Row
	Abrasive   string                        // grit or shot; empty where the grade is not one of an abrasive
	Depth      quantity.Range[quantity.Film] // peak to valley; typical is not read
	Correction quantity.Film                 // taken off a reading of a gauge zeroed on smooth steel
}

func readProfile(r *entry.Row) Profile {
	return Profile{Row: readRow(r), Abrasive: r.Word("abrasive", "grit", "shot"), Depth: entry.Range[quantity.Film](r, "depth"), Correction: entry.Amount[quantity.Film](r, "correction")}
}

// Sampling is one line of a standard's count of film readings by area.
type Sampling struct {
	Row
	Standard string
	Over     quantity.Area // the area is more than this
	UpTo     quantity.Area // and at most this; not given: no limit, see Each
	Readings int           // least number of readings, or of areas of five spots
	Repeats  int           // readings that may be repeated
	Each     quantity.Area // beyond Over, for each further area of this size or part of it
	More     int           // so many more
}

func readSampling(r *entry.Row) Sampling {
	s := Sampling{
		Row:      readRow(r),
		Standard: r.Text("standard"),
		Over:     entry.Amount[quantity.Area](r, "over"),
		UpTo:     entry.Amount[quantity.Area](r, "up_to"),
		Each:     entry.Amount[quantity.Area](r, "each"),
	}
	s.Readings, _ = r.Int("readings", 1, 10000)
	s.Repeats, _ = r.Int("repeats", 0, 10000)
	s.More, _ = r.Int("more", 1, 10000)
	r.Need("text", "standard")
	r.Need("a whole number", "readings")
	rising(r, "up_to", s.Over, s.UpTo, "more than over")
	return s
}

// Roughness is what one fouling condition does to a ship, as a paper gives it.
type Roughness struct {
	Row
	Rating string         // fouling rating, "40-60"
	Least  int            // its lower end
	Ks     quantity.Film  // equivalent sand roughness
	Rt50   quantity.Film  // hull roughness over 50 mm
	Slow   quantity.Share // more resistance at 15 kn
	Fast   quantity.Share // more resistance at 30 kn
}

func readRoughness(r *entry.Row) Roughness {
	r.Need("what the paper gives of every condition", "rating", "ks", "rt50", "resistance_15kn", "resistance_30kn")
	x := Roughness{
		Row: readRow(r), Rating: r.Text("rating"), Ks: entry.Amount[quantity.Film](r, "ks"), Rt50: entry.Amount[quantity.Film](r, "rt50"),
		Slow: entry.Amount[quantity.Share](r, "resistance_15kn"), Fast: entry.Amount[quantity.Share](r, "resistance_30kn"),
	}
	low, high, two := strings.Cut(x.Rating, "-")
	if !two {
		high = low
	}
	least, err := strconv.Atoi(low)
	most, err2 := strconv.Atoi(high)
	if x.Rating != "" && (err != nil || err2 != nil || least < 0 || most < least || most > 100) {
		r.Fault(finding.ErrValue, "rating", entry.Describe(x.Rating), "a fouling rating from 0 to 100, or two, \"40-60\"")
	}
	x.Least = least
	if x.Ks.Given() && x.Ks.Sign() < 0 {
		r.Fault(finding.ErrImpossible, "ks", x.Ks.String(), "a roughness, 0 um or more")
	}
	return x
}

// Value is one number of a document that stands in no table of its own.
type Value struct {
	Row
	Value quantity.Range[float64]
	Unit  string
	Bound string // at least, at most, about; empty: as it is
}

func readValue(r *entry.Row) Value {
	v := Value{Row: readRow(r), Unit: r.Text("unit"), Bound: r.Word("bound", "at least", "at most", "about", "sources disagree")}
	v.Value, _ = r.Floats("value", -1e9, 1e9)
	r.Need("[low, typical, high] or one number", "value")
	r.Need("text", "unit")
	return v
}

// Potentials lists the galvanic series, list by list.
func (b *Book) Potentials() iter.Seq[Potential] { return b.potentials.all() }

// Electrode returns the reference electrode of the key.
func (b *Book) Electrode(key string) (Electrode, error) { return b.electrodes.get(key) }

// Electrodes lists the reference electrodes.
func (b *Book) Electrodes() iter.Seq[Electrode] { return b.electrodes.all() }

// Protections lists the protection potentials.
func (b *Book) Protections() iter.Seq[Protection] { return b.protections.all() }

// Grades lists the grades of all published scales.
func (b *Book) Grades() iter.Seq[GradeRow] { return b.grades.all() }

// Profiles lists the grades of blast profile.
func (b *Book) Profiles() iter.Seq[Profile] { return b.profiles.all() }

// Samplings lists the counts of film readings.
func (b *Book) Samplings() iter.Seq[Sampling] { return b.samplings.all() }

// Roughnesses lists the fouling conditions with their roughness.
func (b *Book) Roughnesses() iter.Seq[Roughness] { return b.roughnesses.all() }

// Value returns the number of the key.
func (b *Book) Value(key string) (Value, error) { return b.values.get(key) }

// Values lists the numbers that stand in no table of their own.
func (b *Book) Values() iter.Seq[Value] { return b.values.all() }
