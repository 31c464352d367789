package compat

import (
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Purpose says why a layer is in a stack.
type Purpose string

// The purposes. The empty Purpose counts as Found.
const (
	Found     Purpose = "found"     // it was there before the work
	Undercoat Purpose = "undercoat" // primer, barrier, tie coat, sealer
	Signal    Purpose = "signal"    // the coat whose colour tells that the coats above are worn through
	Working   Purpose = "working"   // the coats that work and wear
	Extra     Purpose = "extra"     // one more working coat, at edges and waterline
)

// Layer is one layer of paint, of one or more coats.
//
// Film is the dry film of the whole layer; the zero range is "not measured". Age is the time since the layer's last coat, for a
// fresh one; not given means old, past every window. An empty State counts as "not reported", never as sound.
type Layer struct {
	Coating tables.Coating
	Colour  string // key of a colour; empty when not reported
	Film    quantity.Range[quantity.Film]
	State   tables.Condition // as found; sound for a new layer
	Coats   int
	Age     quantity.Duration
	KnownBy string // log, wet thumb, solvent rub, laboratory, a guess …
	For     Purpose
}

// Stack is the layers on one surface, bottom to top.
type Stack []Layer

// PatchLayer is one layer of the stepped patch where a stand or a block stood.
type PatchLayer struct {
	Layer   Layer
	MayLap  bool // may go onto the same layer beside the patch
	Finding finding.Finding
}
