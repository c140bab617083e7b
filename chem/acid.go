package chem

import "math"

// Standard atomic weights, g/mol: CIAAW abridged values (read).
const (
	atomicH = 1.008
	atomicC = 12.011
	atomicO = 15.999
)

// acidWord is what an acid is called on screens and in files.
type acidWord struct{ name, key string }

func acidWords() [AcidCount]acidWord {
	return [AcidCount]acidWord{
		C6: {"caproic", "c6_0"}, C8: {"caprylic", "c8_0"}, C10: {"capric", "c10_0"}, C12: {"lauric", "c12_0"},
		C14: {"myristic", "c14_0"}, C16: {"palmitic", "c16_0"}, C16x1: {"palmitoleic", "c16_1"}, C18: {"stearic", "c18_0"},
		C18x1: {"oleic", "c18_1"}, C18x2: {"linoleic", "c18_2"}, C18x3: {"linolenic", "c18_3"}, C20: {"arachidic", "c20_0"},
		C20x1: {"gondoic", "c20_1"}, C22: {"behenic", "c22_0"}, C22x1: {"erucic", "c22_1"}, C24: {"lignoceric", "c24_0"},
		Ricinoleic: {"ricinoleic", "ricinoleic"},
	}
}

// acidFormula is a fatty acid's atoms and the double bonds of its chain.
type acidFormula struct{ carbons, bonds, oxygens float64 }

func acidFormulas() [AcidCount]acidFormula {
	return [AcidCount]acidFormula{
		C6: {6, 0, 2}, C8: {8, 0, 2}, C10: {10, 0, 2}, C12: {12, 0, 2}, C14: {14, 0, 2},
		C16: {16, 0, 2}, C16x1: {16, 1, 2}, C18: {18, 0, 2}, C18x1: {18, 1, 2}, C18x2: {18, 2, 2}, C18x3: {18, 3, 2},
		C20: {20, 0, 2}, C20x1: {20, 1, 2}, C22: {22, 0, 2}, C22x1: {22, 1, 2}, C24: {24, 0, 2}, Ricinoleic: {18, 1, 3},
	}
}

func (f acidFormula) molarG() float64 {
	return f.carbons*atomicC + 2*(f.carbons-f.bonds)*atomicH + f.oxygens*atomicO
}

// iodineBound is the iodine value per percent of an acid that is bound as triglyceride: AOCS Cd 1c-85 (read). Ricinoleic
// acid is not in that list; its factor is derived from 253.809 g I2 per mol of double bonds.
func iodineBound() [AcidCount]float64 {
	return [AcidCount]float64{
		C16x1: 0.950, C18x1: 0.860, C18x2: 1.732, C18x3: 2.616, C20x1: 0.785, C22x1: 0.723, Ricinoleic: 0.8157,
	}
}

// iodineFree is the same for the free acid.
func iodineFree() [AcidCount]float64 {
	return [AcidCount]float64{
		C16x1: 0.9976, C18x1: 0.8986, C18x2: 1.810, C18x3: 2.735, C20x1: 0.8175, C22x1: 0.7497, Ricinoleic: 0.8504,
	}
}

// valid reports whether a is one of the acids the package knows.
func (a Acid) valid() bool { return a >= 0 && int(a) < AcidCount }

// Name returns the acid's common name, such as "oleic"; "unknown acid" for a value outside the table.
func (a Acid) Name() string {
	if !a.valid() {
		return "unknown acid"
	}
	return acidWords()[a].name
}

// Key returns the acid's key in plan, shelf and reference files, such as "c18_1"; empty for a value outside the table.
func (a Acid) Key() string {
	if !a.valid() {
		return ""
	}
	return acidWords()[a].key
}

// MolarG returns the molar mass of the free acid, g/mol, worked out from its formula; NaN for a value outside the table.
func (a Acid) MolarG() float64 {
	if !a.valid() {
		return math.NaN()
	}
	return acidFormulas()[a].molarG()
}
