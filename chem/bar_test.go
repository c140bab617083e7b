package chem_test

import (
	"errors"
	"math"
	"testing"

	"pourbench/chem"
)

// The reference batch of these checks: 1000 g oils, 140 g NaOH, 280 g water, 50 g scent, cured to 10 % moisture. Every
// figure is our own arithmetic: regression. The thresholds are named where they are used.
const (
	batchG     = 1470.0
	batchDryG  = 1190.0
	batchScent = 50.0
)

// curedBatchG is the mass of the reference batch at a final moisture.
func curedBatchG(t *testing.T, moisture float64) float64 {
	t.Helper()
	g, err := chem.CuredG(batchDryG, moisture)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func TestDryingConcentratesScentRegression(t *testing.T) {
	cured := curedBatchG(t, 0.10)
	near(t, "cured", cured, 1322.22, 0.005)
	batter, bar := chem.PercentOfBar(batchScent, batchG), chem.PercentOfBar(batchScent, cured)
	near(t, "scent in batter", batter, 3.401, 0.0005)
	near(t, "scent in bar", bar, 3.782, 0.001)
	near(t, "concentration by drying", bar/batter, 1.112, 0.0005)
}

func TestLossFollowsTheFinalMoistureRegression(t *testing.T) {
	for moisture, want := range map[float64]float64{0.06: 13.88, 0.08: 12.01, 0.10: 10.05, 0.12: 8.01, 0.15: 4.76} {
		loss, err := chem.DryingLoss(batchG, curedBatchG(t, moisture))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "loss", 100*loss, want, 0.005)
	}
	loss, err := chem.DryingLoss(1400, curedBatchG(t, 0.10))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "loss with 210 g of water", 100*loss, 5.56, 0.005)
}

// Named above 0.01 % of a rinse-off product: Regulation (EU) 2023/1545 (read).
func TestAllergensAreJudgedOnTheCuredBarRegression(t *testing.T) {
	cured := curedBatchG(t, 0.10)
	near(t, "3 % of the scent, batter", chem.PercentOfBar(0.03*batchScent, batchG), 0.1020, 0.00005)
	near(t, "3 % of the scent, bar", chem.PercentOfBar(0.03*batchScent, cured), 0.1134, 0.00005)
	near(t, "break-even, batter", 100*chem.AllergenPercent/chem.PercentOfBar(batchScent, batchG), 0.294, 0.0005)
	near(t, "break-even, bar", 100*chem.AllergenPercent/chem.PercentOfBar(batchScent, cured), 0.264, 0.0005)
	edge := 0.0028 * batchScent
	near(t, "edge, batter", chem.PercentOfBar(edge, batchG), 0.00952, 0.000005)
	near(t, "edge, bar", chem.PercentOfBar(edge, cured), 0.01059, 0.000005)
	if chem.PercentOfBar(edge, batchG) > chem.AllergenPercent || chem.PercentOfBar(edge, cured) <= chem.AllergenPercent {
		t.Error("the edge case is decided alike on batter and bar")
	}
}

func TestAllergensOfSeveralScentsAddUpRegression(t *testing.T) {
	cured := curedBatchG(t, 0.10)
	a, b := 30*0.002, 20*0.005
	near(t, "first", chem.PercentOfBar(a, cured), 0.0045, 0.00005)
	near(t, "second", chem.PercentOfBar(b, cured), 0.0076, 0.00005)
	near(t, "together", chem.PercentOfBar(a+b, cured), 0.0121, 0.00005)
	if chem.PercentOfBar(a+b, cured) <= chem.AllergenPercent {
		t.Error("two scents together stay under the threshold")
	}
}

func TestLyeStrengthOfTheReferenceBatchRegression(t *testing.T) {
	o := chem.LyeOrder{DemandKOHG: 140 / chem.AlkaliRatio, Concentration: 140.0 / 420, NaOHPurity: 1}
	l := mix(t, o)
	near(t, "NaOH", l.NaOHWeighedG, 140, 1e-9)
	near(t, "water", l.WaterToAddG, 280, 1e-9)
	near(t, "strength", 100*l.PureConcentration, 33.3, 0.05)
}

func TestCutWeightForACuredBarRegression(t *testing.T) {
	cut, err := chem.CutForCured(100, 0.1005)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "to cut for 100 g", cut, 111.2, 0.05)
}

func TestVanillinAndIcingShareTheWholeBarRegression(t *testing.T) {
	cured := curedBatchG(t, 0.10)
	near(t, "vanillin, 8 % of the scent", chem.PercentOfBar(0.08*batchScent, cured), 0.303, 0.0005)
	scentG := 110 * batchScent / batchG
	near(t, "scent of 110 g base under 30 g unscented icing", chem.PercentOfBar(scentG, 140), 2.67, 0.005)
}

