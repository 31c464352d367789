package antifoul_test

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
)

// measured is the seasonal boat with areas for a pencil: a hull of 20, 2 and 1 m2, a keel of 3 m2.
func measuredBoat(hull, keel, work string) string {
	return strings.Replace(fmt.Sprintf(seasonal, hull, keel, work), "stand_pairs = 3", "measured = { flat = \"20 m2\", waterline = \"2 m2\", edges = \"1 m2\" }\nstand_pairs = 3", 1)
}

// turnLines are the turns as the calendar is asked for them.
func turnLines(turns []antifoul.Turn) []string {
	var out []string
	for _, x := range turns {
		var s strings.Builder
		fmt.Fprintf(&s, "%s | %s %.3f h", x.Name, x.Do, x.Hours)
		for _, flag := range []struct {
			is   bool
			word string
		}{{x.Dry, "dry"}, {x.Yard, "yard"}, {x.Patch, "patch"}} {
			if flag.is {
				s.WriteString(" " + flag.word)
			}
		}
		if x.Wait.Given() {
			s.WriteString(" wait " + x.Wait.String())
		}
		if x.On.Given() {
			s.WriteString(" on " + x.On.String())
		}
		for _, l := range x.Layers {
			fmt.Fprintf(&s, " | %s on %d", l.Coating.Key, len(l.On))
			for _, d := range []struct{ name, value string }{{"opens", l.Opens.String()}, {"closes", l.Closes.String()}, {"cures", l.Cures.String()}, {"stands", l.Stands.String()}, {"hard", l.Hard.String()}} {
				if d.value != "not given" {
					s.WriteString(" " + d.name + " " + d.value)
				}
			}
			if l.Again > 0 {
				fmt.Fprintf(&s, " again %.3f", l.Again)
			}
			if l.Falling {
				s.WriteString(" falling")
			}
			if l.Late {
				s.WriteString(" late")
			}
		}
		out = append(out, s.String())
	}
	return out
}

// product are hours of one hand: square metres by the hours for one of them, summed up.
var product = regexp.MustCompile(`\{[^}]*\}`)

// byHand puts the hours of a crew in the place of {26×0.025 + 3×0.08}.
func byHand(t *testing.T, text string, hands float64) []string {
	t.Helper()
	text = product.ReplaceAllStringFunc(text, func(s string) string {
		sum := 0.0
		for _, term := range strings.Split(strings.Trim(s, "{}"), " + ") {
			x := 1.0
			for _, f := range strings.Split(term, "×") {
				v, err := strconv.ParseFloat(f, 64)
				if err != nil {
					t.Fatal(err)
				}
				x *= v
			}
			sum += x
		}
		return fmt.Sprintf("%.3f", sum/hands)
	})
	return strings.Split(strings.TrimSpace(text), "\n")
}

func sameTurns(t *testing.T, name string, j *antifoul.Job, hands float64, want string) {
	t.Helper()
	got, lines := turnLines(j.Season.Turns), byHand(t, want, hands)
	for i := range max(len(got), len(lines)) {
		if i >= len(got) || i >= len(lines) || got[i] != lines[i] {
			t.Errorf("%s: turn %d\ngot  %s\nwant %s", name, i+1, strings.Join(got[min(i, len(got)):min(i+1, len(got))], ""), strings.Join(lines[min(i, len(lines)):min(i+1, len(lines))], ""))
			return
		}
	}
}

// What each coat asks of the calendar, by its row: the ablative opens after 4 h, may go into the water after 12 h, and the last one stands for 365 d; the primer opens after 4 h, closes after 72 h
// for epoxy and 8 h for antifouling, the barrier after 6 h, 72 h and 10 h; what has closed may be abraded when it is 24 h old.
const (
	belowTop = "opens 4 h cures 12 h"
	topCoat  = belowTop + " stands 365 d"
	primed   = "opens 4 h closes 72 h cures 5 d hard 24 h"
	bridge   = "opens 4 h closes 8 h cures 5 d hard 24 h"
	barred   = "opens 6 h closes 72 h cures 7 d hard 24 h"
	lastBar  = "opens 6 h closes 10 h cures 7 d hard 24 h"
	ourType  = "ablative-cuprous-multi"
)

const otherWork = "[[work.other]]\nname = \"log\"\nhours = \"2 h\"\n[[work.other]]\nname = \"boot top\"\nhours = \"3 h\"\nafter_paint = true\n"

