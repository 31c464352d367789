package quantity

import (
	"strconv"
)

// between is what amounts of every dimension can do: print themselves and a high end as a range.
type between interface {
	showTo(high any, s System) string
}

func (a Amount[D]) showTo(high any, s System) string {
	h, ok := high.(Amount[D])
	if !ok {
		return a.Show(s)
	}
	return ShowRange(Range[Amount[D]]{Low: a, Typical: a, High: h}, s)
}

// Show is the range as printed for a reader: of amounts by the rules of ShowRange, of plain numbers "1.5 to 2" to three
// significant digits. A range of anything else is "not given".
func (r Range[T]) Show(s System) string {
	switch low := any(r.Low).(type) {
	case between:
		return low.showTo(r.High, s)
	case float64:
		high, _ := any(r.High).(float64)
		text := strconv.FormatFloat(low, 'g', shownDigits, 64)
		if high != low {
			text += " to " + strconv.FormatFloat(high, 'g', shownDigits, 64)
		}
		return text
	}
	return "not given"
}
