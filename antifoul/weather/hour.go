package weather

import (
	"math"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// The rules of this package, rows of rules_weather.toml.
const (
	RuleCold     finding.ID = "hour-too-cold"
	RuleHot      finding.ID = "hour-too-hot"
	RuleDew      finding.ID = "hour-dew"
	RuleHumid    finding.ID = "hour-humid"
	RuleRain     finding.ID = "hour-rain"
	RuleMeasure  finding.ID = "hour-measure"
	RuleMayPaint finding.ID = "hour-may-paint"
)

// Hour is what was measured in an hour at the place of work. Unknown stands for what was not.
type Hour struct {
	AirC        float64 // degC
	SurfaceC    float64 // degC, on the coldest part that is painted
	HumidityPct float64 // relative, of the air
	RainMM      float64 // in the hour
	WindMS      float64 // m/s; not judged here: whether spraying may go on is the yard's
}

// Judge says whether the coating may go on in the hour. Forbidden are a surface outside the row's limits of application, one less than 3 degC above the dew
// point, air over 85 % and rain; each has its finding. What is needed and was not measured has the verdict Ask. Only if nothing speaks against
// it is there one finding, Fine.
//
// On a limit paint may go on. A coating whose row has no limits of temperature is not held to any. Impossible measurements are asked for again.
//
// Source: the spread of ISO 8502-4 (row iso-8502-4-spread) and the humidity of ISO 12944-7 (row iso-12944-7-humidity).
func Judge(b *tables.Book, c tables.Coating, h Hour) finding.List {
	var out finding.List
	add := func(rule finding.ID, v finding.Verdict, basis finding.Basis, facts ...finding.Fact) {
		out = append(out, finding.Finding{Rule: rule, Verdict: v, About: c.Name, Facts: facts, Basis: []finding.Basis{basis}})
	}
	ask := func(what string) {
		add(RuleMeasure, finding.Ask, finding.Basis{Kind: finding.Derived}, finding.Fact{Name: "what", Value: what})
	}
	if math.IsNaN(h.SurfaceC) {
		ask("the temperature of the surface, on its coldest part")
	} else {
		if c.ApplyMin.Given() && h.SurfaceC < c.ApplyMin.Float(quantity.Celsius) {
			add(RuleCold, finding.Forbidden, c.Basis("apply_min"), degrees("surface", h.SurfaceC), finding.Fact{Name: "limit", Value: c.ApplyMin})
		}
		if c.ApplyMax.Given() && h.SurfaceC > c.ApplyMax.Float(quantity.Celsius) {
			add(RuleHot, finding.Forbidden, c.Basis("apply_max"), degrees("surface", h.SurfaceC), finding.Fact{Name: "limit", Value: c.ApplyMax})
		}
	}
	h.moisture(b, add, ask)
	switch {
	case math.IsNaN(h.RainMM):
		ask("whether it rains on the place of work")
	case h.RainMM > 0:
		add(RuleRain, finding.Forbidden, finding.Basis{Kind: finding.CommonPractice})
	}
	if len(out) == 0 {
		add(RuleMayPaint, finding.Fine, finding.Basis{Kind: finding.Derived})
	}
	return out
}

// moisture judges the humidity of the air and the surface against the dew point.
func (h Hour) moisture(b *tables.Book, add func(finding.ID, finding.Verdict, finding.Basis, ...finding.Fact), ask func(string)) {
	most, errMost := b.Value("iso-12944-7-humidity")
	spread, errSpread := b.Value("iso-8502-4-spread")
	dew, errDew := DewPoint(b, h.AirC, h.HumidityPct)
	if errMost != nil || errSpread != nil || errDew != nil {
		ask("temperature and humidity of the air") // or a book that has no limits to hold them against
		return
	}
	if h.HumidityPct > most.Value.Typical {
		add(RuleHumid, finding.Forbidden, most.Basis("value"), percent("humidity", h.HumidityPct), percent("limit", most.Value.Typical))
	}
	if !math.IsNaN(h.SurfaceC) && h.SurfaceC-dew < spread.Value.Typical-1e-9 {
		add(RuleDew, finding.Forbidden, spread.Basis("value"), degrees("surface", h.SurfaceC), degrees("dew", dew), degrees("least", dew+spread.Value.Typical))
	}
}

// degrees is a temperature to 0.1 degC, up, as a report says it; for a dew point that is the careful side.
func degrees(name string, c float64) finding.Fact {
	t, err := quantity.Celsius.Near(c, 1, quantity.Up)
	if err != nil {
		return finding.Fact{Name: name, Value: text(c)}
	}
	return finding.Fact{Name: name, Value: t}
}

func percent(name string, p float64) finding.Fact {
	s, err := quantity.Percent.Near(p, 0, quantity.Nearest)
	if err != nil {
		return finding.Fact{Name: name, Value: text(p)}
	}
	return finding.Fact{Name: name, Value: s}
}
