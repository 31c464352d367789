package wear

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Use is what the boat does and where she lies: the [use] section of a boat file. A field that is not given is not assumed
// here; each formula says what it does without it.
type Use struct {
	UnderWay            quantity.Duration    // under way, a year
	Speed               quantity.Speed       // sustained cruising speed through the water
	LongestIdle         quantity.Duration    // longest lie afloat without moving, in season
	HaulOutEvery        quantity.Months      // between haul-outs with bottom work
	AshoreEachYear      quantity.Months      // out of the water, a year
	RelaunchedUnpainted quantity.YesNo       // goes back after that time without new paint
	Growth              tables.Grade         // fouling pressure where she lies: light, medium, heavy; 0: not given
	Water               string               // salt, brackish, fresh
	WaterTemperature    quantity.Temperature // mean in season
	Cleaning            tables.Grade         // hardest cleaning afloat: none, light (sponge), medium (brush), heavy (scrubbing); 0: not given
	CleanedEvery        quantity.Duration    // between cleanings in season
	Kept                string               // afloat, trailer, lift
	Ice                 quantity.YesNo       // she lies in ice, or is run through it
	DriesOn             string               // ground she takes between tides: none, soft, firm
	Fits                []Fit                // what FitRecords made of her own record; they stand in place of the tables' rates
}

// The words of Kept and DriesOn.
var (
	keptWords    = []string{"afloat", "trailer", "lift"}
	driesOnWords = []string{"none", "soft", "firm"}
)

// CleaningWords lists the words of the cleaning key, the gentlest first, as the grades that they stand for: none, sponge, brush, scrub.
func CleaningWords() []string { return []string{"none", "sponge", "brush", "scrub"} }

// ParseCleaning reads a cleaning word as the grade that it stands for. The error of another word is a finding.Faults.
func ParseCleaning(word string) (tables.Grade, error) {
	if i := slices.Index(CleaningWords(), word); i >= 0 {
		return tables.Grade(i + 1), nil
	}
	return 0, finding.Faults{{Kind: finding.ErrValue, Key: "cleaning", Got: entry.Describe(word), Want: finding.Suggest(word, CleaningWords())}}
}

// Afloat reports whether she lies in the water in season: kept afloat, or not said.
func (u Use) Afloat() bool { return u.Kept == "" || u.Kept == "afloat" }

// Pressure returns the fouling pressure that the bottom meets: none for a boat that lives on a trailer or lift, else what was
// given; 0 when nothing was.
// Basis: common practice.
func (u Use) Pressure() tables.Grade {
	if !u.Afloat() {
		return tables.None
	}
	return u.Growth
}

// Abrasion returns what the bottom must stand: firm ground and ice are heavy, a trailer's bunks medium, soft ground or a lift's slings
// light, else none.
// Basis: common practice.
func (u Use) Abrasion() tables.Grade {
	a := tables.None
	switch u.Kept {
	case "trailer":
		a = tables.Medium
	case "lift":
		a = tables.Light
	}
	if u.Ice.True() {
		a = tables.Heavy
	}
	switch u.DriesOn {
	case "firm":
		a = max(a, tables.Heavy)
	case "soft":
		a = max(a, tables.Light)
	}
	return a
}

// AfloatMonths returns how many of the given calendar months, counted from a launch at the start of a season, she is in the
// water: each year first her months afloat, then her months ashore.
//
//	afloat = whole years × (12 − ashore) + min(rest, 12 − ashore)
//
// Months ashore that are not given count as none: the longer time afloat is the safer side.
// Basis: derived.
func (u Use) AfloatMonths(months float64) float64 {
	season := u.season()
	years := math.Floor(months / 12)
	return float64(years*season) + min(months-12*years, season)
}

