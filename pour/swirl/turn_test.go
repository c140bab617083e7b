package swirl

import (
	"math"
	"testing"
)

func anyWhirl() *whirl {
	return &whirl{
		centre: vec2{40, 30}, half: vec2{37, 27}, room: vec2{3, 3}, angle: 5, rim: 0.06, gain: wobble{mean: 1},
		shift: wobble{amp: [2]float64{4, 4}, k: [2]float64{0.05, 0.02}}, sink: wobble{amp: [2]float64{4, 4}, k: [2]float64{0.04, 0.03}},
	}
}

// In its own stretched measure a whirl is a turn: the radius stays, the middle goes round by the angle, what lies further out by less, the
// rim not at all.
func TestAWhirlTurnsEllipses(t *testing.T) {
	w := anyWhirl()
	w.shift, w.sink = wobble{}, wobble{}
	for _, q := range []float64{0.1, 0.5, 0.8, 0.99} {
		y, z := w.move(9, 40+37*q, 30, 1)
		e, f := (y-40)/37, (z-30)/27
		want := 5 * winding(q*q, 0.06)
		sin, cos := math.Sincos(want)
		if !near(e, q*cos, 1e-9) || !near(f, q*sin, 1e-9) {
			t.Errorf("a place at %g of the radius goes to (%.4f, %.4f), want (%.4f, %.4f)", q, e, f, q*cos, q*sin)
		}
	}
	for _, p := range []vec2{{77, 30}, {40, 57}, {79, 59}, {1, 1}, {40, 30}} {
		if y, z := w.move(9, p.y, p.z, 1); y != p.y || z != p.z {
			t.Errorf("(%g, %g) goes to (%g, %g), want it to stay", p.y, p.z, y, z)
		}
	}
}

// A spiral of Archimedes has arms as wide as each other: the angle falls by as much for every tenth of the radius, but in the eye and at the rim.
func TestAWhirlWindsEvenly(t *testing.T) {
	for at, want := range map[float64]float64{0: 1, 1: 0} {
		if got := winding(at, 0.06); !near(got, want, 1e-6) {
			t.Errorf("at %g of the radius it turns %g of the angle, want %g", at, got, want)
		}
	}
	for _, r := range []float64{0.25, 0.35, 0.45, 0.55, 0.65, 0.75} {
		if fall := winding(r*r, 0.06) - winding((r+0.1)*(r+0.1), 0.06); !near(fall, 0.117, 0.008) {
			t.Errorf("from %.2f to %.2f of the radius the angle falls by %.4f", r, r+0.1, fall)
		}
	}
	if eye, rim := winding(0, 0.06)-winding(0.05*0.05, 0.06), winding(0.96*0.96, 0.06)-winding(1, 0.06); eye > 0.02 || rim > 0.025 {
		t.Errorf("in the eye the angle falls by %.4f, at the rim by %.4f", eye, rim)
	}
}

// A softer rim takes from the turning near it, most at the rim, so that what lies across is not torn.
func TestASoftRimTearsLess(t *testing.T) {
	hard, soft := winding(0.9*0.9, 0.06)-winding(1, 0.06), winding(0.9*0.9, 0.3)-winding(1, 0.3)
	if soft > 0.6*hard || !near(winding(0, 0.3), 1, 1e-6) {
		t.Errorf("over the last tenth the angle falls by %.4f at a hard rim and %.4f at a soft one", hard, soft)
	}
}

func TestAWhirlKeepsAreaAndItsWayBackUndoesIt(t *testing.T) {
	w := anyWhirl()
	d := newDice(4)
	for range 400 {
		x, y, z := d.Between(0, 250), d.Between(1, 79), d.Between(1, 59)
		back := func(y, z float64) (float64, float64) { return w.move(x, y, z, -1) }
		if det := determinant(back, y, z, 1e-4); !near(det, 1, 1e-3) {
			t.Fatalf("at (%.1f, %.1f, %.1f) an area becomes %.4f of itself", x, y, z, det)
		}
		a, b := w.move(x, y, z, 1)
		if a, b = w.move(x, a, b, -1); !near(a, y, 1e-9) || !near(b, z, 1e-9) {
			t.Fatalf("(%.1f, %.1f) comes back as (%.3f, %.3f)", y, z, a, b)
		}
	}
}

