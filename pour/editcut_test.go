package pour_test

import (
	"math"
	"strings"
	"testing"

	"pourbench/pour"
)

func TestACutThatIsMovedMovesAlone(t *testing.T) {
	_, shelf := hanger(t)
	s := loafOf(t, pour.Cut{KerfMM: 0.6, Left: pour.LeftTrims, SliceMM: 5})
	next, err := pour.Apply(s.Plan, shelf, pour.NudgeCut(s.Cut, 3, 0.5))
	if err != nil {
		t.Fatal(err)
	}
	after := pour.Weigh(next, shelf)
	if len(after.Cut.CutsMM) != len(s.Cut.CutsMM) || len(after.Cut.Bars) != len(s.Cut.Bars) {
		t.Fatalf("%d cuts and %d bars, before %d and %d", len(after.Cut.CutsMM), len(after.Cut.Bars), len(s.Cut.CutsMM), len(s.Cut.Bars))
	}
	for i, x := range after.Cut.CutsMM {
		want := s.Cut.CutsMM[i]
		if i == 3 {
			want = math.Round((want+0.5)*10) / 10
		}
		if math.Abs(x-want) > 1e-9 {
			t.Errorf("cut %d stands at %v, want %v", i, x, want)
		}
	}
	if s.Plan.Cut.By != "" || after.Cut.Bars[1].CutG.V <= s.Cut.Bars[1].CutG.V || after.Cut.Bars[2].CutG.V >= s.Cut.Bars[2].CutG.V {
		t.Errorf("the masses beside the cut do not follow it: %v %v, before %v %v", after.Cut.Bars[1].CutG, after.Cut.Bars[2].CutG, s.Cut.Bars[1].CutG, s.Cut.Bars[2].CutG)
	}
	if after.Cut.SliceMM != 5 || after.Cut.TrimAMM == 0 || after.Cut.TrimBMM == 0 {
		t.Errorf("trims %v and %v, slice %v", after.Cut.TrimAMM, after.Cut.TrimBMM, after.Cut.SliceMM)
	}
}

func TestCutsAreAddedTakenOutAndRefused(t *testing.T) {
	_, shelf := hanger(t)
	s := loafOf(t, pour.Cut{})
	apply := func(e pour.Edit) (pour.Sheet, error) {
		p, err := pour.Apply(s.Plan, shelf, e)
		return pour.Weigh(p, shelf), err
	}
	if more, err := apply(pour.AddCut(s.Cut, 12.5)); err != nil || len(more.Cut.Bars) != 11 || more.Cut.Bars[0].EndMM != 12.5 {
		t.Errorf("%v, %d bars", err, len(more.Cut.Bars))
	}
	if fewer, err := apply(pour.RemoveCut(s.Cut, 0)); err != nil || len(fewer.Cut.Bars) != 9 || fewer.Cut.Bars[0].EndMM != 50 {
		t.Errorf("%v, %d bars", err, len(fewer.Cut.Bars))
	}
	for _, c := range []struct {
		edit pour.Edit
		says string
	}{
		{pour.MoveCut(s.Cut, 0, 51), "pass the one beside it"},
		{pour.MoveCut(s.Cut, 0, -1), "would not cut inside the loaf"},
		{pour.AddCut(s.Cut, 50), "meet another cut"},
		{pour.NudgeCut(s.Cut, 99, 1), "cut"},
		{pour.MyWires([]float64{0}), "two of them"},
		{pour.MyWires([]float64{0, 25, 25}), "two of them stand at"},
	} {
		if _, err := apply(c.edit); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("refused with %v, want %q", err, c.says)
		}
	}
}

// Wires that cut at once move together, and are measured from the first.
func TestWiresMoveTogether(t *testing.T) {
	_, shelf := hanger(t)
	s := loafOf(t, pour.Cut{})
	p, err := pour.Apply(s.Plan, shelf, pour.MyWires([]float64{62.9, 12.7, 37.7}))
	if err != nil || p.Cut.WiresMM[0] != 0 || p.Cut.WiresMM[1] != 25 || p.Cut.WiresMM[2] != 50.2 {
		t.Fatalf("%v %v", err, p.Cut.WiresMM)
	}
	gang := pour.Weigh(p, shelf)
	moved, err := pour.Apply(p, shelf, pour.NudgeCut(gang.Cut, 1, 2))
	if err != nil {
		t.Fatal(err)
	}
	for i, x := range pour.Weigh(moved, shelf).Cut.CutsMM {
		if math.Abs(x-gang.Cut.CutsMM[i]-2) > 0.05+1e-9 {
			t.Errorf("wire %d went from %v to %v", i, gang.Cut.CutsMM[i], x)
		}
	}
}
