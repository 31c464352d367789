package gauge_test

import (
	"errors"
	"slices"
	"testing"

	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Whether an instrument reads on a material is told by the rule of its verdict, with the words of its row.
func TestReadsTellsTheRowsWords(t *testing.T) {
	b := tables.Default()
	seen := map[finding.ID]bool{}
	for x := range b.Instruments() {
		for m := range b.Materials() {
			fs := gauge.Reads(b, x.Key, m.Key)
			if len(fs) != 1 {
				t.Fatalf("%s on %s: %v", x.Key, m.Key, fs)
			}
			f := fs[0]
			want, words := gauge.RuleReadsNot, ""
			switch x.On(m.Key) {
			case finding.Fine:
				want, words = gauge.RuleReads, x.Says
			case finding.Caution:
				want, words = gauge.RuleBeware, x.Warns
			case finding.Ask:
				want, words = gauge.RuleAskMaker, x.Question
			case finding.Needs, finding.Forbidden:
			}
			seen[want] = true
			if f.Rule != want || f.Verdict != x.On(m.Key) || f.About != x.Name || f.Against != m.Name || len(f.Basis) != 1 {
				t.Errorf("%s on %s: %+v", x.Key, m.Key, f)
			}
			if words != "" && (len(f.Facts) != 1 || f.Facts[0].Value != words) {
				t.Errorf("%s on %s says %v, want %q", x.Key, m.Key, f.Facts, words)
			}
		}
	}
	for _, id := range []finding.ID{gauge.RuleReads, gauge.RuleBeware, gauge.RuleAskMaker, gauge.RuleReadsNot} {
		if !seen[id] {
			t.Errorf("no instrument and material come to %s", id)
		}
	}
}

// Films from just above zero to 5000 um are films that a gauge shows, as readings and as what was asked for.
func TestFilmsOnTheirEnds(t *testing.T) {
	um := func(s string) quantity.Film {
		f, err := quantity.Parse[quantity.Film](s)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	for film, taken := range map[string]bool{"0 um": false, "0.1 um": true, "0.5 um": true, "5000 um": true, "5000.1 um": false} {
		reading, nominal := survey(passes), survey(passes)
		reading.Readings[0].Film, nominal.Nominal = um(film), um(film)
		for key, s := range map[string]gauge.Survey{"readings[1]": reading, "nominal": nominal} {
			fs := s.Check(tables.Default())
			if told := slices.ContainsFunc(fs, func(f finding.Fault) bool { return f.Key == key }); told == taken || len(fs) > 1 {
				t.Errorf("%s = %s: %v", key, film, fs)
			}
		}
	}
	for most, taken := range map[string]bool{"319 um": false, "320 um": true, "5000 um": true, "5001 um": false} {
		s := survey(passes)
		s.Most = um(most)
		if fs := s.Check(tables.Default()); (len(fs) == 0) != taken {
			t.Errorf("at most %s: %v", most, fs)
		}
	}
	for _, area := range []quantity.Area{{}, quantity.SquareMetre.N(0), quantity.SquareMetre.N(-1)} {
		if _, _, err := gauge.Needed(tables.Default(), gauge.ISO19840, area); !errors.Is(err, finding.ErrImpossible) {
			t.Errorf("readings on %s: %v", area, err)
		}
	}
}

// One reading in a zone is a reading: the zone is judged, as too few, and not said to be unread.
func TestOneReadingInAZone(t *testing.T) {
	for readings, want := range map[string]bool{"": true, "330": false, "330 340": false} {
		got := inspect(t, boat(readings))
		if unread := got.Zones[1].Findings.Has(gauge.RuleNotRead); unread != want {
			t.Errorf("%q: said to be unread %t, %v", readings, unread, got.Zones[1].Findings)
		}
	}
}

// An area is above nought, and a reading is named by the line of its sheet where it has one.
func TestWhatASurveyIsOf(t *testing.T) {
	for _, area := range []quantity.Area{{}, quantity.SquareMetre.N(0), quantity.SquareMetre.N(-1)} {
		s := survey(passes)
		s.Area = area
		if fs := s.Check(tables.Default()); len(fs) != 1 || fs[0].Key != "area" {
			t.Errorf("%s: %v", area, fs)
		}
	}
	for line, key := range map[int]string{0: "readings[3]", 1: "line 1", 2: "line 2"} {
		s := survey(passes)
		s.Readings[2] = gauge.Reading{Line: line}
		if fs := s.Check(tables.Default()); len(fs) != 1 || fs[0].Key != key {
			t.Errorf("line %d: %v", line, fs)
		}
	}
}

// A mean is told in the unit of the first film. By hand: 100 um and 5 mil, which are 127 um, have the mean 113.5 um or 4.4685 mil and some.
func TestMeanInTheUnitOfTheFirst(t *testing.T) {
	um, mil := quantity.Micrometre.N(100), quantity.Mil.N(5)
	for want, films := range map[string][]quantity.Film{"113.5 um": {um, mil}, "4.4685 mil": {mil, um}, "100.0 um": {um}, "5.0000 mil": {mil}} {
		if got := gauge.Mean(films); got.String() != want {
			t.Errorf("the mean of %v is %s, want %s", films, got, want)
		}
	}
}
