package report

import (
	"io"
	"os"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
)

// What the rendering alone costs, of blocks that are composed: BenchmarkWrite has both.
func BenchmarkRenderHTML(b *testing.B) {
	boat, err := antifoul.ReadBoat(os.DirFS("../../examples/bottomjob"), "demo.toml")
	if err != nil {
		b.Fatal(err)
	}
	job, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		b.Fatal(err)
	}
	o := Options{Format: HTML}
	c, err := compose(job, &o)
	if err != nil {
		b.Fatal(err)
	}
	c.full()
	b.ReportAllocs()
	for b.Loop() {
		if err := c.renderHTML(io.Discard, o); err != nil {
			b.Fatal(err)
		}
	}
}
