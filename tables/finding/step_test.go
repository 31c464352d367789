package finding_test

import (
	"fmt"
	"testing"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// A step prints what it asks for, and nothing of what is not set.
func TestStepPrints(t *testing.T) {
	film := quantity.Range[quantity.Film]{Low: quantity.Micrometre.N(250), Typical: quantity.Micrometre.N(275), High: quantity.Micrometre.N(300)}
	for _, c := range []struct {
		step finding.Step
		want string
	}{
		{finding.Step{Do: finding.Wash}, "wash"},
		{finding.Step{Do: finding.Abrade, Grit: "80 to 120"}, "abrade, grit 80 to 120"},
		{finding.Step{Do: finding.Tie, Coating: "tie-coat", Coats: 1}, "tie coat, tie-coat, 1 coat"},
		{finding.Step{Do: finding.Barrier, Coating: "epoxy-barrier", Coats: 2, Film: film}, "barrier, epoxy-barrier, 2 coats, 250 to 300 µm (9.84 to 11.8 mil)"},
		{finding.Step{Do: finding.Prime, Film: quantity.Range[quantity.Film]{Low: quantity.Micrometre.N(40)}}, "prime, 40 µm or more (1.57 mil or more)"},
		{finding.Step{Do: finding.Prime, Film: quantity.Range[quantity.Film]{High: quantity.Micrometre.N(40)}}, "prime, up to 40 µm (1.57 mil)"},
	} {
		if got := fmt.Sprint(c.step); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
