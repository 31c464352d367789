package law

import (
	"slices"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// everywhere is the key of the place that all others lie in. Nobody keeps a boat there: as a berth it counts as unknown.
const everywhere = tables.World

// nowhere is what a finding is against when no place was given.
const nowhere = "a place that was not given"

// spot is one place and role of the boat, with what the book knows about the place.
type spot struct {
	name   string
	place  string   // its key, empty when the book does not hold it
	chain  []string // the place and all it lies in, up to the world
	role   string   // empty: any
	paints bool     // she is painted here, or nobody said that she is painted elsewhere
	waters []string // what the berth says, and what the place says; empty: not given
	read   quantity.Date
	given  bool // a place was named
}

// spotsOf returns a spot for each berth, and one that stands for the place nobody named when no berth says where she is
// painted or kept.
func spotsOf(b *tables.Book, at []Berth) []spot {
	painted, home := false, false
	for _, x := range at {
		painted = painted || x.Role == "painted"
		home = home || x.Role != "visited" && x.Role != "cleaned"
	}
	var out []spot
	for _, x := range at {
		s := spot{name: x.Place, role: x.Role, given: true, paints: x.Role == "painted" || !painted && x.Role == "kept"}
		if !slices.Contains(tables.BerthRoles(), x.Role) {
			s.role = "" // Check tells of it; here it narrows nothing
		}
		if slices.Contains(tables.Waters(), x.Water) {
			s.waters = append(s.waters, x.Water)
		}
		s.find(b, x.Place)
		out = append(out, s)
	}
	if !home {
		out = append(out, spot{name: nowhere, chain: []string{everywhere}})
	}
	return out
}

// find looks the place up and climbs to the world.
func (s *spot) find(b *tables.Book, key string) {
	if key == "" {
		s.name, s.given = nowhere, false
	}
	for key != "" && !slices.Contains(s.chain, key) { // a book has no places that lie in a ring; this ends all the same
		p, err := b.Place(key)
		if err != nil {
			break
		}
		if len(s.chain) == 0 {
			s.name = p.Name
			if key != everywhere {
				s.place = key
			}
		}
		s.chain = append(s.chain, key)
		if p.Water != "" && !slices.Contains(s.waters, p.Water) {
			s.waters = append(s.waters, p.Water)
		}
		key = p.Within
	}
	if !slices.Contains(s.chain, everywhere) {
		s.chain = append(s.chain, everywhere)
	}
}

// plays reports whether the spot has one of the law's roles.
func (s *spot) plays(roles []string) bool {
	return len(roles) == 0 || s.role == "" || slices.Contains(roles, s.role) || s.paints && slices.Contains(roles, "painted")
}
