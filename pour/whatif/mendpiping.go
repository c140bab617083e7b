package whatif

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
)

// pipingWays mends how the icing is piped: its shape, how much of it is made, where it stands and when.
func pipingWays(m *mender, w pour.Warning) []ladder {
	p := &m.plan.Piping
	switch w.Code {
	case "icing-unsized":
		return []ladder{m.usualShape(), {{"pipe " + m.plan.Show.Told(pour.UsualIcingG, pour.UnitGram) + " on each bar instead", pour.Both(pour.SetNumber("icing.per_bar_g", pour.UsualIcingG), pour.SetWord("icing.size", pour.SizeBar))}}}
	case "piping-unfinished":
		return []ladder{m.usualShape(), {{"put the icing on by eye", pour.SetWord("piping.shape", pour.PipeFree)}}}
	case "icing-mismatch":
		return []ladder{m.byShape()}
	case "icing-small":
		return []ladder{m.byShape()[1:]}
	case "icing-bags":
		return []ladder{{{"fill all jugs into one bag, side by side", pour.SetWord("icing.bags", pour.BagOne)}}}
	case "icing-crowded":
		return []ladder{m.fewer()}
	case "icing-lane":
		return []ladder{m.smaller(), m.fewer()}
	case "icing-crosses":
		return []ladder{{{"pipe onto the middle of every bar", pour.SetWord("piping.along", pour.PipeBars)}}}
	case "base-soft":
		if p.PeakMM > 0 {
			return []ladder{m.lower()}
		}
		return []ladder{m.start()}
	case "icing-slides":
		return []ladder{m.start()}
	case "pipe-window":
		return []ladder{m.lessBlended(), m.cooler(pour.Icing), m.start(), m.fewer()}
	}
	return nil
}

// usualLeast is the least icing that is offered to be made, g: most stick blenders draw that in (common practice, no source).
const usualLeast = 150

// usualShape gives the shape the measures it lacks; where none is stated, rosettes.
func (m *mender) usualShape() ladder {
	shape := m.plan.Piping.Shape
	if !m.plan.Piping.Shaped() {
		shape = pour.PipeRosette
	}
	return ladder{{"take the usual measures for " + shape, pour.SetWord("piping.shape", shape)}}
}

// byShape sizes the icing by its shape, or as little as a vessel blends.
func (m *mender) byShape() ladder {
	size := pour.SetWord("icing.size", pour.SizeShape)
	least := m.plan.Piping.LeastG
	if least == 0 {
		least = usualLeast
	}
	return ladder{
		{"make as much icing as its shape comes to", size},
		{fmt.Sprintf("make as much icing as its shape comes to, at least %s, the rest for a small mould", m.plan.Show.Weight(least)), pour.Both(size, pour.SetNumber("piping.least_g", least))},
	}
}

// lessBlended blends the icing less, by parts of every burst.
func (m *mender) lessBlended() ladder {
	var out ladder
	for k := partsOfAmount - 1; k >= 0; k-- {
		bursts := slices.Clone(m.plan.Icing.Blend)
		for i := range bursts {
			bursts[i].S = math.Floor(bursts[i].S * float64(k) / partsOfAmount)
		}
		bursts = slices.DeleteFunc(bursts, func(b pour.Burst) bool { return b.S <= 0 })
		says := "icing: blend it by hand alone"
		if len(bursts) > 0 {
			says = fmt.Sprintf("icing: blend it only %d %% as long", k*100/partsOfAmount)
		}
		out = append(out, Mend{says, pour.SetBursts(pour.Icing, bursts)})
	}
	return out
}

// fewer pipes fewer units beside each other, or fewer rows.
func (m *mender) fewer() ladder {
	key, n, says := "piping.per_bar", m.plan.Piping.PerBar, "pipe %d on each bar"
	if m.plan.Piping.Along == pour.PipeLoaf {
		key, n, says = "piping.rows", m.plan.Piping.Rows, "pipe %d rows"
	}
	var out ladder
	for n--; n >= 1; n-- {
		out = append(out, Mend{fmt.Sprintf(says, n), pour.SetNumber(key, float64(n))})
	}
	return out
}

// smaller pipes smaller units: what makes them long along the loaf is taken down by parts.
func (m *mender) smaller() ladder {
	p := &m.plan.Piping
	switch p.Shape {
	case pour.PipeDollop:
		return m.taken("piping.width_mm", p.WidthMM, "pipe dollops %s across")
	case pour.PipeRosette:
		return m.taken("piping.coil_mm", p.CoilMM, "end the coils at a radius of %s")
	case pour.PipeShells:
		return m.taken("piping.tail_mm", p.TailMM, "draw the shells' tails %s long")
	case pour.PipeRope:
		return m.taken("piping.wind_mm", p.WindMM, "wind the rope by %s")
	case pour.PipeRuffle:
		return m.taken("piping.swing_mm", p.SwingMM, "swing the ruffle by %s")
	}
	return nil
}

// lower pipes less high.
func (m *mender) lower() ladder {
	p := &m.plan.Piping
	switch p.Shape {
	case pour.PipeDollop, pour.PipeShells:
		return m.taken("piping.height_mm", p.HeightMM, "pipe them %s high")
	case pour.PipeSpooned:
		return append(m.taken("piping.relief_mm", p.ReliefMM, "spoon a relief of %s"), m.taken("piping.layer_mm", p.LayerMM, "spoon a layer of %s")...)
	case pour.PipeRosette:
		if p.Tiers > 1 {
			return ladder{{"pipe one coil, none upon it", pour.SetNumber("piping.tiers", 1)}}
		}
	}
	return m.taken("piping.tip_mm", p.TipMM, "take a tip of %s")
}

// taken takes a length of the plan down by parts.
func (m *mender) taken(path string, mm float64, says string) ladder {
	var out ladder
	for _, v := range downFrom(mm) {
		out = append(out, Mend{fmt.Sprintf(says, m.plan.Show.LenTold(v)), pour.SetNumber(path, v)})
	}
	return out
}
