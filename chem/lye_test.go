package chem_test

import (
	"errors"
	"math"
	"testing"

	"pourbench/chem"
)

// The worked examples use blend A, 211.6 g KOH demand; each is our own arithmetic on published mid-ranges: regression.
const demandA = 211.6

func order() chem.LyeOrder {
	return chem.LyeOrder{DemandKOHG: demandA, Superfat: 0.05, Concentration: 0.33, NaOHPurity: 1, KOHPurity: 1}
}

func mix(t testing.TB, o chem.LyeOrder) chem.Lye {
	t.Helper()
	l, err := chem.MixLye(o)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestLyeWithoutSuperfatRegression(t *testing.T) {
	o := order()
	o.Superfat, o.NaOHPurity = 0, 0.97
	l := mix(t, o)
	near(t, "pure", l.NaOHPureG, 150.85, 0.005)
	near(t, "weighed at 97 %", l.NaOHWeighedG, 155.51, 0.005)
	near(t, "moles", l.NaOHPureG/chem.MolarNaOH, 3.77148, 0.000005)
	near(t, "KOH", l.KOHWeighedG, 0, 0)
}

func TestLyeWithFivePercentSuperfatRegression(t *testing.T) {
	o := order()
	o.NaOHPurity = 0.97
	l := mix(t, o)
	near(t, "pure", l.NaOHPureG, 143.30, 0.005)
	near(t, "weighed at 97 %", l.NaOHWeighedG, 147.74, 0.005)
	if extraOil := 143.6638; math.Abs(l.NaOHPureG-extraOil) < 0.3 {
		t.Errorf("%v is superfat as extra oil, not as lye discount", l.NaOHPureG)
	}
}

func TestPotassiumLyeAtNinetyPercentRegression(t *testing.T) {
	o := order()
	o.KOHShare, o.KOHPurity, o.NaOHPurity = 1, 0.90, 0
	near(t, "5 % superfat", mix(t, o).KOHWeighedG, 223.36, 0.005)
	o.Superfat = 0
	near(t, "no superfat", mix(t, o).KOHWeighedG, 235.11, 0.005)
}

func TestWaterFollowsTheConcentrationAsWeighedRegression(t *testing.T) {
	o := order()
	near(t, "33 %, pure", mix(t, o).WaterToAddG, 290.95, 0.005)
	o.NaOHPurity = 0.97
	near(t, "33 %, weighed", mix(t, o).WaterToAddG, 299.95, 0.005)
	o.Concentration = 1.0 / 3
	near(t, "water to lye 2 to 1", mix(t, o).WaterToAddG, 295.47, 0.005)
	o.Concentration = 147.7368 / (147.7368 + 380)
	near(t, "38 % of oils", mix(t, o).WaterToAddG, 380, 0.005)
}

func TestImpurityCountsAsNeitherAlkaliNorWater(t *testing.T) {
	o := order()
	o.NaOHPurity = 0.97
	l := mix(t, o)
	near(t, "pure concentration", l.PureConcentration, 0.97*0.33, 1e-12)
	near(t, "solution", l.SolutionG(), l.NaOHWeighedG+l.AllWaterG, 1e-9)
	near(t, "as mixed", l.AsMixed, 0.33, 1e-12)
	near(t, "pure as mixed", l.PureAsMixed(), 0.97*0.33, 1e-12)
	near(t, "no lye", chem.Lye{}.PureAsMixed(), 0, 0)
}

// 60 g of KOH in 100 g of alkali are 60/56.1053 of 60/56.1053 + 40/39.99677 mol.
func TestKOHByMassIsLessByMoles(t *testing.T) {
	near(t, "0.6 by mass", chem.KOHMoleShare(0.6), 0.516752109, 1e-9)
	near(t, "half by mass", chem.KOHMoleShare(0.5), 0.416190515, 1e-9)
	near(t, "none", chem.KOHMoleShare(0), 0, 0)
	near(t, "all", chem.KOHMoleShare(1), 1, 0)
}

// Half of 100 g KOH is KOH of 90 %, the other half NaOH of 98 %: 55.5556 + 36.3718 g weighed for 50 + 35.6444 g pure.
func TestImpurityOfBothAlkalisCounts(t *testing.T) {
	o := chem.LyeOrder{DemandKOHG: 100, Concentration: 0.4, KOHShare: 0.5, NaOHPurity: 0.98, KOHPurity: 0.90}
	l := mix(t, o)
	near(t, "weighed", l.NaOHWeighedG+l.KOHWeighedG, 91.92736946, 1e-8)
	near(t, "pure as mixed", l.PureAsMixed(), 0.4*85.64437763/91.92736946, 1e-9)
	near(t, "pure", l.PureConcentration, 0.4*85.64437763/91.92736946, 1e-9)
	near(t, "solution", l.SolutionG(), 91.92736946/0.4, 1e-7)
}

func TestStockLyeLeavesTheRestOfTheWaterRegression(t *testing.T) {
	o := order()
	o.StockStrength, o.NaOHPurity = 0.50, 0
	l := mix(t, o)
	near(t, "stock", l.StockG, 286.61, 0.005)
	near(t, "water to add", l.WaterToAddG, 147.65, 0.005)
	near(t, "all water", l.AllWaterG, 290.9519, 0.00005)
	near(t, "check", l.NaOHPureG/(l.NaOHPureG+l.AllWaterG), 0.33, 1e-12)
	near(t, "pure concentration", l.PureConcentration, 0.33, 1e-12)
	near(t, "dry NaOH", l.NaOHWeighedG, 0, 0)
	gml, ok := chem.NaOHDensity(0.50, 20)
	if !ok {
		t.Fatal("no density at 50 %")
	}
	near(t, "stock volume, mL", l.StockG/gml, 187.90, 0.005)
}

func TestMakingStockFromPelletsRegression(t *testing.T) {
	l := mix(t, chem.LyeOrder{DemandKOHG: 500 / chem.AlkaliRatio, Concentration: 515.4639 / 1000, NaOHPurity: 0.97})
	near(t, "pellets", l.NaOHWeighedG, 515.46, 0.005)
	near(t, "water", l.WaterToAddG, 484.54, 0.005)
}

func TestExtrasWaterIsTakenOffAndMakesTheMixStronger(t *testing.T) {
	o := order()
	o.WaterInExtrasG = 150
	l := mix(t, o)
	near(t, "water to add", l.WaterToAddG, 290.95-150, 0.005)
	near(t, "as mixed", l.AsMixed, 143.3047/(143.3047+140.9519), 1e-6)
	near(t, "concentration", l.NaOHWeighedG/(l.NaOHWeighedG+l.AllWaterG), 0.33, 1e-12)
}

// Milk that is there before the alkali dissolves it: 143.3047 g NaOH in 290.9519 g of water, whoever brings it.
func TestExtrasWaterThatIsThereBeforeTheAlkaliDissolvesIt(t *testing.T) {
	o := order()
	o.WaterInExtrasG, o.WaterBeforeG = 290, 290
	l := mix(t, o)
	near(t, "water to add", l.WaterToAddG, 0.95, 0.005)
	near(t, "as mixed", l.AsMixed, 0.33, 1e-6)
	o.WaterBeforeG = 150
	near(t, "as mixed, part of it there", mix(t, o).AsMixed, 143.3047/(143.3047+0.9519+150), 1e-6)
	for _, g := range []float64{-1, 291, math.NaN()} {
		o.WaterBeforeG = g
		if _, err := chem.MixLye(o); !errors.Is(err, chem.ErrLyeWater) {
			t.Errorf("%v g of 290 before the alkali: %v", g, err)
		}
	}
}

func TestTooMuchWaterFromElsewhereIsShort(t *testing.T) {
	o := order()
	o.StockStrength = 0.30
	l := mix(t, o)
	if !l.Short || l.WaterToAddG >= 0 {
		t.Errorf("30 %% stock for a 33 %% lye: short %v, water %v", l.Short, l.WaterToAddG)
	}
	near(t, "as mixed is the stock itself", l.AsMixed, 0.30, 1e-12)
	o.StockStrength, o.WaterInExtrasG = 0, 400
	if l = mix(t, o); !l.Short || l.WaterToAddG >= 0 {
		t.Errorf("400 g in extras: short %v, water %v", l.Short, l.WaterToAddG)
	}
	near(t, "as mixed, nothing to dissolve in", l.AsMixed, 1, 0)
	o.WaterInExtrasG = 0
	if l = mix(t, o); l.Short {
		t.Error("a plain order is short")
	}
	o.StockStrength, o.Concentration = 0.5, 0.5 // all of its water, to the drop
	if l = mix(t, o); l.Short || l.WaterToAddG != 0 {
		t.Errorf("a stock lye as strong as the lye: short %v, water %v", l.Short, l.WaterToAddG)
	}
}

func TestExtrasAcidsAreNeutralisedInFull(t *testing.T) {
	o := order()
	// 10 g of citric acid, 192.123 g/mol, three acid groups.
	o.AcidKOHG = 10 / 192.123 * 3 * chem.MolarKOH
	l := mix(t, o)
	near(t, "NaOH on top", l.NaOHPureG-143.3047, 10/192.123*3*chem.MolarNaOH, 0.0001)
	near(t, "superfat", o.SuperfatOf(l.NaOHPureG, l.KOHPureG, demandA), 0.05, 1e-12)
}

func TestKOHShareIsByMoles(t *testing.T) {
	o := order()
	o.KOHShare = 0.25
	l := mix(t, o)
	naoh, koh := l.NaOHPureG/chem.MolarNaOH, l.KOHPureG/chem.MolarKOH
	near(t, "share", koh/(koh+naoh), 0.25, 1e-12)
	near(t, "moles", koh+naoh, 0.95*demandA/chem.MolarKOH, 1e-12)
}

func TestSuperfatOfNoDemandIsNoNumber(t *testing.T) {
	if s := order().SuperfatOf(10, 0, 0); !math.IsNaN(s) {
		t.Errorf("superfat of nothing is %v", s)
	}
}

func TestMixLyeRefusesWhatCannotBe(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	cases := map[string]struct {
		spoil func(*chem.LyeOrder)
		want  error
	}{
		"negative demand":      {func(o *chem.LyeOrder) { o.DemandKOHG = -1 }, chem.ErrLyeDemand},
		"no demand":            {func(o *chem.LyeOrder) { o.DemandKOHG = 0 }, chem.ErrLyeDemand},
		"unknown demand":       {func(o *chem.LyeOrder) { o.DemandKOHG = nan }, chem.ErrLyeDemand},
		"endless demand":       {func(o *chem.LyeOrder) { o.DemandKOHG = inf }, chem.ErrLyeDemand},
		"negative acid":        {func(o *chem.LyeOrder) { o.AcidKOHG = -1 }, chem.ErrLyeDemand},
		"superfat in percent":  {func(o *chem.LyeOrder) { o.Superfat = 5 }, chem.ErrLyeSuperfat},
		"superfat unknown":     {func(o *chem.LyeOrder) { o.Superfat = nan }, chem.ErrLyeSuperfat},
		"superfat below -1":    {func(o *chem.LyeOrder) { o.Superfat = -5 }, chem.ErrLyeSuperfat},
		"share above 1":        {func(o *chem.LyeOrder) { o.KOHShare = 1.1 }, chem.ErrLyeShare},
		"concentration 0":      {func(o *chem.LyeOrder) { o.Concentration = 0 }, chem.ErrLyeConcentration},
		"concentration 33":     {func(o *chem.LyeOrder) { o.Concentration = 33 }, chem.ErrLyeConcentration},
		"NaOH purity 0":        {func(o *chem.LyeOrder) { o.NaOHPurity = 0 }, chem.ErrLyePurity},
		"NaOH purity 97":       {func(o *chem.LyeOrder) { o.NaOHPurity = 97 }, chem.ErrLyePurity},
		"KOH purity 0":         {func(o *chem.LyeOrder) { o.KOHShare, o.KOHPurity = 0.1, 0 }, chem.ErrLyePurity},
		"stock of 50":          {func(o *chem.LyeOrder) { o.StockStrength = 50 }, chem.ErrLyeStock},
		"stock below 0":        {func(o *chem.LyeOrder) { o.StockStrength = -0.5 }, chem.ErrLyeStock},
		"stock with KOH":       {func(o *chem.LyeOrder) { o.StockStrength, o.KOHShare = 0.5, 0.05 }, chem.ErrLyeStock},
		"extras' water minus":  {func(o *chem.LyeOrder) { o.WaterInExtrasG = -1 }, chem.ErrLyeWater},
		"extras' water no sum": {func(o *chem.LyeOrder) { o.WaterInExtrasG = nan }, chem.ErrLyeWater},
	}
	for name, c := range cases {
		o := order()
		c.spoil(&o)
		l, err := chem.MixLye(o)
		if !errors.Is(err, c.want) {
			t.Errorf("%s: error %v, want %v", name, err, c.want)
		}
		if l != (chem.Lye{}) {
			t.Errorf("%s: still gives %+v", name, l)
		}
	}
}
