package report

import (
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// outPurchase is a coating in one colour.
type outPurchase struct {
	Coating   outName                   `json:"coating" says:"what to buy"`
	Colour    *outName                  `json:"colour,omitempty" says:"in which colour; absent where it has none"`
	Parts     []string                  `json:"parts" says:"names of the parts that it is for"`
	Litres    outRange[quantity.Volume] `json:"litres,omitzero" says:"what the coats take"`
	ForPlaces outRange[quantity.Volume] `json:"litres_under_stands,omitzero" says:"of those, for places under stands beside the coats"`
	Need      quantity.Volume           `json:"need" says:"what to have: the typical litres and the stated reserve, rounded up"`
	Thinner   quantity.Volume           `json:"thinner,omitzero" says:"at the planned share of the need"`
	Buy       []outCans                 `json:"buy,omitempty" says:"cans to buy, the largest first"`
	Store     []outCans                 `json:"from_store,omitempty" says:"cans to take from the store"`
	Left      quantity.Volume           `json:"left_over,omitzero" says:"what stays in the cans"`
	Cost      quantity.Money            `json:"cost,omitzero" says:"of what is bought; absent where a price is not known"`
	IfOut     []outIfOut                `json:"if_out,omitempty" says:"what to buy when the shop is out of a size"`
	Mix       *outMix                   `json:"mix,omitempty" says:"components of the need, where the tin's ratio is known"`
	Pots      []outPot                  `json:"mix_at_once,omitempty" says:"how much to mix at once, where the pot life is known"`
	Actives   []outActive               `json:"biocides,omitempty" says:"biocides that a tin of the type names; its label decides"`
	Notes     []outFinding              `json:"notes,omitempty" says:"what else belongs to the cans"`
}

// outCans is a number of cans of one size.
type outCans struct {
	Size  quantity.Volume `json:"size" says:"of one can"`
	Count int             `json:"count" says:"how many"`
	Batch string          `json:"batch,omitempty" says:"batch number"`
	Price quantity.Money  `json:"price,omitzero" says:"of one can"`
}

// outIfOut is what to buy without one size.
type outIfOut struct {
	Out  quantity.Volume `json:"size" says:"the size that is out of stock"`
	Buy  []outCans       `json:"buy,omitempty" says:"cans to buy instead; absent: nothing else on sale holds it"`
	Cost quantity.Money  `json:"cost,omitzero" says:"of these"`
}

// outMix is what to pour of each component.
type outMix struct {
	Base         quantity.Volume `json:"base" says:"by volume"`
	Hardener     quantity.Volume `json:"hardener" says:"by volume"`
	BaseMass     quantity.Mass   `json:"base_mass,omitzero" says:"by weight"`
	HardenerMass quantity.Mass   `json:"hardener_mass,omitzero" says:"by weight"`
}

// outPot is how much is mixed at once.
type outPot struct {
	Part     string            `json:"part" says:"name of the part"`
	Litres   quantity.Volume   `json:"litres,omitzero" says:"of mixed paint"`
	Life     quantity.Duration `json:"pot_life,omitzero" says:"on the day of the work"`
	Findings []outFinding      `json:"findings,omitempty" says:"how that was found"`
}

// outActive is a biocide of a type.
type outActive struct {
	Key     string                   `json:"key" says:"key of the biocide"`
	Name    string                   `json:"name" says:"its name"`
	CAS     string                   `json:"cas,omitempty" says:"CAS number"`
	Content outRange[quantity.Share] `json:"content,omitzero" says:"by weight of the wet paint"`
}

// outSupply is one thing that is used up.
type outSupply struct {
	Key   string      `json:"key" says:"key of the row"`
	Name  string      `json:"name" says:"what it is"`
	Count int         `json:"count" says:"whole units to buy"`
	Unit  string      `json:"unit" says:"what is counted"`
	Uses  *outNumbers `json:"uses,omitempty" says:"what the work takes, in that unit"`
	Rate  *outNumbers `json:"rate,omitempty" says:"units for one of what it is counted by"`
	Per   string      `json:"per" says:"what it is counted by: an amount of the job, or m2 of the work named"`
	Basis []outBasis  `json:"basis,omitempty" says:"what the rate rests on"`
}

// outWaste is the paint that comes off.
type outWaste struct {
	Mass     outRange[quantity.Mass] `json:"mass,omitzero" says:"its two ends, as far as the film is known"`
	Findings []outFinding            `json:"findings" says:"what is in it, and what was not measured"`
}

func (c *composer) outPurchases() []outPurchase {
	var out []outPurchase
	for _, g := range c.job.Buy {
		x := outPurchase{
			Coating: coating(g.Coating), Colour: c.nameOf(g.Colour, c.colour), Parts: g.Parts, Litres: ranged(g.Range), ForPlaces: ranged(g.Patches),
			Need: up2(g.Need), Thinner: up2(g.Thinner), Buy: outCansOf(g.Items), Store: outCansOf(g.FromStock), Left: up2(g.Left), Cost: g.Cost,
			Actives: c.outActives(g.Coating), Notes: c.outFindings(g.Notes),
		}
		for _, s := range g.IfOut {
			x.IfOut = append(x.IfOut, outIfOut{s.Out, outCansOf(s.Instead.Items), s.Instead.Cost})
		}
		if m := g.Mixed; m.Base.Given() {
			x.Mix = &outMix{m.Base, m.Hardener, m.BaseMass, m.HardenerMass}
		}
		for _, p := range g.Pots {
			x.Pots = append(x.Pots, outPot{p.Part, p.Litres, p.Life, c.outFindings(p.Findings)})
		}
		out = append(out, x)
	}
	return out
}

// up2 rounds litres up to two places, as they are bought.
func up2(v quantity.Volume) quantity.Volume { return v.To(quantity.Litre, 2, quantity.Up) }

func outCansOf(items []coverage.Item) []outCans {
	var out []outCans
	for _, i := range items {
		out = append(out, outCans{i.Can.Size, i.Count, i.Can.Batch, i.Can.Price})
	}
	return out
}

func (c *composer) outActives(k tables.Coating) []outActive {
	var out []outActive
	for a := range k.Actives() {
		if row, err := c.job.Book.Active(a.Key); err == nil {
			out = append(out, outActive{row.Key, row.Name, row.CAS, ranged(a.Content)})
		}
	}
	return out
}

func (c *composer) outSupplies() []outSupply {
	var out []outSupply
	for _, s := range c.job.Supplies {
		out = append(out, outSupply{
			s.Supply.Key, s.Supply.Name, s.Buy, s.Supply.Unit, plainRange(s.Uses), plainRange(s.Supply.Rate), s.Supply.Per, c.outBases([]finding.Basis{s.Supply.Basis("rate")}),
		})
	}
	return out
}

func (c *composer) outWaste() *outWaste {
	if len(c.job.OfWaste) == 0 {
		return nil
	}
	return &outWaste{ranged(c.job.Waste), c.outFindings(c.job.OfWaste)}
}
