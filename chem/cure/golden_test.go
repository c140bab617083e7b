package cure_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem/cure"
)

// given is the least S for a given ln tau, by another way: the law by its long series, and A and B by Cramer's rule.
type given struct{ a, b, s float64 }

func leastAt(u float64, box cure.Box, p cure.Prior, w []cure.Weighing) given {
	const sd = 0.15
	l := []float64{box.ThickMM, box.WideMM, box.HighMM}
	all := 1/(l[0]*l[0]) + 1/(l[1]*l[1]) + 1/(l[2]*l[2])
	gone := func(day float64) float64 {
		if day <= 0 {
			return 0
		}
		left := 1.0
		for _, side := range l {
			left *= series(day / math.Exp(u) / (side * side) / all)
		}
		return 1 - left
	}
	b0, sb := p.Loss*w[0].G, p.LossSD*w[0].G
	n, sx, sxx, sy, sxy := 0.0, 0.0, sd*sd/(sb*sb), 0.0, -b0*sd*sd/(sb*sb)
	for _, x := range w {
		f := gone(x.Day)
		n, sx, sxx, sy, sxy = n+1, sx+f, sxx+f*f, sy+x.G, sxy+f*x.G
	}
	det := n*sxx - sx*sx
	a, b := (sxx*sy-sx*sxy)/det, -(n*sxy-sx*sy)/det
	s := (b-b0)*(b-b0)/(sb*sb) + (u-p.LnTau)*(u-p.LnTau)/(p.LnTauSD*p.LnTauSD)
	for _, x := range w {
		miss := x.G - a + b*gone(x.Day)
		s += miss * miss / (sd * sd)
	}
	return given{a, b, s}
}

// golden searches the least over u, u0 ± 3, by golden sections.
func golden(s func(u float64) float64, lo, hi float64) float64 {
	ratio := (math.Sqrt(5) - 1) / 2
	x1, x2 := hi-ratio*(hi-lo), lo+ratio*(hi-lo)
	s1, s2 := s(x1), s(x2)
	for hi-lo > 1e-9 {
		if s1 < s2 {
			hi, x2, s2 = x2, x1, s1
			x1 = hi - ratio*(hi-lo)
			s1 = s(x1)
		} else {
			lo, x1, s1 = x1, x2, s2
			x2 = lo + ratio*(hi-lo)
			s2 = s(x2)
		}
	}
	return (lo + hi) / 2
}

func TestASearchOverLnTauFindsTheSameFit(t *testing.T) {
	for _, n := range []int{2, 3, 5, 8} {
		p, w := prior(t), weighed()[:n]
		u := golden(func(u float64) float64 { return leastAt(u, table(), p, w).s }, p.LnTau-3, p.LnTau+3)
		f, at := fitted(t, n), leastAt(u, table(), p, w)
		near(t, "u", f.LnTau, u, 5e-7)
		near(t, "A", f.AG, at.a, 1e-6)
		near(t, "B", f.BG, at.b, 1e-6)
		near(t, "S", f.S, at.s, 1e-9)
	}
}

// On any bar's own weighings the fit is no worse than the search, which knows no steps.
func TestAnyFitIsNoWorseThanASearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		box, p, w := drawn(t)
		f, err := cure.Of(box, p, w, 0.15)
		if err != nil {
			t.Skip(err)
		}
		u := golden(func(u float64) float64 { return leastAt(u, box, p, w).s }, p.LnTau-3, p.LnTau+3)
		if at := leastAt(u, box, p, w); f.S > at.s+1e-6 {
			t.Fatalf("S %v at ln tau %v; a search finds %v at %v", f.S, f.LnTau, at.s, u)
		}
	})
}

// drawn is a bar that dries by the law, weighed some times with noise.
func drawn(t *rapid.T) (cure.Box, cure.Prior, []cure.Weighing) {
	side := rapid.Float64Range(15, 110)
	box := cure.Box{ThickMM: side.Draw(t, "thick"), WideMM: side.Draw(t, "wide"), HighMM: side.Draw(t, "high")}
	p, err := cure.FromRecipe(rapid.Float64Range(0.12, 0.35).Draw(t, "moisture"), rapid.Float64Range(0.04, 0.1).Draw(t, "final"), 0.03)
	if err != nil {
		t.Fatal(err)
	}
	cutG := rapid.Float64Range(40, 250).Draw(t, "g")
	goes := cutG * (p.Loss + 0.03*rapid.Float64Range(-1.5, 1.5).Draw(t, "loss"))
	tau := 16 * math.Exp(rapid.Float64Range(-0.9, 0.9).Draw(t, "tau"))
	w := []cure.Weighing{{G: cutG}}
	for range rapid.IntRange(1, 12).Draw(t, "n") {
		day := w[len(w)-1].Day + rapid.Float64Range(0.5, 9).Draw(t, "days")
		g := cutG - goes*(1-box.Left(day/tau)) + rapid.Float64Range(-0.2, 0.2).Draw(t, "noise")
		w = append(w, cure.Weighing{Day: day, G: math.Round(g*10) / 10})
	}
	return box, p, w
}
