package compat_test

import (
	"testing"

	"boatyard.example/bottomwork/compat"
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
