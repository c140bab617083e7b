package clock

import (
	"math"
	"slices"
	"testing"

	"pourbench/chem"
)

// The index goes up to a stage's mark as the batter comes up to that stage: there is no step in it.
func TestTraceIndexIsContinuousAtItsMarks(t *testing.T) {
	f := forecast(t, batter(balanced(), 35, Burst{0, 20}), Jug{Fraction: 1})
	for s := chem.Light; int(s) < chem.Stages; s++ {
		if !f.Stages[s].MidOK {
			continue
		}
		before, ok := f.TraceIndex(f.Stages[s].Mid * 0.999)
		if !ok || math.Abs(before-float64(s+1)) > 0.05 {
			t.Errorf("just before %s the index is %v, %v; want nearly %d", s, before, ok, s+1)
		}
	}
	for _, minute := range []float64{-1, -1e-9, HorizonMin + 1, math.Inf(1)} {
		if index, ok := f.TraceIndex(minute); ok {
			t.Errorf("minute %v has index %v", minute, index)
		}
	}
}

// Between 0.2 and 5 kg of oil, ends included, blending and cooling are those that the model was made for.
func TestASizeFarFromAKitchensIsSaid(t *testing.T) {
	for g, far := range map[float64]bool{199: true, 200: false, 1000: false, 5000: false, 5001: true} {
		b := batter(balanced(), 35)
		b.OilG = g
		said := slices.ContainsFunc(b.Cautions(), func(c Caution) bool { return c.Kind == FarSize })
		if said != far {
			t.Errorf("%v g: said %v, want %v", g, said, far)
		}
	}
}

// By hand: the conversion that makes an emulsion is soapX × ln of how much coarser the batter is than what is left of its drops.
func TestTheSoapThatMakesAnEmulsionGrowsWithTheLogOfCoarseness(t *testing.T) {
	l := standardLaw()
	for _, times := range []float64{1.2, 2} {
		if want, got := l.soapX*math.Log(times), l.emulsionX(times*coarseLeft); math.Abs(got-want) > 1e-12 {
			t.Errorf("%v times as coarse: %v, want %v", times, got, want)
		}
	}
	if got := l.emulsionX(coarseLeft); got != 0 {
		t.Errorf("a fine batter wants %v", got)
	}
	if got := l.emulsionX(1e9); got != stageX(chem.Light) {
		t.Errorf("a batter coarser than any wants %v, more than light", got)
	}
}
