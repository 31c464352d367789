package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode"
	"unicode/utf16"

	"boatyard.example/bottomwork/tables/quantity"
)

// What the JSON document says of itself. The schema number rises when a key is removed or changes its meaning, or a closed word comes in; new keys
// may come at any time.
const (
	jsonDocument = "bottom-job"
	jsonSchema   = 1
)

// outJob is the whole job as one JSON document. Each out type is one object of it, and nothing else is encoded: the types of the packages below may
// be renamed without a change here. The tag says is the description in schema/job.schema.json.
//
// Amounts are texts with their unit, "125 um", as a boat file takes them. A number whose unit no quantity has carries it in its key. What is not
// known or not given is absent, never nought.
type outJob struct {
	Document    string           `json:"document" says:"what this document is: bottom-job"`
	Schema      int              `json:"schema" says:"number of this schema; it rises when a key is removed or changes its meaning"`
	AskedOn     quantity.Date    `json:"asked_on" says:"the day of the question"`
	Tables      string           `json:"tables" says:"fingerprint of the reference tables, own tables included"`
	Units       systemWord       `json:"units" says:"the reader's units, first in every sentence; amounts outside sentences stay as they were written or reckoned"`
	Boat        outBoat          `json:"boat" says:"the boat as reported, under the keys of the boat file; a sheet stands there as what was read from it"`
	Assumed     []outAssumed     `json:"assumed,omitempty" says:"what the boat file does not say, and what was taken instead"`
	Answer      outAnswer        `json:"answer" says:"the whole job in a few lines"`
	Look        *outLooked       `json:"look,omitempty" says:"her condition as found, and what it asks for; absent where nobody noted any"`
	OldFilms    []outOldFilm     `json:"old_films,omitempty" says:"what is on her, and may it stay"`
	PutOn       *outPutOn        `json:"put_on,omitempty" says:"whether the film that was asked for is there"`
	Ranking     []outRanking     `json:"ranking" says:"every type of the tables, ranked part by part"`
	Schemes     []outScheme      `json:"schemes,omitempty" says:"the layers of each part that gets some, and how long they last"`
	Areas       *outAreas        `json:"areas,omitempty" says:"the area of each part, and how the hull's was found"`
	Purchases   []outPurchase    `json:"purchases,omitempty" says:"the paint to buy"`
	Supplies    []outSupply      `json:"supplies,omitempty" says:"what is used up beside the paint"`
	Waste       *outWaste        `json:"waste,omitempty" says:"the paint that comes off"`
	Costs       *outCosts        `json:"costs,omitempty" says:"what it comes to by the prices of own tables; absent without any"`
	Timed       []outTimed       `json:"timed,omitempty" says:"what patches that were worked on by the clock say"`
	Work        *outWork         `json:"work,omitempty" says:"the order of work and its hold points"`
	Places      *outPlaces       `json:"places_under_stands,omitempty" says:"the places where stands, blocks and chains touch"`
	Days        *outDays         `json:"days,omitempty" says:"the plan of days; absent where the boat file names none"`
	AfterLaunch []outAfterLaunch `json:"after_launch,omitempty" says:"what is looked at and done after launch"`
	Growth      *outGrowth       `json:"growth,omitempty" says:"what each grade of growth would cost"`
	Metals      []outMetal       `json:"metals,omitempty" says:"every two metals in the water, and every potential read"`
	Law         []outFinding     `json:"law,omitempty" says:"the law of the chosen types and of what is on her, each statement once; no legal advice"`
	Cautions    []outCaution     `json:"cautions,omitempty" says:"the cautions that this job calls for"`
	Biocide     []outBiocide     `json:"biocide,omitempty" says:"what biocide the working coats hold, and what leaves them by two methods side by side"`
	Sources     []outSource      `json:"sources,omitempty" says:"every source that a basis of this document names"`
	OwnTables   []outOwnCell     `json:"own_tables,omitempty" says:"every cell that own tables replaced or added"`
	Overrides   []string         `json:"overrides,omitempty" says:"safety rows that an own table replaced, with the reason given"`
	Limits      []string         `json:"limits" says:"what was not inspected, and for what this holds"`
}

// systemWord is a system of units.
type systemWord string

// writeJSON writes the job as one JSON document, indented, with a line break at its end.
func (c *composer) writeJSON(w io.Writer) error {
	text, err := json.MarshalIndent(c.outJob(), "", " ")
	if err != nil {
		return fmt.Errorf("report: %w", err)
	}
	_, err = w.Write(append(visible(text), '\n'))
	return err
}

// outJob gathers the document. Sources come last: encoding a finding notes what it cites.
func (c *composer) outJob() outJob {
	j := c.job
	out := outJob{
		Document: jsonDocument, Schema: jsonSchema, AskedOn: j.Boat.On, Tables: j.Book.Fingerprint(), Units: systemWord(c.units.String()),
		Boat: c.outBoat(), Answer: c.outAnswer(), Look: c.outLooked(), OldFilms: c.outOldFilms(), PutOn: c.outPutOn(), Ranking: c.outRankings(), Schemes: c.outSchemes(),
		Areas: c.outAreas(), Purchases: c.outPurchases(), Supplies: c.outSupplies(), Waste: c.outWaste(), Costs: c.outCosts(), Timed: c.outTimed(), Work: c.outWork(), Places: c.outPlaces(),
		Days: c.outDays(), AfterLaunch: c.outAfterLaunch(), Growth: c.outGrowth(), Metals: c.outMetals(), Law: c.outFindings(c.lawFindings()),
		Cautions: c.outCautions(), Biocide: c.outBiocides(), OwnTables: c.outOwnCells(), Limits: c.limitItems(),
	}
	for _, a := range j.Ranking.Assumed {
		out.Assumed = append(out.Assumed, outAssumed{a.Key, a.Taken})
	}
	for o := range j.Book.Overrides() {
		out.Overrides = append(out.Overrides, o)
	}
	out.Sources = c.outSources()
	return out
}

// visible writes every character that does not print, and every one that turns the direction of the text, as a JSON escape: a name from outside
// stays what it is and cannot hide anything. Outside its texts JSON is ASCII, so nothing else is touched.
func visible(text []byte) []byte {
	var out bytes.Buffer
	for _, r := range string(text) {
		switch {
		case r < 0x7f || r > 0x7f && unicode.IsPrint(r):
			out.WriteRune(r)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&out, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&out, `\u%04x`, r)
		}
	}
	return out.Bytes()
}
