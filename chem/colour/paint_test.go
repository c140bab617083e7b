package colour

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func mix(t fataler, paints []Paint, fractions []float64) Paint {
	p, err := Mix(paints, fractions)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return p
}

// near says whether two paints reflect the same within tolerance in every band.
func near(a, b Paint, tolerance float64) bool {
	x, y := a.Reflectance(), b.Reflectance()
	for i := range x {
		if !(math.Abs(x[i]-y[i]) <= tolerance) {
			return false
		}
	}
	return math.Abs(a.Scatter-b.Scatter) <= tolerance
}

func drawMixture(t *rapid.T) (paints []Paint, fractions []float64) {
	n := rapid.IntRange(1, 6).Draw(t, "n")
	for range n {
		paints = append(paints, drawPaint(t))
		fractions = append(fractions, rapid.Float64Range(0.01, 1).Draw(t, "fraction"))
	}
	return paints, fractions
}

func TestMixOfAPaintWithItselfIsThatPaint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPaint(t)
		w := rapid.Float64Range(0, 1).Draw(t, "w")
		if m := mix(t, []Paint{p, p}, []float64{1 - w, w}); !near(m, p, 1e-9) {
			t.Fatalf("changed at share %g", w)
		}
	})
}

func TestMixWithNoneOfTheOtherIsTheParent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPaint(t), drawPaint(t)
		if m := mix(t, []Paint{a, b}, []float64{1, 0}); !near(m, a, 1e-12) {
			t.Fatal("a share of 0 changed the other paint")
		}
	})
}

func TestMixDoesNotDependOnOrderOrScaleOfShares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paints, fractions := drawMixture(t)
		m := mix(t, paints, fractions)
		scale := rapid.Float64Range(0.001, 1000).Draw(t, "scale")
		turned, scaled := slices.Clone(paints), slices.Clone(fractions)
		slices.Reverse(turned)
		slices.Reverse(scaled)
		for i := range scaled {
			scaled[i] *= scale
		}
		if !near(m, mix(t, turned, scaled), 1e-9) {
			t.Fatal("reversed and scaled, the mixture is another")
		}
	})
}

func TestMixLiesBetweenItsParentsInEveryBand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paints, fractions := drawMixture(t)
		m := mix(t, paints, fractions).Reflectance()
		for i, r := range m {
			low, high := 1.0, 0.0
			for _, p := range paints {
				low, high = min(low, reflectance(p.Ratio[i])), max(high, reflectance(p.Ratio[i]))
			}
			if r < low-1e-12 || r > high+1e-12 {
				t.Fatalf("%g nm: %g outside %g to %g", Wavelength(i), r, low, high)
			}
		}
	})
}

func TestMixOfEqualScatteringIsNeverBrighterThanTheAverage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paints, fractions := drawMixture(t)
		sum := 0.0
		for i := range paints {
			paints[i].Scatter = 1
			sum += fractions[i]
		}
		for i, r := range mix(t, paints, fractions).Reflectance() {
			mean := 0.0
			for k, p := range paints {
				mean += fractions[k] / sum * reflectance(p.Ratio[i])
			}
			if r > mean+1e-12 {
				t.Fatalf("%g nm: %g above the mean %g", Wavelength(i), r, mean)
			}
		}
	})
}

func TestRaisingOnePaintsScatteringPullsTheMixTowardsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPaint(t), drawPaint(t)
		w := []float64{0.5, 0.5}
		before := mix(t, []Paint{a, b}, w).Reflectance()
		strong := b
		strong.Scatter *= rapid.Float64Range(1, 3).Draw(t, "stronger")
		after := mix(t, []Paint{a, strong}, w).Reflectance()
		for i, goal := range b.Reflectance() {
			if math.Abs(after[i]-goal) > math.Abs(before[i]-goal)+1e-12 {
				t.Fatalf("%g nm: from %g to %g, away from %g", Wavelength(i), before[i], after[i], goal)
			}
		}
	})
}

// The rule is assumed: one more unit of scattering for each percent, at most 2.5.
func TestScatterRisesWithTitaniumAndStopsAtItsCap(t *testing.T) {
	for dose, want := range map[float64]float64{0: 1, 0.5: 1.5, 1: 2, 1.5: 2.5, 8: 2.5} {
		if got, err := Scatter(dose); err != nil || got != want {
			t.Errorf("%g %%: %g, %v; want %g", dose, got, err, want)
		}
	}
	for _, dose := range []float64{-0.1, 31, math.NaN(), math.Inf(1)} {
		if got, err := NewPaint(RGB{0.5, 0.5, 0.5}, dose); err == nil {
			t.Errorf("%g %% gave a paint of scattering %g", dose, got.Scatter)
		}
	}
}

func TestMixRefusesWhatIsNoMixture(t *testing.T) {
	p, nan := paint(t, "#f2c230"), math.NaN()
	for want, try := range map[string]struct {
		paints    []Paint
		fractions []float64
	}{
		"0 paints":         {nil, nil},
		"one fraction for": {[]Paint{p, p}, []float64{1}},
		"is -1":            {[]Paint{p}, []float64{-1}},
		"is NaN":           {[]Paint{p}, []float64{nan}},
		"is +Inf":          {[]Paint{p}, []float64{math.Inf(1)}},
		"sum to 0":         {[]Paint{p}, []float64{0}},
		"scatters 0":       {[]Paint{{}}, []float64{1}},
		"at 380 nm":        {[]Paint{{Ratio: Spectrum{nan}, Scatter: 1}}, []float64{1}},
	} {
		if _, err := Mix(try.paints, try.fractions); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want an error about %q, got %v", want, err)
		}
	}
}
