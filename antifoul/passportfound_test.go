package antifoul_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// carriedWith writes the passport of a boat file by a book with own rows.
func carriedWith(t *testing.T, own, boat, log, on string) antifoul.Passport {
	t.Helper()
	j := billed(t, own, boat)
	l := logged(t, j, log, "")
	d, err := quantity.ParseDate(on)
	if err != nil {
		t.Fatal(err)
	}
	p, err := j.Passport(l, fstest.MapFS{"boat.toml": {Data: []byte(boat)}}, "boat.toml", d)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// worn is an own row by which the ablative loses so many micrometres a month afloat, low, typical, high, whether she moves or not.
func worn(low, typical, high string) string {
	rate := fmt.Sprintf("[\"%s um\", \"%s um\", \"%s um\"]", low, typical, high)
	return "[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"her log\"\nwear_rest = " + rate + "\nwear_use = " + rate + "\n"
}

// still is the sheet's boat without a speed, so that wear is at the reference.
func still() string { return strings.Replace(sheet, "speed = \"5 kn\"\n", "", 1) }

// rudderFilms are the layers on the rudder above the epoxy: film, and how each is known.
func rudderFilms(t *testing.T, p antifoul.Passport) (film, known []string) {
	t.Helper()
	x := next(t, p, nil)
	for _, l := range x.Parts[1].Found[1:] {
		said := "?"
		if l.Film.Low.Given() {
			said = fmt.Sprint(l.Film.Low.Number(), " ", l.Film.Typical.Number(), " ", l.Film.High.Number())
		}
		film, known = append(film, said), append(known, l.KnownBy)
	}
	return film, known
}

// What the forecast leaves, by hand. Laid on the rudder are 42.5, 56.25, 71.25 um of signal coat and 170, 225, 285 um of working coats (TestWhatLiesOnTheRudder). She was afloat for 487 days, 16 months
// of 365.25 / 12 days, and a rudder wears 1, 1.5, 2 times as the flat does: at 2, 3, 4 um a month it lost 32, 72, 128 um, of which the working coats have 42, 153, 253 um left.
//
// At 2, 3, 5.28125 um the high end is 169 um and 1 um is left: that is a film. At 5.296875 um it is 169.5: half a micrometre is none. At 5.3125 um, 170, the working film may be gone
// and the signal coat below it is as it was; at 5.328125 um, 170.5, it has lost half a micrometre at most, so 42, 56.25, 71.25 are left. At 6.640625 um the high end is 212.5, and the signal coat may be gone
// too; at 6.671875, 213.5, a whole micrometre of what lies below may be.
//
// At 18, 19, 20 um it is 288, 456, 640: nothing is left of the working coats, and of the signal coat no more than 71.25 − (288 − 285) = 68.25 um.
func TestForecastByHand(t *testing.T) {
	log := wholeRudder(t, plannedJob(t, sheet), nil)
	const left, gone, below = "%s um left of %s um laid", "it may be gone, so no film is told", "what lay below has worn too"
	for name, c := range map[string]struct {
		own          string
		signal, work string
		saysOf       [2]string // of the signal coat, of the working coats
		deep         bool
	}{
		"two to four":  {worn("2", "3", "4"), "42 56 72", "42 153 253", [2]string{"", "42 to 253"}, false},
		"one is left":  {worn("2", "3", "5.28125"), "42 56 72", "1 153 253", [2]string{"", "1 to 253"}, false},
		"half is left": {worn("2", "3", "5.296875"), "42 56 72", "?", [2]string{"", "0 to 253"}, false},
		"just gone":    {worn("2", "3", "5.3125"), "42 56 72", "?", [2]string{"", "0 to 253"}, false},
		"half below":   {worn("2", "3", "5.328125"), "42 56 72", "?", [2]string{"42 to 72", "0 to 253"}, false},
		"signal gone":  {worn("2", "3", "6.640625"), "?", "?", [2]string{"0 to 72", "0 to 253"}, false},
		"half deeper":  {worn("2", "3", "6.65625"), "?", "?", [2]string{"0 to 72", "0 to 253"}, false},
		"one deeper":   {worn("2", "3", "6.671875"), "?", "?", [2]string{"0 to 72", "0 to 253"}, true},
		"all of it":    {worn("18", "19", "20"), "?", "?", [2]string{"0 to 69", "0 to 0"}, true},
	} {
		for _, afloat := range []string{"launched = 2027-05-01\nhauled = 2028-08-30\n", "launched = 2027-05-01\n"} { // not hauled: asked about on the day
			p := carriedWith(t, c.own, still(), strings.Replace(log, logHead, logHead+afloat, 1), "2028-08-30")
			film, known := rudderFilms(t, p)
			if film[0] != c.signal || film[1] != c.work {
				t.Errorf("%s: %v", name, film)
			}
			for i, laid := range []string{"42 to 72", "170 to 285"} {
				want := fmt.Sprintf(left, c.saysOf[i], laid)
				if says := strings.Contains(known[i], want); says != (c.saysOf[i] != "") || strings.Contains(known[i], "forecast") != says || strings.Contains(known[i], gone) != (film[i] == "?") {
					t.Errorf("%s: known by %q", name, known[i])
				}
			}
			if got := strings.Contains(strings.ReplaceAll(string(p.Text), "\n# ", " "), below); got != c.deep {
				t.Errorf("%s: what lay below is told to have worn: %v", name, got)
			}
		}
	}
}

// What nobody can tell is not told: she was afloat for no day, and everything is as it was laid; a layer without a film was worn nobody knows how far; where the eye saw the colour below, no forecast goes
// deeper than the eye, and the eye was on that part and that zone.
func TestForecastWhereItCannotTell(t *testing.T) {
	log := wholeRudder(t, plannedJob(t, sheet), nil)
	afloat := func(log, hauled string) string {
		return strings.Replace(log, logHead, logHead+"launched = 2027-05-01\nhauled = "+hauled+"\n", 1)
	}
	own := worn("18", "19", "20")
	film, known := rudderFilms(t, carriedWith(t, own, still(), strings.Replace(log, logHead, logHead+"launched = 2027-05-01\n", 1), "2027-05-01"))
	if film[1] != "170 225 285" || !strings.HasPrefix(known[1], "job log of 2027-04-14") {
		t.Errorf("afloat for no day: %v %q", film, known)
	}
	unknown := wholeRudder(t, plannedJob(t, sheet), func(i int) []string {
		if i == 4 {
			return []string{"litres"}
		}
		return nil
	})
	unknown = strings.ReplaceAll(unknown, "\nlitres\n", "\n")
	film, known = rudderFilms(t, carriedWith(t, own, still(), afloat(unknown, "2028-08-30"), "2028-08-30"))
	if film[0] != "42 56 72" || film[1] != "?" || !strings.HasPrefix(known[1], "job log of 2027-04-14") || !strings.HasSuffix(known[1], ", film not noted; film not noted, and worn since") || strings.Contains(known[0], "worn") {
		t.Errorf("a coat without a film: %v %q", film, known)
	}
	look := func(part, zone, signal string) string {
		return fmt.Sprintf("[[look]]\non = 2028-08-01\npart = %q\nzone = %q\nsignal = %s\n", part, zone, signal)
	}
	p := carriedWith(t, own, still(), afloat(log, "2028-08-30")+look("rudder", "rudder", "true"), "2028-08-30")
	film, known = rudderFilms(t, p)
	if film[0] != "42 56 72" || film[1] != "?" || !strings.HasPrefix(known[1], "look: the colour below shows on the rudder; laid 170 to 285 um by job log of 2027-04-14") || !strings.HasPrefix(known[0], "job log of 2027-04-10") {
		t.Errorf("the colour below shows: %v %q", film, known)
	}
	if strings.Contains(string(p.Text), "cannot rule out") {
		t.Error("the forecast goes deeper than the eye")
	}
	flat := strings.Replace(log, logHead, logHead+"launched = 2027-05-01\n", 1) + laid(`part = "hull"`, `litres = "5 L"`)
	for zone, shows := range map[string]bool{"flat": true, "edges": false} {
		x := next(t, carriedWith(t, own, still(), flat+look("hull", zone, "true"), "2028-08-30"), nil)
		if f := x.Parts[0].Found; strings.HasPrefix(f[len(f)-1].KnownBy, "look: the colour below shows on the flat") != shows {
			t.Errorf("the colour below shows on the %s: the hull is known by %q", zone, f[len(f)-1].KnownBy)
		}
	}
	for _, other := range []string{look("rudder", "rudder", "false"), look("hull", "flat", "true"), look("rudder", "rudder", "false") + look("hull", "edges", "true")} {
		if _, known := rudderFilms(t, carriedWith(t, own, still(), afloat(log, "2028-08-30")+other, "2028-08-30")); strings.Contains(known[1], "shows") {
			t.Errorf("%sknown by %q", other, known[1])
		}
	}
}

// A gauge on another part or another zone gauges nothing here; the last reading counts, one reading is one, and a film that was read in part of a micrometre is told in whole ones.
func TestGaugedWhereAndWhen(t *testing.T) {
	log := logHead + "launched = 2027-05-01\n" + laid(`litres = "0.5 L"`) + laid(`part = "hull"`, `litres = "5 L"`)
	look := func(part, zone, on, film, more string) string {
		return fmt.Sprintf("[[look]]\non = %s\npart = %q\nzone = %q\nfilm = %q\n%s\n", on, part, zone, film, more)
	}
	top := func(log, part string) string {
		x := next(t, must(carried(t, sheet, log, "2027-09-01")), nil)
		for _, p := range x.Parts {
			if p.Name == part {
				return p.Found[len(p.Found)-1].KnownBy
			}
		}
		return ""
	}
	for more, c := range map[string]struct{ part, want string }{
		look("rudder", "rudder", "2027-08-20", "30 um", ""):                                                                {"rudder", "gauge, 1 reading on 2027-08-20; laid 42 to 72 um by job log"},
		look("rudder", "rudder", "2027-08-20", "30 um", "readings = 1"):                                                    {"rudder", "gauge, 1 reading on 2027-08-20; "},
		look("rudder", "rudder", "2027-08-20", "30 um", "readings = 2"):                                                    {"rudder", "gauge, 2 readings on 2027-08-20; "},
		look("rudder", "rudder", "2027-08-20", "30 um", "") + look("rudder", "rudder", "2027-08-22", "29 um", ""):          {"rudder", "gauge, 1 reading on 2027-08-22; "},
		look("rudder", "rudder", "2027-08-01", "30 um", ""):                                                                {"rudder", "gauge, 1 reading on 2027-08-01; "},
		look("rudder", "rudder", "2027-07-31", "30 um", ""):                                                                {"rudder", "job log and wear forecast"},
		look("hull", "flat", "2027-08-20", "30 um", ""):                                                                    {"rudder", "job log and wear forecast"},
		look("hull", "edges", "2027-08-20", "30 um", ""):                                                                   {"hull", "job log and wear forecast"},
		look("hull", "flat", "2027-08-20", "30 um", "") + look("rudder", "rudder", "2027-08-21", "29 um", ""):              {"hull", "gauge, 1 reading on 2027-08-20"},
		look("hull", "flat", "2027-08-20", "30 um", "") + look("hull", "waterline", "2027-08-21", "29 um", "readings = 7"): {"hull", "gauge, 1 reading on 2027-08-20"},
	} {
		if got := top(log+more, c.part); !strings.HasPrefix(got, c.want) {
			t.Errorf("%s the %s is known by %q, want %q", more, c.part, got, c.want)
		}
	}
	// Readings of a look go into the record that it makes, and only where somebody counted them.
	for readings, want := range map[string]int{"": 0, "readings = 1": 1, "readings = 12": 12} {
		p := must(carried(t, sheet, log+look("rudder", "rudder", "2027-08-20", "30 um", readings), "2027-09-01"))
		x := next(t, p, nil)
		if len(x.Records) != 1 || x.Records[0].Looks[0].Readings != want || x.Records[0].Looks[0].Film.String() != "30 um" || strings.Contains(string(p.Text), "readings = ") != (want > 0) {
			t.Errorf("%q: records %+v", readings, x.Records)
		}
	}
}

// The last look at the main zone tells the state; where nobody looked there, the last look anywhere on the part does; where nobody said it, it is not reported.
func TestStateAsLastSeen(t *testing.T) {
	look := func(part, zone, state string) string {
		return fmt.Sprintf("[[look]]\non = 2028-05-01\npart = %q\nzone = %q\nstate = %q\n", part, zone, state)
	}
	log := logHead + "launched = 2027-05-01\n" + laid(`litres = "0.5 L"`) + laid(`part = "hull"`, `litres = "5 L"`)
	for more, want := range map[string]tables.Condition{
		"":                                  tables.NotReported,
		look("hull", "flat", "worn"):        "worn",
		look("hull", "edges", "worn"):       "worn",
		look("rudder", "rudder", "flaking"): tables.NotReported,
		look("hull", "edges", "worn") + look("hull", "waterline", "flaking"):                                           "flaking",
		look("hull", "flat", "worn") + look("hull", "edges", "flaking"):                                                "worn",
		look("hull", "edges", "flaking") + look("hull", "flat", "worn") + look("rudder", "rudder", "flaking"):          "worn",
		look("hull", "flat", "flaking") + look("hull", "flat", "worn") + look("hull", "waterline", "flaking"):          "worn",
		look("hull", "flat", "worn") + "[[look]]\non = 2028-05-02\npart = \"hull\"\nzone = \"flat\"\nsignal = false\n": "worn",
	} {
		x := next(t, must(carried(t, sheet, log+more, "2028-05-14")), nil)
		if f := x.Parts[0].Found; f[len(f)-1].State != want {
			t.Errorf("%s the hull is %s, want %s", more, f[len(f)-1].State, want)
		}
	}
}

// Coats of the same coating beside the working ones are told with them, those of another coating or another part are not.
func TestExtraCoatsAreTold(t *testing.T) {
	working := laid(`part = "hull"`, `litres = "5 L"`)
	extra := func(n int, lines ...string) string {
		return laid(append([]string{`part = "hull"`, `layer = "extra"`, fmt.Sprintf("coat = %d", n), `zones = ["waterline", "edges"]`, fmt.Sprintf(`begun = "2027-04-1%d 09:00"`, n), fmt.Sprintf(`ended = "2027-04-1%d 10:00"`, n), `wet_film = ["100 um"]`}, lines...)...)
	}
	for name, c := range map[string]struct {
		log, hull string
	}{
		"none":            {working, ""},
		"one":             {working + extra(1), "; 1 coat more on: waterline, edges, 40 to 60 um"},
		"two":             {working + extra(1) + extra(2), "; 2 coats more on: waterline, edges, 80 to 120 um"},
		"another coating": {working + extra(1, `coating = "hard-cuprous"`), ""},
		"another part":    {working + laid(`layer = "extra"`, `wet_film = ["100 um"]`), ""},
	} {
		x := next(t, must(carried(t, sheet, logHead+c.log, "2027-05-14")), nil)
		f := x.Parts[0].Found
		if got := f[len(f)-1].KnownBy; got != "job log of 2027-04-10 (log.toml), by litres"+c.hull {
			t.Errorf("%s: the hull is known by %q", name, got)
		}
		if len(f) != 2 {
			t.Errorf("%s: %d layers: an extra coat lies in some zones only and is no layer of the part", name, len(f))
		}
	}
}

// What was read of a part before the job is set aside where something was laid on it or taken off it, and stays where nothing was; likewise what was there.
func TestWhatIsKeptOfAPart(t *testing.T) {
	boat := strings.Replace(sheet, "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n", "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\nreadings = { film = \"200 um\" }\n", 1)
	boat = strings.Replace(boat, "area = \"2 m2\"\n", "area = \"2 m2\"\nreadings = { film = \"90 um\" }\nseen = [\"thumb-colours\"]\n", 1)
	boat = strings.Replace(boat, "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"epoxy-barrier\"\nstate = \"sound\"\n[[part.found]]\ncoating = \"ablative-old\"\nstate = \"sound\"\nage = \"900 d\"", 1)
	strip := func(part, more string) string {
		return fmt.Sprintf("[[task]]\npart = %q\nbegun = \"2027-04-09 10:00\"\nended = \"2027-04-09 12:00\"\ndo = \"strip\"\n%s\n", part, more)
	}
	wash := "[[task]]\npart = \"hull\"\nbegun = \"2027-04-08 10:00\"\nended = \"2027-04-08 12:00\"\ndo = \"wash\"\n"
	for name, c := range map[string]struct {
		log    string
		aside  string // keys
		rudder string // what lies there
	}{
		"nothing":       {wash, "", "epoxy-barrier ablative-old"},
		"a coat":        {laid(), "part[rudder].readings part[rudder].found[2].age", "epoxy-barrier ablative-old ablative-cuprous-multi"},
		"stripped":      {strip("rudder", `down_to = "epoxy-barrier"`), "part[rudder].readings part[rudder].seen part[rudder].found[2]", "epoxy-barrier"},
		"all taken off": {strip("rudder", `down_to = "bare"`), "part[rudder].readings part[rudder].seen part[rudder].found[1] part[rudder].found[2]", "bare"},
		"both":          {strip("rudder", `down_to = "epoxy-barrier"`) + laid(), "part[rudder].readings part[rudder].seen part[rudder].found[2]", "epoxy-barrier ablative-cuprous-multi"},
		"the hull":      {strip("hull", `down_to = "bare"`), "part[hull].readings part[hull].found[1]", "epoxy-barrier ablative-old"},
	} {
		p, err := carried(t, boat, logHead+c.log, "2027-05-14")
		x := next(t, p, err)
		var aside, lies []string
		for _, a := range p.Aside {
			aside = append(aside, a.Key)
		}
		for _, l := range x.Parts[1].Found {
			lies = append(lies, l.Coating.Key)
		}
		if strings.Join(aside, " ") != c.aside || strings.Join(lies, " ") != c.rudder {
			t.Errorf("%s: set aside %v; on the rudder %v", name, aside, lies)
		}
	}
	// A part of which nobody knew the film is as it was taken off or painted.
	unknown := strings.Replace(sheet, "[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"\n", "", 1)
	for name, c := range map[string]struct{ log, rudder string }{
		"nobody touched it":      {wash, ""},
		"taken off and painted":  {strip("rudder", `down_to = "bare"`) + laid(), "ablative-cuprous-multi"},
		"taken off":              {strip("rudder", `down_to = "bare"`), "bare"},
		"afloat, nobody touched": {"launched = 2027-05-01\n" + wash, ""},
	} {
		x := next(t, must(carried(t, unknown, logHead+c.log, "2027-05-14")), nil)
		var lies []string
		for _, l := range x.Parts[1].Found {
			lies = append(lies, l.Coating.Key)
		}
		if strings.Join(lies, " ") != c.rudder {
			t.Errorf("%s: %v", name, lies)
		}
	}
}

// A part that got nothing and was afloat: of the film on top its age, its state and, where it wears, its film are no longer known, and nothing else is touched.
func TestUntouchedAndAfloat(t *testing.T) {
	boat := strings.Replace(sheet, "film = \"100 um\"\nstate = \"sound\"", "film = \"100 um\"\nstate = \"sound\"\nage = \"400 d\"", 1)
	boat = strings.Replace(boat, "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"epoxy-barrier\"\nstate = \"sound\"\nfilm = \"200 um\"\nage = \"800 d\"", 1)
	wash := "[[task]]\npart = \"hull\"\nbegun = \"2027-04-08 10:00\"\nended = \"2027-04-08 12:00\"\ndo = \"wash\"\n"
	look := "[[look]]\non = 2028-05-01\npart = \"rudder\"\nzone = \"rudder\"\nstate = \"worn\"\n"
	for log, want := range map[string]string{
		wash:                                    "",
		"launched = 2027-05-01\n" + wash:        "part[hull].found[1].age part[hull].found[1].state part[hull].found[1].film part[rudder].found[1].age part[rudder].found[1].state",
		"launched = 2027-05-01\n" + wash + look: "part[hull].found[1].age part[hull].found[1].state part[hull].found[1].film part[rudder].found[1].age",
	} {
		p, err := carried(t, boat, logHead+log, "2028-05-14")
		var aside []string
		for _, a := range p.Aside {
			aside = append(aside, a.Key)
		}
		if strings.Join(aside, " ") != want {
			t.Errorf("%s set aside: %v", log, aside)
		}
		if x := next(t, p, err); strings.Contains(log, "worn") && x.Parts[1].Found[0].State != "worn" {
			t.Errorf("the rudder is %s", x.Parts[1].Found[0].State)
		}
	}
}

// The fault of a stripping that does not say down to what names that task among the others.
func TestWhichTaskDoesNotSay(t *testing.T) {
	task := func(part, do, day, more string) string {
		return fmt.Sprintf("[[task]]\npart = %q\ndo = %q\nbegun = \"2027-04-%s 10:00\"\nended = \"2027-04-%s 12:00\"\n%s\n", part, do, day, day, more)
	}
	for name, c := range map[string]struct{ log, key string }{
		"behind a wash":              {task("rudder", "wash", "09", "") + task("rudder", "strip", "09", ""), "task[2].down_to"},
		"behind another part":        {task("hull", "strip", "09", `down_to = "bare"`) + task("rudder", "strip", "09", ""), "task[2].down_to"},
		"behind a piece of it":       {task("rudder", "strip", "09", `zones = ["rudder"]`) + task("rudder", "strip", "09", ""), "task[2].down_to"},
		"behind one on a day before": {task("rudder", "abrade", "08", "") + task("rudder", "wash", "08", "") + task("rudder", "strip", "09", ""), "task[3].down_to"},
	} {
		_, err := carried(t, sheet, logHead+c.log, "2027-05-14")
		if err == nil || !strings.Contains(err.Error(), c.key) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Who strips without saying down to what is taken to have done as planned; where the plan takes nothing off he must say it, but for blasting what nobody said lies there.
func TestStrippedAsPlanned(t *testing.T) {
	task := func(do string) string {
		return fmt.Sprintf("[[task]]\npart = \"rudder\"\ndo = %q\nbegun = \"2027-04-09 10:00\"\nended = \"2027-04-09 12:00\"\n", do)
	}
	silicone := strings.Replace(sheet, "coating = \"epoxy-barrier\"\nstate = \"sound\"", "coating = \"epoxy-barrier\"\nstate = \"sound\"\n[[part.found]]\ncoating = \"silicone-old\"\nstate = \"sound\"", 1)
	unknown := strings.Replace(sheet, "[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"\n", "", 1)
	for name, c := range map[string]struct {
		boat, do string
		rudder   string // "" is a fault
	}{
		"silicone over epoxy": {silicone, "strip", "epoxy-barrier"},
		"sound epoxy":         {sheet, "strip", ""},
		"sound epoxy blasted": {sheet, "blast", ""},
		"nobody knows what":   {unknown, "strip", ""},
		"and blasted":         {unknown, "blast", "bare"},
	} {
		j := plannedJob(t, c.boat)
		s, _ := j.Scheme("rudder")
		p, err := carried(t, c.boat, logHead+task(c.do), "2027-05-14")
		if c.rudder == "" {
			if err == nil || !strings.Contains(err.Error(), "task[1].down_to") {
				t.Errorf("%s, planned %v: %v", name, s.Route.Steps, err)
			}
			continue
		}
		var lies []string
		for _, l := range next(t, p, err).Parts[1].Found {
			lies = append(lies, l.Coating.Key)
		}
		if strings.Join(lies, " ") != c.rudder {
			t.Errorf("%s: %v", name, lies)
		}
	}
}

// The forecast of what is left is by the wear that this log's own looks tell, not by the table's: an old gauging is no film of today, but it is a rate.
func TestForecastByTheLogsOwnLooks(t *testing.T) {
	log := strings.Replace(wholeRudder(t, plannedJob(t, sheet), nil), logHead, logHead+"launched = 2027-05-01\nhauled = 2028-08-30\n", 1)
	log += "[[look]]\non = 2028-03-01\npart = \"rudder\"\nzone = \"rudder\"\nfilm = \"190 um\"\nreadings = 20\n"
	own := worn("2", "3", "4")
	j := billed(t, own, still())
	by := logged(t, j, log, "").Worn[0].After
	// 16 months on a rudder, which wears 1 to 2 times as the flat does; 170 to 285 um were laid.
	low, high := int(math.Floor(max(0, 170-by.High*2*16))), int(math.Ceil(285-by.Low*16))
	_, known := rudderFilms(t, carriedWith(t, own, still(), log, "2028-08-30"))
	if want := fmt.Sprintf("not measured: %d to %d um left of 170 to 285 um laid", low, high); !strings.Contains(known[1], want) || strings.Contains(known[1], " 42 to 253 um") {
		t.Errorf("known by %q, want %q", known[1], want)
	}
}

// A record says of each look what was laid where it was taken: on the edges an extra coat more than on the flat. By a comb of 100 um a coat is 40, 50, 60 um.
func TestWhatWasLaidWhereTheLookWas(t *testing.T) {
	log := logHead + "launched = 2027-05-01\n" + laid(`part = "hull"`, `wet_film = ["100 um"]`) +
		laid(`part = "hull"`, `layer = "extra"`, `zones = ["waterline", "edges"]`, `begun = "2027-04-11 09:00"`, `ended = "2027-04-11 10:00"`, `wet_film = ["100 um"]`)
	for zone, want := range map[string]string{"flat": "", "edges": "80 100 120"} {
		x := next(t, must(carried(t, sheet, log+"[[look]]\non = 2028-03-01\npart = \"hull\"\nzone = \""+zone+"\"\nfilm = \"30 um\"\n", "2028-08-30")), nil)
		got := ""
		if k := x.Records[0].Looks[0]; k.Laid.Low.Given() {
			got = films(k.Laid)
		}
		if got != want || films(x.Records[0].Film) != "40 50 60" {
			t.Errorf("looked at on the %s: laid %q, the record's film %s", zone, got, films(x.Records[0].Film))
		}
	}
}

// What is never painted is left as it is written.
func TestAnodesAreLeftAlone(t *testing.T) {
	boat := strings.Replace(sheet, "material = \"zinc-anode\"\n", "material = \"zinc-anode\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"\n", 1)
	x := next(t, must(carried(t, boat, logHead+"launched = 2027-05-01\n"+laid(), "2027-05-14")), nil)
	if f := x.Parts[2].Found; len(f) != 1 || f[0].State != tables.Sound {
		t.Errorf("on the anode: %v", f)
	}
}

// A bare surface that coats lie on now is told by its place among the layers.
func TestBareUnderNewCoats(t *testing.T) {
	p := must(carried(t, strings.Replace(sheet, "coating = \"epoxy-barrier\"", "coating = \"bare\"", 1), logHead+laid(), "2027-05-14"))
	if len(p.Aside) != 1 || p.Aside[0].Key != "part[rudder].found[1]" {
		t.Errorf("set aside: %v", p.Aside)
	}
}
