package swirl

import (
	"math"
	"slices"
	"testing"

	"pourbench/pour/script"
)

// bedded is a bed of 42 mm and one pour of 3 mm along the lines, in a mould 80 mm wide.
func bedded(technique script.Technique, seed int64, lines ...float64) Recipe {
	r := poured(technique, 3,
		script.Act{Kind: script.Pour, Jug: 0, Share: 0.7, Bed: true}, script.Act{Kind: script.Pour, Jug: 1, Share: 0.05, Lines: lines, Round: 1},
		script.Act{Kind: script.Pour, Jug: 2, Share: 0.25, Lines: []float64{0.5}, Round: 1}, script.Act{Kind: script.Level, Jug: script.Whole})
	r.Script.Brief.Seed = seed
	return r
}

// stretch is over how much of the width of a face a portion lies, and how deep from the surface, mm.
func stretch(f *Face, portion int) (wide, deep float64) {
	const step = 0.5
	for y := step / 2; y < f.box.W; y += step {
		lies := 0.0
		for z := step / 2; z < f.level; z += step {
			if f.Label(y, z) == portion {
				lies, deep = step, max(deep, f.level-z)
			}
		}
		wide += lies
	}
	return wide, deep
}

// Laid over the whole width the pour would be 3 mm deep and 80 mm wide; a stream goes deep and stays where it falls. One that is held at a post
// runs out more. Of the drop it is all that is led there and back.
func TestAStreamStaysNarrowAndGoesDeep(t *testing.T) {
	for technique, most := range map[script.Technique]struct{ wide, wideMean, deep, deepMean float64 }{
		script.Drop: {52, 40, 8, 15}, script.Column: {56, 38, 7, 11},
	} {
		wide, deep, n := 0.0, 0.0, 0.0
		for seed := range int64(4) {
			s := mustPour(t, bedded(technique, seed, 0.5)).Upto(2)
			for _, x := range []float64{20, 90, 170} {
				w, d := stretch(s.Face(x), 1)
				wide, deep, n = wide+w, deep+d, n+1
				if w > most.wide || d < most.deep {
					t.Errorf("%s, seed %d at %g mm: a stream is %.1f mm wide and %.1f mm deep", technique, seed, x, w, d)
				}
			}
		}
		if wide/n > most.wideMean || deep/n < most.deepMean {
			t.Errorf("%s: streams are %.1f mm wide and %.1f mm deep in the mean", technique, wide/n, deep/n)
		}
	}
}

// ways counts how often the portion changes across a face, at a height.
func ways(f *Face, z float64) (n int) {
	const step = 0.1
	before := f.Label(step/2, z)
	for y := 1.5 * step; y < f.box.W; y += step {
		if label := f.Label(y, z); label != before {
			n, before = n+1, label
		}
	}
	return n
}

// Forty rings have two sides each; so many lie across a bar that a stripe is 1 to 4 mm wide in the mean.
func TestAColumnIsManyNarrowRings(t *testing.T) {
	for seed := range int64(3) {
		column := mustPour(t, loaf(script.Column, seed))
		rings, n := 0.0, 0.0
		for _, x := range []float64{30, 110, 190} {
			rings, n = rings+float64(ways(column.Face(x), 40)), n+1
		}
		if wide := 80 / (rings/n + 1); wide < 1 || wide > 4 {
			t.Errorf("seed %d: a column's stripes are %.2f mm wide", seed, wide)
		}
	}
}

// Of two lines of batter one may have more here, at the cost of the other: together they are what was poured. By hand: parts of a half and
// a half times 1.5 and 0.5 are 3 to 1.
func TestLinesOfBatterSwellAndThinAlongTheLoaf(t *testing.T) {
	s := &spread{bottom: 40, top: 44, width: 100, rows: []row{
		{part: 0.5, half: 10, line: wobble{mean: 25}, flush: wobble{mean: 0.5}},
		{part: 0.5, half: 10, line: wobble{mean: 75}, flush: wobble{mean: -0.5}, swell: wobble{mean: 1}},
	}}
	l := s.at(0)
	if _, area := l.at(45); !near(area, 300, 1e-9) {
		t.Errorf("on the left lie %.2f mm², want 300", area)
	}
	if thick, area := l.at(56); thick <= 0 || area <= 300 {
		t.Errorf("the right one is not twice as wide: at 56 mm %.3f mm", thick)
	}
	s.bottom = 43.6
	s.rows[1].swell.mean, s.rows[1].flush.mean = -5, -5
	l = s.at(0)
	if l.lumps[1].half != 10*leastOf || !(l.lumps[1].area > 0) {
		t.Errorf("a line thins to %+v", l.lumps[1])
	}
}

