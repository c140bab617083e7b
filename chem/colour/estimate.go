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
func Estimate(oils RGB, titaniumPercent float64, doses []Dose) (Paint, error) {
	s, err := Scatter(titaniumPercent)
	if err != nil {
		return Paint{}, err
	}
	p, err := NewPaint(oils, 0)
	if err != nil {
		return Paint{}, fmt.Errorf("estimate the batter from the colour of its oils: %w", err)
	}
	for _, d := range doses {
		if err := d.stain(&p.Ratio); err != nil {
			return Paint{}, fmt.Errorf("estimate the batter with %s: %w", d.Name, err)
		}
	}
	for i := range p.Ratio {
		p.Ratio[i] /= s
	}
	p.Scatter = s
	return p, nil
}

// stain adds the absorption of the dose, for a scattering of 1.
func (d Dose) stain(absorption *Spectrum) error {
	if !(d.MidPercent > 0 && d.MidPercent <= doseMost) {
		return fmt.Errorf("its middle dose is %g %%: give more than 0 and at most %g %%", d.MidPercent, doseMost)
	}
	if !(d.Percent >= 0 && d.Percent <= doseMost) {
		return fmt.Errorf("its dose is %g %%: give 0 to %g %%", d.Percent, doseMost)
	}
	mid, err := NewPaint(d.AtMid, 0)
	if err != nil {
		return err
	}
	white := ratio(lightest)
	for i, q := range mid.Ratio {
		absorption[i] += d.Percent / d.MidPercent * max(0, q-white)
	}
	return nil
}
