package tables_test

import (
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// grouped collects rows by what they have in common, and the groups' names in the order of their first row.
func grouped[R any](rows func(func(R) bool), by func(R) string) (names []string, groups map[string][]R) {
	groups = map[string][]R{}
	for r := range rows {
		k := by(r)
		if groups[k] == nil {
			names = append(names, k)
		}
		groups[k] = append(groups[k], r)
	}
	return names, groups
}

// A metal that has lost its skin lies nowhere nobler than the same metal with it.
func TestActiveIsNeverNoblerThanPassive(t *testing.T) {
	_, metals := grouped(book(t).Potentials(), func(p tables.Potential) string { return p.Series + ": " + p.Name })
	pairs := 0
	for metal, list := range metals {
		for _, passive := range list {
			if passive.State != "passive" {
				continue
			}
			met := false
			for _, active := range list {
				if active.State != "active" {
					continue
				}
				met = true
				pairs++
				if active.Noble.Cmp(passive.Active) >= 0 {
					t.Errorf("%s: active begins at %s, passive ends at %s", metal, active.Noble, passive.Active)
				}
			}
			if !met {
				t.Errorf("%s is passive and has no active line", metal)
			}
		}
	}
	if pairs < 6 {
		t.Errorf("%d pairs of passive and active, want at least 6", pairs)
	}
}

// The sign of a potential is easily dropped: no list leaves the room of graphite to magnesium, and zinc lies below steel, steel below
// copper, copper below graphite.
func TestSeriesRunFromGraphiteToMagnesium(t *testing.T) {
	top, foot := quantity.Millivolt.N(350), quantity.Millivolt.N(-1800)
	n := 0
	for p := range book(t).Potentials() {
		n++
		if p.Active.Cmp(foot) < 0 || p.Noble.Cmp(top) > 0 {
			t.Errorf("%s: %s to %s lies outside of %s to %s", p.Key, p.Noble, p.Active, top, foot)
		}
		if p.Active.Cmp(p.Noble) > 0 {
			t.Errorf("%s: its active end %s is nobler than %s", p.Key, p.Active, p.Noble)
		}
	}
	if n < 60 {
		t.Errorf("%d potentials, want at least 60", n)
	}
	order := []string{"-zinc", "-mild-steel", "-copper", "-graphite"}
	_, series := grouped(book(t).Potentials(), func(p tables.Potential) string { return p.Series })
	for name, list := range series {
		var last tables.Potential
		met := 0
		for _, end := range order {
			i := slices.IndexFunc(list, func(p tables.Potential) bool {
				return strings.HasSuffix(p.Key, end) && !strings.HasSuffix(p.Key, "nickel-copper")
			})
			if i < 0 {
				continue
			}
			met++
			if met > 1 && list[i].Active.Cmp(last.Noble) <= 0 {
				t.Errorf("%s: %s is not nobler than %s", name, list[i].Key, last.Key)
			}
			last = list[i]
		}
		if met < 2 {
			t.Errorf("%s: %d metals of the usual order found, want two at least", name, met)
		}
	}
}

// Two lists are never mixed: a series is one document and one electrode, and no two series share a document.
func TestEachSeriesIsOneDocument(t *testing.T) {
	names, series := grouped(book(t).Potentials(), func(p tables.Potential) string { return p.Series })
	if len(names) < 3 {
		t.Errorf("%d series, want at least 3", len(names))
	}
	by := map[string]string{}
	for _, name := range names {
		first := series[name][0]
		source := first.Basis("noble").Source
		if source == "" {
			t.Errorf("%s cites no document", name)
		}
		for _, p := range series[name] {
			if p.Basis("noble").Source != source || p.Electrode != first.Electrode {
				t.Errorf("%s: %s cites %q against %s, %s cites %q against %s", name,
					p.Key, p.Basis("noble").Source, p.Electrode, first.Key, source, first.Electrode)
			}
		}
		if other, twice := by[source]; twice {
			t.Errorf("%s and %s cite the same document", name, other)
		}
		by[source] = name
	}
}

func TestProtectionNeedsRoomAboveItsFloor(t *testing.T) {
	floors := 0
	for p := range book(t).Protections() {
		if !p.NotBelow.Given() {
			continue
		}
		floors++
		if p.At.Given() && p.NotBelow.Cmp(p.At) >= 0 {
			t.Errorf("%s: protected at %s and not below %s leaves no room", p.Key, p.At, p.NotBelow)
		}
	}
	if floors < 10 {
		t.Errorf("%d rows name a floor, want at least 10", floors)
	}
}

// Every area has one count: the lines of a standard begin at none, meet each other, and the last one goes on.
func TestSamplingLinesJoin(t *testing.T) {
	names, standards := grouped(book(t).Samplings(), func(s tables.Sampling) string { return s.Standard })
	if len(names) < 4 {
		t.Errorf("%d counts, want at least 4", len(names))
	}
	for _, name := range names {
		lines := slices.SortedFunc(slices.Values(standards[name]), func(a, b tables.Sampling) int { return a.Over.Cmp(b.Over) })
		if lines[0].Over.Cmp(quantity.SquareMetre.N(0)) != 0 {
			t.Errorf("%s begins at %s", name, lines[0].Over)
		}
		for i, l := range lines[:len(lines)-1] {
			next := lines[i+1]
			if !l.UpTo.Given() || !l.UpTo.Equal(next.Over) {
				t.Errorf("%s: %s ends at %s and %s begins at %s", name, l.Key, l.UpTo, next.Key, next.Over)
			}
			if next.Readings < l.Readings {
				t.Errorf("%s: %s asks for %d, the larger %s for %d", name, l.Key, l.Readings, next.Key, next.Readings)
			}
			if l.Repeats > l.Readings {
				t.Errorf("%s repeats %d of %d", l.Key, l.Repeats, l.Readings)
			}
		}
		if last := lines[len(lines)-1]; last.UpTo.Given() || !last.Each.Given() || last.More < 1 {
			t.Errorf("%s: %s does not go on: up to %s, %d more for each %s", name, last.Key, last.UpTo, last.More, last.Each)
		}
	}
}

// A scale of cover is counted in whole per cent: the next grade begins one per cent above, and the last ends at the whole.
func TestGradesOfCoverJoin(t *testing.T) {
	_, scales := grouped(book(t).Grades(), func(g tables.GradeRow) string { return g.Scale })
	one, whole := quantity.Percent.N(1), quantity.Percent.N(100)
	met := 0
	for scale, grades := range scales {
		grades = slices.DeleteFunc(slices.Clone(grades), func(g tables.GradeRow) bool {
			return !g.Cover.High.Given() || g.Cover.High.Cmp(quantity.Percent.N(0)) == 0
		})
		if len(grades) == 0 {
			continue
		}
		met++
		if !grades[0].Cover.Low.Equal(one) || !grades[len(grades)-1].Cover.High.Equal(whole) {
			t.Errorf("%s runs from %s to %s, want 1 to 100 %%", scale, grades[0].Cover.Low, grades[len(grades)-1].Cover.High)
		}
		for i, g := range grades {
			if g.Cover.Low.Cmp(g.Cover.High) > 0 {
				t.Errorf("%s: %s to %s", g.Key, g.Cover.Low, g.Cover.High)
			}
			if i > 0 && !g.Cover.Low.Equal(grades[i-1].Cover.High.Add(one)) {
				t.Errorf("%s: %s ends at %s and %s begins at %s", scale, grades[i-1].Key, grades[i-1].Cover.High, g.Key, g.Cover.Low)
			}
		}
	}
	if met < 2 {
		t.Errorf("%d scales of cover, want at least 2", met)
	}
}

func TestGradesAreNamedOnce(t *testing.T) {
	_, scales := grouped(book(t).Grades(), func(g tables.GradeRow) string { return g.Scale })
	for scale, grades := range scales {
		said := map[string]string{}
		for _, g := range grades {
			if other, twice := said[g.Grade]; twice {
				t.Errorf("%s: %s and %s are both %s", scale, other, g.Key, g.Grade)
			}
			said[g.Grade] = g.Key
			if g.Basis("says").Source != grades[0].Basis("says").Source {
				t.Errorf("%s: %s cites another document than %s", scale, g.Key, grades[0].Key)
			}
		}
		if len(grades) < 2 {
			t.Errorf("%s has one grade", scale)
		}
	}
}

// A coarser grade of one abrasive begins where the finer one ends, and shot is never deeper than grit.
func TestProfilesDeepenFromFineToCoarse(t *testing.T) {
	depth := map[string]quantity.Range[quantity.Film]{}
	corrections := 0
	for p := range book(t).Profiles() {
		switch {
		case p.Correction.Given():
			corrections++
			if p.Correction.Cmp(quantity.Micrometre.N(0)) <= 0 {
				t.Errorf("%s takes off %s", p.Key, p.Correction)
			}
		case p.Abrasive == "":
			t.Errorf("%s has no abrasive and no correction", p.Key)
		default:
			depth[p.Abrasive+strings.TrimPrefix(p.Key, "iso-8503-1-"+p.Abrasive)] = p.Depth
		}
	}
	if corrections < 4 {
		t.Errorf("%d corrections, want at least 4", corrections)
	}
	for _, abrasive := range []string{"grit", "shot"} {
		fine, medium, coarse := depth[abrasive+"-fine"], depth[abrasive+"-medium"], depth[abrasive+"-coarse"]
		if !fine.Low.Given() || !fine.High.Equal(medium.Low) || !medium.High.Equal(coarse.Low) || coarse.High.Cmp(coarse.Low) <= 0 {
			t.Errorf("%s: %v, %v, %v do not join", abrasive, fine, medium, coarse)
		}
	}
	for _, grade := range []string{"-fine", "-medium", "-coarse"} {
		if grit, shot := depth["grit"+grade], depth["shot"+grade]; shot.Low.Cmp(grit.Low) > 0 || shot.High.Cmp(grit.High) > 0 {
			t.Errorf("%s: shot %v is deeper than grit %v", grade, shot, grit)
		}
	}
}

func TestRougherMeansMoreResistance(t *testing.T) {
	var last tables.Roughness
	n := 0
	for r := range book(t).Roughnesses() {
		n++
		if n > 1 && (r.Ks.Cmp(last.Ks) <= 0 || r.Rt50.Cmp(last.Rt50) <= 0 || r.Slow.Cmp(last.Slow) <= 0 || r.Fast.Cmp(last.Fast) <= 0) {
			t.Errorf("%s is not worse than %s in everything", r.Key, last.Key)
		}
		last = r
	}
	if n < 7 {
		t.Errorf("%d conditions, want at least 7", n)
	}
}

// A value that two documents dispute says what the other one says, and a least never lies above its most.
func TestValuesSayTheirDoubts(t *testing.T) {
	values := map[string]tables.Value{}
	disputed, spans := 0, 0
	for v := range book(t).Values() {
		values[v.Key] = v
		if v.Bound == "sources disagree" {
			disputed++
			if v.Basis("value").Doubt == "" {
				t.Errorf("%s: the sources disagree, and no doubt says how", v.Key)
			}
		}
		if k := v.Basis("value").Kind; k == finding.Published && v.Basis("value").Source == "" {
			t.Errorf("%s is published and names no document", v.Key)
		}
	}
	for key, least := range values {
		stem, ok := strings.CutSuffix(key, "-least")
		if !ok {
			continue
		}
		spans++
		most, ok := values[stem+"-most"]
		if !ok {
			t.Errorf("%s has no partner that says the most", key)
			continue
		}
		if least.Value.High >= most.Value.Low || least.Unit != most.Unit {
			t.Errorf("%s is %g %s, its most %g %s", key, least.Value.High, least.Unit, most.Value.Low, most.Unit)
		}
	}
	if disputed < 5 || spans < 5 {
		t.Errorf("%d disputed values and %d spans, want at least 5 of each", disputed, spans)
	}
}

// A grade that is a bare number is called by its name, where it has one.
func TestLabelOfAGrade(t *testing.T) {
	for want, f := range map[string]fields{
		"Three":  {"grade": `"3"`, "name": `"Three"`},
		"3":      {"grade": `"3"`},
		"Ri 3":   {"grade": `"Ri 3"`, "name": `"Three"`},
		"Ri 3 ½": {"grade": `"Ri 3 ½"`},
	} {
		f["key"], f["basis"], f["scale"], f["says"] = `"x"`, `"derived"`, `"a scale"`, `"some"`
		if g, err := with(t, row("grade", f)).Grade("x"); err != nil || g.Label() != want {
			t.Errorf("it is called %q, want %q, %v", g.Label(), want, err)
		}
	}
}
