package law_test

import (
	"slices"
	"strings"
	"testing"

	"boatyard.example/bottomwork/antifoul/law"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/finding"
	"boatyard.example/bottomwork/tables/quantity"
)

// Values typed from the documents named beside them, not from the tables.
func TestPublishedValues(t *testing.T) {
	b := tables.Default()
	for _, tc := range []struct {
		law, field, want string
		source           string
	}{
		{"afs-organotin-application", "from", "2003-01-01", "AFS Convention 2001, annex 1"},
		{"afs-organotin-presence", "from", "2008-01-01", "AFS Convention 2001, annex 1"},
		{"afs-organotin-presence", "says", "2500 mg of tin a kilogram", "MEPC.356(78), record sheet: total tin in dry paint"},
		{"afs-organotin-presence", "says", "3000 mg", "MEPC.356(78), record sheet: a single specimen"},
		{"afs-cybutryne-application", "from", "2023-01-01", "AFS Convention 2001, annex 1 as amended by MEPC.331(76)"},
		{"afs-cybutryne-presence", "from", "2023-01-01", "AFS Convention 2001, annex 1 as amended by MEPC.331(76)"},
		{"afs-cybutryne-presence", "within", "60 months", "AFS Convention 2001, annex 1 as amended by MEPC.331(76)"},
		{"afs-declaration", "from", "2008-09-17", "IMO press release on the convention's entry into force"},
		{"afs-declaration", "length_min", "24 m", "guidelines for inspection, section 1.3"},
		{"afs-certificate", "says", "400 GT", "guidelines for inspection, section 1.2"},
		{"afs-no-paper", "length_below", "24 m", "guidelines for inspection, sections 1.2 and 1.3"},
		{"us-oapca-organotin", "length_below", "25 m", "33 USC 2403"},
		{"us-oapca-organotin", "from", "1988-06-16", "Pub. L. 100-333"},
		{"ca-copper-release", "release_max", "9.5 ug/cm2/d", "California department's reevaluation page on 3 CCR 6190"},
		{"ca-copper-release", "from", "2018-07-01", "California department's reevaluation page on 3 CCR 6190"},
		{"wa-copper", "copper_max", "0.5 %", "RCW 70.300.020 (2011)"},
		{"wa-copper", "length_max", "65 ft", "RCW 70.300.010"},
		{"wa-copper", "says", "30 June 2029", "Washington Department of Ecology, summary of June 2024"},
		{"wa-cybutryne", "from", "2023-01-01", "Washington Department of Ecology page"},
		{"wa-soft-cleaning", "says", "10000 USD", "Washington Department of Ecology page on RCW 90.48.080"},
		{"se-bothnia-none", "mass_above", "200 kg", "Swedish Transport Agency: boats over 200 kg"},
		{"se-fresh-none", "mass_above", "200 kg", "Swedish Transport Agency: boats over 200 kg"},
		{"se-organotin-removed", "says", "100 µg/cm²", "Södertälje municipality's answers on hull paint"},
		{"fi-copper-release", "release_max", "15 ug/cm2/d", "Tukes page on antifouling of pleasure craft"},
		{"dk-light", "mass_below", "200 kg", "Danish order 1257 of 15 December 2011"},
		{"dk-copper-release", "mass_min", "200 kg", "Danish order 1257 of 15 December 2011"},
		{"dk-copper-release", "says", "200 ug of copper per cm2 in 14 days", "Danish order 1257 of 15 December 2011"},
		{"dk-copper-release", "says", "350 ug in 30 days", "Danish order 1257 of 15 December 2011"},
		{"dk-diuron-cybutryne", "length_below", "25 m", "Danish order 1257 of 15 December 2011"},
		{"eu-cybutryne", "from", "2017-01-28", "German environment agency: not usable after 27 January 2017"},
		{"eu-actives-2025", "from", "2026-01-01", "2016/1089 and others: approved to 31 December 2025"},
		{"eu-tralopyril", "from", "2027-10-01", "2024/2945: approved to 30 September 2027"},
		{"gb-lapsed-2025", "from", "2026-01-01", "HSE e-bulletin of 4 October 2024: expiry 31 December 2025"},
		{"gb-copper-2027", "from", "2027-02-01", "HSE e-bulletin of 4 October 2024: expiry 31 January 2027"},
		{"nz-diuron", "from", "2017-07-01", "New Zealand EPA release"},
	} {
		l := rowOf(t, b, tc.law)
		got, same := "", false
		amount := func(s string) bool { got = s; return s == tc.want }
		switch tc.field {
		case "from":
			same = amount(l.From.String())
		case "within":
			same = amount(l.Within.String())
		case "length_min":
			same = amount(l.LengthMin.String())
		case "length_max":
			same = amount(l.LengthMax.String())
		case "length_below":
			same = amount(l.LengthBelow.String())
		case "mass_min":
			same = amount(l.MassMin.String())
		case "mass_above":
			same = amount(l.MassAbove.String())
		case "mass_below":
			same = amount(l.MassBelow.String())
		case "copper_max":
			same = amount(l.CopperMax.String())
		case "release_max":
			same = amount(l.ReleaseMax.String())
		case "says":
			got = l.Says
			same = strings.Contains(l.Says, tc.want)
		}
		if !same {
			t.Errorf("%s.%s = %q, published %q (%s)", tc.law, tc.field, got, tc.want, tc.source)
		}
	}
}

