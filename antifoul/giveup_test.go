package antifoul_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// cures is epoxy that may go into the water the next day, so that coats are what takes the time.
const cures = "[[coating]]\nkey = \"epoxy-barrier\"\nbasis = \"own table\"\nsource = \"the tin\"\nlaunch_min = \"24 h\"\n" +
	"[[coating]]\nkey = \"epoxy-barrier-solvent-free\"\nbasis = \"own table\"\nsource = \"the tin\"\nlaunch_min = \"24 h\"\n" +
	"[[coating]]\nkey = \"epoxy-primer\"\nbasis = \"own table\"\nsource = \"the tin\"\nlaunch_min = \"24 h\"\n"

// tight is the boat of two parts, every day of the week at work, one coat a day, at the first launch for which something is given up and she is in time.
func tight(t *testing.T, boat string) *antifoul.Job {
	t.Helper()
	boat = strings.NewReplacer("stand_pairs = 3", "stand_pairs = 0", `"20 degC"`, `"10 degC"`, `"Sat", "Sun"`, `"Sat", "Sun", "Mon", "Tue", "Wed", "Thu", "Fri"`).Replace(boat)
	for ready, early := billed(t, cures, boat).Season.Calendar.Ready, 3; early >= 0; early-- {
		launch := "reserve = \"0 d\"\nlaunch = " + ready.AddDate(0, 0, -early).Format(time.DateOnly)
		if j := billed(t, cures, strings.Replace(boat, "launch_open = true", launch, 1)); len(j.Season.Kept) > 0 {
			return j
		}
	}
	t.Fatal("no launch is just in time")
	return nil
}

// leaves lists what is given up or kept, and of what.
func leaves(j *antifoul.Job) string {
	var out []string
	for _, f := range j.Season.Findings {
		if slices.Contains([]finding.ID{antifoul.RuleLeaveBarrier, antifoul.RuleLeaveCoat, antifoul.RuleWetBarrier, antifoul.RuleKeepBarrier}, f.Rule) {
			out = append(out, fmt.Sprintf("%s %s", f.Rule, f.About))
		}
	}
	return strings.Join(out, ", ")
}

// Only what brings her into the water in time is given up, whichever part stands first in the file. The hull has an extra coat and so one more than the keel: of both third coats hers is left
// out, and the keel's is given back. Where her barrier, which stays on steel, takes longer than the keel's, the keel has its barrier back as well.
func TestOnlyWhatIsNeededIsGivenUp(t *testing.T) {
	for want, c := range map[string][2]string{
		"season-leave-coat hull":                           {"material = \"grp\"", "grp"},
		"season-keep-barrier hull, season-leave-coat hull": {"material = \"steel\"", "grp\"\nbarrier = true\nlaminate = \"dry"},
	} {
		boat := fmt.Sprintf(seasonal, c[0], c[1], "launch_open = true")
		first, second, use := strings.Index(boat, "[[part]]"), strings.LastIndex(boat, "[[part]]"), strings.Index(boat, "[use]")
		for _, text := range []string{boat, boat[:first] + boat[second:use] + boat[first:second] + boat[use:]} {
			j := tight(t, text)
			if got := leaves(j); got != want {
				t.Errorf("given up: %s, want %s", got, want)
			}
			coats := func(turns []antifoul.Turn, part string) (n int) {
				for _, x := range turns {
					for _, k := range x.Coats {
						if k.Part == part && x.Section <= 1 {
							n++
						}
					}
				}
				return n
			}
			if hull, keel := coats(j.Season.Turns, "hull")-coats(j.Season.Kept, "hull"), coats(j.Season.Turns, "keel")-coats(j.Season.Kept, "keel"); hull != 1 || keel != 0 {
				t.Errorf("%s: %d coats fewer on the hull, %d on the keel", want, hull, keel)
			}
		}
	}
}

// A film that is her own signal needs no coat below the working ones, of which the third is left all the same.
func TestThirdCoatOverAnOldSignal(t *testing.T) {
	boat := strings.NewReplacer("coating = \"bare\"\nstate", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nstate", "[wishes]\n", "[wishes]\ntop_colour = \"black\"\n",
		"stand_pairs = 3", "stand_pairs = 3\nmeasured = { flat = \"20 m2\" }").Replace(fmt.Sprintf(seasonal, "material = \"grp\"", "grp", "launch_open = true"))
	j := tight(t, boat)
	if s, _ := j.Scheme("hull"); s.Coats[0].Layer.For != compat.Working {
		t.Fatalf("the first coat is %s: the test asks too little", s.Coats[0].Layer.For)
	}
	if got := leaves(j); got != "season-leave-coat hull, season-leave-coat keel" {
		t.Errorf("given up: %s", got)
	}
}

