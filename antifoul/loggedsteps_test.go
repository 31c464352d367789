package antifoul_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
)

// rudderOf is the sheet's boat with a rudder of another material, and something else on it.
func rudderOf(material, found string) string {
	return strings.Replace(sheet, "name = \"rudder\"\nzone = \"rudder\"\nmaterial = \"grp\"\narea = \"2 m2\"\n[[part.found]]\ncoating = \"epoxy-barrier\"",
		"name = \"rudder\"\nzone = \"rudder\"\nmaterial = \""+material+"\"\narea = \"2 m2\"\n[[part.found]]\ncoating = \""+found+"\"", 1)
}

// tasks are notes of work on a part, one a day from 1 April on.
func tasks(part string, do ...string) string {
	var out strings.Builder
	for i, d := range do {
		day := time.Date(2027, 4, 1+i, 9, 0, 0, 0, time.UTC).Format("2006-01-02 15:04")
		out.WriteString("[[task]]\npart = \"" + part + "\"\ndo = \"" + d + "\"\nbegun = \"" + day + "\"\n")
	}
	return out.String()
}

// The log is asked about each kind of work that the plan has on a part, in the plan's order; what is put on is told by coats. Blasting also takes the old film off, abrading also makes matt, and
// neither the other way round.
func TestWorkThatTheLogIsSilentAbout(t *testing.T) {
	for _, c := range []struct {
		name, boat, plan, tasks string
		silent                  string
	}{
		{"nothing noted", rudderOf("steel", "bare"), "degrease, blast, prime, barrier", "", "degrease, blast"},
		{"one is noted", rudderOf("steel", "bare"), "degrease, blast, prime, barrier", tasks("rudder", "blast"), "degrease"},
		{"both are noted", rudderOf("steel", "bare"), "degrease, blast, prime, barrier", tasks("rudder", "degrease", "blast"), ""},
		{"of another part", rudderOf("steel", "bare"), "degrease, blast, prime, barrier", tasks("hull", "degrease", "blast"), "degrease, blast"},
		{"stripped is not blasted", rudderOf("steel", "bare"), "degrease, blast, prime, barrier", tasks("rudder", "degrease", "strip"), "blast"},
		{"blasted is stripped", rudderOf("grp", "silicone-old"), "strip, degrease, abrade", tasks("rudder", "blast", "degrease"), "abrade"},
		{"abraded is not stripped", rudderOf("grp", "silicone-old"), "strip, degrease, abrade", tasks("rudder", "abrade"), "strip, degrease"},
		{"made matt is not abraded", rudderOf("grp", "silicone-old"), "strip, degrease, abrade", tasks("rudder", "strip", "degrease", "wet scuff"), "abrade"},
		{"made matt", rudderOf("wood-carvel", "red-lead-old"), "wash, wet scuff", tasks("rudder", "wash", "wet scuff"), ""},
		{"abraded is made matt", rudderOf("wood-carvel", "red-lead-old"), "wash, wet scuff", tasks("rudder", "wash", "abrade"), ""},
		{"blasted is not made matt", rudderOf("wood-carvel", "red-lead-old"), "wash, wet scuff", tasks("rudder", "wash", "blast"), "wet scuff"},
	} {
		j := plannedJob(t, c.boat)
		s, _ := j.Scheme("rudder")
		var plan, want []string
		for _, step := range s.Route.Steps {
			plan = append(plan, string(step.Do))
		}
		if got := strings.Join(plan, ", "); got != c.plan {
			t.Fatalf("%s: the plan is %s", c.name, got)
		}
		for do := range strings.SplitSeq(c.silent, ", ") {
			if row, err := j.Book.Step(finding.Action(do)); err == nil {
				want = append(want, row.Name)
			}
		}
		var got any
		for _, f := range logged(t, j, logHead+laid()+c.tasks, "").Findings {
			if f.Rule == antifoul.RuleLogSteps {
				got = factOf(f, "steps")
			}
		}
		if c.silent == "" && got != nil || c.silent != "" && got != any(strings.Join(want, ", ")) {
			t.Errorf("%s: silent about %v, want %q", c.name, got, want)
		}
	}
}

// A log is of another boat only where both have a name and these differ.
func TestNamesOfLogAndBoat(t *testing.T) {
	for _, c := range []struct {
		log, boat string
		other     bool
	}{{"Plover", "Sheet", true}, {"Sheet", "Sheet", false}, {"", "Sheet", false}, {"Plover", "", false}, {"", "", false}} {
		boat, head := sheet, logHead
		if c.boat == "" {
			boat = strings.Replace(boat, "name = \"Sheet\"\n", "", 1)
		}
		if c.log != "" {
			head += "boat = \"" + c.log + "\"\n"
		}
		if got := logged(t, plannedJob(t, boat), head+laid(), "").Findings.Has(antifoul.RuleLogBoat); got != c.other {
			t.Errorf("a log of %q, a boat %q: another boat %v", c.log, c.boat, got)
		}
	}
}

// What was begun after the moment asked about is a fault, coat by coat and task by task; what began in that minute is none.
func TestBegunAfterTheMoment(t *testing.T) {
	j := plannedJob(t, sheet)
	l, err := readLog(j, logHead+laid()+laid(`coat = 2`, `begun = "2027-04-11 09:00"`, `ended = "2027-04-11 10:00"`)+tasks("rudder", "wash")+
		"[[task]]\npart = \"rudder\"\ndo = \"wash\"\nbegun = \"2027-04-11 09:00\"\n")
	if err != nil {
		t.Fatal(err)
	}
	nine := time.Date(2027, 4, 11, 9, 0, 0, 0, time.UTC)
	if _, err := j.Logged(l, nine); err != nil {
		t.Error(err)
	}
	_, err = j.Logged(l, nine.Add(-time.Minute))
	faults, _ := errors.AsType[finding.Faults](err)
	var keys []string
	for _, f := range faults {
		keys = append(keys, f.Key)
	}
	if !slices.Equal(keys, []string{"coat[2].begun", "task[2].begun"}) {
		t.Errorf("%v", err)
	}
}
