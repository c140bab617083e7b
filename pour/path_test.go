package pour_test

import (
	"slices"
	"strings"
	"testing"

	"pourbench/pour"
)

func TestEveryKindOfFieldIsReadAndSetByItsPath(t *testing.T) {
	plan, shelf := strewn(t)
	apply := func(e pour.Edit) pour.Plan {
		t.Helper()
		next, err := pour.Apply(plan, shelf, e)
		if err != nil {
			t.Fatal(err)
		}
		return next
	}
	if n, _, ok := pour.Number(apply(pour.SetNumber("cut.count", 9)), "cut.count"); !ok || n != 9 {
		t.Errorf("a count is %v, %v", n, ok)
	}
	if w, f, ok := pour.Word(apply(pour.SetWord("top.embed[1].outline", "ball")), "top.embed[1].outline"); !ok || w != "ball" || len(f.Choices()) < 2 {
		t.Errorf("a word is %q, %v", w, ok)
	}
	if x, _, ok := pour.Text(apply(pour.SetText("top.embed[0].name", "sun")), "top.embed[0].name"); !ok || x != "sun" {
		t.Errorf("a text is %q, %v", x, ok)
	}
	if on, _, ok := pour.Switch(apply(pour.SetSwitch("top.embed[0].any_turn", true)), "top.embed[0].any_turn"); !ok || !on {
		t.Errorf("a switch is %v, %v", on, ok)
	}
	wires := []float64{0, 25.5, 51}
	got := apply(pour.SetNumbers("cut.wires_mm", wires))
	wires[1] = 99
	if list, _, ok := pour.Numbers(got, "cut.wires_mm"); !ok || !slices.Equal(list, []float64{0, 25.5, 51}) {
		t.Errorf("a list is %v, %v", list, ok)
	}
}

func TestAPathThatLeadsToAnotherKindIsRefused(t *testing.T) {
	plan, shelf := strewn(t)
	for _, edit := range []pour.Edit{
		pour.SetNumber("cut.by", 1), pour.SetSwitch("cut.by", true), pour.SetNumbers("cut.by", nil), pour.SetText("cut.count", "x"),
		pour.SetNumber("cut.count", 2.5), pour.SetNumber("cut.count", 1e300), pour.SetText("top.embed[0].colour", "blue"), pour.SetText("top.embed[0].name", ""),
	} {
		if _, err := pour.Apply(plan, shelf, edit); err == nil {
			t.Error("an edit of another kind was made")
		}
	}
	if _, err := pour.Apply(plan, shelf, pour.SetNumber("cut.count", 2.5)); !strings.Contains(err.Error(), "whole number") {
		t.Error(err)
	}
}
