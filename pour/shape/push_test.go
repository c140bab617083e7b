package shape_test

import (
	"math"
	"testing"

	"pourbench/pour/shape"
)

// A cylinder of 20 buried by 15 in a loaf of 10 kPa is held by 9.4 N; ten wires of 0.5 in a loaf of 250 want 5.0 mm, 2.0 % of it, one 0.2 %.
func TestHoldingAndSqueezeOfTheWorkedFigures(t *testing.T) {
	near(t, "what holds the cylinder", shape.Holding(math.Pi*20*15, shape.FreshLoafPa), 9.4, 0.05/9.4)
	near(t, "the same from first principles", shape.Holding(math.Pi*20*15, 10000), math.Pi*0.020*0.015*10000, 1e-12)
	near(t, "ten wires", shape.GangGrowth(10, 0.5), 5, 1e-12)
	near(t, "squeeze by ten", shape.GangSqueeze(10, 0.5, 250), 0.02, 1e-12)
	near(t, "squeeze by one", shape.GangSqueeze(1, 0.5, 250), 0.002, 1e-12)
	near(t, "twice as thick", shape.GangSqueeze(10, 1, 250), 0.04, 1e-12)
}
