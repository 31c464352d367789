package compat_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

var grp = compat.Part{Name: "hull", Material: "grp", Zone: "hull"}

func TestHardOverAblativeEvenWithTheRightColours(t *testing.T) {
	b := book(t)
	good := compat.Stack{sound(t, b, "epoxy-barrier", 300), fresh(t, b, "hard-cuprous", compat.Signal, "red-oxide"), fresh(t, b, "ablative-cuprous-multi", compat.Working, "black")}
	if fs := compat.CheckStack(b, grp, good, 14); fs.Worst() == finding.Forbidden {
		t.Errorf("hard below, ablative above: %v", rules(fs))
	}
	bad := compat.Stack{sound(t, b, "epoxy-barrier", 300), fresh(t, b, "ablative-cuprous-multi", compat.Signal, "black"), fresh(t, b, "hard-cuprous", compat.Working, "red-oxide")}
	fs := compat.CheckStack(b, grp, bad, 14)
	if f := one(t, fs, "over-hard-on-soft"); f.Verdict != finding.Forbidden {
		t.Errorf("hard over ablative: %s", f.Verdict)
	}
	if f := one(t, fs, "stack-lightness-there"); f.Verdict != finding.Fine {
		t.Errorf("the colours alone are fine: %s", f.Verdict)
	}
}

// A sealer or tie coat between does not make hard over ablative right, unless its sheet says so, and then an own row does.
func TestUndercoatDoesNotHideASoftLayer(t *testing.T) {
	b := book(t)
	for _, tie := range []string{"sealer", "tie-coat"} {
		s := compat.Stack{sound(t, b, "ablative-cuprous-multi", 100), fresh(t, b, tie, compat.Undercoat, ""), fresh(t, b, "hard-cuprous", compat.Working, "")}
		if f := one(t, compat.CheckStack(b, grp, s, 14), "stack-buried"); f.Verdict != finding.Forbidden {
			t.Errorf("%s: %s", tie, f.Verdict)
		}
	}
	s := compat.Stack{sound(t, b, "unknown-old", 100), fresh(t, b, "sealer", compat.Undercoat, ""), fresh(t, b, "hard-cuprous", compat.Working, "")}
	if f := one(t, compat.CheckStack(b, grp, s, 14), "stack-buried"); f.Verdict != finding.Forbidden {
		t.Errorf("hard over a sealed unknown film, which may be soft: %s", f.Verdict)
	}
}

func TestStepInLightness(t *testing.T) {
	row := func(key, srgb string) string {
		return "[[colour]]\nkey = \"" + key + "\"\nbasis = \"invented\"\nsrgb = \"" + srgb + "\"\n"
	}
	factor := "[[factor]]\nkey = \"lightness-step\"\nname = \"least step\"\nbasis = \"invented\"\nvalue = 19.9\n" // the L* of #303030
	b, err := book(t).With(fstest.MapFS{"own.toml": {Data: []byte(factor + row("zero", "#000000") + row("under", "#2f2f2f") + row("on", "#303030") + row("over", "#313131"))}})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		signal, working string
		want            finding.Verdict
	}{
		{"zero", "under", finding.Forbidden},
		{"under", "zero", finding.Forbidden},
		{"zero", "on", finding.Fine},
		{"on", "zero", finding.Fine},
		{"zero", "over", finding.Fine},
		{"zero", "zero", finding.Forbidden},
		{"on", "over", finding.Forbidden},
		{"zero", "", finding.Ask},
		{"", "zero", finding.Ask},
		{"zero", "no such colour", finding.Ask},
	} {
		s := compat.Stack{fresh(t, b, "hard-cuprous", compat.Signal, c.signal), fresh(t, b, "ablative-cuprous-multi", compat.Working, c.working)}
		var got finding.Verdict
		for _, f := range compat.CheckStack(b, grp, s, -1) {
			switch f.Rule {
			case "stack-lightness", "stack-lightness-there", "stack-lightness-ask":
				got = f.Verdict
				if text := b.Say(f, quantity.Metric); strings.Contains(text, "(not stated)") || f.Rule != "stack-lightness-ask" && (len(f.Facts) != 2 || f.Facts[1].Value != 19.9 || len(f.Basis) != 1) {
					t.Errorf("%q below %q: %v: %s", c.signal, c.working, f, text)
				}
			}
		}
		if got != c.want {
			t.Errorf("%q below %q: %s, want %s", c.signal, c.working, got, c.want)
		}
	}
}

