package pour_test

import (
	"slices"
	"testing"

	"pourbench/chem"
	"pourbench/chem/clock"
	"pourbench/pour"
)

// stated sets what the shelf says of an oil's free acid, percent of its mass.
func stated(shelf pour.Shelf, percent map[string]pour.Figure) pour.Shelf {
	shelf.Oils = slices.Clone(shelf.Oils)
	for i := range shelf.Oils {
		if f, ok := percent[shelf.Oils[i].ID]; ok {
			shelf.Oils[i].FreeAcidPercent = f
		}
	}
	return shelf
}

// A mean by mass, 0.3 % where nothing is stated (reference of the clock) and all of a free acid. Over 1 % an oil is no refined one, and
// where such oils bring more than 0.3 % of the batch the maker's own lot decides.
func TestTheClockIsToldOfFreeAcid(t *testing.T) {
	for _, c := range []struct {
		olive, coconut pour.Figure
		stearic        float64 // percent of the oils, off the coconut's 40
		want           float64 // percent
		crude          bool
	}{
		{pour.Figure{}, pour.Figure{}, 0, 0.3, false},
		{pour.Know(0.1), pour.Know(0.2), 0, 0.6*0.1 + 0.4*0.2, false},
		{pour.Know(2), pour.Know(0.2), 0, 0.6*2 + 0.4*0.2, true},
		{pour.Know(2), pour.Figure{}, 0, 0.6*2 + 0.4*0.3, true},
		{pour.Know(0.2), pour.Know(0.6), 0, 0.6*0.2 + 0.4*0.6, false}, // much of it, but in refined oils
		{pour.Know(0.1), pour.Know(0.2), 10, 0.6*0.1 + 0.3*0.2 + 10, false},
		{pour.Know(0), pour.Know(0), 0, 0, false},
	} {
		p, shelf := halves(t)
		p.Base.Carrier = pour.CarrierExtra
		p.Base.Oils[1].Percent = 40 - c.stearic
		if c.stearic > 0 {
			p.Base.Oils = append(p.Base.Oils, pour.OilPart{Oil: "stearic-acid", Percent: c.stearic})
		}
		b := told(t, p, stated(shelf, map[string]pour.Figure{"olive": c.olive, "coconut": c.coconut}))
		equal(t, "free acid, %", b.FFA*100, c.want, 1e-6)
		if b.CrudeOil != c.crude || b.FFA == 0 { // 0 means not known to the clock
			t.Errorf("%+v: %v of free acid, of a lot that decides: %v", c, b.FFA, b.CrudeOil)
		}
	}
}

// 10 % of stearic acid, 38 °C: 0.3·0.1 = 0.030 of conversion as lye comes in, past medium's 0.025 (trace model).
func TestFreeAcidThatTurnsToSoapAtOnceIsSaid(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Carrier, p.Base.SuperfatPercent = pour.CarrierExtra, 5
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 30}, {Oil: "stearic-acid", Percent: 10}}
	p.Base.BatterMeasured, p.Base.BatterC = true, 60
	s := pour.Work(p, shelf, pour.Hand{})
	w, ok := found(s, "false-trace")
	if !ok || w.Severity != pour.Caution || s.Base.Refused.Times != "" {
		t.Errorf("said %+v, the clock %q", w, s.Base.Refused.Times)
	}
	p.Base.KOHSharePercent, p.Base.KOHPurityPercent = 50, 90 // the clock knows no dual lye: the soap comes all the same
	s = pour.Work(p, shelf, pour.Hand{})
	if _, ok = found(s, "false-trace"); !ok || s.Base.Refused.Times == "" {
		t.Errorf("a batch the clock refuses (%q) is false trace %v", s.Base.Refused.Times, ok)
	}
}

func TestTheClockIsToldOfEveryExtraAtItsDose(t *testing.T) {
	p, shelf := halves(t)
	shelf.Extras = []pour.Extra{
		{ID: "syrup", Name: "syrup", Kind: pour.ExtraSugar, In: pour.InOils, ClockFactor: 1.2, ClockSD: 0.2, ClockAtPercent: 2, DoseLowPercent: 1, DoseHighPercent: 9},
		{ID: "whey", Name: "whey", Kind: pour.ExtraMilk, In: pour.InLye, ClockFactor: 1.1, ClockSD: 0.1, DoseLowPercent: 4, DoseHighPercent: 10},
		{ID: "ale", Name: "ale", Kind: pour.ExtraAlcohol, In: pour.InLye, ClockFactor: 1.5, ClockSD: 0.2, ClockAtPercent: 20},
		{ID: "sure", Name: "sure", Kind: pour.ExtraPlain, In: pour.InOils, ClockFactor: 1},
		{ID: "doubt", Name: "doubt", Kind: pour.ExtraSalt, In: pour.InLye, ClockFactor: 1, ClockSD: 0.2, DoseLowPercent: 0.5, DoseHighPercent: 2.5},
	}
	for i, x := range shelf.Extras {
		p.Base.Extras = append(p.Base.Extras, pour.ExtraPart{Extra: x.ID, PercentOfOils: float64(i) + 1})
	}
	want := []clock.Additive{
		{Name: "syrup", Factor: 1.2, SD: 0.2, Percent: 1, AtPercent: 2, Heat: true},
		{Name: "whey", Factor: 1.1, SD: 0.1, Percent: 2, AtPercent: 7, Heat: true},
		{Name: "ale", Factor: 1.5, SD: 0.2, Percent: 3, AtPercent: 20, Alcohol: true},
		{Name: "doubt", Factor: 1, SD: 0.2, Percent: 5, AtPercent: 1.5},
	}
	if got := told(t, p, shelf).Additives; !slices.Equal(got, want) {
		t.Errorf("the clock is told\n%+v, want\n%+v", got, want)
	}
}

