package antifoul

import (
	"strconv"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Criterion is one thing that suitability is judged by, for one type on one part.
type Criterion struct {
	Key     string          // row of the criterion table
	Value   float64         // 0, does not suit, to 1, suits
	Points  float64         // what it added to the score (positive) or took from it; see Place.Score
	Boat    any             // the boat's number or word; nil when the boat file does not give it
	Type    any             // the type's number or word
	Judged  bool            // false: the boat file does not say, so the value is neutral
	Finding finding.Finding // why, in a rule's words; without a rule when there is nothing to say
	Bars    bool            // the use speaks against the type: it goes to the tier Unsuited whatever its score
}

// The rules of this package, rows of rules_choice.toml.
const (
	RuleLasts          finding.ID = "use-lasts"
	RuleLastsCoats     finding.ID = "use-lasts-coats"
	RuleTooShort       finding.ID = "use-too-short"
	RuleTooManyCoats   finding.ID = "use-too-many-coats"
	RuleCoatsAtHigh    finding.ID = "use-coats-at-high-wear"
	RuleGrowthHeld     finding.ID = "use-growth-held"
	RuleGrowthOver     finding.ID = "use-growth-over"
	RuleBareGrowth     finding.ID = "use-bare-growth"
	RuleBareAfloat     finding.ID = "use-bare-afloat"
	RuleBareMetal      finding.ID = "use-bare-metal"
	RuleBareSelf       finding.ID = "use-bare-self"
	RulePaintDefeats   finding.ID = "use-paint-defeats"
	RuleNoNeed         finding.ID = "use-no-need"
	RuleMaterialOther  finding.ID = "use-material-other"
	RuleNoBiocide      finding.ID = "use-no-biocide"
	RuleBareUsual      finding.ID = "use-bare-usual"
	RulePreferred      finding.ID = "use-preferred"
	RuleNotPreferred   finding.ID = "use-not-preferred"
	RuleWorkLittle     finding.ID = "use-work-little"
	RuleNoGrowth       finding.ID = "use-no-growth"
	RuleSurplus        finding.ID = "use-surplus"
	RuleSpeedFits      finding.ID = "use-speed-fits"
	RuleSpeedOver      finding.ID = "use-speed-over"
	RuleSpeedUnder     finding.ID = "use-speed-under"
	RuleIdleFits       finding.ID = "use-idle-fits"
	RuleIdleOver       finding.ID = "use-idle-over"
	RuleMaterialFlexes finding.ID = "use-material-flexes"
	RuleBarrierGround  finding.ID = "use-barrier-ground"
	RuleStripsSound    finding.ID = "use-strips-sound"
	RuleSkilled        finding.ID = "use-skilled"
	RuleStaysWorth     finding.ID = "use-stays-worth"
	RuleStaysBehind    finding.ID = "use-stays-behind"
	RuleHoursUnder     finding.ID = "use-hours-under"
	RuleCleanWears     finding.ID = "use-clean-wears"
	RuleBareWiped      finding.ID = "use-bare-wiped"
	RuleAirFits        finding.ID = "use-air-fits"
	RuleAirOver        finding.ID = "use-air-over"
	RuleAirOpen        finding.ID = "use-air-open"
	RuleAirBetween     finding.ID = "use-air-between"
	RuleAirUnsaid      finding.ID = "use-air-unsaid"
	RuleCleanFits      finding.ID = "use-clean-fits"
	RuleCleanHard      finding.ID = "use-clean-hard"
	RuleCleanLack      finding.ID = "use-clean-lack"
	RuleCleanBanned    finding.ID = "use-clean-banned"
	RuleCleanOpen      finding.ID = "use-clean-open"
	RuleSoftBinds      finding.ID = "use-soft-binds"
	RuleAbrasionFits   finding.ID = "use-abrasion-fits"
	RuleAbrasionNone   finding.ID = "use-abrasion-none"
	RuleAbrasionOver   finding.ID = "use-abrasion-over"
	RuleWaterWrong     finding.ID = "use-water-wrong"
	RuleWork           finding.ID = "use-work"
	RuleLessBiocide    finding.ID = "use-less-biocide"
	RuleColourWrong    finding.ID = "use-colour-wrong"
	RuleRacingFits     finding.ID = "use-racing-fits"
	RuleRacingWrong    finding.ID = "use-racing-wrong"
	RuleSameAgain      finding.ID = "use-same-again"
	RuleFilmWait       finding.ID = "launch-wait"
	RuleAnodeWater     finding.ID = "part-anode-water"
	RuleNeverPainted   finding.ID = "part-never-painted"
)

// perSquareMetre is hours of one hand a square metre, as a criterion shows them.
type perSquareMetre float64

// String prints two decimals.
func (h perSquareMetre) String() string {
	return strconv.FormatFloat(float64(h), 'f', 2, 64) + " h/m²"
}

// coatCount is a number of coats, as a criterion shows it.
type coatCount int

// String prints the number and the word.
func (n coatCount) String() string {
	if n == 1 {
		return "1 coat"
	}
	return strconv.Itoa(int(n)) + " coats"
}

// noLimit is shown where a row does not limit the type.
const noLimit = "no limit"

// question is what the criteria ask about: one part of one boat, prepared once for all types.
type question struct {
	b         *tables.Book
	boat      Boat
	part      compat.Part
	surface   *compat.Surface
	wear      wear.Conditions
	months    float64 // calendar months wished
	wished    quantity.Months
	dry       int             // days from the day of the question to launch; 0 when not known
	old       *tables.Coating // the uppermost film found; nil when none was reported
	top       *tables.Colour  // the wished top colour; nil when none was wished
	bareUsual bool            // the zone is one that the trade leaves bare and polished (propellers)
	openAir   float64         // days that an open launch may mean
	hardSpeed float64         // knots above which a film must be hard to stay
	idleBar   float64         // multiple of a type's longest idle at which it is unsuited
	desk      *law.Desk
	past      map[string]past // own results at her berth, by type
	material  tables.Material
	weights   [criteria]float64
	weight    float64 // sum of the weights
	workBar   float64 // hours a square metre at which the work criterion reaches zero
}

func newQuestion(b *tables.Book, boat Boat, part compat.Part, desk *law.Desk) *question {
	q := &question{
		b: b, boat: boat, part: part, surface: compat.On(b, part), desk: desk, past: pastOf(b, boat), wear: wear.In(b, boat.Use), months: boat.Months(), wished: months(boat.Months()),
		openAir: factor(b, "open-launch-days"), hardSpeed: factor(b, "hard-film-speed"), idleBar: factor(b, "idle-bar"), workBar: factor(b, "work-hours-full"),
	}
	q.dry, _ = boat.Work.Dry(boat.On)
	if n := len(part.Found); n > 0 {
		q.old = &part.Found[n-1].Coating
	}
	if boat.Wishes.TopColour != "" {
		if k, err := b.Colour(boat.Wishes.TopColour); err == nil {
			q.top = &k
		}
	}
	q.material, _ = b.Material(part.Material) // checked with the boat
	if z, err := b.Zone(part.Zone); err == nil {
		q.bareUsual = z.Takes(tables.NoFilm) && !z.Takes(tables.Ablative)
	}
	for i, k := range criterionFuncs {
		if row, err := b.Criterion(k.key); err == nil {
			q.weights[i] = row.Weight
			q.weight += row.Weight
		}
	}
	return q
}

// factor returns the typical value of a factor row that the book was seen to hold; see complete.
func factor(b *tables.Book, key string) float64 {
	f, _ := b.Factor(key)
	return f.Value.Typical
}

// criteria is the number of criteria.
const criteria = 16

// criterionFuncs lists the criteria in the order in which a report prints them; each key is a row of the criterion table.
var criterionFuncs = [criteria]struct {
	key string
	f   func(q *question, c *asked) worth
}{
	{"lasting", lasting},
	{"growth", growth},
	{"restraint", restraint},
	{"speed", speed},
	{"idle", idle},
	{"air", air},
	{"cleaning", cleaning},
	{"abrasion", abrasion},
	{"stays", stays},
	{"water", water},
	{"metal", metal},
	{"work", work},
	{"biocide", biocide},
	{"colour", colour},
	{"racing", racing},
	{"same", same},
}

// asked is one type that the criteria are asked about. The values that a criterion shows and its finding are only made when they
// are told; the ranking of all types takes what the criteria are worth to it.
type asked struct {
	*tables.Coating
	way  way
	told bool
}

// shown is what a criterion shows: the boat's value, the type's, and the facts of its finding.
type shown struct {
	boat, typ any
	facts     []finding.Fact
}

// nothing is shown where neither the boat nor the type has a value.
func nothing() shown { return shown{} }

// worth is what a criterion makes of one type: see the fields of Criterion.
type worth struct {
	value        float64
	judged, bars bool
	told         *Criterion // what is shown, and why; nil where nobody asked to be told
}

// score is a criterion without a finding.
func (c *asked) score(value float64, judged bool, show func() shown) worth {
	k := worth{value: value, judged: judged}
	if c.told {
		s := show()
		k.told = &Criterion{Boat: s.boat, Type: s.typ}
	}
	return k
}

// answer is a judged criterion with its sentence. Verdict Caution marks what speaks against the type.
func (c *asked) answer(value float64, rule finding.ID, field string, show func() shown) worth {
	k := worth{value: clamp(value), judged: true}
	if !c.told {
		return k
	}
	s, v := show(), finding.Fine
	if value < 0.5 {
		v = finding.Caution
	}
	k.told = &Criterion{Boat: s.boat, Type: s.typ, Finding: finding.Finding{Rule: rule, Verdict: v, About: c.Name, Facts: s.facts, Basis: []finding.Basis{c.Basis(field)}}}
	return k
}

// bars is the answer that the use speaks against the type.
func (c *asked) bars(rule finding.ID, field string, show func() shown) worth {
	k := c.answer(0, rule, field, show)
	k.bars = true
	return k
}

func clamp(x float64) float64 { return min(1, max(0, x)) }

func days(d quantity.Duration) float64 { return d.Float(quantity.Day) }

func facts(fs ...finding.Fact) []finding.Fact { return fs }

func fact(name string, value any) finding.Fact { return finding.Fact{Name: name, Value: value} }
