package pour_test

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// bedded is a kilogram of olive and coconut put to bed, at a lye strength and measured warmth.
func bedded(t *testing.T, keep string, lyePercent, startC float64) pour.Sheet {
	t.Helper()
	p, shelf := halves(t)
	p.Base.Carrier, p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = pour.CarrierExtra, 5, nil
	p.Base.LyeConcentrationPercent, p.Base.NaOHPurityPercent = lyePercent, 100
	p.Base.BatterMeasured, p.Base.BatterC, p.Bed.Keep = true, startC, keep
	p.Mould = pour.Mould{Shape: "loaf", LengthMM: 250, WidthMM: 80, HeightMM: 90, FillMM: 70, BarMM: 25}
	return pour.Work(p, shelf, pour.Hand{})
}

// A loaf grows warmest wrapped and least warm chilled, middle and edge, and the edge is never the warmer; the word follows the chances.
func TestTheBedDecidesHowWarmALoafGets(t *testing.T) {
	wrapped, bare, chilled := bedded(t, pour.BedInsulate, 30, 38).Gel, bedded(t, pour.BedBare, 30, 38).Gel, bedded(t, pour.BedChill, 30, 38).Gel
	for _, pair := range [][2]pour.Gel{{wrapped, bare}, {bare, chilled}} {
		if !(pair[0].MiddleC.Mid.V > pair[1].MiddleC.Mid.V+2) || !(pair[0].EdgeC.V > pair[1].EdgeC.V+2) {
			t.Errorf("the middle comes to %.1f and %.1f, the edge to %.1f and %.1f °C", pair[0].MiddleC.Mid.V, pair[1].MiddleC.Mid.V, pair[0].EdgeC.V, pair[1].EdgeC.V)
		}
	}
	for keep, g := range map[string]pour.Gel{"wrapped": wrapped, "bare": bare, "chilled": chilled, "wrapped cool": bedded(t, pour.BedInsulate, 30, 32).Gel} {
		if g.EdgeC.V >= g.MiddleC.Mid.V || g.EdgePercent.V > g.MiddlePercent.V || g.MiddleC.Low.V > g.MiddleC.Mid.V || g.MiddleC.Mid.V > g.MiddleC.High.V {
			t.Errorf("%s: %+v", keep, g)
		}
		want := pour.GelInPart
		switch {
		case g.EdgePercent.V >= 60:
			want = pour.GelLikely
		case g.MiddlePercent.V < 30:
			want = pour.GelUnlikely
		}
		if g.Word != want {
			t.Errorf("%s: middle %v %%, edge %v %%: %q", keep, g.MiddlePercent.V, g.EdgePercent.V, g.Word)
		}
	}
	if wrapped.Word == chilled.Word {
		t.Errorf("wrapped and chilled are both %q", wrapped.Word)
	}
}

// Neat soap begins at 71 °C for lye of 33 %, 16 K lower for 7 points less (trace model 2.1): weaker lye gels sooner.
func TestWeakLyeGelsAtLessHeat(t *testing.T) {
	for percent, want := range map[float64]float64{33: 71, 26: 55, 40: 87} {
		equal(t, "gel begins at", bedded(t, pour.BedInsulate, percent, 38).Gel.FromC.V, want, 1e-9)
	}
	weak, strong := bedded(t, pour.BedInsulate, 27, 32), bedded(t, pour.BedInsulate, 40, 32)
	if weak.Gel.MiddlePercent.V < strong.Gel.MiddlePercent.V+20 {
		t.Errorf("lye of 27 %% gels in %v %%, of 40 %% in %v %%", weak.Gel.MiddlePercent.V, strong.Gel.MiddlePercent.V)
	}
	if w, ok := found(weak, "gel"); !ok || w.Where != "bed" || !strings.Contains(w.Text, "gel begins near "+pour.Show{}.Temp(weak.Gel.FromC.V)) {
		t.Errorf("said %+v", w)
	}
}

// A loaf that lies longer in open jugs, that is wider, or that holds a quick scent, is told to the clock as it is.
func TestALoafIsWhatLiesInTheMould(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Carrier, p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = pour.CarrierExtra, 5, nil
	p.Base.BatterMeasured, p.Base.BatterC, p.Bed.Keep = true, 38, pour.BedBare
	p.Mould = pour.Mould{Shape: "loaf", LengthMM: 250, WidthMM: 80, HeightMM: 90, FillMM: 70, BarMM: 25}
	warm := func(change func(*pour.Plan)) pour.Gel {
		q := p.Clone()
		change(&q)
		return pour.Work(q, shelf, pour.Hand{}).Gel
	}
	plain := warm(func(*pour.Plan) {})
	flat := warm(func(q *pour.Plan) { q.Mould.WidthMM, q.Mould.LengthMM = 250, 400 })
	late := warm(func(q *pour.Plan) { q.Run.PourMin = 60 })
	lost := warm(func(q *pour.Plan) { q.Mould.LossPercent = 40 })
	for what, g := range map[string]pour.Gel{"spread thin": flat, "put to bed late": late, "two fifths lost": lost} {
		if !(g.MiddleC.Mid.V < plain.MiddleC.Mid.V-0.1) {
			t.Errorf("%s: the middle comes to %.2f °C, else %.2f", what, g.MiddleC.Mid.V, plain.MiddleC.Mid.V)
		}
	}
	if gap, thin := plain.MiddleC.Mid.V-plain.EdgeC.V, flat.MiddleC.Mid.V-flat.EdgeC.V; !(gap > 0) || !(thin < gap) {
		t.Errorf("from the middle to the edge are %.2f °C, in a thin slab %.2f", gap, thin)
	}
}

// A scent heats the loaf as a part of all its oils, whichever jugs it is in.
func TestAScentWarmsTheLoafByItsLoadOfTheWhole(t *testing.T) {
	p, shelf := halves(t)
	shelf.Scents = []pour.Scent{{ID: "quick", Name: "quick", Behaviour: pour.BehaviourFast}}
	p.Base.Carrier, p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants, p.Run.ScentMin = pour.CarrierExtra, 5, nil, 0
	p.Base.BatterMeasured, p.Base.BatterC, p.Bed.Keep = true, 34, pour.BedInsulate
	warmest := func(percent float64, into ...string) float64 {
		p.Base.Scents = []pour.ScentPart{{Scent: "quick", PercentOfOils: percent, Into: into}}
		return pour.Work(p, shelf, pour.Hand{}).Gel.MiddleC.Mid.V
	}
	p.Run.SplitMin, p.Run.PourMin, p.Run.ChangeMin = 0, 0, 0 // so that the loaf comes to bed at one time
	both, one, half := warmest(2), warmest(2, "coal"), warmest(1)
	p.Base.Jugs = []pour.Jug{{Name: "coal", SharePercent: 100}}
	whole := warmest(2)
	equal(t, "all of it in one jug", one, both, 1e-6)
	equal(t, "a batch in one jug", whole, both, 1e-6)
	if both < half+0.5 {
		t.Errorf("2 %% of scent bring the middle to %.2f °C, 1 %% to %.2f", both, half)
	}
}
