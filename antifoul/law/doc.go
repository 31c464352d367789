// Package law answers one question: what is allowed where and when?
//
// It looks up the laws of a [tables.Book] that touch a coating at the places of a boat's life, on one day. It is a first honest
// form and no legal advice: a place, a date or a content that is not known gives Ask or Caution, never Fine, and where the
// book holds no law it says so, with the day on which its laws were read. The rule in force is checked on the spot.
//
//	at := []law.Berth{{Place: "US-WA", Role: "kept", Water: "salt"}}
//	craft := law.Craft{Length: quantity.Metre.N(10), Mass: quantity.Tonne.N(4), Material: "grp"}
//	for _, f := range law.Screen(book, coating, craft, at, day) {
//		fmt.Println(f.Verdict, book.Say(f, quantity.Metric))
//	}
//
// Who screens many coatings for one boat makes a [Desk] once with [At]: it looks up the places, the day and the boat first, and
// each coating then costs a microsecond or two.
//
// A new law is a row, not an if:
//
//	source                                        → rows of laws.toml
//	AFS Convention, annex 1, MEPC.331(76)         → afs-organotin-…, afs-cybutryne-…
//	guidelines for inspection, sections 1.2, 1.3  → afs-declaration, afs-certificate, afs-no-paper
//	33 USC 2403, 7 USC 136                        → us-…
//	3 CCR 6190                                    → ca-…
//	RCW 70A.445, RCW 90.48.080                    → wa-…
//	Regulation (EU) 528/2012 and its approvals    → eu-…
//	KIFS 2022:3; order 1257 of 2011; others       → se-…, fi-…, dk-…, bodensee-…, nl-…, gb-…, nz-…
//
// Rules that hold for every answer: no list is empty; a law more can make an answer stricter, never milder; a place lies in
// others, whose laws hold there too; a place with parts that have laws of their own asks which part is meant.
//
// It does not know the product: its registration, its measured release, its label. Nor does it know tonnage, voyages, the class
// of a harbour, the rules of a marina, or biosecurity rules about the growth that a boat brings.
package law
