package weather

import (
	"math"

	"boatyard.example/bottomwork/tables"
)

// Factors lists the keys of the rows of the factor table that this package asks for.
func Factors() []string { return []string{"surface-error", "day-low-hour", "day-high-hour"} }

// estimate is the surface of one material through the hours, in degC: from where to where, and typical.
type estimate struct {
	low, typical, high []float64
	settle             float64 // share of the typical distance from the air that is left after an hour of steady air
}

// skin follows the air with the lags of the material, in hours:
//
//	dTs/dt = (air − Ts) ÷ lag
//
// Between two full hours the air is on a straight line, so that after an hour, with k = exp(−1 ÷ lag),
//
//	Ts' = air' − (air' − air) × lag × (1 − k) + (Ts − air) × k
//
// Where the surface was measured it is that, and the estimate goes on from there. Where there is no history it begins at the mean air of the next
// 24 hours, or of what there is: the first hours, as many as the lag, are worth less. Where the air is unknown so is the surface.
// Low is the lowest of the three lags less errorK, high the highest more errorK. A material without a lag is known where it was measured only.
func skin(m tables.Material, hours []Hour, errorK float64) estimate {
	n := len(hours)
	e := estimate{low: make([]float64, n), typical: make([]float64, n), high: make([]float64, n), settle: math.Exp(-1 / m.Lag.Typical)}
	lags := [3]float64{m.Lag.Low, m.Lag.Typical, m.Lag.High}
	var left, late, now [3]float64
	for j, lag := range lags {
		left[j] = math.Exp(-1 / lag)
		late[j] = lag * (1 - left[j])
	}
	history := false
	for i := range hours {
		air, measured := hours[i].AirC, hours[i].SurfaceC
		switch {
		case known(measured):
			now, history = [3]float64{measured, measured, measured}, true
			e.low[i], e.typical[i], e.high[i] = measured, measured, measured
			continue
		case !known(air) || !(m.Lag.Low > 0):
			history = false
			e.low[i], e.typical[i], e.high[i] = Unknown(), Unknown(), Unknown()
			continue
		case history:
			before := hours[i-1].AirC
			if !known(before) {
				before = air
			}
			for j := range now {
				now[j] = air - float64((air-before)*late[j]) + float64((now[j]-before)*left[j])
			}
		default:
			first := meanAir(hours[i:])
			now, history = [3]float64{first, first, first}, true
		}
		e.low[i], e.typical[i], e.high[i] = min(now[0], now[1], now[2])-errorK, now[1], max(now[0], now[1], now[2])+errorK
	}
	return e
}

// rise is by how many K the typical surface grows warmer from the start of the hour to its end. After the last hour the air stays as it is.
func (e *estimate) rise(hours []Hour, i int) float64 {
	if i+1 < len(hours) && known(e.typical[i+1]) {
		return e.typical[i+1] - e.typical[i]
	}
	return (hours[i].AirC - e.typical[i]) * (1 - e.settle)
}

// meanAir is the mean of the known air of the first day of the hours.
func meanAir(hours []Hour) float64 {
	sum, n := 0.0, 0
	for _, h := range hours[:min(24, len(hours))] {
		if known(h.AirC) {
			sum += h.AirC
			n++
		}
	}
	return sum / float64(n)
}
