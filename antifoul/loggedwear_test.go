package antifoul_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/quantity"
)

// Each part that was looked at makes a record; what a coating's wear comes to is told once, beside what the boat file says of it, to a tenth of a micrometre.
func TestWearIsToldOncePerCoating(t *testing.T) {
	j := billed(t, worn("2", "3.14", "4.26"), still())
	log := func(onHull string) string {
		return logHead + "launched = 2027-05-01\n" + laid(`part = "hull"`, `litres = "5 L"`, "coating = \""+onHull+"\"") + laid(`litres = "0.5 L"`) +
			"[[look]]\non = 2028-04-01\npart = \"hull\"\nzone = \"flat\"\nfilm = \"30 um\"\n[[look]]\non = 2028-04-01\npart = \"rudder\"\nzone = \"rudder\"\nfilm = \"30 um\"\n"
	}
	for coating, want := range map[string]string{
		"ablative-cuprous-multi": "hull: log-record log-wear; rudder: log-record",
		"self-polishing-cuprous": "hull: log-record log-wear; rudder: log-record log-wear",
		"hard-cuprous":           "rudder: log-record log-wear", // it does not wear
	} {
		l := logged(t, j, log(coating), "")
		var got []string
		for _, w := range l.Worn {
			got = append(got, w.Part+": "+rulesOf(w.Says))
		}
		if strings.Join(got, "; ") != want {
			t.Errorf("%s on the hull: %q, want %q", coating, got, want)
		}
	}
	w := logged(t, j, log("hard-cuprous"), "").Worn[0]
	// 0.5 L on 2 m2 of rudder are 42.5 to 71.25 um (TestFilmsByHand).
	if said := j.Book.Say(w.Says[0], quantity.Metric); w.Says[0].Against != "rudder" || !strings.Contains(said, "42 to 72 µm") || !strings.Contains(said, "2027-05-01") || factOf(w.Says[0], "looks") != any(1) {
		t.Error(said)
	}
	for name, want := range map[string]string{"was_low": "2.0 um", "was_typical": "3.1 um", "was_high": "4.3 um"} {
		if got := factOf(w.Says[1], name).(quantity.Film).String(); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
	for name, after := range map[string]float64{"low": w.After.Low, "typical": w.After.Typical, "high": w.After.High} {
		told := factOf(w.Says[1], name).(quantity.Film)
		if far := told.Float(quantity.Micrometre) - after; far > 0.05 || far < -0.05 || told.Sign() <= 0 {
			t.Errorf("%s is told as %s, and is %f", name, told, after)
		}
	}
	if w.Says[1].Rule != antifoul.RuleLogWear || w.After == w.Before {
		t.Errorf("the look tells nothing: %+v", w)
	}
}
