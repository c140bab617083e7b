package clock

import "math"

// What a forecast does not know besides the maker, as in trace model 2.5 and 6.
const (
	plannedK  = 2.0   // σ_T of a planned batter temperature
	measuredK = 0.5   // of a measured one
	activeSDJ = 12000 // σ_Ea, J/mol
	waterSD   = 0.5   // σ_n

	handStirredSD = 0.5
	farLyeSD      = 0.2 // lye over 43 % grains soap out, under 27 % emulsifies weakly
	farSizeSD     = 0.2 // under 0.2 or over 5 kg of oil
	heatSD        = 0.2
	alcoholSD     = 0.2
	crudeOilSD    = 0.4 // free acid of used, unrefined or pomace oil not known
	offLoadSD     = 0.3 // a load or dose under 0.3 or over 1.7 of the one its effect was stated for
	highLoadSD    = 0.5 // over 2
)

// sigma is the standard deviation of ln speed for a jug: what the logs leave open, the pour, the judging, temperature and lye away
// from the reference, the additives and the widenings, added in quadrature, then inflated by what the logs taught of the noise.
func (c *Clock) sigma(j Jug) float64 {
	conc := c.batter.jugConcentration(j)
	v := c.hand.variance(c.batter.Recipe, j.Scents) + c.law.modelVariance(c.batter, conc) + c.batter.widening(conc)
	for _, s := range j.Scents {
		v += square(loadSD(s.Ratio()))
	}
	if len(blending(c.batter.Bursts)) == 0 && len(blending(j.Bursts)) == 0 {
		v += square(handStirredSD)
	}
	return math.Sqrt(v * c.hand.inflation())
}

// modelVariance is the part of section 2.5 that no log changes.
func (l law) modelVariance(b Batter, concentration float64) float64 {
	kelvin, sd := b.StartC+zeroC, plannedK
	if b.Measured {
		sd = measuredK
	}
	return square(PourSD) + square(JudgeSD) +
		square(l.activeJ/(gasJ*kelvin*kelvin)*sd) +
		square(activeSDJ/gasJ*(1/kelvin-1/refK)) +
		square(waterSD*math.Log(concentration/referenceConcentration))
}

// widening is the batter's part of section 6, as a variance.
func (b Batter) widening(concentration float64) float64 {
	v := 0.0
	for _, w := range []struct {
		when bool
		sd   float64
	}{
		{concentration > 0.43 || concentration < 0.27, farLyeSD},
		{b.OilG < 200 || b.OilG > 5000, farSizeSD},
		{b.CrudeOil, crudeOilSD},
	} {
		if w.when {
			v += square(w.sd)
		}
	}
	for _, a := range b.Additives {
		v += square(a.SD*a.doubtRatio()) + square(a.doseSD())
		if a.Heat {
			v += square(heatSD * math.Min(1, a.Ratio()))
		}
		if a.Alcohol {
			v += square(alcoholSD * math.Min(1, a.Ratio()))
		}
	}
	return v
}

// doseSD is what an additive's dose adds where it is far over the stated one. A smaller dose adds none: what it can do goes to
// nothing with it, so that a pinch must not be less sure than the stated dose.
func (a Additive) doseSD() float64 {
	if a.Ratio() < 1 {
		return 0
	}
	return loadSD(a.Ratio())
}

// mostRatio is how far over its test load or its stated dose the effect of a thing is guessed at all.
const mostRatio = 4

// loadSD is what a scent's load adds where it is far from its test load.
func loadSD(ratio float64) float64 {
	switch {
	case ratio == 0:
		return 0
	case ratio > 2:
		return highLoadSD
	case ratio < 0.3 || ratio > 1.7:
		return offLoadSD
	default:
		return 0
	}
}

func square(x float64) float64 { return x * x }
