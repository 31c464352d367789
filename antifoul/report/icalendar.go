package report

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// event is one entry of a calendar: a span of time, or a whole day.
type event struct {
	uid           string        // stable and unique in the world: same input, same uid; at most 255 octets as written
	start, end    time.Time     // instants, to the second; written in UTC, or as wall clocks when floating is set
	floating      bool          // the wall clocks of the zones that start and end carry, written without a zone: the same hour anywhere
	day           quantity.Date // the event lasts this whole day and has neither start nor end
	summary, text string        // one line and the rest; what is empty is left out
}

const (
	lineOctets = 75                // of a content line, without its CRLF; the space that begins a continuation counts
	uidOctets  = 255               // that every reader keeps
	clockForm  = "20060102T150405" // DATE-TIME of RFC 5545, for time.Format
)

// icalendar writes the events as one VCALENDAR, in the order given, whole or with an error of w.
//
// Each event has UID, DTSTAMP (stamp in UTC), DTSTART, DTEND, which is not part of it, and TRANSP: hours are taken (OPAQUE), a
// whole day is a mark on the wall (TRANSPARENT). SUMMARY, DESCRIPTION and the calendar's NAME are left out where they are empty. Fractions of a second are cut off.
//
// A finding.Faults, and then nothing is written, is returned for no event at all, which the format does not allow; for a stamp, start or end that is not
// given or is outside the years 1 to 9999 as written; an end that as written is not after its start, as when a floating event spans the hour that a clock is put
// back; a day with a start or an end; the last day of 9999; a uid that is empty, too long or used twice.
//
// Source: RFC 5545 (2009), sections 3.1, 3.3.4, 3.3.5, 3.3.11, 3.4, 3.6, 3.6.1, 3.8.2 and 3.8.4.7; NAME: RFC 7986 (2016), section 5.1, read second-hand.
func icalendar(w io.Writer, stamp time.Time, name string, events []event) error {
	if err := calendarFaults(stamp, events).Err(); err != nil {
		return err
	}
	var c contentLines
	c.line("BEGIN", "VCALENDAR")
	c.line("VERSION", "2.0")
	c.line("PRODID", "-//boatyard.example//bottomwork//EN")
	c.line("CALSCALE", "GREGORIAN")
	c.text("NAME", name)
	for _, e := range events {
		c.line("BEGIN", "VEVENT")
		c.text("UID", e.uid)
		c.line("DTSTAMP", clock(stamp, false))
		if e.day.Given() {
			c.line("DTSTART;VALUE=DATE", dayForm(e.day))
			c.line("DTEND;VALUE=DATE", dayForm(e.day.AddDays(1)))
		} else {
			c.line("DTSTART", clock(e.start, e.floating))
			c.line("DTEND", clock(e.end, e.floating))
		}
		c.text("SUMMARY", e.summary)
		c.text("DESCRIPTION", e.text)
		c.line("TRANSP", pick(e.day.Given(), "TRANSPARENT", "OPAQUE"))
		c.line("END", "VEVENT")
	}
	c.line("END", "VCALENDAR")
	_, err := w.Write(c.out.Bytes())
	return err
}

// calendarFaults is everything for which a calendar cannot be written. Events are counted from one.
func calendarFaults(stamp time.Time, events []event) finding.Faults {
	fs := clockFaults("stamp", stamp, false)
	if len(events) == 0 {
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: "event", Want: "at least one event: a calendar without any is not allowed"})
	}
	first := map[string]int{} // uid as written: the first event that has it
	for i, e := range events {
		faults := e.faults()
		uid := calendarText(e.uid)
		if n, twice := first[uid]; twice && uid != "" {
			faults = append(faults, finding.Fault{Kind: finding.ErrDuplicate, Key: "uid", Got: uid, Want: "a uid that no other event has; event[" + itoa(n) + "] has it"})
		} else {
			first[uid] = i + 1
		}
		fs = append(fs, faults.Under("", fmt.Sprintf("event[%d]", i+1))...)
	}
	return fs
}