// A new hard film stands dry for its AirNew and no longer; an ablative coat over it is judged by its own clock.
func TestAirClockIsThatOfTheTopCoat(t *testing.T) {
	b := book(t)
	hard := coating(t, b, "hard-cuprous")
	limit := int(hard.AirNew.Float(quantity.Day))
	if limit <= 0 {
		t.Fatal("the hard row has no air clock")
	}
	s := compat.Stack{sound(t, b, "epoxy-barrier", 300), fresh(t, b, "hard-cuprous", compat.Working, "")}
	for days, want := range map[int]bool{-1: false, limit - 1: false, limit: false, limit + 1: true} {
		if got := compat.CheckStack(b, grp, s, days).Has("stack-air-new"); got != want {
			t.Errorf("%d d before launch, limit %d d: told %v", days, limit, got)
		}
	}
	f := one(t, compat.CheckStack(b, grp, s, limit+1), "stack-air-new")
	if f.Verdict != finding.Needs || f.First[0].Do != finding.Abrade {
		t.Errorf("%s %v, want needs abrade", f.Verdict, actions(f.First))
	}
	answered(t, b, finding.List{f, one(t, compat.CheckStack(b, grp, s, 0), "stack-launch-early")}, "the clocks of the top coat")
	s = append(s, fresh(t, b, "ablative-cuprous-multi", compat.Working, ""))
	if fs := compat.CheckStack(b, grp, s, limit+1); fs.Has("stack-air-new") {
		t.Errorf("with an ablative coat over it: %v", rules(fs))
	}
	if fs := compat.CheckStack(b, grp, s, 0); !fs.Has("stack-launch-early") {
		t.Errorf("launched on the day of the last coat: %v", rules(fs))
	}
	if fs := compat.CheckStack(b, grp, s, 1); fs.Has("stack-launch-early") {
		t.Errorf("launched after a day, which is more than its drying time: %v", rules(fs))
	}
}

// The clock of drying: a film that must dry for two days is launched on the second.
func TestLaunchMinBoundary(t *testing.T) {
	b := book(t)
	top := fresh(t, b, "foul-release-silicone", compat.Working, "")
	top.Coating.LaunchMin = quantity.Hour.N(48)
	for days, want := range map[int]bool{0: true, 1: true, 2: false, 3: false} {
		if got := compat.CheckStack(b, grp, compat.Stack{top}, days).Has("stack-launch-early"); got != want {
			t.Errorf("%d d after the last coat, 48 h to dry: told %v", days, got)
		}
	}
	top.For = compat.Found
	for _, days := range []int{0, 5000} {
		if fs := compat.CheckStack(b, grp, compat.Stack{top}, days); fs.Has("stack-launch-early") || fs.Has("stack-air-new") {
			t.Errorf("the clocks are those of a new film, this one was found: %v", rules(fs))
		}
	}
}

// New coats are painted inside the window, unless their age says otherwise.
func TestNewLayersAreInTime(t *testing.T) {
	b := book(t)
	s := compat.Stack{fresh(t, b, "hard-cuprous", compat.Working, ""), fresh(t, b, "hard-cuprous", compat.Extra, "")}
	if fs := compat.CheckStack(b, grp, s, 7); fs.Worst() != finding.Fine {
		t.Errorf("coat on coat: %v", rules(fs))
	}
	s[0].Age = quantity.Minute.N(1)
	if fs := compat.CheckStack(b, grp, s, 7); !fs.Has("window-early") {
		t.Errorf("coat on a coat of one minute: %v", rules(fs))
	}
}

