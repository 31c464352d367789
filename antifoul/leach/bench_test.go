package leach_test

import (
	"testing"

	"boatyard.example/bottomwork/antifoul/leach"
	"boatyard.example/bottomwork/tables"
)

func BenchmarkContent(b *testing.B) {
	book := tables.Default()
	c := coating(b, book, "self-polishing-cuprous")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := leach.Content(book, c, um(120)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMean(b *testing.B) {
	book := tables.Default()
	c := coating(b, book, "self-polishing-cuprous")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := leach.Mean(book, c, um(120), 12); err != nil {
			b.Fatal(err)
		}
	}
}
