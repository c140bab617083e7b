package pour

import (
	"fmt"

	"pourbench/pour/strict"
)

// What makes glycerin rivers: lye weaker than this is called much water, batter warmer than this heat (common practice, no source).
const (
	riverLyePercent = 30
	riverMixC       = 38
)

func (s *Sheet) inspectColours(b *BatchSheet, shelf Shelf) {
	s.inspectRivers(b)
	for i, j := range b.Jugs {
		for k, d := range j.Colourants {
			c, _ := shelf.Colourant(d.ID)
			where := b.Name.jug(j.Name)
			s.inspectSubstance(where, c)
			s.inspectCarrier(where, c, s.Plan.Batch(b.Name).Jugs[i].Colourants[k])
			if d.DosePercent < c.DoseLowPercent || d.DosePercent > c.DoseHighPercent {
				show := s.Plan.Show
				s.warn(warning("dose-unusual", where, fmt.Sprintf("%s of %s is outside its usual %s to %s", show.Percent(d.DosePercent, 2), c.Name,
					strict.Short(c.DoseLowPercent), show.Percent(c.DoseHighPercent, 2)), "pour a test cup first; too much bleeds or crumbles"))
			}
		}
	}
	for _, x := range b.Extras {
		if c, ok := shelf.Colourant(x.ID); ok {
			s.inspectSubstance(b.Name.extra(x.Name), c)
			wrong := c.Disperse == DisperseOil && x.InTheLye() || c.Disperse == DisperseWater && !x.InTheLye()
			if wrong && isColour(shelf, x.ID) { // an entry of its own among the extras says itself where it goes
				s.warn(warning("colour-wrong-carrier", b.Name.extra(x.Name), c.Name+" does not wet there: it will speck", "stir it into the "+wets(c.Disperse)+" instead"))
			}
		}
	}
}

func wets(disperse string) string {
	if disperse == DisperseWater {
		return "lye water"
	}
	return "oils"
}

func (s *Sheet) inspectRivers(b *BatchSheet) {
	white := ""
	for _, j := range b.Jugs {
		if j.WhitePercent > 0 {
			white = j.Name
			break
		}
	}
	hot := b.Heat.MixC >= riverMixC || s.Plan.Bed.Keep == BedInsulate
	if white != "" && b.Lye.ConcentrationPercent < riverLyePercent && hot {
		s.warn(warning("glycerin-rivers", b.Name.jug(white), fmt.Sprintf("titanium white, %s lye and heat together draw translucent rivers", s.Plan.Show.Percent(b.Lye.ConcentrationPercent, 1)),
			"use less water, less white, or keep it cool"))
	}
}

// inspectSubstance says what a colourant brings with it wherever it goes in.
func (s *Sheet) inspectSubstance(where string, c Colourant) {
	s.inspectAlkali(where, c)
	if c.Caution != "" {
		s.warn(warning("colour-caution", where, c.Name+": "+c.Caution, "ask for the full list of what is in it, and check the rules where you live"))
	}
}

func (s *Sheet) inspectAlkali(where string, c Colourant) {
	switch c.Alkali {
	case AlkaliShifts:
		s.warn(warning("colour-shifts", where, c.Name+" changes in alkali: "+c.AlkaliNote, "plan with the shade it turns to, or take a mineral pigment"))
	case AlkaliDies:
		s.warn(warning("colour-dies", where, c.Name+" does not survive alkali: "+c.AlkaliNote, "take another colourant"))
	case AlkaliUnknown:
		s.warn(warning("colour-untested", where, c.Name+" depends on what is in the packet", "pour a test cup with your own lot"))
	}
}

func (s *Sheet) inspectCarrier(where string, c Colourant, d Dose) {
	wrong := d.Carrier == CarryOil && c.Disperse == DisperseWater || (d.Carrier == CarryWater || d.Carrier == CarryGlycerin) && c.Disperse == DisperseOil
	if wrong {
		s.warn(warning("colour-wrong-carrier", where, fmt.Sprintf("%s does not wet in %s: it will speck", c.Name, d.Carrier), "wet it in "+map[string]string{DisperseOil: "oil", DisperseWater: "water"}[c.Disperse]))
	}
}
