package tables_test

import (
	"fmt"
	"strings"
	"testing"
)

// Every plain number of the tables is taken on its ends and refused beyond them.
func TestNumbersOnTheirEnds(t *testing.T) {
	b := book(t)
	cases := []struct{ table, field, under, low, high, over string }{
		{"acceptance", "spot_readings", "0", "1", "20", "21"},
		{"acceptance", "area_spots", "0", "1", "100", "101"},
		{"active", "copper_share", "-0.01", "0", "1", "1.01"},
		{"active", "zinc_share", "-0.01", "0", "1", "1.01"},
		{"area_method", "order", "-1", "0", "100", "101"},
		{"area_method", "factor", "0.49", "0.5", "2", "2.01"},
		{"coating", "packs", "0", "1", "2", "3"},
		{"coating", "coats", "-1", "0", "10", "11"},
		{"coating", "most_coats", "-1", "0", "12", "13"},
		{"criterion", "weight", "-1", "0", "100", "100.5"},
		{"drying", "packs", "0", "1", "2", "3"},
		{"drying", "energy", "0.9", "1", "500", "500.5"},
		{"factor", "value", "0", "1e-9", "1e9", "1000000000.5"},
		{"hull_form", "factor", "0.19", "0.2", "2", "2.01"},
		{"hull_form", "waterline_share", "-0.01", "0", "0.5", "0.51"},
		{"hull_form", "edges_share", "-0.01", "0", "0.5", "0.51"},
		{"hull_form", "hulls", "0", "1", "2", "3"},
		{"material", "lag", "0.009", "0.01", "200", "200.5"},
		{"overcoat", "new_packs", "0", "1", "2", "3"},
		{"overcoat", "old_packs", "0", "1", "2", "3"},
		{"past_result", "boats", "0", "1", "10000", "10001"},
		{"piece", "factor", "0.009", "0.01", "4", "4.01"},
		{"sampling", "readings", "0", "1", "10000", "10001"},
		{"sampling", "repeats", "-1", "0", "10000", "10001"},
		{"sampling", "more", "0", "1", "10000", "10001"},
		{"step", "hours_m2", "-0.1", "0", "20", "20.1"},
		{"step", "hours", "-0.1", "0", "100", "100.1"},
		{"supply", "rate", "-0.1", "0", "1000", "1000.5"},
		{"supply", "packs", "1", "2", "2", "3"},
		{"threshold", "least", "-1000000.5", "-1e6", "1e6", "1000000.5"},
		{"threshold", "most", "-1000000.5", "-1e6", "1e6", "1000000.5"},
		{"threshold", "repair", "-1000000.5", "-1e6", "1e6", "1000000.5"},
		{"threshold", "strip", "-1000000.5", "-1e6", "1e6", "1000000.5"},
		{"value", "value", "-1000000000.5", "-1e9", "1e9", "1000000000.5"},
		{"zone", "wear", "0.09", "0.1", "10", "10.1"},
		{"zone", "extra_coats", "-1", "0", "3", "4"},
		{"hull_form", "length_beam", "[0.9, 2]", "[1, 2]", "[2, 40]", "[2, 40.5]"},
		{"area_method", "length_beam", "[0.9, 2]", "[1, 2]", "[2, 40]", "[2, 40.5]"},
		{"area_method", "beam_draft", "[0.09, 2]", "[0.1, 2]", "[2, 40]", "[2, 40.5]"},
		{"area_method", "length_volume", "[0.9, 2]", "[1, 2]", "[2, 30]", "[2, 30.5]"},
		{"area_method", "block", "[0.09, 0.5]", "[0.1, 0.5]", "[0.5, 1]", "[0.5, 1.1]"},
		{"area_method", "midship", "[0.09, 0.5]", "[0.1, 0.5]", "[0.5, 1]", "[0.5, 1.1]"},
		{"season", "after", "[-1, 2]", "[0, 2]", "[2, 120]", "[2, 121]"},
		{"hull_form", "draft_beam", "[0.009, 2]", "[0.01, 2]", "[2, 5]", "[2, 5.1]"},
	}
	for column, taken := range []bool{false, true, true, false} {
		var rows strings.Builder
		for i, c := range cases {
			fmt.Fprintf(&rows, "[[%s]]\nkey = \"x%d\"\n%s = %s\n", c.table, i, c.field, []string{c.under, c.low, c.high, c.over}[column])
		}
		_, err := b.With(ownFile(rows.String()))
		if err == nil {
			t.Fatal("rows without anything else are taken")
		}
		for i, c := range cases { // what else the rows lack is no matter here
			if refused := strings.Contains(err.Error(), fmt.Sprintf("%s[x%d].%s: not accepted", c.table, i, c.field)); refused == taken {
				t.Errorf("%s.%s = %s: refused %t", c.table, c.field, []string{c.under, c.low, c.high, c.over}[column], refused)
			}
		}
	}
}

