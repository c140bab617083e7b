package pour

import "slices"

// Portion is what a jug really holds at the split, and what part of that is still in it.
type Portion struct {
	Batch    BatchName
	Jug      string
	BatterG  float64 // as weighed; 0: it was not
	LeftPart float64 // above 0 to 1: what is still to be stirred in is for that much of it
}

// Portioned is the sheet with its jugs as they really are: doses of colour and scent in proportion to the batter that they go into, and what the acts pour
// in proportion to what the jug held. A plan's dose is a part of the batter, so that is what it comes to (own, no source).
func (s *Sheet) Portioned(list []Portion) Sheet {
	out := *s
	out.Run = slices.Clone(s.Run)
	if s.Icing != nil {
		icing := *s.Icing
		out.Icing = &icing
	}
	for _, b := range out.Batches() {
		b.Jugs = slices.Clone(b.Jugs)
		for i := range b.Jugs {
			for _, p := range list {
				if p.Batch == b.Name && p.Jug == b.Jugs[i].Name && p.BatterG > 0 {
					b.Jugs[i].hold(p.BatterG)
				}
			}
		}
		out.regram(b)
		for i := range b.Jugs {
			for _, p := range list {
				if p.Batch == b.Name && p.Jug == b.Jugs[i].Name && p.LeftPart > 0 && p.LeftPart < 1 {
					b.Jugs[i].dose(p.LeftPart)
				}
			}
		}
	}
	return out
}

// hold makes a jug one that holds so much batter.
func (j *JugSheet) hold(batterG float64) {
	if !(j.BatterWeighG > 0) {
		return // what the plan has of it is not known
	}
	times := batterG / j.BatterWeighG
	j.dose(times)
	j.BatterG, j.BatterWeighG, j.TotalG = j.BatterG*times, batterG, j.TotalG*times
}

// dose multiplies what is stirred in.
func (j *JugSheet) dose(times float64) {
	j.Colourants, j.Scents = slices.Clone(j.Colourants), slices.Clone(j.Scents)
	for i := range j.Colourants {
		d := &j.Colourants[i]
		d.PigmentG, d.CarrierG, d.TeaspoonsML5.V = d.PigmentG*times, d.CarrierG*times, d.TeaspoonsML5.V*times
	}
	for i := range j.Scents {
		j.Scents[i].G *= times
	}
}

// regram divides what the jugs of a batch hold over its acts once more.
func (s *Sheet) regram(b *BatchSheet) {
	var acts []Task
	for _, t := range s.Run {
		if t.Batch == b.Name && t.Act != NoAct {
			acts = append(acts, t)
		}
	}
	s.grams(b, acts)
	for i, t := range s.Run {
		if t.Batch == b.Name && t.Act != NoAct {
			s.Run[i], acts = acts[0], acts[1:]
		}
	}
}
