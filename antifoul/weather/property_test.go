package weather_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul/weather"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// mixed makes hours of any weather; the surface is measured in the share of them.
func mixed(seed uint64, n int, measured float64) []weather.Hour {
	r := rand.New(rand.NewPCG(seed, 7))
	some := func(v float64) float64 {
		if r.Float64() < 0.05 {
			return weather.Unknown()
		}
		return v
	}
	var out []weather.Hour
	c := 10.0
	for i := range n {
		c = max(-10, min(45, c+r.NormFloat64()*2))
		h := weather.Hour{
			At: start.Add(time.Duration(i) * time.Hour), AirC: some(c), SurfaceC: weather.Unknown(), HumidityPct: some(20 + 80*r.Float64()),
			RainMM: some(max(0, r.NormFloat64()-1)), WindMS: some(10 * r.Float64()),
		}
		if r.Float64() < measured {
			h.SurfaceC = c + r.NormFloat64()*3
		}
		out = append(out, h)
	}
	return out
}

func said(b *tables.Book, fs finding.List) string {
	var out strings.Builder
	for _, f := range fs {
		fmt.Fprintln(&out, f.Rule, f.Verdict, b.Say(f, quantity.Metric), f.Basis)
	}
	return out.String()
}

// Where every surface is measured a sky says of every coating what Judge says, word for word; and the verdict is the worst of its reasons everywhere.
func TestSkyAgreesWithJudge(t *testing.T) {
	b := tables.Default()
	hours := mixed(1, 300, 1)
	site, guessed := at(t, b, hours, false), at(t, b, mixed(2, 300, 0.1), false)
	seen := map[finding.Verdict]int{}
	for c := range b.Coatings() {
		k := site.For(weather.Coat{Coating: c, On: []tables.Material{material(t, b, "steel")}})
		for i, h := range hours {
			want := weather.Judge(b, c, h)
			if got := k.Why(i); said(b, got) != said(b, want) || k.Verdict(i) != want.Worst() {
				t.Fatalf("%s in hour %d: %v\n%swant\n%s", c.Key, i, k.Verdict(i), said(b, got), said(b, want))
			}
			seen[want.Worst()]++
		}
		k = guessed.For(weather.Coat{Coating: c, On: []tables.Material{material(t, b, "grp")}, Falling: true})
		for i := range k.Len() {
			if why, wet := k.Why(i), k.WhyWets(i); k.Verdict(i) != why.Worst() || k.Wets(i) != wet.Worst() {
				t.Fatalf("%s in hour %d: %v for %v, %v for %v", c.Key, i, k.Verdict(i), why, k.Wets(i), wet)
			}
			if s := k.Surface(i); !(s.Low <= s.Typical && s.Typical <= s.High) && !math.IsNaN(s.Low) {
				t.Fatalf("hour %d: surface %v", i, s)
			}
		}
	}
	for _, v := range []finding.Verdict{finding.Fine, finding.Ask, finding.Forbidden} {
		if seen[v] < 100 {
			t.Errorf("%d hours are %v: the property is hardly tried", seen[v], v)
		}
	}
}

