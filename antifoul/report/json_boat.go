package report

import (
	"boatyard.example/bottomwork/tables/quantity"
)

// outBoat is the boat as reported, under the keys of the boat file.
type outBoat struct {
	Name    string          `json:"name,omitempty" says:"her name"`
	Hull    outHull         `json:"hull" says:"the size of the bottom"`
	Part    []outPart       `json:"part" says:"the parts, in the order of the boat file"`
	Use     outUse          `json:"use" says:"how she is used"`
	Berth   []outBerth      `json:"berth,omitempty" says:"the places in her life"`
	Work    outWorkDays     `json:"work" says:"who works on her and when"`
	Paint   outPaint        `json:"paint" says:"how the paint goes on"`
	Record  []outRecord     `json:"record,omitempty" says:"what was seen of earlier films"`
	Tin     []outTin        `json:"tin,omitempty" says:"what labels and store say of the coatings"`
	Timed   []outTimedPatch `json:"timed,omitempty" says:"patches that were worked on by the clock"`
	Wishes  outWishes       `json:"wishes" says:"what the owner would like"`
	Gauge   []outGauge      `json:"gauge,omitempty" says:"surveys by a gauge of dry film"`
	Comb    []outComb       `json:"comb,omitempty" says:"fresh coats that a wet-film comb read"`
	UsedFor []outUsed       `json:"used,omitempty" says:"paints whose litres were noted"`

	Survey   *outHow       `json:"survey,omitempty" says:"how she was seen ashore"`
	Seen     []outSeen     `json:"seen,omitempty" says:"what each place showed"`
	Moisture []outMoisture `json:"moisture,omitempty" says:"readings of a moisture meter"`
	Fitting  []outFitting  `json:"fitting,omitempty" says:"anodes, bonds, legs, seals, transducers"`
	Passport *outPassport  `json:"passport,omitempty" says:"the form of a boat file that was made from a job log"`
	Job      []outPastJob  `json:"job,omitempty" says:"earlier jobs as their logs told them, the oldest first"`
}

type outHull struct {
	Kind          string            `json:"kind,omitempty" says:"key of the hull form"`
	Length        quantity.Length   `json:"length,omitzero" says:"on the waterline, of one hull"`
	Beam          quantity.Length   `json:"beam,omitzero" says:"greatest beam of one hull"`
	Draft         quantity.Length   `json:"draft,omitzero" says:"to the bottom of the keel"`
	Mass          quantity.Mass     `json:"mass,omitzero" says:"displacement"`
	Overall       quantity.Length   `json:"overall,omitzero" says:"length overall"`
	WaterlineBeam quantity.Length   `json:"waterline_beam,omitzero" says:"beam on the waterline"`
	CanoeDraft    quantity.Length   `json:"canoe_draft,omitzero" says:"draught of the hull without its keel"`
	Midship       quantity.Share    `json:"midship,omitzero" says:"area of the midship section, of its beam × draught"`
	Hulls         int               `json:"hulls,omitempty" says:"number of hulls"`
	BootTop       quantity.Length   `json:"boot_top,omitzero" says:"height above the waterline up to which she is painted"`
	Girths        []outGirth        `json:"girths,omitempty" says:"the tape's stations"`
	Offsets       []outOffset       `json:"offsets,omitempty" says:"the stations of her lines"`
	Piece         []outPiece        `json:"piece,omitempty" says:"keel, rudder, tunnels, openings"`
	Measured      []outZoneMeasured `json:"measured,omitempty" says:"areas that somebody measured"`
	StandPairs    *int              `json:"stand_pairs,omitempty" says:"pairs of stands"`
	KeelBlocks    *int              `json:"keel_blocks,omitempty" says:"keel blocks"`
	Chains        *int              `json:"chains,omitempty" says:"chains that touch the keel"`
}

type outGirth struct {
	At    quantity.Length `json:"at" says:"along the centreline"`
	Girth quantity.Length `json:"girth" says:"from paint line to paint line, both sides"`
}

type outOffset struct {
	At     quantity.Length `json:"at" says:"along the centreline"`
	Points []outPoint      `json:"points" says:"of one side, the first on the centreline"`
}

