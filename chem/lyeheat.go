package chem

import "math"

// lyeHeat is one column set of the heat of dissolving solid NaOH in water, both at 25 °C, against mass percent.
type lyeHeat struct {
	percent, riseK, warmerK, heat25, heat60 [13]float64
}

// lyeHeats returns the adiabatic rise, K; the same were the heat of solution 1.4 kJ/mol larger, as the modern value at
// infinite dilution has it; and the specific heat of the solution at 25 and 60 °C, kJ/(kg K). All derived: integral
// heats of Felder & Rousseau, Table B.11 (memory, one row read), solution enthalpy of Olsson, Jernqvist & Aly,
// Int. J. Thermophys. 18 (1997) 779 (read); water 4.18 from memory. Above 46 % the enthalpy is slightly out of its range.
func lyeHeats() lyeHeat {
	return lyeHeat{
		percent: [13]float64{0, 10, 15, 20, 25, 28, 30, 33, 35, 38, 40, 45, 50},
		riseK:   [13]float64{0, 27.9, 42.8, 57.1, 69.5, 75.7, 79.3, 83.7, 86.1, 88.6, 89.5, 89.7, 86.8},
		warmerK: [13]float64{0, 28.8, 44.2, 59.0, 71.8, 78.4, 82.2, 87.0, 89.5, 92.4, 93.6, 94.4, 92.3},
		heat25:  [13]float64{4.18, 3.865, 3.765, 3.698, 3.650, 3.624, 3.606, 3.575, 3.551, 3.506, 3.471, 3.363, 3.232},
		heat60:  [13]float64{4.18, 3.826, 3.743, 3.690, 3.651, 3.628, 3.611, 3.579, 3.552, 3.504, 3.466, 3.351, 3.214},
	}
}

// kohRiseBand is how much wider the band of the rise gets, as a part of the rise, for a lye all of KOH (assumed: no
// table of KOH heats was at hand). Above maxKOHRiseShare no rise is given at all.
const (
	kohRiseBand     = 0.3
	maxKOHRiseShare = 0.5
)

// LyeRise returns how far dissolving solid alkali warms its own water with no heat lost, K, and how much more the
// spread between published heats allows, K. concentration is that of pure alkali, at the moment of dissolving; the
// start is 25 °C, and another common start moves the rise by under 1 %. A KOH share, by moles, widens the band. ok is
// false outside 0 < concentration ≤ 0.50 and above a KOH share of 0.5. A stock lye is dissolved already: don't ask.
func LyeRise(concentration, kohShare float64) (riseK, bandK float64, ok bool) {
	if !(concentration > 0 && concentration <= lyeMaxFraction && kohShare >= 0 && kohShare <= maxKOHRiseShare) {
		return 0, 0, false
	}
	t := lyeHeats()
	riseK = interpolate(t.percent[:], t.riseK[:], 100*concentration)
	warmer := interpolate(t.percent[:], t.warmerK[:], 100*concentration)
	return riseK, warmer - riseK + kohRiseBand*kohShare*riseK, true
}

// LyeSpecificHeat returns the specific heat of a solution of pure NaOH, kJ/(kg K), at c °C. The tables are for 25 and
// 60 °C and are followed in a straight line from 0 to 120 °C; beyond that, and above 50 %, the nearest edge is used.
func LyeSpecificHeat(concentration, c float64) float64 {
	t := lyeHeats()
	cold := interpolate(t.percent[:], t.heat25[:], 100*concentration)
	warm := interpolate(t.percent[:], t.heat60[:], 100*concentration)
	c = min(max(c, 0), 120)
	return cold + (warm-cold)*(c-25)/35
}

// OilSpecificHeat returns the specific heat of a fat, kJ/(kg K), at c °C: Choi & Okos 1986, as in ASHRAE (read), -40 to 150 °C.
func OilSpecificHeat(c float64) float64 {
	return 1.9842 + 1.4733e-3*c - 4.8008e-6*c*c
}

// MixC returns the temperature, °C, of oils and lye as they meet, before any heat of saponification and with no heat
// lost: the mean weighted by mass and specific heat. concentration is that of the pure alkali. NaN when there is nothing to mix.
func MixC(oilG, oilC, lyeG, lyeC, concentration float64) float64 {
	oil := oilG * OilSpecificHeat(oilC)
	lye := lyeG * LyeSpecificHeat(concentration, lyeC)
	if !(oil >= 0 && lye >= 0 && oil+lye > 0) {
		return math.NaN()
	}
	return (oil*oilC + lye*lyeC) / (oil + lye)
}

// A still jug of lye in air (assumed): it loses this much heat through its whole surface, W/(m² K), by air, radiation and
// some evaporation, and is about as wide as it is full, so that its surface is jugSurface × volume^(2/3).
const (
	jugLossWM2K = 12
	jugSurface  = 5.54
)

// CoolMinutes returns how long a still jug of lye takes to cool, min, by Newton's law with an assumed loss: expect half
// to twice as long. concentration is that of the pure alkali. It is 0 when the lye is no warmer than wanted already; ok
// is false when the lye would have to get as cold as the room or colder, or when there is no lye.
func CoolMinutes(lyeG, concentration, fromC, toC, roomC float64) (minutes float64, ok bool) {
	if !(lyeG > 0) || !(toC > roomC) || !finite(fromC) || !finite(toC) || !finite(roomC) {
		return 0, false
	}
	if fromC <= toC {
		return 0, true
	}
	middleC := (fromC + toC) / 2
	volumeM3 := lyeG / naohDensity(concentration, middleC) * 1e-6
	lossWK := jugLossWM2K * jugSurface * math.Pow(volumeM3, 2.0/3)
	heatJK := lyeG * LyeSpecificHeat(concentration, middleC)
	return heatJK / lossWK * math.Log((fromC-roomC)/(toC-roomC)) / 60, true
}
