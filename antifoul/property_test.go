package antifoul_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"boatyard.example/bottomwork/antifoul"
	"boatyard.example/bottomwork/antifoul/calendar"
	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/compat"
	"boatyard.example/bottomwork/coverage"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// anyBoats is the number of random boats; each is made from its own number, so one can be made again alone.
var anyBoats = flag.Uint64("boats", 2000, "number of random boats")

// pens draws what a boat is made of.
type pens struct {
	*rand.Rand
	coatings, hulls, states, colours, places, forms []string
	b                                               *tables.Book
}

func newPens(b *tables.Book, seed uint64) *pens {
	p := &pens{Rand: rand.New(rand.NewPCG(20270403, seed)), b: b}
	for c := range b.Coatings() {
		if c.Key != "bare" && c.Role != tables.Bare {
			p.coatings = append(p.coatings, c.Key)
		}
	}
	for m := range b.Materials() {
		if m.Painted == tables.Allowed || m.Painted == tables.AskMaker {
			p.hulls = append(p.hulls, m.Key)
		}
	}
	for s := range b.Conditions() {
		p.states = append(p.states, s.Key)
	}
	for c := range b.Colours() {
		p.colours = append(p.colours, c.Key)
	}
	for x := range b.Places() {
		p.places = append(p.places, x.Key)
	}
	for f := range b.HullForms() {
		p.forms = append(p.forms, f.Key)
	}
	return p
}

func (p *pens) one(of ...string) string { return of[p.IntN(len(of))] }

func (p *pens) perhaps() bool { return p.IntN(5) > 0 }

func (p *pens) yesNo() quantity.YesNo { return quantity.YesNo(p.IntN(3)) }

func (p *pens) between(low, high int) int64 { return int64(low + p.IntN(high-low+1)) }

// area draws an area in hundredths of a square metre.
func (p *pens) area(low, high int) quantity.Area {
	return quantity.SquareMetre.Of(decimal.New(p.between(low, high), -2))
}

// found draws nothing reported, a bare surface, or one to three layers.
func (p *pens) found(t *testing.T) compat.Stack {
	t.Helper()
	layer := func(key string) compat.Layer {
		c, err := p.b.Coating(key)
		if err != nil {
			t.Fatal(err)
		}
		return compat.Layer{Coating: c, State: tables.Sound, For: compat.Found}
	}
	var out compat.Stack
	switch n := p.IntN(8); n {
	case 0:
		return nil
	case 1:
		return compat.Stack{layer("bare")}
	default:
		if p.IntN(2) == 0 {
			l := layer("epoxy-barrier")
			l.Film = quantity.Exactly(quantity.Micrometre.N(p.between(100, 500)))
			out = append(out, l)
		}
		for range 1 + n%2 {
			l := layer(p.one(p.coatings...))
			if p.IntN(3) == 0 {
				l.State = tables.Condition(p.one(p.states...))
			}
			if p.perhaps() {
				l.Colour = p.one(p.colours...)
			}
			if p.perhaps() {
				l.Film = quantity.Exactly(quantity.Micrometre.N(p.between(20, 900)))
			}
			if p.IntN(6) == 0 {
				l.Age = quantity.Hour.N(p.between(0, 2000))
			}
			out = append(out, l)
		}
	}
	return out
}

func (p *pens) use() wear.Use {
	var u wear.Use
	if p.perhaps() {
		u.UnderWay = quantity.Hour.N(p.between(0, 3000))
	}
	if p.perhaps() {
		u.Speed = quantity.Knot.N(p.between(0, 45))
	}
	if p.perhaps() {
		u.LongestIdle = quantity.Day.N(p.between(0, 200))
	}
	if p.perhaps() {
		u.HaulOutEvery = quantity.Month.N(p.between(1, 60))
	}
	if p.perhaps() {
		u.AshoreEachYear = quantity.Month.N(p.between(0, 12))
	}
	u.RelaunchedUnpainted = p.yesNo()
	if p.perhaps() {
		u.Growth = tables.Grade(p.between(int(tables.Light), int(tables.Heavy)))
	}
	if p.perhaps() {
		u.Water = p.one(tables.Waters()...)
	}
	if p.perhaps() {
		u.WaterTemperature = quantity.Celsius.N(p.between(-2, 35))
	}
	if p.perhaps() {
		u.Cleaning = tables.Grade(p.between(int(tables.None), int(tables.Heavy)))
		if u.Cleaning > tables.None {
			u.CleanedEvery = quantity.Day.N(p.between(1, 200))
		}
	}
	u.Kept = p.one("", "afloat", "afloat", "afloat", "trailer", "lift")
	u.DriesOn = p.one("", "none", "none", "soft", "firm")
	return u
}

