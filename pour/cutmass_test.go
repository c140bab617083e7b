package pour_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/pourtest"
)

func closeTo(t rapid.TB, what string, got pour.Figure, want float64) {
	t.Helper()
	if !got.Known || math.Abs(got.V-want) > 1e-6*math.Max(1, math.Abs(want)) {
		t.Errorf("%s is %.9g (%v), want %.9g", what, got.V, got.Known, want)
	}
}

// drawn is a plan with its own cuts, embeds in its bars and elsewhere, and what is strewn.
func drawnCut(t *rapid.T, demo pour.Plan, shelf pour.Shelf) pour.Plan {
	p := pourtest.Rich(t, demo, shelf)
	p.Cut = pourtest.Cut(t, p.Mould)
	return p
}

// What is poured, set in and strewn before the cut is what all bars, trims, the slice and the crumbs weigh together, whatever the plan.
func TestBarsTrimsSliceAndCrumbsSumToWhatWasPoured(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		s := pour.Weigh(drawnCut(t, demo, shelf), shelf)
		c := s.Cut
		if s.Base.Refused.Masses != "" || s.Icing != nil && s.Icing.Refused.Masses != "" || len(c.Bars) == 0 {
			return
		}
		want := s.Base.Size.PouredG
		if s.Icing != nil {
			want += s.Icing.Size.PouredG
		}
		for _, e := range s.Embeds {
			for _, x := range e.Pieces {
				if x.CentreMM >= 0 && x.CentreMM <= s.Plan.Mould.AlongMM() {
					want += e.PieceG.V
				}
			}
		}
		got := c.TrimsG.V + c.SliceG.V + c.KerfG.V
		strewn := 0.0
		for _, b := range c.Bars {
			got += b.CutG.V
			strewn += b.ToppingG.V
			if b.CutG.Known && !near(b.CutG.V, b.BaseG.V+b.IcingG.V+b.EmbedG.V+b.ToppingG.V, 1e-9) {
				t.Errorf("a bar of %v is not the sum of its parts", b.CutG)
			}
		}
		for _, l := range s.Toppings {
			if l.OnLoaf() && l.AddsG.Known {
				want += l.AllG.V * l.AddsG.V / l.PerBarG.V
			} else if l.OnLoaf() {
				return // it cannot be weighed
			}
		}
		if !near(got, want, 1e-9) {
			t.Errorf("the pieces weigh %v g together, poured, set in and strewn were %v g", got, want)
		}
	})
}

// The lengths do too, cuts stand in order inside the loaf, and every mark is within a quarter of a millimetre of its cut.
func TestBarsTrimsSliceAndCutsAreTheLoafsLength(t *testing.T) {
	demo, shelf := shelved(t)
	rapid.Check(t, func(t *rapid.T) {
		s := pour.Weigh(drawnCut(t, demo, shelf), shelf)
		c := s.Cut
		if len(c.Bars) == 0 {
			return
		}
		all := c.TrimAMM + c.TrimBMM + c.SliceMM + float64(len(c.CutsMM))*s.Plan.Cut.KerfMM
		for _, b := range c.Columns() {
			all += b.ThicknessMM()
		}
		if !near(all, s.Plan.Mould.AlongMM(), 1e-9) {
			t.Errorf("the pieces are %v mm of %v long", all, s.Plan.Mould.AlongMM())
		}
		last := 0.0
		for i, x := range c.CutsMM {
			if x <= last-1e-9 || x >= s.Plan.Mould.AlongMM()+1e-9 || math.Abs(c.MarksMM[i]-x) > 0.25+1e-9 || math.Mod(c.MarksMM[i], 0.5) != 0 {
				t.Errorf("cut %d of %v stands at %v, marked %v", i, c.CutsMM, x, c.MarksMM[i])
			}
			last = x
		}
	})
}
