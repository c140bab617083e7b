package chem

import "math"

// TolerableShortfall returns by how much a pack of that nominal mass, g, may fall short: the tolerable negative error of
// Directive 76/211/EEC, annex I, 2.4, with the two classes above 10 kg of the GB Packaged Goods Regulations 2006 (read).
// Values from a percentage are rounded up to 0.1 g. ok is false outside 5 g to 25 kg, where no value is laid down.
func TolerableShortfall(nominalG float64) (g float64, ok bool) {
	switch n := nominalG; {
	case !(n >= 5 && n <= 25000):
		return 0, false
	case n <= 50:
		return roundUpTenth(n * 9 / 100), true
	case n <= 100:
		return 4.5, true
	case n <= 200:
		return roundUpTenth(n * 4.5 / 100), true
	case n <= 300:
		return 9, true
	case n <= 500:
		return roundUpTenth(n * 3 / 100), true
	case n <= 1000:
		return 15, true
	case n <= 10000:
		return roundUpTenth(n * 1.5 / 100), true
	case n <= 15000:
		return 150, true
	default:
		return roundUpTenth(n / 100), true
	}
}

// roundUpTenth rounds up to 0.1 and leaves alone what is a tenth but for the last bits of its binary fraction.
func roundUpTenth(g float64) float64 {
	const slack = 1e-9
	return math.Ceil(g*10-slack) / 10
}
