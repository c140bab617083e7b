package swirl

import (
	"math"
	"slices"

	"pourbench/pour/script"
)

// hanger pours layers and draws a wire through them once, along the whole loaf.
func (b *builder) hanger() func(script.Act) {
	var levels []float64
	return func(a script.Act) {
		switch a.Kind {
		case script.Wire:
			levels = append(levels, b.level)
			for i := 1; i < len(levels); i++ { // only now: what is poured without a move between is quicker to draw
				b.dent(levels[i-1], levels[i])
			}
			b.slump(b.thick(2, 1))
			switch b.Technique {
			case script.HangerLoops:
				b.loops()
			case script.HangerSpiral:
				b.spiral()
			default:
				b.zigzag()
			}
		case script.Level:
			b.slump(b.thick(3.5, 1.5) * b.knocked())
		default:
			levels = append(levels, b.level)
			b.raise(a.Share, plain(a.Jug))
		}
	}
}

// knocked is how far what a wire was drawn through slumps as the loaf is knocked on the table, of the usual: what lies wound up holds, and its arms stay
// round.
func (b *builder) knocked() float64 {
	if b.Technique == script.HangerSpiral {
		return woundHolds
	}
	return 1
}

// How a wire is led along the loaf by hand: by eye, no source.
const (
	wireMarginMM = 4    // the wire keeps this far from the walls
	wireFloorMM  = 1.5  // and this from the floor
	wireFootMM   = 5    // over the floor it drags less and less
	wireTopMM    = 3    // and this from the surface, up to which it drags what lies below
	wireSkinMM   = 4    // under the surface it drags less and less
	wireOutMM    = -1   // so far over the surface its pull ends where it comes in and goes out: with more, what it takes along piles up under it
	wireEaseMM   = 6    // of its way in and out, at least, over which its pull comes and goes: what lies on top closes over it
	wireWavers   = 0.02 // of the height: every part of its way goes so far aside by itself
	wireSlips    = 0.4  // of its grip that it loses here and there, at most: what it takes along breaks off
	wireGirth    = 0.25 // of how far about it the wire drags: so much more or less here and there
	wirePace     = 1.25 // its steps are longer: its way has no sharp bends
	pullOutMM    = 3    // so far over the surface the wire is pulled out
	pullSkinMM   = 3.5  // and so far under it its pull fades then
	pullShare    = 0.11 // of the height: so far about it the wire takes batter along then
	pullEbbs     = 0.95 // of its grip it loses the square of that in long stretches, at most: the track it leaves runs on for most of a loaf and dies away
	pullGirth    = 0.3  // of how far about it the wire drags then: so much more or less along the loaf
	woundHolds   = 0.45 // of what other batter slumps a spiral slumps
	liftedOut    = 0.75 // so often a wire led in loops comes up through the surface where it turns
	tracks       = 4    // so many tracks the wire leaves on top, if there is room: where none of them runs it grazes what lies just below
	trackRoom    = 0.28 // of the width: the room between two tracks at least for another
	grazeShare   = 0.8  // of the height, the lowest from which it grazes
	grazeMM      = 3.8  // so far about it at least it takes batter along then, and up to half as much more
	pullWander   = 0.06 // of the width: so far aside the track it leaves wanders
	pullPace     = 1.2  // its steps are so much longer where it drags only what is near
	pullStepMM   = 1.6  // mm, but no longer than this, as the surface is close
	slipsATurn   = 3    // about so often on the way down and up
	pathKnots    = 400
	turnRound    = 1    // 0: as much across between its turns as at them; 1: straight up and down between, round at the turns
	turnsShort   = 0.55 // of its way from the middle that a turn may fall short; most fall short of little
)

// wire draws the wire along a path, and its other end along another; it drags what lies within radius mm. Led along the loaf by hand it drifts, leans
// and goes more or less deep. It tells how it drifted.
func (b *builder) wire(path, far []vec2, radius float64) (shift wobble) {
	s := b.led(radius, b.thick(0.84, 0.9))
	s.slip = b.d.waves(wireSlips, slipsATurn*max(1, b.Turns), 500, 1000)
	s.girth, s.pace = b.d.waves(wireGirth, 2*max(1, b.Turns), 500, 1000), wirePace
	b.drawBetween(&s, path, far)
	return s.shift
}