// The turns of a GRP hull of 23 m2 and a lead keel of 3 m2, by two hands. Hours for a square metre are those of the steps: washing 0.025, degreasing 0.04, abrading 0.15, a coat 0.08; the surface that was abraded dries
// for 2 h. Other work comes before masking or after everything. The keel gets its primer so that both parts get the signal coat together, and the edges their extra coat while the keel gets its first. Six pads of 0.1 m2
// bear her; after 48 h they are shifted, and each place is degreased and abraded, and gets a signal coat and four working ones on 0.85 m2, a little more than it was.
func TestTurnsByHand(t *testing.T) {
	want := `wash (hull, keel) | wash {26×0.025} h
degrease (hull, keel) | degrease {26×0.04} h dry
abrade (hull, keel) | abrade {26×0.15} h wait 2 h
log |  {2} h
mask | mask {2} h dry
keel: epoxy primer |  {3×0.08} h | epoxy-primer on 1 ` + bridge + ` again {3×0.15}
hull, keel: signal coat |  {26×0.08} h | ` + ourType + ` on 2 ` + belowTop + `
hull: extra coat; keel: working coat 1 of 4 |  {6×0.08} h | ` + ourType + ` on 2 ` + belowTop + `
hull: working coat 1 of 4; keel: working coat 2 of 4 |  {26×0.08} h | ` + ourType + ` on 2 ` + belowTop + `
hull: working coat 2 of 4; keel: working coat 3 of 4 |  {26×0.08} h | ` + ourType + ` on 2 ` + belowTop + `
hull: working coat 3 of 4; keel: working coat 4 of 4 |  {26×0.08} h | ` + ourType + ` on 1 ` + belowTop + ` | ` + ourType + ` on 1 ` + topCoat + `
hull: working coat 4 of 4 |  {23×0.08} h wait 48 h | ` + ourType + ` on 1 ` + topCoat + `
shift of stands | shift stands 2.000 h yard
places where she stood, degrease (hull) | degrease {0.6×0.04} h dry patch
places where she stood, abrade (hull) | abrade {0.6×0.15} h patch wait 2 h
places where she stood, hull: signal coat |  {0.6×0.08} h patch | ` + ourType + ` on 1 ` + belowTop + `
places where she stood, hull: working coat 1 of 4 |  {0.85×0.08} h patch | ` + ourType + ` on 1 ` + belowTop + `
places where she stood, hull: working coat 2 of 4 |  {0.85×0.08} h patch | ` + ourType + ` on 1 ` + belowTop + `
places where she stood, hull: working coat 3 of 4 |  {0.85×0.08} h patch | ` + ourType + ` on 1 ` + belowTop + `
places where she stood, hull: working coat 4 of 4 |  {0.85×0.08} h patch | ` + ourType + ` on 1 ` + topCoat + `
boot top |  {3} h
`
	sameTurns(t, "two hands", plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "lead", "launch_open = true\n"+otherWork)), 2, want)
	// In the slings, the day before the launch, the places are abraded and get one working coat; nothing else is done that day.
	start, _, _ := strings.Cut(want, "shift of stands")
	slings := strings.Replace(start, "log |  {2} h\n", "", 1) + `lift into the slings | shift stands 2.000 h yard on 2027-09-18
places where she stood, abrade (hull) | abrade {0.6×0.15} h patch wait 2 h on 2027-09-18
places where she stood, hull: working coat |  {0.85×0.08} h patch on 2027-09-18 | ` + ourType + ` on 1 ` + topCoat + "\n"
	sameTurns(t, "in the slings", plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "lead", "slings = true\nlaunch = 2027-09-19")), 2, slings)
	// Without stands nothing is shifted, and the last coat need not wait.
	alone, after := strings.Replace(start, " wait 48 h", "", 1), "boot top |  {3} h\n"
	sameTurns(t, "on her keel", plannedJob(t, strings.Replace(measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "lead", "launch_open = true\n"+otherWork), "stand_pairs = 3", "stand_pairs = 0", 1)), 2, alone+after)
}

