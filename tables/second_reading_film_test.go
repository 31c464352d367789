package tables_test

import (
	"maps"
	"math"
	"slices"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// The levels of SSPC-PA 2 are rows of acceptance; a single reading is limited by none of them, since a spot is three.
func TestRestrictionLevelsReadTwice(t *testing.T) {
	both(t, printed(t, "film_sspc_pa2_levels.csv"), func(l line) string { return "sspc-pa2-level-" + l.text(t, "level") },
		only(tables.Default().Acceptances(), func(a tables.Acceptance) bool { return a.Sampling == "SSPC-PA 2, metric" }),
		func(a tables.Acceptance) string { return a.Key }, nil,
		func(l line, name string, a tables.Acceptance) {
			for column, got := range map[string]quantity.Share{"spot min": a.LeastSingle, "spot max": a.MostSingle, "area min": a.LeastMean, "area max": a.MostMean} {
				if l.text(t, column) == "unrestricted" {
					if got.Given() {
						t.Errorf("%s: %s: %s: the row says %s, the second reading has no limit", l.file, name, column, got)
					}
					continue
				}
				same(t, l, name, column, got, quantity.Percent)
			}
			if a.Below.Given() || a.Guide != "" || a.Split.Given() {
				t.Errorf("%s has a limit that the table of levels has not", name)
			}
			counts := map[string]float64{}
			for _, c := range printed(t, "film_sspc_pa2_counts.csv") {
				counts[c.text(t, "what")] = c.number(t, "value")
			}
			if float64(a.Spots) != counts["spots in an area"] || float64(a.Readings) != counts["gauge readings in a spot"] || len(counts) != 2 {
				t.Errorf("%s: %d spots of %d readings, the second reading has %v", name, a.Spots, a.Readings, counts)
			}
		})
}

// The limits of the two standards that judge each reading for itself.
func TestAcceptancesReadTwice(t *testing.T) {
	iso, err := tables.Default().Acceptance("iso-19840")
	if err != nil {
		t.Fatal(err)
	}
	nine, err := tables.Default().Acceptance("nine-in-ten")
	if err != nil {
		t.Fatal(err)
	}
	fewer := map[bool]string{true: "fewer than", false: "at most"}
	percent := func(s quantity.Share) string { return s.In(quantity.Percent, 0, quantity.Nearest).String() + " %" }
	for file, want := range map[string]map[string]string{
		"film_iso_19840_acceptance.csv": {
			"mean of the readings":                       "at least " + percent(iso.LeastMean),
			"every single reading":                       "at least " + percent(iso.LeastSingle),
			"readings between 80 % and the nominal film": fewer[iso.Fewer] + " " + percent(iso.Below),
			"area above which one splits":                " " + iso.Split.String(),
		},
		"film_pspc_acceptance.csv": {
			"readings at or above the nominal film": "at least " + percent(quantity.Percent.N(100).Sub(nine.Below)),
			"every other reading":                   "at least " + percent(nine.LeastSingle),
		},
	} {
		lines := printed(t, file)
		for _, l := range lines {
			what := l.text(t, "what")
			if got := l.text(t, "bound") + " " + l.text(t, "value") + " " + l.text(t, "unit"); got != want[what] {
				t.Errorf("%s: %s: the row says %q, the second reading %q", file, what, want[what], got)
			}
		}
		if len(lines) != len(want) {
			t.Errorf("%s has %d lines, want %d", file, len(lines), len(want))
		}
	}
	if nine.LeastMean.Given() || nine.Fewer || iso.Readings != 1 || iso.Spots != 1 || nine.Readings != 1 || nine.Spots != 1 {
		t.Error("nine in ten limits no mean and lets exactly a tenth lie below; both judge each reading for itself")
	}
}

// sizes is one rule of a count of readings, over and up to in the standard's own unit.
type sizes struct {
	over, upTo, each   float64
	base, more, repeat int
}

// count is the number of readings that the rules ask for on an area, and which rule does; −1 for none or for several.
func count(rules []sizes, area float64) (readings, repeats, rule int) {
	rule = -1
	for i, r := range rules {
		if area <= r.over || r.upTo > 0 && area > r.upTo {
			continue
		}
		if rule >= 0 {
			return 0, 0, -1
		}
		readings, repeats, rule = r.base, r.repeat, i
		if r.each > 0 {
			readings += r.more * int(math.Ceil((area-r.over)/r.each))
		}
	}
	return readings, repeats, rule
}

// The counts are compared at every half unit of area, because a rule may be said in one line or in three.
func TestSamplingsReadTwice(t *testing.T) {
	rows, lines := map[string][]sizes{}, map[string][]sizes{}
	for s := range tables.Default().Samplings() {
		u := s.Over.Unit()
		r := sizes{over: s.Over.Float(u), base: s.Readings, more: s.More, repeat: s.Repeats}
		if s.UpTo.Given() {
			r.upTo = s.UpTo.Float(u)
		}
		if s.Each.Given() {
			r.each = s.Each.Float(u)
		}
		rows[s.Standard] = append(rows[s.Standard], r)
	}
	for _, file := range []string{"film_iso_19840.csv", "film_sspc_pa2_areas.csv", "film_pspc_flat.csv"} {
		for _, l := range printed(t, file) {
			// An empty cell: no limit, nothing more, or repeats that are a share of the readings.
			whole := func(column string) float64 {
				if l.cells[column] == "" {
					return 0
				}
				return l.number(t, column)
			}
			name := l.text(t, "standard")
			lines[name] = append(lines[name], sizes{
				over: l.number(t, "over"), upTo: whole("up to"), each: whole("for each further"),
				base: int(l.number(t, "readings")), more: int(whole("more readings")), repeat: int(whole("repeats")),
			})
		}
	}
	standards := slices.Sorted(maps.Keys(lines))
	if got := slices.Sorted(maps.Keys(rows)); !slices.Equal(got, standards) {
		t.Errorf("the rows have the standards %q, the second reading %q", got, standards)
	}
	for _, name := range standards {
		usedRows, usedLines := map[int]bool{}, map[int]bool{}
		wrong := 0
		for half := 1; half <= 26000 && wrong < 3; half++ {
			area := float64(half) / 2
			got, gotRepeats, row := count(rows[name], area)
			want, wantRepeats, l := count(lines[name], area)
			usedRows[row], usedLines[l] = true, true
			if row < 0 || l < 0 || got != want || gotRepeats != wantRepeats {
				wrong++
				t.Errorf("%s, area %g: the rows ask for %d readings and allow %d repeats, the second reading %d and %d (rule %d and %d)",
					name, area, got, gotRepeats, want, wantRepeats, row, l)
			}
		}
		if wrong == 0 && (len(usedRows) != len(rows[name]) || len(usedLines) != len(lines[name])) {
			t.Errorf("%s: %d of %d rows and %d of %d lines speak of no area", name,
				len(rows[name])-len(usedRows), len(rows[name]), len(lines[name])-len(usedLines), len(lines[name]))
		}
	}
}
