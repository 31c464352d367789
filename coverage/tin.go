package coverage

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Tin is what the label and the store say of one coating. A value that is not given stays the zero value.
type Tin struct {
	Coating   string              // key of a coating
	Ratio     Ratio               // base to hardener, by volume
	Densities [2]quantity.Density // of base and hardener
	PotLife   quantity.Duration
	At        quantity.Temperature // temperature at which the pot life is stated
	Kits      []Kit                // on sale; they stand in place of cans
	Store     []Stored             // cans of mixed or one-pack paint at hand
}

// Stored is a number of equal cans in the store.
type Stored struct {
	Size   quantity.Volume
	Count  int    // 0: one
	Colour string // key of a colour; empty: it suits any layer
	Batch  string
}

// Check returns every fault of the tin. The keys are relative to it: "coating", "ratio", "ratio.base", "density_base", "density_hardener",
// "pot_life", "pot_life_at", "kit[1].base", "store[1].size".
//
// The coating is one of the book. A ratio, densities and kits belong to a two-pack coating, and kits want the ratio. A pot life wants the
// temperature that it is stated at. Densities are given both or none, from 0.5 to 5 kg/L, and want the ratio. Kits are of at most 16 sizes
// and of one currency; so is the store of at most 16 sizes and 1000 cans.
func (x Tin) Check(b *tables.Book) finding.Faults {
	var faults finding.Faults
	bad := func(kind error, key, got, want string) {
		faults = append(faults, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	ratio := !x.Ratio.Base.IsZero() || !x.Ratio.Hardener.IsZero()
	if c, err := b.Coating(x.Coating); err != nil {
		var keys []string
		for c := range b.Coatings() {
			keys = append(keys, c.Key)
		}
		kind := finding.ErrUnknown
		if x.Coating == "" {
			kind = finding.ErrMissing
		}
		bad(kind, "coating", entry.Describe(x.Coating), finding.Suggest(x.Coating, keys))
	} else if c.Packs != 2 && (ratio || len(x.Kits) > 0 || x.PotLife.Given() || x.Densities[0].Given() || x.Densities[1].Given()) {
		bad(finding.ErrImpossible, "coating", entry.Describe(x.Coating), "a two-pack coating, since ratio, densities, kits or pot life are given")
	}
	if ratio {
		faults = append(faults, x.Ratio.Check().Under("", "ratio")...)
	} else if len(x.Kits) > 0 || x.Densities[0].Given() || x.Densities[1].Given() {
		bad(finding.ErrMissing, "ratio", "", `base to hardener by volume, "3:1", since kits or densities are given`)
	}
	for i, d := range x.Densities {
		switch {
		case !d.Given() && x.Densities[1-i].Given():
			bad(finding.ErrMissing, "density_"+components[i], "", "a density, \"1.2 kg/L\", since that of the "+components[1-i]+" is given")
		case d.Given() && (d.Cmp(leastDensity) < 0 || d.Cmp(mostDensity) > 0):
			bad(finding.ErrImpossible, "density_"+components[i], d.String(), fmt.Sprintf("a density from %s to %s", leastDensity, mostDensity))
		}
	}
	switch {
	case !x.PotLife.Given() && x.At.Given():
		bad(finding.ErrMissing, "pot_life", "", `a time, "2 h", since its temperature is given`)
	case x.PotLife.Given() && !x.At.Given():
		bad(finding.ErrMissing, "pot_life_at", "", `the temperature that it is stated at, "20 degC"`)
	case x.PotLife.Given():
		for _, f := range checkPotLife(x.PotLife, x.At, x.At) {
			if key := map[string]string{"life": "pot_life", "at": "pot_life_at"}[f.Key]; key != "" { // "today" is the same again
				f.Key = key
				faults = append(faults, f)
			}
		}
	}
	if ratio && len(x.Ratio.Check()) == 0 {
		for i, k := range x.Kits {
			if _, _, err := KitCan(x.Ratio, k); err != nil {
				faults = append(faults, ofKit(i, err)...)
			}
		}
	}
	for i, s := range x.Store {
		key := fmt.Sprintf("store[%d].", i+1)
		switch {
		case !s.Size.Given():
			bad(finding.ErrMissing, key+"size", "", `a volume, "2.5 L"`)
		case s.Size.Cmp(quantity.Millilitre.N(leastCan)) < 0 || s.Size.Cmp(quantity.Litre.N(mostNeed)) > 0:
			bad(finding.ErrImpossible, key+"size", s.Size.String(), "what is in a can")
		}
		if s.Count < 0 || s.Count > mostStock {
			bad(finding.ErrImpossible, key+"count", strconv.Itoa(s.Count), fmt.Sprintf("a count from 1 to %d", mostStock))
		}
		if s.Colour != "" {
			if _, err := b.Colour(s.Colour); err != nil {
				var keys []string
				for c := range b.Colours() {
					keys = append(keys, c.Key)
				}
				bad(finding.ErrUnknown, key+"colour", entry.Describe(s.Colour), finding.Suggest(s.Colour, keys))
			}
		}
	}
	if len(faults) == 0 {
		faults = x.checkCans()
	}
	return faults
}

// checkCans returns the faults that only kits or cans together have: too many of them, too many sizes, prices of two currencies.
func (x Tin) checkCans() finding.Faults {
	var faults finding.Faults
	count := 0
	sizes := make([]Can, len(x.Store))
	for i, s := range x.Store {
		count += max(s.Count, 1)
		sizes[i] = Can{Size: s.Size}
	}
	for _, n := range []struct {
		key string
		n   int
	}{{"kit", len(x.Kits)}, {"store", count}} {
		if n.n > mostStock {
			faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: n.key, Got: strconv.Itoa(n.n), Want: fmt.Sprintf("at most %d", mostStock)})
		}
	}
	if len(faults) > 0 {
		return faults
	}
	readKinds(&faults, "store", sizes)
	kits, _, _ := x.OnSale() // each is looked at before
	readPrices(&faults, kits, readKinds(&faults, "kit", kits))
	for i := range faults {
		faults[i].Key = strings.ReplaceAll(faults[i].Key, "on_sale[", "kit[")
	}
	return faults
}

// ofKit puts the faults of a kit under its place in the list.
func ofKit(i int, err error) finding.Faults {
	fs, _ := errors.AsType[finding.Faults](err) // KitCan has no other errors
	out := slices.Clone(fs)
	for k := range out {
		out[k].Key = fmt.Sprintf("kit[%d]", i+1) + strings.TrimPrefix(out[k].Key, "kit")
	}
	return out
}

var components = [2]string{"base", "hardener"}

// Cans returns the cans in the store that suit a layer of the colour.
func (x Tin) Cans(colour string) []Can {
	var out []Can
	for _, s := range x.Store {
		if s.Colour != "" && s.Colour != colour {
			continue
		}
		for range max(s.Count, 1) {
			out = append(out, Can{Size: s.Size, Batch: s.Batch})
		}
	}
	return out
}

// OnSale returns the kits as cans of mixed paint, with what each leaves over; nothing where no kits are given.
//
// Basis: derived, as KitCan.
func (x Tin) OnSale() ([]Can, finding.List, error) {
	var out []Can
	var notes finding.List
	for i, k := range x.Kits {
		c, fs, err := KitCan(x.Ratio, k)
		if err != nil {
			return nil, nil, ofKit(i, err)
		}
		out, notes = append(out, c), append(notes, fs...)
	}
	return out, notes, nil
}
