package report

import (
	"math"
	"slices"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// outScheme is the layers of one part.
type outScheme struct {
	Part     string        `json:"part" says:"name of the part"`
	Zone     string        `json:"zone" says:"key of its zone"`
	Coating  outName       `json:"coating" says:"the type that it ends with"`
	Way      *outWay       `json:"way,omitempty" says:"the work before the first coat"`
	Layers   []outLayer    `json:"layers,omitempty" says:"from the bottom: the films that stay, then the coats that are put on"`
	Colours  []outShows    `json:"colours,omitempty" says:"what it means when a colour shows, from the bottom"`
	Steps    []outContrast `json:"colour_steps,omitempty" says:"how far neighbouring colours are apart, from the bottom"`
	Forecast *outForecast  `json:"forecast,omitempty" says:"how long it lasts, and where to look from when"`
	Places   []outStepped  `json:"places_under_stands,omitempty" says:"how a place where she stood is stepped, the lowest layer first"`
	Findings []outFinding  `json:"findings,omitempty" says:"what is said of the layers"`
}

// outLayer is one layer, of one or more coats.
type outLayer struct {
	Number     int                       `json:"number" says:"from the bottom, films that stay counted"`
	Role       roleWord                  `json:"role" says:"what it is for; found: it stays"`
	Coating    outName                   `json:"coating" says:"what it is of"`
	Colour     *outName                  `json:"colour,omitempty" says:"its colour; absent where it has none or none is known"`
	State      string                    `json:"state,omitempty" says:"condition of a film that stays"`
	Film       outRange[quantity.Film]   `json:"film,omitzero" says:"dry film of the whole layer; of a barrier that is put on the film asked for, which its coats reach at their typical film"`
	Coats      int                       `json:"coats,omitempty" says:"coats that are put on"`
	FilmACoat  outRange[quantity.Film]   `json:"film_a_coat,omitzero" says:"dry film of one coat"`
	WetFilm    quantity.Film             `json:"wet_film,omitzero" says:"wet film of one coat at the typical film and solids, thinned as planned"`
	Spread     quantity.Spread           `json:"spreading_rate,omitzero" says:"theoretical, at the typical film and solids, before losses"`
	Solids     outRange[quantity.Share]  `json:"solids,omitzero" says:"by volume"`
	Area       outRange[quantity.Area]   `json:"area,omitzero" says:"that it covers"`
	Litres     outRange[quantity.Volume] `json:"litres,omitzero" says:"of all its coats"`
	LitresFill outRange[quantity.Volume] `json:"litres_in_profile,omitzero" says:"of those, what a blasted surface swallows"`
	Zones      []outLayerZone            `json:"zones,omitempty" says:"where it goes on, with the share of each zone"`
	Next       *outWindow                `json:"next_coat,omitempty" says:"when the next coat may follow"`
}

// outLayerZone is a layer on one zone.
type outLayerZone struct {
	Zone   outName                   `json:"zone" says:"the zone"`
	Area   outRange[quantity.Area]   `json:"area,omitzero" says:"its area"`
	Litres outRange[quantity.Volume] `json:"litres,omitzero" says:"its share of the litres, by area"`
}

// outWindow is when the next coat may follow.
type outWindow struct {
	After         quantity.Duration    `json:"after,omitzero" says:"not before"`
	By            quantity.Duration    `json:"by,omitzero" says:"not later, else it is abraded first; absent: no limit"`
	AntifoulingBy quantity.Duration    `json:"antifouling_by,omitzero" says:"likewise for a one-pack antifouling"`
	At            quantity.Temperature `json:"at,omitzero" says:"temperature at which these are stated"`
}

// outShows is a colour and what it means when it shows.
type outShows struct {
	Colour  *outName   `json:"colour,omitempty" says:"the colour"`
	Coating outName    `json:"coating" says:"the layer's coating"`
	Role    roleWord   `json:"role" says:"what the layer is for"`
	Shows   outFinding `json:"shows" says:"what it means"`
}

// outContrast is two neighbouring colours.
type outContrast struct {
	Top   outName `json:"top" says:"the upper colour"`
	Below outName `json:"below" says:"the one below it"`
	Step  float64 `json:"lightness_step" says:"difference in lightness, CIE L*, 0 to 100"`
	Told  bool    `json:"told_apart" says:"false: too little to be told apart"`
	Clear bool    `json:"clear" says:"true: seen from a dinghy"`
}

// outStepped is one layer of the patch where a stand stood.
type outStepped struct {
	Coating outName    `json:"coating" says:"the layer"`
	MayLap  bool       `json:"may_lap" says:"true: it may go onto the same layer beside the patch"`
	Finding outFinding `json:"finding" says:"how"`
}

func (c *composer) outSchemes() []outScheme {
	var out []outScheme
	for _, s := range c.job.Schemes {
		x := outScheme{
			Part: s.Part, Zone: s.Zone, Coating: coating(s.Coating), Way: c.outWay(s.Route), Layers: c.outLayers(s), Steps: c.outContrasts(s),
			Forecast: c.outForecast(s), Findings: c.outFindings(s.Findings),
		}
		for _, k := range s.Key {
			x.Colours = append(x.Colours, outShows{c.nameOf(k.Layer.Colour, c.colour), coating(k.Layer.Coating), role(k.Layer.For), *c.outFinding(k.Shows)})
		}
		for _, p := range s.Patch {
			x.Places = append(x.Places, outStepped{coating(p.Layer.Coating), p.MayLap, *c.outFinding(p.Finding)})
		}
		out = append(out, x)
	}
	return out
}

// outLayers encodes the layers of a scheme from the bottom: found films that stay, then what is put on.
func (c *composer) outLayers(s antifoul.Scheme) []outLayer {
	var out []outLayer
	for _, l := range s.Stack {
		if l.For == compat.Found || l.For == "" {
			out = append(out, outLayer{Number: len(out) + 1, Role: role(l.For), Coating: coating(l.Coating), Colour: c.nameOf(l.Colour, c.colour), State: state(l), Film: ranged(l.Film)})
		}
	}
	for _, k := range s.Coats {
		x := outLayer{
			Number: len(out) + 1, Role: role(k.Layer.For), Coating: coating(k.Layer.Coating), Colour: c.nameOf(k.Layer.Colour, c.colour), Film: ranged(k.Layer.Film),
			Coats: k.Layer.Coats, FilmACoat: ranged(k.Film), WetFilm: k.Wet.To(quantity.Micrometre, 0, quantity.Nearest), Area: ranged(k.Area),
			Litres: ranged(k.Litres), LitresFill: ranged(k.Fills), Zones: c.outLayerZones(s, k), Next: outWindowOf(k.Layer.Coating),
		}
		if !k.Layer.Coating.Laid() { // else it is bought by the area
			x.Spread, x.Solids = k.Theoretical.To(quantity.SquareMetrePerLitre, 1, quantity.Down), ranged(k.Layer.Coating.Solids)
		}
		out = append(out, x)
	}
	return out
}

// outLayerZones shares a coat's litres out among its zones.
func (c *composer) outLayerZones(s antifoul.Scheme, k antifoul.Coat) []outLayerZone {
	at := slices.IndexFunc(c.job.Areas, func(a antifoul.PartArea) bool { return a.Part == s.Part })
	if at < 0 {
		return nil
	}
	var in []coverage.ZoneRange
	for _, z := range c.job.Areas[at].Zones {
		if slices.Contains(k.Zones, z.Zone) {
			in = append(in, z)
		}
	}
	shares, err := coverage.ByZone(k.Litres, in)
	if err != nil {
		return nil // the areas of a job are above zero
	}
	var out []outLayerZone
	for i, v := range shares {
		out = append(out, outLayerZone{outName{v.Zone, c.zone(v.Zone)}, ranged(in[i].Area), ranged(v.Litres)})
	}
	return out
}

func outWindowOf(k tables.Coating) *outWindow {
	if !k.OvercoatMin.Given() {
		return nil
	}
	return &outWindow{k.OvercoatMin, k.OvercoatMax, k.AntifoulMax, k.At}
}

// outContrasts encodes the steps between neighbouring colours of the colour key.
func (c *composer) outContrasts(s antifoul.Scheme) []outContrast {
	var out []outContrast
	for i := 1; i < len(s.Key); i++ {
		top, errTop := c.job.Book.Colour(s.Key[i].Layer.Colour)
		below, errBelow := c.job.Book.Colour(s.Key[i-1].Layer.Colour)
		if errTop != nil || errBelow != nil {
			continue
		}
		told, clearly := antifoul.Apart(c.job.Book, top, below)
		out = append(out, outContrast{outName{top.Key, top.Name}, outName{below.Key, below.Name}, digits(math.Abs(top.Lightness - below.Lightness)), told, clearly})
	}
	return out
}
