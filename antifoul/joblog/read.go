package joblog

import (
	"errors"
	"fmt"
	"io/fs"
	"strconv"
	"strings"
	"time"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/entry"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// most bounds the sections of one kind.
const most = 1000

// Read reads the log name of fsys and checks it; names of coatings, colours and zones are those of the book. Times without an offset
// are those of the clock of the zone; nil: they are taken as they stand.
//
// The error is a finding.Faults with every fault of the file, those of Check among them. A log of a later version has one fault, for nobody
// can tell what its keys mean. The log comes back as far as it could be read.
func Read(b *tables.Book, fsys fs.FS, name string, zone *time.Location) (Log, error) {
	root, faults := entry.Open(fsys, name)
	if root == nil {
		return Log{Name: name}, faults.Err()
	}
	top := root.Table("log")
	l := Log{Name: name}
	top.Need(fmt.Sprintf("the form of the log, version = %d", Version), "version")
	if v, ok := top.Raw("version").(int64); ok && v > Version {
		top.Fault(finding.ErrValue, "version", strconv.FormatInt(v, 10), newer)
		return l, faults.Err()
	}
	l.Version, _ = top.Int("version", 1, Version)
	l.Boat, l.Launched, l.Hauled = top.Text("boat"), top.Date("launched"), top.Date("hauled")
	top.Close()
	clock := moments{zone}
	for _, r := range sections(root, "coat") {
		l.Coats = append(l.Coats, clock.coat(r))
	}
	for _, r := range sections(root, "task") {
		t := Task{Span: clock.span(r), Part: r.Text("part"), Zones: r.Texts("zones"), Do: finding.Action(r.Text("do")), DownTo: r.Text("down_to"), Who: r.Texts("who"), Deviations: r.Texts("deviations")}
		r.Close()
		l.Tasks = append(l.Tasks, t)
	}
	for _, r := range sections(root, "gauged") {
		s := Survey{
			On: r.Date("on"), Part: r.Text("part"), Zone: r.Text("zone"), Layer: compat.Purpose(r.Word("layer", words()...)), Coating: r.Text("coating"),
			Film: entry.Range[quantity.Film](r, "film"), By: r.Text("by"), Who: r.Texts("who"),
		}
		s.Readings, _ = r.Int("readings", 1, 100000)
		r.Close()
		l.Surveys = append(l.Surveys, s)
	}
	for _, r := range sections(root, "look") {
		k := Look{
			On: r.Date("on"), Part: r.Text("part"), Zone: r.Text("zone"), Signal: r.YesNo("signal"), Film: entry.Amount[quantity.Film](r, "film"),
			State: tables.Condition(r.Text("state")), Who: r.Texts("who"),
		}
		k.Readings, _ = r.Int("readings", 1, 100000)
		r.Close()
		l.Looks = append(l.Looks, k)
	}
	root.Close()
	read := *faults
	for _, f := range l.Check(b) {
		if !noted(read, f.Key) {
			*faults = append(*faults, finding.Faults{f}.Under(name, "")...)
		}
	}
	return l, faults.Err()
}

// newer says what to do with a log that a later version wrote.
const newer = "a file of this version of the module or an earlier one: a later one wrote this, and may mean something else by its keys; read it with that one"

// noted reports whether a fault of the key, or of what it stands in, is among those of reading.
func noted(fs finding.Faults, key string) bool {
	for _, f := range fs {
		if f.Key == key || strings.HasPrefix(key, f.Key+".") || strings.HasPrefix(f.Key, key+"[") {
			return true
		}
	}
	return false
}

func sections(r *entry.Row, key string) []*entry.Row {
	rows := r.Tables(key)
	if len(rows) > most {
		r.Fault(finding.ErrImpossible, key, fmt.Sprintf("%d sections", len(rows)), fmt.Sprintf("at most %d", most))
		return rows[:most] // the log has some of them: nobody is told that it has none
	}
	return rows
}

func (m moments) coat(r *entry.Row) Coat {
	c := Coat{
		Span: m.span(r),
		Air: Air{
			Air:      entry.Amount[quantity.Temperature](r, "air"),
			Surface:  entry.Amount[quantity.Temperature](r, "surface"),
			DewPoint: entry.Amount[quantity.Temperature](r, "dew_point"),
			Humidity: entry.Amount[quantity.Share](r, "humidity"),
			Rain:     r.YesNo("rain"),
		},
		Part:       r.Text("part"),
		Zones:      r.Texts("zones"),
		Layer:      compat.Purpose(r.Word("layer", words()...)),
		Coating:    r.Text("coating"),
		Colour:     r.Text("colour"),
		Batches:    r.Texts("batch"),
		Litres:     entry.Amount[quantity.Volume](r, "litres"),
		Thinner:    entry.Amount[quantity.Share](r, "thinner"),
		Who:        r.Texts("who"),
		Deviations: r.Texts("deviations"),
	}
	c.Number, _ = r.Int("coat", 1, 50)
	for i, s := range r.Texts("wet_film") {
		t, err := coverage.ParseTooth(s)
		if bad, isBad := errors.AsType[*quantity.ParseError](err); isBad {
			r.Fault(finding.ErrValue, fmt.Sprintf("wet_film[%d]", i+1), entry.Describe(s), bad.Want)
		}
		c.Wet = append(c.Wet, t) // one that cannot be read keeps its place, so that the faults of the others stand at theirs
	}
	r.Close()
	return c
}

func words() []string {
	var out []string
	for _, l := range Layers() {
		out = append(out, string(l))
	}
	return out
}
