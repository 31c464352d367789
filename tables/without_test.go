package tables_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// What a row does not name holds for everything; what it names, for that alone.
func TestRowsThatNameNothingHoldForAll(t *testing.T) {
	b := book(t)
	var some, all struct{ coating, anode, zone, observation, season, supply bool }
	note := func(names bool, some, all *bool, other bool, what string) {
		if names {
			*some = true
			if other {
				t.Errorf("%s holds for what it does not name", what)
			}
			return
		}
		*all = true
		if !other {
			t.Errorf("%s names nothing and does not hold for all", what)
		}
	}
	for c := range b.Coatings() {
		named := false
		for m := range b.Materials() {
			named = named || !c.MadeFor(m.Key)
		}
		note(named, &some.coating, &all.coating, c.MadeFor("no such material"), c.Key)
	}
	for m := range b.Materials() {
		if m.Anode {
			note(!m.Suits("brackish") || !m.Suits("fresh") || !m.Suits("salt"), &some.anode, &all.anode, m.Suits("no such water"), m.Key)
			if !m.Suits("") {
				t.Errorf("%s does not suit a water that nobody gave", m.Key)
			}
		}
		if m.Choosy() == m.Prefers("no such class") {
			t.Errorf("%s: choosy %t", m.Key, m.Choosy())
		}
	}
	for z := range b.Zones() {
		note(!z.Takes(tables.Hard) || !z.Takes(tables.FoulRelease) || !z.Takes(tables.Ablative), &some.zone, &all.zone, z.Takes("no such mechanism"), z.Key)
	}
	for o := range b.Observations() {
		named := false
		for range o.On() {
			named = true
		}
		note(named, &some.observation, &all.observation, o.SeenOn("no such material"), o.Key)
	}
	for x := range b.Seasons() {
		named := false
		for _, m := range []tables.Mechanism{tables.Hard, tables.Ablative, tables.SelfPolishing, tables.FoulRelease, tables.ThinFilm} {
			named = named || !x.For(m)
		}
		note(named, &some.season, &all.season, x.For("no such mechanism"), x.Key)
	}
	for x := range b.Supplies() {
		note(!x.With("roller") || !x.With("airless-open"), &some.supply, &all.supply, x.With("no such way"), x.Key)
	}
	if !some.coating || !all.coating || !some.anode || !some.zone || !all.zone || !some.observation || !all.observation || !some.season || !all.season || !some.supply || !all.supply {
		t.Errorf("the tables hold no row of each kind: some %+v, all %+v", some, all)
	}
	for x, want := range map[float64]bool{1: true, 2: true, 0.99: false, 2.01: false} {
		if got := (tables.Span{Low: 1, High: 2}).Holds(x); got != want {
			t.Errorf("1 to 2 holds %g: %t", x, got)
		}
	}
	if none := (tables.Span{}); none.Given() || !none.Holds(1e9) {
		t.Error("a span that is not given does not hold everything")
	}
}

// A row that names one thing holds for that one alone.
func TestRowsThatNameOneHoldForThatOne(t *testing.T) {
	const head = "key = \"x\"\nbasis = \"derived\"\n"
	b := with(t, "[[season]]\n"+head+"says = \"Look.\"\nmechanisms = [\"hard\"]\n"+
		"[[zone]]\n"+head+"wear = 1\nmechanisms = [\"hard\"]\n"+
		"[[supply]]\n"+head+"unit = \"kg\"\nper = \"coat\"\nrate = 1\nby = [\"roller\"]\ncarrier = [\"water\"]\npacks = 2\n"+
		"[[area_method]]\n"+head+"order = 0\nfor = [\"open-boat\"]\n"+
		"[[drying]]\n"+head+"packs = 1\ncarriers = [\"water\"]\nenergy = 50\nfrom = \"5 degC\"\nto = \"30 degC\"\n"+
		"[[observation]]\n"+head+"what = \"spots\"\nwhy = \"They grow.\"\nurgency = \"no work\"\non = [\"steel\"]\n")
	season, err := b.Season("x")
	if err != nil || !season.For(tables.Hard) || season.For(tables.Soft) {
		t.Errorf("the season's work is for hard %t, for soft %t, %v", season.For(tables.Hard), season.For(tables.Soft), err)
	}
	zone, err := b.Zone("x")
	if err != nil || !zone.Takes(tables.Hard) || zone.Takes(tables.Soft) {
		t.Errorf("the zone takes hard %t, soft %t, %v", zone.Takes(tables.Hard), zone.Takes(tables.Soft), err)
	}
	supply, err := b.Supply("x")
	if err != nil || !supply.With("roller") || supply.With("brush") {
		t.Errorf("the supply is used with a roller %t, with a brush %t, %v", supply.With("roller"), supply.With("brush"), err)
	}
	for c, want := range map[*tables.Coating]bool{{Packs: 2, Carrier: "water"}: true, {Packs: 1, Carrier: "water"}: false, {Packs: 2, Carrier: "solvent"}: false} {
		if got := supply.Counts(*c); got != want {
			t.Errorf("a coat of %d packs in %s counts for the supply: %t", c.Packs, c.Carrier, got)
		}
	}
	method, err := b.AreaMethod("x")
	if err != nil || !method.For("open-boat") || method.For("fin-keel-yacht") {
		t.Errorf("the method is for one form %t, for the other %t, %v", method.For("open-boat"), method.For("fin-keel-yacht"), err)
	}
	for d := range b.Dryings() {
		if d.Key == "x" && (!d.For(1, "water") || d.For(1, "solvent") || d.For(2, "water")) {
			t.Errorf("drying of one-pack water-borne paint is for that %t, for solvent %t, for two-pack %t", d.For(1, "water"), d.For(1, "solvent"), d.For(2, "water"))
		}
	}
	seen, err := b.Observation("x")
	if err != nil || !seen.SeenOn("steel") || seen.SeenOn("grp") {
		t.Errorf("seen on steel %t, on GRP %t, %v", seen.SeenOn("steel"), seen.SeenOn("grp"), err)
	}
}

