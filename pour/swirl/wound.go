package swirl

import "math"

// Loops and spirals, which wind the batter up: by eye, no source.
const (
	loopTurn    = 1.85 * math.Pi // how far the batter in the middle of a loop turns with the wire, radians
	loopRim     = 0.8            // how soft the turning ends at the rim of a loop, of its radius: a hard rim tears spurs
	spiralRim   = 0.4            // and at that of a round of a spiral
	lingerRim   = 0.9            // and where the hand lingers in one
	smallLoop   = 0.7            // how large a loop of the way there is at least, of one of the way back
	largeLoop   = 1.05           // and at most
	loopPart    = 1.25           // how large what turns is against the loop
	loopPace    = 2              // how much longer its steps are for it
	loopGrip    = 0.25           // of its grip straight on that the wire has in a loop: what lies within turns with it rather than past it
	spiralPart  = 0.55           // what part of the wire's turns the batter in the middle of a spiral makes: the rest slips by
	spiralSinks = 0.08           // of the height: so far a spiral dips and rises along the loaf
	loopSinks   = 0.1            // of the height: so far up at the one end and down at the other a loop lies, at most
	roundMore   = 0.35           // of how far it turns: so much more at the one end
	roundWider  = 0.16           // of its width: so much more at the one end
	leastRound  = 0.3            // of half the mould: how far about it the first round of a spiral takes batter along
	roundGrows  = 0.8            // and so much further the last
	innerMore   = 1.45           // of the mean: how far the first round turns what lies within
	outerLess   = 0.75           // and so much less the last, so that the angle falls evenly from the eye to the walls
)

// round is what turns within one round of the wire.
type round struct {
	at, half vec2    // mm
	angle    float64 // radians, in the middle
}

// drifts is how rounds of the wire differ along the loaf, as its two ends are led by two hands: how far aside and up, how far round and how wide.
type drifts struct{ shift, sink, gain, oval wobble }

// loops leads the wire there and back in rows of rounds, over or under, each of which drags at what lies about it; what is inside, and what was
// dragged there, winds up, and the rounds of the way back lie over those of the way there.
func (b *builder) loops() {
	turns := max(1, math.Round(b.Turns))
	pitch := (b.Box.W - 2*wireMarginMM) / turns
	path, inside := b.rowOfLoops(int(turns), pitch)
	s := b.led(clamp(0.95*pitch, 6, 22), loopGrip*b.thick(0.84, 0.9))
	s.girth, s.skin, s.pace = b.d.waver(wireGirth, turns), 1.5*wireSkinMM, loopPace
	b.draw(&s, path)
	for _, r := range append(b.between(inside), inside...) {
		by := drifts{s.shift, b.d.askew(0, loopSinks*b.Box.H, b.Box.L), b.d.askew(1, roundMore, b.Box.L), b.d.askew(1, roundWider, b.Box.L)}
		by.shift.amp[1] *= b.d.Between(0.5, 1.5)
		b.windUp(r, by, loopRim)
	}
	var out []float64
	for i, r := range inside {
		if last := i == len(inside)-1; last || b.d.Float() < liftedOut {
			at := vec2{clamp(r.at.y+b.d.Between(-0.5, 0.5)*pitch, 0.12*b.Box.W, 0.88*b.Box.W), b.Box.H * b.d.Between(0.64, 0.8)}
			out = append(out, b.pullOut(at, s.shift))
		}
	}
	b.graze(out, s.shift)
}

// rowOfLoops is the wire's way in loops across the mould, so many and so far apart, in and out by the surface, and what turns within.
func (b *builder) rowOfLoops(turns int, pitch float64) (path []vec2, inside []round) {
	middle, far := b.way()
	over, from := b.d.Sign(), b.d.Sign()
	each := max(8, pathKnots/turns)
	top := b.Box.H + wireOutMM
	y := wireMarginMM + b.d.Between(0.1, 0.3)*pitch
	for range turns {
		next, wide := y+pitch*b.d.Between(0.8, 1.15), min(pitch*b.d.Between(0.46, 0.6), far)
		high := clamp(wide*b.d.Between(1, 1.6), 0.55*far, 0.85*far)
		at := vec2{y + 0.5*(next-y), middle + b.d.Between(-1, 1)*(far-high)}
		for k := range each {
			t := float64(k) / float64(each)
			sin, cos := math.Sincos(2 * math.Pi * t)
			path = append(path, vec2{clamp(y+t*(next-y)+over*wide*sin, wireMarginMM, b.Box.W-wireMarginMM), at.z + high*cos})
		}
		y = next
		if from < 0 {
			at.y = b.Box.W - at.y
		}
		angle := -from * over * loopTurn * b.d.Between(0.6, 1.05) * b.thick(1.1, 0.85)
		inside = append(inside, round{at, vec2{loopPart * wide, 1.15 * loopPart * high}, angle})
	}
	path = append([]vec2{{path[0].y, top}}, path...)
	if from < 0 {
		mirror(path, b.Box.W)
	}
	return path, inside
}

