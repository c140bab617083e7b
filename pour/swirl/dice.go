package swirl

import "math"

// dice draws every random number of a pour, in the order the pour is built; the pixel loop draws none.
// The generator is SplitMix64 (Steele, Lea and Flood 2014), so that a seed means the same picture in every release of Go.
type dice struct{ state uint64 }

func (d *dice) next() uint64 {
	d.state += 0x9e3779b97f4a7c15
	return mix64(d.state)
}

func mix64(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// float draws from [0, 1).
func (d *dice) float() float64 { return float64(d.next()>>11) / (1 << 53) }

func (d *dice) between(low, high float64) float64 { return low + (high-low)*d.float() }

// sign draws -1 or 1.
func (d *dice) sign() float64 {
	if d.next()>>63 == 0 {
		return -1
	}
	return 1
}

// shuffle reorders n things by Fisher and Yates.
func (d *dice) shuffle(n int, swap func(i, j int)) {
	for i := n - 1; i > 0; i-- {
		swap(i, int(d.next()%uint64(i+1)))
	}
}

// wobble is a number that drifts slowly along the loaf, so that bars differ but neighbours are related.
type wobble struct {
	mean   float64
	amp    [2]float64
	k      [2]float64 // 1/mm
	offset [2]float64
}

// wobble draws a drift of up to amp either side of mean, with waves of 60 to 110 mm and 140 to 320 mm.
func (d *dice) wobble(mean, amp float64) wobble {
	return wobble{
		mean:   mean,
		amp:    [2]float64{0.4 * amp, 0.6 * amp},
		k:      [2]float64{2 * math.Pi / d.between(60, 110), 2 * math.Pi / d.between(140, 320)},
		offset: [2]float64{d.between(0, 2*math.Pi), d.between(0, 2*math.Pi)},
	}
}

func (w *wobble) at(x float64) float64 {
	if w.amp[0] == 0 && w.amp[1] == 0 {
		return w.mean
	}
	return w.mean + w.amp[0]*math.Sin(w.k[0]*x+w.offset[0]) + w.amp[1]*math.Sin(w.k[1]*x+w.offset[1])
}
