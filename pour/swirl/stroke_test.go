package swirl

import (
	"math"
	"testing"
)

// The window at a wall is 1 - (1-s)²: 0 on the wall, three quarters half way, 1 beyond.
func TestAFlowFadesAtTheWalls(t *testing.T) {
	for v, want := range map[float64]float64{-1: 0, 0: 0, 5: 0.75, 10: 1, 40: 1, 70: 1, 75: 0.75, 80: 0, 90: 0} {
		b, _ := ramp(v, 80, 0.1)
		if !near(b, want, 1e-12) {
			t.Errorf("at %g mm the window is %g, want %g", v, b, want)
		}
	}
	for v := 0.5; v < 80; v++ {
		low, _ := ramp(v-1e-4, 80, 0.1)
		high, _ := ramp(v+1e-4, 80, 0.1)
		if _, slope := ramp(v, 80, 0.1); !near(slope, (high-low)/2e-4, 1e-6) {
			t.Errorf("at %g mm the slope is %g, want %g", v, slope, (high-low)/2e-4)
		}
	}
}

func mirrored(path []vec2, width float64) (out []vec2) {
	for _, p := range path {
		out = append(out, vec2{width - p.y, p.z})
	}
	return out
}

// What happens at the left wall happens at the right one: the mirror image of a stroke moves mirror images.
func TestTheMirrorImageOfAStrokeMovesMirrorImages(t *testing.T) {
	path := []vec2{{8, 55}, {14, 20}, {40, 6}, {47, 58}}
	one, other := rod(path, 0.8), rod(mirrored(path, 80), 0.8)
	d := newDice(1)
	for range 300 {
		y, z := d.Between(0, 80), d.Between(0, 62)
		for _, dir := range []float64{1, -1} {
			a, b := one.move(3, y, z, dir)
			if e, f := other.move(3, 80-y, z, dir); !near(a, 80-e, 1e-6) || !near(b, f, 1e-6) {
				t.Fatalf("(%.1f, %.1f) goes to (%.3f, %.3f), its image to (%.3f, %.3f)", y, z, a, b, 80-e, f)
			}
		}
	}
}

// Far from every wall the window is 1, so that the short way of working and the long one must agree.
func TestTheQuickStepFarFromWallsIsTheFullStep(t *testing.T) {
	s := &stroke{radius: 12, grip: 0.9, width: 400, level: 300}
	d := newDice(1)
	for range 200 {
		from := vec2{d.Between(100, 300), d.Between(100, 200)}
		g := newDrag(from, vec2{from.y + d.Between(-3, 3), from.z + d.Between(-3, 3)}, s)
		if !math.IsInf(g.y0, -1) || !math.IsInf(g.z1, 1) {
			t.Fatalf("a step at %v is held to be near a wall", from)
		}
		y, z := from.y+d.Between(-14, 14), from.z+d.Between(-14, 14)
		a, b := g.undo(y, z)
		g.y0 = math.Inf(1)
		if e, f := g.undo(y, z); !near(a, e, 1e-9) || !near(b, f, 1e-9) {
			t.Fatalf("(%.2f, %.2f) comes from (%.5f, %.5f) and from (%.5f, %.5f)", y, z, a, b, e, f)
		}
	}
}

// A rod drawn a step is one drawn that step in a mould laid elsewhere, and turned by a quarter it drags at right angles.
func TestAFreeStepIsTheSameEverywhereAndInEveryDirection(t *testing.T) {
	s := &stroke{radius: 12, grip: 0.9, width: 400, level: 400}
	east, north := newDrag(vec2{200, 200}, vec2{203, 200}, s), newDrag(vec2{150, 220}, vec2{150, 223}, s)
	d := newDice(1)
	for range 200 {
		e, f := d.Between(-14, 14), d.Between(-14, 14)
		a, b := east.apply(200+e, 200+f)
		g, h := north.apply(150-f, 220+e)
		if !near(a-200, h-220, 1e-9) || !near(b-200, 150-g, 1e-9) {
			t.Fatalf("(%.1f, %.1f) goes to (%.4f, %.4f), turned to (%.4f, %.4f)", e, f, a-200, b-200, h-220, 150-g)
		}
	}
	// half the grip drags the batter at the rod half as fast
	s.grip = 0.45
	half := newDrag(vec2{200, 200}, vec2{203, 200}, s)
	vy, vz := east.velocity(200, 200, 200, 200)
	wy, wz := half.velocity(200, 200, 200, 200)
	if !near(vy, 2.7, 1e-9) || vz != 0 || !near(wy, 1.35, 1e-9) || wz != 0 {
		t.Errorf("at the rod the batter goes (%g, %g) and (%g, %g) of a step of 3 mm", vy, vz, wy, wz)
	}
}

