package paper

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pourbench/pour"
)

// order says why the base is poured in this order, and what another order would change.
func (d *desk) order() {
	look := d.sheet.Mingling
	if !look.Known || len(d.sheet.Base.Jugs) < 2 {
		return
	}
	if worst, ok := worstPair(look.Pairs); ok {
		text := fmt.Sprintf("Most mud comes from %s beside %s (%s of all boundary, mud %.2f, %s",
			d.jugName(worst.A), d.jugName(worst.B), d.show.Percent(worst.ContactPercent, 0), worst.Score, worst.Verdict)
		if worst.Cause != "" {
			text += ", " + worst.Cause
		}
		d.info(text + ").")
	}
	for _, o := range look.Orders[1:] {
		if own := look.Orders[0]; slices.Equal(own.Jugs, o.Jugs) || o.Worst < own.Worst || !worse(o, own) && o.Total < lessMud*own.Total || o.LatePercent.V < own.LatePercent.V-1 {
			d.info(d.alternative(own, o))
		}
	}
}

// lessMud is how much mud in all an order may make, of the planned one's, to be worth telling with the same worst pair.
const lessMud = 0.95

// worse says whether an order's worst pair is muddier than another's, as the paper shows it.
func worse(o, than pour.Order) bool { return math.Round(100*o.Worst) > math.Round(100*than.Worst) }

// worstPair is the pair that makes most mud: by how much it touches and how muddy it goes.
func worstPair(pairs []pour.Pair) (pour.Pair, bool) {
	if len(pairs) == 0 {
		return pour.Pair{}, false
	}
	worst := pairs[0]
	for _, p := range pairs[1:] {
		if p.Score*p.ContactPercent > worst.Score*worst.ContactPercent {
			worst = p
		}
	}
	return worst, true
}

// alternative compares an order with the planned one.
func (d *desk) alternative(own, o pour.Order) string {
	if slices.Equal(own.Jugs, o.Jugs) {
		return "The order planned is the best " + o.Kind + "."
	}
	names := make([]string, len(o.Jugs))
	for i, j := range o.Jugs {
		names[i] = d.jugName(j)
	}
	number := func(v float64) string { return d.show.Number(v, 2) }
	mud := "mud at worst " + pour.Instead(number(o.Worst), number(own.Worst))
	if !worse(o, own) && !worse(own, o) {
		mud = "mud in all " + pour.Instead(number(o.Total), number(own.Total)) + ", the worst pair the same"
	}
	text := fmt.Sprintf("Best %s: %s (%s", o.Kind, strings.Join(names, ", "), mud)
	if o.LatePercent.Known && own.LatePercent.Known {
		text += "; chance of a late jug " + pour.Instead(d.show.Percent(o.LatePercent.V, 0), d.show.Percent(own.LatePercent.V, 0))
	}
	return text + ")."
}

func (d *desk) jugName(i int) string { return d.sheet.Base.Jugs[i].Name }
