package antifoul_test

import (
	"os"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
)

// Whatever stands in a boat file, reading it answers with a boat or with faults, and a boat that was read can be planned.
func FuzzReadBoat(f *testing.F) {
	f.Add(base)
	f.Add(onePart)
	for _, name := range []string{"sloop", "steel", "planing", "trailer"} {
		text, err := os.ReadFile("../examples/boats/" + name + ".toml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	book := tables.Default()
	f.Fuzz(func(t *testing.T, text string) {
		boat, err := antifoul.ReadBoat(fstest.MapFS{"boat.toml": {Data: []byte(text)}}, "boat.toml")
		if err != nil {
			return
		}
		if _, err := antifoul.Plan(book, boat); err != nil {
			t.Errorf("read without a fault, and then: %v", err)
		}
	})
}
