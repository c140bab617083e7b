package swirl

import (
	"math"
	"testing"

	"pourbench/pour/script"
)

// diskParts counts a layout of three portions over the disc of radius 1; place 0 is what is empty, portion k is at place k+1.
func diskParts(l layout) []float64 {
	got, all := make([]float64, 4), 0.0
	const n = 400
	for i := range n * n {
		u, v := 2*(float64(i%n)+0.5)/n-1, 2*(float64(i/n)+0.5)/n-1
		if u*u+v*v < 1 {
			got[l.at(u, v)+1]++
			all++
		}
	}
	for i := range got {
		got[i] /= all
	}
	return got
}

func quarters() beside {
	return beside{until: []float64{0.25, 0.5, 1}, portion: []int{0, 1, 2}, act: []int{-1, 2, 3}}
}

// A quarter of the turn is a quarter of a pot cut like a cake, from the left against the sun.
func TestSectorsOfThePotAreCutLikeACake(t *testing.T) {
	s := &sectors{quarters()}
	for degrees, want := range map[float64]int{-170: 0, -95: 0, -85: 1, -5: 1, 5: 2, 90: 2, 175: 2} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		for _, r := range []float64{0.05, 0.5, 1} {
			if got := s.at(r*cos, r*sin); got != want {
				t.Errorf("at %g degrees and %g from the middle lies %d, want %d", degrees, r, got, want)
			}
		}
	}
}

func TestBandsOfThePotHaveTheirAreasFromSideToSide(t *testing.T) {
	b := &bands{quarters()}
	for i, want := range []float64{0, 0.25, 0.25, 0.5} {
		if got := diskParts(b)[i]; !near(got, want, 0.003) {
			t.Errorf("portion %d has %.4f of the pot, want %g", i-1, got, want)
		}
	}
	// the middle chord parts the halves, whatever the height
	for _, v := range []float64{-0.9, 0, 0.9} {
		if b.at(-0.01, v) != 1 || b.at(0.01, v) != 2 || b.at(-1.2, v) != 0 || b.at(1.2, v) != 2 {
			t.Errorf("at the height %g lie %d, %d, %d and %d", v, b.at(-1.2, v), b.at(-0.01, v), b.at(0.01, v), b.at(1.2, v))
		}
	}
}

func TestOwnBatterLiesWhereLaterActsPour(t *testing.T) {
	for _, l := range []layout{&sectors{quarters()}, &bands{quarters()}} {
		for n, want := range map[int][4]float64{0: {0.75, 0.25, 0, 0}, 2: {0.75, 0.25, 0, 0}, 3: {0.5, 0.25, 0.25, 0}, 4: {0, 0.25, 0.25, 0.5}} {
			got := diskParts(l.upto(n, Empty))
			for i := range want {
				if !near(got[i], want[i], 0.003) {
					t.Errorf("after %d acts the pot shows %.3f, want %.3f", n, got, want)
					break
				}
			}
		}
		if got := l.upto(2, 0).at(0.5, 0.1); got != 0 {
			t.Errorf("before its act %d lies there, want the pot's own", got)
		}
	}
}