// A flaking layer below a tie coat is told once, as what it is.
func TestStateBelowAnUndercoatIsToldOnce(t *testing.T) {
	b := book(t)
	s := compat.Stack{sound(t, b, "ablative-cuprous-multi", 100), fresh(t, b, "tie-coat", compat.Undercoat, ""), fresh(t, b, "ablative-cuprous-multi", compat.Working, "")}
	s[0].State = "flaking"
	if fs := compat.CheckStack(b, grp, s, 7); !fs.Has("state-off") || fs.Has("stack-buried") {
		t.Errorf("%v", rules(fs))
	}
}

func TestBarrierMinimum(t *testing.T) {
	b := book(t)
	steel := compat.Part{Name: "hull", Material: "steel", Zone: "hull"}
	m, err := b.Material("steel")
	if err != nil {
		t.Fatal(err)
	}
	least := m.Film.Low.In(quantity.Micrometre, 0, quantity.Up).BigInt().Int64()
	for um, want := range map[int64]finding.Verdict{least - 1: finding.Forbidden, least: finding.Fine, least + 1: finding.Fine} {
		top := fresh(t, b, "ablative-cuprous-multi", compat.Working, "")
		primed := sound(t, b, "epoxy-barrier", um)
		primed.For, primed.Age = compat.Undercoat, quantity.Hour.N(8)
		fs := compat.CheckStack(b, steel, compat.Stack{primed, top}, 7)
		if fs.Worst() != want && (want != finding.Fine || fs.Worst() >= finding.Ask) {
			t.Errorf("%d um: %v, want %s", um, rules(fs), want)
		}
		if thin := fs.Has("stack-barrier-thin"); thin != (um < least) {
			t.Errorf("%d um: said to be thin: %v", um, thin)
		}
	}
	// Two layers of epoxy count together; a layer above paint, one that is not sound and one nobody measured do not.
	paint, epoxy := fresh(t, b, "ablative-copper-free", compat.Working, ""), func(um int64) compat.Layer { return sound(t, b, "epoxy-primer", um) }
	worn, unmeasured := epoxy(400), epoxy(400)
	worn.State = "flaking in places"
	unmeasured.Film = quantity.Range[quantity.Film]{}
	for name, c := range map[string]struct {
		s  compat.Stack
		ok bool
	}{
		"two together":   {compat.Stack{epoxy(200), epoxy(150), paint}, true},
		"two too thin":   {compat.Stack{epoxy(200), epoxy(149), paint}, false},
		"one not sound":  {compat.Stack{worn, paint}, false},
		"not measured":   {compat.Stack{unmeasured, paint}, false},
		"above a primer": {compat.Stack{sound(t, b, "one-pack-primer", 40), epoxy(400), paint}, false},
	} {
		if got := compat.CheckStack(b, steel, c.s, 7).Worst() != finding.Forbidden; got != c.ok {
			t.Errorf("%s: allowed %v, want %v: %v", name, got, c.ok, rules(compat.CheckStack(b, steel, c.s, 7)))
		}
	}
}

// A found pair that does not last is a caution as it lies, and bars whatever is new above it.
func TestFoundPair(t *testing.T) {
	b := book(t)
	s := compat.Stack{sound(t, b, "ablative-cuprous-multi", 100), sound(t, b, "hard-cuprous", 100)}
	if f := one(t, compat.CheckStack(b, grp, s, -1), "stack-found-pair"); f.Verdict != finding.Caution {
		t.Errorf("%s", f.Verdict)
	}
	s = append(s, fresh(t, b, "ablative-cuprous-multi", compat.Working, ""))
	if f := one(t, compat.CheckStack(b, grp, s, -1), "stack-found-pair"); f.Verdict != finding.Forbidden {
		t.Errorf("with a new coat above: %s", f.Verdict)
	}
	below := sound(t, b, "ablative-cuprous-multi", 100)
	below.State, below.Age = "flaking", quantity.Hour.N(1)
	if fs := compat.CheckStack(b, grp, compat.Stack{below, sound(t, b, "ablative-cuprous-multi", 100)}, -1); fs.Has("stack-found-pair") {
		t.Errorf("the state of the lower film is no matter of the pair: %v", rules(fs))
	}
}

