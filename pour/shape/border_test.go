package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// T3: a tip of 6 points, R 3.5, r 2.4, swell 1.03, overlap 0.20, from the middle to 8, density 1.005.
func TestTheRosetteOfTheWorkedExample(t *testing.T) {
	opening := shape.Star{Points: 6, Tip: 3.5, Valley: 2.4}.Area()
	near(t, "the opening", opening, 25.2, 1e-12)
	r := shape.Rosette{Strand: shape.Strand(opening, 1.03, 1), Width: 2 * 3.5 * 1.03, Overlap: 0.2, Tiers: []float64{8}}
	near(t, "the strand", r.Strand, 26.73468, 1e-9)
	near(t, "its width", r.Width, 7.21, 1e-12)
	pitch := shape.CoilPitch(r.Width, r.Overlap)
	near(t, "the pitch", pitch, 5.768, 1e-12)
	near(t, "the turns", shape.CoilTurns(pitch, 0, 8), 1.38696, 5e-6)
	near(t, "the length", r.Length(), 36.40031997, 1e-9)
	near(t, "the length by the shortcut", math.Pi*64/pitch, 34.85817, 1e-6)
	near(t, "the volume", r.Volume(), 973.15090635, 1e-9)
	near(t, "the outer diameter", r.Diameter(), 23.21, 1e-12)
	if g := shape.Grams(r.Volume(), 1.005); math.Abs(g-0.98) > 0.005 {
		t.Errorf("it weighs %.4f g", g)
	}
	r.Tiers = []float64{8, 4}
	// The upper one would go round 0.69 times: it goes round once, r = 4·φ/2π.
	near(t, "two tiers", r.Length(), 36.40031997+simpson(func(phi float64) float64 { return 4 / (2 * math.Pi) * math.Hypot(1, phi) }, 0, 2*math.Pi), 1e-9)
	near(t, "the outer diameter of two", r.Diameter(), 23.21, 1e-12)
}

// A star tip of 6 points, 11.43 mm at its points and 8.128 at its valleys (0.45 and 0.32 in), coils from the middle to 5.08 (0.2 in) upon each other: 21.59
// wide, 22.86 high. By hand: the star is 6·5.715·4.064·sin 30° = 69.67728 mm², 0.679061 of its circle, π·5.715² = 102.60827. The lower coil would go round
// 0.56 times and the upper one not at all: without more the piece held 0.74 mL, where a star's cone of its size alone holds 0.679061·π·10.795²·22.86/3 =
// 1894.33 mm³. The lower tier is a body from 10.795 to 5.715: 0.679061·π·11.43·(116.532025 + 61.693425 + 32.661225)/3 = 1714.087; the upper a cone:
// 69.67728·11.43/3 = 265.470.
func TestASmallRosetteHoldsWhatItsSizeHolds(t *testing.T) {
	r := shape.Rosette{Strand: shape.Star{Points: 6, Tip: 5.715, Valley: 4.064}.Area(), Width: 11.43, Overlap: 0.2, Tiers: []float64{5.08, 0}}
	near(t, "the strand", r.Strand, 69.67728, 1e-5)
	near(t, "the piece", r.Volume(), 1714.087+265.470, 0.01)
	if cone := 1894.33; r.Volume() < cone {
		t.Errorf("it holds %.1f mm³, less than a cone of its width and height, %v", r.Volume(), cone)
	}
	r.Tiers = []float64{5.08}
	near(t, "one coil, once round", r.Length(), simpson(func(phi float64) float64 { return 5.08 / (2 * math.Pi) * math.Hypot(1, phi) }, 0, 2*math.Pi), 1e-9)
	near(t, "its strand is more than its cone", r.Volume(), r.Strand*r.Length(), 1e-9)
	r.Tiers = []float64{0}
	near(t, "a tip that only stands leaves a cone", r.Volume(), 265.470, 1e-3)
}

// A coil far out is a ring with a hole: its strand counts and no body over the hole. One that ends where it begins goes round once.
func TestACoilThatEndsWhereItBeginsIsARing(t *testing.T) {
	r := shape.Rosette{Strand: 20, Width: 6, Overlap: 0.2, Inner: 12, Tiers: []float64{12, 12}}
	near(t, "two rings", r.Volume(), 2*20*2*math.Pi*12, 1e-9)
	wider := r
	wider.Tiers = []float64{12.0001, 12}
	near(t, "a ring a little wider", wider.Length(), r.Length(), 1e-3)
}

// More to pipe is never less icing: a coil that ends further out, another coil on top.
func TestALargerRosetteHoldsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, o := rapid.Float64Range(2, 20).Draw(t, "strand"), rapid.Float64Range(0, 0.8).Draw(t, "overlap")
		out, more := rapid.Float64Range(0, 40).Draw(t, "ends"), rapid.Float64Range(0, 5).Draw(t, "further")
		made := func(tiers ...float64) float64 {
			return shape.Rosette{Strand: 0.5 * w * w, Width: w, Overlap: o, Tiers: tiers}.Volume()
		}
		if a, b := made(out), made(out+more); b < a*(1-1e-9) {
			t.Fatalf("a coil to %v holds %v, to %v only %v", out, a, out+more, b)
		}
		if a, b := made(out), made(out, max(0, out-w/2)); b < a {
			t.Fatalf("one coil holds %v, two hold %v", a, b)
		}
	})
}

