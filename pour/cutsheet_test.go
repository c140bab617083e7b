package pour_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/script"
)

// loafOf is the example in a loaf of 250 mm with bars of 25 mm, cut as a plan says.
func loafOf(t *testing.T, c pour.Cut, embeds ...pour.Embed) pour.Sheet {
	t.Helper()
	p, shelf := hanger(t)
	blank := pour.Blank().Cut
	c.ClearMM, c.PlaceMM, c.WanderMM, c.SightDeg = blank.ClearMM, blank.PlaceMM, blank.WanderMM, blank.SightDeg
	p.Mould.LengthMM, p.Mould.WidthMM, p.Mould.BarMM, p.Cut, p.Top.Embeds = 250, 80, 25, c, embeds
	s := pour.Weigh(p, shelf)
	if _, faulty := found(s, "plan-fault"); faulty {
		t.Fatalf("%+v: %v", c, s.Warnings)
	}
	return s
}

func same(t *testing.T, what string, got []float64, want ...float64) {
	t.Helper()
	if !slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-3 }) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// E1, E2 and E5 of the worked examples come out of a plan to their printed digits.
func TestAPlanIsCutAsTheWorkedExamples(t *testing.T) {
	e1 := loafOf(t, pour.Cut{KerfMM: 0.6, Left: pour.LeftTrims}).Cut
	same(t, "E1", e1.CutsMM, 9.8, 35.4, 61.0, 86.6, 112.2, 137.8, 163.4, 189.0, 214.6, 240.2)
	same(t, "E1, as marked", e1.MarksMM, 10, 35.5, 61, 86.5, 112, 138, 163.5, 189, 214.5, 240)
	same(t, "E1's trims", []float64{e1.TrimAMM, e1.TrimBMM}, 9.5, 9.5)
	e2 := loafOf(t, pour.Cut{KerfMM: 0.6, TrimAMM: 3, TrimBMM: 3, SliceMM: 5, Left: pour.LeftBars}).Cut
	same(t, "E2", e2.CutsMM, 3.3, 8.9, 35.3222, 61.7444, 88.1667, 114.5889, 141.0111, 167.4333, 193.8556, 220.2778, 246.7)
	same(t, "E2's slice", []float64{e2.SliceAt, e2.SliceMM, e2.UsualMM}, 3.6, 5, 25.8222)
	wires := []float64{0, 25, 50, 75, 100, 125, 150, 175, 200, 225}
	moon := pour.Embed{Name: "moon", LengthMM: 18, HeightMM: 15, In: pour.EmbedOwn, AtMM: []float64{22.6, 48.2, 73.8, 99.4, 125, 150.6, 176.2, 201.8, 227.4}}
	e5 := loafOf(t, pour.Cut{By: pour.CutGang, KerfMM: 0.6, WiresMM: wires}, moon)
	if g := e5.Cut.Gang; math.Abs(g.AtMM.V-12.5) > 1e-9 || math.Abs(g.WorstMM.V-2.4) > 1e-9 || g.Missed != 8 || len(e5.Cut.Bars) != 9 {
		t.Errorf("E5: %+v", g)
	}
	moon.In, moon.AtMM = "", nil
	if s := loafOf(t, pour.Cut{By: pour.CutGang, KerfMM: 0.6, WiresMM: wires}, moon); s.Embeds[0].Pieces[0].ClearMM.V < 3.2-1e-9 {
		t.Errorf("set at the pitch an embed has %v on its nearer side, want 3.2", s.Embeds[0].Pieces[0].ClearMM)
	}
}

// E3: a sphere of 20 standing 4 out takes the place of 3753.15602 mm³ of base in a bar of 25 of a loaf 80 wide; of the density that this base has the
// bar weighs (25·80·h − 3753.15602)·ρ and the embed's 4188.79020 mm³ of 1.12.
func TestABarWithABallWeighsAsTheWorkedExample(t *testing.T) {
	s := loafOf(t, pour.Cut{}, pour.Embed{Name: "ball", Outline: pour.OutlineBall, LengthMM: 20, OutMM: 4, Material: pour.EmbedMelt, Every: 2})
	gml := s.Base.Size.PouredG / s.Base.Size.PouredML
	b := s.Cut.Bars[2]
	closeTo(t, "the base of a bar without", s.Cut.Bars[3].BaseG, 25*80*s.Base.Size.HeightMM/1000*gml)
	closeTo(t, "its base", b.BaseG, (25*80*s.Base.Size.HeightMM-3753.15602)/1000*gml)
	closeTo(t, "its embed", b.EmbedG, 4188.79020*1.12/1000)
	closeTo(t, "the bar", b.CutG, b.BaseG.V+b.EmbedG.V+b.IcingG.V)
}