// led is how the wire is led through the loaf.
func (b *builder) led(radius, grip float64) stroke {
	return stroke{
		radius: radius, grip: grip, skin: wireSkinMM, foot: wireFootMM, ease: b.d.Between(wireEaseMM, 2*wireEaseMM), pivot: vec2{b.Box.W / 2, b.Box.H / 2},
		shift: b.d.askew(0, 0.14*b.Box.W, b.Box.L), sway: b.d.askew(1, 0.06, b.Box.L), depth: b.d.askew(1, 0.09, b.Box.L), lean: b.d.askew(b.d.Between(-0.3, 0.3), 0.08, b.Box.L),
		waver: b.d.waves(wireWavers*b.Box.H, max(1, b.Turns), 250, 700),
	}
}

// pullOut draws the wire up and out through the surface from where it was led to, ever more aside: what lies over it comes along in one broad
// swelling that leans over. It tells where across the mould that comes up.
func (b *builder) pullOut(from vec2, shift wobble) float64 {
	aside := b.d.Sign()
	to := vec2{b.clear(from.y + aside*b.d.Between(0.12, 0.24)*b.Box.W), b.Box.H + pullOutMM}
	b.pull(bent(from, to), clamp(pullShare*b.d.Between(0.6, 1.25)*b.Box.H, 3.8, 13), b.thick(0.8, 0.86), shift)
	return to.y
}

// graze draws the wire out from just under the surface where the tracks it left so far leave most room.
func (b *builder) graze(out []float64, shift wobble) {
	for len(out) < tracks {
		slices.Sort(out)
		from, wide, last := 0.0, 0.0, 0.0
		for _, y := range append(out, b.Box.W) {
			if y-last > wide {
				from, wide = last, y-last
			}
			last = y
		}
		if wide < trackRoom*b.Box.W {
			return
		}
		y := b.clear(from + wide*b.d.Between(0.4, 0.6))
		to := vec2{b.clear(y + b.d.Between(-0.04, 0.04)*b.Box.W), b.Box.H + pullOutMM}
		b.pull(bent(vec2{y, b.Box.H * b.d.Between(grazeShare, 0.88)}, to), grazeMM*b.d.Between(1, 1.5), b.thick(0.72, 0.8), shift)
		out = append(out, to.y)
	}
}

// clear is a place across the mould as far as the wire stays off its walls where it comes out.
func (b *builder) clear(y float64) float64 { return clamp(y, 2*wireMarginMM, b.Box.W-2*wireMarginMM) }

// pull draws the wire out along a path; it drags what lies within radius mm.
func (b *builder) pull(path []vec2, radius, grip float64, shift wobble) {
	s := b.led(radius, grip)
	s.shift, s.girth = shift, b.d.waves(pullGirth, 1, 200, 600)
	s.ebb = b.d.drift(0, pullEbbs, [2]float64{300, 420}, [2]float64{480, 900})
	s.waver = b.d.waves(pullWander*b.Box.W, 0.8, 90, 260)
	s.waver.rise = 0 // a stiff wire comes up along its whole length at once
	s.depth, s.lean = b.d.drift(1, 0.03, [2]float64{300, 420}, [2]float64{480, 900}), wobble{}
	s.pivot, s.skin, s.pace = path[0], pullSkinMM, min(pullPace, pullStepMM/(radius*strokeSpacing))
	b.draw(&s, path)
}

// bent is a way from one place to another that goes straight up at first and ever more aside.
func bent(from, to vec2) []vec2 {
	path := make([]vec2, 0, bentKnots+1)
	for i := range bentKnots + 1 {
		t := float64(i) / bentKnots
		path = append(path, vec2{from.y + t*t*(to.y-from.y), from.z + t*(to.z-from.z)})
	}
	return path
}

const bentKnots = 24

