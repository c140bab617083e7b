package swirl

import (
	"context"
	"image/color"
	"math"
	"testing"

	"pourbench/pour/script"
)

// Poured from one end, a ribbon comes down deepest, and so is narrowest, the further from that end the later it is poured: over all seeds the
// last third of the ribbons lies further off than the first.
func TestTonguesGoForthFromTheLip(t *testing.T) {
	var sum, n [3]float64
	for seed := range int64(8) {
		s := mustPour(t, loaf(script.PotEnd, seed))
		for _, o := range s.ops {
			if o.spread == nil {
				continue
			}
			at, least := 0.0, math.Inf(1)
			for x := 0.0; x <= 250; x += 2 {
				if v := o.spread.rows[0].swell.at(x); v < least {
					at, least = x, v
				}
			}
			third := min(int(3*o.spread.top/s.recipe.Box.H), 2)
			sum[third], n[third] = sum[third]+at, n[third]+1
		}
	}
	if first, last := sum[0]/n[0], sum[2]/n[2]; !(last > first+60) {
		t.Errorf("the first tongues come down %.0f mm from the lip, the last %.0f mm", first, last)
	}
}

// A ribbon that sank in is two colours side by side, so its foot is drawn where it lies: against points traced one by one, at 4 and 8 pixels to
// the mm.
func TestTheFootOfARibbonIsDrawnWhereItLies(t *testing.T) {
	box := Box{L: 100, W: 80, H: 60}
	st := &stream{layout: &bands{beside{until: []float64{0.5, 1}, portion: []int{1, 2}, act: []int{0, 0}}}, box: box, chord: chordTable(), surge: wobble{mean: math.Pi / 2}}
	r := &ribbon{stream: st, bottom: 50, top: 60, tall: 80}
	s := &Swirl{recipe: Recipe{Box: box}, level: 60, acts: 1, ops: []op{
		{slab: &slab{top: 50, fill: plain(0)}},
		{slab: &slab{bottom: 50, top: 60, fill: r}},
		{spread: &spread{bottom: 50, top: 60, width: 80, lift: 80, rows: []row{{part: 1, line: wobble{mean: 40}, half: 18}}}},
	}}
	f := s.Face(50)
	for _, px := range []int{4, 8} {
		var fine, plain Picture
		if err := f.Refine(context.Background(), &fine, 80*px, 60*px); err != nil {
			t.Fatal(err)
		}
		f.Draft(&plain, 4*80*px, 4*60*px)
		if d := apart(&fine, shrunk(&plain, 4)); d > 0.0006 {
			t.Errorf("at %d pixels to the mm the pictures differ by %.5f on average", px, d)
		}
	}
}

// A pore that was cut open is a hole: it darkens what lies there, and nothing is brighter.
func TestPoresAreHoles(t *testing.T) {
	grey := color.NRGBA{188, 188, 188, 255}
	img := finished(t, 20, Material{Pores: 0.5}, grey, grey)
	dark := 0
	for i := 0; i < len(img.Pix); i += 4 {
		switch {
		case img.Pix[i] > 188:
			t.Fatalf("a pixel is %d, brighter than the soap", img.Pix[i])
		case img.Pix[i] < 170:
			dark++
		}
	}
	if dark == 0 {
		t.Error("there are no pores")
	}
}

// hairs is the part of a face that lies in runs of one portion under half a millimetre, across or up.
func hairs(f *Face) float64 {
	const px = 4
	var p Picture
	f.Draft(&p, px*80, px*60)
	thin := make([]bool, len(p.Pixels))
	run := func(from, step, n int) {
		for i := 0; i < n; {
			k := i + 1
			for k < n && p.Pixels[from+k*step].Portion[0] == p.Pixels[from+i*step].Portion[0] {
				k++
			}
			for m := i; m < k && k-i <= px/2; m++ {
				thin[from+m*step] = true
			}
			i = k
		}
	}
	for j := range p.H {
		run(j*p.W, 1, p.W)
	}
	for i := range p.W {
		run(i, p.W, p.H)
	}
	n := 0.0
	for _, v := range thin {
		if v {
			n++
		}
	}
	return n / float64(len(thin))
}