type outPoint struct {
	HalfBreadth quantity.Length `json:"half_breadth" says:"from the centreline"`
	Height      quantity.Length `json:"height" says:"above the same level for all stations"`
}

type outPiece struct {
	What   string          `json:"what" says:"key of the kind of piece"`
	Count  int             `json:"count,omitempty" says:"how many on the whole boat; one where it is absent"`
	Length quantity.Length `json:"length,omitzero" says:"fore and aft"`
	Height quantity.Length `json:"height,omitzero" says:"up and down"`
	Width  quantity.Length `json:"width,omitzero" says:"across"`
}

type outZoneMeasured struct {
	Zone string        `json:"zone" says:"key of the zone"`
	Area quantity.Area `json:"area" says:"its area"`
}

type outPart struct {
	Name      string             `json:"name" says:"its name"`
	Zone      string             `json:"zone" says:"key of its zone"`
	Material  string             `json:"material" says:"key of its material"`
	Area      quantity.Area      `json:"area,omitzero" says:"its painted area"`
	Barrier   *bool              `json:"barrier,omitempty" says:"whether a barrier is wanted"`
	Laminate  string             `json:"laminate,omitempty" says:"dry or wet, as measured"`
	Seen      []string           `json:"seen,omitempty" says:"keys of the signs seen of its old film"`
	Potential quantity.Potential `json:"potential,omitzero" says:"potential read in seawater"`
	Electrode string             `json:"electrode,omitempty" says:"key of the reference electrode"`
	Readings  *outReadings       `json:"readings,omitempty" says:"what was read of its old film"`
	Found     []outFound         `json:"found,omitempty" says:"the films on it, the lowest first; absent: an unknown old film"`
}

type outReadings struct {
	Flaking     quantity.Share          `json:"flaking,omitzero" says:"share of the area"`
	Adhesion    string                  `json:"adhesion,omitempty" says:"class of the X-cut"`
	Alligatored quantity.Share          `json:"alligatored,omitzero" says:"share of the area"`
	Film        outRange[quantity.Film] `json:"film,omitzero" says:"old paint in all above sound epoxy"`
	Blisters    string                  `json:"blisters,omitempty" says:"quantity class"`
	Rust        string                  `json:"rust,omitempty" says:"grade of rust"`
	Moisture    string                  `json:"moisture,omitempty" says:"trend at marked spots"`
}

type outFound struct {
	Coating outName                 `json:"coating" says:"the film"`
	Colour  string                  `json:"colour,omitempty" says:"key of its colour"`
	Film    outRange[quantity.Film] `json:"film,omitzero" says:"dry film, as measured"`
	State   string                  `json:"state" says:"its condition"`
	Age     quantity.Duration       `json:"age,omitzero" says:"time since its last coat"`
	KnownBy string                  `json:"known_by,omitempty" says:"how it is known"`
}

type outUse struct {
	UnderWay            quantity.Duration    `json:"under_way,omitzero" says:"time under way a year"`
	Speed               quantity.Speed       `json:"speed,omitzero" says:"sustained speed through the water"`
	LongestIdle         quantity.Duration    `json:"longest_idle,omitzero" says:"longest lie afloat without moving"`
	HaulOutEvery        quantity.Months      `json:"haul_out_every,omitzero" says:"between haul-outs with bottom work"`
	AshoreEachYear      quantity.Months      `json:"ashore_each_year,omitzero" says:"out of the water, a year"`
	RelaunchedUnpainted *bool                `json:"relaunched_unpainted,omitempty" says:"whether she goes back without new paint"`
	Growth              string               `json:"growth,omitempty" says:"fouling pressure where she lies"`
	Water               string               `json:"water,omitempty" says:"water that she lies in"`
	WaterTemperature    quantity.Temperature `json:"water_temperature,omitzero" says:"mean in season"`
	Cleaning            string               `json:"cleaning,omitempty" says:"hardest cleaning afloat"`
	CleanedEvery        quantity.Duration    `json:"cleaned_every,omitzero" says:"between cleanings in season"`
	Kept                string               `json:"kept,omitempty" says:"how she is kept"`
	DriesOn             string               `json:"dries_on,omitempty" says:"ground that she takes between tides"`
	Ice                 *bool                `json:"ice,omitempty" says:"whether she lies in ice"`
}

