// Package hullform answers one question: what is the area of this bottom, by every way of measuring that it was measured by?
//
//	s := hullform.Shape{Kind: "fin-keel-yacht", Length: l, Beam: b, Draft: t, Girths: stations, Pieces: pieces}
//	all, err := hullform.Reckon(book, s) // offsets, tape, formulas, those that may decide first
//	all[0].Area                          // low, typical, high, of hull and pieces
//	all[0].Name, all[0].Basis
//	all[i].Decides, all[i].Findings      // whether a method may decide, and why it is shown only
//
// Which methods there are, in which order they decide and in which range they may, are rows of area_method; kinds of keel, rudder,
// tunnel and opening are rows of piece. Lines are integrated as float64 in metres and become an area once, rounded up to 0.01 of its unit.
//
// Not covered: the volume and trim of the hull, and the area of a hull that heels.
package hullform
