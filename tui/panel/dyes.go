package panel

import (
	"fmt"
	"slices"
	"strings"

	"pourbench/pour"
	"pourbench/tui/grid"
	"pourbench/tui/screen"
)

// dyeCell is the k-th colourant of a jug, or the place where it goes.
func (f *Facts) dyeCell(n pour.BatchName, i, k int, jug string) grid.Cell {
	return grid.Cell{
		Kind: grid.Choice, List: listColourants, Name: "colourant of " + jug, Text: "none", Style: f.Look.Quiet,
		Hint: "Enter picks a colourant from the shelf",
		Pick: func(id string) pour.Edit {
			c, _ := f.Shelf.Colourant(id)
			return f.recolour(n, i, k, c)
		},
	}
}

// recolour puts a colourant into a place of a jug. A jug that is still called after the one it had, as a new plan calls it, is called after
// the new one; a name of the maker's own stays, and so does one where the new name is another jug's.
func (f *Facts) recolour(n pour.BatchName, i, k int, c pour.Colourant) pour.Edit {
	set := pour.SetColourant(n, i, k, c)
	jugs := f.Plan.Batch(n).Jugs
	if k != 0 || len(jugs[i].Colourants) == 0 {
		return set
	}
	old, ok := f.Shelf.Colourant(jugs[i].Colourants[0].Colourant)
	name := c.JugName()
	if !ok || jugs[i].Name != old.JugName() || slices.ContainsFunc(jugs, func(j pour.Jug) bool { return j.Name == name }) {
		return set
	}
	return func(p pour.Plan) (pour.Plan, error) {
		p, err := set(p)
		if err != nil {
			return p, err
		}
		return pour.RenameJug(n, i, name)(p)
	}
}

// dyeCells fills the cells of one colourant, or the place where the first goes.
func (f *Facts) dyeCells(cells []grid.Cell, n pour.BatchName, i, k int, jug pour.Jug, line pour.JugSheet, path string) {
	pick := f.dyeCell(n, i, k, jug.Name)
	if k >= len(jug.Colourants) || k >= len(line.Colourants) {
		pick.Adds = f.nextOfDye
		cells[jugDye] = pick
		return
	}
	d, of := line.Colourants[k], jug.Colourants[k]
	c, _ := f.Shelf.Colourant(d.ID)
	pick.Text, pick.ID, pick.Style, pick.Hint = d.Name, d.ID, screen.Style{}, dyeHint(c)
	cells[jugDye] = pick
	fields := of.Fields()
	dose := f.part(fields, "dose_percent", "dose of "+d.Name, f.dosed(of.DosePercent),
		func(v float64) pour.Edit { return pour.SetDose(n, i, k, v) })
	dose.Hint = fmt.Sprintf("percent of the jug's batter; usual %s to %s %%", f.percent(c.DoseLowPercent, 2), f.percent(c.DoseHighPercent, 2))
	cells[jugDose] = dose
	own := at(at(string(n)+".jug", i)+"colourant", k)
	cells[jugDose].Figure = own + "dose_percent"
	path = at(path+"colourants", k)
	cells[jugPigment] = f.shown(f.Show.DoseApart(d.PigmentG).Number, path+"pigment_g", "pigment to weigh, "+f.grams()+f.spoons(d))
	cells[jugCarrier] = f.carrierCell(n, i, k, d, choices(fields, "carrier"), path)
	parts := f.part(fields, "carrier_parts", "carrier of "+d.Name, f.percent(of.CarrierParts, 1),
		func(v float64) pour.Edit { return pour.SetCarrierParts(n, i, k, v) })
	parts.Hint = "grams of carrier per gram of pigment; 0: as the shelf says, " + f.percent(c.CarrierParts, 1)
	parts.Figure = own + "carrier_parts"
	cells[jugParts] = parts
}

// carrierCell is what a colourant is wetted with; it goes round the carriers.
func (f *Facts) carrierCell(n pour.BatchName, i, k int, d pour.DoseLine, kinds []string, path string) grid.Cell {
	c := turning("carrier of "+d.Name, "dry", kinds, d.Carrier, func(steps float64) pour.Edit {
		return pour.SetCarrier(n, i, k, turned(kinds, d.Carrier, steps))
	})
	c.Hint = "what the pigment is wetted with; {change} takes oil, water, glycerin or none in turn"
	if d.CarrierG > 0 {
		c.Text, c.Figure = f.Show.DoseApart(d.CarrierG).Number+" "+d.Carrier, path+"carrier_g"
	}
	return c
}

// nextOfDye says what to type once a colourant is in a jug.
func (f *Facts) nextOfDye(id string) string {
	c, _ := f.Shelf.Colourant(id)
	return fmt.Sprintf("%s: type its dose, usual %s to %s %%", c.Name, f.percent(c.DoseLowPercent, 2), f.percent(c.DoseHighPercent, 2))
}

func (f *Facts) spoons(d pour.DoseLine) string {
	if !d.TeaspoonsML5.Known {
		return ""
	}
	return "; " + f.Show.Spoons(d.TeaspoonsML5.V) + ", an estimate: weighing wins"
}

func dyeHint(c pour.Colourant) string {
	hint := c.Class + ", wets in " + c.Disperse + ", in alkali: " + c.Alkali
	if c.Dust {
		hint += ", fine dust: do not breathe it"
	}
	return hint
}

// dosed is a dose as it was typed: to two places, and to the third where it has one.
func (f *Facts) dosed(percent float64) string {
	return strings.TrimSuffix(f.percent(percent, 3), "0")
}
