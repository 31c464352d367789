package compat_test

import (
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
)

func BenchmarkOver(b *testing.B) {
	book := book(b)
	next, old := coating(b, book, "hard-cuprous"), sound(b, book, "ablative-old", 100)
	b.ReportAllocs()
	for b.Loop() {
		compat.Over(book, next, old)
	}
}

func BenchmarkOnMaterial(b *testing.B) {
	book := book(b)
	c := coating(b, book, "ablative-thiocyanate")
	p := compat.Part{Name: "hull", Material: "aluminium", Zone: "hull", Found: compat.Stack{sound(b, book, "epoxy-barrier", 400)}}
	b.ReportAllocs()
	for b.Loop() {
		compat.OnMaterial(book, c, p)
	}
}

// BenchmarkRoutesOfEveryType asks for every type that a bottom can end with, as a ranking does.
func BenchmarkRoutesOfEveryType(b *testing.B) {
	book := book(b)
	p := compat.Part{Name: "hull", Material: "grp", Zone: "hull", Found: compat.Stack{sound(b, book, "ablative-old", 100)}}
	types := wanted(book)
	b.ReportAllocs()
	for b.Loop() {
		for _, c := range types {
			compat.Routes(book, p, c)
		}
	}
}

// BenchmarkSurfaceOfEveryType asks one surface for the best way to every type, as a ranking does.
func BenchmarkSurfaceOfEveryType(b *testing.B) {
	book := book(b)
	p := compat.Part{Name: "hull", Material: "grp", Zone: "hull", Found: compat.Stack{sound(b, book, "ablative-old", 100)}}
	types := wanted(book)
	b.ReportAllocs()
	for b.Loop() {
		s := compat.On(book, p)
		for i := range types {
			s.Best(&types[i])
		}
	}
}

// BenchmarkWholeMatrix judges every coating over every coating and old film, in every state, in and past its window.
func BenchmarkWholeMatrix(b *testing.B) {
	book := book(b)
	var layers []compat.Layer
	for old := range book.Coatings() {
		for state := range book.Conditions() {
			layers = append(layers, compat.Layer{Coating: old, State: tables.Condition(state.Key)}, compat.Layer{Coating: old, State: tables.Condition(state.Key), Age: old.OvercoatMin})
		}
	}
	b.ReportAllocs()
	n := 0
	for b.Loop() {
		n = 0
		for next := range book.Coatings() {
			if next.Role == tables.OldFilm {
				continue
			}
			for _, l := range layers {
				compat.Over(book, next, l)
				n++
			}
		}
	}
	b.ReportMetric(float64(n), "answers")
}

// BenchmarkEveryMaterial judges every coating on every material and fitting.
func BenchmarkEveryMaterial(b *testing.B) {
	book := book(b)
	b.ReportAllocs()
	for b.Loop() {
		for m := range book.Materials() {
			p := compat.Part{Name: "part", Material: m.Key, Found: bare(b, book)}
			for c := range book.Coatings() {
				compat.OnMaterial(book, c, p)
			}
		}
	}
}