// between is the loops of the wire on its way there, between those of its way back and in the same sense, each of which takes along again what
// they left: no two as large, high where those are low.
func (b *builder) between(those []round) []round {
	middle, far := b.way()
	out := make([]round, 0, len(those))
	for i := range max(1, len(those)-1) {
		r, next := those[i], those[min(i+1, len(those)-1)]
		by, part := b.d.Between(smallLoop, largeLoop), b.d.Between(0.4, 0.6)
		other := math.Copysign(b.d.Between(0.1, 0.5)*far, middle-0.5*(r.at.z+next.at.z))
		at := vec2{r.at.y + part*(next.at.y-r.at.y), middle + other}
		out = append(out, round{at, vec2{by * r.half.y, by * r.half.z}, r.angle * b.d.Between(0.25, 0.5)})
	}
	return out
}

// windUp lets the batter within a round turn: in the middle most, evenly less towards its rim. Along the loaf it drifts as far as the walls
// leave room.
func (b *builder) windUp(r round, by drifts, rim float64) {
	half := vec2{min(r.half.y, b.Box.W/2-1), min(r.half.z, b.level/2-1)}
	at := vec2{clamp(r.at.y, half.y+0.5, b.Box.W-half.y-0.5), clamp(r.at.z, half.z+0.5, b.level-half.z-0.5)}
	room := vec2{min(at.y, b.Box.W-at.y) - half.y, min(at.z, b.level-at.z) - half.z}
	b.add(op{whirl: &whirl{
		centre: at, half: half, room: room, angle: r.angle, gain: by.gain, oval: by.oval, rim: rim,
		shift: by.shift.within(room.y), sink: by.sink.within(room.z),
	}})
}

// spiral leads the wire round and round: every round takes along what lies within it, so that the middle goes round with all of them and what
// lies outside is wound in. The outermost round comes up through the surface, and last the wire is pulled out of it on the other side: from deeper
// it would draw all rounds up to a crest.
func (b *builder) spiral() {
	rounds := int(max(1, math.Round(b.Turns)))
	dir, oval := b.d.Sign(), b.d.Between(0.85, 1.15)
	middle, _ := b.way()
	eye := vec2{b.Box.W * b.d.Between(0.32, 0.68), b.Box.H * b.d.Between(0.36, 0.52)}
	by := drifts{
		b.d.askew(0, 0.12*b.Box.W, b.Box.L), b.d.drift(0, spiralSinks*b.Box.H, [2]float64{110, 180}, [2]float64{240, 420}),
		b.d.askew(1, roundMore, b.Box.L), b.d.askew(1, roundWider, b.Box.L),
	}
	mid := func(t float64) vec2 { return vec2{eye.y + t*(b.Box.W/2-eye.y), eye.z + t*(middle-eye.z)} }
	for i := rounds; i > 0; i-- {
		b.windIn(mid(float64(i)/float64(rounds)), float64(i)/float64(rounds), dir, oval, by)
	}
	var out []float64
	side := b.d.Sign()
	for _, from := range [...]float64{-side * b.d.Between(0.12, 0.36), side * b.d.Between(0.1, 0.3)} {
		out = append(out, b.pullOut(vec2{b.Box.W * (0.5 + from), b.Box.H * b.d.Between(0.81, 0.87)}, by.shift))
	}
	b.graze(out, by.shift)
}

// windIn lets what lies within a round of a size, where 1 is as far as the mould lets it, go round: all that lies within the walls with the
// last. Somewhere between its middle and its outside the hand slowed down, and more goes round there: no arm is evenly wide.
func (b *builder) windIn(mid vec2, size, dir, oval float64, by drifts) {
	reach := 0.5 * (leastRound + roundGrows*size)
	angle := dir * 2 * math.Pi * b.Turns / max(1, math.Round(b.Turns)) * spiralPart * b.thick(1, 0.8)
	r := round{mid, vec2{reach * oval * b.Box.W, reach / oval * b.Box.H}, angle * (innerMore - outerLess*size) * b.d.Between(0.8, 1.2)}
	if size < 1 {
		b.windUp(r, by, spiralRim)
	} else {
		g := b.takeAlong(r.at, r.half, r.angle, b.d.askew(1, 0.14, b.Box.L))
		g.shift, g.sink = by.shift, by.sink
	}
	sin, cos := math.Sincos(b.d.Between(0, 2*math.Pi))
	half := vec2{0.5 * size * b.Box.W, 0.5 * size * b.Box.H}
	part := b.d.Between(0.6, 0.9)
	b.windUp(round{vec2{mid.y + 0.6*half.y*cos, mid.z + 0.6*half.z*sin}, vec2{part * half.y, part * half.z}, dir * b.d.Between(0.2, 0.8)}, by, lingerRim)
}
