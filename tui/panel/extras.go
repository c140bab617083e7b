package panel

import (
	"fmt"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/keys"
	"pourbench/tui/layout"
)

// The columns of the extras.
const (
	extraName = iota
	extraPart
	extraG
	extraInto
	extraWater
)

// extras is what goes into the whole batch before the split.
func extras(n pour.BatchName) Panel {
	return Panel{
		ID: layout.ID(ofBatch(n, "extras")), Title: ofBatch(n, "Extras, before the split"), cells: keys.Numbers,
		Grid: gridOf(n, (*Facts).extraGrid),
		add: func(f *Facts, _ On) Do {
			return pick(listExtras, "new extra", func(id string) Do {
				x, _ := f.Shelf.Extra(id)
				return Do{
					Edit: pour.AddExtra(n, id, middleDose(x.DoseLowPercent, x.DoseHighPercent)), Said: x.Name + ": type its percent of the oils; {remove} takes it away",
					Seek: to(To{Item: len(f.Plan.Batch(n).Extras), Sub: -1, Col: extraPart}),
				}
			})
		},
		remove: func(f *Facts, on On) Do {
			return Do{Name: "removal of " + f.Plan.Batch(n).Extras[on.Row.Item].Extra, Edit: pour.RemoveExtra(n, on.Row.Item)}
		},
	}
}

// middleDose is where a new extra starts, percent of the oils.
func middleDose(low, high float64) float64 {
	if low <= 0 && high <= 0 {
		return 1
	}
	return Trim((low + high) / 2)
}

func (f *Facts) extraGrid(n pour.BatchName) grid.Grid {
	g := grid.Grid{Empty: "nothing yet: {add} adds white pigment, sugar, salt, milk or the like", Columns: []grid.Column{
		extraName:  {Head: "extra", W: 22, Grow: 1},
		extraPart:  {Head: "% of oils", W: 9, Right: true},
		extraG:     {Head: f.grams(), W: 9, Right: true},
		extraInto:  {Head: "goes into", W: 9},
		extraWater: {Head: "water %", W: 7, Right: true},
	}}
	for i, line := range f.batch(n).Extras {
		x, _ := f.Shelf.Extra(line.ID)
		path := at(string(n)+".extras", i)
		part := f.part(f.Plan.Batch(n).Extras[i].Fields(), "percent_of_oils", line.Name, f.percent(line.Percent, 2), func(v float64) pour.Edit { return pour.SetExtra(n, i, v) })
		part.Hint = fmt.Sprintf("percent of the oils; usual %s to %s %%", f.percent(x.DoseLowPercent, 2), f.percent(x.DoseHighPercent, 2))
		part.Figure = at(string(n)+".extra", i) + "percent_of_oils"
		water := f.label(f.percent(line.WaterPercent, 0))
		water.Figure = path + "water_percent"
		g.Rows = append(g.Rows, grid.Row{Item: i, Sub: -1, Cells: []grid.Cell{
			extraName: f.shown(line.Name, path+"g", x.Caution), extraPart: part,
			extraG:    f.shown(f.Show.DoseApart(line.G).Number, path+"g", line.Name+" to weigh, "+f.grams()),
			extraInto: f.intoCell(n, i, line), extraWater: water,
		}})
	}
	return g
}

// intoCell is where an extra goes in; it goes round the places.
func (f *Facts) intoCell(n pour.BatchName, i int, line pour.ExtraLine) grid.Cell {
	places := choices(f.Plan.Batch(n).Extras[i].Fields(), "in")
	said := map[string]string{pour.InOils: "the oils", pour.InLye: "the lye", pour.InWater: "lye water"}
	into := said[line.In]
	if line.Joins == pour.JoinsEmulsion {
		into = "emulsion"
	}
	c := turning(line.Name, into, places, line.In, func(steps float64) pour.Edit { return pour.SetExtraIn(n, i, turned(places, line.In, steps)) })
	c.Hint = map[pour.Joining]string{
		pour.JoinsOils: "stirred into the melted oils", pour.JoinsEmulsion: "with the oils, stirred into the batter at emulsion", pour.JoinsBefore: "dissolved in the lye's water before the alkali",
		pour.JoinsOnIce: "the lye's water itself, frozen or chilled before the alkali", pour.JoinsHot: "into the lye while it is hot", pour.JoinsCooled: "into the cooled lye",
	}[line.Joins]
	if line.AllPercent.Known && line.AllPercent.V > 0 {
		c.Hint += "; " + f.percent(line.AllPercent.V, 2) + " % of the oils would be all of the lye's water"
	}
	c.Hint += "; {change}: " + said[turned(places, line.In, 1)]
	return c
}
