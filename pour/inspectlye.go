package pour

import (
	"fmt"
	"math"
)

// inspectLye finds every warning that stands on a batch's alkali and water.
func (s *Sheet) inspectLye(b *BatchSheet) {
	if b.Refused.Unfinished {
		s.warn(warning("blend-unfinished", string(b.Name), b.Refused.Masses+": nothing can be mixed from its oils yet", "type its parts until they sum to 100 %, or let the bench do it"))
		return
	}
	if b.Refused.Unsized != "" {
		s.warn(warning("icing-unsized", string(b.Name), b.Refused.Unsized, "state it, or size the icing otherwise"))
	}
	if b.Refused.Masses == noAlkali {
		s.warn(warning("plan-fault", string(b.Name), noAlkali+": there is no lye to make", "add an oil with a saponification value"))
	}
	s.inspectSuperfat(b)
	s.inspectWater(b)
	s.inspectRounding(b)
	s.inspectPurity(b)
	if !b.Fats.IodineValue.Known {
		s.warn(warning("figure-unknown", string(b.Name), "the iodine value cannot be worked out: part of the blend has no fatty-acid profile", "put its fatty acids on your own shelf"))
	}
	for _, o := range b.Oils {
		if o.ID == b.Refused.ShortOil {
			s.warn(warning("carrier-short", string(b.Name), fmt.Sprintf("the carriers want more %s than the blend holds: no figure of this batch can be worked out", o.Name),
				`carry the colours in an oil the blend has more of, in less oil, or on top of the batch (carrier = "extra")`))
		}
	}
}

// weighedSlack is how far below 0 the superfat as weighed may be before it stops the lye, percentage points: less than a scale's step tells.
const weighedSlack = 0.05

// inspectSuperfat judges the jug with the least superfat: batter is divided before the carriers join it, so a jug without one is the
// leanest where the carriers' oil is taken out of the batch. What scents can take up is an upper bound and clears nothing.
func (s *Sheet) inspectSuperfat(b *BatchSheet) {
	show := s.Plan.Show
	jug, least, _ := b.leastJug(func(j JugSheet) float64 { return j.Superfat.FirmPercent })
	shown, leastShown, _ := b.leastJug(func(j JugSheet) float64 { return j.Superfat.AsWeighedPercent })
	low, leastLow, _ := b.leastJug(func(j JugSheet) float64 { return j.Superfat.LowPercent })
	switch {
	case b.Superfat.PlannedPercent < 0:
		s.warn(warning("lye-heavy", string(b.Name), fmt.Sprintf("superfat %s leaves free alkali in the bar", show.Percent(b.Superfat.PlannedPercent, 1)),
			"set a superfat of 0 or more; most bars carry 3 to 8 %"))
	case least < -noise:
		s.warn(warning("lye-heavy", b.Name.jug(jug.Name), fmt.Sprintf("the carriers' oil is taken out of the batch and it gets little of it back: its own superfat is %s, free alkali in its soap",
			show.Percent(least, 1)), s.lift(b, least)))
	case b.Superfat.AsWeighedPercent < -weighedSlack:
		s.warn(warning("lye-heavy", string(b.Name), fmt.Sprintf("weighed in steps of %s and %s the superfat comes out at %s: free alkali in the bar",
			show.Weight(show.ScaleStepG), show.Dose(show.LyeStepG), show.Percent(b.Superfat.AsWeighedPercent, 1)), "weigh on a finer scale, or raise the superfat"))
	case leastShown < -weighedSlack:
		s.warn(warning("lye-heavy", b.Name.jug(shown.Name), fmt.Sprintf("weighed in steps of %s and %s its own superfat comes out at %s: free alkali in its soap",
			show.Weight(show.ScaleStepG), show.Dose(show.LyeStepG), show.Percent(leastShown, 1)), "weigh on a finer scale, or raise the superfat"))
	case b.Superfat.LowPercent < -noise && !(leastLow < b.Superfat.LowPercent-noise):
		s.warn(warning("lye-heavy-worst", string(b.Name), fmt.Sprintf("if every oil sits at the low end of its published range the superfat is %s%s", show.Percent(b.Superfat.LowPercent, 1), b.withoutExtraFat()),
			"raise the superfat, or use the saponification value on your oils' own certificates"))
	case leastLow < -noise:
		s.warn(warning("lye-heavy-worst", b.Name.jug(low.Name), fmt.Sprintf("if every oil sits at the low end of its published range its own superfat is %s", show.Percent(leastLow, 1)),
			"raise the superfat, use the saponification value on your oils' own certificates, or carry the colours in less oil"))
	}
}

