// Package entry answers one question: how is one table of a TOML file, or one line of a CSV file, read, with every fault at once?
//
// A [Row] is one TOML table. Each reading method takes a key, returns the value or the type's "not given", and notes a fault
// when the value cannot be accepted; nothing stops at the first fault. Close notes the keys that nobody read.
//
//	row, faults := entry.Open(fsys, "boat.toml")
//	hull := row.Table("hull")
//	draft := entry.Amount[quantity.Length](hull, "draft")
//	hull.Close()
//	return faults.Err()
//
// A [Sheet] is a CSV file whose lines are rows too.
//
// Quantities are strings with their unit ("1.75 m"); a bare number is a fault that names the units taken.
//
// It is exported because readers in four trees share it: the tables, the sheets of coverage and of the weather, the boat file, the job log. Whoever
// keeps sheets of his own beside own tables may read them the same way.
package entry
