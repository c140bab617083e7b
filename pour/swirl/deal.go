package swirl

import (
	"math"
	"slices"
)

// deal gives the dollops of a heap to the portions. The dollops' volumes are measured first and dealt spoon by spoon;
// what a portion then has too much is given to one that has too little, if need be by parting a dollop in two.
type deal struct {
	f       *dollops
	box     Box
	shares  []float64
	half    float64
	columns mesh
	volume  []float64 // of the batter, by dollop; the last is what no dollop reaches
	portion []int     // by dollop, and of what no dollop reaches
	owed    []float64 // of the batter, by portion; negative where a portion has too much
}

func newDeal(f *dollops, box Box, shares []float64, half float64) *deal {
	d := &deal{f: f, box: box, shares: shares, half: half, columns: newMesh(box, min(half/volumeMesh, box.L/leastMeshes, box.W/leastMeshes))}
	d.owed = append([]float64(nil), shares...)
	for i := range f.domes {
		h := &f.domes[i]
		d.volume = append(d.volume, d.columns.heap(h, d.columns.window(h), box.H)*d.unit())
	}
	left := 1.0
	for _, v := range d.volume {
		left -= v
	}
	d.volume = append(d.volume, max(0, left))
	d.portion = make([]int, len(d.volume))
	return d
}

// unit turns mm summed over columns into parts of the batter.
func (d *deal) unit() float64 {
	return 1 / (float64(len(d.columns.z)) * d.box.H)
}

// byTheSpoon deals the dollops in the order they fall to the portion that is owed most by then, but rather not to one
// that already lies beside or below.
func (d *deal) byTheSpoon(dice *dice) {
	due := make([]float64, len(d.shares))
	same := make([]float64, len(d.shares))
	for i, v := range d.volume {
		clear(same)
		d.beside(i, same)
		best, most := -1, 0.0
		for p, s := range d.shares {
			due[p] += s * v
			if s == 0 {
				continue
			}
			if score := due[p] - v*(0.5*same[p]*(1-s)+0.4*dice.Float()); best < 0 || score > most {
				best, most = p, score
			}
		}
		due[best] -= v
		d.give(i, best)
	}
}

func (d *deal) give(i, portion int) {
	d.portion[i] = portion
	d.owed[portion] -= d.volume[i]
	if i < len(d.f.domes) {
		d.f.domes[i].portion = portion
	}
}

// beside counts how many dollops of each portion lie close by.
func (d *deal) beside(i int, same []float64) {
	if i >= len(d.f.domes) {
		return
	}
	h := &d.f.domes[i]
	for k := range i {
		g := &d.f.domes[k]
		e, f := g.x-h.x, g.y-h.y
		if e*e+f*f > 3.3*d.half*d.half {
			continue
		}
		near := math.Sqrt(e*e+f*f)/d.half + math.Abs(g.top-h.top)/(1.4*d.half)
		if near < 1.8 {
			same[g.portion] += 1.8 - near
		}
	}
}

// settle evens out what is owed and returns the worst error of a share that is left.
func (d *deal) settle() float64 {
	const rounds = 400
	for range rounds {
		over, under := 0, 0
		for p, v := range d.owed {
			if v < d.owed[over] {
				over = p
			}
			if v > d.owed[under] {
				under = p
			}
		}
		amount := min(-d.owed[over], d.owed[under])
		if amount < dealError/float64(len(d.owed)) {
			break
		}
		whole, part := d.choose(over, amount)
		switch {
		case whole >= 0:
			d.owed[over] += d.volume[whole]
			d.give(whole, under)
		case part >= 0:
			d.part(part, under, amount)
		}
	}
	worst := 0.0
	for _, v := range d.owed {
		worst = max(worst, math.Abs(v))
	}
	return worst
}

// choose finds the greatest dollop of a portion of at most amount, and the smallest above it; -1 where there is none.
func (d *deal) choose(portion int, amount float64) (whole, part int) {
	whole, part = -1, -1
	for i, v := range d.volume[:len(d.f.domes)] {
		switch {
		case d.portion[i] != portion || v < dealError/1000:
		case v <= amount && (whole < 0 || v > d.volume[whole]):
			whole = i
		case v > amount && (part < 0 || v < d.volume[part]):
			part = i
		}
	}
	return whole, part
}

// part gives the lower part of dollop i to another portion: the same dome, sunk until what lies under it is amount.
func (d *deal) part(i, portion int, amount float64) {
	m := &d.columns
	clear(m.z)
	w := m.window(&d.f.domes[i])
	for k := range i {
		h := &d.f.domes[k]
		m.heap(h, w.and(m.window(h)), d.box.H)
	}
	sunk := d.f.domes[i]
	low, high := sunk.top-d.box.H-sunk.high, sunk.top
	was := append([]float64(nil), m.z...)
	full := 0.0
	for range 24 {
		copy(m.z, was)
		sunk.top = 0.5 * (low + high)
		full = m.heap(&sunk, w, d.box.H) * d.unit()
		if full < amount {
			low = sunk.top
		} else {
			high = sunk.top
		}
	}
	sunk.portion = portion
	over := d.portion[i]
	d.f.domes = slices.Insert(d.f.domes, i, sunk)
	d.volume = slices.Insert(d.volume, i, full)
	d.portion = slices.Insert(d.portion, i, portion)
	d.volume[i+1] -= full
	d.owed[over] += full
	d.owed[portion] -= full
}
