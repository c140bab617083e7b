package whatif

import (
	"fmt"
	"math"
	"strings"

	"pourbench/pour"
)

// mouldWays mends what does not fit: vessels, fill, bars and bed.
func mouldWays(m *mender, w pour.Warning) []ladder {
	switch w.Code {
	case "jug-too-small":
		n, jug, _ := w.Jug()
		return []ladder{m.lessShare(n, jug), m.largerJug(n, jug)}
	case "mould-overfull", "mould-high":
		return []ladder{m.lowerFill(), m.oils(-1)}
	case "icing-over-rim":
		return []ladder{m.lowerFill(), m.lessIcing()}
	case "mould-underfilled":
		return []ladder{{{"size the base by its mould", pour.SetWord("base.size", pour.SizeMould)}}, m.oils(1), m.lowerFill()}
	case "mould-offcut":
		return m.wholeBars(w)
	case "cured-heavier":
		n, _ := w.Batch()
		return []ladder{m.drier(n)}
	case "soda-ash":
		return []ladder{m.bed(pour.BedInsulate, "cover the loaf and keep it warm")}
	case "swirl-ignored":
		return []ladder{
			{{"let the technique choose its passes", pour.SetPasses(0)}},
			{{"let the pin of the last jug go", pour.PinLast("")}},
			{{fmt.Sprintf("pour in %d passes", m.before.Base.Script.Brief.Passes), pour.SetPasses(m.before.Base.Script.Brief.Passes)}},
		}
	}
	return nil
}

// vesselStep is the step in which larger jugs are named, mL.
const vesselStep = 50

func (m *mender) lessShare(n pour.BatchName, jug string) ladder {
	i, j := m.jug(n, jug)
	var out ladder
	for _, v := range downFrom(j.SharePercent) {
		out = append(out, Mend{of(n, fmt.Sprintf("give %s a share of %s", jug, m.percent(v))), pour.SetShare(n, i, v)})
	}
	return out
}

func (m *mender) largerJug(n pour.BatchName, jug string) ladder {
	i, _ := m.jug(n, jug)
	var out ladder
	if i >= 0 {
		ml := math.Ceil(m.before.Batch(n).Jugs[i].VesselML/vesselStep) * vesselStep
		out = append(out, Mend{of(n, fmt.Sprintf("take a jug of %s for %s", m.plan.Show.Volume(ml), jug)), pour.SetCapacity(n, i, ml)})
	}
	return out
}

// lowerFill fills the mould less high, by whole millimetres.
func (m *mender) lowerFill() ladder {
	var out ladder
	for mm := math.Ceil(m.plan.Mould.FillMM) - 1; mm > m.plan.Mould.FillMM/2; mm-- {
		out = append(out, Mend{"fill it " + m.plan.Show.Len(mm) + " high", pour.SetNumber("mould.fill_mm", mm)})
	}
	return out
}

// lessIcing makes less icing, by whatever sizes it.
func (m *mender) lessIcing() ladder {
	b := m.plan.Icing
	var out ladder
	switch b.Size {
	case pour.SizeBar:
		for _, v := range downFrom(b.PerBarG) {
			out = append(out, Mend{"pipe " + m.plan.Show.Weight(v) + " on each bar", pour.SetNumber("icing.per_bar_g", v)})
		}
	case pour.SizeLayer:
		for _, v := range downFrom(b.LayerMM) {
			out = append(out, Mend{"pipe it " + m.plan.Show.Len(v) + " high on average", pour.SetNumber("icing.layer_mm", v)})
		}
	default:
		for _, v := range downFrom(b.OilsG) {
			out = append(out, Mend{"take " + m.plan.Show.Weight(v) + " of oils for the icing", pour.SetNumber("icing.oils_g", v)})
		}
	}
	return out
}

// oils takes less oil, or more, where the base is sized by its oils.
func (m *mender) oils(by float64) ladder {
	var out ladder
	for k := 1.0; k < partsOfAmount && m.plan.Base.Size == pour.SizeOils; k++ {
		g := math.Floor(m.plan.Base.OilsG*(1+by*k/partsOfAmount)/10) * 10
		out = append(out, Mend{"take " + m.plan.Show.Weight(g) + " of oils", pour.SetNumber("base.oils_g", g)})
	}
	return out
}

// wholeBars cuts bars a little thinner or thicker, so that a whole number of them makes up the side that leaves a rest.
func (m *mender) wholeBars(w pour.Warning) []ladder {
	own := &m.plan.Cut
	k := own.KerfMM
	key, side, bar := "mould.bar_mm", m.plan.Mould.AlongMM(), m.plan.Mould.BarMM
	for _, end := range [3]float64{own.TrimAMM, own.TrimBMM, own.SliceMM} {
		if end > 0 {
			side -= end + k
		}
	}
	if strings.Contains(w.Text, "of the width") {
		key, side, bar = "mould.bar_width_mm", m.plan.Mould.WidthMM, m.plan.Mould.BarWidthMM
	}
	var out []ladder
	for _, count := range [2]float64{math.Floor((side + k) / (bar + k)), math.Ceil((side + k) / (bar + k))} {
		if mm := math.Floor(((side+k)/count-k)*10) / 10; count > 0 && mm > 0 {
			out = append(out, ladder{{fmt.Sprintf("cut %.0f bars of %s", count, m.plan.Show.LenNear(mm)), pour.SetNumber(key, mm)}})
		}
	}
	return append(out, ladder{{"let the bars have what is left over", pour.SetWord("cut.left", pour.LeftBars)}}, ladder{{"trim both ends alike", pour.SetWord("cut.left", pour.LeftTrims)}})
}

// drier takes bars to cure to less moisture.
func (m *mender) drier(n pour.BatchName) ladder {
	var out ladder
	for v := math.Ceil(m.plan.Batch(n).FinalMoisturePercent) - 1; v >= 0; v-- {
		out = append(out, m.number(n, "final_moisture_percent", v, "reckon with %s of moisture after cure", m.percent(v)))
	}
	return out
}
