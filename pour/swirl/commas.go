package swirl

import "math"

// What a wire pulls up beside the tracks it leaves on top: by eye, no source. It is stirred most where its two ends go up through the surface.
const (
	commasATrack = 5    // commas to a track of the wire
	commasAnEnd  = 5    // and where an end of it goes up
	commaEndMM   = 20.  // so far from the end of the loaf at most
	commaDeep    = 0.72 // of the height, the lowest from which one is pulled up
	commaHigh    = 0.88 // and the highest
	commaOffMM   = 3.   // so far beside the track at most
	commaMM      = 3.2  // so far about it at least batter comes along
	commasMM     = 5.5  // and at most
	commaLongMM  = 7.   // along the loaf, to either side of its middle at least
	commasLongMM = 19.  // and at most
	commaTurnMM  = 3.   // so far it is led aside on top at least
	commasTurnMM = 9.   // and at most
	commaSlant   = 0.45 // mm aside for every mm along the loaf at most
	commaBowMM   = 7.   // and so far aside at both its ends besides at most
	commaSinks   = 0.65 // of its height that is left of it at its ends
	commaUnder   = 1.2  // mm under the surface, where it is led aside
	commaSkinMM  = 1.6  // under the surface, where its pull fades
)

// feather pulls up commas along the tracks that lie so far across the mould, and at both ends of the loaf about them: where the wire went up and down
// colours come up in tatters.
func (b *builder) feather(out []float64, shift wobble) {
	for _, y := range out {
		for range commasATrack {
			t := b.d.Float()
			x := b.Box.L * (0.5 - 0.5*math.Cos(math.Pi*t)) // more towards the ends
			b.comma(x, y+shift.at(x)+b.d.Between(-commaOffMM, commaOffMM), 1)
		}
	}
	for _, end := range [...]float64{0, b.Box.L} {
		for range commasAnEnd {
			y := out[int(b.d.Float()*float64(len(out)))]
			x := math.Abs(end - b.d.Between(3, commaEndMM))
			b.comma(x, y+shift.at(x)+b.d.Between(-4, 4)*commaOffMM, b.d.Between(1, 1.5))
		}
	}
}

// comma pulls up what lies under the surface at a place, of a size, and leads it aside: it ends in a hook.
func (b *builder) comma(x, y, size float64) {
	y = b.clear(y)
	from := vec2{y, b.Box.H * b.d.Between(commaDeep, commaHigh)}
	aside := b.d.Sign() * b.d.Between(commaTurnMM, commasTurnMM) * size
	if end := y + aside*(1-math.Cos(hookTurn)); end != b.clear(end) {
		aside = -aside
	}
	b.local(hooked(from, aside, b.Box.H-commaUnder), local{
		radius: size * b.d.Between(commaMM, commasMM), grip: b.thick(0.75, 0.85), skin: commaSkinMM,
		x: x, far: size * b.d.Between(commaLongMM, commasLongMM), slant: b.d.Between(-commaSlant, commaSlant), bow: b.d.Between(-commaBowMM, commaBowMM), sinks: commaSinks,
	})
}

// hooked is a way straight up from a place to a height and round to so far aside there.
func hooked(from vec2, aside, top float64) []vec2 {
	path := make([]vec2, 0, bentKnots+1)
	for i := range bentKnots + 1 {
		sin, cos := math.Sincos(hookTurn * float64(i) / bentKnots)
		path = append(path, vec2{from.y + aside*(1-cos), from.z + (top-from.z)*sin})
	}
	return path
}

// hookTurn is how far a hook goes round, radians: by a right angle it is on top, and then it dives a little. By eye, no source.
const hookTurn = 2.1

// local is a stroke that is gone so far to either side of a place along the loaf, mm.
type local struct {
	radius, grip, skin float64
	x, far             float64 // mm along the loaf
	slant              float64 // mm aside for every mm along the loaf
	bow                float64 // mm, so far aside it is at its ends besides
	sinks              float64 // what part of its height is left at its ends; 0: all of it
}

// local draws a stroke that is gone so far to either side of a place along the loaf.
func (b *builder) local(path []vec2, l local) {
	s := stroke{
		radius: l.radius, grip: l.grip, skin: l.skin, ease: l.radius, pivot: path[0], sway: wobble{mean: 1}, depth: wobble{mean: 1},
		ebb: about(l.x, l.far, b.Box.L),
	}
	k := math.Pi / b.Box.L
	bow, slant := l.bow*s.ebb.mean, l.slant/k
	s.shift = wobble{mean: bow, amp: [2]float64{0, math.Hypot(bow, slant)}, k: s.ebb.k, offset: [2]float64{0, math.Atan2(-bow, slant) - k*l.x}}
	if l.sinks > 0 {
		s.depth = s.ebb.times(l.sinks - 1)
		s.depth.mean = 1 + (l.sinks-1)*s.ebb.mean
	}
	b.draw(&s, path)
}

// about is a drift that is 0 at a place along a loaf, 1 so far to either side of it, and more beyond.
func about(x, far, long float64) wobble {
	w := wobble{k: [2]float64{0, math.Pi / long}, offset: [2]float64{0, 0.5*math.Pi - math.Pi/long*x}}
	w.mean = 1 / (1 - math.Cos(math.Pi*far/long))
	w.amp[1] = -w.mean
	return w
}