type outBerth struct {
	Place string `json:"place" says:"key of the place, or a place whose law is not known"`
	Role  string `json:"role,omitempty" says:"what is done there"`
	Water string `json:"water,omitempty" says:"its water"`
}

type outWorkDays struct {
	Hands      int               `json:"hands,omitempty" says:"people at work"`
	DoneBy     string            `json:"done_by,omitempty" says:"who does the work"`
	Launch     quantity.Date     `json:"launch,omitzero" says:"day on which she goes in"`
	LaunchOpen *bool             `json:"launch_open,omitempty" says:"whether the launch may slip"`
	Days       []string          `json:"days,omitempty" says:"days of the week on which the crew works"`
	From       string            `json:"from,omitempty" says:"time of day from which hands are there"`
	Until      string            `json:"until,omitempty" says:"time of day until which they are"`
	Free       []quantity.Date   `json:"free,omitempty" says:"further days"`
	Taken      []quantity.Date   `json:"taken,omitempty" says:"days that are lost"`
	SetUp      quantity.Duration `json:"set_up,omitzero" says:"hours of each day for setting up and clearing away"`
	Reserve    quantity.Duration `json:"reserve,omitzero" says:"days that should be left before the launch"`
	Shift      quantity.Date     `json:"shift,omitzero" says:"day on which the yard shifts the stands"`
	Slings     *bool             `json:"slings,omitempty" says:"whether the places under the stands are painted in the slings"`
	Roof       *bool             `json:"roof,omitempty" says:"whether she stands under a roof"`
	Forecast   *outForecastRead  `json:"forecast,omitempty" says:"the sheet of weather, as far as it reaches"`
	Other      []outOther        `json:"other,omitempty" says:"other work while she is dry"`
}

type outForecastRead struct {
	From  momentWord `json:"from" says:"where it begins"`
	Until momentWord `json:"until" says:"where it ends"`
	Hours int        `json:"hours" says:"hours in it"`
}

type outOther struct {
	Name       string            `json:"name" says:"what it is"`
	Hours      quantity.Duration `json:"hours" says:"hours of one hand"`
	On         quantity.Date     `json:"on,omitzero" says:"an appointment"`
	AfterPaint *bool             `json:"after_paint,omitempty" says:"whether it comes after the last coat"`
}

type outPaint struct {
	By          string               `json:"by,omitempty" says:"key of the way it goes on"`
	Thinner     quantity.Share       `json:"thinner,omitzero" says:"share of the paint's volume"`
	Reserve     quantity.Share       `json:"reserve,omitzero" says:"share on top of the typical litres"`
	Cans        []quantity.Volume    `json:"cans,omitempty" says:"sizes that the yard sells"`
	Profile     string               `json:"profile,omitempty" says:"key of the blast profile"`
	Temperature quantity.Temperature `json:"temperature,omitzero" says:"of the day's work"`
}

type outRecord struct {
	Coating  string                  `json:"coating" says:"key of the type"`
	Launched quantity.Date           `json:"launched" says:"day on which it went into the water"`
	Film     outRange[quantity.Film] `json:"film,omitzero" says:"working film laid over the signal on the flat"`
	Litres   quantity.Volume         `json:"litres,omitzero" says:"all working coats on the whole hull"`
	Coats    int                     `json:"coats,omitempty" says:"working coats, with the litres"`
	Look     []outLook               `json:"look,omitempty" says:"each look at it, in order"`
}

type outLook struct {
	On       quantity.Date           `json:"on" says:"day of the look"`
	Zone     string                  `json:"zone" says:"key of the zone"`
	Signal   *bool                   `json:"signal,omitempty" says:"whether the signal shows there"`
	Film     quantity.Film           `json:"film,omitzero" says:"mean working film left, by gauge"`
	Readings int                     `json:"readings,omitempty" says:"readings in the mean"`
	Laid     outRange[quantity.Film] `json:"laid,omitzero" says:"working film laid in that zone"`
}

