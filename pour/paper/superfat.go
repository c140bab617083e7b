package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// superfat says which superfat is which: what was planned for all oils, what the scales make of it, what the batter has before its colours
// join, and what each jug really has.
func (d *desk) superfat(b batch) {
	percent := func(v float64) string { return d.show.Percent(v, 1) }
	whole := "of all oils"
	if b.plan.Carrier == pour.CarrierBatch {
		whole = "of all oils, those of the carriers too"
	}
	alone, counted := "", ""
	if b.Lye.ExtraFatKOHG > 0 {
		alone, counted = " without the fat of the extras", ", the fat of the extras counted"
	}
	text := "Lye concentration " + percent(b.Lye.ConcentrationPercent) + ". Superfat planned " + percent(b.Superfat.PlannedPercent) + " " + whole +
		", over their published ranges " + percent(b.Superfat.LowPercent) + " to " + percent(b.Superfat.HighPercent) + alone +
		". As weighed on these scales " + percent(b.Superfat.AsWeighedPercent)
	if b.Lye.ExtraFatKOHG > 0 {
		text += ", " + percent(b.Superfat.ExactPercent-b.Superfat.PlannedPercent) + " of it the fat of the extras, for which no alkali is reckoned"
	}
	d.info(text + ".")
	if b.plan.Carrier == pour.CarrierBatch {
		d.info(fmt.Sprintf("The oils of section %d with this lye, before the colours bring the carriers' oil back: superfat %s.",
			d.number(b.Name, stepOils), percent(b.Superfat.MixedPercent)))
	}
	parts := make([]string, len(b.Jugs))
	for i, j := range b.Jugs {
		parts[i] = j.Name + " " + percent(j.Superfat.HeldPercent) + " (" + percent(j.Superfat.LowPercent) + ")"
	}
	d.info("Superfat of each jug with what it holds, in brackets with every oil at its low end and no alkali taken up by scents" + counted + ": " + strings.Join(parts, ", ") + ".")
}
