package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// woken is the broad wakes of one comb.
func woken(t *testing.T, seed int64) *wakes {
	t.Helper()
	r := poured(script.Combed, 1)
	r.Script.Brief.Seed = seed
	b := newBuilder(r)
	b.level = 60
	b.curl(broadly())
	return b.ops[0].wakes
}

// A curl turns a round of batter at every height about an upright line: areas seen from above are kept, what lies outside stays, the floor stays, and
// the way back leads back.
func TestCurlsTurnRoundsOfBatterAndLeaveTheRest(t *testing.T) {
	c := woken(t, 3)
	if len(c.list) < 4 {
		t.Fatalf("%d wakes", len(c.list))
	}
	for i, at := range c.list {
		if at.x-at.half < 0 || at.y-at.half < 0 || at.x+at.half > 200 || at.y+at.half > 80 {
			t.Errorf("curl %d at (%.1f, %.1f) reaches %.1f mm, past a wall", i, at.x, at.y, at.half)
		}
		if x, y := at.turn(at.x+at.half+0.01, at.y, 1, 1); x != at.x+at.half+0.01 || y != at.y {
			t.Errorf("outside curl %d batter goes to (%.2f, %.2f)", i, x, y)
		}
		px, py := at.x+0.4*at.half, at.y-0.2*at.half
		if x, y := c.move(px, py, 0, 1); math.Hypot(x-px, y-py) > 1e-9 {
			t.Errorf("curl %d takes what lies on the floor %.2f mm along", i, math.Hypot(x-px, y-py))
		}
		x, y := c.move(px, py, 60, 1)
		if far := math.Hypot(x-px, y-py); far < 0.05*at.half || !near(math.Hypot(x-at.x, y-at.y), math.Hypot(px-at.x, py-at.y), 1e-9) {
			t.Errorf("curl %d takes the batter %.2f mm, and not round", i, far)
		}
		if x, y = c.move(x, y, 60, -1); math.Hypot(x-px, y-py) > 1e-9 {
			t.Errorf("curl %d: the way back misses by %g mm", i, math.Hypot(x-px, y-py))
		}
		turned := func(x, y float64) (float64, float64) { return c.move(x, y, 45, 1) }
		if det := determinant(turned, px, py, 1e-4); !near(det, 1, 1e-4) {
			t.Errorf("curl %d makes an area %.5f of itself", i, det)
		}
	}
}

// Curls lie apart, so that it does not matter which is turned first, and turn one way and the other.
func TestCurlsLieApart(t *testing.T) {
	left, all := 0, 0
	for seed := range int64(8) {
		c := woken(t, seed)
		for i := range c.list {
			if all++; c.list[i].angle > 0 {
				left++
			}
			for k := range i {
				if gap := math.Hypot(c.list[i].x-c.list[k].x, c.list[i].y-c.list[k].y) - c.list[i].half - c.list[k].half; gap < 0 {
					t.Errorf("seed %d: wakes %d and %d overlap by %.2f mm", seed, k, i, -gap)
				}
			}
		}
	}
	if 4*left < all || 4*left > 3*all {
		t.Errorf("%d of %d wakes turn to the left", left, all)
	}
}
