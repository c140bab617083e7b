package sticker

import (
	"math"

	"pourbench/pour"
)

// Bar is a cured bar as a band is wrapped round it, mm.
type Bar struct {
	Front, Side float64 // the sides the band goes along; of a round both are its diameter
	Up          float64 // along which the band's height lies
	Round       bool
	Shrunk      float64 // what its lengths are of those as cut, a fraction
}

// barOf is the cured bar of a sheet, as it is on the day it is packed: the bar as it was cut, all of its lengths smaller by the cube root of
// what is left of its mass, which takes it to shrink alike in all directions and to keep its density (derived; a bar loses water, which is a
// little lighter than it, and its edges dry first, so that a cured bar is measured before many bands are cut). The zero value: it cannot be told.
func barOf(s pour.Sheet) Bar {
	c := s.Cure
	if !c.ThickMM.Known || !c.WideMM.Known || !c.HighMM.Known || !c.LossPercent.Known || s.Bars.CutG <= 0 {
		return Bar{}
	}
	left := 1 - c.LossPercent.V/100
	if c.PackG.Mid.Known && c.FinalG.Known {
		left += (c.PackG.Mid.V - c.FinalG.V) / s.Bars.CutG // what it has still to lose when it is packed
	}
	k := math.Cbrt(left)
	thick, wide, high := k*c.ThickMM.V, k*c.WideMM.V, k*c.HighMM.V
	b := Bar{Front: wide, Side: thick, Up: high, Shrunk: k}
	switch {
	case s.Plan.Mould.Shape == pour.ShapeTube:
		return Bar{Front: wide, Side: wide, Up: thick, Round: true, Shrunk: k}
	case s.Icing == nil && len(s.Toppings) == 0 && high < min(wide, thick):
		// It lies flat and nothing stands on it: the band goes round its waist, its front on the largest face.
		return Bar{Front: min(wide, thick), Side: high, Up: max(wide, thick), Shrunk: k}
	}
	return b
}

// Around is the way round the bar.
func (b Bar) Around() float64 {
	if b.Round {
		return math.Pi * b.Front
	}
	return 2 * (b.Front + b.Side)
}

// known reports whether there is a bar to wrap.
func (b Bar) known() bool { return b.Front > 0 && b.Side > 0 && b.Up > 0 }
