package again

import (
	"fmt"
	"math"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// lostPart is the part of its mass at the cut that a bar had lost when it counted as cured, by bars of which both were weighed.
func (p Past) lostPart() (part float64, ok bool) {
	var cut, cured []float64
	for _, e := range p.standing {
		switch {
		case e.Kind == logbook.Cut:
			cut = append(cut, e.Value)
		case e.Kind == logbook.Sliced:
			cut = append(cut, e.Life.MassesG...)
		case e.Kind == logbook.Cured:
			cured = append(cured, e.Value)
		}
	}
	if len(cut) == 0 || len(cured) == 0 {
		return 0, false
	}
	return 1 - mean(cured)/mean(cut), true
}

func mean(list []float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += v
	}
	return sum / float64(len(list))
}

// leastMoisture is how far the water left in a bar is from its plan before another figure is suggested, percent.
const leastMoisture = 0.5

// dried suggests the water that is left in the bar by what it really lost.
func (a *asker) dried() {
	lost, ok := a.past.lostPart()
	b := a.past.Sheet.Bars
	if !ok || lost <= 0 || lost >= 1 || !pour.AsFigure(b.CutG).Known || !pour.AsFigure(b.CuredG).Known || b.CutG <= 0 {
		return
	}
	dry := b.CuredG * (1 - b.FinalMoisturePercent/100) // what is no water, by the plan
	left := 100 * (1 - dry/(b.CutG*(1-lost)))
	for _, n := range a.batches() {
		planned := a.past.Sheet.Plan.Batch(n).FinalMoisturePercent
		if v := toStep(left, leastMoisture); math.Abs(left-planned) >= leastMoisture && v >= 0 {
			a.number(string(n)+".final_moisture_percent", v, fmt.Sprintf("plan %s of water in the cured bar%s", a.show.Percent(v, 1), a.of(n)),
				fmt.Sprintf("a bar lost %s of what it weighed when cut; the plan has %s", a.show.Percent(100*lost, 1), a.show.Percent(100*(1-b.CuredG/b.CutG), 1)))
		}
	}
}
