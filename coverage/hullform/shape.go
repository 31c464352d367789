package hullform

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// Shape is what is known of the size of one hull, and of the pieces of the whole boat. A value that is not given stays the zero value.
type Shape struct {
	Kind                string                   // key of a hull form
	Length, Beam, Draft quantity.Length          // on the waterline, greatest, to the bottom of the keel; of one hull
	WaterlineBeam       quantity.Length          // greatest beam on the waterline; not given: Beam
	CanoeDraft          quantity.Length          // draught of the hull without its keel; not given: the formulas that want it are left out
	Mass                quantity.Mass            // of the whole boat
	Midship             quantity.Share           // area of the midship section of the hull without its keel, of its beam × draught
	Hulls               int                      // 0: as the hull form has
	Girths              []Station                // of one hull
	Offsets             []Section                // of one hull
	Pieces              []Piece                  // of the whole boat
	Known               map[string]quantity.Area // measured areas by zone: they stand for the pieces of those zones
}

// hulls is how many hulls she has.
func (s Shape) hulls(form tables.HullForm) int {
	switch {
	case s.Hulls > 0:
		return s.Hulls
	case form.Hulls > 0:
		return form.Hulls
	}
	return 1
}

// feet reports whether the boat was measured in feet, so that areas are told in square feet.
func (s Shape) feet() bool {
	u := s.Length.Unit()
	if !s.Length.Given() && len(s.Girths) > 0 {
		u = s.Girths[0].Girth.Unit()
	}
	return u == quantity.Foot || u == quantity.Inch
}
