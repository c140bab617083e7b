package relief

import (
	"image"
	"math"
	"testing"

	"pourbench/pour/script"
)

// A later swirl hides what it is piped over, rounds and ridges and all; beyond its foot it leaves all as it was, and so it does where a neighbour stands
// much higher.
func TestASwirlHidesTheOneBefore(t *testing.T) {
	s := lone()
	over := func(z, mean, u float64) (float64, bool) {
		h, mine := s.over(heap{z, mean}, u*16, 0, u, 0)
		return h.z, mine
	}
	low, _ := over(0.35, 0.4, 0.6)
	if high, mine := over(0.45, 0.4, 0.6); !mine || !alike(high, low) {
		t.Errorf("over a ridge it stands %.3f high, over a furrow %.3f", high, low)
	}
	if z, mine := over(0.9, 0.9, 1.2); z != 0.9 || mine {
		t.Errorf("beyond its foot 0.9 has become %.3f", z)
	}
	if z, mine := over(1.9, 1.9, 0.9); z != 1.9 || mine {
		t.Errorf("what stands 1.9 high at its foot has become %.3f", z)
	}
}

// The outer round of a later swirl rides up on what it lies on; on nothing it lies as it would alone, and far within its rounds do not feel it.
func TestTheOuterRoundRidesUp(t *testing.T) {
	s := lone()
	on := func(z, u float64) float64 {
		h, _ := s.over(heap{z, z}, u*16, 0, u, 0)
		return h.z
	}
	const outer, inner = 0.7, 0.25
	if alone := on(0, outer); on(0.2, outer) < alone+0.2*swirlRides {
		t.Errorf("alone it stands %.3f high, on 0.2 %.3f", alone, on(0.2, outer))
	}
	if alone := on(0, inner); !alike(on(0.2, inner), alone) {
		t.Errorf("within it stands %.3f high alone, on 0.2 %.3f", alone, on(0.2, inner))
	}
}

// lone is a swirl by itself.
func lone() pipedSwirl {
	s := pipedSwirl{radius: 16, high: 1, turns: 2.6, lap: 0.2, way: 1, roll: 1, oval: 1, cos: 1, room: [4]float64{16, 16, 16, 16}}
	s.level()
	return s
}

