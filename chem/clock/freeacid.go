package clock

import "pourbench/chem"

func (b Batter) ffa() float64 {
	if b.FFA == 0 {
		return DefaultFFA
	}
	return b.FFA
}

// freeSoap is the conversion its free acid amounts to at lye-in: X(0) = ε_ffa·FFA (trace model 2.1).
func (l law) freeSoap(b Batter) float64 { return l.ffaSoap * b.ffa() }

// StageAtLyeIn is the furthest stage that the soap of the batch's free acid alone brings as lye and oils meet. That soap is
// grained out by the strong lye (1908 handbook; trace model E20): the batter is thick with it, and little of its fat has turned
// to soap. The second result is false where it brings none.
func (b Batter) StageAtLyeIn() (chem.Stage, bool) {
	x := standardLaw().freeSoap(b)
	for s := chem.Stiff; s >= chem.Light; s-- {
		if x >= stageX(s) {
			return s, true
		}
	}
	return 0, false
}
