package chem_test

import (
	"math"
	"testing"

	"pourbench/chem"
)

// CRC Handbook of Chemistry and Physics, concentrative properties of aqueous solutions, NaOH at 20 °C, g/mL (read).
func TestNaOHDensityMatchesTheCRCHandbook(t *testing.T) {
	for percent, want := range map[float64]float64{
		1: 1.0095, 5: 1.0538, 10: 1.1089, 20: 1.2192, 30: 1.3277, 40: 1.4299,
	} {
		got, ok := chem.NaOHDensity(percent/100, 20)
		if !ok {
			t.Errorf("no density at %v %%", percent)
		}
		near(t, "density at 20 °C", got, want, 0.0005)
	}
}

// Perry's Chemical Engineers' Handbook, 20 and 40 °C (memory): the rows the CRC list does not have.
func TestNaOHDensityMatchesPerryAtTwoTemperatures(t *testing.T) {
	for percent, want := range map[float64][2]float64{
		0: {0.9982, 0.9922}, 24: {1.2629, 1.2512}, 32: {1.3490, 1.3362}, 44: {1.4685, 1.4545}, 50: {1.5253, 1.5109},
	} {
		for i, c := range []float64{20, 40} {
			got, ok := chem.NaOHDensity(percent/100, c)
			if !ok {
				t.Errorf("no density at %v %%", percent)
			}
			near(t, "density", got, want[i], 1e-9)
		}
	}
}

// Measured densities of aqueous NaOH by molality, g/mL at 10, 25, 40 and 55 °C. The name of the document was not kept with its
// figures, so they count as memory; at 40 °C they lie within 0.0009 of Perry's Chemical Engineers' Handbook.
func TestNaOHDensityMatchesMeasurementsAtOtherTemperatures(t *testing.T) {
	table := map[float64][4]float64{
		0.5: {1.02222, 1.01860, 1.01322, 1.00639},
		1:   {1.04340, 1.03911, 1.03323, 1.02610},
		2:   {1.08315, 1.07787, 1.07114, 1.06343},
		3:   {1.12001, 1.11402, 1.10659, 1.09840},
		4:   {1.15437, 1.14776, 1.13980, 1.13124},
		5:   {1.18652, 1.17925, 1.17093, 1.16212},
		6:   {1.21677, 1.20866, 1.20013, 1.19121},
	}
	for molality, row := range table {
		fraction := molality * chem.MolarNaOH / (1000 + molality*chem.MolarNaOH)
		for i, c := range []float64{10, 25, 40, 55} {
			got, ok := chem.NaOHDensity(fraction, c)
			if !ok {
				t.Errorf("no density at %v mol/kg and %v °C", molality, c)
			}
			near(t, "density", got, row[i], 0.001)
		}
	}
}

func TestNaOHDensityRefusesWhatTheTablesDoNotHold(t *testing.T) {
	for _, at := range [][2]float64{{-0.01, 20}, {0.501, 20}, {0.3, 9.9}, {0.3, 70.1}, {math.NaN(), 20}, {0.3, math.NaN()}} {
		if gml, ok := chem.NaOHDensity(at[0], at[1]); ok {
			t.Errorf("%v has a density of %v", at, gml)
		}
	}
}

func TestLyeVolumeCountsAllItsWater(t *testing.T) {
	l := mix(t, order())
	got := chem.LyeML(l, 20)
	density := 1.3490 + (1.3900-1.3490)/4 // Perry, 32 and 36 % at 20 °C (memory)
	near(t, "33 % lye", got, 434.2565/density, 0.01)
	o := order()
	o.StockStrength = 0.5
	near(t, "the same from stock", chem.LyeML(mix(t, o), 20), got, 1e-9)
	o = order()
	o.WaterInExtrasG = 100
	near(t, "the same with water from extras", chem.LyeML(mix(t, o), 20), got, 1e-9)
}

// Aqueous KOH at 18 °C, g/mL: a handbook table whose name was not kept with its figures, so they count as memory.
func TestPotassiumLyeHasItsOwnDensity(t *testing.T) {
	for percent, want := range map[float64]float64{10: 1.091, 20: 1.188, 30: 1.290, 40: 1.400} {
		o := order()
		o.KOHShare, o.Concentration = 1, percent/100
		l := mix(t, o)
		near(t, "density of a KOH lye", l.SolutionG()/chem.LyeML(l, 18), want, 1e-6)
	}
}

func TestMixedLyeVolumeLiesBetweenItsAlkalis(t *testing.T) {
	at := func(share float64) float64 {
		o := order()
		o.KOHShare = share
		l := mix(t, o)
		return l.SolutionG() / chem.LyeML(l, 30)
	}
	if naoh, mixed, koh := at(0), at(0.3), at(1); !(koh < mixed && mixed < naoh) {
		t.Errorf("densities %v (NaOH), %v (mixed), %v (KOH)", naoh, mixed, koh)
	}
}

func TestLyeVolumeBeyondTheTablesStaysANumber(t *testing.T) {
	o := order()
	o.Concentration = 0.6
	l := mix(t, o)
	if ml := chem.LyeML(l, 105); !(ml > 0 && ml < l.SolutionG()) {
		t.Errorf("60 %% lye at 105 °C fills %v mL", ml)
	}
	near(t, "no lye", chem.LyeML(chem.Lye{}, 20), 0, 0)
	near(t, "water alone", chem.LyeML(chem.Lye{AllWaterG: 998.2}, 20), 1000, 1e-6)
}
