package antifoul

import (
	"slices"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// OldFilm is what the signs and the readings of one part tell.
type OldFilm struct {
	Part     string
	May      *oldfilm.Answer // what it may be; nil when nothing was seen
	Decision oldfilm.Decision
	Recoat   *oldfilm.Course // recoating now; nil where it cannot be weighed: no film read, or nothing planned
	Strip    *oldfilm.Course // stripping now
}

// Metal is one pair of metals of the boat, or what the potential of a part tells.
type Metal struct {
	Parts    [2]string // the parts; the second is empty for a potential
	Pair     galvanic.Pair
	Findings finding.List
}

// oldFilms asks what is on each part of which something was seen or read.
func (j *Job) oldFilms(b *tables.Book) error {
	for i, p := range j.Boat.Parts {
		if len(p.Seen) == 0 && !p.Readings.Given() {
			continue
		}
		f := OldFilm{Part: p.Name}
		if len(p.Seen) > 0 {
			a, err := oldfilm.Identify(b, p.Material, p.Seen)
			if err != nil {
				return err
			}
			f.May = &a
		}
		if p.Readings.Given() {
			var area quantity.Range[quantity.Area]
			if i < len(j.Areas) {
				area = j.Areas[i].Total
			}
			d, err := oldfilm.Judge(b, p.Readings, area)
			if err != nil {
				return err
			}
			f.Decision = d
			if err := f.weigh(b, j, p, area); err != nil {
				return err
			}
		}
		j.OldFilms = append(j.OldFilms, f)
	}
	return nil
}

// weigh sets recoating against stripping where the film was read, may stay, and something is planned over it that leaves it.
func (f *OldFilm) weigh(b *tables.Book, j *Job, p compat.Part, area quantity.Range[quantity.Area]) error {
	s, _ := j.Scheme(p.Name)
	if len(s.Coats) == 0 || f.Decision.Do == oldfilm.Strip || takesOff(s.Route.Steps) || !p.Readings.Film.Low.Given() {
		return nil
	}
	coats := 0
	for _, k := range s.Coats {
		if k.Layer.For == compat.Working {
			coats += k.Layer.Coats
		}
	}
	recoat := quantity.Range[float64]{}
	if f.Decision.Do == oldfilm.Repair || f.Decision.Do == oldfilm.Either {
		if h, ok := b.Hours(finding.SpotRepair); ok {
			m2 := func(a quantity.Area) float64 { return a.Float(quantity.SquareMetre) }
			recoat = quantity.Range[float64]{Low: h.Low * m2(area.Low), Typical: h.Typical * m2(area.Typical), High: h.High * m2(area.High)}
		}
	}
	now, bare, err := oldfilm.Weigh(b, area, p.Readings.Film, oldfilm.Stays(s.Coating, coats), recoat, months(j.Boat.Months()))
	if err != nil {
		return err
	}
	f.Recoat, f.Strip = &now, &bare
	return nil
}

// metals asks how each two different metals of the boat stand to each other, anodes aside, and what potentials were read.
func (j *Job) metals(b *tables.Book) error {
	parts := j.Boat.Parts
	asked := map[[2]string]bool{} // pairs of materials, either way round
	for i, p := range parts {
		m, _ := b.Material(p.Material) // checked with the boat
		if p.Reads.Value.Given() {
			fs, err := galvanic.Protected(b, p.Material, p.Reads)
			if err != nil {
				return err
			}
			j.Metals = append(j.Metals, Metal{Parts: [2]string{p.Name}, Findings: fs})
		}
		for _, o := range parts[i+1:] {
			other, _ := b.Material(o.Material)
			if !m.Metal || !other.Metal || m.Anode || other.Anode || m.Key == other.Key || asked[[2]string{m.Key, other.Key}] {
				continue
			}
			asked[[2]string{m.Key, other.Key}], asked[[2]string{other.Key, m.Key}] = true, true
			for _, pair := range galvanic.Of(b, &m, &other) {
				j.Metals = append(j.Metals, Metal{Parts: [2]string{p.Name, o.Name}, Pair: pair, Findings: pair.Findings})
			}
		}
	}
	return nil
}

// takesOff reports whether the way strips what is there, so that recoating it is no choice.
func takesOff(steps []finding.Step) bool {
	return slices.ContainsFunc(steps, func(s finding.Step) bool { return s.Do == finding.Strip || s.Do == finding.Blast })
}