// withoutExtraFat says that the batch's low end leaves out what fat its extras bring, as its figures with that fat stand beside it.
func (s *BatchSheet) withoutExtraFat() string {
	if s.Lye.ExtraFatKOHG > 0 {
		return ", the fat of its extras not counted"
	}
	return ""
}

// lift says which superfat of the batch would bring its leanest jug to 0.
func (s *Sheet) lift(b *BatchSheet, leastPercent float64) string {
	alkali := (100 - leastPercent) / (100 - b.Superfat.PlannedPercent) // what the jug's oils would meet of alkali at a superfat of 0
	needed := math.Ceil((100-100/alkali)*10) / 10
	return fmt.Sprintf(`raise the superfat to %s or more, carry the colours in less oil, or on top of the batch (carrier = "extra")`, s.Plan.Show.Percent(needed, 1))
}

// roundingGap is how far the scales' steps may move the superfat before it is a caution, percentage points.
const roundingGap = 0.5

func (s *Sheet) inspectRounding(b *BatchSheet) {
	show := s.Plan.Show
	if math.Abs(b.Superfat.AsWeighedPercent-b.Superfat.ExactPercent) > roundingGap {
		s.warn(warning("alkali-rounding", string(b.Name), fmt.Sprintf("oils in steps of %s and alkali in steps of %s make the superfat %s instead of %s",
			show.Weight(show.ScaleStepG), show.Dose(show.LyeStepG), show.Percent(b.Superfat.AsWeighedPercent, 2), show.Percent(b.Superfat.ExactPercent, 2)),
			"weigh on finer scales and set their steps, or make a larger batch"))
	}
}

// What solid alkali is sold at, percent: sodium hydroxide from 97 to 99 and more, potassium hydroxide from 85 to 92, the rest mostly water
// that it holds on to (grade sheets, from memory). Beyond the bounds no such alkali is to be had.
const (
	usualNaOHPercent = 99
	leastNaOHPercent = 95
	usualKOHPercent  = 90
	leastKOHPercent  = 80
	mostKOHPercent   = 95
)

// inspectPurity says what a purity no such alkali has would do if it is a slip.
func (s *Sheet) inspectPurity(b *BatchSheet) {
	if b.Lye.Stock.StrengthPercent > 0 {
		return
	}
	if b.Lye.NaOH.PureG > 0 && b.Lye.NaOH.PurityPercent < leastNaOHPercent {
		s.oddPurity(b, "NaOH", b.Lye.NaOH.PurityPercent, usualNaOHPercent, b.alkaliKOHG(b.Lye.NaOH.WeighedG*usualNaOHPercent/100, b.Lye.KOH.PureG))
	}
	if b.Lye.KOH.PureG > 0 && (b.Lye.KOH.PurityPercent < leastKOHPercent || b.Lye.KOH.PurityPercent > mostKOHPercent) {
		s.oddPurity(b, "KOH", b.Lye.KOH.PurityPercent, usualKOHPercent, b.alkaliKOHG(b.Lye.NaOH.PureG, b.Lye.KOH.WeighedG*usualKOHPercent/100))
	}
	if b.Lye.NaOH.PureG > 0 && b.Lye.NaOH.PurityPercent == 100 || b.Lye.KOH.PureG > 0 && b.Lye.KOH.PurityPercent > mostKOHPercent {
		s.warn(warning("purity-assumed", string(b.Name), "the alkali is taken to be as pure as the plan says; guessing it lower makes lye-heavy soap",
			"put the purity of your own packet's certificate in, or leave it at 100 %"))
	}
}

