package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

// plainBase is the demo plan without icing, extras and scents, of 1000 g of the oils given, percent by id, its batter measured.
func plainBase(t testing.TB, batterC float64, oils map[string]float64) (pour.Plan, pour.Shelf) {
	t.Helper()
	p, shelf := shelved(t)
	p.Icing, p.Base.Extras, p.Base.Scents = nil, nil, nil
	p.Base.Size, p.Base.OilsG = pour.SizeOils, 1000
	p.Base.BatterMeasured, p.Base.BatterC = true, batterC
	p.Base.Oils, p.Base.ReadyBlend, p.Base.CarrierOil = nil, "", ""
	for id, percent := range oils {
		if _, ok := shelf.Oil(id); !ok {
			t.Fatalf("no %s on the shelf", id)
		}
		p.Base.Oils = append(p.Base.Oils, pour.OilPart{Oil: id, Percent: percent})
	}
	slices.SortFunc(p.Base.Oils, func(a, b pour.OilPart) int { return strings.Compare(a.Oil, b.Oil) })
	if faults := p.Check(shelf); len(faults) > 0 {
		t.Fatal(faults)
	}
	return p, shelf
}

// told is what the clock is told of the base.
func told(t testing.TB, p pour.Plan, shelf pour.Shelf) clock.Batter {
	t.Helper()
	b, ok := pour.Weigh(p, shelf).ClockBatter(pour.Base, shelf)
	if !ok {
		t.Fatal("there is no base")
	}
	return b
}

func TestTenPercentOfStearicAcidIsFalseTraceAndSaysSo(t *testing.T) {
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 60, "coconut": 30, "stearic-acid": 10})
	s := pour.Work(p, shelf, pour.Hand{})
	// Trace model 2.1: X0 = 0.30 · FFA. Olive is stated at 0.5 %, coconut at 0.2 %: FFA = 0.60·0.005 + 0.30·0.002 + 0.10 = 0.1036, so
	// X0 = 0.0311, past medium (0.025) and short of thick (0.045) at lye-in.
	equal(t, "free acid", told(t, p, shelf).FFA, 0.1036, 1e-9)
	pot := s.Base.Jugs[0]
	for _, stage := range []chem.Stage{chem.Emulsion, chem.Light, chem.Medium} {
		if at := pot.Clock.Stages[stage]; !at.High.Known || at.High.V != 0 {
			t.Errorf("%v at %+v, not at lye-in", stage, at)
		}
	}
	if !(pot.Clock.Stages[chem.Thick].Low.V > 0) {
		t.Errorf("thick at %+v", pot.Clock.Stages[chem.Thick])
	}
	if w, ok := found(s, "false-trace"); !ok || !strings.Contains(w.Text, "10 % of the oils") || !strings.Contains(w.Text, "medium") {
		t.Errorf("the warning is %+v, %v", w, ok)
	}
}

func TestFreeAcidIsSaidWhereTheClockRefusesToo(t *testing.T) {
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 70, "stearic-acid": 30})
	s := pour.Work(p, shelf, pour.Hand{})
	if _, ok := found(s, "clock-refused"); !ok || s.Base.Refused.Times == "" {
		t.Error("30 % of free acid is not refused")
	}
	if w, ok := found(s, "false-trace"); !ok || !strings.Contains(w.Text, "turns to soap") {
		t.Errorf("the warning is %+v, %v", w, ok)
	}
}

