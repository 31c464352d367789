package house

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// self is this package. It holds only checks, so it stands on the top floor:
// it may look at everything and nothing may lean on it.
const self = "antifoul/internal/house"

// top is the floor of the examples and of this package.
const top = 6

// room is one package of the house.
type room struct {
	floor int
	path  string   // relative to the module
	next  []string // rooms on the same floor it may import
}

// rooms is the house, from the ground up. Beside each room stands the one
// question it answers. Whatever lies in examples stands on the top floor.
func rooms() []room {
	return []room{
		// What is a length, an area, a film, a volume, and how is each written and read?
		{0, "tables/quantity", nil},
		// What does every judgement and every fault look like?
		{0, "tables/finding", []string{"tables/quantity"}},
		// How is one table of a TOML file read, with every fault at once?
		{0, "tables/entry", []string{"tables/quantity", "tables/finding"}},

		// What does the trade know, and on what basis?
		{1, "tables", nil},

		// What is the area of this hull form?
		{2, "coverage/hullform", nil},
		// Is the film that was asked for there?
		{2, "coverage/gauge", nil},
		// How much: area, spread, wet film, litres, cans, patches, waste?
		{2, "coverage", []string{"coverage/hullform"}},
		// Which metals may share the water?
		{2, "compat/galvanic", nil},
		// What is on her, and may it stay?
		{2, "compat/oldfilm", nil},
		// What may touch what, and by which route does one get there?
		{2, "compat", []string{"compat/galvanic", "compat/oldfilm"}},

		// How long does the film last, and what will the colours tell?
		{3, "antifoul/wear", nil},
		// How much biocide is in the film and leaves it?
		{3, "antifoul/leach", nil},
		// What is allowed where and when?
		{3, "antifoul/law", nil},
		// What does growth cost?
		{3, "antifoul/drag", nil},
		// What was seen on her, and what does it ask for?
		{3, "antifoul/survey", nil},
		// What does it come to in money?
		{3, "antifoul/cost", nil},
		// May paint go on in this hour?
		{3, "antifoul/weather", nil},
		// What was really done, and can it have been so?
		{3, "antifoul/joblog", nil},
		// On which days does each coat go on?
		{3, "antifoul/calendar", []string{"antifoul/weather"}},

		// Which one, and what is the whole job?
		{4, "antifoul", nil},

		// How is it told?
		{5, "antifoul/report", nil},

		// Does the module still stand as it was drawn?
		{top, self, nil},
	}
}

// find returns the room in which a package stands. Helpers in X/internal stand
// on the floor of X. Examples do not get helpers of their own: each is what an
// outsider would write.
func find(path string) (room, bool) {
	for _, r := range rooms() {
		if r.path == path {
			return r, true
		}
	}
	owner, isHelper := ownerOf(path)
	if inExamples(path) {
		return room{top, path, nil}, !isHelper
	}
	if !isHelper {
		return room{}, false
	}
	r, ok := find(owner)
	return room{r.floor, path, nil}, ok
}

// ownerOf returns X for X/internal/…, the innermost such X.
func ownerOf(path string) (owner string, isHelper bool) {
	parts := strings.Split(path, "/")
	for i, p := range slices.Backward(parts) {
		if p == "internal" {
			return strings.Join(parts[:i], "/"), true
		}
	}
	return "", false
}

func inExamples(path string) bool {
	return path == "examples" || strings.HasPrefix(path, "examples/")
}

// Floors returns one sentence for each breach of the floors, sorted, and none
// when the house stands. imports maps each package to the packages of this
// module that its non-test files import; all paths are relative to the module.
//
// A breach is one of these:
//  1. a package that stands on no floor;
//  2. an import from a higher floor;
//  3. an import from the same floor that is not named among the rooms. A package
//     may always import its own helpers in internal, and these each other.
//
// Packages of the house that are not in imports are no breach. That internal
// packages are used only in their own tree is left to the go command.
//
// Basis: common practice.
func Floors(imports map[string][]string) []string {
	var breaches []string
	for _, from := range slices.Sorted(maps.Keys(imports)) {
		r, ok := find(from)
		if !ok {
			breaches = append(breaches, name(from)+" stands on no floor")
			continue
		}
		for _, to := range slices.Compact(slices.Sorted(slices.Values(imports[from]))) {
			if why := breach(r, to); why != "" {
				breaches = append(breaches, why)
			}
		}
	}
	return breaches
}

// breach says why a room may not import a package, or nothing if it may.
func breach(from room, path string) string {
	to, ok := find(path)
	switch {
	case !ok:
		return fmt.Sprintf("%s (floor %d) imports %s, which stands on no floor", name(from.path), from.floor, name(path))
	case to.floor > from.floor:
		return fmt.Sprintf("%s (floor %d) imports %s (floor %d): imports only point down", from.path, from.floor, path, to.floor)
	case to.floor == from.floor && !slices.Contains(from.next, path) && !ownHelper(from.path, path):
		return fmt.Sprintf("%s imports %s, both on floor %d: this sideways import is not named", from.path, path, to.floor)
	}
	return ""
}

// ownHelper reports whether path is a helper of from or of the same owner.
func ownHelper(from, path string) bool {
	owner, isHelper := ownerOf(path)
	if !isHelper {
		return false
	}
	if o, also := ownerOf(from); also {
		from = o
	}
	return owner == from
}

// name gives the module's root package a name that can be read.
func name(path string) string {
	if path == "" {
		return "the module's root package"
	}
	return path
}
