package colour

import "fmt"

// PlainBatter is the colour of a batter without any colourant, as oils that are neither very white nor
// very green leave it: cream. Common practice, no source; photographs of the maker's own batter are
// better.
const PlainBatter = "#f3ead2"

// Dose is one colourant stirred into a batter.
type Dose struct {
	Name       string  // for messages
	AtMid      RGB     // colour of a white batter that holds MidPercent of it; of a white, of a cream batter (see NewWhite)
	MidPercent float64 // percent of the batter, > 0
	Percent    float64 // percent of the batter actually stirred in, 0 to 30
	White      bool    // it whitens
}

const doseMost = 30.0 // percent; more is a slip of the decimal point

// Estimate returns the paint of a finished batter from the colour of its oils (see PlainBatter), its
// titanium white in percent, for what it scatters, and its colourants, the titanium white among them. It
// is an estimate and must be labelled so: the colour the maker sees in the jug always counts for more.
//
// Assumed, not measured: a colourant adds absorption in proportion to its dose, on top of that of the
// oils, and adds no scattering; its own absorption is that of its batter at the middle dose less that
// of a white batter. So half the dose gives about half the absorption, twice the dose deepens the
// colour by ever less, and titanium white makes all of it paler. A white hides the colour of the oils
// besides (see [NewWhite]). What the model leaves out: glitter of mica, dyes that alkali changes or that
// wander, gel phase, scents that brown.
//
// Where the same colourants come back on every key press, make a [Stain] of each once and use [Stained].
func Estimate(oils RGB, titaniumPercent float64, doses []Dose) (Paint, error) {
	p, err := NewPaint(oils, 0)
	if err != nil {
		return Paint{}, fmt.Errorf("estimate the batter from the colour of its oils: %w", err)
	}
	stains, percents := make([]Stain, len(doses)), make([]float64, len(doses))
	for i, d := range doses {
		made := NewStain
		if d.White {
			made = NewWhite
		}
		if stains[i], err = made(d.AtMid, d.MidPercent); err != nil {
			return Paint{}, fmt.Errorf("estimate the batter with %s: %w", d.Name, err)
		}
		if !(d.Percent >= 0 && d.Percent <= doseMost) {
			return Paint{}, fmt.Errorf("estimate the batter with %s: its dose is %g %%: give 0 to %g %%", d.Name, d.Percent, doseMost)
		}
		percents[i] = d.Percent
	}
	return Stained(p, titaniumPercent, stains, percents)
}

// Stain is what one percent of a colourant does to a batter whose scattering is 1.
type Stain struct {
	Absorbs Spectrum // absorption it adds, band by band
	Hides   float64  // scattering of a white that hides the colour of the oils; 0: a colourant, which hides nothing
}

// NewStain returns the stain of a colourant from the colour of a white batter that holds midPercent of it, over 0 to 30 %.
// It takes tens of microseconds; keep the result.
func NewStain(atMid RGB, midPercent float64) (Stain, error) {
	mid, err := atMiddle(atMid, midPercent)
	if err != nil {
		return Stain{}, err
	}
	var s Stain
	white := ratio(lightest)
	for i, q := range mid.Ratio {
		s.Absorbs[i] = max(0, q-white) / midPercent
	}
	return s, nil
}

// atMiddle is the paint of a batter that holds the middle dose of a colourant.
func atMiddle(atMid RGB, midPercent float64) (Paint, error) {
	if !(midPercent > 0 && midPercent <= doseMost) {
		return Paint{}, fmt.Errorf("its middle dose is %g %%: give more than 0 and at most %g %%", midPercent, doseMost)
	}
	return NewPaint(atMid, 0)
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
	for k, d := range percents {
		if !(d >= 0 && d <= doseMost) {
			return Paint{}, fmt.Errorf("estimate the batter: dose %d is %g %%: give 0 to %g %%", k+1, d, doseMost)
		}
	}
	p := whitened(plain, stains, percents)
	for k := range stains {
		if stains[k].Hides > 0 {
			continue
		}
		for i, q := range stains[k].Absorbs {
			p.Ratio[i] += q * percents[k] / s
		}
	}
	p.Scatter = s
	return p, nil
}
