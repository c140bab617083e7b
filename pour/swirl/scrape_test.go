package swirl

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// anyScrape draws an act's drags, some of them near walls.
func anyScrape(t *rapid.T) *scrape {
	s := &scrape{width: 80, high: 62}
	between := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	for range rapid.IntRange(1, 4).Draw(t, "drags") {
		s.drags = append(s.drags, scraped{
			x: between(0, 40, "x"), reach: between(5, 40, "reach"), at: vec2{between(0, 80, "y"), between(0, 62, "z")},
			drift: vec2{between(-0.3, 0.3, "drift"), between(-0.1, 0.1, "rise")}, long: between(4, 16, "long"), wide: between(2, 9, "wide"),
			tilt: between(-0.6, 0.6, "tilt"), angle: between(-2.5, 2.5, "angle"),
		})
	}
	return s
}

func TestASpoonsDragKeepsAreasAndWallsAndIsUndone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyScrape(t)
		x, y, z := rapid.Float64Range(0, 40).Draw(t, "at x"), rapid.Float64Range(0.01, 79.99).Draw(t, "at y"), rapid.Float64Range(0.01, 61.99).Draw(t, "at z")
		a, b := s.move(x, y, z, 1)
		if a < 0 || a > 80 || b < 0 || b > 62 {
			t.Fatalf("(%.2f, %.2f) leaves the mould: (%.2f, %.2f)", y, z, a, b)
		}
		if c, d := s.move(x, a, b, -1); math.Hypot(c-y, d-z) > 1e-6 {
			t.Fatalf("(%.2f, %.2f) comes back as (%.2f, %.2f)", y, z, c, d)
		}
		back := func(y, z float64) (float64, float64) { return s.move(x, y, z, -1) }
		if det := determinant(back, y, z, 1e-5); math.Abs(det-1) > 0.01 {
			t.Fatalf("an area at (%.2f, %.2f) becomes %.4f of what it was", y, z, det)
		}
		for _, wall := range []vec2{{0, z}, {80, z}, {y, 0}, {y, 62}} {
			if c, d := s.move(x, wall.y, wall.z, 1); math.Hypot(c-wall.y, d-wall.z) > 1e-6 {
				t.Fatalf("the wall point %v goes to (%g, %g)", wall, c, d)
			}
		}
	})
}

// By hand: half way to the end of its reach along the loaf (1-1/4)² of it is left, and beyond nothing.
func TestASpoonsDragIsGoneOffItsPlace(t *testing.T) {
	d := scraped{x: 100, reach: 20, at: vec2{40, 30}, long: 12, wide: 6, angle: 1}
	for _, c := range []struct{ x, angle float64 }{{100, 1}, {110, 0.5625}, {90, 0.5625}} {
		s, ok := d.in(c.x, 80, 62)
		if !ok || !near(s.angle, c.angle, 1e-12) {
			t.Errorf("at %g mm it turns by %g, want %g", c.x, s.angle, c.angle)
		}
	}
	for _, x := range []float64{79, 80, 120, 130} {
		if _, ok := d.in(x, 80, 62); ok {
			t.Errorf("it still drags at %g mm", x)
		}
	}
	full, _ := d.in(100, 80, 62)
	if y, z := full.drag(52.1, 30, 1); y != 52.1 || z != 30 {
		t.Errorf("a place beyond it goes to (%g, %g)", y, z)
	}
	d.at = vec2{3, 30}
	if _, ok := d.in(100, 80, 62); ok {
		t.Error("it drags where there is no room to the wall")
	}
}

// What is scraped off to the right goes right on top and comes back below.
func TestASpoonfulIsPushedToTheSideItIsScrapedTo(t *testing.T) {
	d := newDice(3)
	h := newHeap(Box{L: 250, W: 80, H: 62})
	s := spooning{heap: h, d: &d, drag: 1.5, z: make([]float64, h.nx*h.ny)}
	for k := range s.z {
		s.z[k] = 30
	}
	for _, side := range []float64{-1, 1} {
		p := spoonful{x: 100, y: 40, half: 15}
		for _, g := range []scraped{s.scraped(&p, side, 200), s.skinned(&p, side, 200)} {
			if (g.at.y-40)*side < 0.5*15 || g.at.z > 30 || g.at.z < 20 {
				t.Errorf("a spoonful about (40, 30) is scraped off to %g at %v", side, g.at)
			}
			c, ok := g.in(100, 80, 62)
			up := 0.3 * g.wide
			if y, _ := c.drag(c.cy-up*c.sin, c.cz+up*c.cos, 1); !ok || (y-(c.cy-up*c.sin))*side < 0.3 {
				t.Errorf("scraped off to %g what lies on top goes %.2f mm", side, y-(c.cy-up*c.sin))
			}
		}
	}
}

// The maker looks for another colour: on a flat heap one half of which is of the spoonful's own colour most lie on the other half.
func TestSpoonfulsAreLaidOnAnotherColour(t *testing.T) {
	d := newDice(4)
	h := newHeap(Box{L: 250, W: 80, H: 62})
	s := spooning{heap: h, d: &d, plump: 0.5, z: make([]float64, h.nx*h.ny), skin: make([]int8, h.nx*h.ny)}
	for k := range s.skin {
		if k%h.ny < h.ny/2 {
			s.skin[k] = 3
		}
	}
	own, all := 0, 0
	for range 10 {
		for _, p := range s.row(12, 2) {
			if all++; p.y < 34 {
				own++
			}
		}
	}
	if own > all/3 {
		t.Errorf("%d of %d lie on their own colour", own, all)
	}
}