// boat draws a boat without a fault.
func (p *pens) boat(t *testing.T) antifoul.Boat {
	t.Helper()
	day := func(s string) quantity.Date {
		d, err := quantity.ParseDate(s)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	length := p.between(50, 200)
	x := antifoul.Boat{
		Name: "any", On: day("2027-04-03"),
		Hull: coverage.Hull{
			Kind: p.one(p.forms...), Length: quantity.Millimetre.N(length * 100), Beam: quantity.Millimetre.N(length * p.between(20, 45)),
			Draft: quantity.Millimetre.N(length * p.between(5, 25)),
		},
		Use: p.use(),
	}
	if p.perhaps() {
		x.Hull.Mass = quantity.Kilogram.N(p.between(80, 30000))
	}
	if p.perhaps() {
		x.Hull.Support = &coverage.Support{StandPairs: p.IntN(6), KeelBlocks: p.IntN(6), Chains: p.IntN(6)}
	}
	x.Parts = []compat.Part{{Name: "hull", Zone: antifoul.HullZone, Material: p.one(p.hulls...), Found: p.found(t)}}
	if p.IntN(3) == 0 {
		x.Parts[0].Material = "aluminium"
	}
	for _, other := range []compat.Part{
		{Name: "rudder", Zone: "rudder", Material: p.one(p.hulls...), Area: p.area(10, 60)},
		{Name: "leg", Zone: "leg", Material: "aluminium", Area: p.area(10, 90)},
		{Name: "propeller", Zone: "propeller", Material: "bronze", Area: p.area(5, 40)},
		{Name: "anode", Zone: "fitting", Material: "zinc-anode"},
	} {
		if p.IntN(3) == 0 {
			other.Found = p.found(t)
			x.Parts = append(x.Parts, other)
		}
	}
	for range p.IntN(3) {
		x.Berths = append(x.Berths, law.Berth{Place: p.one(append(p.places, "Atlantis")...), Role: p.one(tables.BerthRoles()...), Water: p.one(append(tables.Waters(), "")...)})
	}
	x.Work = calendar.Days{Hands: p.IntN(4), LaunchOpen: p.yesNo()}
	if p.perhaps() {
		x.Work.Launch = x.On.AddDays(p.IntN(400))
	}
	if p.perhaps() {
		x.Paint.By = "roller"
		x.Paint.Reserve = quantity.Percent.N(p.between(0, 40))
		x.Paint.Thinner = quantity.Percent.N(p.between(0, 15))
	}
	x.Wishes = antifoul.Wishes{Biocide: p.one("", "", antifoul.WishLess, antifoul.WishNone), Racing: p.yesNo()}
	if p.IntN(3) == 0 {
		x.Wishes.RepaintAfter = quantity.Month.N(p.between(1, 60))
	}
	if p.IntN(3) == 0 {
		x.Wishes.TopColour = p.one(p.colours...)
	}
	if p.IntN(3) == 0 {
		x.Wishes.Coating = p.one("hard-cuprous", "ablative-copper-free", "foul-release-silicone", "copper-loaded-epoxy", "none", "blacking-bitumen")
	}
	if p.IntN(4) == 0 {
		x.Wishes.SignalType = p.one("hard-cuprous", "hard-copper-free", "ablative-cuprous-multi", "foul-release-silicone")
	}
	return x
}

// sparse asks a heavy question of an eighth of the boats under the race detector.
func sparse(every uint64) uint64 {
	if underRace {
		return 8 * max(every, 10)
	}
	return every
}

// few reports whether a tenth of the boats will do: a run with -short, or one with the race detector, for which .ci/run makes up by another without it.
func few() bool { return testing.Short() || underRace }

// eachBoat runs the check on every random boat; a panic or an error names the boat's number.
func eachBoat(t *testing.T, every uint64, check func(t *testing.T, n uint64, x antifoul.Boat)) {
	t.Helper()
	t.Parallel()
	var n uint64
	defer func() {
		if r := recover(); r != nil {
			t.Fatalf("boat %d: panic: %v", n, r)
		}
	}()
	b := tables.Default()
	if few() {
		every = max(every, 10) // what is rare is counted, so samples that are small already stay as they are
	}
	for n = 0; n < *anyBoats && !t.Failed(); n += every {
		x := newPens(b, n).boat(t)
		check(t, n, x)
		if t.Failed() {
			t.Logf("boat %d: hull %+v\nuse %+v\nberths %+v\nwork %+v\nwishes %+v", n, x.Hull, x.Use, x.Berths, x.Work, x.Wishes)
			for _, p := range x.Parts {
				t.Logf("part %s, %s, %s", p.Name, p.Zone, p.Material)
				for _, l := range p.Found {
					t.Logf("  %s, %s, %s, %v, age %v", l.Coating.Key, l.Colour, l.State, l.Film, l.Age)
				}
			}
		}
	}
}

// rankedWell holds that every type has one place on every part that is painted, that nothing barred is best, that places stand
// in order, and that equal ones share a rank.
func rankedWell(t *testing.T, n uint64, ranked int, r antifoul.Ranking, parts []compat.Part) {
	t.Helper()
	if len(r.Parts) != len(parts) {
		t.Errorf("boat %d: %d parts ranked of %d", n, len(r.Parts), len(parts))
	}
	for _, pr := range r.Parts {
		if pr.Part == "anode" {
			if len(pr.Places) != 0 || len(pr.Left) == 0 {
				t.Errorf("boat %d: an anode is ranked, or nothing says why not", n)
			}
			continue
		}
		seen := map[string]bool{}
		for i, p := range pr.Places {
			if seen[p.Key] || !p.Coating().Ranked() {
				t.Errorf("boat %d, %s: %s stands there twice, or is no type to end with", n, pr.Part, p.Key)
			}
			seen[p.Key] = true
			if p.Tier < antifoul.Suits || p.Tier > antifoul.Barred || p.Score < 0 || p.Score > 100 || len(p.Law()) == 0 || len(p.Findings()) == 0 {
				t.Errorf("boat %d, %s: %s: tier %v, score %v, %d findings, %d of law", n, pr.Part, p.Key, p.Tier, p.Score, len(p.Findings()), len(p.Law()))
			}
			if (p.Tier == antifoul.Barred) != (p.Findings().Worst() == finding.Forbidden || p.Law().Worst() == finding.Forbidden) {
				t.Errorf("boat %d, %s: %s is %v against its findings", n, pr.Part, p.Key, p.Tier)
			}
			if p.Tier >= antifoul.Unsuited && len(p.Reasons()) == 0 {
				t.Errorf("boat %d, %s: %s is ruled out without a reason", n, pr.Part, p.Key)
			}
			if i == 0 {
				continue
			}
			q := pr.Places[i-1]
			if p.Tier < q.Tier || p.Tier == q.Tier && p.Score > q.Score {
				t.Errorf("boat %d, %s: %s stands behind %s", n, pr.Part, p.Key, q.Key)
			}
			if tie := p.Tier == q.Tier && p.Score == q.Score; tie != (p.Rank == q.Rank) || tie && (!p.Tied || !q.Tied) || !tie && p.Rank != i+1 {
				t.Errorf("boat %d, %s: ranks %d and %d of %s and %s", n, pr.Part, q.Rank, p.Rank, q.Key, p.Key)
			}
		}
		if len(seen) != ranked {
			t.Errorf("boat %d, %s: %d types ranked of %d", n, pr.Part, len(seen), ranked)
		}
		if best, ok := pr.Best(); ok && best.Tier > antifoul.AskFirst {
			t.Errorf("boat %d, %s: the best is %v", n, pr.Part, best.Tier)
		}
	}
}

// Every boat gets an answer, and of every scheme: what metal never bears is not on it, areas and litres add up, films rise.
func TestAnyBoatIsPlanned(t *testing.T) {
	b := tables.Default()
	ranked := 0
	for c := range b.Coatings() {
		if c.Ranked() {
			ranked++
		}
	}
	eachBoat(t, sparse(1), func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		j, err := antifoul.Plan(b, x)
		if err != nil {
			t.Fatalf("boat %d: %v", n, err)
		}
		rankedWell(t, n, ranked, j.Ranking, x.Parts)
		areasAddUp(t, n, j)
		for _, s := range j.Schemes {
			part := x.Parts[slices.IndexFunc(x.Parts, func(p compat.Part) bool { return p.Name == s.Part })]
			noCopperOnMetal(t, n, part, s.Stack)
			if s.Refused() {
				t.Errorf("boat %d, %s: the plan's own scheme is refused", n, s.Part)
			}
			if n%16 == 0 && (part.Material == "aluminium" || part.Material == "galvanised-steel") {
				everyTypeOnMetal(t, b, n, x, part)
			}
			for _, l := range s.Stack {
				if f := l.Film; f.Low.Given() && (f.Low.Cmp(f.Typical) > 0 || f.Typical.Cmp(f.High) > 0) {
					t.Errorf("boat %d, %s: film of %s is %v", n, s.Part, l.Coating.Key, f)
				}
			}
			if l := s.Lasts.Life; l.Low > l.Typical || l.Typical > l.High {
				t.Errorf("boat %d, %s: lasts %v", n, s.Part, l)
			}
			for _, k := range s.Coats {
				paintCovers(t, n, k)
			}
		}
		for _, g := range j.Buy {
			if g.Total.Cmp(g.Need) < 0 || g.Need.Cmp(g.Range.Typical) < 0 {
				t.Errorf("boat %d: %s: %v bought, %v needed, %v typical", n, g.Coating.Key, g.Total, g.Need, g.Range.Typical)
			}
		}
		if n%8 == 0 {
			again, err := antifoul.Plan(b, newPens(b, n).boat(t))
			if err != nil || digest(again) != digest(j) {
				t.Errorf("boat %d: another answer the second time (%v)", n, err)
			}
		}
	})
}

