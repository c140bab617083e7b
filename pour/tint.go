package pour

import (
	"pourbench/chem/colour"
)

// colours gives every jug the colour of its finished batter: as the plan states it, else an estimate from its colourants, its white and
// what the whole batch carries.
func (m mixer) colours(s *BatchSheet, b Batch) {
	var stains []colour.Stain
	var percents []float64
	for _, x := range s.Extras {
		if c, ok := m.shelf.Colourant(x.ID); ok && s.Size.BatterG > 0 {
			stains, percents = append(stains, c.stain), append(percents, min(mostDose, x.G/s.Size.BatterG*100))
		}
	}
	shared := len(stains)
	for i := range s.Jugs {
		j := &s.Jugs[i]
		if hex := b.Jugs[i].BatterColour; hex != "" {
			j.Colour.Hex = hex
			continue
		}
		j.Colour.Estimated = true
		stains, percents = stains[:shared], percents[:shared]
		for _, d := range j.Colourants {
			c, _ := m.shelf.Colourant(d.ID)
			stains, percents = append(stains, c.stain), append(percents, d.DosePercent)
		}
		j.Colour.Hex = m.estimate(*j, stains, percents)
	}
}

// mostDose keeps a dose within what colour mixing takes, percent.
const mostDose = 30

// estimate is the colour a jug's batter is expected to have.
func (m mixer) estimate(j JugSheet, stains []colour.Stain, percents []float64) string {
	if m.shelf.plain.Scatter > 0 {
		if paint, err := colour.Stained(m.shelf.plain, min(mostDose, j.WhitePercent), stains, percents); err == nil {
			return paint.RGB().Hex()
		}
	}
	if len(j.Colourants) > 0 {
		if c, ok := m.shelf.Colourant(j.Colourants[0].ID); ok && c.Colour != "" {
			return c.Colour
		}
	}
	return colour.PlainBatter
}
