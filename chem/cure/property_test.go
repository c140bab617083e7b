package cure_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem/cure"
)

func TestDoublingEverySpreadDoublesEverySD(t *testing.T) {
	one, p := fitted(t, 8), prior(t)
	p.LossSD, p.LnTauSD = 2*p.LossSD, 2*p.LnTauSD
	two, err := cure.Of(table(), p, weighed(), 0.30)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "A", two.AG, one.AG, 1e-9)
	near(t, "B", two.BG, one.BG, 1e-9)
	near(t, "u", two.LnTau, one.LnTau, 1e-9)
	near(t, "sd of the end", two.Final().SD, 2*one.Final().SD, 1e-8)
	near(t, "sd of the day", ready(t, two, 0.5).SD, 2*ready(t, one, 0.5).SD, 1e-5)
}

func TestScalingMassesScalesTheFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box, p, w := drawn(t)
		by := rapid.Float64Range(0.3, 4).Draw(t, "by")
		scaled := slices.Clone(w)
		for i := range scaled {
			scaled[i].G *= by
		}
		one, err := cure.Of(box, p, w, 0.15)
		two, err2 := cure.Of(box, p, scaled, 0.15*by)
		if err != nil || err2 != nil {
			t.Skip(err, err2)
		}
		if math.Abs(two.AG-by*one.AG) > 1e-6 || math.Abs(two.BG-by*one.BG) > 1e-5 || math.Abs(two.LnTau-one.LnTau) > 1e-7 {
			t.Fatalf("%+v and, by %v, %+v", one.Params, by, two.Params)
		}
		if a, b := day(t, one), day(t, two); math.Abs(a-b) > 1e-5 {
			t.Fatalf("ready on day %v and %v", a, b)
		}
	})
}

func day(t *rapid.T, f *cure.Fit) float64 {
	e, err := f.Ready(0.5)
	if err != nil {
		t.Fatal(err)
	}
	return e.V
}

func TestWeighingsMayComeInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box, p, w := drawn(t)
		w = append(w, cure.Weighing{Day: w[0].Day, G: w[0].G - 0.1}) // the scale was asked twice
		mixed := rapid.Permutation(w).Draw(t, "order")
		kept := slices.Clone(mixed)
		one, err := cure.Of(box, p, w, 0.15)
		two, err2 := cure.Of(box, p, mixed, 0.15)
		if (err == nil) != (err2 == nil) {
			t.Fatalf("%v and %v", err, err2)
		}
		if err == nil && one.Params != two.Params {
			t.Fatalf("%+v and %+v", one.Params, two.Params)
		}
		if !slices.Equal(kept, mixed) {
			t.Fatal("the caller's weighings were put in order")
		}
	})
}

// The weekly loss falls steadily, so that there is one ready day, on which the loss is the criterion.
func TestTheWeeklyLossFallsToTheCriterionOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box, p, w := drawn(t)
		f, err := cure.Of(box, p, w, 0.15)
		if err != nil || f.BG <= 0 { // nothing to lose, within the noise
			t.Skip(err)
		}
		last := math.Inf(1)
		for d := 0.0; d < 100; d += 4 {
			r := f.WeeklyLoss(d).V
			if r > last+1e-9 {
				t.Fatalf("the loss of day %v is %v, before it %v", d, r, last)
			}
			last = r
		}
		if at := day(t, f); at > 0 && math.Abs(f.WeeklyLoss(at).V-0.5) > 1e-9 {
			t.Fatalf("on the ready day %v it still loses %v", at, f.WeeklyLoss(at).V)
		}
	})
}

func TestABarThatLosesLittleFromTheStartIsReadyAtOnce(t *testing.T) {
	if e := ready(t, fitted(t, 8), 50); e.V != 0 || e.SD != 0 {
		t.Errorf("ready on day %+v", e)
	}
}

// The figure that says how g falls agrees with its own differences, on both sides of the seam.
func TestTheElasticityIsThatOfG(t *testing.T) {
	for _, s := range []float64{1e-6, 0.01, 0.0999, 0.1001, 0.5, 2, 30} {
		h := 1e-5 * s
		near(t, "elasticity", cure.Elasticity(s), -s*(math.Log(cure.Slab(s+h))-math.Log(cure.Slab(s-h)))/(2*h), 1e-6*(1+s))
	}
	near(t, "long dry", cure.Elasticity(5000), 5000, 1e-6)
}

// More weighings of the nested sets of the page never widen what is known of the end.
func TestMoreWeighingsTellMoreOfTheEnd(t *testing.T) {
	last := math.Inf(1)
	for _, n := range []int{2, 3, 5, 8} {
		sd := fitted(t, n).Final().SD
		if sd > last {
			t.Errorf("with %d weighings ± %v, before ± %v", n, sd, last)
		}
		last = sd
	}
}
