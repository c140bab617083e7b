package chem

import "math"

// CloudBandC is how far [Blend.CloudC] may be out, °C (assumed).
const CloudBandC = 8

// cloudProfiled is the mass fraction of a blend, waxes and resins aside, that must have a profile before its cloud point is
// estimated (assumed).
const cloudProfiled = 0.9

const (
	gasJ  = 8.314462618 // J/(mol K), CODATA
	zeroC = 273.15      // K
)

// What a wax or resin is taken for where the shelf says no better: beeswax. Its drop point is 61 to 66 °C (Ph. Eur.,
// memory). Its chief ester, triacontyl palmitate, C46H92O2, weighs 677.2 g/mol by its formula, and beeswax takes about
// 175 J/g to melt (memory; published scans give 150 to 200).
const (
	waxMeltC   = 64
	waxMolarG  = 677.2
	waxFusionJ = 175 * waxMolarG
)

// fusion is how a pure substance melts: at c °C, taking joule per mol.
type fusion struct{ c, joule float64 }

// acidFusion is how an acid melts.
type acidFusion struct {
	acid Acid
	fusion
}

// acidFusions are the saturated acids that can set at the warmth of a batter: melting points from the CRC Handbook, heats
// from Schaake, van Miltenburg and De Kruif, J. Chem. Thermodyn. 14 (1982) 771 (both from memory, to 0.5 K and 1 kJ/mol).
func acidFusions() [6]acidFusion {
	return [6]acidFusion{
		{C12, fusion{43.8, 36300}},
		{C14, fusion{54.2, 45100}},
		{C16, fusion{62.5, 53700}},
		{C18, fusion{69.3, 61200}},
		{C20, fusion{75.4, 69200}},
		{C22, fusion{80.0, 78400}},
	}
}

// CloudC returns a rough cloud point of the blend, °C, within [CloudBandC]: the warmest at which something in it can begin to
// set. For its fats that is 10 + 60 × the mass fraction of palmitic and stearic acid (assumed; it puts olive at 20, palm at
// 38 and cocoa butter at 46). A wax, a resin or a free saturated acid sets under its own melting point, since the oils
// dissolve some of it: ln x = -(ΔH/R)(1/T - 1/T_m), the ideal solubility of a solid (Schröder and van Laar; Atkins, Physical
// Chemistry), x being its mole fraction in the melt. Stearic acid in benzene sets up to 8 K warmer than that. ok is false when under 90 % of what is no wax has a profile, and of nothing.
func (b Blend) CloudC() (c float64, ok bool) {
	if !(b.G() > 0) {
		return 0, false
	}
	fats := make(Blend, 0, len(b))
	for i := range b {
		if b[i].G > 0 && !b[i].Fat.Resin {
			fats = append(fats, b[i])
		}
	}
	if _, profiled := fats.Profile(); len(fats) > 0 && profiled < cloudProfiled {
		return 0, false
	}
	p, _ := b.Profile()
	c = 10 + 60*(p[C16]+p[C18])
	for _, s := range b.solids() {
		c = max(c, s.setsC())
	}
	return c, true
}

// solid is something in a blend that can set by itself, and its mole fraction in the melt.
type solid struct {
	fusion
	part float64
}

// setsC is where it begins to set, °C.
func (s solid) setsC() float64 {
	return 1/(1/(s.c+zeroC)-gasJ*math.Log(s.part)/s.joule) - zeroC
}

// solids are the waxes and resins of a blend and its free saturated acids.
func (b Blend) solids() []solid {
	var out []solid
	var free Profile // mol of each acid
	mol := 0.0
	for i := range b {
		f, g := &b[i].Fat, b[i].G
		if !(g > 0) {
			continue
		}
		n := f.mol(g)
		mol += n
		switch {
		case f.Resin:
			melt := f.MeltC
			if melt == 0 {
				melt = waxMeltC
			}
			out = append(out, solid{fusion{melt, waxFusionJ}, n})
		case f.Kind == FreeAcid:
			p := f.Profile.Normalised()
			for a := range p {
				free[a] += g * p[a] / Acid(a).MolarG()
			}
		}
	}
	for _, a := range acidFusions() {
		if free[a.acid] > 0 {
			out = append(out, solid{a.fusion, free[a.acid]})
		}
	}
	for i := range out {
		out[i].part = min(1, out[i].part/mol)
	}
	return out
}

// mol is how many molecules g grams of the fat hold: three esters to a triglyceride, one acid or ester to the others. A wax
// or resin is counted by beeswax's chief ester, for much of it takes no alkali.
func (f *Fat) mol(g float64) float64 {
	if f.Resin {
		return g / waxMolarG
	}
	n := g * f.Sap / mgPerMolKOH
	if f.Kind == FreeAcid || f.Kind == WaxEster {
		return n
	}
	return n / 3
}