// Threads finer than a pixel turn grey: little of a bar is drawn out to them. Thick batter is in fewer, broader ribbons than thin.
func TestRibbonsStayBroadAndThickOnesAreBroader(t *testing.T) {
	var thin, thick float64
	for seed := range int64(2) {
		for at, sum := range map[float64]*float64{0.1: &thin, 0.8: &thick} {
			r := loaf(script.Pot, seed)
			r.Thickness = at
			*sum += hairs(mustPour(t, r).Face(110)) / 2
		}
	}
	if thin > 0.16 || thick > 0.87*thin {
		t.Errorf("%.3f of a bar of thin batter is hair, %.3f of one of thick", thin, thick)
	}
}

// What falls from higher sets more turning.
func TestAHigherPourTurnsMore(t *testing.T) {
	turned := func(high float64) (sum float64) {
		r := loaf(script.Pot, 1)
		r.Script.Brief.HeightMM = high
		for _, o := range mustPour(t, r).ops {
			if o.gyre != nil {
				sum += math.Abs(o.gyre.angle)
			}
		}
		return sum
	}
	if low, high := turned(50), turned(200); !near(high, 2*low, 0.01*low) {
		t.Errorf("from 50 mm batter turns by %.2f radians in all, from 200 mm by %.2f; want twice as much", low, high)
	}
}

// What curls keeps its skin in place, above and below; the sheets of a ribbon lean over in it, so that at its left rim lies only what leaves by one end of
// the lip and at its right only what leaves by the other: leaning by a half, of an even lip a sixth at most. One that lies lap beside lap shows all of the
// lip from above, without a break.
func TestRimsHoldOneEndOfTheLipAndLapsShowAllOfIt(t *testing.T) {
	c := someCurls()
	r := &ribbon{stream: &stream{box: Box{L: 200, W: 80, H: 60}}, top: 10, tall: 10, curls: c, lean: 0.5}
	l := &laps{turns: []float64{0.6, 1}, lean: 0.4, roll: 0.2, at: 1, drift: 0.004, curls: c}
	var seen [10]bool
	was, bent := -1.0, 0.0
	for i := range 401 {
		part := float64(i) / 400
		low, _ := c.curled(50, part, 0)
		high, _ := c.curled(50, part, 1)
		if !near(low, 0, 1e-3) || !near(high, 1, 1e-3) {
			t.Fatalf("%.3f across, the skin is of %.4f and %.4f", part, low, high)
		}
		mid, _ := c.curled(50, part, 0.5)
		bent = max(bent, math.Abs(mid-0.5))
		left, _ := r.leaves(50, 0, 10*part)
		right, _ := r.leaves(50, 80, 10*part)
		if left > 0.25+1e-9 || right < 0.75-1e-9 {
			t.Fatalf("%.3f up, at the rims lies %.3f and %.3f of the lip", part, left, right)
		}
		side, _ := l.lifted(50, part, 0.95)
		if was >= 0 && math.Abs(side-was) > 0.05 {
			t.Fatalf("%.3f across, the lip jumps from %.3f to %.3f", part, was, side)
		}
		was = side
		seen[min(int(10*side), 9)] = true
	}
	if bent < 0.1 {
		t.Errorf("between them sheets go up and down by %.2f of it", bent)
	}
	for k, v := range seen {
		if !v {
			t.Errorf("from above the part %d of 10 of the lip is missing", k)
		}
	}
}

// By hand: a ribbon is 0.55 of its half width broad to each side. One of 20 mm half width at 30 mm covers 19 to 41 mm, at 75 mm of 80 it reaches the wall.
func TestARibbonCoversWhatItLiesOn(t *testing.T) {
	for at, want := range map[float64]float64{30: 22, 75: 16, 5: 16} {
		if got := widthOf(row{line: wobble{mean: at}, half: 20}, 80); !near(got, want, 1e-9) {
			t.Errorf("at %g mm it covers %g mm, want %g", at, got, want)
		}
	}
}