// A stream under which the surface stays in place lets what is poured next join what lies there; another draws the surface in.
func TestAStillStreamLeavesTheSurfaceInPlace(t *testing.T) {
	s := rod([]vec2{{40, 68}, {40, 35}}, 1)
	moved := func() (most float64) {
		for y := 20.; y < 60; y += 0.5 {
			a, _ := s.move(4, y, 62, 1)
			most = max(most, math.Abs(a-y))
		}
		return most
	}
	if moved() < 0.5 {
		t.Errorf("a stream moves the surface by %.3f mm only", moved())
	}
	s.still = true
	if moved() > 1e-9 {
		t.Errorf("a still stream moves the surface by %g mm", moved())
	}
	if _, z := s.move(4, 40, 45, 1); z > 40 {
		t.Errorf("a still stream takes what lies in its way to %g mm only", z)
	}
}

// Below its skin a wire drags what lies there as if the surface were far away; without one the flow has begun to fade.
func TestASkinLetsAWireDragWhatLiesUnderTheSurface(t *testing.T) {
	flow := func(level, skin float64) vec2 {
		d := newDrag(vec2{40, 52}, vec2{43, 52}, &stroke{radius: 12, grip: 1, width: 400, level: level, skin: skin})
		vy, vz := d.velocity(42, 57, 40, 52)
		return vec2{vy, vz}
	}
	free, under, faded := flow(400, 0), flow(62, 4), flow(62, 0)
	if under != free {
		t.Errorf("5 mm under the surface the batter goes %v, far from it %v", under, free)
	}
	if math.Abs(faded.y-free.y) < 0.05 {
		t.Errorf("without a skin it goes %v, far from the surface %v", faded, free)
	}
}

// Along the loaf a stroke that ebbs drags with all of its grip in one half of a wave and less, by the square, in the other.
func TestAStrokeEbbsAlongTheLoaf(t *testing.T) {
	s := &stroke{path: []vec2{{20, 30}, {23, 30}}, radius: 12, grip: 1, width: 80, level: 60, sway: wobble{mean: 1}, depth: wobble{mean: 1}}
	s.ebb = wobble{amp: [2]float64{0, 0.5}, k: [2]float64{0, math.Pi / 200}}
	for _, c := range []struct{ x, want float64 }{{0, 1}, {100, 0.75}, {300, 1}} {
		if got := s.step(0, s.path[0], s.path[1], s.drift(c.x)).gy / 3; !near(got, c.want, 1e-9) {
			t.Errorf("at %g mm along the loaf it drags with %g of its grip, want %g", c.x, got, c.want)
		}
	}
}

func TestAStrokeIsStretchedAboutItsPivotAndStaysInTheMould(t *testing.T) {
	s := &stroke{path: []vec2{{30, 10}, {70, 60}}, pivot: vec2{40, 60}, width: 80}
	for _, c := range []struct {
		knot int
		by   course
		want vec2
	}{
		{0, course{0, 1, 1, 0, 0, 1}, vec2{30, 10}},
		{0, course{5, 1, 1, 0, 0, 1}, vec2{35, 10}},
		{0, course{0, 2, 1, 0, 0, 1}, vec2{20, 10}},
		{0, course{0, 1, 0.5, 0, 0, 1}, vec2{30, 35}},
		{1, course{0, 0.5, 1, 0, 0, 1}, vec2{55, 60}},
		{0, course{0, 9, 9, 0, 0, 1}, vec2{1, 1}},
		{1, course{40, 1, 1, 0, 0, 1}, vec2{79, 60}},
		{0, course{0, 1, 1, 0.2, 0, 1}, vec2{20, 10}}, // 50 mm lower, a fifth of that to the left
		{1, course{0, 1, 1, 0.2, 0, 1}, vec2{70, 60}},
	} {
		if got := s.at(c.knot, c.by); got != c.want {
			t.Errorf("knot %d on the course %v: %v, want %v", c.knot, c.by, got, c.want)
		}
	}
}

func TestAStrokeDriftsAlongTheLoaf(t *testing.T) {
	s := rod([]vec2{{30, 30}, {44, 30}}, 1)
	s.shift = wobble{amp: [2]float64{6, 0}, k: [2]float64{math.Pi / 100, 1}} // 6 mm to the right 50 mm along the loaf
	if y, _ := s.move(50, 36, 30, 1); !near(y, 50, 0.1) {
		t.Errorf("50 mm along the rod takes the batter at 36 mm to %.1f mm, want 50", y)
	}
	if y, _ := s.move(0, 30, 30, 1); !near(y, 44, 0.1) {
		t.Errorf("at the end the rod takes the batter at 30 mm to %.1f mm, want 44", y)
	}
}

