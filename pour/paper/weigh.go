package paper

import (
	"strings"

	"pourbench/pour"
)

// weigh is the sections in which a batch's parts are weighed.
func (d *desk) weigh(b batch) {
	d.oils(b)
	d.lye(b)
	d.colours(b)
	d.scents(b)
}

// oils is weighing the oils, melting them, and weighing what is stirred into them or, later, into the batter.
func (d *desk) oils(b batch) {
	d.begin(b.Name, stepOils)
	d.alerts(stepOils, ofBatch(b.Name))
	if b.Name == pour.Base {
		d.tick(row{text: "Melt hard oils and butters whole, in their tubs, and stir: what settles in a tub is not what its label says (common practice)", write: true})
	}
	if b.ReadyBlend == "" {
		for _, o := range b.Oils {
			d.tick(row{text: o.Name, figure: d.show.Weight(o.WeighG), write: true})
		}
		d.tick(row{text: "All oils together", figure: d.show.Weight(b.Size.OilsWeighG), write: true})
	} else {
		d.tick(row{text: "Ready-mixed oils: " + b.ReadyBlend, figure: d.show.Weight(b.Size.OilsWeighG), write: true})
		parts := make([]string, len(b.Oils))
		for i, o := range b.Oils {
			parts[i] = o.Name + " " + d.show.Weight(o.WeighG)
		}
		d.info("One weighing. In it, for information: " + strings.Join(parts, ", ") + ".")
	}
	d.tick(row{text: "Warm gently until clear, then bring to", figure: d.show.Temp(b.plan.OilsC), write: true})
	for _, x := range b.ExtrasJoining(pour.JoinsOils) {
		d.oilExtra(x)
	}
	for _, x := range b.ExtrasJoining(pour.JoinsEmulsion) {
		d.oilExtra(x)
	}
}

// joins is what an extra that does not go into the lye is weighed for.
func joins(x pour.ExtraLine) string {
	if x.Joins == pour.JoinsEmulsion {
		return ", kept cool for the batter at emulsion"
	}
	return ", for the oils"
}

// oilExtra is weighing what is stirred into the oils once they are clear, or into the batter.
func (d *desk) oilExtra(x pour.ExtraLine) {
	shelf, _ := d.shelf.Extra(x.ID)
	d.tick(row{text: x.Name + joins(x), figure: d.show.Dose(x.G), write: true})
	if shelf.Dust {
		d.more(row{text: "Fine powder: lid on, no draught, stirred smooth at once with some of the oils, taken from what is weighed", write: true})
	}
	if shelf.Caution != "" && shelf.In == pour.InOils {
		d.info(sentence(shelf.Caution))
	}
}
