package pour_test

import (
	"math"
	"slices"
	"testing"

	"pourbench/chem"
	"pourbench/pour"
)

// The oracle: five batters worked out by hand on a shelf of round numbers. What stands behind // is the whole working; 0.712887...  is
// q = 39.99677/56.1053, the NaOH that does the work of a gram of KOH.

// roundShelf holds two fats, amber of 190 (180 to 200) and birch of 250 (240 to 260) mg KOH/g, and little else.
func roundShelf(t *testing.T) pour.Shelf {
	t.Helper()
	_, shelf := shelved(t)
	fat := func(id string, low, mid, high, density float64) pour.Oil {
		return pour.Oil{ID: id, Name: id, Fat: chem.Fat{Kind: chem.Triglyceride, SapLow: low, Sap: mid, SapHigh: high, DensityGML: density, DensityC: 20}}
	}
	shelf.Oils = []pour.Oil{fat("amber", 180, 190, 200, 0.92), fat("birch", 240, 250, 260, 0.93)}
	shelf.Extras = []pour.Extra{
		{ID: "citric", Name: "citric", Kind: pour.ExtraAcid, In: pour.InLye, LyeWhen: pour.LyeBefore, AlkaliKOHMgG: 876, DensityGML: 1.665},
		{ID: "vinegar", Name: "vinegar", Kind: pour.ExtraAcid, In: pour.InLye, LyeWhen: pour.LyeCooled, WaterPercent: 94, AlkaliKOHMgG: 47},
		{ID: "milk", Name: "milk", Kind: pour.ExtraMilk, In: pour.InLye, LyeWhen: pour.LyeCooled, WaterPercent: 88, FatPercent: 4, FatSapKOHMgG: 230},
		{ID: "salt", Name: "salt", Kind: pour.ExtraSalt, In: pour.InLye, LyeWhen: pour.LyeBefore, DensityGML: 2},
		{ID: "syrup", Name: "syrup", Kind: pour.ExtraSugar, In: pour.InOils, WaterPercent: 20, DensityGML: 1.4},
	}
	shelf.Colourants = []pour.Colourant{
		{ID: "coal", Name: "coal", Disperse: pour.DisperseEither, CarrierParts: 5, Alkali: pour.AlkaliStable, DoseHighPercent: 9},
		{ID: "clay", Name: "clay", Disperse: pour.DisperseWater, CarrierParts: 2, Alkali: pour.AlkaliStable, DoseHighPercent: 9},
	}
	shelf.Scents = []pour.Scent{
		{ID: "hay", Name: "hay", Behaviour: pour.BehaviourNone, AlkaliKOHMgG: 10, LimitPercent: 1.3, DensityGML: 0.95},
		{ID: "rose", Name: "rose", Behaviour: pour.BehaviourNone, LimitPercent: 5, DensityGML: 1},
	}
	return shelf
}

// handMade is a kilogram of 60 % amber and 40 % birch in one uncoloured pot, at 5 % superfat and lye of 32 % from pure NaOH; scales of 1 and 0.1 g;
// a loaf of 250 by 80 by 60 mm, its bars a tenth of it, with nothing lost.
func handMade(t *testing.T) pour.Plan {
	t.Helper()
	p, _ := shelved(t)
	p.Icing, p.Run.Order, p.Swirl.First, p.Swirl.Last = nil, nil, "", ""
	p.Show.ScaleStepG, p.Show.LyeStepG = 1, 0.1
	p.Mould = pour.Mould{Shape: "loaf", LengthMM: 250, WidthMM: 80, HeightMM: 90, FillMM: 60, BarMM: 25}
	p.Base = pour.Batch{
		Size: pour.SizeOils, OilsG: 1000, SuperfatPercent: 5, LyeConcentrationPercent: 32, NaOHPurityPercent: 100, KOHPurityPercent: 100,
		OilsC: 40, LyeC: 35, BatterC: 40, BatterMeasured: true, FinalMoisturePercent: 10, Carrier: pour.CarrierExtra,
		Oils: []pour.OilPart{{Oil: "amber", Percent: 60}, {Oil: "birch", Percent: 40}},
		Jugs: []pour.Jug{{Name: "pot", SharePercent: 100}},
	}
	return p
}

