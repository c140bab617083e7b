package pour

import (
	"errors"

	"pourbench/chem"
	"pourbench/chem/cure"
)

// CureSheet is how a usual bar is forecast to dry, before one was weighed. Days are from the cut. Dry by the maker's criterion is all that ready means.
type CureSheet struct {
	ThickMM, WideMM, HighMM Figure // the bar as the law of drying takes it: its base alone
	CutMoisturePercent      Figure // water in it as it is cut
	LossPercent             Figure // of its mass as cut that goes in the end
	LossSDPercent           Figure
	TauDays                 Figure // time of its slowest mode
	LnTauSD                 Figure
	CriterionPercent        Figure // loss a week under which it is called dry
	ReadyDay                Band   // when that is
	FinalG                  Figure // in the end, with what is strewn on the cured bar
	PackDay                 Figure
	PackG                   Band   // what it weighs then, with what is strewn on it
	PackLossPercent         Figure // what it still loses in the week after
	CutForLabelG            Figure // what a bar must weigh as cut to weigh then what the label says; unknown: no label is stated
	OwnBatches              Figure // of the maker's own that this rests on; 0: on none
	Refused                 string // why nothing of this could be worked out; empty: it was
}

// DryingBar is a bar as the law of drying takes it, before it was weighed.
type DryingBar struct {
	Box         cure.Box
	CutG        float64 // as cut
	CutMoisture float64 // a fraction
	Final       float64 // moisture in the end by the recipe, a fraction
	Prior       cure.Prior
	Own         int // batches of the maker's own that the prior rests on
}

// DryingBar is the usual bar or, where bars are named by their numbers from 1 at end A, the mean of those. A bar with icing is its base's box, a round
// the square plate about it, which has as much surface to its room and a tau that is a sixth longer (derived, from 2·π²/d² and the disc's 4·2.405²/d²).
// What goes onto the cured bar is not in it. The error is why it cannot be told.
func (s *Sheet) DryingBar(rack cure.Rack, bars ...int) (DryingBar, error) {
	for _, b := range s.Batches() {
		if why := b.Refused.Masses; why != "" {
			return DryingBar{}, errors.New(why)
		}
	}
	if len(s.Cut.Bars) == 0 {
		return DryingBar{}, errors.New("no whole bar comes out of the cut plan")
	}
	d := DryingBar{Box: s.dryingBox(bars), CutG: s.Bars.CutG}
	loss, err := chem.DryingLoss(s.Bars.CutG, s.Bars.CuredG-s.strewnLate())
	if err != nil {
		return d, err
	}
	d.Final = s.Plan.Base.FinalMoisturePercent / 100
	d.CutMoisture = 1 - (1-loss)*(1-d.Final) // of all that is in the bar
	return d.By(rack)
}

// By is the bar with the prior that a maker's own batches give it.
func (d DryingBar) By(rack cure.Rack) (DryingBar, error) {
	var err error
	if d.Prior, err = rack.Prior(d.Box, d.CutMoisture, d.Final, cure.FinalMoistureSD); err != nil {
		return d, err
	}
	d.Own = 0
	if rack.LnD.Known() {
		d.Own = rack.LnD.Batches
	}
	if rack.Moisture.Known() {
		d.Own = max(d.Own, rack.Moisture.Batches)
	}
	return d, nil
}

// dryingBox is the mean of bars.
func (s *Sheet) dryingBox(numbers []int) cure.Box {
	var of []BarPiece
	for _, n := range numbers {
		if n >= 1 && n <= len(s.Cut.Bars) {
			of = append(of, s.Cut.Bars[n-1])
		}
	}
	if len(of) == 0 {
		of = s.Cut.Bars
	}
	m := s.Plan.Mould
	b := cure.Box{
		ThickMM: mean(len(of), func(i int) float64 { return of[i].ThicknessMM() }),
		WideMM:  mean(len(of), func(i int) float64 { return of[i].WideMM() }),
		HighMM:  s.Base.Size.HeightMM,
	}
	switch m.Shape {
	case ShapeTube:
		b.WideMM, b.HighMM = m.WidthMM, m.WidthMM
	case ShapeCavity:
		b.WideMM = m.AreaMM2() / float64(m.Cavities) / m.LengthMM
	}
	return b
}

// strewnLate is what goes onto every cured bar, g.
func (s *Sheet) strewnLate() float64 {
	g := 0.0
	for i := range s.Toppings {
		if l := &s.Toppings[i]; !l.OnLoaf() {
			g += l.AddsG.orUnknown()
		}
	}
	return g
}

// dry forecasts the usual bar.
func (s *Sheet) dry(rack cure.Rack) {
	d, err := s.DryingBar(rack)
	if err != nil {
		s.Cure = CureSheet{Refused: err.Error()}
		return
	}
	f, err := cure.Forecast(d.Box, d.Prior, d.CutG)
	if err != nil {
		s.Cure = CureSheet{Refused: err.Error()}
		return
	}
	c := CureSheet{
		ThickMM: Know(d.Box.ThickMM), WideMM: Know(d.Box.WideMM), HighMM: Know(d.Box.HighMM), CutMoisturePercent: Know(100 * d.CutMoisture),
		LossPercent: Know(100 * d.Prior.Loss), LossSDPercent: Know(100 * d.Prior.LossSD), TauDays: Know(f.TauDays()), LnTauSD: Know(d.Prior.LnTauSD),
		CriterionPercent: Know(s.Plan.Cure.Criterion()), PackDay: Know(s.Plan.PackDay()), OwnBatches: Know(float64(d.Own)),
	}
	ready, err := f.Ready(c.CriterionPercent.V)
	if err != nil {
		s.Cure = CureSheet{Refused: err.Error()}
		return
	}
	late, packed := s.strewnLate(), f.Mass(c.PackDay.V)
	c.ReadyDay = Band{Know(max(0, ready.Low())), Know(ready.V), Know(ready.High())}
	c.FinalG, c.PackLossPercent = Know(f.Final().V+late), Know(f.WeeklyLoss(c.PackDay.V).V)
	c.PackG = Band{Know(packed.Low() + late), Know(packed.V + late), Know(packed.High() + late)}
	if label := s.Plan.Cure.LabelG; label > 0 {
		c.CutForLabelG = forLabel(d.CutG, packed.V, label-late)
	}
	s.Cure = c
	s.inspectCure()
}

// forLabel is what a bar must weigh as cut to weigh so much when it is packed, by how one of cutG does.
func forLabel(cutG, packedG, wantG float64) Figure {
	loss, err := chem.DryingLoss(cutG, packedG)
	if err != nil {
		return Figure{}
	}
	g, err := chem.CutForCured(wantG, loss)
	if err != nil {
		return Figure{}
	}
	return Know(g)
}
