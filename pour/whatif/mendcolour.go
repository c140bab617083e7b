package whatif

import (
	"cmp"
	"fmt"
	"slices"

	"pourbench/chem/colour"
	"pourbench/pour"
)

// colourWays mends colourants, their doses and who lies beside whom.
func colourWays(m *mender, w pour.Warning) []ladder {
	n, name, _ := w.Jug()
	switch w.Code {
	case "glycerin-rivers":
		return []ladder{m.concentration(n, lyeStep, "mix the lye with less water, at %s"), m.bed(pour.BedBare, "cover the loaf lightly instead of keeping it warm"), m.cooler(n)}
	case "colour-shifts", "colour-untested":
		return m.instead(n, name, func(c pour.Colourant) bool { return c.Alkali == pour.AlkaliStable })
	case "colour-dies": // the shelf knows the colour it turns to, not the one the maker hoped for: nothing is near that
		return m.removed(n, name, func(c pour.Colourant) bool { return c.Alkali == pour.AlkaliDies })
	case "colour-caution":
		return m.instead(n, name, func(c pour.Colourant) bool { return c.Caution == "" && c.Alkali == pour.AlkaliStable })
	case "colour-wrong-carrier":
		return m.wetted(w)
	case "dose-unusual":
		return append(m.usualDoses(n, name), m.usualExtra(w)...)
	case "muddy-neighbours":
		return m.otherOrders()
	}
	return nil
}

func (m *mender) bed(keep, says string) ladder {
	return ladder{{says, pour.SetWord("bed.keep", keep)}}
}

// cooler works a batch cooler step by step.
func (m *mender) cooler(n pour.BatchName) ladder { return m.warmer(n, -2, "cooler") }

// warmer works a batch warmer, or cooler, step by step.
func (m *mender) warmer(n pour.BatchName, step float64, word string) ladder {
	b := m.plan.Batch(n)
	var out ladder
	for k := 1.0; k <= 8 && !b.BatterMeasured; k++ {
		by := k * step
		out = append(out, Mend{
			of(n, fmt.Sprintf("work %s %s", m.plan.Show.TempDiff(k*max(step, -step)), word)),
			pour.Both(pour.SetNumber(string(n)+".oils_c", b.OilsC+by), pour.SetNumber(string(n)+".lye_c", b.LyeC+by)),
		})
	}
	return out
}

// instead exchanges the colourants of a jug that are not so for the one of the shelf that is and comes nearest in colour.
func (m *mender) instead(n pour.BatchName, jug string, is func(pour.Colourant) bool) []ladder {
	i, j := m.jug(n, jug)
	var out []ladder
	for k, d := range j.Colourants {
		c, _ := m.shelf.Colourant(d.Colourant)
		if is(c) {
			continue
		}
		var swap ladder
		for _, other := range m.nearest(c, is) {
			swap = append(swap, Mend{of(n, fmt.Sprintf("colour %s with %s instead of %s", jug, other.Name, c.Name)), pour.SetColourant(n, i, k, other)})
		}
		out = append(out, swap)
	}
	return append(out, m.removed(n, jug, func(c pour.Colourant) bool { return !is(c) })...)
}

// removed takes each colourant of a jug that is so out of it.
func (m *mender) removed(n pour.BatchName, jug string, is func(pour.Colourant) bool) []ladder {
	i, j := m.jug(n, jug)
	var out []ladder
	for k, d := range j.Colourants {
		if c, _ := m.shelf.Colourant(d.Colourant); is(c) {
			out = append(out, ladder{{of(n, fmt.Sprintf("take %s out of %s", c.Name, jug)), pour.RemoveColourant(n, i, k)}})
		}
	}
	return out
}

// nearest lists the colourants of the shelf that are so, the nearest in colour first.
func (m *mender) nearest(to pour.Colourant, is func(pour.Colourant) bool) []pour.Colourant {
	want, err := colour.ParseHex(to.Colour)
	if err != nil {
		return nil
	}
	far := map[string]float64{}
	var out []pour.Colourant
	for _, c := range m.shelf.Colourants {
		if own, err := colour.ParseHex(c.Colour); err == nil && is(c) && c.ID != to.ID {
			far[c.ID], out = own.Difference(want), append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b pour.Colourant) int { return cmp.Compare(far[a.ID], far[b.ID]) })
	return out
}

// wetted wets a colourant with what wets it, or stirs an extra where it wets.
func (m *mender) wetted(w pour.Warning) []ladder {
	var out []ladder
	if n, jug, ok := w.Jug(); ok {
		i, j := m.jug(n, jug)
		for k, d := range j.Colourants {
			c, _ := m.shelf.Colourant(d.Colourant)
			out = append(out, ladder{{of(n, fmt.Sprintf("wet %s with %s", c.Name, c.Disperse)), pour.SetCarrier(n, i, k, "")}})
		}
	}
	if n, name, ok := w.Extra(); ok {
		for i, x := range m.before.Batch(n).Extras {
			if x.Name == name {
				out = append(
					out, ladder{{of(n, "stir "+name+" into the oils"), pour.SetExtraIn(n, i, pour.InOils)}},
					ladder{{of(n, "stir "+name+" into the lye water"), pour.SetExtraIn(n, i, pour.InLye)}},
				)
			}
		}
	}
	return out
}

// usualDoses brings every colourant of a jug to the nearer end of its usual doses.
func (m *mender) usualDoses(n pour.BatchName, jug string) []ladder {
	i, j := m.jug(n, jug)
	var out []ladder
	for k, d := range j.Colourants {
		c, _ := m.shelf.Colourant(d.Colourant)
		if to := min(max(d.DosePercent, c.DoseLowPercent), c.DoseHighPercent); to != d.DosePercent {
			out = append(out, ladder{{of(n, fmt.Sprintf("take %s of %s", m.percent(to), c.Name)), pour.SetDose(n, i, k, to)}})
		}
	}
	return out
}

// usualExtra brings an extra to the nearer end of its usual doses.
func (m *mender) usualExtra(w pour.Warning) []ladder {
	n, name, ok := w.Extra()
	if !ok {
		return nil
	}
	var out []ladder
	for i, x := range m.before.Batch(n).Extras {
		of, _ := m.shelf.Extra(x.ID)
		if to := min(max(x.Percent, of.DoseLowPercent), of.DoseHighPercent); x.Name == name && to != x.Percent {
			out = append(out, append(ladder{m.extraAt(n, i, x, to)}, m.lessExtra(n, i, x)...))
		}
	}
	return out
}

// otherOrders pours in the orders that were found, or with some of the pot between every two others.
func (m *mender) otherOrders() []ladder {
	var out []ladder
	for _, o := range m.before.Mingling.Orders {
		var names []string
		for _, j := range o.Jugs {
			names = append(names, m.before.Base.Jugs[j].Name)
		}
		if o.Kind != pour.OrderOwn {
			out = append(out, ladder{{"pour in the order " + o.Kind, pour.SetPourOrder(m.before, names)}})
		}
	}
	return append(out, ladder{{"pour some of the pot between every two others", pour.PotBetween(true)}})
}
