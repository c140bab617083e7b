package pour

import "slices"

// teaspoonML is a metric teaspoon.
const teaspoonML = 5

// jugs divides the batter and doses the colours.
func (b *bill) jugs(s *BatchSheet) {
	white := 0.0
	for i, x := range s.Extras {
		if c := b.pigments[i]; c != nil && c.Titanium && s.Size.BatterG > 0 {
			white += x.G / s.Size.BatterG * 100
		}
	}
	sum := 0.0
	for _, j := range b.Jugs {
		sum += j.SharePercent
	}
	s.Jugs = make([]JugSheet, 0, len(b.Jugs))
	for i, j := range b.Jugs {
		line := JugSheet{Name: j.Name, SharePercent: j.SharePercent, BatterG: s.Size.BatterG * j.SharePercent / sum, WhitePercent: white}
		for k, d := range j.Colourants {
			c := b.doses[i][k]
			dose := c.dose(d.DosePercent, line.BatterG)
			dose.CarrierName = b.carrierName(dose.Carrier)
			line.Colourants = append(line.Colourants, dose)
			if c.Titanium {
				line.WhitePercent += d.DosePercent
			}
		}
		s.Jugs = append(s.Jugs, line)
	}
}

// dose is what is weighed of a colourant and of what wets it.
func (c dye) dose(percent, batterG float64) DoseLine {
	line := DoseLine{ID: c.ID, Name: c.Name, Class: c.Class, DosePercent: percent, PigmentG: batterG * percent / 100}
	line.Carrier, line.CarrierG = c.wetted, line.PigmentG*c.parts
	if c.BulkGML > 0 {
		line.TeaspoonsML5 = Know(line.PigmentG / c.BulkGML / teaspoonML)
	}
	return line
}

// carrierName names what wets a dose.
func (b *bill) carrierName(wetted string) string {
	switch wetted {
	case CarryNone:
		return ""
	case CarryOil:
		return b.carrier.Name
	}
	return wetted
}

// scentJugs divides each scent over its jugs in proportion to their batter.
func (b *bill) scentJugs(s *BatchSheet, oilsG float64) {
	for n, part := range b.Scents {
		sc := b.scents[n]
		line := ScentLine{
			ID: sc.ID, Name: sc.Name, LoadPercent: part.PercentOfOils, G: oilsG * part.PercentOfOils / 100,
			LimitPercent: sc.LimitPercent, VanillinPercent: sc.VanillinPercent,
		}
		batter := 0.0
		for _, j := range s.Jugs {
			if part.GoesInto(j.Name) {
				batter += j.BatterG
				line.Into = append(line.Into, j.Name)
			}
		}
		for i := range s.Jugs {
			j := &s.Jugs[i]
			if part.GoesInto(j.Name) && batter > 0 {
				j.Scents = append(j.Scents, ScentGrams{ID: sc.ID, Name: sc.Name, G: line.G * j.BatterG / batter})
			}
		}
		s.Scents = append(s.Scents, line)
	}
}

// GoesInto says whether the scent goes into that jug.
func (p ScentPart) GoesInto(jug string) bool { return len(p.Into) == 0 || slices.Contains(p.Into, jug) }

// fill works out what each jug holds in the end, and what of the batch reaches the mould.
func (b *bill) fill(s *BatchSheet, oilsG float64) {
	s.Size.DryG = s.Size.OilsG + s.Lye.NaOH.PureG + s.Lye.KOH.PureG + s.Size.ExtrasG - s.Lye.WaterInExtrasG
	for i := range s.Jugs {
		j := &s.Jugs[i]
		part := 0.0
		if s.Size.BatterG > 0 {
			part = j.BatterG / s.Size.BatterG
		}
		j.TotalML = s.Size.BatterML * part
		added := 0.0
		for _, d := range j.Colourants {
			added += d.PigmentG + d.CarrierG
			j.TotalML += d.PigmentG/pigmentGML + d.CarrierG/carrierGML(d.Carrier)
			s.Size.DryG += d.PigmentG
			if d.Carrier != CarryWater {
				s.Size.DryG += d.CarrierG
			}
		}
		scent := 0.0
		for _, x := range j.Scents {
			scent += x.G
			j.TotalML += x.G / b.scent(x.ID).gml()
		}
		s.Size.DryG += scent
		if part > 0 {
			j.ScentLoadPercent = scent / (oilsG * part) * 100
		}
		j.TotalG = added + scent // the weighed batter joins when it is rounded
		s.Size.PouredML += j.TotalML * s.kept()
		s.Size.PouredG += (j.BatterG + added + scent) * s.kept()
	}
}

func carrierGML(carrier string) float64 {
	switch carrier {
	case CarryWater:
		return waterGML
	case CarryGlycerin:
		return glycerolGML
	default:
		return oilGML
	}
}

// gml is a scent's density, or 0.95 g/mL where the shelf has none: the middle of 0.85 to 1.10 (from memory).
func (x *Scent) gml() float64 {
	if x.DensityGML > 0 {
		return x.DensityGML
	}
	return 0.95
}

// Letter returns the letter of a jug, on screen and paper: A for the first; after Z come AA, AB and so on.
func Letter(jug int) string {
	const letters = 26
	if jug >= letters {
		return Letter(jug/letters-1) + Letter(jug%letters)
	}
	return string(rune('A' + jug))
}
