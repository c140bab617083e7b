package pour

import "slices"

// teaspoonML is a metric teaspoon.
const teaspoonML = 5

// jugs divides the batter and doses the colours.
func (m mixer) jugs(s *BatchSheet, b Batch) {
	white := 0.0
	for _, x := range s.Extras {
		if c, ok := m.shelf.Colourant(x.ID); ok && c.Titanium && s.Size.BatterG > 0 {
			white += x.G / s.Size.BatterG * 100
		}
	}
	sum := 0.0
	for _, j := range b.Jugs {
		sum += j.SharePercent
	}
	s.Jugs = make([]JugSheet, 0, len(b.Jugs))
	for _, j := range b.Jugs {
		line := JugSheet{Name: j.Name, SharePercent: j.SharePercent, BatterG: s.Size.BatterG * j.SharePercent / sum, WhitePercent: white}
		for _, d := range j.Colourants {
			c, _ := m.shelf.Colourant(d.Colourant)
			dose := m.dose(c, d, line.BatterG)
			dose.CarrierName = m.carrierName(b, dose.Carrier)
			line.Colourants = append(line.Colourants, dose)
			if c.Titanium {
				line.WhitePercent += d.DosePercent
			}
		}
		s.Jugs = append(s.Jugs, line)
	}
	m.colours(s, b)
}

func (m mixer) dose(c Colourant, d Dose, batterG float64) DoseLine {
	line := DoseLine{ID: c.ID, Name: c.Name, DosePercent: d.DosePercent, PigmentG: batterG * d.DosePercent / 100}
	carrier, parts := m.carrier(d)
	line.Carrier, line.CarrierG = carrier, line.PigmentG*parts
	if c.BulkGML > 0 {
		line.TeaspoonsML5 = Know(line.PigmentG / c.BulkGML / teaspoonML)
	}
	return line
}

// carrierName names what wets a dose.
func (m mixer) carrierName(b Batch, carrier string) string {
	switch carrier {
	case CarryNone:
		return ""
	case CarryOil:
		oil, _ := m.shelf.Oil(b.carrierOil())
		return oil.Name
	}
	return carrier
}

// carrier is what a dose is wetted with and how many grams per gram of pigment.
func (m mixer) carrier(d Dose) (kind string, parts float64) {
	c, _ := m.shelf.Colourant(d.Colourant)
	kind, parts = d.Carrier, d.CarrierParts
	if kind == "" {
		kind = CarryOil
		if c.Disperse == DisperseWater {
			kind = CarryWater
		}
	}
	if parts == 0 {
		parts = c.CarrierParts
	}
	if kind == CarryNone || parts == 0 {
		return CarryNone, 0
	}
	return kind, parts
}

// scents divides each scent over its jugs in proportion to their batter.
func (m mixer) scents(s *BatchSheet, b Batch, oilsG float64) {
	for _, part := range b.Scents {
		sc, _ := m.shelf.Scent(part.Scent)
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
func (m mixer) fill(s *BatchSheet, oilsG float64) {
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
			j.TotalML += x.G / m.scentGML(x.ID)
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

// scentGML is a scent's density, or 0.95 g/mL where the shelf has none: the middle of 0.85 to 1.10 (from memory).
func (m mixer) scentGML(id string) float64 {
	if sc, ok := m.shelf.Scent(id); ok && sc.DensityGML > 0 {
		return sc.DensityGML
	}
	return 0.95
}