// noCopperOnMetal holds what protects aluminium and galvanised steel: no cuprous oxide, no metallic copper and nothing unknown
// is left on it or goes on it; no metallic copper on steel and iron.
func noCopperOnMetal(t *testing.T, n uint64, part compat.Part, s compat.Stack) {
	t.Helper()
	never := map[string][]tables.Biocide{
		"aluminium":        {tables.CuprousOxide, tables.MetallicCopper, tables.UnknownBiocide, tables.Organotin},
		"galvanised-steel": {tables.CuprousOxide, tables.MetallicCopper, tables.UnknownBiocide, tables.Organotin},
		"steel":            {tables.MetallicCopper},
		"cast-iron":        {tables.MetallicCopper},
	}[part.Material]
	for _, l := range s {
		if slices.Contains(never, l.Coating.Biocide) {
			t.Errorf("boat %d, %s of %s: %s (%s) is in the stack, for %q", n, part.Name, part.Material, l.Coating.Key, l.Coating.Biocide, l.For)
		}
	}
}

// everyTypeOnMetal asks for a scheme of every type on a part of aluminium or galvanised steel: whatever an owner wishes for, none is laid that
// brings copper oxide or metallic copper, or leaves it, or leaves what nobody knows.
func everyTypeOnMetal(t *testing.T, b *tables.Book, n uint64, x antifoul.Boat, part compat.Part) {
	t.Helper()
	for c := range b.Ranked() {
		if c.Role == tables.Bare {
			continue // nothing goes over what is left
		}
		s, err := antifoul.Specify(b, x, part.Name, c)
		if err != nil {
			t.Errorf("boat %d, %s: %s: %v", n, part.Name, c.Key, err)
			continue
		}
		noCopperOnMetal(t, n, part, s.Stack)
		for _, r := range compat.Routes(b, part, c) {
			if len(r.Findings.At(finding.Forbidden)) == 0 {
				noCopperOnMetal(t, n, part, append(slices.Clone(r.Keeps), r.Adds...))
			}
		}
	}
}

