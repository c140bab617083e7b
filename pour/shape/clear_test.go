package shape_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"pourbench/pour/shape"
)

// E4: an embed of 18 in a bar of 25 has 3.5 a side; placing 1.0 and wander 0.5 leave 2.0, and a rim 13 above the soap, seen 10° askew, takes 2.29.
func TestASlantedLookCanCostAnEmbed(t *testing.T) {
	a, b := shape.Between(50, 75, 62.5, 18)
	near(t, "the room towards A", a, 3.5, 1e-12)
	near(t, "the room towards B", b, 3.5, 1e-12)
	budget := shape.Budget{Placing: 1, Wander: 0.5}
	near(t, "what is left for the look", a-budget.Worst(), 2, 1e-12)
	if budget.Judge(a, 3) != shape.IsClear {
		t.Error("without the look it is clear")
	}
	budget.Sight = shape.Parallax(13, 10*degree)
	if got := budget.Judge(a, 3); got != shape.IsTight {
		t.Errorf("with the look it is %d, want tight: 3.79 needed at worst, 2.55 usually, 3.5 there", got)
	}
	near(t, "worst case", budget.Worst(), 1.5+2.2923, 5e-5)
	near(t, "independent", budget.Usual(), math.Sqrt(1+0.25+2.2923*2.2923), 5e-5)
}

// E5: set for bars of 25.6 and cut at a pitch of 25, an embed of 18 keeps 3.2 less 2.4 mm.
func TestAnEmbedForTheWrongPitchIsCut(t *testing.T) {
	a, b := shape.Between(12.8, 37.2, 25-2.4, 18) // the bar between two wires at 12.5 and 37.5, each taking 0.6
	near(t, "the room towards A", a, 0.8, 1e-12)
	near(t, "the room towards B", b, 5.6, 1e-12)
	if got := (shape.Budget{Placing: 1, Wander: 0.5}).Judge(math.Min(a, b), 3); got != shape.IsCut {
		t.Errorf("it is %d, want cut", got)
	}
}

// E3: below what is wanted, though its errors have room.
func TestABoxTurnedHasLessThanIsWanted(t *testing.T) {
	budget := shape.Budget{Placing: 1, Wander: 0.5, HalfKerf: 0.3}
	if got := budget.Judge(2.20577, 3); got != shape.IsTight {
		t.Errorf("it is %d, want tight", got)
	}
	if got := budget.Judge(2.20577, 0); got != shape.IsClear {
		t.Errorf("where nothing is wanted it is %d, want clear", got)
	}
}

func TestRoomMirroredAndScaledAndItsVerdict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(0, 60)
		term := rapid.Float64Range(0, 5)
		start, thick, extent := rapid.Float64Range(0, 900).Draw(t, "start"), length.Draw(t, "thick"), length.Draw(t, "extent")
		off := rapid.Float64Range(-40, 40).Draw(t, "off")
		a, b := shape.Between(start, start+thick, start+thick/2+off, extent)
		if least := (thick-extent)/2 - math.Abs(off); math.Abs(math.Min(a, b)-least) > 1e-9 {
			t.Fatalf("the nearer side has %g, want %g", math.Min(a, b), least)
		}
		loaf := 1000.0
		ma, mb := shape.Between(loaf-start-thick, loaf-start, loaf-start-thick/2-off, extent)
		if math.Abs(ma-b) > 1e-9 || math.Abs(mb-a) > 1e-9 {
			t.Fatalf("from the other end the sides are %g and %g, not %g and %g", ma, mb, b, a)
		}
		budget := shape.Budget{Placing: term.Draw(t, "placing"), Wander: term.Draw(t, "wander"), Sight: term.Draw(t, "sight"), HalfKerf: term.Draw(t, "kerf")}
		if budget.Usual() > budget.Worst()+1e-9 || budget.Usual() < 0 {
			t.Fatalf("usually it needs %g, at worst %g", budget.Usual(), budget.Worst())
		}
		wanted := term.Draw(t, "wanted")
		// Every error at once, each as large as it may be: a piece that is clear does not reach the cut's path.
		if room := math.Min(a, b); budget.Judge(room, wanted) == shape.IsClear && room-budget.Placing-budget.Wander-budget.Sight-budget.HalfKerf < -1e-8 {
			t.Fatalf("it is called clear and can be cut: %g", room)
		}
		if budget.Judge(math.Min(a, b)+1, wanted) < budget.Judge(math.Min(a, b), wanted) {
			t.Fatal("more room makes it worse")
		}
	})
}
