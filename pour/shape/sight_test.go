package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// The table of sight-line errors to its printed digits, the tangent of every angle taken as the quotient of sine and cosine. Derived.
func TestSightLineErrorsByTheTable(t *testing.T) {
	degrees := []float64{2, 5, 10, 15, 20, 30}
	for h, row := range map[float64][]float64{
		5:  {0.17, 0.44, 0.88, 1.34, 1.82, 2.89},
		10: {0.35, 0.87, 1.76, 2.68, 3.64, 5.77},
		13: {0.45, 1.14, 2.29, 3.48, 4.73, 7.51},
		20: {0.70, 1.75, 3.53, 5.36, 7.28, 11.55},
		40: {1.40, 3.50, 7.05, 10.72, 14.56, 23.09},
	} {
		for i, deg := range degrees {
			got := shape.Parallax(h, deg*degree)
			if math.Abs(got-row[i]) > 0.005+1e-9 {
				t.Errorf("a rim %g high at %g° is off by %.4f, the table says %.2f", h, deg, got, row[i])
			}
			near(t, "the same from an eye aside", shape.ParallaxFrom(h, 400*math.Sin(deg*degree), 400*math.Cos(deg*degree)), got, 1e-12)
		}
	}
	// E4.
	near(t, "13 mm at 15°", shape.Parallax(13, 15*degree), 3.4833, 5e-5/3)
	near(t, "13 mm at 10°", shape.Parallax(13, 10*degree), 2.2923, 5e-5/2)
}

// An eye fixed 400 above the middle of a loaf of 250, the rim 13 above the soap, and the centres of E1.
func TestAnEyeThatStaysWhereItIs(t *testing.T) {
	factor := shape.EyeScale(13, 400)
	near(t, "the factor", factor, 1.0325, 1e-12)
	for i, want := range []float64{3.328, 2.496, 1.664, 0.832, 0} {
		centre := []float64{22.6, 48.2, 73.8, 99.4, 125}[i]
		near(t, "how far a mark shifts", (125-centre)*(factor-1), want, 1e-9)
		near(t, "the same from the side", shape.ParallaxFrom(13, 125-centre, 400), want, 1e-9)
	}
}

func TestASightLineErrorGrowsWithRimAndAngle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, deg := rapid.Float64Range(0, 300).Draw(t, "h"), rapid.Float64Range(0, 60).Draw(t, "deg")
		off := shape.Parallax(h, deg*degree)
		if off < 0 || math.IsNaN(off) || math.Abs(shape.Parallax(2*h, deg*degree)-2*off) > 1e-9 || shape.Parallax(h, (deg+1)*degree) < off {
			t.Fatalf("a rim %g high at %g° is off by %g", h, deg, off)
		}
		if math.Abs(shape.Parallax(h, -deg*degree)+off) > 1e-9 {
			t.Fatal("from the other side it is not as far off the other way")
		}
	})
}
