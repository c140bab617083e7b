package chem

import (
	"errors"
	"fmt"
	"math"
)

// ErrCure is an impossible drying of a bar.
var ErrCure = errors.New("impossible drying")

// AllergenPercent is the share of a rinse-off product by mass above which a fragrance allergen has to be named:
// Regulation (EU) 2023/1545 (read).
const AllergenPercent = 0.01

// CuredG returns the mass, g, of soap cured to a final moisture, given its dry mass: dry ÷ (1 - moisture). dryG is
// everything but water and the impurity of the alkali, ≥ 0; finalMoisture a fraction, 0 or more and below 1.
// Saponifying triglycerides makes no water (derived), so the water added is the water to lose.
func CuredG(dryG, finalMoisture float64) (float64, error) {
	if !finite(dryG) || dryG < 0 {
		return 0, fmt.Errorf("%w: dry mass %v g: give 0 or more", ErrCure, dryG)
	}
	if !(finalMoisture >= 0 && finalMoisture < 1) {
		return 0, fmt.Errorf("%w: final moisture %v: give a fraction of 0 or more and below 1, 0.10 for 10 %%", ErrCure, finalMoisture)
	}
	return dryG / (1 - finalMoisture), nil
}

// DryingLoss returns the fraction of its mass that soap loses from cutG, above 0, to curedG, 0 or more, g. It is
// below 0 when the soap gains mass.
func DryingLoss(cutG, curedG float64) (float64, error) {
	if !(cutG > 0) || !finite(cutG) || !finite(curedG) || curedG < 0 {
		return 0, fmt.Errorf("%w: from %v g to %v g: give a mass above 0 as cut and 0 or more as cured", ErrCure, cutG, curedG)
	}
	return 1 - curedG/cutG, nil
}

// CutForCured returns the mass, g, to cut for a bar that shall weigh curedG after losing the fraction loss of it, below 1.
func CutForCured(curedG, loss float64) (float64, error) {
	if !finite(curedG) || curedG < 0 || !finite(loss) || loss >= 1 {
		return 0, fmt.Errorf("%w: %v g after losing %v of it: give a mass of 0 or more and a fraction below 1", ErrCure, curedG, loss)
	}
	return curedG / (1 - loss), nil
}

// PercentOfBar returns g as percent of the mass of the bar, or of the batch, that it is in; NaN when that mass is not above 0.
// Limits and allergens are judged on the cured mass, base and icing together: drying concentrates them.
func PercentOfBar(g, curedG float64) float64 {
	if !(curedG > 0) {
		return math.NaN()
	}
	return 100 * g / curedG
}

// Browning is how far vanillin turns a bar brown; empty: not known.
type Browning string

// The bands of browning (common practice, no source).
const (
	BrowningNone  Browning = "none"
	BrowningCream Browning = "cream"
	BrowningTan   Browning = "tan"
	BrowningMid   Browning = "mid brown"
	BrowningDark  Browning = "dark brown"
)

// Where the bands of browning begin, percent of vanillin and ethyl vanillin together in the cured bar or in the part of it that is judged
// (common practice, no published threshold). Makers give them in percent of the scent, tan from 1, mid brown from 5, dark brown above 10,
// used at about 5 % of the oils; that is 3.782 % of a bar cured to 10 % moisture, and the bounds here are theirs in it. The faint cream that
// begins at 0.1 % of the scent is called seen from five times that: a scent that leaves 0.004 % in a bar is not known to show.
const (
	vanillinCream = 0.02
	vanillinTan   = 0.0378
	vanillinMid   = 0.189
	vanillinDark  = 0.3782
)

// VanillinTint returns the browning to expect of that percent of vanillin and ethyl vanillin together in a cured bar, or in the part of a
// bar that holds it. Empty for a percentage that cannot be.
func VanillinTint(percentInBar float64) Browning {
	switch p := percentInBar; {
	case !(p >= 0 && p <= 100):
		return ""
	case p < vanillinCream:
		return BrowningNone
	case p < vanillinTan:
		return BrowningCream
	case p < vanillinMid:
		return BrowningTan
	case p <= vanillinDark:
		return BrowningMid
	}
	return BrowningDark
}
