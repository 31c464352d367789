package antifoul

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// The rules between parts, and between the job and the launch day.
const (
	RuleMetalsTogether  finding.ID = "metals-together"
	RuleMetalsKeepClean finding.ID = "metals-keep-clean"
	RuleLaunchTooSoon   finding.ID = "launch-too-soon"
)

// betweenParts judges what one part does to its neighbours: the hull's paint beside a leg, different metals under water, anodes
// on a metal that keeps itself clean.
func (j *Job) betweenParts(b *tables.Book) {
	for _, s := range j.Schemes {
		if s.Zone != HullZone {
			continue
		}
		var others []compat.Part
		for _, p := range j.Boat.Parts {
			if p.Name != s.Part {
				others = append(others, p)
			}
		}
		j.Findings = append(j.Findings, compat.Beside(b, s.Coating, others)...)
	}
	var metals []string
	var clean *tables.Material
	anodes := false
	for _, p := range j.Boat.Parts {
		m, err := b.Material(p.Material)
		if err != nil {
			continue // noted by Check
		}
		anodes = anodes || m.Anode
		if m.KeepsClean {
			clean = &m
		}
		if m.Metal && !slices.Contains(metals, m.Name) {
			metals = append(metals, m.Name)
		}
	}
	if len(metals) > 1 {
		j.Findings = append(j.Findings, finding.Finding{Rule: RuleMetalsTogether, Verdict: finding.Caution, Facts: []finding.Fact{fact("metals", strings.Join(metals[:len(metals)-1], ", ")+" and "+metals[len(metals)-1])}})
	}
	if clean != nil && anodes {
		j.Findings = append(j.Findings, finding.Finding{
			Rule: RuleMetalsKeepClean, Verdict: finding.Caution, Facts: []finding.Fact{fact("material", clean.Name)},
			Basis: []finding.Basis{clean.Basis("keeps_clean")},
		})
	}
}

// besideLeg reports whether a strip of hull beside a leg must be kept free of the hull's paint.
func (j *Job) besideLeg() bool { return j.Findings.Has(compat.RuleBesideStrip) }

// launchTooSoon notes a launch day that the job cannot meet even if nothing goes wrong: fewer days are left than
//
//	the larger of: low hours of one hand / hands / day-hours; the waits of any one part, with the drying of each of its coats
//	before the water (an epoxy that cures for days holds the launch, however soon the antifouling over it dries)
//
// Both run at once in the best case, so the true time is longer. A launch day that may slip is not judged.
func (j *Job) launchTooSoon(b *tables.Book) {
	left, known := j.Boat.Work.Dry(j.Boat.On)
	if !known {
		return
	}
	least := j.Boat.Work.Hours(j.Hours).Low / factor(b, "day-hours")
	for _, s := range j.Schemes {
		least = max(least, waits(j.Order, s.Part))
	}
	if n := int(math.Ceil(least)); n > left {
		j.Findings = append(j.Findings, finding.Finding{
			Rule: RuleLaunchTooSoon, Verdict: finding.Forbidden,
			Facts: []finding.Fact{fact("least", n), fact("left", daysLeft(left))},
		})
	}
}

// waits is the fewest days from the first task of a part to the water: what passes after each task and each coat, and after the
// last coat of each layer its drying before launch.
func waits(order []Task, part string) float64 {
	var passed, least float64
	for _, t := range order {
		if !slices.Contains(t.Parts, part) {
			continue
		}
		wait := 0.0
		if t.Wait.Given() {
			wait = days(t.Wait)
		}
		if t.Coat != nil {
			passed += float64(float64(t.Coat.Layer.Coats-1) * wait)
			if dry := t.Coat.Layer.Coating.LaunchMin; dry.Given() { // the last layer's always is
				least = max(least, passed+days(dry))
			}
		}
		passed += wait
	}
	return least
}

func daysLeft(n int) string {
	if n == 1 {
		return "1 day"
	}
	return strconv.Itoa(n) + " days"
}
