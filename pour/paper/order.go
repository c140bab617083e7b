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
	mud := fmt.Sprintf("mud at worst %.2f, planned %.2f", o.Worst, own.Worst)
	if !worse(o, own) && !worse(own, o) {
		mud = fmt.Sprintf("mud in all %.2f, planned %.2f", o.Total, own.Total)
	}
	text := fmt.Sprintf("Another order, best %s: %s; %s", o.Kind, strings.Join(names, ", "), mud)
	if o.LatePercent.Known && own.LatePercent.Known {
		text += fmt.Sprintf("; chance of a late jug %s, planned %s", d.show.Percent(o.LatePercent.V, 0), d.show.Percent(own.LatePercent.V, 0))
	}
	return text + "."
}

func (d *desk) jugName(i int) string { return d.sheet.Base.Jugs[i].Name }
