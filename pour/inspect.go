package pour

import (
	"fmt"
	"math"
)

// inspect finds every warning that needs no clock.
func (s *Sheet) inspect(shelf Shelf) {
	for _, b := range s.Batches() {
		s.inspectLye(b)
		s.inspectExtras(b)
		s.inspectScents(b, shelf)
		s.inspectVanillin(b, shelf)
		s.inspectColours(b, shelf)
		s.inspectJugs(b)
	}
	s.inspectLimits()
	s.inspectMould()
	s.inspectBed()
	s.inspectDust(shelf)
	s.sortWarnings()
}

// worstSteps is how far the lye step may move the superfat before it is worth a word, percentage points.
const worstSteps = 0.3

// boilNearC is where a pot of lye is called near boiling: strong lye boils above 100 °C, but spits before.
const boilNearC = 90

func (s *Sheet) inspectLye(b *BatchSheet) {
	show := s.Plan.Show
	if b.SuperfatPercent < 0 || b.SuperfatAsWeighedPercent < 0 {
		s.warn(warning("lye-heavy", b.Name, fmt.Sprintf("superfat %s leaves free alkali in the bar", show.Percent(b.SuperfatPercent, 1)),
			"set a superfat of 0 or more; most bars carry 3 to 8 %"))
	} else if b.SuperfatLowPercent < 0 {
		s.warn(warning("lye-heavy-worst", b.Name, fmt.Sprintf("if every oil sits at the low end of its published range the superfat is %s", show.Percent(b.SuperfatLowPercent, 1)),
			"raise the superfat, or use the saponification value on your oils' own certificates"))
	}
	if b.LyeAsMixedPercent > 50 && b.StockLyePercent == 0 {
		s.warn(warning("lye-mixed-strong", b.Name, fmt.Sprintf("the lye would be %s strong as it is mixed, over what water dissolves safely", show.Percent(b.LyeAsMixedPercent, 1)),
			"lower the lye concentration, or take less of the watery extras"))
	}
	if !b.WaterToAddG.Known {
		s.warn(warning("lye-short-water", b.Name, fmt.Sprintf("stock lye and extras bring more water than %s lye wants", show.Percent(s.Plan.Batch(BatchName(b.Name)).LyeConcentrationPercent, 1)),
			"lower the lye concentration, take a stronger stock or dry alkali, or less of the watery extras"))
	}
	if b.LyePeakC.Known && b.LyePeakC.V >= boilNearC {
		s.warn(warning("lye-near-boil", b.Name, fmt.Sprintf("from a room at %s the lye water could reach about %s, near boiling", show.Temp(s.Plan.Room.TemperatureC), show.Temp(b.LyePeakC.V)),
			"use cold water or ice, add the alkali little by little, in a vessel that stands the heat, and do not lean over it"))
	}
	if math.Abs(b.SuperfatAsWeighedPercent-b.SuperfatPercent) > worstSteps {
		s.warn(warning("alkali-rounding", b.Name, fmt.Sprintf("weighed in steps of %s the superfat comes out at %s", show.Dose(show.LyeStepG), show.Percent(b.SuperfatAsWeighedPercent, 1)),
			"weigh the alkali on a finer scale"))
	}
	if b.StockLyePercent == 0 && (b.NaOHPureG > 0 && b.NaOHPurityPercent == 100 || b.KOHPureG > 0 && b.KOHPurityPercent > 95) {
		s.warn(warning("purity-assumed", b.Name, "the alkali is taken to be as pure as the plan says; guessing it lower makes lye-heavy soap",
			"put the purity of your own packet's certificate in, or leave it at 100 %"))
	}
	if !b.IodineValue.Known {
		s.warn(warning("figure-unknown", b.Name, "the iodine value cannot be worked out: part of the blend has no fatty-acid profile", "put its fatty acids on your own shelf"))
	}
	if !b.LyeRiseK.Known && b.StockLyePercent == 0 {
		s.warn(warning("figure-unknown", b.Name, "how hot this lye gets cannot be worked out", "expect it to near boiling: cold water, little by little"))
	}
	for _, o := range b.Oils {
		if o.G < 0 {
			s.warn(warning("carrier-short", b.Name, fmt.Sprintf("the carriers want more %s than the blend holds", o.Name), "carry the colours in an oil the blend has more of, or as an extra"))
		}
	}
}

