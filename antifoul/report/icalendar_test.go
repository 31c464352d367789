package report

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zones of the tests, on machines that have none
	"unicode/utf8"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// wallCalendar is what the reader of the tests makes of a VCALENDAR: its properties and its events, by name with parameters, values unescaped.
type wallCalendar struct {
	properties map[string]string
	events     []map[string]string
}

// unfold checks the lines of a calendar as they stand and puts folded ones together.
func unfold(s string) ([]string, error) {
	body, ended := strings.CutSuffix(s, "\r\n")
	if !ended {
		return nil, errors.New("the last line has no CRLF")
	}
	var out []string
	for i, l := range strings.Split(body, "\r\n") {
		switch {
		case strings.ContainsAny(l, "\r\n"):
			return nil, fmt.Errorf("line %d has a line break of its own: %q", i+1, l)
		case l == "":
			return nil, fmt.Errorf("line %d is empty", i+1)
		case len(l) > 75:
			return nil, fmt.Errorf("line %d has %d octets", i+1, len(l))
		case !utf8.ValidString(l):
			return nil, fmt.Errorf("line %d cuts a character or is not UTF-8: %q", i+1, l)
		case l[0] == ' ' || l[0] == '\t':
			if len(out) == 0 || len(l) == 1 {
				return nil, fmt.Errorf("line %d continues nothing, or with nothing", i+1)
			}
			out[len(out)-1] += l[1:]
		default:
			out = append(out, l)
		}
	}
	return out, nil
}

// unescape reads a TEXT value and refuses what the grammar of RFC 5545, section 3.3.11, has not.
func unescape(s string) (string, error) {
	var out strings.Builder
	escaped := false
	for _, r := range s {
		switch {
		case escaped:
			i := strings.IndexRune(`\;,nN`, r)
			if i < 0 {
				return "", fmt.Errorf("a backslash before %q", r)
			}
			out.WriteByte("\\;,\n\n"[i])
			escaped = false
		case r == '\\':
			escaped = true
		case r == ',' || r == ';' || r < ' ' && r != '\t' || r >= 0x7f && r < 0xa0:
			return "", fmt.Errorf("%q stands bare", r)
		default:
			out.WriteRune(r)
		}
	}
	if escaped {
		return "", errors.New("a backslash at the end")
	}
	return out.String(), nil
}

// readCalendar reads one VCALENDAR of VEVENTs, each property once.
func readCalendar(s string) (wallCalendar, error) {
	cal := wallCalendar{properties: map[string]string{}}
	lines, err := unfold(s)
	if err != nil {
		return cal, err
	}
	if n := len(lines); n < 2 || lines[0] != "BEGIN:VCALENDAR" || lines[n-1] != "END:VCALENDAR" {
		return cal, errors.New("it is not one VCALENDAR")
	}
	open := false
	for _, l := range lines[1 : len(lines)-1] {
		name, value, ok := strings.Cut(l, ":")
		switch {
		case !ok:
			return cal, fmt.Errorf("no colon in %q", l)
		case l == "BEGIN:VEVENT" && !open:
			open = true
			cal.events = append(cal.events, map[string]string{})
		case l == "END:VEVENT" && open:
			open = false
		case name == "BEGIN" || name == "END" || !open && len(cal.events) > 0:
			return cal, fmt.Errorf("%q is out of place", l)
		default:
			into := cal.properties
			if open {
				into = cal.events[len(cal.events)-1]
			}
			if _, twice := into[name]; twice {
				return cal, fmt.Errorf("%s stands there twice", name)
			}
			if into[name], err = unescape(value); err != nil {
				return cal, fmt.Errorf("%s: %w", name, err)
			}
		}
	}
	if open || len(cal.events) == 0 {
		return cal, errors.New("an event is not closed, or there is none")
	}
	return cal, nil
}

