package colour

import (
	"fmt"
	"math"
)

// How vanillin browns: absorption added for each percent of vanillin in the bar at 550 nm, its rise
// towards blue, and how far a real bar may be off either way. Common practice, no source: fitted by eye
// to the words makers use for a scent at about 5 % of the oils: cream up to 1 % of vanillin in the
// scent, tan to 5 %, mid brown to 10 %, dark brown above.
const (
	brownPerPercent = 7.0
	brownAtNM       = 550.0
	brownFallNM     = 80.0
	brownBand       = 2.0
	vanillinMost    = 10.0 // percent of the bar; more is a slip of the decimal point
)

// Browned returns the colour a bar of colour fresh takes in some weeks when it holds vanillinPercent of
// vanillin and ethyl vanillin together, percent of the cured bar. Low and high are the least and the
// most browning to expect: half and twice the absorption. The rule is common practice, not measured,
// and it says nothing of how long it takes. Without vanillin all three are the colour as it was. A
// colour or a percentage that is not a number or far out of range is refused.
func Browned(fresh RGB, vanillinPercent float64) (after, low, high RGB, err error) {
	if !(vanillinPercent >= 0 && vanillinPercent <= vanillinMost) {
		return RGB{}, RGB{}, RGB{}, fmt.Errorf("brown a bar: vanillin is %g %% of it: give 0 to %g %%", vanillinPercent, vanillinMost)
	}
	p, err := NewPaint(fresh, 0)
	if err != nil {
		return RGB{}, RGB{}, RGB{}, fmt.Errorf("brown a bar: %w", err)
	}
	if vanillinPercent == 0 {
		return fresh, fresh, fresh, nil
	}
	return p.browned(vanillinPercent), p.browned(vanillinPercent / brownBand), p.browned(vanillinPercent * brownBand), nil
}

func (p Paint) browned(vanillinPercent float64) RGB {
	for i := range p.Ratio {
		p.Ratio[i] += brownPerPercent * vanillinPercent * math.Exp((brownAtNM-Wavelength(i))/brownFallNM)
	}
	return p.RGB()
}
