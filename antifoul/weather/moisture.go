package weather

import "boatyard.example/bottomwork/tables/finding"

// fillHumidity gives hours without humidity that of a dew point at the lowest air of their local day, as far as its hours are given, and returns how
// many. The hours begin and end where they will: of a day that is not whole the lowest may be too high, and the air then too damp: the careful side.
func fillHumidity(k coefficients, hours []Hour) int {
	filled := 0
	for from := 0; from < len(hours); {
		day, to, low := onDate(hours[from].At), from, Unknown()
		for ; to < len(hours) && onDate(hours[to].At) == day; to++ {
			if air := hours[to].AirC; !(air >= low) && known(air) { // also the first
				low = air
			}
		}
		for i := from; i < to; i++ {
			if h := &hours[i]; !known(h.HumidityPct) && known(h.AirC) {
				h.HumidityPct = k.humidity(h.AirC, low)
				filled++
			}
		}
		from = to
	}
	return filled
}

// dewNote says for how many hours the dew point was taken from the day's low.
func dewNote(filled int) finding.List {
	if filled == 0 {
		return nil
	}
	return finding.List{{
		Rule: RuleDewFromLow, Verdict: finding.Caution, Facts: []finding.Fact{{Name: "hours", Value: filled}},
		Basis: []finding.Basis{{Kind: finding.FromMemory, Source: "fao-56", Place: "equation 48", Doubt: "in arid places the dew point lies 2 to 3 K lower; the air is then drier than reckoned"}},
	}}
}
