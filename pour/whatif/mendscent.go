package whatif

import (
	"fmt"
	"math"
	"slices"

	"pourbench/pour"
)

// scentWays mends where scents go and when.
func scentWays(m *mender, w pour.Warning) []ladder {
	switch n, name, _ := w.Scent(); w.Code {
	case "scent-seizes", "scent-rices", "scent-fast-icing":
		return each(m.scents(n, name), func(i int) []ladder { return []ladder{m.without(n, i)} })
	case "scent-nowhere":
		return each(m.scents(n, name), func(i int) []ladder { return m.elsewhere(n, i) })
	case "scent-before-split":
		return each(m.scents(n, name), func(i int) []ladder {
			at := m.plan.Batch(n).SplitAtMin
			return []ladder{{{of(n, "stir "+name+" in at the split, "+m.plan.Show.Minutes(at)), pour.SetScentAt(n, i, at)}}}
		})
	}
	switch n, jug, _ := w.Jug(); w.Code {
	case "scents-add-up":
		return each(m.scentsIn(n, jug), func(i int) []ladder { return m.elsewhere(n, i) })
	case "vanillin-white":
		return each(m.scentsIn(n, jug), func(i int) []ladder {
			return slices.Concat(m.elsewhere(n, i), []ladder{m.lowerLoad(n, i), m.without(n, i)})
		})
	case "vanillin-browns":
		return each(m.scentsIn(n, jug), func(i int) []ladder { return []ladder{m.lowerLoad(n, i), m.without(n, i)} })
	case "vanillin-near-white":
		return m.browning()
	}
	return nil
}

// browning lowers the load of every scent that browns, or leaves it out: where none does, a white jug keeps clean.
func (m *mender) browning() []ladder {
	var out []ladder
	for _, b := range m.before.Batches() {
		for i, x := range b.Scents {
			if x.VanillinPercent > 0 {
				out = append(out, m.lowerLoad(b.Name, i), m.without(b.Name, i))
			}
		}
	}
	return out
}

// loadWays mends how much there is of a scent.
func loadWays(m *mender, w pour.Warning) []ladder {
	switch n, name, _ := w.Scent(); w.Code {
	case "scent-over-limit":
		return each(m.scents(n, name), func(i int) []ladder { return []ladder{m.lowerLoad(n, i)} })
	case "scents-limit-sum":
		return []ladder{m.lowerAll()}
	}
	if n, jug, _ := w.Jug(); w.Code == "scent-high-in-jug" {
		return each(m.scentsIn(n, jug), func(i int) []ladder { return []ladder{m.spread(n, i), m.lowerLoad(n, i)} })
	}
	return nil
}

// each puts together the ladders of every place of a list.
func each(places []int, ways func(i int) []ladder) []ladder {
	var out []ladder
	for _, i := range places {
		out = append(out, ways(i)...)
	}
	return out
}

// scents are the places in a batch at which a scent of that name stands.
func (m *mender) scents(n pour.BatchName, name string) []int {
	var out []int
	if b := m.before.Batch(n); b != nil {
		for i, x := range b.Scents {
			if x.Name == name {
				out = append(out, i)
			}
		}
	}
	return out
}

// scentsIn are the places of the scents that go into a jug.
func (m *mender) scentsIn(n pour.BatchName, jug string) []int {
	var out []int
	for i, part := range m.plan.Batch(n).Scents {
		if part.GoesInto(jug) {
			out = append(out, i)
		}
	}
	return out
}

// scent names the scent at a place.
func (m *mender) scent(n pour.BatchName, i int) string { return m.before.Batch(n).Scents[i].Name }

func (m *mender) without(n pour.BatchName, i int) ladder {
	return ladder{{of(n, "leave "+m.scent(n, i)+" out"), pour.RemoveScent(n, i)}}
}

// elsewhere sends a scent into each single jug that has a share.
func (m *mender) elsewhere(n pour.BatchName, i int) []ladder {
	var out []ladder
	for _, j := range m.plan.Batch(n).Jugs {
		if j.SharePercent > 0 {
			out = append(out, ladder{{of(n, fmt.Sprintf("put %s into %s alone", m.scent(n, i), j.Name)), pour.SetScentInto(n, i, j.Name)}})
		}
	}
	return out
}

// spread puts a scent into every jug.
func (m *mender) spread(n pour.BatchName, i int) ladder {
	edit := func(p pour.Plan) (pour.Plan, error) { p.Batch(n).Scents[i].Into = nil; return p, nil }
	return ladder{{of(n, "spread "+m.scent(n, i)+" over all jugs"), edit}}
}

func (m *mender) lowerLoad(n pour.BatchName, i int) ladder {
	var out ladder
	for _, v := range downFrom(m.plan.Batch(n).Scents[i].PercentOfOils) {
		out = append(out, Mend{of(n, fmt.Sprintf("lower %s to %s of the oils", m.scent(n, i), m.percent(v))), pour.SetScentLoad(n, i, v)})
	}
	return out
}

// lowerAll lowers every scent alike.
func (m *mender) lowerAll() ladder {
	var out ladder
	for k := partsOfAmount - 1; k > 0; k-- {
		part := float64(k) / partsOfAmount
		out = append(out, Mend{fmt.Sprintf("lower every scent to %.0f %% of its load", part*100), func(p pour.Plan) (pour.Plan, error) {
			for _, n := range [2]pour.BatchName{pour.Base, pour.Icing} {
				b := p.Batch(n)
				for i := 0; b != nil && i < len(b.Scents); i++ {
					b.Scents[i].PercentOfOils = trimmed(math.Floor(b.Scents[i].PercentOfOils*part*1000) / 1000)
				}
			}
			return p, nil
		}})
	}
	return out
}