// A laminate that dries is waited for, 28 days, and gives off air under its first coat, which goes on falling; so does timber. The keel's primer goes on with the last coat of barrier. The places under
// the pads breathe as the hull does.
func TestTurnsOfASurfaceThatBreathes(t *testing.T) {
	barrier := func(n, of int) string { return fmt.Sprintf("epoxy barrier, solvent-borne %d of %d", n, of) }
	wet := `wash (hull, keel) | wash {26×0.025} h
degrease (hull, keel) | degrease {26×0.04} h dry
abrade (hull, keel) | abrade {26×0.15} h
dry out (hull) | dry out {23×0.03} h wait 28 d
abrade (hull) | abrade {23×0.15} h wait 2 h
mask | mask {2} h dry
hull: ` + barrier(1, 4) + ` |  {23×0.08} h | epoxy-barrier on 1 ` + barred + ` again {23×0.15} falling
hull: ` + barrier(2, 4) + ` |  {23×0.08} h | epoxy-barrier on 1 ` + barred + ` again {23×0.15}
hull: ` + barrier(3, 4) + ` |  {23×0.08} h | epoxy-barrier on 1 ` + barred + ` again {23×0.15}
hull: ` + barrier(4, 4) + `; keel: epoxy primer |  {26×0.08} h | epoxy-barrier on 1 ` + lastBar + ` again {23×0.15} | epoxy-primer on 1 ` + bridge + ` again {3×0.15}
`
	j := plannedJob(t, measuredBoat("material = \"grp\"\nlaminate = \"wet\"\nbarrier = true", "lead", "launch_open = true"))
	j.Season.Turns = j.Season.Turns[:10]
	sameTurns(t, "wet", j, 2, wet)
	// Timber under a wood primer of two coats; the keel is blasted and primed in less than a day, and gets its barrier up to the same coat.
	wood := `wash (hull, keel) | wash {26×0.025} h
abrade (hull) | abrade {23×0.15} h
degrease (keel) | degrease {3×0.04} h dry wait 1 h
mask | mask {2} h dry
blast or grind to bright metal and prime: keel: epoxy primer | blast {3×0.08 + 3×0.5} h dry | epoxy-primer on 1 ` + primed + ` again {3×0.15}
keel: ` + barrier(1, 4) + ` |  {3×0.08} h | epoxy-barrier on 1 ` + barred + ` again {3×0.15}
keel: ` + barrier(2, 4) + ` |  {3×0.08} h | epoxy-barrier on 1 ` + barred + ` again {3×0.15}
hull: flexible wood primer 1 of 2; keel: ` + barrier(3, 4) + ` |  {26×0.08} h | flexible-wood-primer on 1 opens 12 h cures 24 h falling | epoxy-barrier on 1 ` + barred + ` again {3×0.15}
hull: flexible wood primer 2 of 2; keel: ` + barrier(4, 4) + ` |  {26×0.08} h | flexible-wood-primer on 1 opens 12 h cures 24 h | epoxy-barrier on 1 ` + lastBar + ` again {3×0.15}
hull, keel: signal coat |  {26×0.08} h | ` + ourType + ` on 2 ` + belowTop + `
`
	j = plannedJob(t, measuredBoat("material = \"wood-carvel\"", "cast-iron", "launch_open = true"))
	j.Season.Turns = j.Season.Turns[:10]
	sameTurns(t, "wood", j, 2, wood)
	patches := 0
	for _, x := range plannedJob(t, measuredBoat("material = \"wood-carvel\"", "cast-iron", "launch_open = true")).Season.Turns {
		for _, l := range x.Layers {
			if x.Patch && l.Coating.Key == "flexible-wood-primer" {
				if l.Falling != (patches == 0) {
					t.Errorf("%s: falling %v", x.Name, l.Falling)
				}
				patches++
			}
		}
	}
	if patches != 2 {
		t.Errorf("%d coats of wood primer on the places", patches)
	}
}

