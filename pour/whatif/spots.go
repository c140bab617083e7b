package whatif

import (
	"fmt"

	"pourbench/pour"
	"pourbench/pour/label"
)

// spots are all places in which what a range is of goes into the bars, in the plan's order.
func (m *mender) spots(of label.Miss) []spot {
	x := of.Range
	var out []spot
	for _, n := range [2]pour.BatchName{pour.Base, pour.Icing} {
		b := m.plan.Batch(n)
		if b == nil {
			continue
		}
		switch x.Kind {
		case label.RangeOil:
			out = append(out, oilSpots(n, b, x.ID)...)
		case label.RangeScent:
			out = append(out, scentSpots(n, b, x.ID)...)
		case label.RangeExtra, label.RangeColourant, label.RangeWhite:
			out = append(out, m.stirredSpots(n, b, x)...)
		}
	}
	switch x.Kind {
	case label.RangeTopping:
		out = append(out, m.toppingSpots(x.ID)...)
	case label.RangeEmbed:
		for i := range m.plan.Top.Embeds {
			if m.plan.Top.Embeds[i].Name == of.What {
				out = append(out, spot{drop: pour.RemoveEmbed(i)})
			}
		}
	}
	return out
}

// ofOils is how what goes in by the oils is said.
const ofOils = " % of the oils"

func oilSpots(n pour.BatchName, b *pour.Batch, id string) []spot {
	var out []spot
	for i, o := range b.Oils {
		if o.Oil == id {
			set := func(v float64) pour.Edit { return pour.SetOilPercent(n, i, v) }
			out = append(out, spot{n, o.Percent, ofOils, set, pour.RemoveOil(n, i)})
		}
	}
	return out
}

func scentSpots(n pour.BatchName, b *pour.Batch, id string) []spot {
	var out []spot
	for i, s := range b.Scents {
		if s.Scent == id {
			set := func(v float64) pour.Edit { return pour.SetScentLoad(n, i, v) }
			out = append(out, spot{n, s.PercentOfOils, ofOils, set, pour.RemoveScent(n, i)})
		}
	}
	return out
}

// stirredSpots are where an extra, a colourant or all white ones go in: into the whole batch or into a jug.
func (m *mender) stirredSpots(n pour.BatchName, b *pour.Batch, x label.Range) []spot {
	var out []spot
	is := func(id string) bool {
		c, _ := m.shelf.Colourant(id)
		return id == x.ID || x.Kind == label.RangeWhite && c.White
	}
	for i, e := range b.Extras {
		if is(e.Extra) {
			set := func(v float64) pour.Edit { return pour.SetExtra(n, i, v) }
			out = append(out, spot{n, e.PercentOfOils, ofOils, set, pour.RemoveExtra(n, i)})
		}
	}
	if x.Kind == label.RangeExtra {
		return out
	}
	for j, jug := range b.Jugs {
		for k, d := range jug.Colourants {
			if is(d.Colourant) {
				set := func(v float64) pour.Edit { return pour.SetDose(n, j, k, v) }
				out = append(out, spot{n, d.DosePercent, " % of " + jug.Name, set, pour.RemoveColourant(n, j, k)})
			}
		}
	}
	return out
}

// toppingSpots are the toppings that hold a material; less of it is less of the whole topping.
func (m *mender) toppingSpots(id string) []spot {
	var out []spot
	for i, t := range m.plan.Top.Toppings {
		for k, part := range t.Parts {
			if part.Material != id {
				continue
			}
			drop := pour.RemoveToppingPart(i, k)
			if len(t.Parts) == 1 {
				drop = pour.RemoveTopping(i)
			}
			g := m.before.Toppings[i].PerBarG
			set := func(v float64) pour.Edit { return pour.SetNumber(fmt.Sprintf("top.topping[%d].g_per_bar", i), v) }
			out = append(out, spot{"", g.V, " g on each bar", set, drop})
		}
	}
	return out
}
