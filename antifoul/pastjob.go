package antifoul

import (
	"fmt"
	"strconv"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// PassportVersion is the form of passport that this package reads and writes. One of a later form is refused.
const PassportVersion = 1

// newerPassport says what to do with a passport that a later version wrote.
const newerPassport = "a file of this version of the module or an earlier one: a later one wrote this, and may mean something else by its keys; read it with that one"

// PastJob is one earlier job as its log told it: a [[job]] section, which a passport writes and nothing but the reader of a report reads.
type PastJob struct {
	Log      string // name of the log's file
	Begun    quantity.Date
	Ended    quantity.Date
	Launched quantity.Date
	Hauled   quantity.Date
	Coats    []PastCoat
}

// PastCoat is one layer that the job laid: a [[job.coat]] section.
type PastCoat struct {
	Part    string // its name then
	Layer   string // undercoat, signal, extra, working
	Coating string // key of a coating
	Colour  string // key of a colour; empty when not noted
	Coats   int
	Film    quantity.Range[quantity.Film] // as laid; not given: not known
	Litres  quantity.Volume
	Batches []string
}

// readPassport reads the sections passport and job; newer is true where a later version of the module wrote the file, which is then the one fault.
func readPassport(root *entry.Row, x *Boat) (newer bool) {
	if root.Has("passport") {
		r := root.Table("passport")
		r.Need(fmt.Sprintf("the form of the passport, version = %d", PassportVersion), "version")
		if v, ok := r.Raw("version").(int64); ok && v > PassportVersion {
			r.Fault(finding.ErrValue, "version", strconv.FormatInt(v, 10), newerPassport)
			return true
		}
		x.Passport, _ = r.Int("version", 1, PassportVersion)
		r.Close()
	}
	for _, r := range sections(root, "job", mostSections) {
		y := PastJob{Log: r.Text("log"), Begun: r.Date("begun"), Ended: r.Date("ended"), Launched: r.Date("launched"), Hauled: r.Date("hauled")}
		for _, k := range sections(r, "coat", mostCans) {
			c := PastCoat{
				Part: k.Text("part"), Layer: k.Text("layer"), Coating: k.Text("coating"), Colour: k.Text("colour"),
				Film: entry.Range[quantity.Film](k, "film"), Litres: entry.Amount[quantity.Volume](k, "litres"), Batches: k.Texts("batch"),
			}
			c.Coats, _ = k.Int("coats", 1, 50)
			k.Need("the name of the part", "part")
			k.Close()
			y.Coats = append(y.Coats, c)
		}
		r.Need("the day on which the job was begun", "begun")
		r.Close()
		x.Jobs = append(x.Jobs, y)
	}
	return false
}

// check returns the faults of an earlier job, keys as in a boat file.
func (p PastJob) check(b *tables.Book) finding.Faults {
	var fs finding.Faults
	bad := func(kind error, key, got, want string) {
		fs = append(fs, finding.Fault{Kind: kind, Key: key, Got: got, Want: want})
	}
	last := p.Begun
	for _, d := range []struct {
		key string
		on  quantity.Date
	}{{"ended", p.Ended}, {"launched", p.Launched}, {"hauled", p.Hauled}} {
		if d.on.Given() && d.on.Before(last) {
			bad(finding.ErrImpossible, d.key, d.on.String(), "a day no earlier than "+last.String())
		}
		if d.on.Given() {
			last = d.on
		}
	}
	for i, c := range p.Coats {
		key := fmt.Sprintf("coat[%d].", i+1)
		if _, err := b.Coating(c.Coating); err != nil {
			bad(finding.ErrUnknown, key+"coating", entry.Describe(c.Coating), finding.Suggest(c.Coating, coatingKeys(b)))
		}
		wishedColour(b, key+"colour", c.Colour, &fs)
		if c.Film.Low.Given() && c.Film.Low.Sign() <= 0 {
			bad(finding.ErrImpossible, key+"film", c.Film.Low.String(), "a film above zero; left out when it is not known")
		}
		if c.Litres.Given() && c.Litres.Sign() <= 0 {
			bad(finding.ErrImpossible, key+"litres", c.Litres.String(), "more than zero; left out when not noted")
		}
	}
	return fs
}
