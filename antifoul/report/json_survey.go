package report

import (
	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/tables/quantity"
)

// outHow is how she was seen ashore, under the keys of the boat file.
type outHow struct {
	By           string            `json:"by,omitempty" says:"who looked"`
	On           quantity.Date     `json:"on,omitzero" says:"the day"`
	AshoreSince  quantity.Date     `json:"ashore_since,omitzero" says:"out of the water since"`
	SinceWash    quantity.Duration `json:"since_wash,omitzero" says:"time since she was washed"`
	Visible      quantity.Share    `json:"visible,omitzero" says:"share of the bottom that could be seen"`
	Hidden       []string          `json:"hidden,omitempty" says:"what hid the rest"`
	NotInspected []string          `json:"not_inspected,omitempty" says:"what was not looked at"`
	Light        string            `json:"light,omitempty" says:"the light"`
	Weather      string            `json:"weather,omitempty" says:"the weather"`
}

// outSeen is what one place of a part showed.
type outSeen struct {
	Part    string    `json:"part" says:"name of the part"`
	Zone    string    `json:"zone,omitempty" says:"key of the zone; absent: all of the part"`
	Where   string    `json:"where,omitempty" says:"more closely"`
	Coating string    `json:"coating,omitempty" says:"key of the uppermost film seen"`
	Colours []string  `json:"colours,omitempty" says:"keys of the colours seen, from the top"`
	State   string    `json:"state,omitempty" says:"condition of the film"`
	Known   string    `json:"known,omitempty" says:"how that is known; absent: seen"`
	Photo   string    `json:"photo,omitempty" says:"number of the photograph"`
	Note    string    `json:"note,omitempty" says:"in the surveyor's words"`
	Mark    []outMark `json:"mark,omitempty" says:"what was seen there"`
}

// outMark is one thing that was seen.
type outMark struct {
	What  string          `json:"what" says:"what it is"`
	Grade []string        `json:"grade,omitempty" says:"keys of its grades, at most one of each scale"`
	Share quantity.Share  `json:"share,omitzero" says:"of the place; of an anode what has gone"`
	Size  quantity.Length `json:"size,omitzero" says:"diameter, depth or gap"`
	Known string          `json:"known,omitempty" says:"how it is known; absent: seen"`
	Photo string          `json:"photo,omitempty" says:"number of the photograph"`
	Note  string          `json:"note,omitempty" says:"in the surveyor's words"`
}

// outMoisture is one reading of a moisture meter.
type outMoisture struct {
	Part       string      `json:"part" says:"name of the part"`
	Zone       string      `json:"zone,omitempty" says:"key of the zone; absent: all of the part"`
	Instrument string      `json:"instrument" says:"key of the instrument"`
	Meter      string      `json:"meter" says:"the meter, as it was named"`
	Scale      string      `json:"scale" says:"the scale that it was set to"`
	Reading    *outNumbers `json:"reading,omitempty" says:"number of that scale"`
	Dry        *float64    `json:"dry,omitempty" says:"what it reads on a place known to be dry"`
	Spots      int         `json:"spots,omitempty" says:"spots read"`
	Photo      string      `json:"photo,omitempty" says:"number of the photograph"`
}

// outFitting is an anode, a bond, a leg, a seal, a transducer.
type outFitting struct {
	Name  string    `json:"name" says:"which one"`
	Part  string    `json:"part,omitempty" says:"name of the part that it is or sits on"`
	Photo string    `json:"photo,omitempty" says:"number of the photograph"`
	Note  string    `json:"note,omitempty" says:"in the surveyor's words"`
	Mark  []outMark `json:"mark,omitempty" says:"what was seen on it"`
}

// outPassport is the form of a boat file that was made from a job log.
type outPassport struct {
	Version int `json:"version" says:"the form"`
}

// outPastJob is one earlier job as its log told it.
type outPastJob struct {
	Log      string        `json:"log,omitempty" says:"name of the log's file"`
	Begun    quantity.Date `json:"begun" says:"its first day"`
	Ended    quantity.Date `json:"ended,omitzero" says:"its last day"`
	Launched quantity.Date `json:"launched,omitzero" says:"the day on which she went in"`
	Hauled   quantity.Date `json:"hauled,omitzero" says:"the day on which she came out again"`
	Coat     []outPastCoat `json:"coat,omitempty" says:"the layers that it laid"`
}

