package drag

import (
	"math"
	"strconv"

	"boatyard.example/bottomwork/tables/finding"
)

// The Reynolds numbers of a waterline that the lines are taken for, and the coarsest roughness as a share of the length. Basis: below
// a million a part of the flow is laminar; a roughness of a hundredth of the length is no roughness any more.
const (
	LeastReynolds = 1e6
	MostReynolds  = 1e10
	MostRelative  = 0.01
)

// The constants of the logarithmic law of the wall and of Schoenherr's line. Source: Granville 1958; Schoenherr 1932.
const (
	kappa      = 0.41  // von Kármán
	intercept  = 5.0   // of the smooth wall
	roughWall  = 8.5   // of the fully rough wall, by the equivalent sand roughness
	schoenherr = 0.242 // slope of the line
)

// Onset says how the shift of the velocity profile, in friction velocities, begins with the roughness Reynolds number ks+.
type Onset int

// The two onsets. They meet where the wall is fully rough; between smooth and rough, coatings and slime lie near one or the other.
//
//	C = exp(−0.41 × (8.5 − 5.0))
const (
	Sudden  Onset = iota + 1 // uniform sand, Nikuradse: ln(C × ks+) / 0.41, nothing while C × ks+ is below 1
	Gradual                  // mixed roughness, Colebrook: ln(1 + C × ks+) / 0.41
)

// ITTC57 returns the friction coefficient of a smooth hull by the ship-model correlation line of 1957.
//
//	CF = 0.075 / (log10 Re − 2)^2
//
// Re from LeastReynolds to MostReynolds, else the error is a finding.Faults. The line allows for the form of a usual hull, so that it lies above
// a flat plate's at low Re.
//
// Source: International Towing Tank Conference, 1957.
func ITTC57(re float64) (float64, error) {
	if err := inRange(re, 0).Err(); err != nil {
		return 0, err
	}
	d := math.Log10(re) - 2
	return 0.075 / (d * d), nil
}

// Schoenherr returns the friction coefficient of a smooth flat plate, to better than 1e-12.
//
//	0.242 / √CF = log10(Re × CF)
//
// Re from LeastReynolds to MostReynolds, else the error is a finding.Faults.
//
// Source: Schoenherr, Transactions SNAME 40, 1932.
func Schoenherr(re float64) (float64, error) { return Rough(re, 0, Sudden) }

// Rough returns the friction coefficient of a flat plate that is rough all over, by Granville's similarity law: Schoenherr's line
// shifted by dU, the shift of the velocity profile at the trailing edge. relative is the equivalent sand roughness by the length, ks/L.
//
//	0.242/√CF = log10(Re × CF) − 0.242/√2 × dU
//	ks+ = ks/L × Re × s × (1 − s/0.41), s = √(CF/2)
//
// Re from LeastReynolds to MostReynolds, relative from 0 to MostRelative, onset one of the two, else the error is a finding.Faults. A
// relative of 0 gives Schoenherr's line. Sixty halvings, always.
//
// Where all is rough it lies 4 to 5 % under the plate formula of Mills and Hang (1983) and 12 to 17 % under that of Prandtl and
// Schlichting.
//
// Source: Granville, Journal of Ship Research 1958 and 1987; the method of Schultz 2007 and Demirel 2017.
func Rough(re, relative float64, onset Onset) (float64, error) {
	fs := inRange(re, relative)
	if onset != Sudden && onset != Gradual {
		fs = append(fs, finding.Fault{Kind: finding.ErrValue, Key: "onset", Got: strconv.Itoa(int(onset)), Want: "Sudden or Gradual"})
	}
	if err := fs.Err(); err != nil {
		return 0, err
	}
	return solve(re, relative, onset), nil
}

// solve halves the span of s in which the root lies. The difference of both sides falls all the way: the left side's slope is
// −0.171/s², the logarithm's −0.87/s, and dU brings at most +0.42/s while s is under 0.205. At s = 0.001 it is above zero and at
// 0.2 below, over the whole range of Re and relative.
func solve(re, relative float64, onset Onset) float64 {
	low, high := 0.001, 0.2
	c := math.Exp(-kappa * (roughWall - intercept))
	for range 60 {
		s := low + (high-low)/2
		left := schoenherr / math.Sqrt2 / s
		right := math.Log10(re * 2 * s * s)
		plus := relative * re * s * (1 - s/kappa)
		if left-right+float64(schoenherr/math.Sqrt2*shift(c*plus, onset)) > 0 {
			low = s
		} else {
			high = s
		}
	}
	return 2 * low * low
}

// shift is dU for x = C × ks+, never below zero.
func shift(x float64, onset Onset) float64 {
	if onset == Gradual {
		return math.Log1p(x) / kappa
	}
	if x <= 1 {
		return 0
	}
	return math.Log(x) / kappa
}

// inRange returns the faults of the numbers that the lines are asked for; what is not a number is none.
func inRange(re, relative float64) finding.Faults {
	var fs finding.Faults
	say := func(x float64) string { return strconv.FormatFloat(x, 'g', 3, 64) }
	if !(re >= LeastReynolds && re <= MostReynolds) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "reynolds", Got: say(re), Want: "length × speed ÷ viscosity, from 1e6 to 1e10"})
	}
	if !(relative >= 0 && relative <= MostRelative) {
		fs = append(fs, finding.Fault{Kind: finding.ErrImpossible, Key: "roughness", Got: say(relative), Want: "roughness ÷ length, from 0 to 0.01"})
	}
	return fs
}
