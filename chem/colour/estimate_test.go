package colour

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func estimate(t fataler, oils RGB, titanium float64, doses ...Dose) RGB {
	p, err := Estimate(oils, titanium, doses)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return p.RGB()
}

func TestEstimateAtTheMiddleDoseInWhiteIsTheShelfColour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawColour(t)
		got := estimate(t, RGB{1, 1, 1}, 0, Dose{Name: "one", AtMid: c, MidPercent: 0.6, Percent: 0.6})
		if d := got.Difference(c.clip(darkest, lightest)); d > 1 { // a strong colour reflects a little more than white in some bands
			t.Fatalf("%s became %s, %.2f off", c.Hex(), got.Hex(), d)
		}
	})
}

func TestEstimateWithoutColourantsIsTheColourOfTheOils(t *testing.T) {
	oils := hex(t, PlainBatter)
	if d := estimate(t, oils, 0).Difference(oils); d > 1e-6 {
		t.Errorf("plain batter is %.3g off", d)
	}
}

func TestEstimateDarkensWithDoseAndPalesWithTitanium(t *testing.T) {
	oils := hex(t, PlainBatter)
	rapid.Check(t, func(t *rapid.T) {
		c := drawColour(t)
		low := rapid.Float64Range(0, 2).Draw(t, "low")
		high := low + rapid.Float64Range(0, 2).Draw(t, "more")
		titanium := rapid.Float64Range(0, 1.5).Draw(t, "titanium")
		dose := func(p float64) Dose { return Dose{Name: "one", AtMid: c, MidPercent: 0.5, Percent: p} }
		little, much := estimate(t, oils, titanium, dose(low)), estimate(t, oils, titanium, dose(high))
		if much.Luminance() > little.Luminance()+1e-9 {
			t.Fatalf("%s: %g %% is brighter than %g %%", c.Hex(), high, low)
		}
		if plain := estimate(t, oils, 0, dose(high)); plain.Luminance() > much.Luminance()+1e-9 {
			t.Fatalf("%s: titanium white darkens", c.Hex())
		}
	})
}

func TestEstimateDoesNotDependOnTheOrderOfColourants(t *testing.T) {
	one := Dose{Name: "one", AtMid: hex(t, "#2f5fb3"), MidPercent: 0.5, Percent: 0.3}
	two := Dose{Name: "two", AtMid: hex(t, "#f2c230"), MidPercent: 0.4, Percent: 0.6}
	oils := hex(t, PlainBatter)
	if d := estimate(t, oils, 0.5, one, two).Difference(estimate(t, oils, 0.5, two, one)); d > 1e-6 {
		t.Errorf("the other way round it is %g off", d)
	}
}

func TestEstimateRefusesImpossibleDoses(t *testing.T) {
	good := Dose{Name: "ultramarine", AtMid: RGB{0.1, 0.1, 0.5}, MidPercent: 0.5, Percent: 0.5}
	change := func(f func(*Dose)) []Dose { d := good; f(&d); return []Dose{d} }
	for want, doses := range map[string][]Dose{
		"ultramarine: its middle dose is 0 %": change(func(d *Dose) { d.MidPercent = 0 }),
		"ultramarine: its dose is -1 %":       change(func(d *Dose) { d.Percent = -1 }),
		"ultramarine: its dose is NaN %":      change(func(d *Dose) { d.Percent = math.NaN() }),
		"red is NaN":                          change(func(d *Dose) { d.AtMid.R = math.NaN() }),
	} {
		if _, err := Estimate(RGB{1, 1, 1}, 0, doses); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want an error about %q, got %v", want, err)
		}
	}
	if _, err := Estimate(RGB{math.NaN(), 1, 1}, 0, nil); err == nil {
		t.Error("oils of no colour gave an estimate")
	}
}

// Common practice, no source: what makers call the colour, at a scent of 5 % of the oils (3.8 % of the
// bar) with 0.5, 3, 8 and 15 % of vanillin in it. The lightness ranges are our reading of the words.
func TestBrownedFollowsTheWordsMakersUse(t *testing.T) {
	for _, c := range []struct {
		word              string
		inScent           float64
		lightest, darkest float64 // OKLCH lightness
	}{
		{"cream", 0.5, 0.95, 0.82},
		{"tan", 3, 0.80, 0.62},
		{"mid brown", 8, 0.65, 0.48},
		{"dark brown", 15, 0.52, 0.35},
	} {
		after, _, _, err := Browned(hex(t, PlainBatter), 0.038*c.inScent)
		if err != nil {
			t.Fatal(err)
		}
		seen := after.OKLCH()
		t.Logf("%s: %s lightness %.2f hue %.0f", c.word, after.Hex(), seen.L, seen.H)
		if seen.L > c.lightest || seen.L < c.darkest || seen.H < 45 || seen.H > 100 {
			t.Errorf("%s is %s: lightness %.2f, want %g to %g; hue %.0f, want 45 to 100", c.word, after.Hex(), seen.L, c.darkest, c.lightest, seen.H)
		}
	}
}

func TestBrownedLiesWithinItsBandAndOnlyDarkens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, v := drawColour(t), rapid.Float64Range(0.0001, 2).Draw(t, "vanillin")
		after, low, high, err := Browned(c, v)
		if err != nil {
			t.Fatal(err)
		}
		fresh := c.clip(darkest, lightest)
		y := []float64{fresh.Luminance(), low.Luminance(), after.Luminance(), high.Luminance()}
		if y[0] < y[1]-1e-9 || y[1] < y[2]-1e-9 || y[2] < y[3]-1e-9 {
			t.Fatalf("%s with %g %%: luminances %v do not fall", c.Hex(), v, y)
		}
	})
}

func TestBrownedWithoutVanillinChangesNothing(t *testing.T) {
	c := RGB{1, 0.5, 0.001}
	after, low, high, err := Browned(c, 0)
	if err != nil || after != c || low != c || high != c {
		t.Errorf("%v became %v (%v to %v), %v", c, after, low, high, err)
	}
	for _, v := range []float64{-1, 11, math.NaN()} {
		if after, _, _, err := Browned(c, v); err == nil {
			t.Errorf("%g %% gave %v", v, after)
		}
	}
}
