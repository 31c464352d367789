package antifoul

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/compat/galvanic"
	"boatyard.example/bottomwork/compat/oldfilm"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/coverage/hullform"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// ReadBoat reads a boat file against the embedded tables. See ReadBoatWith.
func ReadBoat(fsys fs.FS, name string) (Boat, error) {
	return ReadBoatWith(tables.Default(), fsys, name)
}

// ReadBoatWith reads the boat file name of fsys; names of coatings, materials and colours are those of the book.
//
// The error is a finding.Faults with every fault of the file: unknown keys and names (with the near ones), missing, impossible
// and unit-less values, each with file, key path, what was read and what is accepted. A key that is not given is not given,
// which differs from zero.
func ReadBoatWith(b *tables.Book, fsys fs.FS, name string) (Boat, error) {
	return ReadBoatIn(b, fsys, name, nil)
}

// ReadBoatIn is ReadBoatWith for a boat that stands in the time zone: forecast and plan of days are then by its clock, with the hours that it skips
// and repeats. Nil: times are taken as they stand, as in a zone that never changes its clocks.
func ReadBoatIn(b *tables.Book, fsys fs.FS, name string, zone *time.Location) (Boat, error) {
	return readBoat(b, fsys, name, zone, true)
}

// readBoat reads a boat file; where whole is false, one that may say nothing of the hull's size.
func readBoat(b *tables.Book, fsys fs.FS, name string, zone *time.Location, whole bool) (Boat, error) {
	root, faults := entry.Open(fsys, name)
	if root == nil {
		return Boat{}, faults.Err()
	}
	var x Boat
	if newer := readPassport(root, &x); newer {
		return x, faults.Err()
	}
	top := root.Table("boat")
	x.Name, x.On = top.Text("name"), top.Date("date")
	top.Close()
	x.Hull = readHull(fsys, path.Dir(name), root.Table("hull"))
	root.Need("at least one part, [[part]], the hull", "part")
	for _, r := range root.Tables("part") {
		x.Parts = append(x.Parts, readPart(b, r))
	}
	x.Use = readUse(root.Table("use"))
	for _, r := range root.Tables("berth") {
		x.Berths = append(x.Berths, law.Berth{Place: r.Text("place"), Role: r.Text("role"), Water: r.Text("water")})
		r.Close()
	}
	x.Work, x.Weather = readWork(b, fsys, path.Dir(name), root.Table("work"), zone)
	x.Paint = readPaint(root.Table("paint"))
	for _, r := range sections(root, "record", mostSections) {
		x.Records = append(x.Records, readRecord(r))
	}
	for _, r := range sections(root, "tin", mostSections) {
		x.Tins = append(x.Tins, readTin(r))
	}
	for _, r := range sections(root, "timed", mostSections) {
		x.Timed = append(x.Timed, readTimed(r))
	}
	x.Wishes = readWishes(root.Table("wishes"))
	unread := readPutOn(fsys, name, root, &x, faults)
	unread = append(unread, unreadHull(root, x.Hull)...)
	x.Survey = readSurvey(root)
	root.Close()
	// What could not be read at all would be reported a second time as missing: drop those.
	whole = whole || root.Has("hull")
	found := x.check(b, whole)
	if len(x.Hull.Check(b)) == 0 && len(complete(b)) == 0 { // of a book that lacks numbers Plan says so
		if _, _, err := partAreas(b, x); err != nil {
			more, _ := errors.AsType[finding.Faults](err)
			found = append(found, more...)
		}
	}
	unread = append(slices.Clone(*faults), unread...)
	for _, f := range found {
		if f.File != "" && f.File != tablesFile {
			f.File = path.Join(path.Dir(name), f.File) // a sheet, as the boat file names it
		}
		if f.File != "" || !alreadyFaulty(unread, f) {
			*faults = append(*faults, finding.Faults{f}.Under(name, "")...)
		}
	}
	return x, faults.Err()
}