// faults is what is wrong with one event by itself.
func (e event) faults() finding.Faults {
	var fs finding.Faults
	switch n := len(calendarText(e.uid)); {
	case n == 0:
		fs = append(fs, finding.Fault{Kind: finding.ErrMissing, Key: "uid", Want: "a text that no other event in the world has"})
	case n > uidOctets:
		fs = append(fs, finding.Fault{Kind: finding.ErrValue, Key: "uid", Got: itoa(n) + " octets", Want: "at most " + itoa(uidOctets) + " octets"})
	}
	if e.day.Given() {
		if !e.start.IsZero() || !e.end.IsZero() {
			fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "day", Got: e.day.String() + " and a start or an end", Want: "a day, or a start and an end"})
		}
		if !e.day.AddDays(1).Given() {
			fs = append(fs, finding.Fault{Kind: finding.ErrValue, Key: "day", Got: e.day.String(), Want: "a day before 9999-12-31: the day after it is written too"})
		}
		return fs
	}
	clocks := append(clockFaults("start", e.start, e.floating), clockFaults("end", e.end, e.floating)...)
	if start, end := clock(e.start, e.floating), clock(e.end, e.floating); len(clocks) == 0 && end <= start { // both are of one length
		clocks = append(clocks, finding.Fault{Kind: finding.ErrImpossible, Key: "end", Got: end, Want: "an end that is written later than the start, " + start})
	}
	return append(fs, clocks...)
}

// clockFaults says whether the instant can be written with four digits for the year.
func clockFaults(key string, t time.Time, floating bool) finding.Faults {
	if t.IsZero() {
		return finding.Faults{{Kind: finding.ErrMissing, Key: key, Want: "an instant"}}
	}
	if !floating {
		t = t.UTC()
	}
	if y := t.Year(); y < 1 || y > 9999 {
		return finding.Faults{{Kind: finding.ErrValue, Key: key, Got: "the year " + itoa(y), Want: "a year from 1 to 9999"}}
	}
	return nil
}

// clock is an instant as DATE-TIME: in UTC, form 2, or as the wall clock of the zone that it carries, form 1.
func clock(t time.Time, floating bool) string {
	if floating {
		return t.Format(clockForm)
	}
	return t.UTC().Format(clockForm) + "Z"
}

// dayForm is a date as DATE.
func dayForm(d quantity.Date) string { return strings.ReplaceAll(d.String(), "-", "") }

// calendarText is s as TEXT: backslash, semicolon, comma and line breaks are escaped, a tab stays, other control characters go. What is not UTF-8 becomes
// U+FFFD, octet by octet. The line breaks are LF, CR, both as CRLF, and those of Unicode: U+0085, U+2028 and U+2029.
func calendarText(s string) string {
	var out strings.Builder
	for _, r := range strings.ReplaceAll(s, "\r\n", "\n") {
		switch r {
		case '\n', '\r', '\u0085', '\u2028', '\u2029':
			out.WriteString(`\n`)
		case '\\', ';', ',':
			out.WriteByte('\\')
			out.WriteRune(r)
		default:
			if r == '\t' || !unicode.IsControl(r) {
				out.WriteRune(r)
			}
		}
	}
	return out.String()
}

// contentLines are the lines of a calendar, folded and ended by CRLF.
type contentLines struct{ out bytes.Buffer }

// text adds a property whose value is TEXT, unless that is empty.
func (c *contentLines) text(property, s string) {
	if value := calendarText(s); value != "" {
		c.line(property, value)
	}
}

// line adds one content line, which must be UTF-8, and folds it between characters.
func (c *contentLines) line(property, value string) {
	rest := property + ":" + value
	for room := lineOctets; len(rest) > room; room = lineOctets - 1 {
		cut := room
		for !utf8.RuneStart(rest[cut]) {
			cut--
		}
		c.out.WriteString(rest[:cut] + "\r\n ")
		rest = rest[cut:]
	}
	c.out.WriteString(rest + "\r\n")
}
