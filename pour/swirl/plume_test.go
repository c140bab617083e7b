package swirl

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// dived is a plume at the middle of a mould of 80 mm, 40 mm deep, that moves batter up to 12 mm to either side.
func dived(roll float64) *plume {
	return &plume{
		level: 60, width: 80, line: wobble{mean: 40}, reach: wobble{mean: 12}, depth: wobble{mean: 40}, roll: wobble{mean: roll},
	}
}

// anyPlume draws a plume that may lean and stand near a wall.
func anyPlume(t *rapid.T) *plume {
	between := func(low, high float64, name string) wobble {
		return wobble{mean: rapid.Float64Range(low, high).Draw(t, name), amp: [2]float64{0.1, 0.1}, k: [2]float64{0.07, 0.03}}
	}
	return &plume{
		level: rapid.Float64Range(10, 100).Draw(t, "level"), width: rapid.Float64Range(20, 200).Draw(t, "width"),
		line: between(0, 200, "line"), lean: between(-0.4, 0.4, "lean"), reach: between(3, 30, "reach"), depth: between(4, 100, "depth"),
		roll: between(0, 1.2, "roll"),
	}
}

func TestAPlumeKeepsAreasAndWallsAndIsUndone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlume(t)
		x := rapid.Float64Range(0, 300).Draw(t, "x")
		y, z := p.width*rapid.Float64Range(0.001, 0.999).Draw(t, "y"), p.level*rapid.Float64Range(0.001, 0.999).Draw(t, "z")
		a, b := p.move(x, y, z, 1)
		if a < 0 || a > p.width || b < 0 || b > p.level {
			t.Fatalf("(%.2f, %.2f) leaves the mould: (%.2f, %.2f)", y, z, a, b)
		}
		if c, d := p.move(x, a, b, -1); math.Hypot(c-y, d-z) > 0.25 {
			t.Fatalf("(%.2f, %.2f) comes back as (%.2f, %.2f)", y, z, c, d)
		}
		const h = 1e-4
		e, f := p.move(x, y+h, z, -1)
		g, k := p.move(x, y-h, z, -1)
		m, n := p.move(x, y, min(z+h, p.level), -1)
		q, r := p.move(x, y, z-h, -1)
		if det := ((e-g)*(n-r) - (f-k)*(m-q)) / (2 * h * (min(z+h, p.level) - z + h)); math.Abs(det-1) > 0.03 {
			t.Fatalf("an area at (%.2f, %.2f) becomes %.4f of what it was", y, z, det)
		}
		for _, wall := range [][2]float64{{0, z}, {p.width, z}, {y, 0}} {
			if c, d := p.move(x, wall[0], wall[1], 1); c != wall[0] || d != wall[1] {
				t.Fatalf("the wall point %v goes to (%g, %g)", wall, c, d)
			}
		}
		if _, d := p.move(x, y, p.level, 1); d != p.level {
			t.Fatalf("the surface goes to %g of %g mm", d, p.level)
		}
	})
}

// What falls goes down on its axis, its neck narrows, its head widens, and what gives way rises at the rim.
func TestAPlumeHasANeckAndAHeadAndComesUpAtItsRim(t *testing.T) {
	p := dived(0.2)
	down := 0.0
	for _, z := range []float64{55, 45, 35, 26} {
		y, low := p.move(0, 40, z, 1)
		if !near(y, 40, 1e-9) || low > z-1 {
			t.Errorf("on the axis %g mm goes to (%.2f, %.2f)", z, y, low)
		}
		down = max(down, z-low)
	}
	if !near(down, 0.2*40, 1.5) {
		t.Errorf("the fastest batter goes %.2f mm down, want about a fifth of 40", down)
	}
	if y, _ := p.move(0, 44, 58, 1); y > 43.5 {
		t.Errorf("under the surface a place 4 mm off the axis comes to %.2f mm of it, want nearer", y-40)
	}
	if y, _ := p.move(0, 44, 30, 1); y < 44.5 {
		t.Errorf("at the foot a place 4 mm off the axis comes to %.2f mm of it, want further", y-40)
	}
	if _, z := p.move(0, 48, 35, 1); z < 35.5 {
		t.Errorf("at the rim 35 mm goes to %.2f mm, want up", z)
	}
	for _, far := range [][2]float64{{27.9, 40}, {52.1, 40}, {40, 19.9}} {
		if y, z := p.move(0, far[0], far[1], 1); y != far[0] || z != far[1] {
			t.Errorf("%v outside the plume goes to (%g, %g)", far, y, z)
		}
	}
}

