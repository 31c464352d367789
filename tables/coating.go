package tables

import (
	"iter"
	"slices"

	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Coating is one generic coating: an antifouling type, an undercoat, a blacking, "no coating", or an old film as found.
// A quantity that is not given means that the row does not limit it.
type Coating struct {
	Row
	Role      Role
	Mechanism Mechanism // antifoulings, blackings, bare and old films
	Biocide   Biocide   // from the actives; stated for old films
	Packs     int       // 1 or 2 components
	Carrier   string    // solvent, water, none
	Strong    bool      // its solvent lifts vinyl and chlorinated rubber
	at        int       // its place among the coatings of its book

	Solids  quantity.Range[quantity.Share]   // volume solids, 0 to 100 %
	Density quantity.Range[quantity.Density] // of the wet paint as supplied, by which content by weight becomes content by volume
	Film    quantity.Range[quantity.Film]    // dry film a coat, by roller
	Coats   int                              // least number of coats of a full scheme
	Most    int                              // most coats that make sense in one scheme

	At          quantity.Temperature // temperature at which the windows are stated
	TouchDry    quantity.Duration    // until then neither dew nor dust may reach the film; not given: no limit
	RainSafe    quantity.Duration    // until then no rain may
	OvercoatMin quantity.Duration    // before that the next coat traps solvent
	OvercoatMax quantity.Duration    // after that the film is abraded first; not given: no limit
	AntifoulMax quantity.Duration    // after that a one-pack antifouling asks for abrading first: a window shorter than OvercoatMax; not given: OvercoatMax
	LaunchMin   quantity.Duration    // drying before the water
	AirNew      quantity.Duration    // first air clock: a new film may stand dry so long before launch
	AirScuff    quantity.Duration    // second air clock: a used film out of the water longer must be scuffed
	AirUsed     quantity.Duration    // second air clock: a used film out of the water longer must be recoated
	ApplyMin    quantity.Temperature // surface temperature limits of application
	ApplyMax    quantity.Temperature

	SpeedMin   quantity.Speed                  // below that growth is not shed (foul-release)
	SpeedMax   quantity.Speed                  // sustained speed that the film stands
	IdleMax    quantity.Duration               // longest lie without moving before slime and weed take hold
	HoursMin   quantity.Duration               // hours under way a year that it polishes by; not given: it needs none
	CleanEvery quantity.Duration               // needs cleaning so often in season; not given: needs none
	Scrub      Grade                           // hardest cleaning the film stands: none, light (sponge), medium (brush), heavy (scrubbing)
	Abrasion   Grade                           // grounding, bunks, slings, ice: what the film stands
	Growth     Grade                           // strongest fouling pressure it holds off for its life
	Bright     bool                            // can be had in white and bright colours
	Skilled    bool                            // goes on well only by trained hands
	Burnish    bool                            // can be burnished to a racing finish
	Life       quantity.Range[quantity.Months] // months afloat it stays active, for films that do not wear away
	WearRest   quantity.Range[quantity.Film]   // film lost a month at rest
	WearUse    quantity.Range[quantity.Film]   // film lost a month in regular use
	Under      string                          // key of the undercoat that it cannot do without (silicone on its tie coat)

	Recognised string // old films: how they are recognised
	sheet      bool
	waters     []string
	materials  []string
	actives    []Active
	hazards    []string
}

// Active is one biocide in a coating, with its content.
type Active struct {
	Key     string // row of actives.toml
	Content quantity.Range[quantity.Share]
}

// Actives lists the biocides in the coating, as the row gives them. Content is by weight of the wet paint as supplied.
func (c Coating) Actives() iter.Seq[Active] { return slices.Values(c.actives) }

// Hazards lists the keys of the cautions that the film calls for when it is worked on.
func (c Coating) Hazards() iter.Seq[string] { return slices.Values(c.hazards) }

// Suits reports whether the coating is meant for the water: salt, brackish or fresh.
func (c Coating) Suits(water string) bool { return slices.Contains(c.waters, water) }

// MadeFor reports whether the coating is meant for the material: one of its row's materials, or any where it names none.
func (c Coating) MadeFor(material string) bool {
	return len(c.materials) == 0 || slices.Contains(c.materials, material)
}

// Copper reports whether the coating holds copper in any form that a metal or a law asks about, or may hold it.
func (c Coating) Copper() bool {
	switch c.Biocide {
	case CuprousOxide, MetallicCopper, CopperThiocyanate, OtherCopper, UnknownBiocide:
		return true
	case CopperFree, NoBiocide, Organotin:
	}
	return false
}

// Laid reports whether the coating is laid as a sheet rather than painted.
func (c Coating) Laid() bool { return c.sheet }

// Wears reports whether the film wears away in the water, so that its life is a question of thickness.
func (c Coating) Wears() bool { return c.WearUse.Typical.Given() }

// Ranked reports whether the coating is one of the types that a bottom can end with.
func (c Coating) Ranked() bool { return c.Role == Antifouling || c.Role == Blacking || c.Role == Bare }

// Family returns the word that overcoat rows match the coating by: the mechanism, or the role of an undercoat.
func (c Coating) Family() string {
	if c.Mechanism != "" {
		return string(c.Mechanism)
	}
	return string(c.Role)
}

var (
	mechanismWords = []string{string(Hard), string(Ablative), string(SelfPolishing), string(Hybrid), string(FoulRelease), string(Inert), string(ThinFilm), string(CopperLoaded), string(Soft), string(Bitumen), string(Vinyl), string(Unknown), string(NoFilm)}
	biocideWords   = []string{string(CuprousOxide), string(MetallicCopper), string(CopperThiocyanate), string(OtherCopper), string(CopperFree), string(Organotin), string(UnknownBiocide), string(NoBiocide)}
	roleWords      = []string{string(Antifouling), string(Primer), string(Barrier), string(TieCoat), string(Sealer), string(Blacking), string(Bare), string(OldFilm)}
	waterWords     = []string{"salt", "brackish", "fresh"}
)

// Waters lists the words for the water a boat lies in.
func Waters() []string { return slices.Clone(waterWords) }

func readCoating(r *entry.Row) Coating {
	c := Coating{
		Row:         readRow(r),
		Role:        Role(r.Word("role", roleWords...)),
		Mechanism:   Mechanism(r.Word("mechanism", mechanismWords...)),
		Biocide:     Biocide(r.Word("biocide", biocideWords...)),
		Carrier:     r.Word("carrier", "solvent", "water", "none"),
		Solids:      entry.Range[quantity.Share](r, "solids"),
		Density:     entry.Range[quantity.Density](r, "density"),
		Film:        entry.Range[quantity.Film](r, "film"),
		At:          entry.Amount[quantity.Temperature](r, "at"),
		TouchDry:    entry.Amount[quantity.Duration](r, "touch_dry"),
		RainSafe:    entry.Amount[quantity.Duration](r, "rain_safe"),
		OvercoatMin: entry.Amount[quantity.Duration](r, "overcoat_min"),
		OvercoatMax: entry.Amount[quantity.Duration](r, "overcoat_max"),
		AntifoulMax: entry.Amount[quantity.Duration](r, "antifouling_max"),
		LaunchMin:   entry.Amount[quantity.Duration](r, "launch_min"),
		AirNew:      entry.Amount[quantity.Duration](r, "air_new"),
		AirScuff:    entry.Amount[quantity.Duration](r, "air_scuff"),
		AirUsed:     entry.Amount[quantity.Duration](r, "air_used"),
		ApplyMin:    entry.Amount[quantity.Temperature](r, "apply_min"),
		ApplyMax:    entry.Amount[quantity.Temperature](r, "apply_max"),
		SpeedMin:    entry.Amount[quantity.Speed](r, "speed_min"),
		SpeedMax:    entry.Amount[quantity.Speed](r, "speed_max"),
		IdleMax:     entry.Amount[quantity.Duration](r, "idle_max"),
		HoursMin:    entry.Amount[quantity.Duration](r, "hours_min"),
		CleanEvery:  entry.Amount[quantity.Duration](r, "clean_every"),
		Scrub:       gradeOf(r, "scrub"),
		Abrasion:    gradeOf(r, "abrasion"),
		Growth:      gradeOf(r, "growth"),
		Strong:      r.YesNo("strong_solvent").True(),
		Bright:      r.YesNo("bright").True(),
		Burnish:     r.YesNo("burnish").True(),
		Skilled:     r.YesNo("skilled").True(),
		Life:        entry.Range[quantity.Months](r, "life"),
		WearRest:    entry.Range[quantity.Film](r, "wear_rest"),
		WearUse:     entry.Range[quantity.Film](r, "wear_use"),
		Under:       r.Text("under"),
		Recognised:  r.Text("recognised"),
		sheet:       r.YesNo("sheet").True(),
		waters:      r.Words("waters", waterWords...),
		materials:   r.Texts("materials"),
		hazards:     r.Texts("hazards"),
	}
	c.Packs, _ = r.Int("packs", 1, 2)
	c.Coats, _ = r.Int("coats", 0, 10)
	c.Most, _ = r.Int("most_coats", 0, 12)
	for _, a := range r.Tables("active") {
		a.Need("the key of a row of actives", "key")
		c.actives = append(c.actives, Active{Key: a.Text("key"), Content: entry.Range[quantity.Share](a, "content")})
		checkShare(a, "content", c.actives[len(c.actives)-1].Content)
		a.Close()
	}
	checkCoating(r, c)
	return c
}

func checkCoating(r *entry.Row, c Coating) {
	r.Need("one of the roles", "role")
	switch c.Role {
	case Bare:
		r.Need("what the rules read of every ranked type", "mechanism", "scrub", "abrasion", "growth", "waters")
	case OldFilm:
		r.Need("what the rules read of every old film", "mechanism", "biocide", "packs", "recognised")
	case Antifouling, Blacking:
		r.Need("what the rules read of every ranked type", "mechanism", "packs", "carrier", "solids", "film", "coats", "most_coats", "at", "overcoat_min",
			"launch_min", "apply_min", "apply_max", "scrub", "abrasion", "growth", "waters")
		if !r.Has("life") && !r.Has("wear_use") {
			r.Fault(finding.ErrMissing, "life", "", "months of active life, or wear_rest and wear_use for a film that wears away")
		}
	case Primer, Barrier, TieCoat, Sealer:
		r.Need("what the rules read of every undercoat", "packs", "carrier", "solids", "film", "coats", "at", "overcoat_min", "apply_min", "apply_max")
	}
	if r.Has("wear_use") != r.Has("wear_rest") {
		r.Fault(finding.ErrMissing, "wear_rest", "", "wear_rest and wear_use together")
	}
	checkShare(r, "solids", c.Solids)
	if c.Density.Low.Given() && c.Density.Low.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "density", c.Density.Low.String(), "a density above zero")
	}
	if c.Film.Low.Given() && c.Film.Low.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "film", c.Film.Low.String(), "a film above zero")
	}
	if c.WearRest.Low.Given() && c.WearRest.Low.Sign() < 0 {
		r.Fault(finding.ErrImpossible, "wear_rest", c.WearRest.Low.String(), "a wear of zero or more")
	}
	if c.WearUse.Low.Given() && c.WearUse.Low.Sign() <= 0 {
		r.Fault(finding.ErrImpossible, "wear_use", c.WearUse.Low.String(), "a wear above zero")
	}
	if c.Life.Low.Given() && c.Life.Low.Sign() < 0 {
		r.Fault(finding.ErrImpossible, "life", c.Life.Low.String(), "a life of zero or more")
	}
	if c.Role != OldFilm && r.Has("biocide") {
		r.Fault(finding.ErrValue, "biocide", entry.Describe(string(c.Biocide)), "nothing: the class follows from the actives; only an old film states it")
	}
	notNegative(r, "touch_dry", c.TouchDry)
	notNegative(r, "rain_safe", c.RainSafe)
	if c.TouchDry.Given() && c.RainSafe.Given() && c.RainSafe.Cmp(c.TouchDry) < 0 {
		r.Fault(finding.ErrImpossible, "rain_safe", c.RainSafe.String(), "no shorter than touch_dry")
	}
	notNegative(r, "overcoat_min", c.OvercoatMin)
	notNegative(r, "launch_min", c.LaunchMin)
	notNegative(r, "air_new", c.AirNew)
	notNegative(r, "air_scuff", c.AirScuff)
	notNegative(r, "air_used", c.AirUsed)
	notNegative(r, "speed_min", c.SpeedMin)
	notNegative(r, "speed_max", c.SpeedMax)
	notNegative(r, "idle_max", c.IdleMax)
	notNegative(r, "hours_min", c.HoursMin)
	notNegative(r, "clean_every", c.CleanEvery)
	rising(r, "overcoat_max", c.OvercoatMin, c.OvercoatMax, "a window that closes after it opens: more than overcoat_min")
	rising(r, "antifouling_max", c.OvercoatMin, c.AntifoulMax, "a window that closes after it opens: more than overcoat_min")
	rising(r, "air_used", c.AirScuff, c.AirUsed, "more than air_scuff")
	rising(r, "air_new", c.LaunchMin, c.AirNew, "more than launch_min")
	rising(r, "apply_max", c.ApplyMin, c.ApplyMax, "more than apply_min")
	rising(r, "speed_max", c.SpeedMin, c.SpeedMax, "more than speed_min")
	if c.Most < c.Coats {
		r.Fault(finding.ErrImpossible, "most_coats", "", "at least coats")
	}
}

// rising notes a fault when both are given and high is not more than low.
func rising[Q interface {
	Cmp(o Q) int
	Given() bool
	String() string
}](r *entry.Row, key string, low, high Q, want string) {
	if low.Given() && high.Given() && high.Cmp(low) <= 0 {
		r.Fault(finding.ErrImpossible, key, high.String(), want)
	}
}

func notNegative[D quantity.Dim](r *entry.Row, key string, q quantity.Amount[D]) {
	if q.Sign() < 0 {
		r.Fault(finding.ErrImpossible, key, q.String(), "zero or more")
	}
}

func checkShare(r *entry.Row, key string, s quantity.Range[quantity.Share]) {
	if !s.Low.Given() {
		return
	}
	if s.Low.Sign() <= 0 || s.High.Cmp(quantity.Percent.N(100)) > 0 {
		r.Fault(finding.ErrImpossible, key, s.Low.String()+" to "+s.High.String(), "more than 0 % and at most 100 %")
	}
}
