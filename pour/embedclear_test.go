package pour_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour"
	"pourbench/pour/pourtest"
)

// Whatever cuts a loaf, a slab, a tube or nothing at all: a piece that is called clear has no cut within what all errors at once and the maker want,
// and is in the bar that it says; no piece is lost and none comes from nowhere.
func TestNoCutComesNearAClearEmbed(t *testing.T) {
	demo, shelf := shelved(t)
	clear := 0
	rapid.Check(t, func(t *rapid.T) {
		p := pourtest.Rich(t, demo, shelf)
		p.Mould.Shape = rapid.SampledFrom([]string{pour.ShapeLoaf, pour.ShapeSlab, pour.ShapeTube, pour.ShapeCavity}).Draw(t, "mould")
		p.Mould.Cavities = 6
		if p.Mould.Shape == pour.ShapeSlab {
			p.Mould.BarWidthMM = rapid.Float64Range(20, 60).Draw(t, "bar width")
		}
		if p.Mould.Shape == pour.ShapeTube {
			p.Mould.WidthMM = p.Mould.LengthMM
		}
		c := &p.Cut
		c.By = rapid.SampledFrom([]string{"", pour.CutCount, pour.CutMarks, pour.CutGang, pour.CutBest}).Draw(t, "cut by")
		c.KerfMM = rapid.Float64Range(0, 2).Draw(t, "kerf")
		c.Count = rapid.IntRange(0, 12).Draw(t, "count")
		x := 0.0
		for range rapid.IntRange(0, 12).Draw(t, "cuts") {
			x += rapid.Float64Range(3, 40).Draw(t, "apart")
			c.MarksMM, c.WiresMM = append(c.MarksMM, x), append(c.WiresMM, x)
		}
		if len(p.Check(shelf)) > 0 {
			return
		}
		p.Top.Embeds = append(p.Top.Embeds, p.NewEmbed("sure")) // so that some piece is clear in a few draws too
		s := pour.Weigh(p, shelf)
		for _, k := range s.Embeds {
			for _, e := range k.Pieces {
				if e.Bar > 0 {
					b := s.Cut.Bars[e.Bar-1]
					if half := c.KerfMM/2 + 1e-6; e.CentreMM < b.StartMM-half || e.CentreMM > b.EndMM+half {
						t.Errorf("a piece at %v is said to be in a bar from %v to %v", e.CentreMM, b.StartMM, b.EndMM)
					}
				}
				if e.Verdict != pour.VerdictClear {
					continue
				}
				clear++
				for _, cut := range s.Cut.AcrossMM {
					if room := math.Abs(cut-e.AcrossMM-p.Mould.WidthMM/2) - c.KerfMM/2 - k.AcrossMM/2; room < max(e.Budget.Worst(), c.ClearMM)-1e-6 {
						t.Errorf("%s, %v across, is called clear and has %v to the cut along the slab at %v: %+v", k.Name, e.AcrossMM, room, cut, e.Budget)
					}
				}
				for _, cut := range s.Cut.CutsMM {
					if room := math.Abs(cut-e.CentreMM) - c.KerfMM/2 - k.ExtentMM/2; room < max(e.Budget.Worst(), c.ClearMM)-1e-6 {
						t.Errorf("%s at %v is called clear and has %v to the cut at %v: %+v", k.Name, e.CentreMM, room, cut, e.Budget)
					}
				}
			}
		}
	})
	if clear == 0 {
		t.Error("no piece was clear: nothing was tried")
	}
}