// The lip is held where a few broad colours leave it last and, in a pot of stripes, where many lie side by side all the time: over all seeds it is
// nearer to that than as the pot happens to stand.
func TestThePotIsHeldWhereSeveralColoursLeaveIt(t *testing.T) {
	for technique, off := range map[script.Technique]func(*stream, float64) float64{script.Pot: (*stream).off, script.PotStripes: (*stream).threads} {
		held, stood := 0.0, 0.0
		for seed := range int64(6) {
			s := mustPour(t, loaf(technique, seed)).stream
			held += off(s, s.surge.mean)
			stood += off(s, float64(seed))
		}
		if held > 0.7*stood {
			t.Errorf("%s: the lip is %.1f off as it is held, %.1f as it stood", technique, held/6, stood/6)
		}
	}
}

// By hand: of a pot half one colour, held so that the two lie beside each other along the lip, each takes half of it, and at its ends, by the
// walls, it counts twice.
func TestTheLongestPartOfTheLip(t *testing.T) {
	s := stream{layout: &bands{beside{until: []float64{0.5, 1}, portion: []int{1, 2}, act: []int{0, 0}}}, chord: chordTable(), first: 0.5}
	if got := s.longest(math.Pi/2, 50); !near(got, 1, 1e-9) {
		t.Errorf("one colour takes %.2f of the lip, want twice a half", got)
	}
}

// Of a pot with spots the last way shows all of the lip, and where its own batter is enough to lie along all of its wall never back: from
// above each tenth of it takes as much as any other.
func TestSpotsLieOnTopAgainAndAgain(t *testing.T) {
	b := newBuilder(loaf(script.PotSpots, 1))
	s := b.lip()
	for _, side := range []float64{0, 0.3, 1} {
		if got, _ := s.course(side, 1-0.5/float64(s.ways)); !near(got, side, 1e-9) {
			t.Errorf("of the last way %.2f of the lip is %.2f of the chord, of %d abreast", side, got, s.wide)
		}
	}
	l := b.laps(30, 20)
	var got [10]int
	jumps, was := 0, l.there(0)
	for i := range 1000 {
		at := l.there(float64(i) / 1000)
		got[min(int(10*at), 9)]++
		if at < was {
			jumps++
		}
		was = at
	}
	for i, n := range got {
		if jumps != 0 || n < 95 || n > 105 {
			t.Errorf("tenth %d of the lip takes %d of 1000, want 100; it begins anew %d times", i, n, jumps)
		}
	}
	few := newBuilder(loaf(script.PotSpots, 1))
	if few.Shares[0] = 0.5 * spotsWall; few.laps(30, 20).on {
		t.Error("what differs at its ends lies again and again")
	}
}

// Every pot runs and turns on from one end of the loaf to the other, never back, one that is poured from one end most of those with slices: so what leaves it
// is not bands from end to end. The last ribbon of one with spots covers the mould.
func TestAPotRunsOnAlongTheLoaf(t *testing.T) {
	var on [3]float64 // by which it runs on, is wound and turned
	var from [3]float64
	for seed := range int64(6) {
		for _, tech := range []script.Technique{script.Pot, script.PotEnd, script.PotSpots} {
			b := newBuilder(loaf(tech, seed))
			st := b.lip()
			for i, w := range []wobble{st.run, st.wound, st.surge} {
				by, most := math.Abs(w.at(b.Box.L)-w.at(0)), [3]float64{potRun, potWound, potTurn}[i]
				switch tech {
				case script.Pot:
					on[i] += by
				case script.PotEnd:
					from[i] += by
				}
				if by < 0.5*most {
					t.Errorf("%s %d: of what changes along the loaf %d has changed by %.3f", tech, seed, i, by)
				}
			}
		}
		b := newBuilder(loaf(script.PotSpots, seed))
		b.pour()
		if r := b.ops[lastSpread(b.ops)].spread.rows[0]; r.half < spotsCover*b.Box.W {
			t.Errorf("%d: the last ribbon is %.1f mm to either side", seed, r.half)
		}
	}
	for i := range on {
		if from[i] < 1.15*on[i] {
			t.Errorf("of what changes along the loaf %d does so by %.3f, from one end by %.3f", i, on[i]/6, from[i]/6)
		}
	}
}

