package whatif

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
)

// cutWays mends where the loaf is cut and how it lies under the cutter.
func cutWays(m *mender, w pour.Warning) []ladder {
	equal := Mend{"cut equal bars", pour.EqualBars(0)}
	switch w.Code {
	case "cut-none":
		return []ladder{{equal}, {{"keep both ends", keepEnds()}}, {{"cut bars of the mould's thickness, ends kept, no slice", plainCuts()}}}
	case "cut-outside":
		return []ladder{{{"leave out the cuts that would not cut", pour.CutAt(m.before.Cut, m.before.Cut.CutsMM)}}, {equal}}
	case "cut-rest":
		return []ladder{{{"let the bars have what is left over", pour.SetWord("cut.left", pour.LeftBars)}}, {equal}, {{"look for the best cut plan", pour.BestCuts()}}}
	case "bars-uneven":
		return []ladder{{equal}, {{"cut bars of one mass", oneMass(len(m.before.Cut.Bars))}}}
	case "wires-idle", "wires-off-pitch":
		return []ladder{m.ontoWires(w), {{"look for the best cut plan, one cut at a time", pour.BestCuts()}}, m.withoutIdle()}
	case "wires-twice":
		return []ladder{m.withoutTwins()}
	case "slice-none":
		return []ladder{m.thinnerSlice(), {{"take no sample slice", pour.SetNumber("cut.slice_mm", 0)}}}
	case "best-none":
		return []ladder{m.allToMiddles(), m.varying(), {equal}}
	case "best-shared":
		return []ladder{m.allToMiddles(), m.varying()}
	case "cutter-low", "cutter-shallow", "lay-crushes":
		return []ladder{m.lays()}
	}
	return nil
}

// keepEnds trims nothing and cuts no slice.
func keepEnds() pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		p.Cut.TrimAMM, p.Cut.TrimBMM, p.Cut.SliceMM = 0, 0, 0
		return p, nil
	}
}

// plainCuts is the cut plan of a plan that says nothing of it, with the cutter it has.
func plainCuts() pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		p.Cut.By, p.Cut.Left = "", ""
		return keepEnds()(p)
	}
}

func oneMass(bars int) pour.Edit {
	return func(p pour.Plan) (pour.Plan, error) {
		p.Cut.By, p.Cut.Count = pour.CutMass, bars
		return p, nil
	}
}

// ontoWires sets every embed that is placed into the middles of the bars between the wires.
func (m *mender) ontoWires(w pour.Warning) ladder {
	if w.Code != "wires-off-pitch" {
		return nil
	}
	return m.allToMiddles()
}

func (m *mender) allToMiddles() ladder {
	return ladder{{"set every embed into the middles of the bars", func(p pour.Plan) (pour.Plan, error) {
		for i := range p.Top.Embeds {
			if e := &p.Top.Embeds[i]; e.In == pour.EmbedOwn {
				e.In, e.AtMM, e.AlongMM = "", nil, 0
			}
		}
		return p, nil
	}}}
}

// withoutTwins leaves out every wire that leaves no bar between itself and the one before it.
func (m *mender) withoutTwins() ladder {
	var kept []float64
	for _, w := range slices.Sorted(slices.Values(m.plan.Cut.WiresMM)) {
		if n := len(kept); n == 0 || w-kept[n-1] > m.plan.Cut.KerfMM {
			kept = append(kept, w)
		}
	}
	return ladder{{fmt.Sprintf("take each wire once, %d of them", len(kept)), pour.MyWires(kept)}}
}

// withoutIdle leaves out wires at the far end until all of them meet the loaf.
func (m *mender) withoutIdle() ladder {
	wires := slices.Sorted(slices.Values(m.plan.Cut.WiresMM))
	var out ladder
	for n := len(wires) - 1; n >= 2; n-- {
		out = append(out, Mend{fmt.Sprintf("take the first %d wires", n), pour.MyWires(wires[:n])})
	}
	return out
}

func (m *mender) thinnerSlice() ladder {
	var out ladder
	for mm := math.Ceil(m.plan.Cut.SliceMM) - 1; mm >= 2; mm-- {
		out = append(out, Mend{"cut a sample slice of " + m.plan.Show.Len(mm), pour.SetNumber("cut.slice_mm", mm)})
	}
	return out
}

// varying lets bars be thinner and thicker by whole millimetres, up to half a bar.
func (m *mender) varying() ladder {
	var out ladder
	for mm := 3.0; mm <= m.plan.Mould.BarMM/2; mm++ {
		if mm > m.plan.Cut.VaryMM {
			out = append(out, Mend{"let bars vary by " + m.plan.Show.Len(mm), pour.SetNumber("cut.vary_mm", mm)})
		}
	}
	return out
}

// lays are the other ways to lay the loaf, the gentlest first.
func (m *mender) lays() ladder {
	var out ladder
	for _, e := range pour.LayEffects() {
		says := map[string]string{pour.LaySide: "lay the loaf on its side", pour.LayUpright: "cut it upright, from above", pour.LayPulledUp: "", pour.LayUpsideDown: "lay it upside down"}[e.Lay]
		if says != "" && e.Lay != m.plan.Cut.Laid().Lay {
			out = append(out, Mend{says, pour.SetWord("cut.lay", e.Lay)})
		}
	}
	return out
}
