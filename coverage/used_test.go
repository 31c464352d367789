package coverage_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func used(t *testing.T, s coverage.Spent) coverage.UsedFilm {
	t.Helper()
	got, err := coverage.Used(whole(t), s)
	if err != nil {
		t.Fatal(err)
	}
	sentences(t, got.Findings)
	return got
}

func areas(t *testing.T, low, typical, high string) quantity.Range[quantity.Area] {
	t.Helper()
	return quantity.Range[quantity.Area]{Low: area(t, low), Typical: area(t, typical), High: area(t, high)}
}

// spent is two coats of the planing boat that TestPlaningBoatByHand reckons, 50 um by roller, from so many litres.
func spent(t *testing.T, litres string) coverage.Spent {
	t.Helper()
	return coverage.Spent{
		Litres: litre(t, litres), Area: areas(t, "30.14 m2", "34.16 m2", "38.18 m2"), Coats: 2, Coating: coating(t, "45 %", "50 %", "55 %"),
		Method: coverage.Method{By: "roller"}, Asked: film(t, "50 um"),
	}
}

// 8.30 L in two coats:
//
//	low      (4.15 − 0.50) × 45 × 85 ÷ (10 × 38.18) = 13961.25 ÷ 381.8 = 36.566919
//	typical  (4.15 − 0.35) × 50 × 90 ÷ (10 × 34.16) = 17100 ÷ 341.6    = 50.058548
//	high     (4.15 − 0.25) × 55 × 95 ÷ (10 × 30.14) = 20377.5 ÷ 301.4  = 67.609489
func TestUsedByHand(t *testing.T) {
	got := used(t, spent(t, "8.30 L"))
	if r := rangeText(got.Coat); r != "36.5669 um, 50.0585 um, 67.6094 um" || got.Findings[0].Rule != coverage.RuleUsedFits {
		t.Errorf("%s: %v", r, got.Findings)
	}
}

// One coat on exactly 10 m2 by brush, whose loss is 3 to 10 % and residue 0.1 to 0.25 L, of a paint with 50 % solids:
//
//	high  (L − 0.1) × 50 × 97 ÷ 100      low  (L − 0.25) × 50 × 90 ÷ 100
//
// 97 um asked for: the high end is on it at L = 2.1, so that fits, and less does not. 45 asked for: the low end is on it at 1.25. The
// share used-doubt is 0.33: the high end of 2.1 L is on 0.33 of 97 ÷ 0.33 = 293.939…, so 293.9 is thin and 294 is doubted.
func TestUsedOnItsLimits(t *testing.T) {
	for _, c := range []struct {
		litres, asked string
		want          finding.ID
	}{
		{"2.1 L", "97 um", coverage.RuleUsedFits},
		{"2.09 L", "97 um", coverage.RuleUsedThin},
		{"2.1 L", "97.1 um", coverage.RuleUsedThin},
		{"1.25 L", "45 um", coverage.RuleUsedFits},
		{"1.26 L", "45 um", coverage.RuleUsedThick},
		{"1.25 L", "44.9 um", coverage.RuleUsedThick},
		{"2.1 L", "293.9 um", coverage.RuleUsedThin},
		{"2.1 L", "294 um", coverage.RuleUsedDoubt},
	} {
		s := coverage.Spent{
			Litres: litre(t, c.litres), Area: quantity.Exactly(area(t, "10 m2")), Coats: 1, Coating: coating(t, "50 %"),
			Method: coverage.Method{By: "brush"}, Asked: film(t, c.asked),
		}
		if got := used(t, s); got.Findings[0].Rule != c.want {
			t.Errorf("%s for %s: %s (%s), want %s", c.litres, c.asked, got.Findings[0].Rule, rangeText(got.Coat), c.want)
		}
	}
	// On the share itself it is thin: 97 um are the half of 194.
	half := with(t, whole(t), "[[factor]]\nkey = \"used-doubt\"\nvalue = 0.5\nbasis = \"own table\"\nsource = \"a yard\"\n")
	for asked, want := range map[string]finding.ID{"193.9 um": coverage.RuleUsedThin, "194 um": coverage.RuleUsedThin, "194.1 um": coverage.RuleUsedDoubt} {
		got, err := coverage.Used(half, coverage.Spent{
			Litres: litre(t, "2.1 L"), Area: quantity.Exactly(area(t, "10 m2")), Coats: 1, Coating: coating(t, "50 %"), Method: coverage.Method{By: "brush"}, Asked: film(t, asked),
		})
		if err != nil || got.Findings[0].Rule != want {
			t.Errorf("half of %s: %v, %v; want %s", asked, got.Findings, err, want)
		}
	}
	// Litres of a tin where a drum was meant.
	if got := used(t, spent(t, "0.75 L")); got.Findings[0].Rule != coverage.RuleUsedDoubt || got.Findings.Worst() != finding.Ask {
		t.Errorf("%s: %v", rangeText(got.Coat), got.Findings)
	}
}

