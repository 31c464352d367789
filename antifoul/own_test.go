package antifoul_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// copperOnAluminium are own rows that would put cuprous oxide on aluminium, each by another door.
var copperOnAluminium = map[string]string{
	"the metal":                "[[material]]\nkey = \"aluminium\"\nbasis = \"own table\"\nsource = \"letter\"\ncuprous_oxide = \"fine\"\n",
	"the metal's barrier":      "[[material]]\nkey = \"aluminium\"\nbasis = \"own table\"\nsource = \"letter\"\ncuprous_oxide = \"over barrier\"\n",
	"what the oxide counts as": "[[active]]\nkey = \"cuprous-oxide\"\nbasis = \"own table\"\nsource = \"letter\"\nclass = \"copper-free\"\n",
}

// No own row opens aluminium to cuprous oxide without an override and a reason; with one, the report's book says so.
func TestOwnRowsDoNotOpenAluminium(t *testing.T) {
	base := tables.Default()
	for door, own := range copperOnAluminium {
		if _, err := base.With(fstest.MapFS{"own.toml": {Data: []byte(own)}}); !errors.Is(err, finding.ErrSafety) {
			t.Errorf("%s: %v; want a fault of safety", door, err)
		}
		b, err := base.With(fstest.MapFS{"own.toml": {Data: []byte(own + "override = true\nreason = \"trial, decided by the surveyor\"\n")}})
		if err != nil {
			t.Errorf("%s, with a reason: %v", door, err)
			continue
		}
		said := slices.Collect(b.Overrides())
		if !strings.Contains(strings.Join(said, " "), "trial, decided by the surveyor") {
			t.Errorf("%s: the reason is not listed: %q", door, said)
		}
	}
}

// A type keeps its biocide class, with or without an override: another recipe is another type, under a key of its own.
func TestOwnActivesKeepTheClass(t *testing.T) {
	const head = "[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"letter\"\n"
	for own, refused := range map[string]bool{
		head + "[[coating.active]]\nkey = \"zinc-pyrithione\"\ncontent = \"4 %\"\n":                                                                  true,
		head + "override = true\nreason = \"x\"\n[[coating.active]]\nkey = \"zinc-pyrithione\"\ncontent = \"4 %\"\n":                                 true,
		head + "[[coating.active]]\nkey = \"cuprous-oxide\"\ncontent = \"31 %\"\n":                                                                   false,
		head + "[[coating.active]]\nkey = \"cuprous-oxide\"\ncontent = \"31 %\"\n[[coating.active]]\nkey = \"zinc-pyrithione\"\ncontent = \"4 %\"\n": false,
	} {
		_, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
		if errors.Is(err, finding.ErrSafety) != refused || refused == (err == nil) {
			t.Errorf("%s\ngives %v", own, err)
		}
	}
}

// Another figure of volume solids changes litres and cans.
func TestVolumeSolidsChangeLitresAndCans(t *testing.T) {
	embedded := tables.Default()
	own, err := embedded.With(fstest.MapFS{"own.toml": {Data: []byte("[[coating]]\nkey = \"ablative-cuprous-multi\"\nbasis = \"own table\"\nsource = \"sheet\"\nsolids = \"30 %\"\n")}})
	if err != nil {
		t.Fatal(err)
	}
	need := map[*tables.Book]antifoul.Bought{}
	for _, b := range []*tables.Book{embedded, own} {
		x, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(base + "[wishes]\ncoating = \"ablative-cuprous-multi\"\n")}}, "boat.toml")
		if err != nil {
			t.Fatal(err)
		}
		j, err := antifoul.Plan(b, x)
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range j.Buy {
			if g.Coating.Key == "ablative-cuprous-multi" && !need[b].Need.Given() {
				need[b] = g
			}
		}
	}
	was, is := need[embedded], need[own]
	if !was.Need.Given() || !is.Need.Given() || is.Need.Cmp(was.Need) <= 0 {
		t.Errorf("litres %s before, %s with thinner paint; want more", was.Need, is.Need)
	}
	size := func(g antifoul.Bought) (n int) {
		for _, i := range g.Items {
			n += i.Count
		}
		return n
	}
	if size(is) == size(was) && is.Items[0].Can.Size.Equal(was.Items[0].Can.Size) {
		t.Errorf("the cans are the same: %v and %v", was.Items, is.Items)
	}
}
