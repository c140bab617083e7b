package panel

import (
	"math"
	"slices"
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

// Where extras bring fat, every superfat says whether it counts it; where they do not, none does.
func TestASuperfatSaysWhetherItCountsTheFatOfExtras(t *testing.T) {
	for milk, want := range map[float64][]string{
		0:  {"oils and alkali on their scales", "every oil at its low end", "every oil at its high end", "every oil at its low end"},
		10: {"counts fat in extras", "oils alone, each at its low end", "oils alone, each at its high end", "oils low, fat in extras counted"},
	} {
		f := worked(t, topped, func(p *pour.Plan) {
			p.Base.Extras = nil
			if milk > 0 {
				p.Base.Extras = []pour.ExtraPart{{Extra: "cow-milk", PercentOfOils: milk}}
			}
		})
		rows, got := f.superfatRows(pour.Base), []string{}
		for _, row := range rows {
			if label := row.Cells; len(label) > formRemark && slices.Contains([]string{"as weighed", "worst case", "best case", "its worst case"}, label[formLabel].Text) {
				got = append(got, label[formRemark].Text)
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%v %% of milk: %q, want %q", milk, got, want)
		}
	}
}
