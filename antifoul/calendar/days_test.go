package calendar_test

import (
	"errors"
	"fmt"
	"testing"

	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func day(tb testing.TB, s string) quantity.Date {
	tb.Helper()
	if s == "" {
		return quantity.Date{}
	}
	d, err := quantity.ParseDate(s)
	if err != nil {
		tb.Fatal(err)
	}
	return d
}

func TestCheck(t *testing.T) {
	const on = "2027-03-01"
	for _, c := range []struct {
		hands  int
		launch string
		on     string
		keys   []string
	}{
		{0, "", on, nil},
		{1, "2027-03-01", on, nil}, // the day itself
		{100, "2027-03-02", on, nil},
		{1, "2027-02-28", on, []string{"launch"}},
		{1, "2020-02-28", "", nil}, // no day of the question, so nothing to compare with
		{-1, "", on, []string{"hands"}},
		{101, "", on, []string{"hands"}},
		{-5, "2026-03-01", on, []string{"hands", "launch"}},
	} {
		fs := calendar.Days{Hands: c.hands, Launch: day(t, c.launch)}.Check(day(t, c.on))
		if len(fs) != len(c.keys) {
			t.Errorf("%d hands, launch %q: faults\n%v\nwant %q", c.hands, c.launch, fs, c.keys)
			continue
		}
		for i, k := range c.keys {
			if fs[i].Key != k || !errors.Is(fs[i], finding.ErrImpossible) || fs[i].Got == "" || fs[i].Want == "" {
				t.Errorf("%d hands, launch %q: fault %v, want %s", c.hands, c.launch, fs[i], k)
			}
		}
	}
}

func TestDry(t *testing.T) {
	for _, c := range []struct {
		from, launch string
		open         quantity.YesNo
		days         int
		known        bool
	}{
		{"2027-03-01", "2027-04-01", quantity.NotSaid, 31, true},
		{"2027-03-01", "2027-04-01", quantity.No, 31, true},
		{"2028-02-28", "2028-03-01", quantity.No, 2, true}, // a leap year
		{"2027-02-28", "2027-03-01", quantity.No, 1, true},
		{"2027-04-01", "2027-04-01", quantity.No, 0, true},
		{"2027-04-02", "2027-04-01", quantity.No, -1, true}, // painted after the launch: the caller sees it
		{"2027-03-01", "2027-04-01", quantity.Yes, 0, false},
		{"2027-03-01", "", quantity.NotSaid, 0, false},
		{"", "2027-04-01", quantity.No, 0, false},
		{"", "", quantity.Yes, 0, false},
	} {
		d := calendar.Days{Launch: day(t, c.launch), LaunchOpen: c.open}
		if days, known := d.Dry(day(t, c.from)); days != c.days || known != c.known {
			t.Errorf("from %q to %q, open %s: %d days, known %t; want %d, %t", c.from, c.launch, c.open, days, known, c.days, c.known)
		}
	}
}

func TestHours(t *testing.T) {
	one := quantity.Range[float64]{Low: 6, Typical: 12, High: 30}
	for hands, want := range map[int]quantity.Range[float64]{
		0: one, 1: one, 2: {Low: 3, Typical: 6, High: 15}, 4: {Low: 1.5, Typical: 3, High: 7.5}, -3: one,
	} {
		if got := (calendar.Days{Hands: hands}).Hours(one); got != want {
			t.Errorf("%d hands: %v, want %v", hands, got, want)
		}
	}
}

func ExampleDays() {
	launch, err := quantity.NewDate(2027, 4, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	painted, err := quantity.NewDate(2027, 3, 20)
	if err != nil {
		fmt.Println(err)
		return
	}
	d := calendar.Days{Hands: 2, Launch: launch}
	days, known := d.Dry(painted)
	fmt.Println(days, known)
	fmt.Println(d.Hours(quantity.Range[float64]{Low: 8, Typical: 12, High: 20}))
	d.LaunchOpen = quantity.Yes
	_, known = d.Dry(painted)
	fmt.Println(known)
	// Output:
	// 14 true
	// {4 6 10}
	// false
}
