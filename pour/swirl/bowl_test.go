package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// Bowls carry the unit square onto itself wherever the eye lies: of a tenth of the lip and a tenth of the time comes a hundredth.
func TestBowlsKeepArea(t *testing.T) {
	for _, eye := range []float64{0.3, 0.5} {
		b := &bowl{eye: eye, curls: someCurls()}
		const n = 240
		var got [100]float64
		for i := range n {
			for k := range n {
				side, when := b.nested(50, (float64(i)+0.5)/n, (float64(k)+0.5)/n)
				got[10*min(int(10*side), 9)+min(int(10*when), 9)] += 100. / (n * n)
			}
		}
		for i, v := range got {
			if !near(v, 1, 0.1) {
				t.Errorf("eye at %g: of part %d comes %.3f", eye, i, v)
			}
		}
	}
}

// One end of the lip lies all along the closed end of a bowl, at the left, and at its rims, the other at its eye in the opening; where the lip lies there
// and back the first does.
func TestABowlHasAWholeSkin(t *testing.T) {
	b := &bowl{eye: 0.4}
	for i := range 41 {
		up := float64(i) / 40
		if side, _ := b.nested(50, 0, up); !near(side, 0, 1e-3) {
			t.Errorf("%.3f up, the closed end is of %.4f of the lip", up, side)
		}
		deep, _ := b.nested(50, 0.3, up)
		out, _ := b.nested(50, 0.6, up)
		if up > 0 && up < 1 && !(out > deep) {
			t.Errorf("%.3f up, what lies further out left the lip at %.3f and what lies deeper at %.3f", up, out, deep)
		}
	}
	for up, want := range map[float64]float64{0: 0, 0.4: 1, 1: 0} {
		if side, _ := b.nested(50, 1, up); !near(side, want, 1e-3) {
			t.Errorf("%g up, in the opening lies %.4f of the lip, want %g", up, side, want)
		}
	}
	b.twice = true
	if side, _ := b.nested(50, 1, 0.4); !near(side, 0, 2e-3) {
		t.Errorf("there and back, the eye is of %.4f of the lip, want its first end", side)
	}
	b.curls = &curls{many: 1}
	if still, _ := b.nested(50, 0.7, 0.2); !near(still, func() float64 { b.curls = nil; v, _ := b.nested(50, 0.7, 0.2); return v }(), 1e-6) {
		t.Errorf("curls that do not turn change it to %.4f", still)
	}
}

// By hand: at the rim of a round heap nothing is left of it, at its middle all; half way in, t = 15/16·(1 - 1/6 + 1/80) = 203/256 of its half lies outside.
func TestWhatIsShownOfABowl(t *testing.T) {
	c := 1 - 203./256*203./256
	half := 1 - 203./256 + c*c*0.5*(203./256/c+math.Atanh(203./256))
	for in, want := range map[float64]float64{0: 0, 0.5: half, 1: 1} {
		if got := shown(in); !near(got, want, 1e-3) {
			t.Errorf("%g in from the rim the lip is seen at %.4f, want %.4f", in, got, want)
		}
	}
}

// A pot is turned between two ways by about two fifths of it, so that every part has its turn; one of so few ways that it cannot be is not.
func TestStridesReachEveryPart(t *testing.T) {
	for ways, want := range map[int]int{12: 5, 7: 3, 10: 3, 3: 0, 1: 0} {
		if got := strides(ways); got != want {
			t.Errorf("of %d ways it is turned by %d, want %d", ways, got, want)
		}
	}
}

// Every colour comes through the whole height: of none is much more poured in the one half than in the other, as it would be were the pot emptied from
// side to side.
func TestColoursComeThroughTheWholeHeight(t *testing.T) {
	const n = 48
	uneven := 0.0
	for seed := range int64(4) {
		s := mustPour(t, loaf(script.Pot, seed)).stream
		var halves [8][2]float64
		for i := range n {
			for k := range n {
				halves[s.leaves((float64(i)+0.5)/n, (float64(k)+0.5)/n, s.surge.mean)][2*k/n]++
			}
		}
		for _, h := range halves {
			if all := h[0] + h[1]; all > 0 {
				uneven = max(uneven, math.Abs(h[0]-h[1])/all)
			}
		}
	}
	if uneven > 0.5 {
		t.Errorf("of one colour %.2f more is poured in one half than in the other", uneven)
	}
}

// A ribbon that lies as bowls is neither narrow nor flat and keeps off the walls; more of them lie so the fuller the mould is, and those of the last way
// there and back.
func TestWhereBowlsLie(t *testing.T) {
	low, high := 0, 0
	for seed := range int64(4) {
		b := newBuilder(loaf(script.Pot, seed))
		b.pour()
		var r *ribbon
		for _, o := range b.ops {
			if o.slab != nil {
				r, _ = o.slab.fill.(*ribbon)
			}
			if o.spread == nil || r == nil || r.bowl == nil {
				continue
			}
			if row := o.spread.rows[0]; row.half < bowlLeast*b.Box.W-1e-9 || row.half > bowlMost*b.Box.W+1e-9 || math.Abs(row.line.mean/b.Box.W-0.5) > 0.5-bowlWall+1e-9 {
				t.Errorf("%d: a bowl of %.1f mm to either side lies at %.1f mm", seed, row.half, row.line.mean)
			}
			if r.bowl.twice != (o.act >= b.last) {
				t.Errorf("%d: in act %d of %d the lip lies there and back: %v", seed, o.act, b.last, r.bowl.twice)
			}
			if o.spread.top < 0.4*b.Box.H {
				low++
			} else {
				high++
			}
			r = nil
		}
	}
	if high < 2*low || high < 20 {
		t.Errorf("%d bowls lie low, %d high", low, high)
	}
}

// Of a pot whose middle line is at the lip, one half of which is of one colour and the other of many, the broad half lies outermost.
func TestABowlTurnsItsBroadEndOut(t *testing.T) {
	for seed := range int64(6) {
		s := mustPour(t, loaf(script.Pot, seed)).stream
		for k := range 8 {
			by, runs := float64(k), [2]int{}
			for end := range runs {
				for at := range lipPlaces {
					side := float64(at) / lipPlaces
					if end == 1 {
						side = 1 - side
					}
					if s.leaves(side, 0.9, by) != s.leaves(float64(end), 0.9, by) {
						break
					}
					runs[end]++
				}
			}
			if got := s.turnsOver(0.9, by); got != (runs[1] > runs[0]) {
				t.Errorf("%d, %d: it turns over: %v, one colour reaches %v places from its ends", seed, k, got, runs)
			}
		}
	}
}
