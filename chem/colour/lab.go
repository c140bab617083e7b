package colour

import "math"

// Lab is a colour in CIELAB for D65: L from 0 (black) to 100 (white), A from green to red, B from blue
// to yellow.
type Lab struct{ L, A, B float64 }

// White point and constants of CIELAB (CIE 15:2018; D65, 2 degree observer).
const (
	whiteX  = 0.95047
	whiteZ  = 1.08883
	epsilon = 216.0 / 24389
	kappa   = 24389.0 / 27
)

// Lab returns the colour in CIELAB under D65 (CIE 15:2018; sRGB primaries of IEC 61966-2-1).
func (c RGB) Lab() Lab {
	x := (0.4124564*c.R + 0.3575761*c.G + 0.1804375*c.B) / whiteX
	y := 0.2126729*c.R + 0.7151522*c.G + 0.0721750*c.B
	z := (0.0193339*c.R + 0.1191920*c.G + 0.9503041*c.B) / whiteZ
	fx, fy, fz := labCurve(x), labCurve(y), labCurve(z)
	return Lab{L: 116*fy - 16, A: 500 * (fx - fy), B: 200 * (fy - fz)}
}

func labCurve(t float64) float64 {
	if t > epsilon {
		return math.Cbrt(t)
	}
	return (kappa*t + 16) / 116
}

// OKLab is a colour in Ottosson's OKLab: L from 0 to 1, A and B about -0.4 to 0.4.
type OKLab struct{ L, A, B float64 }

// OKLCH is an OKLab colour as lightness, chroma and hue. H is in degrees, 0 to 360, and means nothing
// where C is 0.
type OKLCH struct{ L, C, H float64 }

// OKLab returns the colour in OKLab (Ottosson 2020, "A perceptual color space for image processing";
// coefficients from memory, checked against an independent library in the tests).
func (c RGB) OKLab() OKLab {
	l := math.Cbrt(0.4122214708*c.R + 0.5363325363*c.G + 0.0514459929*c.B)
	m := math.Cbrt(0.2119034982*c.R + 0.6806995451*c.G + 0.1073969566*c.B)
	s := math.Cbrt(0.0883024619*c.R + 0.2817188376*c.G + 0.6299787005*c.B)
	return OKLab{
		L: 0.2104542553*l + 0.7936177850*m - 0.0040720468*s,
		A: 1.9779984951*l - 2.4285922050*m + 0.4505937099*s,
		B: 0.0259040371*l + 0.7827717662*m - 0.8086757660*s,
	}
}

// OKLCH returns the colour as lightness, chroma and hue in degrees.
func (c RGB) OKLCH() OKLCH {
	lab := c.OKLab()
	return OKLCH{L: lab.L, C: math.Hypot(lab.A, lab.B), H: degrees(lab.B, lab.A)}
}

// degrees returns the angle of (x, y), 0 to 360. The conversion keeps the product from being fused
// into the sum, so that the same colour has the same hue on every processor.
func degrees(y, x float64) float64 {
	d := float64(math.Atan2(y, x) * (180 / math.Pi))
	if d < 0 {
		d += 360
	}
	return d
}