// The same batter poured along the same lines lies in broader and shallower lumps the thicker it is, and its streams are hardly drawn out.
func TestThickBatterLiesInBroadLumpsAndHardlySinks(t *testing.T) {
	mean := func(thickness float64) (half, roll, depth float64) {
		n := 0.0
		for seed := range int64(3) {
			r := bedded(script.Drop, seed, 0.3, 0.7)
			r.Thickness = thickness
			for _, o := range mustPour(t, r).ops {
				switch {
				case o.spread != nil:
					half, n = half+o.spread.rows[0].half, n+1
				case o.plume != nil:
					roll, depth = roll+o.plume.roll.mean, depth+o.plume.depth.mean
				}
			}
		}
		return half / n, roll / n, depth / n
	}
	thinHalf, thinRoll, thinDepth := mean(0.1)
	half, roll, depth := mean(0.8)
	if half < 1.35*thinHalf || roll > 0.6*thinRoll || depth > 0.8*thinDepth {
		t.Errorf("thin batter lies %.1f mm to either side, rolls by %.2f down to %.1f mm; thick %.1f mm, %.2f and %.1f mm", thinHalf, thinRoll, thinDepth, half, roll, depth)
	}
}

// A stream ends in a bulb: the plume that draws it out ends below it, so that its end spreads.
func TestAStreamEndsInABulb(t *testing.T) {
	b := newBuilder(bedded(script.Drop, 1, 0.5))
	b.level = 60
	for range 40 {
		r := row{half: 6, line: wobble{mean: 40}}
		b.bulb(&r, 30)
		p := b.ops[len(b.ops)-1].plume
		if p.depth.mean < 30*1.1 || p.depth.mean > 30*1.6 || p.reach.mean < 1.5*r.half {
			t.Fatalf("a lump 30 mm deep and 6 mm to either side is drawn out by a plume %.1f mm deep and %.1f mm wide", p.depth.mean, p.reach.mean)
		}
		p.depth, p.lean, p.roll, p.reach = wobble{mean: p.depth.mean}, wobble{}, wobble{mean: 0.2}, wobble{mean: p.reach.mean}
		left, _ := p.move(0, 38, 31, 1)
		if left >= 38 {
			t.Fatalf("at its end batter 2 mm off the axis goes to %.2f mm off it", 40-left)
		}
	}
}

// A hand goes unevenly: a stream hangs in bulbs of 20 to 90 mm along the loaf, here closer and there further apart, and its line goes to and fro across
// the mould by tens of millimetres, so that a cut along the loaf meets it more than once, but from one bar to the next by less than two fifths of the
// mould, and never to a wall.
func TestAHandGoesUnevenly(t *testing.T) {
	for seed := range int64(6) {
		var s *spread
		for _, o := range mustPour(t, bedded(script.Drop, seed, 0.5)).ops {
			if s == nil {
				s = o.spread
			}
		}
		var tops, lines []float64
		before, rising := 0.0, false
		for x := 0.0; x < 250; x++ {
			high := 1 + s.rows[0].hang.at(x)
			if rising && high < before {
				tops = append(tops, x)
			}
			before, rising = high, high > before
			lines = append(lines, s.rows[0].line.at(x))
		}
		if len(tops) < 4 || len(tops) > 12 {
			t.Fatalf("seed %d: the stream hangs deepest at %v", seed, tops)
		}
		least, most := math.Inf(1), 0.0
		for i, x := range tops[1:] {
			least, most = min(least, x-tops[i]), max(most, x-tops[i])
		}
		if most < 1.3*least || least < 8 {
			t.Errorf("seed %d: its bulbs are %.0f to %.0f mm apart", seed, least, most)
		}
		low, high := slices.Min(lines), slices.Max(lines)
		if high-low < 28 || low < dropWall*80 || high > (1-dropWall)*80 {
			t.Errorf("seed %d: its line goes from %.1f to %.1f mm", seed, low, high)
		}
		aside := 0.0
		for i, y := range lines[25:] {
			aside = max(aside, math.Abs(y-lines[i]))
		}
		if aside < 10 || aside > 30 {
			t.Errorf("seed %d: from one bar to the next its line goes %.1f mm aside", seed, aside)
		}
	}
}

// A hand led to and fro goes evenly and turns round quickly: for most of the way it is as steep as it is in the mean, which a round wave is not.
func TestAZigzagGoesEvenlyToAndFro(t *testing.T) {
	even := func(w wobble) float64 {
		sum, steepest := 0.0, 0.0
		for x := 0.0; x < 100; x += 0.1 {
			slope := math.Abs(w.at(x+0.1) - w.at(x))
			sum, steepest = sum+slope/1000, max(steepest, slope)
		}
		return sum / steepest
	}
	w := wobble{amp: [2]float64{20, 0}, k: [2]float64{2 * math.Pi / 100, 0}}
	round := even(w)
	if w.zigzag = true; !near(round, 2/math.Pi, 0.01) || even(w) < 0.78 {
		t.Errorf("a zigzag is %.2f of its steepest in the mean, a round wave %.2f", even(w), round)
	}
	if w.near, w.far = -10, 10; math.Abs(w.at(25)) > 10 || math.Abs(w.at(25)) < 9 || !near(w.at(2), 1.6, 0.4) {
		t.Errorf("held within 10 mm it goes %.2f mm aside at its end and %.2f mm at first", w.at(25), w.at(2))
	}
}

