package antifoul_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// patches are sections of timed stripping on the hull.
func patches(lines ...string) string {
	var out strings.Builder
	for _, l := range lines {
		out.WriteString("[[timed]]\npart = \"hull\"\n" + l + "\n")
	}
	return out.String() + "[paint]"
}

const (
	easy = "area = \"0.5 m2\"\ntook = \"15 min\"\ngoes = \"easy\""    // 0.5 h/m2
	hard = "area = \"0.25 m2\"\ntook = \"22.5 min\"\ngoes = \"hard\"" // 1.5 h/m2
)

// Two patches by hand: 15 min on 0.5 m2 are 0.5 h/m2, 22.5 min on 0.25 m2 are 1.5 h/m2; half and half 1.0 h/m2. Hours are rate × area at each end.
func TestTwoTimedPatches(t *testing.T) {
	j := costed(t, wages, "[paint]", patches(easy, hard))
	if len(j.Timed) != 1 {
		t.Fatalf("%d answers", len(j.Timed))
	}
	x := j.Timed[0]
	if x.Rate != (quantity.Range[float64]{Low: 0.5, Typical: 1, High: 1.5}) || x.Patches != 2 || x.Work != finding.Strip {
		t.Errorf("%+v", x)
	}
	m2 := func(a quantity.Area) float64 { return a.Float(quantity.SquareMetre) }
	for _, e := range [][3]float64{{x.Hours.Low, 0.5, m2(x.Area.Low)}, {x.Hours.Typical, 1, m2(x.Area.Typical)}, {x.Hours.High, 1.5, m2(x.Area.High)}} {
		if math.Abs(e[0]-e[1]*e[2]) > 1e-9 {
			t.Errorf("%v h, want %v × %v", e[0], e[1], e[2])
		}
	}
	if has(x.Findings, antifoul.RuleTimedOne) || has(x.Findings, antifoul.RuleTimedBlast) {
		t.Error("told of one kind only, or of blasting that nobody priced")
	}
}

// What was timed stands in place of the tables' rate in the order of work.
func TestTimedHoursArePlanned(t *testing.T) {
	stripped := []string{`coating = "ablative-cuprous-multi"`, `coating = "silicone-old"`}
	plain, timed := costed(t, wages, stripped...), costed(t, wages, append(stripped, "[paint]", patches(easy, hard))...)
	of := func(j *antifoul.Job) (h quantity.Range[float64]) {
		for _, x := range j.Order {
			if x.Do == finding.Strip {
				return x.Hours
			}
		}
		t.Fatal("nothing is stripped")
		return h
	}
	if of(timed) == of(plain) {
		t.Error("the strip takes as long as by the tables")
	}
	if of(timed) != timed.Timed[0].Hours {
		t.Errorf("%v in the order, %v timed", of(timed), timed.Timed[0].Hours)
	}
}

// With one sort only the range is no narrower than the tables' own.
func TestOneKindOfPatch(t *testing.T) {
	for _, text := range []string{patches(easy), patches(hard, hard), patches("area = \"0.5 m2\"\ntook = \"15 min\"")} {
		x := costed(t, wages, "[paint]", text).Timed[0]
		if !has(x.Findings, antifoul.RuleTimedOne) {
			t.Error("not told")
		}
		if x.Rate.High/x.Rate.Typical < x.Table.High/x.Table.Typical-1e-9 || x.Rate.Low/x.Rate.Typical > x.Table.Low/x.Table.Typical+1e-9 {
			t.Errorf("%v is narrower than the tables' %v", x.Rate, x.Table)
		}
	}
}

func TestFarFromTheTables(t *testing.T) {
	table := costed(t, wages, "[paint]", patches(easy, hard)).Timed[0].Table
	for _, c := range []struct {
		rate float64
		far  bool
	}{{table.High * 1.49, false}, {table.High * 1.51, true}, {table.Low / 1.51, true}, {table.Low / 1.49, false}} {
		took := quantity.Minute.Of(quantity.Minute.N(int64(math.Round(c.rate * 60 * 10))).Number()) // on 10 m2, so that a minute is fine enough
		x := costed(t, wages, "[paint]", patches("area = \"10 m2\"\ntook = \""+took.String()+"\"")).Timed[0]
		if has(x.Findings, antifoul.RuleTimedFar) != c.far {
			t.Errorf("%v h/m2 against %v: far is %v", c.rate, table, !c.far)
		}
	}
}

