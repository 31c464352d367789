package main

import (
	"os"
	"path/filepath"
	"time"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/quantity"
)

// yard is what the yard's own file says.
type yard struct {
	name  string
	hands int
	hours float64 // of a working day
	days  []time.Weekday
	from  quantity.Date // first day on which hulls are worked on; not given: the latest day of question of the fleet
	store []coverage.Tin
}

var weekdays = map[string]time.Weekday{"Mon": 1, "Tue": 2, "Wed": 3, "Thu": 4, "Fri": 5, "Sat": 6, "Sun": 0}

// readYard reads the yard's file; without a name the yard has two hands from Monday to Friday, eight hours a day, and an empty store.
func readYard(book *tables.Book, name string) (yard, error) {
	y := yard{name: "the yard", hands: 2, hours: 8, days: []time.Weekday{1, 2, 3, 4, 5}}
	if name == "" {
		return y, nil
	}
	root, faults := entry.Open(os.DirFS(filepath.Dir(name)), filepath.Base(name))
	if root == nil {
		return y, faults.Err()
	}
	r := root.Table("yard")
	if s := r.Text("name"); s != "" {
		y.name = s
	}
	if n, ok := r.Int("hands", 1, 1000); ok {
		y.hands = n
	}
	if h, ok := r.Float("hours", 1, 24); ok {
		y.hours = h
	}
	y.from = r.Date("from")
	if words := r.Words("days", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"); len(words) > 0 {
		y.days = nil
		for _, w := range words {
			y.days = append(y.days, weekdays[w])
		}
	}
	r.Close()
	for _, r := range root.Tables("stock") {
		t := coverage.Tin{Coating: r.Text("coating")}
		can := coverage.Stored{Size: entry.Amount[quantity.Volume](r, "size"), Colour: r.Text("colour"), Batch: r.Text("batch")}
		can.Count, _ = r.Int("count", 1, 1000)
		t.Store = append(t.Store, can)
		r.Need("the key of a coating", "coating")
		r.Need("a volume", "size")
		if t.Coating != "" && can.Size.Given() {
			r.Add(t.Check(book))
		}
		r.Close()
		y.store = append(y.store, t)
	}
	root.Close()
	return y, faults.Err()
}

// stock is the cans of a coating in a colour that stand in the store.
func (y yard) stock(coating, colour string) []coverage.Can {
	var out []coverage.Can
	for _, t := range y.store {
		if t.Coating == coating {
			out = append(out, t.Cans(colour)...)
		}
	}
	return out
}

// works reports whether the yard works on the day.
func (y yard) works(d quantity.Date) bool {
	for _, w := range y.days {
		if w == d.Weekday() {
			return true
		}
	}
	return false
}
