package antifoul_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What the places under stands take beside the coats is bought with its coating and colour, and what they take in all is kept back, which is told.
func TestPaintOfThePlacesIsBought(t *testing.T) {
	j := plannedJob(t, foundOn(sheet, "hull")) // a sealer, a signal coat and working coats
	told := 0
	for _, g := range j.Buy {
		beside, kept := quantity.Litre.N(0), quantity.Litre.N(0)
		for _, p := range j.Patches {
			if p.Coating.Key == g.Coating.Key && p.Colour == g.Colour {
				beside, kept = beside.Add(p.Beside.Typical), kept.Add(p.Litres.Typical)
			}
		}
		if !g.Patches.Typical.Equal(beside) {
			t.Errorf("%s %s: %s for the places, want %s", g.Coating.Key, g.Colour, g.Patches.Typical, beside)
		}
		for _, f := range g.Notes {
			if strings.HasPrefix(string(f.Rule), "patch-") {
				told++
				if got, ok := factOf(f, "litres").(quantity.Volume); !ok || !got.Equal(kept) {
					t.Errorf("%s %s: %v is kept back, want %s", g.Coating.Key, g.Colour, factOf(f, "litres"), kept)
				}
			}
		}
	}
	if told != 3 {
		t.Errorf("told of %d paints, want 3", told)
	}
}

// Blocks stand under the hull where she has no keel of her own scheme: eight places of a tenth of a square metre.
func TestBlocksUnderAHullWithoutAKeel(t *testing.T) {
	j := plannedJob(t, strings.Replace(sheet, "draft = \"1.6 m\"", "draft = \"1.6 m\"\nstand_pairs = 3\nkeel_blocks = 2", 1))
	if got := j.Patches[0].Area.Typical.Float(quantity.SquareMetre); got < 0.79 || got > 0.81 || j.Patches[0].Part != "hull" {
		t.Errorf("%.2f m2 of the %s", got, j.Patches[0].Part)
	}
}

// Blocks and chains bear her on the keel where it has a scheme of its own: three places of a tenth of a square metre.
func TestBlocksAndChainsUnderAKeel(t *testing.T) {
	j := plannedJob(t, strings.Replace(measuredBoat("material = \"grp\"\nlaminate = \"dry\"", "lead", "launch_open = true"), "stand_pairs = 3", "stand_pairs = 3\nkeel_blocks = 2\nchains = 1", 1))
	for _, p := range j.Patches {
		if p.Part == "keel" {
			if got := p.Area.Typical.Float(quantity.SquareMetre); got < 0.29 || got > 0.31 {
				t.Errorf("%.2f m2 of the keel", got)
			}
			return
		}
	}
	t.Error("nothing bears her on the keel")
}

// The law is asked of what is on each part, of an unknown film where nobody says and the part is painted, and of nothing on an anode; it says nothing twice.
func TestLawOfWhatIsOn(t *testing.T) {
	for name, c := range map[string]struct {
		boat    string
		unknown bool
	}{"known": {sheet, false}, "not known": {foundOn(sheet, "hull"), true}, "neither": {foundOn(foundOn(sheet, "hull"), "rudder"), true}} {
		j := plannedJob(t, c.boat)
		unknown, seen := false, map[string]bool{}
		for _, f := range j.Legal {
			unknown = unknown || f.About == "old film, not identified"
			text := j.Book.Say(f, quantity.Metric) + f.About
			if seen[text] {
				t.Errorf("%s: twice: %s", name, text)
			}
			seen[text] = true
		}
		if unknown != c.unknown {
			t.Errorf("%s: of an unknown film: %v", name, unknown)
		}
	}
}

// Where nothing is painted no place under a stand is counted; what growth would cost is told of a boat that moves.
func TestPadsAndGrowthOfAJob(t *testing.T) {
	painted := plannedJob(t, sheet)
	bare := plannedJob(t, strings.NewReplacer("[use]\n", "[use]\nkept = \"trailer\"\n", "coating = \"ablative-cuprous-multi\"\ntop_colour", "coating = \"none\"\ntop_colour").Replace(sheet))
	if painted.Pads.Count == 0 || bare.Pads.Count != 0 {
		t.Errorf("%d places of a painted boat, %d of a bare one", painted.Pads.Count, bare.Pads.Count)
	}
	if still := plannedJob(t, strings.Replace(sheet, "speed = \"5 kn\"\n", "", 1)); len(painted.Growth.Costs) == 0 || len(still.Growth.Costs) != 0 {
		t.Errorf("growth costs %v, without a speed %v", painted.Growth, still.Growth)
	}
}

