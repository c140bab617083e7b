package relief

import "testing"

// A knife that goes from one swirl into another of the same colour shows a faint seam there, and none within one.
func TestASeamShowsWhereTwoSwirlsMeet(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	met, missed, seams, last := 0, 0, 0, false
	_, before, _ := p.under(100, 0.5, 0.1)
	for y := 1.0; y < p.wide; y += 0.05 {
		_, s, _ := p.under(100, y, 0.1)
		near := p.meets(s, 100, y, 0.1)
		if s != before {
			met++
			if !near && !last {
				missed++
			}
		}
		if near {
			seams++
		}
		before, last = s, near
	}
	if part := 0.05 * float64(seams) / p.wide; met < 2 || missed > 1 || part > 0.1 {
		t.Errorf("%d times another swirl is met, %d of them without a seam, and %.3f of the way is seam", met, missed, part)
	}
}

// The highest tip ends below the upper edge of a picture.
func TestThereIsAirOverTheHighestTip(t *testing.T) {
	f := New(full(true, 1))
	p := f.units[0].form.(*piped)
	most := 0.0
	for k := range p.swirls {
		for x := -5.0; x < 5; x += 0.2 {
			for y := -5.0; y < 5; y += 0.2 {
				z, _ := p.at(p.swirls[k].x+x-p.long/2, p.swirls[k].y+y-p.wide/2)
				most = max(most, z)
			}
		}
	}
	if over := p.high() - most; over < 0.5 || over > 3 {
		t.Errorf("there are %.2f mm over the highest tip", over)
	}
}
