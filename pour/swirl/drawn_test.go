package swirl

import (
	"math"
	"slices"
	"testing"

	"pourbench/pour/script"
)

var wires = []script.Technique{script.Hanger, script.HangerLoops, script.HangerSpiral}

// turnsAlong is how often the portion changes along a row of a cut along the loaf, on average.
func turnsAlong(p *Picture) float64 {
	n := 0.0
	for j := range p.H {
		for i := 1; i < p.W; i++ {
			if p.Label(i, j) != p.Label(i-1, j) {
				n++
			}
		}
	}
	return n / float64(p.H)
}

// trailsAcross is how many stretches of other portions than one there are in a column of a picture, on average.
func trailsAcross(p *Picture, ground int) float64 {
	n := 0.0
	for i := range p.W {
		for j := 1; j < p.H; j++ {
			if p.Label(i, j) != ground && p.Label(i, j-1) == ground {
				n++
			}
		}
	}
	return n / float64(p.W)
}

// What is poured last lies on top after the wire as well; only where the wire came up what lies below shows, in several trails along the loaf that
// begin and end by themselves.
func TestFromAboveAWireLeavesTrails(t *testing.T) {
	const seeds = 4
	for _, technique := range wires {
		last, along, across := 0.0, 0.0, 0.0
		for seed := range int64(seeds) {
			var pic Picture
			s := mustPour(t, scripted(technique, seed, 0.4, 0.2, 0.15, 0.15, 0.1))
			s.Top(s.recipe.Box.H-SkimMM).Draft(&pic, 50, 60)
			last += pic.Measure(250, 80, 5).Shares[4] / seeds
			along += turnsAlong(&pic) / seeds
			across += trailsAcross(&pic, 4) / seeds
		}
		t.Logf("%s: %.2f of the last jug, %.1f changes along the loaf, %.2f trails", technique, last, along, across)
		if last < 0.6 || last > 0.95 || along > 7 || across < 1.3 {
			t.Errorf("%s: from above %.2f is of the last jug, along the loaf the portion changes %.1f times, and across it lie %.2f trails", technique, last, along, across)
		}
	}
}

// A wire as long as the loaf goes about the same way at both ends: cut lengthwise, what it folds runs on for a bar and breaks off.
func TestWhatAWireFoldsRunsAlongTheLoaf(t *testing.T) {
	const seeds = 4
	for _, technique := range wires {
		along := 0.0
		for seed := range int64(seeds) {
			var pic Picture
			mustPour(t, loaf(technique, seed)).Lengthwise(40).Draft(&pic, 100, 30)
			along += turnsAlong(&pic) / seeds
		}
		if along < 3 || along > 18 {
			t.Errorf("%s: over 250 mm the portion changes %.1f times", technique, along)
		}
	}
}

// Held askew a wire goes from one side of its way to the other along the loaf, by a half to all of what it may, and hardly ever back.
func TestAWireHeldAskewGoesFromOneSideToTheOther(t *testing.T) {
	d := newDice(5)
	left, sum := 0, 0.0
	for range 60 {
		w := d.askew(3, 8, 250)
		from, to := w.at(0), w.at(250)
		far, back := math.Abs(to-from), 0.0
		for x := 0.0; x < 250; x++ {
			if step := w.at(x+1) - w.at(x); step*(to-from) < 0 {
				back += math.Abs(step)
			}
			if off := math.Abs(w.at(x) - 3); off > 8 {
				t.Fatalf("at %g mm it is %.2f mm off its mean", x, off)
			}
		}
		if far < 3 || back > 0.3*far {
			t.Errorf("it goes %.1f mm aside from end to end, and %.1f mm back", far, back)
		}
		if sum += far; to < from {
			left++
		}
	}
	if left < 15 || left > 45 || sum/60 < 5 {
		t.Errorf("of 60 wires %d go to the left, %.1f mm on average", left, sum/60)
	}
}

// A wire is pulled straight up at first, then aside by as much as it comes out.
func TestAWireBendsAsideAsItComesOut(t *testing.T) {
	path := bent(vec2{30, 20}, vec2{38, 60})
	if len(path) != bentKnots+1 || path[0] != (vec2{30, 20}) || path[bentKnots] != (vec2{38, 60}) || path[bentKnots/2] != (vec2{32, 40}) {
		t.Errorf("it goes from %v past %v to %v", path[0], path[bentKnots/2], path[bentKnots])
	}
}

// The wire grazes where the tracks it left lie furthest apart, until there are enough of them or no room for more.
func TestTheWireGrazesWhereThereIsRoomOnTop(t *testing.T) {
	for _, c := range []struct {
		out  []float64
		more int
	}{
		{[]float64{40}, 4}, {[]float64{60, 20}, 2}, {[]float64{20, 40, 60}, 0}, {[]float64{8, 9, 10, 11, 12}, 0},
	} {
		r := poured(script.Hanger, 1)
		b := newBuilder(r)
		b.level = 60
		last := slices.Max(c.out)
		b.graze(c.out, wobble{})
		paths, _, _ := wireOf(b)
		if len(paths) > c.more || c.more > 0 && len(paths) == 0 {
			t.Errorf("beside tracks at %v it grazes %d times, at most %d are wanted", c.out, len(paths), c.more)
		}
		for i, p := range paths {
			if p[0].z < grazeShare*60 || i == 0 && math.Abs(p[0].y-last) < 0.1*80 {
				t.Errorf("beside tracks at %v it grazes from %v", c.out, p[0])
			}
		}
	}
}

// What is slumped about as far as what settles changes so much more slowly along the loaf.
func TestWhatSlumpsSlumpsAlikeOverALongerStretch(t *testing.T) {
	d, e := newDice(3), newDice(3)
	box := Box{L: 250, W: 80, H: 60}
	settles, slumps := newWave(&d, box, 60, 3), newWave(&e, box, 60, 3).slow(slumpLong)
	for x := 0.0; x < 100; x += 9 {
		a, b := settles.at(x), slumps.at(x*slumpLong)
		for i := range a.amp {
			if !near(a.amp[i], b.amp[i], 1e-9) {
				t.Errorf("%g mm on a roll settles by %g, %g times as far on it slumps by %g", x, a.amp[i], slumpLong, b.amp[i])
			}
		}
	}
}