// Bars of one mass weigh the same where embeds stand in some of them; bars all alike do not.
func TestTheBestPlanKeepsClearOfWhatIsPlaced(t *testing.T) {
	moon := pour.Embed{Name: "moon", LengthMM: 14, HeightMM: 15, In: pour.EmbedOwn, AtMM: []float64{30, 61, 88, 140, 201}}
	s := loafOf(t, pour.Cut{By: pour.CutBest, KerfMM: 0.6, VaryMM: 4, TrimAMM: 2, TrimBMM: 2}, moon)
	if !s.Cut.Best.Found || len(s.Cut.Bars) < 8 {
		t.Fatalf("%d bars, %+v", len(s.Cut.Bars), s.Cut.Best)
	}
	for _, p := range s.Embeds[0].Pieces {
		if p.ClearMM.V < 3-1e-9 || p.Bar == 0 {
			t.Errorf("the piece at %v stands in bar %d with %v clear", p.CentreMM, p.Bar, p.ClearMM)
		}
	}
	for _, b := range s.Cut.Bars {
		if b.ThicknessMM() < 21-1e-9 || b.ThicknessMM() > 29+1e-9 {
			t.Errorf("a bar of %v", b.ThicknessMM())
		}
	}
}

// A slab of 240 × 220 with bars of 80 × 55 is twelve bars, cut twice along and three times across; each is a twelfth of the slab.
func TestASlabsBarsAreListedOneByOne(t *testing.T) {
	p, shelf := hanger(t)
	p.Mould.Shape, p.Mould.LengthMM, p.Mould.WidthMM, p.Mould.BarMM, p.Mould.BarWidthMM = pour.ShapeSlab, 240, 220, 80, 55
	s := pour.Weigh(p, shelf)
	c := s.Cut
	same(t, "across", c.AcrossMM, 55, 110, 165)
	same(t, "along", c.CutsMM, 80, 160)
	if len(c.Bars) != 12 || c.Bars[5].StartMM != 80 || c.Bars[5].LeftMM != 55 || len(c.Columns()) != 3 {
		t.Fatalf("%+v", c.Bars)
	}
	closeTo(t, "a bar", c.Bars[7].CutG, (s.Base.Size.PouredG+s.Icing.Size.PouredG)/12)
}

// On its side the loaf passes under the frame as high as it is wide, and the bed has to hold its height with what stands on it.
func TestWhatTheCutterMustHaveRoomFor(t *testing.T) {
	up, side := loafOf(t, pour.Cut{}), loafOf(t, pour.Cut{Lay: pour.LaySide})
	tall := up.Base.Size.HeightMM + up.Icing.Size.HeightMM
	closeTo(t, "upright", up.Cut.OpeningNeedMM, tall)
	closeTo(t, "its bed", up.Cut.BedNeedMM, 80)
	closeTo(t, "on its side", side.Cut.OpeningNeedMM, 80)
	closeTo(t, "its bed then", side.Cut.BedNeedMM, tall)
}

// The first wire is told where it is marked, so that paper, ruler and act name one place.
func TestTheFirstWireIsToldWhereItIsMarked(t *testing.T) {
	p, shelf := shelved(t)
	p.Cut.By, p.Cut.KerfMM, p.Cut.WiresMM, p.Cut.GangAtMM = pour.CutGang, 0.6, []float64{0, 50, 100}, 10.8
	s := pour.Weigh(p, shelf)
	if s.Cut.CutsMM[0] != 10.8 || s.Cut.MarksMM[0] != 11 {
		t.Fatalf("cut at %v, marked at %v", s.Cut.CutsMM, s.Cut.MarksMM)
	}
	told := 0
	for _, st := range s.CutStints() {
		if st.Kind == pour.TaskKind(script.Cut) {
			told++
		}
		if st.Kind == pour.TaskKind(script.Cut) && !strings.Contains(s.Tell(st), "the first at 11 mm from end A") {
			t.Errorf("told: %s", s.Tell(st))
		}
	}
	if told != 1 {
		t.Errorf("all wires go through in %d acts", told)
	}
}
