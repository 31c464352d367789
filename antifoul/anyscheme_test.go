package antifoul_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// cent is the step to which litres are rounded up.
const cent = 0.01

// schemeAddsUp holds that a scheme says one thing: what was found lies under what is new, each new layer is put on as a coat of its own, its film is that of
// its coats, and a coat covers the zones that it names.
func schemeAddsUp(t *testing.T, n uint64, j *antifoul.Job, s antifoul.Scheme) {
	t.Helper()
	fresh := slices.IndexFunc(s.Stack, func(l compat.Layer) bool { return l.For != compat.Found })
	if fresh < 0 {
		fresh = len(s.Stack)
	}
	if got := len(s.Stack) - fresh; got != len(s.Coats) {
		t.Fatalf("boat %d, %s: %d new layers, %d of them put on", n, s.Part, got, len(s.Coats))
	}
	at := slices.IndexFunc(j.Areas, func(a antifoul.PartArea) bool { return a.Part == s.Part })
	for i, l := range s.Stack[fresh:] {
		k := s.Coats[i]
		if l.For == compat.Found {
			t.Errorf("boat %d, %s: %s was found over what is new", n, s.Part, l.Coating.Key)
		}
		if k.Layer.Coating.Key != l.Coating.Key || k.Layer.Colour != l.Colour || k.Layer.Coats != l.Coats || k.Layer.For != l.For {
			t.Errorf("boat %d, %s: layer %d is %v, and %v is put on", n, s.Part, i+1, l, k.Layer)
		}
		filmOfCoats(t, n, s.Part, l, k)
		var area [3]quantity.Area
		zones := 0
		for _, z := range j.Areas[at].Zones {
			row, err := j.Book.Zone(z.Zone)
			if err != nil {
				t.Fatal(err)
			}
			wanted := l.For != compat.Extra || row.ExtraCoats > 0
			if wanted != slices.Contains(k.Zones, z.Zone) {
				t.Errorf("boat %d, %s: %s in zone %s: %t", n, s.Part, l.For, z.Zone, !wanted)
			}
			if wanted {
				zones++
				for e, a := range []quantity.Area{z.Area.Low, z.Area.Typical, z.Area.High} {
					if area[e].Given() {
						a = a.Add(area[e])
					}
					area[e] = a
				}
			}
		}
		if zones != len(k.Zones) || !k.Area.Low.Equal(area[0]) || !k.Area.Typical.Equal(area[1]) || !k.Area.High.Equal(area[2]) {
			t.Errorf("boat %d, %s: %s covers %v in %v, and the zones have %v", n, s.Part, l.Coating.Key, k.Area, k.Zones, area)
		}
	}
}

// filmOfCoats holds that the film of a layer is that of its coats. A barrier is put on to the film that its material asks for: in the fewest coats that reach
// its typical end, or the coating's own least number.
func filmOfCoats(t *testing.T, n uint64, part string, l compat.Layer, k antifoul.Coat) {
	t.Helper()
	laid, asked, one := ends(k.Film, quantity.Micrometre), ends(l.Film, quantity.Micrometre), ends(l.Coating.Film, quantity.Micrometre)
	toFilm := l.For == compat.Undercoat && l.Coating.Role == tables.Barrier
	for e := range 3 {
		all := float64(l.Coats) * laid[e]
		if laid[e] != one[e] || laid[e] <= 0 || l.Coats < 1 || !toFilm && all != asked[e] {
			t.Errorf("boat %d, %s: %d coats of %s, %v um each of %v um, make %v um", n, part, l.Coats, l.Coating.Key, laid, one, asked)
		}
	}
	if toFilm && (float64(l.Coats)*laid[1] < asked[1] || l.Coats > max(1, l.Coating.Coats) && float64(l.Coats-1)*laid[1] >= asked[1]) {
		t.Errorf("boat %d, %s: %d coats of %s for %v um", n, part, l.Coats, l.Coating.Key, asked)
	}
}

// ends are the three numbers of a range in a unit.
func ends[D quantity.Dim](r quantity.Range[quantity.Amount[D]], unit quantity.Unit[D]) [3]float64 {
	return [3]float64{r.Low.Float(unit), r.Typical.Float(unit), r.High.Float(unit)}
}

// put is what a coat takes by the formula of the README: area × film ÷ (solids × (1 − loss)), at each end, and what stays in the tray and on the roller.
func put(b *tables.Book, by string, k antifoul.Coat) (on, tray [3]float64) {
	loss, _ := b.Loss(by)
	area, solids := ends(k.Area, quantity.SquareMetre), ends(k.Layer.Coating.Solids, quantity.Percent)
	share, left := ends(loss.Share, quantity.Percent), ends(loss.Residue, quantity.Litre)
	film := k.Layer.Coating.Film.Typical.Float(quantity.Micrometre)
	for e := range 3 {
		one := area[e] * film / 1000 / (solids[2-e] / 100 * (1 - share[e]/100))
		on[e], tray[e] = one*float64(k.Layer.Coats), math.Min(left[e], area[e]*film/1000/(solids[2-e]/100*(1-share[e]/100)))*float64(k.Layer.Coats)
	}
	return on, tray
}

