package paper

import "pourbench/pour"

func (d *desk) colours(b batch) {
	if !anyJug(b, coloured) {
		return
	}
	d.begin(b.Name, stepColours)
	d.alerts(stepColours, besideJugs(b, coloured))
	for _, j := range b.Jugs {
		for _, dose := range j.Colourants {
			d.dose(j, dose)
		}
		d.alerts(stepColours, ofJug(b, j.Name))
	}
}

// dose is the weighing of one colourant and of what wets it.
func (d *desk) dose(j pour.JugSheet, dose pour.DoseLine) {
	d.tick(row{text: j.Name + ": " + dose.Name, figure: d.show.Dose(dose.PigmentG), write: true})
	if dose.CarrierG > 0 {
		d.more(row{text: "wetted with " + dose.CarrierName, figure: d.show.Dose(dose.CarrierG), write: true})
	}
	if dose.TeaspoonsML5.Known {
		d.info("With a 5 mL spoon " + d.show.Spoons(dose.TeaspoonsML5.V) + ", an estimate: weighing wins.")
	}
}

func (d *desk) scents(b batch) {
	if !anyJug(b, scented) {
		return
	}
	d.begin(b.Name, stepScents)
	d.alerts(stepScents, besideJugs(b, scented))
	for _, j := range b.Jugs {
		for _, x := range j.Scents {
			d.tick(row{text: j.Name + ": " + x.Name, figure: d.show.Dose(x.G), write: true})
		}
		if scented(j) {
			d.info("In all " + d.show.Percent(j.ScentLoadPercent, 1) + " of the oils in " + j.Name + ".")
		}
		d.alerts(stepScents, ofJug(b, j.Name))
	}
}

func anyJug(b batch, is func(pour.JugSheet) bool) bool {
	for _, j := range b.Jugs {
		if is(j) {
			return true
		}
	}
	return false
}
