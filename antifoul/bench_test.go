package antifoul_test

import (
	"runtime"
	"strconv"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

func benchBoat(tb testing.TB, text string) antifoul.Boat {
	tb.Helper()
	boat, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
	if err != nil {
		tb.Fatal(err)
	}
	return boat
}

// onePart is the base boat with her hull only.
const onePart = `
[boat]
date = 2027-04-03
[hull]
kind = "fin-keel-yacht"
length = "9 m"
beam = "3 m"
draft = "1.6 m"
[[part]]
name = "hull"
zone = "hull"
material = "grp"
[[part.found]]
coating = "ablative-cuprous-multi"
colour = "red-oxide"
state = "sound"
[use]
under_way = "120 h"
speed = "6 kn"
longest_idle = "20 d"
haul_out_every = "24 months"
growth = "medium"
water = "salt"
[[berth]]
place = "GB"
role = "kept"
water = "salt"
`

func BenchmarkRank(b *testing.B) {
	book, boat := tables.Default(), benchBoat(b, onePart)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := antifoul.Rank(book, boat); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPlan(b *testing.B) {
	book, boat := tables.Default(), benchBoat(b, base)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := antifoul.Plan(book, boat); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadBoat(b *testing.B) {
	files := fstest.MapFS{"boat.toml": {Data: []byte(base)}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := antifoul.ReadBoat(files, "boat.toml"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSpecify(b *testing.B) {
	book, boat := tables.Default(), benchBoat(b, onePart)
	c, err := book.Coating("ablative-cuprous-multi")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := antifoul.Specify(book, boat, "hull", c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLogged(b *testing.B) {
	boat := benchBoat(b, sheet)
	j, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		b.Fatal(err)
	}
	l := wholeLog(j, boat.On.AddMonths(3), boat.On.AddMonths(20))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := j.Logged(l, time.Time{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkManyBoats ranks many boats that share one book, on all cores: time a boat and memory must not grow with their number. With -short
// the hundred thousand are left out.
func BenchmarkManyBoats(b *testing.B) {
	book := tables.Default()
	for _, n := range []int{1000, 10000, 100000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			if n > 10000 && testing.Short() {
				b.Skip("minutes")
			}
			boat := benchBoat(b, onePart)
			b.ReportAllocs()
			for b.Loop() {
				var boats sync.WaitGroup
				next := make(chan int)
				for range runtime.GOMAXPROCS(0) {
					boats.Go(func() {
						for i := range next {
							x := boat
							x.Use.Speed = quantity.Knot.N(int64(2 + i%30))
							if _, err := antifoul.Rank(book, x); err != nil {
								b.Error(err)
							}
						}
					})
				}
				for i := range n {
					next <- i
				}
				close(next)
				boats.Wait()
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/boat")
		})
	}
}

// A ranking is asked for in loops: it makes no words, copies no rows and looks nothing up in vain. What costs memory shows in the number of pieces.
func TestARankingCostsLittleMemory(t *testing.T) {
	if underRace {
		t.Skip("the race detector takes memory of its own")
	}
	book, boat := tables.Default(), benchBoat(t, onePart)
	if n := testing.AllocsPerRun(50, func() {
		if _, err := antifoul.Rank(book, boat); err != nil {
			t.Fatal(err)
		}
	}); n > 100 {
		t.Errorf("%.0f allocations", n)
	}
}