// Amounts that cannot be below zero, or not zero, or above a whole, are refused there and taken up to it.
func TestAmountsOnTheirEnds(t *testing.T) {
	b := book(t)
	type end struct{ table, field, refused, taken string }
	cases := []end{
		{"loss", "loss", "-0.1 %", "0 %"},
		{"loss", "loss", "100 %", "99.9 %"},
		{"loss", "residue", "-0.1 L", "0 L"},
		{"loss", "wind_max", "0 kn", "0.1 kn"},
		{"can", "size", "0 L", "0.1 L"},
		{"step", "wait", "-1 min", "0 h"},
		{"step", "dries", "-1 min", "0 h"},
		{"material", "barrier_film", "0 um", "1 um"},
		{"roughness", "ks", "-1 um", "0 um"},
		{"past_result", "months", "0 months", "1 months"},
		{"observation", "over", "-0.1 %", "0 %"},
		{"observation", "over", "100 %", "99.9 %"},
		{"observation", "size", "0 mm", "0.1 mm"},
		{"observation", "under", "0 mm", "0.1 mm"},
		{"acceptance", "least_mean", "0 %", "0.1 %"},
		{"acceptance", "least_mean", "100.1 %", "100 %"},
		{"acceptance", "least_single", "0 %", "0.1 %"},
		{"acceptance", "below", "100.1 %", "100 %"},
		{"acceptance", "most_single", "99.9 %", "100 %"},
		{"acceptance", "most_mean", "99.9 %", "100 %"},
		{"acceptance", "split", "0 m2", "0.1 m2"},
		{"coating", "solids", "0 %", "0.1 %"},
		{"coating", "solids", "100.1 %", "100 %"},
	}
	for _, c := range []struct{ field, refused, taken string }{
		{"density", "0 kg/L", "0.1 kg/L"},
		{"film", "0 um", "1 um"},
		{"wear_rest", "-0.1 um", "0 um"},
		{"wear_use", "0 um", "0.1 um"},
		{"life", "-1 months", "0 months"},
		{"touch_dry", "-1 min", "0 h"},
		{"rain_safe", "-1 min", "0 h"},
		{"overcoat_min", "-1 min", "0 h"},
		{"launch_min", "-1 min", "0 h"},
		{"air_new", "-1 d", "0 d"},
		{"air_scuff", "-1 d", "0 d"},
		{"air_used", "-1 d", "0 d"},
		{"speed_min", "-0.1 kn", "0 kn"},
		{"speed_max", "-0.1 kn", "0 kn"},
		{"idle_max", "-1 d", "0 d"},
		{"hours_min", "-1 h", "0 h"},
		{"clean_every", "-1 d", "0 d"},
	} {
		cases = append(cases, end{"coating", c.field, c.refused, c.taken})
	}
	for _, taken := range []bool{true, false} {
		var rows strings.Builder
		for i, c := range cases {
			value := c.refused
			if taken {
				value = c.taken
			}
			fmt.Fprintf(&rows, "[[%s]]\nkey = \"x%d\"\n%s = %q\n", c.table, i, c.field, value)
		}
		_, err := b.With(ownFile(rows.String()))
		if err == nil {
			t.Fatal("rows without anything else are taken")
		}
		for i, c := range cases {
			key := fmt.Sprintf("%s[x%d].%s: ", c.table, i, c.field)
			if strings.Contains(err.Error(), key+"not accepted") {
				t.Errorf("%s.%s: not read at all", c.table, c.field)
			}
			if refused := strings.Contains(err.Error(), key+"impossible"); refused == taken {
				t.Errorf("%s.%s, %s or %s: refused %t", c.table, c.field, c.refused, c.taken, refused)
			}
		}
	}
}

// What is done after launch stands in the book, each row with its words.
func TestSeasonsStandInTheBook(t *testing.T) {
	n := 0
	for s := range book(t).Seasons() {
		n++
		if got, err := book(t).Season(s.Key); err != nil || got.Key != s.Key {
			t.Errorf("%s: %v", s.Key, err)
		}
	}
	if n == 0 {
		t.Error("no row")
	}
}