// Bulbs are round and broad and the gaps between them narrow and sharp: more than half of the way is deeper than their mean, and they bend more in a gap.
func TestBulbsAreBroaderThanTheGapsBetweenThem(t *testing.T) {
	l := lobes{}
	deep, sum := 0, 0.0
	const n = 1000
	for i := range n {
		v := l.at(2 * math.Pi * float64(i) / n)
		if sum += v; v > 0 {
			deep++
		}
	}
	if !near(sum/n, 0, 0.02) || deep < 52*n/100 {
		t.Errorf("in the mean they are %.3f, and %d of %d places are in a bulb", sum/n, deep, n)
	}
	if bulb, gap := l.at(0)-l.at(0.2), l.at(math.Pi+0.2)-l.at(math.Pi); gap < 3*bulb {
		t.Errorf("they fall by %.4f from the middle of a bulb and rise by %.4f from that of a gap", bulb, gap)
	}
}

// A stream goes along one line alone there and back; into a mould more than half full there and back along each, and alone once more: thinner strands lie side by
// side about each line, and turn back before the wall one before the other.
func TestAStreamNearTheRimIsLedThereAndBack(t *testing.T) {
	b := newBuilder(bedded(script.Drop, 1, 0.5))
	rows := []row{{part: 0.4, half: 10, line: wobble{mean: 30}, flush: b.d.spurts(dropSpurts), hang: b.d.bulbs(dropHang)}, {part: 0.6, half: 8, line: wobble{mean: 50}}}
	b.level = 0.3 * b.Box.H
	if got := b.strands(rows, 300); len(got) != 2 || got[0].half != 10 {
		t.Errorf("into a mould hardly filled it goes %d times", len(got))
	}
	if got := b.strands(rows[:1], 300); len(got) != 2 || got[1].line.offset == got[0].line.offset {
		t.Errorf("alone into a mould hardly filled it goes %d times, want there and another way back", len(got))
	}
	b.level = 0.8 * b.Box.H
	if got := b.strands(rows, 300); len(got) != 4 {
		t.Errorf("along two lines it goes %d times, want there and back along both", len(got))
	}
	got := b.strands(rows[:1], 300)
	if len(got) != 3 {
		t.Fatalf("along one line it goes %d times, want there, back and there", len(got))
	}
	for i, s := range got {
		if s.flush.amp[0] > 0.5*rows[0].flush.amp[0] || s.hang.lobes.amp > 0.5*dropHang {
			t.Errorf("a strand runs by %.2f unevenly and hangs by %.2f, want less than half of what one stream does", s.flush.amp[0], s.hang.lobes.amp)
		}
		if s.half >= 9.7 || s.part < 0.04 || s.part > 0.22 {
			t.Errorf("a strand of %.2f of the pour is %.1f mm wide", s.part, 2*s.half)
		}
		if i > 0 && s.line.near < got[i-1].line.near+0.5*dropNear {
			t.Errorf("at the wall a strand turns back at %.1f mm, the one beside it at %.1f mm", s.line.near, got[i-1].line.near)
		}
	}
	if left, mid, right := got[0].line.mean-30, math.Abs(got[1].line.mean-30), got[2].line.mean-30; left > -0.5*dropNear || mid > 0.5*dropFar || right < 0.5*dropNear {
		t.Errorf("strands lie %.1f, %.1f and %.1f mm aside, want one to each side and one between", left, mid, right)
	}
}

// What falls at the rim lies on its edge, half as deep again as wide or more; deeper in the mould it is as broad as a stream.
func TestWhatFallsAtTheRimLiesOnItsEdge(t *testing.T) {
	b := newBuilder(bedded(script.Drop, 1, 0.5))
	edge := func(level float64) (times float64) {
		b.level = level * b.Box.H
		for range 20 {
			for _, s := range b.strands([]row{{part: 1, half: 9, line: wobble{mean: 40}}}, 150) {
				times += s.part * 150 / (roundLump * s.half) / (2 * s.half) / 60
			}
		}
		return times
	}
	if deep, rim := edge(0.7), edge(0.95); rim < 1.2 || rim > 2.2 || deep > 0.6*rim {
		t.Errorf("strands are %.2f times as deep as wide in the mould and %.2f times at its rim", deep, rim)
	}
}

