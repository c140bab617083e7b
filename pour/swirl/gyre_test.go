package swirl

import (
	"math"
	"testing"
)

func anyGyre() *gyre {
	return &gyre{
		at: vec2{36, 32}, half: vec2{30, 26}, width: 80, height: 60, angle: 4, gain: wobble{mean: 1}, swell: wobble{mean: 1},
		shift: wobble{amp: [2]float64{4, 4}, k: [2]float64{0.05, 0.02}}, sink: wobble{amp: [2]float64{4, 4}, k: [2]float64{0.04, 0.03}},
	}
}

// In a time every place of a level line of sin Y sin Z goes the same way on along it: the closed form is the flow, followed in small steps
// by Heun's method, for the time the middle of the cell takes to turn by that angle.
func TestAGyreIsAFlowAlongLevelLines(t *testing.T) {
	g := anyGyre()
	g.shift, g.sink, g.angle = wobble{}, wobble{}, 0.4
	r := g.cut(9)
	level := func(y, z float64) float64 { return math.Sin((y-6)/60*math.Pi) * math.Sin((z-6)/52*math.Pi) } // the cell lies from 6 to 66 and from 6 to 58 mm
	flow := func(y, z float64) (float64, float64) {
		sy, cy := math.Sincos((y - 6) / 60 * math.Pi)
		sz, cz := math.Sincos((z - 6) / 52 * math.Pi)
		return 60 / math.Pi * sy * cz, -52 / math.Pi * cy * sz
	}
	d := newDice(3)
	for range 100 {
		y, z := d.Between(7, 65), d.Between(7, 57)
		toY, toZ := r.turn(y, z, 1)
		c := level(y, z)
		if !near(level(toY, toZ), c, 1e-6) {
			t.Fatalf("(%.1f, %.1f) on the level %.4f goes to %.4f", y, z, c, level(toY, toZ))
		}
		// the time to an amplitude φ is ∫ dφ/√(1-κ² sin² φ)
		const steps = 400
		phi, k2, time := 0.4*falling(c), 1-c*c, 0.0
		for i := range steps {
			sin := math.Sin(phi * (float64(i) + 0.5) / steps)
			time += phi / steps / math.Sqrt(1-k2*sin*sin)
		}
		h := time / steps
		for range steps {
			ay, az := flow(y, z)
			by, bz := flow(y+h*ay, z+h*az)
			y, z = y+h*(ay+by)/2, z+h*(az+bz)/2
		}
		if !near(toY, y, 1e-3) || !near(toZ, z, 1e-3) {
			t.Fatalf("it goes to (%.4f, %.4f), the flow to (%.4f, %.4f)", toY, toZ, y, z)
		}
	}
}

// About its middle a gyre turns in ellipses, against the clock where its angle is positive; at and beyond its walls nothing moves, and
// towards them ever less, so that no rim shows.
func TestAGyreTurnsItsMiddleMostAndItsWallsNotAtAll(t *testing.T) {
	g := anyGyre()
	g.shift, g.sink, g.angle = wobble{}, wobble{}, math.Pi/2
	if y, z := g.move(9, 36.3, 32, 1); !near(y, 36, 0.01) || !near(z, 32+0.3*26/30, 0.01) {
		t.Errorf("0.3 mm right of the middle the batter goes to (%.3f, %.3f), want 0.26 mm over it", y, z)
	}
	for _, p := range []vec2{{6, 30}, {66, 40}, {30, 58}, {70, 30}, {1, 59}} {
		if y, z := g.move(9, p.y, p.z, 1); y != p.y || z != p.z {
			t.Errorf("(%g, %g) goes to (%g, %g), want it to stay", p.y, p.z, y, z)
		}
	}
	far := func(in float64) float64 {
		y, z := g.move(9, 36, 6+in, 1)
		return math.Hypot(y-36, z-6-in)
	}
	if a, b := far(0.1), far(1); b > 2.5 || a > b/10 {
		t.Errorf("0.1 mm from its wall the batter goes %.4f mm, 1 mm from it %.4f", a, b)
	}
}

func TestAGyreKeepsAreaAndItsWayBackUndoesIt(t *testing.T) {
	g := anyGyre()
	d := newDice(4)
	for range 300 {
		x, y, z := d.Between(0, 250), d.Between(1, 79), d.Between(1, 59)
		back := func(y, z float64) (float64, float64) { return g.move(x, y, z, -1) }
		if det := determinant(back, y, z, 1e-2); !near(det, 1, 0.02) {
			t.Fatalf("at (%.1f, %.1f, %.1f) an area becomes %.4f of itself", x, y, z, det)
		}
		a, b := g.move(x, y, z, 1)
		if a, b = g.move(x, a, b, -1); !near(a, y, 1e-3) || !near(b, z, 1e-3) {
			t.Fatalf("(%.1f, %.1f) comes back as (%.4f, %.4f)", y, z, a, b)
		}
	}
}

// A cell that would go through a wall ends at it; one squeezed to nothing moves nothing.
func TestAGyreEndsAtTheWalls(t *testing.T) {
	g := anyGyre()
	g.shift, g.sink = wobble{mean: 30}, wobble{mean: -20}
	if r := g.cut(9); r.y0 != 36 || r.z0 != 0 || !near(r.wide, 44, 1e-9) || !near(r.high, 38, 1e-9) {
		t.Errorf("the cell lies from (%g, %g), %g mm wide and %g mm high", r.y0, r.z0, r.wide, r.high)
	}
	g.shift.mean = 72 // all but 2 mm of it is in the wall
	if y, z := g.move(9, 79, 10, 1); y != 79 || z != 10 {
		t.Errorf("in a cell of no width (79, 10) goes to (%g, %g)", y, z)
	}
}

func TestTheQuickAngleOfACosineAgreesWithTheLibrary(t *testing.T) {
	for i := range 2001 {
		if c := float64(i)/1000 - 1; !near(acos(c), math.Acos(c), 3e-8) {
			t.Fatalf("of %g it is %.9f, want %.9f", c, acos(c), math.Acos(c))
		}
	}
}