// alreadyFaulty reports whether reading noted a fault for the key or for what it stands in; or for a part of what is said to be missing.
func alreadyFaulty(fs finding.Faults, found finding.Fault) bool {
	plain := strings.NewReplacer("[", ".", "]", "").Replace // measured[flat] is measured.flat
	key := plain(found.Key)
	for _, f := range fs {
		k := plain(f.Key)
		if k == key || strings.HasPrefix(key, k+".") || errors.Is(found, finding.ErrMissing) && strings.HasPrefix(k, key+".") {
			return true
		}
	}
	return false
}

// unreadHull returns a fault for each key that would not be missing if the hull's sheets could have been read.
func unreadHull(root *entry.Row, h coverage.Hull) finding.Faults {
	hull, _ := root.Raw("hull").(map[string]any)
	given := func(key string) bool { _, ok := hull[key]; return ok }
	lost := given("girths") && len(h.Girths) == 0 || given("offsets") && len(h.Offsets) == 0
	if !lost {
		return nil
	}
	var out finding.Faults
	for _, k := range []string{"kind", "length", "beam", "draft"} {
		if !given(k) {
			out = append(out, finding.Fault{Key: "hull." + k})
		}
	}
	return out
}

func readHull(fsys fs.FS, folder string, r *entry.Row) coverage.Hull {
	h := coverage.Hull{
		Kind:          r.Text("kind"),
		Length:        entry.Amount[quantity.Length](r, "length"),
		Beam:          entry.Amount[quantity.Length](r, "beam"),
		Draft:         entry.Amount[quantity.Length](r, "draft"),
		Mass:          entry.Amount[quantity.Mass](r, "mass"),
		Overall:       entry.Amount[quantity.Length](r, "overall"),
		WaterlineBeam: entry.Amount[quantity.Length](r, "waterline_beam"),
		CanoeDraft:    entry.Amount[quantity.Length](r, "canoe_draft"),
		Midship:       entry.Amount[quantity.Share](r, "midship"),
		BootTop:       entry.Amount[quantity.Length](r, "boot_top"),
		Girths:        beside(fsys, folder, r, "girths", hullform.ReadGirths),
		Offsets:       beside(fsys, folder, r, "offsets", hullform.ReadOffsets),
	}
	h.Hulls, _ = r.Int("hulls", 1, 3)
	for _, p := range r.Tables("piece") {
		piece := hullform.Piece{
			What:   p.Text("what"),
			Length: entry.Amount[quantity.Length](p, "length"),
			Height: entry.Amount[quantity.Length](p, "height"),
			Width:  entry.Amount[quantity.Length](p, "width"),
		}
		piece.Count, _ = p.Int("count", 1, 100)
		p.Close()
		h.Pieces = append(h.Pieces, piece)
	}
	var s coverage.Support
	s.StandPairs, _ = r.Int("stand_pairs", 0, 100)
	s.KeelBlocks, _ = r.Int("keel_blocks", 0, 100)
	s.Chains, _ = r.Int("chains", 0, 100)
	if r.Has("stand_pairs") || r.Has("keel_blocks") || r.Has("chains") {
		h.Support = &s
	}
	measured := r.Table("measured")
	for _, zone := range measured.Keys() {
		h.Measured = append(h.Measured, coverage.ZoneArea{Zone: zone, Area: entry.Amount[quantity.Area](measured, zone)})
	}
	r.Close()
	return h
}

// beside reads the file that the key names, which lies beside the boat file or below it; nothing when the key is not given. The file's
// faults are noted under its own name.
func beside[T any](fsys fs.FS, folder string, r *entry.Row, key string, read func(fs.FS, string) ([]T, error)) []T {
	name := sheetName(r, key)
	if name == "" {
		return nil
	}
	out, err := read(fsys, path.Join(folder, name))
	if faults, ok := errors.AsType[finding.Faults](err); ok {
		r.Note(faults)
	}
	return out
}

// mostSections bounds the sections of one kind: tins, kits and what was put on. mostCans bounds those of a store.
const (
	mostSections = 100
	mostCans     = 1000
)