// agree compares the leaves named with what a hand found, to a few parts in a thousand million.
func agree(t *testing.T, s pour.Sheet, want map[string]float64) leaves {
	t.Helper()
	got := written(t, s)
	for at, w := range want {
		v, known := got[at].(float64)
		if known == math.IsNaN(w) || known && math.Abs(v-w) > 5e-9*max(1, math.Abs(w)) {
			t.Errorf("%s is %v, by hand %.10g", at, got[at], w)
		}
	}
	return got
}

// acidAndCarriers is impure NaOH, citric acid, colours in oil out of the batch, in water and in glycerin, and the same scent in the icing.
func acidAndCarriers(t *testing.T) pour.Plan {
	t.Helper()
	p := handMade(t)
	b := &p.Base
	p.Mould.LossPercent = 1.5
	b.NaOHPurityPercent, b.Carrier, b.CarrierOil = 98, pour.CarrierBatch, "amber"
	b.Extras = []pour.ExtraPart{{Extra: "citric", PercentOfOils: 1}}
	b.Jugs = []pour.Jug{
		{Name: "pot", SharePercent: 50},
		{Name: "black", SharePercent: 30, Colourants: []pour.Dose{{Colourant: "coal", DosePercent: 2}}},
		{Name: "grey", SharePercent: 20, Colourants: []pour.Dose{
			{Colourant: "clay", DosePercent: 5}, {Colourant: "coal", DosePercent: 1, Carrier: pour.CarryGlycerin, CarrierParts: 3},
		}},
	}
	b.Scents = []pour.ScentPart{{Scent: "hay", PercentOfOils: 2, Into: []string{"pot", "grey"}}, {Scent: "rose", PercentOfOils: 1}}
	icing := b.Clone()
	icing.Size, icing.PerBarG, icing.LossPercent, icing.SuperfatPercent, icing.LyeConcentrationPercent = pour.SizeBar, 25, 5, 8, 35
	icing.FinalMoisturePercent, icing.Carrier, icing.CarrierOil, icing.Extras = 8, pour.CarrierExtra, "", nil
	icing.Oils, icing.Jugs = []pour.OilPart{{Oil: "birch", Percent: 100}}, []pour.Jug{{Name: "snow", SharePercent: 100}}
	icing.Scents = []pour.ScentPart{{Scent: "hay", PercentOfOils: 1}}
	p.Icing = &icing
	return p
}

