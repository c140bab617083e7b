package pour_test

import (
	"math"

	"pourbench/pour"
)

// onTheScale is the superfat, percent, of the batch as its scales show it, and for each jug that gets so much batter on the scale its own.
func (r *reckoned) onTheScale(jugG []float64) (batch float64, jugs []float64) {
	coarse, fine := r.plan.Show.ScaleStepG, r.plan.Show.LyeStepG
	nearest := func(g float64) float64 { return math.Round(g/fine) * fine }
	down := func(g float64) float64 { return math.Floor(g/fine+1e-7) * fine }
	oils, whole := 0.0, 0.0
	for i, g := range largestRemainder(r.oils, coarse) {
		oils += g * r.oils[i].mid / 1000
		whole += r.oils[i].g
	}
	if r.b.ReadyBlend != "" {
		oils = r.mixedMid / whole * math.Round(whole/coarse) * coarse
	}
	alkali := down(r.stock) * r.b.StockLyePercent / 100 * molKOH / molNaOH
	if r.b.StockLyePercent == 0 {
		alkali = down(r.dryNaOH)*r.b.NaOHPurityPercent/100*molKOH/molNaOH + down(r.dryKOH)*r.b.KOHPurityPercent/100
	}
	for _, x := range r.extras {
		alkali -= nearest(x.g) * x.x.AlkaliKOHMgG / 1000
		oils += nearest(x.g) * x.x.FatPercent * x.x.FatSapKOHMgG / 1e5
	}
	back, batterG := 0.0, sumOf(jugG, func(g float64) float64 { return g })
	for i, j := range r.jugs {
		own := 0.0
		for k, with := range j.wets {
			if with == "oil" {
				own += nearest(j.wet[k]) * r.carrier.mid / 1000
			}
		}
		part := jugG[i] / batterG
		jugs = append(jugs, r.free(part*alkali, part*oils+own))
		if r.b.Carrier == pour.CarrierBatch {
			back += own
		}
	}
	return r.free(alkali, oils+back), jugs
}

// largestRemainder rounds oils down to a step and gives the steps that are missing to those that lost most, the earlier of equals.
func largestRemainder(oils []reckonedOil, step float64) []float64 {
	out, lost := make([]float64, len(oils)), make([]float64, len(oils))
	missing := int(math.Round(sumOf(oils, func(o reckonedOil) float64 { return o.g }) / step))
	for i, o := range oils {
		steps := math.Floor(o.g/step + 1e-7)
		out[i], lost[i] = steps*step, o.g/step-steps
		missing -= int(steps)
	}
	for ; missing > 0; missing-- {
		most := 0
		for i := range lost {
			if lost[i] > lost[most]+1e-7 {
				most = i
			}
		}
		out[most] += step
		lost[most] = -1
	}
	return out
}
