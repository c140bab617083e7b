package swirl

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pourbench/pour/script"
)

// poured is a recipe of acts told one by one, in a mould of 200 by 80 by 60 mm.
func poured(technique script.Technique, jugs int, acts ...script.Act) Recipe {
	b := script.Brief{Technique: technique, Shares: make([]float64, jugs), Turns: 3, HeightMM: 150, Seed: 5}
	for _, a := range acts {
		if a.Jug >= 0 {
			b.Shares[a.Jug] += a.Share
		}
	}
	return Recipe{Script: script.Script{Brief: b, Acts: acts}, Thickness: 0.3, Box: Box{L: 200, W: 80, H: 60}}
}

// Layers told by hand: 60 mm times the shares.
func TestLayersLieAtTheirSharesOfTheHeight(t *testing.T) {
	r := poured(script.Layers, 3,
		script.Act{Kind: script.Pour, Jug: 2, Share: 0.5}, script.Act{Kind: script.Pour, Jug: 0, Share: 0.2},
		script.Act{Kind: script.Pour, Jug: 1, Share: 0.3}, script.Act{Kind: script.Level, Jug: script.Whole})
	s := mustPour(t, r)
	for n, want := range []float64{0, 30, 42, 60, 60} {
		if got := s.Upto(n).LevelMM(); !near(got, want, 1e-9) {
			t.Errorf("after %d acts the batter stands at %g mm, want %g", n, got, want)
		}
	}
	// Borders are uneven, and even out: over a cross-section each layer is as thick as its share says.
	uneven := s.Upto(3)
	for _, x := range []float64{20, 70, 181} {
		thick, face := [3]float64{}, uneven.Face(x)
		const steps = 400
		for i := range steps {
			y := 80 * (float64(i) + 0.5) / steps
			for z := 0.05; z < 60; z += 0.1 {
				thick[face.Label(y, z)] += 0.1 / steps
			}
		}
		if !near(thick[2], 30, 0.15) || !near(thick[0], 12, 0.15) || !near(thick[1], 18, 0.15) {
			t.Errorf("at %g mm the layers are %.2f mm thick, want 12, 18 and 30", x, thick)
		}
		if got := uneven.Label(x, 20, 1); got != 2 {
			t.Errorf("at the bottom lies %d", got)
		}
		if got := uneven.Label(x, 20, 59.9); got != 1 {
			t.Errorf("at the top lies %d", got)
		}
	}
	if got := s.Upto(1).Label(70, 20, 30.01); got != Empty {
		t.Errorf("above the first layer lies %d", got)
	}
}

// Shares that do not quite sum to 1 fill the mould all the same, to its rim and no further.
func TestTheLastPourEndsAtTheRim(t *testing.T) {
	for _, last := range []float64{0.2999, 0.3, 0.3001} {
		for _, technique := range []script.Technique{script.Layers, script.Drop, script.Column, script.Hanger} {
			s := mustPour(t, poured(technique, 2,
				script.Act{Kind: script.Pour, Jug: 0, Share: 0.7}, script.Act{Kind: script.Pour, Jug: 1, Share: last}, script.Act{Kind: script.Level, Jug: script.Whole}))
			if s.LevelMM() != 60 || s.Label(10, 10, 60) == Empty {
				t.Errorf("%s: 0.7 and %g fill the mould to %g mm", technique, last, s.LevelMM())
			}
		}
	}
}

// middle is where across the mould a portion lies, mm, over ten faces.
func middle(s *Swirl, portion uint8) float64 {
	sum, n := 0.0, 0.0
	for k := range 10 {
		var pic Picture
		s.Face(20*float64(k)+10).Draft(&pic, 80, 60)
		if part, x, _ := spot(&pic, portion); part > 0 {
			sum, n = sum+80*x*part, n+part
		}
	}
	return sum / n
}