// Source: implementing regulations on product-type 21, end dates as listed second-hand: the eight actives whose approval was to end on 31 December 2025.
func TestPublishedActivesOf2025(t *testing.T) {
	want := []string{"copper-metal", "copper-pyrithione", "copper-thiocyanate", "cuprous-oxide", "dcoit", "dichlofluanid", "tolylfluanid", "zineb"}
	row := rowOf(t, tables.Default(), "eu-actives-2025")
	if got := slices.Sorted(row.Actives()); !slices.Equal(got, want) {
		t.Errorf("got %v", got)
	}
}

// A law bites from its first day to its last, both included. The days are typed from the documents of TestPublishedValues.
func TestDayBeforeOnAndAfter(t *testing.T) {
	b := tables.Default()
	for _, tc := range []struct {
		name, first string
		judge       func(quantity.Date) finding.List
	}{
		{"AFS Convention (organotin, application)", "2003-01-01", func(d quantity.Date) finding.List {
			return law.Screen(b, coating(t, b, "organotin-old"), sloop, kept("NZ", "salt"), d)
		}},
		{"AFS Convention (organotin, presence)", "2008-01-01", func(d quantity.Date) finding.List {
			return law.OldFilm(b, coating(t, b, "organotin-old"), sloop, kept("NZ", "salt"), d)
		}},
		{"EU approvals that ran to the end of 2025", "2026-01-01", func(d quantity.Date) finding.List {
			return law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("NL", "salt"), d)
		}},
		{"GB approvals of cuprous oxide and copper pyrithione", "2027-02-01", func(d quantity.Date) finding.List {
			return law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("GB", "salt"), d)
		}},
		{"California (release of copper)", "2018-07-01", func(d quantity.Date) finding.List {
			return law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("US-CA", "salt"), d)
		}},
	} {
		first := day(t, tc.first)
		for add, want := range map[int]bool{-1: false, 0: true, 1: true} {
			if _, got := of(tc.judge(first.AddDays(add)), tc.name); got != want {
				t.Errorf("%s on %v: bites %v", tc.name, first.AddDays(add), got)
			}
		}
		f, ok := of(tc.judge(quantity.Date{}), tc.name)
		if !ok || f.Rule != "law-may-apply" || f.Verdict != finding.Ask || fact(f, "missing") != "the day" {
			t.Errorf("%s on no day: %+v", tc.name, f)
		}
	}
}

// An own row with a last day: it bites on that day and not after it.
func TestLastDay(t *testing.T) {
	b := with(t, `
[[law]]
key = "one-summer"
name = "one summer"
basis = "assumption"
place = "NZ"
subject = "coating"
verdict = "forbidden"
says = "no antifouling this summer"
from = 2026-12-01
to = 2027-02-28
read_on = 2026-11-25
`)
	for on, want := range map[string]bool{"2026-11-30": false, "2026-12-01": true, "2027-02-27": true, "2027-02-28": true, "2027-03-01": false} {
		if _, got := of(law.Screen(b, coating(t, b, "hard-cuprous"), sloop, kept("NZ", "salt"), day(t, on)), "one summer"); got != want {
			t.Errorf("on %s: bites %v", on, got)
		}
	}
}

