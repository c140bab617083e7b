package pour_test

import (
	"strings"
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
		{"wires-twice", gang(0, 0, 50, 100, 100, 150, 200), gang(0, 0, 50, 100, 150, 200)},
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

// The bar that weighs least and the one that weighs most are named by the cuts they lie between. Of 250 mm cut at 45, 100, 150 and 200 without
// a cut's own width the bars are 45, 55, 50, 50 and 50 mm.
func TestUnevenBarsAreNamed(t *testing.T) {
	p, shelf := hanger(t)
	p.Cut = pour.Cut{By: pour.CutMarks, MarksMM: []float64{45.5, 100, 150, 200}}
	s := pour.Weigh(p, shelf)
	w, ok := found(s, "bars-uneven")
	if !ok || !strings.Contains(w.Text, "bar 1 before the first cut, 45.5 mm thick") || !strings.Contains(w.Text, "bar 2 between cuts 1 and 2, 54.5 mm thick") {
		t.Errorf("%v: %q", ok, w.Text)
	}
	if got := s.Cut.Thick(p.Show); got != "45.5 to 54.5 mm" {
		t.Errorf("the bars are %q thick", got)
	}
	p.Cut = pour.Cut{By: pour.CutGang, WiresMM: []float64{0, 50, 50, 100}}
	w, ok = found(pour.Weigh(p, shelf), "wires-twice")
	if !ok || !strings.Contains(w.Text, "wires 2 and 3 stand at 50 and 50 mm") {
		t.Errorf("%v: %q", ok, w.Text)
	}
}

// Two lengths that are held against each other are drawn so that they differ.
func TestLengthsHeldAgainstEachOtherAreToldApart(t *testing.T) {
	show := pour.Show{}
	for _, c := range []struct {
		a, b float64
		x, y string
	}{{2, 3, "2 mm", "3 mm"}, {2.6, 3.4, "2.6 mm", "3.4 mm"}, {2.96, 3.04, "2.96 mm", "3.04 mm"}, {2.99, 3, "2.99 mm", "3 mm"}} {
		x, y := show.LenBeside(c.a, c.b)
		if x != c.x || y != c.y {
			t.Errorf("%v beside %v: %q, %q", c.a, c.b, x, y)
		}
	}
	if a, b := show.LenTold(7), show.LenTold(6.5); a != "7 mm" || b != "6.5 mm" {
		t.Errorf("told %q, %q", a, b)
	}
}
