package antifoul_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/cost"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// typeCost is one type's, which must be reckoned.
func typeCost(t *testing.T, j *antifoul.Job, key string) antifoul.TypeCost {
	t.Helper()
	for _, x := range j.Costs.Types {
		if x.Coating.Key == key {
			return x
		}
	}
	t.Fatalf("%s is not reckoned", key)
	return antifoul.TypeCost{}
}

func over(years string) string {
	return strings.Replace(sheet, "[wishes]", "[wishes]\nreckon_over = \""+years+"\"", 1)
}

// The film that lies there wears: painted every 18 months, seven times in ten years, at 1, 18, 36 … 108 months. This time the old film shows below the new one as it is; each later time a
// signal coat goes between. Over 23 m2, of which 3 get an extra coat, at a euro an hour (TestWorkIsBilledByHand has the hours for a square metre):
//
//	first   wash 0.39 0.58 0.76, extra 0.20 0.24 0.30, three coats 4.62 5.52 6.90: 5.21 6.34 7.96
//	later   and a signal coat, 1.54 1.84 2.30: 6.75 8.18 10.26
//	a year  (5.21 + 6 × 6.75) / 10 = 4.571, (6.34 + 6 × 8.18) / 10 = 5.542, (7.96 + 6 × 10.26) / 10 = 6.952
//
// A hard film lives for 12, 18, 24 months. Hauled every 18, she is painted after 12, for which she is hauled, 18 and 18: ten times, seven, seven. This time the old
// film comes off, at 0.5, 0.8, 1.43 h for a square metre, and the surface is degreased, at 0.02, 0.04, 0.08. Two coats of 50 um stay from each job, and old paint comes off at 600 um, after
// six: once in seven jobs.
//
//	first    wash, strip 11.50 18.40 32.89, degrease 0.46 0.92 1.84, abrade 2.88 3.45 4.60, signal 1.54 1.84 2.30, extra, two coats 3.08 3.68 4.60: 20.05 29.11 47.29
//	later    wash, abrade, signal, extra, two coats: 8.09 9.79 12.56
//	between  strip 11.50 18.40 32.89
//	a year   (20.05 + 6 × 8.09 + 11.50) / 10 = 8.009, (29.11 + 6 × 9.79 + 18.40) / 10 = 10.625, (47.29 + 9 × 12.56 + 32.89) / 10 = 19.322
func TestAYearByHand(t *testing.T) {
	j := billed(t, price("labour", "h", `by = "yard"`), sheet)
	for key, c := range map[string]struct {
		every                 string
		jobs                  string
		first, later, between string
		year                  string
	}{
		"ablative-cuprous-multi": {"18 18 18", "7 7 7", "5.21 6.34 7.96", "6.75 8.18 10.26", "0 0 0", "4.57 5.54 6.95"},
		"hard-cuprous":           {"12 18 18", "7 7 10", "20.05 29.11 47.29", "8.09 9.79 12.56", "11.5 18.4 32.89", "8.01 10.63 19.32"},
	} {
		x := typeCost(t, j, key)
		net := func(m quantity.Range[quantity.Money]) string {
			if !m.Typical.Given() {
				return "0 0 0"
			}
			return fmt.Sprint(m.Low.Amount(), m.Typical.Amount(), m.High.Amount())
		}
		got := []string{fmt.Sprint(x.Every.Low, x.Every.Typical, x.Every.High), fmt.Sprint(x.Jobs.Low, x.Jobs.Typical, x.Jobs.High), net(x.First.Net), net(x.Later.Net), net(x.Between.Net), net(x.AYear)}
		if want := []string{c.every, c.jobs, c.first, c.later, c.between, c.year}; fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%s: %v, want %v", key, got, want)
		}
	}
}

// A hull without edges and waterline gets no extra coat: later wash 0.58, signal 1.84, three coats 5.52. What the type goes over later is the type itself, so all jobs after the first are alike,
// whatever lies there now.
func TestALaterJobGoesOverTheTypeItself(t *testing.T) {
	flat := strings.Replace(sheet, "flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\"", "flat = \"23 m2\"", 1)
	epoxy := strings.Replace(flat, "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"epoxy-barrier\"", 1)
	for name, boat := range map[string]string{"ablative": flat, "epoxy": epoxy} {
		x := typeCost(t, billed(t, price("labour", "h"), boat), "ablative-cuprous-multi")
		if got := x.Later.Net.Typical.String(); got != "7.94 EUR" {
			t.Errorf("over %s: later %s of %v", name, got, amounts(t, x.Later))
		}
	}
}

