package cure_test

import (
	"math"
	"testing"

	"pourbench/chem/cure"
)

// table is the bar of the drying page: 25 × 80 × 62 mm.
func table() cure.Box { return cure.Box{ThickMM: 25, WideMM: 80, HighMM: 62} }

// slabOf is a bar so wide and high that it dries through its two large faces alone.
func slabOf(thick float64) cure.Box {
	return cure.Box{ThickMM: thick, WideMM: 1000, HighMM: 1000}
}

func near(t *testing.T, what string, got, want, by float64) {
	t.Helper()
	if !(math.Abs(got-want) <= by) {
		t.Errorf("%s: %.10g, want %.10g ± %g", what, got, want, by)
	}
}

// The printed tables of the drying page, section 2 (derived with another program).
func TestWhatIsLeftOfTheWaterIsAsTabled(t *testing.T) {
	for _, row := range [][2]float64{
		{0.01, 0.893625},
		{0.05, 0.771370},
		{0.1, 0.686241},
		{0.2, 0.574992},
		{0.5, 0.384421},
		{1, 0.217653},
		{1.5, 0.127329},
		{2, 0.075519},
		{3, 0.027113},
		{0, 1},
		{0.295120, 0.5},
		{0.874177, 0.25},
		{1.730065, 0.1},
		{2.400223, 0.05},
	} {
		near(t, "block", table().Left(row[0]), row[1], 5.1e-7)
	}
	for _, row := range [][2]float64{{0.01, 0.928165}, {0.05, 0.839372}, {0.1, 0.772838}, {0.2, 0.678745}, {0.5, 0.492636}, {1, 0.298203}, {1.5, 0.180863}, {2, 0.109699}, {3, 0.040356}} {
		near(t, "slab", cure.Slab(row[0]), row[1], 5.1e-7)
	}
}

func TestTheDiffusivityOfATimeIsAsTabled(t *testing.T) {
	for _, row := range [][4]float64{{5, 1.163e-10, 1.48, 8.7}, {10, 5.816e-11, 2.95, 17.3}, {17, 3.421e-11, 5.02, 29.4}, {25, 2.326e-11, 7.38, 43.3}, {40, 1.454e-11, 11.80, 69.2}} {
		d := table().Diffusivity(row[0])
		near(t, "D", d, row[1], 5e-4*row[1])
		near(t, "tau back", table().TauDays(d), row[0], 1e-12*row[0])
		near(t, "half gone", table().Left(row[2]/row[0]), 0.5, 1e-3)
		near(t, "nine tenths gone", table().Left(row[3]/row[0]), 0.1, 1.1e-3) // printed to a tenth of a day
	}
}

// A slab has lost half at Dt/l² = 0.0491826849: s = π² of that.
func TestASlabLosesHalfWhereItShould(t *testing.T) {
	near(t, "slab", cure.Slab(math.Pi*math.Pi*0.0491826849), 0.5, 1e-10)
}

// Another hand: the heat equation on 400 cells, edges held at 0, by Crank and Nicolson. Its half time is 0.0491825.
func TestASlabDriesAsTheCellsDo(t *testing.T) {
	const cells = 400
	u := make([]float64, cells)
	for i := range u {
		u[i] = 1
	}
	step, time := 2e-5, 0.0
	for range 20 { // small implicit steps over the jump at the edges
		u, time = cellStep(u, 1e-7, 1), time+1e-7
	}
	for range 3000 {
		u, time = cellStep(u, step, 0.5), time+step
	}
	sum := 0.0
	for _, v := range u {
		sum += v / cells
	}
	near(t, "cells", cure.Slab(math.Pi*math.Pi*time), sum, 5e-6)
}

// cellStep is one step of time of u on cells between two faces held at 0, implicit to a part of theta.
func cellStep(u []float64, dt, theta float64) []float64 {
	n := len(u)
	r := dt * float64(n) * float64(n)
	flux := func(i int) float64 {
		left, right := -u[0], -u[n-1] // a face lies half a cell off
		if i > 0 {
			left = u[i-1]
		}
		if i < n-1 {
			right = u[i+1]
		}
		return r * (left - 2*u[i] + right)
	}
	c, d := make([]float64, n), make([]float64, n)
	for i := range n {
		b := 1 + 2*theta*r
		if i == 0 || i == n-1 {
			b += theta * r
		}
		rhs, a := u[i]+(1-theta)*flux(i), -theta*r
		if i > 0 {
			b -= a * c[i-1]
			rhs -= a * d[i-1]
		}
		c[i], d[i] = a/b, rhs/b
	}
	out := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		out[i] = d[i]
		if i < n-1 {
			out[i] -= c[i] * out[i+1]
		}
	}
	return out
}

func TestTheLawBeginsAndEndsAsItShould(t *testing.T) {
	b := table()
	near(t, "late", b.Left(25)/math.Exp(-25), 0.8105694691*0.8105694691*0.8105694691, 1e-7) // (8/π²)³ e^(-t/tau); the page's 0.53264 is 0.53256
	// Early: 1 - f = 2/√π · S/V · √(Dt), Dt in mm² by tau of 1 day.
	x := 1e-6
	surface := 2 * (1/25. + 1/80. + 1/62.)
	dt := x / (math.Pi * math.Pi * (1/625. + 1/6400. + 1/3844.))
	near(t, "early", (1-b.Left(x))/(2/math.SqrtPi*surface*math.Sqrt(dt)), 1, 1e-3)
	if got := cure.Slab(800); got != 0 && !(got > 0 && got < 1e-300) {
		t.Errorf("a slab long dry holds %v", got)
	}
	for _, s := range []float64{0.0999999999, 0.1000000001} { // where the two forms meet
		near(t, "seam", cure.Slab(s), series(s), 2e-11)
	}
}

// series is g by its sum alone, to the last term that counts.
func series(s float64) float64 {
	sum := 0.0
	for n := int(math.Sqrt(12/s)) + 1; n >= 0; n-- { // what is left out is under e^-48
		odd := float64(2*n + 1)
		sum += math.Exp(-odd*odd*s) / (odd * odd)
	}
	return sum * 8 / (math.Pi * math.Pi)
}

func TestASealedFaceIsABarTwiceAsHigh(t *testing.T) {
	lying := table().Lying()
	if lying != (cure.Box{ThickMM: 25, WideMM: 80, HighMM: 124}) {
		t.Errorf("lying: %v", lying)
	}
	if lying.Left(1) == table().Left(1) || lying.TauDays(1e-10) <= table().TauDays(1e-10) {
		t.Error("a bar on a shelf dries as one in the air")
	}
	near(t, "thickness squared", slabOf(30).TauDays(1e-10)/slabOf(25).TauDays(1e-10), 1.44, 2e-3) // 30 against 25 mm: +44 %
}