// The bands are common practice, no source: percent of vanillin in a scent used at 50 g for 1000 g of oils and 140 g of NaOH, the dry parts
// of a bar cured to 10 % moisture.
func TestVanillinTintFollowsTheMakersBands(t *testing.T) {
	const inBar = 50 / (1190 / 0.9)
	for percent, want := range map[float64]chem.Browning{
		0: chem.BrowningNone, 0.1: chem.BrowningNone, 0.9: chem.BrowningCream, 1: chem.BrowningTan,
		4.9: chem.BrowningTan, 5: chem.BrowningMid, 8: chem.BrowningMid, 10: chem.BrowningMid, 10.1: chem.BrowningDark, 50: chem.BrowningDark,
	} {
		if got := chem.VanillinTint(percent * inBar); got != want {
			t.Errorf("%v %% vanillin in the scent turns %q, want %q", percent, got, want)
		}
	}
	for percent, want := range map[float64]chem.Browning{0.004: chem.BrowningNone, 0.303: chem.BrowningMid, 100: chem.BrowningDark, -1: "", 101: ""} {
		if got := chem.VanillinTint(percent); got != want {
			t.Errorf("%v %% vanillin in the bar turns %q, want %q", percent, got, want)
		}
	}
	for bound, want := range map[float64]chem.Browning{0.02: chem.BrowningCream, 0.0378: chem.BrowningTan, 0.189: chem.BrowningMid, 0.3782: chem.BrowningMid} {
		if got := chem.VanillinTint(bound); got != want {
			t.Errorf("%v %% vanillin, a bound itself, turns %q, want %q", bound, got, want)
		}
	}
	if got := chem.VanillinTint(math.NaN()); got != "" {
		t.Errorf("unknown vanillin turns %q", got)
	}
}

func TestDryingRefusesWhatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, at := range [][2]float64{{-1, 0.1}, {nan, 0.1}, {100, 1}, {100, 10}, {100, -0.1}, {100, nan}} {
		if g, err := chem.CuredG(at[0], at[1]); !errors.Is(err, chem.ErrCure) {
			t.Errorf("cured %v: %v, %v", at, g, err)
		}
	}
	for _, at := range [][2]float64{{0, 1}, {nan, 1}, {100, -1}, {100, nan}} {
		if loss, err := chem.DryingLoss(at[0], at[1]); !errors.Is(err, chem.ErrCure) {
			t.Errorf("loss %v: %v, %v", at, loss, err)
		}
	}
	for _, at := range [][2]float64{{-1, 0.1}, {100, 1}, {100, nan}, {nan, 0.1}} {
		if g, err := chem.CutForCured(at[0], at[1]); !errors.Is(err, chem.ErrCure) {
			t.Errorf("cut %v: %v, %v", at, g, err)
		}
	}
	for what, f := range map[string]func() (float64, error){
		"nothing, cured": func() (float64, error) { return chem.CuredG(0, 0) },
		"nothing to cut": func() (float64, error) { return chem.CutForCured(0, 0) },
		"no loss":        func() (float64, error) { return chem.DryingLoss(100, 100) },
		"all of it lost": func() (float64, error) { g, err := chem.DryingLoss(100, 0); return g - 1, err },
	} {
		if g, err := f(); err != nil || g != 0 {
			t.Errorf("%s: %v, %v", what, g, err)
		}
	}
	if p := chem.PercentOfBar(1, 0); !math.IsNaN(p) {
		t.Errorf("1 g of no bar is %v %%", p)
	}
}

// Directive 76/211/EEC, annex I, 2.4, as GB Packaged Goods Regulations 2006 (read); values worked by hand.
func TestTolerableShortfallFollowsTheDirective(t *testing.T) {
	for nominal, want := range map[float64]float64{
		5: 0.5, 45: 4.1, 50: 4.5, 80: 4.5, 100: 4.5, 115: 5.2, 120: 5.4, 200: 9, 250: 9, 300: 9, 400: 12, 500: 15,
		750: 15, 1000: 15, 2000: 30, 10000: 150, 12000: 150, 15000: 150, 20000: 200, 25000: 250,
	} {
		got, ok := chem.TolerableShortfall(nominal)
		if !ok {
			t.Errorf("no shortfall laid down for %v g", nominal)
		}
		near(t, "shortfall", got, want, 1e-12)
	}
	for nominal, want := range map[float64][2]float64{
		100: {95.5, 91.0}, 80: {75.5, 71.0}, 45: {40.9, 36.8}, 115: {109.8, 104.6}, 120: {114.6, 109.2},
	} {
		g, _ := chem.TolerableShortfall(nominal)
		near(t, "first line", nominal-g, want[0], 1e-9)
		near(t, "second line", nominal-2*g, want[1], 1e-9)
	}
	for _, nominal := range []float64{0, 4.9, 25001, -100, math.NaN()} {
		if g, ok := chem.TolerableShortfall(nominal); ok {
			t.Errorf("%v g may fall short by %v", nominal, g)
		}
	}
}
