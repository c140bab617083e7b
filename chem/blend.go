package chem

import "math"

// G returns the mass of the blend, g.
func (b Blend) G() float64 {
	sum := 0.0
	for i := range b {
		sum += b[i].G
	}
	return sum
}

// DemandKOH returns the alkali, g KOH, that saponifies or neutralises the whole blend: with every fat at its low end,
// at its working value and at its high end. Weighing by mass is exact, for the value is alkali per gram.
func (b Blend) DemandKOH() (low, mid, high float64) {
	for i := range b {
		g := b[i].G / 1000
		low += g * b[i].Fat.LowSap()
		mid += g * b[i].Fat.Sap
		high += g * b[i].Fat.HighSap()
	}
	return low, mid, high
}

// SapKOH returns the blend's working saponification value, mg KOH per g; NaN for a blend without mass.
func (b Blend) SapKOH() float64 {
	_, mid, _ := b.DemandKOH()
	return 1000 * mid / b.G()
}

// Profile returns the blend's fatty acids, each fat's normalised and then weighted by its mass, and the mass fraction
// of the blend that has a profile. Without one, the profile is all 0 and the fraction 0.
func (b Blend) Profile() (p Profile, profiled float64) {
	knownG, allG := 0.0, 0.0
	for i := range b {
		g, fat := b[i].G, &b[i].Fat
		allG += g
		if g <= 0 || !fat.Profile.Known() {
			continue
		}
		knownG += g
		scale := g / fat.Profile.sum()
		for acid, w := range fat.Profile {
			p[acid] += scale * w
		}
	}
	if knownG <= 0 {
		return Profile{}, 0
	}
	for acid := range p {
		p[acid] /= knownG
	}
	return p, knownG / allG
}

// IodineValue returns the blend's iodine value, g I2 per 100 g: by AOCS Cd 1c-85 where a fat's acids are known, else the
// middle of its published range. ok is false when a fat has neither, or the blend no mass.
func (b Blend) IodineValue() (iodine float64, ok bool) {
	sum, g := 0.0, 0.0
	for i := range b {
		if b[i].G <= 0 {
			continue
		}
		iv, known := b[i].Fat.iodine()
		if !known {
			return 0, false
		}
		sum += b[i].G * iv
		g += b[i].G
	}
	if g <= 0 {
		return 0, false
	}
	return sum / g, true
}

// Families returns the blend's fatty acids by family, percent by mass; all 0 for a blend without mass.
func (b Blend) Families() Families {
	if b.G() <= 0 {
		return Families{}
	}
	p, profiled := b.Profile()
	percent := 100 * profiled
	f := Families{
		ShortPercent:             percent * (p[C6] + p[C8] + p[C10] + p[C12] + p[C14]),
		PalmiticStearicPercent:   percent * (p[C16] + p[C18]),
		OleicPercent:             percent * p[C18x1],
		LinoleicLinolenicPercent: percent * (p[C18x2] + p[C18x3]),
		RicinoleicPercent:        percent * p[Ricinoleic],
	}
	other := p[C16x1] + p[C20] + p[C20x1] + p[C22] + p[C22x1] + p[C24]
	f.OtherPercent = percent*other + 100*(1-profiled)
	return f
}

// ML returns the blend's volume, mL, melted and at c °C, as the sum of its fats' volumes; NaN when a fat in it has no density.
func (b Blend) ML(c float64) float64 {
	sum := 0.0
	for i := range b {
		if b[i].G > 0 {
			sum += b[i].G / b[i].Fat.DensityAt(c)
		}
	}
	return sum
}

// GlycerolG returns the glycerol, g, that full saponification sets free: 1 mol for 3 mol of alkali taken by
// triglycerides, none from waxes and free acids. Free acid already in the oils is not taken off.
func (b Blend) GlycerolG() float64 {
	mol := 0.0
	for i := range b {
		if b[i].Fat.Kind == Triglyceride {
			mol += b[i].G * b[i].Fat.Sap / mgPerMolKOH
		}
	}
	return glycerolG(mol)
}

// OilSlope is how the density of a liquid vegetable oil changes, g/mL per K: Lipid Handbook (memory), -0.00064 to
// -0.00070 over 15 to 100 °C. A solid butter is denser: give such a fat the density of its melt.
const OilSlope = -0.00067

// DensityAt returns the fat's density as a liquid at c °C, g/mL, along [OilSlope]; NaN when its own density is not above 0.
func (f Fat) DensityAt(c float64) float64 {
	if !(f.DensityGML > 0) {
		return math.NaN()
	}
	return f.DensityGML + OilSlope*(c-f.DensityC)
}
