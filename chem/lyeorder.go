package chem

import (
	"fmt"
	"math"
)

// minSuperfat is far beyond any soap; it keeps a slip of the decimal point from becoming a plan.
const minSuperfat = -1

// check says which part of the order cannot be, and how to mend it.
func (o LyeOrder) check() error {
	if err := o.checkAlkali(); err != nil {
		return err
	}
	return o.checkSolution()
}

func (o LyeOrder) checkAlkali() error {
	switch {
	case !finite(o.DemandKOHG) || o.DemandKOHG < 0 || !finite(o.AcidKOHG) || o.AcidKOHG < 0:
		return fmt.Errorf("%w: oils %v g KOH, acids %v g KOH: give masses and saponification values of 0 or more",
			ErrLyeDemand, o.DemandKOHG, o.AcidKOHG)
	case o.DemandKOHG+o.AcidKOHG == 0:
		return fmt.Errorf("%w: nothing in the batch takes up alkali: add an oil with a saponification value", ErrLyeDemand)
	case !finite(o.Superfat) || o.Superfat < minSuperfat || o.Superfat >= 1:
		return fmt.Errorf("%w: %v: give a fraction from %v to below 1, 0.05 for 5 %%", ErrLyeSuperfat, o.Superfat, minSuperfat)
	case !finite(o.KOHShare) || o.KOHShare < 0 || o.KOHShare > 1:
		return fmt.Errorf("%w: %v: give a fraction of the moles from 0 to 1", ErrLyeShare, o.KOHShare)
	}
	return nil
}

func (o LyeOrder) checkSolution() error {
	dry := o.StockStrength == 0
	switch {
	case !finite(o.Concentration) || o.Concentration <= 0 || o.Concentration >= 1:
		return fmt.Errorf("%w: %v: give a fraction above 0 and below 1, 0.33 for 33 %%", ErrLyeConcentration, o.Concentration)
	case !finite(o.StockStrength) || o.StockStrength < 0 || o.StockStrength >= 1:
		return fmt.Errorf("%w: strength %v: give pure NaOH ÷ solution, above 0 and below 1, or 0 to weigh dry alkali",
			ErrLyeStock, o.StockStrength)
	case !dry && o.KOHShare > 0:
		return fmt.Errorf("%w: it holds NaOH only, and the order wants a KOH share of %v: set the KOH share to 0, or weigh both alkalis dry",
			ErrLyeStock, o.KOHShare)
	case dry && o.KOHShare < 1 && !purity(o.NaOHPurity):
		return fmt.Errorf("%w: NaOH %v: give a fraction above 0 and up to 1, as on its label", ErrLyePurity, o.NaOHPurity)
	case dry && o.KOHShare > 0 && !purity(o.KOHPurity):
		return fmt.Errorf("%w: KOH %v: give a fraction above 0 and up to 1, as on its label", ErrLyePurity, o.KOHPurity)
	case !finite(o.WaterInExtrasG) || o.WaterInExtrasG < 0:
		return fmt.Errorf("%w: %v g: give 0 or more", ErrLyeWater, o.WaterInExtrasG)
	case !(o.WaterBeforeG >= 0 && o.WaterBeforeG <= o.WaterInExtrasG):
		return fmt.Errorf("%w: %v g before the alkali of %v g in all: give 0 to all of it", ErrLyeWater, o.WaterBeforeG, o.WaterInExtrasG)
	}
	return nil
}

func purity(p float64) bool { return p > 0 && p <= 1 }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