// A part without a name has the fault at its number, counted from one.
func TestCheckOfANamelessPart(t *testing.T) {
	j := plannedJob(t, sheet)
	x := j.Boat
	x.Parts = append(x.Parts[:0:0], x.Parts...)
	x.Parts[1].Name = ""
	fs := x.Check(j.Book)
	if len(fs) != 1 || fs[0].Key != "part[2].name" || fs[0].Kind != finding.ErrMissing {
		t.Errorf("%v", fs)
	}
}

// Her water is that of the first berth at which she is kept and of which it is known; where she only calls does not count.
func TestWaterOfTheBerthWhereSheIsKept(t *testing.T) {
	life := func(use string, berths ...string) string {
		boat := strings.Replace(sheet, "water = \"salt\"\n", use, 1)
		s, _ := plannedJob(t, strings.Replace(boat, "[[berth]]\nplace = \"GB\"\nrole = \"kept\"\n", strings.Join(berths, ""), 1)).Scheme("rudder")
		return fmt.Sprint(s.Lasts.Rate, s.Lasts.Life)
	}
	at := func(place, role, water string) string {
		return "[[berth]]\nplace = \"" + place + "\"\nrole = \"" + role + "\"\n" + water
	}
	fresh, salt := life("water = \"fresh\"\n", at("SE", "kept", "")), life("water = \"salt\"\n", at("SE", "kept", ""))
	if fresh == salt {
		t.Fatal("she lasts as long in any water: the test asks too little")
	}
	for name, got := range map[string]string{
		"after a visit":     life("", at("SE", "visited", "water = \"salt\"\n"), at("SE", "kept", "water = \"fresh\"\n")),
		"of the second":     life("", at("SE", "kept", ""), at("SE-fresh", "kept", "")),
		"of no known place": life("", at("Atlantis", "kept", ""), at("SE-fresh", "kept", "")),
	} {
		if got != fresh {
			t.Errorf("%s: %s, want %s", name, got, fresh)
		}
	}
}

// Paint is bought once for all the parts that it goes on, which are named once, and thinner where it is thinned.
func TestPartsOfAPaintAndItsThinner(t *testing.T) {
	for thinner, thinned := range map[string]bool{"": false, "thinner = \"0 %\"\n": false, "thinner = \"10 %\"\n": true} {
		for _, g := range plannedJob(t, strings.Replace(sheet, "by = \"roller\"\n", "by = \"roller\"\n"+thinner, 1)).Buy {
			want := "hull rudder" // the top colour; on the hull her old film is the signal
			if g.Colour == "mid-green" {
				want = "rudder"
			}
			if got := strings.Join(g.Parts, " "); got != want || g.Thinner.Given() != thinned {
				t.Errorf("%q: %s for %s, thinner %s", thinner, g.Colour, got, g.Thinner)
			}
		}
	}
}

// Planning leaves the boat that it was given as she is.
func TestAPlannedBoatIsUntouched(t *testing.T) {
	text := strings.Replace(sheet, "area = \"2 m2\"\n", "area = \"2 m2\"\nseen = [\"thumb-colours\"]\n", 1) +
		"[[record]]\ncoating = \"ablative-cuprous-multi\"\nlaunched = 2025-04-01\nlitres = \"9 L\"\ncoats = 1\n[[record.look]]\non = 2026-03-01\nzone = \"flat\"\nsignal = false\n"
	x, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	parts, records := fmt.Sprint(x.Parts), fmt.Sprint(x.Records)
	if _, err := antifoul.Plan(tables.Default(), x); err != nil {
		t.Fatal(err)
	}
	if fmt.Sprint(x.Parts) != parts || fmt.Sprint(x.Records) != records {
		t.Errorf("parts were %s and are %v; records were %s and are %v", parts, x.Parts, records, x.Records)
	}
}
