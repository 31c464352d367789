package quantity

// unitDef is one unit. In the base unit of its dimension, n of it are
//
//	(n - off) · num · 10^exp / den
//
// which is exact: num, den and off are whole numbers.
type unitDef struct {
	file, print string   // "um" in files, "µm" in reports
	single      string   // the word for exactly one, where it differs
	also        []string // further spellings that are read

	num int64
	exp int32
	den int64
	off int64

	system System // the system it belongs to; 0 for neither or both
	metric uint8  // its counterpart in the metric system, as Unit; 0 for none
	us     uint8  // its counterpart in the US system, as Unit; 0 for none
}

// table is one dimension. Its tables are never changed.
type table struct {
	units  []unitDef // in the order of the Unit constants
	base   uint8     // the base unit
	affine bool      // levels on a scale, whose noughts differ: temperature
}

var (
	// Source: NIST SP 811 (2008), App. B.8: 1 ft = 0.3048 m, 1 in = 25.4 mm, exact.
	lengths = table{base: 1, units: []unitDef{
		{file: "m", print: "m", num: 1, den: 1, system: Metric, us: uint8(Foot)},
		{file: "ft", print: "ft", num: 3048, exp: -4, den: 1, system: US, metric: uint8(Metre)},
		{file: "in", print: "in", num: 254, exp: -4, den: 1, system: US, metric: uint8(Millimetre)},
		{file: "mm", print: "mm", num: 1, exp: -3, den: 1, system: Metric, us: uint8(Inch)},
	}}
	// Derived: 0.3048² = 0.09290304.
	areas = table{base: 1, units: []unitDef{
		{file: "m2", print: "m²", num: 1, den: 1, system: Metric, us: uint8(SquareFoot)},
		{file: "ft2", print: "ft²", num: 9290304, exp: -8, den: 1, system: US, metric: uint8(SquareMetre)},
	}}
	// Source: NIST SP 811 (2008), App. B.8: 1 mil (0.001 in) = 25.4 um, exact.
	// The second micro sign is the Greek letter mu, which keyboards also give.
	films = table{base: 1, units: []unitDef{
		{file: "um", print: "µm", also: []string{"μm"}, num: 1, den: 1, system: Metric, us: uint8(Mil)},
		{file: "mil", print: "mil", num: 254, exp: -1, den: 1, system: US, metric: uint8(Micrometre)},
	}}
	// Source: NIST Handbook 44, App. C: 1 US gallon = 231 cubic inches, 1 quart a
	// quarter of it; NIST SP 811 (2008), App. B.8: 1 imperial gallon = 4.54609 L, exact.
	volumes = table{base: 1, units: []unitDef{
		{file: "L", print: "L", num: 1, den: 1, system: Metric, us: uint8(USGallon)},
		{file: "mL", print: "mL", num: 1, exp: -3, den: 1, system: Metric, us: uint8(USGallon)},
		{file: "US gal", print: "US gal", num: 3785411784, exp: -9, den: 1, system: US, metric: uint8(Litre)},
		{file: "US qt", print: "US qt", num: 946352946, exp: -9, den: 1, system: US, metric: uint8(Litre)},
		{file: "imp gal", print: "imp gal", num: 454609, exp: -5, den: 1, metric: uint8(Litre), us: uint8(USGallon)},
	}}
	// Derived: 0.09290304 m2 / 3.785411784 L; it has no finite decimal.
	spreads = table{base: 1, units: []unitDef{
		{file: "m2/L", print: "m²/L", num: 1, den: 1, system: Metric, us: uint8(SquareFootPerUSGallon)},
		{file: "ft2/US gal", print: "ft²/US gal", num: 9290304, exp: 1, den: 3785411784, system: US, metric: uint8(SquareMetrePerLitre)},
	}}
	shares = table{base: 1, units: []unitDef{
		{file: "%", print: "%", num: 1, den: 1},
	}}
	// Source: NIST SP 811 (2008), App. B.8: 1 lb = 0.45359237 kg, exact.
	masses = table{base: 1, units: []unitDef{
		{file: "kg", print: "kg", num: 1, den: 1, system: Metric, us: uint8(Pound)},
		{file: "lb", print: "lb", num: 45359237, exp: -8, den: 1, system: US, metric: uint8(Kilogram)},
		{file: "t", print: "t", num: 1, exp: 3, den: 1, system: Metric, us: uint8(Pound)},
	}}
	densities = table{base: 1, units: []unitDef{
		{file: "kg/L", print: "kg/L", num: 1, den: 1},
	}}
	// Source: NIST SP 811 (2008), App. B.8: t(°C) = (t(°F) - 32) / 1.8.
	temperatures = table{base: 1, affine: true, units: []unitDef{
		{file: "degC", print: "°C", num: 1, den: 1, system: Metric, us: uint8(Fahrenheit)},
		{file: "degF", print: "°F", num: 5, den: 9, off: 32, system: US, metric: uint8(Celsius)},
	}}
	// Source: NIST SP 811 (2008), App. B.8: 1 kn = 1852 m in an hour of 3600 s.
	speeds = table{base: 2, units: []unitDef{
		{file: "kn", print: "kn", num: 1852, den: 3600},
		{file: "m/s", print: "m/s", num: 1, den: 1},
	}}
	durations = table{base: 1, units: []unitDef{
		{file: "min", print: "min", num: 1, den: 1},
		{file: "h", print: "h", num: 60, den: 1},
		{file: "d", print: "d", num: 1440, den: 1},
	}}
	calendars = table{base: 1, units: []unitDef{
		{file: "months", print: "months", single: "month", num: 1, den: 1},
		{file: "years", print: "years", single: "year", num: 12, den: 1},
	}}
	// Derived: 0.3048² = 0.09290304.
	workrates = table{base: 1, units: []unitDef{
		{file: "m2/h", print: "m²/h", num: 1, den: 1, system: Metric, us: uint8(SquareFootPerHour)},
		{file: "ft2/h", print: "ft²/h", num: 9290304, exp: -8, den: 1, system: US, metric: uint8(SquareMetrePerHour)},
	}}
	potentials = table{base: 1, units: []unitDef{
		{file: "mV", print: "mV", num: 1, den: 1},
		{file: "V", print: "V", num: 1000, den: 1},
	}}
	releases = table{base: 1, units: []unitDef{
		{file: "ug/cm2/d", print: "µg/cm²/d", also: []string{"μg/cm²/d"}, num: 1, den: 1},
	}}
)

// tableOf is the table of a dimension.
func tableOf[D Dim]() *table {
	var d D
	switch any(d).(type) {
	case length:
		return &lengths
	case area:
		return &areas
	case film:
		return &films
	case volume:
		return &volumes
	case spread:
		return &spreads
	case share:
		return &shares
	case mass:
		return &masses
	case density:
		return &densities
	case temperature:
		return &temperatures
	case speed:
		return &speeds
	case duration:
		return &durations
	case calendar:
		return &calendars
	case workrate:
		return &workrates
	case potential:
		return &potentials
	default: // release, the last of Dim
		return &releases
	}
}

// find is the unit with this spelling, 0 for none.
func (t *table) find(s string) uint8 {
	for i := range t.units {
		d := &t.units[i]
		if s == d.file || s == d.print || d.single != "" && s == d.single {
			return uint8(i + 1)
		}
		for _, a := range d.also {
			if s == a {
				return uint8(i + 1)
			}
		}
	}
	return 0
}

// names are the units as written in files, in the order of the constants.
func (t *table) names() []string {
	names := make([]string, len(t.units))
	for i := range t.units {
		names[i] = t.units[i].file
	}
	return names
}
