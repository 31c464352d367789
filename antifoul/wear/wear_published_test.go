package wear_test

import (
	"math"
	"testing"

	"boatyard.example/bottomwork/antifoul/wear"
	"boatyard.example/bottomwork/tables"
	"boatyard.example/bottomwork/tables/quantity"
)

// The abstract of "The effect of water flow on leaching rates of antifouling paints" says that going from 1 to 20 kn speeds up
// the loss of copper about 3 times at first and about 2 times later. As a power of speed that is an exponent of
//
//	ln 3 / ln 20 = 0.367, later ln 2 / ln 20 = 0.231
//
// The row's range of the exponent holds both. That is release of copper; the wear of the film is taken to follow it.
func TestExponentOfSpeed(t *testing.T) {
	t.Attr("source", "The effect of water flow on leaching rates of antifouling paints, abstract")
	f, err := tables.Default().Factor("speed-exponent")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ times, exponent float64 }{{3, 0.367}, {2, 0.231}} {
		n := math.Log(c.times) / math.Log(20)
		if math.Abs(n-c.exponent) > 0.0005 {
			t.Errorf("%g times from 1 to 20 kn is the power %.4f, typed as %.3f", c.times, n, c.exponent)
		}
		if n < f.Value.Low || n > f.Value.High {
			t.Errorf("the power %.3f is outside of the row's %v", n, f.Value)
		}
	}
}

// By the model itself: a film that is always under way wears, from 1 to 20 kn, between the two published multiples or wider.
// The low end of the range grows less than 2 times, the high end more than 3 times, but for no more than 4.
func TestFasterByTheModel(t *testing.T) {
	t.Attr("source", "The effect of water flow on leaching rates of antifouling paints, abstract")
	b := tables.Default()
	// At rest it wears next to nothing, so that the wear under way is not held up by the wear at rest.
	c := own(t, "ablative-cuprous-multi", "wear_rest = \"0.001 um\"\nwear_use = \"5 um\"")
	at := func(kn int64) quantity.Range[float64] {
		return wear.Rate(b, c, wear.Use{UnderWay: quantity.Hour.N(8784), Speed: quantity.Knot.N(kn)})
	}
	// The exponent is a range, so each speed has one; the same exponent is at the low end above the reference speed of 6 kn and
	// at the high end below it.
	slow, fast := at(1), at(20)
	for _, times := range []float64{fast.Low / slow.High, fast.Typical / slow.Typical, fast.High / slow.Low} {
		if times < 1 || times > 4 {
			t.Errorf("from 1 to 20 kn it wears %.2f times as fast", times)
		}
	}
	if least := fast.Low / slow.High; least > 2 {
		t.Errorf("the least growth is %.2f times, published about 2 later", least)
	}
	if most := fast.High / slow.Low; most < 3 {
		t.Errorf("the most growth is %.2f times, published about 3 at first", most)
	}
}