// What is poured along a line lies about it; along two lines, about the middle between them.
func TestABedTakesTheColoursWhereTheyArePoured(t *testing.T) {
	for _, technique := range []script.Technique{script.Drop, script.Column} {
		for want, lines := range map[float64][]float64{24: {0.3}, 40: {0.5}, 56: {0.7}} {
			sum := 0.0
			for seed := range int64(4) {
				r := poured(technique, 3,
					script.Act{Kind: script.Pour, Jug: 0, Share: 0.7, Bed: true}, script.Act{Kind: script.Pour, Jug: 1, Share: 0.06, Lines: lines, Round: 1},
					script.Act{Kind: script.Pour, Jug: 2, Share: 0.24, Lines: lines, Round: 1}, script.Act{Kind: script.Level, Jug: script.Whole})
				r.Script.Brief.Seed = seed
				s := mustPour(t, r)
				if got := s.Upto(1).LevelMM(); !near(got, 42, 1e-9) {
					t.Errorf("%s: the bed stands at %g mm, want 42", technique, got)
				}
				if got := s.Upto(2).LevelMM(); !near(got, 45.6, 1e-9) {
					t.Errorf("%s: with the first colour the batter stands at %g mm, want 45.6", technique, got)
				}
				sum += middle(s.Upto(2), 1) / 4
			}
			if !near(sum, want, 5) {
				t.Errorf("%s: what is poured at %g mm lies about %.1f mm", technique, want, sum)
			}
		}
	}
}

// The ribbons out of the pot come down about the lines of their acts, over all seeds, but for that bowls keep off the walls; what is poured stands as
// high as its share.
func TestThePotIsPouredAlongItsLines(t *testing.T) {
	r := poured(script.Pot, 2,
		script.Act{Kind: script.IntoPot, Jug: 1, Share: 0.4, Round: 1}, script.Act{Kind: script.Turn, Jug: script.Whole},
		script.Act{Kind: script.PourOut, Jug: script.Whole, Share: 0.4, Lines: []float64{0.5}},
		script.Act{Kind: script.PourOut, Jug: script.Whole, Share: 0.3, Lines: []float64{0.3}},
		script.Act{Kind: script.PourOut, Jug: script.Whole, Share: 0.3, Lines: []float64{0.7}})
	r.Script.Brief.Shares, r.Script.Brief.Passes = []float64{0.6, 0.4}, 3
	var sum, n [5]float64
	for seed := range int64(12) {
		r.Script.Brief.Seed = seed
		s := mustPour(t, r)
		for _, o := range s.ops {
			if o.spread != nil {
				sum[o.act] += o.spread.rows[0].line.mean
				n[o.act]++
			}
		}
		if got := s.Upto(3).LevelMM(); !near(got, 24, 1e-9) {
			t.Errorf("0.4 of the pot stands at %g mm, want 24", got)
		}
	}
	for act, want := range map[int]float64{3: 24, 4: 56} {
		if got := sum[act] / n[act]; !near(got, want, 6) {
			t.Errorf("the ribbons of act %d come down about %.1f mm, want %g", act, got, want)
		}
	}
}

// lows counts the low points of a path and gives the bounds of it.
func lows(path []vec2) (n int, low, high vec2) {
	low, high = path[0], path[0]
	for i, p := range path {
		low, high = vec2{min(low.y, p.y), min(low.z, p.z)}, vec2{max(high.y, p.y), max(high.z, p.z)}
		if i > 0 && i < len(path)-1 && p.z < path[i-1].z && p.z <= path[i+1].z {
			n++
		}
	}
	return n, low, high
}

// The wire goes down as often as it is turned, by hand from either wall and never within 4 mm of one, down to a mm and a half over the bottom
// at the deepest, in and out by the surface.
func TestTheWireGoesDownAndUpAcrossTheMould(t *testing.T) {
	for _, turns := range []float64{1, 2, 3, 5} {
		left, along := 0, 0
		for seed := range int64(24) {
			r := poured(script.Hanger, 1)
			r.Script.Brief.Turns, r.Script.Brief.Seed = turns, seed
			b := newBuilder(r)
			path := b.through(b.waves())
			n, low, high := lows(path)
			if n != int(turns) {
				t.Errorf("%g turns, seed %d: the wire goes down %d times", turns, seed, n)
			}
			first, last := path[0], path[len(path)-1]
			if first.z != 59 || last.z != 59 || high.z > 59 {
				t.Errorf("%g turns: it goes in at %v and out at %v", turns, first, last)
			}
			if low.z < 1.5-1e-9 || low.z > 1.5+(1-0.84*0.45)*27.75 || low.y < 4-1e-9 || high.y > 76+1e-9 || high.y-low.y < 0.7*72 && turns > 1 {
				t.Errorf("%g turns: it stays within %v and %v", turns, low, high)
			}
			if first.y < last.y {
				left++
			}
			if path[1].z < 30 {
				along++
			}
		}
		if turns > 1 && (left < 4 || left > 20 || along < 4 || along > 20) {
			t.Errorf("%g turns: of 24 %d start at the left, %d go down along the wall first", turns, left, along)
		}
	}
	r := poured(script.Hanger, 1)
	r.Box.H = 12
	b := newBuilder(r)
	path := b.through(b.waves())
	if _, low, _ := lows(path); low.z < 1.5-1e-9 || low.z > 1.5+(1-0.84*0.45)*3.75 {
		t.Errorf("in a low mould it goes down to %g mm", low.z)
	}
}