func TestUnrefinedOilsMoveTheClock(t *testing.T) {
	blend := map[string]float64{"olive": 40, "coconut": 30, "shea": 30}
	p, shelf := plainBase(t, 35, blend)
	at := func(percent pour.Figure) (clock.Batter, pour.Sheet) {
		own := shelf
		own.Oils = slices.Clone(shelf.Oils)
		for i := range own.Oils {
			if own.Oils[i].ID == "shea" {
				own.Oils[i].FreeAcidPercent = percent
			}
		}
		return told(t, p, own), pour.Work(p, own, pour.Hand{})
	}
	// Olive 0.5 %, coconut 0.2 %; shea unstated counts as refined, 0.3 %: 0.0020 + 0.0006 + 0.0009.
	unstated, plain := at(pour.Figure{})
	equal(t, "unstated", unstated.FFA, 0.0035, 1e-12)
	crude, quick := at(pour.Know(6))
	equal(t, "6 % in shea", crude.FFA, 0.0026+0.30*0.06, 1e-12)
	little, _ := at(pour.Know(3)) // 0.9 % of the blend: too little for its lot to matter
	if unstated.CrudeOil || little.CrudeOil || !crude.CrudeOil {
		t.Errorf("crude: %v unstated, %v at 3 %%, %v at 6 %%", unstated.CrudeOil, little.CrudeOil, crude.CrudeOil)
	}
	before, after := plain.Base.Jugs[0].Clock.Stages[chem.Medium].Mid.V, quick.Base.Jugs[0].Clock.Stages[chem.Medium].Mid.V
	// Trace model 4.3: 1 % brings medium to 0.83 to 0.87 of its time, 3 % to 0.38 to 0.55; 2.06 % lies between.
	if ratio := after / before; ratio < 0.38 || ratio > 0.87 {
		t.Errorf("medium goes from %v to %v min, a factor of %v", before, after, ratio)
	}
	// Section 6: +0.4 in quadrature where the lot's own free acid is not known.
	equal(t, "sigma", math.Sqrt(plain.Base.Sigma*plain.Base.Sigma+0.16), quick.Base.Sigma, 1e-9)
	if w, ok := found(quick, "clock-wide"); !ok || !strings.Contains(w.Text, "free acid") {
		t.Errorf("the warning is %+v, %v", w, ok)
	}
}

func TestAnAcidThatSaysHowMuchIsTakenAtItsWord(t *testing.T) {
	// Pine tar is of the acid kind, but 33 % of it: 0.03·0.33 + 0.97·0.005.
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 97, "pine-tar": 3})
	b := told(t, p, shelf)
	equal(t, "free acid", b.FFA, 0.03*0.33+0.97*0.005, 1e-12)
	if b.CrudeOil {
		t.Error("a tar whose acid is stated is called a crude oil")
	}
}

func TestAFreeAcidThatSaysNothingIsAllOfIt(t *testing.T) {
	p, shelf := plainBase(t, 60, map[string]float64{"olive": 92, "stearic-acid": 8})
	for i := range shelf.Oils {
		shelf.Oils[i].FreeAcidPercent = pour.Figure{}
	}
	equal(t, "free acid", told(t, p, shelf).FFA, 0.08+0.92*0.003, 1e-12) // trace model 2.3: 0.3 % where nothing is stated
}

func TestNoFreeAcidIsNotUnknownFreeAcid(t *testing.T) {
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 100})
	for i := range shelf.Oils {
		if shelf.Oils[i].ID == "olive" {
			shelf.Oils[i].FreeAcidPercent = pour.Know(0)
		}
	}
	if ffa := told(t, p, shelf).FFA; !(ffa > 0 && ffa < 1e-6) {
		t.Errorf("oil without free acid is told as %v", ffa)
	}
}

func TestExtrasActByTheirDose(t *testing.T) {
	p, shelf := plainBase(t, 35, map[string]float64{"olive": 45, "coconut": 30, "palm": 25})
	medium := func(id string, percent float64) (float64, pour.Sheet) {
		p.Base.Extras = []pour.ExtraPart{{Extra: id, PercentOfOils: percent}}
		s := pour.Work(p, shelf, pour.Hand{})
		return s.Base.Jugs[0].Clock.Stages[chem.Medium].Mid.V, s
	}
	// Sugar is stated at 2 % of oils with factor 1.2: what the clock is told at 3 % is 1.2 at 2 %, dosed 3.
	sugar, ok := shelf.Extra("sugar")
	if !ok || sugar.ClockFactor != 1.2 || sugar.ClockDosePercent() != 2 {
		t.Fatalf("sugar is %+v", sugar)
	}
	none, _ := medium("sugar", 0.001)
	one, _ := medium("sugar", 1)
	three, wide := medium("sugar", 3)
	if !(three < one && one < none) {
		t.Errorf("medium at %v, %v and %v min with 0, 1 and 3 %% of sugar", none, one, three)
	}
	additive := told(t, p, shelf).Additives[0]
	if additive.Percent != 3 || additive.AtPercent != 2 || additive.Factor != 1.2 || !additive.Heat {
		t.Errorf("the clock is told %+v", additive)
	}
	// Widening, trace model 2.4 and 6: (1.5·0.2)² for the dose and 0.2² for its heat.
	p.Base.Extras = nil
	plain := pour.Work(p, shelf, pour.Hand{})
	equal(t, "sigma", wide.Base.Sigma, math.Sqrt(plain.Base.Sigma*plain.Base.Sigma+0.09+0.04), 1e-3) // the sugar moves nothing else here
	_, salty := medium("salt", 50)
	if w, ok := found(salty, "clock-wide"); !ok || !strings.Contains(w.Text, "salt") || salty.Base.Sigma < plain.Base.Sigma+0.2 {
		t.Errorf("a bar of salt: %+v, %v, sigma %v", w, ok, salty.Base.Sigma)
	}
	if _, heap := medium("sugar", 9); !strings.Contains(heap.Base.Refused.Times, "sugar stands at 9 %") {
		t.Errorf("9 %% of sugar: %q", heap.Base.Refused.Times)
	}
}

