package pour

import "math"

// A batch that cannot be made as planned has no masses: how much of it there would be follows from what cannot be. Its sheet then holds
// no number where a mass, a volume or a height stands, which [Show] draws as a dash and the figures write as null, and whatever is worked
// out from one is no number either. [BatchSheet.MassRefusal] says why.

// Unknown is what stands in a sheet for a mass, a volume or a height that could not be worked out: it is no number.
func Unknown() float64 { return math.NaN() }

// AsFigure is a mass, a volume or a height of a sheet as a [Figure]: unknown where it could not be worked out.
func AsFigure(v float64) Figure {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Figure{}
	}
	return Know(v)
}

// orUnknown is a figure's number, or no number where it is unknown.
func (f Figure) orUnknown() float64 {
	if !f.Known {
		return Unknown()
	}
	return f.V
}

// noAlkali is why a blend of fats that no alkali saponifies has no lye.
const noAlkali = "nothing in this batch takes up alkali"

// refuse says why the masses of a batch cannot be worked out, or "" when they can.
func (s *BatchSheet) refuse(unfinished, carrier string) string {
	switch {
	case unfinished != "":
		return unfinished
	case s.Lye.NaOH.PureG+s.Lye.KOH.PureG <= 0:
		return noAlkali
	case s.Refused.ShortWater:
		return "stock lye or extras bring more water than this lye wants"
	case carrier != "":
		return "the carriers want more " + carrier + " than the blend holds"
	}
	return ""
}

// forget makes every figure unknown that follows from what cannot be made. Oils given in grams stay, with what depends on them alone.
func (s *BatchSheet) forget(b Batch) {
	if s.Refused.Masses == "" {
		return
	}
	if s.Refused.Unfinished {
		s.forgetBlend()
	}
	if b.Size != SizeOils || s.Refused.Unfinished {
		s.forgetSize()
	}
	if b.Size != SizeOils || s.Refused.ShortWater || s.Refused.Unfinished {
		unknown(&s.Lye.AllWaterG, &s.Lye.AsMixedPercent, &s.Heat.MixC)
		s.Lye.WaterToAddG, s.Heat.LyeRiseK, s.Heat.LyePeakC = Figure{}, Figure{}, Figure{}
	}
	for i := range s.Oils {
		if s.Oils[i].ID == s.Refused.ShortOil {
			unknown(&s.Oils[i].G, &s.Oils[i].WeighG, &s.Size.OilsG, &s.Size.OilsWeighG, &s.Heat.MixC)
		}
	}
	unknown(&s.Size.BatterG, &s.Size.BatterML, &s.Size.BatterWeighG, &s.Size.PouredG, &s.Size.PouredML, &s.Size.HeightMM, &s.Size.DryG, &s.Superfat.AsWeighedPercent)
	if b.Carrier == CarrierBatch {
		unknown(&s.Superfat.MixedPercent)
	}
	for i := range s.Jugs {
		s.Jugs[i].forget()
	}
}

// forgetBlend forgets what kind of fat a blend is that is not finished, and what follows from that.
func (s *BatchSheet) forgetBlend() {
	f := &s.Fats.Families
	unknown(&f.ShortPercent, &f.PalmiticStearicPercent, &f.OleicPercent, &f.LinoleicLinolenicPercent, &f.RicinoleicPercent, &f.OtherPercent, &s.Fats.SapKOHMgG,
		&s.Superfat.ExactPercent, &s.Superfat.MixedPercent, &s.Superfat.LowPercent, &s.Superfat.HighPercent)
	s.Fats.IodineValue, s.Heat.CloudC = Figure{}, Figure{}
	for i := range s.Extras {
		s.Extras[i].AllPercent = Figure{}
	}
}

// forgetSize forgets how large the batch is: its size follows from a volume or a mass that cannot be worked out.
func (s *BatchSheet) forgetSize() {
	unknown(&s.Size.OilsG, &s.Size.OilsWeighG, &s.Lye.NaOH.PureG, &s.Lye.KOH.PureG, &s.Lye.NaOH.WeighedG, &s.Lye.KOH.WeighedG, &s.Lye.NaOH.ToWeighG, &s.Lye.KOH.ToWeighG,
		&s.Lye.Stock.WeighedG, &s.Lye.Stock.ToWeighG, &s.Lye.WaterInExtrasG, &s.Lye.WaterBeforeG, &s.Size.ExtrasG, &s.Lye.DemandKOHG, &s.Lye.AcidKOHG, &s.Lye.ExtraFatKOHG)
	for i := range s.Oils {
		unknown(&s.Oils[i].G, &s.Oils[i].WeighG)
	}
	for i := range s.Extras {
		unknown(&s.Extras[i].G, &s.Extras[i].AcidKOHG, &s.Extras[i].FatKOHG)
	}
	for i := range s.Scents {
		unknown(&s.Scents[i].G)
	}
	for i := range s.Jugs {
		for k := range s.Jugs[i].Scents {
			unknown(&s.Jugs[i].Scents[k].G)
		}
	}
}

// forget forgets what a jug's part of a batter is that cannot be made.
func (j *JugSheet) forget() {
	unknown(&j.BatterG, &j.BatterWeighG, &j.TotalG, &j.TotalML,
		&j.Superfat.HeldPercent, &j.Superfat.FirmPercent, &j.Superfat.LowPercent, &j.Superfat.AsWeighedPercent)
	for k := range j.Colourants {
		d := &j.Colourants[k]
		unknown(&d.PigmentG, &d.CarrierG)
		d.TeaspoonsML5 = Figure{}
	}
}

func unknown(figures ...*float64) {
	for _, f := range figures {
		*f = Unknown()
	}
}
