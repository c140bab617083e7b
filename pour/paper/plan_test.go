package paper

import (
	"time"

	"pourbench/chem"
	"pourbench/pour"
)

// testShelf is a small shelf with rounded figures of the kind a real one holds: these tests are about paper, not about chemistry.
func testShelf() pour.Shelf {
	return pour.Shelf{
		Oils: []pour.Oil{
			{ID: "olive", Name: "olive oil", Fat: oil(184, 190, 196, chem.Profile{chem.C16: 0.12, chem.C18: 0.03, chem.C18x1: 0.74, chem.C18x2: 0.11})},
			{ID: "coconut", Name: "coconut oil", Fat: oil(248, 257, 265, chem.Profile{chem.C8: 0.08, chem.C10: 0.06, chem.C12: 0.48, chem.C14: 0.2, chem.C16: 0.1, chem.C18x1: 0.08})},
		},
		Colourants: []pour.Colourant{
			{ID: "white", Name: "titanium white", Disperse: pour.DisperseOil, DoseLowPercent: 0.2, DoseHighPercent: 1, CarrierParts: 2, Alkali: pour.AlkaliStable, Dust: true, Titanium: true, White: true, BulkGML: 0.8},
			{ID: "blue", Name: "ultramarine blue", Disperse: pour.DisperseWater, DoseLowPercent: 0.1, DoseHighPercent: 1, CarrierParts: 3, Alkali: pour.AlkaliStable, Dust: true},
			{ID: "beet", Name: "beetroot", Disperse: pour.DisperseWater, DoseLowPercent: 0.1, DoseHighPercent: 1, Alkali: pour.AlkaliDies, AlkaliNote: "turns tan"},
		},
		Extras: []pour.Extra{
			{ID: "sugar", Name: "sugar", Kind: pour.ExtraSugar, In: pour.InLye, DensityGML: 1.59, ClockFactor: 1, Caution: "heats the lye"},
			{ID: "milk", Name: "goat's milk", Kind: pour.ExtraMilk, In: pour.InLye, WaterPercent: 87, DensityGML: 1.03, ClockFactor: 1},
			{ID: "clay", Name: "white clay", Kind: pour.ExtraClay, In: pour.InOils, DensityGML: 2.6, ClockFactor: 1},
		},
		Scents: []pour.Scent{
			{ID: "hay", Name: "meadow hay", Behaviour: pour.BehaviourNone, LimitPercent: 5, DensityGML: 0.95},
			{ID: "clove", Name: "clove bud", Behaviour: pour.BehaviourStrong, LimitPercent: 0.5, DensityGML: 1.04, VanillinPercent: 0},
			{ID: "pudding", Name: "pudding", Behaviour: pour.BehaviourFast, LimitPercent: 3, VanillinPercent: 8},
		},
		Toppings: []pour.ToppingMaterial{
			{ID: "salt", Name: "coarse salt", Kind: pour.ToppingGrain, When: pour.StrewSkin, Use: pour.ToppingUse{SizeMM: 2, DensityGML: 2.165, CoverHighPercent: 15, StaysPercent: 100, HandsS: 4}},
		},
		Techniques: []pour.Technique{{ID: "hanger", Name: "hanger swirl", Kind: "hanger", From: chem.Emulsion, To: chem.Light, Passes: 3, Do: "pour the jugs side by side, then draw a hanger through"}},
	}
}

func oil(low, mid, high float64, p chem.Profile) chem.Fat {
	return chem.Fat{Kind: chem.Triglyceride, SapLow: low, Sap: mid, SapHigh: high, UnsaponifiableGKg: 10, Profile: p, DensityGML: 0.915, DensityC: 20}
}

// testPlan has every part a plan can have.
func testPlan() pour.Plan {
	icing := testBatch()
	icing.Size, icing.PerBarG, icing.LossPercent, icing.StartAtMin, icing.OilsC, icing.LyeC = pour.SizeBar, 25, 8, 30, 30, 28
	icing.Jugs = []pour.Jug{
		{Name: "cream", SharePercent: 70, Colourants: []pour.Dose{{Colourant: "white", DosePercent: 0.6}}},
		{Name: "sky", SharePercent: 30, Colourants: []pour.Dose{{Colourant: "blue", DosePercent: 0.3}}},
	}
	icing.Extras = []pour.ExtraPart{{Extra: "milk", PercentOfOils: 4}}
	icing.Scents = []pour.ScentPart{{Scent: "hay", PercentOfOils: 1, Into: []string{"cream"}, AtMin: 3}}
	return pour.Plan{
		Name: "Test Meadow", Show: pour.Show{Mass: "g", Temperature: "C", Length: "mm", ScaleStepG: 1, LyeStepG: 0.1},
		PourAt: time.Date(2026, 12, 5, 10, 0, 0, 0, time.UTC),
		Mould:  pour.Mould{Shape: "loaf", LengthMM: 250, WidthMM: 80, HeightMM: 75, FillMM: 62, BarMM: 25, LossPercent: 1.5},
		Room:   pour.Room{TemperatureC: 21}, Swirl: pour.Swirl{Technique: "hanger"},
		Bed:  pour.Bed{Keep: pour.BedInsulate, CutAfterH: 20, CureDays: 28},
		Run:  pour.RunPlan{SplitMin: 0.5, StirMin: 0.5, ScentMin: 0.5, PourMin: 0.75, PipeMin: 4, BedMin: 2},
		Base: testBatch(), Icing: &icing,
	}
}

func testBatch() pour.Batch {
	return pour.Batch{
		Size: pour.SizeMould, SuperfatPercent: 5, LyeConcentrationPercent: 33, NaOHPurityPercent: 100, KOHPurityPercent: 90, OilsC: 36, LyeC: 34,
		Blend: []pour.Burst{{AtMin: 0, S: 20}, {AtMin: 0.5, S: 10}}, SplitAtMin: 2, FinalMoisturePercent: 10, Carrier: pour.CarrierExtra, CarrierOil: "olive",
		Oils:   []pour.OilPart{{Oil: "olive", Percent: 70}, {Oil: "coconut", Percent: 30}},
		Extras: []pour.ExtraPart{{Extra: "sugar", PercentOfOils: 1.37}, {Extra: "clay", PercentOfOils: 1}},
		Jugs: []pour.Jug{
			{Name: "pot", SharePercent: 50, Colourants: []pour.Dose{{Colourant: "white", DosePercent: 0.5}}},
			{Name: "gentian", SharePercent: 30, CapacityML: 300, Colourants: []pour.Dose{{Colourant: "blue", DosePercent: 0.45}}},
			{Name: "poppy", SharePercent: 20, Colourants: []pour.Dose{{Colourant: "beet", DosePercent: 0.4}}},
		},
		Scents: []pour.ScentPart{{Scent: "hay", PercentOfOils: 2, Into: []string{"pot", "poppy"}, AtMin: 4}},
	}
}

func work(p pour.Plan) pour.Sheet { return pour.Work(p, testShelf(), pour.Hand{}) }

func print(p pour.Plan) string { return Checklist(work(p), testShelf()) }

// everyPaper is all papers of a plan that a pour is made from.
func everyPaper(p pour.Plan) []string {
	s := work(p)
	return []string{Checklist(s, testShelf()), Bench(s, testShelf(), false), Bench(s, testShelf(), true)}
}
