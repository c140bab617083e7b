package pour

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestApportionSumsExactlyAndStaysWithinOneStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]float64{0.01, 0.1, 0.5, 1, 5}).Draw(t, "step")
		masses := rapid.SliceOfN(rapid.Float64Range(0, 5000), 1, 12).Draw(t, "masses")
		sum, got := 0.0, 0.0
		out := Apportion(masses, step)
		for i, g := range out {
			sum += masses[i]
			got += g
			if math.Abs(g-masses[i]) > step*(1+1e-6) {
				t.Fatalf("part %d: %v from %v is more than a step of %v off", i, g, masses[i], step)
			}
			if n := g / step; math.Abs(n-math.Round(n)) > 1e-6 {
				t.Fatalf("part %d: %v is no multiple of %v", i, g, step)
			}
		}
		if want := math.Round(sum/step) * step; math.Abs(got-want) > step*1e-6 {
			t.Fatalf("parts sum to %v, want %v", got, want)
		}
	})
}

func TestApportionGivesTiesToTheEarlier(t *testing.T) {
	got := Apportion([]float64{0.25, 0.25, 0.5}, 0.5)
	if got[0] != 0.5 || got[1] != 0 || got[2] != 0.5 {
		t.Errorf("got %v, want the first of the two halves rounded up", got)
	}
}

// 1981 steps of 0.1 g are 198.1 g to the last bit, and not 198.10000000000002: what a scale shows is compared and added up.
func TestStepsMakeTheNumberAScaleShows(t *testing.T) {
	for _, c := range []struct{ steps, step, want float64 }{{1981, 0.1, 198.1}, {3, 0.01, 0.03}, {7, 0.001, 0.007}, {3, 0.3, 0.8999999999999999}, {4, 5, 20}, {9, 0.5, 4.5}} {
		if got := times(c.steps, c.step); got != c.want {
			t.Errorf("%v steps of %v are %v, want %v", c.steps, c.step, got, c.want)
		}
	}
}

func TestFloorToKeepsAWholeNumberOfSteps(t *testing.T) {
	for _, c := range []struct{ g, step, want float64 }{
		{0.3, 0.1, 0.3}, {0.1 * 3, 0.1, 0.3}, {1.29, 0.1, 1.2}, {127.999, 0.01, 127.99}, {0, 0.1, 0},
	} {
		if got := floorTo(c.g, c.step); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("floorTo(%v, %v) = %v, want %v", c.g, c.step, got, c.want)
		}
	}
}