// areasAddUp holds that the zones of a part make its total, and that all that lies in the hull's area makes the hull's.
func areasAddUp(t *testing.T, n uint64, j *antifoul.Job) {
	t.Helper()
	sum := func(a, b quantity.Area) quantity.Area {
		if !a.Given() {
			return b
		}
		return a.Add(b)
	}
	var inHull quantity.Area
	for _, a := range j.Areas {
		var total quantity.Area
		for _, z := range a.Zones {
			if z.Area.Low.Cmp(z.Area.Typical) > 0 || z.Area.Typical.Cmp(z.Area.High) > 0 || z.Area.Low.Sign() <= 0 {
				t.Errorf("boat %d, %s: zone %s is %v", n, a.Part, z.Zone, z.Area)
			}
			total = sum(total, z.Area.Typical)
			if row, err := j.Book.Zone(z.Zone); err == nil && row.InHull {
				inHull = sum(inHull, z.Area.Typical)
			}
		}
		if len(a.Zones) > 0 && !total.Equal(a.Total.Typical) {
			t.Errorf("boat %d, %s: zones make %v, the total is %v", n, a.Part, total, a.Total.Typical)
		}
	}
	if len(j.Wetted.Zones) == 0 || !inHull.Given() {
		return
	}
	if !inHull.Equal(j.Wetted.Total.Typical) {
		t.Errorf("boat %d: the parts make %v of the hull's %v", n, inHull, j.Wetted.Total.Typical)
	}
}

