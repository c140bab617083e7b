package pour

import "pourbench/chem"

// noise keeps the last bits of a float64 from making a superfat of 0 one below it, percentage points.
const noise = 1e-9

// fats is what takes up alkali in a whole batch, carriers' oil and all, and what is left of it when the carriers' oil is taken out.
type fats struct {
	low, mid       float64 // the batter's own oils, at the low end of their ranges and at their working values, g KOH
	extras         float64 // fat in the extras, g KOH
	alkali         float64 // pure alkali less what the extras' acids take, g KOH
	carrierLow     float64 // of the oil that carries the colours, mg KOH/g, at the low end of its range
	carrierMid     float64 // and its working value
	weighed        float64 // the same oils, fat in extras and alkali as the scales show them, g KOH
	weighedExtras  float64
	weighedAlkali  float64
	stepG          float64 // what the carriers are weighed on
	plannedPercent float64
}

// superfatOf is the superfat, percent, of alkali in what would take up demand, both g KOH; the planned one where nothing takes any up.
func (f fats) superfatOf(alkali, demand float64) float64 {
	if demand <= 0 {
		return f.plannedPercent
	}
	return (1 - alkali/demand) * 100
}

// fats adds up what takes up alkali in the batter before the carriers join it, exact and as weighed on a scale with that step for lye and
// small doses.
func (s *BatchSheet) fats(stepG float64) fats {
	f := fats{
		extras: s.Lye.ExtraFatKOHG, alkali: s.alkaliKOHG(s.Lye.NaOH.PureG, s.Lye.KOH.PureG) - s.Lye.AcidKOHG,
		carrierLow: s.Lye.CarrierSapLow, carrierMid: s.Lye.CarrierSapKOHMgG, stepG: stepG, plannedPercent: s.Superfat.PlannedPercent,
	}
	for _, o := range s.Oils {
		f.low += o.G * o.SapLow / 1000
		f.mid += o.G * o.SapKOHMgG / 1000
		f.weighed += o.WeighG * o.SapKOHMgG / 1000
	}
	if s.ReadyBlend != "" && s.Size.OilsG > 0 { // one weighing: the parts are for information
		f.weighed = f.mid * s.Size.OilsWeighG / s.Size.OilsG
	}
	acids := 0.0
	for _, x := range s.Extras {
		if x.G > 0 {
			shown := 1.0
			if f.stepG > 0 {
				shown = roundTo(x.G, f.stepG) / x.G
			}
			acids += shown * x.AcidKOHG
			f.weighedExtras += shown * x.FatKOHG
		}
	}
	naoh, koh := s.Lye.NaOH.ToWeighG*s.Lye.NaOH.PurityPercent/100, s.Lye.KOH.ToWeighG*s.Lye.KOH.PurityPercent/100
	if s.Lye.Stock.WeighedG > 0 {
		naoh = s.Lye.Stock.ToWeighG * s.Lye.Stock.StrengthPercent / 100
	}
	f.weighedAlkali = s.alkaliKOHG(naoh, koh) - acids
	return f
}

// alkaliKOHG is pure alkali as what the same moles of KOH would weigh, g.
func (s *BatchSheet) alkaliKOHG(naohG, kohG float64) float64 { return naohG/chem.AlkaliRatio + kohG }

// superfats works out what superfat the batch and each of its jugs really have. Batter is divided before the carriers join it: a jug
// gets its part of the alkali and of the oils that were mixed, and then its own carrier's oil and its scents.
func (m mixer) superfats(s *BatchSheet, b *bill) {
	s.Lye.CarrierSapKOHMgG, s.Lye.CarrierSapLow = b.carrier.Fat.Sap, b.carrier.Fat.LowSap()
	s.divide(s.fats(m.show.LyeStepG), b.Carrier == CarrierBatch, b.scentKOHG)
}

// divide works the superfats out of what takes up alkali. ofBatch: the carriers' oil is the batch's own; scentKOHG is what a jug's scents
// can take up at most, g KOH.
func (s *BatchSheet) divide(f fats, ofBatch bool, scentKOHG func(*JugSheet) float64) {
	s.Superfat.MixedPercent = f.superfatOf(f.alkali, f.mid+f.extras)
	batchCarriers := 0.0
	for i := range s.Jugs {
		j := &s.Jugs[i]
		oil, shown := j.carrierOilG(0), j.carrierOilG(f.stepG)
		if ofBatch {
			batchCarriers += shown * f.carrierMid / 1000
		}
		if s.Size.BatterG <= 0 {
			j.Superfat.HeldPercent, j.Superfat.FirmPercent = f.plannedPercent, f.plannedPercent
			continue
		}
		part := j.BatterG / s.Size.BatterG
		own := part*(f.mid+f.extras) + oil*f.carrierMid/1000
		j.Superfat.HeldPercent = f.superfatOf(part*f.alkali-scentKOHG(j), own)
		j.Superfat.FirmPercent = f.superfatOf(part*f.alkali, own)
		j.Superfat.LowPercent = f.superfatOf(part*f.alkali, part*(f.low+f.extras)+oil*f.carrierLow/1000)
		j.Superfat.AsWeighedPercent = j.Superfat.FirmPercent
		if s.Size.BatterWeighG > 0 && j.BatterWeighG > 0 {
			part = j.BatterWeighG / s.Size.BatterWeighG
			j.Superfat.AsWeighedPercent = f.superfatOf(part*f.weighedAlkali, part*(f.weighed+f.weighedExtras)+shown*f.carrierMid/1000)
		}
	}
	s.Superfat.ExactPercent = f.superfatOf(f.alkali, s.Lye.DemandKOHG+f.extras)
	s.Superfat.AsWeighedPercent = f.superfatOf(f.weighedAlkali, f.weighed+f.weighedExtras+batchCarriers)
}

// carrierOilG is the oil that carries this jug's colours, g, each dose of it on a scale's step; on step 0 exact.
func (j JugSheet) carrierOilG(stepG float64) float64 {
	sum := 0.0
	for _, d := range j.Colourants {
		switch {
		case d.Carrier != CarryOil:
		case stepG > 0:
			sum += roundTo(d.CarrierG, stepG)
		default:
			sum += d.CarrierG
		}
	}
	return sum
}

// scentKOHG is the alkali a jug's scents can take up at most, g KOH.
func (b *bill) scentKOHG(j *JugSheet) float64 {
	sum := 0.0
	for _, x := range j.Scents {
		sum += x.G * b.scent(x.ID).AlkaliKOHMgG / 1000
	}
	return sum
}

// leastJug is the jug with the least superfat in the measure given, and that superfat; ok is false for a batch without jugs.
func (s *BatchSheet) leastJug(measure func(JugSheet) float64) (jug JugSheet, percent float64, ok bool) {
	for i, j := range s.Jugs {
		if v := measure(j); i == 0 || v < percent {
			jug, percent, ok = j, v, true
		}
	}
	return jug, percent, ok
}

// LeanestJug is the jug with the least superfat, its scents taking up no alkali; ok is false for a batch without jugs.
func (s *BatchSheet) LeanestJug() (jug JugSheet, ok bool) {
	jug, _, ok = s.leastJug(func(j JugSheet) float64 { return j.Superfat.FirmPercent })
	return jug, ok
}
