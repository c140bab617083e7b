package chem_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
)

// drawBlend draws one to eight rows of testdata/oils.csv with 1 to 2000 g of each.
func drawBlend(t *rapid.T, oils []tableOil) chem.Blend {
	n := rapid.IntRange(1, 8).Draw(t, "oils")
	b := make(chem.Blend, n)
	for i := range b {
		b[i].Fat = rapid.SampledFrom(oils).Draw(t, "oil").fat
		b[i].G = rapid.Float64Range(1, 2000).Draw(t, "g")
	}
	return b
}

func drawOrder(t *rapid.T) chem.LyeOrder {
	return chem.LyeOrder{
		DemandKOHG:     rapid.Float64Range(0.1, 5000).Draw(t, "demand"),
		AcidKOHG:       rapid.Float64Range(0, 50).Draw(t, "acid"),
		Superfat:       rapid.Float64Range(-0.05, 0.4).Draw(t, "superfat"),
		Concentration:  rapid.Float64Range(0.1, 0.6).Draw(t, "concentration"),
		KOHShare:       rapid.Float64Range(0, 1).Draw(t, "share"),
		NaOHPurity:     rapid.Float64Range(0.5, 1).Draw(t, "naoh purity"),
		KOHPurity:      rapid.Float64Range(0.5, 1).Draw(t, "koh purity"),
		WaterInExtrasG: rapid.Float64Range(0, 500).Draw(t, "extras"),
	}
}

// same fails where two figures that are the same by definition differ by more than rounding.
func same(t *rapid.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(got), math.Abs(want))) {
		t.Fatalf("%s: %v and %v", what, got, want)
	}
}

func TestBlendFiguresAreLinearInMass(t *testing.T) {
	oils := readOils(t)
	rapid.Check(t, func(t *rapid.T) {
		b := drawBlend(t, oils)
		times := rapid.Float64Range(0.01, 100).Draw(t, "times")
		scaled := append(chem.Blend(nil), b...)
		for i := range scaled {
			scaled[i].G *= times
		}
		low, mid, high := b.DemandKOH()
		lowS, midS, highS := scaled.DemandKOH()
		same(t, "low", lowS, low*times)
		same(t, "mid", midS, mid*times)
		same(t, "high", highS, high*times)
		same(t, "glycerol", scaled.GlycerolG(), b.GlycerolG()*times)
		same(t, "volume", scaled.ML(40), b.ML(40)*times)
		same(t, "saponification value", scaled.SapKOH(), b.SapKOH())
	})
}

func TestTwoBlendsTogetherAreTheirMassWeightedMean(t *testing.T) {
	oils := readOils(t)
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBlend(t, oils), drawBlend(t, oils)
		both := append(append(chem.Blend(nil), a...), b...)
		same(t, "saponification value", both.SapKOH()*both.G(), a.SapKOH()*a.G()+b.SapKOH()*b.G())
		pa, fa := a.Profile()
		pb, fb := b.Profile()
		p, f := both.Profile()
		same(t, "profiled", f*both.G(), fa*a.G()+fb*b.G())
		for i := range p {
			same(t, chem.Acid(i).Name(), p[i]*f*both.G(), pa[i]*fa*a.G()+pb[i]*fb*b.G())
		}
	})
}

func TestDemandEndsEncloseTheMiddle(t *testing.T) {
	oils := readOils(t)
	rapid.Check(t, func(t *rapid.T) {
		low, mid, high := drawBlend(t, oils).DemandKOH()
		if !(0 < low && low <= mid && mid <= high) {
			t.Fatalf("%v, %v, %v", low, mid, high)
		}
	})
}

func TestLyeIdentitiesHoldForDryAlkali(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOrder(t)
		l, err := chem.MixLye(o)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "NaOH weighed × purity", l.NaOHWeighedG*o.NaOHPurity, l.NaOHPureG)
		same(t, "KOH weighed × purity", l.KOHWeighedG*o.KOHPurity, l.KOHPureG)
		weighed := l.NaOHWeighedG + l.KOHWeighedG
		same(t, "concentration", weighed/(weighed+l.AllWaterG), o.Concentration)
		same(t, "all water", l.WaterToAddG+o.WaterInExtrasG, l.AllWaterG)
		same(t, "superfat", o.SuperfatOf(l.NaOHPureG, l.KOHPureG, o.DemandKOHG)*o.DemandKOHG, o.Superfat*o.DemandKOHG)
		if l.PureConcentration > l.Concentration+1e-12 || l.AsMixed < l.Concentration-1e-12 || l.AsMixed > 1 {
			t.Fatalf("concentration %v, pure %v, as mixed %v", l.Concentration, l.PureConcentration, l.AsMixed)
		}
		if l.Short != (l.WaterToAddG < 0) {
			t.Fatalf("short %v with %v g to add", l.Short, l.WaterToAddG)
		}
	})
}

