package antifoul

import "fmt"

// Tier is how a type stands for a part. No score lifts a type over its tier.
type Tier uint8

// The tiers, from the best. The zero Tier is invalid.
const (
	Suits     Tier = iota + 1 // allowed, suits the use, goes over what is there after ordinary preparation
	AfterWork                 // allowed and suits, after stripping, blasting, priming, a barrier, sealer or tie coat
	AskFirst                  // nobody knows whether it holds on this surface or over this film: ask before anything is bought
	Unsuited                  // allowed, but the use speaks against it
	Barred                    // forbidden by metal, by law, or by what would have to lie under it
)

var tierWords = [...]string{Suits: "fine", AfterWork: "after work", AskFirst: "ask first", Unsuited: "unsuited", Barred: "forbidden"}

// String returns the tier's word.
func (t Tier) String() string {
	if t < Suits || t > Barred {
		return fmt.Sprintf("invalid tier %d", uint8(t))
	}
	return tierWords[t]
}
