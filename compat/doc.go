// Package compat answers one question: what may touch what, and by which route can one get from this bottom to that one?
//
// It owns the layer, the stack of layers and the part that carries one. Rows decide, this package applies them: a new coating,
// metal, old film or pair is a row of the tables.
//
//	hull := compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: found}
//	fs := compat.OnMaterial(book, want, hull)     // may it be on this material?
//	fs = compat.Over(book, want, found[0])        // what does it take to put it over that?
//	for _, r := range compat.Routes(book, hull, want) {
//		fmt.Println(r.Steps, r.Effort.Typical)    // cheapest first
//	}
//
// Who asks for many coatings on one part makes a [Surface] once with [On].
//
// Precedence: the rule of the metal, then the state of the old coat, then the same over itself, then the pair. A pair may be
// forbidden while the boat still has a way, strip; what a metal forbids no way lifts.
//
// Where the rules stand:
//
//	what a material takes, barrier, preparation    materials.toml    common practice; copper on aluminium: class rule for light craft, 303.2
//	state of an old film                           conditions.toml   common practice
//	coat over coat                                 overcoats.toml    common practice
//	work and hours                                 steps.toml        work rates by memory of practice
//	words of every rule                            rules_compat.toml
//
// Not covered: contact of bare metals, the law, whether a type suits the boat's use, and what a paint's own data sheet says where
// it differs: own tables are for that. A barrier on a sound GRP hull, as prevention, is a wish and not a need: no route adds it.
package compat