// The film that each coat was to have is the coating's typical one where nobody says.
func TestUsedAsksForTheCoatingsFilm(t *testing.T) {
	s := spent(t, "8.30 L")
	s.Asked = quantity.Film{}
	s.Coating.Film = quantity.Exactly(film(t, "120 um"))
	if got := used(t, s); got.Findings[0].Rule != coverage.RuleUsedThin {
		t.Errorf("%v", got.Findings)
	}
}

// Used is Paint the other way round: of the litres that Paint names at each end, Used makes at least the film that went in, and no more
// than 0.01 L beyond it. On small areas too, where the residue is as much as the coat takes.
func TestUsedGivesBackWhatPaintTook(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 84))
	b := whole(t)
	for i := range 500 {
		base := 0.2 + r.Float64()*r.Float64()*80
		m2 := func(k float64) quantity.Area {
			a, err := quantity.SquareMetre.Near(base*k, 2, quantity.Up)
			if err != nil {
				t.Fatal(err)
			}
			return a
		}
		a := quantity.Range[quantity.Area]{Low: m2(1), Typical: m2(1.1), High: m2(1.3)}
		f := quantity.Micrometre.N(1 + r.Int64N(400))
		coats := 1 + r.IntN(6)
		c := coating(t, "40 %", "50 %", "65 %")
		for l := range b.Losses() {
			m := coverage.Method{By: l.Key}
			litres, err := coverage.Paint(b, a, c, f, coats, m)
			if err != nil {
				t.Fatal(err)
			}
			for _, end := range []struct {
				name         string
				litres       quantity.Volume
				of           func(quantity.Range[quantity.Film]) quantity.Film
				area         quantity.Area
				solids, loss decimal.Decimal
			}{
				{"low", litres.Low, func(f quantity.Range[quantity.Film]) quantity.Film { return f.High }, a.Low, c.Solids.High.Number(), l.Share.Low.Number()},
				{"typical", litres.Typical, func(f quantity.Range[quantity.Film]) quantity.Film { return f.Typical }, a.Typical, c.Solids.Typical.Number(), l.Share.Typical.Number()},
				{"high", litres.High, func(f quantity.Range[quantity.Film]) quantity.Film { return f.Low }, a.High, c.Solids.Low.Number(), l.Share.High.Number()},
			} {
				got, err := coverage.Used(b, coverage.Spent{Litres: end.litres, Area: a, Coats: coats, Coating: c, Method: m, Asked: f})
				if err != nil {
					t.Fatal(err)
				}
				back := end.of(got.Coat)
				// 0.01 L ÷ coats × solids × (100 − loss) ÷ (10 × area), cross-multiplied to leave no division.
				extra := back.Sub(f).Number().Mul(decimal.NewFromInt(int64(10 * coats))).Mul(end.area.Number())
				most := decimal.New(1, -2).Mul(end.solids).Mul(decimal.NewFromInt(100).Sub(end.loss))
				if back.Cmp(f) < 0 || extra.Cmp(most) > 0 {
					t.Fatalf("case %d, %s, %s end: %s of %s on %s in %d coats gives %s back", i, l.Key, end.name, end.litres, f, end.area, coats, back)
				}
			}
		}
	}
}