// A coil's length is the integral of the way along it, and a coil between two radii is the rest of the longer one.
func TestACoilIsTheIntegralAlongIt(t *testing.T) {
	for _, c := range [][3]float64{{5.768, 0, 8}, {3, 2, 20}, {10, 0, 1}} {
		b := c[0] / (2 * math.Pi)
		want := simpson(func(r float64) float64 { return math.Sqrt(r*r+b*b) / b }, c[1], c[2])
		near(t, "the coil", shape.CoilLength(c[0], c[1], c[2]), want, 1e-9)
	}
}

// T4: a 9, b 8, c 11, t 12, 8 points at q 0.8, overlap 0.25, both sides of 250, density 1.005.
func TestTheShellBorderOfTheWorkedExample(t *testing.T) {
	s := shape.Shell{Head: 9, HalfWidth: 8, Height: 11, Tail: 12}
	v := s.Volume(shape.Star{Points: 8, Tip: 5, Valley: 4}.Fullness())
	near(t, "a shell", v, 1077.63655, 1e-8)
	near(t, "the step", s.Step(0.25), 15.75, 1e-12)
	n := shape.Fit(250, s.Length(), s.Step(0.25))
	if n != 15 {
		t.Errorf("%d shells stand along a side, want 15", n)
	}
	if g := shape.Grams(v*2*float64(n), 1.005); math.Abs(g-32.5) > 0.05 {
		t.Errorf("both sides weigh %.3f g", g)
	}
	near(t, "one shell's grams", shape.Grams(v, 1.005), 1.08, 0.005)
	// Half an ellipse of 9 by 8 and a triangle of 16 by 12.
	near(t, "what it stands on", s.Footprint(), math.Pi*9*8/2+16*12/2, 1e-12)
	// Half an ellipsoid is two of these heads: (2/3)·π·a·b·c.
	near(t, "a head", shape.Shell{9, 8, 11, 0}.Volume(1), math.Pi*9*8*11/3, 1e-12)
}

// T5: a round tip of 8, radius 5, pitch 14, two of 240. T6: a slot 2 to 4 by 16, amplitude 6, wavelength 20, one of 240.
func TestTheRopeAndTheRuffleOfTheWorkedExample(t *testing.T) {
	rope := shape.RopeRatio(5, 14)
	near(t, "the rope's ratio", rope, 2.45672800, 1e-8)
	v := shape.Disc(4) * 480 * rope
	near(t, "the rope", v, 59274.5366, 1e-8)
	near(t, "its grams", shape.Grams(v, 1.005), 59.6, 0.001)
	near(t, "a straight border", shape.RopeRatio(0, 14), 1, 0)

	ruffle := shape.RuffleRatio(6, 20)
	near(t, "the ruffle's ratio", ruffle, 1.61860363, 1e-8)
	v = shape.Slot(16, 2, 4) * 240 * ruffle
	near(t, "the ruffle", v, 18646.3138, 1e-8)
	near(t, "its grams", shape.Grams(v, 1.005), 18.7, 0.003)
	near(t, "a ribbon laid straight", shape.RuffleRatio(0, 20), 1, 1e-15)
}

func TestARuffleIsTheIntegralAlongItsWave(t *testing.T) {
	for _, a := range []float64{0.5, 3, 6, 15, 60} {
		m := 2 * math.Pi * a / 20
		want := simpson(func(u float64) float64 { c := m * math.Cos(u); return math.Sqrt(1 + c*c) }, 0, 2*math.Pi) / (2 * math.Pi)
		near(t, "the ruffle's ratio", shape.RuffleRatio(a, 20), want, 1e-10)
	}
}

// T7: 250 by 80, 8 flat and 12 of relief, density 1.005. What part a relief has is the mean of its surface.
func TestTheSpoonedTopOfTheWorkedExample(t *testing.T) {
	near(t, "ridges", shape.Spooned(250*80, 8, 12, shape.Ridges), 280000, 1e-12)
	near(t, "their grams", shape.Grams(280000, 1.005), 281.4, 1e-6)
	near(t, "the grams of valleys", shape.Grams(shape.Spooned(250*80, 8, 12, shape.Valleys), 1.005), 241.2, 1e-6)
	near(t, "the part of a sine wave", shape.Ridges, simpson(func(x float64) float64 { return (1 + math.Sin(x)) / 2 }, 0, 2*math.Pi)/(2*math.Pi), 1e-9)
	near(t, "the part of a parabolic valley", shape.Valleys, simpson(func(x float64) float64 { return x * x }, 0, 1), 1e-9)
	near(t, "the part of touching cones", shape.Peaks, 0.2618, 1e-4)
	near(t, "a cone in its square", shape.Peaks, shape.Mound(1, 0.5, 1, shape.Cone), 1e-12)
}

func TestACountIsNeverNegative(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row, piece, step := rapid.Float64Range(-50, 500).Draw(t, "row"), rapid.Float64Range(-5, 60).Draw(t, "piece"), rapid.Float64Range(-5, 60).Draw(t, "step")
		n := shape.Fit(row, piece, step)
		if n < 0 || n > 1e6 {
			t.Fatalf("%d pieces fit", n)
		}
		if n > 0 && float64(n-1)*step+piece > row+1e-6 {
			t.Fatalf("%d pieces of %g every %g reach past %g", n, piece, step, row)
		}
		if n > 0 && n < 1e6 && float64(n)*step+piece <= row-1e-6 {
			t.Fatalf("one more than %d pieces of %g every %g would fit in %g", n, piece, step, row)
		}
	})
	if n := shape.Fit(math.NaN(), 5, 5) + shape.Fit(20, 21, 5); n != 0 {
		t.Errorf("%d pieces fit where none does", n)
	}
}
