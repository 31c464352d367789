package report_test

import (
	"io"
	"os"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
)

func BenchmarkWrite(b *testing.B) {
	boat, err := antifoul.ReadBoat(os.DirFS("../../examples/bottomjob"), "demo.toml")
	if err != nil {
		b.Fatal(err)
	}
	job, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		b.Fatal(err)
	}
	for _, f := range report.Formats() {
		b.Run(string(f), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := report.Write(io.Discard, job, report.Options{Format: f}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
