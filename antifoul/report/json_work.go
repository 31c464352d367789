package report

import (
	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/quantity"
)

// outWork is the order of work.
type outWork struct {
	Before string                      `json:"before" says:"what is looked at first"`
	Tasks  []outTask                   `json:"tasks" says:"in their order"`
	Launch []string                    `json:"before_launch,omitempty" says:"what comes after the last coat"`
	Hours  outRange[quantity.Duration] `json:"hours,omitzero" says:"of one hand, all tasks, without setting up, other work and waiting"`
	Hands  int                         `json:"hands" says:"hands at work"`
	Days   outRange[quantity.Duration] `json:"hours_together,omitzero" says:"of these hands together"`
}

// outTask is one piece of work.
type outTask struct {
	Number int                         `json:"number" says:"its place"`
	Parts  []string                    `json:"parts,omitempty" says:"names of the parts"`
	Do     string                      `json:"do,omitempty" says:"the work; absent where it puts a coat on"`
	Coat   *outTaskCoat                `json:"coat,omitempty" says:"the layer that it puts on"`
	Area   outRange[quantity.Area]     `json:"area,omitzero" says:"that is worked on"`
	Grit   string                      `json:"grit,omitempty" says:"the abrasive"`
	Says   string                      `json:"says,omitempty" says:"what to do, in a painter's words"`
	Hold   string                      `json:"hold,omitempty" says:"what must be true before going on"`
	Hours  outRange[quantity.Duration] `json:"hours,omitzero" says:"of one hand"`
	Wait   quantity.Duration           `json:"wait,omitzero" says:"that passes after each coat, or after the work"`
}

// outTaskCoat is the layer of a task.
type outTaskCoat struct {
	Role     roleWord                  `json:"role" says:"what it is for"`
	Coating  outName                   `json:"coating" says:"what it is of"`
	Colour   *outName                  `json:"colour,omitempty" says:"its colour"`
	Coats    int                       `json:"coats" says:"coats"`
	Zones    []outName                 `json:"zones,omitempty" says:"where"`
	WetFilm  quantity.Film             `json:"wet_film,omitzero" says:"of one coat"`
	Litres   outRange[quantity.Volume] `json:"litres,omitzero" says:"of all its coats"`
	Coldest  quantity.Temperature      `json:"surface_from,omitzero" says:"temperature of the surface, at least; and 3 degC above the dew point"`
	Warmest  quantity.Temperature      `json:"surface_to,omitzero" says:"temperature of the surface, at most"`
	NextCoat *outWindow                `json:"next_coat,omitempty" says:"when the next coat may follow"`
}

func (c *composer) outWork() *outWork {
	if len(c.job.Order) == 0 {
		return nil
	}
	hands := max(1, c.job.Boat.Work.Hands)
	out := &outWork{Before: lookFirst, Launch: c.closing(), Hours: hours(c.job.Hours), Hands: hands, Days: hours(c.job.Boat.Work.Hours(c.job.Hours))}
	for i, t := range c.job.Order {
		x := outTask{Number: i + 1, Parts: t.Parts, Do: string(t.Do), Coat: c.outTaskCoat(t), Area: ranged(t.Area), Grit: t.Grit, Says: t.Says, Hold: t.Hold, Hours: hours(t.Hours), Wait: t.Wait}
		out.Tasks = append(out.Tasks, x)
	}
	return out
}

func (c *composer) outTaskCoat(t antifoul.Task) *outTaskCoat {
	if t.Coat == nil {
		return nil
	}
	k := t.Coat.Layer
	return &outTaskCoat{
		role(k.For), coating(k.Coating), c.nameOf(k.Colour, c.colour), k.Coats, c.zoneNames(t.Coat.Zones), t.Coat.Wet.To(quantity.Micrometre, 0, quantity.Nearest),
		ranged(t.Coat.Litres), k.Coating.ApplyMin, k.Coating.ApplyMax, outWindowOf(k.Coating),
	}
}