// A question to which a book has no row is answered with false, and never with another row.
func TestNoRowForIt(t *testing.T) {
	b := book(t)
	small, err := tables.Load(folder(nil))
	if err != nil {
		t.Fatal(err)
	}
	hard, err := small.Coating("hard")
	if err != nil {
		t.Fatal(err)
	}
	if row, ok := small.DryingOf(hard); ok || row.Key != "" {
		t.Errorf("drying by %q", row.Key)
	}
	soft := hard
	soft.Key, soft.Mechanism = "soft", tables.Soft
	if row, ok := small.OvercoatOf(&soft, &soft, false); ok || row.Key != "" {
		t.Errorf("soft over soft by %q", row.Key)
	}
	if row, ok := small.OvercoatOf(&hard, &hard, false); !ok || row.Key != "hard-on-hard" {
		t.Errorf("hard over hard by %q: this shows nothing", row.Key)
	}
	if h, ok := small.Hours("strip"); ok || h != (quantity.Range[float64]{}) {
		t.Errorf("strip takes %v", h)
	}
	if h, ok := small.Hours("wash"); !ok || h.Typical != 0.1 {
		t.Errorf("wash takes %v", h)
	}
	if p, ok := b.Price(tables.PricedLabour, "", ""); ok || p.Money.Typical.Given() {
		t.Errorf("the embedded tables price labour at %v", p.Money)
	}
	if b.Currency() != "" || small.Currency() != "EUR" {
		t.Errorf("currencies %q and %q", b.Currency(), small.Currency())
	}
	for _, c := range [][3]string{{"GB", "GB", "yes"}, {"GB", "world", "yes"}, {"world", "GB", ""}, {"Atlantis", "Atlantis", "yes"}, {"Atlantis", "world", ""}, {"GB", "Atlantis", ""}, {"GB", "DK", ""}, {"GB", "", ""}, {"Atlantis", "", ""}} {
		if got := b.LiesIn(c[0], c[1]); got != (c[2] == "yes") {
			t.Errorf("%s lies in %s: %t", c[0], c[1], got)
		}
	}
}

// Of the prices that a book has for a thing the one answers that names it, then the one that names who is paid.
func TestTheNearestPriceAnswers(t *testing.T) {
	price := func(key, what, by, money string) string {
		text := "[[price]]\nkey = \"" + key + "\"\nbasis = \"invented\"\nof = \"paint\"\nper = \"L\"\nprice = \"" + money + " EUR\"\n"
		if what != "" {
			text += "what = \"" + what + "\"\n"
		}
		if by != "" {
			text += "by = \"" + by + "\"\n"
		}
		return text
	}
	b := with(t, price("any", "", "", "10")+price("yards", "", "yard", "20")+price("hard", "hard-cuprous", "", "30")+price("hard-yards", "hard-cuprous", "yard", "40"))
	for _, c := range [][3]string{{"ablative-old", "owner", "any"}, {"ablative-old", "yard", "yards"}, {"hard-cuprous", "owner", "hard"}, {"hard-cuprous", "yard", "hard-yards"}} {
		if p, ok := b.Price(tables.PricedPaint, c[0], c[1]); !ok || p.Key != c[2] {
			t.Errorf("%s for the %s: %s, want %s", c[0], c[1], p.Key, c[2])
		}
	}
	if p, ok := b.Price(tables.PricedThinner, "", "yard"); ok {
		t.Errorf("thinner by %s", p.Key)
	}
}

