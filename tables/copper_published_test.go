package tables_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"boatyard.example/bottomwork/tables"
)

// Source: IUPAC standard atomic weights, abridged values (2021), from memory.
var atomicWeight = map[string]float64{
	"H": 1.008, "C": 12.011, "N": 14.007, "O": 15.999, "F": 18.998, "S": 32.06, "Cl": 35.45, "Cu": 63.546, "Zn": 65.38, "Br": 79.904,
}

var element = regexp.MustCompile(`([A-Z][a-z]?)([0-9]*)`)

// copperShare is the mass of copper in a mass of the substance, from its formula.
func copperShare(t *testing.T, formula string) float64 {
	t.Helper()
	if rest := element.ReplaceAllString(formula, ""); rest != "" || formula == "" {
		t.Fatalf("formula %q holds %q", formula, rest)
	}
	var copper, all float64
	for _, m := range element.FindAllStringSubmatch(formula, -1) {
		n := 1
		if m[2] != "" {
			n, _ = strconv.Atoi(m[2])
		}
		w, ok := atomicWeight[m[1]]
		if !ok {
			t.Fatalf("formula %q: no atomic weight of %q", formula, m[1])
		}
		all += float64(n) * w
		if m[1] == "Cu" {
			copper += float64(n) * w
		}
	}
	return copper / all
}

// Four-place shares of copper, worked by hand from the atomic weights.
func TestCopperShares(t *testing.T) {
	t.Attr("source", "IUPAC standard atomic weights")
	b := book(t)
	for key, want := range map[string]float64{
		"cuprous-oxide":      0.8882,
		"copper-thiocyanate": 0.5225,
		"copper-pyrithione":  0.2012,
		"copper-metal":       1,
	} {
		a, err := b.Active(key)
		if err != nil {
			t.Error(err)
			continue
		}
		if math.Abs(a.Copper-want) > 5e-5 {
			t.Errorf("%s has the copper share %.6f, want %.4f", key, a.Copper, want)
		}
	}
}

func TestCopperSharesFollowFromTheFormulas(t *testing.T) {
	n := 0
	for a := range book(t).ActiveRows() {
		n++
		if got := copperShare(t, a.Formula); math.Abs(got-a.Copper) > 5e-5 {
			t.Errorf("%s %s has %.6f of copper, the row says %.6f", a.Key, a.Formula, got, a.Copper)
		}
		if free := a.Class == tables.CopperFree; free != (a.Copper == 0) {
			t.Errorf("%s is of the class %s and has the copper share %g", a.Key, a.Class, a.Copper)
		}
	}
	if n < 12 {
		t.Errorf("%d biocides, want at least 12", n)
	}
}

// The last digit of a CAS number checks the others: their sum, the last times 1, the one before times 2 and so on, to its units.
// A wrong digit shows; whether the number is that of the substance does not.
func TestCASCheckDigits(t *testing.T) {
	t.Attr("source", "CAS registry numbers, check digit rule, from memory")
	cas := regexp.MustCompile(`^[1-9][0-9]{1,6}-[0-9]{2}-[0-9]$`)
	valid := func(s string) bool {
		if !cas.MatchString(s) {
			return false
		}
		digits := strings.ReplaceAll(s, "-", "")
		sum := 0
		for i := range len(digits) - 1 {
			sum += int(digits[i]-'0') * (len(digits) - 1 - i)
		}
		return sum%10 == int(digits[len(digits)-1]-'0')
	}
	if !valid("7732-18-5") || valid("7732-18-6") || valid("7723-18-5") { // water
		t.Fatal("the check digit rule is wrong")
	}
	for a := range book(t).ActiveRows() {
		if !valid(a.CAS) {
			t.Errorf("%s: %q is no CAS number", a.Key, a.CAS)
		}
	}
}
