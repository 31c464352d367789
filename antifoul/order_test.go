package antifoul_test

import (
	"strings"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// An undercoat is told with the words of its own work, not another's: of a barrier that it is tested before anything with copper, of a sealer that it must name the old film.
func TestUndercoatsAreToldAsWhatTheyAre(t *testing.T) {
	const found = "coating = \"ablative-cuprous-multi\"\ncolour = \"red-oxide\"\nfilm = \"100 um\"\nstate = \"sound\""
	met := map[tables.Role]bool{}
	for _, boat := range []string{
		strings.NewReplacer("material = \"grp\"\n[[part.found]]\n"+found, "material = \"steel\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"").Replace(sheet),
		strings.NewReplacer(found, "coating = \"organotin-old\"\nstate = \"sound\"", "place = \"GB\"", "place = \"DK\"").Replace(sheet),
		strings.NewReplacer(found, "coating = \"bare\"\nstate = \"sound\"", "coating = \"ablative-cuprous-multi\"\ntop_colour", "coating = \"foul-release-silicone\"\ntop_colour").Replace(sheet),
		strings.NewReplacer("material = \"grp\"\n[[part.found]]\n"+found, "material = \"bronze\"\n[[part.found]]\ncoating = \"bare\"\nstate = \"sound\"").Replace(sheet),
	} {
		j := plannedJob(t, boat)
		for _, task := range j.Order {
			if task.Coat == nil || task.Coat.Layer.For != compat.Undercoat {
				continue
			}
			role := task.Coat.Layer.Coating.Role
			do, ok := map[tables.Role]finding.Action{tables.Primer: finding.Prime, tables.Barrier: finding.Barrier, tables.TieCoat: finding.Tie, tables.Sealer: finding.Seal}[role]
			row, err := j.Book.Step(do)
			if !ok || err != nil || task.Says != row.Says || task.Hold != row.Hold {
				t.Errorf("%s: %q, hold %q (%v)", task.Coat.Layer.Coating.Name, task.Says, task.Hold, err)
			}
			met[role] = true
		}
	}
	if len(met) != 4 {
		t.Errorf("roles met: %v", met)
	}
}
