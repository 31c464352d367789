package report

// shape is the side of a kind of hull as a drawing has it: points from the stern (x 0) to the bow (x 1) and from the waterline (y 0) to
// the deepest point (y 1). It is a picture of the kind, not of the boat.
type shape struct {
	hull         []point // the bottom's outline, stern to bow
	keel, rudder []point // outlines under it; none where such a hull has none
	board        bool    // the keel is a board that is hoisted: drawn in dashes
	shaft        []point // inboard end to propeller
	leg          point   // where a drive leg is
	stem         int     // the point of the hull at which the stem begins
	motor        bool
}

// sideShape is the drawing of a kind of hull; a kind without one of its own gets a plain round bottom.
func sideShape(kind string) shape {
	yacht := shape{
		hull:   []point{{0, 0}, {0.08, 0.12}, {0.25, 0.32}, {0.45, 0.42}, {0.62, 0.40}, {0.8, 0.26}, {0.93, 0.09}, {1, 0}},
		rudder: []point{{0.06, 0.08}, {0.075, 0.78}, {0.125, 0.78}, {0.155, 0.21}},
		shaft:  []point{{0.31, 0.36}, {0.235, 0.48}}, leg: point{0.29, 0.36}, stem: 5,
	}
	motor := shape{
		hull:   []point{{0, 0}, {0, 0.36}, {0.3, 0.44}, {0.6, 0.44}, {0.8, 0.34}, {0.93, 0.14}, {1, 0}},
		rudder: []point{{0.02, 0.37}, {0.03, 0.85}, {0.08, 0.85}, {0.09, 0.39}},
		shaft:  []point{{0.36, 0.44}, {0.15, 0.66}}, leg: point{-0.02, 0.3}, stem: 4, motor: true,
	}
	switch kind {
	case "fin-keel-yacht":
		yacht.keel = []point{{0.40, 0.40}, {0.44, 1}, {0.58, 1}, {0.60, 0.40}}
	case "medium-keel-yacht":
		yacht.keel = []point{{0.30, 0.35}, {0.38, 1}, {0.60, 1}, {0.70, 0.36}}
	case "long-keel-yacht":
		yacht.keel = []point{{0.13, 0.18}, {0.17, 1}, {0.62, 1}, {0.84, 0.22}}
		yacht.rudder = []point{{0.06, 0.09}, {0.1, 1}, {0.16, 1}, {0.12, 0.17}}
		yacht.shaft = []point{{0.22, 0.45}, {0.15, 0.5}}
	case "centreboard-yacht":
		yacht.keel, yacht.board = []point{{0.45, 0.42}, {0.40, 1}, {0.50, 1}, {0.55, 0.42}}, true
	case "bilge-keel-yacht":
		yacht.keel = []point{{0.37, 0.38}, {0.41, 1}, {0.56, 1}, {0.59, 0.41}}
	case "twin-hull":
		yacht.keel = []point{{0.36, 0.38}, {0.42, 0.75}, {0.58, 0.75}, {0.64, 0.39}}
	case "motor-planing":
		return motor
	case "motor-displacement", "working-boat":
		motor.keel = []point{{0.1, 0.38}, {0.13, 0.9}, {0.76, 0.7}, {0.86, 0.28}}
		motor.shaft = []point{{0.2, 0.6}, {0.12, 0.62}}
		return motor
	default: // an open boat
		motor.rudder, motor.motor = []point{{0, 0.1}, {0, 0.7}, {-0.05, 0.7}, {-0.05, 0.05}}, false
		return motor
	}
	return yacht
}

// depth is how deep the outline is at x.
func (s shape) depth(x float64) float64 {
	for i := 1; i < len(s.hull); i++ {
		a, b := s.hull[i-1], s.hull[i]
		if x <= b.x && b.x > a.x {
			return a.y + (b.y-a.y)*(x-a.x)/(b.x-a.x)
		}
	}
	return 0
}

// middleOf is the mean of some points.
func middleOf(at []point) point {
	var out point
	for _, p := range at {
		out.x, out.y = out.x+p.x/float64(len(at)), out.y+p.y/float64(len(at))
	}
	return out
}

// spot is where a zone is shown on the side; false for one that a side view does not show.
func (s shape) spot(zone string) (point, bool) {
	switch zone {
	case "flat", "hull":
		return point{0.83, s.depth(0.83) * 0.76}, true
	case "waterline":
		return point{0.36, 0.055}, true
	case "edges":
		return s.hull[s.stem+1], true
	case "chines":
		return point{0.63, s.depth(0.63)}, s.motor
	case "keel":
		return middleOf(s.keel), len(s.keel) > 0
	case "sole":
		if len(s.keel) < 3 {
			return point{}, false
		}
		return point{(s.keel[1].x*2 + s.keel[2].x) / 3, (s.keel[1].y*2 + s.keel[2].y) / 3}, true
	case "rudder":
		return middleOf(s.rudder), len(s.rudder) > 0
	case "leg":
		return point{s.leg.x, s.leg.y + 0.2}, true
	case "propeller":
		return s.shaft[1], true
	case "shaft":
		return middleOf(s.shaft), true
	case "trim-tab":
		return point{-0.01, s.depth(0) - 0.02}, s.motor
	}
	return point{}, false
}
