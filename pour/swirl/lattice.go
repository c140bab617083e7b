package swirl

import (
	"math"

	"pourbench/pour/script"
)

const (
	latticeBits = 8
	latticeSide = 1 << latticeBits
	latticeMask = latticeSide - 1
)

// lattice is smooth noise: values of -1 to 1 at whole places, blended in between (value noise). It repeats after 256 places.
type lattice [latticeSide * latticeSide]float32

func newLattice(seed int64) *lattice {
	l := &lattice{}
	d := script.NewDice(seed, 0x9a13)
	for i := 0; i < len(l); i += 4 {
		v := d.Next()
		for k := range 4 {
			l[i+k] = float32(v>>(16*k)&0xffff)/32767.5 - 1
		}
	}
	return l
}

// at is the noise at a place, in cells.
func (l *lattice) at(u, v float64) float32 {
	fu, fv := math.Floor(u), math.Floor(v)
	i, j := int(fu), int(fv)
	a, b := float32(u-fu), float32(v-fv)
	a, b = a*a*(3-2*a), b*b*(3-2*b)
	row, next := (j&latticeMask)<<latticeBits, ((j+1)&latticeMask)<<latticeBits
	i, k := i&latticeMask, (i+1)&latticeMask
	top := l[row+i] + a*(l[row+k]-l[row+i])
	foot := l[next+i] + a*(l[next+k]-l[next+i])
	return top + b*(foot-top)
}
