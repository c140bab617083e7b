package pour

import (
	"pourbench/chem/colour"
)

// colours gives every jug the colour of its finished batter: as the plan states it, else an estimate from its oils, its colourants, its white
// and what the whole batch carries.
func (m mixer) colours(s *BatchSheet, b *bill) {
	var stains []colour.Stain
	var percents []float64
	for i, x := range s.Extras {
		if c := b.pigments[i]; c != nil && s.Size.BatterG > 0 {
			stains, percents = append(stains, c.stain), append(percents, min(mostDose, x.G/s.Size.BatterG*100))
		}
	}
	shared, plain := len(stains), b.plain(m.plain)
	for i := range s.Jugs {
		j := &s.Jugs[i]
		if hex := b.Jugs[i].BatterColour; hex != "" {
			j.Colour.Hex = hex
			continue
		}
		j.Colour.Estimated = true
		stains, percents = stains[:shared], percents[:shared]
		for k, d := range j.Colourants {
			stains, percents = append(stains, b.doses[i][k].stain), append(percents, d.DosePercent)
		}
		j.Colour.Hex = estimate(plain, b.doses[i], j.WhitePercent, stains, percents)
	}
}

// mostDose keeps a dose within what colour mixing takes, percent.
const mostDose = 30

// estimate is the colour a jug's batter is expected to have, over that of its oils.
func estimate(plain colour.Paint, doses []dye, whitePercent float64, stains []colour.Stain, percents []float64) string {
	if plain.Scatter > 0 {
		if paint, err := colour.Stained(plain, min(mostDose, whitePercent), stains, percents); err == nil {
			return paint.RGB().Hex()
		}
	}
	if len(doses) > 0 && doses[0].Colour != "" {
		return doses[0].Colour
	}
	return colour.PlainBatter
}
