package paper

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
)

// order says what another order of the base's jugs would change, where one would be better.
func (d *desk) order() {
	look := d.sheet.Mingling
	if !look.Known || len(d.sheet.Base.Jugs) < 2 {
		return
	}
	own := look.Orders[0]
	for _, o := range look.Orders[1:] {
		if !slices.Equal(own.Jugs, o.Jugs) && (o.Worst < own.Worst || !worse(o, own) && o.Total < lessMud*own.Total || o.LatePercent.V < own.LatePercent.V-1) {
			d.info(d.alternative(own, o))
		}
	}
}

// lessMud is how much mud in all an order may make, of the planned one's, to be worth telling with the same worst pair.
const lessMud = 0.95

// worse says whether an order's worst pair is muddier than another's, as the paper shows it.
func worse(o, than pour.Order) bool { return math.Round(100*o.Worst) > math.Round(100*than.Worst) }

// alternative compares an order with the planned one.
func (d *desk) alternative(own, o pour.Order) string {
	names := make([]string, len(o.Jugs))
	for i, j := range o.Jugs {
		names[i] = d.jugName(j)
	}
	number := func(v float64) string { return d.show.Number(v, 2) }
	mud := "mud at worst " + beside(number(o.Worst), number(own.Worst))
	if !worse(o, own) && !worse(own, o) {
		mud = "mud in all " + beside(number(o.Total), number(own.Total))
	}
	text := fmt.Sprintf("Another order, best %s: %s; %s", o.Kind, strings.Join(names, ", "), mud)
	if o.LatePercent.Known && own.LatePercent.Known {
		text += "; chance of a late jug " + beside(d.show.Percent(o.LatePercent.V, 0), d.show.Percent(own.LatePercent.V, 0))
	}
	return text + "."
}

// beside puts a figure beside the planned one; what is drawn alike is the same.
func beside(is, planned string) string {
	if is == planned {
		return is + " as planned"
	}
	return is + ", planned " + planned
}

func (d *desk) jugName(i int) string { return d.sheet.Base.Jugs[i].Name }
