package survey

import (
	"errors"
	"fmt"
	"slices"
	"strconv"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Check returns every fault of the survey, with keys as in a boat file: "survey.on", "seen[2].mark[1].grade". Parts are those of the boat,
// day is the day of the report: nobody sees a boat after it.
func (s Survey) Check(b *tables.Book, parts []compat.Part, day quantity.Date) finding.Faults {
	k := checker{book: b, parts: parts}
	k.how(s.How, day)
	for i, p := range s.Seen {
		k.under = fmt.Sprintf("seen[%d]", i+1)
		k.place(p)
	}
	for i, m := range s.Moisture {
		k.under = fmt.Sprintf("moisture[%d]", i+1)
		k.moisture(m)
	}
	var names []string
	for i, f := range s.Fittings {
		k.under = "fitting[" + f.Name + "]"
		if f.Name == "" {
			k.under = fmt.Sprintf("fitting[%d]", i+1)
			k.bad(finding.ErrMissing, "name", "", "which one it is, \"anode on the shaft\"")
		}
		if f.Name != "" && slices.Contains(names, f.Name) {
			k.bad(finding.ErrDuplicate, "name", entry.Describe(f.Name), "a name that no other fitting has")
		}
		names = append(names, f.Name)
		p := compat.Part{}
		if f.Part != "" {
			p, _ = k.part(f.Part)
		}
		k.marks(f.Marks, p.Material, f.Part == "" || p.Name != "")
	}
	return k.out
}

// checker gathers faults under the section that is being looked at.
type checker struct {
	book  *tables.Book
	parts []compat.Part
	under string
	out   finding.Faults
}

func (k *checker) bad(kind error, key, got, want string) {
	k.out = append(k.out, finding.Fault{Kind: kind, Key: k.under + "." + key, Got: got, Want: want})
}

// unknown notes a fault when the lookup of the key failed.
func (k *checker) unknown(key string, err error) {
	if fs, ok := errors.AsType[finding.Faults](err); ok {
		for _, f := range fs {
			k.bad(f.Kind, key, f.Got, f.Want)
		}
	}
}

func (k *checker) how(h How, day quantity.Date) {
	k.under = "survey"
	if h.On.After(day) {
		k.bad(finding.ErrImpossible, "on", h.On.String(), "no later than the day of the report, "+day.String())
	}
	last := h.On
	if !last.Given() {
		last = day
	}
	if h.Ashore.After(last) {
		k.bad(finding.ErrImpossible, "ashore_since", h.Ashore.String(), "no later than "+last.String())
	}
	if h.Wash.Given() && h.Wash.Sign() < 0 {
		k.bad(finding.ErrImpossible, "since_wash", h.Wash.String(), "a time, 0 h or more")
	}
	k.share("visible", h.Visible)
}

func (k *checker) share(key string, s quantity.Share) {
	if s.Given() && (s.Sign() < 0 || s.Cmp(quantity.Percent.N(100)) > 0) {
		k.bad(finding.ErrImpossible, key, s.String(), "from 0 % to 100 %")
	}
}

// part finds the part of a section.
func (k *checker) part(name string) (compat.Part, bool) {
	if name == "" {
		k.bad(finding.ErrMissing, "part", "", "the name of a part")
		return compat.Part{}, false
	}
	if p, ok := partOf(k.parts, name); ok {
		return p, true
	}
	var known []string
	for _, p := range k.parts {
		known = append(known, p.Name)
	}
	k.bad(finding.ErrUnknown, "part", entry.Describe(name), finding.Suggest(name, known))
	return compat.Part{}, false
}

func partOf(parts []compat.Part, name string) (compat.Part, bool) {
	i := slices.IndexFunc(parts, func(p compat.Part) bool { return p.Name == name })
	if i < 0 {
		return compat.Part{}, false
	}
	return parts[i], true
}

// zone notes a zone that the part does not have: the part's own, what goes with it, and of the whole hull its strips.
func (k *checker) zone(p compat.Part, zone string) {
	if zone == "" || zone == p.Zone {
		return
	}
	whole := false
	if z, err := k.book.Zone(p.Zone); err == nil {
		whole = z.Key == "hull"
	}
	known := []string{p.Zone}
	for z := range k.book.Zones() {
		if z.With == p.Zone || whole && !z.Part {
			known = append(known, z.Key)
		}
	}
	if !slices.Contains(known, zone) {
		k.bad(finding.ErrUnknown, "zone", entry.Describe(zone), finding.Suggest(zone, known))
	}
}

func (k *checker) known(key, word string) {
	if word != "" && !slices.Contains(Words(), word) {
		k.bad(finding.ErrValue, key, entry.Describe(word), "one of seen, measured, reported, assumed")
	}
}

func (k *checker) place(p Place) {
	part, ok := k.part(p.Part)
	if ok {
		k.zone(part, p.Zone)
	}
	if p.Coating != "" {
		_, err := k.book.Coating(p.Coating)
		k.unknown("coating", err)
	}
	for i, c := range p.Colours {
		_, err := k.book.Colour(c)
		k.unknown(fmt.Sprintf("colours[%d]", i+1), err)
	}
	if p.State != "" {
		_, err := k.book.Condition(p.State)
		k.unknown("state", err)
	}
	k.known("known", p.Known)
	k.marks(p.Marks, part.Material, ok)
}

// marks checks what was seen on the material; where the material is not known, faults that hang on it are left out.
func (k *checker) marks(marks []Mark, material string, placed bool) {
	section := k.under
	for i, m := range marks {
		k.under = fmt.Sprintf("%s.mark[%d]", section, i+1)
		k.mark(m, material, placed)
	}
	k.under = section
}

func (k *checker) mark(m Mark, material string, placed bool) {
	k.share("share", m.Share)
	k.known("known", m.Known)
	if m.Size.Given() && m.Size.Sign() < 0 {
		k.bad(finding.ErrImpossible, "size", m.Size.String(), "a length, 0 mm or more")
	}
	var words, here []string // of the book; of this material
	for o := range k.book.Observations() {
		if !slices.Contains(words, o.What) {
			words = append(words, o.What)
		}
		if o.SeenOn(material) && !slices.Contains(here, o.What) {
			here = append(here, o.What)
		}
	}
	switch {
	case m.What == "":
		k.bad(finding.ErrMissing, "what", "", "what was seen, \"rust\"")
		return
	case !slices.Contains(words, m.What):
		k.bad(finding.ErrUnknown, "what", entry.Describe(m.What), finding.Suggest(m.What, words))
		return
	case placed && !slices.Contains(here, m.What):
		k.bad(finding.ErrImpossible, "what", entry.Describe(m.What), "what is seen there: "+finding.Suggest(m.What, here))
	}
	k.grades(m)
}

// grades notes grades that the rows of what was seen do not read, and two of one scale.
func (k *checker) grades(m Mark) {
	taken := scalesOf(k.book, m.What)
	var known, scales []string
	for g := range k.book.Grades() {
		if slices.Contains(taken, g.Scale) {
			known = append(known, g.Key)
		}
	}
	for _, key := range m.Grades {
		g, err := k.book.Grade(key)
		switch {
		case len(taken) == 0:
			k.bad(finding.ErrImpossible, "grade", entry.Describe(key), "no grade: it is told by its share or its size")
		case err != nil || !slices.Contains(taken, g.Scale):
			k.bad(finding.ErrUnknown, "grade", entry.Describe(key), finding.Suggest(key, known))
		case slices.Contains(scales, g.Scale):
			k.bad(finding.ErrDuplicate, "grade", entry.Describe(key), "one grade of each scale")
		}
		scales = append(scales, g.Scale)
	}
}

// scalesOf lists the scales by which the rows of what was seen are graded, each as often as it is read.
func scalesOf(b *tables.Book, what string) []string {
	var out []string
	for o := range b.Observations() {
		if o.What != what {
			continue
		}
		for key := range o.From() {
			if g, err := b.Grade(key); err == nil {
				out = append(out, g.Scale)
			}
		}
	}
	return out
}

func (k *checker) moisture(m Moisture) {
	if p, ok := k.part(m.Part); ok {
		k.zone(p, m.Zone)
	}
	if x, err := k.book.Instrument(m.Instrument); err != nil || x.Tells != tables.TellsMoist {
		var known []string
		for x := range k.book.Instruments() {
			if x.Tells == tables.TellsMoist {
				known = append(known, x.Key)
			}
		}
		kind, got := finding.ErrUnknown, entry.Describe(m.Instrument)
		if m.Instrument == "" {
			kind, got = finding.ErrMissing, ""
		}
		k.bad(kind, "instrument", got, "a moisture meter: "+finding.Suggest(m.Instrument, known))
	}
	for key, text := range map[string]string{"meter": m.Meter, "scale": m.Scale} {
		if text == "" {
			k.bad(finding.ErrMissing, key, "", map[string]string{"meter": "which meter it was, in quotes: readings of two meters are not compared", "scale": "the scale that it was set to, \"0 to 100, relative\""}[key])
		}
	}
	if m.Reading.Low > m.Reading.Typical || m.Reading.Typical > m.Reading.High {
		k.bad(finding.ErrImpossible, "reading", tables.Show(m.Reading, quantity.Metric), "low, typical and high, rising")
	}
	if m.Reading.Low < 0 || m.HasDry && m.Dry < 0 {
		k.bad(finding.ErrImpossible, "reading", tables.Show(m.Reading, quantity.Metric), "numbers of the meter's scale, 0 or more")
	}
	if m.Spots < 0 {
		k.bad(finding.ErrImpossible, "spots", strconv.Itoa(m.Spots), "a number of spots; 0 where it was not noted")
	}
}
