package weather

import (
	"math"
	"strconv"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
)

// Unknown stands for what was not measured: not a number, so that no comparison takes it for one. A function, so that nobody can set it.
func Unknown() float64 { return math.NaN() }

// The bounds inside which the Magnus formula over water is asked.
const (
	coldestC = -45.0
	hottestC = 60.0
)

// DewPoint returns the temperature at which the air's moisture condenses, in degC, for air of airC degC and a relative humidity over 0 and at
// most 100 %.
//
//	g = ln(humidity ÷ 100) + B × t ÷ (C + t)      dew point = C × g ÷ (B − g)
//
// Air is from -45 to 60 degC. Other input, and a book without the coefficients, is a finding.Faults.
//
// Source: WMO-No. 8, annex 4.B, for B and C, rows wmo-no-8-b and -c.
func DewPoint(b *tables.Book, airC, humidityPct float64) (float64, error) {
	k, err := magnus(b)
	if err != nil {
		return 0, err
	}
	var faults finding.Faults
	checkAir(&faults, airC)
	checkHumidity(&faults, humidityPct)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return k.dew(airC, humidityPct), nil
}

// Humidity returns the relative humidity in per cent of air of airC degC whose dew point is dewC degC: the inverse of DewPoint. The dew point is
// no higher than the air. Of the film of air on a surface it is the humidity there, with the surface's temperature for the air's.
//
// Source: as DewPoint.
func Humidity(b *tables.Book, airC, dewC float64) (float64, error) {
	k, err := magnus(b)
	if err != nil {
		return 0, err
	}
	var faults finding.Faults
	checkAir(&faults, airC)
	if !(dewC >= 2*coldestC && dewC <= airC) { // also NaN
		faults = append(faults, finding.Fault{Kind: finding.ErrImpossible, Key: "dew_point", Got: text(dewC), Want: "no higher than the air, " + text(airC) + " degC"})
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return k.humidity(airC, dewC), nil
}

func checkAir(faults *finding.Faults, airC float64) {
	if !inAir(airC) { // also NaN
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: "air", Got: text(airC), Want: "from -45 to 60 degC"})
	}
}

func checkHumidity(faults *finding.Faults, pct float64) {
	if !inHumidity(pct) { // also NaN
		*faults = append(*faults, finding.Fault{Kind: finding.ErrImpossible, Key: "humidity", Got: text(pct), Want: "more than 0 and at most 100 %"})
	}
}

type coefficients struct{ b, c float64 }

// dew is DewPoint for input that was checked.
func (k coefficients) dew(airC, humidityPct float64) float64 {
	g := math.Log(humidityPct/100) + float64(k.b*airC/(k.c+airC))
	return k.c * g / (k.b - g)
}

// humidity is Humidity for input that was checked.
func (k coefficients) humidity(airC, dewC float64) float64 {
	return 100 * math.Exp(float64(k.b*dewC/(k.c+dewC))-float64(k.b*airC/(k.c+airC)))
}

func magnus(b *tables.Book) (coefficients, error) {
	var faults finding.Faults
	row, err := b.Value("wmo-no-8-b")
	note(&faults, err)
	at, err := b.Value("wmo-no-8-c")
	note(&faults, err)
	return coefficients{row.Value.Typical, at.Value.Typical}, faults.Err()
}

func text(f float64) string { return strconv.FormatFloat(f, 'g', 6, 64) }
