package pour

import (
	"pourbench/chem"
	"pourbench/chem/colour"
)

// Densities of what carries a colourant, g/mL at 20 °C: glycerol 1.2613 (CRC Handbook), water 0.9982 (CRC Handbook), a liquid oil 0.915
// (middle of Codex CXS 210 relative densities).
const (
	glycerolGML = 1.2613
	waterGML    = 0.9982
	oilGML      = 0.915
)

// solidsGML is the density taken for what is dissolved in a watery extra, g/mL: sucrose is 1.59 (from memory), milk solids less.
const solidsGML = 1.5

// mixer works one batch out. It holds what both batches share.
type mixer struct {
	plain colour.Paint // a batter without colour
	show  Show         // the steps of the scales
	roomC float64
}

// mix works a batch out at a mass of oils, those of its carriers included. Everything in it is in proportion to that mass.
func (m mixer) mix(b bill, oilsG, lossPercent float64) BatchSheet {
	s := BatchSheet{
		Name: b.name, ReadyBlend: b.ReadyBlend, LyeInAtMin: b.StartAtMin,
		Size:     Size{LossPercent: lossPercent},
		Lye:      LyeSheet{NaOH: Alkali{PurityPercent: b.NaOHPurityPercent}, KOH: Alkali{PurityPercent: b.KOHPurityPercent}, Stock: StockLye{StrengthPercent: b.StockLyePercent}},
		Superfat: BatchSuperfat{PlannedPercent: b.SuperfatPercent},
	}
	if b.name == Base {
		s.LyeInAtMin = 0
	}
	blend := b.blend(&s, oilsG)
	acid := b.extraLines(&s, oilsG)
	lye := s.lye(b.Batch, blend, acid)
	s.Size.OilsG = oilsG
	s.Size.BatterG = oilsG + s.Lye.NaOH.WeighedG + s.Lye.KOH.WeighedG + s.Lye.Stock.WeighedG + s.Lye.WaterToAddG.V + s.Size.ExtrasG
	b.takeCarrier(&s)
	s.temperatures(b.Batch, blend, lye, m.roomC)
	s.Size.BatterML = blend.ML(s.Heat.MixC)*s.Size.OilsG/oilsG + chem.LyeML(lye, s.Heat.MixC) + b.extrasML(&s)
	s.profile(blend)
	b.jugs(&s)
	m.colours(&s, &b)
	b.scentJugs(&s, oilsG)
	b.fill(&s, oilsG)
	return s
}

// blend lists the oils and returns the blend.
func (b *bill) blend(s *BatchSheet, oilsG float64) chem.Blend {
	sum := b.oilSum()
	blend := make(chem.Blend, 0, len(b.Oils))
	s.Oils = make([]OilLine, 0, len(b.Oils))
	for i, o := range b.Oils {
		oil := b.oils[i]
		g := oilsG * o.Percent / sum
		blend = append(blend, chem.Part{Fat: oil.Fat, G: g})
		s.Oils = append(s.Oils, OilLine{
			ID: oil.ID, Name: oil.Name, Percent: o.Percent, G: g,
			SapKOHMgG: oil.Fat.Sap, SapLow: oil.Fat.LowSap(), SapHigh: oil.Fat.HighSap(),
		})
	}
	return blend
}

// extraLines lists the extras and returns the alkali they use up, g KOH.
func (b *bill) extraLines(s *BatchSheet, oilsG float64) (acidKOHG float64) {
	for i, part := range b.Extras {
		x := &b.extras[i]
		g := oilsG * part.PercentOfOils / 100
		in := part.In
		if in == "" {
			in = x.In
		}
		line := ExtraLine{
			ID: x.ID, Name: x.Name, Kind: x.Kind, In: in, Joins: joining(*x, in), Percent: part.PercentOfOils, G: g, WaterPercent: x.WaterPercent,
			AcidKOHG: g * x.AlkaliKOHMgG / 1000, FatKOHG: g * x.FatPercent / 100 * x.FatSapKOHMgG / 1000,
		}
		s.Extras = append(s.Extras, line)
		s.Size.ExtrasG += g
		s.Lye.WaterInExtrasG += g * x.WaterPercent / 100
		if line.Joins == JoinsBefore || line.Joins == JoinsOnIce {
			s.Lye.WaterBeforeG += g * x.WaterPercent / 100
		}
		s.Lye.OnIce = s.Lye.OnIce || line.Joins == JoinsOnIce
		s.Lye.ExtraFatKOHG += line.FatKOHG
		acidKOHG += line.AcidKOHG
	}
	return acidKOHG
}