func TestByHandAcidCarriersAndScentsInBothBatches(t *testing.T) {
	s := pour.Weigh(acidAndCarriers(t), roundShelf(t))
	agree(t, s, map[string]float64{
		// The oils take 600·0.19 + 400·0.25 = 214 g KOH, 10 g of citric acid 8.76: 214·0.95 + 8.76 = 212.06.
		"base.naoh_pure_g":    151.1749344, // 212.06 q
		"base.koh_pure_g":     0,
		"base.naoh_weighed_g": 154.2601371, // ÷ 0.98
		"base.water_to_add_g": 327.8027914, // · 68/32
		"base.extras_g":       10,
		// 1000 + 10 + 154.2601 + 327.8028 = 1492.0629; the black jug, 0.3 of it, takes 2 % · 5 = 10 % of oil: x + 0.03 x = 1492.0629.
		"base.batter_g":                  1448.604785,
		"base.oils_g":                    956.5418565, // 1000 - 1448.6048 · 0.03
		"base.oils[0].g":                 556.5418565, // 600 - 43.4581
		"base.oils[1].g":                 400,
		"base.lye_concentration_percent": 32,
		"base.lye_as_mixed_percent":      32,           // the acid brings no water
		"base.superfat_low_percent":      0.3431372549, // 1 - 203.3/(600·0.18 + 400·0.24)
		"base.superfat_high_percent":     9.241071429,  // 1 - 203.3/(600·0.20 + 400·0.26)
		// On the scales: NaOH 154.2, acid 10, oils 557 + 400 of 957, carrier 43.5 g: 1 - (154.2·0.98/q - 8.76)/(557·0.19 + 100 + 43.5·0.19).
		"base.superfat_as_weighed_percent": 5.080767865,
		// The batter's oils take 556.5419·0.19 + 100 = 205.7430, at the low end 556.5419·0.18 + 96 = 196.1775.
		"base.jugs[0].batter_g":                724.3023925,
		"base.jugs[0].batter_weigh_g":          724,          // 724.30, 434.58 and 289.72 of 1449: the last two lose most
		"base.jugs[0].superfat_percent":        1.326250535,  // 1 - (203.3 - 14.2857·0.010/0.5)/205.7430
		"base.jugs[0].superfat_low_percent":    -3.630622573, // 1 - 203.3/196.1775
		"base.jugs[0].scents[0].g":             14.28571429,  // 20 · 50/70
		"base.jugs[0].scents[1].g":             5,
		"base.jugs[0].scent_load_percent":      3.857142857, // 19.2857 of half a kilogram
		"base.jugs[0].total_g":                 743.2857143,
		"base.jugs[1].batter_weigh_g":          435,
		"base.jugs[1].colourants[0].pigment_g": 8.69162871, // 434.5814 · 0.02
		"base.jugs[1].colourants[0].carrier_g": 43.45814355,
		"base.jugs[1].superfat_percent":        12.84644425, // 1 - 203.3·0.3/(205.7430·0.3 + 43.4581·0.19)
		"base.jugs[1].superfat_low_percent":    8.527430327, // 1 - 203.3·0.3/(196.1775·0.3 + 43.4581·0.18)
		"base.jugs[1].scent_load_percent":      1,           // 3 g of 300
		"base.jugs[1].total_g":                 490.1497723, // 435 + 8.6916 + 43.4581 + 3
		"base.jugs[2].batter_weigh_g":          290,
		"base.jugs[2].colourants[0].pigment_g": 14.48604785, // 289.7210 · 0.05
		"base.jugs[2].colourants[0].carrier_g": 28.9720957,  // water
		"base.jugs[2].colourants[1].pigment_g": 2.89720957,  // · 0.01
		"base.jugs[2].colourants[1].carrier_g": 8.69162871,  // glycerin
		"base.jugs[2].superfat_percent":        1.326250535, // its scent's grams are to its oils as the pot's
		"base.jugs[2].total_g":                 352.7612675, // 290 + 14.4860 + 28.9721 + 2.8972 + 8.6916 + 5.7143 + 2
	})
}

