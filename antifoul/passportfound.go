package antifoul

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// parts writes what lies on each part now.
func (w *passport) parts() {
	rows, _ := w.tree.m["part"].([]map[string]any)
	w.tree.follow("", "part.found")
	w.tree.arrange("part.found", "part.found.coating", "part.found.colour", "part.found.film", "part.found.state", "part.found.age", "part.found.known_by")
	for i, p := range w.job.Boat.Parts {
		if unpainted(w.job.Book, p) {
			continue
		}
		row := rows[i]
		path := "part[" + p.Name + "]"
		found, _ := row["found"].([]map[string]any)
		task, off := w.log.stripped(p.Name)
		coats := w.log.of(p.Name)
		if off || len(coats) > 0 {
			w.set(row, path, "readings", "read before the job")
		}
		if off {
			found = w.keep(row, path, p, found, task)
		}
		switch {
		case len(coats) > 0:
			row["found"] = w.found(path, p, found, off)
		case off && len(found) == 0:
			row["found"] = []map[string]any{{"coating": tables.BareSurface, "state": string(w.seen(p, tables.NotReported)), "known_by": "job log: taken off, " + day(task.Until()).String()}}
		case len(found) > 0:
			row["found"] = found
			w.untouched(path, p, found)
		}
	}
}

// keep returns the layers that a stripping left.
func (w *passport) keep(row map[string]any, path string, p compat.Part, found []map[string]any, task joblog.Task) []map[string]any {
	n := 0
	s, _ := w.job.Scheme(p.Name)
	i := slices.IndexFunc(w.log.Log.Tasks, func(t joblog.Task) bool {
		return t.Part == p.Name && t.All() && t.Do == task.Do && t.Begun.Equal(task.Begun)
	})
	key := fmt.Sprintf("task[%d].down_to", i+1)
	switch {
	case task.DownTo == tables.BareSurface:
	case task.DownTo != "":
		for k, f := range found {
			if f["coating"] == task.DownTo {
				n = k + 1
			}
		}
		if n == 0 {
			w.bad(finding.ErrImpossible, w.log.Log.Name, key, task.DownTo, "a film that the boat file has on the "+p.Name+", or bare")
		}
	case takesOff(s.Route.Steps):
		n = min(len(s.Route.Keeps), len(found))
	case task.Do == finding.Strip || len(found) > 0:
		w.bad(finding.ErrMissing, w.log.Log.Name, key, "", "the film that was left on the "+p.Name+", or bare: the plan takes nothing off")
	}
	w.set(row, path, "seen", "signs of a film that was taken off")
	for k, f := range found[n:] {
		w.aside = append(w.aside, Aside{fmt.Sprintf("%s.found[%d]", path, n+k+1), valueText(inline(f)), "taken off, as the job log says"})
	}
	return slices.Clone(found[:n])
}

// found is what lies on a part that coats were laid on: what was there and stays, then the coats, the lowest first.
func (w *passport) found(path string, p compat.Part, kept []map[string]any, off bool) []map[string]any {
	var out []map[string]any
	if len(kept) == 0 && !off && len(p.Found) == 0 {
		out = append(out, map[string]any{"coating": tables.UnknownOld, "known_by": "nobody said what was there, and no log says that it was taken off"})
	}
	for i, f := range kept {
		if f["coating"] == tables.BareSurface {
			w.aside = append(w.aside, Aside{fmt.Sprintf("%s.found[%d]", path, i+1), valueText(inline(f)), "coats lie on it now"})
			continue
		}
		w.set(f, fmt.Sprintf("%s.found[%d]", path, i+1), "age", "its age on the day of the last job; it is older now")
		out = append(out, f)
	}
	var layers []LoggedLayer
	for _, x := range w.log.Layers {
		if x.Part == p.Name && len(x.Coats) > 0 && x.Layer != compat.Extra {
			layers = append(layers, x)
		}
	}
	left := w.left(p, layers)
	for i, x := range layers {
		f := map[string]any{"coating": x.Coating.Key, "known_by": left[i].knownBy}
		if x.Noted {
			f["colour"] = x.Colour
		}
		if left[i].film.Low.Given() {
			f["film"] = filmValue(left[i].film)
		}
		state := tables.Sound // covered while it was new, as far as the log says
		if i == len(layers)-1 {
			state = left[i].state
		}
		f["state"] = string(state)
		if !w.log.Log.Launched.Given() {
			last := x.Coats[len(x.Coats)-1]
			f["age"] = fmt.Sprintf("%d d", day(last.Until()).DaysUntil(w.on))
		}
		out = append(out, f)
	}
	return out
}

