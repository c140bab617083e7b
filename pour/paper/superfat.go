package paper

import (
	"fmt"
	"strings"

	"pourbench/pour"
)

// superfat says which superfat is which: what was planned for all oils, what the scales make of it, what the batter has before its colours
// join, and what each jug really has.
func (d *desk) superfat(b bench) {
	percent := func(v float64) string { return d.show.Percent(v, 1) }
	whole := "of all oils"
	if b.plan.Carrier == pour.CarrierBatch {
		whole = "of all oils, those of the carriers too"
	}
	text := "Lye concentration " + percent(b.LyeConcentrationPercent) + ". Superfat planned " + percent(b.SuperfatPercent) + " " + whole +
		", over their published ranges " + percent(b.SuperfatLowPercent) + " to " + percent(b.SuperfatHighPercent) +
		". As weighed on these scales " + percent(b.SuperfatAsWeighedPercent)
	if b.ExtraFatKOHG > 0 {
		text += ", " + percent(b.SuperfatExactPercent-b.SuperfatPercent) + " of it the fat of the extras, for which no alkali is reckoned"
	}
	d.info(text + ".")
	if b.plan.Carrier == pour.CarrierBatch {
		d.info(fmt.Sprintf("The oils of section %d with this lye, before the colours bring the carriers' oil back: superfat %s.",
			sectionOf(b.Name, stepOils), percent(b.SuperfatMixedPercent)))
	}
	parts := make([]string, len(b.Jugs))
	for i, j := range b.Jugs {
		parts[i] = j.Name + " " + percent(j.SuperfatPercent) + " (" + percent(j.SuperfatLowPercent) + ")"
	}
	d.info("Superfat of each jug with what it holds, in brackets with every oil at its low end and no alkali taken up by scents: " + strings.Join(parts, ", ") + ".")
}
