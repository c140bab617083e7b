package shape_test

import (
	"math"
	"testing"

	"pourbench/pour/shape"
)

// The printed worked example: coverage 0.10, 1.5 mm, 1.55 g/mL on 25 × 80 mm make 0.310 g, 113.2 pieces.
func TestStrewnBallsWeighWhatThePageSays(t *testing.T) {
	g := shape.StrewnG(0.10, shape.BallLayerMM(1.5), 1.55, 25*80)
	if math.Abs(g-0.310) > 1e-9 {
		t.Errorf("a layer of balls weighs %g g, want 0.310", g)
	}
	if n := g / shape.BallG(1.5, 1.55); math.Abs(n-113.2) > 0.05 {
		t.Errorf("%g balls, want 113.2", n)
	}
	if g := shape.StrewnG(0.10, 2, 0.5, 25*80); math.Abs(g-0.2) > 1e-12 { // 10 % of 2000 mm², 2 mm thick: 400 mm³ of 0.5
		t.Errorf("a flat layer weighs %g g, want 0.2", g)
	}
}

// The printed worked example: coverage 5 % of 2 mm balls is 0.0159 on a mm²; a cut of 0.6 mm over 80 mm meets 3.31 of them.
func TestACutMeetsAsManyGrainsAsThePageSays(t *testing.T) {
	perMM2 := shape.StrewnG(0.05, shape.BallLayerMM(2), 1.6, 1) / shape.BallG(2, 1.6)
	if math.Abs(perMM2-0.0159) > 0.00005 {
		t.Errorf("%g balls on a mm², want 0.0159", perMM2)
	}
	if n := shape.BallsCut(perMM2, 80, 0.6, 2); math.Abs(n-3.31) > 0.005 {
		t.Errorf("a cut meets %g balls, want 3.31", n)
	}
}

// Balls cover by their shadows, whatever the density: twice the density is twice the mass, twice the diameter half the number per mass eighth.
func TestStrewingScales(t *testing.T) {
	one := shape.StrewnG(0.2, shape.BallLayerMM(1), 1, 1000)
	if two := shape.StrewnG(0.2, shape.BallLayerMM(2), 1, 1000); math.Abs(two-2*one) > 1e-12 {
		t.Errorf("balls of twice the size weigh %g, want %g", two, 2*one)
	}
	if math.Abs(shape.BallG(2, 1)-8*shape.BallG(1, 1)) > 1e-12 {
		t.Error("a ball twice as wide is not eight times as heavy")
	}
}