// Metal is blasted at 0.5 h for a square metre and primed on the same day, by one hand who has eight whole hours a day: 26 m2 take 26 × 0.58 = 15.08 h, two sections; only the last lies under the next coat. The keel, which has two coats
// fewer, waits, and is abraded first. Where the places under the keel's blocks are done too, each is blasted with its own primer.
func TestTurnsOfBlastedMetal(t *testing.T) {
	one := func(hull, keel string) string {
		return strings.NewReplacer("hands = 2", "hands = 1").Replace(measuredBoat(hull, keel, "launch_open = true"))
	}
	coat := func(hull, keel int, again string) string {
		return fmt.Sprintf("hull: epoxy barrier, solvent-borne %d of 6; keel: epoxy barrier, solvent-borne %d of 4%s", hull, keel, again)
	}
	steel := `wash (hull, keel) | wash {26×0.025} h
degrease (hull, keel) | degrease {26×0.04} h dry wait 1 h
mask | mask {2} h dry
blast or grind to bright metal and prime: hull, keel: epoxy primer, section 1 of 2 | blast {13×0.58} h dry | epoxy-primer on 2 cures 5 d hard 24 h again {26×0.15}
blast or grind to bright metal and prime: hull, keel: epoxy primer, section 2 of 2 | blast {13×0.58} h dry | epoxy-primer on 2 ` + primed + ` again {26×0.15}
hull: epoxy barrier, solvent-borne 1 of 6 |  {23×0.08} h | epoxy-barrier on 1 ` + barred + ` again {23×0.15}
hull: epoxy barrier, solvent-borne 2 of 6 |  {23×0.08} h | epoxy-barrier on 1 ` + barred + ` again {23×0.15}
` + coat(3, 1, ", after abrading") + ` |  {26×0.08 + 3×0.15} h | epoxy-barrier on 2 ` + barred + ` again {26×0.15}
` + coat(4, 2, "") + ` |  {26×0.08} h | epoxy-barrier on 2 ` + barred + ` again {26×0.15}
` + coat(5, 3, "") + ` |  {26×0.08} h | epoxy-barrier on 2 ` + barred + ` again {26×0.15}
` + coat(6, 4, "") + ` |  {26×0.08} h | epoxy-barrier on 2 ` + lastBar + ` again {26×0.15}
hull, keel: signal coat |  {26×0.08} h | ` + ourType + ` on 2 ` + belowTop + `
`
	j := plannedJob(t, one("material = \"steel\"", "cast-iron"))
	var patches strings.Builder
	for _, l := range turnLines(j.Season.Turns) {
		if strings.Contains(l, "places where she stood") {
			patches.WriteString(l + "\n")
		}
	}
	j.Season.Turns = j.Season.Turns[:12]
	for i, n := range []int{1, 2} {
		if x := j.Season.Turns[3+i]; x.Section != n || x.Sections != 2 {
			t.Errorf("section %d of %d, want %d of 2", x.Section, x.Sections, n)
		}
	}
	sameTurns(t, "steel on iron", j, 1, steel)
	for _, want := range byHand(t, "degrease (hull) | degrease {0.6×0.04} h dry patch wait 1 h\nprime: hull: epoxy primer | blast {0.6×0.58} h dry patch | epoxy-primer on 1 "+primed+" again {0.6×0.15}\n"+
		"hull: epoxy barrier, solvent-borne 1 of 6 |  {0.85×0.08} h patch | epoxy-barrier on 1 "+barred+" again {0.85×0.15}\nhull: signal coat |  {1.15×0.08} h patch", 1) {
		if !strings.Contains(patches.String(), want) {
			t.Errorf("no %q among the places:\n%s", want, patches.String())
		}
	}
	// Aluminium has its primer and no barrier: it waits for its signal coat, which then goes on after abrading; four are in its way.
	j = plannedJob(t, one("material = \"steel\"", "aluminium"))
	said := strings.Join(turnLines(j.Season.Turns), "\n")
	for _, want := range byHand(t, "hull: signal coat; keel: signal coat, after abrading |  {26×0.08 + 3×0.15} h", 1) {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
	// A thick barrier takes two coats on the hull and one on the keel, which is abraded before it; a coat of barrier has hours of its own.
	own := "[[coating]]\nkey = \"epoxy-barrier\"\nbasis = \"own table\"\nsource = \"the tin\"\nfilm = [\"300 um\", \"350 um\", \"400 um\"]\ncoats = 1\n" +
		"[[step]]\nkey = \"barrier\"\nbasis = \"own table\"\nsource = \"her log\"\nhours_m2 = [0.1, 0.2, 0.3]\n"
	j = billed(t, own, one("material = \"steel\"", "cast-iron"))
	said = strings.Join(turnLines(j.Season.Turns), "\n")
	for _, want := range byHand(t, "hull: epoxy barrier, solvent-borne 1 of 2 |  {23×0.2} h\nhull: epoxy barrier, solvent-borne 2 of 2; keel: epoxy barrier, solvent-borne, after abrading |  {26×0.2 + 3×0.15} h", 1) {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
	if strings.Count(said, "signal coat, after abrading") > 0 {
		t.Error("the signal coat is abraded too")
	}
}

// As many sections as days are needed, and no more. Of a day from 8:30, when she is set up, to 17:30 eight whole hours are left.
func TestSectionsOfADay(t *testing.T) {
	for flat, sections := range map[string]int{"11.79 m2": 0, "11.80 m2": 2, "25.58 m2": 2, "25.59 m2": 3} { // and 2 m2: 13.79 × 0.58 h = 7.9982 h, 8.0040, 15.9964, 16.0022
		boat := strings.NewReplacer("hands = 2", "hands = 1", "flat = \"20 m2\", waterline = \"2 m2\"", "flat = \""+flat+"\", waterline = \"1 m2\"").Replace(measuredBoat("material = \"steel\"", "lead", "launch_open = true"))
		n := 0
		for _, x := range plannedJob(t, boat).Season.Turns {
			if x.Sections > 1 {
				n = x.Sections
			}
		}
		if n != sections {
			t.Errorf("%s and 2 m2: %d sections, want %d", flat, n, sections)
		}
	}
}

// A day that is just long enough is one: 16 m2 at 0.42 h and 0.08 h take eight hours.
func TestADayThatIsJustLongEnough(t *testing.T) {
	own := "[[step]]\nkey = \"blast\"\nbasis = \"own table\"\nsource = \"the blaster\"\nhours_m2 = [0.33, 0.42, 1.0]\n"
	boat := strings.NewReplacer("hands = 2", "hands = 1", "flat = \"20 m2\", waterline = \"2 m2\"", "flat = \"14 m2\", waterline = \"1 m2\"").Replace(measuredBoat("material = \"steel\"", "lead", "launch_open = true"))
	for _, x := range billed(t, own, boat).Season.Turns {
		if x.Sections > 1 {
			t.Errorf("%s takes %g h", x.Name, x.Hours)
		}
	}
}

// An undercoat under one single coat has that coat's window: a foul-release silicone is one coat over its tie coat.
func TestWindowUnderASingleCoat(t *testing.T) {
	text := strings.NewReplacer("coating = \"ablative-cuprous-multi\"", "coating = \"foul-release-silicone\"", "under_way = \"200 h\"", "under_way = \"900 h\"\nspeed = \"18 kn\"\nlongest_idle = \"3 d\"").Replace(measuredBoat("material = \"grp\"", "grp", "launch_open = true"))
	j := plannedJob(t, text)
	s, _ := j.Scheme("hull")
	n := len(s.Coats)
	if n < 2 || s.Coats[n-1].Layer.Coats != 1 || s.Coats[n-2].Layer.For != compat.Undercoat {
		t.Fatalf("the hull's scheme: %v", s.Stack)
	}
	want := compat.Closes(s.Coats[n-1].Layer.Coating, s.Coats[n-2].Layer.Coating)
	asked := 0
	for _, x := range j.Season.Turns {
		for _, l := range x.Layers {
			if l.Coating.Key == s.Coats[n-2].Layer.Coating.Key && !x.Patch && x.Coats[0].Nth == x.Coats[0].Layer.Coats {
				asked++
				if !want.Given() || l.Closes.String() != want.String() {
					t.Errorf("%s closes after %s, want %s", x.Name, l.Closes, want)
				}
			}
		}
	}
	if asked == 0 {
		t.Error("no undercoat")
	}
}

// A type whose new film may stand dry for 60 days or less goes on late.
func TestWhatGoesOnLate(t *testing.T) {
	for stands, late := range map[string]bool{"60 d": true, "61 d": false} {
		own := "[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"the tin\"\nair_new = \"" + stands + "\"\n"
		n, asked := 0, 0
		for _, x := range billed(t, own, measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "lead", "launch_open = true")).Season.Turns {
			for _, l := range x.Layers {
				if l.Late != (late && l.Stands.Given()) {
					t.Errorf("%s: %s is late: %v", stands, x.Name, l.Late)
				}
				if asked++; l.Late {
					n++
				}
			}
		}
		if asked < 8 || late && n != 3 { // the last coat of hull, of keel and of the places
			t.Errorf("%s: %d of %d layers go on late", stands, n, asked)
		}
	}
}