func TestLyeIdentitiesHoldForStockLye(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOrder(t)
		o.KOHShare, o.StockStrength = 0, rapid.Float64Range(0.1, 0.6).Draw(t, "stock")
		l, err := chem.MixLye(o)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "stock × strength", l.StockG*o.StockStrength, l.NaOHPureG)
		same(t, "all water", l.WaterToAddG+o.WaterInExtrasG+l.StockG-l.NaOHPureG, l.AllWaterG)
		same(t, "pure ÷ (pure + water)", l.NaOHPureG/(l.NaOHPureG+l.AllWaterG), o.Concentration)
		same(t, "pure concentration", l.PureConcentration, o.Concentration)
		if l.NaOHWeighedG != 0 || l.KOHWeighedG != 0 {
			t.Fatalf("dry alkali %v and %v beside a stock lye", l.NaOHWeighedG, l.KOHWeighedG)
		}
		if l.AsMixed > o.StockStrength+1e-12 {
			t.Fatalf("as mixed %v is stronger than its stock, %v", l.AsMixed, o.StockStrength)
		}
	})
}

func TestLyeGetsDenserWithAlkaliAndThinnerWithWarmth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(0, 0.49).Draw(t, "fraction")
		c := rapid.Float64Range(10, 69).Draw(t, "c")
		here, _ := chem.NaOHDensity(x, c)
		stronger, _ := chem.NaOHDensity(x+0.01, c)
		warmer, _ := chem.NaOHDensity(x, c+1)
		if !(stronger > here && warmer < here) {
			t.Fatalf("%v, 1 %% stronger %v, 1 K warmer %v", here, stronger, warmer)
		}
	})
}

func TestCoolingTakesLongerTheFurtherItGoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.Float64Range(10, 5000).Draw(t, "g")
		c := rapid.Float64Range(0.1, 0.5).Draw(t, "concentration")
		room := rapid.Float64Range(5, 35).Draw(t, "room")
		to := room + rapid.Float64Range(0.5, 30).Draw(t, "above room")
		from := to + rapid.Float64Range(1, 70).Draw(t, "above wanted")
		base, ok := chem.CoolMinutes(g, c, from, to, room)
		if !ok || !(base > 0) {
			t.Fatalf("%v min, %v", base, ok)
		}
		hotter, _ := chem.CoolMinutes(g, c, from+5, to, room)
		cooler, _ := chem.CoolMinutes(g, c, from, to-0.4, room)
		bigger, _ := chem.CoolMinutes(1.1*g, c, from, to, room)
		if !(hotter > base && cooler > base && bigger > base) {
			t.Fatalf("%v min; hotter %v, cooler %v, bigger %v", base, hotter, cooler, bigger)
		}
	})
}

func TestMixTemperatureLiesBetweenOilsAndLye(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		oilC := rapid.Float64Range(10, 90).Draw(t, "oil")
		lyeC := rapid.Float64Range(10, 90).Draw(t, "lye")
		c := chem.MixC(rapid.Float64Range(1, 5000).Draw(t, "oil g"), oilC,
			rapid.Float64Range(1, 5000).Draw(t, "lye g"), lyeC, rapid.Float64Range(0.1, 0.5).Draw(t, "concentration"))
		if !(c >= min(oilC, lyeC)-1e-9 && c <= max(oilC, lyeC)+1e-9) {
			t.Fatalf("%v and %v mix to %v", oilC, lyeC, c)
		}
	})
}

func TestCuttingUndoesDrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cut := rapid.Float64Range(1, 1000).Draw(t, "cut")
		dry := cut * rapid.Float64Range(0.5, 1).Draw(t, "dry part")
		cured, err := chem.CuredG(dry, rapid.Float64Range(0, 0.3).Draw(t, "moisture"))
		if err != nil {
			t.Fatal(err)
		}
		loss, err := chem.DryingLoss(cut, cured)
		if err != nil {
			t.Fatal(err)
		}
		back, err := chem.CutForCured(cured, loss)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "cut", back, cut)
	})
}
