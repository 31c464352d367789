package tables

import (
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Span is the two ends between which a plain number lies. The zero Span is not given.
type Span struct{ Low, High float64 }

// Given reports whether the row gave the span.
func (s Span) Given() bool { return s != Span{} }

// Holds reports whether x lies in the span, the ends included. A span that is not given holds everything.
func (s Span) Holds(x float64) bool { return !s.Given() || x >= s.Low && x <= s.High }

// readSpan reads [low, high].
func readSpan(r *entry.Row, key string, low, high float64) Span {
	a, b, _ := r.Pair(key, low, high)
	return Span{a, b}
}

// HullForm is a kind of hull, for the wetted area from main dimensions:
//
//	area = factor × L × (B + T)
//
// with L on the waterline, B the beam, T the draught to the bottom of the keel, all of one hull.
type HullForm struct {
	Row
	Factor     quantity.Range[float64]
	Waterline  quantity.Range[float64] // share of the area in the waterline strip
	Edges      quantity.Range[float64] // share of the area at leading edges, chines, keel and rudder edges
	Hulls      int                     // how many hulls such a boat has, where nobody says: 1 or 2
	LengthBeam Span                    // L ÷ B that such a hull has; outside, somebody mixed something up
	DraftBeam  Span                    // T ÷ B likewise
}

func readHullForm(r *entry.Row) HullForm {
	h := HullForm{Row: readRow(r), Hulls: 1, LengthBeam: readSpan(r, "length_beam", 1, 40), DraftBeam: readSpan(r, "draft_beam", 0.01, 5)}
	h.Factor, _ = r.Floats("factor", 0.2, 2)
	h.Waterline, _ = r.Floats("waterline_share", 0, 0.5)
	h.Edges, _ = r.Floats("edges_share", 0, 0.5)
	if n, ok := r.Int("hulls", 1, 2); ok {
		h.Hulls = n
	}
	r.Need("[low, typical, high]", "factor", "waterline_share", "edges_share")
	return h
}

// AreaMethod is a way of finding the area of a bottom. Its key is known to the code that reckons by it.
type AreaMethod struct {
	Row
	Order        int                     // the method of the lowest order that can be reckoned decides; 0: it is shown and never decides
	Bare         bool                    // it gives the hull alone; keel, rudder and other pieces are added
	Factor       quantity.Range[float64] // what its answer is multiplied by: how far it is believed
	LengthBeam   Span                    // L ÷ B for which it was made
	BeamDraft    Span                    // B ÷ T
	LengthVolume Span                    // L ÷ cube root of the volume
	Block        Span                    // volume ÷ (L × B × T)
	Midship      Span                    // area of the midship section ÷ (B × T)
	forms, wants []string
}

// For reports whether the method may decide for the kind of hull.
func (m AreaMethod) For(form string) bool { return len(m.forms) == 0 || slices.Contains(m.forms, form) }

// Wants lists the zones whose area must be known from elsewhere before the method may decide.
func (m AreaMethod) Wants() []string { return slices.Clone(m.wants) }

func readAreaMethod(r *entry.Row) AreaMethod {
	m := AreaMethod{
		Row: readRow(r), Bare: r.YesNo("bare").True(), Factor: quantity.Exactly(1.0), forms: r.Texts("for"), wants: r.Texts("wants"),
		LengthBeam: readSpan(r, "length_beam", 1, 40), BeamDraft: readSpan(r, "beam_draft", 0.1, 40),
		LengthVolume: readSpan(r, "length_volume", 1, 30), Block: readSpan(r, "block", 0.1, 1), Midship: readSpan(r, "midship", 0.1, 1),
	}
	m.Order, _ = r.Int("order", 0, 100)
	if f, ok := r.Floats("factor", 0.5, 2); ok {
		m.Factor = f
	}
	r.Need("0 for a method that is only shown, or its place among those that decide", "order")
	return m
}

// PieceShape says by which formula the area of a piece is reckoned.
type PieceShape string

// The shapes of pieces, with the lengths that each wants.
const (
	Plate     PieceShape = "plate"     // factor × length × height; the factor counts both sides
	Rectangle PieceShape = "rectangle" // factor × length × width
	Cylinder  PieceShape = "cylinder"  // factor × π × width × length
	Ellipsoid PieceShape = "ellipsoid" // factor × surface of a body of length, width and height
	Disc      PieceShape = "disc"      // factor × π ÷ 4 × width²
)

var pieceShapes = []string{string(Plate), string(Rectangle), string(Cylinder), string(Ellipsoid), string(Disc)}

// PieceRow is a kind of piece that stands on a hull, or an opening in it.
type PieceRow struct {
	Row
	Shape   PieceShape
	Factor  quantity.Range[float64]
	Zone    string // where its area counts
	Counted bool   // factor × L × (B + T) has it in already
	Off     bool   // its area is taken away: an opening
}

func readPieceRow(r *entry.Row) PieceRow {
	p := PieceRow{Row: readRow(r), Shape: PieceShape(r.Word("shape", pieceShapes...)), Zone: r.Text("zone"), Counted: r.YesNo("counted").True(), Off: r.YesNo("off").True()}
	p.Factor, _ = r.Floats("factor", 0.01, 4)
	r.Need("one of plate, rectangle, cylinder, ellipsoid, disc", "shape")
	r.Need("[low, typical, high]", "factor")
	r.Need("the key of a zone", "zone")
	if p.Off && p.Counted {
		r.Fault(finding.ErrImpossible, "off", "true beside counted", "one of the two: what is cut out of the hull is no part of it")
	}
	return p
}