func (s *Sheet) inspectExtras(b *BatchSheet) {
	for _, x := range b.Extras {
		where := b.Name + " extra " + x.Name
		switch x.Kind {
		case ExtraSugar:
			s.warn(warning("lye-meets-sugar", where, fmt.Sprintf("%s makes the lye and the loaf run hotter and browner", x.Name), "dissolve it in cool water first, work cool, do not wrap the loaf warm"))
		case ExtraMilk:
			s.warn(warning("lye-meets-milk", where, fmt.Sprintf("%s scorches, smells and foams in hot lye", x.Name), "freeze it, add the alkali very slowly over ice, keep the loaf cool"))
		case ExtraAlcohol:
			s.warn(warning("lye-meets-alcohol", where, fmt.Sprintf("%s can boil over when lye meets it, and speeds the batter", x.Name), "boil the alcohol and the gas off, chill it, use a tall vessel"))
		case ExtraAcid:
			s.warn(warning("lye-meets-acid", where, fmt.Sprintf("%s uses up alkali, which is reckoned in, and heats as it meets it", x.Name), "dissolve it in its own water and add it slowly, never onto dry alkali"))
		case ExtraSalt:
			s.warn(warning("glycerin-sweat", where, fmt.Sprintf("%s draws damp from the air", x.Name), "cure and keep the bars dry; salty loaves harden early, cut sooner"))
		}
	}
}

// jugSuperfatGap is how far a jug's own superfat may stand over its batch's before it is worth a word, percentage points.
const jugSuperfatGap = 3

func (s *Sheet) inspectJugs(b *BatchSheet) {
	show, plan := s.Plan.Show, s.Plan.Batch(BatchName(b.Name))
	for i, j := range b.Jugs {
		where := b.Name + " jug " + j.Name
		if limit := plan.Jugs[i].CapacityML; limit > 0 && j.TotalML > limit {
			s.warn(warning("jug-too-small", where, fmt.Sprintf("%s goes into a jug of %s", show.Volume(j.TotalML), show.Volume(limit)), "take a larger jug or a smaller share; leave room to stir"))
		}
		if j.SuperfatPercent > b.SuperfatPercent+jugSuperfatGap {
			s.warn(warning("superfat-jug", where, fmt.Sprintf("its carrier oil lifts its superfat to %s", show.Percent(j.SuperfatPercent, 1)), "carry the colour in less oil, in water, or take the oil out of the batch"))
		}
	}
}

// rimMM is the room below the rim that keeps a filled mould from spilling when it is carried: common practice, no source.
const rimMM = 3

// lowMM is how far below the planned height a batch may stand before bars come out visibly small: common practice, no source.
const lowMM = 3

func (s *Sheet) inspectMould() {
	m, show := s.Plan.Mould, s.Plan.Show
	height := s.Base.HeightMM
	switch {
	case height > m.HeightMM:
		s.warn(warning("mould-overfull", "mould", fmt.Sprintf("the base stands %s high in a mould of %s", show.Len(height), show.Len(m.HeightMM)), "take less oil, a larger mould or a lower fill"))
	case height > m.HeightMM-rimMM:
		s.warn(warning("mould-high", "mould", fmt.Sprintf("the base stands %s high, hard under the rim at %s", show.Len(height), show.Len(m.HeightMM)), "leave a few millimetres to carry it and to swirl"))
	case height < m.FillMM-lowMM:
		s.warn(warning("mould-underfilled", "mould", fmt.Sprintf("the base stands %s high instead of %s", show.Len(height), show.Len(m.FillMM)), "size the base by its mould, or lower the fill height"))
	}
	rest := m.LengthMM - math.Floor(m.LengthMM/m.BarMM+1e-9)*m.BarMM
	if rest > 1 {
		s.warn(warning("mould-offcut", "mould", fmt.Sprintf("%s at the end of the loaf makes no whole bar", show.Len(rest)), "trim both ends alike, or change the bar thickness"))
	}
}

// inspectBed looks at the top of the loaf. Whether the loaf gels takes the clock: see [Sheet.Time].
func (s *Sheet) inspectBed() {
	plan, b := s.Plan, s.Base
	if plan.Bed.Keep == BedBare || plan.Bed.Keep == BedChill {
		chance := "possible"
		if b.LyeConcentrationPercent < 30 {
			chance = "likely"
		}
		s.warn(warning("soda-ash", "bed", "a white bloom of soda ash is "+chance+" on a cool, open top", "cover the top closely, use less water or keep it warm (common practice)"))
	}
}

// inspectDust names every fine powder once.
func (s *Sheet) inspectDust(shelf Shelf) {
	seen, list := map[string]bool{}, ""
	for _, b := range s.Batches() {
		for _, j := range b.Jugs {
			for _, d := range j.Colourants {
				if c, ok := shelf.Colourant(d.ID); ok && c.Dust && !seen[c.Name] {
					seen[c.Name] = true
					if list != "" {
						list += ", "
					}
					list += c.Name
				}
			}
		}
	}
	if list != "" {
		s.warn(warning("dust", "bench", "fine powder: "+list, "no draught, a dust mask, lid on, wet it at once; its safety data sheet comes first"))
	}
}
