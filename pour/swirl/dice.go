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
}

// wobble draws a drift of up to amp either side of mean, with waves of 60 to 110 mm and 140 to 320 mm.
func (d *dice) wobble(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{60, 110}, [2]float64{140, 320})
}

// swing draws a quicker drift, with waves of 34 to 62 mm and 80 to 150 mm: a hand that pours goes to and fro.
func (d *dice) swing(mean, amp float64) wobble {
	return d.drift(mean, amp, [2]float64{34, 62}, [2]float64{80, 150})
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
	return w.mean + w.amp[0]*math.Sin(w.k[0]*x+w.offset[0]) + w.amp[1]*math.Sin(w.k[1]*x+w.offset[1])
}

// within is the same drift, but no further than so far from its mean.
func (w wobble) within(most float64) wobble {
	if all := math.Abs(w.amp[0]) + math.Abs(w.amp[1]); all > most {
		w.amp[0], w.amp[1] = w.amp[0]*most/all, w.amp[1]*most/all
	}
	return w
}
