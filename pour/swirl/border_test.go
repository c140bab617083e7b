package swirl

import (
	"math"
	"slices"
	"testing"

	"pourbench/pour/script"
)

// anyBorder is a border 30 mm up in a mould of 250 by 80 by 62 mm that gives way by some millimetres.
func anyBorder(seed int64) *border {
	d := newDice(seed)
	return &border{width: 80, at: 30, down: 14, up: 9, ground: newGround(&d, Box{L: 250, W: 80, H: 62}, uneven{
		swell: 1.2, furrow: 2, dent: 4, lump: 3, half: 10, cover: 2,
	})}
}

// height is the ground worked out place by place, as its words say.
func (g *ground) height(x, y float64) float64 {
	dents, sum := 0.0, 0.0
	for _, l := range g.lobes {
		off := math.Hypot((x-l.x)*l.invX, (y-l.y)*l.invY)
		q := max(0, 1-off*off)
		if l.deep > 0 {
			dents += l.deep * l.deep * q * q * q * q
		} else {
			sum -= l.deep * q * q
		}
	}
	for _, s := range g.swells {
		sum += s.amp * math.Sin(s.k*x+s.m*y+s.offset)
	}
	u := (y - g.furrow.line.at(x)) / g.furrow.half
	return sum - math.Sqrt(dents) - g.furrow.deep.at(x)*math.Pow(max(0, 1-u*u), 2)
}

// Two dents side by side pass into each other in a rounded crest: nowhere does its slope change suddenly.
func TestDentsMeetInRoundedCrests(t *testing.T) {
	g := ground{lobes: []lobe{{x: 0, y: 30, invX: 0.1, invY: 0.1, deep: 4}, {x: 0, y: 42, invX: 0.1, invY: 0.1, deep: 3}}, furrow: furrow{half: 1}}
	dst := make([]float64, 1601)
	g.heights(0, dst, 0.05)
	if crest := dst[36*20]; crest > -1 || dst[30*20] > -4 || dst[42*20] > -3 {
		t.Errorf("the dents are %.2f and %.2f mm deep, between them %.2f mm", -dst[30*20], -dst[42*20], -crest)
	}
	for j := 2; j < len(dst); j++ {
		if bend := math.Abs(dst[j] - 2*dst[j-1] + dst[j-2]); bend > 0.002 { // 0.05 mm of a curve of 1.25 mm radius
			t.Fatalf("at %.2f mm the slope changes by %.3f", 0.05*float64(j), bend/0.05)
		}
	}
}

// Borders of one loaf are not alike: some bow, some are scalloped finer than others.
func TestNoTwoPoursLeaveTheSameMarks(t *testing.T) {
	b := newBuilder(poured(script.Layers, 2))
	var least, most uneven
	for i := range 12 {
		u := b.marks()
		if i == 0 {
			least, most = u, u
		}
		least.bow, most.bow = min(least.bow, u.bow), max(most.bow, u.bow)
		least.half, most.half = min(least.half, u.half), max(most.half, u.half)
		least.furrow, most.furrow = min(least.furrow, u.furrow), max(most.furrow, u.furrow)
	}
	if most.bow < least.bow+1 || most.half < 1.4*least.half || most.furrow < 2*least.furrow {
		t.Errorf("the marks of twelve pours lie between %+v and %+v", least, most)
	}
}

func TestGroundIsAsHighAsItsDentsAndWavesSay(t *testing.T) {
	for seed := range int64(4) {
		g := anyBorder(seed).ground
		dst := make([]float64, 81)
		low, high := 0.0, 0.0
		for _, x := range []float64{0, 33.3, 120, 250} {
			g.heights(x, dst, 1)
			for j, got := range dst {
				if want := g.height(x, float64(j)); !near(got, want, 1e-9) {
					t.Fatalf("at (%g, %d) the ground is %g mm high, want %g", x, j, got, want)
				}
				low, high = min(low, got), max(high, got)
			}
		}
		if high-low < 3 || high-low > 14 {
			t.Errorf("seed %d: the ground lies between %.1f and %.1f mm", seed, low, high)
		}
	}
}

