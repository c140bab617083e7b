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
	quick  quick // how it goes to and fro besides; the zero value: not
}

// quick is how unevenly a hand goes: quick waves, and how much, in radians, the longest wave of the wobble hurries and delays all others, so that no two
// are alike.
type quick struct{ amp, k, offset, bend float64 }

// handBend is by eye, no source.
const handBend = 1.3

// wobble draws a drift of up to amp either side of mean, with waves of 60 to 110 mm and 140 to 320 mm.
func (d *dice) wobble(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{60, 110}, [2]float64{140, 320})
}

// slow draws a drift of up to amp either side of mean of what is as long as the loaf and stiff, in waves of 180 to 300 mm and 400 to 700 mm.
func (d *dice) slow(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{180, 300}, [2]float64{400, 700})
}

// askew draws how a stiff wire as long as a loaf is held askew: from one end to the other it goes from up to amp one side of mean to as far on the
// other, or less, never back.
func (d *dice) askew(mean, amp, long float64) wobble {
	w := d.drift(mean, amp*d.Between(0.5, 1)*d.Sign(), [2]float64{120, 200}, [2]float64{2.2 * long, 3 * long})
	w.amp[0] *= 0.15 / 0.4
	w.offset[1] = -0.5 * w.k[1] * long
	return w
}

// sway draws how far a hand that pours goes aside, up to amp either side of mean, in uneven waves of 22 to 36 mm, 40 to 70 mm and 90 to 170 mm.
func (d *dice) sway(mean, amp float64) wobble {
	w := d.drift(mean, 0.85*amp, [2]float64{40, 70}, [2]float64{90, 170})
	w.quick = d.quick(0.15*amp, 22, 36)
	return w
}

// surge draws how much faster and slower, higher and lower a hand that pours goes, up to amp either side of mean, in uneven waves of 13 to 25 mm, 30 to
// 55 mm and 80 to 150 mm.
func (d *dice) surge(mean, amp float64) wobble {
	w := d.drift(mean, 0.6*amp, [2]float64{30, 55}, [2]float64{80, 150})
	w.quick = d.quick(0.4*amp, 13, 25)
	return w
}

// quick draws quick waves of up to amp, of a range of length, mm.
func (d *dice) quick(amp, short, long float64) quick {
	return quick{amp: amp, k: 2 * math.Pi / d.Between(short, long), offset: d.Between(0, 2*math.Pi), bend: handBend}
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
	v := w.mean + w.amp[0]*math.Sin(w.k[0]*x+w.offset[0]+w.quick.bend*long) + w.amp[1]*long
	if w.quick.amp != 0 {
		v += w.quick.amp * math.Sin(w.quick.k*x+w.quick.offset-w.quick.bend*long)
	}
	return v
}

// within is the same drift, but no further than so far from its mean.
func (w wobble) within(most float64) wobble {
	if all := math.Abs(w.amp[0]) + math.Abs(w.amp[1]); all > most {
		w.amp[0], w.amp[1] = w.amp[0]*most/all, w.amp[1]*most/all
	}
	return w
}
