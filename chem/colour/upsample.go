package colour

import (
	"errors"
	"fmt"
	"math"
)

// What a real surface can be, linear light: a reflectance of 1 could never be tinted down, one of 0
// would swallow everything (judgement, not measured).
const (
	darkest  = 0.006
	lightest = 0.94
)

// Limits of the Newton iteration; nine steps are usual.
const (
	upsampleSteps = 60
	upsampleClose = 1e-10
	upsampleLeap  = 2.0
)

var errUnsettled = errors.New("the reflectance curve did not settle: choose a colour a little less strong")

// Upsample returns a smooth reflectance whose colour under D65 is c, with every band between 0 and 1.
// Channels are first clipped to 0.006 to 0.94, which is what a surface can be. The method is Burns's
// least hyperbolic tangent slope squared (LHTSS, 2020): of all curves with that colour it takes the one
// whose inverse hyperbolic tangent changes least from band to band.
func Upsample(c RGB) (Spectrum, error) {
	if err := c.Valid(); err != nil {
		return Spectrum{}, err
	}
	c = c.clip(darkest, lightest)
	n := newton{goal: [3]float64{c.R, c.G, c.B}, rows: response()}
	for range upsampleSteps {
		if n.residual() < upsampleClose {
			return n.curve(), nil
		}
		n.step()
	}
	return Spectrum{}, fmt.Errorf("find a reflectance for %s: %w", c.Hex(), errUnsettled)
}

// newton is the state of one search: z is the inverse hyperbolic tangent of 2R - 1, mu the multipliers
// that hold the three channels.
type newton struct {
	goal [3]float64
	rows [Bands][3]float64
	z    Spectrum
	mu   [3]float64

	diagonal, force Spectrum          // of the tridiagonal block, and the negative residual there
	border          [Bands][3]float64 // the channels' derivatives
	short           [3]float64        // the channels' negative residual
}

func (n *newton) curve() Spectrum {
	var s Spectrum
	for i, z := range n.z {
		s[i] = 1 / (1 + math.Exp(-2*z)) // (tanh z + 1) / 2 without losing digits near 0
	}
	return s
}

// residual fills the linear system at the present z and mu, and returns the largest residual.
func (n *newton) residual() float64 {
	n.short = n.goal
	for i, r := range n.curve() {
		slope := 2 * r * (1 - r)
		row := &n.rows[i]
		pull := row[0]*n.mu[0] + row[1]*n.mu[1] + row[2]*n.mu[2]
		n.diagonal[i] = n.stiffness(i) - 2*slope*(2*r-1)*pull
		n.force[i] = n.bend(i) - slope*pull
		for k := range 3 {
			n.border[i][k] = slope * row[k]
			n.short[k] -= row[k] * r
		}
	}
	worst := max(math.Abs(n.short[0]), math.Abs(n.short[1]), math.Abs(n.short[2]))
	for _, f := range n.force {
		worst = max(worst, math.Abs(f))
	}
	return worst
}

func (n *newton) stiffness(i int) float64 {
	if i == 0 || i == Bands-1 {
		return 2
	}
	return 4
}

// bend is minus the gradient of the summed squared slopes of z.
func (n *newton) bend(i int) float64 {
	b := 0.0
	if i > 0 {
		b += 2 * (n.z[i-1] - n.z[i])
	}
	if i < Bands-1 {
		b += 2 * (n.z[i+1] - n.z[i])
	}
	return b
}

// step solves the system and moves z and mu. All bands but the last are eliminated along the
// tridiagonal block; the last band and the multipliers remain as a 4 by 4 system that is solved with
// pivoting, because the block alone is singular at the start.
func (n *newton) step() {
	const next = -2.0
	var end [4][5]float64
	for k := range 3 {
		end[k+1][4] = n.short[k]
	}
	for i := range Bands - 1 {
		pivot := n.diagonal[i]
		n.diagonal[i+1] -= next * next / pivot
		n.force[i+1] -= next / pivot * n.force[i]
		for k := range 3 {
			b := n.border[i][k] / pivot
			n.border[i+1][k] -= next * b
			end[k+1][4] -= b * n.force[i]
			for l := range 3 {
				end[k+1][l+1] -= b * n.border[i][l]
			}
		}
	}
	const last = Bands - 1
	end[0][0], end[0][4] = n.diagonal[last], n.force[last]
	for k := range 3 {
		end[0][k+1], end[k+1][0] = n.border[last][k], n.border[last][k]
	}
	tail := solve4(end)
	var dz Spectrum
	dz[last] = tail[0]
	for i := last - 1; i >= 0; i-- {
		b := n.border[i]
		dz[i] = (n.force[i] - next*dz[i+1] - b[0]*tail[1] - b[1]*tail[2] - b[2]*tail[3]) / n.diagonal[i]
	}
	n.move(dz, [3]float64(tail[1:]))
}

// move takes the step, shortened where a band would leap.
func (n *newton) move(dz Spectrum, dmu [3]float64) {
	leap := 0.0
	for _, d := range dz {
		leap = max(leap, math.Abs(d))
	}
	share := 1.0
	if leap > upsampleLeap {
		share = upsampleLeap / leap
	}
	for i := range n.z {
		n.z[i] += share * dz[i]
	}
	for k := range n.mu {
		n.mu[k] += share * dmu[k]
	}
}

// solve4 solves four equations by elimination with row pivoting.
func solve4(a [4][5]float64) [4]float64 {
	for i := range 4 {
		pivot := i
		for r := i + 1; r < 4; r++ {
			if math.Abs(a[r][i]) > math.Abs(a[pivot][i]) {
				pivot = r
			}
		}
		a[i], a[pivot] = a[pivot], a[i]
		for r := i + 1; r < 4; r++ {
			f := a[r][i] / a[i][i]
			for c := i; c < 5; c++ {
				a[r][c] -= f * a[i][c]
			}
		}
	}
	var x [4]float64
	for i := 3; i >= 0; i-- {
		x[i] = a[i][4]
		for c := i + 1; c < 4; c++ {
			x[i] -= a[i][c] * x[c]
		}
		x[i] /= a[i][i]
	}
	return x
}
