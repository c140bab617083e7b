package live

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"pourbench/pour"
)

func TestARunIsTakenUpWhereItWasLeft(t *testing.T) {
	dir := t.TempDir()
	b := opened(t, dir, nil)
	b.until("base split")
	b.press("2 l")
	before, id := b.m.elapsedText(), b.m.ID()
	again := opened(t, dir, func(o *Options) { o.Resume, o.Session, o.Clock, o.Sheet = id, "b", b.c.now, pour.Sheet{} })
	again.c = b.c
	if got := again.m.elapsedText(); got != before {
		t.Errorf("the clock shows %s, it was at %s", got, before)
	}
	if diff := cmp.Diff(b.m.state.Steps, again.m.state.Steps); diff != "" {
		t.Errorf("the steps differ:\n%s", diff)
	}
	b.c.of, b.c.steady = "two", 0 // another boot
	b.c.sleep(3 * time.Minute)
	third := opened(t, dir, func(o *Options) { o.Resume, o.Session, o.Clock = id, "c", b.c.now })
	third.shows("no screen for 3:00; the run went on")
}

func TestAScentTrialIsGuidedAndSaysWhatTheScentDoes(t *testing.T) {
	b := opened(t, t.TempDir(), func(o *Options) { o.TrialScent = "alp-rose" })
	b.size(120, 36)
	b.shows("Trial of", "Weigh olive oil")
	b.press("g")
	b.shows("A scent trial", "Mark medium for each jug")
	b.press("esc")
	b.until("base scent scented")
	b.wait(2 * time.Minute)
	b.shows("Mark light", "light")
	b.press("2 l")
	b.wait(time.Minute)
	b.press("2 m")
	b.wait(3 * time.Minute)
	b.press("1 l")
	if b.rings > 0 {
		t.Error("the bell rang in a trial, where thickening is wanted")
	}
	b.until("base end the trial")
	b.press("space")
	b.shows("the pour is over", "times as fast", "from 1 of your pours")
}
