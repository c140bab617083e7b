package relief

import (
	"math"
	"testing"
)

// A knife that goes from one swirl into another of the same colour shows a faint seam there, and none within one.
func TestASeamShowsWhereTwoSwirlsMeet(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	met, missed, seams, last := 0, 0, 0, false
	top, _, _ := p.over(100, 0.5)
	before, _ := p.pressed(100, 0.5, 0.1, top)
	for y := 1.0; y < p.wide; y += 0.05 {
		z, _, _ := p.over(100, y)
		s, _ := p.pressed(100, y, 0.1, z)
		near := p.meets(s, 100, y, 0.1, z, pipedMeets)
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

// Inside a swirl nothing is of another one below what shows there but the rim of one that stood as high or higher than it was pushed aside: no disc of
// another colour lies at the foot of a cut.
func TestALowRimUnderTheNextSwirlIsPushedAside(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	rims := 0
	for x := 5.0; x < p.long-5; x += 2.3 {
		for y := 5.0; y < p.wide-5; y += 2.3 {
			z, top, _ := p.over(x, y)
			for up := 0.05 * z; up < z; up += 0.1 * z {
				stood, under, _ := p.under(x, y, up)
				of, _ := p.pressed(x, y, up, z)
				if under != top && stood < pipedPushed*z {
					rims++
				} else if of != under {
					t.Fatalf("at %.1f, %.1f a height of %.2f of %.2f is not of what stood %.2f there", x, y, up, z, stood)
				}
				if of != top && stood < pipedPushed*z {
					t.Fatalf("at %.1f, %.1f a rim of %.2f shows under %.2f of the next", x, y, stood, z)
				}
			}
		}
	}
	if rims < 20 {
		t.Errorf("%d places had a low rim under them", rims)
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

// A wire draws the ridges of the nozzle flat: along a cut the icing is as thick as beside it in the mean, and bends by a third less.
func TestAWireDrawsRidgesFlat(t *testing.T) {
	r := full(true, 1)
	p := newPiped(&r.Icing, r).(*piped)
	var thick, bends [2]float64
	const step = 0.7
	for x := 20.0; x < 240; x += 15 {
		for y := 3.0; y < 77; y += step {
			for k, at := range [2]func(y float64) float64{
				func(y float64) float64 { z, _ := p.at(x-p.long/2, y-p.wide/2); return z },
				func(y float64) float64 { return p.evened(x-p.long/2, y-p.wide/2) },
			} {
				thick[k] += at(y)
				bends[k] += math.Abs(at(y-step) - 2*at(y) + at(y+step))
			}
		}
	}
	about(t, "its thickness", thick[1], thick[0], 0.01)
	if bends[1] > 0.7*bends[0] {
		t.Errorf("ridged it bends by %.1f mm in all, drawn flat by %.1f", bends[0], bends[1])
	}
}

// thorn is a unit 2 mm thick with a thorn of 10 mm in the middle.
type thorn struct{ form }

func (thorn) evened(_, y float64) float64 {
	if math.Abs(y) < 0.3 {
		return 10
	}
	return 2
}

// A wire takes a thorn along that is thinner than its smear.
func TestAWireLeavesNoThorn(t *testing.T) {
	c := column{v: &View{f: &Field{}}}
	s := spot{z: 10, form: &unit{form: thorn{}}}
	if c.smear(&s, 0, 0); s.z > 2+2*smearThorn || s.z < 1.5 {
		t.Errorf("of a thorn of 10 mm on 2 mm the wire leaves %.2f mm", s.z)
	}
}

// Within, two colours of a bag run into each other in veins, and wander with the seams between swirls: at the skin nothing of that is seen.
func TestColoursOfABagLieInVeins(t *testing.T) {
	r := full(true, 0.5, 0.5)
	p := newPiped(&r.Icing, r).(*piped)
	changes := [2]int{}
	for x := -100.0; x < 100; x += 20 {
		for k, below := range [2]float64{0, 6} {
			last := uint8(0)
			for y := -35.0; y < 35; y += 0.2 {
				z, _ := p.at(x, y)
				across, _ := p.within(x, y, max(z, below), below, false)
				if now := r.Icing.stripe(across); now != last {
					changes[k], last = changes[k]+1, now
				}
			}
		}
	}
	if changes[0] < 50 || float64(changes[1]) < 1.2*float64(changes[0]) {
		t.Errorf("at the skin colours change %d times, 6 mm below %d times, want a quarter more there", changes[0], changes[1])
	}
}

// The tip of a swirl is the narrower the higher up, ridges and all, and where it broke nothing is higher than the break.
func TestATipTapers(t *testing.T) {
	whole := swirlTop{high: 0.3, bend: vector{0.1, 0.05, 0}, broken: 1}
	blunt := whole
	blunt.broken = 0.5
	wide := func(top *swirlTop, over float64) (n int) {
		for x := -0.6; x < 0.6; x += 0.01 {
			for y := -0.6; y < 0.6; y += 0.01 {
				if top.at(x, y) > over {
					n++
				}
			}
		}
		return n
	}
	last := math.MaxInt
	for _, part := range []float64{0.2, 0.4, 0.6, 0.8, 0.95} {
		now := wide(&whole, tipFrom+part*whole.high)
		if now == 0 || float64(now) > 0.9*float64(last) {
			t.Errorf("%.2f of the way up it is %d wide, below that %d", part, now, last)
		}
		last = now
	}
	if low, high := wide(&blunt, tipFrom+0.4*blunt.high), wide(&blunt, tipFrom+0.7*blunt.high); low == 0 || high > 0 {
		t.Errorf("broken in the middle it is %d wide below that and %d above", low, high)
	}
}
