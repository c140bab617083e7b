package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// weigh is the five sections in which a batch's parts are weighed.
func (d *desk) weigh(b batch) {
	d.oils(b)
	d.lye(b)
	d.extras(b)
	d.colours(b)
	d.scents(b)
}

// begin opens the section of a step and says its warnings.
func (d *desk) begin(b batch, s step, hasRow func(pour.JugSheet) bool) {
	d.heading(sectionOf(b.Name, s), titleOf(b.Name, s), "planned", "actual")
	d.sectionAlerts(b, s, hasRow)
}

// nothing keeps the number of a step this batch does not need.
func (d *desk) nothing(b batch, s step) {
	d.absent(fmt.Sprint(sectionOf(b.Name, s)), titleOf(b.Name, s), "none in this plan.")
	d.sectionAlerts(b, s, noRow)
}

func (d *desk) oils(b batch) {
	d.begin(b, stepOils, noRow)
	if b.ReadyBlend == "" {
		for _, o := range b.Oils {
			d.tick(row{text: o.Name, figure: d.show.Weight(o.WeighG), write: true})
		}
		d.tick(row{text: "All oils together", figure: d.show.Weight(b.Size.OilsWeighG), write: true})
		return
	}
	d.tick(row{text: "Ready-mixed oils: " + b.ReadyBlend, figure: d.show.Weight(b.Size.OilsWeighG), write: true})
	parts := make([]string, len(b.Oils))
	for i, o := range b.Oils {
		parts[i] = o.Name + " " + d.show.Weight(o.WeighG)
	}
	d.info("One weighing. In it, for information: " + strings.Join(parts, ", ") + ".")
}

func (d *desk) extras(b batch) {
	if len(b.Extras) == 0 {
		d.nothing(b, stepExtras)
		return
	}
	d.begin(b, stepExtras, noRow)
	for _, x := range b.Extras {
		shelf, _ := d.shelf.Extra(x.ID)
		switch {
		case x.InTheLye() && d.stopped:
			d.tick(row{text: x.Name + ", into the lye: DO NOT MIX, withheld"})
			continue
		case x.InTheLye():
			d.info(sentence(fmt.Sprintf("%s goes into the lye and is weighed there (section %d)", x.Name, sectionOf(b.Name, stepLye))))
			continue
		}
		d.tick(row{text: x.Name + ", into the oils", figure: d.show.Dose(x.G), write: true})
		if shelf.Dust {
			d.more(row{text: "Fine powder: lid on, no draught, stirred smooth at once with some of the oils, taken from what is weighed", write: true})
		}
		if shelf.Caution != "" && shelf.In == pour.InOils {
			d.info(sentence(shelf.Caution))
		}
	}
}
