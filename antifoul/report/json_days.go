package report

import (
	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// outDays is the plan of days: the whole job, or what is left of it where the season is too short.
type outDays struct {
	Fits     bool          `json:"fits" says:"true: she is ready for her launch, or has none"`
	Reserve  bool          `json:"reserve_left" says:"true: the days that should be left before the launch are left"`
	GivesUp  bool          `json:"gives_up" says:"true: the season is too short, and the turns are those of the job without what is given up"`
	Short    []outFinding  `json:"too_short,omitempty" says:"why the whole job does not fit"`
	Given    []outFinding  `json:"season,omitempty" says:"what is given up and what would help, drying out, slings, sections"`
	Days     int           `json:"days" says:"days on which the crew works"`
	Again    int           `json:"abraded_again" says:"times that a film is abraded because its window has closed"`
	Measure  int           `json:"measure" says:"coats that rest on a measurement, or on weather that nobody knows yet"`
	Ready    momentWord    `json:"ready,omitempty" says:"from when she may go in"`
	Known    momentWord    `json:"forecast_until,omitempty" says:"until when the forecast tells"`
	Turns    []outTurn     `json:"turns,omitempty" says:"what is done when, in order; a planned hour is no leave to paint"`
	Launch   quantity.Date `json:"launch,omitzero" says:"the day on which she goes in, where it is fixed and the plan fits"`
	Morning  *outMorning   `json:"morning,omitempty" says:"whether the next coat may be begun on the morning of the question, by the forecast"`
	Drying   []outDrying   `json:"drying_out,omitempty" says:"parts that dry out first"`
	Findings []outFinding  `json:"findings,omitempty" says:"what is said of the plan"`
	Notes    []outFinding  `json:"forecast_notes,omitempty" says:"what the forecast did not give and how it was filled"`
}

// outTurn is one turn of work.
type outTurn struct {
	What     string        `json:"what" says:"what is done"`
	Do       string        `json:"do,omitempty" says:"the work; absent for a coat and for other work"`
	Coats    []outTurnCoat `json:"coats,omitempty" says:"the coats that go on at the same time"`
	Places   bool          `json:"places_under_stands" says:"true: on the places where she stood"`
	Abrade   bool          `json:"abrade" says:"true: the window has closed, and the film below is abraded first"`
	Section  int           `json:"section,omitempty" says:"of a surface that is blasted and primed piece by piece"`
	Sections int           `json:"sections,omitempty" says:"pieces of that surface"`
	Hours    []outHours    `json:"hours" says:"the hours that it takes; with one end only it goes along with what comes before it"`
	Weather  *outWeather   `json:"weather,omitempty" says:"for a coat: what the forecast says"`
	Opens    momentWord    `json:"window_opens,omitempty" says:"the first hour in which it may begin after the coat before"`
	Closes   momentWord    `json:"window_closes,omitempty" says:"the last hour in which it may begin"`
	Last     momentWord    `json:"last_start,omitempty" says:"the last moment at which it may begin and all still be done by the launch"`
}

// outHours is a span of time.
type outHours struct {
	From  momentWord `json:"from" says:"where it begins"`
	Until momentWord `json:"until" says:"where it ends"`
}

// outTurnCoat is one coat of one part.
type outTurnCoat struct {
	Part    string   `json:"part" says:"name of the part"`
	Role    roleWord `json:"role" says:"what the layer is for"`
	Coating outName  `json:"coating" says:"what it is of"`
	Colour  *outName `json:"colour,omitempty" says:"its colour"`
	Coat    int      `json:"coat" says:"which coat of its layer"`
}

// outWeather is the weather of a coat's hours.
type outWeather struct {
	Verdict  verdictWord `json:"verdict" says:"fine: go; ask: a measurement decides in the morning, or the weather is not known yet"`
	Words    string      `json:"says" says:"the same in words"`
	Air      *outSpan    `json:"air_deg_c,omitempty" says:"temperature of the air, degC"`
	Surface  *outSpan    `json:"surface_deg_c,omitempty" says:"temperature of the surface, degC"`
	Humidity *outSpan    `json:"humidity_pct,omitempty" says:"relative humidity, %"`
}

// outMorning is the answer for one morning.
type outMorning struct {
	At      momentWord   `json:"at" says:"the moment asked about"`
	Verdict verdictWord  `json:"verdict" says:"fine: go; ask: measure first; needs: wait; forbidden: not today"`
	From    momentWord   `json:"from,omitempty" says:"when the coat may begin on that day"`
	Next    momentWord   `json:"next,omitempty" says:"the next good hour after that day"`
	Finding outFinding   `json:"finding" says:"the same in words"`
	Why     []outFinding `json:"why,omitempty" says:"what speaks against the hour, or what must be measured"`
}

// outDrying is a part that dries out.
type outDrying struct {
	Part     string          `json:"part" says:"name of the part"`
	Readings []quantity.Date `json:"readings,omitempty" says:"days on which its moisture is read"`
	Earliest quantity.Date   `json:"first_coat_from,omitzero" says:"the first coat not before"`
}

// outDays encodes the plan of days; nil where no days were named.
func (c *composer) outDays() *outDays {
	s := c.job.Season
	if !s.Planned() {
		return nil
	}
	turns, plan := s.Shown()
	out := &outDays{
		Fits: plan.Fits, Reserve: plan.Reserve, GivesUp: len(s.Kept) > 0, Given: c.outFindings(s.Findings), Days: plan.Days, Again: plan.Again,
		Measure: plan.Measure, Ready: c.moment(plan.Ready), Known: c.moment(plan.Known), Morning: c.outMorning(), Findings: c.outFindings(plan.Findings),
		Notes: c.outFindings(c.job.Boat.Weather.Forecast.Notes),
	}
	if out.GivesUp {
		out.Short = c.outFindings(onlyLate(s.Calendar.Findings))
	}
	if w := c.job.Boat.Work; plan.Fits && !w.LaunchOpen.True() {
		out.Launch = w.Launch
	}
	for _, it := range plan.Items {
		out.Turns = append(out.Turns, c.outTurn(turns[it.Task], it))
	}
	for _, d := range s.Drying {
		out.Drying = append(out.Drying, outDrying{d.Part, d.Readings, d.Earliest})
	}
	return out
}

func (c *composer) outTurn(t antifoul.Turn, it calendar.Item) outTurn {
	out := outTurn{
		What: c.turn(t, it), Do: string(t.Do), Places: t.Patch, Abrade: it.Again, Section: t.Section, Sections: t.Sections, Last: c.moment(it.Last),
	}
	if !it.Again && !it.Closes.Before(it.Opens) {
		out.Opens, out.Closes = c.moment(it.Opens), c.moment(it.Closes)
	}
	for _, k := range t.Coats {
		out.Coats = append(out.Coats, outTurnCoat{k.Part, role(k.Layer.For), coating(k.Layer.Coating), c.nameOf(k.Layer.Colour, c.colour), k.Nth})
	}
	for _, s := range it.Spans {
		out.Hours = append(out.Hours, outHours{c.moment(s.From), c.moment(s.To)})
	}
	if len(t.Coats) > 0 && !it.Again {
		out.Weather = &outWeather{verdictWord(it.Verdict.String()), c.outlook(it), span(it.Outlook.Air), span(it.Outlook.Surface), span(it.Outlook.Humidity)}
	}
	return out
}

// outMorning is the answer for the morning of the question; nil without a forecast or a coat to come.
func (c *composer) outMorning() *outMorning {
	if len(c.job.Boat.Weather.Forecast.Hours) == 0 {
		return nil
	}
	at := c.job.Boat.Work.Begins(c.job.Boat.On, c.job.Boat.Weather.Zone)
	m, ok, err := c.job.Morning(at)
	if err != nil || !ok || m.Finding.Verdict < finding.Fine {
		return nil // the plan was made of the same input
	}
	return &outMorning{c.moment(at), verdictWord(m.Verdict.String()), c.moment(m.From), c.moment(m.Next), *c.outFinding(m.Finding), c.outFindings(m.Why)}
}
