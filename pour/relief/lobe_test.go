package relief

import "testing"

// A swirl that is piped over a neighbour hides it up to its own rim, however high that stands, leaves it alone beyond, and further in presses it down to
// its own height.
func TestASwirlLiesOverTheOneBefore(t *testing.T) {
	s := pipedSwirl{radius: 16, high: 1, wind: 1, lap: 0.2, oval: 1, cos: 1}
	rim := swirlRim + swirlFat*s.lap
	for _, before := range []float64{0, 0.3, 0.7} {
		in, out := (rim-0.06)*s.radius, (rim+0.04)*s.radius
		if z := s.over(before, in, 0, rim-0.06, 0); z < before+0.01 {
			t.Errorf("inside its rim it stands %.3f high on %.1f", z, before)
		}
		if z := s.over(before, out, 0, rim+0.04, 0); z != before {
			t.Errorf("beyond its rim %.1f has become %.3f", before, z)
		}
		far := rim - swirlPress - 0.01
		if z, alone := s.over(before, far*s.radius, 0, far, 0), s.over(0, far*s.radius, 0, far, 0); z > alone+0.1 {
			t.Errorf("well inside it stands %.3f high on %.1f, alone %.3f", z, before, alone)
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
	if part := float64(under) / float64(all); part < 0.05 || part > 0.5 {
		t.Errorf("at %.3f of all places another swirl lies under the one that shows, want some of them", part)
	}
}

// A cut shows seams between strands, finer than the strands themselves, and their middles bright.
func TestACutShowsStrandsWithSeams(t *testing.T) {
	dark, all := 0, 0
	for out := 0.0; out < 4; out += 0.02 {
		for deep := 0.0; deep < 20; deep += 0.1 {
			tone := lobeAt(0.7, out, deep, 0.3)
			if tone < 0.4 || tone > 1.05 {
				t.Fatalf("the cut is %.2f bright", tone)
			}
			all++
			if tone < 0.945 {
				dark++
			}
		}
	}
	if part := float64(dark) / float64(all); part < 0.02 || part > 0.2 {
		t.Errorf("%.3f of the cut are seams", part)
	}
}