// More litres never make a thinner film.
func TestUsedRises(t *testing.T) {
	last := used(t, spent(t, "0.1 L")).Coat
	for n := int64(2); n < 300; n++ {
		now := used(t, spent(t, fmt.Sprintf("%d.%d L", n/10, n%10))).Coat
		if now.Low.Cmp(last.Low) < 0 || now.Typical.Cmp(last.Typical) < 0 || now.High.Cmp(last.High) < 0 || now.Low.Cmp(now.Typical) > 0 || now.Typical.Cmp(now.High) > 0 {
			t.Fatalf("%d tenths of a litre: %s after %s", n, rangeText(now), rangeText(last))
		}
		last = now
	}
}

func TestEveryFaultOfWhatWasUsed(t *testing.T) {
	s := coverage.Spent{Litres: litre(t, "-1 L"), Coats: 51, Coating: coating(t, "0 %"), Method: coverage.Method{By: "mop"}}
	_, err := coverage.Used(whole(t), s)
	for _, word := range []string{"litres", "area", "coats", "coating[test].solids", "by", "asked"} {
		if err == nil || !strings.Contains(err.Error(), word) {
			t.Errorf("%s is not named in\n%v", word, err)
		}
	}
	if _, err := coverage.Used(book(t), spent(t, "8 L")); err == nil || !strings.Contains(err.Error(), "used-doubt") {
		t.Errorf("a book without the factor: %v", err)
	}
}

// 70 um are missing on 4 m2 of a paint of at most 60 um a coat: two coats of 35, and since its thinnest coat is 40, two of 40. By brush, 50 % solids:
//
//	2 × (10 × 4 × 40 ÷ (50 × 95) + 0.15) = 2 × (0.336842 + 0.15) = 0.973684, up: 0.98 L
func TestMissing(t *testing.T) {
	c := coating(t, "50 %")
	c.Film = quantity.Range[quantity.Film]{Low: film(t, "40 um"), Typical: film(t, "50 um"), High: film(t, "60 um")}
	ask := func(missing string) coverage.More {
		got, err := coverage.Missing(whole(t), quantity.Exactly(area(t, "4 m2")), c, film(t, missing), coverage.Method{By: "brush"})
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	if got := ask("70 um"); got.Coats != 2 || got.Film.String() != "40 um" || got.Litres.Typical.String() != "0.98 L" {
		t.Errorf("%d coats of %s, %s", got.Coats, got.Film, got.Litres.Typical)
	}
	if got := ask("6 um"); got.Coats != 1 || got.Film.String() != "40 um" {
		t.Errorf("6 um are %d coats of %s: nobody rolls 6 um", got.Coats, got.Film)
	}
	for missing, coats := range map[string]int{"0.1 um": 1, "60 um": 1, "60.1 um": 2, "120 um": 2, "121 um": 3} {
		if got := ask(missing); got.Coats != coats {
			t.Errorf("%s: %d coats, want %d", missing, got.Coats, coats)
		}
	}
	// The litres are those of Paint.
	got := ask("55 um")
	want, err := coverage.Paint(whole(t), quantity.Exactly(area(t, "4 m2")), c, film(t, "55 um"), 1, coverage.Method{By: "brush"})
	if err != nil || rangeText(got.Litres) != rangeText(want) {
		t.Errorf("%s, want %s, %v", rangeText(got.Litres), rangeText(want), err)
	}
	for _, bad := range []string{"0 um", "-1 um", "3001 um"} {
		if _, err := coverage.Missing(whole(t), quantity.Exactly(area(t, "4 m2")), c, film(t, bad), coverage.Method{By: "brush"}); err == nil {
			t.Errorf("%s is missing without a fault", bad)
		}
	}
	// 2 mil in two coats are just the thinnest coat, of 25.4 um: it stays what was asked for.
	c.Film = quantity.Range[quantity.Film]{Low: film(t, "25.4 um"), Typical: film(t, "28 um"), High: film(t, "30 um")}
	if got := ask("2 mil"); got.Coats != 2 || got.Film.String() != "1.0000 mil" {
		t.Errorf("2 mil: %d coats of %s", got.Coats, got.Film)
	}
	c.Film = quantity.Range[quantity.Film]{}
	if got := ask("70 um"); got.Coats != 1 || !got.Film.Equal(film(t, "70 um")) {
		t.Errorf("of a coating of which nobody says how thick a coat is: %d coats of %s", got.Coats, got.Film)
	}
}