func lastSpread(ops []op) (at int) {
	for i := range ops {
		if ops[i].spread != nil {
			at = i
		}
	}
	return at
}

// Sheets of a deep ribbon curl less than those of a flat one, which curl by as much as they may, so that they fold roundly.
func TestCurlsAreNoSteeperThanTheyFoldRoundly(t *testing.T) {
	b := newBuilder(loaf(script.Pot, 3))
	for range 5 {
		if c := b.curls(60, 40); c.angle.mean > steepCurl*mostCurlMM/40 {
			t.Errorf("40 mm deep curls turn by %.2f", c.angle.mean)
		}
		if c := b.curls(60, 1); !near(c.angle.mean, b.thick(1, thickCurl)*mostCurl, 1e-9) {
			t.Errorf("1 mm deep curls turn by %.2f", c.angle.mean)
		}
	}
}

// Whichever way the pot is emptied, every part of it leaves once: of a tenth of the lip and a tenth of the time comes a hundredth.
func TestEveryPartOfThePotLeavesOnce(t *testing.T) {
	for _, s := range []stream{{first: 0.3}, {ways: 12, wide: 3, first: 0.25}, {ways: 7, wide: 3, first: 0.4}, {ways: 12, wide: 2, apart: 5, first: 0.25}, {ways: 12, wide: 4, whole: true, first: 0.25, lead: leadTable(0.4, wobble{})}, {first: 0.6, ways: 12, wide: 2, apart: 5, whole: true, lead: leadTable(0.35, wobble{amp: [2]float64{0, 0.3}, k: [2]float64{0, 7}})}} {
		const n = 300
		var got [100]float64
		for i := range n {
			for k := range n {
				side, through := s.course((float64(i)+0.5)/n, (float64(k)+0.5)/n)
				got[10*min(int(10*side), 9)+min(int(10*through), 9)] += 100. / (n * n)
			}
		}
		for i, v := range got {
			if !near(v, 1, 0.1) {
				t.Errorf("%d ways, %d abreast: of part %d of the pot leaves %.3f", s.ways, s.wide, i, v)
			}
		}
	}
}

// Where the other side of a pot with spots is left, a way over the mould ends, so that no ribbon is broken off within.
func TestARibbonIsNotBrokenOffWhereTheOtherSideIsLeft(t *testing.T) {
	s := stream{first: 0.44}
	s.byParts(12, 3)
	if jump := 12 * (1 - s.first); s.wide != 3 || !near(jump, 6, 1e-9) {
		t.Errorf("%d parts lie abreast and the other side is left after %.2f of 12 ways; want 3 and 6", s.wide, jump)
	}
}

// A pot that is wound by an angle at a place of the loaf shows there what one shows whose spoon stirred it so much further.
func TestAWoundPotIsStirredFurther(t *testing.T) {
	b := newBuilder(loaf(script.PotSpots, 1))
	b.pour()
	wound, still, differ := *b.stream, *b.stream, 0
	for _, x := range []float64{0, 250} {
		still.stir, still.wound = b.stream.stir+b.stream.wound.at(x), wobble{}
		for k := range 400 {
			side, poured := (float64(k%20)+0.5)/20, (float64(k/20)+0.5)/20
			if got, want := wound.label(x, side, poured), still.label(x, side, poured); got != want {
				t.Fatalf("at %g mm what left at %.3f, %.3f is of %d, of the stirred one %d", x, side, poured, got, want)
			}
			if b.stream.label(0, side, poured) != b.stream.label(250, side, poured) {
				differ++
			}
		}
	}
	if differ < 100 {
		t.Errorf("one end of the loaf shows what the other does but for %d places", differ/2)
	}
}

