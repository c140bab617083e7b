package chem

import "math"

// Crystal is a solid that draws water from damp air until it dissolves in it: it deliquesces.
type Crystal string

// The crystals whose limit is known. Sea and rock salts with their bitterns hold magnesium chloride.
const (
	Sucrose           Crystal = "sucrose"
	Glucose           Crystal = "glucose"
	CitricAcid        Crystal = "citric acid"
	SodiumChloride    Crystal = "sodium chloride"
	PotassiumChloride Crystal = "potassium chloride"
	MagnesiumChloride Crystal = "magnesium chloride" // its hydrate
)

// humidFit is a limit of RH = at × exp(kelvin/T), percent, T in K.
type humidFit struct {
	crystal    Crystal
	at, kelvin float64
}

// humidFits lists the limits. The salts are fits of the CRC Handbook of Chemistry and Physics, constant humidity solutions (after
// Wexler), for 10 to 40 °C, within 2 % (read). Sucrose: 84 to 85 % at 25 °C (memory). Glucose
// 81 %, citric acid 75 to 78 %, of which the lower is taken (memory). Those three are said without their temperature.
func humidFits() [6]humidFit {
	return [6]humidFit{
		{Sucrose, 85, 0},
		{Glucose, 81, 0},
		{CitricAcid, 75, 0},
		{SodiumChloride, 69.20, 25},
		{PotassiumChloride, 49.38, 159},
		{MagnesiumChloride, 29.26, 34},
	}
}

// Crystals lists the crystals that [Crystal.DissolvesRH] knows.
func Crystals() []Crystal {
	fits := humidFits()
	out := make([]Crystal, len(fits))
	for i, f := range fits {
		out[i] = f.crystal
	}
	return out
}

// The warmth the fits were made for, °C.
const humidLowC, humidHighC = 10, 40

// DissolvesRH returns the relative humidity, percent, from which the crystal deliquesces in air of c °C. Outside the 10 to 40 °C
// of the measurements the nearer end stands, from which no salt moves by 1 % of humidity in 5 K. ok is false for a crystal that is not known and for no temperature.
func (k Crystal) DissolvesRH(c float64) (percent float64, ok bool) {
	if math.IsNaN(c) {
		return 0, false
	}
	for _, f := range humidFits() {
		if f.crystal == k {
			return f.at * math.Exp(f.kelvin/(min(max(c, humidLowC), humidHighC)+zeroC)), true
		}
	}
	return 0, false
}

// MixedRH returns the relative humidity, percent, from which solids that lie mixed deliquesce together, lower than any of them
// alone: the product of their water activities (Ross equation, used by Allan, Taylor and Mauer 2015 on blends of salts without a common ion,
// which it met within -5 to +6 % of humidity: read; a salt with a sugar was not among them: derived). Each limit is percent, above 0 to
// 100; ok is false for none of them and for one that cannot be.
func MixedRH(limits ...float64) (percent float64, ok bool) {
	activity := 1.0
	for _, rh := range limits {
		if !(rh > 0 && rh <= 100) {
			return 0, false
		}
		activity *= rh / 100
	}
	return 100 * activity, len(limits) > 0
}

// The molar masses of glycerin and water, g/mol (derived from their formulas).
const molarGlycerin, molarWater = 92.094, 18.015

// norrishGlycerin is Norrish's constant of glycerin in water (the equation: Baeza and others 2010, abstract, read; the constant: memory).
const norrishGlycerin = 1.16

// GlycerinRH returns the relative humidity, percent, at which glycerin and water with that mass fraction of glycerin neither gain nor
// lose water: 100 x_w exp(-1.16 x_g²), Norrish's equation in mole fractions. NaN outside 0 to 1.
func GlycerinRH(fraction float64) float64 {
	if !(fraction >= 0 && fraction <= 1) {
		return math.NaN()
	}
	g := fraction / molarGlycerin
	x := g / (g + (1-fraction)/molarWater)
	return 100 * (1 - x) * math.Exp(-norrishGlycerin*x*x)
}

// GlycerinAt returns the mass fraction of glycerin in the film of water that glycerin draws from air of that relative humidity, percent, and
// the water a gram of glycerin holds in it, g. ok is false outside what can be: at 0 it holds none, towards 100 without end.
func GlycerinAt(rhPercent float64) (fraction, waterG float64, ok bool) {
	if !(rhPercent >= 0 && rhPercent < 100) {
		return 0, 0, false
	}
	dilute, strong := 0.0, 1.0
	for range 60 { // halves the doubt each time: past what a float64 holds
		mid := (dilute + strong) / 2
		if GlycerinRH(mid) > rhPercent {
			dilute = mid
		} else {
			strong = mid
		}
	}
	if strong == 0 {
		return 0, 0, false
	}
	return strong, 1/strong - 1, true
}
