package coverage_test

import (
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// own are the table files that this package reads, and the sources that they cite.
var own = []string{"hullforms.toml", "areamethods.toml", "pieces.toml", "supplies.toml", "published/iso-8503-1.toml", "published/iso-19840-2012.toml", "zones.toml", "losses.toml", "cautions.toml", "cans.toml", "factors_coverage.toml", "rules_coverage.toml", "rules_hullform.toml", "sources.toml"}

// book holds the package's own tables only, so that its tests depend on no other file.
func book(tb testing.TB) *tables.Book {
	tb.Helper()
	files := fstest.MapFS{}
	for _, name := range own {
		data, err := os.ReadFile(filepath.Join("..", "tables", "data", name))
		if err != nil {
			tb.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: data}
	}
	b, err := tables.Load(files)
	if err != nil {
		tb.Fatal(err)
	}
	return b
}

// with puts own rows on top of the book.
func with(tb testing.TB, b *tables.Book, toml string) *tables.Book {
	tb.Helper()
	out, err := b.With(fstest.MapFS{"own.toml": {Data: []byte(toml)}})
	if err != nil {
		tb.Fatal(err)
	}
	return out
}

func parse[Q quantity.Quantity](tb testing.TB, s string) Q {
	tb.Helper()
	q, err := quantity.Parse[Q](s)
	if err != nil {
		tb.Fatal(err)
	}
	return q
}

func length(tb testing.TB, s string) quantity.Length {
	tb.Helper()
	return parse[quantity.Length](tb, s)
}

func area(tb testing.TB, s string) quantity.Area { tb.Helper(); return parse[quantity.Area](tb, s) }

func film(tb testing.TB, s string) quantity.Film { tb.Helper(); return parse[quantity.Film](tb, s) }

func share(tb testing.TB, s string) quantity.Share { tb.Helper(); return parse[quantity.Share](tb, s) }

func litre(tb testing.TB, s string) quantity.Volume {
	tb.Helper()
	return parse[quantity.Volume](tb, s)
}

func money(tb testing.TB, s string) quantity.Money {
	tb.Helper()
	m, err := quantity.ParseMoney(s)
	if err != nil {
		tb.Fatal(err)
	}
	return m
}

func dec(tb testing.TB, s string) decimal.Decimal {
	tb.Helper()
	d, err := decimal.NewFromString(s)
	if err != nil {
		tb.Fatal(err)
	}
	return d
}

// near fails unless got is within tolerance of want.
func near(tb testing.TB, what string, got decimal.Decimal, want, tolerance string) {
	tb.Helper()
	if off := got.Sub(dec(tb, want)).Abs(); off.Cmp(dec(tb, tolerance)) > 0 {
		tb.Errorf("%s = %s, want %s within %s", what, got, want, tolerance)
	}
}

func hull(tb testing.TB, kind, l, b, d string) coverage.Hull {
	tb.Helper()
	return coverage.Hull{Kind: kind, Length: length(tb, l), Beam: length(tb, b), Draft: length(tb, d)}
}

// girths makes stations of where and how much.
func girths(tb testing.TB, pairs ...string) []hullform.Station {
	tb.Helper()
	var out []hullform.Station
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, hullform.Station{At: length(tb, pairs[i]), Girth: length(tb, pairs[i+1])})
	}
	return out
}

func mapFS(name, data string) fstest.MapFS { return fstest.MapFS{name: {Data: []byte(data)}} }
