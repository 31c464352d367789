package tables_test

import (
	"fmt"
	"testing/fstest"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

func ExampleBook_Coating() {
	book := tables.Default()
	c, err := book.Coating("hard-cuprous")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Name, "–", c.Solids.Typical, "volume solids,", c.Basis("solids").Kind)
	_, err = book.Coating("hard-cuprus")
	fmt.Println(err)
	// Output:
	// hard, cuprous oxide – 50 % volume solids, common practice
	// coating: not known: read "hard-cuprus"; accepted: did you mean hard-cuprous?
}

// A yard's own row outranks the embedded one, and says so.
func ExampleBook_With() {
	own := fstest.MapFS{"tin.toml": {Data: []byte(`
[[coating]]
key = "hard-cuprous"
basis = "own table"
source = "data sheet of the tin in the shed"
solids = "54 %"
`)}}
	book, err := tables.Default().With(own)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := book.Coating("hard-cuprous")
	fmt.Println(c.Solids.Typical, "from:", c.Basis("solids").Source, err)
	fmt.Println(c.Film.Typical, "from:", c.Basis("film").Kind)
	// Output:
	// 54 % from: data sheet of the tin in the shed <nil>
	// 50 um from: common practice
}

// What own tables changed, row by row.
func ExampleRow_Own() {
	book, err := tables.Default().With(fstest.MapFS{"shed.toml": {Data: []byte(`
[[colour]]
key = "mid-green"
basis = "own table"
source = "the yard's record"
name = "green"
`)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for c := range book.Colours() {
		for field, basis := range c.Own() {
			fmt.Println(c, "has its", field, "from:", basis.Source)
		}
	}
	// Output: green has its name from: the yard's record
}

func ExampleBook_Say() {
	book := tables.Default()
	f := finding.Finding{
		Rule: "use-speed-over", Verdict: finding.Caution, About: "this type",
		Facts: []finding.Fact{{Name: "speed", Value: quantity.Knot.N(26)}, {Name: "limit", Value: quantity.Knot.N(22)}},
	}
	fmt.Println(book.Say(f, quantity.Metric))
	// Output: This type does not stand a sustained 26 kn; its limit is 22 kn.
}
