package chem_test

import (
	"math"
	"testing"

	"pourbench/chem"
)

// CRC Handbook of Chemistry and Physics, constant humidity solutions: the fits are read, their values worked out by hand and printed
// to two digits. Greenspan, J. Res. NBS 81A (1977) 89, has 75.29 ± 0.12 for sodium chloride at 25 °C (memory).
func TestSaltsDissolveWhereTheHandbookSays(t *testing.T) {
	for _, c := range []struct {
		crystal chem.Crystal
		c, want float64
	}{
		{chem.SodiumChloride, 15, 75.47},
		{chem.SodiumChloride, 20, 75.36},
		{chem.SodiumChloride, 25, 75.25},
		{chem.SodiumChloride, 30, 75.15},
		{chem.PotassiumChloride, 25, 84.17},
		{chem.MagnesiumChloride, 25, 32.79},
		{chem.Sucrose, 25, 85},            // 84 to 85 (memory)
		{chem.Glucose, 25, 81},            // memory
		{chem.CitricAcid, 25, 75},         // 75 to 78, the lower (memory)
		{chem.SodiumChloride, -10, 75.59}, // the end of the measurements, 10 °C: 69.20 exp(25/283.15)
		{chem.SodiumChloride, 50, 74.95},  // 40 °C: 69.20 exp(25/313.15)
	} {
		got, ok := c.crystal.DissolvesRH(c.c)
		if !ok {
			t.Errorf("%s at %g °C is not known", c.crystal, c.c)
		}
		near(t, string(c.crystal), got, c.want, 0.005)
	}
	if got, _ := chem.SodiumChloride.DissolvesRH(25); math.Abs(got-75.29) > 0.12 {
		t.Errorf("sodium chloride at 25 °C: %g, Greenspan 75.29 ± 0.12", got)
	}
	if _, ok := chem.Crystal("chalk").DissolvesRH(25); ok {
		t.Error("chalk dissolves in air")
	}
	if _, ok := chem.Sucrose.DissolvesRH(math.NaN()); ok {
		t.Error("no temperature gives a limit")
	}
}

// The Ross estimate, worked out by hand: 0.7525 × 0.85 = 0.6396, printed as 64 %.
func TestMixedSolidsDissolveInDrierAir(t *testing.T) {
	got, ok := chem.MixedRH(75.25, 85)
	if !ok {
		t.Fatal("salt and sugar are not known")
	}
	near(t, "salt and sugar", got, 63.9625, 1e-9)
	if one, _ := chem.MixedRH(85); one != 85 {
		t.Errorf("sugar alone: %g", one)
	}
	for _, bad := range [][]float64{{}, {0}, {85, -1}, {101}, {math.NaN()}} {
		if got, ok := chem.MixedRH(bad...); ok {
			t.Errorf("MixedRH(%v) = %g", bad, got)
		}
	}
}

// Norrish's equation solved by another hand and printed: glycerin percent and g of water per g. 60 and 70 % solutions that neither gained
// nor lost weight (Sci. Rep. 12 (2022) 10232, read) stand at 72.8 and 61.3 %.
func TestGlycerinHoldsTheWaterOfTheTable(t *testing.T) {
	for _, c := range []struct{ rh, percent, water float64 }{
		{40, 82.42, 0.213}, {50, 77.22, 0.295}, {60, 70.91, 0.410}, {70, 62.79, 0.593}, {80, 51.51, 0.941}, {85, 43.85, 1.281}, {90, 33.92, 1.948},
	} {
		fraction, water, ok := chem.GlycerinAt(c.rh)
		if !ok {
			t.Errorf("%g %% of humidity is not known", c.rh)
		}
		near(t, "glycerin, percent", 100*fraction, c.percent, 0.005)
		near(t, "water, g/g", water, c.water, 0.0005)
	}
	near(t, "60 % of glycerin", chem.GlycerinRH(0.60), 72.8, 0.05)
	near(t, "70 % of glycerin", chem.GlycerinRH(0.70), 61.3, 0.05)
	near(t, "water", chem.GlycerinRH(0), 100, 0)
	near(t, "glycerin", chem.GlycerinRH(1), 0, 0)
}

func TestGlycerinTakesNoImpossibleAir(t *testing.T) {
	for _, rh := range []float64{-1, 100, 140, math.NaN(), math.Inf(1)} {
		if f, w, ok := chem.GlycerinAt(rh); ok {
			t.Errorf("at %g %%: %g, %g", rh, f, w)
		}
	}
	if f, w, ok := chem.GlycerinAt(0); !ok || math.Abs(f-1) > 1e-12 || w > 1e-12 {
		t.Errorf("in dry air: %g, %g, %v", f, w, ok)
	}
	for _, bad := range []float64{-0.1, 1.1, math.NaN()} {
		if got := chem.GlycerinRH(bad); !math.IsNaN(got) {
			t.Errorf("a fraction of %g: %g", bad, got)
		}
	}
	last := -1.0
	for rh := 0.0; rh < 100; rh += 0.5 {
		_, water, ok := chem.GlycerinAt(rh)
		if !ok || water <= last {
			t.Errorf("at %g %% glycerin holds %g after %g", rh, water, last)
		}
		last = water
	}
}

func TestEveryCrystalHasALimitBelowWater(t *testing.T) {
	if len(chem.Crystals()) != 6 {
		t.Errorf("%d crystals", len(chem.Crystals()))
	}
	for _, k := range chem.Crystals() {
		if rh, ok := k.DissolvesRH(25); !ok || rh <= 30 || rh >= 90 {
			t.Errorf("%s dissolves at %g, %v", k, rh, ok)
		}
	}
}