// wireOf is the paths of the strokes a tool makes, what turns, and how much of it before the first of them.
func wireOf(b *builder) (paths [][]vec2, turns []round, before int) {
	for _, o := range b.ops {
		switch {
		case o.stroke != nil:
			if paths = append(paths, o.stroke.path); len(paths) == 1 {
				before = len(turns)
			}
		case o.gyre != nil:
			turns = append(turns, round{o.gyre.at, o.gyre.half, o.gyre.angle})
		case o.whirl != nil:
			turns = append(turns, round{o.whirl.centre, o.whirl.half, o.whirl.angle})
		}
	}
	return paths, turns, before
}

// comesOut says whether a way goes up through a surface at 60 mm from 7 mm and more below it, and not within a tenth of 80 mm of a wall.
func comesOut(path []vec2) bool {
	from, to := path[0], path[len(path)-1]
	return from.z < 53 && to.z > 60 && math.Abs(to.y-40) <= 32 && math.Abs(to.y-from.y) < 0.3*80
}

// Loops turn over: in each the wire runs backwards for a while, and then what is inside turns the way the wire went round.
func TestTheWireIsLedInLoops(t *testing.T) {
	for _, turns := range []float64{1, 2, 3} {
		for seed := range int64(8) {
			r := poured(script.HangerLoops, 1)
			r.Script.Brief.Turns, r.Script.Brief.Seed = turns, seed
			b := newBuilder(r)
			b.level = 60
			b.loops()
			paths, inside, before := wireOf(b)
			path := paths[0]
			lifted := 0
			for _, out := range paths[1:] {
				if out[0].z < grazeShare*60 {
					lifted++
				}
				if !comesOut(out) {
					t.Errorf("%g turns, seed %d: the wire comes out from %v to %v", turns, seed, out[0], out[len(out)-1])
				}
			}
			n, low, high := lows(path)
			if n != int(turns) || before > 0 || lifted < 1 || lifted > int(turns) || len(paths) > 1+max(tracks, lifted) || len(inside) != max(2, 2*int(turns)-1) || low.z < 1.5-1e-9 || low.y < 4-1e-9 || high.y > 76+1e-9 || high.z > 59 {
				t.Errorf("%g turns: %d low points and %d rounds, from %g to %g mm", turns, n, len(inside), low.z, high.z)
			}
			way, back, round := path[len(path)-1].y-path[0].y, 0, 0.0
			for i := 1; i < len(path); i++ {
				if (path[i].y-path[i-1].y)*way < 0 {
					back++
				}
				round += (path[i-1].y-40)*(path[i].z-30) - (path[i].y-40)*(path[i-1].z-30)
			}
			if turns > 1 && back < len(path)/8 {
				t.Errorf("%g turns: the wire runs back over %d of %d knots", turns, back, len(path))
			}
			for i, g := range inside {
				least := 2.0
				if i < len(inside)-int(turns) {
					least = 0.6 // on its way there, of which the way back takes along again what it left
				}
				if turns == 1 && g.angle*round < 0 { // the area a path goes round is positive where it turns from across to up
					t.Errorf("seed %d: the wire goes round %.0f mm², what is inside turns by %.2f", seed, round/2, g.angle)
				}
				if math.Abs(g.angle) < least || math.Abs(g.angle) > 6.8 || math.Abs(g.at.y-40)+g.half.y > 40 || math.Abs(g.at.z-30)+g.half.z > 30 || g.half.z < 13 || turns > 1 && g.half.y > 1.05*72/turns {
					t.Errorf("%g turns: inside a loop batter turns by %.2f about %v within %v", turns, g.angle, g.at, g.half)
				}
			}
		}
	}
}

