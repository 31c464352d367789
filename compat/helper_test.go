package compat_test

import (
	"os"
	"slices"
	"testing"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// book reads the tables as they stand in the folder; Default would hide a fault.
func book(tb testing.TB) *tables.Book {
	tb.Helper()
	b, err := tables.Load(os.DirFS("../tables/data"))
	if err != nil {
		tb.Fatalf("the embedded tables do not load:\n%v", err)
	}
	return b
}

func coating(tb testing.TB, b *tables.Book, key string) tables.Coating {
	tb.Helper()
	c, err := b.Coating(key)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

// sound is a layer as found, sound and measured.
func sound(tb testing.TB, b *tables.Book, key string, um int64) compat.Layer {
	tb.Helper()
	return compat.Layer{Coating: coating(tb, b, key), State: tables.Sound, Film: quantity.Exactly(quantity.Micrometre.N(um)), Coats: 2, For: compat.Found}
}

func bare(tb testing.TB, b *tables.Book) compat.Stack {
	tb.Helper()
	return compat.Stack{{Coating: coating(tb, b, "bare"), State: tables.Sound}}
}

func fresh(tb testing.TB, b *tables.Book, key string, why compat.Purpose, colour string) compat.Layer {
	tb.Helper()
	c := coating(tb, b, key)
	return compat.Layer{Coating: c, Film: c.Film, State: tables.Sound, Coats: 1, For: why, Colour: colour}
}

// one returns the only finding of the rule.
func one(tb testing.TB, l finding.List, rule finding.ID) finding.Finding {
	tb.Helper()
	var hits finding.List
	for _, f := range l {
		if f.Rule == rule {
			hits = append(hits, f)
		}
	}
	if len(hits) != 1 {
		tb.Fatalf("%d findings of rule %s, want 1, in %s", len(hits), rule, rules(l))
	}
	return hits[0]
}

// rules lists rule and verdict of each finding.
func rules(l finding.List) []string {
	var out []string
	for _, f := range l {
		out = append(out, string(f.Rule)+"="+f.Verdict.String())
	}
	return out
}

// actions lists the work of steps; a coat is followed by its key.
func actions(steps []finding.Step) []string {
	var out []string
	for _, s := range steps {
		a := string(s.Do)
		if s.Coating != "" {
			a += " " + s.Coating
		}
		out = append(out, a)
	}
	return out
}

// next lists the coatings that can go on: all but old films.
func next(b *tables.Book) []tables.Coating {
	return slices.DeleteFunc(slices.Collect(b.Coatings()), func(c tables.Coating) bool { return c.Role == tables.OldFilm })
}

// wanted lists the coatings that a bottom can end with.
func wanted(b *tables.Book) []tables.Coating {
	return slices.DeleteFunc(slices.Collect(b.Coatings()), func(c tables.Coating) bool { return !c.Ranked() })
}