// The reader refuses what a writer gets wrong.
func TestCalendarReaderRefuses(t *testing.T) {
	good := []string{"BEGIN:VCALENDAR", "BEGIN:VEVENT", "SUMMARY:a", "END:VEVENT", "END:VCALENDAR"}
	if _, err := readCalendar(crlf(good...)); err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"", "SUMMARY:a\n", "SUMMARY:a\r", "SUMMARY", "SUMMARY:a\r\nSUMMARY:b", `SUMMARY:a\`, `SUMMARY:\a`, "SUMMARY:a,b", "SUMMARY:a;b", "SUMMARY:a\x00", "SUMMARY:a\u0085",
		"SUMMARY:\xf0\x9f\r\n \x9a\xa2", "SUMMARY:a\r\n ", "SUMMARY:" + strings.Repeat("a", 68), "END:VEVENT", "BEGIN:VEVENT", "END:VEVENT\r\nNAME:a\r\nBEGIN:VEVENT",
	} {
		bad := slices.Clone(good)
		bad[2] = line
		if cal, err := readCalendar(crlf(bad...)); err == nil {
			t.Errorf("%q is read as %v", line, cal)
		}
	}
	for _, s := range []string{"", "\r\n", strings.TrimSuffix(crlf(good...), "\r\n"), strings.ReplaceAll(crlf(good...), "\r\n", "\n"), crlf("BEGIN:VCALENDAR", "END:VCALENDAR")} {
		if cal, err := readCalendar(s); err == nil {
			t.Errorf("%q is read as %v", s, cal)
		}
	}
}

func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

func onDay(t *testing.T, s string) quantity.Date {
	t.Helper()
	d, err := quantity.ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func written(t *testing.T, stamp time.Time, name string, events ...event) wallCalendar {
	t.Helper()
	var out bytes.Buffer
	if err := icalendar(&out, stamp, name, events); err != nil {
		t.Fatal(err)
	}
	cal, err := readCalendar(out.String())
	if err != nil {
		t.Fatalf("%v in\n%s", err, out.String())
	}
	if len(cal.events) != len(events) {
		t.Fatalf("%d events were written as %d", len(events), len(cal.events))
	}
	return cal
}

var noon = time.Date(2027, time.April, 3, 12, 0, 0, 0, time.UTC)

// oneHour is an event of an hour with the words.
func oneHour(summary, text string) event {
	return event{uid: "launch@boatyard.example", start: noon, end: noon.Add(time.Hour), summary: summary, text: text}
}

// The whole of a calendar by hand. Copenhagen is two hours ahead of UTC in April. The description's first line has 12 octets of name and colon, 11 of "from 4 h on",
// 2 of the escaped comma, a space and 49 of x: 75.
func TestCalendarWhole(t *testing.T) {
	eight := time.Date(2027, time.April, 3, 8, 0, 0, 999_999_999, zone(t, "Europe/Copenhagen"))
	var out bytes.Buffer
	err := icalendar(&out, eight, "Boat; hull, 2027", []event{
		{uid: "1@boatyard.example", start: eight, end: eight.Add(4 * time.Hour), summary: "Second coat", text: "from 4 h on, " + strings.Repeat("x", 49) + "é"},
		{uid: "2@boatyard.example", start: eight, end: eight.Add(4 * time.Hour), floating: true},
		{uid: "3@boatyard.example", day: onDay(t, "2027-12-31"), summary: "Haul out", text: "\x00"},
	})
	if err != nil {
		t.Fatal(err)
	}
	want := crlf(
		"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//boatyard.example//bottomwork//EN", "CALSCALE:GREGORIAN", `NAME:Boat\; hull\, 2027`,
		"BEGIN:VEVENT", "UID:1@boatyard.example", "DTSTAMP:20270403T060000Z", "DTSTART:20270403T060000Z", "DTEND:20270403T100000Z", "SUMMARY:Second coat",
		`DESCRIPTION:from 4 h on\, `+strings.Repeat("x", 49), " é", "TRANSP:OPAQUE", "END:VEVENT",
		"BEGIN:VEVENT", "UID:2@boatyard.example", "DTSTAMP:20270403T060000Z", "DTSTART:20270403T080000", "DTEND:20270403T120000", "TRANSP:OPAQUE", "END:VEVENT",
		"BEGIN:VEVENT", "UID:3@boatyard.example", "DTSTAMP:20270403T060000Z", "DTSTART;VALUE=DATE:20271231", "DTEND;VALUE=DATE:20280101", "SUMMARY:Haul out",
		"TRANSP:TRANSPARENT", "END:VEVENT", "END:VCALENDAR",
	)
	if out.String() != want {
		t.Errorf("written:\n%s\nwant:\n%s", out.String(), want)
	}
}

// Lines are filled to 75 octets and no further, and no character is cut. "SUMMARY:" is 8 octets, so 67 fill the first line and 74 each one after; an emoji of four
// octets fits on the first line after 63 and moves to the next after 64 to 67.
func TestCalendarFolding(t *testing.T) {
	x := func(n int) string { return strings.Repeat("x", n) }
	for _, c := range []struct{ text, want string }{
		{x(67), "SUMMARY:" + x(67)},
		{x(68), "SUMMARY:" + x(67) + "\r\n x"},
		{x(141), "SUMMARY:" + x(67) + "\r\n " + x(74)},
		{x(142), "SUMMARY:" + x(67) + "\r\n " + x(74) + "\r\n x"},
		{x(63) + "🚢", "SUMMARY:" + x(63) + "🚢"},
		{x(64) + "🚢", "SUMMARY:" + x(64) + "\r\n 🚢"},
		{x(67) + "🚢", "SUMMARY:" + x(67) + "\r\n 🚢"},
		{x(67) + x(70) + "🚢x", "SUMMARY:" + x(67) + "\r\n " + x(70) + "🚢\r\n x"},
		{x(67) + x(71) + "🚢x", "SUMMARY:" + x(67) + "\r\n " + x(71) + "\r\n 🚢x"},
		{x(67) + "  ", "SUMMARY:" + x(67) + "\r\n   "}, // one space of the fold, two of the text
		{x(66) + ",", "SUMMARY:" + x(66) + "\\\r\n ,"},
	} {
		var l contentLines
		l.text("SUMMARY", c.text)
		if got := l.out.String(); got != c.want+"\r\n" {
			t.Errorf("%q is folded\n%q, want\n%q", c.text, got, c.want)
		}
	}
	// Characters of one to four octets, joined ones and marks at every place of the first three lines.
	for _, s := range []string{"a", "é", "漆", "🚢", "👩\u200d🔧", "e\u0301", "\u200f", "\t", " ", "\n", "\\", ","} {
		for n := range 3 * 75 {
			text := x(n) + s + s + "y"
			cal := written(t, noon, "", oneHour(text, text))
			if got := cal.events[0]; got["SUMMARY"] != text || got["DESCRIPTION"] != text {
				t.Fatalf("%q after %d comes back as %q", s, n, got)
			}
		}
	}
}

// What is written of hostile texts, by hand, and that it comes back; in each property that is TEXT.
func TestCalendarText(t *testing.T) {
	long := strings.Repeat("漆,;\\\n", 2000) // 10,000 characters
	for _, c := range []struct{ text, escaped, back string }{
		{"plain: \"quoted\"", "plain: \"quoted\"", "plain: \"quoted\""},
		{"a,b;c\\d", `a\,b\;c\\d`, "a,b;c\\d"},
		{`\n`, `\\n`, `\n`},  // a backslash and an n are no line break
		{`\,`, `\\\,`, `\,`}, // nor are these escapes already
		{"a\nb\r\nc\rd", `a\nb\nc\nd`, "a\nb\nc\nd"},
		{"\r\r\n\n\r", `\n\n\n\n`, "\n\n\n\n"}, // CR, CRLF, LF, CR
		{"a\u0085b\u2028c\u2029d", `a\nb\nc\nd`, "a\nb\nc\nd"},
		{"a\x00\x07\x08\x0b\x0c\x1b[2J\x1f\x7f\u0080\u009fb", "a[2Jb", "a[2Jb"},
		{"a\tb", "a\tb", "a\tb"},
		{"\u200fקצף\u200e \u202eabc\u202c", "\u200fקצף\u200e \u202eabc\u202c", "\u200fקצף\u200e \u202eabc\u202c"},
		{"a\xffb\xf0\x9f", "a\ufffdb\ufffd\ufffd", "a\ufffdb\ufffd\ufffd"},
		{"a\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n", `a\nEND:VEVENT\nEND:VCALENDAR\n`, "a\nEND:VEVENT\nEND:VCALENDAR\n"},
		{"a\nTRANSP:OPAQUE", `a\nTRANSP:OPAQUE`, "a\nTRANSP:OPAQUE"},
		{long, strings.Repeat(`漆\,\;\\\n`, 2000), long},
		{strings.Repeat(" ", 10_000), strings.Repeat(" ", 10_000), strings.Repeat(" ", 10_000)},
	} {
		if got := calendarText(c.text); got != c.escaped {
			t.Errorf("%.80q is written %.80q, want %.80q", c.text, got, c.escaped)
		}
		e := oneHour(c.text, c.text)
		if len(c.escaped) <= uidOctets {
			e.uid = c.text
		}
		cal := written(t, noon, c.text, e)
		got := cal.events[0]
		if cal.properties["NAME"] != c.back || got["SUMMARY"] != c.back || got["DESCRIPTION"] != c.back || e.uid == c.text && got["UID"] != c.back {
			t.Errorf("%.80q comes back as %.200q and %.200q", c.text, cal.properties, got)
		}
	}
	// What is empty, or has nothing but what is dropped, is left out.
	for _, empty := range []string{"", "\x00\x1b\u0080"} {
		cal := written(t, noon, empty, oneHour(empty, empty))
		for _, m := range []map[string]string{cal.properties, cal.events[0]} {
			for _, name := range []string{"NAME", "SUMMARY", "DESCRIPTION", "METHOD"} {
				if v, ok := m[name]; ok {
					t.Errorf("%q: %s is written %q", empty, name, v)
				}
			}
		}
	}
}

// Copenhagen, 2027: clocks go from 02:00 to 03:00 on 28 March (then UTC+1 becomes UTC+2) and back from 03:00 to 02:00 on 31 October, both at 01:00 UTC.
func TestCalendarAcrossClockChanges(t *testing.T) {
	cph := zone(t, "Europe/Copenhagen")
	utc := func(month time.Month, day, hour, minute int) time.Time {
		return time.Date(2027, month, day, hour, minute, 0, 0, time.UTC).In(cph)
	}
	for _, c := range []struct {
		start, end   time.Time
		inUTC, local string // start and end
	}{
		// Half past one to half past three in spring is one hour.
		{start: utc(3, 28, 0, 30), end: utc(3, 28, 1, 30), inUTC: "20270328T003000Z 20270328T013000Z", local: "20270328T013000 20270328T033000"},
		// Half past one to half past three in autumn is three.
		{start: utc(10, 30, 23, 30), end: utc(10, 31, 2, 30), inUTC: "20271030T233000Z 20271031T023000Z", local: "20271031T013000 20271031T033000"},
		// The first half past two to the second: an hour, and none on the wall.
		{start: utc(10, 31, 0, 30), end: utc(10, 31, 1, 30), inUTC: "20271031T003000Z 20271031T013000Z"},
		// A quarter to three to a quarter past two.
		{start: utc(10, 31, 0, 45), end: utc(10, 31, 1, 15), inUTC: "20271031T004500Z 20271031T011500Z"},
	} {
		for floating, want := range map[bool]string{false: c.inUTC, true: c.local} {
			e := event{uid: "dst@boatyard.example", start: c.start, end: c.end, floating: floating}
			if want == "" {
				if err := icalendar(io.Discard, noon, "", []event{e}); !errors.Is(err, finding.ErrImpossible) {
					t.Errorf("%v to %v floating: %v", c.start, c.end, err)
				}
				continue
			}
			got := written(t, noon, "", e).events[0]
			if s := got["DTSTART"] + " " + got["DTEND"]; s != want {
				t.Errorf("%v to %v, floating %t: written %s, want %s", c.start, c.end, floating, s, want)
			}
		}
	}
	// Days on which the clocks change, end a month, and leap.
	for day, want := range map[string]string{"2027-03-28": "20270329", "2027-10-31": "20271101", "2028-02-28": "20280229", "2028-02-29": "20280301", "9999-12-30": "99991231"} {
		got := written(t, noon, "", event{uid: "day@boatyard.example", day: onDay(t, day)}).events[0]
		if got["DTSTART;VALUE=DATE"] != strings.ReplaceAll(day, "-", "") || got["DTEND;VALUE=DATE"] != want {
			t.Errorf("%s is written %v", day, got)
		}
	}
}

// Each fault by its kind and key, alone; on the limit there is none; and all of them in one error, with nothing written.
func TestCalendarFaults(t *testing.T) {
	good := oneHour("a", "b")
	changed := func(change func(*event)) event {
		e := good
		change(&e)
		return e
	}
	year := func(y int, loc *time.Location) time.Time { return time.Date(y, time.January, 1, 0, 30, 0, 0, loc) }
	east := time.FixedZone("", 3600)
	last := time.Date(9999, time.December, 31, 23, 59, 59, 0, time.UTC)
	for _, c := range []struct {
		name   string
		events []event
		stamp  time.Time
		want   string // kind and key, one after the other
	}{
		{"no event", nil, noon, "missing event"},
		{"no stamp", []event{good}, time.Time{}, "missing stamp"},
		{"stamp too late", []event{good}, last.Add(time.Second), "not accepted stamp"},
		{"stamp as late as can be", []event{good}, last, ""},
		{"stamp before the year 1 in UTC", []event{good}, year(1, east), "not accepted stamp"},
		{"no uid", []event{changed(func(e *event) { e.uid = "\x00" })}, noon, "missing event[1].uid"},
		{"no uid, twice", []event{changed(func(e *event) { e.uid = "" }), changed(func(e *event) { e.uid = "" })}, noon, "missing event[1].uid, missing event[2].uid"},
		{"longest uid", []event{changed(func(e *event) { e.uid = strings.Repeat("x", 253) + "," })}, noon, ""},
		{"uid too long", []event{changed(func(e *event) { e.uid = strings.Repeat("x", 254) + "," })}, noon, "not accepted event[1].uid"},
		{"uid twice", []event{good, changed(func(e *event) { e.uid = "other" }), changed(func(e *event) { e.uid += "\x1b" })}, noon, "given twice event[3].uid"},
		{"no start", []event{changed(func(e *event) { e.start = time.Time{} })}, noon, "missing event[1].start"},
		{"no end", []event{changed(func(e *event) { e.end = time.Time{} })}, noon, "missing event[1].end"},
		{"nothing given", []event{{}}, noon, "missing event[1].end, missing event[1].start, missing event[1].uid"},
		{"end is start", []event{changed(func(e *event) { e.end = e.start })}, noon, "impossible event[1].end"},
		{"end in the second of the start", []event{changed(func(e *event) { e.end = e.start.Add(time.Second - 1) })}, noon, "impossible event[1].end"},
		{"end a second later", []event{changed(func(e *event) { e.end = e.start.Add(time.Second) })}, noon, ""},
		{"end before start", []event{changed(func(e *event) { e.end = e.start.Add(-time.Hour) })}, noon, "impossible event[1].end"},
		{"end too late", []event{changed(func(e *event) { e.end = last.Add(time.Second) })}, noon, "not accepted event[1].end"},
		{"end too late on the wall only", []event{changed(func(e *event) { e.end, e.floating = last.In(east), true })}, noon, "not accepted event[1].end"},
		{"end too late on the wall, in UTC", []event{changed(func(e *event) { e.end = last.In(east) })}, noon, ""},
		{"start before the year 1 in UTC", []event{changed(func(e *event) { e.start = year(1, east) })}, noon, "not accepted event[1].start"},
		{"start in the year 1 on the wall", []event{changed(func(e *event) { e.start, e.floating = year(1, east), true })}, noon, ""},
		{"a day and a start", []event{changed(func(e *event) { e.day, e.end = onDay(t, "2027-04-03"), time.Time{} })}, noon, "impossible event[1].day"},
		{"a day and an end", []event{changed(func(e *event) { e.day, e.start = onDay(t, "2027-04-03"), time.Time{} })}, noon, "impossible event[1].day"},
		{"the last day", []event{{uid: "a", day: onDay(t, "9999-12-31")}}, noon, "not accepted event[1].day"},
		{"all at once", []event{good, good, {}}, time.Time{}, "given twice event[2].uid, missing event[3].end, missing event[3].start, missing event[3].uid, missing stamp"},
	} {
		var out bytes.Buffer
		err := icalendar(&out, c.stamp, "", c.events)
		var got []string
		if fs, ok := errors.AsType[finding.Faults](err); ok {
			for _, f := range fs {
				got = append(got, f.Kind.Error()+" "+f.Key)
				if f.Want == "" {
					t.Errorf("%s: %v does not say what is accepted", c.name, f)
				}
				if f.Kind == finding.ErrDuplicate && !strings.Contains(f.Want, "event[1]") { // the first one has it in every case
					t.Errorf("%s: %v does not name the first event that has it", c.name, f)
				}
			}
		} else if err != nil {
			t.Errorf("%s: %v is no Faults", c.name, err)
		}
		if s := strings.Join(got, ", "); s != c.want {
			t.Errorf("%s: %s, want %s", c.name, s, c.want)
		}
		if err != nil != (out.Len() == 0) {
			t.Errorf("%s: %v, and %d octets written", c.name, err, out.Len())
		}
	}
}

// brokenWriter counts the calls and takes nothing.
type brokenWriter struct{ calls int }

var errBroken = errors.New("broken")

func (b *brokenWriter) Write([]byte) (int, error) {
	b.calls++
	return 0, errBroken
}

// The writer's own error comes back, after one call.
func TestCalendarWriterFails(t *testing.T) {
	var w brokenWriter
	if err := icalendar(&w, noon, "", []event{oneHour("a", "b")}); !errors.Is(err, errBroken) || w.calls != 1 {
		t.Errorf("%v after %d calls", err, w.calls)
	}
}

var (
	lineBreaks = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")
	dropped    = regexp.MustCompile("[\x00-\x08\x0b-\x1f\x7f\u0080-\u009f]")
)

// told is what a reader of TEXT should get of a text, found by another way than the writer's.
func told(s string) string {
	return dropped.ReplaceAllString(lineBreaks.Replace(string([]rune(s))), "")
}

// Whatever is asked for is refused for a reason that the test finds too, or comes back from the reader as it was, and twice the same.
func FuzzICalendar(f *testing.F) {
	f.Add("a@boatyard.example", "Second coat", "from 4 h on, until 24 h", "Boat", int64(1_800_000_000), int32(3600), byte(0))
	f.Add("", "\r\n\r", "\u2028\u0085\x00", "👩\u200d🔧", int64(-62135596800), int32(0), byte(1))
	f.Add("\xff;,\\", "\u200f", strings.Repeat("漆,", 100), "\t", int64(253402300799), int32(1), byte(2))
	f.Fuzz(func(t *testing.T, uid, summary, text, name string, start int64, seconds int32, form byte) {
		start %= 400_000_000_000 // about 12,675 years before and after 1970
		from := time.Unix(start, 0).UTC()
		to := time.Unix(start+int64(seconds), 0).UTC()
		e := event{uid: uid, summary: summary, text: text}
		id := told(uid)
		octets := len(id) + strings.Count(id, "\\") + strings.Count(id, ",") + strings.Count(id, ";") + strings.Count(id, "\n")
		bad := id == "" || octets > 255
		var want [2]string // start and end
		if day, err := quantity.NewDate(from.Year(), int(from.Month()), from.Day()); form%3 == 2 && err == nil {
			e.day = day
			next := from.AddDate(0, 0, 1)
			bad = bad || next.Year() > 9999
			want = [2]string{from.Format("20060102"), next.Format("20060102")}
		} else {
			e.start, e.end, e.floating = from, to, form%3 == 1
			for _, x := range []time.Time{from, to} {
				bad = bad || x.Year() < 1 || x.Year() > 9999 || x.IsZero()
			}
			bad = bad || seconds <= 0
			z := "Z"
			if e.floating {
				z = ""
			}
			want = [2]string{from.Format("20060102T150405") + z, to.Format("20060102T150405") + z}
		}
		var out, again bytes.Buffer
		err := icalendar(&out, noon, name, []event{e})
		if err != nil != bad {
			t.Fatalf("%+v gives %v", e, err)
		}
		if err != nil {
			if _, ok := errors.AsType[finding.Faults](err); !ok || out.Len() > 0 {
				t.Fatalf("%v is no Faults, or something was written: %q", err, out.String())
			}
			return
		}
		if err := icalendar(&again, noon, name, []event{e}); err != nil || !bytes.Equal(out.Bytes(), again.Bytes()) {
			t.Fatalf("a second time it is written otherwise, %v", err)
		}
		cal, err := readCalendar(out.String())
		if err != nil || len(cal.events) != 1 {
			t.Fatalf("%v in %q", err, out.String())
		}
		got := cal.events[0]
		suffix := ""
		if e.day.Given() {
			suffix = ";VALUE=DATE"
		}
		if got["DTSTART"+suffix] != want[0] || got["DTEND"+suffix] != want[1] {
			t.Errorf("times %v, want %s", got, want)
		}
		if got["UID"] != id || got["SUMMARY"] != told(summary) || got["DESCRIPTION"] != told(text) || cal.properties["NAME"] != told(name) {
			t.Errorf("%+v and %q come back as %q and %q", e, name, got, cal.properties)
		}
	})
}

func BenchmarkICalendar(b *testing.B) {
	events := make([]event, 100)
	for i := range events {
		events[i] = oneHour("Second coat", strings.Repeat("from 4 h on, until 24 h; over 5 degC\n", 15))
		events[i].uid = itoa(i) + "@boatyard.example"
	}
	b.ReportAllocs()
	for b.Loop() {
		if err := icalendar(io.Discard, noon, "Boat", events); err != nil {
			b.Fatal(err)
		}
	}
}
