package antifoul_test

import (
	"errors"
	"os"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/joblog"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What a job has not is answered with false or with nothing: parts, types and schemes of other names, layers where nothing may be used.
func TestWhatAJobHasNot(t *testing.T) {
	j, err := plan(t, base)
	if err != nil {
		t.Fatal(err)
	}
	if p, ok := j.Ranking.Part("mast"); ok || p.Part != "" || len(p.Places) > 0 {
		t.Errorf("the mast is ranked: %v", p)
	}
	if p, ok := j.Ranking.Hull().Of("epoxy-primer"); ok || p.Key != "" {
		t.Errorf("a primer has the place %d", p.Rank)
	}
	if s, ok := j.Scheme("mast"); ok || s.Part != "" || len(s.Stack) > 0 {
		t.Errorf("the mast has a scheme: %v", s)
	}
	if none := j.Without(); len(none) > 0 {
		t.Errorf("nothing may be used on %v", none)
	}
	if m, ok, err := j.Morning(time.Date(2027, 4, 10, 9, 0, 0, 0, time.UTC)); ok || err != nil || m.Turn.Name != "" {
		t.Errorf("a morning without a plan of days: %v, %t, %v", m, ok, err)
	}
	if apart, clearly := antifoul.Apart(j.Book, tables.Colour{Lightness: 50}, tables.Colour{Lightness: 50}); apart || clearly {
		t.Error("one colour is told apart from itself")
	}

	x, err := antifoul.ReadBoat(os.DirFS("../examples/bottomjob/testdata"), "nothing.toml")
	if err != nil {
		t.Fatal(err)
	}
	nothing, err := antifoul.Plan(j.Book, x)
	if err != nil {
		t.Fatal(err)
	}
	for part, layer := range nothing.Layers() {
		t.Errorf("where nothing may be used there is %s on the %s", layer, part)
	}
	if got := nothing.Without(); len(got) != 1 || got[0] != x.Parts[0].Name {
		t.Errorf("nothing may be used on %v", got)
	}
	if best, ok := nothing.Ranking.Hull().Best(); ok || best.Key != "" {
		t.Errorf("the best of none is %s", best.Key)
	}

	anode, err := plan(t, strings.Replace(base, "name = \"rudder\"\nzone = \"rudder\"\nmaterial = \"grp\"", "name = \"anode\"\nzone = \"fitting\"\nmaterial = \"zinc-anode\"", 1))
	if err != nil {
		t.Fatal(err)
	}
	p, ok := anode.Ranking.Part("anode")
	if best, may := p.Best(); !ok || may || best.Key != "" {
		t.Errorf("an anode is painted with %q", best.Key)
	}
	if _, has := anode.Scheme("anode"); has {
		t.Error("an anode has a scheme")
	}
}

// Faults of what a job is asked with come back as Faults, with nothing beside them.
func TestFaultsOfQuestions(t *testing.T) {
	j, err := plan(t, base)
	if err != nil {
		t.Fatal(err)
	}
	b := tables.Default()
	_, logged := j.Logged(joblog.Log{Version: joblog.Version}, time.Date(2027, 4, 10, 9, 0, 0, 0, time.UTC))
	_, looked := antifoul.Look(b, antifoul.Boat{})
	_, ranked := antifoul.Rank(b, antifoul.Boat{})
	_, planned := antifoul.Plan(b, antifoul.Boat{})
	half := j.Boat
	half.Hull.Beam = quantity.Length{}
	_, sized := antifoul.Look(b, half)
	twice := half
	twice.Hull.Beam = quantity.Metre.N(3)
	twice.Parts = append([]compat.Part{}, j.Boat.Parts...)
	twice.Parts[1].Name = twice.Parts[0].Name
	_, named := antifoul.Plan(b, twice)
	for name, c := range map[string]struct {
		err  error
		kind error
		key  string
	}{
		"a log of nothing":          {logged, finding.ErrMissing, "coat"},
		"a look at nothing":         {looked, finding.ErrMissing, "boat.date"},
		"nothing ranked":            {ranked, finding.ErrMissing, "boat.date"},
		"nothing planned":           {planned, finding.ErrMissing, "boat.date"},
		"a hull without her beam":   {sized, finding.ErrMissing, "hull.beam"},
		"two parts of the one name": {named, finding.ErrDuplicate, "part[hull].name"},
	} {
		fs, ok := errors.AsType[finding.Faults](c.err)
		told := false
		for _, f := range fs {
			told = told || f.Key == c.key && errors.Is(f, c.kind)
		}
		if !ok || !told {
			t.Errorf("%s: %v; want %s %v", name, c.err, c.key, c.kind)
		}
	}
	if _, err := plan(t, base+"[[tin]]\ncoating = \"hard-cuprous\"\n[[tin]]\ncoating = \"hard-cuprous\"\n"); !errors.Is(err, finding.ErrDuplicate) || !strings.Contains(err.Error(), "tin[2].coating") {
		t.Errorf("two sections for one tin: %v", err)
	}
}

// A morning asked for with weather or days that cannot be is a fault under the key of the section.
func TestFaultsOfAMorning(t *testing.T) {
	j, err := plan(t, strings.Replace(base, "hands = 2", "hands = 2\ndays = [\"Sat\", \"Sun\"]", 1))
	if err != nil {
		t.Fatal(err)
	}
	var at time.Time
	turns, days := j.Season.Shown()
	for _, it := range days.Items {
		if len(turns[it.Task].Coats) > 0 && !it.Again {
			at = it.Start()
			break
		}
	}
	if at.IsZero() {
		t.Fatal("no coat is planned")
	}
	if _, ok, err := j.Morning(at); !ok || err != nil {
		t.Fatalf("on its own morning: %t, %v", ok, err)
	}
	j.Boat.Work.Stop, j.Boat.Work.Start = 8*60, 9*60
	_, ok, err := j.Morning(at)
	fs, _ := errors.AsType[finding.Faults](err)
	if ok || len(fs) == 0 || fs[0].Key != "work.until" || !errors.Is(fs[0], finding.ErrImpossible) {
		t.Errorf("hours that end before they begin: %t, %v", ok, err)
	}
	for _, text := range []string{"", "8:30", "24:01", "25:00", "08:60", "0830", "08-30", "ab:cd", "+8:30"} {
		if minutes, ok := calendar.ParseClock(text); ok || minutes != 0 {
			t.Errorf("%q is %d minutes", text, minutes)
		}
	}
}
