package chem

import "math"

// glycerylG is what three fatty acids gain in mass, g/mol, on becoming one triglyceride: glycerol less three water.
const glycerylG = MolarGlycerol - 3*MolarWater

// Known reports whether the profile says anything: every entry finite and not below 0, and at least one above it.
func (p Profile) Known() bool {
	for _, w := range p {
		if w < 0 || math.IsNaN(w) || math.IsInf(w, 0) {
			return false
		}
	}
	return p.sum() > 0
}

func (p Profile) sum() float64 {
	sum := 0.0
	for _, w := range p {
		sum += w
	}
	return sum
}

// Normalised returns the profile scaled to sum to 1, as published mid-ranges seldom do; an unknown profile is returned all 0.
func (p Profile) Normalised() Profile {
	if !p.Known() {
		return Profile{}
	}
	sum := p.sum()
	for i := range p {
		p[i] /= sum
	}
	return p
}

// meanMolarG is the number average molar mass of the free acids, g/mol. The mass average would put the saponification
// value of lauric oils 3 % low.
func (p Profile) meanMolarG() float64 {
	mol, formulas := 0.0, acidFormulas()
	for i, w := range p {
		mol += w / formulas[i].molarG()
	}
	return p.sum() / mol
}

// SapKOH returns the saponification value, mg KOH per g, of the triglyceride with these fatty acids and nothing
// unsaponifiable: 3 M(KOH) / (3 M + M(glycerol) - 3 M(water)) with M the mean on the mole basis, the theory of AOCS
// Cd 3a-94 (memory). NaN for an unknown profile. A free acid differs: see [Fat.TheorySap].
func (p Profile) SapKOH() float64 {
	if !p.Known() {
		return math.NaN()
	}
	return 3 * mgPerMolKOH / (3*p.meanMolarG() + glycerylG)
}

// acidValue is the acid value, mg KOH per g, of the free acids; NaN for an unknown profile.
func (p Profile) acidValue() float64 {
	if !p.Known() {
		return math.NaN()
	}
	return mgPerMolKOH / p.meanMolarG()
}

// IodineValue returns the iodine value, g I2 per 100 g, of the triglyceride with these fatty acids by AOCS Cd 1c-85
// (read), ricinoleic acid derived. The method reads low above 0.5 % unsaponifiable matter. NaN for an unknown profile.
func (p Profile) IodineValue() float64 {
	return p.iodine(iodineBound())
}

func (p Profile) iodine(factors [AcidCount]float64) float64 {
	if !p.Known() {
		return math.NaN()
	}
	sum := 0.0
	for i, w := range p {
		sum += w * factors[i]
	}
	return 100 * sum / p.sum()
}