// Old paint above sound epoxy comes off where it adds up to more than the threshold, 600 µm; the epoxy and what nobody measured count as nothing.
func TestOldPaintThatIsTooThick(t *testing.T) {
	b := book(t)
	limit, err := b.Threshold("film")
	if err != nil || limit.Strip.Typical != 600 {
		t.Fatalf("the threshold is %v, %v; the cases are for 600", limit.Strip, err)
	}
	paint := func(um int64) compat.Layer { return sound(t, b, "ablative-cuprous-multi", um) }
	unmeasured := paint(1)
	unmeasured.Film = quantity.Range[quantity.Film]{}
	for name, c := range map[string]struct {
		found compat.Stack
		off   bool
	}{
		"one on it":         {compat.Stack{paint(600)}, false},
		"one over":          {compat.Stack{paint(601)}, true},
		"two on it":         {compat.Stack{paint(200), paint(400)}, false},
		"two over":          {compat.Stack{paint(201), paint(400)}, true},
		"one not measured":  {compat.Stack{paint(200), unmeasured, paint(400)}, false},
		"none measured":     {compat.Stack{unmeasured}, false},
		"epoxy is no paint": {compat.Stack{sound(t, b, "epoxy-barrier", 400), paint(600)}, false},
	} {
		p := grp
		p.Found = c.found
		r := compat.Routes(b, p, coating(t, b, "ablative-cuprous-multi"))[0]
		if r.Findings.Has("film-too-thick") != c.off || (len(r.Keeps) < len(c.found)) != c.off {
			t.Errorf("%s: %d of %d layers stay, want it off %t: %v", name, len(r.Keeps), len(c.found), c.off, rules(r.Findings))
		}
	}
}

// A coating that is laid as a sheet goes where a zone takes sheets; the finding rests on the zone's row.
func TestSheetsGoWhereAZoneTakesThem(t *testing.T) {
	b := book(t)
	sheet := coating(t, b, "foul-release-film")
	for zone := range b.Zones() {
		p := grp
		p.Zone = zone.Key
		fs := compat.OnMaterial(b, sheet, p)
		if ok := zone.Sheet && zone.Takes(sheet.Mechanism); fs.Has("zone-mechanism") == ok {
			t.Errorf("%s: takes sheets %t: %v", zone.Key, ok, rules(fs))
		} else if !ok {
			if f := one(t, fs, "zone-mechanism"); len(f.Basis) != 1 || f.Basis[0] != zone.Basis("mechanisms") {
				t.Errorf("%s: it rests on %v", zone.Key, f.Basis)
			}
		}
	}
}

// A barrier that the owner wants is asked for where the material can have one and does without; one that needs it anyhow is told so.
func TestABarrierThatIsWanted(t *testing.T) {
	b := book(t)
	hard := coating(t, b, "hard-copper-free")
	for material, want := range map[string]finding.ID{"grp": "barrier-wanted", "aluminium": "barrier-wanted", "steel": "barrier-needed", "wood-carvel": ""} {
		p := compat.Part{Name: "hull", Material: material, Zone: "hull", Found: bare(t, b), Barrier: quantity.Yes}
		fs := compat.On(b, p).OnMaterial(&hard)
		for _, rule := range []finding.ID{"barrier-wanted", "barrier-needed"} {
			if fs.Has(rule) != (rule == want) {
				t.Errorf("%s: %v, want %q", material, rules(fs), want)
			}
		}
	}
}

