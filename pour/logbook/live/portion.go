package live

import (
	"pourbench/pour"
	"pourbench/pour/logbook"
)

// Portions are the jugs that are not as planned: weighed otherwise at the split, or partly poured before all of it was stirred in.
func (s State) Portions(sheet *pour.Sheet) []pour.Portion {
	poured := map[[2]string]float64{}
	for _, st := range sheet.Stints() {
		if step, ok := s.step(st.Key); !ok || !step.Done {
			continue
		}
		for _, t := range st.Tasks {
			if t.Jug != "" && t.Part.Known {
				poured[[2]string{string(t.Batch), t.Jug}] += t.Part.V
			}
		}
	}
	var out []pour.Portion
	for _, b := range sheet.Batches() {
		for _, j := range b.Jugs {
			p := pour.Portion{Batch: b.Name, Jug: j.Name, BatterG: s.measured(logbook.Event{Kind: logbook.Weighed, Batch: b.Name, Jug: j.Name, What: pour.WeighBatter}).V, LeftPart: 1}
			const slack = 1e-9 // parts sum to 1 give or take
			if left := 1 - poured[[2]string{string(b.Name), j.Name}]; left > slack && left < 1-slack {
				p.LeftPart = left
			}
			if p.BatterG > 0 && p.BatterG != j.BatterWeighG || p.LeftPart < 1 {
				out = append(out, p)
			}
		}
	}
	return out
}
