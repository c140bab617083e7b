package label

import "math"

// LetterMM is the least height of the weight's figures, mm, on a label of a face so wide and high, mm, round a pack whose longest side is longestMM; 0: the
// market states none, or what it goes by is not known.
func (m Market) LetterMM(netG, faceWideMM, faceHighMM, longestMM float64) float64 {
	measure := 0.0
	switch m.HeightBy {
	case HeightByMass:
		measure = netG
	case HeightByFace:
		measure = faceWideMM * faceHighMM / 100 // cm²
	case HeightBySide:
		measure = longestMM
	}
	if !(measure > 0) || math.IsInf(measure, 0) {
		return 0
	}
	for _, h := range m.Heights {
		if h.UpTo == 0 || measure <= h.UpTo+slack {
			return h.MM
		}
	}
	return 0
}
