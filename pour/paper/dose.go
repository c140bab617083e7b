package paper

import "pourbench/pour"

func (d *desk) colours(b batch) {
	if !anyJug(b, coloured) {
		d.nothing(b, stepColours)
		return
	}
	d.begin(b, stepColours, coloured)
	for _, j := range b.Jugs {
		for _, dose := range j.Colourants {
			d.dose(j, dose)
		}
		if coloured(j) {
			d.jugAlerts(b, stepColours, j.Name)
		}
	}
}

// dose is the weighing of one colourant and of what wets it.
func (d *desk) dose(j pour.JugSheet, dose pour.DoseLine) {
	d.tick(row{text: j.Name + ": " + dose.Name, figure: d.show.Dose(dose.PigmentG), write: true})
	if dose.TeaspoonsML5.Known {
		d.info("With a 5 mL spoon " + d.show.Spoons(dose.TeaspoonsML5.V) + ", an estimate: weighing wins.")
	}
	if dose.CarrierG > 0 {
		d.tick(row{text: j.Name + ": wetted with " + dose.CarrierName, figure: d.show.Dose(dose.CarrierG), write: true})
	} else {
		d.skip()
	}
}

func (d *desk) scents(b batch) {
	if len(b.Scents) == 0 {
		d.nothing(b, stepScents)
		return
	}
	d.begin(b, stepScents, scented)
	for _, j := range b.Jugs {
		for _, x := range j.Scents {
			d.tick(row{text: j.Name + ": " + x.Name, figure: d.show.Dose(x.G), write: true})
		}
		if scented(j) {
			d.info("Load inside " + j.Name + ": " + d.show.Percent(j.ScentLoadPercent, 1) + " of its oils.")
			d.jugAlerts(b, stepScents, j.Name)
		}
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
