package swirl

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// anySpread draws a spread over a level of at least a tenth of what is poured.
func anySpread(t *rapid.T) *spread {
	s := &spread{width: rapid.Float64Range(10, 400).Draw(t, "width"), top: rapid.Float64Range(10, 100).Draw(t, "top")}
	s.bottom = s.top * rapid.Float64Range(0.3, 0.99).Draw(t, "bottom")
	n, round := rapid.IntRange(1, 4).Draw(t, "rows"), rapid.Bool().Draw(t, "round")
	for range n {
		s.rows = append(s.rows, row{
			part: 1 / float64(n), round: round, half: s.width * rapid.Float64Range(0.05, 0.8).Draw(t, "half"), blunt: rapid.Float64Range(0, 1).Draw(t, "blunt"),
			line: wobble{mean: s.width * rapid.Float64Range(0, 1).Draw(t, "line"), amp: [2]float64{3, 4}, k: [2]float64{0.05, 0.03}},
		})
	}
	return s
}

// Plain sums over the width: what was poured has its area, and what it pushed aside has the area it had.
func TestASpreadKeepsTheAreasOfWhatIsPouredAndOfWhatLiesThere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySpread(t)
		l := s.at(rapid.Float64Range(0, 250).Draw(t, "x"))
		const n = 4000
		poured := 0.0
		for i := range n {
			y := s.width * (float64(i) + 0.5) / n
			thick, area := l.at(y)
			poured += thick * s.width / n
			if !(thick >= 0 && thick <= mostSunk*s.top+1e-9) {
				t.Fatalf("at %.1f mm lie %.2f mm of what was poured, of a level of %.1f mm", y, thick, s.top)
			}
			if was := poured - thick*s.width/n/2; !(math.Abs(was-area) <= 0.003*s.width*s.top) {
				t.Fatalf("up to %.1f mm lie %.2f mm², counted %.2f mm²", y, area, was)
			}
		}
		if want := (s.top - s.bottom) * s.width; !(math.Abs(poured-want) <= 0.003*want) {
			t.Fatalf("%.1f mm² lie there, %.1f mm² were poured", poured, want)
		}
		const h = 1e-5
		y, z := s.width*rapid.Float64Range(0.01, 0.99).Draw(t, "y"), s.top*rapid.Float64Range(0.01, 0.99).Draw(t, "z")
		a, b := l.undo(y+h, z)
		c, d := l.undo(y-h, z)
		e, f := l.undo(y, z+h)
		g, k := l.undo(y, z-h)
		if det := ((a-c)*(f-k) - (b-d)*(e-g)) / (4 * h * h); !(math.Abs(det-1) <= 0.001) {
			t.Fatalf("an area at (%.1f, %.1f) becomes %.4f of what it was", y, z, det)
		}
	})
}

func TestAStreamLeavesItsLineOnTheSurfaceAndTheRestInSight(t *testing.T) {
	s := &spread{bottom: 40, top: 44, width: 80, rows: []row{{part: 1, half: 12, line: wobble{mean: 25}}}}
	l := s.at(90)
	for y, fresh := range map[float64]bool{5: false, 12: false, 20: true, 25: true, 30: true, 38: false, 70: false} {
		if _, z := l.undo(y, 44-skinMM); (z >= 40) != fresh {
			t.Errorf("%g mm across, the surface shows what was poured: %v, want %v", y, z >= 40, fresh)
		}
	}
	if _, z := l.undo(25, 2); z >= 40 {
		t.Error("what was poured reaches the bottom")
	}
}

// Of as much batter as wide, a blunt lump lies lower in its middle and higher at half its width: by hand, (1-u²)² and (1-u⁴)² of areas 16/15
// and 64/45.
func TestABluntLumpHasABroadTop(t *testing.T) {
	thick := func(blunt, y float64) float64 {
		s := &spread{bottom: 40, top: 44, width: 100, rows: []row{{part: 1, half: 20, line: wobble{mean: 50}, blunt: blunt}}}
		l := s.at(0)
		v, _ := l.at(y)
		return v
	}
	for _, c := range [][3]float64{{0, 50, 400. / 20 * 15 / 16}, {1, 50, 400. / 20 * 45 / 64}, {0, 60, 400. / 20 * 15 / 16 * 9 / 16}, {1, 60, 400. / 20 * 45 / 64 * 225 / 256}} {
		if got := thick(c[0], c[1]); !near(got, c[2], 1e-9) {
			t.Errorf("a lump as blunt as %g is %.3f mm thick at %g mm, want %.3f mm", c[0], got, c[1], c[2])
		}
	}
}

// A round lump is (1-u²)³·(1+3u²/2): by hand 27/64·11/8 of its height at half its width, and of the area 16/15. Under it the batter gives way over a
// broader place the deeper it lies: near the bottom the push aside of a place two half widths off, where the lump is not, is felt.
func TestUnderARoundLumpTheDeepGivesWayBroadly(t *testing.T) {
	s := &spread{bottom: 40, top: 44, width: 100, rows: []row{{part: 1, half: 20, round: true, line: wobble{mean: 50}}}}
	l := s.at(0)
	high := 400. / 20 * 15 / 16
	for y, want := range map[float64]float64{50: high, 60: high * 27 / 64 * 11 / 8, 70: 0, 20: 0} {
		if got, _ := l.at(y); !near(got, want, 1e-9) {
			t.Errorf("at %g mm it is %.3f mm thick, want %.3f mm", y, got, want)
		}
	}
	sunk := func(y, z float64) float64 { // how much lower batter lies than it would if nothing had been poured on it and the level had risen all over
		_, was := l.undo(y, z)
		return was*44/40 - z
	}
	if near, deep := sunk(80, 40), sunk(80, 10); deep < 0 && near > 0 || sunk(80, 10)/10 < sunk(80, 40)/40+0.01 {
		t.Errorf("30 mm aside batter at 10 mm has sunk %.3f mm and at 40 mm %.3f mm", deep, near)
	}
	for _, p := range [][2]float64{{50, 10}, {41, 22}, {12, 40}, {63, 2}} {
		y, z := l.undo(p[0], p[1])
		if a, b := l.redo(y, z); !near(a, p[0], 1e-6) || !near(b, p[1], 1e-6) {
			t.Errorf("%v comes back as (%g, %g)", p, a, b)
		}
	}
}

// Lumps far apart lie no thicker than the thickest of them; one on the other they add up.
func TestLumpsBesideEachOtherDoNotAddUp(t *testing.T) {
	l := levelled{n: 2}
	l.lumps[0], l.lumps[1] = lump{at: 20, half: 8, high: 5}, lump{at: 50, half: 10, high: 3}
	if got := l.high(); got != 5 {
		t.Errorf("beside each other they lie %v thick, want 5", got)
	}
	l.lumps[1].at = 20
	if got := l.high(); got != 8 {
		t.Errorf("one on the other they lie %v thick, want 8", got)
	}
}