// Jobs are counted from now on: one more as soon as the years go on beyond the interval. The film that builds up comes off after the sixth job, so with seven and thirteen.
func TestJobsWithinTheYears(t *testing.T) {
	for years, c := range map[string]struct {
		jobs   int
		strips string // of the hard film
		lifts  string
	}{
		"12 months": {1, "", "1 1 1 job"}, "18 months": {1, "", "1 1 2 job"}, "19 months": {2, "", "2 2 2 job"}, "36 months": {2, "", "2 2 3 job"},
		"108 months": {6, "", "6 6 9 job"}, "109 months": {7, "11.5 18.4 32.89 h", "7 7 10 job"}, "216 months": {12, "11.5 18.4 32.89 h", "12 12 18 job"},
		"217 months": {13, "23 36.8 65.78 h", "13 13 19 job"},
	} {
		j := billed(t, price("labour", "h"), over(years))
		x := typeCost(t, j, "hard-cuprous")
		got := amounts(t, x.Between)
		if x.Jobs.Typical != c.jobs || got["labour stripping what has built up, after 6 jobs"] != c.strips || got["lift lift out and back"] != c.lifts || got["blocking setting up on stands"] != c.lifts {
			t.Errorf("%s: %d jobs, %v", years, x.Jobs.Typical, got)
		}
		if later := len(x.Later.Lines) > 0; later != (x.Jobs.High > 1) {
			t.Errorf("%s: at most %d jobs, a later one is reckoned: %v", years, x.Jobs.High, later)
		}
		if n := amounts(t, typeCost(t, j, "ablative-cuprous-multi").Between); n["lift lift out and back"] != fmt.Sprint(c.jobs, c.jobs, c.jobs)+" job" || len(n) != 2 {
			t.Errorf("%s: between the jobs of a film that wears: %v", years, n)
		}
	}
}

// Without a day for her haul-outs her paints are that day; hauled more often than she is painted, each haul-out is a lift; a life that holds over two haul-outs is painted at the second.
func TestPaintedAtAHaulOut(t *testing.T) {
	for name, c := range map[string]struct {
		haul, repaint string
		every         string // of the hard film that lives for 12, 18, 24 months
		lifts         string
	}{
		"every year":         {`haul_out_every = "12 months"`, `repaint_after = "18 months"`, "12 12 24", "10 10 10 job"},
		"every half year":    {`haul_out_every = "6 months"`, `repaint_after = "18 months"`, "12 18 24", "20 20 20 job"},
		"when she is due":    {"", `repaint_after = "18 months"`, "12 18 18", "7 7 10 job"},
		"hardly ever hauled": {`haul_out_every = "25 months"`, `repaint_after = "18 months"`, "12 18 24", "5 7 10 job"},
	} {
		boat := strings.NewReplacer(`haul_out_every = "18 months"`, c.haul, "[wishes]", "[wishes]\n"+c.repaint).Replace(sheet)
		x := typeCost(t, billed(t, price("labour", "h"), boat), "hard-cuprous")
		if got := fmt.Sprint(x.Every.Low, x.Every.Typical, x.Every.High); got != c.every || amounts(t, x.Between)["lift lift out and back"] != c.lifts {
			t.Errorf("%s: painted every %s months, lifted %s", name, got, amounts(t, x.Between)["lift lift out and back"])
		}
	}
}