// One round of spots: each colour is poured into the one before, off its middle, so that the last lies all round in the first and the pot's own
// is the rim.
func TestSpotsLieOneInTheOther(t *testing.T) {
	r := scripted(script.PotSpots, 3, 0.4, 0.35, 0.25)
	r.Script.Acts = []script.Act{
		{Kind: script.IntoPot, Jug: 1, Share: 0.35, Round: 1},
		{Kind: script.IntoPot, Jug: 2, Share: 0.25, Round: 1},
		{Kind: script.PourOut, Jug: script.Whole, Share: 1, Lines: []float64{0.5}},
	}
	pot := mustPour(t, r)
	for n, want := range [][4]float64{{0, 1, 0, 0}, {0, 0.65, 0.35, 0}, {0, 0.4, 0.35, 0.25}} {
		got := diskParts(pot.stream.layout.upto(n, 0))
		for i := range want {
			if !near(got[i], want[i], 0.004) {
				t.Errorf("after %d acts the pot shows %.3f, want %.3f", n, got, want)
				break
			}
		}
	}
	const step = 0.01
	mean, l := vec2{}, pot.stream.layout
	for u := -1.0; u < 1; u += step {
		for v := -1.0; v < 1; v += step {
			if l.at(u, v) != 2 {
				continue
			}
			mean = vec2{mean.y + u, mean.z + v}
			if l.at(u+step, v) == 0 || l.at(u, v+step) == 0 || l.at(u-step, v) == 0 || l.at(u, v-step) == 0 {
				t.Fatalf("at (%.2f, %.2f) the last colour touches the pot's own", u, v)
			}
		}
	}
	if off := step * step * math.Hypot(mean.y, mean.z) / (0.25 * math.Pi); off < 0.1 {
		t.Errorf("the last colour lies %.3f off the middle of the pot", off)
	}
	if got := pot.Upto(2).Pot().Label(0.8, 0.8); got != Empty {
		t.Errorf("outside the pot lies %d", got)
	}
}

func TestSpotsOfSeveralRoundsHaveTheirSharesOfThePot(t *testing.T) {
	for seed := range int64(3) {
		r := scripted(script.PotSpots, seed, 0.31, 0.4, 0.29)
		s := mustPour(t, r)
		got := diskParts(s.stream.layout)
		for i, want := range []float64{0, 0.31, 0.4, 0.29} {
			if !near(got[i], want, 0.004) {
				t.Errorf("seed %d: portion %d has %.4f of the pot, want %g", seed, i-1, got[i], want)
			}
		}
	}
}

// What lies in the pot is the batch: all pieces sum to 1, every round is as large as the others, and every colour has what its acts pour.
func TestThePiecesOfThePotAreTheBatch(t *testing.T) {
	for _, between := range []bool{false, true} {
		brief := script.Brief{
			Technique: script.Pot, Shares: []float64{0.4, 0.3, 0.2, 0.1}, First: script.Whole, Last: script.Whole, PotBetween: between, Passes: 12,
		}
		acts, err := script.New(brief)
		if err != nil {
			t.Fatal(err)
		}
		rounds := newBuilder(Recipe{Script: acts, Box: Box{L: 250, W: 80, H: 60}}).pieces()
		var got [4]float64
		for i, list := range rounds {
			sum, own := 0.0, -1.0
			for k, p := range list {
				sum += p.share
				got[p.portion] += p.share
				if p.portion == 0 {
					if own >= 0 && !near(p.share, own, 1e-12) {
						t.Errorf("round %d: the pot's own pieces are %.4f and %.4f of the pot", i+1, own, p.share)
					}
					own = p.share
				}
				if alike := k > 0 && (p.portion == 0) == (list[k-1].portion == 0); alike == between && k > 1 {
					t.Errorf("round %d: piece %d is of %d after %d; the pot between: %v", i+1, k, p.portion, list[k-1].portion, between)
				}
			}
			if !near(sum, 1/float64(len(rounds)), 1e-9) {
				t.Errorf("round %d of %d is %.4f of the pot", i+1, len(rounds), sum)
			}
			if list[0].portion != 0 || list[0].act != -1 {
				t.Errorf("round %d begins with %+v, want the pot's own", i+1, list[0])
			}
		}
		for i, want := range brief.Shares {
			if !near(got[i], want, 1e-9) {
				t.Errorf("the pot between %v: portion %d is %.4f of the pot, want %g", between, i, got[i], want)
			}
		}
	}
}

// probe notes the place of the pot that is asked for.
type probe struct{ u, v *float64 }

func (p probe) at(u, v float64) int {
	*p.u, *p.v = u, v
	return 0
}

func (p probe) upto(_, _ int) layout { return p }

func someCurls() *curls { return &curls{many: 2.3, at: wobble{mean: 0.4}, angle: wobble{mean: 1.2}} }

