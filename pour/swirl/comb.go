package swirl

import "math"

// tineRound is how round the batter's way is at a tine itself, in reaches.
const tineRound = 1.3

// What the hand gets going over from an end wall, and lets off over before the other: by eye, no source.
const (
	combTurn     = 18  // mm
	combTurnPart = 0.2 // of the way from wall to wall at most
)

const combSteps = 4 // Runge-Kutta steps where the flow turns round at the end walls

// comb is a row of tines drawn through the batter at once. Seen from above, u runs across the tines and v along
// their way. The stream function is -C(u)·B(v): a pure shear inside, a return flow near the two end walls.
// It fades with depth, for each tine to where that ends; that keeps volume because the flow stays level.
type comb struct {
	alongX bool      // the tines travel along the loaf (u is y, v is x) or across it (u is x, v is y)
	wide   float64   // mm, length of u
	long   float64   // mm, length of v
	turn   float64   // mm, over which the flow turns round at the end walls
	n      int       // steps of u
	shift  []float64 // mm, shift at equal steps of u, the surface first and then ever deeper; its mean at every depth is 0
	sum    []float64 // mm², integral of shift from u of 0
	level  float64
	steps  int     // Runge-Kutta steps there
	deep   float64 // of the level: where the hold of the deepest tine ends, below which nothing moves; 0: at the floor or below
}

// combRise is how fast a tine's hold grows from its end up: where it is so many times of the way up to the surface it has the batter in full.
const combRise = 1.2

// combDepths is at how many depths the shift is worked out, beside the surface; in between it is taken in proportion.
const combDepths = 18

// tine is one tooth: where it stands, how far it goes, mm, and of the level how high its hold ends: less than 0 where it takes along what lies on
// the floor.
type tine struct {
	at, pull, deep float64
	brisk          float64 // by what part faster its hold grows from its end up than another's
	taper          float64 // by what part its reach is less where its hold ends: what it takes along runs out to a point there
	lean           float64 // mm, how far from its place it is at the floor, as the comb is held askew
	bend           float64 // mm, how far it is off that line half way down
}

// aside is how far from its place a tine is, so far down of the level.
func (t *tine) aside(down float64) float64 { return t.lean*down + t.bend*math.Sin(math.Pi*down) }

// hold is what part of its way the batter goes along, so far down of the level.
func (t *tine) hold(down float64) float64 {
	return smooth(combRise * (1 + t.brisk) * (1 - down - t.deep) / (1 - t.deep))
}

// newComb draws a comb from its tines.
// A tine's pull halves every reach mm to the side (Jaffer, The Mathematics of Marbling), rounded at the tine itself.
func newComb(tines []tine, reach, wide, long, level float64) *comb {
	n := int(math.Ceil(wide / 0.5))
	c := &comb{wide: wide, long: long, turn: min(combTurn, combTurnPart*long), n: n, level: level, steps: combSteps, deep: 1}
	for _, t := range tines {
		c.deep = min(c.deep, max(t.deep, 0))
	}
	c.shift, c.sum = make([]float64, (combDepths+1)*(n+1)), make([]float64, (combDepths+1)*(n+1))
	way := make([]float64, n+1)
	for i := range tines {
		c.take(&tines[i], reach, way)
	}
	for k := range combDepths + 1 {
		c.balance(c.shift[k*(n+1):(k+1)*(n+1)], c.sum[k*(n+1):])
	}
	return c
}

// take adds what a tine takes along at every depth; way is room for one of them.
func (c *comb) take(t *tine, reach float64, way []float64) {
	from, to := 0, 0
	for k := range combDepths + 1 {
		down := (1 - c.deep) * float64(k) / combDepths
		hold := t.hold(down)
		if k == 0 || t.taper != 0 || t.lean != 0 || t.bend != 0 {
			from, to = c.beside(t.at+t.aside(down), reach, 1-t.taper*(1-hold), way)
		}
		row := c.shift[k*(c.n+1):]
		for i := from; i <= to; i++ {
			row[i] += hold * t.pull * way[i]
		}
	}
}

// beside works out what part of its way batter goes with a tine at a place whose reach is thinner, and the steps from which to which it does.
func (c *comb) beside(at, reach, thin float64, way []float64) (from, to int) {
	per, round, step := 1/(thin*reach), tineRound*thin, c.wide/float64(c.n)
	from, to = max(0, int((at-mostReaches/per)/step)), min(c.n, int((at+mostReaches/per)/step))
	for i := from; i <= to; i++ {
		u := (float64(i)*step - at) * per
		way[i] = math.Exp2(round - math.Sqrt(round*round+u*u))
	}
	return from, to
}

// mostReaches is how many reaches from a tine nothing of its pull is left, or a few millionths.
const mostReaches = 18

// balance lets as much batter go back at a depth as goes along, and adds up what does.
func (c *comb) balance(shift, sum []float64) {
	mean := 0.5 * (shift[0] + shift[c.n])
	for _, v := range shift[1:c.n] {
		mean += v
	}
	mean /= float64(c.n)
	for i := range shift {
		shift[i] -= mean
		if i > 0 {
			sum[i] = sum[i-1] + 0.5*(shift[i]+shift[i-1])*c.wide/float64(c.n)
		}
	}
}

// depth is between which depths a height lies: the first value of the upper one, and how far it is to the lower.
func (c *comb) depth(z float64) (first int, f float64) {
	t := clamp((1-z/c.level)/(1-c.deep), 0, 1) * combDepths
	k := min(int(t), combDepths-1)
	return k * (c.n + 1), t - float64(k)
}

// at gives the shift and its integral at u between two depths; the integral is the exact one of the shift drawn with straight pieces.
func (c *comb) at(u float64, first int, down float64) (shift, sum float64) {
	t := clamp(u/c.wide, 0, 1) * float64(c.n)
	i := min(int(t), c.n-1)
	f := t - float64(i)
	i += first
	k := i + c.n + 1
	a, b := c.shift[i]+down*(c.shift[k]-c.shift[i]), c.shift[i+1]+down*(c.shift[k+1]-c.shift[i+1])
	return a + f*(b-a), c.sum[i] + down*(c.sum[k]-c.sum[i]) + f*(a+0.5*f*(b-a))*c.wide/float64(c.n)
}

func (c *comb) velocity(u, v float64, first int, down float64) (vu, vv float64) {
	shift, sum := c.at(u, first, down)
	b, slope := ramp(v, c.long, 1/c.turn)
	return -sum * slope, shift * b
}

// move carries a point along (dir 1) or back (dir -1).
func (c *comb) move(x, y, z, dir float64) (float64, float64) {
	if z <= c.deep*c.level {
		return x, y
	}
	if c.alongX {
		y, x = c.slide(y, x, z, dir)
		return x, y
	}
	return c.slide(x, y, z, dir)
}

func (c *comb) slide(u, v, z, t float64) (float64, float64) {
	first, down := c.depth(z)
	shift, _ := c.at(u, first, down)
	if to := v + t*shift; min(v, to) >= c.turn && max(v, to) <= c.long-c.turn {
		return u, to
	}
	h := t / float64(c.steps)
	for range c.steps {
		au, av := c.velocity(u, v, first, down)
		bu, bv := c.velocity(u+0.5*h*au, v+0.5*h*av, first, down)
		cu, cv := c.velocity(u+0.5*h*bu, v+0.5*h*bv, first, down)
		du, dv := c.velocity(u+h*cu, v+h*cv, first, down)
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
