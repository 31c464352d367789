package tables_test

import (
	"encoding"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// scribbler calls everything that can be called of a book without an argument of its own kind and writes over all that it is given.
type scribbler struct {
	t       *testing.T
	written int                   // values written over
	types   map[reflect.Type]bool // row types that were met
}

// book goes through the methods of the book. Lookups get keys of every table.
func (s *scribbler) book(b *tables.Book) {
	v := reflect.ValueOf(b)
	keys := s.keys(b)
	for i := range v.NumMethod() {
		m, name := v.Method(i), v.Type().Method(i).Name
		for _, args := range s.arguments(name, m.Type(), keys) {
			for _, out := range m.Call(args) {
				s.result(name, out)
			}
		}
	}
}

// keys are the first keys of each table: the lookups of a table all hand out the same way.
func (s *scribbler) keys(b *tables.Book) []string {
	s.t.Helper()
	rows := map[string][]string{}
	for c := range b.Cells() {
		if of := rows[c.Table]; len(of) < 2 && !slices.Contains(of, c.Key) {
			rows[c.Table] = append(of, c.Key)
		}
	}
	return slices.Concat(slices.Collect(maps.Values(rows))...)
}

func (s *scribbler) arguments(name string, m reflect.Type, keys []string) [][]reflect.Value {
	switch {
	case name == "With": // makes another book
		return nil
	case m.NumIn() == 0:
		return [][]reflect.Value{{}}
	case m.NumIn() == 1 && m.In(0).Kind() == reflect.String:
		var out [][]reflect.Value
		for _, k := range keys {
			out = append(out, []reflect.Value{reflect.ValueOf(k).Convert(m.In(0))})
		}
		return out
	}
	book := tables.Default()
	old, _ := book.Coating("ablative-old")
	next, _ := book.Coating("hard-cuprous")
	var args []reflect.Value
	for i := range m.NumIn() {
		switch m.In(i) {
		case reflect.TypeFor[*tables.Coating]():
			args = append(args, reflect.ValueOf([]*tables.Coating{&next, &old}[i%2]))
		case reflect.TypeFor[tables.Coating]():
			args = append(args, reflect.ValueOf(next))
		case reflect.TypeFor[finding.Finding]():
			args = append(args, reflect.ValueOf(finding.Finding{Rule: "use-lasts"}))
		case reflect.TypeFor[quantity.System]():
			args = append(args, reflect.ValueOf(quantity.Metric))
		case reflect.TypeFor[string]():
			args = append(args, reflect.ValueOf("GB"))
		case reflect.TypeFor[[]string]():
			args = append(args, reflect.ValueOf([]string{"GB"}))
		case reflect.TypeFor[bool](), reflect.TypeFor[tables.Priced]():
			args = append(args, reflect.Zero(m.In(i)))
		default:
			s.t.Fatalf("the book's %s takes a %v: teach this test what to give it", name, m.In(i))
		}
	}
	return [][]reflect.Value{args}
}

// result writes over what was handed out: each row of a sequence, each element of a slice, what a pointer points at.
func (s *scribbler) result(name string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Func: // iter.Seq or iter.Seq2
		if v.IsNil() || v.Type().NumIn() != 1 || v.Type().In(0).Kind() != reflect.Func {
			s.t.Fatalf("%s hands out a function that is no sequence", name)
		}
		yes := []reflect.Value{reflect.ValueOf(true)}
		v.Call([]reflect.Value{reflect.MakeFunc(v.Type().In(0), func(row []reflect.Value) []reflect.Value {
			for _, x := range row {
				s.result(name, x)
			}
			return yes
		})})
	case reflect.Struct:
		own := reflect.New(v.Type())
		own.Elem().Set(v)
		s.value(own.Elem())
		if !strings.HasSuffix(v.Type().PkgPath(), "/tables") {
			return
		}
		s.types[v.Type()] = true
		for i := range own.NumMethod() { // what the row hands out in turn
			m := own.Method(i)
			if m.Type().NumIn() == 0 {
				for _, out := range m.Call(nil) {
					s.result(name+"."+own.Type().Method(i).Name, out)
				}
			}
		}
	case reflect.Slice, reflect.Map, reflect.Pointer:
		own := reflect.New(v.Type())
		own.Elem().Set(v)
		s.value(own.Elem())
	default: // a copy by itself
	}
}