// Every round of a spiral takes batter along all the same way, from the outermost, up to the walls, each further in and further round than the
// one before, so that twice the turns wind the middle up about twice as far; then the wire comes back across it and out.
func TestEveryRoundOfASpiralTakesAlongWhatLiesWithin(t *testing.T) {
	left := 0
	for seed := range int64(12) {
		for _, turns := range []float64{1, 2, 4} {
			r := poured(script.HangerSpiral, 1)
			r.Script.Brief.Turns, r.Script.Brief.Seed = turns, seed
			b := newBuilder(r)
			b.level = 60
			b.spiral()
			paths, turned, before := wireOf(b)
			for _, out := range paths {
				if !comesOut(out) || before < len(turned) || out[0].z < 0.7*b.Box.H { // from deeper it would draw all rounds up to a crest
					t.Errorf("the wire comes out from %v to %v, when %d of %d places have turned", out[0], out[len(out)-1], before, len(turned))
				}
			}
			first := turned[0]
			if first.half.y*first.half.z < 39*30 || min(first.half.y/40, first.half.z/30) < 0.85 || !near(first.at.y, 40, 1e-9) {
				t.Errorf("%g turns: the last round takes along what lies within %v of %v", turns, first.half, first.at)
			}
			sum, last := first.angle, first
			for i := 2; i < len(turned); i += 2 { // after each one where the hand lingers
				g := turned[i]
				if sum += g.angle; sum*g.angle < 0 || g.half.y >= last.half.y || g.half.z >= last.half.z {
					t.Errorf("%g turns: after %v within %v a round about %v within %v", turns, last.at, last.half, g.at, g.half)
				}
				last = g
			}
			if turns == 4 && math.Abs(last.angle) < 1.1*math.Abs(first.angle) {
				t.Errorf("seed %d: the eye turns by %.2f with the first round, what lies outside by %.2f with the last", seed, last.angle, first.angle)
			}
			for i := 1; i < len(turned); i += 2 {
				if lingers, g := turned[i], turned[i-1]; lingers.angle*g.angle < 0 || lingers.half.y > 0.97*g.half.y {
					t.Errorf("%g turns: in a round within %v the hand lingers within %v", turns, g.half, lingers.half)
				}
			}
			want := turns * 2 * math.Pi * 0.55 * (1.075 - 0.375/turns) // 0.55 of what the wire turns, a third less in the last round and more further in, and a little less in thick batter
			if got := math.Abs(sum) / want; got < 0.75 || got > 1.2 {
				t.Errorf("%g turns of the wire turn the middle by %.2f", turns, sum)
			}
			if turns == 1 && sum > 0 {
				left++
			}
		}
	}
	if left < 2 || left > 10 {
		t.Errorf("of 12 spirals %d go round to the left", left)
	}
}

// peaks is where the shift of a comb is greatest in each of its lobes, mm.
func (c *comb) peaks() (at []float64) {
	most := 0.0
	for i, v := range c.shift[:c.n+1] {
		here := c.wide * float64(i) / float64(c.n)
		switch {
		case i == 0 || v*most < 0:
			at, most = append(at, here), v
		case math.Abs(v) > math.Abs(most):
			most, at[len(at)-1] = v, here
		}
	}
	return at
}

