package colour

import "fmt"

// PlainBatter is the colour of a batter without any colourant, as oils that are neither very white nor
// very green leave it: cream. Common practice, no source; photographs of the maker's own batter are
// better.
const PlainBatter = "#f3ead2"

// Dose is one colourant stirred into a batter.
type Dose struct {
	Name       string  // for messages
	AtMid      RGB     // colour of a white batter that holds MidPercent of it
	MidPercent float64 // percent of the batter, > 0
	Percent    float64 // percent of the batter actually stirred in, 0 to 30
}

const doseMost = 30.0 // percent; more is a slip of the decimal point

// Estimate returns the paint of a finished batter from the colour of its oils (see PlainBatter), its
// titanium white in percent and its colourants. It is an estimate and must be labelled so: the colour
// the maker sees in the jug always counts for more.
//
// Assumed, not measured: a colourant adds absorption in proportion to its dose, on top of that of the
// oils, and adds no scattering; its own absorption is that of its batter at the middle dose less that
// of a white batter. So half the dose gives about half the absorption, twice the dose deepens the
// colour by ever less, and titanium white makes all of it paler. What the model leaves out: glitter of
// mica, dyes that alkali changes or that wander, gel phase, scents that brown.
//
// Where the same colourants come back on every key press, make a [Stain] of each once and use [Stained].
func Estimate(oils RGB, titaniumPercent float64, doses []Dose) (Paint, error) {
	p, err := NewPaint(oils, 0)
	if err != nil {
		return Paint{}, fmt.Errorf("estimate the batter from the colour of its oils: %w", err)
	}
	stains, percents := make([]Stain, len(doses)), make([]float64, len(doses))
	for i, d := range doses {
		if stains[i], err = NewStain(d.AtMid, d.MidPercent); err != nil {
			return Paint{}, fmt.Errorf("estimate the batter with %s: %w", d.Name, err)
		}
		if !(d.Percent >= 0 && d.Percent <= doseMost) {
			return Paint{}, fmt.Errorf("estimate the batter with %s: its dose is %g %%: give 0 to %g %%", d.Name, d.Percent, doseMost)
		}
		percents[i] = d.Percent
	}
	return Stained(p, titaniumPercent, stains, percents)
}

// Stain is the absorption that one percent of a colourant adds to a batter whose scattering is 1, band by band.
type Stain Spectrum

// NewStain returns the stain of a colourant from the colour of a white batter that holds midPercent of it, over 0 to 30 %.
// It takes tens of microseconds; keep the result.
func NewStain(atMid RGB, midPercent float64) (Stain, error) {
	if !(midPercent > 0 && midPercent <= doseMost) {
		return Stain{}, fmt.Errorf("its middle dose is %g %%: give more than 0 and at most %g %%", midPercent, doseMost)
	}
	mid, err := NewPaint(atMid, 0)
	if err != nil {
		return Stain{}, err
	}
	var s Stain
	white := ratio(lightest)
	for i, q := range mid.Ratio {
		s[i] = max(0, q-white) / midPercent
	}
	return s, nil
}

// Stained is [Estimate] with what it needs worked out before: the paint of the plain batter without titanium white, and the
// stains with the percent of each. The lists must be of one length and the percentages 0 to 30.
func Stained(plain Paint, titaniumPercent float64, stains []Stain, percents []float64) (Paint, error) {
	s, err := Scatter(titaniumPercent)
	if err != nil {
		return Paint{}, err
	}
	if len(stains) != len(percents) {
		return Paint{}, fmt.Errorf("estimate the batter with %d stains and %d doses: give one dose to each", len(stains), len(percents))
	}
	p := plain
	for k, stain := range stains {
		if !(percents[k] >= 0 && percents[k] <= doseMost) {
			return Paint{}, fmt.Errorf("estimate the batter: dose %d is %g %%: give 0 to %g %%", k+1, percents[k], doseMost)
		}
		for i, q := range stain {
			p.Ratio[i] += q * percents[k]
		}
	}
	for i := range p.Ratio {
		p.Ratio[i] /= s
	}
	p.Scatter = s
	return p, nil
}
