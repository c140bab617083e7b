package live

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pourbench/pour"
	"pourbench/pour/logbook"
)

// oilsRun is a run with weighings of its first two oils: the first is weighed as 41 g, then as planned.
func oilsRun(t *testing.T) (l Live, c *wallClock, one, other string) {
	t.Helper()
	plan, shelf := example(t, "alpine-meadow")
	sheet := pour.Work(plan, shelf, pour.Hand{})
	c = newClock()
	l, _ = start(sheet, "a", c.now())
	one, other = sheet.Base.Oils[0].Name, sheet.Base.Oils[1].Name
	for _, g := range []float64{41, sheet.Base.Oils[0].WeighG} {
		c.pass(time.Minute)
		l = mark(t, l, c, logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: one, Value: g, Lot: fmt.Sprintf("L%.0f", g)})
	}
	return l, c, one, other
}

func mark(t *testing.T, l Live, c *wallClock, e logbook.Event) Live {
	t.Helper()
	l, _, err := l.Mark(e, c.now())
	must(t, err)
	return l
}

// weights are the weights that count, in their order.
func weights(l Live) string {
	var out []string
	for _, e := range l.State().Marks {
		if e.Kind == logbook.Weighed {
			out = append(out, fmt.Sprintf("%s %.1f %s at %s", e.What, e.Value, e.Lot, e.Run))
		}
	}
	return strings.Join(out, ", ")
}

// A slip that was of another thing is said to be of it: it counts there, at the minute it was weighed, with its lot, and the run's clock goes on. What was
// marked last is then that, and undoing it leaves all as it was.
func TestAWeighingIsSaidToBeOfAnotherThing(t *testing.T) {
	l, c, one, other := oilsRun(t)
	g := l.Sheet.Base.Oils[0].WeighG
	before := weights(l)
	slip := l.Scaled()[1]
	c.pass(time.Hour)
	of := logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: other}
	l, written, err := l.Reweigh(slip.ID, of, c.now())
	must(t, err)
	if want := fmt.Sprintf("%s 41.0 L41 at 1m0s, %s %.1f L%.0f at 2m0s", other, one, g, g); weights(l) != want {
		t.Errorf("counting are %q, want %q", weights(l), want)
	}
	again, _ := resume(l.Sheet, l.Events, "b", c.now())
	if l.Run() != 62*time.Minute || again.Run() != l.Run() || len(l.State().Jumps)+len(again.State().Jumps) != 0 {
		t.Errorf("the clock is at %s, taken up again at %s, jumps %v", l.Run(), again.Run(), again.State().Jumps)
	}
	if _, _, err := l.Reweigh(slip.ID, of, c.now()); err == nil {
		t.Error("what stands no more was mended")
	}
	if _, _, err := l.Reweigh(written[0].ID, of, c.now()); err == nil || !strings.Contains(err.Error(), "stands as "+other+" already") {
		t.Error(err)
	}
	l, _, err = l.Back(c.now())
	must(t, err)
	if weights(l) != before {
		t.Errorf("undone, %q counts, want %q", weights(l), before)
	}
}

// A weighing is taken back however much was marked since, with what it stood in the place of, and nothing else goes with it.
func TestAnOldWeighingIsTakenBackAlone(t *testing.T) {
	l, c, one, other := oilsRun(t)
	l, _, err := l.Do("base lye in", c.now())
	must(t, err)
	slip, right := l.Scaled()[1], l.Scaled()[0]
	l, mended, err := l.Reweigh(slip.ID, logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: other}, c.now())
	must(t, err)
	l, written, err := l.Unweigh(mended[0].ID, c.now())
	must(t, err)
	if want := fmt.Sprintf("%s %.1f %s at 2m0s", one, right.Value, right.Lot); weights(l) != want || len(written) != 2 {
		t.Errorf("counting are %q, want %q, %d events", weights(l), want, len(written))
	}
	if !l.State().Begun() {
		t.Error("the lye went with it")
	}
	if l, _, err = l.Unweigh(right.ID, c.now()); err != nil || weights(l) != "" || len(l.Scaled()) != 0 {
		t.Errorf("%v, and %q counts", err, weights(l))
	}
	if _, _, err = l.Unweigh(right.ID, c.now()); err == nil {
		t.Error("it was taken back twice")
	}
}

// Why a batch goes on lye-heavy holds for what was weighed then: it ends where a weighing from before is mended since, and stands again where one made
// since is undone. What is mended after the pour leaves what was said.
func TestAReasonForLyeHeavyEndsWithItsWeighings(t *testing.T) {
	l, c, _, other := oilsRun(t)
	why := func(l Live) string { return l.State().reasons[pour.Base] }
	l = mark(t, l, c, logbook.Event{Kind: logbook.Noted, Batch: pour.Base, What: logbook.LyeHeavy, Text: "meant"})
	right := l.Scaled()[0]
	of := logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, What: other}
	jug := logbook.Event{Kind: logbook.Weighed, Batch: pour.Base, Jug: "poppy", What: pour.WeighBatter}
	for what, do := range map[string]func() (Live, []logbook.Event, error){
		"taken back":        func() (Live, []logbook.Event, error) { return l.Unweigh(right.ID, c.now()) },
		"of another":        func() (Live, []logbook.Event, error) { return l.Reweigh(right.ID, of, c.now()) },
		"of a jug":          func() (Live, []logbook.Event, error) { return l.Reweigh(right.ID, jug, c.now()) },
		"weighed something": func() (Live, []logbook.Event, error) { return l.Mark(of, c.now()) },
	} {
		now, _, err := do()
		must(t, err)
		if why(l) != "meant" || why(now) != "" {
			t.Errorf("%s: it stands because %q", what, why(now))
		}
	}
	since := mark(t, l, c, of)
	if since, _, _ = since.Back(c.now()); why(since) != "meant" {
		t.Errorf("undone, it stands because %q", why(since))
	}
	over := mark(t, l, c, logbook.Event{Kind: logbook.Ended})
	if over, _, _ = over.Unweigh(right.ID, c.now()); why(over) != "meant" {
		t.Errorf("after the pour it stands because %q", why(over))
	}
}
