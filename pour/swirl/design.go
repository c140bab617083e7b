package swirl

import (
	"fmt"
	"image/color"

	"pourbench/chem"
	"pourbench/chem/colour"
	"pourbench/pour"
)

// Design is the swirl a plan asks for, with the colours it is drawn in.
type Design struct {
	Recipe  Recipe
	Jugs    []int         // the place in the base of each portion's jug: portions are numbered in pour order
	Palette []color.NRGBA // fresh, by portion
	Weeks   []color.NRGBA // after some weeks, where vanillin browns a jug
	Icing   *IcingRecipe  // nil: none
	Top     []color.NRGBA // the icing's colours, by jug
}

// Of is the design of a sheet. A sheet that holds no figures, or one whose mould the techniques cannot fill, is refused.
func Of(s pour.Sheet) (Design, error) {
	if len(s.Base.Jugs) == 0 {
		return Design{}, fmt.Errorf("draw %q: the plan cannot be worked out; mend its faults first", s.Plan.Name)
	}
	m, swirl := s.Plan.Mould, s.Plan.Swirl
	d := Design{Recipe: Recipe{
		Technique: Technique(swirl.Technique), Passes: swirl.Passes, Turns: swirl.Turns, HeightMM: swirl.HeightMM, Seed: swirl.Seed,
		Thickness: thickness(s), Box: Box{L: m.LengthMM, W: m.WidthMM, H: min(s.Base.HeightMM, m.HeightMM)},
	}}
	if !d.Recipe.Technique.Known() {
		return Design{}, fmt.Errorf("draw %q: technique %q has no picture; take one of %v", s.Plan.Name, swirl.Technique, Techniques())
	}
	sum := 0.0
	for _, j := range s.Base.Jugs {
		sum += j.SharePercent
	}
	for _, at := range s.PourOrder() {
		j := s.Base.Jugs[at]
		d.Jugs = append(d.Jugs, at)
		d.Recipe.Shares = append(d.Recipe.Shares, j.SharePercent/sum)
		fresh := paletteColour(j.Colour)
		weeks := fresh
		if j.WeeksColour != "" {
			weeks = paletteColour(j.WeeksColour)
		}
		d.Palette, d.Weeks = append(d.Palette, fresh), append(d.Weeks, weeks)
	}
	d.top(s)
	return d, nil
}

// top adds the icing that stands on every bar.
func (d *Design) top(s pour.Sheet) {
	if s.Icing == nil || s.Icing.HeightMM < leastIcingMM {
		return
	}
	r := IcingRecipe{Piping: Rosettes, WidthMM: s.Plan.Mould.WidthMM, MeanMM: s.Icing.HeightMM, Seed: s.Plan.Swirl.Seed}
	sum := 0.0
	for _, j := range s.Icing.Jugs {
		sum += j.SharePercent
	}
	for _, j := range s.Icing.Jugs {
		r.Shares = append(r.Shares, j.SharePercent/sum)
		d.Top = append(d.Top, paletteColour(j.Colour))
	}
	d.Icing = &r
}

// SkimMM is how far under the surface a view from above is best taken, mm: the very top is all the last jug's.
const SkimMM = 3

// leastIcingMM is the thinnest icing that shows, mm.
const leastIcingMM = 1

// Topping is the icing ready to be drawn; the zero Topping where there is none.
func (d Design) Topping() (Topping, error) {
	if d.Icing == nil {
		return Topping{}, nil
	}
	icing, err := NewIcing(*d.Icing)
	if err != nil {
		return Topping{}, err
	}
	return Topping{Icing: icing, Palette: d.Top}, nil
}

// usualThickness is the batter where the clock gives no times: between light and medium trace.
const usualThickness = 0.35

// thickness is how thick the batters are when they are poured, 0 just emulsified to 1 stiff, averaged over the jugs by share.
func thickness(s pour.Sheet) float64 {
	index, weight := 0.0, 0.0
	for _, j := range s.Base.Jugs {
		if j.TraceAtPour.Known {
			index += j.TraceAtPour.V * j.SharePercent
			weight += j.SharePercent
		}
	}
	if weight == 0 {
		return usualThickness
	}
	const emulsion, stiff = float64(chem.Emulsion) + 1, float64(chem.Stiff) + 1
	return min(1, max(0, (index/weight-emulsion)/(stiff-emulsion)))
}

// paletteColour reads a jug's colour; the plan was checked, so what cannot be read is a batter whose colour is not known: grey.
func paletteColour(hex string) color.NRGBA {
	c, err := colour.ParseHex(hex)
	if err != nil {
		return color.NRGBA{R: 128, G: 128, B: 128, A: 255}
	}
	r, g, b := c.Bytes()
	return color.NRGBA{R: r, G: g, B: b, A: 255}
}
