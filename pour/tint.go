package pour

// colours gives every jug the colour of its finished batter: as stated in the plan, else an estimate from its first colourant.
func (m mixer) colours(s *BatchSheet, b Batch) {
	for i := range s.Jugs {
		j := &s.Jugs[i]
		if hex := b.Jugs[i].BatterColour; hex != "" {
			j.Colour = hex
			continue
		}
		j.Colour, j.ColourEstimated = plainBatter, true
		if len(j.Colourants) > 0 {
			if c, ok := m.shelf.Colourant(j.Colourants[0].ID); ok && c.Colour != "" {
				j.Colour = c.Colour
			}
		}
	}
}

// plainBatter is a batter without colour.
const plainBatter = "#f3ead2"
