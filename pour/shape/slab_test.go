package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// A bar of a slab trimmed all round is (X − 2e − (c + 1)k)/c by (Y − 2e − (r + 1)k)/r.
func TestASlabIsCutBothWays(t *testing.T) {
	s := shape.Slab{X: 300, Y: 200, TrimX: 5, TrimY: 5, Kerf: 0.6, CutX: true, CutY: true}
	g := s.Bars(4, 3)
	near(t, "along", g.BarX, (300-10-5*0.6)/4, 1e-12)
	near(t, "across", g.BarY, (200-10-4*0.6)/3, 1e-12)
	kept := shape.Slab{X: 300, Y: 200, Kerf: 0.6}.Bars(4, 3)
	near(t, "along, ends kept", kept.BarX, (300-3*0.6)/4, 1e-12)
	near(t, "across, sides kept", kept.BarY, (200-2*0.6)/3, 1e-12)
}

// 80 × 55 mm out of 240 × 220: 3 × 4 = 12 as it lies, 4 × 2 (or 4 × 3 with bars of 73) turned. 100 × 40 out of 200 × 210 is more bars turned:
// 5 × 2 = 10 against 2 × 5 = 10, the nearer one wins.
func TestASlabIsCutTheBetterWayRound(t *testing.T) {
	g, ok := shape.Slab{X: 240, Y: 220}.Best(80, 55, 2)
	if !ok || g.Columns != 3 || g.Rows != 4 || g.Turned {
		t.Errorf("80 × 55 out of 240 × 220: %+v", g)
	}
	g, ok = shape.Slab{X: 220, Y: 240}.Best(80, 55, 2)
	if !ok || g.Columns != 4 || g.Rows != 3 || !g.Turned {
		t.Errorf("80 × 55 out of 220 × 240: %+v", g)
	}
	if _, ok = (shape.Slab{X: 60, Y: 60}).Best(80, 55, 2); ok {
		t.Error("a bar of 80 was cut out of 60 × 60")
	}
}

// The best way is as many bars as any count of columns and rows, tried one by one, and no further off.
func TestNoWayToCutASlabIsBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shape.Slab{X: rapid.Float64Range(60, 500).Draw(t, "x"), Y: rapid.Float64Range(60, 500).Draw(t, "y"), Kerf: 0.6, TrimX: 3, TrimY: 3, CutX: rapid.Bool().Draw(t, "cut x"), CutY: rapid.Bool().Draw(t, "cut y")}
		a, b, most := rapid.Float64Range(40, 100).Draw(t, "length"), rapid.Float64Range(25, 60).Draw(t, "width"), 4.0
		best, ok := s.Best(a, b, most)
		side := func(whole float64, cut bool, n int) float64 {
			if cut {
				return (whole - 6 - float64(n+1)*0.6) / float64(n)
			}
			return (whole - float64(n-1)*0.6) / float64(n)
		}
		for c := 1; c <= 25; c++ {
			for r := 1; r <= 25; r++ {
				for _, w := range [][2]float64{{a, b}, {b, a}} {
					dx, dy := math.Abs(side(s.X, s.CutX, c)-w[0]), math.Abs(side(s.Y, s.CutY, r)-w[1])
					if dx > most || dy > most {
						continue
					}
					x, y := a, b
					if best.Turned {
						x, y = b, a
					}
					mine := math.Abs(best.BarX-x) + math.Abs(best.BarY-y)
					if !ok || c*r > best.Columns*best.Rows || c*r == best.Columns*best.Rows && dx+dy < mine-1e-6 {
						t.Fatalf("%d × %d for %v is better than %+v (%v)", c, r, w, best, ok)
					}
				}
			}
		}
	})
}

// A round log of radius 40 in rounds of 25 is 125 663.706 mm³ each, half of it a half round; a section 70 wide at the bottom, 80 at the top and
// 60 high is 4500 mm², its end wedge with a lean of 4 mm 9000 mm³. Elementary geometry.
func TestRoundsAndLeaningWalls(t *testing.T) {
	near(t, "a round", shape.RoundBar(40, 25), 125663.70614359173, 1e-12)
	near(t, "a half round", shape.HalfRoundBar(40, 25), 62831.853071795865, 1e-12)
	d := shape.Draft{Bottom: 70, Top: 80, Height: 60, End: 4}
	near(t, "section", d.Section(), 4500, 1e-12)
	near(t, "end wedge", d.EndWedge(), 9000, 1e-12)
}