// What is no fat, and castor, in parts of all oils; a wax sets where its solubility says, far over the oils' own cloud point.
func TestTheClockIsToldOfWaxCastorAndCloud(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Carrier = pour.CarrierExtra
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 27}, {Oil: "castor", Percent: 10}, {Oil: "beeswax", Percent: 3}}
	b := told(t, p, shelf)
	equal(t, "wax", b.WaxFraction, 0.03, 1e-12)
	equal(t, "castor", b.CastorFraction, 0.10, 1e-12)
	waxed := b.CloudC
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 60}, {Oil: "coconut", Percent: 30}, {Oil: "castor", Percent: 10}}
	b = told(t, p, shelf)
	if !b.CloudKnown || b.WaxFraction != 0 || waxed < b.CloudC+10 {
		t.Errorf("with wax the cloud point is %.1f, without %.1f °C (known %v)", waxed, b.CloudC, b.CloudKnown)
	}
	shelf.Oils = append(slices.Clone(shelf.Oils), pour.Oil{ID: "ester", Name: "ester", Fat: chem.Fat{Kind: chem.WaxEster, Sap: 90, DensityGML: 0.86, DensityC: 25}})
	p.Base.Oils = []pour.OilPart{{Oil: "olive", Percent: 96}, {Oil: "ester", Percent: 4}}
	equal(t, "a liquid wax ester", told(t, p, shelf).WaxFraction, 0.04, 1e-12)
}

// NaOH of 90 %: of 100 g of lye at 33 %, 33 g are alkali as weighed and 29.7 g pure.
func TestTheClockIsToldOfPureAlkali(t *testing.T) {
	p, shelf := halves(t)
	p.Base.NaOHPurityPercent = 90
	equal(t, "concentration", told(t, p, shelf).Concentration, 0.297, 1e-12)
	p.Base.KOHSharePercent, p.Base.KOHShareBy = 60, pour.ShareMass // 60 g and 40 g in moles
	equal(t, "KOH of the moles", told(t, p, shelf).KOHShare, 60/56.1053/(60/56.1053+40/39.99677), 1e-9)
}

// Half the batter with a scent of 3 % of all oils in it: 6 % of its own. Its colour's water thins its lye.
func TestTheClockIsToldOfAJugsOwnLoadAndWater(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Carrier = pour.CarrierExtra
	shelf.Scents = []pour.Scent{{ID: "mint", Name: "mint", Behaviour: pour.BehaviourFast, TestLoadPercent: 4}, {ID: "moss", Name: "moss", Behaviour: pour.BehaviourNone}}
	p.Base.Scents = []pour.ScentPart{{Scent: "mint", PercentOfOils: 3, Into: []string{"coal"}}, {Scent: "moss", PercentOfOils: 1}}
	p.Base.Jugs[1].Colourants[0].Carrier = pour.CarryWater
	s := pour.Weigh(p, shelf)
	jug, ok := s.ClockJug(pour.Base, "coal", shelf)
	if !ok || len(jug.Scents) != 2 {
		t.Fatalf("the clock is told %+v", jug)
	}
	equal(t, "its part", jug.Fraction, 0.5, 1e-12)
	equal(t, "scent of its own oils", s.Base.Jugs[1].ScentLoadPercent, 7, 1e-9)
	equal(t, "mint in it", jug.Scents[0].LoadPercent, 6, 1e-9)
	equal(t, "mint was tested at", jug.Scents[0].RefLoadPercent, 4, 0)
	equal(t, "moss in it", jug.Scents[1].LoadPercent, 1, 1e-9)
	equal(t, "moss was tested at the usual", jug.Scents[1].RefLoadPercent, 3, 0)
	equal(t, "its colour's water", jug.ExtraWaterG, s.Base.Size.BatterG/2*0.01*5, 1e-9)
	if plain, _ := s.ClockJug(pour.Base, "plain", shelf); plain.ExtraWaterG != 0 || len(plain.Scents) != 1 {
		t.Errorf("the plain jug is told %+v", plain)
	}
}