func TestByHandTheIcingAndTheBars(t *testing.T) {
	s := pour.Weigh(acidAndCarriers(t), roundShelf(t))
	got := agree(t, s, map[string]float64{
		"icing.oils_g":                      176.8499113, // 250/0.95 ÷ (1 + 0.23 q/0.98 · 100/35 + 0.01)
		"icing.naoh_weighed_g":              29.5888195,  // · 0.23 q/0.98
		"icing.water_to_add_g":              54.95066478, // · 65/35
		"icing.batter_g":                    261.3893956,
		"icing.superfat_low_percent":        4.166666667, // 1 - 0.23/0.24
		"icing.superfat_high_percent":       11.53846154, // 1 - 0.23/0.26
		"icing.superfat_as_weighed_percent": 8.353942914, // 1 - 29.5·0.98/q/(177·0.25)
		"icing.jugs[0].superfat_percent":    8.04,        // 1 - (0.23 - 0.0001)/0.25
		"icing.jugs[0].scents[0].g":         1.768499113,
		"icing.jugs[0].total_g":             262.7684991, // 261 + 1.7685
		"bars.icing_per_bar_g":              25,
		"bars.cut_g":                        181.2014516, // 1585.8015·0.985/10 + 25; 1448.6048 + 52.1498 + 55.0470 + 30 are poured
		"bars.cured_g":                      155.6110331, // (1225.9414·0.985/0.90 + 207.6155·0.95/0.92)/10: without water and impurity
	})
	if got["icing.oils[0].name"] != "birch" {
		t.Errorf("the icing is of %v", got["icing.oils[0].name"])
	}
	// (20·0.985 + 1.7685·0.95)/1556.1103; the base's alone would be 1.266 % of the bar and under the limit of 1.3.
	for i, b := range s.Batches() {
		equal(t, "hay in the bar", b.Scents[0].InBarPercent, 1.373943334, 1e-8)
		if w := s.Warnings[slices.IndexFunc(s.Warnings, func(w pour.Warning) bool { return w.Code == "scent-over-limit" })+i]; w.Where != string(b.Name)+" scent hay" {
			t.Errorf("%s: 1.37 %% of the bar is hay, 1.3 may be: said %+v", b.Name, w)
		}
	}
	equal(t, "rose in the bar", s.Base.Scents[1].InBarPercent, 0.6329885358, 1e-8) // 10·0.985/1556.1103
	for i, want := range []float64{1.269333897, 12.91718409, 1.269333897} {        // as the batch's, the jugs' parts 724, 435 and 290 of 1449
		equal(t, s.Base.Jugs[i].Name+" as weighed", s.Base.Jugs[i].Superfat.AsWeighedPercent, want, 1e-8)
	}
}

// A stock lye of 50 %, milk there before it, the colour in birch oil on top.
func TestByHandStockLyeAndMilk(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	b := &p.Base
	p.Show.LyeStepG, p.Mould.LossPercent = 0.5, 2
	b.OilsG, b.Oils, b.CarrierOil = 800, []pour.OilPart{{Oil: "amber", Percent: 100}}, "birch"
	b.SuperfatPercent, b.LyeConcentrationPercent, b.StockLyePercent, b.FinalMoisturePercent = 6, 30, 50, 12
	b.Extras = []pour.ExtraPart{{Extra: "milk", PercentOfOils: 15, In: pour.InWater}}
	b.Jugs = []pour.Jug{
		{Name: "pot", SharePercent: 50},
		{Name: "black", SharePercent: 50, Colourants: []pour.Dose{{Colourant: "coal", DosePercent: 1, CarrierParts: 4}}},
	}
	agree(t, pour.Weigh(p, shelf), map[string]float64{
		"base.naoh_pure_g":               101.8573735, // 800·0.19·0.94 q
		"base.naoh_weighed_g":            0,
		"base.koh_weighed_g":             0,
		"base.stock_lye_g":               203.714747,  // ÷ 0.5
		"base.water_in_extras_g":         105.6,       // 120·0.88
		"base.water_to_add_g":            30.20983134, // 101.8574·70/30 - 101.8574 - 105.6
		"base.lye_concentration_percent": 30,
		"base.lye_as_mixed_percent":      30,           // the milk is there
		"base.lye_rise_k":                math.NaN(),   // it is dissolved already
		"base.batter_g":                  1153.924578,  // 800 + 203.7147 + 30.2098 + 120
		"base.superfat_low_percent":      0.7777777778, // 1 - 142.88/144
		"base.superfat_high_percent":     10.7,         // 1 - 142.88/160
		// 203.5 g of stock: 1 - 101.75/q/(152 + 120·0.04·0.23)
		"base.superfat_as_weighed_percent":     6.776189863,
		"base.jugs[0].superfat_percent":        6.677813774, // 1 - 142.88/(152 + 1.104)
		"base.jugs[0].superfat_low_percent":    1.532693792, // 1 - 142.88/(144 + 1.104)
		"base.jugs[1].colourants[0].carrier_g": 23.07849157, // 576.9623·0.01·4
		"base.jugs[1].superfat_percent":        13.21842611, // 1 - 71.44/(76.552 + 23.0785·0.25)
		"base.jugs[1].superfat_low_percent":    8.516796782, // 1 - 71.44/(72.552 + 23.0785·0.24)
		"base.jugs[1].total_g":                 605.8481145, // 577 + 5.7696 + 23.0785
		"bars.cut_g":                           115.9117239, // (1153.9246 + 28.8481)·0.98/10
		"bars.cured_g":                         105.2503839, // (800 + 101.8574 + 120 - 105.6 + 28.8481)·0.98/0.88/10
		"bars.icing_per_bar_g":                 math.NaN(),
	})
}