// paintCovers holds that the litres of a coat are at least what stays on the area: litres × solids ≥ area × film × coats.
func paintCovers(t *testing.T, n uint64, k antifoul.Coat) {
	t.Helper()
	if k.Litres.Low.Cmp(k.Litres.Typical) > 0 || k.Litres.Typical.Cmp(k.Litres.High) > 0 {
		t.Errorf("boat %d: litres of %s are %v", n, k.Layer.Coating.Key, k.Litres)
	}
	solids := k.Litres.Typical.Float(quantity.Litre) * k.Layer.Coating.Solids.Typical.Float(quantity.Percent) / 100
	dry := k.Area.Typical.Float(quantity.SquareMetre) * k.Film.Typical.Float(quantity.Micrometre) / 1000 * float64(k.Layer.Coats)
	if k.Layer.Coats < 1 || dry <= 0 || solids < dry {
		t.Errorf("boat %d: %s: %.3f l of dry paint for %.3f l of film, %d coats", n, k.Layer.Coating.Key, solids, dry, k.Layer.Coats)
	}
}

// step is the least change of a score that a rounding of one decimal does not make.
const step = 0.11

// rising ranks the boat once for each change, and gives each pair of neighbours to the check.
func rising(t *testing.T, n uint64, x antifoul.Boat, changes []func(*antifoul.Boat), check func(i int, before, after antifoul.PartRanking)) {
	t.Helper()
	var before antifoul.PartRanking
	for i, change := range changes {
		change(&x)
		r, err := antifoul.Rank(tables.Default(), x)
		if err != nil {
			t.Fatalf("boat %d: %v", n, err)
		}
		if i > 0 {
			check(i, before, r.Hull())
		}
		before = r.Hull()
	}
}

// without is the place's score without what one criterion added.
func without(p antifoul.Place, criterion string) float64 {
	for _, k := range p.Criteria() {
		if k.Key == criterion {
			return p.Score - k.Points
		}
	}
	return p.Score
}

// A longer lie without moving never lifts a type that has a limit against one that has none.
func TestLongerIdleNeverHelps(t *testing.T) {
	var changes []func(*antifoul.Boat)
	for _, d := range []int64{0, 14, 21, 28, 45, 120, 365} {
		changes = append(changes, func(x *antifoul.Boat) { x.Use.LongestIdle = quantity.Day.N(d) })
	}
	eachBoat(t, 16, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		rising(t, n, x, changes, func(i int, before, after antifoul.PartRanking) {
			free, _ := before.Of("ablative-cuprous-multi")
			freeNow, _ := after.Of("ablative-cuprous-multi")
			if free.Coating().IdleMax.Given() || free.Tier != freeNow.Tier {
				t.Errorf("boat %d, step %d: a type without a limit goes from %v to %v", n, i, free.Tier, freeNow.Tier)
			}
			for _, p := range before.Places {
				now, _ := after.Of(p.Key)
				if !p.Coating().IdleMax.Given() {
					continue
				}
				if now.Tier < p.Tier || (now.Score-freeNow.Score)-(p.Score-free.Score) > 2*step {
					t.Errorf("boat %d, step %d: %s rises from %v %.1f to %v %.1f", n, i, p.Key, p.Tier, p.Score, now.Tier, now.Score)
				}
			}
		})
	})
}

// More months ashore before she goes back unpainted never help a hard film, and from one month on the use speaks against it. A
// film ashore uses up no active life, so the criterion "lasting" may rise with the months; the score is taken without it.
func TestMoreMonthsAshoreNeverHelpHard(t *testing.T) {
	var changes []func(*antifoul.Boat)
	for _, m := range []int64{0, 1, 2, 3, 5, 7, 9, 11} {
		changes = append(changes, func(x *antifoul.Boat) {
			x.Use.AshoreEachYear, x.Use.RelaunchedUnpainted = quantity.Month.N(m), quantity.Yes
		})
	}
	eachBoat(t, 16, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		rising(t, n, x, changes, func(i int, before, after antifoul.PartRanking) {
			for _, p := range before.Places {
				now, _ := after.Of(p.Key)
				if p.Coating().Mechanism != tables.Hard {
					continue
				}
				if now.Tier < p.Tier || now.Tier < antifoul.Unsuited || without(now, "lasting") > without(p, "lasting")+step {
					t.Errorf("boat %d, step %d: %s goes from %v %.1f to %v %.1f", n, i, p.Key, p.Tier, p.Score, now.Tier, now.Score)
				}
			}
		})
	})
}

