package swirl

import "math"

// tineRound is how round the batter's way is at a tine itself, in reaches.
const tineRound = 0.4

const combSteps = 6 // Runge-Kutta steps where the flow turns round at the end walls

// comb is a row of tines drawn through the batter at once. Seen from above, u runs across the tines and v along
// their way. The stream function is -C(u)·B(v): a pure shear inside, a return flow near the two end walls.
// It fades with depth; that keeps volume because the flow stays level.
type comb struct {
	alongX bool      // the tines travel along the loaf (u is y, v is x) or across it (u is x, v is y)
	wide   float64   // mm, length of u
	long   float64   // mm, length of v
	turn   float64   // mm, over which the flow turns round at the end walls
	shift  []float64 // mm, shift at equal steps of u; its mean is 0
	sum    []float64 // mm², integral of shift from 0
	level  float64
	deep   float64 // of the level: the tines' ends, below which nothing moves
}

// newComb draws a comb from its tines: where they stand, how far and which way each goes.
// A tine's pull halves every reach mm to the side (Jaffer, The Mathematics of Marbling), rounded at the tine itself.
func newComb(tines []tine, reach, wide, long, level, deep float64) *comb {
	n := int(math.Ceil(wide / 0.5))
	c := &comb{wide: wide, long: long, turn: min(10, long/4), level: level, deep: deep}
	c.shift, c.sum = make([]float64, n+1), make([]float64, n+1)
	mean := 0.0
	for i := range c.shift {
		u := wide * float64(i) / float64(n)
		for _, t := range tines {
			c.shift[i] += t.pull * math.Exp2(tineRound-math.Hypot(tineRound, (u-t.at)/reach))
		}
		weight := 1.0
		if i == 0 || i == n {
			weight = 0.5
		}
		mean += weight * c.shift[i] / float64(n)
	}
	for i := range c.shift {
		c.shift[i] -= mean
		if i > 0 {
			c.sum[i] = c.sum[i-1] + 0.5*(c.shift[i]+c.shift[i-1])*wide/float64(n)
		}
	}
	return c
}

type tine struct{ at, pull float64 }

// at gives the shift and its integral at u; the integral is the exact one of the shift drawn with straight pieces.
func (c *comb) at(u float64) (shift, sum float64) {
	n := len(c.shift) - 1
	t := clamp(u/c.wide, 0, 1) * float64(n)
	i := min(int(t), n-1)
	f := t - float64(i)
	a, b := c.shift[i], c.shift[i+1]
	return a + f*(b-a), c.sum[i] + f*(a+0.5*f*(b-a))*c.wide/float64(n)
}

func (c *comb) velocity(u, v float64) (vu, vv float64) {
	shift, sum := c.at(u)
	b, slope := ramp(v, c.long, 1/c.turn)
	return -sum * slope, shift * b
}

// move carries a point along (dir 1) or back (dir -1).
func (c *comb) move(x, y, z, dir float64) (float64, float64) {
	fade := smooth((z/c.level - c.deep) / (1 - c.deep))
	if c.alongX {
		y, x = c.slide(y, x, dir*fade)
		return x, y
	}
	return c.slide(x, y, dir*fade)
}

func (c *comb) slide(u, v, t float64) (float64, float64) {
	shift, _ := c.at(u)
	if to := v + t*shift; min(v, to) >= c.turn && max(v, to) <= c.long-c.turn {
		return u, to
	}
	h := t / combSteps
	for range combSteps {
		au, av := c.velocity(u, v)
		bu, bv := c.velocity(u+0.5*h*au, v+0.5*h*av)
		cu, cv := c.velocity(u+0.5*h*bu, v+0.5*h*bv)
		du, dv := c.velocity(u+h*cu, v+h*cv)
		u = clamp(u+h*(au+2*(bu+cu)+du)/6, 0, c.wide)
		v = clamp(v+h*(av+2*(bv+cv)+dv)/6, 0, c.long)
	}
	return u, v
}

// smooth rises from 0 to 1 without corners.
func smooth(t float64) float64 {
	t = clamp(t, 0, 1)
	return t * t * (3 - 2*t)
}