// Cleaned afloat as often as she is, or as the type needs it where that is more often; only while she is afloat, and only whole times. Ten years are 3652.5 days.
func TestCleaningsWithinTheYears(t *testing.T) {
	const none = ""
	for name, c := range map[string]struct {
		use         string
		wears, wipe string // of the ablative, and of a foul-release film that is wiped every 30 days
	}{
		"nobody cleans":      {"", none, "121 121 121 job"},
		"every 45 days":      {"cleaning = \"sponge\"\ncleaned_every = \"45 d\"\n", "81 81 81 job", "121 121 121 job"},
		"every 20 days":      {"cleaning = \"sponge\"\ncleaned_every = \"20 d\"\n", "182 182 182 job", "182 182 182 job"},
		"four months ashore": {"cleaning = \"sponge\"\ncleaned_every = \"20 d\"\nashore_each_year = \"4 months\"\n", "121 121 121 job", "121 121 121 job"}, // 2435 days afloat
	} {
		boat := strings.NewReplacer("[use]\n", "[use]\n"+c.use, "speed = \"5 kn\"", "speed = \"18 kn\"\nlongest_idle = \"3 d\"", "[wishes]\ncoating = \"ablative-cuprous-multi\"\n", "[wishes]\n").Replace(sheet)
		boat = strings.Replace(boat, "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"", 1)
		j := billed(t, price("cleaning", "job"), boat)
		for key, want := range map[string]string{"ablative-cuprous-multi": c.wears, "foul-release-silicone": c.wipe} {
			if got := amounts(t, typeCost(t, j, key).Between)["cleaning cleaning afloat"]; got != want {
				t.Errorf("%s: %s: %q, want %q", name, key, got, want)
			}
		}
	}
}

// A boat that is kept out of the water and is better left bare: no coating has no interval and one job, and nothing is lifted or cleaned between.
func TestABoatOnHerTrailerThroughTheYears(t *testing.T) {
	boat := strings.NewReplacer("[use]\n", "[use]\nkept = \"trailer\"\ncleaning = \"sponge\"\ncleaned_every = \"20 d\"\n", "[wishes]\ncoating = \"ablative-cuprous-multi\"\ntop_colour = \"black\"\n", "",
		"coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"").Replace(sheet)
	j := billed(t, price("labour", "h")+price("lift", "job")+price("cleaning", "job"), boat)
	bare := false
	for _, x := range j.Costs.Types {
		if len(x.Between.Lines) > 0 {
			t.Errorf("%s: between the jobs %v", x.Coating.Key, amounts(t, x.Between))
		}
		if x.Coating.Role == tables.Bare {
			bare = true
			if x.Jobs != quantity.Exactly(1) || !math.IsInf(x.Every.Low, 1) || !math.IsInf(x.Every.High, 1) || len(x.Later.Lines) > 0 {
				t.Errorf("no coating: %v jobs, one every %v months", x.Jobs, x.Every)
			}
		}
	}
	if !bare {
		t.Error("no coating is not reckoned")
	}
}

// Prices by the square metre of the boat are multiplied with the hull that the types are reckoned on, 23 m2.
func TestCleaningByTheSquareMetre(t *testing.T) {
	boat := strings.NewReplacer("[use]\n", "[use]\ncleaning = \"sponge\"\ncleaned_every = \"20 d\"\n").Replace(sheet)
	for _, l := range typeCost(t, billed(t, price("cleaning", "m2"), boat), "ablative-cuprous-multi").Between.Lines {
		if l.Of == tables.PricedCleaning {
			if got := l.Money.Typical.String(); got != "4186.00 EUR" { // 182 times 23 m2
				t.Errorf("cleaned for %s", got)
			}
			return
		}
	}
	t.Error("she is not cleaned")
}

// Two jobs in nineteen months: (5.21 + 6.75) × 12 / 19 and so on; a year of 12.35 months, to which 12.345 are rounded, with one: 20.05 × 12 / 12.35.
func TestAYearOfFewMonths(t *testing.T) {
	for years, c := range map[string]struct{ key, want string }{"19 months": {"ablative-cuprous-multi", "7.55 9.17 11.51"}, "12.345 months": {"hard-cuprous", "19.48 28.29"}} {
		m := typeCost(t, billed(t, price("labour", "h"), over(years)), c.key).AYear
		if got := fmt.Sprint(m.Low.Amount(), m.Typical.Amount(), m.High.Amount()); !strings.HasPrefix(got, c.want) {
			t.Errorf("%s: %s, want %s", years, got, c.want)
		}
	}
}

// A film so thick that one job fills what may lie there comes off at every job after it; one that is thicker yet is not weighed.
func TestStrippedAtEveryJob(t *testing.T) {
	for film, want := range map[string]string{"300 um": "69 110.4 197.34 h", "301 um": ""} { // 6 × 11.5 and so on
		own := price("labour", "h") + "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"the tin\"\nfilm = [\"200 um\", \"" + film + "\", \"400 um\"]\n"
		x := typeCost(t, billed(t, own, sheet), "hard-cuprous")
		if got := amounts(t, x.Between)["labour stripping what has built up, after 1 job"]; got != want {
			t.Errorf("%s a coat: %q, want %q", film, got, want)
		}
		for _, l := range x.Later.Lines { // it is paid between the jobs
			if strings.Contains(l.Name, "strip") {
				t.Errorf("%s a coat: a later job has %s", film, l.Name)
			}
		}
	}
}

// Painted every month: as many jobs as months.
func TestPaintedEveryMonth(t *testing.T) {
	boat := strings.NewReplacer("[wishes]\n", "[wishes]\nreckon_over = \"1 years\"\nrepaint_after = \"1 months\"\n").Replace(sheet)
	if x := typeCost(t, billed(t, price("labour", "h"), boat), "ablative-cuprous-multi"); x.Jobs != quantity.Exactly(12) {
		t.Errorf("%v jobs", x.Jobs)
	}
}

// What has no price is told, and a type without any price stands behind those that have one.
func TestTypesThatLackAPrice(t *testing.T) {
	k := billed(t, price("labour", "h")+price("lift", "job")+price("blocking", "job"), sheet).Costs
	for _, x := range k.Types {
		if !x.Lacks {
			t.Errorf("%s lacks no price: its paint has none", x.Coating.Key)
		}
	}
	k = billed(t, price("labour", "h")+price("lift", "job")+price("blocking", "job")+price("paint", "L"), sheet).Costs
	for _, x := range k.Types {
		if x.Lacks {
			t.Errorf("%s lacks a price: %v", x.Coating.Key, x.First.Lines)
		}
	}
	k = billed(t, price("labour", "h")+price("lift", "job")+price("paint", "L"), sheet).Costs
	for _, x := range k.Types {
		if !x.Lacks {
			t.Errorf("%s lacks no price: setting up has none", x.Coating.Key)
		}
	}
	k = billed(t, price("paint", "L", `what = "hard-cuprous"`), sheet).Costs
	for i, x := range k.Types {
		if x.AYear.Typical.Given() != (x.Coating.Key == "hard-cuprous") || (i == 0) != (x.Coating.Key == "hard-cuprous") {
			t.Errorf("place %d: %s at %v", i+1, x.Coating.Key, x.AYear.Typical)
		}
		if i > 1 && k.Types[i-1].Rank > x.Rank {
			t.Errorf("without a price %s stands before %s", k.Types[i-1].Coating.Key, x.Coating.Key)
		}
	}
}

// Paint of the types is billed by the litre with the reserve, each colour by its name.
func TestLitresOfTheTypes(t *testing.T) {
	litres := func(x antifoul.TypeCost) map[string]quantity.Range[float64] {
		out := map[string]quantity.Range[float64]{}
		for _, l := range x.First.Lines {
			if l.Of == tables.PricedPaint {
				if l.Amount.Low.Exponent() < -2 || l.Amount.Typical.Exponent() < -2 || l.Amount.High.Exponent() < -2 {
					t.Errorf("%s: %v L", l.Name, l.Amount)
				}
				f := func(v interface{ InexactFloat64() float64 }) float64 { return v.InexactFloat64() }
				s := out[l.Name]
				out[l.Name] = quantity.Range[float64]{Low: s.Low + f(l.Amount.Low), Typical: s.Typical + f(l.Amount.Typical), High: s.High + f(l.Amount.High)}
			}
		}
		return out
	}
	plain := billed(t, price("paint", "L"), sheet)
	more := billed(t, price("paint", "L"), strings.Replace(sheet, "by = \"roller\"", "by = \"roller\"\nreserve = \"20 %\"", 1))
	s, _ := plain.Scheme("hull")
	sum := quantity.Range[float64]{}
	for _, k := range s.Coats {
		l := func(v quantity.Volume) float64 { return v.Float(quantity.Litre) }
		sum = quantity.Range[float64]{Low: sum.Low + l(k.Litres.Low), Typical: sum.Typical + l(k.Litres.Typical), High: sum.High + l(k.Litres.High)}
	}
	name := ablative + ", black"
	a, b := litres(typeCost(t, plain, s.Coating.Key)), litres(typeCost(t, more, s.Coating.Key))
	if len(a) != 1 || len(b) != 1 {
		t.Errorf("paint %v, with a reserve %v", a, b)
	}
	for _, ends := range [][3]float64{{sum.Low, a[name].Low, b[name].Low}, {sum.Typical, a[name].Typical, b[name].Typical}, {sum.High, a[name].High, b[name].High}} {
		if ends[0] <= 1 || ends[1] < ends[0] || ends[1] > ends[0]+0.02 || ends[2] < 1.2*ends[0] || ends[2] > 1.2*ends[0]+0.02 {
			t.Errorf("%g L of the scheme are billed with %g, with a reserve of a fifth with %g", ends[0], ends[1], ends[2])
		}
	}
}

// Going on over the old film against stripping it now, over so many years. Read are 200 um on 23 m2, of which nothing needs repair; a job of the ablative leaves 0, 40, 60 um, old paint comes off at 500, 600,
// 750 um. Recoated, it comes off after (500 − 200) / 60 = 5 jobs, 90 months, at the soonest, after (600 − 200) / 40 = 10, 180 months, typically; stripped now, after 8 and 15 jobs, 144 and 270 months.
func TestCoursesByHand(t *testing.T) {
	for years, c := range map[string]struct{ recoat, strip map[string]string }{
		"90 months": {
			map[string]string{}, map[string]string{"labour stripping it now": "11.5 18.4 32.89 h"},
		},
		"91 months": {
			map[string]string{"labour stripping it once it has built up": "0 0 32.89 h"}, map[string]string{"labour stripping it now": "11.5 18.4 32.89 h"},
		},
		"181 months": {
			map[string]string{"labour stripping it once it has built up": "0 18.4 32.89 h"},
			map[string]string{"labour stripping it now": "11.5 18.4 32.89 h", "labour stripping again what has built up": "0 0 32.89 h"},
		},
		"361 months": { // whatever films grow, she is stripped: nothing stays at the low end of the ablative, which is counted to twenty jobs, 360 months
			map[string]string{"labour stripping it once it has built up": "11.5 18.4 32.89 h"},
			map[string]string{"labour stripping it now": "11.5 18.4 32.89 h", "labour stripping again what has built up": "11.5 18.4 65.78 h"},
		},
		"289 months": {
			map[string]string{"labour stripping it once it has built up": "0 18.4 32.89 h"},
			map[string]string{"labour stripping it now": "11.5 18.4 32.89 h", "labour stripping again what has built up": "0 18.4 65.78 h"},
		},
	} {
		text := strings.Replace(over(years), "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n", "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\nreadings = { film = \"200 um\" }\n", 1)
		j := billed(t, price("labour", "h"), text)
		if len(j.Costs.Courses) != 1 || j.Costs.Courses[0].Part != "hull" {
			t.Fatalf("%s: %d courses", years, len(j.Costs.Courses))
		}
		k := j.Costs.Courses[0]
		for _, b := range []struct {
			name string
			bill cost.Bill
			want map[string]string
		}{{"recoat", k.Recoat, c.recoat}, {"strip", k.Strip, c.strip}} {
			sameLines(t, years+", "+b.name, amounts(t, b.bill), b.want)
		}
	}
	// Painted every half year it comes off after 120 months at the latest, and once, whatever comes after.
	text := strings.NewReplacer("name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\n", "name = \"hull\"\nzone = \"hull\"\nmaterial = \"grp\"\nreadings = { film = \"200 um\" }\n", "haul_out_every = \"18 months\"", "haul_out_every = \"6 months\"").Replace(over("361 months"))
	sameLines(t, "every half year", amounts(t, billed(t, price("labour", "h"), text).Costs.Courses[0].Recoat), map[string]string{"labour stripping it once it has built up": "11.5 18.4 32.89 h"})
}

// A later job finds the undercoats of the first: barrier and primer on aluminium, blasted for them, are paid once.
func TestALaterJobFindsTheUndercoats(t *testing.T) {
	boat := strings.NewReplacer("material = \"grp\"", "material = \"aluminium\"", "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"", "coating = \"bare\"",
		"[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"ablative-thiocyanate\"").Replace(sheet)
	x := typeCost(t, billed(t, price("labour", "h")+price("paint", "L"), boat), "ablative-thiocyanate")
	bought := func(b cost.Bill) (own, under int, work string) {
		for _, l := range b.Lines {
			switch {
			case l.Of != tables.PricedPaint:
				work += l.Name + "; "
			case strings.HasPrefix(l.Name, x.Coating.Name):
				own++
			default:
				under++
			}
		}
		return own, under, work
	}
	if own, under, work := bought(x.First); own == 0 || under == 0 || !strings.Contains(work, "blast") {
		t.Fatalf("the first job has %d paints of its own and %d below, work %s: the test asks too little", own, under, work)
	}
	if own, under, work := bought(x.Later); own == 0 || under != 0 || strings.Contains(work, "blast") || strings.Contains(work, "strip") {
		t.Errorf("a later job has %d paints of its own and %d below, work %s", own, under, work)
	}
}