type outTin struct {
	Coating         string               `json:"coating" says:"key of the coating"`
	Ratio           string               `json:"ratio,omitempty" says:"base to hardener by volume"`
	DensityBase     quantity.Density     `json:"density_base,omitzero" says:"of the base"`
	DensityHardener quantity.Density     `json:"density_hardener,omitzero" says:"of the hardener"`
	PotLife         quantity.Duration    `json:"pot_life,omitzero" says:"how long a mix can be used"`
	PotLifeAt       quantity.Temperature `json:"pot_life_at,omitzero" says:"temperature at which that is stated"`
	Kit             []outKit             `json:"kit,omitempty" says:"kits on sale"`
	Store           []outStored          `json:"store,omitempty" says:"cans at hand"`
}

type outKit struct {
	Base     quantity.Volume `json:"base" says:"volume of base"`
	Hardener quantity.Volume `json:"hardener" says:"volume of hardener"`
	Price    quantity.Money  `json:"price,omitzero" says:"of the kit"`
	Batch    string          `json:"batch,omitempty" says:"batch number"`
}

type outStored struct {
	Size   quantity.Volume `json:"size" says:"what is in one can"`
	Count  int             `json:"count,omitempty" says:"cans; one where it is absent"`
	Colour string          `json:"colour,omitempty" says:"key of the colour"`
	Batch  string          `json:"batch,omitempty" says:"batch number"`
}

type outWishes struct {
	RepaintAfter  quantity.Months `json:"repaint_after,omitzero" says:"calendar months until the next bottom paint"`
	ReckonOver    quantity.Months `json:"reckon_over,omitzero" says:"calendar time over which money is reckoned"`
	Biocide       string          `json:"biocide,omitempty" says:"less or none"`
	RacingFinish  *bool           `json:"racing_finish,omitempty" says:"whether a racing finish is wanted"`
	TopColour     string          `json:"top_colour,omitempty" says:"key of a colour"`
	SignalColour  string          `json:"signal_colour,omitempty" says:"key of a colour"`
	SignalType    string          `json:"signal_type,omitempty" says:"key of the type of the signal coat"`
	CoatingWished string          `json:"coating,omitempty" says:"key of a type wanted on the hull"`
}

type outTimedPatch struct {
	Part string            `json:"part" says:"name of the part"`
	Work string            `json:"work" says:"the work that was timed"`
	Area quantity.Area     `json:"area" says:"of the patch"`
	Took quantity.Duration `json:"took" says:"time of one hand"`
	Goes string            `json:"goes,omitempty" says:"an easy place or a hard one"`
}

type outGauge struct {
	Part       string        `json:"part" says:"name of the part"`
	Instrument string        `json:"instrument" says:"key of the instrument"`
	Standard   string        `json:"standard" says:"key of the acceptance standard"`
	Nominal    quantity.Film `json:"nominal" says:"the dry film that was specified"`
	Most       quantity.Film `json:"most,omitzero" says:"the greatest dry film that was agreed"`
	Profile    string        `json:"profile,omitempty" says:"key of the reading correction"`
	Coating    string        `json:"coating,omitempty" says:"key of the coating that makes up what is missing"`
	File       string        `json:"file,omitempty" says:"the sheet of readings"`
	Readings   int           `json:"readings" says:"readings in the sheet"`
}

type outComb struct {
	Part     string         `json:"part" says:"name of the part"`
	Zone     string         `json:"zone,omitempty" says:"key of the zone; absent: all of the part"`
	Coating  string         `json:"coating" says:"key of the coating"`
	Readings []string       `json:"readings" says:"the last tooth wetted, or that and the first that stayed dry"`
	Thinner  quantity.Share `json:"thinner,omitzero" says:"share of the paint's volume"`
	Asked    quantity.Film  `json:"asked,omitzero" says:"the dry film that the coat was to have"`
}

type outUsed struct {
	Part    string          `json:"part" says:"name of the part"`
	Zone    string          `json:"zone,omitempty" says:"key of the zone; absent: all of the part"`
	Coating string          `json:"coating" says:"key of the coating"`
	Coats   int             `json:"coats" says:"coats"`
	Litres  quantity.Volume `json:"litres" says:"as supplied, without thinner"`
	Asked   quantity.Film   `json:"asked,omitzero" says:"the dry film that each coat was to have"`
}