// Blasting at 48 a square metre against 1 h/m2 of scraping breaks even at 48 an hour.
func TestBlastingBreaksEven(t *testing.T) {
	blast := "[[price]]\nkey = \"blast\"\nof = \"work\"\nwhat = \"blast\"\nby = \"yard\"\nper = \"m2\"\nprice = \"48 EUR\"\nbasis = \"invented\"\n"
	x := costed(t, wages+blast, "[paint]", patches(easy, hard)).Timed[0]
	for _, f := range x.Findings {
		if f.Rule != antifoul.RuleTimedBlast {
			continue
		}
		for _, k := range f.Facts {
			if k.Name != "worth" {
				continue
			}
			got, err := quantity.ParseMoney(k.Value.(string))
			if err != nil {
				t.Fatal(err)
			}
			if d, _ := got.Amount().Sub(euros(t, "48").Amount()).Float64(); math.Abs(d) > 0.05 {
				t.Errorf("worth %v", got)
			}
			return
		}
	}
	t.Error("no break-even")
}

func TestTimedFaults(t *testing.T) {
	_, err := plan(t, strings.Replace(base, "[paint]", "[[timed]]\npart = \"hul\"\nwork = \"stripp\"\narea = \"0 m2\"\ntook = \"101 h\"\n[[timed]]\npart = \"hull\"\nwork = \"mask\"\n[paint]", 1))
	faults, ok := errors.AsType[finding.Faults](err)
	if !ok {
		t.Fatalf("%v", err)
	}
	want := map[string]error{
		"timed[1].part": finding.ErrUnknown, "timed[1].work": finding.ErrUnknown, "timed[1].area": finding.ErrImpossible, "timed[1].took": finding.ErrImpossible,
		"timed[2].work": finding.ErrValue, "timed[2].area": finding.ErrMissing, "timed[2].took": finding.ErrMissing,
	}
	for _, f := range faults {
		if k, ok := want[f.Key]; !ok || !errors.Is(f, k) {
			t.Errorf("%v", f)
		}
		delete(want, f.Key)
	}
	if len(want) > 0 {
		t.Errorf("not told: %v", want)
	}
}

func has(fs finding.List, rule finding.ID) bool {
	for _, f := range fs {
		if f.Rule == rule {
			return true
		}
	}
	return false
}

// A patch has an area and takes a time: above nothing, to 100 m2 and 100 h.
func TestTimedBounds(t *testing.T) {
	for lines, good := range map[string]bool{
		"area = \"100 m2\"\ntook = \"1 h\"": true, "area = \"100.01 m2\"\ntook = \"1 h\"": false, "area = \"0.01 m2\"\ntook = \"1 h\"": true, "area = \"0 m2\"\ntook = \"1 h\"": false, "area = \"-1 m2\"\ntook = \"1 h\"": false,
		"area = \"1 m2\"\ntook = \"100 h\"": true, "area = \"1 m2\"\ntook = \"6001 min\"": false, "area = \"1 m2\"\ntook = \"1 min\"": true, "area = \"1 m2\"\ntook = \"0 h\"": false,
	} {
		_, err := plan(t, strings.Replace(base, "[paint]", "[[timed]]\npart = \"hull\"\nwork = \"strip\"\n"+lines+"\n[paint]", 1))
		if (err == nil) != good {
			t.Errorf("%s: %v", lines, err)
		}
	}
}

// Near names of work are those of work by the square metre.
func TestTimedWorkIsSuggested(t *testing.T) {
	for work, want := range map[string]string{"stripp": "strip", "abrad": "abrade"} {
		_, err := plan(t, strings.Replace(base, "[paint]", "[[timed]]\npart = \"hull\"\nwork = \""+work+"\"\narea = \"1 m2\"\ntook = \"1 h\"\n[paint]", 1))
		if err == nil || !strings.Contains(err.Error(), "did you mean "+want) {
			t.Errorf("%s: %v", work, err)
		}
	}
	_, err := plan(t, strings.Replace(base, "[paint]", "[[timed]]\npart = \"hull\"\nwork = \"maskk\"\narea = \"1 m2\"\ntook = \"1 h\"\n[paint]", 1))
	if err == nil || strings.Contains(err.Error(), "did you mean mask") {
		t.Errorf("maskk: %v", err)
	}
}