func TestAPlumeIsNarrowerAtAWallAndNoneWhereThereIsNoRoom(t *testing.T) {
	p := dived(0.3)
	for _, c := range []struct{ at, lean, reach float64 }{{40, 0, 12}, {10, 0, 9.5}, {70, 0, 9.5}, {20, -0.25, 9.5}, {60, 0.25, 9.5}, {3, 0, 0}, {90, 0, 0}} {
		p.line.mean, p.lean.mean = c.at, c.lean
		if s := p.at(0); !near(s.reach, c.reach, 1e-9) || (s.steps == 0) != (c.reach == 0) {
			t.Errorf("at %g mm, leaning %g, it reaches %g mm in %d steps, want %g mm", c.at, c.lean, s.reach, s.steps, c.reach)
		}
	}
}

// Along the loaf a plume comes to a wall and fades there: nowhere does batter jump from one cross-section to the next.
func TestAPlumeFadesAlongTheLoafWhereItComesToAWall(t *testing.T) {
	p := dived(0.5)
	p.line = wobble{mean: 6, amp: [2]float64{6, 0}, k: [2]float64{2 * math.Pi / 80, 1}}
	before, moved := vec2{}, 0.0
	for x := 0.0; x < 160; x += 0.02 {
		y, z := p.move(x, 4, 40, 1)
		if at := (vec2{y, z}); x > 0 && math.Hypot(at.y-before.y, at.z-before.z) > 0.1 {
			t.Fatalf("at %.2f mm along the loaf the batter jumps from %v to %v", x, before, at)
		}
		before, moved = vec2{y, z}, max(moved, math.Abs(z-40))
	}
	if moved < 3 {
		t.Errorf("it moves %.2f mm at most", moved)
	}
}

// The greatest of t(1-t⁴)³ lies where its slope is 0, at t⁴ = 1/13.
func TestThePeakOfAPlumeIsItsGreatestSpeed(t *testing.T) {
	at := math.Pow(1./13, 0.25)
	if want := at * 1728 / 2197; !near(plumePeak, want, 1e-4) {
		t.Errorf("the peak is %g, want %g", plumePeak, want)
	}
}

// The flow is that of a stream function, here written down anew and differentiated in steps: across it is the slope of ψ upwards, upwards
// less the slope across. So it keeps areas, however the axis leans.
func TestAPlumeFlowsAroundItsStreamFunction(t *testing.T) {
	for _, lean := range []float64{-0.3, 0, 0.2} {
		p := dived(0.4)
		p.lean.mean = lean
		s := p.at(0)
		psi := func(y, z float64) float64 {
			down := (60 - z) / 40
			u := (y - 40 - lean*(60-z)) / s.reach
			if math.Abs(u) >= 1 || down <= 0 || down >= 1 {
				return 0
			}
			return s.down * s.reach * u * (1 - u*u) * (1 - u*u) * (1 - u*u) * down * math.Pow(1-math.Pow(down, 4), 3)
		}
		const h = 1e-4
		fastest := 0.0
		for y := 20.0; y < 60; y += 0.7 {
			for z := 18.0; z < 59.9; z += 0.9 {
				vy, vz := s.velocity(y, z)
				wantY, wantZ := (psi(y, z+h)-psi(y, z-h))/(2*h), (psi(y-h, z)-psi(y+h, z))/(2*h)
				if !near(vy, wantY, 1e-3) || !near(vz, wantZ, 1e-3) {
					t.Fatalf("leaning %g, at (%.1f, %.1f) it flows (%.3f, %.3f), want (%.3f, %.3f)", lean, y, z, vy, vz, wantY, wantZ)
				}
				fastest = max(fastest, math.Abs(vz))
			}
		}
		if fastest < 10 {
			t.Errorf("leaning %g, nothing flows faster than %.1f mm", lean, fastest)
		}
	}
}