// By hand: a lump (1-u²)² of height and half width 1 has the area 16/15, so one of half width h that holds A mm² is 15A/16h high.
func TestAStreamLiesHighestOnItsLineAndEvenEitherSide(t *testing.T) {
	s := &spread{bottom: 40, top: 44, width: 80, rows: []row{{part: 1, half: 15, line: wobble{mean: 30}}}}
	l := s.at(9)
	if thick, area := l.at(30); !near(thick, 15*4*80./(16*15), 1e-9) || !near(area, 4*80/2., 1e-9) {
		t.Errorf("on its line it lies %.3f mm thick with %.2f mm² to the left, want %.3f mm and half of 320", thick, area, 20.)
	}
	for _, e := range []float64{3, 8, 14.9, 16} {
		left, _ := l.at(30 - e)
		if right, _ := l.at(30 + e); !near(left, right, 1e-9) || e > 15 && left != 0 {
			t.Errorf("%g mm to the left it lies %.3f mm thick, to the right %.3f mm", e, left, right)
		}
	}
	d := newDice(1)
	for range 200 {
		y, z := d.Between(0, 80), d.Between(0, 40)
		a, b := s.move(9, y, z, 1)
		if a, b = s.move(9, a, b, -1); !near(a, y, 1e-6) || !near(b, z, 1e-6) {
			t.Fatalf("(%.1f, %.1f) comes back as (%.3f, %.3f)", y, z, a, b)
		}
	}
}

// Of a lump on the wall itself half would lie beyond it: what is in the mould is twice as high, 15A/8h, and has all of its area.
func TestAStreamAtTheWallStaysInTheMould(t *testing.T) {
	for _, wall := range []float64{0, 80} {
		s := &spread{bottom: 40, top: 44, width: 80, rows: []row{{part: 1, half: 30, line: wobble{mean: wall}}}}
		l := s.at(9)
		if thick, _ := l.at(wall); !near(thick, 15*4*80./(8*30), 1e-9) {
			t.Errorf("at the wall at %g mm it lies %.3f mm thick, want 20", wall, thick)
		}
		if _, none := l.at(0); !near(none, 0, 1e-9) {
			t.Errorf("left of the mould lie %.2f mm²", none)
		}
		if _, all := l.at(80); !near(all, 320, 1e-9) {
			t.Errorf("at the wall at %g mm %.2f mm² lie in the mould, want 320", wall, all)
		}
	}
}

// What is pushed aside gives way: left of the line it goes left, right of it right, and all of it down.
func TestAStreamPushesAsideWhatLiesThere(t *testing.T) {
	s := &spread{bottom: 40, top: 46, width: 80, rows: []row{{part: 1, half: 15, line: wobble{mean: 40}}}}
	for _, y := range []float64{20, 30, 36} {
		left, low := s.move(9, y, 30, 1)
		right, _ := s.move(9, 80-y, 30, 1)
		if left >= y || !near(left, 80-right, 1e-6) {
			t.Errorf("%g mm goes to %.2f, its image to %.2f: want it further out", y, left, right)
		}
		if low >= 46 {
			t.Errorf("a place at 30 mm goes up to %.1f mm", low)
		}
	}
}

// A stroke with a foot drags what lies over it as if there were no floor, and less and less within it; one without fades as at the walls.
func TestAStrokeFadesWithinItsFoot(t *testing.T) {
	s := rod([]vec2{{30, 6}, {32, 6}}, 1)
	s.radius = 12
	at := func(foot, z float64) float64 {
		s.foot = foot
		d := newDrag(s.path[0], s.path[1], s)
		y, _ := d.velocity(s.path[0].y, z, s.path[0].y, 6)
		return y
	}
	if over, within, without := at(5, 6), at(5, 2), at(0, 6); !near(over, 2, 1e-9) || within > 0.8*over || without > 0.99*over {
		t.Errorf("at 6 mm it goes %.3f, at 2 mm %.3f, and %.3f without a foot", over, within, without)
	}
}

// A step that drags batter far for its girth is gone in more parts, which follow on from each other and drag no further than the whole.
func TestAStepThatDragsFarIsGoneInMoreParts(t *testing.T) {
	d := newDrag(vec2{30, 30}, vec2{36, 38}, &stroke{radius: 12, grip: 0.9, width: 80, level: 60})
	n := d.parts()
	if n != 3 { // 9 mm of a radius of 12 mm, at most 0.27 of it at once
		t.Errorf("9 mm are dragged in %d parts, want 3", n)
	}
	at, dragged := vec2{30, 30}, vec2{}
	for i := range n {
		p := d.part(i, n)
		if !near(p.cy, at.y, 1e-9) || !near(p.cz, at.z, 1e-9) || p.parts() != 1 {
			t.Errorf("part %d begins at (%g, %g), want %v", i, p.cy, p.cz, at)
		}
		at, dragged = vec2{at.y + p.dy, at.z + p.dz}, vec2{dragged.y + p.gy, dragged.z + p.gz}
	}
	if !near(at.y, 36, 1e-9) || !near(at.z, 38, 1e-9) || !near(dragged.y, 5.4, 1e-9) || !near(dragged.z, 7.2, 1e-9) {
		t.Errorf("the parts end at %v and drag by %v", at, dragged)
	}
}
