package cure

import (
	"math"

	"pourbench/chem"
)

// What is taken before a bar was weighed. Nothing of it was found for soap.
const (
	PriorTauDays    = 16   // "four weeks are nine tenths of it" for a bar of 25 × 80 × 62 mm (common practice; derived 16.18, rounded)
	PriorLnTauSD    = 0.6  // assumed
	FinalMoistureSD = 0.03 // of the moisture that the recipe states (assumed)
	WeighingSDG     = 0.15 // of one bar weighed on a scale of 0.1 g (assumed)
	CriterionLoss   = 0.5  // percent a week; 1 is "less than about 1 g a week on a 100 g bar" (common practice, no source)
)

// Prior is what is taken of a bar before it was weighed.
type Prior struct {
	Loss, LossSD   float64 // the part of its mass at the first weighing that will go, lambda
	LnTau, LnTauSD float64 // of tau in days
}

// FromRecipe returns the prior of a bar with a moisture at the cut that dries to a final moisture, known to ± finalSD, all fractions: lambda is
// [chem.DryingLoss] of the two, 1 - (1 - Mc)/(1 - Mf), and its sd that of Mf times (1 - Mc)/(1 - Mf)² (derived).
func FromRecipe(cutMoisture, finalMoisture, finalSD float64) (Prior, error) {
	if !(cutMoisture >= 0 && cutMoisture < 1) {
		return Prior{}, refuse(BadFigure, "a moisture at the cut of %.3g: give a fraction from 0 to below 1", cutMoisture)
	}
	if !(finalSD > 0 && finalSD < 1) {
		return Prior{}, refuse(BadFigure, "a final moisture known to ± %.3g: give a fraction above 0 and below 1", finalSD)
	}
	cured, err := chem.CuredG(1-cutMoisture, finalMoisture)
	if err != nil {
		return Prior{}, refuse(BadFigure, "%v", err)
	}
	loss, err := chem.DryingLoss(1, cured)
	if err != nil {
		return Prior{}, refuse(BadFigure, "%v", err)
	}
	return Prior{Loss: loss, LossSD: finalSD * cured / (1 - finalMoisture), LnTau: math.Log(PriorTauDays), LnTauSD: PriorLnTauSD}, nil
}

// PriorOf is a prior by its numbers: the part of the mass that will go with its sd, tau in days and the sd of its logarithm.
func PriorOf(loss, lossSD, tauDays, lnTauSD float64) Prior {
	return Prior{Loss: loss, LossSD: lossSD, LnTau: math.Log(tauDays), LnTauSD: lnTauSD}
}

// check says what about a prior cannot be.
func (p Prior) check() error {
	if !(math.Abs(p.Loss) < 1 && p.LossSD > 0 && p.LossSD < 10 && math.Abs(p.LnTau) < 20 && p.LnTauSD > 0 && p.LnTauSD < 20) {
		return refuse(BadFigure, "before the weighings: a loss of %.3g ± %.3g of the mass and ln tau of %.3g ± %.3g; each needs a spread above 0", p.Loss, p.LossSD, p.LnTau, p.LnTauSD)
	}
	return nil
}