// Whose barrier stays, however short the season: that of any metal, and one over which alone the coating may lie; a primer is none.
func TestWhoseBarrierStays(t *testing.T) {
	for name, c := range map[string]struct {
		hull, coating, want string
	}{
		"grp, and primed lead":           {barrierOnGRP, "ablative-cuprous-multi", ""},
		"aluminium under free of copper": {"material = \"aluminium\"\nbarrier = true", "ablative-copper-free", "season-keep-barrier hull"},
		"copper on ferrocement":          {"material = \"ferrocement\"", "ablative-cuprous-multi", "season-keep-barrier hull"},
	} {
		j := plannedJob(t, strings.Replace(fmt.Sprintf(seasonal, c.hull, "lead", "launch = 2027-05-03"), "ablative-cuprous-multi", c.coating, 1))
		if got := leaves(j); got != c.want || !j.Season.Findings.Has(antifoul.RuleNotEven) {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// A laminate whose moisture still rises is wet, though nobody says so: what is given up is the barrier of a wet one. In the slings nothing waits for a barrier that is given up.
func TestBarrierThatIsGivenUp(t *testing.T) {
	if got := leaves(inSeason(t, "material = \"grp\"\nbarrier = true\nreadings = { moisture = \"rising\" }", "lead", "launch = 2027-06-12")); got != "season-wet-barrier hull" {
		t.Errorf("moisture that rises: %s", got)
	}
	for launch, waits := range map[string]bool{"2027-05-15": false, "2027-09-19": true} {
		j := inSeason(t, barrierOnGRP, "lead", "slings = true\nreserve = \"0 d\"\nlaunch = "+launch)
		if got := leaves(j); (got == "") != waits {
			t.Fatalf("launched on %s: %q", launch, got)
		}
		if got := slices.ContainsFunc(j.Season.Findings, func(f finding.Finding) bool { return f.Rule == "slings-waits" && strings.Contains(f.About, "barrier") }); got != waits {
			t.Errorf("launched on %s: a barrier waits %v, want %v", launch, got, waits)
		}
	}
}

// When she would be ready with all given up that may be is when she is ready without a barrier and with a coat fewer.
func TestReadyWithAllGivenUp(t *testing.T) {
	ready := func(hull string) (quantity.Date, any) {
		s := inSeason(t, hull, "lead", "launch = 2027-05-03").Season
		for _, f := range s.Findings {
			if f.Rule == antifoul.RuleNotEven || f.Rule == antifoul.RuleNothingLeft {
				d, _ := quantity.NewDate(s.Calendar.Ready.Year(), int(s.Calendar.Ready.Month()), s.Calendar.Ready.Day())
				return d, factOf(f, "ready")
			}
		}
		t.Fatalf("no word of when she is ready: %v", s.Findings)
		return quantity.Date{}, nil
	}
	whole, left := ready(barrierOnGRP)
	_, without := ready("material = \"grp\"\nlaminate = \"dry\"")
	if left != without || fmt.Sprint(left) >= whole.String() {
		t.Errorf("ready on %s, with all given up on %v, without a barrier on %v", whole, left, without)
	}
}

// One hand more is offered where hours are what is short, with the day that it makes, in time or not; where paint must dry none is. Who says nothing of hands has one.
func TestOneHandMore(t *testing.T) {
	boat := func(flat, hands, launch string) string {
		return strings.NewReplacer("hands = 2\n", hands, "stand_pairs = 3", "stand_pairs = 0\nmeasured = { flat = \""+flat+"\" }").Replace(fmt.Sprintf(seasonal, "material = \"grp\"", "grp", launch))
	}
	for name, c := range map[string]struct {
		flat, hands, more string
		now               any // hands with the one more
	}{
		"two":              {"60 m2", "hands = 2\n", "hands = 3\n", 3},
		"not said":         {"40 m2", "", "hands = 2\n", 2},
		"no plan with one": {"100 m2", "hands = 1\n", "hands = 2\n", 2},
		"no day sooner":    {"80 m2", "hands = 2\n", "hands = 3\n", nil},
		"drying":           {"5 m2", "hands = 4\n", "hands = 5\n", nil},
	} {
		s := plannedJob(t, boat(c.flat, c.hands, "launch = 2027-05-03")).Season
		var hands, ready any
		for _, f := range s.Findings {
			if f.Rule == antifoul.RuleMoreHands {
				hands, ready = factOf(f, "hands"), factOf(f, "ready")
			}
		}
		if hands != c.now {
			t.Errorf("%s: offered %v, want %v", name, hands, c.now)
		}
		if more := plannedJob(t, boat(c.flat, c.more, "launch_open = true")).Season.Calendar.Ready; hands != nil && ready != more.Format(time.DateOnly) {
			t.Errorf("%s: ready on %v, want %s", name, ready, more)
		}
	}
}
