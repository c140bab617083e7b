package pour_test

import (
	"time"

	"pourbench/pour"
)

// topped puts toppings of one material each on, at a time, or as is usual.
func topped(when string, ids ...string) bend {
	return func(p *pour.Plan, _ *pour.Shelf) {
		p.Top.Toppings = nil
		for _, id := range ids {
			p.Top.Toppings = append(p.Top.Toppings, pour.Topping{When: when, Parts: []pour.ToppingPart{{Material: id, Percent: 100}}})
		}
	}
}

func room(c, rhPercent float64) bend {
	return all(number("room.temperature_c", c), number("room.humidity_percent", rhPercent))
}

func lay(how string) bend { return func(p *pour.Plan, _ *pour.Shelf) { p.Cut.Lay = how } }

func gPerBar(g float64) bend {
	return func(p *pour.Plan, _ *pour.Shelf) { p.Top.Toppings[0].GPerBar = g }
}

func toppingRows() []codeRow {
	return []codeRow{
		{"topping-bleeds", topped(pour.StrewSkin, "nonpareils"), topped(pour.StrewCure, "nonpareils")},
		{"topping-untested", topped(pour.StrewSkin, "mica-dust"), topped(pour.StrewSkin, "mineral-glitter")},
		{"topping-dissolves", topped(pour.StrewWet, "coarse-salt"), topped(pour.StrewSkin, "coarse-salt")},
		{"topping-weeps", all(topped("", "coarse-salt"), room(21, 80)), all(topped("", "coarse-salt"), room(21, 74))},
		{"topping-damp", topped("", "coarse-salt"), all(topped("", "coarse-salt"), room(21, 60))},
		{"topping-browns", topped(pour.StrewSkin, "lavender-buds"), topped(pour.StrewCure, "lavender-buds")},
		{"topping-melts", all(topped(pour.StrewSkin, "melt-and-pour-pieces"), func(p *pour.Plan, _ *pour.Shelf) { p.Bed.Keep = pour.BedInsulate }), topped(pour.StrewCut, "melt-and-pour-pieces")},
		{"topping-flammable", topped("", "alcohol-mist"), topped("", "mica-oil")},
		{"topping-dust", topped("", "mica-dust"), topped("", "mica-oil")},
		{"topping-plastic", topped("", "polyester-glitter"), topped("", "mineral-glitter")},
		{"topping-wire", topped("", "sanding-sugar"), all(topped("", "sanding-sugar"), lay(pour.LaySide))},
		{"topping-order", topped(pour.StrewSkin, "mineral-glitter", "sanding-sugar"), topped(pour.StrewSkin, "sanding-sugar", "mineral-glitter")},
		{"topping-dose", all(topped("", "mica-dust"), gPerBar(0.5)), all(topped("", "mica-dust"), gPerBar(0.06))},
	}
}

// pouredOn states the moment of the pour.
func pouredOn(year int, month time.Month, day int) bend {
	return func(p *pour.Plan, _ *pour.Shelf) { p.PourAt = time.Date(year, month, day, 9, 0, 0, 0, time.UTC) }
}
