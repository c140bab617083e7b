package paper

import (
	"pourbench/pour"
)

// lye is weighing water and alkali, dissolving one in the other and letting it cool. No sheet parts it.
func (d *desk) lye(b batch) {
	d.keep(func() {
		d.begin(b.Name, stepLye)
		if d.stopped {
			d.withheld()
			return
		}
		boils := d.boils(b)
		d.alerts(stepLye, ofBatch(b.Name))
		d.tick(row{text: "Goggles, gloves and sleeves on, air moving, nobody else near", write: true})
		d.lyeParts(b)
		switch {
		case b.Lye.OnIce:
			d.tick(row{text: "Warmest it may grow while the alkali goes in (common practice, no source)", figure: d.show.Temp(pour.KeepUnderC), write: true})
		case !boils:
			d.tick(row{text: "Hottest it could get, from the room's " + d.show.Temp(d.sheet.Plan.Room.TemperatureC), figure: d.show.Figure(b.Heat.LyePeakC, d.show.Temp), write: true})
		}
		d.tick(row{text: "Cooled, lid on, out of reach, to", figure: d.show.Temp(b.plan.LyeC), write: true})
		d.superfat(b)
	})
}

// boils says whether a warning tells already how hot this lye can get.
func (d *desk) boils(b batch) bool {
	for _, w := range d.sheet.Warnings {
		if w.Code == "lye-near-boil" && batchOf(w) == b.Name {
			return true
		}
	}
	return false
}

// lyeParts is what goes into the lye, in the order it does.
func (d *desk) lyeParts(b batch) {
	d.tick(row{text: "Cold water, into the lye jug", figure: d.show.Figure(b.Lye.WaterToAddG, d.show.Weight), write: true})
	before := "Into this water before any alkali, stirred until dissolved or smooth: "
	if b.Lye.OnIce {
		before = "Into the lye's water or what stands for it, before that is frozen and before any alkali, stirred until dissolved or smooth: "
	}
	d.lyeExtras(b, pour.JoinsBefore, before)
	d.lyeExtras(b, pour.JoinsOnIce, "In place of water, frozen in small pieces or ice-cold, the jug in ice water: ")
	for _, a := range d.alkalis(b) {
		d.tick(row{text: a.text, figure: a.figure, write: true})
	}
	if b.Lye.Stock.WeighedG > 0 {
		d.info("One weighing. In it, for information: pure NaOH " + d.show.Dose(b.Lye.NaOH.PureG) + ", the rest water.")
	}
	d.tick(row{text: meeting(b), write: true})
	d.lyeExtras(b, pour.JoinsHot, "Into the lye while it is hot: ")
	d.lyeExtras(b, pour.JoinsCooled, "Into the cooled lye, little by little: ")
}

// alkalis are the weighings of alkali that a batch needs.
func (d *desk) alkalis(b batch) []row {
	var out []row
	for _, a := range []struct {
		name             string
		toWeighG, exactG float64
	}{
		{"Sodium hydroxide (NaOH)", b.Lye.NaOH.ToWeighG, b.Lye.NaOH.WeighedG},
		{"Potassium hydroxide (KOH)", b.Lye.KOH.ToWeighG, b.Lye.KOH.WeighedG},
		{"Stock lye, " + d.show.Percent(b.Lye.Stock.StrengthPercent, 1) + " NaOH", b.Lye.Stock.ToWeighG, b.Lye.Stock.WeighedG},
	} {
		if a.exactG > 0 {
			out = append(out, row{text: a.name, figure: d.show.Dose(a.toWeighG), write: true})
		}
	}
	return out
}

// lyeExtras is what joins the lye at a moment, weighed here: one item, with a row for each extra.
func (d *desk) lyeExtras(b batch, at pour.Joining, where string) {
	write := d.tick
	for _, x := range b.ExtrasJoining(at) {
		write(row{text: where + x.Name, figure: d.show.Dose(x.G), write: true})
		write, where = d.more, ""
		shelf, _ := d.shelf.Extra(x.ID)
		if shelf.Dust {
			d.info("Fine powder: lid on, no draught, wetted at once with some of the lye's water.")
		}
		if shelf.Caution != "" && shelf.In == pour.InLye { // the shelf speaks of where it usually goes
			d.info(sentence(shelf.Caution))
		}
	}
}

// meeting is how alkali and water meet.
func meeting(b batch) string {
	switch {
	case b.Lye.OnIce:
		what := "Alkali"
		if b.Lye.Stock.WeighedG > 0 {
			what = "Stock lye"
		}
		return what + " onto the ice a spoonful at a time, stirring, each one gone before the next; wait when it warms. Fat in it can turn to flecks of soap: strain it"
	case b.Lye.Stock.WeighedG > 0:
		return "Stock lye into the water, slowly"
	}
	return "Alkali into the water a little at a time, stirring until clear"
}
