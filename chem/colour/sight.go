package colour

// Sight is how an eye sees colour.
type Sight string

// The sights: all eyes, and the three dichromacies.
const (
	EveryEye     Sight = "everyone"
	Protanopia   Sight = "protanopia"   // no long-wave cones: red is dark
	Deuteranopia Sight = "deuteranopia" // no middle-wave cones: red and green alike
	Tritanopia   Sight = "tritanopia"   // no short-wave cones: blue and green alike, rare
)

// ConfusableBelow is the CIEDE2000 difference under which two batters are called easy to confuse.
const ConfusableBelow = 10.0

// SeenBy returns the colour as it looks to the eye named, by the matrices of Machado, Oliveira and
// Fernandes (2009) for full severity. The matrices are from memory: each row is checked to sum to 1, and
// greys stay grey. An unknown sight sees the colour as it is.
func (c RGB) SeenBy(sight Sight) RGB {
	var m [3][3]float64
	switch sight {
	case Protanopia:
		m = [3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}
	case Deuteranopia:
		m = [3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}
	case Tritanopia:
		m = [3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}
	default:
		return c
	}
	return RGB{
		m[0][0]*c.R + m[0][1]*c.G + m[0][2]*c.B,
		m[1][0]*c.R + m[1][1]*c.G + m[1][2]*c.B,
		m[2][0]*c.R + m[2][1]*c.G + m[2][2]*c.B,
	}.clip(0, 1)
}

// Confusable returns the eye that can hardly tell a from b, and how far apart they look to it
// (CIEDE2000). Where they are near for everybody it is EveryEye; else the dichromacy that sees least;
// "" when all see 10 or more, and then the difference is the smallest of all.
func Confusable(a, b RGB) (which Sight, difference float64) {
	least := a.clip(0, 1).Difference(b.clip(0, 1))
	if least < ConfusableBelow {
		return EveryEye, least
	}
	worst := EveryEye
	for _, sight := range [3]Sight{Protanopia, Deuteranopia, Tritanopia} {
		if d := a.SeenBy(sight).Difference(b.SeenBy(sight)); d < least {
			worst, least = sight, d
		}
	}
	if least < ConfusableBelow {
		return worst, least
	}
	return "", least
}
