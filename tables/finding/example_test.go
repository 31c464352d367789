package finding_test

import (
	"errors"
	"fmt"

	"boatyard.example/bottomwork/tables/finding"
)

func ExampleList() {
	fs := finding.List{
		{Rule: "state-work", Verdict: finding.Needs, First: []finding.Step{{Do: finding.Wash}, {Do: finding.Abrade}}},
		{Rule: "metal-takes", Verdict: finding.Fine},
	}
	fmt.Println(fs.Worst())
	for _, f := range fs.At(finding.Needs) {
		for _, s := range f.First {
			fmt.Println(s.Do)
		}
	}
	fmt.Println(finding.List{}.Worst().Valid(), "- nothing was judged")
	// Output:
	// needs
	// wash
	// abrade
	// false - nothing was judged
}

func ExampleFaults() {
	hull := finding.Faults{
		{Kind: finding.ErrMissing, Key: "length", Want: "a length"},
		{Kind: finding.ErrValue, Key: "draft", Got: "1.75", Want: `a number and its unit, "1.75 m"`},
	}
	err := hull.Under("boat.toml", "hull").Err()
	fmt.Println(err)
	fmt.Println(errors.Is(err, finding.ErrMissing), errors.Is(err, finding.ErrSyntax))
	// Output:
	// boat.toml: hull.draft: not accepted: read 1.75; accepted: a number and its unit, "1.75 m"
	// boat.toml: hull.length: missing; accepted: a length
	// true false
}
