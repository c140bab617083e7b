package relief

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// A later swirl presses down what stands well inside it, and what is beyond its foot it leaves alone.
func TestASwirlLiesOverTheOneBefore(t *testing.T) {
	s := pipedSwirl{radius: 16, high: 1, turns: 2.8, lap: 0.2, oval: 1, cos: 1, room: [4]float64{16, 16, 16, 16}}
	const in, out = 0.6, 1.2
	alone, z := s.over(0, in*16, 0, in, 0), s.over(0.9, in*16, 0, in, 0)
	if z > alone+0.15 || z < alone {
		t.Errorf("well inside it stands %.3f high on 0.9, alone %.3f", z, alone)
	}
	if z := s.over(0.9, out*16, 0, out, 0); z != 0.9 {
		t.Errorf("beyond its foot 0.9 has become %.3f", z)
	}
}

// The outer round of a later swirl rides up on what it lies on, by part of how high that stands; on nothing it lies as it would alone, and far within its
// rounds do not feel it.
func TestTheOuterRoundRidesUp(t *testing.T) {
	s := pipedSwirl{radius: 16, high: 1, turns: 3.3, lap: 0.2, oval: 1, cos: 1, room: [4]float64{16, 16, 16, 16}}
	on := func(z, u float64) float64 { return s.over(z, u*16, 0, u, 0) }
	const outer, inner = 0.8, 0.3
	if alone := on(0, outer); alone < 0.1 || !alike(on(alone/2, outer), alone*(1+swirlRides/2)) {
		t.Errorf("alone it stands %.3f high, on half of that %.3f", alone, on(alone/2, outer))
	}
	if alone := on(0, inner); !alike(on(alone/2, inner), alone) {
		t.Errorf("within it stands %.3f high alone, on half of that %.3f", alone, on(alone/2, inner))
	}
}

// Where a strand is passed over at little cost it does not lie, at any size, turn and unevenness.
func TestNoStrandIsPassedOverWhereItLies(t *testing.T) {
	d := script.NewDice(7, 1)
	passed := 0
	for range 20000 {
		s := pipedSwirl{turns: d.Between(3, 3.6), lap: d.Between(0, 0.5), uneven: [2]float64{d.Between(0, 2*math.Pi), d.Between(0, 2*math.Pi)}}
		u, turn := d.Between(0, 1.2), d.Between(0, s.turns)
		w, ok := s.winding(turn)
		if !s.clear(u, turn) {
			continue
		}
		if passed++; ok && math.Abs(u-w.out) < w.half {
			t.Fatalf("%.3f out at %.2f turns: the strand lies %.3f out, %.3f to each side, and is passed over", u, turn, w.out, w.half)
		}
	}
	if passed < 5000 {
		t.Errorf("%d of 20000 places were passed over", passed)
	}
}

// A swirl rises in rounds: from its foot inwards its strand is climbed over at least twice more, each time higher.
func TestASwirlRisesInRounds(t *testing.T) {
	s := pipedSwirl{radius: 16, high: 1, turns: 3.3, lap: 0.2}
	for angle := -0.45; angle < 0.5; angle += 0.1 {
		backs, last, rising := 0, 0.0, false
		for u := 1.1; u > 0.05; u -= 0.005 {
			z := s.rounds(u, angle)
			steep := (z - last) / 0.005
			if steep > 1.5 && !rising {
				backs, rising = backs+1, true
			} else if steep < 0.4 {
				rising = false
			}
			last = z
		}
		if backs < 3 {
			t.Errorf("at %.2f turns it climbs %d times from foot to middle", angle, backs)
		}
	}
}

// Where a later swirl shows, the flank of one before it lies under it: a knife finds that deeper in.
func TestAKnifeFindsTheFlankUnderTheLaterSwirl(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	under, all := 0, 0
	for x := 1.0; x < p.long; x += 2 {
		for y := 1.0; y < p.wide; y += 2 {
			_, top, _ := p.over(x, y)
			_, foot, _ := p.under(x, y, 0.05)
			all++
			if foot != top {
				under++
			}
		}
	}
	if part := float64(under) / float64(all); part < 0.03 || part > 0.5 {
		t.Errorf("at %.3f of all places another swirl lies under the one that shows, want some of them", part)
	}
}

// A cut is one mass: seams between strands are faint and few, and pockets of air are rare.
func TestACutIsOneMassWithFaintSeams(t *testing.T) {
	s := pipedSwirl{radius: 16, high: 1, turns: 3.3, lap: 0.2, phase: 0.3}
	seams, pockets, all := 0, 0, 0
	for angle := -0.5; angle < 0.5; angle += 0.05 {
		for u := 0.0; u < 0.9; u += 0.02 {
			top := s.rounds(u, angle)
			for up := 0.02; up < top-0.05; up += 0.02 {
				tone := s.cutAt(u, angle, up)
				if tone < 0.4 || tone > 1.05 {
					t.Fatalf("the cut is %.2f bright", tone)
				}
				all++
				if tone < 0.85 {
					pockets++
				} else if tone < 0.975 {
					seams++
				}
			}
		}
	}
	if part := float64(seams) / float64(all); part < 0.01 || part > 0.15 {
		t.Errorf("%.3f of the cut are seams", part)
	}
	if part := float64(pockets) / float64(all); part > 0.03 {
		t.Errorf("%.3f of the cut are pockets of air", part)
	}
}

func alike(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
