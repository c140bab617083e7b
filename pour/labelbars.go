package pour

import "slices"

// PackedBars are the bars of a batch as they were weighed: those a label's weight rests on, and what is known of the others.
type PackedBars struct {
	MassesG []float64       // as weighed when they were packed, g; none: the forecast counts
	Bars    []int           // which they are, from 1 at end A; 0, or none: not known
	Made    int             // how many bars there are; 0: as many as the plan cuts
	CutG    map[int]float64 // what bars weighed at their first weighing, by their number, g
	LastG   map[int]float64 // what they weighed last before those here, g
}

// made is how many bars there are.
func (s *Sheet) made(of PackedBars) int {
	if of.Made > 0 {
		return of.Made
	}
	return len(s.Cut.Bars)
}

// asCut is what each bar weighed as it was cut, g, from the first: as weighed, or as planned, by as much lighter as the lightest of those that were
// weighed came out against its plan. Nil: the plan's masses are not known.
func (s *Sheet) asCut(of PackedBars) []float64 {
	if !(s.Bars.CutG > 0) {
		return nil
	}
	planned := func(bar int) float64 {
		if bar >= 1 && bar <= len(s.Cut.Bars) && s.Cut.Bars[bar-1].CutG.Known {
			return s.Cut.Bars[bar-1].CutG.V
		}
		return s.Bars.CutG
	}
	light := 1.0
	for bar, g := range of.CutG {
		light = min(light, g/planned(bar))
	}
	out := make([]float64, s.made(of))
	for i := range out {
		out[i] = planned(i+1) * light
		if g, ok := of.CutG[i+1]; ok {
			out[i] = g
		}
	}
	return out
}

// unweighed is how many bars were not weighed when the others were packed, and what each of them weighs at least, g: what it weighed as it was cut, less
// what the weighed bar that lost most has lost of its own, and never more than it weighed last.
func (s *Sheet) unweighed(of PackedBars) (n int, leastG []float64) {
	n = s.made(of) - len(of.MassesG)
	cut := s.asCut(of)
	if len(of.MassesG) == 0 || n <= 0 || len(cut) == 0 {
		return max(n, 0), nil
	}
	left := 1.0
	for k, g := range of.MassesG {
		was := s.Bars.CutG
		if k < len(of.Bars) && of.Bars[k] >= 1 && of.Bars[k] <= len(cut) {
			was = cut[of.Bars[k]-1]
		}
		left = min(left, g/was)
	}
	for i, g := range cut {
		if slices.Contains(of.Bars, i+1) {
			continue
		}
		least := g * left
		if last, ok := of.LastG[i+1]; ok {
			least = min(least, last)
		}
		leastG = append(leastG, least)
	}
	return n, leastG
}