// Two impure alkalis, two fifths KOH by moles; vinegar, which takes some and brings water late; colours in water and in glycerin; a slab.
func TestByHandMixedAlkaliAndVinegar(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	b := &p.Base
	p.Show.LyeStepG = 0.2
	p.Mould = pour.Mould{Shape: "slab", LengthMM: 240, WidthMM: 180, HeightMM: 60, FillMM: 40, BarMM: 45, BarWidthMM: 60}
	b.Oils = []pour.OilPart{{Oil: "amber", Percent: 50}, {Oil: "birch", Percent: 50}}
	b.SuperfatPercent, b.LyeConcentrationPercent, b.FinalMoisturePercent = 3, 35, 15
	b.KOHSharePercent, b.NaOHPurityPercent, b.KOHPurityPercent = 40, 97, 88
	b.Extras = []pour.ExtraPart{{Extra: "vinegar", PercentOfOils: 5}}
	b.Jugs = []pour.Jug{
		{Name: "pot", SharePercent: 75, Colourants: []pour.Dose{{Colourant: "clay", DosePercent: 2, CarrierParts: 3}}},
		{Name: "black", SharePercent: 25, Colourants: []pour.Dose{{Colourant: "coal", DosePercent: 4, Carrier: pour.CarryGlycerin, CarrierParts: 2.5}}},
	}
	agree(t, pour.Weigh(p, shelf), map[string]float64{
		// 500·0.19 + 500·0.25 = 220 g KOH, the vinegar 50·0.047 = 2.35: 220·0.97 + 2.35 = 215.75.
		"base.koh_pure_g":            86.3,        // · 0.4
		"base.naoh_pure_g":           92.28329367, // · 0.6 q
		"base.koh_weighed_g":         98.06818182, // ÷ 0.88
		"base.naoh_weighed_g":        95.13741616, // ÷ 0.97
		"base.water_in_extras_g":     47,
		"base.water_to_add_g":        311.8103962,  // 193.2056·65/35 - 47
		"base.lye_as_mixed_percent":  38.25732258,  // 193.2056/(193.2056 + 311.8104)
		"base.batter_g":              1555.015994,  // 1000 + 193.2056 + 311.8104 + 50
		"base.superfat_low_percent":  -1.619047619, // 1 - 213.4/210
		"base.superfat_high_percent": 7.217391304,  // 1 - 213.4/230
		// 95.0 g and 98.0 g on the scale: 1 - (95·0.97/q + 98·0.88 - 2.35)/220
		"base.superfat_as_weighed_percent":     3.112262335,
		"base.jugs[0].superfat_percent":        3, // neither water nor glycerin is fat
		"base.jugs[1].superfat_percent":        3,
		"base.jugs[0].colourants[0].pigment_g": 23.32523991, // 1166.2620·0.02
		"base.jugs[0].colourants[0].carrier_g": 69.97571974,
		"base.jugs[1].colourants[0].pigment_g": 15.55015994, // 388.7540·0.04
		"base.jugs[1].colourants[0].carrier_g": 38.87539986,
		"bars.bar_count":                       15,          // 5 of 45 mm by 3 of 60 mm
		"bars.cut_g":                           106.4214071, // 1702.7425·45/240·60/180
		"bars.cured_g":                         92.5980951,  // (1000 + 178.5833 + 50 - 47 + 23.3252 + 15.5502 + 38.8754)/0.85/16: no water, no impurity
	})
}

