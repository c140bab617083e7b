package pour_test

import (
	"math"
	"testing"

	"pourbench/pour"
)

// 1 % of charcoal in five parts of oil, in half of the batter, is 2.5 % of it: 1 kg of oils, the alkali and its water.
func TestTheCarrierIsTheOilNamedOrTheBlendsLargest(t *testing.T) {
	for _, c := range []struct {
		named, want    string
		olive, coconut float64
	}{
		{"", "olive", 60, 40},
		{"", "coconut", 40, 60},
		{"", "olive", 50, 50}, // the first of two as large
		{"olive", "olive", 40, 60},
		{"coconut", "coconut", 60, 40},
	} {
		p, shelf := halves(t)
		p.Base.SuperfatPercent, p.Base.CarrierOil = 9, c.named
		p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: c.olive}, {Oil: "coconut", Percent: c.coconut}}
		b := pour.Weigh(p, shelf).Base
		naoh := (c.olive*olive + c.coconut*coconut) * 10 * 0.91 * naohPerKOH
		taken := (1000 + naoh/0.33) * (1 - 1/1.025)
		for i, part := range []float64{c.olive, c.coconut} {
			left := part * 10
			if b.Oils[i].ID == c.want {
				left -= taken
				if got := b.Jugs[1].Colourants[0].CarrierName; got != b.Oils[i].Name {
					t.Errorf("%+v: the colour is wetted in %q", c, got)
				}
			}
			equal(t, b.Oils[i].Name+" left", b.Oils[i].G, left, 1e-6)
		}
		equal(t, "the carrier", b.Jugs[1].Colourants[0].CarrierG, taken, 1e-6)
	}
}

// Whatever the alkali, it is weighed to the step below, and the superfat as weighed is that of the pure alkali in what is weighed.
func TestEveryAlkaliIsWeighedDownAndCountedPure(t *testing.T) {
	demand := (600*olive + 400*coconut) * 0.95
	for what, c := range map[string]struct {
		share, stock float64
	}{"NaOH": {0, 0}, "KOH": {100, 0}, "both": {40, 0}, "a stock lye": {0, 47}} {
		for _, step := range []float64{1, 2, 3, 5} { // on some step the nearest is above
			p, shelf := halves(t)
			p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent, p.Show.ScaleStepG, p.Show.LyeStepG = nil, 5, 1, step
			p.Base.KOHSharePercent, p.Base.StockLyePercent = c.share, c.stock
			p.Base.NaOHPurityPercent, p.Base.KOHPurityPercent = 97, 88
			b := pour.Weigh(p, shelf).Base
			down := func(g float64) float64 { return math.Floor(g/step) * step }
			pureNaOH, pureKOH := demand*(1-c.share/100)*naohPerKOH, demand*c.share/100
			naoh, koh, stock := down(pureNaOH/0.97), down(pureKOH/0.88), 0.0
			weighed := naoh*0.97/naohPerKOH + koh*0.88
			if c.stock > 0 {
				naoh, stock = 0, down(pureNaOH/0.47)
				weighed = stock * 0.47 / naohPerKOH
			}
			equal(t, what+": NaOH to weigh", b.Lye.NaOH.ToWeighG, naoh, 1e-9)
			equal(t, what+": KOH to weigh", b.Lye.KOH.ToWeighG, koh, 1e-9)
			equal(t, what+": stock lye to weigh", b.Lye.Stock.ToWeighG, stock, 1e-9)
			equal(t, what+": superfat as weighed", b.Superfat.AsWeighedPercent, 100*(1-weighed/(600*olive+400*coconut)), 1e-9)
		}
	}
}

// 20.3 % of a kilogram is 203 g of milk, on a step of 5 g 205; butterfat 3.25 % of 226 mg KOH/g (as in the test of milk fat).
func TestMilkFatIsCountedAsItIsWeighed(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent, p.Show.ScaleStepG, p.Show.LyeStepG = nil, 5, 1, 5
	p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: 20.3}}
	b := pour.Weigh(p, shelf).Base
	oils := 600*olive + 400*coconut
	naoh := math.Floor(oils*0.95*naohPerKOH/5) * 5
	equal(t, "the batch as weighed", b.Superfat.AsWeighedPercent, 100*(1-naoh/naohPerKOH/(oils+205*0.0325*0.226)), 1e-9)
	equal(t, "the batter as mixed", b.Superfat.MixedPercent, 100*(1-oils*0.95/(oils+203*0.0325*0.226)), 1e-9)
	equal(t, "a jug, low", b.Jugs[0].Superfat.LowPercent, 100*(1-oils*0.95/(600*oliveLow+400*coconutLow+203*0.0325*0.226)), 1e-9)
	p.Show.LyeStepG = 0.1
	if w, ok := found(pour.Weigh(p, shelf), "alkali-rounding"); ok {
		t.Errorf("what milk adds to the superfat is no rounding: %+v", w)
	}
}

// A colour on top of the batch, or one wetted in water, takes no part of what the batch as weighed saponifies.
func TestOnlyOilTakenOutOfTheBatchComesBackIntoIt(t *testing.T) {
	for _, d := range []pour.Dose{
		{Colourant: "activated-charcoal", DosePercent: 1, CarrierParts: 5},
		{Colourant: "activated-charcoal", DosePercent: 1, CarrierParts: 5, Carrier: pour.CarryWater},
		{Colourant: "activated-charcoal", DosePercent: 1, CarrierParts: 5, Carrier: pour.CarryGlycerin},
	} {
		p, shelf := halves(t)
		p.Base.SuperfatPercent, p.Show.ScaleStepG, p.Show.LyeStepG = 5, 1, 1
		p.Base.Carrier, p.Base.Jugs[1].Colourants[0] = pour.CarrierExtra, d
		b := pour.Weigh(p, shelf).Base
		oils := 600*olive + 400*coconut
		naoh := math.Floor(oils * 0.95 * naohPerKOH)
		equal(t, "the batch as weighed", b.Superfat.AsWeighedPercent, 100*(1-naoh/naohPerKOH/oils), 1e-9)
		own := 0.0
		if d.Carrier == "" {
			own = b.Jugs[1].Colourants[0].CarrierG * olive
		}
		equal(t, "the black jug", b.Jugs[1].Superfat.HeldPercent, 100*(1-oils*0.95/2/(oils/2+own)), 1e-9)
	}
}

// A litre of these oils weighs 0.88 to 0.93 kg between 20 and 60 °C (Codex CXS 210, memory): what the carriers take leaves the volume too.
func TestTheBattersVolumeIsThatOfWhatIsLeft(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.BatterMeasured, p.Base.BatterC, p.Base.Carrier = 9, true, 38, pour.CarrierExtra
	whole := pour.Weigh(p, shelf).Base
	p.Base.Carrier = pour.CarrierBatch
	left := pour.Weigh(p, shelf).Base
	taken := whole.Size.BatterG - left.Size.BatterG
	if ml := whole.Size.BatterML - left.Size.BatterML; taken < 10 || ml < taken/0.93 || ml > taken/0.88 {
		t.Errorf("%.1f g of carrier take %.1f mL", taken, ml)
	}
}

// Milk dries to what is not water: 11.9 % of it stays with oils and pure alkali.
func TestOnlyWhatIsDryStaysInTheBar(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
	p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: 20}}
	equal(t, "dry", pour.Weigh(p, shelf).Base.Size.DryG, 1000+(600*olive+400*coconut)*0.95*naohPerKOH+200*0.119, 1e-6)
}
