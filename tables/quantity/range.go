package quantity

// Range is a value that varies in the trade: its low end, the usual value and
// its high end. An end that is the zero value is not given.
type Range[T any] struct {
	Low     T `json:"low" toml:"low"`
	Typical T `json:"typical" toml:"typical"`
	High    T `json:"high" toml:"high"`
}

// Exactly is the range of one value.
func Exactly[T any](v T) Range[T] { return Range[T]{Low: v, Typical: v, High: v} }

// ShowRange is the range as printed for a reader, by the rules of Show:
// "40 to 60 µm (1.57 to 2.36 mil)". Both ends take the unit of the low end.
//
// Equal ends print once. One end alone prints as "40 µm or more" or "up to
// 60 µm"; the typical value is not printed. Without an end it is "not given".
func ShowRange[D Dim](r Range[Amount[D]], s System) string {
	low, high := r.Low, r.High
	switch {
	case !low.Given() && !high.Given():
		return "not given"
	case !low.Given():
		return "up to " + high.Show(s)
	case !high.Given():
		return showWith(low, s, func(u Unit[D]) string { return low.printed(u) + " or more" })
	case low.Equal(high):
		return low.Show(s)
	}
	return showWith(low, s, func(u Unit[D]) string {
		return plain(low.in3(u).Number()) + " to " + high.printed(u)
	})
}

// showWith prints in the reader's system and, in brackets, in the other.
func showWith[D Dim](a Amount[D], s System, in func(Unit[D]) string) string {
	first, second := a.shown(s)
	if second == 0 {
		return in(first)
	}
	return in(first) + " (" + in(second) + ")"
}