// Sized by the mould: 250·80·60 mm hold 1200 mL, of a batter of 40 °C whose lye of 32 % has 1.3362 g/mL (the table's own value at 40 °C).
func TestByHandABatterFillsItsMould(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	b := &p.Base
	p.Show.LyeStepG, p.Mould.LossPercent = 0.01, 2
	b.Size, b.CarrierOil = pour.SizeMould, "birch"
	b.Extras = []pour.ExtraPart{{Extra: "salt", PercentOfOils: 2}, {Extra: "syrup", PercentOfOils: 3}}
	b.Jugs[0].Colourants = []pour.Dose{{Colourant: "coal", DosePercent: 1}}
	b.Scents = []pour.ScentPart{{Scent: "hay", PercentOfOils: 2}}
	// A kilogram of oils: 144.9300 g NaOH and 307.9763 g water, 6 of it the syrup's; 1496.9064 g of batter in 600/0.9066 + 400/0.9166 +
	// 452.9064/1.3362 + 20/2 + 24/1.5 = 1463.1598 mL; 14.9691/3.5 + 74.8453/0.915 + 20/0.95 = 107.1277 mL on top; 1200/(1570.2874·0.98) = 0.779787.
	agree(t, pour.Weigh(p, shelf), map[string]float64{
		"base.oils_g":                          779.787037,
		"base.oils[0].g":                       467.8722222,
		"base.oils[1].g":                       311.9148148,
		"base.naoh_weighed_g":                  113.014566,
		"base.water_to_add_g":                  235.4772306,
		"base.water_in_extras_g":               4.678722222,
		"base.lye_as_mixed_percent":            32.42962019, // 144.9300/(144.9300 + 301.9763): the syrup joins later
		"base.batter_g":                        1167.268185,
		"base.batter_ml":                       1140.953028,
		"base.superfat_as_weighed_percent":     5.029774945, // 1 - 113.01/q/(468·0.19 + 312·0.25)
		"base.jugs[0].colourants[0].pigment_g": 11.67268185,
		"base.jugs[0].colourants[0].carrier_g": 58.36340927,
		"base.jugs[0].superfat_percent":        12.72448991, // 1 - (203.3 - 20·0.010)/(214 + 74.8453·0.25)
		"base.jugs[0].superfat_low_percent":    8.408107146, // 1 - 203.3/(204 + 74.8453·0.24)
		"base.jugs[0].scents[0].g":             15.59574074,
		"bars.cut_g":                           122.7842017, // 1606.7208 g for a kilogram of oils · 0.98 · 0.779787/10
		"bars.cured_g":                         110.2765759, // (1000 + 144.9300 + 44 + 14.9691 + 74.8453 + 20)·0.98·0.779787/0.90/10
	})
}

// Three fifths of the pure alkali's mass are KOH: 0.6/56.1053 ÷ (0.6/56.1053 + 0.4/39.99677) = 51.675 % of the moles.
func TestByHandKOHByMass(t *testing.T) {
	p, shelf := handMade(t), roundShelf(t)
	b := &p.Base
	b.Oils, b.LyeConcentrationPercent = []pour.OilPart{{Oil: "amber", Percent: 100}}, 100.0/3
	b.KOHSharePercent, b.KOHShareBy, b.NaOHPurityPercent, b.KOHPurityPercent = 60, pour.ShareMass, 99, 90
	agree(t, pour.Weigh(p, shelf), map[string]float64{
		"base.koh_pure_g":                  93.27375571, // 180.5 · 0.51675
		"base.naoh_pure_g":                 62.18250381, // 180.5 · 0.48325 q
		"base.koh_weighed_g":               103.6375063, // ÷ 0.90
		"base.naoh_weighed_g":              62.81060991, // ÷ 0.99
		"base.water_to_add_g":              332.8962325, // twice the two
		"base.lye_rise_k":                  math.NaN(),  // no table of so much KOH is known
		"base.superfat_as_weighed_percent": 5.02552099,  // 1 - (62.8·0.99/q + 103.6·0.90)/190
	})
}
