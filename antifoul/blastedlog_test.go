package antifoul_test

import (
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What the profile of blasted metal swallows makes no film: of the first coat on it only, where the log has blasted it before, all of it or the piece that the coat lies on.
func TestTheProfileSwallowsOfTheFirstCoat(t *testing.T) {
	boat := strings.Replace(sheet, "name = \"rudder\"\nzone = \"rudder\"\nmaterial = \"grp\"", "name = \"rudder\"\nzone = \"rudder\"\nmaterial = \"steel\"", 1)
	j := plannedJob(t, strings.Replace(boat, "coating = \"epoxy-barrier\"", "coating = \"bare\"", 1))
	s, _ := j.Scheme("rudder")
	if !s.Coats[0].Fills.Low.Given() {
		t.Fatal("nothing is blasted")
	}
	primer := s.Coats[0].Layer.Coating.Key
	blast := func(part, day string) string {
		return "[[task]]\npart = \"" + part + "\"\ndo = \"blast\"\nbegun = \"2027-04-" + day + " 07:00\"\nended = \"2027-04-" + day + " 08:00\"\ndown_to = \"bare\"\n"
	}
	coat := func(n, day, coating string) string {
		return laid(`layer = "undercoat"`, "coat = "+n, "coating = \""+coating+"\"", "begun = \"2027-04-"+day+" 09:00\"", "ended = \"2027-04-"+day+" 10:00\"", `litres = "0.6 L"`)
	}
	of := func(log string, i int) antifoul.LoggedCoat { return logged(t, j, logHead+log, "").Coats[i] }
	plain := of(coat("1", "10", primer), 0)
	less := of(blast("rudder", "10")+coat("1", "10", primer), 0)
	if less.Film.Low.Cmp(plain.Film.Low) >= 0 || less.Film.Typical.Cmp(plain.Film.Typical) >= 0 || less.Film.High.Cmp(plain.Film.High) >= 0 {
		t.Errorf("over bright metal %s, over none %s", films(less.Film), films(plain.Film))
	}
	for name, k := range map[string]antifoul.LoggedCoat{
		"another part":         of(blast("hull", "10")+coat("1", "10", primer), 0),
		"blasted later":        of(coat("1", "10", primer)+blast("rudder", "11"), 0),
		"the second coat":      of(blast("rudder", "10")+coat("1", "10", primer)+coat("2", "11", primer), 1),
		"another thing before": of(blast("rudder", "10")+coat("1", "10", "epoxy-barrier")+coat("1", "11", primer), 1),
	} {
		if films(k.Film) != films(plain.Film) {
			t.Errorf("%s: %s, without blasting %s", name, films(k.Film), films(plain.Film))
		}
	}
	if first := of(blast("rudder", "10")+coat("1", "10", primer)+coat("2", "11", primer), 0); films(first.Film) != films(less.Film) {
		t.Errorf("with a second coat the first is %s, else %s", films(first.Film), films(less.Film))
	}
}

// What the profile of 2 m2 of blasted steel swallows is 0.08, 0.17, 0.36 L by the plan; primer has 45, 55, 80 % solids and 60 um asked for. Of 0.36 L it may be all: the film is not known, and
// no more than 0.28 L × ½ × 80 × 95 ÷ (10 × 2) = 53.2 um. Of 0.37 L the low end is 0.01 × ½ × 45 × 85 ÷ 20 = 0.96 um, the typical one 0.20 × ½ × 55 × 90 ÷ 20 = 24.75, the high
// one 0.29 × ½ × 80 × 95 ÷ 20 = 55.1. Of 0.08 L nothing lies above the peaks.
func TestWhatTheProfileLeaves(t *testing.T) {
	j := plannedJob(t, rudderOf("steel", "bare"))
	if s, _ := j.Scheme("rudder"); s.Coats[0].Fills.Low.String() != "0.08 L" || s.Coats[0].Fills.Typical.String() != "0.17 L" || s.Coats[0].Fills.High.String() != "0.36 L" {
		t.Fatalf("the plan reckons with %v", s.Coats[0].Fills)
	}
	for _, c := range []struct {
		litres, film string
		rule         finding.ID
		told         string // the film of the finding
	}{
		{"0.08 L", "not known", antifoul.RuleLogFilmLittle, "0 um"},
		{"0.36 L", "not known", antifoul.RuleLogFilmLittle, "54 um"},
		{"0.37 L", "0.96 24.75 55.1", antifoul.RuleLogByLitres, ""},
	} {
		k := logged(t, j, logHead+tasks("rudder", "blast")+laid(`layer = "undercoat"`, `coating = "epoxy-primer"`, `litres = "`+c.litres+`"`), "").Coats[0]
		f := k.Findings[0]
		told := ""
		if film, ok := factOf(f, "film").(quantity.Film); ok {
			told = film.String()
		}
		if films(k.Film) != c.film || f.Rule != c.rule || told != c.told || len(k.Findings) != 3 {
			t.Errorf("of %s: %s, told %q, %s", c.litres, films(k.Film), told, rulesOf(k.Findings))
		}
	}
}

// On a piece of the part the profile swallows its share of the area, areas and share to four places and rounded up: 2.00005 m2 in 20.0005 is 2.0001 ÷ 20.0005, 0.1001; 2 in 19.99995 is
// 2 ÷ 20, 0.1; 2 in 23 is 0.0870.
func TestShareOfThePieceInTheProfile(t *testing.T) {
	for _, c := range []struct {
		flat, waterline string
		share, area     float64
	}{{"17.00045 m2", "2.00005 m2", 0.1001, 2.00005}, {"16.99995 m2", "2 m2", 0.1, 2}, {"20 m2", "2 m2", 0.087, 2}} {
		boat := strings.NewReplacer("name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"", "name = \"hull\"\nzone = \"hull\"\nmaterial = \"steel\"", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\"", "coating = \"bare\"",
			"flat = \"20 m2\", waterline = \"2 m2\"", "flat = \""+c.flat+"\", waterline = \""+c.waterline+"\"").Replace(sheet)
		j := plannedJob(t, boat)
		s, _ := j.Scheme("hull")
		k := logged(t, j, logHead+tasks("hull", "blast")+laid(`part = "hull"`, `layer = "undercoat"`, `coating = "epoxy-primer"`, `zones = ["waterline"]`, `litres = "4 L"`), "").Coats[0]
		// low: (4 − swallowed − 0.5) × 45 × 85 ÷ (10 × area); high: (4 − swallowed − 0.25) × 80 × 95 ÷ (10 × area)
		for _, end := range []struct {
			film                         quantity.Film
			fills                        quantity.Volume
			residue, solids, transferred float64
		}{{k.Film.Low, s.Coats[0].Fills.High, 0.5, 45, 85}, {k.Film.High, s.Coats[0].Fills.Low, 0.25, 80, 95}} {
			want := (4 - end.fills.Float(quantity.Litre)*c.share - end.residue) * end.solids * end.transferred / (10 * c.area)
			if got := end.film.Float(quantity.Micrometre); math.Abs(got-want) > 0.0005 || end.fills.Sign() <= 0 {
				t.Errorf("%s of %s flat: %f um, want %f", c.waterline, c.flat, got, want)
			}
		}
	}
}
