// Package readme_test holds the README to what it shows: its example runs, its boat file reads, its word lists are those of the
// tables.
package readme_test

import (
	"fmt"
	"io"
	"os"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/report"
	"boatyard.example/bottomwork/tables"
)

// write is the README's example, word for word.
func write(w io.Writer) error {
	boat, err := antifoul.ReadBoat(os.DirFS("."), "boat.toml")
	if err != nil {
		return err // every fault of the file, one a line
	}
	job, err := antifoul.Plan(tables.Default(), boat)
	if err != nil {
		return err
	}
	if best, ok := job.Ranking.Hull().Best(); ok {
		fmt.Println(best.Name, "because", best.Why())
	}
	for part, layer := range job.Layers() {
		fmt.Println(part, layer)
	}
	return report.Write(w, job, report.Options{Format: report.Markdown})
}

func Example() {
	if err := write(io.Discard); err != nil {
		fmt.Println(err)
	}
	// Output:
	// ablative, cuprous oxide, multi-season because It holds off heavy growth, and the growth where she lies is medium. It takes 2 working coats for 12 months, counted at the fastest wear. It suits her 5 kn; its limit is 22 kn.
	// hull old ablative antifouling, biocide not known, red-oxide
	// hull 1 coat ablative, cuprous oxide, multi-season, mid-green, 40 to 60 µm (1.57 to 2.36 mil)
	// hull 1 coat ablative, cuprous oxide, multi-season, black, 40 to 60 µm (1.57 to 2.36 mil)
	// hull 2 coats ablative, cuprous oxide, multi-season, black, 80 to 120 µm (3.15 to 4.72 mil)
}