// extrasML is the volume of the extras without their water, which the lye counts.
func (b *bill) extrasML(s *BatchSheet) float64 {
	ml := 0.0
	for i, x := range s.Extras {
		density := solidsGML
		if own := &b.extras[i]; own.WaterPercent == 0 && own.DensityGML > 0 {
			density = own.DensityGML
		}
		ml += x.G * (1 - x.WaterPercent/100) / density
	}
	return ml
}

// lye works out alkali and water.
func (s *BatchSheet) lye(b Batch, blend chem.Blend, acidKOHG float64) chem.Lye {
	low, mid, high := blend.DemandKOH()
	s.Lye.DemandKOHG, s.Lye.AcidKOHG = mid, acidKOHG
	order := chem.LyeOrder{
		DemandKOHG: mid, AcidKOHG: acidKOHG, Superfat: b.SuperfatPercent / 100,
		Concentration: b.LyeConcentrationPercent / 100, KOHShare: b.kohShare(),
		NaOHPurity: b.NaOHPurityPercent / 100, KOHPurity: b.KOHPurityPercent / 100,
		StockStrength: b.StockLyePercent / 100, WaterInExtrasG: s.Lye.WaterInExtrasG, WaterBeforeG: s.Lye.WaterBeforeG,
	}
	lye, err := chem.MixLye(order)
	if err != nil {
		return lye // the plan was checked: nothing it can hold is refused here; a sheet without lye says so by its stop
	}
	s.Lye.NaOH.PureG, s.Lye.KOH.PureG = lye.NaOHPureG, lye.KOHPureG
	s.Lye.NaOH.WeighedG, s.Lye.KOH.WeighedG, s.Lye.Stock.WeighedG = lye.NaOHWeighedG, lye.KOHWeighedG, lye.StockG
	s.Refused.ShortWater = lye.Short
	if !lye.Short {
		s.Lye.WaterToAddG = Know(lye.WaterToAddG)
	}
	s.Lye.AllWaterG = lye.AllWaterG
	s.allOfTheWater(lye)
	s.Lye.ConcentrationPercent, s.Lye.PureConcentrationPercent = lye.Concentration*100, lye.PureConcentration*100
	s.Lye.AsMixedPercent = lye.AsMixed * 100
	s.Superfat.LowPercent = order.SuperfatOf(lye.NaOHPureG, lye.KOHPureG, low) * 100
	s.Superfat.HighPercent = order.SuperfatOf(lye.NaOHPureG, lye.KOHPureG, high) * 100
	return lye
}

// kohShare is the KOH share of the alkali by moles, a fraction, however the plan says it.
func (b *Batch) kohShare() float64 {
	if b.KOHShareBy == ShareMass {
		return chem.KOHMoleShare(b.KOHSharePercent / 100)
	}
	return b.KOHSharePercent / 100
}

// round rounds what is weighed: the alkali down on the lye step, oils and jugs to the scale step so that they sum to their batch.
func (s *BatchSheet) round(show Show) {
	parts := make([]float64, len(s.Oils))
	for i, o := range s.Oils {
		parts[i] = o.G
	}
	for i, g := range Apportion(parts, show.ScaleStepG) {
		s.Oils[i].WeighG = g
	}
	s.Size.OilsWeighG = roundTo(s.Size.OilsG, show.ScaleStepG)
	masses := make([]float64, len(s.Jugs))
	for i, j := range s.Jugs {
		masses[i] = j.BatterG
	}
	for i, g := range Apportion(masses, show.ScaleStepG) {
		s.Jugs[i].BatterWeighG = g
		s.Jugs[i].TotalG += g
	}
	s.Size.BatterWeighG = roundTo(s.Size.BatterG, show.ScaleStepG)
	s.Lye.NaOH.ToWeighG, s.Lye.KOH.ToWeighG = floorTo(s.Lye.NaOH.WeighedG, show.LyeStepG), floorTo(s.Lye.KOH.WeighedG, show.LyeStepG)
	s.Lye.Stock.ToWeighG = floorTo(s.Lye.Stock.WeighedG, show.LyeStepG)
}