// Every other tine goes the other way: the shift has one lobe more than it changes its sign. Tines are as far apart as the turns say, a
// little closer from wall to wall, but never evenly, and never twice in the same places.
func TestACombHasATineForEveryTurn(t *testing.T) {
	for _, turns := range []float64{3, 5, 7} {
		for along, gap := range map[bool]float64{true: 80 / turns, false: 100 / math.Round(100*turns/(0.94*80))} {
			for seed := range int64(5) {
				r := poured(script.Combed, 1)
				r.Script.Brief.Turns, r.Script.Brief.Seed = turns, seed
				b := newBuilder(r)
				b.level = 60
				b.rake(along)
				c := b.ops[len(b.ops)-1].comb
				wide, long := 200., 80.
				if along {
					wide, long = 80, 200
				}
				at := c.peaks()
				if n := float64(len(at)); n < wide/gap-1 || n > wide/gap+1.3 {
					t.Errorf("%g turns, along %v: %g tines in %g mm, %g mm apart", turns, along, n, wide, gap)
				}
				off := 0.0
				for i := 2; i < len(at)-1; i++ {
					e := math.Abs(at[i]-at[i-1]-gap) / gap
					if off = max(off, e); e > 0.5 {
						t.Errorf("%g turns, along %v: tines at %g and %g mm", turns, along, at[i-1], at[i])
					}
				}
				if off < 0.03 && len(at) > 4 {
					t.Errorf("%g turns, along %v: tines stand in step, at %.1f", turns, along, at)
				}
				if c.alongX != along || c.wide != wide || c.long != long || c.level != 60 {
					t.Errorf("along %v: the comb is %g mm wide and goes %g mm", along, c.wide, c.long)
				}
			}
		}
	}
}

// Behind every tine that goes along the loaf a spike goes down where the tine stood, no two as deep, and bends aside at its end; where they go
// across there is none.
func TestTinesLeaveSpikesBehind(t *testing.T) {
	low, high := 60., 0.
	for seed := range int64(4) {
		r := poured(script.Combed, 1)
		r.Script.Brief.Turns, r.Script.Brief.Seed = 5, seed
		b := newBuilder(r)
		b.level = 60
		b.rake(false)
		if len(b.ops) != 1 {
			t.Errorf("a comb from wall to wall makes %d moves", len(b.ops))
		}
		b.rake(true)
		at := b.ops[len(b.ops)-1].comb.peaks()
		spikes := b.ops[1 : len(b.ops)-1]
		if len(spikes) < 4 || len(spikes) > 6 {
			t.Fatalf("five tines leave %d spikes", len(spikes))
		}
		for i, o := range spikes {
			path := o.stroke.path
			first, last, foot := path[0], path[len(path)-1], 60.
			for _, p := range path {
				foot = min(foot, p.z)
			}
			if first.z != 60 || foot < 1 || foot > 48 || math.Abs(last.y-first.y) < 0.3 || o.stroke.radius > 9 {
				t.Errorf("spike %d goes from %v down to %g mm and bends to %v", i, first, foot, last)
			}
			if len(at) == len(spikes) && !near(first.y, at[i], 4) {
				t.Errorf("spike %d goes down at %.1f mm, the tine stood at %.1f mm", i, first.y, at[i])
			}
			low, high = min(low, foot), max(high, foot)
		}
	}
	if high-low < 20 {
		t.Errorf("the spikes end from %.1f to %.1f mm: too even", low, high)
	}
}

// What was poured on edge bulges by itself: lines that stood upright go here to the left and there to the right at one height, and stay where they
// were at the surface.
func TestStripesBulgeEachByItself(t *testing.T) {
	d := newDice(2)
	w := newSlump(&d, Box{L: 250, W: 80, H: 62}, 62, 8)
	turns, most := 0, 0.0
	for x := 10.; x < 250; x += 20 {
		before := 0.0
		for y := 2.; y < 80; y += 2 {
			if at, _ := w.move(x, y, 62, 1); !near(at, y, 1e-6) {
				t.Fatalf("at the surface a stripe goes from %g to %g mm", y, at)
			}
			at, _ := w.move(x, y, 20, 1)
			if (at-y)*before < 0 {
				turns++
			}
			before, most = at-y, max(most, math.Abs(at-y))
		}
	}
	if mean := float64(turns) / 12; mean < 1.5 || most < 4 || most > 16 {
		t.Errorf("across the mould stripes change sides %.1f times and go up to %.1f mm", mean, most)
	}
}

// Stripes stray to one side here and to the other there along the loaf, at the floor as at the surface, and their volume is kept.
func TestStripesStrayAlongTheLoaf(t *testing.T) {
	b := newBuilder(poured(script.Combed, 1))
	b.level = 60
	b.stray()
	c := b.ops[0].comb
	least, most := 0.0, 0.0
	for x := 10.0; x < c.wide-10; x += 5 {
		_, top := c.move(x, 40, 59, 1)
		_, low := c.move(x, 40, 1, 1)
		if !near(top, low, 1.5) {
			t.Errorf("at %g mm the stripes go to %.2f mm at the surface and to %.2f mm at the floor", x, top, low)
		}
		least, most = min(least, low-40), max(most, low-40)
	}
	if least > -4 || most < 4 || least < -20 || most > 20 {
		t.Errorf("stripes stray from %.1f to %.1f mm", least, most)
	}
}

