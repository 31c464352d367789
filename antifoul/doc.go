// Package antifoul answers one question: which generic antifouling, in which layers and colours, how much of it, and why?
//
// A [Boat] is made of the inputs of the packages below: the hull of coverage, the parts of compat, the use of wear, the berths
// of law, the days of calendar, and the owner's wishes. [Rank] puts every generic type of the book in tiers, for each part;
// [Specify] makes the layer scheme of one type; [Plan] puts the whole [Job] together.
//
//	boat, err := antifoul.ReadBoat(os.DirFS("."), "boat.toml")   // err lists every fault of the file
//	job, err := antifoul.Plan(tables.Default(), boat)
//	if best, ok := job.Ranking.Hull().Best(); ok {
//		fmt.Println(best.Name, "because", best.Why())
//	}
//
// Tiers come before scores: a type that must not be used, or that the use speaks against, is never lifted by a sum of small
// gains. Everything ruled out stays in the answer with all of its reasons.
package antifoul
