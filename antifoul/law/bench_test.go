package law_test

import (
	"testing"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
)

func BenchmarkDeskScreen(b *testing.B) {
	book := tables.Default()
	d := law.At(book, sloop, kept("US-WA", "salt"), day(b, "2026-11-25"))
	c := coating(b, book, "hard-cuprous")
	b.ReportAllocs()
	for b.Loop() {
		d.Screen(c)
	}
}

func BenchmarkDeskScreenSweden(b *testing.B) {
	book := tables.Default()
	d := law.At(book, sloop, kept("SE-fresh", "fresh"), day(b, "2026-11-25"))
	c := coating(b, book, "hard-thiocyanate")
	b.ReportAllocs()
	for b.Loop() {
		d.Screen(c)
	}
}

func BenchmarkAt(b *testing.B) {
	book := tables.Default()
	on := day(b, "2026-11-25")
	b.ReportAllocs()
	for b.Loop() {
		law.At(book, sloop, kept("US-WA", "salt"), on)
	}
}