// By hand: half way along the lip what runs ahead is ahead by all of it, a quarter in by three quarters, at its ends not at all, and its fingers besides.
func TestTheMiddleOfTheLipIsAhead(t *testing.T) {
	fingers := wobble{mean: 0.1}
	table := leadTable(0.4, fingers)
	s := &stream{lead: table}
	for side, want := range map[float64]float64{0: 0.1, 0.25: 0.4, 0.5: 0.5, 0.75: 0.4, 1: 0.1} {
		if got := s.leads(side); !near(got, want, 1e-4) {
			t.Errorf("at %g of the lip it is ahead by %.4f, want %.4f", side, got, want)
		}
	}
}

// A fold turns ever more from one end of the loaf to the other, never back: where it had turned most a cut along the loaf would show an eye.
func TestFoldsTurnEverMoreAlongTheLoaf(t *testing.T) {
	folds := 0
	for seed := range int64(3) {
		b := newBuilder(loaf(script.Pot, seed))
		b.pour()
		for _, o := range b.ops {
			if o.gyre == nil {
				continue
			}
			folds++
			if g := &o.gyre.gain; (g.at(0)-g.mean)*(g.at(b.Box.L)-g.mean) >= 0 {
				t.Errorf("%d: a fold turns by %.2f at one end and by %.2f at the other", seed, g.at(0), g.at(b.Box.L))
			}
		}
	}
	if folds < 8 {
		t.Errorf("there are %d folds", folds)
	}
}

// The last way over the mould takes all of what lies along the lip, also where the pot is turned between two ways, and every part of it has its turn.
func TestTheLastWayIsOfTheWholeLip(t *testing.T) {
	s := stream{apart: 5, whole: true}
	s.byParts(12, 2)
	last, _ := s.course(0.25, 1-0.5/12)
	before, _ := s.course(0.25, 1-1.5/12)
	if !near(last, 0.25, 1e-9) || near(before, 0.25, 0.1) {
		t.Errorf("a quarter along the lip lies, of the last way, %.3f of the chord and of the one before %.3f", last, before)
	}
	for ways, want := range map[int]int{12: 5, 7: 3, 10: 3, 3: 0, 1: 0} {
		if got := strides(ways); got != want {
			t.Errorf("of %d ways it is turned by %d, want %d", ways, got, want)
		}
	}
}

// A hand that is led over a line goes on to the side it lies on and hardly back; where spots lie in a ribbon it strays in waves shorter than elsewhere. From
// one end, and where a way is of several ribbons, these come by the one wall and by the other.
func TestHowAPotIsLed(t *testing.T) {
	a := script.Act{Kind: script.Pour, Lines: []float64{0.6}}
	for seed := range int64(20) {
		h := &hand{side: 1}
		b := newBuilder(loaf(script.Pot, seed))
		by := b.lap(a, h, 0, 1).line.mean/b.Box.W - 0.6
		if by < -backSwing-1e-9 || by > onSwing+1e-9 {
			t.Errorf("%d: the hand is led %.3f of the mould aside", seed, by)
		}
		h.side = -1
		if at := b.lap(a, h, 0, 3).line.mean / b.Box.W; at < 0.6-asideMost-1e-9 || at > 0.6-asideLeast+1e-9 {
			t.Errorf("%d: of three ribbons one lies at %.3f of the mould", seed, at)
		}
		b = newBuilder(loaf(script.PotSpots, seed))
		if short := 2 * math.Pi / b.lap(a, h, 0, 1).line.k[0]; short < 70-1e-9 || short > 120+1e-9 {
			t.Errorf("%d: the hand strays in waves of %.0f mm", seed, short)
		}
		b = newBuilder(loaf(script.PotEnd, seed))
		r := b.lap(a, h, 0, 1)
		if at := r.line.mean / b.Box.W; at > 0.5-asideLeast || math.Abs(r.line.at(0)-r.line.at(b.Box.L)) < aslantLeast*b.Box.W {
			t.Errorf("%d: a tongue lies at %.3f of the mould, and from %.1f to %.1f mm", seed, at, r.line.at(0), r.line.at(b.Box.L))
		}
	}
}
