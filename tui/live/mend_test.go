package live

import (
	"strings"
	"testing"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// weights are the weights that count, as they are told.
func (b *kitchen) weights() string {
	var out []string
	for _, e := range b.m.state.Marks {
		if e.Kind == logbook.Weighed {
			out = append(out, b.m.markWords(e))
		}
	}
	return strings.Join(out, "; ")
}

// What is weighed is found by letters with the weight behind them; a weight of the wrong oil is said to be of the right one, steps later, and the weight
// before it counts again; one that was none is taken back alone.
func TestAWeightOfTheWrongThingIsPutRightStepsLater(t *testing.T) {
	b := alpine(t)
	b.press("w")
	b.write("oliv 343,8")
	b.shows("► ", "base olive oil in g, planned 343.8 g")
	b.press("enter w")
	b.write("oliv 43,0 lot C9")
	b.press("enter")
	b.shows("DO NOT MIX")
	b.until("base make the lye")
	b.press("w")
	b.write("oliv")
	b.shows("► ✓ base olive oil in g, planned 343.8 g, measured 43.0 g")
	b.press("enter enter")
	b.shows("base olive oil 43.00 g, lot C9", "Take it back", "Of another thing")
	b.press("space enter")
	b.shows("Of another thing")
	b.press("o")
	b.write("cast")
	b.shows("base castor oil", "planned 43.0 g")
	b.press("enter")
	b.shows("base castor oil 43.00 g; base olive oil 343.80 g counts again")
	b.hides("DO NOT MIX")
	if got := b.weights(); got != "base olive oil 343.80 g; base castor oil 43.00 g, lot C9" {
		t.Errorf("%q counts", got)
	}
	b.press("W")
	b.shows("Which weight is wrong?", "base castor oil 43.00 g, lot C9")
	b.write("olive")
	b.press("enter t")
	b.shows("taken back: base olive oil 343.80 g")
	if got := b.weights(); got != "base castor oil 43.00 g, lot C9" {
		t.Errorf("%q counts", got)
	}
	if n := kinds(b)[logbook.Done]; n == 0 {
		t.Error("steps were taken back with it")
	}
	b.press("u")
	if got := b.weights(); got != "base olive oil 43.00 g, lot C9" {
		t.Errorf("undone, %q counts", got)
	}
}

// A slip that was weighed again is in the list of weights, and says that it does not count.
func TestASlipThatWasWeighedAgainCanBePutRight(t *testing.T) {
	b := alpine(t)
	b.press("W")
	b.shows("nothing was weighed yet")
	b.weigh("base olive oil", "41")
	b.weigh("base olive oil", "343.8")
	b.press("W down")
	b.shows("base olive oil 41.00 g", "does not count: weighed again")
	b.press("enter o")
	b.write("castor")
	b.press("enter")
	if got := b.weights(); got != "base castor oil 41.00 g; base olive oil 343.80 g" {
		t.Errorf("%q counts", got)
	}
}

// Plain mode finds what is weighed by its name, takes back and renames by the same questions.
func TestAWeightIsPutRightInPlainMode(t *testing.T) {
	v := voiced(t)
	v.hears("w oliv 43", "base olive oil: 43 g")
	v.hears(`w olive ""`, "base olive oil 43.00 g", "Of another thing")
	v.hears("o", "Of what was 43.00 g?")
	v.hears("castor", "1 base castor oil, planned 43.0 g")
	v.hears("1", "base castor oil 43.00 g; base olive oil is not weighed")
	v.hears("mend a weight", "Which weight is wrong?", "base castor oil 43.00 g")
	v.hears("1", "Take it back")
	v.hears("t", "taken back: base castor oil 43.00 g")
	for _, e := range v.m.state.Marks {
		if e.Kind == logbook.Weighed && e.Batch == pour.Base {
			t.Errorf("%+v counts", e)
		}
	}
}

// A piece of the cut can be taken back however many were weighed since, and is nothing else than it is.
func TestAPieceOfTheCutIsTakenBackAlone(t *testing.T) {
	was, dir := poured(t)
	b := atCut(t, was, dir, nil)
	b.cutTo("cut weigh bar 1")
	for range 3 {
		b.press("1 2 0 enter")
	}
	list := b.m.live.Scaled()
	if len(list) != 3 {
		t.Fatalf("%d pieces are weighed", len(list))
	}
	b.press("W down down enter")
	b.shows("Take it back")
	b.hides("Of another thing")
	b.press("t")
	if now := b.m.live.Scaled(); len(now) != 2 || now[0].ID != list[0].ID || now[1].ID != list[1].ID {
		t.Errorf("left are %v", now)
	}
}
