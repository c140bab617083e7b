package whatif

import (
	"math"

	"pourbench/pour"
)

// cureWays mends what is wanted of bars when they are packed.
func cureWays(m *mender, w pour.Warning) []ladder {
	c, show := &m.before.Cure, m.plan.Show
	switch w.Code {
	case "packed-damp":
		day := math.Ceil(c.ReadyDay.Mid.V)
		return []ladder{{{"pack " + show.Number(day, 0) + " days after the cut", pour.SetNumber("cure.pack_days", day)}}}
	case "label-over-mass":
		g := math.Floor(c.PackG.Mid.V)
		return []ladder{m.labelBars(), {{"put " + show.Weight(g) + " on the label", pour.SetNumber("cure.label_g", g)}}}
	}
	return nil
}

// labelBars are bars that weigh as much as the label says when they are packed, and by half millimetres more, where the mould says how thick they are.
func (m *mender) labelBars() ladder {
	const step, most = 0.5, 10
	c, mould := &m.before.Cure, m.plan.Mould
	if !c.CutForLabelG.Known || m.plan.Cut.By != "" && m.plan.Cut.By != pour.CutBars || !mould.IsCut() {
		return nil
	}
	var out ladder
	from := math.Ceil(mould.BarMM*c.CutForLabelG.V/m.before.Bars.CutG/step) * step
	for mm := from; mm <= from+most; mm += step {
		out = append(out, Mend{"cut bars of " + m.plan.Show.Len(mm), pour.SetNumber("mould.bar_mm", mm)})
	}
	return out
}
