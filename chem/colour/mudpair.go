package colour

import "math"

// What a pair can lose is seen against its own colours. Judgement, as the other constants of the score.
const (
	greyLeast = 0.06 // chroma that makes a full point between two pastels
	greyPart  = 1.33 // the same as a part of their mean chroma, up to greyFull
	swallows  = 0.75 // how much of its mud a black parent hides
)

// greyScale is the chroma that has to be lost for a full point: pastels have little, and what they lose of it is missed the sooner. A white,
// a cream or a grey has none to lose: beside one the scale is that of strong colours.
func greyScale(a, b OKLCH) float64 {
	own := min(max(greyPart*(a.C+b.C)/2, greyLeast), greyFull)
	return greyFull + smooth(min(a.C, b.C), 0.025, 0.045)*(own-greyFull)
}

// expected is the chroma that a mixture with a share w of b would keep, were it no mud: the mean of both. Two cold colours meet as teal, which
// has a name and a standing of its own: where they lie so far apart, theirs is that on the straight way from one to the other, which is less.
func expected(a, b OKLCH, w float64) float64 {
	mean := (1-w)*a.C + w*b.C
	turn := math.Abs(a.H - b.H) // at most 180 between two cold hues
	straight := math.Sqrt(max(0, mean*mean-2*w*(1-w)*a.C*b.C*(1-math.Cos(turn*math.Pi/180))))
	return mean + cold(a.H)*cold(b.H)*smooth(turn, 80, 115)*(straight-mean)
}

// cold says how far a hue, in degrees, is one from green to blue.
func cold(h float64) float64 { return smooth(h, 120, 140) * (1 - smooth(h, 275, 300)) }

// nearBlack says how far a colour is black: a mixture with it is a shade of the other, with a crisp border, and nobody calls it mud.
func nearBlack(c OKLCH) float64 { return (1 - smooth(c.L, 0.34, 0.48)) * (1 - smooth(c.C, 0.02, 0.05)) }
