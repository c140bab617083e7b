package whatif

import (
	"fmt"
	"math"

	"pourbench/pour"
)

// icedWays mends an embed that lies where icing is put on: one of them is moved or made smaller.
func (m *mender) icedWays(i int) []ladder {
	if m.plan.Piping.Spoons() {
		return []ladder{m.further(i), m.lower()}
	}
	return []ladder{m.aside(i), m.otherwisePlaced(), m.smaller(), m.smallerEmbed(i)}
}

// aside sets a kind further off the middle across its bar, by whole millimetres and to either side, the nearest first.
func (m *mender) aside(i int) ladder {
	e, show := m.plan.Top.Embeds[i], m.plan.Show
	most := m.plan.Mould.WidthMM / 2
	var out ladder
	for mm := 1.0; mm <= most; mm++ {
		for _, to := range [...]float64{math.Floor(e.AcrossMM) + mm, math.Ceil(e.AcrossMM) - mm} {
			says := fmt.Sprintf("set %s in the middle across the bar", e.Name)
			switch {
			case to > 0:
				says = fmt.Sprintf("set %s %s off the middle, to the right seen from end A", e.Name, show.Len(to))
			case to < 0:
				says = fmt.Sprintf("set %s %s off the middle, to the left seen from end A", e.Name, show.Len(-to))
			}
			if math.Abs(to) <= most {
				out = append(out, Mend{says, pour.SetNumber(embedAt(i, "across_mm"), to)})
			}
		}
	}
	return out
}

// mostAbreast is the most units or rows beside each other that are offered where there were fewer.
const mostAbreast = 6

// otherwisePlaced pipes fewer units or rows beside each other, the nearest number first, then more.
func (m *mender) otherwisePlaced() ladder {
	p := &m.plan.Piping
	key, n, says := "piping.per_bar", p.PerBar, "pipe %d on each bar"
	if p.Along == pour.PipeLoaf {
		key, n, says = "piping.rows", p.Rows, "pipe %d rows"
	}
	out := m.fewer()
	for k := max(n, 1) + 1; k <= mostAbreast; k++ {
		out = append(out, Mend{fmt.Sprintf(says, k), pour.SetNumber(key, float64(k))})
	}
	return out
}
