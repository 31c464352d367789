// Package tables answers one question: what does the trade know about boat bottom coatings, and on what basis?
//
// A [Book] holds rows: coatings, materials, old films, colours, losses, laws, rules, sources. It knows rows, not rules: what
// may touch what is decided in compat, what is allowed where in antifoul/law, and so on. Every row says what it rests on.
//
//	book := tables.Default()                        // the embedded tables, parsed once
//	book, err := book.With(os.DirFS("our-yard"))    // own rows on top; they outrank the embedded ones
//	c, err := book.Coating("hard-cuprous")          // the error of an unknown key names the near ones
//	fmt.Println(c.Name, c.Solids.Typical, c.Basis("solids").Kind)
//
// A book never changes once made. Rows are returned as values; lists inside them as iterators.
//
// Files are TOML, one idea a file. Each table of a file is an array: [[coating]], [[material]], [[colour]] … Any file of a
// folder may hold rows of any table. Every row has a unique key, a basis (published, derived, common practice, from memory,
// assumption, invented), a source where it is published, and a doubt where there is one.
package tables
