package clock

import (
	"math"

	"pourbench/chem"
)

// HorizonMin is how far the clock looks, min after lye-in. A stage not reached by then has no time.
const HorizonMin = 360

// DefaultFFA is the free fatty acid of fresh refined oils, fraction (assumed; a common refinery limit).
const DefaultFFA = 0.003

// AdditiveSD is the usual sd of the ln of an additive's factor. Common practice, no source, for the factors themselves:
// honey, sugar or milk 1.2, alcohol or beer 1.5, clay or titanium white 1.1, salt or sodium lactate 1.
const AdditiveSD = 0.2

// How fast a portion of 1 kg of oil loses heat, W/K: a still-air film with radiation, about 10 W/m²K, on a vessel's area.
// It grows with the two-thirds power of the mass.
const (
	CoolingOpenJug   = 0.5
	CoolingBareLoaf  = 0.35
	CoolingInsulated = 0.10
)

const (
	zeroC = 273.15      // K
	gasJ  = 8.314462618 // J/(mol K), CODATA
	boilK = 373.15      // the batter's water boils: it gets no hotter
	refK  = 308.15      // 35 °C, where θ is 1

	referenceConcentration = 0.33 // of the lye, where F_w is 1
	referenceSpeed         = 1.30 // v_ref: 40 olive, 30 coconut, 25 palm, 5 castor comes to about 1
	referenceSuperfat      = 0.95 // 1 − s where F_s is 1
	waterExponent          = 1.5  // n_w, tuned to common practice
)

// law holds the constants of the rate equation. Tests change them to reach cases with a known answer.
type law struct {
	k0        float64 // 1/min at the reference, tuned: medium at about 10 min without help from the blender
	r         float64 // how many times faster the reaction is with all its soap made
	activeJ   float64 // activation energy, J/mol: simple esters, 42 to 47 (ethyl acetate in dioxane-water; palm oil ethanolysis)
	ffaSoap   float64 // of the free acid, what works as soap at once
	coarse    float64 // G0: speed of an unemulsified batter
	handFine  float64 // E_h: fineness that hand stirring reaches
	handMin   float64 // τ_h, min
	soapX     float64 // X_e: conversion whose soap emulsifies by itself
	blendMin  float64 // τ_b at 1 kg of oil, min
	blendGain float64 // S_b: speed while the blender runs
	heatJ     float64 // of saponification, J/mol: Hess, neutralisation and ester hydrolysis
	blendW    float64 // into the batter, W
	oilJ      float64 // specific heat of oil, J/(kg K)
	lyeJ      float64 // of lye
}

// standardLaw is the default parameters of the model. r, k0 and the conversions of the stages only show together in timings,
// so they must never be tuned one by one.
func standardLaw() law {
	return law{
		k0: 0.00205, r: 15, activeJ: 47000, ffaSoap: 0.30, coarse: 0.25, handFine: 0.20, handMin: 3, soapX: 0.010,
		blendMin: 0.25, blendGain: 5, heatJ: 55000, blendW: 60, oilJ: 2000, lyeJ: 3400,
	}
}

// acidSpeed is v: how fast a fatty acid brings a batter to a stage. The ranks are common practice and 1908 handbook advice, the
// numbers assumed. Stearic and palmitic are high since their soap thickens at a smaller conversion, not since they react faster.
func acidSpeed(a chem.Acid) float64 {
	switch a {
	case chem.C8, chem.C10, chem.C12, chem.C14, chem.Ricinoleic:
		return 2.2
	case chem.C16:
		return 2.0
	case chem.C18:
		return 2.6
	case chem.C16x1, chem.C18x1:
		return 0.40
	case chem.C18x2:
		return 0.50
	case chem.C18x3:
		return 0.55
	default:
		return 1.0
	}
}

// stageX is the conversion of the alkali at which a stage is reached; for emulsion a nominal value, which only the trace index uses.
func stageX(s chem.Stage) float64 {
	switch s {
	case chem.Emulsion:
		return 0.004
	case chem.Light:
		return 0.012
	case chem.Medium:
		return 0.025
	case chem.Thick:
		return 0.045
	default:
		return 0.080
	}
}

// coarseLeft is how much of its coarseness a batter has left, 1 − E times what its own soap leaves, when it counts as an emulsion.
const coarseLeft = 0.25

// dose is ln[(1 + rX)/(1 − X)], the variable the clock integrates: it grows at (1 + r)·k0·R, so at a constant R it is a straight
// line through the closed-form solution, and steps may be long.
func (l law) dose(x float64) float64 { return math.Log((1 + l.r*x) / (1 - x)) }

// conversion is the inverse of dose.
func (l law) conversion(dose float64) float64 {
	e := math.Exp(-dose)
	return (1 - e) / (1 + l.r*e)
}
