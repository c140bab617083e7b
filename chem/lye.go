package chem

import (
	"errors"
	"math"
)

// What [MixLye] refuses. The errors it returns wrap one of these and say which value was wrong and how to mend it.
var (
	ErrLyeDemand        = errors.New("impossible alkali demand")
	ErrLyeSuperfat      = errors.New("impossible superfat")
	ErrLyeConcentration = errors.New("impossible lye concentration")
	ErrLyeShare         = errors.New("impossible KOH share")
	ErrLyePurity        = errors.New("impossible purity")
	ErrLyeStock         = errors.New("impossible stock lye")
	ErrLyeWater         = errors.New("impossible water in the extras")
)

// LyeOrder is what a lye is wanted for. Everything that is a part of a whole is a fraction, 0.05 for 5 %.
type LyeOrder struct {
	DemandKOHG     float64 // g KOH that the oils take up in full, ≥ 0: see [Blend.DemandKOH]
	AcidKOHG       float64 // g KOH that the extras' acids take up, ≥ 0; neutralised in full, no superfat taken off
	Superfat       float64 // lye discount on DemandKOHG, -1 ≤ s < 1; below 0 is lye-heavy, and the caller's to judge
	Concentration  float64 // alkali as weighed ÷ (alkali as weighed + all its water), above 0 and below 1
	KOHShare       float64 // of the alkali, by moles, 0 to 1
	NaOHPurity     float64 // of the dry alkali, above 0 to 1; not looked at when no dry NaOH is weighed
	KOHPurity      float64 // of the dry alkali, above 0 to 1; not looked at when no KOH is weighed
	StockStrength  float64 // pure NaOH in a ready solution by mass, above 0 and below 1; 0: dry alkali is weighed
	WaterInExtrasG float64 // g of water that watery extras bring, ≥ 0
	WaterBeforeG   float64 // of it, g that is there before the alkali: milk that is the lye's water; 0 to WaterInExtrasG
}

// Lye is what to weigh for an order, unrounded, and what comes of it.
type Lye struct {
	NaOHPureG, KOHPureG       float64 // g of pure alkali that reach the oils
	NaOHWeighedG, KOHWeighedG float64 // g of dry alkali to weigh, pure ÷ purity; 0 with a stock lye
	StockG                    float64 // g of stock lye to weigh; 0 without
	WaterToAddG               float64 // g; below 0 when Short
	AllWaterG                 float64 // g: to add, in the stock lye and in the extras
	Concentration             float64 // as ordered; of the pure alkali with a stock lye
	PureConcentration         float64 // pure alkali ÷ (alkali as weighed + all its water): for density, heat and clock
	AsMixed                   float64 // alkali as weighed ÷ (that + the water it dissolves in, without the extras' water that joins later)
	Short                     bool    // stock lye or extras bring more water than the concentration wants
}

// SolutionG returns the mass, g, of the whole lye solution with all its water and any impurity.
func (l Lye) SolutionG() float64 { return l.alkaliG() + l.AllWaterG }

// PureAsMixed is AsMixed with the impurity of the alkali left out of it, for [LyeRise]: pure alkali ÷ (alkali as weighed
// + the water it dissolves in), a fraction; 0 for the zero Lye.
func (l Lye) PureAsMixed() float64 {
	g := l.alkaliG()
	if g <= 0 {
		return 0
	}
	return l.AsMixed * (l.NaOHPureG + l.KOHPureG) / g
}

// alkaliG is the alkali "as weighed": the dry alkali, or the pure alkali of a stock lye.
func (l Lye) alkaliG() float64 {
	if l.StockG > 0 {
		return l.NaOHPureG + l.KOHPureG
	}
	return l.NaOHWeighedG + l.KOHWeighedG
}

// MixLye works out the alkali and water of an order. An impossible order gives one of the ErrLye errors; one that would
// need water taken out is worked out all the same, with Short set.
func MixLye(o LyeOrder) (Lye, error) {
	if err := o.check(); err != nil {
		return Lye{}, err
	}
	alkaliKOHG := o.DemandKOHG*(1-o.Superfat) + o.AcidKOHG
	l := Lye{
		NaOHPureG:     alkaliKOHG * (1 - o.KOHShare) * AlkaliRatio,
		KOHPureG:      alkaliKOHG * o.KOHShare,
		Concentration: o.Concentration,
	}
	stockWaterG := 0.0
	switch {
	case o.StockStrength > 0:
		l.StockG = l.NaOHPureG / o.StockStrength
		stockWaterG = l.StockG - l.NaOHPureG
	default:
		l.NaOHWeighedG = weighed(l.NaOHPureG, o.NaOHPurity)
		l.KOHWeighedG = weighed(l.KOHPureG, o.KOHPurity)
	}
	alkaliG := l.alkaliG()
	l.AllWaterG = alkaliG * (1 - o.Concentration) / o.Concentration
	l.WaterToAddG = l.AllWaterG - stockWaterG - o.WaterInExtrasG
	l.Short = l.WaterToAddG < 0
	l.PureConcentration = (l.NaOHPureG + l.KOHPureG) / (alkaliG + l.AllWaterG)
	l.AsMixed = alkaliG / (alkaliG + stockWaterG + max(0, l.WaterToAddG) + o.WaterBeforeG)
	return l, nil
}

// weighed is the dry alkali that holds pureG; a purity nobody needs is not divided by.
func weighed(pureG, purity float64) float64 {
	if pureG == 0 {
		return 0
	}
	return pureG / purity
}

// SuperfatOf returns the superfat, a fraction, that the given grams of pure alkali leave in oils that would take up
// demandKOHG, once the extras' acids of the order have had theirs. Below 0 the alkali is in excess. The demand is an
// argument so that the low and high cases can be asked for; NaN when it is not above 0.
func (o LyeOrder) SuperfatOf(naohPureG, kohPureG, demandKOHG float64) float64 {
	if !(demandKOHG > 0) {
		return math.NaN()
	}
	return 1 - (naohPureG/AlkaliRatio+kohPureG-o.AcidKOHG)/demandKOHG
}