// untouched sets aside what is no longer known of a part that got no coat and went into the water.
func (w *passport) untouched(path string, p compat.Part, found []map[string]any) {
	if !w.log.Log.Launched.Given() {
		return
	}
	i := len(found) - 1
	top, at := found[i], fmt.Sprintf("%s.found[%d]", path, i+1)
	w.set(top, at, "age", "its age on the day of the last job; it is older now")
	if state := w.seen(p, ""); state != "" {
		top["state"] = string(state)
	} else {
		w.set(top, at, "state", "its state before she was launched again")
	}
	if len(p.Found) > i && p.Found[i].Coating.Wears() {
		w.set(top, at, "film", "its film before she was launched again; it has worn since")
	}
}

// seen is the state that the last look told of the part, on its main zone before any other; else the one given.
func (w *passport) seen(p compat.Part, otherwise tables.Condition) tables.Condition {
	out, main := otherwise, false
	for _, k := range w.log.Log.Looks {
		if k.Part == p.Name && k.State != "" && (k.Zone == mainZone(p) || !main) {
			out, main = k.State, k.Zone == mainZone(p)
		}
	}
	return out
}

// wornThrough is the condition of a film that is worn through.
const wornThrough tables.Condition = "spent"

// leftover is what is left of one layer.
type leftover struct {
	film    quantity.Range[quantity.Film] // not given: not known, or it may be gone
	state   tables.Condition
	knownBy string
}

// left tells what is left of the layers laid on a part, bottom to top: as laid where nothing wears or she was not afloat; as gauged where somebody did;
// else as laid less the forecast of wear, from the top down.
func (w *passport) left(p compat.Part, layers []LoggedLayer) []leftover {
	out := make([]leftover, len(layers))
	launched := w.log.Log.Launched.Given()
	zone := mainZone(p)
	for i, x := range layers {
		last := x.Coats[len(x.Coats)-1]
		out[i] = leftover{film: x.Film, state: tables.Sound, knownBy: "job log of " + day(last.Until()).String() + w.logName() + how(x)}
		if microns(x.Film).Low.Sign() <= 0 {
			out[i].film = quantity.Range[quantity.Film]{}
		}
		if x.Layer == compat.Working {
			out[i].knownBy += w.extras(p, x)
		}
	}
	if !launched || len(layers) == 0 {
		return out
	}
	top := len(layers) - 1
	out[top].state = w.seen(p, tables.NotReported)
	if look, ok := w.gauged(p, zone); ok && layers[top].Coating.Wears() {
		laid := out[top].knownBy
		out[top].film = quantity.Exactly(look.Film)
		if look.Film.Sign() <= 0 {
			out[top].film, out[top].state = quantity.Range[quantity.Film]{}, wornThrough
		}
		out[top].knownBy = fmt.Sprintf("gauge, %s on %s; laid %s by %s", readings(look.Readings), look.On, toldFilm(layers[top].Film), laid)
		return out
	}
	worn := w.worn(layers[top].Coating, zone)
	shows := slices.ContainsFunc(w.log.Log.Looks, func(k joblog.Look) bool { return k.Part == p.Name && k.Zone == zone && k.Signal.True() })
	for i := top; i >= 0 && worn.High > 0 && layers[i].Coating.Wears() && layers[i].Coating.Key == layers[top].Coating.Key; i-- {
		if !layers[i].Film.Low.Given() {
			out[i].knownBy += "; film not noted, and worn since"
			break
		}
		um := func(f quantity.Film) float64 { return f.Float(quantity.Micrometre) }
		laid := layers[i].Film
		rest := quantity.Range[float64]{
			Low: max(0, um(laid.Low)-worn.High), Typical: max(0, um(laid.Typical)-worn.Typical), High: max(0, um(laid.High)-worn.Low),
		}
		gone := i == top && shows
		tells := fmt.Sprintf("job log and wear forecast, not measured: %.0f to %.0f um left of %s laid; %s", math.Floor(rest.Low), math.Ceil(rest.High), toldFilm(laid), out[i].knownBy)
		switch {
		case gone:
			out[i] = leftover{state: wornThrough, knownBy: "look: the colour below shows on the " + zone + "; laid " + toldFilm(laid) + " by " + out[i].knownBy}
		case rest.Low < 1:
			out[i].film, out[i].knownBy = quantity.Range[quantity.Film]{}, tells+"; it may be gone, so no film is told"
		default:
			out[i].film, out[i].knownBy = near(rest), tells
		}
		worn = quantity.Range[float64]{Low: max(0, worn.Low-um(laid.High)), Typical: max(0, worn.Typical-um(laid.Typical)), High: max(0, worn.High-um(laid.Low))}
		if gone { // it wears no deeper in the forecast than the eye saw
			break
		}
		if i == 0 && worn.High >= 1 {
			w.notes = append(w.notes, p.Name+": the forecast of wear cannot rule out that all that was laid is gone in places, and that what lay below has worn too.")
		}
	}
	return out
}

