package colour

import (
	"fmt"
	"math"
)

// Paint is a batter as the Kubelka-Munk model sees it. It is a plain value: it can be kept, compared
// and used as a key. The zero Paint is no batter and is refused where paints are mixed.
type Paint struct {
	Ratio   Spectrum // absorption over scattering K/S, band by band, ≥ 0
	Scatter float64  // scattering S, 1 for a batter without white pigment
}

// Scattering that titanium white adds. One more unit of S for each percent is an assumption until it is
// calibrated; measured paint mixtures are predicted best with twice the scattering for white, and the
// minimum is so shallow that 1 to 3 does nearly as well.
const (
	scatterPerPercent = 1.0
	scatterMost       = 2.5
	titaniumMost      = 30.0 // percent; more is a slip of the decimal point
)

// Scatter returns the scattering S of a batter with a dose of titanium white in percent: 1 without any,
// 2 at 1 %, and never above 2.5, where pigment only crowds pigment. The rule is assumed (see the
// constants above it). A dose that is negative, above 30 % or not a number is refused.
func Scatter(titaniumPercent float64) (float64, error) {
	if !(titaniumPercent >= 0 && titaniumPercent <= titaniumMost) {
		return 0, fmt.Errorf("take titanium white: the dose is %g %%: give 0 to %g %%", titaniumPercent, titaniumMost)
	}
	return min(1+scatterPerPercent*titaniumPercent, scatterMost), nil
}

// NewPaint returns the paint of a finished batter whose colour is rgb and which holds titaniumPercent
// of titanium white (see Scatter). Give the colour of the batter in the jug, never that of the dry
// powder: a dry pigment is so dark that its colour hides its hue. It takes tens of microseconds; keep
// the result. A colour or dose that is not a number or far out of range is refused.
func NewPaint(rgb RGB, titaniumPercent float64) (Paint, error) {
	s, err := Scatter(titaniumPercent)
	if err != nil {
		return Paint{}, err
	}
	reflected, err := Upsample(rgb)
	if err != nil {
		return Paint{}, err
	}
	p := Paint{Scatter: s}
	for i, r := range reflected {
		p.Ratio[i] = ratio(r)
	}
	return p, nil
}

// Reflectance returns the share of light that an opaque layer sends back, band by band, 0 to 1.
func (p Paint) Reflectance() Spectrum {
	var s Spectrum
	for i, q := range p.Ratio {
		s[i] = reflectance(q)
	}
	return s
}

// RGB returns the colour of the paint under daylight D65. A strong mixture can lie slightly outside
// what sRGB shows.
func (p Paint) RGB() RGB { return p.Reflectance().RGB() }

// Mix returns the batter made of the given volume fractions of paints (Kubelka and Munk, K and S each
// adding up). Only the proportions of the fractions count. It is refused where the lists differ in
// length or are empty, where a fraction is negative or not finite, where all are 0, and where a paint
// with a fraction is no paint (its scattering is not above 0).
func Mix(paints []Paint, fractions []float64) (Paint, error) {
	if len(paints) != len(fractions) || len(paints) == 0 {
		return Paint{}, fmt.Errorf("mix batters: %d paints and %d fractions: give one fraction for each paint, and at least one",
			len(paints), len(fractions))
	}
	var m Paint
	sum := 0.0
	for i, f := range fractions {
		if !(f >= 0) || math.IsInf(f, 1) {
			return Paint{}, fmt.Errorf("mix batters: fraction %d is %g: give a share of 0 or more", i, f)
		}
		if f > 0 && !(paints[i].Scatter > 0) {
			return Paint{}, fmt.Errorf("mix batters: paint %d scatters %g: make it with NewPaint first", i, paints[i].Scatter)
		}
		sum += f
		m.add(&paints[i], f)
	}
	if !(sum > 0) || math.IsInf(m.Scatter, 0) {
		return Paint{}, fmt.Errorf("mix batters: the fractions sum to %g: give shares that sum to about 1", sum)
	}
	for i := range m.Ratio {
		m.Ratio[i] /= m.Scatter
		if !(m.Ratio[i] >= 0) {
			return Paint{}, fmt.Errorf("mix batters: absorption at %g nm comes to %g: make the paints with NewPaint", Wavelength(i), m.Ratio[i])
		}
	}
	m.Scatter /= sum
	return m, nil
}

// add gathers K in the ratio and S in the scattering; Mix divides at the end.
func (p *Paint) add(other *Paint, fraction float64) {
	weight := fraction * other.Scatter
	for i := range p.Ratio {
		p.Ratio[i] += weight * other.Ratio[i]
	}
	p.Scatter += weight
}
