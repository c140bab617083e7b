package pour_test

import (
	"testing"

	"pourbench/pour"
)

// cutRows are what the cut plan can be warned of, over the example's loaf of 250 mm and its bars of 25 mm.
func cutRows() []codeRow {
	cut := func(c pour.Cut) bend {
		return func(p *pour.Plan, _ *pour.Shelf) {
			c.ClearMM, c.PlaceMM, c.WanderMM, c.SightDeg = p.Cut.ClearMM, p.Cut.PlaceMM, p.Cut.WanderMM, p.Cut.SightDeg
			p.Cut = c
		}
	}
	set := func(at ...float64) bend {
		return func(p *pour.Plan, _ *pour.Shelf) {
			p.Top.Embeds = []pour.Embed{{Name: "moon", LengthMM: 12, HeightMM: 15, OutMM: 4, In: pour.EmbedOwn, AtMM: at}}
		}
	}
	gang := func(slice float64, wires ...float64) bend {
		return cut(pour.Cut{By: pour.CutGang, KerfMM: 0.6, WiresMM: wires, SliceMM: slice})
	}
	best := func(vary float64) bend { return cut(pour.Cut{By: pour.CutBest, KerfMM: 0.6, VaryMM: vary}) }
	lying := func(lay string) bend { return cut(pour.Cut{Lay: lay, OpeningMM: 75, BedMM: 100}) }
	return []codeRow{
		{"cut-none", cut(pour.Cut{TrimAMM: 120, TrimBMM: 120}), cut(pour.Cut{TrimAMM: 20, TrimBMM: 20})},
		{"cut-outside", cut(pour.Cut{By: pour.CutMarks, MarksMM: []float64{50, 100, 150, 200, 260}}), cut(pour.Cut{By: pour.CutMarks, MarksMM: []float64{50, 100, 150, 200}})},
		{"cut-rest", cut(pour.Cut{By: pour.CutCount, Count: 8, Left: pour.LeftTrims}), cut(pour.Cut{By: pour.CutCount, Count: 9, KerfMM: 1, Left: pour.LeftTrims})},
		{"bars-uneven", cut(pour.Cut{By: pour.CutMarks, MarksMM: []float64{45, 100, 150, 200}}), cut(pour.Cut{By: pour.CutMarks, MarksMM: []float64{49, 100, 150, 200}})},
		{"wires-idle", gang(0, 0, 50, 100, 150, 200, 260), gang(0, 0, 50, 100, 150, 200)},
		{"wires-off-pitch", all(set(25, 55, 85), gang(0, 0, 25, 50, 75, 100, 125)), all(set(25, 50, 75), gang(0, 0, 25, 50, 75, 100, 125))},
		{"slice-none", cut(pour.Cut{By: pour.CutGang, WiresMM: []float64{0, 50, 100, 150, 200}, GangAtMM: 4, SliceMM: 5}), gang(5, 0, 50, 100, 150, 200)},
		{"best-none", all(set(12, 27, 42, 57, 72, 87, 102, 117, 132, 147, 162, 177, 192, 207, 222, 237), best(0.5)), all(set(25, 65), best(4))},
		{"best-shared", all(set(40, 55), best(9)), all(set(25, 75), best(9))},
		{"cutter-low", cut(pour.Cut{Lay: pour.LaySide, OpeningMM: 79.5}), cut(pour.Cut{Lay: pour.LaySide, OpeningMM: 90})},
		{"cutter-shallow", cut(pour.Cut{Lay: pour.LayUpright, BedMM: 79.5, OpeningMM: 200}), cut(pour.Cut{Lay: pour.LayUpright, BedMM: 85})},
		{"lay-crushes", lying(pour.LayUpsideDown), cut(pour.Cut{Lay: pour.LaySide})},
	}
}

// Own marks that nobody has made leave the loaf whole, which is said; one mark is enough.
func TestALoafThatNoMarkCutsIsSaidToStayWhole(t *testing.T) {
	demo, shelf := shelved(t)
	for _, c := range []struct {
		marks []float64
		whole bool
	}{{nil, true}, {[]float64{125}, false}} {
		p := demo.Clone()
		p.Cut = pour.Cut{By: pour.CutMarks, MarksMM: c.marks}
		if _, said := found(pour.Weigh(p, shelf), "cut-none"); said != c.whole {
			t.Errorf("marks %v: said %v", c.marks, said)
		}
	}
}