// Just under, on and just over each size: over 200 kg in Sweden, below 200 kg and from 200 kg in Denmark, under 25 m in the
// United States, up to 65 ft in Washington State.
func TestSizes(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	type berth struct{ place, water string }
	mass := func(s string) law.Craft {
		m, err := quantity.Parse[quantity.Mass](s)
		if err != nil {
			t.Fatal(err)
		}
		return law.Craft{Length: sloop.Length, Mass: m, Material: "grp"}
	}
	length := func(s string) law.Craft {
		l, err := quantity.Parse[quantity.Length](s)
		if err != nil {
			t.Fatal(err)
		}
		return law.Craft{Length: l, Mass: sloop.Mass, Material: "grp"}
	}
	for _, tc := range []struct {
		name, coating string
		at            berth
		craft         law.Craft
		want          bool
	}{
		{"Sweden (Gulf of Bothnia)", "hard-cuprous", berth{"SE-bothnia", "brackish"}, mass("199 kg"), false},
		{"Sweden (Gulf of Bothnia)", "hard-cuprous", berth{"SE-bothnia", "brackish"}, mass("200 kg"), false},
		{"Sweden (Gulf of Bothnia)", "hard-cuprous", berth{"SE-bothnia", "brackish"}, mass("0.2 t"), false},
		{"Sweden (Gulf of Bothnia)", "hard-cuprous", berth{"SE-bothnia", "brackish"}, mass("200.1 kg"), true},
		{"Denmark (boats below 200 kg)", "hard-cuprous", berth{"DK", "salt"}, mass("199.9 kg"), true},
		{"Denmark (boats below 200 kg)", "hard-cuprous", berth{"DK", "salt"}, mass("200 kg"), false},
		{"Denmark (release of copper)", "hard-cuprous", berth{"DK", "salt"}, mass("199.9 kg"), false},
		{"Denmark (release of copper)", "hard-cuprous", berth{"DK", "salt"}, mass("200 kg"), true},
		{"Organotin Antifouling Paint Control Act", "organotin-old", berth{"US-WA", "salt"}, length("24.99 m"), true},
		{"Organotin Antifouling Paint Control Act", "organotin-old", berth{"US-WA", "salt"}, length("25 m"), false},
		{"Washington (copper above 0.5 %)", "hard-cuprous", berth{"US-WA", "salt"}, length("65 ft"), true},
		{"Washington (copper above 0.5 %)", "hard-cuprous", berth{"US-WA", "salt"}, length("65.1 ft"), false},
	} {
		got := law.Screen(b, coating(t, b, tc.coating), tc.craft, kept(tc.at.place, tc.at.water), on)
		f, ok := of(got, tc.name)
		if ok != tc.want || ok && f.Rule == "law-may-apply" {
			t.Errorf("%s for %v %v: bites %v", tc.name, tc.craft.Length, tc.craft.Mass, ok)
		}
	}
}

// Source: RCW 70.300.010(4) and order 1257 of 2011: boats of wood are left out. A hull whose material nobody gave is not.
func TestExemptMaterial(t *testing.T) {
	b := tables.Default()
	on := day(t, "2026-11-25")
	copper := rowOf(t, b, "wa-copper")
	exempt := slices.Collect(copper.Exempt())
	if len(exempt) == 0 {
		t.Fatal("no exempt material")
	}
	for _, m := range exempt {
		wood := sloop
		wood.Material = m
		if _, ok := of(law.Screen(b, coating(t, b, "hard-cuprous"), wood, kept("US-WA", "salt"), on), "Washington (copper above 0.5 %)"); ok {
			t.Errorf("the law bites on %s", m)
		}
	}
	bare := sloop
	bare.Material = ""
	f, ok := of(law.Screen(b, coating(t, b, "hard-cuprous"), bare, kept("US-WA", "salt"), on), "Washington (copper above 0.5 %)")
	if !ok || f.Rule != "law-may-apply" || f.Verdict != finding.Caution || fact(f, "missing") != "the hull's material" {
		t.Errorf("%+v", f)
	}
}
