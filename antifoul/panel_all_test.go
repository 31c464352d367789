package antifoul_test

import (
	"slices"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
)

// wholePanel is every boat of the panel, P1 to the last.
func wholePanel() []panelled {
	return slices.Concat(panel, panelByWater, panelByUse, panelByMaterial, panelByFilm, panelByPast)
}

// panelBoat reads a boat of the panel against the tables with her own rows on top.
func panelBoat(t *testing.T, p panelled) (*tables.Book, antifoul.Boat) {
	t.Helper()
	b := tables.Default()
	if own := panelOwn[p.name]; own != "" {
		var err error
		if b, err = b.With(fstest.MapFS{"own.toml": {Data: []byte(own)}}); err != nil {
			t.Errorf("%s: %v", p.name, err)
		}
	}
	boat, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(p.text)}}, "boat.toml")
	if err != nil {
		t.Errorf("%s: %v", p.name, err)
	}
	return b, boat
}

func TestWholePanelReads(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range wholePanel() {
		if seen[p.name] {
			t.Errorf("%s stands twice", p.name)
		}
		seen[p.name] = true
		panelBoat(t, p)
	}
}
