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
		anodes = anodes || m.Painted == tables.Never
		if m.KeepsClean {
			clean = &m
		}
		if m.Metal && !slices.Contains(metals, m.Name) {
			metals = append(metals, m.Name)
		}
	}
	if len(metals) > 1 {
		j.Findings = append(j.Findings, finding.Finding{Rule: RuleMetalsTogether, Verdict: finding.Caution, Facts: []finding.Fact{fact("metals", strings.Join(metals, " and "))}})
	}
	if clean != nil && anodes {
		j.Findings = append(j.Findings, finding.Finding{Rule: RuleMetalsKeepClean, Verdict: finding.Caution, Facts: []finding.Fact{fact("material", clean.Name)},
			Basis: []finding.Basis{clean.Basis("keeps_clean")}})
	}
}

// besideLeg reports whether a strip of hull beside a leg must be kept free of the hull's paint.
func (j *Job) besideLeg() bool {
	return len(j.Findings.At(finding.Needs)) > 0
}

// launchTooSoon notes a launch day that the job cannot meet even if nothing goes wrong: fewer days are left than
//
//	the larger of: low hours of one hand / hands / day-hours; the waits of any one part, its last coat's drying included
//
// Both run at once in the best case, so the true time is longer.
func (j *Job) launchTooSoon(b *tables.Book) {
	left, known := j.Boat.Work.Dry(j.Boat.On)
	if !known || len(j.Order) == 0 {
		return
	}
	least := j.Boat.Work.Hours(j.Hours).Low / factor(b, "day-hours", 8)
	for _, s := range j.Schemes {
		var waits float64
		for _, t := range j.Order {
			if !slices.Contains(t.Parts, s.Part) || !t.Wait.Given() {
				continue
			}
			n := 1.0
			if t.Coat != nil {
				n = float64(t.Coat.Layer.Coats)
			}
			waits += float64(n * days(t.Wait))
		}
		if s.Coating.LaunchMin.Given() {
			waits += days(s.Coating.LaunchMin)
		}
		least = max(least, waits)
	}
	if n := int(math.Ceil(least)); n > left {
		j.Findings = append(j.Findings, finding.Finding{Rule: RuleLaunchTooSoon, Verdict: finding.Forbidden,
			Facts: []finding.Fact{fact("least", n), fact("left", daysLeft(left))}})
	}
}

func daysLeft(n int) string {
	if n == 1 {
		return "1 day"
	}
	return strconv.Itoa(n) + " days"
}
