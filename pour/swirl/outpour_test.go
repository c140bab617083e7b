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

// A ribbon that lies flat has one end of the lip for its skin above and the other below, however its sheets curl between them; one that lies lap
// beside lap shows all of the lip from above, in every lap and without a break.
func TestFlatRibbonsHaveAWholeSkinAndLapsShowTheLip(t *testing.T) {
	c := someCurls()
	l := &laps{many: 2, lean: 0.4, roll: 0.2, at: 1, drift: 0.004, curls: c}
	seen, was := [10]bool{}, -1.0
	bent := 0.0
	for i := range 401 {
		across := float64(i) / 400
		low, _ := c.curled(50, across, 0)
		high, _ := c.curled(50, across, 1)
		if !near(low, 0, 1e-3) || !near(high, 1, 1e-3) {
			t.Fatalf("%.3f across, the skin is of %.4f and %.4f of the lip", across, low, high)
		}
		mid, _ := c.curled(50, across, 0.5)
		bent = max(bent, math.Abs(mid-0.5))
		side, _ := l.lifted(50, across, 0.95)
		if was >= 0 && math.Abs(side-was) > 0.05 {
			t.Fatalf("%.3f across, the lip jumps from %.3f to %.3f", across, was, side)
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

// By hand: half a lap is 0.55 of its half width to each side. Two laps of 20 mm half width at 20 and 30 mm cover 9 to 41 mm, one at 75 mm of 80
// reaches the wall.
func TestLapsCoverWhatTheyLieOnOnce(t *testing.T) {
	at := func(y float64) row { return row{line: wobble{mean: y}, half: 20} }
	for _, c := range []struct {
		laps []row
		want float64
	}{{[]row{at(30), at(20)}, 32}, {[]row{at(75)}, 16}, {[]row{at(20), at(60)}, 44}} {
		if got := widthOf(c.laps, 80); !near(got, c.want, 1e-9) {
			t.Errorf("%d laps cover %g mm, want %g", len(c.laps), got, c.want)
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

// By hand: of a pot half one colour, held so that the two lie beside each other along the lip, each takes half of it, and as it turns back at its
// ends, twice as much.
func TestTheLongestPartOfTheLip(t *testing.T) {
	s := stream{layout: &bands{beside{until: []float64{0.5, 1}, portion: []int{1, 2}, act: []int{0, 0}}}, chord: chordTable(), first: 0.5}
	if got := s.longest(math.Pi / 2); !near(got, 1, 1e-9) {
		t.Errorf("one colour takes %.2f of the lip there and back, want 1", got)
	}
}

// However the lip goes there and back, each part of it is shown as much as any other, and nowhere is it broken off: 480 knots apart no more than the 13th part
// of the lip. No two turns are alike: of a seed, those at either end differ by a tenth of it at least.
func TestUnequalWaysShowAllOfTheLipAlike(t *testing.T) {
	l := &laps{many: 2, reach: newBuilder(loaf(script.PotEnd, 2)).reach()}
	var got [10]int
	var turns []float64
	before, was := l.there(1.998), l.there(1.999)
	for i := range 2000 {
		at := l.there(2 * float64(i) / 2000)
		got[min(int(10*at), 9)]++
		if math.Abs(at-was) > 1./13 {
			t.Errorf("from %.3f of the lip to %.3f at %d of 2000", was, at, i)
		}
		if (was-before)*(at-was) < 0 {
			turns = append(turns, was)
		}
		before, was = was, at
	}
	for i, n := range got {
		if n < 190 || n > 210 {
			t.Errorf("tenth %d of the lip takes %d of 2000, want 200", i, n)
		}
	}
	if len(turns) < 4 {
		t.Fatalf("it turns %d times", len(turns))
	}
	for i := range turns[2:] {
		if math.Abs(turns[i+2]-turns[i]) < 0.1 {
			t.Errorf("it turns at %.3f of the lip and again at %.3f", turns[i], turns[i+2])
		}
	}
}

// Of a pot with spots the last way shows all of the lip, and where its own batter is enough to lie along all of its wall that again and again, never back:
// from above it goes from one wall to the other twice, and each tenth of it takes as much as any other.
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
		if jumps != 1 || n < 95 || n > 105 {
			t.Errorf("tenth %d of the lip takes %d of 1000, want 100; it begins anew %d times", i, n, jumps)
		}
	}
	few := newBuilder(loaf(script.PotSpots, 1))
	if few.Shares[0] = 0.5 * spotsWall; few.laps(30, 20).on {
		t.Error("what differs at its ends lies again and again")
	}
}

// A pot with spots runs and turns on from one end of the loaf to the other by so much that what leaves it is not bands from end to end, and its last
// ribbon covers the mould; the last laps from one end are led one way.
func TestSpotsRunOnAndTheLastLapsCoverTheMould(t *testing.T) {
	for seed := range int64(3) {
		b := newBuilder(loaf(script.PotSpots, seed))
		b.pour()
		st := b.stream
		if by := math.Abs(st.run.at(b.Box.L) - st.run.at(0)); by < 0.2*spotsRun {
			t.Errorf("%d: the pot has run on by %.3f from end to end", seed, by)
		}
		if by := math.Abs(st.wound.at(b.Box.L) - st.wound.at(0)); by < 0.2*spotsWound {
			t.Errorf("%d: the pot is wound by %.3f from end to end", seed, by)
		}
		for i, r := range b.ops[lastSpread(b.ops)].spread.rows {
			if r.half < spotsCover*b.Box.W {
				t.Errorf("%d: row %d is %.1f mm to either side", seed, i, r.half)
			}
		}
		e := newBuilder(loaf(script.PotEnd, seed))
		e.pour()
		rows := e.ops[lastSpread(e.ops)].spread.rows
		if len(rows) != lastLaps || rows[0].line.amp[1] != rows[1].line.amp[1] || rows[0].part == rows[1].part {
			t.Errorf("%d: the last laps from one end lie %+v", seed, rows)
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
	for _, s := range []stream{{first: 0.3}, {first: 0.62, around: true}, {ways: 12, wide: 3, first: 0.25}, {ways: 7, wide: 3, first: 0.4}, {ways: 12, wide: 2, apart: 5, first: 0.25}, {ways: 12, wide: 4, whole: true, first: 0.25, lead: leadTable(0.4, wobble{})}, {first: 0.6, around: true, lead: leadTable(0.35, wobble{amp: [2]float64{0, 0.3}, k: [2]float64{0, 7}})}} {
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

// How a fold goes along the loaf: out of a pot it drifts far and comes and goes, where tongues are drawn it turns ever more, from the one end to the
// other. The last laps from one end turn unevenly, and so do the last stripes.
func TestFoldsGoAlongTheLoafAsTheirPotIsLed(t *testing.T) {
	drifts := map[script.Technique]float64{}
	for _, tech := range []script.Technique{script.Pot, script.PotSpots, script.PotEnd} {
		folds, back := 0, 0
		for seed := range int64(4) {
			b := newBuilder(loaf(tech, seed))
			b.pour()
			for _, o := range b.ops {
				if o.gyre == nil || o.gyre.shift.mean != 0 || o.gyre.shift.amp[0] == 0 { // a fold
					continue
				}
				folds++
				drifts[tech] += o.gyre.shift.amp[0] + o.gyre.shift.amp[1]
				if g := &o.gyre.gain; (g.at(0)-g.mean)*(g.at(b.Box.L)-g.mean) >= 0 {
					back++
				}
			}
			if fill, ok := lastRibbon(b.ops); tech == script.PotEnd && (!ok || fill.laps == nil || len(fill.laps.reach) == 0) {
				t.Errorf("seed %d: the last laps from one end turn evenly", seed)
			}
		}
		drifts[tech] /= float64(folds)
		if turnsBack := back > 0; folds < 8 || turnsBack != (tech == script.Pot) {
			t.Errorf("%s: of %d folds %d turn as much at both ends", tech, folds, back)
		}
	}
	b := newBuilder(loaf(script.PotStripes, 1))
	b.pour()
	if r, ok := lastRibbon(b.ops); !ok || r.laps == nil || len(r.laps.reach) == 0 {
		t.Error("the last stripes do not run out over the top")
	}
	if drifts[script.Pot] < 2*drifts[script.PotSpots] {
		t.Errorf("folds drift by %.1f mm, of a pot with spots by %.1f", drifts[script.Pot], drifts[script.PotSpots])
	}
}

// lastRibbon is what was poured last out of a pot.
func lastRibbon(ops []op) (*ribbon, bool) {
	for i := len(ops) - 1; i >= 0; i-- {
		if ops[i].slab != nil {
			r, ok := ops[i].slab.fill.(*ribbon)
			return r, ok
		}
	}
	return nil, false
}

// A hand that is led to and fro keeps within its swing of the line and off the walls, to either side of it; where spots lie in a ribbon it strays in waves
// shorter than elsewhere; where tongues run out over the top their laps lean over further than they stand, and go less to and fro; a tongue from one end
// leaves room at either side.
func TestHowAPotIsLed(t *testing.T) {
	ways := newBuilder(loaf(script.PotSpots, 1))
	ways.pour()
	back, all := 0, 0
	for _, o := range ways.ops {
		if o.slab == nil {
			continue
		}
		if r, ok := o.slab.fill.(*ribbon); ok {
			if all++; r.back {
				back++
			}
		}
	}
	if all < 2 || back != 0 && back != all {
		t.Errorf("of %d ribbons with spots %d are led back", all, back)
	}
	h, on := &hand{holds: 1, side: 1}, 0
	for seed := range int64(40) {
		b := newBuilder(loaf(script.Pot, seed))
		a := script.Act{Kind: script.Pour, Lines: []float64{0.6}}
		by := b.lap(a, h, 0).line.mean/b.Box.W - 0.6
		if by < -backSwing-1e-9 || by > onSwing+1e-9 || 0.6+by > 1-nearWall+1e-9 {
			t.Errorf("%d: the hand is led %.3f of the mould aside", seed, by)
		}
		if by > 0 {
			on++
		}
		b = newBuilder(loaf(script.PotSpots, seed))
		if short := 2 * math.Pi / b.lap(a, h, 0).line.k[0]; short < 70-1e-9 || short > 120+1e-9 {
			t.Errorf("%d: the hand strays in waves of %.0f mm", seed, short)
		}
		b = newBuilder(loaf(script.PotEnd, seed))
		if r := b.lap(a, h, 0); r.half > tongueHalf*b.Box.W || r.swell.mean > tongueSwell {
			t.Errorf("%d: a tongue is %.1f mm to either side, and swells by %.2f", seed, r.half, r.swell.mean)
		}
	}
	if on < 12 || on > 32 {
		t.Errorf("of 40 ways %d go on over the side of their line", on)
	}
	far := map[script.Technique]float64{}
	for _, tech := range []script.Technique{script.PotSpots, script.PotEnd, script.Pot} {
		for seed := range int64(20) {
			l := newBuilder(loaf(tech, seed)).laps(30, 20)
			far[tech] = max(far[tech], math.Abs(l.lean))
			if most := map[script.Technique]float64{script.PotSpots: spotsRoll, script.PotEnd: flatRoll, script.Pot: 1}[tech] * mostRoll; math.Abs(l.roll) > most {
				t.Errorf("%s %d: laps go %.3f to and fro", tech, seed, l.roll)
			}
		}
	}
	if far[script.Pot] > mostLean || far[script.PotSpots] > mostLean || far[script.PotEnd] < 1.2*mostLean {
		t.Errorf("laps lean over by %v at most", far)
	}
}
