package paper

import (
	"strings"
	"testing"

	"pourbench/pour"
)

// slabbed is a slab of 300 × 200 in five times four bars of 60 × 50, an embed in each.
func slabbed(t *testing.T) (pour.Sheet, pour.Shelf) {
	t.Helper()
	p, shelf := demo(t)
	p.Icing, p.Top = nil, pour.Top{Embeds: []pour.Embed{{Name: "moon", LengthMM: 25, HeightMM: 18, OutMM: 4.5}}}
	p.Mould = pour.Mould{Shape: pour.ShapeSlab, LengthMM: 300, WidthMM: 200, HeightMM: 40, FillMM: 36, BarMM: 60, BarWidthMM: 50}
	return pour.Weigh(p, shelf).Time(shelf, pour.Hand{}), shelf
}

// By hand: four rows of 50 have their middles at 25, 75, 125 and 175 from the left wall, and five columns of 60 at 30, 90, 150, 210 and 270 from end A.

func TestAPaperSaysWhereASlabsEmbedsStandBothWays(t *testing.T) {
	s, shelf := slabbed(t)
	both := "from end A at 30, 90, 150, 210, 270 mm; from the left wall, seen from there, at 25, 75, 125, 175 mm"
	for name, c := range map[string]struct{ text, rim string }{
		"full":  {Checklist(s, shelf), "come across it, mm from its left wall seen from end A"},
		"bench": {Bench(s, shelf, false), "middles across, mm from the left wall seen from end A: 25.0 75.0 125.0 175.0"},
	} {
		if got := flat(c.text); !strings.Contains(got, both) || !strings.Contains(got, c.rim) || !strings.Contains(got, "25.0 75.0 125.0 175.0") {
			t.Errorf("the %s paper does not say where embeds stand across: %s", name, c.text)
		}
	}
	s.Plan.Mould.BarWidthMM = 0
	if got := flat(Checklist(pour.Weigh(s.Plan, shelf), shelf)); strings.Contains(got, "left wall") {
		t.Error("a slab that is not cut along its length has a place across")
	}
}

// Bar 5 of the slab is the first of its second column: 60 to 120 along, 0 to 50 across; bar 8 lies at its right wall.
func TestAPaperTellsASlabsBarsApart(t *testing.T) {
	s, shelf := slabbed(t)
	full, bench := flat(Checklist(s, shelf)), flat(Bench(s, shelf, false))
	for _, want := range []string{"4 side by side, then the next 4 towards end B", "bar 5 60.0 mm 120.0 mm 0.0 mm 50.0 mm", "bar 8 60.0 mm 120.0 mm 150.0 mm 200.0 mm"} {
		if !strings.Contains(full, want) {
			t.Errorf("the full paper does not say %q: %s", want, full)
		}
	}
	if strings.Contains(full, "with its icing") || !strings.Contains(full, "One bar as cut") {
		t.Error("a bar of a plan without icing has one")
	}
	for name, text := range map[string]string{"full": full, "bench": bench} {
		if !strings.Contains(text, "20 bars of 60 mm by 50 mm") {
			t.Errorf("the %s paper does not say how large a bar is both ways", name)
		}
	}
}