// Even over the mould must be even over the pot: the moments of a uniform disc are 0, 0, a quarter and a quarter, and half of it lies within
// √½ of the middle.
func TestEveryPlaceOfThePotIsPouredOnce(t *testing.T) {
	eddies := []eddy{{u: 0.2, v: -0.3, reach: 0.5, turn: 2.5}, {u: -0.5, v: 0.1, reach: 0.45, turn: -1.6}}
	for name, r := range map[string]ribbon{
		"along the middle": {stream: &stream{stir: 2, surge: wobble{mean: 0.7}, eddies: eddies}, lean: 0.6},
		"upright":          {stream: &stream{stir: -1.7}, over: true},
		"standing up":      {stream: &stream{stir: 1.1, eddies: eddies}, lean: 1, back: true},
		"from the end":     {stream: &stream{run: wobble{mean: 0.3}, stir: 2, eddies: eddies}, lean: 0.3, over: true, back: true},
		"in curls":         {stream: &stream{stir: 1.4, eddies: eddies}, over: true, curls: someCurls(), lean: 0.7},
		"in laps": {
			stream: &stream{stir: 1.4}, back: true,
			laps: &laps{turns: []float64{0.6, 1}, lean: 0.4, roll: 0.2, at: 1, along: wobble{mean: 2}, drift: 0.004, curls: someCurls()},
		},
	} {
		var u, v float64
		s := r.stream
		s.layout, s.box, s.chord = probe{&u, &v}, Box{L: 200, W: 80, H: 60}, chordTable()
		r.top, r.tall = 60, 60
		const n = 46 // even, so that both sides fall on the grid alike
		var mu, mv, uu, vv, inner float64
		for i := range n * n * n {
			r.label(200*(float64(i%n)+0.5)/n, 80*(float64(i/n%n)+0.5)/n, 60*(float64(i/n/n)+0.5)/n)
			mu, mv, uu, vv = mu+u, mv+v, uu+u*u, vv+v*v
			if u*u+v*v < 0.5 {
				inner++
			}
			if u*u+v*v > 1+1e-9 {
				t.Fatalf("%s: (%g, %g) lies outside the pot", name, u, v)
			}
		}
		for what, c := range map[string][2]float64{"the mean of u": {mu, 0}, "the mean of v": {mv, 0}, "of u²": {uu, 0.25}, "of v²": {vv, 0.25}, "the inner half": {inner, 0.5}} {
			if got := c[0] / (n * n * n); !near(got, c[1], 0.008) {
				t.Errorf("%s: %s is %.4f, want %g", name, what, got, c[1])
			}
		}
	}
}

// What left the pot first is of the chord at the lip; where more of it has left along the loaf, what lies there left later, and beyond the last of it lies
// the first.
func TestThePotIsPouredFromItsLip(t *testing.T) {
	var u, v float64
	s := stream{layout: probe{&u, &v}, box: Box{L: 200, W: 80, H: 60}, chord: chordTable()}
	for poured, want := range map[float64]float64{0: -1, 0.5: 0, 1: 1} {
		if s.label(90, 0.25, poured); !near(u, want, 1e-3) {
			t.Errorf("when %g was poured the chord %.3f is at the lip, want %g", poured, u, want)
		}
	}
	s.run = wobble{mean: 0.25}
	for poured, want := range map[float64]float64{0.25: 0, 0.7501: -1} {
		if s.label(90, 0.25, poured); !near(u, want, 0.02) {
			t.Errorf("a quarter further on, when %g was poured the chord %.3f is at the lip, want %g", poured, u, want)
		}
	}
}