// takeAlong lets the batter about a place go round, within half a width and height of it.
func (b *builder) takeAlong(at, half vec2, angle float64, gain wobble) *gyre {
	g := &gyre{
		at: at, half: half, width: b.Box.W, height: b.level, angle: angle, gain: gain,
		shift: b.d.askew(0, 0.07*b.Box.W, b.Box.L), sink: b.d.askew(0, 0.08*b.Box.H, b.Box.L), swell: b.d.askew(1, 0.12, b.Box.L),
	}
	b.add(op{gyre: g})
	return g
}

// way is the middle of the wire's way up and down, and how far it goes from there, mm.
func (b *builder) way() (middle, far float64) {
	far = (b.Box.H - wireFloorMM - wireTopMM) / 2
	return wireFloorMM + far, far
}

// zigzag draws the wire down and up across the mould, and where it turns up there through the surface in stretches. Then the batter goes round a
// little after it somewhere, so that no fold stands straight.
func (b *builder) zigzag() {
	ends := b.waves()
	shift := b.wire(b.through(ends), b.through(b.otherHand(ends)), clamp(0.56*(b.Box.W-2*wireMarginMM)/max(1, math.Round(b.Turns)), 6, 16))
	var out []float64
	for i := 1; i < len(ends); i++ {
		if last := i == len(ends)-1; last || ends[i].z > ends[i-1].z {
			out = append(out, b.pullOut(vec2{ends[i].y, b.Box.H * b.d.Between(0.56, 0.8)}, shift))
		}
	}
	b.graze(out, shift)
	b.takeAlong(
		vec2{b.Box.W * b.d.Between(0.2, 0.8), b.Box.H * b.d.Between(0.35, 0.6)},
		vec2{b.Box.W * b.d.Between(0.28, 0.5), b.Box.H * b.d.Between(0.35, 0.5)},
		b.d.Sign()*b.d.Between(0.25, 0.6)*b.thick(1.15, 0.8), b.d.askew(1, 0.3, b.Box.L),
	)
}

// waves is where the wire turns on its way down and up across the mould, from either side. It goes down as often as it is turned, by hand:
// no turn is as wide or as deep as the next. Some push it down along the wall first.
func (b *builder) waves() []vec2 {
	middle, far := b.way()
	halves := 2 * int(max(1, math.Round(b.Turns))) // from one end of a stroke down or up to the next
	first := 0
	if b.d.Float() < 0.5 {
		first, halves = 1, halves-1 // down along the wall
	}
	if b.d.Float() < 0.5 && halves > 1 {
		halves-- // it comes out where it is lowest, straight up
	}
	w := b.Box.W - 2*wireMarginMM
	left, right := wireMarginMM+b.d.Between(0, 0.12)*w, b.d.Between(0, 0.12)*w
	w -= left - wireMarginMM + right
	swing := b.d.Between(0.84, 1)
	ends := make([]vec2, halves+1)
	for i := range ends {
		t := float64(i) / float64(halves)
		if i > 0 && i < halves {
			t += b.d.Between(-0.27, 0.27) / float64(halves)
		}
		reach := far * swing * (1 - turnsShort*b.d.Float()*b.d.Float())
		if (i+first)%2 == 1 {
			reach = -reach
		}
		ends[i] = vec2{left + w*t, middle + reach}
	}
	if b.d.Sign() < 0 {
		mirror(ends, b.Box.W)
	}
	return ends
}

// through is the wire's way in through the surface, from end to end of its strokes and out through the surface.
func (b *builder) through(ends []vec2) []vec2 {
	top := b.Box.H + wireOutMM
	path := []vec2{{ends[0].y, top}}
	each := max(8, pathKnots/len(ends))
	for i := 1; i < len(ends); i++ {
		from, to := ends[i-1], ends[i]
		for k := range each {
			t := float64(k) / float64(each)
			u := t + turnRound*math.Sin(2*math.Pi*t)/(2*math.Pi)
			path = append(path, vec2{from.y + u*(to.y-from.y), 0.5*(from.z+to.z) + 0.5*(from.z-to.z)*math.Cos(math.Pi*t)})
		}
	}
	last := ends[len(ends)-1]
	return append(path, last, vec2{last.y, top})
}

// mirror turns a path round, as led from the other wall.
func mirror(path []vec2, width float64) {
	for i := range path {
		path[i].y = width - path[i].y
	}
}