func TestTitaniumWhiteInTheBatchSpeedsItALittle(t *testing.T) {
	// Trace model 2.4: clay or titanium dioxide 1.1, sd 0.2.
	_, shelf := shelved(t)
	for _, c := range shelf.Colourants {
		x, _ := shelf.Extra(c.ID)
		want := 1.0
		if c.Titanium {
			want = 1.1
		}
		if _, own := extraEntry(shelf, c.ID); !own && x.ClockFactor != want {
			t.Errorf("%s has a factor of %v, want %v", c.ID, x.ClockFactor, want)
		}
	}
}

func extraEntry(shelf pour.Shelf, id string) (pour.Extra, bool) {
	for _, x := range shelf.Extras {
		if x.ID == id {
			return x, true
		}
	}
	return pour.Extra{}, false
}

func TestWaxIsInTheCloudPoint(t *testing.T) {
	// 4 % of beeswax in olive oil, by the ideal solubility of chem's own test: olive at 190 mg KOH/g is 885.9 g/mol. x = (40/677.2)/(40/677.2 +
	// 960/885.9) = 0.0517; 64 °C and 175 J/g: 1/T = 1/337.15 - 8.3145·ln(0.0517)/118510, T = 314.9 K = 41.8 °C. At 38 °C that is false trace.
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 96, "beeswax": 4})
	s := pour.Work(p, shelf, pour.Hand{})
	equal(t, "cloud point", s.Base.Heat.CloudC.V, 41.8, 0.3)
	if w, ok := found(s, "false-trace"); !ok || !strings.Contains(w.Text, "fat may be setting") {
		t.Errorf("the warning is %+v, %v", w, ok)
	}
	p.Base.BatterC = 55
	if _, ok := found(pour.Work(p, shelf, pour.Hand{}), "false-trace"); ok {
		t.Error("a batter that stays 3 K over its cloud point until it is stiff is called false trace")
	}
	p, shelf = plainBase(t, 38, map[string]float64{"olive": 97, "pine-tar": 3})
	if c := pour.Weigh(p, shelf).Base.Heat.CloudC; !c.Known || c.V > 25 {
		t.Errorf("3 %% of a liquid tar cloud at %+v", c)
	}
}

func TestAnUnknownCloudPointIsNoFigure(t *testing.T) {
	p, shelf := plainBase(t, 38, map[string]float64{"olive": 100})
	for i := range shelf.Oils {
		shelf.Oils[i].Fat.Profile = chem.Profile{}
	}
	if c := pour.Weigh(p, shelf).Base.Heat.CloudC; c.Known {
		t.Errorf("oils without fatty acids cloud at %v", c.V)
	}
}

func TestStagesOfEveryPlanComeInOrder(t *testing.T) {
	plan, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t, plan, shelf)
		p.Base.BatterMeasured, p.Base.BatterC = true, rapid.Float64Range(20, 60).Draw(t, "warmth")
		if rapid.Bool().Draw(t, "by hand") {
			p.Base.Blend = nil
		}
		s := pour.Weigh(p, shelf).Time(shelf, pour.Hand{})
		for _, b := range s.Batches() {
			for _, j := range b.Jugs {
				for k := 1; k < chem.Stages; k++ {
					a, z := j.Clock.Stages[k-1], j.Clock.Stages[k]
					for _, pair := range [][2]pour.Figure{{a.Low, z.Low}, {a.Mid, z.Mid}, {a.High, z.High}} {
						if pair[1].Known && (!pair[0].Known || pair[0].V > pair[1].V) {
							t.Fatalf("%s: %v %+v before %v %+v", j.Name, chem.Stage(k), z, chem.Stage(k-1), a)
						}
					}
				}
			}
		}
	})
}
