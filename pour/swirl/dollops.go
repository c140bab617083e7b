package swirl

import "math"

const (
	dollopCellMM = 12 // mesh by which the dollops near a point are found
	solveSamples = 30000
	solveRounds  = 60
	solveError   = 0.0008 // of the batter: the worst share error that ends the search
)

// dollops is batter spooned in heaps. Each heap is a flattened, tilted ball of influence of its portion; the portion
// with most influence has the point. One weight per portion is found so that the shares come out.
type dollops struct {
	heaps  []heap
	weight [MaxPortions]float64
	start  []int32 // first entry in near of each mesh cell, and one past the last
	near   []int32
	n      [3]int
	first  int // portion that has a point no heap reaches
}

type heap struct {
	at      vec3
	reach   float64 // mm, across
	inv     float64 // 1/reach²
	flat    float64 // 1 round, 2 half as high as wide
	lean    float64 // rise of the heap's middle per mm across
	portion int
}

// newDollops fills the box with count heaps of the wanted shares.
func newDollops(d *dice, box Box, shares []float64, count int, reach, flat float64) *dollops {
	f := &dollops{}
	for i, s := range shares {
		if s > shares[f.first] {
			f.first = i
		}
	}
	for i := range count {
		f.heaps = append(f.heaps, newHeap(d, box, i, reach*d.between(0.75, 1.25), flat))
	}
	f.deal(d, shares)
	f.index(box)
	f.solve(d, box, shares)
	return f
}

// newHeap places heap i at the next point of an additive recurrence (Roberts 2018), which leaves no large gaps.
func newHeap(d *dice, box Box, i int, reach, flat float64) heap {
	const a1, a2, a3 = 0.8191725133961645, 0.6710436067037893, 0.5497004779019703
	turn := float64(i) + 0.5
	at := func(a, side float64) float64 {
		v := turn*a + 0.25*d.between(-0.3, 0.3)
		return (v - math.Floor(v)) * side
	}
	return heap{
		at:    vec3{at(a1, box.L), at(a2, box.W), at(a3, box.H)},
		reach: reach, inv: 1 / (reach * reach), flat: flat * d.between(0.8, 1.25), lean: d.between(-0.5, 0.5),
	}
}

// deal gives heaps to portions in proportion to their shares, in random order.
func (f *dollops) deal(d *dice, shares []float64) {
	owed := append([]float64(nil), shares...)
	for i := range f.heaps {
		best := f.first
		for k := range owed {
			if shares[k] > 0 && owed[k] > owed[best] {
				best = k
			}
		}
		owed[best] -= 1
		for k := range owed {
			owed[k] += shares[k]
		}
		f.heaps[i].portion = best
	}
	d.shuffle(len(f.heaps), func(i, j int) {
		f.heaps[i].portion, f.heaps[j].portion = f.heaps[j].portion, f.heaps[i].portion
	})
}

func (f *dollops) index(box Box) {
	sides := [3]float64{box.L, box.W, box.H}
	for i := range f.n {
		f.n[i] = int(math.Ceil(sides[i] / dollopCellMM))
	}
	f.start = append(f.start, 0)
	for c := range f.n[0] * f.n[1] * f.n[2] {
		cell := [3]float64{
			float64(c/(f.n[1]*f.n[2])) * dollopCellMM, float64(c/f.n[2]%f.n[1]) * dollopCellMM, float64(c%f.n[2]) * dollopCellMM,
		}
		for k := range f.heaps {
			h := &f.heaps[k]
			away := 0.0
			for i, v := range [3]float64{h.at.x, h.at.y, h.at.z} {
				e := max(cell[i]-v, v-cell[i]-dollopCellMM, 0)
				if i < 2 { // the height leans, so it cannot rule a cell out
					away += e * e
				}
			}
			if away < h.reach*h.reach {
				f.near = append(f.near, int32(k))
			}
		}
		f.start = append(f.start, int32(len(f.near)))
	}
}

// influence adds up the influence of the heaps of every portion at a point.
func (f *dollops) influence(x, y, z float64, sum *[MaxPortions]float64) {
	i := min(int(max(0, x)/dollopCellMM), f.n[0]-1)
	j := min(int(max(0, y)/dollopCellMM), f.n[1]-1)
	k := min(int(max(0, z)/dollopCellMM), f.n[2]-1)
	c := (i*f.n[1]+j)*f.n[2] + k
	for _, n := range f.near[f.start[c]:f.start[c+1]] {
		h := &f.heaps[n]
		e, g := x-h.at.x, y-h.at.y
		up := (z - h.at.z - h.lean*g) * h.flat
		if q := 1 - (e*e+g*g+up*up)*h.inv; q > 0 {
			q *= q
			sum[h.portion] += q * q * q
		}
	}
}

func (f *dollops) label(x, y, z float64) int {
	var sum [MaxPortions]float64
	f.influence(x, y, z, &sum)
	best, most := f.first, 0.0
	for i, v := range sum {
		if v *= f.weight[i]; v > most {
			best, most = i, v
		}
	}
	return best
}

// solve finds the weights by sampling the box and raising the weights of portions that came out short.
func (f *dollops) solve(d *dice, box Box, shares []float64) {
	n := len(shares)
	samples := make([]float64, 0, n*solveSamples)
	side := math.Cbrt(box.L * box.W * box.H / solveSamples)
	nx, ny, nz := int(box.L/side)+1, int(box.W/side)+1, int(box.H/side)+1
	for c := range nx * ny * nz {
		x := (float64(c/(ny*nz)) + d.float()) / float64(nx) * box.L
		y := (float64(c/nz%ny) + d.float()) / float64(ny) * box.W
		z := (float64(c%nz) + d.float()) / float64(nz) * box.H
		var sum [MaxPortions]float64
		f.influence(x, y, z, &sum)
		samples = append(samples, sum[:n]...)
	}
	for i, s := range shares {
		if s > 0 {
			f.weight[i] = 1
		}
	}
	gain, last := 1.0, math.Inf(1)
	for range solveRounds {
		worst := f.adjust(samples, shares, gain)
		if worst < solveError {
			return
		}
		if worst > last {
			gain *= 0.7
		}
		last = worst
	}
}

// adjust makes one round of corrections and returns the worst share error before it.
func (f *dollops) adjust(samples, shares []float64, gain float64) (worst float64) {
	var got [MaxPortions]float64
	n := len(shares)
	for k := 0; k+n <= len(samples); k += n {
		best, most := f.first, 0.0
		for i, v := range samples[k : k+n] {
			if v *= f.weight[i]; v > most {
				best, most = i, v
			}
		}
		got[best] += float64(n) / float64(len(samples))
	}
	for i, s := range shares {
		worst = max(worst, math.Abs(got[i]-s))
	}
	if worst < solveError {
		return worst
	}
	for i, s := range shares {
		if s > 0 {
			f.weight[i] *= math.Pow(clamp((s+0.002)/(got[i]+0.002), 0.5, 2), gain)
		}
	}
	return worst
}
