package pour

import (
	"math"
	"slices"

	"pourbench/pour/strict"
)

// mould checks that bars come out of the mould.
func (c *checker) mould(m Mould) {
	if m.Shape == ShapeSlab && m.BarWidthMM > m.WidthMM {
		c.add("mould.bar_width_mm", strict.Short(m.BarWidthMM), "is wider than the mould", "write at most mould.width_mm")
	}
	switch m.Shape {
	case ShapeTube:
		c.tube(m)
	case ShapeCavity:
		c.cavities(m)
	default:
		if m.BarMM > m.LengthMM {
			c.add("mould.bar_mm", strict.Short(m.BarMM), "is thicker than the mould is long", "write at most mould.length_mm")
		}
	}
}

// tube checks that a tube is round, that a round comes out of it, and that nothing is planned on its top, which is the end of one round.
func (c *checker) tube(m Mould) {
	if m.WidthMM != m.LengthMM {
		c.add("mould.width_mm", strict.Short(m.WidthMM), "is another diameter than mould.length_mm = "+strict.Short(m.LengthMM)+", and a tube is round", "write its inside diameter as both")
	}
	if m.BarMM > m.FillMM {
		c.add("mould.bar_mm", strict.Short(m.BarMM), "is thicker than the tube is filled high, and rounds are cut along its height", "write at most mould.fill_mm")
	}
	const top, mend = "a tube's top is the end of one round alone", "take it out of the plan, or take a loaf, a slab or cavities"
	if c.plan.Icing != nil {
		c.add("mould.shape", strict.Quote(m.Shape), top+": an icing cannot be piped on every bar", mend)
	}
	stands := func(e Embed) bool { return e.Outline != OutlineRod } // a rod runs through every round
	if len(c.plan.Top.Toppings) > 0 || slices.ContainsFunc(c.plan.Top.Embeds, stands) {
		c.add("mould.shape", strict.Quote(m.Shape), top+": toppings and embeds other than rods cannot stand on every bar", mend)
	}
}

// cavities checks that there are some, and that what is said to go into one has room in it.
func (c *checker) cavities(m Mould) {
	if m.Cavities < 1 {
		c.add("mould.cavities", strict.Short(float64(m.Cavities)), "no single mould is filled", "write how many cavities there are, 1 or more")
	}
	if box := m.LengthMM * m.WidthMM * m.FillMM / 1000; m.CavityML > box*(1+noise) {
		c.add("mould.cavity_ml", strict.Short(m.CavityML), "is more than a box of its measures holds filled to mould.fill_mm, "+strict.Short(math.Round(box*10)/10)+" mL",
			"measure length, width and height of one cavity where they are greatest, or fill one with water and weigh it: 1 g is 1 mL")
	}
}