// sections reads an array of sections; none, and a fault, where there are more than most.
func sections(r *entry.Row, key string, most int) []*entry.Row {
	rows := r.Tables(key)
	if len(rows) > most {
		r.Fault(finding.ErrImpossible, key, fmt.Sprintf("%d sections", len(rows)), fmt.Sprintf("at most %d", most))
		return nil
	}
	return rows
}

// sheetName reads the name of a sheet, which lies in the folder of the boat file or below it; empty when not given or elsewhere.
func sheetName(r *entry.Row, key string) string {
	name := r.Text(key)
	if name != "" && (!fs.ValidPath(path.Clean(name)) || path.Clean(name) == ".") {
		r.Fault(finding.ErrValue, key, entry.Describe(name), "a file in the folder of the boat file or below it, \"sheet.csv\"")
		return ""
	}
	return name
}

func readPart(b *tables.Book, r *entry.Row) compat.Part {
	p := compat.Part{
		Name:     r.Text("name"),
		Zone:     r.Text("zone"),
		Material: r.Text("material"),
		Area:     entry.Amount[quantity.Area](r, "area"),
		Laminate: r.Word("laminate", "dry", "wet"),
		Barrier:  r.YesNo("barrier"),
		Seen:     r.Texts("seen"),
		Reads:    galvanic.Reading{Value: entry.Amount[quantity.Potential](r, "potential"), Electrode: r.Text("electrode")},
		Readings: readReadings(r.Table("readings")),
	}
	r.Need("text", "name", "zone", "material")
	for _, f := range r.Tables("found") {
		l := compat.Layer{
			Colour:  f.Text("colour"),
			Film:    entry.Range[quantity.Film](f, "film"),
			State:   tables.Condition(f.Text("state")),
			Age:     entry.Amount[quantity.Duration](f, "age"),
			KnownBy: f.Text("known_by"),
			For:     compat.Found,
		}
		if l.State == "" {
			l.State = tables.NotReported
		}
		if key := f.Text("coating"); key != "" {
			c, err := b.Coating(key)
			if err != nil {
				f.Fault(finding.ErrUnknown, "coating", entry.Describe(key), finding.Suggest(key, coatingKeys(b)))
			}
			l.Coating = c
		}
		p.Found = append(p.Found, l)
		f.Close()
	}
	r.Close()
	return p
}

func readReadings(r *entry.Row) oldfilm.Readings {
	x := oldfilm.Readings{
		Flaking:     entry.Amount[quantity.Share](r, "flaking"),
		Adhesion:    r.Text("adhesion"),
		Alligatored: entry.Amount[quantity.Share](r, "alligatored"),
		Film:        entry.Range[quantity.Film](r, "film"),
		Blisters:    r.Text("blisters"),
		Rust:        r.Text("rust"),
		Moisture:    r.Text("moisture"),
	}
	r.Close()
	return x
}

func coatingKeys(b *tables.Book) []string {
	var out []string
	for c := range b.Coatings() {
		out = append(out, c.Key)
	}
	return out
}

func readUse(r *entry.Row) wear.Use {
	growth, _ := tables.ParseGrade(r.Word("growth", tables.GradeWords()[1:]...)) // of a word that is not taken Word notes the fault
	cleaning, _ := wear.ParseCleaning(r.Word("cleaning", wear.CleaningWords()...))
	u := wear.Use{
		UnderWay:            entry.Amount[quantity.Duration](r, "under_way"),
		Speed:               entry.Amount[quantity.Speed](r, "speed"),
		LongestIdle:         entry.Amount[quantity.Duration](r, "longest_idle"),
		HaulOutEvery:        entry.Amount[quantity.Months](r, "haul_out_every"),
		AshoreEachYear:      entry.Amount[quantity.Months](r, "ashore_each_year"),
		RelaunchedUnpainted: r.YesNo("relaunched_unpainted"),
		Growth:              growth,
		Water:               r.Text("water"),
		WaterTemperature:    entry.Amount[quantity.Temperature](r, "water_temperature"),
		Cleaning:            cleaning,
		CleanedEvery:        entry.Amount[quantity.Duration](r, "cleaned_every"),
		Kept:                r.Text("kept"),
		DriesOn:             r.Text("dries_on"),
		Ice:                 r.YesNo("ice"),
	}
	r.Close()
	return u
}