// takeCarrier takes the oil that will carry the colourants out of the batch before it is mixed, where the plan says so.
// The carriers grow with the batter and the batter shrinks by them: batter = all ÷ (1 + carriers per gram of batter).
func (b *bill) takeCarrier(s *BatchSheet) {
	if b.Carrier != CarrierBatch {
		return
	}
	perGram, sum := 0.0, 0.0
	for _, j := range b.Jugs {
		sum += j.SharePercent
	}
	for i, j := range b.Jugs {
		for k, d := range j.Colourants {
			if dye := b.doses[i][k]; dye.wetted == CarryOil {
				perGram += j.SharePercent / sum * d.DosePercent / 100 * dye.parts
			}
		}
	}
	whole := s.Size.BatterG
	s.Size.BatterG = whole / (1 + perGram)
	taken := whole - s.Size.BatterG
	s.Size.OilsG -= taken
	for i := range s.Oils {
		if s.Oils[i].ID == b.carrierOil() {
			s.Oils[i].G -= taken
			if s.Oils[i].G < 0 {
				s.Refused.ShortOil = s.Oils[i].ID
				s.Oils[i].G = 0 // there is none left; what is worked out from here is forgotten in the end
			}
		}
	}
}

// carrierOil is the oil that carries oil-borne colourants: the one named, or the blend's largest.
func (b Batch) carrierOil() string {
	if b.CarrierOil != "" {
		return b.CarrierOil
	}
	best := b.Oils[0]
	for _, o := range b.Oils {
		if o.Percent > best.Percent {
			best = o
		}
	}
	return best.Oil
}

// temperatures works out how warm the lye gets and how warm the batter starts.
func (s *BatchSheet) temperatures(b Batch, blend chem.Blend, lye chem.Lye, roomC float64) {
	total := s.Lye.NaOH.PureG + s.Lye.KOH.PureG
	koh := 0.0
	if total > 0 {
		koh = (s.Lye.KOH.PureG / chem.MolarKOH) / (s.Lye.KOH.PureG/chem.MolarKOH + s.Lye.NaOH.PureG/chem.MolarNaOH)
	}
	if rise, _, ok := chem.LyeRise(lye.PureAsMixed(), koh); ok && b.StockLyePercent == 0 {
		s.Heat.LyeRiseK = Know(rise)
		if !s.Lye.OnIce { // ice takes the heat up as it melts: no peak can be said
			s.Heat.LyePeakC = Know(roomC + rise)
		}
	}
	s.Heat.MixC = b.BatterC
	if !b.BatterMeasured {
		s.Heat.MixC = chem.MixC(s.Size.OilsG, b.OilsC, s.lyeG(), b.LyeC, s.Lye.PureConcentrationPercent/100)
	}
	if c, ok := blend.CloudC(); ok {
		s.Heat.CloudC = Know(c)
	}
}

// lyeG is the mass of the lye with the water of its extras.
func (s *BatchSheet) lyeG() float64 {
	alkali := s.Lye.NaOH.WeighedG + s.Lye.KOH.WeighedG
	if s.Lye.Stock.WeighedG > 0 {
		alkali = s.Lye.NaOH.PureG
	}
	return alkali + s.Lye.AllWaterG
}

func (s *BatchSheet) profile(blend chem.Blend) {
	s.Fats.Families = blend.Families()
	s.Fats.SapKOHMgG = blend.SapKOH()
	if iv, ok := blend.IodineValue(); ok {
		s.Fats.IodineValue = Know(iv)
	}
}
