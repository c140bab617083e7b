package chem

// Molar masses, g/mol, derived from CIAAW atomic weights: those of acid.go, Na 22.98976928 (read to 22.990, the rest from
// memory) and K 39.0983 (read).
const (
	MolarNaOH     = 39.99677 // MolarNaOH is sodium hydroxide.
	MolarKOH      = 56.1053  // MolarKOH is potassium hydroxide.
	MolarGlycerol = 92.094   // MolarGlycerol is C3H8O3.
	MolarWater    = 18.015   // MolarWater is H2O.
)

// AlkaliRatio is the mass of NaOH that does the work of one gram of KOH. Rounding it to 0.713 would be 0.016 % high.
const AlkaliRatio = MolarNaOH / MolarKOH

// KOHMoleShare returns the KOH share by moles, a fraction, of alkali that is KOH to the fraction massShare, 0 to 1, of its pure mass. NaOH
// is the lighter, so a gram of it does more: half by mass is 41.6 % by moles.
func KOHMoleShare(massShare float64) float64 {
	koh, naoh := massShare/MolarKOH, (1-massShare)/MolarNaOH
	return koh / (koh + naoh)
}

// mgPerMolKOH turns a saponification value into mol of alkali per g of fat.
const mgPerMolKOH = 1000 * MolarKOH
