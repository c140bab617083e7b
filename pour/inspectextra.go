package pour

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour/strict"
)

// inspectExtras says what each extra does, and whether its dose is usual.
func (s *Sheet) inspectExtras(b *BatchSheet, shelf Shelf) {
	for _, x := range b.Extras {
		where := b.Name.extra(x.Name)
		switch x.Kind {
		case ExtraSugar:
			s.warn(warning("lye-meets-sugar", where, fmt.Sprintf("%s makes the %s and the loaf run hotter and browner", x.Name, meets(x.Joins)), sugarDo(x.Joins)))
		case ExtraMilk:
			text := x.Name + " scorches, smells and foams in hot lye"
			if x.Joins == JoinsEmulsion {
				text = x.Name + " heats the batter and the loaf, and browns"
			}
			s.warn(warning("lye-meets-milk", where, text, s.coldDo(x.Joins)))
		case ExtraAlcohol:
			s.warn(warning("lye-meets-alcohol", where, fmt.Sprintf("%s can boil over when lye meets it, and speeds the batter", x.Name),
				"boil the alcohol and the gas off first, use a tall vessel; "+s.coldDo(x.Joins)))
		case ExtraAcid:
			s.warn(warning("lye-meets-acid", where, fmt.Sprintf("%s uses up alkali, which is reckoned in, and heats as it meets it", x.Name),
				"dissolve it in its own water and let it and the alkali meet slowly, never onto dry alkali"))
		case ExtraSalt:
			s.warn(warning("glycerin-sweat", where, fmt.Sprintf("%s draws damp from the air", x.Name), "cure and keep the bars dry; salty loaves harden early, cut sooner"))
		case ExtraPlain:
			if x.Joins == JoinsOnIce {
				s.warn(warning("lye-on-ice", where, fmt.Sprintf("%s as the lye's water can heat, foam and smell of ammonia", x.Name), s.coldDo(x.Joins)))
			}
		}
		s.inspectExtraDose(b, x, shelf)
	}
}

// meets is what an extra goes into, lye or batter.
func meets(at Joining) string {
	if at == JoinsEmulsion {
		return "batter"
	}
	return "lye"
}

func sugarDo(at Joining) string {
	switch at {
	case JoinsBefore:
		return "dissolve it in the cool water before the alkali, work cool, do not wrap the loaf warm"
	case JoinsEmulsion:
		return "thin it and stir it in at emulsion, work cool, do not wrap the loaf warm"
	default:
		return "have it cool, add it little by little, work cool, do not wrap the loaf warm"
	}
}

// coldDo is how a liquid that scorches or foams meets lye.
func (s *Sheet) coldDo(at Joining) string {
	switch at {
	case JoinsOnIce:
		return fmt.Sprintf("freeze it in small pieces, stand the jug in ice water, add the alkali a spoonful at a time and keep it under %s; strain the lye; keep the loaf cool", s.Plan.Show.Temp(KeepUnderC))
	case JoinsEmulsion:
		return "stir it in cool, at emulsion; keep the loaf cool"
	default:
		return `add it ice-cold to the cooled lye, little by little, or let it be the lye's water (in = "lye_water") and freeze it; keep the loaf cool`
	}
}

// A bar with so much salt is a salt bar, percent of the oils (common practice, no source). A hundred grams of water dissolve 35.9 g of
// common salt at 20 °C (CRC Handbook, from memory), and less once alkali is in it.
const (
	saltBarPercent = 15
	saltPerWater   = 0.359
)

// inspectExtraDose compares a dose with the usual one: of a colourant in percent of the batter, of any other extra in percent of the oils.
func (s *Sheet) inspectExtraDose(b *BatchSheet, x ExtraLine, shelf Shelf) {
	of, _ := shelf.Extra(x.ID)
	show, where := s.Plan.Show, b.Name.extra(x.Name)
	if x.Kind == ExtraSalt && x.WaterPercent == 0 && x.Percent >= saltBarPercent && strings.Contains(strings.ToLower(x.Name), "salt") {
		text := fmt.Sprintf("%s of the oils makes a salt bar: hard within hours and brittle to cut", show.Percent(x.Percent, 0))
		do := "cut it while it is warm, or pour it into single moulds; stir the salt in fine"
		if water := b.Lye.WaterToAddG.V + b.Lye.WaterBeforeG; x.InTheLye() && x.G > saltPerWater*water {
			text += ", and more than the lye's water dissolves"
			do = `let it go into the oils or the batter at light trace (in = "oils"); cut the loaf while it is warm, or pour it into single moulds`
		}
		s.warn(warning("salt-bar", where, text, do))
		return
	}
	dose, whole, low, high := x.Percent, "of the oils", of.DoseLowPercent, of.DoseHighPercent
	if isColour(shelf, x.ID) {
		dose, whole = x.G/b.Size.BatterG*100, "of the batter"
	}
	if dose < low || dose > high && x.Joins != JoinsOnIce { // what is the lye's water is as much as that
		s.warn(warning("dose-unusual", where, fmt.Sprintf("%s of %s %s is outside its usual %s to %s", show.Percent(dose, 2), x.Name, whole, strict.Short(low), show.Percent(high, 2)),
			"make a small batch first; too much softens, crumbles or sweats"))
	}
}

// isColour says whether an extra is a colourant of the shelf and none of its extras.
func isColour(shelf Shelf, id string) bool {
	_, known := shelf.Colourant(id)
	return known && !slices.ContainsFunc(shelf.Extras, func(x Extra) bool { return x.ID == id })
}

// inspectDust names every fine powder once, in jugs and extras.
func (s *Sheet) inspectDust(shelf Shelf) {
	var names []string
	add := func(name string, dusts bool) {
		if dusts && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, b := range s.Batches() {
		for _, x := range b.Extras {
			of, _ := shelf.Extra(x.ID)
			add(x.Name, of.Dust)
		}
		for _, j := range b.Jugs {
			for _, d := range j.Colourants {
				c, _ := shelf.Colourant(d.ID)
				add(c.Name, c.Dust)
			}
		}
	}
	if len(names) > 0 {
		s.warn(warning("dust", "bench", "fine powder: "+strings.Join(names, ", "), "no draught, a dust mask, lid on, wet it at once; its safety data sheet comes first"))
	}
}
