package entry_test

import (
	"fmt"
	"testing/fstest"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/quantity"
)

func ExampleOpen() {
	fsys := fstest.MapFS{"boat.toml": {Data: []byte(`
[hull]
length = "9.80 m"
water = 15
beem = "3 m"
`)}}
	row, faults := entry.Open(fsys, "boat.toml")
	hull := row.Table("hull")
	fmt.Println(entry.Amount[quantity.Length](hull, "length"))
	fmt.Println(entry.Amount[quantity.Length](hull, "draft"))
	fmt.Println(entry.Amount[quantity.Length](hull, "beam"))
	fmt.Println(entry.Amount[quantity.Temperature](hull, "water"))
	hull.Close()
	fmt.Println(faults.Err())
	// Output:
	// 9.80 m
	// not given
	// not given
	// not given
	// boat.toml: hull.beem: unknown key: read beem; accepted: did you mean beam?
	// boat.toml: hull.water: not accepted: read 15; accepted: a number and its unit in quotes, unit one of degC, degF
}
