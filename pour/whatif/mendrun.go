package whatif

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"

	"pourbench/pour"
)

// runWays mends what comes too late or too early: by what [Suggest] finds, and by starting or splitting at another minute, which it leaves alone.
func runWays(m *mender, w pour.Warning) []ladder {
	n, _ := w.Batch()
	switch w.Code {
	case "scent-fast-late":
		_, jug, _ := w.Jug()
		return slices.Concat(m.suggested(), []ladder{m.split(n, -1)}, each(m.scentsIn(n, jug), func(i int) []ladder {
			return append(m.elsewhere(n, i), m.without(n, i))
		}))
	case "jug-late", "base-stiff":
		return append(m.suggested(), m.split(n, -1))
	case "jug-early":
		return append(m.suggested(), m.split(n, 1))
	case "split-early":
		return append([]ladder{m.split(n, 1)}, m.quicker(n)...)
	case "icing-thin", "icing-stiff":
		return append(m.suggested(), m.start())
	case "false-trace":
		return []ladder{m.warmer(n, 2, "warmer")}
	case "hands-busy":
		return []ladder{m.startFree()}
	}
	return nil
}

// suggested is what brings jugs inside their windows, looked for once, single changes first: one jug may want no more.
func (m *mender) suggested() []ladder {
	if !m.asked {
		m.helps, m.asked = Suggest(m.plan, m.shelf, m.hand), true
		slices.SortStableFunc(m.helps, func(a, b Suggestion) int { return cmp.Compare(len(a.What), len(b.What)) })
	}
	var out []ladder
	at := map[string]int{} // suggestions that say the same but for their figures are steps of one ladder
	for _, s := range m.helps {
		says := s.String()
		way := strings.Map(func(r rune) rune {
			if unicode.IsDigit(r) {
				return -1
			}
			return r
		}, says)
		if i, ok := at[way]; ok {
			out[i] = append(out[i], Mend{says, s.Edit})
			continue
		}
		at[way], out = len(out), append(out, ladder{{says, s.Edit}})
	}
	return out
}

// longestWait is how far a start or a split is moved at most, min.
const longestWait = 120

// split divides a batch earlier or later, in whole minutes.
func (m *mender) split(n pour.BatchName, by float64) ladder {
	at := math.Round(m.plan.Batch(n).SplitAtMin)
	var out ladder
	for to := at + by; to >= 1 && to <= at+longestWait; to += by {
		out = append(out, Mend{of(n, "split it at "+m.plan.Show.Minutes(to)), pour.SetSplitAt(n, to)})
	}
	return out
}

// quicker brings a batch to an emulsion sooner: warmer, by stronger lye, with more of the stick blender.
func (m *mender) quicker(n pour.BatchName) []ladder {
	var out []ladder
	kind := ""
	for _, c := range m.pace(n, 1) {
		if c.kind != kind {
			kind, out = c.kind, append(out, nil)
		}
		last := &out[len(out)-1]
		*last = append(*last, Mend{strings.Join(c.what, " and "), c.edit})
	}
	return out
}

// start starts the icing at another minute, the nearest first.
func (m *mender) start() ladder {
	at := math.Round(m.plan.Icing.StartAtMin)
	var out ladder
	for off := 1.0; off <= longestWait; off++ {
		for _, to := range [2]float64{at - off, at + off} {
			out = append(out, Mend{"start the icing at " + m.plan.Show.Minutes(to), pour.SetNumber("icing.start_at_min", to)})
		}
	}
	return out
}

// startFree starts the icing when the hands are free for it.
func (m *mender) startFree() ladder {
	var out ladder
	for at := math.Ceil(m.before.Icing.LyeInAtMin); at < m.before.Icing.LyeInAtMin+10; at++ {
		out = append(out, Mend{"start the icing at " + m.plan.Show.Minutes(at), pour.SetNumber("icing.start_at_min", at)})
	}
	return out
}