// A surveyor's cases: what lies under the top layer decides too, so nothing is laid over it before it comes off. Common practice.
func TestNoRouteKeepsAPairThatDoesNotLast(t *testing.T) {
	b := book(t)
	for _, c := range []struct {
		want  string
		found []string
	}{
		{"hard-cuprous", []string{"silicone-old", "tie-coat"}},
		{"ablative-cuprous-multi", []string{"bitumen-old", "sealer"}},
		{"ablative-cuprous-multi", []string{"silicone-old", "hard-old"}},
		{"hard-cuprous", []string{"epoxy-barrier", "ablative-old", "hard-old"}},
		{"hard-cuprous", []string{"epoxy-barrier", "ablative-old", "tie-coat"}},
		{"hard-cuprous", []string{"ablative-old", "one-pack-primer"}},
		{"ablative-cuprous-multi", []string{"silicone-old", "tie-coat", "hard-old"}},
	} {
		var found compat.Stack
		for _, key := range c.found {
			l := sound(t, b, key, 60)
			l.For = compat.Found
			found = append(found, l)
		}
		for _, r := range compat.Routes(b, compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: found}, coating(t, b, c.want)) {
			if len(r.Keeps) > 1 && len(r.Findings.At(finding.Forbidden)) == 0 {
				t.Errorf("%s over %v: a way keeps %d layers: %v", c.want, c.found, len(r.Keeps), actions(r.Steps))
			}
			if len(r.Keeps) == len(found) && len(found) > 0 {
				t.Errorf("%s over %v is kept whole", c.want, c.found)
			}
		}
	}
	// Silicone leaves traces: what is stripped of it is degreased before it is abraded.
	shed := compat.Stack{sound(t, b, "epoxy-barrier", 300), sound(t, b, "silicone-old", 100)}
	if got := actions(compat.Routes(b, compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: shed}, coating(t, b, "hard-cuprous"))[0].Steps); !slices.Equal(got, []string{"strip", "degrease", "wash", "abrade"}) {
		t.Errorf("over stripped silicone: %v", got)
	}
	// An ablative may go over a tie coat on an ablative: the pair below lasts.
	found := compat.Stack{sound(t, b, "ablative-old", 60), sound(t, b, "tie-coat", 40)}
	if r := compat.Routes(b, compat.Part{Name: "hull", Zone: "hull", Material: "grp", Found: found}, coating(t, b, "ablative-cuprous-multi"))[0]; len(r.Keeps) != 2 {
		t.Errorf("ablative over tie coat over ablative strips: %v", actions(r.Steps))
	}
}

func TestEmptyStackAndUnknownMaterial(t *testing.T) {
	b := book(t)
	if fs := compat.CheckStack(b, grp, nil, 7); len(fs) != 1 || !fs.Has("stack-empty") {
		t.Errorf("%v", rules(fs))
	}
	s := compat.Stack{fresh(t, b, "hard-cuprous", compat.Working, "")}
	if fs := compat.CheckStack(b, compat.Part{Material: "unobtainium"}, s, 7); fs.Worst() != finding.Ask {
		t.Errorf("%v", rules(fs))
	}
}

func TestLeg(t *testing.T) {
	b := book(t)
	leg := compat.Part{Name: "drive leg", Zone: "leg", Material: "aluminium"}
	bronze := compat.Part{Name: "shaft", Zone: "shaft", Material: "bronze"}
	f := compat.Beside(b, coating(t, b, "hard-cuprous"), []compat.Part{leg})[0]
	if f.Rule != "beside-strip" || f.Verdict != finding.Needs || len(f.First) == 0 {
		t.Errorf("cuprous oxide beside an aluminium leg: %s %s", f.Rule, f.Verdict)
	}
	if said, want := b.Say(f, quantity.Metric), "25 to 40 mm"; len(said) == 0 || !strings.Contains(said, want) {
		t.Errorf("%q does not say %q", said, want)
	}
	for key, want := range map[string]finding.Verdict{
		"hard-cuprous": finding.Needs, "ablative-old": finding.Needs, "copper-loaded-epoxy": finding.Ask,
		"ablative-thiocyanate": finding.Fine, "ablative-copper-free": finding.Fine, "foul-release-silicone": finding.Fine, "none": finding.Fine,
	} {
		if fs := compat.Beside(b, coating(t, b, key), []compat.Part{bronze, leg}); len(fs) != 2 || fs[0].Verdict != finding.Fine || fs[1].Verdict != want {
			t.Errorf("%s beside bronze and an aluminium leg: %v, want fine and %s", key, rules(fs), want)
		}
	}
	leg.Material = "bronze"
	if fs := compat.Beside(b, coating(t, b, "hard-cuprous"), []compat.Part{leg}); fs.Worst() != finding.Fine {
		t.Errorf("a leg of bronze takes copper: %v", rules(fs))
	}
	if fs := compat.Beside(b, coating(t, b, "hard-cuprous"), nil); len(fs) != 1 || fs.Worst() != finding.Fine {
		t.Errorf("beside nothing: %v", rules(fs))
	}
	if fs := compat.Beside(b, coating(t, b, "hard-cuprous"), []compat.Part{{Name: "x", Zone: "leg", Material: "unobtainium"}}); fs.Worst() != finding.Ask {
		t.Errorf("a neighbour of an unknown material: %v", rules(fs))
	}
}