func TestAWhirlNeverReachesAWall(t *testing.T) {
	w := anyWhirl()
	for x := range 250 {
		c := w.at(float64(x))
		if c.cy-37 < -1e-9 || c.cy+37 > 80+1e-9 || c.cz-27 < -1e-9 || c.cz+27 > 60+1e-9 {
			t.Fatalf("at %d mm its middle is at (%g, %g): a wall is in the way", x, c.cy, c.cz)
		}
	}
}

func TestAWhirlTurnsByItsGain(t *testing.T) {
	w := anyWhirl()
	w.gain = wobble{mean: 0.5}
	if got := w.at(3).angle; got != 2.5 {
		t.Errorf("half of 5 is %g", got)
	}
}

// threeTines is a comb of three tines, to and fro, in a mould of 200 mm by 80 mm of which the tines leave the lowest quarter of 60 mm alone.
func threeTines() *comb {
	return newComb([]tine{{at: 40, pull: 20, deep: 0.25}, {at: 100, pull: -22, deep: 0.25}, {at: 160, pull: 18, deep: 0.25}}, 8, 200, 80, 60)
}

func TestAsMuchBatterGoesBackAsTheTinesTakeAlong(t *testing.T) {
	c := threeTines()
	const n = 20000
	sum := 0.0
	for i := range n {
		shift, so := c.at(200*(float64(i)+0.5)/n, 0, 0)
		sum += shift * 200 / n
		if !near(so, sum-shift*100/n, 0.05) {
			t.Fatalf("up to %.1f mm the tines take %.3f mm² along, want %.3f", 200*(float64(i)+0.5)/n, so, sum)
		}
	}
	if !near(sum, 0, 0.01) {
		t.Errorf("%g mm² more go along than back", sum)
	}
}

func TestEveryTineTakesTheBatterAlongItsWay(t *testing.T) {
	c := threeTines()
	for u, pull := range map[float64]float64{40: 20, 100: -22, 160: 18} {
		shift, _ := c.at(u, 0, 0)
		if shift*pull < 0 || math.Abs(shift) < 0.7*math.Abs(pull) || math.Abs(shift) > 1.3*math.Abs(pull) {
			t.Errorf("the tine at %g mm goes %g mm, the batter %.1f mm", u, pull, shift)
		}
	}
}

func TestACombKeepsAreaAtEveryHeight(t *testing.T) {
	c := threeTines()
	d := newDice(2)
	for range 1500 {
		u, v, z := d.Between(0.5, 199.5), d.Between(0.5, 79.5), d.Between(0, 60)
		back := func(u, v float64) (float64, float64) { return c.move(u, v, z, -1) }
		// four corners of the mesh of half a mm would show as kinks: a wide difference sees the mean
		if det := determinant(back, u, v, 0.02); !near(det, 1, 0.08) {
			t.Fatalf("at (%.1f, %.1f, %.1f) an area becomes %.4f of itself", u, v, z, det)
		}
		a, b := c.move(u, v, z, 1)
		if a, b = c.move(a, b, z, -1); !near(a, u, 0.2) || !near(b, v, 0.2) {
			t.Fatalf("(%.1f, %.1f) comes back as (%.2f, %.2f)", u, v, a, b)
		}
		if _, b = c.move(u, 0, z, 1); b != 0 {
			t.Fatalf("the wall at %.1f mm goes %.3f mm in", u, b)
		}
		if a, _ = c.move(0, v, z, 1); a != 0 {
			t.Fatalf("the end at %.1f mm goes %.3f mm in", v, a)
		}
	}
}