// What can only help never hurts, and what can only hurt never helps.
func TestBetterAndWorse(t *testing.T) {
	b := tables.Default()
	spray, err := b.Loss("air-spray")
	if err != nil {
		t.Fatal(err)
	}
	sure, unsure := own(t, surfaceError("1")), own(t, surfaceError("4"))
	hours := mixed(3, 2000, 0.2)
	grp, lead := material(t, b, "grp"), material(t, b, "lead")
	c := coating(t, b, "ablative-cuprous-multi")
	coat := weather.Coat{Coating: c, On: []tables.Material{grp}, By: spray}
	open, roof := at(t, b, hours, false).For(coat), at(t, b, hours, true).For(coat)
	near, far := at(t, sure, hours, false).For(coat), at(t, unsure, hours, false).For(coat)
	coat.On = append(coat.On, lead)
	more := at(t, b, hours, false).For(coat)
	coat.On, coat.Falling = coat.On[:1], true
	falling := at(t, b, hours, false).For(coat)
	helped, hurt, doubted := 0, 0, 0
	for i := range hours {
		if roof.Verdict(i) > open.Verdict(i) || roof.Wets(i) > open.Wets(i) {
			t.Fatalf("hour %d: a roof makes it worse", i)
		}
		if more.Verdict(i) < open.Verdict(i) || more.Wets(i) < open.Wets(i) {
			t.Fatalf("hour %d: another part makes it better", i)
		}
		if falling.Verdict(i) < open.Verdict(i) {
			t.Fatalf("hour %d: one condition more makes it better", i)
		}
		// A surface that is known less is fine in no hour more, and forbidden in none more.
		if far.Verdict(i) == finding.Fine && near.Verdict(i) != finding.Fine || far.Verdict(i) == finding.Forbidden && near.Verdict(i) != finding.Forbidden {
			t.Fatalf("hour %d: %v with an error of 1 K, %v with 4 K", i, near.Verdict(i), far.Verdict(i))
		}
		if roof.Verdict(i) < open.Verdict(i) {
			helped++
		}
		if more.Verdict(i) > open.Verdict(i) || falling.Verdict(i) > open.Verdict(i) {
			hurt++
		}
		if near.Verdict(i) != far.Verdict(i) {
			doubted++
		}
	}
	if helped < 50 || hurt < 50 || doubted < 50 {
		t.Errorf("hardly tried: %d helped, %d hurt, %d doubted", helped, hurt, doubted)
	}
}

func surfaceError(k string) string {
	return "[[factor]]\nkey = \"surface-error\"\nbasis = \"own table\"\nsource = \"thermometer\"\nvalue = " + k + "\n"
}

// After a drop of the air the slower skin is the warmer, after a rise the colder, for every lag there is; and no surface leaves the air that it has seen.
func TestSlowerSkins(t *testing.T) {
	b := tables.Default()
	c := coating(t, b, "ablative-cuprous-multi")
	for _, step := range []float64{-12, 12} {
		hours := air(append(steady(15, 24), steady(15+step, 24)...)...)
		site := at(t, b, hours, false)
		for slow := range b.Materials() {
			if slow.Lag.Typical == 0 {
				continue
			}
			k := site.For(weather.Coat{Coating: c, On: []tables.Material{slow}})
			for i := range hours {
				s := k.Surface(i)
				if s.Typical < min(15, 15+step)-1e-9 || s.Typical > max(15, 15+step)+1e-9 {
					t.Errorf("%s, hour %d: %v", slow.Key, i, s)
				}
			}
			for fast := range b.Materials() {
				if !(fast.Lag.Typical < slow.Lag.Typical) || fast.Lag.Typical == 0 {
					continue
				}
				f := site.For(weather.Coat{Coating: c, On: []tables.Material{fast}})
				for i := 24; i < 36; i++ {
					if d := k.Surface(i).Typical - f.Surface(i).Typical; d*step > 1e-9 || i < 26 && d*step == 0 {
						t.Fatalf("%s is %g K over %s after a step of %g", slow.Key, d, fast.Key, step)
					}
				}
			}
		}
	}
}

// A year of hours for six coats: what a calendar asks for.
func BenchmarkYearForSixCoats(b *testing.B) {
	book := tables.Default()
	hours := mixed(4, 8760, 0)
	var coats []weather.Coat
	for i, key := range []string{"grp", "grp", "steel", "lead", "grp", "steel"} {
		coats = append(coats, weather.Coat{Coating: coating(b, book, "ablative-cuprous-multi"), On: []tables.Material{material(b, book, key)}, Falling: i == 0})
	}
	for b.Loop() {
		site, err := weather.At(book, hours, false)
		if err != nil {
			b.Fatal(err)
		}
		for _, c := range coats {
			site.For(c)
		}
	}
}

func TestVerdictsAllocateNothing(t *testing.T) {
	b := tables.Default()
	k := at(t, b, mixed(5, 100, 0.3), false).For(weather.Coat{Coating: coating(t, b, "ablative-cuprous-multi"), On: []tables.Material{material(t, b, "grp")}})
	worst := finding.Verdict(0)
	if n := testing.AllocsPerRun(10, func() {
		for i := range k.Len() {
			worst = max(worst, k.Verdict(i), k.Wets(i))
		}
	}); n != 0 || worst != finding.Forbidden {
		t.Errorf("%g allocations, worst %v", n, worst)
	}
}
