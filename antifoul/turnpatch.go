package antifoul

import (
	"slices"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// patches are the turns on the places under stands, blocks and chains: after the yard has shifted them, what the hull itself was given there. In
// the slings, on the day before the launch, they are abraded and get one working coat that may go on there, and nothing else.
func (w crewing) patches(j *Job, schemes []Scheme) []Turn {
	if len(j.Patches) == 0 {
		return nil
	}
	row, _ := w.book.Step(finding.Shift)
	slings := w.boat.Work.Slings.True()
	shift := Turn{Do: finding.Shift, Task: calendar.Task{Name: pick(slings, "lift into the slings", row.Name), Yard: true, Hours: w.hours(row.Job), On: w.slingsDay()}}
	if slings && shift.On.Given() && !w.boat.Work.Worked(shift.On) {
		return nil // nobody is there to paint: season says so
	}
	out := []Turn{shift}
	var parts []string
	var coats [][]TurnCoat // of each part
	for _, p := range j.Patches {
		n := laidOn(schemes, p)
		if n == 0 || slings && !w.hangs(schemes, p) {
			continue
		}
		if slings {
			n = 1
		}
		i := slices.Index(parts, p.Part)
		if i < 0 {
			i, parts, coats = len(parts), append(parts, p.Part), append(coats, nil)
		}
		for k := range n {
			coats[i] = append(coats[i], TurnCoat{Part: p.Part, Layer: compat.Layer{Coating: p.Coating, Colour: p.Colour, Coats: n, For: p.For}, Nth: k + 1, area: p.Area})
		}
	}
	var under, top [][]TurnCoat
	for _, list := range coats {
		n := 0
		for n < len(list) && list[n].Layer.For == compat.Undercoat {
			n++
		}
		under, top = append(under, list[:n:n]), append(top, list[n:])
	}
	var work []Turn
	for _, t := range w.bared(j, schemes, parts, slings) {
		if t.Do == finding.Blast {
			var of []Scheme
			for _, p := range parts {
				of = append(of, Scheme{Part: p})
			}
			work = append(work, w.blasted(t, of, under, top)...)
			continue
		}
		work = append(work, w.prepared(t))
	}
	w.dry(work)
	work = append(work, w.coats(under, top)...)
	for _, t := range work {
		t.Patch, t.Name = true, "places where she stood, "+t.Name
		if slings {
			t.On = shift.On
		}
		out = append(out, t)
	}
	return out
}

// hangs reports whether the layer goes onto its places while she hangs in the slings.
func (w crewing) hangs(schemes []Scheme, p Patched) bool {
	for i := range schemes {
		if s := &schemes[i]; s.Part == p.Part {
			may, _ := compat.Slings(w.book, s.Stack)
			return p.For == compat.Working && laysAny(may, p.Coating.Name)
		}
	}
	return false
}

// inSlings is what is to be said of the places of each part that is painted in the slings, each thing once. Of a type that may go on there it is not
// said as well that another layer of it waits.
func (w crewing) inSlings(schemes []Scheme, patches []Patched) finding.List {
	var out finding.List
	for i := range schemes {
		s := &schemes[i]
		if !slices.ContainsFunc(patches, func(p Patched) bool { return p.Part == s.Part }) {
			continue
		}
		may, said := compat.Slings(w.book, s.Stack)
		for _, f := range said {
			waits := f.Verdict == finding.Forbidden && laysAny(may, f.About)
			told := slices.ContainsFunc(out, func(o finding.Finding) bool { return o.Rule == f.Rule && o.About == f.About })
			if !waits && !told {
				out = append(out, f)
			}
		}
	}
	return out
}

func laysAny(layers []compat.PatchLayer, coating string) bool {
	return slices.ContainsFunc(layers, func(l compat.PatchLayer) bool { return l.Layer.Coating.Name == coating })
}

// slingsDay is the day on which the yard shifts her, or lifts her: as booked, or in the slings the day before a fixed launch.
func (w crewing) slingsDay() quantity.Date {
	d := w.boat.Work
	if !d.Shift.Given() && d.Slings.True() && d.Launch.Given() && !d.LaunchOpen.True() {
		return d.Launch.AddDays(-1)
	}
	return d.Shift
}

// bared is the work on the surface of the places: what the part's own way asked for there, since nothing of it reached under a pad. In the slings
// there is time for abrading.
func (w crewing) bared(j *Job, schemes []Scheme, parts []string, slings bool) []Task {
	under := []finding.Action{finding.SpotRepair, finding.Strip, finding.Degrease, finding.Abrade, finding.WetScuff, finding.Polish, finding.Blast}
	var out []Task
	for _, do := range under {
		t := Task{Do: do}
		for _, s := range schemes {
			if !slices.Contains(parts, s.Part) || !does(s, do) || slings && do != finding.Abrade && do != finding.WetScuff {
				continue
			}
			at := slices.IndexFunc(j.Patches, func(p Patched) bool { return p.Part == s.Part })
			t.Parts = append(t.Parts, s.Part)
			rate, _ := w.book.Hours(do)
			h := hours(rate, j.Patches[at].Area, 1)
			t.Hours = quantity.Range[float64]{Low: t.Hours.Low + h.Low, Typical: t.Hours.Typical + h.Typical, High: t.Hours.High + h.High}
		}
		if len(t.Parts) > 0 {
			out = append(out, t)
		}
	}
	return out
}

// laidOn is how many coats of the layer the schemes put on the part; 0 where it was left out.
func laidOn(schemes []Scheme, p Patched) int {
	for _, s := range schemes {
		for _, k := range s.Coats {
			if s.Part == p.Part && k.Layer.For == p.For && k.Layer.Coating.Key == p.Coating.Key {
				return k.Layer.Coats
			}
		}
	}
	return 0
}

func pick[T any](yes bool, a, b T) T {
	if yes {
		return a
	}
	return b
}
