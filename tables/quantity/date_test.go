package quantity_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"

	"boatyard.example/bottomwork/tables/quantity"
)

func date(t *testing.T, s string) quantity.Date {
	t.Helper()
	d, err := quantity.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestDateParts(t *testing.T) {
	d := date(t, "2027-04-03")
	if d.Year() != 2027 || d.Month() != time.April || d.Day() != 3 || d.Weekday() != time.Saturday || d.String() != "2027-04-03" {
		t.Errorf("%s is %d %s %d, a %s", d, d.Year(), d.Month(), d.Day(), d.Weekday())
	}
	for _, month := range []int{1, 3, 5, 7, 8, 10, 12} {
		if _, err := quantity.NewDate(2027, month, 31); err != nil {
			t.Error(err)
		}
		if got, err := quantity.NewDate(2027, month, 32); err == nil {
			t.Errorf("month %d has a 32nd: %s", month, got)
		}
	}
	n, err := quantity.NewDate(2027, 4, 3)
	if n != d || err != nil {
		t.Errorf("%s, %v", n, err)
	}
	for _, s := range []string{
		"", "2027-4-3", "2027-02-29", "1900-02-29", "2027-13-01", "2027-00-10", "2027-01-00", "2027-04-31", "0000-01-01",
		"2027/04/03", "03.04.2027", "2027-04-03T00:00:00", "+027-04-03", "2027-04-0x", "20270403", "2027-01-32", "2027-12-32",
		"2027-04-0:", "2027-04-1/", "2027-0:-01", // the signs beside the digits
	} {
		got, err := quantity.ParseDate(s)
		var p *quantity.ParseError
		if !errors.As(err, &p) || p.Got != s || got.Given() {
			t.Errorf("%q reads as %s, %v", s, got, err)
		}
	}
	if !date(t, "2000-02-29").Given() || !date(t, "2028-02-29").Given() {
		t.Error("a leap day is missing")
	}
}

func TestDateSums(t *testing.T) {
	for _, c := range []struct {
		from   string
		months int
		want   string
	}{
		{"2027-01-31", 1, "2027-02-28"},
		{"2028-01-31", 1, "2028-02-29"},
		{"2027-01-31", 3, "2027-04-30"},
		{"2027-03-31", -1, "2027-02-28"},
		{"2027-12-15", 1, "2028-01-15"},
		{"2027-01-15", -1, "2026-12-15"},
		{"2028-02-29", 12, "2029-02-28"},
		{"2027-04-03", 0, "2027-04-03"},
		{"2027-04-03", 24, "2029-04-03"},
		{"0001-02-10", -1, "0001-01-10"}, // the first month that there is
		{"9999-12-31", 1, "not given"},
		{"0001-01-01", -1, "not given"},
		{"0001-01-01", -13, "not given"},
		{"2027-04-03", 1 << 30, "not given"},
	} {
		if got := date(t, c.from).AddMonths(c.months); got.String() != c.want {
			t.Errorf("%s + %d months = %s, want %s", c.from, c.months, got, c.want)
		}
	}
	if got := date(t, "2027-12-31").AddDays(1); got.String() != "2028-01-01" {
		t.Errorf("the day after is %s", got)
	}
	if date(t, "9999-12-31").AddDays(1).Given() || date(t, "0001-01-01").AddDays(-1).Given() || date(t, "2027-01-01").AddDays(1<<31-1).Given() {
		t.Error("there are days outside the years")
	}
	// So many days that their seconds run over: a whole number of rounds of 64 bits comes back to the same day.
	for _, n := range []int{math.MaxInt>>6 + 1, math.MinInt >> 6, math.MaxInt, math.MinInt} {
		if got := date(t, "2027-01-01").AddDays(n); got.Given() {
			t.Errorf("%d days on it is %s", n, got)
		}
	}
	first, last := date(t, "0001-01-01"), date(t, "9999-12-31")
	if n := first.DaysUntil(last); first.AddDays(n) != last || last.AddDays(-n) != first || last.DaysUntil(first) != -n {
		t.Errorf("%d days are not the span of all years", n)
	}
	day := date(t, "2026-12-25")
	for n := range 800 {
		d := day.AddDays(n)
		if day.DaysUntil(d) != n || d.Weekday() != time.Weekday((int(day.Weekday())+n)%7) || d.Before(day) || n > 0 && !d.After(day) {
			t.Fatalf("day %d is %s, a %s", n, d, d.Weekday())
		}
	}
	var none quantity.Date
	if none.AddDays(1).Given() || none.AddMonths(1).Given() || none.DaysUntil(day) != 0 || day.DaysUntil(none) != 0 {
		t.Error("a date came from nothing")
	}
	if day.Before(day) || day.After(day) {
		t.Errorf("%s is before or after itself", day)
	}
	if none.Before(day) || day.After(none) || none.Compare(day) != -1 || day.Compare(none) != 1 || !none.Equal(quantity.Date{}) {
		t.Error("not given sorts first, yet is before nothing")
	}
}

func TestDateForms(t *testing.T) {
	type doc struct{ D quantity.Date }
	want := doc{date(t, "2027-04-03")}
	var buf bytes.Buffer
	if err := toml.NewEncoder(&buf).Encode(want); err != nil || strings.TrimSpace(buf.String()) != "D = 2027-04-03" {
		t.Errorf("TOML: %q, %v", buf.String(), err)
	}
	var got doc
	if _, err := toml.Decode(buf.String(), &got); err != nil || got != want {
		t.Errorf("TOML: %s, %v", got.D, err)
	}
	data, err := json.Marshal(want)
	if string(data) != `{"D":"2027-04-03"}` || err != nil {
		t.Errorf("JSON: %s, %v", data, err)
	}
	got = doc{}
	if err := json.Unmarshal(data, &got); err != nil || got != want {
		t.Errorf("JSON: %s, %v", got.D, err)
	}
	if err := json.Unmarshal([]byte(`{"D":null}`), &got); err != nil || got.D.Given() {
		t.Errorf("JSON null: %s, %v", got.D, err)
	}
	for in, read := range map[string]string{
		`"2027-04-03"`:         "2027-04-03",
		"2027-04-03T10:00:00Z": "2027-04-03T10:00:00Z",
		"2027-04-03T10:00:00":  "2027-04-03T10:00:00",
		"10:00:00":             "10:00:00",
		"2027":                 "2027",
	} {
		var d doc
		_, err := toml.Decode("D = "+in, &d)
		if err == nil || d.D.Given() || !strings.Contains(err.Error(), `read "`+read+`", taken: a date without quotes`) {
			t.Errorf("%s reads as %s, %v", in, d.D, err)
		}
	}
	var f struct{ F quantity.Film }
	if _, err := toml.Decode("F = 2027-04-03", &f); err == nil || !strings.Contains(err.Error(), `read "2027-04-03", taken`) {
		t.Errorf("a date for a film: %v", err)
	}
	for _, in := range []string{`"2027-4-3"`, `20270403`, `""`, `true`} {
		if err := want.D.UnmarshalJSON([]byte(in)); err == nil || want.D.String() != "2027-04-03" {
			t.Errorf("JSON %s left %s, %v", in, want.D, err)
		}
	}
	if _, err := (quantity.Date{}).MarshalText(); err == nil {
		t.Error("a date not given has a text")
	}
}
