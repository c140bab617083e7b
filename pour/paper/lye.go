package paper

import (
	"fmt"

	"pourbench/pour"
)

// lye is weighing water and alkali, dissolving one in the other and letting it cool.
func (d *desk) lye(b bench) {
	if d.stopped {
		d.withheld(sectionOf(b.Name, stepLye), titleOf(b.Name, stepLye))
		return
	}
	d.begin(b, stepLye, noRow)
	d.tick(row{text: "Goggles, gloves and sleeves on, air moving, nobody else near", write: true})
	d.tick(row{text: "Cold water, into the lye jug", figure: d.show.Figure(b.WaterToAddG, d.show.Weight), write: true})
	d.alkali("Sodium hydroxide (NaOH)", b.NaOHToWeighG, b.NaOHWeighedG)
	d.alkali("Potassium hydroxide (KOH)", b.KOHToWeighG, b.KOHWeighedG)
	d.alkali("Stock lye, "+d.show.Percent(b.StockLyePercent, 1)+" NaOH", b.StockToWeighG, b.StockLyeG)
	if b.StockLyeG > 0 {
		d.info("One weighing. In it, for information: pure NaOH " + d.show.Dose(b.NaOHPureG) + ", the rest water.")
		d.tick(row{text: "Stock lye into the water, slowly; never water onto lye", write: true})
	} else {
		d.tick(row{text: "Alkali into the water a little at a time, stirring until clear; never water onto alkali", write: true})
	}
	d.extrasInto(b, pour.InLye, "Extras into the lye, each at the moment its caution says")
	d.tick(row{text: "Hottest it could get, from the room's " + d.show.Temp(d.sheet.Plan.Room.TemperatureC), figure: d.show.Figure(b.LyePeakC, d.show.Temp), write: true})
	d.cooling(b)
	d.superfat(b)
}

// alkali is one weighing of alkali, its number kept where the plan has none.
func (d *desk) alkali(name string, toWeighG, exactG float64) {
	if exactG <= 0 {
		d.skip()
		return
	}
	d.tick(row{text: name, figure: d.show.Dose(toWeighG), write: true})
}

// extrasInto points to the extras that join here, or keeps the number where none do.
func (d *desk) extrasInto(b bench, in, text string) {
	for _, x := range b.Extras {
		if x.In == in {
			d.tick(row{text: fmt.Sprintf("%s (section %d)", text, sectionOf(b.Name, stepExtras)), write: true})
			return
		}
	}
	d.skip()
}

// cooling is when the lye has to be made and how warm it is used.
func (d *desk) cooling(b bench) {
	made := row{text: "Made at, so that it has cooled in time", write: true}
	for _, t := range d.sheet.Run {
		if t.Kind == pour.TaskCoolLye && t.Batch == b.Name {
			made.figure = d.moment(t.StartMin)
		}
	}
	d.tick(made)
	d.tick(row{text: "Cooled, lid on, out of reach, to", figure: d.show.Temp(b.plan.LyeC), write: true})
}
