package chem_test

import (
	"math"
	"testing"

	"pourbench/chem"
)

// Integral heat at 25 °C, kJ per kg of solution: Felder & Rousseau, Table B.11 (memory), carried on by the enthalpy
// equation of Olsson, Jernqvist & Aly 1997 (read); derived. The rise must give that heat back over the mean specific heat.
func TestLyeRiseAccountsForTheHeatOfSolution(t *testing.T) {
	for percent, want := range map[float64]struct{ riseK, heatKJKg float64 }{
		10: {27.9, 107.1}, 15: {42.8, 160.6}, 20: {57.1, 210.7}, 25: {69.5, 253.7}, 28: {75.7, 274.8}, 30: {79.3, 286.4},
		33: {83.7, 299.8}, 35: {86.1, 305.8}, 38: {88.6, 310.3}, 40: {89.5, 310.3}, 45: {89.7, 300.3}, 50: {86.8, 278.8},
	} {
		rise, band, ok := chem.LyeRise(percent/100, 0)
		if !ok {
			t.Errorf("no rise at %v %%", percent)
		}
		near(t, "rise (regression)", rise, want.riseK, 0.05)
		near(t, "heat", rise*chem.LyeSpecificHeat(percent/100, 25+rise/2), want.heatKJKg, 0.005*want.heatKJKg)
		// 1.4 kJ/mol more heat, spread over the solution: derived.
		more := 1.4 * percent * 10 / chem.MolarNaOH / chem.LyeSpecificHeat(percent/100, 60)
		near(t, "band", band, more, 0.2)
	}
}

// The worked example of a 33 % lye, 25 °C, no heat lost: 83.8 K by hand, 83.7 from the enthalpy equation. Regression.
func TestLyeRiseOfTheExampleRegression(t *testing.T) {
	rise, band, ok := chem.LyeRise(0.33, 0)
	if !ok {
		t.Fatal("no rise")
	}
	near(t, "rise", rise, 83.8, 0.15)
	if simple := 87.8; rise+band > simple {
		t.Errorf("rise %v and band %v pass the rise of constant heat and water's specific heat, %v", rise, band, simple)
	}
}

func TestLyeRiseWidensWithPotassiumAndStopsWhereUnknown(t *testing.T) {
	_, plain, _ := chem.LyeRise(0.33, 0)
	rise, wide, ok := chem.LyeRise(0.33, 0.1)
	if !ok || wide <= plain || math.IsNaN(rise) {
		t.Errorf("10 %% KOH: %v, band %v against %v, %v", rise, wide, plain, ok)
	}
	for _, at := range [][2]float64{{0, 0}, {-0.1, 0}, {0.51, 0}, {0.33, 0.6}, {0.33, -0.1}, {math.NaN(), 0}, {0.33, math.NaN()}} {
		if rise, _, ok := chem.LyeRise(at[0], at[1]); ok {
			t.Errorf("%v has a rise of %v", at, rise)
		}
	}
}

// Olsson, Jernqvist & Aly 1997 (derived), and water 4.18 (memory).
func TestLyeSpecificHeatMatchesItsTable(t *testing.T) {
	near(t, "water", chem.LyeSpecificHeat(0, 25), 4.18, 1e-9)
	near(t, "33 % at 25", chem.LyeSpecificHeat(0.33, 25), 3.575, 1e-9)
	near(t, "33 % at 60", chem.LyeSpecificHeat(0.33, 60), 3.579, 1e-9)
	near(t, "50 % at 60", chem.LyeSpecificHeat(0.50, 60), 3.214, 1e-9)
}

// Choi & Okos 1986, worked (read): 2.012 at 20 °C, 2.035 at 40 °C; olive oil 2.01 at 20 °C, Geankoplis A.4-1 (read).
func TestOilSpecificHeatMatchesChoiAndOkos(t *testing.T) {
	near(t, "at 20", chem.OilSpecificHeat(20), 2.012, 0.0005)
	near(t, "at 40", chem.OilSpecificHeat(40), 2.035, 0.0005)
}

func TestMixTemperatureWeighsByHeatRegression(t *testing.T) {
	// By hand: 1000 g at 2.031 and 434.26 g at 3.576 kJ/(kg K).
	near(t, "36 and 34 °C", chem.MixC(1000, 36, 434.26, 34, 0.33), 35.13, 0.01)
	near(t, "the same temperature", chem.MixC(1000, 38, 434, 38, 0.33), 38, 1e-9)
	near(t, "no lye", chem.MixC(1000, 38, 0, 20, 0.33), 38, 1e-9)
	if c := chem.MixC(0, 38, 0, 20, 0.33); !math.IsNaN(c) {
		t.Errorf("nothing mixes to %v °C", c)
	}
}

// Common practice, no source: half a kilogram of lye is left to stand for one to four hours.
func TestStillLyeCoolsInAFewHours(t *testing.T) {
	minutes, ok := chem.CoolMinutes(434, 0.33, 100, 35, 21)
	if !ok || minutes < 60 || minutes > 240 {
		t.Errorf("cools in %v min, %v", minutes, ok)
	}
}

func TestCoolingSaysWhatCannotBe(t *testing.T) {
	cases := map[string][5]float64{
		"as cold as the room":    {434, 0.33, 100, 21, 21},
		"colder than the room":   {434, 0.33, 100, 15, 21},
		"no lye":                 {0, 0.33, 100, 35, 21},
		"unknown start":          {434, 0.33, math.NaN(), 35, 21},
		"endlessly hot":          {434, 0.33, math.Inf(1), 35, 21},
		"unknown room":           {434, 0.33, 100, 35, math.NaN()},
		"unknown wish":           {434, 0.33, 100, math.NaN(), 21},
		"mass that is no number": {math.NaN(), 0.33, 100, 35, 21},
	}
	for name, c := range cases {
		if minutes, ok := chem.CoolMinutes(c[0], c[1], c[2], c[3], c[4]); ok {
			t.Errorf("%s: %v min", name, minutes)
		}
	}
	minutes, ok := chem.CoolMinutes(434, 0.33, 30, 35, 21)
	if !ok || minutes != 0 {
		t.Errorf("cool enough already: %v min, %v", minutes, ok)
	}
}