func TestABorderKeepsAreaAndItsWayBackUndoesIt(t *testing.T) {
	b := anyBorder(3)
	d := newDice(8)
	var det float64
	for range 800 {
		x, y, z := d.Between(0, 250), d.Between(0.1, 79.9), d.Between(0.1, 61.9)
		var cut dented
		b.cut(x, &cut)
		back := func(y, z float64) (float64, float64) { return cut.press(y, z, -1) }
		det = max(det, math.Abs(determinant(back, y, z, 1e-4)-1))
		a, c := cut.press(y, z, 1)
		if e, f := cut.press(a, c, -1); !near(e, y, 0.1) || !near(f, z, 0.1) {
			t.Fatalf("(%.1f, %.1f, %.1f) comes back as (%.2f, %.2f)", x, y, z, e, f)
		}
		if _, c := cut.press(0, z, 1); c > 62 || c < 0 {
			t.Fatalf("%g mm up the wall goes to %g mm", z, c)
		}
		if a, _ := cut.press(80, z, 1); !near(a, 80, 1e-9) {
			t.Fatalf("%g mm up the right wall goes to %g mm across", z, a)
		}
	}
	if det > 0.06 { // one mesh of straight pieces ends in the differences now and then
		t.Errorf("an area changes by %.3f of itself", det)
	}
}

// Where the border goes is what its rise says while that is small: the window is flat at the border. So far under and over it nothing moves.
func TestABorderGoesUpAndDownWithItsGround(t *testing.T) {
	b := anyBorder(5)
	b.ground.lobes, b.ground.furrow.deep = nil, wobble{}
	for i := range b.ground.swells {
		b.ground.swells[i].amp /= 20
	}
	mean := 0.0
	for i := range 8000 {
		mean += b.ground.height(77, float64(i)/100) / 8000
	}
	moved := 0.0
	for y := 1.0; y < 80; y += 3 {
		a, z := b.move(77, y, 30, 1)
		if want := b.ground.height(77, a) - mean; !near(z-30, want, 0.01) {
			t.Errorf("at %g mm the border goes %.3f mm up, want %.3f", a, z-30, want)
		}
		moved = max(moved, math.Abs(z-30))
		for _, still := range []float64{0, 16, 39, 62} {
			if e, f := b.move(77, y, still, 1); e != y || f != still {
				t.Errorf("%g mm up, beyond its reach, (%g) goes to (%g, %g)", still, y, e, f)
			}
		}
	}
	if moved < 0.02 {
		t.Errorf("the border moves by %g mm at most", moved)
	}
}

// Thin batter is dented wider and less deep than thick batter, which has lumps; a thin layer is dented less than a thick one.
func TestHowLayersAreDentedGoesByTheTrace(t *testing.T) {
	at := func(thickness float64) uneven {
		r := loaf(script.Layers, 1)
		r.Thickness = thickness
		return newBuilder(r).trace()
	}
	thin, thick := at(0), at(1)
	if thin.swell <= thick.swell || thin.furrow <= thick.furrow || thin.half <= thick.half || thin.lump > 0.5 || thick.lump < 2 || thick.dent <= thin.dent {
		t.Errorf("thin batter is uneven by %+v, thick by %+v", thin, thick)
	}
	for layer, most := range map[float64]float64{0.04: 62 * 0.04 * mostUneven, 0.3: 9} {
		s := mustPour(t, scripted(script.Layers, 3, 1-layer, layer))
		for _, o := range s.ops {
			if o.border == nil {
				continue
			}
			for _, l := range o.border.ground.lobes {
				if math.Abs(l.deep) > most+1e-9 {
					t.Errorf("a layer of %g is dented %.2f mm deep, want %.2f at most", layer, l.deep, most)
				}
			}
			if o.border.at-o.border.down < 0 || o.border.at+o.border.up > 62+1e-9 {
				t.Errorf("a border at %g mm moves what lies from %g to %g mm", o.border.at, o.border.at-o.border.down, o.border.at+o.border.up)
			}
		}
	}
}