// Where a strand is passed over at little cost it does not lie, at any size, turn and unevenness.
func TestNoStrandIsPassedOverWhereItLies(t *testing.T) {
	d := script.NewDice(7, 1)
	passed := 0
	for range 20000 {
		s := pipedSwirl{turns: d.Between(turnsLeast, turnsMost), lap: d.Between(0, 0.5), uneven: [2]float64{d.Between(0, 2*math.Pi), d.Between(0, 2*math.Pi)}}
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

// A swirl rises in rounds: from its foot inwards its strand is climbed over two or three times, each time higher.
func TestASwirlRisesInRounds(t *testing.T) {
	s, all := lone(), 0
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
		if all += backs; backs < 1 {
			t.Errorf("at %.2f turns it does not climb from foot to middle", angle)
		}
	}
	if all < 20 {
		t.Errorf("at ten places about it, it climbs %d times in all, want two or three each", all)
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

// A cut is one mass: rounds differ by a breath that no line divides, and slits of air are small and few.
func TestACutIsOneMassWithoutLines(t *testing.T) {
	s := pipedSwirl{radius: 16, high: 1, turns: 3.3, lap: 0.2, way: 1, roll: 1, phase: 0.3}
	const slit = 0.91
	lines, slits, all, least, most := 0, 0, 0, 2.0, 0.0
	for angle := -0.5; angle < 0.5; angle += 0.05 {
		for u := 0.0; u < 0.9; u += 0.02 {
			top, last := s.rounds(u, angle), 0.0
			for up := 0.02; up < top-0.05; up += 0.01 {
				tone := s.cutAt(u, angle, up, 20)
				if tone < 0.6 || tone > 1.1 {
					t.Fatalf("the cut is %.2f bright", tone)
				}
				all++
				if tone < slit {
					slits++
				} else {
					least, most = min(least, tone), max(most, tone)
					if last > slit && math.Abs(tone-last) > 0.025 {
						lines++
					}
				}
				last = tone
			}
		}
	}
	if part := float64(lines) / float64(all); part > 0.01 {
		t.Errorf("at %.3f of the cut its tone leaps", part)
	}
	if most-least < 0.04 {
		t.Errorf("rounds differ by %.3f only", most-least)
	}
	if part := float64(slits) / float64(all); part < 0.0006 || part > 0.02 {
		t.Errorf("%.4f of the cut are slits of air", part)
	}
}

// The folds of a rope lie about its middle: on the way out from there light and dark go by turns, less far apart than a round is high.
func TestACutShowsTheFoldsOfARope(t *testing.T) {
	s, turns, dark, n := lone(), 0, 0.0, 0
	for k := range 60 {
		sin, cos := math.Sincos(0.7 * float64(k))
		last := 0.0
		for far := 0.2; far < 8; far += 0.2 {
			v := s.fold(far*cos, far*sin, 0.04*float64(k))
			if last*v < 0 {
				turns++
			}
			last, dark, n = v, dark+v, n+1
		}
	}
	if each := float64(turns) / 60; each < 2.5 || each > 8 {
		t.Errorf("on 8 mm from the middle light and dark change %.1f times", each)
	}
	if mean := dark / float64(n); math.Abs(mean) > 0.2 {
		t.Errorf("folds are %.2f bright in the mean, want nothing", mean)
	}
}

// A hand that comes back goes round the other way: swirls of every other row are those of the others seen in a mirror.
func TestEveryOtherRowIsWoundTheOtherWay(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	for k := range p.swirls {
		if want := 1 - 2*float64(k/p.columns%2); p.swirls[k].way != want {
			t.Errorf("swirl %d is wound %g, want %g", k, p.swirls[k].way, want)
		}
	}
	one, other := lone(), lone()
	other.way, one.phase, other.phase = -1, 0.3, 0.3
	same := 0
	for x := -12.0; x < 13; x += 2 {
		for y := 1.0; y < 13; y += 2 {
			at := func(s *pipedSwirl, y float64) float64 {
				u, angle := s.lies(x, y)
				return s.at(x, y, u, angle)
			}
			if !alike(at(&one, y), at(&other, -y)) {
				t.Fatalf("at %g, %g it is %.3f high, in the mirror %.3f", x, y, at(&one, y), at(&other, -y))
			}
			if alike(at(&one, y), at(&one, -y)) {
				same++
			}
		}
	}
	if same > 30 {
		t.Errorf("at %d of 78 places a swirl is its own mirror", same)
	}
}

// How far inside its edge a place of a cut lies is taken straight through, beside an upright edge too, and the shade of the rim is gone further in.
func TestTheRimOfACutGoesByTheNearestEdge(t *testing.T) {
	f := New(full(true, 1))
	v := f.Face(100, 110)
	c := v.column(200, 200, image.Rect(0, 0, 200, 200))
	c.edge = map[int]float64{}
	for k := range 200 { // a step of 10 mm at 40 mm across, level on both sides
		c.edge[k] = 10
		if k >= 100 {
			c.edge[k] = 20
		}
	}
	for _, want := range []struct{ across, up, inside float64 }{{50, 19, 1}, {30, 8.5, 1.5}, {41, 13, 1.4}, {50, 5, rimLeast + rimMore}} {
		b := c.brink(want.across, map[bool]float64{true: 20, false: 10}[want.across >= 40])
		if got := b.inside(want.up); math.Abs(got-want.inside) > 0.02 {
			t.Errorf("%.0f mm across and %.1f up it is %.2f mm inside, want %.2f", want.across, want.up, got, want.inside)
		}
	}
	b := c.brink(50, 20)
	if edge, deep := b.shade(20), b.shade(15); edge > deep-0.8*rimDark || deep < 1-cloudTone {
		t.Errorf("the edge is %.2f bright, deep inside it is %.2f", edge, deep)
	}
	if at, off := smeared(0.3, 0), smeared(0.3, smearMM); at != smearShade || off != 0.3 {
		t.Errorf("a dark skin is %.2f bright at the edge and %.2f past the smear", at, off)
	}
}

func alike(a, b float64) bool { return math.Abs(a-b) < 1e-9 }
