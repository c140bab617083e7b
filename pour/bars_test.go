package pour_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
)

func TestWhatASlabLeavesOverIsSaidForBothSides(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
	for _, c := range []struct {
		shape                 string
		length, bar           float64
		width, barWidth       float64
		lengthSaid, widthSaid string // empty: not said
	}{
		{"slab", 240, 80, 180, 45, "", ""},
		{"slab", 250, 80, 180, 45, "10 mm of the length", ""},
		{"slab", 240, 80, 200, 45, "", "20 mm of the width"},
		{"slab", 250, 80, 200, 45, "10 mm of the length", "20 mm of the width"},
		{"slab", 240, 80, 200, 0, "", ""}, // the whole width
		{"loaf", 240, 80, 200, 45, "", ""},
	} {
		m := &p.Mould
		m.Shape, m.LengthMM, m.BarMM, m.WidthMM, m.BarWidthMM = c.shape, c.length, c.bar, c.width, c.barWidth
		text := ""
		for _, w := range pour.Weigh(p, shelf).Warnings {
			if w.Code == "mould-offcut" {
				text += w.Text + "; "
			}
		}
		if (c.lengthSaid == "") == strings.Contains(text, "of the length") || (c.widthSaid == "") == strings.Contains(text, "of the width") ||
			!strings.Contains(text, c.lengthSaid) || !strings.Contains(text, c.widthSaid) {
			t.Errorf("%+v: said %q", c, text)
		}
	}
}

// A kilogram of these oils at 5 % superfat and 45 % lye holds 147.3 g NaOH and 180 g water in 1327 g: 13.6 % of water is all there is to stay.
func TestACuredBarHeavierThanTheCutOneIsSaid(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants, p.Base.LyeConcentrationPercent = 5, nil, 45
	naoh := (600*olive + 400*coconut) * 0.95 * naohPerKOH
	water := naoh * 55 / 45
	holds := 100 * water / (1000 + naoh + water)
	equal(t, "the water it holds", holds, 13.6, 0.1)
	for _, c := range []struct {
		moisture float64
		said     bool
	}{{10, false}, {holds - 0.01, false}, {holds + 0.01, true}, {25, true}} {
		p.Base.FinalMoisturePercent = c.moisture
		s := pour.Weigh(p, shelf)
		w, ok := found(s, "cured-heavier")
		if ok != c.said || ok != (s.Bars.CuredG > s.Bars.CutG) || ok && (w.Severity != pour.Caution || !strings.Contains(w.Text, "only 13.")) {
			t.Errorf("at %v %% moisture a bar of %v g cures to %v g; said %+v", c.moisture, s.Bars.CutG, s.Bars.CuredG, w)
		}
	}
}

// The icing is judged by its own water: piped of lye as strong, it gains as a bar would.
func TestAnIcingThatWouldGainWeightIsSaid(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
	icing := p.Base.Clone()
	icing.Size, icing.PerBarG, icing.LyeConcentrationPercent, icing.FinalMoisturePercent = pour.SizeBar, 25, 45, 20
	p.Icing = &icing
	if w, ok := found(pour.Weigh(p, shelf), "cured-heavier"); !ok || w.Where != "icing" {
		t.Errorf("said %+v", w)
	}
}

// By hand: 3 by 4 whole bars of 80 × 45 mm in 250 × 180 mm, each 80·45/(250·180) of the slab; a loaf is cut one way.
func TestASlabIsCutBothWays(t *testing.T) {
	p, shelf := halves(t)
	p.Base.SuperfatPercent, p.Base.Jugs[1].Colourants = 5, nil
	m := &p.Mould
	m.LengthMM, m.BarMM, m.WidthMM, m.BarWidthMM = 250, 80, 180, 45
	for shape, want := range map[string]struct {
		count int
		part  float64
	}{"slab": {12, 80. / 250 * 45 / 180}, "loaf": {3, 80. / 250}} {
		m.Shape = shape
		s := pour.Weigh(p, shelf)
		if s.Bars.Count != want.count {
			t.Errorf("a %s gives %d bars", shape, s.Bars.Count)
		}
		equal(t, shape+", one bar", s.Bars.CutG, s.Base.Size.PouredG*want.part, 1e-9)
	}
}

func TestTheKOHShareMayBeOfTheMass(t *testing.T) {
	p, shelf := halves(t)
	p.Base.Jugs[1].Colourants, p.Base.SuperfatPercent = nil, 5
	p.Base.KOHSharePercent, p.Base.KOHShareBy = 60, pour.ShareMass
	b := pour.Weigh(p, shelf).Base
	equal(t, "KOH of the pure mass", b.Lye.KOH.PureG/(b.Lye.KOH.PureG+b.Lye.NaOH.PureG), 0.6, 1e-12)
	demand := (600*olive + 400*coconut) * 0.95
	equal(t, "both together", b.Lye.KOH.PureG/56.1053+b.Lye.NaOH.PureG/39.99677, demand/56.1053, 1e-9)
	for _, by := range []string{"", pour.ShareMoles} {
		p.Base.KOHShareBy = by
		b = pour.Weigh(p, shelf).Base
		equal(t, "KOH by moles", b.Lye.KOH.PureG, demand*0.6, 1e-9)
	}
	_, f, _ := pour.Number(p, "base.koh_share_percent")
	p.Base.KOHShareBy = pour.ShareMass
	_, g, _ := pour.Number(p, "base.koh_share_percent")
	if !strings.Contains(f.Label, "moles") || !strings.Contains(g.Label, "mass") {
		t.Errorf("the share is called %q by moles and %q by mass", f.Label, g.Label)
	}
	p.Base.KOHShareBy = "weight"
	if faults := p.Check(shelf); len(faults) != 1 || faults[0].Path != "base.koh_share_by" || !strings.Contains(faults[0].Mend, "mass") {
		t.Errorf("a word it does not know: %v", faults)
	}
	for _, share := range []float64{0, 100} {
		p.Base.KOHShareBy, p.Base.KOHSharePercent = pour.ShareMass, share
		b = pour.Weigh(p, shelf).Base
		if math.Abs(b.Lye.KOH.PureG-demand*share/100) > 1e-9 {
			t.Errorf("%v %% of the mass is %v g of KOH", share, b.Lye.KOH.PureG)
		}
	}
}

// By hand, from the volumes poured: 250 by 80 mm are 20 mL for each millimetre.
func TestBaseAndIcingAreMeasuredAgainstTheRim(t *testing.T) {
	p, shelf := hanger(t)
	for _, c := range []struct {
		fill  float64
		fires bool
	}{{60, false}, {71, true}, {76, false}} { // at 76 the base itself is over the rim, which is a stop of its own
		p.Mould.FillMM = c.fill
		s := pour.Weigh(p, shelf)
		stands := (s.Base.Size.PouredML + s.Icing.Size.PouredML) / (p.Mould.LengthMM * p.Mould.WidthMM / 1000)
		equal(t, "stands", s.Bars.StandsMM, stands, 1e-9)
		equal(t, "over the rim", s.Bars.OverRimMM, stands-p.Mould.HeightMM, 1e-9)
		w, ok := found(s, "icing-over-rim")
		if ok != c.fires || ok && (w.Severity != pour.Note || !strings.Contains(w.Text, "on average")) {
			t.Errorf("filled %v mm high, %v over the rim: said %+v", c.fill, s.Bars.OverRimMM, w)
		}
	}
	p.Icing = nil
	s := pour.Weigh(p, shelf)
	equal(t, "stands without icing", s.Bars.StandsMM, s.Base.Size.HeightMM, 0)
}
