package report

import (
	"slices"
	"strings"
	"testing"
	"time"
)

// All examples here are typed from RFC 5545 (September 2009), where they are indented; each has its section and page beside it.

func crlf(lines ...string) string { return strings.Join(lines, "\r\n") + "\r\n" }

// The test's own reader reads the folded and escaped examples of the document, so that it may judge what is written.
func TestCalendarReaderAgainstRFC5545(t *testing.T) {
	t.Attr("source", "RFC 5545, sections 3.1, 3.3.11 and 3.6.3")
	// Section 3.1, page 9.
	lines, err := unfold(crlf("DESCRIPTION:This is a lo", " ng description", "  that exists on a long line."))
	if want := []string{"DESCRIPTION:This is a long description that exists on a long line."}; err != nil || !slices.Equal(lines, want) {
		t.Errorf("unfolded to %q, %v", lines, err)
	}
	// Section 3.6.3, page 59: the first lines of the journal entry, up to the first line break of its text.
	lines, err = unfold(crlf(`DESCRIPTION:1. Staff meeting: Participants include Joe\,`, `  Lisa\, and Bob. Aurora project plans were reviewed.`,
		`  There is currently no budget reserves for this project.`, `  Lisa will escalate to management. Next meeting on Tuesday.\n`))
	if err != nil || len(lines) != 1 {
		t.Fatalf("unfolded to %q, %v", lines, err)
	}
	got, err := unescape(strings.TrimPrefix(lines[0], "DESCRIPTION:"))
	want := "1. Staff meeting: Participants include Joe, Lisa, and Bob. Aurora project plans were reviewed. There is currently no budget reserves for this project." +
		" Lisa will escalate to management. Next meeting on Tuesday.\n"
	if err != nil || got != want {
		t.Errorf("unescaped to %q, %v", got, err)
	}
	// Section 3.4, page 50.
	cal, err := readCalendar(crlf("BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//hacksw/handcal//NONSGML v1.0//EN", "BEGIN:VEVENT", "UID:19970610T172345Z-AF23B2@example.com",
		"DTSTAMP:19970610T172345Z", "DTSTART:19970714T170000Z", "DTEND:19970715T040000Z", "SUMMARY:Bastille Day Party", "END:VEVENT", "END:VCALENDAR"))
	if err != nil || len(cal.events) != 1 || cal.events[0]["SUMMARY"] != "Bastille Day Party" || cal.events[0]["DTEND"] != "19970715T040000Z" {
		t.Errorf("the example calendar is read as %v, %v", cal, err)
	}
}

func TestCalendarTextAgainstRFC5545(t *testing.T) {
	t.Attr("source", "RFC 5545, section 3.3.11, page 46")
	if got := calendarText("Project XYZ Final Review\nConference Room - 3B\nCome Prepared."); got != `Project XYZ Final Review\nConference Room - 3B\nCome Prepared.` {
		t.Errorf("three lines are written %s", got)
	}
	// The same section: comma, semicolon and backslash must be escaped, a colon shall not be; a double quote and a tab stand for themselves.
	if got := calendarText(",;\\:\"\t"); got != `\,\;\\:"`+"\t" {
		t.Errorf("the characters are written %s", got)
	}
	// Section 3.1, page 9: the long line has 66 octets and may stay whole.
	var c contentLines
	c.text("DESCRIPTION", "This is a long description that exists on a long line.")
	if got := c.out.String(); got != "DESCRIPTION:This is a long description that exists on a long line.\r\n" {
		t.Errorf("the line is written %q", got)
	}
}

func TestCalendarTimesAgainstRFC5545(t *testing.T) {
	t.Attr("source", "RFC 5545, sections 3.3.5 and 3.6.1")
	newYork := zone(t, "America/New_York")
	// Section 3.3.5, page 35: 14 July 1997, 13:30 in New York, local and in UTC.
	at := time.Date(1997, time.July, 14, 13, 30, 0, 0, newYork)
	if got := clock(at, true); got != "19970714T133000" {
		t.Errorf("local time: %s", got)
	}
	if got := clock(at, false); got != "19970714T173000Z" {
		t.Errorf("UTC time: %s", got)
	}
	// The same section, page 34: a clock that shows 1:30 twice, and the first of the two: 4 November 2007, 1:30 at four hours behind UTC.
	if got := clock(time.Date(2007, time.November, 4, 1, 30, 0, 0, time.FixedZone("EDT", -4*3600)).In(newYork), true); got != "20071104T013000" {
		t.Errorf("first 1:30: %s", got)
	}
	// Section 3.6.1, pages 54 and 55: a reminder, here with hours that are taken; and the end of an all-day event, the day after its last.
	cal := written(t, time.Date(1997, time.September, 1, 13, 0, 0, 0, time.UTC), "", event{
		uid: "19970901T130000Z-123402@example.com", summary: "Laurel is in sensitivity awareness class.",
		start: time.Date(1997, time.April, 1, 16, 30, 0, 0, time.UTC), end: time.Date(1997, time.April, 2, 1, 0, 0, 0, time.UTC),
	}, event{uid: "20070423T123432Z-541111@example.com", day: onDay(t, "2007-07-08")})
	for key, want := range map[string]string{
		"UID": "19970901T130000Z-123402@example.com", "DTSTAMP": "19970901T130000Z", "DTSTART": "19970401T163000Z", "DTEND": "19970402T010000Z",
		"SUMMARY": "Laurel is in sensitivity awareness class.",
	} {
		if got := cal.events[0][key]; got != want {
			t.Errorf("%s is %q, want %q", key, got, want)
		}
	}
	if got := cal.events[1]["DTEND;VALUE=DATE"]; got != "20070709" {
		t.Errorf("8 July is written with the end %s", got)
	}
}