// oddPurity warns of a purity with the superfat it would leave, were the alkali as pure as it is usually sold: then alkaliKOHG is in the batch.
func (s *Sheet) oddPurity(b *BatchSheet, name string, percent, usual, alkaliKOHG float64) {
	show := s.Plan.Show
	f := fats{plannedPercent: b.Superfat.PlannedPercent}
	would := f.superfatOf(alkaliKOHG-b.Lye.AcidKOHG, b.Lye.DemandKOHG+b.Lye.ExtraFatKOHG)
	s.warn(warning("purity-unusual", string(b.Name), fmt.Sprintf("no %s is sold at %s; were it the usual %s the superfat would be %s", name, show.Percent(percent, 1), show.Percent(usual, 0), show.Percent(would, 1)),
		"take the figure from your own packet or its certificate"))
}

// boilNearC is where a pot of lye is called near boiling: strong lye boils above 100 °C, but spits before.
const boilNearC = 90

func (s *Sheet) inspectWater(b *BatchSheet) {
	show := s.Plan.Show
	if b.Lye.AsMixedPercent > 50 && b.Lye.Stock.StrengthPercent == 0 {
		s.warn(warning("lye-mixed-strong", string(b.Name), fmt.Sprintf("the lye would be %s strong as it is mixed, over what water dissolves safely", show.Percent(b.Lye.AsMixedPercent, 1)),
			"lower the lye concentration, or take less of the watery extras"+b.couldBeWater()))
	}
	if b.Refused.ShortWater {
		s.warn(warning("lye-short-water", string(b.Name), fmt.Sprintf("stock lye and extras bring more water than %s lye wants: no figure of this batch can be worked out",
			show.Percent(s.Plan.Batch(b.Name).LyeConcentrationPercent, 1)),
			"lower the lye concentration, take a stronger stock or dry alkali, or less of the watery extras"+s.mostOfIt(b)))
	}
	if b.Heat.LyePeakC.Known && b.Heat.LyePeakC.V >= boilNearC {
		s.warn(warning("lye-near-boil", string(b.Name), fmt.Sprintf("from a room at %s the lye water could reach about %s, near boiling", show.Temp(s.Plan.Room.TemperatureC), show.Temp(b.Heat.LyePeakC.V)),
			"use cold water or ice, add the alkali little by little, in a vessel that stands the heat, and do not lean over it"))
	}
	if !b.Heat.LyeRiseK.Known && b.Lye.Stock.StrengthPercent == 0 && b.Refused.Masses == "" {
		s.warn(warning("figure-unknown", string(b.Name), "how hot this lye gets cannot be worked out", "expect it to near boiling: cold water, little by little"))
	}
}

// couldBeWater says that a watery extra need not join after the alkali.
func (s *BatchSheet) couldBeWater() string {
	for _, x := range s.Extras {
		if x.Joins == JoinsCooled && x.WaterPercent >= wateryPercent {
			return fmt.Sprintf(`, or let %s be the lye's water, frozen before the alkali (in = "lye_water")`, x.Name)
		}
	}
	return ""
}

// mostOfIt says how much of a watery extra there may be, where it alone brings too much water.
func (s *Sheet) mostOfIt(b *BatchSheet) string {
	for _, x := range b.Extras {
		if x.AllPercent.Known && x.AllPercent.V > 0 {
			return fmt.Sprintf("; %s of the oils of %s would be all of the water", s.Plan.Show.Percent(math.Floor(x.AllPercent.V*100)/100, 2), x.Name)
		}
	}
	return ""
}
