package live

import (
	"testing"

	"pourbench/pour"
)

// Light that is seen before the split stands in every jug's row, and the answer says that it is of all of it; after the split it is of one.
func TestAStageBeforeTheSplitIsOfEveryJug(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.size(120, 36)
	b.until("base lye in")
	b.press("1 l")
	b.shows("1 pot: light, and all of the base: it is still one pot")
	for i, j := range b.m.board.Jugs {
		if (j.Reached == 2) != (j.Batch == pour.Base) {
			t.Errorf("%d %s has reached %d stages", i+1, j.Jug, j.Reached)
		}
	}
	b.press("2 l")
	b.shows("gentian was seen at light already")
	b.until("base split")
	b.press("2 m")
	b.shows("2 gentian: medium")
	b.hides("it is still one pot")
	if b.m.board.Jugs[0].Reached != 2 || b.m.board.Jugs[1].Reached != 3 {
		t.Errorf("after the split the jugs reached %d and %d stages", b.m.board.Jugs[0].Reached, b.m.board.Jugs[1].Reached)
	}
}

// Trouble that is marked before the split is asked of all of it, stands in every jug's row, and one answer to it is enough.
func TestTroubleBeforeTheSplitIsOfEveryJug(t *testing.T) {
	b := opened(t, t.TempDir(), nil)
	b.size(120, 36)
	b.until("base lye in")
	b.press("3 x")
	b.shows("Trouble in all of the base", "It is still one pot")
	b.press("s")
	b.shows("all of the base seizes")
	for i, j := range b.m.board.Jugs {
		if (len(j.Troubles) == 1) != (j.Batch == pour.Base) {
			t.Errorf("%d %s has %v", i+1, j.Jug, j.Troubles)
		}
	}
	b.shows("spoon all of the base in")
	b.press("r")
	b.press("1")
	b.press("1")
	b.press("6")
	if i := b.m.lost(); i >= 0 {
		t.Errorf("%s is asked for besides", b.m.board.Jugs[i].Jug)
	}
}
