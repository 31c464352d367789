package quantity

import (
	"fmt"
	"strconv"
	"strings"
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
// significant digits. The ends of anything else (money, dates, counts) print as they do alone: "2 to 4"; of money the currency stands
// once, "10.00 to 12.50 EUR". Equal ends, one end and none print as ShowRange has it.
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
	low, high := fmt.Sprint(r.Low), fmt.Sprint(r.High)
	if n, can := any(r.Low).(interface{ Equal(o T) bool }); can && n.Equal(r.High) {
		high = low // 10 EUR and 10.00 EUR
	}
	switch below, above := isGiven(r.Low), isGiven(r.High); {
	case !below && !above:
		return "not given"
	case !above:
		return low + " or more"
	case !below:
		return "up to " + high
	case low == high:
		return low
	}
	if a, isMoney := any(r.Low).(Money); isMoney {
		if b, _ := any(r.High).(Money); a.Currency() == b.Currency() {
			low = strings.TrimSuffix(low, " "+a.Currency())
		}
	}
	return low + " to " + high
}

// isGiven says whether there is a value at all; what cannot be missing is always there.
func isGiven(v any) bool {
	g, may := v.(interface{ Given() bool })
	return !may || g.Given()
}
