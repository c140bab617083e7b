package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// E3: a loaf 250 × 80 × 62 with nine balls of 20 that stand 4 out; base 1.005, embeds 1.12 g/mL. Volumes to a millionth, masses to 0.1 mg, as the
// page states. Its cap is printed 435.63421, but 4188.79020 less its own 3753.15602 is 435.63418; that is what is wanted here.
func TestWhatBallsDisplaceInTheWorkedExample(t *testing.T) {
	const mg = 1e-4
	near(t, "the ball", shape.Ball(20), 4188.79020, 1e-8)
	near(t, "the cap that stands out", shape.Ball(20)-shape.BallBelow(20, 4), 435.63418, 1e-8)
	below := shape.BallBelow(20, 4)
	near(t, "what is below", below, 3753.15602, 1e-8)
	batter := 250*80*62 - 9*below
	near(t, "the batter", batter, 1206221.5958, 1e-10)
	near(t, "its mass", batter*1.005/1000, 1212.25277, mg/1212)
	near(t, "what it is less", 9*below*1.005/1000, 33.94730, mg/34)
	bar := (25*80*62-below)*1.005/1000 + shape.Ball(20)*1.12/1000
	near(t, "a bar with its embed", bar, 125.53952, mg/126)
	near(t, "a bar without", 25*80*62*1.005/1000, 124.62, mg/125)
}

// The cap is the integral of the discs it is made of, here by Simpson's rule, which is exact for a cubic; the rod's section is summed by strips.
func TestCapsAndRodsAreTheirIntegrals(t *testing.T) {
	for _, h := range []float64{0, 1, 4, 10, 13, 20} {
		section := func(z float64) float64 { return math.Pi * (2*10*z - z*z) }
		near(t, "the cap", shape.Ball(20)-shape.BallBelow(20, h), h/6*(section(0)+4*section(h/2)+section(h)), 1e-12)
		strips, steps := 0.0, 200000
		for i := range steps {
			z := h + (20-h)*(float64(i)+0.5)/float64(steps)
			strips += 2 * math.Sqrt(2*10*z-z*z) * (20 - h) / float64(steps)
		}
		near(t, "the rod's section", shape.RoundRodBelow(20, h), strips, 1e-6)
	}
	near(t, "a ball's skin below its middle", shape.BallSide(20, 10), 2*math.Pi*100, 1e-12)
	near(t, "a box", shape.PrismBelow(180, 12, 3), 1620, 1e-12)
	near(t, "a box that floats on the top", shape.PrismBelow(180, 12, 15), 0, 0)
	near(t, "a box that is wholly below", shape.PrismBelow(180, 12, -5), 2160, 1e-12)
}

func TestWhatIsBelowIsNeverLessThanNothingAndNeverAllTooMuch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.1, 80).Draw(t, "d")
		out := rapid.Float64Range(-20, 120).Draw(t, "out")
		for what, of := range map[string]struct {
			below, whole float64
			at           func(d, out float64) float64
			power        float64
		}{
			"ball": {shape.BallBelow(d, out), math.Pi * d * d * d / 6, shape.BallBelow, 3},
			"rod":  {shape.RoundRodBelow(d, out), math.Pi * d * d / 4, shape.RoundRodBelow, 2},
			"box":  {shape.PrismBelow(1, d, out), d, func(d, out float64) float64 { return shape.PrismBelow(1, d, out) }, 1},
			"skin": {shape.BallSide(d, out), math.Pi * d * d, shape.BallSide, 2},
		} {
			tiny := 1e-9 * math.Max(1, of.whole)
			if math.IsNaN(of.below) || of.below < -tiny || of.below > of.whole+tiny {
				t.Fatalf("%s: %g of %g is below", what, of.below, of.whole)
			}
			if more := of.at(d, out+1); more > of.below+tiny {
				t.Fatalf("%s: further out more of it is below", what)
			}
			if large := of.at(2*d, 2*out); math.Abs(large-math.Pow(2, of.power)*of.below) > 1e-6*math.Max(1, large) {
				t.Fatalf("%s: twice as large it has %g below, from %g", what, large, of.below)
			}
		}
	})
}