// A sheet v + k·u is one side of the ribbon: its rank is the area below it, counted on a grid, and what lies along it left one after the other.
func TestARibbonsSheetsLean(t *testing.T) {
	for _, k := range []float64{0, 0.2, 0.7, 1} {
		for _, p := range [][2]float64{{0.1, 0.2}, {0.9, 0.2}, {0.5, 0.9}, {0.97, 0.98}} {
			const n = 400
			below := 0
			for i := range n * n {
				if (float64(i/n)+0.5)/n+k*(float64(i%n)+0.5)/n < p[1]+k*p[0] {
					below++
				}
			}
			side, when := sheets(p[0], p[1], k)
			if want := float64(below) / (n * n); !near(side, want, 0.004) {
				t.Errorf("leaning %g, (%g, %g) is at %.4f along the lip, want %.4f", k, p[0], p[1], side, want)
			}
			if when < 0 || when > 1 {
				t.Errorf("leaning %g, (%g, %g) left at %g", k, p[0], p[1], when)
			}
		}
		a, first := sheets(0.4, 0.5, k)
		if b, then := sheets(0.6, 0.5-0.2*k, k); !near(a, b, 1e-9) || !(then > first) {
			t.Errorf("leaning %g, two places of one sheet are at %.4f and %.4f along the lip and left at %.3f and %.3f", k, a, b, first, then)
		}
	}
}

// Counted over a grid: a ribbon is spread evenly over side and time, whatever its lean.
func TestARibbonLosesNothing(t *testing.T) {
	for _, k := range []float64{0, 0.35, 1} {
		const n, cells = 600, 6
		var count [cells * cells]int
		for i := range n * n {
			side, when := sheets((float64(i%n)+0.5)/n, (float64(i/n)+0.5)/n, k)
			count[min(int(side*cells), cells-1)*cells+min(int(when*cells), cells-1)]++
		}
		for c, got := range count {
			if want := float64(n*n) / (cells * cells); math.Abs(float64(got)-want) > 0.03*want {
				t.Errorf("leaning %g, cell %d holds %d of %.0f", k, c, got, want)
			}
		}
	}
}

// An eddy turns its middle by its whole angle and its rim not at all, and keeps every distance from its middle.
func TestAnEddyTurnsAboutItsMiddle(t *testing.T) {
	e := eddy{u: 0.2, v: -0.1, reach: 0.5, turn: 1.3}
	for _, r := range []float64{0, 0.1, 0.3, 0.5, 0.7} {
		u, v := e.undo(0.2+r, -0.1)
		if got := math.Hypot(u-0.2, v+0.1); !near(got, r, 1e-12) {
			t.Errorf("a place %g from the middle comes from %g", r, got)
		}
		want := -1.3 * max(0, 1-r*r/0.25) * max(0, 1-r*r/0.25)
		if got := math.Atan2(v+0.1, u-0.2); r > 0 && !near(got, want, 1e-9) {
			t.Errorf("at %g it is turned back by %.4f, want %.4f", r, got, want)
		}
	}
}

// The share of the disc left of a chord, summed strip by strip from the width 2√(1-u²) of the disc, is the share poured.
func TestTheChordOfAShareOfThePot(t *testing.T) {
	s := stream{chord: chordTable()}
	for _, tau := range []float64{0, 0.01, 0.1, 0.33, 0.5, 0.8, 0.999, 1} {
		u := s.chordAt(tau)
		got := strips(func(b float64) float64 { return (u + 1) * 2 * math.Sqrt(max(0, 1-(b*(u+1)-1)*(b*(u+1)-1))) }) / math.Pi
		if !near(got, tau, 2e-4) {
			t.Errorf("left of the chord of %g lies %.5f of the pot", tau, got)
		}
	}
	if s.chordAt(-3) != s.chordAt(0) || s.chordAt(9) != s.chordAt(1) {
		t.Error("beyond the pour the chord runs on")
	}
}

// The stick turns the pot's middle by its whole angle, a place at r by (1-r²)^1.5 of that, what touches the wall not at all, and keeps every
// radius.
func TestTheStickTurnsTheMiddleMost(t *testing.T) {
	s := stream{stir: 1.2}
	for _, r := range []float64{0.001, 0.3, 0.7, 1} {
		u, v := s.untwist(r, 0, 0.5, 0)
		if !near(math.Hypot(u, v), r, 1e-12) {
			t.Errorf("a place at %g comes from %g", r, math.Hypot(u, v))
		}
		if got, want := math.Atan2(v, u), 0.5-1.2*math.Pow(1-r*r, 1.5); !near(got, want, 1e-9) {
			t.Errorf("at %g the pot is turned back by %.4f, want %.4f", r, got, want)
		}
	}
}