func readPaint(r *entry.Row) coverage.Method {
	m := coverage.Method{
		By:      r.Text("by"),
		Thinner: entry.Amount[quantity.Share](r, "thinner"),
		Reserve: entry.Amount[quantity.Share](r, "reserve"),
		Profile: r.Text("profile"),
		Today:   entry.Amount[quantity.Temperature](r, "temperature"),
	}
	for _, s := range r.Texts("cans") {
		v, err := quantity.Parse[quantity.Volume](s)
		if err != nil {
			r.Fault(finding.ErrValue, "cans", entry.Describe(s), "sizes on sale, each "+strings.Join(quantity.Units[quantity.Volume](), ", "))
			continue
		}
		m.Sizes = append(m.Sizes, v)
	}
	r.Close()
	return m
}

func readRecord(r *entry.Row) Record {
	x := Record{Litres: entry.Amount[quantity.Volume](r, "litres")}
	x.Coating, x.Launched, x.Film = r.Text("coating"), r.Date("launched"), entry.Range[quantity.Film](r, "film")
	x.Coats, _ = r.Int("coats", 1, 50)
	for _, k := range r.Tables("look") {
		l := wear.Look{
			On: k.Date("on"), Zone: k.Text("zone"), Signal: k.YesNo("signal"),
			Laid: entry.Range[quantity.Film](k, "laid"), Film: entry.Amount[quantity.Film](k, "film"),
		}
		l.Readings, _ = k.Int("readings", 1, 100000)
		k.Close()
		x.Looks = append(x.Looks, l)
	}
	r.Close()
	return x
}

func readTin(r *entry.Row) coverage.Tin {
	x := coverage.Tin{
		Coating:   r.Text("coating"),
		Densities: [2]quantity.Density{entry.Amount[quantity.Density](r, "density_base"), entry.Amount[quantity.Density](r, "density_hardener")},
		PotLife:   entry.Amount[quantity.Duration](r, "pot_life"),
		At:        entry.Amount[quantity.Temperature](r, "pot_life_at"),
	}
	if s := r.Text("ratio"); s != "" {
		var err error
		if x.Ratio, err = coverage.ParseRatio(s); err != nil {
			fs, _ := errors.AsType[finding.Faults](err)
			r.Add(fs)
		}
	}
	for _, k := range sections(r, "kit", mostSections) {
		kit := coverage.Kit{Base: entry.Amount[quantity.Volume](k, "base"), Hardener: entry.Amount[quantity.Volume](k, "hardener"), Batch: k.Text("batch")}
		kit.Price = entry.Money(k, "price")
		k.Close()
		x.Kits = append(x.Kits, kit)
	}
	for _, k := range sections(r, "store", mostCans) {
		can := coverage.Stored{Size: entry.Amount[quantity.Volume](k, "size"), Colour: k.Text("colour"), Batch: k.Text("batch")}
		can.Count, _ = k.Int("count", 1, 1000)
		k.Close()
		x.Store = append(x.Store, can)
	}
	r.Close()
	return x
}

func readWishes(r *entry.Row) Wishes {
	w := Wishes{
		RepaintAfter: entry.Amount[quantity.Months](r, "repaint_after"),
		ReckonOver:   entry.Amount[quantity.Months](r, "reckon_over"),
		Biocide:      r.Text("biocide"),
		Racing:       r.YesNo("racing_finish"),
		TopColour:    r.Text("top_colour"),
		SignalColour: r.Text("signal_colour"),
		SignalType:   r.Text("signal_type"),
		Coating:      r.Text("coating"),
	}
	r.Close()
	return w
}
