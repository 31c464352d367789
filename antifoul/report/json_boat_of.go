package report

import (
	"time"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables/quantity"
)

// outBoat encodes the boat file as it was read.
func (c *composer) outBoat() outBoat {
	x := c.job.Boat
	out := outBoat{Name: x.Name, Hull: outHullOf(x.Hull), Use: outUseOf(x.Use), Work: c.outWorkDays()}
	for _, p := range x.Parts {
		out.Part = append(out.Part, outPartOf(p))
	}
	for _, b := range x.Berths {
		out.Berth = append(out.Berth, outBerth{b.Place, b.Role, b.Water})
	}
	m := x.Paint
	out.Paint = outPaint{By: m.By, Thinner: m.Thinner, Reserve: m.Reserve, Cans: m.Sizes, Profile: m.Profile, Temperature: m.Today}
	for _, r := range x.Records {
		y := outRecord{Coating: r.Coating, Launched: r.Launched, Film: ranged(r.Film), Litres: r.Litres, Coats: r.Coats}
		for _, l := range r.Looks {
			y.Look = append(y.Look, outLook{l.On, l.Zone, yes(l.Signal), l.Film, l.Readings, ranged(l.Laid)})
		}
		out.Record = append(out.Record, y)
	}
	for _, t := range x.Tins {
		out.Tin = append(out.Tin, outTinOf(t))
	}
	for _, p := range x.Timed {
		out.Timed = append(out.Timed, outTimedPatch{p.Part, string(p.Work), p.Area, p.Took, p.Goes})
	}
	w := x.Wishes
	out.Wishes = outWishes{w.RepaintAfter, w.ReckonOver, w.Biocide, yes(w.Racing), w.TopColour, w.SignalColour, w.SignalType, w.Coating}
	for _, g := range x.Gauged {
		out.Gauge = append(out.Gauge, outGauge{g.Part, g.Instrument, g.Standard, g.Nominal, g.Most, g.Profile, g.Coating, g.File, len(g.Readings)})
	}
	for _, k := range x.Combed {
		y := outComb{Part: k.Part, Zone: k.Zone, Coating: k.Coating, Thinner: k.Thinner, Asked: k.Asked}
		for _, t := range k.Teeth {
			y.Readings = append(y.Readings, t.String())
		}
		out.Comb = append(out.Comb, y)
	}
	for _, u := range x.Used {
		out.UsedFor = append(out.UsedFor, outUsed{u.Part, u.Zone, u.Coating, u.Coats, u.Litres, u.Asked})
	}
	out.look(x.Survey)
	out.past(x)
	return out
}

func outHullOf(h coverage.Hull) outHull {
	out := outHull{
		Kind: h.Kind, Length: h.Length, Beam: h.Beam, Draft: h.Draft, Mass: h.Mass, Overall: h.Overall, WaterlineBeam: h.WaterlineBeam,
		CanoeDraft: h.CanoeDraft, Midship: h.Midship, Hulls: h.Hulls, BootTop: h.BootTop,
	}
	for _, g := range h.Girths {
		out.Girths = append(out.Girths, outGirth{g.At, g.Girth})
	}
	for _, s := range h.Offsets {
		y := outOffset{At: s.At}
		for _, p := range s.Points {
			y.Points = append(y.Points, outPoint{p.Half, p.Height})
		}
		out.Offsets = append(out.Offsets, y)
	}
	for _, p := range h.Pieces {
		out.Piece = append(out.Piece, outPiece{p.What, p.Count, p.Length, p.Height, p.Width})
	}
	for _, m := range h.Measured {
		out.Measured = append(out.Measured, outZoneMeasured{m.Zone, m.Area})
	}
	if s := h.Support; s != nil {
		out.StandPairs, out.KeelBlocks, out.Chains = &s.StandPairs, &s.KeelBlocks, &s.Chains
	}
	return out
}

func outPartOf(p compat.Part) outPart {
	out := outPart{
		Name: p.Name, Zone: p.Zone, Material: p.Material, Area: p.Area, Barrier: yes(p.Barrier), Laminate: p.Laminate, Seen: p.Seen,
		Potential: p.Reads.Value, Electrode: p.Reads.Electrode,
	}
	if r := p.Readings; r.Given() {
		out.Readings = &outReadings{r.Flaking, r.Adhesion, r.Alligatored, ranged(r.Film), r.Blisters, r.Rust, r.Moisture}
	}
	for _, l := range p.Found {
		out.Found = append(out.Found, outFound{coating(l.Coating), l.Colour, ranged(l.Film), state(l), l.Age, l.KnownBy})
	}
	return out
}

func outUseOf(u wear.Use) outUse {
	out := outUse{
		UnderWay: u.UnderWay, Speed: u.Speed, LongestIdle: u.LongestIdle, HaulOutEvery: u.HaulOutEvery, AshoreEachYear: u.AshoreEachYear,
		RelaunchedUnpainted: yes(u.RelaunchedUnpainted), Water: u.Water, WaterTemperature: u.WaterTemperature, CleanedEvery: u.CleanedEvery,
		Kept: u.Kept, DriesOn: u.DriesOn, Ice: yes(u.Ice),
	}
	if u.Growth != 0 {
		out.Growth = u.Growth.String()
	}
	if u.Cleaning != 0 {
		out.Cleaning = wear.CleaningWords()[u.Cleaning-1]
	}
	return out
}

func (c *composer) outWorkDays() outWorkDays {
	w := c.job.Boat.Work
	out := outWorkDays{
		Hands: w.Hands, DoneBy: w.DoneBy, Launch: w.Launch, LaunchOpen: yes(w.LaunchOpen), From: clockWord(w.Start), Until: clockWord(w.Stop),
		Free: w.Free, Taken: w.Taken, SetUp: w.SetUp, Reserve: w.Reserve, Shift: w.Shift, Slings: yes(w.Slings), Roof: yes(w.Roof),
	}
	if w.Stop > 0 && w.Start == 0 {
		out.From = "00:00"
	}
	for _, d := range w.Weekdays {
		out.Days = append(out.Days, d.String()[:3])
	}
	if h := c.job.Boat.Weather.Forecast.Hours; len(h) > 0 {
		out.Forecast = &outForecastRead{c.moment(h[0].At), c.moment(h[len(h)-1].At.Add(time.Hour)), len(h)}
	}
	for _, o := range w.Other {
		out.Other = append(out.Other, outOther{o.Name, amountNear(o.Hours, quantity.Hour, quantity.Up), o.On, yes(o.After)})
	}
	return out
}

func outTinOf(t coverage.Tin) outTin {
	out := outTin{Coating: t.Coating, DensityBase: t.Densities[0], DensityHardener: t.Densities[1], PotLife: t.PotLife, PotLifeAt: t.At}
	if !t.Ratio.Base.IsZero() {
		out.Ratio = t.Ratio.String()
	}
	for _, k := range t.Kits {
		out.Kit = append(out.Kit, outKit{k.Base, k.Hardener, k.Price, k.Batch})
	}
	for _, s := range t.Store {
		out.Store = append(out.Store, outStored{s.Size, s.Count, s.Colour, s.Batch})
	}
	return out
}