// litresCover holds the litres of each coat against the formula, and what is bought against the coats: each end covers what is put on at that end, and no
// more is counted than the coats one by one, the places under stands and the valleys of a blasted surface take.
func litresCover(t *testing.T, n uint64, j *antifoul.Job) {
	t.Helper()
	type paint struct{ coating, colour string }
	type sum struct{ least, most [3]float64 }
	want := map[paint]*sum{}
	by := cmp.Or(j.Boat.Paint.By, "roller")
	for _, s := range j.Schemes {
		for _, k := range s.Coats {
			on, tray := put(j.Book, by, k)
			litres := ends(k.Litres, quantity.Litre)
			var fills [3]float64
			if k.Fills.Typical.Given() {
				if fills = ends(k.Fills, quantity.Litre); fills[0] <= 0 || fills[0] > fills[1] || fills[1] > fills[2] {
					t.Errorf("boat %d, %s: %s swallowed by the blasted surface", n, s.Part, k.Fills)
				}
			}
			key := paint{k.Layer.Coating.Key, k.Layer.Colour}
			if want[key] == nil {
				want[key] = &sum{}
			}
			for e := range 3 {
				if by, got := on[e]+tray[e], litres[e]-fills[e]; got < by-1e-9 || got > by+cent+1e-9 {
					t.Errorf("boat %d, %s: %s takes %.4f l at end %d, by hand %.4f", n, s.Part, key.coating, got, e, by)
				}
				want[key].least[e] += on[e] + fills[e]
				want[key].most[e] += litres[e]
			}
		}
	}
	for _, p := range j.Patches {
		w := want[paint{p.Coating.Key, p.Colour}]
		if w == nil {
			t.Errorf("boat %d: %s of %q on the places where she stands, and on no part", n, p.Coating.Key, p.Colour)
			continue
		}
		for e, l := range ends(p.Beside, quantity.Litre) {
			w.least[e] += l
			w.most[e] += l
		}
	}
	if len(j.Buy) != len(want) {
		t.Errorf("boat %d: %d paints are bought, %d put on", n, len(j.Buy), len(want))
	}
	for _, g := range j.Buy {
		w := want[paint{g.Coating.Key, g.Colour}]
		if w == nil {
			t.Errorf("boat %d: %s of %q is bought and not put on", n, g.Coating.Key, g.Colour)
			continue
		}
		for e, l := range ends(g.Range, quantity.Litre) {
			if l < w.least[e]-1e-9 || l > w.most[e]+1e-9 {
				t.Errorf("boat %d: %s: %.3f l at end %d; %.3f are put on, %.3f coat by coat", n, g.Coating.Key, l, e, w.least[e], w.most[e])
			}
		}
		bought(t, n, j, g)
	}
}

// bought holds the cans against the need: the typical litres with the reserve, and what is left over.
func bought(t *testing.T, n uint64, j *antifoul.Job, g antifoul.Bought) {
	t.Helper()
	need := g.Range.Typical.Float(quantity.Litre)
	if r := j.Boat.Paint.Reserve; r.Given() {
		need *= 1 + r.Float(quantity.Percent)/100
	}
	if got := g.Need.Float(quantity.Litre); got < need-1e-9 || got > need+cent+1e-9 {
		t.Errorf("boat %d: %s: %.3f l needed, by hand %.3f", n, g.Coating.Key, got, need)
	}
	total := quantity.Litre.N(0)
	for _, it := range slices.Concat(g.Items, g.FromStock) {
		if it.Count < 1 {
			t.Errorf("boat %d: %s: %d cans of %v", n, g.Coating.Key, it.Count, it.Can.Size)
		}
		total = total.Add(it.Can.Size.Scale(decimal.NewFromInt(int64(it.Count))))
	}
	if !g.Total.Equal(total) || !g.Left.Equal(total.Sub(g.Need)) || g.Left.Sign() < 0 {
		t.Errorf("boat %d: %s: the cans hold %v, %v is told, %v left of %v", n, g.Coating.Key, total, g.Total, g.Left, g.Need)
	}
}

// nothingForbidden judges the finished stack of a scheme as a stranger would who finds it there: nothing in it is forbidden. What is told of a pair of
// found films that nothing is laid on is no more than a caution.
func nothingForbidden(t *testing.T, n uint64, j *antifoul.Job, part compat.Part, s antifoul.Scheme) {
	t.Helper()
	for _, f := range compat.CheckStack(j.Book, part, s.Stack, -1).At(finding.Forbidden) {
		t.Errorf("boat %d, %s: %s in the finished stack: %s", n, s.Part, f.Rule, j.Book.Say(f, quantity.Metric))
	}
}

// What a plan says of layers, films and litres is one sum, and what it leaves on the boat may lie there.
func TestAnyBoatsSchemesAddUp(t *testing.T) {
	b := tables.Default()
	eachBoat(t, 2, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		j, err := antifoul.Plan(b, x)
		if err != nil {
			t.Fatalf("boat %d: %v", n, err)
		}
		for _, s := range j.Schemes {
			schemeAddsUp(t, n, j, s)
			nothingForbidden(t, n, j, x.Parts[slices.IndexFunc(x.Parts, func(p compat.Part) bool { return p.Name == s.Part })], s)
		}
		litresCover(t, n, j)
	})
}
