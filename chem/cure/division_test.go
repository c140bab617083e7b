package cure_test

import (
	"errors"
	"math"
	"math/bits"
	"testing"

	"pourbench/chem/cure"
)

// What is read to a division lies on it, and a few readings of a fine scale that happen to be round are not taken for a coarse one's.
func TestADivisionShowsInWhatIsRead(t *testing.T) {
	const oz = 28.349523125
	ounces := func(all ...float64) []float64 {
		for i := range all {
			all[i] = math.Round(all[i]*oz*100) / 100 // as a file may have them
		}
		return all
	}
	for name, c := range map[string]struct {
		g          []float64
		unit, want float64
	}{
		"nothing":                      {nil, 1, 0},
		"one round":                    {[]float64{125}, 1, 0},
		"two round":                    {[]float64{125, 120}, 1, 1},
		"the same again":               {[]float64{125, 125, 125}, 1, 0},
		"whole grams":                  {[]float64{125, 122, 121, 120, 118}, 1, 1},
		"whole, the cut on a fine":     {[]float64{125.3, 122, 121, 120, 118, 117}, 1, 1},
		"tenths":                       {[]float64{125, 122.1, 120.9, 119.5, 117.9, 117, 116, 114.6}, 1, 0}, // the invented data of the reference
		"hundredths":                   {[]float64{125.01, 122.13, 120.88}, 1, 0},
		"tenths of two bars 4 g apart": {[]float64{123, 127, 120.1, 124.1, 118.9, 122.9, 115, 119, 114, 118}, 1, 0},
		"halves":                       {[]float64{125.5, 122, 121.5, 119.5, 118}, 1, 0.5},
		"twos":                         {[]float64{126, 122, 120, 118, 116, 114, 112}, 1, 2},
		"fives":                        {[]float64{125, 120, 115, 110}, 1, 5},
		"tenths of an ounce":           {ounces(4.4, 4.3, 4.2, 4.1), oz, 0.1 * oz},
		"tenths of an ounce, in gram":  {ounces(4.4, 4.3, 4.2, 4.1), 1, 0},
	} {
		near(t, name, cure.DivisionG(c.g, c.unit), c.want, 1e-9)
	}
	for n := range 9 {
		for least := range n + 1 {
			want := 0.0 // over every way they can fall, one by one
			for ways := range uint(1) << n {
				if k := bits.OnesCount(ways); k >= least {
					want += math.Pow(0.3, float64(k)) * math.Pow(0.7, float64(n-k))
				}
			}
			near(t, "chance", cure.Chance(least, n, 0.3), want, 1e-12)
		}
	}
	near(t, "half or more of very many", cure.Chance(1501, 3001, 0.5), 0.5, 1e-9) // odd: as likely as the other half
}

// The invented data of the reference, read in whole grams: as if they were good to a tenth they follow no law. By the division that they show they
// do, and the day they were drawn from, 29.957, lies in the band.
func TestTheLawReadInWholeGramsIsStillTheLaw(t *testing.T) {
	w, read := weighed(), []float64{}
	for i := range w {
		w[i].G = math.Round(w[i].G)
		read = append(read, w[i].G)
	}
	step := cure.DivisionG(read, 1)
	f, err := cure.Of(table(), prior(t), w, cure.MeanSDG(step, 1))
	if err != nil || step != 1 {
		t.Fatalf("read to %v g: %v", step, err)
	}
	if at := ready(t, f, 0.5); at.Low() > 29.957 || at.High() < 29.957 {
		t.Errorf("ready from %v to %v, truly on day 29.957", at.Low(), at.High())
	}
}

// Curves of a known law, drawn over all speeds and losses that soap may have, read in whole grams: not one is refused by its division, and more than
// a third of those of one bar are by 0.1 g.
func TestNoCurveOfTheLawIsRefusedForItsWholeGrams(t *testing.T) {
	all, fine := 0, 0
	for tau := 8.0; tau <= 40; tau += 4 {
		for loss := 0.06; loss < 0.165; loss += 0.02 {
			for cut := 118.0; cut < 128; cut += 2.37 {
				var w []cure.Weighing
				var read []float64
				for _, day := range []float64{0, 1, 2, 4, 7, 10, 14, 21} {
					g := math.Round(cut * (1 - loss*(1-table().Left(day/tau))))
					w, read = append(w, cure.Weighing{Day: day, G: g}), append(read, g)
				}
				all++
				if _, err := cure.Of(table(), prior(t), w, cure.MeanSDG(0.1, 1)); err != nil {
					fine++
				}
				if _, err := cure.Of(table(), prior(t), w, cure.MeanSDG(cure.DivisionG(read, 1), 1)); err != nil {
					t.Errorf("tau %v, loss %v, %v g: %v", tau, loss, cut, err)
				}
			}
		}
	}
	if fine*3 < all {
		t.Errorf("%d of %d refused as read to 0.1 g: the case shows nothing", fine, all)
	}
	w := weighed()
	w[4].G += 4 // a slip is a slip on a kitchen scale too
	if _, err := cure.Of(table(), prior(t), w, cure.MeanSDG(1, 1)); !errors.Is(err, &cure.Refusal{Reason: cure.Misfit}) {
		t.Errorf("4 g off: %v", err)
	}
}

func TestWhatWasLostLatelyIsByTheWeighingsAlone(t *testing.T) {
	w := weighed()
	got, ok := cure.Lately(w, 0.15) // 116 g on day 14, 114.6 on day 21
	if !ok || got.FromDay != 14 || got.ToDay != 21 || got.Days() != 7 {
		t.Fatalf("%+v, %v", got, ok)
	}
	near(t, "lost, percent", got.Percent.V, 1.4/1.16, 1e-9)
	near(t, "its sd", got.Percent.SD, 15*math.Sqrt(2)/116, 1e-9)
	if got, ok = cure.Lately(w[:7], 0.15); !ok || got.FromDay != 7 { // 4 days off and 10: day 7 is a week before
		t.Errorf("%+v", got)
	}
	if got, ok = cure.Lately(w[:4], 0.15); !ok || got.FromDay != 0 {
		t.Errorf("%+v", got)
	}
	if _, ok = cure.Lately([]cure.Weighing{{Day: 3, G: 100}, {Day: 3.5, G: 99}}, 0.15); ok {
		t.Error("half a day is told")
	}
	if _, ok = cure.Lately(w[:1], 0.15); ok {
		t.Error("one weighing is told")
	}
	if got, ok = cure.Lately([]cure.Weighing{{Day: 3, G: 100}, {Day: 9, G: 101}}, 0.15); !ok || math.Abs(got.Percent.V+1) > 1e-9 {
		t.Errorf("a gain: %+v", got)
	}
}
