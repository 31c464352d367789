package tables_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/tables"
)

func BenchmarkLoad(b *testing.B) {
	data := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS("data"), ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(filepath.Join("data", p))
		data[p] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		b.Fatal(err)
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
