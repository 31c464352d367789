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
	f.Add(base + putOn)
	sheet, err := os.ReadFile("../examples/boats/steel-gauge.csv")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range []string{"sloop", "steel", "steel-measured", "planing", "trailer"} {
		text, err := os.ReadFile("../examples/boats/" + name + ".toml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	book := tables.Default()
	f.Fuzz(func(t *testing.T, text string) {
		files := sheets(text)
		files["steel-gauge.csv"] = &fstest.MapFile{Data: sheet}
		boat, err := antifoul.ReadBoat(files, "boat.toml")
		if err != nil {
			return
		}
		if _, err := antifoul.Plan(book, boat); err != nil {
			t.Errorf("read without a fault, and then: %v", err)
		}
	})
}
