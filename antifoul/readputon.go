package antifoul

import (
	"errors"
	"fmt"
	"io/fs"
	"path"

	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/gauge"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// readPutOn reads the sections gauge, comb and used of the boat file name into the boat, and the sheets of readings that they name, each
// relative to the boat file. Faults of a sheet are noted under the sheet's own name; where no readings could be read of it, a fault
// of "readings" comes back, so that these are not told to be missing too.
func readPutOn(fsys fs.FS, name string, root *entry.Row, x *Boat, faults *finding.Faults) finding.Faults {
	var unread finding.Faults
	for i, r := range sections(root, "gauge", mostSections) {
		g := Gauged{
			Part: r.Text("part"), Coating: r.Text("coating"), File: sheetName(r, "file"),
			Inspection: gauge.Inspection{
				Instrument: r.Text("instrument"), Standard: r.Text("standard"), Profile: r.Text("profile"),
				Nominal: entry.Amount[quantity.Film](r, "nominal"), Most: entry.Amount[quantity.Film](r, "most"),
			},
		}
		r.Need("the name of a part", "part")
		r.Need("a sheet of readings, \"gauge.csv\", beside the boat file", "file")
		r.Need("the key of an instrument", "instrument")
		r.Need("the key of an acceptance standard", "standard")
		r.Need("the dry film that was specified, \"320 um\"", "nominal")
		if g.File != "" {
			readings, err := gauge.ReadCSV(fsys, path.Join(path.Dir(name), g.File))
			if bad, ok := errors.AsType[finding.Faults](err); ok {
				*faults = append(*faults, bad...)
			}
			g.Readings = readings
		}
		if len(g.Readings) == 0 {
			unread = append(unread, finding.Fault{Key: fmt.Sprintf("gauge[%d].readings", i+1)})
		}
		x.Gauged = append(x.Gauged, g)
		r.Close()
	}
	for _, r := range sections(root, "comb", mostSections) {
		x.Combed = append(x.Combed, Combed{
			Part: r.Text("part"), Zone: r.Text("zone"), Coating: r.Text("coating"),
			WetCoat: coverage.WetCoat{Teeth: readTeeth(r), Thinner: entry.Amount[quantity.Share](r, "thinner"), Asked: entry.Amount[quantity.Film](r, "asked")},
		})
		r.Need("the name of a part", "part")
		r.Need("the key of a coating", "coating")
		r.Need("readings of the comb, [\"110 um\", \"100 um to 120 um\"]", "readings")
		r.Close()
	}
	for _, r := range sections(root, "used", mostSections) {
		u := Used{Part: r.Text("part"), Zone: r.Text("zone"), Coating: r.Text("coating"), Litres: entry.Amount[quantity.Volume](r, "litres"), Asked: entry.Amount[quantity.Film](r, "asked")}
		u.Coats, _ = r.Int("coats", 1, 50)
		r.Need("the name of a part", "part")
		r.Need("the key of a coating", "coating")
		r.Need("a whole number from 1 to 50", "coats")
		r.Need("a volume, \"6.5 L\"", "litres")
		x.Used = append(x.Used, u)
		r.Close()
	}
	return unread
}

// readTeeth reads the readings of a comb: the last wetted tooth, or that and the first dry one. One that could not be read stays in the list
// as none, so that those after it keep their numbers.
func readTeeth(r *entry.Row) []coverage.Tooth {
	var out []coverage.Tooth
	list, ok := r.Raw("readings").([]any)
	if !ok {
		for _, s := range r.Texts("readings") {
			list = append(list, s)
		}
	}
	for i, e := range list {
		s, _ := e.(string)
		t, err := coverage.ParseTooth(s)
		if bad, isBad := errors.AsType[*quantity.ParseError](err); isBad {
			r.Fault(finding.ErrValue, fmt.Sprintf("readings[%d]", i+1), entry.Describe(e), bad.Want)
		}
		out = append(out, t)
	}
	return out
}