// CalendarMonths returns the calendar month, counted as in AfloatMonths, in which so many months afloat are reached. It is the
// inverse of AfloatMonths while she is afloat. A boat that is ashore all year returns the months given.
//
//	whole years = ceil(afloat / (12 − ashore)) − 1
//	calendar    = 12 × whole years + afloat − whole years × (12 − ashore)
//
// Basis: derived.
func (u Use) CalendarMonths(afloat float64) float64 {
	season := u.season()
	if season <= 0 || math.IsInf(afloat, 0) {
		return afloat
	}
	years := max(0, math.Ceil(afloat/season-1e-9)-1)
	return float64(12*years) + afloat - float64(years*season)
}

// season is the months afloat of a year.
func (u Use) season() float64 {
	if !u.AshoreEachYear.Given() {
		return 12
	}
	return 12 - u.AshoreEachYear.Float(quantity.Month)
}

// Check returns every fault of the section, keys as in a boat file.
func (u Use) Check() finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	word := func(key, got string, taken []string) {
		if got != "" && !slices.Contains(taken, got) {
			bad(finding.ErrValue, key, entry.Describe(got), "one of "+strings.Join(taken, ", "))
		}
	}
	word("water", u.Water, tables.Waters())
	word("kept", u.Kept, keptWords)
	word("dries_on", u.DriesOn, driesOnWords)
	if u.Growth == tables.None || u.Growth > tables.Heavy { // a file cannot say either
		bad(finding.ErrValue, "growth", strconv.Itoa(int(u.Growth)), "one of "+strings.Join(tables.GradeWords()[1:], ", "))
	}
	if u.Cleaning > tables.Heavy {
		bad(finding.ErrValue, "cleaning", strconv.Itoa(int(u.Cleaning)), "one of "+strings.Join(CleaningWords(), ", "))
	}
	if u.UnderWay.Given() && (u.UnderWay.Sign() < 0 || u.UnderWay.Cmp(quantity.Hour.N(8784)) > 0) {
		bad(finding.ErrImpossible, "under_way", u.UnderWay.String(), "hours a year, 0 h to 8784 h")
	}
	if u.Speed.Given() && (u.Speed.Sign() < 0 || u.Speed.Cmp(quantity.Knot.N(80)) > 0) {
		bad(finding.ErrImpossible, "speed", u.Speed.String(), "a sustained speed, 0 kn to 80 kn")
	}
	if u.LongestIdle.Given() && (u.LongestIdle.Sign() < 0 || u.LongestIdle.Cmp(quantity.Day.N(3660)) > 0) {
		bad(finding.ErrImpossible, "longest_idle", u.LongestIdle.String(), "days, 0 d to 3660 d")
	}
	if u.HaulOutEvery.Given() && (u.HaulOutEvery.Sign() <= 0 || u.HaulOutEvery.Cmp(quantity.Month.N(240)) > 0) {
		bad(finding.ErrImpossible, "haul_out_every", u.HaulOutEvery.String(), "an interval above zero, to 240 months")
	}
	if u.AshoreEachYear.Given() && (u.AshoreEachYear.Sign() < 0 || u.AshoreEachYear.Cmp(quantity.Month.N(12)) > 0) {
		bad(finding.ErrImpossible, "ashore_each_year", u.AshoreEachYear.String(), "0 months to 12 months")
	}
	if u.WaterTemperature.Given() && (u.WaterTemperature.Cmp(quantity.Celsius.N(-2)) < 0 || u.WaterTemperature.Cmp(quantity.Celsius.N(40)) > 0) {
		bad(finding.ErrImpossible, "water_temperature", u.WaterTemperature.String(), "-2 degC to 40 degC")
	}
	if u.CleanedEvery.Given() && u.CleanedEvery.Sign() <= 0 {
		bad(finding.ErrImpossible, "cleaned_every", u.CleanedEvery.String(), "days above zero")
	}
	if u.CleanedEvery.Given() && u.Cleaning <= tables.None {
		bad(finding.ErrMissing, "cleaning", u.Cleaning.String(), "sponge, brush or scrub, since cleaned_every is given")
	}
	if u.Cleaning > tables.None && !u.CleanedEvery.Given() {
		bad(finding.ErrMissing, "cleaned_every", "", "how often, \"30 d\", since cleaning is given")
	}
	return fs
}
