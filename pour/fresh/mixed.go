package fresh

import (
	"math"

	"pourbench/pour"
)

// splitStepMin is what a split is rounded up to, min; blendStepS is how much longer the stick blender is tried at a time, s.
const (
	splitStepMin = 0.5
	blendStepS   = 2
)

// mixed splits no batch before it is likely an emulsion: what still separates fills jugs that are lye-heavy or oily (common practice, no source).
// It is split later or, where that does less harm, stick-blended longer.
func (t trying) mixed(p pour.Plan, _ Wishes) (pour.Plan, error) {
	sheet := pour.Weigh(p, t.shelf).Time(t.shelf, t.hand)
	for _, b := range sheet.Batches() {
		at := b.EmulsionAtMin()
		if !at.Known || p.Batch(b.Name).SplitAtMin >= at.V {
			continue
		}
		later, err := pour.Apply(p, t.shelf, pour.SetSplitAt(b.Name, math.Ceil(at.V/splitStepMin)*splitStepMin))
		if err != nil {
			return p, err
		}
		p = t.blendedLonger(p, b.Name, later)
	}
	return p, nil
}

// blendedLonger stick-blends a batch as much longer as brings it to an emulsion by its split, at most to what is usual; where that is worse than another
// plan, it is that.
func (t trying) blendedLonger(p pour.Plan, n pour.BatchName, other pour.Plan) pour.Plan {
	p = p.Clone()
	for b := p.Batch(n); len(b.Blend) > 0 && b.Blend[0].S < burstS; {
		b.Blend[0].S += blendStepS
		sheet := pour.Weigh(p, t.shelf).Time(t.shelf, t.hand)
		if at := sheet.Batch(n).EmulsionAtMin(); !at.Known || at.V > b.SplitAtMin {
			continue
		}
		if t.harm(p).less(t.harm(other)) {
			return p
		}
		break
	}
	return other
}
