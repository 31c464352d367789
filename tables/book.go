package tables

import (
	"embed"
	"io/fs"
	"iter"
	"slices"
	"sync"

	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

//go:embed data
var embedded embed.FS

// Book is a whole set of reference tables. It never changes; share it freely.
type Book struct {
	_       [0]func()
	records map[string][]*record

	coatings   shelf[Coating]
	actives    shelf[ActiveRow]
	materials  shelf[Material]
	conditions shelf[ConditionRow]
	overcoats  shelf[Overcoat]
	zones      shelf[Zone]
	forms      shelf[HullForm]
	methods    shelf[AreaMethod]
	pieces     shelf[PieceRow]
	supplies   shelf[Supply]
	seasons    shelf[Season]
	losses     shelf[Loss]
	cans       shelf[Can]
	colours    shelf[Colour]
	steps      shelf[StepRow]
	factors    shelf[Factor]
	criteria   shelf[Criterion]
	places     shelf[Place]
	laws       shelf[Law]
	cautions   shelf[Caution]
	sources    shelf[Source]
	rules      shelf[Rule]
	results    shelf[PastResult]
	prices     shelf[Price]
	signs      shelf[Sign]
	thresholds shelf[Threshold]
	dryings    shelf[Drying]

	potentials  shelf[Potential]
	electrodes  shelf[Electrode]
	protections shelf[Protection]
	grades      shelf[GradeRow]
	profiles    shelf[Profile]
	samplings   shelf[Sampling]
	roughnesses shelf[Roughness]
	values      shelf[Value]
	acceptances shelf[Acceptance]
	instruments shelf[Instrument]

	observations shelf[Observation]

	digits func() string // the fingerprint, worked out once when it is first asked for

	near   map[string][]bool    // by place: which laws may touch a boat there
	onOld  map[string][]speaker // the overcoat rows by their old field
	pairs  [][2]*Overcoat       // what answers each pair of the paired coatings, inside and past the window: next × old
	paired int                  // all coatings; none in a very large book
}

// tableNames are the arrays that a file may hold.
var tableNames = []string{
	"active", "area_method", "can", "caution", "coating", "colour", "condition", "criterion", "drying", "factor", "hull_form", "law", "loss",
	"material", "overcoat", "past_result", "piece", "place", "price", "rule", "sign", "source", "step", "supply", "threshold", "zone",
	"electrode", "grade", "potential", "profile", "protection", "roughness", "sampling", "season", "value",
	"acceptance", "instrument", "observation",
}

var defaultBook = sync.OnceValues(func() (*Book, error) {
	data, err := fs.Sub(embedded, "data")
	if err != nil {
		return nil, err
	}
	return Load(data)
})

// Default returns the embedded tables. They are parsed once, at the first call.
func Default() *Book {
	b, err := defaultBook()
	if err != nil {
		return &Book{} // the module's own tests load the embedded tables and fail on any fault, so this never ships
	}
	return b
}

// Load reads a whole book from every TOML file of the folder, subfolders too; rows stand in the order of their files' paths. Files are read at the same time, as os.DirFS,
// embed.FS and fstest.MapFS allow. The error is a finding.Faults with every fault
// of every file: unknown tables and keys, missing fields, values that are not accepted, rows without a basis, references to
// rows that do not exist.
func Load(fsys fs.FS) (*Book, error) {
	var faults finding.Faults
	return build(gather(fsys, tableNames, &faults), &faults)
}

// With returns a new book with the rows of the folder on top of b's. A row with a key that b has replaces only the fields
// that it gives; the replaced values then rest on the own table (see Row.Basis). Every own row states its basis and, for
// "own table", in source what it was read from: the paint's data sheet, a record. A row marked safety yields only to a row with
// override = true and a reason; Overrides lists those. Own actives may not move a coating to another biocide class.
func (b *Book) With(own fs.FS) (*Book, error) {
	var faults finding.Faults
	ownRecords := gather(own, tableNames, &faults)
	records := make(map[string][]*record, len(b.records))
	for _, t := range tableNames {
		records[t] = overlay(t, b.records[t], ownRecords[t], &faults)
	}
	next, err := build(records, &faults)
	if err != nil {
		return nil, err
	}
	if err := b.reclassified(next).Err(); err != nil {
		return nil, err
	}
	return next, nil
}

// reclassified notes the coatings whose biocide class own actives have changed: what metals and laws forbid hangs on the class, so
// another class is another type and wants a key of its own.
func (b *Book) reclassified(next *Book) finding.Faults {
	var fs finding.Faults
	for i := range b.coatings.rows {
		was := &b.coatings.rows[i]
		at := next.coatings.at[was.Key]
		if _, own := next.coatings.from[at].own["active"]; !own {
			continue
		}
		if is := &next.coatings.rows[at]; is.Biocide != was.Biocide {
			fs = append(fs, finding.Fault{
				Kind: finding.ErrSafety, File: next.coatings.from[at].file, Key: "coating[" + was.Key + "].active",
				Got: "biocides of the class " + string(is.Biocide), Want: "the class " + string(was.Biocide) + " as before; a paint of another class is a type of its own, under a key of its own",
			})
		}
	}
	return fs
}

func build(records map[string][]*record, faults *finding.Faults) (*Book, error) {
	b := &Book{records: records, digits: sync.OnceValue(func() string { return fingerprint(records) })}
	b.sources.fill("source", records["source"], faults, readSource)
	b.rules.fill("rule", records["rule"], faults, readRule)
	b.actives.fill("active", records["active"], faults, readActive)
	b.coatings.fill("coating", records["coating"], faults, readCoating)
	b.dryings.fill("drying", records["drying"], faults, readDrying)
	b.materials.fill("material", records["material"], faults, readMaterial)
	b.conditions.fill("condition", records["condition"], faults, readCondition)
	b.overcoats.fill("overcoat", records["overcoat"], faults, readOvercoat)
	b.indexOvercoats()
	b.zones.fill("zone", records["zone"], faults, readZone)
	b.forms.fill("hull_form", records["hull_form"], faults, readHullForm)
	b.methods.fill("area_method", records["area_method"], faults, readAreaMethod)
	b.pieces.fill("piece", records["piece"], faults, readPieceRow)
	b.seasons.fill("season", records["season"], faults, readSeason)
	b.supplies.fill("supply", records["supply"], faults, readSupply)
	b.losses.fill("loss", records["loss"], faults, readLoss)
	b.cans.fill("can", records["can"], faults, readCan)
	b.colours.fill("colour", records["colour"], faults, readColour)
	b.steps.fill("step", records["step"], faults, readStep)
	b.factors.fill("factor", records["factor"], faults, readFactor)
	b.criteria.fill("criterion", records["criterion"], faults, readCriterion)
	b.places.fill("place", records["place"], faults, readPlace)
	b.laws.fill("law", records["law"], faults, readLaw)
	b.cautions.fill("caution", records["caution"], faults, readCaution)
	b.results.fill("past_result", records["past_result"], faults, readPastResult)
	b.prices.fill("price", records["price"], faults, readPrice)
	b.signs.fill("sign", records["sign"], faults, readSign)
	b.thresholds.fill("threshold", records["threshold"], faults, readThreshold)
	b.potentials.fill("potential", records["potential"], faults, readPotential)
	b.electrodes.fill("electrode", records["electrode"], faults, readElectrode)
	b.protections.fill("protection", records["protection"], faults, readProtection)
	b.grades.fill("grade", records["grade"], faults, readGrade)
	b.profiles.fill("profile", records["profile"], faults, readProfile)
	b.samplings.fill("sampling", records["sampling"], faults, readSampling)
	b.roughnesses.fill("roughness", records["roughness"], faults, readRoughness)
	b.values.fill("value", records["value"], faults, readValue)
	b.acceptances.fill("acceptance", records["acceptance"], faults, readAcceptance)
	b.instruments.fill("instrument", records["instrument"], faults, readInstrument)
	b.observations.fill("observation", records["observation"], faults, readObservation)
	b.classify()
	b.checkReferences(faults)
	b.oneCurrency(faults)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	b.settleLaws()
	b.indexLaws()
	return b, nil
}

// classify sets each coating's biocide class from its actives: the first class, in the order of the Biocide constants.
func (b *Book) classify() {
	order := []Biocide{CuprousOxide, MetallicCopper, CopperThiocyanate, OtherCopper, CopperFree}
	for i := range b.coatings.rows {
		c := &b.coatings.rows[i]
		if c.Role == OldFilm {
			continue
		}
		c.Biocide = NoBiocide
		best := len(order)
		for _, a := range c.actives {
			row, _ := b.actives.get(a.Key) // one that is not there has no class; checkReferences notes it
			if at := slices.Index(order[:best], row.Class); at >= 0 {
				best, c.Biocide = at, row.Class
			}
		}
	}
}

// Coating returns the row of the key. Like every lookup of a Book, the error of an unknown key is a finding.Faults that names
// the near keys.
func (b *Book) Coating(key string) (Coating, error) { return b.coatings.get(key) }

// Coatings lists all coatings in file order.
func (b *Book) Coatings() iter.Seq[Coating] { return b.coatings.all() }

// Ranked lists the coatings that a bottom can end with, in file order: those of which Coating.Ranked is true.
func (b *Book) Ranked() iter.Seq[Coating] {
	return func(yield func(Coating) bool) {
		for i := range b.coatings.rows {
			if c := &b.coatings.rows[i]; c.Ranked() && !yield(*c) {
				return
			}
		}
	}
}

// Active returns the biocide of the key.
func (b *Book) Active(key string) (ActiveRow, error) { return b.actives.get(key) }

// ActiveRows lists all biocides.
func (b *Book) ActiveRows() iter.Seq[ActiveRow] { return b.actives.all() }

// Material returns the material of the key.
func (b *Book) Material(key string) (Material, error) { return b.materials.get(key) }

// Materials lists all materials and fittings.
func (b *Book) Materials() iter.Seq[Material] { return b.materials.all() }

// Condition returns what a state of an old film asks for.
func (b *Book) Condition(key Condition) (ConditionRow, error) { return b.conditions.get(string(key)) }

// Conditions lists all states of an old film.
func (b *Book) Conditions() iter.Seq[ConditionRow] { return b.conditions.all() }

// Overcoats lists all rows of coat over coat.
func (b *Book) Overcoats() iter.Seq[Overcoat] { return b.overcoats.all() }

// Zone returns the zone of the key.
func (b *Book) Zone(key string) (Zone, error) { return b.zones.get(key) }

// Zones lists all zones.
func (b *Book) Zones() iter.Seq[Zone] { return b.zones.all() }

// HullForm returns the kind of hull of the key.
func (b *Book) HullForm(key string) (HullForm, error) { return b.forms.get(key) }

// HullForms lists all kinds of hull.
func (b *Book) HullForms() iter.Seq[HullForm] { return b.forms.all() }

// AreaMethod returns the way of finding an area of the key.
func (b *Book) AreaMethod(key string) (AreaMethod, error) { return b.methods.get(key) }

// AreaMethods lists all ways of finding an area.
func (b *Book) AreaMethods() iter.Seq[AreaMethod] { return b.methods.all() }

// Piece returns the kind of piece of the key.
func (b *Book) Piece(key string) (PieceRow, error) { return b.pieces.get(key) }

// Pieces lists all kinds of piece.
func (b *Book) Pieces() iter.Seq[PieceRow] { return b.pieces.all() }

// Supply returns what is used up, of the key.
func (b *Book) Supply(key string) (Supply, error) { return b.supplies.get(key) }

// Supplies lists all that is used up beside the paint.
func (b *Book) Supplies() iter.Seq[Supply] { return b.supplies.all() }

// Season returns what is done after launch, of the key.
func (b *Book) Season(key string) (Season, error) { return b.seasons.get(key) }

// Seasons lists all that is done after launch, in order.
func (b *Book) Seasons() iter.Seq[Season] { return b.seasons.all() }

// Loss returns the way of application of the key.
func (b *Book) Loss(key string) (Loss, error) { return b.losses.get(key) }

// Losses lists all ways of application.
func (b *Book) Losses() iter.Seq[Loss] { return b.losses.all() }

// Cans lists all sizes on sale.
func (b *Book) Cans() iter.Seq[Can] { return b.cans.all() }

// Colour returns the colour of the key.
func (b *Book) Colour(key string) (Colour, error) { return b.colours.get(key) }

// Colours lists all colours.
func (b *Book) Colours() iter.Seq[Colour] { return b.colours.all() }

// Step returns the work of the action.
func (b *Book) Step(a finding.Action) (StepRow, error) { return b.steps.get(string(a)) }

// Steps lists all kinds of work.
func (b *Book) Steps() iter.Seq[StepRow] { return b.steps.all() }

// Hours returns the hours of the action's row, of one hand for a square metre; false when the book does not hold the action.
func (b *Book) Hours(a finding.Action) (quantity.Range[float64], bool) {
	i, ok := b.steps.at[string(a)]
	if !ok {
		return quantity.Range[float64]{}, false
	}
	return b.steps.rows[i].Hours, true
}

// Factor returns the number of the key.
func (b *Book) Factor(key string) (Factor, error) { return b.factors.get(key) }

// HasFactor reports whether the book holds a number of the key.
func (b *Book) HasFactor(key string) bool {
	_, ok := b.factors.at[key]
	return ok
}

// Factors lists all numbers that formulas use.
func (b *Book) Factors() iter.Seq[Factor] { return b.factors.all() }

// Criterion returns the ranking criterion of the key.
func (b *Book) Criterion(key string) (Criterion, error) { return b.criteria.get(key) }

// Criteria lists all ranking criteria.
func (b *Book) Criteria() iter.Seq[Criterion] { return b.criteria.all() }

// Place returns the place of the key.
func (b *Book) Place(key string) (Place, error) { return b.places.get(key) }

// Places lists all places.
func (b *Book) Places() iter.Seq[Place] { return b.places.all() }

// Law returns the rule of law of the key.
func (b *Book) Law(key string) (Law, error) { return b.laws.get(key) }

// Laws lists all rules of law.
func (b *Book) Laws() iter.Seq[Law] { return b.laws.all() }

// Caution returns the caution of the key.
func (b *Book) Caution(key string) (Caution, error) { return b.cautions.get(key) }

// Cautions lists all cautions in the order in which a report prints them.
func (b *Book) Cautions() iter.Seq[Caution] { return b.cautions.all() }

// Source returns the document of the key.
func (b *Book) Source(key string) (Source, error) { return b.sources.get(key) }

// Sources lists all documents that rows cite.
func (b *Book) Sources() iter.Seq[Source] { return b.sources.all() }

// Rule returns the registry's row of a rule id.
func (b *Book) Rule(id finding.ID) (Rule, error) { return b.rules.get(string(id)) }

// Rules lists the registry of rule ids.
func (b *Book) Rules() iter.Seq[Rule] { return b.rules.all() }

// PastResults lists what was seen of types on boats before; the embedded tables hold none.
func (b *Book) PastResults() iter.Seq[PastResult] { return b.results.all() }

// Sign returns the sign of the key.
func (b *Book) Sign(key string) (Sign, error) { return b.signs.get(key) }

// Signs lists what may be seen of an old film.
func (b *Book) Signs() iter.Seq[Sign] { return b.signs.all() }

// Threshold returns what the reading of the key asks for.
func (b *Book) Threshold(key string) (Threshold, error) { return b.thresholds.get(key) }

// Thresholds lists what readings of an old film ask for.
func (b *Book) Thresholds() iter.Seq[Threshold] { return b.thresholds.all() }

// Overrides lists the safety rows that own tables replaced, each with the reason given. Every report prints them.
func (b *Book) Overrides() iter.Seq[string] {
	return func(yield func(string) bool) {
		for _, t := range tableNames {
			for _, r := range b.records[t] {
				if r.over != "" && !yield(r.over) {
					return
				}
			}
		}
	}
}
