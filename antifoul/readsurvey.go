package antifoul

import (
	"boatyard.example/bottomwork/antifoul/survey"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/quantity"
)

// readSurvey reads the sections survey, seen, moisture and fitting.
func readSurvey(root *entry.Row) survey.Survey {
	r := root.Table("survey")
	s := survey.Survey{How: survey.How{
		By: r.Text("by"), On: r.Date("on"), Ashore: r.Date("ashore_since"),
		Wash: entry.Amount[quantity.Duration](r, "since_wash"), Visible: entry.Amount[quantity.Share](r, "visible"),
		Hidden: r.Texts("hidden"), NotInspected: r.Texts("not_inspected"), Light: r.Text("light"), Weather: r.Text("weather"),
	}}
	r.Close()
	for _, r := range sections(root, "seen", mostSections) {
		s.Seen = append(s.Seen, survey.Place{
			Part: r.Text("part"), Zone: r.Text("zone"), Where: r.Text("where"), Coating: r.Text("coating"), Colours: r.Texts("colours"),
			State: tables.Condition(r.Text("state")), Known: r.Text("known"), Photo: r.Text("photo"), Note: r.Text("note"), Marks: readMarks(r),
		})
		r.Close()
	}
	for _, r := range sections(root, "moisture", mostSections) {
		r.Need("a number of the meter's scale, or low, typical and high", "reading")
		m := survey.Moisture{Part: r.Text("part"), Zone: r.Text("zone"), Instrument: r.Text("instrument"), Meter: r.Text("meter"), Scale: r.Text("scale"), Photo: r.Text("photo")}
		m.Reading, _ = r.Floats("reading", 0, 1e6)
		m.Dry, m.HasDry = r.Float("dry", 0, 1e6)
		m.Spots, _ = r.Int("spots", 1, 10000)
		s.Moisture = append(s.Moisture, m)
		r.Close()
	}
	for _, r := range sections(root, "fitting", mostSections) {
		s.Fittings = append(s.Fittings, survey.Fitting{Name: r.Text("name"), Part: r.Text("part"), Photo: r.Text("photo"), Note: r.Text("note"), Marks: readMarks(r)})
		r.Close()
	}
	return s
}

// readMarks reads what was seen at a place or on a fitting.
func readMarks(r *entry.Row) []survey.Mark {
	var out []survey.Mark
	for _, k := range sections(r, "mark", mostSections) {
		out = append(out, survey.Mark{
			What: k.Text("what"), Grades: k.Texts("grade"), Share: entry.Amount[quantity.Share](k, "share"), Size: entry.Amount[quantity.Length](k, "size"),
			Known: k.Text("known"), Photo: k.Text("photo"), Note: k.Text("note"),
		})
		k.Close()
	}
	return out
}
