package quantity

import (
	"cmp"
	"encoding/json"
	"fmt"
	"strconv"
	"time"
)

// Date is a civil date of the Gregorian calendar, years 1 to 9999, without time
// or zone. The zero Date is "not given". Dates may be compared with ==.
type Date struct {
	y    int16
	m, d uint8
}

const (
	dateWant = "a date written year-month-day, such as 2027-04-03"
	lastYear = 9999
	// localDate names the location by which the TOML reader marks a local date.
	localDate = "date-local"
	farDays   = 4_000_000 // more days than there are from year 1 to 9999
	farMonth  = 200_000   // more months than that
)

// NewDate is the date of a year (1 to 9999), month and day. A date that the
// calendar does not have, such as 30 February, is an error.
func NewDate(y, m, d int) (Date, error) {
	if y < 1 || y > lastYear || m < 1 || m > 12 || d < 1 || d > daysIn(y, m) {
		return Date{}, &ParseError{
			Got:  strconv.Itoa(y) + "-" + strconv.Itoa(m) + "-" + strconv.Itoa(d),
			Want: "a day of the calendar from 0001-01-01 to 9999-12-31",
		}
	}
	return Date{int16(y), uint8(m), uint8(d)}, nil
}

// ParseDate reads "2027-04-03", nothing else. The error is a *ParseError.
func ParseDate(s string) (Date, error) {
	if len(s) != len("2027-04-03") || s[4] != '-' || s[7] != '-' {
		return Date{}, refuse(s, dateWant)
	}
	var parts [3]int
	for i, text := range [3]string{s[:4], s[5:7], s[8:]} {
		for _, c := range []byte(text) {
			if c < '0' || c > '9' {
				return Date{}, refuse(s, dateWant)
			}
			parts[i] = parts[i]*10 + int(c-'0')
		}
	}
	d, err := NewDate(parts[0], parts[1], parts[2])
	if err != nil {
		return Date{}, refuse(s, "a day that the calendar has, written year-month-day")
	}
	return d, nil
}

// daysIn is the number of days of a month.
func daysIn(y, m int) int {
	switch m {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if y%4 == 0 && (y%100 != 0 || y%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// Given says whether there is a date.
func (d Date) Given() bool { return d != Date{} }

// IsZero is the opposite of Given, for omitzero.
func (d Date) IsZero() bool { return d == Date{} }

// Year is the year, 0 if not given.
func (d Date) Year() int { return int(d.y) }

// Month is the month, 0 if not given.
func (d Date) Month() time.Month { return time.Month(d.m) }

// Day is the day of the month, 0 if not given.
func (d Date) Day() int { return int(d.d) }

// Weekday is the day of the week; of a date not given it is Monday, the weekday
// of the first day counted.
func (d Date) Weekday() time.Weekday {
	if !d.Given() {
		return time.Monday
	}
	return d.utc().Weekday()
}

// utc is the date as midnight in UTC, for the standard library's calendar.
func (d Date) utc() time.Time {
	return time.Date(int(d.y), time.Month(d.m), int(d.d), 0, 0, 0, 0, time.UTC)
}

// AddDays is the date n days later, or earlier if n is negative. Of a date not
// given, and outside the years 1 to 9999, it is not given.
func (d Date) AddDays(n int) Date {
	if !d.Given() || n > farDays || n < -farDays {
		return Date{}
	}
	y, m, day := d.utc().AddDate(0, 0, n).Date()
	return dateOr(y, int(m), day)
}

// AddMonths is the same day n months later, or earlier if n is negative; where
// the month has no such day, its last: a month after 31 January is 28 or 29
// February. Of a date not given, and outside the years 1 to 9999, it is not given.
func (d Date) AddMonths(n int) Date {
	if !d.Given() || n > farMonth || n < -farMonth {
		return Date{}
	}
	months := int(d.y)*12 + int(d.m) - 1 + n
	if months < 12 {
		return Date{}
	}
	y, m := months/12, months%12+1
	return dateOr(y, m, min(int(d.d), daysIn(y, m)))
}

// dateOr is the date, or not given if it is outside the years of Date.
func dateOr(y, m, d int) Date {
	date, err := NewDate(y, m, d)
	if err != nil {
		return Date{}
	}
	return date
}

// DaysUntil is the number of days from d to o, negative if o is earlier. If
// either is not given it is 0: ask Given first.
func (d Date) DaysUntil(o Date) int {
	if !d.Given() || !o.Given() {
		return 0
	}
	const secondsOfDay = 24 * 60 * 60 // UTC has no other days
	return int((o.utc().Unix() - d.utc().Unix()) / secondsOfDay)
}

// Compare is -1 if d is before o, 0 if they are the same and 1 if d is after o,
// for sorting. A date not given comes before all others.
func (d Date) Compare(o Date) int {
	return cmp.Or(cmp.Compare(d.y, o.y), cmp.Compare(d.m, o.m), cmp.Compare(d.d, o.d))
}

// Equal says whether d and o are the same date; two not given are equal.
func (d Date) Equal(o Date) bool { return d == o }

// Before says whether both are given and d is before o.
func (d Date) Before(o Date) bool { return d.Given() && o.Given() && d.Compare(o) < 0 }

// After says whether both are given and d is after o.
func (d Date) After(o Date) bool { return d.Given() && o.Given() && d.Compare(o) > 0 }

// String is the date as 2027-04-03, or "not given".
func (d Date) String() string {
	if !d.Given() {
		return "not given"
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.y, d.m, d.d)
}

// MarshalText is String; a date not given is an error.
func (d Date) MarshalText() ([]byte, error) {
	if !d.Given() {
		return nil, errNotGiven
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads what ParseDate reads.
func (d *Date) UnmarshalText(text []byte) error {
	date, err := ParseDate(string(text))
	if err != nil {
		return err
	}
	*d = date
	return nil
}

// MarshalTOML is a TOML local date, without quotes; a date not given is an error.
func (d Date) MarshalTOML() ([]byte, error) { return d.MarshalText() }

// UnmarshalTOML takes a TOML local date, written without quotes and without a
// time of day; a date-time, a time and a string are refused.
func (d *Date) UnmarshalTOML(v any) error {
	const want = "a date without quotes and without a time, such as 2027-04-03"
	t, ok := v.(time.Time)
	if !ok || t.Location().String() != localDate {
		return refuse(bare(v), want)
	}
	date, err := NewDate(t.Year(), int(t.Month()), t.Day())
	if err != nil {
		return err
	}
	*d = date
	return nil
}

// MarshalJSON is the date as a JSON string, or null if not given.
func (d Date) MarshalJSON() ([]byte, error) {
	if !d.Given() {
		return []byte("null"), nil
	}
	return json.Marshal(d.String())
}

// UnmarshalJSON takes a string that ParseDate reads, or null for not given.
func (d *Date) UnmarshalJSON(data []byte) error {
	s, null, ok := jsonText(data)
	switch {
	case null:
		*d = Date{}
		return nil
	case !ok:
		return refuse(string(data), "a quoted text: "+dateWant)
	}
	return d.UnmarshalText([]byte(s))
}
