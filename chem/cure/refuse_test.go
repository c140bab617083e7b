package cure_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pourbench/chem/cure"
)

// The 99 % points of chi-square as every table of it prints them (memory; 15.1 and 20.1 on the drying page).
func TestTheTailOfChiSquareIsAsTabled(t *testing.T) {
	for n, at := range map[int]float64{1: 6.635, 2: 9.210, 3: 11.345, 4: 13.277, 5: 15.086, 8: 20.090, 10: 23.209, 15: 30.578, 20: 37.566, 29: 49.588, 30: 50.892, 100: 135.807} {
		near(t, "tail", cure.ChiTail(at, n), 0.01, 5e-6)
	}
	near(t, "tail of 5 % with 7", cure.ChiTail(14.067, 7), 0.05, 2e-5)
	near(t, "of nothing", cure.ChiTail(0, 3), 1, 0)
}

func TestWeighingsThatCannotBeFittedAreRefusedInWords(t *testing.T) {
	one := cure.Weighing{Day: 3, G: 100}
	for name, c := range map[string]struct {
		w    []cure.Weighing
		sd   float64
		why  cure.Reason
		says string
	}{
		"none":          {nil, 0.15, cure.TooFew, "0 weighed so far"},
		"one":           {[]cure.Weighing{one}, 0.15, cure.TooFew, "1 weighed so far"},
		"one day":       {[]cure.Weighing{one, {3, 99}, {3, 98}}, 0.15, cure.NoSpread, "all 3 weighings are of day 3"},
		"rising":        {[]cure.Weighing{one, {5, 100.5}}, 0.15, cure.Rising, "damper than the bar"},
		"rising early":  {[]cure.Weighing{one, {5, 100.46}, {9, 99}}, 0.15, cure.Rising, "damper than the bar"},
		"before cut":    {[]cure.Weighing{one, {-1, 100}}, 0.15, cure.BadFigure, "day -1"},
		"no day":        {[]cure.Weighing{one, {math.NaN(), 100}}, 0.15, cure.BadFigure, "NaN"},
		"weighs none":   {[]cure.Weighing{one, {4, 0}}, 0.15, cure.BadFigure, "0 g on day 4"},
		"weighs no end": {[]cure.Weighing{one, {4, math.Inf(1)}}, 0.15, cure.BadFigure, "Inf g"},
		"perfect scale": {[]cure.Weighing{one, {4, 99}}, 0, cure.BadFigure, "good to ± 0 g"},
		"no scale":      {[]cure.Weighing{one, {4, 99}}, math.NaN(), cure.BadFigure, "NaN"},
	} {
		f, err := cure.Of(table(), prior(t), c.w, c.sd)
		if f != nil || !errors.Is(err, &cure.Refusal{Reason: c.why}) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := cure.Of(table(), prior(t), []cure.Weighing{one, {5, 100.44}}, 0.15); err != nil { // within 3 sigma
		t.Errorf("a little noise: %v", err)
	}
}

func TestWhatDoesNotFollowTheLawIsReturnedWithItsRefusal(t *testing.T) {
	w := weighed()
	w[4].G += 1
	f, err := cure.Of(table(), prior(t), w, 0.15)
	if f == nil || !errors.Is(err, &cure.Refusal{Reason: cure.Misfit}) || errors.Is(err, &cure.Refusal{Reason: cure.Rising}) {
		t.Fatalf("%v, %v", f, err)
	}
	if says := err.Error(); !strings.Contains(says, "does not follow the drying law: check scale, date, humidity") || !strings.Contains(says, "day 7") || !strings.Contains(says, "over it") {
		t.Errorf("it says %q", says)
	}
	w = append(weighed(), cure.Weighing{Day: 40, G: 117})
	if _, err = cure.Of(table(), prior(t), w, 0.15); err == nil || !strings.Contains(err.Error(), "rose again from 114.6 g on day 21 to 117 g on day 40") {
		t.Errorf("a damp month: %v", err)
	}
	w[3].G, w[8].G = 118, 113
	if _, err = cure.Of(table(), prior(t), w, 0.15); err == nil || !strings.Contains(err.Error(), "day 4") || !strings.Contains(err.Error(), "under it") {
		t.Errorf("one too light: %v", err)
	}
}

func TestBarsAndPriorsThatCannotBeAreRefused(t *testing.T) {
	for _, b := range []cure.Box{{}, {25, 80, 0}, {25, 80, -62}, {math.NaN(), 80, 62}, {25, math.Inf(1), 62}, {0.5, 80, 62}, {25, 3001, 62}} {
		_, err := cure.Of(b, prior(t), weighed(), 0.15)
		_, err2 := cure.Forecast(b, prior(t), 125)
		if bad := (&cure.Refusal{Reason: cure.BadBar}); !errors.Is(err, bad) || !errors.Is(err2, bad) {
			t.Errorf("%v: %v, %v", b, err, err2)
		}
	}
	good := prior(t)
	for _, p := range []cure.Prior{{}, {Loss: 0.1, LossSD: 0, LnTau: 1, LnTauSD: 1}, {Loss: 1, LossSD: 0.1, LnTau: 1, LnTauSD: 1}, {Loss: math.NaN(), LossSD: 1, LnTau: 1, LnTauSD: 1}, {Loss: 0.1, LossSD: 0.1, LnTau: 30, LnTauSD: 1}, {Loss: 0.1, LossSD: 0.1, LnTau: 1, LnTauSD: 0}} {
		_, err := cure.Of(table(), p, weighed(), 0.15)
		_, err2 := cure.Forecast(table(), p, 125)
		if bad := (&cure.Refusal{Reason: cure.BadFigure}); !errors.Is(err, bad) || !errors.Is(err2, bad) {
			t.Errorf("%+v: %v, %v", p, err, err2)
		}
	}
	for _, m := range [][3]float64{{-0.1, 0.1, 0.03}, {1, 0.1, 0.03}, {0.2, 1, 0.03}, {0.2, -0.1, 0.03}, {0.2, 0.1, 0}, {math.NaN(), 0.1, 0.03}, {0.2, 0.1, math.NaN()}} {
		if _, err := cure.FromRecipe(m[0], m[1], m[2]); !errors.Is(err, &cure.Refusal{Reason: cure.BadFigure}) {
			t.Errorf("%v: %v", m, err)
		}
	}
	for _, g := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := cure.Forecast(table(), good, g); err == nil {
			t.Errorf("a bar of %v g", g)
		}
	}
	f := fitted(t, 8)
	for _, x := range []float64{0, -1, math.NaN(), 101, math.Inf(1)} {
		_, err := f.Ready(x)
		if _, err2 := f.Posterior(x); err == nil || err2 == nil {
			t.Errorf("ready at %v %% a week", x)
		}
	}
}
