package quantity

// The phantom types of the dimensions: they hold nothing and only keep amounts
// of different dimensions apart.
type (
	length      struct{}
	area        struct{}
	film        struct{}
	volume      struct{}
	spread      struct{}
	share       struct{}
	mass        struct{}
	density     struct{}
	temperature struct{}
	speed       struct{}
	duration    struct{}
	calendar    struct{}
	workrate    struct{}
	potential   struct{}
	release     struct{}
)

// Dim is any dimension of this package.
type Dim interface {
	length | area | film | volume | spread | share | mass | density |
		temperature | speed | duration | calendar | workrate | potential | release
}

// The quantities, one for each dimension.
type (
	// Length is a length of a boat or a part: m, ft, in, mm.
	Length = Amount[length]
	// Area is a surface: m2, ft2.
	Area = Amount[area]
	// Film is the thickness of a film of paint, wet or dry: um, mil.
	Film = Amount[film]
	// Volume is a volume of paint, thinner or water: L, mL, US gal, US qt, imp gal.
	Volume = Amount[volume]
	// Spread is a spreading rate, the area that a volume covers: m2/L, ft2/US gal.
	Spread = Amount[spread]
	// Share is a part of a whole: %.
	Share = Amount[share]
	// Mass is a mass: kg, lb, t.
	Mass = Amount[mass]
	// Density is a mass for a volume: kg/L.
	Density = Amount[density]
	// Temperature is a level on a temperature scale, not a difference: degC, degF.
	Temperature = Amount[temperature]
	// Speed is a speed through water or of wind: kn, m/s.
	Speed = Amount[speed]
	// Duration is a length of time with a fixed number of minutes: min, h, d.
	Duration = Amount[duration]
	// Months is a number of calendar months, never a duration: months, years.
	Months = Amount[calendar]
	// WorkRate is the area that a person works in an hour: m2/h, ft2/h.
	WorkRate = Amount[workrate]
	// Potential is an electrical potential: mV, V.
	Potential = Amount[potential]
	// Release is the mass of biocide that leaves an area in a day: ug/cm2/d.
	Release = Amount[release]
)

// Quantity is any quantity of this package.
type Quantity interface {
	Length | Area | Film | Volume | Spread | Share | Mass | Density |
		Temperature | Speed | Duration | Months | WorkRate | Potential | Release
}

// Units of length. The base is the metre.
const (
	Metre Unit[length] = iota + 1
	Foot
	Inch
	// Millimetre is mm, 0.001 m: gaps and strips.
	Millimetre
)

// Units of area. The base is the square metre.
const (
	SquareMetre Unit[area] = iota + 1
	SquareFoot
)

// Units of film thickness. The base is the micrometre.
const (
	Micrometre Unit[film] = iota + 1
	Mil
)

// Units of volume. The base is the litre.
const (
	Litre Unit[volume] = iota + 1
	Millilitre
	USGallon
	USQuart
	ImperialGallon
)

// Units of spreading rate. The base is the square metre per litre.
const (
	SquareMetrePerLitre Unit[spread] = iota + 1
	SquareFootPerUSGallon
)

// Percent is the unit of a share.
const Percent Unit[share] = 1

// Units of mass. The base is the kilogram.
const (
	Kilogram Unit[mass] = iota + 1
	Pound
	Tonne
)

// KilogramPerLitre is the unit of density.
const KilogramPerLitre Unit[density] = 1

// Units of temperature, as levels on a scale. The base is the degree Celsius.
const (
	Celsius Unit[temperature] = iota + 1
	Fahrenheit
)

// Units of speed. The base is the metre per second.
const (
	Knot Unit[speed] = iota + 1
	MetrePerSecond
)

// Units of duration. The base is the minute; a day is 24 hours.
const (
	Minute Unit[duration] = iota + 1
	Hour
	Day
)

// Units of calendar time. The base is the month; a year is 12 months.
const (
	Month Unit[calendar] = iota + 1
	Year
)

// Units of work rate. The base is the square metre per hour.
const (
	SquareMetrePerHour Unit[workrate] = iota + 1
	SquareFootPerHour
)

// Units of potential. The base is the millivolt.
const (
	Millivolt Unit[potential] = iota + 1
	Volt
)

// MicrogramPerSquareCentimetreDay is the unit of release.
const MicrogramPerSquareCentimetreDay Unit[release] = 1
