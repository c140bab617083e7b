package clock

import (
	"math"

	"pourbench/chem"
)

// Burst is one run of the stick blender.
type Burst struct {
	AtMin float64 // after lye-in, ≥ 0
	S     float64 // seconds, ≥ 0
}

// Additive is something stirred into the whole batch that changes its speed (reference values: [AdditiveSD]).
type Additive struct {
	Name      string
	Factor    float64 // on the speed at its stated dose, > 0; 1: none
	SD        float64 // of ln Factor, ≥ 0
	Percent   float64 // dose, percent of oils, ≥ 0
	AtPercent float64 // the dose Factor and SD were stated for, percent of oils; 0: the dose it has
	Heat      bool    // sugar, honey, milk: brings heat of its own
	Alcohol   bool
}

// Ratio is the dose against the stated one; 1 where none was stated.
func (a Additive) Ratio() float64 {
	if a.AtPercent == 0 {
		return 1
	}
	return a.Percent / a.AtPercent
}

// ln is what its dose adds to ln speed: doses act log-linearly, as loads of scent do.
func (a Additive) ln() float64 {
	if a.Factor == 1 {
		return 0 // whatever the ratio is
	}
	return a.Ratio() * math.Log(a.Factor)
}

// doubtRatio is the ratio its doubt grows with. What is known to change nothing may be far over its usual dose, but beyond four
// times nothing is known, and the doubt is stated for that.
func (a Additive) doubtRatio() float64 { return math.Min(a.Ratio(), mostRatio) }

// Scent is a fragrance or essential oil in one jug.
type Scent struct {
	ID, Name       string  // ID is what the hand's logs know it by
	LnFactor       float64 // prior: ln of its speed factor at its test load
	SD             float64 // prior sd of LnFactor, ≥ 0
	RefLoadPercent float64 // its test load, percent of oils, > 0
	LoadPercent    float64 // in this jug, percent of this jug's oils, ≥ 0
	AtMin          float64 // stirred in, min after lye-in; before the split counts as at the split
	JumpX          float64 // conversion it brings at once, 0 to 0.06; set only from a log of "thickened while stirring it in"
	Rices          bool    // known to rice or separate: refused, since that is not trace
	Seizes         bool    // known to set a batter within seconds
}

// Ratio is the load against the test load.
func (s Scent) Ratio() float64 { return s.LoadPercent / s.RefLoadPercent }

// Batter is one batch of oils and lye, from lye-in to its split.
type Batter struct {
	Recipe         string       // id of the recipe in the logs; empty: none
	OilG           float64      // all oils, g, 1 to 1e6
	Profile        chem.Profile // of the part that has one; need not sum to 1
	Profiled       float64      // fraction of the oils that has a profile
	WaxFraction    float64      // of the oils: waxes and resins
	CastorFraction float64      // of the oils
	SapKOHMgG      float64      // saponification value of the blend, mg KOH per g
	Superfat       float64      // fraction
	Concentration  float64      // pure alkali ÷ (pure alkali + all watery liquid), fraction by mass
	KOHShare       float64      // fraction of the alkali, by moles
	StartC         float64      // batter temperature as oils and lye have met, °C
	Measured       bool         // StartC was read off a thermometer
	RoomC          float64      // air, °C
	FFA            float64      // free fatty acid, fraction of the oils; 0: not known, [DefaultFFA] is taken
	CrudeOil       bool         // holds used, unrefined or pomace oil whose own free acid nobody measured
	CloudC         float64      // rough cloud point of the blend, °C
	CloudKnown     bool
	Still          bool    // neither blended nor stirred
	Bursts         []Burst // empty: stirred by hand only. They may overlap; what lies after the split is left out
	Additives      []Additive
	SplitMin       float64 // min after lye-in, 0 to [HorizonMin]
	Cooling        float64 // W/K for a portion of 1 kg of oil; 0: [CoolingOpenJug]
}

// Jug is a portion of the batch, on its own from the split. It is stirred by hand, unless it has bursts of its own.
type Jug struct {
	Fraction    float64 // of the batter's mass, over 0 to 1
	ExtraWaterG float64 // water that comes with its colourant, g, ≥ 0
	Scents      []Scent
	Bursts      []Burst // min after lye-in; what lies before the split is left out
	Cooling     float64 // W/K for a portion of 1 kg of oil; 0: the batter's
}

func (b Batter) cooling() float64 {
	if b.Cooling == 0 {
		return CoolingOpenJug
	}
	return b.Cooling
}

// naohMol is all the alkali of the batch, mol: m·SV/56.106·(1 − s) (trace model 2.1).
func (b Batter) naohMol() float64 {
	return b.OilG / 1000 * b.SapKOHMgG / 56.106 * (1 - b.Superfat)
}

// lyeKG is the lye that brings it, kg.
func (b Batter) lyeKG() float64 { return 0.040 * b.naohMol() / b.Concentration }

// jugConcentration is the jug's alkali against its share of the lye and the water its colourant brings.
func (b Batter) jugConcentration(j Jug) float64 {
	if j.ExtraWaterG == 0 {
		return b.Concentration
	}
	return 0.040 * b.naohMol() * j.Fraction / (b.lyeKG()*j.Fraction + j.ExtraWaterG/1000)
}

// composition is F_c: the mean speed of the fatty acids against the reference blend's. Oils without a profile count as 1.
func (b Batter) composition() float64 {
	var sum, weighted float64
	for a, w := range b.Profile {
		sum += w
		weighted += w * acidSpeed(chem.Acid(a))
	}
	mean := 1.0
	if sum > 0 {
		mean = b.Profiled*weighted/sum + (1 - b.Profiled)
	}
	return mean / referenceSpeed
}
