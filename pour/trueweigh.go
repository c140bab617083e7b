package pour

import (
	"math"
	"slices"
)

// TrueSuperfat is what superfat a batch comes to by what was really weighed of its alkali, its oils and the extras that take up alkali; what
// was not weighed, and the carriers' oil, is taken as the plan has its scale show it. Percent of what its fats could take up; scents take up
// none.
type TrueSuperfat struct {
	Batch          BatchName
	PlannedPercent float64 // as the plan has it weighed
	Percent        float64
	LowPercent     float64 // every oil at the low end of its published range, as [BatchSuperfat.LowPercent]
	PlanLowPercent float64 // the plan's
	ExtraFat       bool    // the extras bring fat, which Percent counts and LowPercent does not
	Jug            string  // the leanest
	JugPercent     float64
	MoreOilsG      float64 // so much more of the blend would bring the batch to the plan's superfat; 0: none is missing
}

// LyeHeavy reports whether more alkali was weighed than the oils can take, in the whole batch or in its leanest jug: by the bounds of the
// plan's own warning.
func (t TrueSuperfat) LyeHeavy() bool { return min(t.Percent, t.JugPercent) < -weighedSlack }

// Leaner reports whether so much more alkali or less oil was weighed than planned that it is worth a caution: more than what scales' steps
// may do, or with every oil at its low end lye-heavy where the plan is not.
func (t TrueSuperfat) Leaner() bool {
	return t.LyeHeavy() || t.PlannedPercent-t.Percent > roundingGap || t.LowPercent < -noise && t.PlanLowPercent >= -noise
}

// TrueSuperfat works out what superfat a batch has by what was really weighed into it. The second result is false where nothing that
// matters was, or where the batch cannot be mixed as planned.
func (s *Sheet) TrueSuperfat(n BatchName, weighed []Weighing) (TrueSuperfat, bool) {
	b, plan := s.Batch(n), s.Plan.Batch(n)
	if b == nil || plan == nil || b.Refused.Masses != "" {
		return TrueSuperfat{}, false
	}
	c, any := b.weighedAs(weighed)
	if !any {
		return TrueSuperfat{}, false
	}
	f, ofBatch := c.fats(0), plan.Carrier == CarrierBatch
	demand, low := f.mid, f.low
	for i := range c.Jugs {
		if ofBatch {
			demand += c.Jugs[i].carrierOilG(0) * f.carrierMid / 1000
			low += c.Jugs[i].carrierOilG(0) * f.carrierLow / 1000
		}
	}
	c.Lye.DemandKOHG = demand
	c.divide(f, ofBatch, func(*JugSheet) float64 { return 0 })
	out := TrueSuperfat{
		Batch: n, PlannedPercent: b.Superfat.AsWeighedPercent, PlanLowPercent: b.Superfat.LowPercent,
		Percent: c.Superfat.ExactPercent, LowPercent: f.superfatOf(f.alkali, low), ExtraFat: c.Lye.ExtraFatKOHG > 0, JugPercent: c.Superfat.ExactPercent,
	}
	if jug, ok := c.LeanestJug(); ok {
		out.Jug, out.JugPercent = jug.Name, jug.Superfat.FirmPercent
	}
	if want := f.alkali/(1-out.PlannedPercent/100) - demand - f.extras; want > 0 && f.mid > 0 {
		out.MoreOilsG = want / f.mid * c.Size.OilsG
	}
	return out, true
}

// weighedAs is the batch with what was really weighed in it, the rest as its scale shows it; any says whether anything was that takes up
// alkali or is alkali.
func (s *BatchSheet) weighedAs(weighed []Weighing) (c BatchSheet, any bool) {
	c = *s
	c.Oils, c.Extras, c.Jugs = slices.Clone(s.Oils), slices.Clone(s.Extras), slices.Clone(s.Jugs)
	of := func(kind, name string, planned float64) float64 {
		for i := len(weighed) - 1; i >= 0; i-- {
			if w := weighed[i]; w.Kind == kind && w.Name == name && w.Jug == "" && planned > 0 && !math.IsNaN(w.G) {
				any = true
				return w.G
			}
		}
		return planned
	}
	c.Size.OilsG = 0
	ready := 1.0
	if s.ReadyBlend != "" && s.Size.OilsG > 0 { // one weighing: its parts follow it
		ready = of(WeighOil, nameReadyOils+s.ReadyBlend, s.Size.OilsWeighG) / s.Size.OilsG
	}
	for i := range c.Oils {
		o := &c.Oils[i]
		if s.ReadyBlend != "" {
			o.WeighG = o.G * ready
		} else {
			o.WeighG = of(WeighOil, o.Name, o.WeighG)
		}
		o.G = o.WeighG
		c.Size.OilsG += o.G
	}
	c.Size.OilsWeighG = c.Size.OilsG
	lye := &c.Lye
	lye.NaOH.ToWeighG = of(WeighAlkali, NameNaOH, lye.NaOH.ToWeighG)
	lye.KOH.ToWeighG = of(WeighAlkali, NameKOH, lye.KOH.ToWeighG)
	lye.NaOH.PureG, lye.KOH.PureG = lye.NaOH.ToWeighG*lye.NaOH.PurityPercent/100, lye.KOH.ToWeighG*lye.KOH.PurityPercent/100
	if lye.Stock.WeighedG > 0 {
		lye.Stock.ToWeighG = of(WeighAlkali, NameStock, lye.Stock.ToWeighG)
		lye.NaOH.PureG = lye.Stock.ToWeighG * lye.Stock.StrengthPercent / 100
	}
	lye.AcidKOHG, lye.ExtraFatKOHG = 0, 0
	for i := range c.Extras {
		x := &c.Extras[i]
		if x.AcidKOHG+x.FatKOHG > 0 {
			part := of(WeighExtra, x.Name, x.G) / x.G
			x.G, x.AcidKOHG, x.FatKOHG = x.G*part, x.AcidKOHG*part, x.FatKOHG*part
		}
		lye.AcidKOHG += x.AcidKOHG
		lye.ExtraFatKOHG += x.FatKOHG
	}
	return c, any
}
