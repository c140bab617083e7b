package pour_test

import (
	"math"
	"testing"

	"pourbench/pour"
)

func alkaliG(g float64) pour.Weighing {
	return pour.Weighing{Kind: pour.WeighAlkali, Name: pour.NameNaOH, G: g}
}

// 600 g of olive and 400 g of coconut oil want 217.5 g KOH, of NaOH 155.06 g; the plan's 5 % less is 147.30 g. What is weighed beyond that is
// reckoned here by itself, from the molar masses and the values of the reference table.
func TestWhatIsReallyWeighedHasItsOwnSuperfat(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Carrier, p.Base.NaOHPurityPercent = 5, pour.CarrierExtra, 98
	s := pour.Weigh(p, shelf)
	demand, low := 600*olive+400*coconut, 600*oliveLow+400*coconutLow
	for _, x := range []struct {
		naohG          float64
		leaner, lethal bool
	}{{150, false, false}, {150.5, false, false}, {152, true, false}, {158.3, true, true}, {170, true, true}} {
		got, ok := s.TrueSuperfat(pour.Base, []pour.Weighing{alkaliG(x.naohG)})
		koh := x.naohG * .98 / naohPerKOH
		equal(t, "superfat as weighed", got.Percent, 100*(1-koh/demand), 1e-9)
		equal(t, "its low case", got.LowPercent, 100*(1-koh/low), 1e-9)
		equal(t, "the leanest jug, its carrier on top", got.JugPercent, 100*(1-koh/demand), 1e-9)
		if more := (koh/(1-got.PlannedPercent/100) - demand) / demand * 1000; more > 0 {
			equal(t, "the oils that are missing", got.MoreOilsG, more, 1e-6)
		}
		if !ok || got.Leaner() != x.leaner || got.LyeHeavy() != x.lethal {
			t.Errorf("%v g NaOH: leaner %v, lye-heavy %v at %.2f %%, low %.2f %%", x.naohG, got.Leaner(), got.LyeHeavy(), got.Percent, got.LowPercent)
		}
	}
	// The last weight of a thing counts; oils weighed short are as bad as too much lye.
	got, _ := s.TrueSuperfat(pour.Base, []pour.Weighing{alkaliG(190), {Kind: pour.WeighOil, Name: s.Base.Oils[0].Name, G: 500}, alkaliG(150)})
	equal(t, "with 100 g of olive oil missing", got.Percent, 100*(1-150*.98/naohPerKOH/(demand-100*olive)), 1e-9)
	if !got.LyeHeavy() {
		t.Error("100 g of oil missing are not lye-heavy")
	}
	for _, nothing := range [][]pour.Weighing{nil, {{Kind: pour.WeighWater, Name: pour.NameWater, G: 12}}, {{Kind: pour.WeighBatter, Name: pour.WeighBatter, Jug: "coal", G: 12}}} {
		if _, ok := s.TrueSuperfat(pour.Base, nothing); ok {
			t.Errorf("%v is judged", nothing)
		}
	}
	if _, ok := s.TrueSuperfat(pour.Icing, []pour.Weighing{alkaliG(190)}); ok {
		t.Error("an icing that is not there is judged")
	}
}

// The carriers' oil is taken out of the batch: the pot without any is the leanest, and judged. Citric acid takes 3 · 56.1053 ÷ 192.12 g KOH
// a gram (safety page); weighed short, what it does not take is too much.
func TestTheLeanestJugAndAnAcidCountAsWeighed(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.NaOHPurityPercent = 5, 100
	p.Base.Extras = []pour.ExtraPart{{Extra: "citric-acid", PercentOfOils: 1}}
	s := pour.Weigh(p, shelf)
	acid := s.Base.Extras[0]
	taken := s.Base.Jugs[1].Colourants[0].CarrierG
	o := s.Base.Oils
	mixed := o[0].WeighG*olive + o[1].WeighG*coconut
	g := 163.
	got, ok := s.TrueSuperfat(pour.Base, []pour.Weighing{alkaliG(g), {Kind: pour.WeighExtra, Name: acid.Name, G: 4}})
	koh := g/naohPerKOH - 4*acid.AcidKOHG/acid.G
	equal(t, "the whole batch", got.Percent, 100*(1-koh/(mixed+taken*olive)), 1e-9)
	equal(t, "the pot", got.JugPercent, 100*(1-koh/mixed), 1e-9)
	if !ok || got.Jug != "plain" || !got.LyeHeavy() {
		t.Errorf("the pot is not judged: %+v", got)
	}
}

// Weighed as planned it is as planned, whatever the plan.
func TestWeighedAsPlannedIsAsPlanned(t *testing.T) {
	p, shelf := shelved(t)
	s := pour.Weigh(p, shelf)
	for _, b := range s.Batches() {
		got, ok := s.TrueSuperfat(b.Name, b.Weighings())
		if !ok || math.Abs(got.Percent-b.Superfat.AsWeighedPercent) > .02 || got.Leaner() || math.Abs(got.LowPercent-b.Superfat.LowPercent) > .2 {
			t.Errorf("%s: %+v, planned %+v", b.Name, got, b.Superfat)
		}
	}
}
