package tables_test

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables"
)

func BenchmarkLoad(b *testing.B) {
	data := fstest.MapFS{}
	entries, err := os.ReadDir("data")
	if err != nil {
		b.Fatal(err)
	}
	for _, e := range entries {
		text, err := os.ReadFile("data/" + e.Name())
		if err != nil {
			b.Fatal(err)
		}
		data[e.Name()] = &fstest.MapFile{Data: text}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tables.Load(data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWithThousandRows(b *testing.B) {
	var text strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&text, "[[can]]\nkey = \"own-%d\"\nbasis = \"own table\"\nsource = \"price list\"\nsize = \"2.5 L\"\nprice = \"%d EUR\"\n", i, i)
	}
	own, base := ownFile(text.String()), tables.Default()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := base.With(own); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFingerprint(b *testing.B) {
	book := tables.Default()
	b.ReportAllocs()
	for b.Loop() {
		book.Fingerprint()
	}
}