// Harder cleaning never helps a film that stands a sponge at most and needs no cleaning.
func TestHarderCleaningNeverHelpsSoftFilms(t *testing.T) {
	var changes []func(*antifoul.Boat)
	for g := tables.None; g <= tables.Heavy; g++ {
		changes = append(changes, func(x *antifoul.Boat) {
			x.Use.Cleaning, x.Use.CleanedEvery = g, quantity.Duration{}
			if g > tables.None {
				x.Use.CleanedEvery = quantity.Day.N(14)
			}
		})
	}
	eachBoat(t, 16, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		rising(t, n, x, changes, func(i int, before, after antifoul.PartRanking) {
			for _, p := range before.Places {
				now, _ := after.Of(p.Key)
				if p.Coating().Scrub <= tables.Light && !p.Coating().CleanEvery.Given() && (now.Tier < p.Tier || now.Score > p.Score+step) {
					t.Errorf("boat %d, step %d: %s rises from %v %.1f to %v %.1f", n, i, p.Key, p.Tier, p.Score, now.Tier, now.Score)
				}
			}
		})
	})
}

// Less growth never speaks for more copper: copper-free less cuprous oxide, of one mechanism, never falls.
func TestLessGrowthNeverFavoursCopper(t *testing.T) {
	var changes []func(*antifoul.Boat)
	for g := tables.Heavy; g >= tables.Light; g-- {
		changes = append(changes, func(x *antifoul.Boat) { x.Use.Growth = g })
	}
	pairs := [][2]string{
		{"hard-copper-free", "hard-cuprous"},
		{"ablative-copper-free", "ablative-cuprous-multi"},
		{"self-polishing-copper-free", "self-polishing-cuprous"},
		{"hybrid-copper-free", "hybrid-cuprous"},
	}
	eachBoat(t, 16, func(t *testing.T, n uint64, x antifoul.Boat) {
		t.Helper()
		rising(t, n, x, changes, func(i int, before, after antifoul.PartRanking) {
			for _, k := range pairs {
				apart := func(pr antifoul.PartRanking) float64 {
					free, okFree := pr.Of(k[0])
					copper, okCopper := pr.Of(k[1])
					if !okFree || !okCopper {
						t.Fatalf("no %v", k)
					}
					return free.Score - copper.Score
				}
				if apart(after) < apart(before)-2*step {
					t.Errorf("boat %d, step %d: %s less %s falls from %.1f to %.1f", n, i, k[0], k[1], apart(before), apart(after))
				}
			}
		})
	})
}

// The random boats are of many kinds: else the properties above would hold of nothing.
func TestAnyBoatsAreOfManyKinds(t *testing.T) {
	b := tables.Default()
	kinds := map[string]int{}
	for n := range uint64(300) {
		x := newPens(b, n).boat(t)
		if err := x.Check(b).Err(); err != nil {
			t.Fatalf("boat %d: %v", n, err)
		}
		kinds["material "+x.Parts[0].Material]++
		kinds[fmt.Sprint("found ", min(2, len(x.Parts[0].Found)))]++
		kinds[fmt.Sprint("parts ", min(3, len(x.Parts)))]++
		kinds["kept "+x.Use.Kept]++
		if x.Parts[0].Material == "aluminium" && slices.ContainsFunc(x.Parts[0].Found, func(l compat.Layer) bool { return l.Coating.Copper() }) {
			kinds["copper found on aluminium"]++
		}
		kinds["growth "+x.Use.Growth.String()]++
		r, err := antifoul.Rank(b, x)
		if err != nil {
			t.Fatalf("boat %d: %v", n, err)
		}
		for _, p := range r.Hull().Places {
			kinds["tier "+p.Tier.String()]++
		}
	}
	for _, k := range []string{
		"material aluminium", "copper found on aluminium", "material steel", "material grp", "found 0", "found 1", "found 2", "parts 1", "parts 2", "parts 3", "kept afloat", "kept trailer",
		"growth light", "growth heavy", "tier fine", "tier after work", "tier ask first", "tier unsuited", "tier forbidden",
	} {
		if kinds[k] < 3 {
			t.Errorf("%d of %q in 300 boats", kinds[k], k)
		}
	}
}
