package tables_test

import (
	"maps"
	"math"
	"regexp"
	"slices"
	"testing"

	"boatyard.example/bottomwork/tables"
)

// The grade rows of SSPC-PA 2 say the four limits in a sentence.
func TestRestrictionLevelsReadTwice(t *testing.T) {
	sentence := regexp.MustCompile(`^spot (.+), (.+); area (.+), (.+); a single reading is not limited$`)
	columns := []string{"spot min", "spot max", "area min", "area max"}
	percent := regexp.MustCompile(`([0-9]+) % of`)
	limit := func(clause string) string {
		if m := percent.FindStringSubmatch(clause); m != nil {
			return m[1]
		}
		switch clause {
		case "at least the least film specified", "at most the greatest film specified":
			return "100"
		case "with no greatest":
			return "unrestricted"
		}
		return clause
	}
	both(t, printed(t, "film_sspc_pa2_levels.csv"), func(l line) string { return "level " + l.text(t, "level") },
		only(tables.Default().Grades(), func(g tables.GradeRow) bool { return g.Scale == "SSPC-PA 2 restriction level" }),
		func(g tables.GradeRow) string { return g.Grade }, nil,
		func(l line, name string, g tables.GradeRow) {
			m := sentence.FindStringSubmatch(g.Says)
			if m == nil {
				t.Errorf("%s: %s: the sentence has another shape: %q", l.file, name, g.Says)
				return
			}
			for i, c := range columns {
				if got, want := limit(m[i+1]), l.text(t, c); got != want {
					t.Errorf("%s: %s: %s: the row says %s, the second reading %s", l.file, name, c, got, want)
				}
			}
		})
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
