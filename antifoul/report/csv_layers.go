package report

import (
	"io"
	"strconv"

	"boatyard.example/bottomwork/tables/quantity"
)

// writeLayersCSV writes one row for each zone of each layer of each part, from the bottom up. The paint of a row is that of all its coats on that
// zone; the rows of a layer add up to all of it to within the rounding. Places under stands are not in it: what they take stands in what to buy.
func (c *composer) writeLayersCSV(w io.Writer) error {
	film, volume := either(c.units, quantity.Micrometre, quantity.Mil), either(c.units, quantity.Litre, quantity.USGallon)
	area, spread := either(c.units, quantity.SquareMetre, quantity.SquareFoot), either(c.units, quantity.SquareMetrePerLitre, quantity.SquareFootPerUSGallon)
	filmPlaces, volumePlaces := int32(0), int32(2)
	if c.units == quantity.US {
		filmPlaces, volumePlaces = 1, 3
	}
	s := sheet{head: []string{
		"part", "zone", "layer", "role", "coating", "coating key", "colour", "coats",
		headed("dry film a coat low", film), headed("dry film a coat typical", film), headed("dry film a coat high", film), headed("wet film a coat", film),
		headed("spreading rate", spread), headed("area typical", area),
		headed("paint low", volume), headed("paint typical", volume), headed("paint high", volume),
		headed("next coat after", quantity.Hour), headed("next coat by", quantity.Hour), headed("antifouling by", quantity.Hour), headed("window stated at", either(c.units, quantity.Celsius, quantity.Fahrenheit)),
	}}
	for _, p := range c.outSchemes() {
		for _, l := range p.Layers {
			colour := ""
			if l.Colour != nil {
				colour = l.Colour.Name
			}
			dry := l.FilmACoat
			if l.Coats == 0 {
				dry = l.Film // of a film that stays
			}
			window := outWindow{}
			if l.Next != nil {
				window = *l.Next
			}
			zones := l.Zones
			if len(zones) == 0 {
				zones = []outLayerZone{{}}
			}
			for _, z := range zones {
				s.rows = append(s.rows, []string{
					word(p.Part), word(z.Zone.Name), strconv.Itoa(l.Number), string(l.Role), word(l.Coating.Name), word(l.Coating.Key), word(colour), count(l.Coats),
					number(dry.Low, film, filmPlaces, quantity.Nearest), number(dry.Typical, film, filmPlaces, quantity.Nearest), number(dry.High, film, filmPlaces, quantity.Nearest), number(l.WetFilm, film, filmPlaces, quantity.Nearest),
					number(l.Spread, spread, 1, quantity.Down), number(z.Area.Typical, area, 2, quantity.Up),
					number(z.Litres.Low, volume, volumePlaces, quantity.Up), number(z.Litres.Typical, volume, volumePlaces, quantity.Up), number(z.Litres.High, volume, volumePlaces, quantity.Up),
					number(window.After, quantity.Hour, 1, quantity.Up), number(window.By, quantity.Hour, 1, quantity.Down), number(window.AntifoulingBy, quantity.Hour, 1, quantity.Down),
					number(window.At, either(c.units, quantity.Celsius, quantity.Fahrenheit), 0, quantity.Nearest),
				})
			}
		}
	}
	return s.write(w)
}
