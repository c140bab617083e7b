package panel

import (
	"math"
	"testing"

	"pourbench/pour"
)

// A base that was sized by its mould begins, sized by its oils, with those it has: to the gram, so that what is weighed stays as it was within it.
// Oils that are stated stay.
func TestASizeByOilsBeginsWithTheOilsThatThereAre(t *testing.T) {
	f := worked(t, topped, func(p *pour.Plan) { p.Base.Size, p.Base.OilsG = pour.SizeMould, 0 })
	had := 0.0
	for _, o := range f.Sheet.Base.Oils {
		had += o.G
	}
	plan := made(t, f, f.sizeBy(pour.Base, pour.SizeOils))
	if plan.Base.Size != pour.SizeOils || math.Abs(plan.Base.OilsG-had) > 1 || had < 500 {
		t.Errorf("%.1f g of oils: sized by %q, %g g", had, plan.Base.Size, plan.Base.OilsG)
	}
	f.Plan.Base.OilsG = 321
	if plan = made(t, f, f.sizeBy(pour.Base, pour.SizeOils)); plan.Base.OilsG != 321 {
		t.Errorf("321 g were stated, now %g", plan.Base.OilsG)
	}
	if plan = made(t, f, f.sizeBy(pour.Base, pour.SizeMould)); plan.Base.OilsG != 321 || plan.Base.Size != pour.SizeMould {
		t.Errorf("sized by %q, %g g", plan.Base.Size, plan.Base.OilsG)
	}
}
