// Package cost answers one question: what does it come to in money?
//
// A bill is made of items, each a number of units of something that has a price in the book. Every line shows the number, the price
// of one and the money, so that it can be done again with a pencil; what has no price stands in the bill without money.
//
//	bill := cost.Reckon(book, "yard", []cost.Item{{Of: tables.PricedLabour, Name: "abrade", Unit: "h", Amount: cost.Amounts(6, 7.5, 9)}}, cost.Boat{})
//	fmt.Println(bill.Lines[0].Money.Typical, bill.Total.Typical)
//
// Rounding: numbers of units to two decimals, each line's money to the cent, half away from zero, once; sums add what the lines
// show. Prices are those of own tables; the module ships none.
package cost