// alike is how alike a border's heights are so many mm further along the loaf: the correlation over several borders and places, 1 for the same.
func alike(t *testing.T, off float64) float64 {
	t.Helper()
	var both, here, there float64
	for seed := range int64(12) {
		for _, o := range mustPour(t, scripted(script.Layers, seed, 0.4, 0.3, 0.3)).ops {
			if o.border == nil {
				continue
			}
			var a, c dented
			for x := 40.0; x < 200; x += 40 {
				o.border.cut(x, &a)
				o.border.cut(x+off, &c)
				for j := range a.rise {
					both, here, there = both+a.rise[j]*c.rise[j], here+a.rise[j]*a.rise[j], there+c.rise[j]*c.rise[j]
				}
			}
		}
	}
	return both / math.Sqrt(here*there)
}

// Layers lie as the jug went, along the loaf: bars 25 mm apart share their borders, bars further apart do not.
func TestNeighbouringBarsShareTheirBorders(t *testing.T) {
	beside, far := alike(t, 25), alike(t, 50)
	if beside < 0.65 || far > 0.4 {
		t.Errorf("borders 25 and 50 mm apart are alike by %.2f and %.2f", beside, far)
	}
}

// A layer pushes the one below it into scallops that do not hang over: upwards a face passes from the one to the other once, nearly everywhere.
func TestLayersLieInScallops(t *testing.T) {
	over, all := 0.0, 0.0
	for seed := range int64(8) {
		s := mustPour(t, scripted(script.Layers, seed, 0.4, 0.25, 0.35))
		for x := 50.0; x < 250; x += 90 {
			for y := 1.0; y < 79; y += 2 {
				var up [124]int
				s.Upright(x, y, up[:])
				changes := 0
				for k := 1; k < len(up); k++ {
					if up[k] != up[k-1] {
						changes++
					}
				}
				if all++; changes > 2 {
					over++
				}
			}
		}
	}
	if over > 0.001*all {
		t.Errorf("%.2f %% of the loaf has a layer that hangs over another", 100*over/all)
	}
}

// A calm layer's clouds are no rings from above: across the mould they are passed one after the other, each a few centimetres wide.
func TestCloudsOfALayerAreStrokes(t *testing.T) {
	for pour := range 6 {
		l := &layer{plain(0), float64(pour)}
		for x := 0.0; x < 300; x += 7 {
			before, low := l.grain(x, -1, 50)
			for y := 0.0; y < 80; y++ {
				along, across := l.grain(x, y, 50)
				if along-before < 0.1 || along-before > 1.1 || math.Abs(across-low) > 0.1 {
					t.Fatalf("pour %d at (%g, %g): to the mm across clouds go on by %.2f mm and rise by %.2f mm", pour, x, y, along-before, across-low)
				}
				before, low = along, across
			}
		}
	}
}

// What is poured last covers what lies below even where the top is planed.
func TestTheLastLayerCovers(t *testing.T) {
	for seed := range int64(8) {
		s := mustPour(t, scripted(script.Layers, seed, 0.5, 0.455, 0.045))
		for x := 5.0; x < 250; x += 40 {
			f := s.Face(x)
			for y := 1.0; y < f.box.W; y += 2 {
				if got := f.Label(y, f.level-SkimMM); got != 2 {
					t.Fatalf("seed %d at (%g, %g): planed, it shows portion %d", seed, x, y, got)
				}
			}
		}
	}
}

// Where a thread of the stream falls it comes through: in each such place the ground is pushed in by about what was asked, no wider than a thread is.
func TestThreadsOfBatterComeThroughTheGround(t *testing.T) {
	d := newDice(3)
	g := newGround(&d, Box{L: 250, W: 80, H: 60}, uneven{drip: 5, drips: 6})
	rise := make([]float64, 161)
	for _, l := range g.lobes {
		g.heights(l.x, rise, 0.5)
		if low := slices.Min(rise); low > -1.9 || low < -7.1 { // two may meet
			t.Errorf("at %.0f mm the ground lies %.1f mm deep", l.x, low)
		}
		wide := 0.0
		for _, z := range rise {
			if z < -0.01 {
				wide += 0.5
			}
		}
		if wide < 3 || wide > 40 {
			t.Errorf("at %.0f mm %.1f mm are pushed in", l.x, wide)
		}
	}
	if len(g.lobes) != 6 {
		t.Errorf("%d drips of 6", len(g.lobes))
	}
}
