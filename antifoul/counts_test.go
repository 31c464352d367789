package antifoul_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// Plain numbers are taken on both ends of what README and schema say, and beyond either refused in the same words.
func TestPlainNumbersOnTheirEnds(t *testing.T) {
	const (
		hull   = "mass = \"4 t\"\n"
		keel   = "[[hull.piece]]\nwhat = \"bilge-keel\"\nlength = \"0.1 m\"\nheight = \"0.1 m\"\n"
		store  = "[[tin]]\ncoating = \"epoxy-barrier\"\n[[tin.store]]\nsize = \"0.75 L\"\n"
		record = "[[record]]\ncoating = \"ablative-cuprous-multi\"\nlaunched = 2025-04-01\n"
		look   = "[[record.look]]\non = 2026-03-01\nzone = \"flat\"\nfilm = \"95 um\"\n"
		used   = "[[used]]\npart = \"hull\"\ncoating = \"epoxy-barrier\"\nlitres = \"9 L\"\n"
		meter  = "[[moisture]]\npart = \"hull\"\ninstrument = \"capacitance-meter\"\nmeter = \"number 3\"\nscale = \"0 to 100\"\n"
	)
	end := "by = \"roller\"\ncans = [\"0.75 L\", \"2.5 L\"]\n"
	for _, c := range []struct {
		key       string
		after     string // the line of the base boat behind which the section stands
		section   string
		low, high int
	}{
		{"hull.hulls", hull, "hulls = %d\n", 1, 3},
		{"hull.stand_pairs", hull, "stand_pairs = %d\n", 0, 100},
		{"hull.keel_blocks", hull, "keel_blocks = %d\n", 0, 100},
		{"hull.chains", hull, "chains = %d\n", 0, 100},
		{"hull.piece[1].count", hull, keel + "count = %d\n", 1, 100},
		{"work.hands", "[work]\n", "hands = %d\n[sea]\n", 1, 100},
		{"tin[1].store[1].count", end, store + "count = %d\n", 1, 1000},
		{"record[1].coats", end, record + "litres = \"9 L\"\ncoats = %d\n" + look, 1, 50},
		{"record[1].look[1].readings", end, record + "film = \"150 um\"\n" + look + "readings = %d\n", 1, 100000},
		{"used[1].coats", end, used + "coats = %d\n", 1, 50},
		{"moisture[1].spots", end, meter + "reading = 12\nspots = %d\n", 1, 10000},
		{"moisture[1].reading", end, meter + "reading = %d\n", 0, 1000000},
		{"moisture[1].dry", end, meter + "reading = 12\ndry = %d\n", 0, 1000000},
	} {
		read := func(n int) finding.Faults {
			text := strings.Replace(base, c.after, c.after+fmt.Sprintf(c.section, n), 1)
			text = strings.Replace(text, "[sea]\nhands = 2\n", "", 1)
			_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
			fs, _ := errors.AsType[finding.Faults](err)
			return fs
		}
		for _, n := range []int{c.low, c.high} {
			if fs := read(n); len(fs) > 0 {
				t.Errorf("%s of %d: %v", c.key, n, fs)
			}
		}
		under, over := read(c.low-1), read(c.high+1)
		if len(under) != 1 || len(over) != 1 || under[0].Key != c.key || over[0].Key != c.key {
			t.Errorf("%s of %d: %v; of %d: %v", c.key, c.low-1, under, c.high+1, over)
			continue
		}
		if under[0].Want != over[0].Want || under[0].Kind != over[0].Kind {
			t.Errorf("%s is refused in two ways: %v; %v", c.key, under, over)
		}
	}
}

// A list of single days may have 400 of them; of one that is no day the fault says where in the list it stands.
func TestListsOfDays(t *testing.T) {
	days := func(n int) string {
		var out []string
		for i := range n {
			out = append(out, time.Date(2027, time.April, 3+i, 0, 0, 0, 0, time.UTC).Format(time.DateOnly))
		}
		return "[" + strings.Join(out, ", ") + "]"
	}
	for name, c := range map[string]struct{ list, says string }{
		"a year and more": {days(400), ""},
		"too many":        {days(401), "at most 400 days"},
		"the second":      {"[2027-05-06, \"7 May\", 2027-05-08]", "\"7 May\" at place 2"},
		"the first":       {"[6, 2027-05-07]", "6 at place 1"},
		"no list":         {"2027-05-06", "a list"},
	} {
		for _, key := range []string{"free", "taken"} {
			text := strings.Replace(base, "hands = 2\n", "hands = 2\n"+key+" = "+c.list+"\n", 1)
			_, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
			fs, _ := errors.AsType[finding.Faults](err)
			if c.says == "" && len(fs) > 0 || c.says != "" && (len(fs) != 1 || fs[0].Key != "work."+key || !strings.Contains(fs[0].Error(), c.says)) {
				t.Errorf("%s, %s: %v", key, name, err)
			}
		}
	}
}

// What a section must say and does not is missing, once, at its own key.
func TestWhatASectionLacks(t *testing.T) {
	for name, c := range map[string]struct{ old, new, want string }{
		"a layer without its coating": {"coating = \"bare\"\n", "", "part[rudder].found[1].coating"},
		"a look without its part":     {"[paint]", "[[seen]]\nzone = \"flat\"\n[paint]", "seen[1].part"},
		"a reading without its part":  {"[paint]", "[[moisture]]\ninstrument = \"pin-meter\"\nmeter = \"m\"\nscale = \"s\"\nreading = 3\n[paint]", "moisture[1].part"},
		"a meter that was not read":   {"[paint]", "[[moisture]]\npart = \"hull\"\ninstrument = \"pin-meter\"\nmeter = \"m\"\nscale = \"s\"\n[paint]", "moisture[1].reading"},
	} {
		fs := readWrong(t, strings.Replace(base, c.old, c.new, 1))
		if len(fs) != 1 || fs[0].Key != c.want || !errors.Is(fs[0], finding.ErrMissing) {
			t.Errorf("%s: %v", name, fs)
		}
	}
}