// value writes over all of a value that an importer can reach: exported fields, elements, and by its own UnmarshalText.
func (s *scribbler) value(v reflect.Value) {
	if !v.CanSet() {
		return
	}
	if u, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		for _, text := range []string{"7 m", "7 um", "7 L", "7 %", "7 h", "7 months", "7 degC", "7 kn", "7 kg", "7 m2", "7 mV", "2001-01-01", "7 EUR", "fine"} {
			if u.UnmarshalText([]byte(text)) == nil {
				s.written++
			}
		}
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				s.value(v.Field(i))
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			s.value(v.Index(i))
		}
	case reflect.Map:
		if !v.IsNil() && v.Type().PkgPath() == "" {
			v.Clear()
			s.written++
		}
	case reflect.Pointer:
		if !v.IsNil() && v.Type() != reflect.TypeFor[*tables.Book]() {
			s.value(v.Elem())
		}
	case reflect.String:
		v.SetString("scribbled")
		s.written++
	case reflect.Int, reflect.Int64:
		v.SetInt(99)
		s.written++
	case reflect.Uint8:
		v.SetUint(99)
		s.written++
	case reflect.Float64:
		v.SetFloat(99)
		s.written++
	case reflect.Bool:
		v.SetBool(!v.Bool())
		s.written++
	default: // functions and interfaces: nothing to write over in place
	}
}

// told is all that a book answers, in words.
func told(b *tables.Book) string {
	var out strings.Builder
	fmt.Fprintln(&out, b.Fingerprint())
	for c := range b.Cells() {
		fmt.Fprintf(&out, "%+v\n", c)
	}
	for c := range b.Coatings() {
		fmt.Fprintf(&out, "%+v %v %v\n", c, slices.Collect(c.Actives()), slices.Collect(c.Hazards()))
	}
	for m := range b.Materials() {
		fmt.Fprintf(&out, "%+v\n", m)
	}
	for x := range b.Laws() {
		fmt.Fprintf(&out, "%+v\n", x)
	}
	for x := range b.Overcoats() {
		fmt.Fprintf(&out, "%+v\n", x)
	}
	for x := range b.Rules() {
		fmt.Fprintf(&out, "%+v %s\n", x, b.Say(finding.Finding{Rule: x.ID, About: "it"}, quantity.Metric))
	}
	for x := range b.Zones() {
		fmt.Fprintf(&out, "%+v\n", x)
	}
	for x := range b.Observations() {
		fmt.Fprintf(&out, "%+v\n", x)
	}
	for x := range b.Potentials() {
		fmt.Fprintf(&out, "%+v\n", x)
	}
	for x := range b.Steps() {
		fmt.Fprintf(&out, "%+v %v\n", x, slices.Collect(x.Cautions()))
	}
	for x := range b.Dryings() {
		fmt.Fprintf(&out, "%+v %v\n", x, slices.Collect(x.Points()))
	}
	for x := range b.AreaMethods() {
		fmt.Fprintf(&out, "%+v %v\n", x, x.Wants())
	}
	return out.String()
}

// Nothing that a book hands out can change it: whatever is written over, it answers as before.
func TestNothingHandedOutChangesTheBook(t *testing.T) {
	b := tables.Default()
	before := told(b)
	if before != told(b) {
		t.Fatal("a book does not tell the same twice: what is told holds an address")
	}
	s := &scribbler{t: t, types: map[reflect.Type]bool{}}
	s.book(b)
	if told(b) != before {
		t.Error("what was handed out and written over has changed the book")
	}
	for _, words := range [][]string{tables.Waters(), tables.Drivers(), tables.BerthRoles(), tables.GradeWords()} {
		was := slices.Clone(words)
		for i := range words {
			words[i] = "scribbled"
		}
		now := append(append(append(tables.Waters(), tables.Drivers()...), tables.BerthRoles()...), tables.GradeWords()...)
		for _, w := range was {
			if !slices.Contains(now, w) {
				t.Errorf("%q can be written over", w)
			}
		}
	}
	if s.written < 10000 || len(s.types) < 30 {
		t.Errorf("%d values of %d types were written over: too few to tell", s.written, len(s.types))
	}
}

// The test above can fail: a slice that is handed out as it is kept is written over.
func TestTheScribblerSees(t *testing.T) {
	kept := []string{"a"}
	s := &scribbler{t: t, types: map[reflect.Type]bool{}}
	s.result("planted", reflect.ValueOf(kept))
	s.result("planted", reflect.ValueOf(func(yield func(struct{ Words []string }) bool) { yield(struct{ Words []string }{kept}) }))
	if kept[0] != "scribbled" || s.written != 2 {
		t.Errorf("%q after %d", kept, s.written)
	}
}
