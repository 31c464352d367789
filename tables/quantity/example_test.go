package quantity_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/tables/quantity"
)

func ExampleParse() {
	film, err := quantity.Parse[quantity.Film]("5 mil")
	fmt.Println(film, err)
	fmt.Println(film.In(quantity.Micrometre, 0, quantity.Nearest))

	_, err = quantity.Parse[quantity.Film]("125")
	fmt.Println(err)
	// Output:
	// 5 mil <nil>
	// 127
	// read "125", taken: a number and one of um, mil
}

func ExampleAmount_Add() {
	need := quantity.Litre.N(2).Add(quantity.USQuart.N(1))
	fmt.Println(need)
	fmt.Println(need.To(quantity.Litre, 1, quantity.Up))
	// Output:
	// 2.946352946 L
	// 3.0 L
}

func ExampleAmount_Show() {
	length := quantity.Metre.Of(decimal.RequireFromString("9.80"))
	fmt.Println(length.Show(quantity.Metric))
	fmt.Println(length.Show(quantity.US))
	// Output:
	// 9.80 m (32.2 ft)
	// 32.2 ft (9.80 m)
}

func ExampleShowRange() {
	film := quantity.Range[quantity.Film]{Low: quantity.Micrometre.N(40), High: quantity.Micrometre.N(60)}
	fmt.Println(quantity.ShowRange(film, quantity.Metric))
	// Output: 40 to 60 µm (1.57 to 2.36 mil)
}

func ExampleDate_AddMonths() {
	painted, _ := quantity.NewDate(2027, 8, 31)
	fmt.Println(painted.AddMonths(18))
	// Output: 2029-02-28
}

func ExampleQuotient() {
	cans, err := quantity.Quotient(decimal.RequireFromString("5.2"), decimal.RequireFromString("2.5"), 0, quantity.Up)
	fmt.Println(cans, err)
	// Output: 3 <nil>
}
