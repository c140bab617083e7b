package swirl

import (
	"math"

	"pourbench/pour/script"
)

// dice draws every random number of a picture, in the order it is built; the pixel loop draws none.
type dice struct{ script.Dice }

// newDice makes the dice of a seed.
func newDice(seed int64) dice { return dice{script.NewDice(seed, 0x5eed)} }

// wobble is a number that drifts slowly along the loaf, so that bars differ but neighbours are related.
type wobble struct {
	mean   float64
	amp    [2]float64
	k      [2]float64 // 1/mm
	offset [2]float64
	lobes  lobes // how it swells besides; the zero value: not
	zigzag bool  // its shorter waves are not round but go to and fro evenly, here hurried and there delayed by the longer
	near   float64
	far    float64 // it turns back gently between near and far; none: it goes anywhere
}

// lobes are how what hangs down hangs in bulbs, one after the other along the loaf: round ones with narrow gaps between them.
type lobes struct{ amp, k, offset float64 }

// Lobes by eye, no source.
const (
	lobeGap  = 0.2  // how wide the gaps are and how rounded, in radians of half a lobe
	lobeMean = 0.67 // what lobes are in the mean
	lobeBend = 2.2  // radians by which the longest wave of a wobble hurries and delays its lobes, so that no two are alike
)

// at is from about -1 in a gap to a good half in the middle of a bulb, at an angle.
func (l *lobes) at(a float64) float64 {
	c := math.Cos(0.5 * a)
	return 2 * (math.Sqrt((c*c+lobeGap*lobeGap)/(1+lobeGap*lobeGap)) - lobeMean)
}

// How a zigzag goes, by eye, no source.
const (
	zigzagSharp = 0.93 // how sharply it turns round: 0 a sine, 1 a kink
	zigzagBend  = 0.8  // radians by which the longer wave hurries and delays it
	zigzagPart  = 0.72 // of a wander: what of it goes to and fro
	turnsBack   = 6    // how suddenly a drift turns back before its ends
)

// wobble draws a drift of up to amp either side of mean, with waves of 60 to 110 mm and 140 to 320 mm.
func (d *dice) wobble(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{60, 110}, [2]float64{140, 320})
}

// askew draws how a stiff wire as long as a loaf is held askew: from one end to the other it goes from up to amp one side of mean to as far on the
// other, or less, never back.
func (d *dice) askew(mean, amp, long float64) wobble {
	w := d.drift(mean, amp*d.Between(0.5, 1)*d.Sign(), [2]float64{120, 200}, [2]float64{2.2 * long, 3 * long})
	w.amp[0] *= 0.15 / 0.4
	w.offset[1] = -0.5 * w.k[1] * long
	return w
}

// sway draws how far a hand that is led along the loaf goes aside, up to amp either side of mean: hardly within one bar, in waves of 100 to 170 mm and
// 220 to 420 mm.
func (d *dice) sway(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{100, 170}, [2]float64{220, 420})
}

// wander draws how a jug that is led along the loaf and to and fro across it goes, up to amp either side of mean: there and back in 115 to 175 mm, all of it
// aside in 220 to 360 mm.
func (d *dice) wander(mean, amp float64) wobble {
	w := d.drift(mean, amp, [2]float64{115, 175}, [2]float64{220, 360})
	w.amp = [2]float64{zigzagPart * amp, (1 - zigzagPart) * amp}
	w.zigzag = true
	return w
}

// spurts draws how a thin stream runs: it swells, thins and almost stops, by up to amp of its own, in waves of 80 to 120 mm and 140 to 240 mm.
func (d *dice) spurts(amp float64) wobble {
	return d.drift(0, amp, [2]float64{80, 120}, [2]float64{140, 240})
}

// bulbs draws what hangs in bulbs of 46 to 78 mm along the loaf, by up to about amp more in their middles and less between them, and all of them by
// a half of that more here and less there.
func (d *dice) bulbs(amp float64) wobble {
	w := d.drift(0, 0.5*amp, [2]float64{70, 120}, [2]float64{150, 260})
	w.lobes = lobes{amp: amp, k: 2 * math.Pi / d.Between(46, 78), offset: d.Between(0, 2*math.Pi)}
	return w
}

// drift draws a drift of up to amp either side of mean, with waves of two ranges of length, mm.
func (d *dice) drift(mean, amp float64, short, long [2]float64) wobble {
	return wobble{
		mean:   mean,
		amp:    [2]float64{0.4 * amp, 0.6 * amp},
		k:      [2]float64{2 * math.Pi / d.Between(short[0], short[1]), 2 * math.Pi / d.Between(long[0], long[1])},
		offset: [2]float64{d.Between(0, 2*math.Pi), d.Between(0, 2*math.Pi)},
	}
}

func (w *wobble) at(x float64) float64 {
	if w.amp[0] == 0 && w.amp[1] == 0 {
		return w.mean
	}
	long := math.Sin(w.k[1]*x + w.offset[1])
	v := w.mean + w.amp[0]*w.short(x, long) + w.amp[1]*long
	if w.lobes.amp != 0 {
		v += w.lobes.amp * w.lobes.at(w.lobes.k*x+w.lobes.offset-lobeBend*long)
	}
	if w.far > w.near {
		mid, room := 0.5*(w.near+w.far), 0.5*(w.far-w.near)
		u := (v - mid) / room
		v = mid + room*u/math.Pow(1+math.Pow(math.Abs(u), turnsBack), 1./turnsBack)
	}
	return v
}

// short is the shorter wave at a place, -1 to 1.
func (w *wobble) short(x, long float64) float64 {
	a := w.k[0]*x + w.offset[0]
	if !w.zigzag {
		return math.Sin(a)
	}
	return math.Asin(zigzagSharp*math.Sin(a+zigzagBend*long)) / math.Asin(zigzagSharp)
}

// between is the same drift, but it turns back gently before it comes below near or beyond far.
func (w wobble) between(near, far float64) wobble {
	w.near, w.far = near, far
	return w
}

// within is the same drift, but no further than so far from its mean.
func (w wobble) within(most float64) wobble {
	if all := math.Abs(w.amp[0]) + math.Abs(w.amp[1]); all > most {
		w.amp[0], w.amp[1] = w.amp[0]*most/all, w.amp[1]*most/all
	}
	return w
}

// times is the same drift about its mean, so many times as far.
func (w wobble) times(by float64) wobble {
	w.amp[0], w.amp[1], w.lobes.amp = by*w.amp[0], by*w.amp[1], by*w.lobes.amp
	return w
}