// The hold of tines ends here and there, so that no bar shows on one line where the comb ended, and near the floor the stripes lie nearly
// as they were poured.
func TestTinesAlongTheLoafEndHereAndThere(t *testing.T) {
	b := newBuilder(poured(script.Combed, 1))
	low, high := 1.0, 0.0
	for range 40 {
		if deep := b.tineDeep(false); deep < 0.9 || deep > 1.45 {
			t.Errorf("a tine across the loaf goes %.2f of the level deep", deep)
		}
		deep := b.tineDeep(true)
		low, high = min(low, deep), max(high, deep)
	}
	if low > 0.85 || high < 1.2 || high > 1.55 {
		t.Errorf("tines along the loaf end from %.2f to %.2f of the level down", low, high)
	}
}

// Combed lines can be told apart: near the surface they are a millimetre or two wide, and near the floor, where the stripes lie nearly as they were poured,
// fewer and broader ones.
func TestCombedLinesAreFewerBelow(t *testing.T) {
	top, foot, faces := 0.0, 0.0, 0.0
	for seed := range int64(3) {
		s := mustPour(t, scripted(script.Combed, seed, 0.4, 0.2, 0.15, 0.15, 0.1))
		for x := 30.0; x < 230; x += 50 {
			f := s.Face(x)
			for y := 0.5; y < f.box.W; y += 0.25 {
				if f.Label(y, f.level-2) != f.Label(y-0.25, f.level-2) {
					top++
				}
				if f.Label(y, 4) != f.Label(y-0.25, 4) {
					foot++
				}
			}
			faces++
		}
	}
	if top, foot = top/faces, foot/faces; top < 35 || top > 60 || foot > 0.6*top {
		t.Errorf("faces pass from one colour to another %.1f times near the surface and %.1f times near the floor", top, foot)
	}
}

// Before the comb the stripes stand side by side in the order they were poured in.
func TestACombedLoafIsPouredInStripes(t *testing.T) {
	acts := []script.Act{}
	order := []int{1, 0, 2, 0, 1}
	for _, j := range order {
		acts = append(acts, script.Act{Kind: script.Pour, Jug: j, Share: 0.2})
	}
	acts = append(acts, script.Act{Kind: script.Comb, Jug: script.Whole, Round: 1, Rounds: 1})
	s := mustPour(t, poured(script.Combed, 3, acts...))
	for n := 1; n <= 5; n++ {
		part, k := s.Upto(n), 0
		for y := 0.25; y < 80; y += 0.5 {
			got := part.Face(70).Label(y, 59.9)
			if k+1 < n && got == order[k+1] {
				k++
			}
			if got == Empty && k == n-1 {
				break
			}
			if got != order[k] {
				t.Fatalf("after %d stripes %d lies at %g mm beside %d", n, got, y, order[k])
			}
		}
		if k != n-1 {
			t.Errorf("after %d pours %d stripes stand", n, k+1)
		}
	}
}

// The speed of what falls grows with the root of the height: four times as high is twice as deep. Thick batter goes less deep than thin.
func TestAStreamGoesDeeperFromHigherUp(t *testing.T) {
	b := &builder{}
	fall := func(height, thickness float64) float64 {
		b.HeightMM, b.Thickness = height, thickness
		return b.fall()
	}
	if !near(fall(300, 0.4)/fall(75, 0.4), 2, 1e-9) || fall(150, 1) >= fall(150, 0) {
		t.Errorf("from 75 and 300 mm it goes %g and %g deep, thin %g and thick %g", fall(75, 0.4), fall(300, 0.4), fall(150, 0), fall(150, 1))
	}
	if fall(0, 0) <= 0 || fall(600, 0) != fall(500, 0) {
		t.Errorf("from no height it goes %g, from 600 mm %g and from 500 mm %g", fall(0, 0), fall(600, 0), fall(500, 0))
	}
	for thickness, want := range map[float64]float64{0: 10, 0.25: 8.5, 1: 4} {
		if b.Thickness = thickness; b.thick(10, 4) != want {
			t.Errorf("between 10 thin and 4 thick batter of %g is %g, want %g", thickness, b.thick(10, 4), want)
		}
	}
}

