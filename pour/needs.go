package pour

import "pourbench/pour/lot"

// MaterialNeed is what a plan wants of one material for one of its batches or jugs.
type MaterialNeed struct {
	Material lot.Material
	Name     string
	Batch    BatchName // empty: for the loaf and its bars
	Jug      string    // empty: the whole batch
	Q        lot.Quantity
}

// Needs lists what the plan wants of every material, as its scales show it, in the order of the pour. Where a batch cannot be mixed there is
// nothing of it.
func (s *Sheet) Needs(shelf Shelf) []MaterialNeed {
	var out []MaterialNeed
	for _, b := range s.Batches() {
		if b.Refused.Masses != "" {
			continue
		}
		for _, o := range b.Oils {
			if q, ok := lot.Weighed(o.WeighG); ok && q > 0 {
				out = append(out, MaterialNeed{Material: lot.Material{Kind: lot.Oil, ID: o.ID}, Name: o.Name, Batch: b.Name, Q: q})
			}
		}
	}
	return out
}
