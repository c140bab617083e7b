package cure_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pourbench/chem/cure"
)

// weighed is the worked data set of the drying page, section 4 (INVENTED there: drawn from A 125, B 13.5, tau 22 with noise 0.1).
func weighed() []cure.Weighing {
	return []cure.Weighing{{Day: 0, G: 125}, {Day: 1, G: 122.1}, {Day: 2, G: 120.9}, {Day: 4, G: 119.5}, {Day: 7, G: 117.9}, {Day: 10, G: 117}, {Day: 14, G: 116}, {Day: 21, G: 114.6}}
}

func prior(t testing.TB) cure.Prior {
	t.Helper()
	p, err := cure.FromRecipe(280./1470, 0.10, 0.03)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func fitted(t testing.TB, n int) *cure.Fit {
	t.Helper()
	f, err := cure.Of(table(), prior(t), weighed()[:n], 0.15)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestThePriorIsAsTabled(t *testing.T) {
	p := prior(t)
	near(t, "lambda", p.Loss, 0.100529101, 5.1e-10)
	near(t, "its sd", p.LossSD, 0.029982363, 5.1e-10)
	near(t, "B0", p.Loss*125, 12.566137566, 5.1e-10)
	near(t, "its sd", p.LossSD*125, 3.747795414, 5.1e-10)
	near(t, "u0", p.LnTau, 2.772588722, 5.1e-10)
	near(t, "its sd", p.LnTauSD, 0.6, 0)
}

func TestAForecastWithoutWeighingsIsAsTabled(t *testing.T) {
	f, err := cure.Forecast(table(), prior(t), 125)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ready at 0.5", ready(t, f, 0.5).V, 24.448026, 5.1e-7)
	near(t, "ready at 1", ready(t, f, 1).V, 14.366119, 5.1e-7)
	near(t, "after 28 days", f.Mass(28).V, 113.664575, 1e-6)
	near(t, "the truth at 0.5", truth(t, 0.5), 29.957, 5.1e-4)
	near(t, "the truth at 1", truth(t, 1), 16.449, 5.1e-4)
	if s, err := f.Posterior(0.5); err != nil || !(s.P10 < s.P50 && s.P50 < s.P90) || f.Check() != nil {
		t.Errorf("before any weighing: %+v, %v, %v", s, err, f.Check())
	}
}

// truth is the ready day of what the data was drawn from.
func truth(t *testing.T, criterion float64) float64 {
	f, err := cure.Forecast(table(), cure.Prior{Loss: 13.5 / 125, LossSD: 0.01, LnTau: math.Log(22), LnTauSD: 0.1}, 125)
	if err != nil {
		t.Fatal(err)
	}
	return ready(t, f, criterion).V
}

func ready(t *testing.T, f *cure.Fit, criterion float64) cure.Estimate {
	t.Helper()
	e, err := f.Ready(criterion)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func TestTheFitIsAsTabled(t *testing.T) {
	used := []int{2, 3, 5, 8}
	f := make([]*cure.Fit, len(used))
	for i, n := range used {
		f[i] = fitted(t, n)
	}
	for _, row := range []struct {
		what string
		got  func(*cure.Fit) float64
		want [4]float64
		by   float64
	}{
		{"A", func(f *cure.Fit) float64 { return f.AG }, [4]float64{125.004077924, 125.017431494, 125.046962176, 125.027651714}, 1e-8},
		{"B", func(f *cure.Fit) float64 { return f.BG }, [4]float64{11.946428382, 12.247469798, 13.255842963, 13.064328009}, 1e-8},
		{"u", func(f *cure.Fit) float64 { return f.LnTau }, [4]float64{2.860123581, 2.863818358, 3.006352144, 2.991292500}, 1e-8},
		{"tau", func(f *cure.Fit) float64 { return f.TauDays() }, [4]float64{17.463684977, 17.528328754, 20.213529226, 19.911401359}, 1e-7},
		{"m_inf", func(f *cure.Fit) float64 { return f.Final().V }, [4]float64{113.057649542, 112.769961696, 111.791119213, 111.963323705}, 1e-8},
		{"S", func(f *cure.Fit) float64 { return f.S }, [4]float64{0.050104096, 0.274735856, 0.919347941, 1.435847294}, 1e-8},
		{"sd A", func(f *cure.Fit) float64 { return math.Sqrt(f.Covariance[0][0]) }, [4]float64{0.148889562, 0.146205055, 0.135798405, 0.131947670}, 1e-8},
		{"sd B", func(f *cure.Fit) float64 { return math.Sqrt(f.Covariance[1][1]) }, [4]float64{2.526091557, 2.481773521, 2.102877040, 0.743642549}, 1e-8},
		{"sd u", func(f *cure.Fit) float64 { return math.Sqrt(f.Covariance[2][2]) }, [4]float64{0.455050938, 0.450154309, 0.390663422, 0.177934853}, 1e-8},
		{"sd m_inf", func(f *cure.Fit) float64 { return f.Final().SD }, [4]float64{2.510464, 2.473220, 2.130219, 0.794378}, 1e-6},
		{"m(28)", func(f *cure.Fit) float64 { return f.Mass(28).V }, [4]float64{114.421949, 114.177357, 113.697102, 113.800324}, 1e-6},
		{"sd m(28)", func(f *cure.Fit) float64 { return f.Mass(28).SD }, [4]float64{1.262030, 1.164743, 0.751836, 0.221201}, 1e-6},
		{"r(28)", func(f *cure.Fit) float64 { return f.WeeklyLoss(28).V }, [4]float64{0.407256, 0.419850, 0.512242, 0.498993}, 1e-6},
		{"t*(0.5)", func(f *cure.Fit) float64 { return ready(t, f, 0.5).V }, [4]float64{24.662370, 25.144754, 28.451832, 27.962892}, 1e-6},
		{"sd t*", func(f *cure.Fit) float64 { return ready(t, f, 0.5).SD }, [4]float64{8.951698, 9.008004, 8.344094, 3.417012}, 2e-6},
	} {
		for i, n := range used {
			near(t, fmt.Sprintf("%s of %d points", row.what, n), row.got(f[i]), row.want[i], row.by)
		}
	}
}

func TestTheWholeFitIsAsPrinted(t *testing.T) {
	f := fitted(t, 8)
	at := ready(t, f, 0.5)
	near(t, "band from", at.Low(), 23.584, 5.1e-4)
	near(t, "band to", at.High(), 32.342, 5.1e-4)
	near(t, "remaining", f.LeftDays(at.V), 6.962892, 1e-6)
	near(t, "remaining of what is past", f.LeftDays(20), 0, 0)
	for i, want := range []float64{-0.0277, 0.0654, -0.0204, 0.0353, -0.1164, 0.0280, 0.0781, -0.0422} {
		near(t, fmt.Sprintf("residual %d", i), f.Residuals()[i], want, 5.1e-5)
	}
	near(t, "data part of S", f.DataS, 1.285312, 1e-6)
	for i, row := range [][]float64{{0.0174102, -0.0303112, -0.0127922}, {0.553004, 0.126673}, {0.0316608}} {
		for k, want := range row {
			near(t, fmt.Sprintf("covariance %d,%d", i, i+k), f.Covariance[i][i+k], want, 6e-7)
			near(t, "its mirror", f.Covariance[i+k][i], f.Covariance[i][i+k], 1e-15)
		}
	}
	for _, row := range [][3]float64{{42, 112.844451, 0.411060}, {56, 112.391986, 0.555699}} {
		near(t, "mass", f.Mass(row[0]).V, row[1], 1e-6)
		near(t, "its sd", f.Mass(row[0]).SD, row[2], 1e-6)
	}
}

func TestTheGridIsAsTabled(t *testing.T) {
	for n, want := range map[int]cure.Spread{
		2: {Mean: 26.386, SD: 9.056, P10: 15.360, P50: 25.601, P90: 38.522},
		3: {Mean: 26.915, SD: 9.025, P10: 15.951, P50: 26.029, P90: 39.037},
		5: {Mean: 30.517, SD: 8.087, P10: 20.884, P50: 29.660, P90: 41.243},
		8: {Mean: 29.139, SD: 3.783, P10: 24.795, P50: 28.664, P90: 34.061},
	} {
		got, err := fitted(t, n).Posterior(0.5)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "mean", got.Mean, want.Mean, 1e-3)
		near(t, "sd", got.SD, want.SD, 1e-3)
		near(t, "P10", got.P10, want.P10, 1e-3)
		near(t, "P50", got.P50, want.P50, 1e-3)
		near(t, "P90", got.P90, want.P90, 1e-3)
	}
}

// The plain exponential through the same weighings is falsely sure of a day two weeks too early, and is refused; a fit of it is returned beside that.
func TestThePlainExponentialIsRefusedHere(t *testing.T) {
	f, err := cure.Exponential(table(), prior(t), weighed(), 0.15)
	if !errors.Is(err, &cure.Refusal{Reason: cure.Misfit}) {
		t.Fatalf("refused with %v", err)
	}
	near(t, "A", f.AG, 124.214901020, 1e-8)
	near(t, "B", f.BG, 9.318806319, 1e-8)
	near(t, "tau", f.TauDays(), 5.749529872, 1e-8)
	near(t, "m_inf", f.Final().V, 114.896094702, 1e-8)
	near(t, "data part of S", f.DataS, 88.670562, 1e-6)
	near(t, "ready", ready(t, f, 0.5).V, 13.961350, 1e-6)
	near(t, "its sd", ready(t, f, 0.5).SD, 0.624026, 1e-6)
}

// Where the air rules, the plain exponential follows and the law of a box does not.
func TestThePlainExponentialIsOfferedWhereItFollows(t *testing.T) {
	var w []cure.Weighing
	for _, d := range []float64{0, 1, 2, 4, 7, 10, 14, 21, 28} {
		w = append(w, cure.Weighing{Day: d, G: 112 + 13*math.Exp(-d/6)})
	}
	f, err := cure.Exponential(table(), prior(t), w, 0.15)
	if err != nil || !f.Lumped {
		t.Fatalf("%v", err)
	}
	near(t, "A", f.AG, 125, 0.05)
	near(t, "tau", f.TauDays(), 6, 0.1)
	if _, err := cure.Of(table(), prior(t), w, 0.15); !errors.Is(err, &cure.Refusal{Reason: cure.Misfit}) {
		t.Errorf("the law of a box follows as well: %v", err)
	}
}

func TestTheMeanOfMoreBarsIsBetterKnown(t *testing.T) {
	near(t, "one bar", cure.MeanSDG(0.1, 1), 0.15, 1e-15)
	near(t, "on a finer scale", cure.MeanSDG(0.01, 1), 0.15, 1e-15)
	near(t, "four bars", cure.MeanSDG(0.1, 4), 0.075, 1e-15)
	near(t, "on a scale of 1 g", cure.MeanSDG(1, 1), math.Sqrt(0.0225+0.99/12), 1e-15)
	near(t, "no bar", cure.MeanSDG(0.1, 0), 0.15, 1e-15)
}