func TestOfVeryManyPoursSomeStreamsAreDrawn(t *testing.T) {
	for pours, most := range map[int]int{10: 10, 47: 47, 96: 48, 300: 48} {
		acts := make([]script.Act, pours)
		for i := range acts {
			acts[i] = script.Act{Kind: script.Pour, Share: 1 / float64(pours)}
		}
		b := newBuilder(poured(script.Drop, 1, acts...))
		b.level = 30
		n := 0
		for b.act = range acts {
			if b.streams() {
				n++
			}
		}
		if n > most || n < most*2/3 {
			t.Errorf("of %d pours %d streams are drawn, want about %d", pours, n, most)
		}
	}
}

func TestPartsOfAPourAreBroughtIntoTheScript(t *testing.T) {
	s := mustPour(t, loaf(script.Drop, 3))
	none := s.Upto(-3)
	if none.Acts() != 0 || none.LevelMM() != 0 || none.Label(10, 10, 0) != Empty || none.Face(10).Label(10, 0) != Empty {
		t.Errorf("before the first act %d acts stand at %g mm", none.Acts(), none.LevelMM())
	}
	var pic Picture
	for name, draw := range map[string]func(){
		"a face": func() { none.Face(10).Draft(&pic, 8, 8) },
		"a cut":  func() { none.Lengthwise(10).Draft(&pic, 8, 8) },
		"above":  func() { none.Top(10).Draft(&pic, 8, 8) },
	} {
		draw()
		for i := range pic.Pixels {
			if pic.Pixels[i] != (Pixel{}) {
				t.Errorf("%s of an empty mould shows %v", name, pic.Pixels[i])
			}
		}
	}
	if one, two := s.Upto(4), s.Upto(6).Upto(4); one.LevelMM() != two.LevelMM() || len(one.ops) != len(two.ops) {
		t.Errorf("the first 4 of 6 acts stand at %g mm, of all at %g mm", two.LevelMM(), one.LevelMM())
	}
}

func TestEverySideOfTheMouldHasItsBounds(t *testing.T) {
	for name, side := range map[string]func(b *Box) *float64{
		"long": func(b *Box) *float64 { return &b.L }, "wide": func(b *Box) *float64 { return &b.W }, "high": func(b *Box) *float64 { return &b.H },
	} {
		for v, fits := range map[float64]bool{9.99: false, 10: true, 2000: true, 2000.1: false, -5: false} {
			r := loaf(script.Layers, 1)
			*side(&r.Box) = v
			_, err := New(r)
			if (err == nil) != fits || !fits && (!errors.Is(err, ErrRecipe) || !strings.Contains(err.Error(), "10 to 2000 mm")) {
				t.Errorf("%g mm %s: %v", v, name, err)
			}
		}
	}
	for v, fits := range map[float64]bool{-0.01: false, 0: true, 1: true, 1.01: false} {
		r := loaf(script.Layers, 1)
		r.Thickness = v
		if _, err := New(r); (err == nil) != fits {
			t.Errorf("a thickness of %g: %v", v, err)
		}
	}
}

func TestRecipesAreEqualWhereEverythingIs(t *testing.T) {
	if !loaf(script.Drop, 1).Equal(loaf(script.Drop, 1)) {
		t.Error("a recipe is not equal to itself")
	}
	for name, change := range map[string]func(r *Recipe){
		"thickness": func(r *Recipe) { r.Thickness = 0.31 }, "length": func(r *Recipe) { r.Box.L++ }, "width": func(r *Recipe) { r.Box.W++ },
		"height": func(r *Recipe) { r.Box.H++ }, "seed": func(r *Recipe) { r.Script.Brief.Seed++ },
		"technique": func(r *Recipe) { r.Script.Brief.Technique = script.Column },
	} {
		r := loaf(script.Drop, 1)
		if change(&r); r.Equal(loaf(script.Drop, 1)) {
			t.Errorf("another %s gives an equal recipe", name)
		}
	}
}