// Below the ends of the tines nothing moves; from the end up the hold grows as t²(3-2t), of t = 1.2 times the part of the way to the surface; it is
// full at 1/1.2 of that way.
func TestACombMovesLessTheDeeper(t *testing.T) {
	c := threeTines()
	full, _ := c.at(100, 0, 0)
	quarter := 15 + 45./4
	for z, part := range map[float64]float64{0: 0, 14.9: 0, quarter: 0.216, 15 + 45./2: 0.648, 48: 0.9602, 60: 1} {
		if _, v := c.move(100, 40, z, 1); !near(v-40, part*full, 0.02*math.Abs(full)) {
			t.Errorf("at %g mm up the batter goes %.3f mm, want %.3f", z, v-40, part*full)
		}
	}
}

// Under the end of a short tine a long one beside it still moves the batter, and what goes along there comes back.
func TestEveryTineEndsAtADepthOfItsOwn(t *testing.T) {
	c := newComb([]tine{{at: 40, pull: 20, deep: 0.6}, {at: 120, pull: 20, deep: 0.1}}, 8, 160, 80, 60)
	first, down := c.depth(30)
	short, _ := c.at(40, first, down)
	long, _ := c.at(120, first, down)
	if long < 5 || short > 0 {
		t.Errorf("at 30 mm up the long tine takes the batter %.2f mm along, the short one %.2f mm", long, short)
	}
	if _, sum := c.at(160, first, down); !near(sum, 0, 1e-6) {
		t.Errorf("at 30 mm up %.3g mm² more go along than come back", sum)
	}
	back := func(u, v float64) (float64, float64) { return c.move(u, v, 30, -1) }
	if det := determinant(back, 118, 4, 0.02); !near(det, 1, 0.05) {
		t.Errorf("at the end wall an area becomes %.4f of itself", det)
	}
}

// A tine that leans and bends is as far aside at the floor and half way down as it says, and there it takes along less of what lies beside it.
func TestATineLeansAndRunsOutToAPoint(t *testing.T) {
	c := newComb([]tine{{at: 80, pull: 20, deep: -1, taper: 0.8, lean: 12, bend: -10}}, 6, 160, 80, 60)
	for z, want := range map[float64]float64{60: 80, 30: 76, 0: 92} {
		first, down := c.depth(z)
		peak, most := 0.0, 0.0
		for u := 50.0; u < 110; u += 0.25 {
			if v, _ := c.at(u, first, down); v > most {
				peak, most = u, v
			}
		}
		if !near(peak, want, 0.6) {
			t.Errorf("at %g mm up it stands at %.2f mm, want %g", z, peak, want)
		}
	}
	wide := func(z, at float64) float64 {
		first, down := c.depth(z)
		beside, _ := c.at(at+8, first, down)
		far, _ := c.at(10, first, down)
		here, _ := c.at(at, first, down)
		return (beside - far) / (here - far)
	}
	if top, low := wide(60, 80), wide(0, 92); low > 0.8*top {
		t.Errorf("beside it %.2f of what it takes along goes along at the surface, and %.2f at the floor", top, low)
	}
}

// A comb that is drawn along the loaf is the same comb with the two ways over the mould exchanged.
func TestACombAlongTheLoafIsOneAcrossItTurned(t *testing.T) {
	across, along := threeTines(), threeTines()
	along.alongX = true
	d := newDice(2)
	for range 100 {
		u, v, z := d.Between(0, 200), d.Between(0, 80), d.Between(15, 60)
		a, b := across.move(u, v, z, 1)
		if e, f := along.move(v, u, z, 1); e != b || f != a {
			t.Fatalf("(%.1f, %.1f) goes to (%.2f, %.2f) across and to (%.2f, %.2f) along", u, v, a, b, f, e)
		}
	}
}

// smooth is 3t² - 2t³: level at both ends, and even about its middle.
func TestTheSmoothRise(t *testing.T) {
	for at, want := range map[float64]float64{-1: 0, 0: 0, 0.25: 0.15625, 0.5: 0.5, 0.75: 0.84375, 1: 1, 3: 1} {
		if got := smooth(at); !near(got, want, 1e-12) {
			t.Errorf("at %g it is %g, want %g", at, got, want)
		}
	}
}