func TestPatchIsStepped(t *testing.T) {
	b := book(t)
	for _, as := range []struct {
		name                  string
		barrier, hard, eroded compat.Purpose
	}{{"purposes reported", compat.Undercoat, compat.Signal, compat.Working}, {"all as found", compat.Found, compat.Found, compat.Found}} {
		t.Run(as.name, func(t *testing.T) {
			s := compat.Stack{sound(t, b, "epoxy-barrier", 300), sound(t, b, "hard-cuprous", 50), sound(t, b, "ablative-cuprous-multi", 100)}
			s[0].For, s[1].For, s[2].For = as.barrier, as.hard, as.eroded
			ps, fs := compat.Patch(b, s)
			if len(ps) != 3 {
				t.Fatalf("%d layers, want 3", len(ps))
			}
			for i, want := range []bool{false, false, true} {
				if ps[i].Layer.Coating.Key != s[i].Coating.Key || ps[i].MayLap != want {
					t.Errorf("layer %d: %s, may lap %v", i+1, ps[i].Layer.Coating.Key, ps[i].MayLap)
				}
			}
			if f := one(t, fs, "patch-start"); f.Verdict != finding.Needs || f.First[0].Do != finding.Abrade || f.About != ps[0].Layer.Coating.Name {
				t.Errorf("starts with %v of %s", actions(f.First), f.About)
			}
			answered(t, b, fs, "patch")
			for _, p := range ps {
				answered(t, b, finding.List{p.Finding}, "patch layer")
			}
		})
	}
}

func TestPatchOfWhatCannotBePatched(t *testing.T) {
	b := book(t)
	ps, fs := compat.Patch(b, compat.Stack{sound(t, b, "unknown-old", 100), fresh(t, b, "sealer", compat.Undercoat, ""), fresh(t, b, "hard-cuprous", compat.Working, "")})
	if len(ps) != 2 || !fs.Has("patch-old-film") {
		t.Errorf("%d layers, %v", len(ps), rules(fs))
	}
	ps, _ = compat.Patch(b, compat.Stack{fresh(t, b, "silicone-tie-coat", compat.Undercoat, ""), fresh(t, b, "foul-release-silicone", compat.Working, "")})
	if len(ps) != 2 || ps[1].MayLap || ps[1].Finding.Rule != "patch-by-system" {
		t.Errorf("silicone laps: %+v", ps[len(ps)-1].Finding)
	}
	ps, fs = compat.Patch(b, bare(t, b))
	if len(ps) != 0 || !fs.Has("patch-nothing") {
		t.Errorf("nothing on the bottom: %d layers, %v", len(ps), rules(fs))
	}
	// The signal coat does not lap, even where it is the same paint in another colour.
	ps, _ = compat.Patch(b, compat.Stack{fresh(t, b, "ablative-cuprous-multi", compat.Signal, "black"), fresh(t, b, "ablative-cuprous-multi", compat.Working, "red-oxide"), fresh(t, b, "ablative-cuprous-multi", compat.Extra, "red-oxide")})
	if len(ps) != 3 || ps[0].MayLap || !ps[1].MayLap || !ps[2].MayLap {
		t.Errorf("signal, working, extra: %v %v %v", ps[0].MayLap, ps[1].MayLap, ps[2].MayLap)
	}
}