// Own actives may not move a coating to another biocide class: what metals and laws forbid hangs on it.
func TestOwnActivesKeepTheClass(t *testing.T) {
	own := func(active string) error {
		_, err := book(t).With(ownFile("[[coating]]\nkey = \"hard-cuprous\"\nbasis = \"own table\"\nsource = \"data sheet\"\n[[coating.active]]\nkey = \"" + active + "\"\ncontent = [\"29 %\", \"30 %\", \"31 %\"]\n"))
		return err
	}
	if err := own("cuprous-oxide"); err != nil {
		t.Errorf("the same class: %v", err)
	}
	fs := faultsOf(t, own("copper-thiocyanate"))
	if len(fs) != 1 || !errors.Is(fs[0], finding.ErrSafety) || fs[0].Key != "coating[hard-cuprous].active" || fs[0].File != "own.toml" || !strings.Contains(fs[0].Want, "under a key of its own") {
		t.Errorf("another class: %v", fs)
	}
}

// Rows of published and remembered numbers that contradict themselves are refused.
func TestRowsThatContradictThemselves(t *testing.T) {
	const head = "key = \"x\"\nbasis = \"from memory\"\n"
	for name, c := range map[string]struct {
		text, key string
		kind      error
	}{
		"active nobler than noble":       {"[[potential]]\n" + head + "series = \"s\"\nnoble = \"-300 mV\"\nactive = \"-200 mV\"\nelectrode = \"silver-silver-chloride-seawater\"\n", "potential[x].active", finding.ErrImpossible},
		"a protection without a number":  {"[[protection]]\n" + head + "material = \"steel\"\nelectrode = \"silver-silver-chloride-seawater\"\n", "protection[x].at_or_below", finding.ErrMissing},
		"a floor that is no lower":       {"[[protection]]\n" + head + "material = \"steel\"\nelectrode = \"silver-silver-chloride-seawater\"\nat_or_below = \"-800 mV\"\nnot_below = \"-800 mV\"\n", "protection[x].not_below", finding.ErrImpossible},
		"waste of two-pack paint":        {"[[supply]]\n" + head + "unit = \"kg\"\nper = \"kilogram of waste\"\nrate = 1\npacks = 2\n", "supply[x].per", finding.ErrImpossible},
		"days of water-borne paint":      {"[[supply]]\n" + head + "unit = \"pair\"\nper = \"hand and day\"\nrate = 1\ncarrier = [\"water\"]\n", "supply[x].per", finding.ErrImpossible},
		"cut out and counted":            {"[[piece]]\n" + head + "shape = \"plate\"\nfactor = 1\nzone = \"keel\"\noff = true\ncounted = true\n", "piece[x].off", finding.ErrImpossible},
		"drying by energy and by points": {"[[drying]]\n" + head + "packs = 1\nenergy = 50\nfrom = \"5 degC\"\nto = \"30 degC\"\n[[drying.point]]\nat = \"10 degC\"\ntimes = 2\n", "drying[x].energy", finding.ErrMissing},
		"a span that does not rise":      {"[[drying]]\n" + head + "packs = 1\nenergy = 50\nfrom = \"30 degC\"\nto = \"30 degC\"\n", "drying[x].to", finding.ErrImpossible},
		"an energy without the cold end": {"[[drying]]\n" + head + "packs = 1\nenergy = 50\nto = \"30 degC\"\n", "drying[x].from", finding.ErrMissing},
		"an energy without the hot end":  {"[[drying]]\n" + head + "packs = 1\nenergy = 50\nfrom = \"5 degC\"\n", "drying[x].to", finding.ErrMissing},
		"a point of no temperature":      {"[[drying]]\n" + head + "packs = 1\n[[drying.point]]\ntimes = 2\n", "drying[x].point[1].at", finding.ErrMissing},
		"a point of no time":             {"[[drying]]\n" + head + "packs = 1\n[[drying.point]]\nat = \"10 degC\"\n", "drying[x].point[1].times", finding.ErrMissing},
		"a point of something else":      {"[[drying]]\n" + head + "packs = 1\n[[drying.point]]\nat = \"10 degC\"\ntimes = 2\ntime = 2\n", "drying[x].point[1].time", finding.ErrUnknownKey},
		"the hot point before the cold":  {"[[drying]]\n" + head + "packs = 1\n[[drying.point]]\nat = \"10 degC\"\ntimes = 2\n[[drying.point]]\nat = \"9 degC\"\ntimes = 2.5\n", "drying[x].point[2].at", finding.ErrImpossible},
		"a sampling of no area":          {"[[sampling]]\n" + head + "standard = \"s\"\nover = \"10 m2\"\nup_to = \"10 m2\"\nreadings = 5\n", "sampling[x].up_to", finding.ErrImpossible},
		"drying by neither":              {"[[drying]]\n" + head + "packs = 1\n", "drying[x].energy", finding.ErrMissing},
	} {
		_, err := book(t).With(ownFile(c.text))
		told := false
		for _, f := range faultsOf(t, err) {
			told = told || f.Key == c.key && errors.Is(f, c.kind)
		}
		if !told {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Two ends that may be alike, and one end alone, contradict nothing.
func TestEndsThatMayBeAlikeOrAlone(t *testing.T) {
	var text strings.Builder
	for i, row := range []string{
		"[[coating]]\ntouch_dry = \"4 h\"\nrain_safe = \"4 h\"\n",
		"[[coating]]\ntouch_dry = \"4 h\"\novercoat_min = \"4 h\"\nlaunch_min = \"4 h\"\nair_scuff = \"4 h\"\napply_min = \"5 degC\"\nspeed_min = \"1 kn\"\n",
		"[[coating]]\nrain_safe = \"4 h\"\novercoat_max = \"4 h\"\nair_new = \"4 h\"\nair_used = \"4 h\"\napply_max = \"-5 degC\"\nspeed_max = \"1 kn\"\n",
		"[[coating]]\ncoats = 2\nmost_coats = 2\n",
		"[[potential]]\nnoble = \"-200 mV\"\n",
		"[[potential]]\nactive = \"200 mV\"\n",
		"[[potential]]\nnoble = \"-200 mV\"\nactive = \"-200 mV\"\n",
		"[[protection]]\nat_or_below = \"-800 mV\"\n",
		"[[protection]]\nnot_below = \"800 mV\"\n",
		"[[law]]\nfrom = 2026-01-01\nto = 2026-01-01\n",
		"[[law]]\nfrom = 2026-01-01\n",
		"[[law]]\nto = 2026-01-01\n",
		"[[threshold]]\nworse = \"higher\"\nleast = 0\nmost = 9\nrepair = 2\nstrip = [2, 3, 4]\n",
		"[[threshold]]\nworse = \"lower\"\nleast = 0\nmost = 9\nrepair = 4\nstrip = [2, 3, 4]\n",
		"[[active]]\ncopper_share = 0.75\nzinc_share = 0.25\n",
		"[[sampling]]\nover = \"10 m2\"\n",
		"[[drying]]\nfrom = \"5 degC\"\n",
		"[[observation]]\nsize = \"2 mm\"\n",
		"[[observation]]\nunder = \"2 mm\"\n",
	} {
		head, rest, _ := strings.Cut(row, "\n")
		fmt.Fprintf(&text, "%s\nkey = \"x%d\"\n%s", head, i, rest)
	}
	_, err := book(t).With(ownFile(text.String()))
	fs := faultsOf(t, err)
	if len(fs) == 0 {
		t.Fatal("rows without anything else are taken")
	}
	for _, f := range fs { // what else the rows lack is no matter here
		if errors.Is(f, finding.ErrImpossible) || errors.Is(f, finding.ErrValue) {
			t.Error(f)
		}
	}
}

// A cell comes to the reader as the file writes it; the ranked types are those that a bottom can end with.
func TestCellsAsWritten(t *testing.T) {
	b := book(t)
	var ranked, want []string
	for c := range b.Ranked() {
		ranked = append(ranked, c.Key)
	}
	for _, r := range rows(t)["coating"] {
		key, _ := r["key"].(string)
		if role := r["role"]; role == "antifouling" || role == "blacking" || role == "bare" {
			want = append(want, key)
		}
		c, err := b.Coating(key)
		if err != nil {
			t.Fatal(err)
		}
		for field, grade := range map[string]tables.Grade{"scrub": c.Scrub, "abrasion": c.Abrasion, "growth": c.Growth} {
			if w, given := r[field]; given && grade.String() != w || !given && grade != 0 {
				t.Errorf("%s.%s is %s, written %v", key, field, grade, w)
			}
		}
	}
	slices.Sort(ranked)
	slices.Sort(want)
	if !slices.Equal(ranked, want) {
		t.Errorf("ranked are %q, want %q", ranked, want)
	}
	for _, r := range rows(t)["area_method"] {
		key, _ := r["key"].(string)
		if m, err := b.AreaMethod(key); err != nil || r["factor"] == nil && m.Factor != quantity.Exactly(1.0) || r["factor"] != nil && m.Factor == quantity.Exactly(1.0) {
			t.Errorf("%s has the factor %v, written %v, %v", key, m.Factor, r["factor"], err)
		}
	}
}
