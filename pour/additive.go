package pour

import "pourbench/chem/clock"

// additives is what the clock is told of the batch's extras: how each changes the speed, at its dose. One that changes nothing and of
// which that is sure is left out.
func (t *timer) additives() []clock.Additive {
	var out []clock.Additive
	for _, x := range t.batch.Extras {
		extra, _ := t.shelf.Extra(x.ID)
		if extra.ClockFactor <= 0 || extra.ClockFactor == 1 && extra.ClockSD == 0 {
			continue
		}
		out = append(out, clock.Additive{
			Name: x.Name, Factor: extra.ClockFactor, SD: extra.ClockSD, Percent: x.Percent, AtPercent: extra.ClockDosePercent(),
			Heat: x.Kind == ExtraSugar || x.Kind == ExtraMilk, Alcohol: x.Kind == ExtraAlcohol,
		})
	}
	return out
}