// worn is the film lost in a zone from the launch until she came out, in micrometres.
func (w *passport) worn(c tables.Coating, zone string) quantity.Range[float64] {
	until := w.log.Log.Hauled
	if !until.Given() {
		until = w.on
	}
	const daysAMonth = 365.25 / 12
	months := w.boat.Use.AfloatMonths(float64(max(0, w.log.Log.Launched.DaysUntil(until))) / daysAMonth)
	rate, times := wear.Rate(w.job.Book, c, w.boat.Use), quantity.Exactly(1.0)
	if z, err := w.job.Book.Zone(zone); err == nil {
		times = z.Wear
	}
	return quantity.Range[float64]{Low: rate.Low * times.Low * months, Typical: rate.Typical * times.Typical * months, High: rate.High * times.High * months}
}

// gauged is the last look that measured the film in the zone, where that is no longer ago than log-look-fresh before she came out.
func (w *passport) gauged(p compat.Part, zone string) (joblog.Look, bool) {
	until := w.log.Log.Hauled
	if !until.Given() {
		until = w.on
	}
	for _, k := range slices.Backward(w.log.Log.Looks) {
		if k.Part == p.Name && k.Zone == zone && k.Film.Given() {
			return k, float64(k.On.DaysUntil(until)) <= factor(w.job.Book, "log-look-fresh")
		}
	}
	return joblog.Look{}, false
}

func readings(n int) string {
	if n <= 1 {
		return "1 reading"
	}
	return fmt.Sprintf("%d readings", n)
}

func (w *passport) logName() string {
	if w.log.Log.Name == "" {
		return ""
	}
	return " (" + w.log.Log.Name + ")"
}

// how says by what the film of a layer is known.
func how(x LoggedLayer) string {
	switch {
	case x.Gauged != nil:
		return fmt.Sprintf(", by gauge, %s on %s", readings(x.Gauged.Readings), x.Gauged.On)
	case !x.Film.Low.Given():
		return ", film not noted"
	}
	var by []string
	for _, word := range []string{"litres", "comb"} {
		if slices.ContainsFunc(x.Coats, func(k LoggedCoat) bool { return strings.Contains(k.By, word) }) {
			by = append(by, word)
		}
	}
	return ", by " + strings.Join(by, " and ")
}

// extras says where coats of the same coating lie beside the working ones.
func (w *passport) extras(p compat.Part, working LoggedLayer) string {
	for _, x := range w.log.Layers { // extra coats of one coating are one layer
		if x.Part == p.Name && x.Layer == compat.Extra && len(x.Coats) > 0 && x.Coating.Key == working.Coating.Key {
			return fmt.Sprintf("; %s more on: %s, %s", coatsWords(x.Laid), strings.Join(x.Zones, ", "), toldFilm(x.Film))
		}
	}
	return ""
}

func coatsWords(n int) string {
	if n <= 1 {
		return "1 coat"
	}
	return fmt.Sprintf("%d coats", n)
}

// toldFilm is a film in words of a boat file.
func toldFilm(f quantity.Range[quantity.Film]) string {
	if !f.Low.Given() {
		return "film not noted"
	}
	f = microns(f)
	return fmt.Sprintf("%s to %s um", f.Low.Number(), f.High.Number())
}

// near is a film of whole micrometres.
func near(r quantity.Range[float64]) quantity.Range[quantity.Film] {
	um := func(x float64, to quantity.Rounding) quantity.Film {
		f, _ := quantity.Micrometre.Near(x, 0, to)
		return f
	}
	return quantity.Range[quantity.Film]{Low: um(r.Low, quantity.Down), Typical: um(max(r.Low, math.Min(r.Typical, r.High)), quantity.Nearest), High: um(r.High, quantity.Up)}
}
