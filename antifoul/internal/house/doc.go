// Package house answers: does the module still stand as it was drawn?
//
// The drawing is a house of floors: imports only point down, the floors below
// the examples are pure, and nothing but the agreed names stands at the top
// level; importing it changes nothing, and what it exports says what it is. The
// checks here are pure functions, and the tests of this
// package hold the real module against them:
//
//	house.Floors(map[string][]string{"tables": {"compat"}})
//	// tables (floor 1) imports compat (floor 2): imports only point down
//	house.Purity(os.DirFS("."))
//	// tables/load.go:14: time.Local looks up a time zone
//	house.TopLevel([]string{"tables", "notes.txt"}) // notes.txt is not …
//
// Each check gives one sentence a breach, in a fixed order, and nothing when all
// is well. An empty answer to an empty question proves nothing, so the tests also
// plant a breach of each kind in a copy and require it to be named.
//
//	what is checked                        file
//	who may import whom                    floors.go
//	no clock, files, output, randomness    purity.go
//	what lies at the top level             toplevel.go
//	no state that changes, no init         state.go
//	comments, units and bases              told.go
//
// Not covered: test files, which may read golden files and import upward; and
// methods such as [time.Time.Local], which need types and are left to the linter.
package house