// Batter of the bed's own kind falls broader than a colour poured alike, and so less deep.
func TestABedsOwnBatterFallsBroader(t *testing.T) {
	half := func(bed, jug int) float64 {
		b := newBuilder(bedded(script.Drop, 1, 0.5))
		b.acts = slices.Clone(b.acts)
		b.acts[0].Jug = bed
		b.act, b.level = 1, 0.4*b.Box.H
		b.streamed(script.Act{Kind: script.Pour, Jug: jug, Share: 0.05, Lines: []float64{0.5}})
		for _, o := range b.ops {
			if o.spread != nil {
				return o.spread.rows[0].half
			}
		}
		return 0
	}
	for bed := range 2 {
		if own, other := half(bed, bed), half(bed, 1-bed); other <= 0 || own < 1.3*other {
			t.Errorf("the bed's own batter, of jug %d, falls %.1f mm wide, a colour %.1f mm", bed, 2*own, 2*other)
		}
	}
}

// Near the rim the strands of an act fall one after the other, each its part of the pour; deeper all at once.
func TestTheLastStrandsOfADropFallOneAfterTheOther(t *testing.T) {
	s := mustPour(t, loaf(script.Drop, 1))
	spreads, rises, from := map[int][]*spread{}, map[int]float64{}, map[int]float64{}
	for _, o := range s.ops {
		switch {
		case o.slab != nil:
			if rises[o.act] == 0 {
				from[o.act] = o.slab.bottom
			}
			rises[o.act] += o.slab.top - o.slab.bottom
		case o.spread != nil:
			spreads[o.act] = append(spreads[o.act], o.spread)
		}
	}
	last := 0
	for act, list := range spreads {
		if want := 62 * s.recipe.Script.Acts[act].Share; !near(rises[act], want, 1e-6) {
			t.Errorf("act %d rises by %.3f mm, want %.3f mm", act, rises[act], want)
		}
		alone := len(list) > 1
		if over := from[act] >= dropOver*62; over != alone {
			t.Errorf("act %d falls from %.1f mm up in %d spreads", act, from[act], len(list))
		} else if over {
			last++
		}
	}
	if last == 0 {
		t.Error("no act falls so near the rim")
	}
}

// Over a mould hardly filled the hand goes less to and fro; now and then a stream is thinner than others and deeper.
func TestAHandIsCalmOverADeepMouldAndSomeStreamsBreakThrough(t *testing.T) {
	swing := func(level float64) float64 {
		b := newBuilder(bedded(script.Drop, 1, 0.5))
		b.level = level
		return b.toAndFro(40).amp[0]
	}
	if low, high := swing(0), swing(40); !near(low/high, dropCalm, 1e-9) {
		t.Errorf("it goes %.1f mm aside over an empty mould, and %.1f mm near the rim", low, high)
	}
	through, n := 0., 0.
	b := newBuilder(bedded(script.Drop, 1, 0.5))
	for b.act = 1; n < 60; n++ {
		b.level, b.ops = 25, nil
		b.streamed(script.Act{Kind: script.Pour, Jug: 1, Share: 0.01, Lines: []float64{0.3, 0.7}})
		for _, o := range b.ops {
			if o.spread != nil && o.spread.rows[0].half < 1.1*6.5*b.thick(dropThin, dropThick)/b.fall() {
				through++
			}
		}
	}
	if part := through / n; part < 0.1 || part > 0.5 {
		t.Errorf("%.2f of the streams break through", part)
	}
}

// The hand swings alike each time: strands of one stream keep apart along most of the loaf, and where they are no plume is drawn between them.
func TestStrandsOfAStreamSeldomCross(t *testing.T) {
	crossed, looked := 0, 0
	for seed := int64(1); seed < 5; seed++ {
		s := mustPour(t, loaf(script.Drop, seed))
		for i, o := range s.ops {
			if o.slab != nil || o.spread == nil || o.spread.bottom < dropBack*s.recipe.Box.H || len(o.spread.rows) < 2 {
				continue
			}
			if i+1 < len(s.ops) && s.ops[i+1].plume != nil {
				t.Errorf("seed %d: a plume is drawn among strands %.1f mm up", seed, o.spread.bottom)
			}
			for x := 5.0; x < s.recipe.Box.L; x += 10 {
				for k := 1; k < len(o.spread.rows); k++ {
					looked++
					a, b := &o.spread.rows[k-1].line, &o.spread.rows[k].line
					if (a.at(x) < b.at(x)) != (a.mean < b.mean) {
						crossed++
					}
				}
			}
		}
	}
	if looked < 200 || crossed > looked/20 {
		t.Errorf("%d of %d pairs of strands have crossed", crossed, looked)
	}
}
