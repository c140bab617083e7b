package pour

import (
	"cmp"

	"pourbench/chem"
	"pourbench/chem/colour"
)

// Work turns a plan into every figure of it: [Weigh], then [Sheet.Time] with what the maker's logs have taught, then [Sheet.Mingle].
func Work(p Plan, s Shelf, h Hand) Sheet {
	return Weigh(p, s).Time(s, h).Mingle(s, h, colour.NewJudge())
}

// Weigh works out everything but the clock. A plan with faults gives a sheet that holds nothing but a stop for each of them.
func Weigh(p Plan, s Shelf) Sheet {
	sheet := Sheet{Plan: p}
	if faults := p.Check(s); len(faults) > 0 {
		for _, f := range faults {
			sheet.warn(warning("plan-fault", f.Path, f.Problem, f.Mend))
		}
		return sheet
	}
	m := mixer{plain: s.plain, show: p.Show, roomC: p.Room.TemperatureC}
	sheet.cutting(func() float64 { return m.perMM(s.bill(Base, p.Base), p.Mould) })
	sheet.embed()
	taken := sheet.displaced()
	sheet.Base = m.sized(s.bill(Base, p.Base), p.Mould, p.Mould.LossPercent, func(unit BatchSheet) float64 {
		return (p.Mould.AreaMM2()*p.Mould.FillMM - taken) / 1000 / unit.Size.PouredML
	})
	sheet.Base.Size.HeightMM += taken / p.Mould.AreaMM2()
	sheet.weighEmbeds()
	if p.Icing != nil {
		icing := sheet.ices(m, s.bill(Icing, *p.Icing))
		sheet.Icing = &icing
	}
	sheet.strew(s)
	sheet.weighCut()
	sheet.cutterNeeds()
	sheet.bars()
	sheet.toppingPlastics(s)
	sheet.totals(s)
	sheet.write(s)
	sheet.schedule()
	sheet.cost(s)
	sheet.inspect(s)
	return sheet
}

// unitOilsG is the trial batch from which a batch is scaled: every mass and volume of a batch grows in proportion to its oils.
const unitOilsG = 1000

// sized works a batch out at its size: at the oils given, or at a trial size scaled by what fills.
func (m mixer) sized(b bill, mould Mould, loss float64, fill func(unit BatchSheet) float64) BatchSheet {
	oils := b.OilsG
	open := b.Unfinished()
	if open != "" || b.unsized != "" {
		oils = unitOilsG // whatever it is, it will be forgotten
	} else if b.Size != SizeOils {
		oils = unitOilsG * fill(m.mix(b, unitOilsG, loss))
	}
	s := m.mix(b, oils, loss)
	s.round(m.show)
	m.superfats(&s, &b)
	s.Size.HeightMM = s.Size.PouredML * 1000 / mould.AreaMM2()
	s.Refused.Unfinished, s.Refused.Unsized = open != "", b.unsized
	s.Refused.Masses = s.refuse(cmp.Or(open, b.unsized), b.shortOil(s.Refused.ShortOil))
	s.forget(b.Batch)
	return s
}

// bars works out what comes off the cutter: base and icing net of loss, dried to their own final moisture, and what lies on them. Scents are judged on
// base and icing alone: a topping would only thin them.
func (s *Sheet) bars() {
	m, n := s.Plan.Mould, len(s.Cut.Bars)
	s.Bars = Bars{Count: n, ThicknessMM: s.Cut.UsualMM, FinalMoisturePercent: s.Plan.Base.FinalMoisturePercent}
	cured, scent := 0.0, 0.0
	for _, b := range s.Batches() {
		moisture := s.Plan.Batch(b.Name).FinalMoisturePercent
		cured += b.curedG(moisture)
		b.vanillin(moisture)
		for _, x := range b.Scents {
			scent += x.G * b.kept()
		}
	}
	s.Bars.CutG = mean(n, func(i int) float64 { return s.Cut.Bars[i].CutG.orUnknown() })
	s.Bars.CuredG = mean(n, func(i int) float64 { return s.Cut.Bars[i].CuredG.orUnknown() })
	if s.Icing != nil {
		s.Bars.IcingPerBarG = mean(n, func(i int) float64 { return s.Cut.Bars[i].IcingG.orUnknown() })
	}
	for _, b := range s.Batches() {
		s.Bars.StandsMM += b.Size.HeightMM
	}
	s.Bars.OverRimMM = s.Bars.StandsMM - m.HeightMM
	s.Bars.BaseScentPercent = chem.PercentOfBar(scent, cured)
	s.scentInBar(cured)
}

// perMM is about what a millimetre of the base weighs, g: filled as high as the plan wants it.
func (m mixer) perMM(b bill, mould Mould) float64 {
	unit := m.mix(b, unitOilsG, 0)
	return mould.AreaMM2() * mould.FillMM / mould.AlongMM() / 1000 * unit.gml()
}

// scentInBar judges every scent on the cured bar, base and icing together; the same scent in both adds up.
func (s *Sheet) scentInBar(curedG float64) {
	grams := map[string]float64{}
	for _, b := range s.Batches() {
		for _, x := range b.Scents {
			grams[x.ID] += x.G * b.kept()
		}
	}
	for _, b := range s.Batches() {
		for i := range b.Scents {
			x := &b.Scents[i]
			x.InBarPercent = chem.PercentOfBar(grams[x.ID], curedG)
			x.VanillinInBarPercent = x.InBarPercent * x.VanillinPercent / 100
		}
	}
}

// kept is the part of a batch that does not stay in pots and bags.
func (b *BatchSheet) kept() float64 { return 1 - b.Size.LossPercent/100 }

// curedG is the mass of all bars' part of a batch after cure, g, or [Unknown]; moisture is checked to be at most 30 % before.
func (b *BatchSheet) curedG(moisturePercent float64) float64 {
	g, err := chem.CuredG(b.Size.DryG*b.kept(), moisturePercent/100)
	if err != nil {
		return Unknown()
	}
	return g
}
