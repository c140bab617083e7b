package pour

import (
	"fmt"
	"image/color"

	"pourbench/chem"
	"pourbench/chem/colour"
	"pourbench/pour/relief"
	"pourbench/pour/swirl"
)

// Drawing is the picture a sheet asks for, with the colours it is drawn in. Its portions are the base's jugs, by their places.
type Drawing struct {
	Recipe  swirl.Recipe
	Palette []color.NRGBA   // fresh, by jug
	Weeks   []color.NRGBA   // after some weeks, where vanillin browns a jug
	Looks   []swirl.Surface // of the cut surface, by jug
	Top     []color.NRGBA   // the icing's colours, by jug, and then those of the stuffs
	Stuffs  []Stuff         // what else on the loaf has a colour of its own
	Stands  *relief.Recipe  // what stands on the loaf and sticks in it, as far as it is known piece by piece; nil: nothing
	Above   *relief.Recipe  // all of it, to be seen from above
	Bars    []swirl.Bar     // along the loaf
	Cuts    []float64       // mm from end A
}

// Drawing is the picture of a sheet. A sheet that holds no figures, or one whose mould the techniques cannot fill, is refused.
func (s *Sheet) Drawing() (Drawing, error) {
	if len(s.Base.Jugs) == 0 {
		return Drawing{}, fmt.Errorf("draw %q: the plan cannot be worked out; mend its faults first", s.Plan.Name)
	}
	if s.Plan.Trial || len(s.Base.Script.Acts) == 0 {
		return Drawing{}, fmt.Errorf("draw %q: nothing is poured into a mould", s.Plan.Name)
	}
	d := Drawing{Recipe: s.recipe()}
	for _, j := range s.Base.Jugs {
		fresh := paletteColour(j.Colour.Hex)
		weeks := fresh
		if j.Colour.WeeksHex != "" {
			weeks = paletteColour(j.Colour.WeeksHex)
		}
		d.Palette, d.Weeks = append(d.Palette, fresh), append(d.Weeks, weeks)
		d.Looks = append(d.Looks, j.surface())
	}
	d.top(s)
	d.stand(s)
	return d, nil
}

// surface is what a jug's colourants show beside their colour: flakes of mica and grains of plants, the more of them the higher the dose. Full
// at 2 % of the batter (by eye, no source).
func (j *JugSheet) surface() (s swirl.Surface) {
	const full = 2.0
	for _, c := range j.Colourants {
		part := min(1, c.DosePercent/full)
		switch c.Class {
		case "mica":
			s.Glint = max(s.Glint, part)
		case "plant":
			s.Speckle = max(s.Speckle, part)
		}
	}
	return s
}

// recipe is what the picture of the base depends on.
func (s *Sheet) recipe() swirl.Recipe {
	m := s.Plan.Mould
	return swirl.Recipe{
		Script: s.Base.Script, Thickness: s.thickness(),
		Box: swirl.Box{L: m.LengthMM, W: m.WidthMM, H: min(s.Base.stands(m.FillMM), m.HeightMM)}, Round: m.Shape == ShapeTube,
	}
}

// stands is how high a batch stands, mm; where that cannot be worked out the picture shows the planned height.
func (s *BatchSheet) stands(plannedMM float64) float64 {
	if s.Refused.Masses != "" {
		return plannedMM
	}
	return s.Size.HeightMM
}

// top adds the icing that stands on every bar.
func (d *Drawing) top(s *Sheet) {
	if s.Icing == nil || !(s.Icing.Size.HeightMM >= leastIcingMM) && len(s.Piping.At) == 0 {
		return
	}
	for _, j := range s.Icing.Jugs {
		d.Top = append(d.Top, paletteColour(j.Colour.Hex))
	}
}

// leastIcingMM is the thinnest icing that shows, mm.
const leastIcingMM = 1

// Topping is what is on the loaf ready to be drawn; the zero Topping where there is nothing.
func (d Drawing) Topping() swirl.Topping {
	top := swirl.Topping{Palette: d.Top}
	if d.Stands != nil {
		top.Stands = relief.New(*d.Stands)
	}
	switch {
	case d.Above.Equal(d.Stands): // as it is unless something is put on after the cut
		top.Above = top.Stands
	case d.Above != nil:
		top.Above = relief.New(*d.Above)
	}
	return top
}

// usualThickness is the batter where the clock gives no times: between light and medium trace.
const usualThickness = 0.35

// thickness is how thick the batters are when they are poured, 0 just emulsified to 1 stiff, averaged over the jugs by share.
func (s *Sheet) thickness() float64 {
	index, weight := 0.0, 0.0
	for _, j := range s.Base.Jugs {
		if j.Clock.TraceAtPour.Known {
			index += j.Clock.TraceAtPour.V * j.SharePercent
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
