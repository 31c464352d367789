package antifoul_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

const harbour = "[[place]]\nkey = \"pool\"\nname = \"the inner pool\"\nwithin = \"GB\"\nbasis = \"own table\"\nsource = \"chart\"\n"

func pastRow(key, coating, place, outcome, months string) string {
	return "[[past_result]]\nkey = \"" + key + "\"\ncoating = \"" + coating + "\"\nplace = \"" + place + "\"\noutcome = \"" + outcome +
		"\"\nmonths = \"" + months + " months\"\nboats = 2\nbasis = \"own table\"\nsource = \"yard's log\"\n"
}

// pastHull ranks the hull of the base boat, kept in the pool and asked for 24 months, with own rows on top.
func pastHull(t *testing.T, own string, changes ...string) antifoul.PartRanking {
	t.Helper()
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(own)}})
	if err != nil {
		t.Fatal(err)
	}
	x, err := antifoul.ReadBoatWith(b, fstest.MapFS{"boat.toml": {Data: []byte(strings.NewReplacer(append(changes, `place = "GB"`, `place = "pool"`)...).Replace(base))}}, "boat.toml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := antifoul.Rank(b, x)
	if err != nil {
		t.Fatal(err)
	}
	return r.Hull()
}

func place(t *testing.T, p antifoul.PartRanking, key string) antifoul.Place {
	t.Helper()
	x, ok := p.Of(key)
	if !ok {
		t.Fatalf("%s is not ranked", key)
	}
	return x
}

func TestWhatHeldHereComesFirst(t *testing.T) {
	plain := pastHull(t, harbour)
	best, _ := plain.Best()
	var other antifoul.Place // the last type of the best tier
	for _, p := range plain.Places {
		if p.Tier == best.Tier && p.Key != best.Key {
			other = p
		}
	}
	if other.Key == "" {
		t.Fatal("the best tier holds one type only")
	}
	for _, where := range []string{"pool", "GB", "world"} {
		seen := pastHull(t, harbour+pastRow("one", other.Key, where, "held", "24"))
		first, _ := seen.Best()
		if first.Key != other.Key || first.Rank != 1 || first.Tied {
			t.Errorf("%s was seen to hold at %s; first is %s, rank %d", other.Key, where, first.Key, first.Rank)
			continue
		}
		if k := criterionOf(t, seen, other.Key, "growth"); k.Value != 1 || k.Bars || fmt.Sprint(k.Boat) != "seen at her berth" {
			t.Errorf("it held, and growth is worth %v, bars %v, for %v", k.Value, k.Bars, k.Boat)
		}
		if f := first.Reasons()[0]; f.Rule != antifoul.RulePastHeld || f.Verdict != finding.Fine || f.Basis[0].Source != "yard's log" {
			t.Errorf("the first reason is %v", f)
		}
		if why := first.Why(); !strings.HasPrefix(why, "It held growth off for 24 months on boats kept in these waters (") || !strings.Contains(why, "boats seen: 2") {
			t.Errorf("why: %s", why)
		}
	}
	for name, rows := range map[string]string{
		"too short":     pastRow("one", other.Key, "pool", "held", "23"),
		"elsewhere":     pastRow("one", other.Key, "SE", "held", "48"),
		"contradictory": pastRow("one", other.Key, "pool", "held", "24") + pastRow("two", other.Key, "pool", "failed", "24"),
	} {
		seen := pastHull(t, harbour+rows)
		got := place(t, seen, other.Key)
		if first, _ := seen.Best(); first.Key != best.Key || got.Tier != other.Tier || got.Score != other.Score {
			t.Errorf("%s: the order has changed: %s first, %s %v %.1f", name, first.Key, got.Key, got.Tier, got.Score)
		}
		if told := len(got.Past) > 0; told != (name != "elsewhere") {
			t.Errorf("%s: told %t", name, told)
		}
	}
}

func TestWhatFailedHereIsUnsuited(t *testing.T) {
	plain := pastHull(t, harbour)
	best, _ := plain.Best()
	seen := pastHull(t, harbour+pastRow("one", best.Key, "pool", "failed", "24"))
	if got := place(t, seen, best.Key); got.Tier != antifoul.Unsuited || got.Reasons()[0].Rule != antifoul.RulePastFailed {
		t.Errorf("%s failed here and is %v: %s", best.Key, got.Tier, got.Why())
	}
	late := place(t, pastHull(t, harbour+pastRow("one", best.Key, "pool", "failed", "25")), best.Key)
	if late.Tier != best.Tier || len(late.Past) != 1 || late.Past[0].Verdict != finding.Caution {
		t.Errorf("it failed after the wished months and is %v, %v", late.Tier, late.Past)
	}
}

// No past result opens what metal, old film or law forbid.
func TestPastResultsForbidAndAllowNothing(t *testing.T) {
	aluminium := []string{`material = "grp"`, `material = "aluminium"`, `coating = "ablative-cuprous-multi"`, `coating = "bare"`}
	plain := pastHull(t, harbour, aluminium...)
	var rows strings.Builder
	for _, p := range plain.Places {
		rows.WriteString(pastRow("seen-"+p.Key, p.Key, "pool", "held", "60"))
	}
	seen := pastHull(t, harbour+rows.String(), aluminium...)
	barred := 0
	for _, p := range plain.Places {
		if p.Tier != antifoul.Barred {
			continue
		}
		barred++
		if got := place(t, seen, p.Key); got.Tier != antifoul.Barred {
			t.Errorf("%s was seen to hold and is %v now; it is barred", p.Key, got.Tier)
		}
	}
	// What growth alone spoke against is lifted.
	lifted := slices.ContainsFunc(plain.Places, func(p antifoul.Place) bool {
		return p.Tier == antifoul.Unsuited && place(t, seen, p.Key).Tier < antifoul.Unsuited
	})
	t.Logf("%d barred; a type that growth spoke against lifted: %t", barred, lifted)
	if barred == 0 || !lifted {
		t.Error("the case shows nothing")
	}
}

// What was seen at a place is told by the names of the type and of the place.
func TestPastResultsAreToldByName(t *testing.T) {
	b, err := tables.Default().With(fstest.MapFS{"own.toml": {Data: []byte(harbour)}})
	if err != nil {
		t.Fatal(err)
	}
	x := place(t, pastHull(t, harbour+pastRow("p", "hard-cuprous", "pool", "held", "30")), "hard-cuprous")
	if len(x.Past) != 1 || x.Past[0].About != x.Name {
		t.Fatalf("%v", x.Past)
	}
	if said := b.Say(x.Past[0], quantity.Metric); !strings.Contains(said, "the inner pool") || strings.Contains(said, "hard-cuprous") {
		t.Error(said)
	}
}