// outPastCoat is one layer of an earlier job.
type outPastCoat struct {
	Part    string                  `json:"part" says:"name of the part then"`
	Layer   string                  `json:"layer,omitempty" says:"undercoat, signal, extra or working"`
	Coating string                  `json:"coating" says:"key of the coating"`
	Colour  string                  `json:"colour,omitempty" says:"key of the colour"`
	Coats   int                     `json:"coats,omitempty" says:"coats of it"`
	Film    outRange[quantity.Film] `json:"film,omitzero" says:"dry film as laid"`
	Litres  quantity.Volume         `json:"litres,omitzero" says:"paint used"`
	Batch   []string                `json:"batch,omitempty" says:"batches of it"`
}

// outLooked is what a look at her came to.
type outLooked struct {
	Advice   []outAdvice  `json:"advice,omitempty" says:"what was seen and what it asks for, the most urgent first"`
	Open     []outFinding `json:"open,omitempty" says:"what was noted without the grade, share or size that it is judged by"`
	Differs  []outFinding `json:"differs,omitempty" says:"where look and plan do not agree"`
	Moisture []outMetered `json:"moisture,omitempty" says:"what each reading of a moisture meter says"`
	Limits   []outFinding `json:"limits,omitempty" says:"limits of the look itself"`
}

// outAdvice is one thing that was seen, and what it asks for.
type outAdvice struct {
	Urgency     string     `json:"urgency" says:"when it is wanted: before launch, this haul-out, monitor, or no work"`
	Observation string     `json:"observation,omitempty" says:"key of the row that decided"`
	About       string     `json:"about" says:"the place or the fitting"`
	Photo       string     `json:"photo,omitempty" says:"number of the photograph"`
	Do          string     `json:"do,omitempty" says:"what to do"`
	Finding     outFinding `json:"finding" says:"why"`
}

// outMetered is one reading judged.
type outMetered struct {
	About    string       `json:"about" says:"the place"`
	Findings []outFinding `json:"findings" says:"whether the meter reads there, and what the reading says"`
}

// outLooked encodes the look; nil where nobody looked.
func (c *composer) outLooked() *outLooked {
	a := c.job.Survey
	if a == nil {
		return nil
	}
	out := &outLooked{Open: c.outFindings(a.Open), Differs: c.outFindings(a.Differs), Limits: c.outFindings(a.Limits)}
	for _, x := range a.Advice {
		y := outAdvice{Urgency: x.Urgency.String(), Observation: x.Row.Key, About: x.About, Photo: x.Photo, Do: x.Row.Do}
		if f := c.outFinding(x.Finding); f != nil {
			y.Finding = *f
		}
		out.Advice = append(out.Advice, y)
	}
	for _, m := range a.Moisture {
		out.Moisture = append(out.Moisture, outMetered{m.About, c.outFindings(m.Findings)})
	}
	return out
}

// look notes how she was seen, place by place.
func (out *outBoat) look(s survey.Survey) {
	if h := s.How; h.Given() {
		out.Survey = &outHow{h.By, h.On, h.Ashore, h.Wash, h.Visible, h.Hidden, h.NotInspected, h.Light, h.Weather}
	}
	for _, p := range s.Seen {
		out.Seen = append(out.Seen, outSeen{p.Part, p.Zone, p.Where, p.Coating, p.Colours, string(p.State), p.Known, p.Photo, p.Note, outMarks(p.Marks)})
	}
	for _, m := range s.Moisture {
		y := outMoisture{Part: m.Part, Zone: m.Zone, Instrument: m.Instrument, Meter: m.Meter, Scale: m.Scale, Reading: plainRange(m.Reading), Spots: m.Spots, Photo: m.Photo}
		if m.HasDry {
			dry := digits(m.Dry)
			y.Dry = &dry
		}
		out.Moisture = append(out.Moisture, y)
	}
	for _, f := range s.Fittings {
		out.Fitting = append(out.Fitting, outFitting{f.Name, f.Part, f.Photo, f.Note, outMarks(f.Marks)})
	}
}

func outMarks(marks []survey.Mark) []outMark {
	var out []outMark
	for _, m := range marks {
		out = append(out, outMark{m.What, m.Grades, m.Share, m.Size, m.Known, m.Photo, m.Note})
	}
	return out
}

// past notes what a passport tells of earlier jobs.
func (out *outBoat) past(x antifoul.Boat) {
	if x.Passport > 0 {
		out.Passport = &outPassport{x.Passport}
	}
	for _, p := range x.Jobs {
		y := outPastJob{Log: p.Log, Begun: p.Begun, Ended: p.Ended, Launched: p.Launched, Hauled: p.Hauled}
		for _, k := range p.Coats {
			y.Coat = append(y.Coat, outPastCoat{k.Part, k.Layer, k.Coating, k.Colour, k.Coats, ranged(k.Film), k.Litres, k.Batches})
		}
		out.Job = append(out.Job, y)
	}
}
