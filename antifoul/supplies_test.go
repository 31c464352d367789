package antifoul_test

import (
	"fmt"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/quantity"
)

// Days of painting, by hand: 7.169, 9.485, 13.425 hours of one hand on the sheet's boat (TestWorkIsBilledByHand) at eight a day, and five coats on the rudder, of which so many go on in a day as their windows let: the next
// begins when the one before has stood for its window, and no later than the eighth hour; no coat is closer to the one before than an hour.
func TestDaysOfPainting(t *testing.T) {
	for window, want := range map[string]string{
		"4 h": "3 3 3", "3 h": "2 2 2", "160 min": "2 2 2", "8 h": "5 5 5", "9 h": "5 5 5", "159 min": "2 2 2", "2 h": "2 2 2", "96 min": "1 1.19 1.68", "1 min": "1 1.19 1.68",
	} {
		own := "[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"the tin\"\novercoat_min = \"" + window + "\"\n"
		d := billed(t, own, sheet).Days
		if got := fmt.Sprintf("%.4g %.3g %.3g", d.Low, d.Typical, d.High); got != want {
			t.Errorf("%s: %s days, want %s", window, got, want)
		}
	}
	// Two hands take half the hours, and as many days for the coats.
	if d := billed(t, "", sheet+"[work]\nhands = 2\n").Days; d != quantity.Exactly(3.0) {
		t.Errorf("two hands: %v days", d)
	}
}

// What comes off, by hand. Stripped is the hull's old film, 100 um on 23 m2, 2.3 L; abraded is the rudder, 5 to 30 um on 2 m2, 0.01 to 0.06 L. At 1.8 to 2 kg a litre these are 4.158 to 4.72 kg, told as 4 to 5.
func TestWasteByHand(t *testing.T) {
	hard := strings.Replace(sheet, "[wishes]\ncoating = \"ablative-cuprous-multi\"", "[wishes]\ncoating = \"hard-cuprous\"", 1)
	for name, c := range map[string]struct {
		boat      string
		low, high string
		holds     bool // what comes off can harm: a film with biocide, or an epoxy
		unread    bool
	}{
		"stripped":         {hard, "4 kg", "5 kg", true, false},
		"a range":          {strings.Replace(hard, "film = \"100 um\"", "film = [\"50 um\", \"100 um\", \"200 um\"]", 1), "2 kg", "10 kg", true, false}, // 2.088 to 9.32
		"nobody measured":  {strings.Replace(hard, "film = \"100 um\"\n", "", 1), "0 kg", "1 kg", true, true},
		"abraded":          {sheet, "0 kg", "1 kg", true, false},
		"and washed alone": {strings.Replace(sheet, "[[part.found]]\ncoating = \"epoxy-barrier\"\nstate = \"sound\"\n", "[[part.found]]\ncoating = \"ablative-cuprous-multi\"\nstate = \"sound\"\n", 1), "", "", false, false},
	} {
		j := plannedJob(t, c.boat)
		low, high := "", ""
		if j.Waste.High.Given() {
			low, high = j.Waste.Low.String(), j.Waste.High.String()
		}
		if low != c.low || high != c.high || j.OfWaste.Has(antifoul.RuleWasteHazard) != c.holds || j.OfWaste.Has(antifoul.RuleWasteUnknown) != c.unread || j.OfWaste.Has(antifoul.RuleWaste) != (c.low != "") {
			t.Errorf("%s: %s to %s, %v", name, low, high, j.OfWaste)
		}
	}
}