// In the slings the working coat alone goes on; primer, barrier and a silicone wait.
func TestSlings(t *testing.T) {
	b := book(t)
	s := compat.Stack{sound(t, b, "epoxy-barrier", 300), fresh(t, b, "hard-cuprous", compat.Signal, "black"), fresh(t, b, "ablative-cuprous-multi", compat.Working, "red-oxide")}
	s[0].For = compat.Undercoat
	ps, fs := compat.Slings(b, s)
	if len(ps) != 1 || ps[0].Layer.Coating.Key != "ablative-cuprous-multi" || !ps[0].MayLap {
		t.Errorf("in the slings: %v", ps)
	}
	if !fs.Has("slings-bare") || !fs.Has("slings-coat") || len(fs.At(finding.Forbidden)) != 2 {
		t.Errorf("in the slings: %v", rules(fs))
	}
	answered(t, b, fs, "slings")
	for c := range b.Coatings() {
		if !c.Ranked() || c.Role == tables.Bare {
			continue
		}
		ps, fs := compat.Slings(b, compat.Stack{fresh(t, b, c.Key, compat.Working, "")})
		answered(t, b, fs, "slings, "+c.Key)
		if c.Packs == 2 && len(ps) > 0 {
			t.Errorf("two-pack %s goes on in the slings", c.Key)
		}
	}
	if ps, fs := compat.Slings(b, bare(t, b)); len(ps) != 0 || !fs.Has("patch-nothing") {
		t.Errorf("nothing on the bottom: %v, %v", ps, rules(fs))
	}
}

// A layer that stands for the bare surface, at the bottom of the stack, takes nothing from the barrier on it.
func TestBarrierOnABareLayer(t *testing.T) {
	b := book(t)
	hull := compat.Part{Name: "hull", Material: "steel", Zone: "hull"}
	s := compat.Stack{bare(t, b)[0], sound(t, b, "epoxy-barrier", 400), fresh(t, b, "hard-cuprous", compat.Working, "")}
	with, without := compat.CheckStack(b, hull, s, -1), compat.CheckStack(b, hull, s[1:], -1)
	if with.Worst() != without.Worst() || with.Worst() == finding.Forbidden {
		t.Errorf("with the bare layer %v, without %v", with, without)
	}
}

// What lies under an undercoat still decides: a hard film over an ablative is no better for a primer, a sealer or a tie coat between, and a
// pair that nobody has written down stays a question.
func TestNothingIsBuried(t *testing.T) {
	b := book(t)
	for _, under := range []string{"one-pack-primer", "sealer", "tie-coat"} {
		s := compat.Stack{sound(t, b, "ablative-cuprous-multi", 80), fresh(t, b, under, compat.Undercoat, ""), fresh(t, b, "hard-cuprous", compat.Working, "")}
		if fs := compat.CheckStack(b, grp, s, -1); !fs.Has("stack-buried") {
			t.Errorf("hard over %s over ablative: %v", under, fs)
		}
		s[2] = fresh(t, b, "blacking-bitumen", compat.Working, "")
		if fs := compat.CheckStack(b, grp, s, -1); !fs.Has("stack-buried-ask") {
			t.Errorf("blacking over %s over ablative: %v", under, fs)
		}
	}
}

// A primer on a layer that wears away leaves with it: common practice, no source.
func TestNoPrimerOnAWearLayer(t *testing.T) {
	b := book(t)
	for _, wears := range []string{"ablative-cuprous-multi", "self-polishing-cuprous", "hybrid-cuprous", "soft-cuprous", "ablative-old"} {
		for _, primer := range []string{"one-pack-primer", "epoxy-primer", "etch-primer", "flexible-wood-primer"} {
			if fs := compat.Over(b, coating(t, b, primer), sound(t, b, wears, 80)); fs.Worst() != finding.Forbidden {
				t.Errorf("%s over %s is %s", primer, wears, fs.Worst())
			}
		}
	}
}
